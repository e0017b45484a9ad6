/*
 * What the files of the cover pass share. A layer is first laid out on its face (struct spread:
 * how wide, how it ends, what padding lies where), then cut by its shape, then stapled.
 */
#ifndef PLAN_COVER_H
#define PLAN_COVER_H

#include "plan/cover_sums.h"
#include "plan/pass.h"

#include <stdbool.h>
#include <stdint.h>

/* One edge of a layer on its face. */
struct brim {
    int64_t ending;
    bool inside;     /* does not reach the edge of the face: lands on the face itself */
    int64_t over;    /* padding on the face at that edge */
    int64_t beside;  /* padding on the side it borders on */
    int64_t landing; /* by hand, or the trade's */
    int64_t handle;
    int64_t by_hand;  /* key of the edge's own figures; 0 without */
    int64_t pitch;    /* by hand; 0 for the trade's */
    int64_t by_class; /* enum class_word by hand; AUTO without */
};

/* The wood of a box: members and fixed panels. */
struct timber {
    LIST_OF(struct solid) of;
};

/* A box under a layer, and where its face lies on the layer's: a group has several. */
struct plot {
    const struct box *box;
    struct area area; /* from the layer's left and bottom */
};

struct spread {
    const struct layer *layer;
    const struct stock *stock;
    const struct box *box; /* the first where it covers a group */
    const struct plot *plots;
    size_t plot_count;
    int ordinal; /* of the layer on its box, from 1: for labels */
    int pieces;  /* labelled so far */
    int64_t side;
    int64_t closing;             /* of an outside back: enum closing_word, never AUTO */
    int64_t width, height;       /* of what it covers, across u and along v */
    int64_t wide, high;          /* the same along the outline that its face is bent over */
    int64_t lengths[EDGE_COUNT]; /* of its edges, along the outline */
    int64_t depth;               /* of the box behind the face; of the boxing where it is given */
    int64_t ease;                /* of a sewn cover, each way */
    int64_t surface;             /* square millimetres of all that was cut */
    struct brim brims[EDGE_COUNT];
    const struct tufting *tufting; /* NULL without */
    bool thin;                     /* the part of it that is of thin cloth, which nobody sees */
    struct tuft_field field;       /* of that */
    struct timber timber;          /* of its box */
};

/* Lays a layer out (cover_lay.c). False when there is nothing to cover, or no material. */
bool spread_lay(const struct planning *planning, const struct layer *layer, struct spread *spread);

/* The two edges of a face that meet an edge, first the left or bottom one. */
void edge_neighbours(int64_t edge, int64_t ret_edges[2]);

/* Reaches the layer the outline of its box, where that is no rectangle? */
bool spread_outlined(const struct spread *spread);

/* Is its face bent over an outline of the box? And the edges that follow it there. */
bool spread_is_bent(const struct spread *spread);
bool spread_follows(const struct spread *spread, int64_t edge);

/* The upper edge of a face with a curved outline, and what lands there from over it. */
bool edge_is_curved(const struct spread *spread, int64_t edge);

/* Length of an edge of the layer, along the outline of its face; and from end to end. */
int64_t spread_length(const struct spread *spread, int64_t edge);
int64_t spread_straight(const struct spread *spread, int64_t edge);

/* A place of an edge as it lies along that outline, from one that is told from end to end (along
 * the face's own u or v): within 0 and the edge's length. */
int64_t spread_along(const struct model *model, const struct spread *spread, int64_t edge,
                     int64_t at);

/* The face where an edge's staples go: the side it borders on, the face behind, or its own. */
int64_t spread_landing(const struct spread *spread, int64_t edge);

/* A place on the layer along the outline that its face is bent over; `level`: it is a height. What
 * is on flat wood stays. */
int64_t spread_bent(const struct spread *spread, bool level, int64_t at);

/* Does the edge hang open (to be stapled), on a layer of its shape? And is it sewn to a boxing? */
bool brim_is_open(const struct spread *spread, int64_t edge);
bool brim_is_sewn(const struct spread *spread, int64_t edge);

/*
 * One piece, `count` times. Adds to `surface`. `turns`: it may lie either way on the roll. Name:
 * "face", "front boxing".
 */
void spread_piece(struct planning *planning, struct spread *spread, const char *name, int count,
                  int64_t width, int64_t height, bool turns);

/* A piece that is sewn from widths where the cloth is too narrow, seam allowance and findings
 * included (cover_cloth.c). Returns how its widths fall; *ret_across tells whether it is
 * railroaded. */
struct widths spread_cloth(struct planning *planning, struct spread *spread, const char *name,
                           int64_t width, int64_t height, bool *ret_across);

/* The same for a layer that is this one piece: its line among covers as well. */
void cut_cloth(struct planning *planning, struct spread *spread, const char *name, int64_t width,
               int64_t height);

/* How much of a piece lies left of its layer and below it. */
struct reach {
    int64_t before, below;
};

/* The same for a piece that is seen: its seams are placed by what is there on the face. */
void cut_on_face(struct planning *planning, struct spread *spread, const char *name, int64_t width,
                 int64_t height, const struct reach *reach);

