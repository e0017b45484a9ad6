/* How sheets print the values of a plan. */
#ifndef PAPER_PRINT_H
#define PAPER_PRINT_H

#include "plan/plan.h"

/* A buffer that lives as long as the expression it is made in, for printf arguments. */
struct printed {
    char at[QUANTITY_TEXT];
};

struct printed print_length(const struct plan *plan, int64_t length);      /* "76-1/2" */
struct printed print_length_unit(const struct plan *plan, int64_t length); /* "76-1/2 in" */
struct printed print_quantity(const struct plan *plan, enum quantity quantity, int64_t value);
struct printed print_money(const struct plan *plan, int64_t money);

/* A distance as it is marked on wood, to 1/16 in and to whole millimetres. */
struct printed print_marked(int64_t length, enum units units);

/* Cloth off a roll as it is asked for in a shop: yards, or metres. */
struct printed print_roll(const struct plan *plan, int64_t length);

/*
 * An amount of a stock (0: of none) as a shop sells it. Lengths off a roll or a reel are in yards
 * or metres, as print_roll; strip that an offer sells in pieces shorter than a yard, and
 * what is itself shorter, is measured in the unit of the build and rounded up to what a tape shows.
 */
struct printed print_sold(const struct plan *plan, int64_t stock, enum quantity quantity,
                          int64_t amount);

/* Hours and minutes: "2 h 05". */
struct printed print_minutes(int64_t minutes);

/* What a box is called. Never NULL. */
const char *print_box(const struct plan *plan, int64_t box);

/* " (left)" of the left one of a mirrored pair, "" for neither. */
const char *print_hand(const struct plan *plan, int64_t box);

#endif
