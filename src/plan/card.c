/*
 * What each step says: its words with the figures of this build put in, what it needs, what it
 * closes for good, and a digest of all that, by which a tick knows whether it was done to this
 * plan.
 */
#include "plan/card.h"

#include "base/digest.h"
#include "plan/findings.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* ---- figures ---- */

const char *card_length(const struct carding *carding, int64_t length)
{
    char printed[QUANTITY_TEXT];

    quantity_print_unit(printed, QUANTITY_LENGTH, model_units(carding->planning->model), length);
    return arena_text(carding->planning->arena, printed);
}

static bool screw_is_of(const struct carding *carding, const struct screw *screw)
{
    const struct plan *plan = carding->planning->plan;
    const struct step *step = carding->step;

    switch (screw->use) {
    case SCREW_FRAME:
        return step->kind == STEP_FRAME && screw->box == step->box;
    case SCREW_PANEL:
        return step->facing && plan->panels.at[screw->of].box == step->box &&
               plan->panels.at[screw->of].facing == step->facing;
    case SCREW_JOIN:
        return step->join && plan->points.at[screw->of].join == step->join;
    case SCREW_FITTING:
        break;
    }
    return false;
}

const char *card_screws(const struct carding *carding, const struct screw_kind **ret_kind)
{
    const struct plan *plan = carding->planning->plan;

    *ret_kind = NULL;
    for (size_t i = 0; i < plan->screws.count && !*ret_kind; i++)
        if (screw_is_of(carding, &plan->screws.at[i]))
            *ret_kind = &plan->screw_kinds.at[plan->screws.at[i].kind];
    if (!*ret_kind)
        return "";
    struct text text;
    text_init(&text);
    plan_screw_text(plan, *ret_kind, &text);
    const char *copy = arena_text(carding->planning->arena, text_string(&text));
    text_release(&text);
    return copy;
}

static const struct edge *first_edge(const struct plan *plan, int64_t layer)
{
    for (size_t i = 0; i < plan->edges.count; i++)
        if (plan->edges.at[i].layer == layer && plan->edges.at[i].pitch)
            return &plan->edges.at[i];
    return NULL;
}

static const char *box_name(const struct carding *carding, int64_t key)
{
    const struct box *box = MODEL_FIND(carding->planning->model, box, key);

    return box ? box->name : "";
}

static const char *screw_figure(const struct carding *carding, char letter)
{
    const struct screw_kind *kind;
    const char *text = card_screws(carding, &kind);

    if (!kind || letter == 'w')
        return text;
    return card_length(carding, letter == 'p' ? kind->pilot : kind->clearance);
}

static const char *join_figure(const struct carding *carding, char letter)
{
    const struct junction *junction = plan_junction(carding->planning->plan, carding->step->join);

    if (!junction)
        return "";
    switch (letter) {
    case 'l':
        return junction->cloth ? card_length(carding, junction->cloth) : "";
    case 'h':
        return box_name(carding, junction->head_box);
    case 'r':
        return junction->reachable ? words_side.at[junction->reach_side].name : "";
    case 'o':
        return words_tool.at[junction->tool].help;
    case 'd':
        return junction->patch ? card_length(carding, junction->patch) : "";
    case 'q':
        return arena_format(carding->planning->arena, "%zu", junction->point_count);
    default:
        return "";
    }
}

static const char *edge_figure(const struct carding *carding, char letter)
{
    const struct edge *edge = first_edge(carding->planning->plan, carding->step->layer);

    if (!edge)
        return "";
    return card_length(carding, letter == 'm' ? edge->pitch : edge->leg);
}

/* What a letter stands for; "" when this build has no such figure. */
static const char *figure(const struct carding *carding, char letter)
{
    if (strchr("wpe", letter))
        return screw_figure(carding, letter);
    if (strchr("lhrodq", letter))
        return join_figure(carding, letter);
    if (strchr("mg", letter))
        return edge_figure(carding, letter);
    return letter == 'b' ? box_name(carding, carding->step->box) : "";
}

/* ---- actions ---- */

