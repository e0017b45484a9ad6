/*
 * Cures: the edits that a finding offers, taken together or not at all. The cure lies in the plan
 * in force, which stays until the draft has taken its place.
 */
#include "desk/internal.h"

/* The item that an edit is about: one that is there, or the one that the edits before it fill. */
static void *item_of(struct model *draft, const struct cure *cure, size_t index)
{
    const struct cure_edit *edit = &cure->edits[index];
    const struct cure_edit *before = index > 0 ? edit - 1 : NULL;

    if (edit->key != 0)
        return model_find(draft, edit->entity, edit->key);
    if (before && before->key == 0 && before->entity == edit->entity)
        return model_at(draft, edit->entity, model_count(draft, edit->entity) - 1);
    return model_add(draft, edit->entity);
}

static enum fault say_gone(const struct cure_edit *edit, struct fault_note *note)
{
    return fault_say(note, FAULT_UNKNOWN, 0, "there is no %s %lld", entity_of(edit->entity)->name,
                     (long long)edit->key);
}

static enum fault take_edit(struct model *draft, const struct cure *cure, size_t index,
                            struct fault_note *note)
{
    const struct cure_edit *edit = &cure->edits[index];
    const struct field *field;
    void *item;

    if (!edit->field)
        return model_remove(draft, edit->entity, edit->key) > 0 ? FAULT_NONE : say_gone(edit, note);
    field = field_named(entity_of(edit->entity), edit->field);
    if (!field)
        return fault_say(note, FAULT_UNKNOWN, 0, "a %s has no field \"%s\"",
                         entity_of(edit->entity)->name, edit->field);
    item = item_of(draft, cure, index);
    return item ? field_read(field, draft, item, edit->value, note) : say_gone(edit, note);
}

enum fault desk_cure_change(struct model *draft, void *context, struct fault_note *note)
{
    const struct cure *cure = ((const struct desk_cure *)context)->cure;
    enum fault fault = FAULT_NONE;

    for (size_t i = 0; fault == FAULT_NONE && i < cure->edit_count; i++)
        fault = take_edit(draft, cure, i, note);
    return fault;
}

enum fault desk_cure(struct desk *desk, size_t finding, size_t cure, struct fault_note *note)
{
    const struct plan *plan = desk_plan(desk);
    char label[STORE_LABEL];

    if (finding >= plan->findings.count || cure >= plan->findings.at[finding].cure_count)
        return fault_say(note, FAULT_UNKNOWN, 0, "there is no such cure");
    struct desk_cure change = {&plan->findings.at[finding].cures[cure]};
    desk_label(label, "%s", change.cure->text);
    return desk_edit(desk, label, desk_cure_change, &change, note);
}
