/*
 * Parts are started one after another from the beginning of the roll on. At a time (a place along)
 * any number of them starts beside those that still lie there, as far as the width goes; then the
 * sweep advances to the next time at which something ends, or at which the pattern lets something
 * begin. Where free parts lie across is looked for when all have started ("seated"); matched ones
 * start in one of their places.
 *
 *  1. Any layout can be pushed together: then each part starts where another ends or at the
 *     beginning, or at the first time after that which the pattern lets it have. So no other times
 *     are tried. (Of a group that is not alone that says too much of its first part; then what was
 *     not found is not judged.)
 *  2. A measure gives each part a value; no slice of the roll holds more than its worth. What
 * slices so far held less than that is lost, and no more may be lost than the whole roll is worth
 * over what all parts are (the duals of a linear program make this little).
 *  3. A state is what is left to start and what still lies there, both from now on. Where it failed
 *     as soon or sooner, it fails.
 *  4. SWEEP_NEVER needs 1 to 3 for every origin of the group across; the seats play no part in it
 *     but where they were not found.
 */
#include "cut/rollsweep.h"

#include "base/list.h"
#include "base/quantity.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define MEASURES_FIRST 8
#define MEASURES_MOST 32 /* with those that are learnt on the way */
#define FREE INT64_C(-1)
#define NEVER_AT INT64_MAX

#define MEMO_SLOTS (1U << 17)
#define MEMO_TRIES 4U
#define SEAT_TRIALS 20000

#define LEARN_PARTS 3 /* left, for a measure to be learnt */
#define LEARN_SOON 1  /* times the work of learning a measure, until the next one is learnt; */
#define LEARN_LATE 64 /* doubled up to this as long as they do not help */

#define WORK_STEP 80 /* units for each part started or time gone on to, */
#define WORK_STAY 6  /* for each way of lying that is looked at, */
#define WORK_ROOMS 60
#define WORK_SEAT 20 /* and for each seat that is tried */

struct measure {
    int64_t line;  /* ROWS_ALL */
    int64_t worth; /* of one slice */
    int64_t total; /* of all parts */
    int64_t spare; /* what may be lost; of a line: when the group's origin is known */
    int64_t hits;  /* states that failed by it */
};

/* A way in which a part of a kind may lie. */
struct stay {
    size_t kind, group;
    int64_t width, length, along; /* along: from the origin of its group */
    int64_t across;               /* FREE */
    bool turned;
    int64_t value[MEASURES_MOST + 1];
    int64_t over[MEASURES_MOST + 1]; /* what it is worth beyond the least of its kind */
};

struct start {
    size_t stay;
    int64_t near, far;
    int64_t across; /* its seat */
};

/* What is undone when the sweep goes back. */
struct step {
    bool advance;
    bool known_before; /* the origin of the started part's group */
    size_t stay;
    int64_t time, event;
    uint8_t lying_count;
    uint8_t lying[SWEEP_PARTS];
};

/* Keys are not kept, but 128 bits of them: that two are alike by chance has never been seen by
 * anybody. */
struct memo_slot {
    uint64_t hash[2];
    int64_t time;
    uint32_t left; /* parts that had not started */
    bool taken;
};

struct memo {
    struct memo_slot *slots;
    uint64_t hash[2]; /* of the key that is being made */
};

struct roll_sweep {
    const struct roll_job *job;
    struct arena *arena;
    struct roll_rows rows;
    int64_t target;

    int64_t *origins, *least; /* across, and what is shown of each; -1: not yet */
    size_t origin_count, origin;
    int64_t slack, shift; /* how much farther right the origin may be; and is, for seats */
    bool opened;          /* the origin that is looked at has its stays and measures */
    bool unjudged;        /* something was left without a verdict */

