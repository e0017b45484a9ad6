/*
 * The whole program, from the outside: what a maker types, what the screen says, and what is in the
 * file afterwards. The program's path is the first argument.
 */
#include "console.h"
#include "dice.h"
#include "kept.h"
#include "workshop.h"

#include <fcntl.h>
#include <locale.h>
#include <setjmp.h>
#include <signal.h>
#include <sqlite3.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

static const char *program;

struct maker {
    struct workshop_place place;
    struct console console;
};

static int begin(void **state)
{
    struct maker *maker = calloc(1, sizeof *maker);
    assert_non_null(maker);
    place_begin(&maker->place);
    *state = maker;
    return 0;
}

static int end(void **state)
{
    struct maker *maker = *state;
    place_end(&maker->place);
    free(maker);
    return 0;
}

static void start(struct maker *maker)
{
    console_begin(&maker->console, program, maker->place.path, NULL);
    console_wait(&maker->console, "all builds");
}

static void leave(struct maker *maker)
{
    console_press(&maker->console, "q");
    int status = console_end(&maker->console);
    assert_true(WIFEXITED(status));
    assert_int_equal(WEXITSTATUS(status), 0);
}

/* A headboard from the starter piece, with every answer as it stands. */
static void make_headboard(struct maker *maker)
{
    struct console *console = &maker->console;
    console_press(console, "F2");
    console_wait(console, "Wing headboard");
    console_press(console, "Down Down Enter");
    console_wait(console, "Name of the build");
    console_press(console, "Enter Enter Enter Enter Enter");
    console_wait(console, "made;");
}

/* From the list of builds, to the one that was made first. */
static void open_build(struct maker *maker)
{
    console_press(&maker->console, "Enter");
    console_wait(&maker->console, "boxes, layers, joins");
}

/* To the width of the first box. */
static void open_width(struct maker *maker)
{
    console_press(&maker->console, "Enter");
    console_wait(&maker->console, "box: C");
    console_press(&maker->console, "Down Down");
    console_wait(&maker->console, "field 3 of 17");
}

static void set_width(struct maker *maker, const char *width)
{
    char keys[64];
    snprintf(keys, sizeof keys, "Enter '%s' Enter", width);
    console_press(&maker->console, keys);
    console_wait(&maker->console, "field 4 of 17");
    console_press(&maker->console, "Up");
    console_wait(&maker->console, "field 3 of 17");
}

/* The width of box C in the file, when nobody has it open. */
static int64_t width_in_file(struct maker *maker)
{
    struct desk *desk = desk_at(&maker->place);
    DONE(desk_take_up_named(desk, "Wing headboard", note));
    const struct model *model = desk_model(desk);
    int64_t width = MODEL_FIND(model, box, model_key_named(model, ENTITY_box, "C"))->width;
    desk_close(desk);
    return width;
}

/* ---- what a maker does ---- */

static void a_newcomer_is_at_the_plan_in_forty_keys_and_ticks_in_ten(void **state)
{
    struct maker *maker = *state;
    start(maker);
    make_headboard(maker);
    console_press(&maker->console, "F5");
    console_wait(&maker->console, "Fix sizes");
    assert_true(maker->console.keys <= 40);
    int before = maker->console.keys;
    console_press(&maker->console, "Space");
    console_wait(&maker->console, "[x]   1");
    assert_true(maker->console.keys - before <= 10);
    leave(maker);
}

/* The bed is 54 in wide and the head 48 in high: typed, not taken as proposed. */
static void a_headboard_of_own_size_is_priced_in_forty_keys_and_begun_in_ten(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    console_press(console, "a");
    console_wait(console, "Wing headboard");
    console_press(console, "Down Down Enter");
    console_wait(console, "Name of the build");
    console_press(console, "Enter Enter '54' Enter '48' Enter Enter");
    console_wait(console, "made;");
    console_press(console, "m");
    console_wait(console, "forecast");
    assert_true(console->keys <= 40);
    int before = console->keys;
    console_press(console, "o Space");
    console_wait(console, "[x]   1");
    assert_true(console->keys - before <= 10);
    leave(maker);
}

