/*
 * An attempt to take a file in.
 *
 *  1. All is read into a draft, a copy of the model in an arena of the attempt.
 *  2. Only when nothing was complained about is the draft copied into the model's arena, and the
 *     model assigned, in one piece, at the very end. So every fault leaves the model as it was.
 *  3. Memory that is missing leaves through the escape, to import_run; no one in between holds
 *     anything that is not in an arena.
 */
#include "exchange/import.h"

#include "model/trade.h"

#include <assert.h>
#include <setjmp.h>
#include <stdlib.h>
#include <string.h>

static void read_draft(struct import *import, const struct import_file *file)
{
    struct fault_note note;

    model_copy(&import->draft, import->model, &import->arena);
    import->complaints.arena = &import->arena;
    import->complaints.source = &import->source;
    import->reader = (struct reader){
        .source = &import->source,
        .complaints = &import->complaints,
        .draft = &import->draft,
        .names = &import->names,
    };
    import->first_new = import->draft.workshop.next_key;
    if (source_read(&import->source, &import->arena, file->bytes, file->length, &note)) {
        complain_note(&import->complaints, &note);
        return;
    }
    if (!sheet_read(&import->sheet, &import->source, file->kind, &import->complaints))
        return;
    import_names(import);
    file->fill(import);
}

static void commit(struct import *import)
{
    struct model fresh;

    assert(import->complaints.all.count == 0);
    model_copy(&fresh, &import->draft, import->model->arena);
    *import->model = fresh;
}

static enum fault attempt(struct import *import, const struct import_file *file)
{
    jmp_buf escape;

    if (setjmp(escape))
        return FAULT_MEMORY;
    import->arena.escape = &escape;
    import->model->arena->escape = &escape;
    read_draft(import, file);
    if (import->complaints.all.count == 0)
        commit(import);
    return FAULT_NONE;
}

enum fault import_run(const struct import_file *file, struct model *model, model_fault_fn *tell,
                      void *context)
{
    struct import import = {.model = model};
    jmp_buf *outer = model->arena->escape;
    struct fault_note note;
    enum fault fault;

    arena_init(&import.arena);
    fault = attempt(&import, file);
    model->arena->escape = outer;
    if (!fault) {
        fault = complaints_tell(&import.complaints, tell, context);
    } else if (tell) {
        fault_say_plain(&note, fault);
        tell(context, &note);
    }
    arena_release(&import.arena);
    return fault;
}

void import_names(struct import *import)
{
    names_read(&import->names, &import->arena, &import->draft);
}

/* A wrong word is told when the head is read. */
enum units import_units(const struct import *import)
{
    const struct source_value *head = import->sheet.head;
    const struct source_value *units = head ? reader_member(&import->source, head, "units") : NULL;
    int word = 0;

    if (units && units->kind == SOURCE_STRING)
        word = words_find(&words_units, source_string(&import->source, units));
    return word == UNITS_WORD_MM ? UNITS_MM : UNITS_INCH;
}

void import_judge_value(struct import *import, enum entity_kind kind, void *item,
                        const struct source_value *object)
{
    const struct field *name = field_named(entity_of(kind), "name");
    const struct field *field = field_named(entity_of(kind), "value");
    const char *text = field_string(field, item);
    int trade = trade_find(field_string(name, item));
    struct fault_note note;
    int64_t value;

    if (!*text || !*field_string(name, item))
        return;
    if (trade < 0)
        complain(&import->complaints, reader_member(&import->source, object, "name"), FAULT_UNKNOWN,
                 "no trade value is called \"%.60s\"", field_string(name, item));
    else if (trade_read((enum trade)trade, import_units(import), text, &value, &note))
        complain(&import->complaints, reader_member(&import->source, object, "value"), note.code,
                 "%s", note.why);
    else
        field_set_string(
            field, item,
            trade_text(&import->arena, (enum trade)trade, import_units(import), text, value));
}

static void *read_item(struct import *import, const struct entity *entity,
                       const struct source_value *object)
{
    void *item = arena_alloc(&import->arena, entity->size);

    reader_item(&import->reader, entity, object, item);
    return item;
}

static void add_item(struct import *import, const struct entity *entity, const void *item)
{
    item_take_fields(entity, model_add(&import->draft, entity->kind), item);
}

