/*
 * Lids, and covered boxes that lie beside others. Rules of lids: US Consumer Product Safety
 * Commission, guidance on chest lids (a stay at every angle; two air gaps, 2 in2 together, even
 * against a wall). Gaps for cloth: common practice, no source; sums beside the checks.
 */
#include "soft.h"

#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

/* ---- parts ---- */

static void rest_on(struct soft *soft, int64_t below, int64_t above, double u, double v)
{
    struct join *join = MODEL_ADD(&soft->model, join);

    join->name = "R";
    join->box_a = below;
    join->side_a = SIDE_TOP;
    join->box_b = above;
    join->side_b = SIDE_BOTTOM;
    join->fastener = FASTENER_REST;
    join->offset_u = IN(u);
    join->offset_v = IN(v);
}

static int64_t add_crate(struct soft *soft, const char *name, double width, double depth,
                         double height)
{
    int64_t box = soft_box(soft, name, width, depth, height);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 1.5);
    struct box *found = model_find(&soft->model, ENTITY_box, box);

    found->frame = FRAME_CRATE;
    found->stick = stick;
    return box;
}

static void add_fitting(struct soft *soft, int64_t box, enum fitting_word kind, int64_t count)
{
    struct fitting *fitting = MODEL_ADD(&soft->model, fitting);

    fitting->box = box;
    fitting->kind = (int64_t)kind;
    fitting->side = SIDE_BOTTOM;
    fitting->count = count;
}

static void add_hole(struct soft *soft, int64_t box, enum side_word side, double u, double size)
{
    struct cutout *hole = MODEL_ADD(&soft->model, cutout);

    hole->box = box;
    hole->side = (int64_t)side;
    hole->u = IN(u);
    hole->v = IN(6);
    hole->width = IN(size);
    hole->height = IN(size);
}

static void add_wall(struct soft *soft, double gap)
{
    struct wall *wall = MODEL_ADD(&soft->model, wall);

    wall->side = SIDE_BACK;
    wall->gap = IN(gap);
}

struct chest {
    int64_t box, lid;
};

/* A chest of 40 x 18 x 14 with panels all round, and a lid with 2 in of foam on hinges. */
static struct chest add_chest(struct soft *soft, int64_t stays)
{
    int64_t sheet = soft_wood(soft, STOCK_SHEET, 0.5, 0);
    int64_t board = soft_wood(soft, STOCK_SHEET, 0.75, 0);
    struct chest chest;

    chest.box = add_crate(soft, "B", 40, 18, 14);
    for (int side = 0; side < SIDE_COUNT; side++)
        if (side != SIDE_TOP)
            soft_panel(soft, chest.box, (enum side_word)side, sheet);
    chest.lid = soft_box(soft, "D", 40, 18, 0.75);
    soft_panel(soft, chest.lid, SIDE_TOP, board);
    soft_upholster(soft, chest.lid, SIDE_TOP, soft->foam2);
    rest_on(soft, chest.box, chest.lid, 0, 0);
    add_fitting(soft, chest.lid, FITTING_HINGE, 2);
    add_fitting(soft, chest.lid, FITTING_STAY, stays);
    return chest;
}

static void take_cure(struct soft *soft, int kind, size_t index)
{
    const struct finding *finding = soft_finding(soft, kind);

    assert_non_null(finding);
    assert_true(finding->cure_count > index);
    assert_int_equal(cure_apply(&soft->model, &finding->cures[index], NULL), FAULT_NONE);
    soft_plan(soft);
}

/* ---- stays, hinges ---- */

static void a_lid_without_a_stay_is_told(void **state)
{
    struct soft *soft = *state;

    add_chest(soft, 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_SLAMS), 1);
    take_cure(soft, FINDING_LID_SLAMS, 0);
    assert_int_equal(soft_findings(soft, FINDING_LID_SLAMS), 0);
}

/* Put beside its chest first, with screws, and given its hinges later. */
static void a_lid_that_is_screwed_shut_is_told(void **state)
{
    struct soft *soft = *state;

    add_chest(soft, 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_SCREWED), 0);
    soft->model.joins.at[0].fastener = FASTENER_SCREW;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_SCREWED), 1);
    take_cure(soft, FINDING_LID_SCREWED, 0);
    assert_int_equal(soft_findings(soft, FINDING_LID_SCREWED), 0);
}

