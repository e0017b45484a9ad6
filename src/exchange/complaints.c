#include "exchange/complaints.h"

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

/* Whether there are enough: then one more is counted and not kept. */
static bool only_counted(struct complaints *complaints)
{
    if (!complaints_full(complaints))
        return false;
    complaints->beside++;
    return true;
}

void complain_note(struct complaints *complaints, const struct fault_note *note)
{
    struct complaint *complaint;

    assert(note->code != FAULT_NONE);
    if (only_counted(complaints))
        return;
    complaint = LIST_ADD(complaints->arena, &complaints->all);
    complaint->note = *note;
    complaint->order = complaints->all.count;
}

/* Puts a complaint into words; once there are enough, it is only counted. */
static void __attribute__((format(printf, 5, 0)))
add(struct complaints *complaints, const struct source_value *value, struct source_place place,
    enum fault code, const char *format, va_list arguments)
{
    struct fault_note note;
    char why[sizeof note.why * 2];
    char path[sizeof note.path];

    if (only_counted(complaints))
        return;
    vsnprintf(why, sizeof why, format, arguments);
    fault_say_column(&note, code, place.column, "%s", why);
    fault_at(&note, "%s", source_path(complaints->source, value, path, sizeof path));
    note.line = place.line;
    complain_note(complaints, &note);
}

void complain(struct complaints *complaints, const struct source_value *value, enum fault code,
              const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    add(complaints, value, value->place, code, format, arguments);
    va_end(arguments);
}

void complain_type(struct complaints *complaints, const struct source_value *value,
                   const char *wanted)
{
    complain(complaints, value, FAULT_TYPE, "%s is expected, not %s", wanted,
             source_kind_words(value->kind));
}

void complain_key(struct complaints *complaints, const struct source_value *member, enum fault code,
                  const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    add(complaints, member, member->key_place, code, format, arguments);
    va_end(arguments);
}

void complain_missing(struct complaints *complaints, const struct source_value *object,
                      const char *name, const char *help)
{
    struct fault_note note;
    char path[sizeof note.path];

    if (only_counted(complaints))
        return;
    source_path(complaints->source, object, path, sizeof path);
    fault_say_column(&note, FAULT_MISSING, object->place.column, "\"%s\" is needed here: %s", name,
                     help);
    fault_at(&note, "%s%s%s", path, path[0] ? "." : "", name);
    note.line = object->place.line;
    complain_note(complaints, &note);
}

static int by_place(const void *left, const void *right)
{
    const struct complaint *a = left;
    const struct complaint *b = right;

    if (a->note.line != b->note.line)
        return a->note.line < b->note.line ? -1 : 1;
    if (a->note.column != b->note.column)
        return a->note.column < b->note.column ? -1 : 1;
    return a->order < b->order ? -1 : a->order > b->order;
}

enum fault complaints_tell(struct complaints *complaints, model_fault_fn *tell, void *context)
{
    struct fault_note rest;
    size_t count = complaints->all.count;

    assert(complaints->beside == 0 || complaints_full(complaints));
    if (count == 0)
        return FAULT_NONE;
    qsort(complaints->all.at, count, sizeof complaints->all.at[0], by_place);
    for (size_t i = 0; tell && i < count; i++)
        tell(context, &complaints->all.at[i].note);
    if (tell && complaints->beside > 0) {
        fault_say(&rest, FAULT_REFUSED, "%zu more faults are not listed", complaints->beside);
        tell(context, &rest);
    }
    return complaints->all.at[0].note.code;
}
