/*
 * Covers behind a mattress: what lies `hidden.depth` below its top is seen by nobody, so that thin
 * cloth may begin there. The seam may lie lower: as far down as the cover's cloth reaches when it
 * is railroaded from the top. Told where that saves a step of cloth.
 */
#include "plan/check.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/hidden.h"

static int64_t length_now(const struct cover *cover)
{
    return cover->railroaded ? cover->cut_width : cover->widths * cover->cut_height;
}

/* The same of what is left of the cover above a seam. */
static int64_t length_above(const struct cover *cover, const struct stock *stock, int64_t height)
{
    bool lies = stock->railroad && !stock->pile && stock->repeat_along == 0 &&
                stock->repeat_across == 0 && height <= stock->width;

    return lies ? length_smaller(cover->widths * height, cover->cut_width) : cover->widths * height;
}

static void check_cover(struct planning *planning, const struct cover *cover)
{
    const struct layer *layer = MODEL_FIND(planning->model, layer, cover->layer);
    const struct box *box = MODEL_FIND(planning->model, box, layer->box);
    const struct stock *stock = MODEL_FIND(planning->model, stock, layer->stock);
    int64_t above = cover->cut_height - cover->below + planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t hidden, seam, saved;
    struct finding *finding;

    if (!box || !stock || layer->kind != LAYER_COVER || layer->shape != SHAPE_WRAPPED ||
        layer->v != 0)
        return;
    hidden = hidden_height(planning, box, layer->side);
    seam = above - stock->width > 0 ? length_smaller(hidden, above - stock->width) : hidden;
    saved = length_now(cover) - length_above(cover, stock, above - seam);
    if (hidden <= 0 || saved < planning->value[TRADE_CLOTH_ROUND])
        return;
    finding = finding_add(planning, FINDING_COVER_HIDDEN, ENTITY_layer, layer->key);
    argument_length(finding, 0, hidden);
    argument_length(finding, 1, seam);
    argument_length(finding, 2, saved);
}

void check_hidden(struct planning *planning)
{
    for (size_t i = 0; i < planning->plan->covers.count; i++)
        check_cover(planning, &planning->plan->covers.at[i]);
}
