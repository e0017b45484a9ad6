/*
 * A build in. First what comes with it from another workshop, so that references by name find it;
 * then the build's own items, twice over: all keys first, so that references may point forward,
 * then the fields.
 */
#include "exchange/import.h"

#include "exchange/format.h"

#include <inttypes.h>
#include <stdlib.h>

struct row {
    int64_t key; /* 0 when it has none that can be used */
    enum entity_kind kind;
    const struct source_value *object;
};

struct rows {
    LIST_OF(struct row) all;
};

static void list_rows(struct import *import, struct rows *rows, enum entity_kind kind)
{
    const struct source_value *object = NULL;

    while ((object = sheet_item(&import->sheet, kind, object))) {
        const struct source_value *key = reader_member(&import->source, object, "key");
        struct row *row = LIST_ADD(&import->arena, &rows->all);

        *row = (struct row){.kind = kind, .object = object};
        if (key)
            row->key = reader_key(&import->reader, key);
        else
            complain_missing(&import->complaints, object, "key",
                             "a whole number that no other item of the build has");
    }
}

/* Keys in order, so that each item is added at the end of its list; of two with one key the one
 * that stands first in the file has it. */
static int by_key(const void *left, const void *right)
{
    const struct row *a = left;
    const struct row *b = right;

    if (a->key != b->key)
        return a->key < b->key ? -1 : 1;
    return a->object < b->object ? -1 : a->object > b->object;
}

static void add_rows(struct import *import, struct rows *rows)
{
    for (size_t i = 0; i < rows->all.count; i++) {
        struct row *row = &rows->all.at[i];

        if (row->key == 0 || model_add_keyed(&import->draft, row->kind, row->key))
            continue;
        complain(&import->complaints, reader_member(&import->source, row->object, "key"),
                 FAULT_DUPLICATE, "another item of this build has the key %" PRId64, row->key);
        row->key = 0;
    }
}

static void read_rows(struct import *import, const struct rows *rows)
{
    struct import_list names = {.all = {{0}}};

    for (size_t i = 0; i < rows->all.count; i++) {
        const struct row *row = &rows->all.at[i];
        const struct entity *entity = entity_of(row->kind);
        void *item = row->key > 0 ? model_find(&import->draft, row->kind, row->key)
                                  : arena_alloc(&import->arena, entity->size);

        reader_item(&import->reader, entity, row->object, item);
        if (row->kind == ENTITY_build_value)
            import_judge_value(import, row->kind, item, row->object);
        if (entity_has_own_names(row->kind) || row->kind == ENTITY_build_value)
            import_note_name(import, &names, row->kind, item, row->object);
    }
    import_judge_names(import, &names);
}

/* The build's next key as the file says it, before items with larger ones raised it. */
static void check_next_key(struct import *import, int64_t wanted)
{
    const struct source_value *value = NULL;

    if (import->sheet.head)
        value = reader_member(&import->source, import->sheet.head, "next_key");
    if (value && wanted < import->draft.build.next_key)
        complain(&import->complaints, value, FAULT_RANGE,
                 "the next key must be larger than every key, so at least %" PRId64,
                 import->draft.build.next_key);
}

static void fill_build(struct import *import)
{
    struct rows rows = {.all = {{0}}};
    int64_t wanted;

    import->draft.build.units = import_units(import);
    import_named(import, ENTITY_set, false);
    import_named(import, ENTITY_supplier, false);
    import_named(import, ENTITY_stock, false);
    import_names(import);
    import_offers(import);
    if (import->sheet.head)
        reader_item(&import->reader, entity_of(ENTITY_build), import->sheet.head,
                    &import->draft.build);
    wanted = import->draft.build.next_key;
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        if (format_has_key(entity_of((enum entity_kind)kind)))
            list_rows(import, &rows, (enum entity_kind)kind);
    if (rows.all.count > 0)
        qsort(rows.all.at, rows.all.count, sizeof rows.all.at[0], by_key);
    add_rows(import, &rows);
    read_rows(import, &rows);
    check_next_key(import, wanted);
}

enum fault exchange_build_in(const char *bytes, size_t length, struct model *model,
                             model_fault_fn *tell, void *context)
{
    const struct import_file file = {bytes, length, EXCHANGE_BUILD, fill_build};

    return import_run(&file, model, tell, context);
}
