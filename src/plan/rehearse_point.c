/*
 * The seven proofs of a point, at the steps where they fall.
 *
 * A proof that failed stays failed: what comes later cannot mend it. A proof that no step came to
 * is lost too, with no step.
 */
#include "plan/rehearse_stage.h"

#include <assert.h>

/* The join that a step is about; the order makes such steps for joins of the build alone. */
static struct staged_join *join_of_step(const struct stage *stage, const struct step *step)
{
    struct staged_join *join = stage_join(stage, step->join);

    assert(join);
    return join;
}

/* ---- verdicts of points ---- */

static struct verdict *verdict_of(const struct stage *stage, const struct staged_join *join,
                                  size_t nth, enum proof proof)
{
    size_t index = join->first_result + nth;

    assert(join->first_result != PLAN_NONE && proof < PROOFS);
    assert(index < stage->result->points.count);
    return &stage->result->points.at[index].verdicts[proof];
}

static size_t point_count(const struct staged_join *join)
{
    return join->first_result == PLAN_NONE ? 0 : join->junction->point_count;
}

static void judge(const struct stage *stage, const struct staged_join *join, size_t nth,
                  enum proof proof, struct verdict verdict)
{
    struct verdict *held = verdict_of(stage, join, nth, proof);

    if (held->lapse == LAPSE_NONE || held->lapse == LAPSE_NO_STEP)
        *held = verdict;
}

typedef struct verdict look_fn(const struct stage *stage, const struct staged_join *join,
                               size_t point);

static void judge_all(const struct stage *stage, const struct staged_join *join, enum proof proof,
                      look_fn *look)
{
    for (size_t i = 0; i < point_count(join); i++)
        judge(stage, join, i, proof, look(stage, join, join->junction->first_point + i));
}

void point_lose(struct stage *stage, int64_t key, enum proof proof, struct verdict verdict)
{
    const struct staged_join *join = stage_join(stage, key);

    for (size_t i = 0; join && i < point_count(join); i++)
        judge(stage, join, i, proof, verdict);
}

/* ---- bare wood ---- */

/* Panels that a screw at this place goes through, and the frame behind them. */
static struct verdict look_for_wood(const struct stage *stage, const struct spot *spot)
{
    assert(spot->side >= 0 && spot->side < SIDE_COUNT);

    const struct staged_box *box = stage_box(stage, spot->box);
    const struct facing_out *out = &stage_sides[spot->side];

    if (!box)
        return stage_fine(stage);
    for (size_t i = 0; i < box->lumps.count; i++) {
        const struct lump *lump = &box->lumps.at[i];
        bool holds = stage_along(lump->solid.low, out->u) <= spot->u &&
                     spot->u < stage_along(lump->solid.high, out->u) &&
                     stage_along(lump->solid.low, out->v) <= spot->v &&
                     spot->v < stage_along(lump->solid.high, out->v);
        bool counts = lump->side < 0 || (lump->side == spot->side && !lump->laid_on);

        if (lump->since == PLAN_NONE && counts && holds) {
            struct verdict verdict =
                stage_lapse_by(stage, LAPSE_NO_WOOD, lump->entity, lump->key, PLAN_NONE);

            verdict.label = lump->label;
            return verdict;
        }
    }
    return stage_fine(stage);
}

static struct verdict look_at_spot(const struct stage *stage, const struct staged_join *join,
                                   const struct spot *spot)
{
    const struct area place = {spot->u, spot->v, spot->u + 1, spot->v + 1};
    const struct sheet *over =
        stage_over(stage, spot->box, spot->side, spot->u, spot->v, STAGE_PADDING | STAGE_CLOTH);
    const struct staged_join *joined = stage_joined_over(stage, spot->box, spot->side, &place);

    if (over)
        return stage_lapse_layer(stage, LAPSE_COVERED, over->layer);
    if (joined && joined != join)
        return stage_lapse_by(stage, LAPSE_JOINED, ENTITY_join, joined->join->key, joined->offered);
    return look_for_wood(stage, spot);
}

