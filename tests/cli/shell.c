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

char *shell_read_all(FILE *file)
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

const struct answer *shell_run(struct shell *shell, ...)
{
    char program[] = "stuffover";
    char option[] = "--store";
    char *argv[20] = {program, option, shell->place.path};
    int argc = 3;
    va_list arguments;
    va_start(arguments, shell);
    for (char *next; (next = va_arg(arguments, char *)) != NULL;)
        argv[argc++] = next;
    va_end(arguments);
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
    shell->answer =
        (struct answer){WEXITSTATUS(status), shell_read_all(out), shell_read_all(error)};
    return &shell->answer;
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
