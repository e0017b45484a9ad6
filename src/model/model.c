/*
 * The lists of a model, and what they have in common.
 *
 *  1. A list is sorted by key. model_add keeps that by giving out keys that only grow.
 *  2. A key is taken when any list of its owner has it; the owner's next_key is larger than all.
 */
#include "model/model.h"

#include "base/show.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

_Static_assert((int)UNITS_WORD_INCH == (int)UNITS_INCH && (int)UNITS_WORD_MM == (int)UNITS_MM,
               "the words for units stand in the order of enum units");

static void set_standards(const struct entity *entity, void *item)
{
    for (size_t i = 0; i < entity->field_count; i++)
        field_set_standard(&entity->fields[i], item);
}

void model_init(struct model *model, struct arena *arena)
{
    memset(model, 0, sizeof *model);
    model->arena = arena;
    set_standards(entity_of(ENTITY_workshop), &model->workshop);
    set_standards(entity_of(ENTITY_build), &model->build);
    model->workshop.name = "Workshop";
    model->workshop.currency = "USD";
    model->workshop.digits = 2;
}

static void copy_texts(const struct entity *entity, void *item, struct arena *arena)
{
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];
        const char *text;

        if (!field_is_text(field))
            continue;
        text = field_string(field, item);
        field_set_string(field, item, *text ? arena_text(arena, text) : "");
    }
}

static void copy_list(struct model *copy, const struct model *model, enum entity_kind kind)
{
    const struct entity *entity = entity_of(kind);
    const struct list *from = model_list_const(model, kind);
    struct list *to = model_list(copy, kind);

    to->at = NULL;
    to->count = to->room = 0;
    if (from->count == 0)
        return;
    to->at = arena_array(copy->arena, from->count, entity->size);
    memcpy(to->at, from->at, from->count * entity->size);
    to->count = to->room = from->count;
    for (size_t i = 0; i < to->count; i++)
        copy_texts(entity, model_at(copy, kind, i), copy->arena);
}

void model_copy(struct model *copy, const struct model *model, struct arena *arena)
{
    assert(copy != model && arena->escape);
    *copy = *model;
    copy->arena = arena;
    copy_texts(entity_of(ENTITY_workshop), &copy->workshop, arena);
    copy_texts(entity_of(ENTITY_build), &copy->build, arena);
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        copy_list(copy, model, (enum entity_kind)kind);
}

static const struct list *list_of(const struct model *model, const struct entity *entity)
{
    return (const struct list *)(const void *)((const char *)model + entity->list);
}

const struct list *model_list_const(const struct model *model, enum entity_kind kind)
{
    assert(kind < ENTITY_COUNT);
    return list_of(model, entity_of(kind));
}

struct list *model_list(struct model *model, enum entity_kind kind)
{
    assert(kind < ENTITY_COUNT);
    return (struct list *)(void *)((char *)model + entity_of(kind)->list);
}

size_t model_count(const struct model *model, enum entity_kind kind)
{
    return kind < ENTITY_COUNT ? model_list_const(model, kind)->count : 1;
}

const void *model_at_const(const struct model *model, enum entity_kind kind, size_t index)
{
    const struct entity *entity = entity_of(kind);

    assert(index < model_count(model, kind));
    if (kind > ENTITY_COUNT)
        return (const char *)model + entity->list;
    return (const char *)model_list_const(model, kind)->at + index * entity->size;
}

void *model_at(struct model *model, enum entity_kind kind, size_t index)
{
    const struct entity *entity = entity_of(kind);

    assert(index < model_count(model, kind));
    if (kind > ENTITY_COUNT)
        return (char *)model + entity->list;
    return (char *)model_list(model, kind)->at + index * entity->size;
}

static int64_t key_at(const struct list *list, size_t size, size_t index)
{
    return item_key((const char *)list->at + index * size);
}

/* Where a key would be if keys were evenly spaced. In large builds they mostly are, since their
 * boxes were entered or copied alike. */
static size_t guess_place(const struct list *list, size_t size, int64_t key)
{
    int64_t first = list->count ? key_at(list, size, 0) : 0;
    int64_t last = list->count ? key_at(list, size, list->count - 1) : 0;

    if (key < first || key > last || first == last)
        return 0;
    return (size_t)((double)(key - first) * (double)(list->count - 1) / (double)(last - first));
}

