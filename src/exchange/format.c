#include "exchange/format.h"

#include <assert.h>
#include <string.h>

const char *format_kind_word(enum exchange_kind kind)
{
    assert(kind != EXCHANGE_NEITHER);
    return kind == EXCHANGE_BUILD ? "build" : "workshop";
}

enum entity_kind format_head(enum exchange_kind kind)
{
    assert(kind != EXCHANGE_NEITHER);
    return kind == EXCHANGE_BUILD ? ENTITY_build : ENTITY_workshop;
}

bool format_holds(enum exchange_kind kind, const struct entity *entity)
{
    bool referred = entity->kind == ENTITY_set || entity->kind == ENTITY_stock ||
                    entity->kind == ENTITY_offer || entity->kind == ENTITY_supplier;

    if (kind == EXCHANGE_WORKSHOP)
        return entity->in_shop;
    return !entity->in_shop || referred;
}

bool format_has_key(const struct entity *entity)
{
    return entity->kind < ENTITY_COUNT && !entity->in_shop;
}

bool format_has_field(const struct entity *entity, const struct field *field)
{
    return entity->kind != ENTITY_workshop || strcmp(field->name, "next_key") != 0;
}

bool format_may_lack(const struct field *field)
{
    if (field->type == FIELD_CHOICE)
        return true;
    if (field_is_text(field) || field->type == FIELD_REF)
        return field->least < 1;
    return field->standard >= field->least && field->standard <= field->most;
}

bool format_goes_by_name(const struct field *field)
{
    return field->type == FIELD_REF && entity_of(field->target)->in_shop;
}
