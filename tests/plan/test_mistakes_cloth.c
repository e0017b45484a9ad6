/*
 * Mistakes with cloth, padding and trim that makers tell of, each in a build that commits it (or
 * could) and in one that does not. The numbers are those of the list that the program was written
 * against. What prevents a mistake is a finding, with its figures, a figure of the plan, or a step:
 * it must be there in the one build and missing in the other.
 */
#include "soft.h"

#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#define FIGURES 3

struct mistake {
    const char *name;
    void (*make)(struct soft *soft, bool wrong); /* as far as soft_plan */
    int kind;                                    /* of the finding, or */
    bool (*told)(const struct soft *soft);       /* what prevents it */
    int64_t figures[FIGURES];                    /* of the finding; 0 is not looked at */
    bool cured;                                  /* the first cure that is offered mends it */
};

/* ---- parts ---- */

static bool comes_before(const struct soft *soft, int first, int then)
{
    const struct step *before = soft_step(soft, first);
    const struct step *after = soft_step(soft, then);

    return before && after && before < after;
}

static const struct purchase *bought(const struct soft *soft, int64_t kind)
{
    for (size_t i = 0; i < soft->plan->purchases.count; i++) {
        const struct purchase *purchase = &soft->plan->purchases.at[i];
        const struct stock *stock = MODEL_FIND(&soft->model, stock, purchase->stock);

        if (stock && stock->kind == kind)
            return purchase;
    }
    return NULL;
}

static void add_tufting(struct soft *soft, int64_t cover)
{
    struct stock *button = MODEL_ADD(&soft->model, stock);
    int64_t key = button->key;
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    button->name = "buttons";
    button->kind = STOCK_BUTTON;
    tufting->layer = cover;
    tufting->button = key;
    tufting->across = 4;
    tufting->down = 2;
    tufting->border = IN(4);
}

/* ---- 1: cloth that does not reach ---- */

static void make_handle(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 40, 30);
    struct layer_edge *edge = MODEL_ADD(&soft->model, layer_edge);

    edge->layer = cover;
    edge->edge = EDGE_TOP;
    edge->handle = IN(wrong ? 0.5 : 1.5);
}

/* 4 in of foam round a seat. */
static void make_thick_foam(struct soft *soft, bool wrong)
{
    int64_t box = soft_box(soft, "S", 20, 18, 0.75);

    if (wrong)
        soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam4);
    soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_TOP, soft->cloth);
}

/* 20 + 2 (3/4 + 4) + 2 (1-1/2 + 2). */
static bool goes_round_the_foam(const struct soft *soft)
{
    return soft->plan->covers.at[soft->plan->covers.count - 1].cut_width == IN(36.5);
}

/* A piece that was measured 6 in short when it was cut: two handles of 2 in do not make up for it.
 */
static void make_short_piece(struct soft *soft, bool wrong)
{
    struct cut_part *part;
    struct tick *tick;
    int64_t key;

    soft_front_cover(soft, 40, 30);
    tick = MODEL_ADD(&soft->model, tick);
    key = tick->key;
    tick->step = "shear:1";
    part = MODEL_ADD(&soft->model, cut_part);
    part->tick = key;
    part->part = "X-L1a";
    part->length = IN(43);
    part->width = IN(wrong ? 47 : 53);
}

/* ---- 2: the last piece ---- */

/* 43 in are used; the shop cuts to half an inch, or 60 at least. */
static void make_no_reserve(struct soft *soft, bool wrong)
{
    soft_front_cover(soft, 40, 30);
    soft_cloth(soft)->step_cut = IN(0.5);
    soft_cloth(soft)->least_cut = wrong ? 0 : IN(60);
}

static void make_small_pieces(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 36, 24);

    if (!wrong)
        return;
    add_tufting(soft, cover);
    soft_layer(soft, soft_layer_of(soft, cover)->box, LAYER_WELT, SHAPE_RUN, SIDE_FRONT,
               soft->cloth);
}

