/*
 * Bodies of the rehearsal, against projections in turn: from a place to the nearest one of the
 * first body, from there to the nearest one of the second, and so on. The two places come together
 * where the bodies meet, and else as near as the bodies are (the method of alternating projections;
 * its limit is a theorem for any two closed convex sets, Cheney and Goldstein 1959, from memory).
 */
#include "dice.h"
#include "plan/rehearse_body.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>

#define PAIRS 300
#define TURNS 20000

/* A block, a block that was drawn along z, or a round bar along x. */
struct shape {
    double at[3], axes[3][3], half[3];
    double drawn;
    double radius;
};

static double some(struct dice *dice, double least, double most)
{
    return least + (most - least) * (double)dice_between(dice, 0, 1000000) / 1e6;
}

static void turn_about(struct shape *shape, int a, int b, double angle)
{
    for (int i = 0; i < 3; i++) {
        double of_a = shape->axes[i][a];
        double of_b = shape->axes[i][b];

        shape->axes[i][a] = of_a * cos(angle) - of_b * sin(angle);
        shape->axes[i][b] = of_b * cos(angle) + of_a * sin(angle);
    }
}

static struct shape some_block(struct dice *dice, double spread)
{
    struct shape shape = {.axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};

    for (int axis = 0; axis < 3; axis++) {
        shape.at[axis] = some(dice, -spread, spread);
        shape.half[axis] = some(dice, 1000, 40000);
    }
    turn_about(&shape, 0, 1, some(dice, -0.8, 0.8));
    turn_about(&shape, 1, 2, some(dice, -0.8, 0.8));
    return shape;
}

static struct shape some_bar(struct dice *dice)
{
    return (struct shape){.axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
                          .half = {floor(some(dice, 1000, 40000)), 0, 0},
                          .radius = floor(some(dice, 1000, 20000))};
}

static struct body body_of(const struct shape *shape)
{
    struct body body = {.count = 3};

    if (shape->radius > 0) {
        int64_t half = (int64_t)shape->half[0];

        return body_of_bar((struct vector){-half, 0, 0}, AXIS_X, 2 * half, (int64_t)shape->radius);
    }
    for (int i = 0; i < 3; i++) {
        body.corner.along[i] = shape->at[i];
        for (int k = 0; k < 3; k++) {
            body.corner.along[i] -= shape->half[k] * shape->axes[k][i];
            body.edges[k].along[i] = 2 * shape->half[k] * shape->axes[k][i];
        }
    }
    return shape->drawn > 0 ? body_drawn(&body, AXIS_Z, (int64_t)shape->drawn) : body;
}

/* ---- the nearest place of a shape ---- */

static double clamped(double at, double half)
{
    return at < -half ? -half : at > half ? half : at;
}

static double apart(const double a[3], const double b[3])
{
    return sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) +
                (a[2] - b[2]) * (a[2] - b[2]));
}

static void nearest_of_block(const struct shape *shape, double by, double more, const double at[3],
                             double ret_nearest[3])
{
    double along[3];

    for (int k = 0; k < 3; k++) {
        along[k] = 0;
        for (int i = 0; i < 3; i++)
            along[k] += (at[i] - shape->at[i] - (i == AXIS_Z ? by : 0)) * shape->axes[k][i];
        along[k] = clamped(along[k], shape->half[k] + more);
    }
    for (int i = 0; i < 3; i++) {
        ret_nearest[i] = shape->at[i] + (i == AXIS_Z ? by : 0);
        for (int k = 0; k < 3; k++)
            ret_nearest[i] += along[k] * shape->axes[k][i];
    }
}

/* How far it was drawn where it is nearest: the distance has one valley. */
static void nearest_of_drawn(const struct shape *shape, double more, const double at[3],
                             double ret_nearest[3])
{
    double low = 0;
    double high = shape->drawn;

    for (int i = 0; i < 40 && shape->drawn > 0; i++) {
        double first = low + (high - low) / 3;
        double second = high - (high - low) / 3;
        double of_first[3], of_second[3];

        nearest_of_block(shape, first, more, at, of_first);
        nearest_of_block(shape, second, more, at, of_second);
        if (apart(at, of_first) < apart(at, of_second))
            high = second;
        else
            low = first;
    }
    nearest_of_block(shape, low, more, at, ret_nearest);
}

static void nearest_of_bar(const struct shape *shape, double more, const double at[3],
                           double ret_nearest[3])
{
    double off = hypot(at[1], at[2]);
    double share = off > shape->radius + more ? (shape->radius + more) / off : 1;

    ret_nearest[0] = clamped(at[0], shape->half[0] + more);
    ret_nearest[1] = at[1] * share;
    ret_nearest[2] = at[2] * share;
}

