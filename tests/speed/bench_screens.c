/*
 * Prints how much of the processor's time a key costs until its screen is painted, and what is sent
 * for it, in a workshop of 1,000 builds with the largest demo build open. The file lies in TMPDIR:
 * with that in memory the disk's sync costs nothing. Arguments: files of builds, the largest first.
 */
#include "stopwatch.h"
#include "tui/driver.h"
#include "tui/terminal.h"

#include <fcntl.h>
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <unistd.h>

#define BUILDS 1000
#define ROUNDS 12
#define KEYS_MOST 8000
#define FILE_MOST 1000000

/* ---- what is measured ---- */

enum { GROUP_MOVE, GROUP_PAGE, GROUP_PAUSE, GROUP_SCREEN, GROUP_EDIT, GROUP_ALL, GROUPS };

static const char *const group_names[GROUPS] = {
    "moving the selection", "a move that turns the list's page", "what follows when keys pause",
    "another screen",       "typing in a field, and taking it",  "all keys"};

struct tries {
    double ms[KEYS_MOST];
    long bytes[KEYS_MOST];
    int count;
};

struct bench {
    struct desk *desk;
    struct tui tui;
    struct terminal *terminal;
    FILE *out, *in;
    struct tries groups[GROUPS];
};

static long sent(struct bench *bench)
{
    fflush(bench->out);
    return (long)lseek(fileno(bench->out), 0, SEEK_END);
}

static void show(struct bench *bench)
{
    driver_paint(&bench->tui, 24, 80);
    terminal_show(bench->terminal, &bench->tui.view);
}

static void note_try(struct bench *bench, int group, double began, long before)
{
    struct tries *to = &bench->groups[group];
    if (to->count == KEYS_MOST)
        return;
    to->ms[to->count] = stopwatch_used_ms() - began;
    to->bytes[to->count++] = sent(bench) - before;
}

/* First line that shows of the list on top, or 0. */
static int list_top(struct bench *bench)
{
    const struct open_screen *top = &bench->tui.stack[bench->tui.depth - 1];
    return top->screen->list ? top->screen->list(top->state)->top : 0;
}

static void press(struct bench *bench, int key, int group)
{
    int top = list_top(bench);
    long before = sent(bench);
    double began = stopwatch_used_ms();
    driver_key(&bench->tui, key);
    show(bench);
    if (group == GROUP_MOVE && list_top(bench) != top)
        group = GROUP_PAGE;
    note_try(bench, GROUP_ALL, began, before);
    note_try(bench, group, began, before);
    before = sent(bench);
    began = stopwatch_used_ms();
    if (!driver_rest(&bench->tui))
        return;
    show(bench);
    note_try(bench, GROUP_PAUSE, began, before);
}

static void press_all(struct bench *bench, const int *keys, int group)
{
    for (; *keys; keys++)
        press(bench, *keys, group);
}

/* ---- the workshop ---- */

static void fail(const struct fault_note *note)
{
    fprintf(stderr, "%s\n", note->why);
    exit(1);
}

static void take_in(struct desk *desk, const char *bytes, size_t length)
{
    struct fault_note note = {0};
    if (desk_import(desk, bytes, length, NULL, NULL, &note))
        fail(&note);
}

static void take_file(struct desk *desk, const char *name)
{
    static char bytes[FILE_MOST];
    FILE *file = fopen(name, "rb");
    if (!file)
        exit(1);
    take_in(desk, bytes, fread(bytes, 1, sizeof bytes, file));
    fclose(file);
}

static void add_builds(struct desk *desk)
{
    char bytes[400];
    for (int i = 0; i < BUILDS; i++) {
        int length =
            snprintf(bytes, sizeof bytes,
                     "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"Build %d\"},\n"
                     "\"boxes\": [{\"key\": 1, \"name\": \"A\", \"width\": \"40 in\","
                     " \"depth\": \"3 in\", \"height\": \"40 in\"}]}\n",
                     i);
        take_in(desk, bytes, (size_t)length);
    }
}

/* ---- what is done ---- */

