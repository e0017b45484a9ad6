/* What holds for every layer, on boxes and layers by chance from fixed seeds. */
#include "soft.h"

#include "dice.h"
#include "plan/findings.h"
#include "plan/geometry.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

static double inches(struct dice *dice, int least, int most)
{
    return (double)dice_between(dice, least * 8, most * 8) / 8;
}

static enum side_word any_side(struct dice *dice)
{
    return (enum side_word)dice_between(dice, 0, SIDE_COUNT - 1);
}

static enum ending_word any_ending(struct dice *dice, enum shape_word shape)
{
    static const enum ending_word wrapped[] = {ENDING_WRAP, ENDING_SIDE, ENDING_STOP};
    static const enum ending_word sewn[] = {ENDING_SEWN, ENDING_OPEN};

    return shape == SHAPE_SEWN ? sewn[dice_between(dice, 0, 1)] : wrapped[dice_between(dice, 0, 2)];
}

static int64_t add_any_box(struct soft *soft, struct dice *dice)
{
    return soft_box(soft, "X", inches(dice, 4, 90), inches(dice, 2, 30), inches(dice, 4, 70));
}

/* Under an outline of its front, or of its top, by chance. */
static int64_t add_any_outlined(struct soft *soft, struct dice *dice)
{
    int64_t key = add_any_box(soft, dice);
    struct box *box = model_find(&soft->model, ENTITY_box, key);

    box->main_side = dice_between(dice, 0, 1) ? SIDE_FRONT : SIDE_TOP;
    box->outline = dice_between(dice, 0, OUTLINE_COUNT - 1);
    box->rise = IN(inches(dice, 0, 24));
    return key;
}

/* Any layer on a box; lengths of cloth and batting that it would be made from. */
static int64_t add_any_layer(struct soft *soft, struct dice *dice, int64_t box)
{
    static const struct {
        enum layer_word kind;
        enum shape_word shape;
    } sorts[] = {{LAYER_COVER, SHAPE_WRAPPED},   {LAYER_COVER, SHAPE_SEWN},
                 {LAYER_BATTING, SHAPE_WRAPPED}, {LAYER_LINING, SHAPE_FLAT},
                 {LAYER_FOAM, SHAPE_SLAB},       {LAYER_WELT, SHAPE_RUN}};
    size_t sort = (size_t)dice_between(dice, 0, 5);
    enum shape_word shape = sorts[sort].shape;
    int64_t stock = sorts[sort].kind == LAYER_BATTING ? soft->batting
                    : sorts[sort].kind == LAYER_FOAM  ? soft->foam2
                                                      : soft->cloth;
    int64_t layer = soft_layer(soft, box, sorts[sort].kind, shape, any_side(dice), stock);

    soft_endings(soft, layer, any_ending(dice, shape), any_ending(dice, shape),
                 any_ending(dice, shape), any_ending(dice, shape));
    soft_layer_of(soft, layer)->both =
        (shape == SHAPE_SEWN || shape == SHAPE_WRAPPED) && dice_between(dice, 0, 1);
    if (sorts[sort].kind == LAYER_COVER && shape == SHAPE_WRAPPED)
        soft_layer_of(soft, layer)->both = 0;
    if (dice_between(dice, 0, 3) == 0)
        soft_layer_of(soft, layer)->u = IN(inches(dice, 0, 2));
    soft_layer_of(soft, layer)->direction = dice_between(dice, 0, 2) == 0;
    soft_layer_of(soft, layer)->seaming = dice_between(dice, 0, SEAMING_COUNT - 1);
    return layer;
}

static void add_any_opening(struct soft *soft, struct dice *dice, int64_t layer)
{
    struct opening *opening = MODEL_ADD(&soft->model, opening);

    opening->layer = layer;
    opening->edge = dice_between(dice, 0, EDGE_COUNT - 1);
    opening->begin = IN(inches(dice, 0, 60));
    opening->length = IN(inches(dice, 0, 20));
}

