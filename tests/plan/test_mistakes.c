/*
 * Mistakes that makers tell of, each in a build that commits it and in one that does not. The
 * numbers are those of the list that the program was written against; what the program says, with
 * its figures, stands beside each, and must be missing where nothing is wrong.
 */
#include "joined.h"

#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define FIGURES 4

struct mistake {
    const char *name;
    void (*make)(struct joined *piece, bool wrong); /* as far as joined_plan */
    int kind;                                       /* of the finding, or */
    bool (*told)(const struct joined *piece);       /* a step that prevents it */
    int64_t figures[FIGURES];                       /* of the finding; 0 is not looked at */
    bool cured;                                     /* the first cure that is offered mends it */
};

/* ---- parts ---- */

static int64_t add_ladder(struct joined *piece, double width, double depth, double height)
{
    struct box *box = joined_box(piece, FRAME_LADDER, width, depth, height);
    int64_t key = box->key;

    joined_facing(piece, key, SIDE_FRONT, piece->sheet);
    return key;
}

static int64_t add_crate(struct joined *piece, double width, double depth, double height)
{
    int64_t key = joined_box(piece, FRAME_CRATE, width, depth, height)->key;

    for (int64_t side = SIDE_FRONT; side <= SIDE_RIGHT; side++)
        joined_facing(piece, key, side, piece->sheet);
    return key;
}

static void add_cover(struct joined *piece, int64_t box, double u, double width)
{
    struct layer *layer = joined_layer(piece, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);

    layer->u = IN(u);
    layer->width = IN(width);
}

static void add_tick(struct joined *piece, const char *word, int64_t key)
{
    char name[64];
    struct tick *tick = MODEL_ADD(&piece->model, tick);

    snprintf(name, sizeof name, "%s:%lld", word, (long long)key);
    tick->step = arena_text(&piece->facts, name);
    tick->at = "";
    tick->content = "";
}

static const struct step *step_of(const struct joined *piece, const char *word)
{
    for (size_t i = 0; i < piece->plan->steps.count; i++)
        if (strcmp(step_kinds[piece->plan->steps.at[i].kind].word, word) == 0)
            return &piece->plan->steps.at[i];
    return NULL;
}

/* Both steps are there, the first a hold point or not, and in this order. */
static bool comes_before(const struct joined *piece, const char *first, const char *then)
{
    const struct step *before = step_of(piece, first);
    const struct step *after = step_of(piece, then);

    return before && after && before < after;
}

static struct passage *add_passage(struct joined *piece, int64_t kind, double width, double height)
{
    struct passage *passage = MODEL_ADD(&piece->model, passage);

    passage->kind = kind;
    passage->name = "";
    passage->width = IN(width);
    passage->height = IN(height);
    return passage;
}

/* ---- 6: seams not symmetrical ---- */

static void make_seams(struct joined *piece, bool wrong)
{
    joined_start(piece, 2.5);
    int64_t box = add_ladder(piece, 60, 3, 40);

    add_cover(piece, box, 0, 18);
    add_cover(piece, box, 18, wrong ? 27 : 24);
    add_cover(piece, box, wrong ? 45 : 42, wrong ? 15 : 18);
}

