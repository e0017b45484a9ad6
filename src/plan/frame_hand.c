/*
 * Members placed by hand. Their place is a fact; only a length left open is worked out: from where
 * the member begins (or where what it begins in ends) to the next member in its way, or the end of
 * the frame's space. Members with a length of their own are placed first, then rails, uprights and
 * the rest in the order of the vocabulary, so that the order of entry does not matter.
 */
#include "plan/frame.h"

#include "plan/findings.h"

#include <stdio.h>

static int64_t stick_of(const struct box *box, const struct member *member)
{
    return member->stick ? member->stick : box->stick;
}

/* Where it begins, with its section across and no length yet. */
static struct solid begin_solid(const struct framing *framing, const struct member *member)
{
    struct section section =
        stick_section(framing->planning->model, stick_of(framing->box, member));
    struct vector across = section_across(framing->box, section, member->stick_set, member->axis);
    struct vector low = {member->x, member->y + framing->space.low.y, member->z};

    return (struct solid){low, {low.x + across.x, low.y + across.y, low.z + across.z}};
}

/* Does the other member lie in the way, seen along the axis? */
static bool in_line(const struct solid *member, const struct solid *other, int axis)
{
    struct solid common = solid_cut(member, other);

    vector_set(&common.low, axis, 0);
    vector_set(&common.high, axis, 1);
    return !solid_empty(&common);
}

static void reach(const struct framing *framing, struct solid *solid, int axis)
{
    const struct plan *plan = framing->planning->plan;
    int64_t begin = vector_along(solid->low, axis);
    int64_t end = vector_along(framing->space.high, axis);
    bool moved = true;

    while (moved) {
        moved = false;
        for (size_t i = framing->first; i < plan->members.count; i++) {
            const struct solid *other = &plan->members.at[i].solid;
            int64_t low = vector_along(other->low, axis);
            int64_t high = vector_along(other->high, axis);

            if (low <= begin && begin < high && in_line(solid, other, axis)) {
                begin = high;
                moved = true;
            }
        }
    }
    for (size_t i = framing->first; i < plan->members.count; i++) {
        int64_t low = vector_along(plan->members.at[i].solid.low, axis);

        if (low > begin && in_line(solid, &plan->members.at[i].solid, axis))
            end = length_smaller(end, low);
    }
    vector_set(&solid->low, axis, begin);
    vector_set(&solid->high, axis, end);
}

/* Without a section there is no stick; with one there is no room for a length. */
static void tell_no_member(struct framing *framing, const struct solid *solid, int axis)
{
    int other = axis == AXIS_X ? AXIS_Y : AXIS_X;
    struct finding *finding;

    if (solid_size(solid, other) <= 0) {
        finding_add(framing->planning, FINDING_BOX_WITHOUT_STICK, ENTITY_box, framing->box->key);
        return;
    }
    finding = finding_add(framing->planning, FINDING_BOX_TOO_SMALL, ENTITY_box, framing->box->key);
    argument_length(finding, 0, length_larger(solid_size(solid, axis), 0));
    argument_length(finding, 1, solid_size(solid, other));
}

static void add_by_hand(struct framing *framing, const struct member *member)
{
    struct plan *plan = framing->planning->plan;
    struct solid solid = begin_solid(framing, member);
    int axis = (int)member->axis;
    struct plan_member *added;

    if (member->length)
        vector_set(&solid.high, axis, vector_along(solid.low, axis) + member->length);
    else
        reach(framing, &solid, axis);
    if (solid_empty(&solid)) {
        tell_no_member(framing, &solid, axis);
        return;
    }
    framing_add(framing, member->kind, member->axis, &solid);
    added = &plan->members.at[plan->members.count - 1];
    added->by_hand = member->key;
    added->stock = stick_of(framing->box, member);
    if (*member->name)
        snprintf(added->label, sizeof added->label, "%s", member->name);
}

void frame_by_hand(struct framing *framing)
{
    const struct model *model = framing->planning->model;

    for (int64_t kind = -1; kind < MEMBER_COUNT; kind++)
        for (size_t i = 0; i < model->members.count; i++) {
            const struct member *member = &model->members.at[i];
            bool turn = member->length ? kind == -1 : kind == member->kind;

            if (member->box == framing->box->key && turn)
                add_by_hand(framing, member);
        }
}
