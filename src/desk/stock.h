/* Prices and the shelf: what a piece is worth, what was paid before, a new price. */
#ifndef DESK_STOCK_H
#define DESK_STOCK_H

#include "desk/desk.h"

/*
 * What pieces of the shelf are worth, without tax: their share of the offer of their stock that is
 * cheapest for them, by length of a stick, by area of a sheet, foam and cloth off a roll, by pieces
 * of what is counted; all of an entry together, rounded once. 0 where no offer says it.
 * O(offers).
 */
int64_t leftover_value(const struct model *model, const struct leftover *leftover);

/* What was paid for a stock, in any build or for the shelf. */
struct paid_before {
    const char *build; /* "" for the shelf */
    const char *dated, *supplier, *what;
    int64_t amount; /* tax included */
    int64_t count;  /* 0: not written down */
};

/* In the arena, which has no escape armed; the newest first. Faults: those of store_peek, MEMORY.
 */
enum fault desk_paid_before(struct desk *desk, int64_t stock, struct arena *arena,
                            const struct paid_before **ret_at, size_t *ret_count,
                            struct fault_note *note);

/*
 * A new price for an offer, as typed, of a day; `supplier` NULL leaves it. "9.50/100" is the price
 * of a pack of 100. Where `offer` is 0, `stock` is offered for the first time, in its usual size: a
 * stick and a sheet as the trade values have them, what comes off a roll by the yard or the metre,
 * the rest by the piece or the pack. One edit. Faults: UNKNOWN offer or stock, those of field_read.
 */
struct desk_price {
    int64_t offer;
    const char *price, *dated, *supplier;
    int64_t stock; /* read where `offer` is 0 */
};
enum fault desk_set_price(struct desk *desk, const struct desk_price *price,
                          struct fault_note *note);

#endif
