/*
 * Where the engine puts the points of joins: builds by chance, from fixed seeds. The grid, end
 * distances and the least distance along the grain are common practice, no source.
 */
#include "work.h"

#include "plan/findings.h"
#include "plan/geometry.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>

/* ---- rows of points, found again from the plan ---- */

static int64_t spread_builds, spread_points, spread_off_grid;
static int64_t spread_rows, spread_aside, spread_uneven;

static int64_t at_u(const struct plan *plan, size_t point)
{
    return plan->points.at[point].u;
}

static int64_t at_v(const struct plan *plan, size_t point)
{
    return plan->points.at[point].v;
}

typedef int64_t place_fn(const struct plan *plan, size_t point);

/* As many points from `first` on as lie in one row with it, along one way. */
static size_t row_from(const struct plan *plan, const struct junction *junction, size_t first,
                       place_fn *across, place_fn *along)
{
    size_t end = junction->first_point + junction->point_count;
    size_t last = first;

    while (last + 1 < end && across(plan, last + 1) == across(plan, first) &&
           along(plan, last + 1) > along(plan, last))
        last++;
    return last - first + 1;
}

static void check_row(const struct plan *plan, size_t first, size_t count, place_fn *along)
{
    int64_t grid = plan->value[TRADE_MARK_GRID];
    int64_t from = along(plan, first);
    int64_t length = along(plan, first + count - 1) - from;
    int64_t farthest = 0; /* of a point from its even place */

    for (size_t i = 1; i < count; i++) {
        int64_t at = along(plan, first + i);
        int64_t off = llabs(at - from - length * (int64_t)i / ((int64_t)count - 1));

        assert_true(at - along(plan, first + i - 1) >= plan->value[TRADE_ALONG_MIN]);
        farthest = off > farthest ? off : farthest;
    }
    spread_rows++;
    spread_aside += farthest > grid;
    spread_uneven += farthest > LENGTH_INCH + grid;
}

static void check_rows(struct work_bench *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;

    (void)dice;
    spread_builds++;
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        size_t end = junction->first_point + junction->point_count;

        for (size_t k = junction->first_point; k < end;) {
            size_t level = row_from(plan, junction, k, at_v, at_u);
            size_t upright = row_from(plan, junction, k, at_u, at_v);
            size_t count = level > upright ? level : upright;

            if (count > 2 && MODEL_FIND(plan->facts, join, junction->join)->target == TARGET_BOX)
                check_row(plan, k, count, level > upright ? at_u : at_v);
            k += count;
        }
    }
}

/* But for points that step an inch aside, where a screw passes closely. */
static void pitch_is_even_to_one_step_of_the_grid_where_a_row_can_be(void **state)
{
    (void)state;
    spread_builds = spread_rows = spread_aside = spread_uneven = 0;
    work_builds(61, check_rows);
    assert_true(3 * spread_rows > spread_builds);
    assert_true(5 * spread_aside < spread_rows);
    assert_true(20 * (spread_uneven - 1) < spread_rows); /* one more, where rows are few */
}

/* From a place on a face to the nearest side of the wood there. */
static int64_t edge_of_wood(const struct plan *plan, int64_t box, int64_t side, size_t member,
                            int64_t u, int64_t v)
{
    struct area wood = member == PLAN_NONE ? face_area(MODEL_FIND(plan->facts, box, box), side)
                                           : solid_on_side(&plan->members.at[member].solid, side);
    int64_t least = u - wood.u0;

    least = wood.u1 - u < least ? wood.u1 - u : least;
    least = v - wood.v0 < least ? v - wood.v0 : least;
    return wood.v1 - v < least ? wood.v1 - v : least;
}

/* The least edge distance that a point would have at another place of face a. */
static int64_t edge_at(const struct plan *plan, const struct plan_point *point, int64_t u,
                       int64_t v)
{
    const struct join *join = MODEL_FIND(plan->facts, join, point->join);
    const struct box *a = MODEL_FIND(plan->facts, box, join->box_a);
    int64_t least = edge_of_wood(plan, join->box_a, join->side_a, point->member_a, u, v);
    int64_t u_b, v_b, other;

    if (join->target != TARGET_BOX)
        return least;
    box_to_face(join->side_b,
                pose_to_box(plan_pose(plan, join->box_b), MODEL_FIND(plan->facts, box, join->box_b),
                            pose_to_room(plan_pose(plan, join->box_a), a,
                                         face_to_box(a, join->side_a, u, v))),
                &u_b, &v_b);
    other = edge_of_wood(plan, join->box_b, join->side_b, point->member_b, u_b, v_b);
    return other < least ? other : least;
}

/* Three diameters of a #10 screw: 0.57 in. */
static int64_t margin_of(const struct plan *plan)
{
    return IN(0.57) > plan->value[TRADE_EDGE_MIN] ? IN(0.57) : plan->value[TRADE_EDGE_MIN];
}

