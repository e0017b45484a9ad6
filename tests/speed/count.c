/*
 * Plans the builds of the files that are named, then cuts their sticks, sheets and rolls with an
 * effort that a hand waits for: what tests/speed/count has counted, instruction by instruction.
 */
#include "exchange/exchange.h"
#include "plan/plan.h"

#include <stdio.h>
#include <stdlib.h>

static void read_file(struct text *bytes, const char *name)
{
    char chunk[4096];
    FILE *file = fopen(name, "rb");
    if (!file)
        exit(1);
    for (size_t got; (got = fread(chunk, 1, sizeof chunk, file)) > 0;)
        text_add_bytes(bytes, chunk, got);
    fclose(file);
}

/* Not inlined: its name is what is counted. */
static void __attribute__((noinline)) cut_all(const struct plan *plan, struct arena *arena)
{
    for (size_t i = 0; i < plan->jobs.count; i++) {
        struct cut_layout layout;
        cut_search_all(plan->jobs.at[i].way, plan->jobs.at[i].job, CUT_GOOD, arena, &layout);
    }
}

static void count_file(const char *name)
{
    const struct plan *plan;
    struct arena arena;
    struct model model;
    struct text bytes;
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    model_init(&model, &arena);
    text_init(&bytes);
    read_file(&bytes, name);
    if (exchange_build_in(text_string(&bytes), bytes.length, &model, NULL, NULL) ||
        plan_make(&model, &arena, &plan))
        exit(1);
    cut_all(plan, &arena);
    text_release(&bytes);
    arena_release(&arena);
}

int main(int argc, char **argv)
{
    for (int i = 1; i < argc; i++)
        count_file(argv[i]);
    return 0;
}
