/*
 * The rehearsal from where the bench stands, and backwards.
 *
 * What has to come off again for a join is found by rehearsing: what stands in the way of its lost
 * points is taken off with all that lies over it or holds it, and the rehearsal is asked again,
 * until nothing that was done is in the way any more. Each round takes at least one step off, so
 * there are no more rounds than steps.
 */
#include "plan/rehearse_stage.h"

#include <assert.h>
#include <string.h>

/* What taking a step back is called; NULL for steps that leave nothing to take off. %b, %j, %c, %f
 * are the box, join, layer and face. */
static const char *const taken_off[STEP_KINDS] = {
    [STEP_PANEL] = "take off the panels of the %f",
    [STEP_WEB] = "take off the webbing of the %f",
    [STEP_PAD] = "take off the %c",
    [STEP_BATTING] = "take off the %c",
    [STEP_LINING] = "take off the %c",
    [STEP_COVER] = "take off the %c",
    [STEP_BUTTON] = "cut the cords of the %c",
    [STEP_STAPLE] = "take the staples out of the %c",
    [STEP_CORNER] = "open the corners of the %c",
    [STEP_FLAP] = "open the %c at %j",
    [STEP_BACK] = "take off the %c",
    [STEP_DUST] = "take off the %c",
    [STEP_TRIM] = "take off the %c",
    [STEP_OFFER] = "part the boxes at %j",
    [STEP_DRIVE] = "back the screws of %j out",
    [STEP_FIX] = "undo %j in the room",
    [STEP_HINGE] = "take box %b off its hinges",
    [STEP_LEG] = "take the legs and glides off box %b",
};

/* ---- steps in hand ---- */

struct undoing {
    struct stage stage; /* empty: for what lies where */
    const struct plan *plan;
    bool *done; /* steps that can come off */
    bool *off;
    size_t *when; /* each was done: 1, 2, ... */
    size_t *sequence;
};

static void take_join_off(struct undoing *undoing, int64_t join);

static bool take_step_off(struct undoing *undoing, size_t step)
{
    assert(step < undoing->plan->steps.count);
    if (!undoing->done[step] || undoing->off[step])
        return false;
    undoing->off[step] = true;
    return true;
}

static bool is_of_layer(const struct step *step, int64_t layer)
{
    return step->layer == layer && taken_off[step->kind];
}

/* ---- layers ---- */

static bool sheets_overlap(const struct staged_box *box, size_t over, size_t under)
{
    for (size_t i = 0; i < box->sheets.count; i++) {
        const struct sheet *a = &box->sheets.at[i];

        for (size_t j = 0; a->layer == over && j < box->sheets.count; j++) {
            const struct sheet *b = &box->sheets.at[j];

            if (b->layer == under && a->side == b->side && stage_areas_meet(&a->area, &b->area))
                return true;
        }
    }
    return false;
}

/* When the first step that put something of a layer on was done. */
static size_t first_of(const struct undoing *undoing, size_t layer)
{
    assert(layer < undoing->stage.model->layers.count);

    int64_t key = undoing->stage.layers[layer].layer->key;
    size_t first = 0;

    for (size_t i = 0; i < undoing->plan->steps.count; i++)
        if (is_of_layer(&undoing->plan->steps.at[i], key) && undoing->done[i] &&
            (first == 0 || undoing->when[i] < first))
            first = undoing->when[i];
    return first;
}

static bool lies_over(const struct undoing *undoing, size_t over, size_t under)
{
    if (over == under || first_of(undoing, over) <= first_of(undoing, under))
        return false;
    for (size_t i = 0; i < undoing->stage.model->boxes.count; i++)
        if (sheets_overlap(&undoing->stage.boxes[i], over, under))
            return true;
    return false;
}

static bool take_own_steps_off(struct undoing *undoing, int64_t layer)
{
    bool some = false;

    for (size_t i = 0; i < undoing->plan->steps.count; i++)
        if (is_of_layer(&undoing->plan->steps.at[i], layer) && take_step_off(undoing, i))
            some = true;
    return some;
}

