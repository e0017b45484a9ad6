/*
 * Tufting fields: how much cloth the pulls take in, how many buttons, and what they use up.
 *
 * The model of TRADE 2.9 (b): a deep field takes one pull depth for each diamond width and height,
 * and one half more at each border, so that m diamonds take m + 1. Buttons in uncut foam take a
 * fixed bit for each space. Both are guides: the maker tries one diamond first.
 *
 * A button's knot lies behind the board, so the wood of the box that the board is fixed to has to
 * stay clear of it.
 */
#include "plan/cover.h"

#include "plan/backing.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/point.h"

#include <assert.h>

/* Foam on the tufted face, all layers of it. */
static int64_t foam_depth(const struct model *model, const struct layer *cover)
{
    int64_t depth = 0;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *foam = &model->layers.at[i];
        const struct stock *stock = MODEL_FIND(model, stock, foam->stock);

        if (foam->kind != LAYER_FOAM || foam->box != cover->box || foam->group != cover->group ||
            foam->side != cover->side)
            continue;
        if (foam->thickness > 0)
            depth += foam->thickness;
        else if (stock)
            depth += stock->thickness;
    }
    return depth;
}

static int64_t pull_depth(const struct planning *planning, const struct spread *spread)
{
    int64_t foam = foam_depth(planning->model, spread->layer);
    int64_t rest = planning->value[TRADE_TUFT_PULL_REST];

    if (spread->tufting->pull > 0)
        return spread->tufting->pull;
    return foam > rest ? foam - rest : 0;
}

int64_t tuft_extra(const struct planning *planning, const struct spread *spread, bool across)
{
    const struct tufting *tufting = spread->tufting;
    int64_t each;

    if (!tufting)
        return 0;
    if (tufting->pattern == PATTERN_SHALLOW)
        each = planning->value[TRADE_TUFT_EXTRA_SHALLOW];
    else if (whole_share(pull_depth(planning, spread),
                         planning->value[TRADE_TUFT_EXTRA_PER_DIAMOND], 1000000, &each))
        return 0;
    return ((across ? tufting->across : tufting->down) + 1) * each;
}

int64_t tuft_count(const struct tufting *tufting)
{
    return tuft_buttons(tufting->across, tufting->down, tufting->pattern == PATTERN_DIAMOND);
}

/* Circles of cloth for the buttons, cut as one block of squares. */
static void cut_button_cloth(struct planning *planning, struct spread *spread, int64_t buttons)
{
    const struct stock *button = MODEL_FIND(planning->model, stock, spread->tufting->button);
    int64_t diameter =
        button && button->diameter > 0 ? button->diameter : planning->value[TRADE_BUTTON_DIAMETER];
    int64_t circle;
    int64_t columns = 1;

    if (whole_share(diameter, planning->value[TRADE_BUTTON_CLOTH], 1000000, &circle))
        return;
    while (columns * columns < buttons)
        columns++;
    spread_piece(planning, spread, "button cloth", 1, columns * circle,
                 whole_divide_up(buttons, columns) * circle, true);
}

/* ---- holes ---- */

/* The field, within its border, in whole diamonds or squares. */
struct field_of_tufts {
    int64_t u, v, width, height;
    int64_t across, down;
};

static void add_tuft(struct planning *planning, const struct spread *spread,
                     const struct field_of_tufts *field, int64_t halves_across, int64_t halves_down)
{
    struct tuft *tuft = LIST_ADD(planning->arena, &planning->plan->tufts);

    tuft->layer = spread->layer->key;
    tuft->u = field->u + whole_divide_even(field->width * halves_across, 2 * field->across);
    tuft->v = field->v + whole_divide_even(field->height * halves_down, 2 * field->down);
}

/* Rows of diamonds are half a diamond apart and set off by half of one. */
static void add_diamonds(struct planning *planning, const struct spread *spread,
                         const struct field_of_tufts *field)
{
    for (int64_t row = 0; row <= 2 * field->down; row++)
        for (int64_t half = row % 2 ? 0 : 1; half <= 2 * field->across; half += 2)
            add_tuft(planning, spread, field, half, row);
}

static void add_squares(struct planning *planning, const struct spread *spread,
                        const struct field_of_tufts *field)
{
    for (int64_t row = 0; row <= field->down; row++)
        for (int64_t column = 0; column <= field->across; column++)
            add_tuft(planning, spread, field, 2 * column, 2 * row);
}

static int64_t border_of(const struct planning *planning, const struct tufting *tufting)
{
    return tufting->border > 0 ? tufting->border : planning->value[TRADE_TUFT_BORDER];
}

int64_t tuft_on_cloth(const struct planning *planning, const struct spread *spread, bool level,
                      int64_t at)
{
    const struct tufting *tufting = spread->tufting;
    int64_t extent = level ? spread->height : spread->width;
    int64_t off = at - extent / 2;
    int64_t extra = tuft_extra(planning, spread, !level);
    int64_t count, field;

    if (!tufting)
        return at;
    count = level ? tufting->down : tufting->across;
    field = extent - 2 * border_of(planning, tufting);
    if (2 * off > field || 2 * off < -field || field <= 0)
        return off < 0 ? at - extra / 2 : at + extra / 2;
    return at + whole_divide_even(off * count * (extra / (count + 1)), field);
}

