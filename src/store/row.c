/*
 * Rows and items: the statements of every table, and the binding of an item's fields, both made
 * from the entity tables.
 *
 * The parameters of every statement begin with the key columns (build and key, or key alone), and
 * the fields follow in the order of the table; so one binding serves all verbs.
 */
#include "store/internal.h"

#include "base/text.h"

#include <assert.h>

bool row_is_of_build(const struct entity *entity)
{
    return entity->kind < ENTITY_COUNT && !entity->in_shop;
}

static int key_columns(const struct entity *entity)
{
    return row_is_of_build(entity) ? 2 : 1;
}

/* All of a build's rows, all of a shop table's, or the one that is asked for. */
static void write_select(struct text *sql, const struct entity *entity)
{
    text_add(sql, "SELECT key");
    for (size_t i = 0; i < entity->field_count; i++)
        text_format(sql, ", \"%s\"", entity->fields[i].name);
    text_format(sql, " FROM \"%s\"", entity->name);
    if (row_is_of_build(entity))
        text_add(sql, " WHERE build = ?1");
    else if (entity->kind >= ENTITY_COUNT)
        text_add(sql, " WHERE key = ?1");
    text_add(sql, " ORDER BY key");
}

static void write_insert(struct text *sql, const struct entity *entity)
{
    int parameters = key_columns(entity) + (int)entity->field_count;

    text_format(sql, "INSERT INTO \"%s\" (%skey", entity->name,
                row_is_of_build(entity) ? "build, " : "");
    for (size_t i = 0; i < entity->field_count; i++)
        text_format(sql, ", \"%s\"", entity->fields[i].name);
    text_add(sql, ") VALUES (?1");
    for (int i = 2; i <= parameters; i++)
        text_format(sql, ", ?%d", i);
    text_add_char(sql, ')');
}

static void write_where(struct text *sql, const struct entity *entity)
{
    text_add(sql, row_is_of_build(entity) ? " WHERE build = ?1 AND key = ?2" : " WHERE key = ?1");
}

static void write_update(struct text *sql, const struct entity *entity)
{
    text_format(sql, "UPDATE \"%s\" SET", entity->name);
    for (size_t i = 0; i < entity->field_count; i++)
        text_format(sql, "%s \"%s\" = ?%d", i > 0 ? "," : "", entity->fields[i].name,
                    key_columns(entity) + (int)i + 1);
    write_where(sql, entity);
}

static void write_delete(struct text *sql, const struct entity *entity)
{
    text_format(sql, "DELETE FROM \"%s\"", entity->name);
    write_where(sql, entity);
}

static void (*const writers[ROW_VERBS])(struct text *, const struct entity *) = {
    [ROW_SELECT] = write_select,
    [ROW_INSERT] = write_insert,
    [ROW_UPDATE] = write_update,
    [ROW_DELETE] = write_delete,
};

enum fault row_statement(struct store *store, const struct entity *entity, enum row_verb verb,
                         sqlite3_stmt **ret_statement, struct fault_note *note)
{
    sqlite3_stmt **slot = &store->rows[entity->kind][verb];
    enum fault fault = FAULT_NONE;
    struct text sql;

    assert(verb < ROW_VERBS);
    if (!*slot) {
        text_init(&sql);
        writers[verb](&sql, entity);
        fault = text_failed(&sql) ? fault_say_plain(note, FAULT_MEMORY)
                                  : store_prepare(store, text_string(&sql), slot, note);
        text_release(&sql);
    }
    if (!fault)
        *ret_statement = *slot;
    return fault;
}

static void bind_field(struct binder *binder, const struct field *field, const void *item)
{
    if (field_is_text(field)) {
        bind_string(binder, field_string(field, item));
        return;
    }
    int64_t value = field_whole(field, item);
    if (field->type == FIELD_REF)
        bind_reference(binder, value);
    else if (field->type == FIELD_CHOICE)
        bind_string(binder, field->words->at[value].name); /* check_choices has seen it */
    else
        bind_whole(binder, value);
}

/* A choice is written as its word, so one without a word is found before the row is. */
static enum fault check_choices(const struct entity *entity, const void *item,
                                struct fault_note *note)
{
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (field->type != FIELD_CHOICE)
            continue;
        int64_t value = field_whole(field, item);
        if (value < 0 || (size_t)value >= field->words->count)
            return fault_say(note, FAULT_RANGE, "%s of a %s is no word of its vocabulary",
                             field->name, entity->name);
    }
    return FAULT_NONE;
}

enum fault row_write(struct store *store, const struct entity *entity, enum row_verb verb,
                     int64_t build, const void *item, struct fault_note *note)
{
    sqlite3_stmt *statement;
    struct binder binder;
    enum fault fault = check_choices(entity, item, note);

    assert(verb != ROW_SELECT && store->depth > 0);
    if (!fault)
        fault = row_statement(store, entity, verb, &statement, note);
    if (fault)
        return fault;
    binder = binder_start(statement);
    if (row_is_of_build(entity))
        bind_whole(&binder, build);
    bind_whole(&binder, entity->kind == ENTITY_workshop ? 1 : item_key(item));
    for (size_t i = 0; i < entity->field_count && verb != ROW_DELETE; i++)
        bind_field(&binder, &entity->fields[i], item);
    fault = binder_run(store, &binder, note);
    if (!fault && sqlite3_changes(store->db) != 1)
        fault = fault_say(note, FAULT_CHANGED, "a %s is not in the file any more", entity->name);
    return fault;
}
