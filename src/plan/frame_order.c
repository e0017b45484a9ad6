/*
 * In which order the members of a box are set, so that a driver reaches every screw of its joints.
 *
 * The screws of a joint are driven when the second of its two members is set: later only more wood
 * stands in the way. So a member can be set last exactly when the heads of its joints with all that
 * is there already can be reached then. Members are peeled off from the last to the first, of those
 * that can be last the one made last: taking wood away opens ways and shuts none, so that whatever
 * order there is one is found (rules P11 and P78).
 *
 * 1  Turns of a box are 1, 2, ... and each is given once.
 * 2  Where a joint is shut in every order its frame is told, and the rest is ordered without it.
 * 3  A tool is a cylinder on the screw's axis, from the head outwards.
 */
#include "plan/frame.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/screws.h"

#include <assert.h>

#define SHORTEST_TOOL (40 * LENGTH_MM) /* of a right-angle head, beside the screw */

/* ---- tools ---- */

struct reach {
    int64_t length; /* beside the screw */
    int64_t radius;
};

enum { REACHES = 4 };

/* The workshop's own tool where it is measured, else the trade's. */
static struct reach reach_of(const struct planning *planning, int64_t kind, struct reach usual)
{
    for (size_t i = 0; i < planning->model->tools.count; i++) {
        const struct tool *tool = &planning->model->tools.at[i];

        if (tool->kind == kind && tool->length > 0)
            return (struct reach){tool->length, tool->radius ? tool->radius : usual.radius};
    }
    return usual;
}

static void find_reaches(const struct planning *planning, struct reach reaches[REACHES])
{
    const int64_t *value = planning->value;
    int64_t thin = value[TRADE_DRIVER_RADIUS_LONG_BIT];

    reaches[0] = reach_of(planning, TOOL_DRIVER,
                          (struct reach){value[TRADE_DRIVER_INLINE], value[TRADE_DRIVER_RADIUS]});
    reaches[1] = reach_of(planning, TOOL_LONG_BIT,
                          (struct reach){value[TRADE_DRIVER_BODY] + value[TRADE_DRIVER_BIT_LONG] +
                                             value[TRADE_DRIVER_SLACK],
                                         thin});
    reaches[2] =
        reach_of(planning, TOOL_RIGHT_ANGLE, (struct reach){value[TRADE_DRIVER_RIGHT_ANGLE], thin});
    reaches[3] = reach_of(planning, TOOL_STUBBY, (struct reach){value[TRADE_DRIVER_STUBBY], thin});
}

/* ---- what stands before a head ---- */

/* A member in the way of one tool at one screw; all numbers count in the box. */
struct shutter {
    size_t screw; /* of the plan */
    size_t joint;
    int tool;
    size_t member;
};

struct ordering {
    struct planning *planning;
    struct framing *framing;
    struct reach reaches[REACHES];
    LIST_OF(struct shutter) shutters; /* by screw */
    bool *set;                        /* by member of the box: not peeled off yet */
    size_t count;
};

static int64_t gap_to(int64_t at, int64_t low, int64_t high)
{
    return at < low ? low - at : at > high ? at - high : 0;
}

static bool stands_before(const struct ordering *ordering, const struct screw *screw,
                          const struct reach *reach, const struct solid *wood)
{
    const struct screw_kind *kind = &ordering->planning->plan->screw_kinds.at[screw->kind];
    int64_t head = vector_along(screw->at, screw->axis);
    int64_t back = head - screw->sign * (reach->length + kind->length);
    int64_t square = 0;

    if (vector_along(wood->low, screw->axis) >= length_larger(head, back) ||
        vector_along(wood->high, screw->axis) <= length_smaller(head, back))
        return false;
    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t gap = axis == screw->axis
                          ? 0
                          : gap_to(vector_along(screw->at, axis), vector_along(wood->low, axis),
                                   vector_along(wood->high, axis));

        square += gap * gap;
    }
    return square < reach->radius * reach->radius;
}

static void find_shutters_of(struct ordering *ordering, size_t screw)
{
    const struct plan *plan = ordering->planning->plan;
    const struct screw *driven = &plan->screws.at[screw];
    const struct joint *joint = &plan->joints.at[driven->of];

    assert(screw < plan->screws.count);
    for (size_t i = 0; i < ordering->count; i++) {
        size_t member = ordering->framing->first + i;

        for (int tool = 0; tool < REACHES; tool++)
            if (member != joint->through && member != joint->into &&
                stands_before(ordering, driven, &ordering->reaches[tool],
                              &plan->members.at[member].solid))
                *LIST_ADD(ordering->planning->arena, &ordering->shutters) =
                    (struct shutter){screw, driven->of, tool, i};
    }
}

static void find_shutters(struct ordering *ordering)
{
    const struct plan *plan = ordering->planning->plan;

    for (size_t i = ordering->framing->first_screw; i < plan->screws.count; i++)
        find_shutters_of(ordering, i);
}

