/* What holds for every build: many by chance, from fixed seeds. */
#include "chance.h"

#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define USUAL 1000
#define MOST 20000

static char sentence[1024];

/* ---- the order ---- */

static const char *order_wrong(struct work_bench *bench)
{
    size_t count = bench->plan->steps.count;
    size_t *place = calloc(count + 1, sizeof *place);
    const char *wrong;

    assert_non_null(place);
    for (size_t i = 0; i < count; i++)
        place[i] = i;
    wrong = links_broken(bench->plan, place);
    free(place);
    return wrong;
}

/* ---- staples ---- */

/* The intervals of an edge follow each other without a gap and add up to its staples, pass by pass.
 */
static const char *staples_wrong(struct work_bench *bench)
{
    const struct plan *plan = bench->plan;

    for (size_t i = 0; i < plan->edges.count; i++) {
        const struct edge *edge = &plan->edges.at[i];
        int64_t by_pass[3] = {0, 0, 0};
        int64_t at = 0;

        for (size_t j = 0; j < edge->interval_count; j++) {
            const struct interval *interval = &plan->intervals.at[edge->first_interval + j];

            if (interval->edge != i || interval->from != at || interval->to < interval->from)
                return "the intervals of an edge leave a gap";
            at = interval->to;
            by_pass[interval->pass] += interval->staples;
        }
        if (by_pass[0] + by_pass[1] + by_pass[2] != edge->staples)
            return "the passes of an edge do not add up";
        if (edge->edge != EDGE_CORDS && edge->interval_count > 0 && at != edge->length)
            return "the intervals of an edge do not reach its end";
    }
    return NULL;
}

/* ---- screws ---- */

struct axis_of_screw {
    double from[3], to[3], radius;
};

static struct axis_of_screw axis_of(const struct plan *plan, const struct screw *screw)
{
    const struct screw_kind *kind = &plan->screw_kinds.at[screw->kind];
    struct axis_of_screw axis = {{(double)screw->at.x, (double)screw->at.y, (double)screw->at.z},
                                 {(double)screw->at.x, (double)screw->at.y, (double)screw->at.z},
                                 (double)kind->diameter / 2};

    axis.to[screw->axis] += screw->sign * (double)kind->length;
    return axis;
}

static double squared(const double *a, const double *b)
{
    double sum = 0;

    for (int i = 0; i < 3; i++)
        sum += (a[i] - b[i]) * (a[i] - b[i]);
    return sum;
}

/* Between points of two segments, the nearest by halving the way along the first: the distance from
 * a point to a segment is convex along it. */
static double from_point(const double *point, const struct axis_of_screw *axis)
{
    double along = 0, length = squared(axis->from, axis->to), share;
    double near[3];

    for (int i = 0; i < 3; i++)
        along += (point[i] - axis->from[i]) * (axis->to[i] - axis->from[i]);
    share = length > 0 ? along / length : 0;
    share = share < 0 ? 0 : share > 1 ? 1 : share;
    for (int i = 0; i < 3; i++)
        near[i] = axis->from[i] + share * (axis->to[i] - axis->from[i]);
    return squared(point, near);
}

static double from_share(const struct axis_of_screw *a, double share, const struct axis_of_screw *b)
{
    double point[3];

    for (int i = 0; i < 3; i++)
        point[i] = a->from[i] + share * (a->to[i] - a->from[i]);
    return from_point(point, b);
}

static double nearest(const struct axis_of_screw *a, const struct axis_of_screw *b)
{
    double low = 0, high = 1;

    for (int i = 0; i < 60; i++) {
        double left = low + (high - low) / 3;
        double right = high - (high - low) / 3;

        if (from_share(a, left, b) < from_share(a, right, b))
            high = right;
        else
            low = left;
    }
    return from_share(a, (low + high) / 2, b);
}

/* Blocks round two axes lie farther apart than this: most pairs do. */
static bool far_apart(const struct axis_of_screw *a, const struct axis_of_screw *b, double reach)
{
    for (int i = 0; i < 3; i++) {
        double low_a = a->from[i] < a->to[i] ? a->from[i] : a->to[i];
        double low_b = b->from[i] < b->to[i] ? b->from[i] : b->to[i];
        double high_a = a->from[i] + a->to[i] - low_a;
        double high_b = b->from[i] + b->to[i] - low_b;

        if (low_a - high_b > reach || low_b - high_a > reach)
            return true;
    }
    return false;
}

