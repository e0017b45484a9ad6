/*
 * Where parts lie across. While the sweep goes on only the room between what is tied is looked at;
 * when all have started they get seats.
 *
 *  1. What lies beside something else for some of its length lies left or right of it. Each choice
 *     says that one place is so much farther right than another, and the least places that obey
 *     all choices are found by raising what is too small.
 *  2. Where two things overlap in their least places, one of them has to go right of the other:
 *     both ways are tried. When none overlap, those places are seats; when no way is left, there
 *     are none.
 *  3. What is tied lies at fixed distances from one place, its group's origin, which may move right
 *     as far as the slack goes; flaws of the roll lie where they are.
 */
#include "cut/rollsweep_state.h"

#include <assert.h>
#include <string.h>

#define SEAT_TRIALS 2000
#define WORK_PAIR 2 /* units for each pair that is looked at */

enum {
    AT_EDGE,
    AT_ORIGIN,
    AT_FIRST
}; /* places: of flaws, of what is tied, of the first free part */

/* ---- what has to be seated ---- */

static struct seat seat_of_start(const struct roll_sweep *sweep, size_t index)
{
    const struct start *start = &sweep->starts[index];
    const struct stay *stay = &sweep->stays[start->stay];
    bool free = stay->across == FREE;

    return (struct seat){.place = free ? AT_FIRST + index : AT_ORIGIN,
                         .offset = free ? 0 : stay->across,
                         .width = stay->width,
                         .near = start->near,
                         .far = start->far};
}

static struct seat seat_of_blemish(const struct roll_rect *rect)
{
    return (struct seat){.place = AT_EDGE,
                         .offset = rect->left,
                         .width = rect->right - rect->left,
                         .near = rect->near,
                         .far = rect->far};
}

static void add_seat(struct seating *seating, struct seat seat)
{
    for (size_t i = 0; i < seating->count; i++) {
        const struct seat *other = &seating->seats[i];

        if (other->near < seat.far && seat.near < other->far && other->place + seat.place > 0)
            seating->pairs[seating->pair_count++] =
                (struct seat_pair){(uint16_t)i, (uint16_t)seating->count};
    }
    seating->seats[seating->count++] = seat;
}

/* How far right the origin may go before something that is tied leaves the roll. */
static int64_t most_shift(const struct roll_sweep *sweep)
{
    int64_t most = sweep->slack;

    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct stay *stay = &sweep->stays[sweep->starts[i].stay];

        if (stay->across != FREE && sweep->job->width - stay->across - stay->width < most)
            most = sweep->job->width - stay->across - stay->width;
    }
    return most;
}

static void set_seating(struct roll_sweep *sweep)
{
    struct seating *seating = &sweep->seating;

    seating->count = seating->pair_count = seating->gap_count = 0;
    seating->most[AT_EDGE] = 0;
    seating->most[AT_ORIGIN] = most_shift(sweep);
    for (size_t b = 0; b < sweep->job->blemish_count; b++)
        add_seat(seating, seat_of_blemish(&sweep->job->blemishes[b]));
    for (size_t i = 0; i < sweep->start_count; i++) {
        struct seat seat = seat_of_start(sweep, i);

        if (seat.place != AT_ORIGIN)
            seating->most[seat.place] = sweep->job->width - seat.width;
        add_seat(seating, seat);
    }
    seating->places = AT_FIRST + sweep->start_count;
    seating->trials = SEAT_TRIALS;
}

/* ---- choices ---- */

static int64_t left_of(const struct seat *seat, const int64_t *at)
{
    return at[seat->place] + seat->offset;
}

/* By how much b lies too far left for a to have room on its left. */
static int64_t overlap(const struct seat *a, const struct seat *b, const int64_t *at)
{
    return left_of(a, at) + a->width - left_of(b, at);
}

/* Whether a could lie left of b, as far as b may go right. */
static bool can_go_left(const struct seating *seating, const struct seat *a, const struct seat *b,
                        const int64_t *at)
{
    if (a->place == b->place)
        return overlap(a, b, at) <= 0;
    return left_of(a, at) + a->width <= seating->most[b->place] + b->offset;
}

/* Raises places until they obey all choices; false where none do: then one would go too far, or
 * they raise each other in a circle. */
