/*
 * Outlines that are no rectangle, cloth that came out short, and lids. Lengths along curves are
 * those of plane geometry, named beside the checks; the rest is common practice without a source.
 */
#include "soft.h"

#include "model/trade.h"
#include "plan/cure.h"
#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#define EXACT (LENGTH_INCH / 500) /* two thousandths of an inch */

static void assert_about(int64_t found, double inches)
{
    int64_t wanted = IN(inches);

    if (found < wanted - EXACT || found > wanted + EXACT)
        fail_msg("%.4f in, not %.4f", (double)found / LENGTH_INCH, inches);
}

/* A frame 48 x 30 whose front is seen. */
static struct box *add_box(struct soft *soft, double width, enum outline_word outline, double rise)
{
    int64_t key = soft_box(soft, "H", width, 3, 30);
    struct box *box = model_find(&soft->model, ENTITY_box, key);

    box->outline = (int64_t)outline;
    box->rise = IN(rise);
    box->main_side = SIDE_FRONT;
    return box;
}

/* ---- lengths ---- */

/* 4, 3 and 5: a chord of 48 with a rise of 12 belongs to a radius of 30; the arc is 60 asin(4/5),
 * 55.638. With a rise of half the width it is a half circle, 24 pi. */
static void an_arch_is_part_of_a_circle(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_ARCH, 12);

    assert_about(curve_top(&soft->model, box, 0, IN(48)), 55.6377);
    assert_int_equal(curve_side(&soft->model, box, EDGE_LEFT), IN(18));
    assert_int_equal(curve_side(&soft->model, box, EDGE_RIGHT), IN(18));
    assert_int_equal(curve_height(&soft->model, box, IN(24)), IN(30));
    box->rise = IN(24);
    assert_about(curve_top(&soft->model, box, 0, IN(48)), 75.3982);
}

/* Two quarter rounds of 6 and 36 between them: 36 + 6 pi. */
static void a_shoulder_has_a_quarter_round_at_both_ends(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_SHOULDER, 6);

    assert_about(curve_top(&soft->model, box, 0, IN(48)), 36 + 18.8496);
    assert_int_equal(curve_height(&soft->model, box, 0), IN(24));
    assert_int_equal(curve_height(&soft->model, box, IN(6)), IN(30));
    /* 3, 4, 5 again: a tenth of 6 from the middle of a round, 3.6 up and 4.8 across */
    assert_about(curve_height(&soft->model, box, IN(6 - 4.8)), 30 - (6 - 3.6));
}

/* 40 across and 9 down are 41, for 9, 40, 41 make a right angle. */
static void a_slope_is_straight(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 40, OUTLINE_SLOPE, 9);

    assert_about(curve_top(&soft->model, box, 0, IN(40)), 41);
    assert_int_equal(curve_side(&soft->model, box, EDGE_LEFT), IN(30));
    assert_int_equal(curve_side(&soft->model, box, EDGE_RIGHT), IN(21));
    assert_false(curve_bends(box, SIDE_FRONT));
}

#define GABLE_POINTS 5

static void enter_gable(struct soft *soft, size_t begin)
{
    static const double points[GABLE_POINTS][2] = {{0, 0}, {0, 23}, {24, 30}, {48, 23}, {48, 0}};

    soft->model.outline_points.count = 0;
    for (size_t i = 0; i < GABLE_POINTS; i++) {
        struct outline_point *point = MODEL_ADD(&soft->model, outline_point);
        const double *at = points[(begin + i) % GABLE_POINTS];

        point->box = soft->model.boxes.at[0].key;
        point->rank = (int64_t)i + 1;
        point->u = IN(at[0]);
        point->v = IN(at[1]);
    }
}

/* A gable, wherever its points begin: 24 across and 7 up on both sides are 25, for 7, 24, 25 make a
 * right angle. */
