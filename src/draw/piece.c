/*
 * What a plan holds as bodies before the eye.
 *
 * 1  Closed, the piece is one body a box, with the padding that lies on its faces; a box is its
 *    members, panels and layers. Apart, the piece shows the wood of its boxes, each box moved along
 *    its joins; of a box panels and layers are lifted off square to their faces, each layer by one
 *    gap more than what it lies on.
 * 2  The eye looks down on a corner so that the room's three axes are shortened alike; the picture
 *    is stretched so that they are not shortened at all.
 * 3  A body is a block of its box, cut along the outline of the main face, or bent over it.
 * 4  What is chosen is hatched, and its hidden edges are dotted, so that it shows wherever it is.
 */
#include "draw/piece.h"

#include "base/show.h"
#include "draw/apart.h"
#include "draw/hidden.h"
#include "draw/profile.h"
#include "plan/curve.h"
#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/padding.h"
#include "plan/slices.h"

#include <math.h>

#define HALF_ROOT_3 0.86602540378443865
#define HALF_ROOT_2 0.70710678118654752

/* Cloth is drawn as thick as this, so that it has two sides. */
#define CLOTH_DRAWN FIELDS_MM(2)

/* Parts of the largest size: gap of boxes taken apart, of panels and layers, of hatching. */
#define GAP_OF_BOXES 5
#define GAP_OF_LAYERS 4
#define HATCHES 16

struct view_of {
    struct drawing *drawing;
    const struct plan *plan;
    const struct piece_ask *ask;
    struct spot *ways; /* of boxes, by index */
    double gap;        /* that layers are lifted by */
    LIST_OF(struct body) bodies;
    struct arena *arena;
};

/* A box as it is drawn. */
struct stand {
    const struct box *box;
    const struct pose *pose;
    struct crown crown;
    struct spot corner, axes[AXIS_COUNT]; /* before the eye; axes by counts of length */
    struct spot way;
    bool chosen;
};

/* ---- the eye ---- */

static const struct heading {
    double x, y; /* from the middle of the piece to the corner */
    const char *words;
} headings[CORNER_COUNT] = {
    [CORNER_FRONT_RIGHT] = {1, 1, "front right"},
    [CORNER_BACK_RIGHT] = {1, -1, "back right"},
    [CORNER_BACK_LEFT] = {-1, -1, "back left"},
    [CORNER_FRONT_LEFT] = {-1, 1, "front left"},
};

const char *piece_corner_words(enum corner corner)
{
    return headings[corner].words;
}

static struct spot before_eye(const struct view_of *view, const struct spot *room)
{
    const struct heading *heading = &headings[view->ask->corner];
    double x = room->at[0];
    double y = room->at[1];
    double z = room->at[2];
    double towards = heading->x * x + heading->y * y;

    return (struct spot){{HALF_ROOT_3 * (heading->y * x - heading->x * y), z - towards / 2,
                          HALF_ROOT_2 * (towards + z)}};
}

static struct spot spot_of(struct vector at)
{
    return (struct spot){{(double)at.x, (double)at.y, (double)at.z}};
}

static struct spot sum_of(const struct spot *a, const struct spot *b, double times)
{
    return (struct spot){
        {a->at[0] + times * b->at[0], a->at[1] + times * b->at[1], a->at[2] + times * b->at[2]}};
}

/* A place of a box in the room, as far as the box is moved. */
static struct spot in_room(const struct stand *stand, struct vector at)
{
    struct spot room = spot_of(pose_to_room(stand->pose, stand->box, at));

    return sum_of(&room, &stand->way, 1);
}

static void on_picture(const struct view_of *view, const struct spot *room, int64_t *ret_u,
                       int64_t *ret_v)
{
    struct spot eye = before_eye(view, room);

    *ret_u = llround(eye.at[0]);
    *ret_v = llround(eye.at[1]);
}

/* ---- bodies ---- */

/* So long that rounding a place of the room does not show. */
#define AXIS_LENGTH (INT64_C(1) << 20)

static void set_axes(const struct view_of *view, struct stand *stand)
{
    struct spot origin = in_room(stand, (struct vector){0, 0, 0});

    stand->corner = before_eye(view, &origin);
    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        struct vector at = {0, 0, 0};
        struct spot end;

        vector_set(&at, axis, AXIS_LENGTH);
        end = in_room(stand, at);
        end = before_eye(view, &end);
        for (int i = 0; i < 3; i++)
            stand->axes[axis].at[i] = (end.at[i] - stand->corner.at[i]) / (double)AXIS_LENGTH;
    }
}

