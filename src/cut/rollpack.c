/*
 * The skyline is the far edge of what lies on the roll. Its lowest ledge is a gap between two
 * walls (the edges of the roll are walls without end); a part that fills the gap's width, or ends
 * level with a wall, leaves fewer ledges, and so is worth more.
 *
 * A nook is looked for place by place across: beside whatever lies there already and at both edges,
 * moved by the pattern. Along such a place what lies in the way is met in order of its near edge,
 * so that one pass finds the first room.
 */
#include "cut/rollpack.h"

#include <assert.h>
#include <string.h>

#define NO_PART INT32_C(-1)
#define WALL (INT64_MAX / 4) /* higher than any part is long */

#define WORK_PART 5  /* units for each part that is looked at for a ledge, */
#define WORK_LEDGE 8 /* and for each ledge when one is looked for; */
#define WORK_LYING 2 /* for each part that lies in the way of a nook */

void roll_order_init(struct roll_order *order, const struct roll_job *job, struct arena *arena)
{
    order->at = ARENA_MANY(arena, int32_t, job->count);
    order->lie = ARENA_MANY(arena, uint8_t, job->count);
    order->right = ARENA_MANY(arena, bool, job->count);
    order->origins = ARENA_MANY(arena, struct roll_origin, job->group_count);
    for (size_t i = 0; i < job->count; i++)
        order->at[i] = (int32_t)i;
}

void roll_order_copy(const struct roll_job *job, const struct roll_order *from,
                     struct roll_order *to)
{
    memcpy(to->at, from->at, job->count * sizeof *from->at);
    memcpy(to->lie, from->lie, job->count * sizeof *from->lie);
    memcpy(to->right, from->right, job->count * sizeof *from->right);
    memcpy(to->origins, from->origins, job->group_count * sizeof *from->origins);
}

void roll_pack_init(struct roll_pack *pack, const struct roll_job *job, struct arena *arena)
{
    size_t rects = job->count + job->blemish_count;

    *pack = (struct roll_pack){.job = job};
    pack->spots = ARENA_MANY(arena, struct roll_spot, job->count);
    pack->next = ARENA_MANY(arena, int32_t, job->count + 1);
    pack->ledges = ARENA_MANY(arena, struct roll_ledge, 2 * job->count + 2);
    pack->lying = ARENA_MANY(arena, struct roll_rect, rects + 1);
    pack->trials = ARENA_MANY(arena, int64_t, 4 * rects + 4);
    pack->origins = ARENA_MANY(arena, struct roll_origin, job->group_count);
}

/* What is left out of `missing` by the order so far is not known to a way that stops early. */
static void clear(struct roll_pack *pack)
{
    pack->missing = pack->job->area;
    pack->length = 0;
    for (size_t i = 0; i < pack->job->count; i++)
        pack->spots[i].placed = false;
}

static void place(struct roll_pack *pack, int32_t part, bool turned, int64_t along, int64_t across)
{
    const struct roll_part *of = &pack->job->parts[part];
    int64_t far = along + (turned ? of->width : of->length);

    pack->spots[part] = (struct roll_spot){along, across, true, turned};
    pack->missing -= of->area;
    if (far > pack->length)
        pack->length = far;
}

static bool may_lie(const struct roll_part *part, uint8_t lie, bool turned)
{
    if (!part->may_turn)
        return !turned;
    return lie == LIE_EITHER || (lie == LIE_TURNED) == turned;
}

/* ---- skyline ---- */

struct gap {
    size_t ledge;
    int64_t along, width;
    int64_t left, right; /* how far the walls stand beyond it */
};

struct choice {
    int32_t before; /* the place in the list before the part's; its link is cut */
    int32_t part;
    bool turned;
    int score;
};

static struct gap lowest_gap(struct roll_pack *pack)
{
    const struct roll_ledge *ledges = pack->ledges;
    struct gap gap = {.left = WALL, .right = WALL};

    for (size_t i = 1; i < pack->ledge_count; i++)
        if (ledges[i].along < ledges[gap.ledge].along)
            gap.ledge = i;
    gap.along = ledges[gap.ledge].along;
    gap.width = ledges[gap.ledge].width;
    if (gap.ledge > 0)
        gap.left = ledges[gap.ledge - 1].along - gap.along;
    if (gap.ledge + 1 < pack->ledge_count)
        gap.right = ledges[gap.ledge + 1].along - gap.along;
    pack->work += WORK_LEDGE * (int64_t)pack->ledge_count;
    return gap;
}

#define SCORE_BEST 7

static int score_of(const struct gap *gap, int64_t length, int64_t width)
{
    int64_t higher = gap->left > gap->right ? gap->left : gap->right;
    int64_t lower = gap->left > gap->right ? gap->right : gap->left;

    return (width == gap->width ? 4 : 0) + (length == higher ? 2 : 0) + (length == lower ? 1 : 0);
}

static void consider(const struct gap *gap, int64_t room, int64_t length, int64_t width,
                     struct choice made, struct choice *best)
{
    if (width > gap->width || length > room)
        return;
    made.score = score_of(gap, length, width);
    if (best->part == NO_PART || made.score > best->score)
        *best = made;
}

