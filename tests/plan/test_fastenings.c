/*
 * Points by hand, bolts and the screws of fittings, on the wing headboard's boxes (computed by
 * hand). Edge, end and clear distances are common practice, no source.
 */
#include "joined.h"
#include "plan/findings.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <setjmp.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

/* ---- points by hand ---- */

/* The screws of the bottom rail come through the end stile at z 3/4, those of the wing's cross
 * through its own. */
static void a_hole_by_hand_that_meets_a_screw_is_told_by_how_much_it_misses(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    const struct finding *found = NULL;

    (void)state;
    joined_hole(&piece, join, 0.75, 1);
    joined_hole(&piece, join, 0.75, 40);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_HOLE_MEETS), 2);
    for (size_t i = 0; i < piece.plan->findings.count; i++)
        if (piece.plan->findings.at[i].kind == FINDING_HOLE_MEETS)
            found = &piece.plan->findings.at[i];
    assert_non_null(found);
    assert_int_equal(found->key, join);
    assert_int_equal(found->arguments[0].value, 1);
    assert_int_equal(found->arguments[1].value + found->arguments[2].value, IN(0.25));
    joined_end(&piece);
}

/* The two screws of the rail, of No. 8, are 0.164 in thick and the hole's, of No. 10, 0.19: 1/2 in
 * between their middles leaves 0.323 in. 3/8 is good. */
static void a_hole_by_hand_that_passes_a_screw_nearly_is_warned_of(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    joined_hole(&piece, join, 0.75, 1.25);
    joined_hole(&piece, join, 0.75, 20);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_HOLE_MEETS), 0);
    assert_int_equal(joined_findings(&piece, FINDING_HOLE_NEAR), 2);
    assert_in_range(joined_argument(&piece, FINDING_HOLE_NEAR, 1), IN(0.322), IN(0.324));
    assert_in_range(joined_argument(&piece, FINDING_HOLE_NEAR, 2), IN(0.051), IN(0.053));
    joined_end(&piece);
}

static void a_hole_by_hand_near_an_edge_is_told(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    joined_hole(&piece, join, 0.25, 20);
    joined_hole(&piece, join, 0.75, 40);
    joined_plan(&piece);
    assert_int_equal(joined_argument(&piece, FINDING_SCREW_EDGE, 0), IN(0.25));
    joined_end(&piece);
}

/* #10: 4 diameters are 0.76 in, 7 are 1.33 in. */
static void a_hole_by_hand_near_the_end_of_a_stile_is_refused_or_warned_of(void **state)
{
    static const struct {
        double z;
        int kind;
    } tried[] = {{0.5, FINDING_SCREW_END}, {1.1, FINDING_SCREW_END_NEAR}};

    (void)state;
    for (size_t i = 0; i < sizeof tried / sizeof *tried; i++) {
        struct joined piece;
        int64_t join = joined_headboard(&piece);

        joined_hole(&piece, join, 0.75, tried[i].z);
        joined_hole(&piece, join, 0.75, 40);
        joined_plan(&piece);
        assert_int_equal(joined_findings(&piece, tried[i].kind), 1);
        assert_int_equal(joined_argument(&piece, tried[i].kind, 0), IN(tried[i].z));
        joined_end(&piece);
    }
}

static void holes_by_hand_in_one_line_of_grain_are_told(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    joined_hole(&piece, join, 0.75, 20);
    joined_hole(&piece, join, 0.75, 20.5);
    joined_plan(&piece);
    assert_int_equal(joined_argument(&piece, FINDING_HOLES_IN_LINE, 0), IN(0.5));
    joined_end(&piece);
}

static void points_of_the_engine_keep_from_ends_and_edges(void **state)
{
    struct joined piece;

    (void)state;
    joined_headboard(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_SCREW_EDGE), 0);
    assert_int_equal(joined_findings(&piece, FINDING_SCREW_END), 0);
    assert_int_equal(joined_findings(&piece, FINDING_SCREW_END_NEAR), 0);
    assert_int_equal(joined_findings(&piece, FINDING_HOLES_IN_LINE), 0);
    joined_end(&piece);
}

