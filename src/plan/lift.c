/*
 * The lifts of a plan are found by one walk through its steps. `on` holds what each box weighs by
 * then, and `first` which boxes hang together by then; a step first puts on what it puts on, and is
 * then asked what it lifts.
 */
#include "plan/lift.h"

#include "plan/geometry.h"
#include "plan/route.h"
#include "plan/slices.h"
#include "plan/steps.h"
#include "plan/weight.h"

#include <assert.h>

#define CM (10.0 * LENGTH_MM)
#define MM_CM(cm) ((cm)*10 * LENGTH_MM)
#define TOLD_FROM 10 /* lighter than the load constant over this is no lift to tell of */

/* ---- the equation ---- */

static double clamp(double value, double least, double most)
{
    return value < least ? least : value > most ? most : value;
}

static double grip_factor(enum lift_grip grip, double up)
{
    switch (grip) {
    case LIFT_GOOD:
        return 1;
    case LIFT_FAIR:
        return up < 75 ? 0.95 : 1;
    default:
        return 0.9;
    }
}

struct lift_factors lift_factors(const struct lift_place *place)
{
    double across = (double)place->across / CM;
    double up = (double)place->up / CM;
    double travel = (double)place->travel / CM;
    double turn = (double)place->turn / 1000;
    double off = up < 75 ? 75 - up : up - 75;

    return (struct lift_factors){
        .across = across > 63 ? 0 : 25 / clamp(across, 25, 63),
        .up = up > 175 ? 0 : 1 - 0.003 * off,
        .travel = travel > 175 ? 0 : 0.82 + 4.5 / clamp(travel, 25, 175),
        .turn = turn > 135 ? 0 : 1 - 0.0032 * turn,
        .grip = grip_factor(place->grip, up),
    };
}

int64_t lift_limit(int64_t constant, const struct lift_place *place)
{
    struct lift_factors factors = lift_factors(place);

    assert(constant >= 0);
    return (int64_t)((double)constant * factors.across * factors.up * factors.travel *
                         factors.turn * factors.grip +
                     0.5);
}

int64_t lift_team(const struct plan *plan, int64_t limit, int people)
{
    int64_t together = limit;

    assert(people >= 1 && people <= LIFT_TEAM);
    if (people > 1)
        (void)whole_share(limit * people,
                          plan->value[people == 2 ? TRADE_LIFT_TEAM_TWO : TRADE_LIFT_TEAM_THREE],
                          1000000, &together);
    return together;
}

int lift_people(const struct plan *plan, int64_t limit, int64_t mass)
{
    for (int people = 1; people <= LIFT_TEAM; people++)
        if (mass <= lift_team(plan, limit, people))
            return people;
    return 0;
}

int lift_usual(const struct plan *plan, int64_t mass, int64_t longest)
{
    const int64_t *value = plan->value;

    if (mass > value[TRADE_TWO_PEOPLE_WEIGHT])
        return 3;
    return mass > value[TRADE_ONE_PERSON_WEIGHT] || longest >= value[TRADE_ONE_PERSON_LENGTH] ? 2
                                                                                              : 1;
}

/* ---- what hangs on what, step by step ---- */

struct walk {
    const struct plan *plan;
    int64_t *on;     /* what each box weighs by now */
    size_t *first;   /* the first of the boxes that hang together with each */
    bool *panelled;  /* of the plan's panels: on by now */
    bool *covered;   /* of its pieces: on by now */
    bool *clothed;   /* of the boxes: cloth is on, the grip is poor */
    int64_t *raised; /* how high each stands in the piece */
};

static void put_on(struct walk *walk, int64_t box, int64_t mass)
{
    size_t index = model_index(walk->plan->facts, ENTITY_box, box);

    if (index < walk->plan->facts->boxes.count)
        walk->on[index] += mass;
}

static void put_wood(struct walk *walk, int64_t box, int64_t mass)
{
    put_on(walk, box, mass + weight_of_fixings(walk->plan, mass));
}

