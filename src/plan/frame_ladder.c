/*
 * A ladder: its outline, and the supports that seams and spans of its panels ask for.
 *
 * The frame's plane has two directions, `along` (rails run so) and `up` (uprights run so). Level
 * seams get a rail from stile to stile; the rails divide the frame into bands; in each band an
 * upright stands under every upright seam, and evenly spaced ones divide what is wider than the
 * panels can span. A band that is lower than that needs none.
 *
 * Uprights on both sides of one rail are set off from each other, so that the screws of neither
 * lie under the other.
 */
#include "plan/ladder.h"

#include "plan/slices.h"

#include <assert.h>

static void add_bar(struct ladder *ladder, int64_t kind, int64_t axis, struct area area)
{
    struct framing *framing = ladder->framing;
    struct vector across =
        section_across(framing->box, framing->section, framing->box->stick_set, axis);
    struct solid bar = framing->space;
    int64_t deep = vector_along(across, framing->normal);

    vector_set(&bar.low, ladder->along, area.u0);
    vector_set(&bar.high, ladder->along, area.u1);
    vector_set(&bar.low, ladder->up, area.v0);
    vector_set(&bar.high, ladder->up, area.v1);
    if (side_sign(framing->box->main_side) > 0)
        vector_set(&bar.low, framing->normal, vector_along(bar.high, framing->normal) - deep);
    else
        vector_set(&bar.high, framing->normal, vector_along(bar.low, framing->normal) + deep);
    framing_add(framing, kind, axis, &bar);
}

void ladder_upright(struct ladder *ladder, int64_t kind, int64_t u, int64_t v0, int64_t v1)
{
    add_bar(ladder, kind, ladder->up, (struct area){u, v0, u + ladder->show, v1});
}

static void add_rail(struct ladder *ladder, int64_t kind, int64_t v, int64_t u0, int64_t u1)
{
    add_bar(ladder, kind, ladder->along, (struct area){u0, v, u1, v + ladder->show});
}

static void add_outline(struct ladder *ladder)
{
    const struct area *field = &ladder->field;
    bool rails_through = ladder->framing->box->through == THROUGH_RAILS;
    int64_t short_of_rails = rails_through ? ladder->show : 0;
    int64_t short_of_uprights = rails_through ? 0 : ladder->show;

    ladder_upright(ladder, MEMBER_UPRIGHT, field->u0, field->v0 + short_of_rails,
                   field->v1 - short_of_rails);
    ladder_upright(ladder, MEMBER_UPRIGHT, field->u1 - ladder->show, field->v0 + short_of_rails,
                   field->v1 - short_of_rails);
    add_rail(ladder, MEMBER_RAIL, field->v0, field->u0 + short_of_uprights,
             field->u1 - short_of_uprights);
    add_rail(ladder, MEMBER_RAIL, field->v1 - ladder->show, field->u0 + short_of_uprights,
             field->u1 - short_of_uprights);
}

/* ---- seams ---- */

void ladder_place(struct ladder *ladder, struct places *places, int64_t place)
{
    size_t i = 0;

    while (i < places->of.count && places->of.at[i] < place)
        i++;
    if (i < places->of.count && places->of.at[i] == place)
        return;
    LIST_ADD(ladder->framing->planning->arena, &places->of);
    for (size_t k = places->of.count - 1; k > i; k--)
        places->of.at[k] = places->of.at[k - 1];
    places->of.at[i] = place;
}

static bool is_flat_panel(const struct ladder *ladder, const struct panel *panel)
{
    return !panel->loose && side_axis(panel->side) == ladder->framing->normal;
}

/* Where two panels of one side meet: upright seams that reach into v0..v1, or all level ones. */
static void seams_of_pair(struct ladder *ladder, const struct panel *a, const struct panel *b,
                          const struct area *band, bool upright, struct places *places)
{
    if (a->side != b->side || !is_flat_panel(ladder, a) || !is_flat_panel(ladder, b))
        return;
    if (upright) {
        int64_t low = length_larger(length_larger(a->area.v0, b->area.v0), band->v0);
        int64_t high = length_smaller(length_smaller(a->area.v1, b->area.v1), band->v1);

        if (a->area.u1 == b->area.u0 && low < high)
            ladder_place(ladder, places, a->area.u1);
    } else if (a->area.v1 == b->area.v0 &&
               length_larger(a->area.u0, b->area.u0) < length_smaller(a->area.u1, b->area.u1)) {
        ladder_place(ladder, places, a->area.v1);
    }
}

struct places ladder_seams(struct ladder *ladder, const struct area *band, bool upright)
{
    const struct plan *plan = ladder->framing->planning->plan;
    struct slice panels = plan_panels_of(plan, ladder->framing->box->key);
    struct places places = {0};

    for (size_t i = panels.from; i < panels.to; i++)
        for (size_t k = panels.from; k < panels.to; k++)
            seams_of_pair(ladder, &plan->panels.at[i], &plan->panels.at[k], band, upright, &places);
    return places;
}

