#include "draw/drawing.h"

#include "plan/curve.h"
#include "plan/geometry.h"
#include "plan/hole.h"
#include "plan/padding.h"
#include "plan/pose.h"

#define CHORDS 24 /* that an outline is drawn with */

struct sketch {
    struct drawing *drawing;
    const struct plan *plan;
    const struct box *box;
    int64_t side;
    struct arena *arena;
};

/* What reaches over the face is cut off there; what lies beside it, as a run of a cover that goes
 * on over the next box, is no part of it. */
static void add_mark(const struct sketch *sketch, enum mark_kind kind, struct area area)
{
    area = area_cut(&area, &sketch->drawing->bounds);
    if (area.u0 > area.u1 || area.v0 > area.v1)
        return;
    *LIST_ADD(sketch->arena, &sketch->drawing->marks) = (struct mark){kind, area};
}

/* A line of any slope, which lies on the face as it is. */
static void add_slope(const struct sketch *sketch, const struct area *line)
{
    *LIST_ADD(sketch->arena, &sketch->drawing->marks) = (struct mark){MARK_EDGE, *line};
}

/* Whether the near side of a member is nearer to this face than to the opposite one. */
static bool lies_behind(const struct sketch *sketch, const struct plan_member *member)
{
    int axis = side_axis(sketch->side);
    int64_t depth = vector_along(box_size(sketch->box), axis);
    int64_t low = vector_along(member->solid.low, axis);
    int64_t high = vector_along(member->solid.high, axis);
    int64_t gap = side_sign(sketch->side) > 0 ? depth - high : low;

    return 2 * gap < depth;
}

/* Where an upright line that goes up to v ends: at the outline, where that lies lower. */
static int64_t end_of(const struct sketch *sketch, int64_t u, int64_t v)
{
    struct area face = face_area(sketch->box, sketch->side);
    int64_t at = length_larger(face.u0, length_smaller(u, face.u1)) - face.u0;

    if (!curve_has(sketch->box, sketch->side))
        return v;
    return length_smaller(v, face.v0 + curve_height(sketch->plan->facts, sketch->box, at));
}

/* The sides of an outline that are not sides of the face. */
static void add_inner_sides(const struct sketch *sketch, enum mark_kind kind, const struct area *at)
{
    struct area face = face_area(sketch->box, sketch->side);
    const struct area sides[] = {{at->u0, at->v0, at->u0, end_of(sketch, at->u0, at->v1)},
                                 {at->u1, at->v0, at->u1, end_of(sketch, at->u1, at->v1)},
                                 {at->u0, at->v0, at->u1, at->v0},
                                 {at->u0, at->v1, at->u1, at->v1}};
    const bool inner[] = {
        (at->u0 > face.u0),
        (at->u1 < face.u1),
        (at->v0 > face.v0),
        (at->v1 < face.v1),
    };

    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        if (inner[i])
            add_mark(sketch, kind, sides[i]);
    }
}

static void add_panel(const struct sketch *sketch, const struct panel *panel)
{
    bool cut = end_of(sketch, panel->area.u0, panel->area.v1) < panel->area.v1 ||
               end_of(sketch, panel->area.u1, panel->area.v1) < panel->area.v1;

    if (!cut) /* else the outline shows where it ends */
        add_mark(sketch, MARK_PANEL, panel->area);
    add_inner_sides(sketch, MARK_SEAM, &panel->area);
}

static void add_wood(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        if (panel->box == sketch->box->key && panel->side == sketch->side)
            add_panel(sketch, panel);
    }
    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];
        if (member->box == sketch->box->key && lies_behind(sketch, member))
            add_mark(sketch, MARK_MEMBER, solid_on_side(&member->solid, sketch->side));
    }
}

/* ---- webbing ---- */

static int64_t part_way(int64_t from, int64_t to, int64_t half, int64_t of)
{
    return from + whole_divide_even((to - from) * half, 2 * of);
}

static void add_webbing(const struct sketch *sketch, const struct webbing *web,
                        const struct area *area)
{
    for (int64_t i = 0; i < web->up; i++) {
        int64_t u = part_way(area->u0, area->u1, 2 * i + 1, web->up);

        add_mark(sketch, MARK_WEB, (struct area){u, area->v0, u, area->v1});
    }
    for (int64_t i = 0; i < web->across; i++) {
        int64_t v = part_way(area->v0, area->v1, 2 * i + 1, web->across);

        add_mark(sketch, MARK_WEB, (struct area){area->u0, v, area->u1, v});
    }
}

