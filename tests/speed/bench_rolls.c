/*
 * How near the bound cloth is laid on jobs like a maker's: figures, never verdicts.
 *
 *     bench_rolls [--work N] [--jobs N] [--seed N] [--each]
 *
 * The jobs are drawn from fixed seeds, others with --seed, on which nothing was tuned: 6 to 30
 * pieces as covers have them (panels, sides in pairs or fours, strips of boxing and small ends),
 * odd jobs in quarters of an inch on a roll of 54 in that is sold by quarter yards, even ones in
 * whole millimetres on one of 1400 mm that is sold by tenths of a metre; 5 % is added. Where there
 * is a pattern, strips need not match.
 */
#include "cut/search.h"
#include "dice.h"

#include "base/quantity.h"
#include "stopwatch.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MOST_PIECES 30

enum pattern { PLAIN, RAILROAD, ALONG, ACROSS, BOTH, DROP, PATTERNS };

static const char *const names[PATTERNS] = {"plain",         "may be turned", "repeat along",
                                            "repeat across", "both repeats",  "half-drop"};

struct drawn {
    struct cut_piece pieces[MOST_PIECES];
    struct cut_size roll;
    struct cut_job job;
};

/* A sort of piece: how often it is drawn, how many alike, sizes in inches. */
struct sort {
    int64_t share, alike;
    int64_t length[2], width[2];
    bool strip;
};

static const struct sort sorts[] = {
    {20, 2, {36, 100}, {24, 54}, false}, /* backs and seats */
    {40, 4, {16, 62}, {12, 34}, false},  /* sides, aprons, cushions */
    {25, 4, {30, 72}, {4, 9}, true},     /* boxing and facings */
    {15, 4, {8, 24}, {5, 16}, false},    /* ends and caps */
};

struct sums {
    int jobs, proven, flawed;
    double gap, worst, steps, seconds, slowest;
};

/* ---- jobs ---- */

static const struct sort *draw_sort(struct dice *dice)
{
    int64_t share = dice_between(dice, 0, 99);
    const struct sort *sort = sorts;

    while (share >= sort->share)
        share -= sort++->share;
    return sort;
}

static int64_t draw_size(struct dice *dice, const int64_t *range, bool metric)
{
    if (metric)
        return dice_between(dice, range[0] * 254 / 10, range[1] * 254 / 10) * LENGTH_MM;
    return dice_between(dice, range[0] * 4, range[1] * 4) * (LENGTH_INCH / 4);
}

static void draw_pieces(struct drawn *drawn, struct dice *dice, enum pattern pattern, bool metric)
{
    size_t wanted = (size_t)dice_between(dice, 6, MOST_PIECES);
    size_t count = 0;

    while (count < wanted) {
        const struct sort *sort = draw_sort(dice);
        struct cut_piece piece = {.length = draw_size(dice, sort->length, metric),
                                  .width = draw_size(dice, sort->width, metric)};

        piece.may_turn = pattern == RAILROAD || (sort->strip && pattern != PLAIN);
        if (pattern > RAILROAD && !sort->strip) {
            piece.group = 1;
            piece.centred_across = true;
        }
        for (int64_t n = dice_between(dice, 1, sort->alike); n > 0 && count < wanted; n--)
            drawn->pieces[count++] = piece;
    }
    drawn->job.part_count = count;
}

static void draw_job(struct drawn *drawn, struct dice *dice, enum pattern pattern, bool metric)
{
    static const int64_t inches[] = {9, 13, 18, 25, 27};
    int64_t unit = metric ? 25 * LENGTH_MM : LENGTH_INCH;

    *drawn = (struct drawn){.roll = {0, metric ? 1400 * LENGTH_MM : 54 * LENGTH_INCH, 0, CUT_ANY}};
    drawn->job = (struct cut_job){.parts = drawn->pieces, .sizes = &drawn->roll, .size_count = 1};
    drawn->job.sale =
        (struct cut_sale){.reserve = 50000, .step = metric ? 100 * LENGTH_MM : 9 * LENGTH_INCH};
    draw_pieces(drawn, dice, pattern, metric);
    if (pattern == ALONG || pattern >= BOTH)
        drawn->job.pattern.along = inches[dice_between(dice, 0, 4)] * unit;
    if (pattern == ACROSS || pattern >= BOTH)
        drawn->job.pattern.across = drawn->roll.width / dice_between(dice, 2, 4);
    drawn->job.pattern.half_drop = pattern == DROP;
    drawn->job.sale.ahead = drawn->job.pattern.along;
}

/* ---- running ---- */

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
    for (int pattern = 0; pattern < PATTERNS; pattern++) {
        struct dice dice = {(uint64_t)(40 + pattern + 1000 * seed)};
        struct sums sums = {0};

        if (only >= 0 && only != pattern)
            continue;
        for (int n = 0; n < jobs; n++) {
            draw_job(&drawn, &dice, (enum pattern)pattern, n % 2 != 0);
            solve(&drawn, work, each, &sums);
        }
        printf("%-14s %4d %6d %8.2f%% %9.2f%% %11.2f %8.1f %8.1f %7d\n", names[pattern], sums.jobs,
               sums.proven, 100 * sums.gap / sums.jobs, 100 * sums.worst, sums.steps / sums.jobs,
               1e3 * sums.seconds / sums.jobs, 1e3 * sums.slowest, sums.flawed);
        fflush(stdout);
    }
    return 0;
}
