/*
 * What is written beside the workshop or makes it: papers, a backup, an import, a new workshop.
 * Every call on a file fails, once and for good, for want of room and with an error; then what
 * stood there stands there, or the new whole, nothing lies about, and the fault says why. The
 * arguments are the program, and the endings of papers that it can write.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <sqlite3.h>

#include <dirent.h>
#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "disk.h"
#include "files.h"
#include "kept.h"
#include "paper/press.h"
#include "sanitized.h"
#include "workshop.h"

#define BUILD "Wing headboard"
#define OLD "what stood here before\n"

static const char *program;
static char **endings;

struct shed {
    struct workshop_place place;
    char target[640];
    struct desk *desk; /* on a workshop with one build */
};

static int begin(void **state)
{
    struct shed *bench = calloc(1, sizeof *bench);
    assert_non_null(bench);
    place_begin(&bench->place);
    bench->desk = desk_at(&bench->place);
    desk_take_case(bench->desk, "headboard");
    *state = bench;
    return 0;
}

static int end(void **state)
{
    struct shed *bench = *state;
    desk_close(bench->desk);
    place_end(&bench->place);
    free(bench);
    return 0;
}

static int files_in(const char *folder)
{
    DIR *names = opendir(folder);
    int count = 0;
    assert_non_null(names);
    for (const struct dirent *entry; (entry = readdir(names)) != NULL;)
        count += entry->d_name[0] != '.';
    closedir(names);
    return count;
}

static void put_old(const struct shed *bench)
{
    file_put(bench->target, OLD);
}

static bool is_old(const struct shed *bench)
{
    char bytes[sizeof OLD + 1] = "";
    FILE *file = fopen(bench->target, "r");
    if (!file)
        return false;
    size_t got = fread(bytes, 1, sizeof bytes - 1, file);
    fclose(file);
    return got == sizeof OLD - 1 && strcmp(bytes, OLD) == 0;
}

static int64_t size_of(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 ? (int64_t)about.st_size : -1;
}

/* ---- every call ---- */

typedef enum fault act_fn(struct shed *bench, struct fault_note *note);
typedef bool whole_fn(struct shed *bench);

static enum fault write_papers(struct shed *bench, struct fault_note *note)
{
    const struct press press = {
        .papers = "staples", .path = bench->target, .replace = true, .date = "2026-11-30"};
    struct pressed pressed;
    return press_file(&press, desk_plan(bench->desk), &pressed, note);
}

static bool papers_are_whole(struct shed *bench)
{
    char word[8] = "";
    FILE *file = fopen(bench->target, "r");
    bool whole = file && fseek(file, -7, SEEK_END) == 0 && fread(word, 1, 7, file) == 7 &&
                 strcmp(word, "</svg>\n") == 0;
    if (file)
        fclose(file);
    return whole;
}

static enum fault write_backup(struct shed *bench, struct fault_note *note)
{
    return desk_backup(bench->desk, bench->target, true, note);
}

static bool backup_is_whole(struct shed *bench)
{
    struct store *store = NULL;
    bool whole = store_open(&store, bench->target, NULL) == FAULT_NONE &&
                 store_look_through(store, NULL) == FAULT_NONE;
    store_close(store);
    return whole;
}

/* One act over an older file, with the `at`-th call failing. False when it made fewer calls. */
static bool fail_once(struct shed *bench, act_fn *act, whole_fn *whole, int at, int error,
                      bool for_good)
{
    struct fault_note note = {0};
    put_old(bench);
    files_arm(at, error, for_good);
    enum fault fault = act(bench, &note);
    bool reached = files_calls() >= at;
    files_heal();
    bool old = is_old(bench);
    if (!old && !whole(bench))
        fail_msg("call %d: half a file", at);
    if (fault == FAULT_NONE && old)
        fail_msg("call %d: said to be done", at);
    if (fault != FAULT_NONE && !note.why[0])
        fail_msg("call %d: no reason", at);
    if (files_in(bench->place.folder) != 2)
        fail_msg("call %d: something lies about", at);
    return reached;
}

