#include "sample.h"

#include "model/trade.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void sample_init(struct sample *sample)
{
    arena_init(&sample->arena);
    if (setjmp(sample->escape))
        abort();
    sample->arena.escape = &sample->escape;
    model_init(&sample->model, &sample->arena);
}

void sample_release(struct sample *sample)
{
    arena_release(&sample->arena);
}

const char *const sample_small_file =
    "{\n"
    "  \"format\": 1,\n"
    "  \"kind\": \"build\",\n"
    "  \"build\": {\"name\": \"Bench\", \"due\": \"2026-11-25\", \"next_key\": 5},\n"
    "  \"stocks\": [\n"
    "    {\"name\": \"2x4\", \"thickness\": \"1-1/2 in\", \"width\": \"3-1/2 in\"}\n"
    "  ],\n"
    "  \"offers\": [\n"
    "    {\"stock\": \"2x4\", \"length\": \"96 in\", \"price\": \"4.60\"}\n"
    "  ],\n"
    "  \"boxes\": [\n"
    "    {\"key\": 3, \"name\": \"C\", \"width\": \"1 in\", \"depth\": \"2 in\", "
    "\"height\": \"5.540625 mm\", \"stick\": \"2x4\"}\n"
    "  ],\n"
    "  \"faces\": [\n"
    "    {\"key\": 4, \"box\": 3, \"side\": \"back\", \"seen\": \"wall\"}\n"
    "  ]\n"
    "}\n";

void sample_small(struct model *model)
{
    struct stock *stock = MODEL_ADD(model, stock);
    struct offer *offer;
    struct box *box;
    struct face *face;

    stock->name = "2x4";
    stock->thickness = 3 * LENGTH_INCH / 2;
    stock->width = 7 * LENGTH_INCH / 2;
    offer = MODEL_ADD(model, offer);
    offer->stock = stock->key;
    offer->length = 96 * LENGTH_INCH;
    offer->price = 460;
    MODEL_ADD(model, stock)->name = "not used";
    model->build.name = "Bench";
    model->build.due = "2026-11-25";
    box = model_add_keyed(model, ENTITY_box, 3);
    box->name = "C";
    box->width = LENGTH_INCH;
    box->depth = 2 * LENGTH_INCH;
    box->height = 1773;
    box->stick = 1;
    face = model_add_keyed(model, ENTITY_face, 4);
    face->box = 3;
    face->side = SIDE_BACK;
    face->seen = SEEN_WALL;
}

/* Characters that a file has to take care of are among them. */
static const char *text_by_chance(struct model *model, struct dice *dice, const struct field *field)
{
    static const char *const pieces[] = {
        "a", "Z",    " ", "\"", "\\", "\n", "\xc3\xa9", "\xe2\x82\xac",
        "/", "\x01", "'", "=",  ",",  ";"};
    int64_t most = field->most < 30 ? field->most : 30;
    char buffer[30 * 4 + 1] = "";

    for (int64_t left = dice_between(dice, field->least, most); left > 0; left--)
        strcat(buffer, pieces[dice_bits(dice) % (sizeof pieces / sizeof pieces[0])]);
    return arena_text(model->arena, buffer);
}

static const char *date_by_chance(struct model *model, struct dice *dice, const struct field *field)
{
    if (field->least == 0 && dice_bits(dice) % 2)
        return "";
    return arena_format(model->arena, "%d-%02d-%02d", (int)dice_between(dice, 1990, 2040),
                        (int)dice_between(dice, 1, 12), (int)dice_between(dice, 1, 28));
}

static int64_t reference_by_chance(struct model *model, struct dice *dice,
                                   const struct field *field)
{
    size_t count = model_count(model, field->target);

    if (count == 0 || (field->least == 0 && dice_bits(dice) % 3 == 0))
        return 0;
    return item_key(model_at_const(model, field->target, dice_bits(dice) % count));
}

