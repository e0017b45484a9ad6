/*
 * Cuts one job from a file and says how well, in one line of JSON:
 *
 *     cutbench [--effort quick|good|best] FILE.json
 *     {"id": "...", "kind": "bars", "cost": 35.82, "bound": 35.82, "proven": true, ...}
 *
 * The file holds "id", "kind" (bars, sheets, roll), "units" (in, mm) and "problem": "kerf", "trim",
 * and by kind "stock" and "offcuts", "sheets", or "width", "repeat", "price_per_yard" and
 * "sold_by"; with "pieces". Lengths are texts as a maker writes them, prices numbers in major
 * units, a count of null is as many as are wanted.
 */
#include "base/quantity.h"
#include "cut/search.h"
#include "stopwatch.h"

#include <jansson.h>

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define YARD (36 * LENGTH_INCH)

struct bench {
    struct arena arena;
    enum units units;
    enum cut_way way;
    struct cut_job job;
    LIST_OF(struct cut_piece) parts;
    LIST_OF(struct cut_size) sizes;
    double price_by_yard;
};

static void fail(const char *what)
{
    fprintf(stderr, "cutbench: %s\n", what);
    exit(1);
}

static int64_t length_of(const struct bench *bench, const json_t *object, const char *key)
{
    const char *text = json_string_value(json_object_get(object, key));
    struct fault_note note;
    int64_t length = 0;

    if (text && quantity_parse(QUANTITY_LENGTH, bench->units, text, &length, &note))
        fail(key);
    return length;
}

static int64_t cents_of(const json_t *object, const char *key)
{
    return (int64_t)(json_number_value(json_object_get(object, key)) * 100 + 0.5);
}

/* ---- reading ---- */

static void add_sizes(struct bench *bench, const json_t *list)
{
    size_t index;
    json_t *item;

    json_array_foreach(list, index, item)
    {
        const json_t *count = json_object_get(item, "count");

        *LIST_ADD(&bench->arena, &bench->sizes) = (struct cut_size){
            .length = length_of(bench, item, "length"),
            .width = length_of(bench, item, "width"),
            .price = cents_of(item, "price"),
            .limit = json_is_integer(count) ? json_integer_value(count) : CUT_ANY};
    }
}

static struct cut_piece piece_of(const struct bench *bench, const json_t *item)
{
    bool roll = bench->way == CUT_ROLLS;
    const json_t *phase = json_object_get(item, "phase");
    struct cut_piece piece = {
        .length = length_of(bench, item, roll ? "along" : "length"),
        .width = length_of(bench, item, roll ? "across" : "width"),
        .may_turn = json_is_true(json_object_get(item, roll ? "railroad" : "rotate"))};

    if (roll && json_is_string(phase)) {
        piece.group = CUT_PINNED;
        piece.along = length_of(bench, item, "phase");
    }
    return piece;
}

static void add_pieces(struct bench *bench, const json_t *list)
{
    size_t index;
    json_t *item;

    json_array_foreach(list, index, item)
    {
        const json_t *quantity = json_object_get(item, "qty");
        int64_t count = json_is_integer(quantity) ? json_integer_value(quantity) : 1;

        for (int64_t i = 0; i < count; i++)
            *LIST_ADD(&bench->arena, &bench->parts) = piece_of(bench, item);
    }
}

/* "1/8 yard" and the like. */
static int64_t sold_by(const json_t *problem)
{
    const char *text = json_string_value(json_object_get(problem, "sold_by"));
    int above = 0, below = 1;

    if (!text)
        return 0;
    return sscanf(text, "%d/%d yard", &above, &below) == 2 && below > 0 ? YARD * above / below
           : strcmp(text, "yard") == 0                                  ? YARD
                                                                        : 0;
}

static void read_roll(struct bench *bench, const json_t *problem)
{
    bench->job.pattern.along = length_of(bench, problem, "repeat");
    bench->job.sale.step = sold_by(problem);
    bench->price_by_yard = json_number_value(json_object_get(problem, "price_per_yard"));
    *LIST_ADD(&bench->arena, &bench->sizes) =
        (struct cut_size){.width = length_of(bench, problem, "width"), .limit = CUT_ANY};
}