/* ---- holes that are there ---- */

static const struct step *step_named(const struct joined *piece, const char *word, int64_t key)
{
    char name[64];
    const struct step *step;

    snprintf(name, sizeof name, "%s:%lld", word, (long long)key);
    step = plan_step(piece->plan, name);
    if (!step)
        fail_msg("no step %s", name);
    return step;
}

static bool says(const struct step *step, const char *line)
{
    for (size_t i = 0; i < step->action_count; i++)
        if (strcmp(step->actions[i], line) == 0)
            return true;
    return false;
}

/* Of three holes one was there before: two are marked and drilled, and the minutes are for two. */
static void holes_that_are_there_are_not_drilled_again(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    for (int i = 0; i < 3; i++)
        joined_hole(&piece, join, 0.75, 10 + 15 * i);
    joined_plan(&piece);
    const struct step *drill = step_named(&piece, "drill", join);
    int64_t minutes = drill->minutes;
    assert_true(says(drill, "Mark 3 holes; check against the screws of both boxes"));
    piece.model.points.at[1].existing = 1;
    joined_plan(&piece);
    drill = step_named(&piece, "drill", join);
    assert_true(says(drill, "Mark 2 holes; check against the screws of both boxes"));
    assert_true(says(drill, "There already, do not drill again: hole 2"));
    assert_true(drill->minutes < minutes);
    for (int i = 0; i < 3; i++)
        piece.model.points.at[i].existing = 1;
    joined_plan(&piece);
    drill = step_named(&piece, "drill", join);
    assert_true(says(drill, "There already, do not drill again: hole 1, 2, 3"));
    for (size_t i = 0; i < drill->action_count; i++)
        assert_null(strstr(drill->actions[i], "in one pass"));
    joined_end(&piece);
}

/* ---- tips ---- */

/* Common practice, no source: the tip stays 1/8 in inside, 3/16 under cloth. The open wing is 1/2
 * in of glued ply and 1-1/2 in of stile, with a lining on the far face; the head's wood is 1-1/2
 * in. */
static void tips_keep_farther_from_a_face_that_is_covered(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    struct join *join = model_find(&piece.model, ENTITY_join, open.join);

    (void)state;
    join->head = HEAD_A;
    joined_plan(&piece);
    int64_t cloth = joined_junction(&piece, open.join)->cloth;
    assert_int_equal(joined_point(&piece, open.join, 0)->limit, IN(3.5) + cloth - IN(0.1875));
    model_remove(&piece.model, ENTITY_layer, open.lining);
    model_remove(&piece.model, ENTITY_layer, open.cover);
    joined_plan(&piece);
    cloth = joined_junction(&piece, open.join)->cloth;
    assert_int_equal(joined_point(&piece, open.join, 0)->limit, IN(3.5) + cloth - IN(0.125));
    joined_end(&piece);
}

/* ---- bolts ---- */

static int64_t add_bolts(struct joined *piece, double length)
{
    struct stock *stock = MODEL_ADD(&piece->model, stock);

    stock->name = "bolts";
    stock->kind = STOCK_BOLT;
    stock->diameter = IN(0.3125);
    stock->length = IN(length);
    return stock->key;
}

static int64_t bolted_headboard(struct joined *piece)
{
    int64_t join = joined_headboard(piece);
    struct join *entry = model_find(&piece->model, ENTITY_join, join);

    entry->fastener = FASTENER_BOLT;
    return join;
}

/* 1-1/2 of stile, 1/8 of cloth, 1/2 of ply and 2-1/2 of the wing's stile: 4-5/8. */
static void a_bolt_is_as_long_as_wood_and_cloth(void **state)
{
    struct joined piece;

    (void)state;
    bolted_headboard(&piece);
    add_bolts(&piece, 4);
    int64_t five = add_bolts(&piece, 5);
    add_bolts(&piece, 5.5);
    joined_plan(&piece);
    assert_int_equal(piece.plan->bolts.count, 6);
    for (size_t i = 0; i < 6; i++) {
        assert_int_equal(piece.plan->bolts.at[i].stack, IN(4.625));
        assert_int_equal(piece.plan->bolts.at[i].stock, five);
        assert_int_equal(piece.plan->bolts.at[i].hole, IN(0.34375));
        assert_int_equal(piece.plan->bolts.at[i].nut_hole, IN(0.375));
        assert_int_equal(piece.plan->bolts.at[i].counterbore_depth, 0);
    }
    joined_end(&piece);
}

