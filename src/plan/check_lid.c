/*
 * Lids that slam, stifle or cannot be opened.
 *
 * 1  A lid has a stay (CPSC, guidance on chest lids).
 * 2  A chest that a lid shuts lets air in, by two gaps at least and `lid.vent` together, where
 *    neither cloth nor a wall nor the floor shuts them. A side without a panel and without cloth
 *    lets in enough.
 * 3  A gap at the hinges that the maker gave is no less than the cloth of both parts takes.
 * 4  A lid that is lifted stands on its hinged edge, and reaches behind its hinges by its board and
 *    its padding: no wall stands nearer than that.
 * 5  Under a lid is no join of screws: boxes are put beside one another before one gets its hinges.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/lid.h"
#include "plan/slices.h"
#include "plan/stance.h"

/* ---- stays ---- */

static bool has_stay(const struct model *model, int64_t lid, const struct box *chest)
{
    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];

        if (fitting->kind == FITTING_STAY && fitting->count > 0 &&
            (fitting->box == lid || (chest && fitting->box == chest->key)))
            return true;
    }
    return false;
}

static void check_stay(struct planning *planning, const struct box *lid, const struct box *chest)
{
    struct cure_draft cure = cure_begin(planning, "Fit two stays that hold at every angle");

    if (has_stay(planning->model, lid->key, chest))
        return;
    cure_refer(&cure, ENTITY_fitting, 0, "box", lid->key);
    cure_word(&cure, ENTITY_fitting, 0, "kind", words_fitting.at[FITTING_STAY].name);
    cure_word(&cure, ENTITY_fitting, 0, "name", "lid stay that holds at every angle");
    cure_word(&cure, ENTITY_fitting, 0, "side", words_side.at[SIDE_BOTTOM].name);
    cure_count(&cure, ENTITY_fitting, 0, "count", 2);
    cure_offer(&cure, finding_add(planning, FINDING_LID_SLAMS, ENTITY_box, lid->key));
}

/* ---- hinges ---- */

static void check_hinges(struct planning *planning, const struct box *lid)
{
    const struct join *rest = lid_rest(planning->model, lid->key);
    int64_t wanted = lid_hinge_gap(planning, lid->key);
    struct cure_draft cure = cure_begin(planning, "Give the hinges what the cloth takes");
    struct finding *finding;

    if (!rest || rest->cloth == 0 || rest->cloth >= wanted)
        return;
    finding = finding_add(planning, FINDING_LID_PINCHES, ENTITY_box, lid->key);
    argument_length(finding, 0, rest->cloth);
    argument_length(finding, 1, wanted);
    cure_length(&cure, ENTITY_join, rest->key, "cloth", wanted);
    cure_offer(&cure, finding);
}

/* ---- air ---- */

/* Does a wall stand so near to a side of a box that no air comes through it? */
static bool is_shut_by_wall(const struct planning *planning, int64_t box, int64_t side)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->walls.count; i++)
        if (check_side(planning, box, model->walls.at[i].side) == side &&
            model->walls.at[i].gap < planning->value[TRADE_LID_GAP])
            return true;
    return false;
}

static bool has_panel(const struct planning *planning, int64_t box, int64_t side)
{
    struct slice panels = plan_panels_of(planning->plan, box);

    for (size_t i = panels.from; i < panels.to; i++)
        if (planning->plan->panels.at[i].side == side)
            return true;
    return false;
}

/* The underside counts as shut: chests stand on the floor. */
static bool lets_air_in(const struct planning *planning, int64_t box, int64_t side)
{
    const struct padding *padding = plan_padding(planning->plan, box, side);

    return side_axis(side) != AXIS_Z && !(padding && padding->covered) &&
           !is_shut_by_wall(planning, box, side);
}

/* What comes in through holes of a side, in square millimetres; adds to how many there are. */
static int64_t air_through(const struct planning *planning, int64_t box, int64_t side, int *gaps)
{
    const struct model *model = planning->model;
    int64_t sum = 0;

    for (size_t i = 0; i < model->cutouts.count; i++) {
        const struct cutout *hole = &model->cutouts.at[i];

        if (hole->box != box || hole->side != side)
            continue;
        sum += hole->width * hole->height / (LENGTH_MM * LENGTH_MM);
        *gaps += 1;
    }
    return sum;
}

static bool is_free_of_wood(const struct planning *planning, const struct box *box, int64_t side,
                            const struct area *hole)
{
    struct slice members = plan_members_of(planning->plan, box->key);

    for (size_t i = members.from; i < members.to; i++) {
        struct area wood = solid_on_side(&planning->plan->members.at[i].solid, side);
        struct area both = area_cut(&wood, hole);

        if (!area_empty(&both))
            return false;
    }
    return true;
}

/* The first place for a hole on a side, from its left or (`back`) its right end on, in its upper
 * half; false where wood stands everywhere. */
static bool place_of_hole(const struct planning *planning, const struct box *box, int64_t side,
                          int64_t size, bool back, struct area *ret_hole)
{
    struct area face = face_area(box, side);
    int64_t v = face.v0 + area_height(&face) * 2 / 3;
    int64_t steps = area_width(&face) / size - 1;

    for (int64_t i = 1; i < steps; i++) {
        int64_t u = back ? face.u1 - (i + 1) * size : face.u0 + i * size;
        struct area hole = {u, v, u + size, v + size};

        if (hole.v1 < face.v1 && is_free_of_wood(planning, box, side, &hole)) {
            *ret_hole = hole;
            return true;
        }
    }
    return false;
}

