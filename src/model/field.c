/*
 * Fields as people type and read them. One reader a type; each leaves the item alone until the
 * value is known to be good. What field_write prints, field_read takes.
 */
#include "model/model.h"

#include "base/arena.h"
#include "base/show.h"
#include "model/range.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What was typed, and for what; what the readers below share. */
struct entry {
    const struct field *field;
    struct model *model;
    const void *item;
    const char *text;
    struct fault_note *note;
};

#define QUOTE_TEXT 60
#define WORDS_TEXT 200

static const char *quote(char buffer[QUOTE_TEXT], const char *text)
{
    return show_into(buffer, QUOTE_TEXT, text);
}

static bool is_blank(const char *text)
{
    return text[strspn(text, " \t")] == '\0';
}

static bool word_is(const char *word, const char *text)
{
    size_t length = strlen(word);

    text += strspn(text, " \t");
    return strncmp(text, word, length) == 0 && is_blank(text + length);
}

static enum fault read_quantity(const struct entry *entry, int64_t *ret_value)
{
    return quantity_parse(field_quantity(entry->field), model_units(entry->model), entry->text,
                          ret_value, entry->note);
}

/* An amount may bear the currency's letters, as it is printed. */
static enum fault read_money(const struct entry *entry, int64_t *ret_value)
{
    struct currency currency = model_currency(entry->model);
    const char *code = *currency.code ? strstr(entry->text, currency.code) : NULL;
    char amount[MONEY_TEXT];

    if (!code || !is_blank(code + strlen(currency.code)) ||
        (size_t)(code - entry->text) >= sizeof amount)
        return money_parse(currency, entry->text, ret_value, entry->note);
    snprintf(amount, sizeof amount, "%.*s", (int)(code - entry->text), entry->text);
    return money_parse(currency, amount, ret_value, entry->note);
}

static enum fault read_flag(const struct entry *entry, int64_t *ret_value)
{
    static const char *const words[] = {"no", "yes", "false", "true"};

    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        if (word_is(words[i], entry->text)) {
            *ret_value = (int64_t)(i % 2);
            return FAULT_NONE;
        }
    return fault_say_column(entry->note, FAULT_UNKNOWN, 1, "yes or no is expected");
}

static enum fault read_choice(const struct entry *entry, int64_t *ret_value)
{
    const struct words *words = entry->field->words;
    char list[WORDS_TEXT];

    for (size_t i = 0; i < words->count; i++)
        if (word_is(words->at[i].name, entry->text)) {
            *ret_value = (int64_t)i;
            return FAULT_NONE;
        }
    return fault_say_column(entry->note, FAULT_UNKNOWN, 1, "one of these is expected: %s",
                            words_list(words, list, sizeof list));
}

/* A key as digits; 0 when it is none. */
static int64_t read_key(const char *digits)
{
    char *end;
    long long key;

    if (*digits < '0' || *digits > '9')
        return 0;
    key = strtoll(digits, &end, 10);
    return is_blank(end) && key < FIELDS_LAST_KEY ? (int64_t)key : 0;
}

static enum fault read_reference(const struct entry *entry, int64_t *ret_value)
{
    enum entity_kind target = entry->field->target;
    const char *text = entry->text;
    int64_t key = *text == '#' ? 0 : model_key_named(entry->model, target, text);
    char quoted[QUOTE_TEXT];

    if (key == 0)
        key = read_key(text + (*text == '#'));
    if (key == 0 || !model_find_const(entry->model, target, key))
        return fault_say_column(entry->note, FAULT_REFERENCE, 1, "there is no %s \"%s\"",
                                entity_of(target)->name, quote(quoted, text));
    *ret_value = key;
    return FAULT_NONE;
}

static enum fault read_whole(const struct entry *entry, int64_t *ret_value)
{
    switch (entry->field->type) {
    case FIELD_MONEY:
        return read_money(entry, ret_value);
    case FIELD_FLAG:
        return read_flag(entry, ret_value);
    case FIELD_CHOICE:
        return read_choice(entry, ret_value);
    case FIELD_REF:
        return read_reference(entry, ret_value);
    default:
        return read_quantity(entry, ret_value);
    }
}

