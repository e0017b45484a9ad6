/*
 * The usual edits: a field, a deletion, a copy, a trade value, an import. Each is a change run by
 * desk_edit.
 */
#include "desk/internal.h"

#include "base/show.h"
#include "exchange/exchange.h"

#include <stdarg.h>
#include <stdio.h>

void desk_label(char label[STORE_LABEL], const char *format, ...)
{
    char whole[2 * STORE_LABEL + MODEL_NAME_TEXT];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(whole, sizeof whole, format, arguments);
    va_end(arguments);
    show_into(label, STORE_LABEL, whole);
}

/* ---- a field ---- */

static void *draft_item(struct model *draft, enum entity_kind kind, int64_t key)
{
    if (kind == ENTITY_workshop)
        return &draft->workshop;
    if (kind == ENTITY_build)
        return &draft->build;
    return model_find(draft, kind, key);
}

enum fault desk_field_change(struct model *draft, void *context, struct fault_note *note)
{
    const struct desk_field *change = context;
    const struct entity *entity = entity_of(change->kind);
    const struct field *field = field_named(entity, change->field);
    if (!field)
        return fault_say(note, FAULT_UNKNOWN, "a %s has no field \"%s\"", entity->name,
                         change->field);
    void *item = draft_item(draft, change->kind, change->key);
    if (!item)
        return fault_say(note, FAULT_UNKNOWN, "there is no %s %lld", entity->name,
                         (long long)change->key);
    return field_read(field, draft, item, change->text, note);
}

enum fault desk_set(struct desk *desk, enum entity_kind kind, int64_t key, const char *field,
                    const char *text, struct fault_note *note)
{
    char name[MODEL_NAME_TEXT];
    char label[STORE_LABEL];
    model_item_name(name, desk_model(desk), kind, key);
    desk_label(label, "%s of %s", field, name);
    struct desk_field change = {kind, key, field, text};
    return desk_edit(desk, label, desk_field_change, &change, note);
}

/* ---- deleting ---- */

struct deletion {
    enum entity_kind kind;
    int64_t key;
};

static enum fault change_delete(struct model *draft, void *context, struct fault_note *note)
{
    const struct deletion *deletion = context;
    if (model_remove(draft, deletion->kind, deletion->key) == 0)
        return fault_say(note, FAULT_UNKNOWN, "there is no %s %lld",
                         entity_of(deletion->kind)->name, (long long)deletion->key);
    return FAULT_NONE;
}

enum fault desk_delete(struct desk *desk, enum entity_kind kind, int64_t key,
                       struct fault_note *note)
{
    char name[MODEL_NAME_TEXT];
    char label[STORE_LABEL];
    model_item_name(name, desk_model(desk), kind, key);
    desk_label(label, "delete %s", name);
    struct deletion deletion = {kind, key};
    return desk_edit(desk, label, change_delete, &deletion, note);
}

static const char *build_name(struct desk *desk, int64_t build)
{
    const struct store_build *builds;
    size_t count;
    if (desk_builds(desk, &builds, &count, NULL))
        return "";
    for (size_t i = 0; i < count; i++) {
        if (builds[i].key == build)
            return builds[i].name;
    }
    return "";
}

enum fault desk_delete_build(struct desk *desk, int64_t build, struct fault_note *note)
{
    char label[STORE_LABEL];
    desk_label(label, "delete build %s", build_name(desk, build));
    desk_abandon(desk);
    enum fault fault = store_delete_build(desk->store, build, label, note);
    if (fault || desk->state->model.build.key != build)
        return fault;
    return desk_take_up(desk, 0, note);
}

/* ---- copying ---- */

struct duplication {
    enum entity_kind kind;
    int64_t key;
};

static enum fault change_duplicate(struct model *draft, void *context, struct fault_note *note)
{
    const struct duplication *duplication = context;
    if (!model_duplicate(draft, duplication->kind, duplication->key))
        return fault_say(note, FAULT_REFUSED, "this cannot be copied");
    return FAULT_NONE;
}

enum fault desk_duplicate(struct desk *desk, enum entity_kind kind, int64_t key,
                          struct fault_note *note)
{
    char name[MODEL_NAME_TEXT];
    char label[STORE_LABEL];
    model_item_name(name, desk_model(desk), kind, key);
    desk_label(label, "copy of %s", name);
    struct duplication duplication = {kind, key};
    return desk_edit(desk, label, change_duplicate, &duplication, note);
}

/* ---- trade values ---- */

struct trade_edit {
    enum trade_origin where;
    const char *key;
    const char *text;
};

static enum fault change_trade(struct model *draft, void *context, struct fault_note *note)
{
    const struct trade_edit *edit = context;
    return trade_change(draft, edit->where, edit->key, edit->text, note);
}

enum fault desk_trade(struct desk *desk, enum trade_origin where, const char *key, const char *text,
                      struct fault_note *note)
{
    char label[STORE_LABEL];
    desk_label(label, "trade value %s", key);
    struct trade_edit edit = {where, key, text};
    return desk_edit(desk, label, change_trade, &edit, note);
}

/* ---- import ---- */

struct import {
    const char *bytes;
    size_t length;
    model_fault_fn *tell;
    void *context;
};

static enum fault change_import_build(struct model *draft, void *context, struct fault_note *note)
{
    const struct import *import = context;
    enum fault fault =
        exchange_build_in(import->bytes, import->length, draft, import->tell, import->context);
    return fault ? fault_say(note, fault, "the file was not taken in") : FAULT_NONE;
}

static enum fault change_import_shop(struct model *draft, void *context, struct fault_note *note)
{
    const struct import *import = context;
    enum fault fault =
        exchange_shop_in(import->bytes, import->length, draft, import->tell, import->context);
    return fault ? fault_say(note, fault, "the file was not taken in") : FAULT_NONE;
}

enum fault desk_import(struct desk *desk, const char *bytes, size_t length, model_fault_fn *tell,
                       void *context, struct fault_note *note)
{
    struct import import = {bytes, length, tell, context};
    struct fault_note why;
    switch (exchange_kind_of(bytes, length, &why)) {
    case EXCHANGE_BUILD:
        return desk_new_build(desk, "import of a build", change_import_build, &import, note);
    case EXCHANGE_WORKSHOP:
        return desk_edit(desk, "import of a workshop", change_import_shop, &import, note);
    case EXCHANGE_NEITHER:
        break;
    }
    if (tell)
        tell(context, &why);
    if (note)
        *note = why;
    return why.code;
}
