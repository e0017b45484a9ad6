/*
 * Every published figure of published.h against what the engine makes of it; and the facts of the
 * trade that no work publishes, which are common practice, no source.
 */
#include "published.h"

#include "base/quantity.h"
#include "model/model.h"
#include "model/trade.h"
#include "plan/beam.h"
#include "plan/cover_sums.h"
#include "plan/hold.h"
#include "plan/lift.h"
#include "plan/passage.h"
#include "plan/screws.h"
#include "plan/strength.h"
#include "plan/weight.h"
#include "plan/wood.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static int64_t inch(double inches)
{
    return (int64_t)(inches * 8128.0 + 0.5);
}

static double in_inches(enum trade trade)
{
    return (double)trade_values[trade].standard[UNITS_INCH] / 8128;
}

/* ---- ours: wood ---- */

struct bench {
    struct arena arena;
    jmp_buf escape;
    struct model model;
    struct plan plan;
};

static void bench_begin(struct bench *bench)
{
    memset(bench, 0, sizeof *bench);
    arena_init(&bench->arena);
    bench->arena.escape = &bench->escape;
    model_init(&bench->model, &bench->arena);
    bench->plan.facts = &bench->model;
    trade_resolve(&bench->model, bench->plan.value);
}

static int64_t bench_stock(struct bench *bench, const char *name, int64_t kind, double density)
{
    struct stock *stock = MODEL_ADD(&bench->model, stock);

    stock->name = name;
    stock->kind = kind;
    stock->density = (int64_t)(density * 16018.46337396 + 0.5);
    return stock->key;
}

static double stick_wide(const char *name)
{
    struct bench bench;
    double wide;

    bench_begin(&bench);
    wide = (double)stick_section(&bench.model, bench_stock(&bench, name, STOCK_STICK, 0)).wide;
    arena_release(&bench.arena);
    return wide / 8128;
}

static double pounds(int64_t mass)
{
    return (double)mass / 453592.37;
}

static double stick_pounds(const char *name, double density)
{
    struct bench bench;
    struct plan_member member = {.length = inch(12)};
    double mass;

    bench_begin(&bench);
    member.stock = bench_stock(&bench, name, STOCK_STICK, density);
    struct section section = stick_section(&bench.model, member.stock);
    member.solid.high = (struct vector){section.thin, section.wide, inch(12)};
    mass = pounds(weight_of_member(&bench.plan, &member));
    arena_release(&bench.arena);
    return mass;
}

static double sheet_pounds(double thickness, double density)
{
    struct bench bench;
    struct panel panel = {.area = {0, 0, inch(12), inch(12)}, .thickness = inch(thickness)};
    double mass;

    bench_begin(&bench);
    panel.stock = bench_stock(&bench, "ply", STOCK_SHEET, density);
    mass = pounds(weight_of_panel(&bench.plan, &panel));
    arena_release(&bench.arena);
    return mass;
}

static double board_feet(const char *name, double feet)
{
    return (double)stick_board_feet(name, inch(12 * feet)) / 1000;
}

/* Is a sheet of that thickness given the span of the row? */
static double span_as(double thickness, enum trade row)
{
    struct bench bench;
    bool same;

    bench_begin(&bench);
    same = span_allowed(bench.plan.value, USE_BACK, inch(thickness)) == bench.plan.value[row];
    arena_release(&bench.arena);
    return same;
}

/* ---- ours: units ---- */

static double parsed(enum quantity quantity, const char *text)
{
    int64_t value = 0;
    struct fault_note note;

    assert_int_equal(quantity_parse(quantity, UNITS_INCH, text, &value, &note), FAULT_NONE);
    return (double)value;
}

static double length_in_mm(const char *text)
{
    return parsed(QUANTITY_LENGTH, text) / 320;
}

static double kilograms(const char *text)
{
    return parsed(QUANTITY_MASS, text) / 1000000;
}

static double millilitres(const char *text)
{
    return parsed(QUANTITY_VOLUME, text) / 1000;
}

