/*
 * The whole program on a terminal inside the test: forkpty for the line, libvterm for the screen.
 * Nothing here sleeps: a test waits for words on the screen or for the program's end, and fails
 * when they do not come for long.
 */
#ifndef CONSOLE_H
#define CONSOLE_H

#include <stdbool.h>
#include <sys/types.h>
#include <vterm.h>

struct console {
    int line; /* master side; -1 when it was hung up */
    pid_t program;
    int rows, columns;
    VTerm *terminal;
    VTermScreen *screen;
    bool alternate;    /* the program has the alternate screen */
    bool cursor;       /* its cursor shows */
    bool ended;        /* nothing more comes from the line */
    char *shown;       /* the screen as read last */
    char copied[4096]; /* what the clipboard was told last, as it came: base64; cut where longer */
    int keys;          /* pressed so far */
};

/* Runs `program --store store`; `type` is TERM, NULL for a usual one. */
void console_begin(struct console *console, const char *program, const char *store,
                   const char *type);

/* The same under a small shell of its own: when the program stops it writes "[stopped]", and wakes
 * it at the next Enter. */
void console_begin_job(struct console *console, const char *program, const char *store);

/* Reads what comes until the words stand on the screen; fails with the screen otherwise. */
void console_wait(struct console *console, const char *words);

/* The screen as rows of text; good until the next reading. */
const char *console_screen(struct console *console);

/* Reads what is there already, so that the program never waits for us. */
void console_drain(struct console *console);

/* Looks so often whether something comes, a millisecond at most each: for a moment that is to be
 * any. */
void console_watch(struct console *console, int looks);

/* Keys by name, characters, and quoted text, as stage_press takes them. */
void console_press(struct console *console, const char *keys);
void console_send(struct console *console, const char *bytes);
void console_paste(struct console *console, const char *text);
void console_resize(struct console *console, int rows, int columns);

/* Whether a paste would be sent between marks, as the program asked for. */
bool console_marks_pastes(struct console *console);

/* Closes the line, as when a window is closed or a connection breaks. */
void console_hang_up(struct console *console);

/* Reads all that comes until the program lets go of the line. */
void console_wait_end(struct console *console);

/* Waits for the program's end; its wait status. Releases the rest. */
int console_end(struct console *console);

#endif
