/* What runs along edges: nailheads, strips of heads, welt round curves. */
#include "soft.h"

#include "plan/cover_sums.h"
#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* ---- sums ---- */

/* E. A. Johnson, Furniture Upholstery for Schools, 1919: gimp nails 1-1/2 to 2-1/2 in apart, the
 * middle first, then halves of halves. So 16 in at 2 in are 8 spaces; derived, he gives no count.
 */
static void sixteen_inches_are_eight_spaces_of_two(void **state)
{
    (void)state;
    assert_int_equal(nail_spaces(IN(16), IN(2)), 8);
}

/* Heads of 7/16 in touching: 27.4 a foot, by division. */
static void touching_heads_are_27_to_a_foot(void **state)
{
    (void)state;
    assert_int_equal(nail_spaces(IN(12), IN(0.4375)), 27);
    assert_int_equal(nail_spaces(IN(120), IN(0.4375)), 274);
}

/* Worked example, computed by hand: 106 heads of a 46 in line, one real nail in five. */
static void a_strip_is_held_by_one_nail_in_five(void **state)
{
    (void)state;
    assert_int_equal(strip_nails(106, 5), 23);
    assert_int_equal(strip_nails(105, 5), 22);
}

static void a_line_shorter_than_the_pitch_has_a_nail_at_each_end(void **state)
{
    (void)state;
    assert_int_equal(nail_spaces(IN(0.25), IN(1)), 1);
}

/* ---- lines ---- */

static int64_t add_nails(struct soft *soft, double diameter)
{
    struct stock *nails = MODEL_ADD(&soft->model, stock);

    nails->name = "nails";
    nails->kind = STOCK_NAIL;
    nails->diameter = IN(diameter);
    return nails->key;
}

/* Trim on the front of a box 16 in wide and 10 in high. */
static int64_t add_trim(struct soft *soft, int64_t stock)
{
    int64_t box = soft_box(soft, "L", 16, 4, 10);

    return soft_layer(soft, box, LAYER_TRIM, SHAPE_RUN, SIDE_FRONT, stock);
}

static void nails_stand_at_both_ends_of_an_open_line(void **state)
{
    struct soft *soft = *state;
    int64_t trim = add_trim(soft, add_nails(soft, 0.4375));

    soft_endings(soft, trim, ENDING_SIDE, ENDING_SIDE, ENDING_STOP, ENDING_STOP);
    soft_plan(soft);
    assert_int_equal(soft->plan->nail_lines.count, 2);
    assert_int_equal(soft_used(soft, trim, STOCK_NAIL), 2 * 11);
}

/* Round a face: 2 (16 + 10) nails, each corner has one. */
static void lines_that_meet_share_the_nail_on_their_corner(void **state)
{
    struct soft *soft = *state;
    int64_t trim = add_trim(soft, add_nails(soft, 0.4375));

    soft_plan(soft);
    assert_int_equal(soft->plan->nail_lines.count, 4);
    assert_int_equal(soft_used(soft, trim, STOCK_NAIL), 2 * (16 + 10));
}

/* Nails along the left edge alone, so far apart by the maker's word. */
static const struct nail_line *left_line(struct soft *soft, double head, double pitch)
{
    int64_t trim = add_trim(soft, add_nails(soft, head));
    struct layer_edge *left = MODEL_ADD(&soft->model, layer_edge);

    left->layer = trim;
    left->edge = EDGE_LEFT;
    left->pitch = IN(pitch);
    soft_endings(soft, trim, ENDING_SIDE, ENDING_STOP, ENDING_STOP, ENDING_STOP);
    soft_plan(soft);
    return &soft->plan->nail_lines.at[0];
}

static void a_line_is_divided_into_whole_spaces(void **state)
{
    const struct nail_line *line = left_line(*state, 0.4375, 2.25);

    assert_int_equal(line->spaces, 4); /* 10 / 2.25 is 4.4: 2-1/2 in each */
    assert_int_equal(line->nails, 5);
}

static void nails_stand_no_closer_than_their_heads(void **state)
{
    assert_int_equal(left_line(*state, 0.5, 0.25)->spaces, 20);
}

static void gimp_is_no_strip_of_heads(void **state)
{
    struct soft *soft = *state;
    struct stock *gimp = MODEL_ADD(&soft->model, stock);
    int64_t trim;

    gimp->name = "gimp";
    gimp->kind = STOCK_STRIP;
    trim = add_trim(soft, gimp->key);
    soft_plan(soft);
    assert_int_equal(soft->plan->nail_lines.count, 0);
    assert_int_equal(soft_used(soft, trim, STOCK_STRIP), IN(2 * (16 + 10) + 3 + 4));
}

/* ---- ways ---- */

