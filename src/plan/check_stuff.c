/*
 * What things are to be made of. A form takes any stock, since a maker may change what a layer is
 * before saying of what; but foam "of 2x3 stick" would be laid out as sticks, and no foam bought.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"

#include <assert.h>

/* A set of kinds of stock, a bit each. */
typedef uint32_t stock_set;
#define OF(kind) ((stock_set)1 << STOCK_##kind)

_Static_assert(STOCK_OTHER < 32, "a set of kinds of stock has a bit for each");

/* By enum layer_word. Welt is cut from cloth or bought as cord; trim is anything that is sold as
 * nails, by length or by the piece. */
static const stock_set stuff_of_layer[] = {
    [LAYER_FOAM] = OF(FOAM),
    [LAYER_BATTING] = OF(BATTING),
    [LAYER_LINING] = OF(CLOTH),
    [LAYER_COVER] = OF(CLOTH),
    [LAYER_WELT] = OF(CLOTH) | OF(CORD) | OF(STRIP),
    [LAYER_OUTSIDE_BACK] = OF(CLOTH),
    [LAYER_DUST_COVER] = OF(CLOTH),
    [LAYER_TRIM] = OF(NAIL) | OF(STRIP) | OF(CORD) | OF(BUTTON) | OF(CLOTH) | OF(OTHER),
};

/* By enum facing_word. */
static const stock_set stuff_of_facing[] = {
    [FACING_PANEL] = OF(SHEET),
    [FACING_WEBBING] = OF(STRIP) | OF(CLOTH),
};

/* One reference to stock: whose it is, and what it may name. */
struct stuff {
    enum entity_kind entity;
    int64_t key;
    const char *field;
    int64_t stock; /* 0: nothing yet, which others tell of */
    stock_set fitting;
};

static bool fits(const struct stock *stock, stock_set fitting)
{
    assert(stock->kind >= 0 && stock->kind <= STOCK_OTHER);
    return fitting >> stock->kind & 1;
}

/* As many ways out as one reads at a glance. */
#define STUFFS_OFFERED 3

static void offer_fitting(struct planning *planning, const struct stuff *stuff,
                          struct finding *finding)
{
    const struct model *model = planning->model;
    int offered = 0;

    for (size_t i = 0; i < model->stocks.count && offered < STUFFS_OFFERED; i++) {
        const struct stock *stock = &model->stocks.at[i];
        struct cure_draft cure;

        if (!fits(stock, stuff->fitting))
            continue;
        cure = cure_begin(planning, arena_format(planning->arena, "Make it of %s", stock->name));
        cure_refer(&cure, stuff->entity, stuff->key, stuff->field, stock->key);
        cure_offer(&cure, finding);
        offered++;
    }
}

static void check_one(struct planning *planning, struct stuff stuff)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, stuff.stock);
    struct finding *finding;

    if (!stock || fits(stock, stuff.fitting))
        return;
    finding = finding_add(planning, FINDING_STUFF_UNFIT, stuff.entity, stuff.key);
    argument_text(finding, 0, stock->name);
    argument_text(finding, 1, words_stock.at[stock->kind].help);
    offer_fitting(planning, &stuff, finding);
}

void check_stuff(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++)
        check_one(planning, (struct stuff){ENTITY_box, model->boxes.at[i].key, "stick",
                                           model->boxes.at[i].stick, OF(STICK)});
    for (size_t i = 0; i < model->members.count; i++)
        check_one(planning, (struct stuff){ENTITY_member, model->members.at[i].key, "stick",
                                           model->members.at[i].stick, OF(STICK)});
    for (size_t i = 0; i < model->facings.count; i++)
        check_one(planning, (struct stuff){ENTITY_facing, model->facings.at[i].key, "stock",
                                           model->facings.at[i].stock,
                                           stuff_of_facing[model->facings.at[i].kind]});
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        check_one(planning, (struct stuff){ENTITY_layer, layer->key, "stock", layer->stock,
                                           stuff_of_layer[layer->kind]});
        check_one(planning,
                  (struct stuff){ENTITY_layer, layer->key, "thin", layer->thin, OF(CLOTH)});
    }
}
