#include "tui/outline.h"

#include <stdio.h>

/* ---- one line ---- */

/* A size without its unit, in the build's units. */
static const char *size_text(const struct model *model, int64_t length, struct arena *arena)
{
    char printed[QUANTITY_TEXT];
    quantity_print(printed, QUANTITY_LENGTH, model_units(model), length);
    return arena_text(arena, printed);
}

static const char *box_name(const struct model *model, int64_t key)
{
    const struct box *box = MODEL_FIND(model, box, key);
    return box ? box->name : "";
}

static const char *box_text(const struct model *model, const struct box *box, struct arena *arena)
{
    return arena_format(arena, "Box %s  %s %s x %s x %s", box->name,
                        words_frame.at[box->frame].name, size_text(model, box->width, arena),
                        size_text(model, box->depth, arena), size_text(model, box->height, arena));
}

static const char *join_text(const struct model *model, const struct join *join,
                             struct arena *arena)
{
    const char *with = join->target == TARGET_BOX ? box_name(model, join->box_b)
                                                  : words_target.at[join->target].name;
    return arena_format(arena, "Join %s  %s %s to %s%s", join->name, box_name(model, join->box_a),
                        words_side.at[join->side_a].name, with,
                        join->place == PLACE_SITE ? ", in the room" : "");
}

static const char *unit_size_text(const struct model *model, int64_t length, struct arena *arena)
{
    char printed[QUANTITY_TEXT];
    quantity_print_unit(printed, QUANTITY_LENGTH, model_units(model), length);
    return arena_text(arena, printed);
}

/* "96 x 48 in", "96 in"; empty without a size */
static const char *extent_text(const struct model *model, int64_t length, int64_t width,
                               struct arena *arena)
{
    if (width)
        return arena_format(arena, "%s x %s", size_text(model, length, arena),
                            unit_size_text(model, width, arena));
    return length ? unit_size_text(model, length, arena) : "";
}

/* "96 x 48 in for 36.50", "pack of 100 for 6.20" */
static const char *offer_text(const struct model *model, const struct offer *offer,
                              struct arena *arena)
{
    char money[MONEY_TEXT];
    const char *size = extent_text(model, offer->length, offer->width, arena);
    money_print(money, model_currency(model), offer->price);
    if (*size && offer->pack > 1)
        return arena_format(arena, "%lld of %s for %s", (long long)offer->pack, size, money);
    if (*size)
        return arena_format(arena, "%s for %s", size, money);
    return arena_format(arena, offer->pack > 1 ? "pack of %lld for %s" : "%lld for %s",
                        (long long)offer->pack, money);
}

/* "before: 96 x 48 in for 36.50, 2026-04-02" */
static const char *past_price_text(const struct model *model, const struct past_price *past,
                                   struct arena *arena)
{
    const struct offer offer = {
        .length = past->length, .width = past->width, .pack = past->pack, .price = past->price};
    return arena_format(arena, "before: %s%s%s", offer_text(model, &offer, arena),
                        *past->dated ? ", " : "", past->dated);
}

/* "supplier  Yard on the Quay, brings an order for 25.00, from 300.00 on for nothing" */
static const char *supplier_text(const struct model *model, const struct supplier *supplier,
                                 struct arena *arena)
{
    char delivery[MONEY_TEXT];
    char from[MONEY_TEXT];
    money_print(delivery, model_currency(model), supplier->delivery);
    money_print(from, model_currency(model), supplier->free_from);
    if (supplier->free_from == 0)
        return arena_format(arena, "supplier  %s, brings an order for %s", supplier->name,
                            delivery);
    return arena_format(arena, "supplier  %s, brings an order for %s, from %s on for nothing",
                        supplier->name, delivery, from);
}

/* "on the shelf: 2 of 31 in, rack" */
static const char *leftover_text(const struct model *model, const struct leftover *leftover,
                                 struct arena *arena)
{
    return arena_format(arena, "on the shelf: %lld of %s%s%s", (long long)leftover->count,
                        extent_text(model, leftover->length, leftover->width, arena),
                        *leftover->place ? ", " : "", leftover->place);
}

