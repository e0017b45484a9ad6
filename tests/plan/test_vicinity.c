/*
 * Other boxes, and the walls, where a driver has to stand: what sets them there comes later, or is
 * told of. Tool sizes are the trade values: 10 in and the screw behind the head, 1-3/4 in beside
 * it; 1/2 in with a long bit (common practice, no source).
 */
#include "joined.h"
#include "plan/findings.h"
#include "plan/rehearse.h"
#include "plan/steps.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <setjmp.h>

#include <cmocka.h>

/* ---- a board between a box and a post, all on a base ---- */

struct crowded {
    struct joined piece;
    int64_t board, box, post;
    int64_t join;    /* of the board and the box; heads on the board's left */
    int64_t by_post; /* of the post and the base */
};

static int64_t board_of(struct joined *piece, double width, double depth, double height,
                        int64_t side)
{
    struct box *board = joined_box(piece, FRAME_BOARD, width, depth, height);

    board->main_side = side;
    joined_facing(piece, board->key, side, joined_sheet(piece, 0.75));
    return board->key;
}

static struct join *put_on(struct joined *piece, int64_t base, int64_t box, double from_left)
{
    struct join *join = joined_join(piece, base, SIDE_TOP, box, SIDE_BOTTOM);

    join->offset_u = IN(from_left);
    return join;
}

/* The post stands `gap` left of the board, as broad as the whole. */
static void crowd(struct crowded *crowded, double gap)
{
    struct joined *piece = &crowded->piece;

    joined_start(piece, 1.5);
    int64_t base = joined_box(piece, FRAME_CRATE, 60, 20, 10)->key;
    crowded->board = board_of(piece, 0.75, 20, 20, SIDE_LEFT);
    crowded->box = joined_box(piece, FRAME_CRATE, 20, 20, 20)->key;
    struct box *post = joined_box(piece, FRAME_LADDER, 1.5, 20, 20);
    post->main_side = SIDE_LEFT;
    crowded->post = post->key;
    put_on(piece, base, crowded->box, 30);
    struct join *join = joined_join(piece, crowded->board, SIDE_RIGHT, crowded->box, SIDE_LEFT);
    join->head = HEAD_A;
    crowded->join = join->key;
    crowded->by_post = put_on(piece, base, crowded->post, 30 - 0.75 - gap - 1.5)->key;
}

static size_t step_of(const struct plan *plan, int kind, int64_t join)
{
    for (size_t i = 0; i < plan->steps.count; i++)
        if (plan->steps.at[i].kind == kind && plan->steps.at[i].join == join)
            return i;
    fail_msg("no such step");
    return 0;
}

/* ---- boxes ---- */

static void a_box_in_the_driver_s_way_is_set_there_later(void **state)
{
    struct crowded crowded;
    struct joined *piece = &crowded.piece;

    (void)state;
    crowd(&crowded, 4);
    joined_plan(piece);
    assert_true(joined_junction(piece, crowded.join)->reachable);
    assert_true(joined_constrained(piece, JOIN_BEFORE_JOIN, crowded.join, crowded.by_post, "P50"));
    assert_true(step_of(piece->plan, STEP_DRIVE, crowded.join) <
                step_of(piece->plan, STEP_OFFER, crowded.by_post));
    joined_end(piece);
}

static void a_join_that_was_left_out_holds_nothing_up(void **state)
{
    struct crowded crowded;
    struct joined *piece = &crowded.piece;

    (void)state;
    crowd(&crowded, 4);
    ((struct join *)model_find(&piece->model, ENTITY_join, crowded.by_post))->optional = 1;
    MODEL_ADD(&piece->model, left_out)->join = crowded.by_post;
    joined_plan(piece);
    assert_false(joined_constrained(piece, JOIN_BEFORE_JOIN, crowded.join, crowded.by_post, "P50"));
    joined_end(piece);
}

