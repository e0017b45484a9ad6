/*
 * Where a box stands beside another one: "box C left of L, flush at the back, at the bottom". Four
 * lines, each turned with Left and Right; the sentence, the picture and the bottom line show what
 * would be, Enter makes it so.
 */
#include "plan/geometry.h"
#include "tui/list.h"
#include "tui/picture.h"
#include "tui/screen.h"

#include <stdio.h>

enum { ROW_SIDE, ROW_OTHER, ROW_U, ROW_V, ROWS };

struct beside_state {
    struct list_view list;
    struct desk_beside beside;
    struct fault_note refusal;
    bool tried; /* there is a draft: its keys come first */
};

/* The next box in the order of the model that is not the one that is put; 0 for none. */
static int64_t other_box(const struct tui *tui, const struct beside_state *state, int by)
{
    const struct model *model = tui_model(tui);
    int count = (int)model->boxes.count;
    int at = 0;
    for (int i = 0; i < count; i++) {
        if (model->boxes.at[i].key == state->beside.other)
            at = i;
    }
    for (int i = 0; i < count; i++) {
        at = (at + by + count) % count;
        if (model->boxes.at[at].key != state->beside.box)
            return model->boxes.at[at].key;
    }
    return 0;
}

static void beside_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct beside_state *state = opaque;
    state->beside = (struct desk_beside){.box = target->key, .side = SIDE_LEFT};
    state->beside.other = other_box(tui, state, 1);
    list_view_resize(&state->list, ROWS);
    list_view_choose(&state->list, 0);
}

/* ---- words ---- */

/* What an axis begins, and ends, with: left and right, back and front, bottom and top. */
static const char *flush_word(int axis, enum desk_flush flush)
{
    static const int64_t ends[AXIS_COUNT][2] = {[AXIS_X] = {SIDE_LEFT, SIDE_RIGHT},
                                                [AXIS_Y] = {SIDE_BACK, SIDE_FRONT},
                                                [AXIS_Z] = {SIDE_BOTTOM, SIDE_TOP}};
    if (flush == FLUSH_MIDDLE)
        return "in the middle";
    return words_side.at[ends[axis][flush == FLUSH_END]].name;
}

static const char *side_phrase(int64_t side)
{
    static const char *const phrases[SIDE_COUNT] = {
        [SIDE_LEFT] = "left of", [SIDE_RIGHT] = "right of", [SIDE_FRONT] = "in front of",
        [SIDE_BACK] = "behind",  [SIDE_TOP] = "on top of",  [SIDE_BOTTOM] = "under"};
    return phrases[side];
}

static const char *box_name(const struct tui *tui, int64_t key)
{
    const struct box *box = MODEL_FIND(tui_model(tui), box, key);
    return box ? box->name : "nothing";
}

static void beside_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct beside_state *state = opaque;
    const struct desk_beside *beside = &state->beside;
    switch (index) {
    case ROW_SIDE:
        text_format(out, "stands   %s", side_phrase(beside->side));
        break;
    case ROW_OTHER:
        text_format(out, "box      %s", box_name(tui, beside->other));
        break;
    case ROW_U:
        text_format(out, "flush    %s", flush_word(side_u_axis(beside->side), beside->along_u));
        break;
    default:
        text_format(out, "flush    %s", flush_word(side_v_axis(beside->side), beside->along_v));
        break;
    }
}

/* ---- painting ---- */

static void beside_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct beside_state *state = opaque;
    const struct picture_ask ask = {.kind = ENTITY_box,
                                    .key = state->beside.box,
                                    .box = state->beside.box,
                                    .view = PICTURE_PIECE};
    struct text line;
    text_init(&line);
    view_format(&tui->view, top, 1, VIEW_STRONG, "Box %s", box_name(tui, state->beside.box));
    list_view_fit(&state->list, top + 1, ROWS);
    for (int i = 0; i < ROWS; i++) {
        bool chosen = i == state->list.chosen;
        text_clear(&line);
        beside_line(tui, state, i, &line);
        view_row(&tui->view, top + 1 + i, 1, 30, chosen ? VIEW_CHOSEN : VIEW_PLAIN,
                 text_string(&line));
        if (chosen)
            view_cursor(&tui->view, top + 1 + i, 1);
    }
    text_release(&line);
    if (state->refusal.code)
        view_wrapped(&tui->view, top + ROWS + 2, 1, 30, 4, VIEW_WARNING | VIEW_STRONG,
                     state->refusal.why);
    view_upright(&tui->view, top, 33, height);
    picture_paint_item(tui, tui->preview ? tui->preview : tui_plan(tui), &ask,
                       (struct picture_place){top, 35, height, NULL});
}

