/*
 * Rows of staples and their intervals.
 *
 * 1  A row is counted once, on its whole length. Its intervals share its staples by where these
 *    stand, so that they sum to the row whatever the intervals are.
 * 2  Intervals leave no gap, do not overlap, and neighbours differ in class or join.
 * 3  What the maker says of an edge or an opening comes before what the joins ask for.
 * 4  A layer whose landing takes the row of a layer fixed together with it has no row of its own.
 */
#include "plan/cover.h"

#include "plan/access.h"
#include "plan/cover_sums.h"
#include "plan/drape.h"
#include "plan/geometry.h"

#include <assert.h>

/* A part of a row that is not free. */
struct mark {
    int64_t from, to;
    int64_t class;
    int64_t join;
};

struct marks {
    LIST_OF(struct mark) of; /* by `from`, not overlapping */
};

static void mark_insert(struct planning *planning, struct marks *marks, size_t at, struct mark mark)
{
    assert(at <= marks->of.count);

    LIST_ADD(planning->arena, &marks->of);
    for (size_t i = marks->of.count - 1; i > at; i--)
        marks->of.at[i] = marks->of.at[i - 1];
    marks->of.at[at] = mark;
}

/* Puts in what of from..to is not marked yet. O(marks). */
static void mark_add(struct planning *planning, struct marks *marks, int64_t from, int64_t to,
                     int64_t class, int64_t join)
{
    for (size_t at = 0; from < to; at++) {
        int64_t next = at < marks->of.count ? marks->of.at[at].from : to;

        if (from < next)
            mark_insert(planning, marks, at++,
                        (struct mark){from, next < to ? next : to, class, join});
        if (at >= marks->of.count)
            break;
        if (from < marks->of.at[at].to)
            from = marks->of.at[at].to;
    }
}

/* Marks begin..end of an edge where a stretch of the row lies on it. */
static void mark_stretch(struct planning *planning, const struct spread *spread,
                         struct marks *marks, const struct stretch *stretch, int64_t begin,
                         int64_t end, int64_t class, int64_t join)
{
    begin = spread_along(planning->model, spread, stretch->edge, begin) - stretch->begin;
    end = spread_along(planning->model, spread, stretch->edge, end) - stretch->begin;
    begin = length_within(begin, 0, stretch->length);
    end = length_within(end, begin, stretch->length);
    if (stretch->backward)
        mark_add(planning, marks, stretch->from + stretch->length - end,
                 stretch->from + stretch->length - begin, class, join);
    else
        mark_add(planning, marks, stretch->from + begin, stretch->from + end, class, join);
}

/* ---- what the maker says ---- */

static void mark_openings(struct planning *planning, const struct spread *spread,
                          struct marks *marks, const struct stretch *stretch)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->openings.count; i++) {
        const struct opening *opening = &model->openings.at[i];
        int64_t end = opening->length > 0 ? opening->begin + opening->length : stretch->straight;

        if (opening->layer == spread->layer->key && opening->edge == stretch->edge)
            mark_stretch(planning, spread, marks, stretch, opening->begin, end, CLASS_OPENING,
                         opening->join);
    }
}

/* ---- what the joins ask for ---- */

/* A flap is left on the face that the heads are on; the other face of a sleeve is not peeled. */
static bool on_other_face(const struct planning *planning, const struct spread *spread,
                          const struct edge_run *run, int face)
{
    const struct junction *junction = plan_junction(planning->plan, run->join);
    int64_t behind = side_opposite(spread->side);

    if (!spread->layer->both || run->class == CLASS_TRAPPED || !junction)
        return false;
    return junction->head_side == (face ? spread->side : behind);
}

/* Of a group, only boxes that stand at an edge of the layer have a part of it. */
static bool stands_at(const struct spread *spread, const struct plot *plot, int64_t edge)
{
    const bool at[EDGE_COUNT] = {
        [EDGE_LEFT] = plot->area.u0 <= 0,
        [EDGE_RIGHT] = plot->area.u1 >= spread->width,
        [EDGE_TOP] = plot->area.v1 >= spread->height,
        [EDGE_BOTTOM] = plot->area.v0 <= 0,
    };

    assert(edge >= 0 && edge < EDGE_COUNT);
    return spread->plot_count == 1 || at[edge];
}

