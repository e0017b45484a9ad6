/*
 * The plan: everything that follows from the facts, in one arena.
 *
 * plan_make is pure: no clock, no file, no terminal; the same facts give the same plan to the byte.
 * Passes fill it one after the other (pass.h), each reading only what the passes above it wrote:
 *
 *     resolve  panel  frame  point  access  fix  cover  buy  cost  load  order  card  finding
 *
 * Geometry: lengths in 1/320 mm. Each box has its own axes, x left to right, y back to front (0 at
 * the back), z up, origin at its left, back, bottom corner *including* frame and panels, without
 * padding. A face has axes u and v: front and back u = x, v = z; left and right u = y, v = z; top
 * and bottom u = x, v = y. So "left" on the back face is still x = 0. A solid is half-open: x0 <= x
 * < x1.
 *
 * Indices into a plan's lists are size_t; PLAN_NONE means none. Keys (int64_t) name items of the
 * model; 0 means none.
 */
#ifndef PLAN_PLAN_H
#define PLAN_PLAN_H

#include "base/list.h"
#include "cut/known.h"
#include "model/model.h"
#include "model/trade.h"

#include <stdbool.h>
#include <stdint.h>

#define PLAN_NONE SIZE_MAX

/* Room for a part's label: a box's name (at most 20 characters), a letter, a number. */
#define PLAN_LABEL 96

struct vector {
    int64_t x, y, z;
};

struct solid {
    struct vector low, high; /* half-open: low <= p < high */
};

struct area { /* on a face, half-open */
    int64_t u0, v0, u1, v1;
};

/* ---- resolve: what stands on what, and how thick ---- */

/* Which of a mirrored pair a box is; its maps, labels and pieces are marked with it. */
enum hand { HAND_NONE, HAND_LEFT, HAND_RIGHT };

/* Parts of a length that a place in the room is kept to where something leans. */
#define POSE_REST_PARTS 1024

/*
 * Where a box stands in the room: leaned about its own lean_axis through its origin's corner,
 * turned by quarter turns about z (counted left, seen from above), then moved so that the corner of
 * the outline, as turned and not leaned, lies at `at` (pose.h). Boxes that are joined stand as one;
 * of those that no join reaches from the first box each lot has its first box at 0, and a box by
 * itself keeps `placed` false.
 */
struct pose {
    int64_t box;
    int turn; /* 0..3 */
    struct vector at;
    bool placed;
    int64_t lean_axis, lean; /* as the box's */
    struct vector rest;      /* beyond `at`, in POSE_REST_PARTS; 0 where nothing leans */
    int64_t by;              /* join that gave it its place, 0 for a first box */
    int64_t with;            /* first box of those that stand as one with it */
    struct solid room;       /* smallest block along the room's axes round its wood */
    int64_t floor;           /* z of the floor under it, in the room */
    enum hand hand;
    int64_t twin; /* the other box of a mirrored pair, 0 for none */
};

/* Padding on a face: layers from the wood outward that lie there, on the face itself or wrapped on
 * to it from another. */
struct padding {
    int64_t box;
    int64_t side;    /* enum side_word */
    int64_t pad;     /* thickness of foam and batting (as pulled) where it is thickest */
    int64_t pressed; /* the same while somebody sits on it or leans against it */
    int64_t at[4];   /* the same at each edge (enum edge_word): where a slab stops short of the edge
                        it counts nothing */
    int64_t cloth;   /* thickness of cloth on it, pressed, for joints */
    bool covered;    /* some cover or lining lies on it */
};

/* One layer on a face of a box, by box, side and from the wood outward. */
struct coating {
    int64_t box;
    int64_t side; /* enum side_word */
    int64_t layer;
    int64_t thickness; /* its own: batting as pulled, cloth nothing */
    int64_t after;     /* of the whole face where it is thickest, this layer included */
};

/* What there is between the padded sides of two boxes for what stands there. */
struct clearance {
    int64_t object;
    int64_t clear, wanted;
};

/* ---- panel, frame: the wood ---- */

struct panel {
    char label[PLAN_LABEL]; /* "C-P1" */
    int64_t box;
    int64_t facing;
    int64_t stock;
    int64_t side;
    struct area area;      /* on its face */
    int64_t width, height; /* as cut: longer than its area where it is bent over an outline */
    struct solid solid;
    int64_t thickness;
    int64_t screws; /* along the landing wood that it is bent over, without a place of their own */
    size_t screw;   /* into screw_kinds; meaningless without such */
    bool loose;     /* drops on: not screwed from outside */
    int64_t gap;  /* widest clear way between the wood behind it; 0 where none is, and of a board */
    int64_t span; /* that is good for its use */
};