/* Two builds, one trolley, twelve lines: nine dollars each, written down in both. */
static void a_trip_of_twelve_lines_takes_thirty_keys(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    make_headboard(maker);
    console_press(console, "Esc");
    console_wait(console, "all builds");
    make_headboard(maker);
    console_press(console, "Esc");
    console_wait(console, "all builds");
    int before = console->keys;
    console_press(console, "g");
    console_wait(console, "2 builds, total");
    for (int i = 0; i < 12; i++)
        console_press(console, "9 Enter");
    console_wait(console, "paid line by line 108.00");
    assert_true(console->keys - before <= 30);
    leave(maker);
    struct desk *desk = desk_at(&maker->place);
    DONE(desk_take_up_named(desk, "Wing headboard 2", note));
    assert_int_equal(desk_model(desk)->spends.count, 12);
    desk_close(desk);
}

/* The clock, a tick by it, two more, of which one is taken back and made again, what was paid; and
 * all of it is there on the next day. */
static void a_day_at_the_bench_is_there_on_the_next(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    make_headboard(maker);
    console_press(console, "o i");
    console_wait(console, "clock since");
    console_press(console, "Space");
    console_wait(console, "[x]   1");
    console_press(console, "Space Space");
    console_wait(console, "[x]   3");
    console_press(console, "Up Space");
    console_wait(console, "the tick is taken back");
    console_press(console, "u");
    console_wait(console, "taken back");
    console_press(console, "b 9 Enter");
    console_wait(console, "paid so far 9.00");
    leave(maker);
    start(maker);
    console_wait(console, "3/");
    console_press(console, "Enter m");
    console_wait(console, "forecast");
    console_wait(console, "9.00");
    console_press(console, "Esc o");
    console_wait(console, "[x]   3");
    leave(maker);
}

static void the_mouse_chooses_when_it_is_asked_to(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    console_press(console, "F2 M");
    console_wait(console, "a second click opens");
    console_send(console, "\033[<0;5;4M\033[<0;5;4m");
    console_send(console, "\033[<0;5;4M\033[<0;5;4m");
    console_wait(console, "Name of the build");
    console_press(console, "Esc");
    console_wait(console, "all builds");
    leave(maker);
}

/* "MDAw" and the like would do for any text: the line begins with the mark of what is not paid. */
static void a_line_goes_into_the_terminals_clipboard(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    make_headboard(maker);
    console_press(console, "b y");
    console_wait(console, "1 line is in the terminal's clipboard");
    assert_int_equal(strncmp(console->copied, "WyBdI", 5), 0); /* "[ ] " */
    leave(maker);
}

static void settings_are_read_and_what_is_wrong_with_them_is_told(void **state)
{
    struct maker *maker = *state;
    char folder[600];
    char path[700];
    snprintf(folder, sizeof folder, "%s/stuffover", maker->place.folder);
    snprintf(path, sizeof path, "%s/terminal.conf", folder);
    assert_int_equal(mkdir(folder, 0700), 0);
    file_put(path, "key leave Q F4\nkey fly z\n");
    start(maker);
    console_wait(&maker->console, "settings, line 2: fly is no action");
    console_press(&maker->console, "F2");
    console_wait(&maker->console, "Q leave");
    console_press(&maker->console, "q Q");
    assert_int_equal(console_end(&maker->console), 0);
    unlink(path);
    rmdir(folder);
}

/* An editor that adds a line: the note is in the file, the terminal is the program's again. */
static void a_note_is_written_in_ones_own_editor(void **state)
{
    struct maker *maker = *state;
    setenv("VISUAL", "printf 'second line\\n' >>", 1);
    setenv("TMPDIR", maker->place.folder, 1);
    start(maker);
    make_headboard(maker);
    console_press(&maker->console, "N");
    console_wait(&maker->console, "noted; u takes it back");
    assert_true(maker->console.alternate);
    assert_true(console_marks_pastes(&maker->console));
    console_press(&maker->console, "N");
    console_wait(&maker->console, "noted; u takes it back");
    leave(maker);
    unsetenv("VISUAL");
    unsetenv("TMPDIR");
    struct desk *desk = desk_at(&maker->place);
    DONE(desk_take_up_named(desk, "Wing headboard", note));
    const struct model *model = desk_model(desk);
    assert_string_equal(MODEL_FIND(model, box, model_key_named(model, ENTITY_box, "C"))->note,
                        "second line\nsecond line");
    desk_close(desk);
}

