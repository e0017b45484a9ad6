/*
 * What the tests of this floor share: jobs in 64ths of an inch, a saw that cuts and checks, jobs by
 * chance.
 */
#ifndef SAW_H
#define SAW_H

#include "../base/inch.h"
#include "base/quantity.h"
#include "cut/search.h"

#define ANY CUT_ANY

#define MOST_PARTS 200

/* A list of parts that grows by hand. */
struct parts {
    struct cut_piece at[MOST_PARTS];
    size_t count;
};

/* What of a roll's job is not parts and sizes, by chance: pattern, blemishes, steps of sale, groups
 * of parts. The blemishes are kept in `blemishes`. */
struct dice;
void roll_by_chance(struct dice *dice, struct parts *parts, struct cut_blemish *blemishes,
                    struct cut_job *job);

void parts_add(struct parts *parts, size_t count, int64_t length, int64_t width, bool may_turn);

/* What a group of tests lays out in; cmocka's setup and teardown of the group. */
extern struct arena saw_arena;
int saw_arena_open(void **state);
int saw_arena_close(void **state);

/* Cuts and fails the test with the flaw's words when the layout is not sound. */
struct cut_layout saw(enum cut_way way, const struct cut_job *job, struct arena *arena);

/* The same with a search that goes on, in slices, until it ends or `work` is done. */
struct cut_layout saw_on(enum cut_way way, const struct cut_job *job, int64_t work, int64_t slice,
                         struct arena *arena);

/* Every part in its place in both. */
void assert_same_places(const struct cut_layout *one, const struct cut_layout *other);

/* How many blanks of a size a layout uses. */
size_t blanks_of(const struct cut_layout *layout, size_t size);

/* Cuts 2,000 jobs by chance (500 under the sanitizers, 20,000 with STUFFOVER_LONG), drawn from
 * `seed`, each as saw() does. */
void chance_is_cut_soundly(enum cut_way way, uint64_t seed);

/* Cuts 100 jobs by chance twice: fails where a place differs. */
void twice_is_the_same(enum cut_way way, uint64_t seed);

/* One of these jobs: up to 36 parts of up to 6 kinds out of up to MOST_SIZES sizes. Blemishes stay
 * in place until the next job. */
#define MOST_SIZES 5
#define MOST_BLEMISHES 3
struct cut_job job_by_chance(enum cut_way way, struct dice *dice, struct parts *parts,
                             struct cut_size *sizes);

/* The flaw of a layout, with scratch of its own. */
enum cut_flaw flaw_of(enum cut_way way, const struct cut_job *job, const struct cut_layout *layout);

#endif
