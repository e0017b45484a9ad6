/*
 * Every published figure of published.h against what the engine makes of it; and the facts of the
 * trade that no work publishes, which are common practice, no source.
 */
#include "published.h"
#include "soft.h"

#include "base/quantity.h"
#include "model/model.h"
#include "model/trade.h"
#include "plan/beam.h"
#include "plan/bend.h"
#include "plan/cover_sums.h"
#include "plan/findings.h"
#include "plan/hold.h"
#include "plan/lift.h"
#include "plan/passage.h"
#include "plan/screws.h"
#include "plan/steps.h"
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
    struct panel panel = {.area = {0, 0, inch(12), inch(12)},
                          .width = inch(12),
                          .height = inch(12),
                          .thickness = inch(thickness)};
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

/* The least radius of a dry sheet, in inches. */
static double bend_inches(double thickness, bool across)
{
    int64_t value[TRADE_COUNT];

    for (int i = 0; i < TRADE_COUNT; i++)
        value[i] = trade_values[i].standard[UNITS_INCH];
    return (double)bend_least(value, (int64_t)(thickness * LENGTH_INCH + 0.5), across) /
           LENGTH_INCH;
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

static double stair_is_wide(double width)
{
    int64_t slope = trade_values[TRADE_STAIR_SLOPE].standard[UNITS_INCH];
    int64_t margin = trade_values[TRADE_DOOR_MARGIN].standard[UNITS_INCH];

    return passage_stair((struct vector){inch(70), inch(width - 6), inch(40)}, inch(width), 0, 0,
                         slope, margin) &&
           !passage_stair((struct vector){inch(70), inch(width - 1), inch(40)}, inch(width), 0, 0,
                          slope, margin);
}

/* 0.79 of the plumb head-room lie across the slope. */
static double stair_is_high(double height)
{
    int64_t slope = trade_values[TRADE_STAIR_SLOPE].standard[UNITS_INCH];
    int64_t margin = trade_values[TRADE_DOOR_MARGIN].standard[UNITS_INCH];

    return passage_stair((struct vector){inch(70), inch(30), inch(60)}, inch(36), inch(height), 0,
                         slope, margin) &&
           !passage_stair((struct vector){inch(70), inch(34), inch(62)}, inch(36), inch(height), 0,
                          slope, margin);
}

/* 2^1.5 of its width. */
static double hall_turns(double width)
{
    int64_t turns = passage_corner_length(inch(width), inch(width));

    return turns > inch(101.8) && turns < inch(101.9);
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

/* ---- ours: practice of cloth, each from a plan of its own ---- */

static struct soft *cloth_begin(void)
{
    void *state = NULL;

    assert_int_equal(soft_begin(&state), 0);
    return state;
}

static void cloth_end(struct soft *soft)
{
    void *state = soft;

    soft_end(&state);
}

static int64_t add_lining(struct soft *soft, double width, double height)
{
    int64_t box = soft_box(soft, "C", width, 3, height);

    ((struct stock *)model_find(&soft->model, ENTITY_stock, soft->lining))->thickness = inch(0.06);
    return soft_layer(soft, box, LAYER_LINING, SHAPE_FLAT, SIDE_BACK, soft->lining);
}

/* -1 where the plan warns of the seam. */
static double lining_seams(void)
{
    struct soft *soft = cloth_begin();
    int64_t lining = add_lining(soft, 80, 70);
    const struct cover *cover;
    double seams;

    soft_layer_of(soft, lining)->seaming = SEAMING_MIDDLE;
    soft_plan(soft);
    cover = soft_cover(soft, lining);
    seams = cover->alone && *cover->alone == inch(40) ? (double)cover->seams : -1;
    if (soft_findings(soft, FINDING_SEAM_ALONE) || soft_findings(soft, FINDING_SEAM_ON))
        seams = -1;
    cloth_end(soft);
    return seams;
}

static double lining_leg(enum finish_word finish)
{
    struct soft *soft = cloth_begin();
    int64_t lining = add_lining(soft, 40, 56);
    double leg;

    soft_layer_of(soft, lining)->finish = (int64_t)finish;
    soft_plan(soft);
    leg = (double)soft_edge(soft, lining, 0)->leg / 8128;
    cloth_end(soft);
    return leg;
}

static double lining_at_bench(enum edge_word side)
{
    struct soft *soft = cloth_begin();
    int64_t lining = add_lining(soft, 40, 56);
    int64_t staples = 0;

    soft_edge_class(soft, lining, EDGE_LEFT, CLASS_SITE);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->intervals.count; i++) {
        const struct interval *interval = &soft->plan->intervals.at[i];

        if (soft->plan->edges.at[interval->edge].edge == side && interval->pass == STAPLED_AT_BENCH)
            staples += interval->staples;
    }
    cloth_end(soft);
    return (double)staples;
}

static int64_t add_sleeve(struct soft *soft)
{
    int64_t batting;
    int64_t cover = soft_wing(soft, "W", SIDE_RIGHT, &batting);

    soft_endings(soft, cover, ENDING_OPEN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN);
    soft_plan(soft);
    return cover;
}

static double sleeve_boxings(void)
{
    struct soft *soft = cloth_begin();
    int64_t cover = add_sleeve(soft);
    int count = 0;

    for (size_t i = 0; i < soft->plan->pieces.count; i++)
        count += soft->plan->pieces.at[i].layer == cover &&
                 strstr(soft->plan->pieces.at[i].name, "boxing") != NULL;
    cloth_end(soft);
    return count;
}

static const struct step *step_of(const struct soft *soft, int kind, int64_t layer)
{
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        if (soft->plan->steps.at[i].kind == kind && soft->plan->steps.at[i].layer == layer)
            return &soft->plan->steps.at[i];
    fail_msg("no such step");
    return NULL;
}

static double sleeve_is_open_behind(void)
{
    struct soft *soft = cloth_begin();
    int64_t cover = add_sleeve(soft);
    const struct step *sew = step_of(soft, STEP_SEW, cover);
    bool open = strcmp(sew->actions[sew->action_count - 1],
                       "Leave the back open: it is pulled on there") == 0;

    for (size_t i = 0; i < sew->action_count; i++)
        open = open && !strstr(sew->actions[i], "zip");
    cloth_end(soft);
    return open;
}

static double sleeve_people(void)
{
    struct soft *soft = cloth_begin();
    int64_t cover = add_sleeve(soft);
    int people = step_of(soft, STEP_COVER, cover)->people;

    cloth_end(soft);
    return people;
}

/* Of a back in plain view, 40 x 30: rows of staples and strips along an edge. */
static double back_rows(enum edge_word side)
{
    struct soft *soft = cloth_begin();
    int64_t box = soft_box(soft, "K", 40, 4, 30);
    int64_t back = soft_layer(soft, box, LAYER_OUTSIDE_BACK, SHAPE_FLAT, SIDE_BACK, soft->cloth);
    const struct back_way *way = NULL;
    int64_t blind, bottom;

    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->back_ways.count; i++)
        if (soft->plan->back_ways.at[i].layer == back && soft->plan->back_ways.at[i].chosen)
            way = &soft->plan->back_ways.at[i];
    assert_non_null(way);
    assert_int_equal(way->closing, CLOSING_BLIND);
    blind = soft_edge(soft, back, 0)->staples;  /* at 3 in, and under the card at 3/4 */
    bottom = soft_edge(soft, back, 1)->staples; /* at 1 in */
    double rows[EDGE_COUNT] = {
        [EDGE_TOP] = way->card == inch(40) && blind == (40 / 3 + 2) + (160 / 3 + 2) ? 2 : 0,
        [EDGE_LEFT] = (double)way->strip / (double)inch(2 * (30 - 2)),
        [EDGE_RIGHT] = (double)way->strip / (double)inch(2 * (30 - 2)),
        [EDGE_BOTTOM] = way->under == inch(40) && bottom == 41 ? 1 : 0,
    };
    cloth_end(soft);
    return rows[side];
}

static double wing_nail_lines(void)
{
    static const struct {
        const char *name;
        enum side_word side;
    } wings[] = {{"L", SIDE_RIGHT}, {"R", SIDE_LEFT}};
    struct soft *soft = cloth_begin();
    struct stock *nails = MODEL_ADD(&soft->model, stock);
    int64_t key = nails->key;
    size_t lines;

    nails->name = "nails";
    nails->kind = STOCK_NAIL;
    nails->diameter = inch(0.4375);
    for (size_t i = 0; i < sizeof wings / sizeof *wings; i++) {
        int64_t batting;
        int64_t cover = soft_wing(soft, wings[i].name, wings[i].side, &batting);
        int64_t box = soft_layer_of(soft, cover)->box;
        int64_t trim = soft_layer(soft, box, LAYER_TRIM, SHAPE_RUN, SIDE_FRONT, key);

        soft_endings(soft, trim, ENDING_SIDE, ENDING_SIDE, ENDING_STOP, ENDING_STOP);
    }
    soft_plan(soft);
    lines = soft->plan->nail_lines.count;
    cloth_end(soft);
    return (double)lines;
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
