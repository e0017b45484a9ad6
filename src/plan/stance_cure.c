/*
 * A box is moved by the join that gave it its place: where it is the second box the join's offsets
 * grow by the way, measured along the first box's edges; where it is the first one, they shrink.
 * The first box of all has no such join: what was placed from it moves the other way instead. What
 * is moved takes along whatever was placed from it in turn.
 */
#include "plan/stance_cure.h"

#include "plan/cures.h"
#include "plan/geometry.h"
#include "plan/pose.h"

#include <assert.h>
#include <stdlib.h>

static const struct box *box_of(const struct planning *planning, int64_t box)
{
    return MODEL_FIND(planning->model, box, box);
}

/* ---- moving ---- */

static struct vector back(struct vector by)
{
    return (struct vector){-by.x, -by.y, -by.z};
}

static int64_t along_axis(const struct pose *pose, int axis, struct vector by)
{
    struct vector unit = pose_axis(pose, axis);
    int64_t sum = by.x * unit.x + by.y * unit.y + by.z * unit.z;

    return (sum + (sum < 0 ? -POSE_ONE : POSE_ONE) / 2) / POSE_ONE;
}

/* The second box of the join, as the join wants it, moves by so much in the room. */
static void set_off(struct cure_draft *draft, const struct join *join, struct vector by)
{
    const struct pose *a = plan_pose(draft->planning->plan, join->box_a);
    int64_t by_u = along_axis(a, side_u_axis(join->side_a), by);
    int64_t by_v = along_axis(a, side_v_axis(join->side_a), by);

    if (by_u != 0)
        cure_length(draft, ENTITY_join, join->key, "offset_u", join->offset_u + by_u);
    if (by_v != 0)
        cure_length(draft, ENTITY_join, join->key, "offset_v", join->offset_v + by_v);
}

/* A box that was placed by this join moves. */
static void move_by_join(struct cure_draft *draft, const struct join *join, int64_t box,
                         struct vector by)
{
    set_off(draft, join, join->box_b == box ? by : back(by));
}

static void move_box(struct cure_draft *draft, int64_t box, struct vector by)
{
    const struct planning *planning = draft->planning;
    const struct pose *pose = plan_pose(planning->plan, box);

    assert(pose);
    if (pose->by) {
        move_by_join(draft, MODEL_FIND(planning->model, join, pose->by), box, by);
        return;
    }
    for (size_t i = 0; i < planning->plan->poses.count; i++) {
        const struct pose *other = &planning->plan->poses.at[i];
        const struct join *join = MODEL_FIND(planning->model, join, other->by);

        if (join && (join->box_a == box || join->box_b == box))
            move_by_join(draft, join, other->box, back(by));
    }
}

static void offer_move(struct planning *planning, const char *text, int64_t box, struct vector by,
                       struct finding *finding)
{
    struct cure_draft cure = cure_begin(planning, text);

    move_box(&cure, box, by);
    cure_offer_on_trial(&cure, finding);
}

/* ---- contradictions ---- */

static void offer_giving_way(struct planning *planning, const struct join *join, struct vector by,
                             struct finding *finding)
{
    struct cure_draft cure = cure_begin(
        planning, arena_format(planning->arena, "Let join %s meet box %s where it stands",
                               join->name, box_of(planning, join->box_b)->name));

    set_off(&cure, join, by);
    cure_offer_on_trial(&cure, finding);
}

static void offer_without(struct planning *planning, const struct join *join,
                          struct finding *finding)
{
    struct cure_draft cure =
        cure_begin(planning, arena_format(planning->arena, "Do without join %s", join->name));

    cure_remove(&cure, ENTITY_join, join->key);
    cure_offer_on_trial(&cure, finding);
}

void stance_cure_contradiction(struct planning *planning, const struct join *join,
                               const struct pose *wanted, struct finding *finding)
{
    const struct pose *stands = plan_pose(planning->plan, join->box_b);
    struct vector by = {stands->at.x - wanted->at.x, stands->at.y - wanted->at.y,
                        stands->at.z - wanted->at.z};

    offer_giving_way(planning, join, by, finding);
    offer_move(planning,
               arena_format(planning->arena, "Move box %s to where join %s wants it",
                            box_of(planning, join->box_b)->name, join->name),
               join->box_b, back(by), finding);
    offer_move(planning,
               arena_format(planning->arena, "Move box %s so that join %s fits",
                            box_of(planning, join->box_a)->name, join->name),
               join->box_a, by, finding);
    offer_without(planning, join, finding);
}

/* ---- faces ---- */

