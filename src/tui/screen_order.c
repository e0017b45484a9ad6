/* The order of work, and one step large enough to be read at the bench. */
#include "desk/clock.h"
#include "paper/print.h"
#include "paper/sheets.h"
#include "plan/steps.h"
#include "plan/taken.h"
#include "tui/list.h"
#include "tui/pager.h"
#include "tui/screen.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

/* A step that asks for measures gets them before it is ticked. */
static bool asks_first(struct tui *tui, const struct step *step)
{
    struct arena arena;
    size_t count;
    if (step->ticked)
        return false;
    arena_init(&arena);
    (void)plan_asks_of(tui_plan(tui), step, &arena, &count);
    arena_release(&arena);
    if (count)
        tui_open(tui, &screen_measures, &(struct target){ENTITY_none, 0, step->name, NULL});
    return count > 0;
}

/* Ticks a step, or takes its tick back; says what it closed, and what should have come before. */
static void tick(struct tui *tui, const struct step *step)
{
    char now[CLOCK_TEXT];
    char name[sizeof step->name];
    char closes[160];
    char ahead[sizeof step->title + 16] = "";
    const struct step *awaited = plan_waits_for(tui_plan(tui), step);
    bool ticked = step->ticked;
    struct fault_note note = {0};
    if (asks_first(tui, step))
        return;
    snprintf(name, sizeof name, "%s", step->name);
    snprintf(closes, sizeof closes, "%s", step->closes);
    if (awaited)
        snprintf(ahead, sizeof ahead, ", ahead of: %s", awaited->title);
    clock_now(now);
    int64_t timed = desk_timed(tui->desk, name, now);
    enum fault fault =
        ticked ? desk_untick(tui->desk, name, &note) : desk_tick(tui->desk, name, now, 0, &note);
    if (fault)
        tui_warn(tui, &note);
    else if (ticked)
        tui_say(tui, "the tick is taken back");
    else
        tui_say(tui, "done%s%s%s%s%s", timed ? " in " : "", timed ? print_minutes(timed).at : "",
                ahead, *closes ? "; " : "", closes);
}

static enum reaction leave_out(struct tui *tui, const struct step *step)
{
    char name[64];
    struct fault_note note = {0};
    const struct join *join = MODEL_FIND(tui_model(tui), join, step->join);
    if (!join)
        return REACT_PASS;
    snprintf(name, sizeof name, "%s", join->name);
    if (desk_leave_out(tui->desk, name, true, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "join %s is left out; %s takes it in again", name,
                tui_key(tui, ACTION_UNDO).at);
    return REACT_TAKEN;
}

static enum reaction toggle_clock(struct tui *tui, const struct step *step)
{
    char now[CLOCK_TEXT];
    char title[sizeof step->title];
    char name[sizeof step->name];
    struct fault_note note = {0};
    snprintf(title, sizeof title, "%s", step->title);
    snprintf(name, sizeof name, "%s", step->name);
    if (desk_clock(tui->desk, name, clock_now(now), &note)) {
        tui_warn(tui, &note);
        return REACT_TAKEN;
    }
    const struct timing *timing = desk_timing(tui->desk, name);
    if (*timing->began)
        tui_say(tui, "the clock runs: %s", title);
    else
        tui_say(tui, "the clock stands at %s: %s", print_minutes(timing->minutes).at, title);
    return REACT_TAKEN;
}

/* The note of a step is its tick's. */
static void note_step(struct tui *tui, const struct step *step)
{
    const struct model *model = tui_model(tui);
    for (size_t i = 0; i < model->ticks.count; i++) {
        if (strcmp(model->ticks.at[i].step, step->name) == 0) {
            tui_note(tui, ENTITY_tick, model->ticks.at[i].key);
            return;
        }
    }
    tui_say(tui, "tick the step first: its note is about how it was done");
}

/* What the keys of the bench do wherever a step is chosen. */
static enum reaction bench_act(struct tui *tui, const struct step *step, enum action action)
{
    switch (action) {
    case ACTION_NOW:
        tui_open(tui, &screen_now, &(struct target){ENTITY_none, 0, NULL, NULL});
        return REACT_TAKEN;
    case ACTION_SPOIL:
        tui_open(tui, &screen_parts, &(struct target){ENTITY_none, 0, NULL, NULL});
        return REACT_TAKEN;
    case ACTION_LEAVE_OUT:
        return leave_out(tui, step);
    case ACTION_CLOCK:
        return toggle_clock(tui, step);
    case ACTION_NOTE:
        note_step(tui, step);
        return REACT_TAKEN;
    default:
        return REACT_PASS;
    }
}

/* ---- the list ---- */

struct order_state {
    struct list_view list;
    char held[64]; /* the chosen step, and its line by then: lines shift when the plan changes */
    int held_at;
    char latest[64]; /* of the last tick by then; "": there was none */
    char asked[64];  /* step that is to be ticked, perhaps after a screen of measures; "": none */
};

/* The first step that can be done now. */
static int first_ready(const struct plan *plan)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (plan->steps.at[i].ready)
            return (int)i;
    }
    return 0;
}