struct plan_member {
    char label[PLAN_LABEL]; /* "C3", or the name given by hand */
    int64_t box;
    int64_t by_hand; /* key of the model's member, 0 for ours */
    int64_t kind;    /* enum member_word */
    int64_t axis;    /* enum axis_word: along the grain */
    int64_t stock;   /* stick; 0 when the box names none */
    struct solid solid;
    int64_t length;
    int64_t slant; /* how much higher its top is at its right than at its left, under an outline */
    int turn; /* when it is set in its box: 1, 2, ...; a joint is screwed when its second member is
                 set, so that no head of it is shut off by what is set later */
};

#define CROWN_HEIGHTS 5

/* Wood along an outline, cut to it out of a sheet: it takes the staples there. */
struct crown_piece {
    char label[PLAN_LABEL]; /* "C-K1" */
    int64_t box;
    int64_t stock;                  /* sheet; 0 where the main face has no panel */
    struct area area;               /* the rectangle round it, on the main face */
    int64_t heights[CROWN_HEIGHTS]; /* of its top above its bottom, at even distances */
    bool behind;                    /* in a crate: on the ladder away from the main face */
    int64_t screws;                 /* into the posts that it passes; 0 where it is glued only */
    size_t screw;                   /* into screw_kinds; PLAN_NONE without screws */
};

/* Two members that meet: screws go through `through` into `into` (its end grain where end_grain is
 * set). */
struct joint {
    int64_t box;
    size_t through, into; /* members */
    struct solid contact; /* where they touch, flat along one axis */
    bool end_grain;
    int screws;
};

/* A member that would shut the driver's way to the heads of a joint: it is set after that is made.
 */
struct frame_wait {
    int64_t box;
    size_t joint, member;
};

/* ---- screws ---- */

enum screw_use { SCREW_FRAME, SCREW_PANEL, SCREW_JOIN, SCREW_FITTING };
enum { SCREW_USES = SCREW_FITTING + 1 };

/* A kind of screw: gauge and length, and the stock that is bought for it (0 when the workshop has
 * none such). */
struct screw_kind {
    int64_t gauge;
    int64_t length;
    int64_t diameter;
    int64_t pilot;     /* bit for the thread */
    int64_t clearance; /* bit for the shank */
    int64_t stock;
    int64_t count;                    /* needed, without reserve */
    int64_t count_by_use[SCREW_USES]; /* by enum screw_use */
};

struct screw {
    enum screw_use use;
    size_t kind;      /* into screw_kinds */
    int64_t box;      /* its axes are the ones of this box (of a join: the box with the heads) */
    struct vector at; /* centre of the head, on the surface it is driven from */
    int axis;         /* enum axis_word it is driven along */
    int sign;         /* +1 or -1: towards larger or smaller coordinates */
    int64_t bite;     /* in the receiving wood */
    bool end_grain;
    size_t of; /* FRAME: joint; PANEL: panel; JOIN: point; FITTING: index in the model's fittings */
};

/* ---- point, access: joins ---- */

/* The distance of a point from a named bare edge. */
struct from_edge {
    int64_t edge; /* enum edge_word, on the face it is measured on */
    int64_t distance;
    bool hidden; /* both edges that way are hidden once the box is padded or panelled: to be
                    measured before */
};

struct plan_point {
    int64_t join;
    int rank;     /* hole 1, 2, ... of the join */
    int64_t u, v; /* on the face of box a */
    struct vector in_a,
        in_b; /* the same place in both boxes' axes; in_b only where the join has a second box */
    struct from_edge edges[2];   /* on face a */
    struct from_edge edges_b[2]; /* on face b */
    size_t screw;                /* into screws; PLAN_NONE when no screw fits or it is a bolt */
    size_t member_a, member_b;   /* wood on both sides; PLAN_NONE for a wall or the floor */
    int64_t limit;               /* longest screw that stays inside */
    bool taken;                  /* drilled, or existing, or given by hand: a fact */
    bool existing;               /* it was there before: nobody drills it */
};

/* A bolt through both boxes at a point, with its T-nut in the far side. */
struct plan_bolt {
    size_t point;
    int64_t stock;  /* 0 where none of the workshop's does */
    int64_t length; /* of that, or what is to be bought */
    int64_t diameter;
    int64_t stack;       /* wood and cloth from under the washer to the T-nut */
    int64_t hole;        /* bit for the bolt, through all of it */
    int64_t nut_hole;    /* and for the T-nut's barrel, from the far side */
    int64_t counterbore; /* width of the hole that lets washer and head in; 0 for none */
    int64_t counterbore_depth;
    int64_t nut_box;  /* that the T-nut is driven into */
    int64_t nut_shut; /* side of it whose panels shut the nut's way in; -1 where none does */
};

