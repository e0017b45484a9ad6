#include "plan/cure.h"

#include <assert.h>
#include <string.h>

struct taking {
    struct model *model;
    const struct cure *cure;
    size_t first; /* line that began the new item that is being filled */
};

/* Whether a line of a new item begins the next one: the line before is of something else, or its
 * field was filled already. */
static bool begins_item(const struct taking *taking, size_t index)
{
    const struct cure_edit *edits = taking->cure->edits;

    if (index == 0 || edits[index - 1].key != 0 || edits[index - 1].entity != edits[index].entity)
        return true;
    for (size_t i = taking->first; i < index; i++)
        if (strcmp(edits[i].field, edits[index].field) == 0)
            return true;
    return false;
}

/* The item that a line is about: one that is there, or the one that the lines before it fill. */
static void *item_of(struct taking *taking, size_t index)
{
    const struct cure_edit *edit = &taking->cure->edits[index];
    struct model *model = taking->model;

    if (edit->key != 0)
        return model_find(model, edit->entity, edit->key);
    if (begins_item(taking, index)) {
        taking->first = index;
        return model_add(model, edit->entity);
    }
    assert(model_count(model, edit->entity) > 0);
    return model_at(model, edit->entity, model_count(model, edit->entity) - 1);
}

static enum fault say_gone(const struct cure_edit *edit, struct fault_note *note)
{
    return fault_say(note, FAULT_UNKNOWN, "there is no %s %lld", entity_of(edit->entity)->name,
                     (long long)edit->key);
}

static enum fault take_line(struct taking *taking, size_t index, struct fault_note *note)
{
    const struct cure_edit *edit = &taking->cure->edits[index];
    const struct entity *entity = entity_of(edit->entity);
    const struct field *field;
    enum fault fault;
    void *item;

    if (!edit->field)
        return model_remove(taking->model, edit->entity, edit->key) > 0 ? FAULT_NONE
                                                                        : say_gone(edit, note);
    field = field_named(entity, edit->field);
    if (!field)
        return fault_say(note, FAULT_UNKNOWN, "a %s has no field \"%s\"", entity->name,
                         edit->field);
    item = item_of(taking, index);
    if (!item)
        return say_gone(edit, note);
    fault = field_read(field, taking->model, item, edit->value, note);
    if (fault)
        fault_at(note, "%s", edit->field);
    return fault;
}

enum fault cure_apply(struct model *model, const struct cure *cure, struct fault_note *note)
{
    struct taking taking = {model, cure, 0};
    enum fault fault = FAULT_NONE;

    for (size_t i = 0; fault == FAULT_NONE && i < cure->edit_count; i++)
        fault = take_line(&taking, i, note);
    return fault;
}
