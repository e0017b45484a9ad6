#include "plan/layers.h"

#include "plan/geometry.h"

#include <assert.h>

int64_t layer_ending(const struct layer *layer, int64_t edge)
{
    const int64_t endings[EDGE_COUNT] = {[EDGE_LEFT] = layer->left,
                                         [EDGE_RIGHT] = layer->right,
                                         [EDGE_TOP] = layer->top,
                                         [EDGE_BOTTOM] = layer->bottom};

    assert(edge >= 0 && edge < EDGE_COUNT);
    return endings[edge];
}

bool layer_has_face(const struct layer *layer, int64_t side)
{
    return layer->side == side || (layer->both && layer->side == side_opposite(side));
}

unsigned layer_faces(const struct layer *layer)
{
    unsigned faces = 1u << layer->side;

    if (layer->both)
        faces |= 1u << side_opposite(layer->side);
    if (layer->shape != SHAPE_WRAPPED && layer->shape != SHAPE_SEWN)
        return faces;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (layer_ending(layer, edge) != ENDING_STOP)
            faces |= 1u << edge_side(layer->side, edge);
    return faces;
}

unsigned layer_reaches(const struct layer *layer)
{
    bool wraps = false;

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        wraps |= layer_ending(layer, edge) == ENDING_WRAP;
    return layer_faces(layer) |
           (layer->shape == SHAPE_WRAPPED && wraps ? 1u << side_opposite(layer->side) : 0);
}

bool layer_is_over(const struct layer *over, const struct layer *under)
{
    if (over->rank != under->rank)
        return over->rank > under->rank;
    return over->kind != under->kind ? over->kind > under->kind : over->key > under->key;
}

bool layers_share_face(const struct layer *over, const struct layer *under)
{
    return over->box == under->box && over->group == under->group &&
           layer_has_face(over, under->side);
}

static bool group_has(const struct model *model, int64_t group, int64_t box)
{
    for (size_t i = 0; i < model->group_boxes.count; i++)
        if (model->group_boxes.at[i].group == group && model->group_boxes.at[i].box == box)
            return true;
    return false;
}

bool layer_touches(const struct model *model, const struct layer *layer, int64_t box)
{
    return layer->box ? layer->box == box : group_has(model, layer->group, box);
}

static bool has_wood(const struct model *model, int64_t key)
{
    const struct box *box = MODEL_FIND(model, box, key);

    return box && box->frame != FRAME_CUSHION;
}

bool layer_lies_on_wood(const struct model *model, const struct layer *layer)
{
    for (size_t i = 0; layer->group && i < model->group_boxes.count; i++)
        if (model->group_boxes.at[i].group == layer->group &&
            has_wood(model, model->group_boxes.at[i].box))
            return true;
    return has_wood(model, layer->box);
}

int64_t layer_box(const struct model *model, const struct layer *layer)
{
    for (size_t i = 0; !layer->box && i < model->group_boxes.count; i++)
        if (model->group_boxes.at[i].group == layer->group)
            return model->group_boxes.at[i].box;
    return layer->box;
}

bool layer_lies_across(const struct model *model, const struct layer *layer,
                       const struct junction *junction)
{
    return layer->group && layer_touches(model, layer, junction->box_a) &&
           layer_touches(model, layer, junction->box_b);
}

bool lining_is_under_cover(const struct model *model, const struct layer *lining)
{
    unsigned faces = layer_faces(lining);
    int64_t box = layer_box(model, lining);

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *cover = &model->layers.at[i];

        if (cover->kind == LAYER_COVER && layer_is_over(cover, lining) &&
            (layer_faces(cover) & faces) && layer_touches(model, cover, box))
            return true;
    }
    return false;
}
