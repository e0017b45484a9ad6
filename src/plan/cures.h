/*
 * Ways out of a finding, put together line by line: one edit or a few that belong together, which
 * the maker takes with a key (struct cure).
 *
 *     struct cure_draft cure = cure_begin(planning, "Fix both in one row");
 *     cure_word(&cure, ENTITY_layer, key, "fixing", words_fixing.at[FIXING_TOGETHER].name);
 *     cure_offer(&cure, finding);
 *
 * A pass that cannot see whether an edit helps offers it on trial instead: when all passes have run
 * it is taken into a plan of its own, and stays only if it mends what is told and stops nothing.
 */
#ifndef PLAN_CURES_H
#define PLAN_CURES_H

#include "plan/pass.h"

struct cure_draft {
    struct planning *planning;
    const char *text;
    LIST_OF(struct cure_edit) edits;
};

/* `text` and every word are kept, not copied: arena or model text, or constants. */
struct cure_draft cure_begin(struct planning *planning, const char *text);

/* The next field of an item, or of the new item where `key` is 0. */
void cure_word(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
               const char *word);
void cure_length(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
                 int64_t length);
void cure_count(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
                int64_t count);
void cure_refer(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
                int64_t to);

/* Takes out an item, and what hangs on it. */
void cure_remove(struct cure_draft *draft, enum entity_kind entity, int64_t key);

/* Offers it after the cures that the finding has already. A draft without edits is none. */
void cure_offer(const struct cure_draft *draft, struct finding *finding);

/* Offers it in the same place, on trial; not at all in a plan that is a trial itself. */
void cure_offer_on_trial(const struct cure_draft *draft, struct finding *finding);

/*
 * Comes when all findings are told. Of the cures on trial keeps, the first ones first, at most
 * three a finding: those with which there is one finding less of that kind about that thing, and no
 * stop more of any kind about anything, and which save money where that is the point. Makes at most
 * a dozen plans, fewer of large builds; what is not tried is not kept.
 */
void cures_try(struct planning *planning);

#endif
