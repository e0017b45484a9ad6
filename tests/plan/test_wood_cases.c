/*
 * The wood of three worked examples, computed by hand: wing headboard, tufted ottoman, banquette.
 */
#include "carpenter.h"

#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* ---- wing headboard ---- */

struct headboard {
    int64_t centre, wing;
    int64_t upper, lower[2], wing_faces[2];
};

static int64_t add_centre(struct carpenter *bench)
{
    int64_t box = carpenter_box(bench, "C", FRAME_LADDER, (struct vector){IN(63), IN(3), IN(56)},
                                bench->stick_2x3);
    static const double studs[] = {20.5, 41};
    static const double blocks[] = {15.375, 30.75, 46.125};

    carpenter_box_of(bench, box)->supports = MAKING_HAND;
    carpenter_member(bench, box, MEMBER_RAIL, AXIS_X, (struct vector){0, 0, IN(7.25)}, 0);
    for (size_t i = 0; i < 2; i++)
        carpenter_member(bench, box, MEMBER_UPRIGHT, AXIS_Z,
                         (struct vector){IN(studs[i]), 0, IN(8.75)}, 0);
    for (size_t i = 0; i < 3; i++)
        carpenter_member(bench, box, MEMBER_BLOCK, AXIS_Z,
                         (struct vector){IN(blocks[i]), 0, IN(1.5)}, 0);
    return box;
}

static int64_t add_wing(struct carpenter *bench)
{
    int64_t box = carpenter_box(bench, "L", FRAME_LADDER,
                                (struct vector){IN(3.5), IN(11.875), IN(56)}, bench->stick_2x3);

    carpenter_box_of(bench, box)->supports = MAKING_HAND;
    carpenter_box_of(bench, box)->main_side = SIDE_RIGHT;
    carpenter_member(bench, box, MEMBER_RAIL, AXIS_Y, (struct vector){IN(0.5), 0, IN(27.25)}, 0);
    return box;
}

static struct headboard make_headboard(struct carpenter *bench)
{
    struct headboard made = {.centre = add_centre(bench), .wing = add_wing(bench)};
    struct facing *facing = carpenter_face(bench, made.centre, SIDE_FRONT, bench->sheet_1_2);

    facing->v = IN(8);
    made.upper = facing->key;
    for (int i = 0; i < 2; i++) {
        facing = carpenter_face(bench, made.centre, SIDE_FRONT, bench->sheet_1_2);
        facing->u = i * IN(31.5);
        facing->width = IN(31.5);
        facing->height = IN(8);
        made.lower[i] = facing->key;
        made.wing_faces[i] =
            carpenter_face(bench, made.wing, i ? SIDE_RIGHT : SIDE_LEFT, bench->sheet_1_2)->key;
    }
    carpenter_plan(bench);
    return made;
}

static void headboard_has_the_members_of_the_example(void **state)
{
    struct carpenter *bench = *state;
    static const struct {
        const char *label;
        double length, x, z;
    } wanted[] = {{"C1", 56, 0, 0},          {"C2", 56, 61.5, 0},       {"C3", 60, 1.5, 0},
                  {"C4", 60, 1.5, 54.5},     {"C5", 60, 1.5, 7.25},     {"C6", 45.75, 20.5, 8.75},
                  {"C7", 45.75, 41, 8.75},   {"C8", 5.75, 15.375, 1.5}, {"C9", 5.75, 30.75, 1.5},
                  {"C10", 5.75, 46.125, 1.5}};

    make_headboard(bench);
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) {
        const struct plan_member *member = carpenter_labelled(bench, wanted[i].label);

        assert_int_equal(member->length, IN(wanted[i].length));
        assert_int_equal(member->solid.low.x, IN(wanted[i].x));
        assert_int_equal(member->solid.low.z, IN(wanted[i].z));
        assert_int_equal(member->solid.low.y, 0);
        assert_int_equal(member->solid.high.y, IN(2.5));
    }
    assert_int_equal(carpenter_labelled(bench, "L3")->length, IN(8.875));
    assert_int_equal(carpenter_labelled(bench, "L5")->length, IN(8.875));
    assert_int_equal(bench->plan->members.count, 15);
}

/* With the right wing, its mirror image: 16 + 6 + 6 = 28 joints and 56 screws. */
static void headboard_has_28_joints_with_two_screws_each(void **state)
{
    struct carpenter *bench = *state;
    struct headboard made = make_headboard(bench);

    assert_int_equal(carpenter_joints(bench, made.centre), 16);
    assert_int_equal(carpenter_joints(bench, made.wing), 6);
    assert_int_equal(carpenter_screws(bench, made.centre, SCREW_FRAME) +
                         2 * carpenter_screws(bench, made.wing, SCREW_FRAME),
                     56);
    assert_screws_called(bench, SCREW_FRAME, "#8 x 3 in");
}

