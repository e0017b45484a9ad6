/*
 * What the forms of the terminal do, as commands: items looked at, added, changed, copied, deleted,
 * and boxes put beside each other. `-` in the place of a build is the workshop alone.
 */
#include "cli/commands.h"

#include "base/show.h"
#include "cli/report_put.h"
#include "paper/sheets.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define EDITS_MOST 64 /* fields given in one command */

/* ---- operands ---- */

static enum fault take_up(struct cli *cli, struct fault_note *note)
{
    if (strcmp(cli->operands[0], "-") == 0)
        return FAULT_NONE;
    return desk_take_up_named(cli->desk, cli->operands[0], note);
}

/* "layer edge", as screens write it, is "layer_edge". */
static const struct entity *entity_written(const char *words)
{
    char name[MODEL_NAME_TEXT];

    snprintf(name, sizeof name, "%s", words);
    for (char *at = name; *at; at++)
        if (*at == ' ')
            *at = '_';
    return entity_named(name);
}

/* The kind that the second operand names, "box". Items of a build need one that is taken up. */
static enum fault find_kind(struct cli *cli, enum entity_kind *ret_kind, struct fault_note *note)
{
    const struct entity *entity = entity_written(cli->operands[1]);
    bool shop = entity && (entity->in_shop || entity->kind == ENTITY_workshop);

    if (!entity || (!shop && !desk_model(cli->desk)->build.key))
        return fault_say(note, FAULT_UNKNOWN,
                         "\"%s\" is no kind of item here: \"stuffover items BUILD\" tells them",
                         cli->operands[1]);
    *ret_kind = entity->kind;
    return FAULT_NONE;
}

/* The workshop and the build are the only ones of their kind, and are not named again. */
static bool is_single(enum entity_kind kind)
{
    return kind >= ENTITY_COUNT;
}

/* By name or by key. */
static enum fault find_item(struct cli *cli, enum entity_kind kind, const char *given,
                            int64_t *ret_key, struct fault_note *note)
{
    const struct model *model = desk_model(cli->desk);
    char *end = NULL;
    int64_t key = model_key_named(model, kind, given);

    if (!key && *given >= '0' && *given <= '9')
        key = strtoll(given, &end, 10);
    if (key <= 0 || (end && *end) || is_single(kind) || !model_find_const(model, kind, key))
        return fault_say(note, FAULT_UNKNOWN, "there is no %s \"%s\"", entity_of(kind)->name,
                         given);
    *ret_key = key;
    return FAULT_NONE;
}

/* ---- looking ---- */

static void put_kinds(struct cli *cli)
{
    const struct model *model = desk_model(cli->desk);

    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);

        if (!entity->in_shop && !model->build.key)
            continue;
        text_format(&cli->out, "%-14s %4zu  %s\n", entity->name,
                    model_count(model, (enum entity_kind)kind), entity->help);
    }
}

static void put_item(struct cli *cli, const struct entity *entity, const void *item)
{
    const struct model *model = desk_model(cli->desk);

    text_format(&cli->out, "%s %lld", entity->name, (long long)item_key(item));
    for (size_t i = 0; i < entity->field_count; i++) {
        struct text value;

        text_init(&value);
        field_write(&entity->fields[i], model, item, &value);
        if (*text_string(&value)) {
            text_format(&cli->out, "\n    %s=", entity->fields[i].name);
            show_text(&cli->out, text_string(&value));
        }
        text_release(&value);
    }
    text_add_char(&cli->out, '\n');
}

static void report_item(struct cli *cli, struct json *json, const struct entity *entity,
                        const void *item)
{
    json_put_object(json, JSON_LINES);
    put_whole(json, "key", item_key(item));
    for (size_t i = 0; i < entity->field_count; i++) {
        struct text value;

        text_init(&value);
        field_write(&entity->fields[i], desk_model(cli->desk), item, &value);
        put_text(json, entity->fields[i].name, text_string(&value));
        text_release(&value);
    }
    json_put_close(json);
}

static void report_kinds(struct cli *cli, struct json *json)
{
    const struct model *model = desk_model(cli->desk);

    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        if (entity_of((enum entity_kind)kind)->in_shop || model->build.key)
            put_whole(json, entity_of((enum entity_kind)kind)->name,
                      (int64_t)model_count(model, (enum entity_kind)kind));
}

/* Of one key, or of all with key 0. */
static void put_items(struct cli *cli, enum entity_kind kind, int64_t key, struct json *json)
{
    const struct model *model = desk_model(cli->desk);

    for (size_t i = 0; i < model_count(model, kind); i++) {
        const void *item = model_at_const(model, kind, i);

        if (key && item_key(item) != key)
            continue;
        if (json)
            report_item(cli, json, entity_of(kind), item);
        else
            put_item(cli, entity_of(kind), item);
    }
}

