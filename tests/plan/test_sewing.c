/* Seams in the order of sewing, with their lengths computed by hand beside the checks. */
#include "soft.h"

#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* The nth seam of a layer; NULL when there are fewer. */
static const struct seam *seam_of(const struct soft *soft, int64_t layer, int nth)
{
    for (size_t i = 0; i < soft->plan->seams.count; i++)
        if (soft->plan->seams.at[i].layer == layer && nth-- == 0)
            return &soft->plan->seams.at[i];
    return NULL;
}

static void assert_seam(const struct seam *seam, const char *what, int count, double length)
{
    assert_non_null(seam);
    assert_string_equal(seam->what, what);
    assert_int_equal(seam->count, count);
    assert_int_equal(seam->length, IN(length));
}

static const struct step *sewing_of(const struct soft *soft, int64_t layer)
{
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        if (soft->plan->steps.at[i].kind == STEP_SEW && soft->plan->steps.at[i].layer == layer)
            return &soft->plan->steps.at[i];
    fail_msg("layer %d is not sewn", (int)layer);
    return NULL;
}

/* ---- sleeves ---- */

/* A wing 11.875 x 56 x 3.5 with 1/4 of batting on both faces and in front: the corner of its boxing
 * 3.5 + .5 between the seams, the front 56 + .25 above + 3.5 below, the top 11.875 + .25 + 3.25
 * behind. */
static void a_wing_is_sewn_corner_first_then_side_by_side(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t wing = soft_wing(soft, "L", SIDE_RIGHT, &batting);

    soft_plan(soft);
    assert_seam(seam_of(soft, wing, 0), "corners of the boxing", 1, 4);
    assert_seam(seam_of(soft, wing, 1), "front boxing to the face", 1, 59.75);
    assert_seam(seam_of(soft, wing, 2), "top boxing to the face", 1, 15.375);
    assert_seam(seam_of(soft, wing, 3), "front boxing to the second face", 1, 59.75);
    assert_seam(seam_of(soft, wing, 4), "top boxing to the second face", 1, 15.375);
    assert_null(seam_of(soft, wing, 5));
}

/* Marks at the middle and the corner; clipped to 1/16 of the stitch. Thread is three times the
 * length: 3 (4 + 2 x 59.75 + 2 x 15.375). */
static void a_seam_has_its_allowance_marks_and_clip(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t wing = soft_wing(soft, "L", SIDE_RIGHT, &batting);
    const struct seam *front;

    soft_plan(soft);
    front = seam_of(soft, wing, 1);
    assert_int_equal(front->allowance, IN(0.5));
    assert_int_equal(front->notches, 2);
    assert_int_equal(front->clip, IN(0.4375));
    assert_int_equal(seam_of(soft, wing, 0)->clip, 0);
    assert_int_equal(soft_cover(soft, wing)->thread, IN(3 * (4 + 2 * 59.75 + 2 * 15.375)));
}

static void the_card_says_each_seam_and_what_stays_open(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t wing = soft_wing(soft, "L", SIDE_RIGHT, &batting);
    const struct step *sew;

    soft_plan(soft);
    sew = sewing_of(soft, wing);
    assert_int_equal(sew->action_count, 7);
    assert_string_equal(sew->actions[1], "Sew the corners of the boxing: 4 in");
    assert_string_equal(
        sew->actions[2],
        "Sew the front boxing to the face: 59-3/4 in, corners clipped 7/16 in deep");
    assert_string_equal(sew->actions[6], "Leave the back and bottom open: it is pulled on there");
    assert_string_equal(sew->needs[1].text, "13 yd of thread"); /* 463 in */
}

/* ---- cushions ---- */

static int64_t add_cushion(struct soft *soft, int64_t *ret_box)
{
    int64_t box = soft_box(soft, "S", 20, 22, 4);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_TOP, soft->cloth);

    soft_layer_of(soft, cover)->both = 1;
    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    *ret_box = box;
    return cover;
}

/* A loose box cushion in full: top and bottom, three strips, two halves for the zip, foam half an
 * inch larger each way and glued to nothing. 20 + 2 x 1/2 by 22 + 1; strips of 4 + 1; halves of
 * 4 / 2 with 1/2 at the face and 1/2 turned in at the zip. Common practice, no source. */
