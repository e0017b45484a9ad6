/*
 * What is told of a join that no order lets be driven.
 */
#include "plan/access_time.h"

#include "plan/findings.h"

#include <assert.h>

void access_tell_trapped(const struct timeline *timeline, const struct peel *peel,
                         const struct task *task)
{
    assert(!peel || peel->problem.node_count == timeline->acts.count);
    finding_add(timeline->planning, FINDING_JOIN_TRAPPED, ENTITY_join, task->join->key);
}
