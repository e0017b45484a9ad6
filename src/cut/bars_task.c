#include "cut/bars_task.h"

#include "base/whole.h"
#include "cut/ranking.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* ---- parts to kinds ---- */

/* The next part of the order. */
static void add_part(struct bar_task *task, int64_t length)
{
    bool first = task->kind_count == 0 || task->kinds[task->kind_count - 1].length != length;

    assert(task->kind_count == 0 || task->kinds[task->kind_count - 1].length >= length);
    if (first)
        task->kinds[task->kind_count++] = (struct bar_kind){length, 0, task->part_count};
    task->kinds[task->kind_count - 1].count++;
    task->part_count++;
    task->unit = whole_common_divisor(task->unit, length);
}

static void make_kinds(struct bar_task *task, const struct cut_layout *quick)
{
    const struct cut_job *job = task->job;
    size_t count = quick->places.count;

    task->order = ARENA_MANY(task->arena, size_t, count);
    task->kinds = ARENA_MANY(task->arena, struct bar_kind, count);
    for (size_t i = 0; i < count; i++)
        task->order[i] = quick->places.at[i].part;
    ranking_sort(job->parts, task->order, count, BY_LENGTH, task->arena);
    for (size_t i = 0; i < count; i++)
        add_part(task, job->parts[task->order[i]].length + job->kerf);
    for (size_t k = 0; k < task->kind_count; k++) {
        assert(task->kinds[k].length % task->unit == 0 && task->kinds[k].count > 0);
        task->kinds[k].length /= task->unit;
    }
}

/* ---- sizes ---- */

/* Less price for its room; the longer of equals. */
static int cheapest_by_room(const void *a, const void *b)
{
    const struct bar_size *left = a, *right = b;
    int64_t by_left = left->price * right->room, by_right = right->price * left->room;

    if (by_left != by_right)
        return by_left < by_right ? -1 : 1;
    if (left->room != right->room)
        return left->room > right->room ? -1 : 1;
    return left->size < right->size ? -1 : left->size > right->size;
}

static bool any_price(const struct cut_job *job)
{
    for (size_t i = 0; i < job->size_count; i++)
        if (job->sizes[i].price > 0)
            return true;
    return false;
}

static void add_size(struct bar_task *task, size_t index)
{
    assert(index < task->job->size_count);

    const struct cut_size *size = &task->job->sizes[index];
    int64_t room = (size->length - task->job->trim + task->job->kerf) / task->unit;
    int64_t parts = (int64_t)task->part_count;
    bool shelf = size->limit != CUT_ANY && size->price == 0;

    if (size->limit == 0 || room < task->kinds[task->kind_count - 1].length)
        return;
    task->sizes[task->size_count++] =
        (struct bar_size){room, task->priced || shelf ? size->price : size->length,
                          size->limit < parts ? size->limit : parts, index};
    if (room > task->longest)
        task->longest = room;
}

static void make_sizes(struct bar_task *task)
{
    task->priced = any_price(task->job);
    task->sizes = ARENA_MANY(task->arena, struct bar_size, task->job->size_count);
    for (size_t i = 0; i < task->job->size_count; i++)
        add_size(task, i);
    qsort(task->sizes, task->size_count, sizeof *task->sizes, cheapest_by_room);
}

bool bar_task_make(struct bar_task *task, const struct cut_job *job, const struct cut_layout *quick,
                   struct arena *arena)
{
    *task = (struct bar_task){.job = job, .arena = arena};
    if (quick->places.count == 0)
        return false;
    make_kinds(task, quick);
    make_sizes(task);
    assert(task->size_count > 0);
    return true;
}

/* ---- plans ---- */

void bar_plan_clear(struct bar_plan *plan)
{
    plan->fillings.count = plan->takes.count = 0;
}

struct bar_filling *bar_plan_fill(const struct bar_task *task, struct bar_plan *plan, size_t size,
                                  int64_t times)
{
    struct bar_filling *filling = LIST_ADD(task->arena, &plan->fillings);

    *filling = (struct bar_filling){.size = size, .first = plan->takes.count, .times = times};
    return filling;
}