static void offer(struct soft *soft, int64_t stock, int64_t pack, double length, int64_t price)
{
    struct offer *item = MODEL_ADD(&soft->model, offer);

    item->stock = stock;
    item->pack = pack;
    item->length = IN(length);
    item->price = price;
}

static int64_t add_strip(struct soft *soft)
{
    struct stock *strip = MODEL_ADD(&soft->model, stock);

    strip->name = "strip of heads";
    strip->kind = STOCK_STRIP;
    strip->diameter = IN(0.4375);
    return strip->key;
}

static void assert_way(const struct trim_way *way, int64_t heads, int64_t nails, int64_t minutes,
                       int64_t price)
{
    assert_int_equal(way->heads, heads);
    assert_int_equal(way->nails, nails);
    assert_int_equal(way->minutes, minutes);
    assert_true(way->priced);
    assert_int_equal(way->price, price);
}

/*
 * Round 16 x 10, by hand. An inch apart: 2 (16 + 10). Touching, heads of 7/16: 10 / .4375 is 22.9,
 * so 23 spaces and 24 nails, twice; 16 / .4375 is 36.6, so 37 spaces and, without the corners, 36
 * nails, twice. A strip: the same heads, held by 23 / 5 + 1 = 6 and 37 / 5 + 1 = 9 nails, twice.
 * Nails at 8.00 a hundred and strip at 9.00 for 180 in, with 5 % for waste: 55 nails 4.40; 126 are
 * 10.08; 54.6 in of strip 2.73 and 32 nails 2.56. Each nail takes 0.6 min, a metre of strip 5.
 */
static void heads_have_three_ways_with_counts_and_cost(void **state)
{
    struct soft *soft = *state;
    int64_t nails = add_nails(soft, 0.4375);
    int64_t strip = add_strip(soft);
    const struct trim_way *ways;

    add_trim(soft, nails);
    offer(soft, nails, 100, 0, 800);
    offer(soft, strip, 1, 180, 900);
    soft_plan(soft);
    assert_int_equal(soft->plan->trim_ways.count, TRIMS_MADE);
    ways = soft->plan->trim_ways.at;
    assert_way(&ways[TRIM_SPACED], 52, 52, 31200, 440);
    assert_way(&ways[TRIM_TOUCHING], 120, 120, 72000, 1008);
    assert_way(&ways[TRIM_STRIP], 120, 30, 24604, 529);
    assert_int_equal(ways[TRIM_STRIP].strip, IN(52));
    assert_true(ways[TRIM_SPACED].chosen);
    assert_false(ways[TRIM_TOUCHING].chosen);
}

/* The way that is taken has the counts of the layer itself. */
static void the_way_in_force_is_marked(void **state)
{
    struct soft *soft = *state;
    int64_t trim = add_trim(soft, add_nails(soft, 0.4375));

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct layer_edge *item = MODEL_ADD(&soft->model, layer_edge);

        item->layer = trim;
        item->edge = edge;
        item->pitch = IN(0.4375);
    }
    soft_plan(soft);
    assert_true(soft->plan->trim_ways.at[TRIM_TOUCHING].chosen);
    assert_int_equal(soft->plan->trim_ways.at[TRIM_TOUCHING].nails,
                     soft_used(soft, trim, STOCK_NAIL));
    soft_layer_of(soft, trim)->stock = add_strip(soft);
    soft_plan(soft);
    assert_true(soft->plan->trim_ways.at[TRIM_STRIP].chosen);
    assert_int_equal(soft->plan->trim_ways.at[TRIM_STRIP].nails, soft_used(soft, trim, STOCK_NAIL));
    assert_false(soft->plan->trim_ways.at[TRIM_STRIP].priced);
}

/* Over 2 in of foam a strip looks uneven; on wood it does not, and single nails never do. */
static void a_strip_on_a_soft_edge_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t trim = add_trim(soft, add_strip(soft));
    int64_t box = soft_layer_of(soft, trim)->box;
    const struct finding *finding;

    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_STRIP_ON_SOFT), 0);
    soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT, soft->foam2);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_STRIP_ON_SOFT), 1);
    finding = soft_finding(soft, FINDING_STRIP_ON_SOFT);
    assert_int_equal(finding->arguments[0].value, IN(2));
    assert_int_equal(finding->arguments[1].value, 120);
    assert_int_equal(finding->arguments[2].value, 30);
    soft_layer_of(soft, trim)->stock = add_nails(soft, 0.4375);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_STRIP_ON_SOFT), 0);
}

/* ---- welt ---- */

static int64_t add_arched_welt(struct soft *soft, enum outline_word outline)
{
    int64_t box = soft_box(soft, "H", 40, 3, 30);
    struct box *item = model_find(&soft->model, ENTITY_box, box);
    int64_t welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_FRONT, soft->cloth);

    item->outline = outline;
    soft_layer_of(soft, welt)->thickness = IN(0.25);
    soft_endings(soft, welt, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE, ENDING_STOP);
    return welt;
}

