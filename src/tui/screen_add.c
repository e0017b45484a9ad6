/* What can be added to a build, or to the workshop. */
#include "desk/clock.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>

static const enum entity_kind of_build[] = {
    ENTITY_box,     ENTITY_facing,  ENTITY_layer,  ENTITY_join,          ENTITY_member,
    ENTITY_fitting, ENTITY_face,    ENTITY_cutout, ENTITY_outline_point, ENTITY_layer_edge,
    ENTITY_tufting, ENTITY_opening, ENTITY_point,  ENTITY_group,         ENTITY_group_box,
    ENTITY_passage, ENTITY_wall,    ENTITY_object, ENTITY_extra,         ENTITY_spend,
    ENTITY_measure};
static const enum entity_kind of_shop[] = {ENTITY_stock,    ENTITY_offer,     ENTITY_flaw,
                                           ENTITY_leftover, ENTITY_supplier,  ENTITY_tool,
                                           ENTITY_set,      ENTITY_shop_spend};

struct add_state {
    struct list_view list;
    const enum entity_kind *kinds;
    int64_t owner;
};

static void add_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct add_state *state = opaque;
    bool shop = target->kind == ENTITY_workshop;
    (void)tui;
    state->kinds = shop ? of_shop : of_build;
    state->owner = target->key;
    list_view_resize(&state->list, (int)(shop ? sizeof of_shop / sizeof *of_shop
                                              : sizeof of_build / sizeof *of_build));
    list_view_choose(&state->list, 0);
}

static void add_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct add_state *state = opaque;
    char name[32];
    list_view_fit(&state->list, top, height);
    for (int i = 0; i < list_view_shown(&state->list); i++) {
        int index = state->list.top + i;
        const struct entity *entity = entity_of(state->kinds[index]);
        int style = index == state->list.chosen ? VIEW_CHOSEN : VIEW_PLAIN;
        snprintf(name, sizeof name, "%s", entity->name);
        text_blank(name);
        view_row(&tui->view, top + i, 0, tui->view.columns, style, "");
        view_text(&tui->view, top + i, 1, 16, style | VIEW_STRONG, name);
        view_text(&tui->view, top + i, 18, tui->view.columns - 19, style, entity->help);
        if (index == state->list.chosen)
            view_cursor(&tui->view, top + i, 1);
    }
}

struct addition {
    enum entity_kind kind;
    int64_t owner;
    int64_t key;
};

static enum fault change_add(struct model *draft, void *context, struct fault_note *note)
{
    struct addition *addition = context;
    char today[CLOCK_TEXT];
    void *item = model_add(draft, addition->kind);
    addition->key = item_key(item);
    return form_fill(draft, addition->kind, item, addition->owner, clock_today(today), note);
}

void tui_add_item(struct tui *tui, enum entity_kind kind, int64_t owner)
{
    struct addition addition = {kind, owner, 0};
    char label[STORE_LABEL];
    struct fault_note note = {0};
    snprintf(label, sizeof label, "new %s", entity_of(kind)->name);
    if (desk_edit(tui->desk, label, change_add, &addition, &note)) {
        tui_warn(tui, &note);
        return;
    }
    tui->made = (struct made){addition.key, entity_of(kind)->in_shop};
    bool paid = kind == ENTITY_spend || kind == ENTITY_shop_spend;
    tui_open(tui, &screen_form, &(struct target){kind, addition.key, NULL, paid ? "amount" : NULL});
}

static enum reaction add_act(struct tui *tui, void *opaque, enum action action)
{
    struct add_state *state = opaque;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action != ACTION_ENTER || state->list.chosen < 0)
        return REACT_PASS;
    enum entity_kind kind = state->kinds[state->list.chosen];
    int64_t owner = state->owner;
    tui_close_top(tui);
    tui_add_item(tui, kind, owner);
    return REACT_TAKEN;
}

static struct list_view *add_list(void *opaque)
{
    return &((struct add_state *)opaque)->list;
}

static void add_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct entity *entity = entity_of(((const struct add_state *)opaque)->kinds[index]);
    (void)tui;
    text_format(out, "%s %s", entity->name, entity->help);
}

const struct screen screen_add = {
    .name = "add",
    .size = sizeof(struct add_state),
    .open = add_open,
    .paint = add_paint,
    .act = add_act,
    .list = add_list,
    .line = add_line,
    .shown = SHOWS(ENTER) | SHOWS(LEAVE),
    .words = {{ACTION_ENTER, "add"}},
};