static void an_editor_that_fails_changes_nothing(void **state)
{
    struct maker *maker = *state;
    setenv("VISUAL", "false", 1);
    start(maker);
    make_headboard(maker);
    console_press(&maker->console, "N");
    console_wait(&maker->console, "the note is as it was");
    assert_true(maker->console.alternate);
    leave(maker);
    unsetenv("VISUAL");
}

static void leaving_gives_the_terminal_back(void **state)
{
    struct maker *maker = *state;
    start(maker);
    assert_true(maker->console.alternate);
    assert_true(console_marks_pastes(&maker->console));
    console_press(&maker->console, "q");
    console_wait_end(&maker->console);
    assert_false(maker->console.alternate);
    assert_true(maker->console.cursor);
    assert_false(console_marks_pastes(&maker->console));
    assert_int_equal(console_end(&maker->console), 0);
}

static void an_edit_is_refused_corrected_and_taken_back(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    make_headboard(maker);
    open_width(maker);
    console_press(console, "Enter '80 acres' Enter");
    console_wait(console, "a length is in");
    console_press(console, "Backspace Backspace Backspace Backspace Backspace Backspace");
    console_wait(console, "(+");
    console_press(console, "Enter");
    console_wait(console, "field 4 of 17");
    console_wait(console, "80 in");
    leave(maker);
    assert_int_equal(width_in_file(maker), 80 * LENGTH_INCH);
    start(maker);
    console_press(console, "u");
    console_wait(console, "taken back: width of C");
    leave(maker);
    assert_int_equal(width_in_file(maker), 63 * LENGTH_INCH);
}

static void ticks_and_spend_are_there_when_one_comes_back(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    make_headboard(maker);
    console_press(console, "F5");
    console_wait(console, "Fix sizes");
    console_press(console, "Space");
    console_wait(console, "[x]   1");
    console_press(console, "F7");
    console_wait(console, "Nothing was paid yet");
    console_press(console, "F2");
    console_wait(console, "what was paid");
    console_press(console, "Enter '61.35' Enter");
    console_wait(console, "of it, tax");
    console_wait(console, "61.35");
    leave(maker);
    start(maker);
    console_wait(console, "1/");
    console_wait(console, "61.35");
    console_press(console, "Enter");
    console_wait(console, "boxes, layers, joins");
    console_press(console, "F5");
    console_wait(console, "[x]   1");
    leave(maker);
}

static void twenty_edits_are_undone_and_after_a_pause_done_again(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    char width[16];
    start(maker);
    make_headboard(maker);
    open_width(maker);
    for (int i = 0; i < 20; i++) {
        snprintf(width, sizeof width, "%d in", 70 + i);
        set_width(maker, width);
        console_wait(console, width);
    }
    for (int i = 18; i >= 0; i--) {
        snprintf(width, sizeof width, "%d in", 70 + i);
        console_press(console, "F11");
        console_wait(console, width);
    }
    console_press(console, "F11");
    console_wait(console, "63 in");
    leave(maker);
    assert_int_equal(width_in_file(maker), 63 * LENGTH_INCH);
    start(maker);
    console_press(console, "Enter Enter");
    console_wait(console, "63 in");
    for (int i = 0; i < 20; i++) {
        snprintf(width, sizeof width, "%d in", 70 + i);
        console_press(console, "F12");
        console_wait(console, width);
    }
    leave(maker);
    assert_int_equal(width_in_file(maker), 89 * LENGTH_INCH);
}

/* ---- what happens to a maker ---- */

static void a_killed_program_has_lost_nothing(void **state)
{
    struct maker *maker = *state;
    start(maker);
    make_headboard(maker);
    open_width(maker);
    set_width(maker, "71");
    console_press(&maker->console, "Enter '7");
    kill(maker->console.program, SIGKILL);
    int status = console_end(&maker->console);
    assert_true(WIFSIGNALED(status));
    assert_int_equal(width_in_file(maker), 71 * LENGTH_INCH);
}

