/*
 * Webbing in the open faces of frames: strips side by side along u and along v, woven.
 *
 * 1  They fill the opening between the members that bound it; each way at least one.
 * 2  A strip goes over the wood at both ends and is folded back there.
 * 3  An end takes staples first and, through the fold, more of them (common practice, no source).
 * 4  Elastic webbing is not woven: it lies one way, the shorter, is cut shorter by its stretch and
 *    pulled to its length.
 */
#include "plan/cover.h"

#include "plan/backing.h"
#include "plan/cover_sums.h"
#include "plan/findings.h"
#include "plan/geometry.h"

/* The part of its face that a facing takes in. */
static struct area facing_area(const struct box *box, const struct facing *facing)
{
    struct area face = face_area(box, facing->side);

    return area_given(&face, facing->u, facing->v, facing->width, facing->height);
}

/* What a facing leaves open between the members that bound it, and which edges have such a member.
 */
struct opening_clear {
    struct area area;
    bool bounded[EDGE_COUNT];
};

/* Draws the opening in behind a member that bounds it: one that begins or ends at an edge and runs
 * along at least half of it. */
static void draw_in(struct opening_clear *clear, const struct area *area, const struct area *wood)
{
    struct area common = area_cut(area, wood);
    bool upright = 2 * area_height(&common) >= area_height(area);
    bool level = 2 * area_width(&common) >= area_width(area);
    const bool bounds[EDGE_COUNT] = {
        [EDGE_LEFT] = upright && common.u0 == area->u0,
        [EDGE_RIGHT] = upright && common.u1 == area->u1,
        [EDGE_TOP] = level && common.v1 == area->v1,
        [EDGE_BOTTOM] = level && common.v0 == area->v0,
    };

    if (area_empty(&common))
        return;
    if (bounds[EDGE_LEFT])
        clear->area.u0 = length_larger(clear->area.u0, common.u1);
    if (bounds[EDGE_RIGHT])
        clear->area.u1 = length_smaller(clear->area.u1, common.u0);
    if (bounds[EDGE_TOP])
        clear->area.v1 = length_smaller(clear->area.v1, common.v0);
    if (bounds[EDGE_BOTTOM])
        clear->area.v0 = length_larger(clear->area.v0, common.v1);
    for (int edge = 0; edge < EDGE_COUNT; edge++)
        clear->bounded[edge] |= bounds[edge];
}

static struct opening_clear opening_of(const struct planning *planning, const struct facing *facing,
                                       const struct area *area)
{
    struct backings wood = backing_find(planning, facing->box, facing->side);
    struct opening_clear clear = {.area = *area};

    for (size_t i = 0; i < wood.count; i++)
        draw_in(&clear, area, &wood.at[i].area);
    return clear;
}

/* Strips that end in the air. */
static void tell_ends(struct planning *planning, const struct facing *facing,
                      const struct opening_clear *clear)
{
    for (int edge = 0; edge < EDGE_COUNT; edge++) {
        struct finding *finding;

        if (clear->bounded[edge])
            continue;
        finding = finding_add(planning, FINDING_WEB_NO_WOOD, ENTITY_facing, facing->key);
        argument_text(finding, 0, words_side.at[edge_side(facing->side, edge)].name);
    }
}

static void lay_woven(const struct planning *planning, struct webbing *web, const struct area *area,
                      const struct area *clear, int64_t strip)
{
    const int64_t *value = planning->value;

    web->up = web_strips(area_width(clear), strip, value[TRADE_WEB_GAP]);
    web->across = web_strips(area_height(clear), strip, value[TRADE_WEB_GAP]);
    web->up_length = area_height(area) + 2 * value[TRADE_WEB_FOLD];
    web->across_length = area_width(area) + 2 * value[TRADE_WEB_FOLD];
}

/* As cut: `length` when it is pulled. */
static int64_t unstretched(const struct planning *planning, int64_t length)
{
    int64_t cut = length;

    (void)whole_share(length, 1000000, 1000000 + planning->value[TRADE_WEB_ELASTIC_STRETCH], &cut);
    return cut + 2 * planning->value[TRADE_WEB_FOLD];
}

static void lay_elastic(const struct planning *planning, struct webbing *web,
                        const struct area *area, const struct area *clear, int64_t strip)
{
    int64_t gap = planning->value[TRADE_WEB_ELASTIC_GAP];

    if (area_height(clear) <= area_width(clear)) {
        web->up = web_strips(area_width(clear), strip, gap);
        web->up_length = unstretched(planning, area_height(area));
    } else {
        web->across = web_strips(area_height(clear), strip, gap);
        web->across_length = unstretched(planning, area_width(area));
    }
}

static void web_facing(struct planning *planning, const struct facing *facing,
                       const struct box *box, const struct stock *stock)
{
    const int64_t *value = planning->value;
    struct area area = facing_area(box, facing);
    struct opening_clear clear = opening_of(planning, facing, &area);
    int64_t strip = stock->width > 0 ? stock->width : value[TRADE_WEB_WIDTH];
    struct webbing *web;

    if (area_empty(&clear.area))
        return;
    tell_ends(planning, facing, &clear);
    web = LIST_ADD(planning->arena, &planning->plan->webbings);
    web->facing = facing->key;
    web->box = box->key;
    web->side = facing->side;
    web->stock = stock->key;
    if (stock->nature == NATURE_ELASTIC)
        lay_elastic(planning, web, &area, &clear.area, strip);
    else
        lay_woven(planning, web, &area, &clear.area, strip);
    web->leg = web_leg(planning, box, stock);
    web->staples = 2 * (web->up + web->across) *
                   (value[TRADE_STAPLE_WEB_FIRST] + value[TRADE_STAPLE_WEB_FOLD]);
}

void web_openings(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->facings.count; i++) {
        const struct facing *facing = &model->facings.at[i];
        const struct box *box = MODEL_FIND(model, box, facing->box);
        const struct stock *stock = MODEL_FIND(model, stock, facing->stock);

        if (facing->kind == FACING_WEBBING && box && stock)
            web_facing(planning, facing, box, stock);
    }
}
