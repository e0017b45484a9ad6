/*
 * What the files of the point pass share: one join while its points are made.
 */
#ifndef PLAN_PLACE_H
#define PLAN_PLACE_H

#include "plan/point.h"
#include "plan/run.h"
#include "plan/thicket.h"
#include "plan/way.h"

/* Placing the points of one join: its boxes and faces, and what there is to keep clear of. */
struct placing {
    struct planning *planning;
    const struct vicinity *vicinity;
    const struct join *join;
    const struct box *a, *b; /* b NULL without a second box */
    struct junction junction;
    struct faces faces;
    struct runs runs;
    struct scene from_a, from_b; /* sides that the heads may be on; without a box where not */
    struct thicket *in_a, *in_b; /* screws of the frames, and room of the points placed so far */
};

/* ---- mating.c ---- */

/* The smallest area round one on face a as it lies on face b. */
struct area place_area_to_b(const struct placing *placing, const struct area *on_a);

/*
 * What an area on face b surely has behind it on face a. Where the boxes lean against each other in
 * the plane of the faces, the area is cut into strips, and of each the largest upright rectangle
 * counts; else there is one strip, the whole area.
 */
int64_t place_strips(const struct placing *placing, const struct area *on_b);
struct area place_strip_to_a(const struct placing *placing, const struct area *on_b, int64_t strip);

/* Finds the mating zone on both faces, or tells that they do not meet and leaves it empty. */
void place_zone(struct placing *placing);

/* ---- place.c ---- */

/* The two edges that distances on a face are taken from, for places about a middle. */
void place_edges(const struct area *face, int64_t twice_u, int64_t twice_v,
                 struct from_edge edges[2]);

/* A place on face a as a point, without rank and distances. */
struct plan_point place_locate(const struct placing *placing, int64_t u, int64_t v);

/*
 * Adds a point with the next rank, its wood and its distances from two edges of each face. `about`
 * is what these edges are chosen by: a whole run, or the place itself as an empty area. The point
 * is stale after the next one.
 */
struct plan_point *place_add(struct placing *placing, int64_t u, int64_t v,
                             const struct area *about);

/*
 * What a screw at a point may take up, whichever side its head is on: from the far side of one wood
 * to that of the other, in the axes of box a; and the same in those of box b. False without wood on
 * both sides.
 */
bool place_room(const struct placing *placing, const struct plan_point *point,
                struct screw_axis *ret_in_a);
struct screw_axis place_room_in_b(const struct placing *placing, const struct screw_axis *in_a);

/* From now on others keep clear of the point. */
void place_stand(struct placing *placing, const struct plan_point *point);

/* ---- spread.c ---- */

/* Where points may be on a run: places along it that lie on the marking grid, counted from the
 * edges that they are measured from. */
struct lattice {
    struct placing *placing;
    const struct run *run;
    int64_t first; /* along the run, of place 0 */
    int64_t step;
    int64_t count;  /* of places: at least 0 */
    int64_t across; /* u of a run along v, v of one along u: the middle, or the grid's nearest */
    char *grades;   /* enum of spread.c, looked at when first wanted */
};
struct lattice lattice_on(struct placing *placing, const struct run *run);

/* The place of the lattice nearest to a wanted one, no farther than `most`, that is best for a
 * screw: a head there can be driven, and no other screw passes; the nearest one where none is
 * better. Along the run. */
int64_t lattice_near(const struct lattice *lattice, int64_t wanted, int64_t most);

void lattice_add(const struct lattice *lattice, int64_t along);

/* Spreads points on a run. */
void spread_on_run(struct placing *placing, const struct run *run);

/* Adds the points of all runs; of a wall's join those at studs, where the wall has any. */
void place_rows(struct placing *placing);

/* ---- studs.c ---- */

/* The points of a join to a wall, and the length of the run that they stand on. */
void place_against_wall(struct placing *placing);

#endif
