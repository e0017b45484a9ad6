/*
 * What boxes weigh, who lifts them, and whether they pass the way into the room.
 *
 * 1  A box weighs its sticks, panels, fixings and all that is cut for it (weight.h).
 * 2  Boxes joined at the bench are carried as one through the house; boxes joined in the room, each
 *    by itself (route.h).
 * 3  Sizes are finished sizes: the wood with its padding.
 */
#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/lift.h"
#include "plan/route.h"
#include "plan/weight.h"

#include <assert.h>

/* ---- people ---- */

static int64_t longest_of(struct vector size)
{
    return length_larger(size.x, length_larger(size.y, size.z));
}

static bool has_stair(const struct model *model)
{
    for (size_t i = 0; i < model->passages.count; i++)
        if (model->passages.at[i].kind == PASSAGE_STAIR)
            return true;
    return false;
}

/* On a stair people are good for less than on the level. */
static void tell_of_stair(struct planning *planning, const struct load *load)
{
    int64_t least = planning->value[TRADE_TWO_PEOPLE_WEIGHT];
    struct finding *finding;

    (void)whole_share(least, planning->value[TRADE_STAIRS_FACTOR], 1000000, &least);
    if (load->mass <= least || !has_stair(planning->model))
        return;
    finding = finding_add(planning, FINDING_HEAVY_ON_STAIR, ENTITY_box, load->box);
    argument_quantity(finding, 0, QUANTITY_MASS, load->mass);
    argument_quantity(finding, 1, QUANTITY_MASS, least);
}

static void tell_of_weight(struct planning *planning, const struct load *load)
{
    const int64_t *value = planning->value;
    struct finding *finding;

    if (load->mass <= value[TRADE_ONE_PERSON_WEIGHT])
        return;
    finding = finding_add(planning, FINDING_HEAVY, ENTITY_box, load->box);
    argument_quantity(finding, 0, QUANTITY_MASS, load->mass);
    argument_text(finding, 1, load->people > 2 ? "three" : "two");
    argument_quantity(finding, 2, QUANTITY_MASS,
                      value[load->people > 2 ? TRADE_TWO_PEOPLE_WEIGHT : TRADE_ONE_PERSON_WEIGHT]);
    tell_of_stair(planning, load);
}

static void add_loads(struct planning *planning)
{
    const struct model *model = planning->model;
    struct weight *weights = ARENA_MANY(planning->arena, struct weight, model->boxes.count);
    size_t *alone = ARENA_MANY(planning->arena, size_t, model->boxes.count);

    weight_boxes(planning->plan, weights);
    for (size_t i = 0; i < model->boxes.count; i++)
        alone[i] = i;
    for (size_t i = 0; i < model->boxes.count; i++) {
        struct load *load = LIST_ADD(planning->arena, &planning->plan->loads);

        *load = (struct load){.box = model->boxes.at[i].key,
                              .mass = weight_finished(&weights[i]),
                              .finished = route_size(planning->plan, alone, i)};
        load->people = lift_usual(planning->plan, load->mass, longest_of(load->finished));
        tell_of_weight(planning, load);
    }
}

/* ---- the way ---- */

/* Would each box of what is carried as one pass by itself, where there are several? */
static bool passes_apart(const struct planning *planning, const struct passage *passage,
                         const size_t *first, size_t index)
{
    const struct plan *plan = planning->plan;
    size_t boxes = 0;

    for (size_t i = index; i < plan->loads.count; i++) {
        if (first[i] != index)
            continue;
        if (!route_passes(plan, passage, plan->loads.at[i].finished,
                          planning->value[TRADE_DOOR_MARGIN]))
            return false;
        boxes++;
    }
    return boxes > 1;
}

/* The joins that hold what is carried together, made in the room; and the minutes that takes. */
static int64_t offer_site_joins(struct planning *planning, const size_t *first, size_t index,
                                struct finding *finding)
{
    const struct model *model = planning->model;
    struct cure_draft cure = cure_begin(planning, "Join it in the room");
    int64_t minutes = 0;

    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (!route_holds(join) || join->place != PLACE_BENCH ||
            first[model_index(model, ENTITY_box, join->box_a)] != index)
            continue;
        cure_word(&cure, ENTITY_join, join->key, "place", words_place.at[PLACE_SITE].name);
        minutes += route_site_minutes(planning->plan, join->key);
    }
    cure_offer(&cure, finding);
    return minutes;
}

static void tell_of_passage(struct planning *planning, const size_t *first, size_t index,
                            const struct passage *passage, struct vector size)
{
    assert(index < planning->model->boxes.count);

    bool apart = passes_apart(planning, passage, first, index);
    struct finding *finding =
        finding_add(planning, apart ? FINDING_TOO_BIG_JOINED : FINDING_TOO_BIG_FOR_WAY, ENTITY_box,
                    planning->model->boxes.at[index].key);

    argument_text(finding, 0,
                  passage->name[0] ? passage->name : words_passage.at[passage->kind].name);
    argument_length(finding, 1,
                    planning->value[TRADE_DOOR_MARGIN] -
                        route_spare(planning->plan, passage, size));
    if (apart)
        argument_quantity(finding, 2, QUANTITY_MINUTES,
                          offer_site_joins(planning, first, index, finding));
}

static void take_through(struct planning *planning, const size_t *first, size_t index)
{
    struct vector size = route_size(planning->plan, first, index);

    for (size_t i = 0; i < planning->model->passages.count; i++) {
        const struct passage *passage = &planning->model->passages.at[i];

        if (!route_passes(planning->plan, passage, size, planning->value[TRADE_DOOR_MARGIN]))
            tell_of_passage(planning, first, index, passage, size);
    }
}

void pass_load(struct planning *planning)
{
    const size_t *first = route_carried(planning->plan, planning->arena);

    add_loads(planning);
    for (size_t i = 0; i < planning->model->boxes.count; i++)
        if (first[i] == i)
            take_through(planning, first, i);
}
