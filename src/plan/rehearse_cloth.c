/*
 * Cloth and padding as they go on.
 *
 * 1  A layer goes on once, cut and sewn, on wood that is there, with nothing over its place.
 * 2  An edge goes through its states once: unset, basted, left open or stapled, closed. What is
 *    left open is closed by its own step, after the join that it was left open for.
 * 3  Staples need a gun at the edge: no joined box over the strip that takes them, no outer layer
 *    stapled over it.
 */
#include "plan/rehearse_stage.h"

#include <assert.h>

#define SMOOTHING (STAGE_PADDING | 1u << LAYER_LINING | 1u << LAYER_COVER)

/* The layer that a step is about; the order makes such steps for layers of the build alone. */
static struct staged_layer *layer_of_step(const struct stage *stage, const struct step *step)
{
    struct staged_layer *layer = stage_layer(stage, step->layer);

    assert(layer);
    return layer;
}

static void lose_layer(struct stage *stage, const struct staged_layer *layer,
                       struct verdict verdict)
{
    stage_lose(stage, REHEARSED_LAYER, ENTITY_layer, layer->layer->key, PLAN_NONE, verdict);
}

static size_t index_of(const struct stage *stage, const struct staged_layer *layer)
{
    return (size_t)(layer - stage->layers);
}

/* ---- boxes that a layer lies on ---- */

static bool lies_on(const struct stage *stage, const struct layer *layer, int64_t box)
{
    if (layer->box)
        return layer->box == box;
    for (size_t i = 0; i < stage->model->group_boxes.count; i++)
        if (stage->model->group_boxes.at[i].group == layer->group &&
            stage->model->group_boxes.at[i].box == box)
            return true;
    return false;
}

/* One layer over several boxes needs them joined. */
static void check_group(struct stage *stage, const struct staged_layer *layer)
{
    for (size_t i = 0; layer->layer->group && i < stage->model->joins.count; i++) {
        const struct staged_join *join = &stage->joins[i];

        if (join->left_out || join->join->target != TARGET_BOX || join->driven != PLAN_NONE ||
            join->join->fastener == FASTENER_REST ||
            !lies_on(stage, layer->layer, join->join->box_a) ||
            !lies_on(stage, layer->layer, join->join->box_b))
            continue;
        lose_layer(
            stage, layer,
            stage_lapse_by(stage, LAPSE_NOT_BEFORE, ENTITY_join, join->join->key, PLAN_NONE));
    }
}

/* ---- what a layer is put on ---- */

static bool is_cut(const struct stage *stage, int64_t stock)
{
    size_t index = model_index(stage->model, ENTITY_stock, stock);
    const struct stock *of = MODEL_FIND(stage->model, stock, stock);
    bool is_sliced = of && (of->kind == STOCK_CLOTH || of->kind == STOCK_FOAM);

    return !is_sliced || stage->stocks[index] != PLAN_NONE;
}

/* All cloth that it is made of; what is no thin cloth of a stock that has gone counts as cut. */
static bool is_cut_out(const struct stage *stage, const struct layer *layer)
{
    return is_cut(stage, layer->stock) &&
           (layer->thin_height == 0 || layer->thin == 0 || is_cut(stage, layer->thin));
}

static void check_made(struct stage *stage, const struct staged_layer *layer)
{
    if (!is_cut_out(stage, layer->layer))
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_CUT));
    if (layer->to_be_sewn && !layer->sewn)
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_SEWN));
}

/* Panels and webbing of its own face; those that lie on by their weight too. */
static void check_ground(struct stage *stage, const struct staged_layer *layer)
{
    const struct layer *own = layer->layer;

    for (size_t i = 0; i < stage->model->facings.count; i++) {
        const struct facing *facing = &stage->model->facings.at[i];
        const struct staged_box *box = stage_box(stage, facing->box);
        bool on_face =
            facing->side == own->side || (own->both && facing->side == stage_opposite(own->side));

        if (on_face && lies_on(stage, own, facing->box) && stage->facings[i] == PLAN_NONE &&
            box->box->frame != FRAME_BOARD)
            lose_layer(stage, layer,
                       stage_lapse_by(stage, LAPSE_NO_WOOD, ENTITY_facing, facing->key, PLAN_NONE));
    }
}

