/*
 * What was bought is cut as it was laid out by then. So its layout is kept for the job as it stood
 * before anything was bought, with no price in it: neither the purchase itself nor what shops ask
 * later make another job of it.
 */
#ifndef PLAN_GOODS_H
#define PLAN_GOODS_H

#include "plan/plan.h"

/* A digest of the job without what was bought, and without prices. The arena is used, its escape
 * armed. */
uint64_t plan_goods_digest(const struct plan_job *job, struct arena *arena);

/* The job's layout in the sizes of just that: what is cut from something bought is cut from what is
 * on offer in its size. False where nothing is any more. The layout lies in the arena, whose escape
 * is armed. */
bool plan_goods_layout(const struct plan_job *job, struct arena *arena,
                       struct cut_layout *ret_layout);

#endif
