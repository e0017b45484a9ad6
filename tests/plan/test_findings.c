/* How findings are put in order and into words. */
#include "joined.h"
#include "plan/findings.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <setjmp.h>

#include <cmocka.h>

#include <string.h>

struct told {
    struct arena facts, made;
    struct model model;
    struct plan plan;
    struct planning planning;
};

static int begin(void **state)
{
    static struct told told;

    memset(&told, 0, sizeof told);
    arena_init(&told.facts);
    arena_init(&told.made);
    model_init(&told.model, &told.facts);
    told.plan.facts = &told.model;
    told.planning =
        (struct planning){&told.model, &told.plan, &told.made, NULL, told.plan.value, NULL};
    *state = &told;
    return 0;
}

static int end(void **state)
{
    struct told *told = *state;

    arena_release(&told->made);
    arena_release(&told->facts);
    return 0;
}

static void assert_text(const struct told *told, const struct finding *finding, const char *wanted)
{
    struct text text;

    text_init(&text);
    plan_finding_text(&told->plan, finding, &text);
    assert_string_equal(text_string(&text), wanted);
    text_release(&text);
}

static void sentence_takes_arguments_in_the_units_of_the_build(void **state)
{
    struct told *told = *state;
    struct finding *finding =
        finding_add(&told->planning, FINDING_PANEL_TOO_LARGE, ENTITY_build, 0);

    told->model.build.name = "Bench";
    argument_length(finding, 0, IN(84));
    argument_length(finding, 1, IN(18.5));
    assert_text(told, finding,
                "a panel of Bench, 84 in x 18-1/2 in, comes out of no sheet on offer");
    told->model.build.units = UNITS_MM;
    assert_text(told, finding,
                "a panel of Bench, 2133.6 mm x 469.9 mm, comes out of no sheet on offer");
}

static void sentence_names_the_entity(void **state)
{
    struct told *told = *state;
    struct box *box = MODEL_ADD(&told->model, box);

    box->name = "C";
    assert_text(told, finding_add(&told->planning, FINDING_BOX_UNCONNECTED, ENTITY_box, box->key),
                "C is joined to nothing");
}

static void control_characters_in_a_name_do_not_reach_the_sentence(void **state)
{
    struct told *told = *state;
    struct box *box = MODEL_ADD(&told->model, box);

    box->name = "C\x1b[2J";
    assert_text(told, finding_add(&told->planning, FINDING_BOX_UNCONNECTED, ENTITY_box, box->key),
                "C\xef\xbf\xbd[2J is joined to nothing");
}

static void stops_come_first_whatever_was_added_first(void **state)
{
    struct told *told = *state;

    finding_add(&told->planning, FINDING_HEAVY, ENTITY_box, 1);
    finding_add(&told->planning, FINDING_JOIN_TIGHT, ENTITY_join, 9);
    finding_add(&told->planning, FINDING_JOIN_NO_WOOD, ENTITY_join, 9);
    pass_finding(&told->planning);
    assert_int_equal(told->plan.findings.count, 3);
    assert_int_equal(told->plan.findings.at[0].kind, FINDING_JOIN_NO_WOOD);
    assert_int_equal(told->plan.findings.at[1].kind, FINDING_JOIN_TIGHT);
    assert_int_equal(plan_finding_severity(&told->plan.findings.at[2]), SEVERITY_NOTE);
}

static void same_finding_is_told_once(void **state)
{
    struct told *told = *state;

    for (int i = 0; i < 3; i++)
        argument_length(finding_add(&told->planning, FINDING_SCREW_SHORT_BITE, ENTITY_box, 4), 0,
                        IN(0.5));
    argument_length(finding_add(&told->planning, FINDING_SCREW_SHORT_BITE, ENTITY_box, 4), 0,
                    IN(0.25));
    pass_finding(&told->planning);
    assert_int_equal(told->plan.findings.count, 2);
    assert_int_equal(told->plan.findings.at[0].arguments[0].value, IN(0.25));
}

static void forecast_over_the_budget_is_told_with_the_difference(void **state)
{
    struct told *told = *state;

    told->model.build.budget = 40000;
    told->plan.cost.forecast = 43550;
    pass_finding(&told->planning);
    assert_int_equal(told->plan.findings.count, 1);
    assert_text(told, &told->plan.findings.at[0], "the forecast is 35.50 USD over the budget");
}

static void build_without_a_budget_is_never_over_it(void **state)
{
    struct told *told = *state;

    told->plan.cost.forecast = 43550;
    pass_finding(&told->planning);
    assert_int_equal(told->plan.findings.count, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(sentence_takes_arguments_in_the_units_of_the_build, begin,
                                        end),
        cmocka_unit_test_setup_teardown(sentence_names_the_entity, begin, end),
        cmocka_unit_test_setup_teardown(control_characters_in_a_name_do_not_reach_the_sentence,
                                        begin, end),
        cmocka_unit_test_setup_teardown(stops_come_first_whatever_was_added_first, begin, end),
        cmocka_unit_test_setup_teardown(same_finding_is_told_once, begin, end),
        cmocka_unit_test_setup_teardown(forecast_over_the_budget_is_told_with_the_difference, begin,
                                        end),
        cmocka_unit_test_setup_teardown(build_without_a_budget_is_never_over_it, begin, end),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
