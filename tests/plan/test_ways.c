/*
 * Ways, what shuts them, and the ways out that are offered. Every cure is taken on a copy of the
 * facts and the whole is planned again; every thing that a story names is taken out.
 */
#include "joined.h"
#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/steps.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <setjmp.h>

#include <cmocka.h>

/* ---- asking ---- */

static const struct cure *cure_called(const struct finding *finding, const char *text)
{
    for (size_t i = 0; i < finding->cure_count; i++)
        if (strcmp(finding->cures[i].text, text) == 0)
            return &finding->cures[i];
    return NULL;
}

static bool has_stop(const struct plan *plan, int kind, int64_t key)
{
    for (size_t i = 0; i < plan->findings.count; i++)
        if (plan->findings.at[i].kind == kind && plan->findings.at[i].key == key)
            return true;
    return false;
}

static bool has_step(const struct plan *plan, int kind)
{
    for (size_t i = 0; i < plan->steps.count; i++)
        if (plan->steps.at[i].kind == kind)
            return true;
    return false;
}

/* A copy of the facts, changed and planned. */
struct copy {
    struct arena arena;
    struct model model;
    const struct plan *plan;
    jmp_buf escape;
};

static void copy_begin(struct copy *copy, const struct model *model)
{
    arena_init(&copy->arena);
    copy->arena.escape = &copy->escape;
    if (setjmp(copy->escape))
        fail_msg("no memory");
    model_copy(&copy->model, model, &copy->arena);
}

static void copy_plan(struct copy *copy)
{
    assert_int_equal(plan_make(&copy->model, &copy->arena, &copy->plan), FAULT_NONE);
}

/* Takes every cure of a finding; how many there are. */
static size_t take_each_cure(const struct joined *piece, const struct finding *finding)
{
    for (size_t i = 0; i < finding->cure_count; i++) {
        struct copy copy;
        struct fault_note note;

        copy_begin(&copy, &piece->model);
        assert_int_equal(cure_apply(&copy.model, &finding->cures[i], &note), FAULT_NONE);
        copy_plan(&copy);
        if (has_stop(copy.plan, finding->kind, finding->key) ||
            copy.plan->tally.stops >= piece->plan->tally.stops)
            fail_msg("%s", finding->cures[i].text);
        arena_release(&copy.arena);
    }
    return finding->cure_count;
}

/* Takes out, one by one, each item of a kind that the story names; how many there are. */
static size_t take_out_each(const struct joined *piece, const struct finding *finding,
                            enum entity_kind entity, const int64_t *keys, const char *const *called,
                            size_t count)
{
    size_t named = 0;

    for (size_t i = 0; i < count; i++) {
        struct copy copy;

        if (!joined_tells(finding, called[i]))
            continue;
        named++;
        copy_begin(&copy, &piece->model);
        assert_true(model_remove(&copy.model, entity, keys[i]) > 0);
        copy_plan(&copy);
        if (has_stop(copy.plan, finding->kind, finding->key))
            fail_msg("%s is named for nothing", called[i]);
        arena_release(&copy.arena);
    }
    return named;
}

static const struct plan_way *first_way(const struct joined *piece, int64_t join)
{
    for (size_t i = 0; i < piece->plan->ways.count; i++)
        if (piece->plan->ways.at[i].join == join)
            return &piece->plan->ways.at[i];
    fail();
    return NULL;
}

/* ---- pieces ---- */

static void name_box(struct joined *piece, int64_t key, const char *name)
{
    struct box *box = model_find(&piece->model, ENTITY_box, key);

    box->name = name;
}

static void name_join(struct joined *piece, int64_t key, const char *name)
{
    struct join *join = model_find(&piece->model, ENTITY_join, key);

    join->name = name;
}

/* The benches of the banquette; the first is screwed to the wall, and a seat is screwed on it. */
struct seated {
    struct joined piece;
    int64_t bench, seat, wall_join, seat_join;
};

