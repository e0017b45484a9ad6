#include "page.h"

#include "model/trade.h"

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
    "An entry gives the value in inch work and in millimetre work, the range it may be changed "
    "in,\n"
    "and where it comes from.\n"
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

void page_write_trade(struct text *out)
{
    text_add(out, heading);
    for (int i = 0; i < TRADE_COUNT; i++)
        put_value(out, &trade_values[i]);
    text_add(out, ".El\n"
                  ".Sh SEE ALSO\n"
                  ".Xr stuffover 1 ,\n"
                  ".Xr stuffover-build 5\n");
}
