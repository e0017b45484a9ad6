/*
 * What can be done, as one table: name, keys, word, help. Key dispatch (keymap.h), the hint line,
 * the help screen, the file of keys and its manual page come from it.
 */
#ifndef TUI_ACTIONS_H
#define TUI_ACTIONS_H

#include <stdint.h>

/* Ctrl with a capital letter, or with one of the signs behind Z. */
#define KEY_CONTROL(letter) ((letter) - 'A' + 1)

/* Keys beyond characters, which are their code points. */
enum tui_key {
    KEY_NONE = 0,
    KEY_TAB = 9,
    KEY_RETURN = 13,
    KEY_CONTROL_U = 21, /* in a field: terminals rub out a line with it */
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

/*
 * name, its name in the file of keys, standard keys (KEY_NONE: none), word in hints, help. The
 * first key is on every keyboard; letters only shorten.
 */
#define ACTIONS(A)                                                                                \
    A(UP, "up", KEY_ARROW_UP, KEY_NONE, "", "one line up")                                        \
    A(DOWN, "down", KEY_ARROW_DOWN, KEY_NONE, "", "one line down")                                \
    A(LEFT, "left", KEY_ARROW_LEFT, KEY_BACK_TAB, "",                                             \
      "the choice, face, step, hole or way out before")                                           \
    A(RIGHT, "right", KEY_ARROW_RIGHT, KEY_TAB, "",                                               \
      "the next choice, face, step, hole or way out")                                             \
    A(FIRST, "first", KEY_GO_FIRST, KEY_NONE, "", "to the first line")                            \
    A(LAST, "last", KEY_GO_LAST, KEY_NONE, "", "to the last line")                                \
    A(LEAF_UP, "leaf-up", KEY_LEAF_UP, KEY_NONE, "", "a screenful up")                            \
    A(LEAF_DOWN, "leaf-down", KEY_LEAF_DOWN, KEY_NONE, "", "a screenful down")                    \
    A(ENTER, "enter", KEY_RETURN, KEY_NONE, "open", "open it, change it, take it")                \
    A(LEAVE, "back", KEY_ESCAPE, KEY_NONE, "back", "back to where you came from")                 \
    A(TICK, "tick", KEY_SPACE, KEY_NONE, "tick", "tick the step, or take its tick back")          \
    A(HELP, "keys", KEY_F1, '?', "keys", "the keys of this screen")                               \
    A(FIND, "find", KEY_CONTROL('F'), '/', "find", "find words as you type them")                 \
    A(ADD, "add", KEY_F1 + 1, 'a', "add", "add something here")                                   \
    A(COPY, "copy", KEY_F1 + 2, 'c', "copy", "copy the selected item with all that hangs on it")  \
    A(MIRROR, "mirror", KEY_CONTROL('X'), 'x', "mirror",                                          \
      "make the mirror image of the selected box")                                                \
    A(PLACE, "put", KEY_CONTROL('D'), 'j', "put", "put the selected box beside another one")      \
    A(REMOVE, "delete", KEY_DELETE_ITEM, 'd', "delete", "delete the selected item")               \
    A(STEPS, "order", KEY_F1 + 4, 'o', "order", "the order of work")                              \
    A(BUYING, "buy", KEY_F1 + 5, 'b', "buy", "the shopping list")                                 \
    A(HOLES, "holes", KEY_INSERT_ITEM, 'h', "holes", "hole maps; on a join, its points")          \
    A(CUTTING, "cutting", KEY_CONTROL('K'), 'k', "cutting",                                       \
      "what is cut from which stick, sheet and roll")                                             \
    A(PAPERS, "papers", KEY_CONTROL('T'), 'p', "papers", "print papers into a file")              \
    A(MONEY, "money", KEY_F1 + 6, 'm', "money", "estimate and spend")                             \
    A(FINDINGS, "findings", KEY_F1 + 7, 'f', "findings", "what is wrong or worth knowing")        \
    A(CARE, "care", KEY_CONTROL('V'), 'C', "care",                                                \
      "weights, lifting, the way in, strength and cautions")                                      \
    A(CLOTH, "cloth", KEY_CONTROL('E'), 'e', "cloth",                                             \
      "covers and their sewing; other ways to take the cloth")                                    \
    A(NOW, "now", KEY_CONTROL('N'), 'n', "now", "what can be done in the time there is")          \
    A(SPOIL, "spoil", KEY_CONTROL('P'), 's', "spoil", "parts that were cut: one is spoiled")      \
    A(LEAVE_OUT, "leave-out", KEY_CONTROL('O'), 'l', "leave out",                                 \
      "leave the step's optional join out")                                                       \
    A(VIEW, "view", KEY_CONTROL('B'), 'v', "view", "another picture of the selected item")        \
    A(LARGE, "large", KEY_CONTROL('W'), 'V', "large", "its picture as large as the screen")       \
    A(CLOCK, "clock", KEY_CONTROL(']'), 'i', "clock", "start the clock for the step, or stop it") \
    A(TROLLEY, "trolley", KEY_CONTROL('L'), 'g', "trolley",                                       \
      "one shopping trip for several builds")                                                     \
    A(COMPARE, "compare", KEY_CONTROL('_'), 'B', "compare",                                       \
      "marked builds side by side; of one, its other ways")                                       \
    A(ACCOUNT, "account", KEY_CONTROL('^'), 'A', "account",                                       \
      "money, months and hours of all builds, weeks at the bench")                                \
    A(STOCK, "stock", KEY_CONTROL('U'), 'S', "stock",                                             \
      "prices, also older ones, what was paid before, the shelf")                                 \
    A(TRADE, "trade", KEY_F1 + 8, 't', "trade", "trade values of this build or workshop")         \
    A(SHOP, "workshop", KEY_F1 + 9, 'w', "workshop", "the workshop: stock, prices, tools, shelf") \
    A(UNDO, "undo", KEY_F1 + 10, 'u', "undo", "take the last edit back, from any day")            \
    A(REDO, "redo", KEY_F12, 'r', "redo", "do it again")                                          \
    A(LINE_OUT, "line-out", KEY_CONTROL('Y'), 'y', "line out",                                    \
      "copy the selected line into the terminal's clipboard")                                     \
    A(LIST_OUT, "list-out", KEY_CONTROL('A'), 'Y', "list out",                                    \
      "copy the whole list or sheet into the terminal's clipboard")                               \
    A(NOTE, "note", KEY_CONTROL('R'), 'N', "note",                                                \
      "the note of what is selected, in your own editor")                                         \
    A(MOUSE, "mouse", KEY_CONTROL('G'), 'M', "mouse",                                             \
      "the mouse chooses and opens, or is the terminal's own")                                    \
    A(QUIT, "leave", KEY_F1 + 3, 'q', "leave", "leave the program; everything is kept")

enum action {
#define ACTION_ENUM(name, word, key, other, label, help) ACTION_##name,
    ACTIONS(ACTION_ENUM)
#undef ACTION_ENUM
        ACTION_COUNT,
    ACTION_NONE = ACTION_COUNT
};

struct action_entry {
    const char *name;
    int key, other; /* as long as nobody bound others */
    const char *label;
    const char *help;
};

extern const struct action_entry actions[ACTION_COUNT];

/* By its name in the file of keys; ACTION_NONE for no such action. */
enum action action_named(const char *name);

/* A set of actions, one bit each: SHOWS(ADD) | SHOWS(COPY). */
typedef uint64_t action_set;
#define SHOWS(name) (UINT64_C(1) << ACTION_##name)

/* What a key is called: "F5", "Enter", "Ctrl-K", "a". The text is constant or in the buffer. */
#define ACTION_KEY_TEXT 16
const char *action_key_name(int key, char buffer[ACTION_KEY_TEXT]);

/* The key of a name that action_key_name could have written, in letters of either case where it is
 * longer than one; KEY_NONE for none. */
int action_key_named(const char *name);

#endif
