/*
 * Options, the workshop file, and the way from a command's name to its exit code. POSIX utility
 * syntax: options of the program before the command, options of the command after it.
 */
#include "cli/cli.h"

#include "cli/commands.h"
#include "cli/help.h"
#include "cli/options.h"

#include <assert.h>
#include <errno.h>
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* ---- where the workshop lies ---- */

/* Makes every folder on the way to a file, 0700, as the XDG base directory specification asks. */
static void make_folders(char *path)
{
    for (char *at = path + 1; *at; at++) {
        if (*at != '/')
            continue;
        *at = '\0';
        mkdir(path, 0700); /* one that is there, or cannot be made, shows when the file is opened */
        *at = '/';
    }
}

static enum fault store_place(const char *option, struct text *path, struct fault_note *note)
{
    const char *named = option ? option : getenv("STUFFOVER_STORE");
    if (named && *named) {
        text_add(path, named);
        return FAULT_NONE;
    }
    const char *data = getenv("XDG_DATA_HOME");
    const char *home = getenv("HOME");
    if (data && *data == '/')
        text_format(path, "%s/stuffover/workshop.stuffover", data);
    else if (home && *home)
        text_format(path, "%s/.local/share/stuffover/workshop.stuffover", home);
    else
        return fault_say(note, FAULT_USAGE, "HOME is not set: name the workshop file with --store");
    if (text_failed(path))
        return fault_say(note, FAULT_MEMORY, "there is not enough memory to begin");
    make_folders(path->at);
    return FAULT_NONE;
}

/* ---- options ---- */

#define OPTIONS_MOST 64

/* The table as getopt_long wants it. */
static void list_options(struct option list[OPTIONS_MOST])
{
    size_t count = 0;

    for (const struct command_option *option = command_options; option->name; option++) {
        assert(count < OPTIONS_MOST - 1);
        list[count++] =
            (struct option){option->name, option->value ? required_argument : no_argument, NULL,
                            (int)option->option};
    }
    list[count] = (struct option){NULL, 0, NULL, 0};
}

