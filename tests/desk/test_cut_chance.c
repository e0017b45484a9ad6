/*
 * Days at the bench by chance: buying, cutting, parts that change, are spoiled or come to be
 * needed, taking back. After each act the facts alone are held against each other, with sums of
 * their own: every inch of what was bought or lay on the shelf is in one part, one cut of the saw,
 * one squared end or one rest, and nothing is cut twice.
 */
#include "../base/dice.h"
#include "../base/inch.h"
#include "rails.h"

#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define KERF IN(0.125)
#define SQUARED IN(0.25)
#define MOST 400 /* pieces and lengths of a day */

/* Lengths of one kind, one by one. */
struct lengths {
    int64_t at[MOST];
    size_t count;
};

static void put(struct lengths *lengths, int64_t length, int64_t count)
{
    for (; count > 0; count--) {
        assert_true(lengths->count < MOST);
        lengths->at[lengths->count++] = length;
    }
}

/* Fails where there is none: it is cut twice, or from nothing. */
static void take(struct lengths *lengths, int64_t length, const char *what)
{
    for (size_t i = 0; i < lengths->count; i++) {
        if (lengths->at[i] != length)
            continue;
        lengths->at[i] = lengths->at[--lengths->count];
        return;
    }
    fail_msg("%s of %lld is cut, and there is none", what, (long long)length);
}

static bool same_lengths(struct lengths *a, const struct lengths *b)
{
    if (a->count != b->count)
        return false;
    for (size_t i = 0; i < b->count; i++)
        take(a, b->at[i], "a piece");
    return true;
}

/* ---- one piece ---- */

static int by_place(const void *a, const void *b)
{
    const struct cut_part *const *left = a, *const *right = b;
    return ((*left)->along > (*right)->along) - ((*left)->along < (*right)->along);
}

/* From its first end on: what is squared, then parts with a cut behind each but one that ends with
 * the piece, then the rest. Squared is each end that no saw has made. */
static void check_piece(const struct model *model, const struct cut_stock *piece)
{
    const struct cut_part *parts[MOST];
    bool whole = piece->origin == ORIGIN_BOUGHT || piece->origin == ORIGIN_SHELF;
    int64_t at = whole ? SQUARED : 0;
    size_t count = 0;
    for (size_t i = 0; i < model->cut_parts.count; i++) {
        if (model->cut_parts.at[i].cut_stock == piece->key)
            parts[count++] = &model->cut_parts.at[i];
    }
    assert_true(count > 0);
    qsort(parts, count, sizeof *parts, by_place);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(parts[i]->tick, piece->tick);
        assert_int_equal(parts[i]->along, at);
        at += parts[i]->length;
        assert_true(at <= piece->length);
        at += i + 1 < count || piece->length - at > KERF ? KERF : piece->length - at;
    }
    assert_int_equal(at + piece->rest, piece->length);
}

/* ---- all pieces ---- */

struct heap {
    struct lengths bought, shelf, rests, parts;
};

static void put_bought(struct heap *heap, const struct rails *rails)
{
    const struct model *model = desk_model(rails->bench.desk);
    for (size_t i = 0; i < model->boughts.count; i++) {
        const struct bought *bought = &model->boughts.at[i];
        if (bought->stock == rails->stock)
            put(&heap->bought, bought->length, bought->packs * bought->pack);
    }
}

/* What was there to begin with, and all that was put on it. */
static void put_shelf(struct heap *heap, const struct model *model, const struct lengths *first)
{
    for (size_t i = 0; i < first->count; i++)
        put(&heap->shelf, first->at[i], 1);
    for (size_t i = 0; i < model->cut_stocks.count; i++) {
        const struct cut_stock *piece = &model->cut_stocks.at[i];
        if (piece->rest > 0)
            put(piece->kept ? &heap->shelf : &heap->rests, piece->rest, 1);
    }
    for (size_t i = 0; i < model->cut_parts.count; i++) {
        if (!model->cut_parts.at[i].spoiled)
            put(&heap->parts, model->cut_parts.at[i].length, 1);
    }
}