/* ---- what can be last ---- */

/* Of the shutters of one screw: are the first so many tools shut out by wood that is set? */
static bool is_shut(const struct ordering *ordering, size_t at, size_t end, int tools)
{
    bool shut[REACHES] = {false};

    for (size_t i = at; i < end; i++)
        if (ordering->set[ordering->shutters.at[i].member])
            shut[ordering->shutters.at[i].tool] = true;
    for (int tool = 0; tool < tools; tool++)
        if (!shut[tool])
            return false;
    return true;
}

static size_t end_of_screw(const struct ordering *ordering, size_t at)
{
    size_t end = at;

    assert(at < ordering->shutters.count);
    while (end < ordering->shutters.count &&
           ordering->shutters.at[end].screw == ordering->shutters.at[at].screw)
        end++;
    return end;
}

/* The first shutter of a screw that would have to be driven when a member is set last, and cannot
 * be with the first so many tools; PLAN_NONE when it can be last. */
static size_t what_shuts(const struct ordering *ordering, size_t member, int tools)
{
    const struct plan *plan = ordering->planning->plan;
    size_t first = ordering->framing->first;
    size_t end;

    for (size_t at = 0; at < ordering->shutters.count; at = end) {
        const struct joint *joint = &plan->joints.at[ordering->shutters.at[at].joint];
        bool is_of = joint->through == first + member || joint->into == first + member;

        end = end_of_screw(ordering, at);
        if (is_of && ordering->set[joint->through - first] && ordering->set[joint->into - first] &&
            is_shut(ordering, at, end, tools))
            return at;
    }
    return PLAN_NONE;
}

/* ---- ways out ---- */

static void offer_place(struct planning *planning, const struct plan_member *made, int axis,
                        int64_t by, struct finding *finding)
{
    static const char *const fields[AXIS_COUNT] = {"x", "y", "z"};
    const struct member *member = MODEL_FIND(planning->model, member, made->by_hand);
    int64_t at = (axis == AXIS_X ? member->x : axis == AXIS_Y ? member->y : member->z) + by;
    char length[QUANTITY_TEXT];
    struct cure_draft cure;

    assert(axis >= 0 && axis < AXIS_COUNT);
    if (at < 0)
        return;
    quantity_print_unit(length, QUANTITY_LENGTH, model_units(planning->model), at);
    cure = cure_begin(planning, arena_format(planning->arena, "Put %s at %s %s", made->label,
                                             fields[axis], length));
    cure_length(&cure, ENTITY_member, member->key, fields[axis], at);
    cure_offer_on_trial(&cure, finding);
}

/* To one side or the other, out of the line of the heads. */
static void offer_staggers(struct planning *planning, size_t index, int axis,
                           struct finding *finding)
{
    assert(index < planning->plan->members.count);

    const struct plan_member *made = &planning->plan->members.at[index];
    int64_t by = planning->value[TRADE_INLINE_STAGGER];

    if (!made->by_hand)
        return;
    offer_place(planning, made, axis, by, finding);
    offer_place(planning, made, axis, -by, finding);
}

/* A right-angle driver that fits between a head and what stands before it. */
static void offer_tool(struct ordering *ordering, const struct shutter *shutter,
                       struct finding *finding)
{
    struct planning *planning = ordering->planning;
    const struct screw *screw = &planning->plan->screws.at[shutter->screw];
    const struct solid *wood =
        &planning->plan->members.at[ordering->framing->first + shutter->member].solid;
    int64_t head = vector_along(screw->at, screw->axis);
    int64_t gap =
        gap_to(head, vector_along(wood->low, screw->axis), vector_along(wood->high, screw->axis));
    int64_t length = gap - planning->plan->screw_kinds.at[screw->kind].length;
    char printed[QUANTITY_TEXT];
    struct cure_draft cure;

    length -= length % LENGTH_MM;
    if (length < SHORTEST_TOOL)
        return;
    quantity_print_unit(printed, QUANTITY_LENGTH, UNITS_MM, length);
    cure = cure_begin(planning,
                      arena_format(planning->arena, "Get a right-angle driver of %s", printed));
    cure_word(&cure, ENTITY_tool, 0, "name",
              arena_format(planning->arena, "Right-angle driver of %s", printed));
    cure_word(&cure, ENTITY_tool, 0, "kind", words_tool.at[TOOL_RIGHT_ANGLE].name);
    cure_length(&cure, ENTITY_tool, 0, "length", length);
    cure_offer_on_trial(&cure, finding);
}

/* Along the wood that the joint's other member and what stands before the heads both run into. */
static void offer_ways_out(struct ordering *ordering, const struct shutter *shutter,
                           struct finding *finding)
{
    struct planning *planning = ordering->planning;
    const struct joint *joint = &planning->plan->joints.at[shutter->joint];
    int axis = (int)planning->plan->members.at[joint->through].axis;

