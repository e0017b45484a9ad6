/*
 * Small jobs of sheets by going through everything: slow, short, and written with no function of
 * the floor that it is compared with.
 */
#ifndef BRUTE_H
#define BRUTE_H

#include "cut/layout.h"

#define BRUTE_PARTS 5

/* The least cost of sheets that take all parts of a job without trim by cuts from edge to edge, or
 * INT64_MAX where none do. Up to BRUTE_PARTS parts. */
int64_t brute_cost(const struct cut_job *job);

/* The fewest cuts that free all parts from sheets that cost so much at least, for a job with one
 * size of sheet of which any number can be had. Up to 4 parts. */
int brute_cuts(const struct cut_job *job);

#endif
