#include "tui/tui.h"

#include "tui/copyout.h"
#include "tui/driver.h"
#include "tui/editor.h"
#include "tui/terminal.h"

#include <signal.h>
#include <stdio.h>

#define REST_MS 60   /* without a key, and pictures follow the selection: longer than keys repeat */
#define IDLE_MS 1000 /* how soon another program's change shows */

static void show(struct tui *tui, struct terminal *terminal)
{
    int rows;
    int columns;
    terminal_size(terminal, &rows, &columns);
    driver_paint(tui, rows, columns);
    terminal_show(terminal, &tui->view);
}

/* Carries one event out; false when the program is to end. */
static bool carry_out(struct tui *tui, const struct event *event, bool *paint)
{
    *paint = true;
    switch (event->kind) {
    case EVENT_KEY:
        return !(driver_key(tui, event->key) & REACT_QUIT);
    case EVENT_PASTE:
        return !(driver_paste(tui, event->text) & REACT_QUIT);
    case EVENT_POINTER:
        return !(driver_pointer(tui, &event->pointer) & REACT_QUIT);
    case EVENT_RESIZE:
        return true;
    case EVENT_IDLE:
        *paint = driver_idle(tui);
        return true;
    case EVENT_END:
        return false;
    }
    return false;
}

static void edit_note(struct tui *tui, struct terminal *terminal)
{
    struct text before;
    struct text after;
    struct fault_note note = {0};
    text_init(&before);
    text_init(&after);
    driver_note(tui, &before);
    if (editor_run(terminal, text_string(&before), &after, &note))
        tui_warn(tui, &note);
    else
        driver_noted(tui, text_string(&after));
    tui->noting.kind = ENTITY_none;
    text_release(&before);
    text_release(&after);
}

/* What an event left to be done by the terminal. */
static void serve(struct tui *tui, struct terminal *terminal)
{
    struct text sequence;
    terminal_read_mouse(terminal, tui->settings.mouse);
    if (tui->noting.kind != ENTITY_none)
        edit_note(tui, terminal);
    if (!tui->outgoing.length)
        return;
    text_init(&sequence);
    copy_sequence(&sequence, text_string(&tui->outgoing));
    if (!text_failed(&sequence))
        terminal_send(terminal, text_string(&sequence));
    text_release(&sequence);
    text_clear(&tui->outgoing);
}

/*
 * Runs until the end; the signal that asked for it, SIGHUP when the line went away, 0 otherwise.
 * While there is more input, painting waits for it; where that comes to nothing, it is done at
 * once.
 */
static int run(struct tui *tui, struct terminal *terminal)
{
    struct event event;
    bool due = true;     /* there is something to be painted */
    bool resting = true; /* nothing was typed for a while */
    for (;;) {
        bool changed;
        if (due && !terminal_has_more(terminal)) {
            show(tui, terminal);
            due = false;
        }
        terminal_wait(terminal,
                      due              ? 0
                      : !resting       ? REST_MS
                      : tui->searching ? 0
                                       : IDLE_MS,
                      &event);
        resting = event.kind == EVENT_IDLE;
        if (!carry_out(tui, &event, &changed))
            return event.kind == EVENT_END ? (event.signal ? event.signal : SIGHUP) : 0;
        serve(tui, terminal);
        due |= changed;
        tui->searching |= event.kind != EVENT_IDLE;
    }
}

/* The first of what is wrong with the settings; help has them all. */
static void tell_complaints(struct tui *tui)
{
    const struct complaint *first = &tui->settings.complaints[0];
    int count = tui->settings.complaint_count;
    if (count == 0)
        return;
    if (count > 1)
        tui_say(tui, "settings, line %d: %s (%d more: see %s)", first->line, first->why, count - 1,
                tui_key(tui, ACTION_HELP).at);
    else
        tui_say(tui, "settings, line %d: %s", first->line, first->why);
    tui->message_warns = true;
}

int tui_run(struct desk *desk)
{
    struct terminal *terminal;
    struct fault_note note = {0};
    struct tui tui;
    enum fault fault = terminal_open(&terminal, &note);
    if (fault) {
        fprintf(stderr, "stuffover: %s\n", note.why);
        return fault_exit_code(fault);
    }
    driver_begin(&tui, desk);
    tui.view.lines = terminal_has_lines(terminal);
    settings_read(&tui.settings);
    tell_complaints(&tui);
    terminal_read_mouse(terminal, tui.settings.mouse);
    int signal_number = run(&tui, terminal);
    driver_end(&tui);
    terminal_close(terminal);
    return signal_number ? 128 + signal_number : 0;
}
