/*
 * Convex parts.
 *
 * A part is a run of a band's stations whose rims nowhere turn inward, and is the meeting of half
 * spaces: one for each stretch of its rims, for its two ends, and for the band's own two faces. A
 * place of a line is hidden by it when going on from there towards the eye leads into it. With s
 * along the line and t towards the eye, each half space gives t a least or a greatest value that is
 * straight in s; the part hides the places s at which the largest of the least (and of 0) stays
 * below the smallest of the greatest. Each pair of the two is one straight inequality in s, so what
 * a part hides is one interval, found without a search.
 *
 * 1  Planes of the skin are drawn in by HIDDEN_SLACK, so that no body hides its own faces, nor
 *    those that lie on its skin. Where a part ends and the next begins there is no skin: there each
 *    reaches into the other, so that nothing shows between them.
 *
 * 2  Where a rim steps the higher side is skin, and the lower part reaches into the higher one.
 *
 * 3  A run is convex when none of its corners stands out of any of its planes by more than the
 *    slack: places that were rounded turn a little inward.
 */
#include "draw/convex.h"

#include <assert.h>
#include <math.h>

#define SHORT 1e-7    /* a part of an edge that is nothing */
#define ONE_PLACE 1.0 /* as near as that two places of a rim are one */
#define REACH (2 * HIDDEN_SLACK)

/* c + m s */
struct straight {
    double c, m;
};

/* ---- vectors ---- */