static double density_kg(const char *text)
{
    return parsed(QUANTITY_DENSITY, text) / 1000;
}

/* ---- ours: screws and beams ---- */

static double gauge_inches(int64_t gauge)
{
    return (double)screw_gauge_diameter(gauge) / 8128;
}

static double lead_hole(int64_t gauge, enum wood_word wood, double least, double most)
{
    int64_t pilot = screw_bits_of(gauge)->pilot[wood];

    return pilot >= inch(least) && pilot <= inch(most);
}

static double clearance_64ths(int64_t gauge)
{
    return (double)screw_bits_of(gauge)->clearance / LENGTH_64TH;
}

static double berg(enum beam_load load)
{
    return beam_carries(&(struct beam){108, 3, 10, 1}, load, 750);
}

/* The stiffness that Record's formula gives back from the bend without shear. */
static double record(void)
{
    struct beam beam = {72, 1.5, 3.5, 1400000};
    double bend = beam_bend(&beam, BEAM_MIDDLE, 300).bending;

    return 300.0 * 72 * 72 * 72 / (4 * bend * 1.5 * 3.5 * 3.5 * 3.5) / beam.stiffness;
}

/* ---- ours: cloth ---- */

static double repeats(double length, double repeat)
{
    return (double)drop_repeats(inch(length), inch(repeat));
}

static double square_for(double length, double strip)
{
    return (double)bias_square(inch(length), inch(strip), 1000000, inch(1)) / 8128;
}

static double strip_from(double width, double height, double strip)
{
    return (double)bias_length(inch(width), inch(height), inch(strip)) / 8128;
}

static double longest_on(double width)
{
    return (double)(bias_longest(inch(width)) / LENGTH_INCH);
}

static double welt_for(double cord)
{
    return (double)welt_strip(inch(cord), inch(0.5), inch(0.125), 0) / 8128;
}

static double web_end(void)
{
    return (double)(trade_values[TRADE_STAPLE_WEB_FIRST].standard[UNITS_INCH] +
                    trade_values[TRADE_STAPLE_WEB_FOLD].standard[UNITS_INCH]);
}

/* ---- ours: lifting, the way in, beds ---- */

static double lifted(double across, double up, double travel, enum lift_grip grip)
{
    struct lift_place place = {(int64_t)(across * 3200), (int64_t)(up * 3200),
                               (int64_t)(travel * 3200), 0, grip};

    return (double)lift_limit(23000000, &place) / 1000000;
}

static double lifted_pounds(double across, double up, double travel, enum lift_grip grip)
{
    struct lift_place place = {inch(across), inch(up), inch(travel), 0, grip};

    return pounds(lift_limit((int64_t)(51 * 453592.37), &place));
}

/* Passes with 2 in to spare in both, and with an inch more either way does not. */
static double door_takes(double width, double height)
{
    int64_t wide = inch(width);
    int64_t high = inch(height);
    int64_t margin = trade_values[TRADE_DOOR_MARGIN].standard[UNITS_INCH];
    struct vector size = {inch(100), inch(width - 2), inch(height - 2)};
    struct vector larger = {inch(100), inch(width - 1), inch(height - 2)};

    return passage_straight(size, wide, high, margin) &&
           !passage_straight(larger, wide, high, margin);
}

static double stair_takes(double width, double height)
{
    return passage_stair((struct vector){inch(70), inch(30), inch(60)}, inch(width), inch(height),
                         0, trade_values[TRADE_STAIR_SLOPE].standard[UNITS_INCH],
                         trade_values[TRADE_DOOR_MARGIN].standard[UNITS_INCH]) &&
           !passage_stair((struct vector){inch(70), inch(35), inch(62)}, inch(width), inch(height),
                          0, trade_values[TRADE_STAIR_SLOPE].standard[UNITS_INCH],
                          trade_values[TRADE_DOOR_MARGIN].standard[UNITS_INCH]);
}

