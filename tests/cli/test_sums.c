/*
 * Money by chance over every view: on the worked examples and on builds by chance, with any rate of
 * tax, prices with and without it, packs, suppliers who bring, spends that are split, part payments
 * and refunds, payments at the till, what the lines say adds up to what the totals say, in text,
 * JSON, tables and papers; one view says what another does; and the whole is what was typed in.
 */
#include "sanitized.h"
#include "shell.h"
#include "work.h"

#include "desk/trip.h"
#include "exchange/exchange.h"
#include "model/offer.h"
#include "paper/sheets.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <jansson.h>

#define USUAL UNLESS_SANITIZED(4, 1)
#define MANY 60 /* workshops by chance with STUFFOVER_LONG */
#define BUILDS 3
#define DAY "2026-11-30"

/* Whose builds they are, and what of their stock is spent on. */
struct kind {
    const char *names[BUILDS];
    const char *stocks[3];
};

static const struct kind examples = {{"Wing headboard", "Tufted ottoman", "L-shaped banquette"},
                                     {"2x3 stud", "Plywood 1/2", "Cover cloth"}};
static const struct kind chances = {{"One by chance", "Two by chance", "Three by chance"},
                                    {"2x3", "ply", "twill"}};

struct round {
    struct shell *shell;
    const struct kind *kind;
    struct dice dice;
    int64_t keys[BUILDS];
    int64_t typed, typed_tax; /* what was paid so far, by all that was entered */
};

/* ---- a workshop by chance ---- */

static void take_examples(struct round *round)
{
    static const char *const files[BUILDS] = {"headboard", "ottoman", "banquette"};
    struct desk *desk = desk_at(&round->shell->place);
    for (size_t i = 0; i < BUILDS; i++)
        desk_take_case(desk, files[i]);
    desk_close(desk);
}

/* Takes in a build by chance, which brings its stock. */
static void take_chance(struct round *round, struct desk *desk, const char *name)
{
    struct work_bench bench;
    struct text file;
    work_begin(&bench);
    work_chance(&bench, &round->dice);
    bench.model.build.name = name;
    text_init(&file);
    exchange_build_out(&file, &bench.model);
    work_end(&bench);
    DONE(desk_import(desk, text_string(&file), file.length, NULL, NULL, note));
    text_release(&file);
}

/* The stock of the worked examples, screws and glue among it, stays when they are gone. */
static void take_chances(struct round *round)
{
    take_examples(round);
    struct desk *desk = desk_at(&round->shell->place);
    const struct store_build *builds = NULL;
    size_t count = 0;
    DONE(desk_builds(desk, &builds, &count, note));
    while (count > 0) {
        DONE(desk_delete_build(desk, builds[0].key, note));
        DONE(desk_builds(desk, &builds, &count, note));
    }
    for (size_t i = 0; i < BUILDS; i++)
        take_chance(round, desk, round->kind->names[i]);
    desk_close(desk);
}

static bool has_offer(const struct model *model, int64_t stock)
{
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock == stock)
            return true;
    }
    return false;
}

/* Sizes that the kind of stock is sold in. */
static void add_offer(struct model *draft, struct dice *dice, const struct stock *stock)
{
    struct offer *offer = MODEL_ADD(draft, offer);
    offer->stock = stock->key;
    offer->length = IN(12) * dice_between(dice, 6, 12);
    if (stock->kind == STOCK_SHEET || stock->kind == STOCK_FOAM)
        offer->width = IN(12) * dice_between(dice, 2, 6);
    if (stock->kind == STOCK_CLOTH || stock->kind == STOCK_BATTING)
        offer->length = IN(36);
    offer->pack = stock->kind == STOCK_STICK ? dice_between(dice, 1, 3) : 1;
}

