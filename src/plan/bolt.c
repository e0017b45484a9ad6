/*
 * The bolts of joins: how long, and the holes that bolt, washer and T-nut want.
 *
 * A bolt passes the head's wood, the cloth and the other wood, and its thread must fill the T-nut
 * in the far side: it is as long as all that at least, and no longer than bolt.beyond more. Of the
 * stock's lengths the shortest such one is taken; a shorter one does where its head can be let in
 * (TRADE 2.2: a counterbore leaves 3/4 in of wood); else what has to be bought is the next length
 * of a round number.
 */
#include "plan/standing.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/point.h"

/* Bolts are sold by half inches and by tens of millimetres: common practice, no source. */
#define STEP_INCH (LENGTH_INCH / 2)
#define STEP_MM (10 * LENGTH_MM)

struct bolting {
    struct planning *planning;
    const struct join *join;
    const struct junction *junction;
    struct faces faces;
    bool told;
};

static int64_t diameter_of(const struct bolting *bolting)
{
    const struct stock *stock = MODEL_FIND(bolting->planning->model, stock, bolting->join->stock);

    return stock && stock->diameter > 0 ? stock->diameter
                                        : bolting->planning->value[TRADE_BOLT_DIAMETER];
}

static bool is_offered(const struct bolting *bolting, const struct stock *stock, int64_t diameter)
{
    if (stock->kind != STOCK_BOLT || stock->length <= 0)
        return false;
    return bolting->join->stock ? stock->key == bolting->join->stock : stock->diameter == diameter;
}

/* The shortest from `least` to `most`; NULL when there is none. */
static const struct stock *pick(const struct bolting *bolting, int64_t diameter, int64_t least,
                                int64_t most)
{
    const struct model *model = bolting->planning->model;
    const struct stock *best = NULL;

    for (size_t i = 0; i < model->stocks.count; i++) {
        const struct stock *stock = &model->stocks.at[i];

        if (is_offered(bolting, stock, diameter) && stock->length >= least &&
            stock->length <= most && (!best || stock->length < best->length))
            best = stock;
    }
    return best;
}

static int64_t length_to_buy(const struct bolting *bolting, int64_t stack)
{
    int64_t step = model_units(bolting->planning->model) == UNITS_MM ? STEP_MM : STEP_INCH;

    return whole_divide_up(stack, step) * step;
}

/* The one bolt that the join names is too short or too long: by how much, once a join. */
static void tell_length(struct bolting *bolting, int64_t stack)
{
    const struct stock *stock = MODEL_FIND(bolting->planning->model, stock, bolting->join->stock);
    struct finding *finding;

    if (!stock || stock->length <= 0 || bolting->told)
        return;
    bolting->told = true;
    finding = finding_add(bolting->planning, FINDING_BOLT_LENGTH, ENTITY_join, bolting->join->key);
    argument_length(finding, 0, stock->length);
    argument_length(finding, 1, stack);
    argument_length(finding, 2, stack + bolting->planning->value[TRADE_BOLT_BEYOND]);
}

static void choose_length(struct bolting *bolting, const struct fastening *fastening,
                          struct plan_bolt *bolt)
{
    const int64_t *value = bolting->planning->value;
    int64_t let_in = length_larger(0, fastening->need.passed - value[TRADE_SCREW_COUNTERBORE_REST]);
    const struct stock *stock =
        pick(bolting, bolt->diameter, bolt->stack, bolt->stack + value[TRADE_BOLT_BEYOND]);

    if (!stock)
        stock = pick(bolting, bolt->diameter, bolt->stack - let_in, bolt->stack);
    if (!stock)
        tell_length(bolting, bolt->stack);
    bolt->stock = stock ? stock->key : 0;
    bolt->length = stock ? stock->length : length_to_buy(bolting, bolt->stack);
    if (bolt->length >= bolt->stack)
        return;
    bolt->counterbore = value[TRADE_BOLT_WASHER];
    bolt->counterbore_depth = bolt->stack - bolt->length;
}

static void add_bolt(struct bolting *bolting, size_t point)
{
    struct planning *planning = bolting->planning;
    const int64_t *value = planning->value;
    bool head_in_b = bolting->junction->head_box != bolting->junction->box_a;
    struct fastening fastening;

    if (!fasten_reckon(planning, bolting->junction, &bolting->faces,
                       &planning->plan->points.at[point], head_in_b, &fastening))
        return;
    struct plan_bolt bolt = {.point = point,
                             .diameter = diameter_of(bolting),
                             .stack = fastening.need.passed + fastening.need.cloth +
                                      fastening.need.receiving};
    bolt.hole = bolt.diameter + value[TRADE_BOLT_CLEARANCE];
    bolt.nut_hole = bolt.diameter + value[TRADE_T_NUT_HOLE];
    choose_length(bolting, &fastening, &bolt);
    *LIST_ADD(planning->arena, &planning->plan->bolts) = bolt;
}

void fit_bolts(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        struct bolting bolting = {.planning = planning,
                                  .join = MODEL_FIND(planning->model, join, junction->join),
                                  .junction = junction};

        if (bolting.join->fastener != FASTENER_BOLT || junction->box_b == 0)
            continue;
        bolting.faces = fasten_faces(planning, junction);
        for (size_t k = 0; k < junction->point_count; k++)
            add_bolt(&bolting, junction->first_point + k);
    }
}