void import_named(struct import *import, enum entity_kind kind, bool replace)
{
    const struct entity *entity = entity_of(kind);
    const struct field *name = field_named(entity, "name");
    const struct source_value *object = NULL;
    struct import_list list = {.all = {{0}}};

    while ((object = sheet_item(&import->sheet, kind, object))) {
        void *item = read_item(import, entity, object);
        int64_t old = names_find(&import->names, kind, field_string(name, item));

        if (kind == ENTITY_shop_value)
            import_judge_value(import, kind, item, object);
        import_note_name(import, &list, kind, item, object);
        if (old == 0)
            add_item(import, entity, item);
        else if (replace)
            item_take_fields(entity, model_find(&import->draft, kind, old), item);
    }
    import_judge_names(import, &list);
}

void import_offers(struct import *import)
{
    const struct entity *entity = entity_of(ENTITY_offer);
    const struct source_value *object = NULL;

    assert(import->first_new <= import->draft.workshop.next_key);
    while ((object = sheet_item(&import->sheet, ENTITY_offer, object))) {
        const struct offer *offer = read_item(import, entity, object);

        if (offer->stock >= import->first_new)
            add_item(import, entity, offer);
    }
}

/* Items from before stand in front; each is the equal of at most one in the file. */
static bool take_equal(const struct import *import, const struct entity *entity, const void *item,
                       bool *taken, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (taken[i] || !item_equal(entity, model_at_const(&import->draft, entity->kind, i), item))
            continue;
        taken[i] = true;
        return true;
    }
    return false;
}

static int by_key(const void *left, const void *right)
{
    const int64_t *a = left;
    const int64_t *b = right;

    return *a < *b ? -1 : *a > *b;
}

/* The keys of the stocks that the file names, sorted. */
static int64_t *file_stocks(struct import *import, size_t *ret_count)
{
    LIST_OF(int64_t) keys = {{0}};
    const struct source_value *object = NULL;

    while ((object = sheet_item(&import->sheet, ENTITY_stock, object))) {
        const struct source_value *name = reader_member(&import->source, object, "name");

        if (name && name->kind == SOURCE_STRING)
            *LIST_ADD(&import->arena, &keys) =
                names_find(&import->names, ENTITY_stock, source_string(&import->source, name));
    }
    if (keys.count > 0)
        qsort(keys.at, keys.count, sizeof keys.at[0], by_key);
    *ret_count = keys.count;
    return keys.at;
}

/* From the last, so that the indices of those still to be judged hold. */
static void clear_others(struct import *import, const bool *taken, size_t count)
{
    size_t stocks;
    const int64_t *keys = file_stocks(import, &stocks);

    assert(count <= import->draft.offers.count);
    for (size_t i = count; i-- > 0;) {
        const struct offer *offer = &import->draft.offers.at[i];

        if (!taken[i] && stocks > 0 && bsearch(&offer->stock, keys, stocks, sizeof keys[0], by_key))
            list_remove(&import->draft.offers.any, i, sizeof *offer);
    }
}

void import_nameless(struct import *import, enum entity_kind kind, bool clear)
{
    const struct entity *entity = entity_of(kind);
    size_t count = model_count(&import->draft, kind);
    bool *taken = ARENA_MANY(&import->arena, bool, count);
    const struct source_value *object = NULL;

    assert(!clear || kind == ENTITY_offer);
    while ((object = sheet_item(&import->sheet, kind, object))) {
        const void *item = read_item(import, entity, object);

        if (!take_equal(import, entity, item, taken, count))
            add_item(import, entity, item);
    }
    if (clear)
        clear_others(import, taken, count);
}

void import_note_name(struct import *import, struct import_list *list, enum entity_kind kind,
                      const void *item, const struct source_value *object)
{
    const char *name = field_string(field_named(entity_of(kind), "name"), item);

    if (*name)
        *LIST_ADD(&import->arena, &list->all) =
            (struct import_name){.kind = kind, .name = name, .object = object};
}

/* Values stand in memory in the order of the file. */
static int by_name(const void *left, const void *right)
{
    const struct import_name *a = left;
    const struct import_name *b = right;
    int order = strcmp(a->name, b->name);

    if (a->kind != b->kind)
        return a->kind < b->kind ? -1 : 1;
    if (order != 0)
        return order;
    return a->object < b->object ? -1 : a->object > b->object;
}

void import_judge_names(struct import *import, struct import_list *list)
{
    struct import_name *all = list->all.at;

    if (list->all.count < 2)
        return;
    qsort(all, list->all.count, sizeof *all, by_name);
    for (size_t i = 1; i < list->all.count; i++)
        if (all[i].kind == all[i - 1].kind && strcmp(all[i].name, all[i - 1].name) == 0)
            complain(&import->complaints, reader_member(&import->source, all[i].object, "name"),
                     FAULT_DUPLICATE, "another of \"%s\" is called \"%.60s\"",
                     entity_of(all[i].kind)->plural, all[i].name);
}
