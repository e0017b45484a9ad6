#include "base/money.h"

#include "base/scan.h"
#include "base/whole.h"

#include <assert.h>
#include <stdbool.h>
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
        return fault_say_column(note, FAULT_OVERFLOW, scan_column(&scan, start),
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

/* ---- sharing out ---- */

/* What is shared, and by which weights. These are halved until their sum fits. */
struct sharing {
    const int64_t *weights;
    size_t count;
    int64_t amount; /* not negative */
    int64_t sum;
    int halved;
    bool alike; /* all weights are 0 */
};

static int64_t weight_at(const struct sharing *sharing, size_t index)
{
    return sharing->alike ? 1 : sharing->weights[index] >> sharing->halved;
}

/* Adds the weights up; false when they have to be halved once more. */
static bool add_up(struct sharing *sharing)
{
    sharing->sum = 0;
    for (size_t i = 0; i < sharing->count; i++) {
        assert(sharing->weights[i] >= 0);
        if (whole_add(sharing->sum, weight_at(sharing, i), &sharing->sum))
            return false;
    }
    return true;
}

/* What a share is, rounded down, and what it lost by that. */
static int64_t portion(const struct sharing *sharing, size_t index, int64_t *ret_rest)
{
    int64_t share = 0;
    enum fault fault =
        whole_portion(sharing->amount, weight_at(sharing, index), sharing->sum, &share, ret_rest);

    assert(!fault); /* no weight is above the sum */
    (void)fault;
    return share;
}

/* The share that comes next for a coin, after the one at `index` that lost *rest: it lost most of
 * those behind it, of equals the first. Sets *rest to what it lost. */
static size_t next_loser(const struct sharing *sharing, size_t index, int64_t *rest)
{
    size_t found = sharing->count;
    int64_t most = -1;

    for (size_t i = 0; i < sharing->count; i++) {
        int64_t own;

        (void)portion(sharing, i, &own);
        if (own > *rest || (own == *rest && i <= index) || own <= most)
            continue;
        most = own;
        found = i;
    }
    assert(found < sharing->count); /* less is left than there are shares that lost something */
    *rest = most;
    return found;
}

void money_share_out(int64_t amount, const int64_t *weights, size_t count, int64_t *ret_shares)
{
    struct sharing sharing = {.weights = weights, .count = count};
    int64_t left;
    int64_t rest = INT64_MAX;
    size_t at = 0;

    if (count == 0)
        return;
    assert(amount > INT64_MIN);
    sharing.amount = left = amount < 0 ? -amount : amount;
    while (!add_up(&sharing))
        sharing.halved++;
    sharing.alike = sharing.sum == 0;
    if (sharing.alike)
        sharing.sum = (int64_t)count;
    for (size_t i = 0; i < count; i++) {
        int64_t lost;

        ret_shares[i] = portion(&sharing, i, &lost);
        left -= ret_shares[i];
    }
    assert(left >= 0 && (uint64_t)left < count); /* each share lost less than one coin */
    for (; left > 0; left--) {
        at = next_loser(&sharing, at, &rest);
        ret_shares[at]++;
    }
    for (size_t i = 0; amount < 0 && i < count; i++)
        ret_shares[i] = -ret_shares[i];
}
