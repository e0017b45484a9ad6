/*
 * From keys to screens. A key goes to the screen on top while something is typed there; else its
 * action goes to that screen, and what the screen leaves alone is done here: help, undo, the
 * screens that can be reached from everywhere, and leaving.
 */
#include "tui/driver.h"

#include "base/memory.h"
#include "base/show.h"
#include "paper/print.h"
#include "paper/sheets.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

/* ---- the stack ---- */

static struct open_screen *top_of(struct tui *tui)
{
    return &tui->stack[tui->depth - 1];
}

void tui_close_top(struct tui *tui)
{
    struct open_screen *top = top_of(tui);
    memory_release(top->state);
    *top = (struct open_screen){NULL, NULL};
    tui->depth--;
}

void tui_open(struct tui *tui, const struct screen *screen, const struct target *target)
{
    static const struct target nothing = {ENTITY_none, 0, NULL};
    void *state = memory_resize(NULL, screen->size);
    if (!state) {
        tui_say(tui, "there is not enough memory for that screen");
        return;
    }
    memset(state, 0, screen->size);
    if (tui->depth == TUI_DEPTH)
        tui_close_top(tui);
    tui->stack[tui->depth++] = (struct open_screen){screen, state};
    if (screen->open)
        screen->open(tui, state, target ? target : &nothing);
}

void driver_begin(struct tui *tui, struct desk *desk)
{
    memset(tui, 0, sizeof *tui);
    tui->desk = desk;
    view_init(&tui->view);
    arena_init(&tui->scratch);
    tui_open(tui, &screen_builds, NULL);
}

void driver_end(struct tui *tui)
{
    while (tui->depth > 0)
        tui_close_top(tui);
    desk_abandon(tui->desk);
    arena_release(&tui->scratch);
    view_release(&tui->view);
}

/* ---- messages ---- */

void tui_say(struct tui *tui, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(tui->message, sizeof tui->message, format, arguments);
    va_end(arguments);
    tui->message_warns = false;
}

void tui_warn(struct tui *tui, const struct fault_note *note)
{
    fault_print(tui->message, sizeof tui->message, note);
    tui->message_warns = true;
}

/* ---- actions of every screen ---- */

typedef enum fault history_fn(struct desk *desk, char label[STORE_LABEL], struct fault_note *note);

static enum reaction step_history(struct tui *tui, history_fn *step, const char *done)
{
    char label[STORE_LABEL];
    struct fault_note note = {0};
    int64_t build = tui_model(tui)->build.key;
    if (step(tui->desk, label, &note)) {
        tui_warn(tui, &note);
        return REACT_TAKEN;
    }
    tui_say(tui, "%s: %s", done, label);
    if (tui_model(tui)->build.key != build) {
        while (tui->depth > 1)
            tui_close_top(tui);
        if (tui_model(tui)->build.key)
            tui_open(tui, &screen_outline, NULL);
    }
    return REACT_TAKEN;
}

/* Screens that stand on their own are swapped for each other rather than piled up. */
static enum reaction go_to(struct tui *tui, const struct screen *screen)
{
    if (!tui_model(tui)->build.key && screen != &screen_trade && screen != &screen_shop) {
        tui_say(tui, "take up a build first");
        return REACT_TAKEN;
    }
    if (top_of(tui)->screen != screen)
        tui_open(tui, screen, NULL);
    return REACT_TAKEN;
}

static enum reaction common_act(struct tui *tui, enum action action)
{
    const struct target here = {.step = top_of(tui)->screen->name};

    switch (action) {
    case ACTION_QUIT:
        return REACT_QUIT;
    case ACTION_LEAVE:
        return tui->depth > 1 ? REACT_LEAVE : REACT_TAKEN;
    case ACTION_HELP:
        tui_open(tui, &screen_help, &here);
        return REACT_TAKEN;
    case ACTION_UNDO:
        return step_history(tui, desk_undo, "taken back");
    case ACTION_REDO:
        return step_history(tui, desk_redo, "done again");
    case ACTION_STEPS:
        return go_to(tui, &screen_order);
    case ACTION_BUYING:
        return go_to(tui, &screen_buying);
    case ACTION_MONEY:
        return go_to(tui, &screen_money);
    case ACTION_FINDINGS:
        return go_to(tui, &screen_findings);
    case ACTION_TRADE:
        return go_to(tui, &screen_trade);
    case ACTION_SHOP:
        return go_to(tui, &screen_shop);
    default:
        return REACT_PASS;
    }
}

/* ---- keys ---- */

static enum reaction settle(struct tui *tui, enum reaction reaction)
{
    if (reaction & REACT_LEAVE && tui->depth > 1)
        tui_close_top(tui);
    return reaction & REACT_QUIT ? REACT_QUIT : REACT_TAKEN;
}

static bool is_typing(struct tui *tui)
{
    struct open_screen *top = top_of(tui);
    return top->screen->typing && top->screen->typing(tui, top->state);
}

enum reaction driver_key(struct tui *tui, int key)
{
    struct open_screen *top = top_of(tui);
    tui->message[0] = '\0';
    if (is_typing(tui))
        return settle(tui, top->screen->key(tui, top->state, key));
    enum action action = action_of(key);
    enum reaction reaction = REACT_PASS;
    if (action != ACTION_NONE)
        reaction = top->screen->act(tui, top->state, action);
    if (reaction == REACT_PASS && action != ACTION_NONE)
        reaction = common_act(tui, action);
    if (reaction == REACT_PASS && top->screen->key)
        reaction = top->screen->key(tui, top->state, key);
    return settle(tui, reaction);
}

