/* `stuffover cut`: layouts of sticks, sheets and rolls, of one build or of several together. */
#include "cli/commands.h"

#include "cli/report.h"
#include "cli/report_put.h"
#include "desk/pool.h"
#include "paper/print.h"
#include "paper/sheets.h"

#include <string.h>

enum fault command_effort(const struct cli *cli, enum cut_effort standard,
                          enum cut_effort *ret_effort, struct fault_note *note)
{
    static const char *const words[CUT_EFFORTS] = {"quick", "good", "best"};

    *ret_effort = standard;
    for (int i = 0; cli->effort && i < CUT_EFFORTS; i++)
        if (strcmp(cli->effort, words[i]) == 0) {
            *ret_effort = (enum cut_effort)i;
            return FAULT_NONE;
        }
    return cli->effort ? fault_say(note, FAULT_USAGE, 0,
                                   "\"%s\" is no effort: it is quick, good or best", cli->effort)
                       : FAULT_NONE;
}

/* ---- one build ---- */

static enum fault cut_one(struct cli *cli, enum cut_effort effort, struct fault_note *note)
{
    enum fault fault = cli->back ? desk_leave_layouts(cli->desk, note) : FAULT_NONE;
    const struct plan *plan;
    struct json json;

    if (!fault)
        fault = desk_cut(cli->desk, effort, note);
    if (!fault && cli->take)
        fault = desk_take_layouts(cli->desk, note);
    if (fault)
        return fault;
    plan = desk_plan(cli->desk);
    if (!cli->json) {
        sheet_cutting(&cli->out, plan);
        return FAULT_NONE;
    }
    json_put_start(&json, &cli->out);
    json_put_object(&json, JSON_LINES);
    report_cutting(&json, plan);
    json_put_close(&json);
    json_put_end(&json);
    return FAULT_NONE;
}

/* ---- several ---- */

struct pooling {
    struct cli *cli;
    struct pool pool;
    enum cut_effort effort;
    enum fault fault;
    struct fault_note *note;
};

static void print_pool(struct text *out, const struct plan *plan, const struct pool *pool)
{
    int64_t apart = 0, together = 0;

    text_add(out, "\nCUTTING TOGETHER\n");
    for (size_t i = 0; i < pool->jobs.count; i++) {
        const struct pool_job *job = &pool->jobs.at[i];
        const struct cut_sheet sheet = sheet_of_pool_job(plan, job);

        sheet_layout(out, &sheet);
        apart += job->way == CUT_ROLLS ? 0 : job->apart;
        together += job->way == CUT_ROLLS ? 0 : job->layout.cost;
    }
    text_format(out, "\nSticks and sheets: %s each build by itself, %s together\n",
                print_money(plan, apart).at, print_money(plan, together).at);
}

static void report_pool(struct json *json, const struct plan *plan, const struct pool *pool)
{
    json_put_key(json, "cutting");
    json_put_array(json, JSON_LINES);
    for (size_t i = 0; i < pool->jobs.count; i++) {
        const struct cut_sheet sheet = sheet_of_pool_job(plan, &pool->jobs.at[i]);

        report_layout(json, &sheet);
    }
    json_put_close(json);
}

static enum fault add_build(struct pooling *pooling, const char *name)
{
    enum fault fault = desk_take_up_named(pooling->cli->desk, name, pooling->note);

    if (!fault)
        fault = desk_cut(pooling->cli->desk, pooling->effort, pooling->note);
    if (!fault)
        pool_add(&pooling->pool, desk_plan(pooling->cli->desk));
    return fault;
}

static void run_pooling(void *context)
{
    struct pooling *pooling = context;
    struct cli *cli = pooling->cli;
    const struct plan *plan;
    struct json json;

    for (int i = 0; i < cli->count && !pooling->fault; i++)
        pooling->fault = add_build(pooling, cli->operands[i]);
    if (pooling->fault)
        return;
    pool_cut(&pooling->pool, pooling->effort);
    plan = desk_plan(cli->desk);
    if (!cli->json) {
        print_pool(&cli->out, plan, &pooling->pool);
        return;
    }
    json_put_start(&json, &cli->out);
    json_put_object(&json, JSON_LINES);
    report_pool(&json, plan, &pooling->pool);
    json_put_close(&json);
    json_put_end(&json);
}

static enum fault cut_together(struct cli *cli, enum cut_effort effort, struct fault_note *note)
{
    struct arena arena;
    struct pooling pooling = {cli, {.arena = &arena}, effort, FAULT_NONE, note};

    if (cli->take || cli->back)
        return fault_say(note, FAULT_USAGE, 0, "layouts are taken for one build at a time");
    arena_init(&arena);
    if (!arena_try(&arena, run_pooling, &pooling))
        pooling.fault = fault_say(note, FAULT_MEMORY, 0, "there is not enough memory for this");
    arena_release(&arena);
    return pooling.fault;
}

enum fault command_cut(struct cli *cli, struct fault_note *note)
{
    enum cut_effort effort;
    enum fault fault = command_effort(cli, CUT_GOOD, &effort, note);

    if (fault)
        return fault;
    return cli->count == 1 ? cut_one(cli, effort, note) : cut_together(cli, effort, note);
}