static void a_bolt_that_nobody_sells_here_is_to_be_bought(void **state)
{
    struct joined piece;
    bool bought = false;

    (void)state;
    bolted_headboard(&piece);
    joined_plan(&piece);
    assert_int_equal(piece.plan->bolts.at[0].stock, 0);
    assert_int_equal(piece.plan->bolts.at[0].length, IN(5));
    for (size_t i = 0; i < piece.plan->purchases.count; i++)
        bought |= strcmp(piece.plan->purchases.at[i].what, "T-nuts 5/16") == 0 &&
                  piece.plan->purchases.at[i].used == 6;
    assert_true(bought);
    joined_end(&piece);
}

static int64_t panel_of(const struct joined *piece, int64_t box, int64_t side)
{
    for (size_t i = 0; i < piece->model.facings.count; i++)
        if (piece->model.facings.at[i].box == box && piece->model.facings.at[i].side == side)
            return piece->model.facings.at[i].key;
    fail_msg("no panel");
    return 0;
}

/* P12. The wing's left panel lies on the back of the wood that the nuts are driven into: it comes
 * after them, the right one is there when the boxes are fitted dry. */
static void nuts_are_set_before_the_panel_that_shuts_them_in(void **state)
{
    struct joined piece;
    int64_t join = bolted_headboard(&piece);

    (void)state;
    joined_plan(&piece);
    int64_t wing = joined_junction(&piece, join)->box_b;
    const struct step *nuts = step_named(&piece, "nuts", join);
    const struct step *left = step_named(&piece, "panel", panel_of(&piece, wing, SIDE_LEFT));
    const struct step *right = step_named(&piece, "panel", panel_of(&piece, wing, SIDE_RIGHT));
    assert_int_equal(piece.plan->bolts.at[0].nut_box, wing);
    assert_int_equal(piece.plan->bolts.at[0].nut_shut, SIDE_LEFT);
    assert_true(right < step_named(&piece, "dry", join));
    assert_true(step_named(&piece, "drill", join) < nuts);
    assert_true(nuts < left);
    assert_string_equal(left->rule, "P12");
    assert_true(left < step_named(&piece, "bare", wing));
    assert_string_equal(nuts->needs[0].text, "6 T-nuts 5/16");
    joined_end(&piece);
}

/* With an open back a hand gets at the nuts whenever it likes: no panel waits. */
static void nuts_in_an_open_hollow_hold_no_panel_back(void **state)
{
    struct joined piece;
    int64_t join = bolted_headboard(&piece);
    struct join *entry = model_find(&piece.model, ENTITY_join, join);

    (void)state;
    entry->head = HEAD_B;
    joined_plan(&piece);
    assert_int_equal(piece.plan->bolts.at[0].nut_box, entry->box_a);
    assert_int_equal(piece.plan->bolts.at[0].nut_shut, -1);
    joined_end(&piece);
}

/* The wing's right panel is screwed along the stile that the bolts go through. The least: 1/4
 * in from surface to surface, common practice, no source. */
static void screws_of_panels_keep_clear_of_bolts(void **state)
{
    struct joined piece;
    int64_t join = bolted_headboard(&piece);
    size_t beside = 0;

    (void)state;
    joined_plan(&piece);
    int64_t wing = joined_junction(&piece, join)->box_b;
    for (size_t i = 0; i < piece.plan->screws.count; i++) {
        const struct screw *screw = &piece.plan->screws.at[i];

        for (size_t k = 0; k < piece.plan->bolts.count && screw->box == wing; k++) {
            const struct plan_bolt *bolt = &piece.plan->bolts.at[k];
            const struct vector *at = &piece.plan->points.at[bolt->point].in_b;
            int64_t y = screw->at.y - at->y;
            int64_t z = screw->at.z - at->z;
            int64_t clear = IN(0.25) + bolt->diameter / 2 +
                            piece.plan->screw_kinds.at[screw->kind].diameter / 2;

            if (screw->use != SCREW_PANEL || screw->axis != AXIS_X)
                continue;
            assert_true(y * y + z * z >= clear * clear);
            beside += y * y + z * z < 9 * clear * clear;
        }
    }
    assert_true(beside > 0);
    joined_end(&piece);
}

