/* Amounts read, printed and shared out to the last coin. */
#include "base/money.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

static const struct currency yen = {"JPY", 0};
static const struct currency dollar = {"USD", 2};
static const struct currency dinar = {"BHD", 3};

static const struct {
    const struct currency *currency;
    const char *text;
    int64_t money;
    const char *printed;
} amounts[] = {
    {&dollar, "412.60", 41260, "412.60"},
    {&dollar, "412.6", 41260, "412.60"},
    {&dollar, "  412  ", 41200, "412.00"},
    {&dollar, "-3", -300, "-3.00"},
    {&dollar, "-.05", -5, "-0.05"},
    {&dollar, "-0", 0, "0.00"},
    {&dollar, "007.10", 710, "7.10"},
    {&dollar, "92233720368547758.07", INT64_MAX, "92233720368547758.07"},
    {&yen, "1234", 1234, "1234"},
    {&yen, "-9223372036854775807", -INT64_MAX, "-9223372036854775807"},
    {&dinar, "1.234", 1234, "1.234"},
    {&dinar, "0.1", 100, "0.100"},
};

static void an_amount_reads_and_prints_with_its_minor_unit(void **state)
{
    char buffer[MONEY_TEXT];

    (void)state;
    for (size_t i = 0; i < sizeof amounts / sizeof amounts[0]; i++) {
        int64_t money = 77;

        assert_int_equal(money_parse(*amounts[i].currency, amounts[i].text, &money, NULL),
                         FAULT_NONE);
        assert_int_equal(money, amounts[i].money);
        assert_string_equal(money_print(buffer, *amounts[i].currency, money), amounts[i].printed);
    }
}

static const struct {
    const struct currency *currency;
    const char *text;
    enum fault fault;
    int column;
} refused[] = {
    {&dollar, "", FAULT_SYNTAX, 1},
    {&dollar, "  ", FAULT_SYNTAX, 3},
    {&dollar, "-", FAULT_SYNTAX, 2},
    {&dollar, "--3", FAULT_SYNTAX, 2},
    {&dollar, "+3", FAULT_SYNTAX, 1},
    {&dollar, "1,50", FAULT_SYNTAX, 2},
    {&dollar, "1,234.50", FAULT_SYNTAX, 2},
    {&dollar, "1 234", FAULT_SYNTAX, 3},
    {&dollar, "1.505", FAULT_SYNTAX, 5},
    {&dollar, "5.", FAULT_SYNTAX, 2},
    {&dollar, ".", FAULT_SYNTAX, 2},
    {&dollar, "1.2.3", FAULT_SYNTAX, 4},
    {&dollar, "12 USD", FAULT_SYNTAX, 4},
    {&dollar, "$12", FAULT_SYNTAX, 1},
    {&dollar,
     "\xe2\x82\xac"
     "12",
     FAULT_SYNTAX, 1},
    {&dollar, "12\xe2\x82\xac", FAULT_SYNTAX, 3},
    {&dollar, "1e3", FAULT_SYNTAX, 2},
    {&dollar, "0x10", FAULT_SYNTAX, 2},
    {&dollar, "nan", FAULT_SYNTAX, 1},
    {&yen, "1.0", FAULT_SYNTAX, 2},
    {&dinar, "1.0000", FAULT_SYNTAX, 6},
    {&dollar, " 92233720368547758.08", FAULT_OVERFLOW, 2},
    {&dollar, "92233720368547759", FAULT_OVERFLOW, 1},
    {&yen, "-9223372036854775808", FAULT_OVERFLOW, 2},
    {&yen, "99999999999999999999999999", FAULT_OVERFLOW, 1},
};

static void nonsense_is_refused_with_its_column(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++) {
        struct fault_note note = {0};
        int64_t money = 77;
        enum fault fault = money_parse(*refused[i].currency, refused[i].text, &money, &note);

        if (fault != refused[i].fault || note.column != refused[i].column)
            fail_msg("\"%s\": fault %d at %d", refused[i].text, fault, note.column);
        assert_int_equal(money, 77);
        assert_int_equal(note.code, fault);
        assert_true(note.why[0] != '\0');
    }
}

static void the_least_number_prints_in_full(void **state)
{
    char buffer[MONEY_TEXT];

    (void)state;
    assert_string_equal(money_print(buffer, dollar, INT64_MIN), "-92233720368547758.08");
    assert_string_equal(money_print_code(buffer, dollar, INT64_MIN), "-92233720368547758.08 USD");
}

