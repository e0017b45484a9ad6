/* Memory that is handed out piece by piece and given back at once; each request may fail. */
#include "base/arena.h"

#include "base/memory.h"
#include "dice.h"
#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdalign.h>
#include <stdbool.h>
#include <string.h>

static bool all_zero(const unsigned char *bytes, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (bytes[i] != 0)
            return false;
    return true;
}

static void a_piece_is_zeroed_and_aligned(void **state)
{
    struct dice dice = {1};
    struct arena arena;

    (void)state;
    arena_init(&arena);
    for (int i = 0; i < 2000; i++) {
        size_t size = (size_t)dice_between(&dice, 1, i % 100 ? 300 : 20000);
        unsigned char *piece = arena_alloc(&arena, size);

        assert_non_null(piece);
        assert_int_equal((uintptr_t)piece % alignof(max_align_t), 0);
        assert_true(all_zero(piece, size));
        memset(piece, 0xa5, size);
    }
    arena_release(&arena);
}

static void pieces_do_not_overlap(void **state)
{
    enum { PIECES = 500 };
    unsigned char *pieces[PIECES];
    size_t sizes[PIECES];
    struct dice dice = {2};
    struct arena arena;

    (void)state;
    arena_init(&arena);
    for (size_t i = 0; i < PIECES; i++) {
        sizes[i] = (size_t)dice_between(&dice, 1, i % 50 ? 200 : 9000);
        pieces[i] = arena_alloc(&arena, sizes[i]);
        memset(pieces[i], (int)(i % 251), sizes[i]);
    }
    for (size_t i = 0; i < PIECES; i++)
        for (size_t j = 0; j < sizes[i]; j++)
            assert_int_equal(pieces[i][j], i % 251);
    arena_release(&arena);
}

static void a_size_of_nothing_gives_a_pointer_of_its_own(void **state)
{
    struct arena arena;
    void *first;

    (void)state;
    arena_init(&arena);
    first = arena_alloc(&arena, 0);
    assert_non_null(first);
    assert_ptr_not_equal(first, arena_alloc(&arena, 0));
    assert_non_null(arena_array(&arena, 0, 8));
    assert_non_null(arena_array(&arena, 8, 0));
    arena_release(&arena);
}

static void release_gives_everything_back_and_may_be_repeated(void **state)
{
    struct arena arena;

    (void)state;
    arena_release(NULL);
    scarce_begin(0);
    arena_init(&arena);
    for (int i = 0; i < 300; i++)
        arena_alloc(&arena, 1000);
    assert_true(scarce_requests() > 1);
    arena_release(&arena);
    assert_null(arena.blocks);
    assert_int_equal(arena.taken, 0);
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
}

static void use_pieces(struct arena *arena, int count)
{
    for (int i = 0; i < count; i++) {
        size_t size = i % 10 ? 700 : 90000;
        unsigned char *piece = arena_alloc(arena, size);

        assert_true(all_zero(piece, size));
        memset(piece, 0xa5, size);
    }
}

static void what_comes_after_a_reset_takes_the_blocks_that_were(void **state)
{
    struct arena arena;
    size_t taken;
    int requests;

    (void)state;
    arena_reset(NULL);
    scarce_begin(0);
    arena_init(&arena);
    use_pieces(&arena, 500);
    requests = scarce_requests();
    taken = arena.taken;
    for (int use = 1; use <= 3; use++) {
        arena_reset(&arena);
        assert_null(arena.blocks);
        assert_int_equal(arena.taken, 0);
        use_pieces(&arena, 500);
        assert_int_equal(arena.taken, taken);
        assert_int_equal(scarce_requests(), arena_keeps_blocks ? requests : requests * (use + 1));
    }
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
}

static void what_the_last_use_did_not_need_goes_back(void **state)
{
    struct arena arena;
    int requests;

    (void)state;
    scarce_begin(0);
    arena_init(&arena);
    use_pieces(&arena, 500);
    arena_reset(&arena);
    use_pieces(&arena, 5);
    arena_reset(&arena);
    requests = scarce_requests();
    use_pieces(&arena, 500);
    assert_true(scarce_requests() - requests > 20);
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
}

