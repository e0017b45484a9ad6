/*
 * Panel screws, and the check that no two screws of a box meet.
 *
 * The rows say where screws would stand; each is placed there unless it would pass another screw of
 * the box too closely: then it moves along its row, by steps that a tape shows, to the nearest
 * place that is clear. Frame screws and those of joins stand already and do not move.
 *
 * 1  Every panel screw has a member behind it.
 * 2  A place that is clear by cross.clear.warn is taken before one that is clear by
 *    cross.clear.reject only, and the even place before both where none is.
 */
#include "plan/rows.h"

#include "plan/findings.h"
#include "plan/screws.h"
#include "plan/slices.h"

#include <stdlib.h>

/* The screws that stand in a box, in its axes, those of joins that reach into it included. */
struct standing {
    LIST_OF(struct screw_axis) of;
};

/* ---- what stands already ---- */

/* From the axes of the box with the heads to those of another; false where a box has no place. */
static bool axis_between(const struct planning *planning, const struct screw *screw, int64_t box,
                         struct screw_axis *ret_axis)
{
    const struct pose *from = plan_pose(planning->plan, screw->box);
    const struct pose *to = plan_pose(planning->plan, box);
    const struct box *from_box = MODEL_FIND(planning->model, box, screw->box);
    const struct box *to_box = MODEL_FIND(planning->model, box, box);
    struct screw_axis axis = screw_axis_of(planning->plan, screw);

    if (!from || !to || !from->placed || !to->placed)
        return false;
    axis.head = pose_to_box(to, to_box, pose_to_room(from, from_box, axis.head));
    axis.tip = pose_to_box(to, to_box, pose_to_room(from, from_box, axis.tip));
    *ret_axis = axis;
    return true;
}

static void stand(const struct planning *planning, struct standing *boxes, int64_t box,
                  const struct screw_axis *axis)
{
    *LIST_ADD(planning->arena, &boxes[model_index(planning->model, ENTITY_box, box)].of) = *axis;
}

/* A join's screw in the boxes beside the one that has its head. */
static void stand_beyond(const struct planning *planning, struct standing *boxes,
                         const struct screw *screw)
{
    const struct plan_point *point = &planning->plan->points.at[screw->of];
    const struct join *join = MODEL_FIND(planning->model, join, point->join);
    const int64_t reached[] = {join->box_a, join->target == TARGET_BOX ? join->box_b : 0};

    for (size_t i = 0; i < sizeof reached / sizeof *reached; i++) {
        struct screw_axis axis;

        if (reached[i] && reached[i] != screw->box && (i == 0 || reached[i] != reached[0]) &&
            axis_between(planning, screw, reached[i], &axis))
            stand(planning, boxes, reached[i], &axis);
    }
}

/* By box, in the order of the model's; one more at the end for screws of no box. */
static struct standing *standing_by_box(const struct planning *planning)
{
    const struct plan *plan = planning->plan;
    struct standing *boxes =
        ARENA_MANY(planning->arena, struct standing, planning->model->boxes.count + 1);

    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];
        struct screw_axis axis = screw_axis_of(plan, screw);

        stand(planning, boxes, screw->box, &axis);
        if (screw->use == SCREW_JOIN && screw->of < plan->points.count)
            stand_beyond(planning, boxes, screw);
    }
    return boxes;
}

/* The smaller of `enough` and how far the axis is clear of all that stands. */
static int64_t least_clear(const struct standing *standing, const struct screw_axis *axis,
                           int64_t enough)
{
    int64_t least = enough;

    for (size_t i = 0; i < standing->of.count; i++)
        if (!screw_clears(&standing->of.at[i], axis, least))
            least = screw_clear(&standing->of.at[i], axis);
    return least;
}

/* ---- one panel ---- */

/* A member behind a panel, and the screw that goes into it, chosen when it is first wanted. */
struct behind {
    const struct plan_member *member;
    struct area under;
    bool chosen;
    struct screw_choice choice;
};

struct fixing {
    struct planning *planning;
    const struct box *box;
    size_t index;
    const struct panel *panel;
    LIST_OF(struct behind) behind;
    struct standing *standing;
};

