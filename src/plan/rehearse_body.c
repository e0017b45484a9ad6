/*
 * Two convex bodies do not meet when some plane parts them, and such a plane can always be found
 * along a face of either or along an edge of each. The faces of a body that is made of edges from
 * one corner lie along two of its edges: so it is enough to try the normal of every pair out of the
 * edges of both bodies.
 */
#include "plan/rehearse_body.h"

#include <assert.h>

static void add_edge(struct body *body, struct place3 edge)
{
    assert(body->count < BODY_EDGES);
    body->edges[body->count++] = edge;
}

static struct place3 place3_of(struct vector at)
{
    return (struct place3){{(double)at.x, (double)at.y, (double)at.z}};
}

struct body body_of_block(const struct solid *solid)
{
    struct place3 high = place3_of(solid->high);
    struct body body = {.corner = place3_of(solid->low)};

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        struct place3 edge = {{0, 0, 0}};

        edge.along[axis] = high.along[axis] - body.corner.along[axis];
        add_edge(&body, edge);
    }
    return body;
}

/* Half the sides of a section with 24 corners on the unit circle: each runs between corners 15
 * degrees apart, from (1, 0) to (-1, 0). */
static const double round_edges[BODY_ROUND][2] = {
    {-0.03407417371093169, 0.25881904510252074},  {-0.09990042259446249, 0.24118095489747926},
    {-0.15891862259789125, 0.20710678118654757},  {-0.20710678118654757, 0.15891862259789125},
    {-0.24118095489747926, 0.09990042259446249},  {-0.25881904510252074, 0.03407417371093169},
    {-0.25881904510252074, -0.03407417371093169}, {-0.24118095489747926, -0.09990042259446249},
    {-0.20710678118654757, -0.15891862259789125}, {-0.15891862259789125, -0.20710678118654757},
    {-0.09990042259446249, -0.24118095489747926}, {-0.03407417371093169, -0.25881904510252074}};

/* From the corner at (1, 0) the twelve edges lead to (-1, 0), and in any other order of theirs
 * round the whole section. */
struct body body_of_bar(struct vector from, int axis, int64_t length, int64_t radius)
{
    int u = axis == AXIS_X ? AXIS_Y : AXIS_X;
    int v = axis == AXIS_Z ? AXIS_Y : AXIS_Z;
    struct body body = {.corner = place3_of(from)};
    struct place3 whole = {{0, 0, 0}};

    assert(axis >= 0 && axis < AXIS_COUNT);
    body.corner.along[u] += (double)radius;
    for (int i = 0; i < BODY_ROUND; i++) {
        struct place3 edge = {{0, 0, 0}};

        edge.along[u] = round_edges[i][0] * (double)radius;
        edge.along[v] = round_edges[i][1] * (double)radius;
        add_edge(&body, edge);
    }
    whole.along[axis] = (double)length;
    add_edge(&body, whole);
    return body;
}

struct body body_drawn(const struct body *body, int axis, int64_t by)
{
    struct body drawn = *body;
    struct place3 edge = {{0, 0, 0}};

    assert(axis >= 0 && axis < AXIS_COUNT);
    edge.along[axis] = (double)by;
    add_edge(&drawn, edge);
    return drawn;
}

/* ---- along a direction ---- */

struct reach_along {
    double low, high;
};

static double dot(const struct place3 *a, const struct place3 *b)
{
    return a->along[0] * b->along[0] + a->along[1] * b->along[1] + a->along[2] * b->along[2];
}

static struct reach_along reach_along(const struct body *body, const struct place3 *direction)
{
    double at = dot(&body->corner, direction);
    struct reach_along reach = {at, at};

    for (int i = 0; i < body->count; i++) {
        double by = dot(&body->edges[i], direction);

        reach.low += by < 0 ? by : 0;
        reach.high += by > 0 ? by : 0;
    }
    return reach;
}

static int64_t nearest(double at)
{
    return (int64_t)(at < 0 ? at - 0.5 : at + 0.5);
}

struct solid body_between(const struct place3 *a, const struct place3 *b)
{
    int64_t low[AXIS_COUNT];
    int64_t high[AXIS_COUNT];

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t of_a = nearest(a->along[axis]);
        int64_t of_b = nearest(b->along[axis]);

        low[axis] = of_a < of_b ? of_a : of_b;
        high[axis] = of_a < of_b ? of_b : of_a;
    }
    return (struct solid){{low[0], low[1], low[2]}, {high[0], high[1], high[2]}};
}

struct solid body_outline(const struct body *body)
{
    struct place3 low, high;

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        struct place3 direction = {{0, 0, 0}};
        struct reach_along reach;

        direction.along[axis] = 1;
        reach = reach_along(body, &direction);
        low.along[axis] = reach.low;
        high.along[axis] = reach.high;
    }
    return body_between(&low, &high);
}

/* ---- apart ---- */

static struct place3 normal_of(const struct place3 *a, const struct place3 *b)
{
    return (struct place3){{a->along[1] * b->along[2] - a->along[2] * b->along[1],
                            a->along[2] * b->along[0] - a->along[0] * b->along[2],
                            a->along[0] * b->along[1] - a->along[1] * b->along[0]}};
}

/* Edges that run along each other have no normal: they part nothing. */
static bool parts(const struct body *a, const struct body *b, const struct place3 *direction)
{
    struct reach_along of_a = reach_along(a, direction);
    struct reach_along of_b = reach_along(b, direction);
    double a_over_b = of_a.high - of_b.low;
    double b_over_a = of_b.high - of_a.low;
    double depth = a_over_b < b_over_a ? a_over_b : b_over_a;
    double square = dot(direction, direction);
    int64_t slack = BODY_SLACK;

    return square > 1 && (depth <= 0 || depth * depth <= (double)(slack * slack) * square);
}

static const struct place3 *edge_of(const struct body *a, const struct body *b, int index)
{
    return index < a->count ? &a->edges[index] : &b->edges[index - a->count];
}

bool bodies_meet(const struct body *a, const struct body *b)
{
    int count = a->count + b->count;

    for (int i = 0; i < count; i++)
        for (int k = i + 1; k < count; k++) {
            struct place3 normal = normal_of(edge_of(a, b, i), edge_of(a, b, k));

            if (parts(a, b, &normal))
                return false;
        }
    return true;
}
