/*
 * The bolts of joins: how long, and the holes that bolt, washer and T-nut want.
 *
 * A bolt passes the head's wood, the cloth and the other wood, and its thread must fill the T-nut
 * in the far side: it is as long as all that at least, and no longer than bolt.beyond more. Of the
 * stock's lengths the shortest such one is taken; a shorter one does where its head can be let in
 * (a counterbore leaves 3/4 in of wood: common practice, no source); else what has to be bought is
 * the next length of a round number.
 *
 * The T-nut is driven into the far side against the bolt's way. Where the wood ends in the hollow
 * of its box it has to be in before the last panel that leaves a way into that hollow is on, and
 * where a panel lies on the wood's back, before that one.
 */
#include "plan/standing.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/point.h"
#include "plan/slices.h"

#include <assert.h>

/* Bolts are sold by half inches and by tens of millimetres: common practice, no source. */
#define STEP_INCH (LENGTH_INCH / 2)
#define STEP_MM (10 * LENGTH_MM)

struct bolting {
    struct planning *planning;
    const struct join *join;
    const struct junction *junction;
    struct faces faces;
    struct thicket *standing;
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

/* ---- the nut's way in ---- */

static bool is_panelled(const struct planning *planning, int64_t box, int64_t side)
{
    for (size_t i = 0; i < planning->model->facings.count; i++) {
        const struct facing *facing = &planning->model->facings.at[i];

        if (facing->box == box && facing->side == side && facing->kind == FACING_PANEL &&
            !facing->loose)
            return true;
    }
    return false;
}

static int64_t panel_thickness(const struct planning *planning, int64_t box, int64_t side)
{
    struct slice panels = plan_panels_of(planning->plan, box);
    int64_t thickness = 0;

    for (size_t i = panels.from; i < panels.to; i++)
        if (planning->plan->panels.at[i].side == side)
            thickness = length_larger(thickness, planning->plan->panels.at[i].thickness);
    return thickness;
}

/* The edges of a ladder are wood all along. */
static bool has_a_way(const struct box *box, int64_t side)
{
    return box->frame == FRAME_CRATE || side_axis(side) == side_axis(box->main_side);
}

/* Of the sides that lead into the hollow, all panelled, the one across from the joint is panelled
 * last, else the last of them; -1 when one stays open. */
static int64_t last_way_shut(const struct planning *planning, const struct box *box, int64_t mating)
{
    int64_t last = -1;

    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        if (side == mating || !has_a_way(box, side))
            continue;
        if (!is_panelled(planning, box->key, side))
            return -1;
        if (last != side_opposite(mating))
            last = side;
    }
    return last;
}

/* `far` is how deep behind the mating face the nut's wood ends. */
static int64_t what_shuts_nut(const struct planning *planning, const struct box *box,
                              int64_t mating, int64_t far)
{
    int64_t across = side_opposite(mating);
    int64_t rest = vector_along(box_size(box), side_axis(mating)) - far;

    if (rest <= 0)
        return -1;
    if (is_panelled(planning, box->key, across) &&
        rest <= panel_thickness(planning, box->key, across))
        return across;
    return last_way_shut(planning, box, mating);
}

static void find_nut(const struct bolting *bolting, const struct plan_point *point, bool in_b,
                     struct plan_bolt *bolt)
{
    const struct planning *planning = bolting->planning;
    const struct backings *wood = in_b ? &bolting->faces.b : &bolting->faces.a;
    int64_t u, v;

    point_on_face(planning, bolting->junction, point, in_b, &u, &v);
    const struct backing *backing = backing_at(wood, u, v);
    assert(backing);
    bolt->nut_box = wood->box;
    bolt->nut_shut = what_shuts_nut(planning, MODEL_FIND(planning->model, box, wood->box),
                                    wood->side, backing->far);
}

/* ---- where it stands ---- */

/* In a box that has so much of it behind its mating face. */
static void stand_in(const struct bolting *bolting, const struct plan_point *point, bool in_b,
                     int64_t behind, int64_t before, size_t index)
{
    assert(index < bolting->planning->plan->bolts.count);

    const struct planning *planning = bolting->planning;
    const struct junction *junction = bolting->junction;
    int64_t side = point_side(planning, junction, in_b);
    int64_t box = in_b ? junction->box_b : junction->box_a;
    struct vector at = in_b ? point->in_b : point->in_a;
    struct screw_axis axis = {at, at, planning->plan->bolts.at[index].diameter};
    int64_t face = vector_along(at, side_axis(side));

    vector_set(&axis.head, side_axis(side), face - side_sign(side) * behind);
    vector_set(&axis.tip, side_axis(side), face + side_sign(side) * before);
    thicket_add_bolt(&bolting->standing[model_index(planning->model, ENTITY_box, box)], &axis,
                     index);
}

static void add_bolt(struct bolting *bolting, size_t index)
{
    struct planning *planning = bolting->planning;
    const int64_t *value = planning->value;
    const struct plan_point *point = &planning->plan->points.at[index];
    bool head_in_b = bolting->junction->head_box != bolting->junction->box_a;
    struct fastening fastening;

    if (!fasten_reckon(planning, bolting->junction, &bolting->faces, point, head_in_b, &fastening))
        return;
    struct plan_bolt bolt = {.point = index,
                             .diameter = diameter_of(bolting),
                             .stack = fastening.need.passed + fastening.need.cloth +
                                      fastening.need.receiving};
    bolt.hole = bolt.diameter + value[TRADE_BOLT_CLEARANCE];
    bolt.nut_hole = bolt.diameter + value[TRADE_T_NUT_HOLE];
    choose_length(bolting, &fastening, &bolt);
    find_nut(bolting, point, !head_in_b, &bolt);
    *LIST_ADD(planning->arena, &planning->plan->bolts) = bolt;
    index = planning->plan->bolts.count - 1;
    stand_in(bolting, point, head_in_b, fastening.depth, bolt.stack - fastening.depth, index);
    stand_in(bolting, point, !head_in_b, bolt.stack - fastening.depth, fastening.depth, index);
}

void fit_bolts(struct planning *planning, struct thicket *standing)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        struct bolting bolting = {.planning = planning,
                                  .join = MODEL_FIND(planning->model, join, junction->join),
                                  .junction = junction,
                                  .standing = standing};

        if (bolting.join->fastener != FASTENER_BOLT || junction->box_b == 0)
            continue;
        bolting.faces = fasten_faces(planning, junction);
        for (size_t k = 0; k < junction->point_count; k++)
            add_bolt(&bolting, junction->first_point + k);
    }
}
