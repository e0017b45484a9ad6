/* The order of work, and each step as it is read at the bench. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"

/* "in the room; two people; holes shift when ..." */
static void step_remark(struct table *table, const struct step *step)
{
    const char *const parts[] = {step->place == PLACE_SITE ? "in the room" : "",
                                 step_people(step) > 1 ? "two people" : "", step->because};
    struct text remark;
    text_init(&remark);
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
        if (*parts[i])
            text_format(&remark, "%s%s", remark.length ? "; " : "", parts[i]);
    }
    table_cell(table, "%s", text_string(&remark));
    text_release(&remark);
}

void sheet_steps(struct text *out, const struct plan *plan)
{
    if (plan->steps.count == 0)
        return;
    text_format(out, "\nORDER OF WORK: %s\n", print_minutes(plan->tally.minutes).at);
    struct table table;
    table_begin(&table, "lrllrl");
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        table_cell(&table, "[%c]", step->ticked ? 'x' : ' ');
        table_cell(&table, "%zu", i + 1);
        table_cell(&table, "%s", step->title);
        table_cell(&table, "%s", step->name);
        table_cell(&table, "%s", print_minutes(step->minutes).at);
        step_remark(&table, step);
    }
    table_end(&table, out);
}

static void step_list(struct text *out, const char *heading, const char *const *lines, size_t count)
{
    if (count)
        text_format(out, "%s\n", heading);
    for (size_t i = 0; i < count; i++)
        lines_add(out, "-", 4, lines[i]);
}

static void step_line(struct text *out, const char *heading, const char *line)
{
    struct text whole;

    if (!*line)
        return;
    text_init(&whole);
    text_format(&whole, "%s%s", heading, line);
    lines_add_hanging(out, 2, text_string(&whole));
    text_release(&whole);
}

/* The last first: what was done since and hangs on it. */
static void comes_off(struct text *out, const struct plan *plan, const struct step *step)
{
    struct arena arena;
    const size_t *steps;
    size_t count = 0;
    arena_init(&arena);
    if (step->older &&
        !plan_hangs_on(plan, (size_t)(step - plan->steps.at), &arena, &steps, &count) && count)
        text_add(out, "To do it anew, take back first\n");
    for (size_t i = 0; i < count; i++) {
        text_add(out, "  - ");
        show_text(out, plan->steps.at[steps[i]].title);
        text_add_char(out, '\n');
    }
    arena_release(&arena);
}

/* "L is the left one of a pair with R" */
static void step_hand(struct text *out, const struct plan *plan, int64_t box)
{
    const struct pose *pose = plan_pose(plan, box);

    if (!pose || pose->hand == HAND_NONE)
        return;
    show_text(out, print_box(plan, box));
    text_format(out, " is the %s one of a pair with ", plan_hand_word(pose->hand));
    show_text(out, print_box(plan, pose->twin));
    text_add_char(out, '\n');
}

static void step_hands(struct text *out, const struct plan *plan, const struct step *step)
{
    const struct join *join = MODEL_FIND(plan->facts, join, step->join);

    step_hand(out, plan, join ? join->box_a : step->box);
    if (join)
        step_hand(out, plan, join->box_b);
}

void sheet_step(struct text *out, const struct plan *plan, const struct step *step)
{
    text_format(out, "Step %zu of %zu: ", (size_t)(step - plan->steps.at) + 1, plan->steps.count);
    show_text(out, step->title);
    text_format(out, "%s\n%s, %s, %d %s\n", step->ticked ? " (done)" : "",
                step->place == PLACE_SITE ? "in the room" : "at the bench",
                print_minutes(step->minutes).at, step_people(step),
                step_people(step) == 1 ? "person" : "people");
    step_line(out, "Lifted: ", step->crew);
    step_hands(out, plan, step);
    step_line(out, "Now, because ", step->because);
    step_line(out, "Not as usual: ", step->unusual);
    if (step->need_count)
        text_add(out, "Needs\n");
    for (size_t i = 0; i < step->need_count; i++) {
        text_add(out, "  - ");
        show_text(out, step->needs[i].text);
        text_add_char(out, '\n');
    }
    step_list(out, "Do", step->actions, step->action_count);
    step_list(out, "Measure and write down", step->measures, step->measure_count);
    step_line(out, "This closes for good: ", step->closes);
    step_line(out, "Caution: ", step->caution);
    if (step->wait)
        text_format(out, "Something dries before it: %s to wait at the bench\n",
                    print_minutes(step->wait).at);
    if (step->older)
        text_add(out, "It was done to an older plan: the figures above are those of today.\n");
    step_list(out, "Different since it was done", step->changes, step->change_count);
    comes_off(out, plan, step);
}
