/* The rehearsal: what it proves of the worked examples, and what it says when a step is out of
 * place. */
#include "work.h"

#include "plan/findings.h"
#include "plan/rehearse.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct proof_place {
    struct work_bench bench;
    struct arena arena;
    size_t *sequence; /* the plan's own, to be changed */
    size_t count;
    const struct rehearsal *result;
};

static void place_start(struct proof_place *place)
{
    arena_init(&place->arena);
    place->count = place->bench.plan->steps.count;
    place->sequence = calloc(place->count, sizeof *place->sequence);
    assert_non_null(place->sequence);
    for (size_t i = 0; i < place->count; i++)
        place->sequence[i] = i;
}

static void place_case(struct proof_place *place, const char *name)
{
    work_case(&place->bench, name);
    place_start(place);
}

static void place_stop(struct proof_place *place)
{
    free(place->sequence);
    arena_release(&place->arena);
    work_end(&place->bench);
}

static const struct rehearsal *place_rehearse(struct proof_place *place)
{
    arena_release(&place->arena);
    assert_int_equal(rehearse_sequence(place->bench.plan, place->sequence, place->count,
                                       &place->arena, &place->result),
                     FAULT_NONE);
    return place->result;
}

/* Moves a step behind another one; both by name. */
static void place_move(struct proof_place *place, const char *name, const char *behind)
{
    size_t step = work_at(&place->bench, name);
    size_t target = work_at(&place->bench, behind);
    size_t from = 0;

    while (place->sequence[from] != step)
        from++;
    for (bool past = false; !past; from++) {
        assert_true(from + 1 < place->count);
        past = place->sequence[from + 1] == target;
        place->sequence[from] = place->sequence[from + 1];
        place->sequence[from + 1] = step;
    }
}

static void tell(const struct proof_place *place)
{
    const struct plan *plan = place->bench.plan;
    struct text text;

    text_init(&text);
    for (size_t i = 0; i < place->result->lost.count; i++) {
        const struct rehearsed_point *point = &place->result->points.at[place->result->lost.at[i]];

        for (int proof = 0; proof < PROOFS; proof++) {
            if (point->verdicts[proof].lapse == LAPSE_NONE)
                continue;
            text_format(&text, "join %d not %s: ", (int)point->join, proof_names[proof]);
            rehearse_text(plan, &point->verdicts[proof], &text);
            text_add_char(&text, '\n');
        }
    }
    for (size_t i = 0; i < place->result->things.count; i++) {
        text_format(&text, "%d of kind %d: ", (int)place->result->things.at[i].key,
                    (int)place->result->things.at[i].kind);
        rehearse_text(plan, &place->result->things.at[i].verdict, &text);
        text_add_char(&text, '\n');
    }
    print_message("%s", text_string(&text));
    text_release(&text);
}

/* The first lapse of a join's points in one proof. */
static enum lapse lapse_of(const struct proof_place *place, int64_t join, enum proof proof)
{
    for (size_t i = 0; i < place->result->points.count; i++)
        if (place->result->points.at[i].join == join &&
            place->result->points.at[i].verdicts[proof].lapse != LAPSE_NONE)
            return place->result->points.at[i].verdicts[proof].lapse;
    return LAPSE_NONE;
}

static int64_t join_named(const struct proof_place *place, const char *name)
{
    return model_key_named(&place->bench.model, ENTITY_join, name);
}

static bool lost_thing(const struct proof_place *place, enum rehearsed_kind kind, enum lapse lapse)
{
    for (size_t i = 0; i < place->result->things.count; i++)
        if (place->result->things.at[i].kind == kind &&
            place->result->things.at[i].verdict.lapse == lapse)
            return true;
    return false;
}

/* ---- the worked examples ---- */

static void every_example_is_proved(void **state)
{
    static const char *const names[] = {"headboard",
                                        "ottoman",
                                        "banquette",
                                        "../../demo/headboard",
                                        "../../demo/banquette",
                                        "../../demo/stool",
                                        "../../demo/corner",
                                        "open-wing"};

    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        struct proof_place place;

        place_case(&place, names[i]);
        place_rehearse(&place);
        if (!place.result->proved)
            tell(&place);
        assert_true(place.result->proved);
        assert_true(place.result->points.count > 0);
        place_stop(&place);
    }
}

