/*
 * Where seams fall. Cloth is 54 in, a seam takes 1/2 in, so that seams stand 26-1/2 in from the
 * middle where nothing is in their way. Figures are computed by hand beside the checks.
 */
#include "soft.h"

#include "plan/cover_sums.h"
#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static void assert_seam(const struct soft *soft, int64_t layer, double seam, const char *hidden_by)
{
    const struct cover *cover = soft_cover(soft, layer);

    assert_int_equal(cover->seam, IN(seam));
    if (!hidden_by)
        assert_null(cover->hidden_by);
    else
        assert_string_equal(cover->hidden_by, hidden_by);
}

/* ---- sums ---- */

/* A line with 30 left and 36-1/2 right of it: strips of 30 - 26.5 + .5 and 36.5 - 26.5 + .5. */
static void strips_are_as_unlike_as_what_lies_beside_the_line(void **state)
{
    int64_t left = IN(30), right = IN(36.5);
    struct widths widths = widths_about(&left, &right, IN(54), IN(0.5), IN(4), 0);

    (void)state;
    assert_int_equal(left, IN(30));
    assert_int_equal(widths.seam, IN(26.5));
    assert_int_equal(widths.side, IN(4));
    assert_int_equal(widths.side_right, IN(10.5));
    assert_int_equal(widths.count, 2);
}

/* 28 left of it: the seam comes in to 24.5, where that strip is 4 in wide. */
static void a_strip_beside_the_line_is_never_too_narrow(void **state)
{
    int64_t left = IN(28), right = IN(38.5);
    struct widths widths = widths_about(&left, &right, IN(54), IN(0.5), IN(4), 0);

    (void)state;
    assert_int_equal(widths.side, IN(4));
    assert_int_equal(widths.seam, IN(24.5));
    assert_int_equal(widths.side_right, IN(14.5));
}

/* 4 left of it leave no room for a seam there: both halves alike. */
static void a_line_at_the_very_end_is_given_up(void **state)
{
    int64_t left = IN(4), right = IN(76);
    struct widths widths = widths_about(&left, &right, IN(54), IN(0.5), IN(4), 0);

    (void)state;
    assert_int_equal(left, IN(40));
    assert_int_equal(widths.side, widths.side_right);
}

/* ---- the middle of the face ---- */

/* 60 + 3 round the right side + 3-1/2: seams 3-1/2 in from both ends of the face all the same. */
static void seams_stand_about_the_middle_of_the_face(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 60, 40);

    soft_endings(soft, cover, ENDING_STOP, ENDING_WRAP, ENDING_WRAP, ENDING_WRAP);
    soft_plan(soft);
    assert_seam(soft, cover, 26.5, NULL);
    assert_int_equal(soft_cover(soft, cover)->side_strip, IN(4));
    assert_int_equal(soft_cover(soft, cover)->side_strip_right, IN(10.5));
    assert_piece(soft_piece(soft, cover, "cover left side", 0), 4, 53);
    assert_piece(soft_piece(soft, cover, "cover right side", 0), 10.5, 53);
}

/* ---- lines that hide a seam ---- */

/* Nails along both upright edges of a field from `u`, as far from the other end. */
static void add_nail_rows(struct soft *soft, int64_t cover, double width, double u)
{
    const struct layer *layer = soft_layer_of(soft, cover);
    int64_t box = layer->box;
    struct stock *nails = MODEL_ADD(&soft->model, stock);
    int64_t key = nails->key;
    struct layer *trim;

    nails->name = "nails";
    nails->kind = STOCK_NAIL;
    trim = soft_layer_of(soft, soft_layer(soft, box, LAYER_TRIM, SHAPE_RUN, SIDE_FRONT, key));
    trim->u = IN(u);
    trim->width = IN(width - 2 * u);
}

/* Rows 7 in from the ends of 63 are 24-1/2 from the middle: 2 in further in. The strips are
 * 38 - 24.5 + .5 of a cut width of 76. */
static void seams_come_in_to_a_row_of_nails(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 40);

    add_nail_rows(soft, cover, 63, 7);
    soft_plan(soft);
    assert_seam(soft, cover, 24.5, "a row of nails");
    assert_int_equal(soft_cover(soft, cover)->side_strip, IN(14));
    assert_int_equal(soft_cover(soft, cover)->width_count, 2);
}