/* One join as planned. */
struct junction {
    int64_t join;
    int64_t box_a, box_b; /* box_b 0: wall, floor, object, other build */
    struct area zone;     /* mating zone on face a */
    struct area zone_b;   /* and on face b */
    size_t first_point, point_count;
    int64_t length;     /* of the run the points stand on */
    int64_t pitch;      /* real */
    int64_t cloth;      /* pressed cloth in the joint: thickness of the dry fit's spacer */
    int64_t head_box;   /* box whose inside or outside the heads are on */
    int64_t head_side;  /* face the heads are driven from when seen from outside; the inside of face
                           a or b otherwise */
    bool head_inside;   /* heads lie in the hollow of head_box, reached through reach_side */
    int64_t reach_side; /* enum side_word: the open face that the hand and driver go through */
    int64_t tool;       /* enum tool_word */
    int64_t room_needed; /* in line with the screw */
    int64_t room;        /* what is there; -1 when nothing is in the way */
    bool reachable;      /* some way works */
    int64_t
        patch; /* diameter of the bare patch round each head, 0 where no padding is in the way */
};

/* How the way to a join's heads is kept through padding and cloth. */
enum way_treatment {
    WAY_BARE,      /* nothing soft lies there; under batting a bare patch is kept */
    WAY_LEFT_OPEN, /* cloth that peels back is left loose there until the join is driven */
    WAY_PIERCED,   /* the screw goes through the cover */
    WAY_LATER      /* a whole layer, panel or box comes after the join */
};

enum way_state { WAY_SHUT, WAY_POSSIBLE, WAY_CHOSEN };

/* One way to drive a join, as it was looked at; those of a join stand together, the best first. */
struct plan_way {
    int64_t join;
    bool head_in_b;
    int64_t head_box;
    int64_t reach_side; /* enum side_word: the face that hand and driver come through */
    int64_t opened;     /* side whose fixed panels come after the join; -1 for none */
    int64_t tool;       /* enum tool_word */
    bool inside;        /* heads lie in the hollow of head_box */
    enum way_treatment treatment;
    int64_t room, room_needed;     /* in line with the screw, where it is tightest; room -1: free */
    int64_t beside, beside_needed; /* wood beside the tool where it is nearest; beside -1: none */
    int64_t cost;                  /* the smaller the better; of no unit */
    enum way_state state;
    size_t first_blocker, blocker_count; /* into the plan's blockers */
};

enum blocker_kind {
    BLOCKER_MEMBER,
    BLOCKER_FACING,
    BLOCKER_LAYER,
    BLOCKER_JOIN, /* sets a box over the way, or holds it at the wall */
    BLOCKER_WALL,
    BLOCKER_FLOOR
};

/* What meets the corridor of a way or shuts the gap it goes through. */
struct blocker {
    enum blocker_kind kind;
    int64_t item; /* index of a member, else a key; 0 for the floor */
    bool lasting; /* it is there whatever the order: the way is shut */
};

/* A layer or facing that shuts the way to a join's heads, or that the join's zone covers: what must
 * wait for what. */
enum constraint_kind {
    JOIN_BEFORE_LAYER,  /* the layer (or its flap) closes the way: drive first */
    LAYER_BEFORE_JOIN,  /* an edge of the layer is trapped in the joint: staple first */
    JOIN_BEFORE_FACING, /* the panel shuts the cell */
    FACING_BEFORE_JOIN, /* the panel is wood that the join needs */
    JOIN_BEFORE_JOIN    /* the other join puts a box or wall in the way of driver, hand or box */
};

struct constraint {
    enum constraint_kind kind;
    int64_t join;
    int64_t item; /* key of the layer, the facing or the other join */
    char rule[8]; /* "P51" */
};

/* The outline of a main face that is no rectangle, for a template: heights at even distances from
 * the left, and its edges' lengths along it. Wood and cloth are cut from the rectangle round it. */
#define OUTLINE_HEIGHTS 9

struct plan_outline {
    int64_t box, side;
    int64_t width;
    int64_t heights[OUTLINE_HEIGHTS];
    int64_t lengths[4]; /* by enum edge_word */
};

/* ---- cover: soft goods ---- */

/* One layer as cut: the sizes before it is split into widths. */
struct cover {
    int64_t layer;
    int64_t box;                   /* first box where it covers a group */
    int64_t cut_width, cut_height; /* across u and along v of its face, with landing and handle */
    int width_count;               /* 1 when no seam is needed */
    int64_t before, below;         /* of these, left of the layer and below it */
    int64_t side_strip;            /* width as cut of the outer strips, 0 when there are none */
    int64_t side_strip_right;
    int seams;
    int64_t seam; /* the first ones stand at +- this from the middle of the face, 0 without any */
    const int64_t *alone; /* where seams without a like stand, `seams` of them: one from the layer's
                             left; level ones from its bottom, the uppermost first; or NULL */
    int64_t thin;         /* height as cut of the thin cloth sewn on below, 0 without */
    const char *hidden_by; /* the line that the seams were drawn in to; NULL without */
    bool railroaded;
    int64_t thread;  /* for all its seams */
    bool bias;       /* strips at 45 degrees to the grain */
    int64_t repeats; /* of the pattern that each drop takes up whole; 0 on plain cloth */
    int64_t motif;   /* a motif's middle lies so far above the middle of the face */
    int64_t area;    /* square millimetres of material as cut */
    int64_t away;    /* of them, of padding: what is trimmed off along the outline of its faces */
    int64_t trimmed; /* length of that, 0 where the face is a rectangle */
};

