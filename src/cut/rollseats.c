/*
 * Where free parts lie across. While the sweep goes on only the room between what is tied is looked
 * at; when all have started they get seats, at an edge or beside what has one already.
 */
#include "cut/rollsweep_state.h"

#include <assert.h>

#define SEAT_TRIALS 20000
#define WORK_SEAT 20 /* units for each seat that is tried */

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
    assert(index < sweep->start_count);

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
    assert(index < sweep->start_count);
    if (sweep->trials-- <= 0 || !seat_free(sweep, index, across, index))
        return false;
    sweep->starts[index].across = across;
    return seat_from(sweep, index + 1);
}

/* At the edges, and beside whatever has its seat. */
static bool seat_from(struct roll_sweep *sweep, size_t index)
{
    assert(index <= sweep->start_count);

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

bool sweep_seat_all(struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;

    sweep->trials = SEAT_TRIALS;
    if ((job->group_count > 1 && job->pattern.across > 0) || !seat_shifted(sweep)) {
        sweep->work += WORK_SEAT * (SEAT_TRIALS - sweep->trials);
        for (size_t i = 0; i < sweep->start_count; i++)
            sweep->starts[i].across = sweep->stays[sweep->starts[i].stay].across;
        sweep->unseated = sweep->compact;
        sweep->unjudged = sweep->unjudged || !sweep->compact;
        return false;
    }
    set_spots(sweep);
    return true;
}

/* ---- rooms ---- */

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

static const struct stay *stay_abreast(const struct roll_sweep *sweep, struct abreast abreast,
                                       size_t index, const struct stay *more)
{
    return index == abreast.count ? more : &sweep->stays[sweep->starts[abreast.starts[index]].stay];
}

/* The room to the right of `from` up to the next that is tied, which is given back. */
static int64_t next_tied(const struct roll_sweep *sweep, struct abreast abreast,
                         const struct stay *more, int64_t from, int64_t *ret_end)
{
    int64_t next = INT64_MAX;

    for (size_t i = 0; i <= abreast.count; i++) {
        const struct stay *stay = stay_abreast(sweep, abreast, i, more);

        if (stay->across != FREE && stay->across >= from && stay->across < next) {
            next = stay->across;
            *ret_end = stay->across + stay->width;
        }
    }
    return next;
}

/* The origin may be a little farther right: then there is more room before all that is tied. */
bool sweep_has_room(const struct roll_sweep *sweep, struct abreast abreast, const struct stay *more)
{
    struct rooms rooms = {.room_count = 0};
    int64_t from = 0, end = 0, next;

    if (sweep->rows.group == ROLL_NO_GROUP || sweep->job->pattern.across == 0)
        return true;
    for (size_t i = 0; i <= abreast.count; i++) {
        const struct stay *stay = stay_abreast(sweep, abreast, i, more);

        if (stay->across == FREE)
            insert_falling(rooms.widths, &rooms.width_count, stay->width);
    }
    if (rooms.width_count == 0)
        return true;
    while ((next = next_tied(sweep, abreast, more, from, &end)) < INT64_MAX) {
        rooms.rooms[rooms.room_count++] = next - from + (from == 0 ? sweep->slack : 0);
        from = end;
    }
    if (from == 0)
        return true;
    rooms.rooms[rooms.room_count++] = sweep->job->width - from;
    return rooms_hold(&rooms, 0);
}
