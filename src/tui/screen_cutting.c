/*
 * What is cut from which stick, sheet and roll: a list of them, and below it the chosen one with
 * its picture, the marks and the cuts, through which Left and Right leaf. At the bottom, how far
 * the search for less waste is; the one that was asked for is stopped with Esc.
 */
#include "base/show.h"
#include "paper/print.h"
#include "paper/sheets.h"
#include "tui/list.h"
#include "tui/pager.h"
#include "tui/screen.h"

#include <string.h>

#define PICTURE_INDENT 7 /* on the sheet, and its ends */

struct cutting_state {
    struct list_view list;
    struct pager pager;
    char told[SEARCH_TEXT]; /* how far the search was when it was painted */
};

/* A line of the list: a blank of a job. */
struct chosen_blank {
    const struct plan_job *job;
    size_t blank;
};

static int count_blanks(const struct plan *plan)
{
    size_t count = 0;
    for (size_t i = 0; i < plan->jobs.count; i++)
        count += plan->jobs.at[i].layout->blanks.count;
    return (int)count;
}

/* False where the list is shorter. */
static bool blank_at(const struct plan *plan, int index, struct chosen_blank *ret_blank)
{
    size_t left = index < 0 ? SIZE_MAX : (size_t)index;
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        if (left < job->layout->blanks.count) {
            *ret_blank = (struct chosen_blank){job, left};
            return true;
        }
        left -= job->layout->blanks.count;
    }
    return false;
}

/* "2x3 stud  3 of 10: 3 parts, 2-3/4 in left: C-R1 C-R2 L-U1" */
static void cutting_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct plan *plan = tui_plan(tui);
    struct chosen_blank chosen;
    (void)opaque;
    if (!blank_at(plan, index, &chosen))
        return;
    const struct cut_blank *blank = &chosen.job->layout->blanks.at[chosen.blank];
    text_format(out, "%s  %s%zu of %zu: %zu %s", plan_stock_name(plan, chosen.job->stock),
                chosen.job->again ? "missing "
                : chosen.job->cut ? "cut "
                                  : "",
                chosen.blank + 1, chosen.job->layout->blanks.count, blank->count,
                blank->count == 1 ? "part" : "parts");
    if (blank->rest > 0)
        text_format(out, ", %s left", print_length_unit(plan, blank->rest).at);
    for (size_t i = 0; i < blank->count; i++) {
        const struct cut_place *place = &chosen.job->layout->places.at[blank->first + i];
        text_add(out, i ? " " : ": ");
        show_text(out, plan->parts.at[chosen.job->first_part + place->part].label);
    }
}

static void paint_line(struct tui *tui, struct cutting_state *state, int index, int row)
{
    bool chosen = index == state->list.chosen;
    struct text line;
    text_init(&line);
    cutting_line(tui, state, index, &line);
    view_row(&tui->view, row, 1, tui->view.columns - 1, chosen ? VIEW_CHOSEN : VIEW_PLAIN,
             text_string(&line));
    if (chosen)
        view_cursor(&tui->view, row, 1);
    text_release(&line);
}

static void paint_blank(struct tui *tui, struct cutting_state *state, int top, int height)
{
    struct chosen_blank chosen;
    struct text text;
    if (!blank_at(tui_plan(tui), state->list.chosen, &chosen))
        return;
    struct cut_sheet sheet = sheet_of_job(tui_plan(tui), chosen.job);
    sheet.columns = tui->view.columns - PICTURE_INDENT;
    text_init(&text);
    sheet_blank(&text, &sheet, chosen.blank);
    const char *words = text_string(&text);
    pager_paint(&state->pager, &tui->view, top, height, *words == '\n' ? words + 1 : words);
    text_release(&text);
}

/* How far the search is, and what can be done about it. */
static void paint_search(struct tui *tui, struct cutting_state *state, int row)
{
    const struct desk_search search = desk_search_state(tui->desk);
    struct chosen_blank chosen;
    bool there = blank_at(tui_plan(tui), state->list.chosen, &chosen);
    if (there && chosen.job->cut) {
        view_text(&tui->view, row, 1, tui->view.columns - 2, VIEW_FAINT, "as it was cut");
        return;
    }
    if (there && chosen.job->taken) {
        view_format(&tui->view, row, 1, VIEW_FAINT, "as it was taken; %s gives it back",
                    tui_key(tui, ACTION_TICK).at);
        return;
    }
    if (tui_search_text(tui, state->told)) {
        int taken = view_text(&tui->view, row, 1, tui->view.columns - 2, VIEW_STRONG, state->told);
        if (search.longer)
            view_format(&tui->view, row, 1 + taken, VIEW_PLAIN, "; %s stops it",
                        tui_key(tui, ACTION_LEAVE).at);
    } else if (search.more) {
        view_format(&tui->view, row, 1, VIEW_FAINT, "searched; %s looks ten times longer",
                    tui_key(tui, ACTION_ENTER).at);
    } else {
        view_text(&tui->view, row, 1, tui->view.columns - 2, VIEW_FAINT,
                  "searched to the end: no better cutting is to be found");
    }
}

