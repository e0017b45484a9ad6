/*
 * JSON in, in two steps.
 *
 *  1. The library judges: what it refuses is refused, with its line and column.
 *  2. A scanner walks the bytes, which are valid by then, and notes where each value stands. It has
 *     no stack: an open container is known by its index, the one around it by `parent`. So depth
 *     costs nothing, and it goes no deeper than the library went.
 *
 * Texts are decoded by the library too, one at a time, and only where there is a backslash in them.
 */
#include "exchange/source.h"

#include <jansson.h>

#include <assert.h>
#include <setjmp.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

/* Where the library's memory comes from while it works. It does not bear a request that fails (it
 * may call a token wrong, or stop the program), so one that would leaves through the arena's escape
 * instead, and all that the library had goes with the arena. */
static struct arena *lender;

static void *lend(size_t size)
{
    return arena_alloc(lender, size);
}

static void take_back(void *block)
{
    (void)block;
}

/* The value, or NULL and an error. It lies in the arena, which has an escape armed. */
static json_t *load(struct arena *arena, const char *bytes, size_t length, json_error_t *error)
{
    assert(arena->escape);
    lender = arena;
    json_set_alloc_funcs(lend, take_back);
    return json_loadb(bytes, length, JSON_DECODE_ANY, error);
}

/* What the library says in its own terms, in ours; NULL where its words will do. */
static const char *plain_words(enum json_error_code code)
{
    switch (code) {
    case json_error_null_character:
    case json_error_null_byte_in_key:
        return "a text with a NUL in it is not taken";
    case json_error_numeric_overflow:
        return "the number is too large";
    case json_error_stack_overflow:
        return "lists and objects lie too deep in one another";
    default:
        return NULL;
    }
}

static enum fault refuse_syntax(struct fault_note *note, const json_error_t *error)
{
    const char *words = plain_words(json_error_code(error));

    fault_say_column(note, FAULT_SYNTAX, error->column > 0 ? error->column : 1, "%s",
                     words ? words : error->text);
    if (note)
        note->line = error->line > 0 ? error->line : 1;
    return FAULT_SYNTAX;
}

static enum fault judge_in(struct arena *arena, const struct source *source,
                           struct fault_note *note)
{
    json_error_t error;
    jmp_buf escape;

    if (setjmp(escape))
        return fault_say_plain(note, FAULT_MEMORY);
    arena->escape = &escape;
    if (!load(arena, source->bytes, source->length, &error))
        return refuse_syntax(note, &error);
    return FAULT_NONE;
}

static enum fault judge(const struct source *source, struct fault_note *note)
{
    struct arena arena;
    enum fault fault;

    arena_init(&arena);
    fault = judge_in(&arena, source, note);
    arena_release(&arena);
    return fault;
}

struct scanner {
    struct source *source;
    const char *at;
    const char *end;
    struct source_place place;
    uint32_t container; /* index of the open one */
    uint32_t last;      /* its last member; 0 while it has none */
    bool open;          /* in a container at all */
};

/* Columns count characters, as the library's do: all bytes but those that continue one. */
static void step(struct scanner *scanner)
{
    unsigned char byte = (unsigned char)*scanner->at++;

    if (byte == '\n') {
        scanner->place.line++;
        scanner->place.column = 1;
    } else if ((byte & 0xc0u) != 0x80u) {
        scanner->place.column++;
    }
}

static bool is_between(char c)
{
    return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == ',' || c == ':';
}

static void skip_between(struct scanner *scanner)
{
    while (scanner->at < scanner->end && is_between(*scanner->at))
        step(scanner);
}

static void skip_string(struct scanner *scanner)
{
    step(scanner);
    while (*scanner->at != '"') {
        if (*scanner->at == '\\')
            step(scanner);
        step(scanner);
        assert(scanner->at < scanner->end);
    }
    step(scanner);
}

static void skip_word(struct scanner *scanner)
{
    while (scanner->at < scanner->end && !is_between(*scanner->at) && *scanner->at != ']' &&
           *scanner->at != '}')
        step(scanner);
}

static enum source_kind number_kind(const char *at, size_t length)
{
    for (size_t i = 0; i < length; i++)
        if (at[i] == '.' || at[i] == 'e' || at[i] == 'E')
            return SOURCE_DECIMAL;
    return SOURCE_WHOLE;
}

static enum source_kind kind_at(const char *at)
{
    switch (*at) {
    case '{':
        return SOURCE_OBJECT;
    case '[':
        return SOURCE_ARRAY;
    case '"':
        return SOURCE_STRING;
    case 't':
        return SOURCE_TRUE;
    case 'f':
        return SOURCE_FALSE;
    case 'n':
        return SOURCE_NULL;
    default:
        return SOURCE_WHOLE;
    }
}

/* Hooks the newest value to the open container, behind its last member. */
static void attach(struct scanner *scanner, uint32_t index)
{
    struct source_value *all = scanner->source->values.at;

    assert(index < scanner->source->values.count && scanner->container <= index);
    if (!scanner->open)
        return;
    all[index].parent = scanner->container;
    if (scanner->last > 0) {
        all[scanner->last].next = index;
        all[index].index = all[scanner->last].index + 1;
    } else {
        all[scanner->container].first = index;
    }
    scanner->last = index;
}

static void scan_key(struct scanner *scanner, struct source_value *value)
{
    const char *start = scanner->at;

    value->key_at = (uint32_t)(start - scanner->source->bytes);
    value->key_place = scanner->place;
    skip_string(scanner);
    value->key_length = (uint32_t)(scanner->at - start);
    skip_between(scanner);
}