static void check_frames(struct stage *stage, const struct staged_layer *layer)
{
    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        const struct staged_box *box = &stage->boxes[i];

        if (lies_on(stage, layer->layer, box->box->key) && box->framed == PLAN_NONE &&
            box->box->frame != FRAME_CUSHION && box->box->frame != FRAME_BOARD)
            lose_layer(stage, layer,
                       stage_lapse_by(stage, LAPSE_NO_WOOD, ENTITY_box, box->box->key, PLAN_NONE));
    }
}

/* ---- what is over it already ---- */

/* Of two covers in one rank of the stack neither is said to lie under the other. */
static bool stacks_on(const struct layer *outer, const struct layer *inner)
{
    return stage_is_outer(outer, inner) &&
           (outer->rank != inner->rank || outer->kind != inner->kind || outer->kind != LAYER_COVER);
}

/* Smoothing layers go on one over the other: what lies farther out shuts the place under it. */
static const struct sheet *outer_over(const struct stage *stage, const struct staged_box *box,
                                      const struct sheet *own)
{
    const struct layer *layer = stage->layers[own->layer].layer;

    for (size_t i = 0; i < box->sheets.count; i++) {
        const struct sheet *other = &box->sheets.at[i];
        const struct staged_layer *over = &stage->layers[other->layer];

        if (other->side == own->side && over->laid != PLAN_NONE && over->layer != layer &&
            (SMOOTHING & 1u << over->layer->kind) && (SMOOTHING & 1u << layer->kind) &&
            stacks_on(over->layer, layer) && stage_areas_meet(&other->area, &own->area))
            return other;
    }
    return NULL;
}

/* Boxes that are joined by now, and both under the layer. */
static bool within_group(const struct stage *stage, const struct layer *layer,
                         const struct staged_join *join)
{
    return layer->group && join->join->target == TARGET_BOX &&
           lies_on(stage, layer, join->join->box_a) && lies_on(stage, layer, join->join->box_b);
}

/* Backs and dust covers shut a side, whatever was pulled round its rim before. */
static bool shuts_a_side(const struct stage *stage)
{
    int kind = stage->plan->steps.at[stage->now].kind;

    return kind == STEP_BACK || kind == STEP_DUST;
}

static void check_place(struct stage *stage, const struct staged_layer *layer)
{
    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        const struct staged_box *box = &stage->boxes[i];

        for (size_t j = 0; j < box->sheets.count; j++) {
            const struct sheet *sheet = &box->sheets.at[j];
            const struct sheet *over;
            const struct staged_join *join;

            if (&stage->layers[sheet->layer] != layer)
                continue;
            over = shuts_a_side(stage) ? NULL : outer_over(stage, box, sheet);
            if (over) {
                lose_layer(stage, layer, stage_lapse_layer(stage, LAPSE_NO_WAY_UNDER, over->layer));
                return;
            }
            join = sheet->own || sheet->landing
                       ? stage_joined_over(stage, box->box->key, sheet->side, &sheet->area)
                       : NULL;
            if (join && sheet->landing && !within_group(stage, layer->layer, join)) {
                lose_layer(stage, layer,
                           stage_lapse_by(stage, LAPSE_JOINED, ENTITY_join, join->join->key,
                                          join->offered));
                return;
            }
        }
    }
}

/* ---- padding over points ---- */

/* Button holes are drilled into bare wood. */
static void check_holes_under(struct stage *stage, const struct staged_layer *layer)
{
    const struct model *model = stage->model;

    for (size_t i = 0; i < model->tuftings.count; i++) {
        const struct staged_layer *tufted = stage_layer(stage, model->tuftings.at[i].layer);

        if (!tufted || tufted == layer || !(STAGE_PADDING & 1u << layer->layer->kind) ||
            tufted->layer->box != layer->layer->box || tufted->layer->side != layer->layer->side ||
            !stage_is_outer(tufted->layer, layer->layer) || tufted->holed != PLAN_NONE)
            continue;
        for (size_t j = 0; j < stage->plan->steps.count; j++)
            if (stage->plan->steps.at[j].kind == STEP_TUFT &&
                stage->plan->steps.at[j].layer == tufted->layer->key) {
                lose_layer(stage, layer,
                           stage_lapse_layer(stage, LAPSE_NOT_HOLED, index_of(stage, tufted)));
                break;
            }
    }
}