static void add_webbings(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;

    for (size_t i = 0; i < plan->webbings.count; i++) {
        const struct webbing *web = &plan->webbings.at[i];
        const struct facing *facing = MODEL_FIND(plan->facts, facing, web->facing);
        struct area face = face_area(sketch->box, sketch->side);

        if (!facing || web->box != sketch->box->key || web->side != sketch->side)
            continue;
        struct area given = {facing->u, facing->v,
                             facing->width ? facing->u + facing->width : face.u1,
                             facing->height ? facing->v + facing->height : face.v1};
        given = area_cut(&given, &face);
        add_webbing(sketch, web, &given);
    }
}

/* ---- layers: of this box, and of a joined group that it is part of ---- */

static bool lies_here(const struct sketch *sketch, const struct layer *layer)
{
    int64_t on = layer_side_on(sketch->plan, layer, sketch->box->key);

    return on >= 0 && (on == sketch->side || (layer->both && side_opposite(on) == sketch->side));
}

/* Another box's face in the u and v of this one's; empty where the two do not lie alike. */
static struct area area_beside(const struct sketch *sketch, const struct box *box)
{
    const struct pose *pose = plan_pose(sketch->plan, box->key);
    const struct pose *own = plan_pose(sketch->plan, sketch->box->key);
    struct area area = face_area(box, sketch->side);
    int64_t u, v;

    if (!pose || !own || pose->with != own->with || pose->turn != own->turn ||
        !poses_agree(pose, own))
        return (struct area){0};
    box_to_face(sketch->side,
                pose_across(pose, box, own, sketch->box, face_to_box(box, sketch->side, 0, 0)), &u,
                &v);
    return (struct area){u, v, u + area.u1, v + area.v1};
}

/* All that a layer lies on, in the u and v of this face. */
static struct area ground_of(const struct sketch *sketch, const struct layer *layer)
{
    const struct model *model = sketch->plan->facts;
    struct area ground = face_area(sketch->box, sketch->side);

    for (size_t i = 0; i < model->group_boxes.count && !layer->box; i++) {
        const struct group_box *item = &model->group_boxes.at[i];
        const struct box *box = MODEL_FIND(model, box, item->box);

        if (item->group != layer->group || !box || box == sketch->box)
            continue;
        struct area beside = area_beside(sketch, box);
        if (area_empty(&beside))
            continue;
        ground.u0 = length_smaller(ground.u0, beside.u0);
        ground.v0 = length_smaller(ground.v0, beside.v0);
        ground.u1 = length_larger(ground.u1, beside.u1);
        ground.v1 = length_larger(ground.v1, beside.v1);
    }
    return ground;
}

static struct area layer_here(const struct sketch *sketch, const struct layer *layer)
{
    struct area ground = ground_of(sketch, layer);
    int64_t u = ground.u0 + layer->u;
    int64_t v = ground.v0 + layer->v;
    struct area given = {u, v, layer->width ? u + layer->width : ground.u1,
                         layer->height ? v + layer->height : ground.v1};

    return area_cut(&given, &ground);
}

static void add_padding(const struct sketch *sketch)
{
    const struct model *model = sketch->plan->facts;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (lies_here(sketch, layer)) {
            struct area area = layer_here(sketch, layer);
            add_inner_sides(sketch, MARK_PADDING, &area);
        }
    }
}

/* ---- the cover: seams between its widths, buttons ---- */

/* A seam across or up the layer, `from` its left or bottom. */
static void add_cloth_seam(const struct sketch *sketch, const struct cover *cover,
                           const struct area *layer, int64_t from)
{
    struct area up = {layer->u0 + from, layer->v0, layer->u0 + from,
                      end_of(sketch, layer->u0 + from, layer->v1)};
    struct area across = {layer->u0, layer->v0 + from, layer->u1, layer->v0 + from};

    add_mark(sketch, MARK_CLOTH_SEAM, cover->railroaded ? across : up);
}

