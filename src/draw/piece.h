/* The piece, or one box of it, as it is seen from one of its corners. */
#ifndef DRAW_PIECE_H
#define DRAW_PIECE_H

#include "draw/drawing.h"

/* The corner that is nearest, counted as one walks round the piece. */
enum corner {
    CORNER_FRONT_RIGHT,
    CORNER_BACK_RIGHT,
    CORNER_BACK_LEFT,
    CORNER_FRONT_LEFT,
    CORNER_COUNT
};

struct piece_ask {
    int64_t box;  /* this box alone; 0 for the piece */
    int64_t join; /* the boxes of this join alone, with its screws; 0 for none */
    enum corner corner;
    /* The piece: its boxes moved apart along their joins, and their wood shown. A box: its panels
     * and layers lifted off the frame. */
    bool apart;
    enum entity_kind chosen; /* what is marked: a box, facing, member, layer, join, point */
    int64_t key;             /* 0: nothing */
};

/* What a picture of an item is a picture of: a box, the two boxes of a join, else the piece. */
struct piece_ask piece_ask_of(const struct plan *plan, enum entity_kind kind, int64_t key);

/* The corner from which a side of a box is seen; where it cannot be (a bottom), any. */
enum corner piece_corner_of(const struct plan *plan, int64_t box, int64_t side);

/* "front right" */
const char *piece_corner_words(enum corner corner);

/*
 * An isometric view: lengths along the three axes of the room are as they are. The drawing lies in
 * `arena`, whose escape must be armed; empty where there is no box.
 */
void draw_piece(struct drawing *drawing, const struct plan *plan, const struct piece_ask *ask,
                struct arena *arena);

#endif