static void seat_over_the_wall_screws(struct seated *seated, int64_t place)
{
    struct joined *piece = &seated->piece;
    int64_t join = joined_banquette(piece);

    seated->bench = joined_junction(piece, join)->box_b;
    name_box(piece, seated->bench, "A");
    name_box(piece, joined_junction(piece, join)->box_a, "B");
    name_join(piece, join, "J1");
    struct join *wall = joined_join(piece, seated->bench, SIDE_BACK, 0, 0);
    wall->target = TARGET_WALL;
    wall->place = PLACE_SITE;
    wall->name = "W1";
    seated->wall_join = wall->key;
    struct box *seat = joined_box(piece, FRAME_BOARD, 84.5, 18, 0.75);
    seat->name = "S";
    seat->main_side = SIDE_TOP;
    seated->seat = seat->key;
    joined_facing(piece, seated->seat, SIDE_TOP, joined_sheet(piece, 0.75));
    struct join *laid = joined_join(piece, seated->seat, SIDE_BOTTOM, seated->bench, SIDE_TOP);
    laid->place = place;
    laid->head = HEAD_A;
    laid->name = "R1";
    seated->seat_join = laid->key;
    joined_plan(piece);
}

/* The open wing with a panel on its open side: the hollow is shut. */
static struct open_wing wing_with_a_panel(struct joined *piece, int64_t *ret_panel)
{
    struct open_wing open = joined_open_wing(piece);
    struct box *wing = model_find(&piece->model, ENTITY_box, open.wing);

    wing->width += IN(0.5);
    *ret_panel = joined_facing(piece, open.wing, SIDE_LEFT, piece->sheet)->key;
    name_box(piece, open.wing, "W");
    name_box(piece, joined_junction(piece, open.join)->box_a, "C");
    name_join(piece, open.join, "J1");
    joined_plan(piece);
    return open;
}

/* ---- ways ---- */

static void ways_of_a_join_stand_together_the_cheapest_first(void **state)
{
    struct joined piece;
    int64_t key = joined_headboard(&piece);
    struct join *join = model_find(&piece.model, ENTITY_join, key);
    size_t count = 0;
    size_t chosen = 0;

    (void)state;
    join->head = HEAD_FREE;
    joined_plan(&piece);
    for (size_t i = 0; i < piece.plan->ways.count; i++) {
        const struct plan_way *way = &piece.plan->ways.at[i];

        assert_int_equal(way->join, key);
        assert_true(i == 0 || piece.plan->ways.at[i - 1].cost <= way->cost);
        assert_true(way->first_blocker + way->blocker_count <= piece.plan->blockers.count);
        chosen += way->state == WAY_CHOSEN;
        count++;
    }
    assert_true(count >= 2);
    assert_int_equal(chosen, 1);
    assert_int_equal(piece.plan->ways.at[0].state, WAY_CHOSEN);
    joined_end(&piece);
}

static void way_names_the_lining_that_shuts_it_until_the_join_is_driven(void **state)
{
    struct joined piece;
    int64_t key = joined_headboard(&piece);
    const struct plan_way *way = first_way(&piece, key);

    (void)state;
    assert_int_equal(way->treatment, WAY_LATER);
    assert_int_equal(way->blocker_count, 1);
    assert_int_equal(piece.plan->blockers.at[way->first_blocker].kind, BLOCKER_LAYER);
    assert_false(piece.plan->blockers.at[way->first_blocker].lasting);
    joined_end(&piece);
}

/* The back is open for hand and driver; but the front panel too may be fixed after the join. */
static void at_the_bench_a_panel_that_comes_later_is_one_way_more(void **state)
{
    struct joined piece;
    int64_t key = joined_headboard(&piece);
    struct join *join = model_find(&piece.model, ENTITY_join, key);

    (void)state;
    for (int64_t place = PLACE_BENCH; place <= PLACE_SITE; place++) {
        size_t past_panels = 0;

        join->place = place;
        joined_plan(&piece);
        for (size_t i = 0; i < piece.plan->blockers.count; i++)
            past_panels += piece.plan->blockers.at[i].kind == BLOCKER_FACING;
        assert_int_equal(past_panels > 0, place == PLACE_BENCH);
        assert_true(joined_junction(&piece, key)->reachable);
    }
    joined_end(&piece);
}

