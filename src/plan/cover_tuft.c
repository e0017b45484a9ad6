/*
 * Tufting fields: where their buttons or channels lie, and what they use up. How much cloth they
 * take in is cover_allow.c's.
 *
 * 1  Diamonds have their tips in the outer rows, a border away from the edges; a whole diamond, no
 *    button, belongs in the middle.
 * 2  A button's knot lies behind the board, so the wood of the box that the board is fixed to has
 *    to stay clear of it, and its hole of every screw of the board.
 * 3  Channels divide the width evenly; between them the cover is sewn through, or stapled down on
 *    wood, along lines that fall on no hole of a join and on no patch round one.
 */
#include "plan/cover.h"

#include "plan/backing.h"
#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/point.h"

#include <assert.h>

int64_t tuft_count(const struct tufting *tufting)
{
    if (tufting->made == TUFTS_CHANNELS)
        return 0;
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

static void add_tufts(struct planning *planning, const struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    size_t first = planning->plan->tufts.count;
    int64_t border = spread->field.border;
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

/* From a place to an outline, by the larger of the two ways. */
static int64_t distance_to(const struct area *area, int64_t u, int64_t v)
{
    return length_larger(length_outside(u, area->u0, area->u1),
                         length_outside(v, area->v0, area->v1));
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

/* ---- holes against screws ---- */

static int64_t length_between(int64_t across, int64_t up)
{
    return whole_root(across * across + up * up);
}

/* What a hole leaves to the nearest screw that goes into the face, by their edges. */
static int64_t nearest_screw(const struct planning *planning, const struct spread *spread)
{
    const struct plan *plan = planning->plan;
    int axis = side_axis(spread->side);
    int64_t nearest = INT64_MAX;

    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];
        int64_t radii =
            (plan->screw_kinds.at[screw->kind].diameter + planning->value[TRADE_TUFT_HOLE]) / 2;
        int64_t u, v;

        if (screw->box != spread->box->key || screw->axis != axis)
            continue;
        box_to_face(spread->side, screw->at, &u, &v);
        for (size_t k = 0; k < plan->tufts.count; k++) {
            const struct tuft *tuft = &plan->tufts.at[k];

            if (tuft->layer == spread->layer->key)
                nearest = length_smaller(nearest, length_between(tuft->u - u, tuft->v - v) - radii);
        }
    }
    return nearest;
}

static void check_screws(struct planning *planning, const struct spread *spread)
{
    int64_t wanted = planning->value[TRADE_CROSS_CLEAR_REJECT];
    int64_t nearest = nearest_screw(planning, spread);
    struct finding *finding;

    if (nearest >= wanted)
        return;
    finding = finding_add(planning, FINDING_TUFT_ON_SCREW, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, nearest > 0 ? nearest : 0);
    argument_length(finding, 1, wanted);
}

/* ---- looks ---- */

/* How many of about that size fill the field; 1 where the borders leave none. */
static int64_t parts_of(int64_t size, int64_t border, int64_t part)
{
    return length_larger(whole_divide_even(size - 2 * border, part), 1);
}

static void check_middle(struct planning *planning, const struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    struct cure_draft cure = cure_begin(planning, "One diamond more across");
    struct finding *finding;

    if (tufting->pattern != PATTERN_DIAMOND || (tufting->across + tufting->down) % 2 == 0)
        return;
    finding = finding_add(planning, FINDING_TUFT_MIDDLE, ENTITY_layer, spread->layer->key);
    cure_count(&cure, ENTITY_tufting, tufting->key, "across", tufting->across + 1);
    cure_offer(&cure, finding);
}

/* Upright, diamonds are taller than wide. */
static void check_shape(struct planning *planning, const struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    const struct tuft_field *field = &spread->field;
    const int64_t *value = planning->value;
    int64_t across = parts_of(spread->width, field->border, value[TRADE_TUFT_WIDTH]);
    int64_t down = parts_of(spread->height, field->border, value[TRADE_TUFT_HEIGHT]);
    struct cure_draft cure = cure_begin(planning, "Take diamonds of the usual size");
    struct finding *finding;

    if (side_axis(spread->side) == AXIS_Z || tufting->pattern != PATTERN_DIAMOND ||
        field->across_pitch <= field->up_pitch)
        return;
    finding = finding_add(planning, FINDING_TUFT_WIDE, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, field->across_pitch);
    argument_length(finding, 1, field->up_pitch);
    cure_count(&cure, ENTITY_tufting, tufting->key, "across", across + (across + down) % 2);
    cure_count(&cure, ENTITY_tufting, tufting->key, "down", down);
    cure_offer(&cure, finding);
}

/* ---- channels ---- */

/* Where the lines between channels stand: the outer ones too, where a border lies beside them. */
static void count_lines(struct spread *spread)
{
    struct tuft_field *field = &spread->field;

    assert(spread->tufting->made == TUFTS_CHANNELS);
    field->lines = spread->tufting->across + (field->border > 0 ? 1 : -1);
    field->line_length = spread->height;
}

static int64_t line_at(const struct spread *spread, int64_t i)
{
    const struct tuft_field *field = &spread->field;
    int64_t nth = field->border > 0 ? i : i + 1;

    assert(i >= 0 && i < field->lines);
    return field->border +
           whole_divide_even((spread->width - 2 * field->border) * nth, spread->tufting->across);
}

static void tell_line(struct planning *planning, const struct spread *spread, int64_t line,
                      const struct hole_on *hole)
{
    struct finding *finding =
        finding_add(planning, FINDING_CHANNEL_ON, ENTITY_layer, spread->layer->key);

    argument_quantity(finding, 0, QUANTITY_COUNT, line + 1);
    argument_length(finding, 1, line_at(spread, line));
    argument_length(finding, 2, hole->around);
}

static bool meets_line(const struct spread *spread, int64_t line, const struct hole_on *hole)
{
    int64_t off = hole->u - line_at(spread, line);

    return hole->v >= 0 && hole->v <= spread->height && off < hole->around && -off < hole->around;
}

/* The first line that falls on a hole, or the patch round it. */
static void check_lines(struct planning *planning, const struct spread *spread)
{
    struct holes_on holes = holes_on_layer(planning, spread);

    for (int64_t line = 0; line < spread->field.lines; line++)
        for (size_t i = 0; i < holes.of.count; i++)
            if (meets_line(spread, line, &holes.of.at[i])) {
                tell_line(planning, spread, line, &holes.of.at[i]);
                return;
            }
}

static void lay_channels(struct planning *planning, struct spread *spread)
{
    count_lines(spread);
    check_lines(planning, spread);
    if (spread->box->frame == FRAME_CUSHION && spread->field.lines > 0)
        sew_channels(planning, spread);
}

/* ---- all ---- */

static void lay_buttons(struct planning *planning, const struct spread *spread)
{
    add_tufts(planning, spread);
    check_tufts(planning, spread);
    check_screws(planning, spread);
    check_middle(planning, spread);
    check_shape(planning, spread);
}

void tuft_lay(struct planning *planning, struct spread *spread)
{
    if (!spread->tufting)
        return;
    if (spread->tufting->made == TUFTS_CHANNELS)
        lay_channels(planning, spread);
    else
        lay_buttons(planning, spread);
    tell_guess(planning, spread);
    *LIST_ADD(planning->arena, &planning->plan->tuft_fields) = spread->field;
}

void tuft_consume(struct planning *planning, struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    int64_t buttons;

    if (!tufting || tufting->made == TUFTS_CHANNELS)
        return;
    buttons = tuft_count(tufting);
    if (spread->stock->kind == STOCK_CLOTH)
        cut_button_cloth(planning, spread, buttons);
    spread_consume(planning, spread, STOCK_BUTTON, tufting->button, QUANTITY_COUNT, buttons,
                   "buttons");
    spread_consume(planning, spread, STOCK_CORD, tufting->cord, QUANTITY_LENGTH,
                   buttons * planning->value[TRADE_TUFT_CORD], "tufting cord");
}
