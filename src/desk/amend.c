/* What turned out otherwise at the bench: parts that were spoiled, joins that are left out. */
#include "desk/internal.h"

#include "plan/buy.h"
#include "plan/steps.h"

#include <string.h>

/* ---- spoiled parts ---- */

struct spoil_change {
    const struct plan *plan;
    const char *part;
    bool spoiled;
};

/* Whether a part of the plan is the one that was cut, where the plan knows. */
static bool stands(const struct plan *plan, int64_t key)
{
    for (size_t i = 0; i < plan->parts.count; i++) {
        size_t cut = plan->parts.at[i].cut;
        if (cut != PLAN_NONE && plan->facts->cut_parts.at[cut].key == key)
            return true;
    }
    return false;
}

/* The latest part of that label that is not yet as it is to be, one that stands before one that is
 * not needed any more; NULL when there is none. What was cut up since is neither. */
static struct cut_part *part_to_change(struct model *draft, const struct spoil_change *change)
{
    const bool *spare = cut_parts_to_spare(change->plan, draft, draft->arena);
    struct cut_part *found = NULL;
    for (size_t i = draft->cut_parts.count; i-- > 0;) {
        struct cut_part *part = &draft->cut_parts.at[i];
        if (strcmp(part->part, change->part) != 0 || (part->spoiled != 0) == change->spoiled)
            continue;
        if (stands(change->plan, part->key))
            return part;
        if (!found && (part->spoiled || spare[i]))
            found = part;
    }
    return found;
}

static bool is_cut(const struct model *draft, const char *part)
{
    for (size_t i = 0; i < draft->cut_parts.count; i++) {
        if (strcmp(draft->cut_parts.at[i].part, part) == 0)
            return true;
    }
    return false;
}

static enum fault change_spoiled(struct model *draft, void *context, struct fault_note *note)
{
    const struct spoil_change *change = context;
    struct cut_part *part = part_to_change(draft, change);
    if (!is_cut(draft, change->part))
        return fault_say(note, FAULT_UNKNOWN, "no part \"%s\" was cut", change->part);
    if (!part)
        return fault_say(note, FAULT_REFUSED,
                         change->spoiled ? "part %s is spoiled already" : "part %s is not spoiled",
                         change->part);
    part->spoiled = change->spoiled;
    return FAULT_NONE;
}

enum fault desk_spoil(struct desk *desk, const char *part, bool spoiled, struct fault_note *note)
{
    char label[STORE_LABEL];
    struct spoil_change change = {desk->state->plan, part, spoiled};
    desk_label(label, spoiled ? "spoiled: %s" : "not spoiled: %s", part);
    return desk_edit(desk, label, change_spoiled, &change, note);
}

/* ---- joins left out ---- */

struct leave_change {
    int64_t join;
    bool out;
};

static int64_t left_out_key(const struct model *model, int64_t join)
{
    for (size_t i = 0; i < model->left_outs.count; i++) {
        if (model->left_outs.at[i].join == join)
            return model->left_outs.at[i].key;
    }
    return 0;
}

static enum fault change_left_out(struct model *draft, void *context, struct fault_note *note)
{
    const struct leave_change *change = context;
    (void)note;
    if (change->out)
        MODEL_ADD(draft, left_out)->join = change->join;
    else
        model_remove(draft, ENTITY_left_out, left_out_key(draft, change->join));
    return FAULT_NONE;
}

/* Boxes that are held together by now. */
static const struct step *step_that_joined(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        if (step->join == join && step->ticked && step->phase >= step_kinds[STEP_OFFER].phase)
            return step;
    }
    return NULL;
}

static enum fault check_may_leave(const struct desk *desk, const struct join *join, bool out,
                                  struct fault_note *note)
{
    const struct step *joined = step_that_joined(desk->state->plan, join->key);
    bool is_out = left_out_key(&desk->state->model, join->key) != 0;
    if (out == is_out)
        return fault_say(note, FAULT_REFUSED,
                         out ? "join %s is left out already" : "join %s is not left out",
                         join->name);
    if (out && !join->optional)
        return fault_say(note, FAULT_REFUSED,
                         "join %s is needed: only an optional one can be "
                         "left out",
                         join->name);
    if (joined)
        return fault_say(note, FAULT_REFUSED, "\"%s\" is ticked: take that back first",
                         joined->title);
    return FAULT_NONE;
}

enum fault desk_leave_out(struct desk *desk, const char *name, bool out, struct fault_note *note)
{
    char label[STORE_LABEL];
    struct leave_change change = {model_key_named(&desk->state->model, ENTITY_join, name), out};
    const struct join *join = MODEL_FIND(&desk->state->model, join, change.join);
    if (!join)
        return fault_say(note, FAULT_UNKNOWN, "there is no join \"%s\"", name);
    enum fault fault = check_may_leave(desk, join, out, note);
    if (fault)
        return fault;
    desk_label(label, out ? "left out: join %s" : "taken in again: join %s", name);
    return desk_edit(desk, label, change_left_out, &change, note);
}