/* A piece that is cut from a roll, a slab or a sheet of soft goods. `width` lies across the piece's
 * own left-right. */
struct piece {
    char label[PLAN_LABEL]; /* "C-L3a" */
    char name[40];          /* "face", "side strip", "front boxing", ... */
    int64_t layer;
    int64_t box;
    int64_t stock;
    int64_t width, height; /* as cut; height is the vertical of the piece */
    bool turned_allowed;   /* may lie either way on the roll */
    bool across;           /* railroaded: its height lies across the roll */
    int64_t aside; /* sewn beside another: how far across the roll its middle lies from that of
                      the middle width, to the right */
    int64_t nth;   /* which width from the middle one, 0; negative to the left */
};

/* What a stapled edge is where it is no single edge of the face: the loop round all four, the cords
 * of a tufting field, which have no length, or the lines of its channels, as long as one of them.
 */
enum { EDGE_LOOP = -1, EDGE_CORDS = -2, EDGE_CHANNELS = -3 };

/* One stapled edge of a layer; its intervals lie in `intervals`. */
struct edge {
    int64_t layer;
    int64_t box;
    int64_t edge;         /* enum edge_word on the layer's face, EDGE_LOOP or EDGE_CORDS */
    int64_t landing_side; /* face it lands on */
    int64_t length;
    int64_t pitch;
    int64_t landing, handle;
    int64_t leg;       /* of the staples */
    int64_t staples;   /* along the edge, corners included */
    int64_t corners;   /* of these, in corner folds */
    int64_t relief;    /* cuts into the cloth that let it lie round a curve */
    int64_t temporary; /* placed to hold, taken out again; not in `staples` */
    size_t first_interval, interval_count;
};

enum pass_of_staples { STAPLED_AT_BENCH, STAPLED_AFTER_JOIN, STAPLED_IN_ROOM };

struct interval {
    size_t edge;
    int64_t from, to; /* along the edge */
    int64_t class;    /* enum class_word, never AUTO */
    int64_t join;     /* that it waits for, or that traps it; 0 when free */
    enum pass_of_staples pass;
    int64_t staples;
};

/* A bare patch on a layer: round a head, or over the access hole that a head is driven through. */
struct patch {
    int64_t layer;
    size_t point;
    int64_t box, side; /* of the point's boxes the one that the layer lies on */
    int64_t u, v;      /* centre, on that side */
    int64_t diameter;
    bool slit; /* the cloth is pierced there */
};

/* Where the figure for a diamond's cloth comes from, beside enum allowance_word: the maker's own
 * trial goes before every rule. */
enum { ALLOWANCE_TRIAL = ALLOWANCE_COUNT };

/* A tufting field as planned. */
struct tuft_field {
    int64_t layer;
    int64_t box;                    /* first box where it covers a group */
    int64_t made;                   /* enum tufts_word */
    int64_t border;                 /* edge to the outer button; of channels, to the first one */
    int64_t across_pitch, up_pitch; /* of a diamond, square or channel */
    int64_t pull;
    int64_t allowance;            /* enum allowance_word, never AUTO, or ALLOWANCE_TRIAL */
    int64_t across_each, up_each; /* cloth more for each, by that */
    int64_t buttons;
    int64_t lines; /* of channels: seams or rows of staples */
    int64_t line_length;
};

/* What stands behind a figure of cloth: "common practice, no source: ...". */
const char *plan_allowance_source(int64_t allowance);
const char *plan_allowance_word(int64_t allowance);

/* A button of a tufting field: the middle of its hole on the layer's face. */
struct tuft {
    int64_t layer;
    int64_t u, v;
};

/* What a seam asks of the hands. */
enum seam_kind {
    SEAM_STRAIGHT, /* widths, strips, ends: flat on the table */
    SEAM_BOXING,   /* a strip set into a face, round its corners */
    SEAM_CORD,     /* cord closed into its strip: welt is made */
    SEAM_WELT,     /* welt on to a face */
    SEAM_BY_HAND,  /* slip stitch on the piece itself */
    SEAM_KINDS
};

