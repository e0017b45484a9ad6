/*
 * Covers against joins, on a wing whose outer side stays open: the heads lie there, at the rear,
 * and its inner face stands against the centre's left end. Figures of a worked example, computed by
 * hand.
 */
#include "soft.h"

#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

struct wing {
    int64_t centre, box, batting, lining, cover, join;
};

static int64_t add_stick(struct soft *soft)
{
    struct stock *stick = MODEL_ADD(&soft->model, stock);

    stick->name = "2x3";
    stick->kind = STOCK_STICK;
    stick->thickness = IN(1.5);
    stick->width = IN(2.5);
    return stick->key;
}

static int64_t add_sheet(struct soft *soft)
{
    struct stock *sheet = MODEL_ADD(&soft->model, stock);

    sheet->name = "ply";
    sheet->kind = STOCK_SHEET;
    sheet->thickness = IN(0.5);
    return sheet->key;
}

static void frame(struct soft *soft, int64_t box, int64_t stick, enum setting_word set,
                  enum side_word main_side)
{
    struct box *item = model_find(&soft->model, ENTITY_box, box);

    item->stick = stick;
    item->stick_set = (int64_t)set;
    item->supports = MAKING_HAND;
    item->main_side = (int64_t)main_side;
}

static void add_layers(struct soft *soft, struct wing *wing)
{
    wing->batting =
        soft_layer(soft, wing->box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_LEFT, soft->batting);
    wing->lining = soft_layer(soft, wing->box, LAYER_LINING, SHAPE_FLAT, SIDE_LEFT, soft->lining);
    wing->cover = soft_layer(soft, wing->box, LAYER_COVER, SHAPE_SEWN, SIDE_LEFT, soft->cloth);
    soft_layer_of(soft, wing->batting)->both = 1;
    soft_layer_of(soft, wing->cover)->both = 1;
    soft_endings(soft, wing->batting, ENDING_STOP, ENDING_WRAP, ENDING_WRAP, ENDING_STOP);
    soft_endings(soft, wing->cover, ENDING_OPEN, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN);
}

static struct wing add_wing(struct soft *soft)
{
    struct wing wing = {0};
    int64_t stick = add_stick(soft);
    int64_t sheet = add_sheet(soft);
    struct join *join;

    wing.centre = soft_box(soft, "C", 63, 3, 56);
    wing.box = soft_box(soft, "W", 2, 11.875, 56);
    frame(soft, wing.centre, stick, SET_ON_EDGE, SIDE_FRONT);
    frame(soft, wing.box, stick, SET_FLAT, SIDE_RIGHT);
    soft_panel(soft, wing.centre, SIDE_FRONT, sheet);
    soft_panel(soft, wing.box, SIDE_RIGHT, sheet);
    add_layers(soft, &wing);
    join = MODEL_ADD(&soft->model, join);
    join->name = "J";
    join->box_a = wing.centre;
    join->side_a = SIDE_LEFT;
    join->box_b = wing.box;
    join->side_b = SIDE_RIGHT;
    join->head = HEAD_B;
    join->place = PLACE_SITE;
    join->end = IN(3);
    wing.join = join->key;
    return wing;
}

static void butt(struct soft *soft, int64_t box, double from)
{
    int64_t stick = MODEL_FIND(&soft->model, box, box)->stick;
    struct join *join = MODEL_ADD(&soft->model, join);

    join->name = from > 0 ? "J2" : "J1";
    join->box_a = box;
    join->side_a = SIDE_RIGHT;
    join->box_b = soft_box(soft, from > 0 ? "C2" : "C1", 20, 3, 56);
    join->side_b = SIDE_LEFT;
    join->offset_u = IN(from);
    frame(soft, join->box_b, stick, SET_ON_EDGE, SIDE_FRONT);
}

/* Two joints of 3 in, and half an inch beside each, on a face of 6 in. */
static void batting_between_joints_that_take_up_the_face_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "W", 2, 6, 56);
    int64_t batting =
        soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_RIGHT, soft->batting);

    frame(soft, box, add_stick(soft), SET_FLAT, SIDE_RIGHT);
    soft_endings(soft, batting, ENDING_STOP, ENDING_STOP, ENDING_STOP, ENDING_STOP);
    butt(soft, box, 0);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LAYER_NO_ROOM), 0);
    assert_cut(soft, batting, 2.5, 56);
    assert_int_equal(soft_staples(soft, batting), 30); /* 117 in round, one every 4 in */
    butt(soft, box, 3);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LAYER_NO_ROOM), 1);
    assert_int_equal(soft_piece_count(soft, batting), 0);
    assert_int_equal(soft_staples(soft, batting), 0);
}

/* ---- batting stays short of a joint, and so do its staples ---- */

