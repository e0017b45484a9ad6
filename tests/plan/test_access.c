/* The ways to a join's heads, held against the worked examples, which were computed by hand. */
#include "joined.h"
#include "plan/access.h"
#include "plan/findings.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <setjmp.h>

#include <cmocka.h>

static struct edge_runs runs_of(const struct joined *piece, int64_t layer, int64_t edge)
{
    struct planning planning = {&piece->model,
                                (struct plan *)(uintptr_t)piece->plan,
                                (struct arena *)(uintptr_t)&piece->made,
                                NULL,
                                piece->plan->value,
                                NULL};
    const struct layer *entry = MODEL_FIND(&piece->model, layer, layer);

    return access_edge_runs(&planning, entry, MODEL_FIND(&piece->model, box, entry->box), edge);
}

static int64_t layer_of(const struct joined *piece, int64_t kind, int64_t box)
{
    for (size_t i = 0; i < piece->model.layers.count; i++) {
        const struct layer *layer = &piece->model.layers.at[i];

        if (layer->kind == kind && layer->box == box)
            return layer->key;
    }
    fail();
    return 0;
}

/* ---- wing headboard ---- */

static void heads_in_the_centre_are_reached_through_its_open_back(void **state)
{
    struct joined piece;
    const struct junction *junction = joined_junction(&piece, joined_headboard(&piece));

    (void)state;
    assert_true(junction->reachable);
    assert_true(junction->head_inside);
    assert_int_equal(junction->head_box, junction->box_a);
    assert_int_equal(junction->reach_side, SIDE_BACK);
    assert_int_equal(junction->patch, 0);
    joined_end(&piece);
}

static void lower_bay_leaves_the_driver_thirteen_and_seven_eighths(void **state)
{
    struct joined piece;
    const struct junction *junction = joined_junction(&piece, joined_headboard(&piece));

    (void)state;
    assert_int_equal(junction->room, IN(13.875));
    assert_int_equal(junction->room_needed, IN(13));
    joined_end(&piece);
}

static void rail_beside_the_outer_heads_asks_for_a_long_bit(void **state)
{
    struct joined piece;
    const struct junction *junction = joined_junction(&piece, joined_headboard(&piece));

    (void)state;
    assert_int_equal(junction->tool, TOOL_LONG_BIT);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_TIGHT), 1);
    assert_int_equal(joined_argument(&piece, FINDING_JOIN_TIGHT, 0), IN(1.5));
    assert_int_equal(joined_argument(&piece, FINDING_JOIN_TIGHT, 1), IN(1.75));
    joined_end(&piece);
}

static void lining_over_the_open_back_waits_for_the_join(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    int64_t lining = layer_of(&piece, LAYER_LINING, joined_junction(&piece, join)->box_a);
    struct edge_runs runs = runs_of(&piece, lining, EDGE_TOP);

    (void)state;
    assert_true(joined_constrained(&piece, JOIN_BEFORE_LAYER, join, lining, "P51"));
    assert_int_equal(runs.count, 1);
    assert_int_equal(runs.at[0].class, CLASS_SITE);
    assert_int_equal(runs.at[0].to - runs.at[0].from, IN(63));
    joined_end(&piece);
}

static void wing_cover_is_free_on_every_edge(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    int64_t cover = layer_of(&piece, LAYER_COVER, joined_junction(&piece, join)->box_b);

    (void)state;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        assert_int_equal(runs_of(&piece, cover, edge).count, 0);
    joined_end(&piece);
}

static void cloth_between_the_faces_comes_before_the_join(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    int64_t cover = layer_of(&piece, LAYER_COVER, joined_junction(&piece, join)->box_b);

    (void)state;
    assert_true(joined_constrained(&piece, LAYER_BEFORE_JOIN, join, cover, "P45"));
    joined_end(&piece);
}

static void each_constraint_stands_once(void **state)
{
    struct joined piece;

    (void)state;
    joined_headboard(&piece);
    assert_true(piece.plan->constraints.count > 0);
    for (size_t i = 0; i < piece.plan->constraints.count; i++) {
        const struct constraint *a = &piece.plan->constraints.at[i];

        for (size_t j = i + 1; j < piece.plan->constraints.count; j++) {
            const struct constraint *b = &piece.plan->constraints.at[j];

            assert_false(a->kind == b->kind && a->join == b->join && a->item == b->item);
        }
    }
    joined_end(&piece);
}

