#include "cut/search.h"

#include "cut/bars.h"
#include "cut/rolls.h"
#include "cut/sheets.h"

#include <assert.h>

/* What a method offers. `step` does about `work` units of work, adds what it did to *done and is
 * false when it has run its course; it replaces *best only by a better layout. */
struct method {
    void (*quick)(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout);
    void *(*begin)(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick);
    bool (*step)(void *state, int64_t work, int64_t *done, struct cut_layout *best);
};

static const struct method methods[] = {
    [CUT_BARS] = {bars_cut, bars_begin, bars_step},
    [CUT_SHEETS] = {sheets_cut, sheets_begin, sheets_step},
    [CUT_ROLLS] = {rolls_cut, rolls_begin, rolls_step},
};

static const int64_t allowed[CUT_EFFORTS] = {
    [CUT_QUICK] = 0, [CUT_GOOD] = INT64_C(1000000000), [CUT_BEST] = INT64_C(10000000000)};

struct cut_search {
    const struct method *method;
    void *state;
    int64_t done;
    bool over;
    struct cut_layout best;
};

struct cut_search *cut_begin(enum cut_way way, const struct cut_job *job, struct arena *arena)
{
    struct cut_search *search = ARENA_NEW(arena, struct cut_search);

    assert(way < sizeof methods / sizeof *methods);
    search->method = &methods[way];
    search->method->quick(job, arena, &search->best);
    search->state = search->method->begin(job, arena, &search->best);
    return search;
}

bool cut_step(struct cut_search *search, int64_t work)
{
    int64_t before = search->best.cost;

    if (!search->over)
        search->over = !search->method->step(search->state, work, &search->done, &search->best);
    assert(search->best.cost <= before);
    (void)before;
    return !search->over;
}

const struct cut_layout *cut_best(const struct cut_search *search)
{
    return &search->best;
}

int64_t cut_done(const struct cut_search *search)
{
    return search->done;
}

int64_t cut_allowed(enum cut_effort effort)
{
    assert(effort < CUT_EFFORTS);
    return allowed[effort];
}

void cut_search_all(enum cut_way way, const struct cut_job *job, enum cut_effort effort,
                    struct arena *arena, struct cut_layout *ret_layout)
{
    struct cut_search *search;

    assert(arena->escape && effort < CUT_EFFORTS);
    if (effort == CUT_QUICK) {
        methods[way].quick(job, arena, ret_layout);
        return;
    }
    search = cut_begin(way, job, arena);
    while (search->done < allowed[effort] && cut_step(search, allowed[effort] - search->done))
        ;
    *ret_layout = search->best;
}
