/*
 * Writes JSON (RFC 8259) onto a text: for files and for what commands print to programs. No locale,
 * no numbers in binary floating point, always valid UTF-8.
 *
 *     struct json json;
 *     json_put_start(&json, out);
 *     json_put_object(&json, JSON_LINES);
 *     json_put_key(&json, "format");
 *     json_put_whole(&json, 1);
 *     json_put_close(&json);
 *     json_put_end(&json);
 *
 * The functions are called json_put_..., since the library that reads JSON has taken the shorter
 * names. A mistake in the order of calls (a value in an object without its key, a key in an array,
 * closing what is not open) is ours and asserted. When memory is out, text_failed(out) says so.
 */
#ifndef EXCHANGE_JSON_H
#define EXCHANGE_JSON_H

#include "base/money.h"
#include "base/quantity.h"
#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define JSON_DEPTH_MOST 16

/* How the members of an object or array are set: each on its own line, or all on one. What lies
 * inside a container on one line is on that line too. */
enum json_setting { JSON_LINES, JSON_LINE };

struct json_level {
    bool object;
    bool lines;
    bool begun; /* has a member */
};

struct json {
    struct text *out; /* not owned */
    int depth;
    bool keyed; /* a key was written, its value was not */
    struct json_level levels[JSON_DEPTH_MOST];
};

void json_put_start(struct json *json, struct text *out);

/* One value was written and all is closed; adds the ending newline. */
void json_put_end(struct json *json);

void json_put_object(struct json *json, enum json_setting setting);
void json_put_array(struct json *json, enum json_setting setting);
void json_put_close(struct json *json);

/* A member's key; its value is the next thing written. */
void json_put_key(struct json *json, const char *key);

/* A broken byte becomes U+FFFD; controls are escaped; the rest stays as it is. NULL gives null. */
void json_put_string(struct json *json, const char *string);
void json_put_whole(struct json *json, int64_t value);
void json_put_bool(struct json *json, bool value);
void json_put_null(struct json *json);

/* The number scaled / 10^places with its places: json_put_decimal(json, 1250, 2) writes 12.50. */
void json_put_decimal(struct json *json, int64_t scaled, int places);

/* Strings, as in files: "76-1/2 in" (quantity_print_exact), "412.60". A count is a number. */
void json_put_quantity(struct json *json, enum quantity quantity, enum units units, int64_t value);
void json_put_money(struct json *json, struct currency currency, int64_t money);

#endif
