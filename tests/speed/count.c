/*
 * Plans the builds of the files that are named, then cuts their sticks, sheets and rolls with an
 * effort that a hand waits for: what tests/speed/count has counted, instruction by instruction.
 */
#include "build_file.h"
#include "plan/plan.h"

#include <stdlib.h>

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
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    model_init(&model, &arena);
    build_file_read(name, &model);
    if (plan_make(&model, &arena, &plan))
        exit(1);
    cut_all(plan, &arena);
    arena_release(&arena);
}

int main(int argc, char **argv)
{
    for (int i = 1; i < argc; i++)
        count_file(argv[i]);
    return 0;
}