/* A line with its figures; NULL when one of them is missing. */
static const char *fill_line(const struct carding *carding, const char *line)
{
    struct text text;
    const char *filled = NULL;
    bool whole = true;

    text_init(&text);
    for (const char *at = line; *at && whole; at++) {
        if (*at == '%') {
            const char *value = figure(carding, *++at);

            whole = *value != '\0';
            text_add(&text, value);
        } else {
            text_add_char(&text, *at);
        }
    }
    if (whole)
        filled = arena_text(carding->planning->arena, text_string(&text));
    text_release(&text);
    return filled;
}

static void put_actions(struct carding *carding)
{
    const struct card_words *words = &card_words[carding->step->kind];
    struct step *step = carding->step;

    step->actions = ARENA_MANY(carding->planning->arena, const char *, CARD_ACTIONS);
    for (int i = 0; i < CARD_ACTIONS && words->actions[i]; i++) {
        const char *line = fill_line(carding, words->actions[i]);

        if (line)
            step->actions[step->action_count++] = line;
    }
    if (words->caution)
        step->caution = words->caution;
}

/* ---- what it closes ---- */

static bool closes_a_way(const struct precedence *precedence)
{
    return strcmp(precedence->rule, "P51") == 0 || strcmp(precedence->rule, "P46") == 0 ||
           strcmp(precedence->rule, "P50") == 0;
}

/* The joins whose heads the step shuts away: those it has to wait for. */
static const char *shut_joins(const struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    size_t index = (size_t)(carding->step - plan->steps.at);
    const char *names = "";
    int64_t last = 0;

    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];
        const struct join *join =
            precedence->after == index && closes_a_way(precedence)
                ? MODEL_FIND(plan->facts, join, plan->steps.at[precedence->before].join)
                : NULL;

        if (!join || join->key == last)
            continue;
        names =
            arena_format(carding->planning->arena, "%s%s%s", names, *names ? ", " : "", join->name);
        last = join->key;
    }
    return names;
}

static void put_closes(struct carding *carding)
{
    const struct card_words *words = &card_words[carding->step->kind];
    const char *joins = shut_joins(carding);

    if (*joins)
        carding->step->closes = arena_format(carding->planning->arena,
                                             "no driver reaches the heads of %s after this", joins);
    else if (words->closes)
        carding->step->closes = words->closes;
}

/* ---- digest and ticks ---- */

static uint64_t digest_of(const struct step *step)
{
    uint64_t digest = digest_text(DIGEST_START, step->title);

    for (size_t i = 0; i < step->action_count; i++)
        digest = digest_text(digest, step->actions[i]);
    for (size_t i = 0; i < step->need_count; i++)
        digest = digest_text(digest, step->needs[i].text);
    for (size_t i = 0; i < step->measure_count; i++)
        digest = digest_text(digest, step->measures[i]);
    return digest;
}

static const struct tick *tick_of(const struct model *model, const char *step)
{
    for (size_t i = 0; i < model->ticks.count; i++)
        if (strcmp(model->ticks.at[i].step, step) == 0)
            return &model->ticks.at[i];
    return NULL;
}

/* A tick without a digest was made before there was one, or by hand: it is taken as it stands. */
static void compare_tick(struct carding *carding)
{
    struct step *step = carding->step;
    const struct tick *tick = step->ticked ? tick_of(carding->planning->model, step->name) : NULL;
    char now[17];

    step->content = digest_of(step);
    if (!tick || !*tick->content)
        return;
    snprintf(now, sizeof now, "%016" PRIx64, step->content);
    step->older = strcmp(tick->content, now) != 0;
    if (step->older)
        argument_text(
            finding_add(carding->planning, FINDING_DONE_OTHERWISE, ENTITY_tick, tick->key), 0,
            step->title);
}

void pass_card(struct planning *planning)
{
    struct carding carding = {planning, counted_make(planning), flaps_make(planning), NULL};

    for (size_t i = 0; i < planning->plan->steps.count; i++) {
        carding.step = &planning->plan->steps.at[i];
        put_actions(&carding);
        put_closes(&carding);
        card_needs(&carding);
        card_measures(&carding);
        compare_tick(&carding);
    }
}
