#include "plan/hold.h"

#define MG_POUND 453592.37

double hold_screw_out(double gravity, double diameter, double bite)
{
    return 2850 * gravity * gravity * diameter * bite;
}

double hold_group(double gravity)
{
    if (gravity >= 0.60)
        return 4800;
    if (gravity >= 0.48)
        return 3960;
    return gravity >= 0.42 ? 3240 : 2520;
}

double hold_screw_side(double gravity, double diameter, double bite)
{
    double diameters = bite / diameter;
    double share = diameters >= 7 ? 1 : diameters >= 4 ? diameters / 7 : 0;

    return hold_group(gravity) * diameter * diameter * share;
}

/* A square root to double precision, of a specific gravity: no library, so that all agree. */
static double root(double square)
{
    double value = 1;

    for (int i = 0; i < 40; i++)
        value = (value + square / value) / 2;
    return value;
}

double hold_nail_out(double gravity, double diameter, double bite)
{
    return 7850 * gravity * gravity * root(gravity) * diameter * bite;
}

static double gravity_of(const struct plan *plan, size_t into)
{
    const struct stock *stock = into < plan->members.count
                                    ? MODEL_FIND(plan->facts, stock, plan->members.at[into].stock)
                                    : NULL;

    return (double)plan->value[stock && stock->wood == WOOD_HARD ? TRADE_WOOD_GRAVITY_HARD
                                                                 : TRADE_WOOD_GRAVITY_SOFT] /
           1000000;
}

static void add_point(const struct plan *plan, const struct junction *junction,
                      const struct plan_point *point, struct hold *hold)
{
    const struct screw *screw = &plan->screws.at[point->screw];
    size_t into = junction->head_box == junction->box_a ? point->member_b : point->member_a;
    double gravity = gravity_of(plan, into);
    double diameter = (double)plan->screw_kinds.at[screw->kind].diameter / (double)LENGTH_INCH;
    double bite = (double)screw->bite / (double)LENGTH_INCH;

    hold->points++;
    hold->end_grain |= screw->end_grain;
    hold->out += (int64_t)(hold_screw_out(gravity, diameter, bite) * MG_POUND);
    hold->side += (int64_t)(hold_screw_side(gravity, diameter, bite) * MG_POUND);
}

bool hold_join(const struct plan *plan, const struct junction *junction, struct hold *ret_hold)
{
    struct hold hold = {.join = junction->join};

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &plan->points.at[junction->first_point + i];

        if (point->screw != PLAN_NONE)
            add_point(plan, junction, point, &hold);
    }
    if (hold.end_grain)
        hold.out = 0;
    *ret_hold = hold;
    return hold.points > 0;
}