    struct measure measures[MEASURES_MOST + 1]; /* one more on trial */
    size_t measure_count, measures_kept;        /* those that are never given up come first */
    int64_t *lines; /* of the repeat along that measures are learnt of */
    size_t line_count, next_line;
    double *wanted;    /* by kind: what is left, for learning */
    int64_t learn_at;  /* work at which the next measure is looked for */
    int64_t learn_for; /* how often its own work is waited for after one that did not help */
    struct stay *stays;
    size_t stay_count;

    int64_t *left;        /* by kind */
    int64_t *shortest;    /* by kind: the least it takes along */
    size_t left_count;    /* parts that have not started */
    bool *known;          /* by group: whether its origin along is */
    int64_t *begin;       /* and where */
    int64_t known_since;  /* when that of the group that is looked at became so */
    struct start *starts; /* all so far */
    size_t start_count;
    uint8_t lying[SWEEP_PARTS]; /* indices of starts that have not ended */
    size_t lying_count;
    int64_t time, event; /* now, and when something ended last */
    int64_t width;       /* that lies there */
    int64_t held[MEASURES_MOST + 1], lost[MEASURES_MOST + 1];
    size_t cursor; /* the next stay to try; stay_count: to advance; beyond: to go back */
    LIST_OF(struct step) steps;

    struct memo memo;
    struct roll_spot *spots;
    int64_t trials; /* of seats */
    int64_t work;
};

static int64_t modulo(int64_t a, int64_t repeat)
{
    return a - whole_divide_down(a, repeat) * repeat;
}

/* ---- measures ---- */

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
    measure->spare = measure->worth * sweep->target - measure->total;
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
    measure->spare = measure->worth * sweep->target - measure->total;
    for (size_t s = 0; s < sweep->stay_count; s++) {
        sweep->stays[s].value[sweep->measure_count] = sweep->stays[s].width;
        sweep->stays[s].over[sweep->measure_count] = 0;
    }
    sweep->measure_count++;
}

