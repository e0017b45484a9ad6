#include "promise.h"

#include <ctype.h>
#include <stdbool.h>
#include <stddef.h>

static const char *const promises[] = {
    "complies",        "compliant",  "compliance",     "conforms to",    "certified",
    "is safe",         "are safe",   "safely",         "perfectly safe", "fireproof",
    "flame retardant", "guaranteed", "meets the code", "meets code",     "up to code",
    "child-safe",      "childproof", "cannot tip",     "will not tip",   "will not burn",
};

static bool begins_with(const char *text, const char *word)
{
    while (*word && tolower((unsigned char)*text) == *word) {
        text++;
        word++;
    }
    return !*word;
}

const char *promise_in(const char *text)
{
    for (const char *at = text; *at; at++)
        for (size_t i = 0; i < sizeof promises / sizeof *promises; i++)
            if (begins_with(at, promises[i]))
                return promises[i];
    return NULL;
}
