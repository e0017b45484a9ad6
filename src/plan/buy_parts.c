/* Everything that is cut: sticks from members, sheets from panels, rolls and slabs from pieces. */
#include "plan/buy.h"

#include "plan/bend.h"
#include "plan/geometry.h"
#include "plan/standing.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct part *part_add(struct planning *planning, const char *label, int64_t stock,
                             int64_t box)
{
    struct part *part = LIST_ADD(planning->arena, &planning->plan->parts);

    snprintf(part->label, sizeof part->label, "%s", label);
    part->stock = stock;
    part->box = box;
    part->member = part->panel = part->piece = part->cut = PLAN_NONE;
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

bool fitting_is_cut(const struct model *model, const struct fitting *fitting)
{
    const struct stock *stock = MODEL_FIND(model, stock, fitting->stock);

    return stock && stock->kind == STOCK_STICK && fitting->length > 0;
}

/* The grain of a panel lies along its longer side, or across a bend that wants it so. */
static void add_panels(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        const struct stock *stock = MODEL_FIND(planning->model, stock, panel->stock);
        struct bend bend = bend_of(planning, panel);
        struct part *part = part_add(planning, panel->label, panel->stock, panel->box);

        part->panel = i;
        part->length = length_larger(panel->width, panel->height);
        part->width = length_smaller(panel->width, panel->height);
        part->may_turn = !stock || !stock->grain;
        if (bend.way == BEND_ACROSS) {
            part->length = bend.straight;
            part->width = bend.bent;
            part->may_turn = false;
        }
    }
}

static void add_crowns(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->crown_pieces.count; i++) {
        const struct crown_piece *piece = &plan->crown_pieces.at[i];
        int64_t width = area_width(&piece->area);
        int64_t height = area_height(&piece->area);
        struct part *part;

        if (!piece->stock)
            continue;
        part = part_add(planning, piece->label, piece->stock, piece->box);
        part->length = length_larger(width, height);
        part->width = length_smaller(width, height);
        part->may_turn = true;
    }
}

static void add_pieces(struct planning *planning)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        const struct stock *stock = MODEL_FIND(planning->model, stock, piece->stock);
        struct part *part = part_add(planning, piece->label, piece->stock, piece->box);

        part->piece = i;
        part->length = piece->across ? piece->width : piece->height;
        part->width = piece->across ? piece->height : piece->width;
        part->may_turn = piece->turned_allowed && stock && !stock->pile;
    }
}

/* Cleats and whatever else of the fittings is cut from a stick; of a cleat that hangs on a wall the
 * half on the wall as well. */
static void add_cleats(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];
        const char *name = *fitting->name ? fitting->name : words_fitting.at[fitting->kind].name;
        bool hangs = fitting_hangs_on_wall(model, fitting);

        for (int64_t n = 0; fitting_is_cut(model, fitting) && n < fitting->count; n++) {
            part_add(planning, name, fitting->stock, fitting->box)->length = fitting->length;
            if (hangs)
                part_add(planning, arena_format(planning->arena, "%s, on the wall", name),
                         fitting->stock, fitting->box)
                    ->length = fitting->length;
        }
    }
}

/* What was spoiled is cut anew. Of stock of which it is known what was cut from what, a part that
 * was spoiled is simply not there. */
static void add_spoiled(struct planning *planning)
{
    const struct model *model = planning->model;
    size_t count = planning->plan->parts.count;

    for (size_t i = 0; i < model->cut_parts.count; i++)
        for (size_t k = 0; model->cut_parts.at[i].spoiled && k < count; k++) {
            struct part again = planning->plan->parts.at[k];

            if (strcmp(again.label, model->cut_parts.at[i].part) != 0 ||
                stock_is_begun(model, again.stock))
                continue;
            again.again = true;
            *LIST_ADD(planning->arena, &planning->plan->parts) = again;
            break;
        }
}

/* By stock, what is cut anew last; within that in the order of the boxes and their lists, which the
 * indices keep, and cleats by name and length. */
static int compare_parts(const void *a, const void *b)
{
    const struct part *left = a;
    const struct part *right = b;
    const int64_t steps[] = {
        left->stock - right->stock, (int64_t)left->again - (int64_t)right->again,
        (int64_t)left->member - (int64_t)right->member,
        (int64_t)left->panel - (int64_t)right->panel, (int64_t)left->piece - (int64_t)right->piece};

    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (steps[i])
            return steps[i] < 0 ? -1 : 1;
    if (left->length != right->length)
        return left->length < right->length ? 1 : -1;
    if (left->box != right->box)
        return left->box < right->box ? -1 : 1;
    return strcmp(left->label, right->label);
}

void buy_parts(struct planning *planning)
{
    struct plan *plan = planning->plan;

    add_members(planning);
    add_panels(planning);
    add_crowns(planning);
    add_pieces(planning);
    add_cleats(planning);
    add_spoiled(planning);
    mark_what_is_cut(planning);
    if (plan->parts.count)
        qsort(plan->parts.at, plan->parts.count, sizeof *plan->parts.at, compare_parts);
}
