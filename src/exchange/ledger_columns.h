/* The tables of the ledger as ledger.c and ledger_in.c see them; used by those two only. */
#ifndef EXCHANGE_LEDGER_COLUMNS_H
#define EXCHANGE_LEDGER_COLUMNS_H

#include "exchange/ledger.h"

#define LEDGER_BUILD "build" /* the column that names a spend's build */
#define LEDGER_KNOWN_BY 8    /* fields at most */
#define LEDGER_NEEDS 3       /* the same */

struct ledger_table {
    const char *word;
    enum entity_kind entity;
    const char *known_by[LEDGER_KNOWN_BY]; /* fields that tell items apart; none: all */
    const char *needs[LEDGER_NEEDS];       /* fields that have to be told */
    bool of_builds;                        /* there is a column for the build */
};

const struct ledger_table *ledger_table(enum ledger_kind kind);

/* Whether an item is known by this field. */
bool ledger_knows_by(const struct ledger_table *table, const struct field *field);

/* Whether it has to be told in every line. */
bool ledger_needs(const struct ledger_table *table, const struct field *field);

#endif