static void fail_everywhere(struct shed *bench, const char *name, act_fn *act, whole_fn *whole)
{
    static const int errors[] = {EIO, ENOSPC};
    int cases = 0;
    snprintf(bench->target, sizeof bench->target, "%s/%s", bench->place.folder, name);
    for (int i = 0; i < 4; i++)
        for (int at = 1; fail_once(bench, act, whole, at, errors[i / 2], i % 2); at++)
            cases++;
    print_message("%s: %d calls failed\n", name, cases);
    assert_true(cases >= 4 * 5);
    assert_place_is_sound(&bench->place);
}

static void papers_are_there_whole_or_not_at_all(void **state)
{
    struct shed *bench = *state;
    DONE(desk_take_up_named(bench->desk, BUILD, note));
    fail_everywhere(bench, "papers.svg", write_papers, papers_are_whole);
}

static void a_backup_is_there_whole_or_not_at_all(void **state)
{
    fail_everywhere(*state, "copy", write_backup, backup_is_whole);
}

static void a_full_disk_is_said_to_be_full(void **state)
{
    struct shed *bench = *state;
    struct fault_note why = {0};
    DONE(desk_take_up_named(bench->desk, BUILD, note));
    snprintf(bench->target, sizeof bench->target, "%s/papers.svg", bench->place.folder);
    files_arm(3, ENOSPC, true);
    assert_int_equal(write_papers(bench, &why), FAULT_FULL);
    files_heal();
    assert_non_null(strstr(why.why, "papers.svg"));
}

/* ---- an import into a workshop on a disk that fails ---- */

static enum fault import_headboard(const struct workshop_place *place, struct fault_note *note)
{
    struct desk *desk = NULL;
    struct text bytes;
    enum fault fault = desk_open(&desk, place->path, note);
    text_init(&bytes);
    file_take(&bytes, CASE_FOLDER "/headboard.json");
    if (!fault)
        fault = desk_import(desk, text_string(&bytes), bytes.length, NULL, NULL, note);
    text_release(&bytes);
    desk_close(desk);
    return fault;
}

static size_t builds_in(const struct workshop_place *place)
{
    const struct store_build *builds;
    size_t count;
    struct desk *desk = desk_at(place);
    DONE(desk_builds(desk, &builds, &count, note));
    desk_close(desk);
    return count;
}

/* Into no file yet: making it is a part. */
static bool import_failing(enum disk_fault fault, long at)
{
    struct workshop_place place;
    struct fault_note note = {0};
    place_begin(&place);
    disk_arm(fault, at, (uint64_t)at);
    bool done = import_headboard(&place, &note) == FAULT_NONE;
    bool reached = disk_operations() >= at;
    disk_heal();
    size_t builds = builds_in(&place);
    if (done ? builds != 1 : builds > (fault == DISK_CRASH) || !note.why[0])
        fail_msg("fault %d at %ld: %zu builds, \"%s\"", (int)fault, at, builds, note.why);
    assert_place_is_sound(&place);
    place_end(&place);
    return reached;
}

/* A part of them in an ordinary run, others for each fault; STUFFOVER_LONG: all. */
#define STRIDE UNLESS_SANITIZED(41, 97)

static void an_import_is_there_whole_or_not_at_all(void **state)
{
    static const enum disk_fault faults[] = {DISK_ERROR, DISK_BROKEN, DISK_FULL, DISK_STUFFED,
                                             DISK_CRASH};
    sqlite3_vfs *before = sqlite3_vfs_find(NULL);
    long stride = getenv("STUFFOVER_LONG") ? 1 : STRIDE;
    int cases = 0;
    (void)state;
    sqlite3_vfs_register(sqlite3_vfs_find(DISK_VFS), 1);
    for (size_t i = 0; i < sizeof faults / sizeof *faults; i++)
        for (long at = 1 + (long)i % stride; import_failing(faults[i], at); at += stride)
            cases++;
    sqlite3_vfs_register(before, 1);
    print_message("import: %d operations failed\n", cases);
    assert_true(cases >= 5);
}

