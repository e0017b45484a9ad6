/*
 * Parts are started one after another from the beginning of the roll on. At a time (a place along)
 * any number of them starts beside those that still lie there, as far as the width goes; then the
 * sweep advances to the next time at which something ends, or at which the pattern lets something
 * begin. Where free parts lie across is looked for when all have started ("seated"); matched ones
 * start in one of their places.
 *
 *  1. Any layout can be pushed together: then each part starts where another ends or at the
 *     beginning, or at the first time after that which the pattern lets it have. So no other times
 *     are tried. A group that is not alone is pushed as a whole (rollphases.c).
 *  2. A measure gives each part a value; no slice of the roll holds more than its worth. What
 *     slices so far held less than that is lost, and no more may be lost than the whole roll is
 *     worth over what all parts are (rollmeasures.c).
 *  3. A state is what is left to start and what still lies there, both from now on. Where it failed
 *     as soon or sooner, it fails (rollfailed.c).
 *  4. SWEEP_NEVER needs 1 to 3 for every origin of the group across, and every phase.
 *  5. Where the pattern does not say when it starts, a part does not start where it could have lain
 *     just before as well, beside what lay there: of all ways to let the same parts start, the one
 *     with the least sum of times is like that. It may be one that has no seats where another has;
 *     so where seats were not found all is looked for anew without this rule.
 */
#include "cut/rollsweep_state.h"

#include "base/quantity.h"

#include <assert.h>
#include <string.h>

#define NEVER_AT INT64_MAX

#define WORK_STEP 80  /* units for each part started or time gone on to, */
#define WORK_STAY 6   /* for each way of lying that is looked at, */
#define WORK_ROOMS 60 /* and for the room between what is tied */

#define FORGOTTEN_MOST 100000 /* times for a target */

/* ---- ways of lying ---- */

static void add_stay(struct roll_sweep *sweep, size_t kind, bool turned, int64_t across,
                     bool dropped)
{
    const struct roll_part *part = sweep->rows.kinds[kind].part;

    sweep->stays[sweep->stay_count++] =
        (struct stay){.kind = kind,
                      .group = part->group,
                      .width = turned ? part->length : part->width,
                      .length = turned ? part->width : part->length,
                      .along = part->along + (dropped ? sweep->job->pattern.along / 2 : 0),
                      .across = across,
                      .turned = turned};
}

static void add_stays(struct roll_sweep *sweep, size_t kind)
{
    assert(kind < sweep->rows.kind_count);

    const struct roll_job *job = sweep->job;
    const struct roll_part *part = sweep->rows.kinds[kind].part;
    int64_t repeat = job->pattern.across, first;

    if (part->group == ROLL_NO_GROUP || part->group != sweep->rows.group || repeat == 0) {
        for (int turned = 0; turned < 1 + part->may_turn; turned++)
            if ((turned ? part->length : part->width) <= job->width)
                add_stay(sweep, kind, turned, FREE, false);
        return;
    }
    first = whole_modulo(sweep->rows.origin + part->across, repeat);
    for (int64_t at = first; at + part->width <= job->width; at += repeat)
        add_stay(sweep, kind, false, at,
                 job->pattern.half_drop &&
                     whole_modulo((at - sweep->rows.origin - part->across) / repeat, 2) != 0);
}

/* The most stays that any origin gives. */
static size_t stays_most(const struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;
    size_t places = 2;

    if (job->pattern.across > 0)
        places += (size_t)(job->width / job->pattern.across);
    return places * sweep->rows.kind_count;
}

/* ---- begin ---- */