static void find_behind(struct fixing *fixing)
{
    const struct plan *plan = fixing->planning->plan;
    struct slice members = plan_members_of(plan, fixing->panel->box);

    for (size_t i = members.from; i < members.to; i++) {
        const struct plan_member *member = &plan->members.at[i];

        if (member_bears(member, fixing->panel))
            *LIST_ADD(fixing->planning->arena, &fixing->behind) =
                (struct behind){.member = member, .under = member_under(member, fixing->panel)};
    }
}

/* The member behind a place of the panel: one that runs along the row before any other. */
static struct behind *behind_at(struct fixing *fixing, bool upright, int64_t u, int64_t v)
{
    int64_t side = fixing->panel->side;
    int64_t along = upright ? side_v_axis(side) : side_u_axis(side);
    struct behind *found = NULL;

    for (size_t i = 0; i < fixing->behind.count; i++) {
        struct behind *behind = &fixing->behind.at[i];

        if (!area_holds(&behind->under, u, v))
            continue;
        if (behind->member->axis == along)
            return behind;
        if (!found)
            found = behind;
    }
    return found;
}

static const struct screw_choice *choose_for(struct fixing *fixing, struct behind *behind)
{
    struct planning *planning = fixing->planning;
    const struct panel *panel = fixing->panel;
    const struct stock *stick = MODEL_FIND(planning->model, stock, behind->member->stock);
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_PANEL],
                              .passed = panel->thickness,
                              .receiving =
                                  solid_size(&behind->member->solid, side_axis(panel->side)),
                              .wood = stick ? stick->wood : WOOD_SOFT,
                              .panel = true};

    if (behind->chosen)
        return &behind->choice;
    behind->choice = screw_choose(planning, &need);
    behind->chosen = true;
    screw_choice_tell(planning, &behind->choice, ENTITY_box, panel->box);
    return &behind->choice;
}

/* A screw of a row as it would stand `along` the row; false where no wood is or no screw fits. */
static bool make_screw(struct fixing *fixing, const struct row *row, int64_t along,
                       struct screw *ret_screw)
{
    int64_t side = fixing->panel->side;
    int64_t u = row->upright ? row->across : along;
    int64_t v = row->upright ? along : row->across;
    struct behind *behind = behind_at(fixing, row->upright, u, v);
    const struct screw_choice *choice;

    if (!behind)
        return false;
    choice = choose_for(fixing, behind);
    if (choice->kind == PLAN_NONE)
        return false;
    *ret_screw = (struct screw){.use = SCREW_PANEL,
                                .kind = choice->kind,
                                .box = fixing->panel->box,
                                .at = face_to_box(fixing->box, side, u, v),
                                .axis = side_axis(side),
                                .sign = -side_sign(side),
                                .bite = choice->bite,
                                .of = fixing->index};
    return true;
}

struct best_place {
    struct screw screw;
    int grade; /* 0 none, 1 wood, 2 clear enough, 3 well clear */
};

static int grade_of(const struct fixing *fixing, const struct screw *screw)
{
    const int64_t *value = fixing->planning->value;
    struct screw_axis axis = screw_axis_of(fixing->planning->plan, screw);
    int64_t well = value[TRADE_CROSS_CLEAR_WARN];
    int64_t clear = least_clear(fixing->standing, &axis, well);

    if (clear >= well)
        return 3;
    return clear >= value[TRADE_CROSS_CLEAR_REJECT] ? 2 : 1;
}

static void try_place(struct fixing *fixing, const struct row *row, int64_t along,
                      struct best_place *best)
{
    int64_t margin = length_smaller(fixing->planning->value[TRADE_PANEL_EDGE_MIN], row->end);
    struct screw screw;
    int grade;

    if (along < row->from + margin || along > row->to - margin ||
        !make_screw(fixing, row, along, &screw))
        return;
    grade = grade_of(fixing, &screw);
    if (grade > best->grade)
        *best = (struct best_place){screw, grade};
}

/* Places one screw of a row, at its even place or up to three quarters of a pitch beside it. */
static void place_screw(struct fixing *fixing, const struct row *row, int64_t i)
{
    struct planning *planning = fixing->planning;
    int64_t even = row_place(row, i);
    int64_t step = planning->value[TRADE_MARK_GRID];
    int64_t reach = 3 * (row->to - row->from - 2 * row->end) / (4 * (row->count - 1));
    struct best_place best = {.grade = 0};

    try_place(fixing, row, even, &best);
    for (int64_t off = step; off <= reach && best.grade < 3; off += step) {
        try_place(fixing, row, even + off, &best);
        if (best.grade < 3)
            try_place(fixing, row, even - off, &best);
    }
    if (best.grade == 0)
        return;
    screw_add(planning, &best.screw);
    *LIST_ADD(planning->arena, &fixing->standing->of) = screw_axis_of(planning->plan, &best.screw);
}

