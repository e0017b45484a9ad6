/*
 * How near the bound sticks are cut on jobs like a maker's: figures, never verdicts.
 *
 * The jobs are drawn from a fixed seed (../cut/drawn.h).
 */
#include "cut/search.h"
#include "drawn.h"
#include "stopwatch.h"

#include <stdio.h>
#include <stdlib.h>

struct sums {
    int jobs, proven;
    double gap, worst_gap;
    double seconds, slowest;
    size_t stopped;
};

static void solve(const struct drawn *drawn, int64_t work, struct sums *sums)
{
    const struct cut_job *job = &drawn->job;
    struct arena arena;
    jmp_buf escape;
    double gap;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    double begun = stopwatch_wall();
    struct cut_search *search = cut_begin(CUT_BARS, job, &arena);
    while (cut_done(search) < work && cut_step(search, work - cut_done(search)))
        ;
    const struct cut_layout *best = cut_best(search);
    begun = stopwatch_wall() - begun;
    gap = (double)(best->cost - best->bound) / (double)best->cost;
    sums->jobs++;
    sums->proven += layout_proven(best);
    sums->gap += gap;
    sums->worst_gap = gap > sums->worst_gap ? gap : sums->worst_gap;
    sums->seconds += begun;
    sums->slowest = begun > sums->slowest ? begun : sums->slowest;
    if (layout_verify(CUT_BARS, job, best, &arena) != CUT_FLAW_NONE)
        exit(1);
    arena_release(&arena);
}

int main(void)
{
    static const struct {
        size_t pieces, sizes;
        int64_t alike, work;
        int jobs;
    } rows[] = {{12, 3, 4, 100000000, 40},   {20, 3, 4, 100000000, 40},
                {40, 4, 8, 100000000, 40},   {80, 4, 8, 100000000, 30},
                {140, 5, 8, 100000000, 20},  {200, 6, 10, 100000000, 20},
                {1160, 6, 60, 300000000, 5}, {1160, 6, 60, 1000000000, 5}};
    static struct drawn drawn;
    struct dice dice;

    dice = (struct dice){20};
    printf("pieces sizes       work  jobs proven  mean gap  worst gap  mean ms  slowest\n");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct sums sums = {0};

        for (int n = 0; n < rows[i].jobs; n++) {
            draw_sticks(&drawn, &dice, rows[i].pieces, rows[i].sizes, rows[i].alike);
            solve(&drawn, rows[i].work, &sums);
        }
        printf("%6zu %5zu %10ld %5d %6d %8.4f%% %9.4f%% %8.1f %8.1f\n", rows[i].pieces,
               rows[i].sizes, (long)rows[i].work, sums.jobs, sums.proven,
               100 * sums.gap / sums.jobs, 100 * sums.worst_gap, 1e3 * sums.seconds / sums.jobs,
               1e3 * sums.slowest);
    }
    return 0;
}
