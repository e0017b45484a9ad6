/* Reports as JSON: the object that a command prints, and its members, key and value in one call. */
#ifndef CLI_REPORT_PUT_H
#define CLI_REPORT_PUT_H

#include "exchange/json.h"
#include "plan/plan.h"

/* A whole report is one object: begun on `out`, ended when all its members are put. */
static inline void report_open(struct json *json, struct text *out)
{
    json_put_start(json, out);
    json_put_object(json, JSON_LINES);
}

static inline void report_close(struct json *json)
{
    json_put_close(json);
    json_put_end(json);
}

static inline void put_text(struct json *json, const char *key, const char *text)
{
    json_put_key(json, key);
    json_put_string(json, text);
}

static inline void put_whole(struct json *json, const char *key, int64_t value)
{
    json_put_key(json, key);
    json_put_whole(json, value);
}

static inline void put_bool(struct json *json, const char *key, bool value)
{
    json_put_key(json, key);
    json_put_bool(json, value);
}

static inline void put_quantity(struct json *json, const struct plan *plan, const char *key,
                                enum quantity quantity, int64_t value)
{
    json_put_key(json, key);
    json_put_quantity(json, quantity, model_units(plan->facts), value);
}

static inline void put_length(struct json *json, const struct plan *plan, const char *key,
                              int64_t length)
{
    put_quantity(json, plan, key, QUANTITY_LENGTH, length);
}

static inline void put_money(struct json *json, const struct plan *plan, const char *key,
                             int64_t money)
{
    json_put_key(json, key);
    json_put_money(json, model_currency(plan->facts), money);
}

static inline void put_array(struct json *json, const char *key)
{
    json_put_key(json, key);
    json_put_array(json, JSON_LINES);
}

#endif