void sweep_start_over(struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;

    for (size_t k = 0; k < sweep->rows.kind_count; k++)
        sweep->left[k] = sweep->rows.kinds[k].count;
    for (size_t g = 0; g < job->group_count; g++) {
        sweep->known[g] = g == job->pinned;
        sweep->begin[g] = 0;
    }
    if (sweep->phase > 0) {
        sweep->known[0] = true;
        sweep->begin[0] = sweep->phases[sweep->phase - 1];
    }
    sweep->advanced = NEVER_ADVANCED;
    sweep->left_count = job->count;
    sweep->start_count = sweep->lying_count = 0;
    sweep->time = sweep->event = sweep->width = sweep->known_since = 0;
    memset(sweep->held, 0, sizeof sweep->held);
    memset(sweep->lost, 0, sizeof sweep->lost);
    sweep->cursor = 0;
    sweep->steps.count = 0;
    sweep->memo.round++;
    if (sweep->rows.group != ROLL_NO_GROUP && sweep->known[sweep->rows.group])
        sweep_set_spares(sweep);
}

/* How far it is to the next of the origins, round the repeat; so far all lie in the same places. */
static int64_t slack_of(const struct roll_sweep *sweep)
{
    int64_t repeat = sweep->job->pattern.across, slack = repeat;

    if (repeat == 0 || sweep->rows.group == sweep->job->pinned)
        return 0;
    for (size_t i = 0; i < sweep->origin_count; i++) {
        int64_t to = whole_modulo(sweep->origins[i] - sweep->origins[sweep->origin], repeat);

        if (to > 0 && to < slack)
            slack = to;
    }
    return slack - 1;
}

/* Stays, measures and a start for the origin that is to be looked at. */
void sweep_open(struct roll_sweep *sweep)
{
    sweep->unjudged = sweep->unjudged || (sweep->phase == 0 && !sweep_pushes_whole(sweep->job));
    sweep->rows.origin = sweep->origins[sweep->origin];
    sweep->rows.work = 0;
    sweep->slack = slack_of(sweep);
    sweep->shift = 0;
    sweep->stay_count = 0;
    for (size_t k = 0; k < sweep->rows.kind_count; k++) {
        size_t first = sweep->stay_count;

        add_stays(sweep, k);
        sweep->shortest[k] = INT64_MAX;
        for (size_t s = first; s < sweep->stay_count; s++)
            if (sweep->stays[s].length < sweep->shortest[k])
                sweep->shortest[k] = sweep->stays[s].length;
    }
    sweep_set_measures(sweep);
    sweep->work += sweep->rows.work;
    sweep->compact = true;
    sweep->unseated = false;
    sweep_start_over(sweep);
    sweep->opened = true;
}

static size_t largest_group(const struct roll_job *job)
{
    size_t best = ROLL_NO_GROUP;
    int64_t most = -1;

    for (size_t g = 0; g < job->group_count; g++) {
        int64_t area = 0;

        for (size_t i = 0; i < job->count; i++)
            area += job->parts[i].group == g ? job->parts[i].area : 0;
        if (area > most) {
            most = area;
            best = g;
        }
    }
    return best;
}

static struct seating make_seating(const struct roll_job *job, struct arena *arena)
{
    size_t seats = job->count + job->blemish_count;
    size_t pairs = job->count * (job->count + job->blemish_count);

    return (struct seating){.seats = ARENA_MANY(arena, struct seat, seats),
                            .pairs = ARENA_MANY(arena, struct seat_pair, pairs),
                            .gaps = ARENA_MANY(arena, struct seat_gap, pairs),
                            .most = ARENA_MANY(arena, int64_t, SEAT_PLACES_MOST),
                            .at = ARENA_MANY(arena, int64_t, SEAT_PLACES_MOST)};
}

struct roll_sweep *roll_sweep_new(const struct roll_job *job, struct arena *arena)
{
    struct roll_sweep *sweep = ARENA_NEW(arena, struct roll_sweep);
    size_t kinds;

