/*
 * A shop for tests of buying and cost: stocks and offers, needs put into the plan's lists by hand,
 * and the two passes run over them.
 */
#ifndef SHOP_H
#define SHOP_H

#include "../base/inch.h"
#include "plan/findings.h"
#include "plan/pass.h"

struct shop {
    struct arena arena;
    jmp_buf escape;
    struct model model;
    struct planning planning;
    struct plan *plan; /* needs are put into it before shop_buy */
};

/* cmocka's setup and teardown: inches, dollars and cents, an empty shop. */
int shop_begin(void **state);
int shop_end(void **state);
#define SHOP_TEST(name) cmocka_unit_test_setup_teardown(name, shop_begin, shop_end)

/* The key of a new stock; sizes in inches. */
int64_t shop_stock(struct shop *shop, const char *name, enum stock_word kind, double width);
struct stock *shop_stock_of(struct shop *shop, int64_t stock);

/* An offer; the pointer holds until the next one. */
struct offer *shop_offer(struct shop *shop, int64_t stock, double length, double width,
                         int64_t price);
struct offer *shop_pack(struct shop *shop, int64_t stock, int64_t pack, int64_t price);

void shop_leftover(struct shop *shop, int64_t stock, double length, double width, int64_t count,
                   const char *kept_for);
void shop_bought(struct shop *shop, int64_t stock, double length, double width, int64_t packs);

/* Needs. */
void need_sticks(struct shop *shop, int64_t stock, int count, double length);
void need_pieces(struct shop *shop, int64_t stock, int count, double width, double height);
void need_screws(struct shop *shop, int64_t stock, int64_t count);
void need_staples(struct shop *shop, int64_t leg, int64_t count, int64_t temporary);
void need_consumable(struct shop *shop, int64_t stock, enum stock_word kind, enum quantity measure,
                     int64_t amount, const char *what);

/* Runs the passes; the plan's lists of what came out are emptied before. */
void shop_buy(struct shop *shop);

/* The only line of a stock; fails where there is none or another. */
const struct purchase *shop_line(const struct shop *shop, int64_t stock);
int shop_findings(const struct shop *shop, int kind);

#endif
