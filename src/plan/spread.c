/*
 * Points on runs: evenly spread, on places that a tape shows.
 *
 * 1  Points stand on the marking grid, counted from the edges that they are measured from; a run
 *    too narrow for a grid line with its edge distances takes them along its middle.
 * 2  The first and the last keep the end distance; those between are even to one step of the grid.
 * 3  Where some place of the row has no driver behind its head or meets a screw, the row is drawn
 *    in from its ends, or takes a point or two more, until all its places can be built; the least
 *    change is taken. Only where no even row can be built each point moves by itself, in order and
 *    at least `along.min` apart.
 * 4  What passes a screw closely, between the ends of a row, steps aside by an inch at most.
 */
#include "plan/place.h"

#include "plan/geometry.h"

#include <assert.h>

/* ---- places ---- */

/* How good a place is. A way that is not seen here may be found by the pass `access`, a screw that
 * is met stays met. */
enum grade {
    GRADE_UNKNOWN,
    GRADE_BAD,        /* shut, and another screw is met */
    GRADE_MEETS,      /* a screw is met */
    GRADE_SHUT_CLOSE, /* no driver fits, and a screw passes closely */
    GRADE_SHUT,       /* no driver fits */
    GRADE_CLOSE,      /* a screw passes closely */
    GRADE_GOOD
};

static int64_t along_of(const struct lattice *lattice, int64_t place)
{
    return lattice->first + place * lattice->step;
}

static struct plan_point locate_on(const struct lattice *lattice, int64_t along)
{
    const struct run *run = lattice->run;

    return run->along_u ? place_locate(lattice->placing, run->area.u0 + along, lattice->across)
                        : place_locate(lattice->placing, lattice->across, run->area.v0 + along);
}

static bool is_open(const struct placing *placing, const struct plan_point *point)
{
    return (placing->from_a.box && way_is_open(&placing->from_a, &placing->faces, point)) ||
           (placing->from_b.box && way_is_open(&placing->from_b, &placing->faces, point));
}

/* How far the room of a point's screw is clear of all screws, up to cross.clear.warn. */
static int64_t clear_at(const struct placing *placing, const struct plan_point *point)
{
    int64_t well = placing->planning->value[TRADE_CROSS_CLEAR_WARN];
    struct screw_axis in_a;
    struct screw_axis in_b;

    if (!place_room(placing, point, &in_a))
        return well;
    well = thicket_clear(placing->in_a, &in_a, well, PLAN_NONE, NULL);
    if (!placing->b)
        return well;
    in_b = place_room_in_b(placing, &in_a);
    return thicket_clear(placing->in_b, &in_b, well, PLAN_NONE, NULL);
}

static enum grade look_at(const struct lattice *lattice, int64_t place)
{
    const int64_t *value = lattice->placing->planning->value;
    struct plan_point point = locate_on(lattice, along_of(lattice, place));
    int64_t clear = clear_at(lattice->placing, &point);
    bool open = is_open(lattice->placing, &point);

    if (clear < value[TRADE_CROSS_CLEAR_REJECT])
        return open ? GRADE_MEETS : GRADE_BAD;
    if (clear < value[TRADE_CROSS_CLEAR_WARN])
        return open ? GRADE_CLOSE : GRADE_SHUT_CLOSE;
    return open ? GRADE_GOOD : GRADE_SHUT;
}

static enum grade grade_of(const struct lattice *lattice, int64_t place)
{
    assert(0 <= place && place < lattice->count);
    if (lattice->grades[place] == GRADE_UNKNOWN)
        lattice->grades[place] = (char)look_at(lattice, place);
    return (enum grade)lattice->grades[place];
}

/* ---- the grid ---- */

/* What a place is more than a whole number of steps from the edge it is measured from. */
static int64_t off_grid(int64_t edge, int64_t size, int64_t step)
{
    assert(step > 0 && size >= 0);

    return edge == EDGE_LEFT || edge == EDGE_BOTTOM ? 0 : size % step;
}

static int64_t grid_from(int64_t at, int64_t off, int64_t step)
{
    return off + whole_divide_up(at - off, step) * step;
}

/* The grid line nearest to the middle between two sides, both edge distances kept; the middle
 * itself where there is none. */
static int64_t grid_middle(int64_t low, int64_t high, int64_t margin, int64_t off, int64_t step)
{
    int64_t middle = whole_divide_even(low + high, 2);
    int64_t after = grid_from(middle, off, step);
    int64_t before = after - step;
    int64_t nearest = after - middle <= middle - before ? after : before;

    return nearest >= low + margin && nearest <= high - margin ? nearest : middle;
}