/* Nobody works between a wall and the piece. */
static void check_wall(struct stage *stage, const struct staged_layer *layer)
{
    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        const struct staged_box *box = &stage->boxes[i];

        for (size_t j = 0; j < box->sheets.count; j++) {
            const struct sheet *sheet = &box->sheets.at[j];
            int64_t wall =
                &stage->layers[sheet->layer] == layer ? stage_wall_at(stage, box, sheet->side) : 0;

            if (!wall)
                continue;
            lose_layer(stage, layer,
                       stage_lapse_by(stage, LAPSE_SHUT, ENTITY_wall, wall, stage->pushed));
            return;
        }
    }
}

static void lay(struct stage *stage, struct staged_layer *layer)
{
    if (layer->laid != PLAN_NONE) {
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_TWICE));
        return;
    }
    check_group(stage, layer);
    check_made(stage, layer);
    check_frames(stage, layer);
    check_ground(stage, layer);
    check_place(stage, layer);
    check_wall(stage, layer);
    check_holes_under(stage, layer);
    layer->laid = stage->now;
}

/* ---- staples ---- */

static void lose_edge(struct stage *stage, size_t interval, struct verdict verdict)
{
    assert(interval < stage->plan->intervals.count);

    int64_t layer = stage->plan->edges.at[stage->plan->intervals.at[interval].edge].layer;

    stage_lose(stage, REHEARSED_EDGE, ENTITY_layer, layer, interval, verdict);
}

static void hold(struct stage *stage, size_t interval, enum held held)
{
    assert(interval < stage->plan->intervals.count);
    if (stage->held[interval] >= HELD_STAPLED)
        lose_edge(stage, interval, stage_lapse(stage, LAPSE_TWICE));
    stage->held[interval] = held;
    stage->held_since[interval] = stage->now;
}

static void each_interval(struct stage *stage, int64_t layer,
                          void (*visit)(struct stage *stage, size_t interval))
{
    for (size_t i = 0; i < stage->plan->intervals.count; i++)
        if (stage->plan->edges.at[stage->plan->intervals.at[i].edge].layer == layer)
            visit(stage, i);
}

static void baste(struct stage *stage, size_t interval)
{
    assert(interval < stage->plan->intervals.count);
    if (stage->held[interval] == HELD_UNSET)
        stage->held[interval] = HELD_BASTED;
}

/* All but what a step of its own closes. What waits for a join without such a step must not be shut
 * before it. */
static void staple(struct stage *stage, size_t interval)
{
    assert(interval < stage->plan->intervals.count);

    const struct interval *of = &stage->plan->intervals.at[interval];
    const struct staged_join *join = stage_join(stage, of->join);

    if (stage->flap_wanted[interval]) {
        stage->held[interval] = HELD_LEFT_OPEN;
        return;
    }
    if (join && of->class == CLASS_TRAPPED && join->offered != PLAN_NONE)
        lose_edge(stage, interval,
                  stage_lapse_by(stage, LAPSE_JOINED, ENTITY_join, join->join->key, join->offered));
    hold(stage, interval, HELD_STAPLED);
}

static void staple_all(struct stage *stage, struct staged_layer *layer)
{
    each_interval(stage, layer->layer->key, staple);
    layer->fixed = stage->now;
}

/* ---- steps ---- */

void do_sew(struct stage *stage, const struct step *step)
{
    struct staged_layer *layer = layer_of_step(stage, step);

    if (layer->laid != PLAN_NONE)
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_SEWN));
    if (!is_cut_out(stage, layer->layer))
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_CUT));
    layer->sewn = true;
}

