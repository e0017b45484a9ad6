#include "soft.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

static int64_t add_stock(struct model *model, const char *name, enum stock_word kind,
                         double thickness, double width)
{
    struct stock *stock = MODEL_ADD(model, stock);

    stock->name = name;
    stock->kind = (int64_t)kind;
    stock->thickness = IN(thickness);
    stock->width = IN(width);
    return stock->key;
}

static void offer_slab(struct model *model, int64_t foam)
{
    struct offer *offer = MODEL_ADD(model, offer);

    offer->stock = foam;
    offer->length = IN(72);
    offer->width = IN(24);
}

int soft_begin(void **state)
{
    struct soft *soft = calloc(1, sizeof *soft);
    struct model *model;

    if (!soft)
        return -1;
    *state = soft;
    arena_init(&soft->facts);
    arena_init(&soft->arena);
    model = &soft->model;
    soft->facts.escape = &soft->escape;
    if (setjmp(soft->escape))
        return -1;
    model_init(model, &soft->facts);
    model->build.key = 1;
    model->build.name = "soft";
    soft->cloth = add_stock(model, "cloth", STOCK_CLOTH, 0, 54);
    soft->lining = add_stock(model, "lining", STOCK_CLOTH, 0, 60);
    soft->foam2 = add_stock(model, "foam 2", STOCK_FOAM, 2, 0);
    soft->foam3 = add_stock(model, "foam 3", STOCK_FOAM, 3, 0);
    soft->foam4 = add_stock(model, "foam 4", STOCK_FOAM, 4, 0);
    soft->batting = add_stock(model, "batting", STOCK_BATTING, 0.5, 48);
    offer_slab(model, soft->foam2);
    return 0;
}

int soft_end(void **state)
{
    struct soft *soft = *state;

    arena_release(&soft->facts);
    arena_release(&soft->arena);
    free(soft);
    return 0;
}

int64_t soft_box(struct soft *soft, const char *name, double width, double depth, double height)
{
    struct box *box = MODEL_ADD(&soft->model, box);

    box->name = name;
    box->width = IN(width);
    box->depth = IN(depth);
    box->height = IN(height);
    box->frame = depth <= 0.75 || height <= 0.75 ? FRAME_BOARD : FRAME_LADDER;
    return box->key;
}

int64_t soft_wood(struct soft *soft, enum stock_word kind, double thickness, double width)
{
    return add_stock(&soft->model, kind == STOCK_STICK ? "stick" : "sheet", kind, thickness, width);
}

int64_t soft_layer(struct soft *soft, int64_t box, enum layer_word kind, enum shape_word shape,
                   enum side_word side, int64_t stock)
{
    struct layer *layer = MODEL_ADD(&soft->model, layer);

    layer->box = box;
    layer->kind = (int64_t)kind;
    layer->shape = (int64_t)shape;
    layer->side = (int64_t)side;
    layer->stock = stock;
    layer->rank = kind == LAYER_FOAM ? 1 : kind == LAYER_BATTING ? 2 : 3;
    return layer->key;
}

struct layer *soft_layer_of(struct soft *soft, int64_t layer)
{
    return model_find(&soft->model, ENTITY_layer, layer);
}

void soft_endings(struct soft *soft, int64_t layer, enum ending_word left, enum ending_word right,
                  enum ending_word top, enum ending_word bottom)
{
    struct layer *item = soft_layer_of(soft, layer);

    item->left = (int64_t)left;
    item->right = (int64_t)right;
    item->top = (int64_t)top;
    item->bottom = (int64_t)bottom;
}

void soft_edge_class(struct soft *soft, int64_t layer, enum edge_word edge, enum class_word class)
{
    struct layer_edge *by_hand = MODEL_ADD(&soft->model, layer_edge);

    by_hand->layer = layer;
    by_hand->edge = (int64_t)edge;
    by_hand->class = (int64_t) class;
}

int64_t soft_front_cover(struct soft *soft, double width, double height)
{
    int64_t box = soft_box(soft, "X", width, 3, height);

    return soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
}

void soft_panel(struct soft *soft, int64_t box, enum side_word side, int64_t sheet)
{
    struct facing *facing = MODEL_ADD(&soft->model, facing);

    facing->box = box;
    facing->side = (int64_t)side;
    facing->stock = sheet;
}

struct stock *soft_cloth(struct soft *soft)
{
    return model_find(&soft->model, ENTITY_stock, soft->cloth);
}

int64_t soft_upholster(struct soft *soft, int64_t box, enum side_word side, int64_t foam)
{
    int64_t batting;

    soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, side, foam);
    batting = soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, side, soft->batting);
    soft_endings(soft, batting, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE);
    return soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, side, soft->cloth);
}