/* Seams of a layer, alike and sewn one after the other; those of a layer in the order of sewing. */
struct seam {
    enum seam_kind kind;
    int64_t layer;
    int64_t box;
    const char *what;  /* "corners of the boxing", "left boxing to the face" */
    int count;         /* alike */
    int64_t length;    /* of one */
    int64_t allowance; /* of the cloth beyond the stitches */
    int notches;       /* marks that have to meet, in one of them: middle and corners */
    int corners;       /* that one of them turns */
    int64_t clip;      /* how deep its corners are clipped; 0 where there are none */
    bool joins_widths; /* between widths of one piece, for no cloth is as wide */
    bool even;         /* as far from the middle on both sides */
    bool welt;         /* with a welt between */
    int64_t zip;       /* length of the zip in it; 0 without */
    int64_t fitting;   /* that zip's key; 0 without */
};

/* Webbing in an opening: strips both ways, woven, stapled at both ends. */
struct webbing {
    int64_t facing;
    int64_t box, side;
    int64_t stock;
    int64_t up, across; /* strips along v and along u */
    int64_t up_length;  /* of one as cut, with its folds */
    int64_t across_length;
    int64_t leg, staples; /* of all of them */
};

/* A line of nails along an edge, divided into whole spaces of length / spaces; of a strip of heads
 * the heads, and the nails that hold it. A corner's nail is counted with the upright line. */
struct nail_line {
    int64_t layer;
    int64_t box;  /* first box where it covers a group */
    int64_t edge; /* enum edge_word on the layer's face */
    int64_t length;
    int64_t spaces;    /* 0 for a strip */
    int64_t heads;     /* of a strip, else 0 */
    int64_t from_edge; /* of the wood; 0 for a strip */
    int64_t nails;
};

/* Heads in a line: nails apart, nails that touch, a strip of heads held by real nails. */
enum trim_made { TRIM_SPACED, TRIM_TOUCHING, TRIM_STRIP, TRIMS_MADE };

/* One way to make a trim of heads: three stand for each, in that order. */
struct trim_way {
    int64_t layer;
    int64_t box; /* first box where it covers a group */
    enum trim_made made;
    bool chosen;
    int64_t nail_stock, strip_stock; /* 0 where the workshop has none */
    int64_t heads;                   /* that are seen */
    int64_t nails;                   /* that are driven */
    int64_t strip;                   /* its length, else 0 */
    int64_t minutes;                 /* 1/1000 min of this maker */
    int64_t price;                   /* of what it uses up, reserve included, pro rata */
    bool priced;                     /* each part of that has a price */
};

/* One way to fix an outside back: three stand for each, the plainest first. */
struct back_way {
    int64_t layer;
    int64_t box;     /* first box where it covers a group */
    int64_t closing; /* enum closing_word, never AUTO */
    bool stapled;    /* of a blind one: its sides are folded in and stapled, in rows that show */
    bool chosen;
    int64_t width, height; /* of its cloth, as cut */
    int64_t raw, row;      /* length of edge that is stapled raw, and folded in */
    int64_t card;          /* of its top under a card strip */
    int64_t strip;         /* of its sides in metal strips */
    int64_t stitched;      /* of its sides stitched by hand */
    int64_t under;         /* of its bottom stapled underneath */
    int64_t staples, leg;
    int64_t minutes; /* 1/1000 min of this maker */
    int64_t price;   /* of what it uses up, pro rata */
    bool priced;     /* each part of that has a price */
};

/*
 * What a layer uses up that is not cut from a roll or a slab: buttons and nails (COUNT), cord,
 * card strip and trim (LENGTH), area to be glued (AREA: the foam's face once, of batting the share
 * that it takes). `kind` tells the shelf it comes from; `stock` is 0 where the model names none,
 * `what` is then what it is called ("tufting cord").
 */
struct consumable {
    int64_t layer;
    int64_t box;  /* first box where it covers a group */
    int64_t kind; /* enum stock_word */
    int64_t stock;
    enum quantity measure;
    int64_t amount; /* without reserve */
    const char *what;
};

/* ---- buy, cost ---- */

/* What has to be cut: sticks (width 0), sheets, cloth, batting, foam. */
struct part {
    char label[PLAN_LABEL];
    int64_t stock;
    int64_t box;
    int64_t length, width; /* along and across the stick, sheet or roll; a roll part as it lies when
                              not turned */
    bool may_turn;
    bool again; /* still to be cut, from what the first cuts left: spoiled, changed or new since */
    size_t cut; /* the model's cut_part that it is, where that says what it was cut from; else
                   PLAN_NONE */
    size_t member, panel, piece; /* what it is; the others PLAN_NONE */
};

struct placement {
    size_t part;
    int64_t along, across; /* near corner */
    bool turned;
};

/* Where something to cut from comes from. */
enum size_origin {
    SIZE_TO_BUY,
    SIZE_BOUGHT, /* it is in the house, whole */
    SIZE_SHELF,
    SIZE_REST, /* what the first cuts left of a stick, a sheet or a slab */
    SIZE_PART  /* a part that was cut and is not needed any more as it is */
};

