#include "plan/order.h"

#include "plan/geometry.h"
#include "plan/hole.h"

#include <assert.h>
#include <string.h>

static bool always(const struct ordering *ordering, const struct work *before,
                   const struct work *after)
{
    (void)ordering;
    (void)before;
    (void)after;
    return true;
}

/* One of the two is of one layer, the other of another that shares a face with it. */
static bool share_a_face(const struct work *before, const struct work *after)
{
    return before->of_layer && after->of_layer && before->of_layer != after->of_layer &&
           (before->faces & after->faces);
}

/* The second lies where the first is pulled round to the far side of the box. */
static bool lies_on_hem(const struct work *before, const struct work *after)
{
    return before->of_layer && after->of_layer && before->of_layer != after->of_layer &&
           (layer_reaches(before->of_layer) & after->faces);
}

static bool lies_over(const struct ordering *ordering, const struct work *before,
                      const struct work *after)
{
    (void)ordering;
    return (share_a_face(before, after) || lies_on_hem(before, after)) &&
           layer_is_over(after->of_layer, before->of_layer);
}

static bool lies_under(const struct ordering *ordering, const struct work *before,
                       const struct work *after)
{
    (void)ordering;
    return share_a_face(before, after) && layer_is_over(before->of_layer, after->of_layer);
}

/* On the face itself, not pulled round on to it from another. */
static bool lies_on_face(const struct ordering *ordering, const struct work *before,
                         const struct work *after)
{
    const struct layer *layer = after->of_layer;
    unsigned faces;

    (void)ordering;
    assert(before->step.facing);
    if (!layer)
        return false;
    faces = 1u << layer->side;
    if (layer->both)
        faces |= 1u << side_opposite(layer->side);
    return (before->faces & faces) != 0;
}

static bool joins_the_group(const struct ordering *ordering, const struct work *before,
                            const struct work *after)
{
    const struct model *model = ordering->planning->model;
    const struct join *join = before->of_join;
    const struct layer *layer = after->of_layer;

    return layer && layer->group && join->target == TARGET_BOX &&
           layer_touches(model, layer, join->box_a) && layer_touches(model, layer, join->box_b);
}

static bool shuts_the_way(const struct ordering *ordering, const struct work *before,
                          const struct work *after)
{
    const struct junction *junction = plan_junction(ordering->planning->plan, before->of_join->key);

    return junction && junction->head_inside && after->of_layer &&
           layer_touches(ordering->planning->model, after->of_layer, junction->head_box) &&
           (after->faces & 1u << junction->reach_side);
}

static bool outer_flap(const struct ordering *ordering, const struct work *before,
                       const struct work *after)
{
    (void)ordering;
    return before != after && layer_is_over(after->of_layer, before->of_layer);
}

static bool in_the_room(const struct ordering *ordering, const struct work *before,
                        const struct work *after)
{
    (void)ordering;
    (void)before;
    return after->of_join && after->of_join->place == PLACE_SITE;
}

static bool not_late(const struct ordering *ordering, const struct work *before,
                     const struct work *after)
{
    (void)ordering;
    (void)after;
    return !before->late;
}

static bool is_slit_over(const struct ordering *ordering, const struct work *before,
                         const struct work *after)
{
    const struct plan *plan = ordering->planning->plan;
    int64_t layer = before->step.layer;
    int64_t join = after->of_join->key;

    for (size_t i = 0; i < plan->patches.count; i++)
        if (plan->patches.at[i].slit && plan->patches.at[i].layer == layer &&
            plan->points.at[plan->patches.at[i].point].join == join)
            return !hole_keeps_off(plan, layer, join);
    return false;
}

static bool shuts_the_nuts(const struct ordering *ordering, const struct work *before,
                           const struct work *after)
{
    const struct plan *plan = ordering->planning->plan;

    for (size_t i = 0; i < plan->bolts.count; i++) {
        const struct plan_bolt *bolt = &plan->bolts.at[i];
        bool panel = after->late && bolt->nut_shut >= 0 && bolt->nut_box == after->step.box &&
                     after->faces & 1u << bolt->nut_shut;
        bool cloth = after->of_layer &&
                     layer_touches(ordering->planning->model, after->of_layer, bolt->nut_box);

        if (plan->points.at[bolt->point].join == before->of_join->key && (panel || cloth))
            return true;
    }
    return false;
}

/* What is fixed to the room is at its place by then. */
static bool waits_for_no_fix(const struct ordering *ordering, const struct work *before,
                             const struct work *after)
{
    const struct planning *planning = ordering->planning;

    (void)after;
    for (size_t i = 0; i < planning->plan->constraints.count; i++) {
        const struct constraint *constraint = &planning->plan->constraints.at[i];

        if (constraint->kind == JOIN_BEFORE_LAYER && constraint->item == before->step.layer &&
            MODEL_FIND(planning->model, join, constraint->join)->target != TARGET_BOX)
            return false;
    }
    return true;
}

typedef bool relates_fn(const struct ordering *ordering, const struct work *before,
                        const struct work *after);

static const struct {
    enum touch_kind touch;
    relates_fn *relates;
} relations[RELATIONS] = {
    [RELATE_BUILD] = {TOUCH_BUILD, always},        [RELATE_BOX] = {TOUCH_BOX, always},
    [RELATE_JOIN] = {TOUCH_JOIN, always},          [RELATE_LAYER] = {TOUCH_LAYER, always},
    [RELATE_STOCK] = {TOUCH_STOCK, always},        [RELATE_OVER] = {TOUCH_BOX, lies_over},
    [RELATE_UNDER] = {TOUCH_BOX, lies_under},      [RELATE_FACE] = {TOUCH_BOX, lies_on_face},
    [RELATE_GROUP] = {TOUCH_BOX, joins_the_group}, [RELATE_WAY] = {TOUCH_BOX, shuts_the_way},
    [RELATE_FLAPS] = {TOUCH_JOIN, outer_flap},     [RELATE_ROOM] = {TOUCH_BUILD, in_the_room},
    [RELATE_LATE] = {TOUCH_BOX, not_late},         [RELATE_SLIT] = {TOUCH_BOX, is_slit_over},
    [RELATE_NUTS] = {TOUCH_BOX, shuts_the_nuts},   [RELATE_PLACE] = {TOUCH_BUILD, waits_for_no_fix},
};

bool order_relates(const struct ordering *ordering, enum relation relation,
                   const struct work *before, const struct work *after)
{
    assert(relation < RELATIONS);

    return relations[relation].relates(ordering, before, after);
}

enum touch_kind order_relation_touch(enum relation relation)
{
    assert(relation < RELATIONS);

    return relations[relation].touch;
}