static void taken_covers_what_was_handed_out(void **state)
{
    struct arena arena;

    (void)state;
    arena_init(&arena);
    for (int i = 0; i < 1000; i++)
        arena_alloc(&arena, 640);
    assert_in_range(arena.taken, 640 * 1000, 2 * 640 * 1000);
    arena_release(&arena);
}

static void many_small_pieces_take_few_blocks(void **state)
{
    struct arena arena;

    (void)state;
    scarce_begin(0);
    arena_init(&arena);
    for (int i = 0; i < 65536; i++)
        arena_alloc(&arena, 64);
    assert_in_range(scarce_requests(), 1, 32);
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
}

static void a_large_piece_leaves_the_room_of_the_block_in_use(void **state)
{
    struct arena arena;
    unsigned char *before;

    (void)state;
    arena_init(&arena);
    before = arena_alloc(&arena, 32);
    arena_alloc(&arena, 100000);
    assert_ptr_equal(arena_alloc(&arena, 32), before + 32);
    arena_release(&arena);
}

static void a_count_that_overflows_is_exhaustion(void **state)
{
    struct arena arena;

    (void)state;
    arena_init(&arena);
    assert_null(arena_array(&arena, SIZE_MAX / 4, 8));
    assert_null(arena_array(&arena, 2, SIZE_MAX / 2 + 1));
    assert_null(arena_alloc(&arena, SIZE_MAX));
    assert_int_equal(arena.taken, 0);
    arena_release(&arena);
}

static void text_is_copied_and_nothing_is_the_empty_text(void **state)
{
    char source[] = "rail";
    struct arena arena;
    char *copy;

    (void)state;
    arena_init(&arena);
    copy = arena_text(&arena, source);
    source[0] = 'n';
    assert_string_equal(copy, "rail");
    assert_string_equal(arena_text(&arena, NULL), "");
    assert_string_equal(arena_text(&arena, ""), "");
    arena_release(&arena);
}

static void format_makes_room_for_any_length(void **state)
{
    struct arena arena;
    char *text;

    (void)state;
    arena_init(&arena);
    assert_string_equal(arena_format(&arena, "%s %d", "rail", 7), "rail 7");
    text = arena_format(&arena, "%9000d", 5);
    assert_int_equal(strlen(text), 9000);
    assert_int_equal(text[8999], '5');
    arena_release(&arena);
}

static void a_formatted_text_is_not_touched_by_the_next_piece(void **state)
{
    struct arena arena;

    (void)state;
    arena_init(&arena);
    assert_string_equal(arena_format(&arena, "%s", ""), "");
    for (int width = 1; width <= 100; width++) {
        char *text = arena_format(&arena, "%*d", width, 7);

        memset(arena_alloc(&arena, 1), 0xff, 1);
        assert_int_equal(strlen(text), width);
        assert_int_equal(text[width - 1], '7');
    }
    arena_release(&arena);
}

static void use_much(struct arena *arena)
{
    for (int i = 0; i < 20; i++) {
        arena_alloc(arena, 3000);
        arena_array(arena, 50, 100);
        arena_text(arena, "upright");
        arena_format(arena, "%5000d", i);
    }
}

/* Whether the escape was taken while the n-th request failed. */
static bool escapes_at(int request, int *ret_requests)
{
    static struct arena arena; /* a local of its own would be indeterminate after longjmp */
    jmp_buf escape;
    volatile bool escaped = false;

    scarce_begin(request);
    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        escaped = true;
    else
        use_much(&arena);
    arena_release(&arena);
    *ret_requests = scarce_requests();
    assert_int_equal(scarce_end(), 0);
    return escaped;
}

