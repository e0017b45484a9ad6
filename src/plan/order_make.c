/*
 * Which steps a build has: a step for each thing that needs it and no other, and the touches by
 * which relations find it.
 */
#include "plan/order.h"

#include "plan/buy.h"
#include "plan/geometry.h"
#include "plan/point.h"

#include <assert.h>
#include <stdlib.h>

void order_touch(struct ordering *ordering, enum touch_kind of, int64_t key)
{
    struct touch *added;
    size_t work = ordering->works.count - 1;

    assert(ordering->works.count > 0);
    if (!key && of != TOUCH_BUILD)
        return;
    added = LIST_ADD(ordering->planning->arena, &ordering->touches);
    *added = (struct touch){of, key, ordering->works.at[work].step.kind, work};
}

/* ---- one work ---- */

static bool made_in_room(const struct work *work)
{
    enum step_where where = step_kinds[work->step.kind].where;

    return where == WHERE_ROOM ||
           (where == WHERE_JOINED && work->of_join && work->of_join->place == PLACE_SITE);
}

void order_add(struct ordering *ordering, struct work work, int64_t key, int64_t nth)
{
    struct work *added = LIST_ADD(ordering->planning->arena, &ordering->works);
    const struct step_kind *kind = &step_kinds[work.step.kind];

    work.step.phase = kind->phase;
    work.step.hold = kind->hold;
    work.step.people = 1;
    work.step.because = work.step.unusual = work.step.closes = work.step.caution = "";
    work.step.crew = "";
    work.in_room = made_in_room(&work);
    order_name(ordering->planning->plan, &work, key, nth);
    *added = work;
    order_touch(ordering, TOUCH_BUILD, 0);
}

static void add_work(struct ordering *ordering, struct work work, int64_t key)
{
    order_add(ordering, work, key, 0);
}

static void add_build(struct ordering *ordering, int kind)
{
    add_work(ordering, (struct work){.step.kind = kind}, 0);
}

static void add_box(struct ordering *ordering, int kind, int64_t box)
{
    add_work(ordering, (struct work){.step = {.kind = kind, .box = box}}, box);
    order_touch(ordering, TOUCH_BOX, box);
}

static void add_stock(struct ordering *ordering, int kind, int64_t stock)
{
    add_work(ordering, (struct work){.step.kind = kind, .stock = stock}, stock);
    order_touch(ordering, TOUCH_STOCK, stock);
}

static void add_join(struct ordering *ordering, int kind, const struct join *join)
{
    struct work work = {.step = {.kind = kind, .box = join->box_a, .join = join->key},
                        .of_join = join};

    add_work(ordering, work, join->key);
    order_touch(ordering, TOUCH_JOIN, join->key);
    order_touch(ordering, TOUCH_BOX, join->box_a);
    if (join->target == TARGET_BOX && join->box_b != join->box_a)
        order_touch(ordering, TOUCH_BOX, join->box_b);
}

static void touch_layer(struct ordering *ordering, const struct layer *layer)
{
    const struct model *model = ordering->planning->model;

    order_touch(ordering, TOUCH_LAYER, layer->key);
    order_touch(ordering, TOUCH_STOCK, layer->stock);
    if (layer->thin)
        order_touch(ordering, TOUCH_STOCK, layer->thin);
    order_touch(ordering, TOUCH_BOX, layer->box);
    for (size_t i = 0; layer->group && i < model->group_boxes.count; i++)
        if (model->group_boxes.at[i].group == layer->group)
            order_touch(ordering, TOUCH_BOX, model->group_boxes.at[i].box);
}

static struct work layer_work(const struct ordering *ordering, int kind, const struct layer *layer)
{
    return (struct work){.step = {.kind = kind,
                                  .box = layer_box(ordering->planning->model, layer),
                                  .layer = layer->key},
                         .of_layer = layer,
                         .faces = layer_faces(layer)};
}

static void add_layer(struct ordering *ordering, int kind, const struct layer *layer)
{
    add_work(ordering, layer_work(ordering, kind, layer), layer->key);
    touch_layer(ordering, layer);
}

