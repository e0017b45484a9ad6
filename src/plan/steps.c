#include "plan/steps.h"

#include "model/words.h"

#include <stdlib.h>
#include <string.h>

const struct step_kind step_kinds[STEP_KINDS] = {
#define STEP_ROW(name, word, scope, phase, where, crew, hold, takes, tool, title) \
    {word, SCOPE_##scope, phase, WHERE_##where, CREW_##crew, hold, STEP_TAKES_##takes, tool, title},
    STEPS(STEP_ROW)
#undef STEP_ROW
};

/* A hinge is hung dry before padding, and for good after it; buttons and zips go with a cover. */
bool step_puts_on(int kind, int64_t fitting)
{
    static const int steps[FITTING_COUNT][2] = {
        [FITTING_LEG] = {STEP_LEG, -1},
        [FITTING_GLIDE] = {STEP_LEG, -1},
        [FITTING_HINGE] = {STEP_HANG, STEP_HINGE},
        [FITTING_STAY] = {STEP_HINGE, -1},
        [FITTING_CLEAT] = {STEP_CLEAT, -1},
        [FITTING_T_NUT] = {STEP_INSERT, -1},
        [FITTING_BRACKET] = {STEP_CLEAT, -1},
        [FITTING_BUTTON] = {-1, -1},
        [FITTING_ZIP] = {-1, -1},
        [FITTING_OTHER] = {STEP_FIT, -1},
    };

    return steps[fitting][0] == kind || steps[fitting][1] == kind;
}

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
