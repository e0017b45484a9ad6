#include "cli/report.h"

#include "cli/report_put.h"

/* ---- heading ---- */

void report_heading(struct json *json, const struct plan *plan)
{
    const struct tally *tally = &plan->tally;
    put_text(json, "name", plan->facts->build.name);
    put_text(json, "state", words_state.at[plan->facts->build.state].name);
    put_text(json, "units", words_units.at[plan->facts->build.units].name);
    put_text(json, "currency", plan->facts->workshop.currency);
    json_put_key(json, "tally");
    json_put_object(json, JSON_LINES);
    put_money(json, plan, "cost", tally->cost);
    put_whole(json, "sticks", tally->sticks);
    put_whole(json, "sheets", tally->sheets);
    put_length(json, plan, "cloth", tally->cloth);
    put_whole(json, "staples", tally->staples);
    put_whole(json, "screws", tally->screws);
    put_quantity(json, plan, "minutes", QUANTITY_MINUTES, tally->minutes);
    put_whole(json, "steps", tally->steps);
    put_whole(json, "steps_done", tally->steps_done);
    put_whole(json, "stops", tally->stops);
    put_whole(json, "warns", tally->warns);
    put_whole(json, "notes", tally->notes);
    json_put_close(json);
}

/* ---- wood ---- */