static void order_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct order_state *state = opaque;
    (void)target;
    list_view_resize(&state->list, (int)tui_plan(tui)->steps.count);
    list_view_choose(&state->list, first_ready(tui_plan(tui)));
    state->held_at = -1; /* nothing is held yet */
}

/* The line below that is still to be done; where there is none, the first that can be. */
static int next_to_do(const struct plan *plan, int line)
{
    for (size_t i = (size_t)line + 1; i < plan->steps.count; i++) {
        if (!plan->steps.at[i].ticked)
            return (int)i;
    }
    return plan->tally.steps_done == plan->tally.steps ? line : first_ready(plan);
}

/* On to what is next, once the step that was to be ticked is: at once, or when its measures have
 * been taken. Never to a ticked step, whose tick the next Space would take back. */
static void move_on(struct order_state *state, const struct plan *plan)
{
    const struct step *step = *state->asked ? plan_step(plan, state->asked) : NULL;
    if (step && step->ticked && step == &plan->steps.at[state->list.chosen])
        list_view_choose(&state->list, next_to_do(plan, state->list.chosen));
    state->asked[0] = '\0';
}

/* The step whose tick, the last one, was taken back. */
static const struct step *taken_back(const struct order_state *state, const struct plan *plan)
{
    const struct step *step = *state->latest ? plan_step(plan, state->latest) : NULL;
    return step && !step->ticked ? step : NULL;
}

static void hold(struct order_state *state, const struct plan *plan)
{
    size_t ticks = plan->facts->ticks.count;
    assert(state->list.chosen < (int)plan->steps.count);
    snprintf(state->latest, sizeof state->latest, "%s",
             ticks ? plan->facts->ticks.at[ticks - 1].step : "");
    state->held_at = state->list.chosen;
    snprintf(state->held, sizeof state->held, "%s",
             state->held_at < 0 ? "" : plan->steps.at[state->held_at].name);
}

/* Fits the list to the plan, which may be another one by now: the chosen step stays chosen where
 * nothing else was chosen since, but for one whose tick was taken back: that is to be done next. */
static void follow(struct order_state *state, const struct plan *plan)
{
    const struct step *step = taken_back(state, plan);
    if (!step && state->list.chosen == state->held_at)
        step = plan_step(plan, state->held);
    list_view_resize(&state->list, (int)plan->steps.count);
    if (step)
        list_view_choose(&state->list, (int)(step - plan->steps.at));
    move_on(state, plan);
    hold(state, plan);
}

static bool is_running(const struct tui *tui, const struct step *step)
{
    const struct timing *timing = desk_timing(tui->desk, step->name);
    return timing && *timing->began;
}

