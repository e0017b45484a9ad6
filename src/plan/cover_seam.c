/*
 * Where the seams of a cover that is wider than its cloth fall on its face.
 *
 * 1  Seams are mirrored about the middle of the face, not of the cut piece, which may have more to
 *    go round on one side.
 * 2  They lie as far out as the cloth allows; within `seam.move` of that they are drawn in to a
 *    line that hides them on both sides: the mattress's edges, a nail row, the joint of two boxes.
 * 3  They keep clear of what they must not fall on: the hole of a screw, the fold over an edge, a
 *    button. They give way inwards; where they cannot, a finding tells.
 *
 * Places are counted along the pulled cloth, from the left end of the layer on its face: buttons
 * take cloth in, so that a place in a tufting field lies farther from the middle on the cloth.
 */
#include "plan/cover.h"

#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/point.h"
#include "plan/pose.h"
#include "plan/stance.h"

#include <stdlib.h>

/* Lines and ends that lie flush, as far as eyes see. */
#define EYE (LENGTH_INCH / 8)

/* A line that hides a seam. */
struct hide {
    int64_t at;
    const char *what;
};

/* What a seam must not fall on; open at both ends. */
struct keep {
    int64_t from, to;
    const char *what;
};

struct seaming {
    struct planning *planning;
    const struct spread *spread;
    int64_t middle;      /* of the face */
    int64_t left, right; /* cut beyond it to both sides */
    int64_t roll;
    int64_t repeat; /* that seams match at; 0 for none */
    LIST_OF(struct hide) hides;
    LIST_OF(struct keep) keeps;
};

/* ---- what is there ---- */

static void add_hide(struct seaming *seaming, int64_t at, const char *what)
{
    *LIST_ADD(seaming->planning->arena, &seaming->hides) = (struct hide){at, what};
}

static void add_keep(struct seaming *seaming, int64_t at, int64_t around, const char *what)
{
    *LIST_ADD(seaming->planning->arena, &seaming->keeps) =
        (struct keep){at - around, at + around, what};
}

/* The place of the first box's u on the layer. */
static int64_t on_layer(const struct seaming *seaming, int64_t u)
{
    return u + seaming->spread->plots[0].area.u0;
}

static void find_mattress(struct seaming *seaming, const struct object *mattress)
{
    const struct planning *planning = seaming->planning;
    const struct spread *spread = seaming->spread;
    const struct pose *pose = plan_pose(planning->plan, spread->box->key);
    struct solid lies = stance_object(planning->plan, mattress);
    struct vector ends[2] = {lies.low, {lies.high.x, lies.low.y, lies.low.z}};

    if (!pose || !pose->placed || pose->lean != 0 || side_axis(spread->side) == AXIS_Z ||
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

/* Upright nail rows on the same face. */
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
        if (trim->left != ENDING_STOP)
            add_hide(seaming, on_layer(seaming, area.u0), "a row of nails");
        if (trim->right != ENDING_STOP)
            add_hide(seaming, on_layer(seaming, area.u1), "a row of nails");
    }
}

/* Where one box of a group ends and another begins. */
static void find_joints(struct seaming *seaming)
{
    const struct spread *spread = seaming->spread;

    for (size_t i = 0; i < spread->plot_count; i++)
        for (size_t k = 0; k < spread->plot_count; k++)
            if (llabs(spread->plots[i].area.u1 - spread->plots[k].area.u0) <= EYE)
                add_hide(seaming, spread->plots[i].area.u1, "the joint of two boxes");
}

/* Those as high as the layer: one just beyond its end is on the seam to the next. */
static void find_holes_of(struct seaming *seaming, const struct junction *junction,
                          const struct plot *plot, bool of_b)
{
    const struct planning *planning = seaming->planning;
    int64_t around =
        (junction->patch > 0 ? junction->patch : planning->value[TRADE_PATCH_PLAIN]) / 2;

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &planning->plan->points.at[junction->first_point + i];
        int64_t u, v;

        box_to_face(seaming->spread->side, of_b ? point->in_b : point->in_a, &u, &v);
        if (plot->area.v0 + v >= 0 && plot->area.v0 + v <= seaming->spread->height)
            add_keep(seaming, plot->area.u0 + u, around + planning->value[TRADE_SEAM_ALLOWANCE],
                     "the hole of a screw");
    }
}