/* The same again for the second face of a layer with two, its seams placed by what is there on that
 * one; it has no line among covers of its own. */
void cut_second_face(struct planning *planning, struct spread *spread, const char *name,
                     int64_t width, int64_t height, const struct reach *reach);

/* Pieces of a layer, from `first` of the plan's on, that miss their landing where they are cut as
 * planned, or as they were cut already, and not to the boxes as built. `planned` holds the pieces
 * as planned. */
void tell_short_pieces(struct planning *planning, const struct spread *spread,
                       const struct plan *planned, size_t first);

/* Handles that are too short to pull by, and a seam that shorter ones would spare (cover_reach.c).
 */
void tell_handles(struct planning *planning, const struct spread *spread);
void tell_spared_seam(struct planning *planning, const struct spread *spread, int64_t cut,
                      int64_t roll, bool across);

/* Where the seams of a piece fall. */
struct seams {
    struct widths widths;
    const int64_t *alone;  /* as in struct cover */
    const char *hidden_by; /* the line that hides them, or NULL */
};

/*
 * Places the seams of such a piece, upright on the face, or `level` where it is railroaded
 * (cover_seam.c), with the finding where they fall on what they should not. `cut` of it lie across
 * the roll, `before` of these left of the layer or below it.
 */
struct seams seams_place(struct planning *planning, const struct spread *spread, bool level,
                         int64_t cut, int64_t before, int64_t roll);

/* Where the thin cloth that is sewn on below begins, from the layer's bottom; 0 without. Told where
 * its seam falls on what it should not. */
int64_t thin_begins(struct planning *planning, const struct spread *spread);

/* A hole of a join under a layer: its place on it, and how far round it nothing may fall. */
struct hole_on {
    int64_t u, v;
    int64_t around;
};

struct holes_on {
    LIST_OF(struct hole_on) of;
};

/* Holes of the joins on the layer's face, and heads that are driven in through it, beyond its ends
 * as well (cover_hole.c). */
struct holes_on holes_on_layer(struct planning *planning, const struct spread *spread);

/* The seam to the next cover of the same face, where the maker laid two side by side. */
void seam_by_hand(struct planning *planning, const struct spread *spread);

/* The layer's line among covers. */
struct cover *spread_cover(struct planning *planning, const struct spread *spread, int64_t width,
                           int64_t height);

/* Something used up. `what` is kept, not copied. */
void spread_consume(struct planning *planning, const struct spread *spread, int64_t kind,
                    int64_t stock, enum quantity measure, int64_t amount, const char *what);

/* Is the cloth plain, so that pieces nobody compares may be turned on the roll? */
bool stock_turns(const struct stock *stock);

/* ---- cutting, by shape: pieces, a line among covers, what is used up ---- */

void cut_slab(struct planning *planning, struct spread *spread);    /* cover_slab.c */
void cut_batting(struct planning *planning, struct spread *spread); /* cover_slab.c */
void cut_wrapped(struct planning *planning, struct spread *spread); /* cover_wrapped.c */
void cut_sewn(struct planning *planning, struct spread *spread);    /* cover_sewn.c */
void cut_flat(struct planning *planning, struct spread *spread);    /* cover_flat.c */
void cut_back(struct planning *planning, struct spread *spread);    /* cover_back.c */
void cut_run(struct planning *planning, struct spread *spread);     /* cover_run.c */

/* How an outside back is fixed, where the maker leaves it to the program (cover_back.c). */
bool back_is_stapled(const struct spread *spread); /* at its sides, under a blind top */
int64_t back_closing(const struct planning *planning, const struct spread *spread);

/* A sewn cover with two faces that goes all round, open above and below: a band. */
bool spread_is_band(const struct spread *spread);

/* Foam under a cover on its face, all layers of it (cover_allow.c). */
int64_t foam_depth(const struct model *model, const struct layer *cover);

/* A tufting field and what it takes, its lines left out; for a spread that has one (cover_allow.c).
 */
struct tuft_field tuft_reckon(const struct planning *planning, const struct spread *spread);
void tell_guess(struct planning *planning, const struct spread *spread);
/* Extra cloth of the field across u and along v. */
int64_t tuft_extra(const struct spread *spread, bool across);

/* The deep field of the cover over a layer of padding; an empty one without (cover_allow.c). */
bool tufts_over(const struct planning *planning, const struct spread *padding,
                struct tuft_field *ret_field);

/* Its buttons, 0 of channels; its holes or lines, and what they must not fall on; before the cover
 * is cut (cover_tuft.c). */
int64_t tuft_count(const struct tufting *tufting);
void tuft_lay(struct planning *planning, struct spread *spread);
/* A place of the layer, from its left or (`level`) its bottom, on the cloth as it is drawn in. */
int64_t tuft_on_cloth(const struct spread *spread, bool level, int64_t at);
void tuft_consume(struct planning *planning, struct spread *spread);

/* ---- sewing (cover_sewing.c): seams in the order they are made ---- */