static void report_members(struct json *json, const struct plan *plan, int64_t box)
{
    put_array(json, "members");
    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];
        if (member->box != box)
            continue;
        json_put_object(json, JSON_LINE);
        put_text(json, "label", member->label);
        put_text(json, "kind", words_member.at[member->kind].name);
        put_text(json, "axis", words_axis.at[member->axis].name);
        put_length(json, plan, "length", member->length);
        put_length(json, plan, "slant", member->slant);
        put_length(json, plan, "x", member->solid.low.x);
        put_length(json, plan, "y", member->solid.low.y);
        put_length(json, plan, "z", member->solid.low.z);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_panels(struct json *json, const struct plan *plan, int64_t box)
{
    put_array(json, "panels");
    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        if (panel->box != box)
            continue;
        json_put_object(json, JSON_LINE);
        put_text(json, "label", panel->label);
        put_text(json, "side", words_side.at[panel->side].name);
        put_text(json, "stock", plan_stock_name(plan, panel->stock));
        put_length(json, plan, "u", panel->area.u0);
        put_length(json, plan, "v", panel->area.v0);
        put_length(json, plan, "width", panel->width);
        put_length(json, plan, "height", panel->height);
        put_bool(json, "loose", panel->loose);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_crown(struct json *json, const struct plan *plan, int64_t box)
{
    put_array(json, "crown");
    for (size_t i = 0; i < plan->crown_pieces.count; i++) {
        const struct crown_piece *piece = &plan->crown_pieces.at[i];
        if (piece->box != box)
            continue;
        json_put_object(json, JSON_LINE);
        put_text(json, "label", piece->label);
        put_bool(json, "behind", piece->behind);
        put_whole(json, "screws", piece->screws);
        put_text(json, "stock", plan_stock_name(plan, piece->stock));
        put_length(json, plan, "u", piece->area.u0);
        put_length(json, plan, "v", piece->area.v0);
        put_length(json, plan, "width", piece->area.u1 - piece->area.u0);
        put_length(json, plan, "height", piece->area.v1 - piece->area.v0);
        put_length(json, plan, "left", piece->heights[0]);
        put_length(json, plan, "middle", piece->heights[CROWN_HEIGHTS / 2]);
        put_length(json, plan, "right", piece->heights[CROWN_HEIGHTS - 1]);
        json_put_close(json);
    }
    json_put_close(json);
}

void report_boxes(struct json *json, const struct plan *plan)
{
    put_array(json, "boxes");
    for (size_t i = 0; i < plan->facts->boxes.count; i++) {
        const struct box *box = &plan->facts->boxes.at[i];
        json_put_object(json, JSON_LINES);
        put_whole(json, "key", box->key);
        put_text(json, "name", box->name);
        put_text(json, "frame", words_frame.at[box->frame].name);
        put_text(json, "hand", plan_hand_word(plan_hand(plan, box->key)));
        put_whole(json, "twin", plan_pose(plan, box->key)->twin);
        put_length(json, plan, "width", box->width);
        put_length(json, plan, "depth", box->depth);
        put_length(json, plan, "height", box->height);
        const struct load *load = plan_load(plan, box->key);
        if (load) {
            put_quantity(json, plan, "mass", QUANTITY_MASS, load->mass);
            put_whole(json, "people", load->people);
        }
        report_members(json, plan, box->key);
        report_panels(json, plan, box->key);
        report_crown(json, plan, box->key);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_screw(struct json *json, const struct plan *plan, const struct screw_kind *kind)
{
    struct text name;
    text_init(&name);
    plan_screw_text(plan, kind, &name);
    put_text(json, "screw", text_string(&name));
    text_release(&name);
}

void report_screws(struct json *json, const struct plan *plan)
{
    put_array(json, "screws");
    for (size_t i = 0; i < plan->screw_kinds.count; i++) {
        const struct screw_kind *kind = &plan->screw_kinds.at[i];
        json_put_object(json, JSON_LINE);
        put_screw(json, plan, kind);
        put_whole(json, "gauge", kind->gauge);
        put_length(json, plan, "length", kind->length);
        put_length(json, plan, "pilot", kind->pilot);
        put_length(json, plan, "clearance", kind->clearance);
        put_whole(json, "count", kind->count);
        put_whole(json, "frame", kind->count_by_use[SCREW_FRAME]);
        put_whole(json, "panel", kind->count_by_use[SCREW_PANEL]);
        put_whole(json, "join", kind->count_by_use[SCREW_JOIN]);
        put_whole(json, "fitting", kind->count_by_use[SCREW_FITTING]);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_points(struct json *json, const struct plan *plan,
                          const struct junction *junction)
{
    put_array(json, "points");
    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &plan->points.at[junction->first_point + i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "hole", point->rank);
        put_length(json, plan, "u", point->u);
        put_length(json, plan, "v", point->v);
        put_length(json, plan, "limit", point->limit);
        if (point->screw != PLAN_NONE) {
            const struct screw *screw = &plan->screws.at[point->screw];
            put_screw(json, plan, &plan->screw_kinds.at[screw->kind]);
            put_length(json, plan, "bite", screw->bite);
        }
        put_bool(json, "taken", point->taken);
        json_put_close(json);
    }
    json_put_close(json);
}

void report_joins(struct json *json, const struct plan *plan)
{
    put_array(json, "joins");
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        const struct join *join = MODEL_FIND(plan->facts, join, junction->join);
        json_put_object(json, JSON_LINES);
        put_whole(json, "key", join->key);
        put_text(json, "name", join->name);
        put_text(json, "place", words_place.at[join->place].name);
        put_text(json, "tool", words_tool.at[junction->tool].name);
        put_whole(json, "head_box", junction->head_box);
        put_bool(json, "head_inside", junction->head_inside);
        put_bool(json, "reachable", junction->reachable);
        put_length(json, plan, "pitch", junction->pitch);
        put_length(json, plan, "spacer", junction->cloth);
        put_length(json, plan, "patch", junction->patch);
        report_points(json, plan, junction);
        json_put_close(json);
    }
    json_put_close(json);
}

/* ---- money and work ---- */

void report_bought(struct json *json, const struct plan *plan, bool by_length, int64_t bought)
{
    put_whole(json, "packs_bought", by_length ? 0 : bought);
    put_length(json, plan, "length_bought", by_length ? bought : 0);
}

void report_buying(struct json *json, const struct plan *plan)
{
    put_array(json, "purchases");
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *purchase = &plan->purchases.at[i];
        json_put_object(json, JSON_LINE);
        put_text(json, "stock", sheet_purchase_name(plan, purchase));
        put_text(json, "aisle", words_aisle.at[purchase->aisle].name);
        put_quantity(json, plan, "need", purchase->measure, purchase->need);
        put_quantity(json, plan, "shelf", purchase->measure, purchase->shelf);
        put_whole(json, "packs", purchase->packs);
        put_length(json, plan, "length", purchase->length);
        report_bought(json, plan, purchase->length > 0, plan_cost_line(plan, purchase)->bought);
        put_bool(json, "priced", purchase->priced);
        put_money(json, plan, "price", purchase->price);
        put_money(json, plan, "till", purchase->till);
        put_money(json, plan, "value", purchase->value);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_sum(struct json *json, const struct plan *plan, const struct cost_sum *sum)
{
    put_money(json, plan, "estimate", sum->estimate);
    put_money(json, plan, "committed", sum->committed);
    put_money(json, plan, "spent", sum->paid);
    put_money(json, plan, "forecast", sum->forecast);
    put_money(json, plan, "variance", sum->forecast - sum->estimate);
}

/* What is on no list, and nothing was paid for, is no line. */
static void report_cost_line(struct json *json, const struct plan *plan,
                             const struct cost_line *line)
{
    const struct cost_sum sum = {line->estimate, line->committed, line->paid, line->forecast};
    struct text words;
    if (line->purchase == PLAN_NONE && !line->entered)
        return;
    text_init(&words);
    if (line->purchase != PLAN_NONE)
        sheet_purchase_words(&words, plan, &plan->purchases.at[line->purchase]);
    json_put_object(json, JSON_LINE);
    put_text(json, "aisle", words_aisle.at[line->aisle].name);
    put_text(json, "what", text_string(&words));
    put_bool(json, "settled", line->settled);
    put_money(json, plan, "rest", line->rest);
    report_sum(json, plan, &sum);
    json_put_close(json);
    text_release(&words);
}

void report_money(struct json *json, const struct plan *plan)
{
    const struct cost *cost = &plan->cost;
    json_put_key(json, "money");
    json_put_object(json, JSON_LINES);
    put_money(json, plan, "bought", cost->bought);
    put_money(json, plan, "used", cost->used);
    put_money(json, plan, "tax", cost->tax);
    put_money(json, plan, "estimate", cost->estimate);
    put_money(json, plan, "committed", cost->committed);
    put_money(json, plan, "spent", cost->spent);
    put_money(json, plan, "forecast", cost->forecast);
    put_money(json, plan, "variance", cost->forecast - cost->estimate);
    put_money(json, plan, "budget", plan->facts->build.budget);
    put_money(json, plan, "left", cost->left);
    put_money(json, plan, "ready_made", plan->facts->build.ready_made);
    put_array(json, "aisles");
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        json_put_object(json, JSON_LINE);
        put_text(json, "aisle", words_aisle.at[aisle].name);
        report_sum(json, plan, &cost->by_aisle[aisle]);
        json_put_close(json);
    }
    json_put_close(json);
    put_array(json, "lines");
    for (size_t i = 0; i < cost->lines.count; i++)
        report_cost_line(json, plan, &cost->lines.at[i]);
    json_put_close(json);
    json_put_close(json);
}

static void report_lines(struct json *json, const char *key, const char *const *lines, size_t count)
{
    put_array(json, key);
    for (size_t i = 0; i < count; i++)
        json_put_string(json, lines[i]);
    json_put_close(json);
}

/* What has to rest before a step, and how long. The precedences are sorted by the step that waits,
 * and steps come in their order: `at` goes on from one step to the next. */
static void report_rests(struct json *json, const struct plan *plan, const struct step *step,
                         size_t *at)
{
    size_t index = (size_t)(step - plan->steps.at);

    put_array(json, "rests");
    for (; *at < plan->precedences.count && plan->precedences.at[*at].after <= index; ++*at) {
        const struct precedence *precedence = &plan->precedences.at[*at];

        if (precedence->after < index || precedence->rest == 0)
            continue;
        json_put_object(json, JSON_LINE);
        put_text(json, "after", plan->steps.at[precedence->before].name);
        put_quantity(json, plan, "minutes", QUANTITY_MINUTES, precedence->rest);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_step(struct json *json, const struct plan *plan, const struct step *step,
                        size_t *precedence)
{
    json_put_object(json, JSON_LINES);
    put_text(json, "name", step->name);
    put_text(json, "title", step->title);
    put_text(json, "hand", plan_hand_word(plan_hand(plan, step->box)));
    put_text(json, "place", words_place.at[step->place].name);
    put_whole(json, "people", step_people(step));
    put_text(json, "lifted", step->crew);
    put_quantity(json, plan, "minutes", QUANTITY_MINUTES, step->minutes);
    put_whole(json, "session", step->session);
    put_quantity(json, plan, "wait", QUANTITY_MINUTES, step->wait);
    report_rests(json, plan, step, precedence);
    put_bool(json, "hold", step->hold);
    put_bool(json, "ticked", step->ticked);
    put_bool(json, "ready", step->ready);
    put_bool(json, "older", step->older);
    put_text(json, "rule", step->rule);
    put_text(json, "because", step->because);
    put_text(json, "unusual", step->unusual);
    put_text(json, "closes", step->closes);
    put_text(json, "caution", step->caution);
    put_array(json, "needs");
    for (size_t i = 0; i < step->need_count; i++)
        json_put_string(json, step->needs[i].text);
    json_put_close(json);
    report_lines(json, "actions", step->actions, step->action_count);
    report_lines(json, "measures", step->measures, step->measure_count);
    report_lines(json, "changes", step->changes, step->change_count);
    json_put_close(json);
}

void report_steps(struct json *json, const struct plan *plan)
{
    size_t precedence = 0;

    put_array(json, "steps");
    for (size_t i = 0; i < plan->steps.count; i++)
        report_step(json, plan, &plan->steps.at[i], &precedence);
    json_put_close(json);
}

void report_doable(struct text *out, const struct plan *plan, const struct doable *doable)
{
    struct json json;
    report_open(&json, out);
    put_quantity(&json, plan, "minutes", QUANTITY_MINUTES, doable->minutes);
    put_array(&json, "steps");
    for (size_t i = 0; i < doable->count; i++) {
        const struct step *step = &plan->steps.at[doable->steps[i]];
        json_put_object(&json, JSON_LINE);
        put_text(&json, "step", step->name);
        put_text(&json, "title", step->title);
        put_quantity(&json, plan, "minutes", QUANTITY_MINUTES, step->minutes);
        json_put_close(&json);
    }
    json_put_close(&json);
    report_close(&json);
}
