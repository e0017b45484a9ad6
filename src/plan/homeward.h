/*
 * The ride home: whether a sheet goes into the vehicle as it is bought, and what the shop's saw has
 * to do before where it does not.
 */
#ifndef PLAN_HOMEWARD_H
#define PLAN_HOMEWARD_H

#include "plan/plan.h"

/* Flat, on edge or tilted through the opening, and along the floor where that was measured. Formula
 * way.door without a margin. */
bool homeward_goes_in(const struct passage *vehicle, int64_t length, int64_t width,
                      int64_t thickness);

/* The first vehicle of the build that a size does not go into; NULL when it goes into all. */
const struct passage *homeward_too_small(const struct model *model, int64_t length, int64_t width,
                                         int64_t thickness);

/* The first cut through a sheet of a layout. */
struct homeward {
    const struct passage *vehicle;   /* that the whole sheet does not go into */
    const struct cut_stroke *stroke; /* the first, or NULL where the layout cuts nothing off */
    bool goes;                       /* both of what it parts go in */
};

/* False where the whole sheet `blank` of the layout goes home as it is, or comes off the shelf.
 * O(strokes + passages). */
bool homeward_first_cut(const struct model *model, const struct cut_job *job,
                        const struct cut_layout *layout, size_t blank, int64_t thickness,
                        struct homeward *ret_home);

/* "let the shop cut it across at 48 in first"; where that does not do, that the shop cuts on; where
 * no cut is known, that it cuts. Returns buffer. */
#define HOMEWARD_TEXT 128
char *homeward_words(char buffer[HOMEWARD_TEXT], const struct model *model,
                     const struct homeward *home);

#endif
