/*
 * Runs published sets of strips (rolls) and prints what the search reaches beside the least length
 * that is known. Figures, never a verdict.
 *
 *     cutsets_rolls [--work N] [--seed N] beng FILE...
 *     cutsets_rolls [--work N] [--seed N] hopper FILE...
 *
 * beng: "items, width and a number, index width height of each item" (Bengtsson 1982); what is
 * known is the area over the width, which is the optimum of all ten. hopper: "items, width and
 * height of the strip, width and height of each item" (Hopper and Turton 2001; Burke, Kendall and
 * Whitwell 2004): the height is the optimum. Nothing is turned. N of --work is in units of
 * search.h; with a seed above 0 the parts come in another order.
 */
#include "base/quantity.h"
#include "cut/search.h"
#include "stopwatch.h"

#include <setjmp.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PARTS_MOST 4000

struct instance {
    struct cut_piece parts[PARTS_MOST];
    struct cut_size roll;
    struct cut_job job;
    int64_t known;
};

struct tally {
    int runs, equal, proven, flawed;
    double over, quick_over, ms, quick_ms;
};

static _Noreturn void fail(const char *what)
{
    fprintf(stderr, "cannot read %s\n", what);
    exit(1);
}

/* ---- reading ---- */

static void read_parts(FILE *file, bool indexed, const char *name, struct instance *instance)
{
    long index, width, height;
    int64_t area = 0;

    for (size_t i = 0; i < instance->job.part_count; i++) {
        if ((indexed && fscanf(file, "%ld", &index) != 1) ||
            fscanf(file, "%ld %ld", &width, &height) != 2)
            fail(name);
        instance->parts[i] = (struct cut_piece){.length = height, .width = width};
        area += width * height;
    }
    if (indexed)
        instance->known = whole_divide_up(area, instance->roll.width);
}

static void read_instance(const char *name, bool indexed, struct instance *instance)
{
    FILE *file = fopen(name, "r");
    long count, width, height;

    if (!file || fscanf(file, "%ld %ld %ld", &count, &width, &height) != 3 || count > PARTS_MOST)
        fail(name);
    instance->roll = (struct cut_size){0, width, 0, CUT_ANY};
    instance->known = height;
    instance->job = (struct cut_job){.parts = instance->parts,
                                     .part_count = (size_t)count,
                                     .sizes = &instance->roll,
                                     .size_count = 1};
    read_parts(file, indexed, name, instance);
    fclose(file);
}

static void shuffle(struct instance *instance, uint64_t seed)
{
    for (size_t i = instance->job.part_count; seed > 0 && i > 1; i--) {
        struct cut_piece kept = instance->parts[i - 1];

        seed ^= seed << 13;
        seed ^= seed >> 7;
        seed ^= seed << 17;
        instance->parts[i - 1] = instance->parts[seed % i];
        instance->parts[seed % i] = kept;
    }
}

/* ---- running ---- */

static double over(int64_t length, int64_t known)
{
    return 100 * (double)(length - known) / (double)known;
}

static void run(const char *name, struct instance *instance, int64_t work, struct tally *tally)
{
    const char *slash = strrchr(name, '/');
    struct cut_search *search;
    struct arena arena;
    jmp_buf escape;
    double begin = stopwatch_used_ms(), quick, whole;
    int64_t first, last;
    bool sound;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        fail("this job: memory is out");
    search = cut_begin(CUT_ROLLS, &instance->job, &arena);
    quick = stopwatch_used_ms() - begin;
    first = cut_best(search)->cost;
    while (cut_done(search) < work && cut_step(search, CUT_SLICE))
        ;
    whole = stopwatch_used_ms() - begin;
    last = cut_best(search)->cost;
    sound = layout_verify(CUT_ROLLS, &instance->job, cut_best(search), &arena) == CUT_FLAW_NONE;
    printf("%-10s %4zu parts  known %4lld  quick %4lld  reached %4lld  bound %4lld  over %5.2f %%"
           "  %7.1f ms\n",
           slash ? slash + 1 : name, instance->job.part_count, (long long)instance->known,
           (long long)first, (long long)last, (long long)cut_best(search)->bound,
           over(last, instance->known), whole);
    fflush(stdout);
    tally->runs++;
    tally->equal += last == instance->known;
    tally->proven += layout_proven(cut_best(search));
    tally->flawed += !sound;
    tally->over += over(last, instance->known);
    tally->quick_over += over(first, instance->known);
    tally->ms += whole;
    tally->quick_ms += quick;
    arena_release(&arena);
}

int main(int argc, char **argv)
{
    static struct instance instance;
    struct tally tally = {0};
    long work = 1000000000, seed = 0;
    bool indexed;
    int at = 1;

    for (; at + 1 < argc && strncmp(argv[at], "--", 2) == 0; at += 2) {
        long value = strtol(argv[at + 1], NULL, 10);

        if (strcmp(argv[at], "--work") == 0)
            work = value;
        else if (strcmp(argv[at], "--seed") == 0)
            seed = value;
        else
            fail(argv[at]);
    }
    if (at >= argc || (strcmp(argv[at], "beng") != 0 && strcmp(argv[at], "hopper") != 0))
        fail("what to run: beng or hopper");
    indexed = strcmp(argv[at], "beng") == 0;
    for (at++; at < argc; at++) {
        read_instance(argv[at], indexed, &instance);
        shuffle(&instance, (uint64_t)seed);
        run(argv[at], &instance, work, &tally);
    }
    if (tally.runs == 0)
        return 0;
    printf("all %d: optimal %d, proven %d, flawed %d; over the optimum %.3f %% (quick %.3f %%); "
           "%.1f ms (quick %.2f)\n",
           tally.runs, tally.equal, tally.proven, tally.flawed, tally.over / tally.runs,
           tally.quick_over / tally.runs, tally.ms / tally.runs, tally.quick_ms / tally.runs);
    return 0;
}
