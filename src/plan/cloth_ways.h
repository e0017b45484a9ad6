/*
 * Ways to take the cloth of a build, side by side: railroaded or up the roll, seams elsewhere,
 * another width of the same cloth. Each is a cure that can be taken and what the whole plan comes
 * to with it, worked out by the engine itself. Worked out when asked for, not with every plan.
 */
#ifndef PLAN_CLOTH_WAYS_H
#define PLAN_CLOTH_WAYS_H

#include "plan/plan.h"

struct cloth_way {
    int64_t stock;       /* the cloth that it is about */
    struct cure cure;    /* its text, and the edits; none for the way in force */
    bool chosen;         /* the way in force */
    const char *barred;  /* why it cannot be taken, or should not be; NULL where it can */
    int64_t bought;      /* stock that is bought: the cloth, or another width of it */
    int64_t length;      /* of it, as the shop sells it */
    int seams;           /* between widths, in all that is made of it */
    int64_t seam_length; /* of all these together */
    int64_t minutes;     /* of the whole build, as are: */
    int64_t cost;
};

/*
 * The ways of each cloth that covers and outside backs are made of, in the order of its stock:
 * first the one in force, then the others. Directions are for all covers of a cloth at once, for
 * light falls differently on cloth that lies otherwise; seams are for one cover at a time. Another
 * width stands with either direction. Where several of these together cost less than each alone,
 * or as much with fewer seams or less cloth, they are one way more, the last of its cloth. What
 * comes to nothing else is left out. A barred way has no figures. All figures are with quick
 * layouts, so that like is held against like.
 *
 * The list lies in `arena`, which has no escape armed. FAULT_MEMORY is the only fault. Makes a plan
 * for each way.
 */
enum fault cloth_ways(const struct plan *plan, struct arena *arena,
                      const struct cloth_way **ret_ways, size_t *ret_count);

#endif
