#include "example.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static int begin(void **state, const char *name)
{
    struct example *example = calloc(1, sizeof *example);
    place_begin(&example->place);
    example->desk = desk_at(&example->place);
    desk_take_case(example->desk, name);
    example->plan = desk_told_plan(example->desk);
    *state = example;
    return 0;
}

int example_headboard(void **state)
{
    return begin(state, "headboard");
}

int example_ottoman(void **state)
{
    return begin(state, "ottoman");
}

int example_banquette(void **state)
{
    return begin(state, "banquette");
}

int example_end(void **state)
{
    struct example *example = *state;
    desk_close(example->desk);
    place_end(&example->place);
    free(example);
    return 0;
}

const struct cover *cover_of(const struct plan *plan, const char *box, enum layer_word kind)
{
    int64_t key = model_key_named(plan->facts, ENTITY_box, box);
    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);
        if (cover->box == key && layer->kind == (int64_t)kind)
            return cover;
    }
    fail_msg("%s has no such layer", box);
    return NULL;
}

bool has_piece(const struct plan *plan, const char *box, int64_t width, int64_t height)
{
    int64_t key = model_key_named(plan->facts, ENTITY_box, box);
    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        if (piece->box == key && piece->width == width && piece->height == height)
            return true;
    }
    return false;
}

const struct purchase *purchase_of(const struct plan *plan, const char *stock)
{
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (strcmp(plan_stock_name(plan, plan->purchases.at[i].stock), stock) == 0)
            return &plan->purchases.at[i];
    }
    fail_msg("no %s on the shopping list", stock);
    return NULL;
}

bool has_finding(const struct plan *plan, const char *words)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        struct text sentence;
        text_init(&sentence);
        plan_finding_text(plan, &plan->findings.at[i], &sentence);
        bool found = strstr(text_string(&sentence), words) != NULL;
        text_release(&sentence);
        if (found)
            return true;
    }
    return false;
}

int64_t staples_of(const struct plan *plan, const char *box, enum layer_word kind,
                   int64_t *ret_temporary)
{
    int64_t key = model_key_named(plan->facts, ENTITY_box, box);
    int64_t staples = 0;
    *ret_temporary = 0;
    for (size_t i = 0; i < plan->edges.count; i++) {
        const struct edge *edge = &plan->edges.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, edge->layer);
        if (edge->box != key || layer->kind != (int64_t)kind)
            continue;
        staples += edge->staples;
        *ret_temporary += edge->temporary;
    }
    return staples;
}

int64_t used_of(const struct plan *plan, enum stock_word kind)
{
    int64_t amount = 0;
    for (size_t i = 0; i < plan->consumables.count; i++)
        if (plan->consumables.at[i].kind == (int64_t)kind)
            amount += plan->consumables.at[i].amount;
    return amount;
}

size_t step_at(const struct plan *plan, const char *name)
{
    const struct step *step = plan_step(plan, name);

    if (!step)
        fail_msg("the plan has no step %s", name);
    return (size_t)(step - plan->steps.at);
}