static void add_flap(struct ordering *ordering, const struct flap *flap, const struct layer *layer,
                     const struct join *join)
{
    struct work work = layer_work(ordering, STEP_FLAP, layer);

    work.step.join = join->key;
    work.of_join = join;
    work.flap = *flap;
    add_work(ordering, work, layer->key);
    touch_layer(ordering, layer);
    order_touch(ordering, TOUCH_JOIN, join->key);
}

static void add_facing(struct ordering *ordering, int kind, const struct facing *facing)
{
    struct work work = {
        .step = {.kind = kind, .box = facing->box, .facing = facing->key},
        .faces = 1u << facing->side,
        .late = counted_facing(ordering->planning, &ordering->counted, facing->key)->late};

    add_work(ordering, work, facing->key);
    order_touch(ordering, TOUCH_BOX, facing->box);
}

/* ---- the build ---- */

/* What a build has, that its own steps hang on. */
struct extent {
    bool wood, cloth, batting, moves, fixes, walls;
};

static struct extent build_extent(const struct model *model)
{
    struct extent extent = {.moves = model->passages.count > 0, .walls = model->walls.count > 0};

    for (size_t i = 0; i < model->boxes.count; i++)
        extent.wood |= model->boxes.at[i].frame != FRAME_CUSHION;
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct stock *stock = MODEL_FIND(model, stock, model->layers.at[i].stock);

        extent.batting |= model->layers.at[i].kind == LAYER_BATTING;
        extent.cloth |= stock && stock->kind == STOCK_CLOTH;
    }
    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (model_left_out(model, join->key))
            continue;
        extent.moves |= join_is_in_room(join);
        extent.fixes |= join_is_in_room(join);
        extent.walls |= !join_is_to_box(join);
    }
    return extent;
}

/* The side of a box that looks to a wall when the piece stands in its place. */
static bool looks_to(const struct plan *plan, int64_t box, int64_t side, int64_t wall)
{
    const struct pose *pose = plan_pose(plan, box);

    return pose && side_turned(wall, pose->turn) == side;
}

static bool drives_from(const struct planning *planning, int64_t wall)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        const struct join *join = MODEL_FIND(planning->model, join, junction->join);

        if (join_is_to_box(join) && join->place == PLACE_SITE && junction->point_count > 0 &&
            looks_to(plan, junction->head_box, junction->reach_side, wall))
            return true;
    }
    return false;
}

static bool staples_from(const struct planning *planning, int64_t wall)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];
        const struct edge *edge = &plan->edges.at[interval->edge];

        if (interval->pass == STAPLED_IN_ROOM &&
            looks_to(plan, edge->box, edge->landing_side, wall))
            return true;
    }
    return false;
}

/* What is done in the room from the side of a wall is done standing off it. */
static bool stands_off(const struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->walls.count; i++)
        if (drives_from(planning, model->walls.at[i].side) ||
            staples_from(planning, model->walls.at[i].side))
            return true;
    return false;
}

static void make_build(struct ordering *ordering)
{
    struct extent extent = build_extent(ordering->planning->model);
    const struct {
        bool wanted;
        int kind;
    } steps[] = {
        {true, STEP_DECIDE},
        {extent.moves, STEP_ROUTE},
        {true, STEP_CHECK},
        {true, STEP_SHELF},
        {true, STEP_BUY},
        {extent.wood, STEP_GAUGE},
        {extent.wood, STEP_LABEL},
        {extent.batting, STEP_UNROLL},
        {extent.cloth, STEP_INSPECT},
        {extent.cloth, STEP_CHALK},
        {extent.moves, STEP_MOVE},
        {extent.walls && extent.moves, STEP_MARK},
        {extent.fixes, STEP_SET},
        {extent.fixes && stands_off(ordering->planning), STEP_PUSH},
        {true, STEP_FINAL},
        {true, STEP_ACCOUNT},
    };

    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (steps[i].wanted)
            add_build(ordering, steps[i].kind);
}

/* ---- what is cut from each stock ---- */

static void use_stock(const struct model *model, bool *used, int64_t stock)
{
    used[model_index(model, ENTITY_stock, stock)] = true;
}

