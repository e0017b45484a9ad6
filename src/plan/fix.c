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

#include <assert.h>

/* The screws that stand in a box, in its axes, those of joins that reach into it included. */
struct standing {
    LIST_OF(struct screw_axis) of;
};

/* ---- what stands already ---- */

static bool reaches_into(const struct planning *planning, const struct screw *screw, int64_t box)
{
    const struct join *join;

    if (screw->use != SCREW_JOIN || screw->of >= planning->plan->points.count)
        return false;
    join = MODEL_FIND(planning->model, join, planning->plan->points.at[screw->of].join);
    return join && (join->box_a == box || (join->target == TARGET_BOX && join->box_b == box));
}

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

static struct standing standing_in(const struct planning *planning, int64_t box)
{
    const struct plan *plan = planning->plan;
    struct standing standing = {0};

    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];
        struct screw_axis axis;

        if (screw->box == box)
            *LIST_ADD(planning->arena, &standing.of) = screw_axis_of(plan, screw);
        else if (reaches_into(planning, screw, box) && axis_between(planning, screw, box, &axis))
            *LIST_ADD(planning->arena, &standing.of) = axis;
    }
    return standing;
}

static int64_t least_clear(const struct standing *standing, const struct screw_axis *axis)
{
    int64_t least = INT64_MAX;

    for (size_t i = 0; i < standing->of.count; i++)
        least = length_smaller(least, screw_clear(&standing->of.at[i], axis));
    return least;
}

/* ---- one panel ---- */

/* The member behind a place of the panel: one that runs along the row before any other. */
static const struct plan_member *member_at(const struct plan *plan, const struct panel *panel,
                                           bool upright, int64_t u, int64_t v)
{
    const struct plan_member *found = NULL;
    int64_t along = upright ? side_v_axis(panel->side) : side_u_axis(panel->side);

    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];
        struct area under = member_under(member, panel);

        if (u < under.u0 || u >= under.u1 || v < under.v0 || v >= under.v1 ||
            !member_bears(member, panel))
            continue;
        if (member->axis == along)
            return member;
        if (!found)
            found = member;
    }
    return found;
}

static struct screw_choice choose_for(struct planning *planning, const struct panel *panel,
                                      const struct plan_member *member)
{
    const struct stock *stick = MODEL_FIND(planning->model, stock, member->stock);
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_PANEL],
                              .passed = panel->thickness,
                              .receiving = solid_size(&member->solid, side_axis(panel->side)),
                              .wood = stick ? stick->wood : WOOD_SOFT,
                              .panel = true};

    return screw_choose(planning, &need);
}

/* A screw of a row as it would stand `along` the row; false where no wood is or no screw fits. */
static bool make_screw(struct planning *planning, size_t index, const struct row *row,
                       int64_t along, struct screw *ret_screw)
{
    const struct panel *panel = &planning->plan->panels.at[index];
    const struct box *box = MODEL_FIND(planning->model, box, panel->box);
    int64_t u = row->upright ? row->across : along;
    int64_t v = row->upright ? along : row->across;
    const struct plan_member *member = member_at(planning->plan, panel, row->upright, u, v);
    struct screw_choice choice;

    if (!member)
        return false;
    choice = choose_for(planning, panel, member);
    screw_choice_tell(planning, &choice, ENTITY_box, panel->box);
    if (choice.kind == PLAN_NONE)
        return false;
    *ret_screw = (struct screw){.use = SCREW_PANEL,
                                .kind = choice.kind,
                                .box = panel->box,
                                .at = face_to_box(box, panel->side, u, v),
                                .axis = side_axis(panel->side),
                                .sign = -side_sign(panel->side),
                                .bite = choice.bite,
                                .of = index};
    return true;
}

struct best_place {
    struct screw screw;
    int grade; /* 0 none, 1 wood, 2 clear enough, 3 well clear */
};

static int grade_of(const struct planning *planning, const struct standing *standing,
                    const struct screw *screw)
{
    struct screw_axis axis = screw_axis_of(planning->plan, screw);
    int64_t clear = least_clear(standing, &axis);

    if (clear >= planning->value[TRADE_CROSS_CLEAR_WARN])
        return 3;
    return clear >= planning->value[TRADE_CROSS_CLEAR_REJECT] ? 2 : 1;
}

static void try_place(struct planning *planning, const struct standing *standing, size_t panel,
                      const struct row *row, int64_t along, struct best_place *best)
{
    int64_t margin = planning->value[TRADE_PANEL_EDGE_MIN];
    struct screw screw;
    int grade;

    if (along < row->from + length_smaller(margin, row->end) ||
        along > row->to - length_smaller(margin, row->end) ||
        !make_screw(planning, panel, row, along, &screw))
        return;
    grade = grade_of(planning, standing, &screw);
    if (grade > best->grade)
        *best = (struct best_place){screw, grade};
}

/* Places one screw of a row, at its even place or up to three quarters of a pitch beside it. */
static void place_screw(struct planning *planning, struct standing *standing, size_t panel,
                        const struct row *row, int64_t i)
{
    int64_t even = row_place(row, i);
    int64_t step = planning->value[TRADE_MARK_GRID];
    int64_t reach = 3 * (row->to - row->from - 2 * row->end) / (4 * (row->count - 1));
    struct best_place best = {.grade = 0};

    try_place(planning, standing, panel, row, even, &best);
    for (int64_t off = step; off <= reach && best.grade < 3; off += step) {
        try_place(planning, standing, panel, row, even + off, &best);
        if (best.grade < 3)
            try_place(planning, standing, panel, row, even - off, &best);
    }
    if (best.grade == 0)
        return;
    screw_add(planning, &best.screw);
    *LIST_ADD(planning->arena, &standing->of) = screw_axis_of(planning->plan, &best.screw);
}

static void fix_panel(struct planning *planning, struct standing *standing, size_t panel)
{
    struct rows rows = rows_of_panel(planning, &planning->plan->panels.at[panel]);

    for (size_t i = 0; i < rows.of.count; i++) {
        const struct row *row = &rows.of.at[i];

        for (int64_t k = row->skip_low; k < row->count - row->skip_high; k++)
            place_screw(planning, standing, panel, row, k);
    }
}

/* ---- no two screws meet ---- */

static int64_t closest_pair(const struct standing *standing)
{
    int64_t closest = INT64_MAX;

    for (size_t i = 0; i < standing->of.count; i++)
        for (size_t k = i + 1; k < standing->of.count; k++)
            closest =
                length_smaller(closest, screw_clear(&standing->of.at[i], &standing->of.at[k]));
    return closest;
}

static void check_box(struct planning *planning, const struct standing *standing, int64_t box)
{
    int64_t closest = closest_pair(standing);
    bool meet = closest < planning->value[TRADE_CROSS_CLEAR_REJECT];
    struct finding *finding;

    if (closest >= planning->value[TRADE_CROSS_CLEAR_WARN])
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

void pass_fix(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        int64_t box = planning->model->boxes.at[i].key;
        struct standing standing = standing_in(planning, box);

        for (size_t k = 0; k < plan->panels.count; k++)
            if (plan->panels.at[k].box == box && !plan->panels.at[k].loose)
                fix_panel(planning, &standing, k);
        check_box(planning, &standing, box);
    }
    tell_not_in_stock(planning);
}
