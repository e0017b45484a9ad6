/* What can be done in the minutes there are, with what is here. */
#include "desk/clock.h"
#include "paper/print.h"
#include "plan/doable.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>

#define NOW_USUAL INT64_C(40000) /* 40 min */
#define NOW_STEP INT64_C(10000)

struct now_state {
    int64_t minutes;
    int people;
    struct list_view list;
};

static void now_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct now_state *state = opaque;
    (void)target;
    state->minutes = NOW_USUAL;
    state->people = tui_model(tui)->workshop.helper ? 2 : 1;
}

/* NULL when memory ran out. */
static const struct doable *find(struct tui *tui, struct now_state *state, struct arena *arena)
{
    char now[CLOCK_TEXT];
    const struct doable *doable = NULL;
    struct doable_ask ask = {state->minutes, state->people, true, clock_now(now)};
    if (plan_doable(tui_plan(tui), &ask, arena, &doable))
        return NULL;
    list_view_resize(&state->list, (int)doable->count);
    return doable;
}

static void paint_head(struct tui *tui, const struct now_state *state, const struct doable *doable,
                       int row)
{
    struct text line;
    text_init(&line);
    text_format(&line, "In %s, %s: %zu steps, %s", print_minutes(state->minutes).at,
                state->people > 1 ? "two people" : "alone", doable->count,
                print_minutes(doable->minutes).at);
    view_text(&tui->view, row, 1, tui->view.columns - 2, VIEW_STRONG, text_string(&line));
    text_clear(&line);
    if (*doable->wet)
        text_format(&line, "%s, %s to go. ", doable->wet, print_minutes(doable->wet_for).at);
    if (*doable->missing)
        text_format(&line, "%zu more wait for goods: %s. ", doable->barred[BAR_GOODS],
                    doable->missing);
    if (doable->barred[BAR_PEOPLE])
        text_format(&line, "%zu more want two people. ", doable->barred[BAR_PEOPLE]);
    if (doable->barred[BAR_TIME])
        text_format(&line, "%zu more take longer.", doable->barred[BAR_TIME]);
    view_text(&tui->view, row + 1, 1, tui->view.columns - 2, VIEW_FAINT, text_string(&line));
    text_release(&line);
}

static void now_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct now_state *state = opaque;
    const struct plan *plan = tui_plan(tui);
    struct arena arena;
    arena_init(&arena);
    const struct doable *doable = find(tui, state, &arena);
    list_view_fit(&state->list, top + 3, height - 3);
    if (doable)
        paint_head(tui, state, doable, top);
    for (int i = 0; doable && i < list_view_shown(&state->list); i++) {
        int index = state->list.top + i;
        const struct step *step = &plan->steps.at[doable->steps[index]];
        int style = index == state->list.chosen ? VIEW_CHOSEN : VIEW_PLAIN;
        int row = top + 3 + i;
        view_row(&tui->view, row, 0, tui->view.columns, style, "");
        view_text(&tui->view, row, 1, tui->view.columns - 14, style, step->title);
        view_text(&tui->view, row, tui->view.columns - 10, 9, style,
                  print_minutes(step->minutes).at);
        if (index == state->list.chosen)
            view_cursor(&tui->view, row, 1);
    }
    arena_release(&arena);
}

static enum reaction open_chosen(struct tui *tui, struct now_state *state)
{
    struct arena arena;
    arena_init(&arena);
    const struct doable *doable = find(tui, state, &arena);
    bool chosen = doable && state->list.chosen >= 0;
    if (chosen) {
        const struct step *step = &tui_plan(tui)->steps.at[doable->steps[state->list.chosen]];
        tui_open(tui, &screen_step, &(struct target){ENTITY_none, 0, step->name, NULL});
    }
    arena_release(&arena);
    return chosen ? REACT_TAKEN : REACT_PASS;
}

static enum reaction now_act(struct tui *tui, void *opaque, enum action action)
{
    struct now_state *state = opaque;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    switch (action) {
    case ACTION_LEFT:
        state->minutes -= state->minutes > NOW_STEP ? NOW_STEP : 0;
        return REACT_TAKEN;
    case ACTION_RIGHT:
        state->minutes += NOW_STEP;
        return REACT_TAKEN;
    case ACTION_NOW:
        state->people = 3 - state->people;
        return REACT_TAKEN;
    case ACTION_ENTER:
        return open_chosen(tui, state);
    default:
        return REACT_PASS;
    }
}

static struct list_view *now_list(void *opaque)
{
    return &((struct now_state *)opaque)->list;
}

static void now_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    struct arena arena;
    arena_init(&arena);
    const struct doable *doable = find(tui, opaque, &arena);
    if (doable && (size_t)index < doable->count) {
        const struct step *step = &tui_plan(tui)->steps.at[doable->steps[index]];
        text_format(out, "%s  %s", step->title, print_minutes(step->minutes).at);
    }
    arena_release(&arena);
}

const struct screen screen_now = {
    .name = "what can be done now",
    .size = sizeof(struct now_state),
    .open = now_open,
    .paint = now_paint,
    .act = now_act,
    .list = now_list,
    .line = now_line,
    .shown = SHOWS(ENTER) | SHOWS(LEAVE) | SHOWS(LEFT) | SHOWS(RIGHT) | SHOWS(NOW),
    .words = {{ACTION_ENTER, "step"},
              {ACTION_LEFT, "shorter"},
              {ACTION_RIGHT, "longer"},
              {ACTION_NOW, "people"}},
};
