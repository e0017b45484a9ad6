/*
 * The model: what the maker entered, one workshop and one build of it, as plain structs in key
 * order.
 *
 * Structs, their generic view (entity, field) and the lists of `struct model` all come from the
 * tables in fields.h. The engine reads the structs (`model->boxes.at[i].width`); store, exchange
 * and forms walk the fields.
 *
 * Invariants, checked by model_check:
 *   1  every list is sorted by key; a key is larger than 0, unique in its owner (the workshop, or
 *      the build) over all entities, smaller than the owner's next_key, and never given out again
 *   2  every reference is 0 or the key of an item of its target; one that must be given is not 0
 *   3  every value lies in its field's range; a choice is a word of its vocabulary; a text is UTF-8
 *   4  names of stocks, sets and tools are unique in the workshop, names of boxes and joins in the
 *      build
 *   5  a changed trade value is in the table of model/trade.h, in its range, and changed once
 * A model read from a file or edited by hand may break 2 to 5 (model_add_keyed keeps 1); the engine
 * is given only models that passed.
 */
#ifndef MODEL_MODEL_H
#define MODEL_MODEL_H

#include "base/list.h"
#include "base/money.h"
#include "base/quantity.h"
#include "base/text.h"
#include "model/fields.h"
#include "model/words.h"

#include <stdbool.h>
#include <stdint.h>

/* ---- structs ---- */

#define STORAGE_TEXT const char *
#define STORAGE_DATE const char *
#define STORAGE_LENGTH int64_t
#define STORAGE_COUNT int64_t
#define STORAGE_RATIO int64_t
#define STORAGE_MINUTES int64_t
#define STORAGE_ANGLE int64_t
#define STORAGE_AREA int64_t
#define STORAGE_VOLUME int64_t
#define STORAGE_DENSITY int64_t
#define STORAGE_AREA_MASS int64_t
#define STORAGE_MONEY int64_t
#define STORAGE_FLAG int64_t
#define STORAGE_CHOICE int64_t
#define STORAGE_REF int64_t

#define MODEL_MEMBER(type, name, standard, least, most, extra, help) STORAGE_##type name;

struct workshop {
    FIELDS_OF_workshop(MODEL_MEMBER)
};

struct build {
    int64_t key; /* unique in the store; 0 while there is none */
    FIELDS_OF_build(MODEL_MEMBER)
};

/* struct box { int64_t key; const char *name; int64_t frame; ... }, and so on; no text is NULL. */
#define MODEL_STRUCT(name, list, help) \
    struct name {                      \
        int64_t key;                   \
        FIELDS_OF_##name(MODEL_MEMBER) \
    };
ENTITIES(MODEL_STRUCT)
#undef MODEL_STRUCT
#undef MODEL_MEMBER

#define MODEL_LIST(name, list, help) LIST_OF(struct name) list;

struct model {
    struct arena *arena; /* holds every text and list; not owned */
    struct workshop workshop;
    struct build build;
    ENTITIES(MODEL_LIST)
};
#undef MODEL_LIST

/* ---- the generic view ---- */

enum entity_kind {
#define MODEL_ENUM(name, list, help) ENTITY_##name,
    ENTITIES(MODEL_ENUM)
#undef MODEL_ENUM
        ENTITY_COUNT,
    ENTITY_none = ENTITY_COUNT,
    ENTITY_workshop, /* the two that are single: not in a list */
    ENTITY_build
};

enum field_type {
    FIELD_TEXT,
    FIELD_DATE,
    FIELD_LENGTH,
    FIELD_COUNT,
    FIELD_RATIO,
    FIELD_MINUTES,
    FIELD_ANGLE,
    FIELD_AREA,
    FIELD_VOLUME,
    FIELD_DENSITY,
    FIELD_AREA_MASS,
    FIELD_MONEY,
    FIELD_FLAG,
    FIELD_CHOICE,
    FIELD_REF
};

struct field {
    const char *name;
    enum field_type type;
    size_t offset;    /* in its struct */
    int64_t standard; /* of a new item */
    int64_t least;
    int64_t most;
    const struct words *words; /* CHOICE; else NULL */
    enum entity_kind target;   /* REF; else ENTITY_none */
    const char *help;
};