static void every_failed_request_takes_the_escape_and_leaks_nothing(void **state)
{
    int needed;
    int seen;

    (void)state;
    assert_false(escapes_at(0, &needed));
    assert_true(needed >= 5);
    for (int request = 1; request <= needed; request++) {
        assert_true(escapes_at(request, &seen));
        assert_int_equal(seen, request);
    }
}

static void without_an_escape_a_failed_request_gives_null_and_the_next_may_succeed(void **state)
{
    struct arena arena;

    (void)state;
    arena_init(&arena);
    for (int piece = 0; piece < 4; piece++) {
        scarce_begin(1);
        arena_init(&arena);
        assert_null(piece == 0   ? arena_alloc(&arena, 10)
                    : piece == 1 ? arena_array(&arena, 10, 10)
                    : piece == 2 ? arena_text(&arena, "post")
                                 : (void *)arena_format(&arena, "%d", piece));
        assert_non_null(arena_alloc(&arena, 10));
        arena_release(&arena);
        assert_int_equal(scarce_end(), 0);
    }
}

static void an_escape_is_still_armed_after_a_format_that_fits(void **state)
{
    struct arena arena;
    jmp_buf escape;

    (void)state;
    arena_init(&arena);
    arena.escape = &escape;
    arena_format(&arena, "%d", 1);
    assert_ptr_equal(arena.escape, &escape);
    arena_release(&arena);
    assert_null(arena.escape);
}

static void take_two_pieces(void *context)
{
    arena_alloc(context, 100);
    arena_alloc(context, 1000000);
}

static void a_try_tells_whether_memory_ran_out_and_arms_what_was_armed(void **state)
{
    struct arena arena;
    jmp_buf outer;

    (void)state;
    arena_init(&arena);
    arena.escape = &outer;
    assert_true(arena_try(&arena, take_two_pieces, &arena));
    assert_ptr_equal(arena.escape, &outer);
    arena_release(&arena);
    scarce_begin(2);
    arena.escape = &outer;
    assert_false(arena_try(&arena, take_two_pieces, &arena));
    assert_ptr_equal(arena.escape, &outer);
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
}

static void memory_use_gives_back_the_source_before(void **state)
{
    const struct memory_source *library = memory_use(NULL);
    void *block = memory_resize(NULL, 0);

    (void)state;
    assert_non_null(block);
    memory_release(block);
    memory_release(NULL);
    scarce_begin(0);
    assert_ptr_not_equal(memory_use(NULL), library);
    assert_ptr_equal(memory_use(NULL), library);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_piece_is_zeroed_and_aligned),
        cmocka_unit_test(pieces_do_not_overlap),
        cmocka_unit_test(a_size_of_nothing_gives_a_pointer_of_its_own),
        cmocka_unit_test(release_gives_everything_back_and_may_be_repeated),
        cmocka_unit_test(what_comes_after_a_reset_takes_the_blocks_that_were),
        cmocka_unit_test(what_the_last_use_did_not_need_goes_back),
        cmocka_unit_test(taken_covers_what_was_handed_out),
        cmocka_unit_test(many_small_pieces_take_few_blocks),
        cmocka_unit_test(a_large_piece_leaves_the_room_of_the_block_in_use),
        cmocka_unit_test(a_count_that_overflows_is_exhaustion),
        cmocka_unit_test(text_is_copied_and_nothing_is_the_empty_text),
        cmocka_unit_test(format_makes_room_for_any_length),
        cmocka_unit_test(a_formatted_text_is_not_touched_by_the_next_piece),
        cmocka_unit_test(every_failed_request_takes_the_escape_and_leaks_nothing),
        cmocka_unit_test(without_an_escape_a_failed_request_gives_null_and_the_next_may_succeed),
        cmocka_unit_test(an_escape_is_still_armed_after_a_format_that_fits),
        cmocka_unit_test(a_try_tells_whether_memory_ran_out_and_arms_what_was_armed),
        cmocka_unit_test(memory_use_gives_back_the_source_before),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
