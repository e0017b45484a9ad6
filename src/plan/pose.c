/*
 * Leaning, turning, moving. Within a pose places are counted in FINE parts of a length, so that
 * what goes from box to box and back comes out as the same whole length.
 *
 * 1  A lean mixes two axes: a' = a cos + b sin, b' = b cos - a sin; which two, and in which order,
 *    is a table.
 * 2  Sines are the power series in whole numbers, seven terms: for half a right angle what is left
 *    out is below 1/POSE_ONE.
 * 3  at * FINE + rest is the place of the pose; rest lies within half a length.
 */
#include "plan/pose.h"

#include "plan/geometry.h"

#include <assert.h>
#include <stdlib.h>

#define FINE POSE_REST_PARTS
#define QUARTER 90000 /* a right angle */

/* Two parts of a normal that differ by less are the same: some 0.0002 degrees. */
#define SAME_DIRECTION 4096

/* pi * POSE_ONE */
#define PI INT64_C(3373259426)

static const struct mixing {
    int a, b;
} mixings[AXIS_COUNT] = {
    [AXIS_X] = {AXIS_Z, AXIS_Y}, [AXIS_Y] = {AXIS_X, AXIS_Z}, [AXIS_Z] = {AXIS_X, AXIS_Y}};

/* ---- angles ---- */

/* The sum of x^n / n! with alternating signs, for n = first, first + 2, ... */
static int64_t series(int64_t x, int first)
{
    int64_t term = first ? x : POSE_ONE;
    int64_t sum = term;

    for (int n = first + 1; n < first + 14; n += 2) {
        term = -(term * x / POSE_ONE * x / POSE_ONE) / (n * (n + 1));
        sum += term;
    }
    return sum;
}

int64_t angle_sine(int64_t angle)
{
    assert(angle >= -QUARTER && angle <= QUARTER);
    if (angle < 0)
        return -angle_sine(-angle);
    if (angle > QUARTER / 2)
        return series((QUARTER - angle) * PI / (2 * QUARTER), 0);
    return series(angle * PI / (2 * QUARTER), 1);
}

int64_t angle_cosine(int64_t angle)
{
    return angle_sine(QUARTER - (angle < 0 ? -angle : angle));
}

