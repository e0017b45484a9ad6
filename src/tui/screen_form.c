/*
 * The fields of one item. A field is changed in place; while it is typed, a draft shows in the
 * tally what the change would do, and a value that is refused keeps its reason beside it. What is
 * accepted is in the store at once.
 */
#include "tui/entry.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/picture.h"
#include "tui/screen.h"

#include "base/show.h"

#include <stdio.h>
#include <string.h>

#define LABEL_WIDTH 17
#define VALUE_COLUMN (LABEL_WIDTH + 2)
#define HELP_ROWS 4
#define HEAD_ROWS 1

struct form_state {
    enum entity_kind kind;
    int64_t key;
    const struct field *fields[FORM_FIELDS];
    struct list_view list;
    bool typing;
    struct entry entry;
    char before[ENTRY_TEXT];
    struct fault_note refusal; /* code FAULT_NONE: none */
};

static const void *item_of(const struct tui *tui, const struct form_state *state)
{
    const struct model *model = tui_model(tui);
    if (state->kind >= ENTITY_COUNT)
        return model_at_const(model, state->kind, 0);
    return model_find_const(model, state->kind, state->key);
}

static const struct field *chosen_field(const struct form_state *state)
{
    return state->fields[state->list.chosen];
}

static void form_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct form_state *state = opaque;
    (void)tui;
    state->kind = target->kind;
    state->key = target->key;
    list_view_resize(&state->list, form_fields(target->kind, state->fields));
    list_view_choose(&state->list, 0);
    for (int i = 0; target->field && i < state->list.count; i++) {
        if (strcmp(state->fields[i]->name, target->field) == 0)
            list_view_choose(&state->list, i);
    }
}

/* ---- painting ---- */

static void paint_field(struct tui *tui, struct form_state *state, const void *item, int index,
                        int row)
{
    const struct field *field = state->fields[index];
    bool chosen = index == state->list.chosen;
    int width = tui->view.columns >= 100 ? 40 : 26;
    int reason = VALUE_COLUMN + width + 1;
    struct text text;
    text_init(&text);
    form_label(field, &text);
    view_text(&tui->view, row, 1, LABEL_WIDTH, chosen ? VIEW_STRONG : VIEW_PLAIN,
              text_string(&text));
    text_clear(&text);
    field_write(field, tui_model(tui), item, &text);
    for (size_t i = 0; i < text.length; i++) /* a note of several lines stands in one here */
        text.at[i] = text.at[i] == '\n' ? ' ' : text.at[i];
    if (chosen && state->typing) {
        entry_paint(&state->entry, &tui->view, row, VALUE_COLUMN, width);
        if (state->refusal.code)
            view_text(&tui->view, row, reason, tui->view.columns - reason, VIEW_WARNING,
                      state->refusal.why);
    } else {
        view_row(&tui->view, row, VALUE_COLUMN, width, chosen ? VIEW_CHOSEN : VIEW_PLAIN,
                 text_string(&text));
        if (chosen)
            view_cursor(&tui->view, row, VALUE_COLUMN);
    }
    text_release(&text);
}

static void paint_help(struct tui *tui, const struct form_state *state, int row)
{
    const struct field *field = chosen_field(state);
    struct text allowed;
    int columns = tui->view.columns;
    text_init(&allowed);
    form_allowed(field, tui_model(tui), &allowed);
    view_level(&tui->view, row, 0, columns);
    view_text(&tui->view, row + 1, 1, columns - 2, VIEW_PLAIN, field->help);
    if (state->typing && state->refusal.code)
        view_wrapped(&tui->view, row + 2, 1, columns - 2, 2, VIEW_WARNING | VIEW_STRONG,
                     state->refusal.why);
    else
        view_wrapped(&tui->view, row + 2, 1, columns - 2, 2, VIEW_FAINT, text_string(&allowed));
    text_release(&allowed);
}

