#include "cut/known.h"

#include "base/digest.h"
#include "cut/rolljob.h"

#include <assert.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

/* ---- content ---- */

static uint64_t digest_numbers(uint64_t digest, const int64_t *numbers, size_t count)
{
    for (size_t i = 0; i < count; i++)
        digest = digest_whole(digest, numbers[i]);
    return digest;
}

#define DIGEST_ALL(digest, numbers) \
    digest_numbers((digest), (numbers), sizeof(numbers) / sizeof *(numbers))

static uint64_t digest_piece(uint64_t digest, const struct cut_piece *piece)
{
    const int64_t numbers[] = {piece->length,         piece->width,         piece->may_turn,
                               (int64_t)piece->group, piece->along,         piece->across,
                               piece->centred_along,  piece->centred_across};

    return DIGEST_ALL(digest, numbers);
}

static uint64_t digest_size(uint64_t digest, const struct cut_size *size)
{
    const int64_t numbers[] = {size->length, size->width, size->price, size->limit};

    return DIGEST_ALL(digest, numbers);
}

static uint64_t digest_blemish(uint64_t digest, const struct cut_blemish *blemish)
{
    const int64_t numbers[] = {blemish->along, blemish->across, blemish->length, blemish->width};

    return DIGEST_ALL(digest, numbers);
}

uint64_t cut_digest(enum cut_way way, const struct cut_job *job)
{
    const int64_t numbers[] = {way,
                               (int64_t)job->part_count,
                               (int64_t)job->size_count,
                               job->kerf,
                               job->trim,
                               job->passage_length,
                               job->passage_width,
                               job->pattern.along,
                               job->pattern.across,
                               job->pattern.half_drop,
                               job->sale.ahead,
                               job->sale.reserve,
                               job->sale.least,
                               job->sale.step,
                               (int64_t)job->blemish_count};
    uint64_t digest = DIGEST_ALL(DIGEST_START, numbers);

    for (size_t i = 0; i < job->part_count; i++)
        digest = digest_piece(digest, &job->parts[i]);
    for (size_t i = 0; i < job->size_count; i++)
        digest = digest_size(digest, &job->sizes[i]);
    for (size_t i = 0; i < job->blemish_count; i++)
        digest = digest_blemish(digest, &job->blemishes[i]);
    return digest;
}

/* ---- copies ---- */

static void *copy(struct arena *arena, const void *from, size_t count, size_t size)
{
    void *to = arena_array(arena, count, size);

    if (count > 0)
        memcpy(to, from, count * size);
    return to;
}

struct cut_job cut_job_copy(const struct cut_job *job, struct arena *arena)
{
    struct cut_job made = *job;

    made.parts = copy(arena, job->parts, job->part_count, sizeof *job->parts);
    made.sizes = copy(arena, job->sizes, job->size_count, sizeof *job->sizes);
    made.blemishes = copy(arena, job->blemishes, job->blemish_count, sizeof *job->blemishes);
    return made;
}

#define COPY_LIST(arena, to, from)                                            \
    ((to)->at = copy((arena), (from)->at, (from)->count, sizeof *(from)->at), \
     (to)->count = (to)->room = (from)->count)

struct cut_layout cut_layout_copy(const struct cut_layout *layout, struct arena *arena)
{
    struct cut_layout made = *layout;

    COPY_LIST(arena, &made.blanks, &layout->blanks);
    COPY_LIST(arena, &made.places, &layout->places);
    COPY_LIST(arena, &made.left_out, &layout->left_out);
    COPY_LIST(arena, &made.strokes, &layout->strokes);
    return made;
}

/* ---- what is known ---- */

/* Where a digest stands, or would stand. */
static size_t index_of(const struct cut_known *known, uint64_t digest)
{
    size_t low = 0, high = known->layouts.count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (known->layouts.at[middle].digest < digest)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

const struct cut_known_layout *cut_known_find(const struct cut_known *known, uint64_t digest)
{
    size_t index = known ? index_of(known, digest) : 0;

    if (!known || index == known->layouts.count || known->layouts.at[index].digest != digest)
        return NULL;
    return &known->layouts.at[index];
}

void cut_known_keep(struct cut_known *known, struct arena *arena,
                    const struct cut_known_layout *layout)
{
    size_t index = index_of(known, layout->digest);
    struct cut_known_layout kept = *layout;

    kept.layout = cut_layout_copy(&layout->layout, arena);
    if (!cut_known_find(known, layout->digest)) {
        LIST_ADD(arena, &known->layouts);
        memmove(&known->layouts.at[index + 1], &known->layouts.at[index],
                (known->layouts.count - 1 - index) * sizeof *known->layouts.at);
    }
    known->layouts.at[index] = kept;
    assert(index == 0 || known->layouts.at[index - 1].digest < kept.digest);
}

/* ---- text ---- */

static void print_whole(struct text *out, int64_t whole)
{
    text_format(out, " %" PRId64, whole);
}

static void print_blank(const struct cut_layout *layout, size_t index, struct text *out)
{
    assert(index < layout->blanks.count);

    const struct cut_blank *blank = &layout->blanks.at[index];

    text_format(out, "b %zu %" PRId64 " %" PRId64 " %" PRId64 "\n", blank->size, blank->used,
                blank->rest, blank->rest_across);
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &layout->places.at[i];

        text_format(out, "p %zu %" PRId64 " %" PRId64 " %d\n", place->part, place->along,
                    place->across, place->turned);
    }
    for (size_t i = 0; i < layout->strokes.count; i++) {
        const struct cut_stroke *stroke = &layout->strokes.at[i];

        if (stroke->blank != index)
            continue;
        text_format(out, "s %d", stroke->across);
        print_whole(out, stroke->at);
        print_whole(out, stroke->from);
        print_whole(out, stroke->to);
        print_whole(out, stroke->fence);
        text_add_char(out, '\n');
    }
}

