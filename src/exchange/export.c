/*
 * Writing a file. One walk serves both kinds of file: the entities in table order, of each the
 * items in key order, of each the fields in table order.
 */
#include "exchange/exchange.h"

#include "exchange/format.h"
#include "exchange/json.h"
#include "model/offer.h"

#include <assert.h>
#include <string.h>

struct writer {
    struct json json;
    const struct model *model;
    enum exchange_kind kind;
    enum units units;
};

/* Whether a build, or an item of it, refers to an item of the shop. */
static bool item_refers(const struct entity *entity, const void *item, enum entity_kind target,
                        int64_t key)
{
    assert(entity_of(target)->in_shop);
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (field->type == FIELD_REF && field->target == target && field_whole(field, item) == key)
            return true;
    }
    return false;
}

static bool build_refers(const struct model *model, enum entity_kind target, int64_t key)
{
    if (item_refers(entity_of(ENTITY_build), &model->build, target, key))
        return true;
    for (enum entity_kind kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of(kind);

        if (entity->in_shop)
            continue;
        for (size_t i = 0; i < model_count(model, kind); i++)
            if (item_refers(entity, model_at_const(model, kind, i), target, key))
                return true;
    }
    return false;
}

/* Whether a supplier has an offer of what the build refers to. */
static bool build_buys_from(const struct model *model, const struct supplier *supplier)
{
    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (build_refers(model, ENTITY_stock, offer->stock) &&
            strcmp(offer_supplier(model, offer), supplier->name) == 0)
            return true;
    }
    return false;
}

/* A build's file holds of the shop only what the build refers to, the offers of that, and who has
 * them. */
static bool goes_along(const struct writer *writer, const struct entity *entity, const void *item)
{
    if (writer->kind == EXCHANGE_WORKSHOP || !entity->in_shop)
        return true;
    if (entity->kind == ENTITY_supplier)
        return build_buys_from(writer->model, item);
    if (entity->kind == ENTITY_offer)
        return build_refers(writer->model, ENTITY_stock, ((const struct offer *)item)->stock);
    return build_refers(writer->model, entity->kind, item_key(item));
}

static const char *name_of(const struct model *model, enum entity_kind kind, int64_t key)
{
    const void *item = model_find_const(model, kind, key);

    return item ? field_string(field_named(entity_of(kind), "name"), item) : "";
}

static bool is_standard(const struct field *field, const void *item)
{
    if (field_is_text(field))
        return field_string(field, item)[0] == '\0';
    return field_whole(field, item) == field->standard;
}

static void put_choice(struct json *json, const struct field *field, int64_t value)
{
    if (value >= 0 && (size_t)value < field->words->count)
        json_put_string(json, field->words->at[value].name);
    else
        json_put_null(json);
}

static void put_field(struct writer *writer, const struct field *field, const void *item)
{
    struct json *json = &writer->json;
    int64_t value;

    if (field_is_text(field)) {
        json_put_string(json, field_string(field, item));
        return;
    }
    value = field_whole(field, item);
    if (format_goes_by_name(field))
        json_put_string(json, name_of(writer->model, field->target, value));
    else if (field->type == FIELD_REF)
        json_put_whole(json, value);
    else if (field->type == FIELD_CHOICE)
        put_choice(json, field, value);
    else if (field->type == FIELD_FLAG)
        json_put_bool(json, value != 0);
    else if (field->type == FIELD_MONEY)
        json_put_money(json, model_currency(writer->model), value);
    else
        json_put_quantity(json, field_quantity(field), writer->units, value);
}

static void put_item(struct writer *writer, const struct entity *entity, const void *item)
{
    struct json *json = &writer->json;

    json_put_object(json, JSON_LINE);
    if (format_has_key(entity)) {
        json_put_key(json, "key");
        json_put_whole(json, item_key(item));
    }
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (!format_has_field(entity, field) || is_standard(field, item))
            continue;
        json_put_key(json, field->name);
        put_field(writer, field, item);
    }
    json_put_close(json);
}

static void put_list(struct writer *writer, const struct entity *entity)
{
    struct json *json = &writer->json;
    bool begun = false;

    for (size_t i = 0; i < model_count(writer->model, entity->kind); i++) {
        const void *item = model_at_const(writer->model, entity->kind, i);

        if (!goes_along(writer, entity, item))
            continue;
        if (!begun) {
            json_put_key(json, entity->plural);
            json_put_array(json, JSON_LINES);
            begun = true;
        }
        put_item(writer, entity, item);
    }
    if (begun)
        json_put_close(json);
}

static void put_file(struct text *out, const struct model *model, enum exchange_kind kind)
{
    struct writer writer = {.model = model, .kind = kind};
    const char *word = format_kind_word(kind);
    enum entity_kind head = format_head(kind);
    struct json *json = &writer.json;

    writer.units =
        kind == EXCHANGE_BUILD ? (enum units)model->build.units : (enum units)model->workshop.units;
    json_put_start(json, out);
    json_put_object(json, JSON_LINES);
    json_put_key(json, "format");
    json_put_whole(json, FORMAT_NUMBER);
    json_put_key(json, "kind");
    json_put_string(json, word);
    json_put_key(json, word);
    put_item(&writer, entity_of(head), model_at_const(model, head, 0));
    for (enum entity_kind each = 0; each < ENTITY_COUNT; each++)
        if (format_holds(kind, entity_of(each)))
            put_list(&writer, entity_of(each));
    json_put_close(json);
    json_put_end(json);
}

void exchange_build_out(struct text *out, const struct model *model)
{
    put_file(out, model, EXCHANGE_BUILD);
}

void exchange_shop_out(struct text *out, const struct model *model)
{
    put_file(out, model, EXCHANGE_WORKSHOP);
}