static void a_box_cushion_has_all_its_pieces(void **state)
{
    struct soft *soft = *state;
    int64_t box;
    int64_t cover = add_cushion(soft, &box);
    int64_t foam = soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam4);
    struct fitting *zip = MODEL_ADD(&soft->model, fitting);

    zip->box = box;
    zip->kind = FITTING_ZIP;
    zip->side = SIDE_BACK;
    ((struct box *)model_find(&soft->model, ENTITY_box, box))->frame = FRAME_CUSHION;
    soft_plan(soft);
    assert_piece(soft_piece(soft, cover, "face", 0), 21, 23);
    assert_piece(soft_piece(soft, cover, "face", 1), 21, 23);
    assert_piece(soft_piece(soft, cover, "front boxing", 0), 21, 4 + 1);
    assert_piece(soft_piece(soft, cover, "back zip boxing", 0), 21, 2 + 0.5 + 0.5);
    assert_piece(soft_piece(soft, cover, "back zip boxing", 1), 21, 2 + 0.5 + 0.5);
    assert_null(soft_piece(soft, cover, "back boxing", 0));
    assert_cut(soft, foam, 20.5, 22.5);
    assert_int_equal(soft_used(soft, foam, STOCK_SPRAY), 0);
    assert_int_equal(soft_staples(soft, cover), 0);
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        assert_true(soft->plan->steps.at[i].kind != STEP_STAPLE);
}

/* Closed all round: four corners, four sides to each face; nothing stays open. */
static void a_cushion_has_four_corners_and_eight_long_seams(void **state)
{
    struct soft *soft = *state;
    int64_t box;
    int64_t cover = add_cushion(soft, &box);
    const struct step *sew;

    soft_plan(soft);
    assert_seam(seam_of(soft, cover, 0), "corners of the boxing", 4, 4);
    assert_seam(seam_of(soft, cover, 1), "left boxing to the face", 1, 22);
    assert_seam(seam_of(soft, cover, 3), "front boxing to the face", 1, 20);
    assert_seam(seam_of(soft, cover, 7), "front boxing to the second face", 1, 20);
    assert_int_equal(seam_of(soft, cover, 1)->notches, 3);
    assert_null(seam_of(soft, cover, 9));
    sew = sewing_of(soft, cover);
    assert_int_equal(sew->action_count, 7);
    assert_string_equal(sew->actions[6], "Then the other 4, as the sewing list has them");
}

/* 20 in through which it is filled; with a zip, or on a box of wood, all is sewn on the machine. */
static void a_cushion_without_a_zip_is_closed_by_hand(void **state)
{
    struct soft *soft = *state;
    int64_t box;
    int64_t cover = add_cushion(soft, &box);
    const struct seam *last;
    struct fitting *zip;

    ((struct box *)model_find(&soft->model, ENTITY_box, box))->frame = FRAME_CUSHION;
    soft_plan(soft);
    last = seam_of(soft, cover, 8);
    assert_seam(last, "back boxing to the second face, by hand when it is filled", 1, 20);
    assert_int_equal(last->kind, SEAM_BY_HAND);
    assert_int_equal(soft_used(soft, cover, STOCK_CORD), IN(3 * (16 + 168)));
    zip = MODEL_ADD(&soft->model, fitting);
    zip->box = box;
    zip->kind = FITTING_ZIP;
    zip->side = SIDE_BACK;
    soft_plan(soft);
    assert_non_null(seam_of(soft, cover, 0));
    for (int nth = 0; seam_of(soft, cover, nth); nth++)
        assert_int_not_equal(seam_of(soft, cover, nth)->kind, SEAM_BY_HAND);
}

/* Its foam is glued to nothing and stapled nowhere: sewn, tried on, then filled and closed. */
static void a_cushion_is_filled_and_closed(void **state)
{
    struct soft *soft = *state;
    int64_t box;

    add_cushion(soft, &box);
    ((struct box *)model_find(&soft->model, ENTITY_box, box))->frame = FRAME_CUSHION;
    soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam4);
    soft_plan(soft);
    assert_string_equal(soft_step(soft, STEP_PAD)->title, "Make up the top foam of S");
    assert_false(soft_says(soft, STEP_PAD, "Spray"));
    assert_string_equal(soft_step(soft, STEP_COVER)->title, "Fill and close the top cover of S");
    assert_true(soft_says(soft, STEP_COVER, "push it to the far end"));
    assert_false(soft_says(soft, STEP_COVER, "staple"));
    assert_true(soft_step(soft, STEP_SEW) < soft_step(soft, STEP_TRY));
    assert_true(soft_step(soft, STEP_PAD) < soft_step(soft, STEP_COVER));
    assert_true(soft_step(soft, STEP_TRY) < soft_step(soft, STEP_COVER));
}

