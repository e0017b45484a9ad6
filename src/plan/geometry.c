/*
 * A side is an axis and a direction along it, and all else follows from two small tables: the axes
 * of u and v on a side, and the four upright sides in the order of a turn to the left. The axes
 * (x right, y to the front, z up) are left-handed, so that a turn to the left, seen from above,
 * takes the front to the right.
 */
#include "plan/geometry.h"

struct side_frame {
    int axis;
    int sign;
    int u, v;
};

static const struct side_frame side_frames[SIDE_COUNT] = {
    [SIDE_FRONT] = {AXIS_Y, +1, AXIS_X, AXIS_Z}, [SIDE_BACK] = {AXIS_Y, -1, AXIS_X, AXIS_Z},
    [SIDE_LEFT] = {AXIS_X, -1, AXIS_Y, AXIS_Z},  [SIDE_RIGHT] = {AXIS_X, +1, AXIS_Y, AXIS_Z},
    [SIDE_TOP] = {AXIS_Z, +1, AXIS_X, AXIS_Y},   [SIDE_BOTTOM] = {AXIS_Z, -1, AXIS_X, AXIS_Y},
};

/* The sides at the low and the high end of each axis. */
static const int64_t sides_of_axis[AXIS_COUNT][2] = {
    [AXIS_X] = {SIDE_LEFT, SIDE_RIGHT},
    [AXIS_Y] = {SIDE_BACK, SIDE_FRONT},
    [AXIS_Z] = {SIDE_BOTTOM, SIDE_TOP},
};

static const int64_t sides_turning_left[4] = {SIDE_FRONT, SIDE_RIGHT, SIDE_BACK, SIDE_LEFT};

static const struct side_frame *frame_of(int64_t side)
{
    assert(side >= 0 && side < SIDE_COUNT);
    return &side_frames[side];
}

int64_t vector_length(struct vector vector)
{
    return whole_root(vector.x * vector.x + vector.y * vector.y + vector.z * vector.z);
}

bool solid_empty(const struct solid *solid)
{
    return solid->low.x >= solid->high.x || solid->low.y >= solid->high.y ||
           solid->low.z >= solid->high.z;
}

struct solid solid_cut(const struct solid *a, const struct solid *b)
{
    return (struct solid){{length_larger(a->low.x, b->low.x), length_larger(a->low.y, b->low.y),
                           length_larger(a->low.z, b->low.z)},
                          {length_smaller(a->high.x, b->high.x),
                           length_smaller(a->high.y, b->high.y),
                           length_smaller(a->high.z, b->high.z)}};
}

struct solid solid_round(const struct solid *a, const struct solid *b)
{
    return (struct solid){{length_smaller(a->low.x, b->low.x), length_smaller(a->low.y, b->low.y),
                           length_smaller(a->low.z, b->low.z)},
                          {length_larger(a->high.x, b->high.x), length_larger(a->high.y, b->high.y),
                           length_larger(a->high.z, b->high.z)}};
}

static bool stretches_meet(int64_t low_a, int64_t high_a, int64_t low_b, int64_t high_b)
{
    return length_larger(low_a, low_b) < length_smaller(high_a, high_b);
}

bool solids_meet(const struct solid *a, const struct solid *b)
{
    return stretches_meet(a->low.x, a->high.x, b->low.x, b->high.x) &&
           stretches_meet(a->low.y, a->high.y, b->low.y, b->high.y) &&
           stretches_meet(a->low.z, a->high.z, b->low.z, b->high.z);
}

int64_t solid_size(const struct solid *solid, int axis)
{
    return vector_along(solid->high, axis) - vector_along(solid->low, axis);
}

bool area_empty(const struct area *area)
{
    return area->u0 >= area->u1 || area->v0 >= area->v1;
}

bool area_holds(const struct area *area, int64_t u, int64_t v)
{
    return area->u0 <= u && u < area->u1 && area->v0 <= v && v < area->v1;
}

struct area area_cut(const struct area *a, const struct area *b)
{
    return (struct area){length_larger(a->u0, b->u0), length_larger(a->v0, b->v0),
                         length_smaller(a->u1, b->u1), length_smaller(a->v1, b->v1)};
}

int64_t area_width(const struct area *area)
{
    return area->u1 - area->u0;
}

