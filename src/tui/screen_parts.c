/* Parts that were cut: Space marks one as spoiled, or takes that back. */
#include "base/show.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>

struct parts_state {
    struct list_view list;
};

/* What became of a part that was cut: a part that changed since is not needed as it was. */
static const char *what_became(const struct plan *plan, size_t cut)
{
    const struct cut_part *part = &plan->facts->cut_parts.at[cut];
    bool stands = part->cut_stock == 0;
    for (size_t i = 0; i < plan->parts.count && !stands; i++)
        stands = plan->parts.at[i].cut == cut;
    return part->spoiled ? "spoiled" : stands ? "" : "not needed";
}

static void parts_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct parts_state *state = opaque;
    const struct model *model = tui_model(tui);
    list_view_resize(&state->list, (int)model->cut_parts.count);
    list_view_fit(&state->list, top, height);
    if (state->list.count == 0)
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "Nothing is cut yet. Esc goes back.");
    for (int i = 0; i < list_view_shown(&state->list); i++) {
        int index = state->list.top + i;
        const struct cut_part *part = &model->cut_parts.at[index];
        int style = index == state->list.chosen ? VIEW_CHOSEN : VIEW_PLAIN;
        char length[QUANTITY_TEXT];
        view_row(&tui->view, top + i, 0, tui->view.columns, style, "");
        view_text(&tui->view, top + i, 1, 30, style, part->part);
        view_text(&tui->view, top + i, 32, 20, style,
                  quantity_print_unit(length, QUANTITY_LENGTH, model_units(model), part->length));
        view_text(&tui->view, top + i, 54, 10, style, what_became(tui_plan(tui), (size_t)index));
        if (index == state->list.chosen)
            view_cursor(&tui->view, top + i, 1);
    }
}

static enum reaction spoil(struct tui *tui, const struct cut_part *part)
{
    char label[96];
    bool spoiled = !part->spoiled;
    struct fault_note note = {0};
    snprintf(label, sizeof label, "%s", part->part);
    if (desk_spoil(tui->desk, label, spoiled, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, spoiled ? "%s is cut anew: a step for it has come up" : "%s is as good as cut",
                label);
    return REACT_TAKEN;
}

static enum reaction parts_act(struct tui *tui, void *opaque, enum action action)
{
    struct parts_state *state = opaque;
    list_view_resize(&state->list, (int)tui_model(tui)->cut_parts.count);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if ((action == ACTION_TICK || action == ACTION_SPOIL) && state->list.chosen >= 0 &&
        state->list.chosen < (int)tui_model(tui)->cut_parts.count)
        return spoil(tui, &tui_model(tui)->cut_parts.at[state->list.chosen]);
    return REACT_PASS;
}

static struct list_view *parts_list(void *opaque)
{
    return &((struct parts_state *)opaque)->list;
}

static void parts_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct cut_part *part = &tui_model(tui)->cut_parts.at[index];
    char length[QUANTITY_TEXT];
    const char *what = what_became(tui_plan(tui), (size_t)index);
    (void)opaque;
    text_format(
        out, "%s  %s%s%s", part->part,
        quantity_print_unit(length, QUANTITY_LENGTH, model_units(tui_model(tui)), part->length),
        *what ? "  " : "", what);
}

const struct screen screen_parts = {
    .name = "parts that were cut",
    .size = sizeof(struct parts_state),
    .paint = parts_paint,
    .act = parts_act,
    .list = parts_list,
    .line = parts_line,
    .shown = SHOWS(SPOIL) | SHOWS(LEAVE) | SHOWS(UNDO),
};
