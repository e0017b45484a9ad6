/*
 * The desk's states.
 *
 * Two states at most are alive: the one in force and the draft. Each owns one arena with a model
 * and its plan, so that taking the draft over is an exchange of two pointers, after the store has
 * said yes, and dropping it is one call.
 *
 *   1  `state` is never NULL, has passed model_check and is planned
 *   2  what the store holds is what `state` says, unless another program wrote (desk_refresh)
 *   3  a draft exists only between desk_change and desk_commit or desk_abandon
 */
#include "desk/desk.h"

#include "desk/internal.h"

#include "base/memory.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

/* ---- guarded work ---- */

struct guarded {
    desk_work_fn *work;
    void *context;
    struct fault_note *note;
    enum fault fault;
};

static void run_guarded(void *context)
{
    struct guarded *guarded = context;
    guarded->fault = guarded->work(guarded->context, guarded->note);
}

enum fault desk_guard(struct arena *arena, desk_work_fn *work, void *context,
                      struct fault_note *note)
{
    struct guarded guarded = {work, context, note, FAULT_NONE};
    if (!arena_try(arena, run_guarded, &guarded))
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    return guarded.fault;
}

/* ---- states ---- */

struct desk_state *desk_state_new(void)
{
    struct desk_state *state = memory_resize(NULL, sizeof *state);
    if (state) {
        memset(state, 0, sizeof *state);
        arena_init(&state->arena);
    }
    return state;
}

void desk_state_free(struct desk_state *state)
{
    if (state)
        arena_release(&state->arena);
    memory_release(state);
}

/* Two states take turns at every edit: the memory of a large one is kept for the next, since to get
 * it anew would be felt at a key. */
#define SPARE_LEAST ((size_t)8 << 20)

static struct desk_state *state_begin(struct desk *desk)
{
    struct desk_state *state = desk->spare;

    desk->spare = NULL;
    return state ? state : desk_state_new();
}

static void state_end(struct desk *desk, struct desk_state *state)
{
    if (!state || desk->spare || state->arena.taken < SPARE_LEAST) {
        desk_state_free(state);
        return;
    }
    arena_reset(&state->arena);
    *state = (struct desk_state){.arena = state->arena};
    desk->spare = state;
}

struct first_fault {
    struct fault_note *note;
    bool found;
};

static void keep_first(void *context, const struct fault_note *note)
{
    struct first_fault *first = context;
    if (!first->found && first->note)
        *first->note = *note;
    first->found = true;
}

enum fault desk_check_first(const struct model *model, struct fault_note *note)
{
    struct fault_note own;
    struct first_fault first = {.note = &own};
    if (model_check(model, keep_first, &first) == 0)
        return FAULT_NONE;
    if (note)
        *note = own;
    return own.code;
}

enum fault desk_state_plan(struct desk_state *state, const struct cut_known *known,
                           struct fault_note *note)
{
    enum fault fault = desk_check_first(&state->model, note);
    if (!fault && plan_make_draft(&state->model, known, &state->arena, &state->plan))
        fault = fault_say(note, FAULT_MEMORY, "there is not enough memory for the plan");
    return fault;
}

static enum fault copy_model(void *context, struct fault_note *note)
{
    (void)note;
    struct desk *desk = context;
    model_copy(&desk->draft->model, &desk->state->model, &desk->draft->arena);
    return FAULT_NONE;
}

/* Puts a state in force. */
static void desk_put(struct desk *desk, struct desk_state *state)
{
    assert(state->plan);
    state_end(desk, desk->state);
    desk->state = state;
    desk->serial++;
}

/* Loads a build (0: none), plans it and puts it in force. */
static enum fault desk_load(struct desk *desk, int64_t build, struct fault_note *note)
{
    desk_abandon(desk);
    struct desk_state *state = state_begin(desk);
    if (!state)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    enum fault fault = store_load(desk->store, build, &state->model, &state->arena, note);
    if (!fault)
        fault = desk_state_plan(state, &desk->known, note);
    if (fault)
        state_end(desk, state);
    else
        desk_put(desk, state);
    return fault;
}

static enum fault desk_draft(struct desk *desk, struct fault_note *note)
{
    if (desk->draft)
        return FAULT_NONE;
    desk->draft = state_begin(desk);
    if (!desk->draft)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    enum fault fault = desk_guard(&desk->draft->arena, copy_model, desk, note);
    if (fault)
        desk_abandon(desk);
    return fault;
}

enum fault desk_plan_anew(struct desk *desk, struct fault_note *note)
{
    struct desk_state *state;
    enum fault fault;

    assert(!desk->draft);
    fault = desk_draft(desk, note);
    if (fault)
        return fault;
    state = desk->draft;
    desk->draft = NULL;
    fault = desk_state_plan(state, &desk->known, note);
    if (fault)
        state_end(desk, state);
    else
        desk_put(desk, state);
    return fault;
}

typedef enum fault make_fn(const struct model *facts, const struct cut_known *known,
                           struct arena *arena, const struct plan **ret_plan);

