/*
 * Rows to items. The model is made whole in the arena before the caller's is touched. When memory
 * runs out the arena leaves read_model by an escape; load_rows then closes what was open.
 */
#include "store/internal.h"

#include <assert.h>

struct load {
    struct store *store;
    int64_t build;
    struct model model;
    struct arena *arena;
    size_t *lost; /* counts rows that cannot be read and are left out; NULL: they are faults */
    struct fault_note *note;
    enum fault fault;
};

/* Where rows may be left out: takes a row that is damaged for lost, and counts it. False for any
 * other fault, and where each is one. */
static bool leave_out(const struct load *load, enum fault fault)
{
    if (fault != FAULT_DAMAGED || !load->lost)
        return false;
    ++*load->lost;
    return true;
}

static enum fault say_damaged(struct load *load, const struct field *field)
{
    return fault_say(load->note, FAULT_DAMAGED, "%s is not a value that can stand there",
                     field->name);
}

static enum fault read_string(struct load *load, sqlite3_stmt *statement, int column,
                              const struct field *field, void *item)
{
    const char *string;
    int64_t value = 0;
    enum fault fault = column_string(statement, column, &string, load->note);

    if (!fault && field->type == FIELD_CHOICE)
        fault = store_read_word(load->store, field->words, field->name, string, &value, load->note);
    if (fault)
        return fault;
    if (field->type == FIELD_CHOICE)
        field_set_whole(field, item, value);
    else
        field_set_string(field, item, string[0] ? arena_text(load->arena, string) : "");
    return FAULT_NONE;
}

static enum fault read_field(struct load *load, sqlite3_stmt *statement, int column,
                             const struct field *field, void *item)
{
    int type;

    if (field_is_text(field) || field->type == FIELD_CHOICE)
        return read_string(load, statement, column, field, item);
    type = sqlite3_column_type(statement, column);
    if (type != SQLITE_INTEGER && !(type == SQLITE_NULL && field->type == FIELD_REF))
        return say_damaged(load, field);
    field_set_whole(field, item, sqlite3_column_int64(statement, column));
    return FAULT_NONE;
}

static enum fault read_item(struct load *load, sqlite3_stmt *statement, const struct entity *entity,
                            void *item)
{
    enum fault fault = FAULT_NONE;

    assert(sqlite3_column_count(statement) == (int)entity->field_count + 1);
    if (entity->kind != ENTITY_workshop)
        item_set_key(item, sqlite3_column_int64(statement, 0));
    for (size_t i = 0; i < entity->field_count && !fault; i++)
        fault = read_field(load, statement, (int)i + 1, &entity->fields[i], item);
    if (fault)
        fault_at(load->note, "%s", entity->name);
    return fault;
}

/* Each row is read into the place behind the last item, which counts once the row was good. */
static enum fault read_list(struct load *load, sqlite3_stmt *statement, const struct entity *entity)
{
    struct list *list = model_list(&load->model, entity->kind);
    enum fault fault;
    bool row = false;

    while (!(fault = store_step(load->store, statement, &row, load->note)) && row) {
        list_reserve(load->arena, list, entity->size);
        fault = read_item(load, statement, entity, (char *)list->at + list->count * entity->size);
        if (!fault)
            list->count++;
        else if (!leave_out(load, fault))
            return fault;
    }
    return leave_out(load, fault) ? FAULT_NONE : fault;
}

static enum fault read_single(struct load *load, sqlite3_stmt *statement,
                              const struct entity *entity)
{
    bool row = false;
    enum fault fault = store_step(load->store, statement, &row, load->note);

    if (fault)
        return fault;
    if (row)
        return read_item(load, statement, entity, model_at(&load->model, entity->kind, 0));
    return entity->kind == ENTITY_build
               ? fault_say(load->note, FAULT_MISSING, "this build is not there any more")
               : fault_say(load->note, FAULT_DAMAGED, "the workshop is missing in the file");
}

static enum fault read_table(struct load *load, enum entity_kind kind)
{
    const struct entity *entity = entity_of(kind);
    sqlite3_stmt *statement;
    enum fault fault = row_statement(load->store, entity, ROW_SELECT, &statement, load->note);

    if (fault)
        return fault;
    if (row_is_of_build(entity) || kind == ENTITY_build)
        sqlite3_bind_int64(statement, 1, load->build);
    if (kind == ENTITY_workshop)
        sqlite3_bind_int64(statement, 1, 1);
    fault = kind < ENTITY_COUNT ? read_list(load, statement, entity)
                                : read_single(load, statement, entity);
    sqlite3_reset(statement);
    return leave_out(load, fault) ? FAULT_NONE : fault;
}

/* Holds nothing: the arena may leave it by its escape. */
static void read_model(void *context)
{
    struct load *load = context;

    model_init(&load->model, load->arena);
    load->fault = read_table(load, ENTITY_workshop);
    if (!load->fault && load->build > 0)
        load->fault = read_table(load, ENTITY_build);
    for (int kind = 0; kind < ENTITY_COUNT && !load->fault; kind++)
        if (load->build > 0 || entity_of((enum entity_kind)kind)->in_shop)
            load->fault = read_table(load, (enum entity_kind)kind);
}

/* A read that the escape cut short left its statement open. */
static void reset_selects(struct store *store)
{
    for (int kind = 0; kind <= ENTITY_build; kind++)
        sqlite3_reset(store->rows[kind][ROW_SELECT]);
}

enum fault load_rows(struct store *store, int64_t build, struct model *model, struct arena *arena,
                     size_t *lost, struct fault_note *note)
{
    struct load load = {store, build, .arena = arena, .lost = lost, .note = note};
    enum fault fault = store_begin(store, __func__, note);

    if (fault)
        return fault;
    if (!arena_try(arena, read_model, &load))
        load.fault = fault_say_plain(note, FAULT_MEMORY);
    fault = load.fault;
    reset_selects(store);
    if (lost) /* a damaged file cannot be committed to, be it nothing */
        store_end(store, FAULT_DAMAGED, NULL);
    else
        fault = store_end(store, fault, note);
    if (!fault)
        *model = load.model;
    return fault;
}

enum fault store_peek(struct store *store, int64_t build, struct model *model, struct arena *arena,
                      struct fault_note *note)
{
    return load_rows(store, build, model, arena, NULL, note);
}

enum fault store_load(struct store *store, int64_t build, struct model *model, struct arena *arena,
                      struct fault_note *note)
{
    int64_t version = 0;
    enum fault fault = store_begin(store, __func__, note);

    if (fault)
        return fault;
    fault = store_peek(store, build, model, arena, note);
    if (!fault)
        fault = store_data_version(store, &version, note);
    fault = store_end(store, fault, note);
    if (!fault)
        store->seen = version;
    return fault;
}
