/*
 * Dual feasible functions: what fits side by side still does when all is measured by one of them
 * (Fekete and Schepers, 2001; Carlier, Clautiaux and Moukrim, 2007).
 */
#ifndef CUT_DUAL_H
#define CUT_DUAL_H

#include <stddef.h>
#include <stdint.h>

/*
 * Of a measure x, where C is the whole:
 * SAME   x
 * STEP   C where x is above C - k, 0 where it is below k, else x
 * SHARE  C for each whole (k + 1)th of C in x; k * x where nothing is left over
 * TWICE  2 for each whole k in x; where x is over half of C, what the whole has over the rest
 */
enum dual_kind { DUAL_SAME, DUAL_STEP, DUAL_SHARE, DUAL_TWICE };

struct dual {
    enum dual_kind kind;
    int64_t k;
};

#define DUALS_MOST 48 /* more measures of parts than that are left aside */

struct duals {
    struct dual at[DUALS_MOST];
    size_t count, most;
};

/* The function of x, from 0 to all, where the whole is `all`. */
int64_t dual_of(const struct dual *dual, int64_t x, int64_t all);

/* The function of the whole: what lies side by side comes to no more. */
int64_t dual_all(const struct dual *dual, int64_t all);

/* The functions that need no measure of a part (SAME, SHARE), with room for `most` in all; then, as
 * long as there is room, those that a measure of a part asks for (STEP, TWICE). */
struct duals duals_begin(size_t most);
void duals_add(struct duals *duals, int64_t measure, int64_t all);

#endif