/* The model in force, planned in another way; the plan in force where memory is out. */
static const struct plan *plan_again(const struct desk *desk, struct desk_again *again,
                                     make_fn *make, const struct cut_known *known)
{
    if (again->plan && again->serial == desk->serial)
        return again->plan;
    arena_reset(&again->arena);
    again->plan = NULL;
    if (make(&desk->state->model, known, &again->arena, &again->plan))
        return desk->state->plan;
    again->serial = desk->serial;
    return again->plan;
}

const struct plan *desk_quick_plan(struct desk *desk)
{
    if (desk->known.layouts.count == 0)
        return desk->state->plan;
    return plan_again(desk, &desk->quick, plan_make_draft, NULL);
}

const struct plan *desk_told_plan(struct desk *desk)
{
    if (desk->state->plan->findings.count == 0)
        return desk->state->plan;
    return plan_again(desk, &desk->told, plan_make_known, &desk->known);
}

/* ---- opening ---- */

enum fault desk_open(struct desk **ret_desk, const char *path, struct fault_note *note)
{
    struct desk *desk = memory_resize(NULL, sizeof *desk);
    if (!desk)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory to begin");
    memset(desk, 0, sizeof *desk);
    arena_init(&desk->preview);
    arena_init(&desk->builds);
    arena_init(&desk->found);
    arena_init(&desk->searching);
    arena_init(&desk->quick.arena);
    arena_init(&desk->told.arena);
    enum fault fault = store_open(&desk->store, path, note);
    if (!fault)
        fault = desk_load(desk, 0, note);
    if (fault) {
        desk_close(desk);
        return fault;
    }
    *ret_desk = desk;
    return FAULT_NONE;
}

void desk_close(struct desk *desk)
{
    if (!desk)
        return;
    desk_abandon(desk);
    desk_state_free(desk->state);
    desk_state_free(desk->spare);
    arena_release(&desk->preview);
    arena_release(&desk->builds);
    arena_release(&desk->quick.arena);
    arena_release(&desk->told.arena);
    desk_forget_layouts(desk);
    store_close(desk->store);
    memory_release(desk);
}

enum fault desk_read_only(const struct desk *desk)
{
    return store_read_only(desk->store);
}

unsigned desk_serial(const struct desk *desk)
{
    return desk->serial;
}

const struct model *desk_model(const struct desk *desk)
{
    return &desk->state->model;
}

const struct plan *desk_plan(const struct desk *desk)
{
    return desk->state->plan;
}

const char *desk_path(const struct desk *desk)
{
    return store_path(desk->store);
}

/* ---- builds ---- */

/* What the store keeps of the plan for the list of all builds. A cache: a failure loses nothing. */
static void desk_keep_summary(struct desk *desk)
{
    const struct model *model = &desk->state->model;
    const struct plan *plan = desk->state->plan;
    if (model->build.key == 0)
        return;
    struct store_summary summary = {.estimate = plan->cost.estimate,
                                    .steps_done = plan->tally.steps_done,
                                    .steps_total = plan->tally.steps,
                                    .next_step = ""};
    struct text missing;
    text_init(&missing);
    desk_missing(plan, &missing);
    summary.missing = text_string(&missing);
    for (size_t i = 0; i < plan->steps.count && !summary.next_step[0]; i++) {
        if (plan->steps.at[i].ready)
            summary.next_step = plan->steps.at[i].title;
    }
    store_summary_put(desk->store, model->build.key, &summary, NULL);
    text_release(&missing);
}

enum fault desk_builds(struct desk *desk, const struct store_build **ret_builds, size_t *ret_count,
                       struct fault_note *note)
{
    arena_release(&desk->builds);
    struct store_build *builds = NULL;
    enum fault fault = store_builds(desk->store, &desk->builds, &builds, ret_count, note);
    if (!fault)
        *ret_builds = builds;
    return fault;
}

enum fault desk_take_up(struct desk *desk, int64_t build, struct fault_note *note)
{
    enum fault fault = desk_load(desk, build, note);
    if (fault)
        return fault;
    desk->search_longer = false;
    desk_keep_summary(desk);
    return FAULT_NONE;
}

enum fault desk_take_up_named(struct desk *desk, const char *name, struct fault_note *note)
{
    const struct store_build *builds;
    size_t count;
    enum fault fault = desk_builds(desk, &builds, &count, note);
    if (fault)
        return fault;
    for (size_t i = 0; i < count; i++) {
        if (strcmp(builds[i].name, name) == 0)
            return desk_take_up(desk, builds[i].key, note);
    }
    return fault_say(note, FAULT_UNKNOWN, "there is no build called \"%s\"", name);
}

/* ---- drafts ---- */

void desk_abandon(struct desk *desk)
{
    state_end(desk, desk->draft);
    desk->draft = NULL;
    arena_release(&desk->preview);
}

struct draft_change {
    struct model *draft;
    desk_change_fn *change;
    void *context;
};

static enum fault run_change(void *context, struct fault_note *note)
{
    struct draft_change *run = context;
    return run->change(run->draft, run->context, note);
}

