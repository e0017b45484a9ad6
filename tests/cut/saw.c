#include "saw.h"

#include "cut/bars.h"
#include "cut/rolls.h"
#include "cut/sheets.h"
#include "dice.h"
#include "sanitized.h"

#include <assert.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

typedef void cut_fn(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout);

static cut_fn *const cuts[] = {
    [CUT_BARS] = bars_cut, [CUT_SHEETS] = sheets_cut, [CUT_ROLLS] = rolls_cut};

struct arena saw_arena;

int saw_arena_open(void **state)
{
    (void)state;
    arena_init(&saw_arena);
    return 0;
}

int saw_arena_close(void **state)
{
    (void)state;
    arena_release(&saw_arena);
    return 0;
}

void parts_add(struct parts *parts, size_t count, int64_t length, int64_t width, bool may_turn)
{
    assert(parts->count + count <= MOST_PARTS);
    for (size_t i = 0; i < count; i++)
        parts->at[parts->count++] =
            (struct cut_piece){.length = length, .width = width, .may_turn = may_turn};
}

enum cut_flaw flaw_of(enum cut_way way, const struct cut_job *job, const struct cut_layout *layout)
{
    volatile enum cut_flaw flaw = CUT_FLAWS_COUNT;
    struct arena scratch;
    jmp_buf escape;

    arena_init(&scratch);
    scratch.escape = &escape;
    if (!setjmp(escape))
        flaw = layout_verify(way, job, layout, &scratch);
    arena_release(&scratch);
    return flaw;
}

struct cut_layout saw(enum cut_way way, const struct cut_job *job, struct arena *arena)
{
    struct cut_layout layout = {0};
    jmp_buf escape;
    enum cut_flaw flaw;

    arena->escape = &escape;
    if (setjmp(escape))
        fail_msg("memory is out");
    cuts[way](job, arena, &layout);
    arena->escape = NULL;
    flaw = flaw_of(way, job, &layout);
    if (flaw != CUT_FLAW_NONE)
        fail_msg("%s", cut_flaw_words(flaw));
    return layout;
}

struct cut_layout saw_on(enum cut_way way, const struct cut_job *job, int64_t work, int64_t slice,
                         struct arena *arena)
{
    struct cut_layout layout;
    jmp_buf escape;
    enum cut_flaw flaw;

    arena->escape = &escape;
    if (setjmp(escape))
        fail_msg("memory is out");
    struct cut_search *search = cut_begin(way, job, arena);
    while (cut_done(search) < work && cut_step(search, slice))
        ;
    layout = *cut_best(search);
    arena->escape = NULL;
    flaw = flaw_of(way, job, &layout);
    if (flaw != CUT_FLAW_NONE)
        fail_msg("%s", cut_flaw_words(flaw));
    return layout;
}

size_t blanks_of(const struct cut_layout *layout, size_t size)
{
    size_t count = 0;

    for (size_t i = 0; i < layout->blanks.count; i++)
        count += layout->blanks.at[i].size == size;
    return count;
}

static struct cut_size size_by_chance(enum cut_way way, struct dice *dice)
{
    struct cut_size size = {0};

    size.length = dice_between(dice, 200, 3000);
    size.width = way == CUT_BARS ? 0 : dice_between(dice, 100, 1500);
    size.price = dice_between(dice, 0, 4) ? dice_between(dice, 1, 5000) : 0;
    size.limit = CUT_ANY;
    if (dice_between(dice, 0, 2) == 0) {
        size.limit = dice_between(dice, 0, 3);
        size.price = 0;
    }
    return size;
}

static void match_by_chance(struct dice *dice, struct cut_piece *part)
{
    part->group = (size_t)dice_between(dice, 0, 3);
    if (part->group == 3)
        part->group = CUT_PINNED;
    part->along = dice_between(dice, 0, 1) ? dice_between(dice, -100, 100) : 0;
    part->across = dice_between(dice, 0, 1) ? dice_between(dice, -100, 100) : 0;
    part->centred_along = dice_between(dice, 0, 1);
    part->centred_across = dice_between(dice, 0, 1);
}

