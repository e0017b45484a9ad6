/*
 * Panels beside a main face whose outline is no rectangle. They are cut from the box's sizes: one
 * at a side that the outline leaves lower stands out over it. What is bent over the top is cut as
 * long as the outline (panel.c).
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"

/* How far the panels of a side reach along an axis; 0 without any. */
static int64_t reach_of(const struct plan *plan, const struct box *box, int64_t side, int axis)
{
    struct slice panels = plan_panels_of(plan, box->key);
    int64_t reach = 0;

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->side == side)
            reach =
                length_larger(reach, side_v_axis(side) == axis ? panel->area.v1 : panel->area.u1);
    }
    return reach;
}

/* The one facing of a side, where it takes in all of it. */
static const struct facing *whole_facing(const struct model *model, const struct box *box,
                                         int64_t side)
{
    const struct facing *found = NULL;

    for (size_t i = 0; i < model->facings.count; i++) {
        const struct facing *facing = &model->facings.at[i];

        if (facing->box != box->key || facing->side != side)
            continue;
        if (found || facing->v > 0 || facing->height > 0)
            return NULL;
        found = facing;
    }
    return found;
}

static void check_edge(struct planning *planning, const struct box *box, int64_t edge)
{
    const struct model *model = planning->model;
    int64_t side = edge_side(box->main_side, edge);
    int axis = side_v_axis(box->main_side);
    int64_t along = curve_side(model, box, edge);
    int64_t reach = reach_of(planning->plan, box, side, axis);
    const struct facing *facing = whole_facing(model, box, side);
    struct cure_draft cure = cure_begin(planning, "Cut it as high as the outline is there");
    struct finding *finding;

    if (reach <= along)
        return;
    finding = finding_add(planning, FINDING_PANEL_ON_OUTLINE, ENTITY_box, box->key);
    argument_text(finding, 0, words_side.at[side].name);
    argument_length(finding, 1, along);
    argument_length(finding, 2, reach);
    if (!facing || axis != side_v_axis(side))
        return;
    cure_length(&cure, ENTITY_facing, facing->key, "height", along);
    cure_offer(&cure, finding);
}

void check_outlines(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        const struct box *box = &planning->model->boxes.at[i];

        if (!curve_has(box, box->main_side))
            continue;
        check_edge(planning, box, EDGE_LEFT);
        check_edge(planning, box, EDGE_RIGHT);
    }
}