static enum fault catch_up(void *context, struct fault_note *note)
{
    struct desk *desk = context;
    (void)note;
    cutting_catch_up(&desk->draft->model, desk->state->plan);
    return FAULT_NONE;
}

/* The draft of a change, with what earlier ones did not write down yet. */
static enum fault begin_change(struct desk *desk, struct fault_note *note)
{
    bool begun = desk->draft != NULL;
    enum fault fault = desk_draft(desk, note);
    if (fault || begun)
        return fault;
    fault = desk_guard(&desk->draft->arena, catch_up, desk, note);
    if (fault)
        desk_abandon(desk);
    return fault;
}

enum fault desk_change(struct desk *desk, desk_change_fn *change, void *context,
                       struct fault_note *note)
{
    enum fault fault = begin_change(desk, note);
    if (fault)
        return fault;
    struct draft_change run = {&desk->draft->model, change, context};
    fault = desk_guard(&desk->draft->arena, run_change, &run, note);
    if (fault)
        desk_abandon(desk);
    return fault;
}

enum fault desk_preview(struct desk *desk, const struct plan **ret_plan, struct fault_note *note)
{
    if (!desk->draft)
        return fault_say(note, FAULT_MISSING, "nothing is being changed");
    arena_reset(&desk->preview);
    enum fault fault = desk_check_first(&desk->draft->model, note);
    if (!fault && plan_make_draft(&desk->draft->model, NULL, &desk->preview, ret_plan))
        fault = fault_say(note, FAULT_MEMORY, "there is not enough memory for the plan");
    return fault;
}

static enum fault keep_prices(void *context, struct fault_note *note)
{
    struct desk *desk = context;
    (void)note;
    past_keep_prices(&desk->state->model, &desk->draft->model);
    return FAULT_NONE;
}

enum fault desk_commit(struct desk *desk, const char *label, struct fault_note *note)
{
    if (!desk->draft)
        return fault_say(note, FAULT_MISSING, "nothing is being changed");
    struct desk_state *draft = desk->draft;
    enum fault fault = desk_guard(&draft->arena, keep_prices, desk, note);
    if (!fault)
        fault = desk_state_plan(draft, &desk->known, note);
    if (!fault)
        fault = store_save(desk->store, &desk->state->model, &draft->model, label, note);
    if (fault)
        return fault;
    desk->draft = NULL;
    desk_put(desk, draft);
    desk_keep_summary(desk);
    arena_release(&desk->preview);
    return FAULT_NONE;
}

enum fault desk_edit(struct desk *desk, const char *label, desk_change_fn *change, void *context,
                     struct fault_note *note)
{
    desk_abandon(desk);
    enum fault fault = desk_change(desk, change, context, note);
    if (!fault)
        fault = desk_commit(desk, label, note);
    if (fault)
        desk_abandon(desk);
    return fault;
}

enum fault desk_new_build(struct desk *desk, const char *label, desk_change_fn *change,
                          void *context, struct fault_note *note)
{
    int64_t before = desk->state->model.build.key;
    enum fault fault = before ? desk_load(desk, 0, note) : FAULT_NONE;
    if (!fault)
        fault = desk_edit(desk, label, change, context, note);
    if (fault && before)
        desk_load(desk, before, NULL);
    return fault;
}

/* ---- undo, and other programs ---- */

typedef enum fault step_history_fn(struct store *store, char label[STORE_LABEL], int64_t *ret_build,
                                   struct fault_note *note);

/* Takes up the build that an undone or redone action belongs to, or none when it is gone now. */
static enum fault desk_step(struct desk *desk, step_history_fn *step, char label[STORE_LABEL],
                            struct fault_note *note)
{
    int64_t open = desk->state->model.build.key;
    int64_t build = 0;
    desk_abandon(desk);
    enum fault fault = step(desk->store, label, &build, note);
    if (fault)
        return fault;
    fault = desk_take_up(desk, build ? build : open, note);
    return fault == FAULT_MISSING ? desk_take_up(desk, 0, note) : fault;
}

enum fault desk_undo(struct desk *desk, char label[STORE_LABEL], struct fault_note *note)
{
    return desk_step(desk, store_undo, label, note);
}

enum fault desk_redo(struct desk *desk, char label[STORE_LABEL], struct fault_note *note)
{
    return desk_step(desk, store_redo, label, note);
}

void desk_undo_label(struct desk *desk, char label[STORE_LABEL])
{
    if (store_undo_label(desk->store, label, NULL))
        label[0] = '\0';
}

void desk_redo_label(struct desk *desk, char label[STORE_LABEL])
{
    if (store_redo_label(desk->store, label, NULL))
        label[0] = '\0';
}

enum fault desk_refresh(struct desk *desk, bool *ret_changed, struct fault_note *note)
{
    if (!store_changed(desk->store)) {
        *ret_changed = false;
        return FAULT_NONE;
    }
    enum fault fault = desk_load(desk, desk->state->model.build.key, note);
    if (fault == FAULT_MISSING)
        fault = desk_load(desk, 0, note);
    if (!fault)
        *ret_changed = true;
    return fault;
}
