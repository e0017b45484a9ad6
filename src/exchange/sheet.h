/*
 * The outermost object of a file, sorted out: what stands where. No item is read here.
 */
#ifndef EXCHANGE_SHEET_H
#define EXCHANGE_SHEET_H

#include "exchange/complaints.h"
#include "exchange/exchange.h"
#include "exchange/source.h"
#include "model/model.h"

#include <stdbool.h>

struct sheet {
    const struct source *source;
    enum exchange_kind kind;
    const struct source_value *head;                /* the object "build" or "workshop" */
    const struct source_value *lists[ENTITY_COUNT]; /* arrays of objects; NULL: not there */
};

/* The kind that a text says it is; NEITHER and a note with the place when it says none. */
enum exchange_kind sheet_kind_of(const struct source *source, struct fault_note *note);

/*
 * Sorts out a file that should be of `kind`. False when format or kind are not what they should be:
 * that is told, and the rest cannot be judged. Else unknown and repeated keys, a missing head and
 * what is not a list of objects are told, and what is left can be read.
 */
bool sheet_read(struct sheet *sheet, const struct source *source, enum exchange_kind kind,
                struct complaints *complaints);

/* The objects of a list, one after another: NULL starts, NULL ends. */
const struct source_value *sheet_item(const struct sheet *sheet, enum entity_kind kind,
                                      const struct source_value *before);

#endif
