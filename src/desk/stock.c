#include "desk/stock.h"

#include "desk/internal.h"
#include "model/offer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- what the shelf is worth ---- */

/* `a` by `b` by `c`, where that is above 0 and no larger than a whole number can be. */
static bool multiply(int64_t a, int64_t b, int64_t c, int64_t *ret_product)
{
    return !whole_multiply(a, b, ret_product) && !whole_multiply(*ret_product, c, ret_product) &&
           *ret_product > 0;
}

/* How much of a stock an entry of the shelf holds, and an offer, in one measure; false where they
 * cannot be held against each other. */
static bool measure(const struct stock *stock, const struct leftover *left,
                    const struct offer *offer, int64_t *ret_left, int64_t *ret_offer)
{
    bool by_area = left->width > 0 && stock->kind != STOCK_STICK;
    int64_t width = offer->width ? offer->width : stock->width;
    if ((left->length == 0) != (offer->length == 0))
        return false;
    return multiply(left->length ? left->length : 1, by_area ? left->width : 1, left->count,
                    ret_left) &&
           multiply(offer->length ? offer->length : 1, by_area ? width : 1, offer->pack, ret_offer);
}

int64_t leftover_value(const struct model *model, const struct leftover *leftover)
{
    const struct stock *stock = MODEL_FIND(model, stock, leftover->stock);
    int64_t least = 0;
    for (size_t i = 0; stock && i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        int64_t have;
        int64_t sold;
        int64_t worth;
        if (offer->stock != stock->key || offer->price == 0 ||
            !measure(stock, leftover, offer, &have, &sold) ||
            whole_share(offer_price(model, offer), have, sold, &worth))
            continue;
        if (least == 0 || worth < least)
            least = worth;
    }
    return least;
}

/* ---- what was paid before ---- */

struct looking {
    struct desk *desk;
    struct arena *arena;
    int64_t stock;
    LIST_OF(struct paid_before) found;
};

#define LOOK_INTO(looking, model, list, build_name)                \
    for (size_t i = 0; i < (model)->list.count; i++) {             \
        if ((model)->list.at[i].stock == (looking)->stock)         \
            *LIST_ADD((looking)->arena, &(looking)->found) =       \
                (struct paid_before){(build_name),                 \
                                     (model)->list.at[i].dated,    \
                                     (model)->list.at[i].supplier, \
                                     (model)->list.at[i].what,     \
                                     (model)->list.at[i].amount,   \
                                     (model)->list.at[i].count};   \
    }

static enum fault look_into(struct looking *looking, int64_t build, struct fault_note *note)
{
    struct model *model = ARENA_NEW(looking->arena, struct model);
    enum fault fault = store_peek(looking->desk->store, build, model, looking->arena, note);
    if (fault)
        return fault;
    if (build == 0)
        LOOK_INTO(looking, model, shop_spends, "")
    LOOK_INTO(looking, model, spends, model->build.name)
    return FAULT_NONE;
}

/* Of one day in the order in which they were written down, which is that of their memory. */
static int newest_first(const void *left, const void *right)
{
    const struct paid_before *a = left;
    const struct paid_before *b = right;
    int order = strcmp(b->dated, a->dated);
    if (order == 0)
        order = strcmp(a->build, b->build);
    if (order == 0)
        order = strcmp(a->what, b->what);
    return order ? order : (a->amount > b->amount) - (a->amount < b->amount);
}

static enum fault run_look(void *context, struct fault_note *note)
{
    struct looking *looking = context;
    const struct store_build *builds = NULL;
    size_t count = 0;
    enum fault fault = desk_builds(looking->desk, &builds, &count, note);
    if (!fault)
        fault = look_into(looking, 0, note);
    for (size_t i = 0; i < count && !fault; i++)
        fault = look_into(looking, builds[i].key, note);
    if (looking->found.count)
        qsort(looking->found.at, looking->found.count, sizeof *looking->found.at, newest_first);
    return fault;
}