/* The same seams where the program places them: even by themselves, and said in the step. */
static void make_wide_cover(struct joined *piece, bool wrong)
{
    joined_start(piece, 2.5);
    int64_t box = add_ladder(piece, wrong ? 70 : 40, 3, 40);

    joined_layer(piece, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
}

static bool sews_even_seams(const struct joined *piece)
{
    const struct cover *cover = &piece->plan->covers.at[0];
    const struct step *sew = step_of(piece, "sew");

    return cover->seam > 0 && sew && sew->action_count > 1 &&
           strstr(sew->actions[1], "equal distance from the middle") != NULL;
}

/* ---- 13, 14: holes under padding ---- */

static void make_padded_join(struct joined *piece, bool wrong)
{
    int64_t join = joined_headboard(piece);
    const struct join *item = model_find(&piece->model, ENTITY_join, join);

    joined_layer(piece, item->box_a, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT)->rank = 0;
    if (!wrong)
        model_remove(&piece->model, ENTITY_join, join);
}

static bool maps_and_pins_before_padding(const struct joined *piece)
{
    const struct step *map = step_of(piece, "map");

    return map && map->hold && comes_before(piece, "drill", "map") &&
           comes_before(piece, "map", "batting") && comes_before(piece, "locate", "batting");
}

static bool drills_before_padding(const struct joined *piece)
{
    return comes_before(piece, "drill", "batting") && comes_before(piece, "drill", "cover");
}

/* A join that came to mind when its box was covered. */
static void make_late_join(struct joined *piece, bool wrong)
{
    int64_t join = joined_headboard(piece);
    int64_t cover = 0;

    for (size_t i = 0; i < piece->model.layers.count; i++)
        if (piece->model.layers.at[i].kind == LAYER_COVER && cover == 0)
            cover = piece->model.layers.at[i].key;
    add_tick(piece, "cover", cover);
    if (!wrong)
        add_tick(piece, "drill", join);
}

/* ---- 15 to 18: the screws themselves ---- */

static int64_t add_screw_stock(struct joined *piece, double length)
{
    struct stock *stock = MODEL_ADD(&piece->model, stock);

    stock->name = "screws";
    stock->kind = STOCK_SCREW;
    stock->gauge = 10;
    stock->length = IN(length);
    return stock->key;
}

/* A hole by hand where a rail of the same stile has its screws. */
static void make_hole_by_hand(struct joined *piece, bool wrong)
{
    int64_t key = joined_headboard(piece);
    struct point *point = MODEL_ADD(&piece->model, point);

    point->join = key;
    point->u = IN(0.75);
    point->v = IN(wrong ? 8 : 18);
}

static void make_hard_wood(struct joined *piece, bool wrong)
{
    joined_headboard(piece);
    for (size_t i = 0; i < piece->model.stocks.count; i++)
        piece->model.stocks.at[i].wood = wrong ? WOOD_HARD : WOOD_SOFT;
}

/* #10 wants 7/64 in softwood and 1/8 in hardwood (common practice, no source). */
static bool widens_the_pilot(const struct joined *piece)
{
    for (size_t i = 0; i < piece->plan->screw_kinds.count; i++)
        if (piece->plan->screw_kinds.at[i].gauge == 10 &&
            piece->plan->screw_kinds.at[i].pilot > IN(0.12))
            return true;
    return false;
}

static void make_long_screw(struct joined *piece, bool wrong)
{
    int64_t key = joined_headboard(piece);
    int64_t stock = add_screw_stock(piece, wrong ? 5 : 3);

    ((struct join *)model_find(&piece->model, ENTITY_join, key))->stock = stock;
}

/* Bites 3/4 in where nothing lies in the joint, and 5/8 in with a cover on both faces. */
static void make_short_screw(struct joined *piece, bool wrong)
{
    int64_t key = joined_headboard(piece);
    int64_t stock = add_screw_stock(piece, 2.25);

    ((struct join *)model_find(&piece->model, ENTITY_join, key))->stock = stock;
    while (!wrong && piece->model.layers.count > 0)
        model_remove(&piece->model, ENTITY_layer, piece->model.layers.at[0].key);
}

/* ---- 19: no way for the driver ---- */

static void make_closed_back(struct joined *piece, bool wrong)
{
    int64_t join = joined_headboard(piece);
    const struct join *item = model_find(&piece->model, ENTITY_join, join);

    if (!wrong)
        return;
    struct box *box = model_find(&piece->model, ENTITY_box, item->box_a);
    box->depth += IN(0.5);
    joined_facing(piece, item->box_a, SIDE_BACK, piece->sheet);
}

/* ---- 20: bolts of the bed frame ---- */

static int64_t add_bed_join(struct joined *piece)
{
    int64_t box = add_ladder(piece, 60, 3, 40);
    struct object *bed = MODEL_ADD(&piece->model, object);

    bed->kind = OBJECT_BED_FRAME;
    bed->name = "";
    int64_t object = bed->key;
    struct join *join = MODEL_ADD(&piece->model, join);
    join->name = "B1";
    join->box_a = box;
    join->side_a = SIDE_FRONT;
    join->target = TARGET_OBJECT;
    join->object = object;
    join->fastener = FASTENER_BOLT;
    join->place = PLACE_SITE;
    return join->key;
}

static void make_bed(struct joined *piece, bool wrong)
{
    joined_start(piece, 2.5);
    int64_t join = add_bed_join(piece);
    struct point *point = MODEL_ADD(&piece->model, point);

    point->join = join;
    point->u = IN(6);
    point->v = IN(9);
    point->existing = !wrong;
}

static void make_bed_step(struct joined *piece, bool wrong)
{
    joined_start(piece, 2.5);
    if (wrong)
        add_bed_join(piece);
    else
        add_ladder(piece, 60, 3, 40);
}

static bool measures_the_bed_first(const struct joined *piece)
{
    const struct step *bed = step_of(piece, "bed");

    return bed && bed->hold && bed->measure_count == 1 &&
           strstr(bed->measures[0], "height, distance from the middle") &&
           comes_before(piece, "bed", "drill");
}

static void make_bed_padding(struct joined *piece, bool wrong)
{
    make_bed(piece, false);
    struct layer *foam =
        joined_layer(piece, piece->model.boxes.at[0].key, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT);

    foam->thickness = IN(2);
    foam->v = IN(wrong ? 0 : 12);
}

/* ---- 21, 22: the way in ---- */

static void make_joined_too_big(struct joined *piece, bool wrong)
{
    int64_t key = joined_headboard(piece);
    struct join *join = model_find(&piece->model, ENTITY_join, key);

    add_passage(piece, PASSAGE_STAIR, 12, 84);
    join->place = wrong ? PLACE_BENCH : PLACE_SITE;
}

static void make_sheet_home(struct joined *piece, bool wrong)
{
    joined_start(piece, 2.5);
    struct box *board = joined_box(piece, FRAME_BOARD, 40, 0.5, 30);
    joined_facing(piece, board->key, SIDE_FRONT, piece->sheet);
    struct offer *offer = MODEL_ADD(&piece->model, offer);
    offer->stock = piece->sheet;
    offer->length = IN(96);
    offer->width = IN(48);
    offer->pack = 1;
    add_passage(piece, PASSAGE_VEHICLE, wrong ? 40 : 52, 20);
}

/* ---- 38, 39: seats and beds that give ---- */

static int64_t add_carried(struct joined *piece, double width, double depth, double thickness,
                           enum use_word use)
{
    struct box *box;
    struct facing *facing;
    int64_t key, sheet;

    joined_start(piece, 1.5);
    sheet = joined_sheet(piece, thickness);
    box = joined_box(piece, FRAME_CRATE, width, depth, 14);
    key = box->key;
    box->supports = box->crosses = MAKING_HAND;
    facing = joined_facing(piece, key, SIDE_TOP, sheet);
    facing->use = use;
    return key;
}

/* 25 in wide, crosses 3 in from both ends: 16 in clear. A person of 250 lb bends a strip of 1/2 in,
 * 12 in wide, by 0.131 in (E 1.3 million psi; computed by hand), and L/180 is 0.089; shear adds
 * 0.002. */
static void make_thin_seat(struct joined *piece, bool wrong)
{
    add_carried(piece, 25, 30, wrong ? 0.5 : 0.75, USE_SEAT);
    joined_sheet(piece, 0.75);
}

static bool tells_of_bending(const struct joined *piece)
{
    const struct finding *finding;

    if (joined_findings(piece, FINDING_PANEL_BENDS) == 0)
        return false;
    finding = joined_finding(piece, FINDING_PANEL_BENDS);
    assert_in_range(finding->arguments[0].value, IN(0.131), IN(0.137));
    assert_int_equal(finding->arguments[1].value, IN(16));
    assert_int_equal(finding->arguments[2].value, IN(16) / 180);
    return true;
}

/* A board of 1/2 in laid on that frame, with no panel of its own: the wood under it is the same,
 * and so is what it bends. Laid on the floor beside it nothing is known. */
static void make_thin_board(struct joined *piece, bool wrong)
{
    int64_t crate = add_carried(piece, 25, 30, 0.5, USE_STRUCTURE);
    struct facing *facing = &piece->model.facings.at[0];
    struct join *join;
    int64_t board;

    facing->side = SIDE_FRONT;
    board = joined_box(piece, FRAME_BOARD, 25, 30, wrong ? 0.5 : 0.75)->key;
    ((struct box *)model_find(&piece->model, ENTITY_box, board))->main_side = SIDE_TOP;
    facing = joined_facing(piece, board, SIDE_TOP, joined_sheet(piece, wrong ? 0.5 : 0.75));
    facing->use = USE_SEAT;
    join = joined_join(piece, crate, SIDE_TOP, board, SIDE_BOTTOM);
    join->fastener = FASTENER_REST;
}

/* Slats of 1x3, or of 1x2, by hand across a frame 40 in wide under a mattress at its top: 5 of
 * 2-1/2 with 2-1/2 between them, or one of them left out: 7-1/2. */
static void add_slats(struct joined *piece, double wide, bool all)
{
    struct box *box;
    struct object *mattress;
    struct stock *stick;
    int64_t key, slat;

    joined_start(piece, 1.5);
    stick = MODEL_ADD(&piece->model, stock);
    stick->kind = STOCK_STICK;
    stick->name = "slat";
    stick->thickness = IN(0.75);
    stick->width = IN(wide);
    slat = stick->key;
    box = joined_box(piece, FRAME_CRATE, 30, 28, 12);
    key = box->key;
    box->supports = box->crosses = MAKING_HAND;
    mattress = MODEL_ADD(&piece->model, object);
    mattress->kind = OBJECT_MATTRESS;
    mattress->name = "";
    mattress->z = IN(12);
    mattress->width = IN(30);
    mattress->depth = IN(28);
    mattress->height = IN(8);
    for (int i = 0; i < 5; i++) {
        struct member *member;

        if (i == 2 && !all)
            continue;
        member = MODEL_ADD(&piece->model, member);
        member->box = key;
        member->kind = MEMBER_RAIL;
        member->axis = AXIS_X;
        member->stick = slat;
        member->stick_set = SET_ON_EDGE; /* wide side into the box: flat under a mattress */
        member->y = IN(1.5 + 2.5 + 5 * i - (wide - 2.5) / 2);
        member->z = IN(12 - 0.75);
    }
}

static void make_slats_apart(struct joined *piece, bool wrong)
{
    add_slats(piece, 2.5, !wrong);
}

static void make_slender_slats(struct joined *piece, bool wrong)
{
    add_slats(piece, wrong ? 1.5 : 2.5, true);
}

/* A queen's deck, 60 in wide: over 54 it wants a leg in its middle; 80 / 36 are three spaces. */
static void make_wide_bed(struct joined *piece, bool wrong)
{
    add_carried(piece, wrong ? 60 : 54, 80, 0.75, USE_DECK);
}

/* ---- 25, 26: buttons ---- */

static int64_t add_board(struct joined *piece)
{
    struct box *box = joined_box(piece, FRAME_BOARD, 36, 24, 0.75);
    int64_t key = box->key;

    box->main_side = SIDE_TOP;
    joined_facing(piece, key, SIDE_TOP, joined_sheet(piece, 0.75));
    return key;
}

static void make_tufted(struct joined *piece, bool wrong)
{
    joined_start(piece, 1.5);
    int64_t board = add_board(piece);

    joined_layer(piece, board, LAYER_FOAM, SHAPE_SLAB, SIDE_TOP);
    struct layer *cover = joined_layer(piece, board, LAYER_COVER, SHAPE_WRAPPED, SIDE_TOP);
    cover->rank = 2;
    int64_t layer = cover->key;
    if (!wrong)
        return;
    struct tufting *tufting = MODEL_ADD(&piece->model, tufting);
    tufting->layer = layer;
    tufting->across = 4;
    tufting->down = 2;
    tufting->border = IN(4);
}

static bool drills_tufts_before_foam(const struct joined *piece)
{
    const struct step *tuft = step_of(piece, "tuft");

    return tuft && tuft->hold && comes_before(piece, "tuft", "pad");
}

static void make_knots(struct joined *piece, bool wrong)
{
    joined_start(piece, 1.5);
    int64_t box = add_ladder(piece, 36, 2, 24);
    struct box *item = model_find(&piece->model, ENTITY_box, box);
    struct layer *cover = joined_layer(piece, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
    int64_t layer = cover->key;

    item->supports = MAKING_HAND;
    struct member *rail = MODEL_ADD(&piece->model, member);
    rail->box = box;
    rail->kind = MEMBER_RAIL;
    rail->axis = AXIS_X;
    rail->x = IN(1.5);
    rail->z = IN(wrong ? 11.25 : 7.25);
    rail->length = IN(33);
    struct tufting *tufting = MODEL_ADD(&piece->model, tufting);
    tufting->layer = layer;
    tufting->pattern = PATTERN_SQUARE;
    tufting->across = 2;
    tufting->down = 2;
    tufting->border = IN(4);
}

/* ---- 34: skirting ---- */

static void make_skirting(struct joined *piece, bool wrong)
{
    int64_t join = joined_headboard(piece);
    struct wall *wall = MODEL_ADD(&piece->model, wall);

    (void)join;
    wall->side = SIDE_BACK;
    wall->skirting_height = IN(4);
    wall->skirting_depth = IN(0.75);
    wall->gap = wrong ? IN(0.25) : IN(0.75);
}

/* ---- 35: what closes it ---- */

static void make_underside(struct joined *piece, bool wrong)
{
    joined_start(piece, 1.5);
    int64_t box = add_crate(piece, 36, 24, 14);
    struct fitting *legs = MODEL_ADD(&piece->model, fitting);

    legs->box = box;
    legs->kind = FITTING_LEG;
    legs->side = SIDE_BOTTOM;
    legs->count = 4;
    joined_layer(piece, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_TOP);
    if (!wrong)
        joined_layer(piece, box, LAYER_DUST_COVER, SHAPE_FLAT, SIDE_BOTTOM);
}

static void make_open_back(struct joined *piece, bool wrong)
{
    joined_start(piece, 2.5);
    int64_t box = add_ladder(piece, 60, 3, 40);

    add_cover(piece, box, 0, 0);
    if (!wrong)
        joined_layer(piece, box, LAYER_OUTSIDE_BACK, SHAPE_FLAT, SIDE_BACK);
}

/* ---- 36: wood for legs ---- */

static void make_legs(struct joined *piece, bool wrong)
{
    joined_start(piece, 1.5);
    int64_t box = add_crate(piece, 36, 24, 14);
    struct fitting *leg = MODEL_ADD(&piece->model, fitting);

    leg->box = box;
    leg->kind = FITTING_LEG;
    leg->side = SIDE_BOTTOM;
    leg->u = IN(6);
    leg->v = IN(wrong ? 6 : 1.25);
    leg->count = 1;
}

/* ---- 41: the mattress ---- */

static void make_wings(struct joined *piece, bool wrong)
{
    int64_t left = joined_headboard(piece);
    const struct join *join = model_find(&piece->model, ENTITY_join, left);
    int64_t centre = join->box_a;
    int64_t wing = join->box_b;
    struct box *right = MODEL_ADD(&piece->model, box);
    const struct box *like = model_find(&piece->model, ENTITY_box, wing);
    int64_t key = right->key;

    *right = *like;
    right->key = key;
    joined_join(piece, centre, SIDE_RIGHT, key, SIDE_LEFT)->place = PLACE_SITE;
    struct layer *pad = joined_layer(piece, wing, LAYER_FOAM, SHAPE_SLAB, SIDE_RIGHT);
    pad->thickness = IN(wrong ? 1 : 0.25);
    struct object *mattress = MODEL_ADD(&piece->model, object);
    mattress->kind = OBJECT_MATTRESS;
    mattress->name = "";
    mattress->x = IN(1.5);
    mattress->y = IN(3);
    mattress->width = IN(60);
    mattress->depth = IN(80);
    mattress->height = IN(24);
}

/* ---- 42: two left wings ---- */

/* The right wing as the image of the left one, its sleeve on the inner face or made like the other.
 */
static void make_pair(struct joined *piece, bool wrong)
{
    int64_t first = joined_headboard(piece);
    const struct join *join = model_find(&piece->model, ENTITY_join, first);
    int64_t centre = join->box_a;
    int64_t wing = join->box_b;
    struct box *right = joined_box(piece, FRAME_LADDER, 3.5, 11.875, 56);
    int64_t key = right->key;

    right->supports = MAKING_HAND;
    right->main_side = SIDE_LEFT;
    right->mirror_of = wing;
    joined_facing(piece, key, SIDE_LEFT, piece->sheet);
    joined_facing(piece, key, SIDE_RIGHT, piece->sheet);
    struct layer *cover =
        joined_layer(piece, key, LAYER_COVER, SHAPE_SEWN, wrong ? SIDE_RIGHT : SIDE_LEFT);
    cover->both = 1;
    cover->left = ENDING_OPEN;
    cover->right = ENDING_SEWN;
    cover->top = ENDING_SEWN;
    cover->bottom = ENDING_OPEN;
    struct join *second = joined_join(piece, centre, SIDE_RIGHT, key, SIDE_LEFT);
    second->head = HEAD_A;
    second->place = PLACE_SITE;
    second->end = IN(3);
}

/* ---- 43: handles ---- */

static void make_flap(struct joined *piece, bool wrong)
{
    struct open_wing open = joined_open_wing(piece);

    if (!wrong)
        model_remove(&piece->model, ENTITY_join, open.join);
}

/* Left loose for a join that has gone. */
static void make_loose_edge(struct joined *piece, bool wrong)
{
    struct open_wing open = joined_open_wing(piece);
    struct layer_edge *edge = MODEL_ADD(&piece->model, layer_edge);

    edge->layer = open.cover;
    edge->edge = EDGE_LEFT;
    edge->class = CLASS_SITE;
    if (wrong)
        model_remove(&piece->model, ENTITY_join, open.join);
}

static bool keeps_the_handle_of_flaps(const struct joined *piece)
{
    for (size_t i = 0; i < piece->plan->steps.count; i++) {
        const struct step *step = &piece->plan->steps.at[i];

        for (size_t k = 0; k < step->action_count; k++)
            if (step->kind == STEP_STAPLE && strstr(step->actions[k], "keeps its handle"))
                return true;
    }
    return false;
}

/* ---- 52: the seat over the screws of the wall ---- */

static void make_seat(struct joined *piece, bool wrong)
{
    int64_t corner = joined_banquette(piece);
    const struct join *join = model_find(&piece->model, ENTITY_join, corner);
    int64_t bench = join->box_b;
    struct box *board = joined_box(piece, FRAME_BOARD, 84, 18, 0.75);
    int64_t seat = board->key;

    board->main_side = SIDE_TOP;
    joined_facing(piece, seat, SIDE_TOP, joined_sheet(piece, 0.75));
    struct join *on = joined_join(piece, bench, SIDE_TOP, seat, SIDE_BOTTOM);
    on->name = "R1";
    on->head = HEAD_A;
    on->fastener = wrong ? FASTENER_SCREW : FASTENER_REST;
    struct join *wall = MODEL_ADD(&piece->model, join);
    wall->name = "W1";
    wall->box_a = bench;
    wall->side_a = SIDE_BACK;
    wall->target = TARGET_WALL;
    wall->head = HEAD_A;
    wall->place = PLACE_SITE;
}

/* ---- patches and slits that show ---- */

/* Heads under foam on the outer side of a wing that is seen; a lining bridges the hollows. */
static void make_patches(struct joined *piece, bool wrong)
{
    struct open_wing open = joined_open_wing(piece);
    struct layer *foam = joined_layer(piece, open.wing, LAYER_FOAM, SHAPE_SLAB, SIDE_LEFT);

    foam->thickness = IN(1);
    foam->rank = 0;
    if (wrong)
        model_remove(&piece->model, ENTITY_layer, open.lining);
}

static void make_slits(struct joined *piece, bool wrong)
{
    struct open_wing open = joined_open_wing(piece);
    struct join *join = model_find(&piece->model, ENTITY_join, open.join);
    struct face *face = MODEL_ADD(&piece->model, face);

    join->treatment = TREATMENT_PIERCED;
    face->box = open.wing;
    face->side = SIDE_LEFT;
    face->seen = wrong ? SEEN_SEEN : SEEN_NEVER;
}

/* ---- the table ---- */

#define TOLD(finding) FINDING_##finding, NULL
#define STEP(function) -1, function

static const struct mistake mistakes[] = {
    {"06_seam_by_hand_off_the_middle", make_seams, TOLD(SEAM_UNEVEN), {IN(12), 0, IN(15)}, false},
    {"06_seams_by_the_program_are_even", make_wide_cover, STEP(sews_even_seams), {0}, false},
    {"11_hollows_that_show", make_patches, TOLD(PATCH_SHOWS), {6}, true},
    {"11_slits_that_show", make_slits, TOLD(SLIT_SHOWS), {6}, true},
    {"13_holes_lost_under_padding",
     make_padded_join,
     STEP(maps_and_pins_before_padding),
     {0},
     false},
    {"14_batting_round_the_bit", make_padded_join, STEP(drills_before_padding), {0}, false},
    {"14_join_that_came_late", make_late_join, TOLD(DRILL_PADDED), {0}, false},
    {"15_hole_on_a_frame_screw", make_hole_by_hand, TOLD(HOLE_MEETS), {0}, false},
    {"16_head_snapped_off_in_hardwood", make_hard_wood, STEP(widens_the_pilot), {0}, false},
    {"17_tip_through_the_face",
     make_long_screw,
     TOLD(SCREW_NONE_FITS),
     {0, IN(4.5), 0, IN(1.625)},
     false},
    {"18_cloth_in_the_joint_not_counted",
     make_short_screw,
     TOLD(SCREW_SHORT_BITE),
     {IN(0.625), IN(0.75)},
     false},
    {"19_no_way_for_the_driver", make_closed_back, TOLD(JOIN_UNREACHABLE), {0}, false},
    {"20_bed_bolts_by_the_book", make_bed, TOLD(BED_NOT_MEASURED), {0}, false},
    {"20_bed_frame_measured_first", make_bed_step, STEP(measures_the_bed_first), {0}, false},
    {"20_padding_under_a_bracket", make_bed_padding, TOLD(BED_PADDED), {1}, false},
    {"21_glued_and_too_big_for_the_stairs", make_joined_too_big, TOLD(TOO_BIG_JOINED), {0}, true},
    {"22_sheet_larger_than_the_vehicle",
     make_sheet_home,
     TOLD(SHEET_TOO_LARGE),
     {IN(96), IN(48)},
     false},
    {"25_button_holes_after_foam", make_tufted, STEP(drills_tufts_before_foam), {0}, false},
    {"26_knot_on_a_rail", make_knots, TOLD(TUFT_ON_MEMBER), {0}, false},
    {"34_skirting_holds_the_board_off", make_skirting, TOLD(SKIRTING), {IN(0.5), IN(4)}, true},
    {"35_dust_cover_forgotten", make_underside, TOLD(UNDERSIDE_OPEN), {0}, true},
    {"35_outside_back_forgotten", make_open_back, TOLD(BACK_OPEN), {0}, true},
    {"36_no_wood_for_a_leg", make_legs, TOLD(LEG_NO_WOOD), {IN(6), IN(6), IN(0.75)}, true},
    {"38_seat_that_flexes", make_thin_seat, FINDING_PANEL_BENDS, tells_of_bending, {0}, true},
    {"38_board_laid_on_boxes_that_flexes",
     make_thin_board,
     FINDING_PANEL_BENDS,
     tells_of_bending,
     {0},
     false},
    {"39_slats_too_far_apart", make_slats_apart, TOLD(SLATS_APART), {IN(7.5), IN(2.5)}, false},
    {"39_slats_too_slender",
     make_slender_slats,
     TOLD(SLAT_SLENDER),
     {IN(1.5), IN(0.75), IN(2)},
     false},
    {"39_bed_without_a_middle_leg", make_wide_bed, TOLD(BED_NO_LEG), {IN(60), 2, IN(36)}, true},
    {"41_wings_squeeze_the_mattress", make_wings, TOLD(MATTRESS_TIGHT), {0, IN(62), IN(60)}, false},
    {"42_two_left_wings", make_pair, TOLD(TWIN_LACKS), {0}, false},
    {"43_handles_trimmed_too_soon", make_flap, STEP(keeps_the_handle_of_flaps), {0}, false},
    {"43_edge_left_loose_for_nothing", make_loose_edge, TOLD(LOOSE_FOR_NOTHING), {0, IN(56)}, true},
    {"52_seat_over_the_wall_screws", make_seat, TOLD(SEAT_FIRST), {0}, true},
};

#define MISTAKES (sizeof mistakes / sizeof *mistakes)

/* ---- cures ---- */

static void take_first_cure(struct joined *piece, int kind)
{
    const struct finding *finding = joined_finding(piece, kind);
    struct fault_note note = {0};

    assert_true(finding->cure_count > 0);
    if (cure_apply(&piece->model, &finding->cures[0], &note))
        fail_msg("%s: %s", finding->cures[0].text, note.why);
}

static bool is_told(const struct joined *piece, const struct mistake *mistake)
{
    return mistake->told ? mistake->told(piece) : joined_findings(piece, mistake->kind) > 0;
}

static void made_wrong_it_is_told_and_made_right_it_is_not(void **state)
{
    const struct mistake *mistake = *state;
    struct joined piece;

    mistake->make(&piece, false);
    joined_plan(&piece);
    assert_false(is_told(&piece, mistake));
    joined_end(&piece);
    mistake->make(&piece, true);
    joined_plan(&piece);
    assert_true(is_told(&piece, mistake));
    for (int i = 0; i < FIGURES; i++)
        if (mistake->figures[i] != 0)
            assert_int_equal(joined_argument(&piece, mistake->kind, i), mistake->figures[i]);
    if (mistake->cured) {
        take_first_cure(&piece, mistake->kind);
        joined_plan(&piece);
        assert_false(is_told(&piece, mistake));
    }
    joined_end(&piece);
}

int main(void)
{
    struct CMUnitTest tests[MISTAKES];

    for (size_t i = 0; i < MISTAKES; i++)
        tests[i] =
            (struct CMUnitTest){mistakes[i].name, made_wrong_it_is_told_and_made_right_it_is_not,
                                NULL, NULL, (void *)(uintptr_t)&mistakes[i]};
    int failed = cmocka_run_group_tests_name("mistakes", tests, NULL, NULL);

    return failed ? 1 : 0;
}