/* Which item it is, and how much of its fields shows. */
static void paint_head(struct tui *tui, const struct form_state *state, int row)
{
    char name[MODEL_NAME_TEXT];
    struct text head;
    text_init(&head);
    text_format(&head, "%s: %s", entity_of(state->kind)->name,
                model_item_name(name, tui_model(tui), state->kind, state->key));
    if (state->list.count > state->list.height && state->list.height > 0)
        text_format(&head, "   field %d of %d", state->list.chosen + 1, state->list.count);
    view_text(&tui->view, row, 1, tui->view.columns - 2, VIEW_STRONG, text_string(&head));
    text_release(&head);
}

/* The box, or the face that the item is about, as it would be with what is being typed. */
static void paint_item(struct tui *tui, const struct form_state *state, const void *item,
                       struct picture_place place)
{
    const struct field *of = field_named(entity_of(state->kind), "box");
    const struct field *side = field_named(entity_of(state->kind), "side");
    int64_t key = state->kind == ENTITY_box ? state->key : of ? field_whole(of, item) : 0;
    const struct box *box = MODEL_FIND(tui_model(tui), box, key);
    if (box)
        picture_paint_item(
            tui, tui->preview ? tui->preview : tui_plan(tui),
            &(struct picture_ask){.kind = state->kind,
                                  .key = state->key,
                                  .box = key,
                                  .side = side ? field_whole(side, item) : box->main_side},
            place);
}

static void form_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct form_state *state = opaque;
    const void *item = item_of(tui, state);
    if (!item) {
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "It is not there any more. Esc goes back.");
        return;
    }
    list_view_fit(&state->list, top + HEAD_ROWS, height - HELP_ROWS - HEAD_ROWS);
    paint_head(tui, state, top);
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_field(tui, state, item, state->list.top + i, top + HEAD_ROWS + i);
    int below = top + HEAD_ROWS + state->list.count;
    paint_item(tui, state, item,
               (struct picture_place){below + 1, 1, top + height - HELP_ROWS - below - 1, NULL});
    paint_help(tui, state, top + height - HELP_ROWS);
}

/* ---- typing ---- */

static void begin_typing(struct tui *tui, struct form_state *state)
{
    struct text text;
    text_init(&text);
    field_write(chosen_field(state), tui_model(tui), item_of(tui, state), &text);
    entry_offer(&state->entry, text_string(&text));
    snprintf(state->before, sizeof state->before, "%s", state->entry.text);
    text_release(&text);
    state->typing = true;
    state->refusal.code = FAULT_NONE;
}

static void end_typing(struct tui *tui, struct form_state *state)
{
    state->typing = false;
    state->refusal.code = FAULT_NONE;
    tui->preview = NULL;
    desk_abandon(tui->desk);
}

/* What the field would be given: the choice that a beginning means, or what is typed. */
static void meant(const struct tui *tui, const struct form_state *state, char text[ENTRY_TEXT])
{
    struct text whole;
    text_init(&whole);
    form_complete(chosen_field(state), tui_model(tui), state->entry.text, &whole);
    snprintf(text, ENTRY_TEXT, "%s", text_string(&whole));
    text_release(&whole);
}

/* The draft with what stands there now: its plan for the tally, or why it is refused. */
static void preview(struct tui *tui, struct form_state *state)
{
    char text[ENTRY_TEXT];
    meant(tui, state, text);
    struct desk_field change = {state->kind, state->key, chosen_field(state)->name, text};
    desk_abandon(tui->desk);
    tui->preview = NULL;
    state->refusal = (struct fault_note){.code = FAULT_NONE};
    if (strcmp(text, state->before) == 0)
        return;
    if (desk_change(tui->desk, desk_field_change, &change, &state->refusal))
        return;
    (void)desk_preview(tui->desk, &tui->preview, &state->refusal);
}

/* Commits what stands there. Where another program wrote meanwhile, its state is read and the edit
 * made on that. */
static enum fault commit(struct tui *tui, struct form_state *state, const char *text)
{
    const char *field = chosen_field(state)->name;
    bool changed;
    tui->preview = NULL;
    enum fault fault = desk_set(tui->desk, state->kind, state->key, field, text, &state->refusal);
    if (fault == FAULT_CHANGED && !desk_refresh(tui->desk, &changed, &state->refusal))
        fault = desk_set(tui->desk, state->kind, state->key, field, text, &state->refusal);
    return fault;
}