enum fault command_items(struct cli *cli, struct fault_note *note)
{
    enum entity_kind kind = ENTITY_none;
    int64_t key = 0;
    struct json json;
    enum fault fault = take_up(cli, note);

    if (!fault && cli->count > 1)
        fault = find_kind(cli, &kind, note);
    if (!fault && cli->count > 2)
        fault = find_item(cli, kind, cli->operands[2], &key, note);
    if (fault)
        return fault;
    if (!cli->json) {
        if (cli->count > 1)
            put_items(cli, kind, key, NULL);
        else
            put_kinds(cli);
        return FAULT_NONE;
    }
    report_open(&json, &cli->out);
    if (cli->count > 1) {
        put_array(&json, "items");
        put_items(cli, kind, key, &json);
        json_put_close(&json);
    } else {
        report_kinds(cli, &json);
    }
    report_close(&json);
    return FAULT_NONE;
}

/* ---- changing ---- */

/* The field that stands before the sign in "width=40 in"; NULL for none. */
static const struct field *field_given(const struct entity *entity, const char *given)
{
    size_t length = strcspn(given, "=");

    for (size_t i = 0; i < entity->field_count; i++) {
        const char *name = entity->fields[i].name;

        if (strlen(name) == length && strncmp(name, given, length) == 0)
            return &entity->fields[i];
    }
    return NULL;
}

static enum fault read_edits(struct cli *cli, int from, enum entity_kind kind, int64_t key,
                             struct cure_edit edits[EDITS_MOST], struct fault_note *note)
{
    if (cli->count - from > EDITS_MOST)
        return fault_say(note, FAULT_USAGE, "at most %d fields in one command", EDITS_MOST);
    for (int i = from; i < cli->count; i++) {
        const char *given = cli->operands[i];
        const char *equals = strchr(given, '=');
        const struct field *field = field_given(entity_of(kind), given);

        if (!equals)
            return fault_say(note, FAULT_USAGE, "\"%s\" is not FIELD=VALUE", given);
        if (!field)
            return fault_say(note, FAULT_UNKNOWN,
                             "a %s has no field \"%.*s\"; \"items\" shows those it has",
                             entity_of(kind)->name, (int)(equals - given), given);
        edits[i - from] = (struct cure_edit){kind, key, field->name, equals + 1};
    }
    return FAULT_NONE;
}

/* Of the workshop or the build, which are in no list. */
static enum fault change_single(struct model *draft, void *context, struct fault_note *note)
{
    const struct cure *cure = context;

    for (size_t i = 0; i < cure->edit_count; i++) {
        const struct cure_edit *edit = &cure->edits[i];
        const struct field *field = field_named(entity_of(edit->entity), edit->field);
        enum fault fault =
            field_read(field, draft, model_at(draft, edit->entity, 0), edit->value, note);

        if (fault) {
            fault_at(note, "%s", edit->field);
            return fault;
        }
    }
    return FAULT_NONE;
}

/* "new box", or as the form says it, "width, note of Q": what `undo` will name. */
static void edits_label(char label[STORE_LABEL], const struct model *model, enum entity_kind kind,
                        const struct cure_edit *edits, size_t count)
{
    char name[MODEL_NAME_TEXT];
    bool is_new = !is_single(kind) && (count == 0 || edits[0].key == 0);
    struct text words;

    assert(is_new || count > 0);
    text_init(&words);
    for (size_t i = 0; i < count && !is_new; i++)
        text_format(&words, "%s%s", i ? ", " : "", edits[i].field);
    if (is_new)
        text_format(&words, "new %s", entity_of(kind)->name);
    else
        text_format(&words, " of %s", model_item_name(name, model, kind, edits[0].key));
    show_into(label, STORE_LABEL, text_string(&words));
    text_release(&words);
}

static enum fault take_edits(struct cli *cli, enum entity_kind kind, const struct cure_edit *edits,
                             size_t count, struct fault_note *note)
{
    char label[STORE_LABEL];
    struct cure cure = {.text = label, .edits = edits, .edit_count = count};
    enum fault fault;

    edits_label(label, desk_model(cli->desk), kind, edits, count);
    fault = is_single(kind) ? desk_edit(cli->desk, label, change_single, &cure, note)
                            : desk_take_cure(cli->desk, &cure, note);
    if (!fault)
        command_tally(cli);
    return fault;
}

enum fault command_add(struct cli *cli, struct fault_note *note)
{
    enum entity_kind kind = ENTITY_none;
    struct cure_edit edits[EDITS_MOST] = {{0}};
    enum fault fault = take_up(cli, note);

    if (!fault)
        fault = find_kind(cli, &kind, note);
    if (!fault && is_single(kind))
        fault = fault_say(note, FAULT_USAGE, "there is one %s only: \"change\" changes it",
                          entity_of(kind)->name);
    if (!fault)
        fault = read_edits(cli, 2, kind, 0, edits, note);
    return fault ? fault : take_edits(cli, kind, edits, (size_t)(cli->count - 2), note);
}

