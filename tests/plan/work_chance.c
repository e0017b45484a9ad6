/*
 * Builds by chance. Sizes, frames, endings and kinds are drawn from what a workshop makes; what is
 * rare there (a group, a wall, a loose panel) is rare here.
 */
#include "sanitized.h"
#include "work.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define BUILDS UNLESS_SANITIZED(WORK_BUILDS * 2 / 3, WORK_BUILDS / 10)

static bool one_in(struct dice *dice, int64_t count)
{
    return dice_between(dice, 1, count) == 1;
}

static int64_t inches(struct dice *dice, int64_t least, int64_t most)
{
    return LENGTH_INCH / 4 * dice_between(dice, 4 * least, 4 * most);
}

/* ---- boxes ---- */

static int64_t chance_frame(struct dice *dice)
{
    static const int64_t frames[] = {FRAME_LADDER, FRAME_LADDER, FRAME_LADDER, FRAME_LADDER,
                                     FRAME_CRATE,  FRAME_CRATE,  FRAME_BOARD,  FRAME_CUSHION};

    return frames[dice_between(dice, 0, 7)];
}

static int64_t chance_box(struct work_bench *bench, struct dice *dice, const char *name)
{
    int64_t key = work_box(bench, name, chance_frame(dice));
    struct box *box = model_find(&bench->model, ENTITY_box, key);

    box->width = inches(dice, 14, 80);
    box->height = inches(dice, 12, 60);
    if (box->frame == FRAME_LADDER)
        box->depth = inches(dice, 2, 5);
    else if (box->frame != FRAME_BOARD)
        box->depth = inches(dice, 12, 32);
    box->stick_set = dice_between(dice, 0, SET_COUNT - 1);
    box->through = dice_between(dice, 0, THROUGH_COUNT - 1);
    return key;
}

static void chance_facings(struct work_bench *bench, struct dice *dice, int64_t key)
{
    const struct box *box = MODEL_FIND(&bench->model, box, key);
    int64_t frame = box->frame;

    if (frame == FRAME_BOARD)
        work_facing(bench, key, SIDE_FRONT);
    for (int64_t side = 0; side < SIDE_COUNT && frame != FRAME_BOARD && frame != FRAME_CUSHION;
         side++) {
        struct facing *facing;

        if (!one_in(dice, side == SIDE_FRONT ? 1 : 3))
            continue;
        facing = model_find(&bench->model, ENTITY_facing, work_facing(bench, key, side));
        facing->use = dice_between(dice, 0, USE_COUNT - 1);
        facing->glued = dice_between(dice, 0, 1);
        facing->loose = one_in(dice, 10);
        if (side == SIDE_TOP && one_in(dice, 3))
            facing->kind = FACING_WEBBING;
    }
}

/* ---- layers ---- */

static struct layer *chance_layer(struct work_bench *bench, int64_t box, int64_t kind, int64_t side)
{
    static const int64_t rank[LAYER_COUNT] = {
        [LAYER_FOAM] = 1, [LAYER_BATTING] = 2,      [LAYER_LINING] = 3,     [LAYER_COVER] = 4,
        [LAYER_WELT] = 5, [LAYER_OUTSIDE_BACK] = 6, [LAYER_DUST_COVER] = 7, [LAYER_TRIM] = 8};

    return model_find(&bench->model, ENTITY_layer, work_layer(bench, box, kind, side, rank[kind]));
}

static int64_t chance_ending(struct dice *dice)
{
    static const int64_t endings[] = {ENDING_WRAP, ENDING_WRAP, ENDING_SIDE, ENDING_STOP};

    return endings[dice_between(dice, 0, 3)];
}

