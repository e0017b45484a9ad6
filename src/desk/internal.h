/* What the files of the desk share. */
#ifndef DESK_INTERNAL_H
#define DESK_INTERNAL_H

#include "desk/desk.h"

/* A model and the plan of it, both in the arena. */
struct desk_state {
    struct arena arena;
    struct model model;
    const struct plan *plan; /* NULL: not planned yet */
};

/* The model in force, planned in another way for as long as desk_serial is `serial`. */
struct desk_again {
    struct arena arena;
    const struct plan *plan; /* NULL: not yet */
    unsigned serial;
};

struct desk {
    struct store *store;
    struct desk_state *state; /* what is in force; always planned */
    struct desk_state *draft; /* NULL when there is none */
    struct desk_state *spare; /* empty, with the memory of an earlier one; NULL: none */
    struct arena preview;     /* the draft's plan, apart from it: a draft is planned many times */
    struct arena builds;      /* the list of desk_builds */

    /* saw.c: layouts found so far, and the search that is on its way */
    struct cut_known known;
    struct arena found, searching;
    struct cut_search *search;
    struct cut_job search_job;
    uint64_t search_digest;
    enum cut_way search_way;
    const struct plan_job *sought;
    enum cut_effort search_effort;
    int64_t search_work;
    bool search_on;
    bool search_longer;      /* than what is done unasked */
    struct desk_again quick; /* without the layouts found, for comparing */
    struct desk_again told;  /* with stories and ways out */
    unsigned serial;
};

/* An empty state; NULL when memory is out. desk_state_free is NULL-safe. */
struct desk_state *desk_state_new(void);
void desk_state_free(struct desk_state *state);

/* What model_check says first; FAULT_NONE where it says nothing. */
enum fault desk_check_first(const struct model *model, struct fault_note *note);

/* Checks and plans what was loaded. Faults: what model_check says first, MEMORY. */
enum fault desk_state_plan(struct desk_state *state, const struct cut_known *known,
                           struct fault_note *note);

/* Runs `work` with the arena's escape armed; FAULT_MEMORY, and the note says so, when it left
 * through it. */
typedef enum fault desk_work_fn(void *context, struct fault_note *note);
enum fault desk_guard(struct arena *arena, desk_work_fn *work, void *context,
                      struct fault_note *note);

/* Plans the state in force again, with the layouts that are known by now. */
enum fault desk_plan_anew(struct desk *desk, struct fault_note *note);

/* Drops what searches have found. */
void desk_forget_layouts(struct desk *desk);

/* past.c: puts into the draft what its offers cost before, where they cost something else now. The
 * draft's arena is armed. */
void past_keep_prices(const struct model *before, struct model *draft);

/* saw.c: takes layouts out of the facts, those taken together with other builds or a build's own;
 * how many there were. */
size_t desk_drop_layouts(struct model *draft, bool together);

/* saw.c: keeps a layout among the facts under the name of its job. The draft's arena is armed. */
enum fault desk_put_layout(struct model *draft, const char *job, const struct cut_layout *layout,
                           struct fault_note *note);

/* saw.c: makes the layouts of a plan, all of what is not cut yet, the build's own facts. The
 * draft's arena is armed. Faults: those of desk_put_layout. */
enum fault desk_keep_layouts(struct model *draft, const struct plan *plan, struct fault_note *note);

/* saw.c: the same for a purchase, as facts of its tick: what is bought stays so laid out, whatever
 * prices do, and what is on no offer any more is left to be laid out again. What an earlier
 * purchase keeps stays with that. */
enum fault desk_keep_goods(struct model *draft, const struct plan *plan, int64_t tick,
                           struct fault_note *note);

/*
 * shelf.c: puts on the shelf what a cutting step leaves of a piece; false where it is not worth
 * keeping. Of a roll the end that no layout needs.
 */
bool shelf_put(struct model *draft, const struct plan *plan, const char *step,
               const struct cut_stock *from);
bool shelf_keeps(struct model *draft, const struct plan *plan, const char *step,
                 const struct cut_stock *from); /* whether it is, and nothing is put */
void shelf_put_roll(struct model *draft, const struct plan *plan, const char *step);

/* shelf.c: takes all that a step left off the shelf. */
void shelf_give_rests_back(struct model *draft, const char *step);

/* shelf.c: takes one piece of an entry, and puts one that was cut back. */
void shelf_take(struct model *draft, int64_t leftover);
void shelf_give_back(struct model *draft, int64_t stock, const struct cut_stock *from);

/* cutting.c: writes down what the tick of a cutting step cuts, and what it cuts that from; and what
 * else is to be done when that tick goes, before it does. */
void cutting_take(struct model *draft, const struct plan *plan, const struct step *step,
                  int64_t tick);
void cutting_give_back(struct model *draft, const struct tick *tick);

/* cutting.c: writes down what was cut by ticks from before pieces were written down, where the plan
 * still has all those parts: before an edit that may change them. */
void cutting_catch_up(struct model *draft, const struct plan *plan);

/*
 * timing.c: the minutes of a new tick, where none were given, from the clock, and into the pace of
 * its kind, beside `usual`; and out of it again. The tick stays where it is in the draft.
 */
void timing_take(struct model *draft, struct tick *tick, int64_t usual);
void timing_give_back(struct model *draft, const struct tick *tick);

/* Formats the name of an edit, safe to show and cut at a character's edge. */
void desk_label(char label[STORE_LABEL], const char *format, ...)
    __attribute__((format(printf, 2, 3)));

#endif