static void nearest(const struct shape *shape, double more, const double at[3],
                    double ret_nearest[3])
{
    if (shape->radius > 0)
        nearest_of_bar(shape, more, at, ret_nearest);
    else
        nearest_of_drawn(shape, more, at, ret_nearest);
}

/* How far apart two shapes are, each made larger by so much; it ends where a turn moves no place.
 */
static double gap(const struct shape *a, const struct shape *b, double more)
{
    double on_a[3] = {a->at[0], a->at[1], a->at[2]};
    double on_b[3] = {0};
    double step = 1;

    for (int i = 0; i < TURNS && step > 1e-6; i++) {
        double last[3] = {on_a[0], on_a[1], on_a[2]};

        nearest(b, more, last, on_b);
        nearest(a, more, on_b, on_a);
        step = apart(last, on_a);
    }
    return step > 1e-6 ? NAN : apart(on_a, on_b);
}

/* ---- both ways of looking ---- */

struct decided {
    int meet, part;
};

/* Where a little more or a little less wood decides, or the places still move, nothing is said. A
 * bar is as much as 1 % of its radius thinner than round. */
static void compare(const struct shape *a, const struct shape *b, struct decided *tally)
{
    struct body of_a = body_of(a);
    struct body of_b = body_of(b);
    double little = 2 * (double)BODY_SLACK + (a->radius + b->radius) / 100;
    bool meet = bodies_meet(&of_a, &of_b);

    assert_int_equal(meet, bodies_meet(&of_b, &of_a));
    if (gap(a, b, -little) < 0.01) {
        assert_true(meet);
        tally->meet++;
    } else if (gap(a, b, 0) > little) {
        assert_false(meet);
        tally->part++;
    }
}

static void assert_decided(const struct decided *tally)
{
    assert_true(tally->meet > PAIRS / 10);
    assert_true(tally->part > PAIRS / 10);
    assert_true(tally->meet + tally->part > PAIRS * 8 / 10);
}

static void blocks_that_lean_meet_where_projections_come_together(void **state)
{
    struct dice dice = {1};
    struct decided tally = {0, 0};

    (void)state;
    for (int i = 0; i < PAIRS; i++) {
        struct shape a = some_block(&dice, 30000);
        struct shape b = some_block(&dice, 30000);

        compare(&a, &b, &tally);
    }
    assert_decided(&tally);
}

static void a_bar_meets_a_block_where_projections_come_together(void **state)
{
    struct dice dice = {2};
    struct decided tally = {0, 0};

    (void)state;
    for (int i = 0; i < PAIRS; i++) {
        struct shape a = some_bar(&dice);
        struct shape b = some_block(&dice, 50000);

        compare(&a, &b, &tally);
    }
    assert_decided(&tally);
}

static void a_block_that_is_drawn_meets_what_it_passes(void **state)
{
    struct dice dice = {3};
    struct decided tally = {0, 0};

    (void)state;
    for (int i = 0; i < PAIRS; i++) {
        struct shape a = some_block(&dice, 50000);
        struct shape b = some_block(&dice, 50000);

        a.drawn = floor(some(&dice, 1000, 100000));
        compare(&a, &b, &tally);
    }
    assert_decided(&tally);
}

static void what_lies_skin_on_skin_does_not_meet(void **state)
{
    const struct solid below = {{0, 0, 0}, {8128, 8128, 8128}};
    const struct solid above = {{0, 0, 8128}, {8128, 8128, 16256}};
    struct body a = body_of_block(&below);
    struct body b = body_of_block(&above);

    (void)state;
    assert_false(bodies_meet(&a, &b));
    b.corner.along[AXIS_Z] -= 4 * (double)BODY_SLACK;
    assert_true(bodies_meet(&a, &b));
}

static void the_outline_is_the_block_round_a_body(void **state)
{
    struct body bar = body_of_bar((struct vector){100, 200, 300}, AXIS_Y, -1000, 50);
    struct solid outline = body_outline(&bar);

    (void)state;
    assert_int_equal(outline.low.x, 50);
    assert_int_equal(outline.high.x, 150);
    assert_int_equal(outline.low.y, -800);
    assert_int_equal(outline.high.y, 200);
    assert_int_equal(outline.low.z, 250);
    assert_int_equal(outline.high.z, 350);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(blocks_that_lean_meet_where_projections_come_together),
        cmocka_unit_test(a_bar_meets_a_block_where_projections_come_together),
        cmocka_unit_test(a_block_that_is_drawn_meets_what_it_passes),
        cmocka_unit_test(what_lies_skin_on_skin_does_not_meet),
        cmocka_unit_test(the_outline_is_the_block_round_a_body),
    };
    int failed = cmocka_run_group_tests_name("bodies", tests, NULL, NULL);

    return failed ? 1 : 0;
}
