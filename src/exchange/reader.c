#include "exchange/reader.h"

#include "base/utf8.h"
#include "exchange/format.h"
#include "exchange/near.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define FIELDS_MOST 64
#define WORDS_TEXT 200

static void read_text(const struct reader *reader, const struct field *field,
                      const struct source_value *value, void *item)
{
    const char *string;
    size_t count;

    if (value->kind != SOURCE_STRING) {
        complain_type(reader->complaints, value, "a text");
        return;
    }
    string = source_string(reader->source, value);
    count = utf8_count(string);
    if (count == 0 && field->least > 0)
        complain(reader->complaints, value, FAULT_MISSING, "the text must not be empty");
    else if (count > (size_t)field->most)
        complain(reader->complaints, value, FAULT_RANGE,
                 "the text has %zu characters, and at most %" PRId64 " fit", count, field->most);
    else
        field_set_string(field, item, string);
}

/* Dates, money and quantities read as they do in a form. */
static void read_typed(const struct reader *reader, const struct field *field,
                       const struct source_value *value, const char *typed, void *item)
{
    struct fault_note note;
    enum fault fault = field_read(field, reader->draft, item, typed, &note);

    if (fault)
        complain(reader->complaints, value, fault, "%s", note.why);
}

static void read_date(const struct reader *reader, const struct field *field,
                      const struct source_value *value, void *item)
{
    if (value->kind == SOURCE_STRING)
        read_typed(reader, field, value, source_string(reader->source, value), item);
    else
        complain_type(reader->complaints, value, "a date as a text (\"2026-11-25\")");
}

static void read_money(const struct reader *reader, const struct field *field,
                       const struct source_value *value, void *item)
{
    if (value->kind == SOURCE_STRING)
        read_typed(reader, field, value, source_string(reader->source, value), item);
    else
        complain_type(reader->complaints, value, "an amount as a text (\"412.60\")");
}

static void read_count(const struct reader *reader, const struct field *field,
                       const struct source_value *value, void *item)
{
    if (value->kind == SOURCE_WHOLE)
        read_typed(reader, field, value, source_token(reader->source, value), item);
    else
        complain_type(reader->complaints, value, "a whole number");
}

/* A bare number counts in the units of the file. Its digits are taken as they stand, so that
 * nothing is lost on the way through a binary fraction. */
static void read_quantity(const struct reader *reader, const struct field *field,
                          const struct source_value *value, void *item)
{
    const char *typed;

    if (value->kind == SOURCE_STRING) {
        read_typed(reader, field, value, source_string(reader->source, value), item);
        return;
    }
    if (value->kind != SOURCE_WHOLE && value->kind != SOURCE_DECIMAL) {
        complain_type(reader->complaints, value,
                      "a quantity, as a text with its unit or as a number,");
        return;
    }
    typed = source_token(reader->source, value);
    if (strpbrk(typed, "eE"))
        complain(reader->complaints, value, FAULT_SYNTAX,
                 "the number is to be written without an exponent");
    else
        read_typed(reader, field, value, typed, item);
}

static void read_flag(const struct reader *reader, const struct field *field,
                      const struct source_value *value, void *item)
{
    if (value->kind == SOURCE_TRUE || value->kind == SOURCE_FALSE)
        field_set_whole(field, item, value->kind == SOURCE_TRUE);
    else
        complain_type(reader->complaints, value, "true or false");
}

static void read_choice(const struct reader *reader, const struct field *field,
                        const struct source_value *value, void *item)
{
    char words[WORDS_TEXT];
    const char *word;
    int found;

    if (value->kind != SOURCE_STRING) {
        complain_type(reader->complaints, value, "a word as a text");
        return;
    }
    word = source_string(reader->source, value);
    found = words_find(field->words, word);
    if (found >= 0)
        field_set_whole(field, item, found);
    else
        complain(reader->complaints, value, FAULT_UNKNOWN, "\"%.24s\" is not one of %s", word,
                 words_list(field->words, words, sizeof words));
}

static void read_name(const struct reader *reader, const struct field *field,
                      const struct source_value *value, void *item)
{
    const char *target = entity_of(field->target)->name;
    const char *name;
    int64_t key;

    if (value->kind != SOURCE_STRING) {
        complain(reader->complaints, value, FAULT_TYPE, "the name of a %s is expected, not %s",
                 target, source_kind_words(value->kind));
        return;
    }
    name = source_string(reader->source, value);
    if (!*name && field->least < 1)
        return;
    key = names_find(reader->names, field->target, name);
    if (key > 0)
        field_set_whole(field, item, key);
    else
        complain(reader->complaints, value, FAULT_REFERENCE,
                 "no %s is called \"%.60s\", in this file or in the workshop", target, name);
}

/* A token of the kind SOURCE_WHOLE that the library took, so it fits; -0 is 0. */
static int64_t whole_of(const struct reader *reader, const struct source_value *value)
{
    assert(value->kind == SOURCE_WHOLE);
    return strtoll(source_token(reader->source, value), NULL, 10);
}

