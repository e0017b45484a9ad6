#include "tui/tui.h"

#include "tui/driver.h"
#include "tui/terminal.h"

#include <signal.h>
#include <stdio.h>

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

/* Runs until the end; the signal that asked for it, SIGHUP when the line went away, 0 otherwise. */
static int run(struct tui *tui, struct terminal *terminal)
{
    struct event event;
    bool paint = true;
    for (;;) {
        if (paint && !terminal_has_more(terminal))
            show(tui, terminal);
        terminal_wait(terminal, tui->searching ? 0 : IDLE_MS, &event);
        bool painted_later = paint && terminal_has_more(terminal);
        if (!carry_out(tui, &event, &paint))
            return event.kind == EVENT_END ? (event.signal ? event.signal : SIGHUP) : 0;
        paint |= painted_later;
        tui->searching |= event.kind != EVENT_IDLE;
    }
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
    int signal_number = run(&tui, terminal);
    driver_end(&tui);
    terminal_close(terminal);
    return signal_number ? 128 + signal_number : 0;
}
