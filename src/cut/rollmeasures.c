/*
 * A measure is the values of parts that one linear program of slices found; which slices are its
 * own, all or those on one line of the repeat, it says itself. Those of all parts come first; then
 * some are learnt, of what is left in a state that no measure refutes yet.
 */
#include "cut/rollsweep_state.h"

#include "base/quantity.h"

#include <assert.h>

#define LEARN_PARTS 3 /* left, for a measure to be learnt */
#define LEARN_SOON 1  /* times the work of learning a measure, until the next one is learnt; */
#define LEARN_LATE 64 /* doubled up to this as long as they do not help */

/* Slices from one time to before another. */
static int64_t slices_between(const struct roll_sweep *sweep, const struct measure *measure,
                              int64_t from, int64_t to)
{
    int64_t repeat = sweep->job->pattern.along;
    int64_t line;

    if (measure->line == ROWS_ALL)
        return to - from;
    line = sweep->begin[sweep->rows.group] + measure->line;
    return whole_divide_up(to - line, repeat) - whole_divide_up(from - line, repeat);
}

static bool measured(const struct roll_sweep *sweep, const struct measure *measure)
{
    return measure->line == ROWS_ALL || sweep->known[sweep->rows.group];
}

/* Of a line it means something only when the origin of the group is known. */
static void set_spare(const struct roll_sweep *sweep, struct measure *measure)
{
    measure->spare =
        measure->worth * slices_between(sweep, measure, 0, sweep->target) - measure->total;
}

void sweep_set_spares(struct roll_sweep *sweep)
{
    for (size_t m = 0; m < sweep->measure_count; m++)
        set_spare(sweep, &sweep->measures[m]);
}

static void set_values(struct roll_sweep *sweep, size_t measure)
{
    const struct roll_rows *rows = &sweep->rows;
    int64_t half = sweep->job->pattern.half_drop ? sweep->job->pattern.along / 2 : 0;

    for (size_t s = 0; s < sweep->stay_count; s++) {
        struct stay *stay = &sweep->stays[s];
        const struct roll_part *part = rows->kinds[stay->kind].part;
        bool dropped = half > 0 && stay->along != part->along;
        const struct slice_way *way = roll_rows_way(rows, stay->kind, stay->turned, dropped);

        stay->value[measure] = way ? way->value : 0;
        stay->over[measure] = way ? way->value * way->share - roll_rows_worth(rows, stay->kind) : 0;
    }
}

/* By the values that the rows found last. */
static void set_measure(struct roll_sweep *sweep, size_t index)
{
    const struct roll_rows *rows = &sweep->rows;
    struct measure *measure = &sweep->measures[index];

    *measure = (struct measure){.line = rows->line, .worth = rows->slices.worth};
    for (size_t k = 0; k < rows->kind_count; k++)
        measure->total += rows->kinds[k].count * roll_rows_worth(rows, k);
    set_spare(sweep, measure);
    set_values(sweep, index);
}

static void add_measure(struct roll_sweep *sweep)
{
    if (sweep->rows.slices.worth > 0)
        set_measure(sweep, sweep->measure_count++);
}

static void add_area(struct roll_sweep *sweep)
{
    struct measure *measure = &sweep->measures[sweep->measure_count];

    *measure =
        (struct measure){.line = ROWS_ALL, .worth = sweep->job->width, .total = sweep->job->area};
    set_spare(sweep, measure);
    for (size_t s = 0; s < sweep->stay_count; s++) {
        sweep->stays[s].value[sweep->measure_count] = sweep->stays[s].width;
        sweep->stays[s].over[sweep->measure_count] = 0;
    }
    sweep->measure_count++;
}

void sweep_set_measures(struct roll_sweep *sweep)
{
    struct roll_rows *rows = &sweep->rows;

    sweep->measure_count = 0;
    sweep->sharpest = 0;
    sweep->line_count = roll_rows_lines(rows, sweep->lines);
    rows->line = ROWS_ALL;
    (void)roll_rows_slices(rows);
    add_measure(sweep);
    add_area(sweep);
    for (size_t i = 0; i < sweep->line_count && sweep->measure_count < MEASURES_FIRST; i++) {
        rows->line = sweep->lines[i];
        (void)roll_rows_slices(rows);
        add_measure(sweep);
    }
    sweep->measures_kept = sweep->measure_count;
    sweep->next_line = 0;
    sweep->learn_at = 0;
    sweep->learn_for = LEARN_SOON;
}

/* ---- while the sweep goes on ---- */

void sweep_lose(struct roll_sweep *sweep, int64_t from, int64_t to, int sign)
{
    for (size_t m = 0; m < sweep->measure_count; m++) {
        const struct measure *measure = &sweep->measures[m];

        if (measured(sweep, measure))
            sweep->lost[m] +=
                sign * (measure->worth - sweep->held[m]) * slices_between(sweep, measure, from, to);
    }
}

bool sweep_lost_too_much(struct roll_sweep *sweep)
{
    for (size_t m = 0; m < sweep->measure_count; m++)
        if (sweep->lost[m] > sweep->measures[m].spare && measured(sweep, &sweep->measures[m])) {
            sweep->measures[m].hits++;
            return true;
        }
    return false;
}

