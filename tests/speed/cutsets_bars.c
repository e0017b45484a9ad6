/*
 * A published set of bin packing problems, cut as sticks of one size: bars used beside what is
 * known, one line an instance and the sums.
 *
 *     cutsets_bars [--work N] [--known TABLE [--prefix P]] FORMAT FILE ...
 *
 * FORMAT is `weights` (number of pieces, length of a stick, the pieces), `many` (number of
 * instances; of each its name, "length pieces best", the pieces) or `demands` (name in quotes,
 * number of kinds, length of a stick, piece and count of each; one after the other). TABLE has
 * lines of name, lower and upper bound between tabs; a name there begins with the prefix. The sets
 * are not in this tree.
 */
#include "cut/search.h"
#include "stopwatch.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MOST_PIECES 2000
#define MOST_KNOWN 4000

struct instance {
    char name[64];
    struct cut_piece pieces[MOST_PIECES];
    size_t count;
    int64_t length;
};

struct known {
    char name[64];
    long low, high;
};

static struct known known[MOST_KNOWN];
static size_t known_count;
static const char *prefix = "";
static int64_t work = 1000000000;

static struct {
    int instances, optimal, off_by_one, worse, proven, unknown;
    long bars, best;
    double seconds, slowest;
} sums;

static void read_known(const char *path)
{
    FILE *file = fopen(path, "r");
    char line[256];

    while (file && fgets(line, sizeof line, file) && known_count < MOST_KNOWN) {
        struct known *one = &known[known_count];

        if (sscanf(line, "%63s %ld %ld", one->name, &one->low, &one->high) == 3)
            known_count++;
    }
    if (file)
        fclose(file);
}

static const struct known *find_known(const char *name)
{
    char whole[128];

    snprintf(whole, sizeof whole, "%s%s", prefix, name);
    for (size_t i = 0; i < known_count; i++)
        if (strcmp(known[i].name, whole) == 0)
            return &known[i];
    return NULL;
}

static void count_result(const struct instance *instance, const struct cut_layout *layout,
                         double seconds)
{
    const struct known *one = find_known(instance->name);
    long bars = (long)layout->blanks.count;

    sums.instances++;
    sums.bars += bars;
    sums.proven += layout_proven(layout);
    sums.seconds += seconds;
    sums.slowest = seconds > sums.slowest ? seconds : sums.slowest;
    if (!one)
        sums.unknown++;
    else if (bars <= one->high)
        sums.optimal++;
    else if (bars == one->high + 1)
        sums.off_by_one++;
    else
        sums.worse++;
    sums.best += one ? one->high : bars;
    printf("%-16s %6ld bars, bound %6ld, known %6ld %s %8.1f ms\n", instance->name, bars,
           (long)layout->bound, one ? one->high : 0, layout_proven(layout) ? "proven" : "      ",
           seconds * 1e3);
}

static void solve(const struct instance *instance)
{
    const struct cut_size size = {.length = instance->length, .price = 1, .limit = CUT_ANY};
    const struct cut_job job = {
        .parts = instance->pieces, .part_count = instance->count, .sizes = &size, .size_count = 1};
    struct arena arena;
    jmp_buf escape;
    double begun = stopwatch_wall();

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape)) {
        fprintf(stderr, "out of memory\n");
        exit(1);
    }
    struct cut_search *search = cut_begin(CUT_BARS, &job, &arena);
    while (cut_done(search) < work && cut_step(search, work - cut_done(search)))
        ;
    double seconds = stopwatch_wall() - begun;
    if (layout_verify(CUT_BARS, &job, cut_best(search), &arena) != CUT_FLAW_NONE) {
        fprintf(stderr, "%s: the layout is not sound\n", instance->name);
        exit(1);
    }
    count_result(instance, cut_best(search), seconds);
    arena_release(&arena);
}

