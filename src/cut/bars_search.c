/*
 * The long search for sticks: the linear relaxation by columns, then dives from it. A dive cuts the
 * whole part of every column, rounds the fullest of the rest up, lets the relaxation settle to what
 * is left, and so on; when little is left it is looked through to the end (bars_exact.h). The first
 * dive rounds straight; later ones by chance, from a fixed seed. Small jobs are also looked through
 * as a whole, with more work each time, until nothing cheaper can exist.
 *
 *  1  `counts` and `limits` are what is left of the task while a dive goes on; plan holds the rest.
 *  2  best is a finished plan at all times, and bound is never above its cost.
 *  3  Work is counted; every turn is made from the state alone, however the work is sliced.
 */
#include "cut/bars.h"

#include "base/whole.h"
#include "cut/bars_exact.h"
#include "cut/bars_mix.h"
#include "cut/chance.h"
#include "cut/columns.h"

#include <assert.h>
#include <string.h>

#define REST_PARTS 60             /* parts left that are worth looking through */
#define REST_WORK INT64_C(400000) /* for that, in a dive */
#define WHOLE_WORK INT64_C(4000000)
#define WHOLE_SLICE INT64_C(1000000)
#define WHOLE_PARTS 250
#define IDLE_MOST INT64_C(20000000) /* work after the proof, for fewer sticks and a larger rest */
#define TURN_WORK 1000              /* of a turn, beside what it counts itself */
#define STEPS_A_TURN 8              /* of the simplex method */
#define DIVES_IN_A_MIX 4
#define KINDS_A_DIVE 40              /* so many kinds wait one dive more until mixes are tried */
#define MIXES_WORK INT64_C(20000000) /* after a dive */
#define DIVES_A_WHOLE 4              /* the whole is looked through after every so many */
#define NEARLY 1e-6                  /* nearer than this to a whole number is one */
#define SURE_FIRST 0.9  /* in the first dive, levels above this are rounded up as well */
#define SURE_LATER 0.75 /* in later ones */

/* A dive relaxes and settles by turns; after it some mixes are tried, those packed to the end that
 * are not decided, and at times the whole is looked through. */
enum turn { TURN_RELAX, TURN_SETTLE, TURN_MIX, TURN_PACK, TURN_WHOLE, TURN_OVER };

struct bars_search {
    struct bar_task task;
    const struct cut_layout *quick;
    struct columns columns;  /* of the whole task */
    struct columns *lp;      /* what a dive rounds: that, or a mix's */
    struct bar_mixes *mixes; /* NULL before the relaxation is solved, and when they are of no use */
    struct bar_values values;
    struct bar_exact *exact;
    int64_t *counts, *limits; /* left */
    int64_t *whole_counts, *whole_limits;
    struct bar_plan best, plan;
    int64_t spent; /* price of the plan so far */
    int64_t bound;
    enum turn turn;
    uint64_t chance;
    int dive;
    int64_t whole_work;  /* of the next search of the whole */
    int64_t mixes_begun; /* work done by then */
    int64_t mix_cost;    /* of the mix that is being packed */
    bool decided;        /* the whole was searched: nothing cheaper exists */
    int64_t idle;        /* work since the proof */
    int64_t done;
};

/* ---- chance ---- */

/* From 0 to below 1, in steps of 2^-53. */
static double draw_share(struct bars_search *search)
{
    return (double)(chance_next(&search->chance) >> 11) / 9007199254740992.0;
}

/* ---- plans ---- */

static void keep_if_better(struct bars_search *search)
{
    bar_plan_finish(&search->task, &search->plan);
    assert(search->plan.cost >= search->bound); /* invariant 2: a bound is true of every plan */
    if (bar_plan_better(&search->plan, &search->best)) {
        if (search->plan.cost < search->best.cost)
            search->decided = false;
        bar_plan_copy(&search->task, &search->best, &search->plan);
    }
}

static void begin_dive(struct bars_search *search)
{
    memcpy(search->counts, search->whole_counts, search->task.kind_count * sizeof *search->counts);
    memcpy(search->limits, search->whole_limits, search->task.size_count * sizeof *search->limits);
    bar_plan_clear(&search->plan);
    search->spent = 0;
}

