/*
 * Edges of layers against joins. A run of an edge is worked out for each join by itself, and the
 * runs are then laid along the edge one after the other; where two claim the same place the one
 * that is stapled last holds it, for it cannot be stapled earlier.
 */
#include "plan/access.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/point.h"
#include "plan/rules.h"

#include <assert.h>
#include <string.h>

#define FAR_AWAY INT64_MAX

struct claim {
    const struct planning *planning;
    const struct layer *layer;
    const struct box *box;
    int64_t edge;
    int axis; /* that the edge runs along */
    int64_t from, to;
    LIST_OF(struct edge_run) runs;
};

struct laid {
    LIST_OF(struct edge_run) runs;
};

static struct claim start_claim(const struct planning *planning, const struct layer *layer,
                                const struct box *box, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    struct area outline = drape_face(layer, box);
    bool upright = edge_is_upright(edge);
    struct claim claim = {planning, layer, box, edge, 0, 0, 0, {{0}}};

    claim.axis = upright ? side_v_axis(layer->side) : side_u_axis(layer->side);
    claim.from = upright ? outline.v0 : outline.u0;
    claim.to = upright ? outline.v1 : outline.u1;
    return claim;
}

/* A run in the box's coordinates, cut to the edge. */
static void add_run(struct claim *claim, int64_t from, int64_t to, int64_t class, int64_t join)
{
    from = from < claim->from ? claim->from : from;
    to = to > claim->to ? claim->to : to;
    if (from < to)
        *LIST_ADD(claim->planning->arena, &claim->runs) =
            (struct edge_run){from - claim->from, to - claim->from, class, join};
}

/* ---- trapped ---- */

static void claim_trapped(struct claim *claim, const struct junction *junction, bool of_b)
{
    int64_t side = point_side(claim->planning, junction, of_b);
    struct landing landing = drape_landing(claim->planning, claim->layer, claim->box, claim->edge);
    struct area common = area_cut(&landing.area, of_b ? &junction->zone_b : &junction->zone);

    if (landing.side != side || area_empty(&common))
        return;
    if (side_u_axis(side) == claim->axis)
        add_run(claim, common.u0, common.u1, CLASS_TRAPPED, junction->join);
    else if (side_v_axis(side) == claim->axis)
        add_run(claim, common.v0, common.v1, CLASS_TRAPPED, junction->join);
    else
        add_run(claim, claim->from, claim->to, CLASS_TRAPPED, junction->join);
}

/* ---- open ---- */

static int64_t class_of(const struct planning *planning, const struct junction *junction)
{
    const struct join *join = MODEL_FIND(planning->model, join, junction->join);

    assert(join);
    return join->place == PLACE_SITE ? CLASS_SITE : CLASS_OPENING;
}

static struct vector head_of(const struct claim *claim, const struct junction *junction,
                             const struct plan_point *point)
{
    return junction->head_box == junction->box_b && claim->box->key == junction->box_b
               ? point->in_b
               : point->in_a;
}

/* From a place on the far side of the box to the hem of the edge that is wrapped round to it. */
static int64_t head_to_hem(const struct claim *claim, int64_t edge, int64_t u, int64_t v)
{
    struct landing landing = drape_landing(claim->planning, claim->layer, claim->box, edge);

    if (landing.side != side_opposite(claim->layer->side) || !area_holds(&landing.area, u, v))
        return FAR_AWAY;
    return edge == EDGE_LEFT     ? landing.area.u1 - u
           : edge == EDGE_RIGHT  ? u - landing.area.u0
           : edge == EDGE_BOTTOM ? landing.area.v1 - v
                                 : v - landing.area.v0;
}

/* The side that a head shows on, or that the tool stands out of, straight behind it. */
static int64_t shows_on(const struct junction *junction)
{
    return junction->head_inside ? side_opposite(junction->head_side) : junction->head_side;
}

/* From a head to the edge that is peeled back, along the cloth; FAR_AWAY when the layer does not
 * lie over it. `head` is taken on the outside, where the head shows. */
static int64_t head_to_edge(const struct claim *claim, const struct junction *junction,
                            const struct plan_point *point, int64_t edge)
{
    struct vector at = head_of(claim, junction, point);
    int64_t shown = shows_on(junction);
    struct area outline = drape_face(claim->layer, claim->box);
    int64_t u, v;

    box_to_face(shown, at, &u, &v);
    if (!drape_covers(claim->planning, claim->layer, claim->box, shown, u, v))
        return FAR_AWAY;
    if (side_axis(shown) != side_axis(claim->layer->side)) {
        int axis = side_axis(claim->layer->side);
        int64_t depth = vector_along(box_size(claim->box), axis);
        int64_t back = side_sign(claim->layer->side) > 0 ? vector_along(at, axis)
                                                         : depth - vector_along(at, axis);

        return edge_side(claim->layer->side, edge) == shown ? back : FAR_AWAY;
    }
    if (shown != claim->layer->side && claim->layer->shape == SHAPE_WRAPPED && !claim->layer->both)
        return head_to_hem(claim, edge, u, v);
    box_to_face(claim->layer->side, at, &u, &v);
    return edge == EDGE_LEFT     ? u - outline.u0
           : edge == EDGE_RIGHT  ? outline.u1 - u
           : edge == EDGE_BOTTOM ? v - outline.v0
                                 : outline.v1 - v;
}

