/*
 * Prints how long the processor works on a picture, cells included: boxes in rows of ten, joined to
 * their neighbours, each with its frame, a panel and padding; once more with an arch on each.
 * Figures, never a verdict: run with `meson test --benchmark`. The budget of a key is 16 ms for 30
 * boxes, all of the screen in it.
 */
#include "draw/piece.h"
#include "draw/raster.h"
#include "stopwatch.h"

#include <stdio.h>
#include <stdlib.h>

#define ROUNDS 101
#define IN_A_ROW 10
#define ROWS 36
#define COLUMNS 116

struct picture {
    const struct plan *plan;
    struct piece_ask ask;
    struct arena arena;
    size_t marks;
};

static int64_t add_stock(struct model *model, enum stock_word kind, double thick, double wide)
{
    struct stock *stock = MODEL_ADD(model, stock);
    stock->name = arena_format(model->arena, "stock %lld", (long long)stock->key);
    stock->kind = kind;
    stock->thickness = (int64_t)(thick * 8128);
    stock->width = (int64_t)(wide * 8128);
    return stock->key;
}

static void add_join(struct model *model, size_t a, size_t b, bool above)
{
    struct join *join = MODEL_ADD(model, join);
    join->name = arena_format(model->arena, "J%zu-%zu", a, b);
    join->box_a = model->boxes.at[a].key;
    join->side_a = above ? SIDE_TOP : SIDE_RIGHT;
    join->box_b = model->boxes.at[b].key;
    join->side_b = above ? SIDE_BOTTOM : SIDE_LEFT;
}

static void build_grid(struct model *model, int boxes, bool arched)
{
    int64_t stick = add_stock(model, STOCK_STICK, 1.5, 2.5);
    int64_t sheet = add_stock(model, STOCK_SHEET, 0.5, 0);
    int64_t foam = add_stock(model, STOCK_FOAM, 2, 0);
    model->build.name = "grid";
    for (int i = 0; i < boxes; i++) {
        struct box *box = MODEL_ADD(model, box);
        int64_t key = box->key;
        box->name = arena_format(model->arena, "B%d", i);
        box->frame = i % 2 ? FRAME_CRATE : FRAME_LADDER;
        box->width = 24 * LENGTH_INCH;
        box->depth = (i % 2 ? 18 : 3) * LENGTH_INCH;
        box->height = 40 * LENGTH_INCH;
        box->stick = stick;
        box->outline = arched ? OUTLINE_ARCH : OUTLINE_RECTANGLE;
        box->rise = arched ? 5 * LENGTH_INCH : 0;
        struct facing *facing = MODEL_ADD(model, facing);
        facing->box = key;
        facing->stock = sheet;
        struct layer *layer = MODEL_ADD(model, layer);
        layer->box = key;
        layer->kind = LAYER_FOAM;
        layer->shape = SHAPE_SLAB;
        layer->stock = foam;
    }
    for (size_t i = 0; i < model->boxes.count; i++) {
        if (i % IN_A_ROW + 1 < IN_A_ROW && i + 1 < model->boxes.count)
            add_join(model, i, i + 1, false);
        if (i + IN_A_ROW < model->boxes.count)
            add_join(model, i, i + IN_A_ROW, true);
    }
}

static void run(void *context)
{
    struct picture *picture = context;
    struct drawing drawing;
    struct raster raster;

    draw_piece(&drawing, picture->plan, &picture->ask, &picture->arena);
    raster_draw(&raster, &drawing, ROWS, COLUMNS, RASTER_LINES, &picture->arena);
    picture->marks = drawing.marks.count;
}

static void bench_view(const struct plan *plan, const char *name, struct piece_ask ask)
{
    struct picture picture = {.plan = plan, .ask = ask};
    double times[ROUNDS];

    for (int i = 0; i < ROUNDS; i++) {
        double begin = stopwatch_used_ms();
        arena_init(&picture.arena);
        if (!arena_try(&picture.arena, run, &picture))
            exit(1);
        arena_release(&picture.arena);
        times[i] = stopwatch_used_ms() - begin;
    }
    qsort(times, ROUNDS, sizeof *times, stopwatch_compare);
    printf("  %-24s %6zu marks  median %7.3f ms  p99 %7.3f ms\n", name, picture.marks,
           times[ROUNDS / 2], times[ROUNDS * 99 / 100]);
}

static void bench_grid(int boxes, bool arched)
{
    const struct plan *plan;
    struct arena arena;
    struct model model;
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    model_init(&model, &arena);
    build_grid(&model, boxes, arched);
    if (plan_make_draft(&model, NULL, &arena, &plan))
        exit(1);
    int64_t box = model.boxes.at[1].key;
    printf("%d boxes%s, %zu members\n", boxes, arched ? " with an arch" : "", plan->members.count);
    bench_view(plan, "piece", (struct piece_ask){.chosen = ENTITY_box, .key = box});
    bench_view(plan, "piece apart",
               (struct piece_ask){.chosen = ENTITY_box, .key = box, .apart = true});
    bench_view(plan, "box", (struct piece_ask){.box = box, .chosen = ENTITY_none});
    bench_view(plan, "box apart",
               (struct piece_ask){.box = box, .chosen = ENTITY_none, .apart = true});
    arena_release(&arena);
}

int main(void)
{
    bench_grid(3, false);
    bench_grid(30, false);
    bench_grid(100, false);
    bench_grid(30, true);
    return 0;
}