/* How far the middle of the nth width to the right lies from the middle of the middle width. */
static int64_t width_aside(const struct plan *plan, const struct cover *cover, int nth)
{
    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        if (piece->layer == cover->layer && piece->nth == nth)
            return piece->aside;
    }
    return 0;
}

/*
 * Seams stand alone, each at its own place, or in pairs, one on each side of the middle. Of pairs
 * the plan gives the first; from a seam to the next one out the middle of the width between them is
 * half the way.
 */
static void add_cloth_seams(const struct sketch *sketch, const struct cover *cover,
                            const struct area *layer)
{
    int64_t middle = (cover->railroaded ? area_height(layer) : area_width(layer)) / 2;
    int64_t out = cover->seam;

    for (int i = 0; i < cover->seams && cover->alone; i++)
        add_cloth_seam(sketch, cover, layer, cover->alone[i]);
    if (cover->alone)
        return;
    for (int nth = 1; nth <= cover->seams / 2 && out > 0; nth++) {
        add_cloth_seam(sketch, cover, layer, middle - out);
        add_cloth_seam(sketch, cover, layer, middle + out);
        out = 2 * width_aside(sketch->plan, cover, nth) - out;
    }
}

static void add_cloth(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;

    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);
        if (!layer || !lies_here(sketch, layer))
            continue;
        struct area area = layer_here(sketch, layer);
        add_cloth_seams(sketch, cover, &area);
    }
}

static void add_buttons(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;

    for (size_t i = 0; i < plan->tufts.count; i++) {
        const struct tuft *tuft = &plan->tufts.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, tuft->layer);
        if (layer && layer->box == sketch->box->key && layer->side == sketch->side)
            add_mark(sketch, MARK_BUTTON, (struct area){tuft->u, tuft->v, tuft->u, tuft->v});
    }
}

/* Where a part of an edge lies on the face. */
static struct area part_on_face(const struct sketch *sketch, const struct edge_part *part)
{
    struct area face = face_area(sketch->box, sketch->side);

    switch (part->edge) {
    case EDGE_LEFT:
        return (struct area){face.u0, part->from, face.u0, part->to};
    case EDGE_RIGHT:
        return (struct area){face.u1, part->from, face.u1, part->to};
    case EDGE_TOP:
        return (struct area){part->from, face.v1, part->to, face.v1};
    default:
        return (struct area){part->from, face.v0, part->to, face.v0};
    }
}

static void add_opening(const struct sketch *sketch, const struct interval *interval)
{
    struct edge_part part;

    for (int i = 0; i < EDGE_COUNT; i++) {
        if (hole_part(sketch->plan, interval, i, &part) && part.edge >= 0)
            add_mark(sketch, MARK_OPEN, part_on_face(sketch, &part));
    }
}

static void add_openings(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;

    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];
        const struct edge *edge = &plan->edges.at[interval->edge];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, edge->layer);

        if (interval->pass != STAPLED_AT_BENCH && layer && edge->box == sketch->box->key &&
            layer->side == sketch->side)
            add_opening(sketch, interval);
    }
}

static void add_point(const struct sketch *sketch, struct vector in_box, bool head)
{
    int64_t u, v;

    box_to_face(sketch->side, in_box, &u, &v);
    add_mark(sketch, head ? MARK_POINT : MARK_TIP, (struct area){u, v, u, v});
}

/* A hole shows on the two faces that meet, and on the face where its head goes in; on the side that
 * the screw only bites in as a tip. */
static void add_points(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;
    int64_t box = sketch->box->key;

    for (size_t i = 0; i < plan->points.count; i++) {
        const struct plan_point *point = &plan->points.at[i];
        const struct join *join = MODEL_FIND(plan->facts, join, point->join);
        const struct junction *junction = plan_junction(plan, point->join);
        bool has_head = junction->head_box == box;
        bool head_face = !junction->head_inside && has_head && junction->head_side == sketch->side;

        if (join->box_a == box && (join->side_a == sketch->side || head_face))
            add_point(sketch, point->in_a, has_head);
        else if (join->target == TARGET_BOX && join->box_b == box &&
                 (join->side_b == sketch->side || head_face))
            add_point(sketch, point->in_b, has_head);
    }
}

/* Slits lie where the boxes meet, round points that show there anyway. */
static bool is_here(const struct sketch *sketch, const struct patch *patch)
{
    return !patch->slit && patch->box == sketch->box->key && patch->side == sketch->side;
}

