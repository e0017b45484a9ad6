/*
 * Taking items out and copying them, with what hangs on them.
 *
 *  1. What an item hangs on stands earlier in the order of entities (entity.c), so "does it hang on
 *     the root?" ends, and taking out from the last entity to the first never loses the answer.
 *  2. Copying goes from the first entity to the last: what a part hangs on has its copy by then.
 */
#include "model/model.h"

#include "base/utf8.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

/* ---- taking out ---- */

struct root {
    const struct model *model;
    enum entity_kind kind;
    int64_t key;
};

static bool goes(const struct root *root, enum entity_kind kind, const void *item);

static bool refers_to_goer(const struct root *root, const struct field *field, const void *item)
{
    int64_t key = field_whole(field, item);
    const void *target;

    if (key == 0)
        return false;
    target = model_find_const(root->model, field->target, key);
    return target && goes(root, field->target, target);
}

/* True for the root and for all that hangs on it, over however many others. */
static bool goes(const struct root *root, enum entity_kind kind, const void *item)
{
    const struct entity *entity = entity_of(kind);

    if (kind == root->kind)
        return item_key(item) == root->key;
    for (size_t i = 0; i < entity->field_count; i++)
        if (field_hangs(&entity->fields[i]) && refers_to_goer(root, &entity->fields[i], item))
            return true;
    return false;
}

size_t model_remove_count(const struct model *model, enum entity_kind kind, int64_t key)
{
    const struct root root = {model, kind, key};
    size_t count = 0;

    if (!model_find_const(model, kind, key))
        return 0;
    for (int each = (int)kind; each < ENTITY_COUNT; each++)
        for (size_t i = 0; i < model_count(model, (enum entity_kind)each); i++)
            count += goes(&root, (enum entity_kind)each,
                          model_at_const(model, (enum entity_kind)each, i));
    return count;
}

static void clear_references(struct model *model, const struct root *root, enum entity_kind kind)
{
    const struct entity *entity = entity_of(kind);

    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (field->type != FIELD_REF || field_hangs(field))
            continue;
        for (size_t j = 0; j < model_count(model, kind); j++)
            if (refers_to_goer(root, field, model_at_const(model, kind, j)))
                field_set_whole(field, model_at(model, kind, j), 0);
    }
}

static size_t take_out(struct model *model, const struct root *root, enum entity_kind kind)
{
    size_t before = model_count(model, kind);

    assert(kind >= root->kind); /* invariant 1: nothing before it hangs on it */
    for (size_t i = before; i-- > 0;)
        if (goes(root, kind, model_at_const(model, kind, i)))
            list_remove(model_list(model, kind), i, entity_of(kind)->size);
    return before - model_count(model, kind);
}

size_t model_remove(struct model *model, enum entity_kind kind, int64_t key)
{
    const struct root root = {model, kind, key};
    size_t count = 0;

    assert(kind < ENTITY_COUNT);
    if (!model_find_const(model, kind, key))
        return 0;
    for (int each = 0; each <= ENTITY_build; each++)
        if (each != ENTITY_COUNT)
            clear_references(model, &root, (enum entity_kind)each);
    for (int each = ENTITY_COUNT - 1; each >= (int)kind; each--)
        count += take_out(model, &root, (enum entity_kind)each);
    return count;
}

/* ---- copying ---- */

struct twin {
    enum entity_kind kind;
    int64_t original;
    int64_t copy;
};

struct twins {
    struct model *model;
    bool in_shop;
    LIST_OF(struct twin) list;
};

/* What was taken, paid or lies on the shelf happened once: a copy of a box has not been cut. */
static bool is_fact(enum entity_kind kind)
{
    /* What was taken stands at the end of the entities: see fields.h. */
    return kind == ENTITY_past_price || kind == ENTITY_flaw || kind == ENTITY_leftover ||
           kind == ENTITY_shop_spend || kind == ENTITY_spend || kind >= ENTITY_tick;
}

static int64_t twin_of(const struct twins *twins, enum entity_kind kind, int64_t original)
{
    for (size_t i = 0; i < twins->list.count; i++)
        if (twins->list.at[i].kind == kind && twins->list.at[i].original == original)
            return twins->list.at[i].copy;
    return 0;
}

/* A part hangs on something that is copied, and on nothing of this owner that is not: a join to a
 * box that stays alone is none. */
static bool is_part(const struct twins *twins, const struct entity *entity, const void *item)
{
    bool found = false;

    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (!field_hangs(field) || field_whole(field, item) == 0 ||
            entity_of(field->target)->in_shop != twins->in_shop)
            continue;
        if (twin_of(twins, field->target, field_whole(field, item)) == 0)
            return false;
        found = true;
    }
    return found;
}

static void turn_references(const struct twins *twins, const struct entity *entity, void *item)
{
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];
        int64_t twin;

        if (field->type != FIELD_REF)
            continue;
        twin = twin_of(twins, field->target, field_whole(field, item));
        if (twin)
            field_set_whole(field, item, twin);
    }
}

/* Bytes of the first `most` characters. */
static size_t leading_bytes(const char *string, size_t most)
{
    size_t length = strlen(string);
    size_t bytes = 0;
    unsigned code;

    while (most-- > 0 && bytes < length)
        bytes += (size_t)utf8_next(string + bytes, length - bytes, &code);
    return bytes;
}

const char *model_free_name(struct model *model, enum entity_kind kind, const char *name)
{
    size_t most = (size_t)field_named(entity_of(kind), "name")->most;
    const char *candidate = name;

    assert(model->arena->escape);
    for (int number = 2; model_key_named(model, kind, candidate); number++) {
        int digits = snprintf(NULL, 0, " %d", number);
        size_t bytes = leading_bytes(name, most - (size_t)digits);

        assert((size_t)digits < most);
        candidate = arena_format(model->arena, "%.*s %d", (int)bytes, name, number);
    }
    return candidate;
}

static int64_t copy_item(struct twins *twins, enum entity_kind kind, int64_t key)
{
    struct model *model = twins->model;
    const struct entity *entity = entity_of(kind);
    void *copy = model_add(model, kind);
    int64_t new_key = item_key(copy);
    struct twin *twin;

    memcpy(copy, model_find_const(model, kind, key), entity->size);
    item_set_key(copy, new_key);
    turn_references(twins, entity, copy);
    if (entity_has_own_names(kind)) {
        const struct field *field = field_named(entity, "name");

        field_set_string(field, copy, model_free_name(model, kind, field_string(field, copy)));
    }
    twin = LIST_ADD(model->arena, &twins->list);
    *twin = (struct twin){kind, key, new_key};
    return new_key;
}

static void copy_parts(struct twins *twins, enum entity_kind kind)
{
    const struct entity *entity = entity_of(kind);
    size_t count = model_count(twins->model, kind);

    if (entity->in_shop != twins->in_shop || is_fact(kind))
        return;
    for (size_t i = 0; i < count; i++) {
        const void *item = model_at_const(twins->model, kind, i);

        if (is_part(twins, entity, item))
            copy_item(twins, kind, item_key(item));
    }
}

int64_t model_duplicate(struct model *model, enum entity_kind kind, int64_t key)
{
    struct twins twins = {.model = model, .in_shop = entity_of(kind)->in_shop};
    int64_t copy;

    assert(kind < ENTITY_COUNT && model->arena->escape);
    if (!model_find_const(model, kind, key))
        return 0;
    copy = copy_item(&twins, kind, key);
    for (int each = (int)kind + 1; each < ENTITY_COUNT; each++)
        copy_parts(&twins, (enum entity_kind)each);
    return copy;
}
