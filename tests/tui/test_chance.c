/* Keys by chance at sizes by chance, the same in every run: nothing breaks, nothing is lost. */
#include "dice.h"
#include "sanitized.h"
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

/* STUFFOVER_LONG tries more of them. */
enum { KEYS = UNLESS_SANITIZED(5000, 1200), KEYS_LONG = 100000 };

/* Half of them keys with a name, the others characters that begin actions, sizes and words. */
static int some_key(struct dice *dice)
{
    static const int plain[] = {KEY_RETURN, KEY_RETURN, KEY_TAB, KEY_ESCAPE, KEY_SPACE};
    static const unsigned letters[] = {
        'a', 'c', 'd', 'o', 'b', 'm', 'f',    't',    'w',    'u', 'r', '?', '0', '1', '2',
        '5', '8', '/', '-', ' ', '.', 'x',    '#',    'p',    'g', 'y', 'Y', 'M', 'h', 'k',
        'n', 's', 'l', 'v', 'V', 'e', 0x00e9, 0x6728, 0x202e, 1,   5,   12,  20,  25,  0x7f};
    int64_t kind = dice_between(dice, 0, 99);
    if (kind < 35)
        return (int)dice_between(dice, KEY_FIRST_SPECIAL, KEY_F12);
    if (kind < 55)
        return plain[dice_between(dice, 0, sizeof plain / sizeof *plain - 1)];
    return (int)letters[dice_between(dice, 0, sizeof letters / sizeof *letters - 1)];
}

/* A key, or now and then something pasted, a while without keys, or a leave and a return. */
static void do_something(struct stage *stage, struct dice *dice)
{
    int64_t kind = dice_between(dice, 0, 99);
    if (kind == 0)
        driver_paste(&stage->tui, "12 in\nq\033[A");
    else if (kind == 1)
        driver_idle(&stage->tui);
    else if (kind < 5)
        driver_pointer(&stage->tui, &(struct pointer){(enum pointer_kind)dice_between(dice, 0, 2),
                                                      (int)dice_between(dice, -1, 60), 3});
    else if (driver_key(&stage->tui, some_key(dice)) & REACT_QUIT)
        stage_again(stage);
}

static void thousands_of_keys_leave_the_file_sound(void **state)
{
    int keys = getenv("STUFFOVER_LONG") ? KEYS_LONG : KEYS;
    struct stage *stage = *state;
    struct dice dice = {1764079500};
    int rows = 24;
    int columns = 80;
    int edits = 0;
    for (int i = 0; i < keys; i++) {
        unsigned serial = desk_serial(stage->desk);
        do_something(stage, &dice);
        if (dice_between(&dice, 0, 9) == 0) {
            rows = (int)dice_between(&dice, 1, 60);
            columns = (int)dice_between(&dice, 1, 200);
            stage->tui.view.lines = dice_between(&dice, 0, 1);
        }
        assert_non_null(stage_show(stage, rows, columns));
        if (desk_serial(stage->desk) == serial)
            continue;
        assert_int_equal(model_check(desk_model(stage->desk), NULL, NULL), 0);
        edits++;
    }
    assert_true(edits > keys / 50); /* the keys did reach what they are to try */
    assert_place_is_sound(&stage->place);
}

int main(void)
{
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(thousands_of_keys_leave_the_file_sound,
                                        stage_begin_with_cases, stage_end),
    };
    int failed = cmocka_run_group_tests_name("tui chance", tests, NULL, NULL);
    return failed ? 1 : 0;
}
