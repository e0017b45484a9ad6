/* What can be done now, and what stands against the rest. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/print.h"
#include "paper/table.h"

static void doable_rows(struct text *out, const struct plan *plan, const struct doable *doable)
{
    struct table table;
    table_begin(&table, "rllrl");
    for (size_t i = 0; i < doable->count; i++) {
        const struct step *step = &plan->steps.at[doable->steps[i]];
        table_cell(&table, "%zu", doable->steps[i] + 1);
        table_cell(&table, "%s", step->title);
        table_cell(&table, "%s", step->name);
        table_cell(&table, "%s", print_minutes(step->minutes).at);
        table_cell(&table, "%s", step_people(step) > 1 ? "two people" : "");
    }
    table_end(&table, out);
}

/* "3 more want two people", "2 more wait for goods: Foam 2 in", "1 more rest: the glue cures, 35
 * min to go": a line each. */
static void doable_bars(struct text *out, const struct doable *doable)
{
    static const char *const words[BARS] = {
        [BAR_PEOPLE] = "want two people",
        [BAR_GOODS] = "wait for goods",
        [BAR_WET] = "rest",
        [BAR_TIME] = "take longer",
    };
    for (int i = 0; i < BARS; i++) {
        if (!doable->barred[i])
            continue;
        text_format(out, "  %zu more %s", doable->barred[i], words[i]);
        if (i == BAR_GOODS && *doable->missing) {
            text_add(out, ": ");
            show_text(out, doable->missing);
        }
        if (i == BAR_WET && *doable->wet)
            text_format(out, ": %s, %s to go", doable->wet, print_minutes(doable->wet_for).at);
        text_add_char(out, '\n');
    }
}

void sheet_doable(struct text *out, const struct plan *plan, const struct doable_ask *ask,
                  const struct doable *doable)
{
    text_format(out, "\nIN %s, %s: %s\n", print_minutes(ask->minutes).at,
                ask->people > 1 ? "two people" : "alone",
                doable->count ? print_minutes(doable->minutes).at : "nothing");
    doable_rows(out, plan, doable);
    doable_bars(out, doable);
}
