/*
 * A member backs a face where it lies flush with it, or where it ends just behind a panel fixed
 * there. So each member gives one piece of backing, or one for every panel in front of it: their
 * seams cut it, and whoever wants runs puts the pieces together again.
 */
#include "plan/backing.h"

#include "plan/geometry.h"
#include "plan/slices.h"
#include "plan/wood.h"

#include <assert.h>

struct backing_list {
    LIST_OF(struct backing) pieces;
};

int64_t backing_near(const struct box *box, int64_t side, const struct solid *solid)
{
    int axis = side_axis(side);

    return side_sign(side) > 0 ? vector_along(box_size(box), axis) - vector_along(solid->high, axis)
                               : vector_along(solid->low, axis);
}

int64_t backing_far(const struct box *box, int64_t side, const struct solid *solid)
{
    return backing_near(box, side, solid) + solid_size(solid, side_axis(side));
}

static bool is_board(const struct planning *planning, int64_t box)
{
    const struct box *entry = MODEL_FIND(planning->model, box, box);

    return entry && entry->frame == FRAME_BOARD;
}

bool backing_is_skin(const struct planning *planning, const struct panel *panel)
{
    return !panel->loose && !is_board(planning, panel->box);
}

static void add_piece(const struct planning *planning, struct backing_list *list,
                      struct backing piece)
{
    if (!area_empty(&piece.area))
        *LIST_ADD(planning->arena, &list->pieces) = piece;
}

static bool panel_is_glued(const struct planning *planning, const struct panel *panel)
{
    const struct facing *facing = MODEL_FIND(planning->model, facing, panel->facing);

    return facing && facing->glued;
}

/* What of `piece` lies right behind a panel of its face. */
static void add_behind_panels(const struct planning *planning, struct backing_list *list,
                              int64_t box, int64_t side, struct backing piece)
{
    struct slice panels = plan_panels_of(planning->plan, box);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &planning->plan->panels.at[i];
        struct backing part = piece;

        if (panel->side != side || !backing_is_skin(planning, panel) ||
            panel->thickness != piece.near)
            continue;
        part.area = area_cut(&piece.area, &panel->area);
        part.glued = panel_is_glued(planning, panel);
        add_piece(planning, list, part);
    }
}

static void add_members(const struct planning *planning, struct backing_list *list,
                        const struct box *box, int64_t side)
{
    struct slice members = plan_members_of(planning->plan, box->key);

    for (size_t i = members.from; i < members.to; i++) {
        const struct plan_member *member = &planning->plan->members.at[i];
        struct backing piece = {.member = i};

        if (member_backs_edge(member))
            continue;
        piece.area = solid_on_side(&member->solid, side);
        piece.near = backing_near(box, side, &member->solid);
        piece.far = backing_far(box, side, &member->solid);
        piece.end_grain = member->axis == side_axis(side);
        if (piece.near == 0)
            add_piece(planning, list, piece);
        else
            add_behind_panels(planning, list, box->key, side, piece);
    }
}

static void add_board(const struct planning *planning, struct backing_list *list,
                      const struct box *box, int64_t side)
{
    struct slice panels = plan_panels_of(planning->plan, box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &planning->plan->panels.at[i];
        struct backing piece = {.member = PLAN_NONE};

        if (panel->loose)
            continue;
        piece.area = solid_on_side(&panel->solid, side);
        piece.near = backing_near(box, side, &panel->solid);
        piece.far = backing_far(box, side, &panel->solid);
        if (piece.near == 0)
            add_piece(planning, list, piece);
    }
}

struct backings backing_find(const struct planning *planning, int64_t box, int64_t side)
{
    const struct box *entry = MODEL_FIND(planning->model, box, box);
    struct backing_list list = {0};

    if (!entry)
        return (struct backings){box, side, NULL, 0};
    add_members(planning, &list, entry, side);
    if (entry->frame == FRAME_BOARD)
        add_board(planning, &list, entry, side);
    return (struct backings){box, side, list.pieces.at, list.pieces.count};
}

static bool is_better(const struct backing *piece, const struct backing *best)
{
    if (!best || piece->end_grain != best->end_grain)
        return !best || best->end_grain;
    return piece->far - piece->near > best->far - best->near;
}

const struct backing *backing_at(const struct backings *backings, int64_t u, int64_t v)
{
    const struct backing *best = NULL;

    for (size_t i = 0; i < backings->count; i++) {
        const struct backing *piece = &backings->at[i];

        assert(!area_empty(&piece->area));
        if (area_holds(&piece->area, u, v) && is_better(piece, best))
            best = piece;
    }
    return best;
}

static bool is_sat_on(const struct planning *planning, int64_t box, int64_t side)
{
    for (size_t i = 0; i < planning->model->facings.count; i++) {
        const struct facing *facing = &planning->model->facings.at[i];

        if (facing->box == box && facing->side == side && facing->use == USE_SEAT)
            return true;
    }
    return false;
}

bool backing_ends_soft(const struct planning *planning, int64_t box, int64_t side, int64_t far)
{
    const struct box *entry = MODEL_FIND(planning->model, box, box);
    int64_t other = side_opposite(side);
    const struct padding *padding = plan_padding(planning->plan, box, other);

    if (!entry || far < vector_along(box_size(entry), side_axis(side)))
        return false;
    return (padding && (padding->pad > 0 || padding->covered)) || is_sat_on(planning, box, other);
}