static void headboard_has_126_panel_screws(void **state)
{
    struct carpenter *bench = *state;
    struct headboard made = make_headboard(bench);
    int64_t wing = 0;

    for (int i = 0; i < 2; i++) {
        assert_int_equal(carpenter_panel_screws(bench, made.lower[i]), 10);
        assert_int_equal(carpenter_panel_screws(bench, made.wing_faces[i]), 18);
        wing += carpenter_panel_screws(bench, made.wing_faces[i]);
    }
    assert_int_equal(carpenter_panel_screws(bench, made.upper), 34);
    assert_int_equal(carpenter_screws(bench, made.centre, SCREW_PANEL) + 2 * wing, 126);
    assert_screws_called(bench, SCREW_PANEL, "#8 x 1-1/4 in");
}

static void headboard_seams_lie_on_wood_and_no_screws_meet(void **state)
{
    struct carpenter *bench = *state;

    make_headboard(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_SEAM_BEARING), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_SPAN), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_MEET), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_NEAR), 0);
}

/* ---- tufted ottoman ---- */

static int64_t make_ottoman(struct carpenter *bench)
{
    int64_t box = carpenter_box(bench, "B", FRAME_CRATE, (struct vector){IN(36), IN(24), IN(8)},
                                bench->stick_2x2);

    carpenter_box_of(bench, box)->through = THROUGH_RAILS;
    carpenter_box_of(bench, box)->supports = MAKING_HAND;
    carpenter_box_of(bench, box)->crosses = MAKING_HAND;
    carpenter_member(bench, box, MEMBER_CROSS, AXIS_Y, (struct vector){IN(15.5), 0, IN(6.5)}, 0);
    for (int64_t side = SIDE_FRONT; side <= SIDE_RIGHT; side++) {
        struct facing *facing = carpenter_face(bench, box, (enum side_word)side, bench->sheet_1_2);

        facing->use = USE_STRUCTURE;
        facing->glued = 0;
    }
    carpenter_plan(bench);
    return box;
}

static void ottoman_base_has_18_joints_with_one_screw_each(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = make_ottoman(bench);

    assert_int_equal(carpenter_joints(bench, box), 18);
    assert_int_equal(carpenter_screws(bench, box, SCREW_FRAME), 18);
    assert_screws_called(bench, SCREW_FRAME, "#8 x 3 in");
}

static void ottoman_base_has_the_members_of_the_example(void **state)
{
    struct carpenter *bench = *state;
    int rails = 0;
    int crosses = 0;
    int posts = 0;

    make_ottoman(bench);
    for (size_t i = 0; i < bench->plan->members.count; i++) {
        const struct plan_member *member = &bench->plan->members.at[i];

        rails += member->kind == MEMBER_RAIL && member->length == IN(35);
        crosses += member->kind == MEMBER_CROSS && member->length == IN(20);
        posts += member->kind == MEMBER_UPRIGHT && member->length == IN(5);
    }
    assert_int_equal(rails, 4);
    assert_int_equal(crosses, 5);
    assert_int_equal(posts, 4);
    assert_int_equal(bench->plan->members.count, 13);
}

static void ottoman_skins_take_48_screws(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = make_ottoman(bench);

    assert_int_equal(carpenter_screws(bench, box, SCREW_PANEL), 48);
    assert_screws_called(bench, SCREW_PANEL, "#8 x 1-1/4 in");
}

/* ---- banquette ---- */

struct banquette {
    int64_t a, b, front_a, front_b, end_a;
};

static int64_t add_seat_box(struct carpenter *bench, const char *name, double width)
{
    int64_t box = carpenter_box(bench, name, FRAME_CRATE,
                                (struct vector){IN(width), IN(18), IN(14.25)}, bench->stick_2x2);

    carpenter_box_of(bench, box)->through = THROUGH_RAILS;
    return box;
}

static int64_t add_skin(struct carpenter *bench, int64_t box, enum side_word side)
{
    struct facing *facing = carpenter_face(bench, box, side, bench->sheet_1_2);

    facing->use = USE_STRUCTURE;
    facing->glued = 0;
    return facing->key;
}

/* Rails of 84 and 42 in with an end panel beyond them: boxes of 84-1/2 and 42-1/2. */
static struct banquette make_banquette(struct carpenter *bench)
{
    struct banquette made = {.a = add_seat_box(bench, "A", 84.5),
                             .b = add_seat_box(bench, "B", 42.5)};

    made.front_a = add_skin(bench, made.a, SIDE_FRONT);
    made.end_a = add_skin(bench, made.a, SIDE_RIGHT);
    made.front_b = add_skin(bench, made.b, SIDE_FRONT);
    add_skin(bench, made.b, SIDE_RIGHT);
    carpenter_plan(bench);
    return made;
}

