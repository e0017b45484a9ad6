/*
 * A checker of the table of links that shares its data and none of the engine's code: what a step
 * touches, which faces a layer lies on and what lies over what are read here from the model, as
 * rules.h and model/fields.h say them.
 */
#include "work.h"

#include "plan/findings.h"
#include "plan/rules.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- what a step has to do with ---- */

static bool layer_lies_on(const struct model *model, const struct layer *layer, int64_t box)
{
    if (layer->box)
        return layer->box == box;
    for (size_t i = 0; i < model->group_boxes.count; i++)
        if (model->group_boxes.at[i].group == layer->group && model->group_boxes.at[i].box == box)
            return true;
    return false;
}

static bool touches_box(const struct model *model, const struct step *step, int64_t box)
{
    const struct layer *layer = MODEL_FIND(model, layer, step->layer);
    const struct join *join = MODEL_FIND(model, join, step->join);

    if (layer)
        return layer_lies_on(model, layer, box);
    if (join)
        return join->box_a == box || (join->target == TARGET_BOX && join->box_b == box);
    return step->box == box;
}

static bool share_box(const struct model *model, const struct step *a, const struct step *b)
{
    for (size_t i = 0; i < model->boxes.count; i++)
        if (touches_box(model, a, model->boxes.at[i].key) &&
            touches_box(model, b, model->boxes.at[i].key))
            return true;
    return false;
}

/* The face round each edge of each face, from the axes of plan.h. */
static const int64_t round_edge[SIDE_COUNT][EDGE_COUNT] = {
    [SIDE_FRONT] = {SIDE_LEFT, SIDE_RIGHT, SIDE_TOP, SIDE_BOTTOM},
    [SIDE_BACK] = {SIDE_LEFT, SIDE_RIGHT, SIDE_TOP, SIDE_BOTTOM},
    [SIDE_LEFT] = {SIDE_BACK, SIDE_FRONT, SIDE_TOP, SIDE_BOTTOM},
    [SIDE_RIGHT] = {SIDE_BACK, SIDE_FRONT, SIDE_TOP, SIDE_BOTTOM},
    [SIDE_TOP] = {SIDE_LEFT, SIDE_RIGHT, SIDE_FRONT, SIDE_BACK},
    [SIDE_BOTTOM] = {SIDE_LEFT, SIDE_RIGHT, SIDE_FRONT, SIDE_BACK},
};

static const int64_t facing_away[SIDE_COUNT] = {
    [SIDE_FRONT] = SIDE_BACK, [SIDE_BACK] = SIDE_FRONT, [SIDE_LEFT] = SIDE_RIGHT,
    [SIDE_RIGHT] = SIDE_LEFT, [SIDE_TOP] = SIDE_BOTTOM, [SIDE_BOTTOM] = SIDE_TOP,
};

static bool lies_flat_on(const struct layer *layer, int64_t side)
{
    return layer->side == side || (layer->both && facing_away[layer->side] == side);
}

static bool lies_on_side(const struct layer *layer, int64_t side)
{
    const int64_t endings[EDGE_COUNT] = {layer->left, layer->right, layer->top, layer->bottom};

    if (lies_flat_on(layer, side))
        return true;
    if (layer->shape != SHAPE_WRAPPED && layer->shape != SHAPE_SEWN)
        return false;
    for (int edge = 0; edge < EDGE_COUNT; edge++)
        if (endings[edge] != ENDING_STOP && round_edge[layer->side][edge] == side)
            return true;
    return false;
}

static bool farther_out(const struct layer *over, const struct layer *under)
{
    if (over->rank != under->rank)
        return over->rank > under->rank;
    if (over->kind != under->kind)
        return over->kind > under->kind;
    return over->key > under->key;
}

/* ---- relations ---- */

struct pair {
    const struct plan *plan;
    const struct step *before, *after;
    const struct layer *layer_before, *layer_after;
};

static bool always(const struct pair *pair)
{
    (void)pair;
    return true;
}

static bool of_one_box(const struct pair *pair)
{
    return share_box(pair->plan->facts, pair->before, pair->after);
}

static bool of_one_join(const struct pair *pair)
{
    return pair->before->join && pair->before->join == pair->after->join;
}

static bool of_one_layer(const struct pair *pair)
{
    return pair->layer_before && pair->layer_before == pair->layer_after;
}

static bool cut_from(const struct pair *pair)
{
    return pair->layer_after && pair->layer_after->stock == step_key_of(pair->before->name);
}

