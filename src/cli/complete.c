/*
 * The three scripts say the same: commands, then their options with the words that these take, and
 * for operands the names of builds, starter pieces, or files. Names of builds are asked of the
 * program, and only where the workshop file is there: completing never makes one.
 */
#include "cli/complete.h"

#include "cli/options.h"
#include "desk/starters.h"
#include "model/words.h"
#include "paper/papers.h"

#include <string.h>

/* ---- what is completed ---- */

enum operand { OPERAND_NONE, OPERAND_BUILD, OPERAND_BUILDS, OPERAND_STARTER, OPERAND_FILE };

/* Of the first operand of a command, and of all where they are BUILDS or FILE. */
static enum operand operand_of(const struct command *command)
{
    static const struct {
        const char *begins;
        enum operand operand;
    } kinds[] = {
        {"BUILD ...", OPERAND_BUILDS}, {"BUILD", OPERAND_BUILD}, {"[BUILD", OPERAND_BUILD},
        {"[STARTER", OPERAND_STARTER}, {"FOLDER", OPERAND_FILE}, {"FILE", OPERAND_FILE},
    };

    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
        if (strncmp(command->operands, kinds[i].begins, strlen(kinds[i].begins)) == 0)
            return kinds[i].operand;
    return OPERAND_NONE;
}

/* "quick good best": all words that an option takes; nothing where it takes anything. */
static void put_words(struct text *out, const struct command_option *option)
{
    const char *between = "";

    if (option->words)
        text_add(out, option->words);
    for (size_t i = 0; option->vocabulary && i < option->vocabulary->count; i++) {
        text_format(out, "%s%s", between, option->vocabulary->at[i].name);
        between = " ";
    }
    for (const struct paper *paper = papers; option->option == OPTION_PAPERS && paper->name;
         paper++) {
        text_format(out, "%s%s", between, paper->name);
        between = " ";
    }
}

static bool has_words(const struct command_option *option)
{
    return option->words || option->vocabulary || option->option == OPTION_PAPERS;
}

static void put_commands(struct text *out)
{
    for (const struct command *command = commands; command->name; command++)
        text_format(out, "%s%s", command == commands ? "" : " ", command->name);
}

static void put_starters(struct text *out)
{
    for (const struct starter *starter = starters; starter->name; starter++)
        text_format(out, "%s%s", starter == starters ? "" : " ", starter->name);
}

/* Commands with an operand of that kind, with something between. */
static void put_commands_with(struct text *out, enum operand operand, const char *between)
{
    const char *before = "";

    for (const struct command *command = commands; command->name; command++)
        if (operand_of(command) == operand) {
            text_format(out, "%s%s", before, command->name);
            before = between;
        }
}

/* Every option with a value, "--" before each, and something between. */
static void put_valued(struct text *out, const char *between)
{
    text_add(out, "--store");
    for (const struct command_option *option = command_options; option->name; option++)
        if (option->value)
            text_format(out, "%s--%s", between, option->name);
}

/* In single quotes, which fish ends with a backslash before one and the others by quoting anew;
 * with a backslash before each character of `marks`. */
static void put_quoted(struct text *out, const char *string, const char *marks, bool fish)
{
    for (; *string; string++) {
        if (strchr(marks, *string))
            text_add_char(out, '\\');
        if (*string == '\'')
            text_add(out, fish ? "\\'" : "'\\''");
        else
            text_add_char(out, *string);
    }
}

/* The workshop file as the program finds it, and the names in it. */
#define NAMES_OF_BUILDS                                                             \
    "    [ -e \"${STUFFOVER_STORE:-${XDG_DATA_HOME:-$HOME/.local/share}/stuffover/" \
    "workshop.stuffover}\" ] ||\n"                                                  \
    "        return 0\n"                                                            \
    "    stuffover list --json 2>/dev/null |\n"                                     \
    "        sed -n 's/^.*\"name\": \"\\([^\"\\\\]*\\)\".*$/\\1/p'\n"