int64_t soft_wing(struct soft *soft, const char *name, enum side_word side, int64_t *ret_batting)
{
    int64_t box = soft_box(soft, name, 3.5, 11.875, 56);
    int64_t batting = soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, side, soft->batting);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, side, soft->cloth);
    struct layer_edge *edge = MODEL_ADD(&soft->model, layer_edge);

    soft_layer_of(soft, batting)->both = 1;
    soft_layer_of(soft, cover)->both = 1;
    soft_endings(soft, batting, ENDING_STOP, ENDING_WRAP, ENDING_WRAP, ENDING_STOP);
    soft_endings(soft, cover, ENDING_OPEN, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN);
    edge->layer = cover;
    edge->edge = EDGE_LEFT;
    edge->landing = IN(1.25);
    *ret_batting = batting;
    return cover;
}

void soft_plan(struct soft *soft)
{
    arena_release(&soft->arena);
    assert_int_equal(plan_make(&soft->model, &soft->arena, &soft->plan), FAULT_NONE);
}

const struct cover *soft_cover(const struct soft *soft, int64_t layer)
{
    for (size_t i = 0; i < soft->plan->covers.count; i++)
        if (soft->plan->covers.at[i].layer == layer)
            return &soft->plan->covers.at[i];
    fail_msg("layer %d was not cut", (int)layer);
    return NULL;
}

size_t soft_piece_count(const struct soft *soft, int64_t layer)
{
    size_t count = 0;

    for (size_t i = 0; i < soft->plan->pieces.count; i++)
        count += soft->plan->pieces.at[i].layer == layer;
    return count;
}

const struct piece *soft_piece(const struct soft *soft, int64_t layer, const char *name, int nth)
{
    for (size_t i = 0; i < soft->plan->pieces.count; i++) {
        const struct piece *piece = &soft->plan->pieces.at[i];

        if (piece->layer == layer && strcmp(piece->name, name) == 0 && nth-- == 0)
            return piece;
    }
    return NULL;
}

int64_t soft_across(const struct soft *soft, const struct piece *piece)
{
    const struct plan *plan = soft->plan;

    for (size_t i = 0; i < plan->placements.count; i++) {
        size_t cut = plan->parts.at[plan->placements.at[i].part].piece;

        if (cut != PLAN_NONE && &plan->pieces.at[cut] == piece)
            return plan->placements.at[i].across;
    }
    fail_msg("%s lies nowhere", piece->label);
    return 0;
}

int64_t soft_staples(const struct soft *soft, int64_t layer)
{
    int64_t staples = 0;

    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].layer == layer)
            staples += soft->plan->edges.at[i].staples;
    return staples;
}

int64_t soft_temporary(const struct soft *soft, int64_t layer)
{
    int64_t staples = 0;

    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].layer == layer)
            staples += soft->plan->edges.at[i].temporary;
    return staples;
}

const struct edge *soft_edge(const struct soft *soft, int64_t layer, int nth)
{
    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].layer == layer && nth-- == 0)
            return &soft->plan->edges.at[i];
    return NULL;
}

int64_t soft_used(const struct soft *soft, int64_t layer, enum stock_word kind)
{
    int64_t amount = 0;

    for (size_t i = 0; i < soft->plan->consumables.count; i++)
        if (soft->plan->consumables.at[i].layer == layer &&
            soft->plan->consumables.at[i].kind == (int64_t)kind)
            amount += soft->plan->consumables.at[i].amount;
    return amount;
}

const struct finding *soft_finding(const struct soft *soft, int kind)
{
    for (size_t i = 0; i < soft->plan->findings.count; i++)
        if (soft->plan->findings.at[i].kind == kind)
            return &soft->plan->findings.at[i];
    return NULL;
}

int soft_findings(const struct soft *soft, int kind)
{
    int count = 0;

    for (size_t i = 0; i < soft->plan->findings.count; i++)
        count += soft->plan->findings.at[i].kind == kind;
    return count;
}

const struct step *soft_step(const struct soft *soft, int kind)
{
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        if (soft->plan->steps.at[i].kind == kind)
            return &soft->plan->steps.at[i];
    return NULL;
}

bool soft_says(const struct soft *soft, int kind, const char *words)
{
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        for (size_t k = 0; k < soft->plan->steps.at[i].action_count; k++)
            if (soft->plan->steps.at[i].kind == kind &&
                strstr(soft->plan->steps.at[i].actions[k], words))
                return true;
    return false;
}

void assert_cut(const struct soft *soft, int64_t layer, double width, double height)
{
    assert_int_equal(soft_cover(soft, layer)->cut_width, IN(width));
    assert_int_equal(soft_cover(soft, layer)->cut_height, IN(height));
}

void assert_piece(const struct piece *piece, double width, double height)
{
    assert_non_null(piece);
    assert_int_equal(piece->width, IN(width));
    assert_int_equal(piece->height, IN(height));
}
