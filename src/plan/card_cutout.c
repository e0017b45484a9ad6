/*
 * What cards say of holes that are cut into panels: the panel's own card, where and how large; the
 * card that marks what stays bare, which of them a hand comes through.
 */
#include "plan/card.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/layers.h"

#include <inttypes.h>

/* Whether the hole's middle lies in a panel that is fixed in this step. */
static bool is_cut_here(const struct carding *carding, const struct cutout *hole)
{
    const struct planning *planning = carding->planning;

    for (size_t i = 0; i < planning->plan->panels.count; i++) {
        const struct panel *panel = &planning->plan->panels.at[i];

        if (panel->box == hole->box && panel->side == hole->side &&
            area_holds(&panel->area, hole->u + hole->width / 2, hole->v + hole->height / 2) &&
            counted_facing(planning, &carding->counted, panel->facing)->first ==
                carding->step->facing)
            return true;
    }
    return false;
}

static const char *edge_name(int64_t side, int64_t edge)
{
    return words_side.at[edge_side(side, edge)].name;
}

/* "Cut the access hole first: 4 in x 6 in, 10 in from the left, 3 in from the bottom". */
static const char *hole_line(const struct carding *carding, const struct cutout *hole)
{
    return arena_format(carding->planning->arena,
                        "Cut the %s first: %s x %s, %s from the %s, %s from the %s",
                        *hole->purpose ? hole->purpose : "hole", card_length(carding, hole->width),
                        card_length(carding, hole->height), card_length(carding, hole->u),
                        edge_name(hole->side, EDGE_LEFT), card_length(carding, hole->v),
                        edge_name(hole->side, EDGE_BOTTOM));
}

/* As many lines as a panel's own words leave. */
#define CUTOUTS_MOST 4

void card_cutouts(struct carding *carding)
{
    const struct model *model = carding->planning->model;
    int room = CUTOUTS_MOST; /* the last line tells of the rest */
    int64_t more = 0;

    for (size_t i = 0; i < model->cutouts.count; i++) {
        const struct cutout *hole = &model->cutouts.at[i];

        if (hole->box != carding->step->box || !is_cut_here(carding, hole))
            continue;
        if (room > 1)
            card_say(carding, hole_line(carding, hole));
        else
            more++;
        room -= room > 1;
    }
    if (more > 0)
        card_say(carding,
                 arena_format(carding->planning->arena,
                              "And %" PRId64 " more: the sheet of the box has them all", more));
}

/* ---- cloth over them ---- */

/* Hands and drivers come through it, and the cloth is loose there until then. */
static bool is_way_in(const struct plan *plan, const struct cutout *hole)
{
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];

        if (junction->head_inside && junction->head_box == hole->box &&
            junction->reach_side == hole->side)
            return true;
    }
    return false;
}

void card_cloth_holes(struct carding *carding)
{
    const struct planning *planning = carding->planning;
    const struct model *model = planning->model;
    const struct layer *layer = MODEL_FIND(model, layer, carding->step->layer);

    for (size_t i = 0; layer && i < model->cutouts.count; i++) {
        const struct cutout *hole = &model->cutouts.at[i];
        const struct box *box = MODEL_FIND(model, box, hole->box);

        if (box && layer_touches(model, layer, box->key) && !is_way_in(planning->plan, hole) &&
            drape_covers(planning, layer, box, hole->side, hole->u + hole->width / 2,
                         hole->v + hole->height / 2))
            card_say(carding, arena_format(planning->arena,
                                           "Over the %s slit the cloth crosswise, fold it in, "
                                           "staple it to the edge of the hole",
                                           *hole->purpose ? hole->purpose : "hole"));
    }
}

/* Each hole that padding is kept off stands once in the patches of a layer. */
void card_access_holes(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    int64_t layer = 0;
    int64_t count = 0;

    for (size_t i = 0; i < plan->patches.count; i++) {
        const struct patch *patch = &plan->patches.at[i];
        const struct plan_point *point = &plan->points.at[patch->point];

        if (point->join != carding->step->join || patch->slit ||
            !plan_junction(plan, point->join)->head_inside || (layer && layer != patch->layer))
            continue;
        layer = patch->layer;
        count++;
    }
    if (count > 0)
        card_say(carding, arena_format(carding->planning->arena,
                                       "No padding over the access hole%s: hatch %s",
                                       count > 1 ? "s" : "", count > 1 ? "them too" : "it too"));
}
