/*
 * A model in an arena, and a small build in it: two boxes joined, one of them faced and covered.
 */
#ifndef FIXTURE_H
#define FIXTURE_H

#include "base/arena.h"
#include "model/model.h"

struct fixture {
    struct arena arena;
    jmp_buf escape;
    struct model model;
};

/* cmocka's setup and teardown: an empty model whose build has key 1 and a name. */
int fixture_begin(void **state);
int fixture_end(void **state);
#define TEST(name) cmocka_unit_test_setup_teardown(name, fixture_begin, fixture_end)

/* For a test that calls what leaves through the arena's escape. */
#define FIXTURE_ARM(fixture)                          \
    do {                                              \
        (fixture)->arena.escape = &(fixture)->escape; \
        if (setjmp((fixture)->escape))                \
            fail_msg("memory is out");                \
    } while (0)

/* What the small build is made of, by key. */
struct small_build {
    int64_t stick, sheet, cloth;
    int64_t box_a, box_b;
    int64_t facing, layer, layer_edge, opening, tufting, member;
    int64_t join, wall_join, point;
};
struct small_build fixture_build(struct model *model);

#endif
