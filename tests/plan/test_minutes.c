/*
 * Minutes of sewing, trimming and buttoning, by the trade's table (common practice, no source); the
 * lengths are computed by hand beside the checks. 1 in is 0.0254 m.
 */
#include "soft.h"

#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static const struct step *step_of(const struct soft *soft, int kind)
{
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        if (soft->plan->steps.at[i].kind == kind)
            return &soft->plan->steps.at[i];
    fail_msg("no step \"%s\"", step_kinds[kind].word);
    return NULL;
}

static void assert_minutes(const struct soft *soft, int kind, double minutes)
{
    int64_t found = step_of(soft, kind)->minutes;
    int64_t wanted = (int64_t)(minutes * 1000 + 0.5);

    if (found < wanted - 5 || found > wanted + 5) /* lengths count in whole millimetres */
        fail_msg("%s takes %.3f, not %.3f", step_kinds[kind].word, (double)found / 1000, minutes);
}

/* ---- sewing ---- */

/* A cushion 20 x 22 x 4, sewn all round to two faces. */
static int64_t add_cushion(struct soft *soft)
{
    int64_t box = soft_box(soft, "S", 20, 22, 4);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_TOP, soft->cloth);

    ((struct box *)model_find(&soft->model, ENTITY_box, box))->frame = FRAME_CUSHION;
    soft_layer_of(soft, cover)->both = 1;
    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    return cover;
}

#define CORNERS (4 * 4 * 0.0254 * 2.5)              /* straight: the boxing closed to a ring */
#define BOXING (2 * (2 * 20 + 2 * 22) * 0.0254 * 5) /* round both faces */
#define TURNS (2 * 4 * 2 * 2.0) /* both faces have four sides, each meets two corners */
/* Without a zip the last side is closed by hand when it is filled: 20 in at 12 min a metre. */
#define CLOSED_BY_HAND (20 * 0.0254 * 12)
#define NOT_ON_THE_MACHINE (20 * 0.0254 * 5 + 2 * 2.0)

static void a_boxing_seam_takes_longer_than_a_straight_one(void **state)
{
    struct soft *soft = *state;

    add_cushion(soft);
    soft_plan(soft);
    assert_minutes(soft, STEP_SEW, CORNERS + BOXING + TURNS - NOT_ON_THE_MACHINE);
    assert_minutes(soft, STEP_COVER, 5 + CLOSED_BY_HAND);
}

static void a_zip_takes_its_quarter_of_an_hour(void **state)
{
    struct soft *soft = *state;
    struct fitting *zip;

    add_cushion(soft);
    zip = MODEL_ADD(&soft->model, fitting);
    zip->box = soft->model.boxes.at[0].key;
    zip->kind = FITTING_ZIP;
    zip->side = SIDE_BACK;
    soft_plan(soft);
    assert_minutes(soft, STEP_SEW, CORNERS + BOXING + TURNS + 15);
}

/* 84 in round each face. */
static void welt_in_a_seam_is_sewn_on_first(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_cushion(soft);
    int64_t welt;
    size_t sewn = 0;

    welt = soft_layer(soft, soft_layer_of(soft, cover)->box, LAYER_WELT, SHAPE_RUN, SIDE_TOP,
                      soft->cloth);
    soft_endings(soft, welt, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->steps.count; i++) {
        const struct step *step = &soft->plan->steps.at[i];

        sewn += step->kind == STEP_SEW && (step->layer == cover || step->layer == welt);
        if (step->kind == STEP_SEW && step->layer == cover)
            assert_in_range(
                step->minutes,
                (CORNERS + BOXING + TURNS - NOT_ON_THE_MACHINE + 2 * 84 * 0.0254 * 4) * 1000 - 3,
                (CORNERS + BOXING + TURNS - NOT_ON_THE_MACHINE + 2 * 84 * 0.0254 * 4) * 1000 + 3);
        /* 84 in, 2 to join and 1/2 at each corner; two strips joined on the slant, 1-1/2 wide */
        if (step->kind == STEP_SEW && step->layer == welt)
            assert_in_range(step->minutes,
                            (88 * 0.0254 * 2.5 + 1.5 * 1.4142 * 0.0254 * 2.5) * 1000 - 3,
                            (88 * 0.0254 * 2.5 + 1.5 * 1.4142 * 0.0254 * 2.5) * 1000 + 3);
    }
    assert_int_equal(sewn, 2);
}

/* ---- stapling ---- */

