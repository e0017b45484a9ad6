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
#include "plan/tool.h"

#include <assert.h>

/* ---- tools ---- */

/* In the order in which they are tried. */
static const int64_t tools_tried[] = {TOOL_DRIVER, TOOL_LONG_BIT, TOOL_RIGHT_ANGLE, TOOL_STUBBY};

enum { TOOLS = sizeof tools_tried / sizeof *tools_tried };

/* ---- what stands before a head ---- */

/* A member in the way of one tool at one screw; all numbers count in the box. */
struct shutter {
    size_t screw; /* of the plan */
    size_t joint;
    int tool;
    size_t member;
};

/* The members of one box while their order is looked for. */
struct setting {
    struct planning *planning;
    struct framing *framing;
    struct tool_size tools[TOOLS];
    LIST_OF(struct shutter) shutters; /* by screw */
    bool *set;                        /* by member of the box: stands there, not peeled off yet */
    size_t count;
};

static bool stands_before(const struct setting *setting, const struct screw *screw,
                          const struct tool_size *tool, const struct solid *wood)
{
    const struct screw_kind *kind = &setting->planning->plan->screw_kinds.at[screw->kind];
    int64_t head = vector_along(screw->at, screw->axis);
    int64_t back = head - screw->sign * (tool->length + kind->length);
    int64_t square = 0;

    if (vector_along(wood->low, screw->axis) >= length_larger(head, back) ||
        vector_along(wood->high, screw->axis) <= length_smaller(head, back))
        return false;
    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t gap = axis == screw->axis ? 0
                                          : length_outside(vector_along(screw->at, axis),
                                                           vector_along(wood->low, axis),
                                                           vector_along(wood->high, axis));

        square += gap * gap;
    }
    return square < tool->radius * tool->radius;
}

static void find_shutters_of(struct setting *setting, size_t screw)
{
    assert(screw < setting->planning->plan->screws.count);

    const struct plan *plan = setting->planning->plan;
    const struct screw *driven = &plan->screws.at[screw];
    const struct joint *joint = &plan->joints.at[driven->of];

    for (size_t i = 0; i < setting->count; i++) {
        size_t member = setting->framing->first + i;

        for (int tool = 0; tool < TOOLS; tool++)
            if (member != joint->through && member != joint->into &&
                stands_before(setting, driven, &setting->tools[tool],
                              &plan->members.at[member].solid))
                *LIST_ADD(setting->planning->arena, &setting->shutters) =
                    (struct shutter){screw, driven->of, tool, i};
    }
}

static void find_shutters(struct setting *setting)
{
    const struct plan *plan = setting->planning->plan;

    for (size_t i = setting->framing->first_screw; i < plan->screws.count; i++)
        find_shutters_of(setting, i);
}

/* ---- what can be last ---- */

/* Of the shutters of one screw: are the first so many tools shut out by wood that is set? */
static bool is_shut(const struct setting *setting, size_t at, size_t end, int tools)
{
    bool shut[TOOLS] = {false};

    for (size_t i = at; i < end; i++)
        if (setting->set[setting->shutters.at[i].member])
            shut[setting->shutters.at[i].tool] = true;
    for (int tool = 0; tool < tools; tool++)
        if (!shut[tool])
            return false;
    return true;
}

static size_t end_of_screw(const struct setting *setting, size_t at)
{
    size_t end = at;

    assert(at < setting->shutters.count);
    while (end < setting->shutters.count &&
           setting->shutters.at[end].screw == setting->shutters.at[at].screw)
        end++;
    return end;
}

/* The first shutter of a screw that would have to be driven when a member is set last, and cannot
 * be with the first so many tools; PLAN_NONE when it can be last. */
