/*
 * What the files of the sweep share: its state, and what each does for the others. rollsweep.c goes
 * on and back, rollphases.c says where a group may begin, rollfailed.c remembers what failed,
 * rollmeasures.c judges by slices, rollseats.c finds places across.
 */
#ifndef CUT_ROLLSWEEP_STATE_H
#define CUT_ROLLSWEEP_STATE_H

#include "cut/rollsweep.h"

#include "base/list.h"

#define MEASURES_FIRST 8
#define MEASURES_MOST 32 /* with those that are learnt on the way */
#define FREE INT64_C(-1)
#define NEVER_ADVANCED SIZE_MAX
#define SEAT_PLACES_MOST (2 + SWEEP_PARTS) /* one for each part, an origin, the edge */

struct measure {
    int64_t line;  /* ROWS_ALL */
    int64_t worth; /* of one slice */
    int64_t total; /* of all parts */
    int64_t spare; /* what may be lost; of a line: when the group's origin is known */
    int64_t hits;  /* states that failed by it */
};

/* A way in which a part of a kind may lie. */
struct stay {
    size_t kind, group;
    int64_t width, length, along; /* along: from the origin of its group */
    int64_t across;               /* FREE */
    bool turned;
    int64_t value[MEASURES_MOST + 1];
    int64_t over[MEASURES_MOST + 1]; /* what it is worth beyond the least of its kind */
};

struct start {
    size_t stay;
    int64_t near, far;
    int64_t across; /* of its stay */
};

/* Something with a place across: so far right of the place it hangs on. */
struct seat {
    size_t place;
    int64_t offset, width;
    int64_t near, far;
};

struct seat_pair {
    uint16_t first, second;
};

/* One place lies so much farther right than another, or more. */
struct seat_gap {
    size_t left, right;
    int64_t least;
};

struct seating {
    struct seat *seats;
    struct seat_pair *pairs; /* of seats that lie beside each other */
    struct seat_gap *gaps;   /* one for each pair at most */
    int64_t *most;           /* by place: how far right it may be, */
    int64_t *at;             /* and where it is, when seats were found */
    size_t count, pair_count, gap_count, places;
    int64_t trials; /* that are left */
};

/* What is undone when the sweep goes back. */
struct step {
    bool advance;
    bool known_before; /* the origin of the started part's group */
    size_t stay;
    int64_t time, event, width;
    uint64_t hash[2]; /* of the state that it advanced to */
    size_t advanced;  /* the step that advanced before it */
    uint8_t lying_count;
    uint8_t lying[SWEEP_PARTS];
};

/* Keys are not kept, but 128 bits of them: that two are alike by chance has never been seen by
 * anybody. */
struct memo_slot {
    uint64_t hash[2];
    int64_t time;
    uint32_t left;  /* parts that had not started */
    uint32_t round; /* that it is of; of an older one it is free */
};

struct memo {
    struct memo_slot *slots;
    uint32_t round;   /* one for each origin and phase that is looked at; never 0 */
    uint64_t hash[2]; /* of the key that is being made */
};

struct roll_sweep {
    const struct roll_job *job;
    struct arena *arena;
    struct roll_rows rows;
    int64_t target;

    int64_t *origins, *least; /* across, and what is shown of each; -1: not yet */
    size_t origin_count, origin;
    bool *refuted;             /* by origin: slices show that the target is too short for it */
    int64_t *phases;           /* where the origin along may be; none where rule 1 needs none */
    size_t phase_count, phase; /* phase: 0 while it is left open, then one more than its index */
    int64_t slack, shift;      /* how much farther right the origin may be; and is, for seats */
    bool opened;               /* the origin that is looked at has its stays and measures */
    bool compact;              /* rule 5 is kept */
    bool unseated;             /* while it was kept something found no seats */
    bool unjudged;             /* something was left without a verdict */

    struct measure measures[MEASURES_MOST + 1]; /* one more on trial */
    size_t measure_count, measures_kept;        /* those that are never given up come first */
    size_t sharpest;                            /* the one that refuted last */
    int64_t *lines; /* of the repeat along that measures are learnt of */
    size_t line_count, next_line;
    double *wanted;    /* by kind: what is left, for learning */
    int64_t learn_at;  /* work at which the next measure is looked for */
    int64_t learn_for; /* how often its own work is waited for after one that did not help */
    struct stay *stays;
    size_t stay_count;