/* The lid's cloth of 1/8 in and 1/16 beside it; and the apron's of 1/4 in where there is one. */
static void the_gap_at_the_hinges_counts_the_cloth_of_both_parts(void **state)
{
    struct soft *soft = *state;
    struct chest chest = add_chest(soft, 2);
    int64_t thick = soft_wood(soft, STOCK_CLOTH, 0.25, 54);

    soft_cloth(soft)->thickness = IN(0.125);
    soft_plan(soft);
    assert_true(soft_says(soft, STEP_HANG, "3/16 in between bare wood"));
    soft_layer(soft, chest.box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, thick);
    soft_plan(soft);
    assert_true(soft_says(soft, STEP_HANG, "7/16 in between bare wood"));
}

/* A sixteenth was given: the lid's cloth of 1/16 and the chest's of none, and 1/16 beside them. */
static void a_gap_too_small_for_the_cloth_is_told(void **state)
{
    struct soft *soft = *state;

    add_chest(soft, 2);
    soft_cloth(soft)->thickness = IN(0.0625);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_PINCHES), 0);
    soft->model.joins.at[0].cloth = IN(0.0625);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_PINCHES), 1);
    assert_int_equal(soft_finding(soft, FINDING_LID_PINCHES)->arguments[0].value, IN(0.0625));
    assert_int_equal(soft_finding(soft, FINDING_LID_PINCHES)->arguments[1].value, IN(0.125));
    assert_true(soft_says(soft, STEP_HANG, "1/8 in between bare wood"));
    take_cure(soft, FINDING_LID_PINCHES, 0);
    assert_int_equal(soft_findings(soft, FINDING_LID_PINCHES), 0);
    assert_int_equal(soft->model.joins.at[0].cloth, IN(0.125));
}

/* ---- air ---- */

static void a_shut_chest_wants_two_gaps_for_air(void **state)
{
    struct soft *soft = *state;
    struct chest chest = add_chest(soft, 2);

    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_STIFLES), 1);
    assert_int_equal(soft_finding(soft, FINDING_LID_STIFLES)->arguments[0].value, 0);
    assert_string_equal(soft_finding(soft, FINDING_LID_STIFLES)->arguments[2].text, "2.0 in2");
    /* one hole of 4 in2 is one gap */
    add_hole(soft, chest.box, SIDE_BACK, 5, 2);
    soft_plan(soft);
    assert_int_equal(soft_finding(soft, FINDING_LID_STIFLES)->arguments[0].value, 1);
    assert_string_equal(soft_finding(soft, FINDING_LID_STIFLES)->arguments[1].text, "4.0 in2");
    add_hole(soft, chest.box, SIDE_LEFT, 5, 0.5);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_STIFLES), 0);
}

static void two_small_gaps_are_not_enough_air(void **state)
{
    struct soft *soft = *state;
    struct chest chest = add_chest(soft, 2);

    add_hole(soft, chest.box, SIDE_BACK, 5, 0.75);
    add_hole(soft, chest.box, SIDE_BACK, 30, 0.75);
    soft_plan(soft);
    assert_string_equal(soft_finding(soft, FINDING_LID_STIFLES)->arguments[1].text, "1.1 in2");
}

/* Holes behind a wall, and under the front's cloth, let nothing in. */
static void no_air_comes_through_a_wall_or_cloth(void **state)
{
    struct soft *soft = *state;
    struct chest chest = add_chest(soft, 2);

    add_hole(soft, chest.box, SIDE_BACK, 5, 2);
    add_hole(soft, chest.box, SIDE_FRONT, 5, 2);
    add_wall(soft, 8);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_STIFLES), 0);
    soft->model.walls.at[0].gap = 0;
    soft_layer(soft, chest.box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_plan(soft);
    assert_int_equal(soft_finding(soft, FINDING_LID_STIFLES)->arguments[0].value, 0);
}