/* What is changed, and where its fields begin: "box Q width=3", "workshop currency=EUR", or, of
 * what is in hand itself, "budget=200". */
static enum fault find_changed(struct cli *cli, enum entity_kind *ret_kind, int64_t *ret_key,
                               int *ret_from, struct fault_note *note)
{
    enum entity_kind kind = desk_model(cli->desk)->build.key ? ENTITY_build : ENTITY_workshop;
    bool itself = strchr(cli->operands[1], '=');
    int64_t key = 0;
    enum fault fault = itself ? FAULT_NONE : find_kind(cli, &kind, note);

    if (!fault && is_single(kind))
        key = item_key(model_at_const(desk_model(cli->desk), kind, 0));
    else if (!fault && cli->count == 2)
        fault = fault_say(note, FAULT_USAGE, "which %s is to be changed?", entity_of(kind)->name);
    else if (!fault)
        fault = find_item(cli, kind, cli->operands[2], &key, note);
    if (fault)
        return fault;
    *ret_kind = kind;
    *ret_key = key;
    *ret_from = itself ? 1 : is_single(kind) ? 2 : 3;
    return FAULT_NONE;
}

enum fault command_change(struct cli *cli, struct fault_note *note)
{
    enum entity_kind kind = ENTITY_none;
    struct cure_edit edits[EDITS_MOST] = {{0}};
    int64_t key = 0;
    int from = 0;
    enum fault fault = take_up(cli, note);

    if (!fault)
        fault = find_changed(cli, &kind, &key, &from, note);
    if (!fault && cli->count == from)
        fault = fault_say(note, FAULT_USAGE, "nothing is to be changed: give FIELD=VALUE");
    if (!fault)
        fault = read_edits(cli, from, kind, key, edits, note);
    return fault ? fault : take_edits(cli, kind, edits, (size_t)(cli->count - from), note);
}

/* ---- copying and deleting ---- */

enum fault command_copy_item(struct cli *cli, struct fault_note *note)
{
    enum entity_kind kind = ENTITY_none;
    int64_t key = 0;
    enum fault fault = find_kind(cli, &kind, note);

    if (!fault)
        fault = find_item(cli, kind, cli->operands[2], &key, note);
    if (!fault)
        fault = desk_duplicate(cli->desk, kind, key, note);
    if (!fault)
        command_tally(cli);
    return fault;
}

enum fault command_delete(struct cli *cli, struct fault_note *note)
{
    enum entity_kind kind = ENTITY_none;
    int64_t key = 0;
    enum fault fault = take_up(cli, note);

    if (!fault && cli->count == 1)
        return desk_delete_build(cli->desk, desk_model(cli->desk)->build.key, note);
    if (!fault && cli->count == 2)
        fault = fault_say(note, FAULT_USAGE, "it is: stuffover delete BUILD [KIND ITEM]");
    if (!fault)
        fault = find_kind(cli, &kind, note);
    if (!fault)
        fault = find_item(cli, kind, cli->operands[2], &key, note);
    if (!fault)
        fault = desk_delete(cli->desk, kind, key, note);
    if (!fault)
        command_tally(cli);
    return fault;
}

/* ---- boxes beside each other ---- */

static enum fault read_flush(const char *given, enum desk_flush *ret_flush, struct fault_note *note)
{
    static const char *const words[FLUSHES] = {"begin", "middle", "end"};

    for (int i = 0; i < FLUSHES; i++)
        if (strcmp(words[i], given) == 0) {
            *ret_flush = (enum desk_flush)i;
            return FAULT_NONE;
        }
    return fault_say(note, FAULT_USAGE, "\"%s\": flush is begin, middle or end", given);
}

enum fault command_put(struct cli *cli, struct fault_note *note)
{
    struct desk_beside beside = {.along_u = FLUSH_BEGIN, .along_v = FLUSH_BEGIN};
    enum fault fault = find_item(cli, ENTITY_box, cli->operands[1], &beside.box, note);

    beside.side = words_find(&words_side, cli->operands[2]);
    if (!fault && beside.side < 0)
        fault = fault_say(note, FAULT_UNKNOWN, "\"%s\" is no side of a box", cli->operands[2]);
    if (!fault)
        fault = find_item(cli, ENTITY_box, cli->operands[3], &beside.other, note);
    if (!fault && cli->count > 4)
        fault = read_flush(cli->operands[4], &beside.along_u, note);
    if (!fault && cli->count > 5)
        fault = read_flush(cli->operands[5], &beside.along_v, note);
    if (!fault)
        fault = desk_put_beside(cli->desk, &beside, note);
    if (!fault)
        command_tally(cli);
    return fault;
}
