#include "plan/meeting.h"

#include "plan/steps.h"

#include <assert.h>
#include <stdlib.h>

/* ---- steps ---- */

/* Steps that put a layer on; the first of them in the order counts. */
static bool lays_on(int kind)
{
    assert(kind >= 0 && kind < STEP_KINDS);

    static const bool lays[STEP_KINDS] = {
        [STEP_PAD] = true,  [STEP_BATTING] = true, [STEP_LINING] = true, [STEP_COVER] = true,
        [STEP_BACK] = true, [STEP_DUST] = true,    [STEP_TRIM] = true};

    return lays[kind];
}

static bool is_panel_step(int kind)
{
    return kind == STEP_PANEL || kind == STEP_WEB;
}

static bool sets_box(int kind)
{
    return kind == STEP_OFFER || kind == STEP_DRIVE || kind == STEP_FIX;
}

static bool places(const struct plan *plan, const struct step *step, enum blocker_kind kind,
                   int64_t item)
{
    const struct facing *facing;

    switch (kind) {
    case BLOCKER_MEMBER:
        return step->kind == STEP_FRAME && step->box == plan->members.at[item].box;
    case BLOCKER_LAYER:
        return lays_on(step->kind) && step->layer == item;
    case BLOCKER_JOIN:
        return sets_box(step->kind) && step->join == item;
    case BLOCKER_FACING:
        facing = MODEL_FIND(plan->facts, facing, item);
        if (!facing || !is_panel_step(step->kind))
            return false;
        if (step->facing == item)
            return true;
        /* a step takes in every panel of its face */
        const struct facing *first = MODEL_FIND(plan->facts, facing, step->facing);
        return first && first->box == facing->box && first->side == facing->side;
    default:
        return step->kind == STEP_SET;
    }
}

static size_t placing_step(const struct plan *plan, enum blocker_kind kind, int64_t item)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (places(plan, &plan->steps.at[i], kind, item))
            return i;
    }
    return PLAN_NONE;
}

static size_t flap_step(const struct plan *plan, int64_t layer, int64_t join)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];

        if (step->kind == STEP_FLAP && step->layer == layer && step->join == join)
            return i;
    }
    return PLAN_NONE;
}

size_t meeting_drive_step(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];

        if ((step->kind == STEP_DRIVE || step->kind == STEP_FIX) && step->join == join)
            return i;
    }
    return PLAN_NONE;
}

/* ---- the list ---- */

struct collecting {
    struct meetings *meetings;
    const struct plan *plan;
    int64_t join;
    struct arena *arena;
};

static void add_meeting(const struct collecting *collecting, enum blocker_kind kind, int64_t item,
                        bool lasting)
{
    const struct plan *plan = collecting->plan;

    for (size_t i = 0; i < collecting->meetings->of.count; i++) {
        const struct meeting *meeting = &collecting->meetings->of.at[i];

        if (meeting->kind == kind && meeting->item == item)
            return;
    }
    *LIST_ADD(collecting->arena, &collecting->meetings->of) = (struct meeting){
        .kind = kind,
        .item = item,
        .placed = placing_step(plan, kind, item),
        .closed = kind == BLOCKER_LAYER ? flap_step(plan, item, collecting->join) : PLAN_NONE,
        .lasting = lasting};
}

static void add_blockers(const struct collecting *collecting)
{
    const struct plan *plan = collecting->plan;

    for (size_t i = 0; i < plan->ways.count; i++) {
        const struct plan_way *way = &plan->ways.at[i];

        if (way->join != collecting->join || way->state != WAY_CHOSEN)
            continue;
        for (size_t k = 0; k < way->blocker_count; k++) {
            const struct blocker *blocker = &plan->blockers.at[way->first_blocker + k];

            add_meeting(collecting, blocker->kind, blocker->item, blocker->lasting);
        }
    }
}

static void add_waiting(const struct collecting *collecting)
{
    const struct plan *plan = collecting->plan;

    for (size_t i = 0; i < plan->constraints.count; i++) {
        const struct constraint *constraint = &plan->constraints.at[i];

        if (constraint->join != collecting->join)
            continue;
        if (constraint->kind == JOIN_BEFORE_LAYER)
            add_meeting(collecting, BLOCKER_LAYER, constraint->item, false);
        else if (constraint->kind == JOIN_BEFORE_FACING)
            add_meeting(collecting, BLOCKER_FACING, constraint->item, false);
        else if (constraint->kind == JOIN_BEFORE_JOIN)
            add_meeting(collecting, BLOCKER_JOIN, constraint->item, false);
    }
}

static int compare_meetings(const void *a, const void *b)
{
    const struct meeting *left = a;
    const struct meeting *right = b;
    int kinds = (int)left->kind - (int)right->kind;

    if (left->placed != right->placed)
        return left->placed < right->placed ? -1 : 1;
    return kinds ? kinds : (left->item > right->item) - (left->item < right->item);
}

void meetings_make(struct meetings *meetings, const struct plan *plan, int64_t join,
                   struct arena *arena)
{
    const struct collecting collecting = {meetings, plan, join, arena};

    *meetings = (struct meetings){{{0}}};
    add_blockers(&collecting);
    add_waiting(&collecting);
    if (meetings->of.count)
        qsort(meetings->of.at, meetings->of.count, sizeof *meetings->of.at, compare_meetings);
}

/* ---- names ---- */

static const char *box_name(const struct plan *plan, int64_t key)
{
    const struct box *box = MODEL_FIND(plan->facts, box, key);

    return box ? box->name : "a box that has gone";
}

void meeting_name(const struct plan *plan, enum blocker_kind kind, int64_t item, struct text *out)
{
    const struct facing *facing = MODEL_FIND(plan->facts, facing, item);
    const struct layer *layer = MODEL_FIND(plan->facts, layer, item);
    const struct join *join = MODEL_FIND(plan->facts, join, item);

    if (kind == BLOCKER_MEMBER)
        text_format(out, "%s %s", words_member.at[plan->members.at[item].kind].name,
                    plan->members.at[item].label);
    else if (kind == BLOCKER_FACING && facing)
        text_format(out, "%s of %s, %s", words_facing.at[facing->kind].name,
                    box_name(plan, facing->box), words_side.at[facing->side].name);
    else if (kind == BLOCKER_LAYER && layer)
        text_format(out, "%s of %s", words_layer.at[layer->kind].name, box_name(plan, layer->box));
    else if (kind == BLOCKER_JOIN && join)
        text_format(out, "what join %s sets there", join->name);
    else
        text_add(out, kind == BLOCKER_FLOOR ? "the floor" : "the wall");
}