static void a_box_beyond_the_driver_does_not_wait(void **state)
{
    struct crowded crowded;
    struct joined *piece = &crowded.piece;

    (void)state;
    crowd(&crowded, 16);
    joined_plan(piece);
    assert_false(joined_constrained(piece, JOIN_BEFORE_JOIN, crowded.join, crowded.by_post, "P50"));
    joined_end(piece);
}

/* The post is there before the move, the board and the box meet after it. */
static void a_box_that_is_there_before_traps_the_join(void **state)
{
    struct crowded crowded;
    struct joined *piece = &crowded.piece;

    (void)state;
    crowd(&crowded, 4);
    for (size_t i = 0; i < piece->model.joins.count; i++)
        piece->model.joins.at[i].place = PLACE_BENCH;
    struct join *join = model_find(&piece->model, ENTITY_join, crowded.join);
    join->place = PLACE_SITE;
    ((struct box *)model_find(&piece->model, ENTITY_box, crowded.post))->name = "P";
    joined_plan(piece);
    assert_false(joined_junction(piece, crowded.join)->reachable);
    assert_true(
        joined_tells(joined_finding(piece, FINDING_JOIN_TRAPPED), "sets box P over that way"));
    joined_end(piece);
}

/* ---- a post that stands askew ---- */

/* Whether every point of a join is reached when it is driven after all else. */
static bool reached_when_last(const struct joined *piece, int64_t join)
{
    size_t count = piece->plan->steps.count;
    size_t drive = step_of(piece->plan, STEP_DRIVE, join);
    size_t *sequence = calloc(count, sizeof *sequence);
    const struct rehearsal *result;
    struct arena arena;
    bool reached = true;

    assert_non_null(sequence);
    for (size_t i = 0; i < count; i++)
        sequence[i] = i + 1 == count ? drive : i < drive ? i : i + 1;
    arena_init(&arena);
    assert_int_equal(rehearse_sequence(piece->plan, sequence, count, &arena, &result), FAULT_NONE);
    for (size_t i = 0; i < result->points.count; i++)
        reached = reached && (result->points.at[i].join != join ||
                              result->points.at[i].verdicts[PROOF_REACHED].lapse == LAPSE_NONE);
    arena_release(&arena);
    free(sequence);
    return reached;
}

/* It begins 16 in left of the board, 20 in deep; by 20 degrees its front end comes 6.8 in nearer or
 * goes away as far. The driver and its screw take up 12 in. */
static void askew(struct crowded *crowded, int64_t degrees)
{
    struct box *post;

    crowd(crowded, 16);
    post = model_find(&crowded->piece.model, ENTITY_box, crowded->post);
    post->lean_axis = AXIS_Z;
    post->lean = 1000 * degrees;
    joined_plan(&crowded->piece);
}

static void a_post_that_comes_nearer_to_one_side_is_set_there_later(void **state)
{
    struct crowded crowded;
    struct joined *piece = &crowded.piece;

    (void)state;
    askew(&crowded, 20);
    assert_true(joined_constrained(piece, JOIN_BEFORE_JOIN, crowded.join, crowded.by_post, "P50"));
    assert_false(reached_when_last(piece, crowded.join));
    joined_end(piece);
}

static void a_post_that_goes_away_does_not_wait(void **state)
{
    struct crowded crowded;
    struct joined *piece = &crowded.piece;

    (void)state;
    askew(&crowded, -20);
    assert_false(joined_constrained(piece, JOIN_BEFORE_JOIN, crowded.join, crowded.by_post, "P50"));
    assert_true(reached_when_last(piece, crowded.join));
    joined_end(piece);
}

/* ---- walls ---- */

/* A wall on the left; a box of the piece is fixed to what stands behind it. */
static int64_t fix_at_left_wall(struct crowded *crowded, int64_t box)
{
    struct wall *wall = MODEL_ADD(&crowded->piece.model, wall);
    struct join *fixed = joined_join(&crowded->piece, box, SIDE_BACK, 0, 0);

    wall->side = SIDE_LEFT;
    fixed->target = TARGET_WALL;
    fixed->place = PLACE_SITE;
    return fixed->key;
}

