/*
 * Three whole builds, from an empty workshop to the last tick, each played twice as makers play
 * them: by keys on the screens, and by commands. On the way there are wrong entries, edits taken
 * back, prices, a shopping trip, measures as built, a part that is spoiled, a change that comes
 * late, money, papers. In the end nothing is left to do or missing, what was paid adds up, the file
 * is sound, and both ways have made the same build, fact by fact, and the same plan.
 *
 * What stands between the two is only who presses: whatever is entered is written once, in a table,
 * and goes in as keys on one side and as a command on the other.
 */
#include "kept.h"
#include "shell.h"
#include "stage.h"

#include "paper/sheets.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

struct played {
    const char *build; /* its name, on both sides */
    struct stage *keys;
    struct shell *commands;
};

static int begin(void **state)
{
    struct played *played = calloc(1, sizeof *played);
    void *side;
    assert_non_null(played);
    stage_begin(&side);
    played->keys = side;
    shell_begin(&side);
    played->commands = side;
    *state = played;
    return 0;
}

static int end(void **state)
{
    struct played *played = *state;
    void *side = played->keys;
    stage_end(&side);
    side = played->commands;
    shell_end(&side);
    free(played);
    return 0;
}

/* ---- one thing that is done, on either side ---- */

/* Presses keys, and sees words on the screen then. */
static void press(struct played *played, const char *keys, const char *shown)
{
    stage_press(played->keys, keys);
    assert_shown(played->keys, shown);
}

/* Says a command, which ends with the code and has the words in what it prints, fine or not. */
static void say(struct played *played, const char *line, int code, const char *words)
{
    const struct answer *answer = shell_say(played->commands, line);
    if (answer->code != code)
        fail_msg("%s: %d, not %d\n%s%s", line, answer->code, code, answer->out, answer->error);
    assert_says(code ? answer->error : answer->out, words);
}

static void say_of(struct played *played, const char *words, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

static void say_of(struct played *played, const char *words, const char *format, ...)
{
    char line[4096];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(line, sizeof line, format, arguments);
    va_end(arguments);
    say(played, line, 0, words);
}

/* ---- prices ---- */

/* By enum stock_word; invented. What is counted is sold by the pack. */
static const char *const prices[] = {
    [STOCK_STICK] = "3.25", [STOCK_SHEET] = "38.40",      [STOCK_CLOTH] = "14",
    [STOCK_FOAM] = "52.10", [STOCK_BATTING] = "4.35",     [STOCK_SCREW] = "9.95/100",
    [STOCK_BOLT] = "0.85",  [STOCK_STAPLE] = "6.20/1000", [STOCK_NAIL] = "7.10/100",
    [STOCK_STRIP] = "0.60", [STOCK_BUTTON] = "0.40",      [STOCK_CORD] = "0.15",
    [STOCK_GLUE] = "8.75",  [STOCK_SPRAY] = "12.30",      [STOCK_HARDWARE] = "4.90",
    [STOCK_OTHER] = "1.00",
};

/* From the list of builds, and back to it. */
static void price_all(struct played *played)
{
    size_t count = desk_model(played->keys->desk)->stocks.count;
    stage_press(played->keys, "S");
    for (size_t i = 0; i < count; i++) {
        const struct stock *stock = &desk_model(played->keys->desk)->stocks.at[i];
        char keys[64];
        snprintf(keys, sizeof keys, "'%s' Enter", prices[stock->kind]);
        say_of(played, "PRICES", "stock '%s' 1 %s", stock->name, prices[stock->kind]);
        stage_press(played->keys, keys);
    }
    assert_not_shown(played->keys, "nobody has it");
    stage_press(played->keys, "Esc");
    assert_int_equal(desk_model(played->keys->desk)->offers.count, count);
}

/* ---- ticks ---- */

static const struct step *next_step(const struct played *played)
{
    const struct plan *plan = desk_plan(played->keys->desk);
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (!plan->steps.at[i].ticked)
            return &plan->steps.at[i];
    }
    return NULL;
}

/* Ticks what comes before a step, in the plan's order (NULL: all that is left), from the order of
 * work, whose measures stay as planned. */