static double bed_wants_leg(double width)
{
    struct bench bench;
    struct strength_bed bed;
    struct box *box;
    struct facing *facing;
    bool wants;

    bench_begin(&bench);
    int64_t sheet = bench_stock(&bench, "ply", STOCK_SHEET, 0);
    box = MODEL_ADD(&bench.model, box);
    box->name = "bed";
    box->width = inch(width);
    box->depth = inch(80);
    box->height = inch(12);
    facing = MODEL_ADD(&bench.model, facing);
    facing->box = bench.model.boxes.at[0].key;
    facing->side = SIDE_TOP;
    facing->stock = sheet;
    facing->use = USE_DECK;
    wants = strength_bed(&bench.plan, &bench.model.boxes.at[0], &bed) && bed.has < bed.legs;
    arena_release(&bench.arena);
    return wants;
}

/* ---- ours: practice ---- */

static double bite_is_enough(double bite, enum trade least)
{
    return inch(bite) >= trade_values[least].standard[UNITS_INCH];
}

static double bored_for(int64_t gauge)
{
    const struct screw_bits *bits = screw_bits_of(gauge);

    return bits->clearance >= screw_gauge_diameter(gauge) &&
           bits->pilot[WOOD_HARD] < screw_gauge_diameter(gauge);
}

static double screws_across(double width)
{
    enum trade screws = width <= in_inches(TRADE_JOINT_WIDTH_NARROW)   ? TRADE_JOINT_SCREWS_NARROW
                        : width <= in_inches(TRADE_JOINT_WIDTH_MIDDLE) ? TRADE_JOINT_SCREWS_MIDDLE
                                                                       : TRADE_JOINT_SCREWS_WIDE;

    return (double)trade_values[screws].standard[UNITS_INCH];
}

static struct widths split(double cut)
{
    return widths_split(inch(cut), inch(54), inch(0.5), inch(4), 0);
}

static double drops(double cut)
{
    return split(cut).count;
}

static double seam_at(double cut)
{
    return (double)split(cut).seam / 8128;
}

/* ---- the tables ---- */

enum surety { SEEN, SECOND, MEMORY };

struct fact {
    const char *topic, *what;
    double ours, published, within;
    const char *source;
    enum surety surety;
};

static void hold_against(const struct fact *facts, size_t count)
{
    size_t wrong = 0;

    for (size_t i = 0; i < count; i++) {
        double off = facts[i].ours - facts[i].published;

        if (off <= facts[i].within + 1e-12 && off >= -facts[i].within - 1e-12)
            continue;
        print_error("%s, %s: ours %.6f, published %.6f (%s)\n", facts[i].topic, facts[i].what,
                    facts[i].ours, facts[i].published, facts[i].source);
        wrong++;
    }
    assert_int_equal(wrong, 0);
}

#define FACT_ROW(topic, what, ours, published, within, source, surety) \
    {topic, what, (double)(ours), published, within, source, surety},

static void published_figures_are_ours(void **state)
{
    const struct fact facts[] = {PUBLISHED(FACT_ROW)};

    (void)state;
    hold_against(facts, sizeof facts / sizeof *facts);
}

static void there_are_eighty_of_them_from_twenty_sources(void **state)
{
    const struct fact facts[] = {PUBLISHED(FACT_ROW)};
    const size_t count = sizeof facts / sizeof *facts;
    size_t sources = 0;

    (void)state;
    for (size_t i = 0; i < count; i++) {
        size_t same = 0;

        while (same < i && strcmp(facts[same].source, facts[i].source) != 0)
            same++;
        sources += same == i;
    }
    assert_true(count >= 80);
    assert_true(sources >= 20);
}

static void practice_is_ours(void **state)
{
#define PRACTICE_ROW(what, ours, wanted) \
    {"practice", what, (double)(ours), wanted, 1e-9, "common practice, no source", MEMORY},
    const struct fact facts[] = {PRACTICES(PRACTICE_ROW)};

    (void)state;
    hold_against(facts, sizeof facts / sizeof *facts);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_figures_are_ours),
        cmocka_unit_test(there_are_eighty_of_them_from_twenty_sources),
        cmocka_unit_test(practice_is_ours),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
