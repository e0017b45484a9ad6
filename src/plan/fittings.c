/*
 * The screws of fittings, where the maker says how many each takes.
 *
 * A fitting's u, v is where it lies: the middle of a leg's plate, the near end of a cleat or of a
 * hinge. Of several, two lie as mirror images left and right, four in the corners, others evenly
 * between the first and its mirror image. A plate has its screws in its corners, whatever is long
 * has them in a row along it. Such screws do not move: the hardware says where its holes are.
 *
 * A cleat on the side by which its box is laid on a wall has its other half on that wall, right
 * below it, with a screw into each stud that it passes.
 */
#include "plan/standing.h"

#include "plan/backing.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"
#include "plan/studs.h"
#include "plan/wood.h"

#include <assert.h>

struct fastening_on {
    struct planning *planning;
    struct thicket *standing;
    const struct fitting *fitting;
    size_t index; /* in the model's */
    const struct box *box;
    struct area face;
    struct backings backings;
    struct section section; /* of a cleat's stick; nothing for hardware */
    int64_t holes;          /* in each */
    bool without_wood;
};

struct spot {
    int64_t u, v;
};

/* ---- where ---- */

static bool is_plate(const struct fitting *fitting)
{
    return fitting->kind == FITTING_LEG || fitting->kind == FITTING_GLIDE;
}

static int64_t mirrored(int64_t size, int64_t at, int64_t length)
{
    return size - at - length;
}

/* Where the i-th of a fitting's items begins. */
static struct spot spot_of(const struct fastening_on *on, int64_t i)
{
    const struct fitting *fitting = on->fitting;
    int64_t width = area_width(&on->face);
    int64_t length = is_plate(fitting) ? 0 : fitting->length;
    int64_t half = on->planning->value[TRADE_LEG_PLATE] / 2;
    bool at_corner = is_plate(fitting) && fitting->u == 0 && fitting->v == 0;
    struct spot first = {at_corner ? half : fitting->u, at_corner ? half : fitting->v};
    struct spot last = {mirrored(width, first.u, length), first.v};

    if (fitting->count == 4)
        return (struct spot){i % 2 ? last.u : first.u,
                             i / 2 ? mirrored(area_height(&on->face), first.v, 0) : first.v};
    if (fitting->count == 1)
        return first;
    return (struct spot){first.u + whole_divide_even((last.u - first.u) * i, fitting->count - 1),
                         first.v};
}

/* Two by two in the corners of a square plate. */
static struct spot hole_of_plate(const struct fastening_on *on, struct spot at, int64_t i)
{
    int64_t off = on->planning->value[TRADE_LEG_PLATE] / 2 - on->planning->value[TRADE_EDGE_MIN];

    return (struct spot){at.u + (i % 2 ? off : -off), at.v + (i / 2 % 2 ? off : -off)};
}

/* Evenly along it; where no length is given, at the least distance along the grain. */
static struct spot hole_of_row(const struct fastening_on *on, struct spot at, int64_t i)
{
    const int64_t *value = on->planning->value;
    int64_t count = on->holes;
    int64_t length = on->fitting->length ? on->fitting->length : count * value[TRADE_ALONG_MIN];
    int64_t end = length_smaller(value[TRADE_PANEL_CORNER_OFFSET], length / 4);

    if (count == 1)
        return (struct spot){at.u + length / 2, at.v + on->section.wide / 2};
    return (struct spot){at.u + end + whole_divide_even((length - 2 * end) * i, count - 1),
                         at.v + on->section.wide / 2};
}

/* How many screws each item takes; 0 where nothing is said. */
static int64_t holes_in(const struct planning *planning, const struct fitting *fitting)
{
    const int64_t *value = planning->value;
    int64_t end = value[TRADE_PANEL_CORNER_OFFSET];

    if (fitting->screws > 0 || fitting->screw == 0)
        return fitting->screws;
    if (fitting->kind == FITTING_LEG)
        return value[TRADE_LEG_SCREWS];
    if (fitting->kind != FITTING_CLEAT || fitting->length <= 2 * end)
        return 0;
    return length_larger(value[TRADE_CLEAT_LEAST],
                         whole_divide_up(fitting->length - 2 * end, value[TRADE_CLEAT_PITCH]) + 1);
}

/* ---- the screw ---- */

/* A fixed panel at the place, as thick as it is; 0 without one. */
static int64_t panel_at(const struct fastening_on *on, struct spot at)
{
    struct slice panels = plan_panels_of(on->planning->plan, on->box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &on->planning->plan->panels.at[i];

        if (panel->side == on->fitting->side && !panel->loose &&
            area_holds(&panel->area, at.u, at.v))
            return panel->thickness;
    }
    return 0;
}

static bool reckon(const struct fastening_on *on, struct spot at, struct screw_choice *ret_choice)
{
    const struct backing *wood = backing_at(&on->backings, at.u, at.v);
    struct screw_need need = {.gauge = on->planning->value[TRADE_SCREW_GAUGE_PANEL],
                              .stock = on->fitting->screw,
                              .passed = on->section.thin,
                              .receiving = wood ? wood->far : panel_at(on, at),
                              .end_grain = wood && wood->end_grain,
                              .panel = true};

    if (need.receiving == 0)
        return false;
    *ret_choice = screw_choose(on->planning, &need);
    return true;
}

