#include "tui/form.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

int form_fields(enum entity_kind kind, const struct field *at[FORM_FIELDS])
{
    const struct entity *entity = entity_of(kind);
    int count = 0;
    for (size_t i = 0; i < entity->field_count && count < FORM_FIELDS; i++) {
        if (strcmp(entity->fields[i].name, "next_key") != 0)
            at[count++] = &entity->fields[i];
    }
    return count;
}

/* Names that are short in a file and say nothing on a screen. */
static const struct {
    const char *name;
    const char *label;
} labels[] = {{"u", "from the left"},         {"v", "from bottom/back"},
              {"x", "from the left"},         {"y", "from the back"},
              {"z", "from the bottom"},       {"rank", "order"},
              {"offset_u", "moved to right"}, {"offset_v", "moved up"},
              {"both", "both sides"},         {"dated", "day"}};

void form_label(const struct field *field, struct text *out)
{
    for (size_t i = 0; i < sizeof labels / sizeof *labels; i++) {
        if (strcmp(labels[i].name, field->name) == 0) {
            text_add(out, labels[i].label);
            return;
        }
    }
    char label[MODEL_NAME_TEXT];
    snprintf(label, sizeof label, "%s", field->name);
    text_blank(label);
    text_add(out, label);
}

/* ---- what is allowed ---- */

static void add_range(const struct field *field, const struct model *model, struct text *out)
{
    enum quantity quantity = field_quantity(field);
    if (quantity == QUANTITY_KINDS)
        return;
    struct quantity_limits limits =
        quantity_print_limits(quantity, model_units(model), field->least, field->most);
    text_format(out, "%s to %s", limits.least, limits.most);
}

static void add_names(const struct field *field, const struct model *model, struct text *out)
{
    char name[MODEL_NAME_TEXT];
    for (size_t i = 0; i < model_count(model, field->target); i++) {
        int64_t key = item_key(model_at_const(model, field->target, i));
        text_add(out, i ? ", " : "");
        text_add(out, model_item_name(name, model, field->target, key));
    }
}

void form_allowed(const struct field *field, const struct model *model, struct text *out)
{
    if (field->type == FIELD_CHOICE) {
        for (size_t i = 0; i < field->words->count; i++)
            text_format(out, "%s%s", i ? ", " : "", field->words->at[i].name);
    } else if (field->type == FIELD_REF) {
        add_names(field, model, out);
    } else if (field->type == FIELD_FLAG) {
        text_add(out, "yes, no");
    } else if (field->type == FIELD_DATE) {
        text_add(out, "a day as 2026-11-25");
    } else {
        add_range(field, model, out);
    }
}

/* ---- fields with few values ---- */

/* Whether nothing may stand in a reference: one more choice before the items. */
static int choice_of_none(const struct field *field)
{
    return field->type == FIELD_REF && !field->least;
}

int form_choices(const struct field *field, const struct model *model)
{
    switch (field->type) {
    case FIELD_CHOICE:
        return (int)field->words->count;
    case FIELD_FLAG:
        return 2;
    case FIELD_REF:
        return (int)model_count(model, field->target) + choice_of_none(field);
    default:
        return 0;
    }
}

/* As field_read finds the item again: its name where that leads back to it, else its key. */
static void add_item(const struct field *field, const struct model *model, size_t index,
                     struct text *out)
{
    char name[MODEL_NAME_TEXT];
    int64_t key = item_key(model_at_const(model, field->target, index));
    model_item_name(name, model, field->target, key);
    if (*name != '#' && model_key_named(model, field->target, name) == key)
        text_add(out, name);
    else
        text_format(out, "#%lld", (long long)key);
}

void form_choice(const struct field *field, const struct model *model, int index, struct text *out)
{
    int item = index - choice_of_none(field);
    assert(index >= 0 && index < form_choices(field, model));
    if (field->type == FIELD_CHOICE)
        text_add(out, field->words->at[index].name);
    else if (field->type == FIELD_FLAG)
        text_add(out, index ? "yes" : "no");
    else if (item >= 0)
        add_item(field, model, (size_t)item, out);
}

/* Which choices a text can mean: those that begin with it, or are it. */
struct meaning {
    int first; /* -1: none */
    int count;
    int exact; /* -1: none */
};

static struct meaning meaning_of(const struct field *field, const struct model *model,
                                 const char *typed)
{
    struct meaning meaning = {.first = -1, .exact = -1};
    struct text choice;
    text_init(&choice);
    for (int i = 0; i < form_choices(field, model); i++) {
        text_clear(&choice);
        form_choice(field, model, i, &choice);
        if (strcmp(text_string(&choice), typed) == 0)
            meaning.exact = i;
        if (strncasecmp(text_string(&choice), typed, strlen(typed)) != 0)
            continue;
        if (meaning.count++ == 0)
            meaning.first = i;
    }
    text_release(&choice);
    return meaning;
}

bool form_turn(const struct field *field, const struct model *model, const char *typed, int by,
               struct text *out)
{
    int count = form_choices(field, model);
    if (count == 0)
        return false;
    struct meaning meaning = meaning_of(field, model, typed);
    int at = meaning.exact >= 0 ? meaning.exact + by : meaning.first;
    form_choice(field, model, (at + count) % count, out);
    return true;
}

void form_complete(const struct field *field, const struct model *model, const char *typed,
                   struct text *out)
{
    struct meaning meaning = meaning_of(field, model, typed);
    if (*typed && meaning.exact < 0 && meaning.count == 1)
        form_choice(field, model, meaning.first, out);
    else
        text_add(out, typed);
}

/* ---- new items ---- */

