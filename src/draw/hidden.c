/*
 * Hidden lines, exactly: of each edge what no convex part of a body stands before (convex.c).
 *
 * 1  What parts hide of an edge is the union of one interval for each; the rest is drawn.
 * 2  An edge both of whose faces look away is not seen: it needs no test. One between two faces of
 *    a round is drawn only where one of them looks away.
 * 3  A grid over the picture holds for each cell the parts over it, so that an edge is tested
 *    against its neighbours alone; a stamp keeps a part from being tested twice.
 */
#include "draw/hidden.h"

#include "draw/convex.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>

#define GRID 24
#define LEAST_STROKE (4 * HIDDEN_SLACK)

struct scene {
    struct strokes *strokes;
    struct parts parts;
    double low[2], cell[2]; /* of the grid */
    size_t *starts;         /* GRID * GRID + 1, into held */
    size_t *held;
    size_t *stamps; /* number of the last edge that was tested against the part */
    size_t stamp;
    LIST_OF(struct range) hidden; /* of the edge that is drawn */
    double hatch;
    struct arena *arena;
};

/* ---- the grid ---- */

static void set_grid(struct scene *scene)
{
    double high[2] = {-HUGE_VAL, -HUGE_VAL};

    for (int axis = RIGHT; axis <= UP; axis++) {
        scene->low[axis] = HUGE_VAL;
        for (size_t i = 0; i < scene->parts.of.count; i++) {
            scene->low[axis] = fmin(scene->low[axis], scene->parts.of.at[i].low[axis]);
            high[axis] = fmax(high[axis], scene->parts.of.at[i].high[axis]);
        }
        scene->cell[axis] = fmax(1.0, (high[axis] - scene->low[axis]) / GRID);
    }
}

static int cell_at(const struct scene *scene, int axis, double at)
{
    assert(axis == 0 || axis == 1);

    double cell = floor((at - scene->low[axis]) / scene->cell[axis]);

    return cell < 0 ? 0 : cell > GRID - 1 ? GRID - 1 : (int)cell;
}

static size_t cell_index(int up, int right)
{
    assert(up >= 0 && up < GRID && right >= 0 && right < GRID);
    return (size_t)up * GRID + (size_t)right;
}

/* First and last cells that a stretch of the picture touches, both axes. */
struct cells {
    int from[2], to[2];
};

static struct cells cells_over(const struct scene *scene, const double low[2], const double high[2])
{
    struct cells cells;

    for (int axis = RIGHT; axis <= UP; axis++) {
        cells.from[axis] = cell_at(scene, axis, low[axis]);
        cells.to[axis] = cell_at(scene, axis, high[axis]);
    }
    return cells;
}

/* Calls for each cell of each part: first to count, then to fill in. */
static void each_cell(struct scene *scene, void (*visit)(struct scene *, size_t cell, size_t part))
{
    for (size_t i = 0; i < scene->parts.of.count; i++) {
        struct cells cells =
            cells_over(scene, scene->parts.of.at[i].low, scene->parts.of.at[i].high);

        for (int y = cells.from[UP]; y <= cells.to[UP]; y++)
            for (int x = cells.from[RIGHT]; x <= cells.to[RIGHT]; x++)
                visit(scene, cell_index(y, x), i);
    }
}

static void count_in(struct scene *scene, size_t cell, size_t part)
{
    (void)part;
    scene->starts[cell + 1]++;
}

/* From the end of each cell's room down to its beginning. */
static void fill_in(struct scene *scene, size_t cell, size_t part)
{
    scene->held[--scene->starts[cell + 1]] = part;
}

static void make_grid(struct scene *scene)
{
    set_grid(scene);
    scene->starts = ARENA_MANY(scene->arena, size_t, GRID * GRID + 2);
    each_cell(scene, count_in);
    for (size_t i = 0; i < GRID * GRID; i++)
        scene->starts[i + 1] += scene->starts[i];
    scene->starts[GRID * GRID + 1] = scene->starts[GRID * GRID];
    scene->held = ARENA_MANY(scene->arena, size_t, scene->starts[GRID * GRID]);
    each_cell(scene, fill_in);
    scene->starts++; /* what was the end of each cell is now its beginning */
}

/* ---- one edge ---- */

