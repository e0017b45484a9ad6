/*
 * Curses, signals and raw input in one place.
 *
 * Signals write their number into a pipe that the loop polls beside the keyboard, so that nothing
 * is done inside a handler. A crash writes a string prepared at the start, which puts the terminal
 * back, from a stack of its own, and then lets the signal do what it does.
 *
 * A lone ESC may be the beginning of a sequence that a slow line has cut in two: what looks like
 * its rest is swallowed when it follows within half a second. A paste whose end never comes
 * is taken for whole when nothing follows.
 *
 * Ctrl-Z is carried out here, since the paste marks have to go off before the program stops.
 */
#include "tui/terminal.h"

#include "base/memory.h"
#include "base/utf8.h"
#include "tui/actions.h"
#include "tui/capability.h"

#include <curses.h>

#include <errno.h>
#include <fcntl.h>
#include <langinfo.h>
#include <limits.h>
#include <poll.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>
#include <wchar.h>

#define PASTE_MS 1000 /* a paste that has not ended by then has */
#define PASTE_ON "\033[?2004h"
#define PASTE_OFF "\033[?2004l"
#define MOUSE_ON "\033[?1000h\033[?1006h"
#define MOUSE_OFF "\033[?1000l\033[?1006l"
#define TORN_SEQUENCE_MS 500
#define RESET_ROOM 256
#define CRASH_STACK 65536

struct terminal {
    SCREEN *screen;
    FILE *out;
    int keyboard; /* descriptor of the input */
    bool live;    /* a real terminal: signals, paste marks */
    bool utf8;
    bool colour;
    bool mouse;
    bool pasting;
    struct text paste;
    long long escaped; /* when a lone ESC came, in milliseconds; 0 when none did */
    bool torn;         /* the code that it began goes on */
};

/* What signal handlers may touch. */
static int signal_pipe[2] = {-1, -1};
static struct termios terminal_before;
static char reset_string[RESET_ROOM];
static size_t reset_length;
static volatile sig_atomic_t terminal_taken;

/* ---- signals ---- */

static void on_signal(int number)
{
    int before = errno;
    unsigned char byte = (unsigned char)number;
    ssize_t written = write(signal_pipe[1], &byte, 1);
    (void)written; /* a full pipe holds enough to be woken by */
    errno = before;
}

static void on_crash(int number)
{
    if (terminal_taken) {
        ssize_t written = write(STDOUT_FILENO, reset_string, reset_length);
        (void)written;
        tcsetattr(STDIN_FILENO, TCSANOW, &terminal_before);
    }
    signal(number, SIG_DFL);
    raise(number);
}

/*
 * Ctrl-Z is left alone where the program was started without it. Comes before newterm: where curses
 * finds the signal as it is by default, it ignores it while it paints, and a Ctrl-Z then is lost.
 */
static void catch_stop(void)
{
    struct sigaction stop;
    if (sigaction(SIGTSTP, NULL, &stop) || stop.sa_handler == SIG_IGN)
        return;
    stop = (struct sigaction){.sa_handler = on_signal, .sa_flags = SA_RESTART};
    sigemptyset(&stop.sa_mask);
    sigaction(SIGTSTP, &stop, NULL);
}

static void catch_signals(void)
{
    static const int asked[] = {SIGTERM, SIGHUP, SIGINT, SIGCONT, SIGWINCH};
    static const int crashes[] = {SIGSEGV, SIGBUS, SIGABRT, SIGFPE, SIGILL, SIGQUIT};
    static char crash_stack[CRASH_STACK];
    stack_t stack = {.ss_sp = crash_stack, .ss_size = sizeof crash_stack};
    struct sigaction ask = {.sa_handler = on_signal, .sa_flags = SA_RESTART};
    struct sigaction crash = {.sa_handler = on_crash,
                              .sa_flags = (int)(SA_RESETHAND | SA_NODEFER | SA_ONSTACK)};
    sigemptyset(&ask.sa_mask);
    sigemptyset(&crash.sa_mask);
    sigaltstack(&stack, NULL);
    for (size_t i = 0; i < sizeof asked / sizeof *asked; i++)
        sigaction(asked[i], &ask, NULL);
    for (size_t i = 0; i < sizeof crashes / sizeof *crashes; i++)
        sigaction(crashes[i], &crash, NULL);
}