static bool *stocks_in_use(const struct ordering *ordering)
{
    const struct planning *planning = ordering->planning;
    const struct model *model = planning->model;
    bool *used = ARENA_MANY(planning->arena, bool, model->stocks.count + 1);

    for (size_t i = 0; i < model->boxes.count; i++)
        if (model->boxes.at[i].frame == FRAME_LADDER || model->boxes.at[i].frame == FRAME_CRATE)
            use_stock(model, used, model->boxes.at[i].stick);
    for (size_t i = 0; i < planning->plan->members.count; i++)
        use_stock(model, used, planning->plan->members.at[i].stock);
    for (size_t i = 0; i < model->facings.count; i++)
        use_stock(model, used, model->facings.at[i].stock);
    for (size_t i = 0; i < model->layers.count; i++)
        use_stock(model, used, model->layers.at[i].stock);
    for (size_t i = 0; i < model->fittings.count; i++)
        if (fitting_is_cut(model, &model->fittings.at[i]))
            use_stock(model, used, model->fittings.at[i].stock);
    return used;
}

static void make_cuts(struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;
    const bool *used = stocks_in_use(ordering);

    for (size_t i = 0; i < model->stocks.count; i++) {
        const struct stock *stock = &model->stocks.at[i];

        if (!used[i])
            continue;
        if (stock->kind == STOCK_STICK || stock->kind == STOCK_SHEET)
            add_stock(ordering, STEP_CUT, stock->key);
        else if (stock->kind == STOCK_CLOTH)
            add_stock(ordering, STEP_SHEAR, stock->key);
        else if (stock->kind == STOCK_FOAM)
            add_stock(ordering, STEP_SLICE, stock->key);
    }
}

/* ---- boxes ---- */

/* For each box of the model, one flag for each kind of step that its fittings and padding need. */
static bool (*box_wants(const struct ordering *ordering))[STEP_KINDS]
{
    const struct model *model = ordering->planning->model;
    bool(*wants)[STEP_KINDS] =
        arena_array(ordering->planning->arena, model->boxes.count + 1, sizeof *wants);

    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];
        bool *of_box = wants[model_index(model, ENTITY_box, fitting->box)];

        for (int kind = 0; kind < STEP_KINDS; kind++)
            of_box[kind] |= step_puts_on(kind, fitting->kind);
    }
    for (size_t i = 0; i < model->layers.count; i++)
        if (model->layers.at[i].kind == LAYER_FOAM || model->layers.at[i].kind == LAYER_BATTING)
            wants[model_index(model, ENTITY_box, layer_box(model, &model->layers.at[i]))]
                 [STEP_PADDED] = true;
    return wants;
}

static void make_boxes(struct ordering *ordering)
{
    static const int of_wood[] = {STEP_RECORD, STEP_EASE, STEP_BARE};
    const struct model *model = ordering->planning->model;
    bool(*wants)[STEP_KINDS] = box_wants(ordering);

    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *box = &model->boxes.at[i];
        bool framed = box->frame == FRAME_LADDER || box->frame == FRAME_CRATE ||
                      counted_box(ordering->planning, &ordering->counted, box->key)->members > 0;

        wants[i][STEP_FRAME] = framed && box->frame != FRAME_CUSHION;
        for (size_t j = 0; j < sizeof of_wood / sizeof *of_wood; j++)
            wants[i][of_wood[j]] = box->frame != FRAME_CUSHION;
        for (int kind = 0; kind < STEP_KINDS; kind++)
            if (wants[i][kind])
                add_box(ordering, kind, box->key);
    }
}

/* The panel of a board is the board: there is nothing to fix it to. */
static bool is_fixed_to_frame(const struct model *model, const struct facing *facing)
{
    const struct box *box = MODEL_FIND(model, box, facing->box);

    return box && box->frame != FRAME_BOARD;
}

static void make_facings(struct ordering *ordering)
{
    const struct planning *planning = ordering->planning;
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->facings.count; i++) {
        const struct facing *facing = &model->facings.at[i];

        if (counted_facing(planning, &ordering->counted, facing->key)->first == facing->key &&
            is_fixed_to_frame(model, facing))
            add_facing(ordering, facing->kind == FACING_PANEL ? STEP_PANEL : STEP_WEB, facing);
    }
}

/* ---- joins ---- */

