/*
 * What carries the panels: the clear gaps behind each, and the wood at its seams. A board that is
 * sat on is carried by the boxes that it lies on.
 *
 * A panel spans its shorter way, so a place behind it is carried well when the way to the next wood
 * left and right, or up and down, is within the span. The lines of the members' sides divide a
 * panel into cells; within one cell the clear ways are the same, and its middle stands for it.
 */
#include "plan/frame.h"

#include "plan/findings.h"
#include "plan/pose.h"
#include "plan/slices.h"

#include <assert.h>
#include <stdlib.h>

#define LAID (LENGTH_INCH / 8) /* cloth between a board and what it lies on */

struct wood {
    LIST_OF(struct area) of; /* members behind the panel, cut to it */
};

struct lines {
    LIST_OF(int64_t) of;
};

static struct wood wood_behind(const struct planning *planning, const struct panel *panel)
{
    const struct plan *plan = planning->plan;
    struct slice members = plan_members_of(plan, panel->box);
    struct wood wood = {0};

    for (size_t i = members.from; i < members.to; i++)
        if (member_bears(&plan->members.at[i], panel))
            *LIST_ADD(planning->arena, &wood.of) = member_under(&plan->members.at[i], panel);
    return wood;
}

static struct solid stretched(struct solid solid, int64_t by)
{
    solid.low = (struct vector){solid.low.x - by, solid.low.y - by, solid.low.z - by};
    solid.high = (struct vector){solid.high.x + by, solid.high.y + by, solid.high.z + by};
    return solid;
}

/* Wood of another box under a board: its members and panels that end where the board begins. */
static void add_wood_of(const struct planning *planning, const struct box *board,
                        const struct box *under, const struct panel *panel, struct wood *wood)
{
    const struct plan *plan = planning->plan;
    const struct pose *to = plan_pose(plan, board->key);
    const struct pose *from = plan_pose(plan, under->key);
    struct slice members = plan_members_of(plan, under->key);
    struct slice panels = plan_panels_of(plan, under->key);

    for (size_t i = members.from; i < members.to + (panels.to - panels.from); i++) {
        const struct solid *solid = i < members.to
                                        ? &plan->members.at[i].solid
                                        : &plan->panels.at[panels.from + i - members.to].solid;
        struct solid here = pose_block_across(from, under, to, board, solid);
        struct area outline = solid_on_side(&here, panel->side);
        struct area area = area_cut(&outline, &panel->area);

        if (!area_empty(&area) && here.high.z <= panel->solid.low.z + LAID &&
            here.high.z >= panel->solid.low.z - LAID)
            *LIST_ADD(planning->arena, &wood->of) = area;
    }
}

/* A board that is sat on or carries a mattress lies on other boxes. */
static void add_wood_under_board(const struct planning *planning, const struct box *board,
                                 const struct panel *panel, struct wood *wood)
{
    const struct model *model = planning->model;
    const struct facing *facing = MODEL_FIND(model, facing, panel->facing);
    const struct pose *pose = plan_pose(planning->plan, board->key);
    struct solid near;

    if (!pose || panel->side != SIDE_TOP || (facing->use != USE_SEAT && facing->use != USE_DECK))
        return;
    near = stretched(pose->room, LAID);
    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *under = &model->boxes.at[i];
        const struct pose *other = plan_pose(planning->plan, under->key);

        if (under != board && other && solids_meet(&near, &other->room))
            add_wood_of(planning, board, under, panel, wood);
    }
}

static int by_size(const void *a, const void *b)
{
    int64_t left = *(const int64_t *)a;
    int64_t right = *(const int64_t *)b;

    return (left > right) - (left < right);
}

/* Two equal lines would bound a cell that nothing lies in. */
static void keep_each_line_once(struct lines *lines)
{
    size_t kept = 0;

    for (size_t i = 0; i < lines->of.count; i++)
        if (!kept || lines->of.at[kept - 1] != lines->of.at[i])
            lines->of.at[kept++] = lines->of.at[i];
    lines->of.count = kept;
}

static struct lines lines_of(const struct planning *planning, const struct wood *wood,
                             const struct panel *panel, bool upright)
{
    struct lines lines = {0};

    *LIST_ADD(planning->arena, &lines.of) = upright ? panel->area.u0 : panel->area.v0;
    *LIST_ADD(planning->arena, &lines.of) = upright ? panel->area.u1 : panel->area.v1;
    for (size_t i = 0; i < wood->of.count; i++) {
        const struct area *area = &wood->of.at[i];

        *LIST_ADD(planning->arena, &lines.of) = upright ? area->u0 : area->v0;
        *LIST_ADD(planning->arena, &lines.of) = upright ? area->u1 : area->v1;
    }
    qsort(lines.of.at, lines.of.count, sizeof *lines.of.at, by_size);
    keep_each_line_once(&lines);
    return lines;
}

/* The free way through a place, the shorter of along u and along v; nothing where wood is, or where
 * none is in line either way: a corner that hangs over, as far as the places beside it do. */
