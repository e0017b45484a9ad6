/* What the files of the buy pass share. */
#ifndef PLAN_BUY_H
#define PLAN_BUY_H

#include "cut/layout.h"
#include "plan/findings.h"

/* Something that is counted, not cut: screws, staples, buttons, glue. */
struct need {
    int64_t stock; /* 0 where the workshop has none: `what` names it */
    const char *what;
    int64_t kind; /* enum stock_word */
    enum quantity measure;
    int64_t used; /* without reserve */
    int64_t need; /* with it */
};

struct buying {
    struct planning *planning;
    LIST_OF(struct need) needs;
};

/* buy_parts.c: plan->parts from members, panels, pieces and cleats, sorted by stock; a part that
 * was spoiled stands there once more for each time. */
void buy_parts(struct planning *planning);

/* Whether a fitting is a part that is cut from a stick. */
bool fitting_is_cut(const struct model *model, const struct fitting *fitting);

/*
 * buy_begun.c: what is cut of a stock of sticks, sheets or foam, as it was written down when its
 * cutting step was ticked.
 */

/* Whether something is. */
bool stock_is_begun(const struct model *model, int64_t stock);

/* The pieces of a stock that were cut, of an origin. NULL past the last; begin with *at 0. */
const struct cut_stock *next_cut_stock(const struct model *model, int64_t stock, size_t *at);

/* Marks parts of such stock as cut, or as to be cut again: those that were spoiled, that changed by
 * more than a mark of the tape, or are new. */
void mark_what_is_cut(struct planning *planning);

/* For each of the model's cut_parts whether the plan has the part no more as it was cut, and it is
 * there to be cut from: not spoiled, and not cut from already. In the arena. */
const bool *cut_parts_to_spare(const struct plan *plan, const struct model *model,
                               struct arena *arena);

/* buy_cut.c: for every stock with parts a layout, as cuttings and placements, and what is bought
 * for it. */
void buy_cuts(struct planning *planning);

/* buy_count.c: what is counted, pooled by stock, and then bought in packs. */
void buy_counts(struct planning *planning);

/* The staples with the shortest leg that is long enough, else the longest there are; 0 for none. */
int64_t staple_for(const struct model *model, int64_t leg);

/* buy_ways.c: prices of the ways to fix outside backs, and to make a trim. */
void buy_ways(struct planning *planning);

/* buy_packs.c: the lines of a need, one for each offer that is taken: the packs that cost least
 * together, as far as a search of limited work finds them. */
void buy_packs(struct planning *planning, const struct need *need);

/* The offer whose packs alone cost least for an amount; of equals the first; one without a price
 * only where none has one. NULL when there is none. */
const struct offer *cheapest_offer(const struct planning *planning, const struct need *need,
                                   int64_t amount);

/* What an amount of a need costs pro rata, by the offer whose packs cost least for it. False, and
 * nothing is set, where none has a price or is known to hold something. */
bool buy_share(const struct planning *planning, const struct need *need, int64_t amount,
               int64_t *ret_price);

/* buy_bought.c: packs that were bought and that no line has stand on the list all the same. Comes
 * when all lines of sticks, sheets and packs are there; lengths of roll are buy_cut.c's. */
void buy_boughts(struct planning *planning);

/* buy_delivery.c: a line for each supplier who asks something for bringing what the list has from
 * him. Comes last. */
void buy_deliveries(struct planning *planning);

/* The offer that a purchase was made from, as far as it is known by size, pack and a price, or
 * another of the same size; NULL when there is none. */
const struct offer *bought_offer(const struct model *model, const struct bought *bought);

/* For each stock of the facts, by its index, whether the list asks for more than was bought; one
 * more at the end for stock that has gone, of which nothing is missing. In the arena.
 * O(purchases + boughts). */
const bool *stocks_short(const struct plan *plan, struct arena *arena);

/* ---- buy.c ---- */

/* The aisle of the shop where a kind of stock stands. */
int64_t aisle_of(int64_t kind);

/* Adds a line of the shopping list for a stock (0: none of the workshop's, called `what`). */
struct purchase *purchase_add(struct planning *planning, int64_t stock, int64_t kind,
                              const char *what);

/* Prices a line: `packs` of the offer, of which the share used/bought is used up. A line without
 * an offer, or with one that names no price, gets none and a note. */
void purchase_price(struct planning *planning, struct purchase *purchase, const struct offer *offer,
                    int64_t used, int64_t bought);

/* a + a * ratio, in whole counts rounded up. */
int64_t with_reserve(int64_t amount, int64_t ratio);

/* Whether what lies on the shelf may be used in this build: it is kept for no other, and not left
 * by this build itself. */
bool leftover_is_free(const struct model *model, const struct leftover *leftover);

/* Whether this build left it itself, and it is kept for no other. */
bool leftover_is_ours(const struct model *model, const struct leftover *leftover);

#endif
