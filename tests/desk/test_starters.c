/* Starter pieces of any size: nothing to mend, nothing forgotten in the shop, few questions. */
#include "workshop.h"

#include "desk/kit.h"
#include "desk/starters.h"
#include "plan/findings.h"

#include <math.h>

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

struct start {
    const struct starter *starter;
    enum units units;
    int64_t sizes[STARTER_QUESTIONS];
};

static enum fault change_start(struct model *draft, void *context, struct fault_note *note)
{
    const struct start *start = context;
    draft->build.units = start->units;
    return starter_make(start->starter, draft, start->starter->title, start->sizes, note);
}

/* A long bit is a tool to have at hand, not a mistake of the piece. */
static bool is_to_be_mended(const struct finding *finding)
{
    return plan_finding_severity(finding) == SEVERITY_STOP ||
           (plan_finding_severity(finding) == SEVERITY_WARN && finding->kind != FINDING_JOIN_TIGHT);
}

static size_t count_mistakes(const struct plan *plan, const char *name)
{
    size_t count = 0;

    for (size_t i = 0; i < plan->findings.count; i++) {
        struct text sentence;

        if (!is_to_be_mended(&plan->findings.at[i]))
            continue;
        text_init(&sentence);
        plan_finding_text(plan, &plan->findings.at[i], &sentence);
        print_error("%s: %s\n", name, text_string(&sentence));
        text_release(&sentence);
        count++;
    }
    return count;
}

static void check_start(struct start *start)
{
    struct workshop_place place;
    place_begin(&place);
    struct desk *desk = desk_at(&place);
    DONE(desk_new_build(desk, "new", change_start, start, note));
    const struct plan *plan = desk_plan(desk);
    assert_int_equal(count_mistakes(plan, start->starter->name), 0);
    bool blank = strcmp(start->starter->name, "blank") == 0;
    bool wood = !blank && strcmp(start->starter->name, "seat-cushion") != 0;
    assert_int_equal(plan->members.count > 0, wood);
    assert_int_equal(plan->pieces.count == 0, blank);
    assert_int_equal(plan->steps.count == 0, blank);
    desk_close(desk);
    place_end(&place);
}

static void starters_have_nothing_to_mend_as_they_come_in_inches(void **state)
{
    (void)state;
    for (const struct starter *starter = starters; starter->name; starter++) {
        struct start start = {starter, UNITS_INCH, {0}};
        check_start(&start);
    }
}

static void starters_have_nothing_to_mend_as_they_come_in_millimetres(void **state)
{
    (void)state;
    for (const struct starter *starter = starters; starter->name; starter++) {
        struct start start = {starter, UNITS_MM, {0}};
        check_start(&start);
    }
}

/* How far the axis of a screw reaches along each axis of its box. */
struct reach {
    int64_t low[AXIS_COUNT], high[AXIS_COUNT];
};

static struct reach reach_of(const struct plan *plan, const struct screw *screw)
{
    int64_t length = screw->sign * plan->screw_kinds.at[screw->kind].length;
    struct reach reach = {{screw->at.x, screw->at.y, screw->at.z},
                          {screw->at.x, screw->at.y, screw->at.z}};

    *(length < 0 ? &reach.low[screw->axis] : &reach.high[screw->axis]) += length;
    return reach;
}

/* Between the surfaces of two screws that run along axes of one box: by Pythagoras, of the gaps
 * along each axis. */
static double surfaces_apart(const struct plan *plan, const struct screw *a, const struct screw *b)
{
    struct reach of_a = reach_of(plan, a), of_b = reach_of(plan, b);
    double square = 0;

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t before = of_b.low[axis] - of_a.high[axis];
        int64_t after = of_a.low[axis] - of_b.high[axis];
        double gap = (double)(before > 0 ? before : after > 0 ? after : 0);

        square += gap * gap;
    }
    return sqrt(square) - (double)(plan->screw_kinds.at[a->kind].diameter +
                                   plan->screw_kinds.at[b->kind].diameter) /
                              2;
}