static void set_measures(struct roll_sweep *sweep)
{
    struct roll_rows *rows = &sweep->rows;

    sweep->measure_count = 0;
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
    const struct roll_job *job = sweep->job;
    const struct roll_part *part = sweep->rows.kinds[kind].part;
    int64_t repeat = job->pattern.across, first;

    if (part->group == ROLL_NO_GROUP || part->group != sweep->rows.group || repeat == 0) {
        for (int turned = 0; turned < 1 + part->may_turn; turned++)
            if ((turned ? part->length : part->width) <= job->width)
                add_stay(sweep, kind, turned, FREE, false);
        return;
    }
    first = modulo(sweep->rows.origin + part->across, repeat);
    for (int64_t at = first; at + part->width <= job->width; at += repeat)
        add_stay(sweep, kind, false, at,
                 job->pattern.half_drop &&
                     modulo((at - sweep->rows.origin - part->across) / repeat, 2) != 0);
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

static void start_over(struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;

    for (size_t k = 0; k < sweep->rows.kind_count; k++)
        sweep->left[k] = sweep->rows.kinds[k].count;
    for (size_t g = 0; g < job->group_count; g++) {
        sweep->known[g] = g == job->pinned;
        sweep->begin[g] = 0;
    }
    sweep->left_count = job->count;
    sweep->start_count = sweep->lying_count = 0;
    sweep->time = sweep->event = sweep->width = sweep->known_since = 0;
    memset(sweep->held, 0, sizeof sweep->held);
    memset(sweep->lost, 0, sizeof sweep->lost);
    sweep->cursor = 0;
    sweep->steps.count = 0;
    memset(sweep->memo.slots, 0, MEMO_SLOTS * sizeof *sweep->memo.slots);
}

static void set_spare_of_lines(struct roll_sweep *sweep)
{
    for (size_t m = 0; m < sweep->measure_count; m++) {
        struct measure *measure = &sweep->measures[m];

        if (measure->line != ROWS_ALL)
            measure->spare =
                measure->worth * slices_between(sweep, measure, 0, sweep->target) - measure->total;
    }
}

/* How far it is to the next of the origins, round the repeat; so far all lie in the same places. */
static int64_t slack_of(const struct roll_sweep *sweep)
{
    int64_t repeat = sweep->job->pattern.across, slack = repeat;

    if (repeat == 0 || sweep->rows.group == sweep->job->pinned)
        return 0;
    for (size_t i = 0; i < sweep->origin_count; i++) {
        int64_t to = modulo(sweep->origins[i] - sweep->origins[sweep->origin], repeat);

        if (to > 0 && to < slack)
            slack = to;
    }
    return slack - 1;
}

/* Whether rule 1 holds of the pattern along: a group is pushed together as a whole, so if there are
 * other parts, which of its parts is stopped first, and where, is not known when the first one
 * starts. */
static bool pushes_whole(const struct roll_job *job)
{
    for (size_t i = 0; i < job->count && job->pattern.along > 0; i++)
        if (job->parts[i].group != job->parts[0].group)
            return job->group_count == 0 || (job->group_count == 1 && job->pinned == 0);
    return true;
}

/* Stays, measures and a start for the origin that is to be looked at. */
static void open_origin(struct roll_sweep *sweep)
{
    sweep->unjudged = sweep->unjudged || !pushes_whole(sweep->job);
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
    set_measures(sweep);
    sweep->work += sweep->rows.work;
    start_over(sweep);
    if (sweep->rows.group != ROLL_NO_GROUP && sweep->known[sweep->rows.group])
        set_spare_of_lines(sweep);
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
    sweep->memo.slots = ARENA_MANY(arena, struct memo_slot, MEMO_SLOTS);
    return sweep;
}

void roll_sweep_aim(struct roll_sweep *sweep, int64_t target)
{
    sweep->target = target;
    sweep->origin = 0;
    sweep->opened = false;
    sweep->unjudged = false;
}

/* ---- states that failed ---- */

/* Two mixes of splitmix64's kind (Steele, Lea and Flood, 2014), with steps of their own, so that no
 * run of small numbers leaves them as they were. */
static void key_add(struct memo *memo, int64_t number)
{
    static const uint64_t steps[2] = {UINT64_C(0x9e3779b97f4a7c15), UINT64_C(0xd1342543de82ef95)};

    for (int i = 0; i < 2; i++) {
        uint64_t mixed = (memo->hash[i] ^ (uint64_t)number) + steps[i];

        mixed = (mixed ^ mixed >> 30) * UINT64_C(0xbf58476d1ce4e5b9);
        mixed = (mixed ^ mixed >> 27) * UINT64_C(0x94d049bb133111eb);
        memo->hash[i] = mixed ^ mixed >> 31;
    }
}

/* Starts that still lie there, the first to end first. */
static void sort_lying(struct roll_sweep *sweep)
{
    for (size_t i = 1; i < sweep->lying_count; i++) {
        uint8_t kept = sweep->lying[i];
        const struct start *start = &sweep->starts[kept];
        size_t at = i;

        for (; at > 0; at--) {
            const struct start *other = &sweep->starts[sweep->lying[at - 1]];

            if (other->far < start->far ||
                (other->far == start->far && other->across <= start->across))
                break;
            sweep->lying[at] = sweep->lying[at - 1];
        }
        sweep->lying[at] = kept;
    }
}

/* Free parts that end together are as one. */
static void key_add_lying(struct roll_sweep *sweep)
{
    struct memo *memo = &sweep->memo;

    sort_lying(sweep);
    for (size_t i = 0; i < sweep->lying_count; i++) {
        const struct start *start = &sweep->starts[sweep->lying[i]];
        int64_t width = sweep->stays[start->stay].width;

        while (start->across == FREE && i + 1 < sweep->lying_count &&
               sweep->starts[sweep->lying[i + 1]].across == FREE &&
               sweep->starts[sweep->lying[i + 1]].far == start->far)
            width += sweep->stays[sweep->starts[sweep->lying[++i]].stay].width;
        key_add(memo, start->far - sweep->time);
        key_add(memo, start->across);
        key_add(memo, width);
    }
}

static void make_key(struct roll_sweep *sweep)
{
    struct memo *memo = &sweep->memo;
    int64_t repeat = sweep->job->pattern.along;

    memo->hash[0] = 1;
    memo->hash[1] = 2;
    for (size_t k = 0; k < sweep->rows.kind_count; k++)
        key_add(memo, sweep->left[k]);
    key_add(memo, repeat > 0 ? sweep->time - sweep->event : 0);
    for (size_t g = 0; g < sweep->job->group_count && repeat > 0; g++)
        key_add(memo, sweep->known[g] ? modulo(sweep->time - sweep->begin[g], repeat) : -1);
    key_add_lying(sweep);
}

/* Whether the state was there before, no later than now; keeps it where not. Of those that want the
 * same slot the ones stay of which most is left to be done. */
static bool known_to_fail(struct roll_sweep *sweep)
{
    struct memo *memo = &sweep->memo;
    struct memo_slot *slot = NULL;

    make_key(sweep);
    for (size_t i = 0; i < MEMO_TRIES; i++) {
        struct memo_slot *other = &memo->slots[(memo->hash[0] + i) % MEMO_SLOTS];

        if (other->taken && other->hash[0] == memo->hash[0] && other->hash[1] == memo->hash[1]) {
            bool fails = other->time <= sweep->time;

            other->time = fails ? other->time : sweep->time;
            return fails;
        }
        if (!slot || other->left < slot->left)
            slot = other;
    }
    *slot = (struct memo_slot){
        {memo->hash[0], memo->hash[1]}, sweep->time, (uint32_t)sweep->left_count, true};
    return false;
}

/* ---- seats ---- */

/* Where what starts like this lies across; FREE. */
static int64_t tied_at(const struct roll_sweep *sweep, const struct stay *stay)
{
    return stay->across == FREE ? FREE : stay->across + sweep->shift;
}

static bool meet_along(const struct start *a, const struct start *b)
{
    return a->near < b->far && b->near < a->far;
}

static bool seat_free(const struct roll_sweep *sweep, size_t index, int64_t across, size_t seated)
{
    const struct start *start = &sweep->starts[index];
    int64_t width = sweep->stays[start->stay].width;

    if (across < 0 || across + width > sweep->job->width)
        return false;
    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct start *other = &sweep->starts[i];
        int64_t at = i < seated ? other->across : tied_at(sweep, &sweep->stays[other->stay]);

        if (i != index && at != FREE && meet_along(start, other) && at < across + width &&
            across < at + sweep->stays[other->stay].width)
            return false;
    }
    return true;
}

