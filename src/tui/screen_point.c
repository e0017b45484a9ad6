/*
 * One hole of a join: its measures, the ways to its head, what meets it when; beside it the face
 * with the hole marked, and the corridor of driver and hand from the side.
 */
#include "paper/sheets.h"
#include "tui/pager.h"
#include "tui/picture.h"
#include "tui/screen.h"

struct point_state {
    int64_t join;
    size_t hole; /* counted from 0 */
    struct pager pager;
};

/* The hole that a point given by hand became. */
static size_t hole_of(const struct plan *plan, const struct point *given)
{
    const struct junction *junction = plan_junction(plan, given->join);
    for (size_t i = 0; junction && i < junction->point_count; i++) {
        const struct plan_point *point = &plan->points.at[junction->first_point + i];
        if (point->u == given->u && point->v == given->v)
            return i;
    }
    return 0;
}

static void point_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct point_state *state = opaque;
    const struct point *given = MODEL_FIND(tui_model(tui), point, target->key);
    state->join = target->key;
    if (target->kind != ENTITY_point || !given)
        return;
    state->join = given->join;
    state->hole = hole_of(tui_plan(tui), given);
}

/* The index of the hole in the plan; PLAN_NONE when the join has gone or has none. */
static size_t shown_point(struct tui *tui, struct point_state *state)
{
    const struct junction *junction = plan_junction(tui_plan(tui), state->join);
    if (!junction || junction->point_count == 0)
        return PLAN_NONE;
    if (state->hole >= junction->point_count)
        state->hole = junction->point_count - 1;
    return junction->first_point + state->hole;
}

static void paint_pictures(struct tui *tui, size_t point, struct picture_place place)
{
    struct picture_place upper = place;
    struct picture_place lower = place;
    upper.height = place.height / 2;
    lower.top = place.top + upper.height;
    lower.height = place.height - upper.height;
    picture_paint_point(tui, tui_plan(tui), point, upper);
    picture_paint_corridor(tui, tui_plan(tui), point, lower);
}

static struct pager *point_pager(void *opaque)
{
    return &((struct point_state *)opaque)->pager;
}

static int sheet_width(const struct tui *tui)
{
    return tui->view.columns / 2 + 2;
}

static void point_sheet(struct tui *tui, void *opaque, struct text *out)
{
    size_t point = shown_point(tui, opaque);
    if (point == PLAN_NONE)
        text_format(out,
                    "This join has no holes: it is laid or hung on, or no place was found\n"
                    "for them (%s tells why). Esc goes back.\n",
                    tui_key(tui, ACTION_FINDINGS).at);
    else
        sheet_point(out, tui_plan(tui), point, sheet_width(tui) - 2);
}

static void point_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct point_state *state = opaque;
    size_t point = shown_point(tui, state);
    int width = sheet_width(tui);
    struct text text;
    text_init(&text);
    point_sheet(tui, state, &text);
    pager_paint(&state->pager, &tui->view, top, height, text_string(&text));
    text_release(&text);
    if (point == PLAN_NONE)
        return;
    view_upright(&tui->view, top, width, height);
    paint_pictures(tui, point, (struct picture_place){top, width + 2, height, NULL});
}

static enum reaction point_act(struct tui *tui, void *opaque, enum action action)
{
    struct point_state *state = opaque;
    const struct junction *junction = plan_junction(tui_plan(tui), state->join);
    size_t count = junction ? junction->point_count : 0;
    if (pager_act(&state->pager, action))
        return REACT_TAKEN;
    switch (action) {
    case ACTION_LEFT:
        state->hole -= state->hole > 0;
        return REACT_TAKEN;
    case ACTION_RIGHT:
        state->hole += state->hole + 1 < count;
        return REACT_TAKEN;
    case ACTION_ENTER:
        if (junction)
            tui_open(tui, &screen_form, &(struct target){ENTITY_join, state->join, NULL, NULL});
        return REACT_TAKEN;
    default:
        return REACT_PASS;
    }
}

const struct screen screen_point = {
    .name = "one hole (Left, Right: the others)",
    .size = sizeof(struct point_state),
    .open = point_open,
    .paint = point_paint,
    .act = point_act,
    .pager = point_pager,
    .sheet = point_sheet,
    .shown = SHOWS(ENTER) | SHOWS(LEAVE) | SHOWS(HOLES) | SHOWS(STEPS) | SHOWS(FINDINGS),
    .words = {{ACTION_ENTER, "join"}},
};
