/*
 * One build: boxes, layers, joins as an outline beside the picture of the selected face, or beside
 * what is known of an item that has none. The workshop is shown by the same code.
 */
#include "paper/print.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/outline.h"
#include "tui/picture.h"
#include "tui/screen.h"

#include <stdio.h>

struct outline_state {
    struct list_view list;
    int pictured;           /* line whose picture shows: the chosen one, once keys pause */
    int turned;             /* faces or corners on from the item's own */
    enum picture_view view; /* that the maker asked for */
    int64_t asked;          /* item whose deletion waits for Enter; 0: none */
    bool shop;
};

struct making_rows {
    struct tui *tui;
    bool shop;
    struct outline *outline;
};

static void run_rows(void *context)
{
    struct making_rows *making = context;
    outline_make(making->outline, tui_model(making->tui), making->shop, &making->tui->scratch);
}

/* Makes the outline in the scratch arena; false when memory is out. */
static bool make_rows(struct tui *tui, const struct outline_state *state, struct outline *outline)
{
    struct making_rows making = {tui, state->shop, outline};
    return arena_try(&tui->scratch, run_rows, &making);
}

/* What was just made is what the maker goes on with. */
static void choose_made(struct tui *tui, struct outline_state *state, const struct outline *outline)
{
    if (tui->made.from == 0 || tui->made.shop != state->shop)
        return;
    for (size_t i = 0; i < outline->rows.count; i++) {
        const struct outline_row *row = &outline->rows.at[i];

        if (row->kind < ENTITY_COUNT && row->key >= tui->made.from) {
            list_view_choose(&state->list, (int)i);
            break;
        }
    }
    tui->made.from = 0;
}

/* The same with the list brought up to date. */
static bool list_rows(struct tui *tui, struct outline_state *state, struct outline *outline)
{
    if (!make_rows(tui, state, outline))
        return false;
    list_view_resize(&state->list, (int)outline->rows.count);
    choose_made(tui, state, outline);
    return true;
}

/* ---- how the build stands, where there is no face to show ---- */

static void add_next_step(struct text *text, const struct plan *plan)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (!plan->steps.at[i].ready)
            continue;
        text_format(text, "Next: %s\n", plan->steps.at[i].title);
        return;
    }
}

static void add_findings(struct text *text, const struct plan *plan)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];
        text_format(text, "\n%s: ", plan_finding_word(finding));
        plan_finding_text(plan, finding, text);
    }
}

static void paint_standing(struct tui *tui, int top, int left, int height)
{
    const struct plan *plan = tui_plan(tui);
    struct text text;
    text_init(&text);
    text_format(&text, "%lld of %lld steps done\n", (long long)plan->tally.steps_done,
                (long long)plan->tally.steps);
    add_next_step(&text, plan);
    add_findings(&text, plan);
    view_wrapped(&tui->view, top, left, tui->view.columns - left - 1, height, VIEW_PLAIN,
                 text_string(&text));
    text_release(&text);
}

/* ---- what is known of an item without a picture ---- */

static bool is_as_new(const struct field *field, const void *item)
{
    return field_is_text(field) ? !*field_string(field, item)
                                : field_whole(field, item) == field->standard;
}

/* The fields that say more than a new item's would. */
static void add_facts(const struct tui *tui, const struct outline_row *row, struct text *out)
{
    const struct model *model = tui_model(tui);
    const struct field *fields[FORM_FIELDS];
    int count = form_fields(row->kind, fields);
    const void *item = row->kind >= ENTITY_COUNT ? model_at_const(model, row->kind, 0)
                                                 : model_find_const(model, row->kind, row->key);
    for (int i = 0; i < count; i++) {
        if (!item || is_as_new(fields[i], item))
            continue;
        form_label(fields[i], out);
        text_add(out, ": ");
        field_write(fields[i], model, item, out);
        text_add_char(out, '\n');
    }
}

