/* Words in pictures: none on another, none outside, by chance and one by one. */
#include "draw/label.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define MOST 40

struct wording {
    struct label labels[MOST];
    struct label_place places[MOST];
    size_t count;
    struct label_field field;
};

static bool covers(const struct label_place *a, const struct label_place *b)
{
    return a->row == b->row && a->column < b->column + b->width && b->column < a->column + a->width;
}

static void assert_sound(const struct wording *words)
{
    for (size_t i = 0; i < words->count; i++) {
        const struct label_place *place = &words->places[i];
        if (!place->shown)
            continue;
        assert_in_range(place->row, 0, words->field.rows - 1);
        assert_true(place->column >= 0);
        assert_true(place->column + place->width <=
                    (words->labels[i].aside ? words->field.columns : words->field.margin));
        for (size_t k = 0; k < i; k++)
            assert_false(words->places[k].shown && covers(place, &words->places[k]));
    }
}

static void place(struct wording *words)
{
    labels_place(words->places, words->labels, words->count, words->field);
}

static void labels_by_chance_never_cover_each_other(void **state)
{
    struct dice dice = {81};
    size_t shown = 0;

    (void)state;
    for (int i = 0; i < 2000; i++) {
        struct wording words = {.count = (size_t)dice_between(&dice, 1, MOST)};
        int columns = (int)dice_between(&dice, 3, 90);
        words.field = (struct label_field){(int)dice_between(&dice, 3, 40), columns,
                                           (int)dice_between(&dice, columns / 2, columns)};
        for (size_t k = 0; k < words.count; k++) {
            int64_t v = dice_between(&dice, 0, words.field.rows - 1);
            words.labels[k] = (struct label){0, -v, dice_between(&dice, 0, 3) == 0, ""};
            words.places[k] = (struct label_place){(int)v, (int)dice_between(&dice, 0, columns - 1),
                                                   (int)dice_between(&dice, 1, 12), false};
        }
        place(&words);
        assert_sound(&words);
        for (size_t k = 0; k < words.count; k++)
            shown += words.places[k].shown;
    }
    assert_true(shown > 10000);
}

static void a_label_stands_in_the_middle_of_its_place(void **state)
{
    struct wording words = {.labels = {{0, 0, false, ""}},
                            .places = {{5, 20, 4, false}},
                            .count = 1,
                            .field = {10, 40, 40}};

    (void)state;
    place(&words);
    assert_true(words.places[0].shown);
    assert_int_equal(words.places[0].row, 5);
    assert_int_equal(words.places[0].column, 18);
}

static void the_second_of_two_at_one_place_moves_up(void **state)
{
    struct wording words = {.labels = {{0, 0, false, ""}, {0, 0, false, ""}},
                            .places = {{5, 20, 4, false}, {5, 20, 6, false}},
                            .count = 2,
                            .field = {10, 40, 40}};

    (void)state;
    place(&words);
    assert_int_equal(words.places[0].row, 5);
    assert_int_equal(words.places[1].row, 4);
}

/* Thin layers over each other: their words keep the order of their heights, each on its row. */
static void labels_aside_keep_their_order(void **state)
{
    struct wording words = {.labels = {{0, 10, true, ""}, {0, 30, true, ""}, {0, 20, true, ""}},
                            .places = {{8, 0, 5, false}, {8, 0, 5, false}, {8, 0, 5, false}},
                            .count = 3,
                            .field = {10, 40, 30}};

    (void)state;
    place(&words);
    assert_int_equal(words.places[1].row, 7);
    assert_int_equal(words.places[2].row, 8);
    assert_int_equal(words.places[0].row, 9);
    assert_int_equal(words.places[0].column, 30);
}

static void what_finds_no_room_is_left_out(void **state)
{
    struct wording words = {.labels = {{0, 0, false, ""}},
                            .places = {{1, 2, 9, false}},
                            .count = 1,
                            .field = {3, 8, 8}};

    (void)state;
    place(&words);
    assert_false(words.places[0].shown);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(labels_by_chance_never_cover_each_other),
        cmocka_unit_test(a_label_stands_in_the_middle_of_its_place),
        cmocka_unit_test(the_second_of_two_at_one_place_moves_up),
        cmocka_unit_test(labels_aside_keep_their_order),
        cmocka_unit_test(what_finds_no_room_is_left_out),
    };
    int failed = cmocka_run_group_tests_name("label", tests, NULL, NULL);
    return failed ? 1 : 0;
}
