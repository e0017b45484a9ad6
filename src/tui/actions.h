/*
 * What can be done, as one table: name, keys, where it is shown, help. Key dispatch, the hint line
 * and the help screen come from it.
 */
#ifndef TUI_ACTIONS_H
#define TUI_ACTIONS_H

/* Keys beyond characters, which are their code points. */
enum tui_key {
    KEY_NONE_YET = 0,
    KEY_TAB = 9,
    KEY_CONTROL_B = 2,
    KEY_CONTROL_W = 23,
    KEY_CONTROL_K = 11,
    KEY_RETURN = 13,
    KEY_CONTROL_F = 6,
    KEY_CONTROL_N = 14,
    KEY_CONTROL_O = 15,
    KEY_CONTROL_P = 16,
    KEY_CONTROL_U = 21,
    KEY_CONTROL_E = 5,
    KEY_CONTROL_T = 20,
    KEY_CONTROL_X = 24,
    KEY_ESCAPE = 27,
    KEY_SPACE = 32,
    KEY_FIRST_SPECIAL = 0x110000,
    KEY_ARROW_UP = KEY_FIRST_SPECIAL,
    KEY_ARROW_DOWN,
    KEY_ARROW_LEFT,
    KEY_ARROW_RIGHT,
    KEY_GO_FIRST,
    KEY_GO_LAST,
    KEY_LEAF_UP,
    KEY_LEAF_DOWN,
    KEY_INSERT_ITEM,
    KEY_DELETE_ITEM,
    KEY_RUB_OUT,
    KEY_BACK_TAB,
    KEY_F1, /* F1 to F12 follow each other */
    KEY_F12 = KEY_F1 + 11
};

/* name, first key, second key (KEY_NONE_YET: none), label in hints, help */
#define ACTIONS(A)                                                                              \
    A(UP, KEY_ARROW_UP, KEY_NONE_YET, "", "one line up")                                        \
    A(DOWN, KEY_ARROW_DOWN, KEY_NONE_YET, "", "one line down")                                  \
    A(LEFT, KEY_ARROW_LEFT, KEY_BACK_TAB, "", "the choice, face, step, hole or way out before") \
    A(RIGHT, KEY_ARROW_RIGHT, KEY_TAB, "", "the next choice, face, step, hole or way out")      \
    A(FIRST, KEY_GO_FIRST, KEY_NONE_YET, "", "to the first line")                               \
    A(LAST, KEY_GO_LAST, KEY_NONE_YET, "", "to the last line")                                  \
    A(LEAF_UP, KEY_LEAF_UP, KEY_NONE_YET, "", "a screenful up")                                 \
    A(LEAF_DOWN, KEY_LEAF_DOWN, KEY_NONE_YET, "", "a screenful down")                           \
    A(ENTER, KEY_RETURN, KEY_NONE_YET, "Enter open", "open it, change it, take it")             \
    A(LEAVE, KEY_ESCAPE, KEY_NONE_YET, "Esc back", "back to where you came from")               \
    A(TICK, KEY_SPACE, KEY_NONE_YET, "Space tick", "tick the step, or take its tick back")      \
    A(HELP, KEY_F1, '?', "? keys", "the keys of this screen")                                   \
    A(FIND, KEY_CONTROL_F, '/', "/ find", "find a line of a list as you type")                  \
    A(ADD, KEY_F1 + 1, 'a', "a add", "add something here")                                      \
    A(COPY, KEY_F1 + 2, 'c', "c copy", "copy the selected item with all that hangs on it")      \
    A(MIRROR, KEY_CONTROL_X, 'x', "x mirror", "make the mirror image of the selected box")      \
    A(REMOVE, KEY_DELETE_ITEM, 'd', "d delete", "delete the selected item")                     \
    A(STEPS, KEY_F1 + 4, 'o', "o order", "the order of work")                                   \
    A(BUYING, KEY_F1 + 5, 'b', "b buy", "the shopping list")                                    \
    A(HOLES, KEY_INSERT_ITEM, 'h', "h holes", "hole maps; on a join, its points")               \
    A(CUTTING, KEY_CONTROL_K, 'k', "k cutting", "what is cut from which stick, sheet and roll") \
    A(PAPERS, KEY_CONTROL_T, 'p', "p papers", "print papers into a file")                       \
    A(MONEY, KEY_F1 + 6, 'm', "m money", "estimate and spend")                                  \
    A(FINDINGS, KEY_F1 + 7, 'f', "f findings", "what is wrong or worth knowing")                \
    A(CLOTH, KEY_CONTROL_E, 'e', "e cloth",                                                     \
      "covers and their sewing; other ways to take the cloth")                                  \
    A(NOW, KEY_CONTROL_N, 'n', "n now", "what can be done in the time there is")                \
    A(SPOIL, KEY_CONTROL_P, 's', "s spoil", "parts that were cut: one is spoiled")              \
    A(LEAVE_OUT, KEY_CONTROL_O, 'l', "l leave out", "leave the step's optional join out")       \
    A(VIEW, KEY_CONTROL_B, 'v', "v view", "another picture of the selected item")               \
    A(LARGE, KEY_CONTROL_W, 'V', "V large", "its picture as large as the screen")               \
    A(TRADE, KEY_F1 + 8, 't', "t trade", "trade values of this build or workshop")              \
    A(SHOP, KEY_F1 + 9, 'w', "w workshop", "the workshop: stock, prices, tools, shelf")         \
    A(UNDO, KEY_F1 + 10, 'u', "u undo", "take the last edit back, from any day")                \
    A(REDO, KEY_F12, 'r', "r redo", "do it again")                                              \
    A(QUIT, KEY_F1 + 3, 'q', "q leave", "leave the program; everything is kept")

enum action {
#define ACTION_ENUM(name, key, other, label, help) ACTION_##name,
    ACTIONS(ACTION_ENUM)
#undef ACTION_ENUM
        ACTION_COUNT,
    ACTION_NONE = ACTION_COUNT
};

struct action_entry {
    int key, other;
    const char *label;
    const char *help;
};

extern const struct action_entry actions[ACTION_COUNT];

/* The action of a key, ACTION_NONE for a key without one. */
enum action action_of(int key);

/* What a key is called: "F5", "Enter", "a". The text is constant or in the buffer. */
#define ACTION_KEY_TEXT 16
const char *action_key_name(int key, char buffer[ACTION_KEY_TEXT]);

#endif