static void fix_panel(struct fixing *fixing)
{
    struct rows rows = rows_of_panel(fixing->planning, fixing->panel);

    find_behind(fixing);
    for (size_t i = 0; i < rows.of.count; i++) {
        const struct row *row = &rows.of.at[i];

        for (int64_t k = row->skip_low; k < row->count - row->skip_high; k++)
            place_screw(fixing, row, k);
    }
}

/* ---- no two screws meet ---- */

static int64_t low_end(const struct screw_axis *axis)
{
    return length_smaller(axis->head.x, axis->tip.x);
}

/* By where they begin along x: which is where most boxes are longest. */
static int by_low_end(const void *a, const void *b)
{
    int64_t left = low_end(a);
    int64_t right = low_end(b);

    return (left > right) - (left < right);
}

/*
 * The smaller of `enough` and the clearance of the closest two. Goes along x with the screws in the
 * order in which they begin: a screw that begins farther behind another's end than `enough` and the
 * thickest screw is clear of it, and so are all after it.
 */
static int64_t closest_pair(const struct standing *standing, int64_t enough)
{
    struct screw_axis *at = standing->of.at;
    int64_t thickest = 0;
    int64_t closest = enough;

    if (standing->of.count == 0)
        return enough;
    qsort(at, standing->of.count, sizeof *at, by_low_end);
    for (size_t i = 0; i < standing->of.count; i++)
        thickest = length_larger(thickest, at[i].diameter);
    for (size_t i = 0; i < standing->of.count; i++) {
        int64_t end = length_larger(at[i].head.x, at[i].tip.x) + enough + thickest;

        for (size_t k = i + 1; k < standing->of.count && low_end(&at[k]) <= end; k++)
            if (!screw_clears(&at[i], &at[k], closest))
                closest = screw_clear(&at[i], &at[k]);
    }
    return closest;
}

static void check_box(struct planning *planning, const struct standing *standing, int64_t box)
{
    int64_t well = planning->value[TRADE_CROSS_CLEAR_WARN];
    int64_t closest = closest_pair(standing, well);
    bool meet = closest < planning->value[TRADE_CROSS_CLEAR_REJECT];
    struct finding *finding;

    if (closest >= well)
        return;
    finding =
        finding_add(planning, meet ? FINDING_SCREWS_MEET : FINDING_SCREWS_NEAR, ENTITY_box, box);
    argument_length(finding, 0, length_larger(closest, 0));
    argument_length(finding, 1,
                    planning->value[meet ? TRADE_CROSS_CLEAR_REJECT : TRADE_CROSS_CLEAR_WARN]);
}

static void tell_not_in_stock(struct planning *planning)
{
    enum units units = model_units(planning->model);

    for (size_t i = 0; i < planning->plan->screw_kinds.count; i++) {
        const struct screw_kind *kind = &planning->plan->screw_kinds.at[i];
        char text[SCREW_TEXT];

        if (kind->stock || !kind->count)
            continue;
        screw_kind_print(text, kind, units);
        argument_text(finding_add(planning, FINDING_SCREW_NOT_IN_STOCK, ENTITY_build,
                                  planning->model->build.key),
                      0, arena_text(planning->arena, text));
    }
}

static void fix_box(struct planning *planning, struct standing *standing, const struct box *box)
{
    const struct plan *plan = planning->plan;
    struct slice panels = plan_panels_of(plan, box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        struct fixing fixing = {.planning = planning,
                                .box = box,
                                .index = i,
                                .panel = &plan->panels.at[i],
                                .standing = standing};

        if (!fixing.panel->loose)
            fix_panel(&fixing);
    }
    check_box(planning, standing, box->key);
}

void pass_fix(struct planning *planning)
{
    struct standing *standing = standing_by_box(planning);

    for (size_t i = 0; i < planning->model->boxes.count; i++)
        fix_box(planning, &standing[i], &planning->model->boxes.at[i]);
    tell_not_in_stock(planning);
}