/* A place of the main face, `deep` along its axis and lifted, before the eye. */
static struct spot place_before_eye(const struct stand *stand, const struct chain_place *place,
                                    int64_t deep, const struct spot *lift)
{
    int64_t side = stand->box->main_side;
    struct spot at = sum_of(&stand->corner, &stand->axes[side_u_axis(side)], (double)place->u);

    at = sum_of(&at, &stand->axes[side_v_axis(side)], (double)place->v);
    at = sum_of(&at, &stand->axes[side_axis(side)], (double)deep);
    return sum_of(&at, lift, 1);
}

static struct station *stations_of(const struct view_of *view, const struct stand *stand,
                                   const struct profile *profile, int64_t deep,
                                   const struct spot *lift)
{
    struct station *stations = ARENA_MANY(view->arena, struct station, profile->of.count);

    for (size_t i = 0; i < profile->of.count; i++) {
        const struct profile_place *place = &profile->of.at[i];

        stations[i] = (struct station){place_before_eye(stand, &place->low, deep, lift),
                                       place_before_eye(stand, &place->high, deep, lift),
                                       place->low.corner, place->high.corner};
    }
    return stations;
}

/* What lies on a side, `lift` further out from it. */
static struct spot lift_before_eye(const struct stand *stand, int64_t side, double lift)
{
    struct spot none = {{0, 0, 0}};

    return sum_of(&none, &stand->axes[side_axis(side)], lift * side_sign(side));
}

/* A block of a box that lies on a side, `lift` further out from that. */
static void add_lifted(struct view_of *view, const struct stand *stand, const struct solid *solid,
                       int64_t side, double lift, bool chosen)
{
    int axis = side_axis(stand->box->main_side);
    struct spot none = {{0, 0, 0}};
    struct spot out = lift_before_eye(stand, side, lift);
    struct profile profile = curve_under(stand->box, side)
                                 ? profile_bent(&stand->crown, solid, view->arena)
                                 : profile_cut(&stand->crown, solid, view->arena);

    if (profile.of.count == 0)
        return;
    *LIST_ADD(view->arena, &view->bodies) = (struct body){
        stations_of(view, stand, &profile, vector_along(solid->low, axis), &out), profile.of.count,
        sum_of(&none, &stand->axes[axis], (double)solid_size(solid, axis)),
        chosen || stand->chosen};
}

/* One that lies within it. */
static void add_block(struct view_of *view, const struct stand *stand, const struct solid *solid,
                      bool chosen)
{
    add_lifted(view, stand, solid, stand->box->main_side, 0, chosen);
}

static bool is_chosen(const struct view_of *view, enum entity_kind kind, int64_t key)
{
    return key && view->ask->chosen == kind && view->ask->key == key;
}

static void label_at(struct view_of *view, const struct spot *room, const char *name)
{
    char safe[PLAN_LABEL];
    struct label *label = LIST_ADD(view->arena, &view->drawing->labels);

    on_picture(view, room, &label->u, &label->v);
    label->text = arena_text(view->arena, show_into(safe, sizeof safe, name));
}

static struct vector middle_of(const struct solid *solid)
{
    return (struct vector){(solid->low.x + solid->high.x) / 2, (solid->low.y + solid->high.y) / 2,
                           (solid->low.z + solid->high.z) / 2};
}

/* ---- a box's wood ---- */

static double lift_of_panels(const struct view_of *view)
{
    return view->ask->apart && view->ask->box ? view->gap : 0;
}

/* Of a chosen box the panels are hatched: its members would be a thicket. */
static void add_members(struct view_of *view, const struct stand *stand)
{
    struct slice slice = plan_members_of(view->plan, stand->box->key);
    struct slice panels = plan_panels_of(view->plan, stand->box->key);
    struct stand one = *stand;

    one.chosen = stand->chosen && panels.from == panels.to;
    for (size_t i = slice.from; i < slice.to; i++) {
        const struct plan_member *member = &view->plan->members.at[i];
        add_block(view, &one, &member->solid, is_chosen(view, ENTITY_member, member->by_hand));
    }
}

