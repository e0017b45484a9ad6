#include "tui/actions.h"

#include "base/text.h"

#include <stdio.h>

const struct action_entry actions[ACTION_COUNT] = {
#define ACTION_ROW(name, key, other, label, help) {key, other, label, help},
    ACTIONS(ACTION_ROW)
#undef ACTION_ROW
};

enum action action_of(int key)
{
    for (int i = 0; i < ACTION_COUNT; i++) {
        if (key != KEY_NONE_YET && (actions[i].key == key || actions[i].other == key))
            return (enum action)i;
    }
    return ACTION_NONE;
}

const char *action_key_name(int key, char buffer[ACTION_KEY_TEXT])
{
    static const struct {
        int key;
        const char *name;
    } names[] = {{KEY_TAB, "Tab"},           {KEY_RETURN, "Enter"},
                 {KEY_ESCAPE, "Esc"},        {KEY_SPACE, "Space"},
                 {KEY_ARROW_UP, "Up"},       {KEY_ARROW_DOWN, "Down"},
                 {KEY_ARROW_LEFT, "Left"},   {KEY_ARROW_RIGHT, "Right"},
                 {KEY_GO_FIRST, "Home"},     {KEY_GO_LAST, "End"},
                 {KEY_LEAF_UP, "PgUp"},      {KEY_LEAF_DOWN, "PgDn"},
                 {KEY_INSERT_ITEM, "Ins"},   {KEY_DELETE_ITEM, "Del"},
                 {KEY_RUB_OUT, "Backspace"}, {KEY_BACK_TAB, "Shift-Tab"},
                 {KEY_CONTROL_B, "Ctrl-B"},  {KEY_CONTROL_W, "Ctrl-W"},
                 {KEY_CONTROL_F, "Ctrl-F"},  {KEY_CONTROL_K, "Ctrl-K"},
                 {KEY_CONTROL_N, "Ctrl-N"},  {KEY_CONTROL_O, "Ctrl-O"},
                 {KEY_CONTROL_P, "Ctrl-P"},  {KEY_CONTROL_E, "Ctrl-E"},
                 {KEY_CONTROL_T, "Ctrl-T"},  {KEY_CONTROL_X, "Ctrl-X"}};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        if (names[i].key == key)
            return names[i].name;
    }
    if (key >= KEY_F1 && key <= KEY_F12) {
        snprintf(buffer, ACTION_KEY_TEXT, "F%d", key - KEY_F1 + 1);
        return buffer;
    }
    buffer[utf8_put((unsigned)key, buffer)] = '\0';
    return buffer;
}
