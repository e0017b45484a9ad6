#include "exchange/names.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

static int by_name(const void *left, const void *right)
{
    const struct names_row *a = left;
    const struct names_row *b = right;
    int order = strcmp(a->name, b->name);

    if (a->kind != b->kind)
        return a->kind < b->kind ? -1 : 1;
    if (order != 0)
        return order;
    return a->key < b->key ? -1 : a->key > b->key;
}

static void read_kind(struct names *names, const struct model *model, const struct entity *entity,
                      const struct field *field)
{
    for (size_t i = 0; i < model_count(model, entity->kind); i++) {
        const void *item = model_at_const(model, entity->kind, i);

        names->rows[names->count++] = (struct names_row){
            .kind = entity->kind,
            .name = field_string(field, item),
            .key = item_key(item),
        };
    }
}

void names_read(struct names *names, struct arena *arena, const struct model *model)
{
    size_t room = 0;

    for (enum entity_kind kind = 0; kind < ENTITY_COUNT; kind++)
        if (entity_of(kind)->in_shop)
            room += model_count(model, kind);
    *names = (struct names){.rows = ARENA_MANY(arena, struct names_row, room)};
    for (enum entity_kind kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of(kind);
        const struct field *field = field_named(entity, "name");

        if (entity->in_shop && field)
            read_kind(names, model, entity, field);
    }
    assert(names->count <= room);
    qsort(names->rows, names->count, sizeof names->rows[0], by_name);
}

int64_t names_find(const struct names *names, enum entity_kind kind, const char *name)
{
    const struct names_row wanted = {.kind = kind, .name = name, .key = 0};
    size_t low = 0;
    size_t high = names->count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (by_name(&names->rows[middle], &wanted) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    if (low == names->count || names->rows[low].kind != kind ||
        strcmp(names->rows[low].name, name) != 0)
        return 0;
    return names->rows[low].key;
}
