/*
 * Money by chance over every view: with any rate of tax, prices with and without it, suppliers who
 * bring, spends and refunds, what the lines say adds up to what the totals say, in text, JSON,
 * tables and papers; and one view says what another does.
 */
#include "shell.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <jansson.h>

#ifdef __SANITIZE_ADDRESS__
#define ROUNDS 1
#else
#define ROUNDS 2
#endif
#define BUILDS 3

static const char *const names[BUILDS] = {"Wing headboard", "Tufted ottoman", "L-shaped banquette"};

/* ---- a workshop by chance ---- */

static int begin(void **state)
{
    shell_begin(state);
    assert_int_equal(shell_run(*state, "import", CASE_FOLDER "/headboard.json",
                               CASE_FOLDER "/ottoman.json", CASE_FOLDER "/banquette.json", NULL)
                         ->code,
                     0);
    return 0;
}

static enum fault change_prices(struct model *draft, void *context, struct fault_note *note)
{
    struct dice *dice = context;
    (void)note;
    draft->workshop.tax = 2500 * dice_between(dice, 0, 100);
    for (size_t i = 0; i < draft->offers.count; i++) {
        struct offer *offer = &draft->offers.at[i];
        offer->price = dice_between(dice, 1, 9999);
        offer->taxed = dice_between(dice, 0, TAXED_COUNT - 1);
        offer->tax = dice_between(dice, 0, 1) * 1000 * dice_between(dice, 1, 300);
        offer->supplier = dice_between(dice, 0, 1) ? "Yard" : "Mill";
    }
    for (int i = 0; draft->suppliers.count < 2; i++) {
        struct supplier *supplier = MODEL_ADD(draft, supplier);
        supplier->name = i ? "Mill" : "Yard";
        supplier->delivery = dice_between(dice, 100, 4000);
        supplier->free_from = i ? 0 : dice_between(dice, 1, 60000);
    }
    return FAULT_NONE;
}

/* Spends by hand, refunds among them, each in a build or split over two. */
static void spend_by_chance(struct shell *shell, struct dice *dice)
{
    for (int i = 0; i < 3; i++) {
        int first = (int)dice_between(dice, 0, BUILDS - 1);
        int second = (first + 1) % BUILDS;
        char amount[MONEY_TEXT], tax[MONEY_TEXT], with[80];
        const struct currency dollar = {"USD", 2};
        int64_t money = dice_between(dice, -3000, 20000);
        money_print(amount, dollar, money);
        money_print(tax, dollar, money / 15);
        snprintf(with, sizeof with, "%s=%d", names[second], (int)dice_between(dice, 1, 5));
        const char *aisle = words_aisle.at[dice_between(dice, 0, AISLE_COUNT - 1)].name;
        assert_int_equal(shell_run(shell, "spend", "--tax", tax, "--aisle", aisle, "--date",
                                   "2026-11-30", "--with", with, "--", names[first], amount,
                                   "something", NULL)
                             ->code,
                         0);
    }
}

static void change_by_chance(struct shell *shell, struct dice *dice)
{
    struct desk *desk = desk_at(&shell->place);
    DONE(desk_edit(desk, "prices by chance", change_prices, dice, note));
    desk_close(desk);
    spend_by_chance(shell, dice);
}

/* ---- JSON ---- */

static json_t *json_of(struct shell *shell)
{
    json_error_t error;
    json_t *json = json_loads(shell->answer.out, JSON_REJECT_DUPLICATES, &error);
    if (!json)
        fail_msg("line %d: %s", error.line, error.text);
    return json;
}

/* "-12.05" in cents; false for what is no money. */
static bool read_cents(const char *text, long *ret_cents)
{
    const char *at = text + (*text == '+' || *text == '-');
    size_t whole = strspn(at, "0123456789");
    if (whole == 0 || at[whole] != '.' || strspn(at + whole + 1, "0123456789") != 2 ||
        strlen(at) != whole + 3)
        return false;
    *ret_cents = strtol(at, NULL, 10) * 100 + strtol(at + whole + 1, NULL, 10);
    if (*text == '-')
        *ret_cents = -*ret_cents;
    return true;
}