/* Holes of the joins on this face, and heads that are driven in through it. */
static void find_holes(struct seaming *seaming)
{
    const struct planning *planning = seaming->planning;
    const struct spread *spread = seaming->spread;

    for (size_t i = 0; i < planning->plan->junctions.count; i++) {
        const struct junction *junction = &planning->plan->junctions.at[i];

        for (size_t k = 0; k < spread->plot_count; k++) {
            int64_t box = spread->plots[k].box->key;
            bool of_b = junction->box_b == box;
            bool heads = junction->head_box == box && !junction->head_inside &&
                         junction->head_side == spread->side;

            if ((of_b || junction->box_a == box) &&
                (heads || point_side(planning, junction, of_b) == spread->side))
                find_holes_of(seaming, junction, &spread->plots[k], of_b);
        }
    }
}

static void find_folds(struct seaming *seaming)
{
    const struct spread *spread = seaming->spread;
    int64_t clear = seaming->planning->value[TRADE_SEAM_CLEAR];

    for (int64_t edge = EDGE_LEFT; edge <= EDGE_RIGHT; edge++) {
        const struct brim *brim = &spread->brims[edge];
        int64_t out = edge == EDGE_LEFT ? -brim->over : spread->width + brim->over;

        if (!brim->inside && brim->ending != ENDING_STOP)
            add_keep(seaming, tuft_on_cloth(seaming->planning, spread, out), clear,
                     "the fold over an edge");
    }
}

static void find_buttons(struct seaming *seaming)
{
    const struct plan *plan = seaming->planning->plan;
    const struct spread *spread = seaming->spread;

    for (size_t i = 0; i < plan->tufts.count; i++) {
        const struct tuft *tuft = &plan->tufts.at[i];

        if (tuft->layer == spread->layer->key)
            add_keep(seaming, tuft_on_cloth(seaming->planning, spread, tuft->u - spread->layer->u),
                     seaming->planning->value[TRADE_SEAM_CLEAR], "a button");
    }
}

static void find_all(struct seaming *seaming)
{
    find_objects(seaming);
    find_nail_rows(seaming);
    find_joints(seaming);
    find_holes(seaming);
    find_folds(seaming);
    find_buttons(seaming);
}

/* ---- choosing ---- */

static bool cut_at(const struct seaming *seaming, int64_t seam, struct widths *widths)
{
    const int64_t *value = seaming->planning->value;

    return widths_draw_in(widths, seaming->left, seaming->right, seaming->roll,
                          value[TRADE_SEAM_ALLOWANCE], value[TRADE_SIDE_STRIP_MIN], seam);
}

/* How far apart the seams beyond the first ones stand. */
static int64_t seam_step(const struct seaming *seaming, const struct widths *widths)
{
    return widths->full - 2 * seaming->planning->value[TRADE_SEAM_ALLOWANCE];
}

/*
 * What some seam falls on; NULL when they are all clear. *ret_seam is then the first seam's place
 * at which that one would be clear of it, further in.
 */
static const char *fallen_on(const struct seaming *seaming, const struct widths *widths,
                             int64_t *ret_seam)
{
    for (int nth = 0; nth <= widths->inner; nth++) {
        int64_t beyond = nth * seam_step(seaming, widths);
        int64_t left = seaming->middle - widths->seam - beyond;
        int64_t right = seaming->middle + widths->seam + beyond;

        for (size_t i = 0; i < seaming->keeps.count; i++) {
            const struct keep *keep = &seaming->keeps.at[i];

            *ret_seam = widths->seam;
            if (keep->from < right && right < keep->to)
                *ret_seam = keep->from - seaming->middle - beyond;
            else if (keep->from < left && left < keep->to)
                *ret_seam = seaming->middle - keep->to - beyond;
            if (*ret_seam != widths->seam)
                return keep->what;
        }
    }
    return NULL;
}

static bool is_hidden_at(const struct seaming *seaming, int64_t at)
{
    for (size_t i = 0; i < seaming->hides.count; i++)
        if (llabs(seaming->hides.at[i].at - at) <= EYE)
            return true;
    return false;
}

/* Draws the seams in to the nearest line that hides them on both sides and costs no width more.
 * Returns what it is; NULL without any. */
