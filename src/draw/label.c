#include "draw/label.h"

/* ---- at places ---- */

static bool is_clear(const struct label_place *places, size_t count,
                     const struct label_place *place)
{
    for (size_t i = 0; i < count; i++) {
        const struct label_place *other = &places[i];
        if (other->shown && other->row == place->row &&
            place->column <= other->column + other->width &&
            other->column <= place->column + place->width)
            return false;
    }
    return true;
}

static bool is_within(const struct label_place *place, struct label_field field)
{
    return place->row >= 0 && place->row < field.rows && place->column >= 0 &&
           place->column + place->width <= field.margin;
}

static int within(int at, int last)
{
    return at > last ? last : at < 0 ? 0 : at;
}

/* Up, down and aside of where it should be, the nearest first. */
static void place_one(struct label_place *places, size_t index, struct label_field field)
{
    static const signed char rows[] = {0, -1, 1, -2, 2, -3, 3};
    static const signed char halves[] = {0, -1, 1, -2, 2};
    struct label_place *place = &places[index];
    struct label_place wanted = *place;

    for (size_t h = 0; h < sizeof halves / sizeof *halves; h++) {
        for (size_t r = 0; r < sizeof rows / sizeof *rows; r++) {
            int column = wanted.column - wanted.width / 2 + halves[h] * (wanted.width + 2) / 2;
            struct label_place tried = {wanted.row + rows[r],
                                        within(column, field.margin - wanted.width), wanted.width,
                                        true};
            if (is_within(&tried, field) && is_clear(places, index, &tried)) {
                *place = tried;
                return;
            }
        }
    }
}

/* ---- aside ---- */

/* The highest label aside that is not shown yet. */
static size_t next_aside(const struct label_place *places, const struct label *labels, size_t count)
{
    size_t found = count;

    for (size_t i = 0; i < count; i++) {
        if (labels[i].aside && !places[i].shown &&
            (found == count || labels[i].v > labels[found].v))
            found = i;
    }
    return found;
}

static int count_aside(const struct label *labels, size_t count)
{
    int found = 0;

    for (size_t i = 0; i < count; i++)
        found += labels[i].aside;
    return found;
}

/* From the top down; none so low that those after it find no row. */
static void place_aside(struct label_place *places, const struct label *labels, size_t count,
                        struct label_field field)
{
    int left = count_aside(labels, count);
    int next = 0;

    for (size_t i; (i = next_aside(places, labels, count)) < count; left--) {
        struct label_place *place = &places[i];
        int last = field.rows - left;
        place->row = place->row < next                   ? next
                     : place->row > last && last >= next ? last
                                                         : place->row;
        if (place->row >= field.rows)
            return;
        place->column = field.margin;
        place->shown = true;
        if (place->width > field.columns - field.margin)
            place->width = field.columns - field.margin;
        next = place->row + 1;
    }
}

void labels_place(struct label_place *places, const struct label *labels, size_t count,
                  struct label_field field)
{
    for (size_t i = 0; i < count; i++)
        places[i].shown = false;
    place_aside(places, labels, count, field);
    for (size_t i = 0; i < count; i++) {
        if (!labels[i].aside)
            place_one(places, i, field);
    }
}
