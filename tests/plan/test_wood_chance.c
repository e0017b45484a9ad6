/*
 * What holds of the wood of any box: boxes by chance, from fixed seeds.
 */
#include "carpenter.h"
#include "dice.h"
#include "sanitized.h"

#include "base/text.h"
#include "plan/findings.h"
#include "plan/rows.h"
#include "plan/screws.h"
#include "plan/wood.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#define ROUNDS UNLESS_SANITIZED(150, 40)

/* ---- boxes by chance ---- */

static int64_t add_box(struct carpenter *bench, struct dice *dice, enum frame_word frame)
{
    struct vector size = {LENGTH_INCH * dice_between(dice, 14, 110),
                          LENGTH_INCH * dice_between(dice, 10, 40),
                          LENGTH_INCH * dice_between(dice, 10, 70)};
    bool wide = dice_between(dice, 0, 1);
    int64_t key;
    struct box *box;

    if (frame == FRAME_LADDER)
        size.y = IN(4);
    key = carpenter_box(bench, "B", frame, size, wide ? bench->stick_2x3 : bench->stick_2x2);
    box = carpenter_box_of(bench, key);
    box->through = dice_between(dice, 0, THROUGH_COUNT - 1);
    box->stick_set = dice_between(dice, 0, SET_COUNT - 1);
    box->supports = dice_between(dice, 0, MAKING_COUNT - 1);
    box->crosses = dice_between(dice, 0, MAKING_COUNT - 1);
    return key;
}

static void add_facings(struct carpenter *bench, struct dice *dice, int64_t box)
{
    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        struct facing *facing;

        if (dice_between(dice, 0, 1))
            continue;
        facing = carpenter_face(bench, box, (enum side_word)side,
                                dice_between(dice, 0, 1) ? bench->sheet_1_2 : bench->sheet_3_4);
        facing->use = dice_between(dice, 0, USE_COUNT - 1);
        facing->glued = dice_between(dice, 0, 1);
    }
}

static void add_build(struct carpenter *bench, struct dice *dice)
{
    for (int64_t i = dice_between(dice, 1, 3); i > 0; i--)
        add_facings(bench, dice,
                    add_box(bench, dice, dice_between(dice, 0, 1) ? FRAME_LADDER : FRAME_CRATE));
}

typedef void round_fn(struct carpenter *bench, struct dice *dice);

/* Each round on a bench of its own; some wood must come out over all, or nothing was tested. */
static void for_builds(uint64_t seed, round_fn *check)
{
    struct dice dice = {seed};
    size_t screws = 0;

    for (int i = 0; i < ROUNDS; i++) {
        void *state = NULL;
        struct carpenter *bench;

        assert_int_equal(carpenter_begin(&state), 0);
        bench = state;
        add_build(bench, &dice);
        carpenter_plan(bench);
        check(bench, &dice);
        screws += bench->plan->screws.count;
        carpenter_end(&state);
    }
    assert_true(screws > 10 * ROUNDS);
}

/* ---- members ---- */

static bool lies_within(const struct solid *inner, const struct solid *outer)
{
    struct solid common = solid_cut(inner, outer);

    return memcmp(&common, inner, sizeof common) == 0;
}

static void check_members(struct carpenter *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;

    (void)dice;
    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];
        struct solid space =
            frame_space(&bench->model, MODEL_FIND(&bench->model, box, member->box));

        assert_false(solid_empty(&member->solid));
        assert_true(lies_within(&member->solid, &space));
        assert_int_equal(member->length, solid_size(&member->solid, (int)member->axis));
        for (size_t k = 0; k < i; k++)
            assert_false(plan->members.at[k].box == member->box &&
                         solids_meet(&member->solid, &plan->members.at[k].solid));
    }
}

static void members_lie_in_the_frames_space_and_share_none(void **state)
{
    (void)state;
    for_builds(1, check_members);
}

/* ---- panel screws ---- */

static bool wood_behind(const struct plan *plan, const struct panel *panel, int64_t u, int64_t v)
{
    for (size_t i = 0; i < plan->members.count; i++) {
        struct area under = member_under(&plan->members.at[i], panel);

        if (member_bears(&plan->members.at[i], panel) && under.u0 <= u && u < under.u1 &&
            under.v0 <= v && v < under.v1)
            return true;
    }
    return false;
}

