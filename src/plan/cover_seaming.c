/*
 * What hides a seam: the mattress's edges, a nail row, the joint of two boxes. And what it must not
 * fall on: the hole of a screw, the fold over an edge, a button.
 */
#include "plan/cover_seaming.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/stance.h"

#include <stdlib.h>

static void add_hide(struct seaming *seaming, int64_t at, const char *what)
{
    *LIST_ADD(seaming->planning->arena, &seaming->hides) = (struct hide){at, what};
}

static void add_keep(struct seaming *seaming, int64_t at, int64_t around, const char *what)
{
    *LIST_ADD(seaming->planning->arena, &seaming->keeps) =
        (struct keep){at - around, at + around, what};
}

int64_t seaming_figure(const struct seaming *seaming, int64_t u, int64_t v)
{
    return seaming->level ? v : u;
}

/* The place of the first box's u or v on the layer. */
static int64_t on_layer(const struct seaming *seaming, int64_t at)
{
    const struct area *area = &seaming->spread->plots[0].area;

    return spread_bent(seaming->spread, seaming->level,
                       at + seaming_figure(seaming, area->u0, area->v0));
}

static void find_mattress(struct seaming *seaming, const struct object *mattress)
{
    const struct planning *planning = seaming->planning;
    const struct spread *spread = seaming->spread;
    const struct pose *pose = plan_pose(planning->plan, spread->box->key);
    struct solid lies = stance_object(planning->plan, mattress);
    struct vector ends[2] = {lies.low, {lies.high.x, lies.low.y, lies.low.z}};

    if (seaming->level || !pose || !pose->placed || pose->lean != 0 ||
        side_axis(spread->side) == AXIS_Z ||
        side_turned(spread->side, (4 - pose->turn) % 4) != SIDE_FRONT)
        return;
    for (int i = 0; i < 2; i++) {
        int64_t u, v;

        box_to_face(spread->side, pose_to_box(pose, spread->box, ends[i]), &u, &v);
        add_hide(seaming, on_layer(seaming, u), "the mattress's edge");
    }
}

static void find_objects(struct seaming *seaming)
{
    const struct model *model = seaming->planning->model;

    for (size_t i = 0; i < model->objects.count; i++)
        if (model->objects.at[i].kind == OBJECT_MATTRESS)
            find_mattress(seaming, &model->objects.at[i]);
}

/* Nail rows on the same face, that run as the seams do. */
static void find_nail_rows(struct seaming *seaming)
{
    const struct model *model = seaming->planning->model;
    const struct spread *spread = seaming->spread;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *trim = &model->layers.at[i];
        struct area area = drape_face(trim, spread->box);

        if (trim->kind != LAYER_TRIM || trim->box != spread->layer->box ||
            trim->group != spread->layer->group || trim->side != spread->side)
            continue;
        if (seaming_figure(seaming, trim->left, trim->bottom) != ENDING_STOP)
            add_hide(seaming, on_layer(seaming, seaming_figure(seaming, area.u0, area.v0)),
                     "a row of nails");
        if (seaming_figure(seaming, trim->right, trim->top) != ENDING_STOP)
            add_hide(seaming, on_layer(seaming, seaming_figure(seaming, area.u1, area.v1)),
                     "a row of nails");
    }
}

/* Where one box of a group ends and another begins. */
static void find_joints(struct seaming *seaming)
{
    const struct spread *spread = seaming->spread;

    for (size_t i = 0; i < spread->plot_count; i++)
        for (size_t k = 0; k < spread->plot_count; k++) {
            const struct area *one = &spread->plots[i].area;
            const struct area *next = &spread->plots[k].area;
            int64_t ends = seaming_figure(seaming, one->u1, one->v1);

            if (llabs(ends - seaming_figure(seaming, next->u0, next->v0)) <= SEAMING_EYE)
                add_hide(seaming, ends, "the joint of two boxes");
        }
}

/* Those beside which the layer lies: one just beyond its end is on the seam to the next. */
static void find_holes(struct seaming *seaming)
{
    struct planning *planning = seaming->planning;
    const struct spread *spread = seaming->spread;
    struct holes_on holes = holes_on_layer(planning, spread);

    for (size_t i = 0; i < holes.of.count; i++) {
        const struct hole_on *hole = &holes.of.at[i];
        int64_t beside = seaming_figure(seaming, hole->v, hole->u);

        if (beside >= 0 && beside <= seaming_figure(seaming, spread->height, spread->width))
            add_keep(
                seaming,
                tuft_on_cloth(spread, seaming->level, seaming_figure(seaming, hole->u, hole->v)),
                hole->around + planning->value[TRADE_SEAM_ALLOWANCE], "the hole of a screw");
    }
}

static void find_folds(struct seaming *seaming)
{
    const struct spread *spread = seaming->spread;
    const int64_t ends[2] = {seaming->level ? EDGE_BOTTOM : EDGE_LEFT,
                             seaming->level ? EDGE_TOP : EDGE_RIGHT};
    int64_t clear = seaming->planning->value[TRADE_SEAM_CLEAR];

    for (int i = 0; i < 2; i++) {
        const struct brim *brim = &spread->brims[ends[i]];
        int64_t out = i == 0 ? -brim->over
                             : seaming_figure(seaming, spread->width, spread->height) + brim->over;

        if (!brim->inside && brim->ending != ENDING_STOP)
            add_keep(seaming, tuft_on_cloth(spread, seaming->level, out), clear,
                     "the fold over an edge");
    }
}

static void find_buttons(struct seaming *seaming)
{
    const struct plan *plan = seaming->planning->plan;
    const struct spread *spread = seaming->spread;
    const struct layer *layer = spread->layer;

    for (size_t i = 0; i < plan->tufts.count; i++) {
        const struct tuft *tuft = &plan->tufts.at[i];
        int64_t at = seaming_figure(seaming, tuft->u - layer->u, tuft->v - layer->v);

        if (tuft->layer == layer->key)
            add_keep(seaming, tuft_on_cloth(spread, seaming->level, at),
                     seaming->planning->value[TRADE_SEAM_CLEAR], "a button");
    }
}

void seaming_keep_points(struct seaming *seaming)
{
    find_holes(seaming);
    find_buttons(seaming);
}

void seaming_keep(struct seaming *seaming)
{
    seaming_keep_points(seaming);
    find_folds(seaming);
}

void seaming_find(struct seaming *seaming)
{
    find_objects(seaming);
    find_nail_rows(seaming);
    find_joints(seaming);
    seaming_keep(seaming);
}
