/* Where nothing else is said, figures are of worked examples that were computed by hand. */
#include "soft.h"

#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* ---- a wing headboard: centre 63 x 56 x 3, foam from 12 in up ---- */

struct centre {
    int64_t foam, batting, cover, lining;
};

static struct centre add_centre(struct soft *soft)
{
    struct centre centre;
    int64_t box = soft_box(soft, "C", 63, 3, 56);

    centre.foam = soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT, soft->foam2);
    soft_layer_of(soft, centre.foam)->v = IN(12);
    centre.batting = soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    soft_endings(soft, centre.batting, ENDING_STOP, ENDING_STOP, ENDING_WRAP, ENDING_STOP);
    centre.cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    centre.lining = soft_layer(soft, box, LAYER_LINING, SHAPE_FLAT, SIDE_BACK, soft->lining);
    return centre;
}

static void a_wrapped_cover_goes_round_foam_and_side_to_landing_and_handle(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    assert_cut(soft, centre.cover, 80.5, 71.75);
}

static void a_cover_wider_than_the_cloth_is_a_centre_and_equal_sides(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    const struct cover *cover;

    soft_plan(soft);
    cover = soft_cover(soft, centre.cover);
    assert_int_equal(cover->width_count, 2);
    assert_int_equal(cover->side_strip, IN(14.25));
    assert_int_equal(cover->seam, IN(26.5));
    assert_piece(soft_piece(soft, centre.cover, "cover", 0), 54, 71.75);
    assert_piece(soft_piece(soft, centre.cover, "cover side", 0), 14.25, 71.75);
    assert_piece(soft_piece(soft, centre.cover, "cover side", 1), 14.25, 71.75);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_WIDTHS), 1);
}

/* The seam takes 1/2 in of both: what of the pattern lies there on one lies there on the other. */
static void the_pattern_goes_on_over_the_seams(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    const struct piece *middle, *right, *left;
    int64_t begin;

    soft_cloth(soft)->repeat_across = IN(7);
    soft_plan(soft);
    middle = soft_piece(soft, centre.cover, "cover", 0);
    left = soft_piece(soft, centre.cover, "cover side", 0);
    right = soft_piece(soft, centre.cover, "cover side", 1);
    begin = soft_across(soft, middle);
    assert_int_equal((begin + middle->width - IN(0.5) - soft_across(soft, right) - IN(0.5)) % IN(7),
                     0);
    assert_int_equal((begin + IN(0.5) - soft_across(soft, left) - left->width + IN(0.5)) % IN(7),
                     0);
    assert_int_equal(right->nth, 1);
    assert_int_equal(left->nth, -1);
}

static struct layer *matched_wing(struct soft *soft, int64_t *ret_wing)
{
    int64_t batting;

    *ret_wing = soft_wing(soft, "L", SIDE_RIGHT, &batting);
    soft_cloth(soft)->repeat_across = IN(20);
    return soft_layer_of(soft, *ret_wing);
}

/* Half of the piece, rounded down, from its left edge: 15 7/8 in. */
static int64_t middle_of(const struct soft *soft, const struct piece *piece)
{
    return soft_across(soft, piece) + piece->width / 2;
}

/* By hand: 20 in of repeat, so faces whose middles are 20, 40 ... in from that of another. */
static void middles_lie_on_one_line_of_the_pattern_or_the_motif_to_the_right(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    int64_t wing, apart;

    matched_wing(soft, &wing)->motif = IN(3);
    soft_plan(soft);
    apart = middle_of(soft, soft_piece(soft, wing, "face", 0)) + IN(3) -
            middle_of(soft, soft_piece(soft, centre.cover, "cover", 0));
    assert_int_equal(apart % IN(20), 0);
    apart = middle_of(soft, soft_piece(soft, wing, "face", 0)) -
            middle_of(soft, soft_piece(soft, wing, "face", 1));
    assert_int_equal(apart % IN(20), 0);
}

static int64_t cloth_used(const struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->jobs.count; i++)
        if (soft->plan->jobs.at[i].stock == soft->cloth)
            return soft->plan->jobs.at[i].layout->blanks.at[0].used;
    fail_msg("no cloth is cut");
    return 0;
}

