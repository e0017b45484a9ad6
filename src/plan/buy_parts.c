/* Everything that is cut: sticks from members, sheets from panels, rolls and slabs from pieces. */
#include "plan/buy.h"

#include "plan/geometry.h"

#include <stdlib.h>
#include <string.h>

static struct part *part_add(struct planning *planning, const char *label, int64_t stock,
                             int64_t box)
{
    struct part *part = LIST_ADD(planning->arena, &planning->plan->parts);

    memcpy(part->label, label, sizeof part->label);
    part->stock = stock;
    part->box = box;
    part->member = part->panel = part->piece = PLAN_NONE;
    return part;
}

static void add_members(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];
        struct part *part;

        if (!member->stock)
            continue;
        part = part_add(planning, member->label, member->stock, member->box);
        part->member = i;
        part->length = member->length;
    }
}

/* The grain of a panel lies along its longer side. */
static void add_panels(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        const struct stock *stock = MODEL_FIND(planning->model, stock, panel->stock);
        int64_t width = area_width(&panel->area);
        int64_t height = area_height(&panel->area);
        struct part *part = part_add(planning, panel->label, panel->stock, panel->box);

        part->panel = i;
        part->length = width > height ? width : height;
        part->width = width > height ? height : width;
        part->may_turn = !stock || !stock->grain;
    }
}

static void add_pieces(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        struct part *part = part_add(planning, piece->label, piece->stock, piece->box);

        part->piece = i;
        part->length = piece->across ? piece->width : piece->height;
        part->width = piece->across ? piece->height : piece->width;
        part->may_turn = piece->turned_allowed;
    }
}

/* By stock; within one in the order of the boxes and their lists, which the indices keep. */
static int compare_parts(const void *a, const void *b)
{
    const struct part *left = a;
    const struct part *right = b;
    const int64_t steps[] = {
        left->stock - right->stock, (int64_t)left->member - (int64_t)right->member,
        (int64_t)left->panel - (int64_t)right->panel, (int64_t)left->piece - (int64_t)right->piece};

    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (steps[i])
            return steps[i] < 0 ? -1 : 1;
    return 0;
}

void buy_parts(struct planning *planning)
{
    struct plan *plan = planning->plan;

    add_members(planning);
    add_panels(planning);
    add_pieces(planning);
    if (plan->parts.count)
        qsort(plan->parts.at, plan->parts.count, sizeof *plan->parts.at, compare_parts);
}
