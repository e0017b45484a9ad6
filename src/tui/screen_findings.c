/*
 * What is wrong or worth knowing. Enter goes to the thing that a finding is about. Below the list
 * the chosen one stands in full, with its story and the ways out; Right takes up a way out, and
 * while one is taken up the bottom line shows what it would change: Enter then takes it.
 */
#include "plan/findings.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <assert.h>
#include <stdio.h>

struct findings_state {
    struct list_view list;
    size_t cure;               /* taken up, counted from 1; 0: none */
    struct fault_note refusal; /* why it cannot be taken */
};

static const struct plan *findings_plan(const struct tui *tui)
{
    return desk_told_plan(tui->desk);
}

static const struct finding *chosen_finding(const struct tui *tui,
                                            const struct findings_state *state)
{
    const struct plan *plan = findings_plan(tui);
    int chosen = state->list.chosen;
    return chosen >= 0 && (size_t)chosen < plan->findings.count ? &plan->findings.at[chosen] : NULL;
}

/* ---- painting ---- */

static void paint_finding(struct tui *tui, const struct finding *finding, int row, bool chosen)
{
    enum severity severity = plan_finding_severity(finding);
    int style = chosen ? VIEW_CHOSEN : severity == SEVERITY_STOP ? VIEW_WARNING : VIEW_PLAIN;
    struct text sentence;
    text_init(&sentence);
    plan_finding_text(findings_plan(tui), finding, &sentence);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, 5, style | VIEW_STRONG, plan_finding_word(finding));
    view_text(&tui->view, row, 7, tui->view.columns - 8, style, text_string(&sentence));
    if (chosen)
        view_cursor(&tui->view, row, 1);
    text_release(&sentence);
}

/* Paints text at a row, as many rows as are left; the row after it. */
static int paint_words(struct tui *tui, int row, int end, int style, const char *words)
{
    if (row >= end)
        return row;
    return row + view_wrapped(&tui->view, row, 1, tui->view.columns - 2, end - row, style, words);
}

static int paint_cures(struct tui *tui, const struct findings_state *state,
                       const struct finding *finding, int row, int end)
{
    for (size_t i = 0; i < finding->cure_count; i++) {
        bool taken_up = state->cure == i + 1;
        struct text line;
        text_init(&line);
        text_format(&line, "%c %zu  %s", taken_up ? '>' : ' ', i + 1, finding->cures[i].text);
        if (taken_up && state->refusal.code) {
            char why[256];
            fault_print(why, sizeof why, &state->refusal);
            text_format(&line, ": %s", why);
        }
        row = paint_words(tui, row, end, taken_up ? VIEW_CHOSEN : VIEW_PLAIN, text_string(&line));
        text_release(&line);
    }
    return row;
}

/* The chosen one in full: a line may be longer than the screen is wide. */
static void paint_whole(struct tui *tui, const struct findings_state *state,
                        const struct finding *finding, int row, int end)
{
    struct text sentence;
    text_init(&sentence);
    plan_finding_text(findings_plan(tui), finding, &sentence);
    row = paint_words(tui, row, end, VIEW_STRONG, text_string(&sentence));
    text_release(&sentence);
    for (size_t i = 0; i < finding->story_count; i++)
        row = paint_words(tui, row, end, VIEW_PLAIN, finding->story[i]);
    if (finding->cure_count)
        row = paint_words(tui, row, end, VIEW_FAINT, "Ways out (Right takes one up):");
    paint_cures(tui, state, finding, row, end);
}

/* Rows for the chosen finding: two for its sentence, more for a story and cures, of which the list
 * leaves at most all but five. */
static int rows_below(const struct finding *finding, int height)
{
    size_t lines = 2;
    if (finding && (finding->story_count || finding->cure_count))
        lines += 2 * finding->story_count + finding->cure_count + 2;
    int most = height - 6 > 2 ? height - 6 : 2;
    return lines > (size_t)most ? most : (int)lines;
}

static void findings_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct findings_state *state = opaque;
    const struct plan *plan = findings_plan(tui);
    list_view_resize(&state->list, (int)plan->findings.count);
    const struct finding *finding = chosen_finding(tui, state);
    int below = rows_below(finding, height);
    list_view_fit(&state->list, top, height - below - 1);
    for (int i = 0; i < list_view_shown(&state->list); i++) {
        int index = state->list.top + i;
        paint_finding(tui, &plan->findings.at[index], top + i, index == state->list.chosen);
    }
    view_level(&tui->view, top + height - below - 1, 0, tui->view.columns);
    if (finding)
        paint_whole(tui, state, finding, top + height - below, top + height);
    else
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "Nothing is wrong that the program can see.");
}

/* ---- cures ---- */

static void put_cure_down(struct tui *tui, struct findings_state *state)
{
    state->cure = 0;
    state->refusal = (struct fault_note){.code = FAULT_NONE};
    tui->preview = NULL;
    desk_abandon(tui->desk);
}