/* "Corner banquette takes 10 of it, for 34.45" */
static void add_need(const struct tui *tui, const struct outline_row *row, struct text *out)
{
    const struct plan *plan = tui_plan(tui);
    for (size_t i = 0; i < plan->purchases.count && row->kind == ENTITY_stock; i++) {
        const struct purchase *line = &plan->purchases.at[i];
        if (line->stock == row->key && tui_model(tui)->build.key)
            text_format(out, "\n%s buys %lld for %s", tui_model(tui)->build.name,
                        (long long)line->packs, print_money(plan, line->till).at);
    }
}

static void paint_facts(struct tui *tui, const struct outline_row *row, int top, int left,
                        int height)
{
    struct text text;
    text_init(&text);
    add_facts(tui, row, &text);
    add_need(tui, row, &text);
    view_wrapped(&tui->view, top, left, tui->view.columns - left - 1, height, VIEW_PLAIN,
                 text_string(&text));
    text_release(&text);
}

/* ---- painting ---- */

static struct picture_ask ask_of(const struct outline_state *state, const struct outline_row *row)
{
    return (struct picture_ask){row->kind, row->key,    row->box,
                                row->side, state->view, state->turned};
}

static void paint_picture(struct tui *tui, const struct outline_state *state,
                          const struct outline_row *row, struct picture_place place)
{
    struct picture_ask ask = ask_of(state, row);
    char hint[48 + 2 * ACTION_KEY_TEXT];
    snprintf(hint, sizeof hint, "Left, Right turn it   %s others   %s large",
             tui_key(tui, ACTION_VIEW).at, tui_key(tui, ACTION_LARGE).at);
    place.hint = hint;
    picture_paint_item(tui, tui_plan(tui), &ask, place);
}

static void outline_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct outline_state *state = opaque;
    struct outline outline;
    int width = tui->view.columns * (state->shop ? 11 : 9) / 20;
    if (!list_rows(tui, state, &outline))
        return;
    list_view_fit(&state->list, top, height);
    for (int i = 0; i < list_view_shown(&state->list); i++) {
        int index = state->list.top + i;
        const struct outline_row *row = &outline.rows.at[index];
        bool chosen = index == state->list.chosen;
        int style = (chosen ? VIEW_CHOSEN : VIEW_PLAIN) | (row->depth ? 0 : VIEW_STRONG);
        view_row(&tui->view, top + i, 0, width, style, "");
        view_text(&tui->view, top + i, 1 + 2 * row->depth, width - 2 - 2 * row->depth, style,
                  row->text);
        if (chosen)
            view_cursor(&tui->view, top + i, 1 + 2 * row->depth);
    }
    view_upright(&tui->view, top, width, height);
    if (state->pictured < 0 || state->pictured >= state->list.count)
        state->pictured = state->list.chosen;
    const struct outline_row *row = &outline.rows.at[state->pictured];
    if (!state->shop && (row->box || state->view != PICTURE_STANDARD))
        paint_picture(tui, state, row, (struct picture_place){top, width + 2, height, NULL});
    else if (!state->shop && row->kind == ENTITY_build)
        paint_standing(tui, top, width + 2, height);
    else
        paint_facts(tui, row, top, width + 2, height);
}

/* ---- acting ---- */

