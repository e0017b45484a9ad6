/* Bodies cut into convex parts, and what one of these hides of a line. Inside of draw/hidden. */
#ifndef DRAW_CONVEX_H
#define DRAW_CONVEX_H

#include "base/list.h"
#include "draw/hidden.h"

/* The eye's axes. */
#define RIGHT 0
#define UP 1
#define NEAR 2

/* A part of a unit normal that is nothing. */
#define LEVEL 1e-6

#define PART_PLANES 48

/* Inside: normal . p < from. */
struct plane {
    double normal[3];
    double from;
};

struct part {
    const struct plane *planes;
    size_t count;           /* at most PART_PLANES */
    double low[2], high[2]; /* on the picture */
    double nearest;
};

struct parts {
    LIST_OF(struct part) of;
};

struct range {
    double from, to;
};

double spot_dot(const double a[3], const double b[3]);
void spot_cross(const double a[3], const double b[3], double ret[3]);
double spot_length(const double a[3]);

/* `part` of a way further on. */
struct spot spot_on(const struct spot *from, const struct spot *way, double part);
struct spot spot_way(const struct spot *from, const struct spot *to);

/* The normal of a body's band, as long as the band is large: of the rims taken round, the lower one
 * first. */
void body_normal(const struct body *body, double ret_normal[3]);

/* Whether it is as good as without thickness. */
bool body_is_flat(const struct body *body);

/* Adds the parts of a body, in `arena`; none of a flat one. */
void parts_add(struct parts *parts, const struct body *body, struct arena *arena);

/* The stretch of the line `from` + s `way`, 0 < s < 1, that a part stands before; false where it
 * stands before nothing of it. */
bool part_hides(const struct part *part, const struct spot *from, const struct spot *way,
                struct range *ret_range);

#endif
