#include "tui/keymap.h"

#include <string.h>

void keymap_standard(struct keymap *keymap)
{
    memset(keymap, 0, sizeof *keymap);
    for (int i = 0; i < ACTION_COUNT; i++) {
        keymap->keys[i][0] = actions[i].key;
        keymap->keys[i][1] = actions[i].other;
    }
}

static bool has(const struct keymap *keymap, int action, int key)
{
    for (int i = 0; i < KEYMAP_KEYS; i++) {
        if (keymap->keys[action][i] == key)
            return true;
    }
    return false;
}

enum action keymap_action(const struct keymap *keymap, int key)
{
    for (int i = 0; key != KEY_NONE && i < ACTION_COUNT; i++) {
        if (has(keymap, i, key))
            return (enum action)i;
    }
    return ACTION_NONE;
}

int keymap_hint(const struct keymap *keymap, enum action action)
{
    const int *keys = keymap->keys[action];
    int hint = keys[0];
    for (int i = 0; i < KEYMAP_KEYS; i++) {
        if (keys[i] > KEY_SPACE && keys[i] < KEY_FIRST_SPECIAL)
            hint = keys[i];
    }
    return hint;
}

int keymap_count(const struct keymap *keymap, enum action action)
{
    int count = 0;
    while (count < KEYMAP_KEYS && keymap->keys[action][count] != KEY_NONE)
        count++;
    return count;
}

bool keymap_drop(struct keymap *keymap, enum action action, int key)
{
    int *keys = keymap->keys[action];
    for (int i = 0; i < KEYMAP_KEYS; i++) {
        if (keys[i] != key || key == KEY_NONE)
            continue;
        memmove(&keys[i], &keys[i + 1], (size_t)(KEYMAP_KEYS - i - 1) * sizeof *keys);
        keys[KEYMAP_KEYS - 1] = KEY_NONE;
        return true;
    }
    return false;
}