static enum fault open_pipe(struct fault_note *note)
{
    if (pipe(signal_pipe))
        return fault_say(note, FAULT_TERMINAL, "%s", strerror(errno));
    for (int i = 0; i < 2; i++) {
        fcntl(signal_pipe[i], F_SETFL, O_NONBLOCK);
        fcntl(signal_pipe[i], F_SETFD, FD_CLOEXEC);
    }
    return FAULT_NONE;
}

/* ---- opening ---- */

static void set_colours(struct terminal *terminal)
{
    const char *none = getenv("NO_COLOR");
    terminal->colour = !(none && *none) && has_colors();
    if (!terminal->colour)
        return;
    start_color();
    use_default_colors();
    init_pair(1, COLOR_RED, -1);
}

static void set_modes(struct terminal *terminal)
{
    cbreak();
    noecho();
    nonl();
    keypad(stdscr, TRUE);
    define_key(NULL, KEY_MOUSE); /* curses would wait for more of them, and keep the last */
    nodelay(stdscr, TRUE);
    if (!getenv("ESCDELAY"))
        set_escdelay(25);
    set_colours(terminal);
}

enum fault terminal_open_on(struct terminal **ret_terminal, const char *type, FILE *out, FILE *in,
                            struct fault_note *note)
{
    struct terminal *terminal = memory_resize(NULL, sizeof *terminal);
    if (!terminal)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory to begin");
    memset(terminal, 0, sizeof *terminal);
    text_init(&terminal->paste);
    terminal->out = out;
    terminal->keyboard = fileno(in);
    terminal->utf8 = strcmp(nl_langinfo(CODESET), "UTF-8") == 0;
    terminal->screen = newterm(type, out, in);
    if (!terminal->screen) {
        const char *name = type ? type : getenv("TERM");
        memory_release(terminal);
        return fault_say(note, FAULT_TERMINAL, "the terminal type \"%s\" is not known: set TERM",
                         name ? name : "");
    }
    if (!capability_is_there("cup") || !capability_is_there("clear")) {
        terminal_close(terminal);
        return fault_say(note, FAULT_TERMINAL, "this terminal cannot move its cursor");
    }
    set_modes(terminal);
    *ret_terminal = terminal;
    return FAULT_NONE;
}

static void send_now(const struct terminal *terminal, const char *string)
{
    ssize_t written = write(fileno(terminal->out), string, strlen(string));
    (void)written;
}

enum fault terminal_open(struct terminal **ret_terminal, struct fault_note *note)
{
    struct terminal *terminal;
    if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO))
        return fault_say(note, FAULT_USAGE,
                         "this is no terminal: \"stuffover plan BUILD\" prints the same");
    tcgetattr(STDIN_FILENO, &terminal_before);
    enum fault fault = open_pipe(note);
    if (fault)
        return fault;
    catch_stop();
    fault = terminal_open_on(&terminal, NULL, stdout, stdin, note);
    if (fault)
        return fault;
    terminal->live = true;
    reset_length = capability_reset_string(reset_string, sizeof reset_string, PASTE_OFF MOUSE_OFF);
    terminal_taken = 1;
    catch_signals();
    send_now(terminal, PASTE_ON);
    *ret_terminal = terminal;
    return FAULT_NONE;
}

void terminal_close(struct terminal *terminal)
{
    if (!terminal)
        return;
    terminal_taken = 0;
    if (terminal->live)
        send_now(terminal, PASTE_OFF MOUSE_OFF);
    endwin();
    delscreen(terminal->screen);
    text_release(&terminal->paste);
    memory_release(terminal);
}

/* ---- showing ---- */

void terminal_size(const struct terminal *terminal, int *ret_rows, int *ret_columns)
{
    (void)terminal;
    getmaxyx(stdscr, *ret_rows, *ret_columns);
}

bool terminal_has_lines(const struct terminal *terminal)
{
    return terminal->utf8;
}

