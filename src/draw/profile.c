/*
 * The outline goes on level beyond the ends of the face, for what lies on the sides beside it. A
 * block's profile follows the outline from stretch to stretch; where it passes the block's top or
 * bottom within a stretch, there is a place of its own.
 */
#include "draw/profile.h"

#include "plan/curve.h"
#include "plan/geometry.h"
#include "plan/slices.h"

#include <assert.h>
#include <math.h>

#define AS_GOOD_AS (2 * LENGTH_MM) /* what a chord may differ from an outline */

struct crown crown_of(const struct plan *plan, const struct box *box, struct arena *arena)
{
    struct crown crown = {.box = box};
    struct slice panels = plan_panels_of(plan, box->key);

    if (!curve_has(box, box->main_side))
        return crown;
    crown.chain = chain_of(plan->facts, box, AS_GOOD_AS, arena);
    for (size_t i = panels.from; i < panels.to; i++)
        if (curve_under(box, plan->panels.at[i].side))
            crown.over = length_larger(crown.over, plan->panels.at[i].thickness);
    return crown;
}

/* ---- places ---- */

struct shaping {
    struct profile profile;
    struct area area; /* the block, on the main face */
    struct arena *arena;
};

static bool is_level(const struct profile_place *a, const struct profile_place *b)
{
    return a->low.v == b->low.v && a->high.v == b->high.v;
}

/* One over the other. Where both rims go on level, the place before is none. */
static void add_place(struct shaping *in, int64_t u, int64_t low, int64_t high, bool corner)
{
    struct profile_place place = {{u, low, false}, {u, high, corner}};
    struct profile_place *places = in->profile.of.at;
    size_t count = in->profile.of.count;

    assert(low <= high);
    if (count && places[count - 1].low.u == u && is_level(&places[count - 1], &place)) {
        places[count - 1].high.corner |= corner;
        return;
    }
    if (count >= 2 && is_level(&places[count - 1], &place) && is_level(&places[count - 2], &place))
        in->profile.of.count--;
    *LIST_ADD(in->arena, &in->profile.of) = place;
}

/* Height of the line from a to b over u. */
static int64_t height_on(const struct chain_place *a, const struct chain_place *b, int64_t u)
{
    return a->u == b->u ? b->v : a->v + whole_divide_even((b->v - a->v) * (u - a->u), b->u - a->u);
}

static struct chain_place place_on(const struct chain_place *a, const struct chain_place *b,
                                   int64_t u)
{
    return u == a->u ? *a : u == b->u ? *b : (struct chain_place){u, height_on(a, b, u), false};
}

/* ---- the outline over a block ---- */

typedef void stretch_work(struct shaping *in, const struct chain_place *from,
                          const struct chain_place *to);

static void follow(struct shaping *in, const struct chain_place *a, const struct chain_place *b,
                   stretch_work *work)
{
    struct chain_place from, to;

    if (b->u < in->area.u0 || a->u > in->area.u1)
        return;
    from = place_on(a, b, length_larger(a->u, in->area.u0));
    to = place_on(a, b, length_smaller(b->u, in->area.u1));
    work(in, &from, &to);
}

/* All stretches of the outline that a block lies under, `down` further down. */
static void walk(struct shaping *in, const struct chain *chain, int64_t down, stretch_work *work)
{
    struct chain_place before = chain->of.at[0];
    struct chain_place end = chain->of.at[chain->of.count - 1];

    before.u = length_smaller(before.u, in->area.u0);
    before.v -= down;
    for (size_t i = 0; i < chain->of.count; i++) {
        struct chain_place next = chain->of.at[i];

        next.v -= down;
        follow(in, &before, &next, work);
        before = next;
    }
    end.u = length_larger(end.u, in->area.u1);
    end.v -= down;
    follow(in, &before, &end, work);
}

/* ---- cut along it ---- */

static void add_under(struct shaping *in, const struct chain_place *place, bool crosses)
{
    int64_t high = length_within(place->v, in->area.v0, in->area.v1);

    add_place(in, place->u, in->area.v0, high, crosses || (place->corner && high == place->v));
}

/* Where a stretch passes a height strictly between its ends. */
static void add_crossing(struct shaping *in, const struct chain_place *from,
                         const struct chain_place *to, int64_t v)
{
    const struct chain_place *low = from->v < to->v ? from : to;
    const struct chain_place *high = low == from ? to : from;
    struct chain_place at = {0, v, true};

    if (v <= low->v || v >= high->v || from->u == to->u)
        return;
    at.u = low->u + whole_divide_even((high->u - low->u) * (v - low->v), high->v - low->v);
    add_under(in, &at, true);
}

