/*
 * Cutting at the desk: searches that go on while nobody types, and layouts that are taken.
 *
 * A plan holds the job of every stock that is cut, with a digest of its content. What a search has
 * found for a job is kept by that digest, so that the next plan with the same job goes by it, and a
 * job that changed begins with a quick layout again. One search is on its way at most.
 */
#include "desk/internal.h"
#include "desk/pool.h"
#include "plan/goods.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#define CONTENT_MOST 100000          /* characters of a layout's text: as its field has it */
#define KNOWN_MOST ((size_t)8 << 20) /* bytes: beyond it all is forgotten and found again */

void desk_forget_layouts(struct desk *desk)
{
    arena_release(&desk->found);
    arena_release(&desk->searching);
    desk->known = (struct cut_known){0};
    desk->search = NULL;
}

/* ---- one search ---- */

static bool is_open(const struct desk *desk, const struct plan_job *job, enum cut_effort effort)
{
    const struct cut_known_layout *known = cut_known_find(&desk->known, job->digest);

    return !job->taken && job->job->part_count > 0 && (!known || known->effort < effort);
}

/* The first job that was not searched with this effort yet; NULL when all were. */
static const struct plan_job *open_job(const struct desk *desk, enum cut_effort effort)
{
    const struct plan *plan = desk->state->plan;

    for (size_t i = 0; i < plan->jobs.count; i++)
        if (is_open(desk, &plan->jobs.at[i], effort))
            return &plan->jobs.at[i];
    return NULL;
}

static enum fault begin_search(void *context, struct fault_note *note)
{
    struct desk *desk = context;
    const struct plan_job *job = desk->sought;

    (void)note;
    desk->search_job = cut_job_copy(job->job, &desk->searching);
    desk->search_digest = job->digest;
    desk->search_way = job->way;
    desk->search = cut_begin(job->way, &desk->search_job, &desk->searching);
    return FAULT_NONE;
}

static enum fault step_search(void *context, struct fault_note *note)
{
    struct desk *desk = context;

    (void)note;
    desk->search_on = cut_step(desk->search, desk->search_work);
    return FAULT_NONE;
}

static enum fault keep_found(void *context, struct fault_note *note)
{
    struct desk *desk = context;
    const struct cut_known_layout found = {desk->search_digest, desk->search_effort,
                                           *cut_best(desk->search)};

    (void)note;
    cut_known_keep(&desk->known, &desk->found, &found);
    return FAULT_NONE;
}

static void end_search(struct desk *desk)
{
    desk->search = NULL;
    arena_release(&desk->searching);
}

/* Goes on with the search of a job, which is begun when it is not the one on its way. Sets
 * *ret_done when it was searched to the end of the effort. */
static enum fault go_on(struct desk *desk, const struct plan_job *job, enum cut_effort effort,
                        int64_t work, bool *ret_done, struct fault_note *note)
{
    enum fault fault = FAULT_NONE;

    if (!desk->search || desk->search_digest != job->digest) {
        end_search(desk);
        desk->sought = job;
        fault = desk_guard(&desk->searching, begin_search, desk, note);
    }
    desk->search_work = work;
    desk->search_effort = effort;
    if (!fault)
        fault = desk_guard(&desk->searching, step_search, desk, note);
    *ret_done = !fault && (!desk->search_on || cut_done(desk->search) >= cut_allowed(effort));
    if (!fault && !desk->search_on)
        desk->search_effort = CUT_BEST;
    if (*ret_done)
        fault = desk_guard(&desk->found, keep_found, desk, note);
    if (*ret_done || fault)
        end_search(desk);
    return fault;
}

/* ---- what searches find ---- */

static int64_t used_of(const struct cut_layout *layout)
{
    int64_t used = 0;

    for (size_t i = 0; i < layout->blanks.count; i++)
        used += layout->blanks.at[i].used;
    return used;
}

