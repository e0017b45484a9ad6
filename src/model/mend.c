/* A model that a damaged file left: fields first, then items that no value can save. */
#include "model/model.h"

static bool mend_fields(const struct model *model, const struct entity *entity, void *item)
{
    bool mended = false;

    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (model_field_holds(model, field, item))
            continue;
        field_set_standard(field, item);
        mended = true;
    }
    return mended;
}

/* The next keys come after all that are there. */
static size_t mend_keys(struct model *model)
{
    size_t mended = 0;

    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);
        int64_t *next = entity->in_shop ? &model->workshop.next_key : &model->build.next_key;

        for (size_t i = 0; i < model_count(model, (enum entity_kind)kind); i++) {
            int64_t key = item_key(model_at_const(model, (enum entity_kind)kind, i));

            if (key < *next || key >= FIELDS_LAST_KEY)
                continue;
            *next = key + 1;
            mended = 1;
        }
    }
    return mended;
}

/* From the last item on, so that those to come stay where they are. */
static size_t mend_list(struct model *model, enum entity_kind kind)
{
    const struct entity *entity = entity_of(kind);
    size_t mended = 0;

    for (size_t i = model_count(model, kind); i-- > 0;) {
        if (model_item_holds(model, kind, i))
            continue;
        mended++;
        mend_fields(model, entity, model_at(model, kind, i));
        if (!model_item_holds(model, kind, i))
            list_remove(model_list(model, kind), i, entity->size);
    }
    return mended;
}

size_t model_mend(struct model *model)
{
    size_t mended = mend_fields(model, entity_of(ENTITY_workshop), &model->workshop);
    size_t before;

    if (model->build.key != 0)
        mended += mend_fields(model, entity_of(ENTITY_build), &model->build);
    mended += mend_keys(model);
    /* An item that goes may be what another of its kind refers to. */
    do {
        before = mended;
        for (int kind = 0; kind < ENTITY_COUNT; kind++)
            mended += mend_list(model, (enum entity_kind)kind);
    } while (mended > before);
    return mended;
}