/* By hand: two faces 15 7/8 in wide lie beside each other on 54 in, but for a repeat of 40 in, by
 * which only one has a place; unmatched they do again. */
static void a_layer_that_need_not_match_lies_as_it_fits(void **state)
{
    struct soft *soft = *state;
    int64_t wing;
    struct layer *layer = matched_wing(soft, &wing);

    soft_cloth(soft)->repeat_across = IN(40);
    soft_plan(soft);
    assert_true(cloth_used(soft) >= IN(2 * 60.25));
    layer->unmatched = 1;
    soft_plan(soft);
    assert_true(cloth_used(soft) < IN(2 * 60.25));
}

static void add_flaw(struct soft *soft, struct flaw flaw)
{
    struct flaw *added = MODEL_ADD(&soft->model, flaw);

    flaw.note = "";
    flaw.key = added->key;
    flaw.stock = soft->cloth;
    *added = flaw;
}

/* By hand: what is 60 1/4 in long does not fit before a flaw that begins at 10 in. */
static void a_flaw_of_the_roll_is_cut_round(void **state)
{
    struct soft *soft = *state;
    int64_t wing, before;

    (void)matched_wing(soft, &wing);
    soft_cloth(soft)->repeat_across = 0;
    soft_plan(soft);
    before = cloth_used(soft);
    add_flaw(soft, (struct flaw){.along = IN(10), .length = IN(2)});
    soft_plan(soft);
    assert_int_equal(cloth_used(soft), before + IN(12));
    add_flaw(soft, (struct flaw){.along = IN(30), .length = IN(1)});
    soft_plan(soft);
    assert_int_equal(cloth_used(soft), before + IN(31));
}

/* By hand: on a roll of 54 in, pieces of up to 26 in lie beside a flaw of 2 in at its left edge,
 * and beyond its right edge a flaw spoils nothing. */
static void a_flaw_at_an_edge_leaves_the_rest_of_the_width(void **state)
{
    struct soft *soft = *state;
    int64_t wing, before;

    (void)matched_wing(soft, &wing);
    soft_cloth(soft)->repeat_across = 0;
    soft_plan(soft);
    before = cloth_used(soft);
    add_flaw(soft, (struct flaw){.along = IN(10), .length = IN(2), .width = IN(2)});
    add_flaw(soft, (struct flaw){.along = IN(20), .length = IN(2), .across = IN(54)});
    soft_plan(soft);
    assert_int_equal(cloth_used(soft), before);
}

static void a_cover_that_may_not_be_sewn_is_a_stop(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_layer_of(soft, centre.cover)->seams = 0;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_NO_SEAM), 1);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_WIDTHS), 0);
}

static void foam_beyond_the_slab_is_laid_from_strips(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    assert_cut(soft, centre.foam, 63, 44);
    assert_int_equal(soft_piece_count(soft, centre.foam), 2);
    assert_piece(soft_piece(soft, centre.foam, "foam", 0), 63, 24);
    assert_piece(soft_piece(soft, centre.foam, "foam", 1), 63, 20);
}

static void batting_goes_down_the_top_and_on_to_the_back(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    assert_cut(soft, centre.batting, 63, 60);
    assert_piece(soft_piece(soft, centre.batting, "batting", 0), 48, 60);
    assert_piece(soft_piece(soft, centre.batting, "batting", 1), 15, 60);
}

static void a_back_lining_lies_railroaded_to_save_a_seam(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    assert_cut(soft, centre.lining, 64.5, 57.5);
    assert_true(soft_cover(soft, centre.lining)->railroaded);
    assert_int_equal(soft_cover(soft, centre.lining)->width_count, 1);
}

static void glue_is_counted_for_foam_once_and_for_a_quarter_of_batting(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    /* square millimetres, each piece rounded */
    assert_in_range(soft_used(soft, centre.foam, STOCK_SPRAY), 1788383, 1788385);
    assert_in_range(soft_used(soft, centre.batting, STOCK_SPRAY), 609675, 609677);
}