static void put_members(struct walk *walk, int64_t box)
{
    struct slice members = plan_members_of(walk->plan, box);

    for (size_t i = members.from; i < members.to; i++)
        put_wood(walk, box, weight_of_member(walk->plan, &walk->plan->members.at[i]));
}

/* All panels of the side: those of one face are fixed together, but where a join comes between. */
static void put_panels(struct walk *walk, int64_t box, int64_t side)
{
    struct slice panels = plan_panels_of(walk->plan, box);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &walk->plan->panels.at[i];

        if (panel->side != side || panel->loose || walk->panelled[i])
            continue;
        walk->panelled[i] = true;
        put_wood(walk, box, weight_of_panel(walk->plan, panel));
    }
}

static void put_boards(struct walk *walk)
{
    const struct model *model = walk->plan->facts;

    for (size_t i = 0; i < model->boxes.count; i++)
        for (int64_t side = 0; model->boxes.at[i].frame == FRAME_BOARD && side < SIDE_COUNT; side++)
            put_panels(walk, model->boxes.at[i].key, side);
}

static void put_layer(struct walk *walk, int64_t layer)
{
    for (size_t i = 0; i < walk->plan->pieces.count; i++) {
        const struct piece *piece = &walk->plan->pieces.at[i];
        size_t box = model_index(walk->plan->facts, ENTITY_box, piece->box);

        if (piece->layer != layer || walk->covered[i] || box == walk->plan->facts->boxes.count)
            continue;
        walk->covered[i] = true;
        walk->on[box] += weight_of_piece(walk->plan, piece);
        walk->clothed[box] |= weight_kind_of_piece(walk->plan, piece) == WEIGHT_CLOTH;
    }
}

static void put_what_the_step_puts(struct walk *walk, const struct step *step)
{
    const struct facing *facing = MODEL_FIND(walk->plan->facts, facing, step->facing);
    const struct join *join = MODEL_FIND(walk->plan->facts, join, step->join);

    switch (step->kind) {
    case STEP_FRAME:
        put_members(walk, step->box);
        break;
    case STEP_PANEL:
        if (facing)
            put_panels(walk, facing->box, facing->side);
        break;
    case STEP_PAD:
    case STEP_BATTING:
    case STEP_LINING:
    case STEP_COVER:
    case STEP_BACK:
    case STEP_DUST:
    case STEP_TRIM:
        put_layer(walk, step->layer);
        break;
    case STEP_DRIVE:
    case STEP_FIX:
        if (join && join->target == TARGET_BOX)
            route_put_together(walk->plan, walk->first, join);
        break;
    default:
        break;
    }
}

/* ---- what is lifted ---- */

enum lifted { LIFTED_PANEL, LIFTED_BOX, LIFTED_JOINED, LIFTED_EACH };

/* Things that a kind of step lifts: a panel on to its face, a box (turned over, or up to its
 * place), the lighter side of a join, or each thing that is carried. */
static const struct {
    int kind;
    enum lifted what;
    bool turned;
} acts[] = {
    {STEP_PANEL, LIFTED_PANEL, false},  {STEP_DRY, LIFTED_JOINED, false},
    {STEP_HANG, LIFTED_BOX, false},     {STEP_COVER, LIFTED_BOX, true},
    {STEP_OFFER, LIFTED_JOINED, false}, {STEP_BACK, LIFTED_BOX, true},
    {STEP_DUST, LIFTED_BOX, true},      {STEP_HINGE, LIFTED_BOX, false},
    {STEP_LEG, LIFTED_BOX, true},       {STEP_MOVE, LIFTED_EACH, false},
    {STEP_SET, LIFTED_EACH, true},      {STEP_FIX, LIFTED_JOINED, false},
};

static int64_t thinnest_of(struct vector size)
{
    return length_smaller(size.x, length_smaller(size.y, size.z));
}

