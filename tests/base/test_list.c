/* Lists in an arena: order, room, and requests that fail. */
#include "base/list.h"

#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdbool.h>

struct stick {
    int length;
    char grade;
};

struct sticks {
    LIST_OF(struct stick) of;
};

static void added_elements_are_zeroed_and_keep_their_order(void **state)
{
    struct sticks list = {0};
    struct arena arena;
    jmp_buf escape;

    (void)state;
    arena_init(&arena);
    arena.escape = &escape;
    assert_int_equal(setjmp(escape), 0);
    for (int i = 0; i < 1000; i++) {
        struct stick *stick = LIST_ADD(&arena, &list.of);

        assert_int_equal(stick->length, 0);
        assert_int_equal(stick->grade, 0);
        *stick = (struct stick){i, 'a'};
    }
    assert_int_equal(list.of.count, 1000);
    assert_int_equal(list.of.any.count, 1000);
    for (int i = 0; i < 1000; i++)
        assert_int_equal(list.of.at[i].length, i);
    arena_release(&arena);
}

static void fill(struct arena *arena, struct sticks *list, int count)
{
    jmp_buf escape;

    arena->escape = &escape;
    assert_int_equal(setjmp(escape), 0);
    for (int i = 0; i < count; i++)
        LIST_ADD(arena, &list->of)->length = i;
    arena->escape = NULL;
}

static void remove_moves_the_rest_down(void **state)
{
    struct sticks list = {0};
    struct arena arena;

    (void)state;
    arena_init(&arena);
    fill(&arena, &list, 5);
    list_remove(&list.of.any, 1, sizeof *list.of.at);
    assert_int_equal(list.of.count, 4);
    assert_int_equal(list.of.at[0].length, 0);
    assert_int_equal(list.of.at[1].length, 2);
    assert_int_equal(list.of.at[2].length, 3);
    assert_int_equal(list.of.at[3].length, 4);
    list_remove(&list.of.any, 3, sizeof *list.of.at);
    list_remove(&list.of.any, 0, sizeof *list.of.at);
    assert_int_equal(list.of.count, 2);
    assert_int_equal(list.of.at[0].length, 2);
    assert_int_equal(list.of.at[1].length, 3);
    arena_release(&arena);
}

static void a_place_that_was_taken_before_is_zeroed_again(void **state)
{
    struct sticks list = {0};
    struct arena arena;

    (void)state;
    arena_init(&arena);
    fill(&arena, &list, 3);
    list_remove(&list.of.any, 0, sizeof *list.of.at);
    assert_true(list_reserve(&arena, &list.of.any, sizeof *list.of.at));
    assert_int_equal(list.of.at[list.of.count].length, 0);
    arena_release(&arena);
}

static void growing_takes_memory_in_proportion(void **state)
{
    struct sticks list = {0};
    struct arena arena;

    (void)state;
    arena_init(&arena);
    fill(&arena, &list, 10000);
    assert_in_range(arena.taken, 10000 * sizeof(struct stick), 8 * 10000 * sizeof(struct stick));
    arena_release(&arena);
}

/* How many sticks got in before the n-th request failed; the escape is what ends it. */
static int sticks_until(int request)
{
    static struct sticks list; /* locals would be indeterminate after longjmp */
    static struct arena arena;
    jmp_buf escape;

    list = (struct sticks){0};
    scarce_begin(request);
    arena_init(&arena);
    arena.escape = &escape;
    if (!setjmp(escape))
        for (int i = 0; i < 5000; i++)
            LIST_ADD(&arena, &list.of)->length = i;
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
    return (int)list.of.count;
}

static void a_failed_request_leaves_through_the_escape_and_the_list_as_it_was(void **state)
{
    int before = -1;

    (void)state;
    assert_int_equal(sticks_until(0), 5000);
    for (int request = 1, needed = scarce_requests(); request <= needed; request++) {
        int count = sticks_until(request);

        assert_true(scarce_failed());
        assert_in_range(count, before + 1, 4999);
        before = count;
    }
}

static void reserve_says_no_where_there_is_no_escape(void **state)
{
    struct sticks list = {0};
    struct arena arena;

    (void)state;
    scarce_begin(1);
    arena_init(&arena);
    assert_false(list_reserve(&arena, &list.of.any, sizeof *list.of.at));
    assert_int_equal(list.of.room, 0);
    assert_null(list.of.at);
    assert_true(list_reserve(&arena, &list.of.any, sizeof *list.of.at));
    assert_int_equal(list.of.count, 0);
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
}

static void room_made_before_is_taken_once(void **state)
{
    struct sticks list = {0};
    struct arena arena;
    size_t taken;

    (void)state;
    arena_init(&arena);
    LIST_ADD(&arena, &list.of)->length = 7;
    assert_true(list_make_room(&arena, &list.of.any, 1000, sizeof *list.of.at));
    taken = arena.taken;
    while (list.of.count < 1000)
        LIST_ADD(&arena, &list.of)->length = 7;
    assert_int_equal(list.of.room, 1000);
    assert_int_equal(arena.taken, taken);
    assert_int_equal(list.of.at[0].length, 7);
    assert_true(list_make_room(&arena, &list.of.any, 10, sizeof *list.of.at));
    assert_int_equal(list.of.room, 1000);
    arena_release(&arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(added_elements_are_zeroed_and_keep_their_order),
        cmocka_unit_test(remove_moves_the_rest_down),
        cmocka_unit_test(a_place_that_was_taken_before_is_zeroed_again),
        cmocka_unit_test(growing_takes_memory_in_proportion),
        cmocka_unit_test(a_failed_request_leaves_through_the_escape_and_the_list_as_it_was),
        cmocka_unit_test(room_made_before_is_taken_once),
        cmocka_unit_test(reserve_says_no_where_there_is_no_escape),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
