/*
 * Prints how long the processor works on a plan as it is made at every key: of each worked example
 * and demo build given as files, beside the plan with stories and ways out, with what its cutting
 * takes by effort, and how it grows with the number of boxes. Figures, never a verdict: run with
 * `meson test --benchmark`.
 */
#include "build_file.h"
#include "plan/plan.h"
#include "stopwatch.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define ROUNDS 200
#define LARGEST 300 /* boxes */
#define GRID 10     /* boxes in a row of a grid */

typedef enum fault make_fn(const struct model *facts, const struct cut_known *known,
                           struct arena *arena, const struct plan **ret_plan);

/* Plans a model again and again, by layouts that are known where they are given, each time in the
 * memory of the time before as the program does at a key; the times, sorted. */
static void time_plans(make_fn *make, const struct model *model, const struct cut_known *known,
                       double *times, int rounds)
{
    struct arena arena;

    arena_init(&arena);
    for (int i = 0; i < rounds; i++) {
        const struct plan *plan;
        double begin = stopwatch_used_ms();
        if (make(model, known, &arena, &plan))
            exit(1);
        times[i] = stopwatch_used_ms() - begin;
        arena_reset(&arena);
    }
    arena_release(&arena);
    qsort(times, (size_t)rounds, sizeof *times, stopwatch_compare);
}

/* What the cutting methods find for a model: with it a plan is made without a search. */
static void keep_layouts(const struct model *model, struct arena *arena, struct cut_known *known)
{
    const struct plan *plan;

    if (plan_make(model, arena, &plan))
        exit(1);
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        struct cut_known_layout found = {job->digest, CUT_QUICK, *job->layout};

        cut_known_keep(known, arena, &found);
    }
}

static void cut_job(const struct plan_job *job, enum cut_effort effort)
{
    struct cut_layout layout;
    struct arena arena;
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    cut_search_all(job->way, job->job, effort, &arena, &layout);
    arena_release(&arena);
}

/* What cutting all jobs of a plan takes. */
static double time_effort(const struct plan *plan, enum cut_effort effort)
{
    double begin = stopwatch_used_ms();

    for (size_t i = 0; i < plan->jobs.count; i++)
        cut_job(&plan->jobs.at[i], effort);
    return stopwatch_used_ms() - begin;
}

/* ---- files ---- */

static void bench_file(const char *name)
{
    struct cut_known known = {0};
    const struct plan *plan;
    double times[ROUNDS];
    struct arena arena;
    struct model model;
    const char *last = strrchr(name, '/');
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    model_init(&model, &arena);
    build_file_read(name, &model);
    time_plans(plan_make_draft, &model, NULL, times, ROUNDS);
    printf("%-18s %3zu boxes  median %7.3f ms  p99 %7.3f ms", last ? last + 1 : name,
           model.boxes.count, times[ROUNDS / 2], times[ROUNDS * 99 / 100]);
    time_plans(plan_make_known, &model, NULL, times, ROUNDS);
    printf("  with ways out %7.3f ms", times[ROUNDS / 2]);
    keep_layouts(&model, &arena, &known);
    time_plans(plan_make_draft, &model, &known, times, ROUNDS);
    if (plan_make(&model, &arena, &plan))
        exit(1);
    printf("  without cutting %7.3f ms  cutting alone, quick %6.3f ms, good %8.3f ms\n",
           times[ROUNDS / 2], time_effort(plan, CUT_QUICK), time_effort(plan, CUT_GOOD));
    arena_release(&arena);
}

/* ---- growth ---- */

static int64_t add_stock(struct model *model, enum stock_word kind, double thick, double wide)
{
    struct stock *stock = MODEL_ADD(model, stock);
    stock->name = arena_format(model->arena, "stock %lld", (long long)stock->key);
    stock->kind = kind;
    stock->thickness = (int64_t)(thick * 8128);
    stock->width = (int64_t)(wide * 8128);
    return stock->key;
}

