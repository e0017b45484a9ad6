/*
 * Allowances of cloth, foam and webbing that hold for some materials and shapes only. All are the
 * trade's usual figures, common practice without a source; the sums stand beside the checks.
 */
#include "soft.h"

#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static struct stock *stock_of(struct soft *soft, int64_t stock)
{
    return model_find(&soft->model, ENTITY_stock, stock);
}

static int64_t add_cover(struct soft *soft, enum shape_word shape)
{
    int64_t box = soft_box(soft, "B", 40, 3, 30);

    return soft_layer(soft, box, LAYER_COVER, shape, SIDE_FRONT, soft->cloth);
}

/* ---- cloth ---- */

/* Wrapped on bare wood: 40 + 2 (3 + 1-1/2 + handle). Vinyl is held by 1/2 in more. */
static void vinyl_has_a_longer_handle(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_cover(soft, SHAPE_WRAPPED);

    soft_plan(soft);
    assert_cut(soft, cover, 40 + 2 * (3 + 1.5 + 2), 30 + 2 * (3 + 1.5 + 2));
    stock_of(soft, soft->cloth)->nature = NATURE_VINYL;
    soft_plan(soft);
    assert_cut(soft, cover, 40 + 2 * (3 + 1.5 + 2.5), 30 + 2 * (3 + 1.5 + 2.5));
}

/* A face sewn on all sides has a seam of 1/2 in at each; vinyl eases by 1/4 each way. */
static void a_pull_on_cover_of_vinyl_is_eased(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_cover(soft, SHAPE_SEWN);

    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    soft_layer_of(soft, cover)->both = 1;
    soft_plan(soft);
    assert_cut(soft, cover, 41, 31);
    stock_of(soft, soft->cloth)->nature = NATURE_VINYL;
    soft_plan(soft);
    assert_cut(soft, cover, 41.25, 31.25);
    assert_piece(soft_piece(soft, cover, "top boxing", 0), 41.25, 4);
}

/* Open below, it slips over: an inch each way, a hem of an inch, nothing to hold and no staple. The
 * hem goes once round: 2 x 41 and 2 x 3. */
static void a_cover_that_slips_on_and_off_is_hemmed(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_cover(soft, SHAPE_SEWN);
    const struct seam *hem;

    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN);
    soft_layer_of(soft, cover)->both = 1;
    soft_layer_of(soft, cover)->slip = 1;
    soft_plan(soft);
    assert_cut(soft, cover, 40 + 1 + 1, 30 + 0.5 + 1 + 1);
    assert_int_equal(soft_staples(soft, cover), 0);
    assert_int_equal(soft_findings(soft, FINDING_HANDLE_SHORT), 0);
    hem = &soft->plan->seams.at[soft->plan->seams.count - 1];
    assert_string_equal(hem->what, "hem of the open side");
    assert_int_equal(hem->length, IN(2 * 41 + 2 * 3));
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        assert_true(soft->plan->steps.at[i].kind != STEP_STAPLE);
}

/* 80.5 in of 54 in cloth: sides of (80.5 + 2 - 54) / 2 = 14.25; heavy cloth loses 1/16 at a seam.
 */
static void heavy_cloth_is_cut_wider_by_what_its_seams_take(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 80.5 - 13, 3, 30);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);

    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->side_strip, IN(14.25));
    stock_of(soft, soft->cloth)->nature = NATURE_HEAVY;
    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->side_strip, IN(14.3125));
}

static void a_motif_is_raised_on_an_upright_face_only(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_cover(soft, SHAPE_WRAPPED);
    int64_t seat = soft_layer(soft, soft_box(soft, "S", 30, 20, 0.75), LAYER_COVER, SHAPE_WRAPPED,
                              SIDE_TOP, soft->cloth);

    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->motif, 0);
    stock_of(soft, soft->cloth)->repeat_along = IN(12);
    soft_plan(soft);
    assert_int_equal(soft_cover(soft, cover)->motif, IN(1));
    assert_int_equal(soft_cover(soft, seat)->motif, 0);
}

/* 3 in of foam under one piece that goes round a corner; 2 in lies well, and so do two sides only.
 */