static long cents(const json_t *object, const char *key)
{
    const char *money = json_string_value(json_object_get(object, key));
    long value = 0;
    if (!money || !read_cents(money, &value))
        fail_msg("\"%s\" is no money", key);
    return value;
}

static long sum_of(const json_t *object, const char *list, const char *key)
{
    long sum = 0;
    size_t i;
    json_t *at;
    json_array_foreach(json_object_get(object, list), i, at) sum += cents(at, key);
    return sum;
}

/* What one build's money says: the figures that other views are held against. */
struct figures {
    long estimate, committed, spent, forecast;
};

static void assert_json_adds_up(struct shell *shell, const char *build, struct figures *ret)
{
    static const char *const keys[] = {"estimate", "committed", "spent", "forecast", "variance"};
    shell_run(shell, "money", build, "--json", NULL);
    json_t *json = json_of(shell);
    const json_t *money = json_object_get(json, "money");
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        assert_int_equal(sum_of(money, "aisles", keys[i]), cents(money, keys[i]));
        assert_int_equal(sum_of(money, "lines", keys[i]), cents(money, keys[i]));
    }
    assert_int_equal(sum_of(json, "purchases", "price"), cents(money, "bought"));
    assert_int_equal(sum_of(json, "purchases", "till"), cents(money, "estimate"));
    assert_int_equal(cents(money, "bought") + cents(money, "tax"), cents(money, "estimate"));
    assert_int_equal(cents(money, "forecast") - cents(money, "estimate"), cents(money, "variance"));
    *ret = (struct figures){cents(money, "estimate"), cents(money, "committed"),
                            cents(money, "spent"), cents(money, "forecast")};
    json_decref(json);
}

/* ---- text ---- */

/* Cuts a line into fields that two blanks or more part; how many there are. */
static size_t cut_fields(char *line, char *fields[], size_t most)
{
    size_t count = 0;
    char *at = line + strspn(line, " ");
    while (*at && count < most) {
        char *end = strstr(at, "  ");
        fields[count++] = at;
        if (!end)
            break;
        *end = '\0';
        at = end + 1 + strspn(end + 1, " ");
    }
    return count;
}

/* Adds up the first money of each line from a heading to the words that end it, and gives the money
 * in the line with those words; the other lines' names are of no interest. */
static void add_lines(const char *text, const char *from, const char *to, long *ret_sum,
                      long *ret_total)
{
    char copy[400];
    char *fields[12];
    long money;
    const char *at = strstr(text, from);
    assert_non_null(at);
    *ret_sum = *ret_total = 0;
    for (at = strchr(at, '\n') + 1;; at = strchr(at, '\n') + 1) {
        size_t length = strcspn(at, "\n");
        assert_true(*at && length < sizeof copy);
        snprintf(copy, sizeof copy, "%.*s", (int)length, at);
        bool last = strstr(copy, to) != NULL;
        size_t count = cut_fields(copy, fields, 12);
        for (size_t i = 0; i < count; i++) {
            if (!read_cents(fields[i], &money))
                continue;
            *(last ? ret_total : ret_sum) += money;
            break;
        }
        if (last)
            return;
    }
}

/* The list and the sums by category, printed or on paper. */
static void assert_sheets_add_up(const char *list, const char *money, const struct figures *figures)
{
    char total[60];
    long sum, all;
    add_lines(list, "SHOPPING LIST", "total ", &sum, &all);
    assert_int_equal(sum, figures->estimate);
    snprintf(total, sizeof total, "total %ld.%02ld", figures->estimate / 100,
             figures->estimate % 100);
    assert_says(list, total);
    add_lines(money, "MONEY", "in all", &sum, &all);
    assert_int_equal(sum, figures->estimate);
    assert_int_equal(all, figures->estimate);
}

static void assert_text_adds_up(struct shell *shell, const char *build,
                                const struct figures *figures)
{
    shell_run(shell, "money", build, NULL);
    assert_sheets_add_up(shell->answer.out, shell->answer.out, figures);
    shell_run(shell, "print", build, "--papers", "shopping,money", NULL);
    assert_sheets_add_up(shell->answer.out, strstr(shell->answer.out, "MONEY\n"), figures);
}

