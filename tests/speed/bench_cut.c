/*
 * How near the bound sticks are cut on jobs like a maker's: figures, never verdicts.
 *
 * The jobs are drawn from fixed seeds: a saw of 1/8 in, lengths in eighths of an inch between 6 and
 * 90 in, each wanted one to eight times, out of three to six stock lengths whose price by length
 * varies by a tenth, some with leftovers.
 */
#include "cut/search.h"
#include "dice.h"
#include "stopwatch.h"

#include <stdio.h>
#include <stdlib.h>

#define EIGHTH INT64_C(1016)
#define MOST_PIECES 1200
#define MOST_SIZES 10

struct drawn {
    struct cut_piece pieces[MOST_PIECES];
    struct cut_size sizes[MOST_SIZES];
    size_t piece_count, size_count;
};

struct sums {
    int jobs, proven;
    double gap, worst_gap;
    double seconds, slowest;
    size_t stopped;
};

static void draw_sizes(struct drawn *drawn, struct dice *dice, size_t sizes)
{
    static const int64_t feet[] = {8, 10, 12, 14, 16, 20};

    drawn->size_count = 0;
    for (size_t i = 0; i < sizes; i++)
        drawn->sizes[drawn->size_count++] =
            (struct cut_size){.length = feet[i] * 96 * EIGHTH,
                              .price = feet[i] * 40 + feet[i] * dice_between(dice, 0, 7),
                              .limit = CUT_ANY};
    for (int64_t i = dice_between(dice, 0, 3); i > 0; i--)
        drawn->sizes[drawn->size_count++] = (struct cut_size){
            .length = dice_between(dice, 100, 599) * EIGHTH, .limit = dice_between(dice, 1, 2)};
}

static void draw_pieces(struct drawn *drawn, struct dice *dice, size_t pieces, int64_t most_alike)
{
    drawn->piece_count = 0;
    while (drawn->piece_count < pieces) {
        int64_t length = dice_between(dice, 48, 719) * EIGHTH;

        for (int64_t n = dice_between(dice, 1, most_alike); n > 0 && drawn->piece_count < pieces;
             n--)
            drawn->pieces[drawn->piece_count++] = (struct cut_piece){.length = length};
    }
}

static void solve(const struct drawn *drawn, int64_t work, struct sums *sums)
{
    const struct cut_job job = {.parts = drawn->pieces,
                                .part_count = drawn->piece_count,
                                .sizes = drawn->sizes,
                                .size_count = drawn->size_count,
                                .kerf = EIGHTH};
    struct arena arena;
    jmp_buf escape;
    double gap;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    double begun = stopwatch_wall();
    struct cut_search *search = cut_begin(CUT_BARS, &job, &arena);
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
    if (layout_verify(CUT_BARS, &job, best, &arena) != CUT_FLAW_NONE)
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
            draw_sizes(&drawn, &dice, rows[i].sizes);
            draw_pieces(&drawn, &dice, rows[i].pieces, rows[i].alike);
            solve(&drawn, rows[i].work, &sums);
        }
        printf("%6zu %5zu %10ld %5d %6d %8.4f%% %9.4f%% %8.1f %8.1f\n", rows[i].pieces,
               rows[i].sizes, (long)rows[i].work, sums.jobs, sums.proven,
               100 * sums.gap / sums.jobs, 100 * sums.worst_gap, 1e3 * sums.seconds / sums.jobs,
               1e3 * sums.slowest);
    }
    return 0;
}
