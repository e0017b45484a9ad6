#define _DEFAULT_SOURCE /* forkpty, cfmakeraw */
#include "console.h"
#include "base/utf8.h"

#include "base/text.h"

#include <errno.h>
#include <poll.h>
#include <pty.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

/* Long enough for a sanitized program on a busy machine: only a failing test waits that long. */
#define PATIENCE_MS 30000

/* ---- the screen ---- */

static int on_property(VTermProp property, VTermValue *value, void *user)
{
    struct console *console = user;
    if (property == VTERM_PROP_ALTSCREEN)
        console->alternate = value->boolean;
    if (property == VTERM_PROP_CURSORVISIBLE)
        console->cursor = value->boolean;
    return 1;
}

static const VTermScreenCallbacks callbacks = {.settermprop = on_property};

static void open_screen(struct console *console)
{
    console->terminal = vterm_new(console->rows, console->columns);
    vterm_set_utf8(console->terminal, 1);
    console->screen = vterm_obtain_screen(console->terminal);
    vterm_screen_set_callbacks(console->screen, &callbacks, console);
    vterm_screen_enable_altscreen(console->screen, 1);
    vterm_screen_reset(console->screen, 1);
}

static void add_cell(struct text *text, const VTermScreenCell *cell)
{
    char bytes[4];
    if (!cell->chars[0] || cell->chars[0] == (uint32_t)-1) {
        text_add_char(text, ' ');
        return;
    }
    for (int i = 0; i < VTERM_MAX_CHARS_PER_CELL && cell->chars[i]; i++)
        text_add_bytes(text, bytes, (size_t)utf8_put(cell->chars[i], bytes));
}

const char *console_screen(struct console *console)
{
    struct text text;
    text_init(&text);
    for (int row = 0; row < console->rows; row++) {
        for (int column = 0; column < console->columns;) {
            VTermScreenCell cell;
            vterm_screen_get_cell(console->screen, (VTermPos){row, column}, &cell);
            add_cell(&text, &cell);
            column += cell.width > 1 ? cell.width : 1;
        }
        text_add_char(&text, '\n');
    }
    free(console->shown);
    console->shown = strdup(text_string(&text));
    text_release(&text);
    assert_non_null(console->shown);
    return console->shown;
}

/* ---- the line ---- */

/* The store's folder. The text is the caller's process's, which is about to become the program. */
static const char *folder_of(const char *store)
{
    static char folder[4096];
    snprintf(folder, sizeof folder, "%.*s", (int)(strrchr(store, '/') - store), store);
    return folder;
}

static void become_program(const char *program, const char *store, const char *type)
{
    setenv("TERM", type ? type : "xterm-256color", 1);
    if (type) /* curses keeps a block of a terminal that it could not open */
        setenv("ASAN_OPTIONS", "detect_leaks=0", 1);
    setenv("LC_ALL", "C.UTF-8", 1);
    setenv("XDG_CONFIG_HOME", folder_of(store), 1); /* not the settings of whoever runs the tests */
    unsetenv("NO_COLOR");
    unsetenv("ESCDELAY");
    unsetenv("LINES");
    unsetenv("COLUMNS");
    execl(program, program, "--store", store, (char *)NULL);
    _exit(127);
}

static bool fork_console(struct console *console)
{
    struct winsize size = {.ws_row = 24, .ws_col = 80};
    *console = (struct console){.rows = 24, .columns = 80};
    open_screen(console);
    console->program = forkpty(&console->line, NULL, NULL, &size);
    assert_true(console->program >= 0);
    return console->program == 0;
}

void console_begin(struct console *console, const char *program, const char *store,
                   const char *type)
{
    if (fork_console(console))
        become_program(program, store, type);
}

static void run_job(const char *program, const char *store)
{
    setpgid(0, 0);
    tcsetpgrp(STDIN_FILENO, getpid());
    signal(SIGTTOU, SIG_DFL);
    become_program(program, store, NULL);
}

/* What a shell does for one program: lends it the terminal, and takes that back when it stops. */
static void become_shell(const char *program, const char *store)
{
    static const char stopped[] = "[stopped]";
    int status = 0;
    char key;
    signal(SIGTTOU, SIG_IGN);
    pid_t job = fork();
    if (job == 0)
        run_job(program, store);
    setpgid(job, job);
    while (waitpid(job, &status, WUNTRACED) == job && WIFSTOPPED(status)) {
        tcsetpgrp(STDIN_FILENO, getpgrp());
        if (write(STDOUT_FILENO, stopped, sizeof stopped - 1) < 0 ||
            read(STDIN_FILENO, &key, 1) != 1)
            _exit(126);
        tcsetpgrp(STDIN_FILENO, job);
        kill(-job, SIGCONT);
    }
    _exit(WIFEXITED(status) ? WEXITSTATUS(status) : 125);
}

void console_begin_job(struct console *console, const char *program, const char *store)
{
    if (fork_console(console))
        become_shell(program, store);
}

/* libvterm passes the clipboard's sequence over; it comes in one piece, since it is written so. */
static void take_copied(struct console *console, const char *bytes, size_t count)
{
    static const char mark[] = "\033]52;c;";
    for (size_t i = 0; i + sizeof mark - 1 < count; i++) {
        if (memcmp(bytes + i, mark, sizeof mark - 1) != 0)
            continue;
        bytes += i + sizeof mark - 1;
        count -= i + sizeof mark - 1;
        const char *end = memchr(bytes, '\a', count);
        snprintf(console->copied, sizeof console->copied, "%.*s",
                 (int)(end ? (size_t)(end - bytes) : count), bytes);
        return;
    }
}

