/*
 * Mirror images.
 *
 * 1  Only what runs along x changes: u on the front, back, top and bottom, x of members, and which
 *    of left and right a side or an edge is. A left face has its u along y and keeps it.
 * 2  What reaches "to the end of the face" begins somewhere on it, so that its image has to say how
 *    far it reaches, unless it covers all.
 * 3  The image of a join follows from that of its box: faces are exchanged, and the offset along a
 *    mirrored axis is counted from the other end, to where the second box ends.
 */
#include "plan/mirror.h"

#include "plan/geometry.h"
#include "plan/slices.h"

#include <assert.h>

const enum entity_kind mirror_kinds[] = {ENTITY_face,          ENTITY_facing,  ENTITY_member,
                                         ENTITY_outline_point, ENTITY_cutout,  ENTITY_layer,
                                         ENTITY_layer_edge,    ENTITY_tufting, ENTITY_opening,
                                         ENTITY_fitting,       ENTITY_none};

/* ---- sides and edges ---- */

int64_t mirror_side(int64_t side, int axis)
{
    return side_axis(side) == axis ? side_opposite(side) : side;
}

int64_t mirror_edge(int64_t side, int64_t edge, int axis)
{
    static const int64_t across[EDGE_COUNT] = {[EDGE_LEFT] = EDGE_RIGHT,
                                               [EDGE_RIGHT] = EDGE_LEFT,
                                               [EDGE_TOP] = EDGE_TOP,
                                               [EDGE_BOTTOM] = EDGE_BOTTOM};

    assert(edge >= 0 && edge < EDGE_COUNT);
    return side_u_axis(side) == axis ? across[edge] : edge;
}

/* ---- places along x ---- */

/* A stretch from `at`, of `extent` or (0) to the end of `whole`, counted from the other end. */
static void mirror_stretch(int64_t *at, int64_t *extent, int64_t whole)
{
    int64_t reach = *extent > 0 ? *extent : whole - *at;
    int64_t begin = whole - *at - reach;

    *extent = begin + reach == whole ? 0 : reach;
    *at = begin;
}

static bool runs_along_x(int64_t side)
{
    return side_u_axis(side) == AXIS_X;
}

/* What lies on a face from u on over a width. */
static void mirror_on_face(int64_t *side, int64_t *u, int64_t *width, const struct box *box)
{
    if (runs_along_x(*side))
        mirror_stretch(u, width, box->width);
    *side = mirror_side(*side, AXIS_X);
}

static void mirror_layer(const struct box *box, struct layer *image)
{
    if (runs_along_x(image->side)) {
        int64_t left = image->left;

        image->left = image->right;
        image->right = left;
    }
    mirror_on_face(&image->side, &image->u, &image->width, box);
}

static const struct plan_member *member_as_made(const struct plan *plan, int64_t box,
                                                int64_t member)
{
    struct slice slice = plan_members_of(plan, box);

    for (size_t i = slice.from; i < slice.to; i++)
        if (plan->members.at[i].by_hand == member)
            return &plan->members.at[i];
    return NULL;
}

/* A member that begins inside another one begins so at the other end too: by as much as it reaches
 * in. One that was not made has no thickness yet. */
static void mirror_member(const struct plan *plan, const struct box *box,
                          const struct member *member, struct member *image)
{
    const struct plan_member *made = member_as_made(plan, box->key, member->key);
    int64_t end = made ? made->solid.high.x : member->x + member->length;
    int64_t inside = made ? made->solid.low.x - member->x : 0;

    image->x = length_larger(box->width - end - inside, 0);
}

/* A plate or a button lies about its place, a cleat runs on from it. */
static void mirror_fitting(const struct box *box, struct fitting *image)
{
    bool plate = image->kind == FITTING_LEG || image->kind == FITTING_GLIDE;
    int64_t length = plate ? 0 : image->length;
    bool at_corner = plate && image->u == 0 && image->v == 0;

    if (runs_along_x(image->side) && !at_corner && image->count == 1)
        image->u = length_larger(box->width - image->u - length, 0);
    image->side = mirror_side(image->side, AXIS_X);
}

static void mirror_opening(const struct box *box, int64_t side, struct opening *image)
{
    bool across = image->edge == EDGE_TOP || image->edge == EDGE_BOTTOM;

    if (across && runs_along_x(side))
        mirror_stretch(&image->begin, &image->length, box->width);
    image->edge = mirror_edge(side, image->edge, AXIS_X);
}

/* ---- a box and what hangs on it ---- */

void mirror_box(struct box *box)
{
    box->main_side = mirror_side(box->main_side, AXIS_X);
    if (box->lean_axis != AXIS_X)
        box->lean = -box->lean;
}

static int64_t layer_of(enum entity_kind kind, const void *item)
{
    const struct field *field = field_named(entity_of(kind), "layer");

    return field ? field_whole(field, item) : 0;
}

int64_t mirror_box_of(const struct model *model, enum entity_kind kind, const void *item)
{
    const struct field *field = field_named(entity_of(kind), "box");
    const struct layer *layer;

    if (field)
        return field_whole(field, item);
    layer = MODEL_FIND(model, layer, layer_of(kind, item));
    return layer ? layer->box : 0;
}

static int64_t side_of_layer(const struct plan *plan, enum entity_kind kind, const void *item)
{
    const struct layer *layer = MODEL_FIND(plan->facts, layer, layer_of(kind, item));

    return layer ? layer->side : SIDE_FRONT;
}

static void mirror_layer_edge(int64_t side, struct layer_edge *image)
{
    image->edge = mirror_edge(side, image->edge, AXIS_X);
}

