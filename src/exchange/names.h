/*
 * Items by kind and name, found in O(log n): what the names in a file refer to.
 */
#ifndef EXCHANGE_NAMES_H
#define EXCHANGE_NAMES_H

#include "base/arena.h"
#include "model/model.h"

#include <stddef.h>

struct names_row {
    enum entity_kind kind;
    const char *name;
    int64_t key;
};

struct names {
    struct names_row *rows;
    size_t count;
};

/* The shop items of a model that have a name, in the arena (escape armed). The names stay the
 * model's. O(n log n). */
void names_read(struct names *names, struct arena *arena, const struct model *model);

/* The key of an item, of several with one name the smallest; 0 when there is none. */
int64_t names_find(const struct names *names, enum entity_kind kind, const char *name);

#endif
