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
#include "tui/pager.h"
#include "tui/settings.h"
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

/* What an action does on a screen, for its hint line. */
#define HINTS 4
struct hint {
    enum action action;
    const char *word; /* NULL behind the last */
};

struct screen {
    const char *name; /* in the title: "order of work" */
    size_t size;      /* of its state, which starts zeroed */
    bool place;       /* of a build: reached from all the others, which it takes the place of */
    void (*open)(struct tui *tui, void *state, const struct target *target);
    void (*close)(void *state); /* gives back what the state holds; NULL where that is nothing */
    void (*paint)(struct tui *tui, void *state, int top, int height);
    enum reaction (*act)(struct tui *tui, void *state, enum action action);

    /* While these take a key or pasted text, no action is looked up; NULL for a screen without
     * typing. */
    bool (*typing)(struct tui *tui, void *state);
    enum reaction (*key)(struct tui *tui, void *state, int key);
    enum reaction (*paste)(struct tui *tui, void *state, const char *text);

    /* Of a screen with a list: the list, and the words of a line, by which it is found and which
     * are copied out. */
    struct list_view *(*list)(void *state);
    void (*line)(struct tui *tui, void *state, int index, struct text *out);

    /* Of a screen that is a sheet instead: where it is scrolled to, and its text. */
    struct pager *(*pager)(void *state);
    void (*sheet)(struct tui *tui, void *state, struct text *out);

    /* While nothing is typed: work that goes on by itself, and its progress. REACT_PASS where there
     * is nothing new to be painted. */
    enum reaction (*idle)(struct tui *tui, void *state);

    action_set shown;                                 /* actions in the hint line */
    action_set (*fits)(struct tui *tui, void *state); /* those that only what is selected takes,
                                                         beside them; or NULL */
    struct hint words[HINTS]; /* where the word of an action is another one here */
    const char *typing_hint;  /* the hint line while something is typed */
};

/* All screens there are, each in a file of its own. */
#define SCREENS(S) \
    S(builds)      \
    S(new)         \
    S(outline)     \
    S(beside)      \
    S(picture)     \
    S(add)         \
    S(form)        \
    S(order)       \
    S(step)        \
    S(measures)    \
    S(now)         \
    S(parts)       \
    S(buying)      \
    S(trip)        \
    S(together)    \
    S(account)     \
    S(compare)     \
    S(stock)       \
    S(prices)      \
    S(cutting)     \
    S(papers)      \
    S(cloth)       \
    S(money)       \
    S(findings)    \
    S(care)        \
    S(map)         \
    S(point)       \
    S(trade)       \
    S(shop)        \
    S(help)

#define SCREEN_DECLARE(name) extern const struct screen screen_##name;
SCREENS(SCREEN_DECLARE)
#undef SCREEN_DECLARE

#define TUI_DEPTH 12
#define TUI_MARKS 64

struct open_screen {
    const struct screen *screen;
    void *state;
};

/* Words that are being found on the screen on top. */
struct find {
    bool open;
    int from; /* the line that was chosen, or on top, when it began */
    struct entry words;
};

/* Items that were just made in a build or the workshop: those with a key from here on; 0: none. */
struct made {
    int64_t from;
    bool shop;
};

enum moved { MOVED_NOT, MOVED_ASKED, MOVED_TOLD };

struct tui {
    struct desk *desk;
    struct view view;
    struct open_screen stack[TUI_DEPTH];
    int depth;
    struct find find;
    struct settings settings;
    int64_t marked[TUI_MARKS]; /* builds that go on a trip together */
    size_t marked_count;
    struct target noting; /* whose note the editor is to be opened for; kind ENTITY_none: none */
    struct text outgoing; /* for the terminal's clipboard; empty when nothing is to go there */
    struct arena scratch; /* texts and pictures of one painting */
    struct made made;     /* what the outline is to choose */
    char message[256];    /* what was just done, or why not; until the next key */
    bool message_warns;
    const struct plan *preview; /* plan of the draft while a field is edited; NULL otherwise */
    enum moved moved;           /* whether the file is gone from under us */
    bool searching;             /* layouts may still become better while nothing is typed */
};

/* Opens a screen on top; at the deepest place the topmost is replaced. */
void tui_open(struct tui *tui, const struct screen *screen, const struct target *target);
void tui_close_top(struct tui *tui);

/* What a key would do that has the action: here, or everywhere. */
enum reaction tui_act(struct tui *tui, enum action action);

/* Whether keys are text now. */
bool tui_is_typing(struct tui *tui);

/* What a key is called that does the action, for sentences about it. */
struct key_name {
    char at[ACTION_KEY_TEXT];
};
struct key_name tui_key(const struct tui *tui, enum action action);

/* Whether a build is marked for the trolley; marks it, or takes the mark away. */
bool tui_is_marked(const struct tui *tui, int64_t build);
void tui_mark(struct tui *tui, int64_t build);

/* Says what was done, or why it was not. The text is filtered when it is painted. */
void tui_say(struct tui *tui, const char *format, ...) __attribute__((format(printf, 2, 3)));
void tui_warn(struct tui *tui, const struct fault_note *note);

/* Asks for the note of an item in the maker's editor; says so where it has none. */
void tui_note(struct tui *tui, enum entity_kind kind, int64_t key);

/* The model and plan in force. */
static inline const struct model *tui_model(const struct tui *tui)
{
    return desk_model(tui->desk);
}
static inline const struct plan *tui_plan(const struct tui *tui)
{
    return desk_plan(tui->desk);
}

/* "looking for less waste: Plywood 1/2, 2 of 3, 40 %", in steps of five; false, and an empty text,
 * where the searches have come to their end. */
#define SEARCH_TEXT 160
bool tui_search_text(const struct tui *tui, char text[SEARCH_TEXT]);

/* Opens the form of a new item of a kind, which is added at once (and can be undone). */
void tui_add_item(struct tui *tui, enum entity_kind kind, int64_t owner);

/* Deletes an item, and says how it comes back, or why it cannot be deleted. */
void tui_delete_item(struct tui *tui, enum entity_kind kind, int64_t key);

#endif