/* What slips on and off is pulled over at the end; on wood, foam is glued. */
static void a_slip_cover_is_pulled_on(void **state)
{
    struct soft *soft = *state;
    int64_t box;
    int64_t cover = add_cushion(soft, &box);

    soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam4);
    soft_layer_of(soft, cover)->slip = 1;
    soft_plan(soft);
    assert_string_equal(soft_step(soft, STEP_PAD)->title, "Glue the top foam of S");
    assert_string_equal(soft_step(soft, STEP_COVER)->title, "Pull on the top cover of S");
    assert_true(soft_says(soft, STEP_COVER, "the hem level all round"));
}

/* A cushion with a zip at its back; the key of its cover. */
static int64_t add_zipped(struct soft *soft)
{
    int64_t box;
    int64_t cover = add_cushion(soft, &box);
    struct fitting *zip = MODEL_ADD(&soft->model, fitting);

    zip->box = box;
    zip->kind = FITTING_ZIP;
    zip->side = SIDE_BACK;
    return cover;
}

/* An inch less than the opening of 20, between two halves that are closed round it before the
 * corners; and it is bought by its length. */
static void a_zip_stands_between_the_halves_of_its_strip(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_zipped(soft);
    const struct seam *seam;
    bool bought = false;

    soft_plan(soft);
    seam = seam_of(soft, cover, 0);
    assert_seam(seam, "halves of the back boxing to the zip", 2, 20);
    assert_int_equal(seam->zip, IN(19));
    assert_int_equal(seam->allowance, IN(0.5));
    assert_seam(seam_of(soft, cover, 1), "corners of the boxing", 4, 4);
    for (int nth = 1; nth < 10; nth++)
        assert_int_equal(seam_of(soft, cover, nth)->zip, 0);
    for (size_t i = 0; i < soft->plan->purchases.count; i++)
        bought |= strcmp(soft->plan->purchases.at[i].what, "zip, 19 in") == 0;
    assert_true(bought);
    assert_int_equal(soft_findings(soft, FINDING_ZIP_NOWHERE), 0);
}

/* On a cover that is stapled at the other edge the zip stands in the seam at the face. */
static void a_zip_with_one_face_stands_in_its_seam(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_zipped(soft);

    soft->model.fittings.at[0].length = IN(12);
    soft_layer_of(soft, cover)->both = 0;
    soft_plan(soft);
    for (int nth = 0; nth < 5; nth++) {
        const struct seam *seam = seam_of(soft, cover, nth);

        assert_int_equal(seam->zip,
                         strcmp(seam->what, "back boxing to the face") == 0 ? IN(12) : 0);
    }
    /* 4 of depth, a seam, an inch for the zip, landing and handle */
    assert_piece(soft_piece(soft, cover, "back boxing", 0), 21, 4 + 0.5 + 1 + 1.5 + 2);
}

/* An edge of 7 in, of which the ends of the zip take 5 and then all 7. */
static void a_zip_in_an_edge_too_short_for_it_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_zipped(soft);

    soft->model.boxes.at[0].width = IN(7);
    soft_layer_of(soft, cover)->both = 0;
    for (int most = 0; most < 2; most++) {
        trade_change(&soft->model, TRADE_FROM_BUILD, "zip.less", most ? "7" : "5", NULL);
        soft_plan(soft);
        assert_int_equal(soft_findings(soft, FINDING_ZIP_NOWHERE), most);
    }
}

static void a_zip_where_nothing_is_sewn_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_zipped(soft);

    soft_layer_of(soft, cover)->bottom = ENDING_SIDE; /* of the top face: its back */
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_ZIP_NOWHERE), 1);
}

/* ---- cushions that are not whole ---- */

/* A sewn cover whose sides are as a new layer has them: one face, no boxing, nothing to staple. */
static void a_cushion_that_is_not_sewn_shut_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "S", 20, 22, 4);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_TOP, soft->cloth);
    struct fault_note note;

    ((struct box *)model_find(&soft->model, ENTITY_box, box))->frame = FRAME_CUSHION;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUSHION_OPEN), 1);
    assert_int_equal(soft_finding(soft, FINDING_CUSHION_OPEN)->cure_count, 1);
    assert_int_equal(
        cure_apply(&soft->model, &soft_finding(soft, FINDING_CUSHION_OPEN)->cures[0], &note), 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUSHION_OPEN), 0);
    assert_piece(soft_piece(soft, cover, "face", 1), 21, 23);
    soft_layer_of(soft, cover)->both = 0;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUSHION_OPEN), 1);
    soft_layer_of(soft, cover)->slip = 1;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUSHION_OPEN), 0);
}

