/*
 * A function f with f(a) + f(b) + ... <= f(C) whenever a + b + ... <= C is dual feasible for C.
 */
#include "cut/dual.h"

#define SHARES_MOST 6

static int64_t dual_twice(int64_t x, int64_t k, int64_t all)
{
    if (2 * x > all)
        return 2 * (all / k - (all - x) / k);
    return 2 * x == all ? all / k : 2 * (x / k);
}

int64_t dual_of(const struct dual *dual, int64_t x, int64_t all)
{
    switch (dual->kind) {
    case DUAL_STEP:
        return x > all - dual->k ? all : x < dual->k ? 0 : x;
    case DUAL_SHARE:
        return (dual->k + 1) * x % all == 0 ? dual->k * x : (dual->k + 1) * x / all * all;
    case DUAL_TWICE:
        return dual_twice(x, dual->k, all);
    default:
        return x;
    }
}

int64_t dual_all(const struct dual *dual, int64_t all)
{
    if (dual->kind == DUAL_SHARE)
        return dual->k * all;
    return dual->kind == DUAL_TWICE ? 2 * (all / dual->k) : all;
}

static void add_dual(struct duals *duals, enum dual_kind kind, int64_t k)
{
    for (size_t i = 0; i < duals->count; i++)
        if (duals->at[i].kind == kind && duals->at[i].k == k)
            return;
    if (duals->count < duals->most)
        duals->at[duals->count++] = (struct dual){kind, k};
}

void duals_add(struct duals *duals, int64_t measure, int64_t all)
{
    if (measure > 0 && 2 * measure <= all) {
        add_dual(duals, DUAL_STEP, measure);
        add_dual(duals, DUAL_TWICE, measure);
    }
}

struct duals duals_begin(size_t most)
{
    struct duals duals = {.most = most < DUALS_MOST ? most : DUALS_MOST};

    add_dual(&duals, DUAL_SAME, 0);
    for (int64_t k = 1; k <= SHARES_MOST; k++)
        add_dual(&duals, DUAL_SHARE, k);
    return duals;
}
