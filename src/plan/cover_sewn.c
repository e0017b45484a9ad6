/*
 * Sewn: face pieces and boxing strips (a sleeve has one open side). One face, or two
 * with `both`, a strip for each sewn edge, and landing and handle where the cover hangs open.
 *
 * 1  A face reaches over the padding of the side at a sewn edge and has a seam there; an open edge
 *    has landing and handle and no padding to go over.
 * 2  A strip is as wide as what lies between its two long edges: the box and the padding of both
 *    faces, with two seams; or with one seam, a landing and a handle when there is no second face.
 * 3  A strip is as long as its edge of the face, and ends with a seam where the next edge is sewn,
 *    with a plain landing and a handle where it hangs open.
 *
 * 4  A zip between two faces stands in the middle of its strip, which is cut in two halves, each
 * with a seam at the face and a turning at the zip. Where the strip is stapled at its other edge
 * the zip stands in the seam at the face, and the strip is wider for it.
 *
 * A band (open above and below, sewn at both ends) has no faces of its own: it is two strips, each
 * half of the way round.
 */
#include "plan/cover.h"

#include "plan/geometry.h"

#include "model/words.h"

#include <assert.h>
#include <stdio.h>

bool spread_is_band(const struct spread *spread)
{
    return spread->layer->shape == SHAPE_SEWN && spread->layer->both &&
           brim_is_sewn(spread, EDGE_LEFT) && brim_is_sewn(spread, EDGE_RIGHT) &&
           brim_is_open(spread, EDGE_TOP) && brim_is_open(spread, EDGE_BOTTOM);
}

static int64_t padding_behind(const struct planning *planning, const struct spread *spread,
                              int64_t edge)
{
    const struct padding *padding =
        plan_padding(planning->plan, spread->box->key, side_opposite(spread->side));

    assert(edge >= 0 && edge < EDGE_COUNT);
    return padding ? padding->at[edge] : 0;
}

/* ---- faces ---- */

static int64_t face_reach(const struct planning *planning, const struct spread *spread,
                          int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    const struct brim *brim = &spread->brims[edge];

    if (brim_is_sewn(spread, edge))
        return brim->beside + planning->value[TRADE_SEAM_ALLOWANCE];
    return brim->ending == ENDING_STOP ? 0 : brim->landing + brim->handle;
}

static void cut_faces(struct planning *planning, struct spread *spread)
{
    int64_t width = spread->wide + face_reach(planning, spread, EDGE_LEFT) +
                    face_reach(planning, spread, EDGE_RIGHT) + spread->ease +
                    tuft_extra(spread, true);
    int64_t height = spread->high + face_reach(planning, spread, EDGE_TOP) +
                     face_reach(planning, spread, EDGE_BOTTOM) + spread->ease +
                     tuft_extra(spread, false);
    const struct reach reach = {face_reach(planning, spread, EDGE_LEFT),
                                face_reach(planning, spread, EDGE_BOTTOM)};

    tuft_lay(planning, spread);
    cut_on_face(planning, spread, "face", width, height, &reach);
    if (spread->layer->both)
        cut_second_face(planning, spread, "face", width, height, &reach);
    tuft_consume(planning, spread);
}

/* ---- boxing ---- */

const struct fitting *boxing_zip(const struct planning *planning, const struct spread *spread,
                                 int64_t edge)
{
    const struct model *model = planning->model;

    for (size_t i = 0; brim_is_sewn(spread, edge) && i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];

        if (fitting->kind == FITTING_ZIP && fitting->box == spread->box->key &&
            fitting->side == edge_side(spread->side, edge))
            return fitting;
    }
    return NULL;
}

int64_t zip_length(const struct planning *planning, const struct spread *spread, int64_t edge)
{
    const struct fitting *zip = boxing_zip(planning, spread, edge);
    int64_t opening = sewn_length(spread, edge) - planning->value[TRADE_ZIP_LESS];

    if (!zip || opening <= 0)
        return 0;
    return zip->length > 0 ? zip->length : opening;
}

int64_t boxing_width(const struct planning *planning, const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    const struct brim *brim = &spread->brims[edge];
    int64_t seam = planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t width = spread->depth + brim->over + seam;

    if (spread->layer->both)
        return width + padding_behind(planning, spread, edge) + seam;
    return width + brim->landing + brim->handle;
}