static int64_t parts_left(const struct bars_search *search)
{
    int64_t parts = 0;

    for (size_t k = 0; k < search->task.kind_count; k++)
        parts += search->counts[k];
    return parts;
}

/* ---- begin ---- */

static void take_whole(struct bars_search *search)
{
    struct bar_task *task = &search->task;

    search->whole_counts = ARENA_MANY(task->arena, int64_t, task->kind_count);
    search->whole_limits = ARENA_MANY(task->arena, int64_t, task->size_count);
    search->counts = ARENA_MANY(task->arena, int64_t, task->kind_count);
    search->limits = ARENA_MANY(task->arena, int64_t, task->size_count);
    for (size_t k = 0; k < task->kind_count; k++)
        search->whole_counts[k] = task->kinds[k].count;
    for (size_t s = 0; s < task->size_count; s++)
        search->whole_limits[s] = task->sizes[s].limit;
}

/* The fillings of the quick layout are a good beginning. */
static void add_fillings(struct bars_search *search, const struct bar_plan *plan)
{
    int64_t *takes = ARENA_MANY(search->task.arena, int64_t, search->task.kind_count);

    for (size_t i = 0; i < plan->fillings.count; i++) {
        const struct bar_filling *filling = &plan->fillings.at[i];

        memset(takes, 0, search->task.kind_count * sizeof *takes);
        for (size_t j = filling->first; j < filling->first + filling->count; j++)
            takes[plan->takes.at[j].kind] += plan->takes.at[j].count;
        columns_add(search->lp, filling->size, takes);
    }
}

void *bars_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick)
{
    struct bars_search *search = ARENA_NEW(arena, struct bars_search);
    struct cut_layout *copy = ARENA_NEW(arena, struct cut_layout);

    *copy = *quick;
    search->lp = &search->columns;
    search->quick = copy;
    search->bound = quick->bound;
    search->chance = UINT64_C(0x2545f4914f6cdd1d);
    search->whole_work = WHOLE_WORK;
    if (!bar_task_make(&search->task, job, quick, arena)) {
        search->turn = TURN_OVER;
        return search;
    }
    take_whole(search);
    bar_plan_read(&search->task, quick, &search->best);
    columns_begin(search->lp, &search->task);
    bar_values_begin(&search->values, &search->task);
    search->exact = bar_exact_begin(&search->task);
    begin_dive(search);
    columns_start(search->lp, search->counts, search->limits);
    add_fillings(search, &search->best);
    return search;
}

/* ---- bounds ---- */

static void raise_bound(struct bars_search *search, int64_t bound)
{
    if (bound > search->best.cost)
        bound = search->best.cost;
    if (bound > search->bound)
        search->bound = bound;
    assert(search->bound <= search->best.cost);
}

static void bound_by_values(struct bars_search *search)
{
    const struct bar_task *task = &search->task;

    bar_values_set(&search->values, task, search->lp->dual, search->best.cost);
    search->done += search->values.table.work;
    raise_bound(search, bar_values_bound(&search->values, task, search->whole_counts,
                                         search->whole_limits, search->best.cost));
    if (search->mixes)
        bar_mixes_refute(search->mixes, &search->values);
}

/* ---- rounding ---- */

static void cut_column(struct bars_search *search, size_t row, int64_t times)
{
    assert(row < search->lp->row_count);

    const struct columns *columns = search->lp;
    const struct column *column = &columns->pool.at[columns->basis[row].index];

    assert(times > 0);
    bar_plan_fill(&search->task, &search->plan, column->size, times);
    for (size_t i = column->first; i < column->first + column->count; i++) {
        const struct bar_take *take = &columns->takes.at[i];

        bar_plan_take(&search->task, &search->plan, take->kind, take->count);
        search->counts[take->kind] -= times * take->count;
    }
    if (search->limits[column->size] != CUT_ANY)
        search->limits[column->size] -= times;
    search->spent += times * search->task.sizes[column->size].price;
    columns_take(search->lp, row, times);
}