static void chance_cover(struct work_bench *bench, struct dice *dice, int64_t box, int64_t side)
{
    struct layer *cover = chance_layer(bench, box, LAYER_COVER, side);
    int64_t key = cover->key;

    cover->left = chance_ending(dice);
    cover->right = chance_ending(dice);
    cover->top = chance_ending(dice);
    cover->bottom = chance_ending(dice);
    cover->both = one_in(dice, 8);
    if (one_in(dice, 6))
        cover->shape = SHAPE_SEWN;
    if (one_in(dice, 8)) {
        struct tufting *tufting = MODEL_ADD(&bench->model, tufting);

        tufting->layer = key;
        tufting->across = dice_between(dice, 1, 5);
        tufting->down = dice_between(dice, 1, 4);
    }
}

static void chance_cushion(struct work_bench *bench, struct dice *dice, int64_t box)
{
    struct layer *cover;

    chance_layer(bench, box, LAYER_FOAM, SIDE_TOP);
    if (one_in(dice, 2))
        chance_layer(bench, box, LAYER_BATTING, SIDE_TOP);
    cover = chance_layer(bench, box, LAYER_COVER, SIDE_TOP);
    cover->shape = SHAPE_SEWN;
    cover->left = cover->right = cover->top = cover->bottom = ENDING_SEWN;
    if (one_in(dice, 2))
        cover->bottom = ENDING_OPEN;
}

static void chance_layers(struct work_bench *bench, struct dice *dice, int64_t box)
{
    int64_t side = one_in(dice, 4) ? SIDE_TOP : SIDE_FRONT;

    if (!one_in(dice, 4))
        chance_layer(bench, box, LAYER_FOAM, side)->both = one_in(dice, 8);
    if (!one_in(dice, 4))
        chance_layer(bench, box, LAYER_BATTING, side);
    if (one_in(dice, 6))
        chance_layer(bench, box, LAYER_FOAM, side);
    if (one_in(dice, 6))
        chance_layer(bench, box, LAYER_BATTING, side);
    if (one_in(dice, 4))
        chance_layer(bench, box, LAYER_LINING, one_in(dice, 2) ? side : SIDE_BACK);
    if (!one_in(dice, 4))
        chance_cover(bench, dice, box, side);
    if (one_in(dice, 8))
        chance_layer(bench, box, LAYER_WELT, side)->shape = SHAPE_RUN;
    if (one_in(dice, 3))
        chance_layer(bench, box, LAYER_OUTSIDE_BACK, SIDE_BACK);
    if (one_in(dice, 3))
        chance_layer(bench, box, LAYER_DUST_COVER, SIDE_BOTTOM);
    if (one_in(dice, 8))
        chance_layer(bench, box, LAYER_TRIM, side)->shape = SHAPE_RUN;
}

static void chance_group(struct work_bench *bench, struct dice *dice)
{
    static const int64_t kinds[] = {LAYER_FOAM, LAYER_BATTING, LAYER_COVER, LAYER_OUTSIDE_BACK};
    struct group *group = MODEL_ADD(&bench->model, group);
    int64_t key = group->key;
    struct layer *layer;

    group->name = "all";
    for (size_t i = 0; i < 2; i++) {
        struct group_box *in = MODEL_ADD(&bench->model, group_box);

        in->group = key;
        in->box = bench->model.boxes.at[i].key;
    }
    layer = chance_layer(bench, 0, kinds[dice_between(dice, 0, 3)],
                         one_in(dice, 2) ? SIDE_FRONT : SIDE_BACK);
    layer->group = key;
}

/* ---- joins ---- */

static int64_t chance_fastener(struct dice *dice)
{
    static const int64_t fasteners[] = {FASTENER_SCREW, FASTENER_SCREW, FASTENER_SCREW,
                                        FASTENER_SCREW, FASTENER_BOLT,  FASTENER_REST};

    return fasteners[dice_between(dice, 0, 5)];
}