static void add_panels(struct view_of *view, const struct stand *stand)
{
    struct slice slice = plan_panels_of(view->plan, stand->box->key);

    for (size_t i = slice.from; i < slice.to; i++) {
        const struct panel *panel = &view->plan->panels.at[i];
        bool chosen = is_chosen(view, ENTITY_facing, panel->facing);
        double lift = stand->box->frame == FRAME_BOARD ? 0 : lift_of_panels(view);

        add_lifted(view, stand, &panel->solid, panel->side, lift, chosen);
        if (lift > 0) {
            struct spot at = in_room(stand, middle_of(&panel->solid));
            struct spot normal = spot_of(pose_normal(stand->pose, panel->side));
            at = sum_of(&at, &normal, lift / (double)POSE_ONE);
            label_at(view, &at, panel->label);
        }
    }
}

static bool has_wood(const struct view_of *view, int64_t box)
{
    struct slice members = plan_members_of(view->plan, box);
    struct slice panels = plan_panels_of(view->plan, box);

    return members.from < members.to || panels.from < panels.to;
}

static void add_whole(struct view_of *view, const struct stand *stand)
{
    struct solid whole = {{0, 0, 0}, box_size(stand->box)};

    add_block(view, stand, &whole, false);
}

static void add_wood(struct view_of *view, const struct stand *stand)
{
    if (!has_wood(view, stand->box->key)) {
        add_whole(view, stand);
        return;
    }
    add_members(view, stand);
    add_panels(view, stand);
}

/* ---- its layers ---- */

/* What lies on a face, layer by layer from the wood outward. */
struct stack {
    int64_t side;
    int64_t height; /* of all that is on it */
    int layers;     /* and how many they are */
};

static struct solid block_over(const struct stand *stand, int64_t side, const struct area *area,
                               int64_t from, int64_t to)
{
    return solid_behind(stand->box, side, area, -to, -from);
}

static void add_coat(struct view_of *view, const struct stand *stand, const struct layer *layer,
                     struct stack *stack)
{
    struct area area = layer_area(stand->box, stack->side, layer);
    int64_t thick = length_larger(layer_thickness(view->plan, layer), CLOTH_DRAWN);
    struct solid solid =
        block_over(stand, stack->side, &area, stack->height, stack->height + thick);
    bool lifts = view->ask->apart && view->ask->box;
    double lift = lifts ? view->gap * (stack->layers + 2) : 0;

    if (area_empty(&area))
        return;
    add_lifted(view, stand, &solid, stack->side, lift, is_chosen(view, ENTITY_layer, layer->key));
    if (lifts) {
        struct spot at = in_room(stand, middle_of(&solid));
        struct spot normal = spot_of(pose_normal(stand->pose, stack->side));
        at = sum_of(&at, &normal, lift / (double)POSE_ONE);
        label_at(view, &at, drawing_word(words_layer.at[layer->kind].name, view->arena));
    }
    stack->height += thick;
    stack->layers++;
}

/* Cloth would hide the seams of the wood and is as good as nothing to see: closed, a box shows it
 * only where it is chosen, as the wood of the piece taken apart does any layer. */
static bool shows_layer(const struct view_of *view, const struct layer *layer)
{
    if (layer->shape == SHAPE_RUN)
        return false;
    if (is_chosen(view, ENTITY_layer, layer->key))
        return true;
    return view->ask->box ? view->ask->apart || !drape_is_cloth(layer)
                          : !view->ask->apart && !drape_is_cloth(layer);
}

static void add_on_side(struct view_of *view, const struct stand *stand, int64_t side)
{
    const struct model *model = view->plan->facts;
    struct stack stack = {.side = side};

    for (int64_t rank = 0; rank <= LAYER_RANK_MOST; rank++) {
        for (size_t i = 0; i < model->layers.count; i++) {
            const struct layer *layer = &model->layers.at[i];
            int64_t on =
                layer->rank == rank ? layer_side_on(view->plan, layer, stand->box->key) : -1;

            if (on < 0 || !shows_layer(view, layer))
                continue;
            if (on == side || (layer->both && side_opposite(on) == side))
                add_coat(view, stand, layer, &stack);
        }
    }
}

static void add_layers(struct view_of *view, const struct stand *stand)
{
    for (int64_t side = 0; side < SIDE_COUNT; side++)
        add_on_side(view, stand, side);
}

/* ---- screws of a join ---- */

