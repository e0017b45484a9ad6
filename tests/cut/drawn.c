#include "drawn.h"

#include "base/quantity.h"

#define EIGHTH INT64_C(1016)

static void begin(struct drawn *drawn, int64_t kerf)
{
    drawn->job = (struct cut_job){.parts = drawn->pieces, .sizes = drawn->sizes, .kerf = kerf};
}

static void add_size(struct drawn *drawn, int64_t length, int64_t width, int64_t price,
                     int64_t limit)
{
    drawn->sizes[drawn->job.size_count++] = (struct cut_size){length, width, price, limit};
}

/* ---- sticks ---- */

static void draw_lengths(struct drawn *drawn, struct dice *dice, size_t lengths)
{
    static const int64_t feet[] = {8, 10, 12, 14, 16, 20};

    for (size_t i = 0; i < lengths; i++)
        add_size(drawn, feet[i] * 96 * EIGHTH, 0, feet[i] * 40 + feet[i] * dice_between(dice, 0, 7),
                 CUT_ANY);
    for (int64_t i = dice_between(dice, 0, 3); i > 0; i--) {
        int64_t length = dice_between(dice, 100, 599) * EIGHTH;

        add_size(drawn, length, 0, 0, dice_between(dice, 1, 2));
    }
}

static void draw_members(struct drawn *drawn, struct dice *dice, size_t pieces, int64_t alike)
{
    while (drawn->job.part_count < pieces) {
        int64_t length = dice_between(dice, 48, 719) * EIGHTH;

        for (int64_t n = dice_between(dice, 1, alike); n > 0 && drawn->job.part_count < pieces; n--)
            drawn->pieces[drawn->job.part_count++] = (struct cut_piece){.length = length};
    }
}

void draw_sticks(struct drawn *drawn, struct dice *dice, size_t pieces, size_t lengths,
                 int64_t alike)
{
    begin(drawn, EIGHTH);
    draw_lengths(drawn, dice, lengths);
    draw_members(drawn, dice, pieces, alike);
}

/* ---- sheets ---- */

static void draw_parts(struct drawn *drawn, struct dice *dice, size_t pieces)
{
    while (drawn->job.part_count < pieces) {
        struct cut_piece piece = {.length = dice_between(dice, 48, 480) * EIGHTH};

        piece.width = dice_between(dice, 24, 288) * EIGHTH;
        piece.may_turn = dice_between(dice, 0, 2) > 0;
        for (int64_t n = dice_between(dice, 1, 4); n > 0 && drawn->job.part_count < pieces; n--)
            drawn->pieces[drawn->job.part_count++] = piece;
    }
}

void draw_sheets(struct drawn *drawn, struct dice *dice, size_t pieces)
{
    const int64_t whole = 768 * EIGHTH, half = whole / 2, quarter = whole / 4;

    begin(drawn, EIGHTH);
    add_size(drawn, whole, half, dice_between(dice, 4200, 5400), CUT_ANY);
    add_size(drawn, half, half, dice_between(dice, 2300, 2900), CUT_ANY);
    add_size(drawn, half, quarter, dice_between(dice, 1300, 1700), CUT_ANY);
    for (int64_t n = dice_between(dice, 0, 2); n > 0; n--) {
        int64_t length = dice_between(dice, 100, 500) * EIGHTH;

        add_size(drawn, length, dice_between(dice, 60, 300) * EIGHTH, 0, 1);
    }
    draw_parts(drawn, dice, pieces);
}

/* ---- cloth ---- */

#define COVERS_MOST 30

const char *const cloth_names[CLOTHS] = {"plain",         "may be turned", "repeat along",
                                         "repeat across", "both repeats",  "half-drop"};

/* A sort of piece: how often it is drawn, how many alike, sizes in inches. */
struct sort {
    int64_t share, alike;
    int64_t length[2], width[2];
    bool strip;
};

static const struct sort sorts[] = {
    {20, 2, {36, 100}, {24, 54}, false}, /* backs and seats */
    {40, 4, {16, 62}, {12, 34}, false},  /* sides, aprons, cushions */
    {25, 4, {30, 72}, {4, 9}, true},     /* boxing and facings */
    {15, 4, {8, 24}, {5, 16}, false},    /* ends and caps */
};

static const struct sort *draw_sort(struct dice *dice)
{
    int64_t share = dice_between(dice, 0, 99);
    const struct sort *sort = sorts;

    while (share >= sort->share)
        share -= sort++->share;
    return sort;
}

static int64_t draw_size(struct dice *dice, const int64_t *range, bool metric)
{
    if (metric)
        return dice_between(dice, range[0] * 254 / 10, range[1] * 254 / 10) * LENGTH_MM;
    return dice_between(dice, range[0] * 4, range[1] * 4) * (LENGTH_INCH / 4);
}

static void draw_covers(struct drawn *drawn, struct dice *dice, enum cloth cloth, bool metric)
{
    size_t wanted = (size_t)dice_between(dice, 6, COVERS_MOST);

    while (drawn->job.part_count < wanted) {
        const struct sort *sort = draw_sort(dice);
        struct cut_piece piece = {.length = draw_size(dice, sort->length, metric)};

        piece.width = draw_size(dice, sort->width, metric);
        piece.may_turn = cloth == RAILROAD || (sort->strip && cloth != PLAIN);
        if (cloth > RAILROAD && !sort->strip) {
            piece.group = 1;
            piece.centred_across = true;
        }
        for (int64_t n = dice_between(dice, 1, sort->alike);
             n > 0 && drawn->job.part_count < wanted; n--)
            drawn->pieces[drawn->job.part_count++] = piece;
    }
}

void draw_cloth(struct drawn *drawn, struct dice *dice, enum cloth cloth, bool metric)
{
    static const int64_t inches[] = {9, 13, 18, 25, 27};
    int64_t unit = metric ? 25 * LENGTH_MM : LENGTH_INCH;

    begin(drawn, 0);
    add_size(drawn, 0, metric ? 1400 * LENGTH_MM : 54 * LENGTH_INCH, 0, CUT_ANY);
    drawn->job.sale =
        (struct cut_sale){.reserve = 50000, .step = metric ? 100 * LENGTH_MM : 9 * LENGTH_INCH};
    draw_covers(drawn, dice, cloth, metric);
    if (cloth == ALONG || cloth >= BOTH)
        drawn->job.pattern.along = inches[dice_between(dice, 0, 4)] * unit;
    if (cloth == ACROSS || cloth >= BOTH)
        drawn->job.pattern.across = drawn->sizes[0].width / dice_between(dice, 2, 4);
    drawn->job.pattern.half_drop = cloth == DROP;
    drawn->job.sale.ahead = drawn->job.pattern.along;
}
