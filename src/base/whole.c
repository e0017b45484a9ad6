/*
 * A product is held as two 64-bit halves and divided bit by bit: standard C has no wider type, and
 * the common case, a product that fits, never comes here. Signs are set aside: work is done on
 * magnitudes, and rounding half to even is the same on both sides of zero.
 */
#include "base/whole.h"

#include <assert.h>
#include <math.h>
#include <stdbool.h>

#define LOW_HALF UINT64_C(0xffffffff)
#define TOP_BIT (UINT64_C(1) << 63)
#define ROOT_MOST INT64_C(3037000499) /* whose square still is a whole number of ours */

struct wide {
    uint64_t high;
    uint64_t low;
};

static uint64_t magnitude(int64_t value)
{
    return value < 0 ? UINT64_C(0) - (uint64_t)value : (uint64_t)value;
}

/* The number of that size with its sign. Only a negative one may be as large as TOP_BIT. */
static enum fault with_sign(bool negative, uint64_t size, int64_t *ret_value)
{
    if (size > (negative ? TOP_BIT : TOP_BIT - 1))
        return FAULT_OVERFLOW;
    if (negative && size > 0)
        *ret_value = -(int64_t)(size - 1) - 1;
    else
        *ret_value = (int64_t)size;
    return FAULT_NONE;
}

enum fault whole_add(int64_t a, int64_t b, int64_t *ret_value)
{
    if (b > 0 ? a > INT64_MAX - b : a < INT64_MIN - b)
        return FAULT_OVERFLOW;
    *ret_value = a + b;
    return FAULT_NONE;
}

static struct wide wide_product(uint64_t a, uint64_t b)
{
    uint64_t low = (a & LOW_HALF) * (b & LOW_HALF);
    uint64_t cross = (a >> 32) * (b & LOW_HALF) + (low >> 32);
    uint64_t other = (a & LOW_HALF) * (b >> 32) + (cross & LOW_HALF);

    return (struct wide){
        .high = (a >> 32) * (b >> 32) + (cross >> 32) + (other >> 32),
        .low = other << 32 | (low & LOW_HALF),
    };
}

/* Long division in base two; the quotient fits because high < divisor. */
static uint64_t wide_divide(struct wide value, uint64_t divisor, uint64_t *ret_rest)
{
    uint64_t rest = value.high;
    uint64_t quotient = 0;

    assert(value.high < divisor && divisor < TOP_BIT);
    for (int bit = 63; bit >= 0; bit--) {
        rest = rest << 1 | (value.low >> bit & 1);
        quotient <<= 1;
        if (rest >= divisor) {
            rest -= divisor;
            quotient |= 1;
        }
    }
    assert(rest < divisor);
    *ret_rest = rest;
    return quotient;
}

enum fault whole_multiply(int64_t a, int64_t b, int64_t *ret_value)
{
    struct wide product = wide_product(magnitude(a), magnitude(b));

    return product.high ? FAULT_OVERFLOW : with_sign((a < 0) != (b < 0), product.low, ret_value);
}

static bool rounds_up(uint64_t quotient, uint64_t rest, uint64_t divisor)
{
    uint64_t missing = divisor - rest;

    assert(rest < divisor);
    return rest > missing || (rest == missing && quotient % 2 == 1);
}

static enum fault divide_product(uint64_t a, uint64_t b, uint64_t divisor, uint64_t *ret_quotient,
                                 uint64_t *ret_rest)
{
    struct wide product = wide_product(a, b);

    if (product.high >= divisor)
        return FAULT_OVERFLOW;
    if (product.high > 0) {
        *ret_quotient = wide_divide(product, divisor, ret_rest);
        return FAULT_NONE;
    }
    *ret_quotient = product.low / divisor;
    *ret_rest = product.low % divisor;
    return FAULT_NONE;
}

enum fault whole_portion(int64_t a, int64_t b, int64_t c, int64_t *ret_value, int64_t *ret_rest)
{
    uint64_t quotient;
    uint64_t rest;

    assert(a >= 0 && b >= 0 && c > 0);
    if (divide_product((uint64_t)a, (uint64_t)b, (uint64_t)c, &quotient, &rest) ||
        quotient > INT64_MAX)
        return FAULT_OVERFLOW;
    *ret_value = (int64_t)quotient;
    *ret_rest = (int64_t)rest;
    return FAULT_NONE;
}

enum fault whole_share(int64_t a, int64_t b, int64_t c, int64_t *ret_value)
{
    uint64_t divisor = (uint64_t)c;
    uint64_t quotient;
    uint64_t rest;

    assert(c > 0);
    if (divide_product(magnitude(a), magnitude(b), divisor, &quotient, &rest))
        return FAULT_OVERFLOW;
    if (rounds_up(quotient, rest, divisor)) {
        if (quotient == UINT64_MAX)
            return FAULT_OVERFLOW;
        quotient++;
    }
    return with_sign((a < 0) != (b < 0), quotient, ret_value);
}

int64_t whole_divide_up(int64_t a, int64_t b)
{
    assert(b > 0);
    return a / b + (a % b > 0);
}

int64_t whole_divide_down(int64_t a, int64_t b)
{
    assert(b > 0);
    return a / b - (a % b < 0);
}

int64_t whole_modulo(int64_t a, int64_t b)
{
    assert(b > 0);
    return a % b < 0 ? a % b + b : a % b;
}

int64_t whole_divide_even(int64_t a, int64_t b)
{
    int64_t below = whole_divide_down(a, b);
    int64_t rest = whole_modulo(a, b);
    int64_t missing = b - rest;

    if (rest > missing || (rest == missing && below % 2 != 0))
        below++;
    return below;
}

int64_t whole_common_divisor(int64_t a, int64_t b)
{
    assert(a >= 0 && b >= 0);
    while (b != 0) {
        int64_t rest = a % b;

        a = b;
        b = rest;
    }
    return a;
}

/* A double holds 53 bits of the square, so its root is at most one off. */
int64_t whole_root(int64_t square)
{
    int64_t root;

    assert(square >= 0);
    root = (int64_t)sqrt((double)square);
    if (root > ROOT_MOST)
        root = ROOT_MOST;
    if (root * root > square)
        root--;
    else if (root < ROOT_MOST && (root + 1) * (root + 1) <= square)
        root++;
    assert(root * root <= square);
    return root;
}