    assert(job->count > 0 && job->count <= SWEEP_PARTS);
    sweep->job = job;
    sweep->arena = arena;
    sweep->rows = roll_rows_begin(job, arena);
    sweep->rows.group = largest_group(job);
    kinds = sweep->rows.kind_count;
    sweep->origins = ARENA_MANY(arena, int64_t, 2 * kinds + 1);
    sweep->origin_count = roll_rows_origins(&sweep->rows, sweep->origins);
    sweep->least = ARENA_MANY(arena, int64_t, sweep->origin_count);
    for (size_t i = 0; i < sweep->origin_count; i++)
        sweep->least[i] = -1;
    sweep->stays = ARENA_MANY(arena, struct stay, stays_most(sweep));
    sweep->lines = ARENA_MANY(arena, int64_t, 2 * kinds);
    sweep->wanted = ARENA_MANY(arena, double, kinds);
    sweep->left = ARENA_MANY(arena, int64_t, kinds);
    sweep->shortest = ARENA_MANY(arena, int64_t, kinds);
    sweep->known = ARENA_MANY(arena, bool, job->group_count);
    sweep->begin = ARENA_MANY(arena, int64_t, job->group_count);
    sweep->starts = ARENA_MANY(arena, struct start, job->count);
    sweep->spots = ARENA_MANY(arena, struct roll_spot, job->count);
    sweep->refuted = ARENA_MANY(arena, bool, sweep->origin_count);
    sweep->memo = sweep_memo(arena);
    sweep->seating = make_seating(job, arena);
    if (!sweep_pushes_whole(job) && job->group_count == 1)
        sweep_find_phases(sweep);
    return sweep;
}

void roll_sweep_aim(struct roll_sweep *sweep, int64_t target)
{
    sweep->target = target;
    sweep->origin = sweep->phase = 0;
    sweep->opened = false;
    sweep->unjudged = false;
    sweep->forgotten = 0;
}

/* ---- on and back ---- */

static bool is_timed(const struct roll_sweep *sweep, size_t group)
{
    return group != ROLL_NO_GROUP && sweep->job->pattern.along > 0;
}

/* Whether the pattern and rule 1 let something that lies like this start now. */
static bool is_time(const struct roll_sweep *sweep, const struct stay *stay)
{
    int64_t repeat = sweep->job->pattern.along;

    if (!is_timed(sweep, stay->group) || !sweep->known[stay->group])
        return sweep->time == sweep->event;
    return sweep->time - sweep->event < repeat &&
           whole_modulo(sweep->time - sweep->begin[stay->group] - stay->along, repeat) == 0;
}

static bool place_free(const struct roll_sweep *sweep, struct abreast abreast,
                       const struct stay *stay)
{
    if (stay->across == FREE)
        return true;
    for (size_t i = 0; i < abreast.count; i++) {
        const struct start *start = &sweep->starts[abreast.starts[i]];

        if (start->across != FREE && start->across < stay->across + stay->width &&
            stay->across < start->across + sweep->stays[start->stay].width)
            return false;
    }
    return true;
}

/* Whether a part has room beside those that lie there. */
static bool fits_beside(const struct roll_sweep *sweep, struct abreast abreast, int64_t width,
                        const struct stay *stay)
{
    return width + stay->width <= sweep->job->width && place_free(sweep, abreast, stay) &&
           sweep_has_room(sweep, abreast, stay);
}

/* Rule 5. */
static bool could_lie_before(const struct roll_sweep *sweep, const struct stay *stay)
{
    const struct step *step;

    if (!sweep->compact || sweep->advanced == NEVER_ADVANCED || is_timed(sweep, stay->group))
        return false;
    step = &sweep->steps.at[sweep->advanced];
    return fits_beside(sweep, (struct abreast){step->lying, step->lying_count}, step->width, stay);
}

bool sweep_lets_start(const struct roll_sweep *sweep, const struct stay *stay)
{
    const struct abreast now = {sweep->lying, sweep->lying_count};

    return is_time(sweep, stay) && fits_beside(sweep, now, sweep->width, stay) &&
           !could_lie_before(sweep, stay);
}

static struct step *push(struct roll_sweep *sweep)
{
    struct step *step = LIST_ADD(sweep->arena, &sweep->steps);

    step->time = sweep->time;
    step->event = sweep->event;
    step->advanced = sweep->advanced;
    return step;
}