static void shut_way_names_the_panel_that_shuts_it_for_good(void **state)
{
    struct joined piece;
    int64_t panel;
    struct open_wing open = wing_with_a_panel(&piece, &panel);
    const struct plan_way *way = first_way(&piece, open.join);
    bool found = false;

    (void)state;
    assert_int_equal(way->state, WAY_SHUT);
    for (size_t i = 0; i < way->blocker_count; i++) {
        const struct blocker *blocker = &piece.plan->blockers.at[way->first_blocker + i];

        assert_int_not_equal(blocker->kind, BLOCKER_FLOOR);
        found |= blocker->kind == BLOCKER_FACING && blocker->item == panel && blocker->lasting;
    }
    assert_true(found);
    joined_end(&piece);
}

static void cut_out_large_enough_for_a_hand_is_a_way_in(void **state)
{
    struct joined piece;
    int64_t panel;
    struct open_wing open = wing_with_a_panel(&piece, &panel);

    (void)state;
    struct cutout *slot = MODEL_ADD(&piece.model, cutout);
    slot->box = open.wing;
    slot->side = SIDE_LEFT;
    slot->u = 0;
    slot->v = IN(1.5);
    slot->width = IN(4);
    slot->height = IN(53);
    joined_plan(&piece);
    assert_true(joined_junction(&piece, open.join)->reachable);
    slot->width = IN(1); /* no tool goes through that */
    joined_plan(&piece);
    assert_false(joined_junction(&piece, open.join)->reachable);
    joined_end(&piece);
}

static void assert_card_says(const struct joined *piece, const char *word, const char *part)
{
    for (size_t i = 0; i < piece->plan->steps.count; i++) {
        const struct step *step = &piece->plan->steps.at[i];

        for (size_t k = 0; k < step->action_count; k++)
            if (strncmp(step->name, word, strlen(word)) == 0 && strstr(step->actions[k], part))
                return;
    }
    fail_msg("no card of %s says \"%s\"", word, part);
}

/* Foam over holes for a hand, 4 x 6 in, keeps a patch of 6 in over each; over a slot 4 in wide one
 * of 4 in before each head. */
static void padding_is_kept_bare_over_the_holes_that_hands_come_through(void **state)
{
    static const double lengths[] = {6, 53};
    struct joined piece;
    int64_t panel;
    struct open_wing open = wing_with_a_panel(&piece, &panel);
    struct layer *foam = joined_layer(&piece, open.wing, LAYER_FOAM, SHAPE_SLAB, SIDE_LEFT);

    (void)state;
    foam->thickness = IN(1);
    foam->rank = 0;
    int64_t key = foam->key;
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
        struct cutout *slot = MODEL_ADD(&piece.model, cutout);
        size_t count = 0;

        slot->box = open.wing;
        slot->side = SIDE_LEFT;
        slot->v = IN(1.5);
        slot->width = IN(4);
        slot->height = IN(lengths[i]);
        joined_plan(&piece);
        for (size_t k = 0; k < piece.plan->patches.count; k++) {
            const struct patch *patch = &piece.plan->patches.at[k];

            if (patch->layer != key || patch->slit)
                continue;
            assert_int_equal(patch->box, open.wing);
            assert_int_equal(patch->side, SIDE_LEFT);
            assert_int_equal(patch->diameter, IN(i == 0 ? 6 : 4));
            assert_in_range(patch->v, slot->v, slot->v + slot->height);
            count++;
        }
        assert_card_says(&piece, "patch",
                         i == 0 ? "No padding over the access hole: hatch it too"
                                : "No padding over the access holes: hatch them too");
        assert_card_says(&piece, "panel",
                         i == 0 ? "Cut the hole first: 4 in x 6 in, 0 in from the back, "
                                  "1-1/2 in from the bottom"
                                : "Cut the hole first: 4 in x 53 in");
        assert_int_equal(count, i == 0 ? 1 : joined_junction(&piece, open.join)->point_count);
        model_remove(&piece.model, ENTITY_cutout, slot->key);
    }
    joined_end(&piece);
}

/* The heads are driven best from the open side of the wing; but there a bench join has set a board
 * over them by the time the wing is joined in the room. */
