/*
 * Care: what things weigh, who lifts them, how they come into the room, what they hold. None of it
 * stands in the plan: each table asks the finished plan for it.
 */
#include "paper/sheets.h"

#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"
#include "plan/hold.h"
#include "plan/lift.h"
#include "plan/route.h"
#include "plan/strength.h"
#include "plan/weight.h"

#include <assert.h>
#include <stdio.h>

/* A table that is worked out in an arena of its own. */
struct care {
    struct text *out;
    const struct plan *plan;
    struct arena arena;
};

/* Where memory runs out in it the sheet has failed. */
static void with_arena(struct text *out, const struct plan *plan, void (*put)(void *care))
{
    struct care care = {.out = out, .plan = plan};

    arena_init(&care.arena);
    if (!arena_try(&care.arena, put, &care))
        out->failed = true;
    arena_release(&care.arena);
}

static struct printed print_mass(const struct plan *plan, int64_t mass)
{
    return print_quantity(plan, QUANTITY_MASS, mass);
}

/* ---- figures in columns: their unit stands in the title ---- */

#define MG_POUND_THOUSANDTH 453592370 /* 1/1000 mg in a pound, exact */
#define MG_KILOGRAM 1000000

static const char *mass_unit(const struct plan *plan)
{
    return model_units(plan->facts) == UNITS_INCH ? "lb" : "kg";
}

/* To a tenth of a pound or a kilogram. */
static struct printed print_tenths(const struct plan *plan, int64_t mass)
{
    int64_t tenths = model_units(plan->facts) == UNITS_INCH
                         ? whole_divide_even(mass * 10000, MG_POUND_THOUSANDTH)
                         : whole_divide_even(mass * 10, MG_KILOGRAM);
    struct printed printed;

    snprintf(printed.at, sizeof printed.at, "%lld.%lld", (long long)(tenths / 10),
             (long long)(tenths % 10));
    return printed;
}

/* Where hands are: to an inch or a centimetre, as surely as it is known. */
static struct printed print_reach(const struct plan *plan, int64_t length)
{
    int64_t step = model_units(plan->facts) == UNITS_INCH ? LENGTH_INCH : 10 * LENGTH_MM;

    return print_length(plan, whole_divide_even(length, step) * step);
}

/* ---- weights ---- */

static void weight_cells(struct table *table, const struct plan *plan, const struct weight *weight)
{
    for (int kind = 0; kind < WEIGHT_KINDS; kind++)
        table_cell(table, "%s", weight->of[kind] ? print_tenths(plan, weight->of[kind]).at : "");
    table_cell(table, "%s", print_tenths(plan, weight_bare(weight)).at);
    table_cell(table, "%s", print_tenths(plan, weight_finished(weight)).at);
}

static void put_weights(void *context)
{
    struct care *care = context;
    const struct plan *plan = care->plan;
    static const char *const words[] = {"box",     "sticks", "panels", "fixings", "foam",
                                        "batting", "cloth",  "loose",  "bare",    "finished"};
    const struct model *facts = plan->facts;
    struct weight *weights = ARENA_MANY(&care->arena, struct weight, facts->boxes.count);
    struct weight whole = {{0}};
    struct table table;

    weight_boxes(plan, weights);
    table_begin(&table, "lrrrrrrrrr");
    table_heads(&table, words);
    for (size_t i = 0; i < facts->boxes.count; i++) {
        table_cell(&table, "%s", facts->boxes.at[i].name);
        weight_cells(&table, plan, &weights[i]);
        for (int kind = 0; kind < WEIGHT_KINDS; kind++)
            whole.of[kind] += weights[i].of[kind];
    }
    if (facts->boxes.count > 1) {
        table_cell(&table, "%s", "in all");
        weight_cells(&table, plan, &whole);
    }
    table_end(&table, care->out);
    text_add(care->out, "  Loose panels are carried by themselves and stand in neither sum.\n");
}

/* Every member and panel by itself, five in a row: what is heavy at the saw. */
static void put_parts(struct text *out, const struct plan *plan)
{
    struct table table;

    table_begin(&table, "lrlrlrlrlr");
    for (size_t i = 0; i < plan->members.count; i++) {
        table_cell(&table, "%s", plan->members.at[i].label);
        table_cell(&table, "%s",
                   print_tenths(plan, weight_of_member(plan, &plan->members.at[i])).at);
    }
    for (size_t i = 0; i < plan->panels.count; i++) {
        table_cell(&table, "%s", plan->panels.at[i].label);
        table_cell(&table, "%s", print_tenths(plan, weight_of_panel(plan, &plan->panels.at[i])).at);
    }
    while (table.count % (size_t)table.columns != 0)
        table_cell(&table, "%s", "");
    table_end(&table, out);
}

void sheet_weights(struct text *out, const struct plan *plan)
{
    if (plan->facts->boxes.count == 0)
        return;
    text_format(out, "\nWEIGHTS, in %s\n", mass_unit(plan));
    with_arena(out, plan, put_weights);
    put_parts(out, plan);
}

/* ---- lifting ---- */