static bool joins_to_bed(const struct model *model, const struct join *join)
{
    const struct object *object = MODEL_FIND(model, object, join->object);

    return join->target == TARGET_OBJECT && object && object->kind == OBJECT_BED_FRAME;
}

static bool has_bolts(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->bolts.count; i++)
        if (plan->points.at[plan->bolts.at[i].point].join == join)
            return true;
    return false;
}

static bool carries_fittings(const struct model *model, int64_t box)
{
    for (size_t i = 0; i < model->fittings.count; i++)
        if (model->fittings.at[i].box == box)
            return true;
    return false;
}

/* A lid or seat that only lies on its box needs no trial: it is set down, and lifted off again. One
 * with hinges, a stay or blocks that find its place is tried before anything soft is on it. */
static bool only_lies(const struct model *model, const struct join *join)
{
    int64_t upper = join->side_b == SIDE_BOTTOM   ? join->box_b
                    : join->side_a == SIDE_BOTTOM ? join->box_a
                                                  : 0;

    return upper && !carries_fittings(model, upper);
}

struct kinds {
    const int *at; /* enum step_kind */
    size_t count;
};

static struct kinds kinds_of_join(const struct model *model, const struct join *join)
{
    static const int to_box[] = {STEP_DRY,    STEP_DRILL, STEP_MAP,   STEP_PATCH,
                                 STEP_LOCATE, STEP_FIND,  STEP_OFFER, STEP_DRIVE};
    static const int laid_on[] = {STEP_DRY, STEP_OFFER};
    static const int set_down[] = {STEP_OFFER};
    static const int to_room[] = {STEP_DRILL, STEP_MAP, STEP_PATCH, STEP_FIX};
    static const int stood[] = {STEP_FIX};
    bool rests = join->fastener == FASTENER_REST;

#define KINDS(list) ((struct kinds){list, sizeof(list) / sizeof *(list)})
    if (!join_is_to_box(join))
        return rests ? KINDS(stood) : KINDS(to_room);
    if (rests)
        return only_lies(model, join) ? KINDS(set_down) : KINDS(laid_on);
    return KINDS(to_box);
#undef KINDS
}

static void make_join(struct ordering *ordering, const struct join *join)
{
    struct kinds kinds = kinds_of_join(ordering->planning->model, join);

    for (size_t i = 0; i < kinds.count; i++)
        add_join(ordering, kinds.at[i], join);
    if (has_bolts(ordering->planning->plan, join->key))
        add_join(ordering, STEP_NUTS, join);
    if (joins_to_bed(ordering->planning->model, join) && join->fastener != FASTENER_REST)
        add_join(ordering, STEP_BED, join);
}

static void make_joins(struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;

    for (size_t i = 0; i < model->joins.count; i++)
        if (!model_left_out(model, model->joins.at[i].key))
            make_join(ordering, &model->joins.at[i]);
}

/* ---- layers ---- */

/* With buttons: channels are stapled or sewn with the rest. */
static bool is_tufted(const struct model *model, int64_t layer)
{
    for (size_t i = 0; i < model->tuftings.count; i++)
        if (model->tuftings.at[i].layer == layer && model->tuftings.at[i].made == TUFTS_BUTTONS)
            return true;
    return false;
}

static void make_cover(struct ordering *ordering, const struct layer *layer)
{
    const struct planning *planning = ordering->planning;
    const struct layer_counted *counted = counted_layer(planning, &ordering->counted, layer->key);
    bool sewn = layer->shape == SHAPE_SEWN;
    bool stapled = layer_lies_on_wood(planning->model, layer) && !layer->slip;
    bool tufted = is_tufted(planning->model, layer->key);
    const struct {
        bool wanted;
        int kind;
    } steps[] = {
        {sewn || counted->seam > 0, STEP_SEW},
        {sewn, STEP_TRY},
        {tufted && stapled, STEP_TUFT},
        {stapled || sewn, STEP_COVER},
        {stapled, STEP_LOOK},
        {tufted, STEP_BUTTON},
        {stapled, STEP_STAPLE},
        {stapled && counted->corners > 0, STEP_CORNER},
        {stapled && counted->slits > 0, STEP_SLIT},
    };

    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (steps[i].wanted)
            add_layer(ordering, steps[i].kind, layer);
}