/* Every place where the point shows is bare wood that can be come at. */
static struct verdict look_bare(const struct stage *stage, const struct staged_join *join,
                                size_t point)
{
    struct spot spots[STAGE_SPOTS];
    size_t count = stage_spots(stage, join, point, spots);

    if (join->offered != PLAN_NONE)
        return stage_lapse_by(stage, LAPSE_JOINED, ENTITY_join, join->join->key, join->offered);
    for (size_t i = 0; i < count; i++) {
        struct verdict verdict = look_at_spot(stage, join, &spots[i]);

        if (verdict.lapse != LAPSE_NONE)
            return verdict;
    }
    return stage_fine(stage);
}

static bool is_fitted_dry(const struct staged_join *join)
{
    return join->join->target == TARGET_BOX || join->join->target == TARGET_OTHER_BUILD;
}

void do_dry(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    judge_all(stage, join, PROOF_MARKED, look_bare);
    join->dry = stage->now;
}

/* A wall is not carried to the bench: there the box alone is marked, when it is drilled. */
void do_drill(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    if (!is_fitted_dry(join))
        judge_all(stage, join, PROOF_MARKED, look_bare);
    else if (join->dry == PLAN_NONE)
        point_lose(stage, step->join, PROOF_DRILLED, stage_lapse(stage, LAPSE_NOT_BEFORE));
    judge_all(stage, join, PROOF_DRILLED, look_bare);
    join->drilled = stage->now;
}

/* ---- found again ---- */

static void lose_if_covered(struct stage *stage, struct staged_join *join, enum proof proof)
{
    for (size_t i = 0; i < point_count(join); i++) {
        struct verdict verdict = look_bare(stage, join, join->junction->first_point + i);

        if (verdict.lapse != LAPSE_NONE && verdict.lapse != LAPSE_NO_WOOD)
            judge(stage, join, i, proof, verdict);
    }
}

void do_map(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    if (join->drilled == PLAN_NONE)
        point_lose(stage, step->join, PROOF_FOUND, stage_lapse(stage, LAPSE_NOT_BEFORE));
    lose_if_covered(stage, join, PROOF_FOUND);
    join->mapped = stage->now;
}

void do_patch(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    if (join->mapped == PLAN_NONE)
        point_lose(stage, step->join, PROOF_BARE, stage_lapse(stage, LAPSE_NOT_BEFORE));
    lose_if_covered(stage, join, PROOF_BARE);
    join->patched = stage->now;
}

void do_locate(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    if (join->drilled == PLAN_NONE || join->mapped == PLAN_NONE)
        point_lose(stage, step->join, PROOF_FOUND, stage_lapse(stage, LAPSE_NOT_BEFORE));
    if (join->found != PLAN_NONE)
        point_lose(stage, step->join, PROOF_DRIVEN, stage_lapse(stage, LAPSE_NOT_BEFORE));
    lose_if_covered(stage, join, PROOF_FOUND);
    join->located = stage->now;
}

static struct verdict look_through_cloth(const struct stage *stage, const struct staged_join *join,
                                         size_t point)
{
    struct spot spots[STAGE_SPOTS];
    size_t count = stage_spots(stage, join, point, spots);

    for (size_t i = 0; i < count; i++) {
        const struct place place = {spots[i].box,    spots[i].side, spots[i].u,   spots[i].v,
                                    join->join->key, point,         spots[i].head};
        const struct sheet *sheet = stage_shut_by(stage, &place);

        if (sheet)
            return stage_lapse_layer(stage, LAPSE_NOT_SLIT, sheet->layer);
    }
    return stage_fine(stage);
}

static void find(struct stage *stage, struct staged_join *join)
{
    if (join->drilled == PLAN_NONE || join->mapped == PLAN_NONE)
        point_lose(stage, join->join->key, PROOF_FOUND, stage_lapse(stage, LAPSE_NOT_BEFORE));
    judge_all(stage, join, PROOF_FOUND, look_through_cloth);
    join->found = stage->now;
}

/* Looked for while both faces can still be seen. */
void do_find(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    if (join->offered != PLAN_NONE)
        point_lose(stage, step->join, PROOF_FOUND,
                   stage_lapse_by(stage, LAPSE_JOINED, ENTITY_join, step->join, join->offered));
    find(stage, join);
}

/* ---- kept bare ---- */

static bool has_patch(const struct stage *stage, size_t layer, size_t point)
{
    assert(layer < stage->model->layers.count);
    for (size_t i = 0; i < stage->plan->patches.count; i++)
        if (stage->plan->patches.at[i].point == point && !stage->plan->patches.at[i].slit &&
            stage->plan->patches.at[i].layer == stage->layers[layer].layer->key)
            return true;
    return false;
}

