/*
 * Where the seams of a cover that is wider than its cloth fall on its face.
 *
 * 1  Upright seams are mirrored about the middle of the face, not of the cut piece, which may have
 * more to go round on one side. 2  They lie as far out as the cloth allows; within `seam.move` of
 * that they are drawn in to a line that hides them on both sides: the mattress's edges, a nail row,
 * the joint of two boxes. 3  They keep clear of what they must not fall on: the hole of a screw,
 * the fold over an edge, a button. They give way inwards; where they cannot, a finding tells. 4  A
 * railroaded cover that takes two widths has one level seam, as low as the cloth allows, where it
 * is seen least; it gives way upwards. Of more widths the level seams are placed as upright ones
 * are. 5  One seam down the middle there is by the maker's word alone.
 *
 * Places are counted along the pulled cloth, from the left end of the layer on its face, level
 * seams from its lower end: buttons take cloth in, so that a place in a tufting field lies farther
 * from the middle on the cloth.
 */
#include "plan/cover.h"

#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/hidden.h"
#include "plan/pose.h"
#include "plan/stance.h"

#include <assert.h>
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
    bool level;          /* seams run left to right: places are heights */
    int64_t middle;      /* of the face */
    int64_t left, right; /* cut beyond it to both sides; of level seams below and above */
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

/* Of a place on a face, the figure that counts. */
static int64_t figure(const struct seaming *seaming, int64_t u, int64_t v)
{
    return seaming->level ? v : u;
}

