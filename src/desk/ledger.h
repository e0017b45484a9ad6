/* Tables of prices, of the shelf and of spend, out of the workshop and into it. */
#ifndef DESK_LEDGER_H
#define DESK_LEDGER_H

#include "desk/desk.h"
#include "exchange/ledger.h"

/*
 * Appends a table. Of spend, `build` 0 gives that for the shelf and of every build in order of
 * keys, and any other only its own; prices and the shelf are the workshop's, whatever `build` is.
 * Faults: those of store_peek, MEMORY; what was appended by then is no whole table.
 */
enum fault desk_ledger_out(struct desk *desk, enum ledger_kind kind, int64_t build,
                           const struct csv_style *style, struct text *out,
                           struct fault_note *note);

/*
 * Takes a table in as one edit, whole or not at all; an open draft is dropped. `ret_changed` is how
 * many items changed or came; where that is 0 there is nothing to undo. Faults: those of
 * ledger_read, each line told; those of store_save.
 */
enum fault desk_ledger_in(struct desk *desk, enum ledger_kind kind, const char *bytes,
                          size_t length, model_fault_fn *tell, void *context, size_t *ret_changed,
                          struct fault_note *note);

#endif