/* ---- bash ---- */

static void bash_values(struct text *out)
{
    text_add(out, "    case $before in\n"
                  "    --store | --to)\n"
                  "        COMPREPLY=($(compgen -f -- \"$current\"))\n"
                  "        return\n"
                  "        ;;\n"
                  "    --build)\n"
                  "        _stuffover_reply_builds \"$current\"\n"
                  "        return\n"
                  "        ;;\n");
    for (const struct command_option *option = command_options; option->name; option++) {
        if (!has_words(option))
            continue;
        text_format(out, "    --%s)\n        COMPREPLY=($(compgen -W '", option->name);
        put_words(out, option);
        text_add(out, "' -- \"$current\"))\n        return\n        ;;\n");
    }
    text_add(out, "    esac\n");
}

static void bash_options(struct text *out)
{
    text_add(out, "    case $command in\n");
    for (const struct command *command = commands; command->name; command++) {
        text_format(out, "    %s) words='", command->name);
        for (const struct command_option *option = command_options; option->name; option++)
            if (command_takes(command, (int)option->option))
                text_format(out, "--%s ", option->name);
        text_add(out, "' ;;\n");
    }
    text_add(out, "    esac\n");
}

static void bash_operands(struct text *out)
{
    text_add(out, "    case $command in\n    ");
    put_commands_with(out, OPERAND_BUILDS, " | ");
    text_add(out, ") _stuffover_reply_builds \"$current\" ;;\n    ");
    put_commands_with(out, OPERAND_BUILD, " | ");
    text_add(out, ")\n        ((operands > 0)) || _stuffover_reply_builds \"$current\"\n"
                  "        ;;\n    ");
    put_commands_with(out, OPERAND_STARTER, " | ");
    text_add(out, ")\n        ((operands > 0)) || COMPREPLY=($(compgen -W '");
    put_starters(out);
    text_add(out, "' -- \"$current\"))\n        ;;\n    ");
    put_commands_with(out, OPERAND_FILE, " | ");
    text_add(out, ") COMPREPLY=($(compgen -f -- \"$current\")) ;;\n    esac\n");
}

static void put_bash(struct text *out)
{
    text_add(out,
             "# Completion of stuffover for bash, written from the table of its commands.\n\n"
             "_stuffover_builds() {\n" NAMES_OF_BUILDS "}\n\n"
             "_stuffover_reply_builds() {\n"
             "    local name typed=${1//\\\\/}\n\n"
             "    typed=${typed#[\\\"\\']}\n"
             "    while IFS= read -r name; do\n"
             "        [[ $name == \"$typed\"* ]] && COMPREPLY+=(\"$(printf %q \"$name\")\")\n"
             "    done < <(_stuffover_builds)\n"
             "}\n\n"
             "_stuffover() {\n"
             "    local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}\n"
             "    local command= words= at=1 operands=0\n\n"
             "    COMPREPLY=()\n"
             "    while ((at < COMP_CWORD)); do\n"
             "        case ${COMP_WORDS[at]} in\n"
             "        ");
    put_valued(out, " | ");
    text_add(out, ") at=$((at + 1)) ;;\n"
                  "        -*) ;;\n"
                  "        *)\n"
                  "            [[ $command ]] && operands=$((operands + 1))\n"
                  "            command=${command:-${COMP_WORDS[at]}}\n"
                  "            ;;\n"
                  "        esac\n"
                  "        at=$((at + 1))\n"
                  "    done\n");
    bash_values(out);
    text_add(out, "    if [[ -z $command ]]; then\n        COMPREPLY=($(compgen -W '");
    put_commands(out);
    text_add(out, " --store --help --version' -- \"$current\"))\n        return\n    fi\n");
    bash_options(out);
    text_add(out, "    if [[ $current == -* ]]; then\n"
                  "        COMPREPLY=($(compgen -W \"$words\" -- \"$current\"))\n"
                  "        return\n"
                  "    fi\n");
    bash_operands(out);
    text_add(out, "}\n\ncomplete -F _stuffover stuffover\n");
}