static void a_line_hung_up_ends_the_program_and_loses_nothing(void **state)
{
    struct maker *maker = *state;
    start(maker);
    make_headboard(maker);
    open_width(maker);
    set_width(maker, "71");
    console_hang_up(&maker->console);
    int status = console_end(&maker->console);
    assert_true(WIFEXITED(status));
    assert_int_equal(WEXITSTATUS(status), 128 + SIGHUP);
    assert_int_equal(width_in_file(maker), 71 * LENGTH_INCH);
}

static void signals_give_the_terminal_back(void **state)
{
    static const int signals[] = {SIGTERM, SIGINT, SIGHUP};
    struct maker *maker = *state;
    for (size_t i = 0; i < sizeof signals / sizeof *signals; i++) {
        start(maker);
        assert_true(maker->console.alternate);
        kill(maker->console.program, signals[i]);
        int status = console_end(&maker->console);
        assert_true(WIFEXITED(status));
        assert_int_equal(WEXITSTATUS(status), 128 + signals[i]);
        assert_false(maker->console.alternate);
    }
}

static void a_crash_gives_the_terminal_back_too(void **state)
{
    struct maker *maker = *state;
    start(maker);
    kill(maker->console.program, SIGABRT);
    int status = console_end(&maker->console);
    assert_false(maker->console.alternate);
    assert_true(WIFSIGNALED(status));
    assert_int_equal(WTERMSIG(status), SIGABRT);
}

static void a_stopped_program_comes_back_at_the_size_of_then(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    console_begin_job(console, program, maker->place.path);
    console_wait(console, "all builds");
    console_press(console, "Ctrl-Z");
    console_wait(console, "[stopped]");
    assert_false(console->alternate);
    console_resize(console, 10, 40);
    console_press(console, "Enter");
    console_wait(console, "60 x 18 or more");
    assert_true(console->alternate);
    console_resize(console, 24, 80);
    console_press(console, "F2");
    console_wait(console, "Wing headboard");
    leave(maker);
}

/* The program's group has nobody who could wake it, so the stop must not hold. */
static void a_stop_that_nobody_can_end_is_survived(void **state)
{
    struct maker *maker = *state;
    start(maker);
    console_press(&maker->console, "Ctrl-Z F2");
    console_wait(&maker->console, "Wing headboard");
    leave(maker);
}

static void a_pasted_letter_is_no_key(void **state)
{
    struct maker *maker = *state;
    start(maker);
    console_paste(&maker->console, "q");
    console_wait(&maker->console, "pasted text goes into a field");
    console_paste(&maker->console, "quit\nq\nqqq\n");
    console_press(&maker->console, "F2");
    console_wait(&maker->console, "Wing headboard");
    leave(maker);
}

static void control_characters_in_a_paste_are_blanks(void **state)
{
    struct maker *maker = *state;
    start(maker);
    console_press(&maker->console, "F2 Enter");
    console_wait(&maker->console, "Name of the build");
    console_paste(&maker->console, "Quiet\001\033[Bq\004");
    console_wait(&maker->console, "Quiet  [Bq");
    console_press(&maker->console, "Esc");
    console_wait(&maker->console, "all builds");
    leave(maker);
}

/* A slow line cuts the code of an arrow in two: the first half is Esc, the rest no letters. */
static void a_code_that_comes_in_halves_types_nothing(void **state)
{
    struct maker *maker = *state;
    start(maker);
    console_press(&maker->console, "F2 Enter");
    console_wait(&maker->console, "Name of the build");
    console_send(&maker->console, "\033");
    console_wait(&maker->console, "all builds");
    console_send(&maker->console, "[");
    console_send(&maker->console, "B");
    console_press(&maker->console, "F2");
    console_wait(&maker->console, "new build");
    leave(maker);
}