void bar_plan_take(const struct bar_task *task, struct bar_plan *plan, size_t kind, int64_t count)
{
    assert(kind < task->kind_count);

    struct bar_filling *filling = &plan->fillings.at[plan->fillings.count - 1];

    if (count == 0)
        return;
    *LIST_ADD(task->arena, &plan->takes) = (struct bar_take){kind, count};
    filling->count++;
    filling->taken += count * task->kinds[kind].length;
    assert(filling->taken <= task->sizes[filling->size].room);
}

void bar_plan_copy(const struct bar_task *task, struct bar_plan *to, const struct bar_plan *from)
{
    bar_plan_clear(to);
    for (size_t i = 0; i < from->fillings.count; i++)
        *LIST_ADD(task->arena, &to->fillings) = from->fillings.at[i];
    for (size_t i = 0; i < from->takes.count; i++)
        *LIST_ADD(task->arena, &to->takes) = from->takes.at[i];
    to->cost = from->cost;
    to->sticks = from->sticks;
    to->rest = from->rest;
}

bool bar_plan_better(const struct bar_plan *a, const struct bar_plan *b)
{
    if (a->cost != b->cost)
        return a->cost < b->cost;
    if (a->sticks != b->sticks)
        return a->sticks < b->sticks;
    return a->rest > b->rest;
}

/* ---- finishing ---- */

/* To the cheapest size of which any number can be had. */
static void move_to_cheapest(const struct bar_task *task, struct bar_filling *filling)
{
    for (size_t i = 0; i < task->size_count; i++) {
        const struct bar_size *now = &task->sizes[filling->size];
        const struct bar_size *other = &task->sizes[i];

        if (other->limit == CUT_ANY && other->room >= filling->taken &&
            (other->price < now->price || (other->price == now->price && other->room > now->room)))
            filling->size = i;
    }
}

/* Adds one more filling of this size with as much of its takes as is left; false when that is
 * nothing. */
static bool fill_with_rest(const struct bar_task *task, struct bar_plan *plan,
                           const struct bar_filling *filling, int64_t *left)
{
    bar_plan_fill(task, plan, filling->size, 1);
    for (size_t i = filling->first; i < filling->first + filling->count; i++) {
        struct bar_take take = plan->takes.at[i];
        int64_t count = take.count < left[take.kind] ? take.count : left[take.kind];

        bar_plan_take(task, plan, take.kind, count);
        left[take.kind] -= count;
    }
    if (plan->fillings.at[plan->fillings.count - 1].count > 0)
        return true;
    plan->fillings.count--;
    return false;
}

/* Cuts a filling as often as there are parts for it; where it was to be cut more often, what is
 * left of its kinds goes into fillings of their own. */
static void trim_filling(const struct bar_task *task, struct bar_plan *plan, size_t index,
                         int64_t *left)
{
    assert(index < plan->fillings.count);

    struct bar_filling filling = plan->fillings.at[index];
    int64_t times = filling.times;

    for (size_t i = filling.first; i < filling.first + filling.count; i++) {
        const struct bar_take *take = &plan->takes.at[i];

        if (left[take->kind] / take->count < times)
            times = left[take->kind] / take->count;
    }
    assert(times >= 0);
    for (size_t i = filling.first; i < filling.first + filling.count; i++)
        left[plan->takes.at[i].kind] -= times * plan->takes.at[i].count;
    plan->fillings.at[index].times = times;
    for (int64_t more = filling.times - times; more > 0; more--)
        if (!fill_with_rest(task, plan, &filling, left))
            break;
}

static void drop_empty(struct bar_plan *plan)
{
    size_t kept = 0;

    for (size_t i = 0; i < plan->fillings.count; i++)
        if (plan->fillings.at[i].times > 0 && plan->fillings.at[i].count > 0)
            plan->fillings.at[kept++] = plan->fillings.at[i];
    plan->fillings.count = kept;
}