/* An inch from one hole to the other is no room for a bolt of 5/16 and a screw: it passes 3/16. */
static void a_bolt_that_passes_a_screw_is_told(void **state)
{
    struct joined piece;
    int64_t join = bolted_headboard(&piece);
    const struct join *entry = model_find(&piece.model, ENTITY_join, join);
    struct join *second =
        joined_join(&piece, entry->box_a, entry->side_a, entry->box_b, entry->side_b);

    (void)state;
    second->head = HEAD_A;
    second->place = PLACE_SITE;
    second->name = "J2";
    joined_hole(&piece, join, 0.75, 20);
    joined_hole(&piece, second->key, 0.75, 20.3);
    joined_plan(&piece);
    assert_true(joined_findings(&piece, FINDING_HOLE_MEETS) > 0);
    assert_string_equal(joined_finding(&piece, FINDING_HOLE_MEETS)->arguments[3].text,
                        "hole 1 of J2");
    joined_end(&piece);
}

/* A bolt of 4 in is let in by 5/8, which leaves 7/8 of the stile's 1-1/2; 3/4 is the least. */
static void the_head_of_a_short_bolt_is_let_in(void **state)
{
    struct joined piece;

    (void)state;
    bolted_headboard(&piece);
    add_bolts(&piece, 4);
    joined_plan(&piece);
    assert_int_equal(piece.plan->bolts.at[0].counterbore, IN(1.25));
    assert_int_equal(piece.plan->bolts.at[0].counterbore_depth, IN(0.625));
    joined_end(&piece);
}

static void a_bolt_of_the_wrong_length_is_told(void **state)
{
    struct joined piece;
    int64_t join = bolted_headboard(&piece);
    int64_t bolts = add_bolts(&piece, 3);
    struct join *entry = model_find(&piece.model, ENTITY_join, join);

    (void)state;
    entry->stock = bolts;
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_BOLT_LENGTH), 1);
    assert_int_equal(joined_argument(&piece, FINDING_BOLT_LENGTH, 0), IN(3));
    joined_end(&piece);
}

/* ---- fittings ---- */

static struct fitting *add_fitting(struct joined *piece, int64_t box, int64_t kind, int64_t side)
{
    struct stock *screw = MODEL_ADD(&piece->model, stock);

    screw->name = "short";
    screw->kind = STOCK_SCREW;
    screw->gauge = 8;
    screw->length = IN(1.25);
    int64_t key = screw->key;
    struct fitting *fitting = MODEL_ADD(&piece->model, fitting);
    fitting->box = box;
    fitting->kind = kind;
    fitting->side = side;
    fitting->screw = key;
    return fitting;
}

static size_t screws_of_fittings(const struct joined *piece)
{
    size_t count = 0;

    for (size_t i = 0; i < piece->plan->screws.count; i++)
        count += piece->plan->screws.at[i].use == SCREW_FITTING;
    return count;
}

/* A cleat of 30 in: 28 in between its end screws, 10 in at most apart: 4. */
static void a_cleat_has_its_screws_along_it(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    struct fitting *cleat =
        add_fitting(&piece, MODEL_FIND(&piece.model, join, join)->box_a, FITTING_CLEAT, SIDE_BACK);

    (void)state;
    cleat->length = IN(30);
    cleat->u = IN(16);
    cleat->v = IN(55);
    joined_plan(&piece);
    assert_int_equal(screws_of_fittings(&piece), 4);
    assert_int_equal(joined_findings(&piece, FINDING_FITTING_NO_WOOD), 0);
    joined_end(&piece);
}