static void add_tufts(struct planning *planning, const struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    size_t first = planning->plan->tufts.count;
    int64_t border = border_of(planning, tufting);
    struct field_of_tufts field = {
        spread->layer->u + border,   spread->layer->v + border, spread->width - 2 * border,
        spread->height - 2 * border, tufting->across,           tufting->down};

    if (field.width < 0 || field.height < 0)
        return;
    if (tufting->pattern == PATTERN_DIAMOND)
        add_diamonds(planning, spread, &field);
    else
        add_squares(planning, spread, &field);
    assert((int64_t)(planning->plan->tufts.count - first) == tuft_count(tufting));
}

/* ---- knots against the wood behind ---- */

static int64_t outside(int64_t at, int64_t low, int64_t high)
{
    return at < low ? low - at : at > high ? at - high : 0;
}

/* From a place to an outline, by the larger of the two ways. */
static int64_t distance_to(const struct area *area, int64_t u, int64_t v)
{
    int64_t across = outside(u, area->u0, area->u1);
    int64_t up = outside(v, area->v0, area->v1);

    return across > up ? across : up;
}

/* A face with wood behind it that knots come through to: the tufted one of the box itself, or the
 * one of a box joined behind it. */
struct knotted {
    const struct junction *junction; /* NULL for the box itself */
    bool other_is_b;
    struct backings wood;
};

static void knot_on_face(const struct planning *planning, const struct spread *spread,
                         const struct knotted *face, const struct tuft *tuft, int64_t *ret_u,
                         int64_t *ret_v)
{
    struct vector at = face_to_box(spread->box, spread->side, tuft->u, tuft->v);

    if (face->junction && face->other_is_b)
        at = point_to_b(planning, face->junction, at);
    else if (face->junction)
        at = point_to_a(planning, face->junction, at);
    box_to_face(face->wood.side, at, ret_u, ret_v);
}

/* Least distance of the layer's holes to a member behind the face. */
static int64_t nearest_wood(const struct planning *planning, const struct spread *spread,
                            const struct knotted *face)
{
    const struct plan *plan = planning->plan;
    int64_t nearest = INT64_MAX;

    for (size_t i = 0; i < plan->tufts.count; i++) {
        const struct tuft *tuft = &plan->tufts.at[i];
        int64_t u, v;

        if (tuft->layer != spread->layer->key)
            continue;
        knot_on_face(planning, spread, face, tuft, &u, &v);
        for (size_t k = 0; k < face->wood.count; k++) {
            int64_t distance = distance_to(&face->wood.at[k].area, u, v);

            if (face->wood.at[k].member != PLAN_NONE && distance < nearest)
                nearest = distance;
        }
    }
    return nearest;
}

/* The box is joined by the face behind the tufted one: which box is on the other side of it? */
static bool lies_behind(const struct planning *planning, const struct spread *spread,
                        const struct junction *junction, bool *ret_other_is_b)
{
    int64_t behind = side_opposite(spread->side);
    bool as_a =
        junction->box_a == spread->box->key && point_side(planning, junction, false) == behind;
    bool as_b =
        junction->box_b == spread->box->key && point_side(planning, junction, true) == behind;

    if (junction->box_b == 0 || (!as_a && !as_b))
        return false;
    *ret_other_is_b = as_a;
    return true;
}

static void check_knots(struct planning *planning, const struct spread *spread,
                        const struct knotted *face)
{
    int64_t wanted = planning->value[TRADE_TUFT_HOLE_TO_MEMBER];
    int64_t nearest = nearest_wood(planning, spread, face);
    struct finding *finding;

    if (nearest >= wanted)
        return;
    finding = finding_add(planning, FINDING_TUFT_ON_MEMBER, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, nearest);
    argument_length(finding, 1, wanted);
}

static void check_tufts(struct planning *planning, const struct spread *spread)
{
    const struct plan *plan = planning->plan;
    struct knotted own = {NULL, false, backing_find(planning, spread->box->key, spread->side)};

    check_knots(planning, spread, &own);
    for (size_t i = 0; i < plan->junctions.count; i++) {
        struct knotted face = {.junction = &plan->junctions.at[i]};
        int64_t other;

        if (!lies_behind(planning, spread, face.junction, &face.other_is_b))
            continue;
        other = face.other_is_b ? face.junction->box_b : face.junction->box_a;
        face.wood =
            backing_find(planning, other, point_side(planning, face.junction, face.other_is_b));
        check_knots(planning, spread, &face);
    }
}

/* ---- all ---- */

void tuft_lay(struct planning *planning, struct spread *spread)
{
    if (!spread->tufting)
        return;
    add_tufts(planning, spread);
    check_tufts(planning, spread);
}

void tuft_consume(struct planning *planning, struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    int64_t buttons;

    if (!tufting)
        return;
    buttons = tuft_count(tufting);
    if (spread->stock->kind == STOCK_CLOTH)
        cut_button_cloth(planning, spread, buttons);
    spread_consume(planning, spread, STOCK_BUTTON, tufting->button, QUANTITY_COUNT, buttons,
                   "buttons");
    spread_consume(planning, spread, STOCK_CORD, tufting->cord, QUANTITY_LENGTH,
                   buttons * planning->value[TRADE_TUFT_CORD], "tufting cord");
}