/* How many people the equation asks for; none are enough for what is carried in parts. */
static const char *crew_words(int people)
{
    static const char *const words[LIFT_TEAM + 1] = {"in parts", "1", "2", "3", "4"};

    assert(people >= 0 && people <= LIFT_TEAM);
    return words[people];
}

static void lift_row(struct table *table, const struct plan *plan, const struct lift *lift)
{
    const struct step *step = &plan->steps.at[lift->step];

    table_cell(table, "%zu", lift->step + 1);
    table_cell(table, "%s", step->title);
    table_cell(table, "%s%s", print_tenths(plan, lift->mass).at, lift->turned ? "*" : " ");
    table_cell(table, "%s/%s/%s", print_reach(plan, lift->place.across).at,
               print_reach(plan, lift->place.up).at, print_reach(plan, lift->place.travel).at);
    table_cell(table, "%s", print_tenths(plan, lift->limit).at);
    table_cell(table, "%s (%d)", crew_words(lift->people), step_people(step));
}

static void put_lifts(void *context)
{
    struct care *care = context;
    static const char *const words[] = {"", "step", "lifted", "out/up/by", "one", "people"};
    struct lifts lifts = lift_make(care->plan, &care->arena);
    struct table table;

    table_begin(&table, "rlrrrr");
    table_heads(&table, words);
    for (size_t i = 0; i < lifts.of.count; i++)
        lift_row(&table, care->plan, &lifts.of.at[i]);
    table_end(&table, care->out);
}

void sheet_lifts(struct text *out, const struct plan *plan)
{
    text_format(out, "\nLIFTING, in %s and %s\n", mass_unit(plan),
                model_units(plan->facts) == UNITS_INCH ? "in" : "mm");
    with_arena(out, plan, put_lifts);
    lines_add(
        out, "", 2,
        "Hands out before the ankles, up above the floor, and raised by; what one person is "
        "good for there, and how many people, by the revised NIOSH equation (94-110) and "
        "the team shares of HSE L23; in brackets the people that are usual in the trade. * is "
        "turned over an edge, which carries half. Who only lifts is called for a moment: the "
        "minutes of a step are those of its work. Guidance for healthy adults, no medical "
        "advice: who feels it is too heavy is right.");
}

/* ---- the way in ---- */

static void thing_cell(struct table *table, const struct plan *plan, const struct route_line *line)
{
    const struct join *join = MODEL_FIND(plan->facts, join, line->join);

    if (line->thing == ROUTE_WHOLE)
        table_cell(table, "%s", "the whole piece");
    else if (line->thing == ROUTE_JOINED)
        table_cell(table, "if %s were joined before", join ? join->name : "");
    else if (line->thing == ROUTE_GROUP)
        table_cell(table, "%s and %zu more", print_box(plan, line->box), line->boxes - 1);
    else
        table_cell(table, "%s", print_box(plan, line->box));
}

static void route_row(struct table *table, const struct plan *plan, const struct route_line *line)
{
    const struct passage *passage = MODEL_FIND(plan->facts, passage, line->passage);
    int64_t spare = line->spare; /* of what does not pass less than the margin: it is that short */

    thing_cell(table, plan, line);
    table_cell(table, "%s x %s x %s", print_length(plan, line->size.x).at,
               print_length(plan, line->size.y).at, print_length(plan, line->size.z).at);
    table_cell(table, "%s",
               passage->name[0] ? passage->name : words_passage.at[passage->kind].name);
    table_cell(table, "%s", route_way_words(line->way));
    if (line->way == ROUTE_NOT)
        table_cell(table, "%s short",
                   print_length_unit(plan, plan->value[TRADE_DOOR_MARGIN] - spare).at);
    else if (spare >= ROUTE_SPARE)
        table_cell(table, "%s", "plenty");
    else
        table_cell(table, "%s spare%s", print_length_unit(plan, spare).at,
                   spare < plan->value[TRADE_DOOR_MARGIN_GOOD] ? ", tight" : "");
}

/* A join that is made in the room is there for the way only where the boxes, joined before, would
 * not pass. */
static void put_site_joins(struct text *out, const struct plan *plan, const struct route *route)
{
    for (size_t i = 0; i < plan->facts->joins.count; i++) {
        const struct join *join = &plan->facts->joins.at[i];
        bool kept = false;

        if (!route_holds(join) || join->place == PLACE_BENCH)
            continue;
        for (size_t k = 0; k < route->lines.count; k++)
            kept |= route->lines.at[k].join == join->key && route->lines.at[k].way == ROUTE_NOT;
        text_format(out, "  %s: %s; %s of work there.\n", join->name,
                    kept ? "has to be joined in the room"
                         : "joined in the room, though the way would let it pass joined",
                    print_minutes(route_site_minutes(plan, join->key)).at);
    }
}

static void put_route(void *context)
{
    struct care *care = context;
    struct route route = route_make(care->plan, &care->arena);
    struct table table;

    table_begin(&table, "lllll");
    for (size_t i = 0; i < route.lines.count; i++)
        route_row(&table, care->plan, &route.lines.at[i]);
    table_end(&table, care->out);
    put_site_joins(care->out, care->plan, &route);
}

