/*
 * A join that came to mind late: its holes are not drilled, and something soft lies over them. The
 * bit would wind it up, so it comes off there first.
 */
#include "plan/check.h"

#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/layers.h"
#include "plan/point.h"
#include "plan/steps.h"

static bool is_drilled(const struct model *model, int64_t join)
{
    for (size_t i = 0; i < model->ticks.count; i++) {
        const char *step = model->ticks.at[i].step;

        if (step_kind_of(step) == STEP_DRILL && step_key_of(step) == join)
            return true;
    }
    return false;
}

static int64_t covered_points(const struct planning *planning, const struct junction *junction,
                              const struct layer *layer, bool of_b)
{
    const struct plan *plan = planning->plan;
    const struct box *box =
        MODEL_FIND(planning->model, box, of_b ? junction->box_b : junction->box_a);
    int64_t covered = 0;

    for (size_t i = 0; box && i < junction->point_count; i++) {
        int64_t u, v;

        point_on_face(planning, junction, &plan->points.at[junction->first_point + i], of_b, &u,
                      &v);
        covered += layer_touches(planning->model, layer, box->key) &&
                   drape_covers(planning, layer, box, point_side(planning, junction, of_b), u, v);
    }
    return covered;
}

static void check_layer(struct planning *planning, const struct junction *junction,
                        const struct step *step)
{
    const struct layer *layer = MODEL_FIND(planning->model, layer, step->layer);
    int64_t covered;
    struct finding *finding;

    if (!layer || !step->ticked)
        return;
    covered = covered_points(planning, junction, layer, false);
    if (covered == 0 && junction->box_b != 0)
        covered = covered_points(planning, junction, layer, true);
    if (covered == 0)
        return;
    finding = finding_add(planning, FINDING_DRILL_PADDED, ENTITY_join, junction->join);
    argument_quantity(finding, 0, QUANTITY_COUNT, covered);
    argument_text(finding, 1, step->title);
}

void check_drilling(struct planning *planning)
{
    static const bool lays_on[STEP_KINDS] = {
        [STEP_PAD] = true, [STEP_BATTING] = true, [STEP_LINING] = true, [STEP_COVER] = true};
    const struct plan *plan = planning->plan;

    if (planning->model->ticks.count == 0)
        return;
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];

        if (junction->point_count == 0 || is_drilled(planning->model, junction->join))
            continue;
        for (size_t k = 0; k < plan->steps.count; k++)
            if (lays_on[plan->steps.at[k].kind])
                check_layer(planning, junction, &plan->steps.at[k]);
    }
}