static void with_any_build(uint64_t seed, int layers, void (*check)(struct soft *soft))
{
    bool outlined = seed % 2 == 0;
    void *state;
    struct soft *soft;
    struct dice dice = {seed};

    assert_int_equal(soft_begin(&state), 0);
    soft = state;
    for (int i = 0; i < layers; i++) {
        int64_t box = outlined ? add_any_outlined(soft, &dice) : add_any_box(soft, &dice);
        int64_t layer = add_any_layer(soft, &dice, box);

        for (int64_t n = dice_between(&dice, 0, 3); n > 0; n--)
            add_any_opening(soft, &dice, layer);
        if (dice_between(&dice, 0, 4) == 0)
            soft_edge_class(soft, layer, (enum edge_word)dice_between(&dice, 0, 3), CLASS_SITE);
    }
    soft_plan(soft);
    check(soft);
    soft_end(&state);
}

/* ---- intervals ---- */

static void check_intervals(struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->edges.count; i++) {
        const struct edge *edge = &soft->plan->edges.at[i];
        int64_t at = 0;
        int64_t staples = 0;

        for (size_t k = 0; k < edge->interval_count; k++) {
            const struct interval *interval = &soft->plan->intervals.at[edge->first_interval + k];

            assert_int_equal(interval->edge, i);
            assert_int_equal(interval->from, at);
            assert_true(interval->to > at || edge->length == 0);
            assert_int_not_equal(interval->class, CLASS_AUTO);
            at = interval->to;
            staples += interval->staples;
        }
        assert_int_equal(at, edge->length);
        assert_int_equal(staples, edge->staples);
        /* ceil(L/s) in a loop, one more in an open row */
        if (edge->pitch > 0)
            assert_in_range(staples - edge->corners, whole_divide_up(edge->length, edge->pitch),
                            whole_divide_up(edge->length, edge->pitch) + 1);
    }
}

static void intervals_fill_each_edge_and_sum_to_its_staples(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 200; seed++)
        with_any_build(seed, 6, check_intervals);
}

/* ---- pieces ---- */

static int64_t box_depth(const struct soft *soft, const struct layer *layer)
{
    return vector_along(box_size(MODEL_FIND(&soft->model, box, layer->box)),
                        side_axis(layer->side));
}

/* What an edge needs at least beyond the face, whatever is padded. */
static int64_t needed(const struct soft *soft, const struct layer *layer, int64_t ending,
                      bool inside)
{
    int64_t held = IN(1.25) + IN(2);

    if (ending == ENDING_STOP)
        return 0;
    if (ending == ENDING_SEWN)
        return IN(0.5);
    return held + (ending == ENDING_WRAP && !inside ? box_depth(soft, layer) : 0);
}

static void check_reach(struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->covers.count; i++) {
        const struct cover *cover = &soft->plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(&soft->model, layer, cover->layer);
        struct area face = face_area(MODEL_FIND(&soft->model, box, layer->box), layer->side);

        if (layer->kind != LAYER_COVER || layer->both)
            continue;
        assert_true(cover->cut_width >= area_width(&face) - layer->u +
                                            needed(soft, layer, layer->left, layer->u > 0) +
                                            needed(soft, layer, layer->right, false));
        assert_true(cover->cut_height >= area_height(&face) +
                                             needed(soft, layer, layer->top, false) +
                                             needed(soft, layer, layer->bottom, false));
    }
}

static void covers_reach_their_landings_with_a_handle(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 200; seed++)
        with_any_build(seed, 6, check_reach);
}

static bool lies_over_outline(const struct box *box, const struct layer *layer)
{
    return box->outline != OUTLINE_RECTANGLE &&
           layer->side == (box->main_side == SIDE_TOP ? SIDE_FRONT : SIDE_TOP);
}

static int bent_looked_at;

/* How much an arc is longer than its chord, by the square of its rise over the chord, falls from
 * 8/3 of a flat one to (pi / 2 - 1) 4 of a half circle: it is more than twice that. */
static void check_bent(struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->covers.count; i++) {
        const struct cover *cover = &soft->plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(&soft->model, layer, cover->layer);
        const struct box *box = MODEL_FIND(&soft->model, box, layer->box);
        int64_t most = box->main_side == SIDE_TOP ? box->depth : box->height;
        double chord = (double)box->width;
        double rise = (double)length_smaller(length_smaller(box->rise, most), box->width / 2);

        if (!lies_over_outline(box, layer) || layer->u > 0 || layer->shape == SHAPE_RUN ||
            layer->both || box->outline != OUTLINE_ARCH || box->rise < IN(1))
            continue;
        bent_looked_at++;
        assert_true((double)cover->cut_width >= chord + rise * rise / chord * 2 - (double)IN(0.5));
    }
}

