/*
 * Mixes: how many sticks of each size. The cheapest mix that is not refuted is a bound, and a mix
 * that is packed is a plan.
 *
 * A mix is refuted by values of the parts: when all its sticks, each filled as full as it goes,
 * hold less value than the parts have. The values come from the relaxation of packing that mix (its
 * duals, when it cannot be packed even in fractions) and are checked in whole numbers; one
 * refutation mostly refutes many mixes. After Benders, "Partitioning procedures for solving
 * mixed-variables programming problems", 1962.
 */
#ifndef CUT_BARS_MIX_H
#define CUT_BARS_MIX_H

#include "cut/bars_exact.h"
#include "cut/columns.h"

struct bar_mixes;

/* Begins with a task, in its arena; NULL where it has too many sizes. */
struct bar_mixes *bar_mixes_begin(const struct bar_task *task);

/* Refutes by values that are known already: those of `values`. */
void bar_mixes_refute(struct bar_mixes *mixes, const struct bar_values *values);

/* How the search for the next mix ended; TOO_MANY: it was given up. */
enum mix_outcome { MIX_FOUND, MIX_NONE, MIX_TOO_MANY };

/*
 * The cheapest mix below `below` that is not refuted and was not set aside; its cost in *ret_cost,
 * and its counts by size for bar_mixes_counts. NONE when there is none: nothing is cheaper than
 * `below`, but for mixes set aside. No plan may be cheaper than `bound`. Work is added to *done.
 */
enum mix_outcome bar_mixes_next(struct bar_mixes *mixes, int64_t bound, int64_t below,
                                int64_t *ret_cost, int64_t *done);
const int64_t *bar_mixes_counts(const struct bar_mixes *mixes);

/*
 * Whether the mix may be packed: false when it cannot even in fractions, and is refuted. When true
 * the relaxation is ready for a dive, unless rounding hid that nothing can be packed; then the dive
 * finds nothing. bar_mixes_columns is that relaxation. Counts of parts and limits of sticks, which
 * hold the mix, stay the caller's.
 */
bool bar_mixes_relax(struct bar_mixes *mixes, const int64_t *counts, const int64_t *limits,
                     int64_t *done);
struct columns *bar_mixes_columns(struct bar_mixes *mixes);

/* The relaxation goes on after a dive has cut some; false when what is left cannot be packed. */
bool bar_mixes_relax_rest(struct bar_mixes *mixes, int64_t *done);

/*
 * Sets out to pack the mix with as little lost as there is over: branches over the fillings that
 * lose so little (bars_pool.h), or where these are many, part by part. Counts and limits as for
 * bar_mixes_relax; they must stay as they are while bar_mixes_go_on, about `slice` of work at a
 * time, says GOES_ON. FOUND: the plan holds the mix. NONE: it cannot be packed.
 */
void bar_mixes_set_out(struct bar_mixes *mixes, int64_t *counts, int64_t *limits, int64_t *done);
enum bar_outcome bar_mixes_go_on(struct bar_mixes *mixes, int64_t slice, struct bar_plan *plan,
                                 int64_t *done);

/* The mix cannot be packed: it is not found again. */
void bar_mixes_strike(struct bar_mixes *mixes);

/* Sets the mix aside: it was not packed, nor refuted. The cheapest mix set aside stays a bound. */
void bar_mixes_set_aside(struct bar_mixes *mixes, int64_t cost);

/* The cost of the cheapest mix that was set aside; INT64_MAX when none was. */
int64_t bar_mixes_open(const struct bar_mixes *mixes);

/* Takes up again what was set aside, with more work for each; false when nothing was, or when
 * enough was done. */
bool bar_mixes_again(struct bar_mixes *mixes);

#endif