static bool seat_from(struct roll_sweep *sweep, size_t index);

static bool try_seat(struct roll_sweep *sweep, size_t index, int64_t across)
{
    if (sweep->trials-- <= 0 || !seat_free(sweep, index, across, index))
        return false;
    sweep->starts[index].across = across;
    return seat_from(sweep, index + 1);
}

/* At the edges, and beside whatever has its seat. */
static bool seat_from(struct roll_sweep *sweep, size_t index)
{
    struct start *start = &sweep->starts[index];
    int64_t width;

    if (index == sweep->start_count)
        return true;
    width = sweep->stays[start->stay].width;
    if (sweep->stays[start->stay].across != FREE)
        return try_seat(sweep, index, tied_at(sweep, &sweep->stays[start->stay]));
    if (try_seat(sweep, index, 0) || try_seat(sweep, index, sweep->job->width - width))
        return true;
    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct start *other = &sweep->starts[i];
        int64_t at = i < index ? other->across : tied_at(sweep, &sweep->stays[other->stay]);

        if (i == index || at == FREE || !meet_along(start, other))
            continue;
        if (try_seat(sweep, index, at + sweep->stays[other->stay].width) ||
            try_seat(sweep, index, at - width))
            return true;
    }
    return false;
}

static bool blemished(const struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;

    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct start *start = &sweep->starts[i];
        int64_t right = start->across + sweep->stays[start->stay].width;

        for (size_t b = 0; b < job->blemish_count; b++) {
            const struct roll_rect *rect = &job->blemishes[b];

            if (rect->near < start->far && start->near < rect->far && rect->left < right &&
                start->across < rect->right)
                return true;
        }
    }
    return false;
}

