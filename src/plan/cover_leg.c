/*
 * Legs of staples: long enough to bite below what they hold, short enough not to come through
 * (common practice, no source).
 *
 *     leg = pressed stack + bite, the next length that is sold
 *     leg - stack <= wood - 1/8 in
 */
#include "plan/cover.h"

#include "plan/backing.h"
#include "plan/cover_sums.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"

#include <stdlib.h>

/* Lengths sold, where the workshop has no staples: common practice, no source. */
static const int64_t sold_inch[] = {LENGTH_INCH / 4, LENGTH_INCH * 5 / 16, LENGTH_INCH * 3 / 8,
                                    LENGTH_INCH / 2, LENGTH_INCH * 9 / 16, LENGTH_INCH * 5 / 8};
static const int64_t sold_mm[] = {6 * LENGTH_MM,  8 * LENGTH_MM,  10 * LENGTH_MM,
                                  12 * LENGTH_MM, 14 * LENGTH_MM, 16 * LENGTH_MM};

_Static_assert(sizeof sold_inch == sizeof sold_mm, "as many lengths in inches as in millimetres");

static int by_length(const void *a, const void *b)
{
    int64_t left = *(const int64_t *)a;
    int64_t right = *(const int64_t *)b;

    return (left > right) - (left < right);
}

/* The next leg from `need` on that the workshop has, or that is sold where it has none. */
static int64_t leg_on_hand(const struct planning *planning, int64_t need)
{
    const struct model *model = planning->model;
    LIST_OF(int64_t) legs = {{0}};

    for (size_t i = 0; i < model->stocks.count; i++)
        if (model->stocks.at[i].kind == STOCK_STAPLE && model->stocks.at[i].length > 0)
            *LIST_ADD(planning->arena, &legs) = model->stocks.at[i].length;
    if (legs.count == 0)
        return leg_from(model_units(model) == UNITS_INCH ? sold_inch : sold_mm,
                        sizeof sold_inch / sizeof *sold_inch, need);
    qsort(legs.at, legs.count, sizeof *legs.at, by_length);
    return leg_from(legs.at, legs.count, need);
}

/* Thickness under the staple's crown: welt brings its flange and lies on the cover. */
static int64_t pressed_stack(const struct planning *planning, const struct spread *spread)
{
    const struct layer *layer = spread->layer;
    int64_t usual = planning->value[layer->kind == LAYER_LINING || layer->kind == LAYER_DUST_COVER
                                        ? TRADE_MUSLIN_THICKNESS
                                        : TRADE_CLOTH_THICKNESS];
    int64_t cloth = spread->stock->thickness > 0 ? spread->stock->thickness : usual;

    if (layer->kind == LAYER_BATTING)
        return planning->value[TRADE_JOINT_CLOTH_PER_FACE];
    if (layer->kind == LAYER_WELT)
        return 3 * cloth;
    if (layer->fixing == FIXING_TOGETHER)
        cloth += planning->value[TRADE_MUSLIN_THICKNESS];
    return layer->finish == FINISH_FOLDED || spread->closing == CLOSING_ROW ? 2 * cloth : cloth;
}

bool is_board_edge(const struct spread *spread, int64_t side)
{
    const struct box *box = spread->box;
    struct vector size = box_size(box);
    int64_t thin = length_smaller(size.x, length_smaller(size.y, size.z));

    return box->frame == FRAME_BOARD && vector_along(size, side_axis(side)) > thin;
}

static int64_t bite(const struct planning *planning, const struct box *box)
{
    const struct stock *stick = MODEL_FIND(planning->model, stock, box->stick);

    return planning->value[stick && stick->wood == WOOD_HARD ? TRADE_STAPLE_BITE_HARD
                                                             : TRADE_STAPLE_BITE_SOFT];
}

int64_t staple_leg(const struct planning *planning, const struct spread *spread,
                   int64_t landing_side)
{
    int64_t deep = bite(planning, spread->box);

    if (is_board_edge(spread, landing_side))
        deep = length_larger(deep, planning->value[TRADE_STAPLE_BITE_EDGE]);
    return leg_on_hand(planning, pressed_stack(planning, spread) + deep);
}

int64_t web_leg(const struct planning *planning, const struct box *box, const struct stock *web)
{
    int64_t thick = web->thickness > 0 ? web->thickness : planning->value[TRADE_WEB_THICKNESS];

    return leg_on_hand(planning, 2 * thick + bite(planning, box));
}

void wood_gather(struct planning *planning, struct spread *spread)
{
    const struct plan *plan = planning->plan;
    struct timber *timber = &spread->timber;
    struct slice members = plan_members_of(plan, spread->box->key);
    struct slice panels = plan_panels_of(plan, spread->box->key);

    for (size_t i = members.from; i < members.to; i++)
        *LIST_ADD(planning->arena, &timber->of) = plan->members.at[i].solid;
    for (size_t i = panels.from; i < panels.to; i++)
        if (!plan->panels.at[i].loose)
            *LIST_ADD(planning->arena, &timber->of) = plan->panels.at[i].solid;
}

/* How deep the wood of one solid reaches from `depth` below a place of a face. */
static int64_t deeper(const struct spread *spread, int64_t side, int64_t u, int64_t v,
                      int64_t depth)
{
    for (size_t i = 0; i < spread->timber.of.count; i++) {
        const struct solid *solid = &spread->timber.of.at[i];
        struct area area = solid_on_side(solid, side);

        if (area_holds(&area, u, v) && backing_near(spread->box, side, solid) <= depth &&
            backing_far(spread->box, side, solid) > depth)
            return backing_far(spread->box, side, solid);
    }
    return depth;
}

/* Wood behind a place of a face, panel and member together; 0 where there is none. */
static int64_t wood_at(const struct spread *spread, int64_t side, int64_t u, int64_t v)
{
    int64_t depth = 0;

    for (int64_t next; (next = deeper(spread, side, u, v, depth)) > depth;)
        depth = next;
    return depth;
}

static bool checked_edge(const struct staple_row *row, int64_t edge)
{
    return row->edge == EDGE_LOOP || row->edge == edge;
}

/* Looks at the middle of each landing; one finding a row is enough. */
void staple_wood(struct planning *planning, const struct spread *spread,
                 const struct staple_row *row, int64_t leg)
{
    int64_t deep = leg - pressed_stack(planning, spread);

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct landing landing = drape_landing(planning, spread->layer, spread->box, edge);
        int64_t wood;
        struct finding *finding;

        if (!checked_edge(row, edge) || area_empty(&landing.area))
            continue;
        wood = wood_at(spread, landing.side, (landing.area.u0 + landing.area.u1) / 2,
                       (landing.area.v0 + landing.area.v1) / 2);
        if (wood == 0 || (deep <= wood - planning->value[TRADE_STAPLE_LEG_CLEAR] &&
                          wood >= planning->value[TRADE_STAPLE_WOOD_MIN]))
            continue;
        finding = finding_add(planning, FINDING_LANDING_THIN, ENTITY_layer, spread->layer->key);
        argument_length(finding, 0, wood);
        argument_length(finding, 1, leg);
        return;
    }
}
