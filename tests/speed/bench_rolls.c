/*
 * How near the bound cloth is laid on jobs like a maker's: figures, never verdicts.
 *
 *     bench_rolls [--work N] [--jobs N] [--seed N] [--each]
 *
 * The jobs are drawn from fixed seeds (../cut/drawn.h), others with --seed, on which nothing was
 * tuned; odd ones in inches, even ones in millimetres.
 */
#include "cut/search.h"
#include "drawn.h"
#include "stopwatch.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct sums {
    int jobs, proven, flawed;
    double gap, worst, steps, seconds, slowest;
};

static void solve(const struct drawn *drawn, int64_t work, bool each, struct sums *sums)
{
    const struct cut_job *job = &drawn->job;
    struct cut_search *search;
    const struct cut_layout *best;
    struct arena arena;
    jmp_buf escape;
    double begun, steps;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    begun = stopwatch_used();
    search = cut_begin(CUT_ROLLS, job, &arena);
    while (cut_done(search) < work && cut_step(search, CUT_SLICE))
        ;
    begun = stopwatch_used() - begun;
    best = cut_best(search);
    steps = (double)(best->cost - best->bound) / (double)job->sale.step;
    if (each)
        printf("  %2zu pieces, %zu left out: %5.1f steps of %5.1f; %6.0f ms, work %ld\n",
               job->part_count, best->left_out.count, steps,
               (double)best->cost / (double)job->sale.step, begun * 1e3,
               (long)(cut_done(search) / 1000000));
    sums->jobs++;
    sums->proven += layout_proven(best);
    sums->flawed += layout_verify(CUT_ROLLS, job, best, &arena) != CUT_FLAW_NONE;
    if (best->cost > 0 && (double)(best->cost - best->bound) / (double)best->cost > sums->worst)
        sums->worst = (double)(best->cost - best->bound) / (double)best->cost;
    sums->gap += best->cost > 0 ? (double)(best->cost - best->bound) / (double)best->cost : 0;
    sums->steps += (double)best->cost / (double)job->sale.step;
    sums->seconds += begun;
    sums->slowest = begun > sums->slowest ? begun : sums->slowest;
    arena_release(&arena);
}

int main(int argc, char **argv)
{
    static struct drawn drawn;
    long work = 1000000000, jobs = 30, seed = 0;
    bool each = false;
    int only = -1;

    for (int i = 1; i < argc; i++) {
        if (strcmp(argv[i], "--each") == 0)
            each = true;
        else if (i + 1 < argc && strcmp(argv[i], "--work") == 0)
            work = strtol(argv[++i], NULL, 10);
        else if (i + 1 < argc && strcmp(argv[i], "--jobs") == 0)
            jobs = strtol(argv[++i], NULL, 10);
        else if (i + 1 < argc && strcmp(argv[i], "--seed") == 0)
            seed = strtol(argv[++i], NULL, 10);
        else if (i + 1 < argc && strcmp(argv[i], "--kind") == 0)
            only = (int)strtol(argv[++i], NULL, 10);
        else
            return 2;
    }
    printf(
        "kind           jobs proven  mean gap  worst gap  mean steps  mean ms  slowest  flawed\n");
    for (int cloth = 0; cloth < CLOTHS; cloth++) {
        struct dice dice = {(uint64_t)(40 + cloth + 1000 * seed)};
        struct sums sums = {0};

        if (only >= 0 && only != cloth)
            continue;
        for (int n = 0; n < jobs; n++) {
            draw_cloth(&drawn, &dice, (enum cloth)cloth, n % 2 != 0);
            solve(&drawn, work, each, &sums);
        }
        printf("%-14s %4d %6d %8.2f%% %9.2f%% %11.2f %8.1f %8.1f %7d\n", cloth_names[cloth],
               sums.jobs, sums.proven, 100 * sums.gap / sums.jobs, 100 * sums.worst,
               sums.steps / sums.jobs, 1e3 * sums.seconds / sums.jobs, 1e3 * sums.slowest,
               sums.flawed);
        fflush(stdout);
    }
    return 0;
}
