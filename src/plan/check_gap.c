/*
 * Covered boxes that are set in or laid beside others: their cloth takes room, and does not give as
 * padding does.
 *
 *     gap between bare wood  >=  pressed cloth of both faces    (`joint.cloth_per_face` each)
 *
 * Asked of what only lies where it is, a drop-on or drop-in seat, a lid: boxes that are screwed
 * together count the cloth in the joint, or keep it bare.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/lid.h"
#include "plan/padding.h"
#include "plan/pose.h"
#include "plan/slices.h"

/* A face of a laid box and wood of another one that looks at it, in the room. */
struct facing_pair {
    const struct box *laid, *other;
    int64_t room_side; /* of the laid box */
    int64_t apart;
    struct vector at; /* the middle of what they share, on the laid box's face */
};

/* ---- what lies between ---- */

/* Cloth and foam over a place of the room on a box; batting gives way to what is beside it. */
static int64_t firm_at(const struct planning *planning, const struct box *box, int64_t room_side,
                       struct vector at)
{
    const struct model *model = planning->model;
    int64_t side = check_side(planning, box->key, room_side);
    struct vector in_box = pose_to_box(plan_pose(planning->plan, box->key), box, at);
    int64_t foam = 0;
    bool cloth = false;
    int64_t u, v;

    box_to_face(side, in_box, &u, &v);
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if ((!drape_is_cloth(layer) && layer->kind != LAYER_FOAM) ||
            !layer_touches(model, layer, box->key) ||
            !drape_covers(planning, layer, box, side, u, v))
            continue;
        cloth |= layer->kind != LAYER_FOAM;
        foam += layer->kind == LAYER_FOAM ? layer_thickness(planning->plan, layer) : 0;
    }
    return foam + (cloth ? planning->value[TRADE_JOINT_CLOTH_PER_FACE] : 0);
}

/* ---- who looks at whom ---- */

/* Do two blocks look at each other across a side of the first? */
static bool look_at(const struct solid *a, const struct solid *b, int64_t side,
                    struct facing_pair *ret_pair)
{
    struct vector at = {0, 0, 0};

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t low = length_larger(vector_along(a->low, axis), vector_along(b->low, axis));
        int64_t high = length_smaller(vector_along(a->high, axis), vector_along(b->high, axis));

        if (axis != side_axis(side) && high <= low)
            return false;
        vector_set(&at, axis, (low + high) / 2);
    }
    if (side_sign(side) > 0) {
        ret_pair->apart =
            vector_along(b->low, side_axis(side)) - vector_along(a->high, side_axis(side));
        vector_set(&at, side_axis(side), vector_along(a->high, side_axis(side)));
    } else {
        ret_pair->apart =
            vector_along(a->low, side_axis(side)) - vector_along(b->high, side_axis(side));
        vector_set(&at, side_axis(side), vector_along(a->low, side_axis(side)));
    }
    ret_pair->at = at;
    return ret_pair->apart >= 0;
}

static bool is_outer(const struct planning *planning, const struct box *box,
                     const struct solid *wood, int64_t room_side)
{
    struct solid whole = check_in_room(planning, box);
    int axis = side_axis(room_side);

    return side_sign(room_side) > 0
               ? vector_along(wood->high, axis) == vector_along(whole.high, axis)
               : vector_along(wood->low, axis) == vector_along(whole.low, axis);
}

static int64_t wanted_between(const struct planning *planning, const struct facing_pair *pair,
                              const struct solid *wood)
{
    int64_t wanted = firm_at(planning, pair->laid, pair->room_side, pair->at);
    int64_t back = side_opposite(pair->room_side);

    if (is_outer(planning, pair->other, wood, back))
        wanted += firm_at(planning, pair->other, back, pair->at);
    return wanted;
}

/* ---- what is told ---- */

static void offer_smaller(struct planning *planning, const struct box *box, int64_t room_side,
                          int64_t by, struct finding *finding)
{
    static const char *const fields[AXIS_COUNT] = {"width", "depth", "height"};
    int axis = side_axis(check_side(planning, box->key, room_side));
    struct cure_draft cure =
        cure_begin(planning, arena_format(planning->arena, "Make %s that much smaller", box->name));

    cure_length(&cure, ENTITY_box, box->key, fields[axis], vector_along(box_size(box), axis) - by);
    cure_offer_on_trial(&cure, finding);
}

