/*
 * Starter pieces: whole builds made from a few sizes, to begin from and change. Each asks at most
 * five questions; stock that the workshop does not have is added without a price.
 */
#ifndef DESK_STARTERS_H
#define DESK_STARTERS_H

#include "model/model.h"

#define STARTER_QUESTIONS 5

struct kit;

struct starter_question {
    const char *key;     /* "width": name on the command line; NULL ends the list */
    const char *text;    /* "Width between the wings" */
    const char *why;     /* where it is measured, and what hangs on it */
    int64_t standard[2]; /* by enum units, 1/320 mm */
    int64_t least, most;
};

struct starter {
    const char *name; /* "wing-headboard" */
    const char *title;
    const char *help;
    struct starter_question questions[STARTER_QUESTIONS];
    void (*make)(struct kit *kit, const int64_t *sizes);
};

/* The table, ended by an entry whose name is NULL. */
extern const struct starter starters[];

const struct starter *starter_named(const char *name);

/* RANGE, with the question's key as path, where a size cannot be. */
enum fault starter_check_size(const struct starter_question *question, enum units units,
                              int64_t size, struct fault_note *note);

/*
 * Makes a starter into a draft that holds the workshop and an empty build. `name` is the new
 * build's; sizes in the order of the questions, 0 for the standard. Faults: RANGE with the
 * question's key as path; DUPLICATE for a name that is taken is found by the commit.
 */
enum fault starter_make(const struct starter *starter, struct model *draft, const char *name,
                        const int64_t sizes[STARTER_QUESTIONS], struct fault_note *note);

#endif
