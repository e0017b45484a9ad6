#include "plan/steps.h"

#include <stdlib.h>
#include <string.h>

const struct step_kind step_kinds[STEP_KINDS] = {
#define STEP_ROW(name, word, scope, phase, where, crew, hold, takes, tool, title) \
    {word, SCOPE_##scope, phase, WHERE_##where, CREW_##crew, hold, STEP_TAKES_##takes, tool, title},
    STEPS(STEP_ROW)
#undef STEP_ROW
};

int step_kind_of(const char *name)
{
    size_t length = strcspn(name, ":");

    for (int kind = 0; kind < STEP_KINDS; kind++)
        if (strlen(step_kinds[kind].word) == length &&
            strncmp(step_kinds[kind].word, name, length) == 0)
            return kind;
    return -1;
}

int64_t step_key_of(const char *name)
{
    const char *colon = strchr(name, ':');

    return colon ? strtoll(colon + 1, NULL, 10) : 0;
}