void cut_layout_print(const struct cut_layout *layout, struct text *out)
{
    for (size_t i = 0; i < layout->blanks.count; i++)
        print_blank(layout, i, out);
}

#define NUMBERS_MOST 5

/* Up to five whole numbers; how many there were before the end or another letter. */
static size_t read_numbers(const char **at, int64_t numbers[NUMBERS_MOST])
{
    size_t count = 0;

    while (count < NUMBERS_MOST) {
        char *end;

        numbers[count] = strtoll(*at, &end, 10);
        if (end == *at)
            break;
        *at = end;
        count++;
    }
    while (**at == ' ' || **at == '\n')
        ++*at;
    return count;
}

/* One line behind its letter; false where it is no such line. */
static bool read_line(char letter, const int64_t *numbers, size_t count, struct arena *arena,
                      struct cut_layout *layout)
{
    bool begun = layout->blanks.count > 0;

    if (letter == 'b' && count == 4 && numbers[0] >= 0) {
        *LIST_ADD(arena, &layout->blanks) = (struct cut_blank){.size = (size_t)numbers[0],
                                                               .first = layout->places.count,
                                                               .used = numbers[1],
                                                               .rest = numbers[2],
                                                               .rest_across = numbers[3]};
        return true;
    }
    if (letter == 'p' && count == 4 && begun && numbers[0] >= 0) {
        *LIST_ADD(arena, &layout->places) =
            (struct cut_place){(size_t)numbers[0], numbers[1], numbers[2], numbers[3] != 0};
        layout->blanks.at[layout->blanks.count - 1].count++;
        return true;
    }
    if (letter == 's' && count == 5 && begun) {
        *LIST_ADD(arena, &layout->strokes) = (struct cut_stroke){layout->blanks.count - 1,
                                                                 numbers[0] != 0,
                                                                 numbers[1],
                                                                 numbers[2],
                                                                 numbers[3],
                                                                 numbers[4]};
        return true;
    }
    return false;
}

/* What is named nowhere is left out; the verifier says whether it may be. */
static void find_left_out(const struct cut_job *job, struct arena *arena, struct cut_layout *layout)
{
    bool *placed = ARENA_MANY(arena, bool, job->part_count);

    for (size_t i = 0; i < layout->places.count; i++)
        if (layout->places.at[i].part < job->part_count)
            placed[layout->places.at[i].part] = true;
    for (size_t i = 0; i < job->part_count; i++)
        if (!placed[i])
            *LIST_ADD(arena, &layout->left_out) = i;
}

static void add_cost(enum cut_way way, const struct cut_job *job, struct cut_layout *layout)
{
    for (size_t i = 0; i < layout->blanks.count; i++) {
        const struct cut_blank *blank = &layout->blanks.at[i];

        if (blank->size >= job->size_count)
            continue;
        if (way != CUT_ROLLS)
            layout->cost += job->sizes[blank->size].price;
        else if (job->sizes[blank->size].limit == CUT_ANY)
            layout->cost += roll_sold(&job->sale, blank->used);
    }
}

static int64_t count_fences(const struct cut_layout *layout)
{
    int64_t fences = 0;

    for (size_t i = 0; i < layout->strokes.count; i++)
        fences += i == 0 || layout->strokes.at[i].fence != layout->strokes.at[i - 1].fence;
    return fences;
}

bool cut_layout_read(const char *text, enum cut_way way, const struct cut_job *job,
                     struct arena *arena, struct cut_layout *ret_layout)
{
    struct cut_layout layout = {0};

    while (*text) {
        char letter = *text++;
        int64_t numbers[NUMBERS_MOST];
        size_t count = read_numbers(&text, numbers);

        if (!read_line(letter, numbers, count, arena, &layout))
            return false;
    }
    find_left_out(job, arena, &layout);
    add_cost(way, job, &layout);
    layout.fences = count_fences(&layout);
    if (layout_verify(way, job, &layout, arena) != CUT_FLAW_NONE)
        return false;
    *ret_layout = layout;
    return true;
}
