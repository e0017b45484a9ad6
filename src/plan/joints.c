/*
 * Joints of members: found by contact, screwed through the side of one into the end of the other.
 *
 * The screws stand in a line along the larger side of the contact, at the middles of as many equal
 * parts: one in the middle, two at the quarter points; and a little off these where the end of the
 * wood would split, another screw of the frame passes, or those of both ends meet in a short
 * member.
 */
#include "plan/frame.h"

#include "plan/screws.h"

#include <assert.h>

/* The flat area where `end` touches a side of `side` with its end grain; false when it does not. */
static bool touches_end_on(const struct plan_member *side, const struct plan_member *end,
                           struct solid *ret_contact)
{
    struct solid contact = solid_cut(&side->solid, &end->solid);
    int axis = (int)end->axis;
    struct solid thick = contact;

    if (side->axis == end->axis ||
        vector_along(contact.low, axis) != vector_along(contact.high, axis))
        return false;
    vector_set(&thick.high, axis, vector_along(contact.high, axis) + 1);
    if (solid_empty(&thick))
        return false;
    *ret_contact = contact;
    return true;
}

static int screws_for(const int64_t *value, int64_t width)
{
    if (width <= value[TRADE_JOINT_WIDTH_NARROW])
        return (int)value[TRADE_JOINT_SCREWS_NARROW];
    if (width <= value[TRADE_JOINT_WIDTH_MIDDLE])
        return (int)value[TRADE_JOINT_SCREWS_MIDDLE];
    return (int)value[width <= value[TRADE_JOINT_WIDTH_WIDE] ? TRADE_JOINT_SCREWS_WIDE
                                                             : TRADE_JOINT_SCREWS_WIDEST];
}

/* The two axes of a contact that lies across `axis`, the longer side first. */
static void contact_axes(const struct solid *contact, int axis, int *ret_long, int *ret_short)
{
    int first = axis == AXIS_X ? AXIS_Y : AXIS_X;
    int second = axis == AXIS_Z ? AXIS_Y : AXIS_Z;
    bool swap = solid_size(contact, second) > solid_size(contact, first);

    *ret_long = swap ? second : first;
    *ret_short = swap ? first : second;
    assert(*ret_long != axis && *ret_short != axis && *ret_long != *ret_short);
}

static struct screw_choice choose_for(struct planning *planning, const struct joint *joint)
{
    const struct plan_member *through = &planning->plan->members.at[joint->through];
    const struct plan_member *into = &planning->plan->members.at[joint->into];
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_FRAME],
                              .passed = solid_size(&through->solid, (int)into->axis),
                              .receiving = into->length,
                              .wood = stock_wood(planning->model, into->stock),
                              .end_grain = true};

    return screw_choose(planning, &need);
}

/* Where quarter points would stand nearer to the end of the member that is passed than is refused
 * (4 diameters: common practice, no source), the next half step of the marking grid that does not.
 */
static int64_t off_the_end(const struct planning *planning, const struct plan_member *through,
                           int along, int64_t at, int64_t diameter)
{
    const int64_t *value = planning->value;
    int64_t low = vector_along(through->solid.low, along);
    int64_t high = vector_along(through->solid.high, along);
    int64_t least;

    if (along != (int)through->axis ||
        whole_share(diameter, value[TRADE_END_MIN_PILOTED_REJECT], 1000000, &least))
        return at;
    least = whole_divide_up(2 * least, value[TRADE_MARK_GRID]) * value[TRADE_MARK_GRID] / 2;
    if (2 * least > high - low)
        return at;
    return length_larger(low + least, length_smaller(high - least, at));
}

struct driving {
    struct framing *framing;
    const struct joint *joint;
    const struct plan_member *through;
    struct screw screw; /* the next one */
    int64_t diameter;
    int along, across; /* the axis that the screws of the joint stand in line on, and the other */
};

