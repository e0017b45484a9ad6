/*
 * The last look: the finished order is rehearsed, and what is not proved is a stop. A join that has
 * a stop already is not told twice, and where boxes stand in each other there is no stage to
 * rehearse on: they have to be moved first.
 */
#include "plan/check.h"

#include "plan/findings.h"
#include "plan/rehearse.h"

#include <setjmp.h>

static bool is_stop(const struct finding *finding)
{
    return plan_finding_severity(finding) == SEVERITY_STOP;
}

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

/* What a screw does to the wood, or to another screw, does not keep a driver out; nor does what a
 * join does to the way to another one. */
static bool is_about_wood(int kind)
{
    static const int kinds[] = {FINDING_HOLE_MEETS, FINDING_SCREWS_MEET, FINDING_SCREW_END,
                                FINDING_SCREW_EDGE, FINDING_SEAT_FIRST};

    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
        if (kind == kinds[i])
            return true;
    return false;
}

static bool is_told(const struct plan *plan, enum entity_kind entity, int64_t key)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];

        if (is_stop(finding) && finding->entity == entity && finding->key == key &&
            !is_about_wood(finding->kind))
            return true;
    }
    return false;
}

static const char *reason(struct planning *planning, const struct verdict *verdict)
{
    struct text text;
    const char *kept;

    text_init(&text);
    rehearse_text(planning->plan, verdict, &text);
    kept = arena_text(planning->arena, text_string(&text));
    text_release(&text);
    return kept;
}

static void tell_point(struct planning *planning, const struct rehearsed_point *point)
{
    int proof = 0;
    struct finding *finding;

    if (is_told(planning->plan, ENTITY_join, point->join))
        return;
    while (point->verdicts[proof].lapse == LAPSE_NONE)
        proof++;
    finding = finding_add(planning, FINDING_JOIN_NOT_PROVED, ENTITY_join, point->join);
    argument_quantity(finding, 0, QUANTITY_COUNT, planning->plan->points.at[point->point].rank);
    argument_text(finding, 1, proof_names[proof]);
    argument_text(finding, 2, reason(planning, &point->verdicts[proof]));
}

static void tell_thing(struct planning *planning, const struct rehearsed_thing *thing)
{
    struct finding *finding;

    if (thing->kind == REHEARSED_JOIN || is_told(planning->plan, thing->entity, thing->key))
        return;
    finding = finding_add(planning, FINDING_NOT_PROVED, thing->entity, thing->key);
    argument_text(finding, 0, reason(planning, &thing->verdict));
}

void check_rehearsal(struct planning *planning)
{
    const struct rehearsal *rehearsal;

    if (stands_nowhere(planning->plan))
        return;
    if (rehearse(planning->plan, planning->arena, &rehearsal))
        longjmp(*planning->arena->escape, 1);
    for (size_t i = 0; i < rehearsal->lost.count; i++)
        tell_point(planning, &rehearsal->points.at[rehearsal->lost.at[i]]);
    for (size_t i = 0; i < rehearsal->things.count; i++)
        tell_thing(planning, &rehearsal->things.at[i]);
}