static void mark_joins_of(struct planning *planning, const struct spread *spread,
                          struct marks *marks, const struct stretch *stretch,
                          const struct plot *plot)
{
    struct edge_runs runs = access_edge_runs(planning, spread->layer, plot->box, stretch->edge);
    int64_t begin = edge_is_upright(stretch->edge) ? plot->area.v0 : plot->area.u0;

    if (begin < 0)
        begin = 0; /* the layer begins inside the face: its edge counts from there */
    for (size_t i = 0; i < runs.count; i++)
        if (!on_other_face(planning, spread, &runs.at[i], stretch->face))
            mark_stretch(planning, spread, marks, stretch, begin + runs.at[i].from,
                         begin + runs.at[i].to, runs.at[i].class, runs.at[i].join);
}

static void mark_joins(struct planning *planning, const struct spread *spread, struct marks *marks,
                       const struct stretch *stretch)
{
    for (size_t i = 0; i < spread->plot_count; i++)
        if (stands_at(spread, &spread->plots[i], stretch->edge))
            mark_joins_of(planning, spread, marks, stretch, &spread->plots[i]);
}

/* What the maker leaves loose is closed after the joins that ask for a piece of it: each takes the
 * edge up to where the next one's begins. */
static void mark_loose(struct planning *planning, const struct spread *spread, struct marks *marks,
                       const struct stretch *stretch, int64_t class)
{
    struct edge_runs runs = access_edge_runs(planning, spread->layer, spread->box, stretch->edge);
    int64_t join = 0;
    int64_t from = 0;

    for (size_t i = 0; i < runs.count; i++) {
        const struct edge_run *run = &runs.at[i];

        if ((run->class != CLASS_OPENING && run->class != CLASS_SITE) || run->join == join)
            continue;
        if (join) {
            mark_stretch(planning, spread, marks, stretch, from, run->from, class, join);
            from = run->from;
        }
        join = run->join;
    }
    mark_stretch(planning, spread, marks, stretch, from, stretch->straight, class, join);
}

static void mark_edge(struct planning *planning, const struct spread *spread, struct marks *marks,
                      const struct stretch *stretch)
{
    int64_t by_hand = spread->brims[stretch->edge].by_class;

    mark_openings(planning, spread, marks, stretch);
    if (by_hand == CLASS_OPENING || by_hand == CLASS_SITE)
        mark_loose(planning, spread, marks, stretch, by_hand);
    else if (by_hand != CLASS_AUTO)
        mark_stretch(planning, spread, marks, stretch, 0, stretch->straight, by_hand, 0);
    else
        mark_joins(planning, spread, marks, stretch);
}

/* The one mark that an edge has from end to end; of class AUTO where it has several or gaps. */
static struct mark whole_mark(struct planning *planning, const struct spread *spread, int64_t edge,
                              int face)
{
    struct stretch whole = {
        edge, face, 0, 0, spread_length(spread, edge), spread_straight(spread, edge), false};
    struct marks marks = {.of = {{0}}};
    const struct mark *first;

    assert(edge >= 0 && edge < EDGE_COUNT);
    mark_edge(planning, spread, &marks, &whole);
    if (marks.of.count == 0)
        return (struct mark){0, whole.length, CLASS_FREE, 0};
    first = &marks.of.at[0];
    if (first->from == 0 && first->to == whole.length)
        return *first;
    return (struct mark){0, whole.length, CLASS_AUTO, 0};
}

int64_t edge_whole_class(struct planning *planning, const struct spread *spread, int64_t edge)
{
    return whole_mark(planning, spread, edge, 0).class;
}

static bool row_is_on(const struct staple_row *row, int face)
{
    for (int i = 0; i < row->stretch_count; i++)
        if (row->stretches[i].face == face)
            return true;
    return row->stretch_count == 0;
}

/* What holds for the whole edge holds for all of its row: round the boxing, and where the cloth
 * goes on over the next side. */
