/*
 * Sticks as the long search sees them: kinds of parts with a count, sizes with a room, all in
 * whole units of a grid; plans as fillings; and the layout of a plan.
 */
#ifndef CUT_BARS_TASK_H
#define CUT_BARS_TASK_H

#include "cut/layout.h"

struct bar_kind {
    int64_t length; /* with a kerf, in units of the grid */
    int64_t count;
    size_t first; /* of its parts, in `order` */
};

struct bar_size {
    int64_t room;  /* without the trim, with a kerf, in units, rounded down to whole ones */
    int64_t price; /* its length where no size has a price; 0 on the shelf */
    int64_t limit; /* CUT_ANY, or no more than there are parts */
    size_t size;   /* of the job */
};

/*
 * The unit is the greatest common divisor of the parts with their kerf: a room need not be a
 * multiple of it, since no filling ends between two multiples. That keeps the grid coarse where
 * inch stock is cut into millimetre parts.
 */
struct bar_task {
    const struct cut_job *job;
    struct arena *arena;
    size_t *order;          /* parts, longest first; those left out are not in it */
    struct bar_kind *kinds; /* falling in length */
    struct bar_size *sizes; /* that take any part at all, cheapest by room first */
    size_t part_count, kind_count, size_count;
    int64_t unit;
    int64_t longest; /* room */
    bool priced;
};

struct bar_take {
    size_t kind;
    int64_t count;
};

/* One way to fill a stick, and how often it is cut. */
struct bar_filling {
    size_t size;         /* of the task; of the job in bars.c */
    size_t first, count; /* in takes */
    int64_t times;
    int64_t taken; /* room */
};

struct bar_plan {
    LIST_OF(struct bar_filling) fillings;
    LIST_OF(struct bar_take) takes;
    int64_t cost, sticks, rest; /* rest: the largest, in units */
};

/* A task of the parts that the quick layout placed; false when there are none. The memory is the
 * arena's. */
bool bar_task_make(struct bar_task *task, const struct cut_job *job, const struct cut_layout *quick,
                   struct arena *arena);

/* Begins a filling that takes nothing yet, and which lies in the plan until the next one is begun.
 * bar_plan_take adds to the last filling begun. */
struct bar_filling *bar_plan_fill(const struct bar_task *task, struct bar_plan *plan, size_t size,
                                  int64_t times);
void bar_plan_take(const struct bar_task *task, struct bar_plan *plan, size_t kind, int64_t count);
void bar_plan_clear(struct bar_plan *plan);
void bar_plan_copy(const struct bar_task *task, struct bar_plan *to, const struct bar_plan *from);

/* The plan behind a layout of the job. */
void bar_plan_read(const struct bar_task *task, const struct cut_layout *layout,
                   struct bar_plan *ret_plan);

/*
 * Finishes a plan: takes no more parts than there are, moves each filling to the cheapest size that
 * holds it, drops those that are empty, and adds up cost, sticks and rest.
 */
void bar_plan_finish(const struct bar_task *task, struct bar_plan *plan);

/* Cheaper; of equals fewer sticks; of equals the larger rest. */
bool bar_plan_better(const struct bar_plan *a, const struct bar_plan *b);

/* What a stick is laid out from, and into. */
struct bar_laying {
    const struct cut_job *job;
    struct arena *arena;
    const size_t *order;          /* parts; those of one kind follow each other */
    const struct bar_kind *kinds; /* `first` counts here */
    size_t *next;                 /* by kind: parts laid out so far */
    struct cut_layout *layout;
};

/* Adds one stick of a size of the job with the next parts of the kinds that a filling takes. */
void bar_lay_stick(struct bar_laying *laying, const struct bar_filling *filling,
                   const struct bar_take *takes, size_t size);

/* The layout of a finished plan, with what the quick one left out. The bound is left at 0. */
void bar_plan_lay_out(const struct bar_task *task, const struct bar_plan *plan,
                      const struct cut_layout *quick, struct cut_layout *ret_layout);

#endif