static void points_are_joined_by_straight_lines(void **state)
{
    struct soft *soft = *state;
    const struct box *box = add_box(soft, 48, OUTLINE_POINTS, 0);

    for (size_t begin = 0; begin < GABLE_POINTS; begin++) {
        enter_gable(soft, begin);
        assert_about(curve_top(&soft->model, box, 0, IN(48)), 50);
        assert_int_equal(curve_side(&soft->model, box, EDGE_LEFT), IN(23));
        assert_int_equal(curve_height(&soft->model, box, IN(12)), IN(26.5));
        assert_int_equal(curve_height(&soft->model, box, IN(24)), IN(30));
        assert_int_equal(curve_height(&soft->model, box, IN(36)), IN(26.5));
    }
}

static void a_rectangle_has_no_curve(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_RECTANGLE, 12);

    assert_false(curve_has(box, SIDE_FRONT));
    assert_int_equal(curve_top(&soft->model, box, 0, IN(48)), IN(48));
    box->outline = OUTLINE_ARCH;
    assert_true(curve_has(box, SIDE_BACK));
    assert_false(curve_has(box, SIDE_LEFT));
    soft_plan(soft);
    assert_int_equal(soft->plan->outlines.count, 1);
}

/* ---- what is cut away ---- */

static struct area whole_face(double width)
{
    return (struct area){0, 0, IN(width), IN(30)};
}

static void assert_square_inches(int64_t square_mm, double wanted)
{
    double found = (double)square_mm / 645.16;

    if (found < wanted * 0.998 || found > wanted * 1.002)
        fail_msg("%.2f in2, not %.2f", found, wanted);
}

/*
 * Beside an arch of 12 over 48: the rectangle of 48 x 12 without its segment of a circle, which is
 * r^2 (2 a - sin 2 a) / 2 with r 30 and sin a 4/5: 900 (1.8546 - 0.96) / 2 = 402.57. Beside two
 * quarter rounds of 6: 2 x 36 (1 - pi / 4). Over a slope half of 40 x 9.
 */
static void what_is_cut_away_lies_over_the_outline(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_ARCH, 12);
    struct area area = whole_face(48);

    assert_square_inches(curve_away(&soft->model, box, &area), 48 * 12 - 402.57);
    area.v1 = IN(18);
    assert_int_equal(curve_away(&soft->model, box, &area), 0);
    area = whole_face(48);
    box->outline = OUTLINE_SHOULDER;
    box->rise = IN(6);
    assert_square_inches(curve_away(&soft->model, box, &area), 2 * 36 * (1 - 0.785398));
    box->outline = OUTLINE_SLOPE;
    box->rise = IN(9);
    assert_square_inches(curve_away(&soft->model, box, &area), 48 * 9 / 2.0);
    box->outline = OUTLINE_RECTANGLE;
    assert_int_equal(curve_away(&soft->model, box, &area), 0);
}

/* An outline is asked for no place beside its box. */
static void a_layer_that_begins_beside_an_outlined_face_lies_on_nothing(void **state)
{
    struct soft *soft = *state;
    int64_t box = add_box(soft, 48, OUTLINE_ARCH, 12)->key;
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);

    soft_layer_of(soft, cover)->u = IN(50);
    soft_plan(soft);
    assert_int_equal(soft_piece_count(soft, cover), 0);
    soft_layer_of(soft, cover)->u = IN(40);
    soft_plan(soft);
    assert_int_equal(soft_piece_count(soft, cover), 1);
}

/* Foam of 48 x 30 under that arch: cut as a rectangle, glued and weighed without what is trimmed
 * off, and its card says how far the knife goes. */
static void padding_is_trimmed_along_the_outline(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_ARCH, 12);
    int64_t foam = soft_layer(soft, box->key, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT, soft->foam2);
    int64_t batting, whole;

    batting = soft_layer(soft, box->key, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    soft_plan(soft);
    whole = soft->plan->loads.at[0].mass;
    assert_square_inches(soft_used(soft, foam, STOCK_SPRAY), 48 * 30 - (48 * 12 - 402.57));
    assert_about(soft_cover(soft, foam)->trimmed, 55.6377);
    assert_square_inches(soft_cover(soft, batting)->away, 48 * 12 - 402.57);
    assert_true(soft_says(soft, STEP_PAD, "Trim it along the outline of the wood, 55-5/8 in"));
    assert_true(soft_says(soft, STEP_BATTING, "Trim along the outline"));
    soft->model.boxes.at[0].outline = OUTLINE_RECTANGLE;
    soft_plan(soft);
    assert_true(whole < soft->plan->loads.at[0].mass);
    assert_int_equal(soft_cover(soft, foam)->trimmed, 0);
    assert_false(soft_says(soft, STEP_PAD, "Trim it"));
}

