/*
 * The terminal; only terminal.c knows curses. It carries views over, brings events back, and gives
 * the terminal back whole, also after a crash, a kill or a hang-up.
 */
#ifndef TUI_TERMINAL_H
#define TUI_TERMINAL_H

#include "base/fault.h"
#include "base/text.h"
#include "tui/view.h"

#include <stdio.h>

enum event_kind {
    EVENT_KEY,
    EVENT_PASTE,   /* text between the paste marks */
    EVENT_POINTER, /* the mouse, while it is read */
    EVENT_RESIZE,  /* also after a stop: paint again */
    EVENT_IDLE,    /* nothing came for a while */
    EVENT_END      /* end of input, hang-up, or a signal that asks to stop */
};

struct event {
    enum event_kind kind;
    int key;          /* enum tui_key, or a code point */
    const char *text; /* of a paste; the terminal's until the next event */
    struct pointer pointer;
    int signal; /* of END; 0 at the end of input */
};

struct terminal;

/*
 * Takes the terminal over. Faults: USAGE when standard input or output is none (the note says which
 * command prints the same), TERMINAL when its type is not known or it cannot move its cursor.
 */
enum fault terminal_open(struct terminal **ret_terminal, struct fault_note *note);

/* Tests: on given streams and a fixed size, without signals. */
enum fault terminal_open_on(struct terminal **ret_terminal, const char *type, FILE *out, FILE *in,
                            struct fault_note *note);

void terminal_close(struct terminal *terminal); /* NULL-safe */

void terminal_size(const struct terminal *terminal, int *ret_rows, int *ret_columns);

/* Whether the locale has box-drawing characters. */
bool terminal_has_lines(const struct terminal *terminal);

/* Shows a view; what has not changed is not sent. */
void terminal_show(struct terminal *terminal, const struct view *view);

/* Reads the mouse from now on, or leaves it to the terminal, as it is at the beginning. */
void terminal_read_mouse(struct terminal *terminal, bool on);

/* Sends an escape sequence as it is: one that shows nothing and moves nothing. */
void terminal_send(struct terminal *terminal, const char *sequence);

/* Gives the terminal back while another program has it, and takes it again. */
void terminal_lend(struct terminal *terminal);
void terminal_take_back(struct terminal *terminal);

/* Waits for the next event, at most `idle` milliseconds. */
void terminal_wait(struct terminal *terminal, int idle, struct event *ret_event);

/* Whether more input is there already: then painting can wait. */
bool terminal_has_more(struct terminal *terminal);

#endif
