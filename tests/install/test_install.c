/*
 * What `meson install` puts where, into a temporary folder: program, manual pages, completions, and
 * the module for PDF where it was built. The completions are run by their shells, each where it is
 * there. Arguments: meson, the build's folder, "pdf" or "plain", the script zsh-offers.
 */
#include "workshop.h"

#include "cli/commands.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define OUT_MOST 65536

static const char *meson, *build, *zsh_offers;
static bool pdf;
static struct workshop_place place;
static char root[4096]; /* that all is installed below */

/* Runs a line of sh; what it printed, and its exit code. */
static int run(char out[OUT_MOST], const char *format, ...) __attribute__((format(printf, 2, 3)));
static int run(char out[OUT_MOST], const char *format, ...)
{
    char line[16384];
    va_list arguments;
    FILE *pipe;
    size_t length;
    int status;

    va_start(arguments, format);
    assert_in_range(vsnprintf(line, sizeof line, format, arguments), 1, sizeof line - 1);
    va_end(arguments);
    pipe = popen(line, "r");
    assert_non_null(pipe);
    length = fread(out, 1, OUT_MOST - 1, pipe);
    out[length] = '\0';
    status = pclose(pipe);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static int install(void **state)
{
    char out[OUT_MOST];

    (void)state;
    place_begin(&place);
    snprintf(root, sizeof root, "%s/root", place.folder);
    return run(out, "'%s' install -C '%s' --no-rebuild --quiet --destdir '%s' 2>&1", meson, build,
               root);
}

static int forget(void **state)
{
    char out[OUT_MOST];

    (void)state;
    run(out, "rm -rf '%s'", root);
    place_end(&place);
    return 0;
}

/* The one installed file whose path ends so; in `path`. */
static void find(char path[4096], const char *ending)
{
    char out[OUT_MOST];

    run(out, "find '%s' -type f -path '*/%s'", root, ending);
    out[strcspn(out, "\n")] = '\0';
    if (!*out)
        fail_msg("%s is not installed", ending);
    assert_true(strlen(out) < 4096);
    memcpy(path, out, strlen(out) + 1);
}

static void everything_is_in_its_place(void **state)
{
    static const char *const files[] = {
        "bin/stuffover",
        "share/man/man1/stuffover.1",
        "share/man/man5/stuffover-build.5",
        "share/man/man5/stuffover-store.5",
        "share/man/man5/stuffover-terminal.5",
        "share/man/man7/stuffover-trade.7",
        "share/bash-completion/completions/stuffover",
        "share/zsh/site-functions/_stuffover",
        "share/fish/vendor_completions.d/stuffover.fish",
    };
    char path[4096];

    (void)state;
    for (size_t i = 0; i < sizeof files / sizeof *files; i++)
        find(path, files[i]);
    if (pdf)
        find(path, "stuffover/stuffover_pdf.so");
}

static void nothing_else_is_installed(void **state)
{
    char out[OUT_MOST];

    (void)state;
    run(out, "find '%s' -type f | wc -l", root);
    assert_int_equal(strtol(out, NULL, 10), pdf ? 10 : 9);
}

static void the_installed_program_runs(void **state)
{
    char out[OUT_MOST];
    char path[4096];

    (void)state;
    find(path, "bin/stuffover");
    assert_int_equal(run(out, "'%s' --version", path), 0);
    assert_non_null(strstr(out, "stuffover"));
}

/* ---- completion ---- */

static bool is_there(const char *shell)
{
    char out[OUT_MOST];

    return run(out, "command -v %s", shell) == 0;
}

/* What bash offers for words, the last of which is being typed; the program is on the path. */
static void complete(char out[OUT_MOST], const char *words)
{
    char script[4096], program[4096];

    find(script, "bash-completion/completions/stuffover");
    find(program, "bin/stuffover");
    *strrchr(program, '/') = '\0';
    assert_int_equal(run(out,
                         "STUFFOVER_STORE='%s' PATH='%s':\"$PATH\" bash --norc -c '. \"%s\" && "
                         "COMP_WORDS=(stuffover %s) && COMP_CWORD=$((${#COMP_WORDS[@]} - 1)) && "
                         "_stuffover && printf \"%%s\\n\" \"${COMPREPLY[@]}\"'",
                         place.path, program, script, words),
                     0);
}

static bool offers(const char *out, const char *line)
{
    size_t length = strlen(line);

    for (const char *at = out; (at = strstr(at, line)); at++)
        if ((at == out || at[-1] == '\n') && at[length] == '\n')
            return true;
    return false;
}

static void assert_offers(const char *words, const char *line)
{
    char out[OUT_MOST];

    complete(out, words);
    if (!offers(out, line))
        fail_msg("\"stuffover %s\" does not offer %s but:\n%s", words, line, out);
}

static void bash_offers_every_command(void **state)
{
    char out[OUT_MOST];

    (void)state;
    if (!is_there("bash"))
        skip();
    complete(out, "\"\"");
    for (const struct command *command = commands; command->name; command++)
        if (!offers(out, command->name))
            fail_msg("bash does not offer %s", command->name);
    assert_offers("sho", "show");
    complete(out, "sho");
    assert_string_equal(out, "show\n");
}

static void bash_offers_options_and_their_words(void **state)
{
    char out[OUT_MOST];

    (void)state;
    if (!is_there("bash"))
        skip();
    assert_offers("show x --ca", "--care");
    assert_offers("cut x --effort \"\"", "best");
    assert_offers("new x --units \"\"", "mm");
    assert_offers("print x --papers sh", "shopping");
    assert_offers("new \"\"", "wing-headboard");
    assert_offers("--store file li", "list");
    assert_offers("cut --effort good --ef", "--effort");
    complete(out, "list --");
    assert_string_equal(out, "--json\n");
}

/* A name with a blank is quoted; and no workshop file is made by completing. */
static void bash_offers_the_names_of_builds(void **state)
{
    char out[OUT_MOST];
    char program[4096];

    (void)state;
    if (!is_there("bash"))
        skip();
    complete(out, "show \"\"");
    assert_string_equal(out, "\n");
    assert_int_not_equal(run(out, "test -e '%s'", place.path), 0);
    find(program, "bin/stuffover");
    assert_int_equal(
        run(out, "'%s' --store '%s' new storage-bench 'Window bench'", program, place.path), 0);
    assert_offers("show W", "Window\\ bench");
    assert_offers("compare x W", "Window\\ bench");
    assert_offers("show --corner 2 W", "Window\\ bench");
    complete(out, "show x W");
    assert_string_equal(out, "\n");
}

/* The others offer the name of the build that bash was given; `ending` is their script's. */
static void offers_of(char out[OUT_MOST], const char *shell, const char *ending, const char *line)
{
    char script[4096], program[4096], folder[4096];

    find(script, ending);
    find(program, "bin/stuffover");
    *strrchr(program, '/') = '\0';
    snprintf(folder, sizeof folder, "%.*s", (int)(strrchr(script, '/') - script), script);
    if (strcmp(shell, "zsh") == 0)
        assert_int_equal(run(out,
                             "STUFFOVER_STORE='%s' PATH='%s':\"$PATH\" HOME='%s' "
                             "zsh -f '%s' '%s' '%s'",
                             place.path, program, root, zsh_offers, folder, line),
                         0);
    else
        assert_int_equal(run(out,
                             "STUFFOVER_STORE='%s' PATH='%s':\"$PATH\" HOME='%s' "
                             "fish --no-config -c 'source \"%s\"; complete -C \"%s\"'",
                             place.path, program, root, script, line),
                         0);
}

/* What both shells offer, and what they do not. */
static const struct {
    const char *line, *offered, *not_offered; /* `offered` NULL: nothing */
} lines[] = {
    {"stuffover st", "stock", "spend"},
    {"stuffover --store file st", "steps", "show"},
    {"stuffover show Win", "bench", "wing-headboard"},
    {"stuffover show --corner 2 Win", "bench", "wing-headboard"},
    {"stuffover buy one Win", "bench", "wing-headboard"},
    {"stuffover show one Win", NULL, "bench"},
    {"stuffover new w", "wing-headboard", "Window"},
    {"stuffover cut one --effort b", "best", "good"},
    {"stuffover show one --ca", "--care", "--corner"},
};

static void assert_offered(const char *shell, const char *ending)
{
    char out[OUT_MOST];

    if (!is_there(shell))
        skip();
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        offers_of(out, shell, ending, lines[i].line);
        if (lines[i].offered && !strstr(out, lines[i].offered))
            fail_msg("%s offers no %s for \"%s\":\n%s", shell, lines[i].offered, lines[i].line,
                     out);
        if (strstr(out, lines[i].not_offered))
            fail_msg("%s offers %s for \"%s\":\n%s", shell, lines[i].not_offered, lines[i].line,
                     out);
    }
}

static void zsh_offers_what_fits(void **state)
{
    (void)state;
    assert_offered("zsh", "site-functions/_stuffover");
}

static void fish_offers_what_fits(void **state)
{
    (void)state;
    assert_offered("fish", "stuffover.fish");
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(everything_is_in_its_place),
        cmocka_unit_test(nothing_else_is_installed),
        cmocka_unit_test(the_installed_program_runs),
        cmocka_unit_test(bash_offers_every_command),
        cmocka_unit_test(bash_offers_options_and_their_words),
        cmocka_unit_test(bash_offers_the_names_of_builds),
        cmocka_unit_test(zsh_offers_what_fits),
        cmocka_unit_test(fish_offers_what_fits),
    };

    if (argc != 5) {
        fprintf(stderr, "usage: %s MESON BUILD pdf | plain SCRIPT\n", argv[0]);
        return 2;
    }
    meson = argv[1];
    build = argv[2];
    pdf = strcmp(argv[3], "pdf") == 0;
    zsh_offers = argv[4];
    return cmocka_run_group_tests(tests, install, forget) ? 1 : 0;
}