/* Those of one box, which stand in its axes; a screw that reaches into the box beside it is held
 * against that one's by the findings. */
static void assert_screws_stand_apart(const struct plan *plan, double least)
{
    for (size_t i = 0; i < plan->screws.count; i++)
        for (size_t k = 0; k < i; k++)
            if (plan->screws.at[i].box == plan->screws.at[k].box &&
                surfaces_apart(plan, &plan->screws.at[i], &plan->screws.at[k]) < least)
                fail_msg("screws %zu and %zu stand %.2f in apart", k, i,
                         surfaces_apart(plan, &plan->screws.at[i], &plan->screws.at[k]) /
                             LENGTH_INCH);
}

/* 3/8 in, or 10 mm, between two screws: common practice, no source. */
static void screws_of_a_bed_base_of_any_size_stand_apart(void **state)
{
    (void)state;
    for (int64_t inches = 36; inches <= 84; inches += 4) {
        struct start start = {starter_named("bed-base"),
                              UNITS_INCH,
                              {inches * LENGTH_INCH, (inches % 8 ? 80 : 75) * LENGTH_INCH, 0}};
        struct workshop_place place;

        place_begin(&place);
        struct desk *desk = desk_at(&place);
        DONE(desk_new_build(desk, "new", change_start, &start, note));
        assert_int_equal(count_mistakes(desk_plan(desk), start.starter->name), 0);
        assert_screws_stand_apart(desk_plan(desk), LENGTH_INCH * 3 / 8.0 - 1);
        desk_close(desk);
        place_end(&place);
    }
}

static void starters_use_the_stock_that_is_there(void **state)
{
    (void)state;
    struct workshop_place place;
    place_begin(&place);
    struct desk *desk = desk_at(&place);
    desk_take_case(desk, "headboard");
    size_t stocks = desk_model(desk)->stocks.count;
    struct start start = {starter_named("wing-headboard"), UNITS_INCH, {0}};
    struct fault_note refused;
    DONE(desk_set(desk, ENTITY_build, 0, "name", "The first", note));
    DONE(desk_new_build(desk, "new", change_start, &start, note));
    /* that workshop has everything but thread */
    assert_int_equal(desk_model(desk)->stocks.count, stocks + 1);
    start.sizes[0] = 1 * LENGTH_INCH;
    assert_int_equal(desk_new_build(desk, "new", change_start, &start, &refused), FAULT_RANGE);
    assert_string_equal(refused.path, "mattress");
    assert_string_equal(desk_model(desk)->build.name, "Wing headboard");
    desk_close(desk);
    place_end(&place);
}

/* Every line of thread, cord and strips has a place in the workshop where its price can stand. */
static void check_notions(const struct plan *plan, size_t at_least)
{
    size_t lines = 0;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *purchase = &plan->purchases.at[i];
        if (purchase->aisle != AISLE_TRIM)
            continue;
        lines++;
        if (!purchase->stock)
            print_error("no stock: %s\n", purchase->what);
        assert_int_not_equal(purchase->stock, 0);
    }
    assert_in_range(lines, at_least, 9);
}

static enum fault change_backed(struct model *draft, void *context, struct fault_note *note)
{
    enum fault fault = change_start(draft, context, note);
    struct kit kit;
    kit_open(&kit, draft);
    struct layer *back =
        kit_layer(&kit, draft->boxes.at[0].key, LAYER_OUTSIDE_BACK, SHAPE_FLAT, SIDE_BACK);
    back->closing = CLOSING_BLIND;
    return fault;
}

