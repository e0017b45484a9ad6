/*
 * Small jobs of rolls by going through every place of every part: slow, short, and written with no
 * function of the floor that it is compared with.
 */
#ifndef BRUTE_ROLLS_H
#define BRUTE_ROLLS_H

#include "cut/layout.h"

#define BRUTE_ROLL_PARTS 4

/* The least length of the one roll of a job, without kerf and trim, that takes all parts; -1 where
 * none up to `most` does. Up to BRUTE_ROLL_PARTS parts. */
int64_t brute_length(const struct cut_job *job, int64_t most);

#define BRUTE_ROLL_LENGTH 30 /* no job by chance needs so long a roll */

/* One of a few units, so that every place can be tried: some with a pattern, some with a blemish,
 * which is kept in `blemish`, as the roll is. */
struct dice;
struct cut_job brute_job(struct dice *dice, struct cut_piece *parts, struct cut_size *roll,
                         struct cut_blemish *blemish);

#endif
