/*
 * The length rule of a join (common practice, no source): on the head's side the screw passes all
 * the wood from the inner surface of the member to the mating face, fixed panels included; then the
 * pressed cloth; then it bites. A panel on the receiving face counts as bite when it is glued, else
 * it is passed.
 */
#include "plan/point.h"

#include "plan/geometry.h"
#include "plan/wood.h"

#include <assert.h>

struct faces fasten_faces(const struct planning *planning, const struct junction *junction)
{
    struct faces faces = {.b = {0}};

    faces.a = backing_find(planning, junction->box_a, point_side(planning, junction, false));
    if (junction->box_b != 0)
        faces.b = backing_find(planning, junction->box_b, point_side(planning, junction, true));
    return faces;
}

static int64_t hardness_of(const struct planning *planning, size_t member)
{
    if (member == PLAN_NONE)
        return WOOD_SOFT;
    assert(member < planning->plan->members.count);
    return stock_wood(planning->model, planning->plan->members.at[member].stock);
}

static void receive_in_wood(const struct planning *planning, const struct backings *behind,
                            const struct backing *wood, struct fastening *fastening)
{
    fastening->need.padded = backing_ends_soft(planning, behind->box, behind->side, wood->far);
    fastening->need.wood = hardness_of(planning, wood->member);
    fastening->other_member = wood->member;
    fastening->need.end_grain = wood->end_grain;
    fastening->need.receiving = wood->glued ? wood->far : wood->far - wood->near;
    if (!wood->glued)
        fastening->need.passed += wood->near;
}

static void receive_in_building(const struct planning *planning, const struct join *join,
                                struct fastening *fastening)
{
    fastening->other_member = PLAN_NONE;
    fastening->need.receiving = SCREW_BEHIND_WALL;
    if (join->target == TARGET_WALL)
        fastening->need.passed += planning->value[TRADE_WALL_BOARD];
}

static const struct backing *wood_at(const struct planning *planning,
                                     const struct junction *junction, const struct faces *faces,
                                     const struct plan_point *point, bool of_b)
{
    int64_t u, v;

    point_on_face(planning, junction, point, of_b, &u, &v);
    return backing_at(of_b ? &faces->b : &faces->a, u, v);
}

bool fasten_reckon(const struct planning *planning, const struct junction *junction,
                   const struct faces *faces, const struct plan_point *point, bool head_in_b,
                   struct fastening *ret_fastening)
{
    const struct join *join = MODEL_FIND(planning->model, join, junction->join);
    bool has_b = junction->box_b != 0;
    struct fastening fastening = {0};

    assert(join);
    if (head_in_b && !has_b)
        return false;
    const struct backing *head = wood_at(planning, junction, faces, point, head_in_b);
    const struct backing *other =
        has_b ? wood_at(planning, junction, faces, point, !head_in_b) : NULL;
    if (!head || head->end_grain || (has_b && !other))
        return false;
    fastening.depth = head->far;
    fastening.member = head->member;
    fastening.need = (struct screw_need){.gauge = planning->value[TRADE_SCREW_GAUGE_JOIN],
                                         .stock = join->stock,
                                         .passed = head->far,
                                         .cloth = junction->cloth};
    if (has_b)
        receive_in_wood(planning, head_in_b ? &faces->a : &faces->b, other, &fastening);
    else
        receive_in_building(planning, join, &fastening);
    *ret_fastening = fastening;
    return true;
}
