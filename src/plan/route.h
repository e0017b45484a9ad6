/*
 * The way into the room: what is carried, and how it passes each passage of the model, with what is
 * to spare. Sizes are finished sizes, the wood with its padding; margins are trade values. A width
 * or height that nobody measured is passed by anything.
 */
#ifndef PLAN_ROUTE_H
#define PLAN_ROUTE_H

#include "plan/plan.h"

/* For every box, by its index in the model, the index of the first box that it is carried with:
 * boxes joined at the bench go as one. In the arena. */
size_t *route_carried(const struct plan *plan, struct arena *arena);

/* Whether a join makes two boxes one thing to carry. */
bool route_holds(const struct join *join);

/* From now on both boxes of a join go as one: `first` as route_carried gives it. O(boxes). */
void route_put_together(const struct plan *plan, size_t *first, const struct join *join);

/* What is carried, along the axes of its first box: with `first` as route_carried gives it. */
struct vector route_size(const struct plan *plan, const size_t *first, size_t index);

/* How a thing goes through: the plainest way that has the margin. */
enum route_way { ROUTE_STRAIGHT, ROUTE_TILTED, ROUTE_ROUND, ROUTE_ON_END, ROUTE_NOT, ROUTE_WAYS };

/* "straight through", "tilted in the opening", "level round the corner", "stood on end round it",
 * "does not pass". */
const char *route_way_words(enum route_way way);

bool route_passes(const struct plan *plan, const struct passage *passage, struct vector size,
                  int64_t margin);
enum route_way route_way(const struct plan *plan, const struct passage *passage,
                         struct vector size);

/*
 * The margin with which it would just pass, in steps of 0.1 mm: what is to spare all round,
 * negative for what is missing. Nothing is told beyond ROUTE_SPARE either way. By halving, for a
 * thing that passes with a margin passes with every smaller one.
 */
#define ROUTE_SPARE (1000 * LENGTH_MM)
int64_t route_spare(const struct plan *plan, const struct passage *passage, struct vector size);

/*
 * Everything that could be carried against every passage: each box, what is joined at the bench,
 * what would be carried if a join of the room were made at the bench, and the whole piece. The last
 * two show which joins have to stay site joins, and which need not.
 */
enum route_thing { ROUTE_BOX, ROUTE_GROUP, ROUTE_JOINED, ROUTE_WHOLE };

struct route_line {
    enum route_thing thing;
    int64_t box;  /* the first of it */
    int64_t join; /* of ROUTE_JOINED */
    size_t boxes;
    struct vector size;
    int64_t passage;
    enum route_way way;
    int64_t spare;
};

struct route {
    LIST_OF(struct route_line) lines; /* thing by thing, each through all passages in their order */
};

/* In the arena, whose escape is armed. O(boxes x passages x joins). */
struct route route_make(const struct plan *plan, struct arena *arena);

/* What making a join in the room takes there, in 1/1000 min: offer the boxes, and for each point
 * find the hole and drive it (`minutes.offer`, `minutes.find_hole`, `minutes.join_screw`). */
int64_t route_site_minutes(const struct plan *plan, int64_t join);

#endif
