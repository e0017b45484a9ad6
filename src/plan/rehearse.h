/*
 * The rehearsal: a second pair of eyes on a finished plan.
 *
 * The passes decide; the rehearsal walks what they decided. It takes the steps of a plan one after
 * the other, as a maker would, and keeps a stage of its own: which blocks of wood stand there by
 * now, which box is screwed to which, which cloth lies where and which of its edges are basted,
 * stapled, left open or closed, which holes are drilled and what was put into them. At each step it
 * asks of the stage, not of a rule, whether the step can be done, and for each point of each join
 * it proves seven things:
 *
 *     marked   the boxes fit together bare, with all the wood that the screw passes in place
 *     drilled  the same, marked, and the bit comes to both faces
 *     bare     padding that was put over the point since then leaves a patch for it
 *     found    mapped while it could be seen, and no cloth hides it when it is looked for
 *     reached  a driver stands behind the head and a hand comes to it, round all that is there
 *     driven   the boxes meet, the hole is free, a screw or bolt holds them
 *     closed   what was left open or off for it is closed afterwards, the inner before the outer
 *
 * Beside the points it looks at the things that can be lost without one: stapled edges (each
 * staple placed once, while its line is free), layers, frame screws, fittings, and supplies.
 *
 * It is independent: it shares the structs of plan.h, the model and the trade values with the
 * passes, and no function of theirs, their geometry included; a mistake would have to be made
 * twice. It knows the kinds of steps but neither the table of rules nor the precedences, so that a
 * rule left out of that table, or turned round, shows as something that cannot be done.
 *
 * Everything here is pure. Results live in the arena that is handed in and point into the plan.
 * Indices of steps are into plan->steps; PLAN_NONE means none. Cost: steps times what lies on the
 * boxes that a step touches.
 */
#ifndef PLAN_REHEARSE_H
#define PLAN_REHEARSE_H

#include "plan/plan.h"

enum proof {
    PROOF_MARKED,
    PROOF_DRILLED,
    PROOF_BARE,
    PROOF_FOUND,
    PROOF_REACHED,
    PROOF_DRIVEN,
    PROOF_CLOSED,
    PROOFS
};

/* "marked", "drilled", ... */
extern const char *const proof_names[PROOFS];

/* Why something is not proved: enum name, sentence; %e is what stands in the way. */
#define LAPSES(L)                                                       \
    L(NONE, "")                                                         \
    L(NO_STEP, "no step does it")                                       \
    L(NO_WAY, "the plan knows no way to it")                            \
    L(NO_SCREW, "no screw holds it")                                    \
    L(NO_WOOD, "the wood for it is not there yet: %e")                  \
    L(COVERED, "it lies under the %e")                                  \
    L(JOINED, "%e is joined over it")                                   \
    L(NOT_BEFORE, "what has to come before it is not done")             \
    L(NO_PATCH, "the %e leaves no bare patch")                          \
    L(NOT_MARKED, "the %e went on before the patch was marked")         \
    L(NOT_SLIT, "the %e is not slit over it")                           \
    L(WOOD_IN_WAY, "wood stands where the tool has to be: %e")          \
    L(NO_HAND, "no hand comes to it: %e")                               \
    L(CLOTH_IN_WAY, "the %e shuts the way to it")                       \
    L(STILL_OPEN, "the %e is never closed")                             \
    L(INNER_OPEN, "the %e under it is still open")                      \
    L(TWICE, "it is done twice")                                        \
    L(TRAPPED, "the joint shuts over the edge of the %e")               \
    L(NO_WAY_UNDER, "the %e lies over its place already")               \
    L(NOT_CUT, "what it is made from is not there yet")                 \
    L(NOT_SEWN, "it is not sewn yet")                                   \
    L(NOT_HOLED, "the holes for the buttons of the %e are not drilled") \
    L(SHUT, "%e shuts the place")                                       \
    L(KEPT_OUT, "no straight line brings the boxes together: %e")       \
    L(NOT_THERE, "it is not in the room yet")

