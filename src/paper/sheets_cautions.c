/* The cautions that a build calls for. */
#include "paper/sheets.h"

#include "paper/lines.h"
#include "plan/caution.h"

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

static bool wants_two_people(const struct plan *plan)
{
    for (size_t i = 0; i < plan->loads.count; i++) {
        if (plan->loads.at[i].people > 1)
            return true;
    }
    return false;
}

/* Rules that a seller usually meets, by name: what holds where is for others to say. */
static void sheet_sale(struct text *out, const struct plan *plan)
{
    const struct caution_rule *rule;
    size_t index = 0, none = 0;

    if (!caution_rule_next(plan, &none))
        return;
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
    if (wants_two_people(plan))
        text_add(out, "  Some boxes here want two people to lift and carry.\n");
    sheet_sale(out, plan);
}
