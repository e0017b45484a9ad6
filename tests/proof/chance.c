#include "chance.h"
#include "sanitized.h"
#include "stand.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define BOXES 12
#define JOINS 30

static bool one_in(struct dice *dice, int64_t count)
{
    return dice_between(dice, 1, count) == 1;
}

static int64_t inches(struct dice *dice, int64_t least, int64_t most)
{
    return LENGTH_INCH / 4 * dice_between(dice, 4 * least, 4 * most);
}

static int64_t one_of(struct dice *dice, const int64_t *values, size_t count)
{
    return values[dice_between(dice, 0, (int64_t)count - 1)];
}

#define ONE_OF(dice, values) one_of((dice), (values), sizeof(values) / sizeof *(values))

/* ---- boxes ---- */

static void size_box(struct box *box, struct dice *dice)
{
    box->width = inches(dice, 10, 90);
    box->height = inches(dice, 8, 64);
    box->depth = box->frame == FRAME_LADDER  ? inches(dice, 2, 6)
                 : box->frame == FRAME_BOARD ? LENGTH_INCH / 2
                                             : inches(dice, 8, 36);
    box->stick_set = dice_between(dice, 0, SET_COUNT - 1);
    box->through = dice_between(dice, 0, THROUGH_COUNT - 1);
    box->main_side = one_in(dice, 4) ? SIDE_TOP : SIDE_FRONT;
    box->outline = one_in(dice, 8) ? dice_between(dice, OUTLINE_ARCH, OUTLINE_SLOPE) : 0;
    box->rise = box->outline ? inches(dice, 1, 4) : 0;
}

static int64_t add_box(struct work_bench *bench, struct dice *dice, size_t nth)
{
    static const int64_t frames[] = {FRAME_LADDER, FRAME_LADDER, FRAME_LADDER, FRAME_CRATE,
                                     FRAME_CRATE,  FRAME_CRATE,  FRAME_BOARD,  FRAME_CUSHION};
    char name[2] = {(char)('A' + (int)nth), '\0'};
    int64_t key = work_box(bench, arena_text(&bench->facts, name), ONE_OF(dice, frames));
    struct box *box = model_find(&bench->model, ENTITY_box, key);

    size_box(box, dice);
    if (box->frame == FRAME_BOARD)
        box->stick = 0;
    return key;
}

static void add_facings(struct work_bench *bench, struct dice *dice, int64_t key)
{
    int64_t frame = MODEL_FIND(&bench->model, box, key)->frame;

    if (frame == FRAME_BOARD)
        work_facing(bench, key, SIDE_FRONT);
    for (int64_t side = 0; side < SIDE_COUNT && frame != FRAME_BOARD && frame != FRAME_CUSHION;
         side++) {
        struct facing *facing;

        if (!one_in(dice, side == SIDE_FRONT ? 2 : 5))
            continue;
        facing = model_find(&bench->model, ENTITY_facing, work_facing(bench, key, side));
        facing->use = dice_between(dice, 0, USE_COUNT - 1);
        facing->glued = dice_between(dice, 0, 1);
        facing->loose = one_in(dice, 8);
        if (side == SIDE_TOP && one_in(dice, 4))
            facing->kind = FACING_WEBBING;
    }
}

static void add_fittings(struct work_bench *bench, struct dice *dice, int64_t box)
{
    static const int64_t sides[] = {SIDE_BOTTOM, SIDE_BOTTOM, SIDE_BACK, SIDE_TOP};

    for (int64_t i = dice_between(dice, 0, 4) - 2; i > 0; i--) {
        int64_t key = work_fitting(bench, box, dice_between(dice, 0, FITTING_COUNT - 1));
        struct fitting *fitting = model_find(&bench->model, ENTITY_fitting, key);

        fitting->side = ONE_OF(dice, sides);
        fitting->u = inches(dice, 1, 8);
        fitting->v = inches(dice, 1, 8);
    }
}

/* ---- layers ---- */

static int64_t add_layer(struct work_bench *bench, struct dice *dice, int64_t box, int64_t kind,
                         int64_t side)
{
    static const int64_t rank[LAYER_COUNT] = {
        [LAYER_FOAM] = 1, [LAYER_BATTING] = 2,      [LAYER_LINING] = 3,     [LAYER_COVER] = 4,
        [LAYER_WELT] = 5, [LAYER_OUTSIDE_BACK] = 6, [LAYER_DUST_COVER] = 7, [LAYER_TRIM] = 8};
    int64_t key = work_layer(bench, box, kind, side, rank[kind]);

    (void)dice;
    return key;
}

