/*
 * A build as an outline: boxes with what lies on them, joins, and what stands around. Made anew for
 * each painting; the rows lie in the arena.
 */
#ifndef TUI_OUTLINE_H
#define TUI_OUTLINE_H

#include "model/model.h"

struct outline_row {
    enum entity_kind kind;
    int64_t key;
    int depth;
    int64_t box;  /* that it belongs to, 0 for none: its picture is shown */
    int64_t side; /* of that box: the picture's face */
    const char *text;
};

struct outline {
    LIST_OF(struct outline_row) rows;
};

/* All rows of the build, or of the workshop (`shop`). The arena's escape must be armed. */
void outline_make(struct outline *outline, const struct model *model, bool shop,
                  struct arena *arena);

/* One line for an item: its name and the figures that matter. */
const char *outline_text(const struct model *model, enum entity_kind kind, int64_t key,
                         struct arena *arena);

#endif
