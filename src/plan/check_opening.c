/*
 * Cloth over heads that lie outside is peeled back from a loose edge. The hand goes under it as far
 * as the heads lie from that edge (common practice, no source), and the edge stays open for
 * `open.per_screw` and that distance. An edge that the maker wants closed at the bench shuts the
 * heads in; one that is left loose where no join asks for it would never be closed.
 */
#include "plan/check.h"

#include "plan/access.h"
#include "plan/cures.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"

#include <assert.h>

/* From a head to an edge of the layer's face, along the cloth. */
static int64_t to_edge(const struct planning *planning, const struct layer *layer,
                       const struct box *box, const struct junction *junction, int64_t edge,
                       size_t index)
{
    const struct plan_point *point = &planning->plan->points.at[junction->first_point + index];
    struct vector at = box->key == junction->box_b ? point->in_b : point->in_a;
    struct area outline = drape_face(layer, box);
    int64_t u, v;

    box_to_face(layer->side, at, &u, &v);
    switch (edge) {
    case EDGE_LEFT:
        return u - outline.u0;
    case EDGE_RIGHT:
        return outline.u1 - u;
    case EDGE_BOTTOM:
        return v - outline.v0;
    default:
        return outline.v1 - v;
    }
}

static int64_t farthest(const struct planning *planning, const struct layer *layer,
                        const struct box *box, const struct junction *junction, int64_t edge)
{
    int64_t most = 0;

    for (size_t i = 0; i < junction->point_count; i++)
        most = length_larger(most, to_edge(planning, layer, box, junction, edge, i));
    return most;
}

/* Heads on a face of the layer, not on a side that it goes round. */
static bool lies_over(const struct layer *layer, const struct junction *junction)
{
    return !junction->head_inside && junction->point_count > 0 &&
           layer_has_face(layer, junction->head_side);
}

/* How many heads some opening on this edge is left for. */
static bool opens_for(const struct edge_runs *runs, int64_t join)
{
    for (size_t i = 0; i < runs->count; i++)
        if (runs->at[i].join == join &&
            (runs->at[i].class == CLASS_OPENING || runs->at[i].class == CLASS_SITE))
            return true;
    return false;
}

/* What the maker says of an edge; NULL where nothing is said. */
static const struct layer_edge *edge_by_hand(const struct model *model, const struct layer *layer,
                                             int64_t edge)
{
    for (size_t i = 0; i < model->layer_edges.count; i++) {
        const struct layer_edge *by_hand = &model->layer_edges.at[i];

        if (by_hand->layer == layer->key && by_hand->edge == edge)
            return by_hand;
    }
    return NULL;
}

static const char *join_name(const struct model *model, int64_t key)
{
    const struct join *join = MODEL_FIND(model, join, key);

    return join ? join->name : "";
}

static void tell_shut(struct planning *planning, const struct layer *layer,
                      const struct junction *junction, const struct layer_edge *by_hand)
{
    struct cure_draft cure = cure_begin(planning, "Leave that edge loose until the join is driven");
    struct finding *finding = finding_add(planning, FINDING_EDGE_SHUTS, ENTITY_layer, layer->key);

    argument_text(finding, 0, words_edge.at[by_hand->edge].name);
    argument_quantity(finding, 1, QUANTITY_COUNT, (int64_t)junction->point_count);
    argument_text(finding, 2, join_name(planning->model, junction->join));
    cure_word(&cure, ENTITY_layer_edge, by_hand->key, "class", words_class.at[CLASS_AUTO].name);
    cure_offer(&cure, finding);
}

/* A sleeve that opens on the other side instead, where its heads are nearer. */
static void offer_other_side(struct planning *planning, const struct layer *layer, int64_t edge,
                             struct finding *finding)
{
    struct cure_draft cure = cure_begin(planning, "Turn it round: the open side next to the heads");

    assert(edge >= 0 && edge < EDGE_COUNT);
    if (layer->shape != SHAPE_SEWN)
        return;
    cure_word(&cure, ENTITY_layer, layer->key, words_edge.at[edge_opposite(edge)].name,
              words_ending.at[ENDING_OPEN].name);
    cure_word(&cure, ENTITY_layer, layer->key, words_edge.at[edge].name,
              words_ending.at[ENDING_SEWN].name);
    cure_offer(&cure, finding);
}