int64_t area_height(const struct area *area)
{
    return area->v1 - area->v0;
}

struct area area_given(const struct area *within, int64_t u, int64_t v, int64_t width,
                       int64_t height)
{
    struct area given = {u, v, width > 0 ? u + width : within->u1,
                         height > 0 ? v + height : within->v1};

    return area_cut(within, &given);
}

int side_axis(int64_t side)
{
    return frame_of(side)->axis;
}

int side_sign(int64_t side)
{
    return frame_of(side)->sign;
}

int64_t side_opposite(int64_t side)
{
    const struct side_frame *frame = frame_of(side);

    return sides_of_axis[frame->axis][frame->sign < 0];
}

int side_u_axis(int64_t side)
{
    return frame_of(side)->u;
}

int side_v_axis(int64_t side)
{
    return frame_of(side)->v;
}

struct vector box_size(const struct box *box)
{
    return (struct vector){box->width, box->depth, box->height};
}

struct area face_area(const struct box *box, int64_t side)
{
    struct vector size = box_size(box);

    return (struct area){0, 0, vector_along(size, side_u_axis(side)),
                         vector_along(size, side_v_axis(side))};
}

bool edge_is_upright(int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    return edge == EDGE_LEFT || edge == EDGE_RIGHT;
}

int64_t edge_opposite(int64_t edge)
{
    static const int64_t opposite[EDGE_COUNT] = {[EDGE_LEFT] = EDGE_RIGHT,
                                                 [EDGE_RIGHT] = EDGE_LEFT,
                                                 [EDGE_TOP] = EDGE_BOTTOM,
                                                 [EDGE_BOTTOM] = EDGE_TOP};

    assert(edge >= 0 && edge < EDGE_COUNT);
    return opposite[edge];
}

int64_t edge_side(int64_t side, int64_t edge)
{
    const struct side_frame *frame = frame_of(side);
    bool along_u = edge_is_upright(edge);
    bool at_high = edge == EDGE_RIGHT || edge == EDGE_TOP;

    return sides_of_axis[along_u ? frame->u : frame->v][at_high];
}

int64_t edge_length(const struct box *box, int64_t side, int64_t edge)
{
    struct area face = face_area(box, side);

    return edge_is_upright(edge) ? area_height(&face) : area_width(&face);
}

struct area solid_on_side(const struct solid *solid, int64_t side)
{
    int u = side_u_axis(side);
    int v = side_v_axis(side);

    return (struct area){vector_along(solid->low, u), vector_along(solid->low, v),
                         vector_along(solid->high, u), vector_along(solid->high, v)};
}

struct solid solid_behind(const struct box *box, int64_t side, const struct area *area,
                          int64_t from, int64_t to)
{
    const struct side_frame *frame = frame_of(side);
    int64_t surface = vector_along(box_size(box), frame->axis);
    struct solid slab = {0};

    assert(from <= to);
    vector_set(&slab.low, frame->u, area->u0);
    vector_set(&slab.high, frame->u, area->u1);
    vector_set(&slab.low, frame->v, area->v0);
    vector_set(&slab.high, frame->v, area->v1);
    vector_set(&slab.low, frame->axis, frame->sign > 0 ? surface - to : from);
    vector_set(&slab.high, frame->axis, frame->sign > 0 ? surface - from : to);
    return slab;
}

struct vector face_to_box(const struct box *box, int64_t side, int64_t u, int64_t v)
{
    const struct side_frame *frame = frame_of(side);
    struct vector at = {0};

    vector_set(&at, frame->u, u);
    vector_set(&at, frame->v, v);
    if (frame->sign > 0)
        vector_set(&at, frame->axis, vector_along(box_size(box), frame->axis));
    return at;
}

void box_to_face(int64_t side, struct vector at, int64_t *ret_u, int64_t *ret_v)
{
    *ret_u = vector_along(at, side_u_axis(side));
    *ret_v = vector_along(at, side_v_axis(side));
}

int64_t side_turned(int64_t side, int turn)
{
    int i = 0;

    assert(turn >= 0);
    if (side_axis(side) == AXIS_Z)
        return side;
    while (sides_turning_left[i] != side)
        i++;
    return sides_turning_left[(i - turn % 4 + 4) % 4];
}
