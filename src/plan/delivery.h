/* What suppliers ask for bringing an order. */
#ifndef PLAN_DELIVERY_H
#define PLAN_DELIVERY_H

#include "plan/plan.h"

/* What is asked for an order of goods that come to `goods` without tax; 0: it is brought for
 * nothing. */
int64_t delivery_charge(const struct supplier *supplier, int64_t goods);

/* Whether a line of the list is bought from a supplier. */
bool is_bought_from(const struct model *model, const struct purchase *purchase,
                    const struct supplier *supplier);

#endif