/* 21-1/2 from the middle is 5 in further in, more than the 3 that a seam is moved. */
static void seams_do_not_come_in_to_a_row_that_is_far(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 40);

    add_nail_rows(soft, cover, 63, 10);
    soft_plan(soft);
    assert_seam(soft, cover, 26.5, NULL);
}

static void seams_come_in_only_where_both_sides_are_hidden(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 40);

    add_nail_rows(soft, cover, 63, 7);
    soft->model.layers.at[soft->model.layers.count - 1].right = ENDING_STOP;
    soft_plan(soft);
    assert_seam(soft, cover, 26.5, NULL);
}

/* A pattern is matched at whole repeats of 12: the centre finishes on 48, rows do not count. */
static void a_pattern_is_not_moved_off_its_repeat(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 40);
    struct stock *cloth = soft_cloth(soft);

    cloth->repeat_across = IN(12);
    add_nail_rows(soft, cover, 63, 9);
    soft_plan(soft);
    assert_seam(soft, cover, 24, NULL);
}

/* The edges of a mattress 51 wide, 25-1/2 from the middle. */
static void seams_come_in_to_the_edges_of_the_mattress(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 56);
    struct object *mattress = MODEL_ADD(&soft->model, object);

    mattress->kind = OBJECT_MATTRESS;
    mattress->name = "";
    mattress->x = IN(6);
    mattress->y = IN(3);
    mattress->width = IN(51);
    mattress->depth = IN(75);
    mattress->height = IN(24);
    soft_plan(soft);
    assert_seam(soft, cover, 25.5, "the mattress's edge");
}

/* Boxes of 7, 49 and 7 side by side under one cover: their joints lie 24-1/2 from the middle. */
static void seams_come_in_to_the_joints_of_boxes(void **state)
{
    struct soft *soft = *state;
    static const double widths[] = {7, 49, 7};
    struct group *group = MODEL_ADD(&soft->model, group);
    int64_t key = group->key;
    int64_t cover;

    group->name = "all";
    for (int i = 0; i < 3; i++) {
        int64_t box = soft_box(soft, i == 0 ? "A" : i == 1 ? "B" : "C", widths[i], 3, 40);
        struct group_box *in = MODEL_ADD(&soft->model, group_box);

        in->group = key;
        in->box = box;
    }
    cover = soft_layer(soft, 0, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_layer_of(soft, cover)->group = key;
    soft_plan(soft);
    assert_seam(soft, cover, 24.5, "the joint of two boxes");
}

/* ---- what a seam must not fall on ---- */

/* A face of 53: the seams would lie on its very edges, and stay an inch inside. */
static void seams_keep_clear_of_the_fold_over_an_edge(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 53, 40);

    soft_plan(soft);
    assert_seam(soft, cover, 25.5, NULL);
    assert_int_equal(soft_cover(soft, cover)->side_strip, IN(8)); /* 33 - 25.5 + .5 */
    assert_int_equal(soft_findings(soft, FINDING_SEAM_ON), 0);
}

static void add_buttons(struct soft *soft, int64_t cover, int64_t across)
{
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    tufting->layer = cover;
    tufting->pattern = PATTERN_SHALLOW;
    tufting->across = across;
    tufting->down = 2;
    tufting->border = IN(5);
}

/* A field of 54 in 24 squares, and half an inch more of cloth for each: buttons on the cloth 2-3/4
 * apart. One lies at 27-1/2, and the seam at 26-1/2 is just clear of it. */
static void a_seam_an_inch_from_a_button_stays(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 64, 40);

    add_buttons(soft, cover, 24);
    soft_plan(soft);
    assert_seam(soft, cover, 26.5, NULL);
}

/* In 20 squares they lie 2.7 + .5 apart: one at 25.6, clear of it is 24.6. */
static void a_button_under_the_seam_sends_it_further_in(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 64, 40);

    add_buttons(soft, cover, 20);
    soft_plan(soft);
    assert_seam(soft, cover, 24.6, NULL);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_ON), 0);
}

/* Buttons so close that no seam finds room between them. */
static void a_seam_that_cannot_keep_clear_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 64, 40);

    add_buttons(soft, cover, 40); /* 1.35 + .5 = 1.85 apart, 2 wanted */
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_ON), 1);
}

/* ---- by the maker's word ---- */

