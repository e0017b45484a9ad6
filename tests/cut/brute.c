/*
 * Every pattern of cuts from edge to edge, pushed together, is two patterns beside each other, one
 * way or the other. So the smallest rectangles that hold a subset of the parts are put together
 * from those of two smaller subsets. Measures carry a kerf, sheets as well.
 */
#include "brute.h"

#include <assert.h>
#include <string.h>

#define SUBSETS (1 << BRUTE_PARTS)
#define BOXES_MOST 512
#define STATES_MOST 60000

struct box {
    int64_t size[2];
};

static struct box boxes[SUBSETS][BOXES_MOST];
static int box_count[SUBSETS];

static void add_box(int subset, struct box box)
{
    for (int i = 0; i < box_count[subset]; i++)
        if (boxes[subset][i].size[0] <= box.size[0] && boxes[subset][i].size[1] <= box.size[1])
            return;
    assert(box_count[subset] < BOXES_MOST);
    boxes[subset][box_count[subset]++] = box;
}

static int64_t larger(int64_t a, int64_t b)
{
    return a > b ? a : b;
}

static void join_boxes(int subset, const struct box *a, const struct box *b)
{
    for (int way = 0; way < 2; way++) {
        struct box box;

        box.size[way] = a->size[way] + b->size[way];
        box.size[!way] = larger(a->size[!way], b->size[!way]);
        add_box(subset, box);
    }
}

static void fill_boxes(const struct cut_job *job, int subset)
{
    box_count[subset] = 0;
    for (size_t i = 0; i < job->part_count; i++) {
        int64_t length = job->parts[i].length + job->kerf, width = job->parts[i].width + job->kerf;

        if (subset != 1 << i)
            continue;
        add_box(subset, (struct box){{length, width}});
        if (job->parts[i].may_turn)
            add_box(subset, (struct box){{width, length}});
    }
    for (int part = (subset - 1) & subset; part > 0; part = (part - 1) & subset)
        for (int i = 0; i < box_count[part]; i++)
            for (int k = 0; k < box_count[subset & ~part]; k++)
                join_boxes(subset, &boxes[part][i], &boxes[subset & ~part][k]);
}

static bool fits(const struct cut_job *job, int subset, const struct cut_size *size)
{
    for (int i = 0; i < box_count[subset]; i++)
        if (boxes[subset][i].size[0] <= size->length + job->kerf &&
            boxes[subset][i].size[1] <= size->width + job->kerf)
            return true;
    return false;
}

/* Sheets for what is left; the first part left lies in the next sheet. */
static int64_t cost_of(const struct cut_job *job, int left, int64_t *used)
{
    int64_t least = INT64_MAX;
    int first = left & -left;

    if (left == 0)
        return 0;
    for (int subset = left; subset > 0; subset = (subset - 1) & left)
        for (size_t s = 0; (subset & first) && s < job->size_count; s++) {
            const struct cut_size *size = &job->sizes[s];
            int64_t rest;

            if ((size->limit != CUT_ANY && used[s] >= size->limit) || !fits(job, subset, size))
                continue;
            used[s]++;
            rest = cost_of(job, left & ~subset, used);
            used[s]--;
            if (rest != INT64_MAX && rest + size->price < least)
                least = rest + size->price;
        }
    return least;
}

int64_t brute_cost(const struct cut_job *job)
{
    int64_t used[16] = {0};

    assert(job->part_count <= BRUTE_PARTS && job->trim == 0 && job->size_count <= 16);
    for (int subset = 1; subset < 1 << job->part_count; subset++)
        fill_boxes(job, subset);
    return cost_of(job, (1 << job->part_count) - 1, used);
}

/* ---- cuts ---- */

#define NEVER 1000

struct state {
    int subset;
    struct box box;
    int cuts;
};

static struct state states[STATES_MOST];
static int state_count;

static bool is_part(const struct cut_job *job, int subset, struct box box)
{
    for (size_t i = 0; i < job->part_count; i++) {
        int64_t length = job->parts[i].length + job->kerf, width = job->parts[i].width + job->kerf;

        if (subset == 1 << i &&
            ((box.size[0] == length && box.size[1] == width) ||
             (job->parts[i].may_turn && box.size[0] == width && box.size[1] == length)))
            return true;
    }
    return false;
}

static int cuts_of(const struct cut_job *job, int subset, struct box box);

/* One cut at the end of a row of parts, both ways to share the parts between its sides. */
static int try_row(const struct cut_job *job, int subset, struct box box, int way, int64_t at)
{
    int least = NEVER;

    for (int part = subset;; part = (part - 1) & subset) {
        struct box near = box, far = box;
        int cuts;

        near.size[way] = at;
        far.size[way] = box.size[way] - at;
        cuts = 1 + cuts_of(job, part, near);
        if (cuts < least)
            cuts += cuts_of(job, subset & ~part, far);
        least = cuts < least ? cuts : least;
        if (part == 0)
            return least;
    }
}

/* Tries all rows that begin with `at` and go on with parts of `left`, each either way. */
static int try_rows(const struct cut_job *job, int subset, int left, struct box box, int way,
                    int64_t at)
{
    int least = at > 0 && at < box.size[way] ? try_row(job, subset, box, way, at) : NEVER;

    for (size_t i = 0; i < job->part_count && at < box.size[way]; i++) {
        int64_t measure[2] = {job->parts[i].length + job->kerf, job->parts[i].width + job->kerf};

        for (int turned = 0; (left >> i & 1) && turned <= job->parts[i].may_turn; turned++) {
            int cuts = try_rows(job, subset, left & ~((2 << i) - 1), box, way,
                                at + measure[way != turned]);
            least = cuts < least ? cuts : least;
        }
    }
    return least;
}

/* The fewest cuts that free a subset from a piece. */
static int cuts_of(const struct cut_job *job, int subset, struct box box)
{
    int least = NEVER;

    if (subset == 0 || is_part(job, subset, box))
        return 0;
    if (!fits(job, subset,
              &(struct cut_size){box.size[0] - job->kerf, box.size[1] - job->kerf, 0, CUT_ANY}))
        return NEVER;
    for (int i = 0; i < state_count; i++)
        if (states[i].subset == subset && memcmp(&states[i].box, &box, sizeof box) == 0)
            return states[i].cuts;
    for (int way = 0; way < 2; way++) {
        int cuts = try_rows(job, subset, subset, box, way, 0);
        least = cuts < least ? cuts : least;
    }
    assert(state_count < STATES_MOST);
    states[state_count++] = (struct state){subset, box, least};
    return least;
}

/* The fewest cuts with a number of sheets. */
static int cuts_with(const struct cut_job *job, int left, int64_t sheets)
{
    struct box sheet = {{job->sizes[0].length + job->kerf, job->sizes[0].width + job->kerf}};
    int least = NEVER, first = left & -left;

    if (left == 0)
        return 0;
    for (int subset = left; sheets > 0 && subset > 0; subset = (subset - 1) & left) {
        int cuts = subset & first ? cuts_of(job, subset, sheet) : NEVER;

        if (cuts < NEVER)
            cuts += cuts_with(job, left & ~subset, sheets - 1);
        least = cuts < least ? cuts : least;
    }
    return least;
}

int brute_cuts(const struct cut_job *job)
{
    int64_t cost = brute_cost(job);

    assert(job->size_count == 1 && job->sizes[0].limit == CUT_ANY && job->part_count <= 4);
    state_count = 0;
    return cuts_with(job, (1 << job->part_count) - 1, cost / job->sizes[0].price);
}