/* Without the post the board is the leftmost but for the base; the base is cut short under it. */
static void board_at_the_left(struct crowded *crowded)
{
    struct joined *piece = &crowded->piece;

    crowd(crowded, 4);
    assert_true(model_remove(&piece->model, ENTITY_box, crowded->post) > 0);
    for (size_t i = 0; i < piece->model.joins.count; i++)
        if (piece->model.joins.at[i].offset_u > 0)
            piece->model.joins.at[i].offset_u = IN(0.75);
}

static void boxes_are_joined_before_they_are_fixed_at_the_wall(void **state)
{
    struct crowded crowded;
    struct joined *piece = &crowded.piece;

    (void)state;
    board_at_the_left(&crowded);
    int64_t fixed = fix_at_left_wall(&crowded, crowded.box);
    joined_plan(piece);
    assert_true(joined_junction(piece, crowded.join)->reachable);
    assert_true(joined_constrained(piece, JOIN_BEFORE_JOIN, crowded.join, fixed, "P50"));
    joined_end(piece);
}

/* A board that is screwed to what stands behind it, with a wall on its left. */
static struct join *board_in_a_corner(struct joined *piece)
{
    joined_start(piece, 1.5);
    int64_t board = board_of(piece, 30, 0.75, 30, SIDE_FRONT);
    MODEL_ADD(&piece->model, wall)->side = SIDE_LEFT;
    struct join *join = joined_join(piece, board, SIDE_BACK, 0, 0);
    join->target = TARGET_WALL;
    join->place = PLACE_SITE;
    return join;
}

static void a_wall_beside_screws_into_another_wall_is_told(void **state)
{
    struct joined piece;
    struct join *join = board_in_a_corner(&piece);

    (void)state;
    join->end = IN(1);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_TIGHT), 1);
    assert_int_equal(joined_junction(&piece, join->key)->tool, TOOL_LONG_BIT);
    piece.model.walls.at[0].gap = IN(1);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_TIGHT), 0);
    joined_end(&piece);
}

/* So near that not even a long bit passes: the way out is to stand off that wall. */
static void standing_off_a_wall_is_offered(void **state)
{
    struct joined piece;
    struct join *join = board_in_a_corner(&piece);
    struct point *point = MODEL_ADD(&piece.model, point);

    (void)state;
    point->join = join->key;
    point->u = IN(0.375);
    point->v = IN(15);
    joined_plan(&piece);
    const struct finding *finding = joined_finding(&piece, FINDING_JOIN_UNREACHABLE);
    assert_true(joined_tells(finding, "The left wall stands"));
    assert_int_equal(finding->cure_count, 1);
    assert_non_null(strstr(finding->cures[0].text, "off the left wall"));
    joined_end(&piece);
}

/* ---- boxes that come to their place in a straight line ---- */

/* A box in a pit of four boards on a base, with a lid over it: only from above does it come in. */
struct pit {
    struct joined piece;
    int64_t box, front, lid;
    int64_t put_in, put_over; /* the joins of the box and the lid */
};

static struct join *lay_on(struct joined *piece, int64_t base, int64_t box, double u, double v)
{
    struct join *join = joined_join(piece, base, SIDE_TOP, box, SIDE_BOTTOM);

    join->fastener = FASTENER_REST;
    join->offset_u = IN(u);
    join->offset_v = IN(v);
    return join;
}

