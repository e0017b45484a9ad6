/* One stock: its prices, what they were and what was paid before, and what lies on the shelf. */
#include "desk/stock.h"
#include "paper/sheets.h"
#include "tui/told.h"

struct prices_state {
    struct told told;
    int64_t stock;
};

static void prices_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct prices_state *state = opaque;
    (void)tui;
    state->stock = target->key;
}

static enum fault prices_make(struct tui *tui, void *context, struct text *out,
                              struct fault_note *note)
{
    const struct prices_state *state = context;
    const struct stock *stock = MODEL_FIND(tui_model(tui), stock, state->stock);
    const struct paid_before *paid = NULL;
    size_t count = 0;
    struct arena arena;
    if (!stock)
        return fault_say(note, FAULT_UNKNOWN, 0, "This stock is not there any more.");
    arena_init(&arena);
    enum fault fault = desk_paid_before(tui->desk, stock->key, &arena, &paid, &count, note);
    if (!fault)
        sheet_stock(out, tui_model(tui), stock, paid, count);
    arena_release(&arena);
    return fault;
}

static const char *prices_text(struct tui *tui, void *opaque)
{
    struct prices_state *state = opaque;
    return told_text(&state->told, tui, prices_make, state);
}

static void prices_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct prices_state *state = opaque;
    pager_paint(&state->told.pager, &tui->view, top, height, prices_text(tui, opaque));
}

static enum reaction prices_act(struct tui *tui, void *opaque, enum action action)
{
    struct prices_state *state = opaque;
    (void)tui;
    return pager_act(&state->told.pager, action) ? REACT_TAKEN : REACT_PASS;
}

static void prices_close(void *opaque)
{
    told_release(&((struct prices_state *)opaque)->told);
}

static struct pager *prices_pager(void *opaque)
{
    return &((struct prices_state *)opaque)->told.pager;
}

static void prices_sheet(struct tui *tui, void *opaque, struct text *out)
{
    text_add(out, prices_text(tui, opaque));
}

const struct screen screen_prices = {
    .name = "prices of one stock",
    .size = sizeof(struct prices_state),
    .open = prices_open,
    .close = prices_close,
    .paint = prices_paint,
    .act = prices_act,
    .pager = prices_pager,
    .sheet = prices_sheet,
    .shown = SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(UNDO) | SHOWS(LIST_OUT),
};
