/*
 * A job of rolls as its methods see it: the parts that go on the roll on offer, their measures with
 * a kerf, the usable width from its left edge, and how the pattern ties places to each other.
 */
#ifndef CUT_ROLLJOB_H
#define CUT_ROLLJOB_H

#include "cut/layout.h"

#define ROLL_NO_GROUP SIZE_MAX

struct roll_part {
    int64_t length, width, area;
    int64_t along, across; /* matched: where its corner lies from the origin of its group */
    size_t group;          /* below group_count, or ROLL_NO_GROUP */
    size_t part;           /* of the job */
    bool may_turn;
};

/* With an origin across, modulo the repeat, from `start` on over `length` more a part has a place
 * on the roll. */
struct roll_arc {
    int64_t start, length;
};

/* Parts of the group that have no place with some origins; and the beginnings of arcs that lie in
 * all of them. */
struct roll_group {
    const struct roll_arc *arcs;
    size_t arc_count;
    int64_t *starts;
    size_t start_count;
};

/* What a part may not cover, and what it may not lie in: half-open. */
struct roll_rect {
    int64_t near, far, left, right;
};

struct roll_job {
    const struct cut_job *job;
    struct roll_part *parts;
    size_t count;
    size_t size;   /* the roll on offer: index into the job's sizes */
    int64_t width; /* usable, with a kerf */
    struct cut_pattern pattern;
    struct roll_group *groups;
    size_t group_count;
    size_t pinned;                     /* the group that is, or ROLL_NO_GROUP */
    const struct roll_rect *blemishes; /* by `near`; a kerf smaller before and to the left */
    size_t blemish_count;
    int64_t area; /* of all parts */
};

/* Where the origin of a group lies. */
struct roll_origin {
    bool known;
    int64_t along, across;
};

/* The length that is sold for a length used. */
int64_t roll_sold(const struct cut_sale *sale, int64_t used);

/* The longest length that is sold for no more than `cost`; -1 where there is none. */
int64_t roll_used_for(const struct cut_sale *sale, int64_t cost);

/*
 * For each part whether a roll takes it: the usable width does, turned where it may, and one that
 * is matched meets the pattern on it together with those of its group that come before it in the
 * job and are taken. O(parts^2) a group.
 */
bool *roll_takes(const struct cut_job *job, size_t size, struct arena *arena);

/* The job of `count` parts on one size, each of which it takes. */
struct roll_job roll_job_make(const struct cut_job *job, size_t size, const size_t *parts,
                              size_t count, struct arena *arena);

/* Whether nothing ties a part to a place: no pattern that is kept, no blemish. */
bool roll_job_plain(const struct roll_job *job);

/* Whether a group without an origin may get one there across. */
bool roll_origin_serves(const struct roll_job *job, size_t group, int64_t across);

/*
 * The first place at or after `across`, and the last at or before it, at which a part may lie by
 * the pattern; for one that is not matched `across` itself; where its group
 * has no origin yet, the first that gives it one, and to the left `across`, which may not.
 */
int64_t roll_snap_right(const struct roll_job *job, const struct roll_part *part,
                        const struct roll_origin *origin, int64_t across);
int64_t roll_snap_left(const struct roll_job *job, const struct roll_part *part,
                       const struct roll_origin *origin, int64_t across);

/* The first place at or after `along` where a part may lie at a place across that fits it. */
int64_t roll_snap_along(const struct roll_job *job, const struct roll_part *part,
                        const struct roll_origin *origin, int64_t along, int64_t across);

/* Ties a group that has no origin yet to the place of one of its parts. */
void roll_set_origin(const struct roll_part *part, int64_t along, int64_t across,
                     struct roll_origin *origin);

#endif