static void closed_back_leaves_no_way_in(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    int64_t centre = joined_junction(&piece, join)->box_a;

    (void)state;
    joined_facing(&piece, centre, SIDE_BACK, piece.sheet);
    struct box *box = model_find(&piece.model, ENTITY_box, centre);
    box->depth += IN(0.5);
    joined_plan(&piece);
    assert_false(joined_junction(&piece, join)->reachable);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_UNREACHABLE), 1);
    joined_end(&piece);
}

static void closed_back_is_fixed_after_a_join_at_the_bench(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    int64_t centre = joined_junction(&piece, join)->box_a;

    (void)state;
    int64_t back = joined_facing(&piece, centre, SIDE_BACK, piece.sheet)->key;
    struct box *box = model_find(&piece.model, ENTITY_box, centre);
    box->depth += IN(0.5);
    struct join *entry = model_find(&piece.model, ENTITY_join, join);
    entry->place = PLACE_BENCH;
    joined_plan(&piece);
    assert_true(joined_junction(&piece, join)->reachable);
    assert_true(joined_constrained(&piece, JOIN_BEFORE_FACING, join, back, "P51"));
    joined_end(&piece);
}

static void point_by_hand_without_wood_is_told(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    for (int i = 0; i < 2; i++) {
        struct point *point = MODEL_ADD(&piece.model, point);

        point->join = join;
        point->u = i ? IN(2.75) : IN(0.75); /* the second stands before the ply only */
        point->v = IN(30);
    }
    joined_plan(&piece);
    assert_int_equal(joined_argument(&piece, FINDING_JOIN_FEW_POINTS, 0), 1);
    assert_true(joined_point(&piece, join, 1)->screw == PLAN_NONE);
    joined_end(&piece);
}

static void loose_panel_over_the_way_waits_for_the_join(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    int64_t centre = joined_junction(&piece, join)->box_a;
    struct facing *lid = joined_facing(&piece, centre, SIDE_BACK, piece.sheet);

    (void)state;
    lid->loose = 1;
    int64_t key = lid->key;
    joined_plan(&piece);
    assert_true(joined_junction(&piece, join)->reachable);
    assert_true(joined_constrained(&piece, JOIN_BEFORE_FACING, join, key, "P51"));
    joined_end(&piece);
}

/* ---- tools ---- */

static void shorter_driver_of_the_workshop_counts(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    struct tool *tool = MODEL_ADD(&piece.model, tool);

    (void)state;
    tool->kind = TOOL_DRIVER;
    tool->length = IN(7);
    tool->radius = IN(1.25);
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, join)->tool, TOOL_DRIVER);
    assert_int_equal(joined_junction(&piece, join)->room_needed, IN(10));
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_TIGHT), 0);
    joined_end(&piece);
}

static void bay_too_short_for_the_driver_takes_a_shorter_tool(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    struct tool *tool = MODEL_ADD(&piece.model, tool);

    (void)state;
    tool->kind = TOOL_DRIVER;
    tool->length = IN(17);
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, join)->tool, TOOL_RIGHT_ANGLE);
    joined_end(&piece);
}

/* ---- banquette ---- */

static void banquette_top_row_has_thirteen_and_a_quarter_in_line(void **state)
{
    struct joined piece;
    const struct junction *junction = joined_junction(&piece, joined_banquette(&piece));

    (void)state;
    assert_int_equal(junction->room, IN(13.25));
    assert_int_equal(junction->room_needed, IN(13));
    joined_end(&piece);
}

static void floor_below_the_bottom_row_asks_for_a_long_bit(void **state)
{
    struct joined piece;
    const struct junction *junction = joined_junction(&piece, joined_banquette(&piece));

    (void)state;
    assert_int_equal(junction->tool, TOOL_LONG_BIT);
    assert_int_equal(joined_argument(&piece, FINDING_JOIN_TIGHT, 0), IN(0.75));
    assert_int_equal(junction->reach_side, SIDE_TOP);
    joined_end(&piece);
}

static void seat_is_laid_on_after_the_join_under_it(void **state)
{
    struct joined piece;
    int64_t join = joined_banquette(&piece);
    int64_t bench = joined_junction(&piece, join)->box_a;

    (void)state;
    int64_t seat = joined_box(&piece, FRAME_BOARD, 42, 18, 0.75)->key;
    joined_facing(&piece, seat, SIDE_TOP, joined_sheet(&piece, 0.75));
    struct join *rest = joined_join(&piece, bench, SIDE_TOP, seat, SIDE_BOTTOM);
    rest->fastener = FASTENER_REST;
    int64_t key = rest->key;
    joined_plan(&piece);
    assert_true(joined_constrained(&piece, JOIN_BEFORE_JOIN, join, key, "P50"));
    assert_int_equal(joined_junction(&piece, key)->point_count, 0);
    joined_end(&piece);
}