/* Rows 10 in from the ends of 63: 5 in further in than the seams would stand. */
static void seams_come_in_as_far_as_the_maker_wants_them_to(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 40);

    add_nail_rows(soft, cover, 63, 10);
    soft_layer_of(soft, cover)->seaming = SEAMING_LINE;
    soft_plan(soft);
    assert_seam(soft, cover, 21.5, "a row of nails");
}

static void seams_stay_out_where_the_maker_wants_the_full_centre(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 40);

    add_nail_rows(soft, cover, 63, 7);
    soft_layer_of(soft, cover)->seaming = SEAMING_CENTRE;
    soft_plan(soft);
    assert_seam(soft, cover, 26.5, NULL);
}

/* 76 of cloth in two halves, each with half an inch for the seam. */
static void one_seam_runs_down_the_middle_by_the_makers_word(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 63, 40);

    soft_layer_of(soft, cover)->seaming = SEAMING_MIDDLE;
    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->seams, 1);
    assert_int_equal(*soft_cover(soft, cover)->alone, IN(31.5));
    assert_int_equal(soft_piece_count(soft, cover), 2);
    assert_piece(soft_piece(soft, cover, "cover", 0), 38.5, 53);
    assert_piece(soft_piece(soft, cover, "cover right part", 0), 38.5, 53);
}

/* 133 do not come out of two widths of 54. */
static void a_cover_too_wide_for_one_seam_keeps_its_full_centre(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 120, 40);

    soft_layer_of(soft, cover)->seaming = SEAMING_MIDDLE;
    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->seams, 2);
    assert_int_equal(soft_cover(soft, cover)->width_count, 3);
}

/* Two widths of 54 in that are sewn together lie 53 in apart, by turns on either side. */
static void full_widths_lie_to_the_left_and_the_right_of_the_middle(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 240, 40);
    const struct piece *left, *right;

    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->width_count, 5);
    left = soft_piece(soft, cover, "cover width", 0);
    right = soft_piece(soft, cover, "cover width", 1);
    assert_int_equal(left->nth, -1);
    assert_int_equal(left->aside, -IN(53));
    assert_int_equal(right->nth, 1);
    assert_int_equal(right->aside, IN(53));
    assert_int_equal(soft_piece(soft, cover, "cover side", 0)->nth, -2);
    assert_int_equal(soft_piece(soft, cover, "cover side", 1)->nth, 2);
}

static void a_seam_down_the_middle_over_a_button_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 64, 40);

    add_buttons(soft, cover, 20);
    soft_layer_of(soft, cover)->seaming = SEAMING_MIDDLE;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_ON), 1);
}

/* ---- level seams ---- */

/* Railroaded: 60 + 6 + 7 = 73 high, of which 54 come from the top down: the seam is at
 * 66.5 - 54 + .5 = 13, and 13 + 6.5 + .5 = 20 are sewn on below. */
static int64_t add_tall_cover(struct soft *soft, double height)
{
    int64_t cover = soft_front_cover(soft, 40, height);

    soft_layer_of(soft, cover)->direction = DIRECTION_ACROSS;
    return cover;
}

static void assert_level(const struct soft *soft, int64_t layer, double at, const char *hidden_by)
{
    const struct cover *cover = soft_cover(soft, layer);

    assert_true(cover->railroaded);
    assert_int_equal(cover->seams, 1);
    assert_int_equal(*cover->alone, IN(at));
    if (!hidden_by)
        assert_null(cover->hidden_by);
    else
        assert_string_equal(cover->hidden_by, hidden_by);
}

static void a_railroaded_cover_has_one_level_seam_low_down(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 60);

    soft_plan(soft);
    assert_level(soft, cover, 13, NULL);
    assert_piece(soft_piece(soft, cover, "cover", 0), 53, 54);
    assert_piece(soft_piece(soft, cover, "cover lower part", 0), 53, 20);
    assert_true(soft_piece(soft, cover, "cover lower part", 0)->across);
}

/* 54.5 high: the seam would leave half an inch below; the strip is never under 4. */
static void the_part_below_a_level_seam_is_never_too_narrow(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 42);

    soft_plan(soft);
    assert_piece(soft_piece(soft, cover, "cover lower part", 0), 53, 4);
    assert_piece(soft_piece(soft, cover, "cover", 0), 53, 52);
}

