/*
 * The clock at the bench. A step on the clock is a row of the build: since when it runs, and what
 * was on it before. Its tick takes the minutes, and they count into the workshop's pace for steps
 * of that kind; taking the tick back takes them out again.
 */
#include "desk/internal.h"

#include "plan/rests.h"
#include "plan/steps.h"

#include <string.h>

#define MINUTES_MOST INT64_C(100000000) /* as the fields take */

/* ---- the clock ---- */

static struct timing *timing_of(struct model *model, const char *step)
{
    for (size_t i = 0; i < model->timings.count; i++) {
        if (strcmp(model->timings.at[i].step, step) == 0)
            return &model->timings.at[i];
    }
    return NULL;
}

/* What is on the clock by now. Where the times are none, or the clock went back, it stands still.
 */
static int64_t minutes_on(const struct timing *timing, const char *now)
{
    int64_t since = *timing->began ? rest_since(timing->began, now) : 0;
    if (since < 0 || since > MINUTES_MOST - timing->minutes)
        since = 0;
    return timing->minutes + since;
}

const struct timing *desk_timing(const struct desk *desk, const char *step)
{
    return timing_of((struct model *)&desk->state->model, step);
}

int64_t desk_timed(const struct desk *desk, const char *step, const char *now)
{
    const struct timing *timing = desk_timing(desk, step);
    return timing ? minutes_on(timing, now) : 0;
}

struct clocking {
    const char *step, *now;
    bool runs; /* already */
};

static void stop(struct model *draft, struct timing *timing, const char *now)
{
    timing->minutes = minutes_on(timing, now);
    timing->began = arena_text(draft->arena, "");
}

static enum fault change_clock(struct model *draft, void *context, struct fault_note *note)
{
    const struct clocking *clocking = context;
    (void)note;
    for (size_t i = 0; i < draft->timings.count; i++) {
        if (*draft->timings.at[i].began)
            stop(draft, &draft->timings.at[i], clocking->now);
    }
    if (clocking->runs)
        return FAULT_NONE;
    struct timing *timing = timing_of(draft, clocking->step);
    if (!timing) {
        timing = MODEL_ADD(draft, timing);
        timing->step = arena_text(draft->arena, clocking->step);
    }
    timing->began = arena_text(draft->arena, clocking->now);
    return FAULT_NONE;
}

enum fault desk_clock(struct desk *desk, const char *name, const char *now, struct fault_note *note)
{
    char label[STORE_LABEL];
    const struct step *step = plan_step(desk->state->plan, name);
    const struct timing *timing = desk_timing(desk, name);
    struct clocking clocking = {name, now, timing && *timing->began};
    if (!step)
        return desk_no_step(desk, name, note);
    if (step->ticked)
        return fault_say(note, FAULT_REFUSED, "\"%s\" is ticked already", step->title);
    desk_label(label, "clock %s: %s", clocking.runs ? "stopped" : "started", step->title);
    return desk_edit(desk, label, change_clock, &clocking, note);
}

/* ---- the pace ---- */

static struct pace *pace_for(struct model *draft, const char *step)
{
    const char *kind = step_kinds[step_kind_of(step)].word;
    for (size_t i = 0; i < draft->paces.count; i++) {
        if (strcmp(draft->paces.at[i].name, kind) == 0)
            return &draft->paces.at[i];
    }
    struct pace *pace = MODEL_ADD(draft, pace);
    pace->name = arena_text(draft->arena, kind);
    return pace;
}

void timing_take(struct model *draft, struct tick *tick, int64_t usual)
{
    struct timing *timing = timing_of(draft, tick->step);
    if (timing && !tick->minutes)
        tick->minutes = minutes_on(timing, tick->at);
    if (timing)
        model_remove(draft, ENTITY_timing, timing->key);
    if (!tick->minutes || !usual)
        return;
    struct pace *pace = pace_for(draft, tick->step);
    tick->usual = usual;
    pace->usual += usual;
    pace->took += tick->minutes;
    pace->count++;
}

void timing_give_back(struct model *draft, const struct tick *tick)
{
    if (!tick->usual)
        return;
    struct pace *pace = pace_for(draft, tick->step);
    pace->usual -= tick->usual < pace->usual ? tick->usual : pace->usual;
    pace->took -= tick->minutes < pace->took ? tick->minutes : pace->took;
    pace->count -= pace->count > 0;
    if (!pace->count)
        model_remove(draft, ENTITY_pace, pace->key);
}