static enum fault change_prices(struct model *draft, void *context, struct fault_note *note)
{
    struct dice *dice = context;
    (void)note;
    draft->workshop.tax = 2500 * dice_between(dice, 0, 100);
    for (size_t i = 0; i < draft->stocks.count; i++) {
        const struct stock *stock = &draft->stocks.at[i];
        for (int64_t more = has_offer(draft, stock->key) ? 0 : 2; more > 0; more--)
            add_offer(draft, dice, stock);
    }
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

/* ---- what is paid ---- */

/* A spend that two builds and the shelf share, or one for a stock of a build; refunds among them.
 */
static void spend_by_chance(struct round *round, bool split)
{
    struct dice *dice = &round->dice;
    int first = (int)dice_between(dice, 0, BUILDS - 1);
    char amount[MONEY_TEXT], tax[MONEY_TEXT], with[80], shelf[20], count[20];
    const struct currency dollar = {"USD", 2};
    const char *build = round->kind->names[first];
    int64_t money = dice_between(dice, -3000, 20000);
    int64_t of_it = money / 15;
    money_print(amount, dollar, money);
    money_print(tax, dollar, of_it);
    snprintf(with, sizeof with, "%s=%d", round->kind->names[(first + 1) % BUILDS],
             (int)dice_between(dice, 1, 5));
    snprintf(shelf, sizeof shelf, "=%d", (int)dice_between(dice, 1, 5));
    snprintf(count, sizeof count, "%d", (int)dice_between(dice, 0, 4));
    const char *aisle = words_aisle.at[dice_between(dice, 0, AISLE_COUNT - 1)].name;
    const char *stock = round->kind->stocks[dice_between(dice, 0, 2)];
    if (split)
        shell_run(round->shell, "spend", "--tax", tax, "--aisle", aisle, "--date", DAY, "--with",
                  with, "--with", shelf, "--", build, amount, "something", NULL);
    else if (dice_between(dice, 0, 2) == 0)
        shell_run(round->shell, "spend", "--tax", tax, "--stock", stock, "--date", DAY, "--settles",
                  "--", build, amount, "all of it", NULL);
    else
        shell_run(round->shell, "spend", "--tax", tax, "--stock", stock, "--date", DAY, "--count",
                  count, "--", build, amount, "some of it", NULL);
    assert_int_equal(round->shell->answer.code, 0);
    round->typed += money;
    round->typed_tax += of_it;
}

/* What the builds were charged so far, and with `trip` what the till asks for all of them. */
static int64_t spent_by_all(struct round *round, struct desk *desk)
{
    int64_t spent = 0;
    for (size_t i = 0; i < BUILDS; i++) {
        DONE(desk_take_up(desk, round->keys[i], note));
        spent += desk_plan(desk)->cost.spent;
    }
    return spent;
}

/* The first line from a place on that is not paid. */
static size_t unpaid_line(const struct trip *trip, size_t from)
{
    for (size_t i = 0; i < trip->lines.count; i++) {
        size_t at = (from + i) % trip->lines.count;
        if (!trip->lines.at[at].paid && trip->lines.at[at].priced)
            return at;
    }
    fail_msg("all is paid");
    return 0;
}

/* A line of the trip paid at its price or at any: every build's part together is what was paid, and
 * the line has nothing left to pay. */
static void pay_by_chance(struct round *round, struct desk *desk, bool at_price)
{
    struct desk_trip *trip = NULL;
    char typed[MONEY_TEXT];
    int64_t amount = dice_between(&round->dice, 0, 9999);
    int64_t before = spent_by_all(round, desk);
    DONE(desk_trip_begin(&trip, desk, round->keys, BUILDS, CUT_QUICK, sheet_purchase_words, note));
    const struct trip *list = desk_trip_of(trip);
    size_t line = unpaid_line(list, (size_t)dice_between(&round->dice, 0, 9));
    int64_t left = 0;
    for (size_t i = 0; i < list->lines.at[line].shares.count; i++) {
        const struct trip_share *share = &list->lines.at[line].shares.at[i];
        left += share->paid || share->amount > share->till ? 0 : share->till - share->amount;
    }
    money_print(typed, (struct currency){"USD", 2}, amount);
    DONE(desk_trip_pay(desk, trip, line, DAY, at_price ? NULL : typed, note));
    desk_trip_free(trip);
    amount = at_price ? left : amount;
    assert_int_equal(spent_by_all(round, desk) - before, amount);
    round->typed += amount;
}

/* ---- tax ---- */

/* In millionths of a cent, what a line comes to with its tax, rounded nowhere. */
static int64_t exactly(const struct model *model, int64_t key, int64_t price, int64_t stated)
{
    const struct offer *offer = MODEL_FIND(model, offer, key);
    return offer && offer->taxed == TAXED_INCLUDED ? 1000000 * stated
                                                   : price * (1000000 + offer_tax(model, offer));
}

/* Of however many lines: half a cent off the exact sum at most, as if rounded once. */
static void assert_tax_is_rounded_once(const struct plan *plan)
{
    int64_t exact = 0;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *purchase = &plan->purchases.at[i];
        exact += exactly(plan->facts, purchase->offer, purchase->price, purchase->stated);
    }
    assert_true(llabs(1000000 * plan->cost.estimate - exact) <= 500000);
}

static void assert_trip_is_rounded_once(const struct trip *trip)
{
    const struct model *model = trip->builds.at[0].model;
    int64_t exact = 0;
    for (size_t i = 0; i < trip->lines.count; i++) {
        const struct trip_line *line = &trip->lines.at[i];
        for (size_t k = 0; line->cut && k < line->cut->sizes.count; k++) {
            const struct trip_size *size = &line->cut->sizes.at[k];
            exact += exactly(model, size->offer, size->price, size->stated);
        }
        exact += line->cut ? 0 : exactly(model, line->offer, line->price, line->stated);
    }
    assert_true(llabs(1000000 * trip->till - exact) <= 500000);
}

