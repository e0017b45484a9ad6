#include "draw/drawing.h"

#include "base/text.h"

const char *drawing_word(const char *word, struct arena *arena)
{
    char *shown = arena_text(arena, word);

    text_blank(shown);
    return shown;
}

bool drawing_has(const struct drawing *drawing, enum mark_kind kind)
{
    for (size_t i = 0; i < drawing->marks.count; i++) {
        if (drawing->marks.at[i].kind == kind)
            return true;
    }
    return false;
}