/* 4 min a metre of stapling and one of trimming: 9 lines or 4 of 30 in. */
static void each_line_of_channels_takes_its_time(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "H", 40, 3, 30);
    int64_t cover = soft_upholster(soft, box, SIDE_FRONT, soft->foam3);
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);
    int64_t ten;

    tufting->layer = cover;
    tufting->made = TUFTS_CHANNELS;
    tufting->across = 10;
    tufting->down = 1;
    soft_plan(soft);
    ten = step_of(soft, STEP_STAPLE)->minutes;
    tufting->across = 5;
    soft_plan(soft);
    assert_minutes(soft, STEP_STAPLE, (double)ten / 1000 - 5 * 30 * 0.0254 * (4 + 1));
}

static void leave_open(struct soft *soft, int64_t layer, enum edge_word edge, int64_t join)
{
    struct opening *opening = MODEL_ADD(&soft->model, opening);

    opening->layer = layer;
    opening->edge = edge;
    opening->begin = IN(10);
    opening->length = IN(8);
    opening->join = join;
}

/* 6 min a metre, twice 8 in. */
static void both_flaps_of_a_join_take_their_time(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "C", 63, 3, 56);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    struct join *join = MODEL_ADD(&soft->model, join);
    int64_t key = join->key;

    join->name = "J";
    join->box_a = box;
    join->side_a = SIDE_BACK;
    join->target = TARGET_WALL;
    join->place = PLACE_SITE;
    leave_open(soft, cover, EDGE_LEFT, key);
    leave_open(soft, cover, EDGE_RIGHT, key);
    soft_plan(soft);
    assert_minutes(soft, STEP_FLAP, 2 * 8 * 0.0254 * 6);
}

/* ---- thread ---- */

/* Three times the 16 + 148 in of seams on the machine are 492 in, with 5 % over 517: two spools of
 * 10 yd. The last 20 in are stitched by hand, with other thread. */
static void thread_is_bought_by_the_spool(void **state)
{
    struct soft *soft = *state;
    struct stock *thread = MODEL_ADD(&soft->model, stock);
    int64_t key = thread->key;
    struct offer *spool = MODEL_ADD(&soft->model, offer);
    const struct purchase *bought = NULL;

    thread->name = "thread";
    thread->kind = STOCK_CORD;
    thread->nature = NATURE_THREAD;
    spool->stock = key;
    spool->length = IN(360);
    spool->price = 250;
    add_cushion(soft);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->purchases.count; i++)
        if (soft->plan->purchases.at[i].stock == key)
            bought = &soft->plan->purchases.at[i];
    assert_non_null(bought);
    assert_int_equal(bought->used, IN(492));
    assert_int_equal(bought->packs, 2);
    assert_int_equal(bought->price, 500);
}

/* ---- buttons ---- */

static void add_tufting(struct soft *soft, enum pattern_word pattern)
{
    int64_t box = soft_box(soft, "T", 36, 24, 0.75);
    int64_t cover = soft_upholster(soft, box, SIDE_TOP, soft->foam4);
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    tufting->layer = cover;
    tufting->pattern = (int64_t)pattern;
    tufting->across = 4;
    tufting->down = 2;
}

/* 22 buttons: 2 min to cover one, 8 to pull it deep; a minute for each hole through the foam, whose
 * 36 x 24 in are glued in 4 min a square metre. */
static void deep_buttons_take_holes_through_the_foam(void **state)
{
    struct soft *soft = *state;

    add_tufting(soft, PATTERN_DIAMOND);
    soft_plan(soft);
    assert_minutes(soft, STEP_BUTTON, 22 * (2 + 8));
    assert_minutes(soft, STEP_PAD, 22 + 36 * 24 * 0.0254 * 0.0254 * 4);
}

/* Foam on another box, and beside it on the same box, is glued on and no more. */
static void buttons_take_no_holes_through_foam_that_they_do_not_pass(void **state)
{
    struct soft *soft = *state;
    int64_t others[2];
    int found = 0;

    add_tufting(soft, PATTERN_DIAMOND);
    others[0] = soft_layer(soft, soft_box(soft, "U", 36, 24, 8), LAYER_FOAM, SHAPE_SLAB, SIDE_TOP,
                           soft->foam2);
    others[1] = soft_layer(soft, soft->model.boxes.at[0].key, LAYER_FOAM, SHAPE_SLAB, SIDE_BOTTOM,
                           soft->foam2);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->steps.count; i++) {
        const struct step *step = &soft->plan->steps.at[i];

        if (step->kind != STEP_PAD || (step->layer != others[0] && step->layer != others[1]))
            continue;
        assert_in_range(step->minutes, 2220, 2240); /* 0.557 square metres at 4 min */
        found++;
    }
    assert_int_equal(found, 2);
}

/* 5 x 3 buttons in squares, none through the foam. */
static void shallow_buttons_take_three_minutes(void **state)
{
    struct soft *soft = *state;

    add_tufting(soft, PATTERN_SHALLOW);
    soft_plan(soft);
    assert_minutes(soft, STEP_BUTTON, 15 * (2 + 3));
    assert_minutes(soft, STEP_PAD, 36 * 24 * 0.0254 * 0.0254 * 4);
}