static bool share_face(const struct pair *pair)
{
    if (!pair->layer_before || !pair->layer_after || pair->layer_before == pair->layer_after ||
        !of_one_box(pair))
        return false;
    for (int64_t side = 0; side < SIDE_COUNT; side++)
        if (lies_on_side(pair->layer_before, side) && lies_on_side(pair->layer_after, side))
            return true;
    return false;
}

/* The first is pulled round to its far side, and the second lies there. */
static bool lies_on_the_hem(const struct pair *pair)
{
    const struct layer *first = pair->layer_before, *second = pair->layer_after;

    return first && second && first != second && of_one_box(pair) &&
           first->shape == SHAPE_WRAPPED &&
           (first->left == ENDING_WRAP || first->right == ENDING_WRAP ||
            first->top == ENDING_WRAP || first->bottom == ENDING_WRAP) &&
           lies_on_side(second, facing_away[first->side]);
}

static bool over(const struct pair *pair)
{
    return (share_face(pair) || lies_on_the_hem(pair)) &&
           farther_out(pair->layer_after, pair->layer_before);
}

static bool under(const struct pair *pair)
{
    return share_face(pair) && farther_out(pair->layer_before, pair->layer_after);
}

static bool on_the_face(const struct pair *pair)
{
    const struct facing *facing = MODEL_FIND(pair->plan->facts, facing, pair->before->facing);

    return pair->layer_after && of_one_box(pair) && lies_flat_on(pair->layer_after, facing->side);
}

static bool in_the_group(const struct pair *pair)
{
    const struct join *join = MODEL_FIND(pair->plan->facts, join, pair->before->join);
    const struct layer *layer = pair->layer_after;

    return layer && layer->group && join->target == TARGET_BOX &&
           layer_lies_on(pair->plan->facts, layer, join->box_a) &&
           layer_lies_on(pair->plan->facts, layer, join->box_b);
}

static bool in_the_way(const struct pair *pair)
{
    for (size_t i = 0; i < pair->plan->junctions.count; i++) {
        const struct junction *junction = &pair->plan->junctions.at[i];

        if (junction->join == pair->before->join && junction->head_inside && pair->layer_after &&
            layer_lies_on(pair->plan->facts, pair->layer_after, junction->head_box))
            return lies_on_side(pair->layer_after, junction->reach_side);
    }
    return false;
}

static bool outer_flap(const struct pair *pair)
{
    return of_one_join(pair) && pair->before != pair->after &&
           farther_out(pair->layer_after, pair->layer_before);
}

static bool joined_in_room(const struct pair *pair)
{
    const struct join *join = MODEL_FIND(pair->plan->facts, join, pair->after->join);

    return join && join->place == PLACE_SITE;
}

static bool held_back(const struct plan *plan, int64_t facing)
{
    for (size_t i = 0; i < plan->constraints.count; i++)
        if (plan->constraints.at[i].kind == JOIN_BEFORE_FACING &&
            plan->constraints.at[i].item == facing)
            return true;
    const struct facing *held = MODEL_FIND(plan->facts, facing, facing);
    for (size_t i = 0; held && !held->loose && i < plan->bolts.count; i++)
        if (held->kind == FACING_PANEL && plan->bolts.at[i].nut_box == held->box &&
            plan->bolts.at[i].nut_shut == held->side)
            return true;
    return false;
}

static bool not_held_back(const struct pair *pair)
{
    return of_one_box(pair) && !held_back(pair->plan, pair->before->facing);
}

static bool slit_over(const struct pair *pair)
{
    const struct plan *plan = pair->plan;
    int64_t layer = pair->before->layer;
    bool slit = false;

    for (size_t i = 0; i < plan->patches.count; i++)
        slit |= plan->patches.at[i].slit && plan->patches.at[i].layer == layer &&
                plan->points.at[plan->patches.at[i].point].join == pair->after->join;
    for (size_t i = 0; i < plan->constraints.count; i++)
        slit &= plan->constraints.at[i].kind != JOIN_BEFORE_LAYER ||
                plan->constraints.at[i].item != layer ||
                plan->constraints.at[i].join != pair->after->join ||
                strcmp(plan->constraints.at[i].rule, "P51") != 0;
    return slit;
}

/* A panel on the side that shuts the nuts of the join in, or cloth on the box that they are in. */
static bool shuts_nuts(const struct pair *pair)
{
    const struct plan *plan = pair->plan;
    const struct facing *facing = MODEL_FIND(plan->facts, facing, pair->after->facing);

    for (size_t i = 0; i < plan->bolts.count; i++) {
        const struct plan_bolt *bolt = &plan->bolts.at[i];

        if (plan->points.at[bolt->point].join != pair->before->join)
            continue;
        if (facing && !facing->loose && bolt->nut_box == facing->box &&
            bolt->nut_shut == facing->side)
            return true;
        if (pair->layer_after && layer_lies_on(plan->facts, pair->layer_after, bolt->nut_box))
            return true;
    }
    return false;
}

