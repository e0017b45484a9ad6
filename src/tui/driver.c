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
#include "tui/find.h"

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
    if (top->screen->close)
        top->screen->close(top->state);
    memory_release(top->state);
    *top = (struct open_screen){NULL, NULL};
    tui->depth--;
}

void tui_open(struct tui *tui, const struct screen *screen, const struct target *target)
{
    static const struct target nothing = {ENTITY_none, 0, NULL, NULL};
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
    case ACTION_FIND:
        find_open(tui);
        return REACT_TAKEN;
    case ACTION_UNDO:
        return step_history(tui, desk_undo, "taken back");
    case ACTION_REDO:
        return step_history(tui, desk_redo, "done again");
    case ACTION_STEPS:
        return go_to(tui, &screen_order);
    case ACTION_BUYING:
        return go_to(tui, &screen_buying);
    case ACTION_CUTTING:
        return go_to(tui, &screen_cutting);
    case ACTION_PAPERS:
        return go_to(tui, &screen_papers);
    case ACTION_CLOTH:
        return go_to(tui, &screen_cloth);
    case ACTION_MONEY:
        return go_to(tui, &screen_money);
    case ACTION_FINDINGS:
        return go_to(tui, &screen_findings);
    case ACTION_HOLES:
        return go_to(tui, &screen_map);
    case ACTION_TRADE:
        return go_to(tui, &screen_trade);
    case ACTION_SHOP:
        return go_to(tui, &screen_shop);
    default:
        return REACT_PASS;
    }
}

/* ---- keys ---- */

/* Back at the list of builds none is in hand: what is changed there is the workshop's. */
static void put_down(struct tui *tui)
{
    struct fault_note note = {0};
    if (tui_model(tui)->build.key && desk_take_up(tui->desk, 0, &note))
        tui_warn(tui, &note);
}

static enum reaction settle(struct tui *tui, enum reaction reaction)
{
    if (reaction & REACT_LEAVE && tui->depth > 1) {
        tui_close_top(tui);
        if (tui->depth == 1)
            put_down(tui);
    }
    return reaction & REACT_QUIT ? REACT_QUIT : REACT_TAKEN;
}

static bool is_typing(struct tui *tui)
{
    struct open_screen *top = top_of(tui);
    return tui->find.open || (top->screen->typing && top->screen->typing(tui, top->state));
}

static enum reaction type_key(struct tui *tui, int key)
{
    struct open_screen *top = top_of(tui);
    if (!tui->find.open)
        return top->screen->key(tui, top->state, key);
    find_key(tui, key);
    return REACT_TAKEN;
}

enum reaction tui_act(struct tui *tui, enum action action)
{
    struct open_screen *top = top_of(tui);
    enum reaction reaction = top->screen->act(tui, top->state, action);
    return reaction == REACT_PASS ? common_act(tui, action) : reaction;
}

enum reaction driver_key(struct tui *tui, int key)
{
    struct open_screen *top = top_of(tui);
    tui->message[0] = '\0';
    if (is_typing(tui))
        return settle(tui, type_key(tui, key));
    enum action action = action_of(key);
    enum reaction reaction = action == ACTION_NONE ? REACT_PASS : tui_act(tui, action);
    if (reaction == REACT_PASS && top->screen->key)
        reaction = top->screen->key(tui, top->state, key);
    return settle(tui, reaction);
}

enum reaction driver_paste(struct tui *tui, const char *text)
{
    struct open_screen *top = top_of(tui);
    if (tui->find.open) {
        find_paste(tui, text);
        return REACT_TAKEN;
    }
    if (is_typing(tui) && top->screen->paste)
        return settle(tui, top->screen->paste(tui, top->state, text));
    tui_say(tui, "pasted text goes into a field: open one first");
    return REACT_TAKEN;
}

bool driver_idle(struct tui *tui)
{
    bool changed = false;
    struct fault_note note = {0};
    unsigned serial;
    tui->searching = false;
    if (is_typing(tui))
        return false;
    if (desk_refresh(tui->desk, &changed, &note)) {
        tui_warn(tui, &note);
        return true;
    }
    if (changed)
        tui_say(tui, "another program changed the workshop: this is how it is now");
    serial = desk_serial(tui->desk);
    tui->searching = desk_improve(tui->desk, CUT_SLICE);
    return changed || desk_serial(tui->desk) != serial;
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
    const struct screen *screen = top_of(tui)->screen;
    unsigned long fits = screen->fits ? screen->fits(tui, top_of(tui)->state) : 0;
    unsigned long shown = screen->shown | fits | SHOWS(HELP) | SHOWS(QUIT);
    int column = 1;
    if (tui->find.open) {
        find_paint(tui, row);
        return;
    }
    if (tui->message[0]) {
        view_row(&tui->view, row, 1, tui->view.columns - 1,
                 tui->message_warns ? VIEW_WARNING | VIEW_STRONG : VIEW_STRONG, tui->message);
        return;
    }
    if (is_typing(tui)) {
        view_text(&tui->view, row, 1, tui->view.columns - 1, VIEW_FAINT, screen->typing_hint);
        return;
    }
    for (int i = 0; i < ACTION_COUNT; i++) {
        const char *label = actions[i].label;
        if (i == ACTION_ENTER && screen->enter_hint)
            label = screen->enter_hint;
        if (!(shown & 1ul << i) || column + text_columns(label) > tui->view.columns)
            continue;
        column += view_text(&tui->view, row, column, tui->view.columns - column, VIEW_FAINT, label);
        column += 2;
    }
}