double spot_dot(const double a[3], const double b[3])
{
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

void spot_cross(const double a[3], const double b[3], double ret[3])
{
    ret[0] = a[1] * b[2] - a[2] * b[1];
    ret[1] = a[2] * b[0] - a[0] * b[2];
    ret[2] = a[0] * b[1] - a[1] * b[0];
}

double spot_length(const double a[3])
{
    return sqrt(spot_dot(a, a));
}

struct spot spot_on(const struct spot *from, const struct spot *way, double part)
{
    struct spot on;

    for (int i = 0; i < 3; i++)
        on.at[i] = from->at[i] + part * way->at[i];
    return on;
}

struct spot spot_way(const struct spot *from, const struct spot *to)
{
    return spot_on(to, from, -1);
}

/* ---- cells: what lies between two stations ---- */

/* Twice its area, square to it. */
static void cell_normal(const struct station *cell, double ret_normal[3])
{
    struct spot rising = spot_way(&cell[0].low, &cell[1].high);
    struct spot falling = spot_way(&cell[1].low, &cell[0].high);

    spot_cross(rising.at, falling.at, ret_normal);
}

static double height_of(const struct station *station)
{
    struct spot up = spot_way(&station->low, &station->high);

    return spot_length(up.at);
}

/* A step of the rims, or where they meet. */
static bool is_empty(const struct station *cell)
{
    double normal[3];

    cell_normal(cell, normal);
    return spot_length(normal) <= 2 * ONE_PLACE * (height_of(&cell[0]) + height_of(&cell[1]));
}

void body_normal(const struct body *body, double ret_normal[3])
{
    assert(body->count >= 2);
    for (int i = 0; i < 3; i++)
        ret_normal[i] = 0;
    for (size_t k = 0; k + 1 < body->count; k++) {
        double cell[3];

        cell_normal(&body->stations[k], cell);
        for (int i = 0; i < 3; i++)
            ret_normal[i] += cell[i] / 2;
    }
}

bool body_is_flat(const struct body *body)
{
    const struct station *last = &body->stations[body->count - 1];
    struct spot along = spot_way(&body->stations[0].low, &last->low);
    double normal[3];

    body_normal(body, normal);
    double area = spot_length(normal);
    double wide = spot_length(along.at);
    double high = 0;
    for (size_t i = 0; i < body->count; i++)
        high = fmax(high, height_of(&body->stations[i]));
    return area <= REACH * fmax(1, fmax(wide, high)) ||
           fabs(spot_dot(normal, body->way.at)) <= REACH * area;
}

/* ---- planes ---- */

/* Along a side of the band, as one goes round it, and the body's way. False where the side is a
 * place. */
static bool plane_along(struct plane *plane, const struct spot *from, const struct spot *to,
                        const struct body *body, const double normal[3])
{
    struct spot side = spot_way(from, to);
    double out[3];
    double length;

    if (spot_length(side.at) < ONE_PLACE)
        return false;
    spot_cross(side.at, normal, out);
    spot_cross(side.at, body->way.at, plane->normal);
    length = spot_length(plane->normal);
    if (spot_dot(plane->normal, out) < 0)
        length = -length;
    if (length == 0)
        return false;
    for (int i = 0; i < 3; i++)
        plane->normal[i] /= length;
    plane->from = spot_dot(plane->normal, from->at);
    return true;
}

/* A part while it grows: stations from..to, the planes of its rims. */
struct growing {
    const struct body *body;
    double normal[3];
    size_t from, to;
    struct plane planes[PART_PLANES];
    size_t count;
};

static bool holds(const struct plane *plane, const struct spot *place)
{
    return spot_dot(plane->normal, place->at) <= plane->from + HIDDEN_SLACK;
}

static bool holds_station(const struct plane *plane, const struct station *station)
{
    return holds(plane, &station->low) && holds(plane, &station->high);
}

/* The planes of the two rims beyond a station. */
static size_t rim_planes(const struct growing *growing, size_t at, struct plane ret_planes[2])
{
    const struct station *cell = &growing->body->stations[at];
    size_t count = 0;

    count +=
        plane_along(&ret_planes[count], &cell[0].low, &cell[1].low, growing->body, growing->normal);
    count += plane_along(&ret_planes[count], &cell[1].high, &cell[0].high, growing->body,
                         growing->normal);
    return count;
}

/* Takes in the next cell, where the part stays convex by it. */
static bool grow(struct growing *growing)
{
    const struct station *stations = growing->body->stations;
    struct plane rims[2];
    size_t count;

    if (growing->to + 1 >= growing->body->count || is_empty(&stations[growing->to]) ||
        growing->count + 6 > PART_PLANES)
        return false;
    count = rim_planes(growing, growing->to, rims);
    for (size_t i = 0; i < count; i++)
        for (size_t k = growing->from; k <= growing->to; k++)
            if (!holds_station(&rims[i], &stations[k]))
                return false;
    for (size_t i = 0; i < growing->count; i++)
        if (!holds_station(&growing->planes[i], &stations[growing->to + 1]))
            return false;
    for (size_t i = 0; i < count; i++)
        growing->planes[growing->count++] = rims[i];
    growing->to++;
    return true;
}

/* ---- ends ---- */

/* How far the part reaches over the plane at its station `own`, whose neighbour outside is `next`
 * (NULL at the band's end). */
static double reach_over(const struct station *own, const struct station *next)
{
    if (!next || (is_empty(own < next ? own : next) && height_of(own) > height_of(next)))
        return -HIDDEN_SLACK;
    return REACH;
}

static void close_end(struct growing *growing, const struct station *own,
                      const struct station *next, bool first)
{
    struct plane *plane = &growing->planes[growing->count];

    if (!plane_along(plane, first ? &own->high : &own->low, first ? &own->low : &own->high,
                     growing->body, growing->normal))
        return;
    plane->from += reach_over(own, next);
    growing->count++;
}

/* The band's own two faces. */
static void close_faces(struct growing *growing)
{
    const struct body *body = growing->body;
    double length = spot_length(growing->normal);
    double along = spot_dot(growing->normal, body->way.at) / length;

    for (int sign = -1; sign <= 1; sign += 2) {
        struct plane *plane = &growing->planes[growing->count++];

        for (int i = 0; i < 3; i++)
            plane->normal[i] = sign * growing->normal[i] / length;
        plane->from = spot_dot(plane->normal, body->stations[0].low.at) + fmax(0, sign * along) -
                      HIDDEN_SLACK;
    }
}

static void reach_to(struct part *part, const struct spot *place)
{
    for (int axis = RIGHT; axis <= UP; axis++) {
        part->low[axis] = fmin(part->low[axis], place->at[axis]);
        part->high[axis] = fmax(part->high[axis], place->at[axis]);
    }
    part->nearest = fmax(part->nearest, place->at[NEAR]);
}

static void set_bounds(struct part *part, const struct growing *growing)
{
    part->low[RIGHT] = part->low[UP] = HUGE_VAL;
    part->high[RIGHT] = part->high[UP] = part->nearest = -HUGE_VAL;
    for (size_t i = growing->from; i <= growing->to; i++) {
        const struct station *station = &growing->body->stations[i];

        for (int end = 0; end < 2; end++) {
            struct spot low = spot_on(&station->low, &growing->body->way, end);
            struct spot high = spot_on(&station->high, &growing->body->way, end);

            reach_to(part, &low);
            reach_to(part, &high);
        }
    }
}

static struct part finish(struct growing *growing, struct arena *arena)
{
    const struct body *body = growing->body;
    const struct station *first = &body->stations[growing->from];
    const struct station *last = &body->stations[growing->to];
    struct plane *planes;
    struct part part;

    for (size_t i = 0; i < growing->count; i++)
        growing->planes[i].from -= HIDDEN_SLACK;
    close_end(growing, first, growing->from > 0 ? first - 1 : NULL, true);
    close_end(growing, last, growing->to + 1 < body->count ? last + 1 : NULL, false);
    close_faces(growing);
    assert(growing->count <= PART_PLANES);
    planes = ARENA_MANY(arena, struct plane, growing->count);
    for (size_t i = 0; i < growing->count; i++)
        planes[i] = growing->planes[i];
    part = (struct part){.planes = planes, .count = growing->count};
    set_bounds(&part, growing);
    return part;
}

void parts_add(struct parts *parts, const struct body *body, struct arena *arena)
{
    struct growing growing = {.body = body};

    if (body_is_flat(body))
        return;
    body_normal(body, growing.normal);
    while (growing.to + 1 < body->count) {
        growing.from = growing.to;
        growing.count = 0;
        while (grow(&growing))
            ;
        if (growing.to > growing.from)
            *LIST_ADD(arena, &parts->of) = finish(&growing, arena);
        else
            growing.to++; /* nothing lies there */
    }
}

/* ---- what one part hides of one line ---- */

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

bool part_hides(const struct part *part, const struct spot *from, const struct spot *way,
                struct range *ret_range)
{
    struct straight least[PART_PLANES + 1] = {{0, 0}};
    struct straight greatest[PART_PLANES];
    struct range range = {0, 1};
    size_t leasts = 1;
    size_t greatests = 0;

    for (size_t k = 0; k < part->count; k++) {
        const struct plane *plane = &part->planes[k];
        double towards = plane->normal[NEAR];
        struct straight out = {spot_dot(plane->normal, from->at) - plane->from,
                               spot_dot(plane->normal, way->at)};

        if (fabs(towards) <= LEVEL) {
            if (!trim(&range, out))
                return false;
            continue;
        }
        *(towards > 0 ? &greatest[greatests++] : &least[leasts++]) =
            (struct straight){-out.c / towards, -out.m / towards};
    }
    assert(greatests > 0); /* a body that is closed has a side towards the eye */
    for (size_t i = 0; i < leasts; i++) {
        for (size_t k = 0; k < greatests; k++) {
            if (!trim(&range, less(least[i], greatest[k])))
                return false;
        }
    }
    *ret_range = range;
    return true;
}
