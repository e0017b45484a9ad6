/*
 * What surrounds the heads of a join in their box, while ways to them are looked for.
 */
#ifndef PLAN_SCENE_H
#define PLAN_SCENE_H

#include "plan/point.h"
#include "plan/vicinity.h"

/* What stands in the way for good: a member, a fixed panel beside its cut-outs, and, for what is
 * fixed to the room, a wall. */
struct obstacle {
    struct solid solid;
    enum blocker_kind kind;
    int64_t item; /* index of the member, key of the facing or the wall */
};

struct obstacles {
    struct obstacle *at;
    size_t count;
};

/* The head of a screw or bolt at a point, in the axes of the box that it lies in. */
struct screw_head {
    bool there; /* wood lies under it and behind the other face */
    struct vector at;
    int64_t depth; /* behind the mating face */
    int64_t screw; /* its length */
};

/* What surrounds the heads of a join on one of its sides, while a way is looked for. */
struct scene {
    struct planning *planning;
    const struct join *join;
    const struct junction *junction;
    const struct box *box; /* with the heads */
    const struct vicinity *vicinity;
    bool head_in_b;
    int64_t side;                   /* its mating face */
    int axis, sign;                 /* away from that face */
    const struct screw_head *heads; /* of the junction's points; NULL before way_see_heads */
    struct obstacles obstacles;
    int64_t opened; /* side without its fixed panels yet; -1 for none */
    bool on_floor;  /* at the time of joining: no hand comes under it */
    int64_t raised; /* then: how far its bottom is off the floor */
};

/* The box that the heads of a way are on. */
int64_t way_box(const struct junction *junction, bool head_in_b);

/* The join must have a box on that side. Lives in the arena, as long as the junction. */
struct scene way_scene(const struct vicinity *vicinity, const struct junction *junction,
                       bool head_in_b);

/* Takes the fixed panels of a side off, or of none (-1). */
void way_open_side(struct scene *scene, int64_t side);

/* ---- free distances ---- */

/* Nothing is in the way up to the end of the box and beyond. */
#define WAY_FREE INT64_MAX

/* From a place along an axis to a solid: 0 where the place lies in it, WAY_FREE where the solid
 * lies behind it or aside. `sign` is 1 or -1. */
int64_t obstacle_ahead(const struct solid *solid, struct vector at, int axis, int sign);

/* From a place across an axis to a solid, wherever along the axis that lies. */
int64_t obstacle_beside(const struct solid *solid, struct vector at, int axis);

/* The same to the nearest of the obstacles, or the floor: along an axis, and beside the line from a
 * head out of the box for so long as is needed. WAY_FREE where nothing is. */
int64_t way_free_along(const struct scene *scene, struct vector at, int axis, int sign);
int64_t way_free_beside(const struct scene *scene, struct vector head, int64_t needed);

#endif
