/*
 * A seat that is screwed on from below before the piece is held to its wall.
 *
 * The join that is driven in the room has its heads in a hollow, and another join lays a box over
 * the side through which they are reached: the first has to be driven before the second. Where the
 * second in turn is reached only through a side that the room shuts, the floor or a wall, it has to
 * be made at the bench, and neither order is left.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/point.h"

#define STORY 5

struct seating {
    const struct join *under, *over; /* driven in the room; lies over its heads */
    const struct junction *heads, *own;
    const struct box *box; /* with the heads of both */
};

/* The side of the room that shuts the way to the heads of a join: the floor, or a wall. */
static const char *shut_by(const struct planning *planning, const struct junction *junction,
                           const struct box *box)
{
    const struct model *model = planning->model;

    if (junction->reach_side == SIDE_BOTTOM && check_in_room(planning, box).low.z == 0)
        return "the floor";
    for (size_t i = 0; i < model->walls.count; i++)
        if (check_side(planning, box->key, model->walls.at[i].side) == junction->reach_side)
            return "the wall";
    return NULL;
}

static const char *box_over(const struct model *model, const struct seating *seating)
{
    bool of_a = seating->over->box_a == seating->box->key;
    const struct box *box =
        MODEL_FIND(model, box, of_a ? seating->over->box_b : seating->over->box_a);

    return box ? box->name : "";
}

static void tell_story(struct planning *planning, const struct seating *seating, const char *shut,
                       struct finding *finding)
{
    struct arena *arena = planning->arena;
    const char *box = seating->box->name;
    const char *over = seating->over->name;
    const char *under = seating->under->name;
    const char **story = ARENA_MANY(arena, const char *, STORY);

    story[0] =
        arena_format(arena, "%s is driven in the room, with its heads inside %s.", under, box);
    story[1] = arena_format(arena, "They are reached through the %s of %s, where %s lays %s.",
                            words_side.at[seating->heads->reach_side].name, box, over,
                            box_over(planning->model, seating));
    story[2] = arena_format(arena, "So %s has to be driven before %s.", under, over);
    story[3] =
        arena_format(arena, "But the heads of %s are reached through the %s, and there is %s.",
                     over, words_side.at[seating->own->reach_side].name, shut);
    story[4] = arena_format(arena, "So %s has to be made at the bench, before %s.", over, under);
    finding->story = story;
    finding->story_count = STORY;
}

static void tell(struct planning *planning, const struct seating *seating, const char *shut)
{
    struct cure_draft cure = cure_begin(planning, "Lay it on without screws, in the room");
    struct finding *finding =
        finding_add(planning, FINDING_SEAT_FIRST, ENTITY_join, seating->over->key);

    argument_text(finding, 0, seating->under->name);
    argument_quantity(finding, 1, QUANTITY_COUNT, (int64_t)seating->heads->point_count);
    argument_text(finding, 2, shut);
    tell_story(planning, seating, shut, finding);
    cure_word(&cure, ENTITY_join, seating->over->key, "fastener",
              words_fastener.at[FASTENER_REST].name);
    cure_word(&cure, ENTITY_join, seating->over->key, "place", words_place.at[PLACE_SITE].name);
    cure_offer(&cure, finding);
}

/* A join that screws a box over the way to the heads of the first, on the same box. */
static bool lies_over(const struct seating *seating)
{
    const struct join *over = seating->over;
    bool of_a = over->box_a == seating->box->key && over->side_a == seating->heads->reach_side;
    bool of_b = over->box_b == seating->box->key && over->side_b == seating->heads->reach_side;

    return over != seating->under && over->target == TARGET_BOX &&
           over->fastener != FASTENER_REST && (of_a || of_b) && seating->own &&
           seating->own->head_inside && seating->own->head_box == seating->box->key;
}

static void check_under(struct planning *planning, struct seating *seating)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->joins.count; i++) {
        const char *shut;

        seating->over = &model->joins.at[i];
        if (seating->over->box_a != seating->box->key && seating->over->box_b != seating->box->key)
            continue;
        seating->own = plan_junction(planning->plan, seating->over->key);
        if (!lies_over(seating))
            continue;
        shut = shut_by(planning, seating->own, seating->box);
        if (shut)
            tell(planning, seating, shut);
    }
}

void check_seats(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->junctions.count; i++) {
        struct seating seating = {.heads = &plan->junctions.at[i]};

        if (!seating.heads->head_inside || seating.heads->point_count == 0)
            continue;
        seating.under = MODEL_FIND(planning->model, join, seating.heads->join);
        seating.box = MODEL_FIND(planning->model, box, seating.heads->head_box);
        if (seating.under && seating.box && join_is_in_room(seating.under))
            check_under(planning, &seating);
    }
}
