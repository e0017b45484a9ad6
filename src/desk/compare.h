/*
 * Builds side by side, figure by figure; and of one build what it would come to otherwise: ways to
 * take the cloth, one length of stick or one size of sheet alone.
 */
#ifndef DESK_COMPARE_H
#define DESK_COMPARE_H

#include "desk/desk.h"

/* ---- figures ---- */

enum figure_kind { FIGURE_MONEY, FIGURE_COUNT, FIGURE_ROLL, FIGURE_MINUTES, FIGURE_MASS };

struct figure {
    const char *key; /* in JSON */
    const char *words;
    enum figure_kind kind;
    int64_t (*of)(const struct plan *plan);
    bool (*known)(const struct plan *plan); /* whether it means something; NULL: always */
};

/* In the order in which they are shown; ends with an entry whose key is NULL. */
extern const struct figure plan_figures[];

/* Whether plans differ in a figure, or one of them does not know it. */
bool figure_differs(const struct figure *figure, const struct plan *const *plans, size_t count);

/* ---- builds ---- */

struct desk_compare;

/*
 * Plans the builds, in the order in which they are given, each as if it were made alone. Faults: as
 * desk_take_up. The plans are good until it is freed.
 */
enum fault desk_compare_begin(struct desk_compare **ret_compare, struct desk *desk,
                              const int64_t *builds, size_t count, struct fault_note *note);
void desk_compare_free(struct desk_compare *compare); /* NULL-safe */
size_t desk_compare_count(const struct desk_compare *compare);
const struct plan *const *desk_compare_plans(const struct desk_compare *compare);

/* ---- otherwise ---- */

struct otherwise {
    const char *text; /* "2x3 stud: 96 in alone" */
    int64_t cost, minutes;
    int64_t more_cost, more_minutes; /* than the plan with quick layouts */
    int64_t more_stops;
};

/*
 * What else the build could be made from, each a plan of its own with quick layouts; in `arena`,
 * which has no escape armed. Cloth as cloth_ways gives it, barred ways and the one in force left
 * out; of sticks and sheets that are bought in several sizes each size alone. FAULT_MEMORY is the
 * only fault. Makes a plan for each.
 */
enum fault desk_otherwise(const struct plan *plan, struct arena *arena,
                          const struct otherwise **ret_ways, size_t *ret_count);

/* ---- copies ---- */

/*
 * A copy of a build under another name, with all that was entered and nothing that was done or paid
 * at it; its state is the first there is. It is taken up, as one edit. Faults: UNKNOWN build,
 * DUPLICATE or MISSING name, those of store_save.
 */
enum fault desk_copy_build(struct desk *desk, int64_t build, const char *name,
                           struct fault_note *note);

#endif
