/*
 * Facings become panels.
 *
 * 1  Front and back facings run the full width; left and right ones fit between them; top and
 *    bottom ones run the full width and depth, and the others stop below and above them.
 * 2  A facing that comes out of a sheet on offer is one panel; else it is cut into the fewest equal
 *    strips or fields that do. Every seam between them wants wood behind it, which the frame gives.
 *    One that is bent over an outline is cut as long as that is, ends at each corner of it, and is
 *    cut so narrow that its grain can lie across the bend where it has to.
 * 3  A loose facing lies outside of the box and takes no room from its frame.
 */
#include "plan/wood.h"

#include "plan/bend.h"
#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/mirror.h"

#include <assert.h>
#include <stdio.h>

/* A facing is never cut into more strips than this, each way. */
#define STRIPS_MOST 12

/* Nothing narrower is cut for a corner of an outline: its panel is sawn off there. */
#define LEAST_STRETCH LENGTH_INCH

struct stretches {
    LIST_OF(struct area) of;
};

static bool is_fixed_panel(const struct facing *facing)
{
    return facing->kind == FACING_PANEL && !facing->loose;
}

/* What the fixed facings of a side take off the box. */
static int64_t facing_depth(const struct model *model, int64_t box, int64_t side)
{
    int64_t depth = 0;

    for (size_t i = 0; i < model->facings.count; i++) {
        const struct facing *facing = &model->facings.at[i];

        if (facing->box == box && facing->side == side && is_fixed_panel(facing))
            depth = length_larger(depth, sheet_thickness(model, facing->stock));
    }
    return depth;
}

struct solid frame_space(const struct model *model, const struct box *box)
{
    struct solid space = {{0, 0, 0}, box_size(box)};

    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        int64_t depth = facing_depth(model, box->key, side);
        struct vector *corner = side_sign(side) > 0 ? &space.high : &space.low;
        int axis = side_axis(side);

        vector_set(corner, axis, vector_along(*corner, axis) - side_sign(side) * depth);
    }
    return space;
}

/* The part of a face that its fixed facings can take (invariant 1). */
static struct area fixed_reach(const struct model *model, const struct box *box, int64_t side)
{
    struct area reach = face_area(box, side);

    if (side == SIDE_TOP || side == SIDE_BOTTOM)
        return reach;
    reach.v0 += facing_depth(model, box->key, SIDE_BOTTOM);
    reach.v1 -= facing_depth(model, box->key, SIDE_TOP);
    if (side == SIDE_LEFT || side == SIDE_RIGHT) {
        reach.u0 += facing_depth(model, box->key, SIDE_BACK);
        reach.u1 -= facing_depth(model, box->key, SIDE_FRONT);
    }
    return reach;
}

static struct area facing_area(const struct model *model, const struct box *box,
                               const struct facing *facing)
{
    struct area reach =
        facing->loose ? face_area(box, facing->side) : fixed_reach(model, box, facing->side);

    return area_given(&reach, facing->u, facing->v, facing->width, facing->height);
}

/* ---- cutting to the sheets on offer ---- */

static bool fits_sheet(int64_t width, int64_t height, int64_t length, int64_t across)
{
    return (width <= length && height <= across) || (width <= across && height <= length);
}

static bool is_offered(const struct model *model, int64_t stock)
{
    for (size_t i = 0; i < model->offers.count; i++)
        if (model->offers.at[i].stock == stock && model->offers.at[i].length)
            return true;
    return false;
}

static bool comes_out(const struct planning *planning, int64_t stock, int64_t width, int64_t height)
{
    const struct model *model = planning->model;

    if (!is_offered(model, stock) && fits_sheet(width, height, planning->value[TRADE_SHEET_LENGTH],
                                                planning->value[TRADE_SHEET_WIDTH]))
        return true;
    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (offer->stock == stock && fits_sheet(width, height, offer->length, offer->width))
            return true;
    }
    for (size_t i = 0; i < model->leftovers.count; i++) {
        const struct leftover *rest = &model->leftovers.at[i];

        if (rest->stock == stock && rest->count &&
            fits_sheet(width, height, rest->length, rest->width))
            return true;
    }
    return false;
}

