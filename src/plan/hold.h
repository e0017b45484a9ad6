/*
 * What screws and nails hold, as guidance and no engineering advice. Pounds and inches; `gravity`
 * is the wood's specific gravity, `diameter` the shank's, `bite` the thread or nail in the wood
 * that receives it. Figures of one fastener in sound, seasoned wood, set in a lead hole.
 *
 * Formula hold.screw.out: 2,850 G^2 D L, allowed, side grain (older NDS in a handbook of civil
 * engineering formulas, equation 6.37, and Engineering ToolBox d_1815). From end grain the same
 * handbook allows none.
 * Formula hold.screw.side: C D^2, allowed, with C 4,800, 3,960, 3,240 and 2,520 by group of species
 * (the same, equation 6.38 and table 6.2); whole at a bite of 7 D, in proportion down to 4 D, none
 * below (from memory). Groups by gravity here: from 0.60, 0.48, 0.42, and below; that split is ours
 * and gives each species of the table its group.
 * Formula hold.nail.out: 7,850 G^(5/2) D L, at failure, side grain (Wood Handbook equation 8-1).
 */
#ifndef PLAN_HOLD_H
#define PLAN_HOLD_H

#include "plan/plan.h"

double hold_screw_out(double gravity, double diameter, double bite);
double hold_screw_side(double gravity, double diameter, double bite);
double hold_nail_out(double gravity, double diameter, double bite);

/* C of hold.screw.side. */
double hold_group(double gravity);

/* A join of screws between two boxes, all its points together; masses stand for forces. */
struct hold {
    int64_t join;
    int64_t points; /* with a screw */
    int64_t out;    /* pulled apart along the screws */
    int64_t side;   /* pulled across them */
    bool end_grain; /* some bite in end grain: nothing is allowed pulled apart */
};

/* False of a join without screws of ours. O(points). */
bool hold_join(const struct plan *plan, const struct junction *junction, struct hold *ret_hold);

#endif