/* ---- the program under a limit ---- */

static int run_limited(const struct shed *bench, rlim_t limit)
{
    int status;
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        const struct rlimit most = {limit, limit};
        if (!freopen("/dev/null", "w", stdout) || !freopen("/dev/null", "w", stderr) ||
            setrlimit(RLIMIT_FSIZE, &most) != 0)
            _exit(126);
        signal(SIGXFSZ, SIG_DFL);
        execl(program, program, "--store", bench->place.path, "print", BUILD, "--papers", "steps",
              "--to", bench->target, "--replace", (char *)NULL);
        _exit(127);
    }
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_true(WIFEXITED(status));
    return WEXITSTATUS(status);
}

/* One byte is wanting. */
static void a_file_that_may_not_grow_leaves_the_papers_that_were(void **state)
{
    struct shed *bench = *state;
    for (char **ending = endings; *ending; ending++) {
        snprintf(bench->target, sizeof bench->target, "%s/papers.%s", bench->place.folder, *ending);
        put_old(bench);
        assert_int_equal(run_limited(bench, RLIM_INFINITY), 0);
        int64_t whole = size_of(bench->target);
        put_old(bench);
        assert_int_equal(run_limited(bench, (rlim_t)whole - 1), 1);
        assert_true(is_old(bench));
        assert_int_equal(files_in(bench->place.folder), 2);
        unlink(bench->target);
    }
}

/* ---- whose files they are ---- */

static int mode_of(const char *path)
{
    struct stat about;
    assert_int_equal(lstat(path, &about), 0);
    return (int)(about.st_mode & 0777);
}

/* Whatever the umask lets others do. */
static void the_first_start_makes_folders_and_a_file_for_the_maker_alone(void **state)
{
    struct shed *bench = *state;
    char path[3][600];
    int status;
    snprintf(path[0], sizeof path[0], "%.500s/data", bench->place.folder);
    snprintf(path[1], sizeof path[1], "%.500s/data/stuffover", bench->place.folder);
    snprintf(path[2], sizeof path[2], "%.500s/data/stuffover/workshop.stuffover",
             bench->place.folder);
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        umask(0);
        unsetenv("STUFFOVER_STORE");
        if (!freopen("/dev/null", "w", stdout) || setenv("XDG_DATA_HOME", path[0], 1) != 0)
            _exit(126);
        execl(program, program, "list", (char *)NULL);
        _exit(127);
    }
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_true(WIFEXITED(status) && WEXITSTATUS(status) == 0);
    assert_int_equal(mode_of(path[0]), 0700);
    assert_int_equal(mode_of(path[1]), 0700);
    assert_int_equal(mode_of(path[2]), 0600);
    assert_int_equal(files_in(path[1]), 1);
    unlink(path[2]);
    rmdir(path[1]);
    rmdir(path[0]);
}

int main(int argc, char **argv)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    if (argc < 3)
        return 2;
    program = argv[1];
    endings = argv + 2;
    disk_register();
    const struct CMUnitTest tests[] = {
        FACT(papers_are_there_whole_or_not_at_all),
        FACT(a_backup_is_there_whole_or_not_at_all),
        FACT(a_full_disk_is_said_to_be_full),
        cmocka_unit_test(an_import_is_there_whole_or_not_at_all),
        FACT(the_first_start_makes_folders_and_a_file_for_the_maker_alone),
        FACT(a_file_that_may_not_grow_leaves_the_papers_that_were),
    };
    int failed = cmocka_run_group_tests_name("files", tests, NULL, NULL);
    return failed ? 1 : 0;
}