/* ---- open wing ---- */

static void heads_on_the_open_side_of_a_wing_lie_outside_under_a_patch(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    const struct junction *junction = joined_junction(&piece, open.join);

    (void)state;
    assert_true(junction->reachable);
    assert_false(junction->head_inside);
    assert_int_equal(junction->head_side, SIDE_LEFT);
    assert_int_equal(junction->room, -1);
    assert_int_equal(junction->patch, IN(1.5));
    joined_end(&piece);
}

static void both_flaps_of_an_open_wing_wait_for_the_join(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);

    (void)state;
    assert_true(joined_constrained(&piece, JOIN_BEFORE_LAYER, open.join, open.lining, "P46"));
    assert_true(joined_constrained(&piece, JOIN_BEFORE_LAYER, open.join, open.cover, "P46"));
    assert_true(joined_constrained(&piece, LAYER_BEFORE_JOIN, open.join, open.cover, "P45"));
    joined_end(&piece);
}

static void opening_at_a_head_is_six_and_its_distance_from_the_edge(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    struct edge_runs runs = runs_of(&piece, open.lining, EDGE_LEFT);

    (void)state;
    assert_int_equal(runs.count, 6);
    assert_int_equal(runs.at[1].to - runs.at[1].from, IN(7.25));
    assert_int_equal(runs.at[2].from - runs.at[1].to, IN(2.75));
    assert_int_equal(runs.at[1].class, CLASS_SITE);
    assert_int_equal(runs.at[1].join, open.join);
    assert_int_equal(runs_of(&piece, open.lining, EDGE_RIGHT).count, 0);
    joined_end(&piece);
}

static void openings_closer_than_the_least_rest_are_one(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);

    (void)state;
    assert_int_equal(trade_change(&piece.model, TRADE_FROM_BUILD, "open.merge", "3", NULL),
                     FAULT_NONE);
    joined_plan(&piece);
    assert_int_equal(runs_of(&piece, open.lining, EDGE_LEFT).count, 1);
    joined_end(&piece);
}

static void cover_that_opens_in_front_is_peeled_back_to_the_heads(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    struct layer *cover = model_find(&piece.model, ENTITY_layer, open.cover);

    (void)state;
    cover->left = ENDING_SEWN;
    cover->right = ENDING_OPEN;
    joined_plan(&piece);
    struct edge_runs runs = runs_of(&piece, open.cover, EDGE_RIGHT);
    assert_true(joined_junction(&piece, open.join)->reachable);
    assert_int_equal(runs.count, 1); /* 16.625 wide at pitch 10 */
    assert_int_equal(runs_of(&piece, open.cover, EDGE_LEFT).count, 0);
    joined_end(&piece);
}

static void cover_sewn_all_round_is_told(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    struct layer *cover = model_find(&piece.model, ENTITY_layer, open.cover);

    (void)state;
    cover->left = ENDING_SEWN;
    joined_plan(&piece);
    assert_false(joined_junction(&piece, open.join)->reachable);
    joined_end(&piece);
}

static void panel_on_the_open_side_is_told(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    struct box *wing = model_find(&piece.model, ENTITY_box, open.wing);

    (void)state;
    wing->width += IN(0.5);
    joined_facing(&piece, open.wing, SIDE_LEFT, piece.sheet);
    joined_plan(&piece);
    assert_false(joined_junction(&piece, open.join)->reachable);
    assert_int_equal(joined_argument(&piece, FINDING_JOIN_UNREACHABLE, 0), 0);
    joined_end(&piece);
}

static void pierced_cover_does_not_wait(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    struct join *join = model_find(&piece.model, ENTITY_join, open.join);

    (void)state;
    join->treatment = TREATMENT_PIERCED;
    joined_plan(&piece);
    assert_false(joined_constrained(&piece, JOIN_BEFORE_LAYER, open.join, open.cover, "P46"));
    assert_int_equal(runs_of(&piece, open.cover, EDGE_LEFT).count, 0);
    joined_end(&piece);
}

static void free_head_goes_to_the_side_that_a_driver_reaches(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    struct join *join = model_find(&piece.model, ENTITY_join, open.join);

    (void)state;
    join->head = HEAD_FREE;
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, open.join)->head_box, open.wing);
    assert_int_equal(joined_junction(&piece, open.join)->tool, TOOL_DRIVER);
    joined_end(&piece);
}

