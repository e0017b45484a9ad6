/*
 * Findings: added by every pass while it works, put in order here when all have run.
 *
 * 1  The order depends on what a finding says, never on which pass said it first: stops, then
 *    warnings, then notes; within these by kind of entity, key, kind of finding, arguments.
 * 2  No finding is told twice.
 * 3  Ways out that are on trial are tried last, stops first: until then nobody knows what stops.
 * 4  The sentence is made when it is shown, so that a plan holds numbers and no prose.
 */
#include "plan/findings.h"

#include "base/money.h"
#include "base/show.h"
#include "plan/check.h"
#include "plan/cures.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

struct form {
    enum severity severity;
    const char *sentence;
};

static const struct form forms[FINDING_KINDS] = {
#define FINDING_FORM(name, severity, sentence) [FINDING_##name] = {SEVERITY_##severity, sentence},
    FINDINGS(FINDING_FORM)
#undef FINDING_FORM
};

struct finding *finding_add(struct planning *planning, enum finding_kind kind,
                            enum entity_kind entity, int64_t key)
{
    assert((int)kind >= 0 && kind < FINDING_KINDS);
    struct finding *finding = LIST_ADD(planning->arena, &planning->plan->findings);
    finding->kind = (int)kind;
    finding->entity = entity;
    finding->key = key;
    for (int i = 0; i < FINDING_ARGUMENTS; i++)
        argument_text(finding, i, "");
    return finding;
}

void argument_length(struct finding *finding, int index, int64_t length)
{
    argument_quantity(finding, index, QUANTITY_LENGTH, length);
}

void argument_quantity(struct finding *finding, int index, enum quantity quantity, int64_t value)
{
    assert(index >= 0 && index < FINDING_ARGUMENTS);
    finding->arguments[index] = (struct argument){ARGUMENT_QUANTITY, quantity, value, ""};
}

void argument_money(struct finding *finding, int index, int64_t money)
{
    assert(index >= 0 && index < FINDING_ARGUMENTS);
    finding->arguments[index] = (struct argument){ARGUMENT_MONEY, QUANTITY_COUNT, money, ""};
}

void argument_text(struct finding *finding, int index, const char *text)
{
    assert(index >= 0 && index < FINDING_ARGUMENTS && text);
    finding->arguments[index] = (struct argument){ARGUMENT_TEXT, QUANTITY_COUNT, 0, text};
}

size_t findings_like(const struct plan *plan, const struct finding *like)
{
    size_t count = 0;

    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];

        count += finding->kind == like->kind && finding->entity == like->entity &&
                 finding->key == like->key;
    }
    return count;
}

/* ---- words ---- */

static void print_argument(const struct plan *plan, const struct argument *argument,
                           struct text *out)
{
    char quantity[QUANTITY_TEXT];
    char money[MONEY_TEXT];
    switch (argument->type) {
    case ARGUMENT_QUANTITY:
        if (argument->quantity == QUANTITY_MASS)
            quantity_print_weight(quantity, model_units(plan->facts), argument->value);
        else
            quantity_print_unit(quantity, argument->quantity, model_units(plan->facts),
                                argument->value);
        text_add(out, quantity);
        break;
    case ARGUMENT_MONEY:
        text_add(out, money_print_code(money, model_currency(plan->facts), argument->value));
        break;
    case ARGUMENT_TEXT:
        show_text(out, argument->text);
        break;
    }
}

static void print_entity(const struct plan *plan, const struct finding *finding, struct text *out)
{
    char name[MODEL_NAME_TEXT];
    if (finding->entity != ENTITY_none)
        show_text(out, model_item_name(name, plan->facts, finding->entity, finding->key));
}

void plan_finding_text(const struct plan *plan, const struct finding *finding, struct text *out)
{
    assert(finding->kind >= 0 && finding->kind < FINDING_KINDS);
    for (const char *at = forms[finding->kind].sentence; *at; at++) {
        if (*at != '%') {
            text_add_char(out, *at);
            continue;
        }
        at++;
        if (*at == 'e') {
            print_entity(plan, finding, out);
        } else {
            assert(*at >= '1' && *at < '1' + FINDING_ARGUMENTS);
            print_argument(plan, &finding->arguments[*at - '1'], out);
        }
    }
}

enum severity plan_finding_severity(const struct finding *finding)
{
    assert(finding->kind >= 0 && finding->kind < FINDING_KINDS);
    return forms[finding->kind].severity;
}

const char *plan_finding_word(const struct finding *finding)
{
    static const char *const words[] = {
        [SEVERITY_STOP] = "stop", [SEVERITY_WARN] = "warn", [SEVERITY_NOTE] = "note"};
    return words[plan_finding_severity(finding)];
}

/* ---- order ---- */

static int compare_whole(int64_t a, int64_t b)
{
    return (a > b) - (a < b);
}

static int compare_arguments(const struct argument *a, const struct argument *b)
{
    int order = compare_whole(a->type, b->type);
    if (order == 0)
        order = compare_whole(a->quantity, b->quantity);
    if (order == 0)
        order = compare_whole(a->value, b->value);
    return order != 0 ? order : strcmp(a->text, b->text);
}

static int compare_findings(const void *left, const void *right)
{
    const struct finding *a = left;
    const struct finding *b = right;
    int order = compare_whole(plan_finding_severity(a), plan_finding_severity(b));
    if (order == 0)
        order = compare_whole(a->entity, b->entity);
    if (order == 0)
        order = compare_whole(a->key, b->key);
    if (order == 0)
        order = compare_whole(a->kind, b->kind);
    for (int i = 0; order == 0 && i < FINDING_ARGUMENTS; i++)
        order = compare_arguments(&a->arguments[i], &b->arguments[i]);
    return order;
}

static void sort_and_thin(struct plan *plan)
{
    if (plan->findings.count == 0)
        return;
    struct finding *at = plan->findings.at;
    qsort(at, plan->findings.count, sizeof *at, compare_findings);
    size_t kept = 1;
    for (size_t i = 1; i < plan->findings.count; i++) {
        if (compare_findings(&at[kept - 1], &at[i]) != 0)
            at[kept++] = at[i];
    }
    plan->findings.count = kept;
}

/* ---- what only the whole plan shows ---- */

static void find_over_budget(struct planning *planning)
{
    int64_t budget = planning->model->build.budget;
    int64_t forecast = planning->plan->cost.forecast;
    if (budget > 0 && forecast > budget)
        argument_money(finding_add(planning, FINDING_OVER_BUDGET, ENTITY_build, 0), 0,
                       forecast - budget);
}

static void (*const checks[])(struct planning *planning) = {
    find_over_budget, check_openings, check_patches,   check_landings, check_seams,
    check_hidden,     check_short,    check_soft,      check_cushions, check_closing,
    check_legs,       check_room,     check_lids,      check_gaps,     check_outlines,
    check_bends,      check_way_in,   check_strength,  check_stuff,    check_drilling,
    check_seats,      check_members,  check_rehearsal,
};

void pass_finding(struct planning *planning)
{
    for (size_t i = 0; i < sizeof checks / sizeof *checks; i++)
        checks[i](planning);
    sort_and_thin(planning->plan);
    cures_try(planning);
}