static void what_is_bent_over_an_outline_is_longer(void **state)
{
    (void)state;
    for (uint64_t seed = 2; seed <= 200; seed += 2)
        with_any_build(seed, 6, check_bent);
    assert_true(bent_looked_at > 5);
}

static void check_pieces(struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->covers.count; i++) {
        const struct cover *cover = &soft->plan->covers.at[i];
        int64_t area = 0;

        for (size_t k = 0; k < soft->plan->pieces.count; k++) {
            const struct piece *piece = &soft->plan->pieces.at[k];

            if (piece->layer == cover->layer)
                area += piece->width * piece->height / (LENGTH_MM * LENGTH_MM);
        }
        assert_in_range(cover->area, area, area + (int64_t)soft_piece_count(soft, cover->layer));
        assert_true(soft_piece_count(soft, cover->layer) > 0);
    }
}

static void covers_have_the_area_of_their_pieces(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 200; seed++)
        with_any_build(seed, 6, check_pieces);
}

/* Wide pieces may be sewn or laid; of cloth none is wider across the roll than the roll. */
static void check_roll(struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->pieces.count; i++) {
        const struct piece *piece = &soft->plan->pieces.at[i];
        int64_t across = piece->across ? piece->height : piece->width;

        if (piece->stock == soft->cloth && !piece->turned_allowed)
            assert_true(across <= IN(54));
    }
}

static void no_piece_is_wider_than_its_roll(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 200; seed++)
        with_any_build(seed, 6, check_roll);
}

/* What the strips and widths of a cover sew up to. */
static int64_t sewn_width(const struct soft *soft, const struct cover *cover)
{
    int64_t width = 0;

    for (size_t i = 0; i < soft->plan->pieces.count; i++) {
        const struct piece *piece = &soft->plan->pieces.at[i];

        if (piece->layer == cover->layer && strncmp(piece->name, "cover", 5) == 0)
            width += cover->railroaded ? piece->height : piece->width;
    }
    return width - cover->seams * 2 * IN(0.5);
}

static void check_sewn(struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->covers.count; i++) {
        const struct cover *cover = &soft->plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(&soft->model, layer, cover->layer);
        int64_t wanted = cover->railroaded ? cover->cut_height : cover->cut_width;

        if (layer->kind != LAYER_COVER || layer->shape != SHAPE_WRAPPED)
            continue;
        assert_in_range(sewn_width(soft, cover) - wanted, 0, 1); /* half a count for each side */
        if (cover->seams == 1) {
            assert_true(cover->side_strip + cover->side_strip_right >= IN(4));
            assert_true(cover->side_strip == 0 || cover->side_strip_right == 0);
        }
        if (cover->seams > 1) {
            assert_true(cover->side_strip >= IN(4));
            assert_true(cover->alone || cover->side_strip_right >= IN(4));
            assert_true(cover->side_strip <= IN(54) && cover->side_strip_right <= IN(54));
        }
    }
}

static void widths_sew_up_to_the_cover_and_no_strip_is_narrow(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 60; seed++)
        with_any_build(seed, 6, check_sewn);
}

/* ---- where seams fall ---- */

#define SEAMS_AT_MOST 16

/* The same of parts that are sewn one under the other, from their heights. */
static int seams_of_stack(const struct soft *soft, const struct cover *cover,
                          int64_t seams[SEAMS_AT_MOST])
{
    int64_t at = cover->cut_height - cover->below + IN(0.5);
    int count = 0;

    for (size_t i = 0; i < soft->plan->pieces.count && count < cover->seams; i++)
        if (soft->plan->pieces.at[i].layer == cover->layer) {
            at -= soft->plan->pieces.at[i].height - IN(count > 0 ? 1 : 0);
            seams[count++] = at;
        }
    return count;
}

