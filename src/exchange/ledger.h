/*
 * Prices, those before, the shelf and spend as tables (csv.h): a column for each field of an offer,
 * a past price, a leftover or a spend, under the field's name, in any order; of a spend also its
 * build. The first line names the columns. The table of the fields says the rest, so no column is
 * said twice.
 *
 * Of a line that says the same piece as an item that is there (see `known_by` in the table of the
 * kinds) the item takes over what else it says; what the table has no column for stays. A spend is
 * known by everything: one that is there already is passed over, so that a table taken in twice
 * changes nothing.
 */
#ifndef EXCHANGE_LEDGER_H
#define EXCHANGE_LEDGER_H

#include "base/fault.h"
#include "exchange/csv.h"
#include "model/model.h"

enum ledger_kind { LEDGER_PRICES, LEDGER_HISTORY, LEDGER_SHELF, LEDGER_SPEND, LEDGER_KINDS };

/* "prices", "history", "shelf", "spend"; by word, LEDGER_KINDS for any other. */
const char *ledger_word(enum ledger_kind kind);
enum ledger_kind ledger_named(const char *word);

/* The items of a table: offers, past prices, leftovers, spends of builds. */
enum entity_kind ledger_entity(enum ledger_kind kind);

/* Lines in a table at most: more are no maker's. */
#define LEDGER_LINES_MOST 10000

/* ---- out ---- */

/* The first line; then the lines of a model: its offers or leftovers, or the spends of its build
 * or, with `shelf`, those for the shelf. */
void ledger_put_head(struct text *out, enum ledger_kind kind, const struct csv_style *style);
void ledger_put_lines(struct text *out, enum ledger_kind kind, const struct csv_style *style,
                      const struct model *model, bool shelf);

/* ---- in ---- */

struct ledger_build {
    int64_t key;
    const char *name;
};

struct ledger_file {
    enum ledger_kind kind;
    const char *bytes;
    size_t length;
    const struct ledger_build *builds; /* that spends may name */
    size_t build_count;
};

struct ledger_entry {
    void *item;    /* a struct of the kind's entity */
    int64_t key;   /* of the item that it takes the place of; 0: it is new */
    int64_t build; /* of a spend; 0: for the shelf */
    int line;
};

struct ledger {
    enum ledger_kind kind;
    LIST_OF(struct ledger_entry) entries;
};

/*
 * Reads a table against a model with the workshop it is for. What is read lies in the model's
 * arena, whose escape must be armed; the model's items stay as they are. Lengths without a unit are
 * in the workshop's. A comma in a number is its decimal comma, but where it parts cells and three
 * digits follow it nobody can tell, and it is refused.
 *
 * Faults: each line that is wrong is told, with line, column and the column's name; the first of
 * them is returned. Of more than 1,000 the rest are counted. Those of csv_begin and field_read;
 * UNKNOWN (a column, a build), DUPLICATE (a column twice, a piece twice), MISSING (a column that no
 * item can do without), REFUSED (over 10,000 lines; an item that could be several of those that are
 * there). O(lines * items of the model).
 */
enum fault ledger_read(struct ledger *ret_ledger, const struct ledger_file *file,
                       struct model *model, model_fault_fn *tell, void *context);

/* Puts the entries of a build into its model, or of no build (prices, the shelf, spends for the
 * shelf) into the workshop's; the model's arena armed. Returns how many items changed or came. */
size_t ledger_take(const struct ledger *ledger, int64_t build, struct model *model);

#endif