/* By their beginnings: few, and nearly in order. */
static void add_hidden(struct scene *scene, struct range range)
{
    size_t at = scene->hidden.count;

    LIST_ADD(scene->arena, &scene->hidden);
    for (; at > 0 && scene->hidden.at[at - 1].from > range.from; at--)
        scene->hidden.at[at] = scene->hidden.at[at - 1];
    scene->hidden.at[at] = range;
}

/* Where an edge lies: on the picture, and how far from the eye. */
struct bounds {
    double low[2], high[2];
    double farthest;
};

static struct bounds bounds_of(const struct stroke *edge)
{
    struct bounds bounds;

    for (int axis = RIGHT; axis <= UP; axis++) {
        bounds.low[axis] = fmin(edge->from.at[axis], edge->to.at[axis]);
        bounds.high[axis] = fmax(edge->from.at[axis], edge->to.at[axis]);
    }
    bounds.farthest = fmin(edge->from.at[NEAR], edge->to.at[NEAR]);
    return bounds;
}

/* Whether a part may stand before an edge, by their bounds alone. */
static bool may_hide(const struct part *part, const struct bounds *edge)
{
    return part->nearest > edge->farthest && part->low[RIGHT] < edge->high[RIGHT] &&
           edge->low[RIGHT] < part->high[RIGHT] && part->low[UP] < edge->high[UP] &&
           edge->low[UP] < part->high[UP];
}

static void test_cell(struct scene *scene, size_t cell, const struct stroke *edge,
                      const struct spot *way, const struct bounds *bounds)
{

    for (size_t i = scene->starts[cell]; i < scene->starts[cell + 1]; i++) {
        size_t index = scene->held[i];
        const struct part *part = &scene->parts.of.at[index];
        struct range range;

        if (scene->stamps[index] == scene->stamp)
            continue;
        scene->stamps[index] = scene->stamp;
        if (may_hide(part, bounds) && part_hides(part, &edge->from, way, &range))
            add_hidden(scene, range);
    }
}

static void find_hidden(struct scene *scene, const struct stroke *edge, const struct spot *way)
{
    struct bounds bounds = bounds_of(edge);
    struct cells cells = cells_over(scene, bounds.low, bounds.high);

    scene->hidden.count = 0;
    scene->stamp++;
    for (int y = cells.from[UP]; y <= cells.to[UP]; y++)
        for (int x = cells.from[RIGHT]; x <= cells.to[RIGHT]; x++)
            test_cell(scene, cell_index(y, x), edge, way, &bounds);
}

/* What shows at a body's rim for its slack alone is nothing. */
static void add_stroke(struct scene *scene, const struct stroke *edge, const struct spot *way,
                       enum stroke_kind kind, struct range part)
{
    double length = (part.to - part.from) * hypot(way->at[RIGHT], way->at[UP]);

    if (length > LEAST_STROKE)
        *LIST_ADD(scene->arena, &scene->strokes->of) =
            (struct stroke){kind, edge->body, spot_on(&edge->from, way, part.from),
                            spot_on(&edge->from, way, part.to)};
}

/* Draws what is seen of a line, and what is not where `behind`. */
static void draw_line(struct scene *scene, const struct stroke *edge, bool behind)
{
    struct spot way;
    double seen_from = 0;

    for (int i = 0; i < 3; i++)
        way.at[i] = edge->to.at[i] - edge->from.at[i];
    find_hidden(scene, edge, &way);
    for (size_t i = 0; i < scene->hidden.count; i++) {
        struct range hidden = scene->hidden.at[i];
        add_stroke(scene, edge, &way, edge->kind, (struct range){seen_from, hidden.from});
        if (behind)
            add_stroke(scene, edge, &way, STROKE_BEHIND,
                       (struct range){fmax(seen_from, hidden.from), hidden.to});
        seen_from = fmax(seen_from, hidden.to);
    }
    add_stroke(scene, edge, &way, edge->kind, (struct range){seen_from, 1});
}

/* ---- the faces of a body ---- */

/* A corner of a body's band. */
struct corner {
    struct spot at;
    bool sharp;
};

/* A body while it is drawn. Face k of its `count` goes on from corner k to the next one. */
struct outline {
    const struct body *body;
    size_t index;
    struct corner *corners;
    size_t count;
    bool *seen;        /* by face */
    bool seen_ends[2]; /* the band, and the band moved along the way */
};

