#include "page.h"

#include "../facts/published.h"
#include "model/trade.h"
#include "plan/formulas.h"

#include <string.h>

static const char heading[] =
    ".Dd November 25, 2026\n"
    ".Dt STUFFOVER-TRADE 7\n"
    ".Os\n"
    ".Sh NAME\n"
    ".Nm stuffover-trade\n"
    ".Nd trade values that stuffover works with\n"
    ".Sh DESCRIPTION\n"
    "The numbers of a practised maker that\n"
    ".Xr stuffover 1\n"
    "works with where nothing else was said.\n"
    "Each can be changed, for the workshop or for one build:\n"
    ".Dl stuffover trade join.pitch \"10 in\"\n"
    "An entry gives the value in inch work and in millimetre work, the range it\n"
    "may be changed in, and where it comes from.\n"
    ".Dq common practice, no source\n"
    "says just that: none of these is a standard, and none is engineering advice.\n"
    ".Sh VALUES\n"
    ".Bl -tag -width Ds\n";

static void put_value(struct text *out, const struct trade_value *value)
{
    char inch[QUANTITY_TEXT];
    char mm[QUANTITY_TEXT];
    char least[QUANTITY_TEXT];
    char most[QUANTITY_TEXT];

    text_format(out, ".It Cm %s\n", value->key);
    page_sentence(out, value->help);
    text_format(out, "Inch work %s, millimetre work %s; from %s to %s.\n",
                quantity_print_unit(inch, value->quantity, UNITS_INCH, value->standard[UNITS_INCH]),
                quantity_print_unit(mm, value->quantity, UNITS_MM, value->standard[UNITS_MM]),
                quantity_print_unit(least, value->quantity, UNITS_MM, value->least),
                quantity_print_unit(most, value->quantity, UNITS_MM, value->most));
    text_add(out, "Source: ");
    text_format(out, "%s.\n", value->source);
}

/* ---- formulas ---- */

static const struct {
    const char *key, *formula, *source, *range, *doubt;
} formulas[] = {
#define FORMULA_ROW(key, formula, source, range, doubt) {key, formula, source, range, doubt},
    FORMULAS(FORMULA_ROW)
#undef FORMULA_ROW
};

static void put_formulas(struct text *out)
{
    text_add(out, ".Sh FORMULAS\n"
                  "What figures come from, with the range they hold in and what is doubtful.\n"
                  "Strength and lifting are guidance, no engineering and no medical advice.\n"
                  ".Bl -tag -width Ds\n");
    for (size_t i = 0; i < sizeof formulas / sizeof *formulas; i++) {
        text_format(out, ".It Em %s\n", formulas[i].key);
        page_sentence(out, formulas[i].formula);
        text_add(out, "Source:\n");
        page_sentence(out, formulas[i].source);
        text_add(out, "Holds for:\n");
        page_sentence(out, formulas[i].range);
        text_add(out, "Doubt:\n");
        page_sentence(out, formulas[i].doubt);
    }
    text_add(out, ".El\n");
}

/* ---- facts ---- */

enum surety { SEEN, SECOND, MEMORY };

static const struct {
    const char *topic, *what;
    double published;
    const char *source;
    enum surety surety;
} facts[] = {
#define FACT_ROW(topic, what, ours, published, within, source, surety) \
    {topic, what, published, source, surety},
    PUBLISHED(FACT_ROW)
#undef FACT_ROW
};

static const char *const practices[] = {
#define PRACTICE_ROW(what, ours, wanted) what,
    PRACTICES(PRACTICE_ROW)
#undef PRACTICE_ROW
};

static const char *const sureties[] = {
    [SEEN] = "seen", [SECOND] = "seen second hand", [MEMORY] = "from memory"};

static void put_facts(struct text *out)
{
    text_add(out, ".Sh CHECKED AGAINST\n"
                  "Published figures that the tests hold the program against, with the source of\n"
                  "each and how surely the figure is known.\n"
                  "Where the figure is 1 or 0, the statement holds or does not.\n"
                  ".Bl -tag -width Ds\n");
    for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
        if (i == 0 || strcmp(facts[i].topic, facts[i - 1].topic) != 0)
            text_format(out, ".It Em %s\n", facts[i].topic);
        else
            text_add(out, ".br\n");
        text_format(out, "%s: %.6g.\n", facts[i].what, facts[i].published);
        text_format(out, "%s; %s.\n", facts[i].source, sureties[facts[i].surety]);
    }
    text_add(out, ".It Em common practice, no source\n");
    for (size_t i = 0; i < sizeof practices / sizeof *practices; i++) {
        if (i > 0)
            text_add(out, ".br\n");
        page_sentence(out, practices[i]);
    }
    text_add(out, ".El\n");
}

void page_write_trade(struct text *out)
{
    text_add(out, heading);
    for (int i = 0; i < TRADE_COUNT; i++)
        put_value(out, &trade_values[i]);
    text_add(out, ".El\n");
    put_formulas(out);
    put_facts(out);
    text_add(out, ".Sh SEE ALSO\n"
                  ".Xr stuffover 1 ,\n"
                  ".Xr stuffover-build 5\n");
}
