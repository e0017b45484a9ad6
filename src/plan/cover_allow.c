/*
 * How much cloth a tufting field takes: what each diamond, square or channel takes more
 * than it measures.
 *
 *     least      the straight way down to the pull and up again: 2 (sqrt((s/2)^2 + d^2) - s/2)
 *     shallow    a fixed bit for each space: the foam is not cut
 *     pull       a share of the pull, each way
 *     generous   twice the foam, each way
 *     trial      what one of them took when the maker tried it: goes before every rule
 *
 * Of m diamonds the two at the ends go on into the border, half of one each: m + 1 in all. Channels
 * stand side by side, m of them, and take nothing more upward.
 */
#include "plan/cover.h"

#include "plan/findings.h"

#include <assert.h>

static const char *const rule_sources[ALLOWANCE_TRIAL + 1] = {
    [ALLOWANCE_AUTO] = "",
    [ALLOWANCE_LEAST] = "derived: down to the pull and up again, a lower bound",
    [ALLOWANCE_SHALLOW] = "common practice, no source",
    [ALLOWANCE_PULL] = "common practice, no source",
    [ALLOWANCE_GENEROUS] = "practice seen, no source: 8 x 5 in on 2 in of foam marked 12 x 9",
    [ALLOWANCE_TRIAL] = "one of them, tried and measured",
};

const char *plan_allowance_source(int64_t allowance)
{
    assert(allowance >= 0 && allowance <= ALLOWANCE_TRIAL);

    return rule_sources[allowance];
}

const char *plan_allowance_word(int64_t allowance)
{
    assert(allowance >= 0 && allowance <= ALLOWANCE_TRIAL);

    return allowance == ALLOWANCE_TRIAL ? "trial" : words_allowance.at[allowance].name;
}

int64_t foam_depth(const struct model *model, const struct layer *cover)
{
    int64_t depth = 0;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *foam = &model->layers.at[i];
        const struct stock *stock;

        if (foam->kind != LAYER_FOAM || foam->box != cover->box || foam->group != cover->group ||
            foam->side != cover->side)
            continue;
        stock = MODEL_FIND(model, stock, foam->stock);
        if (foam->thickness > 0)
            depth += foam->thickness;
        else if (stock)
            depth += stock->thickness;
    }
    return depth;
}

static int64_t pull_depth(const struct planning *planning, const struct spread *spread)
{
    int64_t foam = foam_depth(planning->model, spread->layer);
    int64_t rest = planning->value[TRADE_TUFT_PULL_REST];

    if (spread->tufting->pull > 0)
        return spread->tufting->pull;
    return foam > rest ? foam - rest : 0;
}

static int64_t rule_of(const struct tufting *tufting)
{
    if (tufting->allowance != ALLOWANCE_AUTO)
        return tufting->allowance;
    return tufting->pattern == PATTERN_SHALLOW && tufting->made == TUFTS_BUTTONS ? ALLOWANCE_SHALLOW
                                                                                 : ALLOWANCE_PULL;
}

/* What one of that pitch takes more, by a rule. */
static int64_t by_rule(const struct planning *planning, const struct spread *spread, int64_t rule,
                       int64_t pitch)
{
    int64_t pull = pull_depth(planning, spread);
    int64_t each = 0;

    switch (rule) {
    case ALLOWANCE_LEAST:
        return tuft_least(pitch, pull);
    case ALLOWANCE_SHALLOW:
        return planning->value[TRADE_TUFT_EXTRA_SHALLOW];
    case ALLOWANCE_GENEROUS:
        return 2 * foam_depth(planning->model, spread->layer);
    default:
        (void)whole_share(pull, planning->value[TRADE_TUFT_EXTRA_PER_DIAMOND], 1000000, &each);
        return each;
    }
}

static int64_t by_trial(int64_t trial, int64_t pitch, int64_t rule)
{
    if (trial == 0)
        return rule;
    return trial > pitch ? trial - pitch : 0;
}