static void each_proof_names_its_step(void **state)
{
    static const int kinds[PROOFS] = {STEP_DRY,   STEP_DRILL, STEP_DRIVE, STEP_FIND,
                                      STEP_DRIVE, STEP_DRIVE, STEP_BACK};
    struct proof_place place;
    const struct rehearsed_point *point;

    (void)state;
    place_case(&place, "headboard");
    point = &place_rehearse(&place)->points.at[0];
    for (int proof = 0; proof < PROOFS; proof++)
        assert_int_equal(place.bench.plan->steps.at[point->verdicts[proof].step].kind,
                         kinds[proof]);
    place_stop(&place);
}

static void the_plans_own_order_is_the_usual_one(void **state)
{
    struct proof_place place;
    const struct rehearsal *plain;
    struct arena arena;

    (void)state;
    arena_init(&arena);
    place_case(&place, "banquette");
    place_rehearse(&place);
    assert_int_equal(rehearse(place.bench.plan, &arena, &plain), FAULT_NONE);
    assert_int_equal(plain->points.count, place.result->points.count);
    for (size_t i = 0; i < plain->points.count; i++)
        for (int proof = 0; proof < PROOFS; proof++)
            assert_int_equal(plain->points.at[i].verdicts[proof].step,
                             place.result->points.at[i].verdicts[proof].step);
    arena_release(&arena);
    place_stop(&place);
}

/* ---- a step out of place ---- */

static void a_cover_before_drilling_hides_the_place(void **state)
{
    struct proof_place place;

    (void)state;
    place_case(&place, "headboard");
    place_move(&place, "drill:32", "cover:24");
    place_rehearse(&place);
    assert_int_equal(lapse_of(&place, 32, PROOF_MARKED), LAPSE_NONE);
    assert_int_equal(lapse_of(&place, 32, PROOF_DRILLED), LAPSE_COVERED);
    assert_int_equal(lapse_of(&place, 33, PROOF_DRILLED), LAPSE_NONE);
    place_stop(&place);
}

static void a_back_that_is_closed_first_shuts_the_driver_out(void **state)
{
    struct proof_place place;
    int64_t join;

    (void)state;
    place_case(&place, "headboard");
    join = join_named(&place, "J1");
    place_move(&place, "drive:32", "back:25");
    place_rehearse(&place);
    assert_int_equal(lapse_of(&place, join, PROOF_REACHED), LAPSE_CLOTH_IN_WAY);
    assert_int_equal(lapse_of(&place, join, PROOF_MARKED), LAPSE_NONE);
    place_stop(&place);
}

static void a_cover_without_its_pieces_cannot_go_on(void **state)
{
    struct proof_place place;
    char cut[64];

    (void)state;
    place_case(&place, "headboard");
    snprintf(cut, sizeof cut, "shear:%d", (int)MODEL_FIND(&place.bench.model, layer, 24)->stock);
    place_move(&place, cut, "cover:24");
    place_rehearse(&place);
    assert_true(lost_thing(&place, REHEARSED_LAYER, LAPSE_NOT_CUT));
    place_stop(&place);
}

/* Foam on a side of a box: the name of its step. */
static const char *pad_also(struct work_bench *bench, int64_t box, int64_t side)
{
    return arena_format(&bench->facts, "pad:%d", (int)work_layer(bench, box, LAYER_FOAM, side, 1));
}

/* A lid beside the ottoman, as its top is. */
static int64_t add_lid(struct work_bench *bench)
{
    int64_t key = work_box(bench, "Lid", FRAME_BOARD);
    struct box *lid = model_find(&bench->model, ENTITY_box, key);

    *lid = *MODEL_FIND(&bench->model, box, 2);
    lid->key = key;
    lid->name = "Lid";
    bench->sheet = MODEL_FIND(&bench->model, facing, 7)->stock;
    work_facing(bench, key, SIDE_TOP);
    return key;
}

