/*
 * Sums of whole numbers that fit or say so, divisions that round as they are called; corners by
 * hand, the rest by identities.
 */
#include "base/whole.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static const int64_t corners[] = {
    INT64_MIN, INT64_MIN + 1,       -INT64_C(4294967297), -3,        -2, -1, 0, 1, 2,
    3,         INT64_C(4294967296), INT64_MAX - 1,        INT64_MAX,
};

#define CORNERS (sizeof corners / sizeof corners[0])

static void add_fits_or_leaves_the_output_alone(void **state)
{
    int64_t sum = 77;

    (void)state;
    assert_int_equal(whole_add(INT64_MAX, 1, &sum), FAULT_OVERFLOW);
    assert_int_equal(whole_add(INT64_MIN, -1, &sum), FAULT_OVERFLOW);
    assert_int_equal(whole_add(INT64_MIN, INT64_MIN, &sum), FAULT_OVERFLOW);
    assert_int_equal(sum, 77);
    assert_int_equal(whole_add(INT64_MAX, INT64_MIN, &sum), FAULT_NONE);
    assert_int_equal(sum, -1);
    assert_int_equal(whole_add(INT64_MAX - 5, 5, &sum), FAULT_NONE);
    assert_int_equal(sum, INT64_MAX);
    assert_int_equal(whole_add(INT64_MIN + 5, -5, &sum), FAULT_NONE);
    assert_int_equal(sum, INT64_MIN);
}

static void multiply_fits_or_leaves_the_output_alone(void **state)
{
    int64_t product = 77;

    (void)state;
    assert_int_equal(whole_multiply(INT64_MIN, -1, &product), FAULT_OVERFLOW);
    assert_int_equal(whole_multiply(INT64_C(3037000500), INT64_C(3037000500), &product),
                     FAULT_OVERFLOW);
    assert_int_equal(whole_multiply(INT64_MAX, INT64_MAX, &product), FAULT_OVERFLOW);
    assert_int_equal(product, 77);
    assert_int_equal(whole_multiply(INT64_C(3037000499), INT64_C(3037000499), &product),
                     FAULT_NONE);
    assert_int_equal(product, INT64_C(9223372030926249001));
    assert_int_equal(whole_multiply(INT64_MIN, 1, &product), FAULT_NONE);
    assert_int_equal(product, INT64_MIN);
    assert_int_equal(whole_multiply(INT64_MIN / 2, 2, &product), FAULT_NONE);
    assert_int_equal(product, INT64_MIN);
    assert_int_equal(whole_multiply(INT64_MIN, 0, &product), FAULT_NONE);
    assert_int_equal(product, 0);
}

static void share_rounds_half_to_even_on_both_sides_of_zero(void **state)
{
    static const struct {
        int64_t a, b, c, share;
    } rows[] = {
        {1, 1, 2, 0},   {3, 1, 2, 2},   {5, 1, 2, 2},   {7, 1, 2, 4},    {-1, 1, 2, 0},
        {-3, 1, 2, -2}, {-5, 1, 2, -2}, {5, -1, 2, -2}, {-7, -1, 2, 4},  {2, 1, 3, 1},
        {1, 1, 3, 0},   {-2, 1, 3, -1}, {0, -5, 3, 0},  {10, 10, 7, 14},
    };

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        int64_t share = 77;

        assert_int_equal(whole_share(rows[i].a, rows[i].b, rows[i].c, &share), FAULT_NONE);
        assert_int_equal(share, rows[i].share);
    }
}

static void share_is_exact_where_the_product_is_wide(void **state)
{
    int64_t share = 77;

    (void)state;
    assert_int_equal(whole_share(INT64_MAX, INT64_MAX, INT64_MAX, &share), FAULT_NONE);
    assert_int_equal(share, INT64_MAX);
    assert_int_equal(whole_share(INT64_MIN, INT64_MAX, INT64_MAX, &share), FAULT_NONE);
    assert_int_equal(share, INT64_MIN);
    assert_int_equal(whole_share(INT64_MIN, INT64_MIN, INT64_MAX, &share), FAULT_OVERFLOW);
    assert_int_equal(whole_share(INT64_MAX, 2, 1, &share), FAULT_OVERFLOW);
    assert_int_equal(whole_share(INT64_MAX, INT64_MAX, 1, &share), FAULT_OVERFLOW);
    assert_int_equal(share, INT64_MIN);
    /* 10^18 * 10^18 / (10^18 + 1) = 10^18 - 1 + 1 / (10^18 + 1) */
    assert_int_equal(whole_share(INT64_C(1000000000000000000), INT64_C(1000000000000000000),
                                 INT64_C(1000000000000000001), &share),
                     FAULT_NONE);
    assert_int_equal(share, INT64_C(999999999999999999));
    /* (2^62 + 1) * 2 / 4 = 2^61 + 1/2 and (2^62 + 3) * 2 / 4 = 2^61 + 3/2: half to even */
    assert_int_equal(whole_share((INT64_C(1) << 62) + 1, 2, 4, &share), FAULT_NONE);
    assert_int_equal(share, INT64_C(1) << 61);
    assert_int_equal(whole_share((INT64_C(1) << 62) + 3, 2, 4, &share), FAULT_NONE);
    assert_int_equal(share, (INT64_C(1) << 61) + 2);
}

