/*
 * Ways out of a finding, put together line by line: one edit or a few that belong together, which
 * the maker takes with a key (struct cure).
 *
 *     struct cure_draft cure = cure_begin(planning, "Fix both in one row");
 *     cure_word(&cure, ENTITY_layer, key, "fixing", words_fixing.at[FIXING_TOGETHER].name);
 *     cure_offer(&cure, finding);
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

/* Offers it after the cures that the finding has already. A draft without edits is none. */
void cure_offer(const struct cure_draft *draft, struct finding *finding);

#endif
