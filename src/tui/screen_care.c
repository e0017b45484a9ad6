/* What takes care, sheet by sheet: weights, lifting, the way in, strength, cautions. The same
 * sheets as `show --care` prints. */
#include "paper/sheets.h"
#include "tui/pager.h"
#include "tui/screen.h"

#include <string.h>

static const struct care_sheet {
    const char *word;
    void (*put)(struct text *out, const struct plan *plan);
} sheets[] = {
    {"weights", sheet_weights},   {"lifting", sheet_lifts},     {"way in", sheet_route},
    {"strength", sheet_strength}, {"cautions", sheet_cautions},
};
#define SHEETS ((int)(sizeof sheets / sizeof *sheets))

struct care_state {
    int sheet;
    struct pager pager;
};

static struct pager *care_pager(void *opaque)
{
    return &((struct care_state *)opaque)->pager;
}

/* Without the blank line and the title that keep it apart where all are printed. */
static void care_sheet(struct tui *tui, void *opaque, struct text *out)
{
    const struct care_state *state = opaque;
    struct text text;
    const char *sheet;

    text_init(&text);
    sheets[state->sheet].put(&text, tui_plan(tui));
    sheet = text_string(&text);
    sheet += strspn(sheet, "\n");
    text_add(out, *sheet ? sheet : "The build has no box yet: there is nothing to take care of.\n");
    text_release(&text);
}

/* "weights  lifting  way in": the one that is shown stands out. */
static void paint_words(struct tui *tui, const struct care_state *state, int row)
{
    int column = 2;

    for (int i = 0; i < SHEETS; i++) {
        int style = i == state->sheet ? VIEW_CHOSEN : VIEW_FAINT;

        view_format(&tui->view, row, column, style, " %s ", sheets[i].word);
        column += (int)strlen(sheets[i].word) + 4;
    }
}

static void care_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct care_state *state = opaque;
    struct text text;

    paint_words(tui, state, top);
    text_init(&text);
    care_sheet(tui, state, &text);
    pager_paint(&state->pager, &tui->view, top + 2, height - 2, text_string(&text));
    text_release(&text);
}

static enum reaction care_act(struct tui *tui, void *opaque, enum action action)
{
    struct care_state *state = opaque;

    (void)tui;
    if (action == ACTION_LEFT || action == ACTION_RIGHT) {
        int step = action == ACTION_LEFT ? SHEETS - 1 : 1;

        *state = (struct care_state){.sheet = (state->sheet + step) % SHEETS};
        return REACT_TAKEN;
    }
    return pager_act(&state->pager, action) ? REACT_TAKEN : REACT_PASS;
}

const struct screen screen_care = {
    .name = "care",
    .size = sizeof(struct care_state),
    .place = true,
    .paint = care_paint,
    .act = care_act,
    .pager = care_pager,
    .sheet = care_sheet,
    .shown = SHOWS(LEFT) | SHOWS(RIGHT) | SHOWS(LEAVE) | SHOWS(FIND),
    .words = {{ACTION_LEFT, "sheet before"}, {ACTION_RIGHT, "next sheet"}},
};