static void banquette_has_42_and_28_frame_screws(void **state)
{
    struct carpenter *bench = *state;
    struct banquette made = make_banquette(bench);

    assert_int_equal(carpenter_screws(bench, made.a, SCREW_FRAME), 42);
    assert_int_equal(carpenter_screws(bench, made.b, SCREW_FRAME), 28);
    assert_screws_called(bench, SCREW_FRAME, "#8 x 3 in");
}

static void banquette_skins_take_38_and_22_screws(void **state)
{
    struct carpenter *bench = *state;
    struct banquette made = make_banquette(bench);

    assert_int_equal(carpenter_panel_screws(bench, made.front_a), 38);
    assert_int_equal(carpenter_panel_screws(bench, made.front_b), 22);
}

/* The example counts 12 for an end panel, four of them up and down where no wood touches it: the
 * uprights stand one stick in from the end. Along the two crosses that lie flush with it there are
 * four each. */
static void end_panel_takes_8_screws_where_wood_stands(void **state)
{
    struct carpenter *bench = *state;
    struct banquette made = make_banquette(bench);

    assert_int_equal(carpenter_panel_screws(bench, made.end_a), 8);
}

static int count_kind(const struct carpenter *bench, int64_t box, int64_t kind, int64_t length)
{
    int count = 0;

    for (size_t i = 0; i < bench->plan->members.count; i++) {
        const struct plan_member *member = &bench->plan->members.at[i];

        if (member->box == box && member->kind == kind) {
            assert_int_equal(member->length, length);
            count++;
        }
    }
    return count;
}

static void banquette_has_the_members_of_the_example(void **state)
{
    struct carpenter *bench = *state;
    struct banquette made = make_banquette(bench);

    assert_int_equal(count_kind(bench, made.a, MEMBER_RAIL, IN(84)), 4);
    assert_int_equal(count_kind(bench, made.a, MEMBER_UPRIGHT, IN(11.25)), 12);
    assert_int_equal(count_kind(bench, made.a, MEMBER_CROSS, IN(14.5)), 9);
    assert_int_equal(count_kind(bench, made.b, MEMBER_RAIL, IN(42)), 4);
    assert_int_equal(count_kind(bench, made.b, MEMBER_UPRIGHT, IN(11.25)), 8);
    assert_int_equal(count_kind(bench, made.b, MEMBER_CROSS, IN(14.5)), 6);
}

/* Stations of A are 16.8 in apart. */
static void crosses_stand_beside_their_uprights_away_from_the_nearer_end(void **state)
{
    struct carpenter *bench = *state;
    static const double uprights[] = {1.5, 16.05, 32.85, 49.65, 66.45, 81};
    static const double crosses[] = {0, 17.55, 34.35, 48.15, 64.95, 82.5};

    make_banquette(bench);
    for (size_t i = 0; i < 6; i++) {
        const struct plan_member *upright = &bench->plan->members.at[4 + 2 * i];
        const struct plan_member *cross = &bench->plan->members.at[16 + i];

        assert_int_equal(upright->kind, MEMBER_UPRIGHT);
        assert_int_equal(cross->kind, MEMBER_CROSS);
        assert_in_range(upright->solid.low.x - IN(uprights[i]) + 1, 0, 2);
        assert_in_range(cross->solid.low.x - IN(crosses[i]) + 1, 0, 2);
        assert_int_equal(upright->solid.high.x - upright->solid.low.x, IN(1.5));
    }
}

static void screws_at_a_node_stay_clear(void **state)
{
    struct carpenter *bench = *state;

    make_banquette(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_MEET), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_NEAR), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WOOD_TEST(headboard_has_the_members_of_the_example),
        WOOD_TEST(headboard_has_28_joints_with_two_screws_each),
        WOOD_TEST(headboard_has_126_panel_screws),
        WOOD_TEST(headboard_seams_lie_on_wood_and_no_screws_meet),
        WOOD_TEST(ottoman_base_has_18_joints_with_one_screw_each),
        WOOD_TEST(ottoman_base_has_the_members_of_the_example),
        WOOD_TEST(ottoman_skins_take_48_screws),
        WOOD_TEST(banquette_has_42_and_28_frame_screws),
        WOOD_TEST(banquette_skins_take_38_and_22_screws),
        WOOD_TEST(end_panel_takes_8_screws_where_wood_stands),
        WOOD_TEST(banquette_has_the_members_of_the_example),
        WOOD_TEST(crosses_stand_beside_their_uprights_away_from_the_nearer_end),
        WOOD_TEST(screws_at_a_node_stay_clear),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