    offer_staggers(planning, ordering->framing->first + shutter->member, axis, finding);
    offer_staggers(planning, joint->into, axis, finding);
    offer_tool(ordering, shutter, finding);
}

static void tell_shut(struct ordering *ordering, const struct shutter *shutter)
{
    struct planning *planning = ordering->planning;
    const struct plan *plan = planning->plan;
    const struct joint *joint = &plan->joints.at[shutter->joint];
    struct finding *finding =
        finding_add(planning, FINDING_FRAME_SHUT, ENTITY_box, ordering->framing->box->key);

    argument_text(finding, 0, plan->members.at[joint->through].label);
    argument_text(finding, 1, plan->members.at[joint->into].label);
    argument_text(finding, 2, plan->members.at[ordering->framing->first + shutter->member].label);
    argument_length(finding, 3, planning->value[TRADE_INLINE_STAGGER]);
    offer_ways_out(ordering, shutter, finding);
}

/* ---- the order ---- */

/* Of the members that are set, the last one that can be last; PLAN_NONE when none can. */
static size_t find_last(const struct ordering *ordering, int tools)
{
    for (size_t i = ordering->count; i-- > 0;)
        if (ordering->set[i] && what_shuts(ordering, i, tools) == PLAN_NONE)
            return i;
    return PLAN_NONE;
}

/* With the plain driver before any other tool. Where no member can be last, the last one is taken
 * and what shuts it is told. */
static size_t take_last(struct ordering *ordering)
{
    size_t last = PLAN_NONE;

    for (int tools = 1; tools <= REACHES && last == PLAN_NONE; tools++)
        last = find_last(ordering, tools);
    if (last != PLAN_NONE)
        return last;
    for (last = ordering->count - 1; !ordering->set[last]; last--)
        continue;
    tell_shut(ordering, &ordering->shutters.at[what_shuts(ordering, last, REACHES)]);
    return last;
}

/* ---- what has to wait ---- */

static int turn_of(const struct plan *plan, const struct joint *joint)
{
    int through = plan->members.at[joint->through].turn;
    int into = plan->members.at[joint->into].turn;

    return through > into ? through : into;
}

/* The first tool that reaches a screw when its joint is made; REACHES when none does. */
static int tool_then(const struct ordering *ordering, size_t at, size_t end)
{
    const struct plan *plan = ordering->planning->plan;
    int turn = turn_of(plan, &plan->joints.at[ordering->shutters.at[at].joint]);
    bool shut[REACHES + 1] = {false};
    int tool = 0;

    for (size_t i = at; i < end; i++) {
        const struct shutter *shutter = &ordering->shutters.at[i];

        if (plan->members.at[ordering->framing->first + shutter->member].turn <= turn)
            shut[shutter->tool] = true;
    }
    while (tool < REACHES && shut[tool])
        tool++;
    return tool;
}

static bool waits_already(const struct plan *plan, size_t joint, size_t member)
{
    for (size_t i = plan->frame_waits.count; i-- > 0;) {
        const struct frame_wait *wait = &plan->frame_waits.at[i];

        if (wait->joint != joint)
            return false;
        if (wait->member == member)
            return true;
    }
    return false;
}

/* What would shut out the tool that a joint is made with, and so is set after it. */
static void write_waits(const struct ordering *ordering, size_t at, size_t end)
{
    struct plan *plan = ordering->planning->plan;
    size_t joint = ordering->shutters.at[at].joint;
    int tool = tool_then(ordering, at, end);

    for (size_t i = at; i < end; i++) {
        size_t member = ordering->framing->first + ordering->shutters.at[i].member;

        if (ordering->shutters.at[i].tool == tool &&
            plan->members.at[member].turn > turn_of(plan, &plan->joints.at[joint]) &&
            !waits_already(plan, joint, member))
            *LIST_ADD(ordering->planning->arena, &plan->frame_waits) =
                (struct frame_wait){ordering->framing->box->key, joint, member};
    }
}

void frame_order(struct framing *framing)
{
    struct plan *plan = framing->planning->plan;
    struct ordering ordering = {.planning = framing->planning,
                                .framing = framing,
                                .count = plan->members.count - framing->first};

    if (ordering.count == 0)
        return;
    ordering.set = ARENA_MANY(framing->planning->arena, bool, ordering.count);
    for (size_t i = 0; i < ordering.count; i++)
        ordering.set[i] = true;
    find_reaches(framing->planning, ordering.reaches);
    find_shutters(&ordering);
    for (size_t left = ordering.count; left > 0; left--) {
        size_t last = take_last(&ordering);

        ordering.set[last] = false;
        plan->members.at[framing->first + last].turn = (int)left;
    }
    for (size_t at = 0, end; at < ordering.shutters.count; at = end) {
        end = end_of_screw(&ordering, at);
        write_waits(&ordering, at, end);
    }
}
