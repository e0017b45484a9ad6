/*
 * Only the workshop and one build are open at a time, so what is deleted from the workshop may
 * still be in use in a build that nobody looks at. SQLite then refuses the commit without saying
 * where; this finds a name to say.
 */
#include "store/internal.h"

#include "base/text.h"

static void write_query(struct text *sql, const struct entity *entity, const struct field *field)
{
    bool is_build = entity->kind == ENTITY_build;

    text_format(sql, "SELECT b.name FROM \"%s\" u JOIN build b ON b.key = u.%s", entity->name,
                is_build ? "key" : "build");
    text_format(sql, " WHERE u.\"%s\" IS NOT NULL", field->name);
    text_format(sql, " AND u.\"%s\" NOT IN (SELECT key FROM \"%s\") LIMIT 1", field->name,
                entity_of(field->target)->name);
}

/* REFERENCE and a note where a build uses what is gone through this field; else NONE. */
static enum fault say_user(struct store *store, const struct entity *entity,
                           const struct field *field, struct fault_note *note)
{
    sqlite3_stmt *statement = NULL;
    const char *name;
    struct text sql;
    enum fault fault = FAULT_NONE;

    text_init(&sql);
    write_query(&sql, entity, field);
    if (!text_failed(&sql) && !store_prepare(store, text_string(&sql), &statement, NULL) &&
        sqlite3_step(statement) == SQLITE_ROW && !column_string(statement, 0, &name, NULL))
        fault = fault_say(note, FAULT_REFERENCE, "the build \"%s\" still uses this %s", name,
                          entity_of(field->target)->name);
    sqlite3_finalize(statement);
    text_release(&sql);
    return fault;
}

static enum fault say_users(struct store *store, enum entity_kind kind, struct fault_note *note)
{
    const struct entity *entity = entity_of(kind);
    enum fault fault = FAULT_NONE;

    for (size_t i = 0; i < entity->field_count && !fault; i++) {
        const struct field *field = &entity->fields[i];

        if (field->type == FIELD_REF && entity_of(field->target)->in_shop)
            fault = say_user(store, entity, field, note);
    }
    return fault;
}

enum fault say_still_used(struct store *store, struct fault_note *note)
{
    enum fault fault = say_users(store, ENTITY_build, note);

    for (int kind = 0; kind < ENTITY_COUNT && !fault; kind++)
        if (row_is_of_build(entity_of((enum entity_kind)kind)))
            fault = say_users(store, (enum entity_kind)kind, note);
    return fault ? fault
                 : fault_say(note, FAULT_REFERENCE, "something that is in use would be gone");
}
