#include "shop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>

int shop_begin(void **state)
{
    struct shop *shop = calloc(1, sizeof *shop);

    if (!shop)
        return -1;
    *state = shop;
    arena_init(&shop->arena);
    shop->arena.escape = &shop->escape;
    if (setjmp(shop->escape))
        return -1;
    model_init(&shop->model, &shop->arena);
    shop->model.build.name = "bench";
    shop->plan = ARENA_NEW(&shop->arena, struct plan);
    shop->plan->facts = shop->plan->entered = &shop->model;
    shop->planning =
        (struct planning){&shop->model, shop->plan, &shop->arena, NULL, shop->plan->value, NULL};
    return 0;
}

int shop_end(void **state)
{
    struct shop *shop = *state;

    arena_release(&shop->arena);
    free(shop);
    return 0;
}

int64_t shop_stock(struct shop *shop, const char *name, enum stock_word kind, double width)
{
    struct stock *stock = MODEL_ADD(&shop->model, stock);

    stock->name = name;
    stock->kind = (int64_t)kind;
    stock->width = IN(width);
    return stock->key;
}

struct stock *shop_stock_of(struct shop *shop, int64_t stock)
{
    return model_find(&shop->model, ENTITY_stock, stock);
}

struct offer *shop_offer(struct shop *shop, int64_t stock, double length, double width,
                         int64_t price)
{
    struct offer *offer = MODEL_ADD(&shop->model, offer);

    offer->stock = stock;
    offer->length = IN(length);
    offer->width = IN(width);
    offer->price = price;
    return offer;
}

struct offer *shop_pack(struct shop *shop, int64_t stock, int64_t pack, int64_t price)
{
    struct offer *offer = shop_offer(shop, stock, 0, 0, price);

    offer->pack = pack;
    return offer;
}

void shop_leftover(struct shop *shop, int64_t stock, double length, double width, int64_t count,
                   const char *kept_for)
{
    struct leftover *leftover = MODEL_ADD(&shop->model, leftover);

    leftover->stock = stock;
    leftover->length = IN(length);
    leftover->width = IN(width);
    leftover->count = count;
    leftover->kept_for = kept_for;
}

void shop_bought(struct shop *shop, int64_t stock, double length, double width, int64_t packs)
{
    struct bought *bought = MODEL_ADD(&shop->model, bought);

    bought->stock = stock;
    bought->length = IN(length);
    bought->width = IN(width);
    bought->packs = packs;
}

void need_sticks(struct shop *shop, int64_t stock, int count, double length)
{
    for (int i = 0; i < count; i++) {
        struct plan_member *member = LIST_ADD(&shop->arena, &shop->plan->members);

        snprintf(member->label, sizeof member->label, "m%zu", shop->plan->members.count);
        member->stock = stock;
        member->length = IN(length);
    }
}

void need_pieces(struct shop *shop, int64_t stock, int count, double width, double height)
{
    for (int i = 0; i < count; i++) {
        struct piece *piece = LIST_ADD(&shop->arena, &shop->plan->pieces);

        snprintf(piece->label, sizeof piece->label, "p%zu", shop->plan->pieces.count);
        piece->stock = stock;
        piece->width = IN(width);
        piece->height = IN(height);
    }
}

void need_screws(struct shop *shop, int64_t stock, int64_t count)
{
    struct screw_kind *kind = LIST_ADD(&shop->arena, &shop->plan->screw_kinds);

    kind->gauge = 8;
    kind->length = IN(3);
    kind->stock = stock;
    kind->count = count;
}

void need_staples(struct shop *shop, int64_t leg, int64_t count, int64_t temporary)
{
    struct edge *edge = LIST_ADD(&shop->arena, &shop->plan->edges);

    edge->leg = leg;
    edge->staples = count;
    edge->temporary = temporary;
}

void need_consumable(struct shop *shop, int64_t stock, enum stock_word kind, enum quantity measure,
                     int64_t amount, const char *what)
{
    struct consumable *used = LIST_ADD(&shop->arena, &shop->plan->consumables);

    *used = (struct consumable){0, 0, (int64_t)kind, stock, measure, amount, what};
}

void shop_buy(struct shop *shop)
{
    struct plan *plan = shop->plan;

    trade_resolve(&shop->model, plan->value);
    plan->parts.count = plan->placements.count = plan->cuttings.count = 0;
    plan->jobs.count = plan->purchases.count = plan->findings.count = 0;
    plan->cost = (struct cost){0};
    pass_buy(&shop->planning);
    pass_cost(&shop->planning);
}

const struct purchase *shop_line(const struct shop *shop, int64_t stock)
{
    const struct purchase *line = NULL;

    for (size_t i = 0; i < shop->plan->purchases.count; i++)
        if (shop->plan->purchases.at[i].stock == stock) {
            assert_null(line);
            line = &shop->plan->purchases.at[i];
        }
    assert_non_null(line);
    return line;
}

int shop_findings(const struct shop *shop, int kind)
{
    int count = 0;

    for (size_t i = 0; i < shop->plan->findings.count; i++)
        count += shop->plan->findings.at[i].kind == kind;
    return count;
}