/* How far a screw at a place would be clear of those of the frame so far. */
static int64_t clear_at(const struct driving *driving, int64_t at)
{
    struct planning *planning = driving->framing->planning;
    struct screw screw = driving->screw;
    struct screw_axis axis;

    vector_set(&screw.at, driving->along, at);
    axis = screw_axis_of(planning->plan, &screw);
    return thicket_clear(&driving->framing->driven, &axis, planning->value[TRADE_CROSS_CLEAR_WARN],
                         PLAN_NONE, NULL);
}

/* The nearest place to a wanted one where no other screw of the frame passes: an upright and a
 * cross at one node. Within the contact, edge distances kept; the clearest one where none is clear.
 */
static int64_t off_the_others(const struct driving *driving, int64_t wanted)
{
    const int64_t *value = driving->framing->planning->value;
    int64_t margin = screw_edge_margin(value, driving->diameter);
    int64_t low = vector_along(driving->joint->contact.low, driving->along) + margin;
    int64_t high = vector_along(driving->joint->contact.high, driving->along) - margin;
    int64_t step = value[TRADE_MARK_GRID] / 2;
    int64_t best = wanted;
    int64_t clear = clear_at(driving, wanted);

    for (int64_t off = step; off <= high - low && clear < value[TRADE_CROSS_CLEAR_WARN];
         off += step)
        for (int sign = 1; sign >= -1; sign -= 2) {
            int64_t at = off_the_end(driving->framing->planning, driving->through, driving->along,
                                     wanted + sign * off, driving->diameter);
            int64_t there = at < low || at > high ? 0 : clear_at(driving, at);

            if (there <= clear)
                continue;
            clear = there;
            best = at;
        }
    return best;
}

/* The same across the line that the joint's screws stand in, for one that would meet another. */
static void leave_the_line(struct driving *driving)
{
    struct driving beside = *driving;
    int64_t at = vector_along(driving->screw.at, driving->along);

    if (clear_at(driving, at) >= driving->framing->planning->value[TRADE_CROSS_CLEAR_REJECT])
        return;
    beside.along = driving->across;
    vector_set(&driving->screw.at, driving->across,
               off_the_others(&beside, vector_along(driving->screw.at, driving->across)));
}

static void drive(struct driving *driving, int64_t wanted)
{
    struct planning *planning = driving->framing->planning;
    int64_t middle = vector_along(driving->screw.at, driving->across);
    int64_t at = off_the_end(planning, driving->through, driving->along, wanted, driving->diameter);
    struct screw_axis axis;

    vector_set(&driving->screw.at, driving->along, off_the_others(driving, at));
    leave_the_line(driving);
    axis = screw_axis_of(planning->plan, &driving->screw);
    thicket_add(&driving->framing->driven, &axis, screw_add(planning, &driving->screw));
    vector_set(&driving->screw.at, driving->across, middle);
}

/* ---- short members ---- */

/* Whether wood stands at the other end of a joint's member too. */
static bool is_held_at_both_ends(const struct framing *framing, const struct joint *joint)
{
    const struct plan *plan = framing->planning->plan;
    const struct plan_member *into = &plan->members.at[joint->into];
    int axis = (int)into->axis;
    struct solid contact;

    for (size_t i = framing->first; i < plan->members.count; i++)
        if (i != joint->into && touches_end_on(&plan->members.at[i], into, &contact) &&
            vector_along(contact.low, axis) != vector_along(joint->contact.low, axis))
            return true;
    return false;
}

/* Screws from both ends would meet in a member that is shorter than what they bite of it: how far
 * those of one end stand off the middle, along as across, and those of the other end to the other
 * side, so that they pass each other well. Twice this along and twice across are apart. */
static int64_t passing_aside(const struct driving *driving)
{
    const struct planning *planning = driving->framing->planning;
    int64_t step = planning->value[TRADE_MARK_GRID] / 2;
    int64_t clear = planning->value[TRADE_CROSS_CLEAR_WARN];
    int64_t apart = driving->diameter + clear;
    int64_t length = planning->plan->members.at[driving->joint->into].length;

    if (2 * driving->screw.bite + clear <= length ||
        !is_held_at_both_ends(driving->framing, driving->joint))
        return 0;
    return whole_divide_up(whole_root(apart * apart / 8) + 1, step) * step;
}