static struct lift_place place_of(struct vector size, int64_t raised, bool clothed)
{
    int64_t up = length_smaller(size.z / 2, MM_CM(75));

    return (struct lift_place){
        .across = length_larger(thinnest_of(size) / 2 + MM_CM(up < MM_CM(25) ? 25 : 20), MM_CM(25)),
        .up = up,
        .travel = length_larger(raised, MM_CM(25)),
        .grip = clothed ? LIFT_POOR : LIFT_FAIR,
    };
}

static int64_t mass_together(const struct walk *walk, size_t index, size_t *ret_boxes)
{
    assert(index < walk->plan->loads.count);

    const struct model *model = walk->plan->facts;
    int64_t mass = 0;

    *ret_boxes = 0;
    for (size_t i = 0; i < model->boxes.count; i++) {
        if (walk->first[i] != walk->first[index])
            continue;
        mass += walk->on[i];
        ++*ret_boxes;
    }
    return mass;
}

static void measure(const struct walk *walk, struct lift *lift)
{
    lift->limit = lift_limit(walk->plan->value[TRADE_LIFT_CONSTANT], &lift->place);
    lift->people = lift_people(walk->plan, lift->limit, lift->mass);
}

static void lift_box(const struct walk *walk, size_t index, bool raised, struct lift *lift)
{
    assert(index < walk->plan->loads.count);

    const struct load *load = &walk->plan->loads.at[index];

    lift->mass = mass_together(walk, index, &lift->boxes);
    lift->box = walk->plan->facts->boxes.at[walk->first[index]].key;
    if (lift->turned)
        lift->mass /= 2;
    lift->place = place_of(load->finished, raised ? walk->raised[index] : 0, walk->clothed[index]);
    measure(walk, lift);
}

static void lift_panel(const struct walk *walk, const struct step *step, struct lift *lift)
{
    const struct facing *facing = MODEL_FIND(walk->plan->facts, facing, step->facing);

    for (size_t i = 0; facing && i < walk->plan->panels.count; i++) {
        const struct panel *panel = &walk->plan->panels.at[i];
        struct vector size = {area_width(&panel->area), panel->thickness,
                              area_height(&panel->area)};
        int64_t mass;

        if (panel->box != facing->box || panel->side != facing->side)
            continue;
        mass = weight_of_panel(walk->plan, panel);
        if (mass <= lift->mass)
            continue;
        lift->mass = mass;
        lift->box = panel->box;
        lift->place = place_of(size, MM_CM(75), false);
    }
    measure(walk, lift);
}

/* The lighter of the two sides is the one that is lifted to the other. */
static void lift_joined(const struct walk *walk, const struct step *step, struct lift *lift)
{
    const struct model *model = walk->plan->facts;
    const struct join *join = MODEL_FIND(model, join, step->join);
    size_t a = join ? model_index(model, ENTITY_box, join->box_a) : model->boxes.count;
    size_t b = join ? model_index(model, ENTITY_box, join->box_b) : model->boxes.count;
    size_t boxes;

    if (a == model->boxes.count)
        return;
    if (b == model->boxes.count || mass_together(walk, a, &boxes) < mass_together(walk, b, &boxes))
        b = a;
    lift_box(walk, b, true, lift);
}

static void lift_each(const struct walk *walk, struct lift *lift)
{
    struct lift heaviest = *lift;

    for (size_t i = 0; i < walk->plan->facts->boxes.count; i++) {
        struct lift one = *lift;

        if (walk->first[i] != i)
            continue;
        lift_box(walk, i, false, &one);
        if (one.mass > heaviest.mass)
            heaviest = one;
    }
    *lift = heaviest;
}

static void lift_what_the_step_lifts(const struct walk *walk, const struct step *step,
                                     struct lift *lift)
{
    size_t box = model_index(walk->plan->facts, ENTITY_box, step->box);

