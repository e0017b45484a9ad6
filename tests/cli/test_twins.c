/*
 * Whatever the terminal shows or does has a twin among the commands, or a reason why none: moving
 * the cursor is nothing to a command. What is shown has --json.
 */
#include "cli/commands.h"
#include "cli/options.h"
#include "tui/actions.h"
#include "tui/screen.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

struct twin {
    const char *command;
    enum cli_option option; /* that makes it the twin; OPTION_NONE without one */
    bool view;              /* shows something: takes --json */
    const char *why_none;
};

#define EDITS(command)                    \
    {                                     \
        command, OPTION_NONE, false, NULL \
    }
#define SHOWS_BY(command)                \
    {                                    \
        command, OPTION_NONE, true, NULL \
    }
#define SHOWS_WITH(command, option) \
    {                               \
        command, option, true, NULL \
    }
#define NO_TWIN(why)                  \
    {                                 \
        NULL, OPTION_NONE, false, why \
    }

static const struct twin of_actions[ACTION_COUNT] = {
    [ACTION_UP] = NO_TWIN("moves within what is shown"),
    [ACTION_DOWN] = NO_TWIN("moves within what is shown"),
    [ACTION_LEFT] = NO_TWIN("moves within what is shown"),
    [ACTION_RIGHT] = NO_TWIN("moves within what is shown"),
    [ACTION_FIRST] = NO_TWIN("moves within what is shown"),
    [ACTION_LAST] = NO_TWIN("moves within what is shown"),
    [ACTION_LEAF_UP] = NO_TWIN("moves within what is shown"),
    [ACTION_LEAF_DOWN] = NO_TWIN("moves within what is shown"),
    [ACTION_ENTER] = EDITS("change"),
    [ACTION_LEAVE] = NO_TWIN("goes back to another screen"),
    [ACTION_TICK] = EDITS("tick"),
    [ACTION_HELP] = NO_TWIN("keys; of commands --help tells"),
    [ACTION_FIND] = NO_TWIN("words are found in what a command prints by whoever reads it"),
    [ACTION_ADD] = EDITS("add"),
    [ACTION_COPY] = EDITS("copy"),
    [ACTION_MIRROR] = EDITS("mirror"),
    [ACTION_PLACE] = EDITS("put"),
    [ACTION_REMOVE] = EDITS("delete"),
    [ACTION_STEPS] = SHOWS_BY("steps"),
    [ACTION_BUYING] = SHOWS_BY("buy"),
    [ACTION_HOLES] = SHOWS_BY("map"),
    [ACTION_CUTTING] = SHOWS_BY("cut"),
    [ACTION_PAPERS] = EDITS("print"),
    [ACTION_MONEY] = SHOWS_BY("money"),
    [ACTION_FINDINGS] = SHOWS_BY("check"),
    [ACTION_CARE] = SHOWS_WITH("show", OPTION_CARE),
    [ACTION_CLOTH] = SHOWS_BY("cloth"),
    [ACTION_NOW] = SHOWS_WITH("steps", OPTION_MINUTES),
    [ACTION_SPOIL] = EDITS("spoil"),
    [ACTION_LEAVE_OUT] = EDITS("leave"),
    [ACTION_VIEW] = SHOWS_WITH("show", OPTION_FACE),
    [ACTION_LARGE] = SHOWS_WITH("show", OPTION_PICTURE),
    [ACTION_CLOCK] = EDITS("clock"),
    [ACTION_TROLLEY] = SHOWS_BY("buy"),
    [ACTION_COMPARE] = SHOWS_BY("compare"),
    [ACTION_ACCOUNT] = SHOWS_BY("money"),
    [ACTION_STOCK] = SHOWS_BY("stock"),
    [ACTION_TRADE] = SHOWS_BY("trade"),
    [ACTION_SHOP] = SHOWS_BY("stock"),
    [ACTION_UNDO] = EDITS("undo"),
    [ACTION_REDO] = EDITS("redo"),
    [ACTION_LINE_OUT] = NO_TWIN("what a command prints goes where its reader wants it"),
    [ACTION_LIST_OUT] = NO_TWIN("what a command prints goes where its reader wants it"),
    [ACTION_NOTE] = EDITS("change"),
    [ACTION_MOUSE] = NO_TWIN("a command has no mouse"),
    [ACTION_QUIT] = NO_TWIN("a command ends by itself"),
};