static void a_wing_is_two_faces_and_a_boxing_strip_in_front_and_above(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t cover = soft_wing(soft, "L", SIDE_RIGHT, &batting);

    soft_plan(soft);
    assert_cut(soft, cover, 15.875, 60.25);
    assert_int_equal(soft_piece_count(soft, cover), 4);
    assert_piece(soft_piece(soft, cover, "face", 0), 15.875, 60.25);
    assert_piece(soft_piece(soft, cover, "face", 1), 15.875, 60.25);
    assert_piece(soft_piece(soft, cover, "front boxing", 0), 5, 60.25);
    assert_piece(soft_piece(soft, cover, "top boxing", 0), 5, 16.125);
}

static void boxing_of_plain_cloth_may_be_turned_and_faces_may_not(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t cover = soft_wing(soft, "L", SIDE_RIGHT, &batting);

    soft_plan(soft);
    assert_false(soft_piece(soft, cover, "face", 0)->turned_allowed);
    assert_true(soft_piece(soft, cover, "top boxing", 0)->turned_allowed);
    soft_cloth(soft)->pile = 1;
    soft_plan(soft);
    assert_false(soft_piece(soft, cover, "top boxing", 0)->turned_allowed);
}

/* Its front edge is padded too, so the batting goes round it: 2 x 11.875 + 3.5 (derived). */
static void sleeve_batting_goes_round_the_front_and_over_the_top(void **state)
{
    struct soft *soft = *state;
    int64_t batting;

    soft_wing(soft, "L", SIDE_RIGHT, &batting);
    soft_plan(soft);
    assert_cut(soft, batting, 27.25, 59.5);
}

static void mirrored_wings_have_mirrored_pieces(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t left = soft_wing(soft, "L", SIDE_RIGHT, &batting);
    int64_t right = soft_wing(soft, "R", SIDE_LEFT, &batting);
    static const char *const names[] = {"face", "front boxing", "top boxing"};

    soft_plan(soft);
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        const struct piece *a = soft_piece(soft, left, names[i], 0);
        const struct piece *b = soft_piece(soft, right, names[i], 0);

        assert_true(a && b && a->width == b->width && a->height == b->height);
    }
    assert_int_equal(soft_staples(soft, left), soft_staples(soft, right));
}

/* ---- a tufted ottoman: top 36 x 24, 4 in foam ---- */

static int64_t add_tufted_top(struct soft *soft, enum pattern_word pattern)
{
    int64_t box = soft_box(soft, "T", 36, 24, 0.75);
    int64_t cover = soft_upholster(soft, box, SIDE_TOP, soft->foam4);
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    soft_layer_of(soft, cover)->direction = DIRECTION_ACROSS;
    tufting->layer = cover;
    tufting->pattern = (int64_t)pattern;
    tufting->across = 4;
    tufting->down = 2;
    return cover;
}

static void a_tufted_top_takes_a_pull_for_each_diamond(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tufted_top(soft, PATTERN_DIAMOND);

    soft_plan(soft);
    assert_cut(soft, cover, 65.5, 48.5);
}

static void a_railroaded_piece_lies_across_the_roll_whole(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tufted_top(soft, PATTERN_DIAMOND);
    const struct piece *piece;

    soft_plan(soft);
    piece = soft_piece(soft, cover, "cover", 0);
    assert_piece(piece, 65.5, 48.5);
    assert_true(piece->across);
    assert_int_equal(soft_cover(soft, cover)->width_count, 1);
}

static void buttons_and_cord_are_used_up(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tufted_top(soft, PATTERN_DIAMOND);

    soft_plan(soft);
    assert_int_equal(soft_used(soft, cover, STOCK_BUTTON), 22);
    assert_int_equal(soft_used(soft, cover, STOCK_CORD), IN(22 * 24));
}

