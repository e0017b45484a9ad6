/* `stuffover cloth`: ways to take the cloth, side by side, each cover, and what measures changed.
 */
#include "cli/commands.h"

#include "cli/report.h"
#include "cli/report_put.h"
#include "paper/sheets.h"
#include "plan/cloth_ways.h"

#include <stdlib.h>

struct shown_ways {
    struct arena arena;
    const struct cloth_way *at;
    size_t count;
    struct cloth_built built;
};

static void report_pieces_built(struct json *json, const struct plan *plan,
                                const struct cloth_built *built)
{
    put_array(json, "pieces_built");
    for (size_t i = 0; i < built->pieces.count; i++) {
        const struct piece_built *piece = &built->pieces.at[i];

        json_put_object(json, JSON_LINE);
        put_text(json, "label", piece->label);
        put_text(json, "name", piece->name);
        put_length(json, plan, "planned_width", piece->planned_width);
        put_length(json, plan, "planned_height", piece->planned_height);
        put_length(json, plan, "width", piece->width);
        put_length(json, plan, "height", piece->height);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_rolls_built(struct json *json, const struct plan *plan,
                               const struct cloth_built *built)
{
    put_array(json, "rolls_built");
    for (size_t i = 0; i < built->rolls.count; i++) {
        const struct roll_built *roll = &built->rolls.at[i];

        json_put_object(json, JSON_LINE);
        put_text(json, "cloth", plan_stock_name(plan, roll->stock));
        put_length(json, plan, "planned_usable", roll->planned_usable);
        put_length(json, plan, "usable", roll->usable);
        put_length(json, plan, "planned_length", roll->planned_length);
        put_length(json, plan, "length", roll->length);
        put_length(json, plan, "bought", roll->bought);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_ways_of_cloth(struct json *json, const struct plan *plan,
                                 const struct shown_ways *ways)
{
    put_array(json, "ways");
    for (size_t i = 0; i < ways->count; i++) {
        const struct cloth_way *way = &ways->at[i];

        json_put_object(json, JSON_LINE);
        put_whole(json, "way", (int64_t)i + 1);
        put_text(json, "text", way->cure.text);
        put_text(json, "cloth", plan_stock_name(plan, way->stock));
        put_bool(json, "chosen", way->chosen);
        put_text(json, "barred", way->barred ? way->barred : "");
        put_text(json, "bought", plan_stock_name(plan, way->bought));
        put_length(json, plan, "length", way->length);
        put_whole(json, "seams", way->seams);
        put_length(json, plan, "seam_length", way->seam_length);
        put_quantity(json, plan, "minutes", QUANTITY_MINUTES, way->minutes);
        put_money(json, plan, "cost", way->cost);
        json_put_close(json);
    }
    json_put_close(json);
}

static enum fault look(struct cli *cli, struct shown_ways *ways, struct fault_note *note)
{
    enum fault fault = cloth_ways(desk_plan(cli->desk), &ways->arena, &ways->at, &ways->count);

    if (!fault)
        fault = cloth_built(desk_plan(cli->desk), &ways->arena, &ways->built);
    return fault ? fault_say(note, fault, "there is not enough memory for this") : fault;
}

/* Takes the way that the second operand numbers. */
static enum fault take(struct cli *cli, const struct shown_ways *ways, struct fault_note *note)
{
    char *end;
    unsigned long number = strtoul(cli->operands[1], &end, 10);
    const struct cloth_way *way =
        number > 0 && number <= ways->count ? &ways->at[number - 1] : NULL;

    if (*end || !way)
        return fault_say(note, FAULT_UNKNOWN, "there is no way \"%s\" to take the cloth",
                         cli->operands[1]);
    if (way->barred)
        return fault_say(note, FAULT_REFUSED, "%s: %s", way->cure.text, way->barred);
    return way->chosen ? FAULT_NONE : desk_take_cure(cli->desk, &way->cure, note);
}

static void print_ways(struct cli *cli, const struct shown_ways *ways)
{
    const struct plan *plan = desk_plan(cli->desk);
    struct json json;

    if (!cli->json) {
        sheet_cloth_ways(&cli->out, plan, ways->at, ways->count);
        sheet_cloth_built(&cli->out, plan, &ways->built);
        for (size_t i = 0; i < plan->covers.count; i++) {
            if (!sheet_cover_is_cloth(plan, &plan->covers.at[i]))
                continue;
            text_add_char(&cli->out, '\n');
            sheet_cover(&cli->out, plan, &plan->covers.at[i]);
        }
        return;
    }
    report_open(&json, &cli->out);
    report_ways_of_cloth(&json, plan, ways);
    report_pieces_built(&json, plan, &ways->built);
    report_rolls_built(&json, plan, &ways->built);
    report_cloth(&json, plan);
    report_close(&json);
}

enum fault command_cloth(struct cli *cli, struct fault_note *note)
{
    struct shown_ways ways = {.count = 0};
    enum fault fault;

    arena_init(&ways.arena);
    fault = look(cli, &ways, note);
    if (!fault && cli->count > 1) {
        fault = take(cli, &ways, note);
        arena_release(&ways.arena);
        if (!fault)
            fault = look(cli, &ways, note);
    }
    if (!fault)
        print_ways(cli, &ways);
    arena_release(&ways.arena);
    return fault;
}
