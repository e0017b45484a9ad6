/* Commands of money: tables in and out, builds side by side. */
#include "kept.h"
#include "shell.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <jansson.h>

static int demo_begin(void **state)
{
    shell_begin(state);
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "import", DEMO_FOLDER "/workshop.json",
                               DEMO_FOLDER "/banquette.json", DEMO_FOLDER "/corner.json",
                               DEMO_FOLDER "/headboard.json", DEMO_FOLDER "/stool.json", NULL)
                         ->code,
                     0);
    return 0;
}

static const char *write_file(struct shell *shell, const char *content)
{
    static char path[700];
    snprintf(path, sizeof path, "%s/table.csv", shell->place.folder);
    file_put(path, content);
    return path;
}

/* ---- tables ---- */

static void tables_go_out_and_come_in_without_a_change(void **state)
{
    static const char *const tables[] = {"prices", "history", "shelf", "spend"};
    struct shell *shell = *state;
    for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
        assert_int_equal(
            shell_run(shell, "export", "--table", tables[i], "--semicolons", NULL)->code, 0);
        const char *path = write_file(shell, shell->answer.out);
        assert_int_equal(shell_run(shell, "import", "--table", tables[i], path, NULL)->code, 0);
        assert_says(shell->answer.out, "taken in, 0 lines changed something");
    }
}

static void a_table_with_faults_is_refused_whole_and_every_line_told(void **state)
{
    struct shell *shell = *state;
    const char *path = write_file(shell, "build,dated,amount,what\n"
                                         "Tufted stool,2026-11-20,4.00,wax\n"
                                         "Tufted stool,2026-11-20,4.0o,wax\n"
                                         "Tufted stole,2026-11-20,4.00,wax\n");
    assert_int_equal(shell_run(shell, "import", "--table", "spend", path, NULL)->code, 1);
    assert_says(shell->answer.error, "amount: line 3");
    assert_says(shell->answer.error, "build: line 4");
    assert_null(strstr(shell->answer.error, "line 2"));
    shell_run(shell, "export", "--table", "spend", NULL);
    assert_null(strstr(shell->answer.out, "wax"));
}

static void a_table_that_nobody_knows_is_no_table(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "export", "--table", "cats", NULL)->code, 2);
    assert_int_equal(shell_run(shell, "export", "--table", "prices", "Tufted stool", NULL)->code,
                     2);
    assert_int_equal(shell_run(shell, "export", "--semicolons", NULL)->code, 2);
}

/* ---- spend ---- */

static long cents(json_t *object, const char *key)
{
    const char *money = json_string_value(json_object_get(object, key));
    long whole;
    long rest;
    assert_non_null(money);
    assert_int_equal(sscanf(money, "%ld.%2ld", &whole, &rest), 2);
    return whole * 100 + rest;
}

static long money_of(struct shell *shell, const char *build, const char *key)
{
    json_error_t error;
    shell_run(shell, "money", build, "--json", NULL);
    json_t *json = json_loads(shell->answer.out, 0, &error);
    assert_non_null(json);
    long money = cents(json_object_get(json, "money"), key);
    json_decref(json);
    return money;
}

static void a_spend_is_split_over_builds_by_parts(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "spend", "Corner banquette", "100", "varnish", "--part", "2",
                               "--with", "Reading corner", "--with", "=4", NULL)
                         ->code,
                     0);
    assert_says(shell->answer.out, "Corner banquette 28.57, Reading corner 14.29, the shelf 57.14");
    shell_run(shell, "undo", NULL);
    assert_says(shell->answer.out, "taken back: spend: varnish");
    shell_run(shell, "export", "--table", "spend", NULL);
    assert_null(strstr(shell->answer.out, "varnish"));
}

static void a_split_that_cannot_be_is_refused(void **state)
{
    static const struct {
        const char *with, *says;
    } refused[] = {{"Nobody", "there is no build called \"Nobody\""},
                   {"Corner banquette=2", "stands there twice"},
                   {"Reading corner=0", "a part is a whole number"}};
    struct shell *shell = *state;
    for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
        shell_run(shell, "spend", "Corner banquette", "1", "varnish", "--with", refused[i].with,
                  NULL);
        assert_true(shell->answer.code != 0);
        assert_says(shell->answer.error, refused[i].says);
    }
    shell_run(shell, "export", "--table", "spend", NULL);
    assert_null(strstr(shell->answer.out, "varnish"));
}

/* Four of ten sticks leave six in the forecast; a spend that settles the line leaves none. */
static void a_part_payment_leaves_the_rest_in_the_forecast(void **state)
{
    struct shell *shell = *state;
    const char *build = "Spare room headboard";
    long estimate = money_of(shell, build, "estimate");
    long spent = money_of(shell, build, "spent");
    assert_int_equal(money_of(shell, build, "forecast"), estimate);
    shell_run(shell, "spend", build, "1.00", "sticks", "--stock", "2x3 stick", NULL);
    assert_int_equal(money_of(shell, build, "spent"), spent + 100);
    assert_int_equal(money_of(shell, build, "forecast"), estimate);
    shell_run(shell, "spend", build, "0", "sticks", "--stock", "2x3 stick", "--settles", NULL);
    assert_int_equal(money_of(shell, build, "spent"), spent + 100);
    assert_true(money_of(shell, build, "forecast") < estimate);
}