static void button_holes_come_before_the_padding_of_their_own_face_alone(void **state)
{
    struct proof_place place;
    const char *lid, *front;

    (void)state;
    work_case(&place.bench, "ottoman");
    place.bench.foam = MODEL_FIND(&place.bench.model, layer, 9)->stock;
    lid = pad_also(&place.bench, add_lid(&place.bench), SIDE_TOP);
    front = pad_also(&place.bench, 2, SIDE_FRONT);
    work_plan(&place.bench);
    place_start(&place);
    place_move(&place, "tuft:11", lid);
    place_move(&place, "pad:9", front);
    place_move(&place, "tuft:11", front);
    place_rehearse(&place);
    assert_false(lost_thing(&place, REHEARSED_LAYER, LAPSE_NOT_HOLED));
    place_move(&place, "tuft:11", "pad:9");
    place_rehearse(&place);
    assert_true(lost_thing(&place, REHEARSED_LAYER, LAPSE_NOT_HOLED));
    place_stop(&place);
}

static void what_is_left_out_of_the_sequence_is_not_done(void **state)
{
    struct proof_place place;

    (void)state;
    place_case(&place, "headboard");
    place.count = work_at(&place.bench, "drill:32");
    place_rehearse(&place);
    assert_int_equal(lapse_of(&place, join_named(&place, "J1"), PROOF_MARKED), LAPSE_NONE);
    assert_int_equal(lapse_of(&place, join_named(&place, "J1"), PROOF_DRILLED), LAPSE_NO_STEP);
    assert_int_equal(place.result->lost.count, place.result->points.count);
    place_stop(&place);
}

static void add_member(struct work_bench *bench, int64_t box, enum member_word kind,
                       enum axis_word axis, struct vector at)
{
    struct member *member = MODEL_ADD(&bench->model, member);

    member->box = box;
    member->kind = kind;
    member->axis = axis;
    member->x = at.x;
    member->y = at.y;
    member->z = at.z;
}

/* Screws of two posts above and below a rail, in one line: each post covers the other's heads. */
static void frame_screws_that_shut_each_other_out_are_lost_alone(void **state)
{
    struct proof_place place;
    size_t lost = 0;

    (void)state;
    work_begin(&place.bench);
    int64_t key = work_box(&place.bench, "C", FRAME_LADDER);
    struct box *box = model_find(&place.bench.model, ENTITY_box, key);
    box->supports = MAKING_HAND;
    add_member(&place.bench, key, MEMBER_RAIL, AXIS_X, (struct vector){0, 0, IN(19)});
    add_member(&place.bench, key, MEMBER_SUPPORT, AXIS_Z, (struct vector){IN(14), 0, IN(20.5)});
    add_member(&place.bench, key, MEMBER_SUPPORT, AXIS_Z, (struct vector){IN(14), 0, IN(1.5)});
    work_plan(&place.bench);
    assert_int_equal(work_findings(&place.bench, FINDING_FRAME_SHUT), 1);
    place_start(&place);
    place_rehearse(&place);
    for (size_t i = 0; i < place.result->things.count; i++)
        lost += place.result->things.at[i].kind == REHEARSED_FRAME;
    assert_int_equal(lost, 4);
    place_stop(&place);
}

/* ---- from where the bench stands ---- */

static void tick_until(struct proof_place *place, const char *last)
{
    size_t end = work_at(&place->bench, last);

    for (size_t i = 0; i <= end; i++)
        work_tick(&place->bench, place->bench.plan->steps.at[i].name, "");
    work_plan(&place->bench);
}

static void ticks_in_the_plans_order_lose_nothing(void **state)
{
    struct proof_place place;

    (void)state;
    place_case(&place, "headboard");
    tick_until(&place, "cover:24");
    assert_int_equal(rehearse_ticks(place.bench.plan, &place.arena, &place.result), FAULT_NONE);
    assert_true(place.result->proved);
    place_stop(&place);
}

