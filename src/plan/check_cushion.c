/*
 * Cushions, which have no wood, and foam that is thicker than it comes.
 *
 * 1  A cushion's cover is sewn to itself all round: what is left open could be stapled to nothing,
 *    and would be cut a face and its boxing short. One that slips on and off is hemmed where it
 *    hangs open.
 * 2  Its padding fills it, since its cover is cut to the cushion's size.
 * 3  A layer of foam is one slab as thick as it comes; for a thicker one too little is bought.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/padding.h"

/* Less than this is taken up by batting and by the foam's crown. Common practice, no source. */
#define SLACK (LENGTH_INCH / 2)

/* ---- sewn shut ---- */

static bool has_other_face(const struct model *model, const struct layer *cover)
{
    if (cover->both)
        return true;
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *other = &model->layers.at[i];

        if (other->kind == LAYER_COVER && other->box == cover->box &&
            other->group == cover->group && layer_has_face(other, side_opposite(cover->side)))
            return true;
    }
    return false;
}

static bool is_sewn_shut(const struct model *model, const struct layer *cover)
{
    bool shut = cover->shape == SHAPE_SEWN && has_other_face(model, cover);

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        shut = shut && layer_ending(cover, edge) == ENDING_SEWN;
    return shut;
}

static void offer_to_sew(struct planning *planning, const struct layer *cover,
                         struct finding *finding)
{
    static const char *const edges[EDGE_COUNT] = {"left", "right", "top", "bottom"};
    struct cure_draft cure = cure_begin(planning, "Sew it with all four sides");

    cure_word(&cure, ENTITY_layer, cover->key, "shape", words_shape.at[SHAPE_SEWN].name);
    if (!has_other_face(planning->model, cover)) {
        cure.text = "Sew it with both faces and all four sides";
        cure_word(&cure, ENTITY_layer, cover->key, "both", "yes");
    }
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        cure_word(&cure, ENTITY_layer, cover->key, edges[edge], words_ending.at[ENDING_SEWN].name);
    cure_offer(&cure, finding);
}

static void check_sewn(struct planning *planning, const struct layer *layer)
{
    const struct model *model = planning->model;

    if (layer->kind != LAYER_COVER || layer->slip || layer_lies_on_wood(model, layer) ||
        is_sewn_shut(model, layer))
        return;
    offer_to_sew(planning, layer,
                 finding_add(planning, FINDING_CUSHION_OPEN, ENTITY_layer, layer->key));
}

/* ---- filled ---- */

/* The whole slab of a cushion that lies first; NULL where none fills its face. */
static const struct layer *first_slab(const struct model *model, const struct box *box)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (layer->kind == LAYER_FOAM && layer->box == box->key && layer->width == 0 &&
            layer->height == 0)
            return layer;
    }
    return NULL;
}

static int64_t padding_along(const struct planning *planning, const struct box *box, int axis)
{
    const struct model *model = planning->model;
    int64_t sum = 0;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (layer->box == box->key && side_axis(layer->side) == axis &&
            (layer->kind == LAYER_FOAM || layer->kind == LAYER_BATTING))
            sum += (layer->both ? 2 : 1) * layer_thickness(planning->plan, layer);
    }
    return sum;
}

static void offer_slab(struct planning *planning, const struct layer *slab, struct finding *finding)
{
    struct cure_draft cure = cure_begin(planning, "Lay one more slab of it");

    cure_refer(&cure, ENTITY_layer, 0, "box", slab->box);
    cure_word(&cure, ENTITY_layer, 0, "kind", words_layer.at[LAYER_FOAM].name);
    cure_word(&cure, ENTITY_layer, 0, "shape", words_shape.at[SHAPE_SLAB].name);
    cure_word(&cure, ENTITY_layer, 0, "side", words_side.at[slab->side].name);
    cure_refer(&cure, ENTITY_layer, 0, "stock", slab->stock);
    cure_count(&cure, ENTITY_layer, 0, "rank", slab->rank);
    cure_offer(&cure, finding);
}

static void check_filled(struct planning *planning, const struct box *box)
{
    const struct layer *slab = first_slab(planning->model, box);
    int axis = slab ? side_axis(slab->side) : 0;
    int64_t depth = vector_along(box_size(box), axis);
    int64_t padding = padding_along(planning, box, axis);
    struct finding *finding;

    if (box->frame != FRAME_CUSHION || !slab || depth - padding <= SLACK)
        return;
    finding = finding_add(planning, FINDING_CUSHION_SLACK, ENTITY_box, box->key);
    argument_length(finding, 0, padding);
    argument_length(finding, 1, depth);
    if (padding + layer_thickness(planning->plan, slab) <= depth + SLACK)
        offer_slab(planning, slab, finding);
}

/* ---- as thick as it comes ---- */

static void check_thickness(struct planning *planning, const struct layer *layer)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, layer->stock);
    struct finding *finding;
    struct cure_draft cure;

    if (layer->kind != LAYER_FOAM || !stock || stock->kind != STOCK_FOAM || stock->thickness == 0 ||
        layer->thickness <= stock->thickness)
        return;
    finding = finding_add(planning, FINDING_FOAM_SHORT, ENTITY_layer, layer->key);
    argument_length(finding, 0, layer->thickness);
    argument_text(finding, 1, stock->name);
    argument_length(finding, 2, stock->thickness);
    cure = cure_begin(planning, "Make it as thick as it comes");
    cure_length(&cure, ENTITY_layer, layer->key, "thickness", 0);
    cure_offer(&cure, finding);
}

void check_cushions(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->layers.count; i++) {
        check_sewn(planning, &model->layers.at[i]);
        check_thickness(planning, &model->layers.at[i]);
    }
    for (size_t i = 0; i < model->boxes.count; i++)
        check_filled(planning, &model->boxes.at[i]);
}
