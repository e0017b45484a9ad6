#include "model/trade.h"

#include "base/arena.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

const struct trade_value trade_values[TRADE_COUNT] = {
#define TRADE_ROW(name, key, quantity, inch, mm, least, most, source, help) \
    {(key), QUANTITY_##quantity, {(inch), (mm)}, (least), (most), (source), (help)},
    TRADE_VALUES(TRADE_ROW)
#undef TRADE_ROW
};

#define TRADE_ONE_MORE(...) +1 /* NOLINT(bugprone-macro-parentheses): a summand */
const struct trade_group trade_groups[] = {
#define TRADE_GROUP(title, values) {title, 0 values(TRADE_ONE_MORE)},
    TRADE_GROUPS(TRADE_GROUP)
#undef TRADE_GROUP
};
#undef TRADE_ONE_MORE

const int trade_group_count = sizeof trade_groups / sizeof *trade_groups;

enum trade trade_group_first(int group)
{
    int first = 0;

    assert(group >= 0 && group < trade_group_count);
    for (int i = 0; i < group; i++)
        first += trade_groups[i].count;
    return (enum trade)first;
}

int trade_group_of(enum trade trade)
{
    int group = 0;

    assert(trade < TRADE_COUNT);
    while (group + 1 < trade_group_count && trade_group_first(group + 1) <= trade)
        group++;
    return group;
}

int trade_find(const char *key)
{
    for (int i = 0; i < TRADE_COUNT; i++)
        if (strcmp(trade_values[i].key, key) == 0)
            return i;
    return -1;
}

enum fault trade_read(enum trade trade, enum units units, const char *text, int64_t *ret_value,
                      struct fault_note *note)
{
    const struct trade_value *row = &trade_values[trade];
    struct quantity_limits limits;
    int64_t value;
    enum fault fault;

    assert(trade < TRADE_COUNT && text);
    fault = quantity_parse(row->quantity, units, text, &value, note);
    if (fault)
        return fault;
    if (value >= row->least && value <= row->most) {
        *ret_value = value;
        return FAULT_NONE;
    }
    limits = quantity_print_limits(row->quantity, units, row->least, row->most);
    return fault_say_column(note, FAULT_RANGE, 1, "%s must be from %s to %s", row->key,
                            limits.least, limits.most);
}

/* ---- changed values: shop_value and build_value are alike, so both go by their fields ---- */

static enum entity_kind kind_of(enum trade_origin where)
{
    assert(where == TRADE_FROM_WORKSHOP || where == TRADE_FROM_BUILD);
    return where == TRADE_FROM_BUILD ? ENTITY_build_value : ENTITY_shop_value;
}

static const struct field *value_field(enum entity_kind kind)
{
    return field_named(entity_of(kind), "value");
}

enum units trade_units(const struct model *model, enum trade_origin where)
{
    int64_t word = where == TRADE_FROM_WORKSHOP ? model->workshop.units : model->build.units;

    return word == UNITS_WORD_MM ? UNITS_MM : UNITS_INCH;
}

static bool read_change(const struct model *model, enum trade_origin where, enum trade trade,
                        int64_t *ret_value)
{
    enum entity_kind kind = kind_of(where);
    int64_t key = model_key_named(model, kind, trade_values[trade].key);

    return key != 0 &&
           !trade_read(trade, trade_units(model, where),
                       field_string(value_field(kind), model_find_const(model, kind, key)),
                       ret_value, NULL);
}

static enum trade_origin find_value(const struct model *model, enum trade trade, int64_t *ret_value)
{
    if (read_change(model, TRADE_FROM_BUILD, trade, ret_value))
        return TRADE_FROM_BUILD;
    if (read_change(model, TRADE_FROM_WORKSHOP, trade, ret_value))
        return TRADE_FROM_WORKSHOP;
    *ret_value = trade_values[trade].standard[model_units(model)];
    return TRADE_FROM_STANDARD;
}

int64_t trade_of(const struct model *model, enum trade trade)
{
    int64_t value;

    find_value(model, trade, &value);
    return value;
}

enum trade_origin trade_origin_of(const struct model *model, enum trade trade)
{
    int64_t value;

    return find_value(model, trade, &value);
}

/* Later changes lie over earlier ones, so that a plan costs what was changed, not the whole table
 * times that. */
static void lay_over(const struct model *model, enum trade_origin where,
                     int64_t ret_values[TRADE_COUNT])
{
    enum entity_kind kind = kind_of(where);
    const struct field *name = field_named(entity_of(kind), "name");

    for (size_t i = 0; i < model_count(model, kind); i++) {
        int trade = trade_find(field_string(name, model_at_const(model, kind, i)));

        if (trade >= 0)
            read_change(model, where, (enum trade)trade, &ret_values[trade]);
    }
}

void trade_resolve(const struct model *model, int64_t ret_values[TRADE_COUNT])
{
    for (int i = 0; i < TRADE_COUNT; i++)
        ret_values[i] = trade_values[i].standard[model_units(model)];
    lay_over(model, TRADE_FROM_WORKSHOP, ret_values);
    lay_over(model, TRADE_FROM_BUILD, ret_values);
}

static bool reads_as(enum trade trade, enum units units, const char *text, int64_t value)
{
    int64_t read;

    return !quantity_parse(trade_values[trade].quantity, units, text, &read, NULL) && read == value;
}

const char *trade_text(struct arena *arena, enum trade trade, enum units units, const char *text,
                       int64_t value)
{
    enum quantity quantity = trade_values[trade].quantity;
    enum units other = units == UNITS_MM ? UNITS_INCH : UNITS_MM;
    char printed[QUANTITY_TEXT];

    assert(reads_as(trade, units, text, value));
    if (reads_as(trade, other, text, value) && strlen(text) < QUANTITY_TEXT)
        return arena_text(arena, text);
    quantity_print_unit(printed, quantity, units, value);
    if (!reads_as(trade, other, printed, value)) /* printing rounds */
        snprintf(printed, sizeof printed, "%.30s %s", text, quantity_unit(quantity, units));
    if (!reads_as(trade, other, printed, value))
        quantity_print_exact(printed, quantity, units, value);
    return arena_text(arena, printed);
}

static enum fault keep_change(struct model *model, enum trade_origin where, enum trade trade,
                              const char *text, struct fault_note *note)
{
    enum entity_kind kind = kind_of(where);
    int64_t key = model_key_named(model, kind, trade_values[trade].key);
    void *item = key ? model_find(model, kind, key) : model_add(model, kind);

    if (!item)
        return fault_say(note, FAULT_MEMORY, "there is no memory left for the value");
    field_set_string(field_named(entity_of(kind), "name"), item, trade_values[trade].key);
    field_set_string(value_field(kind), item, text);
    return FAULT_NONE;
}

enum fault trade_change(struct model *model, enum trade_origin where, const char *key,
                        const char *text, struct fault_note *note)
{
    enum units units = trade_units(model, where);
    int trade = trade_find(key);
    int64_t value;
    enum fault fault;

    if (trade < 0)
        return fault_say_column(note, FAULT_UNKNOWN, 1, "there is no such trade value");
    if (text[strspn(text, " \t")] == '\0') {
        model_remove(model, kind_of(where), model_key_named(model, kind_of(where), key));
        return FAULT_NONE;
    }
    fault = trade_read((enum trade)trade, units, text, &value, note);
    if (fault)
        return fault;
    text = trade_text(model->arena, (enum trade)trade, units, text, value);
    if (!text)
        return fault_say(note, FAULT_MEMORY, "there is no memory left for the value");
    return keep_change(model, where, (enum trade)trade, text, note);
}
