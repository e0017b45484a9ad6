/*
 * What things weigh, by what they are made of. All masses are in milligrams.
 *
 * Formula weight.part: a part weighs its volume or area times the density of its stock; where the
 * stock names none, the trade value (`wood.density.soft`, `sheet.density`, `foam.density.seat`,
 * `cloth.area_mass`, ...). Screws, staples and glue are the share `fixings.mass` of the wood.
 * Layers sewn or stapled over several boxes are weighed on the box that they were cut for. Nothing
 * is estimated from a picture: cut-outs and outlines count as the rectangle round them, so that a
 * figure errs on the heavy side.
 */
#ifndef PLAN_WEIGHT_H
#define PLAN_WEIGHT_H

#include "plan/plan.h"

#define WEIGHTS(W)                          \
    W(STICKS, "sticks", true)               \
    W(PANELS, "panels", true)               \
    W(FIXINGS, "fixings", true)             \
    W(FOAM, "foam", false)                  \
    W(BATTING, "batting", false)            \
    W(CLOTH, "cover, lining, backs", false) \
    W(LOOSE, "loose panels, lifted off", true)

enum weight_kind {
#define WEIGHT_ENUM(name, word, bare) WEIGHT_##name,
    WEIGHTS(WEIGHT_ENUM)
#undef WEIGHT_ENUM
        WEIGHT_KINDS
};

struct weight {
    int64_t of[WEIGHT_KINDS];
};

const char *weight_word(enum weight_kind kind);

int64_t weight_of_member(const struct plan *plan, const struct plan_member *member);
int64_t weight_of_panel(const struct plan *plan, const struct panel *panel);

/* A piece of cloth, batting or foam as it is cut; 0 of a layer that the model does not have. */
int64_t weight_of_piece(const struct plan *plan, const struct piece *piece);

/* Which of the kinds a piece counts to. */
enum weight_kind weight_kind_of_piece(const struct plan *plan, const struct piece *piece);

/* Fixings that go with so much wood. */
int64_t weight_of_fixings(const struct plan *plan, int64_t wood);

/* Fills one weight for each of the model's boxes, in their order. Needs the panel, frame and cover
 * passes. O(parts x log boxes). */
void weight_boxes(const struct plan *plan, struct weight *ret_weights);

/* The wood with its fixings, and all of it; neither with panels that lie loose, which are carried
 * by themselves. */
int64_t weight_bare(const struct weight *weight);
int64_t weight_finished(const struct weight *weight);

#endif
