/*
 * Sticks to the end: looks through all plans that cost no more than a given sum, and says when
 * there is none.
 */
#ifndef CUT_BARS_EXACT_H
#define CUT_BARS_EXACT_H

#include "cut/covering.h"

/* What the parts are worth, in whole numbers: `scale` to a unit of price. */
struct bar_values {
    int64_t *of_kind;
    int64_t
        *over; /* by size: what its fullest filling is worth beyond its price; 0 without a limit */
    int64_t scale;
    struct value_table table;
    struct covering covering; /* up to the cost that was the best when the values were set */
};

void bar_values_begin(struct bar_values *values, const struct bar_task *task);

/* Takes over what floating point proposes (values of parts in the measure of prices, in any case
 * sound): rounds, and shrinks until no size without a limit holds more than its price. */
void bar_values_set(struct bar_values *values, const struct bar_task *task, const double *duals,
                    int64_t best_cost);

/* The cost that parts and sticks left cannot undercut, by these values; no more than `most`, a cost
 * that is known to be enough. */
int64_t bar_values_bound(const struct bar_values *values, const struct bar_task *task,
                         const int64_t *counts, const int64_t *limits, int64_t most);

enum bar_outcome { BAR_FOUND, BAR_NONE, BAR_UNDECIDED, BAR_GOES_ON };

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