static void the_code_stands_behind_the_amount(void **state)
{
    char buffer[MONEY_TEXT];

    (void)state;
    assert_string_equal(money_print_code(buffer, dollar, 41260), "412.60 USD");
    assert_string_equal(money_print_code(buffer, yen, 0), "0 JPY");
    assert_string_equal(money_print_code(buffer, dinar, -1), "-0.001 BHD");
}

static void any_amount_comes_back_from_its_print(void **state)
{
    struct dice dice = {5};

    (void)state;
    for (int round = 0; round < 100000; round++) {
        struct currency currency = {"ABC", (int)dice_between(&dice, 0, 4)};
        int64_t money = dice_any_size(&dice);
        int64_t back;
        char buffer[MONEY_TEXT];

        money_print(buffer, currency, money);
        assert_int_equal(money_parse(currency, buffer, &back, NULL), FAULT_NONE);
        assert_int_equal(back, money);
    }
}

/* ---- sharing out ---- */

static void assert_shares(int64_t amount, const int64_t *weights, const int64_t *shares,
                          size_t count)
{
    int64_t out[8];

    money_share_out(amount, weights, count, out);
    for (size_t i = 0; i < count; i++)
        assert_int_equal(out[i], shares[i]);
}

/* The worked example that is usual for largest remainders with the simple quota: 100,000 votes for
 * ten seats (from memory; its quotas are 4.7, 1.6, 1.59, 1.2, 0.6 and 0.31). */
static void what_is_left_goes_to_the_largest_remainders(void **state)
{
    static const int64_t votes[] = {47000, 16000, 15900, 12000, 6000, 3100};
    static const int64_t seats[] = {5, 2, 1, 1, 1, 0};

    (void)state;
    assert_shares(10, votes, seats, 6);
}

static void of_equal_remainders_the_first_gets_the_coin(void **state)
{
    static const int64_t weights[] = {5, 5, 5};
    static const int64_t shares[] = {34, 33, 33};
    static const int64_t nothing[] = {0, 0};
    static const int64_t halves[] = {4, 3};

    (void)state;
    assert_shares(100, weights, shares, 3);
    assert_shares(7, nothing, halves, 2);
}

static void who_has_no_weight_pays_nothing(void **state)
{
    static const int64_t weights[] = {0, 3, 0, 1};
    static const int64_t shares[] = {0, 301, 0, 100};

    (void)state;
    assert_shares(401, weights, shares, 4);
}

static void a_refund_is_shared_as_it_was_paid(void **state)
{
    static const int64_t weights[] = {1, 2, 4};
    static const int64_t shares[] = {14, 29, 57};
    static const int64_t back[] = {-14, -29, -57};

    (void)state;
    assert_shares(100, weights, shares, 3);
    assert_shares(-100, weights, back, 3);
}

/* Whatever the weights, even ones whose sum is no number: nothing is lost, nobody is more than a
 * coin off his part, and whose weight is larger never gets less. */
static void shares_add_up_and_are_never_a_coin_off(void **state)
{
    struct dice dice = {20261130};

    (void)state;
    for (int round = 0; round < 20000; round++) {
        int64_t weights[7], shares[7], sum = 0, given = 0;
        size_t count = (size_t)dice_between(&dice, 1, 7);
        int64_t amount = dice_between(&dice, -1000000, 1000000);
        int64_t most = round % 5 == 0 ? INT64_MAX : 1000000;

        for (size_t i = 0; i < count; i++)
            weights[i] = dice_between(&dice, 0, 1) * dice_between(&dice, 0, most);
        money_share_out(amount, weights, count, shares);
        for (size_t i = 0; i < count; i++) {
            given += shares[i];
            sum += most == INT64_MAX ? 0 : weights[i];
            for (size_t k = 0; k < count; k++)
                assert_false(weights[i] < weights[k] && llabs(shares[i]) > llabs(shares[k]));
        }
        assert_int_equal(given, amount);
        for (size_t i = 0; i < count && sum > 0; i++)
            assert_true(llabs(shares[i] * sum - amount * weights[i]) < sum);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_amount_reads_and_prints_with_its_minor_unit),
        cmocka_unit_test(nonsense_is_refused_with_its_column),
        cmocka_unit_test(the_least_number_prints_in_full),
        cmocka_unit_test(the_code_stands_behind_the_amount),
        cmocka_unit_test(any_amount_comes_back_from_its_print),
        cmocka_unit_test(what_is_left_goes_to_the_largest_remainders),
        cmocka_unit_test(of_equal_remainders_the_first_gets_the_coin),
        cmocka_unit_test(who_has_no_weight_pays_nothing),
        cmocka_unit_test(a_refund_is_shared_as_it_was_paid),
        cmocka_unit_test(shares_add_up_and_are_never_a_coin_off),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
