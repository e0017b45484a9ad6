#include "tui/actions.h"

#include "base/text.h"
#include "base/utf8.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

const struct action_entry actions[ACTION_COUNT] = {
#define ACTION_ROW(name, word, key, other, label, help) {word, key, other, label, help},
    ACTIONS(ACTION_ROW)
#undef ACTION_ROW
};

_Static_assert(ACTION_COUNT <= 64, "a set of actions has a bit for each");

enum action action_named(const char *name)
{
    for (int i = 0; i < ACTION_COUNT; i++) {
        if (strcmp(actions[i].name, name) == 0)
            return (enum action)i;
    }
    return ACTION_NONE;
}

/* ---- names of keys ---- */

static const struct {
    int key;
    const char *name;
} caps[] = {{KEY_TAB, "Tab"},           {KEY_RETURN, "Enter"},      {KEY_ESCAPE, "Esc"},
            {KEY_SPACE, "Space"},       {KEY_ARROW_UP, "Up"},       {KEY_ARROW_DOWN, "Down"},
            {KEY_ARROW_LEFT, "Left"},   {KEY_ARROW_RIGHT, "Right"}, {KEY_GO_FIRST, "Home"},
            {KEY_GO_LAST, "End"},       {KEY_LEAF_UP, "PgUp"},      {KEY_LEAF_DOWN, "PgDn"},
            {KEY_INSERT_ITEM, "Ins"},   {KEY_DELETE_ITEM, "Del"},   {KEY_RUB_OUT, "Backspace"},
            {KEY_BACK_TAB, "Shift-Tab"}};

const char *action_key_name(int key, char buffer[ACTION_KEY_TEXT])
{
    for (size_t i = 0; i < sizeof caps / sizeof *caps; i++) {
        if (caps[i].key == key)
            return caps[i].name;
    }
    if (key >= KEY_F1 && key <= KEY_F12)
        snprintf(buffer, ACTION_KEY_TEXT, "F%d", key - KEY_F1 + 1);
    else if (key >= KEY_CONTROL('A') && key <= KEY_CONTROL('_'))
        snprintf(buffer, ACTION_KEY_TEXT, "Ctrl-%c", key - KEY_CONTROL('A') + 'A');
    else
        buffer[utf8_put((unsigned)key, buffer)] = '\0';
    return buffer;
}

static bool is_called(int key, const char *name)
{
    char buffer[ACTION_KEY_TEXT];
    return strcasecmp(action_key_name(key, buffer), name) == 0;
}

int action_key_named(const char *name)
{
    unsigned code;
    size_t length = strlen(name);
    if (length > 0 && (size_t)utf8_next(name, length, &code) == length)
        return code > KEY_SPACE ? (int)code : KEY_NONE;
    for (size_t i = 0; i < sizeof caps / sizeof *caps; i++) {
        if (strcasecmp(caps[i].name, name) == 0)
            return caps[i].key;
    }
    for (int key = KEY_F1; key <= KEY_F12; key++) {
        if (is_called(key, name))
            return key;
    }
    for (int key = KEY_CONTROL('A'); key <= KEY_CONTROL('_'); key++) {
        if (is_called(key, name))
            return key;
    }
    return KEY_NONE;
}