static int64_t clear_at(const struct wood *wood, const struct panel *panel, int64_t u, int64_t v)
{
    struct area clear = panel->area;
    bool in_line = false;

    for (size_t i = 0; i < wood->of.count; i++) {
        const struct area *area = &wood->of.at[i];
        bool level = area->v0 <= v && v < area->v1;
        bool plumb = area->u0 <= u && u < area->u1;

        if (level && plumb)
            return 0;
        in_line |= level || plumb;
        if (level && area->u1 <= u)
            clear.u0 = length_larger(clear.u0, area->u1);
        if (level && area->u0 > u)
            clear.u1 = length_smaller(clear.u1, area->u0);
        if (plumb && area->v1 <= v)
            clear.v0 = length_larger(clear.v0, area->v1);
        if (plumb && area->v0 > v)
            clear.v1 = length_smaller(clear.v1, area->v0);
    }
    return in_line ? length_smaller(area_width(&clear), area_height(&clear)) : 0;
}

static int64_t widest_gap(const struct planning *planning, const struct wood *wood,
                          const struct panel *panel)
{
    struct lines us = lines_of(planning, wood, panel, true);
    struct lines vs = lines_of(planning, wood, panel, false);
    int64_t widest = 0;

    for (size_t i = 0; i + 1 < us.of.count; i++)
        for (size_t k = 0; k + 1 < vs.of.count; k++)
            widest = length_larger(widest, clear_at(wood, panel, us.of.at[i], vs.of.at[k]));
    return widest;
}

static void check_span(struct planning *planning, struct panel *panel, const struct wood *wood)
{
    int64_t span = panel_span(planning, panel);
    int64_t gap = widest_gap(planning, wood, panel);
    struct finding *finding;

    panel->span = span;
    panel->gap = wood->of.count > 0 ? gap : 0;
    if (wood->of.count == 0 || gap <= span)
        return;
    finding = finding_add(planning, FINDING_PANEL_SPAN, ENTITY_box, panel->box);
    argument_length(finding, 0, gap);
    argument_length(finding, 1, span);
}

/* ---- seams ---- */

/* Wood under a panel along its edge: the widest member that lies along it. */
static int64_t bearing_at(const struct wood *wood, const struct panel *panel, int64_t edge)
{
    int64_t bearing = 0;

    assert(edge >= 0 && edge < EDGE_COUNT);
    for (size_t i = 0; i < wood->of.count; i++) {
        const struct area *area = &wood->of.at[i];
        const struct area *whole = &panel->area;
        const bool along[EDGE_COUNT] = {[EDGE_LEFT] = area->u0 == whole->u0,
                                        [EDGE_RIGHT] = area->u1 == whole->u1,
                                        [EDGE_TOP] = area->v1 == whole->v1,
                                        [EDGE_BOTTOM] = area->v0 == whole->v0};
        bool upright = edge_is_upright(edge);
        bool lengthwise =
            upright ? area_height(area) > area_width(area) : area_width(area) > area_height(area);

        if (along[edge] && lengthwise)
            bearing = length_larger(bearing, upright ? area_width(area) : area_height(area));
    }
    return bearing;
}

static bool meet_at(const struct panel *panel, const struct panel *other, int64_t edge)
{
    const struct area *a = &panel->area;
    const struct area *b = &other->area;
    const bool meet[EDGE_COUNT] = {[EDGE_LEFT] = b->u1 == a->u0,
                                   [EDGE_RIGHT] = b->u0 == a->u1,
                                   [EDGE_TOP] = b->v0 == a->v1,
                                   [EDGE_BOTTOM] = b->v1 == a->v0};
    bool upright = edge_is_upright(edge);
    int64_t low = upright ? length_larger(a->v0, b->v0) : length_larger(a->u0, b->u0);
    int64_t high = upright ? length_smaller(a->v1, b->v1) : length_smaller(a->u1, b->u1);

    assert(edge >= 0 && edge < EDGE_COUNT);
    return panel->side == other->side && panel->loose == other->loose && meet[edge] && low < high;
}

static bool is_seam(const struct plan *plan, const struct panel *panel, int64_t edge)
{
    struct slice panels = plan_panels_of(plan, panel->box);

    for (size_t i = panels.from; i < panels.to; i++)
        if (meet_at(panel, &plan->panels.at[i], edge))
            return true;
    return false;
}

static void check_seams(struct planning *planning, const struct panel *panel,
                        const struct wood *wood)
{
    int64_t least = planning->value[TRADE_SEAM_BEARING_MIN];

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        int64_t bearing = bearing_at(wood, panel, edge);
        struct finding *finding;

        if (bearing >= least || !is_seam(planning->plan, panel, edge))
            continue;
        finding = finding_add(planning, FINDING_SEAM_BEARING, ENTITY_box, panel->box);
        argument_length(finding, 0, bearing);
        argument_length(finding, 1, planning->value[TRADE_SEAM_BEARING]);
    }
}

void frame_bearings(struct planning *planning)
{
    for (size_t i = 0; i < planning->plan->panels.count; i++) {
        struct panel *panel = &planning->plan->panels.at[i];
        const struct box *box = MODEL_FIND(planning->model, box, panel->box);
        struct wood wood = wood_behind(planning, panel);

        if (box->frame == FRAME_BOARD)
            add_wood_under_board(planning, box, panel, &wood);
        check_span(planning, panel, &wood);
        if (box->frame != FRAME_BOARD)
            check_seams(planning, panel, &wood);
    }
}
