/*
 * The piece against what is there already.
 *
 * 1  A box that comes lower than the skirting stands off its wall by what the skirting stands out
 *    farther than the gap that is left for it.
 * 2  Wings leave the mattress its room: what lies between their bare faces, less the padding of
 *    both, is at least the mattress and `mattress.wing` on each side.
 * 3  Holes for a bed frame are taken off that frame, for frames differ; what bears on it is bare.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/stance.h"

/* ---- skirting ---- */

static void check_wall(struct planning *planning, const struct wall *wall,
                       const struct solid *whole)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *box = &model->boxes.at[i];
        const struct pose *pose = plan_pose(planning->plan, box->key);
        struct solid solid = check_in_room(planning, box);
        int64_t held = wall->skirting_depth - wall->gap - check_behind(&solid, whole, wall->side);
        struct cure_draft cure = cure_begin(planning, "Let it stand that much off the wall");
        struct finding *finding;

        if (!pose->placed || held <= 0 || solid.low.z >= wall->skirting_height)
            continue;
        finding = finding_add(planning, FINDING_SKIRTING, ENTITY_box, box->key);
        argument_length(finding, 0, held);
        argument_length(finding, 1, wall->skirting_height);
        argument_text(finding, 2, words_side.at[wall->side].name);
        cure_length(&cure, ENTITY_wall, wall->key, "gap", wall->gap + held);
        cure_offer(&cure, finding);
    }
}

static void check_skirting(struct planning *planning)
{
    struct solid whole = stance_whole_piece(planning->plan);

    for (size_t i = 0; i < planning->model->walls.count; i++)
        if (planning->model->walls.at[i].skirting_depth > 0)
            check_wall(planning, &planning->model->walls.at[i], &whole);
}

/* ---- mattress ---- */

static int64_t pad_toward(const struct planning *planning, const struct box *box, int64_t room_side)
{
    const struct padding *padding =
        plan_padding(planning->plan, box->key, check_side(planning, box->key, room_side));

    if (!padding)
        return 0;
    return padding->pad + (padding->covered ? planning->value[TRADE_CLOTH_FOLDS] : 0);
}

static bool overlaps(int64_t a0, int64_t a1, int64_t b0, int64_t b1)
{
    return a0 < b1 && b0 < a1;
}

/* Faces left and right of the mattress that stand beside it, with their padding. */
struct between {
    int64_t left, right;
    const struct box *wing; /* the one that is told */
};

static void narrow(const struct planning *planning, const struct solid *mattress,
                   const struct box *box, struct between *between, bool *left, bool *right)
{
    struct solid solid = check_in_room(planning, box);
    int64_t middle = (mattress->low.x + mattress->high.x) / 2;

    if (!overlaps(solid.low.y, solid.high.y, mattress->low.y, mattress->high.y) ||
        !overlaps(solid.low.z, solid.high.z, mattress->low.z, mattress->high.z))
        return;
    if (solid.high.x <= middle) {
        int64_t face = solid.high.x + pad_toward(planning, box, SIDE_RIGHT);

        between->left = *left ? length_larger(between->left, face) : face;
        between->wing = box;
        *left = true;
    } else if (solid.low.x >= middle) {
        int64_t face = solid.low.x - pad_toward(planning, box, SIDE_LEFT);

        between->right = *right ? length_smaller(between->right, face) : face;
        between->wing = between->wing ? between->wing : box;
        *right = true;
    }
}

static void check_mattress(struct planning *planning, const struct object *mattress)
{
    const struct model *model = planning->model;
    struct between between = {0};
    struct solid lies = stance_object(planning->plan, mattress);
    int64_t wanted = mattress->width + 2 * planning->value[TRADE_MATTRESS_WING];
    bool left = false;
    bool right = false;
    struct finding *finding;

    for (size_t i = 0; i < model->boxes.count; i++)
        if (plan_pose(planning->plan, model->boxes.at[i].key)->placed)
            narrow(planning, &lies, &model->boxes.at[i], &between, &left, &right);
    if (!left || !right)
        return;
    *LIST_ADD(planning->arena, &planning->plan->clearances) =
        (struct clearance){mattress->key, between.right - between.left, wanted};
    if (between.right - between.left >= wanted)
        return;
    finding = finding_add(planning, FINDING_MATTRESS_TIGHT, ENTITY_object, mattress->key);
    argument_length(finding, 0, between.right - between.left);
    argument_length(finding, 1, wanted);
    argument_length(finding, 2, mattress->width);
}

/* ---- bed frame ---- */

static bool is_bed_frame(const struct model *model, const struct join *join)
{
    const struct object *object = MODEL_FIND(model, object, join->object);

    return join->target == TARGET_OBJECT && object && object->kind == OBJECT_BED_FRAME &&
           join->fastener != FASTENER_REST;
}

/* Each point is a hole that the frame has, or one that was drilled after it was measured. */
static bool is_measured(const struct planning *planning, const struct join *join)
{
    const struct model *model = planning->model;
    size_t measured = 0;

    for (size_t i = 0; i < model->points.count; i++)
        measured += model->points.at[i].join == join->key && model->points.at[i].existing;
    for (size_t i = 0; measured == 0 && i < model->holes.count; i++)
        measured += model->holes.at[i].join == join->key;
    return measured > 0;
}

/* Padding under a bracket gives way: the bed creaks, and the bolt works loose. */
static void check_strip(struct planning *planning, const struct join *join)
{
    const struct model *model = planning->model;
    const struct box *box = MODEL_FIND(model, box, join->box_a);
    const struct junction *junction = plan_junction(planning->plan, join->key);

    for (size_t i = 0; box && junction && i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        int64_t covered = 0;

        if ((layer->kind != LAYER_FOAM && layer->kind != LAYER_BATTING) ||
            !layer_touches(model, layer, box->key))
            continue;
        for (size_t k = 0; k < junction->point_count; k++) {
            const struct plan_point *point = &planning->plan->points.at[junction->first_point + k];

            covered += drape_covers(planning, layer, box, join->side_a, point->u, point->v);
        }
        if (covered > 0) {
            struct finding *finding =
                finding_add(planning, FINDING_BED_PADDED, ENTITY_layer, layer->key);

            argument_quantity(finding, 0, QUANTITY_COUNT, covered);
            argument_text(finding, 1, join->name);
        }
    }
}

static void check_bed(struct planning *planning, const struct join *join)
{
    if (!is_measured(planning, join))
        finding_add(planning, FINDING_BED_NOT_MEASURED, ENTITY_join, join->key);
    check_strip(planning, join);
}

/* ---- all ---- */

void check_room(struct planning *planning)
{
    const struct model *model = planning->model;

    check_skirting(planning);
    for (size_t i = 0; i < model->objects.count; i++)
        if (model->objects.at[i].kind == OBJECT_MATTRESS)
            check_mattress(planning, &model->objects.at[i]);
    for (size_t i = 0; i < model->joins.count; i++)
        if (is_bed_frame(model, &model->joins.at[i]))
            check_bed(planning, &model->joins.at[i]);
}
