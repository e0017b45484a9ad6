/*
 * Panels that are bent over an outline: how tight a sheet may be bent, and which way its grain has
 * to lie for it. Sheets bend more easily across the grain of their faces than along it.
 */
#ifndef PLAN_BEND_H
#define PLAN_BEND_H

#include "plan/pass.h"

/*
 * The smallest radius that a dry sheet is bent to without help, `across` its grain or along it;
 * formula wood.bend. By the thickness it is sold as, which a sheet may exceed by 1/32 in: the next
 * of bend.*; thinner than 1/4 in and thicker than 3/4 in, in proportion to these.
 */
int64_t bend_least(const int64_t *value, int64_t thickness, bool across);

enum bend_way {
    BEND_NONE,   /* it lies flat */
    BEND_EITHER, /* whichever way its grain lies */
    BEND_ACROSS, /* with its grain across the bend, as it is cut then */
    BEND_WIDE,   /* it would be so, but no sheet on offer is as wide */
    BEND_SHARP   /* not at all */
};

struct bend {
    enum bend_way way;
    int64_t radius;         /* where it is bent most */
    int64_t least;          /* that its sheet allows; WIDE: with the grain along the bend */
    int64_t bent, straight; /* the panel as cut, along the bend and across it */
};

/* A slope, and an outline by points that lie in one line, bends nothing. Reads the panel's box,
 * side, area, stock, thickness and size as cut. */
struct bend bend_of(const struct planning *planning, const struct panel *panel);

/* The smallest radius that the outline of a box bends what lies over it to, between two places of
 * the main face; 0 where it is straight there. Points that turn by less than a corner stand for a
 * curve, of which a circle goes through each and the two beside it. */
int64_t bend_radius(const struct planning *planning, const struct box *box, int64_t from,
                    int64_t to);

/* The places of the main face at which a panel over its outline has to end and another to begin: no
 * sheet goes round a corner. In order. */
struct bend_corners {
    LIST_OF(int64_t) of;
};
struct bend_corners bend_corners(const struct planning *planning, const struct box *box);

#endif
