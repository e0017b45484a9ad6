/*
 * A function f of lengths is dual feasible for L when lengths that together are at most L have
 * values that together are at most f(L), and so for each shorter sheet. The two families here are
 * superadditive, and then f of a sheet's length bounds what its parts are worth one way; the
 * product of two bounds what they are worth both ways (Fekete and Schepers). A part that may be
 * turned counts with the lesser of its two values.
 */
#include "cut/sheetcovers.h"

#include <assert.h>
#include <string.h>

#define FUNCTIONS_MOST 24
#define STEPS_MOST 5 /* of the second family */

/*
 * Of the first family, with steps 0: lengths below `limit` are worth nothing, those that leave less
 * than it of L are worth L, and all others what they measure. With limit 0 that is the length
 * itself.
 *
 * Of the second, with k steps: x holds n whole (k+1)ths of L, and is worth n * (k + 1); where
 * nothing is left over, n * k.
 */
struct function {
    int64_t whole; /* L */
    int64_t limit;
    int64_t steps;
};

struct functions {
    struct function at[FUNCTIONS_MOST];
    size_t count;
};

static int64_t value_of(const struct function *function, int64_t length)
{
    int64_t parts = function->steps + 1;

    assert(length >= 0 && length <= function->whole);
    if (function->steps > 0) {
        int64_t whole = length * parts / function->whole;

        return length * parts % function->whole == 0 ? whole * function->steps : whole * parts;
    }
    if (length < function->limit)
        return 0;
    return length > function->whole - function->limit ? function->whole : length;
}

static void add_limit(struct functions *functions, int64_t whole, int64_t limit)
{
    for (size_t i = 0; i < functions->count; i++)
        if (functions->at[i].steps == 0 && functions->at[i].limit == limit)
            return;
    if (functions->count < FUNCTIONS_MOST && 2 * limit <= whole)
        functions->at[functions->count++] = (struct function){whole, limit, 0};
}

/* The functions for one way: limits that are measures of parts, or just above them. */
static void make_functions(struct functions *functions, const struct sheet_job *job,
                           const bool *counted, int way)
{
    assert(way == 0 || way == 1);

    int64_t whole = 1;

    for (size_t s = 0; s < job->size_count; s++)
        if (job->sizes[s].usable && job->sizes[s].size[way] > whole)
            whole = job->sizes[s].size[way];
    functions->count = 0;
    add_limit(functions, whole, 0);
    for (int64_t k = 1; k <= STEPS_MOST; k++)
        functions->at[functions->count++] = (struct function){whole, 0, k};
    add_limit(functions, whole, whole / 2);
    for (size_t i = 0; i < job->part_count; i++) {
        const struct sheet_part *part = &job->parts[i];

        if (!counted[i])
            continue;
        add_limit(functions, whole, part->size[way]);
        if (part->may_turn)
            add_limit(functions, whole, part->size[!way]);
    }
}

/* Whether some size takes a part as it lies. */
static bool lies(const struct sheet_job *job, const int32_t size[2])
{
    for (size_t s = 0; s < job->size_count; s++)
        if (job->sizes[s].usable && size[0] <= job->sizes[s].size[0] &&
            size[1] <= job->sizes[s].size[1])
            return true;
    return false;
}

struct lying {
    bool straight, turned; /* which ways a part that counts may lie */
};

static int64_t worth_of_parts(const struct sheet_job *job, const struct lying *lying,
                              const struct function *along, const struct function *across)
{
    int64_t sum = 0;

    for (size_t i = 0; i < job->part_count; i++) {
        const int32_t *size = job->parts[i].size;
        int64_t worth = INT64_MAX, turned;

        if (lying[i].straight)
            worth = value_of(along, size[0]) * value_of(across, size[1]);
        if (lying[i].turned) {
            turned = value_of(along, size[1]) * value_of(across, size[0]);
            worth = turned < worth ? turned : worth;
        }
        sum += worth == INT64_MAX ? 0 : worth;
    }
    return sum;
}

struct candidate {
    const struct function *along, *across;
    int64_t need;
    int64_t strength; /* need in 1/1024 of the largest sheet */
};

static int64_t in_sheets(int64_t need, int64_t sheet)
{
    return sheet > 0 ? need / sheet * 1024 + need % sheet * 1024 / sheet : 0;
}

/* Keeps the strongest; the first, areas, stays whatever its strength. */
static void keep_candidate(struct candidate *kept, size_t *count, struct candidate candidate)
{
    size_t i = *count;

    assert(*count <= COVERS_MOST && candidate.need >= 0);
    if (i == COVERS_MOST && kept[--i].strength >= candidate.strength)
        return;
    for (; i > 1 && kept[i - 1].strength < candidate.strength; i--)
        kept[i] = kept[i - 1];
    kept[i] = candidate;
    *count += *count < COVERS_MOST;
}

static void add_cover(struct sheet_covers *covers, const struct sheet_job *job,
                      const struct candidate *candidate, struct arena *arena)
{
    size_t index = covers->count++;

    assert(index < COVERS_MOST);
    covers->need[index] = candidate->need;
    covers->gives[index] = ARENA_MANY(arena, int64_t, job->size_count);
    for (size_t s = 0; s < job->size_count; s++) {
        const struct sheet_size *size = &job->sizes[s];

        if (!size->usable)
            continue;
        covers->gives[index][s] =
            value_of(candidate->along, size->size[0]) * value_of(candidate->across, size->size[1]);
        if (size->price == 0)
            covers->need[index] -= (int64_t)size->limit * covers->gives[index][s];
    }
}

void covers_make(struct sheet_covers *covers, const struct sheet_job *job, const bool *counted,
                 struct arena *arena)
{
    struct lying *lying = ARENA_MANY(arena, struct lying, job->part_count);
    struct functions ways[2];
    struct candidate kept[COVERS_MOST];
    size_t count = 0;

    for (size_t i = 0; i < job->part_count; i++) {
        const struct sheet_part *part = &job->parts[i];
        int32_t turned[2] = {part->size[1], part->size[0]};

        lying[i].straight = counted[i] && lies(job, part->size);
        lying[i].turned = counted[i] && part->may_turn && lies(job, turned);
    }
    make_functions(&ways[WAY_ALONG], job, counted, WAY_ALONG);
    make_functions(&ways[WAY_ACROSS], job, counted, WAY_ACROSS);
    for (size_t a = 0; a < ways[WAY_ALONG].count; a++)
        for (size_t b = 0; b < ways[WAY_ACROSS].count; b++) {
            const struct function *along = &ways[0].at[a], *across = &ways[1].at[b];
            int64_t sheet = value_of(along, along->whole) * value_of(across, across->whole);
            int64_t need = sheet > 0 ? worth_of_parts(job, lying, along, across) : 0;

            keep_candidate(kept, &count,
                           (struct candidate){along, across, need, in_sheets(need, sheet)});
        }
    covers->count = 0;
    for (size_t i = 0; i < count; i++)
        add_cover(covers, job, &kept[i], arena);
}