static void read_job(struct bench *bench, const json_t *root)
{
    static const char *const kinds[] = {"bars", "sheets", "roll"};
    const char *kind = json_string_value(json_object_get(root, "kind"));
    const char *units = json_string_value(json_object_get(root, "units"));
    const json_t *problem = json_object_get(root, "problem");

    bench->units = units && strcmp(units, "mm") == 0 ? UNITS_MM : UNITS_INCH;
    bench->way = CUT_BARS;
    while (!kind || strcmp(kind, kinds[bench->way]) != 0)
        if (!kind || bench->way++ == CUT_ROLLS)
            fail("kind");
    bench->job.kerf = length_of(bench, problem, "kerf");
    bench->job.trim = length_of(bench, problem, "trim");
    if (bench->way == CUT_ROLLS)
        read_roll(bench, problem);
    add_sizes(bench, json_object_get(problem, "stock"));
    add_sizes(bench, json_object_get(problem, "sheets"));
    add_sizes(bench, json_object_get(problem, "offcuts"));
    add_pieces(bench, json_object_get(problem, "pieces"));
    bench->job.parts = bench->parts.at;
    bench->job.part_count = bench->parts.count;
    bench->job.sizes = bench->sizes.at;
    bench->job.size_count = bench->sizes.count;
}

/* ---- solving and telling ---- */

static double money(const struct bench *bench, int64_t cost)
{
    if (bench->way != CUT_ROLLS)
        return (double)cost / 100;
    return (double)cost / YARD * bench->price_by_yard;
}

/* Of the roll, which is the last blank. */
static int64_t used_of_roll(const struct bench *bench, const struct cut_layout *layout)
{
    const struct cut_blank *last;

    if (layout->blanks.count == 0)
        return 0;
    last = &layout->blanks.at[layout->blanks.count - 1];
    return bench->job.sizes[last->size].limit == CUT_ANY ? last->used : 0;
}

static void tell(struct bench *bench, const json_t *root, const struct cut_layout *layout,
                 double seconds)
{
    bool sound = layout_verify(bench->way, &bench->job, layout, &bench->arena) == CUT_FLAW_NONE;

    printf("{\"id\": \"%s\", \"kind\": \"%s\", \"cost\": %.2f, \"bound\": %.2f, \"proven\": %s, "
           "\"ms\": %.1f, \"verified\": %s, \"pieces_of_stock\": %zu",
           json_string_value(json_object_get(root, "id")),
           json_string_value(json_object_get(root, "kind")), money(bench, layout->cost),
           money(bench, layout->bound), layout_proven(layout) ? "true" : "false", seconds * 1e3,
           sound ? "true" : "false", layout->blanks.count);
    if (bench->way == CUT_SHEETS)
        printf(", \"cuts\": %zu, \"fences\": %" PRId64, layout->strokes.count, layout->fences);
    if (bench->way == CUT_ROLLS)
        printf(", \"length\": %.4f, \"yards\": %.4f",
               (double)used_of_roll(bench, layout) / LENGTH_INCH, (double)layout->cost / YARD);
    printf("}\n");
}

static void run(void *context)
{
    struct bench *bench = ((void **)context)[0];
    const json_t *root = ((void **)context)[1];
    const enum cut_effort *effort = ((void **)context)[2];
    struct cut_layout layout;
    double begun;

    read_job(bench, root);
    begun = stopwatch_wall();
    cut_search_all(bench->way, &bench->job, *effort, &bench->arena, &layout);
    tell(bench, root, &layout, stopwatch_wall() - begun);
}

int main(int argc, char **argv)
{
    static const char *const efforts[CUT_EFFORTS] = {"quick", "good", "best"};
    static struct bench bench;
    enum cut_effort effort = CUT_GOOD;
    bool chosen = argc == 4 && strcmp(argv[1], "--effort") == 0;
    json_error_t error;
    json_t *root;

    for (int i = 0; chosen && i < CUT_EFFORTS; i++)
        effort = strcmp(argv[2], efforts[i]) == 0 ? (enum cut_effort)i : effort;
    if (argc != 2 && !chosen)
        fail("usage: cutbench [--effort quick|good|best] FILE.json");
    root = json_load_file(argv[argc - 1], 0, &error);
    if (!root)
        fail(error.text);
    arena_init(&bench.arena);
    void *const context[] = {&bench, root, &effort};
    if (!arena_try(&bench.arena, run, (void *)(uintptr_t)context))
        fail("out of memory");
    arena_release(&bench.arena);
    json_decref(root);
    return 0;
}