/* Spots by part: the parts of a kind in the order in which they started. */
static void set_spots(struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;
    bool *set = ARENA_MANY(sweep->arena, bool, job->count);

    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct start *start = &sweep->starts[i];
        const struct stay *stay = &sweep->stays[start->stay];
        size_t part = 0;

        while (set[part] ||
               !roll_parts_alike(&job->parts[part], sweep->rows.kinds[stay->kind].part))
            part++;
        set[part] = true;
        sweep->spots[part] = (struct roll_spot){start->near, start->across, true, stay->turned};
    }
}

/* With the group's origin where it is, or as far to the right as what is tied still fits. */
static bool seat_shifted(struct roll_sweep *sweep)
{
    int64_t most = sweep->slack;

    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct stay *stay = &sweep->stays[sweep->starts[i].stay];

        if (stay->across != FREE && sweep->job->width - stay->across - stay->width < most)
            most = sweep->job->width - stay->across - stay->width;
    }
    sweep->trials = SEAT_TRIALS;
    sweep->shift = 0;
    if (seat_from(sweep, 0) && !blemished(sweep))
        return true;
    sweep->shift = most;
    return most > 0 && seat_from(sweep, 0) && !blemished(sweep);
}

/* All have started: whether they find seats. */
static bool seat_all(struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;

    sweep->trials = SEAT_TRIALS;
    if ((job->group_count > 1 && job->pattern.across > 0) || !seat_shifted(sweep)) {
        sweep->work += WORK_SEAT * (SEAT_TRIALS - sweep->trials);
        for (size_t i = 0; i < sweep->start_count; i++)
            sweep->starts[i].across = sweep->stays[sweep->starts[i].stay].across;
        sweep->unjudged = true;
        return false;
    }
    set_spots(sweep);
    return true;
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
           modulo(sweep->time - sweep->begin[stay->group] - stay->along, repeat) == 0;
}

static bool place_free(const struct roll_sweep *sweep, const struct stay *stay)
{
    if (stay->across == FREE)
        return true;
    for (size_t i = 0; i < sweep->lying_count; i++) {
        const struct start *start = &sweep->starts[sweep->lying[i]];

        if (start->across != FREE && start->across < stay->across + stay->width &&
            stay->across < start->across + sweep->stays[start->stay].width)
            return false;
    }
    return true;
}

/* Rooms between what is tied, and the free parts that have to lie in them. */
struct rooms {
    int64_t rooms[SWEEP_PARTS + 1], widths[SWEEP_PARTS + 1];
    size_t room_count, width_count;
};

/* In falling order. */
static void insert_falling(int64_t *list, size_t *count, int64_t number)
{
    size_t at = (*count)++;

    for (; at > 0 && list[at - 1] < number; at--)
        list[at] = list[at - 1];
    list[at] = number;
}

static bool rooms_hold(struct rooms *rooms, size_t index)
{
    if (index == rooms->width_count)
        return true;
    for (size_t i = 0; i < rooms->room_count; i++) {
        if (rooms->rooms[i] < rooms->widths[index] ||
            (i > 0 && rooms->rooms[i] == rooms->rooms[i - 1]))
            continue;
        rooms->rooms[i] -= rooms->widths[index];
        if (rooms_hold(rooms, index + 1))
            return true;
        rooms->rooms[i] += rooms->widths[index];
    }
    return false;
}