static void scan_scalar(struct scanner *scanner, struct source_value *value)
{
    const char *start = scanner->at;

    if (value->kind == SOURCE_STRING)
        skip_string(scanner);
    else
        skip_word(scanner);
    value->length = (uint32_t)(scanner->at - start);
    if (value->kind == SOURCE_WHOLE)
        value->kind = number_kind(start, value->length);
}

static void scan_value(struct scanner *scanner)
{
    struct source *source = scanner->source;
    uint32_t index = (uint32_t)source->values.count;
    struct source_value *value = LIST_ADD(source->arena, &source->values);

    if (scanner->open && source->values.at[scanner->container].kind == SOURCE_OBJECT)
        scan_key(scanner, value);
    value->kind = kind_at(scanner->at);
    value->at = (uint32_t)(scanner->at - source->bytes);
    value->place = scanner->place;
    attach(scanner, index);
    if (value->kind < SOURCE_ARRAY) {
        scan_scalar(scanner, value);
        return;
    }
    step(scanner);
    scanner->container = index;
    scanner->last = 0;
    scanner->open = true;
}

static void close_container(struct scanner *scanner)
{
    assert(scanner->open);
    step(scanner);
    scanner->last = scanner->container;
    scanner->open = scanner->container > 0;
    scanner->container = scanner->source->values.at[scanner->container].parent;
}

static void scan_all(struct source *source)
{
    struct scanner scanner = {
        .source = source,
        .at = source->bytes,
        .end = source->bytes + source->length,
        .place = {1, 1},
    };

    for (;;) {
        skip_between(&scanner);
        if (scanner.at == scanner.end)
            return;
        if (*scanner.at == '}' || *scanner.at == ']')
            close_container(&scanner);
        else
            scan_value(&scanner);
    }
}

enum fault source_read(struct source *source, struct arena *arena, const char *bytes, size_t length,
                       struct fault_note *note)
{
    enum fault fault;

    assert(arena->escape);
    *source = (struct source){.bytes = bytes, .length = length, .arena = arena};
    if (length > SOURCE_MOST)
        return fault_say(note, FAULT_REFUSED, "the file is larger than %d MiB",
                         (int)(SOURCE_MOST >> 20));
    fault = judge(source, note);
    if (fault)
        return fault;
    scan_all(source);
    assert(source->values.count > 0);
    return FAULT_NONE;
}

const struct source_value *source_first(const struct source *source,
                                        const struct source_value *container)
{
    return container->first > 0 ? &source->values.at[container->first] : NULL;
}

const struct source_value *source_next(const struct source *source,
                                       const struct source_value *member)
{
    return member->next > 0 ? &source->values.at[member->next] : NULL;
}

static char *copy_bytes(struct arena *arena, const char *bytes, size_t length)
{
    char *copy = arena_alloc(arena, length + 1);

    if (length > 0)
        memcpy(copy, bytes, length);
    return copy;
}

/* The library decodes; it took these bytes once, so that only memory can be missing now. */
static const char *decode(const struct source *source, const char *quoted, size_t length)
{
    json_error_t error;
    const json_t *decoded = load(source->arena, quoted, length, &error);

    assert(decoded);
    return json_string_value(decoded);
}

static const char *unquote(const struct source *source, uint32_t at, uint32_t length)
{
    const char *quoted = source->bytes + at;

    assert(length >= 2);
    if (memchr(quoted, '\\', length))
        return decode(source, quoted, length);
    return copy_bytes(source->arena, quoted + 1, length - 2);
}

const char *source_string(const struct source *source, const struct source_value *value)
{
    assert(value->kind == SOURCE_STRING);
    return unquote(source, value->at, value->length);
}

const char *source_key(const struct source *source, const struct source_value *value)
{
    return unquote(source, value->key_at, value->key_length);
}

const char *source_token(const struct source *source, const struct source_value *value)
{
    assert(value->kind < SOURCE_STRING);
    return copy_bytes(source->arena, source->bytes + value->at, value->length);
}

/* Written from the back, so that a path which is too long loses its front. False when it is full.
 */
static bool put_before(char *buffer, size_t *start, const char *bytes, size_t length)
{
    if (length > *start)
        return false;
    *start -= length;
    memcpy(buffer + *start, bytes, length);
    return true;
}

static bool put_step(const struct source *source, const struct source_value *value, char *buffer,
                     size_t *start)
{
    char number[24];

    if (value->key_length > 0)
        return put_before(buffer, start, source->bytes + value->key_at + 1,
                          value->key_length - 2) &&
               (value->parent == 0 || put_before(buffer, start, ".", 1));
    snprintf(number, sizeof number, "[%u]", (unsigned)value->index);
    return put_before(buffer, start, number, strlen(number));
}

char *source_path(const struct source *source, const struct source_value *value, char *buffer,
                  size_t size)
{
    size_t start = size - 1;
    bool whole = true;

    assert(size > 4);
    buffer[start] = '\0';
    while (whole && value != source->values.at) {
        whole = put_step(source, value, buffer, &start);
        value = &source->values.at[value->parent];
    }
    if (!whole) {
        while (start < 3 || (buffer[start] & 0xc0) == 0x80)
            start++;
        start -= 3;
        memcpy(buffer + start, "...", 3);
    }
    return memmove(buffer, buffer + start, size - start);
}

const char *source_kind_words(enum source_kind kind)
{
    static const char *const words[] = {
        [SOURCE_NULL] = "null",         [SOURCE_FALSE] = "false",
        [SOURCE_TRUE] = "true",         [SOURCE_WHOLE] = "a whole number",
        [SOURCE_DECIMAL] = "a decimal", [SOURCE_STRING] = "a text",
        [SOURCE_ARRAY] = "a list",      [SOURCE_OBJECT] = "an object",
    };

    assert(kind <= SOURCE_OBJECT);
    return words[kind];
}