static void add_point_mark(struct view_of *view, enum mark_kind kind, const struct spot *room)
{
    struct mark *mark = LIST_ADD(view->arena, &view->drawing->marks);

    mark->kind = kind;
    on_picture(view, room, &mark->area.u0, &mark->area.v0);
    mark->area.u1 = mark->area.u0;
    mark->area.v1 = mark->area.v0;
}

static bool is_of_join(const struct join *join, int64_t box)
{
    return box == join->box_a || (join->target == TARGET_BOX && box == join->box_b);
}

static bool is_chosen_point(const struct view_of *view, const struct plan_point *point)
{
    const struct point *given = view->ask->chosen == ENTITY_point
                                    ? MODEL_FIND(view->plan->facts, point, view->ask->key)
                                    : NULL;

    return given && given->join == point->join && given->u == point->u && given->v == point->v;
}

/* Both holes of a point; a line between where the boxes are apart. */
static void add_hole(struct view_of *view, const struct stand *a, const struct stand *b,
                     const struct plan_point *point, bool head_in_b)
{
    struct spot in_a = in_room(a, point->in_a);

    add_point_mark(view, head_in_b ? MARK_TIP : MARK_POINT, &in_a);
    if (b->box) {
        struct spot in_b = in_room(b, point->in_b);
        struct mark *line;

        add_point_mark(view, head_in_b ? MARK_POINT : MARK_TIP, &in_b);
        line = LIST_ADD(view->arena, &view->drawing->marks);
        line->kind = MARK_BEHIND;
        on_picture(view, &in_a, &line->area.u0, &line->area.v0);
        on_picture(view, &in_b, &line->area.u1, &line->area.v1);
    }
    if (is_chosen_point(view, point))
        add_point_mark(view, MARK_CHOSEN, &in_a);
}

/* A box, or one that the chosen join holds, where the join's boxes are not alone. */
static bool is_chosen_box(const struct view_of *view, int64_t box)
{
    const struct join *join = view->ask->chosen == ENTITY_join && !view->ask->join
                                  ? MODEL_FIND(view->plan->facts, join, view->ask->key)
                                  : NULL;

    return is_chosen(view, ENTITY_box, box) || (join && is_of_join(join, box));
}

static struct stand stand_of(const struct view_of *view, int64_t box)
{
    size_t index = model_index(view->plan->facts, ENTITY_box, box);
    struct stand stand = {MODEL_FIND(view->plan->facts, box, box),
                          .pose = plan_pose(view->plan, box), .chosen = is_chosen_box(view, box)};

    if (stand.box) {
        stand.way = view->ways[index];
        stand.crown = crown_of(view->plan, stand.box, view->arena);
        set_axes(view, &stand);
    }
    return stand;
}

static void add_holes(struct view_of *view)
{
    const struct junction *junction = plan_junction(view->plan, view->ask->join);

    if (!junction)
        return;
    struct stand a = stand_of(view, junction->box_a);
    struct stand b = stand_of(view, junction->box_b);
    for (size_t i = 0; i < junction->point_count; i++)
        add_hole(view, &a, &b, &view->plan->points.at[junction->first_point + i],
                 junction->box_b && junction->head_box == junction->box_b);
}

/* ---- the picture ---- */

static bool shows_box(const struct view_of *view, int64_t box)
{
    const struct join *join = MODEL_FIND(view->plan->facts, join, view->ask->join);

    return join ? is_of_join(join, box) : !view->ask->box || view->ask->box == box;
}

/* The box whose wood the chosen item is. */
static int64_t box_of_wood(const struct view_of *view)
{
    const struct model *model = view->plan->facts;
    const struct facing *facing =
        view->ask->chosen == ENTITY_facing ? MODEL_FIND(model, facing, view->ask->key) : NULL;
    const struct member *member =
        view->ask->chosen == ENTITY_member ? MODEL_FIND(model, member, view->ask->key) : NULL;

    return facing ? facing->box : member ? member->box : 0;
}

static void add_box(struct view_of *view, const struct stand *stand)
{
    struct solid whole = {{0, 0, 0}, box_size(stand->box)};
    bool alone = view->ask->box || view->ask->join;

    if (alone || view->ask->apart || box_of_wood(view) == stand->box->key)
        add_wood(view, stand);
    else
        add_whole(view, stand);
    if (!view->ask->join)
        add_layers(view, stand);
    if (!view->ask->box) {
        struct spot at = in_room(stand, middle_of(&whole));
        label_at(view, &at, stand->box->name);
    }
}