struct cut_source {
    enum size_origin origin;
    int64_t offer;    /* that has its size; 0: none */
    int64_t leftover; /* of the shelf; 0: another origin */
    int64_t pack;     /* pieces in a pack of it */
    int64_t length;   /* as it lies there; 0: as the job has it */
    int64_t ahead;    /* of its length in the job, what is squared already and not there */
    const char *part; /* label of the part that it was; else "" */
};

/* One stick, sheet, slab or length of roll with what is cut from it, in the order of cutting. */
struct cutting {
    int64_t stock;
    const struct cut_source *source;
    int64_t length, width;
    size_t first_placement, placement_count;
    int64_t used;        /* length of stick or roll that is taken */
    int64_t rest;        /* largest piece left: its length */
    int64_t rest_across; /* and of a sheet its width */
};

/* One job for the cutting methods: all parts of one stock, and the layout that the plan goes by. */
struct plan_job {
    int64_t stock;
    enum cut_way way;
    const struct cut_job *job; /* its parts are the plan's from first_part on */
    const struct cut_layout *layout;
    size_t first_part, first_cutting;
    uint64_t digest;     /* of the job: what a layout is known by */
    bool taken;          /* the layout is a fact */
    bool cut;            /* and so it was cut */
    bool again;          /* of parts that are cut after the others of their stock */
    size_t bought_count; /* the last of its sizes were bought already, and cost nothing */
    const struct cut_source *sources; /* of its sizes, one by one */
};

/* One line of the shopping list. */
struct purchase {
    int64_t stock;
    int64_t offer;         /* 0 when the workshop has no price for it */
    int64_t aisle;         /* enum aisle_word */
    int64_t need;          /* in the stock's own measure (see `measure`), reserve included */
    int64_t used;          /* without reserve */
    enum quantity measure; /* COUNT, LENGTH, AREA, VOLUME */
    int64_t shelf;         /* of it, on the shelf */
    int64_t packs;         /* to buy: sticks, sheets, packs, cans; 1 for a length of roll */
    int64_t length;        /* of roll to buy, 0 otherwise */
    int64_t supplier;      /* whose charge for bringing the order it is; 0: goods */
    int64_t price;         /* of the line, without tax */
    int64_t stated;        /* what it comes to by the price as the offer says it (model/offer.h) */
    int64_t till;          /* what is paid for it, with tax; the lines add up to the estimate */
    int64_t value;         /* of it, what is used up (pro rata) */
    bool priced;
    char what[80]; /* what it is called where it is no stock of the workshop: "screws #8 x 3 in" */
};

/* A line of the list beside what was paid for it, or what was paid in an aisle for nothing that is
 * on the list. Each figure adds up over the lines to that of the whole, and in an aisle to the
 * aisle's. */
struct cost_line {
    size_t purchase; /* PLAN_NONE: on no list */
    int64_t aisle;
    bool entered;      /* a spend names it */
    bool settled;      /* and nothing more is to be paid for it */
    int64_t packs;     /* that spends say they are for, less those given back */
    int64_t bought;    /* of its packs, or of its length of roll, by a ticked step */
    int64_t estimate;  /* its till */
    int64_t committed; /* bought by a ticked step, and not paid yet: owed */
    int64_t paid;
    int64_t rest;     /* of the estimate, what no spend has paid for yet; 0 on no list */
    int64_t forecast; /* what was paid and the rest; on no list: what the rests of the aisle's lines
                         do not cover */
};

struct cost_sum {
    int64_t estimate, committed, paid, forecast; /* tax included */
};

struct cost {
    int64_t bought;    /* sum of the lines, without tax */
    int64_t used;      /* pro rata */
    int64_t tax;       /* of the estimate */
    int64_t estimate;  /* bought and tax */
    int64_t committed; /* see cost_line */
    int64_t spent;     /* paid so far, tax included */
    int64_t spent_tax; /* of it, tax, as far as it was written down */
    int64_t forecast;  /* sum of the lines'; of a finished build what was spent, if anything was */
    int64_t left;      /* of the budget after the forecast; meaningless without a budget */
    struct cost_sum by_aisle[AISLE_COUNT];
    LIST_OF(struct cost_line) lines; /* by aisle, as the list is shown */
};

/* ---- load ---- */

struct load {
    int64_t box;
    int64_t mass; /* mg */
    int people;
    struct vector finished; /* outer size with padding */
};

/* ---- order, card ---- */

struct step_need {
    char text[80]; /* "24 screws #8 x 3 in" */
};