static void thick_foam_wants_a_boxing_strip(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_upholster(soft, soft_box(soft, "A", 40, 3, 30), SIDE_FRONT, soft->foam3);

    soft_upholster(soft, soft_box(soft, "B", 40, 3, 30), SIDE_FRONT, soft->foam2);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_BOXING_WANTED), 1);
    soft_endings(soft, cover, ENDING_STOP, ENDING_STOP, ENDING_WRAP, ENDING_WRAP);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_BOXING_WANTED), 0);
}

/* 43 in are used and 45 bought, 5 % over in steps of 9: 2 left, 9 are good. With 9 more it is
 * enough. */
static void what_is_left_of_the_cloth_has_to_mend_it(void **state)
{
    struct soft *soft = *state;

    add_cover(soft, SHAPE_WRAPPED);
    stock_of(soft, soft->cloth)->step_cut = IN(0.5);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_NO_RESERVE), 1);
    stock_of(soft, soft->cloth)->least_cut = IN(60);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_NO_RESERVE), 0);
}

/* ---- padding ---- */

static const struct padding *padding_of(const struct soft *soft, enum side_word side)
{
    return plan_padding(soft->plan, soft->model.boxes.at[0].key, (int64_t)side);
}

/* A seat of 3 in gives to 85 % under a sitter, batting counts as pulled; a back does not give. */
static void a_seat_gives_under_who_sits_on_it(void **state)
{
    struct soft *soft = *state;

    soft_upholster(soft, soft_box(soft, "S", 40, 20, 0.75), SIDE_TOP, soft->foam3);
    soft_plan(soft);
    assert_int_equal(padding_of(soft, SIDE_TOP)->pad, IN(3.25));
    assert_int_equal(padding_of(soft, SIDE_TOP)->pressed, IN(3 * 0.85 + 0.25));
    soft->model.boxes.at[0].height = IN(20);
    soft->model.layers.at[0].side = soft->model.layers.at[1].side = SIDE_FRONT;
    soft_plan(soft);
    assert_int_equal(padding_of(soft, SIDE_FRONT)->pressed, padding_of(soft, SIDE_FRONT)->pad);
}

static int64_t add_foam(struct soft *soft, enum shape_word shape, enum ending_word ending)
{
    int64_t box = soft_box(soft, "B", 40, 3, 30);
    int64_t foam = soft_layer(soft, box, LAYER_FOAM, shape, SIDE_FRONT, soft->foam2);

    soft_endings(soft, foam, ending, ending, ENDING_STOP, ENDING_STOP);
    return foam;
}

/* Flush, rolled over both side edges by 1/4, and down both sides of 3 in with 2 round each corner.
 */
static void foam_is_flush_or_rolls_over_or_goes_round(void **state)
{
    struct soft *soft = *state;
    int64_t flush = add_foam(soft, SHAPE_SLAB, ENDING_WRAP);
    int64_t rolled = add_foam(soft, SHAPE_WRAPPED, ENDING_SIDE);
    int64_t round = add_foam(soft, SHAPE_WRAPPED, ENDING_WRAP);

    soft_plan(soft);
    assert_cut(soft, flush, 40, 30);
    assert_cut(soft, rolled, 40.5, 30);
    assert_cut(soft, round, 40 + 2 * (3 + 2), 30);
}

/* In a sewn cover 1/2 in larger each way, soft foam an inch. */
static void foam_fills_a_sewn_cover(void **state)
{
    struct soft *soft = *state;
    int64_t foam = add_foam(soft, SHAPE_SLAB, ENDING_WRAP);
    int64_t cover = soft_layer(soft, soft_layer_of(soft, foam)->box, LAYER_COVER, SHAPE_SEWN,
                               SIDE_FRONT, soft->cloth);

    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    soft_plan(soft);
    assert_cut(soft, foam, 40.5, 30.5);
    stock_of(soft, soft->foam2)->nature = NATURE_SOFT;
    soft_plan(soft);
    assert_cut(soft, foam, 41, 31);
}

/* A field 4 in from the edges; batting goes 4-1/4 down the foam and the board beyond each: 8-3/4 of
 * the 12 that deep buttons draw in. */
