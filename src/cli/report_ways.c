/* The ways to a join's heads, and what meets them, as JSON. */
#include "cli/report.h"

#include "cli/report_put.h"
#include "paper/print.h"
#include "plan/meeting.h"

/* ---- ways ---- */

static void put_named(struct json *json, const struct plan *plan, enum blocker_kind kind,
                      int64_t item, bool lasting)
{
    struct text name;
    text_init(&name);
    meeting_name(plan, kind, item, &name);
    put_text(json, "what", text_string(&name));
    put_bool(json, "lasting", lasting);
    text_release(&name);
}

static void put_blockers(struct json *json, const struct plan *plan, const struct plan_way *way)
{
    put_array(json, "blockers");
    for (size_t i = 0; i < way->blocker_count; i++) {
        const struct blocker *blocker = &plan->blockers.at[way->first_blocker + i];
        json_put_object(json, JSON_LINE);
        put_named(json, plan, blocker->kind, blocker->item, blocker->lasting);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_way(struct json *json, const struct plan *plan, const struct plan_way *way)
{
    static const char *const states[] = {
        [WAY_SHUT] = "shut", [WAY_POSSIBLE] = "possible", [WAY_CHOSEN] = "chosen"};
    static const char *const treatments[] = {[WAY_BARE] = "bare",
                                             [WAY_LEFT_OPEN] = "left_open",
                                             [WAY_PIERCED] = "pierced",
                                             [WAY_LATER] = "later"};

    json_put_object(json, JSON_LINES);
    put_text(json, "state", states[way->state]);
    put_text(json, "head_box", print_box(plan, way->head_box));
    put_bool(json, "inside", way->inside);
    put_text(json, "reach", words_side.at[way->reach_side].name);
    put_text(json, "opened", way->opened < 0 ? NULL : words_side.at[way->opened].name);
    put_text(json, "tool", words_tool.at[way->tool].name);
    put_text(json, "treatment", treatments[way->treatment]);
    put_length(json, plan, "needed", way->room_needed);
    if (way->room >= 0)
        put_length(json, plan, "room", way->room);
    if (way->beside >= 0)
        put_length(json, plan, "beside", way->beside);
    put_blockers(json, plan, way);
    json_put_close(json);
}

/* ---- when ---- */

struct putting {
    struct json *json;
    const struct plan *plan;
    int64_t join;
    struct arena *arena;
};

static void put_step(const struct putting *putting, const char *key, size_t step)
{
    if (step != PLAN_NONE)
        put_text(putting->json, key, putting->plan->steps.at[step].name);
}

/* Memory is taken before anything is written, so that what is open can be closed without it. */
static void put_meets(void *context)
{
    const struct putting *putting = context;
    struct meetings meetings;
    meetings_make(&meetings, putting->plan, putting->join, putting->arena);
    put_step(putting, "driven_in", meeting_drive_step(putting->plan, putting->join));
    put_array(putting->json, "meets");
    for (size_t i = 0; i < meetings.of.count; i++) {
        const struct meeting *meeting = &meetings.of.at[i];
        json_put_object(putting->json, JSON_LINE);
        put_named(putting->json, putting->plan, meeting->kind, meeting->item, meeting->lasting);
        put_step(putting, "placed_in", meeting->placed);
        put_step(putting, "closed_in", meeting->closed);
        json_put_close(putting->json);
    }
    json_put_close(putting->json);
}

void report_ways(struct json *json, const struct plan *plan, int64_t join)
{
    struct arena arena;
    put_array(json, "ways");
    for (size_t i = 0; i < plan->ways.count; i++) {
        if (plan->ways.at[i].join == join)
            put_way(json, plan, &plan->ways.at[i]);
    }
    json_put_close(json);
    arena_init(&arena);
    if (!arena_try(&arena, put_meets, &(struct putting){json, plan, join, &arena}))
        json->out->failed = true;
    arena_release(&arena);
}
