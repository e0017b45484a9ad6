/*
 * No two screws meet, nor a screw and a bolt: each is held against all that stand near it in a box
 * that both go through. What the engine places it has moved aside where it could; what is left is
 * told, the closest pair of each box with the names of both, and each hole of a join that the maker
 * has placed or drilled with what it misses.
 */
#include "plan/standing.h"

#include "plan/findings.h"
#include "plan/geometry.h"

struct pair {
    int64_t clear;
    const struct thicket_screw *a, *b; /* NULL where no pair was found yet */
};

static const char *joint_name(const struct planning *planning, const struct screw *screw)
{
    const struct plan *plan = planning->plan;
    const struct joint *joint = &plan->joints.at[screw->of];

    return arena_format(planning->arena, "%s into %s", plan->members.at[joint->through].label,
                        plan->members.at[joint->into].label);
}

static const char *hole_name(const struct planning *planning, const struct plan_point *point)
{
    char name[MODEL_NAME_TEXT];

    return arena_format(planning->arena, "hole %d of %s", point->rank,
                        model_item_name(name, planning->model, ENTITY_join, point->join));
}

/* The point of a screw or bolt of a join; NULL for any other. */
static const struct plan_point *point_of(const struct plan *plan,
                                         const struct thicket_screw *standing)
{
    if (standing->bolt != PLAN_NONE)
        return &plan->points.at[plan->bolts.at[standing->bolt].point];
    const struct screw *screw = &plan->screws.at[standing->screw];
    return screw->use == SCREW_JOIN ? &plan->points.at[screw->of] : NULL;
}

/* "C3 into C5", "panel C-P1", "hole 2 of J1", "leg". */
static const char *screw_name(const struct planning *planning, const struct thicket_screw *standing)
{
    const struct plan *plan = planning->plan;
    const struct plan_point *point = point_of(plan, standing);
    char name[MODEL_NAME_TEXT];

    if (point)
        return hole_name(planning, point);
    const struct screw *screw = &plan->screws.at[standing->screw];
    if (screw->use == SCREW_FRAME)
        return joint_name(planning, screw);
    if (screw->use == SCREW_PANEL)
        return arena_format(planning->arena, "panel %s", plan->panels.at[screw->of].label);
    return arena_text(planning->arena,
                      model_item_name(name, planning->model, ENTITY_fitting,
                                      planning->model->fittings.at[screw->of].key));
}

static bool is_pinned(const struct plan *plan, const struct thicket_screw *standing)
{
    const struct plan_point *point = point_of(plan, standing);

    return point && point->taken;
}

/* A hole that the maker placed stays where it is: by how much it misses is what helps. */
static void tell_hole(struct planning *planning, const struct pair *pair)
{
    const struct plan_point *point = point_of(planning->plan, pair->a);
    bool meet = pair->clear < planning->value[TRADE_CROSS_CLEAR_REJECT];
    int64_t least = planning->value[meet ? TRADE_CROSS_CLEAR_REJECT : TRADE_CROSS_CLEAR_WARN];
    struct finding *finding = finding_add(planning, meet ? FINDING_HOLE_MEETS : FINDING_HOLE_NEAR,
                                          ENTITY_join, point->join);

    argument_quantity(finding, 0, QUANTITY_COUNT, point->rank);
    argument_length(finding, 1, length_larger(pair->clear, 0));
    argument_length(finding, 2, least - length_larger(pair->clear, 0));
    argument_text(finding, 3, screw_name(planning, pair->b));
}

static void tell_box(struct planning *planning, int64_t box, const struct pair *pair)
{
    bool meet = pair->clear < planning->value[TRADE_CROSS_CLEAR_REJECT];
    struct finding *finding =
        finding_add(planning, meet ? FINDING_SCREWS_MEET : FINDING_SCREWS_NEAR, ENTITY_box, box);

    argument_length(finding, 0, length_larger(pair->clear, 0));
    argument_length(finding, 1,
                    planning->value[meet ? TRADE_CROSS_CLEAR_REJECT : TRADE_CROSS_CLEAR_WARN]);
    argument_text(finding, 2, screw_name(planning, pair->a));
    argument_text(finding, 3, screw_name(planning, pair->b));
}

static void check_box(struct planning *planning, int64_t box, const struct thicket *standing)
{
    int64_t well = planning->value[TRADE_CROSS_CLEAR_WARN];
    struct pair closest = {well, NULL, NULL};

    for (size_t i = 0; i < standing->screws.count; i++) {
        const struct thicket_screw *screw = &standing->screws.at[i];
        size_t nearest = PLAN_NONE;
        int64_t clear = thicket_clear(standing, &screw->axis, well, i, &nearest);

        if (nearest == PLAN_NONE)
            continue;
        struct pair pair = {clear, screw, &standing->screws.at[nearest]};
        if (is_pinned(planning->plan, pair.a))
            tell_hole(planning, &pair);
        else if (!is_pinned(planning->plan, pair.b) && clear < closest.clear)
            closest = pair;
    }
    if (closest.a)
        tell_box(planning, box, &closest);
}

void check_clear(struct planning *planning, const struct thicket *standing)
{
    for (size_t i = 0; i < planning->model->boxes.count; i++)
        check_box(planning, planning->model->boxes.at[i].key, &standing[i]);
}
