/*
 * Of every build by chance the rehearsal fails where a stop of the passes says that it does, and
 * nowhere else. What the rehearsal itself made a stop of (JOIN_NOT_PROVED, NOT_PROVED) does not
 * count as that: such builds are counted, and there are few of them.
 */
#include "chance.h"

#include "plan/findings.h"
#include "plan/rehearse.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define USUAL 1000
#define MOST 20000

static char sentence[1024];

/* Stops about what a screw does to the wood, or to another screw: such a join can be driven. A join
 * that shuts the way to another one can be driven itself. Stops of the rehearsal are no witnesses
 * of it. */
static bool says_nothing(int kind)
{
    static const int kinds[] = {FINDING_HOLE_MEETS,     FINDING_SCREWS_MEET, FINDING_SCREW_END,
                                FINDING_SCREW_EDGE,     FINDING_SEAT_FIRST,  FINDING_NOT_PROVED,
                                FINDING_JOIN_NOT_PROVED};

    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
        if (kind == kinds[i])
            return true;
    return false;
}

/* Stops that say of a join that it cannot be made. */
static bool stops_join(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];

        if (plan_finding_severity(finding) == SEVERITY_STOP && finding->entity == ENTITY_join &&
            finding->key == join && !says_nothing(finding->kind))
            return true;
    }
    return false;
}

/* Stops about where boxes stand: on such a stage nothing can be rehearsed that would mean much, for
 * wood stands in wood. The maker has to move a box first. */
static bool stands_nowhere(const struct plan *plan)
{
    static const int kinds[] = {FINDING_BOXES_OVERLAP, FINDING_JOIN_CONTRADICTS, FINDING_JOIN_TURNS,
                                FINDING_BOX_BELOW_FLOOR, FINDING_JOIN_OFF_FLOOR};

    for (size_t i = 0; i < plan->findings.count; i++)
        for (size_t k = 0; k < sizeof kinds / sizeof *kinds; k++)
            if (plan->findings.at[i].kind == kinds[k])
                return true;
    return false;
}

static bool stops_thing(const struct plan *plan, const struct rehearsed_thing *thing)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];

        if (plan_finding_severity(finding) == SEVERITY_STOP && finding->entity == thing->entity &&
            finding->key == thing->key && !says_nothing(finding->kind))
            return true;
    }
    return false;
}

static bool has_part(const struct plan *plan, int64_t join)
{
    const struct join *found = MODEL_FIND(plan->facts, join, join);

    for (size_t i = 0; i < plan->facts->left_outs.count; i++)
        if (plan->facts->left_outs.at[i].join == join)
            return false;
    return found->fastener != FASTENER_REST;
}

static const char *say_point(const struct plan *plan, const struct rehearsed_point *point)
{
    struct text text;

    text_init(&text);
    text_format(&text, "no stop tells of join %d:", (int)point->join);
    for (int proof = 0; proof < PROOFS; proof++) {
        if (point->verdicts[proof].lapse == LAPSE_NONE)
            continue;
        text_format(&text, " not %s: ", proof_names[proof]);
        rehearse_text(plan, &point->verdicts[proof], &text);
        text_add_char(&text, ';');
    }
    snprintf(sentence, sizeof sentence, "%s", text_string(&text));
    text_release(&text);
    return sentence;
}

static const char *say_thing(const struct plan *plan, const struct rehearsed_thing *thing)
{
    static const char *const kinds[] = {
        [REHEARSED_JOIN] = "join",   [REHEARSED_FRAME] = "frame",     [REHEARSED_EDGE] = "edge",
        [REHEARSED_LAYER] = "layer", [REHEARSED_FITTING] = "fitting", [REHEARSED_SUPPLY] = "supply",
        [REHEARSED_PLACE] = "place"};
    struct text text;

    text_init(&text);
    if (thing->verdict.step != PLAN_NONE)
        text_format(&text, " at %s", plan->steps.at[thing->verdict.step].name);
    text_add(&text, ": ");
    rehearse_text(plan, &thing->verdict, &text);
    snprintf(sentence, sizeof sentence, "lost %s %d%s", kinds[thing->kind], (int)thing->key,
             text_string(&text));
    text_release(&text);
    return sentence;
}

