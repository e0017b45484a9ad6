/* What was paid, written down by hand: for one build, for the shelf, or split over several. */
#ifndef DESK_SPEND_H
#define DESK_SPEND_H

#include "desk/desk.h"

/* Says of which size a spend for a line of a list is: the same stock may stand there in several. */
void desk_spend_size(struct spend *spend, const struct model *model,
                     const struct purchase *purchase);

/* As typed; NULL: not told. */
struct desk_spend {
    const char *amount, *what, *dated; /* these are told */
    const char *tax, *aisle, *supplier, *stock;
    const char *length, *width, *pack; /* of one: which size of the stock */
    const char *count;                 /* of a spend that is not split */
    const char *settles;
};

struct spend_part {
    int64_t build;  /* 0: for the shelf */
    int64_t weight; /* not negative */
    int64_t amount; /* set: what it comes to */
};

/*
 * Writes a spend down, as one edit, in each of `count` builds (at least 1, each once): what was
 * paid and the tax in it are shared out by the weights (money_share_out). What was open stays so.
 * Faults: those of field_read, with the field's name; those of store_save.
 */
enum fault desk_spend(struct desk *desk, const struct desk_spend *spend, struct spend_part *parts,
                      size_t count, struct fault_note *note);

#endif