static void a_level_seam_rises_to_a_row_of_nails(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 60);
    struct layer *trim;

    add_nail_rows(soft, cover, 40, 0);
    trim = &soft->model.layers.at[soft->model.layers.count - 1];
    trim->v = IN(15);
    soft_plan(soft);
    assert_level(soft, cover, 15, "a row of nails");
}

/* Repeats of 7 in fill 49 of 53 finished inches, so that the upper part is cut 50: the seam stands
 * at 60 + 6-1/2 - 50 + 1/2 = 17. What of the pattern lies 1/2 in from the lower edge of the one
 * lies so far from the upper edge of the other. */
static void the_pattern_goes_on_over_a_level_seam(void **state)
{
    static const int repeats[] = {7, 11, 17, 23};

    (void)state;
    for (size_t i = 0; i < sizeof repeats / sizeof *repeats; i++) {
        const int64_t repeat = IN(repeats[i]);
        void *fixture;
        struct soft *soft;
        const struct piece *upper, *lower;
        int64_t cover;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        cover = add_tall_cover(soft, 60);
        soft_cloth(soft)->repeat_across = repeat;
        soft_plan(soft);
        upper = soft_piece(soft, cover, "cover", 0);
        lower = soft_piece(soft, cover, "cover lower part", 0);
        if (repeats[i] == 7) {
            assert_level(soft, cover, 17, NULL);
            assert_piece(upper, 53, 50);
            assert_piece(lower, 53, 24);
        }
        assert_int_equal(soft_findings(soft, FINDING_NOT_SOLD), 0);
        assert_int_equal((soft_across(soft, lower) + lower->height - IN(0.5) -
                          soft_across(soft, upper) - IN(0.5)) %
                             repeat,
                         0);
        soft_end(&fixture);
    }
}

/* ---- level seams of many widths ---- */

/* Of a face so high 13 more are cut, 6-1/2 of them below it. What lies under the first whole width
 * shows 53 of 54 where another is sewn below it. Derived; the sums are done by hand. */
static const struct stack_row {
    double high, roll;
    enum seaming_word word;
    double row;      /* height of a row of nails, 0 for none */
    double seams[3]; /* from the top down; 0 ends them */
    double parts[4];
} stack_rows[] = {
    /* 143: 136.5 - 54 + .5 = 83, and 53 below it 30; 30 + 6.5 + .5 are left */
    {130, 54, SEAMING_NEAR, 0, {83, 30}, {54, 54, 37}},
    /* 108.5 take a third width; the lowest part would be 2.5, and a strip is never under 4 */
    {95.5, 54, SEAMING_NEAR, 0, {48.5, -3}, {54, 52.5, 4}},
    /* 193: four widths */
    {180, 54, SEAMING_NEAR, 0, {133, 80, 27}, {54, 54, 54, 34}},
    /* a row of nails 2 above the upper seam draws it up, and the lower one with it */
    {130, 54, SEAMING_NEAR, 85, {85, 32}, {52, 54, 39}},
    /* one that is 5 above it does not, but where the maker wants the seams at lines */
    {130, 54, SEAMING_NEAR, 88, {83, 30}, {54, 54, 37}},
    {130, 54, SEAMING_LINE, 88, {88, 35}, {49, 54, 42}},
    /* at 100 the rest would need three widths: no line is worth a width more */
    {130, 54, SEAMING_LINE, 100.5, {83, 30}, {54, 54, 37}},
    /* a wider cloth, one seam */
    {130, 110, SEAMING_NEAR, 0, {27}, {110, 34}},
};

static void assert_stack(const struct soft *soft, int64_t layer, const struct stack_row *row)
{
    const struct cover *cover = soft_cover(soft, layer);
    int seams = 0;
    int part = 0;

    for (; seams < 3 && row->seams[seams] != 0; seams++)
        assert_int_equal(cover->alone[seams], IN(row->seams[seams]));
    assert_int_equal(cover->seams, seams);
    assert_int_equal(cover->width_count, seams + 1);
    for (size_t i = 0; i < soft->plan->pieces.count; i++) {
        const struct piece *piece = &soft->plan->pieces.at[i];

        if (piece->layer != layer)
            continue;
        assert_piece(piece, 53, row->parts[part]);
        assert_int_equal(piece->nth, -part);
        part++;
    }
    assert_int_equal(part, seams + 1);
}

