#include "draw/field.h"

#include "plan/geometry.h"
#include "plan/padding.h"
#include "plan/slices.h"

#include <stdlib.h>

/* Holes lie on whole lengths; what is this near is in line. */
#define IN_LINE 4

/* So near behind the face a member is met by a needle that goes through the panel. */
#define NEAR_BEHIND FIELDS_MM(25)

struct field_of {
    struct drawing *drawing;
    const struct plan *plan;
    const struct layer *layer;
    const struct box *box;
    const struct tufting *tufting;
    struct area buttons;          /* that they reach over */
    int64_t across, down;         /* of one diamond or square */
    LIST_OF(struct area) members; /* behind the face */
    struct arena *arena;
};

static void add_mark(const struct field_of *field, enum mark_kind kind, struct area area)
{
    *LIST_ADD(field->arena, &field->drawing->marks) = (struct mark){kind, area};
}

static const struct tufting *tufting_of(const struct plan *plan, int64_t layer)
{
    for (size_t i = 0; i < plan->facts->tuftings.count; i++) {
        if (plan->facts->tuftings.at[i].layer == layer)
            return &plan->facts->tuftings.at[i];
    }
    return NULL;
}

bool draw_has_field(const struct plan *plan, int64_t layer)
{
    const struct layer *of = MODEL_FIND(plan->facts, layer, layer);

    if (!of || !of->box)
        return false;
    for (size_t i = 0; i < plan->tufts.count; i++) {
        if (plan->tufts.at[i].layer == layer)
            return true;
    }
    return false;
}

/* ---- wood ---- */

static int64_t gap_behind(const struct field_of *field, const struct plan_member *member)
{
    int axis = side_axis(field->layer->side);
    int64_t depth = vector_along(box_size(field->box), axis);

    return side_sign(field->layer->side) > 0 ? depth - vector_along(member->solid.high, axis)
                                             : vector_along(member->solid.low, axis);
}

static void add_members(struct field_of *field)
{
    struct slice slice = plan_members_of(field->plan, field->box->key);

    for (size_t i = slice.from; i < slice.to; i++) {
        const struct plan_member *member = &field->plan->members.at[i];
        struct area area = solid_on_side(&member->solid, field->layer->side);
        if (gap_behind(field, member) > NEAR_BEHIND)
            continue;
        add_mark(field, MARK_MEMBER, area);
        *LIST_ADD(field->arena, &field->members) = area;
    }
}

/* ---- buttons and pleats ---- */

static bool meets_wood(const struct field_of *field, const struct tuft *tuft)
{
    for (size_t i = 0; i < field->members.count; i++) {
        if (area_holds(&field->members.at[i], tuft->u, tuft->v))
            return true;
    }
    return false;
}

static bool is_about(int64_t way, int64_t wanted)
{
    return llabs(llabs(way) - wanted) <= IN_LINE;
}

/* Diamonds: to the buttons half a diamond on, in the row above. Squares: to those beside and above.
 * Where the buttons are only pulled in nothing is folded. */
static bool is_pleat(const struct field_of *field, const struct tuft *from, const struct tuft *to)
{
    int64_t u = to->u - from->u;
    int64_t v = to->v - from->v;

    switch (field->tufting->pattern) {
    case PATTERN_DIAMOND:
        return v > 0 && is_about(u, field->across / 2) && is_about(v, field->down / 2);
    case PATTERN_SQUARE:
        return (v >= 0 && u >= 0) && ((is_about(u, field->across) && v <= IN_LINE) ||
                                      (is_about(v, field->down) && u <= IN_LINE));
    default:
        return false;
    }
}

/* O(n^2) over the buttons of one field. */
static void add_pleats(const struct field_of *field, const struct tuft *from)
{
    for (size_t i = 0; i < field->plan->tufts.count; i++) {
        const struct tuft *to = &field->plan->tufts.at[i];
        if (to->layer == field->layer->key && is_pleat(field, from, to))
            add_mark(field, MARK_PLEAT, (struct area){from->u, from->v, to->u, to->v});
    }
}

static void add_buttons(const struct field_of *field)
{
    for (size_t i = 0; i < field->plan->tufts.count; i++) {
        const struct tuft *tuft = &field->plan->tufts.at[i];
        if (tuft->layer != field->layer->key)
            continue;
        add_pleats(field, tuft);
        add_mark(field, meets_wood(field, tuft) ? MARK_BLOCKER : MARK_BUTTON,
                 (struct area){tuft->u, tuft->v, tuft->u, tuft->v});
    }
}

/* ---- figures ---- */

static size_t measure(struct field_of *field)
{
    size_t count = 0;

    for (size_t i = 0; i < field->plan->tufts.count; i++) {
        const struct tuft *tuft = &field->plan->tufts.at[i];
        if (tuft->layer != field->layer->key)
            continue;
        if (count++ == 0)
            field->buttons = (struct area){tuft->u, tuft->v, tuft->u, tuft->v};
        field->buttons = (struct area){
            length_smaller(field->buttons.u0, tuft->u), length_smaller(field->buttons.v0, tuft->v),
            length_larger(field->buttons.u1, tuft->u), length_larger(field->buttons.v1, tuft->v)};
    }
    field->across = area_width(&field->buttons) / field->tufting->across;
    field->down = area_height(&field->buttons) / field->tufting->down;
    return count;
}

static const char *length_text(const struct field_of *field, int64_t length)
{
    char printed[QUANTITY_TEXT];

    quantity_print_unit(printed, QUANTITY_LENGTH, model_units(field->plan->facts), length);
    return arena_text(field->arena, printed);
}

static void add_figure(const struct field_of *field, const char *words)
{
    *LIST_ADD(field->arena, &field->drawing->labels) =
        (struct label){field->drawing->bounds.u1, field->drawing->bounds.v1, true, words};
}

static void add_figures(const struct field_of *field, size_t count)
{
    struct area layer = layer_area(field->box, field->layer->side, field->layer);
    const char *what = words_pattern.at[field->tufting->pattern].name;

    add_figure(field, arena_format(field->arena, "%zu buttons", count));
    add_figure(field,
               arena_format(field->arena, "%lld x %lld %s", (long long)field->tufting->across,
                            (long long)field->tufting->down, what));
    add_figure(field, arena_format(field->arena, "%s across", length_text(field, field->across)));
    add_figure(field, arena_format(field->arena, "%s up", length_text(field, field->down)));
    add_figure(field, arena_format(field->arena, "border %s",
                                   length_text(field, field->buttons.u0 - layer.u0)));
}

void draw_field(struct drawing *drawing, const struct plan *plan, int64_t layer,
                struct arena *arena)
{
    struct field_of field = {.drawing = drawing,
                             .plan = plan,
                             .layer = MODEL_FIND(plan->facts, layer, layer),
                             .tufting = tufting_of(plan, layer),
                             .arena = arena};

    *drawing = (struct drawing){0};
    if (field.layer)
        field.box = MODEL_FIND(plan->facts, box, field.layer->box);
    if (!field.box || !field.tufting)
        return;
    size_t count = measure(&field);
    if (count == 0)
        return;
    drawing->bounds = face_area(field.box, field.layer->side);
    add_mark(&field, MARK_FACE, drawing->bounds);
    add_members(&field);
    add_buttons(&field);
    add_figures(&field, count);
}
