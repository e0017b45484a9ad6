/*
 * Mirrored pairs: which is the left one, and what is told of pairs that are not alike.
 */
#include "carpenter.h"

#include "base/text.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/mirror.h"
#include "plan/slices.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static int64_t ladder(struct carpenter *bench, const char *name, double width, double height)
{
    return carpenter_box(bench, name, FRAME_LADDER, (struct vector){IN(width), IN(1.5), IN(height)},
                         bench->stick_2x2);
}

struct wings {
    int64_t back, first, image;
};

/* A back with a wing at each end; the right one was entered first. */
static struct wings build_wings(struct carpenter *bench)
{
    struct wings wings = {ladder(bench, "C", 60, 40), ladder(bench, "W1", 12, 40),
                          ladder(bench, "W2", 12, 40)};

    carpenter_box_of(bench, wings.image)->mirror_of = wings.first;
    carpenter_join(bench, wings.back, SIDE_RIGHT, wings.first, SIDE_LEFT)->name = "J1";
    carpenter_join(bench, wings.back, SIDE_LEFT, wings.image, SIDE_RIGHT)->name = "J2";
    carpenter_face(bench, wings.first, SIDE_FRONT, bench->sheet_1_2)->width = IN(5);
    struct facing *facing = carpenter_face(bench, wings.image, SIDE_FRONT, bench->sheet_1_2);
    facing->u = IN(7);
    return wings;
}

static int twin_findings(const struct carpenter *bench)
{
    return carpenter_findings(bench, FINDING_TWIN_DIFFERS) +
           carpenter_findings(bench, FINDING_TWIN_LACKS) +
           carpenter_findings(bench, FINDING_TWIN_BEYOND);
}

static void assert_only_told(const struct carpenter *bench, int kind, const char *sentence)
{
    assert_int_equal(twin_findings(bench), 1);
    assert_told(bench, kind, sentence);
}

static void a_pair_has_a_left_and_a_right_one_as_it_stands(void **state)
{
    struct carpenter *bench = *state;
    struct wings wings = build_wings(bench);

    carpenter_plan(bench);
    assert_int_equal(plan_hand(bench->plan, wings.back), HAND_NONE);
    assert_int_equal(plan_hand(bench->plan, wings.first), HAND_RIGHT);
    assert_int_equal(plan_hand(bench->plan, wings.image), HAND_LEFT);
    assert_int_equal(plan_pose(bench->plan, wings.first)->twin, wings.image);
    assert_int_equal(plan_pose(bench->plan, wings.image)->twin, wings.first);
    assert_string_equal(plan_hand_word(plan_hand(bench->plan, wings.image)), "left");
}

static void a_pair_that_is_alike_is_not_told(void **state)
{
    struct carpenter *bench = *state;

    build_wings(bench);
    carpenter_plan(bench);
    assert_int_equal(twin_findings(bench), 0);
}

static void a_pair_of_two_heights_is_told(void **state)
{
    struct carpenter *bench = *state;
    struct wings wings = build_wings(bench);

    carpenter_box_of(bench, wings.image)->height = IN(39);
    carpenter_plan(bench);
    assert_only_told(bench, FINDING_TWIN_DIFFERS,
                     "W2 is the mirror of W1, but its height is 39 in, not 40 in");
}

static void two_left_wings_are_told(void **state)
{
    struct carpenter *bench = *state;

    build_wings(bench);
    bench->model.facings.at[1].u = 0;
    bench->model.facings.at[1].width = IN(5);
    carpenter_plan(bench);
    assert_only_told(bench, FINDING_TWIN_DIFFERS,
                     "W2 is the mirror of W1, but its u of panel of W2 is 0 in, not 7 in");
}

