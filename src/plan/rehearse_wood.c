/* What is bought, cut, framed and fitted, and the way into the room. */
#include "plan/rehearse_stage.h"

#include <assert.h>

/* The box that a step is about; the order makes such steps for boxes of the build alone. */
static struct staged_box *box_of_step(const struct stage *stage, const struct step *step)
{
    struct staged_box *box = stage_box(stage, step->box);

    assert(box);
    return box;
}

static void lose_supply(struct stage *stage, enum entity_kind entity, int64_t key)
{
    stage_lose(stage, REHEARSED_SUPPLY, entity, key, PLAN_NONE, stage_lapse(stage, LAPSE_NOT_CUT));
}

/* ---- shop and saw ---- */

void do_buy(struct stage *stage, const struct step *step)
{
    (void)step;
    stage->bought = stage->now;
}

/* The step bears no stock: its name does. */
void do_cut(struct stage *stage, const struct step *step)
{
    int64_t key = step_key_of(step->name);

    if (stage->bought == PLAN_NONE)
        lose_supply(stage, ENTITY_stock, key);
    stage->stocks[model_index(stage->model, ENTITY_stock, key)] = stage->now;
}

void do_label(struct stage *stage, const struct step *step)
{
    (void)step;
    stage->labelled = stage->now;
}

static bool stock_is_cut(const struct stage *stage, int64_t stock)
{
    return !stock || stage->stocks[model_index(stage->model, ENTITY_stock, stock)] != PLAN_NONE;
}

/* ---- frames ---- */

void do_frame(struct stage *stage, const struct step *step)
{
    struct staged_box *box = box_of_step(stage, step);

    if (stage->labelled == PLAN_NONE || !stock_is_cut(stage, box->box->stick))
        lose_supply(stage, ENTITY_box, box->box->key);
    box->framed = stage->now;
    for (size_t i = 0; i < box->lumps.count; i++)
        if (box->lumps.at[i].entity == ENTITY_box)
            box->lumps.at[i].since = stage->now;
    reach_frame(stage, box);
}

/* ---- panels ---- */

static bool waits_for_join(const struct plan *plan, int64_t facing)
{
    for (size_t i = 0; i < plan->constraints.count; i++)
        if (plan->constraints.at[i].kind == JOIN_BEFORE_FACING &&
            plan->constraints.at[i].item == facing)
            return true;
    return false;
}

/* A step takes all panels of a face that are fixed alike and at one time. */
static bool goes_with(const struct stage *stage, const struct facing *a, const struct facing *b)
{
    return a->box == b->box && a->side == b->side && a->kind == b->kind &&
           (a->loose != 0) == (b->loose != 0) &&
           waits_for_join(stage->plan, a->key) == waits_for_join(stage->plan, b->key);
}

static void put_on(struct stage *stage, const struct facing *facing)
{
    struct staged_box *box = stage_box(stage, facing->box);

    for (size_t i = 0; i < box->lumps.count; i++)
        if (box->lumps.at[i].entity == ENTITY_facing && box->lumps.at[i].key == facing->key)
            box->lumps.at[i].since = stage->now;
    stage->facings[model_index(stage->model, ENTITY_facing, facing->key)] = stage->now;
}

/* Members are the first of a box's lumps; a box that has any stands once they are framed. */
static bool lacks_its_frame(const struct staged_box *box)
{
    return box->framed == PLAN_NONE && box->lumps.count > 0 && box->lumps.at[0].side < 0;
}

void do_panel(struct stage *stage, const struct step *step)
{
    const struct facing *first = MODEL_FIND(stage->model, facing, step->facing);
    const struct staged_box *box = stage_box(stage, first->box);

    if (!stock_is_cut(stage, first->stock) && first->kind == FACING_PANEL)
        lose_supply(stage, ENTITY_facing, first->key);
    if (lacks_its_frame(box))
        stage_lose(stage, REHEARSED_SUPPLY, ENTITY_facing, first->key, PLAN_NONE,
                   stage_lapse_by(stage, LAPSE_NO_WOOD, ENTITY_box, first->box, PLAN_NONE));
    for (size_t i = 0; i < stage->model->facings.count; i++)
        if (goes_with(stage, first, &stage->model->facings.at[i]))
            put_on(stage, &stage->model->facings.at[i]);
}