static int64_t farthest_head(const struct claim *claim, const struct junction *junction,
                             int64_t edge)
{
    int64_t farthest = -1;

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point =
            &claim->planning->plan->points.at[junction->first_point + i];
        int64_t distance = head_to_edge(claim, junction, point, edge);

        if (distance != FAR_AWAY && distance > farthest)
            farthest = distance;
    }
    return farthest < 0 ? FAR_AWAY : farthest;
}

static bool opens_at(const struct layer *layer, int64_t edge)
{
    return layer->shape != SHAPE_SEWN || layer_ending(layer, edge) == ENDING_OPEN;
}

/* The edge to peel back: the nearest to the heads of those that can be opened. */
static int64_t edge_to_open(const struct claim *claim, const struct junction *junction)
{
    int64_t best = -1;
    int64_t least = FAR_AWAY;

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        int64_t distance =
            opens_at(claim->layer, edge) ? farthest_head(claim, junction, edge) : FAR_AWAY;

        if (distance < least) {
            least = distance;
            best = edge;
        }
    }
    return best;
}

static void claim_openings(struct claim *claim, const struct junction *junction)
{
    int64_t class = class_of(claim->planning, junction);

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point =
            &claim->planning->plan->points.at[junction->first_point + i];
        int64_t distance = head_to_edge(claim, junction, point, claim->edge);

        if (distance == FAR_AWAY)
            continue;
        int64_t width = claim->planning->value[TRADE_OPEN_PER_SCREW] + distance;
        int64_t middle = vector_along(head_of(claim, junction, point), claim->axis);
        int64_t from = middle - width / 2;
        add_run(claim, from, from + width, class, junction->join);
    }
}

/* ---- which of them ---- */

static const struct constraint *waiting(const struct claim *claim, int64_t join)
{
    const struct plan *plan = claim->planning->plan;

    for (size_t i = 0; i < plan->constraints.count; i++) {
        const struct constraint *constraint = &plan->constraints.at[i];

        if (constraint->kind == JOIN_BEFORE_LAYER && constraint->join == join &&
            constraint->item == claim->layer->key)
            return constraint;
    }
    return NULL;
}

static void claim_for(struct claim *claim, const struct junction *junction)
{
    const struct constraint *wait = waiting(claim, junction->join);

    if (wait && strcmp(wait->rule, RULE_SHUT_SIDE) == 0) {
        add_run(claim, claim->from, claim->to, class_of(claim->planning, junction), junction->join);
        return;
    }
    if (junction->box_a == claim->box->key)
        claim_trapped(claim, junction, false);
    if (junction->box_b == claim->box->key)
        claim_trapped(claim, junction, true);
    if (wait && junction->head_box == claim->box->key &&
        edge_to_open(claim, junction) == claim->edge)
        claim_openings(claim, junction);
}

/* ---- along the edge ---- */

/* The vocabulary's order is the order of time: trapped, opening, site. */
static bool goes_first(const struct edge_run *a, const struct edge_run *b)
{
    return a->from != b->from ? a->from < b->from : a->class > b->class;
}

static void sort_runs(struct claim *claim)
{
    for (size_t i = 1; i < claim->runs.count; i++) {
        for (size_t j = i; j > 0 && goes_first(&claim->runs.at[j], &claim->runs.at[j - 1]); j--) {
            struct edge_run later = claim->runs.at[j - 1];

            claim->runs.at[j - 1] = claim->runs.at[j];
            claim->runs.at[j] = later;
        }
    }
}

static bool puts_together(const struct claim *claim, const struct edge_run *last,
                          const struct edge_run *next)
{
    int64_t merge = next->class == CLASS_TRAPPED ? 1 : claim->planning->value[TRADE_OPEN_MERGE];

    return last->class == next->class && next->from - last->to < merge;
}

/* Lays a run behind the last one. Of an overlap the later class takes all; what an earlier one then
 * still reaches beyond it comes after it. */
static void lay(const struct claim *claim, struct laid *laid, struct edge_run next)
{
    assert(next.from < next.to);

    struct edge_run *last = laid->runs.count > 0 ? &laid->runs.at[laid->runs.count - 1] : NULL;
    struct edge_run rest = next;

    if (last && puts_together(claim, last, &next)) {
        last->to = next.to > last->to ? next.to : last->to;
        return;
    }
    if (last && next.from < last->to && next.class > last->class) {
        rest = *last;
        rest.from = next.to;
        last->to = next.from;
    } else if (last && next.from < last->to) {
        next.from = last->to;
    }
    if (last && last->from >= last->to)
        laid->runs.count--;
    if (next.from < next.to)
        *LIST_ADD(claim->planning->arena, &laid->runs) = next;
    if (rest.class != next.class && rest.from < rest.to)
        *LIST_ADD(claim->planning->arena, &laid->runs) = rest;
}

struct edge_runs access_edge_runs(const struct planning *planning, const struct layer *layer,
                                  const struct box *box, int64_t edge)
{
    struct claim claim = start_claim(planning, layer, box, edge);
    struct laid laid = {0};

    for (size_t i = 0; i < planning->plan->junctions.count; i++) {
        const struct junction *junction = &planning->plan->junctions.at[i];

        if (junction->box_a == box->key || junction->box_b == box->key)
            claim_for(&claim, junction);
    }
    sort_runs(&claim);
    for (size_t i = 0; i < claim.runs.count; i++)
        lay(&claim, &laid, claim.runs.at[i]);
    return (struct edge_runs){laid.runs.at, laid.runs.count};
}