static void a_panel_that_only_one_of_a_pair_has_is_told(void **state)
{
    struct carpenter *bench = *state;
    struct wings wings = build_wings(bench);

    carpenter_face(bench, wings.first, SIDE_BACK, bench->sheet_1_2);
    carpenter_plan(bench);
    assert_only_told(bench, FINDING_TWIN_LACKS,
                     "W2 is the mirror of W1, but has no image of the panel of W1");
    bench->model.facings.at[2].box = wings.image;
    carpenter_plan(bench);
    assert_only_told(bench, FINDING_TWIN_BEYOND,
                     "W2 is the mirror of W1, which has no image of the panel of W2");
}

static void a_join_that_stands_otherwise_is_told(void **state)
{
    struct carpenter *bench = *state;

    build_wings(bench);
    bench->model.joins.at[1].offset_v = IN(2);
    carpenter_plan(bench);
    assert_only_told(bench, FINDING_TWIN_DIFFERS,
                     "W2 is the mirror of W1, but its offset v of J2 is 2 in, not 0 in");
}

/* ---- laid out ---- */

static void assert_mirrored(const struct solid *is, const struct solid *of, int64_t width)
{
    assert_int_equal(is->low.x, width - of->high.x);
    assert_int_equal(is->high.x, width - of->low.x);
    assert_int_equal(is->low.y, of->low.y);
    assert_int_equal(is->high.y, of->high.y);
    assert_int_equal(is->low.z, of->low.z);
    assert_int_equal(is->high.z, of->high.z);
}

/* Of the two, member by member and panel by panel in the order of their labels; how many supports
 * and crosses there were. */
static size_t compare_layouts(const struct plan *plan, int64_t first, int64_t image, int64_t width)
{
    struct slice of_first = plan_members_of(plan, first);
    struct slice of_image = plan_members_of(plan, image);
    struct slice panels = plan_panels_of(plan, first);
    struct slice panels_of_image = plan_panels_of(plan, image);
    size_t inner = 0;

    assert_int_equal(of_first.to - of_first.from, of_image.to - of_image.from);
    for (size_t i = 0; i < of_first.to - of_first.from; i++) {
        const struct plan_member *member = &plan->members.at[of_first.from + i];

        assert_mirrored(&plan->members.at[of_image.from + i].solid, &member->solid, width);
        inner += member->kind == MEMBER_SUPPORT || member->kind == MEMBER_CROSS;
    }
    assert_int_equal(panels.to - panels.from, panels_of_image.to - panels_of_image.from);
    for (size_t i = 0; i < panels.to - panels.from; i++)
        assert_mirrored(&plan->panels.at[panels_of_image.from + i].solid,
                        &plan->panels.at[panels.from + i].solid, width);
    return inner;
}

/* Long crates and broad ladders, with seams in their facings and supports that are set off from
 * each other: what stands left in the one stands right in the other. */
static void seams_and_supports_of_an_image_are_those_of_its_twin_turned_round(void **state)
{
    static const double widths[] = {52, 90.3, 100, 131.7, 200};
    struct carpenter *bench = *state;

    for (enum frame_word frame = FRAME_LADDER; frame <= FRAME_CRATE; frame++)
        for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
            struct vector size = {IN(widths[i]), frame == FRAME_CRATE ? IN(20) : IN(2), IN(60)};
            int64_t first = carpenter_box(bench, "A", frame, size, bench->stick_2x2);
            int64_t image = carpenter_box(bench, "B", frame, size, bench->stick_2x2);

            carpenter_box_of(bench, image)->mirror_of = first;
            carpenter_face(bench, first, SIDE_FRONT, bench->sheet_1_2)->height = IN(22);
            carpenter_face(bench, first, SIDE_FRONT, bench->sheet_1_2)->v = IN(22);
            carpenter_face(bench, image, SIDE_FRONT, bench->sheet_1_2)->height = IN(22);
            carpenter_face(bench, image, SIDE_FRONT, bench->sheet_1_2)->v = IN(22);
            if (frame == FRAME_CRATE) {
                carpenter_face(bench, first, SIDE_LEFT, bench->sheet_1_2);
                carpenter_face(bench, image, SIDE_RIGHT, bench->sheet_1_2);
                carpenter_face(bench, first, SIDE_TOP, bench->sheet_3_4)->use = USE_SEAT;
                carpenter_face(bench, image, SIDE_TOP, bench->sheet_3_4)->use = USE_SEAT;
            }
            carpenter_plan(bench);
            assert_int_equal(twin_findings(bench), 0);
            assert_true(compare_layouts(bench->plan, first, image, size.x) > 0);
        }
}

