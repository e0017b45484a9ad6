#include "draw/drawing.h"

#include "plan/geometry.h"
#include "plan/hole.h"
#include "plan/padding.h"

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

/* Members whose nearest side lies no deeper than the box's frame near this face. */
static bool lies_behind(const struct sketch *sketch, const struct plan_member *member)
{
    int axis = side_axis(sketch->side);
    int64_t depth = vector_along(box_size(sketch->box), axis);
    int64_t low = vector_along(member->solid.low, axis);
    int64_t high = vector_along(member->solid.high, axis);
    int64_t gap = side_sign(sketch->side) > 0 ? depth - high : low;

    return 2 * gap < depth;
}

/* The sides of an outline that are not sides of the face. */
static void add_inner_sides(const struct sketch *sketch, enum mark_kind kind, const struct area *at)
{
    struct area face = face_area(sketch->box, sketch->side);
    const struct area sides[] = {{at->u0, at->v0, at->u0, at->v1},
                                 {at->u1, at->v0, at->u1, at->v1},
                                 {at->u0, at->v0, at->u1, at->v0},
                                 {at->u0, at->v1, at->u1, at->v1}};
    const bool inner[] = {at->u0 > face.u0, at->u1<face.u1, at->v0> face.v0, at->v1 < face.v1};

    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        if (inner[i])
            add_mark(sketch, kind, sides[i]);
    }
}

static void add_panel(const struct sketch *sketch, const struct panel *panel)
{
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

static void add_padding(const struct sketch *sketch)
{
    const struct model *model = sketch->plan->facts;
    struct area face = face_area(sketch->box, sketch->side);

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        struct area area = {layer->u, layer->v, layer->width ? layer->u + layer->width : face.u1,
                            layer->height ? layer->v + layer->height : face.v1};

        area = area_cut(&area, &face);
        if (layer->box == sketch->box->key && layer->side == sketch->side)
            add_inner_sides(sketch, MARK_PADDING, &area);
    }
}

/* ---- the cover: seams between its widths, buttons ---- */

/* A seam across or up the layer, `from` its left or bottom. */
static void add_cloth_seam(const struct sketch *sketch, const struct cover *cover,
                           const struct area *layer, int64_t from)
{
    struct area up = {layer->u0 + from, layer->v0, layer->u0 + from, layer->v1};
    struct area across = {layer->u0, layer->v0 + from, layer->u1, layer->v0 + from};

    add_mark(sketch, MARK_CLOTH_SEAM, cover->railroaded ? across : up);
}

static void add_cloth_seams(const struct sketch *sketch, const struct cover *cover,
                            const struct area *layer)
{
    int64_t middle = (cover->railroaded ? area_height(layer) : area_width(layer)) / 2;

    if (cover->seams == 1) {
        add_cloth_seam(sketch, cover, layer, cover->alone);
    } else if (cover->seam) {
        add_cloth_seam(sketch, cover, layer, middle - cover->seam);
        add_cloth_seam(sketch, cover, layer, middle + cover->seam);
    }
}

static void add_cloth(const struct sketch *sketch)
{
    const struct plan *plan = sketch->plan;

    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);
        if (!layer || layer->box != sketch->box->key || layer->side != sketch->side)
            continue;
        struct area area = layer_area(sketch->box, sketch->side, layer);
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

void draw_face(struct drawing *drawing, const struct plan *plan, int64_t box, int64_t side,
               struct arena *arena)
{
    struct sketch sketch = {drawing, plan, MODEL_FIND(plan->facts, box, box), side, arena};

    *drawing = (struct drawing){0};
    if (!sketch.box)
        return;
    drawing->bounds = face_area(sketch.box, side);
    add_mark(&sketch, MARK_FACE, drawing->bounds);
    add_wood(&sketch);
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

const char *drawing_word(const char *word, struct arena *arena)
{
    char *shown = arena_text(arena, word);

    for (char *at = shown; *at; at++)
        *at = *at == '_' ? ' ' : *at;
    return shown;
}

bool drawing_has(const struct drawing *drawing, enum mark_kind kind)
{
    for (size_t i = 0; i < drawing->marks.count; i++) {
        if (drawing->marks.at[i].kind == kind)
            return true;
    }
    return false;
}
