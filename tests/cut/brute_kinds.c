/*
 * As brute.c, but a set says how many of each kind it has: the smallest rectangles that hold a set
 * are put together from those of two smaller sets; those that fit no sheet are of no use. Then the
 * cheapest sheets for ever larger sets. Measures carry a kerf, sheets as well.
 */
#include "brute_kinds.h"

#include <string.h>

struct box {
    int64_t size[2];
};

struct table {
    const struct cut_job *job;
    struct cut_piece kinds[BRUTE_KINDS];
    int counts[BRUTE_KINDS];
    int kind_count, set_count;
    bool full; /* something did not fit into the tables */
};

static struct box boxes[BRUTE_SETS][BRUTE_BOXES];
static int box_count[BRUTE_SETS];
static int64_t sheet_price[BRUTE_SETS]; /* of one sheet that gives a set; 0: none does */
static int64_t price[BRUTE_SETS];

static bool are_alike(const struct cut_piece *a, const struct cut_piece *b)
{
    return a->length == b->length && a->width == b->width && a->may_turn == b->may_turn;
}

static bool count_kinds(struct table *table)
{
    for (size_t i = 0; i < table->job->part_count; i++) {
        const struct cut_piece *part = &table->job->parts[i];
        int kind = 0;

        while (kind < table->kind_count && !are_alike(&table->kinds[kind], part))
            kind++;
        if (kind == BRUTE_KINDS)
            return false;
        table->kind_count += kind == table->kind_count;
        table->kinds[kind] = *part;
        table->counts[kind]++;
    }
    table->set_count = 1;
    for (int kind = 0; kind < table->kind_count; kind++)
        table->set_count *= table->counts[kind] + 1;
    return table->set_count <= BRUTE_SETS;
}

/* How many of each kind a set has: its digits, each to its own base. */
static void read_set(const struct table *table, int set, int *ret_counts)
{
    for (int kind = 0; kind < table->kind_count; kind++) {
        ret_counts[kind] = set % (table->counts[kind] + 1);
        set /= table->counts[kind] + 1;
    }
}

static bool is_within(const struct table *table, int set, int whole)
{
    int a[BRUTE_KINDS], b[BRUTE_KINDS];

    read_set(table, set, a);
    read_set(table, whole, b);
    for (int kind = 0; kind < table->kind_count; kind++)
        if (a[kind] > b[kind])
            return false;
    return true;
}

/* The price of the cheapest sheet that takes a box; 0: none does. */
static int64_t price_of(const struct cut_job *job, struct box box)
{
    int64_t least = 0;

    for (size_t s = 0; s < job->size_count; s++)
        if (box.size[0] <= job->sizes[s].length + job->kerf &&
            box.size[1] <= job->sizes[s].width + job->kerf &&
            (least == 0 || job->sizes[s].price < least))
            least = job->sizes[s].price;
    return least;
}

/* Keeps a box unless another is smaller both ways, and throws out those that are larger. */
static void add_box(struct table *table, int set, struct box box)
{
    int kept = 0;

    if (price_of(table->job, box) == 0)
        return;
    for (int i = 0; i < box_count[set]; i++)
        if (boxes[set][i].size[0] <= box.size[0] && boxes[set][i].size[1] <= box.size[1])
            return;
    for (int i = 0; i < box_count[set]; i++)
        if (boxes[set][i].size[0] < box.size[0] || boxes[set][i].size[1] < box.size[1])
            boxes[set][kept++] = boxes[set][i];
    box_count[set] = kept;
    if (kept == BRUTE_BOXES)
        table->full = true;
    else
        boxes[set][box_count[set]++] = box;
}

static void join_boxes(struct table *table, int set, struct box a, struct box b)
{
    for (int way = 0; way < 2; way++) {
        struct box box;

        box.size[way] = a.size[way] + b.size[way];
        box.size[!way] = a.size[!way] > b.size[!way] ? a.size[!way] : b.size[!way];
        add_box(table, set, box);
    }
}

static void add_single(struct table *table, int set)
{
    int counts[BRUTE_KINDS], kind = 0, sum = 0;
    int64_t length, width;

    read_set(table, set, counts);
    for (int k = 0; k < table->kind_count; k++) {
        sum += counts[k];
        kind = counts[k] > 0 ? k : kind;
    }
    if (sum != 1)
        return;
    length = table->kinds[kind].length + table->job->kerf;
    width = table->kinds[kind].width + table->job->kerf;
    add_box(table, set, (struct box){{length, width}});
    if (table->kinds[kind].may_turn)
        add_box(table, set, (struct box){{width, length}});
}

/* A set's number is the sum of those of its parts: with `part` goes `set - part`. */
static void fill_boxes(struct table *table, int set)
{
    box_count[set] = 0;
    add_single(table, set);
    for (int part = 1; part <= set - part && !table->full; part++) {
        if (box_count[part] == 0 || box_count[set - part] == 0 || !is_within(table, part, set))
            continue;
        for (int i = 0; i < box_count[part]; i++)
            for (int k = 0; k < box_count[set - part]; k++)
                join_boxes(table, set, boxes[part][i], boxes[set - part][k]);
    }
    sheet_price[set] = 0;
    for (int i = 0; i < box_count[set]; i++) {
        int64_t one = price_of(table->job, boxes[set][i]);

        if (sheet_price[set] == 0 || one < sheet_price[set])
            sheet_price[set] = one;
    }
}

static void price_set(const struct table *table, int set)
{
    price[set] = INT64_MAX;
    for (int part = 1; part <= set; part++)
        if (sheet_price[part] > 0 && is_within(table, part, set) &&
            price[set - part] < INT64_MAX - sheet_price[part] &&
            price[set - part] + sheet_price[part] < price[set])
            price[set] = price[set - part] + sheet_price[part];
}

bool brute_kinds_cost(const struct cut_job *job, int64_t *ret_cost)
{
    struct table table = {.job = job};

    if (!count_kinds(&table))
        return false;
    price[0] = 0;
    for (int set = 1; set < table.set_count && !table.full; set++) {
        fill_boxes(&table, set);
        price_set(&table, set);
    }
    if (table.full || price[table.set_count - 1] == INT64_MAX)
        return false;
    *ret_cost = price[table.set_count - 1];
    return true;
}