static void level_seams_stand_low_and_the_uppermost_part_is_whole(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof stack_rows / sizeof *stack_rows; i++) {
        const struct stack_row *row = &stack_rows[i];
        void *fixture;
        struct soft *soft;
        int64_t cover;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        cover = add_tall_cover(soft, row->high);
        soft_layer_of(soft, cover)->seaming = row->word;
        soft_cloth(soft)->width = IN(row->roll);
        if (row->row > 0) {
            add_nail_rows(soft, cover, 40, 0);
            soft->model.layers.at[soft->model.layers.count - 1].v = IN(row->row);
        }
        soft_plan(soft);
        assert_stack(soft, cover, row);
        soft_end(&fixture);
    }
}

static void a_card_says_how_level_widths_are_sewn(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 130);

    soft_plan(soft);
    assert_true(soft_says(soft, STEP_SEW, "2 of 53 in, one under the other"));
    soft_layer_of(soft, cover)->seaming = SEAMING_CENTRE;
    soft_plan(soft);
    assert_true(soft_says(soft, STEP_SEW, "2 of 53 in, at equal distance from the middle"));
}

/* 143 in a full centre of 54 and two sides of (143 + 2 - 54) / 2, by the maker's word. */
static void a_full_centre_of_level_widths_is_the_makers_word(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 130);

    soft_layer_of(soft, cover)->seaming = SEAMING_CENTRE;
    soft_plan(soft);
    assert_null(soft_cover(soft, cover)->alone);
    assert_int_equal(soft_cover(soft, cover)->seam, IN(26.5));
    assert_int_equal(soft_cover(soft, cover)->side_strip, IN(45.5));
}

/* Repeats of 7 fill 49 of 53: whole parts are cut 50, and the pattern goes on from each to the next
 * one. */
static void the_pattern_goes_on_over_all_level_seams(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 130);
    const struct piece *above = NULL;

    soft_cloth(soft)->repeat_across = IN(7);
    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->alone[0], IN(87));
    assert_int_equal(soft_cover(soft, cover)->alone[1], IN(38));
    for (size_t i = 0; i < soft->plan->pieces.count; i++) {
        const struct piece *piece = &soft->plan->pieces.at[i];

        if (piece->layer != cover)
            continue;
        if (above)
            assert_int_equal((soft_across(soft, piece) + piece->height - IN(0.5) -
                              soft_across(soft, above) - IN(0.5)) %
                                 IN(7),
                             0);
        above = piece;
    }
}

/* Heavy cloth gives a sixteenth to each seam, and only a strip that is there has it to give. */
static void heavy_cloth_is_taken_up_in_level_seams(void **state)
{
    static const struct {
        double high, lowest;
        size_t pieces;
    } rows[] = {{60, 20 + 0.0625, 2}, {130, 37 + 0.125, 3}};

    (void)state;
    for (size_t i = 0; i < 2; i++) {
        void *fixture;
        struct soft *soft;
        int64_t cover;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        cover = add_tall_cover(soft, rows[i].high);
        soft_cloth(soft)->nature = NATURE_HEAVY;
        soft_plan(soft);
        assert_int_equal(soft_piece_count(soft, cover), rows[i].pieces);
        assert_piece(soft_piece(soft, cover, "cover lower part", 0), 53, rows[i].lowest);
        soft_end(&fixture);
    }
}

/* A mattress 24 high hides what lies 4 in below its top. */
static void a_level_seam_behind_the_mattress_stays(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 60);
    struct object *mattress = MODEL_ADD(&soft->model, object);

    mattress->kind = OBJECT_MATTRESS;
    mattress->name = "";
    mattress->y = IN(3);
    mattress->width = IN(40);
    mattress->depth = IN(75);
    mattress->height = IN(24);
    soft_plan(soft);
    assert_level(soft, cover, 13, "the part that the mattress hides");
    mattress->height = IN(16);
    soft_plan(soft);
    assert_level(soft, cover, 13, NULL);
}

/* 47-1/2 high: the seam would stand half an inch over the fold, and stays an inch off it. */
static void a_level_seam_keeps_clear_of_the_fold_below(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 47.5);

    soft_plan(soft);
    assert_level(soft, cover, 1, NULL);
}

/* 21 rows of buttons 2-1/2 apart and half an inch of cloth for each: one at 18, and the seam at
 * 71.75 - 54 + .5 = 18.25 gives way to 19. */