static void buttons_stand_in_rows_set_off_by_half_a_diamond(void **state)
{
    struct soft *soft = *state;
    static const double lower[] = {7.5, 14.5, 21.5, 28.5}, second[] = {4, 11, 18, 25, 32};

    add_tufted_top(soft, PATTERN_DIAMOND);
    soft_plan(soft);
    assert_int_equal(soft->plan->tufts.count, 22);
    for (int i = 0; i < 4; i++) {
        assert_int_equal(soft->plan->tufts.at[i].u, IN(lower[i]));
        assert_int_equal(soft->plan->tufts.at[i].v, IN(4));
    }
    for (int i = 0; i < 5; i++) {
        assert_int_equal(soft->plan->tufts.at[4 + i].u, IN(second[i]));
        assert_int_equal(soft->plan->tufts.at[4 + i].v, IN(8));
    }
}

/* A base 36 x 24 with a cross of 1-1/2 in from x on, under the tufted top. */
static void add_base(struct soft *soft, int64_t cover, double x)
{
    int64_t base = soft_box(soft, "B", 36, 24, 8);
    struct stock *stick = MODEL_ADD(&soft->model, stock);
    int64_t key = stick->key;
    struct member *cross = MODEL_ADD(&soft->model, member);
    struct join *join = MODEL_ADD(&soft->model, join);
    struct box *box = model_find(&soft->model, ENTITY_box, base);

    stick->name = "2x2";
    stick->kind = STOCK_STICK;
    stick->thickness = IN(1.5);
    stick->width = IN(1.5);
    box->frame = FRAME_CRATE;
    box->through = THROUGH_RAILS;
    box->stick = key;
    box->supports = MAKING_HAND;
    box->crosses = MAKING_HAND;
    cross->box = base;
    cross->kind = MEMBER_CROSS;
    cross->axis = AXIS_Y;
    cross->x = IN(x);
    cross->y = IN(1.5);
    cross->z = IN(6.5);
    join->name = "T";
    join->box_a = base;
    join->side_a = SIDE_TOP;
    join->box_b = soft_layer_of(soft, cover)->box;
    join->side_b = SIDE_BOTTOM;
}

static void a_button_over_a_cross_of_the_base_is_warned_of(void **state)
{
    struct soft *soft = *state;

    add_base(soft, add_tufted_top(soft, PATTERN_DIAMOND), 17.25);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_ON_MEMBER), 1);
}

static void a_cross_an_inch_from_the_buttons_is_clear(void **state)
{
    struct soft *soft = *state;

    add_base(soft, add_tufted_top(soft, PATTERN_DIAMOND), 15.5);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_TUFT_ON_MEMBER), 0);
}

/* Circles of twice the diameter: 22 of 1-3/4 in in five columns. */
static void button_cloth_is_cut_as_one_block(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tufted_top(soft, PATTERN_DIAMOND);

    soft_plan(soft);
    assert_piece(soft_piece(soft, cover, "button cloth", 0), 8.75, 8.75);
}

/* Half an inch for each space: common practice, no source. */
static void buttons_in_uncut_foam_take_little_cloth(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_tufted_top(soft, PATTERN_SHALLOW);

    soft_plan(soft);
    assert_cut(soft, cover, 36 + 5 * 0.5 + 10 + 7, 24 + 3 * 0.5 + 10 + 7);
}

/* Base 36 x 24 x 8 with batting all round; the top lands on the base's top by half an inch. */
static int64_t add_band(struct soft *soft, int64_t *ret_batting)
{
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t batting =
        soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    int64_t band = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_FRONT, soft->cloth);
    struct layer_edge *top = MODEL_ADD(&soft->model, layer_edge);

    soft_layer_of(soft, band)->direction = DIRECTION_ACROSS;
    soft_layer_of(soft, batting)->both = 1;
    soft_layer_of(soft, band)->both = 1;
    soft_endings(soft, batting, ENDING_WRAP, ENDING_WRAP, ENDING_STOP, ENDING_STOP);
    soft_endings(soft, band, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN, ENDING_OPEN);
    top->layer = band;
    top->edge = EDGE_TOP;
    top->landing = IN(0.5);
    *ret_batting = batting;
    return band;
}