/* ---- all builds ---- */

static long paid_in_table(struct shell *shell, const char *build)
{
    long sum = 0;
    char *row;
    assert_int_equal(build ? shell_run(shell, "export", "--table", "spend", build, NULL)->code
                           : shell_run(shell, "export", "--table", "spend", NULL)->code,
                     0);
    row = strchr(shell->answer.out, '\n') + 1;
    while (*row) {
        char *amount = strchr(strchr(row, ',') + 1, ',') + 1;
        long money;
        amount[strcspn(amount, ",")] = '\0';
        assert_true(read_cents(amount, &money));
        sum += money;
        row = strchr(amount + strlen(amount) + 1, '\n') + 1;
    }
    return sum;
}

static void assert_account_adds_up(struct shell *shell, const struct figures *figures)
{
    static const char *const keys[] = {"estimate", "committed", "paid", "forecast", "variance"};
    size_t i;
    json_t *at;
    shell_run(shell, "money", "--json", "--date", "2026-11-30", NULL);
    json_t *json = json_of(shell);
    for (i = 0; i < sizeof keys / sizeof *keys; i++)
        assert_int_equal(sum_of(json, "builds", keys[i]), cents(json, keys[i]));
    assert_int_equal(sum_of(json, "months", "paid"), cents(json, "all_paid"));
    assert_int_equal(cents(json, "paid") + cents(json, "shelf"), cents(json, "all_paid"));
    assert_int_equal(paid_in_table(shell, NULL), cents(json, "all_paid"));
    json_array_foreach(json_object_get(json, "builds"), i, at)
    {
        assert_string_equal(json_string_value(json_object_get(at, "build")), names[i]);
        assert_int_equal(cents(at, "estimate"), figures[i].estimate);
        assert_int_equal(cents(at, "committed"), figures[i].committed);
        assert_int_equal(cents(at, "paid"), figures[i].spent);
        assert_int_equal(cents(at, "forecast"), figures[i].forecast);
    }
    assert_int_equal(i, BUILDS);
    json_decref(json);
}

static void assert_list_says_the_same(struct shell *shell, const struct figures *figures)
{
    size_t i;
    json_t *at;
    shell_run(shell, "list", "--json", NULL);
    json_t *json = json_of(shell);
    json_array_foreach(json_object_get(json, "builds"), i, at)
    {
        assert_int_equal(cents(at, "spent"), figures[i].spent);
    }
    assert_int_equal(i, BUILDS);
    json_decref(json);
}

/* One list for all: shares, lines, builds and the whole; never dearer than apart. */
static void assert_trip_adds_up(struct shell *shell, const struct figures *figures)
{
    long shares = 0, apart = 0;
    size_t i;
    json_t *at;
    shell_run(shell, "buy", names[0], names[1], names[2], "--json", NULL);
    json_t *json = json_of(shell);
    json_array_foreach(json_object_get(json, "lines"), i, at) shares +=
        sum_of(at, "shares", "price");
    for (i = 0; i < BUILDS; i++)
        apart += figures[i].estimate;
    assert_int_equal(sum_of(json, "lines", "price"), cents(json, "total"));
    assert_int_equal(sum_of(json, "builds", "price"), cents(json, "total"));
    assert_int_equal(shares, cents(json, "total"));
    assert_int_equal(cents(json, "apart"), apart);
    json_decref(json);
}

static void lines_add_up_to_totals_in_every_view(void **state)
{
    struct shell *shell = *state;
    struct dice dice = {1130};
    for (int round = 0; round < ROUNDS; round++) {
        struct figures figures[BUILDS];
        change_by_chance(shell, &dice);
        for (size_t i = 0; i < BUILDS; i++) {
            assert_json_adds_up(shell, names[i], &figures[i]);
            if (i % ROUNDS == (size_t)round)
                assert_text_adds_up(shell, names[i], &figures[i]);
            assert_int_equal(paid_in_table(shell, names[i]), figures[i].spent);
        }
        assert_account_adds_up(shell, figures);
        assert_list_says_the_same(shell, figures);
        assert_trip_adds_up(shell, figures);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(lines_add_up_to_totals_in_every_view, begin, shell_end),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
