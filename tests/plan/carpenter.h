/*
 * A bench for tests of the wood: stocks as the worked examples have them, boxes and facings in
 * inches, and counts of what the plan made of them.
 */
#ifndef CARPENTER_H
#define CARPENTER_H

#include "../base/inch.h"
#include "base/arena.h"
#include "model/model.h"
#include "plan/plan.h"

#define MM(mm) ((int64_t)((mm)*320.0))

struct carpenter {
    struct arena facts, made;
    jmp_buf escape;
    struct model model;
    const struct plan *plan;
    int64_t stick_2x2, stick_2x3, sheet_1_2, sheet_3_4;
};

/* cmocka's setup and teardown: #8 screws of 1-1/4 and 3 in, half-inch and 3/4 sheets of 48 x 96. */
int carpenter_begin(void **state);
int carpenter_end(void **state);
#define WOOD_TEST(name) cmocka_unit_test_setup_teardown(name, carpenter_begin, carpenter_end)

int64_t carpenter_stock(struct carpenter *bench, const char *name, enum stock_word kind,
                        int64_t thickness, int64_t width);
int64_t carpenter_screw(struct carpenter *bench, int64_t gauge, int64_t length);

/* The key of a new box; sizes in 1/320 mm. */
int64_t carpenter_box(struct carpenter *bench, const char *name, enum frame_word frame,
                      struct vector size, int64_t stick);
struct box *carpenter_box_of(struct carpenter *bench, int64_t box);

/* A facing that reaches the rest of its face. The pointer holds until the next one. */
struct facing *carpenter_face(struct carpenter *bench, int64_t box, enum side_word side,
                              int64_t stock);
/* A member by hand; the pointer holds until the next one. */
struct member *carpenter_member(struct carpenter *bench, int64_t box, enum member_word kind,
                                enum axis_word axis, struct vector at, int64_t length);
struct join *carpenter_join(struct carpenter *bench, int64_t a, enum side_word side_a, int64_t b,
                            enum side_word side_b);

void carpenter_plan(struct carpenter *bench);

int64_t carpenter_joints(const struct carpenter *bench, int64_t box);
int64_t carpenter_screws(const struct carpenter *bench, int64_t box, enum screw_use use);
int64_t carpenter_panel_screws(const struct carpenter *bench, int64_t facing);
int carpenter_findings(const struct carpenter *bench, int kind);
const struct plan_member *carpenter_labelled(const struct carpenter *bench, const char *label);

/* What every screw with that use is called; there is one. */
void assert_screws_called(const struct carpenter *bench, enum screw_use use, const char *called);

/* The sentence of the only finding of a kind. */
void assert_told(const struct carpenter *bench, int kind, const char *sentence);
void assert_solid(const struct solid *solid, struct vector low, struct vector high);

#endif