static void end_layer(struct layer *layer, struct dice *dice)
{
    static const int64_t endings[] = {ENDING_WRAP, ENDING_WRAP, ENDING_SIDE, ENDING_STOP};
    static const int64_t sewn[] = {ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN};
    bool is_sewn = layer->shape == SHAPE_SEWN;

    layer->left = is_sewn ? ONE_OF(dice, sewn) : ONE_OF(dice, endings);
    layer->right = is_sewn ? ONE_OF(dice, sewn) : ONE_OF(dice, endings);
    layer->top = is_sewn ? ONE_OF(dice, sewn) : ONE_OF(dice, endings);
    layer->bottom = is_sewn ? ENDING_OPEN : ONE_OF(dice, endings);
}

static void add_opening(struct work_bench *bench, struct dice *dice, int64_t layer)
{
    struct opening *opening = MODEL_ADD(&bench->model, opening);

    opening->layer = layer;
    opening->edge = dice_between(dice, 0, EDGE_COUNT - 1);
    opening->begin = inches(dice, 1, 10);
    opening->length = inches(dice, 4, 10);
}

static void add_layer_edge(struct work_bench *bench, struct dice *dice, int64_t layer)
{
    struct layer_edge *edge = MODEL_ADD(&bench->model, layer_edge);

    edge->layer = layer;
    edge->edge = dice_between(dice, 0, EDGE_COUNT - 1);
    edge->landing = one_in(dice, 2) ? LENGTH_INCH : 0;
    edge->pitch = one_in(dice, 2) ? LENGTH_INCH * 2 : 0;
}

static void add_cover(struct work_bench *bench, struct dice *dice, int64_t box, int64_t side)
{
    static const int64_t shapes[] = {SHAPE_WRAPPED, SHAPE_WRAPPED, SHAPE_WRAPPED, SHAPE_SEWN,
                                     SHAPE_FLAT};
    int64_t key = add_layer(bench, dice, box, LAYER_COVER, side);
    struct layer *cover = model_find(&bench->model, ENTITY_layer, key);

    cover->shape = ONE_OF(dice, shapes);
    cover->both = one_in(dice, 8);
    cover->fixing = dice_between(dice, 0, FIXING_COUNT - 1);
    end_layer(cover, dice);
    if (one_in(dice, 10))
        add_opening(bench, dice, key);
    if (one_in(dice, 8))
        add_layer_edge(bench, dice, key);
    if (one_in(dice, 8)) {
        struct tufting *tufting = MODEL_ADD(&bench->model, tufting);

        tufting->layer = key;
        tufting->across = dice_between(dice, 1, 5);
        tufting->down = dice_between(dice, 1, 4);
        tufting->pattern = dice_between(dice, 0, PATTERN_COUNT - 1);
    }
}

static void add_cushion(struct work_bench *bench, struct dice *dice, int64_t box)
{
    int64_t key;
    struct layer *cover;

    add_layer(bench, dice, box, LAYER_FOAM, SIDE_TOP);
    if (one_in(dice, 2))
        add_layer(bench, dice, box, LAYER_BATTING, SIDE_TOP);
    key = add_layer(bench, dice, box, LAYER_COVER, SIDE_TOP);
    cover = model_find(&bench->model, ENTITY_layer, key);
    cover->shape = SHAPE_SEWN;
    cover->left = cover->right = cover->top = cover->bottom = ENDING_SEWN;
}