static void dearer_way_is_taken_where_the_cheapest_is_shut_in_time(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    int64_t centre = joined_junction(&piece, open.join)->box_a;

    (void)state;
    struct join *join = model_find(&piece.model, ENTITY_join, open.join);
    join->head = HEAD_FREE;
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, open.join)->head_box, open.wing);
    struct box *board = joined_box(&piece, FRAME_BOARD, 0.5, 11.875, 56);
    board->main_side = SIDE_RIGHT;
    int64_t key = board->key;
    joined_facing(&piece, key, SIDE_RIGHT, piece.sheet);
    struct join *laid = joined_join(&piece, key, SIDE_RIGHT, open.wing, SIDE_LEFT);
    laid->head = HEAD_A;
    laid->place = PLACE_BENCH;
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, open.join)->head_box, centre);
    assert_true(joined_junction(&piece, open.join)->reachable);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_TRAPPED), 0);
    assert_int_equal(first_way(&piece, open.join)->state, WAY_POSSIBLE);
    joined_end(&piece);
}

/* ---- shut ---- */

static void closed_wing_tells_the_panel_and_the_ways_out(void **state)
{
    struct joined piece;
    int64_t panel;
    struct open_wing open = wing_with_a_panel(&piece, &panel);
    const struct finding *finding = joined_finding(&piece, FINDING_JOIN_UNREACHABLE);

    (void)state;
    assert_non_null(finding);
    assert_int_equal(finding->key, open.join);
    assert_true(joined_tells(finding, "The heads of join J1 lie inside box W."));
    assert_true(joined_tells(finding, "left panel of W"));
    assert_non_null(cure_called(finding, "Put the heads of join J1 into box C"));
    assert_null(cure_called(finding, "Make join J1 at the bench")); /* the cover lies on it */
    /* the sleeve lies on the panel, which cannot drop in after it */
    assert_null(cure_called(finding, "Let the left panel of W drop in loose, after join J1"));
    /* but tool and hand come straight through holes in it, under cloth that is loose at the rear */
    assert_non_null(cure_called(finding, "Cut access holes for join J1 in the left panel of W"));
    assert_int_equal(take_each_cure(&piece, finding), 2);
    joined_end(&piece);
}

static void story_of_a_closed_wing_names_nothing_for_nothing(void **state)
{
    struct joined piece;
    int64_t keys[2];
    static const char *const called[] = {"left panel of W", "right panel of W"};

    (void)state;
    wing_with_a_panel(&piece, &keys[0]);
    keys[1] = piece.model.facings.at[1].key;
    const struct finding *finding = joined_finding(&piece, FINDING_JOIN_UNREACHABLE);
    assert_int_equal(take_out_each(&piece, finding, ENTITY_facing, keys, called, 2), 1);
    joined_end(&piece);
}

static void bay_too_short_for_any_tool_asks_for_a_shorter_one(void **state)
{
    struct joined piece;
    int64_t key = joined_headboard(&piece);

    (void)state;
    name_join(&piece, key, "J1");
    name_box(&piece, joined_junction(&piece, key)->box_a, "C");
    for (int kind = TOOL_DRIVER; kind <= TOOL_STUBBY; kind++) {
        struct tool *tool = MODEL_ADD(&piece.model, tool);

        tool->name = "too long";
        tool->kind = kind;
        tool->length = IN(17);
    }
    piece.model.tools.at[TOOL_RIGHT_ANGLE].length = 0; /* not measured */
    struct join *join = model_find(&piece.model, ENTITY_join, key);
    join->head = HEAD_A;
    assert_int_equal(
        trade_change(&piece.model, TRADE_FROM_BUILD, "driver.right_angle", "20 in", NULL),
        FAULT_NONE);
    joined_plan(&piece);
    const struct finding *finding = joined_finding(&piece, FINDING_JOIN_UNREACHABLE);
    assert_non_null(finding);
    assert_true(joined_tells(finding, "stands"));
    assert_true(take_each_cure(&piece, finding) >= 1);
    assert_true(strncmp(finding->cures[finding->cure_count - 1].text, "Get a right-angle", 17) ==
                0);
    joined_end(&piece);
}

/* ---- trapped ---- */