static void tick_before(struct played *played, const char *name)
{
    struct text line;
    const struct step *step;
    text_init(&line);
    text_format(&line, "tick '%s'", played->build);
    stage_press(played->keys, "Esc o");
    while ((step = next_step(played)) && (!name || strcmp(step->name, name) != 0)) {
        char ticked[sizeof step->name];
        size_t before = desk_model(played->keys->desk)->ticks.count;
        snprintf(ticked, sizeof ticked, "%s", step->name); /* its plan goes with the tick */
        text_format(&line, " %s", ticked);
        stage_press(played->keys, "Space");
        if (desk_model(played->keys->desk)->ticks.count == before)
            stage_press(played->keys, "Space"); /* it asked for measures first */
        if (desk_model(played->keys->desk)->ticks.count != before + 1)
            fail_msg("%s is not ticked:\n%s", ticked, stage_show(played->keys, 24, 80));
    }
    say(played, text_string(&line), 0, "steps done");
    text_release(&line);
}

/* ---- shopping ---- */

/* The lines of the list in the order in which the shop has them. */
static const struct purchase *line_at(const struct plan *plan, size_t index)
{
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        for (size_t i = 0; i < plan->purchases.count; i++) {
            if (plan->purchases.at[i].aisle == aisle && index-- == 0)
                return &plan->purchases.at[i];
        }
    }
    return NULL;
}

static bool is_paid(const struct plan *plan, const struct purchase *line)
{
    const struct model *model = plan->facts;
    struct text words;
    bool paid = false;
    text_init(&words);
    sheet_purchase_words(&words, plan, line);
    for (size_t i = 0; i < model->spends.count; i++)
        paid |= strcmp(model->spends.at[i].what, text_string(&words)) == 0;
    text_release(&words);
    return paid;
}

/* Writes down by command what the keys wrote down last. */
static void say_spend(struct played *played)
{
    const struct model *model = desk_model(played->keys->desk);
    const struct spend *spend = &model->spends.at[model->spends.count - 1];
    const struct stock *stock = MODEL_FIND(model, stock, spend->stock);
    char amount[MONEY_TEXT], size[QUANTITY_TEXT];
    const struct {
        const char *name;
        int64_t size;
    } sizes[] = {{"length", spend->length}, {"width", spend->width}};
    struct text line;
    text_init(&line);
    text_format(&line, "spend '%s' %s '%s'", played->build,
                money_print(amount, model_currency(model), spend->amount), spend->what);
    if (stock)
        text_format(&line, " --stock '%s'", stock->name);
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++)
        if (sizes[i].size)
            text_format(
                &line, " --%s '%s'", sizes[i].name,
                quantity_print_exact(size, QUANTITY_LENGTH, model_units(model), sizes[i].size));
    if (spend->pack)
        text_format(&line, " --pack %lld", (long long)spend->pack);
    if (spend->count)
        text_format(&line, " --count %lld", (long long)spend->count);
    if (spend->settles)
        text_add(&line, " --settles");
    say(played, text_string(&line), 0, "");
    text_release(&line);
}

/* Goes through the list from the top: each line that is not paid yet is paid at its price, or
 * where that is not known, or more was bought than before, as typed. */
static void shop(struct played *played, const char *typed)
{
    char keys[64];
    size_t count = desk_plan(played->keys->desk)->purchases.count;
    snprintf(keys, sizeof keys, "'%s' Enter", typed);
    stage_press(played->keys, "Esc b Home");
    for (size_t i = 0; i < count; i++) {
        const struct plan *plan = desk_plan(played->keys->desk);
        size_t spends = plan->facts->spends.count;
        if (is_paid(plan, line_at(plan, i))) {
            stage_press(played->keys, "Down");
            continue;
        }
        stage_press(played->keys, "Space");
        if (desk_model(played->keys->desk)->spends.count == spends)
            stage_press(played->keys, keys);
        assert_int_equal(desk_model(played->keys->desk)->spends.count, spends + 1);
        say_spend(played);
    }
}

/* ---- the end ---- */

/* What a command says of the store that was made by keys. */
static char *said_by_keys(struct played *played, const char *line)
{
    struct workshop_place place = played->commands->place;
    played->commands->place = played->keys->place;
    const struct answer *answer = shell_say(played->commands, line);
    played->commands->place = place;
    assert_int_equal(answer->code, 0);
    char *said = strdup(answer->out);
    assert_non_null(said);
    return said;
}