static enum reaction copy_row(struct tui *tui, const struct outline_row *row)
{
    char name[MODEL_NAME_TEXT];
    struct fault_note note = {0};
    if (row->kind >= ENTITY_COUNT || entity_of(row->kind)->in_shop)
        return REACT_PASS;
    model_item_name(name, tui_model(tui), row->kind, row->key);
    tui->made = (struct made){tui_model(tui)->build.next_key, false};
    if (desk_duplicate(tui->desk, row->kind, row->key, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "copied: %s", name);
    return REACT_TAKEN;
}

static enum reaction mirror_row(struct tui *tui, const struct outline_row *row)
{
    char name[MODEL_NAME_TEXT];
    struct fault_note note = {0};
    if (row->kind != ENTITY_box) {
        tui_say(tui, "only boxes have a mirror image: choose one");
        return REACT_TAKEN;
    }
    model_item_name(name, tui_model(tui), ENTITY_box, row->key);
    tui->made = (struct made){tui_model(tui)->build.next_key, false};
    if (desk_mirror(tui->desk, row->key, NULL, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "mirrored: %s", name);
    return REACT_TAKEN;
}

static int64_t part_of_step(const struct step *step, enum entity_kind kind)
{
    switch (kind) {
    case ENTITY_box:
        return step->box;
    case ENTITY_join:
        return step->join;
    case ENTITY_layer:
        return step->layer;
    case ENTITY_facing:
        return step->facing;
    default:
        return 0;
    }
}

/* Whether ticks or spend hang on what would be deleted. */
static bool is_dear(const struct plan *plan, enum entity_kind kind, int64_t key)
{
    const struct model *model = plan->facts;
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        if (step->ticked && part_of_step(step, kind) == key)
            return true;
    }
    for (size_t i = 0; i < model->spends.count && kind == ENTITY_stock; i++) {
        if (model->spends.at[i].stock == key)
            return true;
    }
    for (size_t i = 0; i < model->shop_spends.count && kind == ENTITY_stock; i++) {
        if (model->shop_spends.at[i].stock == key)
            return true;
    }
    return false;
}

static enum reaction remove_row(struct tui *tui, struct outline_state *state,
                                const struct outline_row *row, bool sure)
{
    if (row->kind >= ENTITY_COUNT)
        return REACT_PASS;
    if (!sure && is_dear(tui_plan(tui), row->kind, row->key)) {
        state->asked = row->key;
        tui_say(tui,
                "work done or money spent hangs on it: Enter deletes it, another key keeps it");
        return REACT_TAKEN;
    }
    tui_delete_item(tui, row->kind, row->key);
    return REACT_TAKEN;
}

static void next_view(struct tui *tui, struct outline_state *state, const struct outline_row *row)
{
    struct picture_ask ask = ask_of(state, row);
    if (state->shop)
        return;
    state->view = picture_next_view(tui_plan(tui), &ask);
    state->turned = 0;
}

/* A box has a mirror image. */
static action_set outline_fits(struct tui *tui, void *opaque)
{
    struct outline_state *state = opaque;
    struct outline outline;

    if (!list_rows(tui, state, &outline) || outline.rows.count == 0)
        return 0;
    return outline.rows.at[state->list.chosen].kind == ENTITY_box ? SHOWS(MIRROR) | SHOWS(PLACE)
                                                                  : 0;
}

/* A picture is a screenful, and a slow line has to carry it: who goes through the lines does not
 * wait for those in between. */
static enum reaction outline_idle(struct tui *tui, void *opaque)
{
    struct outline_state *state = opaque;
    (void)tui;
    if (state->pictured == state->list.chosen)
        return REACT_PASS;
    state->pictured = state->list.chosen;
    state->turned = 0;
    return REACT_TAKEN;
}

/* Opens what an action leads to from a line; PASS for any other action, or where it has none. */
static enum reaction open_from(struct tui *tui, const struct outline_state *state,
                               const struct outline_row *row, enum action action)
{
    const struct target target = {row->kind, row->key, NULL, NULL};
    const struct target onto = {state->shop ? ENTITY_workshop : ENTITY_build,
                                row->kind == ENTITY_stock ? row->key : row->box, NULL, NULL};
    bool boxed = row->kind == ENTITY_box && tui_model(tui)->boxes.count > 1;
    bool joined = row->kind == ENTITY_join || row->kind == ENTITY_point;
    const struct screen *screen = action == ACTION_ENTER             ? &screen_form
                                  : action == ACTION_LARGE           ? &screen_picture
                                  : action == ACTION_ADD             ? &screen_add
                                  : action == ACTION_HOLES && joined ? &screen_point
                                  : action == ACTION_PLACE && boxed  ? &screen_beside
                                                                     : NULL;
    if (!screen)
        return REACT_PASS;
    tui_open(tui, screen, action == ACTION_ADD ? &onto : &target);
    return REACT_TAKEN;
}

static enum reaction outline_act(struct tui *tui, void *opaque, enum action action)
{
    struct outline_state *state = opaque;
    struct outline outline;
    int64_t asked = state->asked;
    state->asked = 0;
    if (asked && action != ACTION_ENTER) {
        tui_say(tui, "kept as it was");
        return REACT_TAKEN;
    }
    bool listed = list_rows(tui, state, &outline);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (!listed || outline.rows.count == 0)
        return REACT_PASS;
    outline_idle(tui, state);
    const struct outline_row *row = &outline.rows.at[state->list.chosen];
    if (action == ACTION_ENTER && asked && asked == row->key)
        return remove_row(tui, state, row, true);
    switch (action) {
    case ACTION_RIGHT:
        state->turned = (state->turned + 1) % PICTURE_TURNS;
        return REACT_TAKEN;
    case ACTION_LEFT:
        state->turned = (state->turned + PICTURE_TURNS - 1) % PICTURE_TURNS;
        return REACT_TAKEN;
    case ACTION_VIEW:
        next_view(tui, state, row);
        return REACT_TAKEN;
    case ACTION_NOTE:
        tui_note(tui, row->kind, row->key);
        return REACT_TAKEN;
    case ACTION_COPY:
        return copy_row(tui, row);
    case ACTION_MIRROR:
        return mirror_row(tui, row);
    case ACTION_REMOVE:
        return remove_row(tui, state, row, false);
    default:
        return open_from(tui, state, row, action);
    }
}

static struct list_view *outline_list(void *opaque)
{
    return &((struct outline_state *)opaque)->list;
}

static void outline_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    struct outline outline;
    if (make_rows(tui, opaque, &outline) && (size_t)index < outline.rows.count)
        text_format(out, "%*s%s", 2 * outline.rows.at[index].depth, "",
                    outline.rows.at[index].text);
}

