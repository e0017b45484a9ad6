/*
 * Money: int64 counts of a currency's minor unit. Arithmetic is checked; a line is rounded once,
 * half to even.
 */
#ifndef BASE_MONEY_H
#define BASE_MONEY_H

#include "base/fault.h"

#include <stddef.h>
#include <stdint.h>

/* An ISO 4217 code and how many decimal digits its minor unit has: 0 (JPY), 2 (USD), 3 (BHD). */
struct currency {
    char code[4];
    int digits;
};

/* Reads "412.60", "-3", "1234", blanks around ignored. At most `digits` decimals (0 to 6); no
 * thousands separators. Faults: SYNTAX with column, OVERFLOW. */
enum fault money_parse(struct currency currency, const char *text, int64_t *ret_money,
                       struct fault_note *note);

/* Prints "412.60" (all its digits), and with the code "412.60 USD". Returns buffer. */
#define MONEY_TEXT 40
char *money_print(char buffer[MONEY_TEXT], struct currency currency, int64_t money);
char *money_print_code(char buffer[MONEY_TEXT], struct currency currency, int64_t money);

/*
 * Shares an amount out by weights that are not negative, so that the shares add up to it: each gets
 * its part rounded down, and what is left goes, a smallest coin each, to those whose part lost most
 * by that; of equals to the first. Of a refund the shares are those of the amount, turned round.
 * Where all weights are 0, every one counts the same. `count` 0: nothing. O(count^2).
 */
void money_share_out(int64_t amount, const int64_t *weights, size_t count, int64_t *ret_shares);

#endif