/* All padding over a spot, not only the outermost. */
static struct verdict look_for_patches(const struct stage *stage, const struct staged_join *join,
                                       size_t point, const struct spot *spot)
{
    const struct staged_box *box = stage_box(stage, spot->box);

    for (size_t i = 0; box && i < box->sheets.count; i++) {
        const struct sheet *sheet = &box->sheets.at[i];
        const struct staged_layer *layer = &stage->layers[sheet->layer];

        if (sheet->side != spot->side || layer->laid == PLAN_NONE ||
            !(STAGE_PADDING & 1u << layer->layer->kind) || spot->u < sheet->area.u0 ||
            spot->u >= sheet->area.u1 || spot->v < sheet->area.v0 || spot->v >= sheet->area.v1)
            continue;
        if (join->patched == PLAN_NONE || stage->done[layer->laid] < stage->done[join->patched])
            return stage_lapse_layer(stage, LAPSE_NOT_MARKED, sheet->layer);
        if (spot->head && !has_patch(stage, sheet->layer, point))
            return stage_lapse_layer(stage, LAPSE_NO_PATCH, sheet->layer);
    }
    return stage_fine(stage);
}

/* Padding stops short of the faces that meet, as a whole; over a head it has a patch. */
static struct verdict look_patched(const struct stage *stage, const struct staged_join *join,
                                   size_t point)
{
    struct spot spots[STAGE_SPOTS];
    size_t count = stage_spots(stage, join, point, spots);

    for (size_t i = 0; i < count; i++) {
        struct verdict verdict = look_for_patches(stage, join, point, &spots[i]);

        if (verdict.lapse != LAPSE_NONE)
            return verdict;
    }
    return stage_fine(stage);
}

/* ---- offered and driven ---- */

static void join_groups(struct stage *stage, const struct staged_join *join)
{
    const struct staged_box *a = stage_box(stage, join->join->box_a);
    const struct staged_box *b = stage_box(stage, join->join->box_b);

    if (!a || !b || join->join->target != TARGET_BOX)
        return;
    size_t from = b->group;
    size_t to = a->group;
    bool in_room = a->in_room != PLAN_NONE || b->in_room != PLAN_NONE;
    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        struct staged_box *box = &stage->boxes[i];

        if (box->group == from)
            box->group = to;
        if (in_room && box->group == to && box->in_room == PLAN_NONE)
            box->in_room = stage->now;
    }
}

/* In the room only once it is there. */
static bool is_at_place(const struct stage *stage, const struct staged_join *join)
{
    bool in_room = join->join->place == PLACE_SITE || !is_fitted_dry(join);

    return !in_room || !stage->moves || stage->moved != PLAN_NONE;
}

static void come_together(struct stage *stage, const struct staged_join *join)
{
    struct verdict verdict = sweep_together(stage, join);

    if (verdict.lapse == LAPSE_NONE)
        return;
    point_lose(stage, join->join->key, PROOF_DRIVEN, verdict);
    if (point_count(join) == 0)
        stage_lose(stage, REHEARSED_PLACE, ENTITY_join, join->join->key, PLAN_NONE, verdict);
}

void do_offer(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    if (join->join->fastener != FASTENER_REST && join->dry == PLAN_NONE)
        point_lose(stage, step->join, PROOF_DRIVEN, stage_lapse(stage, LAPSE_NOT_BEFORE));
    if (!is_at_place(stage, join))
        point_lose(stage, step->join, PROOF_DRIVEN, stage_lapse(stage, LAPSE_NOT_THERE));
    come_together(stage, join);
    cloth_shut_in(stage, join);
    join->offered = stage->now;
    join_groups(stage, join);
}

/* A bolt with a nut of its own goes through here. */
static bool is_bolted(const struct plan *plan, size_t point)
{
    for (size_t i = 0; i < plan->bolts.count; i++)
        if (plan->bolts.at[i].point == point)
            return true;
    return false;
}