/* The seams of a wrapped cover from the left of its layer, level ones from its bottom; how many. */
static int seams_of(const struct soft *soft, const struct cover *cover,
                    int64_t seams[SEAMS_AT_MOST])
{
    int64_t cut = cover->railroaded ? cover->cut_height : cover->cut_width;
    int64_t before = cover->railroaded ? cover->below : cover->before;
    int64_t left = cover->side_strip - IN(0.5) - before;
    int64_t right = cut - cover->side_strip_right + IN(0.5) - before;
    int count = 0;

    if (cover->seams > 1 && cover->alone)
        return seams_of_stack(soft, cover, seams);
    if (cover->seams == 1)
        seams[count++] = cover->side_strip > 0 ? left : right;
    for (int nth = 0; nth < cover->seams / 2; nth++) {
        seams[count++] = left + nth * (IN(54) - IN(1));
        seams[count++] = right - nth * (IN(54) - IN(1));
    }
    return count;
}

static bool seam_is_told(const struct soft *soft, int64_t layer)
{
    for (size_t i = 0; i < soft->plan->findings.count; i++)
        if (soft->plan->findings.at[i].kind == FINDING_SEAM_ON &&
            soft->plan->findings.at[i].key == layer)
            return true;
    return false;
}

static int folds_looked_at[2]; /* seams, by whether they are level */

static void check_folds(struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->covers.count; i++) {
        const struct cover *cover = &soft->plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(&soft->model, layer, cover->layer);
        struct area face = face_area(MODEL_FIND(&soft->model, box, layer->box), layer->side);
        bool level = cover->railroaded;
        int64_t first = level ? layer->bottom : layer->left;
        int64_t last = level ? layer->top : layer->right;
        int64_t end = level ? area_height(&face) : area_width(&face) - layer->u;
        int64_t seams[SEAMS_AT_MOST];

        /* over an outline the face ends elsewhere on the cloth */
        if (layer->kind != LAYER_COVER || layer->shape != SHAPE_WRAPPED ||
            seam_is_told(soft, layer->key) ||
            lies_over_outline(MODEL_FIND(&soft->model, box, layer->box), layer))
            continue;
        for (int n = seams_of(soft, cover, seams); n-- > 0;) {
            if ((level || layer->u == 0) && first != ENDING_STOP)
                assert_true(llabs(seams[n]) >= IN(1) - 1);
            if (last != ENDING_STOP)
                assert_true(llabs(seams[n] - end) >= IN(1) - 1);
            folds_looked_at[level]++;
        }
    }
}

static void no_seam_lies_on_the_fold_over_an_edge(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 150; seed++)
        with_any_build(seed, 6, check_folds);
    assert_true(folds_looked_at[0] > 20 && folds_looked_at[1] > 10);
}

/* A wide frame with a sheet in front, or a tall one, and a cover over it that is wider than its
 * cloth; railroaded where it is tall. */
static int64_t add_frame(struct soft *soft, struct dice *dice, bool tall, int64_t *ret_cover)
{
    double width = tall ? 40 : inches(dice, 48, 100);
    double height = tall ? inches(dice, 48, 160) : 40;
    int64_t box = soft_box(soft, "A", width, 3, height);
    struct box *frame = model_find(&soft->model, ENTITY_box, box);
    struct facing *facing = MODEL_ADD(&soft->model, facing);

    facing->box = box;
    facing->side = SIDE_FRONT;
    facing->stock = soft_wood(soft, STOCK_SHEET, 0.5, 0);
    frame->stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    *ret_cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_layer_of(soft, *ret_cover)->direction = tall ? DIRECTION_ACROSS : DIRECTION_UP;
    return box;
}

/* A box joined on its front, anywhere: its screws go through the cover. */
static void join_on_front(struct soft *soft, struct dice *dice, bool tall, int64_t box)
{
    double size = inches(dice, 4, 24);
    int64_t other = soft_box(soft, "B", tall ? 40 : size, 10, tall ? size : 40);
    struct box *frame = model_find(&soft->model, ENTITY_box, other);
    struct join *join = MODEL_ADD(&soft->model, join);

    frame->frame = FRAME_CRATE;
    frame->stick = soft_wood(soft, STOCK_STICK, 1.5, 1.5);
    join->name = "J";
    join->box_a = box;
    join->side_a = SIDE_FRONT;
    join->target = TARGET_BOX;
    join->box_b = other;
    join->side_b = SIDE_BACK;
    *(tall ? &join->offset_v : &join->offset_u) = IN(inches(dice, 0, tall ? 24 : 40));
}

