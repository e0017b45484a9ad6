/*
 * Cures: the edits that a finding offers, taken together or not at all. The cure lies in the plan
 * in force, which stays until the draft has taken its place.
 */
#include "plan/cure.h"
#include "desk/internal.h"

enum fault desk_cure_change(struct model *draft, void *context, struct fault_note *note)
{
    const struct desk_cure *change = context;

    return cure_apply(draft, change->cure, note);
}

enum fault desk_take_cure(struct desk *desk, const struct cure *cure, struct fault_note *note)
{
    char label[STORE_LABEL];
    struct desk_cure change = {cure};

    desk_label(label, "%s", cure->text);
    return desk_edit(desk, label, desk_cure_change, &change, note);
}

enum fault desk_cure(struct desk *desk, size_t finding, size_t cure, struct fault_note *note)
{
    const struct plan *plan = desk_told_plan(desk);

    if (finding >= plan->findings.count || cure >= plan->findings.at[finding].cure_count)
        return fault_say(note, FAULT_UNKNOWN, "there is no such cure");
    return desk_take_cure(desk, &plan->findings.at[finding].cures[cure], note);
}
