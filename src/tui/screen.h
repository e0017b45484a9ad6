/*
 * Screens: const tables of functions over private state. A screen paints into the view between the
 * title line and the hint line, and answers actions with reactions, which the driver carries out;
 * what it does not take falls through to the driver.
 */
#ifndef TUI_SCREEN_H
#define TUI_SCREEN_H

#include "desk/desk.h"
#include "tui/actions.h"
#include "tui/entry.h"
#include "tui/list.h"
#include "tui/view.h"

#include <stdbool.h>

/* What a handler wants done, to be added up. */
enum reaction {
    REACT_PASS = 0,  /* not mine */
    REACT_TAKEN = 1, /* done: paint again */
    REACT_LEAVE = 2, /* close this screen */
    REACT_QUIT = 4   /* leave the program */
};

struct tui;

/* What is shown when a screen is opened. */
struct target {
    enum entity_kind kind;
    int64_t key;
    const char *step;  /* lasting name of a step; copied by who keeps it */
    const char *field; /* that a form begins at, NULL for the first */
};

struct screen {
    const char *name; /* in the title: "order of work" */
    size_t size;      /* of its state, which starts zeroed */
    void (*open)(struct tui *tui, void *state, const struct target *target);
    void (*close)(void *state); /* gives back what the state holds; NULL where that is nothing */
    void (*paint)(struct tui *tui, void *state, int top, int height);
    enum reaction (*act)(struct tui *tui, void *state, enum action action);

    /* While these take a key or pasted text, no action is looked up; NULL for a screen without
     * typing. */
    bool (*typing)(struct tui *tui, void *state);
    enum reaction (*key)(struct tui *tui, void *state, int key);
    enum reaction (*paste)(struct tui *tui, void *state, const char *text);

    /* Of a screen with a list in which lines are found: the list, and the words of a line. */
    struct list_view *(*list)(void *state);
    void (*line)(struct tui *tui, void *state, int index, struct text *out);

    unsigned long shown; /* actions in the hint line, one bit each: SHOWS(ADD) */
    unsigned long (*fits)(struct tui *tui, void *state); /* those that only what is selected takes,
                                                            beside them; or NULL */
    const char *enter_hint;  /* what Enter does here, where "open" is not the word; or NULL */
    const char *typing_hint; /* the hint line while something is typed */
};

#define SHOWS(name) (1ul << ACTION_##name)

extern const struct screen screen_builds, screen_new, screen_outline, screen_add, screen_form,
    screen_order, screen_step, screen_buying, screen_cutting, screen_cloth, screen_money,
    screen_findings, screen_trade, screen_shop, screen_map, screen_point, screen_help, screen_now,
    screen_papers, screen_parts, screen_measures, screen_picture;

#define TUI_DEPTH 12

struct open_screen {
    const struct screen *screen;
    void *state;
};

/* Words that are being found in the list on top. */
struct find {
    bool open;
    int from; /* the line that was chosen when it began */
    struct entry words;
};

struct tui {
    struct desk *desk;
    struct view view;
    struct open_screen stack[TUI_DEPTH];
    int depth;
    struct find find;
    struct arena scratch; /* texts and pictures of one painting */
    char message[256];    /* what was just done, or why not; until the next key */
    bool message_warns;
    const struct plan *preview; /* plan of the draft while a field is edited; NULL otherwise */
    bool searching;             /* layouts may still become better while nothing is typed */
};

/* Opens a screen on top; at the deepest place the topmost is replaced. */
void tui_open(struct tui *tui, const struct screen *screen, const struct target *target);
void tui_close_top(struct tui *tui);

/* What a key would do that has the action: here, or everywhere. */
enum reaction tui_act(struct tui *tui, enum action action);

/* Says what was done, or why it was not. The text is filtered when it is painted. */
void tui_say(struct tui *tui, const char *format, ...) __attribute__((format(printf, 2, 3)));
void tui_warn(struct tui *tui, const struct fault_note *note);

/* The model and plan in force. */
static inline const struct model *tui_model(const struct tui *tui)
{
    return desk_model(tui->desk);
}
static inline const struct plan *tui_plan(const struct tui *tui)
{
    return desk_plan(tui->desk);
}

/* Opens the form of a new item of a kind, which is added at once (and can be undone). */
void tui_add_item(struct tui *tui, enum entity_kind kind, int64_t owner);

#endif