static enum fault set_whole(const struct entry *entry, void *item)
{
    const struct field *field = entry->field;
    int64_t value = 0;
    enum fault fault = FAULT_NONE;

    if (!is_blank(entry->text))
        fault = read_whole(entry, &value);
    else if (field->type == FIELD_CHOICE || field->type == FIELD_FLAG)
        return fault_say_column(entry->note, FAULT_MISSING, 1, "%s is needed", field->name);
    if (!fault)
        fault = range_check_whole(field, entry->model, value, entry->note);
    if (!fault)
        field_set_whole(field, item, value);
    return fault;
}

/* DUPLICATE for a name that another item of the kind bears already. */
static enum fault check_name(const struct entry *entry)
{
    const struct entity *entity = entity_with_field(entry->field);
    int64_t other;

    if (!entity || !entity_has_own_names(entity->kind) || strcmp(entry->field->name, "name") != 0)
        return FAULT_NONE;
    other = model_key_named(entry->model, entity->kind, entry->text);
    if (other == 0 || other == item_key(entry->item))
        return FAULT_NONE;
    return fault_say_column(entry->note, FAULT_DUPLICATE, 1, "another %s has this name",
                            entity->name);
}

static enum fault set_text(const struct entry *entry, void *item)
{
    enum fault fault = range_check_text(entry->field, entry->text, entry->note);
    const char *copy;

    if (!fault)
        fault = check_name(entry);
    if (fault)
        return fault;
    copy = arena_text(entry->model->arena, entry->text);
    if (!copy)
        return fault_say(entry->note, FAULT_MEMORY, "there is no memory left for the text");
    field_set_string(entry->field, item, copy);
    return FAULT_NONE;
}

enum fault field_read(const struct field *field, struct model *model, void *item, const char *text,
                      struct fault_note *note)
{
    const struct entry entry = {field, model, item, text, note};

    assert(field && model && item && text);
    return field_is_text(field) ? set_text(&entry, item) : set_whole(&entry, item);
}

/* A name where it leads back to the item, else the key. */
static void write_reference(const struct field *field, const struct model *model, int64_t key,
                            struct text *out)
{
    const struct field *name = field_named(entity_of(field->target), "name");
    const void *item = model_find_const(model, field->target, key);
    const char *string = name && item ? field_string(name, item) : "";

    if (key == 0)
        return;
    if (*string && *string != '#' && model_key_named(model, field->target, string) == key)
        text_add(out, string);
    else
        text_format(out, "#%" PRId64, key);
}

static void write_choice(const struct field *field, int64_t value, struct text *out)
{
    if (value >= 0 && (size_t)value < field->words->count)
        text_add(out, field->words->at[value].name);
    else
        text_format(out, "%" PRId64, value);
}

static void write_whole(const struct field *field, const struct model *model, int64_t value,
                        struct text *out)
{
    char quantity[QUANTITY_TEXT];
    char money[MONEY_TEXT];

    switch (field->type) {
    case FIELD_MONEY:
        text_add(out, money_print_code(money, model_currency(model), value));
        break;
    case FIELD_FLAG:
        text_add(out, value ? "yes" : "no");
        break;
    case FIELD_CHOICE:
        write_choice(field, value, out);
        break;
    case FIELD_REF:
        write_reference(field, model, value, out);
        break;
    default:
        text_add(out,
                 quantity_print_unit(quantity, field_quantity(field), model_units(model), value));
    }
}

void field_write(const struct field *field, const struct model *model, const void *item,
                 struct text *out)
{
    if (field_is_text(field))
        text_add(out, field_string(field, item));
    else if (field_whole(field, item) != 0 || !field_may_be_nothing(field))
        write_whole(field, model, field_whole(field, item), out);
}