/* "pace  frame: 1 h 20 min, usually 1 h, of 3" */
static const char *pace_text(const struct pace *pace, struct arena *arena)
{
    char took[QUANTITY_TEXT];
    char usual[QUANTITY_TEXT];
    return arena_format(arena, "pace  %s: %s, usually %s; %lld timed", pace->name,
                        quantity_print_unit(took, QUANTITY_MINUTES, UNITS_INCH, pace->took),
                        quantity_print_unit(usual, QUANTITY_MINUTES, UNITS_INCH, pace->usual),
                        (long long)pace->count);
}

/*
 * What items of a kind are told apart by: words, where they lie, and what they are made of. A place
 * is not told while it is all nothing, nor a word that is empty.
 */
static const struct telling {
    const char *lead;
    const char *words[3];
    const char *place[3];
    const char *made_of[2];
} tellings[ENTITY_COUNT] = {
    [ENTITY_facing] = {"", {"side", "kind"}, {"u", "v"}, {"stock"}},
    [ENTITY_member] = {"", {"kind", "name"}, {"x", "y", "z"}, {NULL}},
    [ENTITY_layer] = {"", {"side", "kind"}, {"u", "v"}, {"stock", "shape"}},
    [ENTITY_fitting] = {"", {"kind", "name"}, {"u", "v"}, {NULL}},
    [ENTITY_cutout] = {"cutout", {"side", "purpose"}, {"u", "v"}, {NULL}},
    [ENTITY_outline_point] = {"corner", {"rank"}, {"u", "v"}, {NULL}},
    [ENTITY_group_box] = {"in group", {"group"}, {NULL}, {NULL}},
    [ENTITY_layer_edge] = {"edge", {"edge", "class"}, {NULL}, {NULL}},
    [ENTITY_opening] = {"open", {"edge"}, {"begin"}, {NULL}},
    [ENTITY_tufting] = {"tufts", {"pattern"}, {NULL}, {NULL}},
    [ENTITY_flaw] = {"flaw", {NULL}, {"along", "across"}, {"length"}},
    [ENTITY_point] = {"point", {NULL}, {"u", "v"}, {NULL}},
};

/* The field as text, with blanks for underscores; lengths without a unit. */
static const char *field_text(const struct model *model, const struct field *field,
                              const void *item, struct arena *arena)
{
    char shown[MODEL_NAME_TEXT];
    struct text text;
    if (field->type == FIELD_LENGTH)
        return size_text(model, field_whole(field, item), arena);
    text_init(&text);
    field_write(field, model, item, &text);
    snprintf(shown, sizeof shown, "%s", text_string(&text));
    text_release(&text);
    if (field->type == FIELD_CHOICE)
        text_blank(shown);
    return arena_text(arena, shown);
}

static const char *add_words(const char *line, const char *between, const char *words,
                             struct arena *arena)
{
    if (!*words)
        return line;
    return arena_format(arena, "%s%s%s", line, *line ? between : "", words);
}

/* " at 21, 0" */
static const char *add_place(const char *line, const struct model *model, enum entity_kind kind,
                             const void *item, struct arena *arena)
{
    const char *place = "";
    bool somewhere = false;
    for (int i = 0; i < 3 && tellings[kind].place[i]; i++) {
        const struct field *field = field_named(entity_of(kind), tellings[kind].place[i]);
        somewhere = somewhere || field_whole(field, item) != 0;
        place = add_words(place, ", ", field_text(model, field, item, arena), arena);
    }
    return somewhere ? arena_format(arena, "%s at %s", line, place) : line;
}