static bool raise(const struct seating *seating, int64_t *at)
{
    bool raised = true;

    for (size_t round = 0; raised; round++) {
        raised = false;
        for (size_t i = 0; i < seating->gap_count; i++) {
            const struct seat_gap *gap = &seating->gaps[i];

            if (at[gap->left] + gap->least <= at[gap->right])
                continue;
            at[gap->right] = at[gap->left] + gap->least;
            if (at[gap->right] > seating->most[gap->right] || round > seating->places)
                return false;
            raised = true;
        }
    }
    return true;
}

static bool go_left(struct seating *seating, const struct seat *a, const struct seat *b,
                    int64_t *at)
{
    if (!can_go_left(seating, a, b, at))
        return false;
    if (a->place == b->place)
        return true;
    seating->gaps[seating->gap_count++] =
        (struct seat_gap){a->place, b->place, a->offset + a->width - b->offset};
    return raise(seating, at);
}

/* A pair that overlaps, one of which one way is closed before others; NULL for none. */
static const struct seat_pair *next_pair(struct seating *seating, const int64_t *at)
{
    const struct seat_pair *found = NULL;

    for (size_t i = 0; i < seating->pair_count; i++) {
        const struct seat *a = &seating->seats[seating->pairs[i].first];
        const struct seat *b = &seating->seats[seating->pairs[i].second];

        if (overlap(a, b, at) <= 0 || overlap(b, a, at) <= 0)
            continue;
        if (!can_go_left(seating, a, b, at) || !can_go_left(seating, b, a, at))
            return &seating->pairs[i];
        if (!found)
            found = &seating->pairs[i];
    }
    return found;
}

/* Rule 2; `at` are the least places, and seats when true is returned. */
static bool seat_pairs(struct seating *seating, int64_t *at)
{
    const struct seat_pair *pair = next_pair(seating, at);
    size_t gaps = seating->gap_count;

    if (!pair)
        return true;
    if (seating->trials-- <= 0)
        return false;
    for (int way = 0; way < 2; way++) {
        const struct seat *a = &seating->seats[way ? pair->second : pair->first];
        const struct seat *b = &seating->seats[way ? pair->first : pair->second];
        int64_t raised[SEAT_PLACES_MOST];

        memcpy(raised, at, seating->places * sizeof *at);
        if (go_left(seating, a, b, raised) && seat_pairs(seating, raised)) {
            memcpy(at, raised, seating->places * sizeof *at);
            return true;
        }
        seating->gap_count = gaps;
    }
    return false;
}

/* ---- all ---- */

/* Spots by part: the parts of a kind in the order in which they started. */
void sweep_set_spots(struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;
    bool *set = ARENA_MANY(sweep->arena, bool, job->count);

    for (size_t i = 0; i < sweep->start_count; i++) {
        const struct start *start = &sweep->starts[i];
        const struct stay *stay = &sweep->stays[start->stay];
        const struct seat seat = seat_of_start(sweep, i);
        size_t part = 0;

        while (set[part] ||
               !roll_parts_alike(&job->parts[part], sweep->rows.kinds[stay->kind].part))
            part++;
        set[part] = true;
        sweep->spots[part] =
            (struct roll_spot){start->near, left_of(&seat, sweep->seating.at), true, stay->turned};
    }
}

/* Several groups would each want an origin across of their own, and beside a flaw other times along
 * than the sweep tries may be better: what is not found then may be there all the same. */
enum seated sweep_find_seats(struct roll_sweep *sweep)
{
    struct seating *seating = &sweep->seating;
    int64_t at[SEAT_PLACES_MOST] = {0};
    bool seated;

    if (sweep->job->group_count > 1 && sweep->job->pattern.across > 0)
        return SEATS_UNKNOWN;
    set_seating(sweep);
    seated = seat_pairs(seating, at);
    sweep->work +=
        WORK_PAIR * (int64_t)(seating->pair_count + 1) * (SEAT_TRIALS - seating->trials + 1);
    if (!seated)
        return seating->trials < 0 || sweep->job->blemish_count > 0 ? SEATS_UNKNOWN : SEATS_NEVER;
    memcpy(seating->at, at, seating->places * sizeof *at);
    return SEATS_FOUND;
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
    struct rooms rooms;
    int64_t from = 0, end = 0, next;

    rooms.room_count = rooms.width_count = 0;
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
