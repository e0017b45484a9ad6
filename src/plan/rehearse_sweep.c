/*
 * Whether two boxes, with all that hangs on each by now, come together in a straight line.
 *
 * One of the two groups is drawn out, block by block, to one of the six sides; where none of its
 * blocks then stands in a block of the other group, it comes in from there. Where one of them leans
 * the blocks round both are only the first look: the bodies in them decide.
 */
#include "plan/rehearse_stage.h"

#define FAR_AWAY (2 * FIELDS_ROOM)

struct meeting_of {
    const struct stage *stage;
    const struct staged_box *a, *b; /* all is seen from a */
    int64_t from;                   /* side of a that the group of b comes from; -1: where it is */
};

static int64_t drawn_by(const struct meeting_of *meeting)
{
    return meeting->from < 0 ? 0 : stage_sides[meeting->from].sign * FAR_AWAY;
}

static int axis_of(const struct meeting_of *meeting)
{
    return meeting->from < 0 ? AXIS_X : stage_sides[meeting->from].axis;
}

/* A block that comes with b is drawn out to where it came from. */
static struct solid seen_from_a(const struct meeting_of *meeting, const struct staged_box *of,
                                const struct solid *solid, bool comes)
{
    struct solid seen = stage_solid_seen(of, meeting->a, solid);
    int64_t by = comes ? drawn_by(meeting) : 0;

    if (by > 0)
        seen.high = stage_moved(seen.high, axis_of(meeting), by);
    else
        seen.low = stage_moved(seen.low, axis_of(meeting), by);
    return seen;
}

static bool blocks_meet(const struct solid *a, const struct solid *b)
{
    for (int axis = 0; axis < AXIS_COUNT; axis++)
        if (stage_along(a->low, axis) >= stage_along(b->high, axis) ||
            stage_along(b->low, axis) >= stage_along(a->high, axis))
            return false;
    return true;
}

/* For blocks of which one leans: the blocks round them meet. */
static bool leaning_meet(const struct meeting_of *meeting, const struct staged_box *comes,
                         const struct solid *moving, const struct staged_box *stays,
                         const struct solid *still)
{
    struct body of_b = stage_body_seen(comes, meeting->a, moving);
    struct body of_a = stage_body_seen(stays, meeting->a, still);

    of_b = body_drawn(&of_b, axis_of(meeting), drawn_by(meeting));
    return bodies_meet(&of_b, &of_a);
}

static struct solid outline_of_box(const struct staged_box *box)
{
    return (struct solid){{0, 0, 0}, {box->box->width, box->box->depth, box->box->height}};
}

static bool is_there(const struct lump *lump)
{
    return lump->since != PLAN_NONE && !lump->laid_on;
}

static bool wood_meets(const struct meeting_of *meeting, const struct staged_box *stays,
                       const struct staged_box *comes)
{
    bool upright = stage_axes_agree(stays, meeting->a) && stage_axes_agree(comes, meeting->a);

    for (size_t i = 0; i < comes->lumps.count; i++) {
        const struct lump *moving = &comes->lumps.at[i];
        struct solid moved = seen_from_a(meeting, comes, &moving->solid, true);

        for (size_t k = 0; is_there(moving) && k < stays->lumps.count; k++) {
            const struct lump *still = &stays->lumps.at[k];
            struct solid seen = seen_from_a(meeting, stays, &still->solid, false);

            if (is_there(still) && blocks_meet(&moved, &seen) &&
                (upright || leaning_meet(meeting, comes, &moving->solid, stays, &still->solid)))
                return true;
        }
    }
    return false;
}

/* A box that is in the way of one of the group of b; NULL when there is none. */
static const struct staged_box *in_way_of(const struct meeting_of *meeting,
                                          const struct staged_box *comes)
{
    const struct stage *stage = meeting->stage;
    struct solid whole = outline_of_box(comes);
    struct solid moved = seen_from_a(meeting, comes, &whole, true);

    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        const struct staged_box *stays = &stage->boxes[i];
        struct solid outline = outline_of_box(stays);

        if (stays->group != meeting->a->group)
            continue;
        outline = seen_from_a(meeting, stays, &outline, false);
        if (blocks_meet(&moved, &outline) && wood_meets(meeting, stays, comes))
            return stays;
    }
    return NULL;
}

static const struct staged_box *in_way(const struct meeting_of *meeting)
{
    const struct stage *stage = meeting->stage;

    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        const struct staged_box *comes = &stage->boxes[i];
        const struct staged_box *found =
            comes->group == meeting->b->group ? in_way_of(meeting, comes) : NULL;

        if (found)
            return found;
    }
    return NULL;
}

struct verdict sweep_together(const struct stage *stage, const struct staged_join *join)
{
    struct meeting_of meeting = {stage, stage_box(stage, join->join->box_a),
                                 stage_box(stage, join->join->box_b), -1};
    const struct staged_box *first = NULL;

    if (!meeting.a || !meeting.b || join->join->target != TARGET_BOX ||
        meeting.a->group == meeting.b->group || in_way(&meeting))
        return stage_fine(stage);
    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        const struct staged_box *box;

        meeting.from = side;
        box = in_way(&meeting);
        if (!box)
            return stage_fine(stage);
        if (!first || first == meeting.a)
            first = box;
    }
    return stage_lapse_by(stage, LAPSE_KEPT_OUT, ENTITY_box, first->box->key, first->framed);
}