static bool accept(struct tui *tui, struct form_state *state)
{
    char text[ENTRY_TEXT];
    meant(tui, state, text);
    if (strcmp(text, state->before) != 0 && commit(tui, state, text))
        return false;
    end_typing(tui, state);
    return true;
}

/* Goes through the choices of a field that has few; false for one that is typed. */
static bool turn(struct tui *tui, struct form_state *state, int by)
{
    struct text text;
    text_init(&text);
    bool turned = form_turn(chosen_field(state), tui_model(tui), state->entry.text, by, &text);
    if (turned) {
        entry_offer(&state->entry, text_string(&text));
        preview(tui, state);
    }
    text_release(&text);
    return turned;
}

static enum reaction type_key(struct tui *tui, struct form_state *state, int key)
{
    if (key == KEY_ESCAPE) {
        end_typing(tui, state);
        return REACT_TAKEN;
    }
    if (key == KEY_RETURN || key == KEY_TAB || key == KEY_ARROW_DOWN || key == KEY_ARROW_UP) {
        if (accept(tui, state))
            list_view_act(&state->list, key == KEY_ARROW_UP ? ACTION_UP : ACTION_DOWN);
        return REACT_TAKEN;
    }
    if ((key == KEY_ARROW_LEFT && turn(tui, state, -1)) ||
        (key == KEY_ARROW_RIGHT && turn(tui, state, 1)))
        return REACT_TAKEN;
    if (entry_key(&state->entry, key))
        preview(tui, state);
    return REACT_TAKEN;
}

static enum reaction form_key(struct tui *tui, void *opaque, int key)
{
    struct form_state *state = opaque;
    if (!item_of(tui, state))
        return REACT_LEAVE;
    if (state->typing)
        return type_key(tui, state, key);
    if (key < KEY_SPACE || key >= KEY_FIRST_SPECIAL)
        return REACT_PASS;
    begin_typing(tui, state);
    return type_key(tui, state, key);
}

static enum reaction form_paste(struct tui *tui, void *opaque, const char *text)
{
    struct form_state *state = opaque;
    entry_insert(&state->entry, text);
    preview(tui, state);
    return REACT_TAKEN;
}

static bool form_typing(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((struct form_state *)opaque)->typing;
}

/* ---- acting ---- */

/* From the list of fields a choice is begun with its first turn, and taken with Enter. */
static enum reaction begin_turn(struct tui *tui, struct form_state *state, int by)
{
    if (form_choices(chosen_field(state), tui_model(tui)) > 0) {
        begin_typing(tui, state);
        turn(tui, state, by);
    }
    return REACT_TAKEN;
}

static enum reaction form_act(struct tui *tui, void *opaque, enum action action)
{
    struct form_state *state = opaque;
    if (!item_of(tui, state))
        return REACT_LEAVE;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    switch (action) {
    case ACTION_ENTER:
        begin_typing(tui, state);
        return REACT_TAKEN;
    case ACTION_NOTE:
        tui_note(tui, state->kind, state->key);
        return REACT_TAKEN;
    case ACTION_RIGHT:
    case ACTION_TICK:
        return begin_turn(tui, state, 1);
    case ACTION_LEFT:
        return begin_turn(tui, state, -1);
    default:
        return REACT_PASS;
    }
}

static struct list_view *form_list(void *opaque)
{
    return &((struct form_state *)opaque)->list;
}

static void form_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct form_state *state = opaque;
    const void *item = item_of(tui, state);
    form_label(state->fields[index], out);
    text_add(out, "  ");
    if (item)
        field_write(state->fields[index], tui_model(tui), item, out);
}

const struct screen screen_form = {
    .name = "fields",
    .size = sizeof(struct form_state),
    .open = form_open,
    .paint = form_paint,
    .act = form_act,
    .typing = form_typing,
    .key = form_key,
    .paste = form_paste,
    .list = form_list,
    .line = form_line,
    .shown = SHOWS(ENTER) | SHOWS(LEAVE) | SHOWS(UNDO) | SHOWS(REDO),
    .words = {{ACTION_ENTER, "change"}},
    .typing_hint = "Enter takes it, Esc leaves it as it was, Left and Right go through words",
};