static void a_button_under_a_level_seam_sends_it_up(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tall_cover(soft, 60);

    add_buttons(soft, cover, 4);
    soft->model.tuftings.at[0].down = 20;
    soft_plan(soft);
    assert_level(soft, cover, 19, NULL);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_ON), 0);
}

/* ---- thin cloth behind the mattress ---- */

/* 63 x 56: 76 x 69 of cloth, 138 along in two widths. The mattress hides 20, and railroaded from
 * the top down 54 reach to 62.5 - 53.5 = 9. */
static int64_t add_headboard(struct soft *soft)
{
    int64_t cover = soft_front_cover(soft, 63, 56);
    int64_t box = soft_layer_of(soft, cover)->box;
    struct object *mattress = MODEL_ADD(&soft->model, object);

    soft_layer(soft, box, LAYER_LINING, SHAPE_FLAT, SIDE_BACK, soft->lining);
    mattress->kind = OBJECT_MATTRESS;
    mattress->name = "";
    mattress->y = IN(3);
    mattress->width = IN(63);
    mattress->depth = IN(75);
    mattress->height = IN(24);
    return cover;
}

/* Railroaded it takes 76 along for 138, and 16 of lining, sewn on along all of it. */
static void thin_cloth_is_sewn_on_where_the_mattress_hides_it(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_headboard(soft);
    const struct finding *told;
    const struct seam *seam = NULL;

    soft_plan(soft);
    told = soft_finding(soft, FINDING_COVER_HIDDEN);
    assert_int_equal(told->arguments[1].value, IN(9));
    assert_int_equal(told->arguments[2].value, IN(138 - 76));
    assert_int_equal(told->cure_count, 2);
    assert_int_equal(cure_apply(&soft->model, &told->cures[0], NULL), FAULT_NONE);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_COVER_HIDDEN), 0);
    assert_int_equal(soft_findings(soft, FINDING_THIN_SHOWS), 0);
    assert_piece(soft_piece(soft, cover, "cover", 0), 76, 54);
    assert_true(soft_piece(soft, cover, "cover", 0)->across);
    assert_piece(soft_piece(soft, cover, "thin cloth", 0), 76, 16);
    assert_int_equal(soft_piece(soft, cover, "thin cloth", 0)->stock, soft->lining);
    for (size_t i = 0; i < soft->plan->seams.count; i++)
        if (strcmp(soft->plan->seams.at[i].what, "thin cloth to the cover") == 0)
            seam = &soft->plan->seams.at[i];
    assert_non_null(seam);
    assert_int_equal(seam->length, IN(76));
}

/* Up the roll the seam stands as high as the mattress hides it: 69 - 26.5 + .5 = 43 above it. */
static void thin_cloth_goes_under_a_cover_up_the_roll_as_well(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_headboard(soft);

    soft_plan(soft);
    assert_int_equal(
        cure_apply(&soft->model, &soft_finding(soft, FINDING_COVER_HIDDEN)->cures[1], NULL),
        FAULT_NONE);
    soft_plan(soft);
    assert_piece(soft_piece(soft, cover, "cover", 0), 54, 43);
    assert_piece(soft_piece(soft, cover, "thin cloth", 0), 76, 27);
}

static void thin_cloth_that_would_be_seen_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_headboard(soft);

    soft_layer_of(soft, cover)->thin = soft->lining;
    soft_layer_of(soft, cover)->thin_height = IN(20);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_THIN_SHOWS), 0);
    soft_layer_of(soft, cover)->thin_height = IN(21);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_THIN_SHOWS), 1);
}

/* Rows of buttons in squares of 46/2 from a border of 5, one at 28: with thin cloth to there. */
static void a_seam_of_thin_cloth_on_a_button_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_headboard(soft);

    add_buttons(soft, cover, 4);
    soft_layer_of(soft, cover)->thin = soft->lining;
    soft_layer_of(soft, cover)->thin_height = IN(28);
    soft_plan(soft);
    assert_true(soft_findings(soft, FINDING_SEAM_ON) > 0);
    soft_layer_of(soft, cover)->thin_height = IN(20);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_ON), 0);
}

/* ---- handles ---- */

static void add_handle(struct soft *soft, int64_t cover, enum edge_word edge, double handle)
{
    struct layer_edge *by_hand = MODEL_ADD(&soft->model, layer_edge);

    by_hand->layer = cover;
    by_hand->edge = (int64_t)edge;
    by_hand->handle = IN(handle);
}

