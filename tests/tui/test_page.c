/*
 * stuffover-terminal(5) says what the table of actions says. The program is given the folder of the
 * pages; with STUFFOVER_PAGES=write in the environment it writes the page.
 */
#include "tui/actions.h"

#include "kept.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const char *page_folder;

static const char head[] =
    ".Dd November 30, 2026\n.Dt STUFFOVER-TERMINAL 5\n.Os\n.Sh NAME\n.Nm stuffover-terminal\n"
    ".Nd settings of stuffover in the terminal\n.Sh DESCRIPTION\n"
    "The file\n.Pa stuffover/terminal.conf\nin the folder that\n.Ev XDG_CONFIG_HOME\n"
    "names, else in\n.Pa ~/.config ,\nis read when\n.Xr stuffover 1\nopens in the terminal.\n"
    "It is not needed.\n"
    "Each line is one of these; what follows a\n.Ql #\nis for people:\n"
    ".Bl -tag -width Ds\n"
    ".It Ic key Ar action key ...\n"
    "The action has these keys, at most four, and none of its standard ones.\n"
    "A key is a character, or a name as the list below has it:\n"
    "Up, Down, Left, Right, Home, End, PgUp, PgDn, Ins, Del, Tab, Shift-Tab, Space,\n"
    "F1 to F12, Ctrl-A to Ctrl-Z.\n"
    ".It Ic set mouse Ar on | off\n"
    "Whether the mouse is read from the beginning.\n"
    "While it is not, the terminal marks text with it as it always does.\n"
    ".El\n.Pp\n"
    "Enter and Esc always enter and go back, figures begin with their digits, and\n"
    "Ctrl-C, Ctrl-Q, Ctrl-S, Ctrl-V and Ctrl-Z belong to the terminal:\n"
    "a line that wants one of them is left out.\n"
    "So is a line that wants a key that an earlier line gave away, one that would\n"
    "leave another action without any key, and one that makes no sense.\n"
    "Each is told with its number when the program begins, and on the screen of\n"
    "keys; the other lines hold.\n"
    "A key that was another action's by standard is taken from that one, which is\n"
    "told too.\n"
    "A file of more than 65536 bytes is left out whole.\n"
    ".Sh KEYS\nName of an action, standard keys, what it does.\n.Bl -tag -width Ds\n";

static const char foot[] =
    ".El\n.Sh EXAMPLES\n.Bd -literal -offset indent\n"
    "# the order of work by one key more\nkey order F5 o Ctrl-^\nset mouse on\n.Ed\n"
    ".Sh SEE ALSO\n.Xr stuffover 1\n";

static void add_action(struct text *out, const struct action_entry *action)
{
    char name[ACTION_KEY_TEXT];
    text_format(out, ".It Cm %s\n%s", action->name, action_key_name(action->key, name));
    if (action->other != KEY_NONE)
        text_format(out, " or %s", action_key_name(action->other, name));
    text_format(out, ".\n%c%s.\n", action->help[0] - 'a' + 'A', action->help + 1);
}

static void write_page(struct text *out)
{
    text_add(out, head);
    for (int i = 0; i < ACTION_COUNT; i++)
        add_action(out, &actions[i]);
    text_add(out, foot);
}

static void the_page_of_the_terminal_follows_the_table(void **state)
{
    char path[4096];
    struct text made;
    (void)state;
    snprintf(path, sizeof path, "%s/stuffover-terminal.5", page_folder);
    text_init(&made);
    write_page(&made);
    kept_assert(path, text_string(&made), "STUFFOVER_PAGES");
    text_release(&made);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_page_of_the_terminal_follows_the_table),
    };
    if (argc != 2) {
        fprintf(stderr, "the folder of the pages is needed\n");
        return 2;
    }
    page_folder = argv[1];
    return cmocka_run_group_tests_name("terminal page", tests, NULL, NULL) ? 1 : 0;
}
