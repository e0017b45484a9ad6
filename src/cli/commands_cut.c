/* `stuffover cut`: layouts of sticks, sheets and rolls, of one build or of several together. */
#include "cli/commands.h"

#include "base/memory.h"
#include "cli/report.h"
#include "cli/report_put.h"
#include "desk/pool.h"
#include "desk/trip.h"
#include "paper/print.h"
#include "paper/sheets.h"

#include <assert.h>
#include <stdlib.h>
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
    return cli->effort ? fault_say(note, FAULT_USAGE,
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
    report_open(&json, &cli->out);
    report_cutting(&json, plan);
    report_close(&json);
    return FAULT_NONE;
}

/* ---- several ---- */

struct pooling {
    struct cli *cli;
    int64_t *keys; /* of the builds, rising: what was taken is known by that order */
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
    put_array(json, "cutting");
    for (size_t i = 0; i < pool->jobs.count; i++) {
        const struct cut_sheet sheet = sheet_of_pool_job(plan, &pool->jobs.at[i]);

        report_layout(json, &sheet);
    }
    json_put_close(json);
}

static enum fault add_build(struct pooling *pooling, int64_t build)
{
    struct desk *desk = pooling->cli->desk;
    enum fault fault = desk_take_up(desk, build, pooling->note);

    if (!fault)
        fault = desk_cut(desk, pooling->effort, pooling->note);
    if (fault)
        return fault;
    pool_add(&pooling->pool, desk_plan(desk));
    pool_add_taken(&pooling->pool, desk_model(desk));
    return FAULT_NONE;
}

static int compare_keys(const void *a, const void *b)
{
    int64_t left = *(const int64_t *)a, right = *(const int64_t *)b;

    return left < right ? -1 : left > right;
}

static void run_pooling(void *context)
{
    struct pooling *pooling = context;
    struct cli *cli = pooling->cli;
    const struct plan *plan;
    struct json json;

    assert(!pooling->fault);
    for (int i = 0; i < cli->count && !pooling->fault; i++)
        pooling->fault = add_build(pooling, pooling->keys[i]);
    if (pooling->fault)
        return;
    pool_cut(&pooling->pool, pooling->effort);
    plan = desk_plan(cli->desk);
    if (!cli->json) {
        print_pool(&cli->out, plan, &pooling->pool);
        return;
    }
    report_open(&json, &cli->out);
    report_pool(&json, plan, &pooling->pool);
    report_close(&json);
}

/* What the builds cut together on a trip becomes a fact, or is given back. */
static enum fault take_together(struct cli *cli, int64_t *keys, enum cut_effort effort,
                                struct fault_note *note)
{
    struct desk_trip *trip = NULL;
    enum fault fault = command_keys(cli, keys, note); /* again: each goes shopping once */

    if (!fault)
        fault = desk_trip_begin(&trip, cli->desk, keys, (size_t)cli->count, effort,
                                sheet_purchase_words, note);
    if (!fault && cli->back)
        fault = desk_trip_leave(cli->desk, trip, note);
    if (!fault && cli->take)
        fault = desk_trip_take(cli->desk, trip, note);
    desk_trip_free(trip);
    return fault;
}

static enum fault cut_together(struct cli *cli, enum cut_effort effort, struct fault_note *note)
{
    struct arena arena;
    struct pooling pooling = {
        .cli = cli, .pool = {.arena = &arena}, .effort = effort, .note = note};

    pooling.keys = memory_resize(NULL, (size_t)cli->count * sizeof *pooling.keys);
    if (!pooling.keys)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    arena_init(&arena);
    for (int i = 0; i < cli->count && !pooling.fault; i++)
        pooling.fault = command_build_key(cli, cli->operands[i], &pooling.keys[i], note);
    if (!pooling.fault && (cli->take || cli->back))
        pooling.fault = take_together(cli, pooling.keys, effort, note);
    if (pooling.fault)
        goto done;
    qsort(pooling.keys, (size_t)cli->count, sizeof *pooling.keys, compare_keys);
    if (!arena_try(&arena, run_pooling, &pooling))
        pooling.fault = fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
done:
    arena_release(&arena);
    memory_release(pooling.keys);
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