static void add_layers(struct work_bench *bench, struct dice *dice, int64_t box)
{
    int64_t side = MODEL_FIND(&bench->model, box, box)->main_side;

    if (one_in(dice, 2))
        add_layer(bench, dice, box, LAYER_FOAM, side);
    if (one_in(dice, 2)) {
        int64_t key = add_layer(bench, dice, box, LAYER_BATTING, side);

        if (one_in(dice, 2))
            end_layer(model_find(&bench->model, ENTITY_layer, key), dice);
    }
    if (one_in(dice, 4))
        add_layer(bench, dice, box, LAYER_LINING, one_in(dice, 2) ? side : SIDE_BACK);
    if (!one_in(dice, 3))
        add_cover(bench, dice, box, side);
    if (one_in(dice, 10))
        add_layer(bench, dice, box, LAYER_WELT, side);
    if (one_in(dice, 4))
        add_layer(bench, dice, box, LAYER_OUTSIDE_BACK, SIDE_BACK);
    if (one_in(dice, 4))
        add_layer(bench, dice, box, LAYER_DUST_COVER, SIDE_BOTTOM);
    if (one_in(dice, 10))
        add_layer(bench, dice, box, LAYER_TRIM, side);
    for (size_t i = 0; i < bench->model.layers.count; i++) {
        struct layer *layer = &bench->model.layers.at[i];

        if (layer->kind == LAYER_WELT || layer->kind == LAYER_TRIM)
            layer->shape = SHAPE_RUN;
    }
}

/* ---- joins ---- */

static const int64_t fasteners[] = {FASTENER_SCREW, FASTENER_SCREW, FASTENER_SCREW,
                                    FASTENER_SCREW, FASTENER_BOLT,  FASTENER_REST};

static struct join *add_join(struct work_bench *bench, struct dice *dice, int64_t a, int64_t b)
{
    char name[8];
    int64_t key;
    struct join *join;

    snprintf(name, sizeof name, "J%zu", bench->model.joins.count + 1);
    key = work_join(bench, arena_text(&bench->facts, name), a, b,
                    dice_between(dice, PLACE_BENCH, PLACE_SITE));
    join = model_find(&bench->model, ENTITY_join, key);
    join->fastener = ONE_OF(dice, fasteners);
    join->head = dice_between(dice, 0, HEAD_COUNT - 1);
    join->treatment = dice_between(dice, 0, TREATMENT_COUNT - 1);
    join->optional = one_in(dice, 8);
    return join;
}

static struct join *add_box_join(struct work_bench *bench, struct dice *dice, int64_t a, int64_t b)
{
    struct join *join = add_join(bench, dice, a, b);
    int64_t key = join->key;

    if (one_in(dice, 6))
        join->count = dice_between(dice, 1, 6);
    if (join->optional && one_in(dice, 2))
        MODEL_ADD(&bench->model, left_out)->join = key;
    return join;
}

static void join_boxes(struct work_bench *bench, struct dice *dice, int64_t a, int64_t b)
{
    static const int64_t sides[][2] = {{SIDE_RIGHT, SIDE_LEFT}, {SIDE_RIGHT, SIDE_LEFT},
                                       {SIDE_LEFT, SIDE_RIGHT}, {SIDE_TOP, SIDE_BOTTOM},
                                       {SIDE_FRONT, SIDE_BACK}, {SIDE_BACK, SIDE_FRONT},
                                       {SIDE_FRONT, SIDE_LEFT}, {SIDE_RIGHT, SIDE_BACK}};
    const int64_t *pair = sides[dice_between(dice, 0, 7)];
    struct join *join = add_box_join(bench, dice, a, b);

    join->side_a = pair[0];
    join->side_b = pair[1];
    if (one_in(dice, 4))
        join->offset_u = inches(dice, 1, 8);
    if (one_in(dice, 4))
        join->offset_v = inches(dice, 1, 8);
}

static void join_to_room(struct work_bench *bench, struct dice *dice, int64_t box)
{
    struct join *join = add_join(bench, dice, box, 0);

    join->place = PLACE_SITE;
    join->target = one_in(dice, 3) ? TARGET_FLOOR : TARGET_WALL;
    join->side_a = join->target == TARGET_FLOOR ? SIDE_BOTTOM : SIDE_BACK;
    join->side_b = 0;
}

/* Anyhow: most of such boxes stand in each other, and all that the passes make of that is looked at
 * as well. */
static void join_anyhow(struct work_bench *bench, struct dice *dice)
{
    size_t count = bench->model.boxes.count;
    size_t more = count > 1 ? (size_t)dice_between(dice, 0, (int64_t)count) / 3 : 0;

    for (size_t i = 1; i < count; i++)
        if (!one_in(dice, 10))
            join_boxes(bench, dice,
                       bench->model.boxes.at[dice_between(dice, 0, (int64_t)i - 1)].key,
                       bench->model.boxes.at[i].key);
    for (size_t i = 0; i < more && bench->model.joins.count < JOINS; i++) {
        int64_t a = dice_between(dice, 0, (int64_t)count - 2);

        join_boxes(bench, dice, bench->model.boxes.at[a].key, bench->model.boxes.at[a + 1].key);
    }
}