/* Joints that shut over one of its edges. */
static void free_edges(struct undoing *undoing, int64_t layer)
{
    const struct plan *plan = undoing->plan;

    for (size_t i = 0; i < plan->intervals.count; i++)
        if (plan->intervals.at[i].class == CLASS_TRAPPED && plan->intervals.at[i].join &&
            plan->edges.at[plan->intervals.at[i].edge].layer == layer)
            take_join_off(undoing, plan->intervals.at[i].join);
}

static void take_layer_off(struct undoing *undoing, int64_t layer)
{
    size_t under = model_index(undoing->stage.model, ENTITY_layer, layer);

    if (!take_own_steps_off(undoing, layer))
        return;
    free_edges(undoing, layer);
    for (size_t i = 0; i < undoing->stage.model->layers.count; i++)
        if (lies_over(undoing, i, under))
            take_layer_off(undoing, undoing->stage.layers[i].layer->key);
}

/* ---- panels ---- */

static void take_panels_off(struct undoing *undoing, size_t step)
{
    assert(step < undoing->plan->steps.count);

    const struct stage *stage = &undoing->stage;
    const struct facing *facing =
        MODEL_FIND(stage->model, facing, undoing->plan->steps.at[step].facing);
    const struct staged_box *box = facing ? stage_box(stage, facing->box) : NULL;

    if (!take_step_off(undoing, step) || !box)
        return;
    for (size_t i = 0; i < box->sheets.count; i++)
        if (box->sheets.at[i].side == facing->side)
            take_layer_off(undoing, stage->layers[box->sheets.at[i].layer].layer->key);
}

static void take_facing_off(struct undoing *undoing, int64_t key)
{
    const struct facing *facing = MODEL_FIND(undoing->stage.model, facing, key);

    for (size_t i = 0; facing && i < undoing->plan->steps.count; i++) {
        const struct step *step = &undoing->plan->steps.at[i];
        const struct facing *other = MODEL_FIND(undoing->stage.model, facing, step->facing);

        if (other && step->kind == STEP_PANEL && other->box == facing->box &&
            other->side == facing->side && other->loose == facing->loose)
            take_panels_off(undoing, i);
    }
}

/* ---- joins ---- */

/* What was closed over its heads: flaps, whole layers, panels. */
static void open_heads(struct undoing *undoing, int64_t join)
{
    const struct plan *plan = undoing->plan;

    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];

        if (interval->join == join && interval->class != CLASS_TRAPPED &&
            interval->pass != STAPLED_AT_BENCH && !undoing->stage.flap_wanted[i])
            take_layer_off(undoing, plan->edges.at[interval->edge].layer);
    }
    for (size_t i = 0; i < plan->constraints.count; i++)
        if (plan->constraints.at[i].join == join &&
            plan->constraints.at[i].kind == JOIN_BEFORE_FACING)
            take_facing_off(undoing, plan->constraints.at[i].item);
}

static bool parts_join(const struct step *step, int64_t join)
{
    return step->join == join && (step->kind == STEP_FLAP || step->kind == STEP_DRIVE ||
                                  step->kind == STEP_OFFER || step->kind == STEP_FIX);
}

static void take_join_off(struct undoing *undoing, int64_t join)
{
    bool some = false;

    for (size_t i = 0; i < undoing->plan->steps.count; i++)
        if (parts_join(&undoing->plan->steps.at[i], join) && take_step_off(undoing, i))
            some = true;
    if (!some)
        return;
    open_heads(undoing, join);
    for (size_t i = 0; i < undoing->plan->constraints.count; i++)
        if (undoing->plan->constraints.at[i].join == join &&
            undoing->plan->constraints.at[i].kind == JOIN_BEFORE_JOIN)
            take_join_off(undoing, undoing->plan->constraints.at[i].item);
}

/* Whatever a step put where it stands. */
static void take_off(struct undoing *undoing, size_t index)
{
    assert(index < undoing->plan->steps.count);

    const struct step *step = &undoing->plan->steps.at[index];

    if (step->layer)
        take_layer_off(undoing, step->layer);
    else if (step->join)
        take_join_off(undoing, step->join);
    else if (step->facing)
        take_panels_off(undoing, index);
}

/* ---- the steps, in a sequence ---- */