static void seat_screwed_on_at_the_bench_shuts_in_the_wall_screws(void **state)
{
    struct seated seated;

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_BENCH);
    const struct finding *finding = joined_finding(&seated.piece, FINDING_JOIN_TRAPPED);
    assert_non_null(finding);
    assert_int_equal(finding->key, seated.wall_join);
    assert_true(joined_tells(finding, "The heads of join W1 lie inside box A"));
    assert_true(joined_tells(finding, "Join R1 sets box S over that way."));
    assert_true(joined_tells(finding, "Join R1 is made at the bench"));
    assert_true(joined_tells(finding, "Join W1 is made in the room."));
    assert_in_range(finding->story_count, 3, 6);
    assert_false(joined_junction(&seated.piece, seated.wall_join)->reachable);
    joined_end(&seated.piece);
}

static void seat_joined_in_the_room_lets_the_wall_screws_be_driven(void **state)
{
    struct seated seated;

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_BENCH);
    const struct finding *finding = joined_finding(&seated.piece, FINDING_JOIN_TRAPPED);
    assert_non_null(cure_called(finding, "Make join R1 in the room"));
    assert_true(take_each_cure(&seated.piece, finding) >= 1);
    joined_end(&seated.piece);
}

static void optional_seat_join_can_be_left_out(void **state)
{
    struct seated seated;

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_BENCH);
    struct join *laid = model_find(&seated.piece.model, ENTITY_join, seated.seat_join);
    laid->optional = 1;
    joined_plan(&seated.piece);
    const struct finding *finding = joined_finding(&seated.piece, FINDING_JOIN_TRAPPED);
    assert_non_null(finding);
    assert_non_null(cure_called(finding, "Leave out join R1"));
    assert_true(take_each_cure(&seated.piece, finding) >= 2);
    joined_end(&seated.piece);
}

static void story_of_the_wall_screws_names_nothing_for_nothing(void **state)
{
    struct seated seated;
    static const char *const called[] = {"join J1", "Join R1"};

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_BENCH);
    const int64_t keys[] = {seated.piece.model.joins.at[0].key, seated.seat_join};
    const struct finding *finding = joined_finding(&seated.piece, FINDING_JOIN_TRAPPED);
    assert_int_equal(take_out_each(&seated.piece, finding, ENTITY_join, keys, called, 2), 1);
    joined_end(&seated.piece);
}

static void seat_that_is_laid_on_is_lifted_off_for_the_wall_screws(void **state)
{
    struct seated seated;

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_BENCH);
    struct join *laid = model_find(&seated.piece.model, ENTITY_join, seated.seat_join);
    laid->fastener = FASTENER_REST;
    joined_plan(&seated.piece);
    assert_int_equal(joined_findings(&seated.piece, FINDING_JOIN_TRAPPED), 0);
    assert_true(joined_junction(&seated.piece, seated.wall_join)->reachable);
    assert_true(joined_constrained(&seated.piece, JOIN_BEFORE_JOIN, seated.wall_join,
                                   seated.seat_join, "P50"));
    joined_end(&seated.piece);
}

/* An edge that is stapled in the room from where a wall stands: the piece stands off it, and is
 * pushed there. The seat is laid on after that, and the rehearsal sees none before. */
static void a_seat_that_is_laid_on_after_the_push_is_not_there_before(void **state)
{
    struct seated seated;

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_BENCH);
    struct model *model = &seated.piece.model;
    struct join *laid = model_find(model, ENTITY_join, seated.seat_join);
    struct layer *cover =
        joined_layer(&seated.piece, seated.bench, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
    struct layer_edge *edge = MODEL_ADD(model, layer_edge);

    laid->fastener = FASTENER_REST;
    laid->place = PLACE_SITE;
    cover->left = cover->right = cover->top = cover->bottom = ENDING_SIDE;
    edge->layer = cover->key;
    edge->edge = EDGE_LEFT;
    edge->class = CLASS_SITE;
    MODEL_ADD(model, wall)->side = SIDE_LEFT;
    joined_plan(&seated.piece);
    assert_true(has_step(seated.piece.plan, STEP_PUSH));
    assert_int_equal(joined_findings(&seated.piece, FINDING_JOIN_NOT_PROVED), 0);
    joined_end(&seated.piece);
}

