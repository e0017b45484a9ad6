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

struct desk {
    struct store *store;
    struct desk_state *state; /* what is in force; always planned */
    struct desk_state *draft; /* NULL when there is none */
    struct arena preview;     /* the draft's plan, apart from it: a draft is planned many times */
    struct arena builds;      /* the list of desk_builds */
    unsigned serial;
};

/* Runs `work` with the arena's escape armed; FAULT_MEMORY, and the note says so, when it left
 * through it. */
typedef enum fault desk_work_fn(void *context, struct fault_note *note);
enum fault desk_guard(struct arena *arena, desk_work_fn *work, void *context,
                      struct fault_note *note);

/* Formats the name of an edit, safe to show and cut at a character's edge. */
void desk_label(char label[STORE_LABEL], const char *format, ...)
    __attribute__((format(printf, 2, 3)));

#endif
