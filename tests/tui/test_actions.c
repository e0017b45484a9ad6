/* The table of actions: every one has a key, a help line, and keys that no other has. */
#include "tui/keymap.h"

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
        assert_int_not_equal(actions[i].key, KEY_NONE);
        assert_true(strlen(actions[i].help) > 5);
    }
}

/* Beside the 22 columns of its keys, of 80. */
static void every_help_line_is_whole_on_the_help_screen(void **state)
{
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++)
        assert_true(strlen(actions[i].help) <= 80 - 22);
}

static void every_key_leads_to_its_action(void **state)
{
    struct keymap keymap;
    (void)state;
    keymap_standard(&keymap);
    for (int i = 0; i < ACTION_COUNT; i++) {
        assert_int_equal(keymap_action(&keymap, actions[i].key), i);
        if (actions[i].other != KEY_NONE)
            assert_int_equal(keymap_action(&keymap, actions[i].other), i);
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
    static const int keys[] = {KEY_NONE, 'z', 0x20ac, KEY_RUB_OUT, KEY_F12 + 1, -1};
    struct keymap keymap;
    (void)state;
    keymap_standard(&keymap);
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        assert_int_equal(keymap_action(&keymap, keys[i]), ACTION_NONE);
}

static void every_action_is_found_by_its_name(void **state)
{
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++)
        assert_int_equal(action_named(actions[i].name), i);
    assert_int_equal(action_named("nothing"), ACTION_NONE);
}

/* Else what the help screen writes could not be typed into the settings. */
static void every_key_is_found_by_its_name(void **state)
{
    char buffer[ACTION_KEY_TEXT];
    (void)state;
    for (int i = 0; i < ACTION_COUNT; i++) {
        assert_int_equal(action_key_named(action_key_name(actions[i].key, buffer)), actions[i].key);
        if (actions[i].other != KEY_NONE)
            assert_int_equal(action_key_named(action_key_name(actions[i].other, buffer)),
                             actions[i].other);
    }
    assert_int_equal(action_key_named("ctrl-k"), KEY_CONTROL('K'));
    assert_int_equal(action_key_named("f13"), KEY_NONE);
    assert_int_equal(action_key_named(""), KEY_NONE);
    assert_int_equal(action_key_named("Ctrl-I"), KEY_NONE); /* it is Tab */
}

static void hints_name_the_letter_where_there_is_one(void **state)
{
    struct keymap keymap;
    (void)state;
    keymap_standard(&keymap);
    assert_int_equal(keymap_hint(&keymap, ACTION_ADD), 'a');
    assert_int_equal(keymap_hint(&keymap, ACTION_HELP), '?');
    assert_int_equal(keymap_hint(&keymap, ACTION_TICK), KEY_SPACE);
    assert_int_equal(keymap_hint(&keymap, ACTION_ENTER), KEY_RETURN);
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
        cmocka_unit_test(every_help_line_is_whole_on_the_help_screen),
        cmocka_unit_test(every_key_leads_to_its_action),
        cmocka_unit_test(letters_only_shorten),
        cmocka_unit_test(keys_without_an_action_have_none),
        cmocka_unit_test(every_action_is_found_by_its_name),
        cmocka_unit_test(every_key_is_found_by_its_name),
        cmocka_unit_test(hints_name_the_letter_where_there_is_one),
        cmocka_unit_test(keys_have_the_names_on_the_caps),
    };
    int failed = cmocka_run_group_tests_name("actions", tests, NULL, NULL);
    return failed ? 1 : 0;
}