void do_tuft(struct stage *stage, const struct step *step)
{
    layer_of_step(stage, step)->holed = stage->now;
}

/* Padding, linings, backs, dust covers: laid and stapled in one. */
void do_lay(struct stage *stage, const struct step *step)
{
    struct staged_layer *layer = layer_of_step(stage, step);

    lay(stage, layer);
    staple_all(stage, layer);
}

void do_cover(struct stage *stage, const struct step *step)
{
    lay(stage, layer_of_step(stage, step));
    each_interval(stage, step->layer, baste);
}

/* Welt is sewn first and has no step of being laid. */
void do_staple(struct stage *stage, const struct step *step)
{
    struct staged_layer *layer = layer_of_step(stage, step);

    if (layer->laid == PLAN_NONE && layer->layer->kind == LAYER_COVER)
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_BEFORE));
    if (layer->to_be_sewn && !layer->sewn)
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_SEWN));
    staple_all(stage, layer);
}

void do_slit(struct stage *stage, const struct step *step)
{
    struct staged_layer *layer = layer_of_step(stage, step);

    if (layer->fixed == PLAN_NONE)
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_BEFORE));
    layer->slit = true;
}

void do_button(struct stage *stage, const struct step *step)
{
    struct staged_layer *layer = layer_of_step(stage, step);

    if (layer->layer->box && layer->laid == PLAN_NONE &&
        stage_box(stage, layer->layer->box)->box->frame != FRAME_CUSHION)
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_BEFORE));
    layer->buttoned = true;
}

/* ---- flaps ---- */

/* The points of the join lose their last proof where an inner layer is still open under the flap;
 * what is lost is told at the edge. */
static void check_inner(struct stage *stage, size_t interval)
{
    const struct plan *plan = stage->plan;
    const struct interval *of = &plan->intervals.at[interval];
    const struct staged_layer *outer = stage_layer(stage, plan->edges.at[of->edge].layer);

    assert(interval < plan->intervals.count);
    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct staged_layer *inner;

        if (plan->intervals.at[i].join != of->join || stage->held[i] != HELD_LEFT_OPEN ||
            !stage->flap_wanted[i])
            continue;
        inner = stage_layer(stage, plan->edges.at[plan->intervals.at[i].edge].layer);
        if (inner != outer && stage_is_outer(outer->layer, inner->layer)) {
            struct verdict verdict =
                stage_lapse_layer(stage, LAPSE_INNER_OPEN, index_of(stage, inner));

            lose_edge(stage, interval, verdict);
            point_lose(stage, of->join, PROOF_CLOSED, verdict);
            return;
        }
    }
}

/* The gun comes to the strip that takes the staples. */
static void check_reach_of_edge(struct stage *stage, size_t interval)
{
    assert(interval < stage->plan->intervals.count);

    const struct edge *edge = &stage->plan->edges.at[stage->plan->intervals.at[interval].edge];
    const struct staged_box *box = stage_box(stage, edge->box);
    int64_t wall = box && edge->landing_side >= 0 && edge->landing_side < SIDE_COUNT
                       ? stage_wall_at(stage, box, edge->landing_side)
                       : 0;

    if (wall)
        lose_edge(stage, interval,
                  stage_lapse_by(stage, LAPSE_SHUT, ENTITY_wall, wall, stage->pushed));
}

void do_flap(struct stage *stage, const struct step *step)
{
    const struct plan *plan = stage->plan;
    const struct staged_layer *layer = layer_of_step(stage, step);

    if (layer->fixed == PLAN_NONE)
        lose_layer(stage, layer, stage_lapse(stage, LAPSE_NOT_BEFORE));
    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];

        if (interval->join != step->join || interval->pass == STAPLED_AT_BENCH ||
            plan->edges.at[interval->edge].layer != step->layer)
            continue;
        check_inner(stage, i);
        check_reach_of_edge(stage, i);
        hold(stage, i, HELD_CLOSED);
    }
}

