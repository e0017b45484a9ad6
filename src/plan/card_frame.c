/*
 * What the card of a frame says of the order of its members, where that matters: a line for each
 * member that has to wait, with the joints that are made before it.
 */
#include "plan/card.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

/* Of the members of a box that wait for a joint, the one with the first turn after `turn`;
 * PLAN_NONE when there is none. */
static size_t next_waiting(const struct plan *plan, int64_t box, int turn)
{
    size_t found = PLAN_NONE;

    for (size_t i = 0; i < plan->frame_waits.count; i++) {
        const struct frame_wait *wait = &plan->frame_waits.at[i];
        int its = plan->members.at[wait->member].turn;

        if (wait->box == box && its > turn &&
            (found == PLAN_NONE || its < plan->members.at[found].turn))
            found = wait->member;
    }
    return found;
}

/* As many of the joints as the line takes. */
static const char *line_for(const struct carding *carding, size_t member)
{
    const struct plan *plan = carding->planning->plan;
    char line[CARD_LINE];
    size_t length;

    assert(member < plan->members.count);
    snprintf(line, sizeof line, "Before %s is on, screw", plan->members.at[member].label);
    length = strlen(line);
    for (size_t i = 0; i < plan->frame_waits.count; i++) {
        const struct frame_wait *wait = &plan->frame_waits.at[i];
        const struct joint *joint = &plan->joints.at[wait->joint];
        char part[2 * PLAN_LABEL + 16];

        if (wait->member != member)
            continue;
        snprintf(part, sizeof part, " %s to %s,", plan->members.at[joint->through].label,
                 plan->members.at[joint->into].label);
        if (length + strlen(part) + sizeof " and more" > sizeof line)
            return arena_format(carding->planning->arena, "%s and more", line);
        snprintf(line + length, sizeof line - length, "%s", part);
        length += strlen(part);
    }
    line[length - 1] = '\0';
    return arena_text(carding->planning->arena, line);
}

void card_frame_order(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct step *step = carding->step;
    size_t member = next_waiting(plan, step->box, 0);

    while (member != PLAN_NONE && step->action_count < CARD_ACTIONS) {
        size_t after = next_waiting(plan, step->box, plan->members.at[member].turn);
        bool no_room = after != PLAN_NONE && step->action_count + 1 == CARD_ACTIONS;

        card_say(carding, no_room ? "Set the other members in the order of their turns: later ones "
                                    "shut the way"
                                  : line_for(carding, member));
        member = after;
    }
}