enum reaction driver_paste(struct tui *tui, const char *text)
{
    struct open_screen *top = top_of(tui);
    if (is_typing(tui) && top->screen->paste)
        return settle(tui, top->screen->paste(tui, top->state, text));
    tui_say(tui, "pasted text goes into a field: open one first");
    return REACT_TAKEN;
}

bool driver_idle(struct tui *tui)
{
    bool changed = false;
    struct fault_note note = {0};
    if (is_typing(tui))
        return false;
    if (desk_refresh(tui->desk, &changed, &note)) {
        tui_warn(tui, &note);
        return true;
    }
    if (changed)
        tui_say(tui, "another program changed the workshop: this is how it is now");
    return changed;
}

/* ---- painting ---- */

static void paint_title(struct tui *tui)
{
    struct text title;
    text_init(&title);
    text_format(&title, " %s", tui_model(tui)->workshop.name);
    if (tui_model(tui)->build.key && tui->depth > 1)
        text_format(&title, " > %s", tui_model(tui)->build.name);
    text_format(&title, " > %s", top_of(tui)->screen->name);
    view_row(&tui->view, 0, 0, tui->view.columns, VIEW_STRONG, text_string(&title));
    text_release(&title);
}

static void paint_hints(struct tui *tui, int row)
{
    unsigned long shown = top_of(tui)->screen->shown | SHOWS(HELP) | SHOWS(QUIT);
    int column = 1;
    if (tui->message[0]) {
        view_row(&tui->view, row, 1, tui->view.columns - 1,
                 tui->message_warns ? VIEW_WARNING | VIEW_STRONG : VIEW_STRONG, tui->message);
        return;
    }
    for (int i = 0; i < ACTION_COUNT; i++) {
        if (!(shown & 1ul << i) || column + 12 > tui->view.columns)
            continue;
        column += view_text(&tui->view, row, column, tui->view.columns - column, VIEW_FAINT,
                            actions[i].label);
        column += 2;
    }
}

/* ---- the tally: what the plan comes to, and while something is edited what it would change ----
 */

static void tally_add(struct text *line, int gap, const char *figure, const char *change)
{
    for (int i = 0; i < gap; i++)
        text_add_char(line, ' ');
    text_add(line, figure);
    if (*change)
        text_format(line, " (%s)", change);
}

static void tally_count(struct text *line, int gap, const char *name, int64_t now, int64_t then)
{
    char figure[48];
    char change[24] = "";
    snprintf(figure, sizeof figure, "%lld %s", (long long)then, name);
    if (then != now)
        snprintf(change, sizeof change, "%+lld", (long long)(then - now));
    tally_add(line, gap, figure, change);
}

/* "cost 412.60 (+18.40)" */
static void tally_cost(struct text *line, const struct plan *now, const struct plan *then)
{
    char figure[MONEY_TEXT + 8];
    char change[MONEY_TEXT + 1] = "";
    int64_t more = then->tally.cost - now->tally.cost;
    snprintf(figure, sizeof figure, "cost %s", print_money(then, then->tally.cost).at);
    if (more)
        snprintf(change, sizeof change, "%s%s", more > 0 ? "+" : "", print_money(then, more).at);
    tally_add(line, 1, figure, change);
}

static void tally_line(struct text *line, int gap, const struct plan *now, const struct plan *then)
{
    bool same_cloth = then->tally.cloth == now->tally.cloth;
    tally_cost(line, now, then);
    tally_count(line, gap, "sticks", now->tally.sticks, then->tally.sticks);
    tally_count(line, gap, "sheets", now->tally.sheets, then->tally.sheets);
    tally_add(line, gap, print_roll(then, then->tally.cloth).at,
              same_cloth ? "" : print_roll(now, now->tally.cloth).at);
    tally_count(line, gap, "staples", now->tally.staples, then->tally.staples);
    tally_count(line, gap, "screws", now->tally.screws, then->tally.screws);
    tally_add(line, gap, print_minutes(then->tally.minutes).at, "");
    if (then->tally.stops || now->tally.stops)
        tally_count(line, gap, "stop", now->tally.stops, then->tally.stops);
    tally_count(line, gap, "warn", now->tally.warns, then->tally.warns);
}

static void paint_tally(struct tui *tui, int row)
{
    const struct plan *now = tui_plan(tui);
    const struct plan *then = tui->preview ? tui->preview : now;
    struct text line;
    if (!tui_model(tui)->build.key)
        return;
    text_init(&line);
    tally_line(&line, tui->view.columns >= 100 ? 3 : 1, now, then);
    view_row(&tui->view, row, 0, tui->view.columns, then->tally.stops ? VIEW_STRONG : VIEW_PLAIN,
             text_string(&line));
    text_release(&line);
}

void driver_paint(struct tui *tui, int rows, int columns)
{
    struct open_screen *top = top_of(tui);
    view_begin(&tui->view, rows, columns);
    if (tui->view.failed)
        return;
    if (rows < VIEW_LEAST_ROWS || columns < VIEW_LEAST_COLUMNS) {
        view_text(&tui->view, 0, 0, columns, VIEW_PLAIN, "stuffover needs 60 columns, 18 rows");
        return;
    }
    paint_title(tui);
    view_cursor(&tui->view, 0, 0);
    top->screen->paint(tui, top->state, 1, rows - 3);
    paint_hints(tui, rows - 2);
    paint_tally(tui, rows - 1);
    arena_release(&tui->scratch);
}