static attr_t attributes(const struct terminal *terminal, unsigned char style)
{
    attr_t attributes = A_NORMAL;
    if (style & VIEW_STRONG)
        attributes |= A_BOLD;
    if (style & VIEW_FAINT)
        attributes |= A_DIM;
    if (style & VIEW_CHOSEN)
        attributes |= A_REVERSE;
    if (style & VIEW_WARNING)
        attributes |= terminal->colour ? A_NORMAL : A_UNDERLINE;
    return attributes;
}

/* What the locale cannot show becomes a question mark. */
static wchar_t shown_code(const struct terminal *terminal, unsigned code)
{
    char bytes[MB_LEN_MAX];
    mbstate_t state;
    memset(&state, 0, sizeof state);
    if (terminal->utf8 || code < 0x80)
        return (wchar_t)code;
    return wcrtomb(bytes, (wchar_t)code, &state) == (size_t)-1 ? L'?' : (wchar_t)code;
}

static void show_row(const struct terminal *terminal, const struct view *view, int row)
{
    const struct view_cell *cells = &view->cells[(size_t)row * (size_t)view->columns];
    for (int column = 0; column < view->columns; column++) {
        cchar_t cell;
        wchar_t code[2] = {shown_code(terminal, cells[column].code), L'\0'};
        short pair = cells[column].style & VIEW_WARNING && terminal->colour ? 1 : 0;
        if (!cells[column].code)
            continue;
        if (setcchar(&cell, code, attributes(terminal, cells[column].style), pair, NULL) == OK)
            mvadd_wchnstr(row, column, &cell, 1);
    }
}

void terminal_show(struct terminal *terminal, const struct view *view)
{
    erase();
    for (int row = 0; row < view->rows; row++)
        show_row(terminal, view, row);
    move(view->cursor_row, view->cursor_column);
    refresh();
}

void terminal_read_mouse(struct terminal *terminal, bool on)
{
    if (terminal->mouse == on)
        return;
    terminal->mouse = on;
    send_now(terminal, on ? MOUSE_ON : MOUSE_OFF);
}

void terminal_send(struct terminal *terminal, const char *sequence)
{
    fputs(sequence, terminal->out);
    fflush(terminal->out);
}

/* ---- events ---- */

static long long milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (long long)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

static void fit_size(void)
{
    struct winsize size;
    if (!ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) && size.ws_row && size.ws_col &&
        is_term_resized(size.ws_row, size.ws_col))
        resizeterm(size.ws_row, size.ws_col);
}

/* What another program may have left otherwise. */
static void take_modes_back(const struct terminal *terminal)
{
    send_now(terminal, PASTE_ON);
    if (terminal->mouse)
        send_now(terminal, MOUSE_ON);
    clearok(curscr, TRUE);
}

/* Gives the terminal back and stops, as Ctrl-Z asks; goes on when the shell says so. */
static void stop_here(const struct terminal *terminal)
{
    struct sigaction stop = {.sa_handler = SIG_DFL};
    send_now(terminal, PASTE_OFF MOUSE_OFF);
    endwin();
    sigemptyset(&stop.sa_mask);
    sigaction(SIGTSTP, &stop, NULL);
    raise(SIGTSTP);
    stop.sa_handler = on_signal;
    stop.sa_flags = SA_RESTART;
    sigaction(SIGTSTP, &stop, NULL);
}

/* While another program has the terminal, Ctrl-Z is for both: this one stops with it. */
void terminal_lend(struct terminal *terminal)
{
    struct sigaction stop = {.sa_handler = SIG_DFL};
    send_now(terminal, PASTE_OFF MOUSE_OFF);
    endwin();
    sigemptyset(&stop.sa_mask);
    sigaction(SIGTSTP, &stop, NULL);
}

void terminal_take_back(struct terminal *terminal)
{
    catch_stop();
    fit_size();
    take_modes_back(terminal);
}