static void a_band_is_two_strips_each_half_of_the_way_round(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t band = add_band(soft, &batting);

    soft_plan(soft);
    assert_cut(soft, band, 62, 14.5);
    assert_int_equal(soft_piece_count(soft, band), 2);
    assert_piece(soft_piece(soft, band, "band", 1), 62, 14.5);
}

/* ---- a banquette ---- */

static int64_t add_seat(struct soft *soft, const char *name, double width, int64_t foam)
{
    return soft_upholster(soft, soft_box(soft, name, width, 18, 0.75), SIDE_TOP, foam);
}

static int64_t add_back(struct soft *soft, const char *name, double width, int64_t foam)
{
    return soft_upholster(soft, soft_box(soft, name, width, 0.5, 18), SIDE_FRONT, foam);
}

static void seats_and_backs_are_cut_to_their_padding(void **state)
{
    struct soft *soft = *state;
    int64_t seat_a = add_seat(soft, "SA", 84, soft->foam3);
    int64_t seat_b = add_seat(soft, "SB", 42, soft->foam3);
    int64_t back_a = add_back(soft, "BA", 84, soft->foam2);
    int64_t back_b = add_back(soft, "BB", 57, soft->foam2);

    soft_plan(soft);
    assert_cut(soft, seat_a, 99.5, 33.5);
    assert_cut(soft, seat_b, 57.5, 33.5);
    assert_cut(soft, back_a, 97, 31);
    assert_cut(soft, back_b, 70, 31);
}

/* Batting and cover over a front, from `u` on, and round one end. */
static int64_t add_apron(struct soft *soft, const char *name, double width, double u)
{
    int64_t box = soft_box(soft, name, width, 18, 14.25);
    int64_t batting =
        soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);

    soft_endings(soft, batting, ENDING_STOP, ENDING_WRAP, ENDING_STOP, ENDING_STOP);
    soft_endings(soft, cover, ENDING_SIDE, ENDING_WRAP, ENDING_SIDE, ENDING_SIDE);
    soft_layer_of(soft, batting)->u = IN(u);
    soft_layer_of(soft, cover)->u = IN(u);
    return cover;
}

static void an_apron_goes_from_inside_its_front_round_the_end(void **state)
{
    struct soft *soft = *state;
    int64_t apron = add_apron(soft, "A", 84, 18);

    soft_plan(soft);
    assert_cut(soft, apron, 91.5, 21.75);
}

/* ---- sewn cushions, outside backs, welt: common practice, no source ---- */

static void foam_in_a_sewn_cover_is_cut_oversize(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "S", 20, 22, 4);
    int64_t foam = soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam4);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_TOP, soft->cloth);

    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    soft_plan(soft);
    assert_cut(soft, foam, 20.5, 22.5);
    assert_cut(soft, cover, 21, 23);
    /* depth 4, foam 4, seam 1/2, landing 1-1/2, handle 2 */
    assert_piece(soft_piece(soft, cover, "front boxing", 0), 21, 12);
    assert_piece(soft_piece(soft, cover, "left boxing", 0), 23, 12);
}

static void boxing_beside_a_zip_is_wider(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "S", 20, 22, 4);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_TOP, soft->cloth);
    struct fitting *zip = MODEL_ADD(&soft->model, fitting);

    zip->box = box;
    zip->kind = FITTING_ZIP;
    zip->side = SIDE_BACK;
    soft_layer_of(soft, cover)->both = 1;
    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    soft_plan(soft);
    assert_piece(soft_piece(soft, cover, "front boxing", 0), 21, 5);
    assert_piece(soft_piece(soft, cover, "back zip boxing", 0), 21, 3); /* of 6, cut in two */
}

/* 90 in of face and half an inch of seam on both sides, out of 54: both faces alike, a full centre
 * and sides of (91 + 2 - 54) / 2. */