/* Where the first item with at least this key is, or would be. */
static size_t find_place(const struct list *list, size_t size, int64_t key)
{
    size_t guess = guess_place(list, size, key);
    size_t low = 0;
    size_t high = list->count;

    assert(guess == 0 || guess < list->count);
    for (size_t i = guess ? guess - 1 : 0; i < high && i <= guess + 1; i++)
        if (key_at(list, size, i) == key)
            return i;
    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (key_at(list, size, middle) < key)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

size_t model_index(const struct model *model, enum entity_kind kind, int64_t key)
{
    const struct entity *entity = entity_of(kind);
    const struct list *list = list_of(model, entity);
    size_t index = find_place(list, entity->size, key);

    assert(kind < ENTITY_COUNT);
    return index < list->count && key_at(list, entity->size, index) == key ? index : list->count;
}

void *model_find(struct model *model, enum entity_kind kind, int64_t key)
{
    size_t index = model_index(model, kind, key);

    return index < model_count(model, kind) ? model_at(model, kind, index) : NULL;
}

const void *model_find_const(const struct model *model, enum entity_kind kind, int64_t key)
{
    size_t index = model_index(model, kind, key);

    return index < model_count(model, kind) ? model_at_const(model, kind, index) : NULL;
}

static int64_t *next_key(struct model *model, const struct entity *entity)
{
    return entity->in_shop ? &model->workshop.next_key : &model->build.next_key;
}

/* A new item at `index`, with its key and standard values; the items from there move up. */
static void *insert(struct model *model, enum entity_kind kind, size_t index, int64_t key)
{
    const struct entity *entity = entity_of(kind);
    struct list *list = model_list(model, kind);
    char *place;

    assert(index <= list->count);
    if (!list_reserve(model->arena, list, entity->size))
        return NULL;
    place = (char *)list->at + index * entity->size;
    memmove(place + entity->size, place, (list->count - index) * entity->size);
    list->count++;
    memset(place, 0, entity->size);
    item_set_key(place, key);
    set_standards(entity, place);
    return place;
}

void *model_add(struct model *model, enum entity_kind kind)
{
    int64_t *next = next_key(model, entity_of(kind));
    void *item;

    assert(*next > 0 && *next <= FIELDS_LAST_KEY);
    item = insert(model, kind, model_count(model, kind), *next);
    if (item)
        ++*next;
    return item;
}

static bool key_is_taken(const struct model *model, bool in_shop, int64_t key)
{
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        if (entity_of((enum entity_kind)kind)->in_shop == in_shop &&
            model_find_const(model, (enum entity_kind)kind, key))
            return true;
    return false;
}

void *model_add_keyed(struct model *model, enum entity_kind kind, int64_t key)
{
    const struct entity *entity = entity_of(kind);
    int64_t *next = next_key(model, entity);
    void *item;

    if (key <= 0 || key >= FIELDS_LAST_KEY || key_is_taken(model, entity->in_shop, key))
        return NULL;
    item =
        insert(model, kind, find_place(model_list(model, kind), entity_of(kind)->size, key), key);
    if (item && *next <= key)
        *next = key + 1;
    assert(!item || (item_key(item) < *next && *next <= FIELDS_LAST_KEY));
    return item;
}

static const struct field *name_field(enum entity_kind kind)
{
    const struct field *field = field_named(entity_of(kind), "name");

    return field && field->type == FIELD_TEXT ? field : NULL;
}

static void blanks_for_underscores(char *word, size_t length)
{
    for (size_t i = 0; i < length; i++)
        if (word[i] == '_')
            word[i] = ' ';
}

/* "cover of C", for an item that has no name but a kind and a box; false for any other. */
static bool item_name_by_box(char buffer[MODEL_NAME_TEXT], const struct model *model,
                             enum entity_kind kind, const void *item)
{
    const struct field *of = field_named(entity_of(kind), "kind");
    const struct field *box_field = field_named(entity_of(kind), "box");
    const struct box *box =
        of && box_field ? MODEL_FIND(model, box, field_whole(box_field, item)) : NULL;
    int64_t word = of ? field_whole(of, item) : -1;

    if (!box || word < 0 || word >= (int64_t)of->words->count)
        return false;
    char safe[MODEL_NAME_TEXT / 2];
    show_into(safe, sizeof safe, box->name);
    snprintf(buffer, MODEL_NAME_TEXT, "%s of %s", of->words->at[word].name, safe);
    blanks_for_underscores(buffer, strlen(of->words->at[word].name));
    return true;
}

char *model_item_name(char buffer[MODEL_NAME_TEXT], const struct model *model,
                      enum entity_kind kind, int64_t key)
{
    const struct field *field = name_field(kind);
    const void *item =
        kind < ENTITY_COUNT ? model_find_const(model, kind, key) : model_at_const(model, kind, 0);

    if (field && item && *field_string(field, item))
        return show_into(buffer, MODEL_NAME_TEXT, field_string(field, item));
    if (item && item_name_by_box(buffer, model, kind, item))
        return buffer;
    snprintf(buffer, MODEL_NAME_TEXT, "%s %" PRId64, entity_of(kind)->name, key);
    blanks_for_underscores(buffer, strlen(buffer));
    return buffer;
}

int64_t model_key_named(const struct model *model, enum entity_kind kind, const char *name)
{
    const struct field *field = name_field(kind);

    for (size_t i = 0; field && kind < ENTITY_COUNT && i < model_count(model, kind); i++)
        if (strcmp(field_string(field, model_at_const(model, kind, i)), name) == 0)
            return item_key(model_at_const(model, kind, i));
    return 0;
}

struct currency model_currency(const struct model *model)
{
    struct currency currency = {.digits = (int)model->workshop.digits};

    snprintf(currency.code, sizeof currency.code, "%.3s", model->workshop.currency);
    return currency;
}

enum units model_units(const struct model *model)
{
    return model->build.units == UNITS_WORD_MM ? UNITS_MM : UNITS_INCH;
}

int64_t model_stock_of(const struct model *model, int64_t kind, int64_t nature)
{
    for (size_t i = 0; i < model->stocks.count; i++)
        if (model->stocks.at[i].kind == kind && model->stocks.at[i].nature == nature)
            return model->stocks.at[i].key;
    return 0;
}

bool model_left_out(const struct model *model, int64_t join)
{
    for (size_t i = 0; i < model->left_outs.count; i++)
        if (model->left_outs.at[i].join == join)
            return true;
    return false;
}