int64_t sweep_share_lost(const struct roll_sweep *sweep)
{
    int64_t most = 0;

    for (size_t m = 0; m < sweep->measure_count; m++) {
        const struct measure *measure = &sweep->measures[m];
        int64_t share;

        if (measure->spare < 0 || !measured(sweep, measure))
            continue;
        share = sweep->lost[m] / (measure->spare / SHARE_WHOLE + 1);
        most = share > most ? share : most;
    }
    return most;
}

static bool falls_short(const struct roll_sweep *sweep, size_t index, int64_t to, int64_t more)
{
    const struct measure *measure = &sweep->measures[index];
    int64_t missing = measure->worth - sweep->held[index] - more;

    if (missing < 0 || !measured(sweep, measure))
        return false;
    return sweep->lost[index] + missing * slices_between(sweep, measure, sweep->time, to) >
           measure->spare;
}

bool sweep_falls_short(const struct roll_sweep *sweep, int64_t to, int64_t more)
{
    return falls_short(sweep, sweep->sharpest, to, more);
}

bool sweep_would_lose(struct roll_sweep *sweep, int64_t to)
{
    size_t m = sweep->sharpest;

    if (!falls_short(sweep, m, to, 0))
        for (m = 0; m < sweep->measure_count && !falls_short(sweep, m, to, 0);)
            m++;
    if (m == sweep->measure_count)
        return false;
    sweep->sharpest = m;
    sweep->measures[m].hits++;
    return true;
}

/* ---- measures learnt on the way ---- */

/* What is left of each kind, with what still lies there. */
static void set_wanted(struct roll_sweep *sweep)
{
    for (size_t k = 0; k < sweep->rows.kind_count; k++)
        sweep->wanted[k] = (double)sweep->left[k];
    for (size_t i = 0; i < sweep->lying_count; i++) {
        const struct start *start = &sweep->starts[sweep->lying[i]];

        sweep->wanted[sweep->stays[start->stay].kind] +=
            (double)(start->far - sweep->time) / (double)(start->far - start->near);
    }
}

/* What is held and was lost so far by a measure that is new. Of a line nothing is lost before the
 * origin of its group was known. */
static void catch_up(struct roll_sweep *sweep, size_t index)
{
    const struct measure *measure = &sweep->measures[index];
    int64_t since = measure->line == ROWS_ALL ? 0 : sweep->known_since;

    sweep->held[index] = 0;
    sweep->lost[index] = measure->worth * slices_between(sweep, measure, since, sweep->time);
    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct start *start = &sweep->starts[i];
        const struct stay *stay = &sweep->stays[start->stay];
        int64_t near = start->near > since ? start->near : since;
        int64_t far = start->far < sweep->time ? start->far : sweep->time;

        sweep->lost[index] += stay->over[index];
        if (far > near)
            sweep->lost[index] -= stay->value[index] * slices_between(sweep, measure, near, far);
        if (start->far > sweep->time)
            sweep->held[index] += stay->value[index];
    }
}

/* Where a new measure goes: beside the others, or for the one that helped least. */
static size_t slot_for_measure(struct roll_sweep *sweep)
{
    size_t best = sweep->measures_kept;

    if (sweep->measure_count < MEASURES_MOST)
        return sweep->measure_count++;
    for (size_t m = best + 1; m < sweep->measure_count; m++)
        if (sweep->measures[m].hits < sweep->measures[best].hits)
            best = m;
    for (size_t m = sweep->measures_kept; m < sweep->measure_count; m++)
        sweep->measures[m].hits /= 2;
    return best;
}

bool sweep_learn(struct roll_sweep *sweep)
{
    struct roll_rows *rows = &sweep->rows;
    bool lines = rows->group != ROLL_NO_GROUP && sweep->known[rows->group];
    size_t turn, slot;
    bool failed;

    if (sweep->left_count < LEARN_PARTS)
        return false;
    turn = sweep->next_line++ % (1 + (lines ? sweep->line_count : 0));
    set_wanted(sweep);
    rows->work = 0;
    rows->line = turn == 0 ? ROWS_ALL : sweep->lines[turn - 1];
    rows->wanted = sweep->wanted;
    (void)roll_rows_slices(rows);
    rows->wanted = NULL;
    sweep->work += rows->work;
    if (rows->slices.worth == 0)
        return false;
    slot = sweep->measure_count;
    set_measure(sweep, slot);
    catch_up(sweep, slot);
    failed = sweep->lost[slot] > sweep->measures[slot].spare;
    if (failed) {
        slot = slot_for_measure(sweep);
        set_measure(sweep, slot);
        catch_up(sweep, slot);
        sweep->measures[slot].hits = 1;
    }
    return failed;
}

bool sweep_learn_in_turn(struct roll_sweep *sweep)
{
    bool failed;

    if (sweep->work < sweep->learn_at || sweep->left_count < LEARN_PARTS)
        return false;
    failed = sweep_learn(sweep);
    if (sweep->rows.slices.worth == 0)
        return false; /* the next line may show more at once */
    sweep->learn_for = failed ? LEARN_SOON : sweep->learn_for * 2;
    if (sweep->learn_for > LEARN_LATE)
        sweep->learn_for = LEARN_LATE;
    sweep->learn_at = sweep->work + sweep->learn_for * sweep->rows.work;
    return failed;
}
