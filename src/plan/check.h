/*
 * What goes wrong at the bench although every part is right: one file for each kind of mistake,
 * looked for when the whole plan stands. Each adds findings and changes nothing.
 */
#ifndef PLAN_CHECK_H
#define PLAN_CHECK_H

#include "plan/pass.h"

/* Cloth over the heads of joins: how far it has to be peeled back, and edges that the maker wants
 * closed too soon. */
void check_openings(struct planning *planning);

/* Joins that came late: padding over holes that are not drilled yet. */
void check_drilling(struct planning *planning);

/* Seats screwed on from below over the screws that hold the piece to its wall. */
void check_seats(struct planning *planning);

/* Patches and slits that would be seen. */
void check_patches(struct planning *planning);

/* Rows of staples that pile up on one landing. */
void check_landings(struct planning *planning);

/* Seams between covers that lie side by side: each wants its like on the other side of the middle.
 */
void check_seams(struct planning *planning);

/* Seat foam that is light or joined, a hand gun and hardwood, pile under nail strips, zips without
 * a seam. */
void check_soft(struct planning *planning);
void check_cushions(struct planning *planning);

/* Layers, facings and frames that are to be made of what they cannot be made of. */
void check_stuff(struct planning *planning);

/* Pieces of cloth that came out shorter than they were planned. */
void check_short(struct planning *planning);

/* Covers that go down behind the mattress: cloth that nobody sees. */
void check_hidden(struct planning *planning);

/* Backs and undersides left open where they are seen. */
void check_closing(struct planning *planning);

/* Members by hand that end short of what they are to be screwed to. */
void check_members(struct planning *planning);

/* Wood under legs and glides. */
void check_legs(struct planning *planning);

/* Lids that slam, stifle, or cannot be opened for a wall. */
void check_lids(struct planning *planning);

/* Panels that run along an outline of the face beside them. */
void check_outlines(struct planning *planning);

/* Panels that are bent more than their sheet allows (bend.c). */
void check_bends(struct planning *planning);

/* Cloth of a box that is laid or set in, against what stands beside it. */
void check_gaps(struct planning *planning);

/* Skirting against what stands at the wall, the mattress between the wings, the bed frame's bolts.
 */
void check_room(struct planning *planning);

/* What bends where somebody sits, wide beds without a leg in their middle, joins that hold less
 * than a person pulls, tall pieces that stand free. */
void check_strength(struct planning *planning);

/* Sheets through the opening of the vehicle. What the boxes pass is the load pass's to say. */
void check_way_in(struct planning *planning);

/* The finished order, rehearsed: what is not proved. Comes last: it tells of no join that has a
 * stop already. */
void check_rehearsal(struct planning *planning);

/* ---- shared ---- */

/* How a face is seen (enum seen_word): as the maker says; else never where a join covers it,
 * toward a wall that stands there, and in plain view. The underside is never seen. */
int64_t check_seen(const struct planning *planning, int64_t box, int64_t side);

/* The side of a box that looks to a side of the room. */
int64_t check_side(const struct planning *planning, int64_t box, int64_t room_side);

/* The thinnest cloth of the workshop; 0 when it has none. */
int64_t check_thin_cloth(const struct model *model);

/* What a box takes up in the room, bare. */
struct solid check_in_room(const struct planning *planning, const struct box *box);

/* How far a box lies inside of the plane in which a side of the whole piece lies
 * (stance_whole_piece). */
int64_t check_behind(const struct solid *solid, const struct solid *whole, int64_t room_side);

#endif
