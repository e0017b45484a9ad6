/*
 * What boxes weigh, who lifts them, and whether they pass the way into the room.
 *
 * 1  A box weighs its sticks, panels, fixings and all that is cut for it; what is sewn or stapled
 *    over several boxes is weighed on the box it was cut for.
 * 2  Boxes joined at the bench are carried as one through the house; boxes joined in the room, each
 *    by itself.
 * 3  Sizes are finished sizes: the wood with its padding.
 */
#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/passage.h"
#include "plan/pose.h"

#include <assert.h>

/* ---- weight ---- */

static int64_t share(int64_t a, int64_t b, int64_t c)
{
    int64_t result = 0;
    enum fault fault = whole_share(a, b, c, &result);

    assert(fault == FAULT_NONE); /* sizes and densities have ranges far below */
    (void)fault;
    return result;
}

static int64_t square_mm(int64_t a, int64_t b)
{
    return share(a, b, LENGTH_MM * LENGTH_MM);
}

/* mm3 times g/m3 is 1/1000000 mg. */
static int64_t mass_of_block(int64_t area, int64_t thickness, int64_t density)
{
    return share(share(area, thickness, LENGTH_MM), density, 1000000);
}

static int64_t density_of(const struct planning *planning, int64_t stock, enum trade standard)
{
    const struct stock *entry = MODEL_FIND(planning->model, stock, stock);

    return entry && entry->density > 0 ? entry->density : planning->value[standard];
}

static int64_t mass_of_member(const struct planning *planning, const struct plan_member *member)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, member->stock);
    bool hard = stock && stock->wood == WOOD_HARD;
    int64_t area =
        square_mm(solid_size(&member->solid, AXIS_X), solid_size(&member->solid, AXIS_Y));

    return mass_of_block(area, solid_size(&member->solid, AXIS_Z),
                         density_of(planning, member->stock,
                                    hard ? TRADE_WOOD_DENSITY_HARD : TRADE_WOOD_DENSITY_SOFT));
}

static int64_t mass_of_panel(const struct planning *planning, const struct panel *panel)
{
    int64_t area = square_mm(area_width(&panel->area), area_height(&panel->area));

    return mass_of_block(area, panel->thickness,
                         density_of(planning, panel->stock, TRADE_SHEET_DENSITY));
}

/* Foam over a face that is sat on is the denser one, where the stock does not say. */
static enum trade foam_density(const struct planning *planning, const struct layer *layer)
{
    for (size_t i = 0; i < planning->model->facings.count; i++) {
        const struct facing *facing = &planning->model->facings.at[i];

        if (facing->box == layer->box && facing->side == layer->side && facing->use == USE_SEAT)
            return TRADE_FOAM_DENSITY_SEAT;
    }
    return TRADE_FOAM_DENSITY_BACK;
}

static enum trade area_mass_of(const struct layer *layer)
{
    switch (layer->kind) {
    case LAYER_BATTING:
        return TRADE_BATTING_AREA_MASS;
    case LAYER_LINING:
    case LAYER_OUTSIDE_BACK:
        return TRADE_LINING_AREA_MASS;
    case LAYER_DUST_COVER:
        return TRADE_DUST_AREA_MASS;
    default:
        return TRADE_CLOTH_AREA_MASS;
    }
}

static int64_t mass_of_piece(const struct planning *planning, const struct piece *piece)
{
    const struct layer *layer = MODEL_FIND(planning->model, layer, piece->layer);
    const struct stock *stock = MODEL_FIND(planning->model, stock, piece->stock);
    int64_t area = square_mm(piece->width, piece->height);

    if (!layer)
        return 0;
    if (layer->kind != LAYER_FOAM)
        return share(area,
                     stock && stock->area_mass > 0 ? stock->area_mass
                                                   : planning->value[area_mass_of(layer)],
                     1000000);
    int64_t thickness = layer->thickness > 0 || !stock ? layer->thickness : stock->thickness;
    return mass_of_block(area, thickness,
                         density_of(planning, piece->stock, foam_density(planning, layer)));
}

static struct load *load_of(struct plan *plan, int64_t box)
{
    size_t low = 0;
    size_t high = plan->loads.count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (plan->loads.at[middle].box < box)
            low = middle + 1;
        else
            high = middle;
    }
    return low < plan->loads.count && plan->loads.at[low].box == box ? &plan->loads.at[low] : NULL;
}