/* What shuts the back of an arch follows it as its front does. */
static void the_back_has_the_same_outline(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_ARCH, 12);
    int64_t back =
        soft_layer(soft, box->key, LAYER_OUTSIDE_BACK, SHAPE_FLAT, SIDE_BACK, soft->cloth);

    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].layer == back && soft->plan->edges.at[i].edge == EDGE_TOP) {
            assert_about(soft->plan->edges.at[i].length, 55.6377);
            return;
        }
    fail_msg("no top edge");
}

/* ---- cloth on a curve ---- */

static int64_t add_arch(struct soft *soft, enum layer_word kind, enum shape_word shape)
{
    struct box *box = add_box(soft, 48, OUTLINE_ARCH, 12);

    return soft_layer(soft, box->key, kind, shape, SIDE_FRONT, soft->cloth);
}

static const struct edge *top_edge(const struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].edge == EDGE_TOP)
            return &soft->plan->edges.at[i];
    fail_msg("no top edge");
    return NULL;
}

/* 55.64 in at half an inch are 112 spaces; a relief cut every 2 in are 28. Cloth is cut from the
 * rectangle round it, as for a straight top. */
static void a_cover_is_stapled_closer_along_the_curve(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_arch(soft, LAYER_COVER, SHAPE_WRAPPED);

    soft_plan(soft);
    assert_about(top_edge(soft)->length, 55.6377);
    assert_int_equal(top_edge(soft)->pitch, IN(0.5));
    assert_int_equal(top_edge(soft)->staples - top_edge(soft)->corners, 112 + 1);
    assert_int_equal(top_edge(soft)->relief, 28);
    assert_cut(soft, cover, 48 + 2 * (3 + 3.5), 30 + 2 * (3 + 3.5));
    assert_true(soft_says(soft, STEP_STAPLE, "28 relief cuts, each ending 1 in short"));
}

/* An opening from 12 to 36 of the face's 48: along an arc of radius 30 it begins
 * 30 (asin(24/30) - asin(12/30)) = 15.473 from its end, and ends as far from the other. */
static void an_opening_lies_along_the_curve(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_arch(soft, LAYER_COVER, SHAPE_WRAPPED);
    struct opening *opening = MODEL_ADD(&soft->model, opening);
    const struct interval *open;
    const struct edge *top;
    int64_t staples = 0;

    opening->layer = cover;
    opening->edge = EDGE_TOP;
    opening->begin = IN(12);
    opening->length = IN(24);
    soft_plan(soft);
    top = top_edge(soft);
    assert_int_equal(top->interval_count, 3);
    open = &soft->plan->intervals.at[top->first_interval + 1];
    assert_about(open->from, 15.4733);
    assert_about(top->length - open->to, 15.4733);
    for (size_t i = 0; i < top->interval_count; i++)
        staples += soft->plan->intervals.at[top->first_interval + i].staples;
    assert_int_equal(staples, top->staples);
}

/* The sides of that arch are 18 high, straight up to there: what is told 6 to 12 from the bottom
 * lies there. */
static void an_opening_beside_the_curve_stays_where_it_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_arch(soft, LAYER_COVER, SHAPE_WRAPPED);
    struct opening *opening = MODEL_ADD(&soft->model, opening);
    const struct edge *left = NULL;

    opening->layer = cover;
    opening->edge = EDGE_LEFT;
    opening->begin = IN(6);
    opening->length = IN(6);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].edge == EDGE_LEFT)
            left = &soft->plan->edges.at[i];
    assert_non_null(left);
    assert_int_equal(left->length, IN(18));
    assert_int_equal(soft->plan->intervals.at[left->first_interval + 1].from, IN(6));
    assert_int_equal(soft->plan->intervals.at[left->first_interval + 1].to, IN(12));
}

