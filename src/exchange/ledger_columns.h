/* What the files of the ledger share. */
#ifndef EXCHANGE_LEDGER_COLUMNS_H
#define EXCHANGE_LEDGER_COLUMNS_H

#include "exchange/ledger.h"

#define LEDGER_BUILD "build"
#define LEDGER_KNOWN_BY 8
#define LEDGER_NEEDS 3

struct ledger_table {
    const char *word;
    enum entity_kind entity;
    const char *known_by[LEDGER_KNOWN_BY]; /* fields; none: all */
    const char *needs[LEDGER_NEEDS];       /* fields that have to be told */
    bool of_builds;                        /* there is a column for the build */
};

const struct ledger_table *ledger_table(enum ledger_kind kind);

/* Whether an item is known by this field. */
bool ledger_knows_by(const struct ledger_table *table, const struct field *field);

/* Whether it has to be told in every line. */
bool ledger_needs(const struct ledger_table *table, const struct field *field);

bool ledger_field_equal(const struct field *field, const void *a, const void *b);

#endif