/* One sweep over all that is cut, each on its box's load. */
static void add_mass(struct plan *plan, int64_t box, int64_t mass)
{
    struct load *load = load_of(plan, box);

    if (load)
        load->mass += mass;
}

static void weigh_wood(const struct planning *planning)
{
    struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->members.count; i++)
        add_mass(plan, plan->members.at[i].box, mass_of_member(planning, &plan->members.at[i]));
    for (size_t i = 0; i < plan->panels.count; i++) {
        if (!plan->panels.at[i].loose)
            add_mass(plan, plan->panels.at[i].box, mass_of_panel(planning, &plan->panels.at[i]));
    }
    for (size_t i = 0; i < plan->loads.count; i++) {
        struct load *load = &plan->loads.at[i];

        load->mass += share(load->mass, planning->value[TRADE_FIXINGS_MASS], 1000000);
    }
}

static void weigh_soft_goods(const struct planning *planning)
{
    struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->pieces.count; i++)
        add_mass(plan, plan->pieces.at[i].box, mass_of_piece(planning, &plan->pieces.at[i]));
}

/* ---- size ---- */

static int64_t pad_of(const struct plan *plan, int64_t box, int64_t side)
{
    const struct padding *padding = plan_padding(plan, box, side);

    return padding ? padding->pad : 0;
}

/* The box with its padding, in its own axes. */
static struct solid padded(const struct plan *plan, const struct box *box)
{
    return (struct solid){{-pad_of(plan, box->key, SIDE_LEFT), -pad_of(plan, box->key, SIDE_BACK),
                           -pad_of(plan, box->key, SIDE_BOTTOM)},
                          {box->width + pad_of(plan, box->key, SIDE_RIGHT),
                           box->depth + pad_of(plan, box->key, SIDE_FRONT),
                           box->height + pad_of(plan, box->key, SIDE_TOP)}};
}

static struct vector size_of(const struct solid *solid)
{
    return (struct vector){solid_size(solid, AXIS_X), solid_size(solid, AXIS_Y),
                           solid_size(solid, AXIS_Z)};
}

/* ---- people ---- */

static int64_t longest_of(struct vector size)
{
    int64_t longest = size.x > size.y ? size.x : size.y;

    return longest > size.z ? longest : size.z;
}

static int people_for(const int64_t *value, int64_t mass, struct vector size)
{
    if (mass > value[TRADE_TWO_PEOPLE_WEIGHT])
        return 3;
    return mass > value[TRADE_ONE_PERSON_WEIGHT] ||
                   longest_of(size) >= value[TRADE_ONE_PERSON_LENGTH]
               ? 2
               : 1;
}

static void start_load(struct planning *planning, const struct box *box)
{
    struct solid solid = padded(planning->plan, box);

    *LIST_ADD(planning->arena, &planning->plan->loads) =
        (struct load){.box = box->key, .finished = size_of(&solid)};
}

static void lift(struct planning *planning, struct load *load)
{
    load->people = people_for(planning->value, load->mass, load->finished);
    if (load->mass > planning->value[TRADE_ONE_PERSON_WEIGHT])
        argument_quantity(finding_add(planning, FINDING_HEAVY, ENTITY_box, load->box), 0,
                          QUANTITY_MASS, load->mass);
}

/* ---- what is carried as one ---- */

/* For every box the index of the first box that it is carried with. */
static size_t *each_alone(const struct planning *planning)
{
    const struct model *model = planning->model;
    size_t count = model->boxes.count;
    size_t *first = ARENA_MANY(planning->arena, size_t, count);

    for (size_t i = 0; i < count; i++)
        first[i] = i;
    return first;
}

static size_t index_of(const struct model *model, int64_t box)
{
    for (size_t i = 0; i < model->boxes.count; i++) {
        if (model->boxes.at[i].key == box)
            return i;
    }
    return model->boxes.count;
}

static bool is_fixed_at_bench(const struct join *join)
{
    return join->target == TARGET_BOX && join->place == PLACE_BENCH &&
           join->fastener != FASTENER_REST && join->box_b != 0;
}

static void put_together(size_t *first, size_t count, size_t a, size_t b)
{
    size_t kept = first[a] < first[b] ? first[a] : first[b];
    size_t gone = first[a] < first[b] ? first[b] : first[a];

    for (size_t i = 0; i < count; i++) {
        if (first[i] == gone)
            first[i] = kept;
    }
}

