/*
 * Which screw: the one choice for frames, panels, joins and fittings, and the list of kinds that
 * the plan counts.
 */
#ifndef PLAN_SCREWS_H
#define PLAN_SCREWS_H

#include "plan/pass.h"

/* What a screw has to do. Lengths along its axis, from the head on. */
struct screw_need {
    int64_t gauge;     /* wanted; not looked at where a stock is given */
    int64_t stock;     /* this one and no other; 0 lets the program choose */
    int64_t passed;    /* wood that the shank passes: what is only laid on counts here */
    int64_t cloth;     /* pressed cloth in between */
    int64_t receiving; /* wood behind, glued facings included */
    int64_t wood;      /* enum wood_word of what it bites in: for the pilot */
    bool end_grain;    /* the bite is in end grain */
    bool panel;        /* one of many that hold a panel */
    bool padded;       /* the far face is padded or sat on: a wider margin before the tip */
};

enum screw_fit {
    SCREW_FIT_GOOD,  /* the wanted bite, or at least the least one */
    SCREW_FIT_SHORT, /* the longest that stays inside bites less than the least */
    SCREW_FIT_NONE   /* every length is too long, or does not reach */
};

struct screw_choice {
    enum screw_fit fit;
    size_t kind;    /* into screw_kinds; PLAN_NONE when none fits */
    int64_t bite;   /* of the length chosen */
    int64_t before; /* wood and cloth that it passes before it bites */
    int64_t need;   /* wanted length, and the longest that stays inside */
    int64_t limit;
    int64_t least_bite;
    int64_t gauge; /* that was asked for */
    int64_t stock; /* the maker's own choice; 0: none */
};

/*
 * Chooses (common practice, no source): wanted = passed + cloth + wanted bite, limit = passed +
 * cloth + receiving - tip margin. The shortest length sold from wanted to limit; else the shortest
 * with the least bite; else the longest that stays inside and bites at all. Lengths are those of
 * the workshop's screws of that gauge (or of a diameter within 0.3 mm), the trade's usual ones
 * where it has none such. The kind chosen is added to the plan's screw_kinds, with nothing counted
 * yet.
 */
struct screw_choice screw_choose(struct planning *planning, const struct screw_need *need);

/* Tells, once for an entity and its figures, when the choice is short or none fits. */
void screw_choice_tell(struct planning *planning, const struct screw_choice *choice,
                       enum entity_kind entity, int64_t key);

/* Adds a screw to the plan and counts it with its kind; its index. */
size_t screw_add(struct planning *planning, const struct screw *screw);

/* Counts screws of a kind without a place of their own in the plan. */
void screw_count(struct planning *planning, size_t kind, enum screw_use use, int64_t count);

/* "#10 x 3 in" in inch work, "5 x 80 mm" in millimetre work or without a gauge. Returns buffer. */
#define SCREW_TEXT (2 * QUANTITY_TEXT + 8)
char *screw_kind_print(char buffer[SCREW_TEXT], const struct screw_kind *kind, enum units units);

/* What the wood behind a wall's board or a floor's covering gives a screw: enough for any that is
 * sold. */
#define SCREW_BEHIND_WALL (100 * LENGTH_MM)

/* What the axis of a screw keeps from the edge of its wood (common practice, no source): 3
 * diameters, or the least of all. `value` are the trade values. */
int64_t screw_edge_margin(const int64_t *value, int64_t diameter);

/* Nominal diameter of a wood screw by gauge, in 1/320 mm; formula screw.gauge: 0.060 in + 0.013 in
 * for each number. */
int64_t screw_gauge_diameter(int64_t gauge);

/* The metric size that such a screw is sold as (#8: 4 mm), and the bits that go with it, in
 * softwood and in hardwood. Gauges between those of the table take the next larger. */
struct screw_bits {
    int64_t gauge;
    int64_t metric;    /* diameter it is sold as in millimetre work */
    int64_t clearance; /* for the shank: by inch and millimetre bits */
    int64_t clearance_metric;
    int64_t pilot[2]; /* for the thread, by enum wood_word */
    int64_t pilot_metric[2];
};
const struct screw_bits *screw_bits_of(int64_t gauge);

/* ---- distances ---- */

/* The axis of a screw as a segment in its box, head to tip. */
struct screw_axis {
    struct vector head, tip;
    int64_t diameter;
};
struct screw_axis screw_axis_of(const struct plan *plan, const struct screw *screw);

/* Surface to surface of two screws, rounded down; negative where they cut into each other. Most run
 * along the axes of one box, which makes the distance of two segments exact up to one square root;
 * that of a join with a box that leans may run any way, and is exact to a count. */
int64_t screw_clear(const struct screw_axis *a, const struct screw_axis *b);

/* Whether that is at least so much: the same answer, without the root. */
bool screw_clears(const struct screw_axis *a, const struct screw_axis *b, int64_t least);

#endif
