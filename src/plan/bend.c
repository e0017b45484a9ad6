#include "plan/bend.h"

#include "plan/chain.h"
#include "plan/check.h"
#include "plan/cures.h"
#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/wood.h"

#include <math.h>

#define OVERSIZE (2 * LENGTH_64TH)

/* An outline by points is straight between them, so that its chain has no other places. */
#define OF_POINTS LENGTH_MM

struct bend_row {
    int64_t thickness;
    enum trade along, across;
};

#define BEND_ROW(sixtyfourths, name)                                                    \
    {                                                                                   \
        (sixtyfourths) * LENGTH_64TH, TRADE_BEND_ALONG_##name, TRADE_BEND_ACROSS_##name \
    }

static const struct bend_row rows[] = {
    BEND_ROW(16, 1_4), BEND_ROW(20, 5_16), BEND_ROW(24, 3_8),
    BEND_ROW(32, 1_2), BEND_ROW(40, 5_8),  BEND_ROW(48, 3_4),
};

#define ROWS (sizeof rows / sizeof *rows)

int64_t bend_least(const int64_t *value, int64_t thickness, bool across)
{
    const struct bend_row *row = rows;
    int64_t least;

    while (row < rows + ROWS - 1 && thickness > row->thickness + OVERSIZE)
        row++;
    least = value[across ? row->across : row->along];
    if (thickness < rows[0].thickness || thickness > row->thickness + OVERSIZE)
        return whole_divide_even(least * thickness, row->thickness);
    return least;
}

/* Comes it out of a sheet on offer that way? Without offers it is of the usual size. */
static bool lies(const struct planning *planning, int64_t stock, int64_t along, int64_t across)
{
    const struct model *model = planning->model;
    bool offered = false;

    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (offer->stock != stock || !offer->length)
            continue;
        offered = true;
        if (along <= offer->length && across <= offer->width)
            return true;
    }
    return !offered && along <= planning->value[TRADE_SHEET_LENGTH] &&
           across <= planning->value[TRADE_SHEET_WIDTH];
}

/* Of a sheet of that thickness. */
static void judge(const struct planning *planning, int64_t stock, int64_t thickness,
                  struct bend *bend)
{
    int64_t along = bend_least(planning->value, thickness, false);
    int64_t across = bend_least(planning->value, thickness, true);
    bool wide = lies(planning, stock, bend->straight, bend->bent);

    bend->least = across;
    bend->way = BEND_SHARP;
    if (bend->radius >= along && bend->radius >= across)
        bend->way = BEND_EITHER;
    else if (bend->radius >= across && wide)
        bend->way = BEND_ACROSS;
    else if (bend->radius >= across)
        *bend = (struct bend){BEND_WIDE, bend->radius, along, bend->bent, bend->straight};
}

/* ---- outlines ---- */

/* Of the circle through three places; 0 where they lie in one line. It is a b c / 4 A. */
static int64_t radius_through(const struct chain_place *a, const struct chain_place *b,
                              const struct chain_place *c)
{
    struct vector ab = {b->u - a->u, b->v - a->v, 0};
    struct vector bc = {c->u - b->u, c->v - b->v, 0};
    struct vector ac = {c->u - a->u, c->v - a->v, 0};
    double twice_area = fabs((double)ab.x * (double)bc.y - (double)ab.y * (double)bc.x);
    double sides = (double)vector_length(ab) * (double)vector_length(bc);

    /* so near to one line that rounding made it */
    if (twice_area < (double)(2 * vector_length(ac)))
        return 0;
    return llround(sides * (double)vector_length(ac) / (2 * twice_area));
}

static int64_t radius_of_points(const struct planning *planning, const struct box *box,
                                int64_t from, int64_t to)
{
    struct chain chain = chain_of(planning->model, box, OF_POINTS, planning->arena);
    int64_t least = 0;

    for (size_t i = 1; i + 1 < chain.of.count; i++) {
        const struct chain_place *at = &chain.of.at[i];
        int64_t radius = at->corner ? 0 : radius_through(at - 1, at, at + 1);

        if (radius > 0 && from < at->u && at->u < to)
            least = least ? length_smaller(least, radius) : radius;
    }
    return least;
}

