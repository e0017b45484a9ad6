/*
 * How much cloth tufting takes, by each rule, and what buttons and channels must not fall on. Rules
 * are common practice without a source, but where a check names one.
 */
#include "soft.h"

#include "model/trade.h"
#include "plan/cover_sums.h"
#include "plan/cure.h"
#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#define COUNT_OF(array) (sizeof(array) / sizeof *(array))

/* A tufted cover on a board of 3/4 in: 36 x 24 in, 4 in of foam, as the worked example's ottoman.
 */
static struct tufting *add_top(struct soft *soft, int64_t *ret_cover)
{
    int64_t box = soft_box(soft, "T", 36, 24, 0.75);
    int64_t cover = soft_upholster(soft, box, SIDE_TOP, soft->foam4);
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    tufting->layer = cover;
    tufting->across = 4;
    tufting->down = 2;
    *ret_cover = cover;
    return tufting;
}

static const struct tuft_field *field_of(const struct soft *soft)
{
    assert_int_equal(soft->plan->tuft_fields.count, 1);
    return &soft->plan->tuft_fields.at[0];
}

/* ---- cloth ---- */

/* By the root: sqrt(7^2 + (2 x 2.5)^2) - 7 = 1.602; never more than twice the pull. */
static void the_least_is_the_straight_way_down_and_up(void **state)
{
    (void)state;
    assert_in_range(tuft_least(IN(7), IN(2.5)), IN(1.602) - 8, IN(1.602) + 8);
    assert_int_equal(tuft_least(IN(7), 0), 0);
    for (int depth = 1; depth < 6; depth++)
        assert_true(tuft_least(IN(7), IN(depth)) < IN(2 * depth));
}

/* 28 x 16 of field are diamonds of 7 x 8. Computed by hand in the worked example: W = 4 x 9.5 +
 * 2 (4 + 1.25) + 10 + 7 by the pull of 2-1/2, and 93 x 65 by twice the foam of 4. */
static void each_rule_counts_its_own_cloth(void **state)
{
    static const struct {
        enum allowance_word rule;
        double across, up; /* more for each */
        double width, height;
    } rules[] = {
        {ALLOWANCE_PULL, 2.5, 2.5, 65.5, 48.5},
        {ALLOWANCE_GENEROUS, 8, 8, 93, 65},
        {ALLOWANCE_SHALLOW, 0.5, 0.5, 55.5, 42.5},
    };
    struct soft *soft = *state;
    int64_t cover;
    struct tufting *tufting = add_top(soft, &cover);

    for (size_t i = 0; i < COUNT_OF(rules); i++) {
        tufting->allowance = (int64_t)rules[i].rule;
        soft_plan(soft);
        assert_int_equal(field_of(soft)->across_pitch, IN(7));
        assert_int_equal(field_of(soft)->up_pitch, IN(8));
        assert_int_equal(field_of(soft)->across_each, IN(rules[i].across));
        assert_int_equal(field_of(soft)->up_each, IN(rules[i].up));
        assert_cut(soft, cover, rules[i].width, rules[i].height);
    }
}

/* Seen in use, no published source: 8 x 5 in diamonds on 2 in of foam were marked 12 x 9. */
static void twice_the_foam_marks_eight_by_five_as_twelve_by_nine(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "H", 3 * 8 + 8, 2, 4 * 5 + 8);
    int64_t cover = soft_upholster(soft, box, SIDE_FRONT, soft->foam2);
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    tufting->layer = cover;
    tufting->across = 3;
    tufting->down = 4;
    tufting->allowance = ALLOWANCE_GENEROUS;
    soft_plan(soft);
    assert_int_equal(field_of(soft)->across_pitch + field_of(soft)->across_each, IN(12));
    assert_int_equal(field_of(soft)->up_pitch + field_of(soft)->up_each, IN(9));
}

/* A diamond of 7 x 8 that took 9 x 10-1/2 in the trial: 2 more across, 2-1/2 up, whatever the rule
 * says. */
static void the_makers_own_trial_goes_before_every_rule(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    struct tufting *tufting = add_top(soft, &cover);

    tufting->trial_across = IN(9);
    tufting->trial_up = IN(10.5);
    for (int64_t rule = ALLOWANCE_AUTO; rule < ALLOWANCE_COUNT; rule++) {
        tufting->allowance = rule;
        soft_plan(soft);
        assert_int_equal(field_of(soft)->allowance, ALLOWANCE_TRIAL);
        assert_cut(soft, cover, 36 + 5 * 2 + 2 * (4 + 0.25 + 0.75) + 7,
                   24 + 3 * 2.5 + 2 * (4 + 0.25 + 0.75) + 7);
        assert_int_equal(soft_findings(soft, FINDING_TUFT_GUESS), 0);
    }
}

