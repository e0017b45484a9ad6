/*
 * The order of work while it is made: the steps, what they touch, and what waits for what. Shared
 * by the files of the order pass only.
 */
#ifndef PLAN_ORDER_H
#define PLAN_ORDER_H

#include "plan/counted.h"
#include "plan/layers.h"
#include "plan/pass.h"
#include "plan/rules.h"
#include "plan/steps.h"

/* One step with what only the order needs of it. */
struct work {
    struct step step;
    int64_t stock; /* of what is cut */
    const struct join *of_join;
    const struct layer *of_layer;
    unsigned faces;   /* of a layer or of panels: one bit for each side_word it lies on */
    struct flap flap; /* of a flap */
    int64_t usual;    /* minutes of one who has done it often */
    int64_t minutes;  /* the same at the maker's own pace */
    int64_t spoiled;  /* parts to be cut anew */
    bool late;        /* panels that a join holds back */
    bool in_room;
};

/* What a step has to do with: the keys by which relations find their pairs. */
enum touch_kind { TOUCH_BUILD, TOUCH_BOX, TOUCH_JOIN, TOUCH_LAYER, TOUCH_STOCK, TOUCH_KINDS };

struct touch {
    enum touch_kind of;
    int64_t key;
    int kind; /* of the step */
    size_t work;
};

/* One work waits for another. */
struct wait {
    size_t before, after;
    const struct rule *rule;
    bool dropped; /* it closed a circle */
    int64_t rest; /* minutes that pass between the two */
};

/*
 * The bench's clock, which only the order knows: sessions of the maker's length, as far apart as
 * the build's hours a week put them, a day without any. What dries goes on drying between them.
 */
struct bench_clock {
    int64_t length, gap;
    int64_t set_up;      /* each session begins and ends with setting up and cleaning */
    int64_t now;         /* since the first session began */
    int64_t began, used; /* of the session */
    int session;
    int64_t done[STEP_KINDS]; /* how many of each kind */
};

struct ordering {
    struct planning *planning;
    struct counted counted;
    struct flaps flaps;
    LIST_OF(struct work) works;
    LIST_OF(struct touch) touches; /* sorted once all works are made */
    LIST_OF(struct wait) waits;
    size_t *sequence; /* works in the order they are done */
};

/* order_make.c: every step there is, and what it touches. */
void order_make(struct ordering *ordering);

/* Takes a work whose keys are set in; key, and where it is not 0 nth, are those of its name. Then
 * what the work that was added last has to do with. */
void order_add(struct ordering *ordering, struct work work, int64_t key, int64_t nth);
void order_touch(struct ordering *ordering, enum touch_kind of, int64_t key);

/* order_name.c: gives a work whose keys are set in its lasting name and its title; key and nth as
 * for order_add. */
void order_name(const struct plan *plan, struct work *work, int64_t key, int64_t nth);

/* order_again.c: the steps for what is cut or bought once more. */
void order_make_again(struct ordering *ordering);

/* order_relate.c: whether the relation of a link holds between two works. */
bool order_relates(const struct ordering *ordering, enum relation relation,
                   const struct work *before, const struct work *after);
enum touch_kind order_relation_touch(enum relation relation);

/* order_wait.c: waits by the links and by the plan's constraints; then, when the order is known,
 * what is left for the last steps of bench and build to wait for, and what else nothing holds. */
void order_wait(struct ordering *ordering);
void order_wait_ends(struct ordering *ordering);

/*
 * order_sort.c: the sequence, by the waits and among free steps by bench before room, phase,
 * people, tool, box, name; what still rests comes later, as long as there is something else to do.
 * Sets minutes and sessions on the way. A wait that closes a circle is dropped, the softest of the
 * circle first, and only where what is left still runs from its last work to its first. O((n + e)
 * log n), and O(n + e) more for each wait that is dropped.
 */
void order_sort(struct ordering *ordering);

/* A finding for each hard wait that had to be dropped. */
void order_tell_circles(const struct ordering *ordering);

/* order_time.c: people and minutes of the works, before there is a sequence. */
void order_minutes(struct ordering *ordering);

/* The clock: at the first session; idle until a time, where there is nothing to do; and one work
 * done, which gets its minutes (more for the first of its kind where the maker learns), its session
 * and the time that was waited before it. */
struct bench_clock clock_begin(const struct ordering *ordering);
void clock_wait(struct bench_clock *clock, int64_t until, struct work *next);
void clock_work(struct bench_clock *clock, const struct ordering *ordering, struct work *work);

#endif
