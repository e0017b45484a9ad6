/*
 * One object of a file into one struct of the model, by the entity's table. What is wrong is told
 * to the complaints; the field then keeps the value of a new item, and reading goes on.
 */
#ifndef EXCHANGE_READER_H
#define EXCHANGE_READER_H

#include "exchange/complaints.h"
#include "exchange/names.h"
#include "exchange/source.h"
#include "model/model.h"

struct reader {
    const struct source *source;
    struct complaints *complaints;
    struct model *draft; /* its arena has an escape armed; gives units, currency, and build items */
    const struct names *names; /* the shop items that can be referred to */
};

/*
 * Fills `item` (all but its key) from `object`: a new item's values, then the members. Tells of
 * values of a wrong type, out of range or not in their vocabulary, references to nothing, members
 * that are unknown or twice there, and fields that are missing. Item keys must be in the draft
 * already, and the names of the shop in `names`.
 */
void reader_item(const struct reader *reader, const struct entity *entity,
                 const struct source_value *object, void *item);

/* The member of an object with that key, the first of several; NULL when there is none. */
const struct source_value *reader_member(const struct source *source,
                                         const struct source_value *object, const char *key);

/* Reads a key (a whole number from 1 to FIELDS_LAST_KEY - 1), telling what is wrong. 0 when it is
 * none.
 */
int64_t reader_key(const struct reader *reader, const struct source_value *value);

/* Tells that a member is unknown in `where` ("boxes"), with the one of `known` that may be meant.
 */
void reader_unknown(struct complaints *complaints, const struct source_value *member,
                    const char *where, const char *const *known, size_t count);

#endif
