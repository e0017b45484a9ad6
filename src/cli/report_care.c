/* Weights, lifting, the way in and strength as JSON: the members "weights", "lifts", "way_in",
 * "spans", "holds" and "tips". */
#include "cli/report.h"

#include "cli/report_put.h"
#include "plan/hold.h"
#include "plan/lift.h"
#include "plan/route.h"
#include "plan/strength.h"
#include "plan/weight.h"

/* An array that is worked out in an arena of its own. */
struct care {
    struct json *json;
    const struct plan *plan;
    struct arena arena;
};

/* `put` takes its memory before it writes, so that the array can be closed without it; the text has
 * failed then. */
static void with_arena(struct json *json, const char *key, const struct plan *plan,
                       void (*put)(void *care))
{
    struct care care = {.json = json, .plan = plan};

    put_array(json, key);
    arena_init(&care.arena);
    if (!arena_try(&care.arena, put, &care))
        json->out->failed = true;
    arena_release(&care.arena);
    json_put_close(json);
}

static void put_mass(struct json *json, const struct plan *plan, const char *key, int64_t mass)
{
    put_quantity(json, plan, key, QUANTITY_MASS, mass);
}

/* ---- weights ---- */

static void put_weights(void *context)
{
    struct care *care = context;
    struct json *json = care->json;
    const struct plan *plan = care->plan;
    static const char *const keys[WEIGHT_KINDS] = {"sticks",  "panels", "fixings",     "foam",
                                                   "batting", "cloth",  "loose_panels"};
    struct weight *weights = ARENA_MANY(&care->arena, struct weight, plan->facts->boxes.count);

    weight_boxes(plan, weights);
    for (size_t i = 0; i < plan->facts->boxes.count; i++) {
        json_put_object(json, JSON_LINE);
        put_whole(json, "box", plan->facts->boxes.at[i].key);
        for (int kind = 0; kind < WEIGHT_KINDS; kind++)
            put_mass(json, plan, keys[kind], weights[i].of[kind]);
        put_mass(json, plan, "bare", weight_bare(&weights[i]));
        put_mass(json, plan, "finished", weight_finished(&weights[i]));
        json_put_close(json);
    }
}

void report_weights(struct json *json, const struct plan *plan)
{
    with_arena(json, "weights", plan, put_weights);
}

/* ---- lifts ---- */

static void put_lift(struct json *json, const struct plan *plan, const struct lift *lift)
{
    const struct step *step = &plan->steps.at[lift->step];

    json_put_object(json, JSON_LINE);
    put_text(json, "step", step->name);
    put_whole(json, "box", lift->box);
    put_mass(json, plan, "mass", lift->mass);
    put_bool(json, "turned", lift->turned);
    put_length(json, plan, "before_ankles", lift->place.across);
    put_length(json, plan, "above_floor", lift->place.up);
    put_length(json, plan, "raised", lift->place.travel);
    put_mass(json, plan, "one_person", lift->limit);
    put_whole(json, "people_by_equation", lift->people);
    put_whole(json, "people", step_people(step));
    json_put_close(json);
}

static void put_lifts(void *context)
{
    struct care *care = context;
    struct lifts lifts = lift_make(care->plan, &care->arena);

    for (size_t i = 0; i < lifts.of.count; i++)
        put_lift(care->json, care->plan, &lifts.of.at[i]);
}

void report_lifts(struct json *json, const struct plan *plan)
{
    with_arena(json, "lifts", plan, put_lifts);
}

/* ---- the way in ---- */

static const char *const things[] = {[ROUTE_BOX] = "box",
                                     [ROUTE_GROUP] = "joined at the bench",
                                     [ROUTE_JOINED] = "if joined before",
                                     [ROUTE_WHOLE] = "whole piece"};

static void put_line(struct json *json, const struct plan *plan, const struct route_line *line)
{
    json_put_object(json, JSON_LINE);
    put_text(json, "thing", things[line->thing]);
    put_whole(json, "box", line->box);
    put_whole(json, "join", line->join);
    put_length(json, plan, "width", line->size.x);
    put_length(json, plan, "depth", line->size.y);
    put_length(json, plan, "height", line->size.z);
    put_whole(json, "passage", line->passage);
    put_bool(json, "passes", line->way != ROUTE_NOT);
    put_text(json, "way", route_way_words(line->way));
    put_length(json, plan, "spare", line->spare);
    json_put_close(json);
}

static void put_route(void *context)
{
    struct care *care = context;
    struct route route = route_make(care->plan, &care->arena);

    for (size_t i = 0; i < route.lines.count; i++)
        put_line(care->json, care->plan, &route.lines.at[i]);
}

void report_route(struct json *json, const struct plan *plan)
{
    with_arena(json, "way_in", plan, put_route);
}

/* ---- strength ---- */

static void put_span(struct json *json, const struct plan *plan, const struct strength_span *span)
{
    json_put_object(json, JSON_LINE);
    put_whole(json, "box", span->box);
    put_text(json, "part",
             span->panel != PLAN_NONE ? plan->panels.at[span->panel].label
                                      : plan->members.at[span->member].label);
    put_length(json, plan, "clear", span->span);
    put_length(json, plan, "usual", span->good);
    put_length(json, plan, "bends", span->bend);
    put_length(json, plan, "shear", span->shear);
    put_length(json, plan, "most", span->most);
    json_put_close(json);
}

static void put_spans(void *context)
{
    struct care *care = context;
    struct strength_spans spans = strength_spans(care->plan, &care->arena);

    for (size_t i = 0; i < spans.of.count; i++)
        put_span(care->json, care->plan, &spans.of.at[i]);
}

static void put_holds(struct json *json, const struct plan *plan)
{
    put_array(json, "holds");
    for (size_t i = 0; i < plan->junctions.count; i++) {
        struct hold hold;

        if (!hold_join(plan, &plan->junctions.at[i], &hold))
            continue;
        json_put_object(json, JSON_LINE);
        put_whole(json, "join", hold.join);
        put_whole(json, "screws", hold.points);
        put_bool(json, "end_grain", hold.end_grain);
        put_mass(json, plan, "pulled_apart", hold.out);
        put_mass(json, plan, "across", hold.side);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_tips(struct json *json, const struct plan *plan)
{
    put_array(json, "tips");
    for (size_t i = 0; i < plan->facts->boxes.count; i++) {
        struct strength_tip tip;

        if (!strength_tip(plan, &plan->facts->boxes.at[i], &tip))
            continue;
        json_put_object(json, JSON_LINE);
        put_whole(json, "box", tip.box);
        put_length(json, plan, "height", tip.height);
        put_length(json, plan, "depth", tip.depth);
        put_mass(json, plan, "push", tip.push);
        json_put_close(json);
    }
    json_put_close(json);
}

void report_strength(struct json *json, const struct plan *plan)
{
    with_arena(json, "spans", plan, put_spans);
    put_holds(json, plan);
    put_tips(json, plan);
}