static void both_faces_of_a_sleeve_have_the_same_seams(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "W", 90, 6, 30);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_FRONT, soft->cloth);

    soft_layer_of(soft, cover)->both = 1;
    soft_layer_of(soft, cover)->direction = DIRECTION_UP;
    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN);
    soft_plan(soft);
    for (int nth = 0; nth < 2; nth++) {
        assert_int_equal(soft_piece(soft, cover, "face", nth)->width, IN(54));
        assert_int_equal(soft_piece(soft, cover, "face side", 2 * nth)->width, IN(19.5));
        assert_int_equal(soft_piece(soft, cover, "face side", 2 * nth + 1)->width, IN(19.5));
    }
}

/* A band is cut as wide as its face and one end; its seams are placed on the face. */
static void seams_of_a_band_stand_even_on_its_face(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "W", 90, 18, 12);
    int64_t band = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_FRONT, soft->cloth);
    const struct cover *cover;

    soft_layer_of(soft, band)->both = 1;
    soft_layer_of(soft, band)->direction = DIRECTION_UP;
    soft_endings(soft, band, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN, ENDING_OPEN);
    soft_plan(soft);
    cover = soft_cover(soft, band);
    /* 90 + 18 + 1 in: seams as far left of the face's middle as right of it, so the strip that goes
     * round the end is wider by the 18 in of it */
    assert_int_equal(cover->seams, 2);
    assert_int_equal(cover->side_strip_right - cover->side_strip, IN(18));
    assert_int_equal(cover->cut_width, IN(109));
}

static void an_outside_back_hangs_from_a_card_strip(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "K", 40, 4, 30);
    int64_t back = soft_layer(soft, box, LAYER_OUTSIDE_BACK, SHAPE_FLAT, SIDE_BACK, soft->cloth);

    soft_plan(soft);
    assert_cut(soft, back, 42, 34);
    assert_int_equal(soft_used(soft, back, STOCK_STRIP), IN(40 + 2 * 28));
}

static void welt_is_its_run_with_a_join_and_corners(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_TOP, soft->cloth);

    soft_layer_of(soft, welt)->thickness = IN(0.25);
    soft_plan(soft);
    assert_cut(soft, welt, 120 + 2 + 4 * 0.5, 1.875);
    assert_int_equal(soft_piece_count(soft, welt), 3);
    assert_int_equal(soft_used(soft, welt, STOCK_CORD) - soft_cover(soft, welt)->thread, IN(124));
}

/* ---- labels ---- */

static void pieces_are_labelled_by_box_layer_and_letter(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    assert_string_equal(soft_piece(soft, centre.foam, "foam", 1)->label, "C-L1b");
    assert_string_equal(soft_piece(soft, centre.cover, "cover side", 1)->label, "C-L3c");
}

static void a_long_box_name_is_cut_at_a_whole_character(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "sidewing\xc3\xa9\xc3\xa9\xc3\xa9", 30, 3, 20);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);

    soft_plan(soft);
    assert_string_equal(soft_piece(soft, cover, "cover", 0)->label, "sidewing\xc3\xa9-L1a");
}

/* ---- groups ---- */