/* a * (b * c) / c is a * b for every c. */
static void share_undoes_a_multiplication(void **state)
{
    struct dice dice = {6};
    int seen = 0;

    (void)state;
    for (int round = 0; round < 200000; round++) {
        int64_t a = dice_any_size(&dice);
        int64_t b = dice_any_size(&dice);
        int64_t c = dice_any_size(&dice);
        int64_t bc;
        int64_t product;
        int64_t share;

        if (c <= 0 || whole_multiply(b, c, &bc))
            continue;
        if (whole_multiply(a, b, &product)) {
            assert_int_equal(whole_share(a, bc, c, &share), FAULT_OVERFLOW);
            continue;
        }
        assert_int_equal(whole_share(a, bc, c, &share), FAULT_NONE);
        assert_int_equal(share, product);
        seen++;
    }
    assert_true(seen > 10000);
}

static void share_and_division_agree(void **state)
{
    struct dice dice = {7};

    (void)state;
    for (int round = 0; round < 200000; round++) {
        int64_t a = dice_any_size(&dice);
        int64_t b = round % 2 ? dice_between(&dice, 1, 20) : (dice_any_size(&dice) | 1);
        int64_t share;

        if (b < 0)
            b = -b;
        assert_int_equal(whole_share(a, 1, b, &share), FAULT_NONE);
        assert_int_equal(whole_divide_even(a, b), share);
    }
}

static void division_rounds_as_its_name_says(void **state)
{
    static const struct {
        int64_t a, b, up, down, even;
    } rows[] = {
        {7, 2, 4, 3, 4},   {5, 2, 3, 2, 2},     {-5, 2, -2, -3, -2}, {-7, 2, -3, -4, -4},
        {6, 3, 2, 2, 2},   {-6, 3, -2, -2, -2}, {1, 3, 1, 0, 0},     {2, 3, 1, 0, 1},
        {-1, 3, 0, -1, 0}, {-2, 3, 0, -1, -1},  {0, 5, 0, 0, 0},     {-1, 2, 0, -1, 0},
    };

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        assert_int_equal(whole_divide_up(rows[i].a, rows[i].b), rows[i].up);
        assert_int_equal(whole_divide_down(rows[i].a, rows[i].b), rows[i].down);
        assert_int_equal(whole_divide_even(rows[i].a, rows[i].b), rows[i].even);
    }
}

static void division_holds_at_the_corners(void **state)
{
    (void)state;
    for (size_t i = 0; i < CORNERS; i++) {
        for (size_t j = 0; j < CORNERS; j++) {
            int64_t a = corners[i];
            int64_t b = corners[j];

            if (b <= 0)
                continue;
            assert_in_range(whole_divide_up(a, b) - whole_divide_down(a, b), 0, 1);
            assert_int_equal(whole_divide_up(a, b) == whole_divide_down(a, b), a % b == 0);
            assert_true((uint64_t)whole_divide_down(a, b) * (uint64_t)b +
                            (uint64_t)whole_modulo(a, b) ==
                        (uint64_t)a);
            assert_in_range(whole_modulo(a, b), 0, b - 1);
            assert_true(whole_divide_even(a, b) >= whole_divide_down(a, b));
            assert_true(whole_divide_even(a, b) <= whole_divide_up(a, b));
        }
    }
    assert_int_equal(whole_divide_even(INT64_MAX, INT64_MAX), 1);
    assert_int_equal(whole_divide_even(INT64_MIN, INT64_MAX), -1);
    assert_int_equal(whole_divide_down(INT64_MIN, INT64_MAX), -2);
}

static void root_is_the_largest_whole_number_that_fits(void **state)
{
    static const int64_t roots[] = {0,
                                    1,
                                    2,
                                    3,
                                    1000,
                                    46341,
                                    94906265,
                                    94906266, /* about 2^26.5 */
                                    INT64_C(3037000498)};

    (void)state;
    for (size_t i = 0; i < sizeof roots / sizeof *roots; i++) {
        int64_t root = roots[i];

        assert_int_equal(whole_root(root * root), root);
        assert_int_equal(whole_root((root + 1) * (root + 1) - 1), root);
    }
    assert_int_equal(whole_root(INT64_MAX), INT64_C(3037000499));
}

static void a_common_divisor_leaves_two_numbers_without_one(void **state)
{
    static const int64_t numbers[] = {1, 2, 36, 97, 360360, INT64_C(6074001000), INT64_MAX};

    (void)state;
    assert_int_equal(whole_common_divisor(0, 0), 0);
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        assert_int_equal(whole_common_divisor(0, numbers[i]), numbers[i]);
        for (size_t j = 0; j < sizeof numbers / sizeof *numbers; j++) {
            int64_t divisor = whole_common_divisor(numbers[i], numbers[j]);

            assert_int_equal(numbers[i] % divisor, 0);
            assert_int_equal(numbers[j] % divisor, 0);
            assert_int_equal(whole_common_divisor(numbers[i] / divisor, numbers[j] / divisor), 1);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(add_fits_or_leaves_the_output_alone),
        cmocka_unit_test(multiply_fits_or_leaves_the_output_alone),
        cmocka_unit_test(share_rounds_half_to_even_on_both_sides_of_zero),
        cmocka_unit_test(share_is_exact_where_the_product_is_wide),
        cmocka_unit_test(share_undoes_a_multiplication),
        cmocka_unit_test(share_and_division_agree),
        cmocka_unit_test(division_rounds_as_its_name_says),
        cmocka_unit_test(division_holds_at_the_corners),
        cmocka_unit_test(root_is_the_largest_whole_number_that_fits),
        cmocka_unit_test(a_common_divisor_leaves_two_numbers_without_one),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
