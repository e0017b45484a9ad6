/*
 * Cloth: the ways to take it, side by side, under them each cover, and where something was measured
 * the cloth as planned and as built. Below the list the chosen line in full: a way beside the one
 * in force, or a cover with its sewing and its pieces on the roll, through which Left and Right
 * leaf. Enter takes a way, and goes to the form of a cover.
 *
 * The ways are worked out when the screen opens and when the plan has changed since.
 */
#include "paper/print.h"
#include "paper/sheets.h"
#include "tui/list.h"
#include "tui/pager.h"
#include "tui/screen.h"

#include <stdio.h>
#include <string.h>

struct cloth_state {
    struct list_view list;
    struct pager pager;
    struct arena arena; /* of the ways */
    const struct cloth_way *ways;
    size_t way_count;
    struct cloth_built built;
    unsigned serial; /* of the desk when they were worked out */
};

static void cloth_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct cloth_state *state = opaque;
    (void)target;
    arena_init(&state->arena);
    state->serial = desk_serial(tui->desk) - 1;
}

static void cloth_close(void *opaque)
{
    arena_release(&((struct cloth_state *)opaque)->arena);
}

static size_t count_covers(const struct plan *plan)
{
    size_t count = 0;
    for (size_t i = 0; i < plan->covers.count; i++)
        count += sheet_cover_is_cloth(plan, &plan->covers.at[i]);
    return count;
}

/* The nth cover of cloth, counted from 0; NULL where there are fewer. */
static const struct cover *cover_at(const struct plan *plan, size_t nth)
{
    for (size_t i = 0; i < plan->covers.count; i++)
        if (sheet_cover_is_cloth(plan, &plan->covers.at[i]) && nth-- == 0)
            return &plan->covers.at[i];
    return NULL;
}

/* Works the ways out anew where the plan is another than that they were worked out for. */
static void look(struct tui *tui, struct cloth_state *state)
{
    if (state->serial != desk_serial(tui->desk)) {
        state->serial = desk_serial(tui->desk);
        arena_release(&state->arena);
        state->way_count = 0;
        state->built.measured = false;
        if (cloth_ways(tui_plan(tui), &state->arena, &state->ways, &state->way_count) ||
            cloth_built(tui_plan(tui), &state->arena, &state->built))
            tui_say(tui, "there is not enough memory to look at other ways");
    }
    list_view_resize(&state->list,
                     (int)(state->way_count + count_covers(tui_plan(tui)) + state->built.measured));
}

/* The way of the chosen line; NULL on a cover. */
static const struct cloth_way *way_of(const struct cloth_state *state, int index)
{
    return index >= 0 && (size_t)index < state->way_count ? &state->ways[index] : NULL;
}

static const struct cover *cover_of(const struct tui *tui, const struct cloth_state *state,
                                    int index)
{
    return index < 0 ? NULL : cover_at(tui_plan(tui), (size_t)index - state->way_count);
}

/* The way in force of the same cloth: the first of its ways. */
static const struct cloth_way *now_of(const struct cloth_state *state, const struct cloth_way *way)
{
    while (way > state->ways && !way->chosen)
        way--;
    return way;
}

/* ---- painting ---- */

/* "* as it is" */
static void way_name(struct text *line, const struct cloth_way *way)
{
    text_format(line, "%c %s", way->chosen ? '*' : way->barred ? '-' : ' ', way->cure.text);
    if (way->barred)
        text_format(line, ": %s", way->barred);
}

/* " 5.50 yd   2 seams  21 h 53    425.91", as wide on every line. */
static void way_figures(struct text *line, const struct plan *plan, const struct cloth_way *way)
{
    text_format(line, " %9s %3d %-5s %8s %9s", print_roll(plan, way->length).at, way->seams,
                way->seams == 1 ? "seam" : "seams", print_minutes(way->minutes).at,
                print_money(plan, way->cost).at);
}

#define WAY_COLUMNS 40 /* of its name, where no screen cuts it */

static void way_line(struct text *line, const struct plan *plan, const struct cloth_way *way)
{
    way_name(line, way);
    if (way->barred)
        return;
    text_pad(line, WAY_COLUMNS);
    way_figures(line, plan, way);
}

/* "  L (left) cover  14-1/4 x 54-1/4 in, 4 pieces" */
static void cover_line(struct text *line, const struct plan *plan, const struct cover *cover)
{
    int pieces = 0;
    for (size_t i = 0; i < plan->pieces.count; i++)
        pieces += plan->pieces.at[i].layer == cover->layer;
    text_add(line, "  ");
    sheet_cover_name(line, plan, cover);
    text_pad(line, 24);
    text_format(line, "  %s x %s, %d %s", print_length(plan, cover->cut_width).at,
                print_length_unit(plan, cover->cut_height).at, pieces,
                pieces == 1 ? "piece" : "pieces");
    if (cover->seams)
        text_format(line, ", %d %s between widths", cover->seams,
                    cover->seams == 1 ? "seam" : "seams");
}

static void cloth_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct cloth_state *state = opaque;
    const struct cloth_way *way = way_of(state, index);
    const struct cover *cover = way ? NULL : cover_of(tui, state, index);
    if (way)
        way_line(out, tui_plan(tui), way);
    else if (cover)
        cover_line(out, tui_plan(tui), cover);
    else
        text_add(out, "  all pieces as planned and as built");
}

/* Columns for the names: those of the longest, and WAY_COLUMNS at least, where the screen has them
 * beside the figures. */
