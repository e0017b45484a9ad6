/*
 * Boxes and faces: solids, areas, and the way from a face's u, v to a box's x, y, z; pose.h, which
 * comes along, goes on from there to the room.
 */
#ifndef PLAN_GEOMETRY_H
#define PLAN_GEOMETRY_H

#include "plan/plan.h"
#include "plan/pose.h"

#include <assert.h>

static inline int64_t length_smaller(int64_t a, int64_t b)
{
    return a < b ? a : b;
}

static inline int64_t length_larger(int64_t a, int64_t b)
{
    return a > b ? a : b;
}

/* The value, or the bound that it lies beyond; least <= most. */
static inline int64_t length_within(int64_t value, int64_t least, int64_t most)
{
    return value < least ? least : value > most ? most : value;
}

/* How far a place lies outside of low..high; 0 within, ends included. */
static inline int64_t length_outside(int64_t at, int64_t low, int64_t high)
{
    return at < low ? low - at : at > high ? at - high : 0;
}

/* x, y or z by enum axis_word. */
static inline int64_t vector_along(struct vector vector, int axis)
{
    assert(axis >= 0 && axis < AXIS_COUNT);
    return axis == AXIS_X ? vector.x : axis == AXIS_Y ? vector.y : vector.z;
}

static inline void vector_set(struct vector *vector, int axis, int64_t value)
{
    assert(axis >= 0 && axis < AXIS_COUNT);
    *(axis == AXIS_X ? &vector->x : axis == AXIS_Y ? &vector->y : &vector->z) = value;
}

/* Rounded down; of a vector within a room, or one of POSE_ONE. */
int64_t vector_length(struct vector vector);

bool solid_empty(const struct solid *solid);
bool solids_meet(const struct solid *a, const struct solid *b); /* share some volume */
int64_t solid_size(const struct solid *solid, int axis);
/* What two solids share, which may be empty; and the smallest block round both. */
struct solid solid_cut(const struct solid *a, const struct solid *b);
struct solid solid_round(const struct solid *a, const struct solid *b);

bool area_empty(const struct area *area);
bool area_holds(const struct area *area, int64_t u, int64_t v);
struct area area_cut(const struct area *a, const struct area *b); /* may be empty */
int64_t area_width(const struct area *area);
int64_t area_height(const struct area *area);

/* The area that begins at u, v, cut to `within`, as a facing or a layer is entered: a width or
 * height of 0 reaches to the end of `within`. May be empty. */
struct area area_given(const struct area *within, int64_t u, int64_t v, int64_t width,
                       int64_t height);

/* The axis a side's outward normal runs along, and its direction (+1 for front, right, top). */
int side_axis(int64_t side);
int side_sign(int64_t side);
int64_t side_opposite(int64_t side);

/* Axes of u and v on a side. */
int side_u_axis(int64_t side);
int side_v_axis(int64_t side);

/* Outer size of a box, the size of a face across u and v, and the whole face as an area. */
struct vector box_size(const struct box *box);
struct area face_area(const struct box *box, int64_t side);

/* The side that an edge of a face borders on: the top edge of the front face borders on the top. */
int64_t edge_side(int64_t side, int64_t edge);

/* Whether an edge of a face runs upright on it: the left or the right one. */
bool edge_is_upright(int64_t edge);

/* The edge across the face. */
int64_t edge_opposite(int64_t edge);

/* The length of an edge of a face. */
int64_t edge_length(const struct box *box, int64_t side, int64_t edge);

/* A solid's outline on a face, and a slab of depth `from`..`to` behind (inside) a face over an
 * area. */
struct area solid_on_side(const struct solid *solid, int64_t side);
struct solid solid_behind(const struct box *box, int64_t side, const struct area *area,
                          int64_t from, int64_t to);

/* A place on a face as a place in the box (on the outer surface), and back. */
struct vector face_to_box(const struct box *box, int64_t side, int64_t u, int64_t v);
void box_to_face(int64_t side, struct vector at, int64_t *ret_u, int64_t *ret_v);

/* The side of a box that looks to where `side` looks when the box is turned by `turn` quarter
 * turns. */
int64_t side_turned(int64_t side, int turn);

#endif
