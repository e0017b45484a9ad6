/*
 * How much sooner sticks are cut here than by a general solver of whole-number programs (glpsol),
 * at the same cost: the median over priced jobs of up to 20 pieces, both timed in this run.
 */
#include "base/quantity.h"
#include "cut/search.h"
#include "dice.h"
#include "oracle.h"
#include "stopwatch.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#define JOBS 24
#define PIECES 20

static void draw(struct dice *dice, struct cut_piece *parts, struct cut_size *sizes)
{
    static const int64_t feet[] = {8, 10, 12};
    int64_t length = 0, alike = 0;

    for (size_t i = 0; i < 3; i++)
        sizes[i] = (struct cut_size){.length = feet[i] * 12 * LENGTH_INCH,
                                     .price = feet[i] * 45 + dice_between(dice, 0, 90),
                                     .limit = CUT_ANY};
    for (size_t i = 0; i < PIECES; i++) {
        if (alike-- == 0) {
            length = dice_between(dice, 8 * 12, 8 * 80) * LENGTH_INCH / 8;
            alike = dice_between(dice, 0, 4);
        }
        parts[i] = (struct cut_piece){.length = length};
    }
}

/* Seconds until the layout of this cost was there; below 0 where the costs differ. */
static double time_ours(const struct cut_job *job, int64_t cost)
{
    struct arena arena;
    jmp_buf escape;
    double seconds;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        exit(1);
    double begun = stopwatch_wall();
    struct cut_search *search = cut_begin(CUT_BARS, job, &arena);
    while (cut_best(search)->cost > cost && cut_step(search, 1000000))
        ;
    seconds = cut_best(search)->cost == cost ? stopwatch_wall() - begun : -1;
    arena_release(&arena);
    return seconds;
}

static int smaller_first(const void *a, const void *b)
{
    double left = *(const double *)a, right = *(const double *)b;

    return (left > right) - (left < right);
}

int main(void)
{
    const char *root = getenv("TMPDIR");
    char folder[256];
    double ratios[JOBS];
    int count = 0, missed = 0;
    struct dice dice = {77};

    if (!oracle_is_there())
        return 77;
    snprintf(folder, sizeof folder, "%s/stuffover-cut-XXXXXX", root && *root ? root : P_tmpdir);
    if (!mkdtemp(folder))
        return 1;
    for (int n = 0; n < JOBS; n++) {
        struct cut_piece parts[PIECES];
        struct cut_size sizes[3];
        struct cut_job job = {.parts = parts,
                              .part_count = PIECES,
                              .sizes = sizes,
                              .size_count = 3,
                              .kerf = LENGTH_INCH / 8};
        int64_t cost;
        double begun, theirs, ours;

        draw(&dice, parts, sizes);
        begun = stopwatch_wall();
        if (!oracle_cost(&job, folder, &cost))
            continue;
        theirs = stopwatch_wall() - begun;
        ours = time_ours(&job, cost);
        if (ours < 0)
            missed++;
        else
            ratios[count++] = theirs / ours;
    }
    rmdir(folder);
    qsort(ratios, (size_t)count, sizeof *ratios, smaller_first);
    printf("%d of %d jobs closed by glpsol; same cost %.0f times sooner (median), %.0f to %.0f; "
           "%d not reached\n",
           count + missed, JOBS, count ? ratios[count / 2] : 0, count ? ratios[0] : 0,
           count ? ratios[count - 1] : 0, missed);
    return 0;
}