/* Of `count` steps that were done in an order. */
static struct undoing undoing_begin(const struct plan *plan, const size_t *order, size_t count,
                                    struct arena *arena)
{
    struct undoing undoing = {.plan = plan};

    stage_empty(&undoing.stage, plan, arena);
    undoing.done = ARENA_MANY(arena, bool, plan->steps.count + 1);
    undoing.off = ARENA_MANY(arena, bool, plan->steps.count + 1);
    undoing.when = ARENA_MANY(arena, size_t, plan->steps.count + 1);
    for (size_t i = 0; i < count; i++) {
        undoing.done[order[i]] = true;
        undoing.when[order[i]] = i + 1;
    }
    undoing.sequence = ARENA_MANY(arena, size_t, plan->steps.count + 1);
    return undoing;
}

static size_t step_named(const struct plan *plan, const char *name)
{
    for (size_t i = 0; i < plan->steps.count; i++)
        if (strcmp(plan->steps.at[i].name, name) == 0)
            return i;
    return PLAN_NONE;
}

/* Steps that are ticked, in the order of their ticks, into `sequence`; how many. */
static size_t ticked_steps(const struct plan *plan, bool *ticked, size_t *sequence)
{
    size_t count = 0;

    for (size_t i = 0; i < plan->facts->ticks.count; i++) {
        size_t step = step_named(plan, plan->facts->ticks.at[i].step);

        if (step == PLAN_NONE || ticked[step])
            continue;
        ticked[step] = true;
        sequence[count++] = step;
    }
    return count;
}

/* What came off is put on again later, as planned. */
static size_t sequence_without(const struct plan *plan, const size_t *ticked, size_t count,
                               const bool *off, size_t *sequence)
{
    size_t kept = 0;
    size_t done;

    for (size_t i = 0; i < count; i++)
        if (!off[ticked[i]])
            sequence[kept++] = ticked[i];
    done = kept;
    for (size_t i = 0; i < plan->steps.count; i++) {
        bool there = false;

        for (size_t j = 0; j < done && !there; j++)
            there = sequence[j] == i;
        if (!there)
            sequence[kept++] = i;
    }
    assert(kept == plan->steps.count);
    return kept;
}

struct from_ticks {
    const struct plan *plan;
    struct arena *arena;
    int64_t join;
    const struct rehearsal *result;
    struct rehearsed_steps steps;
};

static const struct rehearsal *rehearse_now(const struct plan *plan, const size_t *sequence,
                                            size_t count, struct arena *arena)
{
    const struct rehearsal *result = NULL;

    if (rehearse_sequence(plan, sequence, count, arena, &result))
        longjmp(*arena->escape, 1);
    return result;
}

static void run_ticks(void *context)
{
    struct from_ticks *from = context;
    const struct plan *plan = from->plan;
    bool *ticked = ARENA_MANY(from->arena, bool, plan->steps.count + 1);
    bool *off = ARENA_MANY(from->arena, bool, plan->steps.count + 1);
    size_t *order = ARENA_MANY(from->arena, size_t, plan->steps.count + 1);
    size_t *sequence = ARENA_MANY(from->arena, size_t, plan->steps.count + 1);
    size_t count = ticked_steps(plan, ticked, order);

    count = sequence_without(plan, order, count, off, sequence);
    from->result = rehearse_now(plan, sequence, count, from->arena);
}

enum fault rehearse_ticks(const struct plan *plan, struct arena *arena,
                          const struct rehearsal **ret_rehearsal)
{
    struct from_ticks from = {.plan = plan, .arena = arena};

    if (!arena_try(arena, run_ticks, &from))
        return FAULT_MEMORY;
    *ret_rehearsal = from.result;
    return FAULT_NONE;
}

/* ---- what has to come off ---- */

/* Takes off what stands in the way of the join's points; false when nothing more does. */
static bool clear_way(struct undoing *undoing, const struct rehearsal *result, int64_t join)
{
    bool some = false;

    for (size_t i = 0; i < result->points.count; i++) {
        const struct rehearsed_point *point = &result->points.at[i];

        for (int proof = 0; point->join == join && proof < PROOFS; proof++) {
            const struct verdict *verdict = &point->verdicts[proof];

            if (verdict->lapse == LAPSE_NONE || verdict->since == PLAN_NONE ||
                undoing->off[verdict->since] || !undoing->done[verdict->since])
                continue;
            take_off(undoing, verdict->since);
            some = some || undoing->off[verdict->since];
        }
    }
    return some;
}

