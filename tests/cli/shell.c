#include "shell.h"

#include "cli/cli.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

static int no_terminal(struct desk *desk)
{
    (void)desk;
    return 77;
}

/* The rest of a file from its beginning, which is closed; free() it. */
static char *read_all(FILE *file)
{
    struct text text;
    text_init(&text);
    char chunk[4096];
    rewind(file);
    for (size_t got; (got = fread(chunk, 1, sizeof chunk, file)) > 0;)
        text_add_bytes(&text, chunk, got);
    fclose(file);
    char *copy = strdup(text_string(&text));
    text_release(&text);
    return copy;
}

void answer_forget(struct answer *answer)
{
    free(answer->out);
    free(answer->error);
    *answer = (struct answer){0, NULL, NULL};
}

/* argv[0] to argv[2] are filled in here. */
static const struct answer *run(struct shell *shell, int argc, char **argv)
{
    char program[] = "stuffover";
    char option[] = "--store";
    argv[0] = program;
    argv[1] = option;
    argv[2] = shell->place.path;
    FILE *out = tmpfile();
    FILE *error = tmpfile();
    fflush(NULL);
    pid_t child = fork();
    if (child == 0) {
        fclose(stdin);
        stdin = fopen("/dev/null", "r");
        dup2(fileno(out), STDOUT_FILENO);
        dup2(fileno(error), STDERR_FILENO);
        int code = cli_main(argc, argv, no_terminal);
        fflush(NULL);
        _exit(code);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_true(WIFEXITED(status));
    answer_forget(&shell->answer);
    shell->answer = (struct answer){WEXITSTATUS(status), read_all(out), read_all(error)};
    return &shell->answer;
}

const struct answer *shell_run(struct shell *shell, ...)
{
    char *argv[20];
    int argc = 3;
    va_list arguments;
    va_start(arguments, shell);
    for (char *next; (next = va_arg(arguments, char *)) != NULL;) {
        assert_true(argc < 20);
        argv[argc++] = next;
    }
    va_end(arguments);
    return run(shell, argc, argv);
}

const struct answer *shell_say(struct shell *shell, const char *line)
{
    char *argv[160];
    int argc = 3;
    char *words = strdup(line);
    assert_non_null(words);
    for (char *at = words; *at;) {
        bool quoted = *at == '\'';
        at += quoted;
        assert_true(argc < 160);
        argv[argc++] = at;
        at += strcspn(at, quoted ? "'" : " ");
        if (*at)
            *at++ = '\0';
        at += strspn(at, " ");
    }
    const struct answer *answer = run(shell, argc, argv);
    free(words);
    return answer;
}

void shell_take(struct shell *shell, const char *name)
{
    char path[1024];
    snprintf(path, sizeof path, "%s/%s.json", CASE_FOLDER, name);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 0);
}

int shell_begin(void **state)
{
    struct shell *shell = calloc(1, sizeof *shell);
    place_begin(&shell->place);
    *state = shell;
    return 0;
}

int shell_end(void **state)
{
    struct shell *shell = *state;
    place_end(&shell->place);
    answer_forget(&shell->answer);
    free(shell);
    return 0;
}

void assert_says(const char *text, const char *words)
{
    if (!strstr(text, words))
        fail_msg("\"%s\" is not in:\n%s", words, text);
}
