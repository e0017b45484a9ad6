/*
 * What else comes to stand where a driver or a hand has to be: other boxes, and the walls. Neither
 * is there from the beginning; a join sets each of them in its place.
 */
#ifndef PLAN_VICINITY_H
#define PLAN_VICINITY_H

#include "plan/pass.h"

/* A join with both its ends among the boxes, in the order of the model; the room is the end of what
 * is fixed to a wall or the floor. */
struct tie {
    int64_t join;
    size_t from, to;
};

/* Wood of one box, once it was asked for: along the room's axes and its own. */
struct standing_wood {
    bool known;
    LIST_OF(struct solid) room;
    LIST_OF(struct solid) own;
};

/* Scratch of a walk along the ties: ends that were reached in this round, and those to go on from.
 */
struct vicinity_walk {
    size_t *reached;
    size_t *waiting;
    size_t count, round;
};

struct vicinity {
    struct planning *planning;
    struct solid whole; /* the piece, along the room's axes */
    LIST_OF(struct tie) ties;
    size_t *first; /* into `of`, of each box and, last, of the room */
    size_t *of;    /* ties by their ends */
    struct vicinity_walk *walk;
    struct standing_wood *wood; /* by box, in the order of the model's */
};

/* In the planning's arena. Joins that are left out, and those whose boxes do not meet another, are
 * no ties. O(boxes + joins). */
struct vicinity vicinity_make(struct planning *planning);

/* Of a box by its index; loose panels, which are lifted off, are none of it. In the arena. */
const struct standing_wood *vicinity_wood(const struct vicinity *vicinity, size_t index);

/* Which box of a join the other boxes hang on, without it. */
enum hanging { HANGS_ON_NEITHER, HANGS_ON_A, HANGS_ON_B };

/* Fills in one for each box of the model. False where both hang together without the join, through
 * the room as well: what it then says is of no use. O(boxes + joins). */
bool vicinity_hang(const struct vicinity *vicinity, const struct junction *junction,
                   enum hanging *hanging);

/* What stands in a region, each once. */
struct bystanders {
    LIST_OF(int64_t) boxes;
    bool wall;
};

/* What stands in any of some blocks, given in the axes of the box with the heads; not that box
 * itself, nor the other one of the join. O(boxes), and the wood of those that are near. */
struct bystanders vicinity_look(const struct vicinity *vicinity, const struct junction *junction,
                                const struct box *box, const struct solid *blocks, size_t count);

typedef void vicinity_fn(void *context, int64_t join);

/*
 * The joins any of which would set a box there, seen from the boxes of a join: those of that box by
 * which, without the join, it hangs together with one of the two. While none of them is made it
 * stands elsewhere. None for a box that is joined to nothing.
 */
void vicinity_joins_to(const struct vicinity *vicinity, const struct junction *junction,
                       int64_t box, vicinity_fn *each, void *context);

/* The joins any of which would hold the boxes of a join at the wall. */
void vicinity_joins_at_wall(const struct vicinity *vicinity, const struct junction *junction,
                            vicinity_fn *each, void *context);

/* How far the wall on a side of the piece is from the room's origin along its axis. */
int64_t vicinity_wall(const struct vicinity *vicinity, const struct wall *wall);

#endif