static void offer_face(struct planning *planning, const struct join *join, bool of_b, int64_t side,
                       struct finding *finding)
{
    int64_t box = of_b ? join->box_b : join->box_a;
    struct cure_draft cure =
        cure_begin(planning, arena_format(planning->arena, "Join the %s of box %s",
                                          words_side.at[side].name, box_of(planning, box)->name));

    assert(side >= 0 && side < SIDE_COUNT);
    cure_word(&cure, ENTITY_join, join->key, of_b ? "side_b" : "side_a", words_side.at[side].name);
    cure_offer_on_trial(&cure, finding);
}

/* The face across from the other box's comes first. */
void stance_cure_faces(struct planning *planning, const struct join *join, struct finding *finding)
{
    int64_t across = side_opposite(join->side_a);

    if (across != join->side_b)
        offer_face(planning, join, true, across, finding);
    for (int64_t side = 0; side < SIDE_COUNT; side++)
        if (side != join->side_b && side != across)
            offer_face(planning, join, true, side, finding);
}

/* ---- leans ---- */

static void offer_lean(struct planning *planning, const struct box *box, const struct box *other,
                       int64_t lean, struct finding *finding)
{
    char angle[QUANTITY_TEXT];
    struct cure_draft cure;

    if (box->lean == lean && (lean == 0 || box->lean_axis == other->lean_axis))
        return;
    quantity_print_unit(angle, QUANTITY_ANGLE, model_units(planning->model), lean);
    cure = cure_begin(
        planning, lean == 0 ? arena_format(planning->arena, "Let box %s stand upright", box->name)
                            : arena_format(planning->arena, "Let box %s lean by %s as %s does",
                                           box->name, angle, other->name));
    if (lean != 0)
        cure_word(&cure, ENTITY_box, box->key, "lean_axis", words_axis.at[other->lean_axis].name);
    quantity_print_exact(angle, QUANTITY_ANGLE, model_units(planning->model), lean);
    cure_word(&cure, ENTITY_box, box->key, "lean", arena_text(planning->arena, angle));
    cure_offer_on_trial(&cure, finding);
}

/* A box that is turned half round leans the other way in its own axes. */
void stance_cure_lean(struct planning *planning, const struct join *join, struct finding *finding)
{
    const struct box *a = box_of(planning, join->box_a);
    const struct box *b = box_of(planning, join->box_b);

    offer_lean(planning, b, a, a->lean, finding);
    offer_lean(planning, a, b, b->lean, finding);
    if (a->lean != 0)
        offer_lean(planning, b, a, -a->lean, finding);
    if (b->lean != 0)
        offer_lean(planning, a, b, -b->lean, finding);
}

/* ---- faces past each other ---- */

static struct vector on_face(const struct planning *planning, const struct join *join, int64_t by_u,
                             int64_t by_v)
{
    const struct pose *a = plan_pose(planning->plan, join->box_a);
    struct vector u = pose_axis(a, side_u_axis(join->side_a));
    struct vector v = pose_axis(a, side_v_axis(join->side_a));

    return (struct vector){(u.x * by_u + v.x * by_v) / POSE_ONE,
                           (u.y * by_u + v.y * by_v) / POSE_ONE,
                           (u.z * by_u + v.z * by_v) / POSE_ONE};
}

/* All joins between the two boxes, so that they go on agreeing. */
void stance_cure_miss(struct planning *planning, const struct join *join, int64_t by_u,
                      int64_t by_v, struct finding *finding)
{
    struct vector by = on_face(planning, join, by_u, by_v);
    struct cure_draft cure =
        cure_begin(planning, arena_format(planning->arena, "Move box %s so that the faces meet",
                                          box_of(planning, join->box_b)->name));

    for (size_t i = 0; i < planning->model->joins.count; i++) {
        const struct join *other = &planning->model->joins.at[i];

        if (other->box_a == join->box_a && other->box_b == join->box_b)
            set_off(&cure, other, by);
        else if (other->box_a == join->box_b && other->box_b == join->box_a)
            set_off(&cure, other, back(by));
    }
    cure_offer_on_trial(&cure, finding);
}

/* ---- heights ---- */

void stance_cure_height(struct planning *planning, int64_t box, int64_t too_low,
                        struct finding *finding)
{
    char length[QUANTITY_TEXT];

    quantity_print_unit(length, QUANTITY_LENGTH, model_units(planning->model), llabs(too_low));
    offer_move(planning,
               arena_format(planning->arena, "Set box %s %s %s", box_of(planning, box)->name,
                            length, too_low > 0 ? "higher" : "lower"),
               box, (struct vector){0, 0, too_low}, finding);
}