/* One signal from the pipe; false when there is none. */
static bool take_signal(struct terminal *terminal, struct event *event)
{
    unsigned char number;
    if (signal_pipe[0] < 0 || read(signal_pipe[0], &number, 1) != 1)
        return false;
    if (number == SIGTSTP)
        stop_here(terminal);
    if (number == SIGWINCH || number == SIGCONT || number == SIGTSTP) {
        fit_size();
        if (number != SIGWINCH)
            take_modes_back(terminal);
        *event = (struct event){.kind = EVENT_RESIZE};
    } else {
        *event = (struct event){.kind = EVENT_END, .signal = number};
    }
    return true;
}

static int special_key(wint_t code)
{
    static const struct {
        wint_t code;
        int key;
    } keys[] = {
        {KEY_UP, KEY_ARROW_UP},       {KEY_DOWN, KEY_ARROW_DOWN},   {KEY_LEFT, KEY_ARROW_LEFT},
        {KEY_RIGHT, KEY_ARROW_RIGHT}, {KEY_HOME, KEY_GO_FIRST},     {KEY_END, KEY_GO_LAST},
        {KEY_PPAGE, KEY_LEAF_UP},     {KEY_NPAGE, KEY_LEAF_DOWN},   {KEY_IC, KEY_INSERT_ITEM},
        {KEY_DC, KEY_DELETE_ITEM},    {KEY_BACKSPACE, KEY_RUB_OUT}, {KEY_BTAB, KEY_BACK_TAB},
        {KEY_ENTER, KEY_RETURN}};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        if (keys[i].code == code)
            return keys[i].key;
    }
    if (code >= KEY_F(1) && code <= KEY_F(12))
        return KEY_F1 + (int)(code - KEY_F(1));
    return KEY_NONE;
}

static int plain_key(wint_t code)
{
    if (code == '\n' || code == '\r')
        return KEY_RETURN;
    if (code == 127 || code == 8)
        return KEY_RUB_OUT;
    return (int)code;
}

/* A number of at most four figures, and what is behind it; -1, and nothing moved, for none. */
static int read_number(const char **at)
{
    int number = 0;
    int figures = 0;
    for (; figures < 4 && (*at)[figures] >= '0' && (*at)[figures] <= '9'; figures++)
        number = 10 * number + ((*at)[figures] - '0');
    *at += figures;
    return figures ? number : -1;
}

/*
 * "<0;12;5M" is a press of the first button in column 12 of row 5, "<64;..." and "<65;..." the
 * wheel, a small m at the end a release. False for what is not asked for.
 */
static bool read_pointer(const char *rest, struct event *event)
{
    static const char behind[] = {';', ';', 'M'};
    int numbers[3]; /* button, column, row */
    if (*rest++ != '<')
        return false;
    for (size_t i = 0; i < sizeof behind; i++) {
        numbers[i] = read_number(&rest);
        if (numbers[i] < 0 || *rest++ != behind[i])
            return false;
    }
    *event = (struct event){.kind = EVENT_POINTER,
                            .pointer = {POINTER_PRESS, numbers[2] - 1, numbers[1] - 1}};
    if (numbers[0] == 64)
        event->pointer.kind = POINTER_WHEEL_UP;
    else if (numbers[0] == 65)
        event->pointer.kind = POINTER_WHEEL_DOWN;
    return numbers[0] == 0 || numbers[0] == 64 || numbers[0] == 65;
}

/*
 * After ESC: the paste marks, the mouse, or the rest of a sequence that came late. Reads what is
 * there already; returns true when it was such a rest and nothing is left to be done with the ESC.
 * `*ret_whole` when `event` is one to be given.
 */
static bool take_sequence(struct terminal *terminal, struct event *event, bool *ret_whole)
{
    wint_t code;
    char rest[24] = "";
    size_t length = 0;
    int result = get_wch(&code);
    *ret_whole = false;
    if (result != OK || (code != '[' && code != 'O')) {
        if (result == OK)
            unget_wch((wchar_t)code);
        return false;
    }
    while (length + 1 < sizeof rest && get_wch(&code) == OK) {
        rest[length++] = (char)code;
        if (code >= '@' && code <= '~')
            break;
    }
    if (strcmp(rest, "200~") == 0) {
        terminal->pasting = true;
        text_clear(&terminal->paste);
    }
    *ret_whole = terminal->mouse && read_pointer(rest, event);
    return true;
}