/* ---- trapped ---- */

static void edge_that_lands_in_the_mating_zone_is_trapped_there(void **state)
{
    struct joined piece;
    int64_t join = joined_banquette(&piece);
    int64_t bench = joined_junction(&piece, join)->box_b;
    struct layer *apron = joined_layer(&piece, bench, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);

    (void)state;
    apron->u = IN(18); /* its inner end is turned under the other bench */
    int64_t key = apron->key;
    joined_plan(&piece);
    struct edge_runs runs = runs_of(&piece, key, EDGE_LEFT);
    assert_int_equal(runs.count, 1);
    assert_int_equal(runs.at[0].class, CLASS_TRAPPED);
    assert_int_equal(runs.at[0].to - runs.at[0].from, IN(14.25));
    assert_true(joined_constrained(&piece, LAYER_BEFORE_JOIN, join, key, "P45"));
    assert_int_equal(runs_of(&piece, key, EDGE_RIGHT).count, 0);
    assert_int_equal(joined_junction(&piece, join)->cloth, 0);
    joined_end(&piece);
}

/* Two frames side by side and one cover over both: its edge runs round the pair, and nothing of it
 * lies in the joint. */
static void cover_over_a_pair_is_put_on_after_the_join(void **state)
{
    struct joined piece;
    int64_t boxes[2];

    (void)state;
    joined_start(&piece, 2.5);
    struct group *group = MODEL_ADD(&piece.model, group);
    int64_t pair = group->key;
    for (int i = 0; i < 2; i++) {
        boxes[i] = joined_box(&piece, FRAME_LADDER, 24, 2.5, 30)->key;
        struct group_box *in = MODEL_ADD(&piece.model, group_box);

        in->group = pair;
        in->box = boxes[i];
    }
    joined_join(&piece, boxes[0], SIDE_RIGHT, boxes[1], SIDE_LEFT);
    joined_layer(&piece, 0, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT)->group = pair;
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_ORDER_CIRCLE), 0);
    assert_int_equal(piece.plan->patches.count, 0);
    joined_end(&piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(heads_in_the_centre_are_reached_through_its_open_back),
        cmocka_unit_test(lower_bay_leaves_the_driver_thirteen_and_seven_eighths),
        cmocka_unit_test(rail_beside_the_outer_heads_asks_for_a_long_bit),
        cmocka_unit_test(lining_over_the_open_back_waits_for_the_join),
        cmocka_unit_test(wing_cover_is_free_on_every_edge),
        cmocka_unit_test(cloth_between_the_faces_comes_before_the_join),
        cmocka_unit_test(cover_over_a_pair_is_put_on_after_the_join),
        cmocka_unit_test(each_constraint_stands_once),
        cmocka_unit_test(closed_back_leaves_no_way_in),
        cmocka_unit_test(closed_back_is_fixed_after_a_join_at_the_bench),
        cmocka_unit_test(point_by_hand_without_wood_is_told),
        cmocka_unit_test(loose_panel_over_the_way_waits_for_the_join),
        cmocka_unit_test(shorter_driver_of_the_workshop_counts),
        cmocka_unit_test(bay_too_short_for_the_driver_takes_a_shorter_tool),
        cmocka_unit_test(banquette_top_row_has_thirteen_and_a_quarter_in_line),
        cmocka_unit_test(floor_below_the_bottom_row_asks_for_a_long_bit),
        cmocka_unit_test(seat_is_laid_on_after_the_join_under_it),
        cmocka_unit_test(heads_on_the_open_side_of_a_wing_lie_outside_under_a_patch),
        cmocka_unit_test(both_flaps_of_an_open_wing_wait_for_the_join),
        cmocka_unit_test(opening_at_a_head_is_six_and_its_distance_from_the_edge),
        cmocka_unit_test(openings_closer_than_the_least_rest_are_one),
        cmocka_unit_test(cover_that_opens_in_front_is_peeled_back_to_the_heads),
        cmocka_unit_test(cover_sewn_all_round_is_told),
        cmocka_unit_test(panel_on_the_open_side_is_told),
        cmocka_unit_test(pierced_cover_does_not_wait),
        cmocka_unit_test(free_head_goes_to_the_side_that_a_driver_reaches),
        cmocka_unit_test(edge_that_lands_in_the_mating_zone_is_trapped_there),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