/* A back of 84 by 20, and an arm 3 in thick that stands against its left end. */
static int64_t add_back_with_an_arm(struct soft *soft)
{
    int64_t box = soft_box(soft, "A", 84, 2, 20);
    int64_t batting =
        soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    int64_t stick = add_stick(soft);
    struct join *join = MODEL_ADD(&soft->model, join);

    frame(soft, box, stick, SET_FLAT, SIDE_FRONT);
    soft_endings(soft, batting, ENDING_STOP, ENDING_STOP, ENDING_STOP, ENDING_STOP);
    join->name = "J";
    join->box_a = box;
    join->side_a = SIDE_FRONT;
    join->box_b = soft_box(soft, "B", 3, 18, 20);
    join->side_b = SIDE_BACK;
    frame(soft, join->box_b, stick, SET_ON_EDGE, SIDE_RIGHT);
    return batting;
}

/* 84 - 3 - 1/2 by 20: 201 in round, a staple every 4 in. */
static void batting_beside_a_joint_is_stapled_round_what_is_cut_of_it(void **state)
{
    struct soft *soft = *state;
    int64_t batting = add_back_with_an_arm(soft);

    soft_plan(soft);
    assert_cut(soft, batting, 80.5, 20);
    assert_int_equal(soft_edge(soft, batting, 0)->length, IN(201));
    assert_int_equal(soft_staples(soft, batting), 51);
}

/* Told from the end of the face, 24 in along it: 20 1/2 from where the batting begins. */
static void an_opening_lies_where_it_is_told_on_batting_beside_a_joint(void **state)
{
    struct soft *soft = *state;
    int64_t batting = add_back_with_an_arm(soft);
    struct opening *opening = MODEL_ADD(&soft->model, opening);
    const struct interval *intervals;

    opening->layer = batting;
    opening->edge = EDGE_BOTTOM;
    opening->begin = IN(24);
    opening->length = IN(10);
    soft_plan(soft);
    intervals = &soft->plan->intervals.at[soft_edge(soft, batting, 0)->first_interval];
    assert_int_equal(intervals[1].class, CLASS_OPENING);
    assert_int_equal(intervals[1].from, IN(20.5));
    assert_int_equal(intervals[1].to, IN(30.5));
    assert_int_equal(soft_staples(soft, batting), 51);
}

static int count_patches(const struct soft *soft, int64_t layer, enum side_word side, bool slit)
{
    int count = 0;

    for (size_t i = 0; i < soft->plan->patches.count; i++) {
        const struct patch *patch = &soft->plan->patches.at[i];

        count += patch->layer == layer && patch->side == (int64_t)side && patch->slit == slit;
    }
    return count;
}

static void batting_over_heads_has_a_bare_patch_for_each(void **state)
{
    struct soft *soft = *state;
    struct wing wing = add_wing(soft);

    soft_plan(soft);
    assert_int_equal(count_patches(soft, wing.batting, SIDE_LEFT, false), 6);
    assert_int_equal(count_patches(soft, wing.batting, SIDE_RIGHT, false), 0);
    for (size_t i = 0; i < soft->plan->patches.count; i++) {
        const struct patch *patch = &soft->plan->patches.at[i];

        if (patch->layer != wing.batting)
            continue;
        assert_int_equal(patch->diameter, IN(1.5));
        assert_int_equal(patch->u, IN(1.25));
        assert_int_equal(patch->v, IN(3 + 10 * (double)patch->point));
    }
}

static void the_cover_is_slit_on_the_mating_face_only(void **state)
{
    struct soft *soft = *state;
    struct wing wing = add_wing(soft);

    soft_plan(soft);
    assert_int_equal(count_patches(soft, wing.cover, SIDE_RIGHT, true), 6);
    assert_int_equal(count_patches(soft, wing.cover, SIDE_LEFT, true), 0);
    assert_int_equal(count_patches(soft, wing.lining, SIDE_LEFT, true), 0);
}

static void a_pierced_cover_is_slit_over_the_heads_too(void **state)
{
    struct soft *soft = *state;
    struct wing wing = add_wing(soft);

    ((struct join *)model_find(&soft->model, ENTITY_join, wing.join))->treatment =
        TREATMENT_PIERCED;
    soft_plan(soft);
    assert_int_equal(count_patches(soft, wing.cover, SIDE_LEFT, true), 6);
    assert_int_equal(count_patches(soft, wing.lining, SIDE_LEFT, true), 6);
}

static void a_flap_of_seven_and_a_quarter_is_left_round_each_head(void **state)
{
    struct soft *soft = *state;
    struct wing wing = add_wing(soft);
    const struct edge *rear;
    int open = 0;

    soft_plan(soft);
    rear = soft_edge(soft, wing.cover, 0);
    assert_int_equal(rear->interval_count, 11);
    for (size_t i = 0; i < rear->interval_count; i++) {
        const struct interval *interval = &soft->plan->intervals.at[rear->first_interval + i];
        int64_t length = interval->to - interval->from;

        if (interval->class == CLASS_FREE)
            assert_int_equal(length, IN(2.75));
        else if (interval->from > 0 && interval->to < rear->length)
            assert_int_equal(length, IN(7.25));
        if (interval->class == CLASS_SITE) {
            assert_int_equal(interval->join, wing.join);
            assert_int_equal(interval->pass, STAPLED_IN_ROOM);
            open++;
        }
    }
    assert_int_equal(open, 6);
    assert_int_equal(rear->staples, 57);
}