static int64_t whole_by_chance(struct model *model, struct dice *dice, const struct field *field)
{
    if (field->type == FIELD_REF)
        return reference_by_chance(model, dice, field);
    if (field->type == FIELD_CHOICE)
        return dice_between(dice, 0, (int64_t)field->words->count - 1);
    if (field->standard >= field->least && dice_bits(dice) % 4 == 0)
        return field->standard;
    if (field->type == FIELD_LENGTH && dice_bits(dice) % 2)
        return field->least +
               dice_between(dice, 0, (field->most - field->least) / LENGTH_64TH) * LENGTH_64TH;
    return dice_between(dice, field->least, field->most);
}

static void fill(struct model *model, struct dice *dice, const struct entity *entity, void *item)
{
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (strcmp(field->name, "next_key") == 0 || strcmp(field->name, "digits") == 0 ||
            strcmp(field->name, "currency") == 0)
            continue;
        if (field->type == FIELD_TEXT)
            field_set_string(field, item, text_by_chance(model, dice, field));
        else if (field->type == FIELD_DATE)
            field_set_string(field, item, date_by_chance(model, dice, field));
        else
            field_set_whole(field, item, whole_by_chance(model, dice, field));
    }
}

/* A trade value is that with the item's number, so that no two are the same. */
static void set_trade_value(struct model *model, struct dice *dice, const struct entity *entity,
                            void *item)
{
    size_t index = (model_count(model, entity->kind) - 1) % TRADE_COUNT;
    const struct trade_value *trade = &trade_values[index];
    char value[QUANTITY_TEXT];

    quantity_print_exact(value, trade->quantity, UNITS_INCH,
                         dice_between(dice, trade->least, trade->most));
    field_set_string(field_named(entity, "name"), item, trade->key);
    field_set_string(field_named(entity, "value"), item, arena_text(model->arena, value));
}

static void add_by_chance(struct model *model, struct dice *dice, const struct entity *entity)
{
    int64_t *next = entity->in_shop ? &model->workshop.next_key : &model->build.next_key;
    void *item = model_add_keyed(model, entity->kind, *next + dice_between(dice, 0, 3));

    fill(model, dice, entity, item);
    if (entity_has_own_names(entity->kind))
        field_set_string(field_named(entity, "name"), item,
                         arena_format(model->arena, "n\xc3\xb6 %d", (int)item_key(item)));
    if (entity->kind == ENTITY_shop_value || entity->kind == ENTITY_build_value)
        set_trade_value(model, dice, entity, item);
}

void sample_by_chance(struct model *model, struct dice *dice, int most)
{
    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);

        for (int64_t left = dice_between(dice, 1, most); left > 0; left--)
            add_by_chance(model, dice, entity);
    }
    fill(model, dice, entity_of(ENTITY_workshop), &model->workshop);
    fill(model, dice, entity_of(ENTITY_build), &model->build);
    model->build.next_key += dice_between(dice, 0, 5);
}

void told_note(void *told, const struct fault_note *note)
{
    struct told *all = told;

    if (all->count < sizeof all->notes / sizeof all->notes[0])
        all->notes[all->count] = *note;
    all->count++;
}

static const char *const fault_names[] = {
#define FAULT_NAME(name, exit, text) #name,
    FAULTS(FAULT_NAME)
#undef FAULT_NAME
};

void told_aloud(void *nothing, const struct fault_note *note)
{
    char line[512];

    (void)nothing;
    fault_print(line, sizeof line, note);
    fprintf(stderr, "%s\n", line);
}

void told_print(const struct told *told, struct text *out)
{
    size_t most = sizeof told->notes / sizeof told->notes[0];

    for (size_t i = 0; i < told->count && i < most; i++) {
        const struct fault_note *note = &told->notes[i];

        text_format(out, "%d:%d %s %s: %s\n", note->line, note->column, fault_names[note->code],
                    note->path, note->why);
    }
}