static void add_patches(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;

    for (size_t i = 0; i < plan->patches.count; i++) {
        const struct patch *patch = &plan->patches.at[i];
        int64_t reach = patch->diameter / 2;

        if (is_here(sketch, patch))
            add_mark(sketch, MARK_PATCH,
                     (struct area){patch->u - reach, patch->v - reach, patch->u + reach,
                                   patch->v + reach});
    }
}

/* The rectangle, or its foot with the outline over it. */
static void add_outline(const struct sketch *sketch)
{
    const struct area *face = &sketch->drawing->bounds;
    const struct model *model = sketch->plan->facts;
    struct spot_on_face {
        int64_t u, v;
    } from = {face->u0, face->v0};

    if (!curve_has(sketch->box, sketch->side)) {
        add_mark(sketch, MARK_FACE, *face);
        return;
    }
    for (int64_t i = 0; i <= CHORDS + 1; i++) {
        int64_t u = i > CHORDS ? face->u1 : part_way(face->u0, face->u1, 2 * i, CHORDS);
        int64_t v = i > CHORDS ? face->v0 : face->v0 + curve_height(model, sketch->box, u);

        add_slope(sketch, &(struct area){from.u, from.v, u, v});
        from = (struct spot_on_face){u, v};
    }
    add_slope(sketch, &(struct area){face->u0, face->v0, face->u1, face->v0});
}

void draw_face(struct drawing *drawing, const struct plan *plan, int64_t box, int64_t side,
               struct arena *arena)
{
    struct sketch sketch = {drawing, plan, MODEL_FIND(plan->facts, box, box), side, arena};

    *drawing = (struct drawing){0};
    if (!sketch.box)
        return;
    drawing->bounds = face_area(sketch.box, side);
    add_outline(&sketch);
    add_wood(&sketch);
    add_webbings(&sketch);
    add_padding(&sketch);
    add_cloth(&sketch);
    add_buttons(&sketch);
    add_openings(&sketch);
    add_patches(&sketch);
    add_points(&sketch);
}

/* ---- what is selected ---- */

static void add_limit(const struct sketch *sketch, const struct area *at)
{
    const struct area sides[] = {{at->u0, at->v0, at->u0, at->v1},
                                 {at->u1, at->v0, at->u1, at->v1},
                                 {at->u0, at->v0, at->u1, at->v0},
                                 {at->u0, at->v1, at->u1, at->v1}};

    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
        add_mark(sketch, MARK_LIMIT, sides[i]);
}

static void limit_layer(struct sketch *sketch, int64_t key)
{
    const struct layer *layer = MODEL_FIND(sketch->plan->facts, layer, key);

    if (!layer || (layer->side != sketch->side && !layer->both))
        return;
    sketch->box = MODEL_FIND(sketch->plan->facts, box, layer->box);
    if (!sketch->box)
        return;
    struct area area = layer_area(sketch->box, sketch->side, layer);
    if (!area_empty(&area))
        add_limit(sketch, &area);
}

/* A facing may be several panels. */
static void limit_facing(const struct sketch *sketch, int64_t key)
{
    for (size_t i = 0; i < sketch->plan->panels.count; i++) {
        const struct panel *panel = &sketch->plan->panels.at[i];
        if (panel->facing == key && panel->side == sketch->side)
            add_limit(sketch, &panel->area);
    }
}

static void limit_cutout(const struct sketch *sketch, int64_t key)
{
    const struct cutout *cutout = MODEL_FIND(sketch->plan->facts, cutout, key);

    if (cutout && cutout->side == sketch->side)
        add_limit(sketch, &(struct area){cutout->u, cutout->v, cutout->u + cutout->width,
                                         cutout->v + cutout->height});
}

void draw_face_limit(struct drawing *drawing, const struct plan *plan, int64_t side,
                     enum entity_kind kind, int64_t key, struct arena *arena)
{
    struct sketch sketch = {drawing, plan, NULL, side, arena};

    if (kind == ENTITY_layer)
        limit_layer(&sketch, key);
    else if (kind == ENTITY_facing)
        limit_facing(&sketch, key);
    else if (kind == ENTITY_cutout)
        limit_cutout(&sketch, key);
}
