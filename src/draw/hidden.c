/*
 * Hidden lines, exactly.
 *
 * A brick is the meeting of three slabs. A place of an edge is hidden by a brick when going on from
 * there towards the eye leads into it. With s along the edge and t towards the eye, each slab gives
 * t a least and a greatest value that are straight in s; the brick hides the places s at which the
 * largest of the least (and of 0) stays below the smallest of the greatest. Each pair of the two is
 * one straight inequality in s, so what a brick hides of an edge is one interval, found without a
 * search. What all bricks hide is the union; the rest is drawn.
 *
 * 1  Slabs are drawn in by HIDDEN_SLACK, so that no brick hides its own faces, nor those that lie
 *    on its skin.
 * 2  An edge both of whose faces look away is not seen: it needs no test.
 * 3  A grid over the picture holds for each cell the bricks over it, so that an edge is tested
 *    against its neighbours alone; a stamp keeps a brick from being tested twice.
 */
#include "draw/hidden.h"

#include <assert.h>
#include <math.h>

#define RIGHT 0
#define UP 1
#define NEAR 2

#define GRID 24
#define LEAST_STROKE (4 * HIDDEN_SLACK)
#define LEVEL 1e-6 /* a part of a unit normal that is nothing */
#define SHORT 1e-7 /* a part of an edge that is nothing */

/* Between two planes: 0 < normal . p - from < thick. */
struct slab {
    double normal[3];
    double from, thick;
};

struct shape {
    struct slab slabs[3];
    double low[2], high[2]; /* on the picture */
    double nearest, farthest;
    bool flat; /* hides nothing */
};

struct range {
    double from, to;
};

/* c + m s */
struct straight {
    double c, m;
};

struct scene {
    struct strokes *strokes;
    const struct brick *bricks;
    struct shape *shapes;
    size_t count;
    double low[2], cell[2]; /* of the grid */
    size_t *starts;         /* GRID * GRID + 1, into held */
    size_t *held;
    size_t *stamps; /* number of the last edge that was tested against the brick */
    size_t stamp;
    LIST_OF(struct range) hidden; /* of the edge that is drawn */
    struct arena *arena;
};

/* ---- vectors ---- */

