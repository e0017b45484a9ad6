/*
 * Builds and workshops as JSON, out and in. stuffover-build(5) describes the format; it and all
 * that is done here follow the entity tables of the model.
 *
 * A file that goes in is refused whole, with every fault that was found, or taken in whole.
 */
#ifndef EXCHANGE_EXCHANGE_H
#define EXCHANGE_EXCHANGE_H

#include "base/fault.h"
#include "base/text.h"
#include "model/model.h"

#include <stddef.h>

enum exchange_kind { EXCHANGE_NEITHER, EXCHANGE_BUILD, EXCHANGE_WORKSHOP };

/* The kind of a file's content. NEITHER, and the note says why with line and column, when it is not
 * JSON or has no "kind" that is known here. */
enum exchange_kind exchange_kind_of(const char *bytes, size_t length, struct fault_note *note);

/*
 * Appends the model's build, with the set it belongs to and the stocks it uses with their offers,
 * or the workshop with all that belongs to it. Fields at the value of a new item are left out, and
 * lists without items. The same model gives the same bytes. Out of memory: text_failed(out). For a
 * build the cost grows with the workshop's stocks and offers times the build's items.
 */
void exchange_build_out(struct text *out, const struct model *model);
void exchange_shop_out(struct text *out, const struct model *model);

/*
 * Reads a build into a model that holds a workshop and an empty build with key 0, which stays 0.
 * Sets and stocks whose name the workshop has already are used as they are, and the file's offers
 * of such a stock are passed over; the others are added to the workshop under new keys. Money is in
 * the workshop's currency.
 *
 * Faults: each one that was found is told, in the order of the file, with line, column and path;
 * the first of them is returned and the model is as it was. SYNTAX, TYPE, RANGE, UNIT, OVERFLOW,
 * DUPLICATE, UNKNOWN, REFERENCE, MISSING, NEWER (a later format), REFUSED (over 16 MiB), MEMORY.
 * Of more than 1,000 faults the first 1,000 found are told, then how many there were beside them.
 *
 * The model's arena needs no escape. On success the model's lists and texts are new ones in the
 * same arena: pointers to the old are stale. `tell` may be NULL. O(n log n) in the file's length.
 */
enum fault exchange_build_in(const char *bytes, size_t length, struct model *model,
                             model_fault_fn *tell, void *context);

/*
 * Reads a workshop file into the model's workshop, as above. The workshop's own fields become the
 * file's. Tools, sets, stocks and trade values with a name that is there already are replaced in
 * place, keys and so references staying, and a replaced stock has the file's offers afterwards; all
 * else is added, but for offers, leftovers and spends exactly like one that was there, so that the
 * same file twice changes nothing. REFUSED where money would come to be in another currency. The
 * cost of these grows with their number in the file times that in the workshop.
 */
enum fault exchange_shop_in(const char *bytes, size_t length, struct model *model,
                            model_fault_fn *tell, void *context);

#endif
