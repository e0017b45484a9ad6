#include "model/range.h"

#include "base/day.h"
#include "base/money.h"
#include "base/quantity.h"
#include "base/utf8.h"

#include <assert.h>
#include <inttypes.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

/* ---- whole numbers ---- */

/* A limit of a field that is money, or a number without a unit. */
static const char *print_limit(char buffer[MONEY_TEXT], const struct field *field,
                               const struct model *model, int64_t value)
{
    if (field->type == FIELD_MONEY)
        return money_print_code(buffer, model_currency(model), value);
    snprintf(buffer, MONEY_TEXT, "%" PRId64, value);
    return buffer;
}

static enum fault check_limits(const struct field *field, const struct model *model, int64_t value,
                               struct fault_note *note)
{
    char least[MONEY_TEXT];
    char most[MONEY_TEXT];
    enum quantity quantity = field_quantity(field);

    if (value >= field->least && value <= field->most)
        return FAULT_NONE;
    if (quantity != QUANTITY_KINDS) {
        struct quantity_limits limits =
            quantity_print_limits(quantity, model_units(model), field->least, field->most);
        return fault_say_column(note, FAULT_RANGE, 1, "%s must be from %s to %s", field->name,
                                limits.least, limits.most);
    }
    return fault_say_column(note, FAULT_RANGE, 1, "%s must be from %s to %s", field->name,
                            print_limit(least, field, model, field->least),
                            print_limit(most, field, model, field->most));
}

enum fault range_check_whole(const struct field *field, const struct model *model, int64_t value,
                             struct fault_note *note)
{
    assert(!field_is_text(field));
    switch (field->type) {
    case FIELD_CHOICE:
        if (value >= 0 && (uint64_t)value < field->words->count)
            return FAULT_NONE;
        return fault_say_column(note, FAULT_UNKNOWN, 1, "%s has no such word", field->words->name);
    case FIELD_REF:
        if (value != 0 || field->least == 0)
            return FAULT_NONE;
        return fault_say_column(note, FAULT_MISSING, 1, "a %s is needed",
                                entity_of(field->target)->name);
    default:
        return check_limits(field, model, value, note);
    }
}

/* ---- texts ---- */

static enum fault check_date(const char *text, struct fault_note *note)
{
    static const char shape[] = "dddd-dd-dd";
    int month;
    int64_t day;

    for (int i = 0; i < (int)sizeof shape; i++) {
        bool fits = shape[i] == 'd' ? text[i] >= '0' && text[i] <= '9' : text[i] == shape[i];

        if (!fits)
            return fault_say_column(note, FAULT_SYNTAX, i + 1,
                                    "a date is written year-month-day, as 2026-11-25");
    }
    month = (text[5] - '0') * 10 + (text[6] - '0');
    if (month < 1 || month > 12)
        return fault_say_column(note, FAULT_SYNTAX, 6, "there are twelve months");
    if (!day_read(text, &day))
        return fault_say_column(note, FAULT_SYNTAX, 9, "that month has no such day");
    return FAULT_NONE;
}

/* The field's limits are of characters, not bytes. */
static enum fault check_characters(const struct field *field, const char *text,
                                   struct fault_note *note)
{
    int64_t count = (int64_t)utf8_count(text);

    if (!utf8_valid(text, strlen(text)))
        return fault_say(note, FAULT_SYNTAX, "the text is not UTF-8");
    if (count < field->least)
        return fault_say_column(note, count ? FAULT_RANGE : FAULT_MISSING, 1,
                                "%s needs at least %" PRId64 " characters", field->name,
                                field->least);
    if (count > field->most)
        return fault_say_column(note, FAULT_RANGE, (int)field->most + 1,
                                "%s takes at most %" PRId64 " characters", field->name,
                                field->most);
    return FAULT_NONE;
}

enum fault range_check_text(const struct field *field, const char *text, struct fault_note *note)
{
    assert(field_is_text(field));
    if (field->type == FIELD_TEXT)
        return check_characters(field, text, note);
    if (*text)
        return check_date(text, note);
    return field->least ? fault_say_column(note, FAULT_MISSING, 1, "a date is needed") : FAULT_NONE;
}