struct entity {
    const char *name;   /* "box" */
    const char *plural; /* "boxes": key of its array, name of its list */
    const char *help;
    enum entity_kind kind;
    bool in_shop; /* belongs to the workshop, not to a build */
    size_t size;  /* of the struct */
    size_t list;  /* offset of its list in struct model (workshop, build: of the struct itself) */
    const struct field *fields;
    size_t field_count;
};

/* The table of a kind, ENTITY_workshop and ENTITY_build included. Never NULL. */
const struct entity *entity_of(enum entity_kind kind);

/* By name ("box"); NULL when there is none. */
const struct entity *entity_named(const char *name);
const struct field *field_named(const struct entity *entity, const char *name);

/* The entity that a field of the tables belongs to; NULL for any other. */
const struct entity *entity_with_field(const struct field *field);

/* Whether no two items of the kind may bear one name (invariant 4). */
bool entity_has_own_names(enum entity_kind kind);

/* Whether an item goes when the target of this reference goes (see model/fields.h). */
bool field_hangs(const struct field *field);

/* Whether 0 is printed as "": the help says what nothing means. */
bool field_may_be_nothing(const struct field *field);

/* Whether it is a string: TEXT or DATE. Everything else is a whole number. */
bool field_is_text(const struct field *field);

/* The quantity of a numeric field that has one (LENGTH, COUNT, RATIO, ...); QUANTITY_KINDS for the
 * others. */
enum quantity field_quantity(const struct field *field);

int64_t field_whole(const struct field *field, const void *item);
void field_set_whole(const struct field *field, void *item, int64_t value);
const char *field_string(const struct field *field, const void *item);
void field_set_string(const struct field *field, void *item, const char *string); /* not copied */

/* Sets what a new item has: the standard value, "" for a text, nothing for a reference. */
void field_set_standard(const struct field *field, void *item);

bool field_equal(const struct field *field, const void *a, const void *b);

/* An item of a list begins with its key. */
static inline int64_t item_key(const void *item)
{
    return *(const int64_t *)item;
}

static inline void item_set_key(void *item, int64_t key)
{
    *(int64_t *)item = key;
}

/* Of two items of one entity, or of entities with the same fields: whether all fields are equal,
 * keys aside; and taking over all fields, but not the key nor a copy of the texts. */
bool item_equal(const struct entity *entity, const void *a, const void *b);
void item_take_fields(const struct entity *entity, void *to, const void *from);

/* ---- models ---- */

/*
 * Functions that allocate do so in the model's arena. When memory is out and the arena has no
 * escape, model_add and model_add_keyed return NULL, field_read and trade_change FAULT_MEMORY;
 * model_copy, model_duplicate and model_free_name need an escape.
 */

/* An empty model with every field at its standard value; the workshop is called "Workshop", its
 * currency USD. */
void model_init(struct model *model, struct arena *arena);

/* A deep copy into another arena, which must be armed with an escape. The copies share nothing. */
void model_copy(struct model *copy, const struct model *model, struct arena *arena);

/* The list of a kind, and an item by key (NULL when there is none). O(log n). */
struct list *model_list(struct model *model, enum entity_kind kind);
const struct list *model_list_const(const struct model *model, enum entity_kind kind);
void *model_find(struct model *model, enum entity_kind kind, int64_t key);
const void *model_find_const(const struct model *model, enum entity_kind kind, int64_t key);

/* The index of an item in its list; the list's count when there is none. O(log n). */
size_t model_index(const struct model *model, enum entity_kind kind, int64_t key);

/* The item at an index of its list; workshop and build are lists of one. */
size_t model_count(const struct model *model, enum entity_kind kind);
void *model_at(struct model *model, enum entity_kind kind, size_t index);
const void *model_at_const(const struct model *model, enum entity_kind kind, size_t index);