static double dot(const double a[3], const double b[3])
{
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static void cross(const double a[3], const double b[3], double ret[3])
{
    ret[0] = a[1] * b[2] - a[2] * b[1];
    ret[1] = a[2] * b[0] - a[0] * b[2];
    ret[2] = a[0] * b[1] - a[1] * b[0];
}

static struct spot spot_on(const struct spot *from, const struct spot *way, double part)
{
    struct spot on;

    for (int i = 0; i < 3; i++)
        on.at[i] = from->at[i] + part * way->at[i];
    return on;
}

/* ---- shapes ---- */

/* The slab across edge `k`; false where the other two span nothing. */
static bool set_slab(struct slab *slab, const struct brick *brick, int k)
{
    const double *along = brick->edges[k].at;
    double length;

    cross(brick->edges[(k + 1) % 3].at, brick->edges[(k + 2) % 3].at, slab->normal);
    length = sqrt(dot(slab->normal, slab->normal));
    if (length <= 0)
        return false;
    if (dot(slab->normal, along) < 0)
        length = -length;
    for (int i = 0; i < 3; i++)
        slab->normal[i] /= length;
    slab->from = dot(slab->normal, brick->corner.at);
    slab->thick = dot(slab->normal, along);
    return true;
}

/* How far the brick reaches along one of the eye's axes. */
static struct range reach_of(const struct brick *brick, int axis)
{
    assert(axis >= 0 && axis < 3);

    struct range range = {brick->corner.at[axis], brick->corner.at[axis]};

    for (int k = 0; k < 3; k++) {
        double step = brick->edges[k].at[axis];
        range.from += step < 0 ? step : 0;
        range.to += step > 0 ? step : 0;
    }
    return range;
}

static struct shape shape_of(const struct brick *brick)
{
    struct shape shape = {.flat = false};
    struct range near = reach_of(brick, NEAR);

    for (int axis = RIGHT; axis <= UP; axis++) {
        struct range range = reach_of(brick, axis);
        shape.low[axis] = range.from;
        shape.high[axis] = range.to;
    }
    shape.nearest = near.to;
    shape.farthest = near.from;
    for (int k = 0; k < 3; k++) {
        shape.flat |= !set_slab(&shape.slabs[k], brick, k);
        shape.flat |= shape.slabs[k].thick <= 2 * HIDDEN_SLACK;
    }
    return shape;
}

/* Whether the face of a brick across edge `k`, on its far (1) or near end of it, looks at us. */
static bool is_seen(const struct shape *shape, int k, int end)
{
    double towards = shape->slabs[k].normal[NEAR];

    return end ? towards > LEVEL : towards < -LEVEL;
}

/* ---- the grid ---- */

static void set_grid(struct scene *scene)
{
    double high[2] = {-HUGE_VAL, -HUGE_VAL};

    for (int axis = RIGHT; axis <= UP; axis++) {
        scene->low[axis] = HUGE_VAL;
        for (size_t i = 0; i < scene->count; i++) {
            scene->low[axis] = fmin(scene->low[axis], scene->shapes[i].low[axis]);
            high[axis] = fmax(high[axis], scene->shapes[i].high[axis]);
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

/* Calls for each cell of each brick: first to count, then to fill in. */
static void each_cell(struct scene *scene, void (*visit)(struct scene *, size_t cell, size_t brick))
{
    for (size_t i = 0; i < scene->count; i++) {
        struct cells cells = cells_over(scene, scene->shapes[i].low, scene->shapes[i].high);

        for (int y = cells.from[UP]; y <= cells.to[UP] && !scene->shapes[i].flat; y++)
            for (int x = cells.from[RIGHT]; x <= cells.to[RIGHT]; x++)
                visit(scene, cell_index(y, x), i);
    }
}

static void count_in(struct scene *scene, size_t cell, size_t brick)
{
    (void)brick;
    scene->starts[cell + 1]++;
}

/* From the end of each cell's room down to its beginning. */
static void fill_in(struct scene *scene, size_t cell, size_t brick)
{
    scene->held[--scene->starts[cell + 1]] = brick;
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

/* ---- what one brick hides of one edge ---- */

/* Leaves of the range the part at which line <= 0; false when nothing is left. */
static bool trim(struct range *range, struct straight line)
{
    if (line.m > 0)
        range->to = fmin(range->to, -line.c / line.m);
    else if (line.m < 0)
        range->from = fmax(range->from, -line.c / line.m);
    else if (line.c > 0)
        return false;
    return range->to - range->from > SHORT;
}

static struct straight less(struct straight a, struct straight b)
{
    return (struct straight){a.c - b.c, a.m - b.m};
}

/* Adds what a slab says of t: a least and a greatest value, or of s alone where the slab runs
 * towards the eye. False when the slab is not met at all. */
static bool slab_bounds(const struct slab *slab, const struct stroke *edge, const struct spot *way,
                        struct straight *ret_least, struct straight *ret_greatest,
                        struct range *range, bool *ret_bounds)
{
    double towards = slab->normal[NEAR];
    struct straight at = {dot(slab->normal, edge->from.at) - slab->from,
                          dot(slab->normal, way->at)};
    struct straight skin = {HIDDEN_SLACK - at.c, -at.m};
    struct straight far_skin = {slab->thick - HIDDEN_SLACK - at.c, -at.m};

    *ret_bounds = fabs(towards) > LEVEL;
    if (!*ret_bounds)
        return trim(range, skin) && trim(range, (struct straight){-far_skin.c, -far_skin.m});
    *ret_least = towards > 0 ? skin : far_skin;
    *ret_greatest = towards > 0 ? far_skin : skin;
    *ret_least = (struct straight){ret_least->c / towards, ret_least->m / towards};
    *ret_greatest = (struct straight){ret_greatest->c / towards, ret_greatest->m / towards};
    return true;
}

static bool hides(const struct shape *shape, const struct stroke *edge, const struct spot *way,
                  struct range *ret_range)
{
    struct straight least[4] = {{0, 0}};
    struct straight greatest[3];
    struct range range = {0, 1};
    int leasts = 1;
    int greatests = 0;

    for (int k = 0; k < 3; k++) {
        bool bounds;
        if (!slab_bounds(&shape->slabs[k], edge, way, &least[leasts], &greatest[greatests], &range,
                         &bounds))
            return false;
        leasts += bounds;
        greatests += bounds;
    }
    assert(greatests > 0); /* three normals at right angles do not all lie across the view */
    for (int i = 0; i < leasts; i++) {
        for (int k = 0; k < greatests; k++) {
            if (!trim(&range, less(least[i], greatest[k])))
                return false;
        }
    }
    *ret_range = range;
    return true;
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

static void test_cell(struct scene *scene, size_t cell, const struct stroke *edge,
                      const struct spot *way)
{
    double farthest = fmin(edge->from.at[NEAR], edge->to.at[NEAR]);

    for (size_t i = scene->starts[cell]; i < scene->starts[cell + 1]; i++) {
        size_t brick = scene->held[i];
        const struct shape *shape = &scene->shapes[brick];
        struct range range;

        if (scene->stamps[brick] == scene->stamp)
            continue;
        scene->stamps[brick] = scene->stamp;
        if (shape->nearest > farthest && hides(shape, edge, way, &range))
            add_hidden(scene, range);
    }
}

static void find_hidden(struct scene *scene, const struct stroke *edge, const struct spot *way)
{
    double low[2];
    double high[2];

    for (int axis = RIGHT; axis <= UP; axis++) {
        low[axis] = fmin(edge->from.at[axis], edge->to.at[axis]);
        high[axis] = fmax(edge->from.at[axis], edge->to.at[axis]);
    }
    struct cells cells = cells_over(scene, low, high);
    scene->hidden.count = 0;
    scene->stamp++;
    for (int y = cells.from[UP]; y <= cells.to[UP]; y++)
        for (int x = cells.from[RIGHT]; x <= cells.to[RIGHT]; x++)
            test_cell(scene, cell_index(y, x), edge, way);
}

/* What shows at a brick's rim for its slack alone is nothing. */
static void add_stroke(struct scene *scene, const struct stroke *edge, const struct spot *way,
                       enum stroke_kind kind, struct range part)
{
    double length = (part.to - part.from) * hypot(way->at[RIGHT], way->at[UP]);

    if (length > LEAST_STROKE)
        *LIST_ADD(scene->arena, &scene->strokes->of) =
            (struct stroke){kind, edge->brick, spot_on(&edge->from, way, part.from),
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

/* ---- edges and faces of a brick ---- */

static struct spot corner_of(const struct brick *brick, int a, int at_a, int b, int at_b)
{
    struct spot corner = spot_on(&brick->corner, &brick->edges[a], at_a);

    return spot_on(&corner, &brick->edges[b], at_b);
}

/* The four edges along `k`. */
static void draw_edges(struct scene *scene, size_t index, int k)
{
    const struct brick *brick = &scene->bricks[index];
    const struct shape *shape = &scene->shapes[index];
    int a = (k + 1) % 3;
    int b = (k + 2) % 3;

    for (int i = 0; i < 4; i++) {
        int at_a = i & 1;
        int at_b = i >> 1;
        struct spot from = corner_of(brick, a, at_a, b, at_b);
        struct stroke edge = {STROKE_EDGE, index, from, spot_on(&from, &brick->edges[k], 1)};

        if (is_seen(shape, a, at_a) || is_seen(shape, b, at_b))
            draw_line(scene, &edge, brick->chosen);
        else if (brick->chosen)
            *LIST_ADD(scene->arena, &scene->strokes->of) =
                (struct stroke){STROKE_BEHIND, index, edge.from, edge.to};
    }
}

/* A sheet has no faces that look anywhere: its edges are drawn as they are. */
static void draw_flat(struct scene *scene, size_t index)
{
    const struct brick *brick = &scene->bricks[index];

    for (int k = 0; k < 3; k++) {
        for (int i = 0; i < 4; i++) {
            struct spot from = corner_of(brick, (k + 1) % 3, i & 1, (k + 2) % 3, i >> 1);
            struct stroke edge = {STROKE_EDGE, index, from, spot_on(&from, &brick->edges[k], 1)};
            draw_line(scene, &edge, brick->chosen);
        }
    }
}

/* A face: a corner and two edges. */
struct plate {
    struct spot corner;
    struct spot sides[2];
};

static double slope_at(const struct spot *spot)
{
    return spot->at[RIGHT] + spot->at[UP];
}

/* Where the line "right + up = level" crosses the plate's rim: 0, 1 or 2 places. */
static int crossings(const struct plate *plate, double level, struct spot ret_at[2])
{
    int found = 0;

    for (int side = 0; side < 4 && found < 2; side++) {
        int along = side & 1;
        struct spot from = spot_on(&plate->corner, &plate->sides[!along], side >> 1);
        double rise = slope_at(&plate->sides[along]);
        double part = rise != 0 ? (level - slope_at(&from)) / rise : -1;

        if (part >= 0 && part < 1)
            ret_at[found++] = spot_on(&from, &plate->sides[along], part);
    }
    return found;
}

static void hatch_plate(struct scene *scene, size_t index, const struct plate *plate, double hatch)
{
    double low = slope_at(&plate->corner);
    double high = low;

    for (int i = 0; i < 2; i++) {
        double rise = slope_at(&plate->sides[i]);
        low += rise < 0 ? rise : 0;
        high += rise > 0 ? rise : 0;
    }
    for (long step = (long)ceil(low / hatch); (double)step * hatch < high; step++) {
        struct spot at[2];
        if (crossings(plate, (double)step * hatch, at) == 2)
            draw_line(scene, &(struct stroke){STROKE_HATCH, index, at[0], at[1]}, false);
    }
}

static void hatch_brick(struct scene *scene, size_t index, double hatch)
{
    const struct brick *brick = &scene->bricks[index];

    for (int k = 0; k < 3; k++) {
        for (int end = 0; end < 2; end++) {
            struct plate plate = {spot_on(&brick->corner, &brick->edges[k], end),
                                  {brick->edges[(k + 1) % 3], brick->edges[(k + 2) % 3]}};
            if (is_seen(&scene->shapes[index], k, end))
                hatch_plate(scene, index, &plate, hatch);
        }
    }
}

void hidden_strokes(struct strokes *strokes, const struct brick *bricks, size_t count, double hatch,
                    struct arena *arena)
{
    struct scene scene = {.strokes = strokes, .bricks = bricks, .count = count, .arena = arena};

    *strokes = (struct strokes){{{0}}};
    scene.shapes = ARENA_MANY(arena, struct shape, count);
    scene.stamps = ARENA_MANY(arena, size_t, count);
    for (size_t i = 0; i < count; i++)
        scene.shapes[i] = shape_of(&bricks[i]);
    if (count == 0)
        return;
    make_grid(&scene);
    for (size_t i = 0; i < count; i++) {
        if (scene.shapes[i].flat)
            draw_flat(&scene, i);
        for (int k = 0; k < 3 && !scene.shapes[i].flat; k++)
            draw_edges(&scene, i, k);
        if (bricks[i].chosen && hatch > 0 && !scene.shapes[i].flat)
            hatch_brick(&scene, i, hatch);
    }
}