struct strips {
    int64_t across, down; /* along u and along v */
};

/* How much longer than from end to end a field of a facing is along the outline that it lies over:
 * across u, or along v. */
struct longer {
    int64_t u, v;
};

static struct longer longer_of(const struct model *model, const struct box *box, int64_t side,
                               const struct area *area)
{
    if (!curve_under(box, side))
        return (struct longer){0, 0};
    if (side_u_axis(side) == side_u_axis(box->main_side))
        return (struct longer){curve_longer(model, box, area->u0, area->u1), 0};
    return (struct longer){0, curve_longer(model, box, area->v0, area->v1)};
}

/* A part of a facing that is divided by itself, and how much longer each field of it may be. */
struct stretch {
    const struct box *box;
    const struct facing *facing;
    struct area area;
    struct longer longer;
};

/* As large as one of its fields. */
static struct panel field_size(const struct planning *planning, const struct stretch *stretch,
                               int64_t across, int64_t down)
{
    return (struct panel){
        .box = stretch->box->key,
        .stock = stretch->facing->stock,
        .side = stretch->facing->side,
        .area = stretch->area,
        .width = whole_divide_up(area_width(&stretch->area), across) + stretch->longer.u,
        .height = whole_divide_up(area_height(&stretch->area), down) + stretch->longer.v,
        .thickness = sheet_thickness(planning->model, stretch->facing->stock)};
}

/* Whether a field comes out of a sheet, where it bends with the grain as it has to lie. */
static bool field_fits(const struct planning *planning, const struct panel *field, bool bends)
{
    return comes_out(planning, field->stock, field->width, field->height) &&
           !(bends && bend_of(planning, field).way == BEND_WIDE);
}

/* The fewest equal fields that fit; of as many, those with upright seams. Nothing (0 by 0) when
 * none do. A stock without offers comes in the usual size. Of a facing that is longer along an
 * outline each field may have all of that. */
static struct strips fewest_strips(const struct planning *planning, const struct stretch *stretch,
                                   bool bends)
{
    struct strips best = {0, 0};

    for (int64_t down = 1; down <= STRIPS_MOST; down++)
        for (int64_t across = 1; across <= STRIPS_MOST; across++) {
            struct panel field = field_size(planning, stretch, across, down);
            bool fewer = !best.across || across * down < best.across * best.down;

            if (fewer && field_fits(planning, &field, bends))
                best = (struct strips){across, down};
        }
    return best;
}

/* Where no number of seams lets a sheet bend as it has to, none is made for that. */
static struct strips strips_for(const struct planning *planning, const struct stretch *stretch)
{
    bool bends = curve_under(stretch->box, stretch->facing->side);
    struct strips strips = fewest_strips(planning, stretch, bends);

    return strips.across || !bends ? strips : fewest_strips(planning, stretch, false);
}

/* ---- panels ---- */

static struct solid panel_solid(const struct box *box, const struct panel *panel)
{
    return panel->loose ? solid_behind(box, panel->side, &panel->area, -panel->thickness, 0)
                        : solid_behind(box, panel->side, &panel->area, 0, panel->thickness);
}

static void add_panel(struct planning *planning, const struct box *box, const struct facing *facing,
                      const struct area *area, int number)
{
    struct panel *panel = LIST_ADD(planning->arena, &planning->plan->panels);
    struct longer longer = longer_of(planning->model, box, facing->side, area);

    assert(!area_empty(area));
    snprintf(panel->label, sizeof panel->label, "%s-P%d", box->name, number);
    panel->box = box->key;
    panel->facing = facing->key;
    panel->stock = facing->stock;
    panel->side = facing->side;
    panel->area = *area;
    panel->width = area_width(area) + longer.u;
    panel->height = area_height(area) + longer.v;
    panel->thickness = sheet_thickness(planning->model, facing->stock);
    panel->loose = facing->loose != 0;
    panel->solid = panel_solid(box, panel);
}

