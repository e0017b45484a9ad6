/*
 * The tables, which writing and reading share; and writing.
 */
#include "exchange/ledger.h"

#include "exchange/ledger_columns.h"

#include <assert.h>
#include <string.h>

static const struct ledger_table tables[LEDGER_KINDS] = {
    [LEDGER_PRICES] = {.word = "prices",
                       .entity = ENTITY_offer,
                       .known_by = {"stock", "length", "width", "pack", "volume", "supplier"},
                       .needs = {"stock", "price"}},
    [LEDGER_HISTORY] = {.word = "history",
                        .entity = ENTITY_past_price,
                        .known_by = {"stock", "length", "width", "pack", "volume", "supplier",
                                     "dated"},
                        .needs = {"stock", "price", "dated"}},
    [LEDGER_SHELF] = {.word = "shelf",
                      .entity = ENTITY_leftover,
                      .known_by = {"stock", "length", "width", "place", "from_build", "kept_for",
                                   "from_step"},
                      .needs = {"stock", "count"}},
    [LEDGER_SPEND] = {.word = "spend",
                      .entity = ENTITY_spend,
                      .needs = {"dated", "amount", "what"},
                      .of_builds = true},
};

const struct ledger_table *ledger_table(enum ledger_kind kind)
{
    assert(kind < LEDGER_KINDS);
    return &tables[kind];
}

bool ledger_knows_by(const struct ledger_table *table, const struct field *field)
{
    for (size_t i = 0; i < LEDGER_KNOWN_BY && table->known_by[i]; i++)
        if (strcmp(table->known_by[i], field->name) == 0)
            return true;
    return table->known_by[0] == NULL;
}

bool ledger_needs(const struct ledger_table *table, const struct field *field)
{
    for (size_t i = 0; i < LEDGER_NEEDS && table->needs[i]; i++)
        if (strcmp(table->needs[i], field->name) == 0)
            return true;
    return false;
}

const char *ledger_word(enum ledger_kind kind)
{
    return ledger_table(kind)->word;
}

enum ledger_kind ledger_named(const char *word)
{
    for (int kind = 0; kind < LEDGER_KINDS; kind++)
        if (strcmp(tables[kind].word, word) == 0)
            return (enum ledger_kind)kind;
    return LEDGER_KINDS;
}

enum entity_kind ledger_entity(enum ledger_kind kind)
{
    return ledger_table(kind)->entity;
}

/* ---- out ---- */

void ledger_put_head(struct text *out, enum ledger_kind kind, const struct csv_style *style)
{
    const struct ledger_table *table = ledger_table(kind);
    const struct entity *entity = entity_of(table->entity);

    csv_put_start(out, style);
    if (table->of_builds)
        csv_put_cell(out, style, true, LEDGER_BUILD);
    for (size_t i = 0; i < entity->field_count; i++)
        csv_put_cell(out, style, i == 0 && !table->of_builds, entity->fields[i].name);
    csv_put_end(out);
}

static const char *name_of(const struct model *model, const struct field *field, const void *item)
{
    const void *target = model_find_const(model, field->target, field_whole(field, item));

    return target ? field_string(field_named(entity_of(field->target), "name"), target) : "";
}

/* So that field_read gives exactly the value again. */
static void put_whole(struct text *out, const struct csv_style *style, bool first,
                      const struct model *model, const struct field *field, int64_t value)
{
    char number[QUANTITY_TEXT];

    if (field->type == FIELD_MONEY)
        money_print(number, model_currency(model), value);
    else
        quantity_print_exact(number, field_quantity(field),
                             model->workshop.units == UNITS_WORD_MM ? UNITS_MM : UNITS_INCH, value);
    csv_put_number(out, style, first, number);
}

static void put_field(struct text *out, const struct csv_style *style, bool first,
                      const struct model *model, const struct field *field, const void *item)
{
    int64_t value = field_is_text(field) ? 0 : field_whole(field, item);

    assert(!field->words || (value >= 0 && (size_t)value < field->words->count));
    if (field_is_text(field))
        csv_put_text(out, style, first, field_string(field, item));
    else if (field->type == FIELD_REF)
        csv_put_text(out, style, first, name_of(model, field, item));
    else if (field->type == FIELD_CHOICE)
        csv_put_text(out, style, first, field->words->at[value].name);
    else if (field->type == FIELD_FLAG)
        csv_put_cell(out, style, first, value == field->standard ? "" : value ? "yes" : "no");
    else if (value == 0 && field->standard == 0 && field->type != FIELD_MONEY)
        csv_put_cell(out, style, first, "");
    else
        put_whole(out, style, first, model, field, value);
}

void ledger_put_lines(struct text *out, enum ledger_kind kind, const struct csv_style *style,
                      const struct model *model, bool shelf)
{
    const struct ledger_table *table = ledger_table(kind);
    enum entity_kind each = kind == LEDGER_SPEND && shelf ? ENTITY_shop_spend : table->entity;
    const struct entity *entity = entity_of(each);

    for (size_t i = 0; i < model_count(model, each); i++) {
        const void *item = model_at_const(model, each, i);

        if (table->of_builds)
            csv_put_text(out, style, true, shelf ? "" : model->build.name);
        for (size_t k = 0; k < entity->field_count; k++)
            put_field(out, style, k == 0 && !table->of_builds, model, &entity->fields[k], item);
        csv_put_end(out);
    }
}
