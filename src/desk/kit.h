/*
 * What starter pieces are put together from: stock as it is usually sold, and boxes, panels, layers
 * and joins with their usual settings.
 */
#ifndef DESK_KIT_H
#define DESK_KIT_H

#include "model/model.h"

#define KIT_IN(inch) ((int64_t)((inch)*8128.0))
#define KIT_MM(mm) ((int64_t)((mm)*320.0))

enum kit_stock_name {
    KIT_STUD,         /* 2x3 */
    KIT_SQUARE,       /* 2x2 */
    KIT_THIN_PANEL,   /* 1/2 in */
    KIT_THICK_PANEL,  /* 3/4 in */
    KIT_THIN_FOAM,    /* 2 in */
    KIT_THICK_FOAM,   /* 3 in */
    KIT_CUSHION_FOAM, /* 4 in */
    KIT_BATTING,
    KIT_COVER,
    KIT_LINING,
    KIT_LONG_SCREW,  /* #8 x 3 */
    KIT_PANEL_SCREW, /* #8 x 1-1/4 */
    KIT_DECK_SCREW,  /* #8 x 1-1/2, through 3/4 in */
    KIT_JOIN_SCREW,  /* #10 x 3 */
    KIT_DEEP_SCREW,  /* #10 x 4, through the wide side of a stick */
    KIT_STAPLE,
    KIT_SPRAY,
    KIT_GLUE,
    KIT_THREAD,
    KIT_STITCHING,  /* strong thread, for what is closed by hand */
    KIT_CARD,       /* card strip, for the blind top of a back */
    KIT_TACK_STRIP, /* metal strip with points, for its sides */
    KIT_STOCKS
};

struct kit {
    struct model *draft;
    enum units units;
    int64_t stock[KIT_STOCKS]; /* keys in the draft's workshop, 0 until asked for */
};

void kit_open(struct kit *kit, struct model *draft);

/*
 * The key of a stock: one of the workshop of the same kind and sizes, for cloth and glue any of the
 * kind; where there is none it is added, without an offer, since its price is not known.
 */
int64_t kit_stock(struct kit *kit, enum kit_stock_name name);

void kit_trade(struct kit *kit, const char *name, const char *value); /* for this build alone */

int64_t kit_pick(const struct kit *kit, int64_t inch, int64_t mm); /* by the build's units */

/* Each adds one item and gives its key, or the item where more is to be set; it is good until the
 * next item of its kind. The screws, glue, staples, thread and strips that go with it
 * become stock too. kit_layer
 * is for everything but foam. */
struct box *kit_box(struct kit *kit, const char *name, enum frame_word frame,
                    const int64_t size[3]);
struct box *kit_framed(struct kit *kit, const char *name, enum frame_word frame,
                       enum kit_stock_name stick, const int64_t size[3]);
struct facing *kit_facing(struct kit *kit, int64_t box, enum side_word side,
                          enum kit_stock_name stock, enum use_word use);
struct layer *kit_layer(struct kit *kit, int64_t box, enum layer_word kind, enum shape_word shape,
                        enum side_word side);
struct layer *kit_foam(struct kit *kit, int64_t box, enum side_word side,
                       enum kit_stock_name stock);
void kit_endings(struct layer *layer, const enum ending_word endings[4]); /* by enum edge_word */
struct join *kit_join(struct kit *kit, const char *name, int64_t box_a, enum side_word side_a,
                      int64_t box_b, enum side_word side_b);

/* Foam, batting and a wrapped cover on a face, fixed behind it or, on a board, underneath. */
void kit_upholster(struct kit *kit, int64_t box, enum side_word side, enum kit_stock_name foam);

#endif
