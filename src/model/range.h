/*
 * Whether a value lies in its field's range (invariant 3 of model/model.h), said in the maker's
 * words. For field_read and model_check; used by this floor only.
 */
#ifndef MODEL_RANGE_H
#define MODEL_RANGE_H

#include "model/model.h"

/* A reference is not followed: only 0 for one that must be given is refused. Faults: RANGE,
 * MISSING, UNKNOWN (not a word). */
enum fault range_check_whole(const struct field *field, const struct model *model, int64_t value,
                             struct fault_note *note);

/* Faults: SYNTAX (not UTF-8, not a date; with the column), MISSING (empty), RANGE (too long). */
enum fault range_check_text(const struct field *field, const char *text, struct fault_note *note);

#endif