/* A third of the screen for the list, where it is as long. */
static int list_rows(const struct list_view *list, int height)
{
    return list->count < height / 3 ? list->count : height / 3;
}

static void cutting_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct cutting_state *state = opaque;
    list_view_resize(&state->list, count_blanks(tui_plan(tui)));
    if (state->list.count == 0) {
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "Nothing has to be cut yet. Esc goes back.");
        return;
    }
    int rows = list_rows(&state->list, height);
    list_view_fit(&state->list, top, rows);
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_line(tui, state, state->list.top + i, top + i);
    view_level(&tui->view, top + rows, 0, tui->view.columns);
    paint_blank(tui, state, top + rows + 1, height - rows - 2);
    paint_search(tui, state, top + height - 1);
}

static enum reaction cutting_idle(struct tui *tui, void *opaque)
{
    const struct cutting_state *state = opaque;
    char text[SEARCH_TEXT];
    tui_search_text(tui, text);
    return strcmp(text, state->told) == 0 ? REACT_PASS : REACT_TAKEN;
}

static enum reaction search_longer(struct tui *tui)
{
    if (!desk_search_longer(tui->desk))
        tui_say(tui, "there is nothing more to look for");
    return REACT_TAKEN;
}

static enum reaction stop_search(struct tui *tui)
{
    struct fault_note note = {0};
    if (!desk_search_state(tui->desk).longer)
        return REACT_PASS;
    if (desk_search_stop(tui->desk, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "stopped; what was found by then is in the plan");
    return REACT_TAKEN;
}

/* Makes all layouts facts; where they are, gives them back. */
static enum reaction take_layouts(struct tui *tui)
{
    const struct plan *plan = tui_plan(tui);
    struct fault_note note = {0};
    bool back = plan->jobs.count > 0;
    for (size_t i = 0; i < plan->jobs.count; i++)
        back = back && (plan->jobs.at[i].taken || plan->jobs.at[i].layout->blanks.count == 0);
    if ((back ? desk_leave_layouts : desk_take_layouts)(tui->desk, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, back ? "given back: they are laid out anew when something changes"
                          : "taken: so it is cut, as long as its parts stay the same");
    return REACT_TAKEN;
}

static enum reaction cutting_act(struct tui *tui, void *opaque, enum action action)
{
    struct cutting_state *state = opaque;
    list_view_resize(&state->list, count_blanks(tui_plan(tui)));
    if (list_view_act(&state->list, action)) {
        state->pager.top = 0;
        return REACT_TAKEN;
    }
    if (action == ACTION_LEFT || action == ACTION_RIGHT) {
        pager_act(&state->pager, action == ACTION_LEFT ? ACTION_LEAF_UP : ACTION_LEAF_DOWN);
        return REACT_TAKEN;
    }
    if (action == ACTION_ENTER && state->list.count > 0)
        return search_longer(tui);
    if (action == ACTION_TICK && state->list.count > 0)
        return take_layouts(tui);
    return action == ACTION_LEAVE ? stop_search(tui) : REACT_PASS;
}

static struct list_view *cutting_list(void *opaque)
{
    return &((struct cutting_state *)opaque)->list;
}

const struct screen screen_cutting = {
    .name = "cutting",
    .size = sizeof(struct cutting_state),
    .place = true,
    .paint = cutting_paint,
    .act = cutting_act,
    .idle = cutting_idle,
    .list = cutting_list,
    .line = cutting_line,
    .words = {{ACTION_ENTER, "search longer"}, {ACTION_TICK, "take it"}},
    .shown = SHOWS(ENTER) | SHOWS(LEAVE) | SHOWS(TICK) | SHOWS(FIND) | SHOWS(BUYING) | SHOWS(STEPS),
};
