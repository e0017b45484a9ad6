#include "plan/strength.h"

#include "plan/beam.h"
#include "plan/geometry.h"
#include "plan/slats.h"
#include "plan/slices.h"

#include <assert.h>
#include <stdlib.h>

#define PSI_PER_MPA (1 / 0.006894757293168)
#define MG_POUND 453592.37

static double inches(int64_t length)
{
    return (double)length / (double)LENGTH_INCH;
}

static int64_t length_of(double inch)
{
    return (int64_t)(inch * (double)LENGTH_INCH + 0.5);
}

static double person(const struct plan *plan)
{
    return (double)plan->value[TRADE_STRENGTH_LOAD] / MG_POUND;
}

static int64_t bend_of(const struct beam *beam, double pounds, int64_t *ret_shear)
{
    struct beam_bend bend = beam_bend(beam, BEAM_MIDDLE, pounds);

    *ret_shear = length_of(bend.shear);
    return length_of(bend.bending + bend.shear);
}

/* ---- panels ---- */

static struct beam strip_of(const struct plan *plan, int64_t thickness, int64_t span)
{
    return (struct beam){
        .span = inches(span),
        .width = inches(plan->value[TRADE_STRENGTH_STRIP]),
        .depth = inches(thickness),
        .stiffness = (double)plan->value[TRADE_SHEET_STIFFNESS] * PSI_PER_MPA,
    };
}

int64_t strength_strip(const struct plan *plan, int64_t thickness, int64_t span)
{
    struct beam strip = strip_of(plan, thickness, span);
    int64_t shear;

    return bend_of(&strip, person(plan), &shear);
}

static bool is_carrying(const struct plan *plan, const struct panel *panel)
{
    const struct facing *facing = MODEL_FIND(plan->facts, facing, panel->facing);

    return facing && (facing->use == USE_SEAT || facing->use == USE_DECK);
}

static struct strength_span panel_span_of(const struct plan *plan, size_t index)
{
    assert(index < plan->panels.count);

    const struct panel *panel = &plan->panels.at[index];
    struct beam strip = strip_of(plan, panel->thickness, panel->gap);
    struct strength_span span = {.box = panel->box,
                                 .panel = index,
                                 .member = PLAN_NONE,
                                 .span = panel->gap,
                                 .good = panel->span,
                                 .most = panel->gap / plan->value[TRADE_STRENGTH_DEFLECTION]};

    span.bend = bend_of(&strip, person(plan), &span.shear);
    return span;
}

/* ---- members ---- */

static struct solid wider(struct solid solid)
{
    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        vector_set(&solid.low, axis, vector_along(solid.low, axis) - 1);
        vector_set(&solid.high, axis, vector_along(solid.high, axis) + 1);
    }
    return solid;
}

static int by_size(const void *a, const void *b)
{
    int64_t left = *(const int64_t *)a;
    int64_t right = *(const int64_t *)b;

    return (left > right) - (left < right);
}

/* The widest clear way along a member between what touches it from other directions. */
static int64_t clear_along(const struct plan *plan, const struct plan_member *member,
                           struct arena *arena)
{
    struct slice members = plan_members_of(plan, member->box);
    struct solid reach = wider(member->solid);
    int axis = (int)member->axis;
    LIST_OF(int64_t) held = {{0}}; /* both ends of what touches it */
    int64_t widest = 0;

    for (size_t i = members.from; i < members.to; i++) {
        const struct plan_member *other = &plan->members.at[i];
        struct solid common = solid_cut(&reach, &other->solid);

        if (other == member || other->axis == member->axis || solid_empty(&common))
            continue;
        *LIST_ADD(arena, &held) = vector_along(common.low, axis);
        *LIST_ADD(arena, &held) = vector_along(common.high, axis);
    }
    if (held.count < 4)
        return member->length;
    qsort(held.at, held.count, sizeof *held.at, by_size);
    for (size_t i = 1; i < held.count; i++)
        widest = length_larger(widest, held.at[i] - held.at[i - 1]);
    return widest;
}

static bool carries_a_panel(const struct plan *plan, const struct plan_member *member)
{
    struct slice panels = plan_panels_of(plan, member->box);
    struct solid reach = wider(member->solid);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->side == SIDE_TOP && is_carrying(plan, panel) &&
            solids_meet(&reach, &panel->solid))
            return true;
    }
    return false;
}

/* `pounds` in its middle, at most its span over `part`. */
static struct strength_span member_span_of(const struct plan *plan, size_t index, double pounds,
                                           int64_t part, struct arena *arena)
{
    assert(index < plan->members.count);

    const struct plan_member *member = &plan->members.at[index];
    const struct stock *stock = MODEL_FIND(plan->facts, stock, member->stock);
    bool hard = stock && stock->wood == WOOD_HARD;
    int across = member->axis == AXIS_X ? AXIS_Y : AXIS_X;
    int64_t clear = clear_along(plan, member, arena);
    struct beam beam = {
        .span = inches(clear),
        .width = inches(solid_size(&member->solid, across)),
        .depth = inches(solid_size(&member->solid, AXIS_Z)),
        .stiffness =
            (double)plan->value[hard ? TRADE_WOOD_STIFFNESS_HARD : TRADE_WOOD_STIFFNESS_SOFT] *
            PSI_PER_MPA,
    };
    struct strength_span span = {.box = member->box,
                                 .panel = PLAN_NONE,
                                 .member = index,
                                 .span = clear,
                                 .most = clear / part};

    span.bend = bend_of(&beam, pounds, &span.shear);
    return span;
}