static void mirror_face(struct face *image)
{
    image->side = mirror_side(image->side, AXIS_X);
}

static void mirror_facing(const struct box *box, struct facing *image)
{
    mirror_on_face(&image->side, &image->u, &image->width, box);
}

static void mirror_cutout(const struct box *box, struct cutout *image)
{
    mirror_on_face(&image->side, &image->u, &image->width, box);
}

static void mirror_corner(const struct box *box, struct outline_point *image)
{
    if (runs_along_x(box->main_side))
        image->u = length_larger(box->width - image->u, 0);
}

void mirror_item(const struct plan *plan, const struct box *box, enum entity_kind kind,
                 const void *item, void *image)
{
    switch (kind) {
    case ENTITY_face:
        mirror_face(image);
        break;
    case ENTITY_facing:
        mirror_facing(box, image);
        break;
    case ENTITY_member:
        mirror_member(plan, box, item, image);
        break;
    case ENTITY_outline_point:
        mirror_corner(box, image);
        break;
    case ENTITY_cutout:
        mirror_cutout(box, image);
        break;
    case ENTITY_layer:
        mirror_layer(box, image);
        break;
    case ENTITY_layer_edge:
        mirror_layer_edge(side_of_layer(plan, kind, item), image);
        break;
    case ENTITY_opening:
        mirror_opening(box, side_of_layer(plan, kind, item), image);
        break;
    case ENTITY_fitting:
        mirror_fitting(box, image);
        break;
    default:
        assert(kind == ENTITY_tufting); /* a field is the same from both ends */
        break;
    }
}

/* ---- pairs ---- */

int64_t mirror_twin(const struct model *model, int64_t box)
{
    const struct box *of = MODEL_FIND(model, box, box);

    if (of && of->mirror_of && of->mirror_of != box)
        return of->mirror_of;
    for (size_t i = 0; i < model->boxes.count; i++)
        if (model->boxes.at[i].mirror_of == box && model->boxes.at[i].key != box)
            return model->boxes.at[i].key;
    return 0;
}

bool mirror_is_image(const struct model *model, const struct box *box)
{
    const struct box *first = MODEL_FIND(model, box, box->mirror_of);

    return first && first != box && (first->mirror_of != box->key || first->key < box->key);
}

/* ---- what is laid out ---- */

void mirror_solid(const struct box *box, struct solid *solid)
{
    int64_t low = solid->low.x;

    solid->low.x = box->width - solid->high.x;
    solid->high.x = box->width - low;
}

void mirror_panel(const struct box *box, struct panel *panel)
{
    int64_t u0 = panel->area.u0;

    if (runs_along_x(panel->side)) {
        panel->area.u0 = box->width - panel->area.u1;
        panel->area.u1 = box->width - u0;
    }
    panel->side = mirror_side(panel->side, AXIS_X);
    mirror_solid(box, &panel->solid);
}

/* ---- joins ---- */

int mirror_axis(const struct plan *plan, const struct join *join, int64_t of)
{
    int64_t other = join->box_a == of ? join->box_b : join->box_a;
    const struct pose *pose = plan_pose(plan, other);

    return pose && pose->turn % 2 ? AXIS_Y : AXIS_X;
}

/* How far box b reaches along an axis of box a, by the sides that meet: upright sides turn it. */
static int64_t reach_along(const struct join *join, const struct box *box_b, int axis)
{
    bool upright = side_axis(join->side_a) != AXIS_Z && side_axis(join->side_b) != AXIS_Z;
    bool turned = upright && side_axis(join->side_a) != side_axis(join->side_b);
    int across = axis == AXIS_X ? AXIS_Y : AXIS_X;

    return vector_along(box_size(box_b), turned && axis != AXIS_Z ? across : axis);
}

/* Counts the offset that runs along the mirrored axis of the first box from its other end. */
static void mirror_offset(const struct join *join, const struct box *box_a, const struct box *box_b,
                          int axis, struct join *image)
{
    int64_t reach = box_b ? reach_along(join, box_b, axis) : 0;
    int64_t whole = vector_along(box_size(box_a), axis);

    if (!box_b)
        return;
    if (side_u_axis(join->side_a) == axis)
        image->offset_u = whole - join->offset_u - reach;
    if (side_v_axis(join->side_a) == axis)
        image->offset_v = whole - join->offset_v - reach;
}

bool mirror_join(const struct model *model, const struct join *join, int64_t of, int64_t twin,
                 int axis, struct join *image)
{
    bool first = join->box_a == of;
    int64_t other = join->target != TARGET_BOX ? 0 : first ? join->box_b : join->box_a;
    int64_t other_twin = other ? mirror_twin(model, other) : 0;
    const struct box *box_a = MODEL_FIND(model, box, join->box_a);
    const struct box *box_b = other ? MODEL_FIND(model, box, join->box_b) : NULL;
    int own_axis = AXIS_X; /* of the box `of` and of a box that has its image beside */
    int other_axis = other_twin ? AXIS_X : axis;

    assert(first || join->box_b == of);
    if (join->target == TARGET_OTHER_BUILD || other == twin || other == of)
        return false;
    mirror_offset(join, box_a, box_b, first ? own_axis : other_axis, image);
    image->box_a = first ? twin : other_twin ? other_twin : other;
    image->side_a = mirror_side(join->side_a, first ? own_axis : other_axis);
    if (other) {
        image->box_b = !first ? twin : other_twin ? other_twin : other;
        image->side_b = mirror_side(join->side_b, first ? other_axis : own_axis);
    }
    return image->box_a != image->box_b;
}
