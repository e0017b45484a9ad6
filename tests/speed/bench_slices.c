/*
 * How long a search holds up a key: the quick layout that it begins with, and its longest slice
 * (CUT_SLICE of search.h, meant to be 20 ms). Figures, never verdicts.
 *
 * The jobs are drawn from a fixed seed, in eighths of an inch: sticks of three to six priced
 * lengths, panels of few kinds or of many out of whole and part sheets, cloth of 54 in.
 */
#include "cut/search.h"
#include "dice.h"

#include "base/quantity.h"
#include "stopwatch.h"

#include <setjmp.h>
#include <stdio.h>
#include <stdlib.h>

#define EIGHTH (LENGTH_INCH / 8)
#define MOST_PIECES 200
#define SLICES 100 /* of each job */

struct sort {
    const char *name;
    enum cut_way way;
    size_t pieces;
    int64_t alike; /* most of each kind */
    int64_t length[2], width[2];
    struct cut_size sizes[4];
    size_t size_count;
};

#define SHEETS                                                                                    \
    {                                                                                             \
        {768 * EIGHTH, 384 * EIGHTH, 5000, CUT_ANY}, {384 * EIGHTH, 384 * EIGHTH, 2800, CUT_ANY}, \
            {384 * EIGHTH, 192 * EIGHTH, 1700, CUT_ANY}, {0},                                     \
    }

static const struct sort sorts[] = {
    {"sticks",
     CUT_BARS,
     200,
     10,
     {48, 700},
     {0, 0},
     {{768 * EIGHTH, 0, 398, CUT_ANY},
      {960 * EIGHTH, 0, 560, CUT_ANY},
      {1152 * EIGHTH, 0, 725, CUT_ANY}},
     3},
    {"sheets of few kinds", CUT_SHEETS, 20, 7, {80, 480}, {40, 192}, SHEETS, 3},
    {"sheets of many kinds", CUT_SHEETS, 60, 3, {80, 480}, {40, 192}, SHEETS, 3},
    {"cloth", CUT_ROLLS, 30, 4, {64, 800}, {32, 430}, {{0, 432 * EIGHTH, 0, CUT_ANY}}, 1},
};

static void draw(const struct sort *sort, struct dice *dice, struct cut_piece *pieces)
{
    size_t count = 0;

    while (count < sort->pieces) {
        struct cut_piece piece = {
            .length = dice_between(dice, sort->length[0], sort->length[1]) * EIGHTH,
            .width = dice_between(dice, sort->width[0], sort->width[1]) * EIGHTH,
            .may_turn = sort->way == CUT_SHEETS && dice_between(dice, 0, 1)};

        for (int64_t n = dice_between(dice, 1, sort->alike); n > 0 && count < sort->pieces; n--)
            pieces[count++] = piece;
    }
}

static double longest_slice(struct cut_search *search)
{
    double longest = 0;
    bool more = true;

    for (int n = 0; n < SLICES && more; n++) {
        double begun = stopwatch_used_ms(), took;

        more = cut_step(search, CUT_SLICE);
        took = stopwatch_used_ms() - begun;
        longest = took > longest ? took : longest;
    }
    return longest;
}

/* The longest slice of one job; what the quick layout took goes to *quick. */
static double run(const struct cut_job *job, enum cut_way way, double *quick)
{
    struct cut_search *search;
    struct arena arena;
    jmp_buf escape;
    double begun, longest;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    begun = stopwatch_used_ms();
    search = cut_begin(way, job, &arena);
    *quick = stopwatch_used_ms() - begun;
    longest = longest_slice(search);
    arena_release(&arena);
    return longest;
}

int main(void)
{
    static struct cut_piece pieces[MOST_PIECES];
    const int jobs = 40;

    printf(
        "kind                  pieces  jobs  quick ms  slowest  longest slice ms, mean  worst\n");
    for (size_t i = 0; i < sizeof sorts / sizeof *sorts; i++) {
        const struct sort *sort = &sorts[i];
        struct dice dice = {70};
        double quick_sum = 0, quick_worst = 0, slice_sum = 0, slice_worst = 0;

        for (int n = 0; n < jobs; n++) {
            struct cut_job job = {.parts = pieces,
                                  .part_count = sort->pieces,
                                  .sizes = sort->sizes,
                                  .size_count = sort->size_count,
                                  .kerf = sort->way == CUT_ROLLS ? 0 : EIGHTH,
                                  .sale.step = sort->way == CUT_ROLLS ? 36 * EIGHTH : 0};
            double quick, slice;

            draw(sort, &dice, pieces);
            slice = run(&job, sort->way, &quick);
            quick_sum += quick;
            quick_worst = quick > quick_worst ? quick : quick_worst;
            slice_sum += slice;
            slice_worst = slice > slice_worst ? slice : slice_worst;
        }
        printf("%-21s %6zu %5d %9.2f %8.2f %23.1f %6.1f\n", sort->name, sort->pieces, jobs,
               quick_sum / jobs, quick_worst, slice_sum / jobs, slice_worst);
        fflush(stdout);
    }
    return 0;
}
