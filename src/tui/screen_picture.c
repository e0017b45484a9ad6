/* One picture as large as the screen: of the item that was selected, as on the screen before. */
#include "tui/outline.h"
#include "tui/picture.h"
#include "tui/screen.h"

struct picture_state {
    struct picture_ask ask;
};

struct finding_row {
    struct tui *tui;
    struct picture_state *state;
};

/* Box and face that the outline gives the item. */
static void run_find_row(void *context)
{
    struct finding_row *finding = context;
    struct picture_ask *ask = &finding->state->ask;
    struct outline outline;
    outline_make(&outline, tui_model(finding->tui), false, &finding->tui->scratch);
    for (size_t i = 0; i < outline.rows.count; i++) {
        const struct outline_row *row = &outline.rows.at[i];
        if (row->kind == ask->kind && row->key == ask->key) {
            ask->box = row->box;
            ask->side = row->side;
        }
    }
}

static void picture_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct picture_state *state = opaque;
    state->ask = (struct picture_ask){.kind = target->kind, .key = target->key};
    arena_try(&tui->scratch, run_find_row, &(struct finding_row){tui, state});
}

static void picture_paint_all(struct tui *tui, void *opaque, int top, int height)
{
    struct picture_state *state = opaque;
    picture_paint_item(tui, tui_plan(tui), &state->ask,
                       (struct picture_place){top, 1, height, NULL});
    view_cursor(&tui->view, top, 1);
}

static enum reaction picture_act(struct tui *tui, void *opaque, enum action action)
{
    struct picture_ask *ask = &((struct picture_state *)opaque)->ask;
    switch (action) {
    case ACTION_RIGHT:
        ask->turned = (ask->turned + 1) % PICTURE_TURNS;
        return REACT_TAKEN;
    case ACTION_LEFT:
        ask->turned = (ask->turned + PICTURE_TURNS - 1) % PICTURE_TURNS;
        return REACT_TAKEN;
    case ACTION_VIEW:
        ask->view = picture_next_view(tui_plan(tui), ask);
        ask->turned = 0;
        return REACT_TAKEN;
    case ACTION_LARGE:
        return REACT_LEAVE;
    default:
        return REACT_PASS;
    }
}

const struct screen screen_picture = {
    .name = "picture (Left, Right turn it)",
    .size = sizeof(struct picture_state),
    .open = picture_open,
    .paint = picture_paint_all,
    .act = picture_act,
    .shown = SHOWS(VIEW) | SHOWS(LEAVE) | SHOWS(STEPS) | SHOWS(FINDINGS),
};