static bool before_any_fix(const struct pair *pair)
{
    const struct plan *plan = pair->plan;

    for (size_t i = 0; i < plan->constraints.count; i++)
        if (plan->constraints.at[i].kind == JOIN_BEFORE_LAYER &&
            plan->constraints.at[i].item == pair->before->layer &&
            MODEL_FIND(plan->facts, join, plan->constraints.at[i].join)->box_b == 0)
            return false;
    return true;
}

static bool (*const related[RELATIONS])(const struct pair *pair) = {
    [RELATE_BUILD] = always,         [RELATE_BOX] = of_one_box,   [RELATE_JOIN] = of_one_join,
    [RELATE_LAYER] = of_one_layer,   [RELATE_STOCK] = cut_from,   [RELATE_OVER] = over,
    [RELATE_UNDER] = under,          [RELATE_FACE] = on_the_face, [RELATE_GROUP] = in_the_group,
    [RELATE_WAY] = in_the_way,       [RELATE_FLAPS] = outer_flap, [RELATE_ROOM] = joined_in_room,
    [RELATE_LATE] = not_held_back,   [RELATE_SLIT] = slit_over,   [RELATE_NUTS] = shuts_nuts,
    [RELATE_PLACE] = before_any_fix,
};

static bool link_binds(const struct plan *plan, const struct link *link, size_t before,
                       size_t after)
{
    struct pair pair = {
        .plan = plan, .before = &plan->steps.at[before], .after = &plan->steps.at[after]};

    if (before == after || pair.before->kind != link->before || pair.after->kind != link->after)
        return false;
    pair.layer_before = MODEL_FIND(plan->facts, layer, pair.before->layer);
    pair.layer_after = MODEL_FIND(plan->facts, layer, pair.after->layer);
    return related[link->relation](&pair);
}

bool link_is_used(const struct plan *plan, size_t link)
{
    for (size_t i = 0; i < plan->steps.count; i++)
        for (size_t j = 0; j < plan->steps.count; j++)
            if (link_binds(plan, &links[link], i, j))
                return true;
    return false;
}

/* ---- what may be broken ---- */

/* Whether precedences lead from one step to another. They run forward in the plan's own order and
 * are sorted by their last step, so that one pass is enough. */
static bool leads_to(const struct plan *plan, size_t from, size_t to)
{
    bool *reached = calloc(plan->steps.count, sizeof *reached);
    bool found;

    assert_non_null(reached);
    reached[from] = true;
    for (size_t i = 0; i < plan->precedences.count; i++)
        if (reached[plan->precedences.at[i].before])
            reached[plan->precedences.at[i].after] = true;
    found = reached[to];
    free(reached);
    return found;
}

static const char *say(const struct plan *plan, const char *rule, size_t before, size_t after)
{
    static char sentence[200];

    snprintf(sentence, sizeof sentence, "%s: %s comes after %s", rule, plan->steps.at[before].name,
             plan->steps.at[after].name);
    return sentence;
}

static const char *link_broken(const struct plan *plan, const size_t *place,
                               const struct link *link)
{
    bool hard = rule_find(link->rule)->kind == RULE_HARD;

    for (size_t i = 0; i < plan->steps.count; i++) {
        if (plan->steps.at[i].kind != link->before)
            continue;
        for (size_t j = 0; j < plan->steps.count; j++)
            if (place[i] > place[j] && link_binds(plan, link, i, j) &&
                (hard ? !has_no_order(plan) : !leads_to(plan, j, i)))
                return say(plan, link->rule, i, j);
    }
    return NULL;
}

/* ---- constraints ---- */

/* The last (or first) place of a step of some kinds; PLAN_NONE when there is none. */
static size_t step_of(const struct plan *plan, const int *kinds, size_t count, int64_t join,
                      int64_t layer)
{
    for (size_t k = 0; k < count; k++)
        for (size_t i = 0; i < plan->steps.count; i++)
            if (plan->steps.at[i].kind == kinds[k] && (!join || plan->steps.at[i].join == join) &&
                (!layer || plan->steps.at[i].layer == layer))
                return i;
    return PLAN_NONE;
}

#define STEP_OF(plan, kinds, join, layer) \
    step_of((plan), (kinds), sizeof(kinds) / sizeof *(kinds), (join), (layer))

