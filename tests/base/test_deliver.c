/* Files that appear whole or not at all. */
#include "base/deliver.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <dirent.h>
#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

struct folder {
    char path[200];
    char file[240];
};

static int set_up(void **state)
{
    struct folder *folder = calloc(1, sizeof *folder);
    const char *parent = getenv("TMPDIR");

    snprintf(folder->path, sizeof folder->path, "%.150s/deliver-XXXXXX", parent ? parent : "/tmp");
    if (!mkdtemp(folder->path))
        return -1;
    snprintf(folder->file, sizeof folder->file, "%s/paper.txt", folder->path);
    *state = folder;
    return 0;
}

static int tear_down(void **state)
{
    struct folder *folder = *state;

    unlink(folder->file);
    rmdir(folder->path);
    free(folder);
    return 0;
}

static int files_in(const struct folder *folder)
{
    DIR *listing = opendir(folder->path);
    int count = 0;

    assert_non_null(listing);
    while (readdir(listing))
        count++;
    closedir(listing);
    return count - 2; /* "." and ".." */
}

static void assert_content(const struct folder *folder, const char *content)
{
    char found[64] = "";
    FILE *file = fopen(folder->file, "rb");

    assert_non_null(file);
    found[fread(found, 1, sizeof found - 1, file)] = '\0';
    fclose(file);
    assert_string_equal(found, content);
}

static void a_file_is_made_with_the_rights_of_any_other(void **state)
{
    const struct folder *folder = *state;
    struct stat status;
    mode_t mask = umask(027);

    assert_int_equal(deliver_file(folder->file, "first", 5, false, NULL), FAULT_NONE);
    umask(mask);
    assert_content(folder, "first");
    assert_int_equal(stat(folder->file, &status), 0);
    assert_int_equal(status.st_mode & 0777, 0640);
    assert_int_equal(files_in(folder), 1);
}

static void a_taken_name_is_kept_unless_it_may_be_replaced(void **state)
{
    const struct folder *folder = *state;
    struct fault_note note;

    assert_int_equal(deliver_file(folder->file, "first", 5, false, NULL), FAULT_NONE);
    assert_int_equal(deliver_file(folder->file, "second", 6, false, &note), FAULT_DUPLICATE);
    assert_content(folder, "first");
    assert_int_equal(deliver_file(folder->file, "second", 6, true, &note), FAULT_NONE);
    assert_content(folder, "second");
    assert_int_equal(files_in(folder), 1);
}

/* Stands for a full disk: no file may be longer than a few bytes. */
static void what_cannot_be_written_whole_leaves_what_was_there(void **state)
{
    const struct folder *folder = *state;
    struct rlimit before, small;
    char many[4096];

    memset(many, 'x', sizeof many);
    assert_int_equal(deliver_file(folder->file, "first", 5, false, NULL), FAULT_NONE);
    assert_int_equal(getrlimit(RLIMIT_FSIZE, &before), 0);
    signal(SIGXFSZ, SIG_IGN);
    small = (struct rlimit){1000, before.rlim_max};
    assert_int_equal(setrlimit(RLIMIT_FSIZE, &small), 0);
    enum fault fault = deliver_file(folder->file, many, sizeof many, true, NULL);
    assert_int_equal(setrlimit(RLIMIT_FSIZE, &before), 0);
    assert_int_equal(fault, FAULT_IO);
    assert_content(folder, "first");
    assert_int_equal(files_in(folder), 1);
}

/* Who may write to the folder must not have us write to a file elsewhere. */
static void a_link_in_the_place_is_replaced_and_not_followed(void **state)
{
    const struct folder *folder = *state;
    char elsewhere[260];

    snprintf(elsewhere, sizeof elsewhere, "%s/elsewhere", folder->path);
    FILE *file = fopen(elsewhere, "wb");
    assert_non_null(file);
    assert_true(fputs("theirs", file) >= 0);
    fclose(file);
    assert_int_equal(symlink(elsewhere, folder->file), 0);
    assert_int_equal(deliver_file(folder->file, "ours", 4, false, NULL), FAULT_DUPLICATE);
    assert_int_equal(deliver_file(folder->file, "ours", 4, true, NULL), FAULT_NONE);
    assert_content(folder, "ours");
    assert_int_equal(unlink(folder->file), 0);
    assert_int_equal(rename(elsewhere, folder->file), 0);
    assert_content(folder, "theirs");
}

static void a_folder_that_is_not_there_is_told(void **state)
{
    (void)state;
    struct fault_note note;

    assert_int_equal(deliver_file("/nowhere/at/all.txt", "x", 1, true, &note), FAULT_IO);
    assert_non_null(strstr(note.why, "/nowhere/at/all.txt"));
    assert_int_equal(deliver_file("", "x", 1, true, &note), FAULT_IO);
}

/* Neither a hard link nor a renaming puts a folder inside itself; that nothing has the name yet is
 * not the reason. */
static void a_name_that_cannot_be_given_is_told_with_its_reason(void **state)
{
    const struct folder *folder = *state;
    struct fault_note note;
    char inside[300];

    snprintf(inside, sizeof inside, "%s/inside", folder->file);
    assert_int_equal(mkdir(folder->file, 0700), 0);
    assert_int_equal(deliver_name(folder->file, inside, false, &note), FAULT_IO);
    assert_non_null(strstr(note.why, strerror(EINVAL)));
    assert_int_equal(rmdir(folder->file), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_file_is_made_with_the_rights_of_any_other, set_up,
                                        tear_down),
        cmocka_unit_test_setup_teardown(a_taken_name_is_kept_unless_it_may_be_replaced, set_up,
                                        tear_down),
        cmocka_unit_test_setup_teardown(a_link_in_the_place_is_replaced_and_not_followed, set_up,
                                        tear_down),
        cmocka_unit_test_setup_teardown(what_cannot_be_written_whole_leaves_what_was_there, set_up,
                                        tear_down),
        cmocka_unit_test(a_folder_that_is_not_there_is_told),
        cmocka_unit_test_setup_teardown(a_name_that_cannot_be_given_is_told_with_its_reason, set_up,
                                        tear_down),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
