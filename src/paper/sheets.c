#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "plan/caution.h"

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

/* ---- cautions ---- */

static bool has_layer(const struct plan *plan, enum layer_word kind)
{
    for (size_t i = 0; i < plan->facts->layers.count; i++) {
        if (plan->facts->layers.at[i].kind == (int64_t)kind)
            return true;
    }
    return false;
}

static bool has_lid(const struct plan *plan)
{
    for (size_t i = 0; i < plan->facts->fittings.count; i++) {
        if (plan->facts->fittings.at[i].kind == FITTING_STAY ||
            plan->facts->fittings.at[i].kind == FITTING_HINGE)
            return true;
    }
    return false;
}

/* Rules that a seller usually meets, by name: what holds where is for others to say. */
static void sheet_sale(struct text *out, const struct plan *plan)
{
    const struct caution_rule *rule;
    size_t index = 0;

    if (!caution_rule_next(plan, &index))
        return;
    index = 0;
    lines_add(out, "", 2,
              "If you sell it: rules on fire, labels and tipping differ from place to place. Check "
              "your local rule and a licensed person. Usually to be looked at:");
    while ((rule = caution_rule_next(plan, &index))) {
        struct text words;

        text_init(&words);
        text_format(&words, "%s: %s", rule->rule, rule->about);
        lines_add(out, rule->where, 22, text_string(&words));
        text_release(&words);
    }
}

/* Usual cautions; that chest lids have killed children is guidance of the US Consumer Product
 * Safety Commission, the rest common practice. */
void sheet_cautions(struct text *out, const struct plan *plan)
{
    static const char *const always[] = {
        "These are estimates for furniture at home, not engineering. Local rules and licensed "
        "trades come first: check your local rule.",
        "Measure the built box before cloth is cut; try one screw and one corner in scrap.",
        "Eye and ear protection; the second hand away from bit, blade and staple gun; air or "
        "battery off before a jam is cleared. Look for cables and pipes before drilling a wall; "
        "fix tall pieces against tipping.",
    };

    text_add(out, "\nCAUTIONS\n");
    for (size_t i = 0; i < sizeof always / sizeof *always; i++)
        lines_add(out, "", 2, always[i]);
    if (has_layer(plan, LAYER_FOAM))
        lines_add(out, "", 2,
                  "Foam burns fast and its smoke is poisonous. Spray glue is flammable: fresh air, "
                  "no flame, no spark, and read the can.");
    if (has_lid(plan))
        lines_add(out, "", 2,
                  "A falling lid can kill a child: stays that hold at every angle, air gaps, no "
                  "latch; set the stays again after padding.");
    for (size_t i = 0; i < plan->loads.count; i++) {
        if (plan->loads.at[i].people > 1) {
            text_add(out, "  Some boxes here want two people to lift and carry.\n");
            break;
        }
    }
    sheet_sale(out, plan);
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