static void tell_far(struct planning *planning, const struct layer *layer,
                     const struct junction *junction, int64_t edge, int64_t distance)
{
    int64_t open = planning->value[TRADE_OPEN_PER_SCREW] + distance;
    struct finding *finding;

    if (distance <= planning->value[TRADE_OPEN_PER_SCREW])
        return;
    finding = finding_add(planning,
                          distance > planning->value[TRADE_ARM_REACH] ? FINDING_OPENING_TOO_FAR
                                                                      : FINDING_OPENING_FAR,
                          ENTITY_layer, layer->key);
    argument_length(finding, 0, distance);
    argument_length(finding, 1, open);
    argument_text(finding, 2, join_name(planning->model, junction->join));
    offer_other_side(planning, layer, edge, finding);
}

static void check_edge(struct planning *planning, const struct layer *layer, const struct box *box,
                       const struct junction *junction, int64_t edge)
{
    struct edge_runs runs = access_edge_runs(planning, layer, box, edge);
    const struct layer_edge *by_hand = edge_by_hand(planning->model, layer, edge);

    if (!opens_for(&runs, junction->join))
        return;
    if (by_hand && (by_hand->class == CLASS_FREE || by_hand->class == CLASS_TRAPPED))
        tell_shut(planning, layer, junction, by_hand);
    else
        tell_far(planning, layer, junction, edge, farthest(planning, layer, box, junction, edge));
}

/* A join that would want the edge loose, if there were a way to its heads. */
static bool has_no_way_yet(const struct planning *planning, const struct layer *layer)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];

        if (junction->point_count > 0 && !junction->reachable &&
            (layer_touches(planning->model, layer, junction->box_a) ||
             layer_touches(planning->model, layer, junction->box_b)))
            return true;
    }
    return false;
}

/* The rows of an edge stand together: the first tells of all. */
static bool is_told(const struct plan *plan, const struct layer *layer, int64_t edge)
{
    const struct finding *last =
        plan->findings.count > 0 ? &plan->findings.at[plan->findings.count - 1] : NULL;

    return last && last->kind == FINDING_LOOSE_FOR_NOTHING && last->key == layer->key &&
           last->arguments[0].text == words_edge.at[edge].name;
}

/* Left loose by hand, and nothing is driven under it: no step would close it. */
static void check_loose(struct planning *planning, const struct interval *interval)
{
    assert(interval->edge < planning->plan->edges.count);

    const struct edge *edge = &planning->plan->edges.at[interval->edge];
    const struct layer *layer = MODEL_FIND(planning->model, layer, edge->layer);
    struct cure_draft cure = cure_begin(planning, "Let the joins say when it is stapled");
    const struct layer_edge *by_hand;
    struct finding *finding;

    if (interval->pass == STAPLED_AT_BENCH || interval->join || !layer || edge->edge < 0 ||
        is_told(planning->plan, layer, edge->edge) || has_no_way_yet(planning, layer))
        return;
    by_hand = edge_by_hand(planning->model, layer, edge->edge);
    finding = finding_add(planning, FINDING_LOOSE_FOR_NOTHING, ENTITY_layer, layer->key);
    argument_text(finding, 0, words_edge.at[edge->edge].name);
    argument_length(finding, 1, interval->to - interval->from);
    if (by_hand)
        cure_word(&cure, ENTITY_layer_edge, by_hand->key, "class", words_class.at[CLASS_AUTO].name);
    cure_offer(&cure, finding);
}

void check_openings(struct planning *planning)
{
    const struct model *model = planning->model;
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        const struct box *box = MODEL_FIND(model, box, junction->head_box);

        for (size_t k = 0; box && k < model->layers.count; k++) {
            const struct layer *layer = &model->layers.at[k];

            if (!drape_is_cloth(layer) || !layer_touches(model, layer, box->key) ||
                !lies_over(layer, junction))
                continue;
            for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
                check_edge(planning, layer, box, junction, edge);
        }
    }
    for (size_t i = 0; i < plan->intervals.count; i++)
        check_loose(planning, &plan->intervals.at[i]);
}
