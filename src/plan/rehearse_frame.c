/*
 * Frame screws of one box, while its frame is taken apart again in thought: whatever can be taken
 * out last was put in last, and taking one thing out never shuts in another.
 */
#include "plan/rehearse_bar.h"

#include <assert.h>

struct frame_apart {
    struct view view;        /* one for each member that is still in */
    LIST_OF(size_t) members; /* of the plan, as in view.near */
    LIST_OF(size_t) screws;  /* of the plan, still in */
};

static struct frame_apart frame_begin(const struct stage *stage, const struct staged_box *box)
{
    const struct plan *plan = stage->plan;
    struct frame_apart frame = {.view = {.stage = stage, .box = box}};

    for (size_t i = 0; i < plan->members.count; i++) {
        if (plan->members.at[i].box != box->box->key)
            continue;
        *LIST_ADD(stage->arena, &frame.members) = i;
        *LIST_ADD(stage->arena, &frame.view.near) =
            (struct near_by){.solid = plan->members.at[i].solid,
                             .entity = ENTITY_box,
                             .key = box->box->key,
                             .label = plan->members.at[i].label,
                             .since = stage->now};
    }
    for (size_t i = 0; i < plan->screws.count; i++)
        if (plan->screws.at[i].use == SCREW_FRAME && plan->screws.at[i].box == box->box->key)
            *LIST_ADD(stage->arena, &frame.screws) = i;
    assert(frame.members.count == frame.view.near.count);
    return frame;
}

static const struct near_by *frame_screw_blocked(const struct frame_apart *frame, size_t index)
{
    assert(index < frame->view.stage->plan->screws.count);

    const struct plan *plan = frame->view.stage->plan;
    const struct screw *screw = &plan->screws.at[index];
    const struct near_by *first = NULL;
    struct tool_bar bars[BARS];
    size_t count =
        bars_for(frame->view.stage, TOOL_STUBBY, plan->screw_kinds.at[screw->kind].length, bars);

    for (size_t i = 0; i < count; i++) {
        const struct near_by *near =
            bar_blocked(&frame->view, screw->at, screw->axis, -screw->sign, &bars[i]);

        if (!near)
            return NULL;
        first = first ? first : near;
    }
    return first;
}

static bool has_screws(const struct frame_apart *frame, size_t member)
{
    const struct plan *plan = frame->view.stage->plan;

    for (size_t i = 0; i < frame->screws.count; i++) {
        const struct joint *joint = &plan->joints.at[plan->screws.at[frame->screws.at[i]].of];

        if (joint->through == member || joint->into == member)
            return true;
    }
    return false;
}

static bool take_screws_out(struct frame_apart *frame)
{
    size_t kept = 0;
    size_t count = frame->screws.count;

    for (size_t i = 0; i < count; i++)
        if (frame_screw_blocked(frame, frame->screws.at[i]))
            frame->screws.at[kept++] = frame->screws.at[i];
    frame->screws.count = kept;
    return kept < count;
}

static void take_members_out(struct frame_apart *frame)
{
    size_t kept = 0;

    for (size_t i = 0; i < frame->view.near.count; i++) {
        if (!has_screws(frame, frame->members.at[i]))
            continue;
        frame->members.at[kept] = frame->members.at[i];
        frame->view.near.at[kept++] = frame->view.near.at[i];
    }
    frame->view.near.count = kept;
    frame->members.count = kept;
}

void reach_frame(struct stage *stage, const struct staged_box *box)
{
    struct frame_apart frame = frame_begin(stage, box);

    while (frame.screws.count > 0 && take_screws_out(&frame))
        take_members_out(&frame);
    for (size_t i = 0; i < frame.screws.count; i++)
        stage_lose(
            stage, REHEARSED_FRAME, ENTITY_box, box->box->key, frame.screws.at[i],
            look_lapse(stage, LAPSE_WOOD_IN_WAY, frame_screw_blocked(&frame, frame.screws.at[i])));
}