int64_t sewn_length(const struct spread *spread, int64_t edge)
{
    int64_t beside[2];
    int64_t length = spread_length(spread, edge) + spread->ease;

    edge_neighbours(edge, beside);
    for (int end = 0; end < 2; end++) {
        const struct brim *brim = &spread->brims[beside[end]];

        if (brim_is_sewn(spread, beside[end]))
            length += brim->beside;
        else if (brim->ending != ENDING_STOP)
            length += brim->landing + brim->handle;
    }
    return length;
}

static int64_t boxing_end(const struct planning *planning, const struct spread *spread,
                          int64_t neighbour)
{
    assert(neighbour >= 0 && neighbour < EDGE_COUNT);
    if (brim_is_sewn(spread, neighbour))
        return spread->brims[neighbour].beside + planning->value[TRADE_SEAM_ALLOWANCE];
    if (spread->brims[neighbour].ending == ENDING_STOP)
        return 0;
    if (spread->layer->slip)
        return planning->value[TRADE_COVER_HEM];
    return planning->value[TRADE_LANDING] + planning->value[TRADE_HANDLE];
}

/* Does an edge run left to right on the side that it borders on? */
static bool lies_level(const struct spread *spread, int64_t edge)
{
    int axis = edge_is_upright(edge) ? side_v_axis(spread->side) : side_u_axis(spread->side);

    return side_u_axis(edge_side(spread->side, edge)) == axis;
}

/* A strip, or `count` of them, as long as an edge and `width` wide. */
static void cut_strips(struct planning *planning, struct spread *spread, int64_t edge,
                       const char *what, int count, int64_t width)
{
    int64_t beside[2];
    int64_t length = spread_length(spread, edge) + spread->ease;
    int64_t roll = spread->stock->width;
    bool level = lies_level(spread, edge);
    bool turns = stock_turns(spread->stock);
    bool across;
    char name[40];

    edge_neighbours(edge, beside);
    length += boxing_end(planning, spread, beside[0]) + boxing_end(planning, spread, beside[1]);
    snprintf(name, sizeof name, "%s %s", words_side.at[edge_side(spread->side, edge)].name, what);
    if (level && !turns && roll > 0 && length > roll)
        for (int i = 0; i < count; i++)
            spread_cloth(planning, spread, name, length, width, &across);
    else
        spread_piece(planning, spread, name, count, level ? length : width, level ? width : length,
                     turns);
}

static void cut_boxing(struct planning *planning, struct spread *spread, int64_t edge)
{
    int64_t width = boxing_width(planning, spread, edge);

    if (!boxing_zip(planning, spread, edge)) {
        cut_strips(planning, spread, edge, "boxing", 1, width);
        return;
    }
    width += planning->value[TRADE_ZIP_BOXING];
    if (spread->layer->both)
        cut_strips(planning, spread, edge, "zip boxing", 2, whole_divide_up(width, 2));
    else
        cut_strips(planning, spread, edge, "boxing", 1, width);
}

/* ---- the band ---- */

static void cut_band(struct planning *planning, struct spread *spread)
{
    const struct brim *brims = spread->brims;
    int64_t face =
        spread->width + spread->ease + brims[EDGE_LEFT].beside + brims[EDGE_RIGHT].beside;
    int64_t end =
        spread->depth + brims[EDGE_RIGHT].over + padding_behind(planning, spread, EDGE_RIGHT);
    int64_t width = face + end + 2 * planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t height = spread->height;
    const struct reach reach = {brims[EDGE_LEFT].beside + planning->value[TRADE_SEAM_ALLOWANCE],
                                brims[EDGE_BOTTOM].over + brims[EDGE_BOTTOM].landing +
                                    brims[EDGE_BOTTOM].handle};

    for (int64_t edge = EDGE_TOP; edge <= EDGE_BOTTOM; edge++)
        height += brims[edge].over + brims[edge].landing + brims[edge].handle;
    cut_on_face(planning, spread, "band", width, height, &reach);
    cut_second_face(planning, spread, "band", width, height, &reach);
    sew_band(planning, spread, height);
}

void cut_sewn(struct planning *planning, struct spread *spread)
{
    if (spread_is_band(spread)) {
        cut_band(planning, spread);
        return;
    }
    cut_faces(planning, spread);
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (brim_is_sewn(spread, edge))
            cut_boxing(planning, spread, edge);
    sew_boxing(planning, spread);
}
