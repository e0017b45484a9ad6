/*
 * Members placed by hand that end short of the wood that they are to be screwed to. Their place is
 * a fact and stays: sticks that are measured thinner than they were sold leave it a little beside
 * what it touched on paper, and joints are found by contact.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"

#include <assert.h>

/* As much as sticks are thinner than they are sold: farther off is meant. Common practice, no
 * source. */
#define SHORT_AT_MOST (LENGTH_INCH / 4)

/* What is missing at each end, 0 where the member touches something or stands free. */
struct missing {
    int64_t at_low, at_high;
};

/* Does the other one lie in the way of its ends, seen along its axis? */
static bool is_before_an_end(const struct plan_member *member, const struct plan_member *other)
{
    struct solid common = solid_cut(&member->solid, &other->solid);

    vector_set(&common.low, (int)member->axis, 0);
    vector_set(&common.high, (int)member->axis, 1);
    return other->axis != member->axis && !solid_empty(&common);
}

/* How far the nearest wood before an end is off; 0 where it touches, and where that is too far. */
static int64_t missing_at(const struct plan *plan, const struct plan_member *member, bool high)
{
    struct slice members = plan_members_of(plan, member->box);
    int axis = (int)member->axis;
    int64_t least = SHORT_AT_MOST + 1;

    for (size_t i = members.from; i < members.to; i++) {
        const struct plan_member *other = &plan->members.at[i];
        int64_t gap =
            high ? vector_along(other->solid.low, axis) - vector_along(member->solid.high, axis)
                 : vector_along(member->solid.low, axis) - vector_along(other->solid.high, axis);

        if (other != member && gap >= 0 && gap < least && is_before_an_end(member, other))
            least = gap;
    }
    return least <= SHORT_AT_MOST ? least : 0;
}

static struct missing missing_of(const struct plan *plan, const struct plan_member *member)
{
    return (struct missing){missing_at(plan, member, false), missing_at(plan, member, true)};
}

/* Those of one box: their names, the most that is missing, and the way out for all at once. */
struct short_members {
    const char *first;
    size_t count;
    int64_t most;
    struct cure_draft cure;
};

/* Its place as it was entered, moved, and its length between what it is to be screwed to. */
static void fit(struct short_members *all, const struct plan_member *made,
                const struct missing *missing)
{
    static const char *const fields[AXIS_COUNT] = {"x", "y", "z"};
    const struct member *member = MODEL_FIND(all->cure.planning->model, member, made->by_hand);

    assert(member);
    const int64_t places[AXIS_COUNT] = {member->x, member->y, member->z};
    if (missing->at_low > 0)
        cure_length(&all->cure, ENTITY_member, member->key, fields[made->axis],
                    places[made->axis] - missing->at_low);
    if (member->length > 0)
        cure_length(&all->cure, ENTITY_member, member->key, "length",
                    member->length + missing->at_low + missing->at_high);
}

static void add_short(struct short_members *all, const struct plan_member *member)
{
    struct missing missing = missing_of(all->cure.planning->plan, member);

    if (missing.at_low == 0 && missing.at_high == 0)
        return;
    fit(all, member, &missing);
    all->first = all->count == 0 ? member->label : all->first;
    all->most = length_larger(all->most, length_larger(missing.at_low, missing.at_high));
    all->count++;
}

static void tell(struct planning *planning, const struct box *box, const struct short_members *all)
{
    struct finding *finding = finding_add(planning, FINDING_MEMBER_SHORT, ENTITY_box, box->key);

    argument_text(finding, 0,
                  all->count == 1 ? all->first
                                  : arena_format(planning->arena, "%s and %zu more", all->first,
                                                 all->count - 1));
    argument_length(finding, 1, all->most);
    cure_offer(&all->cure, finding);
}

void check_members(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        const struct box *box = &planning->model->boxes.at[i];
        struct slice members = plan_members_of(plan, box->key);
        struct short_members all = {.cure = cure_begin(planning, "Fit them in between")};

        for (size_t k = members.from; k < members.to; k++)
            if (plan->members.at[k].by_hand != 0)
                add_short(&all, &plan->members.at[k]);
        if (all.count > 0)
            tell(planning, box, &all);
    }
}