struct step {
    char name[64]; /* lasting: "frame:3" (kind and key), the same while the plan changes; ticks hold
                      it */
    char title[96];                   /* "Frame box C" */
    int kind;                         /* into the table of step kinds (steps.h) */
    int phase;                        /* 0..14 */
    int64_t box, join, layer, facing; /* what it is about; 0 none */
    int64_t place;                    /* enum place_word */
    int people;                       /* that the work is for, and its minutes */
    int lifters;                      /* that what is lifted is for, by the trade; 0: nothing is.
                                         Who only lifts is called for a moment, and the minutes stay
                                         those of the work */
    const char *crew;     /* what is lifted, and what people are good for there; "" when nothing */
    int64_t minutes;      /* 1/1000 min, pace or skill and helper counted in */
    int64_t usual;        /* the same at the usual pace, which times at the bench are held to */
    int session;          /* 1, 2, ... of the bench's usual length; 0 for work in the room */
    int64_t wait;         /* 1/1000 min before it with nothing to do, while something dries */
    bool hold;            /* must be ticked before what follows */
    const char *because;  /* why now: the reason of the rule that put it here */
    char rule[8];         /* and its number, "" when free */
    const char *unusual;  /* what usually comes first, and why; "" when nothing does */
    const char *closes;   /* what it shuts for good, "" when nothing */
    const char *caution;  /* "" when none */
    const char **actions; /* at most seven */
    size_t action_count;
    struct step_need *needs;
    size_t need_count;
    const char **measures; /* what to measure and write down */
    size_t measure_count;
    uint64_t content; /* digest of what the step says */
    bool ticked;
    bool older;           /* ticked, and the plan would now do it otherwise */
    const char **changes; /* in what: "then: 6 screws #10 x 3 in", "now: 8 screws #10 x 3 in" */
    size_t change_count;
    bool ready; /* not ticked, and all that it waits for is */
};

/* How many people it wants: for the work, and to lift what it lifts. */
static inline int step_people(const struct step *step)
{
    return step->lifters > step->people ? step->lifters : step->people;
}

/* `before` must be done before `after` (indices of steps in their final order). */
struct precedence {
    size_t before, after;
    char rule[8];
    bool hard;
    bool soft;    /* only slower or dirtier otherwise; neither: a fault would show */
    int64_t rest; /* 1/1000 min that have to pass between them: glue that cures */
};

/* ---- findings ---- */

enum severity { SEVERITY_STOP, SEVERITY_WARN, SEVERITY_NOTE };

enum argument_type { ARGUMENT_QUANTITY, ARGUMENT_MONEY, ARGUMENT_TEXT };

struct argument {
    enum argument_type type;
    enum quantity quantity;
    int64_t value;
    const char *text;
};

#define FINDING_ARGUMENTS 4

/*
 * One line of a cure: a field of an item and what is read into it, as field_read takes it. Key 0 is
 * a new item of the entity; lines with key 0 of one entity that follow each other fill the same new
 * item, until a field comes a second time: that begins the next. A field of NULL deletes the item.
 */
struct cure_edit {
    enum entity_kind entity;
    int64_t key;
    const char *field;
    const char *value;
};

/* A way out of a finding, taken as one edit. */
struct cure {
    const char *text; /* "Put the heads into box C" */
    const struct cure_edit *edits;
    size_t edit_count;
    bool on_trial; /* never in a finished plan (cures.h) */
};

struct finding {
    int kind; /* enum finding_kind (findings.h) */
    enum entity_kind entity;
    int64_t key;
    struct argument arguments[FINDING_ARGUMENTS];
    const struct cure *cures; /* the least trouble first */
    size_t cure_count;
    const char **story; /* sentences, at most six: what holds what, step by step */
    size_t story_count;
};

/* ---- the whole ---- */

/* What the line at the bottom of every screen shows. */
struct tally {
    int64_t cost;
    int64_t sticks, sheets;
    int64_t cloth; /* length to buy */
    int64_t staples;
    int64_t screws;
    int64_t minutes;
    int64_t stops, warns, notes;
    int64_t steps, steps_done;
};