static void tell_tight(struct planning *planning, const struct facing_pair *pair, int64_t wanted)
{
    struct finding *finding =
        finding_add(planning, FINDING_CLOTH_SQUEEZED, ENTITY_box, pair->laid->key);

    argument_text(finding, 0, pair->other->name);
    argument_length(finding, 1, pair->apart);
    argument_length(finding, 2, wanted);
    offer_smaller(planning, pair->laid, pair->room_side, wanted - pair->apart, finding);
    offer_smaller(planning, pair->other, side_opposite(pair->room_side), wanted - pair->apart,
                  finding);
}

/* ---- pairs ---- */

/* No two paddings together are thicker than this. */
#define NEAR (12 * LENGTH_INCH)

static bool are_near(const struct solid *a, const struct solid *b)
{
    const struct solid round = {{a->low.x - NEAR, a->low.y - NEAR, a->low.z},
                                {a->high.x + NEAR, a->high.y + NEAR, a->high.z}};

    return solids_meet(&round, b);
}

struct tightest {
    struct facing_pair pair;
    int64_t wanted;
    int64_t missing; /* 0: nothing found */
};

static void look_across(const struct planning *planning, const struct box *laid,
                        const struct box *other, const struct solid *wood,
                        struct tightest *tightest)
{
    static const int64_t sides[] = {SIDE_FRONT, SIDE_BACK, SIDE_LEFT, SIDE_RIGHT};
    struct solid block = check_in_room(planning, laid);

    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        struct facing_pair pair = {.laid = laid, .other = other, .room_side = sides[i]};
        int64_t wanted;

        if (!look_at(&block, wood, sides[i], &pair))
            continue;
        wanted = wanted_between(planning, &pair, wood);
        if (wanted - pair.apart > tightest->missing)
            *tightest = (struct tightest){pair, wanted, wanted - pair.apart};
    }
}

/* The wood of the other box one by one: a seat that drops in has it on all sides. */
static void check_pair(struct planning *planning, const struct box *laid, const struct box *other)
{
    const struct plan *plan = planning->plan;
    const struct pose *pose = plan_pose(plan, other->key);
    struct slice members = plan_members_of(plan, other->key);
    struct slice panels = plan_panels_of(plan, other->key);
    struct tightest tightest = {.missing = 0};

    for (size_t i = members.from; i < members.to; i++) {
        struct solid wood = pose_block(pose, other, &plan->members.at[i].solid);

        look_across(planning, laid, other, &wood, &tightest);
    }
    for (size_t i = panels.from; i < panels.to; i++) {
        struct solid wood = pose_block(pose, other, &plan->panels.at[i].solid);

        look_across(planning, laid, other, &wood, &tightest);
    }
    if (tightest.missing > 0)
        tell_tight(planning, &tightest.pair, tightest.wanted);
}

static bool stands_straight(const struct planning *planning, const struct box *box)
{
    const struct pose *pose = plan_pose(planning->plan, box->key);

    return pose && pose->placed && box->lean == 0;
}

static struct solid *outlines_of(const struct planning *planning)
{
    const struct model *model = planning->model;
    struct solid *outlines = ARENA_MANY(planning->arena, struct solid, model->boxes.count);

    for (size_t i = 0; i < model->boxes.count; i++)
        outlines[i] = check_in_room(planning, &model->boxes.at[i]);
    return outlines;
}

void check_gaps(struct planning *planning)
{
    const struct model *model = planning->model;
    const struct solid *outlines = outlines_of(planning);

    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *laid = &model->boxes.at[i];

        if (!stands_straight(planning, laid) || !lid_rest(model, laid->key))
            continue;
        for (size_t k = 0; k < model->boxes.count; k++) {
            const struct box *other = &model->boxes.at[k];

            /* of two that both are laid the later one tells */
            if (k != i && are_near(&outlines[i], &outlines[k]) &&
                stands_straight(planning, other) && !(k > i && lid_rest(model, other->key)))
                check_pair(planning, laid, other);
        }
    }
}