/* How far a cover's nearest seam lies from its slits, less what is wanted; INT64_MAX without. */
static int64_t room_at_slits(const struct soft *soft, const struct cover *cover)
{
    int64_t seams[SEAMS_AT_MOST];
    int count = seams_of(soft, cover, seams);
    int64_t room = INT64_MAX;

    for (size_t i = 0; i < soft->plan->patches.count; i++) {
        const struct patch *patch = &soft->plan->patches.at[i];

        if (patch->layer != cover->layer || patch->side != SIDE_FRONT)
            continue;
        for (int n = 0; n < count; n++) {
            int64_t at = cover->railroaded ? patch->v : patch->u;
            int64_t off = llabs(at - seams[n]) - patch->diameter / 2 - IN(0.5);

            room = off < room ? off : room;
        }
    }
    return room;
}

/* How many of 60 covers are slit, and the seams of how many gave way. */
static void check_holes(void **state, bool tall, int *ret_slit, int *ret_moved)
{
    *ret_slit = *ret_moved = 0;
    for (uint64_t seed = 1; seed <= 60; seed++) {
        struct dice dice = {seed};
        struct soft *soft;
        const struct cover *cover;
        int64_t layer, box, whole;

        assert_int_equal(soft_begin(state), 0);
        soft = *state;
        box = add_frame(soft, &dice, tall, &layer);
        join_on_front(soft, &dice, tall, box);
        soft_plan(soft);
        cover = soft_cover(soft, layer);
        whole = cover->cut_height - cover->below - IN(53.5);
        *ret_slit += cover->seams > 0 && room_at_slits(soft, cover) < INT64_MAX;
        if (tall)
            *ret_moved += cover->seams > 0 && cover->side_strip > IN(4) && cover->alone[0] > whole;
        else
            *ret_moved += cover->seams > 0 && cover->seam < IN(25.5);
        assert_true(seam_is_told(soft, layer) || room_at_slits(soft, cover) >= -1);
        soft_end(state);
    }
}

static void no_seam_lies_on_the_hole_of_a_screw(void **state)
{
    int slit, moved;

    check_holes(state, false, &slit, &moved);
    assert_true(slit > 25);
    assert_true(moved > 2);
}

static void no_level_seam_lies_on_the_hole_of_a_screw(void **state)
{
    int slit, moved;

    check_holes(state, true, &slit, &moved);
    assert_true(slit > 25);
    assert_true(moved > 2);
}

/* ---- two plans ---- */

static void a_wider_cloth_needs_no_more_widths_for_any_cover(void **state)
{
    struct soft *soft = *state;
    struct dice dice = {23};
    struct stock *cloth = soft_cloth(soft);

    for (int i = 0; i < 60; i++)
        add_any_layer(soft, &dice, add_any_box(soft, &dice));
    for (int i = 0; i < 20; i++) {
        int64_t layer = soft->model.layers.at[dice_between(&dice, 0, 59)].key;
        int64_t narrow = IN(inches(&dice, 30, 60));
        int widths;

        if (soft_layer_of(soft, layer)->kind == LAYER_FOAM)
            continue;
        cloth->width = narrow;
        soft_plan(soft);
        widths = soft_piece_count(soft, layer) ? soft_cover(soft, layer)->width_count : 0;
        cloth->width = narrow + IN(inches(&dice, 0, 60));
        soft_plan(soft);
        if (widths > 0)
            assert_true(soft_cover(soft, layer)->width_count <= widths);
    }
}