/* ---- what lies over the outline ---- */

/* Arcs over a chord of 48, by the sums for segments of circles in Machinery's Handbook (from
 * memory): r = (c^2 + 4 h^2) / 8 h, l = 2 r asin(c / 2 r). */
static const struct {
    double rise, arc;
} arcs[] = {{6, 49.9756}, {12, 55.6377}, {24, 75.3982}};

static int64_t add_over(struct soft *soft, int64_t box, enum layer_word kind, enum shape_word shape,
                        int64_t stock)
{
    int64_t layer = soft_layer(soft, box, kind, shape, SIDE_TOP, stock);

    soft_endings(soft, layer, ENDING_STOP, ENDING_STOP, ENDING_SIDE, ENDING_SIDE);
    return layer;
}

static const struct edge *edge_of(const struct soft *soft, int64_t layer, enum edge_word edge)
{
    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].layer == layer && soft->plan->edges.at[i].edge == (int64_t)edge)
            return &soft->plan->edges.at[i];
    fail_msg("no such edge");
    return NULL;
}

/* A top 3 in deep: foam as long as the arc; the cover besides with 2 in of foam, landing and handle
 * on both sides of it, stapled at the curve's pitch on the front and on the back. */
static void what_lies_over_an_arch_is_as_long_as_it(void **state)
{
    for (size_t i = 0; i < sizeof arcs / sizeof *arcs; i++) {
        void *fixture;
        struct soft *soft;
        const struct edge *front;
        int64_t box, foam, cover;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        box = add_box(soft, 48, OUTLINE_ARCH, arcs[i].rise)->key;
        foam = add_over(soft, box, LAYER_FOAM, SHAPE_SLAB, soft->foam2);
        cover = add_over(soft, box, LAYER_COVER, SHAPE_WRAPPED, soft->cloth);
        soft_layer_of(soft, cover)->rank = 2;
        soft_layer_of(soft, cover)->direction = DIRECTION_ACROSS;
        soft_plan(soft);
        assert_about(soft_cover(soft, foam)->cut_width, arcs[i].arc);
        assert_int_equal(soft_cover(soft, foam)->cut_height, IN(3));
        assert_int_equal(soft_cover(soft, foam)->trimmed, 0);
        assert_about(soft_cover(soft, cover)->cut_width, arcs[i].arc);
        assert_int_equal(soft_cover(soft, cover)->cut_height, IN(3 + 2 * (2 + 3.5)));
        front = edge_of(soft, cover, EDGE_TOP);
        assert_about(front->length, arcs[i].arc);
        assert_int_equal(front->pitch, IN(0.5));
        assert_true(front->relief > 0);
        soft_end(&fixture);
    }
    (void)state;
}

/* A sleeve that hangs open over an arch is stapled round both arcs and the depth at both ends, and
 * an opening on it lies within. */
static void a_sleeve_is_stapled_round_both_arcs(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_arch(soft, LAYER_COVER, SHAPE_SEWN);
    struct opening *opening = MODEL_ADD(&soft->model, opening);
    const struct edge *top;
    int64_t staples = 0;

    soft_layer_of(soft, cover)->both = 1;
    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN, ENDING_SEWN);
    opening->layer = cover;
    opening->edge = EDGE_TOP;
    opening->begin = IN(12);
    opening->length = IN(36);
    soft_plan(soft);
    top = edge_of(soft, cover, EDGE_TOP);
    assert_about(top->length / 2, 55.6377 + 3);
    for (size_t i = 0; i < top->interval_count; i++)
        staples += soft->plan->intervals.at[top->first_interval + i].staples;
    assert_int_equal(staples, top->staples);
    assert_true(top->interval_count > 1);
}

/* 40 across and 9 down are 41: straight, and stapled as what is straight is. */
static void what_lies_over_a_slope_is_as_long_as_it(void **state)
{
    struct soft *soft = *state;
    int64_t box = add_box(soft, 40, OUTLINE_SLOPE, 9)->key;
    int64_t cover = add_over(soft, box, LAYER_COVER, SHAPE_WRAPPED, soft->cloth);

    soft_plan(soft);
    assert_about(soft_cover(soft, cover)->cut_width, 41);
    assert_int_equal(edge_of(soft, cover, EDGE_TOP)->pitch, IN(1));
}