static void calm_joins(struct work_bench *bench)
{
    for (size_t i = 0; i < bench->model.joins.count; i++) {
        struct join *join = &bench->model.joins.at[i];

        join->fastener = FASTENER_SCREW;
        join->head = HEAD_FREE;
        join->treatment = TREATMENT_OPEN;
        join->count = 0;
    }
}

static void join_all(struct work_bench *bench, struct dice *dice, bool calm)
{
    if (!calm && one_in(dice, 5))
        join_anyhow(bench, dice);
    else
        stand_all(bench, dice, JOINS, add_box_join);
    if (calm)
        calm_joins(bench);
    if (one_in(dice, 4))
        join_to_room(bench, dice, bench->model.boxes.at[0].key);
}

static void add_group(struct work_bench *bench, struct dice *dice)
{
    static const int64_t kinds[] = {LAYER_BATTING, LAYER_COVER, LAYER_OUTSIDE_BACK};
    struct group *group = MODEL_ADD(&bench->model, group);
    int64_t key = group->key;
    int64_t layer;

    group->name = "pair";
    for (size_t i = 0; i < 2; i++) {
        struct group_box *in = MODEL_ADD(&bench->model, group_box);

        in->group = key;
        in->box = bench->model.boxes.at[i].key;
    }
    layer =
        add_layer(bench, dice, 0, ONE_OF(dice, kinds), one_in(dice, 2) ? SIDE_FRONT : SIDE_BACK);
    ((struct layer *)model_find(&bench->model, ENTITY_layer, layer))->group = key;
}

/* ---- all ---- */

static void add_room(struct work_bench *bench, struct dice *dice)
{
    static const int64_t sides[] = {SIDE_BACK, SIDE_LEFT, SIDE_RIGHT};

    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
        if (one_in(dice, 4)) {
            struct wall *wall = MODEL_ADD(&bench->model, wall);

            wall->side = sides[i];
            wall->gap = one_in(dice, 2) ? 0 : inches(dice, 1, 40);
        }
    if (one_in(dice, 3)) {
        struct passage *door = MODEL_ADD(&bench->model, passage);

        door->kind = PASSAGE_DOOR;
        door->width = inches(dice, 26, 36);
        door->height = inches(dice, 76, 82);
    }
}

/* What most makers build: frames large enough for their sticks, as high as each other, and joins
 * that leave the choice to the program. Far more of these can be made as they are. */
static void calm_box(struct work_bench *bench, struct dice *dice, struct box *box)
{
    box->stick = bench->stick;
    box->frame = one_in(dice, 3) ? FRAME_CRATE : FRAME_LADDER;
    box->stick_set = box->through = box->outline = box->rise = 0;
    box->main_side = SIDE_FRONT;
    box->width = inches(dice, 16, 40);
    box->depth = box->frame == FRAME_CRATE ? inches(dice, 14, 24) : inches(dice, 3, 5);
    box->height = LENGTH_INCH * 30;
}

static void make(struct work_bench *bench, struct dice *dice)
{
    bool calm = one_in(dice, 3);
    int64_t count = calm              ? dice_between(dice, 2, 4)
                    : one_in(dice, 4) ? dice_between(dice, 5, BOXES)
                                      : dice_between(dice, 1, 5);

    bench->model.build.name = "by chance";
    bench->model.build.units = dice_between(dice, 0, UNITS_WORD_COUNT - 1);
    for (int64_t i = 0; i < count; i++) {
        int64_t box = add_box(bench, dice, (size_t)i);

        if (calm)
            calm_box(bench, dice, model_find(&bench->model, ENTITY_box, box));
        add_facings(bench, dice, box);
        if (MODEL_FIND(&bench->model, box, box)->frame == FRAME_CUSHION)
            add_cushion(bench, dice, box);
        else
            add_layers(bench, dice, box);
        add_fittings(bench, dice, box);
    }
    join_all(bench, dice, calm);
    if (bench->model.boxes.count > 1 && one_in(dice, 6))
        add_group(bench, dice);
    add_room(bench, dice);
}

