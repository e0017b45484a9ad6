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
    int64_t panels;  /* all of it */
    int64_t longest; /* side of the box */
};

struct facing_counted {
    int64_t panels;
    int64_t screws;
    int64_t longest; /* side of a panel */
};

struct join_counted {
    int64_t points;
};

struct layer_counted {
    int64_t pieces;
    int64_t area;            /* mm2, as cut */
    int64_t longest;         /* side of what is cut */
    int64_t seam;            /* length of seams between widths */
    int64_t edge;            /* stapled length */
    int64_t at_bench, later; /* staples by when they are placed */
    int64_t temporary;
    int64_t corners; /* corner folds: edges that have any */
    int64_t patches, slits;
    int64_t buttons;
};

struct stock_counted {
    int64_t parts;
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

/* Everything in the planning's arena. O(n log n). */
struct counted counted_make(const struct planning *planning);
struct flaps flaps_make(const struct planning *planning);

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
