/*
 * Lengths that no layout of a roll can undercut.
 */
#ifndef CUT_ROLLBOUND_H
#define CUT_ROLLBOUND_H

#include "cut/rolljob.h"

/*
 * A lower bound of the length that the parts take, kerf included; exact in int64, 0 for no parts.
 * `pairs` limits how many pairs of functions are tried at a time, and how many queues, and so the
 * work, which is counted nowhere. The width is taken for the most that parts beside each other can
 * fill. The largest of
 *  - for the parts of one pattern what the next two give for parts as long and wide as they keep
 *    others away;
 *  - the length of parts no two of which have room beside each other, one after another, each at
 *    its place in the pattern;
 *  - what dual feasible functions of widths and lengths leave feasible (Fekete and Schepers, 2001;
 *    Carlier, Clautiaux and Moukrim, 2007), of which area is one;
 * raised, in a plain job, to the next sum of measures: pushed together, every layout ends at one.
 */
#define ROLL_PAIRS_FEW 40
#define ROLL_PAIRS_MANY 2000

int64_t roll_bound(const struct roll_job *job, size_t pairs, struct arena *arena);

#endif