/* Along u from the left, or of a mirror image from the right: its seams are those of its twin, and
 * so are the numbers of its panels. */
static struct area field_of(const struct area *area, const struct strips *strips, int64_t column,
                            int64_t row, bool image)
{
    int64_t width = area_width(area);
    int64_t height = area_height(area);

    assert(column >= 0 && column < strips->across && row >= 0 && row < strips->down);
    int64_t from = whole_divide_even(width * column, strips->across);
    int64_t to = whole_divide_even(width * (column + 1), strips->across);

    return (struct area){image ? area->u1 - to : area->u0 + from,
                         area->v0 + whole_divide_even(height * row, strips->down),
                         image ? area->u1 - from : area->u0 + to,
                         area->v0 + whole_divide_even(height * (row + 1), strips->down)};
}

static void tell_too_large(struct planning *planning, const struct facing *facing,
                           const struct area *area)
{
    struct finding *finding =
        finding_add(planning, FINDING_PANEL_TOO_LARGE, ENTITY_facing, facing->key);

    argument_length(finding, 0, area_width(area));
    argument_length(finding, 1, area_height(area));
}

/* Adds the panels of a stretch, numbered on from `number`; the number of the last. */
static int cut_stretch(struct planning *planning, const struct box *box,
                       const struct facing *facing, const struct area *area, int number)
{
    struct stretch stretch = {box, facing, *area,
                              longer_of(planning->model, box, facing->side, area)};
    bool image = side_u_axis(facing->side) == AXIS_X && mirror_is_image(planning->model, box);
    struct strips strips = strips_for(planning, &stretch);

    if (!strips.across) {
        tell_too_large(planning, facing, area);
        strips = (struct strips){1, 1};
    }
    for (int64_t row = 0; row < strips.down; row++)
        for (int64_t column = 0; column < strips.across; column++) {
            struct area field = field_of(area, &strips, column, row, image);

            add_panel(planning, box, facing, &field, ++number);
        }
    return number;
}

/* The stretches of a facing from one corner of an outline to the next. */
static struct stretches stretches_of(const struct planning *planning, const struct box *box,
                                     const struct facing *facing, const struct area *area)
{
    struct stretches stretches = {0};
    struct bend_corners corners = {0};
    bool along_u = side_u_axis(facing->side) == side_u_axis(box->main_side);
    struct area rest = *area;
    int64_t *from = along_u ? &rest.u0 : &rest.v0;
    int64_t to = along_u ? rest.u1 : rest.v1;

    if (curve_under(box, facing->side))
        corners = bend_corners(planning, box);
    for (size_t i = 0; i < corners.of.count; i++) {
        int64_t at = corners.of.at[i];
        struct area one = rest;

        if (at - *from < LEAST_STRETCH || to - at < LEAST_STRETCH)
            continue;
        *(along_u ? &one.u1 : &one.v1) = at;
        *LIST_ADD(planning->arena, &stretches.of) = one;
        *from = at;
    }
    *LIST_ADD(planning->arena, &stretches.of) = rest;
    return stretches;
}

/* Adds a facing's panels, numbered on from `number`; the number of the last. Those of an image are
 * numbered from its other end. */
static int cut_facing(struct planning *planning, const struct box *box, const struct facing *facing,
                      int number)
{
    struct area area = facing_area(planning->model, box, facing);
    bool image = side_u_axis(facing->side) == AXIS_X && mirror_is_image(planning->model, box);
    struct stretches stretches;

    if (area_empty(&area))
        return number;
    stretches = stretches_of(planning, box, facing, &area);
    for (size_t i = 0; i < stretches.of.count; i++) {
        size_t at = image ? stretches.of.count - 1 - i : i;

        number = cut_stretch(planning, box, facing, &stretches.of.at[at], number);
    }
    return number;
}

void pass_panel(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *box = &model->boxes.at[i];
        int number = 0;

        for (size_t k = 0; k < model->facings.count; k++) {
            const struct facing *facing = &model->facings.at[k];

            if (facing->box == box->key && facing->kind == FACING_PANEL)
                number = cut_facing(planning, box, facing, number);
        }
    }
}