static size_t *find_carried(const struct planning *planning)
{
    const struct model *model = planning->model;
    size_t *first = each_alone(planning);

    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (is_fixed_at_bench(join))
            put_together(first, model->boxes.count, index_of(model, join->box_a),
                         index_of(model, join->box_b));
    }
    return first;
}

/* In the axes of the first box that is carried: what leans is carried as it lies best. */
static struct solid solid_for_carrying(const struct planning *planning, const struct box *first,
                                       const struct box *box)
{
    const struct plan *plan = planning->plan;
    struct solid solid = padded(plan, box);

    return pose_block_across(plan_pose(plan, box->key), box, plan_pose(plan, first->key), first,
                             &solid);
}

static void stretch(struct solid *solid, const struct solid *over)
{
    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        if (vector_along(over->low, axis) < vector_along(solid->low, axis))
            vector_set(&solid->low, axis, vector_along(over->low, axis));
        if (vector_along(over->high, axis) > vector_along(solid->high, axis))
            vector_set(&solid->high, axis, vector_along(over->high, axis));
    }
}

static struct vector size_carried(const struct planning *planning, const size_t *first,
                                  size_t index)
{
    const struct model *model = planning->model;
    const struct box *box = &model->boxes.at[index];
    struct solid whole = padded(planning->plan, box);

    for (size_t i = index + 1; i < model->boxes.count; i++) {
        if (first[i] != index)
            continue;
        struct solid solid = solid_for_carrying(planning, box, &model->boxes.at[i]);
        stretch(&whole, &solid);
    }
    return size_of(&whole);
}

/* ---- the way ---- */

static bool passes(const struct planning *planning, const struct passage *passage,
                   struct vector size)
{
    int64_t margin = planning->value[TRADE_DOOR_MARGIN];

    if (passage->kind == PASSAGE_HALL && passage->length > 0 && passage->width > 0)
        return passage_corner(size, passage->width, passage->length, passage->height, margin);
    return passage_straight(size, passage->width, passage->height, margin);
}

/* Would each box of what is carried as one pass by itself, where there are several? */
static bool passes_apart(const struct planning *planning, const struct passage *passage,
                         const size_t *first, size_t index)
{
    size_t boxes = 0;

    for (size_t i = index; i < planning->model->boxes.count; i++) {
        struct solid solid;

        if (first[i] != index)
            continue;
        solid = padded(planning->plan, &planning->model->boxes.at[i]);
        if (!passes(planning, passage, size_of(&solid)))
            return false;
        boxes++;
    }
    return boxes > 1;
}

static void offer_site_joins(struct planning *planning, const size_t *first, size_t index,
                             struct finding *finding)
{
    const struct model *model = planning->model;
    struct cure_draft cure = cure_begin(planning, "Join it in the room");

    for (size_t i = 0; i < model->joins.count; i++)
        if (is_fixed_at_bench(&model->joins.at[i]) &&
            first[index_of(model, model->joins.at[i].box_a)] == index)
            cure_word(&cure, ENTITY_join, model->joins.at[i].key, "place",
                      words_place.at[PLACE_SITE].name);
    cure_offer(&cure, finding);
}

static void take_through(struct planning *planning, const size_t *first, size_t index)
{
    struct vector size = size_carried(planning, first, index);
    int64_t box = planning->model->boxes.at[index].key;

    for (size_t i = 0; i < planning->model->passages.count; i++) {
        const struct passage *passage = &planning->model->passages.at[i];
        enum finding_kind kind = passes_apart(planning, passage, first, index)
                                     ? FINDING_TOO_BIG_JOINED
                                     : FINDING_TOO_BIG_FOR_WAY;

        struct finding *finding;

        if (passes(planning, passage, size))
            continue;
        finding = finding_add(planning, kind, ENTITY_box, box);
        argument_text(finding, 0,
                      passage->name[0] ? passage->name : words_passage.at[passage->kind].name);
        if (kind == FINDING_TOO_BIG_JOINED)
            offer_site_joins(planning, first, index, finding);
    }
}

void pass_load(struct planning *planning)
{
    const struct model *model = planning->model;
    const size_t *first = find_carried(planning);

    for (size_t i = 0; i < model->boxes.count; i++)
        start_load(planning, &model->boxes.at[i]);
    weigh_wood(planning);
    weigh_soft_goods(planning);
    for (size_t i = 0; i < planning->plan->loads.count; i++)
        lift(planning, &planning->plan->loads.at[i]);
    for (size_t i = 0; i < model->boxes.count; i++) {
        if (first[i] == i)
            take_through(planning, first, i);
    }
}