/* Over a front that is bowed out the boards and the cloth of the front are bent; a cover that goes
 * on to the straight foot behind is stapled there from end to end. */
static void a_seat_with_a_bowed_front_is_longer_there(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_ARCH, 6);
    int64_t cover;

    box->main_side = SIDE_TOP;
    box->depth = IN(30);
    cover = soft_layer(soft, box->key, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_endings(soft, cover, ENDING_STOP, ENDING_STOP, ENDING_SIDE, ENDING_WRAP);
    soft_plan(soft);
    assert_about(soft_cover(soft, cover)->cut_width, 49.9756);
    assert_about(edge_of(soft, cover, EDGE_TOP)->length, 49.9756);
    assert_int_equal(edge_of(soft, cover, EDGE_BOTTOM)->length, IN(48));
    assert_int_equal(edge_of(soft, cover, EDGE_BOTTOM)->pitch, IN(1));
}

/* 55.64 along the top, 18 at each side, 48 below; 2 to join, 1/2 at each corner. */
static void welt_goes_along_the_curve_on_the_bias(void **state)
{
    struct soft *soft = *state;
    int64_t welt = add_arch(soft, LAYER_WELT, SHAPE_RUN);

    soft_plan(soft);
    assert_about(soft_cover(soft, welt)->cut_width, 55.6377 + 2 * 18 + 48 + 2 + 2);
    assert_true(soft_cover(soft, welt)->bias);
}

/* A strip of boxing follows it too: to the seams at both ends. */
static void boxing_is_as_long_as_the_curve(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_arch(soft, LAYER_COVER, SHAPE_SEWN);
    const struct piece *strip;

    soft_endings(soft, cover, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN);
    soft_plan(soft);
    strip = soft_piece(soft, cover, "top boxing", 0);
    assert_non_null(strip);
    assert_about(strip->width, 55.6377 + 2 * 0.5);
}

/* Nails at an inch: 56 spaces along the top. */
static void nails_stand_along_the_curve(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_box(soft, 48, OUTLINE_ARCH, 12);
    int64_t key = box->key;
    struct stock *nails = MODEL_ADD(&soft->model, stock);
    int64_t stock = nails->key;
    int64_t trim;

    nails->name = "nails";
    nails->kind = STOCK_NAIL;
    trim = soft_layer(soft, key, LAYER_TRIM, SHAPE_RUN, SIDE_FRONT, stock);
    soft_endings(soft, trim, ENDING_STOP, ENDING_STOP, ENDING_SIDE, ENDING_STOP);
    soft_plan(soft);
    assert_int_equal(soft->plan->nail_lines.at[0].spaces, 56);
}

/* Nine heights, alike from both ends; the middle one is the full height. */
static void the_template_tells_heights_at_even_distances(void **state)
{
    struct soft *soft = *state;
    const struct plan_outline *outline;

    add_box(soft, 48, OUTLINE_ARCH, 12);
    soft_plan(soft);
    outline = &soft->plan->outlines.at[0];
    for (int i = 0; i < OUTLINE_HEIGHTS; i++)
        assert_int_equal(outline->heights[i], outline->heights[OUTLINE_HEIGHTS - 1 - i]);
    assert_int_equal(outline->heights[4], IN(30));
    assert_about(outline->heights[1], 18 + 24 - 18); /* 18 from the middle: sqrt(30^2 - 18^2) */
    assert_about(outline->lengths[EDGE_TOP], 55.6377);
}

/* ---- cloth that came out short ---- */

/* A cover 40 x 30 on 3 in of wood, cut 53 x 43; two handles of 2 in each way. */
static void cut_short(struct soft *soft, double width, double height)
{
    int64_t box = soft_box(soft, "B", 40, 3, 30);
    struct cut_part *part;
    struct tick *tick;
    int64_t key;

    soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    tick = MODEL_ADD(&soft->model, tick);
    key = tick->key;
    tick->step = "shear:1";
    part = MODEL_ADD(&soft->model, cut_part);
    part->tick = key;
    part->part = "B-L1a";
    part->length = IN(height);
    part->width = IN(width);
    soft_plan(soft);
}