/* Two sticks of 96 in for 8.59 and one of 120 in for 6.25 are two lines of one stock. */
static void a_payment_is_for_the_size_that_it_names(void **state)
{
    struct shell *shell = *state;
    const char *build = "Reading corner";
    long forecast = money_of(shell, build, "forecast");
    shell_run(shell, "spend", build, "1.00", "one stick", "--stock", "2x3 stick", "--length",
              "120 in", "--settles", NULL);
    assert_int_equal(money_of(shell, build, "forecast"), forecast + 100 - 625);
    shell_run(shell, "spend", build, "2.00", "two sticks", "--stock", "2x3 stick", "--length",
              "8 ft", "--pack", "1", "--settles", NULL);
    assert_int_equal(money_of(shell, build, "forecast"), forecast + 100 - 625 + 200 - 859);
    shell_run(shell, "spend", build, "3.00", "a stick", "--stock", "2x3 stick", "--length", "72 in",
              NULL);
    assert_int_equal(money_of(shell, build, "forecast"), forecast + 100 - 625 + 200 - 859 + 300);
}

/* ---- several builds ---- */

#define THREE "Corner banquette", "Reading corner", "Spare room headboard"

/* Lines, shares and builds each add up to the total; apart they come to more. */
static void one_list_over_three_builds_is_cheaper_and_adds_up(void **state)
{
    struct shell *shell = *state;
    long lines = 0, shares = 0, builds = 0, apart = 0;
    size_t i;
    json_t *at;
    assert_int_equal(shell_run(shell, "buy", THREE, "--json", NULL)->code, 0);
    json_t *json = json_loads(shell->answer.out, 0, NULL);
    assert_non_null(json);
    json_array_foreach(json_object_get(json, "lines"), i, at)
    {
        size_t k;
        json_t *share;
        lines += cents(at, "price");
        json_array_foreach(json_object_get(at, "shares"), k, share) shares += cents(share, "price");
    }
    json_array_foreach(json_object_get(json, "builds"), i, at)
    {
        builds += cents(at, "price");
        apart += cents(at, "apart");
    }
    assert_int_equal(lines, cents(json, "total"));
    assert_int_equal(shares, lines);
    assert_int_equal(builds, lines);
    assert_int_equal(apart, cents(json, "apart"));
    assert_true(lines < apart);
    assert_true(json_array_size(json_object_get(json, "cutting")) >= 3);
    json_decref(json);
}

static void the_list_says_what_it_saves_and_how_all_is_cut(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "buy", THREE, NULL)->code, 0);
    assert_says(shell->answer.out, "less together");
    assert_says(shell->answer.out, "CUTTING TOGETHER");
    assert_says(shell->answer.out, "Reading corner: P1");
    assert_says(shell->answer.out, "Spare room headboard: C1");
    assert_int_equal(shell_run(shell, "buy", "Reading corner", NULL)->code, 0);
    assert_null(strstr(shell->answer.out, "together"));
}

static void the_list_goes_on_paper(void **state)
{
    struct shell *shell = *state;
    char path[700];
    snprintf(path, sizeof path, "%s/trolley.svg", shell->place.folder);
    assert_int_equal(shell_run(shell, "buy", THREE, "--to", path, NULL)->code, 0);
    assert_says(shell->answer.out, "pages");
    struct text text;
    text_init(&text);
    file_take(&text, path);
    const char *svg = text_string(&text);
    assert_says(svg, "less together");
    assert_says(svg, "3 builds");
    /* Drawn: what is lost, and a part's name on the part, beside the line that tells where it is.
     */
    assert_says(svg, "<title>Cutting together</title>");
    assert_says(svg, "fill=\"url(#waste)\"");
    assert_says(svg, ">Spare room headboard: C-P1</text>");
    assert_says(svg, ">    Spare room headboard: C-P1  50 x 28-1/2 at 0 along");
    text_release(&text);
    assert_int_equal(shell_run(shell, "buy", THREE, "--to", path, NULL)->code, 1);
}

/* ---- the account ---- */

static void a_day_that_is_none_is_refused(void **state)
{
    static const char *const days[] = {"2026-02-30", "2026-11-3", "2026-11-30x", "soon", ""};
    struct shell *shell = *state;
    for (size_t i = 0; i < sizeof days / sizeof *days; i++) {
        assert_int_equal(shell_run(shell, "money", "--date", days[i], NULL)->code, 2);
        assert_says(shell->answer.error, "is no day");
    }
}