static double largest_size(const struct view_of *view)
{
    const struct model *model = view->plan->facts;
    int64_t largest = 1;

    for (size_t i = 0; i < model->boxes.count; i++) {
        struct vector size = box_size(&model->boxes.at[i]);
        if (shows_box(view, model->boxes.at[i].key))
            largest = length_larger(largest, length_larger(size.x, length_larger(size.y, size.z)));
    }
    return (double)largest;
}

static void stretch(struct area *bounds, int64_t u, int64_t v)
{
    bounds->u0 = length_smaller(bounds->u0, u);
    bounds->u1 = length_larger(bounds->u1, u);
    bounds->v0 = length_smaller(bounds->v0, v);
    bounds->v1 = length_larger(bounds->v1, v);
}

static void set_bounds(struct drawing *drawing)
{
    const struct mark *first = drawing->marks.at;

    if (drawing->marks.count)
        drawing->bounds =
            (struct area){first->area.u0, first->area.v0, first->area.u0, first->area.v0};
    for (size_t i = 0; i < drawing->marks.count; i++) {
        const struct area *area = &drawing->marks.at[i].area;
        stretch(&drawing->bounds, area->u0, area->v0);
        stretch(&drawing->bounds, area->u1, area->v1);
    }
    for (size_t i = 0; i < drawing->labels.count; i++)
        stretch(&drawing->bounds, drawing->labels.at[i].u, drawing->labels.at[i].v);
}

static void add_strokes(struct view_of *view, double hatch)
{
    static const enum mark_kind kinds[] = {
        [STROKE_EDGE] = MARK_EDGE, [STROKE_BEHIND] = MARK_BEHIND, [STROKE_HATCH] = MARK_HATCH};
    struct strokes strokes;

    hidden_strokes(&strokes, view->bodies.at, view->bodies.count, hatch, view->arena);
    for (size_t i = 0; i < strokes.of.count; i++) {
        const struct stroke *stroke = &strokes.of.at[i];
        *LIST_ADD(view->arena, &view->drawing->marks) =
            (struct mark){kinds[stroke->kind],
                          {llround(stroke->from.at[0]), llround(stroke->from.at[1]),
                           llround(stroke->to.at[0]), llround(stroke->to.at[1])}};
    }
}

void draw_piece(struct drawing *drawing, const struct plan *plan, const struct piece_ask *ask,
                struct arena *arena)
{
    const struct model *model = plan->facts;
    struct view_of view = {.drawing = drawing, .plan = plan, .ask = ask, .arena = arena};

    *drawing = (struct drawing){0};
    double size = largest_size(&view);
    view.gap = size / GAP_OF_LAYERS;
    view.ways = ARENA_MANY(arena, struct spot, model->boxes.count);
    apart_ways(view.ways, plan, size / GAP_OF_BOXES,
               ask->apart && !ask->box ? size / GAP_OF_BOXES : 0, arena);
    for (size_t i = 0; i < model->boxes.count; i++) {
        struct stand stand = stand_of(&view, model->boxes.at[i].key);
        if (shows_box(&view, stand.box->key))
            add_box(&view, &stand);
    }
    add_strokes(&view, size / HATCHES);
    add_holes(&view);
    set_bounds(drawing);
}

/* ---- what to ask ---- */

struct piece_ask piece_ask_of(const struct plan *plan, enum entity_kind kind, int64_t key)
{
    struct piece_ask ask = {.chosen = kind, .key = key};
    const struct point *point = kind == ENTITY_point ? MODEL_FIND(plan->facts, point, key) : NULL;

    if (kind == ENTITY_join)
        ask.join = key;
    if (point)
        ask.join = point->join;
    return ask;
}

enum corner piece_corner_of(const struct plan *plan, int64_t box, int64_t side)
{
    const struct pose *pose = plan_pose(plan, box);
    struct vector normal = pose ? pose_normal(pose, side) : (struct vector){0, 0, 0};
    bool left = normal.x < 0;
    bool back = normal.y < 0;

    if (back)
        return left ? CORNER_BACK_LEFT : CORNER_BACK_RIGHT;
    return left ? CORNER_FRONT_LEFT : CORNER_FRONT_RIGHT;
}