/* The place of the first box's u or v on the layer. */
static int64_t on_layer(const struct seaming *seaming, int64_t at)
{
    const struct area *area = &seaming->spread->plots[0].area;

    return at + figure(seaming, area->u0, area->v0);
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
        if (figure(seaming, trim->left, trim->bottom) != ENDING_STOP)
            add_hide(seaming, on_layer(seaming, figure(seaming, area.u0, area.v0)),
                     "a row of nails");
        if (figure(seaming, trim->right, trim->top) != ENDING_STOP)
            add_hide(seaming, on_layer(seaming, figure(seaming, area.u1, area.v1)),
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
            int64_t ends = figure(seaming, one->u1, one->v1);

            if (llabs(ends - figure(seaming, next->u0, next->v0)) <= EYE)
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
        int64_t beside = figure(seaming, hole->v, hole->u);

        if (beside >= 0 && beside <= figure(seaming, spread->height, spread->width))
            add_keep(seaming,
                     tuft_on_cloth(spread, seaming->level, figure(seaming, hole->u, hole->v)),
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
        int64_t out =
            i == 0 ? -brim->over : figure(seaming, spread->width, spread->height) + brim->over;

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
        int64_t at = figure(seaming, tuft->u - layer->u, tuft->v - layer->v);

        if (tuft->layer == layer->key)
            add_keep(seaming, tuft_on_cloth(spread, seaming->level, at),
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

/* Draws the seams in to the nearest line that hides them on both sides and, unless the maker wants
 * them there, costs no width more. Returns what it is; NULL without any. */
static const char *draw_to_line(const struct seaming *seaming, struct widths *widths)
{
    bool far = seaming->spread->layer->seaming == SEAMING_LINE;
    int64_t least = far ? 0 : widths->seam - seaming->planning->value[TRADE_SEAM_MOVE];
    struct widths best = *widths;
    const char *what = NULL;

    for (size_t i = 0; i < seaming->hides.count; i++) {
        int64_t seam = llabs(seaming->hides.at[i].at - seaming->middle);
        struct widths drawn = *widths;
        int64_t unused;

        if (seam > widths->seam || seam < least || (what && seam <= best.seam) ||
            !is_hidden_at(seaming, seaming->middle - seam) ||
            !is_hidden_at(seaming, seaming->middle + seam) || !cut_at(seaming, seam, &drawn) ||
            (drawn.count > widths->count && !far) || fallen_on(seaming, &drawn, &unused))
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

/* ---- one seam alone ---- */

/* What a seam at a place falls on; NULL where it is clear. *ret_clear is then the next place up. */
static const char *falls_on(const struct seaming *seaming, int64_t at, int64_t *ret_clear)
{
    for (size_t i = 0; i < seaming->keeps.count; i++) {
        const struct keep *keep = &seaming->keeps.at[i];

        *ret_clear = keep->to;
        if (keep->from < at && at < keep->to)
            return keep->what;
    }
    return NULL;
}

static bool cut_in_two(const struct seaming *seaming, int64_t at, struct widths *widths)
{
    const int64_t *value = seaming->planning->value;

    return widths_in_two(widths, seaming->left - seaming->middle + at,
                         seaming->right + seaming->middle - at, seaming->roll,
                         value[TRADE_SEAM_ALLOWANCE], value[TRADE_SIDE_STRIP_MIN]);
}

static struct seams seam_alone(const struct seaming *seaming, int64_t at, const char *hidden_by)
{
    struct seams seams = {.alone = at, .hidden_by = hidden_by};
    bool fits = cut_in_two(seaming, at, &seams.widths);

    assert(fits);
    (void)fits;
    return seams;
}

/* Where lines hide a level seam: at one of its own, and anywhere behind the mattress. */
static const char *hidden_level(const struct seaming *seaming, int64_t at)
{
    const struct spread *spread = seaming->spread;

    if (spread->plot_count == 1 &&
        at + spread->layer->v <= hidden_height(seaming->planning, spread->box, spread->side))
        return "the part that the mattress hides";
    for (size_t i = 0; i < seaming->hides.count; i++)
        if (llabs(seaming->hides.at[i].at - at) <= EYE)
            return seaming->hides.at[i].what;
    return NULL;
}

/* The nearest line up to `most` that hides a seam, clear of everything; `at` without any. */
static int64_t raised_to_line(const struct seaming *seaming, int64_t at, int64_t most)
{
    int64_t best = INT64_MAX;
    int64_t unused;

    for (size_t i = 0; i < seaming->hides.count; i++) {
        int64_t line = seaming->hides.at[i].at;
        struct widths widths;

        if (line >= at && line <= most && line < best && !falls_on(seaming, line, &unused) &&
            cut_in_two(seaming, line, &widths))
            best = line;
    }
    return best < INT64_MAX ? best : at;
}

/*
 * The level seam of a cover of two widths: at the lowest place that cloth and strip allow, raised
 * to a line that is near, or until it is clear. False where two widths do not do.
 */
static bool place_level(const struct seaming *seaming, struct seams *ret_seams)
{
    const int64_t *value = seaming->planning->value;
    int64_t begin = seaming->middle - seaming->left;
    int64_t end = seaming->middle + seaming->right;
    int64_t lowest =
        length_larger(end - seaming->roll + value[TRADE_SEAM_ALLOWANCE],
                      begin + value[TRADE_SIDE_STRIP_MIN] - value[TRADE_SEAM_ALLOWANCE]);
    int64_t far =
        seaming->spread->layer->seaming == SEAMING_LINE ? end - begin : value[TRADE_SEAM_MOVE];
    int64_t at = lowest;
    const char *on = NULL;
    struct widths widths;

    if (!cut_in_two(seaming, lowest, &widths))
        return false;
    if (!hidden_level(seaming, at) && seaming->spread->layer->seaming != SEAMING_CENTRE)
        at = raised_to_line(seaming, at, lowest + far);
    for (int64_t clear; (on = falls_on(seaming, at, &clear)) != NULL; at = clear)
        if (!cut_in_two(seaming, clear, &widths)) {
            at = lowest;
            break;
        }
    *ret_seams = seam_alone(seaming, at, hidden_level(seaming, at));
    if (on)
        tell_seam(seaming->planning, seaming->spread, llabs(at - seaming->middle),
                  at < seaming->middle ? "below" : "above", on);
    return true;
}

/* One seam down the middle; false where it does not come out of two widths. */
static bool place_middle(const struct seaming *seaming, struct seams *ret_seams)
{
    struct widths widths;
    int64_t unused;
    const char *on = falls_on(seaming, seaming->middle, &unused);

    if (!cut_in_two(seaming, seaming->middle, &widths))
        return false;
    *ret_seams = seam_alone(seaming, seaming->middle, NULL);
    if (on)
        tell_seam(seaming->planning, seaming->spread, 0, "from", on);
    return true;
}

/* ---- all ---- */

static int64_t matched_repeat(const struct stock *stock, int64_t roll, int64_t allowance)
{
    return stock->repeat_across <= roll - 2 * allowance ? stock->repeat_across : 0;
}

/* Seams mirrored about the middle. */
static struct seams place_mirrored(struct seaming *seaming, struct widths widths)
{
    struct seams seams = {.widths = widths};
    const char *on;

    if (seaming->repeat == 0 && seaming->spread->layer->seaming != SEAMING_CENTRE)
        seams.hidden_by = draw_to_line(seaming, &seams.widths);
    on = seams.hidden_by ? NULL : draw_clear(seaming, &seams.widths);
    if (on)
        tell_seam(seaming->planning, seaming->spread, seams.widths.seam, "beside", on);
    return seams;
}

struct seams seams_place(struct planning *planning, const struct spread *spread, bool level,
                         int64_t cut, int64_t before, int64_t roll)
{
    const int64_t *value = planning->value;
    int64_t allowance = value[TRADE_SEAM_ALLOWANCE];
    struct seaming seaming = {.planning = planning,
                              .spread = spread,
                              .level = level,
                              .roll = roll,
                              .repeat = matched_repeat(spread->stock, roll, allowance)};
    struct seams seams = {.widths = {.count = 1, .centre = cut}};
    int64_t middle = before + tuft_extra(spread, !level) / 2;

    seaming.middle = figure(&seaming, spread->width, spread->height) / 2;
    middle += seaming.middle;
    seaming.left = middle;
    seaming.right = cut - middle;
    if (cut <= roll)
        return seams;
    find_all(&seaming);
    if (level ? seaming.repeat == 0 && place_level(&seaming, &seams)
              : spread->layer->seaming == SEAMING_MIDDLE && place_middle(&seaming, &seams))
        return seams;
    seams.widths = widths_about(&seaming.left, &seaming.right, roll, allowance,
                                value[TRADE_SIDE_STRIP_MIN], spread->stock->repeat_across);
    seaming.middle += seaming.left - middle;
    return place_mirrored(&seaming, seams.widths);
}

/* ---- thin cloth below ---- */

int64_t thin_begins(struct planning *planning, const struct spread *spread)
{
    const struct layer *layer = spread->layer;
    struct seaming seaming = {
        .planning = planning, .spread = spread, .level = true, .middle = spread->height / 2};
    int64_t least = planning->value[TRADE_SIDE_STRIP_MIN];
    int64_t at, unused;
    const char *on;

    if (layer->kind != LAYER_COVER || layer->shape != SHAPE_WRAPPED ||
        !MODEL_FIND(planning->model, stock, layer->thin) || layer->thin_height < least ||
        layer->thin_height > spread->height - least)
        return 0;
    at = tuft_on_cloth(spread, true, layer->thin_height) + tuft_extra(spread, false) / 2;
    find_holes(&seaming);
    find_folds(&seaming);
    find_buttons(&seaming);
    on = falls_on(&seaming, at, &unused);
    if (on)
        tell_seam(planning, spread, llabs(at - seaming.middle),
                  at < seaming.middle ? "below" : "above", on);
    return at;
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