static int64_t border_of(const struct planning *planning, const struct tufting *tufting)
{
    if (tufting->border > 0 || tufting->made == TUFTS_CHANNELS)
        return tufting->border;
    return planning->value[TRADE_TUFT_BORDER];
}

static int64_t pitch_of(int64_t size, int64_t border, int64_t parts)
{
    return size > 2 * border ? whole_divide_even(size - 2 * border, parts) : 0;
}

struct tuft_field tuft_reckon(const struct planning *planning, const struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    bool channels = tufting->made == TUFTS_CHANNELS;
    int64_t border = border_of(planning, tufting);
    int64_t rule = rule_of(tufting);
    struct tuft_field field = {
        .layer = spread->layer->key,
        .box = spread->box->key,
        .made = tufting->made,
        .border = border,
        .across_pitch = pitch_of(spread->width, border, tufting->across),
        .up_pitch = channels ? spread->height : pitch_of(spread->height, border, tufting->down),
        .pull = pull_depth(planning, spread),
        .allowance = tufting->trial_across > 0 ? ALLOWANCE_TRIAL : rule,
        .buttons = tuft_count(tufting)};

    field.across_each = by_trial(tufting->trial_across, field.across_pitch,
                                 by_rule(planning, spread, rule, field.across_pitch));
    if (!channels)
        field.up_each = by_trial(tufting->trial_up, field.up_pitch,
                                 by_rule(planning, spread, rule, field.up_pitch));
    return field;
}

bool tufts_over(const struct planning *planning, const struct spread *padding,
                struct tuft_field *ret_field)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->tuftings.count; i++) {
        const struct tufting *tufting = &model->tuftings.at[i];
        const struct layer *over = MODEL_FIND(model, layer, tufting->layer);
        const struct layer *under = padding->layer;
        struct spread spread;

        if (!over || over->box != under->box || over->group != under->group ||
            over->side != under->side || tufting->made != TUFTS_BUTTONS ||
            tufting->pattern == PATTERN_SHALLOW || !spread_lay(planning, over, &spread))
            continue;
        *ret_field = spread.field;
        return true;
    }
    return false;
}

int64_t tuft_extra(const struct spread *spread, bool across)
{
    const struct tufting *tufting = spread->tufting;

    if (!tufting)
        return 0;
    if (tufting->made == TUFTS_CHANNELS)
        return across ? tufting->across * spread->field.across_each : 0;
    return across ? (tufting->across + 1) * spread->field.across_each
                  : (tufting->down + 1) * spread->field.up_each;
}

int64_t tuft_on_cloth(const struct spread *spread, bool level, int64_t at)
{
    const struct tufting *tufting = spread->tufting;
    int64_t extent = level ? spread->high : spread->wide;
    int64_t off, extra, field;

    at = spread_bent(spread, level, at);
    if (!tufting)
        return at;
    off = at - extent / 2;
    extra = tuft_extra(spread, !level);
    field = extent - 2 * spread->field.border;
    if (2 * off > field || 2 * off < -field || field <= 0)
        return off < 0 ? at - extra / 2 : at + extra / 2;
    return at + whole_divide_even(off * (level ? tufting->down * spread->field.up_each
                                               : tufting->across * spread->field.across_each),
                                  field);
}

/* A rule is a guess until one was tried: told where it moves much cloth. */
void tell_guess(struct planning *planning, const struct spread *spread)
{
    const struct tuft_field *field = &spread->field;
    struct finding *finding;

    if (field->allowance == ALLOWANCE_TRIAL || field->allowance == ALLOWANCE_SHALLOW)
        return;
    finding = finding_add(planning, FINDING_TUFT_GUESS, ENTITY_layer, spread->layer->key);
    argument_text(finding, 0, plan_allowance_word(field->allowance));
    argument_length(finding, 1, field->across_each);
    argument_text(finding, 2, field->made == TUFTS_CHANNELS ? "channel" : "diamond");
}
