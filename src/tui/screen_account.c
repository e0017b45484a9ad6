/* Money, months and hours of all builds, and weeks at the bench. */
#include "desk/account.h"
#include "desk/clock.h"
#include "paper/sheets.h"
#include "tui/told.h"

struct account_state {
    struct told told;
};

static enum fault account_make(struct tui *tui, void *context, struct text *out,
                               struct fault_note *note)
{
    struct account account;
    struct arena arena;
    char today[CLOCK_TEXT];
    (void)context;
    arena_init(&arena);
    enum fault fault = desk_account(tui->desk, clock_today(today), &arena, &account, note);
    if (!fault)
        sheet_account(out, tui_model(tui), &account);
    arena_release(&arena);
    return fault;
}

static const char *account_text(struct tui *tui, void *opaque)
{
    struct account_state *state = opaque;
    return told_text(&state->told, tui, account_make, state);
}

static void account_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct account_state *state = opaque;
    pager_paint(&state->told.pager, &tui->view, top, height, account_text(tui, opaque));
}

static enum reaction account_act(struct tui *tui, void *opaque, enum action action)
{
    struct account_state *state = opaque;
    (void)tui;
    return pager_act(&state->told.pager, action) ? REACT_TAKEN : REACT_PASS;
}

static void account_close(void *opaque)
{
    told_release(&((struct account_state *)opaque)->told);
}

static struct pager *account_pager(void *opaque)
{
    return &((struct account_state *)opaque)->told.pager;
}

static void account_sheet(struct tui *tui, void *opaque, struct text *out)
{
    text_add(out, account_text(tui, opaque));
}

const struct screen screen_account = {
    .name = "account of all builds",
    .size = sizeof(struct account_state),
    .close = account_close,
    .paint = account_paint,
    .act = account_act,
    .pager = account_pager,
    .sheet = account_sheet,
    .shown = SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(STOCK) | SHOWS(LIST_OUT),
};