/* ---- acting ---- */

static void give_up(struct tui *tui, struct beside_state *state)
{
    state->tried = false;
    state->refusal = (struct fault_note){.code = FAULT_NONE};
    tui->preview = NULL;
    desk_abandon(tui->desk);
}

/* The draft with the box where it would stand, and its plan. */
static void try_it(struct tui *tui, struct beside_state *state)
{
    give_up(tui, state);
    if (!desk_change(tui->desk, desk_beside_change, &state->beside, &state->refusal))
        (void)desk_preview(tui->desk, &tui->preview, &state->refusal);
    state->tried = true;
}

static void turn(struct tui *tui, struct beside_state *state, int by)
{
    struct desk_beside *beside = &state->beside;
    switch (state->list.chosen) {
    case ROW_SIDE:
        beside->side = (beside->side + by + SIDE_COUNT) % SIDE_COUNT;
        break;
    case ROW_OTHER:
        beside->other = other_box(tui, state, by);
        break;
    case ROW_U:
        beside->along_u = (enum desk_flush)(((int)beside->along_u + by + FLUSHES) % FLUSHES);
        break;
    default:
        beside->along_v = (enum desk_flush)(((int)beside->along_v + by + FLUSHES) % FLUSHES);
        break;
    }
    try_it(tui, state);
}

static enum reaction take(struct tui *tui, struct beside_state *state)
{
    struct text words;
    give_up(tui, state);
    if (desk_put_beside(tui->desk, &state->beside, &state->refusal))
        return REACT_TAKEN;
    text_init(&words);
    text_format(&words, "box %s stands %s %s", box_name(tui, state->beside.box),
                side_phrase(state->beside.side), box_name(tui, state->beside.other));
    tui_say(tui, "%s; %s takes it back", text_string(&words), tui_key(tui, ACTION_UNDO).at);
    text_release(&words);
    return REACT_LEAVE;
}

static enum reaction beside_act(struct tui *tui, void *opaque, enum action action)
{
    struct beside_state *state = opaque;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    switch (action) {
    case ACTION_LEFT:
        turn(tui, state, -1);
        return REACT_TAKEN;
    case ACTION_RIGHT:
    case ACTION_TICK:
        turn(tui, state, 1);
        return REACT_TAKEN;
    case ACTION_ENTER:
        return take(tui, state);
    default:
        return REACT_PASS;
    }
}

static bool beside_typing(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((const struct beside_state *)opaque)->tried;
}

/* While it is tried, keys that do nothing here do nothing; Esc leaves all as it was. */
static enum reaction beside_key(struct tui *tui, void *opaque, int key)
{
    struct beside_state *state = opaque;
    if (!state->tried)
        return REACT_PASS;
    if (key == KEY_ESCAPE) {
        give_up(tui, state);
        return REACT_LEAVE;
    }
    enum reaction reaction = beside_act(tui, state, keymap_action(&tui->settings.keys, key));
    return reaction == REACT_PASS ? REACT_TAKEN : reaction;
}

static struct list_view *beside_list(void *opaque)
{
    return &((struct beside_state *)opaque)->list;
}

const struct screen screen_beside = {
    .name = "place of a box",
    .size = sizeof(struct beside_state),
    .open = beside_open,
    .paint = beside_paint,
    .act = beside_act,
    .typing = beside_typing,
    .key = beside_key,
    .list = beside_list,
    .line = beside_line,
    .shown = SHOWS(LEFT) | SHOWS(RIGHT) | SHOWS(ENTER) | SHOWS(LEAVE),
    .typing_hint = "Enter puts it there, Left and Right turn the line, Esc leaves it as it was",
    .words = {{ACTION_LEFT, "before"}, {ACTION_RIGHT, "next"}, {ACTION_ENTER, "put it there"}},
};