void bar_plan_finish(const struct bar_task *task, struct bar_plan *plan)
{
    int64_t *left = ARENA_MANY(task->arena, int64_t, task->kind_count);
    size_t count = plan->fillings.count;

    for (size_t k = 0; k < task->kind_count; k++)
        left[k] = task->kinds[k].count;
    for (size_t i = 0; i < count; i++)
        trim_filling(task, plan, i, left);
    drop_empty(plan);
    plan->cost = plan->sticks = plan->rest = 0;
    for (size_t i = 0; i < plan->fillings.count; i++) {
        struct bar_filling *filling = &plan->fillings.at[i];
        int64_t rest;

        move_to_cheapest(task, filling);
        rest = task->sizes[filling->size].room - filling->taken;
        plan->cost += filling->times * task->sizes[filling->size].price;
        plan->sticks += filling->times;
        plan->rest = rest > plan->rest ? rest : plan->rest;
    }
}

/* ---- to and from layouts ---- */

static size_t kind_of(const struct bar_task *task, size_t part)
{
    assert(part < task->job->part_count);

    int64_t length = (task->job->parts[part].length + task->job->kerf) / task->unit;
    size_t low = 0, high = task->kind_count - 1;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (task->kinds[middle].length > length)
            low = middle + 1;
        else
            high = middle;
    }
    assert(task->kinds[low].length == length);
    return low;
}

static size_t size_of(const struct bar_task *task, size_t size)
{
    size_t found = 0;

    while (found < task->size_count && task->sizes[found].size != size)
        found++;
    assert(found < task->size_count); /* it takes a part */
    return found;
}

void bar_plan_read(const struct bar_task *task, const struct cut_layout *layout,
                   struct bar_plan *ret_plan)
{
    bar_plan_clear(ret_plan);
    for (size_t i = 0; i < layout->blanks.count; i++) {
        const struct cut_blank *blank = &layout->blanks.at[i];

        bar_plan_fill(task, ret_plan, size_of(task, blank->size), 1);
        for (size_t j = blank->first; j < blank->first + blank->count; j++)
            bar_plan_take(task, ret_plan, kind_of(task, layout->places.at[j].part), 1);
    }
    bar_plan_finish(task, ret_plan);
}

void bar_lay_stick(struct bar_laying *laying, const struct bar_filling *filling,
                   const struct bar_take *takes, size_t size)
{
    const struct cut_job *job = laying->job;
    struct cut_blank *blank = LIST_ADD(laying->arena, &laying->layout->blanks);
    int64_t at = job->trim;

    assert(size < job->size_count);
    *blank = (struct cut_blank){.size = size, .first = laying->layout->places.count};
    for (size_t i = filling->first; i < filling->first + filling->count; i++) {
        const struct bar_kind *kind = &laying->kinds[takes[i].kind];

        for (int64_t n = 0; n < takes[i].count; n++) {
            size_t part = laying->order[kind->first + laying->next[takes[i].kind]++];

            *LIST_ADD(laying->arena, &laying->layout->places) =
                (struct cut_place){.part = part, .along = at};
            at += job->parts[part].length + job->kerf;
            blank->count++;
        }
    }
    blank->used = at - job->kerf;
    assert(blank->count > 0 && blank->used <= job->sizes[size].length);
    blank->rest = job->sizes[size].length > at ? job->sizes[size].length - at : 0;
    laying->layout->cost += job->sizes[size].price;
}

void bar_plan_lay_out(const struct bar_task *task, const struct bar_plan *plan,
                      const struct cut_layout *quick, struct cut_layout *ret_layout)
{
    struct bar_laying laying = {.job = task->job,
                                .arena = task->arena,
                                .order = task->order,
                                .kinds = task->kinds,
                                .next = ARENA_MANY(task->arena, size_t, task->kind_count),
                                .layout = ret_layout};

    *ret_layout = (struct cut_layout){.left_out = quick->left_out};
    for (size_t i = 0; i < plan->fillings.count; i++)
        for (int64_t n = 0; n < plan->fillings.at[i].times; n++)
            bar_lay_stick(&laying, &plan->fillings.at[i], plan->takes.at,
                          task->sizes[plan->fillings.at[i].size].size);
    assert(ret_layout->places.count == task->part_count);
}