static void keep_off(struct from_ticks *from, const bool *off, const size_t *order, size_t count)
{
    size_t *steps = ARENA_MANY(from->arena, size_t, count + 1);

    for (size_t i = count; i-- > 0;)
        if (off[order[i]])
            steps[from->steps.count++] = order[i];
    from->steps.at = steps;
}

static void run_undo(void *context)
{
    struct from_ticks *from = context;
    const struct plan *plan = from->plan;
    bool *ticked = ARENA_MANY(from->arena, bool, plan->steps.count + 1);
    size_t *order = ARENA_MANY(from->arena, size_t, plan->steps.count + 1);
    size_t count = ticked_steps(plan, ticked, order);
    struct undoing undoing = undoing_begin(plan, order, count, from->arena);
    bool more = true;

    while (more) {
        size_t all = sequence_without(plan, order, count, undoing.off, undoing.sequence);

        more =
            clear_way(&undoing, rehearse_now(plan, undoing.sequence, all, from->arena), from->join);
    }
    keep_off(from, undoing.off, order, count);
}

enum fault rehearse_undo(const struct plan *plan, int64_t join, struct arena *arena,
                         struct rehearsed_steps *ret_steps)
{
    struct from_ticks from = {.plan = plan, .arena = arena, .join = join};

    if (!arena_try(arena, run_undo, &from))
        return FAULT_MEMORY;
    *ret_steps = from.steps;
    return FAULT_NONE;
}

/* ---- moving house ---- */

static bool is_parted(const struct step *step)
{
    return step->place == PLACE_SITE &&
           (step->kind == STEP_OFFER || step->kind == STEP_FIX || step->kind == STEP_TRIM);
}

static void run_apart(void *context)
{
    struct from_ticks *from = context;
    const struct plan *plan = from->plan;
    size_t count = plan->steps.count;
    size_t *order = ARENA_MANY(from->arena, size_t, count + 1);

    for (size_t i = 0; i < count; i++)
        order[i] = i;
    struct undoing undoing = undoing_begin(plan, order, count, from->arena);
    for (size_t i = 0; i < count; i++)
        if (is_parted(&plan->steps.at[i]))
            take_off(&undoing, i);
    keep_off(from, undoing.off, order, count);
}

enum fault rehearse_apart(const struct plan *plan, struct arena *arena,
                          struct rehearsed_steps *ret_steps)
{
    struct from_ticks from = {.plan = plan, .arena = arena};

    if (!arena_try(arena, run_apart, &from))
        return FAULT_MEMORY;
    *ret_steps = from.steps;
    return FAULT_NONE;
}

/* ---- words ---- */

static void add_item(const struct plan *plan, enum entity_kind entity, int64_t key,
                     struct text *out)
{
    char name[MODEL_NAME_TEXT];

    text_add(out, model_item_name(name, plan->facts, entity, key));
}

static void add_face(const struct plan *plan, int64_t key, struct text *out)
{
    const struct facing *facing = MODEL_FIND(plan->facts, facing, key);

    text_format(out, "%s of ", facing ? words_side.at[facing->side].name : "face");
    add_item(plan, ENTITY_box, facing ? facing->box : 0, out);
}

void rehearse_apart_text(const struct plan *plan, size_t step, struct text *out)
{
    assert(step < plan->steps.count);

    const struct step *of = &plan->steps.at[step];
    const char *at = taken_off[of->kind] ? taken_off[of->kind] : "undo";

    for (; *at; at++) {
        if (*at != '%') {
            text_add_char(out, *at);
            continue;
        }
        at++;
        if (*at == 'b')
            add_item(plan, ENTITY_box, of->box, out);
        else if (*at == 'j')
            add_item(plan, ENTITY_join, of->join, out);
        else if (*at == 'c')
            add_item(plan, ENTITY_layer, of->layer, out);
        else
            add_face(plan, of->facing, out);
    }
}