static const struct spot *corner_at(const struct outline *outline, size_t k)
{
    return &outline->corners[k % outline->count].at;
}

static double distance(const struct spot *a, const struct spot *b)
{
    struct spot way = spot_way(a, b);

    return spot_length(way.at);
}

/* Whether a place lies on the line between two others, or as good as on it. */
static bool is_between(const struct spot *a, const struct spot *place, const struct spot *b)
{
    return distance(a, place) + distance(place, b) - distance(a, b) < LEVEL;
}

/* One place twice is one corner; a round that goes straight on has none there. */
static void add_corner(struct outline *outline, const struct spot *at, bool sharp)
{
    struct corner *last = outline->count ? &outline->corners[outline->count - 1] : NULL;

    if (last && distance(&last->at, at) < 1) {
        last->sharp |= sharp;
        return;
    }
    assert(outline->count == 0 || last);
    if (outline->count >= 2 && !last->sharp && is_between(&(last - 1)->at, &last->at, at))
        outline->count--;
    outline->corners[outline->count++] = (struct corner){*at, sharp};
}

/* Round the band: along its lower rim, and back along its upper one. */
static void walk_round(struct outline *outline)
{
    const struct body *body = outline->body;
    size_t last = body->count - 1;

    for (size_t i = 0; i <= last; i++) {
        const struct station *station = &body->stations[i];

        add_corner(outline, &station->low, station->low_corner || i == 0 || i == last);
    }
    for (size_t i = body->count; i-- > 0;) {
        const struct station *station = &body->stations[i];

        add_corner(outline, &station->high, station->high_corner || i == 0 || i == last);
    }
    if (outline->count > 1 &&
        distance(corner_at(outline, outline->count - 1), corner_at(outline, 0)) < 1)
        outline->count--;
}

static bool looks_at_us(const double normal[3])
{
    return normal[NEAR] > LEVEL * spot_length(normal);
}

static void find_seen(struct outline *outline)
{
    const struct body *body = outline->body;
    double normal[3], away[3];

    body_normal(body, normal);
    double along = spot_dot(normal, body->way.at);
    for (int i = 0; i < 3; i++)
        away[i] = -normal[i];
    outline->seen_ends[along > 0] = looks_at_us(normal);
    outline->seen_ends[along <= 0] = looks_at_us(away);
    for (size_t k = 0; k < outline->count; k++) {
        struct spot side = spot_way(corner_at(outline, k), corner_at(outline, k + 1));
        double face[3];

        spot_cross(side.at, body->way.at, face);
        for (int i = 0; i < 3; i++)
            face[i] = along > 0 ? face[i] : -face[i];
        outline->seen[k] = looks_at_us(face);
    }
}

static struct outline outline_of(const struct body *body, size_t index, struct arena *arena)
{
    struct outline outline = {.body = body, .index = index};

    outline.corners = ARENA_MANY(arena, struct corner, 2 * body->count);
    outline.seen = ARENA_MANY(arena, bool, 2 * body->count);
    walk_round(&outline);
    find_seen(&outline);
    return outline;
}

/* ---- its edges ---- */

/* Between two faces; of a round only its contour. */
static void draw_edge(struct scene *scene, const struct outline *outline, const struct stroke *edge,
                      bool seen, bool other_seen, bool sharp)
{
    bool chosen = outline->body->chosen;

    if (sharp ? seen || other_seen : seen != other_seen)
        draw_line(scene, edge, chosen);
    else if (sharp && chosen)
        *LIST_ADD(scene->arena, &scene->strokes->of) =
            (struct stroke){STROKE_BEHIND, edge->body, edge->from, edge->to};
}

/* Round the band, round the moved band, and between the two. */
static void draw_edges(struct scene *scene, const struct outline *outline)
{
    const struct spot *way = &outline->body->way;
    size_t count = outline->count;

    for (int end = 0; end < 2; end++) {
        for (size_t k = 0; k < count; k++) {
            struct stroke edge = {STROKE_EDGE, outline->index,
                                  spot_on(corner_at(outline, k), way, end),
                                  spot_on(corner_at(outline, k + 1), way, end)};
            draw_edge(scene, outline, &edge, outline->seen[k], outline->seen_ends[end], true);
        }
    }
    for (size_t k = 0; k < count; k++) {
        const struct spot *from = corner_at(outline, k);
        struct stroke edge = {STROKE_EDGE, outline->index, *from, spot_on(from, way, 1)};

        draw_edge(scene, outline, &edge, outline->seen[k], outline->seen[(k + count - 1) % count],
                  outline->corners[k].sharp);
    }
}