static void check_panel_screws(struct carpenter *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;

    (void)dice;
    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];
        const struct panel *panel;
        int64_t u;
        int64_t v;

        if (screw->use != SCREW_PANEL)
            continue;
        panel = &plan->panels.at[screw->of];
        box_to_face(panel->side, screw->at, &u, &v);
        assert_true(wood_behind(plan, panel, u, v));
        assert_true(screw->bite > 0);
        assert_true(panel->area.u0 < u && u < panel->area.u1);
        assert_true(panel->area.v0 < v && v < panel->area.v1);
    }
}

static void every_panel_screw_has_wood_behind_it(void **state)
{
    (void)state;
    for_builds(2, check_panel_screws);
}

/* n = max(2, ceil((L - 2e)/p) + 1), the rule of the worked examples; edges only, so that a panel
 * takes both of its longer edges whole and its shorter ones without their corners. */
static int64_t run(double length)
{
    int64_t n = 1;

    while ((double)(n - 1) * 8.0 < length - 2.0)
        n++;
    return n < 2 ? 2 : n;
}

static void screws_on_a_plain_panel_follow_the_run_formula(void **state)
{
    struct dice dice = {3};

    (void)state;
    for (int i = 0; i < ROUNDS; i++) {
        int64_t width = dice_between(&dice, 12, 90);
        int64_t height = dice_between(&dice, 12, 46);
        void *made = NULL;
        struct carpenter *bench;
        int64_t box;

        assert_int_equal(carpenter_begin(&made), 0);
        bench = made;
        box = carpenter_box(bench, "B", FRAME_LADDER,
                            (struct vector){LENGTH_INCH * width, IN(3), LENGTH_INCH * height},
                            bench->stick_2x3);
        carpenter_box_of(bench, box)->supports = MAKING_HAND;
        carpenter_face(bench, box, SIDE_FRONT, bench->sheet_1_2);
        carpenter_plan(bench);
        assert_int_equal(carpenter_screws(bench, box, SCREW_PANEL),
                         2 * run((double)(width > height ? width : height)) +
                             2 * (run((double)(width > height ? height : width)) - 2));
        carpenter_end(&made);
    }
}

/* ---- joints ---- */

static void check_joints(struct carpenter *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;
    int64_t counted = 0;
    int64_t wanted = 0;

    (void)dice;
    for (size_t i = 0; i < plan->joints.count; i++) {
        const struct joint *joint = &plan->joints.at[i];

        wanted += joint->screws;
        assert_int_equal(plan->members.at[joint->through].box, joint->box);
        assert_int_equal(plan->members.at[joint->into].box, joint->box);
    }
    for (size_t i = 0; i < plan->screw_kinds.count; i++)
        counted += plan->screw_kinds.at[i].count_by_use[SCREW_FRAME];
    assert_int_equal(counted, wanted);
}

static void frame_screws_are_those_of_the_joints(void **state)
{
    (void)state;
    for_builds(4, check_joints);
}

/* A member that is screwed to nothing falls out. */
static void check_held(struct carpenter *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;

    (void)dice;
    for (size_t i = 0; i < plan->members.count; i++) {
        bool held = false;

        for (size_t k = 0; k < plan->joints.count; k++)
            held |= plan->joints.at[k].through == i || plan->joints.at[k].into == i;
        assert_true(held);
    }
}

static void every_member_is_held_by_a_joint(void **state)
{
    (void)state;
    for_builds(5, check_held);
}

/* ---- no two screws meet ---- */

static int boxes_with_meeting_screws;

static void count_meeting(struct carpenter *bench, struct dice *dice)
{
    (void)dice;
    boxes_with_meeting_screws += carpenter_findings(bench, FINDING_SCREWS_MEET) > 0;
}

/* What the engine places it moves until it is clear. Where a cross is higher than its rail a sliver
 * of it touches the upright as well, and leaves no room for a screw: that is told. */