static void a_piece_with_enough_to_pull_by_is_fine(void **state)
{
    struct soft *soft = *state;

    cut_short(soft, 51, 41.5); /* 2 and 1-1/2 short: handles of 1 and 1-1/4 */
    assert_int_equal(soft_findings(soft, FINDING_CUT_HANDLE), 0);
    assert_int_equal(soft_findings(soft, FINDING_CUT_SHORT), 0);
}

static void a_short_piece_leaves_little_to_pull_by(void **state)
{
    struct soft *soft = *state;

    cut_short(soft, 50, 43); /* 3 short: half an inch at both ends */
    assert_int_equal(soft_finding(soft, FINDING_CUT_HANDLE)->arguments[1].value, IN(3));
    assert_int_equal(soft_finding(soft, FINDING_CUT_HANDLE)->arguments[2].value, IN(0.5));
    assert_int_equal(soft_findings(soft, FINDING_CUT_SHORT), 0);
}

/* 6 short of two handles of 2: an inch of each landing is missed. Cut anew, it is on the list
 * twice. */
static void a_piece_that_misses_its_landing_stops_the_build(void **state)
{
    struct soft *soft = *state;
    const struct finding *finding;

    cut_short(soft, 53, 37);
    finding = soft_finding(soft, FINDING_CUT_SHORT);
    assert_int_equal(finding->arguments[2].value, IN(1));
    assert_int_equal(finding->cure_count, 1);
    assert_int_equal(cure_apply(&soft->model, &finding->cures[0], NULL), FAULT_NONE);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUT_SHORT), 0);
    assert_true(soft->model.cut_parts.at[0].spoiled);
}

/* ---- lids ---- */

/* A cover of 100 x 30, cut 113 x 43: a full centre of 54 and two sides. */
static int64_t cut_widths(struct soft *soft)
{
    int64_t box = soft_box(soft, "B", 100, 3, 30);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    struct tick *tick = MODEL_ADD(&soft->model, tick);

    tick->step = "shear:1";
    soft_layer_of(soft, cover)->direction = DIRECTION_UP;
    soft_plan(soft);
    assert_int_equal(soft_piece_count(soft, cover), 3);
    return cover;
}

/* The nth width of it, so much narrower and shorter than planned. */
static void cut_width(struct soft *soft, int64_t cover, int nth, double narrower, double shorter)
{
    const struct piece *piece = NULL;
    struct cut_part *part;

    for (size_t i = 0; i < soft->plan->pieces.count && !piece; i++)
        if (soft->plan->pieces.at[i].layer == cover && nth-- == 0)
            piece = &soft->plan->pieces.at[i];
    assert_non_null(piece);
    part = MODEL_ADD(&soft->model, cut_part);
    part->tick = soft->model.ticks.at[0].key;
    part->part = arena_text(&soft->facts, piece->label);
    part->width = piece->width - IN(narrower);
    part->length = piece->height - IN(shorter);
}

/* 3 in short of two handles of 2 up its drop: half an inch at both ends, of that width alone. */
static void a_width_that_is_cut_too_short_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t cover = cut_widths(soft);

    cut_width(soft, cover, 1, 0, 3);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUT_HANDLE), 1);
    assert_int_equal(soft_finding(soft, FINDING_CUT_HANDLE)->arguments[1].value, IN(3));
    assert_int_equal(soft_finding(soft, FINDING_CUT_HANDLE)->arguments[2].value, IN(0.5));
}

/* An inch off each of three is 3 in of the whole, which two handles of 2 share; off one alone it is
 * nothing; and 2 off each miss the landings by an inch at both ends. */
