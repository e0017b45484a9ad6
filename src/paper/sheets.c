/* The head of a plan, and all its sheets one after the other. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/print.h"

void sheet_tally(struct text *out, const struct plan *plan)
{
    const struct tally *tally = &plan->tally;
    char money[MONEY_TEXT];
    text_format(out, "cost %s, %lld sticks, %lld sheets, cloth %s, %lld staples, %lld screws, %s",
                money_print_code(money, model_currency(plan->facts), tally->cost),
                (long long)tally->sticks, (long long)tally->sheets,
                print_roll(plan, tally->cloth).at, (long long)tally->staples,
                (long long)tally->screws, print_minutes(tally->minutes).at);
    text_format(out, "; %lld stop, %lld warn, %lld note", (long long)tally->stops,
                (long long)tally->warns, (long long)tally->notes);
}

void sheet_heading(struct text *out, const struct plan *plan)
{
    const struct build *build = &plan->facts->build;
    show_text(out, build->name);
    text_format(out, " (%s", words_state.at[build->state].name);
    if (*build->due) {
        text_add(out, ", due ");
        show_text(out, build->due);
    }
    text_format(out, ")\n%lld of %lld steps done; ", (long long)plan->tally.steps_done,
                (long long)plan->tally.steps);
    sheet_tally(out, plan);
    text_add_char(out, '\n');
    if (*build->note) {
        show_lines(out, build->note);
        text_add_char(out, '\n');
    }
}

void sheet_plan(struct text *out, const struct plan *plan)
{
    sheet_heading(out, plan);
    sheet_whole(out, plan);
    sheet_findings(out, plan);
    sheet_boxes(out, plan);
    sheet_screws(out, plan);
    sheet_joins(out, plan);
    sheet_cloth(out, plan);
    sheet_sewing(out, plan);
    sheet_staples(out, plan);
    sheet_buying(out, plan);
    sheet_money(out, plan);
    sheet_steps(out, plan);
    sheet_cautions(out, plan);
}