void chance_build(struct work_bench *bench, uint64_t seed)
{
    struct dice dice = {seed};

    work_begin(bench);
    make(bench, &dice);
    assert_int_equal(model_check(&bench->model, NULL, NULL), 0);
    work_plan(bench);
}

/* ---- shrinking ---- */

static void take_over(struct work_bench *bench, const struct model *model)
{
    memset(bench, 0, sizeof *bench);
    arena_init(&bench->facts);
    arena_init(&bench->made);
    if (setjmp(bench->escape))
        fail_msg("out of memory");
    bench->facts.escape = &bench->escape;
    model_copy(&bench->model, model, &bench->facts);
}

/* Whether the build still fails without an item; it is then left out for good. */
static bool does_without(struct work_bench *bench, enum entity_kind kind, int64_t key,
                         chance_check *check)
{
    struct work_bench smaller;

    take_over(&smaller, &bench->model);
    model_remove(&smaller.model, kind, key);
    work_plan(&smaller);
    if (!check(&smaller)) {
        work_end(&smaller);
        return false;
    }
    struct work_bench larger = *bench;
    take_over(bench, &smaller.model);
    work_plan(bench);
    work_end(&smaller);
    work_end(&larger);
    return true;
}

static void shrink(struct work_bench *bench, chance_check *check)
{
    static const enum entity_kind kinds[] = {ENTITY_box,     ENTITY_join,    ENTITY_layer,
                                             ENTITY_facing,  ENTITY_fitting, ENTITY_wall,
                                             ENTITY_passage, ENTITY_opening, ENTITY_layer_edge,
                                             ENTITY_tufting, ENTITY_left_out};

    for (bool some = true; some;) {
        some = false;
        for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
            for (size_t j = model_count(&bench->model, kinds[i]); j-- > 0;)
                if (j < model_count(&bench->model, kinds[i]) &&
                    does_without(bench, kinds[i],
                                 item_key(model_at_const(&bench->model, kinds[i], j)), check))
                    some = true;
    }
}

/* ---- telling ---- */

static void tell_item(const struct model *model, const struct entity *entity, const void *item)
{
    struct text line;

    text_init(&line);
    text_format(&line, "  %s %d:", entity->name, (int)item_key(item));
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];
        struct text value;

        if (!field_is_text(field) && field_whole(field, item) == field->standard)
            continue;
        text_init(&value);
        field_write(field, model, item, &value);
        if (*text_string(&value))
            text_format(&line, " %s=%s", field->name, text_string(&value));
        text_release(&value);
    }
    print_message("%s\n", text_string(&line));
    text_release(&line);
}

static void tell_build(const struct work_bench *bench)
{
    for (enum entity_kind kind = 0; kind < ENTITY_COUNT; kind++)
        for (size_t i = 0; !entity_of(kind)->in_shop && i < model_count(&bench->model, kind); i++)
            tell_item(&bench->model, entity_of(kind), model_at_const(&bench->model, kind, i));
    for (size_t i = 0; i < bench->plan->steps.count; i++)
        print_message("%s%s", i ? " " : "  steps: ", bench->plan->steps.at[i].name);
    print_message("\n");
    for (size_t i = 0; i < bench->plan->findings.count; i++) {
        struct text text;

        if (plan_finding_severity(&bench->plan->findings.at[i]) != SEVERITY_STOP)
            continue;
        text_init(&text);
        plan_finding_text(bench->plan, &bench->plan->findings.at[i], &text);
        print_message("  stop: %s\n", text_string(&text));
        text_release(&text);
    }
}

void chance_check_all(uint64_t first_seed, size_t count, chance_check *check)
{
    const char *only = getenv("STUFFOVER_SEED");

    if (only) {
        first_seed = strtoull(only, NULL, 10);
        count = 1;
    }
    for (uint64_t seed = first_seed; seed < first_seed + count; seed++) {
        struct work_bench bench;
        const char *wrong;

        chance_build(&bench, seed);
        wrong = check(&bench);
        if (wrong) {
            shrink(&bench, check);
            tell_build(&bench);
            fail_msg("seed %llu: %s", (unsigned long long)seed, check(&bench));
        }
        work_end(&bench);
    }
}

size_t chance_count(size_t usual, size_t most)
{
    const char *given = getenv("STUFFOVER_LONG");

    return given && *given ? most : UNLESS_SANITIZED(usual, usual / 8);
}
