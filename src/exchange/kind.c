#include "exchange/exchange.h"

#include "exchange/sheet.h"

#include <setjmp.h>

static enum exchange_kind look(struct arena *arena, const char *bytes, size_t length,
                               struct fault_note *note)
{
    struct source source;
    jmp_buf escape;

    if (setjmp(escape)) {
        fault_say_plain(note, FAULT_MEMORY);
        return EXCHANGE_NEITHER;
    }
    arena->escape = &escape;
    if (source_read(&source, arena, bytes, length, note))
        return EXCHANGE_NEITHER;
    return sheet_kind_of(&source, note);
}

enum exchange_kind exchange_kind_of(const char *bytes, size_t length, struct fault_note *note)
{
    struct arena arena;
    enum exchange_kind kind;

    arena_init(&arena);
    kind = look(&arena, bytes, length, note);
    arena_release(&arena);
    return kind;
}
