/* Each part is a spend of its own build's model, loaded for the purpose; all are saved together. */
#include "desk/spend.h"

#include "desk/internal.h"

#include <assert.h>

void desk_spend_size(struct spend *spend, const struct model *model,
                     const struct purchase *purchase)
{
    const struct offer *offer = MODEL_FIND(model, offer, purchase->offer);

    if (!offer)
        return;
    spend->length = offer->length;
    spend->width = offer->width;
    spend->pack = offer->pack;
}

/* The same fields stand in a spend of a build and in one for the shelf. */
_Static_assert(sizeof(struct spend) == sizeof(struct shop_spend), "one table makes both");

struct splitting {
    struct desk *desk;
    const struct desk_spend *spend;
    struct spend_part *parts;
    size_t count;
    struct arena arena;
    struct store_change *changes;
    struct spend **items; /* by part; of the shelf's a shop_spend, which is laid out alike */
};

static enum fault read_fields(const struct splitting *splitting, enum entity_kind kind,
                              struct model *model, void *item, struct fault_note *note)
{
    const struct desk_spend *spend = splitting->spend;
    const struct {
        const char *field;
        const char *text;
    } given[] = {{"dated", spend->dated},
                 {"amount", spend->amount},
                 {"what", spend->what},
                 {"tax", spend->tax},
                 {"aisle", spend->aisle},
                 {"supplier", spend->supplier},
                 {"stock", spend->stock},
                 {"length", spend->length},
                 {"width", spend->width},
                 {"pack", spend->pack},
                 {"count", splitting->count == 1 ? spend->count : NULL},
                 {"settles", spend->settles}};
    for (size_t i = 0; i < sizeof given / sizeof *given; i++) {
        if (!given[i].text)
            continue;
        enum fault fault = field_read(field_named(entity_of(kind), given[i].field), model, item,
                                      given[i].text, note);
        if (fault) {
            fault_at(note, "%s", given[i].field);
            return fault;
        }
    }
    return FAULT_NONE;
}

static enum fault add_part(struct splitting *splitting, size_t index, struct fault_note *note)
{
    int64_t build = splitting->parts[index].build;
    enum entity_kind kind = build ? ENTITY_spend : ENTITY_shop_spend;
    struct model *before = ARENA_NEW(&splitting->arena, struct model);
    struct model *after = ARENA_NEW(&splitting->arena, struct model);
    enum fault fault = store_peek(splitting->desk->store, build, before, &splitting->arena, note);
    if (fault)
        return fault;
    model_copy(after, before, &splitting->arena);
    splitting->items[index] = model_add(after, kind);
    splitting->changes[index] = (struct store_change){before, after};
    return read_fields(splitting, kind, after, splitting->items[index], note);
}

static void share_out(struct splitting *splitting)
{
    size_t count = splitting->count;
    int64_t *weights = ARENA_MANY(&splitting->arena, int64_t, count);
    int64_t *amounts = ARENA_MANY(&splitting->arena, int64_t, count);
    int64_t *taxes = ARENA_MANY(&splitting->arena, int64_t, count);
    for (size_t i = 0; i < count; i++)
        weights[i] = splitting->parts[i].weight;
    money_share_out(splitting->items[0]->amount, weights, count, amounts);
    money_share_out(splitting->items[0]->tax, weights, count, taxes);
    for (size_t i = 0; i < count; i++) {
        splitting->parts[i].amount = splitting->items[i]->amount = amounts[i];
        splitting->items[i]->tax = taxes[i];
    }
}

static enum fault run_split(void *context, struct fault_note *note)
{
    struct splitting *splitting = context;
    enum fault fault = FAULT_NONE;
    splitting->changes = ARENA_MANY(&splitting->arena, struct store_change, splitting->count);
    splitting->items = ARENA_MANY(&splitting->arena, struct spend *, splitting->count);
    for (size_t i = 0; i < splitting->count && !fault; i++)
        fault = add_part(splitting, i, note);
    if (!fault)
        share_out(splitting);
    return fault;
}

enum fault desk_spend(struct desk *desk, const struct desk_spend *spend, struct spend_part *parts,
                      size_t count, struct fault_note *note)
{
    char label[STORE_LABEL];
    struct splitting splitting = {.desk = desk, .spend = spend, .parts = parts, .count = count};
    assert(count > 0);
    desk_abandon(desk);
    desk_label(label, "spend: %s", spend->what);
    arena_init(&splitting.arena);
    enum fault fault = desk_guard(&splitting.arena, run_split, &splitting, note);
    if (!fault)
        fault = store_save_together(desk->store, splitting.changes, count, label, note);
    arena_release(&splitting.arena);
    return fault ? fault : desk_take_up(desk, desk_model(desk)->build.key, note);
}