/* ---- supports ---- */

int64_t ladder_span(const struct ladder *ladder, const struct area *band)
{
    int64_t side = ladder->framing->box->main_side;

    return length_smaller(framing_span(ladder->framing, side, band),
                          framing_span(ladder->framing, side_opposite(side), band));
}

int64_t ladder_set_off(const struct planning *planning, int64_t show)
{
    return length_larger(planning->value[TRADE_INLINE_STAGGER],
                         show + planning->value[TRADE_INLINE_STAGGER_CLEAR]);
}

int64_t ladder_stagger(const struct ladder *ladder, const struct places *below, int64_t u,
                       bool left)
{
    int64_t shift = ladder_set_off(ladder->framing->planning, ladder->show);

    for (size_t i = 0; i < below->of.count; i++) {
        int64_t at = below->of.at[left ? below->of.count - 1 - i : i];

        if (at - shift < u && u < at + shift)
            u = left ? at - shift : at + shift;
    }
    return u;
}

/* Divides a bay that is wider than the span; the uprights' left sides go into `stood`. */
static void divide_bay(struct ladder *ladder, const struct area *bay, int64_t span,
                       const struct places *below, struct places *stood)
{
    int64_t clear = area_width(bay);
    int64_t count;

    if (span <= 0 || clear <= span || area_height(bay) <= span)
        return;
    count = whole_divide_up(clear - span, span + ladder->show);
    for (int64_t i = 1; i <= count; i++) {
        int64_t gaps = whole_divide_even((clear - count * ladder->show) * i, count + 1);
        int64_t even = bay->u0 + gaps + (i - 1) * ladder->show;
        int64_t u = ladder_stagger(ladder, below, even, false);

        if (u + ladder->show > bay->u1)
            u = even;
        ladder_upright(ladder, MEMBER_SUPPORT, u, bay->v0, bay->v1);
        ladder_place(ladder, stood, u);
    }
}

/* One band between two rails: uprights under its seams, then between them. */
static struct places support_band(struct ladder *ladder, const struct area *band,
                                  const struct places *below)
{
    struct places seams = ladder_seams(ladder, band, true);
    struct places stood = {0};
    int64_t span = ladder_span(ladder, band);
    struct area bay = *band;

    for (size_t i = 0; i <= seams.of.count; i++) {
        bool last = i == seams.of.count;
        int64_t left = last ? band->u1 : seams.of.at[i] - ladder->show / 2;

        if (!last && (left < bay.u0 || left + ladder->show > band->u1))
            continue;
        bay.u1 = left;
        divide_bay(ladder, &bay, span, below, &stood);
        if (last)
            break;
        ladder_upright(ladder, MEMBER_SUPPORT, left, band->v0, band->v1);
        ladder_place(ladder, &stood, left);
        bay.u0 = left + ladder->show;
    }
    return stood;
}

static void add_supports(struct ladder *ladder)
{
    struct area inner = {ladder->field.u0 + ladder->show, ladder->field.v0 + ladder->show,
                         ladder->field.u1 - ladder->show, ladder->field.v1 - ladder->show};
    struct places levels = ladder_seams(ladder, &inner, false);
    struct places below = {0};
    struct area band = inner;

    for (size_t i = 0; i < levels.of.count; i++) {
        int64_t v = levels.of.at[i] - ladder->show / 2;

        if (v <= band.v0 || v + ladder->show >= inner.v1)
            continue;
        add_rail(ladder, MEMBER_SUPPORT, v, inner.u0, inner.u1);
        band.v1 = v;
        below = support_band(ladder, &band, &below);
        band.v0 = v + ladder->show;
    }
    band.v1 = inner.v1;
    support_band(ladder, &band, &below);
}

void frame_ladder(struct framing *framing)
{
    struct ladder ladder = {.framing = framing,
                            .along = framing->normal == AXIS_X ? AXIS_Y : AXIS_X,
                            .up = framing->normal == AXIS_Z ? AXIS_Y : AXIS_Z};
    struct vector across =
        section_across(framing->box, framing->section, framing->box->stick_set, ladder.up);

    ladder.show = vector_along(across, ladder.along);
    ladder.field = solid_on_side(&framing->space, framing->box->main_side);
    assert(ladder.along == side_u_axis(framing->box->main_side));
    if (framing_too_small(framing, framing->normal, vector_along(across, framing->normal)) ||
        framing_too_small(framing, ladder.along, 2 * ladder.show + 1) ||
        framing_too_small(framing, ladder.up, 2 * ladder.show + 1))
        return;
    ladder.field.v1 = crown_floor(framing, ladder.field.v0, ladder.field.v1, 2 * ladder.show);
    add_outline(&ladder);
    if (framing->box->supports == MAKING_AUTO)
        add_supports(&ladder);
    crown_add(&ladder);
}
