#include "base/fault.h"

#include "base/show.h"

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

static const struct {
    const char *words;
    int exit_code;
} faults[FAULT_COUNT] = {
#define FAULT_ROW(name, exit, text) [FAULT_##name] = {(text), (exit)},
    FAULTS(FAULT_ROW)
#undef FAULT_ROW
};

const char *fault_words(enum fault code)
{
    assert(code < FAULT_COUNT);
    return faults[code].words;
}

int fault_exit_code(enum fault code)
{
    assert(code < FAULT_COUNT);
    return faults[code].exit_code;
}

/*
 * Formats what may hold a person's text, made safe to show and cut at a character's edge. `raw` is
 * cut blindly, but what it loses is never seen: a character shrinks to no less than three quarters
 * of its bytes on its way through the filter, so a full `raw` overfills `buffer`.
 */
static void __attribute__((format(printf, 3, 0)))
fill(char *buffer, size_t size, const char *format, va_list arguments)
{
    char raw[512];

    assert(size <= sizeof raw / 2);
    if (vsnprintf(raw, sizeof raw, format, arguments) < 0)
        raw[0] = '\0';
    show_into(buffer, size, raw);
}

static void __attribute__((format(printf, 4, 0)))
say(struct fault_note *note, enum fault code, int column, const char *format, va_list arguments)
{
    if (note) {
        *note = (struct fault_note){.code = code, .column = column};
        fill(note->why, sizeof note->why, format, arguments);
    }
}

#undef fault_say
enum fault fault_say(struct fault_note *note, enum fault code, const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    say(note, code, 0, format, arguments);
    va_end(arguments);
    return code;
}

#undef fault_say_column
enum fault fault_say_column(struct fault_note *note, enum fault code, int column,
                            const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    say(note, code, column, format, arguments);
    va_end(arguments);
    return code;
}

enum fault fault_say_plain(struct fault_note *note, enum fault code)
{
    return fault_say(note, code, "%s", fault_words(code));
}

enum fault fault_at(struct fault_note *note, const char *format, ...)
{
    va_list arguments;

    if (!note)
        return FAULT_NONE;
    va_start(arguments, format);
    fill(note->path, sizeof note->path, format, arguments);
    va_end(arguments);
    return note->code;
}

int fault_print(char *buffer, size_t size, const struct fault_note *note)
{
    const char *why = note->why[0] ? note->why : fault_words(note->code);
    const char *colon = note->path[0] ? ": " : "";
    char place[64] = "";

    if (note->line > 0 && note->column > 0)
        snprintf(place, sizeof place, "line %d, column %d: ", note->line, note->column);
    else if (note->line > 0)
        snprintf(place, sizeof place, "line %d: ", note->line);
    else if (note->column > (note->path[0] ? 1 : 0)) /* a field begins where its name ends */
        snprintf(place, sizeof place, "column %d: ", note->column);
    return snprintf(buffer, size, "%s%s%s%s", note->path, colon, place, why);
}

_Noreturn void fault_bug(const char *file, int line, const char *reason)
{
    fprintf(stderr, "%s:%d: a mistake of this program: %s\n", file, line, reason);
    abort();
}