struct lattice lattice_on(struct placing *placing, const struct run *run)
{
    const struct area *area = &run->area;
    struct area face = face_area(placing->a, placing->join->side_a);
    const int64_t *value = placing->planning->value;
    int64_t step = value[TRADE_MARK_GRID];
    int64_t margin = screw_edge_margin(value, screw_gauge_diameter(value[TRADE_SCREW_GAUGE_JOIN]));
    int64_t keep = length_smaller(placing->planning->value[TRADE_ALONG_MIN], run_length(run) / 4);
    struct lattice lattice = {.placing = placing, .run = run, .step = step};
    struct from_edge edges[2];
    int64_t off_u, off_v;

    place_edges(&face, area->u0 + area->u1, area->v0 + area->v1, edges);
    off_u = off_grid(edges[0].edge, face.u1, step);
    off_v = off_grid(edges[1].edge, face.v1, step);
    lattice.across = run->along_u ? grid_middle(area->v0, area->v1, margin, off_v, step)
                                  : grid_middle(area->u0, area->u1, margin, off_u, step);
    lattice.first = run->along_u ? grid_from(area->u0 + keep, off_u, step) - area->u0
                                 : grid_from(area->v0 + keep, off_v, step) - area->v0;
    lattice.count =
        length_larger(0, whole_divide_down(run_length(run) - keep - lattice.first, step) + 1);
    lattice.grades = ARENA_MANY(placing->planning->arena, char, (size_t)lattice.count);
    return lattice;
}

static int64_t place_near(const struct lattice *lattice, int64_t along)
{
    int64_t place = whole_divide_even(along - lattice->first, lattice->step);

    return length_larger(0, length_smaller(place, lattice->count - 1));
}

int64_t lattice_near(const struct lattice *lattice, int64_t wanted, int64_t most)
{
    int64_t middle = place_near(lattice, wanted);
    int64_t best = middle;

    if (lattice->count == 0)
        return wanted;
    for (int64_t off = 1; off * lattice->step <= most && grade_of(lattice, best) < GRADE_GOOD;
         off++)
        for (int sign = 1; sign >= -1; sign -= 2) {
            int64_t place = middle + sign * off;

            if (place >= 0 && place < lattice->count &&
                grade_of(lattice, place) > grade_of(lattice, best))
                best = place;
        }
    return along_of(lattice, best);
}

void lattice_add(const struct lattice *lattice, int64_t along)
{
    struct plan_point place = locate_on(lattice, along);

    place_add(lattice->placing, place.u, place.v, &lattice->run->area);
}

/* ---- a row ---- */

struct even_places {
    int64_t low, high; /* first and last place */
    int64_t count;     /* of points, more than one */
};

static int64_t spread_place(const struct even_places *spread, int64_t i)
{
    assert(0 <= i && i < spread->count && spread->count > 1);

    return spread->low + whole_divide_even((spread->high - spread->low) * i, spread->count - 1);
}

/* The grade of its worst place; bad where points would stand too close. */
static enum grade spread_grade(const struct lattice *lattice, const struct even_places *spread)
{
    int64_t least = lattice->placing->planning->value[TRADE_ALONG_MIN];
    enum grade worst = GRADE_GOOD;

    if ((spread->high - spread->low) * lattice->step < (spread->count - 1) * least)
        return GRADE_UNKNOWN;
    for (int64_t i = 0; i < spread->count && worst > GRADE_BAD; i++) {
        enum grade grade = grade_of(lattice, spread_place(spread, i));

        worst = grade < worst ? grade : worst;
    }
    return worst;
}

/* Rows are drawn in by at most this, both ends together. */
#define DRAWN_IN (12 * LENGTH_INCH)

/* The best of the rows with so many points, the least drawn in of those equally good. That a screw
 * passes closely draws no row in. */
static enum grade draw_in(const struct lattice *lattice, const struct even_places *whole,
                          struct even_places *ret_best)
{
    enum grade best = GRADE_UNKNOWN;
    int64_t most = length_smaller(DRAWN_IN / lattice->step, (whole->high - whole->low) / 2);

    assert(whole->low <= whole->high && whole->count > 1);
    for (int64_t total = 0; total <= most && best < GRADE_CLOSE; total++)
        for (int64_t part = 0; part <= total && best < GRADE_CLOSE; part++) {
            struct even_places spread = {whole->low + part, whole->high - (total - part),
                                         whole->count};
            enum grade grade = spread_grade(lattice, &spread);

            if (grade <= best)
                continue;
            best = grade;
            *ret_best = spread;
        }
    return best;
}

/* As many more points than counted may help a row over what is in its way. */
#define POINTS_MORE 2

static enum grade find_spread(const struct lattice *lattice, const struct even_places *whole,
                              struct even_places *ret_best)
{
    enum grade best = draw_in(lattice, whole, ret_best);

    for (int64_t more = 1;
         more <= POINTS_MORE && best < GRADE_CLOSE && lattice->placing->join->count == 0; more++) {
        struct even_places wider = {whole->low, whole->high, whole->count + more};
        struct even_places found = wider;
        enum grade grade = draw_in(lattice, &wider, &found);

        if (grade <= best)
            continue;
        best = grade;
        *ret_best = found;
    }
    return best;
}