/* Studs at 10, 26 and 42 in from the wing's left, 3-1/2 in before the centre box: the half on the
 * wall, from 16 to 46 of that, passes two. 3/4 in of cleat, 1/2
 * in of board and at least 1 in of bite want 2-1/4: #10 x 2-1/2. */
static void a_cleat_on_the_wall_is_screwed_to_its_studs(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    int64_t box = MODEL_FIND(&piece.model, join, join)->box_a;
    struct stock *strip = MODEL_ADD(&piece.model, stock);
    struct wall *wall = MODEL_ADD(&piece.model, wall);
    struct fitting *cleat = add_fitting(&piece, box, FITTING_CLEAT, SIDE_BACK);
    struct join *hung = joined_join(&piece, box, SIDE_BACK, 0, SIDE_FRONT);
    size_t in_studs = 0;

    (void)state;
    strip->name = "1x3";
    strip->thickness = IN(0.75);
    strip->width = IN(2.5);
    wall->side = SIDE_BACK;
    wall->first_stud = IN(10);
    wall->stud_pitch = IN(16);
    hung->target = TARGET_WALL;
    hung->fastener = FASTENER_REST;
    cleat->stock = strip->key;
    cleat->length = IN(30);
    cleat->u = IN(16);
    cleat->v = IN(53.5);
    joined_plan(&piece);
    for (size_t i = 0; i < piece.plan->screws.count; i++) {
        const struct screw *screw = &piece.plan->screws.at[i];

        if (screw->use != SCREW_FITTING || screw->sign > 0)
            continue;
        assert_int_equal(piece.plan->screw_kinds.at[screw->kind].length, IN(2.5));
        assert_true(screw->at.x == IN(22.5) || screw->at.x == IN(38.5));
        in_studs++;
    }
    assert_int_equal(in_studs, 2);
    assert_int_equal(joined_findings(&piece, FINDING_CLEAT_STUDS), 0);
    joined_end(&piece);
}

static void a_fitting_beside_the_wood_is_told(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    struct fitting *bracket = add_fitting(&piece, MODEL_FIND(&piece.model, join, join)->box_a,
                                          FITTING_BRACKET, SIDE_BACK);

    (void)state;
    bracket->screws = 2;
    bracket->u = IN(30);
    bracket->v = IN(30);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_FITTING_NO_WOOD), 1);
    joined_end(&piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_hole_by_hand_that_meets_a_screw_is_told_by_how_much_it_misses),
        cmocka_unit_test(a_hole_by_hand_that_passes_a_screw_nearly_is_warned_of),
        cmocka_unit_test(a_hole_by_hand_near_an_edge_is_told),
        cmocka_unit_test(a_hole_by_hand_near_the_end_of_a_stile_is_refused_or_warned_of),
        cmocka_unit_test(holes_by_hand_in_one_line_of_grain_are_told),
        cmocka_unit_test(points_of_the_engine_keep_from_ends_and_edges),
        cmocka_unit_test(a_bolt_is_as_long_as_wood_and_cloth),
        cmocka_unit_test(a_bolt_that_nobody_sells_here_is_to_be_bought),
        cmocka_unit_test(the_head_of_a_short_bolt_is_let_in),
        cmocka_unit_test(holes_that_are_there_are_not_drilled_again),
        cmocka_unit_test(tips_keep_farther_from_a_face_that_is_covered),
        cmocka_unit_test(nuts_are_set_before_the_panel_that_shuts_them_in),
        cmocka_unit_test(nuts_in_an_open_hollow_hold_no_panel_back),
        cmocka_unit_test(screws_of_panels_keep_clear_of_bolts),
        cmocka_unit_test(a_bolt_that_passes_a_screw_is_told),
        cmocka_unit_test(a_bolt_of_the_wrong_length_is_told),
        cmocka_unit_test(a_cleat_has_its_screws_along_it),
        cmocka_unit_test(a_cleat_on_the_wall_is_screwed_to_its_studs),
        cmocka_unit_test(a_fitting_beside_the_wood_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