/* One cover a build: several together are laid out by a search, whose quick answer may be off. */
static void a_wider_cloth_is_never_bought_longer(void **state)
{
    int shorter = 0;

    for (uint64_t seed = 1; seed <= 200; seed++) {
        struct dice dice = {seed};
        struct soft *soft;
        struct stock *cloth;
        struct layer *layer;
        int64_t before;

        assert_int_equal(soft_begin(state), 0);
        soft = *state;
        layer = soft_layer_of(soft, soft_layer(soft, add_any_box(soft, &dice), LAYER_COVER,
                                               SHAPE_WRAPPED, SIDE_FRONT, soft->cloth));
        layer->direction = dice_between(&dice, 0, 1);
        layer->seaming = dice_between(&dice, 0, 1) ? SEAMING_NEAR : SEAMING_CENTRE;
        cloth = soft_cloth(soft);
        cloth->width = IN(inches(&dice, 30, 60));
        soft_plan(soft);
        before = soft->plan->tally.cloth;
        cloth->width += IN(inches(&dice, 0, 40));
        soft_plan(soft);
        assert_true(soft->plan->tally.cloth <= before);
        shorter += soft->plan->tally.cloth < before;
        soft_end(state);
    }
    assert_true(shorter > 40);
}

/* The left-right mirror of a layer on the front: u from the other end, left and right changed. */
static int64_t add_mirror(struct soft *soft, int64_t layer)
{
    struct layer *mirror;
    struct layer from = *soft_layer_of(soft, layer);
    const struct box *box = MODEL_FIND(&soft->model, box, from.box);
    double width = (double)box->width / 8128, depth = (double)box->depth / 8128;
    int64_t other = soft_box(soft, "Y", width, depth, (double)box->height / 8128);
    int64_t key = soft_layer(soft, other, (enum layer_word)from.kind, (enum shape_word)from.shape,
                             SIDE_FRONT, from.stock);

    mirror = soft_layer_of(soft, key);
    mirror->both = from.both;
    mirror->left = from.right;
    mirror->right = from.left;
    mirror->top = from.top;
    mirror->bottom = from.bottom;
    mirror->direction = from.direction;
    mirror->seaming = from.seaming;
    if (from.u > 0)
        mirror->width = IN(width) - from.u;
    return key;
}

/* Of level seams the strip lies below on both; the halves beside an upright one are wider and
 * narrower, or equal. */
static void assert_mirrored_strips(const struct cover *cover, const struct cover *mirror)
{
    bool halves = cover->side_strip == 0 && mirror->side_strip == 0;
    bool level = cover->alone && (cover->railroaded || halves);

    if (cover->seams == 1 && !cover->railroaded)
        assert_int_equal(*cover->alone + *mirror->alone,
                         cover->cut_width - cover->before - mirror->before);
    assert_int_equal(cover->side_strip, level ? mirror->side_strip : mirror->side_strip_right);
    assert_int_equal(cover->side_strip_right,
                     level ? mirror->side_strip_right : mirror->side_strip);
}

static void mirrored_layers_are_cut_and_stapled_alike(void **state)
{
    struct dice dice = {29};
    struct soft *soft = *state;
    int64_t layers[100][2];

    for (int i = 0; i < 100; i++) {
        layers[i][0] = add_any_layer(soft, &dice, add_any_box(soft, &dice));
        soft_layer_of(soft, layers[i][0])->side = SIDE_FRONT;
        layers[i][1] = add_mirror(soft, layers[i][0]);
    }
    soft_plan(soft);
    for (int i = 0; i < 100; i++) {
        const int64_t *pair = layers[i];

        assert_int_equal(soft_staples(soft, pair[0]), soft_staples(soft, pair[1]));
        assert_int_equal(soft_temporary(soft, pair[0]), soft_temporary(soft, pair[1]));
        assert_int_equal(soft_piece_count(soft, pair[0]), soft_piece_count(soft, pair[1]));
        if (soft_piece_count(soft, pair[0]) == 0)
            continue;
        assert_int_equal(soft_cover(soft, pair[0])->cut_width,
                         soft_cover(soft, pair[1])->cut_width);
        assert_int_equal(soft_cover(soft, pair[0])->cut_height,
                         soft_cover(soft, pair[1])->cut_height);
        assert_int_equal(soft_cover(soft, pair[0])->area, soft_cover(soft, pair[1])->area);
        assert_int_equal(soft_cover(soft, pair[0])->seam, soft_cover(soft, pair[1])->seam);
        assert_mirrored_strips(soft_cover(soft, pair[0]), soft_cover(soft, pair[1]));
    }
}