/* ---- points on a run ---- */

static int64_t pitch_wanted(const struct placing *placing)
{
    return placing->join->pitch > 0 ? placing->join->pitch
                                    : placing->planning->value[TRADE_JOIN_PITCH];
}

static int64_t least_wanted(const struct placing *placing, const struct run *run)
{
    const int64_t *value = placing->planning->value;

    return value[run_length(run) > value[TRADE_JOIN_LONG] ? TRADE_JOIN_LEAST_LONG
                                                          : TRADE_JOIN_LEAST];
}

/* Points on a run (n = max(least, ceil((L - 2e) / p) + 1): common practice, no source), no closer
 * than the least distance along the grain. */
static int64_t count_on_run(const struct placing *placing, const struct run *run)
{
    int64_t between = run_length(run) - 2 * run_end(placing->planning, placing->join, run);
    int64_t count = placing->join->count;

    if (between < 0)
        return 1;
    if (count == 0) {
        int64_t least = least_wanted(placing, run);

        count = whole_divide_up(between, pitch_wanted(placing)) + 1;
        count = count < least ? least : count;
    }
    int64_t most = between / placing->planning->value[TRADE_ALONG_MIN] + 1;
    return count < most ? count : most;
}

/* From end to end of what the end distances leave. */
static struct even_places whole_spread(const struct lattice *lattice)
{
    const struct placing *placing = lattice->placing;
    int64_t end = run_end(placing->planning, placing->join, lattice->run);
    int64_t length = run_length(lattice->run);
    int64_t low = whole_divide_up(end - lattice->first, lattice->step);
    int64_t high = whole_divide_down(length - end - lattice->first, lattice->step);

    return (struct even_places){length_larger(low, 0), length_smaller(high, lattice->count - 1),
                                count_on_run(placing, lattice->run)};
}

/* How far each point may leave its even place: half of what the pitch has over the least distance,
 * so that no two come too close. */
static int64_t room_aside(const struct lattice *lattice, const struct even_places *spread)
{
    int64_t pitch = (spread->high - spread->low) * lattice->step / (spread->count - 1);

    return length_larger(0, (pitch - lattice->placing->planning->value[TRADE_ALONG_MIN]) / 2);
}

/* Points at even places, from which those at the ends move at most so far, those between too. */
static void add_moved(const struct lattice *lattice, const struct even_places *spread,
                      int64_t most_at_ends, int64_t most_between)
{
    assert(spread->low < spread->high && spread->count > 1);

    for (int64_t i = 0; i < spread->count; i++) {
        bool at_end = i == 0 || i == spread->count - 1;

        lattice_add(lattice, lattice_near(lattice, along_of(lattice, spread_place(spread, i)),
                                          at_end ? most_at_ends : most_between));
    }
}

/* A point between the ends of a row that passes a screw closely goes at most so far aside; the
 * ends, from which the others are measured, stay: what is warned of can be built. */
#define STEP_ASIDE LENGTH_INCH

static void add_row(struct lattice *lattice, const struct even_places *whole)
{
    struct placing *placing = lattice->placing;
    struct even_places best = *whole;
    enum grade grade = find_spread(lattice, whole, &best);

    if (grade >= GRADE_CLOSE)
        add_moved(lattice, &best, 0, length_smaller(STEP_ASIDE, room_aside(lattice, &best)));
    else
        add_moved(lattice, whole, room_aside(lattice, whole), room_aside(lattice, whole));
    if (placing->junction.pitch == 0)
        placing->junction.pitch =
            whole_divide_even((best.high - best.low) * lattice->step, best.count - 1);
}

void spread_on_run(struct placing *placing, const struct run *run)
{
    struct lattice lattice = lattice_on(placing, run);
    struct even_places whole = whole_spread(&lattice);
    size_t first = placing->planning->plan->points.count;
    int64_t middle = whole_divide_even(run_length(run), 2);

    if (whole.count > 1 && whole.high > whole.low)
        add_row(&lattice, &whole);
    else
        lattice_add(&lattice, lattice_near(&lattice, middle, middle));
    for (size_t i = first; i < placing->planning->plan->points.count; i++)
        place_stand(placing, &placing->planning->plan->points.at[i]);
}

static void set_scenes(struct placing *placing)
{
    if (placing->join->head != HEAD_B)
        placing->from_a = way_scene(placing->vicinity, &placing->junction, false);
    if (placing->b && placing->join->head != HEAD_A)
        placing->from_b = way_scene(placing->vicinity, &placing->junction, true);
}

void place_rows(struct placing *placing)
{
    set_scenes(placing);
    if (placing->join->target == TARGET_WALL) {
        place_against_wall(placing);
        return;
    }
    for (size_t i = 0; i < placing->runs.count; i++) {
        const struct run *run = &placing->runs.at[i];

        spread_on_run(placing, run);
        placing->junction.length = length_larger(placing->junction.length, run_length(run));
    }
}
