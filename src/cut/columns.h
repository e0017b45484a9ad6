/*
 * The linear relaxation of cutting sticks, by columns: each column is one filling of one size. The
 * rows ask for each kind as many parts as are left, and for each size with a limit at most so many
 * sticks. Fillings that pay are found by the knapsack (Gilmore and Gomory, "A linear programming
 * approach to the cutting-stock problem", 1961).
 *
 * All numbers here are floating point and only propose: what is cut, and what is proven, is counted
 * anew in whole numbers by the callers.
 */
#ifndef CUT_COLUMNS_H
#define CUT_COLUMNS_H

#include "cut/knapsack.h"

struct column {
    size_t size;
    size_t first, count; /* takes */
    double cost;
    uint64_t hash; /* of size and takes, to find it again */
};

/* What stands in a row of the basis. */
enum basic_as {
    BASIC_FILLING,
    BASIC_DEAR,   /* a filling that can no more be cut whole */
    BASIC_TURNED, /* a filling that was cut too often, given back */
    BASIC_SPARE,  /* the slack of a row */
    BASIC_WANT,   /* parts of one kind that no filling takes yet */
    BASIC_SCALE   /* how often all parts are cut, where that is asked for */
};
struct basic {
    enum basic_as as;
    size_t index; /* of the filling in the pool, or of the row */
};

/* What stands in a part's row before fillings do. */
struct want {
    double take, cost; /* at the last stage */
};

/* The relaxation, solved step by step. Callers read the pool, the basis, levels, duals, the dearest
 * price and the work done so far; the rest is its own. */
struct columns {
    const struct bar_task *task;
    struct knapsack knapsack;
    LIST_OF(struct column) pool;    /* every filling found; some are of no use to what is left */
    LIST_OF(struct bar_take) takes; /* of the pool */

    size_t row_count;
    size_t *limit_row;     /* by size; SIZE_MAX without a limit */
    const int64_t *counts; /* parts left, by kind: the caller's */
    const int64_t *limits; /* sticks left, by size; CUT_ANY */

    double *inverse; /* of the basis, row_count squared, by rows */
    double *level;   /* of each basic column */
    double *dual;    /* of each row: a part's worth; a stick's beside its price, 0 or less */
    struct basic *basis;
    struct want *wants;     /* by kind */
    double least_by_length; /* price of a stick on offer for its length; 0 without one */
    int stage;              /* of what wants cost */
    bool scaling;           /* columns_start_scaling */
    const bool *barred;     /* by filling; NULL but for columns_begin_closed */
    double *direction, *entering;
    struct kept_basis {
        double *inverse, *level, *dual;
        struct basic *basis;
        int stage;
    } kept;
    struct basic *waiting; /* scratch, while the inverse is made anew: not yet in the basis */
    bool *closed;          /* by row: it has its basic column */
    int64_t *scratch;
    double dearest;
    int pivots;
    int since_anew; /* pivots since the inverse was made from the basis */
    int64_t work;
};

/* A stick costs this over its price, as a share of the dearest one, so that of equally dear plans
 * the one with fewer sticks is cheaper. */
#define COLUMNS_TRIFLE 1e-6

/* Buffers for a task, in its arena; the pool is empty. */
void columns_begin(struct columns *columns, const struct bar_task *task);

/* The same for a pool that its owner fills: no filling is made here, and none that is barred comes
 * in. A filling may take more parts than are left. */
void columns_begin_closed(struct columns *columns, const struct bar_task *task, const bool *barred);

/* Adds a filling to the pool, if it is not there; its index. */
size_t columns_add(struct columns *columns, size_t size, const int64_t *takes);

/*
 * Starts over for parts and sticks left, from no filling at all. The pool stays. Counts and
 * limits are the caller's; when they shrink, columns_settle must follow.
 */
void columns_start(struct columns *columns, const int64_t *counts, const int64_t *limits);

/*
 * Starts over with another question: how often do the sticks hold all parts, in fractions? Every
 * size must have a limit. The duals then are the values of parts by which the sticks hold least
 * beyond the parts' own: columns_scale is one more than that share.
 */
void columns_start_scaling(struct columns *columns, const int64_t *counts, const int64_t *limits);
double columns_scale(const struct columns *columns);

/* One step of the simplex method. False when the relaxation is solved (or no step helps any more):
 * levels and duals then hold. Adds to `work`. */
bool columns_step(struct columns *columns);

/*
 * The column in a row of the basis was cut `times` times, and the counts and limits are the less
 * for it: takes it off the level. columns_settle then makes the basis feasible again: columns that
 * were cut more often than their level, or that can no more be cut whole, become dear and are
 * driven out by the steps that follow.
 */
void columns_take(struct columns *columns, size_t row, int64_t times);
void columns_settle(struct columns *columns);

/* Keeps the basis as it is, or goes back to the one that was kept, with the counts it had. */
void columns_keep(struct columns *columns);
void columns_back(struct columns *columns, const int64_t *counts, const int64_t *limits);

/* Cost of the relaxation, the trifles included. */
double columns_cost(const struct columns *columns);

/* How often a column can be cut whole from what is left. */
int64_t columns_times_left(const struct columns *columns, const struct column *column,
                           const int64_t *counts, const int64_t *limits);

#endif