static void a_rule_is_told_to_be_a_guess(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    struct tufting *tufting = add_top(soft, &cover);

    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_GUESS), 1);
    tufting->pattern = PATTERN_SHALLOW;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_GUESS), 0);
}

static void every_rule_says_where_it_comes_from(void **state)
{
    (void)state;
    for (int64_t rule = ALLOWANCE_LEAST; rule <= ALLOWANCE_TRIAL; rule++) {
        assert_true(strlen(plan_allowance_source(rule)) > 10);
        assert_true(strlen(plan_allowance_word(rule)) > 3);
    }
    assert_string_equal(plan_allowance_word(ALLOWANCE_TRIAL), "trial");
}

/* ---- where buttons lie ---- */

/* Of 4 x 2 a whole diamond lies in the middle, of 3 x 2 a button. */
static void a_whole_diamond_belongs_in_the_middle(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    struct tufting *tufting = add_top(soft, &cover);

    for (int64_t across = 1; across <= 6; across++)
        for (int64_t down = 1; down <= 4; down++) {
            bool button = false;

            tufting->across = across;
            tufting->down = down;
            soft_plan(soft);
            for (size_t i = 0; i < soft->plan->tufts.count; i++)
                button |=
                    soft->plan->tufts.at[i].u == IN(18) && soft->plan->tufts.at[i].v == IN(12);
            assert_int_equal(soft_findings(soft, FINDING_TUFT_MIDDLE), button);
        }
}

/* 48 x 30 upright, 4 in of border: 2 x 4 are 20 x 5-1/2; of 5 x 7 there are 8 across, 3 down: 9, so
 * that the middle is whole. */
static void upright_diamonds_are_taller_than_wide(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "H", 48, 3, 30);
    int64_t cover = soft_upholster(soft, box, SIDE_FRONT, soft->foam3);
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    tufting->layer = cover;
    tufting->across = 2;
    tufting->down = 4;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_WIDE), 1);
    assert_int_equal(
        cure_apply(&soft->model, &soft_finding(soft, FINDING_TUFT_WIDE)->cures[0], NULL),
        FAULT_NONE);
    soft_plan(soft);
    assert_int_equal(soft->model.tuftings.at[0].across, 9);
    assert_int_equal(soft->model.tuftings.at[0].down, 3);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_WIDE), 0);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_MIDDLE), 0);
}

/* Panel screws of a frame stand in a row an inch from its edges: a button of that row meets one. */
static void a_button_hole_keeps_off_the_screws_of_its_board(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "H", 40, 3, 30);
    int64_t cover = soft_upholster(soft, box, SIDE_FRONT, soft->foam2);
    struct facing *facing = MODEL_ADD(&soft->model, facing);
    struct tufting *tufting;

    facing->box = box;
    facing->side = SIDE_FRONT;
    facing->stock = soft_wood(soft, STOCK_SHEET, 0.5, 0);
    ((struct box *)model_find(&soft->model, ENTITY_box, box))->stick =
        soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    tufting = MODEL_ADD(&soft->model, tufting);
    tufting->layer = cover;
    tufting->across = 2;
    tufting->down = 2;
    tufting->pattern = PATTERN_SQUARE;
    tufting->border = IN(8);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_ON_SCREW), 0);
    tufting->border = IN(1);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_ON_SCREW), 1);
}

/* ---- channels ---- */

static struct tufting *add_channels(struct soft *soft, int64_t *ret_cover)
{
    int64_t box = soft_box(soft, "H", 40, 3, 30);
    struct tufting *tufting;

    *ret_cover = soft_upholster(soft, box, SIDE_FRONT, soft->foam3);
    tufting = MODEL_ADD(&soft->model, tufting);
    tufting->layer = *ret_cover;
    tufting->made = TUFTS_CHANNELS;
    tufting->across = 10;
    tufting->down = 1;
    return tufting;
}

/* 40 in in ten: 4 in each, nine lines between; foam of 3 is pulled 1-1/2 and takes as much for
 * each. Up nothing more. 30 in at 1 in are 31 staples a line. */