/* The same command, asked of both stores, says the same. */
static void assert_both_say(struct played *played, const char *format)
{
    char line[160];
    snprintf(line, sizeof line, format, played->build);
    char *keys = said_by_keys(played, line);
    const struct answer *answer = shell_say(played->commands, line);
    assert_int_equal(answer->code, 0);
    assert_string_equal(keys, answer->out);
    free(keys);
}

static int64_t paid_by(const struct model *model)
{
    int64_t paid = 0;
    for (size_t i = 0; i < model->spends.count; i++)
        paid += model->spends.at[i].amount;
    return paid;
}

/* Money adds up to the smallest coin: what was written down, the list's figure, the plan's; and in
 * a finished build the forecast is what was paid. */
static void assert_money_adds_up(struct played *played)
{
    const struct plan *plan = desk_plan(played->keys->desk);
    int64_t paid = paid_by(desk_model(played->keys->desk));
    int64_t lines = 0;
    for (size_t i = 0; i < plan->cost.lines.count; i++)
        lines += plan->cost.lines.at[i].paid;
    assert_int_equal(lines, paid);
    assert_int_equal(plan->cost.spent, paid);
    assert_int_equal(plan->cost.forecast, paid);
}

static void assert_finished(struct played *played)
{
    const struct plan *plan = desk_plan(played->keys->desk);
    struct text missing;
    text_init(&missing);
    desk_missing(plan, &missing);
    assert_string_equal(text_string(&missing), "");
    text_release(&missing);
    assert_int_equal(plan->tally.steps_done, plan->tally.steps);
    assert_int_equal(plan->tally.stops, 0);
    assert_null(next_step(played));
    assert_money_adds_up(played);
    say(played, "check", 0, "whole");
    free(said_by_keys(played, "check"));
    assert_both_say(played, "export '%s'");
    assert_both_say(played, "plan '%s' --json");
}

/* All papers into a text file, from any place of the build: the same bytes from both sides. */
static void print_papers(struct played *played)
{
    char keys[1400];
    char path[700];
    snprintf(path, sizeof path, "%s.txt", played->keys->place.path);
    snprintf(keys, sizeof keys, "Esc p Enter Ctrl-U '%s' Enter Enter", path);
    stage_press(played->keys, keys);
    assert_shown(played->keys, "is written");
    struct text printed;
    text_init(&printed);
    file_take(&printed, path);
    const struct answer *answer;
    char line[200];
    snprintf(line, sizeof line, "print '%s'", played->build);
    answer = shell_say(played->commands, line);
    assert_int_equal(answer->code, 0);
    assert_string_equal(text_string(&printed), answer->out);
    text_release(&printed);
    assert_int_equal(unlink(path), 0);
}

/* ---- the builds ---- */

/* A chest with a padded lid, 1100 mm wide, by a maker with a metric tape. */
static void a_chest_with_a_lid_in_millimetres(void **state)
{
    struct played *played = *state;
    played->build = "Chest";
    press(played, "a Down Enter 'Chest' Enter 'mm' Enter '11' Enter", "it has to lie between");
    press(played, "Ctrl-U '1100' Enter Enter Enter", "made;");
    say(played, "new storage-bench Chest --units mm width=11", 1, "it has to lie between");
    say(played, "new storage-bench Chest --units mm width=1100", 0, "0 stop");
    stage_press(played->keys, "Esc");
    price_all(played);

    press(played, "Enter Enter Down Down Down Down '42oo' Enter", "a length is in inches");
    press(played, "Ctrl-U '4200' Enter u", "taken back");
    say(played, "change Chest box B height=42oo", 1, "a length is in inches");
    say(played, "change Chest box B height=4200", 0, "Chest");
    say(played, "undo", 0, "height of B");
    press(played, "Esc Home Enter / 'budget' Enter '300' Enter", "300.00");
    say(played, "change Chest budget=300", 0, "Chest");

    tick_before(played, "buy");
    shop(played, "4.90");
    tick_before(played, "gauge");
    press(played, "Space Down Down '11.6' Enter Space", "done, with 1 measure");
    say(played, "tick Chest gauge --measure 'Plywood 12 mm thickness=11.6'", 0, "steps done");
    tick_before(played, "record:1");
    press(played, "Space '11' Enter Space", "measure again");
    press(played, "Up Enter Ctrl-U '1102' Enter Space", "done, with 1 measure");
    say(played, "tick Chest record:1 --measure width=11", 1, "measure again");
    say(played, "tick Chest record:1 --measure width=1102", 0, "steps done");
    tick_before(played, NULL);
    print_papers(played);
    assert_finished(played);
    assert_both_say(played, "money '%s' --json");
    assert_both_say(played, "stock --json");
    assert_both_say(played, "list");
}

