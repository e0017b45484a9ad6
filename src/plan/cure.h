/*
 * Cures of findings: taking one into a model.
 */
#ifndef PLAN_CURE_H
#define PLAN_CURE_H

#include "plan/plan.h"

/*
 * Reads every line of a cure into the model, whose arena has an escape. UNKNOWN for an item or a
 * field that is not there, and the faults of field_read, at the field's name; the model is then to
 * be thrown away, for lines before that one are taken.
 */
enum fault cure_apply(struct model *model, const struct cure *cure, struct fault_note *note);

#endif