static void assert_tax_of_all(struct round *round, struct desk *desk)
{
    struct desk_trip *trip = NULL;
    for (size_t i = 0; i < BUILDS; i++) {
        DONE(desk_take_up(desk, round->keys[i], note));
        assert_tax_is_rounded_once(desk_plan(desk));
    }
    DONE(desk_trip_begin(&trip, desk, round->keys, BUILDS, CUT_QUICK, sheet_purchase_words, note));
    assert_trip_is_rounded_once(desk_trip_of(trip));
    desk_trip_free(trip);
}

/* ---- JSON ---- */

static json_t *json_of(struct shell *shell)
{
    json_error_t error;
    json_set_alloc_funcs(malloc, free); /* taking builds in had jansson use an arena */
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

static void assert_account_adds_up(const struct round *round, const struct figures *figures)
{
    struct shell *shell = round->shell;
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
    assert_int_equal(cents(json, "all_paid"), round->typed);
    assert_int_equal(sum_of(json, "months", "tax"), round->typed_tax);
    json_array_foreach(json_object_get(json, "builds"), i, at)
    {
        assert_string_equal(json_string_value(json_object_get(at, "build")), round->kind->names[i]);
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
static void assert_trip_adds_up(const struct round *round)
{
    struct shell *shell = round->shell;
    const char *const *names = round->kind->names;
    long shares = 0;
    size_t i;
    json_t *at;
    shell_run(shell, "buy", names[0], names[1], names[2], "--json", NULL);
    json_t *json = json_of(shell);
    json_array_foreach(json_object_get(json, "lines"), i, at)
    {
        shares += sum_of(at, "shares", "price");
        assert_int_equal(sum_of(at, "shares", "price"), cents(at, "price"));
        assert_int_equal(sum_of(at, "shares", "paid"), cents(at, "paid"));
    }
    assert_int_equal(sum_of(json, "lines", "price"), cents(json, "total"));
    assert_int_equal(sum_of(json, "builds", "price"), cents(json, "total"));
    assert_int_equal(shares, cents(json, "total"));
    assert_int_equal(sum_of(json, "builds", "apart"), cents(json, "apart"));
    assert_int_equal(sum_of(json, "lines", "paid"), cents(json, "paid"));
    assert_true(cents(json, "total") <= cents(json, "apart"));
    json_decref(json);
}

/* ---- a workshop ---- */

/* The layouts as they are, so that no command finds cheaper ones than another. */
static void take_layouts(struct round *round)
{
    struct desk *desk = desk_at(&round->shell->place);
    for (size_t i = 0; i < BUILDS; i++) {
        DONE(desk_take_up(desk, round->keys[i], note));
        enum fault fault = desk_take_layouts(desk, &(struct fault_note){0});
        assert_true(!fault || fault == FAULT_REFUSED);
    }
    desk_close(desk);
}

static void set_prices(struct round *round)
{
    struct desk *desk = desk_at(&round->shell->place);
    const struct store_build *builds = NULL;
    size_t count = 0;
    DONE(desk_edit(desk, "prices by chance", change_prices, &round->dice, note));
    DONE(desk_builds(desk, &builds, &count, note));
    assert_int_equal(count, BUILDS);
    for (size_t i = 0; i < BUILDS; i++)
        round->keys[i] = builds[i].key;
    assert_tax_of_all(round, desk);
    desk_close(desk);
}

static void pay(struct round *round)
{
    for (int i = 0; i < 5; i++)
        spend_by_chance(round, i < 2);
    struct desk *desk = desk_at(&round->shell->place);
    pay_by_chance(round, desk, true);
    pay_by_chance(round, desk, false);
    desk_close(desk);
}

static void look_at_all(struct round *round)
{
    struct figures figures[BUILDS];
    set_prices(round);
    assert_trip_adds_up(round);
    pay(round);
    assert_trip_adds_up(round);
    take_layouts(round);
    for (size_t i = 0; i < BUILDS; i++) {
        assert_json_adds_up(round->shell, round->kind->names[i], &figures[i]);
        assert_text_adds_up(round->shell, round->kind->names[i], &figures[i]);
        assert_int_equal(paid_in_table(round->shell, round->kind->names[i]), figures[i].spent);
    }
    assert_account_adds_up(round, figures);
    assert_list_says_the_same(round->shell, figures);
}

static void lines_add_up_to_totals_in_every_view(void **state)
{
    struct round round = {.shell = *state, .kind = &examples, .dice = {1130}};
    take_examples(&round);
    look_at_all(&round);
}

static void builds_by_chance_add_up_in_every_view(void **state)
{
    int rounds = getenv("STUFFOVER_LONG") ? MANY : USUAL;
    for (int i = 0; i < rounds; i++) {
        struct round round = {.shell = *state, .kind = &chances, .dice = {(uint64_t)(4600 + i)}};
        take_chances(&round);
        look_at_all(&round);
        if (i + 1 == rounds)
            return;
        shell_end(state);
        shell_begin(state);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_A_SHELL(lines_add_up_to_totals_in_every_view),
        IN_A_SHELL(builds_by_chance_add_up_in_every_view),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
