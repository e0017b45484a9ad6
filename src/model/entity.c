/*
 * The generic view: the tables of fields.h once more, as data.
 *
 *  1. Every struct begins with its key, but for the workshop, which has none.
 *  2. A target stands no later in the order of entities than what refers to it, and earlier where
 *     the reference ties the two together. So going through the entities in order meets what an
 *     item hangs on before the item, and going backwards meets it after.
 */
#include "model/model.h"

#include <assert.h>
#include <stddef.h>
#include <string.h>

#define EXTRA_TEXT(extra) .target = ENTITY_none
#define EXTRA_DATE(extra) .target = ENTITY_none
#define EXTRA_LENGTH(extra) .target = ENTITY_none
#define EXTRA_COUNT(extra) .target = ENTITY_none
#define EXTRA_RATIO(extra) .target = ENTITY_none
#define EXTRA_MINUTES(extra) .target = ENTITY_none
#define EXTRA_ANGLE(extra) .target = ENTITY_none
#define EXTRA_AREA(extra) .target = ENTITY_none
#define EXTRA_VOLUME(extra) .target = ENTITY_none
#define EXTRA_DENSITY(extra) .target = ENTITY_none
#define EXTRA_AREA_MASS(extra) .target = ENTITY_none
#define EXTRA_MONEY(extra) .target = ENTITY_none
#define EXTRA_FLAG(extra) .target = ENTITY_none
#define EXTRA_CHOICE(extra) .target = ENTITY_none, .words = &words_##extra
#define EXTRA_REF(extra) .target = ENTITY_##extra

