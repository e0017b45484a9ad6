/*
 * What the card of a step says of the bolts of its join: the holes for bolt, washer and T-nut.
 */
#include "plan/card.h"

static const struct plan_bolt *first_bolt(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->bolts.count; i++)
        if (plan->points.at[plan->bolts.at[i].point].join == join)
            return &plan->bolts.at[i];
    return NULL;
}

static void add_line(struct carding *carding, const char *line)
{
    struct step *step = carding->step;

    if (step->action_count < CARD_ACTIONS)
        step->actions[step->action_count++] = line;
}

void card_bolts(struct carding *carding)
{
    const struct planning *planning = carding->planning;
    const struct plan_bolt *bolt = first_bolt(planning->plan, carding->step->join);

    if (!bolt)
        return;
    add_line(carding,
             arena_format(planning->arena, "Drill %s through both boxes in one pass, straight",
                          card_length(carding, bolt->hole)));
    add_line(carding, arena_format(planning->arena,
                                   "Open the far side to %s and drive the T-nuts in; try each",
                                   card_length(carding, bolt->nut_hole)));
    if (bolt->counterbore_depth > 0)
        add_line(carding, arena_format(planning->arena, "Let the heads in: %s wide, %s deep",
                                       card_length(carding, bolt->counterbore),
                                       card_length(carding, bolt->counterbore_depth)));
}