/* Two holes of an inch, clear of the uprights. */
static void the_way_out_cuts_the_holes_where_there_is_no_wood(void **state)
{
    struct soft *soft = *state;
    struct chest chest = add_chest(soft, 2);

    soft_plan(soft);
    take_cure(soft, FINDING_LID_STIFLES, 0);
    assert_int_equal(soft_findings(soft, FINDING_LID_STIFLES), 0);
    assert_int_equal(soft->model.cutouts.count, 2);
    for (size_t i = 0; i < 2; i++) {
        const struct cutout *hole = &soft->model.cutouts.at[i];

        assert_int_equal(hole->side, SIDE_BACK);
        assert_int_equal(hole->width, IN(1));
        for (size_t k = 0; k < soft->plan->members.count; k++) {
            const struct plan_member *member = &soft->plan->members.at[k];
            bool beside =
                member->box != chest.box || hole->u + hole->width <= member->solid.low.x ||
                hole->u >= member->solid.high.x || hole->v + hole->height <= member->solid.low.z ||
                hole->v >= member->solid.high.z;

            assert_true(beside);
        }
    }
}

/* The card of the cover tells of a hole in the panel under it; of none in a side without cloth. */
static void cloth_is_opened_over_a_hole(void **state)
{
    struct soft *soft = *state;
    struct chest chest = add_chest(soft, 1);

    soft_upholster(soft, chest.box, SIDE_FRONT, soft->batting);
    add_hole(soft, chest.box, SIDE_BACK, 4, 2);
    soft_plan(soft);
    assert_false(soft_says(soft, STEP_STAPLE, "Over the hole slit the cloth"));
    add_hole(soft, chest.box, SIDE_FRONT, 4, 2);
    soft_plan(soft);
    assert_true(soft_says(soft, STEP_STAPLE, "Over the hole slit the cloth"));
}

static void a_panel_that_is_not_glued_is_laid_on_dry(void **state)
{
    struct soft *soft = *state;

    add_chest(soft, 1);
    soft_plan(soft);
    assert_true(soft_says(soft, STEP_PANEL, "Glue, lay the panel on"));
    for (size_t i = 0; i < soft->model.facings.count; i++)
        soft->model.facings.at[i].glued = 0;
    soft_plan(soft);
    assert_false(soft_says(soft, STEP_PANEL, "Glue"));
    assert_true(soft_says(soft, STEP_PANEL, "Lay the panel on"));
}

static void an_open_side_lets_in_air_enough(void **state)
{
    struct soft *soft = *state;
    struct chest chest = add_chest(soft, 2);

    for (size_t i = 0; i < soft->model.facings.count; i++)
        if (soft->model.facings.at[i].box == chest.box &&
            soft->model.facings.at[i].side == SIDE_RIGHT)
            model_remove(&soft->model, ENTITY_facing, soft->model.facings.at[i].key);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_STIFLES), 0);
}

/* ---- the wall behind ---- */

/* A board of 3/4, foam of 2, batting of 1/4 as pulled, cloth of 1/16: 3-1/16 behind the hinges. */
static void a_lifted_lid_clears_the_wall(void **state)
{
    struct soft *soft = *state;

    add_chest(soft, 2);
    add_wall(soft, 1);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_AT_WALL), 1);
    assert_int_equal(soft_finding(soft, FINDING_LID_AT_WALL)->arguments[0].value, IN(3.0625));
    assert_int_equal(soft_finding(soft, FINDING_LID_AT_WALL)->arguments[1].value, IN(1));
    take_cure(soft, FINDING_LID_AT_WALL, 0);
    assert_int_equal(soft_findings(soft, FINDING_LID_AT_WALL), 0);
    assert_int_equal(soft->model.walls.at[0].gap, IN(3.0625));
    soft->model.walls.at[0].side = SIDE_LEFT; /* it does not turn there */
    soft->model.walls.at[0].gap = 0;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LID_AT_WALL), 0);
}

/* ---- drop-on and drop-in seats ---- */

static int64_t add_seat(struct soft *soft, const char *name, double width, double depth)
{
    int64_t seat = soft_box(soft, name, width, depth, 0.75);

    soft_panel(soft, seat, SIDE_TOP, soft_wood(soft, STOCK_SHEET, 0.75, 0));
    soft_upholster(soft, seat, SIDE_TOP, soft->foam2);
    return seat;
}

