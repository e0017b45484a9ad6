/*
 * Legs and glides are screwed into solid wood: a member or a panel, `screw.bite.side.min` thick at
 * the place where the leg stands.
 */
#include "plan/check.h"

#include "plan/backing.h"
#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"

static bool holds(const struct planning *planning, const struct box *box,
                  const struct fitting *fitting, const struct solid *solid)
{
    struct area area = solid_on_side(solid, fitting->side);
    int64_t near = backing_near(box, fitting->side, solid);
    int64_t far = backing_far(box, fitting->side, solid);
    int64_t least = planning->value[TRADE_SCREW_BITE_SIDE_MIN];

    return area_holds(&area, fitting->u, fitting->v) && near <= least && far - near >= least;
}

static bool has_wood(const struct planning *planning, const struct box *box,
                     const struct fitting *fitting)
{
    const struct plan *plan = planning->plan;
    struct slice members = plan_members_of(plan, box->key);
    struct slice panels = plan_panels_of(plan, box->key);

    for (size_t i = members.from; i < members.to; i++)
        if (holds(planning, box, fitting, &plan->members.at[i].solid))
            return true;
    for (size_t i = panels.from; i < panels.to; i++)
        if (!plan->panels.at[i].loose && holds(planning, box, fitting, &plan->panels.at[i].solid))
            return true;
    return false;
}

/* Legs that the maker has not placed stand in the corners, where every frame has wood. */
static bool is_placed(const struct fitting *fitting)
{
    return fitting->u > 0 || fitting->v > 0;
}

/* A block from rail to rail over the leg, of the box's own sticks. */
static void offer_block(struct planning *planning, const struct box *box,
                        const struct fitting *fitting, struct finding *finding)
{
    const struct stock *stick = MODEL_FIND(planning->model, stock, box->stick);
    struct cure_draft cure = cure_begin(planning, "Put a block from rail to rail over it");
    int64_t half;

    if (!stick || fitting->side != SIDE_BOTTOM || box->frame != FRAME_CRATE)
        return;
    half = stick->thickness / 2;
    cure_refer(&cure, ENTITY_member, 0, "box", box->key);
    cure_word(&cure, ENTITY_member, 0, "kind", words_member.at[MEMBER_BLOCK].name);
    cure_word(&cure, ENTITY_member, 0, "axis", words_axis.at[AXIS_Y].name);
    cure_length(&cure, ENTITY_member, 0, "x", fitting->u > half ? fitting->u - half : 0);
    cure_length(&cure, ENTITY_member, 0, "y", stick->thickness);
    cure_offer(&cure, finding);
}

void check_legs(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];
        const struct box *box = MODEL_FIND(model, box, fitting->box);
        struct finding *finding;

        if ((fitting->kind != FITTING_LEG && fitting->kind != FITTING_GLIDE) || !box ||
            !is_placed(fitting) || has_wood(planning, box, fitting))
            continue;
        finding = finding_add(planning, FINDING_LEG_NO_WOOD, ENTITY_fitting, fitting->key);
        argument_length(finding, 0, fitting->u);
        argument_length(finding, 1, fitting->v);
        argument_length(finding, 2, planning->value[TRADE_SCREW_BITE_SIDE_MIN]);
        offer_block(planning, box, fitting, finding);
    }
}
