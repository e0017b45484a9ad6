/*
 * The sheets of the wing headboard, written down in tests/paper/<sheet>.txt, in inches and in
 * millimetres, and what holds of any sheet. The figures of the headboard are those of the worked
 * example; its sheets were read against it.
 */
#include "base/utf8.h"
#include "golden.h"
#include "work.h"

#include "base/show.h"
#include "paper/sheets.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <stdio.h>
#include <string.h>

typedef void sheet_fn(struct text *out, const struct plan *plan);

static const struct {
    const char *name;
    sheet_fn *sheet;
} sheets[] = {
    {"heading", sheet_heading},   {"whole", sheet_whole},   {"findings", sheet_findings},
    {"boxes", sheet_boxes},       {"screws", sheet_screws}, {"joins", sheet_joins},
    {"cloth", sheet_cloth},       {"sewing", sheet_sewing}, {"staples", sheet_staples},
    {"buying", sheet_buying},     {"money", sheet_money},   {"steps", sheet_steps},
    {"cautions", sheet_cautions},
};

#define SHEETS (sizeof sheets / sizeof *sheets)

static const char *const examples[] = {"headboard", "ottoman", "banquette"};

#define EXAMPLES (sizeof examples / sizeof *examples)

static void in_millimetres(struct work_bench *bench)
{
    bench->model.build.units = UNITS_WORD_MM;
    work_plan(bench);
}

/* ---- the headboard ---- */

static void assert_sheets(const struct plan *plan, const char *units)
{
    for (size_t i = 0; i < SHEETS; i++) {
        char name[64];
        struct text out;

        text_init(&out);
        sheets[i].sheet(&out, plan);
        assert_false(text_failed(&out));
        snprintf(name, sizeof name, "%s-%s", sheets[i].name, units);
        assert_golden(name, text_string(&out));
        text_release(&out);
    }
}

static void sheets_of_the_headboard_read_as_written_down(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    assert_sheets(bench.plan, "inch");
    in_millimetres(&bench);
    assert_sheets(bench.plan, "mm");
    work_end(&bench);
}

static void cards_of_the_headboard_read_as_written_down(void **state)
{
    static const char *const steps[] = {"frame:3", "drill:32", "staple:24", "drive:32", "back:25"};
    struct work_bench bench;
    struct text out;

    (void)state;
    work_case(&bench, "headboard");
    text_init(&out);
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++) {
        text_add(&out, i ? "\n" : "");
        sheet_step(&out, bench.plan, work_step(&bench, steps[i]));
    }
    assert_false(text_failed(&out));
    assert_golden("cards", text_string(&out));
    text_release(&out);
    work_end(&bench);
}

/* Each padded face cut open at an edge; of the tufted ottoman its field too. */
static void sections_of_the_examples_read_as_written_down(void **state)
{
    static const char *const names[][2] = {{"headboard", "sections-headboard"},
                                           {"ottoman", "sections-ottoman"}};

    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        struct work_bench bench;
        struct text out;

        work_case(&bench, names[i][0]);
        text_init(&out);
        sheet_sections(&out, bench.plan);
        assert_false(text_failed(&out));
        assert_golden(names[i][1], text_string(&out));
        text_release(&out);
        work_end(&bench);
    }
}

static bool shows_pile(const struct plan *plan)
{
    struct text out;
    bool shown;

    text_init(&out);
    sheet_cutting(&out, plan);
    shown = strstr(text_string(&out), "pile ----->") != NULL;
    text_release(&out);
    return shown;
}

static void only_cloth_with_pile_has_an_arrow_on_its_roll(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    assert_false(shows_pile(bench.plan));
    for (size_t i = 0; i < bench.model.stocks.count; i++)
        bench.model.stocks.at[i].pile = bench.model.stocks.at[i].kind == STOCK_CLOTH;
    work_plan(&bench);
    assert_true(shows_pile(bench.plan));
    work_end(&bench);
}

/* How often the cutting sheet has these words where there is a vehicle 60 in long, 30 in high. */
static size_t cut_for_a_vehicle(struct work_bench *bench, double width, const char *words)
{
    struct passage *vehicle = &bench->model.passages.at[bench->model.passages.count - 1];
    struct text out;
    size_t count = 0;

    vehicle->kind = PASSAGE_VEHICLE;
    vehicle->name = "the blue van";
    vehicle->width = IN(width);
    vehicle->height = IN(30);
    vehicle->length = IN(60);
    work_plan(bench);
    text_init(&out);
    sheet_cutting(&out, bench->plan);
    for (const char *at = text_string(&out); (at = strstr(at, words)) != NULL; at++)
        count++;
    text_release(&out);
    return count;
}

/* The headboard has two sheets of plywood, and two of foam, which bend. What the second sheet is
 * parted into is 48 in wide, more than the diagonal of 35 by 30 (46.1) and less than that of 40 by
 * 30 (50). */
static void a_sheet_that_does_not_go_into_the_vehicle_says_what_is_cut_first(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    MODEL_ADD(&bench.model, passage);
    assert_int_equal(cut_for_a_vehicle(&bench, 40, "    does not go whole into the blue van: "), 2);
    assert_int_equal(cut_for_a_vehicle(&bench, 40, "across at 56 in first\n"), 1);
    assert_int_equal(cut_for_a_vehicle(&bench, 35, "across at 56 in first, and then on: "), 1);
    work_end(&bench);
}

