/*
 * How much there is of everything, for the minutes of a step and the figures of its card: the
 * plan's lists gone through once. Each array is parallel to a list of the model.
 */
#ifndef PLAN_COUNTED_H
#define PLAN_COUNTED_H

#include "plan/pass.h"

struct box_counted {
    int64_t members;
    int64_t joints;
    int64_t screws;  /* in its joints */
    int64_t crown;   /* pieces of landing wood along its outline: how long, */
    int64_t landed;  /* and screws in them */
    int64_t panels;  /* of all its faces */
    int64_t longest; /* side of the box */
};

/* Facings of one face that are fixed at one time count together, with the first of them. */
struct facing_counted {
    int64_t first; /* the smallest key among those that are fixed together with this one */
    bool late;     /* a join or its nuts hold it back */
    int64_t panels;
    int64_t screws;
    int64_t longest; /* side of a panel */
};

struct join_counted {
    int64_t points;
    int64_t to_drill; /* of them: all that were not there before */
};

struct layer_counted {
    const struct edge *rows; /* its first stapled edge; NULL without any */
    int64_t pieces;
    int64_t area;                /* mm2, as cut */
    int64_t trimmed;             /* of padding, along an outline */
    int64_t longest;             /* side of what is cut */
    int64_t seam;                /* length of all seams */
    int64_t by_seam[SEAM_KINDS]; /* of it, by what it asks of the hands */
    int64_t boxing_corners;      /* that boxing turns */
    int64_t zips;
    int64_t edge;            /* stapled length */
    int64_t loose;           /* of it, what is stapled later */
    int64_t at_bench, later; /* staples by when they are placed */
    int64_t temporary;
    int64_t corners; /* corner folds: edges that have any */
    int64_t patches, slits;
    int64_t buttons;
    int64_t under_tufts; /* of a layer of foam: buttons of the deep field that is pulled into it */
    int64_t nails;
    int64_t strip;               /* length of a trim that comes as a strip */
    bool raw;                    /* a lining whose edge is left raw */
    const struct back_way *back; /* of an outside back, the one that is taken; else NULL */
};

struct stock_counted {
    int64_t parts;
    int64_t taken; /* of a roll: length that its pieces take */
};

/* Screws of one kind in one place: the frame of a box, the panels that are fixed together, a join,
 * a fitting. */
struct screw_lot {
    enum screw_use use;
    int64_t owner; /* key of the box, of the first facing, of the join, of the fitting */
    size_t kind;   /* into screw_kinds */
    int64_t count;
};

struct screw_lots {
    struct screw_lot *at; /* by use, owner and kind */
    size_t count;
};

/* Members of a box that are alike. */
struct member_lot {
    int64_t box;
    int64_t kind; /* enum member_word */
    int64_t stock;
    int64_t length;
    int64_t count;
};

struct member_lots {
    struct member_lot *at; /* by box and kind, the longest first */
    size_t count;
};

struct counted {
    struct box_counted *boxes;
    struct facing_counted *facings;
    struct join_counted *joins;
    struct layer_counted *layers;
    struct stock_counted *stocks;
    int64_t parts;
};

/* What of a layer waits for one join: at least one interval that is stapled after it. */
struct flap {
    int64_t layer, join;
    int64_t length;
    int64_t staples;
};

struct flaps {
    struct flap *at; /* by layer, then join */
    size_t count;
};

/* Ticks by the name of their step. */
struct ticked {
    const struct tick **at;
    size_t count;
};

/* Everything in the planning's arena. O(n log n). */
struct counted counted_make(const struct planning *planning);
struct flaps flaps_make(const struct planning *planning);
struct screw_lots screw_lots_make(const struct planning *planning, const struct counted *counted);
struct member_lots member_lots_make(const struct planning *planning);
struct ticked ticked_make(const struct planning *planning);

/* The part of the lots with this owner: *ret_count of them. O(log n). */
const struct screw_lot *screw_lots_of(const struct screw_lots *lots, enum screw_use use,
                                      int64_t owner, size_t *ret_count);
const struct member_lot *member_lots_of(const struct member_lots *lots, int64_t box,
                                        size_t *ret_count);

/* The latest tick of a step, NULL when it has none. O(log n). */
const struct tick *ticked_find(const struct ticked *ticked, const char *step);

/* The flap of a layer at a join, NULL when there is none. O(log n). */
const struct flap *flaps_find(const struct flaps *flaps, int64_t layer, int64_t join);

/* By key; an item that the model has not got counts nothing. Never NULL. */
const struct box_counted *counted_box(const struct planning *planning,
                                      const struct counted *counted, int64_t box);
const struct facing_counted *counted_facing(const struct planning *planning,
                                            const struct counted *counted, int64_t facing);
const struct join_counted *counted_join(const struct planning *planning,
                                        const struct counted *counted, int64_t join);
const struct layer_counted *counted_layer(const struct planning *planning,
                                          const struct counted *counted, int64_t layer);
const struct stock_counted *counted_stock(const struct planning *planning,
                                          const struct counted *counted, int64_t stock);

#endif