enum lapse {
#define LAPSE_ENUM(name, sentence) LAPSE_##name,
    LAPSES(LAPSE_ENUM)
#undef LAPSE_ENUM
        LAPSES_COUNT
};

/* What came of one proof. */
struct verdict {
    enum lapse lapse;        /* LAPSE_NONE: proved */
    size_t step;             /* where it was proved or failed; PLAN_NONE when no step does it */
    enum entity_kind entity; /* what stood in the way; ENTITY_none for nothing, or the floor */
    int64_t key;
    const char *label; /* of a member or panel, NULL otherwise */
    size_t since;      /* the step that put it there */
};

struct rehearsed_point {
    size_t point; /* into plan->points */
    int64_t join;
    struct verdict verdicts[PROOFS];
    bool lost; /* some of them are not proved */
};

/* Something that is no point of a join. */
enum rehearsed_kind {
    REHEARSED_JOIN,
    REHEARSED_FRAME,
    REHEARSED_EDGE,
    REHEARSED_LAYER,
    REHEARSED_FITTING,
    REHEARSED_SUPPLY,
    REHEARSED_PLACE
};

/* Only what is lost is listed. */
struct rehearsed_thing {
    enum rehearsed_kind kind;
    enum entity_kind entity; /* the join without a point, the box of a frame screw, the layer */
    int64_t key;
    size_t index; /* FRAME: into plan->screws; EDGE: into plan->intervals; PLAN_NONE otherwise */
    struct verdict verdict;
};

struct rehearsal {
    LIST_OF(struct rehearsed_point)
    points;                                 /* as in plan->points; those of joins that are left out
                                               or laid on are missing */
    LIST_OF(struct rehearsed_thing) things; /* lost */
    LIST_OF(size_t) lost;                   /* into points */
    bool proved;                            /* nothing is lost */
};

/* Walks the steps as the plan has them. FAULT_MEMORY is the only fault of these functions; the
 * arena is then to be released. */
enum fault rehearse(const struct plan *plan, struct arena *arena,
                    const struct rehearsal **ret_rehearsal);

/* The same in another sequence: indices of steps, each at most once. What is missing in it is not
 * done. */
enum fault rehearse_sequence(const struct plan *plan, const size_t *sequence, size_t count,
                             struct arena *arena, const struct rehearsal **ret_rehearsal);

/*
 * From where the bench stands: first the steps that are ticked, in the order in which they were
 * ticked (whatever plan they were done to), then the rest as planned. What is lost then can no
 * longer be reached as things stand.
 */
enum fault rehearse_ticks(const struct plan *plan, struct arena *arena,
                          const struct rehearsal **ret_rehearsal);

/* Steps in a sequence. */
struct rehearsed_steps {
    const size_t *at;
    size_t count;
};

/*
 * What of the ticked work has to come off again, the last first, before a join's lost points can be
 * had: for a join that was added, or a point that was moved, after padding. Empty when nothing is
 * lost, or when taking things off does not help.
 */
enum fault rehearse_undo(const struct plan *plan, int64_t join, struct arena *arena,
                         struct rehearsed_steps *ret_steps);

/*
 * In what order the piece comes apart for moving house: the rehearsal backwards, as far as it takes
 * to part all boxes that were joined, fixed or closed in the room. Steps to be taken back; empty
 * where nothing was joined there.
 */
enum fault rehearse_apart(const struct plan *plan, struct arena *arena,
                          struct rehearsed_steps *ret_steps);

/* What taking a step back is called: "open the cover of C at CW", safe to show. */
void rehearse_apart_text(const struct plan *plan, size_t step, struct text *out);

/* One sentence for a verdict that is not proved, safe to show, in the plan's names. */
void rehearse_text(const struct plan *plan, const struct verdict *verdict, struct text *out);

#endif