void sweep_start(struct roll_sweep *sweep, size_t index)
{
    assert(index < sweep->stay_count);

    const struct stay *stay = &sweep->stays[index];
    struct step *step = push(sweep);

    step->advance = false;
    step->stay = index;
    step->known_before = true;
    if (is_timed(sweep, stay->group) && !sweep->known[stay->group]) {
        step->known_before = false;
        sweep->known[stay->group] = true;
        sweep->begin[stay->group] = sweep->time - stay->along;
        if (stay->group == sweep->rows.group) {
            sweep->known_since = sweep->time;
            sweep_set_spares(sweep);
        }
    }
    sweep->starts[sweep->start_count] =
        (struct start){index, sweep->time, sweep->time + stay->length, stay->across};
    sweep->lying[sweep->lying_count++] = (uint8_t)sweep->start_count++;
    sweep->left[stay->kind]--;
    sweep->left_count--;
    sweep->width += stay->width;
    for (size_t m = 0; m < sweep->measure_count; m++) {
        sweep->held[m] += stay->value[m];
        sweep->lost[m] += stay->over[m];
    }
    sweep->cursor = index;
}

static void undo_start(struct roll_sweep *sweep, const struct step *step)
{
    const struct stay *stay = &sweep->stays[step->stay];

    if (!step->known_before)
        sweep->known[stay->group] = false;
    sweep->start_count--;
    for (size_t i = 0; i < sweep->lying_count; i++)
        if (sweep->lying[i] == sweep->start_count)
            sweep->lying[i] = sweep->lying[--sweep->lying_count];
    sweep->left[stay->kind]++;
    sweep->left_count++;
    sweep->width -= stay->width;
    for (size_t m = 0; m < sweep->measure_count; m++) {
        sweep->held[m] -= stay->value[m];
        sweep->lost[m] -= stay->over[m];
    }
    sweep->cursor = step->stay + 1;
}

/* The next time at which something ends or, not too late after that, may begin by the pattern. */
static int64_t next_time(const struct roll_sweep *sweep)
{
    int64_t repeat = sweep->job->pattern.along, next = NEVER_AT;

    for (size_t i = 0; i < sweep->lying_count; i++)
        if (sweep->starts[sweep->lying[i]].far < next)
            next = sweep->starts[sweep->lying[i]].far;
    for (size_t s = 0; s < sweep->stay_count && repeat > 0; s++) {
        const struct stay *stay = &sweep->stays[s];
        int64_t at;

        if (sweep->left[stay->kind] == 0 || !is_timed(sweep, stay->group) ||
            !sweep->known[stay->group])
            continue;
        at = sweep->time + repeat -
             whole_modulo(sweep->time - sweep->begin[stay->group] - stay->along, repeat);
        if (at - sweep->event < repeat && at < next)
            next = at;
    }
    return next;
}

static bool too_late(const struct roll_sweep *sweep)
{
    for (size_t k = 0; k < sweep->rows.kind_count; k++)
        if (sweep->left[k] > 0 && sweep->time + sweep->shortest[k] > sweep->target)
            return true;
    return false;
}

static void end_lying(struct roll_sweep *sweep)
{
    size_t kept = 0;

    for (size_t i = 0; i < sweep->lying_count; i++) {
        const struct start *of = &sweep->starts[sweep->lying[i]];
        const struct stay *stay = &sweep->stays[of->stay];

        if (of->far > sweep->time) {
            sweep->lying[kept++] = sweep->lying[i];
            continue;
        }
        sweep->event = sweep->time;
        sweep->width -= stay->width;
        for (size_t m = 0; m < sweep->measure_count; m++)
            sweep->held[m] -= stay->value[m];
    }
    sweep->lying_count = kept;
}

