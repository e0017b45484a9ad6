/* Rows of text: each is read or refused with its place, and the reading ends. */
#include "target.h"

#include "exchange/csv.h"

#include <setjmp.h>

static void read_rows(struct csv *csv, struct arena *arena, size_t size)
{
    struct csv_row row;
    struct fault_note note;
    enum fault fault;
    size_t rows = 0;
    int line = 0;

    while (csv_next(csv, arena, &row, &fault, &note)) {
        HOLDS(++rows <= size);
        HOLDS(row.line > line);
        line = row.line;
        HOLDS(fault ? row.cells.count == 0 : row.cells.count > 0);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *bytes = target_string(data, size);
    struct arena arena;
    struct csv csv;
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape) == 0 && csv_begin(&csv, bytes, size, NULL) == FAULT_NONE)
        read_rows(&csv, &arena, size);
    arena_release(&arena);
    free(bytes);
    return 0;
}
