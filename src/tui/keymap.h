/* Which key does what: the standard keys of the table of actions, or those that the maker bound. */
#ifndef TUI_KEYMAP_H
#define TUI_KEYMAP_H

#include "tui/actions.h"

#include <stdbool.h>

#define KEYMAP_KEYS 4 /* of one action */

struct keymap {
    int keys[ACTION_COUNT][KEYMAP_KEYS]; /* KEY_NONE behind the last; no key stands twice */
};

void keymap_standard(struct keymap *keymap);

/* The action of a key, ACTION_NONE for a key without one. */
enum action keymap_action(const struct keymap *keymap, int key);

/* The key that hints name: the last character, since letters shorten; else the first key. */
int keymap_hint(const struct keymap *keymap, enum action action);

int keymap_count(const struct keymap *keymap, enum action action);

/* Takes a key away; false when the action does not have it. */
bool keymap_drop(struct keymap *keymap, enum action action, int key);

#endif