static bool has_length(const struct fastening_on *on)
{
    const struct stock *stock = MODEL_FIND(on->planning->model, stock, on->fitting->screw);

    return !stock || stock->length > 0;
}

static void fasten(struct fastening_on *on, struct spot at)
{
    struct planning *planning = on->planning;
    int64_t side = on->fitting->side;
    struct screw_choice choice;
    struct screw_axis axis;

    if (!area_holds(&on->face, at.u, at.v) || !reckon(on, at, &choice)) {
        on->without_wood = true;
        return;
    }
    if (choice.kind == PLAN_NONE) {
        screw_choice_tell(planning, &choice, ENTITY_fitting, on->fitting->key);
        return;
    }
    struct screw screw = {.use = SCREW_FITTING,
                          .kind = choice.kind,
                          .box = on->box->key,
                          .at = face_to_box(on->box, side, at.u, at.v),
                          .axis = side_axis(side),
                          .sign = -side_sign(side),
                          .bite = choice.bite,
                          .of = on->index};
    int64_t out = vector_along(screw.at, screw.axis) + side_sign(side) * on->section.thin;
    vector_set(&screw.at, screw.axis, out);
    size_t index = screw_add(planning, &screw);
    axis = screw_axis_of(planning->plan, &screw);
    thicket_add(on->standing, &axis, index);
}

static void fasten_all(struct fastening_on *on)
{
    for (int64_t i = 0; i < on->fitting->count; i++) {
        struct spot at = spot_of(on, i);

        for (int64_t k = 0; k < on->holes; k++)
            fasten(on, is_plate(on->fitting) ? hole_of_plate(on, at, k) : hole_of_row(on, at, k));
    }
    if (on->without_wood)
        finding_add(on->planning, FINDING_FITTING_NO_WOOD, ENTITY_fitting, on->fitting->key);
}

/* ---- the half on the wall ---- */

bool fitting_hangs_on_wall(const struct model *model, const struct fitting *fitting)
{
    if (fitting->kind != FITTING_CLEAT || fitting->length <= 0)
        return false;
    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (join->target == TARGET_WALL && join->fastener == FASTENER_REST &&
            join->box_a == fitting->box && join->side_a == fitting->side)
            return true;
    }
    return false;
}

/* Below the half on the box, its head toward the box and its tip in the stud. */
static void screw_to_stud(const struct fastening_on *on, struct spot at)
{
    struct planning *planning = on->planning;
    int64_t side = on->fitting->side;
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_JOIN],
                              .passed = on->section.thin + planning->value[TRADE_WALL_BOARD],
                              .receiving = SCREW_BEHIND_WALL};
    struct screw_choice choice = screw_choose(planning, &need);

    screw_choice_tell(planning, &choice, ENTITY_fitting, on->fitting->key);
    if (choice.kind == PLAN_NONE)
        return;
    struct screw screw = {.use = SCREW_FITTING,
                          .kind = choice.kind,
                          .box = on->box->key,
                          .at = face_to_box(on->box, side, at.u, at.v),
                          .axis = side_axis(side),
                          .sign = side_sign(side),
                          .bite = choice.bite,
                          .of = on->index};
    struct screw_axis axis = screw_axis_of(planning->plan, &screw);
    thicket_add(on->standing, &axis, screw_add(planning, &screw));
}

static void tell_few_studs(const struct fastening_on *on, int64_t count)
{
    struct finding *finding =
        finding_add(on->planning, FINDING_CLEAT_STUDS, ENTITY_fitting, on->fitting->key);

    argument_quantity(finding, 0, QUANTITY_COUNT, count);
    argument_quantity(finding, 1, QUANTITY_COUNT, on->planning->value[TRADE_CLEAT_STUD_LEAST]);
}

static void hang(const struct fastening_on *on)
{
    int64_t keep = on->planning->value[TRADE_ALONG_MIN];

    for (int64_t i = 0; i < on->fitting->count; i++) {
        struct spot at = spot_of(on, i);
        struct studs studs = studs_behind(on->planning, on->box, on->fitting->side, at.u + keep,
                                          at.u + on->fitting->length - keep);

        for (size_t k = 0; k < studs.at.count; k++)
            screw_to_stud(on, (struct spot){studs.at.at[k], at.v - on->section.wide / 2});
        if (studs.known && (int64_t)studs.at.count < on->planning->value[TRADE_CLEAT_STUD_LEAST])
            tell_few_studs(on, (int64_t)studs.at.count);
    }
}

void fit_fittings(struct planning *planning, struct thicket *standing)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];
        struct fastening_on on = {.planning = planning, .fitting = fitting, .index = i};

        on.holes = holes_in(planning, fitting);
        if (on.holes == 0 || fitting->count == 0)
            continue;
        on.box = MODEL_FIND(model, box, fitting->box);
        assert(on.box);
        on.standing = &standing[model_index(model, ENTITY_box, fitting->box)];
        on.face = face_area(on.box, fitting->side);
        on.backings = backing_find(planning, fitting->box, fitting->side);
        on.section = stick_section(model, fitting->stock);
        if (has_length(&on))
            fasten_all(&on);
        if (fitting_hangs_on_wall(model, fitting))
            hang(&on);
    }
}
