/*
 * Covers side by side on one face meet at seams. A seam off the middle wants its like as far on the
 * other side: both figures are told where they differ.
 */
#include "plan/check.h"

#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"

#include <stdlib.h>

/* Layers that lie flush, as far as eyes see. */
#define EYE (LENGTH_INCH / 8)

static bool on_face(const struct layer *layer, const struct layer *like)
{
    return layer->kind == LAYER_COVER && layer->box == like->box && layer->group == like->group &&
           layer->side == like->side;
}

/* Does a cover of the same face begin where this one ends? */
static bool is_seam(const struct model *model, const struct layer *like, const struct box *box,
                    int64_t u)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *next = &model->layers.at[i];

        if (on_face(next, like) && next != like && llabs(drape_face(next, box).u0 - u) <= EYE)
            return true;
    }
    return false;
}

/* The seam on the other side of the middle that stands nearest to the mirror image of u; -1
 * without any. */
static int64_t nearest_mate(const struct model *model, const struct layer *like,
                            const struct box *box, int64_t u)
{
    int64_t width = face_area(box, like->side).u1;
    int64_t best = -1;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        int64_t at;

        if (!on_face(layer, like))
            continue;
        at = drape_face(layer, box).u1;
        if ((at < width / 2) == (u < width / 2) || !is_seam(model, layer, box, at))
            continue;
        if (best < 0 || llabs(at - (width - u)) < llabs(best - (width - u)))
            best = at;
    }
    return best;
}

static void check_seam(struct planning *planning, const struct layer *layer, const struct box *box)
{
    int64_t width = face_area(box, layer->side).u1;
    int64_t u = drape_face(layer, box).u1;
    int64_t mate = nearest_mate(planning->model, layer, box, u);
    struct finding *finding;

    if (!is_seam(planning->model, layer, box, u) || llabs(u - width / 2) <= EYE ||
        (mate >= 0 && llabs(mate - (width - u)) <= EYE))
        return;
    finding = finding_add(planning, mate < 0 ? FINDING_SEAM_ALONE : FINDING_SEAM_UNEVEN,
                          ENTITY_layer, layer->key);
    argument_length(finding, 0, llabs(u - width / 2));
    argument_text(finding, 1, u < width / 2 ? "left" : "right");
    if (mate >= 0)
        argument_length(finding, 2, llabs(mate - width / 2));
}

void check_seams(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        const struct box *box = MODEL_FIND(model, box, layer->box);

        if (box && layer->kind == LAYER_COVER)
            check_seam(planning, layer, box);
    }
}