static void dig(struct pit *pit)
{
    struct joined *piece = &pit->piece;

    joined_start(piece, 1.5);
    int64_t base = joined_box(piece, FRAME_CRATE, 40, 30, 10)->key;
    int64_t left = board_of(piece, 0.75, 30, 20, SIDE_LEFT);
    lay_on(piece, base, left, 0, 0);
    lay_on(piece, base, board_of(piece, 0.75, 30, 20, SIDE_LEFT), 39.25, 0);
    lay_on(piece, base, board_of(piece, 38.5, 0.75, 20, SIDE_FRONT), 0.75, 0);
    pit->front = board_of(piece, 38.5, 0.75, 20, SIDE_FRONT);
    lay_on(piece, base, pit->front, 0.75, 29.25);
    pit->box = joined_box(piece, FRAME_CRATE, 30, 20, 18)->key;
    pit->put_in = lay_on(piece, base, pit->box, 5, 5)->key;
    pit->lid = board_of(piece, 40, 30, 0.75, SIDE_TOP);
    pit->put_over = lay_on(piece, left, pit->lid, 0, 0)->key;
}

static void a_box_comes_in_before_the_lid_is_laid_over_it(void **state)
{
    struct pit pit;
    struct joined *piece = &pit.piece;

    (void)state;
    dig(&pit);
    joined_plan(piece);
    assert_int_equal(joined_findings(piece, FINDING_BOX_KEPT_OUT), 0);
    assert_true(joined_constrained(piece, JOIN_BEFORE_JOIN, pit.put_in, pit.put_over, "S24"));
    assert_false(joined_constrained(piece, JOIN_BEFORE_JOIN, pit.put_over, pit.put_in, "S24"));
    assert_true(step_of(piece->plan, STEP_OFFER, pit.put_in) <
                step_of(piece->plan, STEP_OFFER, pit.put_over));
    joined_end(piece);
}

static void a_box_that_comes_from_the_front_waits_for_nothing(void **state)
{
    struct pit pit;
    struct joined *piece = &pit.piece;

    (void)state;
    dig(&pit);
    assert_true(model_remove(&piece->model, ENTITY_box, pit.front) > 0);
    joined_plan(piece);
    assert_false(joined_constrained(piece, JOIN_BEFORE_JOIN, pit.put_in, pit.put_over, "S24"));
    joined_end(piece);
}

/* All is screwed together at the bench, the box is to come in the room. */
static void a_box_that_the_lid_keeps_out_is_told(void **state)
{
    struct pit pit;
    struct joined *piece = &pit.piece;

    (void)state;
    dig(&pit);
    for (size_t i = 0; i < piece->model.joins.count; i++) {
        struct join *join = &piece->model.joins.at[i];

        join->place = join->key == pit.put_in ? PLACE_SITE : PLACE_BENCH;
        join->fastener = join->key == pit.put_in ? FASTENER_REST : FASTENER_SCREW;
        join->head = join->key == pit.put_over ? HEAD_B : HEAD_A;
    }
    ((struct box *)model_find(&piece->model, ENTITY_box, pit.lid))->name = "L";
    joined_plan(piece);
    const struct finding *finding = joined_finding(piece, FINDING_BOX_KEPT_OUT);
    assert_int_equal(finding->key, pit.put_in);
    assert_true(joined_tells(finding, "from the top"));
    assert_true(joined_tells(finding, "sets box L over that way"));
    assert_true(finding->cure_count > 0);
    joined_end(piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_box_in_the_driver_s_way_is_set_there_later),
        cmocka_unit_test(a_join_that_was_left_out_holds_nothing_up),
        cmocka_unit_test(a_box_beyond_the_driver_does_not_wait),
        cmocka_unit_test(a_box_that_is_there_before_traps_the_join),
        cmocka_unit_test(a_post_that_comes_nearer_to_one_side_is_set_there_later),
        cmocka_unit_test(a_post_that_goes_away_does_not_wait),
        cmocka_unit_test(boxes_are_joined_before_they_are_fixed_at_the_wall),
        cmocka_unit_test(a_wall_beside_screws_into_another_wall_is_told),
        cmocka_unit_test(standing_off_a_wall_is_offered),
        cmocka_unit_test(a_box_comes_in_before_the_lid_is_laid_over_it),
        cmocka_unit_test(a_box_that_comes_from_the_front_waits_for_nothing),
        cmocka_unit_test(a_box_that_the_lid_keeps_out_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