static bool *joins_lost(const struct plan *plan, const struct rehearsal *result)
{
    bool *lost = calloc(plan->facts->joins.count + 1, sizeof *lost);

    assert_non_null(lost);
    for (size_t i = 0; i < result->lost.count; i++)
        lost[model_index(plan->facts, ENTITY_join, result->points.at[result->lost.at[i]].join)] =
            true;
    for (size_t i = 0; i < result->things.count; i++)
        if (result->things.at[i].kind == REHEARSED_JOIN)
            lost[model_index(plan->facts, ENTITY_join, result->things.at[i].key)] = true;
    return lost;
}

/* ---- what a stop says and the rehearsal does not ---- */

static const char *stopped_for_nothing(const struct plan *plan, const struct rehearsal *result)
{
    bool *lost = joins_lost(plan, result);
    const char *wrong = NULL;

    for (size_t i = 0; !wrong && i < plan->facts->joins.count; i++) {
        int64_t join = plan->facts->joins.at[i].key;

        if (lost[i] || !stops_join(plan, join) || !has_part(plan, join))
            continue;
        snprintf(sentence, sizeof sentence, "join %d is told as a stop and proved", (int)join);
        wrong = sentence;
    }
    free(lost);
    return wrong;
}

/* ---- what the rehearsal says and no stop does ---- */

static const char *lost_unseen(const struct plan *plan, const struct rehearsal *result)
{
    for (size_t i = 0; i < result->lost.count; i++)
        if (!stops_join(plan, result->points.at[result->lost.at[i]].join))
            return say_point(plan, &result->points.at[result->lost.at[i]]);
    for (size_t i = 0; i < result->things.count; i++)
        if (!stops_thing(plan, &result->things.at[i]))
            return say_thing(plan, &result->things.at[i]);
    return NULL;
}

static bool tells_not_proved(const struct plan *plan)
{
    for (size_t i = 0; i < plan->findings.count; i++)
        if (plan->findings.at[i].kind == FINDING_JOIN_NOT_PROVED ||
            plan->findings.at[i].kind == FINDING_NOT_PROVED)
            return true;
    return false;
}

/* ---- both ---- */

static size_t made, standing, losing, unseen;

static const char *look_at(struct work_bench *bench, const struct rehearsal *result)
{
    const struct plan *plan = bench->plan;
    const char *only_here = lost_unseen(plan, result);

    losing += result->lost.count > 0 || result->things.count > 0;
    if (has_no_order(plan))
        return NULL;
    if (only_here && !tells_not_proved(plan))
        return only_here;
    if (only_here && getenv("STUFFOVER_SEED"))
        return only_here;
    if (only_here) {
        unseen++;
        print_message("only the rehearsal sees, build %zu: %s\n", made, only_here);
    }
    return stopped_for_nothing(plan, result);
}

static const char *rehearsal_wrong(struct work_bench *bench)
{
    const struct rehearsal *result;
    struct arena arena;
    const char *wrong;

    made++;
    if (stands_nowhere(bench->plan) || bench->plan->facts->joins.count == 0)
        return NULL;
    standing++;
    arena_init(&arena);
    assert_int_equal(rehearse(bench->plan, &arena, &result), FAULT_NONE);
    wrong = look_at(bench, result);
    arena_release(&arena);
    return wrong;
}

/* With one seed alone, what only the rehearsal sees is shrunk and told like any other failure. The
 * limit is one build in a hundred; of 20,000 seeds it was 59 of 17,182. */
static void the_rehearsal_fails_where_a_stop_says_so_and_nowhere_else(void **state)
{
    (void)state;
    chance_check_all(1, chance_count(USUAL, MOST), rehearsal_wrong);
    print_message("%zu builds, %zu stand and have joins, something is lost in %zu, in %zu of them "
                  "no pass sees it\n",
                  made, standing, losing, unseen);
    assert_true(getenv("STUFFOVER_SEED") || 2 * standing > made);
    assert_true(100 * unseen <= standing);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_rehearsal_fails_where_a_stop_says_so_and_nowhere_else),
    };
    int failed = cmocka_run_group_tests_name("rehearsal by chance", tests, NULL, NULL);

    return failed ? 1 : 0;
}