/* On the grid that is counted from these two edges; off it, and only across the row, where both
 * grid lines beside it would lie too near to an edge of the wood. */
static bool stands_by(const struct plan *plan, const struct plan_point *point, bool from_left,
                      bool from_bottom, bool *ret_off_grid)
{
    const struct join *join = MODEL_FIND(plan->facts, join, point->join);
    struct area face = face_area(MODEL_FIND(plan->facts, box, join->box_a), join->side_a);
    int64_t grid = plan->value[TRADE_MARK_GRID];
    int64_t off_u = (from_left ? point->u : face.u1 - point->u) % grid;
    int64_t off_v = (from_bottom ? point->v : face.v1 - point->v) % grid;

    if (off_u != 0 && off_v != 0)
        return false;
    *ret_off_grid = off_u != 0 || off_v != 0;
    for (int i = 0; *ret_off_grid && i < 2; i++) {
        int64_t u = point->u - (from_left ? 1 : -1) * (off_u - (off_u && i ? grid : 0));
        int64_t v = point->v - (from_bottom ? 1 : -1) * (off_v - (off_v && i ? grid : 0));

        if (edge_at(plan, point, u, v) > margin_of(plan))
            return false;
    }
    return true;
}

/* A point is laid out from the nearer edges; it may be told from others, which can be found. */
static void check_point(const struct plan *plan, const struct plan_point *point)
{
    bool stands = false;
    bool off_grid = true;

    for (int i = 0; i < 4; i++) {
        bool off;

        if (stands_by(plan, point, i & 1, i & 2, &off)) {
            stands = true;
            off_grid = off_grid && off;
        }
    }
    assert_true(stands);
    spread_off_grid += off_grid;
}

static void check_grid(struct work_bench *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;

    (void)dice;
    spread_builds++;
    for (size_t i = 0; i < plan->points.count; i++)
        if (!plan->points.at[i].taken) {
            spread_points++;
            check_point(plan, &plan->points.at[i]);
        }
}

static void points_stand_on_the_marking_grid(void **state)
{
    (void)state;
    spread_builds = spread_points = spread_off_grid = 0;
    work_builds(62, check_grid);
    assert_true(spread_points > 2 * spread_builds);
    assert_true(2 * spread_off_grid < spread_points);
}

/* ---- a row that has to move ---- */

static int64_t add_ladder(struct work_bench *bench, const char *name)
{
    int64_t key = work_box(bench, name, FRAME_LADDER);
    struct box *box = model_find(&bench->model, ENTITY_box, key);

    box->width = IN(24);
    box->depth = IN(2.5);
    box->height = IN(40);
    return key;
}

static void the_grid_may_be_changed(void **state)
{
    struct work_bench bench;

    (void)state;
    work_begin(&bench);
    int64_t a = add_ladder(&bench, "A");
    int64_t b = add_ladder(&bench, "B");
    struct join *join =
        model_find(&bench.model, ENTITY_join, work_join(&bench, "J", a, b, PLACE_BENCH));
    join->side_a = SIDE_RIGHT;
    join->side_b = SIDE_LEFT;
    assert_int_equal(trade_change(&bench.model, TRADE_FROM_BUILD, "mark.grid", "1/2", NULL),
                     FAULT_NONE);
    work_plan(&bench);
    assert_true(bench.plan->points.count >= 3);
    for (size_t i = 0; i < bench.plan->points.count; i++)
        assert_int_equal(bench.plan->points.at[i].edges[1].distance % IN(0.5), 0);
    work_end(&bench);
}

/* The first join's points lie where those of the second would: a stile is screwed on both sides. */
static void two_joins_of_one_stile_keep_clear_of_each_other(void **state)
{
    struct work_bench bench;

    (void)state;
    work_begin(&bench);
    int64_t a = add_ladder(&bench, "A");
    int64_t b = add_ladder(&bench, "B");
    int64_t c = add_ladder(&bench, "C");
    struct join *join =
        model_find(&bench.model, ENTITY_join, work_join(&bench, "J", a, b, PLACE_BENCH));
    join->side_a = SIDE_RIGHT;
    join->side_b = SIDE_LEFT;
    join = model_find(&bench.model, ENTITY_join, work_join(&bench, "K", a, c, PLACE_BENCH));
    join->side_a = SIDE_FRONT;
    join->side_b = SIDE_BACK;
    work_plan(&bench);
    assert_true(bench.plan->points.count >= 6);
    assert_int_equal(work_findings(&bench, FINDING_SCREWS_MEET), 0);
    work_end(&bench);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pitch_is_even_to_one_step_of_the_grid_where_a_row_can_be),
        cmocka_unit_test(points_stand_on_the_marking_grid),
        cmocka_unit_test(the_grid_may_be_changed),
        cmocka_unit_test(two_joins_of_one_stile_keep_clear_of_each_other),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
