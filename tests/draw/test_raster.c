/* Drawings made by hand, in character cells. */
#include "sketched.h"

#include "base/quantity.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* A face of 200 by 100, and areas on it. */
#define FACE           \
    {                  \
        0, 0, 200, 100 \
    }

static int begin(void **state)
{
    static struct sketched sketched;
    sketched_begin(&sketched);
    *state = &sketched;
    return 0;
}

static int end(void **state)
{
    sketched_end(*state);
    return 0;
}

static void draw(struct sketched *sketched, struct mark *marks, size_t count, int rows, int columns)
{
    struct drawing drawing = {.bounds = FACE};
    drawing.marks.at = marks;
    drawing.marks.count = count;
    sketched_raster(sketched, &drawing, rows, columns, RASTER_LINES);
}

static void a_face_keeps_its_shape_where_there_is_more_width(void **state)
{
    struct mark marks[] = {{MARK_FACE, FACE}};
    draw(*state, marks, 1, 6, 60);
    assert_sketched(*state, "┌───────────────────┐\n"
                            "│                   │\n"
                            "│                   │\n"
                            "│                   │\n"
                            "│                   │\n"
                            "└───────────────────┘\n");
}

static void a_face_keeps_its_shape_where_there_is_more_height(void **state)
{
    struct mark marks[] = {{MARK_FACE, FACE}};
    draw(*state, marks, 1, 40, 13);
    assert_sketched(*state, "┌───────────┐\n"
                            "│           │\n"
                            "│           │\n"
                            "└───────────┘\n");
}

static void lines_that_meet_are_joined(void **state)
{
    struct mark marks[] = {{MARK_FACE, FACE},
                           {MARK_PANEL, {0, 0, 100, 100}},
                           {MARK_PANEL, {100, 0, 200, 100}},
                           {MARK_MEMBER, {0, 40, 200, 60}}};
    draw(*state, marks, 4, 6, 21);
    assert_sketched(*state, "┌─────────┬─────────┐\n"
                            "│         │         │\n"
                            "├─────────┼─────────┤\n"
                            "├─────────┼─────────┤\n"
                            "│         │         │\n"
                            "└─────────┴─────────┘\n");
}

static void up_on_the_face_is_up_on_the_screen(void **state)
{
    struct mark marks[] = {{MARK_FACE, FACE}, {MARK_POINT, {40, 80, 40, 80}}};
    draw(*state, marks, 2, 6, 21);
    assert_sketched(*state, "┌───────────────────┐\n"
                            "│   o               │\n"
                            "│                   │\n"
                            "│                   │\n"
                            "│                   │\n"
                            "└───────────────────┘\n");
}

static void signs_lie_over_lines_and_points_over_all(void **state)
{
    struct mark marks[] = {{MARK_POINT, {100, 40, 100, 40}},
                           {MARK_PATCH, {80, 20, 120, 60}},
                           {MARK_OPEN, {0, 0, 60, 0}},
                           {MARK_PADDING, {160, 0, 160, 100}},
                           {MARK_FACE, FACE}};
    draw(*state, marks, 5, 6, 21);
    assert_sketched(*state, "┌───────────────:───┐\n"
                            "│               :   │\n"
                            "│       .....   :   │\n"
                            "│       ..o..   :   │\n"
                            "│       .....   :   │\n"
                            "=======─────────:───┘\n");
}

static void plain_characters_need_no_box_drawing(void **state)
{
    struct mark marks[] = {{MARK_FACE, FACE}, {MARK_MEMBER, {40, 0, 60, 100}}};
    struct drawing drawing = {.bounds = FACE};
    drawing.marks.at = marks;
    drawing.marks.count = 2;
    sketched_raster(*state, &drawing, 4, 13, RASTER_PLAIN);
    assert_sketched(*state, "+-+-+-------+\n"
                            "| | |       |\n"
                            "| | |       |\n"
                            "+-+-+-------+\n");
}

static void marks_that_reach_over_the_face_are_kept_inside(void **state)
{
    struct mark marks[] = {{MARK_FACE, FACE}, {MARK_PATCH, {-90, -90, 20, 20}}};
    draw(*state, marks, 2, 6, 21);
    assert_sketched(*state, "┌───────────────────┐\n"
                            "│                   │\n"
                            "│                   │\n"
                            "│                   │\n"
                            "...                 │\n"
                            "...─────────────────┘\n");
}

static void no_room_and_no_face_give_nothing(void **state)
{
    struct mark marks[] = {{MARK_FACE, FACE}};
    struct drawing flat = {.bounds = {0, 0, 200, 0}};
    static const int sizes[][2] = {{0, 0}, {2, 40}, {40, 2}, {-1, 5}};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        draw(*state, marks, 1, sizes[i][0], sizes[i][1]);
        assert_sketched(*state, "");
    }
    sketched_raster(*state, &flat, 10, 10, RASTER_LINES);
    assert_sketched(*state, "");
}

static void a_sliver_is_still_a_frame(void **state)
{
    struct mark marks[] = {{MARK_FACE, {0, 0, 30000, 10}}};
    struct drawing drawing = {.bounds = {0, 0, 30000, 10}};
    drawing.marks.at = marks;
    drawing.marks.count = 1;
    sketched_raster(*state, &drawing, 10, 12, RASTER_LINES);
    assert_sketched(*state, "┌──────────┐\n"
                            "│          │\n"
                            "└──────────┘\n");
}

/* The largest box there can be must not overflow on the way to cells. */
static void the_largest_box_is_drawn(void **state)
{
    int64_t large = INT64_C(100000) * LENGTH_MM;
    struct mark marks[] = {{MARK_FACE, {0, 0, large, large}}};
    struct drawing drawing = {.bounds = {0, 0, large, large}};
    drawing.marks.at = marks;
    drawing.marks.count = 1;
    sketched_raster(*state, &drawing, 4, 40, RASTER_LINES);
    assert_sketched(*state, "┌─────┐\n"
                            "│     │\n"
                            "│     │\n"
                            "└─────┘\n");
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(a_face_keeps_its_shape_where_there_is_more_width),
        FACT(a_face_keeps_its_shape_where_there_is_more_height),
        FACT(lines_that_meet_are_joined),
        FACT(up_on_the_face_is_up_on_the_screen),
        FACT(signs_lie_over_lines_and_points_over_all),
        FACT(plain_characters_need_no_box_drawing),
        FACT(marks_that_reach_over_the_face_are_kept_inside),
        FACT(no_room_and_no_face_give_nothing),
        FACT(a_sliver_is_still_a_frame),
        FACT(the_largest_box_is_drawn),
    };
    int failed = cmocka_run_group_tests_name("raster", tests, NULL, NULL);
    return failed ? 1 : 0;
}
