/* Hole maps as JSON. */
#include "cli/report.h"

#include "cli/report_put.h"
#include "paper/print.h"
#include "plan/geometry.h"
#include "plan/hole.h"

/* ---- what holds for all holes of a join ---- */

static void put_screw(struct json *json, const struct plan *plan, const struct plan_point *point)
{
    struct bore bore = hole_bore(plan, point);
    struct text name;
    if (!bore.kind)
        return;
    text_init(&name);
    plan_screw_text(plan, bore.kind, &name);
    put_text(json, "screw", text_string(&name));
    text_release(&name);
    put_length(json, plan, "clearance", bore.kind->clearance);
    put_length(json, plan, "clearance_depth", bore.clearance_depth);
    put_length(json, plan, "pilot", bore.kind->pilot);
    put_length(json, plan, "pilot_depth", bore.pilot_depth);
}

static void put_heads(struct json *json, const struct plan *plan, const struct junction *junction)
{
    put_text(json, "head_box", print_box(plan, junction->head_box));
    put_bool(json, "head_inside", junction->head_inside);
    put_text(
        json, "seen_through",
        words_side.at[junction->head_inside ? junction->reach_side : junction->head_side].name);
    put_bool(json, "reachable", junction->reachable);
    put_text(json, "tool", words_tool.at[junction->tool].name);
    put_length(json, plan, "patch", junction->patch);
    put_length(json, plan, "spacer", junction->cloth);
    put_length(json, plan, "nearest_staple", plan->value[TRADE_STAPLE_KEEP_OFF_HOLE]);
}

static void put_later_layers(struct json *json, const struct plan *plan, int64_t join)
{
    json_put_key(json, "layers_after");
    json_put_array(json, JSON_LINE);
    for (size_t i = 0; i < plan->facts->layers.count; i++) {
        if (hole_keeps_off(plan, plan->facts->layers.at[i].key, join))
            json_put_whole(json, plan->facts->layers.at[i].key);
    }
    json_put_close(json);
}

static void put_opening(struct json *json, const struct plan *plan, const struct edge *edge,
                        const struct edge_part *part)
{
    const struct layer *layer = MODEL_FIND(plan->facts, layer, edge->layer);
    json_put_object(json, JSON_LINE);
    put_whole(json, "layer", edge->layer);
    put_text(json, "box", print_box(plan, edge->box));
    put_text(json, "edge",
             part->edge < 0 ? "all" : words_side.at[edge_side(layer->side, part->edge)].name);
    put_length(json, plan, "from", part->from);
    put_length(json, plan, "to", part->to);
    json_put_close(json);
}

static void put_openings(struct json *json, const struct plan *plan, int64_t join)
{
    put_array(json, "openings");
    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];
        struct edge_part part;
        for (int k = 0; hole_opening(plan, interval, join) && k < EDGE_COUNT; k++) {
            if (hole_part(plan, interval, k, &part))
                put_opening(json, plan, &plan->edges.at[interval->edge], &part);
        }
    }
    json_put_close(json);
}

/* ---- holes ---- */

static void put_distances(struct json *json, const struct plan *plan, const struct join_end *end,
                          const struct from_edge *edges)
{
    json_put_key(json, "distances");
    json_put_array(json, JSON_LINE);
    for (int i = 0; i < 2; i++) {
        json_put_object(json, JSON_LINE);
        put_text(json, "edge", words_side.at[edge_side(end->side, edges[i].edge)].name);
        put_length(json, plan, "distance", edges[i].distance);
        put_whole(json, "mm", whole_divide_even(edges[i].distance, LENGTH_MM));
        put_bool(json, "hidden", edges[i].hidden);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_holes(struct json *json, const struct plan *plan, const struct junction *junction,
                      const struct join_end *end, bool of_b)
{
    put_array(json, "holes");
    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &plan->points.at[junction->first_point + i];
        struct hole_work work = hole_work(plan, point);
        json_put_object(json, JSON_LINE);
        put_whole(json, "hole", point->rank);
        put_distances(json, plan, end, hole_edges(point, of_b));
        put_bool(json, "taken", point->taken);
        put_bool(json, "drilled", work.drilled);
        put_bool(json, "trial_driven", work.tried);
        put_bool(json, "locator", work.located);
        put_bool(json, "found", work.found);
        put_bool(json, "driven", work.driven);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_ends(struct json *json, const struct plan *plan, const struct junction *junction)
{
    put_array(json, "ends");
    for (int of_b = 0; of_b < 2; of_b++) {
        struct join_end end;
        if (!hole_end(plan, junction, of_b, &end))
            continue;
        json_put_object(json, JSON_LINES);
        put_text(json, "box", print_box(plan, end.box));
        put_text(json, "hand", plan_hand_word(plan_hand(plan, end.box)));
        put_text(json, "side", words_side.at[end.side].name);
        put_text(json, "seen", words_side.at[end.seen].name);
        put_bool(json, "heads", end.heads);
        put_holes(json, plan, junction, &end, of_b);
        json_put_close(json);
    }
    json_put_close(json);
}

/* ---- maps ---- */

static void put_map(struct json *json, const struct plan *plan, const struct junction *junction)
{
    const struct join *join = MODEL_FIND(plan->facts, join, junction->join);
    if (junction->point_count == 0)
        return;
    json_put_object(json, JSON_LINES);
    put_whole(json, "key", join->key);
    put_text(json, "join", join->name);
    put_text(json, "place", words_place.at[join->place].name);
    put_screw(json, plan, &plan->points.at[junction->first_point]);
    put_heads(json, plan, junction);
    put_openings(json, plan, join->key);
    put_later_layers(json, plan, join->key);
    put_ends(json, plan, junction);
    json_put_close(json);
}

void report_join_map(struct json *json, const struct plan *plan, const struct junction *junction)
{
    put_array(json, "maps");
    put_map(json, plan, junction);
    json_put_close(json);
}

void report_maps(struct json *json, const struct plan *plan)
{
    put_array(json, "maps");
    for (size_t i = 0; i < plan->junctions.count; i++)
        put_map(json, plan, &plan->junctions.at[i]);
    json_put_close(json);
}