void roll_by_chance(struct dice *dice, struct parts *parts, struct cut_blemish *blemishes,
                    struct cut_job *job)
{
    if (dice_between(dice, 0, 1)) {
        job->pattern.along = dice_between(dice, 0, 200);
        job->pattern.across = dice_between(dice, 0, 1) ? dice_between(dice, 1, 120) : 0;
        job->pattern.half_drop = dice_between(dice, 0, 1);
        for (size_t i = 0; i < parts->count; i++)
            match_by_chance(dice, &parts->at[i]);
    }
    if (dice_between(dice, 0, 2) == 0)
        job->blemish_count = (size_t)dice_between(dice, 1, MOST_BLEMISHES);
    for (size_t i = 0; i < job->blemish_count; i++)
        blemishes[i] = (struct cut_blemish){dice_between(dice, 0, 2000), dice_between(dice, 0, 900),
                                            dice_between(dice, 1, 50), dice_between(dice, 1, 400)};
    job->blemishes = blemishes;
    if (dice_between(dice, 0, 1))
        job->sale = (struct cut_sale){dice_between(dice, 0, 100), dice_between(dice, 0, 200000),
                                      dice_between(dice, 0, 500), dice_between(dice, 0, 300)};
}

struct cut_job job_by_chance(enum cut_way way, struct dice *dice, struct parts *parts,
                             struct cut_size *sizes)
{
    static struct cut_blemish blemishes[MOST_BLEMISHES];
    struct cut_job job = {.parts = parts->at, .sizes = sizes};
    int64_t kinds = dice_between(dice, 0, 6);

    parts->count = 0;
    for (int64_t i = 0; i < kinds; i++)
        parts_add(parts, (size_t)dice_between(dice, 1, 6), dice_between(dice, 1, 1600),
                  way == CUT_BARS ? 0 : dice_between(dice, 1, 900),
                  way != CUT_BARS && dice_between(dice, 0, 1));
    job.part_count = parts->count;
    job.size_count = (size_t)dice_between(dice, 0, MOST_SIZES);
    for (size_t i = 0; i < job.size_count; i++)
        sizes[i] = size_by_chance(way, dice);
    job.kerf = dice_between(dice, 0, 12);
    job.trim = dice_between(dice, 0, 30);
    if (way == CUT_ROLLS)
        roll_by_chance(dice, parts, blemishes, &job);
    return job;
}

#define USUAL_JOBS UNLESS_SANITIZED(2000, 500)

void chance_is_cut_soundly(enum cut_way way, uint64_t seed)
{
    struct arena arena = {0};
    struct dice dice = {seed};
    struct parts parts;
    struct cut_size sizes[MOST_SIZES];

    for (int i = 0; i < (getenv("STUFFOVER_LONG") ? 20000 : USUAL_JOBS); i++) {
        struct cut_job job = job_by_chance(way, &dice, &parts, sizes);

        saw(way, &job, &arena);
        arena_release(&arena);
    }
}

void assert_same_places(const struct cut_layout *one, const struct cut_layout *other)
{
    assert_int_equal(one->places.count, other->places.count);
    for (size_t i = 0; i < one->places.count; i++) {
        assert_int_equal(one->places.at[i].part, other->places.at[i].part);
        assert_int_equal(one->places.at[i].along, other->places.at[i].along);
        assert_int_equal(one->places.at[i].across, other->places.at[i].across);
    }
}

void twice_is_the_same(enum cut_way way, uint64_t seed)
{
    struct arena arena = {0};
    struct dice dice = {seed};
    struct parts parts;
    struct cut_size sizes[MOST_SIZES];

    for (int i = 0; i < 100; i++) {
        struct cut_job job = job_by_chance(way, &dice, &parts, sizes);
        struct cut_layout first = saw(way, &job, &arena);
        struct cut_layout second = saw(way, &job, &arena);

        assert_same_places(&first, &second);
        arena_release(&arena);
    }
}