static void pasted_lines_go_into_the_field_as_one(void **state)
{
    struct maker *maker = *state;
    start(maker);
    console_press(&maker->console, "F2 Enter");
    console_wait(&maker->console, "Name of the build");
    console_paste(&maker->console, "Quiet\nbench");
    console_wait(&maker->console, "Quiet bench");
    console_press(&maker->console, "Esc");
    console_wait(&maker->console, "all builds");
    leave(maker);
}

static void a_storm_of_sizes_leaves_the_screen_whole(void **state)
{
    struct maker *maker = *state;
    struct console *console = &maker->console;
    start(maker);
    make_headboard(maker);
    for (int i = 0; i < 200; i++)
        console_resize(console, 1 + i * 37 % 60, 1 + i * 53 % 200);
    console_resize(console, 9, 40);
    console_wait(console, "60 x 18 or more");
    console_resize(console, 40, 120);
    console_wait(console, "boxes, layers, joins");
    console_resize(console, 24, 80);
    console_wait(console, "boxes, layers, joins");
    leave(maker);
}

static void two_programs_see_each_other(void **state)
{
    struct maker *maker = *state;
    start(maker);
    make_headboard(maker);
    struct desk *other = desk_at(&maker->place);
    DONE(desk_take_up_named(other, "Wing headboard", note));
    int64_t key = model_key_named(desk_model(other), ENTITY_box, "C");
    DONE(desk_set(other, ENTITY_box, key, "width", "77 in", note));
    desk_close(other);
    console_wait(&maker->console, "another program changed the workshop");
    console_wait(&maker->console, "ladder 77 x");
    leave(maker);
}

/* ---- where it cannot run ---- */

static int run_without_terminal(struct maker *maker, char *said, size_t room)
{
    int ends[2];
    int status;
    assert_int_equal(pipe(ends), 0);
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        int nothing = open("/dev/null", O_RDWR);
        dup2(nothing, STDIN_FILENO);
        dup2(nothing, STDOUT_FILENO);
        dup2(ends[1], STDERR_FILENO);
        execl(program, program, "--store", maker->place.path, (char *)NULL);
        _exit(127);
    }
    close(ends[1]);
    ssize_t got = read(ends[0], said, room - 1);
    said[got > 0 ? got : 0] = '\0';
    close(ends[0]);
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_true(WIFEXITED(status));
    return WEXITSTATUS(status);
}

static void without_a_terminal_it_says_which_command_prints_the_same(void **state)
{
    char said[512];
    assert_int_equal(run_without_terminal(*state, said, sizeof said), 2);
    assert_non_null(strstr(said, "stuffover plan"));
}

static void a_terminal_of_no_use_is_told_of(void **state)
{
    static const char *const types[] = {"no-such-terminal", "dumb"};
    struct maker *maker = *state;
    for (size_t i = 0; i < sizeof types / sizeof *types; i++) {
        console_begin(&maker->console, program, maker->place.path, types[i]);
        console_wait(&maker->console, "stuffover: ");
        int status = console_end(&maker->console);
        assert_true(WIFEXITED(status));
        assert_int_equal(WEXITSTATUS(status), 3);
    }
}

/* ---- whatever is pressed ---- */

/* Not Ctrl-C, Ctrl-Z, Ctrl-\ and Ctrl-D, and seldom the letter that leaves. */
static void press_something(struct console *console, struct dice *dice)
{
    static const char *const often[] = {
        "Down", "Up",  "Enter", "Esc", "Left", "Right", "PgDn",     "PgUp", "Home",
        "End",  "Tab", "Space", "Del", "F1",   "F2",    "F3",       "F5",   "F6",
        "F7",   "F8",  "F9",    "F10", "F11",  "F12",   "Backspace"};
    static const char letters[] = "acdobmftwur?0123456789 /-'x.qilz";
    static const char *const odd[] = {
        "\xc3\xa9", "\xe6\x9c\xa8", "\xff\xfe", "\033[999~", "\033[200~pasted q\n\033[201~",
        "\001",     "\033[1;5C"};
    int64_t kind = dice_between(dice, 0, 99);
    if (kind < 55) {
        console_press(console, often[dice_between(dice, 0, sizeof often / sizeof *often - 1)]);
    } else if (kind < 95) {
        char letter[2] = {letters[dice_between(dice, 0, sizeof letters - 2)], '\0'};
        console_send(console, letter);
    } else {
        console_send(console, odd[dice_between(dice, 0, sizeof odd / sizeof *odd - 1)]);
    }
}