/* Of a box that a mattress lies on, with the outer rails among them. */
static void add_slats(const struct plan *plan, const struct box *box, struct arena *arena,
                      struct strength_spans *spans)
{
    struct slice members = plan_members_of(plan, box->key);
    struct slats slats;
    double share;

    if (!slats_of(plan, box, &slats))
        return;
    share = inches(slats.gap + slats.width) / inches(plan->value[TRADE_STRENGTH_STRIP]);
    share = share < 1 ? share : 1;
    for (size_t i = members.from; i < members.to; i++)
        if (slats_has(plan, &slats, &plan->members.at[i]))
            *LIST_ADD(arena, &spans->of) = member_span_of(
                plan, i, share * person(plan), plan->value[TRADE_SLAT_DEFLECTION], arena);
}

struct strength_spans strength_spans(const struct plan *plan, struct arena *arena)
{
    struct strength_spans spans = {0};

    for (size_t i = 0; i < plan->panels.count; i++)
        if (plan->panels.at[i].gap > 0 && is_carrying(plan, &plan->panels.at[i]))
            *LIST_ADD(arena, &spans.of) = panel_span_of(plan, i);
    for (size_t i = 0; i < plan->members.count; i++)
        if (plan->members.at[i].axis != AXIS_Z && carries_a_panel(plan, &plan->members.at[i]))
            *LIST_ADD(arena, &spans.of) = member_span_of(
                plan, i, person(plan), plan->value[TRADE_STRENGTH_DEFLECTION], arena);
    for (size_t i = 0; i < plan->facts->boxes.count; i++)
        add_slats(plan, &plan->facts->boxes.at[i], arena, &spans);
    return spans;
}

/* ---- beds ---- */

static bool in_middle_third(int64_t at, int64_t size)
{
    return 3 * at >= size && 3 * at <= 2 * size;
}

static bool has_deck(const struct plan *plan, int64_t box)
{
    for (size_t i = 0; i < plan->facts->facings.count; i++)
        if (plan->facts->facings.at[i].box == box && plan->facts->facings.at[i].use == USE_DECK)
            return true;
    return false;
}

static int64_t legs_in_middle(const struct plan *plan, const struct box *box, bool by_u)
{
    int64_t legs = 0;

    for (size_t i = 0; i < plan->facts->fittings.count; i++) {
        const struct fitting *leg = &plan->facts->fittings.at[i];

        if (leg->box == box->key && (leg->kind == FITTING_LEG || leg->kind == FITTING_GLIDE) &&
            in_middle_third(by_u ? leg->u : leg->v, by_u ? box->width : box->depth))
            legs += leg->count;
    }
    return legs;
}

/* Of a box that stands on the floor itself: members that reach down to it. */
static int64_t uprights_in_middle(const struct plan *plan, const struct box *box, bool by_u)
{
    struct slice members = plan_members_of(plan, box->key);
    const struct pose *pose = plan_pose(plan, box->key);
    int axis = by_u ? AXIS_X : AXIS_Y;
    int64_t found = 0;

    if (!pose || pose->room.low.z != pose->floor || legs_in_middle(plan, box, by_u) > 0)
        return 0;
    for (size_t i = members.from; i < members.to; i++) {
        const struct solid *solid = &plan->members.at[i].solid;
        int64_t middle = (vector_along(solid->low, axis) + vector_along(solid->high, axis)) / 2;

        found += solid->low.z == 0 && plan->members.at[i].axis == AXIS_Z &&
                 in_middle_third(middle, by_u ? box->width : box->depth);
    }
    return found;
}

bool strength_bed(const struct plan *plan, const struct box *box, struct strength_bed *ret_bed)
{
    bool by_u = box->width <= box->depth;
    int64_t width = by_u ? box->width : box->depth;
    int64_t length = by_u ? box->depth : box->width;
    struct slats slats;
    int64_t spaces;

    if (width <= plan->value[TRADE_BED_BEAM_WIDTH] ||
        (!has_deck(plan, box->key) && !slats_of(plan, box, &slats)))
        return false;
    spaces = whole_divide_up(length, plan->value[TRADE_BED_LEG_PITCH]);
    *ret_bed = (struct strength_bed){
        .box = box->key,
        .width = width,
        .legs = spaces > 2 ? spaces - 1 : 1,
        .has = legs_in_middle(plan, box, by_u) + uprights_in_middle(plan, box, by_u),
    };
    return true;
}

/* ---- tipping ---- */

static bool is_held(const struct plan *plan, int64_t with)
{
    for (size_t i = 0; i < plan->facts->joins.count; i++) {
        const struct join *join = &plan->facts->joins.at[i];
        const struct pose *pose = plan_pose(plan, join->box_a);

        if (pose && pose->with == with && join->target != TARGET_BOX &&
            join->fastener != FASTENER_REST)
            return true;
    }
    return false;
}

bool strength_tip(const struct plan *plan, const struct box *first, struct strength_tip *ret_tip)
{
    const struct pose *pose = plan_pose(plan, first->key);
    struct strength_tip tip = {.box = first->key};
    struct solid room;

    if (!pose || pose->with != first->key || is_held(plan, first->key))
        return false;
    room = pose->room;
    for (size_t i = 0; i < plan->poses.count; i++) {
        const struct pose *other = &plan->poses.at[i];
        const struct load *load = plan_load(plan, other->box);

        if (other->with != first->key || !load)
            continue;
        tip.mass += load->mass;
        room = solid_round(&room, &other->room);
    }
    tip.depth = length_smaller(solid_size(&room, AXIS_X), solid_size(&room, AXIS_Y));
    tip.height = room.high.z - pose->floor;
    if (tip.height <= 0 || whole_share(tip.mass, tip.depth / 2, tip.height, &tip.push))
        return false;
    *ret_tip = tip;
    return true;
}