/* Strips of welt and the buttons' cloth have their place on the roll like all other pieces. */
static bool lays_welt_and_buttons(const struct soft *soft)
{
    const struct plan *plan = soft->plan;
    bool welt = false, buttons = false;

    for (size_t i = 0; i < plan->placements.count; i++) {
        size_t piece = plan->parts.at[plan->placements.at[i].part].piece;

        if (piece == PLAN_NONE)
            continue;
        welt |= strcmp(plan->pieces.at[piece].name, "welt strip") == 0;
        buttons |= strcmp(plan->pieces.at[piece].name, "button cloth") == 0;
    }
    return welt && buttons;
}

/* ---- 3: bought by area ---- */

/* Two covers 30 in wide as cut do not lie side by side on 54; two of 27 do. */
static void make_layout(struct soft *soft, bool wrong)
{
    for (int i = 0; i < 2; i++)
        soft_front_cover(soft, wrong ? 17 : 14, 30);
}

static bool takes_more_than_its_area(const struct soft *soft)
{
    const struct purchase *cloth = bought(soft, STOCK_CLOTH);
    int64_t area = 0;

    for (size_t i = 0; i < soft->plan->pieces.count; i++)
        area += soft->plan->pieces.at[i].width * soft->plan->pieces.at[i].height;
    return cloth->used > area / IN(54) + IN(1);
}

/* ---- 4: narrower than its label ---- */

static void make_narrow_cloth(struct soft *soft, bool wrong)
{
    soft_front_cover(soft, 41, 30);
    soft_cloth(soft)->width = IN(wrong ? 52 : 54);
}

/* ---- 5, 49: pile ---- */

static void make_wing(struct soft *soft, bool wrong)
{
    int64_t batting;

    soft_wing(soft, "L", SIDE_RIGHT, &batting);
    soft_cloth(soft)->pile = wrong;
}

static bool turns_no_piece(const struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->pieces.count; i++)
        if (soft->plan->pieces.at[i].stock == soft->cloth &&
            soft->plan->pieces.at[i].turned_allowed)
            return false;
    return true;
}

static void make_velvet_back(struct soft *soft, bool wrong)
{
    int64_t box = soft_box(soft, "K", 40, 4, 30);

    soft_layer(soft, box, LAYER_OUTSIDE_BACK, SHAPE_FLAT, SIDE_BACK, soft->cloth);
    soft_cloth(soft)->pile = wrong;
}

/* No strip with points: both sides of 30 in by hand. */
static bool stitches_the_sides(const struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->back_ways.count; i++)
        if (soft->plan->back_ways.at[i].chosen)
            return soft->plan->back_ways.at[i].strip == 0 &&
                   soft->plan->back_ways.at[i].stitched == IN(60);
    return false;
}

/* 18-1/8 min of plain cloth by 1.25 (common practice, no source). */
static bool laying_takes_a_quarter_longer(const struct soft *soft)
{
    return soft_step(soft, STEP_STAPLE)->minutes == 18125 * 5 / 4;
}

/* ---- 7, 9: seams ---- */

static void make_wide_cover(struct soft *soft, bool wrong)
{
    soft_front_cover(soft, wrong ? 70 : 40, 30);
}

static bool has_a_centre_and_two_sides(const struct soft *soft)
{
    const struct cover *cover = &soft->plan->covers.at[0];

    return cover->width_count == 2 && cover->seams == 2 && cover->seam == IN(26.5) &&
           cover->side_strip == cover->side_strip_right;
}

static void make_pattern(struct soft *soft, bool wrong)
{
    soft_front_cover(soft, 70, 30);
    soft_cloth(soft)->repeat_across = wrong ? IN(12) : 0;
}

static void make_motif(struct soft *soft, bool wrong)
{
    soft_front_cover(soft, 40, 30);
    soft_cloth(soft)->repeat_along = wrong ? IN(12) : 0;
}

