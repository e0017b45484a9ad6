/*
 * The order in which members are set. That a screw needs a driver behind its head is geometry; the
 * lengths of tools are common practice, no source.
 */
#include "carpenter.h"
#include "dice.h"

#include "plan/findings.h"
#include "plan/geometry.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* A ladder of 2x3 by hand, 60 x 40, with a rail across it at a height. */
static int64_t ladder_with_rail(struct carpenter *bench, double z)
{
    int64_t box = carpenter_box(bench, "C", FRAME_LADDER, (struct vector){IN(60), IN(2.5), IN(40)},
                                bench->stick_2x3);

    carpenter_box_of(bench, box)->supports = MAKING_HAND;
    carpenter_member(bench, box, MEMBER_RAIL, AXIS_X, (struct vector){0, 0, IN(z)}, 0);
    return box;
}

static void add_post(struct carpenter *bench, int64_t box, double x, double z, const char *name)
{
    struct member *post =
        carpenter_member(bench, box, MEMBER_SUPPORT, AXIS_Z, (struct vector){IN(x), 0, IN(z)}, 0);

    post->name = name;
}

/* Of the wing headboard: the studs' screws come up through the seam rail, out of a bay of 5-3/4 in
 * that the bottom rail shuts; with it in place not even a stubby driver (3 + 3 in) gets in. */
static void a_rail_that_shuts_a_bay_is_set_after_the_screws_in_it(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = ladder_with_rail(bench, 7.25);

    add_post(bench, box, 29, 8.75, "stud");
    carpenter_plan(bench);
    int stud = carpenter_labelled(bench, "stud")->turn;
    int seam_rail = carpenter_labelled(bench, "C5")->turn;
    int bottom_rail = carpenter_labelled(bench, "C3")->turn;
    assert_true(bottom_rail > stud && bottom_rail > seam_rail);
    assert_int_equal(carpenter_findings(bench, FINDING_FRAME_SHUT), 0);
    assert_true(bench->plan->frame_waits.count > 0);
}

static void the_card_of_the_frame_says_what_is_screwed_first(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = ladder_with_rail(bench, 7.25);
    const struct step *step = NULL;

    add_post(bench, box, 29, 8.75, "stud");
    carpenter_plan(bench);
    for (size_t i = 0; i < bench->plan->steps.count; i++)
        if (strncmp(bench->plan->steps.at[i].name, "frame:", 6) == 0)
            step = &bench->plan->steps.at[i];
    assert_non_null(step);
    assert_string_equal(step->actions[step->action_count - 1], "Before C3 is on, screw C5 to stud");
}

/* In a bay of 18 in the plain driver (10 + 3 in) fits: nothing has to wait. */
static void a_wide_bay_makes_nothing_wait(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = ladder_with_rail(bench, 19.5);

    add_post(bench, box, 29, 21, "stud");
    carpenter_plan(bench);
    assert_int_equal(bench->plan->frame_waits.count, 0);
    for (size_t i = 0; i < bench->plan->members.count; i++)
        assert_int_equal(bench->plan->members.at[i].turn, i + 1);
}

/* A long bit and its driver are longer than a plain driver, which 14-1/2 in have room for. */
static void nothing_waits_for_a_tool_that_is_not_needed(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = ladder_with_rail(bench, 16);

    add_post(bench, box, 29, 17.5, "stud");
    carpenter_plan(bench);
    assert_int_equal(bench->plan->frame_waits.count, 0);
}

/* Each would cover the other's heads. */
static void posts_in_one_line_can_be_screwed_in_no_order(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = ladder_with_rail(bench, 19);

    add_post(bench, box, 29, 20.5, "upper");
    add_post(bench, box, 29, 1.5, "lower");
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_FRAME_SHUT), 1);
}

/* A ladder with a rail across at 19 in: a plank of 5-1/2 in under it from x on, a post over it at
 * 29 in. The plank's last screw is 0.92 in from its side, the post's are 3/4 in from its own. */
static void plan_plank_under_post(struct carpenter *bench, double x)
{
    int64_t box = ladder_with_rail(bench, 19);
    int64_t plank = carpenter_stock(bench, "2x6", STOCK_STICK, IN(1.5), IN(5.5));
    struct member *lower =
        carpenter_member(bench, box, MEMBER_SUPPORT, AXIS_Z, (struct vector){IN(x), 0, IN(1.5)}, 0);

    lower->name = "lower";
    lower->stick = plank;
    lower->stick_set = SET_FLAT;
    add_post(bench, box, 29, 20.5, "upper");
    carpenter_plan(bench);
}

static bool upper_is_set_first(const struct carpenter *bench)
{
    return carpenter_labelled(bench, "upper")->turn < carpenter_labelled(bench, "lower")->turn;
}