static const struct stay *lying_stay(const struct roll_sweep *sweep, size_t index,
                                     const struct stay *more)
{
    return index == sweep->lying_count ? more
                                       : &sweep->stays[sweep->starts[sweep->lying[index]].stay];
}

/* The room to the right of `from` up to the next that is tied, which is given back. */
static int64_t next_tied(const struct roll_sweep *sweep, const struct stay *more, int64_t from,
                         int64_t *ret_end)
{
    int64_t next = INT64_MAX;

    for (size_t i = 0; i <= sweep->lying_count; i++) {
        const struct stay *stay = lying_stay(sweep, i, more);

        if (stay->across != FREE && stay->across >= from && stay->across < next) {
            next = stay->across;
            *ret_end = stay->across + stay->width;
        }
    }
    return next;
}

/* Whether what is free has room between what is tied, with one part more. The origin may be a
 * little farther right: then there is more room before all that is tied. */
static bool has_room(const struct roll_sweep *sweep, const struct stay *more)
{
    struct rooms rooms = {.room_count = 0};
    int64_t from = 0, end = 0, next;

    if (sweep->rows.group == ROLL_NO_GROUP || sweep->job->pattern.across == 0)
        return true;
    for (size_t i = 0; i <= sweep->lying_count; i++)
        if (lying_stay(sweep, i, more)->across == FREE)
            insert_falling(rooms.widths, &rooms.width_count, lying_stay(sweep, i, more)->width);
    if (rooms.width_count == 0)
        return true;
    while ((next = next_tied(sweep, more, from, &end)) < INT64_MAX) {
        rooms.rooms[rooms.room_count++] = next - from + (from == 0 ? sweep->slack : 0);
        from = end;
    }
    if (from == 0)
        return true;
    rooms.rooms[rooms.room_count++] = sweep->job->width - from;
    return rooms_hold(&rooms, 0);
}

static bool can_start(const struct roll_sweep *sweep, const struct stay *stay)
{
    return sweep->left[stay->kind] > 0 && sweep->width + stay->width <= sweep->job->width &&
           sweep->time + stay->length <= sweep->target && is_time(sweep, stay) &&
           place_free(sweep, stay) && has_room(sweep, stay);
}

static struct step *push(struct roll_sweep *sweep)
{
    struct step *step = LIST_ADD(sweep->arena, &sweep->steps);

    step->time = sweep->time;
    step->event = sweep->event;
    return step;
}

static bool too_much_lost(struct roll_sweep *sweep)
{
    for (size_t m = 0; m < sweep->measure_count; m++)
        if (sweep->lost[m] > sweep->measures[m].spare && measured(sweep, &sweep->measures[m])) {
            sweep->measures[m].hits++;
            return true;
        }
    return false;
}