static const char *told_text(const struct model *model, enum entity_kind kind, const void *item,
                             struct arena *arena)
{
    const struct telling *telling = &tellings[kind];
    const struct entity *entity = entity_of(kind);
    const char *line = telling->lead;
    for (int i = 0; i < 3 && telling->words[i]; i++) {
        const struct field *field = field_named(entity, telling->words[i]);
        line = add_words(line, " ", field_text(model, field, item, arena), arena);
    }
    line = add_place(line, model, kind, item, arena);
    for (int i = 0; i < 2 && telling->made_of[i]; i++) {
        const struct field *field = field_named(entity, telling->made_of[i]);
        line = add_words(line, i ? ", " : "  ", field_text(model, field, item, arena), arena);
    }
    return line;
}

const char *outline_text(const struct model *model, enum entity_kind kind, int64_t key,
                         struct arena *arena)
{
    char name[MODEL_NAME_TEXT];
    const void *item = kind < ENTITY_COUNT ? model_find_const(model, kind, key) : NULL;
    if (kind < ENTITY_COUNT && tellings[kind].lead)
        return told_text(model, kind, item, arena);
    switch (kind) {
    case ENTITY_build:
        return arena_format(arena, "Build  %s", model->build.name);
    case ENTITY_workshop:
        return arena_format(arena, "Workshop  %s", model->workshop.name);
    case ENTITY_box:
        return box_text(model, item, arena);
    case ENTITY_join:
        return join_text(model, item, arena);
    case ENTITY_offer:
        return offer_text(model, item, arena);
    case ENTITY_past_price:
        return past_price_text(model, item, arena);
    case ENTITY_supplier:
        return supplier_text(model, item, arena);
    case ENTITY_leftover:
        return leftover_text(model, item, arena);
    case ENTITY_pace:
        return pace_text(item, arena);
    case ENTITY_face: {
        const struct face *face = item;
        return arena_format(arena, "%s is seen: %s", words_side.at[face->side].name,
                            words_seen.at[face->seen].name);
    }
    case ENTITY_stock: {
        const struct stock *stock = item;
        return arena_format(arena, "%s  %s", stock->name, words_stock.at[stock->kind].name);
    }
    case ENTITY_passage:
    case ENTITY_wall:
    case ENTITY_object:
    case ENTITY_group:
    case ENTITY_set:
    case ENTITY_tool:
        return arena_format(arena, "%s  %s", entity_of(kind)->name,
                            model_item_name(name, model, kind, key));
    default:
        return arena_text(arena, model_item_name(name, model, kind, key));
    }
}

/* ---- rows ---- */

struct making {
    struct outline *outline;
    const struct model *model;
    struct arena *arena;
};

static struct outline_row *add_row(struct making *making, enum entity_kind kind, int64_t key,
                                   int depth)
{
    struct outline_row *row = LIST_ADD(making->arena, &making->outline->rows);
    *row = (struct outline_row){.kind = kind, .key = key, .depth = depth};
    row->text = outline_text(making->model, kind, key, making->arena);
    return row;
}

/* The box and face that an item's picture is of. */
static void set_picture(struct making *making, struct outline_row *row, int64_t box)
{
    const struct box *of = MODEL_FIND(making->model, box, box);
    const struct field *side = field_named(entity_of(row->kind), "side");
    row->box = box;
    row->side = of ? of->main_side : 0;
    if (side)
        row->side = field_whole(side, model_find_const(making->model, row->kind, row->key));
}

static void add_owned(struct making *making, enum entity_kind kind, const char *by, int64_t owner,
                      int depth, int64_t box);

static void add_on_layer(struct making *making, int64_t layer, int depth, int64_t box)
{
    static const enum entity_kind kinds[] = {ENTITY_layer_edge, ENTITY_tufting, ENTITY_opening};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
        add_owned(making, kinds[i], "layer", layer, depth, box);
}