static const int joined[] = {STEP_DRIVE, STEP_FIX, STEP_OFFER};
static const int joining[] = {STEP_OFFER, STEP_FIX};
static const int fitted[] = {STEP_DRY, STEP_DRILL, STEP_OFFER, STEP_FIX};
static const int flap[] = {STEP_FLAP};
static const int laid[] = {STEP_COVER, STEP_PAD,  STEP_BATTING, STEP_LINING,
                           STEP_BACK,  STEP_DUST, STEP_STAPLE,  STEP_TRIM};
static const int fixed[] = {STEP_CORNER, STEP_STAPLE, STEP_PAD,  STEP_BATTING,
                            STEP_LINING, STEP_BACK,   STEP_DUST, STEP_TRIM};

/* The step that puts a facing on, with others of its face that are held back or not as it is. */
static size_t panel_step(const struct plan *plan, int64_t key)
{
    const struct facing *facing = MODEL_FIND(plan->facts, facing, key);

    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct facing *other = MODEL_FIND(plan->facts, facing, plan->steps.at[i].facing);

        if (other && plan->steps.at[i].kind == STEP_PANEL && other->box == facing->box &&
            other->side == facing->side && other->kind == facing->kind &&
            other->loose == facing->loose && held_back(plan, other->key) == held_back(plan, key))
            return i;
    }
    return PLAN_NONE;
}

struct two {
    size_t before, after;
};

static struct two steps_bound(const struct plan *plan, const struct constraint *constraint)
{
    int64_t join = constraint->join;
    size_t at_join;

    switch (constraint->kind) {
    case JOIN_BEFORE_LAYER:
        at_join = STEP_OF(plan, flap, join, constraint->item);
        return (struct two){STEP_OF(plan, joined, join, 0),
                            at_join != PLAN_NONE ? at_join
                                                 : STEP_OF(plan, laid, 0, constraint->item)};
    case LAYER_BEFORE_JOIN:
        return (struct two){STEP_OF(plan, fixed, 0, constraint->item),
                            STEP_OF(plan, joining, join, 0)};
    case JOIN_BEFORE_FACING:
        return (struct two){STEP_OF(plan, joined, join, 0), panel_step(plan, constraint->item)};
    case FACING_BEFORE_JOIN:
        return (struct two){panel_step(plan, constraint->item), STEP_OF(plan, fitted, join, 0)};
    case JOIN_BEFORE_JOIN:
        return (struct two){STEP_OF(plan, joined, join, 0),
                            STEP_OF(plan, joining, constraint->item, 0)};
    }
    return (struct two){PLAN_NONE, PLAN_NONE};
}

static const char *constraint_broken(const struct plan *plan, const size_t *place)
{
    for (size_t i = 0; i < plan->constraints.count; i++) {
        struct two two = steps_bound(plan, &plan->constraints.at[i]);

        if (two.before != PLAN_NONE && two.after != PLAN_NONE &&
            place[two.before] > place[two.after] && !has_no_order(plan))
            return say(plan, plan->constraints.at[i].rule, two.before, two.after);
    }
    return NULL;
}

/* ---- all ---- */

static const char *precedence_broken(const struct plan *plan, const size_t *place)
{
    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];

        if (place[precedence->before] >= place[precedence->after])
            return say(plan, precedence->rule, precedence->before, precedence->after);
    }
    return NULL;
}

/* Whether a link is about steps of the two kinds of a precedence, by its rule. */
static bool link_may_be(const struct plan *plan, const struct link *link,
                        const struct precedence *precedence)
{
    return strcmp(link->rule, precedence->rule) == 0 &&
           plan->steps.at[precedence->before].kind == link->before &&
           plan->steps.at[precedence->after].kind == link->after;
}

static bool constraint_binds(const struct plan *plan, const struct precedence *precedence)
{
    for (size_t i = 0; i < plan->constraints.count; i++) {
        struct two two = steps_bound(plan, &plan->constraints.at[i]);

        if (two.before == precedence->before && two.after == precedence->after)
            return true;
    }
    return false;
}

const char *links_groundless(const struct plan *plan)
{
    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];
        bool linked = false, bound = false;

        for (size_t k = 0; k < link_count && !bound; k++)
            if (link_may_be(plan, &links[k], precedence)) {
                linked = true;
                bound = link_binds(plan, &links[k], precedence->before, precedence->after);
            }
        if (linked && !bound && !constraint_binds(plan, precedence))
            return say(plan, precedence->rule, precedence->after, precedence->before);
    }
    return NULL;
}

const char *links_broken(const struct plan *plan, const size_t *place)
{
    const char *broken = precedence_broken(plan, place);

    if (!broken)
        broken = constraint_broken(plan, place);
    for (size_t i = 0; !broken && i < link_count; i++)
        broken = link_broken(plan, place, &links[i]);
    return broken;
}
