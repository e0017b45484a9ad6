/*
 * Builds side by side, figure by figure: those marked in the list of builds. Of one build alone
 * also what it would come to otherwise.
 */
#include "desk/compare.h"
#include "paper/sheets.h"
#include "tui/told.h"
#include "tui/trolley.h"

struct compare_state {
    struct told told;
    struct trolley trolley; /* the builds */
};

/* Two or more marked builds; else the one that was chosen, or is in hand. */
static void compare_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct compare_state *state = opaque;
    int64_t chosen =
        target && target->kind == ENTITY_build ? target->key : tui_model(tui)->build.key;
    if (tui->marked_count > 1)
        trolley_fill(&state->trolley, tui);
    else if (chosen)
        state->trolley = (struct trolley){.builds = {chosen}, .count = 1};
}

static enum fault put_otherwise(const struct plan *plan, struct text *out, struct fault_note *note)
{
    const struct otherwise *ways = NULL;
    size_t count = 0;
    struct arena arena;
    arena_init(&arena);
    enum fault fault = desk_otherwise(plan, &arena, &ways, &count);
    if (fault)
        fault_say(note, fault, 0, "there is not enough memory for this");
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

static const char *compare_text(struct tui *tui, void *opaque)
{
    struct compare_state *state = opaque;
    return told_text(&state->told, tui, compare_make, state);
}

static void compare_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct compare_state *state = opaque;
    pager_paint(&state->told.pager, &tui->view, top, height, compare_text(tui, opaque));
}

static enum reaction compare_act(struct tui *tui, void *opaque, enum action action)
{
    struct compare_state *state = opaque;
    (void)tui;
    return pager_act(&state->told.pager, action) ? REACT_TAKEN : REACT_PASS;
}

static void compare_close(void *opaque)
{
    told_release(&((struct compare_state *)opaque)->told);
}

static struct pager *compare_pager(void *opaque)
{
    return &((struct compare_state *)opaque)->told.pager;
}

static void compare_sheet(struct tui *tui, void *opaque, struct text *out)
{
    text_add(out, compare_text(tui, opaque));
}

const struct screen screen_compare = {
    .name = "side by side",
    .size = sizeof(struct compare_state),
    .open = compare_open,
    .close = compare_close,
    .paint = compare_paint,
    .act = compare_act,
    .pager = compare_pager,
    .sheet = compare_sheet,
    .shown = SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(CLOTH) | SHOWS(LIST_OUT),
};
