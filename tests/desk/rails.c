#include "rails.h"

#include "../base/inch.h"
#include "plan/buy.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static void add_stick(struct model *draft, int64_t stock, int64_t length, int64_t price)
{
    struct offer *offer = MODEL_ADD(draft, offer);
    offer->stock = stock;
    offer->length = length;
    offer->price = price;
}

/* Two parts of 90 in. Of 144 in no stick holds both, and two of 96 in are cheaper. */
static enum fault make_rails(struct model *draft, void *context, struct fault_note *note)
{
    struct rails *rails = context;
    struct stock *stock = MODEL_ADD(draft, stock);
    stock->name = arena_text(draft->arena, "rail stick");
    stock->kind = STOCK_STICK;
    rails->stock = stock->key;
    add_stick(draft, rails->stock, IN(96), 400);
    add_stick(draft, rails->stock, IN(144), 500);
    struct box *box = MODEL_ADD(draft, box);
    box->name = arena_text(draft->arena, "Board");
    box->width = box->height = box->depth = IN(20);
    struct fitting *fitting = MODEL_ADD(draft, fitting);
    fitting->box = box->key;
    fitting->kind = FITTING_CLEAT;
    fitting->stock = rails->stock;
    fitting->count = 2;
    fitting->length = IN(90);
    rails->fitting = fitting->key;
    draft->build.name = arena_text(draft->arena, "Rails");
    (void)note;
    return FAULT_NONE;
}

int rails_begin(void **state)
{
    static const char *const names[] = {"headboard", NULL};
    static struct rails rails;
    bench_open(&rails.bench, names);
    DONE(desk_new_build(rails.bench.desk, "rails", make_rails, &rails, note));
    *state = &rails;
    return 0;
}

int rails_end(void **state)
{
    struct rails *rails = *state;
    bench_close(&rails->bench);
    return 0;
}

const struct plan *rails_plan(const struct rails *rails)
{
    return desk_plan(rails->bench.desk);
}

void rails_set(const struct rails *rails, const char *count, const char *length)
{
    struct desk *desk = rails->bench.desk;
    DONE(desk_set(desk, ENTITY_fitting, rails->fitting, "count", count, note));
    DONE(desk_set(desk, ENTITY_fitting, rails->fitting, "length", length, note));
}

int64_t rails_listed(const struct rails *rails, int64_t length)
{
    const struct plan *plan = rails_plan(rails);
    int64_t packs = 0;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *line = &plan->purchases.at[i];
        const struct offer *offer = MODEL_FIND(plan->facts, offer, line->offer);
        if (line->stock == rails->stock && offer && offer->length == length)
            packs += line->packs;
    }
    return packs;
}

bool rails_missing(const struct rails *rails)
{
    struct arena arena;
    jmp_buf escape;
    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        fail_msg("there is no memory");
    const struct plan *plan = rails_plan(rails);
    size_t stock = model_index(plan->facts, ENTITY_stock, rails->stock);
    bool missing = stocks_short(plan, &arena)[stock];
    arena_release(&arena);
    return missing;
}

static bool is_open(const struct step *step, const char *kind)
{
    size_t length = strlen(kind);
    return !step->ticked && strncmp(step->name, kind, length) == 0 &&
           (step->name[length] == ':' || step->name[length] == '\0');
}

void rails_tick(const struct rails *rails, const char *kind)
{
    const struct plan *plan = rails_plan(rails);
    for (size_t i = 0; i < plan->steps.count; i++) {
        char name[sizeof plan->steps.at->name];
        if (!is_open(&plan->steps.at[i], kind))
            continue;
        snprintf(name, sizeof name, "%s", plan->steps.at[i].name);
        DONE(desk_tick(rails->bench.desk, name, "", 0, note));
        return;
    }
    fail_msg("no step %s is open", kind);
}