static void paint_step(struct tui *tui, const struct step *step, int index, int row, bool chosen)
{
    int columns = tui->view.columns;
    int title = columns >= 100 ? 52 : columns >= 80 ? 50 : columns - 18;
    int style = chosen ? VIEW_CHOSEN : step->ticked || step->ready ? VIEW_PLAIN : VIEW_FAINT;
    char mark[24];
    snprintf(mark, sizeof mark, "[%c]%c%3d",
             step->older             ? '!'
             : step->ticked          ? 'x'
             : is_running(tui, step) ? '~'
                                     : ' ',
             step->ready ? '>' : ' ', index + 1);
    view_row(&tui->view, row, 0, columns, style, "");
    view_text(&tui->view, row, 1, 8, style, mark);
    view_text(&tui->view, row, 10, title, style | (step->hold ? VIEW_STRONG : 0), step->title);
    view_text(&tui->view, row, title + 11, 8, style, print_minutes(step->minutes).at);
    view_text(&tui->view, row, title + 20, 9, style,
              step->place == PLACE_SITE ? "room"
              : step_people(step) > 1   ? "two"
                                        : "");
    if (columns >= 100)
        view_text(&tui->view, row, title + 26, columns - title - 27, style, step->because);
    if (chosen)
        view_cursor(&tui->view, row, 1);
}

static void order_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct order_state *state = opaque;
    const struct plan *plan = tui_plan(tui);
    follow(state, plan);
    list_view_fit(&state->list, top, height - 3);
    for (int i = 0; i < list_view_shown(&state->list); i++) {
        int index = state->list.top + i;
        paint_step(tui, &plan->steps.at[index], index, top + i, index == state->list.chosen);
    }
    view_level(&tui->view, top + height - 3, 0, tui->view.columns);
    if (state->list.chosen < 0)
        return;
    const struct step *step = &plan->steps.at[state->list.chosen];
    struct text line;
    text_init(&line);
    if (*step->because)
        text_format(&line, "Now, because %s.", step->because);
    if (*step->unusual)
        text_format(&line, " Not as usual: %s.", step->unusual);
    if (*step->closes)
        text_format(&line, " Closes: %s.", step->closes);
    view_wrapped(&tui->view, top + height - 2, 1, tui->view.columns - 2, 2, VIEW_PLAIN,
                 text_string(&line));
    text_release(&line);
}

static enum reaction order_act(struct tui *tui, void *opaque, enum action action)
{
    struct order_state *state = opaque;
    const struct plan *plan = tui_plan(tui);
    follow(state, plan);
    if (list_view_act(&state->list, action)) {
        hold(state, plan);
        return REACT_TAKEN;
    }
    if (state->list.chosen < 0)
        return REACT_PASS;
    const struct step *step = &plan->steps.at[state->list.chosen];
    if (action == ACTION_TICK) {
        bool before = step->ticked;
        snprintf(state->asked, sizeof state->asked, "%s", before ? "" : step->name);
        tick(tui, step);
        return REACT_TAKEN;
    }
    if (action == ACTION_ENTER) {
        tui_open(tui, &screen_step, &(struct target){ENTITY_none, 0, step->name, NULL});
        return REACT_TAKEN;
    }
    return bench_act(tui, step, action);
}

static struct list_view *order_list(void *opaque)
{
    return &((struct order_state *)opaque)->list;
}

static void order_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct step *step = &tui_plan(tui)->steps.at[index];
    (void)opaque;
    text_format(out, "[%c] %d %s  %s", step->ticked ? 'x' : ' ', index + 1, step->title,
                print_minutes(step->minutes).at);
}

const struct screen screen_order = {
    .name = "order of work",
    .size = sizeof(struct order_state),
    .place = true,
    .open = order_open,
    .paint = order_paint,
    .act = order_act,
    .list = order_list,
    .line = order_line,
    .shown = SHOWS(TICK) | SHOWS(ENTER) | SHOWS(NOW) | SHOWS(SPOIL) | SHOWS(CLOCK) | SHOWS(LEAVE) |
             SHOWS(UNDO) | SHOWS(CLOTH),
    .words = {{ACTION_ENTER, "step"}},
};

