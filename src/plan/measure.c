/*
 * Which edges the distances of a point are taken from, once it is known where its head lies.
 *
 * The point pass took the nearer edge each way. An edge is findable while nothing lies over it:
 *
 *     padding on the side that the edge borders on, there where they meet, hides it;
 *     seen from the hollow of a box, a panel screwed on that side hides it too: the rule would have
 *     to go through the panel. From outside such a panel is the edge.
 *
 * A hidden edge gives way to the one opposite where that one is findable. All points of a join are
 * told from the edges of its first, so that its map is one table and the rule is never turned
 * round.
 */
#include "plan/pass.h"

#include "plan/geometry.h"
#include "plan/hole.h"
#include "plan/slices.h"

#include <assert.h>

/* The edge of the side that `side`'s edge borders on, along which the two meet. */
static int64_t edge_between(int64_t from, int64_t side)
{
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        if (edge_side(from, edge) == side)
            return edge;
    }
    BUG("sides that do not meet");
}

static bool is_hidden(const struct plan *plan, const struct junction *junction,
                      const struct join_end *end, int64_t edge)
{
    int64_t beside = edge_side(end->side, edge);
    const struct padding *padding = plan_padding(plan, end->box, beside);

    if (padding && padding->at[edge_between(beside, end->seen)] > 0)
        return true;
    return end->heads && junction->head_inside && plan_is_panelled(plan, end->box, beside);
}

/* The edge to measure from where the nearer one is `edge`. */
static struct from_edge find_edge(const struct plan *plan, const struct junction *junction,
                                  const struct join_end *end, int64_t edge)
{
    struct from_edge found = {.edge = edge};

    if (!is_hidden(plan, junction, end, edge))
        return found;
    found.hidden = is_hidden(plan, junction, end, edge_opposite(edge));
    if (!found.hidden)
        found.edge = edge_opposite(edge);
    return found;
}

/* Measures from another edge of the same direction; `span` is from the one to the other. */
static void measure_from(struct from_edge *from, const struct from_edge *found, int64_t span)
{
    if (from->edge != found->edge)
        from->distance = span - from->distance;
    from->edge = found->edge;
    from->hidden = found->hidden;
}

static void measure_end(struct plan *plan, const struct junction *junction, bool of_b)
{
    struct join_end end;

    if (junction->point_count == 0 || !hole_end(plan, junction, of_b, &end))
        return;
    const struct box *box = MODEL_FIND(plan->facts, box, end.box);
    struct area face = face_area(box, end.side);
    struct plan_point *first = &plan->points.at[junction->first_point];
    const struct from_edge *nearer = of_b ? first->edges_b : first->edges;
    const struct from_edge found[] = {find_edge(plan, junction, &end, nearer[0].edge),
                                      find_edge(plan, junction, &end, nearer[1].edge)};
    for (size_t i = 0; i < junction->point_count; i++) {
        struct from_edge *edges = of_b ? first[i].edges_b : first[i].edges;

        measure_from(&edges[0], &found[0], area_width(&face));
        measure_from(&edges[1], &found[1], area_height(&face));
    }
}

void pass_measure(struct planning *planning)
{
    for (size_t i = 0; i < planning->plan->junctions.count; i++) {
        const struct junction *junction = &planning->plan->junctions.at[i];

        measure_end(planning->plan, junction, false);
        measure_end(planning->plan, junction, true);
    }
}