/* How often the column of a row can be cut whole; 0 where there is none. */
static int64_t times_for(const struct bars_search *search, size_t row)
{
    assert(row < search->lp->row_count);

    const struct columns *columns = search->lp;
    const struct basic *basic = &columns->basis[row];

    if (basic->as != BASIC_FILLING)
        return 0;
    return columns_times_left(columns, &columns->pool.at[basic->index], search->counts,
                              search->limits);
}

static void cut_whole_parts(struct bars_search *search)
{
    for (size_t row = 0; row < search->lp->row_count; row++) {
        int64_t times = (int64_t)(search->lp->level[row] + NEARLY);
        int64_t most = times_for(search, row);

        if (times > 0 && most > 0)
            cut_column(search, row, times < most ? times : most);
    }
}

/* The row that is rounded up next; row_count when no column can be cut. */
static size_t fullest_row(struct bars_search *search, double chance)
{
    const struct columns *columns = search->lp;
    size_t best = columns->row_count;
    double best_level = 0;

    for (size_t row = 0; row < columns->row_count; row++) {
        double level = columns->level[row];

        if (level < NEARLY || times_for(search, row) == 0)
            continue;
        level += chance > 0 ? chance * draw_share(search) : 0;
        if (best == columns->row_count || level > best_level) {
            best = row;
            best_level = level;
        }
    }
    return best;
}

/* Of what no column of the basis takes, the longest part goes into the cheapest stick, alone. False
 * where no stick is left for it. */
static bool cut_one_part(struct bars_search *search)
{
    struct bar_task *task = &search->task;
    size_t kind = 0;
    size_t best = task->size_count;

    assert(parts_left(search) > 0);
    while (search->counts[kind] == 0)
        kind++;
    for (size_t s = 0; s < task->size_count; s++)
        if (search->limits[s] != 0 && task->sizes[s].room >= task->kinds[kind].length &&
            (best == task->size_count || task->sizes[s].price < task->sizes[best].price))
            best = s;
    if (best == task->size_count)
        return false;
    bar_plan_fill(task, &search->plan, best, 1);
    bar_plan_take(task, &search->plan, kind, 1);
    search->counts[kind]--;
    search->limits[best] -= search->limits[best] != CUT_ANY;
    search->spent += task->sizes[best].price;
    columns_start(search->lp, search->counts, search->limits);
    return true;
}

/* ---- turns ---- */

/* The next dive begins where the relaxation of the whole was solved. */
static void dive_again(struct bars_search *search)
{
    search->dive++;
    begin_dive(search);
    columns_back(search->lp, search->counts, search->limits);
    search->turn = TURN_SETTLE;
}

/* The most that what is left may cost, for a plan that is cheaper. */
static int64_t allowed_for_rest(const struct bars_search *search)
{
    return search->best.cost - 1 - search->spent;
}

/* Looks through what is left; true when that ended the dive. */
static bool look_through_rest(struct bars_search *search)
{
    int64_t most = allowed_for_rest(search);
    enum bar_outcome outcome;

    if (parts_left(search) > REST_PARTS || most < 0)
        return most < 0;
    outcome = bar_exact_search(search->exact, &search->values, search->counts, search->limits, most,
                               REST_WORK, &search->plan, &search->done);
    if (outcome == BAR_FOUND)
        keep_if_better(search);
    return outcome != BAR_UNDECIDED;
}

/* Sets out for everything cheaper than the best plan, from the beginning; false where that is of no
 * use. */
static bool begin_whole(struct bars_search *search)
{
    if (search->dive % DIVES_A_WHOLE != 0 || search->decided ||
        search->bound >= search->best.cost || search->task.part_count > WHOLE_PARTS)
        return false;
    begin_dive(search);
    bar_exact_set_out(search->exact, &search->values, search->counts, search->limits,
                      search->best.cost - 1, search->whole_work);
    search->whole_work *= 2;
    search->turn = TURN_WHOLE;
    return true;
}

static void look_through_whole(struct bars_search *search)
{
    enum bar_outcome outcome =
        bar_exact_go_on(search->exact, WHOLE_SLICE, &search->plan, &search->done);

    if (outcome == BAR_GOES_ON)
        return;
    if (outcome == BAR_FOUND)
        keep_if_better(search);
    else if (outcome == BAR_NONE) {
        search->decided = true;
        raise_bound(search, search->best.cost);
    }
    dive_again(search);
}

