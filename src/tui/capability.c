#include "tui/capability.h"

#include <curses.h>
#include <term.h>

#include <string.h>

/* tputs hands characters to a function without a context. */
static char *reset_at;
static size_t reset_left;

static int put_reset(int character)
{
    if (reset_left > 0) {
        *reset_at++ = (char)character;
        reset_left--;
    }
    return character;
}

static const char *capability(const char *name)
{
    const char *string = tigetstr(name);
    return string == (const char *)-1 ? NULL : string;
}

bool capability_is_there(const char *name)
{
    return capability(name) != NULL;
}

static void add_capability(const char *name)
{
    const char *string = capability(name);
    if (string)
        tputs(string, 1, put_reset);
}

size_t capability_reset_string(char *buffer, size_t room, const char *extra)
{
    reset_at = buffer;
    reset_left = room;
    add_capability("sgr0");
    for (; *extra; extra++)
        put_reset(*extra);
    add_capability("cnorm");
    add_capability("rmkx");
    add_capability("rmcup");
    return room - reset_left;
}