/* 100 + 2 + 2 x 1/2 in of 1-7/8: 193 in2 at 85 % are 227 in2, the root 15.07, to 1/8 in. */
static void welt_of_nothing_is_none_that_is_bought(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "X", 20, 3, 30);

    soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_FRONT, 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_WELT_BOUGHT), 0);
}

/* 20 in of it, a staple an inch and one more. Common practice, no source. */
static void welt_that_is_bought_is_stapled_and_not_sewn(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "X", 20, 3, 30);
    struct stock *cord = MODEL_ADD(&soft->model, stock);
    int64_t welt;

    cord->name = "lipped cord";
    cord->kind = STOCK_CORD;
    soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_FRONT, cord->key);
    soft_endings(soft, welt, ENDING_STOP, ENDING_STOP, ENDING_SIDE, ENDING_STOP);
    soft_plan(soft);
    assert_null(soft_step(soft, STEP_SEW));
    assert_int_equal(soft_staples(soft, welt), 21);
    assert_int_equal(soft_findings(soft, FINDING_WELT_BOUGHT), 1);
    assert_string_equal(soft_finding(soft, FINDING_WELT_BOUGHT)->arguments[0].text, "lipped cord");
    assert_int_equal(
        cure_apply(&soft->model, &soft_finding(soft, FINDING_WELT_BOUGHT)->cures[0], NULL), 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_WELT_BOUGHT), 0);
    assert_int_equal(soft_step(soft, STEP_SEW)->layer, welt);
    assert_true(soft_piece_count(soft, welt) > 0);
}

static void welt_round_an_arch_is_cut_on_the_bias(void **state)
{
    struct soft *soft = *state;
    int64_t welt = add_arched_welt(soft, OUTLINE_ARCH);

    soft_plan(soft);
    assert_true(soft_cover(soft, welt)->bias);
    assert_cut(soft, welt, 103, 1.875);
    assert_int_equal(soft_piece_count(soft, welt), 1);
    assert_piece(soft_piece(soft, welt, "welt on the bias", 0), 15.125, 15.125);
    assert_int_equal(soft_cover(soft, welt)->width_count, 5); /* 103 / 21.4 */
}

/* 6 in of it would come out of a scrap of 4-1/4, in strips that are all joins: 15 in is the
 * shortest strip, the diagonal of 10-5/8. */
static void a_short_welt_takes_a_whole_strip_all_the_same(void **state)
{
    struct soft *soft = *state;
    int64_t welt = add_arched_welt(soft, OUTLINE_ARCH);
    const struct layer *layer = soft_layer_of(soft, welt);
    struct box *box = model_find(&soft->model, ENTITY_box, layer->box);

    box->width = IN(6);
    soft_endings(soft, welt, ENDING_STOP, ENDING_STOP, ENDING_SIDE, ENDING_STOP);
    soft_plan(soft);
    assert_piece(soft_piece(soft, welt, "welt on the bias", 0), 10.625, 10.625);
}

static void welt_along_straight_edges_is_cut_straight(void **state)
{
    struct soft *soft = *state;
    int64_t welt = add_arched_welt(soft, OUTLINE_RECTANGLE);

    soft_plan(soft);
    assert_false(soft_cover(soft, welt)->bias);
    assert_int_equal(soft_piece_count(soft, welt), 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sixteen_inches_are_eight_spaces_of_two),
        cmocka_unit_test(touching_heads_are_27_to_a_foot),
        cmocka_unit_test(a_strip_is_held_by_one_nail_in_five),
        cmocka_unit_test(a_line_shorter_than_the_pitch_has_a_nail_at_each_end),
        SOFT_TEST(nails_stand_at_both_ends_of_an_open_line),
        SOFT_TEST(lines_that_meet_share_the_nail_on_their_corner),
        SOFT_TEST(a_line_is_divided_into_whole_spaces),
        SOFT_TEST(nails_stand_no_closer_than_their_heads),
        SOFT_TEST(welt_of_nothing_is_none_that_is_bought),
        SOFT_TEST(welt_that_is_bought_is_stapled_and_not_sewn),
        SOFT_TEST(welt_round_an_arch_is_cut_on_the_bias),
        SOFT_TEST(a_short_welt_takes_a_whole_strip_all_the_same),
        SOFT_TEST(welt_along_straight_edges_is_cut_straight),
        SOFT_TEST(gimp_is_no_strip_of_heads),
        SOFT_TEST(heads_have_three_ways_with_counts_and_cost),
        SOFT_TEST(the_way_in_force_is_marked),
        SOFT_TEST(a_strip_on_a_soft_edge_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