static struct choice choose_part(struct roll_pack *pack, const struct roll_order *order,
                                 const struct gap *gap, int64_t target)
{
    int32_t end = (int32_t)pack->job->count;
    struct choice best = {.part = NO_PART};
    int64_t looked = 0;

    for (int32_t before = end, i = pack->next[end]; i != end && best.score < SCORE_BEST;
         before = i, i = pack->next[i], looked++) {
        int32_t index = order->at[i];
        const struct roll_part *part = &pack->job->parts[index];
        uint8_t lie = part->may_turn ? order->lie[index] : LIE_STRAIGHT;

        if (lie != LIE_TURNED)
            consider(gap, target - gap->along, part->length, part->width,
                     (struct choice){before, index, false, 0}, &best);
        if (lie != LIE_STRAIGHT)
            consider(gap, target - gap->along, part->width, part->length,
                     (struct choice){before, index, true, 0}, &best);
    }
    pack->work += WORK_PART * looked;
    return best;
}

static void remove_ledge(struct roll_pack *pack, size_t index)
{
    assert(index < pack->ledge_count);
    pack->ledge_count--;
    memmove(&pack->ledges[index], &pack->ledges[index + 1],
            (pack->ledge_count - index) * sizeof *pack->ledges);
}

/* Joins a ledge with neighbours that are as high. */
static void join_ledges(struct roll_pack *pack, size_t index)
{
    assert(index < pack->ledge_count);

    struct roll_ledge *ledges = pack->ledges;

    if (index + 1 < pack->ledge_count && ledges[index + 1].along == ledges[index].along) {
        ledges[index].width += ledges[index + 1].width;
        remove_ledge(pack, index + 1);
    }
    if (index > 0 && ledges[index - 1].along == ledges[index].along) {
        ledges[index - 1].width += ledges[index].width;
        remove_ledge(pack, index);
    }
}

/* Against the higher wall, of equals to the left. */
static void lay_in_gap(struct roll_pack *pack, const struct gap *gap, const struct choice *choice)
{
    const struct roll_part *part = &pack->job->parts[choice->part];
    int64_t width = choice->turned ? part->length : part->width;
    int64_t far = gap->along + (choice->turned ? part->width : part->length);
    struct roll_ledge *ledge = &pack->ledges[gap->ledge];
    bool left = gap->left >= gap->right;
    int64_t across = left ? ledge->across : ledge->across + ledge->width - width;
    size_t taken = gap->ledge + !left;

    place(pack, choice->part, choice->turned, gap->along, across);
    if (width == gap->width) {
        ledge->along = far;
        join_ledges(pack, gap->ledge);
        return;
    }
    memmove(&pack->ledges[taken + 1], &pack->ledges[taken],
            (pack->ledge_count - taken) * sizeof *pack->ledges);
    pack->ledge_count++;
    pack->ledges[taken] = (struct roll_ledge){across, width, far};
    ledge = &pack->ledges[left ? taken + 1 : gap->ledge];
    ledge->across += left ? width : 0;
    ledge->width = gap->width - width;
    join_ledges(pack, taken);
}

/* Raises the gap to its lower wall, at most to the target; what it shuts in is given back. */
static int64_t shut_gap(struct roll_pack *pack, const struct gap *gap, int64_t target)
{
    int64_t wall = gap->left < gap->right ? gap->left : gap->right;
    int64_t to = gap->along + wall < target ? gap->along + wall : target;
    int64_t shut_in = (to - gap->along) * gap->width;

    pack->ledges[gap->ledge].along = to;
    join_ledges(pack, gap->ledge);
    return shut_in;
}

bool roll_pack_skyline(struct roll_pack *pack, const struct roll_order *order, int64_t target,
                       int64_t limit)
{
    int32_t end = (int32_t)pack->job->count;
    int64_t spare = pack->job->width * target - pack->job->area;
    int64_t shut_in = 0;

    assert(roll_job_plain(pack->job));
    clear(pack);
    for (int32_t i = 0; i <= end; i++)
        pack->next[i] = i < end ? i + 1 : 0;
    pack->ledges[0] = (struct roll_ledge){0, pack->job->width, 0};
    pack->ledge_count = 1;
    while (pack->next[end] != end) {
        struct gap gap = lowest_gap(pack);
        struct choice choice = choose_part(pack, order, &gap, target);

        if (gap.along >= target)
            break;
        if (choice.part == NO_PART) {
            shut_in += shut_gap(pack, &gap, target);
            if (shut_in - spare > limit)
                return false;
            continue;
        }
        lay_in_gap(pack, &gap, &choice);
        pack->next[choice.before] = pack->next[pack->next[choice.before]];
    }
    return pack->missing <= limit;
}

/* ---- nooks ---- */

static void add_lying(struct roll_pack *pack, struct roll_rect lying)
{
    size_t at = pack->lying_count++;

    while (at > 0 && pack->lying[at - 1].near > lying.near) {
        pack->lying[at] = pack->lying[at - 1];
        at--;
    }
    pack->lying[at] = lying;
}

