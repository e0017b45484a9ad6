#include "page.h"

#include "sample.h"

#include "exchange/format.h"
#include "model/model.h"

#include <inttypes.h>
#include <string.h>

/* ---- a field ---- */

static const char *const type_words[] = {
    [FIELD_TEXT] = "text",
    [FIELD_DATE] = "date",
    [FIELD_LENGTH] = "length",
    [FIELD_COUNT] = "whole number",
    [FIELD_RATIO] = "ratio",
    [FIELD_MINUTES] = "time",
    [FIELD_ANGLE] = "angle",
    [FIELD_AREA] = "area",
    [FIELD_VOLUME] = "volume",
    [FIELD_DENSITY] = "density",
    [FIELD_AREA_MASS] = "mass of an area",
    [FIELD_MONEY] = "amount",
    [FIELD_FLAG] = "flag",
    [FIELD_CHOICE] = "word",
    [FIELD_REF] = "reference",
};

static void put_value(struct text *out, const struct field *field, int64_t value)
{
    static const struct currency two_digits = {"", 2};
    char buffer[MONEY_TEXT > QUANTITY_TEXT ? MONEY_TEXT : QUANTITY_TEXT];

    if (field->type == FIELD_FLAG)
        text_add(out, value ? "true" : "false");
    else if (field->type == FIELD_CHOICE)
        text_add(out, field->words->at[value].name);
    else if (field->type == FIELD_REF)
        text_add(out, "none");
    else if (field_is_text(field))
        text_add(out, "empty");
    else if (field->type == FIELD_MONEY)
        text_add(out, money_print(buffer, two_digits, value));
    else
        text_add(out, quantity_print_exact(buffer, field_quantity(field), UNITS_MM, value));
}

static void put_range(struct text *out, const struct field *field)
{
    switch (field->type) {
    case FIELD_TEXT:
        text_format(out, " of at most %" PRId64 " characters", field->most);
        break;
    case FIELD_CHOICE:
        text_format(out, " of the vocabulary %s", field->words->name);
        break;
    case FIELD_REF:
        text_format(out, " by %s to one of %s", format_goes_by_name(field) ? "name" : "key",
                    entity_of(field->target)->plural);
        break;
    case FIELD_DATE:
    case FIELD_FLAG:
        break;
    default:
        text_add(out, " from ");
        put_value(out, field, field->least);
        text_add(out, " to ");
        put_value(out, field, field->most);
    }
}

static void put_field(struct text *out, const struct field *field)
{
    struct text sentence;

    text_init(&sentence);
    text_add(&sentence, type_words[field->type]);
    put_range(&sentence, field);
    if (format_may_lack(field)) {
        text_add(&sentence, "; standard: ");
        put_value(&sentence, field, field->standard);
    } else {
        text_add(&sentence, "; needed");
    }
    text_format(out, ".It Cm %s\n", field->name);
    page_sentence(out, text_string(&sentence));
    page_sentence(out, field->help);
    text_release(&sentence);
}

/* ---- an entity, a vocabulary ---- */

static void put_entity(struct text *out, const struct entity *entity)
{
    text_format(out, ".Ss %s\n", entity->plural);
    page_sentence(out, entity->help);
    text_add(out, ".Bl -tag -width Ds\n");
    if (format_has_key(entity)) {
        text_add(out, ".It Cm key\n");
        page_sentence(out, "whole number from 1 on; needed");
        page_sentence(out, "no other item of the build has it");
    }
    for (size_t i = 0; i < entity->field_count; i++)
        if (format_has_field(entity, &entity->fields[i]))
            put_field(out, &entity->fields[i]);
    text_add(out, ".El\n");
}

static void put_words(struct text *out, const struct words *words)
{
    text_format(out, ".Ss %s\n.Bl -tag -width Ds\n", words->name);
    for (size_t i = 0; i < words->count; i++) {
        text_format(out, ".It Cm %s\n", words->at[i].name);
        page_sentence(out, words->at[i].help);
    }
    text_add(out, ".El\n");
}

/* ---- the page ---- */

