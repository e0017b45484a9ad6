/*
 * Joins between boxes: what the passes after this one ask of them.
 */
#ifndef PLAN_POINT_H
#define PLAN_POINT_H

#include "plan/backing.h"
#include "plan/screws.h"

/* A place in the axes of box a as one in the axes of box b, and the other way. Only where the join
 * has a second box. */
struct vector point_to_b(const struct planning *planning, const struct junction *junction,
                         struct vector in_a);
struct vector point_to_a(const struct planning *planning, const struct junction *junction,
                         struct vector in_b);

/* The face of a box that a join lies on. */
int64_t point_side(const struct planning *planning, const struct junction *junction, bool of_b);

/* Whether a join holds its box to another one, of this build or of the set; else it holds it to a
 * wall, the floor or a given object. */
bool join_is_to_box(const struct join *join);

/* Whether it is made in the room: the maker says so, or what it holds its box to stands there. */
bool join_is_in_room(const struct join *join);

/* A point as a place on the face of box a or b. */
void point_on_face(const struct planning *planning, const struct junction *junction,
                   const struct plan_point *point, bool of_b, int64_t *ret_u, int64_t *ret_v);

/* ---- fasten.c ---- */

/* What a screw at a point has to do when its head is on one side, and where that head lies. */
struct fastening {
    struct screw_need need;
    int64_t depth;       /* of the head behind the mating face: wood that the screw passes there */
    size_t member;       /* the wood under the head; PLAN_NONE for a board's own panel */
    size_t other_member; /* and the wood it bites into */
};

/* The wood behind both mating faces of a join, to be asked for once a join. */
struct faces {
    struct backings a, b; /* b is empty without a second box */
};
struct faces fasten_faces(const struct planning *planning, const struct junction *junction);

/* False when there is no wood in the way of the screw on one of the sides, or the head would lie on
 * end grain; a wall or floor always takes the tip, never the head. */
bool fasten_reckon(const struct planning *planning, const struct junction *junction,
                   const struct faces *faces, const struct plan_point *point, bool head_in_b,
                   struct fastening *ret_fastening);

#endif