static void plan_is_its_sheets_in_order(void **state)
{
    struct work_bench bench;
    struct text whole;
    const char *at;

    (void)state;
    work_case(&bench, "headboard");
    text_init(&whole);
    sheet_plan(&whole, bench.plan);
    at = text_string(&whole);
    for (size_t i = 0; i < SHEETS; i++) {
        struct text sheet;

        text_init(&sheet);
        sheets[i].sheet(&sheet, bench.plan);
        assert_int_equal(strncmp(at, text_string(&sheet), sheet.length), 0);
        at += sheet.length;
        text_release(&sheet);
    }
    assert_string_equal(at, "");
    text_release(&whole);
    work_end(&bench);
}

/* ---- any sheet ---- */

static void add_everything(struct text *out, const struct plan *plan)
{
    sheet_plan(out, plan);
    sheet_map(out, plan);
    for (size_t i = 0; i < plan->points.count; i++)
        sheet_point(out, plan, i, 80);
    for (size_t i = 0; i < plan->steps.count; i++)
        sheet_step(out, plan, &plan->steps.at[i]);
    assert_false(text_failed(out));
}

static void assert_no_trailing_blanks(const struct plan *plan)
{
    struct text out;

    text_init(&out);
    add_everything(&out, plan);
    assert_null(strstr(text_string(&out), " \n"));
    assert_int_equal(text_string(&out)[out.length - 1], '\n');
    text_release(&out);
}

static void no_line_ends_with_a_blank(void **state)
{
    struct work_bench bench;

    (void)state;
    for (size_t i = 0; i < EXAMPLES; i++) {
        work_case(&bench, examples[i]);
        assert_no_trailing_blanks(bench.plan);
        in_millimetres(&bench);
        assert_no_trailing_blanks(bench.plan);
        work_end(&bench);
    }
}

static void check_blanks(struct work_bench *bench, struct dice *dice)
{
    (void)dice;
    assert_no_trailing_blanks(bench->plan);
}

static void builds_by_chance_print_without_a_blank_at_a_lines_end(void **state)
{
    (void)state;
    work_builds(151, check_blanks);
}

/* All that people wrote, with what a terminal would obey: an escape sequence, a C1 control, a
 * change of direction, a line break, a broken character. */
static void spoil_texts(struct model *model)
{
    static const char *const spoilt = "\033[2J\xc2\x9b"
                                      "1m\xe2\x80\xae"
                                      "a\nb\xff\x7f";

    for (int kind = 0; kind <= ENTITY_build; kind++) {
        const struct entity *entity;

        if (kind == ENTITY_COUNT)
            continue;
        entity = entity_of((enum entity_kind)kind);
        for (size_t i = 0; i < model_count(model, entity->kind); i++)
            for (size_t k = 0; k < entity->field_count; k++)
                if (entity->fields[k].type == FIELD_TEXT &&
                    strcmp(entity->fields[k].name, "currency") != 0)
                    field_set_string(&entity->fields[k], model_at(model, entity->kind, i), spoilt);
    }
}

static void assert_safe(const struct text *out)
{
    const char *at = text_string(out);
    unsigned code;

    for (size_t left = out->length; left > 0;) {
        int bytes = utf8_next(at, left, &code);

        if (code != '\n' && !show_is_safe(code))
            fail_msg("character %#x at \"%.40s\"", code, at);
        assert_true(code != 0xFFFD || bytes == 3); /* itself, not a byte that stands for it */
        at += bytes;
        left -= (size_t)bytes;
    }
}

static void what_people_wrote_is_filtered_on_every_sheet(void **state)
{
    struct work_bench bench;
    struct text out;

    (void)state;
    for (size_t i = 0; i < EXAMPLES; i++) {
        work_case(&bench, examples[i]);
        MODEL_ADD(&bench.model, spend)->amount = 100;
        work_fitting(&bench, bench.model.boxes.at[0].key, FITTING_LEG);
        spoil_texts(&bench.model);
        work_plan(&bench);
        text_init(&out);
        add_everything(&out, bench.plan);
        assert_non_null(strstr(text_string(&out), "\xef\xbf\xbd[2J"));
        assert_safe(&out);
        text_release(&out);
        work_end(&bench);
    }
}

static void empty_plan_prints(void **state)
{
    struct work_bench bench;
    struct text out;

    (void)state;
    for (int units = 0; units < UNITS_WORD_COUNT; units++) {
        work_begin(&bench);
        bench.model.build.name = "nothing yet";
        bench.model.build.units = units;
        work_plan(&bench);
        text_init(&out);
        add_everything(&out, bench.plan);
        assert_int_equal(strncmp(text_string(&out), "nothing yet (idea)\n", 19), 0);
        assert_non_null(strstr(text_string(&out), "\nFINDINGS\n"));
        assert_null(strstr(text_string(&out), "BOXES"));
        assert_null(strstr(text_string(&out), "ORDER OF WORK"));
        text_release(&out);
        work_end(&bench);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sheets_of_the_headboard_read_as_written_down),
        cmocka_unit_test(cards_of_the_headboard_read_as_written_down),
        cmocka_unit_test(sections_of_the_examples_read_as_written_down),
        cmocka_unit_test(only_cloth_with_pile_has_an_arrow_on_its_roll),
        cmocka_unit_test(a_sheet_that_does_not_go_into_the_vehicle_says_what_is_cut_first),
        cmocka_unit_test(plan_is_its_sheets_in_order),
        cmocka_unit_test(no_line_ends_with_a_blank),
        cmocka_unit_test(builds_by_chance_print_without_a_blank_at_a_lines_end),
        cmocka_unit_test(what_people_wrote_is_filtered_on_every_sheet),
        cmocka_unit_test(empty_plan_prints),
    };
    int failed;

    if (!setlocale(LC_CTYPE, "C.UTF-8"))
        return 1;
    failed = cmocka_run_group_tests_name("paper sheets", tests, NULL, NULL);
    return failed ? 1 : 0;
}
