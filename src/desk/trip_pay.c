/*
 * Paying for a line of a trip: a spend in the model of each build that has a share in it, saved
 * together. Taking a payment back deletes those spends.
 */
#include "desk/trip.h"

#include "desk/internal.h"
#include "desk/spend.h"

#include <assert.h>

/* A change of the models of a line's builds. */
struct paying {
    const struct trip *trip;
    trip_words_fn *words;
    const struct trip_line *line;
    const char *day;
    int64_t amount;
    bool back; /* spends are taken away */
    LIST_OF(struct store_change) changes;
    struct arena arena;
};

/* "cut together with Wing bed, Corner bench"; a note holds no more than a few names. */
#define TOGETHER_NAMES 5

static void put_together(struct text *out, const struct paying *paying, size_t build)
{
    const struct trip_cut *cut = paying->line->cut;
    size_t others = 0;
    text_add(out, TRIP_TOGETHER);
    for (size_t i = 0; i < cut->users.count; i++) {
        size_t other = cut->users.at[i].build;
        if (other == build || ++others > TOGETHER_NAMES)
            continue;
        text_format(out, "%s%s", others > 1 ? ", " : "",
                    paying->trip->builds.at[other].model->build.name);
    }
    if (others > TOGETHER_NAMES)
        text_format(out, " and %zu more", others - TOGETHER_NAMES);
}

static enum fault note_together(const struct paying *paying, size_t build, struct model *after,
                                struct spend *spend, struct fault_note *note)
{
    struct text words;
    if (!paying->line->cut || paying->line->cut->users.count < 2)
        return FAULT_NONE;
    text_init(&words);
    put_together(&words, paying, build);
    enum fault fault = field_read(field_named(entity_of(ENTITY_spend), "note"), after, spend,
                                  text_string(&words), note);
    text_release(&words);
    return fault;
}

/* Packs of a share's purchase that no spend says it was for. */
static int64_t packs_open(const struct paying *paying, const struct trip_share *share)
{
    const struct plan *plan = paying->trip->builds.at[share->build].plan;
    int64_t open = share->purchase->packs - plan_cost_line(plan, share->purchase)->packs;
    return open > 0 ? open : 0;
}

static enum fault add_spend(const struct paying *paying, const struct trip_share *share,
                            int64_t amount, struct model *after, struct fault_note *note)
{
    struct text words;
    struct spend *spend = MODEL_ADD(after, spend);
    spend->stock = paying->line->stock;
    spend->aisle = paying->line->aisle;
    spend->amount = amount;
    if (!paying->line->cut && !paying->line->saved && !share->purchase->length)
        spend->count = packs_open(paying, share);
    spend->settles = spend->count == 0;
    desk_spend_size(spend, after, share->purchase);
    text_init(&words);
    paying->words(&words, paying->trip->builds.at[share->build].plan, share->purchase);
    const struct entity *entity = entity_of(ENTITY_spend);
    enum fault fault =
        field_read(field_named(entity, "what"), after, spend, text_string(&words), note);
    if (!fault)
        fault = field_read(field_named(entity, "dated"), after, spend, paying->day, note);
    if (!fault)
        fault = note_together(paying, share->build, after, spend, note);
    text_release(&words);
    return fault;
}

/* The build as it is in the file: the trip's own has its shelf cleared. A build with several shares
 * changes once. */
static enum fault model_to_change(struct paying *paying, struct desk *desk, int64_t build,
                                  struct model **ret_after, struct fault_note *note)
{
    for (size_t i = 0; i < paying->changes.count; i++) {
        *ret_after = paying->changes.at[i].after;
        if ((*ret_after)->build.key == build)
            return FAULT_NONE;
    }
    struct model *before = ARENA_NEW(&paying->arena, struct model);
    struct model *after = ARENA_NEW(&paying->arena, struct model);
    enum fault fault = store_peek(desk->store, build, before, &paying->arena, note);
    if (fault)
        return fault;
    model_copy(after, before, &paying->arena);
    *LIST_ADD(&paying->arena, &paying->changes) = (struct store_change){before, after};
    *ret_after = after;
    return FAULT_NONE;
}

static enum fault change_share(struct paying *paying, struct desk *desk,
                               const struct trip_share *share, int64_t amount,
                               struct fault_note *note)
{
    int64_t build = paying->trip->builds.at[share->build].model->build.key;
    struct model *after = NULL;
    enum fault fault = model_to_change(paying, desk, build, &after, note);
    if (fault)
        return fault;
    if (!paying->back)
        fault = add_spend(paying, share, amount, after, note);
    else if (model_remove(after, ENTITY_spend, share->spend->key) == 0)
        fault = fault_say(note, FAULT_CHANGED, "the spend is not there any more");
    return fault;
}