/* A board is its panels: they are there when it is measured. */
void do_record(struct stage *stage, const struct step *step)
{
    struct staged_box *box = box_of_step(stage, step);

    for (size_t i = 0; i < stage->model->facings.count; i++)
        if (stage->model->facings.at[i].box == step->box && box->box->frame == FRAME_BOARD)
            put_on(stage, &stage->model->facings.at[i]);
    if (lacks_its_frame(box))
        lose_supply(stage, ENTITY_box, step->box);
}

/* ---- fittings ---- */

static void lose_fitting(struct stage *stage, const struct fitting *fitting, struct verdict verdict)
{
    stage_lose(stage, REHEARSED_FITTING, ENTITY_fitting, fitting->key, PLAN_NONE, verdict);
}

static void each_fitting(struct stage *stage, const struct step *step,
                         void (*check)(struct stage *stage, const struct fitting *fitting))
{
    for (size_t i = 0; i < stage->model->fittings.count; i++) {
        const struct fitting *fitting = &stage->model->fittings.at[i];

        if (fitting->box == step->box && step_puts_on(step->kind, fitting->kind))
            check(stage, fitting);
    }
}

/* A nut goes in from the hollow: a panel on its own side or the one opposite shuts it. */
static void check_nut(struct stage *stage, const struct fitting *fitting)
{
    const struct staged_box *box = stage_box(stage, fitting->box);

    if (box->dust != PLAN_NONE)
        lose_fitting(stage, fitting,
                     stage_lapse_by(stage, LAPSE_SHUT, ENTITY_box, box->box->key, box->dust));
    for (size_t i = 0; i < box->lumps.count; i++) {
        const struct lump *lump = &box->lumps.at[i];

        if (lump->side >= 0 && lump->since != PLAN_NONE && box->box->frame != FRAME_BOARD &&
            (lump->side == fitting->side || lump->side == stage_opposite(fitting->side))) {
            lose_fitting(stage, fitting,
                         stage_lapse_by(stage, LAPSE_SHUT, ENTITY_facing, lump->key, lump->since));
            return;
        }
    }
}

/* What is screwed on from the soft side. */
static void check_bare(struct stage *stage, const struct fitting *fitting)
{
    const struct sheet *over = stage_over(stage, fitting->box, fitting->side, fitting->u,
                                          fitting->v, STAGE_PADDING | STAGE_CLOTH);

    if (over)
        lose_fitting(stage, fitting, stage_lapse_layer(stage, LAPSE_COVERED, over->layer));
}

static void check_hung(struct stage *stage, const struct fitting *fitting)
{
    if (fitting->kind == FITTING_HINGE && stage_box(stage, fitting->box)->hung == PLAN_NONE)
        lose_fitting(stage, fitting, stage_lapse(stage, LAPSE_NOT_BEFORE));
}

void do_insert(struct stage *stage, const struct step *step)
{
    each_fitting(stage, step, check_nut);
    box_of_step(stage, step)->nuts = stage->now;
}

/* ---- nuts of bolts ---- */

static bool is_shut_by(const struct lump *lump, int64_t side)
{
    return lump->side == side && lump->since != PLAN_NONE && !lump->laid_on;
}

/* Of the ways into the hollow of a box, but for its mating face, each has a panel on: the last that
 * came; NULL where one is open. A ladder's edges are no ways. */
static const struct lump *hollow_shut_by(const struct staged_box *box, int64_t mating)
{
    const struct lump *last = NULL;

    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        const struct lump *panel = NULL;

        if (side == mating || (box->box->frame != FRAME_CRATE &&
                               stage_sides[side].axis != stage_sides[box->box->main_side].axis))
            continue;
        for (size_t i = 0; i < box->lumps.count; i++)
            if (is_shut_by(&box->lumps.at[i], side))
                panel = &box->lumps.at[i];
        if (!panel)
            return NULL;
        if (!last || panel->since > last->since)
            last = panel;
    }
    return last;
}

/* What keeps a nut out that is driven against its bolt, into wood that ends so deep behind the
 * mating face: a panel that lies on that wood, or a hollow without a way in. */
