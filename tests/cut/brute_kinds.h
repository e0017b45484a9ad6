/*
 * The least price of a job of sheets with up to 20 parts of few kinds, by going through everything.
 */
#ifndef BRUTE_KINDS_H
#define BRUTE_KINDS_H

#include "cut/layout.h"

#include <stdbool.h>

#define BRUTE_KINDS 4
#define BRUTE_SETS 1500
#define BRUTE_BOXES 400

/* False where there are more kinds, sets of parts or boxes than the tables hold. All sizes must be
 * such as any number can be had of, without trim. */
bool brute_kinds_cost(const struct cut_job *job, int64_t *ret_cost);

#endif
