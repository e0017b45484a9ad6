/*
 * What files of this program hold, beside what the entity tables say; shared by the way out, the
 * way in and the manual page.
 *
 *     {"format": 1, "kind": "build", "build": {...}, "stocks": [...], "boxes": [{"key": 3, ...}]}
 *
 * Shop entities have no keys in files: another workshop gave others. They are known by name.
 */
#ifndef EXCHANGE_FORMAT_H
#define EXCHANGE_FORMAT_H

#include "exchange/exchange.h"
#include "model/model.h"

#include <stdbool.h>

#define FORMAT_NUMBER 1

/* "build" and "workshop": the word behind "kind", and the key of the object with its own fields. */
const char *format_kind_word(enum exchange_kind kind);

/* ENTITY_build or ENTITY_workshop. */
enum entity_kind format_head(enum exchange_kind kind);

/* Whether files of that kind hold items of the entity: a workshop's all that belong to the shop; a
 * build's its own, with the sets, stocks and offers it refers to. */
bool format_holds(enum exchange_kind kind, const struct entity *entity);

/* Whether items of the entity have a "key". */
bool format_has_key(const struct entity *entity);

/* Whether a field is written: not the workshop's next key, as its keys are not. */
bool format_has_field(const struct entity *entity, const struct field *field);

/* Whether an item without the field is whole: a new item's value lies in the field's range. */
bool format_may_lack(const struct field *field);

/* Whether a reference goes by name, to an item of the shop. */
bool format_goes_by_name(const struct field *field);

#endif