/* Of a roll that is sold in steps the same is paid for several lengths. */
static bool is_better(enum cut_way way, const struct cut_layout *a, const struct cut_layout *b)
{
    if (a->cost != b->cost)
        return a->cost < b->cost;
    if (way == CUT_ROLLS && used_of(a) != used_of(b))
        return used_of(a) < used_of(b);
    if (a->blanks.count != b->blanks.count)
        return a->blanks.count < b->blanks.count;
    return a->bound > b->bound || a->fences < b->fences;
}

/* A job whose layout in the plan is not the one that was found. */
static bool is_behind(const struct desk *desk)
{
    const struct plan *plan = desk->state->plan;

    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        const struct cut_known_layout *known = cut_known_find(&desk->known, job->digest);

        if (!job->taken && known && is_better(job->way, &known->layout, job->layout))
            return true;
    }
    return false;
}

static enum fault catch_up(struct desk *desk, struct fault_note *note)
{
    if (desk->found.taken > KNOWN_MOST)
        desk_forget_layouts(desk);
    return is_behind(desk) ? desk_plan_anew(desk, note) : FAULT_NONE;
}

/* With how much work it is searched while nobody types. */
static enum cut_effort aim_of(const struct desk *desk)
{
    return desk->search_longer ? CUT_BEST : CUT_GOOD;
}

bool desk_improve(struct desk *desk, int64_t work)
{
    const struct plan_job *job = desk->draft ? NULL : open_job(desk, aim_of(desk));
    bool done = false;

    if (!job)
        desk->search_longer = desk->search_longer && desk->draft;
    if (!job || go_on(desk, job, aim_of(desk), work, &done, NULL))
        return false;
    if (done && catch_up(desk, NULL))
        return false;
    return true;
}

struct desk_search desk_search_state(const struct desk *desk)
{
    const struct plan *plan = desk->state->plan;
    const struct plan_job *job = open_job(desk, aim_of(desk));
    struct desk_search state = {
        .more = open_job(desk, CUT_BEST) != NULL, .on = job != NULL, .longer = desk->search_longer};

    if (!job)
        return state;
    state.stock = job->stock;
    for (size_t i = 0; i < plan->jobs.count; i++) {
        state.jobs += plan->jobs.at[i].job->part_count > 0;
        state.job = &plan->jobs.at[i] == job ? state.jobs : state.job;
    }
    if (desk->search && desk->search_digest == job->digest)
        state.percent = (int)(100 * cut_done(desk->search) / cut_allowed(aim_of(desk)));
    state.percent = state.percent > 100 ? 100 : state.percent;
    return state;
}

bool desk_search_longer(struct desk *desk)
{
    desk->search_longer = open_job(desk, CUT_BEST) != NULL;
    return desk->search_longer;
}

/* What a search has found half-way, where it is better than what is known. */
static enum fault keep_half(struct desk *desk, struct fault_note *note)
{
    const struct cut_known_layout *known = cut_known_find(&desk->known, desk->search_digest);

    if (known && !is_better(desk->search_way, cut_best(desk->search), &known->layout))
        return FAULT_NONE;
    desk->search_effort = known ? known->effort : CUT_QUICK;
    return desk_guard(&desk->found, keep_found, desk, note);
}

enum fault desk_search_stop(struct desk *desk, struct fault_note *note)
{
    enum fault fault = FAULT_NONE;

    desk->search_longer = false;
    if (desk->search)
        fault = keep_half(desk, note);
    end_search(desk);
    return fault ? fault : catch_up(desk, note);
}

enum fault desk_cut(struct desk *desk, enum cut_effort effort, struct fault_note *note)
{
    const struct plan_job *job;
    enum fault fault = FAULT_NONE;

    while (!fault && (job = open_job(desk, effort))) {
        bool done = false;

        while (!fault && !done)
            fault = go_on(desk, job, effort, CUT_SLICE, &done, note);
    }
    return fault ? fault : catch_up(desk, note);
}

/* ---- layouts that are taken ---- */

enum fault desk_put_layout(struct model *draft, const char *job, const struct cut_layout *layout,
                           struct fault_note *note)
{
    struct text content;
    struct layout *kept;