static void the_face_without_heads_is_stapled_at_the_bench(void **state)
{
    struct soft *soft = *state;
    struct wing wing = add_wing(soft);
    const struct edge *inner;

    soft_plan(soft);
    inner = soft_edge(soft, wing.cover, 1);
    assert_int_equal(inner->edge, EDGE_LEFT);
    assert_int_equal(inner->interval_count, 1);
    assert_int_equal(soft->plan->intervals.at[inner->first_interval].pass, STAPLED_AT_BENCH);
}

static int64_t staples_in(const struct soft *soft, int64_t layer, int64_t edge,
                          enum pass_of_staples pass)
{
    int64_t staples = 0;

    for (size_t i = 0; i < soft->plan->intervals.count; i++) {
        const struct interval *interval = &soft->plan->intervals.at[i];
        const struct edge *of = &soft->plan->edges.at[interval->edge];

        if (of->layer == layer && of->edge == edge && interval->pass == pass)
            staples += interval->staples;
    }
    return staples;
}

static void a_rear_left_wholly_open_is_closed_in_the_room(void **state)
{
    struct soft *soft = *state;
    struct wing wing = add_wing(soft);

    soft_edge_class(soft, wing.lining, EDGE_LEFT, CLASS_SITE);
    soft_edge_class(soft, wing.cover, EDGE_LEFT, CLASS_SITE);
    soft_plan(soft);
    assert_int_equal(staples_in(soft, wing.lining, EDGE_LEFT, STAPLED_IN_ROOM), 39);
    assert_int_equal(staples_in(soft, wing.lining, EDGE_LEFT, STAPLED_AT_BENCH), 0);
    /* two inches of wood take one landing: one flap over the other, the boxing's end under both */
    assert_int_equal(staples_in(soft, wing.cover, EDGE_LEFT, STAPLED_IN_ROOM), 57);
    assert_int_equal(staples_in(soft, wing.cover, EDGE_LEFT, STAPLED_AT_BENCH), 0);
}

static void an_edge_said_to_be_free_stays_free(void **state)
{
    struct soft *soft = *state;
    struct wing wing = add_wing(soft);

    soft_edge_class(soft, wing.cover, EDGE_LEFT, CLASS_FREE);
    soft_plan(soft);
    assert_int_equal(staples_in(soft, wing.cover, EDGE_LEFT, STAPLED_IN_ROOM), 0);
}

/* ---- a group: three boxes side by side under one cover, the middle one fixed to the wall ---- */

static int64_t add_group(struct soft *soft)
{
    struct group *group = MODEL_ADD(&soft->model, group);
    int64_t key = group->key;
    int64_t cover;

    group->name = "back";
    for (int i = 0; i < 3; i++) {
        int64_t box = soft_box(soft, i == 0 ? "P" : i == 1 ? "Q" : "R", 12, 2, 20);
        struct group_box *in = MODEL_ADD(&soft->model, group_box);

        in->group = key;
        in->box = box;
    }
    cover = soft_layer(soft, 0, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    soft_layer_of(soft, cover)->group = key;
    return cover;
}

static void a_box_in_a_group_traps_its_own_part_of_the_edge(void **state)
{
    struct soft *soft = *state;
    int64_t cover = add_group(soft);
    struct join *join = MODEL_ADD(&soft->model, join);
    const struct interval *intervals;
    const struct edge *edge;

    join->name = "W";
    join->box_a = soft->model.boxes.at[1].key;
    join->side_a = SIDE_BACK;
    join->target = TARGET_WALL;
    soft_plan(soft);
    edge = soft_edge(soft, cover, 0);
    intervals = &soft->plan->intervals.at[edge->first_interval];
    assert_int_equal(edge->interval_count, 5); /* free, bottom, free, top, free */
    assert_int_equal(intervals[1].class, CLASS_TRAPPED);
    assert_int_equal(intervals[1].from, IN(12));
    assert_int_equal(intervals[1].to, IN(24));
    assert_int_equal(intervals[3].from, IN(36 + 20 + 12));
    assert_int_equal(intervals[3].to, IN(36 + 20 + 24));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(batting_between_joints_that_take_up_the_face_is_told),
        SOFT_TEST(batting_beside_a_joint_is_stapled_round_what_is_cut_of_it),
        SOFT_TEST(an_opening_lies_where_it_is_told_on_batting_beside_a_joint),
        SOFT_TEST(batting_over_heads_has_a_bare_patch_for_each),
        SOFT_TEST(the_cover_is_slit_on_the_mating_face_only),
        SOFT_TEST(a_pierced_cover_is_slit_over_the_heads_too),
        SOFT_TEST(a_flap_of_seven_and_a_quarter_is_left_round_each_head),
        SOFT_TEST(the_face_without_heads_is_stapled_at_the_bench),
        SOFT_TEST(a_rear_left_wholly_open_is_closed_in_the_room),
        SOFT_TEST(an_edge_said_to_be_free_stays_free),
        SOFT_TEST(a_box_in_a_group_traps_its_own_part_of_the_edge),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