static void cut_hole(struct cure_draft *cure, const struct box *chest, int64_t side,
                     const struct area *hole)
{
    cure_refer(cure, ENTITY_cutout, 0, "box", chest->key);
    cure_word(cure, ENTITY_cutout, 0, "side", words_side.at[side].name);
    cure_length(cure, ENTITY_cutout, 0, "u", hole->u0);
    cure_length(cure, ENTITY_cutout, 0, "v", hole->v0);
    cure_length(cure, ENTITY_cutout, 0, "width", hole->u1 - hole->u0);
    cure_length(cure, ENTITY_cutout, 0, "height", hole->v1 - hole->v0);
    cure_word(cure, ENTITY_cutout, 0, "purpose", "air hole");
}

/* As large as each of two holes has to be, in what a tape shows. */
static int64_t hole_size(const struct planning *planning)
{
    int64_t grain = model_units(planning->model) == UNITS_INCH ? LENGTH_INCH / 8 : LENGTH_MM;
    int64_t side = whole_root(planning->value[TRADE_LID_VENT] * LENGTH_MM * LENGTH_MM / 2);

    return grain * whole_divide_up(side, grain);
}

static void offer_holes(struct planning *planning, const struct box *chest, struct finding *finding)
{
    static const int64_t sides[] = {SIDE_BACK, SIDE_LEFT, SIDE_RIGHT, SIDE_FRONT};
    int64_t size = hole_size(planning);

    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        struct cure_draft cure =
            cure_begin(planning, arena_format(planning->arena, "Cut two air holes in its %s",
                                              words_side.at[sides[i]].name));
        struct area first, second;

        if (!lets_air_in(planning, chest->key, sides[i]) ||
            !place_of_hole(planning, chest, sides[i], size, false, &first) ||
            !place_of_hole(planning, chest, sides[i], size, true, &second) || first.u1 > second.u0)
            continue;
        cut_hole(&cure, chest, sides[i], &first);
        cut_hole(&cure, chest, sides[i], &second);
        cure_offer(&cure, finding);
        return;
    }
}

static void check_air(struct planning *planning, const struct box *chest)
{
    int64_t air = 0;
    int gaps = 0;
    struct finding *finding;

    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        if (!lets_air_in(planning, chest->key, side))
            continue;
        if (!has_panel(planning, chest->key, side))
            return;
        air += air_through(planning, chest->key, side, &gaps);
    }
    if (gaps > 1 && air >= planning->value[TRADE_LID_VENT])
        return;
    finding = finding_add(planning, FINDING_LID_STIFLES, ENTITY_box, chest->key);
    argument_quantity(finding, 0, QUANTITY_COUNT, gaps);
    argument_text(finding, 1, lid_area_said(planning, air));
    argument_text(finding, 2, lid_area_said(planning, planning->value[TRADE_LID_VENT]));
    offer_holes(planning, chest, finding);
}

/* ---- walls ---- */

/* How far it reaches behind its hinges when it stands upright: its board, its padding, its cloth.
 */
static int64_t reach_behind(const struct planning *planning, const struct box *lid)
{
    const struct padding *padding = plan_padding(planning->plan, lid->key, SIDE_TOP);

    return lid->height + (padding ? padding->pad + padding->cloth : 0);
}

static void check_wall(struct planning *planning, const struct box *lid, int64_t turns_at,
                       const struct wall *wall)
{
    struct solid solid = check_in_room(planning, lid);
    struct solid whole = stance_whole_piece(planning->plan);
    int64_t room = check_behind(&solid, &whole, wall->side) + wall->gap;
    int64_t wanted = reach_behind(planning, lid);
    struct cure_draft cure = cure_begin(planning, "Let it stand that much off the wall");
    struct finding *finding;

    if (check_side(planning, lid->key, wall->side) != turns_at || room >= wanted)
        return;
    finding = finding_add(planning, FINDING_LID_AT_WALL, ENTITY_box, lid->key);
    argument_length(finding, 0, wanted);
    argument_length(finding, 1, room);
    cure_length(&cure, ENTITY_wall, wall->key, "gap", wall->gap + wanted - room);
    cure_offer(&cure, finding);
}

/* ---- what shuts it for good ---- */

static bool is_screwed(const struct join *join, int64_t lid)
{
    return join->target == TARGET_BOX && join->fastener != FASTENER_REST &&
           ((join->box_a == lid && join->side_a == SIDE_BOTTOM) ||
            (join->box_b == lid && join->side_b == SIDE_BOTTOM));
}

static void check_screwed(struct planning *planning, const struct box *lid, const struct join *join)
{
    struct cure_draft cure = cure_begin(planning, "Let it rest there");
    struct finding *finding;

    if (!is_screwed(join, lid->key))
        return;
    finding = finding_add(planning, FINDING_LID_SCREWED, ENTITY_box, lid->key);
    argument_text(finding, 0, join->name);
    cure_word(&cure, ENTITY_join, join->key, "fastener", words_fastener.at[FASTENER_REST].name);
    cure_offer(&cure, finding);
}

/* ---- all ---- */

static void check_lid(struct planning *planning, const struct box *lid, const struct fitting *hinge)
{
    const struct model *model = planning->model;
    const struct box *chest = lid_chest(model, lid->key);
    const struct pose *pose = plan_pose(planning->plan, lid->key);

    check_stay(planning, lid, chest);
    check_hinges(planning, lid);
    for (size_t i = 0; i < model->joins.count; i++)
        check_screwed(planning, lid, &model->joins.at[i]);
    if (chest)
        check_air(planning, chest);
    for (size_t i = 0; pose && pose->placed && i < model->walls.count; i++)
        check_wall(planning, lid, lid_turns_at(hinge), &model->walls.at[i]);
}

void check_lids(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct fitting *hinge = lid_hinge(model, model->boxes.at[i].key);

        if (hinge)
            check_lid(planning, &model->boxes.at[i], hinge);
    }
}