/* ---- one step ---- */

struct step_state {
    char name[64];
    struct pager pager;
};

static void step_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct step_state *state = opaque;
    (void)tui;
    snprintf(state->name, sizeof state->name, "%s", target->step);
}

static struct pager *step_pager(void *opaque)
{
    return &((struct step_state *)opaque)->pager;
}

static void step_sheet(struct tui *tui, void *opaque, struct text *out)
{
    const struct step_state *state = opaque;
    const struct step *step = plan_step(tui_plan(tui), state->name);
    if (step)
        sheet_step(out, tui_plan(tui), step);
    else
        text_add(out, "The plan does not have this step any more. Esc goes back.\n");
}

static void step_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct step_state *state = opaque;
    struct text text;
    text_init(&text);
    step_sheet(tui, state, &text);
    pager_paint(&state->pager, &tui->view, top, height, text_string(&text));
    text_release(&text);
}

static void go_beside(struct tui *tui, struct step_state *state, const struct step *step, int by)
{
    const struct plan *plan = tui_plan(tui);
    size_t index = (size_t)(step - plan->steps.at);
    if ((by < 0 && index == 0) || (by > 0 && index + 1 == plan->steps.count))
        return;
    const struct step *other = by < 0 ? step - 1 : step + 1;
    snprintf(state->name, sizeof state->name, "%s", other->name);
    state->pager = (struct pager){.height = state->pager.height};
}

static enum reaction step_act(struct tui *tui, void *opaque, enum action action)
{
    struct step_state *state = opaque;
    const struct step *step = plan_step(tui_plan(tui), state->name);
    if (pager_act(&state->pager, action))
        return REACT_TAKEN;
    if (!step)
        return REACT_PASS;
    switch (action) {
    case ACTION_TICK:
        tick(tui, step);
        return REACT_TAKEN;
    case ACTION_LEFT:
        go_beside(tui, state, step, -1);
        return REACT_TAKEN;
    case ACTION_RIGHT:
    case ACTION_ENTER:
        go_beside(tui, state, step, 1);
        return REACT_TAKEN;
    default:
        return bench_act(tui, step, action);
    }
}

/* Where the work of a kind of step is laid out. */
static const struct {
    int kind; /* enum step_kind_name */
    action_set shown;
} places_of_work[] = {
    {STEP_BUY, SHOWS(BUYING)},  {STEP_SHELF, SHOWS(STOCK)}, {STEP_CUT, SHOWS(CUTTING)},
    {STEP_SHEAR, SHOWS(CLOTH)}, {STEP_CHALK, SHOWS(CLOTH)}, {STEP_SEW, SHOWS(CLOTH)},
    {STEP_DRILL, SHOWS(HOLES)}, {STEP_MAP, SHOWS(HOLES)},   {STEP_ACCOUNT, SHOWS(MONEY)}};

static action_set step_fits(struct tui *tui, void *opaque)
{
    const struct step_state *state = opaque;
    const struct step *step = plan_step(tui_plan(tui), state->name);
    for (size_t i = 0; step && i < sizeof places_of_work / sizeof *places_of_work; i++) {
        if (step->kind == places_of_work[i].kind)
            return places_of_work[i].shown;
    }
    return 0;
}

const struct screen screen_step = {
    .name = "one step",
    .size = sizeof(struct step_state),
    .open = step_open,
    .paint = step_paint,
    .act = step_act,
    .pager = step_pager,
    .sheet = step_sheet,
    .shown = SHOWS(TICK) | SHOWS(ENTER) | SHOWS(CLOCK) | SHOWS(LEAVE),
    .fits = step_fits,
    .words = {{ACTION_ENTER, "next"}},
};