/* ---- the tally ---- */

/* What the plan comes to, figure by figure, and while something is edited what it would change. */
struct figure {
    char text[96];
    bool changes;
};

enum { FIGURES_MOST = 9 };

struct tally_line {
    struct figure figures[FIGURES_MOST];
    int count;
};

static void add_figure(struct tally_line *line, const char *figure, const char *change)
{
    struct figure *last = &line->figures[line->count++];
    last->changes = *change;
    if (last->changes)
        snprintf(last->text, sizeof last->text, "%s (%s)", figure, change);
    else
        snprintf(last->text, sizeof last->text, "%s", figure);
}

static void add_count(struct tally_line *line, const char *name, int64_t now, int64_t then)
{
    char figure[48];
    char change[24] = "";
    snprintf(figure, sizeof figure, "%lld %s", (long long)then, name);
    if (then != now)
        snprintf(change, sizeof change, "%+lld", (long long)(then - now));
    add_figure(line, figure, change);
}

/* "cost 412.60 (+18.40)" */
static void add_cost(struct tally_line *line, const struct plan *now, const struct plan *then)
{
    char figure[MONEY_TEXT + 8];
    char change[MONEY_TEXT + 1] = "";
    int64_t more = then->tally.cost - now->tally.cost;
    snprintf(figure, sizeof figure, "cost %s", print_money(then, then->tally.cost).at);
    if (more)
        snprintf(change, sizeof change, "%s%s", more > 0 ? "+" : "", print_money(then, more).at);
    add_figure(line, figure, change);
}

/* Figures that have no sign of their own: what was is named. */
static void add_plain(struct tally_line *line, struct printed now, struct printed then)
{
    char change[QUANTITY_TEXT + 8] = "";
    if (strcmp(now.at, then.at) != 0)
        snprintf(change, sizeof change, "was %s", now.at);
    add_figure(line, then.at, change);
}

static void tally_make(struct tally_line *line, const struct plan *now, const struct plan *then)
{
    const struct tally *before = &now->tally;
    const struct tally *after = &then->tally;
    line->count = 0;
    add_cost(line, now, then);
    add_count(line, "sticks", before->sticks, after->sticks);
    add_count(line, "sheets", before->sheets, after->sheets);
    add_plain(line, print_roll(now, before->cloth), print_roll(then, after->cloth));
    add_count(line, "staples", before->staples, after->staples);
    add_count(line, "screws", before->screws, after->screws);
    add_plain(line, print_minutes(before->minutes), print_minutes(after->minutes));
    add_count(line, "warn", before->warns, after->warns);
    if (after->stops || before->stops)
        add_count(line, "stop", before->stops, after->stops);
}

static int tally_width(const struct tally_line *line, int gap)
{
    int width = 0;
    for (int i = 0; i < line->count; i++)
        width += gap + text_columns(line->figures[i].text);
    return width;
}

/* Where there is no room for all, figures that stay as they are give way: the cost and the findings
 * last. */
static void tally_fit(struct tally_line *line, int gap, int room)
{
    static const char rounds[] = {1, 0}; /* first those that stay, then any */
    for (size_t round = 0; round < sizeof rounds; round++) {
        for (int i = line->count - 2; i > 0 && tally_width(line, gap) > room; i--) {
            if (rounds[round] && line->figures[i].changes)
                continue;
            memmove(&line->figures[i], &line->figures[i + 1],
                    (size_t)(line->count - i - 1) * sizeof *line->figures);
            line->count--;
        }
    }
}

static void paint_tally(struct tui *tui, int row)
{
    const struct plan *now = tui->preview ? desk_quick_plan(tui->desk) : tui_plan(tui);
    const struct plan *then = tui->preview ? tui->preview : now;
    struct tally_line line;
    int columns = tui->view.columns;
    if (!tui_model(tui)->build.key)
        return;
    tally_make(&line, now, then);
    int gap = tally_width(&line, 3) <= columns ? 3 : tally_width(&line, 2) <= columns ? 2 : 1;
    tally_fit(&line, gap, columns);
    int column = 0;
    for (int i = 0; i < line.count; i++) {
        bool stops = then->tally.stops && i + 1 == line.count;
        int style = line.figures[i].changes || stops ? VIEW_STRONG : VIEW_PLAIN;
        column += i ? gap : 1;
        column += view_text(&tui->view, row, column, columns - column, style, line.figures[i].text);
    }
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