/* By the screens' own names. */
static const struct {
    const struct screen *screen;
    struct twin twin;
} of_screens[] = {
    {&screen_builds, SHOWS_BY("list")},
    {&screen_new, EDITS("new")},
    {&screen_outline, SHOWS_BY("items")},
    {&screen_beside, EDITS("put")},
    {&screen_picture, SHOWS_WITH("show", OPTION_PICTURE)},
    {&screen_add, EDITS("add")},
    {&screen_form, EDITS("change")},
    {&screen_order, SHOWS_BY("steps")},
    {&screen_step, SHOWS_BY("steps")},
    {&screen_measures, {"tick", OPTION_MEASURE, false, NULL}},
    {&screen_now, SHOWS_WITH("steps", OPTION_MINUTES)},
    {&screen_parts, EDITS("spoil")},
    {&screen_buying, SHOWS_BY("buy")},
    {&screen_trip, SHOWS_BY("buy")},
    {&screen_together, SHOWS_BY("buy")},
    {&screen_account, SHOWS_BY("money")},
    {&screen_compare, SHOWS_BY("compare")},
    {&screen_stock, SHOWS_BY("stock")},
    {&screen_prices, SHOWS_BY("stock")},
    {&screen_cutting, SHOWS_BY("cut")},
    {&screen_papers, EDITS("print")},
    {&screen_cloth, SHOWS_BY("cloth")},
    {&screen_money, SHOWS_BY("money")},
    {&screen_findings, SHOWS_BY("check")},
    {&screen_care, SHOWS_WITH("show", OPTION_CARE)},
    {&screen_map, SHOWS_BY("map")},
    {&screen_point, SHOWS_BY("map")},
    {&screen_trade, SHOWS_BY("trade")},
    {&screen_shop, SHOWS_BY("stock")},
    {&screen_help, NO_TWIN("keys; of commands --help tells")},
};

static const struct command *named(const char *name)
{
    for (const struct command *command = commands; command->name; command++)
        if (strcmp(command->name, name) == 0)
            return command;
    return NULL;
}

static void check_twin(const char *of, const struct twin *twin)
{
    const struct command *command;

    if (!twin->command) {
        if (!twin->why_none)
            fail_msg("%s has no twin, and no reason is given", of);
        return;
    }
    command = named(twin->command);
    if (!command)
        fail_msg("%s: there is no command %s", of, twin->command);
    if (twin->option && !command_takes(command, (int)twin->option))
        fail_msg("%s: %s does not take the option", of, twin->command);
    if (twin->view && !command_takes(command, OPTION_JSON))
        fail_msg("%s: %s does not take --json", of, twin->command);
}

static void every_action_has_its_twin_or_a_reason(void **state)
{
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++)
        check_twin(actions[i].name, &of_actions[i]);
}

static void every_screen_has_its_twin_or_a_reason(void **state)
{
#define SCREEN_POINTER(name) &screen_##name,
    static const struct screen *const screens[] = {SCREENS(SCREEN_POINTER)};

    (void)state;
    for (size_t i = 0; i < sizeof screens / sizeof *screens; i++) {
        size_t row = 0;

        while (row < sizeof of_screens / sizeof *of_screens && of_screens[row].screen != screens[i])
            row++;
        if (row == sizeof of_screens / sizeof *of_screens)
            fail_msg("the screen \"%s\" has no row here", screens[i]->name);
        check_twin(screens[i]->name, &of_screens[row].twin);
    }
}

/* An option that no command takes, or a command that takes one that is in no table. */
static void options_and_commands_know_each_other(void **state)
{
    (void)state;
    for (const struct command_option *option = command_options; option->name; option++) {
        bool taken = false;

        for (const struct command *command = commands; command->name; command++)
            taken |= command_takes(command, (int)option->option);
        if (!taken)
            fail_msg("no command takes --%s", option->name);
        assert_true(strlen(option->help) > 5);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_action_has_its_twin_or_a_reason),
        cmocka_unit_test(every_screen_has_its_twin_or_a_reason),
        cmocka_unit_test(options_and_commands_know_each_other),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