static const char *draw_to_line(const struct seaming *seaming, struct widths *widths)
{
    int64_t least = widths->seam - seaming->planning->value[TRADE_SEAM_MOVE];
    struct widths best = *widths;
    const char *what = NULL;

    for (size_t i = 0; i < seaming->hides.count; i++) {
        int64_t seam = llabs(seaming->hides.at[i].at - seaming->middle);
        struct widths drawn = *widths;
        int64_t unused;

        if (seam > widths->seam || seam < least || (what && seam <= best.seam) ||
            !is_hidden_at(seaming, seaming->middle - seam) ||
            !is_hidden_at(seaming, seaming->middle + seam) || !cut_at(seaming, seam, &drawn) ||
            drawn.count > widths->count || fallen_on(seaming, &drawn, &unused))
            continue;
        best = drawn;
        what = seaming->hides.at[i].what;
    }
    *widths = best;
    return what;
}

/* The next place further in at which seams match. */
static int64_t matched_seam(const struct seaming *seaming, int64_t seam)
{
    return seaming->repeat > 0 ? whole_divide_down(2 * seam, seaming->repeat) * seaming->repeat / 2
                               : seam;
}

/* Draws the seams in until they are clear. Returns what they fall on where that cannot be. */
static const char *draw_clear(const struct seaming *seaming, struct widths *widths)
{
    struct widths drawn = *widths;
    const char *first = NULL;
    int64_t seam;

    for (const char *what; (what = fallen_on(seaming, &drawn, &seam)) != NULL;) {
        first = first ? first : what;
        if (!cut_at(seaming, matched_seam(seaming, seam), &drawn))
            return first;
    }
    *widths = drawn;
    return NULL;
}

static void tell_seam(struct planning *planning, const struct spread *spread, int64_t seam,
                      const char *where, const char *what)
{
    struct finding *finding =
        finding_add(planning, FINDING_SEAM_ON, ENTITY_layer, spread->layer->key);

    argument_length(finding, 0, seam);
    argument_text(finding, 1, where);
    argument_text(finding, 2, what);
}

static int64_t matched_repeat(const struct stock *stock, int64_t roll, int64_t allowance)
{
    return stock->repeat_across <= roll - 2 * allowance ? stock->repeat_across : 0;
}

struct widths seams_place(struct planning *planning, const struct spread *spread, int64_t width,
                          int64_t before, int64_t roll, const char **ret_hidden_by)
{
    const int64_t *value = planning->value;
    int64_t allowance = value[TRADE_SEAM_ALLOWANCE];
    int64_t middle = before + spread->width / 2 + tuft_extra(planning, spread, true) / 2;
    struct seaming seaming = {.planning = planning,
                              .spread = spread,
                              .middle = spread->width / 2,
                              .left = middle,
                              .right = width - middle,
                              .roll = roll,
                              .repeat = matched_repeat(spread->stock, roll, allowance)};
    struct widths widths = widths_about(&seaming.left, &seaming.right, roll, allowance,
                                        value[TRADE_SIDE_STRIP_MIN], spread->stock->repeat_across);
    const char *on;

    *ret_hidden_by = NULL;
    if (widths.count == 1)
        return widths;
    seaming.middle += seaming.left - middle;
    find_all(&seaming);
    if (seaming.repeat == 0)
        *ret_hidden_by = draw_to_line(&seaming, &widths);
    on = *ret_hidden_by ? NULL : draw_clear(&seaming, &widths);
    if (on)
        tell_seam(planning, spread, widths.seam, "beside", on);
    return widths;
}

/* ---- seams by hand ---- */

/* Does a cover of the same face begin where this one ends? */
static bool is_joined_on(const struct model *model, const struct spread *spread)
{
    const struct layer *layer = spread->layer;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *next = &model->layers.at[i];

        if (next != layer && next->kind == LAYER_COVER && next->box == layer->box &&
            next->group == layer->group && next->side == layer->side &&
            llabs(next->u - layer->u - spread->width) <= EYE)
            return true;
    }
    return false;
}

void seam_by_hand(struct planning *planning, const struct spread *spread)
{
    struct seaming seaming = {.planning = planning, .spread = spread, .middle = spread->width};
    struct widths one = {.full = 0};
    int64_t face = spread->plots[0].area.u1 - spread->plots[0].area.u0;
    int64_t off = spread->width - spread->plots[0].area.u0 - face / 2;
    const char *on;
    int64_t unused;

    if (spread->layer->kind != LAYER_COVER || !spread->brims[EDGE_RIGHT].inside ||
        !is_joined_on(planning->model, spread))
        return;
    find_holes(&seaming);
    find_buttons(&seaming);
    on = fallen_on(&seaming, &one, &unused);
    if (on)
        tell_seam(planning, spread, llabs(off), off < 0 ? "left of" : "right of", on);
}
