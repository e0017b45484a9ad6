/*
 * Sticks to the end: looks through all plans that cost no more than a given sum, and says when
 * there is none.
 */
#ifndef CUT_BARS_EXACT_H
#define CUT_BARS_EXACT_H

#include "cut/covering.h"

/* What the parts are worth, in whole numbers: `scale` to a unit of price. `over` is, by size with a
 * limit, what its fullest filling is worth beyond its price; else 0. */
struct bar_values {
    int64_t *of_kind;
    int64_t *over;
    int64_t scale;
    struct value_table table;
    struct covering covering; /* up to the cost that was the best when the values were set */
};

/* Buffers for a task, in its arena. */
void bar_values_begin(struct bar_values *values, const struct bar_task *task);

/* Takes over what floating point proposes, by kind in the measure of prices. Whatever it proposes,
 * the values are sound: they are rounded and shrunk until no stick of a size without a limit holds
 * more than its price. `best_cost`: what some plan costs. */
void bar_values_set(struct bar_values *values, const struct bar_task *task, const double *duals,
                    int64_t best_cost);

/* The cost that no plan undercuts of the parts left in `counts` out of the sticks in `limits`;
 * where the covering says no less than `most`, that. */
int64_t bar_values_bound(const struct bar_values *values, const struct bar_task *task,
                         const int64_t *counts, const int64_t *limits, int64_t most);

enum bar_outcome { BAR_FOUND, BAR_NONE, BAR_UNDECIDED, BAR_GOES_ON };

/* The search for a task, in its arena; used for one search after the other. */
struct bar_exact;
struct bar_exact *bar_exact_begin(const struct bar_task *task);

/*
 * Looks for fillings of all parts in `counts` out of `limits` that cost at most `most`, and adds
 * them to `plan`. NONE means that there are none, in whole numbers and by a search of everything
 * (states that failed are remembered by a hash of 64 bits). UNDECIDED when about `work` was not
 * enough. What it did is added to *done. Counts and limits are left as they were.
 */
enum bar_outcome bar_exact_search(struct bar_exact *exact, const struct bar_values *values,
                                  int64_t *counts, int64_t *limits, int64_t most, int64_t work,
                                  struct bar_plan *plan, int64_t *done);

/*
 * The same a bit at a time: sets out, and then goes on for about `slice` of work as long as it says
 * GOES_ON. Values, counts and limits must stay as they are until then, and `exact` must not be
 * asked for anything else.
 */
void bar_exact_set_out(struct bar_exact *exact, const struct bar_values *values, int64_t *counts,
                       int64_t *limits, int64_t most, int64_t work);
enum bar_outcome bar_exact_go_on(struct bar_exact *exact, int64_t slice, struct bar_plan *plan,
                                 int64_t *done);

/*
 * Adds to `plan` every filling of sticks in `limits`, once each, that may stand in a plan of all
 * parts in `counts` that costs at most `most`: no part could join it, and it loses no more than the
 * whole plan may. False when there are more than `fillings` or it takes more than `work`.
 */
bool bar_exact_fillings(struct bar_exact *exact, const struct bar_values *values, int64_t *counts,
                        int64_t *limits, int64_t most, size_t fillings, int64_t work,
                        struct bar_plan *plan, int64_t *done);

#endif
