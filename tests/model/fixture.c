#include "fixture.h"

#include <stdlib.h>

int fixture_begin(void **state)
{
    struct fixture *fixture = calloc(1, sizeof *fixture);

    if (!fixture)
        return -1;
    *state = fixture;
    arena_init(&fixture->arena);
    model_init(&fixture->model, &fixture->arena);
    fixture->model.build.key = 1;
    fixture->model.build.name = "bench";
    return 0;
}

int fixture_end(void **state)
{
    struct fixture *fixture = *state;

    arena_release(&fixture->arena);
    free(fixture);
    return 0;
}

static int64_t add_stock(struct model *model, const char *name, enum stock_word kind)
{
    struct stock *stock = MODEL_ADD(model, stock);

    stock->name = name;
    stock->kind = kind;
    return stock->key;
}

static int64_t add_box(struct model *model, const char *name, int64_t stick)
{
    struct box *box = MODEL_ADD(model, box);

    box->name = name;
    box->width = 1000 * LENGTH_MM;
    box->depth = 89 * LENGTH_MM;
    box->height = 600 * LENGTH_MM;
    box->stick = stick;
    return box->key;
}

static void dress(struct model *model, struct small_build *build)
{
    struct facing *facing = MODEL_ADD(model, facing);
    struct layer *layer = MODEL_ADD(model, layer);
    struct layer_edge *edge = MODEL_ADD(model, layer_edge);
    struct tufting *tufting = MODEL_ADD(model, tufting);
    struct member *member = MODEL_ADD(model, member);

    facing->box = build->box_a;
    facing->stock = build->sheet;
    layer->box = build->box_a;
    layer->stock = build->cloth;
    edge->layer = layer->key;
    tufting->layer = layer->key;
    tufting->across = 4;
    tufting->down = 2;
    member->box = build->box_a;
    build->facing = facing->key;
    build->layer = layer->key;
    build->layer_edge = edge->key;
    build->tufting = tufting->key;
    build->member = member->key;
}

static int64_t add_join(struct model *model, const char *name, int64_t box_a, int64_t box_b)
{
    struct join *join = MODEL_ADD(model, join);

    join->name = name;
    join->box_a = box_a;
    join->box_b = box_b;
    join->target = box_b ? TARGET_BOX : TARGET_WALL;
    return join->key;
}

struct small_build fixture_build(struct model *model)
{
    struct small_build build = {.stick = add_stock(model, "stud", STOCK_STICK)};
    struct opening *opening;
    struct point *point;

    build.sheet = add_stock(model, "plywood", STOCK_SHEET);
    build.cloth = add_stock(model, "velvet", STOCK_CLOTH);
    build.box_a = add_box(model, "A", build.stick);
    build.box_b = add_box(model, "B", build.stick);
    dress(model, &build);
    build.join = add_join(model, "J", build.box_a, build.box_b);
    build.wall_join = add_join(model, "W", build.box_a, 0);
    opening = MODEL_ADD(model, opening);
    opening->layer = build.layer;
    opening->join = build.wall_join;
    build.opening = opening->key;
    point = MODEL_ADD(model, point);
    point->join = build.wall_join;
    build.point = point->key;
    return build;
}
