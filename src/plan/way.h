/*
 * Ways to a join's heads: from which side, with which tool, through which open face of the box.
 */
#ifndef PLAN_WAY_H
#define PLAN_WAY_H

#include "plan/scene.h"

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
    bool joined_there, layer_there; /* a join, a layer lies on the reach side, to be kept waiting */
    int64_t room, needed;           /* where they are tightest */
    int64_t beside, beside_needed;  /* wood beside the driver where it is nearest */
    size_t points;                  /* that have wood on both sides, seen from here */
};

struct ways {
    LIST_OF(struct way) ways;
};

/* Finds the heads of the scene, once the junction has all its points. */
void way_see_heads(struct scene *scene, const struct faces *faces);

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
 * Adds every way from one side of the join, whose heads have been seen: each open face a hand comes
 * through, and with the worst tool that some point asks for as well as each shorter tool that fits
 * at all. A way needs wood under the head and behind the other face at every point that counts, a
 * tool that fits, and, for heads in a hollow, a face without a fixed panel, or with a cut-out for a
 * hand, through which a hand comes to all of them. At the bench also each face whose panels are
 * fixed after the join. Where there is no way one with MANNER_NONE is added, with the figures.
 * Opens and shuts sides of the scene.
 */
void ways_find(struct scene *scene, struct ways *ways);

/* The same way, to the scene as it is opened, with a long bit instead of the plain driver. False
 * where none fits at some point. */
bool way_with_long_bit(const struct scene *scene, struct way *way);

/* The room that the tool of a way takes behind a head, as a block of the box with the heads. */
struct solid way_tool_room(const struct scene *scene, const struct screw_head *head,
                           enum manner manner);

struct blockers {
    LIST_OF(struct blocker) blockers;
};

/* What shuts all ways from a side, once each: what stands in line before the heads or beside the
 * tool, the cover sewn up over them, and, for heads in the hollow, the fixed panels that keep a
 * hand out: those of each face that alone would let it in, or else all. All of it is lasting. */
void way_find_shut(struct scene *scene, struct blockers *blockers);

/* The head of a screw at a point, seen as the way has it. */
struct vector way_head(const struct planning *planning, const struct junction *junction,
                       const struct plan_point *point, const struct fastening *fastening,
                       bool head_in_b);

/* ---- reach.c ---- */

/* The faces in the order in which they are tried: those that are seen least first. */
extern const int64_t way_sides[SIDE_COUNT];

/* Whether a hand comes to all heads through a face, and what then lies there. */
bool way_reaches(const struct scene *scene, int64_t side, const struct vector *heads, size_t count,
                 struct way *way);

/* From a head to the place before it where a hand holds the tool: an inch away, or half of the room
 * where there is less. */
void way_step_back(const struct scene *scene, struct vector *head);

/* How a hand comes to a head through the reach side. False when it does not. */
bool way_enter(const struct scene *scene, int64_t side, struct vector head,
               struct entry *ret_entry);

#endif