/* ---- zsh ---- */

static void zsh_option(struct text *out, const struct command_option *option)
{
    text_format(out, " \\\n            '--%s[", option->name);
    put_quoted(out, option->help, "[]:", false);
    text_add(out, "]");
    if (option->value) {
        text_format(out, ":%s:", option->value);
        if (has_words(option)) {
            text_add(out, "(");
            put_words(out, option);
            text_add(out, ")");
        } else if (option->option == OPTION_TO) {
            text_add(out, "_files");
        } else if (option->option == OPTION_BUILD) {
            text_add(out, "_stuffover_builds");
        } else {
            text_add(out, " ");
        }
    }
    text_add(out, "'");
}

static void zsh_operand(struct text *out, const struct command *command)
{
    switch (operand_of(command)) {
    case OPERAND_BUILDS:
        text_add(out, " \\\n            '*:build:_stuffover_builds'");
        break;
    case OPERAND_BUILD:
        text_add(out, " \\\n            '1:build:_stuffover_builds' '*: : '");
        break;
    case OPERAND_STARTER:
        text_add(out, " \\\n            '1:starter piece:(");
        put_starters(out);
        text_add(out, ")' '*: : '");
        break;
    case OPERAND_FILE:
        text_add(out, " \\\n            '*:file:_files'");
        break;
    case OPERAND_NONE:
        text_add(out, " \\\n            '*: : '");
        break;
    }
}

static void put_zsh(struct text *out)
{
    text_add(out, "#compdef stuffover\n"
                  "# Completion of stuffover for zsh, written from the table of its commands.\n\n"
                  "_stuffover_names() {\n" NAMES_OF_BUILDS "}\n\n"
                  "_stuffover_builds() {\n"
                  "    local -a names\n\n"
                  "    names=(\"${(@f)$(_stuffover_names)}\")\n"
                  "    compadd -- \"${(@)names:#}\"\n"
                  "}\n\n"
                  "_stuffover() {\n"
                  "    local context state state_descr line\n"
                  "    local -a commands\n"
                  "    typeset -A opt_args\n\n"
                  "    commands=(\n");
    for (const struct command *command = commands; command->name; command++) {
        text_format(out, "        '%s:", command->name);
        put_quoted(out, command->help, ":", false);
        text_add(out, "'\n");
    }
    text_add(out, "    )\n"
                  "    _arguments -C \\\n"
                  "        '--store[the workshop file]:file:_files' \\\n"
                  "        '--help[lists the commands]' \\\n"
                  "        '--version[prints the version]' \\\n"
                  "        '1:command:->command' \\\n"
                  "        '*::operand:->operands'\n"
                  "    case $state in\n"
                  "    command) _describe command commands ;;\n"
                  "    operands)\n"
                  "        case $words[1] in\n");
    for (const struct command *command = commands; command->name; command++) {
        text_format(out, "        %s)\n            _arguments", command->name);
        for (const struct command_option *option = command_options; option->name; option++)
            if (command_takes(command, (int)option->option))
                zsh_option(out, option);
        zsh_operand(out, command);
        text_add(out, "\n            ;;\n");
    }
    text_add(out, "        esac\n        ;;\n    esac\n}\n\n_stuffover \"$@\"\n");
}

/* ---- fish ---- */

static void fish_option(struct text *out, const struct command *command,
                        const struct command_option *option)
{
    text_format(out, "complete -c stuffover -n '__stuffover_is %s' -l %s", command->name,
                option->name);
    if (option->value)
        text_add(out, option->option == OPTION_TO ? " -r -F" : " -x");
    if (has_words(option)) {
        text_add(out, " -a '");
        put_words(out, option);
        text_add(out, "'");
    } else if (option->option == OPTION_BUILD) {
        text_add(out, " -a '(__stuffover_builds)'");
    }
    text_add(out, " -d '");
    put_quoted(out, option->help, "\\", true);
    text_add(out, "'\n");
}

