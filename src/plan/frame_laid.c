/*
 * Crates whose outline is not in front: a seat with a bowed front has it on its top, an arm at an
 * end.
 *
 * The ladders of a crate stand in front and behind, and carry the crown (frame_crate.c). So such a
 * crate is laid on its back, or turned by a quarter, framed as any other, and set up again: its
 * ladders are then at the top and the bottom, or at both ends, and its crosses run from one to the
 * other.
 *
 * 1  The y axis and one other change places. Faces that have both or neither of them keep their u
 *    and v, so that the outline stays what it is; on the others u and v change places too.
 *
 * 2  What is read while it lies has been laid: its space, its panels, its sides. Twice is as
 *    before.
 */
#include "plan/frame.h"

#include "plan/curve.h"
#include "plan/slices.h"

#include <assert.h>

int frame_lies(const struct box *box)
{
    return box->frame == FRAME_CRATE && curve_has(box, box->main_side) ? side_axis(box->main_side)
                                                                       : AXIS_Y;
}

static int axis_laid(int axis, int with)
{
    return axis == AXIS_Y ? with : axis == with ? AXIS_Y : axis;
}

int64_t side_laid(int64_t side, int with)
{
    int axis = axis_laid(side_axis(side), with);
    int64_t laid = 0;

    while (side_axis(laid) != axis || side_sign(laid) != side_sign(side))
        laid++;
    return laid;
}

static struct vector vector_laid(struct vector vector, int with)
{
    struct vector laid = vector;

    vector_set(&laid, AXIS_Y, vector_along(vector, with));
    vector_set(&laid, with, vector.y);
    return laid;
}

static void lay_solid(struct solid *solid, int with)
{
    *solid = (struct solid){vector_laid(solid->low, with), vector_laid(solid->high, with)};
}

static void lay_panel(struct panel *panel, int with)
{
    int64_t side = side_laid(panel->side, with);
    struct panel was = *panel;

    if (side_u_axis(side) != axis_laid(side_u_axis(panel->side), with)) {
        panel->area = (struct area){was.area.v0, was.area.u0, was.area.v1, was.area.u1};
        panel->width = was.height;
        panel->height = was.width;
    }
    panel->side = side;
    lay_solid(&panel->solid, with);
}

static void lay_down(struct framing *framing, int with)
{
    struct plan *plan = framing->planning->plan;
    struct slice panels = plan_panels_of(plan, framing->box->key);

    for (size_t i = panels.from; i < panels.to; i++)
        lay_panel(&plan->panels.at[i], with);
    lay_solid(&framing->space, with);
    framing->lies = axis_laid(framing->lies, with);
}

/* As it is framed. Turned by a quarter, an image is its twin but for the end that is the main one.
 */
static struct box box_laid(const struct framing *framing, int with)
{
    struct box laid = *framing->box;
    struct vector size = vector_laid(box_size(&laid), with);
    bool other_end = framing->turned_round && with == AXIS_X;

    laid.width = size.x;
    laid.depth = size.y;
    laid.height = size.z;
    laid.main_side = side_laid(other_end ? side_opposite(laid.main_side) : laid.main_side, with);
    return laid;
}

void frame_laid(struct framing *framing)
{
    const struct box *box = framing->box;
    bool turned_round = framing->turned_round;
    int with = frame_lies(box);
    struct box laid = box_laid(framing, with);
    struct plan *plan = framing->planning->plan;

    lay_down(framing, with);
    framing->box = &laid;
    framing->turned_round = turned_round && with != AXIS_X;
    frame_crate(framing);
    framing->turned_round = turned_round;
    framing->box = box;
    lay_down(framing, with);
    for (size_t i = framing->first; i < plan->members.count; i++) {
        struct plan_member *member = &plan->members.at[i];

        lay_solid(&member->solid, with);
        member->axis = axis_laid((int)member->axis, with);
    }
    assert(framing->lies == AXIS_Y);
}