static void a_join_added_after_padding_takes_the_cover_off_again(void **state)
{
    struct proof_place place;
    struct rehearsed_steps off;
    const int64_t join = 32;

    (void)state;
    place_case(&place, "headboard");
    tick_until(&place, "corner:24");
    for (size_t i = place.bench.model.ticks.count; i-- > 0;) {
        const char *step = place.bench.model.ticks.at[i].step;

        if (step_key_of(step) == join && step_kinds[step_kind_of(step)].scope == SCOPE_JOIN)
            model_remove(&place.bench.model, ENTITY_tick, place.bench.model.ticks.at[i].key);
    }
    work_plan(&place.bench);
    assert_int_equal(rehearse_ticks(place.bench.plan, &place.arena, &place.result), FAULT_NONE);
    assert_int_not_equal(lapse_of(&place, join, PROOF_DRILLED), LAPSE_NONE);
    assert_int_equal(rehearse_undo(place.bench.plan, join, &place.arena, &off), FAULT_NONE);
    assert_true(off.count >= 2);
    assert_int_equal(place.bench.plan->steps.at[off.at[0]].kind, STEP_CORNER);
    place_stop(&place);
}

static void nothing_has_to_come_off_where_nothing_is_lost(void **state)
{
    struct proof_place place;
    struct rehearsed_steps off;

    (void)state;
    place_case(&place, "headboard");
    tick_until(&place, "cover:24");
    assert_int_equal(rehearse_undo(place.bench.plan, 32, &place.arena, &off), FAULT_NONE);
    assert_int_equal(off.count, 0);
    place_stop(&place);
}

/* ---- moving house ---- */

static void what_was_closed_last_comes_off_first(void **state)
{
    static const char *const names[] = {"back:25", "drive:33", "offer:33", "drive:32", "offer:32"};
    struct proof_place place;
    struct rehearsed_steps apart;

    (void)state;
    place_case(&place, "headboard");
    assert_int_equal(rehearse_apart(place.bench.plan, &place.arena, &apart), FAULT_NONE);
    assert_int_equal(apart.count, sizeof names / sizeof *names);
    for (size_t i = 0; i < apart.count; i++)
        assert_string_equal(place.bench.plan->steps.at[apart.at[i]].name, names[i]);
    place_stop(&place);
}

static void what_was_taken_apart_goes_together_again(void **state)
{
    static const char *const names[] = {"headboard", "banquette", "../../demo/banquette"};

    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        struct proof_place place;
        struct rehearsed_steps apart;
        struct arena arena;

        arena_init(&arena);
        place_case(&place, names[i]);
        assert_int_equal(rehearse_apart(place.bench.plan, &arena, &apart), FAULT_NONE);
        assert_true(apart.count > 0);
        for (size_t j = 0; j < apart.count; j++) {
            size_t at = 0;

            while (place.sequence[at] != apart.at[apart.count - 1 - j])
                at++;
            memmove(&place.sequence[at], &place.sequence[at + 1],
                    (place.count - at - 1) * sizeof *place.sequence);
            place.sequence[place.count - 1] = apart.at[apart.count - 1 - j];
        }
        place_rehearse(&place);
        if (!place.result->proved)
            tell(&place);
        assert_true(place.result->proved);
        arena_release(&arena);
        place_stop(&place);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_example_is_proved),
        cmocka_unit_test(each_proof_names_its_step),
        cmocka_unit_test(the_plans_own_order_is_the_usual_one),
        cmocka_unit_test(a_cover_before_drilling_hides_the_place),
        cmocka_unit_test(a_back_that_is_closed_first_shuts_the_driver_out),
        cmocka_unit_test(a_cover_without_its_pieces_cannot_go_on),
        cmocka_unit_test(button_holes_come_before_the_padding_of_their_own_face_alone),
        cmocka_unit_test(what_is_left_out_of_the_sequence_is_not_done),
        cmocka_unit_test(frame_screws_that_shut_each_other_out_are_lost_alone),
        cmocka_unit_test(ticks_in_the_plans_order_lose_nothing),
        cmocka_unit_test(a_join_added_after_padding_takes_the_cover_off_again),
        cmocka_unit_test(nothing_has_to_come_off_where_nothing_is_lost),
        cmocka_unit_test(what_was_closed_last_comes_off_first),
        cmocka_unit_test(what_was_taken_apart_goes_together_again),
    };
    int failed = cmocka_run_group_tests_name("rehearsal", tests, NULL, NULL);

    return failed ? 1 : 0;
}