static void money_alone_is_the_account_of_all_builds(void **state)
{
    struct shell *shell = *state;
    long paid = 0, months = 0;
    size_t i;
    json_t *at;
    assert_int_equal(shell_run(shell, "money", "--date", "2026-11-30", NULL)->code, 0);
    assert_says(shell->answer.out, "MONTH BY MONTH");
    assert_says(shell->answer.out, "WEEKS AT THE BENCH");
    assert_says(shell->answer.out, "2026-11-30  5 h 00  Corner banquette");
    assert_int_equal(shell_run(shell, "money", "--json", NULL)->code, 0);
    json_t *json = json_loads(shell->answer.out, 0, NULL);
    assert_non_null(json);
    json_array_foreach(json_object_get(json, "builds"), i, at) paid += cents(at, "paid");
    json_array_foreach(json_object_get(json, "months"), i, at) months += cents(at, "paid");
    assert_int_equal(paid, cents(json, "paid"));
    assert_int_equal(months, cents(json, "all_paid"));
    assert_int_equal(months, paid + cents(json, "shelf"));
    json_decref(json);
}

/* ---- stock ---- */

static void stock_tells_prices_and_the_shelf_and_changes_them(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "stock", NULL)->code, 0);
    assert_says(shell->answer.out, "rack over the door");
    assert_int_equal(
        shell_run(shell, "stock", "2x2 stick", "1", "3.80", "--date", "2026-11-20", NULL)->code, 0);
    assert_says(shell->answer.out, "3.80  2026-11-20");
    assert_int_equal(shell_run(shell, "stock", "2x2 stick", "--left", "1", "--count", "1",
                               "--build", "Reading corner", NULL)
                         ->code,
                     0);
    assert_says(shell->answer.out, "kept for Reading corner");
    assert_int_equal(shell_run(shell, "undo", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "stock", "2x2 stick", "--json", NULL)->code, 0);
    assert_says(shell->answer.out, "\"kept_for\": \"\"");
    assert_says(shell->answer.out, "\"count\": 1,");
    assert_says(shell->answer.out, "\"price\": \"3.80\"");
}

static void stock_refuses_what_is_not_there(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "stock", "gold", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "stock", "2x2 stick", "9", "1.00", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "stock", "2x2 stick", "1", NULL)->code, 2);
    assert_int_equal(
        shell_run(shell, "stock", "2x2 stick", "--left", "7", "--count", "1", NULL)->code, 1);
    assert_int_equal(
        shell_run(shell, "stock", "2x2 stick", "--left", "1", "--build", "Nobody", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "stock", "2x2 stick", "--left", "1", NULL)->code, 2);
}

/* ---- side by side ---- */

static void compare_shows_builds_and_of_one_what_else_it_could_be(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "compare", "Corner banquette", "Tufted stool", NULL)->code,
                     0);
    assert_says(shell->answer.out, "SIDE BY SIDE");
    assert_null(strstr(shell->answer.out, "OTHERWISE"));
    assert_int_equal(shell_run(shell, "compare", "Spare room headboard", "--json", NULL)->code, 0);
    json_t *json = json_loads(shell->answer.out, 0, NULL);
    assert_non_null(json);
    json_t *ways = json_object_get(json, "otherwise");
    assert_true(json_array_size(ways) > 3);
    for (size_t i = 0; i < json_array_size(ways); i++)
        assert_true(json_is_string(json_object_get(json_array_get(ways, i), "text")));
    json_decref(json);
    assert_int_equal(shell_run(shell, "compare", "Tufted stool", "Tufted stool", NULL)->code, 1);
}

static void a_copy_is_a_build_of_its_own(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "copy", "Tufted stool", "Second stool", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "money", "Second stool", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "copy", "Tufted stool", "Second stool", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "undo", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "money", "Second stool", NULL)->code, 1);
}

#define IN_THE_DEMO(test) cmocka_unit_test_setup_teardown(test, demo_begin, shell_end)

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_THE_DEMO(tables_go_out_and_come_in_without_a_change),
        IN_THE_DEMO(a_table_with_faults_is_refused_whole_and_every_line_told),
        IN_THE_DEMO(a_table_that_nobody_knows_is_no_table),
        IN_THE_DEMO(a_spend_is_split_over_builds_by_parts),
        IN_THE_DEMO(a_part_payment_leaves_the_rest_in_the_forecast),
        IN_THE_DEMO(a_payment_is_for_the_size_that_it_names),
        IN_THE_DEMO(a_split_that_cannot_be_is_refused),
        IN_THE_DEMO(one_list_over_three_builds_is_cheaper_and_adds_up),
        IN_THE_DEMO(the_list_says_what_it_saves_and_how_all_is_cut),
        IN_THE_DEMO(the_list_goes_on_paper),
        IN_THE_DEMO(a_day_that_is_none_is_refused),
        IN_THE_DEMO(money_alone_is_the_account_of_all_builds),
        IN_THE_DEMO(stock_tells_prices_and_the_shelf_and_changes_them),
        IN_THE_DEMO(stock_refuses_what_is_not_there),
        IN_THE_DEMO(compare_shows_builds_and_of_one_what_else_it_could_be),
        IN_THE_DEMO(a_copy_is_a_build_of_its_own),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
