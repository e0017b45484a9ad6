#include "cut/shortfall.h"

#include <assert.h>

/* What a part measures the way `across` says, as it lies; turned parts the other way. */
static int64_t measure(const struct cut_piece *part, bool across, bool turned)
{
    return across != turned ? part->width : part->length;
}

static bool may_measure(const struct cut_piece *part, bool across, int64_t measured)
{
    return measure(part, across, false) == measured ||
           (part->may_turn && measure(part, across, true) == measured);
}

/* How many parts may measure this; 0 where an earlier one than `part` does. */
static size_t count_alike(const struct cut_job *job, size_t part, bool across, int64_t measured)
{
    size_t count = 0;

    for (size_t i = 0; i < job->part_count; i++) {
        if (!may_measure(&job->parts[i], across, measured))
            continue;
        if (i < part)
            return 0;
        count++;
    }
    return count;
}

static void look_at(const struct cut_job *job, struct arena *arena, struct sheet_shortfall row,
                    int64_t measured, struct sheet_shortfalls *ret_found)
{
    const struct cut_size *size = &job->sizes[row.size];
    size_t alike = count_alike(job, row.part, row.across, measured);

    row.has = (row.across ? size->width : size->length) - 2 * job->trim;
    if (measured <= 0 || row.has / measured < 2 || (int64_t)alike < row.has / measured)
        return;
    row.number = (size_t)(row.has / measured);
    row.needs = (int64_t)row.number * measured + ((int64_t)row.number - 1) * job->kerf;
    assert(row.number >= 2 && (int64_t)row.number * measured <= row.has);
    if (row.needs > row.has)
        *LIST_ADD(arena, &ret_found->list) = row;
}

void sheets_shortfalls(const struct cut_job *job, struct arena *arena,
                       struct sheet_shortfalls *ret_found)
{
    *ret_found = (struct sheet_shortfalls){0};
    for (size_t p = 0; p < job->part_count; p++)
        for (size_t s = 0; s < job->size_count; s++)
            for (int across = 0; across < 2; across++) {
                const struct cut_piece *part = &job->parts[p];
                struct sheet_shortfall row = {.part = p, .size = s, .across = across};
                int64_t straight = measure(part, across, false);
                int64_t turned = measure(part, across, true);

                look_at(job, arena, row, straight, ret_found);
                if (part->may_turn && turned != straight)
                    look_at(job, arena, row, turned, ret_found);
            }
}