static void deep_buttons_draw_the_batting_in(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "T", 36, 24, 0.75);
    int64_t cover = soft_upholster(soft, box, SIDE_TOP, soft->foam4);
    struct tufting *tufting;
    const struct finding *told;

    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_BATTING_DRAWN), 0);
    tufting = MODEL_ADD(&soft->model, tufting);
    tufting->layer = cover;
    tufting->across = 4;
    tufting->down = 2;
    soft_plan(soft);
    told = soft_finding(soft, FINDING_BATTING_DRAWN);
    assert_non_null(told);
    assert_int_equal(told->arguments[0].value, IN(8.75));
    assert_int_equal(told->arguments[1].value, IN(12));
}

/* ---- trim ---- */

/* Two cords of 1/4 take 2 pi / 4 + 1 + 1/2 = 3.07, 3-1/8 in eighths, and twice the cord. */
static void a_double_welt_has_two_cords(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_TOP, soft->cloth);

    soft_layer_of(soft, welt)->thickness = IN(0.25);
    soft_layer_of(soft, welt)->doubled = 1;
    soft_plan(soft);
    assert_cut(soft, welt, 124, 3.125);
    assert_int_equal(soft_used(soft, welt, STOCK_CORD) - soft_cover(soft, welt)->thread,
                     IN(2 * 124));
}

static void a_row_of_nails_stands_off_the_edge(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 16, 4, 10);
    struct stock *nails = MODEL_ADD(&soft->model, stock);
    int64_t key = nails->key;
    bool says = false;

    nails->name = "nails";
    nails->kind = STOCK_NAIL;
    soft_layer(soft, box, LAYER_TRIM, SHAPE_RUN, SIDE_FRONT, key);
    soft_plan(soft);
    assert_int_equal(soft->plan->nail_lines.at[0].from_edge, IN(0.5));
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        for (size_t k = 0; k < soft->plan->steps.at[i].action_count; k++)
            says |= strstr(soft->plan->steps.at[i].actions[k], "1/2 in from the edge") != NULL;
    assert_true(says);
}

/* ---- webbing ---- */

/* A frame of 24 x 21 in 1-1/2 in sticks, clear 21 x 18: the shorter way, (21 + 1-1/2) / 4-1/2 = 5
 * strips, each of 21 in when it is pulled by a tenth: 19.09 and two folds. */
static void elastic_webbing_lies_one_way_and_is_cut_short(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "S", 24, 21, 6);
    struct stock *web = MODEL_ADD(&soft->model, stock);
    int64_t key = web->key;
    struct facing *facing = MODEL_ADD(&soft->model, facing);
    struct box *frame = model_find(&soft->model, ENTITY_box, box);
    const struct webbing *laid;

    web = stock_of(soft, key);
    web->name = "webbing";
    web->kind = STOCK_STRIP;
    web->nature = NATURE_ELASTIC;
    facing->box = box;
    facing->side = SIDE_TOP;
    facing->kind = FACING_WEBBING;
    facing->stock = key;
    frame->frame = FRAME_CRATE;
    frame->through = THROUGH_RAILS;
    frame->stick = soft_wood(soft, STOCK_STICK, 1.5, 1.5);
    soft_plan(soft);
    laid = &soft->plan->webbings.at[0];
    assert_int_equal(laid->up, 5);
    assert_int_equal(laid->across, 0);
    assert_in_range(laid->up_length, IN(21.0909) - 8, IN(21.0910) + 8);
    assert_int_equal(laid->staples, 2 * 5 * 9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(vinyl_has_a_longer_handle),
        SOFT_TEST(a_pull_on_cover_of_vinyl_is_eased),
        SOFT_TEST(a_cover_that_slips_on_and_off_is_hemmed),
        SOFT_TEST(heavy_cloth_is_cut_wider_by_what_its_seams_take),
        SOFT_TEST(a_motif_is_raised_on_an_upright_face_only),
        SOFT_TEST(thick_foam_wants_a_boxing_strip),
        SOFT_TEST(what_is_left_of_the_cloth_has_to_mend_it),
        SOFT_TEST(a_seat_gives_under_who_sits_on_it),
        SOFT_TEST(foam_is_flush_or_rolls_over_or_goes_round),
        SOFT_TEST(foam_fills_a_sewn_cover),
        SOFT_TEST(deep_buttons_draw_the_batting_in),
        SOFT_TEST(a_double_welt_has_two_cords),
        SOFT_TEST(a_row_of_nails_stands_off_the_edge),
        SOFT_TEST(elastic_webbing_lies_one_way_and_is_cut_short),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