/* ---- trim ---- */

static void add_trim(struct soft *soft, enum stock_word kind)
{
    int64_t box = soft_box(soft, "L", 16, 4, 10);
    struct stock *nails = MODEL_ADD(&soft->model, stock);

    nails->name = "nails";
    nails->kind = (int64_t)kind;
    nails->diameter = IN(0.4375);
    soft_layer(soft, box, LAYER_TRIM, SHAPE_RUN, SIDE_FRONT, nails->key);
}

/* 2 (16 + 10) of them. */
static void each_nail_takes_its_time(void **state)
{
    struct soft *soft = *state;

    add_trim(soft, STOCK_NAIL);
    soft_plan(soft);
    assert_minutes(soft, STEP_TRIM, 52 * 0.6);
}

/* 52 in of strip; of 10 in 23 heads, 6 nails, of 16 in 37 heads, 9 nails: two of each. */
static void a_strip_takes_its_nails_and_its_length(void **state)
{
    struct soft *soft = *state;

    add_trim(soft, STOCK_STRIP);
    soft_plan(soft);
    assert_minutes(soft, STEP_TRIM, 2 * (6 + 9) * 0.6 + 52 * 0.0254 * 5);
}

/* ---- cutting and carrying ---- */

/* Four minutes a piece, eight where a pattern has to match. */
static void a_patterned_piece_takes_twice_as_long_to_cut(void **state)
{
    struct soft *soft = *state;
    struct stock *cloth;

    soft_upholster(soft, soft_box(soft, "B", 20, 3, 20), SIDE_FRONT, soft->foam2);
    soft_plan(soft);
    assert_minutes(soft, STEP_SHEAR, 4);
    cloth = soft_cloth(soft);
    cloth->repeat_along = IN(9);
    soft_plan(soft);
    assert_minutes(soft, STEP_SHEAR, 8);
}

/* A minute and a half a crosscut, six a cut of a sheet: each part of the stock is one. */
static void each_part_takes_the_cut_of_its_stock(void **state)
{
    struct soft *soft = *state;
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    int64_t sheet = soft_wood(soft, STOCK_SHEET, 0.5, 0);
    struct box *box = model_find(&soft->model, ENTITY_box, soft_box(soft, "B", 30, 3, 20));
    struct facing *facing = MODEL_ADD(&soft->model, facing);
    int64_t sticks = 0, cuts = 0;

    box->stick = stick;
    facing->box = box->key;
    facing->stock = sheet;
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->parts.count; i++)
        sticks += soft->plan->parts.at[i].stock == stick;
    assert_true(sticks >= 4);
    for (size_t i = 0; i < soft->plan->steps.count; i++) {
        const struct step *step = &soft->plan->steps.at[i];

        if (step->kind != STEP_CUT)
            continue;
        assert_int_equal(step->minutes, cuts++ == 0 ? sticks * 1500 : 6000);
    }
    assert_int_equal(cuts, 2);
}

/* Five minutes a box, and ten more for each flight. */
static void each_flight_of_stairs_takes_ten_minutes_a_box(void **state)
{
    struct soft *soft = *state;
    struct passage *stairs = MODEL_ADD(&soft->model, passage);

    stairs->kind = PASSAGE_STAIR;
    stairs->width = stairs->height = IN(80);
    stairs->length = IN(100);
    soft_box(soft, "A", 20, 3, 20);
    soft_box(soft, "B", 20, 3, 20);
    soft->model.workshop.helper = 1;
    soft_plan(soft);
    assert_minutes(soft, STEP_MOVE, 2 * (5 + 10));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(a_boxing_seam_takes_longer_than_a_straight_one),
        SOFT_TEST(a_zip_takes_its_quarter_of_an_hour),
        SOFT_TEST(welt_in_a_seam_is_sewn_on_first),
        SOFT_TEST(each_line_of_channels_takes_its_time),
        SOFT_TEST(both_flaps_of_a_join_take_their_time),
        SOFT_TEST(thread_is_bought_by_the_spool),
        SOFT_TEST(deep_buttons_take_holes_through_the_foam),
        SOFT_TEST(buttons_take_no_holes_through_foam_that_they_do_not_pass),
        SOFT_TEST(shallow_buttons_take_three_minutes),
        SOFT_TEST(each_nail_takes_its_time),
        SOFT_TEST(a_strip_takes_its_nails_and_its_length),
        SOFT_TEST(a_patterned_piece_takes_twice_as_long_to_cut),
        SOFT_TEST(each_part_takes_the_cut_of_its_stock),
        SOFT_TEST(each_flight_of_stairs_takes_ten_minutes_a_box),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
