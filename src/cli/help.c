#include "cli/help.h"

#include "cli/options.h"
#include "paper/lines.h"

#include <string.h>

#define HELP_INDENT 6
#define OPTION_INDENT 28

static void add_options(struct text *out, const struct command *command)
{
    for (const struct command_option *option = command_options; option->name; option++) {
        struct text heading;

        if (!command_takes(command, (int)option->option))
            continue;
        text_init(&heading);
        text_format(&heading, "    --%s%s%s", option->name, option->value ? " " : "",
                    option->value ? option->value : "");
        lines_add(out, text_string(&heading), OPTION_INDENT, option->help);
        text_release(&heading);
    }
}

static void add_command(struct text *out, const struct command *command)
{
    text_format(out, "%s%s%s\n", command->name, *command->operands ? " " : "", command->operands);
    lines_add(out, "", HELP_INDENT, command->help);
    add_options(out, command);
}

void help_all(struct text *out)
{
    text_add(out, "usage: stuffover [--store FILE] [COMMAND ...]\n\n");
    lines_add_hanging(out, 0,
                      "Plans upholstered furniture made from frame boxes: members, panels, screws, "
                      "cloth, staples, buying, money, and an order of work that never traps a "
                      "screw. Without a command it opens in the terminal.");
    text_add_char(out, '\n');
    for (const struct command *command = commands; command->name; command++) {
        text_add(out, "  ");
        add_command(out, command);
    }
    text_add_char(out, '\n');
    lines_add_hanging(out, 0,
                      "The workshop file is --store, else STUFFOVER_STORE, else in the XDG data "
                      "folder. Exit codes: 0 done, 1 a negative answer or a failure, 2 usage, 3 "
                      "terminal unusable, 4 not our file or a newer one, 5 locked.");
}

void help_command(struct text *out, const struct command *command)
{
    text_add(out, "usage: stuffover ");
    add_command(out, command);
    text_add(out, "stuffover(1) has examples.\n");
}

bool help_is_asked(int argc, char **argv)
{
    for (int i = 1; i < argc && strcmp(argv[i], "--") != 0; i++)
        if (strcmp(argv[i], "--help") == 0)
            return true;
    return false;
}