static void chance_join(struct work_bench *bench, struct dice *dice, const char *name, int64_t a,
                        int64_t b)
{
    static const int64_t sides[][2] = {{SIDE_RIGHT, SIDE_LEFT}, {SIDE_RIGHT, SIDE_LEFT},
                                       {SIDE_TOP, SIDE_BOTTOM}, {SIDE_FRONT, SIDE_BACK},
                                       {SIDE_BACK, SIDE_FRONT}, {SIDE_FRONT, SIDE_LEFT}};
    const int64_t *side = sides[dice_between(dice, 0, 5)];
    int64_t key = work_join(bench, name, a, b, dice_between(dice, PLACE_BENCH, PLACE_SITE));
    struct join *join = model_find(&bench->model, ENTITY_join, key);

    join->side_a = side[0];
    join->side_b = side[1];
    join->fastener = chance_fastener(dice);
    join->head = dice_between(dice, 0, HEAD_COUNT - 1);
    join->treatment = dice_between(dice, 0, TREATMENT_COUNT - 1);
    join->optional = one_in(dice, 6);
    if (join->optional && one_in(dice, 2))
        MODEL_ADD(&bench->model, left_out)->join = key;
}

static void chance_bed(struct work_bench *bench, struct join *join)
{
    struct object *bed = MODEL_ADD(&bench->model, object);

    bed->kind = OBJECT_BED_FRAME;
    join->target = TARGET_OBJECT;
    join->object = bed->key;
    join->side_a = SIDE_BACK;
}

static void chance_wall(struct work_bench *bench, struct dice *dice, int64_t box)
{
    struct join *join =
        model_find(&bench->model, ENTITY_join, work_join(bench, "W", box, 0, PLACE_SITE));

    if (one_in(dice, 4)) {
        chance_bed(bench, join);
        return;
    }
    MODEL_ADD(&bench->model, wall)->side = SIDE_BACK;
    join->target = one_in(dice, 3) ? TARGET_FLOOR : TARGET_WALL;
    join->side_a = join->target == TARGET_FLOOR ? SIDE_BOTTOM : SIDE_BACK;
    join->side_b = 0;
    join->fastener = chance_fastener(dice);
}

/* ---- all ---- */

static void chance_shop(struct work_bench *bench, struct dice *dice)
{
    struct workshop *workshop = &bench->model.workshop;

    bench->model.build.name = "by chance";
    bench->model.build.units = dice_between(dice, 0, UNITS_WORD_COUNT - 1);
    workshop->helper = dice_between(dice, 0, 1);
    workshop->skill = 250000 * dice_between(dice, 2, 12);
    workshop->session = 30000 * dice_between(dice, 1, 10);
    for (size_t i = 0; i < bench->model.stocks.count; i++)
        if (bench->model.stocks.at[i].key == bench->foam)
            bench->model.stocks.at[i].width = LENGTH_INCH * 24;
}

void work_chance(struct work_bench *bench, struct dice *dice)
{
    static const char *const names[] = {"A", "B", "C", "D", "E", "F"};
    static const char *const joins[] = {"JA", "JB", "JC", "JD", "JE", "JF"};
    int64_t count = dice_between(dice, 1, 6);
    int64_t last = 0;

    chance_shop(bench, dice);
    for (int64_t i = 0; i < count; i++) {
        int64_t box = chance_box(bench, dice, names[i]);

        chance_facings(bench, dice, box);
        if (MODEL_FIND(&bench->model, box, box)->frame == FRAME_CUSHION)
            chance_cushion(bench, dice, box);
        else
            chance_layers(bench, dice, box);
        if (one_in(dice, 2))
            work_fitting(bench, box, dice_between(dice, 0, FITTING_COUNT - 1));
        if (last && !one_in(dice, 6))
            chance_join(bench, dice, joins[i], last, box);
        last = box;
    }
    if (one_in(dice, 6))
        chance_wall(bench, dice, last);
    if (count > 1 && one_in(dice, 6))
        chance_group(bench, dice);
    assert_int_equal(model_check(&bench->model, NULL, NULL), 0);
}

void work_builds(uint64_t seed, work_check *check)
{
    struct dice dice = {seed};

    for (int i = 0; i < BUILDS; i++) {
        struct work_bench bench;

        work_begin(&bench);
        work_chance(&bench, &dice);
        work_plan(&bench);
        check(&bench, &dice);
        work_end(&bench);
    }
}