struct paying_run {
    struct paying *paying;
    struct desk *desk;
};

/* What is still to be paid for a share by its price. */
static int64_t open_share(const struct trip_share *share)
{
    int64_t open = share->till - share->amount;
    return share->paid || open < 0 ? 0 : open;
}

static enum fault pay_shares(const struct paying_run *run, struct fault_note *note)
{
    struct paying *paying = run->paying;
    const struct trip_line *line = paying->line;
    size_t count = line->shares.count;
    int64_t *weights = ARENA_MANY(&paying->arena, int64_t, count);
    int64_t *shares = ARENA_MANY(&paying->arena, int64_t, count);
    enum fault fault = FAULT_NONE;
    size_t open = 0;
    for (size_t i = 0; i < count; i++) {
        if (!line->shares.at[i].paid)
            weights[open++] = open_share(&line->shares.at[i]);
    }
    money_share_out(paying->amount, weights, open, shares);
    open = 0;
    for (size_t i = 0; i < count && !fault; i++) {
        if (!line->shares.at[i].paid)
            fault = change_share(paying, run->desk, &line->shares.at[i], shares[open++], note);
    }
    return fault;
}

static enum fault run_changes(void *context, struct fault_note *note)
{
    const struct paying_run *run = context;
    const struct trip_line *line = run->paying->line;
    enum fault fault = FAULT_NONE;
    if (!run->paying->back)
        return pay_shares(run, note);
    for (size_t i = 0; i < line->shares.count && !fault; i++) {
        if (line->shares.at[i].spend)
            fault = change_share(run->paying, run->desk, &line->shares.at[i], 0, note);
    }
    return fault;
}

static enum fault carry_out(struct desk *desk, struct paying *paying, const char *what,
                            struct fault_note *note)
{
    char label[STORE_LABEL];
    struct text words;
    struct paying_run run = {paying, desk};
    const struct trip_share *first = &paying->line->shares.at[0];
    arena_init(&paying->arena);
    text_init(&words);
    paying->words(&words, paying->trip->builds.at[first->build].plan, first->purchase);
    desk_label(label, "%s: %s", what, text_string(&words));
    text_release(&words);
    enum fault fault = desk_guard(&paying->arena, run_changes, &run, note);
    if (!fault && paying->changes.count == 0)
        fault = fault_say(note, FAULT_REFUSED,
                          paying->back ? "it was paid by hand: change that spend itself"
                                       : "there is nothing to pay");
    if (!fault)
        fault = store_save_together(desk->store, paying->changes.at, paying->changes.count, label,
                                    note);
    arena_release(&paying->arena);
    return fault ? fault : desk_take_up(desk, desk_model(desk)->build.key, note);
}

static int64_t open_till(const struct trip_line *line)
{
    int64_t sum = 0;
    for (size_t i = 0; i < line->shares.count; i++)
        sum += open_share(&line->shares.at[i]);
    return sum;
}

enum fault desk_trip_pay(struct desk *desk, const struct desk_trip *trip, size_t line,
                         const char *day, const char *typed, struct fault_note *note)
{
    assert(line < desk_trip_of(trip)->lines.count);
    struct paying paying = {.trip = desk_trip_of(trip),
                            .words = desk_trip_words(trip),
                            .line = &desk_trip_of(trip)->lines.at[line],
                            .day = day};
    struct spend probe = {.key = 0};
    paying.amount = open_till(paying.line);
    if (typed) {
        enum fault fault = field_read(field_named(entity_of(ENTITY_spend), "amount"),
                                      &desk->state->model, &probe, typed, note);
        if (fault)
            return fault;
        paying.amount = probe.amount;
    }
    return carry_out(desk, &paying, "paid", note);
}

enum fault desk_trip_unpay(struct desk *desk, const struct desk_trip *trip, size_t line,
                           struct fault_note *note)
{
    assert(line < desk_trip_of(trip)->lines.count);
    struct paying paying = {.trip = desk_trip_of(trip),
                            .words = desk_trip_words(trip),
                            .line = &desk_trip_of(trip)->lines.at[line],
                            .back = true};
    return carry_out(desk, &paying, "not paid", note);
}