int64_t bend_radius(const struct planning *planning, const struct box *box, int64_t from,
                    int64_t to)
{
    return box->outline == OUTLINE_POINTS ? radius_of_points(planning, box, from, to)
                                          : curve_radius(box);
}

struct bend_corners bend_corners(const struct planning *planning, const struct box *box)
{
    struct bend_corners corners = {0};
    struct chain chain;

    if (box->outline != OUTLINE_POINTS)
        return corners;
    chain = chain_of(planning->model, box, OF_POINTS, planning->arena);
    for (size_t i = 1; i + 1 < chain.of.count; i++) {
        int64_t u = chain.of.at[i].u;

        if (chain.of.at[i].corner && (!corners.of.count || corners.of.at[corners.of.count - 1] < u))
            *LIST_ADD(planning->arena, &corners.of) = u;
    }
    return corners;
}

/* ---- panels ---- */

struct bend bend_of(const struct planning *planning, const struct panel *panel)
{
    const struct box *box = MODEL_FIND(planning->model, box, panel->box);
    bool upright = side_u_axis(panel->side) != side_u_axis(box->main_side);
    struct bend bend = {.way = BEND_NONE,
                        .bent = upright ? panel->height : panel->width,
                        .straight = upright ? panel->width : panel->height};

    if (!curve_under(box, panel->side))
        return bend;
    bend.radius = bend_radius(planning, box, upright ? panel->area.v0 : panel->area.u0,
                              upright ? panel->area.v1 : panel->area.u1);
    if (bend.radius > 0)
        judge(planning, panel->stock, panel->thickness, &bend);
    return bend;
}

/* ---- what is told ---- */

/* The thickest other sheet of the workshop that would do; NULL without one. */
static const struct stock *other_sheet(const struct planning *planning, const struct panel *panel,
                                       const struct bend *bend)
{
    const struct model *model = planning->model;
    const struct stock *best = NULL;
    int64_t thickest = 0;

    for (size_t i = 0; i < model->stocks.count; i++) {
        const struct stock *stock = &model->stocks.at[i];
        int64_t thickness = sheet_thickness(model, stock->key);
        struct bend other = *bend;

        if (stock->kind != STOCK_SHEET || stock->key == panel->stock || thickness <= thickest)
            continue;
        judge(planning, stock->key, thickness, &other);
        if (other.way == BEND_EITHER || other.way == BEND_ACROSS) {
            best = stock;
            thickest = thickness;
        }
    }
    return best;
}

static void tell(struct planning *planning, const struct panel *panel, const struct bend *bend)
{
    const struct stock *other = other_sheet(planning, panel, bend);
    struct finding *finding = finding_add(
        planning, bend->way == BEND_WIDE ? FINDING_PANEL_BENT_ALONG : FINDING_PANEL_BENT,
        ENTITY_box, panel->box);
    struct cure_draft cure;

    argument_text(finding, 0, words_side.at[panel->side].name);
    argument_length(finding, 1, panel->thickness);
    argument_length(finding, 2, bend->radius);
    argument_length(finding, 3, bend->least);
    if (!other)
        return;
    cure = cure_begin(planning, arena_format(planning->arena, "Make it of %s", other->name));
    cure_refer(&cure, ENTITY_facing, panel->facing, "stock", other->key);
    cure_offer_on_trial(&cure, finding);
}

/* Of the panels of one facing the first that will not bend. */
void check_bends(struct planning *planning)
{
    const struct plan *plan = planning->plan;
    int64_t told = 0;

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        struct bend bend = bend_of(planning, panel);

        if (panel->facing == told || (bend.way != BEND_SHARP && bend.way != BEND_WIDE))
            continue;
        tell(planning, panel, &bend);
        told = panel->facing;
    }
}
