/*
 * The walk. Each step is looked up in a table of what it does to the stage; steps that change
 * nothing there (looking, measuring, writing down) have no entry. Then the end: what was left open
 * or was never come to.
 *
 * Invariants: a verdict that is not fine never becomes fine again; a point of the plan is in the
 * result once, in the order of the plan; the walk reads the plan and writes the stage only.
 */
#include "plan/rehearse_stage.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

const char *const proof_names[PROOFS] = {"marked",  "drilled", "bare",  "found",
                                         "reached", "driven",  "closed"};

static stage_fn *const does[STEP_KINDS] = {
    [STEP_BUY] = do_buy,       [STEP_CUT] = do_cut,       [STEP_LABEL] = do_label,
    [STEP_FRAME] = do_frame,   [STEP_PANEL] = do_panel,   [STEP_WEB] = do_panel,
    [STEP_RECORD] = do_record, [STEP_INSERT] = do_insert, [STEP_NUTS] = do_nuts,
    [STEP_CLEAT] = do_cleat,   [STEP_HANG] = do_hang,     [STEP_HINGE] = do_hinge,
    [STEP_LEG] = do_leg,       [STEP_SHEAR] = do_cut,     [STEP_SLICE] = do_cut,
    [STEP_SEW] = do_sew,       [STEP_TUFT] = do_tuft,     [STEP_PAD] = do_lay,
    [STEP_BATTING] = do_lay,   [STEP_LINING] = do_lay,    [STEP_BACK] = do_lay,
    [STEP_TRIM] = do_lay,      [STEP_DUST] = do_dust,     [STEP_COVER] = do_cover,
    [STEP_STAPLE] = do_staple, [STEP_SLIT] = do_slit,     [STEP_BUTTON] = do_button,
    [STEP_FLAP] = do_flap,     [STEP_DRY] = do_dry,       [STEP_DRILL] = do_drill,
    [STEP_MAP] = do_map,       [STEP_PATCH] = do_patch,   [STEP_LOCATE] = do_locate,
    [STEP_FIND] = do_find,     [STEP_OFFER] = do_offer,   [STEP_DRIVE] = do_drive,
    [STEP_FIX] = do_fix,       [STEP_PUSH] = do_push,     [STEP_MOVE] = do_move,
    [STEP_MARK] = do_mark,     [STEP_SET] = do_set,
};

/* ---- what is to be proved ---- */

static void add_point(struct stage *stage, size_t point, int64_t join)
{
    struct rehearsed_point *added = LIST_ADD(stage->arena, &stage->result->points);

    added->point = point;
    added->join = join;
    for (int proof = 0; proof < PROOFS; proof++)
        added->verdicts[proof] = stage_lapse(stage, LAPSE_NO_STEP);
}

static void add_points(struct stage *stage)
{
    for (size_t i = 0; i < stage->model->joins.count; i++) {
        struct staged_join *join = &stage->joins[i];

        join->first_result = PLAN_NONE;
        if (join->left_out || join->join->fastener == FASTENER_REST || !join->junction)
            continue;
        if (join->junction->point_count == 0)
            stage_lose(stage, REHEARSED_JOIN, ENTITY_join, join->join->key, PLAN_NONE,
                       stage_lapse(stage, LAPSE_NO_SCREW));
        else
            join->first_result = stage->result->points.count;
        for (size_t j = 0; j < join->junction->point_count; j++)
            add_point(stage, join->junction->first_point + j, join->join->key);
    }
}

/* ---- what came of it ---- */

static void sum_up(struct rehearsal *result, struct arena *arena)
{
    for (size_t i = 0; i < result->points.count; i++) {
        struct rehearsed_point *point = &result->points.at[i];

        for (int proof = 0; proof < PROOFS; proof++)
            point->lost |= point->verdicts[proof].lapse != LAPSE_NONE;
        if (point->lost)
            *LIST_ADD(arena, &result->lost) = i;
    }
    result->proved = result->lost.count == 0 && result->things.count == 0;
}

/* ---- the walk ---- */

struct walk {
    const struct plan *plan;
    const size_t *sequence; /* NULL: as the plan has them */
    size_t count;
    struct arena *arena;
    const struct rehearsal *result;
};

static void walk(void *context)
{
    struct walk *walk = context;
    struct stage stage;

    stage_empty(&stage, walk->plan, walk->arena);
    add_points(&stage);
    for (size_t i = 0; i < walk->count; i++) {
        const struct step *step;

        stage.now = walk->sequence ? walk->sequence[i] : i;
        assert(stage.now < walk->plan->steps.count);
        step = &walk->plan->steps.at[stage.now];
        stage.done[stage.now] = i;
        if (does[step->kind])
            does[step->kind](&stage, step);
    }
    stage.now = PLAN_NONE;
    point_end(&stage);
    cloth_end(&stage);
    sum_up(stage.result, walk->arena);
    walk->result = stage.result;
}

enum fault rehearse_sequence(const struct plan *plan, const size_t *sequence, size_t count,
                             struct arena *arena, const struct rehearsal **ret_rehearsal)
{
    struct walk context = {plan, sequence, count, arena, NULL};

    if (!arena_try(arena, walk, &context))
        return FAULT_MEMORY;
    *ret_rehearsal = context.result;
    return FAULT_NONE;
}

enum fault rehearse(const struct plan *plan, struct arena *arena,
                    const struct rehearsal **ret_rehearsal)
{
    return rehearse_sequence(plan, NULL, plan->steps.count, arena, ret_rehearsal);
}

/* ---- words ---- */

static const char *const sentences[] = {
#define LAPSE_SENTENCE(name, sentence) [LAPSE_##name] = (sentence),
    LAPSES(LAPSE_SENTENCE)
#undef LAPSE_SENTENCE
};

static void add_name(const struct plan *plan, const struct verdict *verdict, struct text *out)
{
    char name[MODEL_NAME_TEXT];

    if (verdict->label)
        text_add(out, verdict->label);
    else if (verdict->entity == ENTITY_none)
        text_add(out, "floor, or too far for an arm");
    else
        text_add(out, model_item_name(name, plan->facts, verdict->entity, verdict->key));
}

void rehearse_text(const struct plan *plan, const struct verdict *verdict, struct text *out)
{
    for (const char *at = sentences[verdict->lapse]; *at; at++) {
        if (at[0] == '%' && at[1] == 'e') {
            add_name(plan, verdict, out);
            at++;
        } else {
            text_add_char(out, *at);
        }
    }
    if (verdict->since != PLAN_NONE)
        text_format(out, " (since step %zu, %s)", verdict->since + 1,
                    plan->steps.at[verdict->since].name);
}