static void take_pieces(struct heap *heap, const struct model *model)
{
    for (size_t i = 0; i < model->cut_stocks.count; i++) {
        const struct cut_stock *piece = &model->cut_stocks.at[i];
        switch (piece->origin) {
        case ORIGIN_SHELF:
            take(&heap->shelf, piece->length, "a piece of the shelf");
            break;
        case ORIGIN_REST:
            take(&heap->rests, piece->length, "a rest");
            break;
        case ORIGIN_PART:
            take(&heap->parts, piece->length, "a part");
            break;
        default:
            take(&heap->bought, piece->length, "a stick");
        }
    }
}

static void lie_on_shelf(const struct rails *rails, struct lengths *lengths)
{
    const struct model *model = desk_model(rails->bench.desk);
    for (size_t i = 0; i < model->leftovers.count; i++) {
        if (model->leftovers.at[i].stock == rails->stock)
            put(lengths, model->leftovers.at[i].length, model->leftovers.at[i].count);
    }
}

/* The pieces that the plan would cut now are there, each once. */
static void take_planned(struct heap *heap, const struct plan *plan)
{
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        for (size_t k = 0; !job->cut && k < job->layout->blanks.count; k++) {
            const struct cutting *cutting = &plan->cuttings.at[job->first_cutting + k];
            switch (cutting->source->origin) {
            case SIZE_BOUGHT:
                take(&heap->bought, cutting->length, "a stick, by the plan,");
                break;
            case SIZE_SHELF:
                take(&heap->shelf, cutting->length, "a piece of the shelf, by the plan,");
                break;
            case SIZE_REST:
                take(&heap->rests, cutting->length, "a rest, by the plan,");
                break;
            case SIZE_PART:
                take(&heap->parts, cutting->length, "a part, by the plan,");
                break;
            case SIZE_TO_BUY:
                break;
            }
        }
    }
}

/* Each part of the plan is cut, or laid out once. */
static void check_parts(const struct plan *plan)
{
    size_t cut = 0, laid = 0;
    for (size_t i = 0; i < plan->parts.count; i++)
        cut += plan->parts.at[i].cut != PLAN_NONE;
    for (size_t i = 0; i < plan->jobs.count; i++)
        laid += plan->jobs.at[i].cut ? 0 : plan->jobs.at[i].layout->places.count;
    assert_int_equal(cut + laid, plan->parts.count);
    assert_int_equal(plan->placements.count, plan->parts.count);
}

static void check_all(const struct rails *rails, const struct lengths *first)
{
    const struct model *model = desk_model(rails->bench.desk);
    struct heap heap = {0};
    struct lengths shelf = {0};
    for (size_t i = 0; i < model->cut_stocks.count; i++)
        check_piece(model, &model->cut_stocks.at[i]);
    put_bought(&heap, rails);
    put_shelf(&heap, model, first);
    take_pieces(&heap, model);
    lie_on_shelf(rails, &shelf);
    struct lengths left = heap.shelf;
    assert_true(same_lengths(&left, &shelf));
    take_planned(&heap, rails_plan(rails));
    check_parts(rails_plan(rails));
}

/* ---- a day ---- */

static bool find_step(const struct rails *rails, const char *kind, bool ticked, char *ret_name,
                      size_t size)
{
    const struct plan *plan = rails_plan(rails);
    size_t length = strlen(kind);
    bool found = false;
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        if (step->ticked != ticked || strncmp(step->name, kind, length) != 0 ||
            (step->name[length] != ':' && step->name[length] != '\0'))
            continue;
        snprintf(ret_name, size, "%s", step->name);
        found = true;
    }
    return found;
}

