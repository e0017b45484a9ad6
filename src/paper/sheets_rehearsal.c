/* The proof that an order of work holds, and the way back. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/table.h"

/* The number of the step at which it is proved, or "LOST". */
static void verdict_cell(struct table *table, const struct verdict *verdict)
{
    if (verdict->lapse != LAPSE_NONE)
        table_cell(table, "%s", "LOST");
    else
        table_cell(table, "%zu", verdict->step + 1);
}

static void point_row(struct table *table, const struct plan *plan,
                      const struct rehearsed_point *point)
{
    char name[MODEL_NAME_TEXT];

    model_item_name(name, plan->facts, ENTITY_join, point->join);
    table_cell(table, "%s", name);
    table_cell(table, "hole %d", plan->points.at[point->point].rank);
    for (int proof = 0; proof < PROOFS; proof++)
        verdict_cell(table, &point->verdicts[proof]);
}

static void heading_row(struct table *table)
{
    table_cell(table, "%s", "join");
    table_cell(table, "%s", "");
    for (int proof = 0; proof < PROOFS; proof++)
        table_cell(table, "%s", proof_names[proof]);
}

static void point_rows(struct text *out, const struct plan *plan, const struct rehearsal *rehearsal)
{
    struct table table;

    _Static_assert(PROOFS == 7, "a column for each proof");
    table_begin(&table, "llrrrrrrr");
    heading_row(&table);
    for (size_t i = 0; i < rehearsal->points.count; i++)
        point_row(&table, plan, &rehearsal->points.at[i]);
    table_end(&table, out);
}

static void add_reason(struct text *out, const struct plan *plan, const struct verdict *verdict)
{
    struct text reason;

    text_init(&reason);
    if (verdict->step != PLAN_NONE)
        text_format(&reason, "at step %zu, %s: ", verdict->step + 1,
                    plan->steps.at[verdict->step].name);
    rehearse_text(plan, verdict, &reason);
    show_text(out, text_string(&reason));
    text_add_char(out, '\n');
    text_release(&reason);
}

static void lost_point(struct text *out, const struct plan *plan,
                       const struct rehearsed_point *point)
{
    char name[MODEL_NAME_TEXT];

    for (int proof = 0; proof < PROOFS; proof++) {
        if (point->verdicts[proof].lapse == LAPSE_NONE)
            continue;
        text_add(out, "  ");
        show_text(out, model_item_name(name, plan->facts, ENTITY_join, point->join));
        text_format(out, " hole %d is not %s: ", plan->points.at[point->point].rank,
                    proof_names[proof]);
        add_reason(out, plan, &point->verdicts[proof]);
    }
}

static void lost_thing(struct text *out, const struct plan *plan,
                       const struct rehearsed_thing *thing)
{
    static const char *const kinds[] = {[REHEARSED_JOIN] = "a join without a point",
                                        [REHEARSED_PLACE] = "a box that comes to its place",
                                        [REHEARSED_FRAME] = "a frame screw",
                                        [REHEARSED_EDGE] = "a stapled edge",
                                        [REHEARSED_LAYER] = "a layer",
                                        [REHEARSED_FITTING] = "a fitting",
                                        [REHEARSED_SUPPLY] = "what it is made from"};
    char name[MODEL_NAME_TEXT];

    text_add(out, "  ");
    show_text(out, model_item_name(name, plan->facts, thing->entity, thing->key));
    text_format(out, ", %s: ", kinds[thing->kind]);
    add_reason(out, plan, &thing->verdict);
}

void sheet_rehearsal(struct text *out, const struct plan *plan, const struct rehearsal *rehearsal)
{
    text_format(out, "\nREHEARSAL: %zu of %zu points proved\n",
                rehearsal->points.count - rehearsal->lost.count, rehearsal->points.count);
    if (rehearsal->points.count > 0)
        point_rows(out, plan, rehearsal);
    if (rehearsal->proved) {
        text_add(out, "  The numbers are the steps at which each is proved. Nothing is lost.\n");
        return;
    }
    text_add(out, "\nNOT PROVED\n");
    for (size_t i = 0; i < rehearsal->lost.count; i++)
        lost_point(out, plan, &rehearsal->points.at[rehearsal->lost.at[i]]);
    for (size_t i = 0; i < rehearsal->things.count; i++)
        lost_thing(out, plan, &rehearsal->things.at[i]);
}

void sheet_apart(struct text *out, const struct plan *plan, const struct rehearsed_steps *steps)
{
    text_add(out, "\nTAKING IT APART\n");
    if (steps->count == 0)
        text_add(out, "  Nothing of it was joined or fixed in the room.\n");
    for (size_t i = 0; i < steps->count; i++) {
        struct text words;

        text_init(&words);
        rehearse_apart_text(plan, steps->at[i], &words);
        text_format(out, "  %3zu  ", i + 1);
        show_text(out, text_string(&words));
        text_format(out, "  (%s)\n", plan->steps.at[steps->at[i]].name);
        text_release(&words);
    }
}
