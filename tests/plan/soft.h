/*
 * Small builds for tests of the cover pass: materials, boxes and layers in inches, and what came
 * out of them.
 */
#ifndef SOFT_H
#define SOFT_H

#include "../base/inch.h"
#include "base/arena.h"
#include "model/model.h"
#include "plan/plan.h"

struct soft {
    struct arena facts, arena;
    jmp_buf escape;
    struct model model;
    const struct plan *plan;
    int64_t cloth, lining, foam2, foam3, foam4, batting; /* keys of stocks */
};

/* cmocka's setup and teardown: 54 in cloth, 60 in lining, foam in 24 x 72 slabs, 48 in batting. */
int soft_begin(void **state);
int soft_end(void **state);
#define SOFT_TEST(name) cmocka_unit_test_setup_teardown(name, soft_begin, soft_end)

/* Keys of new items. A box of 3/4 in and less is a board. */
int64_t soft_box(struct soft *soft, const char *name, double width, double depth, double height);
/* A stick or a sheet to frame and face boxes with. */
int64_t soft_wood(struct soft *soft, enum stock_word kind, double thickness, double width);
int64_t soft_layer(struct soft *soft, int64_t box, enum layer_word kind, enum shape_word shape,
                   enum side_word side, int64_t stock);
struct layer *soft_layer_of(struct soft *soft, int64_t layer);
void soft_endings(struct soft *soft, int64_t layer, enum ending_word left, enum ending_word right,
                  enum ending_word top, enum ending_word bottom);
void soft_edge_class(struct soft *soft, int64_t layer, enum edge_word edge, enum class_word class);

/* A cover over the front of a box of its own, 3 in deep. */
int64_t soft_front_cover(struct soft *soft, double width, double height);
/* A panel over a side of a box. */
void soft_panel(struct soft *soft, int64_t box, enum side_word side, int64_t sheet);

/* The 54 in cloth. */
struct stock *soft_cloth(struct soft *soft);

/* Foam, batting down the sides and a cover round all sides of one face: the cover. */
int64_t soft_upholster(struct soft *soft, int64_t box, enum side_word side, int64_t foam);

/* A padded wing: batting and a sleeve open at its back and below. Gives the sleeve. */
int64_t soft_wing(struct soft *soft, const char *name, enum side_word side, int64_t *ret_batting);

/* Plans the model anew. */
void soft_plan(struct soft *soft);

const struct cover *soft_cover(const struct soft *soft, int64_t layer);
size_t soft_piece_count(const struct soft *soft, int64_t layer);
/* The nth piece of a layer with that name; NULL when there are fewer. */
const struct piece *soft_piece(const struct soft *soft, int64_t layer, const char *name, int nth);
/* Where the left edge of a piece lies across its roll. */
int64_t soft_across(const struct soft *soft, const struct piece *piece);
int64_t soft_staples(const struct soft *soft, int64_t layer);
int64_t soft_temporary(const struct soft *soft, int64_t layer);
/* The nth stapled edge of a layer; NULL when there are fewer. */
const struct edge *soft_edge(const struct soft *soft, int64_t layer, int nth);
int64_t soft_used(const struct soft *soft, int64_t layer, enum stock_word kind);
int soft_findings(const struct soft *soft, int kind);
/* The first finding of a kind; NULL where it is not told. */
const struct finding *soft_finding(const struct soft *soft, int kind);
/* The first step of a kind; NULL when there is none. */
const struct step *soft_step(const struct soft *soft, int kind);
/* Whether a line of any step of a kind has these words. */
bool soft_says(const struct soft *soft, int kind, const char *words);

void assert_cut(const struct soft *soft, int64_t layer, double width, double height);
void assert_piece(const struct piece *piece, double width, double height);

#endif
