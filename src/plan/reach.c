/*
 * How a hand comes to a head in the hollow of a box.
 *
 * 1  It comes through a face without a fixed panel, or through a cut-out, along a straight line, or
 *    along one with one corner that leaves a hand's width between: round the rail that stands below
 *    another.
 * 2  It comes to all heads of a join through the same face. What lies there has to be kept waiting:
 *    another join shuts the face with a box, a layer with cloth.
 * 3  In the room nothing comes through the bottom of what stands on the floor.
 */
#include "plan/way.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/layers.h"

/* ---- the hand ---- */

/* From a place straight out through a face and a hand's length on: nothing in between, no wall
 * beyond it, and no farther than an arm. */
static bool comes_out(const struct scene *scene, struct vector at, int64_t side)
{
    int axis = side_axis(side);
    int64_t size = vector_along(box_size(scene->box), axis);
    int64_t here = vector_along(at, axis);
    int64_t way = side_sign(side) > 0 ? size - here : here;
    int64_t hand = scene->planning->value[TRADE_HAND_HOLE_HEIGHT];

    return way >= 0 && way <= scene->planning->value[TRADE_ARM_REACH] &&
           way_free_along(scene, at, axis, side_sign(side)) >= way + hand;
}

static bool is_in_box(const struct box *box, struct vector at)
{
    return at.x >= 0 && at.x <= box->width && at.y >= 0 && at.y <= box->depth && at.z >= 0 &&
           at.z <= box->height;
}

/* Aside by a hand's width; the place before the head is where this starts. */
static bool step_aside(const struct scene *scene, struct vector *at, int axis, int sign)
{
    int64_t hand = scene->planning->value[TRADE_HAND_HOLE_WIDTH];

    if (way_free_along(scene, *at, axis, sign) < hand)
        return false;
    vector_set(at, axis, vector_along(*at, axis) + sign * hand);
    return is_in_box(scene->box, *at);
}

void way_step_back(const struct scene *scene, struct vector *head)
{
    int64_t room = way_free_along(scene, *head, scene->axis, scene->sign);
    int64_t before = room / 2 < LENGTH_INCH ? room / 2 : LENGTH_INCH;

    vector_set(head, scene->axis, vector_along(*head, scene->axis) + scene->sign * before);
}

bool way_enter(const struct scene *scene, int64_t side, struct vector head, struct entry *ret_entry)
{
    struct entry entry = {.head = head, .before = head};

    way_step_back(scene, &entry.before);
    struct vector at = entry.before;
    bool out = comes_out(scene, at, side);
    for (int aside = 0; !out && aside < 2 * AXIS_COUNT; aside++) {
        at = entry.before;
        out = aside / 2 != side_axis(side) &&
              step_aside(scene, &at, aside / 2, aside % 2 ? -1 : +1) && comes_out(scene, at, side);
    }
    if (!out)
        return false;
    box_to_face(side, at, &entry.u, &entry.v);
    *ret_entry = entry;
    return true;
}

/* ---- the open face ---- */

static bool layer_lies_there(const struct scene *scene, int64_t side, const struct entry *entry)
{
    const struct model *model = scene->planning->model;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (drape_is_cloth(layer) && layer_touches(model, layer, scene->box->key) &&
            drape_covers(scene->planning, layer, scene->box, side, entry->u, entry->v))
            return true;
    }
    return false;
}

static bool is_joined_there(const struct scene *scene, int64_t side)
{
    const struct model *model = scene->planning->model;

    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if ((join->box_a == scene->box->key && join->side_a == side) ||
            (join->target == TARGET_BOX && join->box_b == scene->box->key && join->side_b == side))
            return true;
    }
    return false;
}

const int64_t way_sides[SIDE_COUNT] = {SIDE_BACK, SIDE_BOTTOM, SIDE_TOP,
                                       SIDE_LEFT, SIDE_RIGHT,  SIDE_FRONT};

static bool all_enter(const struct scene *scene, int64_t side, const struct vector *heads,
                      size_t count, struct entry *ret_first)
{
    struct entry entry;

    for (size_t i = 0; i < count; i++) {
        if (!way_enter(scene, side, heads[i], i == 0 ? ret_first : &entry))
            return false;
    }
    return count > 0;
}

bool way_reaches(const struct scene *scene, int64_t side, const struct vector *heads, size_t count,
                 struct way *way)
{
    struct entry entry;

    if (side == scene->side || (scene->opened >= 0 && side != scene->opened) ||
        (scene->on_floor && side == SIDE_BOTTOM) || !all_enter(scene, side, heads, count, &entry))
        return false;
    way->reach_side = side;
    way->joined_there = is_joined_there(scene, side);
    way->layer_there = layer_lies_there(scene, side, &entry);
    return true;
}