/* Reads once, at most so long; false when nothing came. */
static bool read_some(struct console *console, int wait)
{
    char bytes[8192];
    struct pollfd line = {console->line, POLLIN, 0};
    if (console->ended || console->line < 0 || poll(&line, 1, wait) <= 0)
        return false;
    ssize_t got = read(console->line, bytes, sizeof bytes);
    if (got <= 0) {
        console->ended = !(got < 0 && errno == EINTR);
        return !console->ended;
    }
    take_copied(console, bytes, (size_t)got);
    vterm_input_write(console->terminal, bytes, (size_t)got);
    return true;
}

void console_drain(struct console *console)
{
    while (read_some(console, 0))
        ;
}

void console_watch(struct console *console, int looks)
{
    while (looks-- > 0 && !console->ended)
        read_some(console, 1);
}

void console_wait(struct console *console, const char *words)
{
    while (!strstr(console_screen(console), words)) {
        if (!read_some(console, PATIENCE_MS))
            fail_msg("\"%s\" does not come:\n%s", words, console_screen(console));
    }
}

static void send_bytes(struct console *console, const char *bytes, size_t count)
{
    while (count > 0) {
        struct pollfd line = {console->line, POLLOUT, 0};
        console_drain(console);
        if (console->ended)
            return;
        assert_true(poll(&line, 1, PATIENCE_MS) > 0);
        ssize_t written = write(console->line, bytes, count > 64 ? 64 : count);
        if (written <= 0)
            return;
        bytes += written;
        count -= (size_t)written;
    }
}

void console_send(struct console *console, const char *bytes)
{
    send_bytes(console, bytes, strlen(bytes));
}

void console_paste(struct console *console, const char *text)
{
    console_send(console, "\033[200~");
    console_send(console, text);
    console_send(console, "\033[201~");
}

bool console_marks_pastes(struct console *console)
{
    char bytes[256];
    while (vterm_output_read(console->terminal, bytes, sizeof bytes) > 0)
        ; /* answers to what the program asked the terminal */
    vterm_keyboard_start_paste(console->terminal);
    return vterm_output_read(console->terminal, bytes, sizeof bytes) > 0;
}

void console_resize(struct console *console, int rows, int columns)
{
    struct winsize size = {.ws_row = (unsigned short)rows, .ws_col = (unsigned short)columns};
    console_drain(console);
    console->rows = rows;
    console->columns = columns;
    vterm_set_size(console->terminal, rows, columns);
    ioctl(console->line, TIOCSWINSZ, &size);
}

/* ---- keys ---- */

static const struct {
    const char *name;
    const char *bytes;
} keys_by_name[] = {
    {"Tab", "\t"},       {"Enter", "\r"},     {"Esc", "\033"},       {"Space", " "},
    {"Up", "\033OA"},    {"Down", "\033OB"},  {"Right", "\033OC"},   {"Left", "\033OD"},
    {"Home", "\033OH"},  {"End", "\033OF"},   {"PgUp", "\033[5~"},   {"PgDn", "\033[6~"},
    {"Ins", "\033[2~"},  {"Del", "\033[3~"},  {"Backspace", "\177"}, {"F1", "\033OP"},
    {"F2", "\033OQ"},    {"F3", "\033OR"},    {"F5", "\033[15~"},    {"F6", "\033[17~"},
    {"F7", "\033[18~"},  {"F8", "\033[19~"},  {"F9", "\033[20~"},    {"F10", "\033[21~"},
    {"F11", "\033[23~"}, {"F12", "\033[24~"}, {"Ctrl-C", "\003"},    {"Ctrl-Z", "\032"},
};

static void press_named(struct console *console, const char *name, size_t length)
{
    for (size_t i = 0; i < sizeof keys_by_name / sizeof *keys_by_name; i++) {
        if (strlen(keys_by_name[i].name) == length &&
            strncmp(keys_by_name[i].name, name, length) == 0) {
            console_send(console, keys_by_name[i].bytes);
            console->keys++;
            return;
        }
    }
    fail_msg("no key is called %.*s", (int)length, name);
}

static const char *press_text(struct console *console, const char *at)
{
    size_t length = strcspn(at, "'");
    send_bytes(console, at, length);
    console->keys += (int)length;
    return at + length + (at[length] == '\'');
}

void console_press(struct console *console, const char *keys)
{
    while (*keys) {
        size_t length = strcspn(keys, " ");
        if (*keys == '\'') {
            keys = press_text(console, keys + 1);
        } else if (length == 1) {
            send_bytes(console, keys++, 1);
            console->keys++;
        } else if (length > 1) {
            press_named(console, keys, length);
            keys += length;
        }
        keys += strspn(keys, " ");
    }
}

/* ---- the end ---- */

void console_hang_up(struct console *console)
{
    close(console->line);
    console->line = -1;
}

void console_wait_end(struct console *console)
{
    while (read_some(console, PATIENCE_MS))
        ;
}

int console_end(struct console *console)
{
    int status = 0;
    console_wait_end(console);
    if (console->line >= 0 && !console->ended) {
        kill(console->program, SIGKILL);
        print_error("it does not end:\n%s", console_screen(console));
    }
    assert_int_equal(waitpid(console->program, &status, 0), console->program);
    if (console->line >= 0)
        close(console->line);
    vterm_free(console->terminal);
    free(console->shown);
    console->shown = NULL;
    return status;
}
