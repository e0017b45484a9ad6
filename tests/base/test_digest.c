/* Digests by FNV-1a: known values, and what is kept apart. */
#include "base/digest.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Known values of FNV-1a with 64 bits, from memory. */
static void bytes_digest_to_the_known_values(void **state)
{
    (void)state;
    assert_true(digest_bytes(DIGEST_START, "", 0) == UINT64_C(0xcbf29ce484222325));
    assert_true(digest_bytes(DIGEST_START, "a", 1) == UINT64_C(0xaf63dc4c8601ec8c));
    assert_true(digest_bytes(DIGEST_START, "foobar", 6) == UINT64_C(0x85944171f73967e8));
}

static void bytes_in_two_parts_digest_as_in_one(void **state)
{
    uint64_t half = digest_bytes(DIGEST_START, "foo", 3);

    (void)state;
    assert_true(digest_bytes(half, "bar", 3) == digest_bytes(DIGEST_START, "foobar", 6));
}

static void texts_are_kept_apart_by_their_end(void **state)
{
    uint64_t one = digest_text(digest_text(DIGEST_START, "ab"), "c");
    uint64_t other = digest_text(digest_text(DIGEST_START, "a"), "bc");

    (void)state;
    assert_true(one != other);
    assert_true(digest_text(DIGEST_START, "ab") == digest_bytes(DIGEST_START, "ab", 3));
}

static void a_whole_number_digests_as_its_bytes_the_lowest_first(void **state)
{
    static const unsigned char bytes[] = {0x08, 0x07, 0x06, 0x05, 0x04, 0x03, 0x02, 0x01};
    static const unsigned char all_set[] = {0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff};

    (void)state;
    assert_true(digest_whole(DIGEST_START, INT64_C(0x0102030405060708)) ==
                digest_bytes(DIGEST_START, bytes, sizeof bytes));
    assert_true(digest_whole(DIGEST_START, -1) ==
                digest_bytes(DIGEST_START, all_set, sizeof all_set));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bytes_digest_to_the_known_values),
        cmocka_unit_test(bytes_in_two_parts_digest_as_in_one),
        cmocka_unit_test(texts_are_kept_apart_by_their_end),
        cmocka_unit_test(a_whole_number_digests_as_its_bytes_the_lowest_first),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