/* An inch above the middle of a back, and the card says so. */
static bool raises_the_motif(const struct soft *soft)
{
    return soft->plan->covers.at[0].motif == IN(1) &&
           soft_says(soft, STEP_COVER, "Middle of a motif 1 in above the middle");
}

static bool matches_at_its_seams(const struct soft *soft)
{
    return soft->plan->covers.at[0].seam > 0 && soft->plan->covers.at[0].seam % IN(12) == 0;
}

/* Two covers side by side on a front that a crate is joined to; the seam runs through its screws,
 * or past them. */
static void make_seam_by_hand(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 50, 40);
    int64_t a = soft_layer_of(soft, cover)->box;
    int64_t b = soft_box(soft, "B", 20, 10, 40);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    struct box *crate = model_find(&soft->model, ENTITY_box, b);
    struct join *join = MODEL_ADD(&soft->model, join);
    int64_t seam, next;

    ((struct box *)model_find(&soft->model, ENTITY_box, a))->stick = stick;
    crate->frame = FRAME_CRATE;
    crate->stick = stick;
    join->name = "J";
    join->box_a = a;
    join->side_a = SIDE_FRONT;
    join->target = TARGET_BOX;
    join->box_b = b;
    join->side_b = SIDE_BACK;
    join->offset_u = IN(20);
    soft_plan(soft);
    seam = wrong ? soft->plan->points.at[0].u : IN(15);
    next = soft_layer(soft, a, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_layer_of(soft, cover)->width = seam;
    soft_layer_of(soft, next)->u = seam;
}

/* ---- 8, 47, 48: pulled crooked, stapled for good ---- */

static void make_any_cover(struct soft *soft, bool wrong)
{
    if (wrong)
        soft_front_cover(soft, 40, 30);
    else
        soft_box(soft, "X", 40, 3, 30);
}

static bool bastes_and_looks_before_it_staples(const struct soft *soft)
{
    const struct step *look = soft_step(soft, STEP_LOOK);

    return look && look->hold && comes_before(soft, STEP_COVER, STEP_LOOK) &&
           comes_before(soft, STEP_LOOK, STEP_STAPLE) && soft->plan->edges.at[0].temporary > 0;
}

static bool compares_with_a_straight_edge(const struct soft *soft)
{
    return soft_says(soft, STEP_LOOK, "straight edge");
}

/* ---- 10: staples on too little wood ---- */

/* A lining and a cover one over the other on half an inch of edge. */
static void make_rows(struct soft *soft, bool wrong)
{
    int64_t box = soft_box(soft, "P", 36, 0.5, 24);

    for (int64_t rank = 1; rank <= 2; rank++) {
        int64_t key = soft_layer(soft, box, rank == 1 ? LAYER_LINING : LAYER_COVER, SHAPE_WRAPPED,
                                 SIDE_FRONT, soft->cloth);
        struct layer *layer = soft_layer_of(soft, key);

        layer->rank = rank;
        layer->fixing = rank == 2 && !wrong ? FIXING_TOGETHER : FIXING_ALONE;
        soft_endings(soft, key, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE);
    }
}

/* ---- 11: staples that come through ---- */

/* A cover round a board of 1/4 in, or of 3/4. */
static void make_thin_board(struct soft *soft, bool wrong)
{
    double thick = wrong ? 0.25 : 0.75;
    int64_t box = soft_box(soft, "P", 40, thick, 30);
    struct facing *facing = MODEL_ADD(&soft->model, facing);

    facing->box = box;
    facing->side = SIDE_FRONT;
    facing->stock = soft_wood(soft, STOCK_SHEET, thick, 0);
    soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
}

/* ---- 12: a hand gun in hardwood ---- */