static struct event pasted(struct terminal *terminal)
{
    terminal->pasting = false;
    return (struct event){.kind = EVENT_PASTE, .text = text_string(&terminal->paste)};
}

/* A character while pasting; true when the paste is whole. */
static bool take_pasted(struct terminal *terminal, wint_t code)
{
    static const char end[] = "\033[201~";
    char bytes[4];
    text_add_bytes(&terminal->paste, bytes, (size_t)utf8_put((unsigned)code, bytes));
    size_t length = terminal->paste.length;
    if (length < sizeof end - 1 || text_failed(&terminal->paste) ||
        strcmp(terminal->paste.at + length - (sizeof end - 1), end) != 0)
        return false;
    terminal->paste.length = length - (sizeof end - 1);
    terminal->paste.at[terminal->paste.length] = '\0';
    return true;
}

/* What comes of a code after its ESC was taken for a key, in one piece or in several. */
static bool is_torn_rest(struct terminal *terminal, wint_t code)
{
    bool soon = terminal->escaped && milliseconds() - terminal->escaped < TORN_SEQUENCE_MS;
    bool begins = !terminal->torn && (code == '[' || code == 'O');

    if (!soon || code == KEY_ESCAPE || (!terminal->torn && !begins)) {
        terminal->escaped = 0;
        terminal->torn = false;
        return false;
    }
    terminal->torn = begins || !(code >= '@' && code <= '~');
    if (!terminal->torn)
        terminal->escaped = 0;
    return true;
}

/* One key or paste from the keyboard; false when nothing whole is there. */
static bool take_key(struct terminal *terminal, struct event *event)
{
    wint_t code;
    for (int result; (result = get_wch(&code)) != ERR;) {
        if (terminal->pasting) {
            if (result == OK && take_pasted(terminal, code)) {
                *event = pasted(terminal);
                return true;
            }
            continue;
        }
        if (result == KEY_CODE_YES && code == KEY_RESIZE) {
            *event = (struct event){.kind = EVENT_RESIZE};
            return true;
        }
        bool whole = false;
        if (result == OK && (is_torn_rest(terminal, code) ||
                             (code == KEY_ESCAPE && take_sequence(terminal, event, &whole)))) {
            if (whole)
                return true;
            continue;
        }
        if (result == OK && code == KEY_ESCAPE)
            terminal->escaped = milliseconds();
        int key = result == OK ? plain_key(code) : special_key(code);
        if (key != KEY_NONE) {
            *event = (struct event){.kind = EVENT_KEY, .key = key};
            return true;
        }
    }
    return false;
}

bool terminal_has_more(struct terminal *terminal)
{
    struct pollfd input = {terminal->keyboard, POLLIN, 0};
    return poll(&input, 1, 0) > 0 && input.revents & POLLIN;
}

/* Input that is readable and empty has ended: the line was hung up. */
static bool has_ended(const struct terminal *terminal, const struct pollfd *input)
{
    int waiting = 0;
    if (input->revents & (POLLERR | POLLNVAL))
        return true;
    if (!(input->revents & (POLLIN | POLLHUP)))
        return false;
    return ioctl(terminal->keyboard, FIONREAD, &waiting) != 0 || waiting == 0;
}

void terminal_wait(struct terminal *terminal, int idle, struct event *ret_event)
{
    for (;;) {
        if (take_signal(terminal, ret_event) || take_key(terminal, ret_event))
            return;
        struct pollfd inputs[2] = {{terminal->keyboard, POLLIN, 0}, {signal_pipe[0], POLLIN, 0}};
        int wait = terminal->pasting && idle < PASTE_MS ? PASTE_MS : idle;
        int ready = poll(inputs, signal_pipe[0] >= 0 ? 2 : 1, wait);
        if (ready == 0) {
            *ret_event = (struct event){.kind = EVENT_IDLE};
            if (terminal->pasting)
                *ret_event = pasted(terminal);
            return;
        }
        if (ready > 0 && has_ended(terminal, &inputs[0])) {
            *ret_event = (struct event){.kind = EVENT_END};
            return;
        }
    }
}