static void widths_lack_together_what_each_of_them_lacks(void **state)
{
    struct soft *soft = *state;
    int64_t cover = cut_widths(soft);

    cut_width(soft, cover, 0, 1, 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUT_HANDLE), 0);
    cut_width(soft, cover, 1, 1, 0);
    cut_width(soft, cover, 2, 1, 0);
    soft_plan(soft);
    assert_int_equal(soft_finding(soft, FINDING_CUT_HANDLE)->arguments[1].value, IN(3));
    assert_int_equal(soft_finding(soft, FINDING_CUT_HANDLE)->arguments[2].value, IN(0.5));
    for (size_t i = 0; i < 3; i++)
        soft->model.cut_parts.at[i].width -= IN(1);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CUT_HANDLE), 0);
    assert_int_equal(soft_finding(soft, FINDING_CUT_SHORT)->arguments[1].value, IN(6));
    assert_int_equal(soft_finding(soft, FINDING_CUT_SHORT)->arguments[2].value, IN(1));
}

/* Two layers of cloth of 0.04 in pressed and 1/16; fingers take 3/8, two square inches let air in.
 * Stays hold the lid's weight by half its depth of 18 in, and up to a fifth more. */
static void a_lid_has_its_gaps_and_its_stays(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "D", 40, 18, 0.75);
    struct facing *facing = MODEL_ADD(&soft->model, facing);
    struct fitting *hinges;
    char stays[64];
    double torque;

    facing->box = box;
    facing->side = SIDE_TOP;
    facing->stock = soft_wood(soft, STOCK_SHEET, 0.75, 0);
    soft_upholster(soft, box, SIDE_TOP, soft->foam2);
    hinges = MODEL_ADD(&soft->model, fitting);
    hinges->box = box;
    hinges->kind = FITTING_HINGE;
    hinges->side = SIDE_BACK;
    hinges->count = 2;
    soft_plan(soft);
    assert_true(soft_says(soft, STEP_HANG, "9/64 in between bare wood"));
    assert_true(soft_says(soft, STEP_HANG, "Leave 3/8 in for fingers"));
    assert_true(soft_says(soft, STEP_HANG, "gaps of 2.0 in2 for air"));
    torque = (double)plan_load(soft->plan, box)->mass / 453592.37 * 9;
    assert_true(torque > 20);
    snprintf(stays, sizeof stays, "%.0f to %.0f lb-in together", torque, torque * 1.2);
    assert_true(soft_says(soft, STEP_HINGE, stays));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(an_arch_is_part_of_a_circle),
        SOFT_TEST(a_shoulder_has_a_quarter_round_at_both_ends),
        SOFT_TEST(a_slope_is_straight),
        SOFT_TEST(points_are_joined_by_straight_lines),
        SOFT_TEST(a_rectangle_has_no_curve),
        SOFT_TEST(what_is_cut_away_lies_over_the_outline),
        SOFT_TEST(a_layer_that_begins_beside_an_outlined_face_lies_on_nothing),
        SOFT_TEST(padding_is_trimmed_along_the_outline),
        SOFT_TEST(the_back_has_the_same_outline),
        SOFT_TEST(a_cover_is_stapled_closer_along_the_curve),
        SOFT_TEST(an_opening_lies_along_the_curve),
        SOFT_TEST(an_opening_beside_the_curve_stays_where_it_is_told),
        cmocka_unit_test(what_lies_over_an_arch_is_as_long_as_it),
        SOFT_TEST(a_sleeve_is_stapled_round_both_arcs),
        SOFT_TEST(what_lies_over_a_slope_is_as_long_as_it),
        SOFT_TEST(a_seat_with_a_bowed_front_is_longer_there),
        SOFT_TEST(welt_goes_along_the_curve_on_the_bias),
        SOFT_TEST(boxing_is_as_long_as_the_curve),
        SOFT_TEST(nails_stand_along_the_curve),
        SOFT_TEST(the_template_tells_heights_at_even_distances),
        SOFT_TEST(a_piece_with_enough_to_pull_by_is_fine),
        SOFT_TEST(a_short_piece_leaves_little_to_pull_by),
        SOFT_TEST(a_piece_that_misses_its_landing_stops_the_build),
        SOFT_TEST(a_width_that_is_cut_too_short_is_told),
        SOFT_TEST(widths_lack_together_what_each_of_them_lacks),
        SOFT_TEST(a_lid_has_its_gaps_and_its_stays),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
