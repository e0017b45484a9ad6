/* The invariants of model/model.h, as code: one function each. */
#include "model/model.h"
#include "model/range.h"
#include "model/trade.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

struct check {
    const struct model *model;
    model_fault_fn *tell;
    void *context;
    size_t count;
};

/* Passes on a note about a field ("width of C"), or about the item where `field` is NULL. Nobody
 * typed the value just now, so it has no column. */
static void report(struct check *check, struct fault_note *note, const struct entity *entity,
                   size_t index, const char *field)
{
    const void *item = model_at_const(check->model, entity->kind, index);
    char name[MODEL_NAME_TEXT];

    check->count++;
    if (!check->tell)
        return;
    if (entity->kind > ENTITY_COUNT)
        snprintf(name, sizeof name, "the %s", entity->name);
    else
        model_item_name(name, check->model, entity->kind, item_key(item));
    note->column = 0;
    fault_at(note, "%s%s%s", field ? field : "", field ? " of " : "", name);
    check->tell(check->context, note);
}

/* Invariant 1. In a sorted list a key is unique, so only other lists can hold it as well; looking
 * at those before this one tells of each pair once. */

static enum fault check_order(const struct model *model, enum entity_kind kind, size_t index,
                              struct fault_note *note)
{
    int64_t key = item_key(model_at_const(model, kind, index));

    if (index == 0 || item_key(model_at_const(model, kind, index - 1)) < key)
        return FAULT_NONE;
    return fault_say(note, FAULT_DUPLICATE, "key %" PRId64 " does not follow the key before it",
                     key);
}

static enum fault check_key(const struct model *model, enum entity_kind kind, size_t index,
                            struct fault_note *note)
{
    bool in_shop = entity_of(kind)->in_shop;
    int64_t next = in_shop ? model->workshop.next_key : model->build.next_key;
    int64_t key = item_key(model_at_const(model, kind, index));

    if (key <= 0 || key >= next)
        return fault_say(note, FAULT_RANGE,
                         "key %" PRId64 " is not between 0 and the next key, %" PRId64, key, next);
    for (int other = 0; other < (int)kind; other++)
        if (entity_of((enum entity_kind)other)->in_shop == in_shop &&
            model_find_const(model, (enum entity_kind)other, key))
            return fault_say(note, FAULT_DUPLICATE, "key %" PRId64 " is that of a %s already", key,
                             entity_of((enum entity_kind)other)->name);
    return FAULT_NONE;
}

/* Invariants 2 and 3. */

static enum fault check_reference(const struct model *model, const struct field *field,
                                  const void *item, struct fault_note *note)
{
    int64_t key = field_whole(field, item);

    if (key == 0 || model_find_const(model, field->target, key))
        return FAULT_NONE;
    return fault_say(note, FAULT_REFERENCE, "there is no %s with key %" PRId64,
                     entity_of(field->target)->name, key);
}

static enum fault check_field(const struct model *model, const struct field *field,
                              const void *item, struct fault_note *note)
{
    enum fault fault;

    if (field_is_text(field))
        return range_check_text(field, field_string(field, item), note);
    fault = range_check_whole(field, model, field_whole(field, item), note);
    if (!fault && field->type == FIELD_REF)
        fault = check_reference(model, field, item, note);
    return fault;
}

static void check_fields(struct check *check, const struct entity *entity, size_t index)
{
    const void *item = model_at_const(check->model, entity->kind, index);

    for (size_t i = 0; i < entity->field_count; i++) {
        struct fault_note note;

        if (check_field(check->model, &entity->fields[i], item, &note))
            report(check, &note, entity, index, entity->fields[i].name);
    }
}

/* Invariant 4. */
static enum fault check_name(const struct model *model, enum entity_kind kind, size_t index,
                             struct fault_note *note)
{
    const void *item = model_at_const(model, kind, index);
    const char *name;

    if (!entity_has_own_names(kind))
        return FAULT_NONE;
    name = field_string(field_named(entity_of(kind), "name"), item);
    if (!*name || model_key_named(model, kind, name) == item_key(item))
        return FAULT_NONE;
    return fault_say(note, FAULT_DUPLICATE, "another %s has this name", entity_of(kind)->name);
}

/* Invariant 5. */
static enum fault check_change(const struct model *model, enum entity_kind kind, size_t index,
                               struct fault_note *note)
{
    const struct entity *entity = entity_of(kind);
    const void *item = model_at_const(model, kind, index);
    enum units units =
        trade_units(model, kind == ENTITY_shop_value ? TRADE_FROM_WORKSHOP : TRADE_FROM_BUILD);
    const char *name;
    int64_t value;
    int trade;

    if (kind != ENTITY_shop_value && kind != ENTITY_build_value)
        return FAULT_NONE;
    name = field_string(field_named(entity, "name"), item);
    trade = trade_find(name);
    if (trade < 0)
        return fault_say(note, FAULT_UNKNOWN, "there is no such trade value");
    if (model_key_named(model, kind, name) != item_key(item))
        return fault_say(note, FAULT_DUPLICATE, "this trade value is changed twice");
    return trade_read((enum trade)trade, units, field_string(field_named(entity, "value"), item),
                      &value, note);
}

/* The checks of a whole item, with the field that each is about. */
static const struct {
    enum fault (*check)(const struct model *model, enum entity_kind kind, size_t index,
                        struct fault_note *note);
    const char *field;
} item_checks[] = {
    {check_order, NULL}, {check_key, NULL}, {check_name, "name"}, {check_change, "value"}};

static void check_item(struct check *check, const struct entity *entity, size_t index)
{
    for (size_t i = 0; i < sizeof item_checks / sizeof item_checks[0]; i++) {
        struct fault_note note;

        if (item_checks[i].check(check->model, entity->kind, index, &note))
            report(check, &note, entity, index, item_checks[i].field);
    }
    check_fields(check, entity, index);
}

bool model_item_holds(const struct model *model, enum entity_kind kind, size_t index)
{
    struct check check = {model, NULL, NULL, 0};

    check_item(&check, entity_of(kind), index);
    return check.count == 0;
}

bool model_field_holds(const struct model *model, const struct field *field, const void *item)
{
    return check_field(model, field, item, NULL) == FAULT_NONE;
}

size_t model_check(const struct model *model, model_fault_fn *tell, void *context)
{
    struct check check = {model, tell, context, 0};

    assert(model);
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        for (size_t i = 0; i < model_count(model, (enum entity_kind)kind); i++)
            check_item(&check, entity_of((enum entity_kind)kind), i);
    check_fields(&check, entity_of(ENTITY_workshop), 0);
    if (model->build.key != 0)
        check_fields(&check, entity_of(ENTITY_build), 0);
    return check.count;
}