/* Cloth that is stapled on in one step is slit afterwards, where a joint shuts over it. */
static void make_slit(struct ordering *ordering, const struct layer *layer)
{
    if (counted_layer(ordering->planning, &ordering->counted, layer->key)->slits > 0)
        add_layer(ordering, STEP_SLIT, layer);
}

static void make_closer(struct ordering *ordering, int kind, const struct layer *layer)
{
    const struct layer_counted *counted =
        counted_layer(ordering->planning, &ordering->counted, layer->key);

    if (counted->seam > counted->by_seam[SEAM_BY_HAND]) /* stitches come when it is put on */
        add_layer(ordering, STEP_SEW, layer);
    add_layer(ordering, kind, layer);
    make_slit(ordering, layer);
}

static void make_plain(struct ordering *ordering, int kind, const struct layer *layer)
{
    add_layer(ordering, kind, layer);
    if (layer->kind == LAYER_LINING)
        make_slit(ordering, layer);
}

static void make_welt(struct ordering *ordering, const struct layer *layer)
{
    const struct layer_counted *counted =
        counted_layer(ordering->planning, &ordering->counted, layer->key);

    if (counted->seam > 0) /* one that is bought is ready */
        add_layer(ordering, STEP_SEW, layer);
    if (counted->edge > 0)
        add_layer(ordering, STEP_STAPLE, layer);
}

/* The one step that puts a layer on which needs no other. */
static int plain_step(int64_t kind)
{
    static const int steps[LAYER_COUNT] = {[LAYER_FOAM] = STEP_PAD,
                                           [LAYER_BATTING] = STEP_BATTING,
                                           [LAYER_TRIM] = STEP_TRIM,
                                           [LAYER_LINING] = STEP_LINING};

    assert(kind >= 0 && kind < LAYER_COUNT && steps[kind] != STEP_DECIDE);
    return steps[kind];
}

static void make_layer(struct ordering *ordering, const struct layer *layer)
{
    if (layer->kind == LAYER_COVER)
        make_cover(ordering, layer);
    else if (layer->kind == LAYER_WELT)
        make_welt(ordering, layer);
    else if (layer->kind == LAYER_DUST_COVER)
        make_closer(ordering, STEP_DUST, layer);
    else if (layer->kind == LAYER_OUTSIDE_BACK ||
             (layer->kind == LAYER_LINING &&
              !lining_is_under_cover(ordering->planning->model, layer)))
        make_closer(ordering, STEP_BACK, layer);
    else
        make_plain(ordering, plain_step(layer->kind), layer);
}

/* Only what is pulled on and stapled by its edges has flaps: a side that shuts waits whole. */
static bool has_flaps(const struct model *model, const struct layer *layer)
{
    return layer->kind == LAYER_COVER ||
           (layer->kind == LAYER_LINING && lining_is_under_cover(model, layer));
}

static void make_flaps(struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;

    for (size_t i = 0; i < ordering->flaps.count; i++) {
        const struct flap *flap = &ordering->flaps.at[i];
        const struct layer *layer = MODEL_FIND(model, layer, flap->layer);
        const struct join *join = MODEL_FIND(model, join, flap->join);

        if (layer && join && has_flaps(model, layer) && !model_left_out(model, join->key))
            add_flap(ordering, flap, layer, join);
    }
}

/* ---- all ---- */

static int compare_touches(const void *a, const void *b)
{
    const struct touch *left = a;
    const struct touch *right = b;

    if (left->of != right->of)
        return left->of < right->of ? -1 : 1;
    if (left->key != right->key)
        return left->key < right->key ? -1 : 1;
    if (left->kind != right->kind)
        return left->kind < right->kind ? -1 : 1;
    return (left->work > right->work) - (left->work < right->work);
}

void order_make(struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;

    if (model->boxes.count == 0)
        return;
    make_build(ordering);
    make_cuts(ordering);
    order_make_again(ordering);
    make_boxes(ordering);
    make_facings(ordering);
    make_joins(ordering);
    for (size_t i = 0; i < model->layers.count; i++)
        make_layer(ordering, &model->layers.at[i]);
    make_flaps(ordering);
    qsort(ordering->touches.at, ordering->touches.count, sizeof *ordering->touches.at,
          compare_touches);
}