/* A place off the middle on an axis of the contact, edge distances kept. */
static int64_t stand_aside(const struct driving *driving, int axis, int64_t at, int64_t aside)
{
    int64_t margin = screw_edge_margin(driving->framing->planning->value, driving->diameter);
    int64_t low = vector_along(driving->joint->contact.low, axis) + margin;
    int64_t high = vector_along(driving->joint->contact.high, axis) - margin;

    return aside == 0 || low > high ? at : length_within(at + aside, low, high);
}

/* ---- joints ---- */

/* The middle of the part `i` of so many on an axis of the contact. */
static int64_t middle_of_part(const struct joint *joint, int axis, int i, int parts)
{
    assert(0 <= i && i < parts);
    return vector_along(joint->contact.low, axis) +
           whole_divide_even(solid_size(&joint->contact, axis) * (2 * i + 1), 2 * parts);
}

/* Heads on the far side of the member that is passed. */
static struct driving driving_of(struct framing *framing, size_t index,
                                 const struct screw_choice *choice)
{
    const struct plan *plan = framing->planning->plan;
    const struct joint *joint = &plan->joints.at[index];
    const struct plan_member *through = &plan->members.at[joint->through];
    const struct plan_member *into = &plan->members.at[joint->into];
    int axis = (int)into->axis;
    bool upward = vector_along(into->solid.low, axis) == vector_along(joint->contact.low, axis);
    struct driving driving = {.framing = framing,
                              .joint = joint,
                              .through = through,
                              .diameter = plan->screw_kinds.at[choice->kind].diameter};

    driving.screw = (struct screw){.use = SCREW_FRAME,
                                   .kind = choice->kind,
                                   .box = joint->box,
                                   .axis = axis,
                                   .sign = upward ? 1 : -1,
                                   .bite = choice->bite,
                                   .end_grain = true,
                                   .of = index};
    contact_axes(&joint->contact, axis, &driving.along, &driving.across);
    vector_set(&driving.screw.at, axis,
               vector_along(upward ? through->solid.low : through->solid.high, axis));
    return driving;
}

static void drive_screws(struct framing *framing, size_t index, const struct screw_choice *choice)
{
    assert(index < framing->planning->plan->joints.count && choice->kind != PLAN_NONE);

    struct driving driving = driving_of(framing, index, choice);
    const struct joint *joint = driving.joint;
    int64_t aside = driving.screw.sign * passing_aside(&driving);

    vector_set(
        &driving.screw.at, driving.across,
        stand_aside(&driving, driving.across, middle_of_part(joint, driving.across, 0, 1), aside));
    for (int i = 0; i < joint->screws; i++)
        drive(&driving, stand_aside(&driving, driving.along,
                                    middle_of_part(joint, driving.along, i, joint->screws), aside));
}

static void add_joint(struct framing *framing, size_t through, size_t into,
                      const struct solid *contact)
{
    struct planning *planning = framing->planning;
    struct plan *plan = planning->plan;
    struct joint *joint = LIST_ADD(planning->arena, &plan->joints);
    struct screw_choice choice;
    int along;
    int across;

    assert(through < plan->members.count && into < plan->members.count && through != into);
    *joint = (struct joint){framing->box->key, through, into, *contact, true, 0};
    contact_axes(contact, (int)plan->members.at[into].axis, &along, &across);
    choice = choose_for(planning, joint);
    screw_choice_tell(planning, &choice, ENTITY_box, framing->box->key);
    if (choice.kind == PLAN_NONE)
        return;
    joint->screws = screws_for(planning->value, solid_size(contact, along));
    drive_screws(framing, plan->joints.count - 1, &choice);
}

void frame_joints(struct framing *framing)
{
    const struct plan *plan = framing->planning->plan;

    for (size_t i = framing->first; i < plan->members.count; i++)
        for (size_t k = framing->first; k < plan->members.count; k++) {
            struct solid contact;

            if (i != k && touches_end_on(&plan->members.at[i], &plan->members.at[k], &contact))
                add_joint(framing, i, k, &contact);
        }
}
