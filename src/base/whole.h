/*
 * Checked arithmetic on whole numbers: sums and products that may not fit, and division that says
 * how it rounds. A result that does not fit is FAULT_OVERFLOW, and the outputs are left alone.
 */
#ifndef BASE_WHOLE_H
#define BASE_WHOLE_H

#include "base/fault.h"

#include <stdint.h>

enum fault whole_add(int64_t a, int64_t b, int64_t *ret_value);
enum fault whole_multiply(int64_t a, int64_t b, int64_t *ret_value);

/* a * b / c with a product of 128 bits, rounded half to even; c > 0. */
enum fault whole_share(int64_t a, int64_t b, int64_t c, int64_t *ret_value);

/* The same rounded down, and what is left over, from 0 to c - 1; a, b >= 0, c > 0. */
enum fault whole_portion(int64_t a, int64_t b, int64_t c, int64_t *ret_value, int64_t *ret_rest);

/* a / b for b > 0, also of a negative a: rounded up, down, and half to even. */
int64_t whole_divide_up(int64_t a, int64_t b);
int64_t whole_divide_down(int64_t a, int64_t b);
int64_t whole_divide_even(int64_t a, int64_t b);

/* What whole_divide_down leaves over of a, from 0 to b - 1. */
int64_t whole_modulo(int64_t a, int64_t b);

/* The greatest common divisor of two numbers that are not negative; of 0 and a number, the
 * number. */
int64_t whole_common_divisor(int64_t a, int64_t b);

/* The largest number whose square is not above `square`, which is 0 or more. */
int64_t whole_root(int64_t square);

#endif