static void add_pieces(struct instance *instance, long length, long count)
{
    for (long i = 0; i < count && instance->count < MOST_PIECES; i++)
        instance->pieces[instance->count++] = (struct cut_piece){.length = length};
}

static void read_pieces(FILE *file, struct instance *instance, long count)
{
    long length;

    instance->count = 0;
    for (long i = 0; i < count && fscanf(file, "%ld", &length) == 1; i++)
        add_pieces(instance, length, 1);
}

static void name_after_file(struct instance *instance, const char *path)
{
    const char *base = strrchr(path, '/') ? strrchr(path, '/') + 1 : path;

    snprintf(instance->name, sizeof instance->name, "%.*s", (int)strcspn(base, "."), base);
}

static void read_weights(FILE *file, struct instance *instance)
{
    long count, length;

    if (fscanf(file, "%ld %ld", &count, &length) != 2)
        return;
    instance->length = length;
    read_pieces(file, instance, count);
    solve(instance);
}

static void read_many(FILE *file, struct instance *instance)
{
    long instances, count;
    double length;

    if (fscanf(file, "%ld", &instances) != 1)
        return;
    while (instances-- > 0 &&
           fscanf(file, "%63s %lf %ld %*d", instance->name, &length, &count) == 3) {
        instance->count = 0;
        instance->length = (int64_t)(length * 10 + 0.5);
        for (long i = 0; i < count; i++) {
            double piece;

            if (fscanf(file, "%lf", &piece) != 1)
                return;
            add_pieces(instance, (long)(piece * 10 + 0.5), 1);
        }
        solve(instance);
    }
}

/* 'BPP    14' becomes BPP14. */
static void squeeze(char *name)
{
    char *to = name;

    for (const char *from = name; *from; from++)
        if (*from > ' ' && *from != '\'')
            *to++ = *from;
    *to = 0;
}

static void read_demands(FILE *file, struct instance *instance)
{
    long kinds, length, piece, count;

    while (fscanf(file, " '%60[^'\n]'", instance->name) == 1 &&
           fscanf(file, "%ld %ld", &kinds, &length) == 2) {
        squeeze(instance->name);
        instance->count = 0;
        instance->length = length;
        for (long i = 0; i < kinds && fscanf(file, "%ld %ld", &piece, &count) == 2; i++)
            add_pieces(instance, piece, count);
        solve(instance);
    }
}

static int usage(void)
{
    fprintf(stderr, "usage: cutsets_bars [--work N] [--known TABLE [--prefix P]] "
                    "weights|many|demands FILE ...\n");
    return 2;
}

int main(int argc, char **argv)
{
    static struct instance instance;
    const char *format = NULL;
    int at = 1;

    for (; at + 1 < argc && strncmp(argv[at], "--", 2) == 0; at += 2) {
        if (strcmp(argv[at], "--work") == 0)
            work = atoll(argv[at + 1]);
        else if (strcmp(argv[at], "--known") == 0)
            read_known(argv[at + 1]);
        else if (strcmp(argv[at], "--prefix") == 0)
            prefix = argv[at + 1];
        else
            return usage();
    }
    if (at + 1 >= argc)
        return usage();
    format = argv[at++];
    for (; at < argc; at++) {
        FILE *file = fopen(argv[at], "r");

        if (!file)
            return usage();
        name_after_file(&instance, argv[at]);
        if (strcmp(format, "many") == 0)
            read_many(file, &instance);
        else if (strcmp(format, "demands") == 0)
            read_demands(file, &instance);
        else
            read_weights(file, &instance);
        fclose(file);
    }
    printf("%d instances: %d at the best known, %d one more, %d worse, %d unknown; %d proven; "
           "%ld bars, best known %ld; %.1f ms each, slowest %.0f\n",
           sums.instances, sums.optimal, sums.off_by_one, sums.worse, sums.unknown, sums.proven,
           sums.bars, sums.best, sums.instances ? 1e3 * sums.seconds / sums.instances : 0,
           1e3 * sums.slowest);
    return 0;
}
