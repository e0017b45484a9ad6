/*
 * Runs published sets of sheets and prints what the search reaches, with parts that may be turned
 * and without. Figures, never a verdict.
 *
 *     cutsets_sheets [--work N] [--every N] [--from N] classes BEST_NONE BEST_TURN FILE...
 *     cutsets_sheets [--work N] [--every N] several FILE...
 *
 * classes: files of instances with one size of sheet (Berkey and Wang 1987; Martello and Vigo
 * 1998): "class, items, number, height and width of a sheet, height and width of each item", and
 * two tables of the best known numbers of sheets, without turning and with it, lines of
 * "set/FILE_items_number,sheets". several: sizes with numbers, then items (Hopper and Turton 2002);
 * the price of a sheet is its area, and what is printed is how much of it is used.
 * N of --work is in units of search.h; --every takes each Nth instance.
 */
#include "cut/search.h"
#include "stopwatch.h"

#include <setjmp.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PARTS_MOST 1000
#define SIZES_MOST 20
#define TABLE_MOST 1000

struct instance {
    struct cut_piece parts[PARTS_MOST];
    struct cut_size sizes[SIZES_MOST];
    struct cut_job job;
};

struct known {
    char name[80];
    long sheets;
};

struct options {
    int64_t work;
    long every, from;
};

struct tally {
    long runs, sheets, known, equal, proven, flawed, bound;
    double used, ms, quick;
};

static void fail(const char *what)
{
    fprintf(stderr, "cannot read %s\n", what);
    exit(1);
}

/* ---- one run ---- */

static void set_turning(struct instance *instance, bool may_turn)
{
    for (size_t i = 0; i < instance->job.part_count; i++)
        instance->parts[i].may_turn = may_turn;
}

static double use_of(const struct instance *instance, const struct cut_layout *layout)
{
    double parts = 0, sheets = 0;

    for (size_t i = 0; i < layout->places.count; i++) {
        const struct cut_piece *part = &instance->parts[layout->places.at[i].part];
        parts += (double)part->length * (double)part->width;
    }
    for (size_t i = 0; i < layout->blanks.count; i++) {
        const struct cut_size *size = &instance->sizes[layout->blanks.at[i].size];
        sheets += (double)size->length * (double)size->width;
    }
    return parts / sheets;
}

static void add_run(struct tally *tally, const struct instance *instance,
                    const struct cut_layout *layout, long known)
{
    long sheets = (long)layout->blanks.count;

    tally->runs++;
    tally->sheets += sheets;
    tally->known += known;
    tally->equal += sheets <= known;
    tally->proven += layout_proven(layout);
    tally->bound += (long)layout->bound;
    tally->used += use_of(instance, layout);
}

static void run(struct instance *instance, bool may_turn, int64_t work, long known,
                struct tally *tally)
{
    struct cut_search *search;
    struct arena arena;
    jmp_buf escape;
    double begin = stopwatch_used_ms();

    set_turning(instance, may_turn);
    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        fail("this job: memory is out");
    search = cut_begin(CUT_SHEETS, &instance->job, &arena);
    tally->quick += stopwatch_used_ms() - begin;
    while (cut_done(search) < work && !layout_proven(cut_best(search)) &&
           cut_step(search, CUT_SLICE))
        ;
    tally->ms += stopwatch_used_ms() - begin;
    tally->flawed += layout_verify(CUT_SHEETS, &instance->job, cut_best(search), &arena) != 0;
    add_run(tally, instance, cut_best(search), known);
    arena_release(&arena);
}

static void print_tally(const char *what, bool may_turn, const struct tally *tally)
{
    double runs = tally->runs > 0 ? (double)tally->runs : 1;

    printf("%-16s %-7s %4ld runs  %5ld sheets  known %5ld  as good %4ld  bound %5ld  proven %4ld"
           "  use %6.2f %%  %8.1f ms (quick %5.2f)  flawed %ld\n",
           what, may_turn ? "turned" : "straight", tally->runs, tally->sheets, tally->known,
           tally->equal, tally->bound, tally->proven, 100 * tally->used / runs, tally->ms / runs,
           tally->quick / runs, tally->flawed);
    fflush(stdout);
}

/* ---- classes ---- */

static size_t read_known(const char *name, struct known *table)
{
    FILE *file = fopen(name, "r");
    char line[256];
    size_t count = 0;

    if (!file)
        fail(name);
    while (fgets(line, sizeof line, file) && count < TABLE_MOST) {
        const char *slash = strchr(line, '/'), *comma = strchr(line, ',');
        if (!slash || !comma || comma < slash)
            continue;
        snprintf(table[count].name, sizeof table->name, "%.*s", (int)(comma - slash - 1),
                 slash + 1);
        table[count++].sheets = strtol(comma + 1, NULL, 10);
    }
    fclose(file);
    return count;
}

static long look_up(const struct known *table, size_t count, const char *name)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(table[i].name, name) == 0)
            return table[i].sheets;
    return 0;
}

/* The number at the head of the next line. */
static bool read_pair(FILE *file, long *ret_first, long *ret_second)
{
    char line[256], *end;

    do {
        if (!fgets(line, sizeof line, file))
            return false;
        *ret_first = strtol(line, &end, 10);
    } while (end == line);
    *ret_second = strtol(end, NULL, 10);
    return true;
}