static void no_two_screws_of_a_box_meet_where_there_is_room(void **state)
{
    (void)state;
    boxes_with_meeting_screws = 0;
    for_builds(8, count_meeting);
    assert_in_range(boxes_with_meeting_screws, 0, 1 + ROUNDS / 150);
}

/* ---- the same again ---- */

static void tell_solid(struct text *out, const struct solid *solid)
{
    text_format(out, "%lld %lld %lld  %lld %lld %lld ", (long long)solid->low.x,
                (long long)solid->low.y, (long long)solid->low.z, (long long)solid->high.x,
                (long long)solid->high.y, (long long)solid->high.z);
}

/* The wood of a plan in words. */
static void tell_wood(struct text *out, const struct plan *plan)
{
    for (size_t i = 0; i < plan->panels.count; i++) {
        text_format(out, "%s ", plan->panels.at[i].label);
        tell_solid(out, &plan->panels.at[i].solid);
    }
    for (size_t i = 0; i < plan->members.count; i++) {
        text_format(out, "\n%s ", plan->members.at[i].label);
        tell_solid(out, &plan->members.at[i].solid);
    }
    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];

        text_format(out, "\n%d %zu %lld %lld %lld %d %d %zu", (int)screw->use, screw->kind,
                    (long long)screw->at.x, (long long)screw->at.y, (long long)screw->at.z,
                    screw->axis, screw->sign, screw->of);
    }
    for (size_t i = 0; i < plan->findings.count; i++) {
        text_add(out, "\n");
        plan_finding_text(plan, &plan->findings.at[i], out);
    }
}

static void assert_same_wood(const struct plan *a, const struct plan *b)
{
    struct text one;
    struct text other;

    text_init(&one);
    text_init(&other);
    tell_wood(&one, a);
    tell_wood(&other, b);
    assert_string_equal(text_string(&one), text_string(&other));
    text_release(&one);
    text_release(&other);
}

static void check_again(struct carpenter *bench, struct dice *dice)
{
    struct arena arena;
    const struct plan *again;

    (void)dice;
    arena_init(&arena);
    assert_int_equal(plan_make(&bench->model, &arena, &again), FAULT_NONE);
    assert_same_wood(bench->plan, again);
    arena_release(&arena);
}

static void the_same_facts_give_the_same_plan(void **state)
{
    (void)state;
    for_builds(6, check_again);
}

/* The items of every list, the last first, under their keys. */
static void copy_backwards(struct model *to, const struct model *from)
{
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        for (size_t i = model_count(from, (enum entity_kind)kind); i-- > 0;) {
            const void *item = model_at_const(from, (enum entity_kind)kind, i);
            void *copy = model_add_keyed(to, (enum entity_kind)kind, item_key(item));

            assert_non_null(copy);
            memcpy(copy, item, entity_of((enum entity_kind)kind)->size);
        }
}

static void check_backwards(struct carpenter *bench, struct dice *dice)
{
    struct arena facts;
    struct arena made;
    struct model model;
    const struct plan *plan;
    jmp_buf escape;

    (void)dice;
    arena_init(&facts);
    arena_init(&made);
    facts.escape = &escape;
    if (setjmp(escape))
        fail_msg("memory is out");
    model_init(&model, &facts);
    model.build.name = "wood";
    copy_backwards(&model, &bench->model);
    assert_int_equal(plan_make(&model, &made, &plan), FAULT_NONE);
    assert_same_wood(bench->plan, plan);
    arena_release(&made);
    arena_release(&facts);
}

static void the_order_of_entry_does_not_matter(void **state)
{
    (void)state;
    for_builds(7, check_backwards);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(members_lie_in_the_frames_space_and_share_none),
        cmocka_unit_test(every_panel_screw_has_wood_behind_it),
        cmocka_unit_test(screws_on_a_plain_panel_follow_the_run_formula),
        cmocka_unit_test(frame_screws_are_those_of_the_joints),
        cmocka_unit_test(every_member_is_held_by_a_joint),
        cmocka_unit_test(no_two_screws_of_a_box_meet_where_there_is_room),
        cmocka_unit_test(the_same_facts_give_the_same_plan),
        cmocka_unit_test(the_order_of_entry_does_not_matter),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
