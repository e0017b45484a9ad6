/* What the builds of the trolley cut together: the layouts that its list counts on. */
#include "desk/trip.h"
#include "paper/sheets.h"
#include "tui/told.h"
#include "tui/trolley.h"

struct together_state {
    struct told told; /* first: told.h */
    struct trolley trolley;
};

static enum fault together_make(struct tui *tui, void *context, struct text *out,
                                struct fault_note *note)
{
    struct together_state *state = context;
    struct desk_trip *trip = NULL;
    enum fault fault = desk_trip_begin(&trip, tui->desk, state->trolley.builds,
                                       state->trolley.count, CUT_QUICK, sheet_purchase_words, note);
    if (!fault)
        sheet_trip_cutting(out, desk_trip_of(trip));
    if (!fault && desk_trip_of(trip)->cuts.count == 0)
        text_add(out, "Nothing is cheaper cut together: each build cuts by itself.\n");
    desk_trip_free(trip);
    return fault;
}

static void together_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct together_state *state = opaque;
    (void)target;
    state->told.make = together_make;
    trolley_fill(&state->trolley, tui);
}

static bool is_taken(const struct trip *trip)
{
    bool taken = trip->cuts.count > 0;
    for (size_t i = 0; i < trip->cuts.count; i++)
        taken = taken && trip->cuts.at[i].job.taken;
    return taken;
}

/* Takes the layouts; where all are taken, gives them back. */
static enum reaction together_take(struct tui *tui, struct together_state *state)
{
    struct desk_trip *trip = NULL;
    struct fault_note note = {0};
    bool back = false;
    enum fault fault =
        desk_trip_begin(&trip, tui->desk, state->trolley.builds, state->trolley.count, CUT_QUICK,
                        sheet_purchase_words, &note);
    if (!fault) {
        back = is_taken(desk_trip_of(trip));
        fault = (back ? desk_trip_leave : desk_trip_take)(tui->desk, trip, &note);
    }
    desk_trip_free(trip);
    if (fault)
        tui_warn(tui, &note);
    else
        tui_say(tui, back ? "given back: they are laid out anew when something changes"
                          : "taken: this is what these builds cut, as long as nothing changes");
    return REACT_TAKEN;
}

static enum reaction together_act(struct tui *tui, void *opaque, enum action action)
{
    struct together_state *state = opaque;
    if (action == ACTION_TICK)
        return together_take(tui, state);
    return told_act(tui, opaque, action);
}

const struct screen screen_together = {
    .name = "cut together",
    .size = sizeof(struct together_state),
    .open = together_open,
    .close = told_close,
    .paint = told_paint,
    .act = together_act,
    .pager = told_pager,
    .sheet = told_sheet,
    .words = {{ACTION_TICK, "take it"}},
    .shown = SHOWS(LEAVE) | SHOWS(TICK) | SHOWS(FIND) | SHOWS(LIST_OUT),
};