void sheet_route(struct text *out, const struct plan *plan)
{
    text_add(out, "\nTHE WAY IN\n");
    if (plan->facts->passages.count == 0) {
        text_add(out,
                 "  No passage is entered: measure doors at a right angle, halls, stair, lift\n"
                 "  and the vehicle before the boxes are split.\n");
        return;
    }
    with_arena(out, plan, put_route);
}

/* ---- strength ---- */

static void span_row(struct table *table, const struct plan *plan, const struct strength_span *span)
{
    table_cell(table, "%s",
               span->panel != PLAN_NONE ? plan->panels.at[span->panel].label
                                        : plan->members.at[span->member].label);
    table_cell(table, "%s", print_length(plan, span->span).at);
    table_cell(table, "%s", span->good ? print_length(plan, span->good).at : "");
    table_cell(table, "%s", print_length(plan, span->bend).at);
    table_cell(table, "%s", print_length(plan, span->shear).at);
    table_cell(table, "%s", print_length(plan, span->most).at);
    table_cell(table, "%s", span->bend > span->most ? "too far" : "good");
}

/* By what rule the spans are good or not. */
static void put_span_rule(struct text *out, const struct plan *plan)
{
    struct text words;

    text_init(&words);
    text_format(&words,
                "With %s in the middle; formulas strength.strip, strength.slat and beam.bend, Wood "
                "Handbook GTR-190; most is the span / %lld (IBC table 1604.3), of slats / %lld.",
                print_mass(plan, plan->value[TRADE_STRENGTH_LOAD]).at,
                (long long)plan->value[TRADE_STRENGTH_DEFLECTION],
                (long long)plan->value[TRADE_SLAT_DEFLECTION]);
    lines_add(out, "", 2, text_string(&words));
    text_release(&words);
}

static void put_spans(void *context)
{
    struct care *care = context;
    static const char *const columns[] = {"sat on", "clear", "usual", "bends", "shear", "most", ""};
    struct strength_spans spans = strength_spans(care->plan, &care->arena);
    struct table table;

    if (spans.of.count == 0)
        return;
    table_begin(&table, "lrrrrrl");
    table_heads(&table, columns);
    for (size_t i = 0; i < spans.of.count; i++)
        span_row(&table, care->plan, &spans.of.at[i]);
    table_end(&table, care->out);
    put_span_rule(care->out, care->plan);
}

static void put_holds(struct text *out, const struct plan *plan)
{
    static const char *const words[] = {"join", "screws", "pulled apart", "across", ""};
    struct table table;

    table_begin(&table, "lrrrl");
    table_heads(&table, words);
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        const struct join *join = MODEL_FIND(plan->facts, join, junction->join);
        struct hold hold;

        if (!join || !hold_join(plan, junction, &hold))
            continue;
        table_cell(&table, "%s", join->name);
        table_cell(&table, "%lld", (long long)hold.points);
        table_cell(&table, "%s", hold.end_grain ? "none" : print_tenths(plan, hold.out).at);
        table_cell(&table, "%s", print_tenths(plan, hold.side).at);
        table_cell(&table, "%s", hold.end_grain ? "bites end grain: pull on it across only" : "");
    }
    table_end(&table, out);
    text_format(out,
                "  In %s, against a person who leans, %s; formulas hold.screw.out and\n"
                "  hold.screw.side, older NDS. Levers, glue and age are not counted.\n",
                mass_unit(plan), print_mass(plan, plan->value[TRADE_STRENGTH_PULL]).at);
}

static void put_beds(struct text *out, const struct plan *plan)
{
    for (size_t i = 0; i < plan->facts->boxes.count; i++) {
        const struct box *box = &plan->facts->boxes.at[i];
        struct strength_bed bed;

        if (strength_bed(plan, box, &bed))
            text_format(out,
                        "  %s, %s wide, wants %lld legs along its middle and has %lld (common\n"
                        "  practice, no source).\n",
                        box->name, print_length_unit(plan, bed.width).at, (long long)bed.legs,
                        (long long)bed.has);
    }
}

static void put_tips(struct text *out, const struct plan *plan)
{
    for (size_t i = 0; i < plan->facts->boxes.count; i++) {
        struct strength_tip tip;

        if (strength_tip(plan, &plan->facts->boxes.at[i], &tip))
            text_format(out,
                        "  %s and what stands with it, %s high: a push of %s %s at its\n"
                        "  top tips it (formula strength.tip).\n",
                        print_box(plan, tip.box), print_length_unit(plan, tip.height).at,
                        print_tenths(plan, tip.push).at, mass_unit(plan));
    }
}

void sheet_strength(struct text *out, const struct plan *plan)
{
    text_add(out, "\nSTRENGTH\n"
                  "  Guidance for furniture at home, no engineering advice; formulas, sources and\n"
                  "  doubts in stuffover-trade(7). Not for stairs, cribs, bunk or loft beds.\n");
    with_arena(out, plan, put_spans);
    put_holds(out, plan);
    put_beds(out, plan);
    put_tips(out, plan);
}