static void foam_that_does_not_fill_a_cushion_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "S", 20, 22, 8);
    struct fault_note note;

    ((struct box *)model_find(&soft->model, ENTITY_box, box))->frame = FRAME_CUSHION;
    soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam4);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUSHION_SLACK), 1);
    assert_int_equal(
        cure_apply(&soft->model, &soft_finding(soft, FINDING_CUSHION_SLACK)->cures[0], &note), 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUSHION_SLACK), 0);
    assert_int_equal(soft->plan->pieces.count, 2);
}

static void a_layer_thicker_than_its_foam_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "S", 20, 22, 4);
    int64_t foam = soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam2);

    soft_layer_of(soft, foam)->thickness = IN(2);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_FOAM_SHORT), 0);
    soft_layer_of(soft, foam)->thickness = IN(4);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_FOAM_SHORT), 1);
}

/* ---- welt, bands, widths ---- */

/* Round 20 x 22 on both faces, before the boxing. */
static void welt_in_a_seam_is_sewn_to_the_face_first(void **state)
{
    struct soft *soft = *state;
    int64_t box;
    int64_t cover = add_cushion(soft, &box);
    int64_t welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_TOP, soft->cloth);

    soft_endings(soft, welt, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    soft_plan(soft);
    assert_seam(seam_of(soft, cover, 0), "welt to the face", 2, 2 * (20 + 22));
    assert_true(seam_of(soft, cover, 2)->welt);
}

/* 124 in of 1-7/8 in three strips across 54: two joins on the slant, then the cord. */
static void strips_of_welt_are_joined_before_the_cord_goes_in(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_TOP, soft->cloth);

    soft_layer_of(soft, welt)->thickness = IN(0.25);
    soft_plan(soft);
    assert_string_equal(seam_of(soft, welt, 0)->what, "strips of the welt, on the slant");
    assert_int_equal(seam_of(soft, welt, 0)->count, 2);
    assert_in_range(seam_of(soft, welt, 0)->length, IN(2.651), IN(2.652));
    assert_seam(seam_of(soft, welt, 1), "cord into its strip", 1, 124);
}

static void a_band_is_closed_at_both_ends(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t band = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_FRONT, soft->cloth);

    soft_layer_of(soft, band)->both = 1;
    soft_layer_of(soft, band)->direction = DIRECTION_ACROSS;
    soft_endings(soft, band, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN, ENDING_OPEN);
    soft_plan(soft);
    assert_seam(seam_of(soft, band, 0), "ends of the band", 2, 15); /* 8 + 2 x 3.5 */
    assert_null(seam_of(soft, band, 1));
}

/* 170 + 13 in from a centre, two whole widths and two strips: four seams as long as the drop. */
static void widths_have_a_seam_between_each_two(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "W", 170, 3, 40);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);

    soft_plan(soft);
    assert_seam(seam_of(soft, cover, 0), "widths of the cover", 4, 53);
    assert_true(seam_of(soft, cover, 0)->even);
    assert_int_equal(soft_cover(soft, cover)->seams, 4);
}

static void what_comes_out_of_one_width_is_not_sewn(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "W", 30, 3, 40);

    soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_plan(soft);
    assert_int_equal(soft->plan->seams.count, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(a_wing_is_sewn_corner_first_then_side_by_side),
        SOFT_TEST(a_seam_has_its_allowance_marks_and_clip),
        SOFT_TEST(the_card_says_each_seam_and_what_stays_open),
        SOFT_TEST(a_box_cushion_has_all_its_pieces),
        SOFT_TEST(a_cushion_has_four_corners_and_eight_long_seams),
        SOFT_TEST(a_cushion_without_a_zip_is_closed_by_hand),
        SOFT_TEST(a_cushion_is_filled_and_closed),
        SOFT_TEST(a_slip_cover_is_pulled_on),
        SOFT_TEST(a_zip_stands_between_the_halves_of_its_strip),
        SOFT_TEST(a_zip_with_one_face_stands_in_its_seam),
        SOFT_TEST(a_zip_in_an_edge_too_short_for_it_is_told),
        SOFT_TEST(a_zip_where_nothing_is_sewn_is_told),
        SOFT_TEST(a_cushion_that_is_not_sewn_shut_is_told),
        SOFT_TEST(foam_that_does_not_fill_a_cushion_is_told),
        SOFT_TEST(a_layer_thicker_than_its_foam_is_told),
        SOFT_TEST(welt_in_a_seam_is_sewn_to_the_face_first),
        SOFT_TEST(strips_of_welt_are_joined_before_the_cord_goes_in),
        SOFT_TEST(a_band_is_closed_at_both_ends),
        SOFT_TEST(widths_have_a_seam_between_each_two),
        SOFT_TEST(what_comes_out_of_one_width_is_not_sewn),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