/* Two covered boards end to end on one base: 1/16 of cloth on each. */
static void seats_side_by_side_leave_room_for_their_cloth(void **state)
{
    struct soft *soft = *state;
    int64_t base = add_crate(soft, "B", 60, 18, 14);
    int64_t first = add_seat(soft, "S", 30, 18);
    int64_t second = add_seat(soft, "T", 30, 18);

    rest_on(soft, base, first, 0, 0);
    rest_on(soft, base, second, 30, 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_SQUEEZED), 1);
    assert_int_equal(soft_finding(soft, FINDING_CLOTH_SQUEEZED)->key, second);
    assert_int_equal(soft_finding(soft, FINDING_CLOTH_SQUEEZED)->arguments[1].value, 0);
    assert_int_equal(soft_finding(soft, FINDING_CLOTH_SQUEEZED)->arguments[2].value, IN(0.125));
    take_cure(soft, FINDING_CLOTH_SQUEEZED, 0);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_SQUEEZED), 0);
    assert_int_equal(((struct box *)model_find(&soft->model, ENTITY_box, first))->width,
                     IN(29.875));
}

static void bare_boards_may_touch(void **state)
{
    struct soft *soft = *state;
    int64_t base = add_crate(soft, "B", 60, 18, 14);
    int64_t sheet = soft_wood(soft, STOCK_SHEET, 0.75, 0);

    for (int i = 0; i < 2; i++) {
        int64_t seat = soft_box(soft, i ? "T" : "S", 30, 18, 0.75);

        soft_panel(soft, seat, SIDE_TOP, sheet);
        rest_on(soft, base, seat, 30.0 * i, 0);
    }
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_CLOTH_SQUEEZED), 0);
}

/* A seat that is let in beside a bare arm of 3/4: the cloth of the seat alone; and beside an arm
 * with 2 in of foam on its inner face: that as well. */
static void a_seat_beside_an_arm_leaves_room_for_cloth_and_foam(void **state)
{
    struct soft *soft = *state;
    int64_t base = add_crate(soft, "B", 60, 18, 14);
    int64_t seat = add_seat(soft, "S", 30, 18);
    int64_t arm = soft_box(soft, "L", 0.75, 18, 10);
    struct join *join;

    soft_panel(soft, arm, SIDE_RIGHT, soft_wood(soft, STOCK_SHEET, 0.75, 0));
    ((struct box *)model_find(&soft->model, ENTITY_box, arm))->main_side = SIDE_RIGHT;
    rest_on(soft, base, seat, 0.75, 0);
    join = MODEL_ADD(&soft->model, join);
    join->name = "J";
    join->box_a = base;
    join->side_a = SIDE_TOP;
    join->box_b = arm;
    join->side_b = SIDE_BOTTOM;
    soft_plan(soft);
    assert_int_equal(soft_finding(soft, FINDING_CLOTH_SQUEEZED)->key, seat);
    assert_int_equal(soft_finding(soft, FINDING_CLOTH_SQUEEZED)->arguments[2].value, IN(0.0625));
    soft_layer(soft, arm, LAYER_FOAM, SHAPE_SLAB, SIDE_RIGHT, soft->foam2);
    soft_plan(soft);
    assert_int_equal(soft_finding(soft, FINDING_CLOTH_SQUEEZED)->arguments[2].value, IN(2.0625));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(a_lid_without_a_stay_is_told),
        SOFT_TEST(a_lid_that_is_screwed_shut_is_told),
        SOFT_TEST(the_gap_at_the_hinges_counts_the_cloth_of_both_parts),
        SOFT_TEST(a_gap_too_small_for_the_cloth_is_told),
        SOFT_TEST(a_shut_chest_wants_two_gaps_for_air),
        SOFT_TEST(two_small_gaps_are_not_enough_air),
        SOFT_TEST(no_air_comes_through_a_wall_or_cloth),
        SOFT_TEST(the_way_out_cuts_the_holes_where_there_is_no_wood),
        SOFT_TEST(cloth_is_opened_over_a_hole),
        SOFT_TEST(a_panel_that_is_not_glued_is_laid_on_dry),
        SOFT_TEST(an_open_side_lets_in_air_enough),
        SOFT_TEST(a_lifted_lid_clears_the_wall),
        SOFT_TEST(seats_side_by_side_leave_room_for_their_cloth),
        SOFT_TEST(bare_boards_may_touch),
        SOFT_TEST(a_seat_beside_an_arm_leaves_room_for_cloth_and_foam),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
