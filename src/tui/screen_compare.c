/*
 * Builds side by side, figure by figure: those marked in the list of builds. Of one build alone
 * also what it would come to otherwise.
 */
#include "desk/compare.h"
#include "paper/sheets.h"
#include "tui/told.h"
#include "tui/trolley.h"

struct compare_state {
    struct told told;       /* first: told.h */
    struct trolley trolley; /* the builds */
};

static enum fault put_otherwise(const struct plan *plan, struct text *out, struct fault_note *note)
{
    const struct otherwise *ways = NULL;
    size_t count = 0;
    struct arena arena;
    arena_init(&arena);
    enum fault fault = desk_otherwise(plan, &arena, &ways, &count);
    if (fault)
        fault_say(note, fault, "there is not enough memory for this");
    else
        sheet_otherwise(out, plan, ways, count);
    arena_release(&arena);
    return fault;
}

static enum fault compare_make(struct tui *tui, void *context, struct text *out,
                               struct fault_note *note)
{
    struct compare_state *state = context;
    struct desk_compare *compare = NULL;
    if (state->trolley.count == 0) {
        text_add(out, "No build is chosen: mark some in the list of builds.\n");
        return FAULT_NONE;
    }
    enum fault fault =
        desk_compare_begin(&compare, tui->desk, state->trolley.builds, state->trolley.count, note);
    if (!fault)
        sheet_compare(out, desk_compare_plans(compare), desk_compare_count(compare));
    if (!fault && desk_compare_count(compare) == 1)
        fault = put_otherwise(desk_compare_plans(compare)[0], out, note);
    desk_compare_free(compare);
    return fault;
}

/* Two or more marked builds; else the one that was chosen, or is in hand. */
static void compare_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct compare_state *state = opaque;
    int64_t chosen =
        target && target->kind == ENTITY_build ? target->key : tui_model(tui)->build.key;
    state->told.make = compare_make;
    if (tui->marked_count > 1)
        trolley_fill(&state->trolley, tui);
    else if (chosen)
        state->trolley = (struct trolley){.builds = {chosen}, .count = 1};
}

const struct screen screen_compare = {
    .name = "side by side",
    .size = sizeof(struct compare_state),
    .open = compare_open,
    .close = told_close,
    .paint = told_paint,
    .act = told_act,
    .pager = told_pager,
    .sheet = told_sheet,
    .shown = SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(CLOTH) | SHOWS(LIST_OUT),
};