/* ---- mixes ---- */

/* How much chance weighs beside the levels in a dive: none in the first. */
static double chance_of(int dive)
{
    static const double chances[] = {0.1, 0.4, 0.2, 0.8, 0.3, 1.6};

    return dive == 0 ? 0 : chances[(size_t)dive % (sizeof chances / sizeof *chances)];
}

static void begin_mix(struct bars_search *search)
{
    assert(search->mixes);
    begin_dive(search);
    memcpy(search->limits, bar_mixes_counts(search->mixes),
           search->task.size_count * sizeof *search->limits);
}

/* Rounds the relaxation of a mix, from where it was kept; true when that gave a plan. */
static bool dive_in_mix(struct bars_search *search, double chance)
{
    begin_mix(search);
    columns_back(search->lp, search->counts, search->limits);
    for (;;) {
        int64_t best = search->best.cost;
        size_t row;

        cut_whole_parts(search);
        if (parts_left(search) == 0) {
            keep_if_better(search);
            return search->best.cost < best;
        }
        if (look_through_rest(search))
            return search->best.cost < best;
        row = fullest_row(search, chance);
        if (row == search->lp->row_count)
            return false;
        cut_column(search, row, 1);
        columns_settle(search->lp);
        if (!bar_mixes_relax_rest(search->mixes, &search->done))
            return false;
    }
}

/* A mix that can be packed in fractions: is it packed in a few dives? */
static bool pack_mix(struct bars_search *search)
{
    bool packed = false;

    search->lp = bar_mixes_columns(search->mixes);
    for (int i = 0; i < DIVES_IN_A_MIX && !packed; i++)
        packed = dive_in_mix(search, i == 0 ? 0 : chance_of(i));
    search->lp = &search->columns;
    return packed;
}

/* A mix that no dive packed: packs it to the end, or leaves that open. */
static void begin_packing(struct bars_search *search, int64_t cost)
{
    if (search->task.part_count > WHOLE_PARTS) {
        bar_mixes_set_aside(search->mixes, cost);
        return;
    }
    begin_mix(search);
    bar_mixes_set_out(search->mixes, search->counts, search->limits, &search->done);
    search->mix_cost = cost;
    search->turn = TURN_PACK;
}

static void go_on_packing(struct bars_search *search)
{
    enum bar_outcome outcome =
        bar_mixes_go_on(search->mixes, WHOLE_SLICE, &search->plan, &search->done);

    if (outcome == BAR_GOES_ON)
        return;
    search->turn = TURN_MIX;
    if (outcome == BAR_FOUND)
        keep_if_better(search);
    else if (outcome == BAR_NONE)
        bar_mixes_strike(search->mixes);
    else
        bar_mixes_set_aside(search->mixes, search->mix_cost);
}

/* Tries the cheapest mix that may be; false when no more can come of mixes. */
static bool try_mix(struct bars_search *search)
{
    int64_t cost = 0;
    int64_t open = bar_mixes_open(search->mixes);
    enum mix_outcome outcome =
        bar_mixes_next(search->mixes, search->bound, search->best.cost, &cost, &search->done);

    if (outcome == MIX_TOO_MANY)
        return false;
    if (outcome == MIX_NONE) {
        raise_bound(search, open);
        return bar_mixes_again(search->mixes);
    }
    raise_bound(search, cost < open ? cost : open);
    begin_mix(search);
    if (bar_mixes_relax(search->mixes, search->counts, search->limits, &search->done) &&
        !pack_mix(search))
        begin_packing(search, cost);
    return true;
}

/* Some mixes, after every dive: they tell what rounding cannot. The more kinds, the more dives come
 * first, since the relaxation of a mix begins from nothing. */
static void try_mixes(struct bars_search *search)
{
    bool wanted = search->mixes && (size_t)search->dive * KINDS_A_DIVE >= search->task.kind_count &&
                  search->bound < search->best.cost &&
                  search->done - search->mixes_begun < MIXES_WORK;

    if (wanted && !try_mix(search))
        search->mixes = NULL;
    else if (!wanted && !begin_whole(search))
        dive_again(search);
}