static void mark_rest(struct planning *planning, const struct spread *spread,
                      const struct staple_row *row, struct marks *marks)
{
    struct mark whole = {0, 0, CLASS_AUTO, 0};

    for (int face = 0; face <= spread->layer->both; face++) {
        struct mark mark;

        if (!row_is_on(row, face))
            continue;
        mark = whole_mark(planning, spread, row->edge, face);
        if (mark.class == CLASS_AUTO || (whole.class != CLASS_AUTO && mark.class != whole.class))
            return;
        whole = mark;
    }
    if (whole.class != CLASS_AUTO && whole.class != CLASS_FREE)
        mark_add(planning, marks, 0, row->length, whole.class, whole.join);
}

static void mark_row(struct planning *planning, const struct spread *spread,
                     const struct staple_row *row, struct marks *marks)
{
    for (int i = 0; i < row->stretch_count; i++)
        mark_edge(planning, spread, marks, &row->stretches[i]);
    if (row->edge >= 0)
        mark_rest(planning, spread, row, marks);
}

/* ---- counting ---- */

static enum pass_of_staples pass_of(const struct model *model, int64_t class, int64_t join)
{
    const struct join *waits_for = MODEL_FIND(model, join, join);

    if (class == CLASS_SITE)
        return STAPLED_IN_ROOM;
    if (class != CLASS_OPENING)
        return STAPLED_AT_BENCH;
    return waits_for && waits_for->place == PLACE_SITE ? STAPLED_IN_ROOM : STAPLED_AFTER_JOIN;
}

static int64_t count_row(const struct staple_row *row, int64_t pitch)
{
    if (pitch <= 0)
        return 0;
    return row->loop ? staples_loop(row->length, pitch) : staples_open(row->length, pitch);
}

/* Corner folds between from and to; the last interval has the one at the row's end. */
static int64_t corners_between(const struct staple_row *row, int64_t from, int64_t to)
{
    int64_t corners = 0;

    for (int i = 0; i < row->corner_count; i++)
        corners += (from <= row->corners[i] && row->corners[i] < to) ||
                   (to == row->length && row->corners[i] == to);
    return corners;
}

static int64_t count_between(const struct planning *planning, const struct staple_row *row,
                             int64_t from, int64_t to)
{
    int64_t each = planning->value[TRADE_STAPLE_CORNER_EACH];

    return staples_between(count_row(row, row->pitch), row->length, row->loop, from, to) +
           staples_between(count_row(row, row->pitch_over), row->length, row->loop, from, to) +
           corners_between(row, from, to) * each + (from == 0 ? row->extra : 0);
}

static void add_interval(struct planning *planning, const struct staple_row *row,
                         const struct mark *part)
{
    struct interval *interval = LIST_ADD(planning->arena, &planning->plan->intervals);
    struct edge *edge = &planning->plan->edges.at[planning->plan->edges.count - 1];

    assert(part->class != CLASS_AUTO);
    interval->edge = planning->plan->edges.count - 1;
    interval->from = part->from;
    interval->to = part->to;
    interval->class = part->class;
    interval->join = part->join;
    interval->pass = pass_of(planning->model, part->class, part->join);
    interval->staples = count_between(planning, row, part->from, part->to);
    edge->staples += interval->staples;
    edge->interval_count++;
}

/* Grows `part` by what comes next, or closes it as an interval and begins anew. */
static void extend(struct planning *planning, const struct staple_row *row, struct mark *part,
                   const struct mark *next)
{
    if (next->from == next->to)
        return;
    if (part->from < part->to && (part->class != next->class || part->join != next->join)) {
        add_interval(planning, row, part);
        *part = *next;
        return;
    }
    if (part->from == part->to)
        *part = *next;
    part->to = next->to;
}

static void add_intervals(struct planning *planning, const struct staple_row *row,
                          const struct marks *marks)
{
    struct mark part = {0, 0, CLASS_FREE, 0};
    int64_t at = 0;

    for (size_t i = 0; i < marks->of.count; i++) {
        const struct mark *mark = &marks->of.at[i];
        struct mark gap = {at, mark->from, CLASS_FREE, 0};

        assert(at <= mark->from && mark->to <= row->length);
        extend(planning, row, &part, &gap);
        extend(planning, row, &part, mark);
        at = mark->to;
    }
    extend(planning, row, &part, &(struct mark){at, row->length, CLASS_FREE, 0});
    add_interval(planning, row, &part);
}

