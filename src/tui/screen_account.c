/* Money, months and hours of all builds, and weeks at the bench. */
#include "desk/account.h"
#include "desk/clock.h"
#include "paper/sheets.h"
#include "tui/told.h"

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

static void account_open(struct tui *tui, void *opaque, const struct target *target)
{
    (void)tui;
    (void)target;
    ((struct told *)opaque)->make = account_make;
}

const struct screen screen_account = {
    .name = "account of all builds",
    .size = sizeof(struct told),
    .open = account_open,
    .close = told_close,
    .paint = told_paint,
    .act = told_act,
    .pager = told_pager,
    .sheet = told_sheet,
    .shown = SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(STOCK) | SHOWS(LIST_OUT),
};