static enum fault set_option(struct cli *cli, int option, const char *value,
                             struct fault_note *note)
{
#define SET_FLAG(NAME, field) cli->field |= option == OPTION_##NAME;
#define SET_TEXT(NAME, field)    \
    if (option == OPTION_##NAME) \
        cli->field = value;
    CLI_FLAGS(SET_FLAG)
    CLI_TEXTS(SET_TEXT)
#undef SET_FLAG
#undef SET_TEXT
    if (option == OPTION_MEASURE && cli->measure_count == CLI_MEASURES)
        return fault_say(note, FAULT_USAGE, "one command takes %d measures at most", CLI_MEASURES);
    if (option == OPTION_MEASURE)
        cli->measures[cli->measure_count++] = value;
    if (option == OPTION_WITH && cli->with_count == CLI_WITH)
        return fault_say(note, FAULT_USAGE, "a spend is split over %d builds at most",
                         CLI_WITH + 1);
    if (option == OPTION_WITH)
        cli->with[cli->with_count++] = value;
    return FAULT_NONE;
}

/* Reads what follows the command's name. */
static enum fault read_command_line(struct cli *cli, const struct command *command, int argc,
                                    char **argv, struct fault_note *note)
{
    struct option list[OPTIONS_MOST];
    list_options(list);
    optind = 0; /* starts getopt_long anew, and lets options stand after operands */
    opterr = 0;
    int option;
    while ((option = getopt_long(argc, argv, "", list, NULL)) != -1) {
        if (!command_takes(command, option))
            return fault_say(note, FAULT_USAGE, "\"%s\" is no option of %s", argv[optind - 1],
                             command->name);
        if (set_option(cli, option, optarg, note))
            return note->code;
    }
    cli->count = argc - optind;
    cli->operands = argv + optind;
    if (cli->count < command->least || (command->most >= 0 && cli->count > command->most))
        return fault_say(note, FAULT_USAGE, "it is: stuffover %s %s; --help tells more",
                         command->name, command->operands);
    return FAULT_NONE;
}

/* ---- running ---- */

static int say_fault(const struct fault_note *note)
{
    char line[512];
    fault_print(line, sizeof line, note);
    fprintf(stderr, "stuffover: %s\n", line);
    return fault_exit_code(note->code);
}

/* Standard output that cannot be written is a failure like any other. */
static int print_out(const struct text *out)
{
    if (text_failed(out)) {
        fputs("stuffover: there is not enough memory for the answer\n", stderr);
        return 1;
    }
    fwrite(text_string(out), 1, out->length, stdout);
    if (fflush(stdout) || ferror(stdout)) {
        fprintf(stderr, "stuffover: the answer cannot be written: %s\n", strerror(errno));
        return 1;
    }
    return 0;
}

static const struct command *command_named(const char *name)
{
    for (const struct command *command = commands; command->name; command++) {
        if (strcmp(command->name, name) == 0)
            return command;
    }
    return NULL;
}

/* What went wrong with a workshop file, and what can be done for one that is damaged. */
static int say_fault_of(const char *path, const struct fault_note *note)
{
    int code = say_fault(note);
    if (note->code == FAULT_DAMAGED)
        fprintf(stderr,
                "It is left as it is. \"stuffover --store %s rescue FOLDER\" writes what can still"
                " be\nread of it as files, which \"import\" takes into a new one. A backup may be"
                " near:\n%s.before-N is a copy from before an upgrade.\n",
                path, path);
    return code;
}

/* Prints what the command said, then what went wrong; gives the exit code. */
static int end_command(struct cli *cli, const struct fault_note *note)
{
    int code = print_out(&cli->out);
    fputs(text_string(&cli->error), stderr);
    if (note->code)
        code = cli->desk ? say_fault_of(desk_path(cli->desk), note) : say_fault(note);
    else if (!code)
        code = cli->negative;
    text_release(&cli->out);
    text_release(&cli->error);
    return code;
}

/* Of one command, or, NULL, of all. */
static int print_help(const struct command *command)
{
    struct text out;
    int code;

    text_init(&out);
    if (command)
        help_command(&out, command);
    else
        help_all(&out);
    code = print_out(&out);
    text_release(&out);
    return code;
}

static int run_command(struct cli *cli, const struct command *command, int argc, char **argv)
{
    struct fault_note note = {0};
    text_init(&cli->out);
    text_init(&cli->error);
    enum fault fault = read_command_line(cli, command, argc, argv, &note);
    if (!fault && command->on == ON_BUILD)
        fault = desk_take_up_named(cli->desk, cli->operands[0], &note);
    if (!fault)
        fault = command->run(cli, &note);
    if (!fault)
        note.code = FAULT_NONE;
    return end_command(cli, &note);
}

static int with_desk(const char *path, const struct command *command, int argc, char **argv,
                     cli_terminal_fn *terminal)
{
    struct fault_note note = {0};
    struct cli cli = {0};
    int code;
    if (desk_open(&cli.desk, path, &note))
        return say_fault_of(path, &note);
    code = command ? run_command(&cli, command, argc, argv) : terminal(cli.desk);
    desk_close(cli.desk);
    return code;
}

static int with_store(const char *store, const struct command *command, int argc, char **argv,
                      cli_terminal_fn *terminal)
{
    struct fault_note note = {0};
    struct text path;
    int code;
    text_init(&path);
    if (store_place(store, &path, &note)) {
        code = say_fault(&note);
    } else if (command && command->on == ON_FILE) {
        struct cli cli = {.store = text_string(&path)};
        code = run_command(&cli, command, argc, argv);
    } else {
        code = with_desk(text_string(&path), command, argc, argv, terminal);
    }
    text_release(&path);
    return code;
}

int cli_main(int argc, char **argv, cli_terminal_fn *terminal)
{
    static const struct option options[] = {{"store", required_argument, NULL, 's'},
                                            {"help", no_argument, NULL, 'h'},
                                            {"version", no_argument, NULL, 'v'},
                                            {NULL, 0, NULL, 0}};
    const char *store = NULL;
    int option;
    while ((option = getopt_long(argc, argv, "+", options, NULL)) != -1) {
        switch (option) {
        case 's':
            store = optarg;
            break;
        case 'h':
            return print_help(optind < argc ? command_named(argv[optind]) : NULL);
        case 'v':
            puts("stuffover " STUFFOVER_VERSION);
            return 0;
        default: /* getopt_long said what is wrong */
            return fault_exit_code(FAULT_USAGE);
        }
    }
    if (optind == argc)
        return with_store(store, NULL, 0, NULL, terminal);
    const struct command *command = command_named(argv[optind]);
    if (!command) {
        fprintf(stderr, "stuffover: there is no command \"%s\"; --help lists them\n", argv[optind]);
        return fault_exit_code(FAULT_USAGE);
    }
    if (help_is_asked(argc - optind, argv + optind))
        return print_help(command);
    return with_store(store, command, argc - optind, argv + optind, terminal);
}
