/*
 * The measures that a step asks for, entered before it is ticked. What is typed is kept until Space
 * ticks the step with it; Esc leaves the step as it was.
 */
#include "desk/clock.h"
#include "plan/steps.h"
#include "plan/taken.h"
#include "tui/entry.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>
#include <string.h>

#define MEASURES_MOST 32
#define MEASURE_TEXT 40

struct measures_state {
    char step[64];
    char given[MEASURES_MOST][MEASURE_TEXT];
    struct list_view list;
    struct entry entry;
    bool typing;
};

/* In the scratch arena; NULL for a step that has gone. */
static const struct ask *asked(struct tui *tui, struct measures_state *state, struct arena *arena)
{
    const struct step *step = plan_step(tui_plan(tui), state->step);
    size_t count = 0;
    const struct ask *asks = NULL;
    if (step)
        asks = plan_asks_of(tui_plan(tui), step, arena, &count);
    list_view_resize(&state->list, (int)(count < MEASURES_MOST ? count : MEASURES_MOST));
    return asks;
}

/* The lines are there at once: who types ahead does not wait for the painting. */
static void measures_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct measures_state *state = opaque;
    struct arena arena;
    snprintf(state->step, sizeof state->step, "%s", target->step);
    arena_init(&arena);
    (void)asked(tui, state, &arena);
    arena_release(&arena);
}

static void paint_ask(struct tui *tui, struct measures_state *state, const struct ask *ask, int i,
                      int row)
{
    char planned[QUANTITY_TEXT] = "";
    bool chosen = i == state->list.chosen;
    if (ask->planned)
        quantity_print_unit(planned, QUANTITY_LENGTH, model_units(tui_model(tui)), ask->planned);
    view_text(&tui->view, row, 1, 36, chosen ? VIEW_STRONG : VIEW_PLAIN, ask->name);
    view_text(&tui->view, row, 38, 18, VIEW_FAINT, planned);
    if (chosen && state->typing)
        entry_paint(&state->entry, &tui->view, row, 58, 18);
    else
        view_row(&tui->view, row, 58, 18, chosen ? VIEW_CHOSEN : VIEW_PLAIN, state->given[i]);
    if (chosen && !state->typing)
        view_cursor(&tui->view, row, 58);
}

static void measures_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct measures_state *state = opaque;
    struct arena arena;
    arena_init(&arena);
    const struct ask *asks = asked(tui, state, &arena);
    list_view_fit(&state->list, top + 1, height - 3);
    view_text(&tui->view, top, 1, 36, VIEW_STRONG, "measure");
    view_text(&tui->view, top, 38, 18, VIEW_STRONG, "by the plan");
    view_text(&tui->view, top, 58, 18, VIEW_STRONG, "as it is");
    for (int i = 0; asks && i < list_view_shown(&state->list); i++)
        paint_ask(tui, state, &asks[state->list.top + i], state->list.top + i, top + 1 + i);
    view_text(&tui->view, top + height - 1, 1, tui->view.columns - 2, VIEW_FAINT,
              "What follows is worked out with these; what stays empty is as planned.");
    arena_release(&arena);
}

/* ---- typing ---- */

static bool measures_typing(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((struct measures_state *)opaque)->typing;
}

static void accept(struct measures_state *state)
{
    snprintf(state->given[state->list.chosen], MEASURE_TEXT, "%.*s", MEASURE_TEXT - 1,
             state->entry.text);
    state->typing = false;
    list_view_act(&state->list, ACTION_DOWN);
}

static enum reaction measures_key(struct tui *tui, void *opaque, int key)
{
    struct measures_state *state = opaque;
    (void)tui;
    if (!state->typing) {
        if (key <= KEY_SPACE || key >= KEY_FIRST_SPECIAL || state->list.chosen < 0)
            return REACT_PASS;
        if (key < '0' || key > '9')
            return REACT_PASS;
        entry_set(&state->entry, "");
        state->typing = true;
    }
    if (key == KEY_ESCAPE)
        state->typing = false;
    else if (key == KEY_RETURN || key == KEY_ARROW_DOWN || key == KEY_TAB)
        accept(state);
    else
        entry_key(&state->entry, key);
    return REACT_TAKEN;
}

static enum reaction measures_paste(struct tui *tui, void *opaque, const char *text)
{
    (void)tui;
    entry_insert(&((struct measures_state *)opaque)->entry, text);
    return REACT_TAKEN;
}

/* ---- ticking ---- */

static enum reaction tick(struct tui *tui, struct measures_state *state)
{
    struct arena arena;
    struct desk_measure measures[MEASURES_MOST];
    char now[CLOCK_TEXT];
    struct desk_done done = {.at = clock_now(now), .measures = measures};
    struct fault_note note = {0};
    arena_init(&arena);
    const struct ask *asks = asked(tui, state, &arena);
    for (int i = 0; asks && i < state->list.count; i++) {
        if (state->given[i][0])
            measures[done.measure_count++] = (struct desk_measure){asks[i].name, state->given[i]};
    }
    enum fault fault = desk_tick_done(tui->desk, state->step, &done, &note);
    arena_release(&arena);
    if (fault) {
        tui_warn(tui, &note);
        return REACT_TAKEN;
    }
    if (done.measure_count)
        tui_say(tui, "done, with %zu measure%s", done.measure_count,
                done.measure_count == 1 ? "" : "s");
    else
        tui_say(tui, "done, nothing measured");
    return REACT_LEAVE;
}

static enum reaction measures_act(struct tui *tui, void *opaque, enum action action)
{
    struct measures_state *state = opaque;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_TICK)
        return tick(tui, state);
    if (action == ACTION_ENTER && state->list.chosen >= 0) {
        entry_set(&state->entry, state->given[state->list.chosen]);
        state->typing = true;
        return REACT_TAKEN;
    }
    return REACT_PASS;
}

static struct list_view *measures_list(void *opaque)
{
    return &((struct measures_state *)opaque)->list;
}

static void measures_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    struct measures_state *state = opaque;
    struct arena arena;
    arena_init(&arena);
    const struct ask *asks = asked(tui, state, &arena);
    if (asks && index < state->list.count)
        text_format(out, "%s  %s", asks[index].name, state->given[index]);
    arena_release(&arena);
}

const struct screen screen_measures = {
    .name = "measures",
    .size = sizeof(struct measures_state),
    .open = measures_open,
    .paint = measures_paint,
    .act = measures_act,
    .typing = measures_typing,
    .key = measures_key,
    .paste = measures_paste,
    .list = measures_list,
    .line = measures_line,
    .shown = SHOWS(TICK) | SHOWS(ENTER) | SHOWS(LEAVE),
    .words = {{ACTION_ENTER, "type"}},
    .typing_hint = "Enter takes it, Esc leaves it as it was",
};