static void make_hardwood(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 40, 30);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    struct tool *gun = MODEL_ADD(&soft->model, tool);
    struct box *box = model_find(&soft->model, ENTITY_box, soft_layer_of(soft, cover)->box);

    gun->name = "gun";
    gun->kind = TOOL_HAND_GUN;
    box->stick = stick;
    ((struct stock *)model_find(&soft->model, ENTITY_stock, stick))->wood =
        wrong ? WOOD_HARD : WOOD_SOFT;
}

/* ---- 23: the kerf ---- */

/* Four panels of 12 out of 48 in. */
static void make_panels(struct soft *soft, bool wrong)
{
    int64_t sheet = soft_wood(soft, STOCK_SHEET, 0.5, 0);
    struct offer *offer = MODEL_ADD(&soft->model, offer);

    offer->stock = sheet;
    offer->length = IN(96);
    offer->width = IN(48);
    for (int i = 0; i < 4; i++) {
        int64_t box = soft_box(soft, "P", wrong ? 12 : 11.875, 3, 90);
        struct facing *facing = MODEL_ADD(&soft->model, facing);

        facing->box = box;
        facing->side = SIDE_FRONT;
        facing->stock = sheet;
    }
}

/* ---- 27: buttons ---- */

static void make_buttons(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 36, 24);

    if (wrong)
        add_tufting(soft, cover);
}

/* 22 buttons, two spare; three staples for each cord, 24 in of it. */
static bool holds_each_button_and_has_spares(const struct soft *soft)
{
    const struct purchase *buttons = bought(soft, STOCK_BUTTON);
    int64_t cords = 0, cord = 0;

    for (size_t i = 0; i < soft->plan->edges.count; i++)
        if (soft->plan->edges.at[i].edge == EDGE_CORDS)
            cords += soft->plan->edges.at[i].staples;
    for (size_t i = 0; i < soft->plan->consumables.count; i++)
        if (soft->plan->consumables.at[i].kind == STOCK_CORD)
            cord += soft->plan->consumables.at[i].amount;
    return buttons && buttons->used == 22 && buttons->need == 24 && cords == 66 &&
           cord == IN(22 * 24);
}

/* ---- 28: lumpy corners ---- */

static void make_corners(struct soft *soft, bool wrong)
{
    int64_t box = soft_box(soft, "S", 20, 18, 0.75);

    if (wrong)
        soft_upholster(soft, box, SIDE_TOP, soft->foam3);
    else
        soft_layer(soft, box, LAYER_DUST_COVER, SHAPE_FLAT, SIDE_BOTTOM, soft->lining);
}

static bool trims_before_it_folds(const struct soft *soft)
{
    return soft_says(soft, STEP_BATTING, "nothing lies double") &&
           soft_says(soft, STEP_CORNER, "Trim the bulk") &&
           comes_before(soft, STEP_BATTING, STEP_CORNER);
}

/* ---- 29, 30: foam ---- */

static void weigh(struct soft *soft, int64_t foam, double density)
{
    ((struct stock *)model_find(&soft->model, ENTITY_stock, foam))->density =
        (int64_t)(density * 16018.463);
}

static int64_t add_seat(struct soft *soft, double width, double density)
{
    int64_t box = soft_box(soft, "S", width, 18, 0.75);
    int64_t sheet = soft_wood(soft, STOCK_SHEET, 0.75, 0);
    struct facing *facing = MODEL_ADD(&soft->model, facing);

    facing->box = box;
    facing->side = SIDE_TOP;
    facing->stock = sheet;
    facing->use = USE_SEAT;
    weigh(soft, soft->foam2, density);
    return soft_layer(soft, box, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP, soft->foam2);
}

static void make_joined_foam(struct soft *soft, bool wrong)
{
    add_seat(soft, wrong ? 84 : 70, 2.5);
}

/* Nobody sits on its front. */
static void make_light_foam(struct soft *soft, bool wrong)
{
    int64_t seat = add_seat(soft, 40, wrong ? 1.5 : 2.5);

    weigh(soft, soft->foam3, 1.5);
    soft_layer(soft, soft_layer_of(soft, seat)->box, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT,
               soft->foam3);
}