    int64_t *left;        /* by kind */
    int64_t *shortest;    /* by kind: the least it takes along */
    size_t left_count;    /* parts that have not started */
    bool *known;          /* by group: whether its origin along is */
    int64_t *begin;       /* and where */
    int64_t known_since;  /* when that of the group that is looked at became so */
    struct start *starts; /* all so far */
    size_t start_count;
    uint8_t lying[SWEEP_PARTS]; /* indices of starts that have not ended */
    size_t lying_count;
    int64_t time, event; /* now, and when something ended last */
    int64_t width;       /* that lies there */
    int64_t held[MEASURES_MOST + 1], lost[MEASURES_MOST + 1];
    size_t cursor; /* the next stay to try; stay_count: to advance; beyond: to go back */
    LIST_OF(struct step) steps;
    size_t advanced; /* index of the last that advanced; NEVER_ADVANCED */

    struct memo memo;
    struct seating seating;
    int64_t forgotten; /* states, as they failed for want of seats */
    struct roll_spot *spots;
    int64_t work;
};

/* ---- rollsweep.c ---- */

/* Whether the pattern, the width and rules 1 and 5 of the sweep let something that lies like this
 * start now. */
bool sweep_lets_start(const struct roll_sweep *sweep, const struct stay *stay);

/* The tests that are short, and say no most often, come first and in line. */
static inline bool sweep_can_start(const struct roll_sweep *sweep, const struct stay *stay)
{
    return sweep->left[stay->kind] > 0 && sweep->width + stay->width <= sweep->job->width &&
           sweep->time + stay->length <= sweep->target && sweep_lets_start(sweep, stay);
}

/* Stays, measures and a start for the origin that is to be looked at. */
void sweep_open(struct roll_sweep *sweep);

/* To the beginning of the roll; what failed is forgotten, what was learnt stays. */
void sweep_start_over(struct roll_sweep *sweep);

/* A step on without asking whether anything can come of it: something starts that can, or, when
 * something lies there, the time goes on to the next. And the last step back. */
void sweep_start(struct roll_sweep *sweep, size_t stay);
void sweep_go_on(struct roll_sweep *sweep);
void sweep_go_back(struct roll_sweep *sweep);

/* Tries what comes next of starting, advancing and going back. False when there is nothing left. */
bool sweep_move(struct roll_sweep *sweep);

/* ---- rollphases.c ---- */

/* Whether the pattern along asks for no phases: all parts are of one group, or of none. */
bool sweep_pushes_whole(const struct roll_job *job);

/* Every phase of a roll's only group; none where there are too many to look at. */
void sweep_find_phases(struct roll_sweep *sweep);

/* ---- rollfailed.c ---- */

struct memo sweep_memo(struct arena *arena);

/* Whether the state that the sweep is in was there before, no later than now; keeps it where not.
 * The key stands in the memo's hash. */
bool sweep_known_to_fail(struct roll_sweep *sweep);

/* Takes out the states on the way here. */
void sweep_forget_path(struct roll_sweep *sweep);

/* ---- rollmeasures.c ---- */

/* The measures of the origin that is looked at: by the slices of all parts. */
void sweep_set_measures(struct roll_sweep *sweep);

/* What may be lost of lines, now that the origin along of their group is known. */
void sweep_set_spares(struct roll_sweep *sweep);

/* What is held is lost less for the slices up to a time; `sign` -1 takes it back. */
void sweep_lose(struct roll_sweep *sweep, int64_t from, int64_t to, int sign);

/* Whether a measure has lost more than it may. */
bool sweep_lost_too_much(struct roll_sweep *sweep);

/* Of what may be lost the share that was, by the measure by which that is most: SHARE_WHOLE is all.
 */
#define SHARE_WHOLE 1024
int64_t sweep_share_lost(const struct roll_sweep *sweep);

/* Whether one would have, if nothing started before `to`. Remembers which, as `sharpest`. */
bool sweep_would_lose(struct roll_sweep *sweep, int64_t to);

/* Whether the sharpest would have, if parts worth `more` by it lay there as well. */
bool sweep_falls_short(const struct roll_sweep *sweep, int64_t to, int64_t more);

/* Looks for a measure by which what is left now needs too much. Any measure is one for all states,
 * so it stays. Whether it shows that this state fails. */
bool sweep_learn(struct roll_sweep *sweep);

/* The same if it is time again, which it is the sooner the more it helps. */
bool sweep_learn_in_turn(struct roll_sweep *sweep);

/* ---- rollseats.c ---- */

/* Parts that lie beside each other: indices of starts. */
struct abreast {
    const uint8_t *starts;
    size_t count;
};

/* Whether what is free has room between what is tied, with one part more. */
bool sweep_has_room(const struct roll_sweep *sweep, struct abreast abreast,
                    const struct stay *more);

enum seated {
    SEATS_FOUND, /* spots say where */
    SEATS_NEVER, /* there are none */
    SEATS_UNKNOWN,
};

/* Seats for the parts that have started. */
enum seated sweep_find_seats(struct roll_sweep *sweep);

/* Spots of all parts, by the seats that were found last. */
void sweep_set_spots(struct roll_sweep *sweep);

#endif