static void undo_advance(struct roll_sweep *sweep, const struct step *step)
{
    int64_t time = sweep->time;

    sweep->time = step->time;
    sweep->event = step->event;
    sweep->advanced = step->advanced;
    sweep->lying_count = step->lying_count;
    memcpy(sweep->lying, step->lying, step->lying_count);
    sweep->width = 0;
    memset(sweep->held, 0, sizeof sweep->held);
    for (size_t i = 0; i < sweep->lying_count; i++) {
        const struct stay *stay = &sweep->stays[sweep->starts[sweep->lying[i]].stay];

        sweep->width += stay->width;
        for (size_t m = 0; m < sweep->measure_count; m++)
            sweep->held[m] += stay->value[m];
    }
    sweep_lose(sweep, sweep->time, time, -1);
    sweep->cursor = sweep->stay_count + 1;
}

void sweep_go_back(struct roll_sweep *sweep)
{
    const struct step *step = &sweep->steps.at[--sweep->steps.count];

    if (step->advance)
        undo_advance(sweep, step);
    else
        undo_start(sweep, step);
}

/* Whether what has started finds no seats. Rule 5 is given up for that first; without it the states
 * on the way here did not fail by themselves, and are forgotten as long as there are few. */
static bool lacks_seats(struct roll_sweep *sweep)
{
    enum seated seated = sweep_find_seats(sweep);

    if (seated == SEATS_FOUND || (seated == SEATS_UNKNOWN && sweep->left_count > 0))
        return false;
    if (sweep->compact)
        sweep->unseated = true;
    else if (seated == SEATS_NEVER && sweep->forgotten < FORGOTTEN_MOST)
        sweep_forget_path(sweep);
    else
        sweep->unjudged = true;
    return true;
}

/* Once seats were missing they are looked for whenever something has started, before more is. */
static bool is_stuck(struct roll_sweep *sweep)
{
    return sweep->forgotten > 0 && !sweep->compact && sweep->steps.count > 0 &&
           !sweep->steps.at[sweep->steps.count - 1].advance && lacks_seats(sweep);
}

static void go_on_to(struct roll_sweep *sweep, int64_t next)
{
    struct step *step = push(sweep);

    sweep->advanced = sweep->steps.count - 1;
    step->advance = true;
    step->width = sweep->width;
    step->lying_count = (uint8_t)sweep->lying_count;
    memcpy(step->lying, sweep->lying, sweep->lying_count);
    sweep_lose(sweep, sweep->time, next, 1);
    sweep->time = next;
    end_lying(sweep);
    sweep->cursor = 0;
}

void sweep_go_on(struct roll_sweep *sweep)
{
    go_on_to(sweep, next_time(sweep));
}

static void advance(struct roll_sweep *sweep)
{
    int64_t next = next_time(sweep);

    sweep->cursor = sweep->stay_count + 1;
    if (next == NEVER_AT || next >= sweep->target || sweep_would_lose(sweep, next) ||
        is_stuck(sweep))
        return;
    go_on_to(sweep, next);
    if (too_late(sweep) || sweep_known_to_fail(sweep) || sweep_learn_in_turn(sweep)) {
        sweep_go_back(sweep);
        return;
    }
    memcpy(sweep->steps.at[sweep->advanced].hash, sweep->memo.hash, sizeof sweep->memo.hash);
}

/*
 * Whether what can still start now is too little, by the measure that refuted last, whichever of it
 * does: by then nothing has ended yet. Where the pattern counts along it is not asked, for then
 * times are many and short.
 */
static bool starts_fall_short(struct roll_sweep *sweep)
{
    int64_t room = sweep->job->width - sweep->width, end = NEVER_AT, most = 0, sum = 0;

    if (sweep->job->pattern.along > 0)
        return false;
    for (size_t i = 0; i < sweep->lying_count; i++)
        if (sweep->starts[sweep->lying[i]].far < end)
            end = sweep->starts[sweep->lying[i]].far;
    for (size_t s = sweep->cursor; s < sweep->stay_count; s++) {
        const struct stay *stay = &sweep->stays[s];
        int64_t value = stay->value[sweep->sharpest];

        if (value == 0 && sweep->time + stay->length >= end)
            continue;
        if (!sweep_can_start(sweep, stay))
            continue;
        if (sweep->time + stay->length < end)
            end = sweep->time + stay->length;
        sum += sweep->left[stay->kind] * value;
        if (value * room > most * stay->width)
            most = whole_divide_up(value * room, stay->width);
    }
    sweep->work += WORK_STAY * (int64_t)(sweep->stay_count - sweep->cursor);
    return end < sweep->target && sweep_falls_short(sweep, end, sum < most ? sum : most);
}

