/* The face of a cover as its seams see it: shared by the files that place them. */
#ifndef PLAN_COVER_SEAMING_H
#define PLAN_COVER_SEAMING_H

#include "plan/cover.h"

/* Lines and ends that lie flush, as far as eyes see. */
#define SEAMING_EYE (LENGTH_INCH / 8)

/* A line that hides a seam. */
struct hide {
    int64_t at;
    const char *what;
};

/* What a seam must not fall on; open at both ends. */
struct keep {
    int64_t from, to;
    const char *what;
};

struct seaming {
    struct planning *planning;
    const struct spread *spread;
    bool level;          /* seams run left to right: places are heights */
    int64_t middle;      /* of the face */
    int64_t left, right; /* cut beyond it to both sides; of level seams below and above */
    int64_t roll;
    int64_t repeat; /* that seams match at; 0 for none */
    LIST_OF(struct hide) hides;
    LIST_OF(struct keep) keeps;
};

/* Of a place on a face, the figure that counts: u of upright seams, v of level ones. */
int64_t seaming_figure(const struct seaming *seaming, int64_t u, int64_t v);

/* Finds the lines that hide a seam and what it must not fall on. */
void seaming_find(struct seaming *seaming);

/* Finds only what it must not fall on; and of that only holes and buttons. */
void seaming_keep(struct seaming *seaming);
void seaming_keep_points(struct seaming *seaming);

#endif
