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

#endif
