#include "tui/editor.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define PATH_MOST 4096

/* ---- the file ---- */

static bool write_all(int file, const char *bytes, size_t count)
{
    while (count > 0) {
        ssize_t written = write(file, bytes, count);
        if (written < 0 && errno == EINTR)
            continue;
        if (written <= 0)
            return false;
        bytes += written;
        count -= (size_t)written;
    }
    return true;
}

/* A new file that only the maker can read; its path. */
static enum fault make_file(char path[PATH_MOST], const char *text, struct fault_note *note)
{
    const char *folder = getenv("TMPDIR");
    snprintf(path, PATH_MOST, "%s/note-XXXXXX", folder && *folder ? folder : P_tmpdir);
    int file = mkstemp(path);
    if (file < 0)
        return fault_say(note, FAULT_IO, "no file for the note can be made: %s", strerror(errno));
    bool whole = write_all(file, text, strlen(text)) && write_all(file, "\n", *text ? 1 : 0);
    if (close(file) || !whole) {
        unlink(path);
        return fault_say(note, FAULT_IO, "the file for the note cannot be written");
    }
    return FAULT_NONE;
}

static enum fault read_file(const char *path, struct text *after, struct fault_note *note)
{
    char chunk[4096];
    FILE *file = fopen(path, "rb");
    if (!file)
        return fault_say(note, FAULT_IO, "the note cannot be read back: %s", strerror(errno));
    for (size_t got; (got = fread(chunk, 1, sizeof chunk, file)) > 0;) {
        if (after->length <= EDITOR_MOST)
            text_add_bytes(after, chunk, got);
    }
    fclose(file);
    if (text_failed(after) || after->length > EDITOR_MOST || memchr(after->at, 0, after->length))
        return fault_say(note, FAULT_REFUSED, "what the editor left is no note");
    while (after->length > 0 && after->at[after->length - 1] == '\n')
        after->at[--after->length] = '\0';
    return FAULT_NONE;
}

/* ---- the editor ---- */

/* The variable may hold options and quotes, as the shell has them. */
static void become_editor(char *path)
{
    static char shell[] = "sh";
    static char option[] = "-c";
    static char command[] = "eval \"exec ${VISUAL:-${EDITOR:-vi}} \\\"\\$1\\\"\"";
    char *const arguments[] = {shell, option, command, shell, path, NULL};
    execv("/bin/sh", arguments);
    _exit(127);
}

/* Keys that interrupt are meant for the editor as long as it runs. */
static int wait_for(pid_t child)
{
    int status = -1;
    struct sigaction ignore = {.sa_handler = SIG_IGN};
    struct sigaction before[2];
    sigemptyset(&ignore.sa_mask);
    sigaction(SIGINT, &ignore, &before[0]);
    sigaction(SIGQUIT, &ignore, &before[1]);
    while (waitpid(child, &status, 0) < 0 && errno == EINTR)
        ;
    sigaction(SIGINT, &before[0], NULL);
    sigaction(SIGQUIT, &before[1], NULL);
    return status;
}

static enum fault edit_file(struct terminal *terminal, char *path, struct fault_note *note)
{
    terminal_lend(terminal);
    pid_t child = fork();
    if (child == 0)
        become_editor(path);
    int status = child > 0 ? wait_for(child) : -1;
    terminal_take_back(terminal);
    if (status != 0)
        return fault_say(note, FAULT_REFUSED,
                         "the editor could not be run, or ended with a "
                         "fault: the note is as it was");
    return FAULT_NONE;
}

enum fault editor_run(struct terminal *terminal, const char *before, struct text *after,
                      struct fault_note *note)
{
    char path[PATH_MOST];
    enum fault fault = make_file(path, before, note);
    if (fault)
        return fault;
    fault = edit_file(terminal, path, note);
    if (!fault)
        fault = read_file(path, after, note);
    unlink(path);
    return fault;
}
