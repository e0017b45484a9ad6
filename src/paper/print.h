/* How sheets print the values of a plan. */
#ifndef PAPER_PRINT_H
#define PAPER_PRINT_H

#include "plan/plan.h"

/* Words that live as long as the expression that they are made in: for arguments of printf. */
struct printed {
    char at[QUANTITY_TEXT];
};

struct printed print_length(const struct plan *plan, int64_t length);      /* "76-1/2" */
struct printed print_length_unit(const struct plan *plan, int64_t length); /* "76-1/2 in" */
struct printed print_quantity(const struct plan *plan, enum quantity quantity, int64_t value);
struct printed print_money(const struct plan *plan, int64_t money);
struct printed print_money_in(const struct model *model, int64_t money);

/* A distance as it is marked on wood, to 1/16 in or to whole millimetres: "12-1/2"; and in both,
 * the unit of the build first: "12-1/2 in (318 mm)". */
struct printed print_marked(int64_t length, enum units units);
struct printed print_both(const struct plan *plan, int64_t length);

/* Cloth off a roll as it is asked for in a shop: yards, or metres. */
struct printed print_roll(const struct plan *plan, int64_t length);

/*
 * An amount of a stock (0: of none) as a shop sells it. Lengths off a roll or a reel are in yards
 * or metres, as print_roll; strip that an offer sells in pieces shorter than a yard, and
 * what is itself shorter, is measured in the unit of the build and rounded up to what a tape shows.
 */
struct printed print_sold(const struct plan *plan, int64_t stock, enum quantity quantity,
                          int64_t amount);

/* "45 min", and from an hour on "2 h 05". */
struct printed print_minutes(int64_t minutes);

/* A word of a vocabulary, or the name of a piece, as it is read: "dust cover"; and what a layer is.
 */
struct printed print_word(const char *word);
struct printed print_layer(const struct plan *plan, int64_t layer);

/* What a box is called. Never NULL. */
const char *print_box(const struct plan *plan, int64_t box);

/* " (left)" of the left one of a mirrored pair, "" for neither. */
const char *print_hand(const struct plan *plan, int64_t box);

#endif