/* ---- in one row with the layer over it ---- */

/* The next layer of cloth outward on the same box or group; NULL when there is none. */
static const struct layer *next_cloth(const struct model *model, const struct layer *under)
{
    const struct layer *next = NULL;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (drape_is_cloth(layer) && layer->box == under->box && layer->group == under->group &&
            layer->rank > under->rank && (!next || layer->rank < next->rank))
            next = layer;
    }
    return next;
}

static bool lands_on_same_wood(const struct planning *planning, const struct spread *spread,
                               const struct layer *over, int64_t edge)
{
    struct landing here = drape_landing(planning, spread->layer, spread->box, edge);

    for (int64_t other = 0; other < EDGE_COUNT; other++) {
        struct landing there = drape_landing(planning, over, spread->box, other);
        struct area common = area_cut(&here.area, &there.area);

        if (here.side == there.side && !area_empty(&common))
            return true;
    }
    return false;
}

/* Does the row of the layer over this one, fixed together with it, hold it as well? */
static bool is_held_by_next(const struct planning *planning, const struct spread *spread,
                            const struct staple_row *row)
{
    const struct layer *over = next_cloth(planning->model, spread->layer);

    if (!over || over->fixing != FIXING_TOGETHER || row->edge == EDGE_CORDS ||
        row->edge == EDGE_CHANNELS)
        return false;
    if (row->edge >= 0)
        return lands_on_same_wood(planning, spread, over, row->edge);
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (!lands_on_same_wood(planning, spread, over, edge))
            return false;
    return true;
}

/* ---- all ---- */

/* Cloth that goes over a curve is cut in from its edge, so that it can open or lap. */
static int64_t relief_cuts(const struct planning *planning, const struct spread *spread,
                           const struct staple_row *row)
{
    bool curved = row->edge >= 0 && edge_is_curved(spread, row->edge);

    if (!curved || !drape_is_cloth(spread->layer) || spread->layer->shape == SHAPE_FLAT)
        return 0;
    return whole_divide_up(row->length, planning->value[TRADE_RELIEF_PITCH]);
}

static void row_place(struct planning *planning, const struct spread *spread,
                      const struct staple_row *row)
{
    struct plan *plan = planning->plan;
    struct edge *edge = LIST_ADD(planning->arena, &plan->edges);
    bool on_edge = row->edge >= 0;
    int64_t leg = staple_leg(planning, spread, row->landing_side);
    struct marks marks = {.of = {{0}}};

    edge->layer = spread->layer->key;
    edge->box = spread->box->key;
    edge->edge = row->edge;
    edge->landing_side = row->landing_side;
    edge->length = row->length;
    edge->pitch = row->pitch;
    edge->landing = spread->brims[on_edge ? row->edge : EDGE_LEFT].landing;
    edge->handle = spread->brims[on_edge ? row->edge : EDGE_LEFT].handle;
    edge->leg = leg;
    edge->corners = row->corner_count * planning->value[TRADE_STAPLE_CORNER_EACH];
    edge->relief = relief_cuts(planning, spread, row);
    if (row->basted)
        edge->temporary = count_row(row, planning->value[TRADE_STAPLE_TEMP_PITCH]);
    edge->first_interval = plan->intervals.count;
    mark_row(planning, spread, row, &marks);
    add_intervals(planning, row, &marks);
    assert(edge->staples == count_between(planning, row, 0, row->length));
    staple_wood(planning, spread, row, leg);
}

/* What the next layer's row holds is only basted until then. */
void row_add(struct planning *planning, const struct spread *spread, const struct staple_row *row)
{
    struct staple_row placed = *row;

    if (is_held_by_next(planning, spread, row)) {
        placed.pitch = placed.pitch_over = 0;
        placed.corner_count = 0;
        placed.basted = true;
    }
    row_place(planning, spread, &placed);
}
