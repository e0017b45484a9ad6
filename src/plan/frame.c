/*
 * Boxes become members and joints.
 *
 * 1  The members of a box stand together in the plan's list, in the order in which they are made:
 *    outline, supports, members by hand by their keys. Labels count in that order.
 * 2  Members of ours lie within the frame's space and share no volume with one another.
 * 3  A joint is where the end grain of one member touches the side of another.
 */
#include "plan/frame.h"

#include "plan/findings.h"
#include "plan/mirror.h"
#include "plan/slices.h"

#include <assert.h>
#include <stdio.h>

int frame_normal(const struct box *box)
{
    return box->frame == FRAME_CRATE ? AXIS_Y : side_axis(box->main_side);
}

void framing_add(struct framing *framing, int64_t kind, int64_t axis, const struct solid *solid)
{
    struct plan *plan = framing->planning->plan;
    struct plan_member *member = LIST_ADD(framing->planning->arena, &plan->members);

    assert(!solid_empty(solid) && axis >= 0 && axis < AXIS_COUNT);
    snprintf(member->label, sizeof member->label, "%s%zu", framing->box->name,
             plan->members.count - framing->first);
    member->box = framing->box->key;
    member->kind = kind;
    member->axis = axis;
    member->stock = framing->box->stick;
    member->solid = *solid;
    member->length = solid_size(solid, (int)axis);
}

struct plan_member *framing_last(struct framing *framing)
{
    struct plan *plan = framing->planning->plan;

    assert(plan->members.count > framing->first);
    return &plan->members.at[plan->members.count - 1];
}

bool framing_too_small(struct framing *framing, int axis, int64_t least)
{
    struct finding *finding;

    if (solid_size(&framing->space, axis) >= least)
        return false;
    finding = finding_add(framing->planning, FINDING_BOX_TOO_SMALL, ENTITY_box, framing->box->key);
    argument_length(finding, 0, solid_size(&framing->space, axis));
    argument_length(finding, 1, least);
    return true;
}

int64_t panel_span(const struct planning *planning, const struct panel *panel)
{
    const int64_t *value = planning->value;
    int64_t use = MODEL_FIND(planning->model, facing, panel->facing)->use;
    int64_t span = span_allowed(value, use, panel->thickness);
    int64_t pad = plan_padding(planning->plan, panel->box, panel->side)->pad;
    int64_t shared;

    if (use != USE_SEAT || pad == 0 || pad >= value[TRADE_SPAN_CUSHION_FOAM] ||
        whole_share(span, value[TRADE_SPAN_CUSHION], 1000000, &shared))
        return span;
    return shared;
}

int64_t framing_span(const struct framing *framing, int64_t side, const struct area *area)
{
    const struct plan *plan = framing->planning->plan;
    struct slice panels = plan_panels_of(plan, framing->box->key);
    int64_t span = INT64_MAX;

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];
        struct area common = area_cut(&panel->area, area);

        if (panel->side != side || area_empty(&common))
            continue;
        struct panel standing = *panel;
        standing.side = side_laid(panel->side, framing->lies);
        span = length_smaller(span, panel_span(framing->planning, &standing));
    }
    return span;
}

/* A panel is pressed on to a member that was placed by hand for the thickness that is sold. */
bool member_bears(const struct plan_member *member, const struct panel *panel)
{
    int64_t gap;
    int axis = side_axis(panel->side);
    bool outward = side_sign(panel->side) > 0;
    struct area under;

    if (member->box != panel->box || member->axis == axis)
        return false;
    under = member_under(member, panel);
    if (area_empty(&under))
        return false;
    gap = outward ? vector_along(member->solid.high, axis) - vector_along(panel->solid.low, axis)
                  : vector_along(member->solid.low, axis) - vector_along(panel->solid.high, axis);
    return gap <= SHEET_UNDERSIZE && gap >= -SHEET_UNDERSIZE;
}