/* The angle, 0 to 180 degrees, with this cosine: to the nearest thousandth of a degree. */
static int64_t angle_with_cosine(int64_t cosine)
{
    int64_t low = 0;
    int64_t high = QUARTER;

    if (cosine < 0)
        return 2 * QUARTER - angle_with_cosine(-cosine);
    while (low < high) {
        int64_t middle = low + (high - low) / 2;

        if (angle_cosine(middle) > cosine)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

/* ---- in fine parts ---- */

static int64_t share(int64_t value, int64_t of_one)
{
    int64_t result = 0;
    enum fault fault = whole_share(value, of_one, POSE_ONE, &result);

    assert(fault == FAULT_NONE); /* the second factor is at most POSE_ONE */
    (void)fault;
    return result;
}

static struct vector fine_of(struct vector at)
{
    return (struct vector){at.x * FINE, at.y * FINE, at.z * FINE};
}

static struct vector rounded(struct vector fine)
{
    return (struct vector){whole_divide_down(fine.x + FINE / 2, FINE),
                           whole_divide_down(fine.y + FINE / 2, FINE),
                           whole_divide_down(fine.z + FINE / 2, FINE)};
}

static struct vector sum_of(struct vector a, struct vector b)
{
    return (struct vector){a.x + b.x, a.y + b.y, a.z + b.z};
}

static struct vector difference_of(struct vector a, struct vector b)
{
    return (struct vector){a.x - b.x, a.y - b.y, a.z - b.z};
}

static struct vector leaned(const struct pose *pose, struct vector at, int64_t lean)
{
    const struct mixing *mixing = &mixings[pose->lean_axis];
    int64_t a = vector_along(at, mixing->a);
    int64_t b = vector_along(at, mixing->b);
    int64_t sine;
    int64_t cosine;

    if (lean == 0)
        return at;
    sine = angle_sine(lean);
    cosine = angle_cosine(lean);
    vector_set(&at, mixing->a, share(a, cosine) + share(b, sine));
    vector_set(&at, mixing->b, share(b, cosine) - share(a, sine));
    return at;
}

/* About the origin, by quarter turns to the left. */
static struct vector turned(struct vector at, int turn)
{
    switch (turn) {
    case 1:
        return (struct vector){at.y, -at.x, at.z};
    case 2:
        return (struct vector){-at.x, -at.y, at.z};
    case 3:
        return (struct vector){-at.y, at.x, at.z};
    default:
        assert(turn == 0);
        return at;
    }
}

/* The corner of the outline as turned and not leaned, from the origin as turned. */
static struct vector corner_turned(const struct box *box, int turn)
{
    return (struct vector){turn == 2   ? box->width
                           : turn == 3 ? box->depth
                                       : 0,
                           turn == 1   ? box->width
                           : turn == 2 ? box->depth
                                       : 0,
                           0};
}

static struct vector place_of(const struct pose *pose)
{
    return sum_of(fine_of(pose->at), pose->rest);
}

static bool is_within_half(int64_t rest)
{
    return 2 * rest >= -FINE && 2 * rest < FINE;
}

static void set_place(struct pose *pose, struct vector fine)
{
    pose->at = rounded(fine);
    pose->rest = difference_of(fine, fine_of(pose->at));
    assert(is_within_half(pose->rest.x) && is_within_half(pose->rest.y) &&
           is_within_half(pose->rest.z));
}

static struct vector room_of(const struct pose *pose, const struct box *box, struct vector at)
{
    struct vector in_room = turned(leaned(pose, fine_of(at), pose->lean), pose->turn);

    return sum_of(sum_of(in_room, fine_of(corner_turned(box, pose->turn))), place_of(pose));
}

static struct vector box_of(const struct pose *pose, const struct box *box, struct vector fine)
{
    struct vector local =
        difference_of(difference_of(fine, place_of(pose)), fine_of(corner_turned(box, pose->turn)));

    return rounded(leaned(pose, turned(local, (4 - pose->turn) % 4), -pose->lean));
}

/* ---- poses ---- */

struct pose pose_begin(const struct box *box, int turn)
{
    assert(turn >= 0 && turn < 4);

    return (struct pose){.box = box->key,
                         .turn = turn,
                         .lean_axis = box->lean_axis,
                         .lean = box->lean,
                         .placed = true};
}

void pose_lay(struct pose *pose, const struct box *b, struct vector at, const struct pose *pose_a,
              const struct box *a, struct vector from)
{
    struct vector wanted = room_of(pose_a, a, from);
    struct vector now = room_of(pose, b, at);

    set_place(pose, sum_of(place_of(pose), difference_of(wanted, now)));
}

void pose_shift(struct pose *pose, const struct pose *now, const struct pose *wanted)
{
    set_place(pose, sum_of(place_of(pose), difference_of(place_of(wanted), place_of(now))));
}

struct vector pose_to_room(const struct pose *pose, const struct box *box, struct vector at)
{
    return rounded(room_of(pose, box, at));
}

struct vector pose_to_box(const struct pose *pose, const struct box *box, struct vector at)
{
    return box_of(pose, box, fine_of(at));
}

struct vector pose_across(const struct pose *from, const struct box *from_box,
                          const struct pose *to, const struct box *to_box, struct vector at)
{
    return box_of(to, to_box, room_of(from, from_box, at));
}

/* ---- directions ---- */

struct vector pose_axis(const struct pose *pose, int axis)
{
    struct vector direction = {0};

    vector_set(&direction, axis, POSE_ONE);
    return turned(leaned(pose, direction, pose->lean), pose->turn);
}

struct vector pose_normal(const struct pose *pose, int64_t side)
{
    struct vector normal = pose_axis(pose, side_axis(side));
    int sign = side_sign(side);

    return (struct vector){sign * normal.x, sign * normal.y, sign * normal.z};
}

static int64_t product(struct vector a, struct vector b)
{
    return share(a.x, b.x) + share(a.y, b.y) + share(a.z, b.z);
}

static bool is_same_direction(struct vector a, struct vector b)
{
    struct vector apart = difference_of(a, b);

    return llabs(apart.x) < SAME_DIRECTION && llabs(apart.y) < SAME_DIRECTION &&
           llabs(apart.z) < SAME_DIRECTION;
}

int64_t pose_askew(const struct pose *a, int64_t side_a, const struct pose *b, int64_t side_b)
{
    struct vector outward = pose_normal(a, side_a);
    struct vector towards = pose_normal(b, side_b);
    struct vector against = {-towards.x, -towards.y, -towards.z};

    if (is_same_direction(outward, against))
        return 0;
    return angle_with_cosine(product(outward, against));
}

static bool runs_along(struct vector axis, const struct pose *pose)
{
    for (int other = 0; other < AXIS_COUNT; other++)
        if (llabs(product(axis, pose_axis(pose, other))) > POSE_ONE - SAME_DIRECTION / 8)
            return true;
    return false;
}

bool poses_agree(const struct pose *a, const struct pose *b)
{
    if (a->lean == 0 && b->lean == 0)
        return true;
    return runs_along(pose_axis(a, AXIS_X), b) && runs_along(pose_axis(a, AXIS_Y), b) &&
           runs_along(pose_axis(a, AXIS_Z), b);
}

/* ---- blocks ---- */

static struct vector corner_of(const struct solid *solid, int corner)
{
    return (struct vector){corner & 1 ? solid->high.x : solid->low.x,
                           corner & 2 ? solid->high.y : solid->low.y,
                           corner & 4 ? solid->high.z : solid->low.z};
}

static void stretch(struct solid *block, struct vector at)
{
    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t along = vector_along(at, axis);

        vector_set(&block->low, axis, length_smaller(vector_along(block->low, axis), along));
        vector_set(&block->high, axis, length_larger(vector_along(block->high, axis), along));
    }
}

/* Where nothing leans the opposite corners say all. */
static int first_corner(bool leans)
{
    return leans ? 1 : 7;
}

struct solid pose_block(const struct pose *pose, const struct box *box, const struct solid *solid)
{
    struct vector first = pose_to_room(pose, box, solid->low);
    struct solid block = {first, first};

    for (int corner = first_corner(pose->lean != 0); corner < 8; corner++)
        stretch(&block, pose_to_room(pose, box, corner_of(solid, corner)));
    return block;
}

struct solid pose_block_across(const struct pose *from, const struct box *from_box,
                               const struct pose *to, const struct box *to_box,
                               const struct solid *solid)
{
    struct vector first = pose_across(from, from_box, to, to_box, solid->low);
    struct solid block = {first, first};

    for (int corner = first_corner(!poses_agree(from, to)); corner < 8; corner++)
        stretch(&block, pose_across(from, from_box, to, to_box, corner_of(solid, corner)));
    return block;
}