/* P11. The upper post stands clear of the plank's heads, 0.52 in off; its own are 0.35 in off the
 * plank. */
static void the_first_of_two_posts_is_screwed_before_its_partner_covers_its_heads(void **state)
{
    struct carpenter *bench = *state;

    plan_plank_under_post(bench, 23.9);
    assert_int_equal(carpenter_findings(bench, FINDING_FRAME_SHUT), 0);
    assert_true(upper_is_set_first(bench));
}

/* A plain driver wants 1-3/4 in beside the screw, a long bit 1/2 in. 0.9 in apart the plank's last
 * screw is 1.82 in off the post, the post's are 1.65 in off the plank: either could be last with
 * the long bit, the plank with the plain driver. */
static void what_the_plain_driver_reaches_is_screwed_with_it(void **state)
{
    struct carpenter *bench = *state;

    plan_plank_under_post(bench, 22.6);
    assert_true(upper_is_set_first(bench));
}

/* ---- boxes by chance ---- */

static double larger(double a, double b)
{
    return a > b ? a : b;
}

/* The stubby driver is the smallest: 3 in beside the screw, 1/2 in round its axis. */
static bool stubby_meets(const struct plan *plan, const struct screw *screw,
                         const struct solid *wood)
{
    double low[3] = {(double)wood->low.x, (double)wood->low.y, (double)wood->low.z};
    double high[3] = {(double)wood->high.x, (double)wood->high.y, (double)wood->high.z};
    double at[3] = {(double)screw->at.x, (double)screw->at.y, (double)screw->at.z};
    double reach =
        (double)(plan->value[TRADE_DRIVER_STUBBY] + plan->screw_kinds.at[screw->kind].length);
    double from = screw->sign > 0 ? at[screw->axis] - reach : at[screw->axis];
    double square = 0;

    if (low[screw->axis] >= from + reach || high[screw->axis] <= from)
        return false;
    for (int axis = 0; axis < 3; axis++)
        if (axis != screw->axis) {
            double gap = larger(0, larger(low[axis] - at[axis], at[axis] - high[axis]));

            square += gap * gap;
        }
    double radius = (double)plan->value[TRADE_DRIVER_RADIUS_LONG_BIT];
    return square < radius * radius;
}

/* With every member set that has its turn up to the joint's, some driver reaches each head. */
static void check_turns(const struct plan *plan)
{
    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];
        const struct joint *joint;
        int turn;

        if (screw->use != SCREW_FRAME)
            continue;
        joint = &plan->joints.at[screw->of];
        turn = plan->members.at[joint->through].turn;
        if (plan->members.at[joint->into].turn > turn)
            turn = plan->members.at[joint->into].turn;
        for (size_t k = 0; k < plan->members.count; k++)
            if (plan->members.at[k].box == joint->box && k != joint->through && k != joint->into &&
                plan->members.at[k].turn <= turn)
                assert_false(stubby_meets(plan, screw, &plan->members.at[k].solid));
    }
}

static void every_head_is_reached_when_its_joint_is_made_or_it_is_told(void **state)
{
    struct dice dice = {11};
    int checked = 0;

    (void)state;
    for (int i = 0; i < 200; i++) {
        void *made = NULL;
        struct carpenter *bench;
        int64_t box;

        assert_int_equal(carpenter_begin(&made), 0);
        bench = made;
        box = ladder_with_rail(bench, (double)dice_between(&dice, 4, 34));
        for (int64_t posts = dice_between(&dice, 0, 5); posts > 0; posts--)
            carpenter_member(bench, box, MEMBER_SUPPORT, AXIS_Z,
                             (struct vector){LENGTH_INCH * dice_between(&dice, 2, 56), 0,
                                             dice_between(&dice, 0, 1) ? IN(1.5) : IN(20)},
                             0);
        carpenter_plan(bench);
        if (carpenter_findings(bench, FINDING_FRAME_SHUT) == 0) {
            check_turns(bench->plan);
            checked++;
        }
        carpenter_end(&made);
    }
    assert_true(checked > 60);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WOOD_TEST(a_rail_that_shuts_a_bay_is_set_after_the_screws_in_it),
        WOOD_TEST(the_card_of_the_frame_says_what_is_screwed_first),
        WOOD_TEST(a_wide_bay_makes_nothing_wait),
        WOOD_TEST(nothing_waits_for_a_tool_that_is_not_needed),
        WOOD_TEST(posts_in_one_line_can_be_screwed_in_no_order),
        WOOD_TEST(the_first_of_two_posts_is_screwed_before_its_partner_covers_its_heads),
        WOOD_TEST(what_the_plain_driver_reaches_is_screwed_with_it),
        cmocka_unit_test(every_head_is_reached_when_its_joint_is_made_or_it_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