struct nook {
    bool found, turned;
    int64_t along, across;
};

struct search_nook {
    struct roll_pack *pack;
    const struct roll_part *part;
    const struct roll_origin *origin;
    bool turned, right;
    int64_t length, width; /* as it lies */
    int64_t target;
    struct nook best;
};

/* A part that gives its group an origin must leave a place for the others. */
static bool serves(const struct search_nook *search, int64_t across)
{
    return search->part->group == ROLL_NO_GROUP || search->origin->known ||
           roll_origin_serves(search->pack->job, search->part->group,
                              across - search->part->across);
}

/* The first room at one place across, if it is sooner than the best. */
static void try_across(struct search_nook *search, int64_t across)
{
    const struct roll_pack *pack = search->pack;
    int64_t last = search->target - search->length;
    int64_t along;
    size_t i;

    if (across < 0 || across + search->width > pack->job->width || !serves(search, across))
        return;
    if (search->best.found && search->best.along < last)
        last = search->best.along;
    along = roll_snap_along(pack->job, search->part, search->origin, 0, across);
    for (i = 0; i < pack->lying_count && along <= last; i++) {
        const struct roll_rect *lying = &pack->lying[i];

        if (lying->near >= along + search->length)
            break;
        if (lying->far > along && lying->left < across + search->width && lying->right > across)
            along = roll_snap_along(pack->job, search->part, search->origin, lying->far, across);
    }
    search->pack->work += WORK_LYING * (int64_t)(i + 1);
    if (along > last || (search->best.found && along == search->best.along &&
                         (across >= search->best.across) != search->right))
        return;
    search->best = (struct nook){true, search->turned, along, across};
}

/* With a half-drop the place one repeat farther is of the other kind. */
static void try_right_of(struct search_nook *search, int64_t edge)
{
    const struct roll_job *job = search->pack->job;
    int64_t across = roll_snap_right(job, search->part, search->origin, edge);

    try_across(search, across);
    if (job->pattern.half_drop && search->part->group != ROLL_NO_GROUP)
        try_across(search, across + job->pattern.across);
}

static void try_left_of(struct search_nook *search, int64_t edge)
{
    const struct roll_job *job = search->pack->job;
    int64_t across = roll_snap_left(job, search->part, search->origin, edge - search->width);

    try_across(search, across);
    if (job->pattern.half_drop && search->part->group != ROLL_NO_GROUP)
        try_across(search, across - job->pattern.across);
}

static void try_all(struct search_nook *search, bool turned)
{
    const struct roll_pack *pack = search->pack;

    search->turned = turned;
    search->length = turned ? search->part->width : search->part->length;
    search->width = turned ? search->part->length : search->part->width;
    try_right_of(search, 0);
    try_left_of(search, pack->job->width);
    for (size_t i = 0; i < pack->lying_count; i++) {
        try_right_of(search, pack->lying[i].right);
        try_left_of(search, pack->lying[i].left);
    }
}

static bool lay_in_nook(struct roll_pack *pack, const struct roll_order *order, int32_t index,
                        int64_t target)
{
    static const struct roll_origin nowhere = {false, 0, 0};
    const struct roll_part *part = &pack->job->parts[index];
    bool grouped = part->group != ROLL_NO_GROUP;
    struct roll_origin *origin = grouped ? &pack->origins[part->group] : NULL;
    struct search_nook search = {.pack = pack,
                                 .part = part,
                                 .origin = grouped ? origin : &nowhere,
                                 .right = order->right[index],
                                 .target = target};

    for (int turned = 0; turned < 2; turned++)
        if (may_lie(part, order->lie[index], turned))
            try_all(&search, turned);
    if (!search.best.found)
        return false;
    if (grouped && !origin->known)
        roll_set_origin(part, search.best.along, search.best.across, origin);
    place(pack, index, search.best.turned, search.best.along, search.best.across);
    add_lying(pack, (struct roll_rect){
                        search.best.along,
                        search.best.along + (search.best.turned ? part->width : part->length),
                        search.best.across,
                        search.best.across + (search.best.turned ? part->length : part->width)});
    return true;
}

bool roll_pack_nooks(struct roll_pack *pack, const struct roll_order *order, int64_t target,
                     int64_t limit)
{
    const struct roll_job *job = pack->job;
    int64_t lost = 0;

    clear(pack);
    pack->lying_count = 0;
    for (size_t i = 0; i < job->blemish_count; i++)
        pack->lying[pack->lying_count++] = job->blemishes[i];
    for (size_t i = 0; i < job->group_count; i++)
        pack->origins[i] =
            i == job->pinned ? (struct roll_origin){.known = true} : order->origins[i];
    for (size_t i = 0; i < job->count; i++) {
        int32_t index = order->at[i];

        if (lay_in_nook(pack, order, index, target))
            continue;
        lost += job->parts[index].area;
        if (lost > limit)
            return false;
    }
    return true;
}
