/*
 * The word that may have been meant.
 */
#ifndef EXCHANGE_NEAR_H
#define EXCHANGE_NEAR_H

#include <stddef.h>

/* Of `words` the one nearest to `typed`, the first of several: at most two letters (one, in a word
 * of up to four) wrong, missing, too many, or swapped with the next. NULL when there is none. */
const char *near_word(const char *typed, const char *const *words, size_t count);

#endif