    for (size_t i = 0; i < sizeof acts / sizeof *acts; i++) {
        if (acts[i].kind != step->kind)
            continue;
        lift->turned = acts[i].turned;
        if (acts[i].what == LIFTED_PANEL)
            lift_panel(walk, step, lift);
        else if (acts[i].what == LIFTED_JOINED)
            lift_joined(walk, step, lift);
        else if (acts[i].what == LIFTED_EACH)
            lift_each(walk, lift);
        else if (box < walk->plan->facts->boxes.count)
            lift_box(walk, box, true, lift);
    }
}

static struct walk begin(const struct plan *plan, struct arena *arena)
{
    size_t boxes = plan->facts->boxes.count;
    struct walk walk = {
        .plan = plan,
        .on = ARENA_MANY(arena, int64_t, boxes),
        .first = ARENA_MANY(arena, size_t, boxes),
        .panelled = ARENA_MANY(arena, bool, plan->panels.count),
        .covered = ARENA_MANY(arena, bool, plan->pieces.count),
        .clothed = ARENA_MANY(arena, bool, boxes),
        .raised = ARENA_MANY(arena, int64_t, boxes),
    };

    for (size_t i = 0; i < boxes; i++) {
        const struct pose *pose = plan_pose(plan, plan->facts->boxes.at[i].key);

        walk.first[i] = i;
        walk.raised[i] = pose ? length_larger(pose->room.low.z - pose->floor, 0) : 0;
    }
    put_boards(&walk);
    return walk;
}

struct lifts lift_make(const struct plan *plan, struct arena *arena)
{
    struct lifts lifts = {0};
    struct walk walk;

    if (plan->loads.count < plan->facts->boxes.count)
        return lifts;
    walk = begin(plan, arena);

    for (size_t i = 0; i < plan->steps.count; i++) {
        struct lift lift = {.step = i};

        put_what_the_step_puts(&walk, &plan->steps.at[i]);
        lift_what_the_step_lifts(&walk, &plan->steps.at[i], &lift);
        if (lift.mass > plan->value[TRADE_LIFT_CONSTANT] / TOLD_FROM)
            *LIST_ADD(arena, &lifts.of) = lift;
    }
    return lifts;
}

/* ---- in words ---- */

static const char *quantity_words(const struct plan *plan, int64_t mass, struct arena *arena)
{
    bool inch = model_units(plan->facts) == UNITS_INCH;
    double shown = (double)mass / (inch ? 453592.37 : 1000000);

    return arena_format(arena, "%.1f %s", shown, inch ? "lb" : "kg");
}

static const char *thing_words(const struct plan *plan, const struct lift *lift,
                               struct arena *arena)
{
    const struct box *box = MODEL_FIND(plan->facts, box, lift->box);
    const char *name = box ? box->name : "";

    if (lift->boxes == 0)
        return arena_format(arena, "a panel of %s weighs", name);
    return lift->boxes == 1
               ? arena_format(arena, "%s weighs", name)
               : arena_format(arena, "%s and %zu joined to it weigh", name, lift->boxes - 1);
}

const char *lift_words(const struct plan *plan, const struct lift *lift, struct arena *arena)
{
    int team = lift->people > 2 ? lift->people : 2;
    const char *words = arena_format(
        arena, "%s %s%s; by the lifting equation one person is good for %s here, %s for %s",
        thing_words(plan, lift, arena),
        quantity_words(plan, lift->turned ? 2 * lift->mass : lift->mass, arena),
        lift->turned ? " by then, half of it when it is turned over" : " by then",
        quantity_words(plan, lift->limit, arena),
        team == 2   ? "two"
        : team == 3 ? "three"
                    : "four",
        quantity_words(plan, lift_team(plan, lift->limit, team), arena));

    assert(lift->people >= 0 && lift->people <= LIFT_TEAM);
    if (lift->people == 0)
        words = arena_format(arena, "%s; four are good for %s: carry it in parts", words,
                             quantity_words(plan, lift_team(plan, lift->limit, LIFT_TEAM), arena));
    return words;
}