/* What is missing is bought before it is cut, as the order says. */
static void do_next(const struct rails *rails)
{
    static const char *const kinds[] = {"buy", "rebuy", "cut", "recut"};
    char name[80];
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        if (!find_step(rails, kinds[i], false, name, sizeof name))
            continue;
        if (strcmp(kinds[i], "buy") == 0)
            tick_until(rails->bench.desk, "buy");
        else
            DONE(desk_tick(rails->bench.desk, name, "", 0, note));
        return;
    }
}

/* The last one of a kind, where nothing hangs on it. */
static void take_one_back(const struct rails *rails, struct dice *dice)
{
    static const char *const kinds[] = {"recut", "cut"};
    const char *kind = kinds[dice_between(dice, 0, 1)];
    struct fault_note why;
    char name[80];
    if (find_step(rails, kind, true, name, sizeof name))
        (void)desk_untick(rails->bench.desk, name, &why);
}

static void change_something(const struct rails *rails, struct dice *dice)
{
    char count[24], length[24];
    snprintf(count, sizeof count, "%d", (int)dice_between(dice, 1, 6));
    snprintf(length, sizeof length, "%d-%d/8",
             (int)dice_between(dice, dice_between(dice, 0, 1) ? 2 : 30, 94),
             (int)dice_between(dice, 1, 7));
    rails_set(rails, count, length);
}

/* `done` is the number of acts that can be undone. */
static void undo(const struct rails *rails, int *done)
{
    char label[STORE_LABEL];
    if (*done == 0)
        return;
    DONE(desk_undo(rails->bench.desk, label, note));
    --*done;
}

static void act(const struct rails *rails, struct dice *dice, int *done)
{
    unsigned serial = desk_serial(rails->bench.desk);
    struct fault_note why;
    switch (dice_between(dice, 0, 7)) {
    case 0:
        change_something(rails, dice);
        break;
    case 1:
        (void)desk_spoil(rails->bench.desk, "cleat", true, &why);
        break;
    case 2:
        take_one_back(rails, dice);
        break;
    case 3:
        undo(rails, done);
        return;
    default:
        do_next(rails);
    }
    *done += desk_serial(rails->bench.desk) != serial;
}

static enum fault add_shelf(struct model *draft, void *context, struct fault_note *note)
{
    const struct rails *rails = context;
    static const int64_t lengths[] = {IN(40), IN(100), IN(17.5)};
    (void)note;
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
        struct leftover *left = MODEL_ADD(draft, leftover);
        left->stock = rails->stock;
        left->length = lengths[i];
        left->count = (int64_t)i + 1;
    }
    return FAULT_NONE;
}

static void every_inch_is_in_one_place(void **state)
{
    struct rails *rails = *state;
    bool is_long = getenv("STUFFOVER_LONG") != NULL;
    size_t cut = 0;
    struct lengths first = {0};
    DONE(desk_edit(rails->bench.desk, "shelf", add_shelf, rails, note));
    lie_on_shelf(rails, &first);
    for (uint64_t seed = 0; seed < (is_long ? 400 : 16); seed++) {
        struct dice dice = {seed};
        int done = 0;
        for (int acts = 0; acts < 30; acts++) {
            act(rails, &dice, &done);
            check_all(rails, &first);
            cut += desk_model(rails->bench.desk)->cut_stocks.count > 2;
        }
        for (char name[80]; find_step(rails, "recut", true, name, sizeof name);)
            DONE(desk_untick(rails->bench.desk, name, note));
        for (char name[80]; find_step(rails, "cut", true, name, sizeof name);)
            DONE(desk_untick(rails->bench.desk, name, note));
        check_all(rails, &first);
        assert_int_equal(desk_model(rails->bench.desk)->cut_stocks.count, 0);
    }
    assert_true(cut > 50);
}

int main(void)
{
    const struct CMUnitTest tests[] = {RAILS_TEST(every_inch_is_in_one_place)};
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