/* ---- 31: curves ---- */

static void make_arch(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 40, 30);
    int64_t key = soft_layer_of(soft, cover)->box;
    struct box *box = model_find(&soft->model, ENTITY_box, key);

    box->outline = wrong ? OUTLINE_ARCH : OUTLINE_RECTANGLE;
    soft_layer(soft, key, LAYER_WELT, SHAPE_RUN, SIDE_FRONT, soft->cloth);
}

/* A half round of 40 across the middle: 20 pi in, a cut every two inches. */
static void make_round(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 40, 30);
    struct box *box = model_find(&soft->model, ENTITY_box, soft_layer_of(soft, cover)->box);

    box->outline = wrong ? OUTLINE_ARCH : OUTLINE_RECTANGLE;
    box->rise = IN(20);
    box->main_side = SIDE_FRONT;
}

static bool cuts_in_and_stops_short(const struct soft *soft)
{
    return soft_says(soft, STEP_STAPLE,
                     "32 relief cuts, each ending 1 in short of the edge at first");
}

static bool staples_closer_and_welts_on_the_bias(const struct soft *soft)
{
    bool closer = false, bias = false;

    for (size_t i = 0; i < soft->plan->edges.count; i++)
        closer |=
            soft->plan->edges.at[i].edge == EDGE_TOP && soft->plan->edges.at[i].pitch == IN(0.5);
    for (size_t i = 0; i < soft->plan->covers.count; i++)
        bias |= soft->plan->covers.at[i].bias;
    return closer && bias;
}

/* ---- 32, 33: trim ---- */

static void make_trim(struct soft *soft, bool wrong)
{
    int64_t cover = soft_front_cover(soft, 40, 30);
    struct stock *strip = MODEL_ADD(&soft->model, stock);
    int64_t key = strip->key;

    strip->name = "strip of heads";
    strip->kind = wrong ? STOCK_STRIP : STOCK_NAIL;
    strip->diameter = IN(0.4375);
    soft_layer(soft, soft_layer_of(soft, cover)->box, LAYER_TRIM, SHAPE_RUN, SIDE_FRONT, key);
}

/* Heads as many as touch, and the real nails that hold them. */
static bool counts_heads_and_real_nails(const struct soft *soft)
{
    const struct nail_line *line =
        soft->plan->nail_lines.count ? &soft->plan->nail_lines.at[0] : NULL;

    return line && line->heads == 69 && line->nails == 15; /* 30 / .4375; 14 + 1 */
}

/* Single nails and a strip side by side, each with its count. */
static bool lays_both_trims_side_by_side(const struct soft *soft)
{
    return soft->plan->trim_ways.count == TRIMS_MADE &&
           soft->plan->trim_ways.at[TRIM_TOUCHING].nails >
               soft->plan->trim_ways.at[TRIM_STRIP].nails;
}

static void make_soft_trim(struct soft *soft, bool wrong)
{
    make_trim(soft, true);
    if (wrong)
        soft_layer(soft, soft->model.boxes.at[0].key, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT,
                   soft->foam2);
}

/* Bought with all the rest, before anything is cut. */
static void make_nails(struct soft *soft, bool wrong)
{
    if (wrong)
        make_trim(soft, false);
    else
        soft_front_cover(soft, 40, 30);
}

static bool buys_trim_before_the_first_cut(const struct soft *soft)
{
    const struct purchase *nails = bought(soft, STOCK_NAIL);

    return nails && nails->aisle == AISLE_TRIM && comes_before(soft, STEP_BUY, STEP_SHEAR) &&
           comes_before(soft, STEP_BUY, STEP_TRIM);
}

/* ---- 40: padding in a joint ---- */