static bool name_is_taken(const struct model *model, enum entity_kind kind, const char *name)
{
    return model_key_named(model, kind, name) != 0;
}

/* A letter for a box, J1, J2 ... for a join, "tool 2" for the rest. */
static const char *free_name(const struct model *model, enum entity_kind kind, const char *word)
{
    char name[64];
    for (int i = 1; i < 1000; i++) {
        if (kind == ENTITY_box && i <= 26)
            snprintf(name, sizeof name, "%c", 'A' + i - 1);
        else if (kind == ENTITY_join)
            snprintf(name, sizeof name, "J%d", i);
        else
            snprintf(name, sizeof name, "%.40s %d", word, i);
        if (!name_is_taken(model, kind, name))
            break;
    }
    return arena_text(model->arena, name);
}

static void fill_text(struct model *model, enum entity_kind kind, const struct field *field,
                      void *item, const char *today)
{
    const char *word = entity_of(kind)->name;
    bool is_name = strcmp(field->name, "name") == 0;
    if (field->type == FIELD_DATE && field->least)
        field_set_string(field, item, arena_text(model->arena, today));
    else if (field->type == FIELD_TEXT && field->least)
        field_set_string(field, item, is_name ? free_name(model, kind, word) : word);
}

/* Some size to begin with, where the smallest that is allowed is no use to anybody. */
static void fill_size(const struct model *model, const struct field *field, void *item)
{
    int64_t usual = model_units(model) == UNITS_INCH ? 16 * LENGTH_INCH : INT64_C(400) * LENGTH_MM;
    if (field_whole(field, item) >= field->least)
        return;
    if (field->type != FIELD_LENGTH || usual < field->least || usual > field->most)
        usual = field->least;
    field_set_whole(field, item, usual);
}

/* Which kind of stock an item is usually made of; the first of it is taken to begin with. */
static const struct {
    enum entity_kind entity;
    const char *field;
    enum stock_word stock;
} usual_stock[] = {{ENTITY_box, "stick", STOCK_STICK},
                   {ENTITY_facing, "stock", STOCK_SHEET},
                   {ENTITY_layer, "stock", STOCK_FOAM}};

static int64_t usual_stock_of(const struct model *model, enum entity_kind kind,
                              const struct field *field)
{
    for (size_t i = 0; i < sizeof usual_stock / sizeof *usual_stock; i++) {
        if (usual_stock[i].entity != kind || strcmp(usual_stock[i].field, field->name) != 0)
            continue;
        for (size_t k = 0; k < model->stocks.count; k++) {
            if (model->stocks.at[k].kind == (int64_t)usual_stock[i].stock)
                return model->stocks.at[k].key;
        }
    }
    return 0;
}

/* A layer may lie on a joined group instead; a new one lies on a box. */
static bool must_refer(enum entity_kind kind, const struct field *field)
{
    return field->least || (kind == ENTITY_layer && strcmp(field->name, "box") == 0);
}

/* What an item refers to: the owner it is added under, else stock of its usual kind, else, where it
 * must refer to something, the first there is. */
static int64_t reference_for(const struct model *model, enum entity_kind kind,
                             const struct field *field, int64_t owner)
{
    bool owned = field->target == ENTITY_box
                     ? field->least || strcmp(field->name, "box") == 0
                     : field->target == ENTITY_stock && entity_of(kind)->in_shop;
    if (owned && owner && model_find_const(model, field->target, owner))
        return owner;
    int64_t key = usual_stock_of(model, kind, field);
    if (!key && must_refer(kind, field) && model_count(model, field->target) > 0)
        key = item_key(model_at_const(model, field->target, 0));
    return key;
}

static enum fault fill_reference(const struct model *model, enum entity_kind kind,
                                 const struct field *field, void *item, int64_t owner,
                                 struct fault_note *note)
{
    int64_t key = reference_for(model, kind, field, owner);
    if (!key && must_refer(kind, field))
        return fault_say(note, FAULT_REFUSED, "there is no %s yet that it could belong to",
                         entity_of(field->target)->name);
    field_set_whole(field, item, key);
    return FAULT_NONE;
}

/* A join is between two boxes, as long as nobody says otherwise. */
static void fill_join(const struct model *model, struct join *join)
{
    for (size_t i = 0; i < model->boxes.count && !join->box_b; i++) {
        if (model->boxes.at[i].key != join->box_a)
            join->box_b = model->boxes.at[i].key;
    }
    if (!join->box_b)
        join->target = TARGET_WALL;
    join->side_b = SIDE_BACK;
}

/* A layer goes where there is a panel to staple it to, as long as nobody says otherwise. */
static void fill_layer(const struct model *model, struct layer *layer)
{
    for (size_t i = 0; i < model->facings.count; i++) {
        if (model->facings.at[i].box == layer->box) {
            layer->side = model->facings.at[i].side;
            return;
        }
    }
}

enum fault form_fill(struct model *model, enum entity_kind kind, void *item, int64_t owner,
                     const char *today, struct fault_note *note)
{
    const struct entity *entity = entity_of(kind);
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];
        enum fault fault = FAULT_NONE;
        if (field_is_text(field))
            fill_text(model, kind, field, item, today);
        else if (field->type == FIELD_REF)
            fault = fill_reference(model, kind, field, item, owner, note);
        else if (field_quantity(field) != QUANTITY_KINDS)
            fill_size(model, field, item);
        if (fault)
            return fault;
    }
    if (kind == ENTITY_join)
        fill_join(model, item);
    if (kind == ENTITY_layer)
        fill_layer(model, item);
    return FAULT_NONE;
}