static void fish_operands(struct text *out, const char *where, enum operand operand,
                          const char *candidates)
{
    text_format(out, "complete -c stuffover -n '%s ", where);
    put_commands_with(out, operand, " ");
    text_format(out, "' %s\n", candidates);
}

/* The command and its operands that stand before the cursor, a line each. */
static void fish_words(struct text *out)
{
    text_add(out, "function __stuffover_words\n"
                  "    set -l value no\n"
                  "    for word in (commandline -opc)[2..-1]\n"
                  "        if test $value = yes\n"
                  "            set value no\n"
                  "            continue\n"
                  "        end\n"
                  "        switch $word\n"
                  "            case ");
    put_valued(out, " ");
    text_add(out, "\n"
                  "                set value yes\n"
                  "            case '-*'\n"
                  "            case '*'\n"
                  "                echo $word\n"
                  "        end\n"
                  "    end\n"
                  "end\n\n"
                  "function __stuffover_no_command\n"
                  "    test (count (__stuffover_words)) -eq 0\n"
                  "end\n\n"
                  "function __stuffover_is\n"
                  "    contains -- (__stuffover_words)[1] $argv\n"
                  "end\n\n"
                  "function __stuffover_first\n"
                  "    __stuffover_is $argv; and test (count (__stuffover_words)) -eq 1\n"
                  "end\n\n");
}

static void put_fish(struct text *out)
{
    text_add(out, "# Completion of stuffover for fish, written from the table of its commands.\n\n"
                  "function __stuffover_builds\n"
                  "    sh -c '\n"
                  "    names() {\n");
    /* The same lines in sh, in a string of fish: its quotes and backslashes are set off. */
    put_quoted(out, NAMES_OF_BUILDS, "\\", true);
    text_add(out, "    }\n    names'\nend\n\n");
    fish_words(out);
    text_add(out, "complete -c stuffover -f\n"
                  "complete -c stuffover -n __stuffover_no_command -l store -r -F"
                  " -d 'the workshop file'\n"
                  "complete -c stuffover -n __stuffover_no_command -l help"
                  " -d 'lists the commands'\n"
                  "complete -c stuffover -n __stuffover_no_command -l version"
                  " -d 'prints the version'\n");
    for (const struct command *command = commands; command->name; command++) {
        text_format(out, "complete -c stuffover -n __stuffover_no_command -a %s -d '",
                    command->name);
        put_quoted(out, command->help, "\\", true);
        text_add(out, "'\n");
        for (const struct command_option *option = command_options; option->name; option++)
            if (command_takes(command, (int)option->option))
                fish_option(out, command, option);
    }
    fish_operands(out, "__stuffover_first", OPERAND_BUILD, "-a '(__stuffover_builds)'");
    fish_operands(out, "__stuffover_is", OPERAND_BUILDS, "-a '(__stuffover_builds)'");
    fish_operands(out, "__stuffover_is", OPERAND_FILE, "-F");
    text_add(out, "complete -c stuffover -n '__stuffover_first ");
    put_commands_with(out, OPERAND_STARTER, " ");
    text_add(out, "' -a '");
    put_starters(out);
    text_add(out, "'\n");
}

/* ---- all ---- */

bool complete_for(struct text *out, const char *shell)
{
    static const struct {
        const char *shell;
        void (*put)(struct text *out);
    } scripts[] = {{"bash", put_bash}, {"zsh", put_zsh}, {"fish", put_fish}};

    for (size_t i = 0; i < sizeof scripts / sizeof *scripts; i++)
        if (strcmp(scripts[i].shell, shell) == 0) {
            scripts[i].put(out);
            return true;
        }
    return false;
}