/* A row of padded boxes, each joined to the one before. */
static void build_row(struct model *model, int boxes)
{
    int64_t stick = add_stock(model, STOCK_STICK, 1.5, 2.5);
    int64_t sheet = add_stock(model, STOCK_SHEET, 0.5, 0);
    int64_t cloth = add_stock(model, STOCK_CLOTH, 0.05, 54);
    int64_t before = 0;
    model->build.name = "row";
    for (int i = 0; i < boxes; i++) {
        struct box *box = MODEL_ADD(model, box);
        int64_t key = box->key;
        box->name = arena_format(model->arena, "B%d", i);
        box->width = 24 * LENGTH_INCH;
        box->depth = 3 * LENGTH_INCH;
        box->height = 40 * LENGTH_INCH;
        box->stick = stick;
        struct facing *facing = MODEL_ADD(model, facing);
        facing->box = key;
        facing->stock = sheet;
        struct layer *layer = MODEL_ADD(model, layer);
        layer->box = key;
        layer->kind = LAYER_COVER;
        layer->shape = SHAPE_WRAPPED;
        layer->stock = cloth;
        if (before) {
            struct join *join = MODEL_ADD(model, join);
            join->name = arena_format(model->arena, "J%d", i);
            join->box_a = before;
            join->side_a = SIDE_RIGHT;
            join->box_b = key;
            join->side_b = SIDE_LEFT;
        }
        before = key;
    }
}

static void join_beside(struct model *model, size_t a, size_t b, bool above, int number)
{
    struct join *join = MODEL_ADD(model, join);
    join->name = arena_format(model->arena, "J%d", number);
    join->box_a = model->boxes.at[a].key;
    join->side_a = above ? SIDE_TOP : SIDE_RIGHT;
    join->box_b = model->boxes.at[b].key;
    join->side_b = above ? SIDE_BOTTOM : SIDE_LEFT;
}

/* Boxes in rows of ten, each joined to its neighbours in the row and above, again and again until
 * there are as many joins as wanted. They stand for those of build_row. */
static int join_grid(struct model *model, int wanted)
{
    int made = 0;
    model->joins.count = 0;
    while (made < wanted) {
        int before = made;
        for (size_t i = 0; i < model->boxes.count && made < wanted; i++) {
            if (i % GRID + 1 < GRID && i + 1 < model->boxes.count)
                join_beside(model, i, i + 1, false, made++);
            if (i + GRID < model->boxes.count && made < wanted)
                join_beside(model, i, i + GRID, true, made++);
        }
        if (made == before)
            break;
    }
    return made;
}

/* The searches of the cutting methods are a part of a plan, or known from an earlier one. */
static double time_row(int boxes, int joins, bool cutting)
{
    struct cut_known known = {0};
    double times[5];
    struct arena arena;
    struct model model;
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    model_init(&model, &arena);
    build_row(&model, boxes);
    if (joins > 0)
        join_grid(&model, joins);
    if (!cutting)
        keep_layouts(&model, &arena, &known);
    time_plans(plan_make_draft, &model, cutting ? NULL : &known, times, 5);
    arena_release(&arena);
    return times[2];
}

/* The exponent k of time ~ boxes^k, by least squares over the logarithms. */
static void bench_growth(void)
{
    static const int sizes[] = {3, 10, 30, 100, LARGEST};
    double sx = 0, sy = 0, sxx = 0, sxy = 0;
    int count = (int)(sizeof sizes / sizeof *sizes);
    for (int i = 0; i < count; i++) {
        double ms = time_row(sizes[i], 0, true);
        double x = log(sizes[i]);
        double y = log(ms);
        printf("row of %3d boxes    %8.3f ms\n", sizes[i], ms);
        sx += x;
        sy += y;
        sxx += x * x;
        sxy += x * y;
    }
    printf("growth exponent     %.2f\n", (count * sxy - sx * sy) / (count * sxx - sx * sx));
}

/* Boxes joined from all sides; the goal for 30 of them with 100 joins is 30 ms
 * without cutting. */
static void bench_grid(void)
{
    static const struct {
        int boxes, joins;
    } sizes[] = {{10, 30}, {30, 100}, {100, 330}};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++)
        printf("grid of %3d boxes, %3d joins %8.3f ms, without cutting %8.3f ms\n", sizes[i].boxes,
               sizes[i].joins, time_row(sizes[i].boxes, sizes[i].joins, true),
               time_row(sizes[i].boxes, sizes[i].joins, false));
}

int main(int argc, char **argv)
{
    for (int i = 1; i < argc; i++)
        bench_file(argv[i]);
    bench_growth();
    bench_grid();
    return 0;
}