static bool told_of(const struct plan *plan, const struct screw *a, const struct screw *b)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];

        if (finding->kind == FINDING_SCREWS_MEET && finding->key == a->box)
            return true;
        for (int which = 0; which < 2; which++) {
            const struct screw *screw = which ? b : a;

            if (screw->use == SCREW_JOIN && finding->entity == ENTITY_join &&
                finding->key == plan->points.at[screw->of].join &&
                (finding->kind == FINDING_HOLE_MEETS || finding->kind == FINDING_SCREWS_MEET))
                return true;
        }
    }
    return false;
}

/* Screws in the axes of one box. A hair of a count is left to rounding. */
static const char *screws_wrong(struct work_bench *bench)
{
    const struct plan *plan = bench->plan;
    double least = (double)plan->value[TRADE_CROSS_CLEAR_REJECT];

    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *a = &plan->screws.at[i];
        struct axis_of_screw first = axis_of(plan, a);

        for (size_t j = 0; j < i; j++) {
            const struct screw *b = &plan->screws.at[j];
            struct axis_of_screw second = axis_of(plan, b);
            double reach = least + first.radius + second.radius - 2;

            if (a->box != b->box || far_apart(&first, &second, reach) ||
                nearest(&first, &second) >= reach * reach || told_of(plan, a, b))
                continue;
            snprintf(sentence, sizeof sentence, "screws %zu and %zu of box %d meet untold", j, i,
                     (int)a->box);
            return sentence;
        }
    }
    return NULL;
}

/* ---- all of it ---- */

/* Of one plan, since making it takes longer than looking at it. */
static const char *build_wrong(struct work_bench *bench)
{
    static chance_check *const checks[] = {order_wrong, staples_wrong, screws_wrong};
    const char *wrong = NULL;

    for (size_t i = 0; i < sizeof checks / sizeof *checks && !wrong; i++)
        wrong = checks[i](bench);
    return wrong;
}

static void rules_are_honoured_staples_add_up_and_screws_are_clear_or_told_of(void **state)
{
    (void)state;
    chance_check_all(1, chance_count(USUAL, MOST), build_wrong);
}

/* ---- the same bytes ---- */

static struct text dumped(const struct model *model)
{
    struct arena arena;
    const struct plan *plan;
    struct text text;

    arena_init(&arena);
    text_init(&text);
    assert_int_equal(plan_make(model, &arena, &plan), FAULT_NONE);
    work_dump(plan, &text);
    assert_false(text_failed(&text));
    arena_release(&arena);
    return text;
}

static bool dumps_alike(const struct model *a, const struct model *b)
{
    struct text first = dumped(a);
    struct text second = dumped(b);
    bool alike = strcmp(text_string(&first), text_string(&second)) == 0;

    text_release(&first);
    text_release(&second);
    return alike;
}

static const char *repeat_wrong(struct work_bench *bench)
{
    return dumps_alike(&bench->model, &bench->model) ? NULL : "planned twice, it differs";
}

static void a_build_planned_twice_is_the_same_to_the_byte(void **state)
{
    (void)state;
    chance_check_all(1, chance_count(USUAL / 5, MOST), repeat_wrong);
}

/* Each list from its end, so that every item is put before those that are there already. */
static void enter_backwards(struct model *into, const struct model *from)
{
    for (enum entity_kind kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of(kind);

        for (size_t i = model_count(from, kind); i-- > 0;) {
            const void *item = model_at_const(from, kind, i);
            void *added = model_add_keyed(into, kind, item_key(item));

            assert_non_null(added);
            memcpy(added, item, entity->size);
        }
    }
    into->workshop = from->workshop;
    into->build = from->build;
}

static const char *entry_wrong(struct work_bench *bench)
{
    struct arena arena;
    struct model other;
    jmp_buf escape;
    bool alike;

    arena_init(&arena);
    if (setjmp(escape))
        fail_msg("out of memory");
    arena.escape = &escape;
    model_init(&other, &arena);
    enter_backwards(&other, &bench->model);
    alike = dumps_alike(&bench->model, &other);
    arena_release(&arena);
    return alike ? NULL : "entered in another order, it differs";
}

static void the_order_of_entry_changes_nothing(void **state)
{
    (void)state;
    chance_check_all(1, chance_count(USUAL / 5, MOST), entry_wrong);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rules_are_honoured_staples_add_up_and_screws_are_clear_or_told_of),
        cmocka_unit_test(a_build_planned_twice_is_the_same_to_the_byte),
        cmocka_unit_test(the_order_of_entry_changes_nothing),
    };
    int failed = cmocka_run_group_tests_name("builds by chance", tests, NULL, NULL);

    return failed ? 1 : 0;
}