static void start(struct roll_sweep *sweep, size_t index)
{
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
            set_spare_of_lines(sweep);
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
             modulo(sweep->time - sweep->begin[stay->group] - stay->along, repeat);
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

/* What is held is lost less for the slices up to a time; `sign` -1 takes it back. */
static void lose(struct roll_sweep *sweep, int64_t from, int64_t to, int sign)
{
    for (size_t m = 0; m < sweep->measure_count; m++) {
        const struct measure *measure = &sweep->measures[m];

        if (measured(sweep, measure))
            sweep->lost[m] +=
                sign * (measure->worth - sweep->held[m]) * slices_between(sweep, measure, from, to);
    }
}

static void undo_advance(struct roll_sweep *sweep, const struct step *step)
{
    int64_t time = sweep->time;

    sweep->time = step->time;
    sweep->event = step->event;
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
    lose(sweep, sweep->time, time, -1);
    sweep->cursor = sweep->stay_count + 1;
}

static void go_back(struct roll_sweep *sweep)
{
    const struct step *step = &sweep->steps.at[--sweep->steps.count];

    if (step->advance)
        undo_advance(sweep, step);
    else
        undo_start(sweep, step);
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

/* Looks for a measure by which what is left now needs too much. Any measure is one for all states,
 * so it stays. Whether it shows that this state fails. */
static bool learn(struct roll_sweep *sweep)
{
    struct roll_rows *rows = &sweep->rows;
    bool lines = rows->group != ROLL_NO_GROUP && sweep->known[rows->group];
    size_t turn = sweep->next_line++ % (1 + (lines ? sweep->line_count : 0)), slot;
    bool failed;

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
    if (sweep->measures[slot].line != ROWS_ALL)
        set_spare_of_lines(sweep);
    catch_up(sweep, slot);
    failed = sweep->lost[slot] > sweep->measures[slot].spare;
    if (failed) {
        slot = slot_for_measure(sweep);
        set_measure(sweep, slot);
        set_spare_of_lines(sweep);
        catch_up(sweep, slot);
        sweep->measures[slot].hits = 1;
    }
    sweep->learn_for = failed ? LEARN_SOON : sweep->learn_for * 2;
    if (sweep->learn_for > LEARN_LATE)
        sweep->learn_for = LEARN_LATE;
    sweep->learn_at = sweep->work + sweep->learn_for * rows->work;
    return failed;
}

static void advance(struct roll_sweep *sweep)
{
    int64_t next = next_time(sweep);
    struct step *step;

    sweep->cursor = sweep->stay_count + 1;
    if (next == NEVER_AT || next >= sweep->target)
        return;
    step = push(sweep);
    step->advance = true;
    step->lying_count = (uint8_t)sweep->lying_count;
    memcpy(step->lying, sweep->lying, sweep->lying_count);
    lose(sweep, sweep->time, next, 1);
    sweep->time = next;
    end_lying(sweep);
    sweep->cursor = 0;
    if (too_much_lost(sweep) || too_late(sweep) || known_to_fail(sweep) ||
        (sweep->work >= sweep->learn_at && sweep->left_count >= LEARN_PARTS && learn(sweep)))
        go_back(sweep);
}

/* Tries what comes next of starting, advancing and going back. False when there is nothing left. */
static bool move(struct roll_sweep *sweep)
{
    sweep->work += WORK_STEP;
    while (sweep->cursor < sweep->stay_count && !can_start(sweep, &sweep->stays[sweep->cursor])) {
        sweep->cursor++;
        sweep->work += WORK_STAY;
    }
    if (sweep->job->pattern.across > 0)
        sweep->work += WORK_ROOMS;
    if (sweep->cursor < sweep->stay_count) {
        start(sweep, sweep->cursor);
        if (too_much_lost(sweep))
            go_back(sweep);
    } else if (sweep->cursor == sweep->stay_count) {
        advance(sweep);
    } else if (sweep->steps.count == 0) {
        return false;
    } else {
        go_back(sweep);
    }
    return true;
}

/* ---- the verdict ---- */

static enum sweep_verdict sweep_origin(struct roll_sweep *sweep, int64_t end)
{
    if (!sweep->opened)
        open_origin(sweep);
    while (sweep->work < end) {
        if (!move(sweep))
            return SWEEP_NEVER;
        if (sweep->left_count > 0)
            continue;
        if (seat_all(sweep))
            return SWEEP_FITS;
        go_back(sweep);
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

enum sweep_verdict roll_sweep_on(struct roll_sweep *sweep, int64_t work, int64_t *done)
{
    enum sweep_verdict verdict = SWEEP_NEVER;
    int64_t begin = sweep->work;

    while (sweep->origin < sweep->origin_count && verdict == SWEEP_NEVER) {
        if (sweep->opened || !shown_too_short(sweep))
            verdict = sweep_origin(sweep, begin + work);
        if (verdict == SWEEP_NEVER) {
            sweep->origin++;
            sweep->opened = false;
        }
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