#ifndef __SANITIZE_ADDRESS__
/* A wing headboard for a bed of 54 inches, by a maker with a tape in inches. */
static void a_headboard_of_three_boxes_in_inches(void **state)
{
    struct played *played = *state;
    played->build = "Head";
    press(played, "a Down Down Enter 'Head' Enter Enter '54x' Enter", "a length is in inches");
    press(played, "Ctrl-U '54' Enter '48' Enter Enter", "made;");
    say(played, "new wing-headboard Head mattress=54x", 1, "a length is in inches");
    say(played, "new wing-headboard Head mattress=54 height=48", 0, "0 stop");
    stage_press(played->keys, "Esc");
    price_all(played);

    press(played, "Enter Enter Down Down Enter '65' Enter u r u", "taken back: width of C");
    say(played, "change Head box C width=65", 0, "Head");
    say(played, "undo", 0, "width of C");
    say(played, "redo", 0, "width of C");
    say(played, "undo", 0, "width of C");

    tick_before(played, "buy");
    shop(played, "1.50");
    tick_before(played, "label");
    press(played, "s / 'C3' Enter Space Esc", "order of work");
    say(played, "spoil Head C3", 0, "next");
    tick_before(played, "record:7");
    press(played, "Space Down Down '11 15/16' Enter Space", "done, with 1 measure");
    say(played, "tick Head record:7 --measure 'depth=11 15/16'", 0, "steps done");

    press(played, "Esc a / 'what else' Enter Enter Enter 'wall hooks' Enter", "extra");
    press(played, "Down Down Enter '6.50' Enter", "6.50 USD");
    say(played, "add Head extra 'what=wall hooks' price=6.50", 0, "Head");
    shop(played, "1.50");
    tick_before(played, NULL);
    assert_finished(played);
}

/* A corner bench with two seats and two backs: after the shopping both backs become higher, so that
 * cloth is missing and bought once more. */
static void a_corner_bench_that_changes_late(void **state)
{
    struct played *played = *state;
    played->build = "Corner";
    press(played, "a Enter 'Corner' Enter 'mm' Enter Enter Enter Enter Enter Enter", "made;");
    say(played, "new corner-banquette Corner --units mm", 0, "0 stop");
    stage_press(played->keys, "Esc");
    price_all(played);
    stage_press(played->keys, "Enter");

    tick_before(played, "buy");
    shop(played, "2.20");
    tick_before(played, "frame:1");
    press(played, "Esc / 'Box BA' Enter Enter Down Down Down Down Enter '480' Enter", "480 mm");
    press(played, "Esc / 'Box BB' Enter Enter Down Down Down Down Enter '480' Enter", "480 mm");
    say(played, "change Corner box BA height=480", 0, "Corner");
    say(played, "change Corner box BB height=480", 0, "Corner");
    tick_before(played, "record:5");
    press(played, "Space '1052' Enter Space", "done, with 1 measure");
    say(played, "tick Corner record:5 --measure width=1052", 0, "steps done");
    shop(played, "9.80");
    tick_before(played, NULL);
    assert_finished(played);
}

#endif

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        FACT(a_chest_with_a_lid_in_millimetres),
#ifndef __SANITIZE_ADDRESS__ /* the larger ones; what they run through the first does as well */
        FACT(a_headboard_of_three_boxes_in_inches),
        FACT(a_corner_bench_that_changes_late),
#endif
    };
    int failed = cmocka_run_group_tests_name("played", tests, NULL, NULL);
    return failed ? 1 : 0;
}