/* ---- units ---- */

/* Every trade value as it stands in inch work, said in millimetres. */
static void state_all_values(struct soft *soft)
{
    for (int i = 0; i < TRADE_COUNT; i++) {
        char text[QUANTITY_TEXT];

        quantity_print_exact(text, trade_values[i].quantity, UNITS_MM,
                             trade_values[i].standard[UNITS_INCH]);
        assert_int_equal(
            trade_change(&soft->model, TRADE_FROM_BUILD, trade_values[i].key, text, NULL),
            FAULT_NONE);
    }
}

static void fill_any(struct soft *soft, uint64_t seed, enum units units)
{
    struct dice dice = {seed};
    struct stock *staples = MODEL_ADD(&soft->model, stock);

    staples->name = "staples";
    staples->kind = STOCK_STAPLE;
    staples->length = IN(0.375);
    soft->model.build.units = (int64_t)units;
    for (int i = 0; i < 6; i++) {
        int64_t layer = add_any_layer(soft, &dice, add_any_box(soft, &dice));

        if (dice_between(&dice, 0, 1))
            add_any_opening(soft, &dice, layer);
    }
    if (units == UNITS_MM)
        state_all_values(soft);
    soft_plan(soft);
}

static void assert_same_cloth(const struct plan *inch, const struct plan *mm)
{
    assert_int_equal(inch->pieces.count, mm->pieces.count);
    for (size_t i = 0; i < inch->pieces.count; i++) {
        assert_string_equal(inch->pieces.at[i].name, mm->pieces.at[i].name);
        assert_int_equal(inch->pieces.at[i].width, mm->pieces.at[i].width);
        assert_int_equal(inch->pieces.at[i].height, mm->pieces.at[i].height);
    }
    assert_int_equal(inch->edges.count, mm->edges.count);
    for (size_t i = 0; i < inch->edges.count; i++) {
        assert_int_equal(inch->edges.at[i].staples, mm->edges.at[i].staples);
        assert_int_equal(inch->edges.at[i].temporary, mm->edges.at[i].temporary);
        assert_int_equal(inch->edges.at[i].leg, mm->edges.at[i].leg);
    }
    assert_int_equal(inch->intervals.count, mm->intervals.count);
    assert_int_equal(inch->tally.cloth, mm->tally.cloth);
    assert_int_equal(inch->tally.minutes, mm->tally.minutes);
}

static void the_same_sizes_and_values_give_the_same_plan_in_either_unit(void **state)
{
    for (uint64_t seed = 1; seed <= 15; seed++) {
        void *other;

        assert_int_equal(soft_begin(state), 0);
        assert_int_equal(soft_begin(&other), 0);
        fill_any(*state, seed, UNITS_INCH);
        fill_any(other, seed, UNITS_MM);
        assert_same_cloth(((struct soft *)*state)->plan, ((struct soft *)other)->plan);
        soft_end(&other);
        soft_end(state);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(intervals_fill_each_edge_and_sum_to_its_staples),
        cmocka_unit_test(covers_reach_their_landings_with_a_handle),
        cmocka_unit_test(what_is_bent_over_an_outline_is_longer),
        cmocka_unit_test(covers_have_the_area_of_their_pieces),
        cmocka_unit_test(no_piece_is_wider_than_its_roll),
        cmocka_unit_test(widths_sew_up_to_the_cover_and_no_strip_is_narrow),
        cmocka_unit_test(no_seam_lies_on_the_fold_over_an_edge),
        cmocka_unit_test(no_seam_lies_on_the_hole_of_a_screw),
        cmocka_unit_test(no_level_seam_lies_on_the_hole_of_a_screw),
        cmocka_unit_test(a_wider_cloth_is_never_bought_longer),
        cmocka_unit_test(the_same_sizes_and_values_give_the_same_plan_in_either_unit),
        cmocka_unit_test_setup_teardown(a_wider_cloth_needs_no_more_widths_for_any_cover,
                                        soft_begin, soft_end),
        cmocka_unit_test_setup_teardown(mirrored_layers_are_cut_and_stapled_alike, soft_begin,
                                        soft_end),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
