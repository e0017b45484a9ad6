/* `stuffover compare` and `stuffover copy`. */
#include "cli/commands.h"

#include "base/memory.h"
#include "cli/report_put.h"
#include "desk/compare.h"
#include "paper/sheets.h"

/* ---- side by side ---- */

static void put_figure(struct json *json, const struct figure *figure, const struct plan *plan)
{
    int64_t value = figure->of(plan);
    if (figure->known && !figure->known(plan))
        return;
    switch (figure->kind) {
    case FIGURE_MONEY:
        put_money(json, plan, figure->key, value);
        break;
    case FIGURE_ROLL:
        put_length(json, plan, figure->key, value);
        break;
    case FIGURE_MINUTES:
        put_quantity(json, plan, figure->key, QUANTITY_MINUTES, value);
        break;
    case FIGURE_MASS:
        put_quantity(json, plan, figure->key, QUANTITY_MASS, value);
        break;
    case FIGURE_COUNT:
        put_whole(json, figure->key, value);
        break;
    }
}

static void put_plan(struct json *json, const struct plan *plan)
{
    json_put_object(json, JSON_LINES);
    put_text(json, "build", plan->facts->build.name);
    for (const struct figure *figure = plan_figures; figure->key; figure++)
        put_figure(json, figure, plan);
    json_put_close(json);
}

static void put_otherwise(struct json *json, const struct plan *plan, const struct otherwise *way)
{
    json_put_object(json, JSON_LINE);
    put_text(json, "text", way->text);
    put_money(json, plan, "cost", way->cost);
    put_money(json, plan, "more_cost", way->more_cost);
    put_quantity(json, plan, "minutes", QUANTITY_MINUTES, way->minutes);
    put_quantity(json, plan, "more_minutes", QUANTITY_MINUTES, way->more_minutes);
    put_bool(json, "can_be_made", way->more_stops <= 0);
    json_put_close(json);
}

struct shown {
    const struct plan *const *plans;
    size_t count;
    const struct otherwise *ways; /* of a build alone */
    size_t way_count;
};

static void report_shown(struct text *out, const struct shown *shown)
{
    struct json json;
    report_open(&json, out);
    put_array(&json, "builds");
    for (size_t i = 0; i < shown->count; i++)
        put_plan(&json, shown->plans[i]);
    json_put_close(&json);
    put_array(&json, "otherwise");
    for (size_t i = 0; i < shown->way_count; i++)
        put_otherwise(&json, shown->plans[0], &shown->ways[i]);
    json_put_close(&json);
    report_close(&json);
}

static void print_shown(struct text *out, const struct shown *shown)
{
    sheet_compare(out, shown->plans, shown->count);
    if (shown->count == 1)
        sheet_otherwise(out, shown->plans[0], shown->ways, shown->way_count);
}

static enum fault show_compare(struct cli *cli, const struct desk_compare *compare,
                               struct fault_note *note)
{
    struct shown shown = {.plans = desk_compare_plans(compare),
                          .count = desk_compare_count(compare)};
    struct arena arena;
    enum fault fault = FAULT_NONE;
    arena_init(&arena);
    if (shown.count == 1)
        fault = desk_otherwise(shown.plans[0], &arena, &shown.ways, &shown.way_count);
    if (fault)
        fault_say(note, fault, "there is not enough memory for this");
    else if (cli->json)
        report_shown(&cli->out, &shown);
    else
        print_shown(&cli->out, &shown);
    arena_release(&arena);
    return fault;
}

enum fault command_compare(struct cli *cli, struct fault_note *note)
{
    struct desk_compare *compare = NULL;
    int64_t *keys = memory_resize(NULL, (size_t)cli->count * sizeof *keys);
    if (!keys)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    enum fault fault = command_keys(cli, keys, note);
    if (!fault)
        fault = desk_compare_begin(&compare, cli->desk, keys, (size_t)cli->count, note);
    if (!fault)
        fault = show_compare(cli, compare, note);
    desk_compare_free(compare);
    memory_release(keys);
    return fault;
}

/* ---- copies ---- */

enum fault command_copy(struct cli *cli, struct fault_note *note)
{
    if (cli->count > 2)
        return command_copy_item(cli, note);
    enum fault fault =
        desk_copy_build(cli->desk, desk_model(cli->desk)->build.key, cli->operands[1], note);
    if (!fault)
        command_tally(cli);
    return fault;
}
