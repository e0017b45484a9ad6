/*
 * The seams of what is sewn, in the order they are made (rules P36, P37):
 *
 *     widths to each other
 *     welt to the face, where a layer of welt lies in the seam
 *     the halves of a strip to the zip that stands between them
 *     the strips of the boxing to each other, at the corners
 *     the boxing to the face, side by side; and to the second face
 *
 * A seam's length is what is stitched, its allowances at the ends left out. Marks that meet are at
 * the middle of a seam and at the corners it turns. At a corner the boxing is clipped, to nearly
 * the stitch.
 */
#include "plan/cover.h"

#include "model/words.h"
#include "plan/geometry.h"
#include "plan/layers.h"

#include <assert.h>

static struct seam *add_seam(struct planning *planning, const struct spread *spread,
                             enum seam_kind kind, const char *what, int count, int64_t length)
{
    struct seam *seam = LIST_ADD(planning->arena, &planning->plan->seams);

    seam->kind = kind;
    seam->layer = spread->layer->key;
    seam->box = spread->box->key;
    seam->what = what;
    seam->count = count;
    seam->length = length;
    seam->allowance = planning->value[TRADE_SEAM_ALLOWANCE];
    seam->notches = 1;
    return seam;
}

void sew_widths(struct planning *planning, const struct spread *spread, const char *name,
                const struct widths *widths, int64_t along)
{
    struct seam *seam;

    if (widths->count == 1)
        return;
    seam = add_seam(planning, spread, SEAM_STRAIGHT,
                    arena_format(planning->arena, "widths of the %s", name), widths_seams(widths),
                    along);
    seam->joins_widths = true;
    seam->even = seam->count > 1 && widths->under == 0;
}

void sew_thin(struct planning *planning, const struct spread *spread, int64_t width)
{
    add_seam(planning, spread, SEAM_STRAIGHT, "thin cloth to the cover", 1, width);
}

/* ---- boxing ---- */

static int sewn_corners(const struct spread *spread, int64_t edge)
{
    int64_t beside[2];

    edge_neighbours(edge, beside);
    return brim_is_sewn(spread, beside[0]) + brim_is_sewn(spread, beside[1]);
}

static int64_t clip_depth(const struct planning *planning)
{
    int64_t depth = planning->value[TRADE_SEAM_ALLOWANCE] - planning->value[TRADE_SEAM_CLIP_REST];

    return depth > 0 ? depth : 0;
}

/* Does a layer of welt lie in the seam along an edge of the face? */
static bool is_welted(const struct model *model, const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *welt = &model->layers.at[i];

        if (welt->kind == LAYER_WELT && welt->box == spread->layer->box &&
            welt->group == spread->layer->group && welt->side == spread->side &&
            layer_ending(welt, edge) == ENDING_SEWN)
            return true;
    }
    return false;
}

static void sew_welt_on(struct planning *planning, const struct spread *spread)
{
    int64_t length = 0;
    int corners = 0;
    struct seam *seam;

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        if (!brim_is_sewn(spread, edge) || !is_welted(planning->model, spread, edge))
            continue;
        length += sewn_length(spread, edge);
        corners += sewn_corners(spread, edge);
    }
    if (length == 0)
        return;
    seam = add_seam(planning, spread, SEAM_WELT, "welt to the face", spread->layer->both ? 2 : 1,
                    length);
    seam->welt = true;
    seam->corners = corners;
    seam->clip = corners > 0 ? clip_depth(planning) : 0;
}

/* The two halves of a strip, and the tape of the zip between them. */
static void sew_zips(struct planning *planning, const struct spread *spread)
{
    for (int64_t edge = 0; spread->layer->both && edge < EDGE_COUNT; edge++) {
        int64_t zip = zip_length(planning, spread, edge);
        struct seam *seam;

        if (zip == 0)
            continue;
        seam = add_seam(planning, spread, SEAM_STRAIGHT,
                        arena_format(planning->arena, "halves of the %s boxing to the zip",
                                     words_side.at[edge_side(spread->side, edge)].name),
                        2, sewn_length(spread, edge));
        seam->allowance = planning->value[TRADE_ZIP_BOXING] / 2;
        seam->zip = zip;
        seam->fitting = boxing_zip(planning, spread, edge)->key;
    }
}

/* Each corner is met from both its edges. */
static void sew_corners(struct planning *planning, const struct spread *spread)
{
    int64_t seams = (spread->layer->both ? 2 : 1) * planning->value[TRADE_SEAM_ALLOWANCE];
    int corners = 0;
    int64_t width = 0;

    for (int64_t edge = EDGE_LEFT; edge <= EDGE_RIGHT; edge++)
        if (brim_is_sewn(spread, edge) && sewn_corners(spread, edge) > 0) {
            corners += sewn_corners(spread, edge);
            width = length_larger(width, boxing_width(planning, spread, edge));
        }
    if (corners > 0)
        add_seam(planning, spread, SEAM_STRAIGHT, "corners of the boxing", corners, width - seams);
}