static void starters_put_thread_and_strips_on_the_shopping_list(void **state)
{
    (void)state;
    struct workshop_place place;
    place_begin(&place);
    struct desk *desk = desk_at(&place);
    struct start start = {starter_named("wing-headboard"), UNITS_MM, {0}};
    DONE(desk_new_build(desk, "new", change_start, &start, note));
    check_notions(desk_plan(desk), 1);
    start.starter = starter_named("storage-bench");
    DONE(desk_new_build(desk, "new", change_backed, &start, note));
    check_notions(desk_plan(desk), 2);
    desk_close(desk);
    place_end(&place);
}

static void assert_holes_are_free(const struct plan *plan)
{
    assert_int_equal(plan->facts->cutouts.count, 2);
    for (size_t i = 0; i < plan->facts->cutouts.count; i++)
        for (size_t k = 0; k < plan->members.count; k++) {
            const struct cutout *hole = &plan->facts->cutouts.at[i];
            const struct solid *wood = &plan->members.at[k].solid;

            if (plan->members.at[k].box == hole->box)
                assert_false(wood->low.x < hole->u + hole->width && hole->u < wood->high.x &&
                             wood->low.z < hole->v + hole->height && hole->v < wood->high.z &&
                             wood->low.y < LENGTH_INCH);
        }
}

/* Its lid slams on nobody and stifles nobody, whatever its size (US Consumer Product Safety
 * Commission, guidance on chest lids: a stay at every angle, two gaps for air). */
static void a_storage_bench_of_any_size_lets_air_in(void **state)
{
    static const int64_t sizes[][STARTER_QUESTIONS] = {
        {0, 0, 0},
        {KIT_MM(410), KIT_MM(310), KIT_MM(310)},
        {KIT_MM(420), KIT_MM(450), KIT_MM(420)},
        {KIT_MM(930), KIT_MM(600), KIT_MM(690)},
        {KIT_MM(2380), KIT_MM(880), KIT_MM(450)},
    };

    (void)state;
    for (size_t i = 0; i < 2 * sizeof sizes / sizeof *sizes; i++) {
        struct start start = {starter_named("storage-bench"), i % 2 ? UNITS_MM : UNITS_INCH, {0}};
        struct workshop_place place;

        memcpy(start.sizes, sizes[i / 2], sizeof start.sizes);
        place_begin(&place);
        struct desk *desk = desk_at(&place);
        DONE(desk_new_build(desk, "new", change_start, &start, note));
        for (size_t k = 0; k < desk_plan(desk)->findings.count; k++) {
            int kind = desk_plan(desk)->findings.at[k].kind;

            assert_int_not_equal(kind, FINDING_LID_STIFLES);
            assert_int_not_equal(kind, FINDING_LID_SLAMS);
        }
        assert_holes_are_free(desk_plan(desk));
        desk_close(desk);
        place_end(&place);
    }
}

static void starters_ask_at_most_five_questions_with_usual_answers(void **state)
{
    (void)state;
    for (const struct starter *starter = starters; starter->name; starter++) {
        assert_ptr_equal(starter_named(starter->name), starter);
        assert_int_equal(starter->questions[0].key == NULL, strcmp(starter->name, "blank") == 0);
        for (int i = 0; i < STARTER_QUESTIONS && starter->questions[i].key; i++) {
            const struct starter_question *question = &starter->questions[i];
            for (int units = 0; units < 2; units++) {
                assert_int_equal(starter_check_size(question, (enum units)units,
                                                    question->standard[units], NULL),
                                 FAULT_NONE);
            }
        }
    }
    assert_null(starter_named("chaise"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(starters_have_nothing_to_mend_as_they_come_in_inches),
        cmocka_unit_test(starters_have_nothing_to_mend_as_they_come_in_millimetres),
        cmocka_unit_test(screws_of_a_bed_base_of_any_size_stand_apart),
        cmocka_unit_test(starters_use_the_stock_that_is_there),
        cmocka_unit_test(starters_put_thread_and_strips_on_the_shopping_list),
        cmocka_unit_test(a_storage_bench_of_any_size_lets_air_in),
        cmocka_unit_test(starters_ask_at_most_five_questions_with_usual_answers),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
