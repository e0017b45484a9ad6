/*
 * Measures that were taken, and what they change.
 *
 * A measure of stock (thickness of a sheet, section of a stick, usable width of cloth) stands in
 * for what the workshop says of that stock, in this build: everything is worked out with it. A
 * measure of a box says how the box came out; wood that is planned stays as it is, and what is laid
 * on it is cut to the measure. Of several measures of one thing the last counts.
 *
 * A measure that is over a quarter off is no measure of that thing: it changes nothing, and a
 * finding says so.
 */
#ifndef PLAN_TAKEN_H
#define PLAN_TAKEN_H

#include "plan/pass.h"

/* The facts with measures of stock put in: `facts` itself where there are none, else a copy in the
 * arena that shares every list but stocks. */
const struct model *facts_as_measured(const struct model *facts, struct arena *arena);

/* The model with boxes as they were measured; the same otherwise. */
const struct model *model_as_built(const struct planning *planning);

/* A finding for each measure of a box that is off by more than a shim, and for each that cannot
 * be one. `facts` as they were entered. */
void tell_measures(struct planning *planning);

/* One thing that a step asks to be measured. */
struct ask {
    const char *name;   /* "width"; of stock with its name: "3/4 plywood thickness" */
    const char *what;   /* "width", "thickness": as kept with the measure */
    int64_t box, stock; /* of which; the other is 0 */
    int64_t planned;    /* 0 where the plan has no figure */
    int64_t taken;      /* 0 while it is not */
};

/*
 * What a step asks for, in the arena; none for a step that takes no measures. In the order of the
 * keys. O(parts + measures).
 */
const struct ask *plan_asks(const struct plan *plan, const struct step *step, struct arena *arena,
                            size_t *ret_count);

/* The same for those who have no escape armed: NULL and none where memory ran out. */
const struct ask *plan_asks_of(const struct plan *plan, const struct step *step,
                               struct arena *arena, size_t *ret_count);

/* Which of them is meant by a name, in letters of either case: all of it, or as much of what is
 * measured ("width") or of what it is measured on ("3/4 plywood") as only one bears. NULL for
 * none or several. */
const struct ask *ask_named(const struct ask *asks, size_t count, const char *name);

#endif