static void read_reference(const struct reader *reader, const struct field *field,
                           const struct source_value *value, void *item)
{
    const struct entity *target = entity_of(field->target);
    int64_t key;

    assert(!target->in_shop); /* those go by name */
    if (value->kind != SOURCE_WHOLE) {
        complain(reader->complaints, value, FAULT_TYPE, "a key of \"%s\" is expected, not %s",
                 target->plural, source_kind_words(value->kind));
        return;
    }
    key = whole_of(reader, value);
    if (key == 0 && field->least < 1)
        return;
    if (model_find_const(reader->draft, field->target, key))
        field_set_whole(field, item, key);
    else
        complain(reader->complaints, value, FAULT_REFERENCE,
                 "no %s in this file has the key %" PRId64, target->name, key);
}

static void read_field(const struct reader *reader, const struct field *field,
                       const struct source_value *value, void *item)
{
    switch (field->type) {
    case FIELD_TEXT:
        read_text(reader, field, value, item);
        break;
    case FIELD_DATE:
        read_date(reader, field, value, item);
        break;
    case FIELD_MONEY:
        read_money(reader, field, value, item);
        break;
    case FIELD_COUNT:
        read_count(reader, field, value, item);
        break;
    case FIELD_FLAG:
        read_flag(reader, field, value, item);
        break;
    case FIELD_CHOICE:
        read_choice(reader, field, value, item);
        break;
    case FIELD_REF:
        if (format_goes_by_name(field))
            read_name(reader, field, value, item);
        else
            read_reference(reader, field, value, item);
        break;
    default:
        read_quantity(reader, field, value, item);
    }
}

/* The index of a field by the member's key; field_count for the item's own key, more for none. */
static size_t find_field(const struct entity *entity, const char *key)
{
    for (size_t i = 0; i < entity->field_count; i++)
        if (format_has_field(entity, &entity->fields[i]) &&
            strcmp(entity->fields[i].name, key) == 0)
            return i;
    if (format_has_key(entity) && strcmp(key, "key") == 0)
        return entity->field_count;
    return entity->field_count + 1;
}

void reader_unknown(struct complaints *complaints, const struct source_value *member,
                    const char *where, const char *const *known, size_t count)
{
    const char *key = source_key(complaints->source, member);
    const char *near = complaints_full(complaints) ? NULL : near_word(key, known, count);

    if (near)
        complain_key(complaints, member, FAULT_UNKNOWN,
                     "\"%.40s\" is not a key of %s; is \"%s\" meant?", key, where, near);
    else
        complain_key(complaints, member, FAULT_UNKNOWN, "\"%.40s\" is not a key of %s", key, where);
}

static void tell_unknown(const struct reader *reader, const struct entity *entity,
                         const struct source_value *member)
{
    const char *known[FIELDS_MOST];
    size_t count = 0;

    assert(entity->field_count <= FIELDS_MOST);
    for (size_t i = 0; i < entity->field_count; i++)
        if (format_has_field(entity, &entity->fields[i]))
            known[count++] = entity->fields[i].name;
    reader_unknown(reader->complaints, member, entity->plural, known, count);
}

static void tell_missing(const struct reader *reader, const struct entity *entity,
                         const struct source_value *object, const bool *seen)
{
    for (size_t i = 0; i < entity->field_count; i++)
        if (!seen[i] && !format_may_lack(&entity->fields[i]))
            complain_missing(reader->complaints, object, entity->fields[i].name,
                             entity->fields[i].help);
}

/* Reads a member, once. */
static void read_member(const struct reader *reader, const struct entity *entity,
                        const struct source_value *member, void *item, bool *seen)
{
    const char *key = source_key(reader->source, member);
    size_t index = find_field(entity, key);

    if (index > entity->field_count) {
        tell_unknown(reader, entity, member);
        return;
    }
    if (seen[index])
        complain_key(reader->complaints, member, FAULT_DUPLICATE, "\"%s\" stands here twice", key);
    else if (index < entity->field_count)
        read_field(reader, &entity->fields[index], member, item);
    seen[index] = true;
}

void reader_item(const struct reader *reader, const struct entity *entity,
                 const struct source_value *object, void *item)
{
    bool seen[FIELDS_MOST + 1] = {false};
    const struct source_value *member;

    assert(entity->field_count <= FIELDS_MOST);
    for (size_t i = 0; i < entity->field_count; i++)
        if (format_has_field(entity, &entity->fields[i]))
            field_set_standard(&entity->fields[i], item);
    for (member = source_first(reader->source, object); member;
         member = source_next(reader->source, member))
        read_member(reader, entity, member, item, seen);
    tell_missing(reader, entity, object, seen);
}

const struct source_value *reader_member(const struct source *source,
                                         const struct source_value *object, const char *key)
{
    const struct source_value *member = source_first(source, object);

    while (member && strcmp(source_key(source, member), key) != 0)
        member = source_next(source, member);
    return member;
}

int64_t reader_key(const struct reader *reader, const struct source_value *value)
{
    int64_t key;

    if (value->kind != SOURCE_WHOLE) {
        complain_type(reader->complaints, value, "a key, a whole number,");
        return 0;
    }
    key = whole_of(reader, value);
    if (key > 0 && key < FIELDS_LAST_KEY)
        return key;
    complain(reader->complaints, value, FAULT_RANGE, "a key is a whole number from 1 to %" PRId64,
             FIELDS_LAST_KEY - 1);
    return 0;
}
