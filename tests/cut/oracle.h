/*
 * Another opinion on sticks: the job as a whole-number program over all fillings, solved by the
 * program glpsol (GNU Linear Programming Kit), which is run and not linked.
 */
#ifndef ORACLE_H
#define ORACLE_H

#include "cut/layout.h"

/* Whether the program can be run here. */
bool oracle_is_there(void);

/*
 * The least cost of a job of bars whose parts all fit. `folder` takes its files. False when the
 * program did not finish within 10 s, or there are too many fillings to write down.
 */
bool oracle_cost(const struct cut_job *job, const char *folder, int64_t *ret_cost);

#endif
