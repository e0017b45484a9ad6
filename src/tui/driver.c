/*
 * From keys to screens. A key goes to the screen on top while something is typed there; else its
 * action goes to that screen, and what the screen leaves alone is done here: help, undo, the
 * screens that can be reached from everywhere, and leaving.
 */
#include "tui/driver.h"

#include "base/memory.h"
#include "base/show.h"
#include "tui/copyout.h"
#include "tui/find.h"
#include "tui/hints.h"
#include "tui/moved.h"
#include "tui/tally.h"

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
    text_init(&tui->outgoing);
    settings_standard(&tui->settings);
    tui->noting.kind = ENTITY_none;
    tui_open(tui, &screen_builds, NULL);
}

void driver_end(struct tui *tui)
{
    while (tui->depth > 0)
        tui_close_top(tui);
    desk_abandon(tui->desk);
    arena_release(&tui->scratch);
    text_release(&tui->outgoing);
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

struct key_name tui_key(const struct tui *tui, enum action action)
{
    struct key_name name;
    char buffer[ACTION_KEY_TEXT];
    snprintf(name.at, sizeof name.at, "%s",
             action_key_name(keymap_hint(&tui->settings.keys, action), buffer));
    return name;
}

void tui_delete_item(struct tui *tui, enum entity_kind kind, int64_t key)
{
    struct fault_note note = {0};
    if (desk_delete(tui->desk, kind, key, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "deleted; %s brings it back", tui_key(tui, ACTION_UNDO).at);
}

/* ---- notes ---- */

static const void *item_noted(const struct tui *tui)
{
    const struct target *noting = &tui->noting;
    if (noting->kind >= ENTITY_COUNT)
        return model_at_const(tui_model(tui), noting->kind, 0);
    return model_find_const(tui_model(tui), noting->kind, noting->key);
}

void tui_note(struct tui *tui, enum entity_kind kind, int64_t key)
{
    bool has_note = kind != ENTITY_none && field_named(entity_of(kind), "note");
    tui->noting = (struct target){.kind = has_note ? kind : ENTITY_none, .key = key};
    if (!has_note)
        tui_say(tui, "there is no note to this");
}

void driver_note(struct tui *tui, struct text *ret_note)
{
    const void *item = item_noted(tui);
    if (item)
        field_write(field_named(entity_of(tui->noting.kind), "note"), tui_model(tui), item,
                    ret_note);
}

void driver_noted(struct tui *tui, const char *text)
{
    struct text before;
    struct fault_note note = {0};
    text_init(&before);
    driver_note(tui, &before);
    if (strcmp(text_string(&before), text) == 0)
        tui_say(tui, "the note is as it was");
    else if (desk_set(tui->desk, tui->noting.kind, tui->noting.key, "note", text, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "noted; %s takes it back", tui_key(tui, ACTION_UNDO).at);
    text_release(&before);
}

/* ---- builds that go on a trip ---- */

bool tui_is_marked(const struct tui *tui, int64_t build)
{
    for (size_t i = 0; i < tui->marked_count; i++) {
        if (tui->marked[i] == build)
            return true;
    }
    return false;
}

void tui_mark(struct tui *tui, int64_t build)
{
    size_t kept = 0;
    if (!tui_is_marked(tui, build) && tui->marked_count < TUI_MARKS) {
        tui->marked[tui->marked_count++] = build;
        return;
    }
    for (size_t i = 0; i < tui->marked_count; i++) {
        if (tui->marked[i] != build)
            tui->marked[kept++] = tui->marked[i];
    }
    tui->marked_count = kept;
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

/* Shown whether a build is in hand or not. */
static bool is_of_workshop(const struct screen *screen)
{
    return screen == &screen_trade || screen == &screen_shop || screen == &screen_account ||
           screen == &screen_stock || screen == &screen_compare;
}

/* Places of a build take each other's place, and one that is open below is gone back to; so Esc
 * leads to the build, however many were looked at. */
static enum reaction go_to(struct tui *tui, const struct screen *screen)
{
    if (!tui_model(tui)->build.key && !is_of_workshop(screen)) {
        tui_say(tui, "choose a build first: %s leads to the list", tui_key(tui, ACTION_LEAVE).at);
        return REACT_TAKEN;
    }
    for (int i = tui->depth - 1; i > 0; i--) {
        if (tui->stack[i].screen != screen)
            continue;
        while (tui->depth > i + 1)
            tui_close_top(tui);
        return REACT_TAKEN;
    }
    if (top_of(tui)->screen->place && top_of(tui)->screen != &screen_outline)
        tui_close_top(tui);
    tui_open(tui, screen, NULL);
    return REACT_TAKEN;
}

/* The screens that are reached from everywhere. */
static const struct screen *screen_of(enum action action)
{
    static const struct screen *const screens[ACTION_COUNT] = {
        [ACTION_STEPS] = &screen_order,       [ACTION_BUYING] = &screen_buying,
        [ACTION_CLOTH] = &screen_cloth,       [ACTION_PAPERS] = &screen_papers,
        [ACTION_CUTTING] = &screen_cutting,   [ACTION_MONEY] = &screen_money,
        [ACTION_FINDINGS] = &screen_findings, [ACTION_HOLES] = &screen_map,
        [ACTION_TRADE] = &screen_trade,       [ACTION_SHOP] = &screen_shop,
        [ACTION_CARE] = &screen_care,         [ACTION_ACCOUNT] = &screen_account,
        [ACTION_STOCK] = &screen_stock,       [ACTION_COMPARE] = &screen_compare};
    return action < ACTION_COUNT ? screens[action] : NULL;
}

static void toggle_mouse(struct tui *tui)
{
    tui->settings.mouse = !tui->settings.mouse;
    tui_say(tui, tui->settings.mouse ? "the mouse chooses, a second click opens, the wheel scrolls"
                                     : "the mouse is the terminal's own again");
}

static enum reaction common_act(struct tui *tui, enum action action)
{
    switch (action) {
    case ACTION_QUIT:
        return REACT_QUIT;
    case ACTION_LEAVE:
        return tui->depth > 1 ? REACT_LEAVE : REACT_TAKEN;
    case ACTION_HELP:
        tui_open(tui, &screen_help, NULL);
        return REACT_TAKEN;
    case ACTION_FIND:
        find_open(tui);
        return REACT_TAKEN;
    case ACTION_UNDO:
        return step_history(tui, desk_undo, "taken back");
    case ACTION_REDO:
        return step_history(tui, desk_redo, "done again");
    case ACTION_LINE_OUT:
    case ACTION_LIST_OUT:
        copy_out(tui, action == ACTION_LIST_OUT);
        return REACT_TAKEN;
    case ACTION_NOTE:
        tui_note(tui, ENTITY_none, 0);
        return REACT_TAKEN;
    case ACTION_MOUSE:
        toggle_mouse(tui);
        return REACT_TAKEN;
    case ACTION_PLACE:
        tui_say(tui, "a box is put beside another one: choose it among the boxes of a build");
        return REACT_TAKEN;
    case ACTION_TROLLEY:
        tui_say(tui, "the trolley is at the list of builds");
        return REACT_TAKEN;
    default:
        return screen_of(action) ? go_to(tui, screen_of(action)) : REACT_PASS;
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

bool tui_is_typing(struct tui *tui)
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

/* Moving beyond an end needs no word; anything else that came to nothing does. */
static void say_nothing_done(struct tui *tui, enum action action, int key)
{
    static const action_set moves = SHOWS(UP) | SHOWS(DOWN) | SHOWS(LEFT) | SHOWS(RIGHT) |
                                    SHOWS(FIRST) | SHOWS(LAST) | SHOWS(LEAF_UP) | SHOWS(LEAF_DOWN) |
                                    SHOWS(LEAVE);
    char name[ACTION_KEY_TEXT];
    if (tui->message[0] || (action != ACTION_NONE && moves & UINT64_C(1) << action))
        return;
    tui_say(tui, "%s does nothing here; %s shows the keys of this screen",
            action_key_name(key, name), tui_key(tui, ACTION_HELP).at);
}

enum reaction driver_key(struct tui *tui, int key)
{
    struct open_screen *top = top_of(tui);
    tui->message[0] = '\0';
    if (moved_key(tui, key))
        return REACT_TAKEN;
    if (tui_is_typing(tui))
        return settle(tui, type_key(tui, key));
    enum action action = keymap_action(&tui->settings.keys, key);
    enum reaction reaction = action == ACTION_NONE ? REACT_PASS : tui_act(tui, action);
    if (reaction == REACT_PASS && top->screen->key)
        reaction = top->screen->key(tui, top->state, key);
    if (reaction == REACT_PASS)
        say_nothing_done(tui, action, key);
    return settle(tui, reaction);
}

enum reaction driver_paste(struct tui *tui, const char *text)
{
    struct open_screen *top = top_of(tui);
    if (tui->find.open) {
        find_paste(tui, text);
        return REACT_TAKEN;
    }
    if (tui_is_typing(tui) && top->screen->paste)
        return settle(tui, top->screen->paste(tui, top->state, text));
    tui_say(tui, "pasted text goes into a field: open one first");
    return REACT_TAKEN;
}

/* The chosen line moves as by a key, so that a screen does what it does then. */
static void choose_by_key(struct tui *tui, struct list_view *list, int index)
{
    list_view_choose(list, index > 0 ? index - 1 : 1);
    tui_act(tui, index > 0 ? ACTION_DOWN : ACTION_UP);
}

static enum reaction press_at(struct tui *tui, int row)
{
    const struct open_screen *top = top_of(tui);
    struct list_view *list = top->screen->list ? top->screen->list(top->state) : NULL;
    int line = list ? row - list->row : -1;
    if (line < 0 || line >= list->height || list->top + line >= list->count)
        return REACT_TAKEN;
    if (list->top + line == list->chosen)
        return settle(tui, tui_act(tui, ACTION_ENTER));
    choose_by_key(tui, list, list->top + line);
    return REACT_TAKEN;
}

#define WHEEL_LINES 3

enum reaction driver_pointer(struct tui *tui, const struct pointer *pointer)
{
    enum action turn = pointer->kind == POINTER_WHEEL_UP ? ACTION_UP : ACTION_DOWN;
    if (tui_is_typing(tui))
        return REACT_TAKEN;
    tui->message[0] = '\0';
    if (pointer->kind == POINTER_PRESS)
        return press_at(tui, pointer->row);
    for (int i = 0; i < WHEEL_LINES; i++)
        tui_act(tui, turn);
    return REACT_TAKEN;
}

bool tui_search_text(const struct tui *tui, char text[SEARCH_TEXT])
{
    const struct desk_search search = desk_search_state(tui->desk);
    text[0] = '\0';
    if (search.on)
        snprintf(text, SEARCH_TEXT, "looking for less waste: %.60s, %d of %d, %d %%",
                 plan_stock_name(tui_plan(tui), search.stock), search.job, search.jobs,
                 search.percent / 5 * 5);
    return search.on;
}

bool driver_rest(struct tui *tui)
{
    struct open_screen *top = top_of(tui);
    enum reaction reaction = top->screen->idle ? top->screen->idle(tui, top->state) : REACT_PASS;
    settle(tui, reaction);
    return reaction != REACT_PASS;
}

bool driver_idle(struct tui *tui)
{
    bool changed = false;
    struct fault_note note = {0};
    unsigned serial;
    tui->searching = false;
    if (tui_is_typing(tui))
        return driver_rest(tui);
    if (moved_look(tui))
        return true;
    if (desk_refresh(tui->desk, &changed, &note)) {
        tui_warn(tui, &note);
        return true;
    }
    if (changed)
        tui_say(tui, "another program changed the workshop: this is how it is now");
    serial = desk_serial(tui->desk);
    tui->searching = desk_improve(tui->desk, CUT_SLICE);
    return driver_rest(tui) || changed || desk_serial(tui->desk) != serial;
}

/* ---- painting ---- */

/* "clock since 14:05: Frame box C", at the right; it changes only when the clock does. */
static void paint_clock(struct tui *tui)
{
    const struct model *model = tui_model(tui);
    struct text line;
    text_init(&line);
    for (size_t i = 0; i < model->timings.count; i++) {
        const struct timing *timing = &model->timings.at[i];
        const struct step *step = plan_step(tui_plan(tui), timing->step);
        const char *time = strchr(timing->began, ' ');
        if (time && step)
            text_format(&line, "clock since%s: %s ", time, step->title);
    }
    int width = text_columns(text_string(&line));
    int most = tui->view.columns / 2;
    if (width > 0)
        view_text(&tui->view, 0, tui->view.columns - (width < most ? width : most), most,
                  VIEW_STRONG, text_string(&line));
    text_release(&line);
}

/* "Spare room headboard > order of work" */
static void add_place(struct tui *tui, struct text *title)
{
    if (tui_model(tui)->build.key && tui->depth > 1)
        text_format(title, "%s > ", tui_model(tui)->build.name);
    text_add(title, top_of(tui)->screen->name);
}

/* The workshop's name before it, where that has room. */
static void paint_title(struct tui *tui)
{
    const char *workshop = tui_model(tui)->workshop.name;
    struct text place, title;
    text_init(&place);
    text_init(&title);
    add_place(tui, &place);
    int room = tui->view.columns - text_columns(text_string(&place)) - 4;
    if (text_columns(workshop) <= room)
        text_format(&title, " %s >", workshop);
    text_format(&title, " %s", text_string(&place));
    text_release(&place);
    view_row(&tui->view, 0, 0, tui->view.columns, VIEW_STRONG, text_string(&title));
    text_release(&title);
    paint_clock(tui);
}

void driver_paint(struct tui *tui, int rows, int columns)
{
    struct open_screen *top = top_of(tui);
    view_begin(&tui->view, rows, columns);
    if (tui->view.failed)
        return;
    if (rows < VIEW_LEAST_ROWS || columns < VIEW_LEAST_COLUMNS) {
        view_text(&tui->view, 0, 0, columns, VIEW_PLAIN, "stuffover: 60 x 18 or more");
        return;
    }
    paint_title(tui);
    view_cursor(&tui->view, 0, 0);
    int hints = hints_rows(tui, rows);
    top->screen->paint(tui, top->state, 1, rows - 2 - hints);
    hints_paint(tui, rows - 1 - hints);
    tally_paint(tui, rows - 1);
    arena_release(&tui->scratch);
}
