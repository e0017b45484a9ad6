/*
 * What the card of a step says of the bolts of its join: the holes for bolt, washer and T-nut, and
 * what is taken for them.
 */
#include "plan/card.h"

static const struct plan_bolt *first_bolt(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->bolts.count; i++)
        if (plan->points.at[plan->bolts.at[i].point].join == join)
            return &plan->bolts.at[i];
    return NULL;
}

void card_nuts(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct plan_bolt *bolt = first_bolt(plan, carding->step->join);
    const struct box *box = bolt ? MODEL_FIND(plan->facts, box, bolt->nut_box) : NULL;

    if (box)
        card_say(carding, arena_format(carding->planning->arena,
                                       "Open the holes in %s to %s from the far side", box->name,
                                       card_length(carding, bolt->nut_hole)));
}

void card_bolts(struct carding *carding)
{
    const struct planning *planning = carding->planning;
    const struct plan_bolt *bolt = first_bolt(planning->plan, carding->step->join);

    if (!bolt)
        return;
    if (card_to_drill(carding) > 0)
        card_say(carding,
                 arena_format(planning->arena, "Drill %s through both boxes in one pass, straight",
                              card_length(carding, bolt->hole)));
    if (bolt->counterbore_depth > 0)
        card_say(carding, arena_format(planning->arena, "Let the heads in: %s wide, %s deep",
                                       card_length(carding, bolt->counterbore),
                                       card_length(carding, bolt->counterbore_depth)));
}

/* ---- what they take ---- */

static int64_t bolts_of(const struct plan *plan, int64_t join)
{
    int64_t count = 0;

    for (size_t i = 0; i < plan->bolts.count; i++)
        count += plan->points.at[plan->bolts.at[i].point].join == join;
    return count;
}

/* "5/16" */
static const char *thickness(const struct carding *carding, const struct plan_bolt *bolt)
{
    char printed[QUANTITY_TEXT];

    quantity_print(printed, QUANTITY_LENGTH, model_units(carding->planning->model), bolt->diameter);
    return arena_text(carding->planning->arena, printed);
}

void card_need_nuts(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct plan_bolt *bolt = first_bolt(plan, carding->step->join);

    if (bolt)
        card_need_count(carding, bolts_of(plan, carding->step->join), "T-nuts",
                        thickness(carding, bolt));
}

void card_need_bolts(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct plan_bolt *bolt = first_bolt(plan, carding->step->join);
    int64_t count = bolts_of(plan, carding->step->join);

    if (!bolt)
        return;
    card_need_count(carding, count, "bolts",
                    arena_format(carding->planning->arena, "%s x %s", thickness(carding, bolt),
                                 card_length(carding, bolt->length)));
    card_need_count(carding, count, "washers", "");
}
