#include "tui/hints.h"

#include "tui/find.h"

/* Below this height the row is left to what the screen shows. */
#define ROWS_FOR_PLACES 24

/* Screens of a build that are reached from each other, as they follow at work. */
static const enum action places[] = {ACTION_STEPS, ACTION_BUYING,   ACTION_CUTTING, ACTION_CLOTH,
                                     ACTION_MONEY, ACTION_FINDINGS, ACTION_HOLES,   ACTION_PAPERS,
                                     ACTION_TRADE, ACTION_SHOP};

static action_set all_places(void)
{
    action_set set = 0;
    for (size_t i = 0; i < sizeof places / sizeof *places; i++)
        set |= UINT64_C(1) << places[i];
    return set;
}

static const struct screen *screen_on(const struct tui *tui)
{
    return tui->stack[tui->depth - 1].screen;
}

static action_set fitting(struct tui *tui, const struct open_screen *open)
{
    return open->screen->fits ? open->screen->fits(tui, open->state) : 0;
}

action_set hints_shown(struct tui *tui, const struct open_screen *open)
{
    return open->screen->shown | fitting(tui, open);
}

static const char *word_of(const struct screen *screen, enum action action)
{
    for (int i = 0; i < HINTS && screen->words[i].word; i++) {
        if (screen->words[i].action == action)
            return screen->words[i].word;
    }
    return actions[action].label;
}

static int hint_width(const struct tui *tui, enum action action, const char *word)
{
    return text_columns(tui_key(tui, action).at) + 1 + text_columns(word) + 2;
}

static void paint_hint(struct tui *tui, int row, int column, enum action action, const char *word)
{
    view_format(&tui->view, row, column, VIEW_FAINT, "%s %s", tui_key(tui, action).at, word);
}

/* Whether an action keeps its room: the way back from a slip, and the way out. */
static bool is_kept(enum action action)
{
    return action == ACTION_UNDO || action == ACTION_QUIT;
}

static int kept_width(const struct tui *tui, action_set shown)
{
    int width = 0;
    for (int i = 0; i < ACTION_COUNT; i++) {
        enum action action = (enum action)i;
        if ((shown & UINT64_C(1) << i) && is_kept(action))
            width += hint_width(tui, action, word_of(screen_on(tui), action));
    }
    return width;
}

/* "Enter open  a add  ? keys  u undo  q leave": what does not fit is left out, but not what is
 * kept. */
static void paint_actions(struct tui *tui, int row, action_set elsewhere)
{
    const struct screen *screen = screen_on(tui);
    action_set fits = fitting(tui, &tui->stack[tui->depth - 1]);
    action_set shown = ((screen->shown & ~elsewhere) | fits) | SHOWS(HELP) | SHOWS(QUIT);
    int left = tui->view.columns - kept_width(tui, shown);
    int column = 1;
    for (int i = 0; i < ACTION_COUNT; i++) {
        enum action action = (enum action)i;
        int width = hint_width(tui, action, word_of(screen, action));
        if (!(shown & UINT64_C(1) << i) || (!is_kept(action) && width > left))
            continue;
        left -= is_kept(action) ? 0 : width;
        paint_hint(tui, row, column, action, word_of(screen, action));
        column += width;
    }
}

/* "o order  b buy  k cutting": as many as have room. */
static void paint_places(struct tui *tui, int row)
{
    int column = 1;
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        const char *word = actions[places[i]].label;
        int width = hint_width(tui, places[i], word);
        if (column + width - 2 > tui->view.columns)
            return;
        paint_hint(tui, row, column, places[i], word);
        column += width;
    }
}

int hints_rows(const struct tui *tui, int rows)
{
    return rows >= ROWS_FOR_PLACES && screen_on(tui)->place && tui_model(tui)->build.key ? 2 : 1;
}

void hints_paint(struct tui *tui, int row)
{
    int columns = tui->view.columns;
    bool two = hints_rows(tui, tui->view.rows) > 1;
    if (two)
        paint_places(tui, row + 1);
    if (tui->find.open)
        find_paint(tui, row);
    else if (tui->message[0])
        view_row(&tui->view, row, 1, columns - 1,
                 tui->message_warns ? VIEW_WARNING | VIEW_STRONG : VIEW_STRONG, tui->message);
    else if (tui_is_typing(tui))
        view_text(&tui->view, row, 1, columns - 1, VIEW_FAINT, screen_on(tui)->typing_hint);
    else
        paint_actions(tui, row, two ? all_places() : 0);
}
