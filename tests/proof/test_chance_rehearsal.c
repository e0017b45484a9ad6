/* Of every build by chance the rehearsal fails where a stop says that it does, and nowhere else. */
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

/* Stops about what a screw does to the wood, or to another screw: such a join can be driven. */
static bool is_about_wood(int kind)
{
    static const int kinds[] = {FINDING_HOLE_MEETS, FINDING_SCREWS_MEET, FINDING_SCREW_END,
                                FINDING_SCREW_EDGE};

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
            finding->key == join && !is_about_wood(finding->kind))
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
            finding->key == thing->key)
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
        [REHEARSED_JOIN] = "join",       [REHEARSED_FRAME] = "frame",
        [REHEARSED_EDGE] = "edge",       [REHEARSED_LAYER] = "layer",
        [REHEARSED_FITTING] = "fitting", [REHEARSED_SUPPLY] = "supply"};
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

static const char *joins_differ(const struct plan *plan, const struct rehearsal *result)
{
    bool *lost = joins_lost(plan, result);
    const char *wrong = NULL;

    for (size_t i = 0; !wrong && i < result->lost.count; i++)
        if (!stops_join(plan, result->points.at[result->lost.at[i]].join))
            wrong = say_point(plan, &result->points.at[result->lost.at[i]]);
    for (size_t i = 0; !wrong && i < plan->facts->joins.count; i++) {
        int64_t join = plan->facts->joins.at[i].key;

        if (lost[i] == stops_join(plan, join) || !has_part(plan, join))
            continue;
        snprintf(sentence, sizeof sentence, "join %d %s", (int)join,
                 lost[i] ? "is lost and no stop tells of it" : "is told as a stop and proved");
        wrong = sentence;
    }
    free(lost);
    return wrong;
}

static const char *rehearsal_wrong(struct work_bench *bench)
{
    const struct plan *plan = bench->plan;
    const struct rehearsal *result;
    struct arena arena;
    const char *wrong;

    if (stands_nowhere(plan))
        return NULL;
    arena_init(&arena);
    assert_int_equal(rehearse(plan, &arena, &result), FAULT_NONE);
    wrong = joins_differ(plan, result);
    for (size_t i = 0; !wrong && i < result->things.count; i++)
        if (!stops_thing(plan, &result->things.at[i]))
            wrong = say_thing(plan, &result->things.at[i]);
    arena_release(&arena);
    return wrong;
}

static void the_rehearsal_fails_where_a_stop_says_so_and_nowhere_else(void **state)
{
    (void)state;
    chance_check_all(1, chance_count(USUAL, MOST), rehearsal_wrong);
}

/* ---- how much only the rehearsal sees ---- */

static size_t standing, only_rehearsed;

static const char *count_rehearsed(struct work_bench *bench)
{
    const struct plan *plan = bench->plan;
    bool only = false;

    if (stands_nowhere(plan) || plan->facts->joins.count == 0)
        return NULL;
    for (size_t i = 0; i < plan->findings.count; i++)
        only |= plan->findings.at[i].kind == FINDING_JOIN_NOT_PROVED ||
                plan->findings.at[i].kind == FINDING_NOT_PROVED;
    standing++;
    only_rehearsed += only;
    return NULL;
}

/* The passes look at the wood of one box and at cloth over the way in; another box's wood in the
 * way, or an edge that one join traps while another wants its layer loose, shows only here. Such
 * builds are told as stops all the same, and there are few of them. */
static void the_passes_see_nearly_all_of_it_themselves(void **state)
{
    (void)state;
    standing = only_rehearsed = 0;
    chance_check_all(1, chance_count(USUAL, USUAL), count_rehearsed);
    assert_true(standing > 50);
    assert_true(20 * only_rehearsed <= standing);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_rehearsal_fails_where_a_stop_says_so_and_nowhere_else),
        cmocka_unit_test(the_passes_see_nearly_all_of_it_themselves),
    };
    int failed = cmocka_run_group_tests_name("rehearsal by chance", tests, NULL, NULL);

    return failed ? 1 : 0;
}
