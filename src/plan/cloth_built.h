/*
 * The cloth plan twice: as it was planned, and with the boxes as they were built and the cloth as
 * wide as it was measured. Worked out when asked for.
 */
#ifndef PLAN_CLOTH_BUILT_H
#define PLAN_CLOTH_BUILT_H

#include "plan/plan.h"

/* A piece of cloth in both: of one that one of them has not, those sizes are 0. */
struct piece_built {
    const char *label;
    const char *name;
    int64_t layer, box, stock;
    int64_t planned_width, planned_height;
    int64_t width, height;
};

/* The piece of another plan of the build that is the piece at `index`: the nth of its name in its
 * layer. NULL where it has none. O(pieces). */
const struct piece *piece_mate(const struct plan *plan, size_t index, const struct plan *other);

/* A cloth in both: usable width, and what the shop sells for it. */
struct roll_built {
    int64_t stock;
    int64_t planned_usable, usable;
    int64_t planned_length, length;
    int64_t bought; /* of it, 0 while nothing is */
};

struct cloth_built {
    bool measured; /* some box or cloth was; nothing is listed else */
    LIST_OF(struct piece_built) pieces;
    LIST_OF(struct roll_built) rolls;
};

/*
 * Both plans held against each other, quick layouts against quick ones. The lists lie in `arena`,
 * which has no escape armed. FAULT_MEMORY is the only fault. Makes two plans; the pieces are found
 * by their names, O(pieces squared).
 */
enum fault cloth_built(const struct plan *plan, struct arena *arena, struct cloth_built *ret_built);

#endif