static int name_columns(const struct tui *tui, const struct cloth_state *state, int figures)
{
    int room = tui->view.columns - 1 - figures;
    int most = WAY_COLUMNS;
    for (size_t i = 0; i < state->way_count; i++) {
        struct text name;
        text_init(&name);
        way_name(&name, &state->ways[i]);
        int columns = text_columns(text_string(&name));
        if (!state->ways[i].barred && columns > most)
            most = columns;
        text_release(&name);
    }
    return most < room ? most : room;
}

#define CUT "..."

/* A name that is too long is cut: ways are chosen by their figures, and the whole name stands below
 * the list. */
static void paint_way(struct tui *tui, const struct cloth_state *state, const struct cloth_way *way,
                      int row, int style)
{
    struct text name, figures;
    text_init(&name);
    text_init(&figures);
    way_name(&name, way);
    way_figures(&figures, tui_plan(tui), way);
    int columns = text_columns(text_string(&figures));
    int most = name_columns(tui, state, columns);
    int cut = text_columns(text_string(&name)) > most ? (int)strlen(CUT) : 0;
    view_row(&tui->view, row, 1, most, style, "");
    view_text(&tui->view, row, 1, most - cut, style, text_string(&name));
    view_text(&tui->view, row, 1 + most - cut, cut, style, CUT);
    view_row(&tui->view, row, 1 + most, tui->view.columns - 1 - most, style, text_string(&figures));
    text_release(&name);
    text_release(&figures);
}

static void paint_line(struct tui *tui, struct cloth_state *state, int index, int row)
{
    const struct cloth_way *way = way_of(state, index);
    bool chosen = index == state->list.chosen;
    int style = chosen ? VIEW_CHOSEN : way && way->barred ? VIEW_FAINT : VIEW_PLAIN;
    struct text line;
    text_init(&line);
    cloth_line(tui, state, index, &line);
    if (way && !way->barred)
        paint_way(tui, state, way, row, style);
    else
        view_row(&tui->view, row, 1, tui->view.columns - 1, style, text_string(&line));
    if (chosen)
        view_cursor(&tui->view, row, 1);
    text_release(&line);
}

static void paint_chosen(struct tui *tui, struct cloth_state *state, int top, int height)
{
    const struct cloth_way *way = way_of(state, state->list.chosen);
    const struct cover *cover = way ? NULL : cover_of(tui, state, state->list.chosen);
    struct text text;
    text_init(&text);
    if (way)
        sheet_cloth_way(&text, tui_plan(tui), way, now_of(state, way));
    else if (cover)
        sheet_cover(&text, tui_plan(tui), cover);
    else
        sheet_cloth_built(&text, tui_plan(tui), &state->built);
    pager_paint(&state->pager, &tui->view, top, height,
                text_string(&text) + (*text_string(&text) == '\n'));
    text_release(&text);
}

/* Under half of the screen for the list, where it is as long. */
static int list_rows(const struct list_view *list, int height)
{
    int most = 2 * height / 5;
    return list->count < most ? list->count : most;
}

static void cloth_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct cloth_state *state = opaque;
    look(tui, state);
    if (state->list.count == 0) {
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "Nothing is covered yet. Esc goes back.");
        return;
    }
    int rows = list_rows(&state->list, height);
    list_view_fit(&state->list, top, rows);
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_line(tui, state, state->list.top + i, top + i);
    view_level(&tui->view, top + rows, 0, tui->view.columns);
    paint_chosen(tui, state, top + rows + 1, height - rows - 1);
}

/* ---- acting ---- */

static void take(struct tui *tui, const struct cloth_way *way)
{
    struct fault_note note = {0};
    char text[200];
    if (way->chosen) {
        tui_say(tui, "that is the way it is taken now");
        return;
    }
    if (way->barred) {
        tui_say(tui, "not %s: %s", way->cure.text, way->barred);
        return;
    }
    snprintf(text, sizeof text, "%s", way->cure.text);
    if (desk_take_cure(tui->desk, &way->cure, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "done: %s; %s takes it back", text, tui_key(tui, ACTION_UNDO).at);
}

static enum reaction cloth_act(struct tui *tui, void *opaque, enum action action)
{
    struct cloth_state *state = opaque;
    look(tui, state);
    const struct cloth_way *way = way_of(state, state->list.chosen);
    const struct cover *cover = way ? NULL : cover_of(tui, state, state->list.chosen);
    if (list_view_act(&state->list, action)) {
        state->pager.top = 0;
        return REACT_TAKEN;
    }
    if (action == ACTION_LEFT || action == ACTION_RIGHT) {
        pager_act(&state->pager, action == ACTION_LEFT ? ACTION_LEAF_UP : ACTION_LEAF_DOWN);
        return REACT_TAKEN;
    }
    if (action == ACTION_ENTER && way) {
        take(tui, way);
        return REACT_TAKEN;
    }
    if (action == ACTION_ENTER && cover) {
        tui_open(tui, &screen_form, &(struct target){ENTITY_layer, cover->layer, NULL, NULL});
        return REACT_TAKEN;
    }
    return REACT_PASS;
}

static struct list_view *cloth_list(void *opaque)
{
    return &((struct cloth_state *)opaque)->list;
}

const struct screen screen_cloth = {
    .name = "cloth",
    .size = sizeof(struct cloth_state),
    .place = true,
    .open = cloth_open,
    .close = cloth_close,
    .paint = cloth_paint,
    .act = cloth_act,
    .list = cloth_list,
    .line = cloth_line,
    .shown =
        SHOWS(ENTER) | SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(CUTTING) | SHOWS(STEPS) | SHOWS(UNDO),
    .words = {{ACTION_ENTER, "take it, open it"}},
};