/* A cushion without a zip is filled through the last side of its second face, and that is closed by
 * hand. */
static bool closes_by_hand(const struct planning *planning, const struct spread *spread,
                           int64_t edge)
{
    if (spread->box->frame != FRAME_CUSHION || !spread->layer->both || edge != EDGE_BOTTOM)
        return false;
    for (int64_t other = 0; other < EDGE_COUNT; other++)
        if (!brim_is_sewn(spread, other) || boxing_zip(planning, spread, other))
            return false;
    return true;
}

static void sew_to_face(struct planning *planning, const struct spread *spread, int64_t edge,
                        bool second)
{
    const char *side = words_side.at[edge_side(spread->side, edge)].name;
    int corners = sewn_corners(spread, edge);
    bool by_hand = second && closes_by_hand(planning, spread, edge);
    struct seam *seam = add_seam(planning, spread, by_hand ? SEAM_BY_HAND : SEAM_BOXING,
                                 arena_format(planning->arena, "%s boxing to the %sface%s", side,
                                              second ? "second " : "",
                                              by_hand ? ", by hand when it is filled" : ""),
                                 1, sewn_length(spread, edge));

    seam->notches = 1 + corners;
    seam->corners = corners;
    seam->clip = corners > 0 ? clip_depth(planning) : 0;
    seam->welt = is_welted(planning->model, spread, edge);
    if (!spread->layer->both && boxing_zip(planning, spread, edge)) {
        seam->zip = zip_length(planning, spread, edge);
        seam->fitting = boxing_zip(planning, spread, edge)->key;
    }
}

/* Once round what hangs open: both faces, and the boxing between them. */
static void sew_hem(struct planning *planning, const struct spread *spread)
{
    int faces = spread->layer->both ? 2 : 1;
    int64_t length = 0;

    for (int64_t edge = 0; spread->layer->slip && edge < EDGE_COUNT; edge++)
        if (brim_is_open(spread, edge))
            length += faces * (spread_length(spread, edge) + spread->ease) + 2 * spread->depth;
    if (length > 0)
        add_seam(planning, spread, SEAM_STRAIGHT, "hem of the open side", 1, length);
}

void sew_boxing(struct planning *planning, const struct spread *spread)
{
    sew_welt_on(planning, spread);
    sew_zips(planning, spread);
    sew_corners(planning, spread);
    for (int second = 0; second <= (spread->layer->both != 0); second++)
        for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
            if (brim_is_sewn(spread, edge))
                sew_to_face(planning, spread, edge, second);
    sew_hem(planning, spread);
}

void sew_band(struct planning *planning, const struct spread *spread, int64_t height)
{
    add_seam(planning, spread, SEAM_STRAIGHT, "ends of the band", 2, height);
}

/* Through the cover and what lies under it. */
void sew_channels(struct planning *planning, const struct spread *spread)
{
    struct seam *seam = add_seam(planning, spread, SEAM_STRAIGHT, "lines of the channels",
                                 (int)spread->field.lines, spread->field.line_length);

    seam->allowance = 0;
    seam->even = true;
}

/* ---- welt ---- */

/* Strips are joined on the slant, so that the seam does not lie in one lump round the cord. */
void sew_welt(struct planning *planning, const struct spread *spread, int64_t strips, int64_t strip,
              int64_t length)
{
    if (strips > 1)
        add_seam(planning, spread, SEAM_STRAIGHT, "strips of the welt, on the slant",
                 (int)strips - 1, whole_root(2 * strip * strip));
    add_seam(planning, spread, SEAM_CORD,
             spread->layer->doubled ? "both cords into their strip" : "cord into its strip",
             spread->layer->doubled ? 2 : 1, length);
}

void sew_by_hand(struct planning *planning, const struct spread *spread, const char *what,
                 int count, int64_t length)
{
    add_seam(planning, spread, SEAM_BY_HAND, what, count, length);
}

int64_t sewing_thread(const struct planning *planning, size_t first, bool by_hand)
{
    int64_t length = 0;
    int64_t thread;

    for (size_t i = first; i < planning->plan->seams.count; i++) {
        const struct seam *seam = &planning->plan->seams.at[i];

        if ((seam->kind == SEAM_BY_HAND) == by_hand)
            length += seam->count * seam->length;
    }
    if (whole_share(length, planning->value[TRADE_THREAD_PER_SEAM], 1000000, &thread))
        return length;
    return thread;
}