static void a_handle_under_an_inch_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 40, 30);

    add_handle(soft, cover, EDGE_TOP, 0.75);
    add_handle(soft, cover, EDGE_LEFT, 1);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_HANDLE_SHORT), 1);
}

/* 42 + 6 + 7 = 55: one inch more than the cloth, half an inch less at each end. */
static void a_seam_that_shorter_handles_spare_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 42, 30);

    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_SPARED), 1);
    assert_int_equal(soft_cover(soft, cover)->width_count, 2);
    add_handle(soft, cover, EDGE_LEFT, 1.5);
    add_handle(soft, cover, EDGE_RIGHT, 1.5);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_SPARED), 0);
    assert_int_equal(soft_cover(soft, cover)->width_count, 1);
}

/* 44 + 6 + 7 = 57: three inches more, and an inch at each end is all that can be spared. */
static void a_seam_that_takes_too_much_of_the_handles_is_not(void **state)
{
    struct soft *soft = *state;

    soft_front_cover(soft, 44, 30);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_SEAM_SPARED), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(strips_are_as_unlike_as_what_lies_beside_the_line),
        cmocka_unit_test(a_strip_beside_the_line_is_never_too_narrow),
        cmocka_unit_test(a_line_at_the_very_end_is_given_up),
        SOFT_TEST(seams_stand_about_the_middle_of_the_face),
        SOFT_TEST(seams_come_in_to_a_row_of_nails),
        SOFT_TEST(seams_do_not_come_in_to_a_row_that_is_far),
        SOFT_TEST(seams_come_in_only_where_both_sides_are_hidden),
        SOFT_TEST(a_pattern_is_not_moved_off_its_repeat),
        SOFT_TEST(seams_come_in_to_the_edges_of_the_mattress),
        SOFT_TEST(seams_come_in_to_the_joints_of_boxes),
        SOFT_TEST(seams_keep_clear_of_the_fold_over_an_edge),
        SOFT_TEST(a_seam_an_inch_from_a_button_stays),
        SOFT_TEST(a_button_under_the_seam_sends_it_further_in),
        SOFT_TEST(a_seam_that_cannot_keep_clear_is_told),
        SOFT_TEST(seams_come_in_as_far_as_the_maker_wants_them_to),
        SOFT_TEST(seams_stay_out_where_the_maker_wants_the_full_centre),
        SOFT_TEST(one_seam_runs_down_the_middle_by_the_makers_word),
        SOFT_TEST(a_cover_too_wide_for_one_seam_keeps_its_full_centre),
        SOFT_TEST(full_widths_lie_to_the_left_and_the_right_of_the_middle),
        SOFT_TEST(a_seam_down_the_middle_over_a_button_is_told),
        SOFT_TEST(a_railroaded_cover_has_one_level_seam_low_down),
        SOFT_TEST(the_part_below_a_level_seam_is_never_too_narrow),
        SOFT_TEST(a_level_seam_rises_to_a_row_of_nails),
        cmocka_unit_test(the_pattern_goes_on_over_a_level_seam),
        cmocka_unit_test(level_seams_stand_low_and_the_uppermost_part_is_whole),
        SOFT_TEST(a_full_centre_of_level_widths_is_the_makers_word),
        SOFT_TEST(a_card_says_how_level_widths_are_sewn),
        SOFT_TEST(the_pattern_goes_on_over_all_level_seams),
        cmocka_unit_test(heavy_cloth_is_taken_up_in_level_seams),
        SOFT_TEST(a_level_seam_behind_the_mattress_stays),
        SOFT_TEST(a_level_seam_keeps_clear_of_the_fold_below),
        SOFT_TEST(a_button_under_a_level_seam_sends_it_up),
        SOFT_TEST(thin_cloth_is_sewn_on_where_the_mattress_hides_it),
        SOFT_TEST(thin_cloth_goes_under_a_cover_up_the_roll_as_well),
        SOFT_TEST(thin_cloth_that_would_be_seen_is_told),
        SOFT_TEST(a_seam_of_thin_cloth_on_a_button_is_told),
        SOFT_TEST(a_handle_under_an_inch_is_told),
        SOFT_TEST(a_seam_that_shorter_handles_spare_is_told),
        SOFT_TEST(a_seam_that_takes_too_much_of_the_handles_is_not),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