/* ---- hatching ---- */

static double slope_at(const struct spot *spot)
{
    return spot->at[RIGHT] + spot->at[UP];
}

static int compare_right(const void *a, const void *b)
{
    double left = ((const struct spot *)a)->at[RIGHT];
    double right = ((const struct spot *)b)->at[RIGHT];

    return (left > right) - (left < right);
}

/* Where the line "right + up = level" crosses the rim of a face, from the left. */
static size_t crossings(const struct spot *rim, size_t count, double level, struct spot *ret_at)
{
    size_t found = 0;

    for (size_t k = 0; k < count; k++) {
        const struct spot *to = &rim[(k + 1) % count];
        double from_slope = slope_at(&rim[k]);
        double to_slope = slope_at(to);

        if ((from_slope < level) != (to_slope < level)) {
            struct spot way = spot_way(&rim[k], to);
            ret_at[found++] =
                spot_on(&rim[k], &way, (level - from_slope) / (to_slope - from_slope));
        }
    }
    qsort(ret_at, found, sizeof *ret_at, compare_right);
    assert(found % 2 == 0);
    return found;
}

static void hatch_face(struct scene *scene, size_t body, const struct spot *rim, size_t count)
{
    struct spot *at = ARENA_MANY(scene->arena, struct spot, count);
    double low = HUGE_VAL;
    double high = -HUGE_VAL;

    for (size_t k = 0; k < count; k++) {
        low = fmin(low, slope_at(&rim[k]));
        high = fmax(high, slope_at(&rim[k]));
    }
    for (long step = (long)ceil(low / scene->hatch); (double)step * scene->hatch < high; step++) {
        size_t found = crossings(rim, count, (double)step * scene->hatch, at);

        for (size_t i = 0; i + 1 < found; i += 2)
            draw_line(scene, &(struct stroke){STROKE_HATCH, body, at[i], at[i + 1]}, false);
    }
}

static void hatch_body(struct scene *scene, const struct outline *outline)
{
    const struct spot *way = &outline->body->way;
    struct spot *rim = ARENA_MANY(scene->arena, struct spot, outline->count);

    for (int end = 0; end < 2; end++) {
        for (size_t k = 0; k < outline->count; k++)
            rim[k] = spot_on(corner_at(outline, k), way, end);
        if (outline->seen_ends[end])
            hatch_face(scene, outline->index, rim, outline->count);
    }
    for (size_t k = 0; k < outline->count; k++) {
        struct spot face[] = {*corner_at(outline, k), *corner_at(outline, k + 1),
                              spot_on(corner_at(outline, k + 1), way, 1),
                              spot_on(corner_at(outline, k), way, 1)};
        if (outline->seen[k])
            hatch_face(scene, outline->index, face, 4);
    }
}

/* ---- all of them ---- */

/* A sheet has no faces that look anywhere: its edges are drawn as they are. */
static void see_all(struct outline *outline)
{
    for (size_t k = 0; k < outline->count; k++) {
        outline->seen[k] = true;
        outline->corners[k].sharp = true;
    }
}

static void draw_body(struct scene *scene, const struct body *body, size_t index)
{
    struct outline outline = outline_of(body, index, scene->arena);
    bool flat = body_is_flat(body);

    if (flat)
        see_all(&outline);
    draw_edges(scene, &outline);
    if (body->chosen && scene->hatch > 0 && !flat)
        hatch_body(scene, &outline);
}

void hidden_strokes(struct strokes *strokes, const struct body *bodies, size_t count, double hatch,
                    struct arena *arena)
{
    struct scene scene = {.strokes = strokes, .hatch = hatch, .arena = arena};

    *strokes = (struct strokes){{{0}}};
    for (size_t i = 0; i < count; i++)
        parts_add(&scene.parts, &bodies[i], arena);
    scene.stamps = ARENA_MANY(arena, size_t, scene.parts.of.count);
    make_grid(&scene);
    for (size_t i = 0; i < count; i++)
        draw_body(&scene, &bodies[i], i);
}
