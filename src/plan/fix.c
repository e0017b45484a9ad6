/*
 * Panel screws.
 *
 * The rows say where screws would stand; each is placed there unless it would pass another screw of
 * the box too closely: then it moves along its row, by steps that a tape shows, to the nearest
 * place that is clear. Frame screws and those of joins stand already and do not move.
 *
 * 1  Every panel screw has a member behind it.
 * 2  A panel that is bent over landing wood is screwed along that as along its other edges, by the
 *    length of the curve; these screws are counted, and have no place of their own.
 * 3  A place that is clear by cross.clear.warn is taken before one that is clear by
 *    cross.clear.reject only; where none is, one beside the row, and the even place at last.
 */
#include "plan/rows.h"

#include "plan/backing.h"
#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"
#include "plan/standing.h"

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
    struct thicket *standing;
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
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_PANEL],
                              .passed = panel->thickness,
                              .receiving =
                                  solid_size(&behind->member->solid, side_axis(panel->side)),
                              .wood = stock_wood(planning->model, behind->member->stock),
                              .panel = true};

    need.padded = backing_ends_soft(planning, panel->box, panel->side,
                                    backing_far(fixing->box, panel->side, &behind->member->solid));
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

/* How good a place for a screw is, by the screws that stand there already (cross.clear). */
enum place_grade { PLACE_NONE, PLACE_MEETS, PLACE_CLEAR, PLACE_WELL_CLEAR };

struct best_place {
    struct screw screw;
    enum place_grade grade;
};

static enum place_grade grade_of(const struct fixing *fixing, const struct screw *screw)
{
    const int64_t *value = fixing->planning->value;
    struct screw_axis axis = screw_axis_of(fixing->planning->plan, screw);
    int64_t well = value[TRADE_CROSS_CLEAR_WARN];
    int64_t clear = thicket_clear(fixing->standing, &axis, well, PLAN_NONE, NULL);

    if (clear >= well)
        return PLACE_WELL_CLEAR;
    return clear >= value[TRADE_CROSS_CLEAR_REJECT] ? PLACE_CLEAR : PLACE_MEETS;
}

static void try_place(struct fixing *fixing, const struct row *row, int64_t along,
                      struct best_place *best)
{
    int64_t margin = length_smaller(fixing->planning->value[TRADE_PANEL_EDGE_MIN], row->end);
    struct screw screw;
    enum place_grade grade;

    if (along < row->from + margin || along > row->to - margin ||
        !make_screw(fixing, row, along, &screw))
        return;
    grade = grade_of(fixing, &screw);
    if (grade > best->grade)
        *best = (struct best_place){screw, grade};
}

/* Along a row from its even place, at most so far, until a place is well clear. */
static void try_along(struct fixing *fixing, const struct row *row, int64_t even, int64_t reach,
                      struct best_place *best)
{
    int64_t step = fixing->planning->value[TRADE_MARK_GRID];

    try_place(fixing, row, even, best);
    for (int64_t off = step; off <= reach && best->grade < PLACE_WELL_CLEAR; off += step) {
        try_place(fixing, row, even + off, best);
        if (best->grade < PLACE_WELL_CLEAR)
            try_place(fixing, row, even - off, best);
    }
}

/* Beside the row, as far as the edge distance in the member allows. */
static void try_beside(struct fixing *fixing, const struct row *row, int64_t even, int64_t reach,
                       struct best_place *best)
{
    int64_t step = fixing->planning->value[TRADE_MARK_GRID] / 2;

    for (int64_t off = step; off <= row->beside && best->grade < PLACE_CLEAR; off += step)
        for (int sign = 1; sign >= -1 && best->grade < PLACE_CLEAR; sign -= 2) {
            struct row beside = *row;

            beside.across += sign * off;
            try_along(fixing, &beside, even, reach, best);
        }
}

/* Places one screw of a row: at its even place or up to three quarters of a pitch beside it; where
 * all of these meet a screw, anywhere on the run, and then beside the row. */
static void place_screw(struct fixing *fixing, const struct row *row, int64_t i)
{
    struct planning *planning = fixing->planning;
    int64_t even = row_place(row, i);
    int64_t reach = 3 * (row->to - row->from - 2 * row->end) / (4 * (row->count - 1));
    struct best_place best = {.grade = PLACE_NONE};

    try_along(fixing, row, even, reach, &best);
    if (best.grade == PLACE_MEETS) {
        try_along(fixing, row, even, row->to - row->from, &best);
        try_beside(fixing, row, even, reach, &best);
    }
    if (best.grade == PLACE_NONE)
        return;
    struct screw_axis axis = screw_axis_of(planning->plan, &best.screw);
    thicket_add(fixing->standing, &axis, screw_add(planning, &best.screw));
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

/* ---- on landing wood ---- */

/* Crowns that a panel is bent over: one on a ladder, one on each of the two of a crate. */
static int64_t crowns_under(const struct plan *plan, int64_t box)
{
    bool found[2] = {false, false};

    for (size_t i = 0; i < plan->crown_pieces.count; i++)
        if (plan->crown_pieces.at[i].box == box)
            found[plan->crown_pieces.at[i].behind] = true;
    return found[false] + found[true];
}

/* It lies on the edge of the landing wood, which is as deep under it as a landing. */
static void fix_on_crowns(struct fixing *fixing)
{
    struct planning *planning = fixing->planning;
    struct panel *panel = &planning->plan->panels.at[fixing->index];
    int64_t length = panel->width > area_width(&panel->area) ? panel->width : panel->height;
    int64_t end = planning->value[TRADE_PANEL_CORNER_OFFSET];
    int64_t crowns = crowns_under(planning->plan, panel->box);
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_PANEL],
                              .passed = panel->thickness,
                              .receiving = planning->value[TRADE_LANDING],
                              .wood = stock_wood(planning->model, panel->stock),
                              .panel = true};
    struct screw_choice choice;

    if (crowns == 0 || !curve_under(fixing->box, panel->side))
        return;
    choice = screw_choose(planning, &need);
    screw_choice_tell(planning, &choice, ENTITY_box, panel->box);
    if (choice.kind == PLAN_NONE)
        return;
    panel->screw = choice.kind;
    panel->screws = crowns * row_count(length, length_smaller(end, length / 4),
                                       row_pitch(planning, panel, true));
    screw_count(planning, choice.kind, SCREW_PANEL, panel->screws);
}

/* ---- the pass ---- */

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

static void fix_box(struct planning *planning, struct thicket *standing, const struct box *box)
{
    const struct plan *plan = planning->plan;
    struct slice panels = plan_panels_of(plan, box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        struct fixing fixing = {.planning = planning,
                                .box = box,
                                .index = i,
                                .panel = &plan->panels.at[i],
                                .standing = standing};

        if (fixing.panel->loose)
            continue;
        fix_panel(&fixing);
        fix_on_crowns(&fixing);
    }
}

void pass_fix(struct planning *planning)
{
    struct thicket *standing = standing_by_box(planning);

    fit_bolts(planning, standing);
    fit_fittings(planning, standing);
    for (size_t i = 0; i < planning->model->boxes.count; i++)
        fix_box(planning, &standing[i], &planning->model->boxes.at[i]);
    check_clear(planning, standing);
    check_grain(planning);
    tell_not_in_stock(planning);
}