/* ---- images ---- */

static void sides_and_edges_are_exchanged_along_the_axis_only(void **state)
{
    (void)state;
    assert_int_equal(mirror_side(SIDE_LEFT, AXIS_X), SIDE_RIGHT);
    assert_int_equal(mirror_side(SIDE_FRONT, AXIS_X), SIDE_FRONT);
    assert_int_equal(mirror_side(SIDE_FRONT, AXIS_Y), SIDE_BACK);
    assert_int_equal(mirror_edge(SIDE_FRONT, EDGE_LEFT, AXIS_X), EDGE_RIGHT);
    assert_int_equal(mirror_edge(SIDE_FRONT, EDGE_TOP, AXIS_X), EDGE_TOP);
    assert_int_equal(mirror_edge(SIDE_LEFT, EDGE_LEFT, AXIS_X), EDGE_LEFT);
}

/* A seat 20 in wide and 16 deep, its left side against the front of a 60 in back: seen from the
 * other end of the back it reaches on by its depth. */
static void an_offset_is_counted_from_the_other_end_of_a_box_that_is_turned(void **state)
{
    struct carpenter *bench = *state;
    int64_t back = ladder(bench, "B1", 60, 40);
    int64_t image_of_back = ladder(bench, "B2", 60, 40);
    int64_t seat = carpenter_box(bench, "S", FRAME_CRATE, (struct vector){IN(20), IN(16), IN(12)},
                                 bench->stick_2x2);
    struct join *join = carpenter_join(bench, back, SIDE_FRONT, seat, SIDE_LEFT);
    struct join image = *join;

    join->offset_u = IN(5);
    join->offset_v = IN(3);
    image.offset_v = IN(3);
    assert_true(mirror_join(&bench->model, join, back, image_of_back, AXIS_X, &image));
    assert_int_equal(image.box_a, image_of_back);
    assert_int_equal(image.offset_u, IN(60 - 5 - 16));
    assert_int_equal(image.offset_v, IN(3));
    join->side_b = SIDE_BACK;
    assert_true(mirror_join(&bench->model, join, back, image_of_back, AXIS_X, &image));
    assert_int_equal(image.offset_u, IN(60 - 5 - 20));
}

static void a_lean_to_the_side_is_turned_round_and_one_to_the_back_is_not(void **state)
{
    struct box box = {.lean_axis = AXIS_X, .lean = 8000};

    (void)state;
    mirror_box(&box);
    assert_int_equal(box.lean, 8000);
    box.lean_axis = AXIS_Y;
    mirror_box(&box);
    assert_int_equal(box.lean, -8000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WOOD_TEST(a_pair_has_a_left_and_a_right_one_as_it_stands),
        WOOD_TEST(a_pair_that_is_alike_is_not_told),
        WOOD_TEST(a_pair_of_two_heights_is_told),
        WOOD_TEST(two_left_wings_are_told),
        WOOD_TEST(a_panel_that_only_one_of_a_pair_has_is_told),
        WOOD_TEST(a_join_that_stands_otherwise_is_told),
        WOOD_TEST(seams_and_supports_of_an_image_are_those_of_its_twin_turned_round),
        cmocka_unit_test(sides_and_edges_are_exchanged_along_the_axis_only),
        WOOD_TEST(an_offset_is_counted_from_the_other_end_of_a_box_that_is_turned),
        cmocka_unit_test(a_lean_to_the_side_is_turned_round_and_one_to_the_back_is_not),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