/* Legs stand in the way of the cloth that shuts the underside. */
void do_dust(struct stage *stage, const struct step *step)
{
    struct staged_layer *layer = layer_of_step(stage, step);

    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        struct staged_box *box = &stage->boxes[i];

        if (!lies_on(stage, layer->layer, box->box->key))
            continue;
        if (box->legs != PLAN_NONE)
            lose_layer(stage, layer,
                       stage_lapse_by(stage, LAPSE_SHUT, ENTITY_box, box->box->key, box->legs));
        box->dust = stage->now;
    }
    do_lay(stage, step);
}

/* ---- a joint shuts ---- */

static bool waits_for(const struct stage *stage, size_t layer, int64_t join)
{
    assert(layer < stage->model->layers.count);

    const struct plan *plan = stage->plan;

    for (size_t i = 0; i < plan->intervals.count; i++)
        if (plan->intervals.at[i].join == join && plan->intervals.at[i].class != CLASS_TRAPPED &&
            plan->edges.at[plan->intervals.at[i].edge].layer == stage->layers[layer].layer->key)
            return true;
    return false;
}

static bool is_stapled(const struct stage *stage, size_t layer)
{
    assert(layer < stage->model->layers.count);

    const struct plan *plan = stage->plan;

    for (size_t i = 0; i < plan->edges.count; i++)
        if (plan->edges.at[i].layer == stage->layers[layer].layer->key)
            return true;
    return false;
}

static void shut_in_side(struct stage *stage, const struct staged_join *join, int64_t key,
                         int64_t side, const struct area *zone)
{
    const struct staged_box *box = stage_box(stage, key);

    for (size_t i = 0; box && i < box->sheets.count; i++) {
        const struct sheet *sheet = &box->sheets.at[i];
        const struct staged_layer *layer = &stage->layers[sheet->layer];

        if (sheet->side != side || !sheet->landing || layer->fixed != PLAN_NONE ||
            !(STAGE_CLOTH & 1u << layer->layer->kind) || !is_stapled(stage, sheet->layer) ||
            !stage_areas_meet(&sheet->area, zone) ||
            waits_for(stage, sheet->layer, join->join->key) ||
            within_group(stage, layer->layer, join))
            continue;
        stage_lose(
            stage, REHEARSED_EDGE, ENTITY_layer, layer->layer->key, PLAN_NONE,
            stage_lapse_by(stage, LAPSE_TRAPPED, ENTITY_layer, layer->layer->key, stage->now));
    }
}

/* Edges that the joint traps are stapled by now; there is no way to them afterwards. */
void cloth_shut_in(struct stage *stage, const struct staged_join *join)
{
    if (!join->junction)
        return;
    for (size_t i = 0; i < stage->plan->intervals.count; i++) {
        const struct interval *interval = &stage->plan->intervals.at[i];
        int64_t layer = stage->plan->edges.at[interval->edge].layer;

        if (interval->class == CLASS_TRAPPED && interval->join == join->join->key &&
            stage->held[i] < HELD_STAPLED)
            lose_edge(stage, i,
                      stage_lapse_by(stage, LAPSE_TRAPPED, ENTITY_layer, layer, stage->now));
    }
    shut_in_side(stage, join, join->join->box_a, join->join->side_a, &join->junction->zone);
    if (join->junction->box_b)
        shut_in_side(stage, join, join->junction->box_b, join->join->side_b,
                     &join->junction->zone_b);
}

/* ---- the end ---- */

static bool has_steps(const struct stage *stage, int64_t layer)
{
    for (size_t i = 0; i < stage->plan->steps.count; i++)
        if (stage->plan->steps.at[i].layer == layer)
            return true;
    return false;
}

/* Every edge that staples are counted for has them by the end. */
void cloth_end(struct stage *stage)
{
    for (size_t i = 0; i < stage->plan->intervals.count; i++) {
        const struct interval *interval = &stage->plan->intervals.at[i];
        int64_t layer = stage->plan->edges.at[interval->edge].layer;

        if (interval->staples > 0 && stage->held[i] < HELD_STAPLED && has_steps(stage, layer))
            lose_edge(
                stage, i,
                stage_lapse_by(stage, LAPSE_STILL_OPEN, ENTITY_layer, layer, stage->held_since[i]));
    }
}