/* Takes a cure up: the draft with its edits, and that draft's plan for the tally. */
static void take_up(struct tui *tui, struct findings_state *state, size_t cure)
{
    const struct finding *finding = chosen_finding(tui, state);
    put_cure_down(tui, state);
    if (!finding || cure == 0 || cure > finding->cure_count)
        return;
    state->cure = cure;
    struct desk_cure change = {&finding->cures[cure - 1]};
    if (!desk_change(tui->desk, desk_cure_change, &change, &state->refusal))
        (void)desk_preview(tui->desk, &tui->preview, &state->refusal);
}

static void take(struct tui *tui, struct findings_state *state)
{
    const struct finding *finding = chosen_finding(tui, state);
    size_t index = (size_t)state->list.chosen;
    size_t cure = state->cure;
    struct fault_note note = {0};
    char text[200];
    assert(finding && cure > 0 && cure <= finding->cure_count);
    snprintf(text, sizeof text, "%s", finding->cures[cure - 1].text);
    put_cure_down(tui, state);
    if (desk_cure(tui->desk, index, cure - 1, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "done: %s; %s takes it back", text, tui_key(tui, ACTION_UNDO).at);
}

/* While a cure is taken up its keys come first. */
static bool findings_typing(struct tui *tui, void *opaque)
{
    const struct findings_state *state = opaque;
    (void)tui;
    return state->cure > 0;
}

static enum reaction findings_key(struct tui *tui, void *opaque, int key)
{
    struct findings_state *state = opaque;
    const struct finding *finding = chosen_finding(tui, state);
    if (!finding || state->cure == 0)
        return REACT_PASS;
    switch (key) {
    case KEY_ARROW_RIGHT:
    case KEY_TAB:
        take_up(tui, state, state->cure < finding->cure_count ? state->cure + 1 : state->cure);
        return REACT_TAKEN;
    case KEY_ARROW_LEFT:
    case KEY_BACK_TAB:
        take_up(tui, state, state->cure - 1);
        return REACT_TAKEN;
    case KEY_RETURN:
        take(tui, state);
        return REACT_TAKEN;
    default:
        put_cure_down(tui, state);
        return REACT_TAKEN;
    }
}

/* ---- acting ---- */

/* A price is typed among the prices, not in the form of what it is the price of. */
static void go_to_place(struct tui *tui, const struct finding *finding)
{
    if (finding->kind == FINDING_NO_PRICE && finding->entity == ENTITY_stock && finding->key)
        tui_open(tui, &screen_stock, &(struct target){ENTITY_stock, finding->key, NULL, NULL});
    else if (finding->entity == ENTITY_build || finding->entity == ENTITY_workshop ||
             (finding->entity < ENTITY_COUNT &&
              model_find_const(tui_model(tui), finding->entity, finding->key)))
        tui_open(tui, &screen_form, &(struct target){finding->entity, finding->key, NULL, NULL});
}

static enum reaction findings_act(struct tui *tui, void *opaque, enum action action)
{
    struct findings_state *state = opaque;
    list_view_resize(&state->list, (int)findings_plan(tui)->findings.count);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    const struct finding *finding = chosen_finding(tui, state);
    if (!finding)
        return REACT_PASS;
    switch (action) {
    case ACTION_RIGHT:
        if (finding->cure_count)
            take_up(tui, state, 1);
        else
            tui_say(tui, "no way out is known for this one: Enter goes to it");
        return REACT_TAKEN;
    case ACTION_HOLES:
        if (finding->entity != ENTITY_join && finding->entity != ENTITY_point)
            return REACT_PASS;
        tui_open(tui, &screen_point, &(struct target){finding->entity, finding->key, NULL, NULL});
        return REACT_TAKEN;
    case ACTION_ENTER:
        go_to_place(tui, finding);
        return REACT_TAKEN;
    default:
        return REACT_PASS;
    }
}

/* Ways out are offered where there are some. */
static action_set findings_fits(struct tui *tui, void *opaque)
{
    const struct finding *finding = chosen_finding(tui, opaque);
    return finding && finding->cure_count ? SHOWS(RIGHT) : 0;
}

static struct list_view *findings_list(void *opaque)
{
    return &((struct findings_state *)opaque)->list;
}

static void findings_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    (void)opaque;
    plan_finding_text(findings_plan(tui), &findings_plan(tui)->findings.at[index], out);
}

const struct screen screen_findings = {
    .name = "findings",
    .size = sizeof(struct findings_state),
    .place = true,
    .paint = findings_paint,
    .act = findings_act,
    .typing = findings_typing,
    .key = findings_key,
    .fits = findings_fits,
    .list = findings_list,
    .line = findings_line,
    .shown = SHOWS(ENTER) | SHOWS(LEAVE) | SHOWS(HOLES) | SHOWS(CARE),
    .words = {{ACTION_ENTER, "go there"}, {ACTION_RIGHT, "ways out"}},
    .typing_hint = "Enter take it  Right, Left other ways out  Esc leave it",
};