struct plan {
    const struct model *facts;   /* with measures of stock put in (taken.h) */
    const struct model *entered; /* as they were entered */
    bool trial;                  /* made to try a cure or as a draft: no stories, no cures */
    int64_t value[TRADE_COUNT];  /* trade values that hold */
    LIST_OF(struct pose) poses;  /* one a box, in order of keys */
    LIST_OF(struct coating) coatings;
    LIST_OF(struct clearance) clearances;
    LIST_OF(struct padding) paddings; /* six a box, in order of keys and sides */
    LIST_OF(struct panel) panels;
    LIST_OF(struct plan_member) members;
    LIST_OF(struct crown_piece) crown_pieces; /* by box, from the left */
    LIST_OF(struct joint) joints;
    LIST_OF(struct frame_wait) frame_waits; /* by box and joint */
    LIST_OF(struct screw_kind) screw_kinds;
    LIST_OF(struct screw) screws;
    LIST_OF(struct junction) junctions; /* one a join, in order of keys */
    LIST_OF(struct plan_point) points;
    LIST_OF(struct plan_bolt) bolts; /* by junction and point */
    LIST_OF(struct constraint) constraints;
    LIST_OF(struct plan_way) ways; /* join by join, in order of keys */
    LIST_OF(struct blocker) blockers;
    LIST_OF(struct plan_outline) outlines; /* of boxes that have one, in order of keys */
    LIST_OF(struct cover) covers;
    LIST_OF(struct piece) pieces;
    LIST_OF(struct edge) edges;
    LIST_OF(struct interval) intervals;
    LIST_OF(struct patch) patches;
    LIST_OF(struct tuft_field) tuft_fields; /* by layer */
    LIST_OF(struct tuft) tufts;           /* row by row from the bottom, each from left to right */
    LIST_OF(struct seam) seams;           /* by layer */
    LIST_OF(struct webbing) webbings;     /* by facing */
    LIST_OF(struct nail_line) nail_lines; /* by layer and edge */
    LIST_OF(struct trim_way) trim_ways;   /* by layer and way */
    LIST_OF(struct back_way) back_ways;   /* by layer and closing */
    LIST_OF(struct consumable) consumables;
    LIST_OF(struct part) parts;
    LIST_OF(struct placement) placements;
    LIST_OF(struct cutting) cuttings;
    LIST_OF(struct plan_job) jobs;
    LIST_OF(struct purchase) purchases;
    LIST_OF(struct load) loads;
    LIST_OF(struct step) steps; /* in the order they are done */
    LIST_OF(struct precedence) precedences;
    LIST_OF(struct finding) findings; /* stops first */
    struct cost cost;
    struct tally tally;
};

/*
 * Makes the plan of a model that passed model_check. The plan lives in `arena` (which must be empty
 * of other escapes) and points into `facts`: it dies with either. FAULT_MEMORY is the only fault;
 * the arena is then to be released.
 */
enum fault plan_make(const struct model *facts, struct arena *arena, const struct plan **ret_plan);

/* The same with layouts that a search has found by now: a job that is among them gets its layout,
 * any other a quick one. A layout that was taken (a fact) goes before both. `known` may be NULL. */
enum fault plan_make_known(const struct model *facts, const struct cut_known *known,
                           struct arena *arena, const struct plan **ret_plan);

/* As plan_make_known, for every key: findings have no stories, and only the ways out that need no
 * trial in a plan of their own. All figures, findings and the order of work are the same. */
enum fault plan_make_draft(const struct model *facts, const struct cut_known *known,
                           struct arena *arena, const struct plan **ret_plan);

/* The same of a plan's facts as they were entered, with a cure taken: what it would come to. Faults
 * as cure_apply; REFUSED where the edits break the model, MEMORY. */
enum fault plan_make_changed(const struct plan *plan, const struct cure *cure, struct arena *arena,
                             const struct plan **ret_plan);

/* By key; NULL when there is none. */
const struct pose *plan_pose(const struct plan *plan, int64_t box);
/* Which of a mirrored pair a box is (0: no box), and its word: "left", "right", "" for neither. */
enum hand plan_hand(const struct plan *plan, int64_t box);
const char *plan_hand_word(enum hand hand);

const struct padding *plan_padding(const struct plan *plan, int64_t box, int64_t side);
const struct junction *plan_junction(const struct plan *plan, int64_t join);

/* The line of the cost that a purchase of the plan's own list has. */
const struct cost_line *plan_cost_line(const struct plan *plan, const struct purchase *purchase);

/* Whether something of a line has to be bought, rather than all of it lie on the shelf; and how
 * many lines of which something is bought have no price yet: the estimate is without them. */
bool plan_is_bought(const struct purchase *purchase);
size_t plan_unpriced(const struct plan *plan);

const struct load *plan_load(const struct plan *plan, int64_t box);
const struct step *plan_step(const struct plan *plan, const char *name);

/* The first step that a step of the plan should come after and that is not ticked; NULL when there
 * is none, as before each that is ready. O(precedences). */
const struct step *plan_waits_for(const struct plan *plan, const struct step *step);

/* ---- words for people: safe to show, in the build's units ---- */

/* "#10 x 3 in", "5 x 80 mm". */
void plan_screw_text(const struct plan *plan, const struct screw_kind *kind, struct text *out);

/* "nails apart", "nails that touch", "strip of heads". */
const char *plan_trim_word(enum trim_made made);

/* One sentence for a finding, its severity, and the word for that: "stop", "warn", "note". */
void plan_finding_text(const struct plan *plan, const struct finding *finding, struct text *out);
enum severity plan_finding_severity(const struct finding *finding);
const char *plan_finding_word(const struct finding *finding);

/* What a stock is called, as entered; "stock that has gone" where there is none. Never NULL. */
const char *plan_stock_name(const struct plan *plan, int64_t stock);

#endif
