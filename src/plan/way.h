/*
 * Ways to a join's heads: from which side, with which tool, through which open face of the box.
 */
#ifndef PLAN_WAY_H
#define PLAN_WAY_H

#include "plan/point.h"

/* How a head is driven, the best first. */
enum manner {
    MANNER_DRIVER,      /* the plain driver, in line */
    MANNER_LONG_BIT,    /* wood too near for its body: a long bit keeps the body clear of it */
    MANNER_SLANTED,     /* the same where there is no room for a long bit: held at a slant */
    MANNER_RIGHT_ANGLE, /* too short in line for the driver */
    MANNER_STUBBY,
    MANNER_NONE
};

/* One way to drive all points of a join. Room is in line with the screw, -1 where nothing is in the
 * way. */
struct way {
    bool head_in_b;
    enum manner manner; /* the worst of its points */
    bool inside;        /* the heads lie in the hollow of the box */
    int64_t opened;     /* side whose fixed panels have to wait for the join; -1 for none */
    int64_t reach_side;
    int64_t room, needed;          /* where they are tightest */
    int64_t beside, beside_needed; /* wood beside the driver where it is nearest */
    size_t points;                 /* that have wood on both sides, seen from here */
};

/* Solids of a box that stand in the way: members and fixed panels. */
struct obstacles {
    struct solid *at;
    size_t count;
};

/* What surrounds the heads of a join on one of its sides, while a way is looked for. */
struct scene {
    struct planning *planning;
    const struct join *join;
    const struct junction *junction;
    const struct box *box; /* with the heads */
    bool head_in_b;
    int64_t side;   /* its mating face */
    int axis, sign; /* away from that face */
    struct obstacles obstacles;
    int64_t opened; /* side without its fixed panels yet; -1 for none */
    bool on_floor;  /* at the time of joining */
};

/* The join must have a box on that side. Lives in the arena, as long as the junction. */
struct scene way_scene(struct planning *planning, const struct junction *junction, bool head_in_b);

/* Takes the fixed panels of a side off, or of none (-1). */
void way_open_side(struct scene *scene, int64_t side);

/* From a place along an axis to the first solid, or the floor; WAY_FREE when nothing is in the way
 * up to the end of the box and beyond. */
#define WAY_FREE INT64_MAX
int64_t way_free_along(const struct scene *scene, struct vector at, int axis, int sign);

/* A screw at this point has wood to go through and some tool fits behind its head. */
bool way_is_open(const struct scene *scene, const struct faces *faces,
                 const struct plan_point *point);

/* Where a hand goes in for a head: the head, the place before it, and the place on the open face.
 */
struct entry {
    struct vector head, before;
    int64_t u, v; /* on the reach side */
};

/*
 * The way from one side, with MANNER_NONE and the figures when there is none. A way needs wood
 * under the head and behind the other face at every point that counts, a tool that fits, and, for
 * heads in a hollow, a face without a fixed panel through which a hand comes to all of them. At the
 * bench a face whose panels are fixed after the join will do, where there is no other.
 */
struct way way_find(struct planning *planning, const struct junction *junction,
                    const struct faces *faces, bool head_in_b);

/* The head of a screw at a point, seen as the way has it. */
struct vector way_head(const struct planning *planning, const struct junction *junction,
                       const struct plan_point *point, const struct fastening *fastening,
                       bool head_in_b);

/* ---- reach.c ---- */

/* The faces in the order in which they are tried: those that are seen least first. */
extern const int64_t way_sides[SIDE_COUNT];

/* The face through which a hand comes to all heads; false when there is none. */
bool way_reach_side(const struct scene *scene, const struct vector *heads, size_t count,
                    int64_t *ret_side);

/* How a hand comes to a head through the reach side. False when it does not. */
bool way_enter(const struct scene *scene, int64_t side, struct vector head,
               struct entry *ret_entry);

/* The box and its face that the heads of a way are on, as the mating face. */
int64_t way_box(const struct junction *junction, bool head_in_b);

#endif
