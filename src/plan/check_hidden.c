/*
 * Covers behind a mattress: what lies `hidden.depth` below its top is seen by nobody, so that thin
 * cloth may begin there. The seam may lie lower: as far down as the cover's cloth reaches when it
 * is railroaded from the top. Told where that saves a step of cloth.
 */
#include "plan/check.h"

#include "model/offer.h"
#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/hidden.h"

static int64_t length_now(const struct cover *cover)
{
    return cover->railroaded ? cover->cut_width : cover->width_count * cover->cut_height;
}

/* The same of what is left of the cover above a seam. */
static int64_t length_above(const struct cover *cover, const struct stock *stock, int64_t height)
{
    bool lies = stock->railroad && !stock->pile && stock->repeat_along == 0 &&
                stock->repeat_across == 0 && height <= stock->width;

    return lies ? length_smaller(cover->width_count * height, cover->cut_width)
                : cover->width_count * height;
}

/* ---- the way out ---- */

/* What a length of cloth costs at the least; 0 where no shop list says. */
static int64_t price_by_length(const struct model *model, int64_t stock)
{
    int64_t least = 0;

    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        int64_t price;

        if (offer->stock == stock && offer->length > 0 && offer->price > 0 &&
            !whole_share(offer_price(model, offer), LENGTH_MAX, offer->length, &price) &&
            (least == 0 || price < least))
            least = price;
    }
    return least;
}

/* Thin cloth to sew on: what the build's linings are made of, else cloth that costs less; 0 without
 * any. */
static int64_t thin_cloth(const struct model *model, const struct layer *cover)
{
    int64_t least = price_by_length(model, cover->stock);
    int64_t best = 0;

    for (size_t i = 0; i < model->layers.count; i++)
        if (model->layers.at[i].kind == LAYER_LINING && model->layers.at[i].stock != cover->stock)
            return model->layers.at[i].stock;
    for (size_t i = 0; i < model->stocks.count; i++) {
        const struct stock *stock = &model->stocks.at[i];
        int64_t price = price_by_length(model, stock->key);

        if (stock->kind != STOCK_CLOTH || stock->key == cover->stock || price == 0 ||
            (least > 0 && price >= least))
            continue;
        best = stock->key;
        least = price;
    }
    return best;
}

/* Up to a height; with the rest of the cover railroaded where that makes it come out of one width.
 */
static void offer_thin(struct planning *planning, struct finding *finding,
                       const struct layer *layer, int64_t height, bool railroaded)
{
    struct cure_draft cure =
        cure_begin(planning, railroaded ? "Sew thin cloth on below, and railroad what is above it"
                                        : "Sew thin cloth on below");
    int64_t thin = thin_cloth(planning->model, layer);

    if (thin == 0)
        return;
    cure_refer(&cure, ENTITY_layer, layer->key, "thin", thin);
    cure_length(&cure, ENTITY_layer, layer->key, "thin_height", height);
    if (railroaded)
        cure_word(&cure, ENTITY_layer, layer->key, "direction",
                  words_direction.at[DIRECTION_ACROSS].name);
    cure_offer_on_trial(&cure, finding);
}

/* ---- covers ---- */

static void check_whole(struct planning *planning, const struct cover *cover,
                        const struct layer *layer, const struct stock *stock, int64_t hidden)
{
    int64_t above = cover->cut_height - cover->below + planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t seam = above - stock->width > 0 ? length_smaller(hidden, above - stock->width) : hidden;
    int64_t saved = length_now(cover) - length_above(cover, stock, above - seam);
    bool lies = length_above(cover, stock, above - seam) < cover->width_count * (above - seam);
    struct finding *finding;

    if (hidden <= 0 || saved < planning->value[TRADE_CLOTH_ROUND])
        return;
    finding = finding_add(planning, FINDING_COVER_HIDDEN, ENTITY_layer, layer->key);
    argument_length(finding, 0, hidden);
    argument_length(finding, 1, seam);
    argument_length(finding, 2, saved);
    if (lies && !cover->railroaded)
        offer_thin(planning, finding, layer, seam, true);
    offer_thin(planning, finding, layer, cover->railroaded ? seam : hidden, false);
}

static void check_thin(struct planning *planning, const struct layer *layer, int64_t hidden)
{
    struct finding *finding;

    if (layer->v + layer->thin_height <= hidden)
        return;
    finding = finding_add(planning, FINDING_THIN_SHOWS, ENTITY_layer, layer->key);
    argument_length(finding, 0, layer->v + layer->thin_height);
    argument_length(finding, 1, length_larger(hidden, 0));
}

static void check_cover(struct planning *planning, const struct cover *cover)
{
    const struct layer *layer = MODEL_FIND(planning->model, layer, cover->layer);
    const struct box *box = MODEL_FIND(planning->model, box, layer->box);
    const struct stock *stock = MODEL_FIND(planning->model, stock, layer->stock);

    if (!box || !stock || layer->kind != LAYER_COVER || layer->shape != SHAPE_WRAPPED)
        return;
    if (cover->thin > 0)
        check_thin(planning, layer, hidden_height(planning, box, layer->side));
    else if (layer->v == 0)
        check_whole(planning, cover, layer, stock, hidden_height(planning, box, layer->side));
}

void check_hidden(struct planning *planning)
{
    for (size_t i = 0; i < planning->plan->covers.count; i++)
        check_cover(planning, &planning->plan->covers.at[i]);
}