static void cut_stretch(struct shaping *in, const struct chain_place *from,
                        const struct chain_place *to)
{
    bool rises = to->v > from->v;

    add_under(in, from, false);
    add_crossing(in, from, to, rises ? in->area.v0 : in->area.v1);
    add_crossing(in, from, to, rises ? in->area.v1 : in->area.v0);
    add_under(in, to, false);
}

static bool is_left(const struct profile_place *place)
{
    return place->low.v < place->high.v;
}

/* Places at an end over which nothing is left, but the last of them. */
static void drop_empty_ends(struct profile *profile)
{
    struct profile_place *places = profile->of.at;
    size_t from = 0;
    size_t count = profile->of.count;

    while (count >= 2 && !is_left(&places[count - 1]) && !is_left(&places[count - 2]))
        count--;
    while (from + 1 < count && !is_left(&places[from]) && !is_left(&places[from + 1]))
        from++;
    for (size_t i = from; i < count; i++)
        places[i - from] = places[i];
    profile->of.count = count - from < 2 ? 0 : count - from;
}

static struct profile rectangle(struct shaping *in)
{
    add_place(in, in->area.u0, in->area.v0, in->area.v1, true);
    add_place(in, in->area.u1, in->area.v0, in->area.v1, true);
    return in->profile;
}

struct profile profile_cut(const struct crown *crown, const struct solid *solid,
                           struct arena *arena)
{
    struct shaping in = {.area = solid_on_side(solid, crown->box->main_side), .arena = arena};
    struct area face = face_area(crown->box, crown->box->main_side);
    int64_t down = length_within(face.v1 - in.area.v1, 0, crown->over);

    if (crown->chain.of.count == 0)
        return rectangle(&in);
    walk(&in, &crown->chain, down, cut_stretch);
    drop_empty_ends(&in.profile);
    return in.profile;
}

/* ---- bent over it ---- */

static void bend_stretch(struct shaping *in, const struct chain_place *from,
                         const struct chain_place *to)
{
    struct profile_place *places = in->profile.of.at;
    size_t count = in->profile.of.count;

    if (count == 0 || places[count - 1].low.u != from->u || places[count - 1].low.v != from->v)
        *LIST_ADD(in->arena, &in->profile.of) = (struct profile_place){*from, *from};
    if (to->u != from->u || to->v != from->v)
        *LIST_ADD(in->arena, &in->profile.of) = (struct profile_place){*to, *to};
}

struct heading {
    double u, v; /* of length 1 */
};

/* Square to the line between two places, to its upper side. */
static struct heading square_to(const struct chain_place *from, const struct chain_place *to)
{
    double u = (double)(to->u - from->u);
    double v = (double)(to->v - from->v);
    double length = hypot(u, v);

    return (struct heading){-v / length, u / length};
}

#define SHARPEST 0.5 /* a corner sharper than this stands out no farther */

/* A place as far over an outline as two lines are that lie so far over its stretches. */
static struct chain_place over(const struct chain_place *at, const struct heading *come,
                               const struct heading *go, int64_t by)
{
    double part = (double)by / fmax(SHARPEST, 1 + come->u * go->u + come->v * go->v);

    return (struct chain_place){at->u + llround(part * (come->u + go->u)),
                                at->v + llround(part * (come->v + go->v)), at->corner};
}

/* From the outline itself to what lies `from` and `to` over it; where that would turn back in a
 * narrow place it goes straight up. */
static void lay_over(struct profile *profile, int64_t from, int64_t to)
{
    struct profile_place *places = profile->of.at;
    struct heading come = {0, 0};

    for (size_t i = 0; i < profile->of.count; i++) {
        bool last = i + 1 == profile->of.count;
        struct chain_place at = places[i].low;
        struct heading go = last ? come : square_to(&at, &places[i + 1].low);

        come = i == 0 ? go : come;
        places[i] = (struct profile_place){over(&at, &come, &go, from), over(&at, &come, &go, to)};
        if (i > 0) {
            places[i].low.u = length_larger(places[i].low.u, places[i - 1].low.u);
            places[i].high.u = length_larger(places[i].high.u, places[i - 1].high.u);
        }
        come = go;
    }
}

struct profile profile_bent(const struct crown *crown, const struct solid *solid,
                            struct arena *arena)
{
    struct shaping in = {.area = solid_on_side(solid, crown->box->main_side), .arena = arena};
    struct area face = face_area(crown->box, crown->box->main_side);

    if (crown->chain.of.count == 0)
        return rectangle(&in);
    walk(&in, &crown->chain, 0, bend_stretch);
    assert(in.profile.of.count >= 2);
    lay_over(&in.profile, in.area.v0 - face.v1, in.area.v1 - face.v1);
    return in.profile;
}