enum fault desk_paid_before(struct desk *desk, int64_t stock, struct arena *arena,
                            const struct paid_before **ret_at, size_t *ret_count,
                            struct fault_note *note)
{
    struct looking looking = {.desk = desk, .arena = arena, .stock = stock};
    enum fault fault = desk_guard(arena, run_look, &looking, note);
    if (!fault) {
        *ret_at = looking.found.at;
        *ret_count = looking.found.count;
    }
    return fault;
}

/* ---- a new price ---- */

/* A price as it is typed: "9.50", or "9.50/100" of a pack. */
struct typed_price {
    char money[MONEY_TEXT];
    const char *pack; /* NULL: as it stands */
};

static struct typed_price split_price(const char *text)
{
    struct typed_price typed;
    size_t length = strcspn(text, "/");
    snprintf(typed.money, sizeof typed.money, "%.*s", (int)length, text);
    typed.pack = text[length] ? text + length + 1 : NULL;
    return typed;
}

struct new_price {
    const struct desk_price *given;
    const int64_t *value; /* trade values, for usual sizes */
};

static void set_usual_size(struct offer *offer, const struct stock *stock, const int64_t *value,
                           enum units units)
{
    switch (stock->kind) {
    case STOCK_STICK:
        offer->length = value[TRADE_STICK_LENGTH];
        break;
    case STOCK_SHEET:
    case STOCK_FOAM:
        offer->length = value[TRADE_SHEET_LENGTH];
        offer->width = value[TRADE_SHEET_WIDTH];
        break;
    case STOCK_CLOTH:
    case STOCK_BATTING:
    case STOCK_STRIP:
    case STOCK_CORD:
        offer->length = units == UNITS_MM ? 1000 * LENGTH_MM : 36 * LENGTH_INCH;
        break;
    default:
        break;
    }
}

static struct offer *add_usual_offer(struct model *draft, const struct new_price *price)
{
    const struct stock *stock = MODEL_FIND(draft, stock, price->given->stock);
    if (!stock)
        return NULL;
    struct offer *offer = MODEL_ADD(draft, offer);
    offer->stock = stock->key;
    set_usual_size(offer, stock, price->value,
                   draft->workshop.units == UNITS_WORD_MM ? UNITS_MM : UNITS_INCH);
    return offer;
}

static enum fault change_price(struct model *draft, void *context, struct fault_note *note)
{
    const struct new_price *change = context;
    const struct desk_price *price = change->given;
    const struct typed_price typed = split_price(price->price);
    const struct {
        const char *field;
        const char *text;
    } given[] = {{"price", typed.money},
                 {"pack", typed.pack},
                 {"dated", price->dated},
                 {"supplier", price->supplier}};
    void *offer = price->offer ? model_find(draft, ENTITY_offer, price->offer)
                               : add_usual_offer(draft, change);
    if (!offer)
        return fault_say(note, FAULT_UNKNOWN, "this %s is not there any more",
                         price->offer ? "offer" : "stock");
    for (size_t i = 0; i < sizeof given / sizeof *given; i++) {
        if (!given[i].text)
            continue;
        enum fault fault = field_read(field_named(entity_of(ENTITY_offer), given[i].field), draft,
                                      offer, given[i].text, note);
        if (fault) {
            fault_at(note, "%s", given[i].field);
            return fault;
        }
    }
    return FAULT_NONE;
}

enum fault desk_set_price(struct desk *desk, const struct desk_price *price,
                          struct fault_note *note)
{
    const struct offer *offer = MODEL_FIND(desk_model(desk), offer, price->offer);
    const struct stock *stock =
        MODEL_FIND(desk_model(desk), stock, offer ? offer->stock : price->stock);
    char label[STORE_LABEL];
    struct new_price change = {price, desk_plan(desk)->value};
    desk_label(label, "price of %s", stock ? stock->name : "an offer");
    return desk_edit(desk, label, change_price, &change, note);
}
