/*
 * The difference of two models as rows. Both lists of an entity are sorted by key, so one walk
 * along them finds what was added, changed and taken out. Foreign keys are looked at when the
 * transaction ends; the order of the writes is free.
 */
#include "store/internal.h"

#include <assert.h>
#include <string.h>

struct save {
    struct store *store;
    const struct model *before;
    const struct model *after;
    bool is_new; /* the build has no rows yet */
    struct fault_note *note;
};

static enum fault write(struct save *save, const struct entity *entity, enum row_verb verb,
                        const void *item)
{
    enum fault fault =
        row_write(save->store, entity, verb, save->after->build.key, item, save->note);

    if (fault)
        fault_at(save->note, "%s", entity->name);
    return fault;
}

/* The item at `index`, or NULL beyond the end. */
static const void *item_at(const struct model *model, const struct entity *entity, size_t index)
{
    return index < model_count(model, entity->kind) ? model_at_const(model, entity->kind, index)
                                                    : NULL;
}

static enum fault save_list(struct save *save, const struct entity *entity)
{
    bool none_before = save->is_new && row_is_of_build(entity);
    size_t old_index = none_before ? model_count(save->before, entity->kind) : 0;
    size_t new_index = 0;
    enum fault fault = FAULT_NONE;

    while (!fault) {
        const void *old = item_at(save->before, entity, old_index);
        const void *new = item_at(save->after, entity, new_index);

        if (!old && !new)
            break;
        assert(new_index == 0 || !new ||
               item_key(new) > item_key(item_at(save->after, entity, new_index - 1)));
        if (!new || (old && item_key(old) < item_key(new))) {
            fault = write(save, entity, ROW_DELETE, old);
            old_index++;
        } else if (!old || item_key(new) < item_key(old)) {
            fault = write(save, entity, ROW_INSERT, new);
            new_index++;
        } else {
            if (!item_equal(entity, old, new))
                fault = write(save, entity, ROW_UPDATE, new);
            old_index++;
            new_index++;
        }
    }
    return fault;
}

static enum fault save_single(struct save *save, enum entity_kind kind)
{
    const struct entity *entity = entity_of(kind);
    const void *new = model_at_const(save->after, kind, 0);

    if (kind == ENTITY_build && save->is_new)
        return write(save, entity, ROW_INSERT, new);
    if (item_equal(entity, model_at_const(save->before, kind, 0), new))
        return FAULT_NONE;
    return write(save, entity, ROW_UPDATE, new);
}

static bool name_is_new(const struct save *save)
{
    return save->after->build.key > 0 &&
           (save->is_new || strcmp(save->before->build.name, save->after->build.name) != 0);
}

/*
 * Only the store sees every build, so it keeps their names apart; while this transaction holds the
 * file, no other program can take the name.
 */
static enum fault check_namesake(struct save *save)
{
    const struct build *build = &save->after->build;
    sqlite3_stmt *statement;
    struct binder binder;
    bool taken = false;
    enum fault fault = store_statement(save->store, STATEMENT_NAMESAKE, &statement, save->note);

    if (fault)
        return fault;
    binder = binder_start(statement);
    bind_string(&binder, build->name);
    bind_whole(&binder, build->key);
    fault = binder_finds(save->store, &binder, &taken, save->note);
    if (fault || !taken)
        return fault;
    fault = fault_say(save->note, FAULT_DUPLICATE, "another build has this name");
    fault_at(save->note, "build.name");
    return fault;
}

static enum fault save_all(struct save *save)
{
    enum fault fault = name_is_new(save) ? check_namesake(save) : FAULT_NONE;

    if (!fault)
        fault = save_single(save, ENTITY_workshop);
    if (!fault && save->after->build.key > 0)
        fault = save_single(save, ENTITY_build);
    for (int kind = 0; kind < ENTITY_COUNT && !fault; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);

        if (entity->in_shop || save->after->build.key > 0)
            fault = save_list(save, entity);
    }
    return fault;
}

static bool has_new_build(const struct model *after)
{
    return after->build.key == 0 && after->build.name[0] != '\0';
}

enum fault store_save(struct store *store, const struct model *before, struct model *after,
                      const char *label, struct fault_note *note)
{
    struct save save = {.store = store,
                        .before = before,
                        .after = after,
                        .is_new = has_new_build(after),
                        .note = note};
    enum fault fault = store_action_begin(store, __func__, note);

    assert(save.is_new || before->build.key == after->build.key);
    if (fault)
        return fault;
    if (save.is_new)
        after->build.key = after->workshop.next_key++;
    assert(after->build.key >= 0);
    fault = save_all(&save);
    fault = store_action_end(store, fault, after->build.key, label, note);
    if (fault && save.is_new) {
        after->workshop.next_key = after->build.key;
        after->build.key = 0;
    }
    return fault;
}

enum fault store_save_together(struct store *store, const struct store_change *changes,
                               size_t count, const char *label, struct fault_note *note)
{
    enum fault fault = store_action_begin(store, __func__, note);

    if (fault)
        return fault;
    for (size_t i = 0; i < count && !fault; i++) {
        struct save save = {
            .store = store, .before = changes[i].before, .after = changes[i].after, .note = note};

        assert(!has_new_build(save.after) && save.before->build.key == save.after->build.key);
        fault = save_all(&save);
    }
    return store_action_end(store, fault, 0, label, note);
}

enum fault store_delete_build(struct store *store, int64_t build, const char *label,
                              struct fault_note *note)
{
    const struct build gone = {.key = build, .name = "", .note = "", .due = ""};
    enum fault fault = store_action_begin(store, __func__, note);

    if (fault)
        return fault;
    fault = row_write(store, entity_of(ENTITY_build), ROW_DELETE, 0, &gone, note);
    if (fault == FAULT_CHANGED)
        fault = fault_say(note, FAULT_MISSING, "this build is not there any more");
    return store_action_end(store, fault, build, label, note);
}
