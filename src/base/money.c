#include "base/money.h"

#include "base/quantity.h"
#include "base/scan.h"

#include <assert.h>
#include <stdio.h>

_Static_assert(SCAN_TEXT + 4 <= MONEY_TEXT, "an amount, a blank and a code fit");

/* Digits of a minor unit that still leave room for an amount; ISO 4217 knows up to 4. */
#define DIGITS_MOST 6

enum fault money_parse(struct currency currency, const char *text, int64_t *ret_money,
                       struct fault_note *note)
{
    struct scan scan = scan_start(text, note);
    bool negative = scan_take(&scan, '-');
    const char *start = scan.at;
    struct decimal amount;
    int64_t money;
    enum fault fault;

    assert(currency.digits >= 0 && currency.digits <= DIGITS_MOST);
    fault = scan_decimal(&scan, &amount);
    if (!fault)
        fault = scan_limit_places(&scan, &amount, currency.digits);
    if (!fault)
        fault = scan_end(&scan);
    if (fault)
        return fault;
    if (whole_multiply(amount.digits, scan_power_of_ten(currency.digits - amount.places), &money))
        return fault_say(note, FAULT_OVERFLOW, scan_column(&scan, start),
                         "the amount is too large");
    *ret_money = negative ? -money : money;
    return FAULT_NONE;
}

char *money_print(char buffer[MONEY_TEXT], struct currency currency, int64_t money)
{
    assert(currency.digits >= 0 && currency.digits <= DIGITS_MOST);
    return scan_print(buffer, money, currency.digits);
}

char *money_print_code(char buffer[MONEY_TEXT], struct currency currency, int64_t money)
{
    char amount[SCAN_TEXT];

    scan_print(amount, money, currency.digits);
    snprintf(buffer, MONEY_TEXT, "%s %.3s", amount, currency.code);
    return buffer;
}