/* Boxes of 12 x 20 in a row, in front of which one cover lies: its key. */
static int64_t add_covered_group(struct soft *soft, const char *name, const char *const *boxes,
                                 int count)
{
    struct group *group = MODEL_ADD(&soft->model, group);
    int64_t key = group->key;
    int64_t cover;

    group->name = name;
    for (int i = 0; i < count; i++) {
        int64_t box = soft_box(soft, boxes[i], 12, 2, 20);
        struct group_box *in = MODEL_ADD(&soft->model, group_box);

        in->group = key;
        in->box = box;
    }
    cover = soft_layer(soft, 0, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_layer_of(soft, cover)->group = key;
    return cover;
}

static void one_cover_spans_the_boxes_of_its_group_and_no_other(void **state)
{
    static const char *const back[] = {"P", "Q", "R"}, *const seat[] = {"S", "T"};
    struct soft *soft = *state;
    int64_t over_back = add_covered_group(soft, "back", back, 3);
    int64_t over_seat = add_covered_group(soft, "seat", seat, 2);

    soft_plan(soft);
    assert_cut(soft, over_back, 36 + 2 * 2 + 7, 20 + 2 * 2 + 7);
    assert_cut(soft, over_seat, 24 + 2 * 2 + 7, 20 + 2 * 2 + 7);
}

/* The first of three stands higher than the others, and the last of two. */
static void a_cover_of_a_group_is_as_high_as_its_highest_box(void **state)
{
    static const char *const back[] = {"P", "Q", "R"}, *const seat[] = {"S", "T"};
    struct soft *soft = *state;
    int64_t over_back = add_covered_group(soft, "back", back, 3);
    int64_t over_seat = add_covered_group(soft, "seat", seat, 2);

    soft->model.boxes.at[0].height = soft->model.boxes.at[4].height = IN(26);
    soft_plan(soft);
    assert_cut(soft, over_back, 36 + 2 * 2 + 7, 26 + 2 * 2 + 7);
    assert_cut(soft, over_seat, 24 + 2 * 2 + 7, 26 + 2 * 2 + 7);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(a_wrapped_cover_goes_round_foam_and_side_to_landing_and_handle),
        SOFT_TEST(a_cover_wider_than_the_cloth_is_a_centre_and_equal_sides),
        SOFT_TEST(the_pattern_goes_on_over_the_seams),
        SOFT_TEST(middles_lie_on_one_line_of_the_pattern_or_the_motif_to_the_right),
        SOFT_TEST(a_layer_that_need_not_match_lies_as_it_fits),
        SOFT_TEST(a_flaw_of_the_roll_is_cut_round),
        SOFT_TEST(a_flaw_at_an_edge_leaves_the_rest_of_the_width),
        SOFT_TEST(a_cover_that_may_not_be_sewn_is_a_stop),
        SOFT_TEST(foam_beyond_the_slab_is_laid_from_strips),
        SOFT_TEST(batting_goes_down_the_top_and_on_to_the_back),
        SOFT_TEST(a_back_lining_lies_railroaded_to_save_a_seam),
        SOFT_TEST(glue_is_counted_for_foam_once_and_for_a_quarter_of_batting),
        SOFT_TEST(a_wing_is_two_faces_and_a_boxing_strip_in_front_and_above),
        SOFT_TEST(boxing_of_plain_cloth_may_be_turned_and_faces_may_not),
        SOFT_TEST(sleeve_batting_goes_round_the_front_and_over_the_top),
        SOFT_TEST(mirrored_wings_have_mirrored_pieces),
        SOFT_TEST(a_tufted_top_takes_a_pull_for_each_diamond),
        SOFT_TEST(a_railroaded_piece_lies_across_the_roll_whole),
        SOFT_TEST(buttons_and_cord_are_used_up),
        SOFT_TEST(buttons_stand_in_rows_set_off_by_half_a_diamond),
        SOFT_TEST(a_button_over_a_cross_of_the_base_is_warned_of),
        SOFT_TEST(a_cross_an_inch_from_the_buttons_is_clear),
        SOFT_TEST(button_cloth_is_cut_as_one_block),
        SOFT_TEST(buttons_in_uncut_foam_take_little_cloth),
        SOFT_TEST(a_band_is_two_strips_each_half_of_the_way_round),
        SOFT_TEST(seats_and_backs_are_cut_to_their_padding),
        SOFT_TEST(an_apron_goes_from_inside_its_front_round_the_end),
        SOFT_TEST(foam_in_a_sewn_cover_is_cut_oversize),
        SOFT_TEST(boxing_beside_a_zip_is_wider),
        SOFT_TEST(both_faces_of_a_sleeve_have_the_same_seams),
        SOFT_TEST(seams_of_a_band_stand_even_on_its_face),
        SOFT_TEST(an_outside_back_hangs_from_a_card_strip),
        SOFT_TEST(welt_is_its_run_with_a_join_and_corners),
        SOFT_TEST(pieces_are_labelled_by_box_layer_and_letter),
        SOFT_TEST(a_long_box_name_is_cut_at_a_whole_character),
        SOFT_TEST(one_cover_spans_the_boxes_of_its_group_and_no_other),
        SOFT_TEST(a_cover_of_a_group_is_as_high_as_its_highest_box),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