static size_t what_shuts(const struct setting *setting, size_t member, int tools)
{
    const struct plan *plan = setting->planning->plan;
    size_t first = setting->framing->first;
    size_t end;

    for (size_t at = 0; at < setting->shutters.count; at = end) {
        const struct joint *joint = &plan->joints.at[setting->shutters.at[at].joint];
        bool is_of = joint->through == first + member || joint->into == first + member;

        end = end_of_screw(setting, at);
        if (is_of && setting->set[joint->through - first] && setting->set[joint->into - first] &&
            is_shut(setting, at, end, tools))
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
static void offer_tool(struct setting *setting, const struct shutter *shutter,
                       struct finding *finding)
{
    struct planning *planning = setting->planning;
    const struct screw *screw = &planning->plan->screws.at[shutter->screw];
    const struct solid *wood =
        &planning->plan->members.at[setting->framing->first + shutter->member].solid;
    int64_t head = vector_along(screw->at, screw->axis);
    int64_t gap = length_outside(head, vector_along(wood->low, screw->axis),
                                 vector_along(wood->high, screw->axis));
    int64_t length = gap - planning->plan->screw_kinds.at[screw->kind].length;
    char printed[QUANTITY_TEXT];
    struct cure_draft cure;

    length -= length % LENGTH_MM;
    if (length < TOOL_SHORTEST)
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
static void offer_ways_out(struct setting *setting, const struct shutter *shutter,
                           struct finding *finding)
{
    struct planning *planning = setting->planning;
    const struct joint *joint = &planning->plan->joints.at[shutter->joint];
    int axis = (int)planning->plan->members.at[joint->through].axis;

    offer_staggers(planning, setting->framing->first + shutter->member, axis, finding);
    offer_staggers(planning, joint->into, axis, finding);
    offer_tool(setting, shutter, finding);
}

static void tell_shut(struct setting *setting, const struct shutter *shutter)
{
    struct planning *planning = setting->planning;
    const struct plan *plan = planning->plan;
    const struct joint *joint = &plan->joints.at[shutter->joint];
    struct finding *finding =
        finding_add(planning, FINDING_FRAME_SHUT, ENTITY_box, setting->framing->box->key);

    argument_text(finding, 0, plan->members.at[joint->through].label);
    argument_text(finding, 1, plan->members.at[joint->into].label);
    argument_text(finding, 2, plan->members.at[setting->framing->first + shutter->member].label);
    argument_length(finding, 3, planning->value[TRADE_INLINE_STAGGER]);
    offer_ways_out(setting, shutter, finding);
}

/* ---- the order ---- */

/* Of the members that are set, the last one that can be last; PLAN_NONE when none can. */
static size_t find_last(const struct setting *setting, int tools)
{
    for (size_t i = setting->count; i-- > 0;)
        if (setting->set[i] && what_shuts(setting, i, tools) == PLAN_NONE)
            return i;
    return PLAN_NONE;
}

/* With the plain driver before any other tool. Where no member can be last, the last one is taken
 * and what shuts it is told. */
static size_t take_last(struct setting *setting)
{
    size_t last = PLAN_NONE;

    for (int tools = 1; tools <= TOOLS && last == PLAN_NONE; tools++)
        last = find_last(setting, tools);
    if (last != PLAN_NONE)
        return last;
    for (last = setting->count - 1; !setting->set[last]; last--)
        continue;
    tell_shut(setting, &setting->shutters.at[what_shuts(setting, last, TOOLS)]);
    return last;
}

/* ---- what has to wait ---- */

static int turn_of(const struct plan *plan, const struct joint *joint)
{
    int through = plan->members.at[joint->through].turn;
    int into = plan->members.at[joint->into].turn;

    return through > into ? through : into;
}

/* The first tool that reaches a screw when its joint is made; TOOLS when none does. */
static int tool_then(const struct setting *setting, size_t at, size_t end)
{
    const struct plan *plan = setting->planning->plan;
    int turn = turn_of(plan, &plan->joints.at[setting->shutters.at[at].joint]);
    bool shut[TOOLS + 1] = {false};
    int tool = 0;

    for (size_t i = at; i < end; i++) {
        const struct shutter *shutter = &setting->shutters.at[i];

        if (plan->members.at[setting->framing->first + shutter->member].turn <= turn)
            shut[shutter->tool] = true;
    }
    while (tool < TOOLS && shut[tool])
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

/* What would shut out the tool that a joint is made with: none of that is set yet then. */
static void write_waits(const struct setting *setting, size_t at, size_t end)
{
    struct plan *plan = setting->planning->plan;
    size_t joint = setting->shutters.at[at].joint;
    int tool = tool_then(setting, at, end);

    for (size_t i = at; i < end; i++) {
        size_t member = setting->framing->first + setting->shutters.at[i].member;

        if (setting->shutters.at[i].tool == tool && !waits_already(plan, joint, member))
            *LIST_ADD(setting->planning->arena, &plan->frame_waits) =
                (struct frame_wait){setting->framing->box->key, joint, member};
    }
}

void frame_order(struct framing *framing)
{
    struct plan *plan = framing->planning->plan;
    struct setting setting = {.planning = framing->planning,
                              .framing = framing,
                              .count = plan->members.count - framing->first};

    if (setting.count == 0)
        return;
    setting.set = ARENA_MANY(framing->planning->arena, bool, setting.count);
    for (size_t i = 0; i < setting.count; i++)
        setting.set[i] = true;
    for (int i = 0; i < TOOLS; i++)
        setting.tools[i] = tool_size(framing->planning, tools_tried[i]);
    find_shutters(&setting);
    for (size_t left = setting.count; left > 0; left--) {
        size_t last = take_last(&setting);

        setting.set[last] = false;
        plan->members.at[framing->first + last].turn = (int)left;
    }
    for (size_t at = 0, end; at < setting.shutters.count; at = end) {
        end = end_of_screw(&setting, at);
        write_waits(&setting, at, end);
    }
}