static bool read_class(FILE *file, struct instance *instance, long *ret_number)
{
    long first, second, items;

    if (!read_pair(file, &first, &second) || !read_pair(file, &items, &second) ||
        !read_pair(file, ret_number, &second) || !read_pair(file, &first, &second) ||
        items > PARTS_MOST)
        return false;
    instance->sizes[0] = (struct cut_size){first, second, 1, CUT_ANY};
    for (long i = 0; i < items; i++) {
        if (!read_pair(file, &first, &second))
            return false;
        instance->parts[i] = (struct cut_piece){.length = first, .width = second};
    }
    instance->job = (struct cut_job){.parts = instance->parts,
                                     .part_count = (size_t)items,
                                     .sizes = instance->sizes,
                                     .size_count = 1};
    return true;
}

static void run_class(const char *name, const struct options *options, struct known *const known[2],
                      const size_t known_count[2], struct tally totals[4])
{
    static struct instance instance;
    const char *slash = strrchr(name, '/'), *last = slash ? slash + 1 : name;
    struct tally tallies[2] = {{0}, {0}};
    FILE *file = fopen(name, "r");
    char key[160];

    if (!file)
        fail(name);
    for (long number, index = 0; read_class(file, &instance, &number); index++) {
        if (index % options->every != options->from % options->every)
            continue;
        snprintf(key, sizeof key, "%s_%zu_%ld", last, instance.job.part_count, number);
        for (int turn = 0; turn < 2; turn++) {
            long best = look_up(known[turn], known_count[turn], key);
            run(&instance, turn, options->work, best, &tallies[turn]);
            run(&instance, turn, 0, best, &totals[turn + 2]);
        }
    }
    fclose(file);
    for (int turn = 0; turn < 2; turn++) {
        print_tally(last, turn, &tallies[turn]);
        totals[turn].runs += tallies[turn].runs;
        totals[turn].sheets += tallies[turn].sheets;
        totals[turn].known += tallies[turn].known;
        totals[turn].equal += tallies[turn].equal;
        totals[turn].bound += tallies[turn].bound;
        totals[turn].proven += tallies[turn].proven;
        totals[turn].used += tallies[turn].used;
        totals[turn].ms += tallies[turn].ms;
        totals[turn].quick += tallies[turn].quick;
        totals[turn].flawed += tallies[turn].flawed;
    }
}

static void run_classes(const struct options *options, char **names, int count)
{
    static struct known tables[2][TABLE_MOST];
    struct known *const known[2] = {tables[0], tables[1]};
    struct tally totals[4] = {{0}, {0}, {0}, {0}};
    size_t known_count[2];

    if (count < 3)
        fail("less than two tables and a file");
    for (int turn = 0; turn < 2; turn++)
        known_count[turn] = read_known(names[turn], tables[turn]);
    for (int i = 2; i < count; i++)
        run_class(names[i], options, known, known_count, totals);
    for (int turn = 0; turn < 2; turn++) {
        print_tally("all", turn, &totals[turn]);
        print_tally("all, quick", turn, &totals[turn + 2]);
    }
}

/* ---- several sizes ---- */

static bool read_several(FILE *file, struct instance *instance)
{
    long sizes, items, length, width, limit;

    if (fscanf(file, "%ld", &sizes) != 1 || sizes > SIZES_MOST)
        return false;
    for (long i = 0; i < sizes; i++) {
        if (fscanf(file, "%ld %ld %ld", &length, &width, &limit) != 3)
            return false;
        instance->sizes[i] = (struct cut_size){length, width, length * width, limit};
    }
    if (fscanf(file, "%ld", &items) != 1 || items > PARTS_MOST)
        return false;
    for (long i = 0; i < items; i++) {
        if (fscanf(file, "%ld %ld", &length, &width) != 2)
            return false;
        instance->parts[i] = (struct cut_piece){.length = length, .width = width};
    }
    instance->job = (struct cut_job){.parts = instance->parts,
                                     .part_count = (size_t)items,
                                     .sizes = instance->sizes,
                                     .size_count = (size_t)sizes};
    return true;
}

static void run_several(const struct options *options, char **names, int count)
{
    static struct instance instance;

    for (int i = 0; i < count; i++) {
        const char *slash = strrchr(names[i], '/'), *last = slash ? slash + 1 : names[i];
        FILE *file = fopen(names[i], "r");

        if (i % options->every != options->from % options->every)
            continue;
        if (!file || !read_several(file, &instance))
            fail(names[i]);
        fclose(file);
        for (int turn = 0; turn < 2; turn++) {
            struct tally tally = {0}, quick = {0};
            run(&instance, turn, 0, 0, &quick);
            run(&instance, turn, options->work, 0, &tally);
            print_tally("quick", turn, &quick);
            print_tally(last, turn, &tally);
        }
    }
}

int main(int argc, char **argv)
{
    struct options options = {.work = 1000000000, .every = 1, .from = 0};
    int at = 1;

    for (; at + 1 < argc && strncmp(argv[at], "--", 2) == 0; at += 2) {
        long value = strtol(argv[at + 1], NULL, 10);
        if (strcmp(argv[at], "--work") == 0)
            options.work = value;
        else if (strcmp(argv[at], "--from") == 0)
            options.from = value;
        else if (strcmp(argv[at], "--every") == 0 && value > 0)
            options.every = value;
        else
            fail(argv[at]);
    }
    if (at < argc && strcmp(argv[at], "classes") == 0)
        run_classes(&options, argv + at + 1, argc - at - 1);
    else if (at < argc && strcmp(argv[at], "several") == 0)
        run_several(&options, argv + at + 1, argc - at - 1);
    else
        fail("what to run: classes or several");
    return 0;
}