#define FIELD_ROW(type_, name_, standard_, least_, most_, extra, help_) \
    {.name = #name_,                                                    \
     .type = FIELD_##type_,                                             \
     .offset = offsetof(item, name_),                                   \
     .standard = (standard_),                                           \
     .least = (least_),                                                 \
     .most = (most_),                                                   \
     .help = (help_),                                                   \
     EXTRA_##type_(extra)},

/* A block of its own for each entity lets one row macro speak of `item`. */
#define ENTITY_CASE(name_, plural_, list_, in_shop_, help_)                     \
    case ENTITY_##name_: {                                                      \
        typedef struct name_ item;                                              \
        static const struct field fields[] = {FIELDS_OF_##name_(FIELD_ROW)};    \
        static const struct entity entity = {#name_,                            \
                                             (plural_),                         \
                                             (help_),                           \
                                             ENTITY_##name_,                    \
                                             (in_shop_),                        \
                                             sizeof(item),                      \
                                             offsetof(struct model, list_),     \
                                             fields,                            \
                                             sizeof fields / sizeof fields[0]}; \
        return &entity;                                                         \
    }
#define SHOP_CASE(name, list, help) ENTITY_CASE(name, #list, list, true, help)
#define BUILD_CASE(name, list, help) ENTITY_CASE(name, #list, list, false, help)

const struct entity *entity_of(enum entity_kind kind)
{
    switch (kind) {
        SHOP_ENTITIES(SHOP_CASE)
        BUILD_ENTITIES(BUILD_CASE)
        ENTITY_CASE(workshop, "workshop", workshop, true, "the workshop")
        ENTITY_CASE(build, "build", build, false, "the build")
    case ENTITY_COUNT:
        break;
    }
    BUG("there is no such kind of entity");
}

const struct entity *entity_named(const char *name)
{
    for (int kind = 0; kind <= ENTITY_build; kind++)
        if (kind != ENTITY_COUNT && strcmp(entity_of((enum entity_kind)kind)->name, name) == 0)
            return entity_of((enum entity_kind)kind);
    return NULL;
}

const struct field *field_named(const struct entity *entity, const char *name)
{
    for (size_t i = 0; i < entity->field_count; i++)
        if (strcmp(entity->fields[i].name, name) == 0)
            return &entity->fields[i];
    return NULL;
}

const struct entity *entity_with_field(const struct field *field)
{
    for (int kind = 0; kind <= ENTITY_build; kind++) {
        const struct entity *entity;

        if (kind == ENTITY_COUNT)
            continue;
        entity = entity_of((enum entity_kind)kind);
        for (size_t i = 0; i < entity->field_count; i++)
            if (&entity->fields[i] == field)
                return entity;
    }
    return NULL;
}

bool entity_has_own_names(enum entity_kind kind)
{
    return kind == ENTITY_stock || kind == ENTITY_supplier || kind == ENTITY_set ||
           kind == ENTITY_tool || kind == ENTITY_box || kind == ENTITY_join || kind == ENTITY_pace;
}

bool field_is_text(const struct field *field)
{
    return field->type == FIELD_TEXT || field->type == FIELD_DATE;
}

bool field_hangs(const struct field *field)
{
    return field->type == FIELD_REF && (field->least == 1 || field->most == 1);
}

bool field_may_be_nothing(const struct field *field)
{
    return !field_is_text(field) && strstr(field->help, "nothing") != NULL;
}

enum quantity field_quantity(const struct field *field)
{
    static const enum quantity quantities[] = {
        [FIELD_TEXT] = QUANTITY_KINDS,          [FIELD_DATE] = QUANTITY_KINDS,
        [FIELD_LENGTH] = QUANTITY_LENGTH,       [FIELD_COUNT] = QUANTITY_COUNT,
        [FIELD_RATIO] = QUANTITY_RATIO,         [FIELD_MINUTES] = QUANTITY_MINUTES,
        [FIELD_ANGLE] = QUANTITY_ANGLE,         [FIELD_AREA] = QUANTITY_AREA,
        [FIELD_VOLUME] = QUANTITY_VOLUME,       [FIELD_DENSITY] = QUANTITY_DENSITY,
        [FIELD_AREA_MASS] = QUANTITY_AREA_MASS, [FIELD_MONEY] = QUANTITY_KINDS,
        [FIELD_FLAG] = QUANTITY_KINDS,          [FIELD_CHOICE] = QUANTITY_KINDS,
        [FIELD_REF] = QUANTITY_KINDS,
    };

    assert(field->type < sizeof quantities / sizeof *quantities);
    return quantities[field->type];
}

/* Through memcpy, because an item is known here only by its bytes. */

int64_t field_whole(const struct field *field, const void *item)
{
    int64_t value;

    assert(!field_is_text(field));
    memcpy(&value, (const char *)item + field->offset, sizeof value);
    return value;
}

void field_set_whole(const struct field *field, void *item, int64_t value)
{
    assert(!field_is_text(field));
    memcpy((char *)item + field->offset, &value, sizeof value);
}

const char *field_string(const struct field *field, const void *item)
{
    const char *string;

    assert(field_is_text(field));
    memcpy(&string, (const char *)item + field->offset, sizeof string);
    return string;
}

void field_set_string(const struct field *field, void *item, const char *string)
{
    assert(field_is_text(field) && string);
    memcpy((char *)item + field->offset, &string, sizeof string);
}

void field_set_standard(const struct field *field, void *item)
{
    assert(field->type != FIELD_REF || field->standard == 0);
    if (field_is_text(field))
        field_set_string(field, item, "");
    else
        field_set_whole(field, item, field->standard);
}

bool field_equal(const struct field *field, const void *a, const void *b)
{
    if (field_is_text(field))
        return strcmp(field_string(field, a), field_string(field, b)) == 0;
    return field_whole(field, a) == field_whole(field, b);
}

bool item_equal(const struct entity *entity, const void *a, const void *b)
{
    for (size_t i = 0; i < entity->field_count; i++)
        if (!field_equal(&entity->fields[i], a, b))
            return false;
    return true;
}

void item_take_fields(const struct entity *entity, void *to, const void *from)
{
    assert(entity->kind < ENTITY_COUNT); /* the workshop has no key to step over */
    memcpy((char *)to + sizeof(int64_t), (const char *)from + sizeof(int64_t),
           entity->size - sizeof(int64_t));
}
