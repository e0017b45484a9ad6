/*
 * Lengths that no layout of a roll can undercut, by what lies beside each other; and the values of
 * parts that show it.
 */
#ifndef CUT_ROLLROWS_H
#define CUT_ROLLROWS_H

#include "cut/dual.h"
#include "cut/rolljob.h"
#include "cut/rollslices.h"

/* Parts that are alike in all that matters. */
struct roll_kind {
    const struct roll_part *part; /* one of them */
    int64_t count;
};

bool roll_parts_alike(const struct roll_part *a, const struct roll_part *b);

#define ROWS_ALL INT64_C(-1)

/*
 * A roll with one group of matched parts whose origin across is settled; all others may lie
 * anywhere. `line` is a spot of the repeat along, from the group's origin: what lies on that line
 * of the cloth is looked at once a repeat; or ROWS_ALL, and each spot counts.
 */
struct roll_rows {
    const struct roll_job *job;
    struct arena *arena;
    struct roll_kind *kinds; /* the largest first */
    size_t kind_count;
    size_t group;   /* ROLL_NO_GROUP: none */
    int64_t origin; /* of it across */
    int64_t line;
    int64_t down;            /* slices run down a roll of this length; 0: across it */
    const struct dual *dual; /* by which slices are counted; NULL: as they are */
    int64_t dual_all;        /* and for how many of them it is */
    const double *wanted;    /* by kind: see slices_solve; NULL: all parts */
    struct slices slices;    /* of the line */
    int64_t work;            /* done so far, in units of search.h */
};

struct roll_rows roll_rows_begin(const struct roll_job *job, struct arena *arena);

/*
 * The origins across at which a group has to be looked at: from one to the next, round the repeat,
 * parts have the same places, moved. One without a group, or without a repeat across. Their number,
 * at most twice that of kinds and 1.
 */
size_t roll_rows_origins(const struct roll_rows *rows, int64_t *ret_origins);

/* A lower bound of the length, kerf included, for the group and origin that are set; stops at one
 * that is not below `most`. 0 where nothing is shown. */
int64_t roll_rows_least(struct roll_rows *rows, int64_t most);

/* Whether slices, counted by dual feasible functions, or looked at from both sides, or in a plain
 * job down the roll, show that no layout is as short as `length`, kerf included, for the group and
 * origin that are set. */
bool roll_rows_refute(struct roll_rows *rows, int64_t length);

/* The least sum of slices of the line that is set; `slices` then holds the values that show it. */
int64_t roll_rows_slices(struct roll_rows *rows);

/* Lines worth looking at: where parts of the group end. Their number, at most twice that of kinds.
 */
size_t roll_rows_lines(const struct roll_rows *rows, int64_t *ret_lines);

/* The way of the slices in which a part of a kind lies like this, with its value and its share;
 * NULL where the kind is left aside. In a half-drop an odd repeat across from the origin is
 * `dropped`. */
const struct slice_way *roll_rows_way(const struct roll_rows *rows, size_t kind, bool turned,
                                      bool dropped);

/* The least that one part of a kind is worth in all its slices; 0 where it is left aside. */
int64_t roll_rows_worth(const struct roll_rows *rows, size_t kind);

/*
 * A lower bound of the length that the parts take, kerf included: the best over all groups, of each
 * the worst over its origins. 0 where nothing is shown. Adds the work it took.
 */
int64_t roll_rows_bound(const struct roll_job *job, struct arena *arena, int64_t *work);

#endif
