/* All builds: where the program begins. */
#include "paper/print.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>

#define WIDE 100 /* columns from which bar and due date have room */

struct builds_state {
    struct list_view list;
    int told;      /* line that more is said of below: the chosen one, once keys pause */
    int64_t asked; /* build whose deletion waits for Enter; 0: none */
};

static const struct store_build *builds_of(struct tui *tui, struct builds_state *state,
                                           size_t *ret_count)
{
    const struct store_build *builds = NULL;
    struct fault_note note = {0};
    *ret_count = 0;
    if (desk_builds(tui->desk, &builds, ret_count, &note))
        tui_warn(tui, &note);
    list_view_resize(&state->list, (int)*ret_count);
    return builds;
}

/* A bar of ten: steps done of those there are. */
static void progress_text(const struct store_summary *summary, char bar[12])
{
    int64_t done = summary->steps_total ? 10 * summary->steps_done / summary->steps_total : 0;
    for (int i = 0; i < 10; i++)
        bar[i] = i < done ? '#' : '-';
    bar[10] = ' ';
    bar[11] = '\0';
}

/* What is missing, where something is; else the next step. */
static void paint_rest(struct tui *tui, const struct store_summary *summary, int row, int column,
                       int style)
{
    bool misses = *summary->missing;
    if (misses)
        view_text(&tui->view, row, column, 1, style | VIEW_STRONG, "!");
    view_text(&tui->view, row, column + 2, tui->view.columns - column - 3, style,
              misses ? summary->missing : summary->next_step);
}

static void paint_build(struct tui *tui, const struct store_build *build, int row, bool chosen)
{
    const struct plan *plan = tui_plan(tui);
    const struct store_summary *summary = &build->summary;
    int columns = tui->view.columns;
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    bool wide = columns >= WIDE;
    char bar[12];
    char line[100];

    progress_text(summary, bar);
    snprintf(line, sizeof line, "%s%3lld/%-3lld %9s %9s", wide ? bar : "",
             (long long)summary->steps_done, (long long)summary->steps_total,
             print_money(plan, summary->estimate).at, print_money(plan, build->spend).at);
    view_row(&tui->view, row, 0, columns, style, "");
    view_text(&tui->view, row, 0, 1, style, tui_is_marked(tui, build->key) ? "*" : " ");
    view_text(&tui->view, row, 1, 21, style | VIEW_STRONG, build->name);
    view_text(&tui->view, row, 23, 8, style, words_state.at[build->state].name);
    view_text(&tui->view, row, 32, columns - 33, style, line);
    if (wide)
        view_text(&tui->view, row, 72, 10, style, build->due);
    paint_rest(tui, summary, row, wide ? 83 : 60, style);
    if (chosen)
        view_cursor(&tui->view, row, 1);
}

/* What the line of a build has no room for. */
static void paint_more(struct tui *tui, const struct store_build *build, int row)
{
    const struct plan *plan = tui_plan(tui);
    const struct store_summary *summary = &build->summary;
    struct text text;
    text_init(&text);
    if (*summary->next_step)
        text_format(&text, "next: %s  ", summary->next_step);
    if (*build->due)
        text_format(&text, "due %s  ", build->due);
    if (build->budget)
        text_format(&text, "budget %s", print_money(plan, build->budget).at);
    if (build->budget && summary->estimate > build->budget)
        text_format(&text, ", over it by %s",
                    print_money(plan, summary->estimate - build->budget).at);
    view_level(&tui->view, row, 0, tui->view.columns);
    view_text(&tui->view, row + 1, 1, tui->view.columns - 2, VIEW_PLAIN, text_string(&text));
    if (*summary->missing)
        view_format(&tui->view, row + 2, 1, VIEW_PLAIN, "missing: %s", summary->missing);
    text_release(&text);
}

static void builds_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct builds_state *state = opaque;
    size_t count;
    const struct store_build *builds = builds_of(tui, state, &count);
    list_view_fit(&state->list, top + 1, height - 4);
    view_text(&tui->view, top, 1, 21, VIEW_FAINT, "build");
    view_text(&tui->view, top, 23, 8, VIEW_FAINT, "state");
    view_text(&tui->view, top, 32, tui->view.columns - 33, VIEW_FAINT,
              tui->view.columns >= WIDE
                  ? "          steps    estimate     spend  due         next step, ! missing"
                  : " steps   estimate     spend  next, ! missing");
    for (int i = 0; i < list_view_shown(&state->list); i++) {
        int index = state->list.top + i;
        paint_build(tui, &builds[index], top + 1 + i, index == state->list.chosen);
    }
    if (state->told < 0 || state->told >= (int)count)
        state->told = state->list.chosen;
    if (count > 0)
        paint_more(tui, &builds[state->told], top + height - 3);
    else
        view_format(&tui->view, top + 2, 1, VIEW_PLAIN,
                    "There is no build yet. Press %s to begin one from a starter piece.",
                    tui_key(tui, ACTION_ADD).at);
}

static enum reaction take_up(struct tui *tui, int64_t build)
{
    struct fault_note note = {0};
    if (desk_take_up(tui->desk, build, &note))
        tui_warn(tui, &note);
    else
        tui_open(tui, &screen_outline, NULL);
    return REACT_TAKEN;
}

