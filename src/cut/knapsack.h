/*
 * The fullest filling of one stick: kinds with a value and a count each into whole units of room.
 */
#ifndef CUT_KNAPSACK_H
#define CUT_KNAPSACK_H

#include "cut/bars_task.h"

/* So many parts of one kind, taken together or not at all; where there is no table, a kind and how
 * many parts of it there are. */
struct knapsack_bundle {
    size_t kind;
    int64_t count;
    double value; /* by its length: the order of the search, where there is no table */
};

/*
 * Proposals, in floating point. Where the grid is coarse a table gives the best value for every
 * room at once: kinds are taken apart into bundles of 1, 2, 4 ... parts, so that bundles of one
 * kind make up any number. Where it is too fine for a table, the fillings of one room are gone
 * through by branch and bound, kinds of most value by length first, as far as a limit of steps
 * allows. The buffers are used again.
 */
struct knapsack {
    struct knapsack_bundle *bundles;
    size_t bundle_count;
    int64_t room;
    double *value;        /* by room; NULL: the grid is too fine */
    uint8_t *taken;       /* by bundle and room */
    const double *values; /* of the kinds, while it is asked for fillings */
    int64_t *now, *best;  /* takes by kind, of the search */
    double best_value;
    int steps_left;
};

/* Buffers for kinds of at most the task's counts, in its arena. */
void knapsack_begin(struct knapsack *knapsack, const struct bar_task *task);

/* Gets ready for values of the kinds (those not above `least` are left out) and counts, which must
 * hold until the last knapsack_best. Returns the work it took, or the most that its searches will
 * take. */
int64_t knapsack_solve(struct knapsack *knapsack, const struct bar_task *task, const double *values,
                       const int64_t *counts, double least);

/* The value of the best filling found for a room, and what it takes by kind. */
double knapsack_best(struct knapsack *knapsack, const struct bar_task *task, int64_t room,
                     int64_t *ret_takes);

/*
 * The most value that kinds k, k+1, ... give in a room, with the counts of the task, in whole
 * numbers: never too little. Exact by a table where the grid is coarse; else by the best value for
 * its length. Values must not be negative, and their sum over all parts must fit.
 */
struct value_table {
    int64_t **best;  /* by kind and room; NULL: the grid is too fine */
    size_t *densest; /* by kind: the kind from there on with most value for its length */
    const int64_t *values;
    const struct bar_task *task;
    int64_t work; /* that the last fill took */
};

/* Buffers for a task, in its arena. The values have to stay while the table is asked. */
void value_table_begin(struct value_table *table, const struct bar_task *task);
void value_table_fill(struct value_table *table, const int64_t *values);
int64_t value_at_most(const struct value_table *table, size_t kind, int64_t room);

#endif
