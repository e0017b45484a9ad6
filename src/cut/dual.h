/*
 * Dual feasible functions: what fits side by side still does when all is measured by one of them
 * (Fekete and Schepers, 2001; Carlier, Clautiaux and Moukrim, 2007).
 */
#ifndef CUT_DUAL_H
#define CUT_DUAL_H

#include <stddef.h>
#include <stdint.h>

/* SAME: x. STEP: all above C - k, nothing below k. SHARE: whole k + 1-ths, by k. TWICE: whole k's,
 * a measure of the rest for what is over half. */
enum dual_kind { DUAL_SAME, DUAL_STEP, DUAL_SHARE, DUAL_TWICE };

struct dual {
    enum dual_kind kind;
    int64_t k;
};

#define DUALS_MOST 48 /* more lengths or widths than that are left aside */

struct duals {
    struct dual at[DUALS_MOST];
    size_t count, most;
};

/* The function for `all`, of x from 0 to all. */
int64_t dual_of(const struct dual *dual, int64_t x, int64_t all);

/* And of the whole. */
int64_t dual_all(const struct dual *dual, int64_t all);

/* Those that no measure asks for; then, as long as there is room, those that change something at a
 * measure of a part. */
struct duals duals_begin(size_t most);
void duals_add(struct duals *duals, int64_t measure, int64_t all);

#endif