static enum reaction delete_build(struct tui *tui, const struct store_build *build)
{
    struct fault_note note = {0};
    char name[64];
    snprintf(name, sizeof name, "%s", build->name);
    if (desk_delete_build(tui->desk, build->key, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "%s is deleted; %s brings it back", name, tui_key(tui, ACTION_UNDO).at);
    return REACT_TAKEN;
}

/* What is of one build, and done from the list to the chosen one. */
static const action_set of_build = SHOWS(STEPS) | SHOWS(BUYING) | SHOWS(CUTTING) | SHOWS(CLOTH) |
                                   SHOWS(MONEY) | SHOWS(FINDINGS) | SHOWS(HOLES) | SHOWS(PAPERS) |
                                   SHOWS(CARE);
static const action_set of_line =
    SHOWS(ENTER) | SHOWS(TICK) | SHOWS(REMOVE) | SHOWS(TROLLEY) | SHOWS(COMPARE);

static bool is_in(action_set set, enum action action)
{
    return action < ACTION_COUNT && set >> action & 1;
}

static enum reaction act_on_none(struct tui *tui, enum action action)
{
    if (!is_in(of_build | of_line, action))
        return REACT_PASS;
    tui_say(tui, "there is no build yet: %s begins one", tui_key(tui, ACTION_ADD).at);
    return REACT_TAKEN;
}

static action_set builds_fit(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((const struct builds_state *)opaque)->list.count > 0 ? of_line : 0;
}

/* What is done to the chosen build. `sure` says that Enter was asked for and deletes. */
static enum reaction act_on_build(struct tui *tui, struct builds_state *state,
                                  const struct store_build *build, enum action action, bool sure)
{
    const struct target target = {ENTITY_build, build->key, NULL, NULL};
    switch (action) {
    case ACTION_ENTER:
        return sure ? delete_build(tui, build) : take_up(tui, build->key);
    case ACTION_COMPARE:
        tui_open(tui, &screen_compare, &target);
        return REACT_TAKEN;
    case ACTION_TROLLEY:
        tui_open(tui, &screen_trip, NULL);
        return REACT_TAKEN;
    case ACTION_TICK:
        tui_mark(tui, build->key);
        list_view_act(&state->list, ACTION_DOWN);
        return REACT_TAKEN;
    case ACTION_REMOVE:
        state->asked = build->key;
        tui_say(tui, "%.30s: Enter deletes it with ticks and spend, another key keeps it",
                build->name);
        return REACT_TAKEN;
    default:
        if (!is_in(of_build, action))
            return REACT_PASS;
        take_up(tui, build->key);
        return tui_model(tui)->build.key ? REACT_PASS : REACT_TAKEN; /* on to its screen */
    }
}

static enum reaction builds_act(struct tui *tui, void *opaque, enum action action)
{
    struct builds_state *state = opaque;
    size_t count;
    const struct store_build *builds = builds_of(tui, state, &count);
    const struct store_build *chosen = state->list.chosen >= 0 ? &builds[state->list.chosen] : NULL;
    bool asked = chosen && chosen->key == state->asked;

    state->asked = 0;
    if (asked && action != ACTION_ENTER) {
        tui_say(tui, "kept as it was");
        return REACT_TAKEN;
    }
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_ADD) {
        tui_open(tui, &screen_new, NULL);
        return REACT_TAKEN;
    }
    return chosen ? act_on_build(tui, state, chosen, action, asked) : act_on_none(tui, action);
}

/* Who goes through the lines does not wait for what is said of those in between. */
static enum reaction builds_idle(struct tui *tui, void *opaque)
{
    struct builds_state *state = opaque;
    (void)tui;
    if (state->told == state->list.chosen)
        return REACT_PASS;
    state->told = state->list.chosen;
    return REACT_TAKEN;
}

static struct list_view *builds_list(void *opaque)
{
    return &((struct builds_state *)opaque)->list;
}

static void builds_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    size_t count;
    const struct store_build *builds = builds_of(tui, opaque, &count);
    if ((size_t)index < count)
        text_format(out, "%s  %s  %lld/%lld  %s  %s  %s  %s", builds[index].name,
                    words_state.at[builds[index].state].name,
                    (long long)builds[index].summary.steps_done,
                    (long long)builds[index].summary.steps_total,
                    print_money(tui_plan(tui), builds[index].summary.estimate).at,
                    print_money(tui_plan(tui), builds[index].spend).at,
                    builds[index].summary.next_step, builds[index].summary.missing);
}

const struct screen screen_builds = {
    .name = "all builds",
    .size = sizeof(struct builds_state),
    .paint = builds_paint,
    .act = builds_act,
    .idle = builds_idle,
    .list = builds_list,
    .line = builds_line,
    .words = {{ACTION_TICK, "mark"}},
    .shown = SHOWS(ADD) | SHOWS(ACCOUNT) | SHOWS(STOCK) | SHOWS(SHOP) | SHOWS(UNDO) | SHOWS(REDO),
    .fits = builds_fit,
};