/* Items of a kind whose field names an owner; layers with what lies on them. */
static void add_owned(struct making *making, enum entity_kind kind, const char *by, int64_t owner,
                      int depth, int64_t box)
{
    const struct field *field = field_named(entity_of(kind), by);
    for (size_t i = 0; i < model_count(making->model, kind); i++) {
        const void *item = model_at_const(making->model, kind, i);
        if (field_whole(field, item) != owner)
            continue;
        struct outline_row *row = add_row(making, kind, item_key(item), depth);
        set_picture(making, row, box);
        if (kind == ENTITY_layer)
            add_on_layer(making, item_key(item), depth + 1, box);
    }
}

/* Layers on a joined group, or (0) on nothing any more. */
static void add_loose_layers(struct making *making, int64_t group, int depth)
{
    for (size_t i = 0; i < making->model->layers.count; i++) {
        const struct layer *layer = &making->model->layers.at[i];
        if (layer->box || layer->group != group)
            continue;
        add_row(making, ENTITY_layer, layer->key, depth);
        add_on_layer(making, layer->key, depth + 1, 0);
    }
}

static void add_groups(struct making *making)
{
    for (size_t i = 0; i < making->model->groups.count; i++) {
        add_row(making, ENTITY_group, making->model->groups.at[i].key, 0);
        add_loose_layers(making, making->model->groups.at[i].key, 1);
    }
}

static void add_all(struct making *making, enum entity_kind kind, int depth)
{
    for (size_t i = 0; i < model_count(making->model, kind); i++)
        add_row(making, kind, item_key(model_at_const(making->model, kind, i)), depth);
}

static void add_boxes(struct making *making)
{
    static const enum entity_kind on_box[] = {ENTITY_facing,        ENTITY_member,   ENTITY_layer,
                                              ENTITY_fitting,       ENTITY_face,     ENTITY_cutout,
                                              ENTITY_outline_point, ENTITY_group_box};
    for (size_t i = 0; i < making->model->boxes.count; i++) {
        int64_t box = making->model->boxes.at[i].key;
        set_picture(making, add_row(making, ENTITY_box, box, 0), box);
        for (size_t k = 0; k < sizeof on_box / sizeof *on_box; k++)
            add_owned(making, on_box[k], "box", box, 1, box);
    }
}

static void add_joins(struct making *making)
{
    for (size_t i = 0; i < making->model->joins.count; i++) {
        const struct join *join = &making->model->joins.at[i];
        struct outline_row *row = add_row(making, ENTITY_join, join->key, 0);
        row->box = join->box_a;
        row->side = join->side_a;
        add_owned(making, ENTITY_point, "join", join->key, 1, join->box_a);
    }
}

static void add_shop(struct making *making)
{
    add_row(making, ENTITY_workshop, 0, 0);
    for (size_t i = 0; i < making->model->stocks.count; i++) {
        int64_t stock = making->model->stocks.at[i].key;
        add_row(making, ENTITY_stock, stock, 0);
        add_owned(making, ENTITY_offer, "stock", stock, 1, 0);
        add_owned(making, ENTITY_past_price, "stock", stock, 1, 0);
        add_owned(making, ENTITY_flaw, "stock", stock, 1, 0);
        add_owned(making, ENTITY_leftover, "stock", stock, 1, 0);
    }
    add_all(making, ENTITY_supplier, 0);
    add_all(making, ENTITY_tool, 0);
    add_all(making, ENTITY_set, 0);
    add_all(making, ENTITY_shop_spend, 0);
    add_all(making, ENTITY_pace, 0);
}

void outline_make(struct outline *outline, const struct model *model, bool shop,
                  struct arena *arena)
{
    static const enum entity_kind around[] = {ENTITY_passage, ENTITY_wall, ENTITY_object,
                                              ENTITY_extra, ENTITY_measure};
    struct making making = {outline, model, arena};
    *outline = (struct outline){{{0}}};
    if (shop) {
        add_shop(&making);
        return;
    }
    add_row(&making, ENTITY_build, 0, 0);
    add_boxes(&making);
    add_joins(&making);
    add_groups(&making);
    add_loose_layers(&making, 0, 0);
    for (size_t i = 0; i < sizeof around / sizeof *around; i++)
        add_all(&making, around[i], 0);
}