static void end_dive(struct bars_search *search)
{
    search->mixes_begun = search->done;
    search->turn = TURN_MIX;
}

/* The relaxation is solved for what is left: cuts what it says, as far as it is sure. */
static void settle(struct bars_search *search)
{
    double chance = chance_of(search->dive);
    double sure = search->dive == 0 ? SURE_FIRST : SURE_LATER;
    size_t row;

    cut_whole_parts(search);
    if (parts_left(search) == 0) {
        keep_if_better(search);
        end_dive(search);
        return;
    }
    if (look_through_rest(search)) {
        end_dive(search);
        return;
    }
    row = fullest_row(search, chance);
    if (row == search->lp->row_count) {
        if (!cut_one_part(search))
            end_dive(search);
        else
            search->turn = parts_left(search) > 0 ? TURN_RELAX : TURN_SETTLE;
        return;
    }
    do
        cut_column(search, row, 1);
    while ((row = fullest_row(search, 0)) < search->lp->row_count && search->lp->level[row] > sure);
    columns_settle(search->lp);
    search->turn = TURN_RELAX;
}

/* What the relaxation leaves the dive at, the trifles taken off as far as they can reach. */
static double cost_of_dive(const struct bars_search *search)
{
    return (double)search->spent + columns_cost(search->lp) -
           search->lp->dearest * COLUMNS_TRIFLE * (double)(search->task.part_count + 1);
}

/* The relaxation is solved, or as good as any plan can be. */
static bool is_relaxed(struct bars_search *search)
{
    for (int i = 0; i < STEPS_A_TURN; i++)
        if (!columns_step(search->lp))
            return true;
    return cost_of_dive(search) <= (double)search->bound;
}

static void relax(struct bars_search *search)
{
    bool root = search->plan.fillings.count == 0 && search->dive == 0;

    if (!is_relaxed(search))
        return;
    search->turn = TURN_SETTLE;
    if (root) {
        columns_keep(search->lp);
        search->mixes = bar_mixes_begin(&search->task);
        bound_by_values(search);
    } else if (cost_of_dive(search) > (double)search->best.cost) {
        end_dive(search);
    }
}

/* ---- step ---- */

static int64_t fewest_sticks(const struct bars_search *search)
{
    int64_t total = 0;

    for (size_t k = 0; k < search->task.kind_count; k++)
        total += search->whole_counts[k] * search->task.kinds[k].length;
    return whole_divide_up(total, search->task.longest);
}

/* The cost is proven, and enough was done for fewer sticks. */
static bool is_over(const struct bars_search *search)
{
    bool proven = search->decided || search->bound >= search->best.cost;

    return search->turn == TURN_OVER ||
           (proven && (search->idle >= IDLE_MOST || search->best.sticks <= fewest_sticks(search)));
}

static void (*const turns[TURN_OVER])(struct bars_search *) = {
    [TURN_RELAX] = relax,
    [TURN_SETTLE] = settle,
    [TURN_MIX] = try_mixes,
    [TURN_PACK] = go_on_packing,
    [TURN_WHOLE] = look_through_whole,
};

static void take_turn(struct bars_search *search)
{
    int64_t before = search->done + search->lp->work;

    assert(search->turn < TURN_OVER);
    turns[search->turn](search);
    search->done += TURN_WORK;
    if (search->decided || search->bound >= search->best.cost)
        search->idle += search->done + search->lp->work - before;
}

bool bars_step(void *state, int64_t work, int64_t *done, struct cut_layout *best)
{
    struct bars_search *search = state;
    int64_t begun = search->done + search->lp->work;
    struct bar_plan before = search->best;

    if (search->turn == TURN_OVER)
        return false;
    while (!is_over(search) && search->done + search->lp->work - begun < work)
        take_turn(search);
    *done += search->done + search->lp->work - begun;
    if (bar_plan_better(&search->best, &before))
        bar_plan_lay_out(&search->task, &search->best, search->quick, best);
    if (search->task.priced)
        best->bound = search->bound;
    return !is_over(search);
}