/* Two frames end to end, the batting on the end of the first. */
static void make_joint(struct soft *soft, bool wrong)
{
    int64_t a = soft_box(soft, "A", 40, 3, 30);
    int64_t b = soft_box(soft, "B", 3, 12, 30);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    int64_t batting = soft_layer(soft, a, LAYER_BATTING, SHAPE_WRAPPED, SIDE_RIGHT, soft->batting);
    struct join *join;

    ((struct box *)model_find(&soft->model, ENTITY_box, a))->stick = stick;
    ((struct box *)model_find(&soft->model, ENTITY_box, b))->stick = stick;
    soft_layer_of(soft, batting)->width = 0;
    soft_endings(soft, batting, ENDING_STOP, ENDING_STOP, ENDING_STOP, ENDING_STOP);
    if (!wrong)
        return;
    join = MODEL_ADD(&soft->model, join);
    join->name = "J";
    join->box_a = a;
    join->side_a = SIDE_RIGHT;
    join->target = TARGET_BOX;
    join->box_b = b;
    join->side_b = SIDE_LEFT;
}

static bool starts_all_screws_of_a_bare_joint(const struct soft *soft)
{
    return soft_says(soft, STEP_BATTING, "stop short of zones where boxes meet") &&
           soft_says(soft, STEP_DRIVE, "tighten the middle, then the ends, in turns");
}

/* ---- the table ---- */

#define TOLD(finding) FINDING_##finding, NULL
#define KEPT(function) -1, function

/* Where a row says no figure none is looked at. */
static const struct mistake mistakes[] = {
    {"01_handle_too_short", make_handle, TOLD(HANDLE_SHORT), {0, IN(0.5), IN(1)}, true},
    {"01_thick_foam_not_counted", make_thick_foam, KEPT(goes_round_the_foam), {0}, false},
    {"01_cut_too_short", make_short_piece, TOLD(CUT_SHORT), {0, IN(6), IN(1)}, true},
    {"02_nothing_left_to_mend_it", make_no_reserve, TOLD(CLOTH_NO_RESERVE), {0}, false},
    {"02_the_last_piece", make_small_pieces, KEPT(lays_welt_and_buttons), {0}, false},
    {"03_bought_by_area", make_layout, KEPT(takes_more_than_its_area), {0}, false},
    {"04_narrower_than_the_label", make_narrow_cloth, TOLD(CLOTH_WIDTHS), {2}, false},
    {"04_a_seam_for_two_inches", make_narrow_cloth, TOLD(SEAM_SPARED), {IN(2), IN(1)}, true},
    {"05_pile_the_wrong_way", make_wing, KEPT(turns_no_piece), {0}, false},
    {"07_one_seam_down_the_middle", make_wide_cover, KEPT(has_a_centre_and_two_sides), {0}, false},
    {"07_seam_by_hand_on_a_hole", make_seam_by_hand, TOLD(SEAM_ON), {0}, false},
    {"08_ruined_at_a_relief_cut",
     make_any_cover,
     KEPT(bastes_and_looks_before_it_staples),
     {0},
     false},
    {"08_cut_too_deep_round_a_curve", make_round, KEPT(cuts_in_and_stops_short), {0}, false},
    {"09_motif_off_the_middle", make_motif, KEPT(raises_the_motif), {0}, false},
    {"09_pattern_that_does_not_match", make_pattern, KEPT(matches_at_its_seams), {0}, false},
    {"10_too_little_wood_for_two_rows", make_rows, TOLD(LANDING_FULL), {2, IN(0.5), 1}, true},
    {"11_staples_through_thin_wood",
     make_thin_board,
     TOLD(LANDING_THIN),
     {IN(0.25), IN(0.375)},
     false},
    {"12_hand_gun_in_hardwood", make_hardwood, TOLD(HAND_GUN), {IN(0.25)}, false},
    {"23_four_twelves_from_48", make_panels, TOLD(SAW_TAKES_TOO_MUCH), {4, 0, IN(48.375)}, false},
    {"27_buttons_that_pull_out", make_buttons, KEPT(holds_each_button_and_has_spares), {0}, false},
    {"28_lumpy_corners", make_corners, KEPT(trims_before_it_folds), {0}, false},
    {"29_foam_joined_where_one_sits", make_joined_foam, TOLD(FOAM_JOINED), {2, IN(72)}, false},
    {"30_foam_too_light_to_sit_on", make_light_foam, TOLD(FOAM_LIGHT), {0}, false},
    {"31_curves", make_arch, KEPT(staples_closer_and_welts_on_the_bias), {0}, false},
    {"32_trim_bought_too_late", make_nails, KEPT(buys_trim_before_the_first_cut), {0}, false},
    {"33_strips_of_heads", make_trim, KEPT(counts_heads_and_real_nails), {0}, false},
    {"33_strips_on_a_soft_edge",
     make_soft_trim,
     TOLD(STRIP_ON_SOFT),
     {IN(2), 2 * (70 + 90), 2 * (15 + 20)},
     false},
    {"33_both_trims_side_by_side", make_nails, KEPT(lays_both_trims_side_by_side), {0}, false},
    {"40_padding_in_a_joint", make_joint, KEPT(starts_all_screws_of_a_bare_joint), {0}, false},
    {"47_grain_pulled_crooked", make_any_cover, KEPT(compares_with_a_straight_edge), {0}, false},
    {"48_staples_that_do_not_come_out",
     make_any_cover,
     KEPT(bastes_and_looks_before_it_staples),
     {0},
     false},
    {"49_velvet_bruised_by_strips", make_velvet_back, TOLD(PILE_BRUISED), {0}, false},
    {"49_velvet_is_stitched_by_hand", make_velvet_back, KEPT(stitches_the_sides), {0}, false},
    {"49_velvet_takes_longer", make_wing, KEPT(laying_takes_a_quarter_longer), {0}, false},
};