static struct verdict look_held(const struct stage *stage, const struct staged_join *join,
                                size_t point)
{
    assert(point < stage->plan->points.count);

    const struct plan *plan = stage->plan;
    size_t screw = plan->points.at[point].screw;
    bool offered = join->offered != PLAN_NONE || !is_fitted_dry(join);

    if (!offered || join->found == PLAN_NONE || join->drilled == PLAN_NONE ||
        (join->nuts == PLAN_NONE && is_bolted(plan, point)))
        return stage_lapse(stage, LAPSE_NOT_BEFORE);
    if (join->join->fastener == FASTENER_SCREW &&
        (screw >= plan->screws.count || plan->screws.at[screw].bite <= 0))
        return stage_lapse(stage, LAPSE_NO_SCREW);
    return stage_fine(stage);
}

static void drive(struct stage *stage, struct staged_join *join)
{
    if (!is_at_place(stage, join))
        point_lose(stage, join->join->key, PROOF_DRIVEN, stage_lapse(stage, LAPSE_NOT_THERE));
    judge_all(stage, join, PROOF_BARE, look_patched);
    judge_all(stage, join, PROOF_REACHED, reach_head);
    judge_all(stage, join, PROOF_DRIVEN, look_held);
    join->driven = stage->now;
}

void do_drive(struct stage *stage, const struct step *step)
{
    drive(stage, join_of_step(stage, step));
}

/* With all that is joined to it. */
static void come_to_place(struct stage *stage, const struct staged_join *join)
{
    const struct staged_box *box = stage_box(stage, join->join->box_a);
    bool in_room = join->join->target == TARGET_WALL || join->join->target == TARGET_FLOOR;

    for (size_t i = 0; in_room && i < stage->model->boxes.count; i++)
        if (stage->boxes[i].group == box->group)
            stage->boxes[i].in_room = stage->now;
}

/* To the wall, the floor or what stands there: its place is marked on the wall first. */
void do_fix(struct stage *stage, const struct step *step)
{
    struct staged_join *join = join_of_step(stage, step);

    if (stage->marks && stage->marked == PLAN_NONE)
        point_lose(stage, step->join, PROOF_FOUND, stage_lapse(stage, LAPSE_NOT_BEFORE));
    find(stage, join);
    cloth_shut_in(stage, join);
    come_to_place(stage, join);
    drive(stage, join);
    join->offered = stage->now;
}

/* ---- closed ---- */

/* Panels that wait for the join are on by the end. */
static struct verdict look_for_panels(const struct stage *stage, const struct staged_join *join)
{
    for (size_t i = 0; i < stage->plan->constraints.count; i++) {
        const struct constraint *constraint = &stage->plan->constraints.at[i];
        size_t facing;

        if (constraint->kind != JOIN_BEFORE_FACING || constraint->join != join->join->key)
            continue;
        facing = model_index(stage->model, ENTITY_facing, constraint->item);
        if (facing < stage->model->facings.count && stage->facings[facing] == PLAN_NONE)
            return stage_lapse_by(stage, LAPSE_STILL_OPEN, ENTITY_facing, constraint->item,
                                  PLAN_NONE);
    }
    return stage_fine(stage);
}

static struct verdict look_closed(const struct stage *stage, const struct staged_join *join)
{
    const struct plan *plan = stage->plan;
    struct verdict verdict = look_for_panels(stage, join);
    size_t last = join->driven;

    for (size_t i = 0; verdict.lapse == LAPSE_NONE && i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];
        int64_t layer = plan->edges.at[interval->edge].layer;

        if (interval->join != join->join->key || interval->class == CLASS_TRAPPED ||
            interval->staples == 0)
            continue;
        if (stage->held[i] < HELD_STAPLED)
            return stage_lapse_by(stage, LAPSE_STILL_OPEN, ENTITY_layer, layer,
                                  stage->held_since[i]);
        if (stage->done[stage->held_since[i]] > stage->done[last])
            last = stage->held_since[i];
    }
    verdict.step = verdict.lapse == LAPSE_NONE ? last : PLAN_NONE;
    return verdict;
}

void point_end(struct stage *stage)
{
    for (size_t i = 0; i < stage->model->joins.count; i++) {
        const struct staged_join *join = &stage->joins[i];

        if (point_count(join) > 0 && join->driven != PLAN_NONE)
            point_lose(stage, join->join->key, PROOF_CLOSED, look_closed(stage, join));
    }
}