/* A build begins at its first box, whose picture shows what the lines are about. */
static void outline_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct outline_state *state = opaque;
    (void)target;
    tui->made.from = 0;
    if (tui_model(tui)->boxes.count == 0)
        return;
    list_view_resize(&state->list, 2);
    list_view_choose(&state->list, 1);
    state->pictured = 1;
}

static void shop_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct outline_state *state = opaque;
    (void)target;
    tui->made.from = 0;
    state->shop = true;
}

#define OUTLINE_SHOWS (SHOWS(ENTER) | SHOWS(ADD) | SHOWS(COPY) | SHOWS(REMOVE))

const struct screen screen_outline = {
    .name = "boxes, layers, joins",
    .size = sizeof(struct outline_state),
    .place = true,
    .open = outline_open,
    .paint = outline_paint,
    .act = outline_act,
    .idle = outline_idle,
    .fits = outline_fits,
    .list = outline_list,
    .line = outline_line,
    .shown = OUTLINE_SHOWS | SHOWS(STEPS) | SHOWS(HOLES) | SHOWS(BUYING) | SHOWS(MONEY) |
             SHOWS(FINDINGS) | SHOWS(CLOTH) | SHOWS(UNDO) | SHOWS(LEAVE),
};

const struct screen screen_shop = {
    .name = "workshop",
    .size = sizeof(struct outline_state),
    .place = true,
    .open = shop_open,
    .paint = outline_paint,
    .act = outline_act,
    .idle = outline_idle,
    .list = outline_list,
    .line = outline_line,
    .shown = OUTLINE_SHOWS | SHOWS(TRADE) | SHOWS(UNDO) | SHOWS(LEAVE),
};