static void do_a_round(struct bench *bench)
{
    static const int open[] = {KEY_GO_FIRST, KEY_RETURN, 0};
    static const int screens[] = {'o', KEY_ESCAPE, 'b',        KEY_ESCAPE, 'k', KEY_ESCAPE,
                                  'm', KEY_ESCAPE, 'f',        KEY_ESCAPE, 'h', KEY_ESCAPE,
                                  't', KEY_ESCAPE, 'w',        KEY_ESCAPE, '?', KEY_ESCAPE,
                                  'o', KEY_RETURN, KEY_ESCAPE, KEY_ESCAPE, 0};
    static const int edit[] = {KEY_RETURN, KEY_ARROW_DOWN, KEY_ARROW_DOWN, KEY_RETURN, '7',
                               '1',        KEY_RETURN,     KEY_ARROW_UP,   KEY_RETURN, '7',
                               '0',        KEY_RETURN,     KEY_ESCAPE,     0};
    static const int leave[] = {KEY_ESCAPE, 0};
    for (int i = 0; i < 40; i++)
        press(bench, i < 20 ? KEY_ARROW_DOWN : KEY_ARROW_UP, GROUP_MOVE);
    press_all(bench, open, GROUP_SCREEN);
    for (int i = 0; i < 40; i++)
        press(bench, i < 20 ? KEY_ARROW_DOWN : KEY_ARROW_UP, GROUP_MOVE);
    press_all(bench, screens, GROUP_SCREEN);
    press_all(bench, edit, GROUP_EDIT);
    press(bench, 'o', GROUP_SCREEN);
    for (int i = 0; i < 60; i++)
        press(bench, i < 30 ? KEY_ARROW_DOWN : KEY_ARROW_UP, GROUP_MOVE);
    press(bench, KEY_ESCAPE, GROUP_SCREEN);
    press_all(bench, leave, GROUP_SCREEN);
}

/* ---- telling ---- */

static int compare_bytes(const void *a, const void *b)
{
    long left = *(const long *)a;
    long right = *(const long *)b;
    return (left > right) - (left < right);
}

static void tell(struct tries *tries, const char *name)
{
    int last = tries->count - 1;
    int nearly = last - tries->count / 100;
    qsort(tries->ms, (size_t)tries->count, sizeof *tries->ms, stopwatch_compare);
    qsort(tries->bytes, (size_t)tries->count, sizeof *tries->bytes, compare_bytes);
    printf("%-34s %5d keys: median %.2f ms, 99 of 100 %.2f ms, worst %.2f ms; "
           "median %ld bytes, 99 of 100 %ld, most %ld\n",
           name, tries->count, tries->ms[last / 2], tries->ms[nearly], tries->ms[last],
           tries->bytes[last / 2], tries->bytes[nearly], tries->bytes[last]);
}

int main(int argc, char **argv)
{
    static struct bench bench;
    struct fault_note note = {0};
    char folder[512];
    char store[600];
    const char *root = getenv("TMPDIR");
    if (argc < 2)
        return 2;
    setlocale(LC_ALL, "");
    setenv("LINES", "24", 1);
    setenv("COLUMNS", "80", 1);
    snprintf(folder, sizeof folder, "%s/stuffover-screens-XXXXXX", root && *root ? root : P_tmpdir);
    if (!mkdtemp(folder))
        return 1;
    snprintf(store, sizeof store, "%s/workshop", folder);
    if (desk_open(&bench.desk, store, &note))
        fail(&note);
    for (int i = 1; i < argc; i++)
        take_file(bench.desk, argv[i]);
    add_builds(bench.desk);
    bench.out = tmpfile();
    bench.in = fopen("/dev/null", "r");
    if (!bench.out || !bench.in || desk_take_up(bench.desk, 0, &note) ||
        terminal_open_on(&bench.terminal, "xterm-256color", bench.out, bench.in, &note))
        fail(&note);
    driver_begin(&bench.tui, bench.desk);
    bench.tui.view.lines = true;
    show(&bench);
    for (int i = 0; i < ROUNDS; i++)
        do_a_round(&bench);
    driver_end(&bench.tui);
    terminal_close(bench.terminal);
    desk_close(bench.desk);
    for (int i = 0; i < GROUPS; i++)
        tell(&bench.groups[i], group_names[i]);
    unlink(store);
    return rmdir(folder) != 0;
}
