/* The table of actions: every one has a key, a help line, and keys that no other has. */
#include "tui/actions.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static void every_action_has_a_key_and_help(void **state)
{
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++) {
        assert_int_not_equal(actions[i].key, KEY_NONE_YET);
        assert_true(strlen(actions[i].help) > 5);
    }
}

static void every_key_leads_to_its_action(void **state)
{
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++) {
        assert_int_equal(action_of(actions[i].key), i);
        if (actions[i].other != KEY_NONE_YET)
            assert_int_equal(action_of(actions[i].other), i);
    }
}

/* Nobody needs letters to get anywhere: the first key of each is on every keyboard. */
static void letters_only_shorten(void **state)
{
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++) {
        int key = actions[i].key;
        assert_true(key <= KEY_SPACE || key >= KEY_FIRST_SPECIAL);
    }
}

static void keys_without_an_action_have_none(void **state)
{
    static const int keys[] = {KEY_NONE_YET, 'z', 0x20ac, KEY_RUB_OUT, KEY_F12 + 1, -1};
    (void)state;
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        assert_int_equal(action_of(keys[i]), ACTION_NONE);
}

static void hints_begin_with_the_key_that_works(void **state)
{
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++) {
        char first[ACTION_KEY_TEXT];
        char other[ACTION_KEY_TEXT];
        const char *label = actions[i].label;
        const char *key = action_key_name(actions[i].key, first);
        const char *letter = action_key_name(actions[i].other, other);
        if (*label && strncmp(label, key, strlen(key)) != 0)
            assert_int_equal(strncmp(label, letter, strlen(letter)), 0);
    }
}

static void keys_have_the_names_on_the_caps(void **state)
{
    char buffer[ACTION_KEY_TEXT];
    (void)state;
    assert_string_equal(action_key_name(KEY_F1 + 4, buffer), "F5");
    assert_string_equal(action_key_name(KEY_F12, buffer), "F12");
    assert_string_equal(action_key_name(KEY_LEAF_DOWN, buffer), "PgDn");
    assert_string_equal(action_key_name('a', buffer), "a");
    assert_string_equal(action_key_name(0xe9, buffer), "\u00e9");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_action_has_a_key_and_help),
        cmocka_unit_test(every_key_leads_to_its_action),
        cmocka_unit_test(letters_only_shorten),
        cmocka_unit_test(keys_without_an_action_have_none),
        cmocka_unit_test(hints_begin_with_the_key_that_works),
        cmocka_unit_test(keys_have_the_names_on_the_caps),
    };
    int failed = cmocka_run_group_tests_name("actions", tests, NULL, NULL);
    return failed ? 1 : 0;
}