/* The program may have been left, which is no fault; nothing else may end it. */
static void go_on(struct maker *maker)
{
    console_drain(&maker->console);
    if (!maker->console.ended)
        return;
    int status = console_end(&maker->console);
    assert_true(WIFEXITED(status));
    assert_int_equal(WEXITSTATUS(status), 0);
    start(maker);
}

static void press_two_thousand(struct maker *maker, struct dice *dice)
{
    for (int i = 0; i < 2000; i++) {
        press_something(&maker->console, dice);
        if (dice_between(dice, 0, 19) == 0)
            console_resize(&maker->console, (int)dice_between(dice, 1, 60),
                           (int)dice_between(dice, 1, 160));
        go_on(maker);
    }
}

/* STUFFOVER_LONG tries more of them. */
static void two_thousand_keys_by_chance_leave_the_file_sound(void **state)
{
    struct maker *maker = *state;
    struct dice dice = {20261125};
    start(maker);
    make_headboard(maker);
    leave(maker);
    for (int run = getenv("STUFFOVER_LONG") ? 20 : 1; run > 0; run--) {
        start(maker);
        press_two_thousand(maker, &dice);
        console_resize(&maker->console, 24, 80);
        kill(maker->console.program, SIGTERM);
        int status = console_end(&maker->console);
        assert_true(WIFEXITED(status));
        assert_place_is_sound(&maker->place);
    }
}

/* ---- killed at any moment ---- */

/* How often the file was changed, from its header under a lock; what is half written has none. */
static uint32_t changes_of(const struct maker *maker)
{
    unsigned char bytes[4];
    sqlite3_file *file = NULL;
    sqlite3 *db = NULL;
    assert_int_equal(sqlite3_open_v2(maker->place.path, &db, SQLITE_OPEN_READWRITE, NULL), 0);
    sqlite3_busy_timeout(db, 20000);
    assert_int_equal(sqlite3_exec(db, "BEGIN; SELECT * FROM workshop", NULL, NULL, NULL), 0);
    assert_int_equal(sqlite3_file_control(db, "main", SQLITE_FCNTL_FILE_POINTER, &file), 0);
    assert_int_equal(file->pMethods->xRead(file, bytes, sizeof bytes, 24), 0);
    sqlite3_close(db);
    return (uint32_t)bytes[0] << 24 | (uint32_t)bytes[1] << 16 | (uint32_t)bytes[2] << 8 | bytes[3];
}

/* It may have been left by its own key just before. */
static void kill_program(struct maker *maker)
{
    kill(maker->console.program, SIGKILL);
    int status = console_end(&maker->console);
    if (WIFEXITED(status))
        assert_int_equal(WEXITSTATUS(status), 0);
    else
        assert_int_equal(WTERMSIG(status), SIGKILL);
}

/* The next start finds everything in order, and its screen comes and goes as ever. */
static void start_anew_and_leave(struct maker *maker)
{
    assert_place_is_sound(&maker->place);
    start(maker);
    assert_null(strstr(console_screen(&maker->console), "damaged"));
    console_press(&maker->console, "q");
    console_wait_end(&maker->console);
    assert_false(maker->console.alternate);
    assert_true(maker->console.cursor);
    assert_int_equal(console_end(&maker->console), 0);
    assert_int_equal(access(maker->place.path, F_OK), 0);
}

/* Whatever was in the file before the last keys is in it after the kill. */
static void kill_under_keys_by_chance(struct maker *maker, struct dice *dice)
{
    start(maker);
    for (int64_t i = dice_between(dice, 0, 30); i > 0; i--) {
        press_something(&maker->console, dice);
        go_on(maker);
    }
    uint32_t before = changes_of(maker);
    for (int64_t i = dice_between(dice, 1, 10); i > 0; i--)
        press_something(&maker->console, dice);
    console_watch(&maker->console, (int)dice_between(dice, 0, 30));
    kill_program(maker);
    assert_true(changes_of(maker) >= before);
    start_anew_and_leave(maker);
}