    text_init(&content);
    cut_layout_print(layout, &content);
    if (text_failed(&content) || content.length > CONTENT_MOST) {
        enum fault fault = fault_say(note, FAULT_OVERFLOW, "a layout is too long to be kept");

        text_release(&content);
        return fault;
    }
    kept = MODEL_ADD(draft, layout);
    kept->job = arena_text(draft->arena, job);
    kept->content = arena_text(draft->arena, text_string(&content));
    text_release(&content);
    return FAULT_NONE;
}

size_t desk_drop_layouts(struct model *draft, bool together)
{
    size_t count = 0;

    for (size_t i = draft->layouts.count; i-- > 0;)
        if (pool_is_together(&draft->layouts.at[i]) == together)
            count += model_remove(draft, ENTITY_layout, draft->layouts.at[i].key);
    return count;
}

static enum fault put_under(struct model *draft, uint64_t digest, const struct cut_layout *layout,
                            int64_t tick, struct fault_note *note)
{
    char name[17];
    enum fault fault;

    if (layout->blanks.count == 0)
        return FAULT_NONE;
    snprintf(name, sizeof name, "%016" PRIx64, digest);
    fault = desk_put_layout(draft, name, layout, note);
    if (!fault)
        draft->layouts.at[draft->layouts.count - 1].tick = tick;
    return fault;
}

/* Those taken by hand: of a purchase the layouts stay as long as it does. */
static void drop_by_hand(struct model *draft)
{
    for (size_t i = draft->layouts.count; i-- > 0;) {
        const struct layout *layout = &draft->layouts.at[i];

        if (!pool_is_together(layout) && layout->tick == 0)
            model_remove(draft, ENTITY_layout, layout->key);
    }
}

enum fault desk_keep_layouts(struct model *draft, const struct plan *plan, struct fault_note *note)
{
    enum fault fault = FAULT_NONE;

    drop_by_hand(draft);
    for (size_t i = 0; i < plan->jobs.count && !fault; i++)
        if (!plan->jobs.at[i].cut)
            fault = put_under(draft, plan->jobs.at[i].digest, plan->jobs.at[i].layout, 0, note);
    return fault;
}

static bool is_kept(const struct model *draft, uint64_t digest)
{
    char name[17];

    snprintf(name, sizeof name, "%016" PRIx64, digest);
    for (size_t i = 0; i < draft->layouts.count; i++)
        if (draft->layouts.at[i].tick && strcmp(draft->layouts.at[i].job, name) == 0)
            return true;
    return false;
}

enum fault desk_keep_goods(struct model *draft, const struct plan *plan, int64_t tick,
                           struct fault_note *note)
{
    enum fault fault = FAULT_NONE;

    for (size_t i = 0; i < plan->jobs.count && !fault; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        uint64_t digest = plan_goods_digest(job, draft->arena);
        struct cut_layout layout;

        if (!job->cut && !is_kept(draft, digest) && plan_goods_layout(job, draft->arena, &layout))
            fault = put_under(draft, digest, &layout, tick, note);
    }
    return fault;
}

static enum fault take_layouts(struct model *draft, void *context, struct fault_note *note)
{
    return desk_keep_layouts(draft, context, note);
}

enum fault desk_take_layouts(struct desk *desk, struct fault_note *note)
{
    struct plan *plan = (struct plan *)(uintptr_t)desk->state->plan;

    if (plan->jobs.count == 0)
        return fault_say(note, FAULT_REFUSED, "nothing is cut in this build");
    return desk_edit(desk, "take the cutting layouts", take_layouts, plan, note);
}

static enum fault leave_layouts(struct model *draft, void *context, struct fault_note *note)
{
    (void)context;
    return desk_drop_layouts(draft, false) > 0
               ? FAULT_NONE
               : fault_say(note, FAULT_REFUSED, "no layout was taken");
}

enum fault desk_leave_layouts(struct desk *desk, struct fault_note *note)
{
    return desk_edit(desk, "give the cutting layouts back", leave_layouts, NULL, note);
}
