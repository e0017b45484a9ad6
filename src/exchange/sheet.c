#include "exchange/sheet.h"

#include "exchange/format.h"
#include "exchange/reader.h"

#include <assert.h>
#include <string.h>

/* The keys of a file: format, kind, the head and the lists. */
#define KEYS_MOST (ENTITY_COUNT + 3)

static const char *const kind_expected = "\"build\" or \"workshop\" is expected";

static bool is_string(const struct source *source, const struct source_value *value,
                      const char *string)
{
    return value->kind == SOURCE_STRING && strcmp(source_string(source, value), string) == 0;
}

static enum exchange_kind kind_of(const struct source *source, const struct source_value *value)
{
    if (is_string(source, value, format_kind_word(EXCHANGE_BUILD)))
        return EXCHANGE_BUILD;
    if (is_string(source, value, format_kind_word(EXCHANGE_WORKSHOP)))
        return EXCHANGE_WORKSHOP;
    return EXCHANGE_NEITHER;
}

static void say_at(struct fault_note *note, const struct source_value *value, enum fault code,
                   const char *path, const char *why)
{
    if (!note)
        return;
    fault_say_column(note, code, value->place.column, "%s", why);
    fault_at(note, "%s", path);
    note->line = value->place.line;
}

enum exchange_kind sheet_kind_of(const struct source *source, struct fault_note *note)
{
    const struct source_value *root = source->values.at;
    const struct source_value *value = NULL;
    enum exchange_kind kind = EXCHANGE_NEITHER;

    if (root->kind == SOURCE_OBJECT)
        value = reader_member(source, root, "kind");
    else
        say_at(note, root, FAULT_TYPE, "", "a file of this program is an object");
    if (value) {
        kind = kind_of(source, value);
        if (kind == EXCHANGE_NEITHER)
            say_at(note, value, FAULT_UNKNOWN, "kind", kind_expected);
    } else if (root->kind == SOURCE_OBJECT) {
        say_at(note, root, FAULT_MISSING, "kind", kind_expected);
    }
    return kind;
}

static bool check_format(struct complaints *complaints, const struct source *source,
                         const struct source_value *root)
{
    const struct source_value *value = reader_member(source, root, "format");
    const char *token;

    if (!value) {
        complain_missing(complaints, root, "format", "the number of the format, 1");
        return false;
    }
    if (value->kind != SOURCE_WHOLE) {
        complain_type(complaints, value, "the number of the format, 1,");
        return false;
    }
    token = source_token(source, value);
    if (strcmp(token, "1") == 0)
        return true;
    if (token[0] == '-' || token[0] == '0')
        complain(complaints, value, FAULT_RANGE, "there is no format %s; this program reads 1",
                 token);
    else
        complain(complaints, value, FAULT_NEWER,
                 "format %s is newer than this program, which reads 1", token);
    return false;
}

static bool check_kind(struct complaints *complaints, const struct source *source,
                       const struct source_value *root, enum exchange_kind kind)
{
    const struct source_value *value = reader_member(source, root, "kind");
    const char *word = format_kind_word(kind);

    if (!value)
        complain_missing(complaints, root, "kind", "what the file holds");
    else if (value->kind != SOURCE_STRING)
        complain(complaints, value, FAULT_TYPE, "\"%s\" is expected here", word);
    else if (!is_string(source, value, word))
        complain(complaints, value, FAULT_UNKNOWN, "\"%s\" is expected here, not \"%.40s\"", word,
                 source_string(source, value));
    else
        return true;
    return false;
}

/* Where the member with each key goes. */
struct slots {
    const char *keys[KEYS_MOST];
    const struct source_value **values[KEYS_MOST];
    const struct source_value *others[2]; /* format and kind: judged already */
    size_t count;
};

static void add_slot(struct slots *slots, const char *key, const struct source_value **value)
{
    assert(slots->count < KEYS_MOST);
    slots->keys[slots->count] = key;
    slots->values[slots->count++] = value;
}

static void fill_slots(struct slots *slots, struct sheet *sheet)
{
    add_slot(slots, "format", &slots->others[0]);
    add_slot(slots, "kind", &slots->others[1]);
    add_slot(slots, format_kind_word(sheet->kind), &sheet->head);
    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);

        if (format_holds(sheet->kind, entity))
            add_slot(slots, entity->plural, &sheet->lists[kind]);
    }
}

static void sort_member(const struct slots *slots, struct complaints *complaints,
                        const struct source_value *member)
{
    const char *key = source_key(complaints->source, member);

    for (size_t i = 0; i < slots->count; i++) {
        if (strcmp(slots->keys[i], key) != 0)
            continue;
        if (*slots->values[i])
            complain_key(complaints, member, FAULT_DUPLICATE, "\"%s\" stands here twice", key);
        else
            *slots->values[i] = member;
        return;
    }
    reader_unknown(complaints, member, "the file", slots->keys, slots->count);
}

static void check_head(struct sheet *sheet, struct complaints *complaints,
                       const struct source_value *root)
{
    const char *word = format_kind_word(sheet->kind);

    if (!sheet->head) {
        complain_missing(complaints, root, word, "the object with its own fields");
    } else if (sheet->head->kind != SOURCE_OBJECT) {
        complain_type(complaints, sheet->head, "an object");
        sheet->head = NULL;
    }
}

static void check_list(const struct source_value **list, struct complaints *complaints)
{
    const struct source *source = complaints->source;
    const struct source_value *item;

    if (!*list)
        return;
    if ((*list)->kind != SOURCE_ARRAY) {
        complain_type(complaints, *list, "a list");
        *list = NULL;
        return;
    }
    for (item = source_first(source, *list); item; item = source_next(source, item))
        if (item->kind != SOURCE_OBJECT)
            complain_type(complaints, item, "an object");
}

bool sheet_read(struct sheet *sheet, const struct source *source, enum exchange_kind kind,
                struct complaints *complaints)
{
    const struct source_value *root = source->values.at;
    struct slots slots = {.count = 0};
    const struct source_value *member;
    bool right;

    *sheet = (struct sheet){.source = source, .kind = kind};
    if (root->kind != SOURCE_OBJECT) {
        complain_type(complaints, root, "an object");
        return false;
    }
    right = check_format(complaints, source, root);
    right = check_kind(complaints, source, root, kind) && right;
    if (!right)
        return false;
    fill_slots(&slots, sheet);
    for (member = source_first(source, root); member; member = source_next(source, member))
        sort_member(&slots, complaints, member);
    check_head(sheet, complaints, root);
    for (int each = 0; each < ENTITY_COUNT; each++)
        check_list(&sheet->lists[each], complaints);
    return true;
}

const struct source_value *sheet_item(const struct sheet *sheet, enum entity_kind kind,
                                      const struct source_value *before)
{
    const struct source_value *item = NULL;

    if (before)
        item = source_next(sheet->source, before);
    else if (sheet->lists[kind])
        item = source_first(sheet->source, sheet->lists[kind]);
    while (item && item->kind != SOURCE_OBJECT)
        item = source_next(sheet->source, item);
    return item;
}