static const char *const head =
    ".\\\" Written by a test from the program's tables; see tests/exchange/test_page.c.\n"
    ".Dd November 25, 2026\n"
    ".Dt STUFFOVER-BUILD 5\n"
    ".Os\n"
    ".Sh NAME\n"
    ".Nm stuffover-build\n"
    ".Nd builds and workshops as files\n"
    ".Sh DESCRIPTION\n"
    "A build, or a workshop, leaves and enters\n"
    ".Nm stuffover\n"
    "as a file in JSON, encoded in UTF-8.\n"
    "The file is one object with these keys, in any order:\n"
    ".Bl -tag -width Ds\n"
    ".It Cm format\n"
    "The number of the format, 1.\n"
    "A file with a larger number is refused.\n"
    ".It Cm kind\n"
    "The text\n"
    ".Cm build\n"
    "or\n"
    ".Cm workshop .\n"
    ".It Cm build\n"
    "In a file of that kind, an object with the build's own fields.\n"
    ".It Cm workshop\n"
    "In a file of that kind, an object with the workshop's own fields.\n"
    ".It Cm boxes , layers , stocks No and so on\n"
    "Lists of items, each an object.\n"
    "A list without items may be left out.\n"
    ".El\n"
    ".Pp\n"
    "A field that has its standard value may be left out, and is when the program\n"
    "writes the file.\n"
    "A key that is not described here is refused, as is a key that stands twice.\n"
    ".Pp\n"
    "Items of a build have keys, and refer to one another by key.\n"
    "Items of the workshop have none in a file, since every workshop gives out its\n"
    "own: tools, sets and stocks are referred to by name.\n"
    ".Pp\n"
    "A build brings the set it belongs to and the stocks it uses, with their offers.\n"
    "Where the workshop has a stock or set of that name already, that one is used as\n"
    "it is, and what the file says of it is passed over.\n"
    ".Pp\n"
    "A workshop enters another one by names.\n"
    "The workshop's own fields become those of the file.\n"
    "Tools, sets, stocks and trade values with a name that is there already are\n"
    "replaced, stocks with all their offers; everything else is added, except\n"
    "offers, leftovers and spends of which the like is there.\n"
    "The currency of a workshop in use cannot be changed in this way.\n"
    ".Pp\n"
    "A file in which anything is wrong is refused whole.\n"
    "Every fault is listed with its line, its column and the path of the value, such\n"
    "as\n"
    ".Ql boxes[2].width ,\n"
    "where items count from 0.\n"
    ".Ss Values\n"
    ".Bl -tag -width Ds\n"
    ".It text\n"
    "A string.\n"
    ".It date\n"
    "A string such as\n"
    ".Ql 2026-11-25 ,\n"
    "or an empty one.\n"
    ".It length, ratio, time, angle, area, volume, density, mass of an area\n"
    "A string with number and unit, or a number in the units of the file's build or\n"
    "workshop.\n"
    "A length is written in inches and 64ths where the build is made in inches and\n"
    "it is a whole number of them\n"
    ".Pq Ql 76-1/2 in ,\n"
    "and otherwise in millimetres\n"
    ".Pq Ql 2.540625 mm ;\n"
    "anything that can be typed for a length is read.\n"
    "What is written reads back as exactly the same value.\n"
    "A number has no exponent.\n"
    ".It whole number\n"
    "A number without point and exponent.\n"
    ".It amount\n"
    "A string such as\n"
    ".Ql 412.60 ,\n"
    "in the currency of the workshop and with no more digits than that has.\n"
    "Ranges are given here for a currency with two.\n"
    ".It flag\n"
    ".Ql true\n"
    "or\n"
    ".Ql false .\n"
    ".It word\n"
    "A string out of the vocabulary named; see\n"
    ".Sx WORDS .\n"
    ".It reference\n"
    "The key of another item of the build as a number, or the name of an item of the\n"
    "workshop as a string.\n"
    ".El\n";

static const char *const tail = ".Sh SEE ALSO\n"
                                ".Xr stuffover 1 ,\n"
                                ".Xr stuffover-trade 7\n";

static void put_kind(struct text *out, enum exchange_kind kind, bool in_shop, const char *title)
{
    text_format(out, ".Sh %s\n", title);
    put_entity(out, entity_of(format_head(kind)));
    for (int each = 0; each < ENTITY_COUNT; each++)
        if (entity_of((enum entity_kind)each)->in_shop == in_shop)
            put_entity(out, entity_of((enum entity_kind)each));
}

void page_write_build(struct text *out)
{
    text_add(out, head);
    put_kind(out, EXCHANGE_BUILD, false, "THE BUILD");
    put_kind(out, EXCHANGE_WORKSHOP, true, "THE WORKSHOP");
    text_add(out, ".Sh WORDS\nThe vocabularies, each with its words.\n");
#define PUT_WORDS(name, P) put_words(out, &words_##name);
    VOCABULARIES(PUT_WORDS)
#undef PUT_WORDS
    text_add(out, ".Sh EXAMPLES\nA box with one face, and its stick:\n.Bd -literal\n");
    text_add(out, sample_small_file);
    text_add(out, ".Ed\n");
    text_add(out, tail);
}