static void channels_divide_the_width_evenly(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    int64_t plain, width, height;
    struct tufting *tufting = add_channels(soft, &cover);

    soft_plan(soft);
    width = soft_cover(soft, cover)->cut_width;
    height = soft_cover(soft, cover)->cut_height;
    plain = soft_staples(soft, cover);
    assert_int_equal(field_of(soft)->across_pitch, IN(4));
    assert_int_equal(field_of(soft)->lines, 9);
    assert_int_equal(soft->plan->tufts.count, 0);
    assert_int_equal(soft_used(soft, cover, STOCK_BUTTON), 0);
    tufting->trial_across = IN(4); /* a trial that took nothing */
    soft_plan(soft);
    assert_int_equal(width - soft_cover(soft, cover)->cut_width, IN(10 * 1.5));
    assert_int_equal(height, soft_cover(soft, cover)->cut_height);
    tufting->across = 1; /* no line */
    soft_plan(soft);
    assert_int_equal(plain - soft_staples(soft, cover), 9 * 31);
}

/* With a border the outer channels end in a line as well. */
static void a_border_has_a_line_of_its_own(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    struct tufting *tufting = add_channels(soft, &cover);

    tufting->border = IN(5);
    soft_plan(soft);
    assert_int_equal(field_of(soft)->across_pitch, IN(3));
    assert_int_equal(field_of(soft)->lines, 11);
}

/* On a cushion there is no wood to staple to. */
static void channels_of_a_cushion_are_sewn(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    int64_t seams = 0;

    add_channels(soft, &cover);
    soft->model.boxes.at[0].frame = FRAME_CUSHION;
    soft_plan(soft);
    assert_int_equal(soft_staples(soft, cover), 0);
    for (size_t i = 0; i < soft->plan->seams.count; i++)
        if (strcmp(soft->plan->seams.at[i].what, "lines of the channels") == 0)
            seams += soft->plan->seams.at[i].count * soft->plan->seams.at[i].length;
    assert_int_equal(seams, IN(9 * 30));
    assert_true(soft_cover(soft, cover)->thread >= IN(3 * 9 * 30));
}

/* A screw through the front at 8 in, right on the second line; the patch round it is 1-1/2. */
static void a_line_falls_on_no_hole(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    struct tufting *tufting = add_channels(soft, &cover);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    struct join *join = MODEL_ADD(&soft->model, join);
    int64_t key = join->key;
    struct point *point;

    soft->model.boxes.at[0].stick = stick;
    join->name = "J";
    join->box_a = soft->model.boxes.at[0].key;
    join->side_a = SIDE_FRONT;
    join->target = TARGET_WALL;
    point = MODEL_ADD(&soft->model, point);
    point->join = key;
    point->u = IN(8);
    point->v = IN(1);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CHANNEL_ON), 1);
    assert_int_equal(soft_finding(soft, FINDING_CHANNEL_ON)->arguments[0].value, 2);
    assert_int_equal(soft_finding(soft, FINDING_CHANNEL_ON)->arguments[1].value, IN(8));
    tufting->across = 4; /* lines at 10, 20, 30 */
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CHANNEL_ON), 0);
}

/* No holes are drilled and no buttons tied: the lines are stapled with the rest. */
static void channels_are_stapled_not_buttoned(void **state)
{
    struct soft *soft = *state;
    int64_t cover;
    bool says = false;

    add_channels(soft, &cover);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->steps.count; i++) {
        const struct step *step = &soft->plan->steps.at[i];

        assert_true(step->kind != STEP_TUFT && step->kind != STEP_BUTTON);
        for (size_t k = 0; step->kind == STEP_STAPLE && k < step->action_count; k++)
            says |= strstr(step->actions[k], "9 lines, 4 in apart") != NULL;
    }
    assert_true(says);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_least_is_the_straight_way_down_and_up),
        SOFT_TEST(each_rule_counts_its_own_cloth),
        SOFT_TEST(twice_the_foam_marks_eight_by_five_as_twelve_by_nine),
        SOFT_TEST(the_makers_own_trial_goes_before_every_rule),
        SOFT_TEST(a_rule_is_told_to_be_a_guess),
        cmocka_unit_test(every_rule_says_where_it_comes_from),
        SOFT_TEST(a_whole_diamond_belongs_in_the_middle),
        SOFT_TEST(upright_diamonds_are_taller_than_wide),
        SOFT_TEST(a_button_hole_keeps_off_the_screws_of_its_board),
        SOFT_TEST(channels_divide_the_width_evenly),
        SOFT_TEST(a_border_has_a_line_of_its_own),
        SOFT_TEST(channels_of_a_cushion_are_sewn),
        SOFT_TEST(a_line_falls_on_no_hole),
        SOFT_TEST(channels_are_stapled_not_buttoned),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