static const struct lump *nut_shut_by(const struct staged_box *box, int64_t mating, int64_t far)
{
    assert(mating >= 0 && mating < SIDE_COUNT);

    const struct facing_out *out = &stage_sides[mating];
    int64_t size = stage_size(box->box, out->axis);

    if (far >= size)
        return NULL;
    for (size_t i = 0; i < box->lumps.count; i++) {
        const struct lump *lump = &box->lumps.at[i];
        int64_t near = out->sign > 0 ? size - stage_along(lump->solid.high, out->axis)
                                     : stage_along(lump->solid.low, out->axis);

        if (is_shut_by(lump, stage_opposite(mating)) && near <= far)
            return lump;
    }
    return hollow_shut_by(box, mating);
}

static void set_nut(struct stage *stage, const struct staged_join *join,
                    const struct plan_point *point)
{
    bool in_b = join->junction->head_box == join->junction->box_a;
    const struct staged_box *box =
        stage_box(stage, in_b ? join->junction->box_b : join->junction->box_a);
    int64_t side = in_b ? join->join->side_b : join->join->side_a;
    struct vector at = in_b ? point->in_b : point->in_a;
    const struct lump *shut = nut_shut_by(box, side, reach_wood_behind(box, side, at));

    if (shut)
        stage_lose(stage, REHEARSED_FITTING, ENTITY_join, join->join->key, PLAN_NONE,
                   stage_lapse_by(stage, LAPSE_SHUT, ENTITY_facing, shut->key, shut->since));
    if (box->dust != PLAN_NONE)
        stage_lose(stage, REHEARSED_FITTING, ENTITY_join, join->join->key, PLAN_NONE,
                   stage_lapse_by(stage, LAPSE_SHUT, ENTITY_box, box->box->key, box->dust));
}

void do_nuts(struct stage *stage, const struct step *step)
{
    struct staged_join *join = stage_join(stage, step->join);

    if (join->drilled == PLAN_NONE)
        point_lose(stage, step->join, PROOF_DRIVEN, stage_lapse(stage, LAPSE_NOT_BEFORE));
    for (size_t i = 0; i < join->junction->point_count; i++)
        set_nut(stage, join, &stage->plan->points.at[join->junction->first_point + i]);
    join->nuts = stage->now;
}

void do_cleat(struct stage *stage, const struct step *step)
{
    each_fitting(stage, step, check_bare);
}

void do_hang(struct stage *stage, const struct step *step)
{
    each_fitting(stage, step, check_bare);
    box_of_step(stage, step)->hung = stage->now;
}

void do_hinge(struct stage *stage, const struct step *step)
{
    each_fitting(stage, step, check_hung);
}

void do_leg(struct stage *stage, const struct step *step)
{
    box_of_step(stage, step)->legs = stage->now;
}

/* ---- the room ---- */

void do_move(struct stage *stage, const struct step *step)
{
    (void)step;
    stage->moved = stage->now;
}

static void check_moved(struct stage *stage)
{
    if (stage->moved == PLAN_NONE)
        stage_lose(stage, REHEARSED_SUPPLY, ENTITY_build, 0, PLAN_NONE,
                   stage_lapse(stage, LAPSE_NOT_THERE));
}

void do_mark(struct stage *stage, const struct step *step)
{
    (void)step;
    check_moved(stage);
    stage->marked = stage->now;
}

void do_set(struct stage *stage, const struct step *step)
{
    (void)step;
    check_moved(stage);
    stage->set = stage->now;
}

/* Is a box of that group still to be laid on one that is not of it? */
static bool waits_to_be_laid(const struct stage *stage, size_t group)
{
    for (size_t i = 0; i < stage->model->joins.count; i++) {
        const struct staged_join *join = &stage->joins[i];
        const struct join *rest = join->join;
        bool up = rest->side_a == SIDE_TOP;
        const struct staged_box *over, *under;

        if (rest->fastener != FASTENER_REST || rest->target != TARGET_BOX || join->left_out ||
            join->offered != PLAN_NONE || (!up && rest->side_a != SIDE_BOTTOM))
            continue;
        over = stage_box(stage, up ? rest->box_b : rest->box_a);
        under = stage_box(stage, up ? rest->box_a : rest->box_b);
        if (over && under && over->group == group && under->group != group)
            return true;
    }
    return false;
}

/* To the walls: from now on they stand where they are; seats that are laid on later, not yet. */
void do_push(struct stage *stage, const struct step *step)
{
    (void)step;
    check_moved(stage);
    stage->pushed = stage->now;
    for (size_t i = 0; i < stage->model->boxes.count; i++)
        if (!waits_to_be_laid(stage, stage->boxes[i].group))
            stage->boxes[i].in_room = stage->now;
}