#define MISTAKES (sizeof mistakes / sizeof *mistakes)

/* ---- all ---- */

static bool is_told(const struct soft *soft, const struct mistake *mistake)
{
    return mistake->told ? mistake->told(soft) : soft_finding(soft, mistake->kind) != NULL;
}

static void take_first_cure(struct soft *soft, int kind)
{
    const struct finding *finding = soft_finding(soft, kind);

    assert_true(finding->cure_count > 0);
    assert_int_equal(cure_apply(&soft->model, &finding->cures[0], NULL), FAULT_NONE);
}

static void it_is_told_where_it_is_made_and_only_there(void **state)
{
    const struct mistake *mistake = *state;
    const struct finding *finding;
    struct soft *soft;
    void *fixture;

    assert_int_equal(soft_begin(&fixture), 0);
    soft = fixture;
    mistake->make(soft, false);
    soft_plan(soft);
    assert_false(is_told(soft, mistake));
    soft_end(&fixture);
    assert_int_equal(soft_begin(&fixture), 0);
    soft = fixture;
    mistake->make(soft, true);
    soft_plan(soft);
    assert_true(is_told(soft, mistake));
    finding = mistake->told ? NULL : soft_finding(soft, mistake->kind);
    for (int i = 0; finding && i < FIGURES; i++)
        if (mistake->figures[i] != 0)
            assert_int_equal(finding->arguments[i].value, mistake->figures[i]);
    if (mistake->cured) {
        take_first_cure(soft, mistake->kind);
        soft_plan(soft);
        assert_false(is_told(soft, mistake));
    }
    soft_end(&fixture);
}

int main(void)
{
    struct CMUnitTest tests[MISTAKES];

    for (size_t i = 0; i < MISTAKES; i++)
        tests[i] = (struct CMUnitTest){mistakes[i].name, it_is_told_where_it_is_made_and_only_there,
                                       NULL, NULL, (void *)(uintptr_t)&mistakes[i]};
    int failed = cmocka_run_group_tests_name("mistakes with cloth", tests, NULL, NULL);

    return failed ? 1 : 0;
}