bool member_backs_edge(const struct plan_member *member)
{
    return member->kind == MEMBER_BLOCK && member->by_hand == 0;
}

struct area member_under(const struct plan_member *member, const struct panel *panel)
{
    struct area outline = solid_on_side(&member->solid, panel->side);

    return area_cut(&outline, &panel->area);
}

static bool has_stick(struct framing *framing)
{
    if (framing->section.thin && framing->section.wide)
        return true;
    finding_add(framing->planning, FINDING_BOX_WITHOUT_STICK, ENTITY_box, framing->box->key);
    return false;
}

static void mirror_panels(const struct framing *framing)
{
    struct plan *plan = framing->planning->plan;
    struct slice panels = plan_panels_of(plan, framing->box->key);

    for (size_t i = panels.from; i < panels.to; i++)
        mirror_panel(framing->box, &plan->panels.at[i]);
}

static void frame_outright(struct framing *framing)
{
    if (framing->box->frame == FRAME_LADDER)
        frame_ladder(framing);
    else if (frame_lies(framing->box) != AXIS_Y)
        frame_laid(framing);
    else
        frame_crate(framing);
}

static void mirror_piece(const struct box *box, struct crown_piece *piece)
{
    struct area face = face_area(box, box->main_side);
    int64_t left = face.u0 + face.u1 - piece->area.u1;

    piece->area.u1 = face.u0 + face.u1 - piece->area.u0;
    piece->area.u0 = left;
    for (int i = 0; i < CROWN_HEIGHTS / 2; i++) {
        int64_t height = piece->heights[i];

        piece->heights[i] = piece->heights[CROWN_HEIGHTS - 1 - i];
        piece->heights[CROWN_HEIGHTS - 1 - i] = height;
    }
}

/* A mirror image is framed as its twin would be behind its panels, and turned round then: supports,
 * crosses and labels of the two lie across from each other. */
static void frame_as_image(struct framing *framing)
{
    struct plan *plan = framing->planning->plan;
    size_t first_piece = plan->crown_pieces.count;
    bool outline_too = side_u_axis(framing->box->main_side) == AXIS_X;

    mirror_panels(framing);
    mirror_solid(framing->box, &framing->space);
    framing->turned_round = true;
    frame_outright(framing);
    framing->turned_round = false;
    mirror_solid(framing->box, &framing->space);
    mirror_panels(framing);
    for (size_t i = framing->first; i < plan->members.count; i++) {
        mirror_solid(framing->box, &plan->members.at[i].solid);
        plan->members.at[i].slant *= outline_too ? -1 : 1;
    }
    for (size_t i = first_piece; outline_too && i < plan->crown_pieces.count; i++)
        mirror_piece(framing->box, &plan->crown_pieces.at[i]);
}

/* A frame that is seen from its left or right is the same from both ends but for its main side. */
static bool is_turned_round(const struct framing *framing)
{
    return framing->normal != AXIS_X && mirror_is_image(framing->planning->model, framing->box);
}

static void frame_box(struct planning *planning, const struct box *box)
{
    struct framing framing = {.planning = planning,
                              .box = box,
                              .section = stick_section(planning->model, box->stick),
                              .space = frame_space(planning->model, box),
                              .normal = frame_normal(box),
                              .lies = AXIS_Y,
                              .first = planning->plan->members.count,
                              .first_screw = planning->plan->screws.count,
                              .driven = {.arena = planning->arena}};

    if (box->frame == FRAME_CUSHION)
        return;
    if ((box->frame == FRAME_LADDER || box->frame == FRAME_CRATE) && has_stick(&framing)) {
        if (is_turned_round(&framing))
            frame_as_image(&framing);
        else
            frame_outright(&framing);
    }
    frame_by_hand(&framing);
    frame_joints(&framing);
    frame_order(&framing);
}

void pass_frame(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->boxes.count; i++)
        frame_box(planning, &planning->model->boxes.at[i]);
    frame_bearings(planning);
}