/* A seat of 3/4 in on sticks of 1-1/2, in a workshop with #10 x 3 in alone: 2 in is had. */
static void a_screw_that_is_missing_in_the_shop_is_offered(void **state)
{
    struct seated seated;
    struct stock *stock;

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_SITE);
    stock = MODEL_ADD(&seated.piece.model, stock);
    stock->name = "Screws #10 x 3";
    stock->kind = STOCK_SCREW;
    stock->gauge = 10;
    stock->length = IN(3);
    joined_plan(&seated.piece);
    assert_int_equal(joined_findings(&seated.piece, FINDING_SCREW_NONE_FITS), 1);
    const struct finding *finding = joined_finding(&seated.piece, FINDING_SCREW_NONE_FITS);
    assert_non_null(cure_called(finding, "Buy Screws #10 x 2"));
    assert_int_equal(take_each_cure(&seated.piece, finding), 1);
    joined_end(&seated.piece);
}

/* A plinth of 3/4 in under it lets no hand come from below, 12 in of it do. */
static void nothing_comes_from_below_what_stands_on_a_low_plinth(void **state)
{
    static const double heights[] = {0.75, 12};

    (void)state;
    for (size_t i = 0; i < sizeof heights / sizeof *heights; i++) {
        struct seated seated;

        seat_over_the_wall_screws(&seated, PLACE_BENCH);
        struct joined *piece = &seated.piece;
        int64_t plinth = joined_box(piece, FRAME_BOARD, 20, 16, heights[i])->key;
        struct join *under = joined_join(piece, plinth, SIDE_TOP, seated.bench, SIDE_BOTTOM);

        under->fastener = FASTENER_REST;
        under->name = "R2";
        joined_plan(piece);
        assert_int_equal(joined_findings(piece, FINDING_JOIN_TRAPPED), i == 0);
        joined_end(piece);
    }
}

static void join_given_up_closes_no_circle_in_the_order(void **state)
{
    struct seated seated;

    (void)state;
    seat_over_the_wall_screws(&seated, PLACE_BENCH);
    assert_int_equal(joined_findings(&seated.piece, FINDING_ORDER_CIRCLE), 0);
    assert_false(joined_constrained(&seated.piece, JOIN_BEFORE_JOIN, seated.wall_join,
                                    seated.seat_join, "P50"));
    joined_end(&seated.piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ways_of_a_join_stand_together_the_cheapest_first),
        cmocka_unit_test(way_names_the_lining_that_shuts_it_until_the_join_is_driven),
        cmocka_unit_test(at_the_bench_a_panel_that_comes_later_is_one_way_more),
        cmocka_unit_test(shut_way_names_the_panel_that_shuts_it_for_good),
        cmocka_unit_test(cut_out_large_enough_for_a_hand_is_a_way_in),
        cmocka_unit_test(padding_is_kept_bare_over_the_holes_that_hands_come_through),
        cmocka_unit_test(dearer_way_is_taken_where_the_cheapest_is_shut_in_time),
        cmocka_unit_test(closed_wing_tells_the_panel_and_the_ways_out),
        cmocka_unit_test(story_of_a_closed_wing_names_nothing_for_nothing),
        cmocka_unit_test(bay_too_short_for_any_tool_asks_for_a_shorter_one),
        cmocka_unit_test(seat_screwed_on_at_the_bench_shuts_in_the_wall_screws),
        cmocka_unit_test(seat_joined_in_the_room_lets_the_wall_screws_be_driven),
        cmocka_unit_test(optional_seat_join_can_be_left_out),
        cmocka_unit_test(story_of_the_wall_screws_names_nothing_for_nothing),
        cmocka_unit_test(seat_that_is_laid_on_is_lifted_off_for_the_wall_screws),
        cmocka_unit_test(a_seat_that_is_laid_on_after_the_push_is_not_there_before),
        cmocka_unit_test(a_screw_that_is_missing_in_the_shop_is_offered),
        cmocka_unit_test(nothing_comes_from_below_what_stands_on_a_low_plinth),
        cmocka_unit_test(join_given_up_closes_no_circle_in_the_order),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
