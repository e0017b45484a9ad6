/*
 * A member is under a mattress when its top is as high as the mattress lies, as far as a hand
 * feels, and some of it lies below it.
 */
#include "plan/slats.h"

#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/slices.h"
#include "plan/stance.h"

#define FELT (LENGTH_INCH / 4)

static bool lies_on(const struct plan *plan, const struct object *mattress,
                    const struct solid *member)
{
    struct solid lies = stance_object(plan, mattress);

    return member->high.z <= lies.low.z + FELT && member->high.z >= lies.low.z - FELT &&
           member->low.x < lies.high.x && lies.low.x < member->high.x &&
           member->low.y < lies.high.y && lies.low.y < member->high.y;
}

/* Level, and under a mattress. */
static bool carries_one(const struct plan *plan, const struct plan_member *member)
{
    const struct model *facts = plan->facts;
    const struct box *box = MODEL_FIND(facts, box, member->box);
    const struct pose *pose = plan_pose(plan, member->box);
    struct solid room;

    if (!box || !pose || member->axis == AXIS_Z)
        return false;
    room = pose_block(pose, box, &member->solid);
    for (size_t i = 0; i < facts->objects.count; i++)
        if (facts->objects.at[i].kind == OBJECT_MATTRESS &&
            lies_on(plan, &facts->objects.at[i], &room))
            return true;
    return false;
}

static bool has_carrying_panel(const struct plan *plan, int64_t box)
{
    for (size_t i = 0; i < plan->facts->facings.count; i++) {
        const struct facing *facing = &plan->facts->facings.at[i];

        if (facing->box == box && facing->side == SIDE_TOP)
            return true;
    }
    return false;
}

static bool has_mattress(const struct plan *plan)
{
    for (size_t i = 0; i < plan->facts->objects.count; i++)
        if (plan->facts->objects.at[i].kind == OBJECT_MATTRESS)
            return true;
    return false;
}

bool slats_has(const struct plan *plan, const struct slats *slats, const struct plan_member *member)
{
    return member->box == slats->box && member->axis == slats->axis && carries_one(plan, member);
}

static size_t count_along(const struct plan *plan, int64_t box, int axis)
{
    struct slice members = plan_members_of(plan, box);
    size_t count = 0;

    for (size_t i = members.from; i < members.to; i++)
        count += plan->members.at[i].axis == axis && carries_one(plan, &plan->members.at[i]);
    return count;
}

/* The next slat of the same box across; NULL behind the last. */
static const struct plan_member *next_across(const struct plan *plan, const struct slats *slats,
                                             const struct plan_member *slat, int across)
{
    struct slice members = plan_members_of(plan, slats->box);
    const struct plan_member *next = NULL;

    for (size_t i = members.from; i < members.to; i++) {
        const struct plan_member *other = &plan->members.at[i];

        if (vector_along(other->solid.low, across) >= vector_along(slat->solid.high, across) &&
            slats_has(plan, slats, other) &&
            (!next ||
             vector_along(other->solid.low, across) < vector_along(next->solid.low, across)))
            next = other;
    }
    return next;
}

static const struct plan_member *first_across(const struct plan *plan, const struct slats *slats,
                                              int across)
{
    struct slice members = plan_members_of(plan, slats->box);
    const struct plan_member *first = NULL;

    for (size_t i = members.from; i < members.to; i++) {
        const struct plan_member *other = &plan->members.at[i];

        if (slats_has(plan, slats, other) && (!first || vector_along(other->solid.low, across) <
                                                            vector_along(first->solid.low, across)))
            first = other;
    }
    return first;
}

static void measure(const struct plan *plan, struct slats *slats)
{
    int across = slats->axis == AXIS_X ? AXIS_Y : AXIS_X;
    const struct plan_member *slat = first_across(plan, slats, across);
    const struct plan_member *next;
    bool outer = true;

    slats->width = slats->thin = INT64_MAX;
    for (; slat && (next = next_across(plan, slats, slat, across)); slat = next) {
        int64_t width = solid_size(&slat->solid, across);
        int64_t gap =
            vector_along(next->solid.low, across) - vector_along(slat->solid.high, across);

        slats->gap = length_larger(slats->gap, gap);
        if (!outer) {
            slats->width = length_smaller(slats->width, width);
            slats->thin = length_smaller(slats->thin, solid_size(&slat->solid, AXIS_Z));
        }
        outer = false;
    }
}

bool slats_of(const struct plan *plan, const struct box *box, struct slats *ret_slats)
{
    struct slats slats = {.box = box->key, .axis = AXIS_X};
    size_t along_y;

    if (!has_mattress(plan) || has_carrying_panel(plan, box->key))
        return false;
    slats.count = count_along(plan, box->key, AXIS_X);
    along_y = count_along(plan, box->key, AXIS_Y);
    if (along_y > slats.count) {
        slats.axis = AXIS_Y;
        slats.count = along_y;
    }
    if (slats.count < 3)
        return false;
    measure(plan, &slats);
    *ret_slats = slats;
    return true;
}