/* Typed: `const struct box *box = MODEL_FIND(model, box, key)`. */
#define MODEL_FIND(model, name, key) \
    ((const struct name *)model_find_const((model), ENTITY_##name, (key)))

/* The key of the first stock of that kind and nature; 0 without any. O(stocks). */
int64_t model_stock_of(const struct model *model, int64_t kind, int64_t nature);

/* Whether an optional join was left out: it sets nothing in its place, and nothing waits for it.
 * O(joins left out). */
bool model_left_out(const struct model *model, int64_t join);

/* A new item with the next key and standard values; it lies at the end of its list. Pointers into
 * that list are stale. */
void *model_add(struct model *model, enum entity_kind kind);

/* `struct box *box = MODEL_ADD(model, box)` */
#define MODEL_ADD(model, name) ((struct name *)model_add((model), ENTITY_##name))

/*
 * The same with a key from a file; the list stays sorted and next_key is raised where needed. NULL
 * when the key is taken (by an item of any entity of the same owner), not larger than 0, or not
 * smaller than FIELDS_LAST_KEY.
 */
void *model_add_keyed(struct model *model, enum entity_kind kind, int64_t key);

/*
 * Takes an item out. Items that hang on it go too, and so on; other references to it are set to 0.
 * Returns how many items went, 0 when there was none with that key. model_remove_count tells
 * without removing. O(items).
 */
size_t model_remove(struct model *model, enum entity_kind kind, int64_t key);
size_t model_remove_count(const struct model *model, enum entity_kind kind, int64_t key);

/*
 * A copy of an item with what hangs on it, and so on, under new keys; references among the copies
 * go to copies. Not copied: what hangs on something else as well that is not copied (a join to
 * another box), and facts (ticks, measures, holes, spend, leftovers). Where names are unique the
 * copy of "A" is "A 2". Returns the new key, 0 when there is no such item.
 */
int64_t model_duplicate(struct model *model, enum entity_kind kind, int64_t key);

/* The name itself, or the first of "A 2", "A 3" that no item of the kind bears; cut to leave room.
 * In the model's arena. */
const char *model_free_name(struct model *model, enum entity_kind kind, const char *name);

/* What an item is called for people: its name where it has one, else "cover of C" or "box 3".
 * Returns buffer. */
#define MODEL_NAME_TEXT 128
char *model_item_name(char buffer[MODEL_NAME_TEXT], const struct model *model,
                      enum entity_kind kind, int64_t key);

/* An item of the kind by its name (its TEXT field "name"); 0 when there is none. */
int64_t model_key_named(const struct model *model, enum entity_kind kind, const char *name);

struct currency model_currency(const struct model *model);
enum units model_units(const struct model *model); /* of the build */

/* ---- fields for people ---- */

/*
 * Reads what was typed for a field and sets it. Units as in quantity_parse (the build's where none
 * is given); money in the workshop's currency, with or without its letters; a flag takes yes, no,
 * true, false; a choice its word; a reference a name, a key or "#" and a key; "" is 0 or "" where
 * that is in range. The text is copied into the model's arena. On a fault the item is unchanged and
 * the note says column and reason, with the range in the maker's units. Faults: as quantity_parse
 * and money_parse; RANGE, MISSING, UNKNOWN (no such word), REFERENCE, DUPLICATE (a name that must
 * be unique), MEMORY.
 */
enum fault field_read(const struct field *field, struct model *model, void *item, const char *text,
                      struct fault_note *note);

/*
 * The value as people read it and field_read takes it, with the unit. A 0 whose help says what
 * nothing means, and a reference to nothing, print as "".
 */
void field_write(const struct field *field, const struct model *model, const void *item,
                 struct text *out);

/* ---- checking ---- */

/*
 * Every broken invariant, in order of entities, items and fields; the note's path is "width of C",
 * or the item's name alone. `tell` may be NULL. Returns how many there are. A build without a key
 * is none: its own fields are not looked at. O(n log n), but quadratic in the items of one kind
 * that must have unique names.
 */
typedef void model_fault_fn(void *context, const struct fault_note *note);
size_t model_check(const struct model *model, model_fault_fn *tell, void *context);

/* The same of one item of a list, and of one field alone. */
bool model_item_holds(const struct model *model, enum entity_kind kind, size_t index);
bool model_field_holds(const struct model *model, const struct field *field, const void *item);

/*
 * Mends a model of which rows are missing or damaged, so that model_check accepts it: wrong fields
 * get the value of a new item, and where that does not help the item goes. Returns how many items,
 * the workshop and the build included, were mended or went. A build that lacks its name is left
 * without one: the caller gives it. Quadratic in the items.
 */
size_t model_mend(struct model *model);

#endif