/* Tries what comes next of starting, advancing and going back. False when there is nothing left. */
bool sweep_move(struct roll_sweep *sweep)
{
    sweep->work += WORK_STEP;
    while (sweep->cursor < sweep->stay_count &&
           !sweep_can_start(sweep, &sweep->stays[sweep->cursor])) {
        sweep->cursor++;
        sweep->work += WORK_STAY;
    }
    if (sweep->job->pattern.across > 0)
        sweep->work += WORK_ROOMS;
    if (sweep->cursor < sweep->stay_count && starts_fall_short(sweep)) {
        sweep->cursor = sweep->stay_count + 1;
    } else if (sweep->cursor < sweep->stay_count) {
        sweep_start(sweep, sweep->cursor);
        if (sweep_lost_too_much(sweep))
            sweep_go_back(sweep);
    } else if (sweep->cursor == sweep->stay_count) {
        advance(sweep);
    } else if (sweep->steps.count == 0) {
        return false;
    } else {
        sweep_go_back(sweep);
    }
    return true;
}

/* ---- the verdict ---- */

static enum sweep_verdict sweep_origin(struct roll_sweep *sweep, int64_t end)
{
    if (!sweep->opened)
        sweep_open(sweep);
    while (sweep->work < end) {
        if (!sweep_move(sweep)) {
            if (!sweep->unseated)
                return SWEEP_NEVER;
            sweep->compact = sweep->unseated = false;
            sweep_start_over(sweep);
        }
        if (sweep->left_count > 0)
            continue;
        if (!lacks_seats(sweep)) {
            sweep_set_spots(sweep);
            return SWEEP_FITS;
        }
        sweep_go_back(sweep);
    }
    return SWEEP_OPEN;
}

/* Whether slices show that the target is too short for the origin that is looked at. */
static bool shown_too_short(struct roll_sweep *sweep)
{
    int64_t *least = &sweep->least[sweep->origin];
    bool shown;

    sweep->rows.origin = sweep->origins[sweep->origin];
    sweep->rows.work = 0;
    if (*least < 0)
        *least = roll_rows_least(&sweep->rows, INT64_MAX);
    shown = *least > sweep->target || roll_rows_refute(&sweep->rows, sweep->target);
    sweep->work += sweep->rows.work;
    return shown;
}

/* To the next origin; after the last one to the first again, with the
 * next phase. What was not judged with the phase left open is judged with all of them. */
static void next_origin(struct roll_sweep *sweep)
{
    sweep->opened = false;
    if (++sweep->origin < sweep->origin_count || sweep->phase == sweep->phase_count)
        return;
    if (sweep->phase++ == 0)
        sweep->unjudged = false;
    sweep->origin = 0;
}

enum sweep_verdict roll_sweep_on(struct roll_sweep *sweep, int64_t work, int64_t *done)
{
    enum sweep_verdict verdict = SWEEP_NEVER;
    int64_t begin = sweep->work;

    while (sweep->origin < sweep->origin_count && verdict == SWEEP_NEVER) {
        if (!sweep->opened && sweep->phase == 0)
            sweep->refuted[sweep->origin] = shown_too_short(sweep);
        if (!sweep->refuted[sweep->origin])
            verdict = sweep_origin(sweep, begin + work);
        if (verdict == SWEEP_NEVER)
            next_origin(sweep);
    }
    *done += sweep->work - begin;
    if (verdict == SWEEP_NEVER && sweep->unjudged)
        return SWEEP_UNKNOWN;
    return verdict;
}

const struct roll_spot *roll_sweep_spots(const struct roll_sweep *sweep)
{
    return sweep->spots;
}
