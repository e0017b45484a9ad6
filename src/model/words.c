#include "model/words.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

#define WORD_ROW(P, NAME, word, help) {#word, (help)},
#define WORDS_DEFINE(name, P)                                                       \
    static const struct word rows_##name[] = {WORDS_OF_##name(WORD_ROW, P)};        \
    _Static_assert(sizeof rows_##name / sizeof rows_##name[0] == P##_COUNT, #name); \
    const struct words words_##name = {#name, rows_##name, P##_COUNT};
VOCABULARIES(WORDS_DEFINE)
#undef WORDS_DEFINE
#undef WORD_ROW

int words_find(const struct words *words, const char *name)
{
    for (size_t i = 0; i < words->count; i++)
        if (strcmp(words->at[i].name, name) == 0)
            return (int)i;
    return -1;
}

char *words_list(const struct words *words, char *buffer, size_t size)
{
    size_t used = 0;

    assert(size > 0 && words->count > 0);
    for (size_t i = 0; i < words->count && used < size; i++)
        used += (size_t)snprintf(buffer + used, size - used, "%s%s", i > 0 ? ", " : "",
                                 words->at[i].name);
    return buffer;
}