/* Between the widths of a piece; right after it is cut. */
void sew_widths(struct planning *planning, const struct spread *spread, const char *name,
                const struct widths *widths, int64_t along);
/* Of the thin cloth to the cover above it. */
void sew_thin(struct planning *planning, const struct spread *spread, int64_t width);
/* Of the faces and the boxing of a sewn cover, of a band, of strips of welt. */
void sew_boxing(struct planning *planning, const struct spread *spread);
void sew_band(struct planning *planning, const struct spread *spread, int64_t height);
void sew_channels(struct planning *planning, const struct spread *spread);
void sew_welt(struct planning *planning, const struct spread *spread, int64_t strips, int64_t strip,
              int64_t length);
/* Seams that are sewn on the piece itself. */
void sew_by_hand(struct planning *planning, const struct spread *spread, const char *what,
                 int count, int64_t length);
/* Thread for the seams of the layer, from `first` of the plan's seams on: of the machine's, and of
 * what is sewn by hand. */
int64_t sewing_thread(const struct planning *planning, size_t first, bool by_hand);

/* The zip in the boxing of an edge, NULL without; and how long it is: as the maker says, or less
 * than its opening by the trade's figure; 0 where there is no room for one (cover_sewn.c). */
const struct fitting *boxing_zip(const struct planning *planning, const struct spread *spread,
                                 int64_t edge);
int64_t zip_length(const struct planning *planning, const struct spread *spread, int64_t edge);

/* As wide as the boxing at an edge is cut where no zip is in it, and as long as a sewn edge of the
 * face is between the seams at its ends (cover_sewn.c). */
int64_t boxing_width(const struct planning *planning, const struct spread *spread, int64_t edge);
int64_t sewn_length(const struct spread *spread, int64_t edge);

/* Does a run lie along an edge (cover_run.c)? */
bool runs_along(const struct spread *spread, int64_t edge);

/* Nails, a strip of heads or gimp along a run, and the ways to make it (cover_trim.c). */
void cut_trim(struct planning *planning, struct spread *spread, int64_t run, int corners);

/* Length that a run (welt, trim) takes along its edges, without joins; and how many corners it
 * turns. */
int64_t spread_run(const struct spread *spread, int *ret_corners);

/* What batting that ends at an edge of its face, or (`face` 1) of the one behind, stays short of
 * it: the zone of a join that lies along the whole edge, and a little more; 0 of all other layers
 * (cover_slab.c). O(joins). */
int64_t batting_kept_back(const struct planning *planning, const struct spread *spread, int face,
                          int64_t edge);

/* ---- stapling ---- */

/* A stretch of an edge of a face within a stapled row: `length` of the edge's own length, from
 * `begin` of it on, lies at `from` of the row, `backward` when the row passes it from its right or
 * top end. */
struct stretch {
    int64_t edge;
    int face; /* 1 on the second face of a layer with two, else 0 */
    int64_t from;
    int64_t begin, length;
    int64_t straight; /* from end to end, as places on the edge are told */
    bool backward;
};

#define ROW_STRETCHES 4
#define ROW_CORNERS 4

/* A row of staples before it is counted. */
struct staple_row {
    int64_t edge; /* as in struct edge */
    int64_t landing_side;
    int64_t length;
    int64_t pitch;
    int64_t pitch_over; /* of a second row over it, through a card strip; 0 none */
    bool loop;
    bool basted;   /* held by temporary staples first */
    int64_t extra; /* staples that stand in no row */
    struct stretch stretches[ROW_STRETCHES];
    int stretch_count;
    int64_t corners[ROW_CORNERS]; /* where along the row a corner is folded */
    int corner_count;
};

void staple_layer(struct planning *planning, const struct spread *spread); /* cover_fix.c */

/* Counts a row, adds it to edges and its intervals to intervals (cover_rows.c). */
void row_add(struct planning *planning, const struct spread *spread, const struct staple_row *row);

/* The class that holds for a whole edge of the layer; AUTO when it has intervals of several
 * (cover_rows.c). */
int64_t edge_whole_class(struct planning *planning, const struct spread *spread, int64_t edge);

/* Fills in the wood of the layer's box. */
void wood_gather(struct planning *planning, struct spread *spread);

/* Does a side of the layer's box show the edge of a board, which holds staples less than its face?
 */
bool is_board_edge(const struct spread *spread, int64_t side);

/* Leg of the staples that hold a layer where it lands, and the check of the wood under them
 * (cover_leg.c). */
int64_t staple_leg(const struct planning *planning, const struct spread *spread,
                   int64_t landing_side);
void staple_wood(struct planning *planning, const struct spread *spread,
                 const struct staple_row *row, int64_t leg);

/* The same for webbing, that is stapled through its fold. */
int64_t web_leg(const struct planning *planning, const struct box *box, const struct stock *web);

/* Webbing of all facings (cover_web.c). */
void web_openings(struct planning *planning);

/* Bare patches and slits of a layer (cover_patch.c). */
void patch_layer(struct planning *planning, const struct spread *spread);

#endif