/* Widths one after the other; the screen shows each that is taken, until the program is killed
 * while it takes one. */
static void kill_within_an_edit(struct maker *maker, struct dice *dice)
{
    int64_t shown = width_in_file(maker);
    int64_t typed;
    char keys[64];
    char words[32];
    start(maker);
    open_build(maker);
    open_width(maker);
    for (int64_t left = dice_between(dice, 0, 4);; left--) {
        typed = dice_between(dice, 62, 95);
        snprintf(keys, sizeof keys, "Enter '%d' Enter", (int)typed);
        snprintf(words, sizeof words, "%d in", (int)typed);
        typed *= LENGTH_INCH;
        console_press(&maker->console, keys);
        if (left == 0)
            break;
        console_wait(&maker->console, "field 4 of 17");
        console_wait(&maker->console, words);
        shown = typed;
        console_press(&maker->console, "Up");
        console_wait(&maker->console, "field 3 of 17");
    }
    console_watch(&maker->console, (int)dice_between(dice, 0, 30));
    kill_program(maker);
    int64_t width = width_in_file(maker);
    if (width != shown)
        assert_int_equal(width, typed);
    start_anew_and_leave(maker);
}

/* STUFFOVER_LONG kills two hundred times in each way. */
static void killed_at_any_moment_it_has_kept_what_it_showed(void **state)
{
    struct maker *maker = *state;
    struct dice dice = {20261130};
    int kills = getenv("STUFFOVER_LONG") ? 200 : 4;
    start(maker);
    make_headboard(maker);
    leave(maker);
    for (int i = 0; i < kills; i++)
        kill_within_an_edit(maker, &dice);
    for (int i = 0; i < kills; i++)
        kill_under_keys_by_chance(maker, &dice);
}

int main(int argc, char **argv)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    if (argc < 2)
        return 2;
    program = argv[1];
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        FACT(a_newcomer_is_at_the_plan_in_forty_keys_and_ticks_in_ten),
        FACT(a_headboard_of_own_size_is_priced_in_forty_keys_and_begun_in_ten),
        FACT(a_trip_of_twelve_lines_takes_thirty_keys),
        FACT(a_day_at_the_bench_is_there_on_the_next),
        FACT(the_mouse_chooses_when_it_is_asked_to),
        FACT(a_line_goes_into_the_terminals_clipboard),
        FACT(settings_are_read_and_what_is_wrong_with_them_is_told),
        FACT(a_note_is_written_in_ones_own_editor),
        FACT(an_editor_that_fails_changes_nothing),
        FACT(leaving_gives_the_terminal_back),
        FACT(an_edit_is_refused_corrected_and_taken_back),
        FACT(ticks_and_spend_are_there_when_one_comes_back),
        FACT(twenty_edits_are_undone_and_after_a_pause_done_again),
        FACT(a_killed_program_has_lost_nothing),
        FACT(a_line_hung_up_ends_the_program_and_loses_nothing),
        FACT(signals_give_the_terminal_back),
        FACT(a_crash_gives_the_terminal_back_too),
        FACT(a_stopped_program_comes_back_at_the_size_of_then),
        FACT(a_stop_that_nobody_can_end_is_survived),
        FACT(a_pasted_letter_is_no_key),
        FACT(control_characters_in_a_paste_are_blanks),
        FACT(a_code_that_comes_in_halves_types_nothing),
        FACT(pasted_lines_go_into_the_field_as_one),
        FACT(a_storm_of_sizes_leaves_the_screen_whole),
        FACT(two_programs_see_each_other),
        FACT(without_a_terminal_it_says_which_command_prints_the_same),
        FACT(a_terminal_of_no_use_is_told_of),
        FACT(two_thousand_keys_by_chance_leave_the_file_sound),
        FACT(killed_at_any_moment_it_has_kept_what_it_showed),
    };
    int failed = cmocka_run_group_tests_name("program", tests, NULL, NULL);
    return failed ? 1 : 0;
}
