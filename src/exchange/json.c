#include "exchange/json.h"

#include "base/scan.h"
#include "base/utf8.h"

#include <assert.h>
#include <inttypes.h>
#include <string.h>

#define INDENT 2

static struct json_level *innermost(struct json *json)
{
    return json->depth > 0 ? &json->levels[json->depth - 1] : NULL;
}

static void begin_line(struct json *json, int depth)
{
    text_add_char(json->out, '\n');
    for (int i = 0; i < depth * INDENT; i++)
        text_add_char(json->out, ' ');
}

/* What stands between a member and the one before it. */
static void separate(struct json *json, struct json_level *level)
{
    if (level->begun)
        text_add(json->out, level->lines ? "," : ", ");
    if (level->lines)
        begin_line(json, json->depth);
    level->begun = true;
}

static void begin_value(struct json *json)
{
    struct json_level *level = innermost(json);

    assert(!level || level->object == json->keyed);
    if (level && !level->object)
        separate(json, level);
    json->keyed = false;
}

void json_put_start(struct json *json, struct text *out)
{
    *json = (struct json){.out = out};
}

void json_put_end(struct json *json)
{
    assert(json->depth == 0);
    text_add_char(json->out, '\n');
}

static void open_level(struct json *json, enum json_setting setting, bool object)
{
    const struct json_level *outer = innermost(json);
    bool lines = setting == JSON_LINES && (!outer || outer->lines);

    assert(json->depth < JSON_DEPTH_MOST);
    begin_value(json);
    json->levels[json->depth++] = (struct json_level){.object = object, .lines = lines};
    text_add_char(json->out, object ? '{' : '[');
}

void json_put_object(struct json *json, enum json_setting setting)
{
    open_level(json, setting, true);
}

void json_put_array(struct json *json, enum json_setting setting)
{
    open_level(json, setting, false);
}

void json_put_close(struct json *json)
{
    const struct json_level *level = innermost(json);

    assert(level && !json->keyed);
    json->depth--;
    if (level->lines && level->begun)
        begin_line(json, json->depth);
    text_add_char(json->out, level->object ? '}' : ']');
}

static void put_escape(struct text *out, unsigned code)
{
    static const struct {
        unsigned code;
        const char *escape;
    } short_escapes[] = {{'"', "\\\""}, {'\\', "\\\\"}, {'\n', "\\n"}, {'\t', "\\t"}};

    for (size_t i = 0; i < sizeof short_escapes / sizeof *short_escapes; i++)
        if (short_escapes[i].code == code) {
            text_add(out, short_escapes[i].escape);
            return;
        }
    text_format(out, "\\u%04x", code);
}

/* A broken byte is read as U+FFFD, and so written as that; valid text stays as it is. */
static void put_quoted(struct text *out, const char *string)
{
    size_t left = strlen(string);
    char bytes[4];
    unsigned code;
    int taken;

    text_add_char(out, '"');
    while ((taken = utf8_next(string, left, &code)) > 0) {
        if (code < 0x20 || code == '"' || code == '\\')
            put_escape(out, code);
        else
            text_add_bytes(out, bytes, (size_t)utf8_put(code, bytes));
        string += taken;
        left -= (size_t)taken;
    }
    text_add_char(out, '"');
}

void json_put_key(struct json *json, const char *key)
{
    struct json_level *level = innermost(json);

    assert(level && level->object && !json->keyed);
    separate(json, level);
    put_quoted(json->out, key);
    text_add(json->out, ": ");
    json->keyed = true;
}

void json_put_string(struct json *json, const char *string)
{
    if (!string) {
        json_put_null(json);
        return;
    }
    begin_value(json);
    put_quoted(json->out, string);
}

void json_put_whole(struct json *json, int64_t value)
{
    begin_value(json);
    text_format(json->out, "%" PRId64, value);
}

void json_put_bool(struct json *json, bool value)
{
    begin_value(json);
    text_add(json->out, value ? "true" : "false");
}

void json_put_null(struct json *json)
{
    begin_value(json);
    text_add(json->out, "null");
}

void json_put_decimal(struct json *json, int64_t scaled, int places)
{
    char buffer[SCAN_TEXT];

    begin_value(json);
    text_add(json->out, scan_print(buffer, scaled, places));
}

void json_put_quantity(struct json *json, enum quantity quantity, enum units units, int64_t value)
{
    char buffer[QUANTITY_TEXT];

    if (quantity == QUANTITY_COUNT)
        json_put_whole(json, value);
    else
        json_put_string(json, quantity_print_exact(buffer, quantity, units, value));
}

void json_put_money(struct json *json, struct currency currency, int64_t money)
{
    char buffer[MONEY_TEXT];

    json_put_string(json, money_print(buffer, currency, money));
}
