/*
 * A crate: a ladder in front, one behind, and crosses from one to the other.
 *
 * Stations divide the width evenly, no wider than what lies on top can span. At each an upright
 * stands in both ladders with the crosses beside it, touching: the upright's screws run up and down
 * through the rails, a cross's from front to back, and on one spot they would meet. At the two ends
 * the cross lies flush with the end, so that an end panel has wood along its top and bottom, and
 * the upright stands one stick in. Where uprights run through they stand at the ends, and the
 * crosses lie clear of the screws that hold the rails.
 *
 * Every upright seam between panels is a station, and the bays between are divided evenly: its
 * upright carries both panels of a front or a back; under a top or over a bottom two crosses meet
 * at the seam, one for each panel, clear of the upright's screws by half a stick.
 *
 * Under an outline of its front or back that is no rectangle it ends at the lowest place of that,
 * and carries a crown (frame_crown.c). Posts of the crown stand under the seams of what is bent
 * over it, so that no upright may end at the other side of the rail there: the station is set off.
 */
#include "plan/ladder.h"

#include "plan/curve.h"
#include "plan/slices.h"

#include <assert.h>

struct station {
    int64_t x;                        /* its middle; of an end, the end */
    bool seam_on_top, seam_at_bottom; /* of one that lies on the crosses */
};

struct crate {
    struct framing *framing;
    int64_t upright;          /* what an upright shows */
    int64_t rail;             /* height of a rail */
    int64_t ladder;           /* depth of a ladder */
    int64_t cross_x, cross_z; /* of a cross */
    struct station *at;
    int64_t stations; /* ends included */
    bool rails_through;
};

/* Stations without a bottom cross in a row, at most. */
#define BARE_STATIONS 2

/* ---- what lies on top ---- */

static bool lies_on_top(const struct join *join, int64_t box, int64_t *ret_other)
{
    if (join->target != TARGET_BOX)
        return false;
    if (join->box_a == box && join->side_a == SIDE_TOP && join->side_b == SIDE_BOTTOM) {
        *ret_other = join->box_b;
        return true;
    }
    if (join->box_b == box && join->side_b == SIDE_TOP && join->side_a == SIDE_BOTTOM) {
        *ret_other = join->box_a;
        return true;
    }
    return false;
}

/* The span of a board's panels, along whichever face they lie. */
static int64_t board_span(const struct framing *framing, int64_t key)
{
    const struct box *board = MODEL_FIND(framing->planning->model, box, key);
    struct framing other = *framing;
    int64_t span = INT64_MAX;

    if (!board || board->frame != FRAME_BOARD)
        return span;
    other.box = board;
    for (int64_t side = SIDE_TOP; side <= SIDE_BOTTOM; side++) {
        struct area face = face_area(board, side);

        span = length_smaller(span, framing_span(&other, side, &face));
    }
    return span;
}

/* Centre to centre of stations at most. */
static int64_t station_span(const struct framing *framing)
{
    const struct model *model = framing->planning->model;
    struct area face = face_area(framing->box, SIDE_TOP);
    struct area main = face_area(framing->box, framing->box->main_side);
    int64_t span = framing_span(framing, SIDE_TOP, &face);
    int64_t other;

    if (framing->lies != AXIS_Y)
        span = length_smaller(span, framing_span(framing, framing->box->main_side, &main));

    for (size_t i = 0; i < model->joins.count; i++)
        if (lies_on_top(&model->joins.at[i], framing->box->key, &other))
            span = length_smaller(span, board_span(framing, other));
    if (span == INT64_MAX || span <= 0)
        span = framing->planning->value[TRADE_SPAN_SEAT_3_4];
    return span;
}

/* ---- stations ---- */

/* From the end of the box to the near side of the cross there. */
static int64_t end_cross_inset(const struct crate *crate)
{
    return crate->rails_through
               ? 0
               : crate->upright + crate->framing->planning->value[TRADE_SCREW_BITE_END];
}

/* Adds a seam in order; where one is already, what lies there adds up. */
static void add_seam(struct crate *crate, struct station seam)
{
    int64_t i = crate->stations;

    for (int64_t k = 0; k < crate->stations; k++)
        if (crate->at[k].x == seam.x) {
            crate->at[k].seam_on_top |= seam.seam_on_top;
            crate->at[k].seam_at_bottom |= seam.seam_at_bottom;
            return;
        }
    for (; i > 0 && crate->at[i - 1].x > seam.x; i--)
        crate->at[i] = crate->at[i - 1];
    crate->at[i] = seam;
    crate->stations++;
}

/* From an end of the box to the nearest seam that has room for its members. */
static int64_t room_at_end(const struct crate *crate)
{
    return end_cross_inset(crate) + 2 * crate->cross_x + crate->upright;
}

static void find_seam(struct crate *crate, const struct panel *a, const struct panel *b)
{
    const struct solid *space = &crate->framing->space;
    bool bent = curve_under(crate->framing->box, a->side);
    int64_t x = a->area.u1 - (bent ? ladder_set_off(crate->framing->planning, crate->upright) : 0);
    bool meet = a->side == b->side && a->area.u1 == b->area.u0 && a->area.v0 < b->area.v1 &&
                b->area.v0 < a->area.v1;

    if (!meet || a->loose || b->loose || side_u_axis(a->side) != AXIS_X ||
        x < space->low.x + room_at_end(crate) || x > space->high.x - room_at_end(crate))
        return;
    add_seam(crate, (struct station){x, a->side == SIDE_TOP && !bent, a->side == SIDE_BOTTOM});
}

static void find_seams(struct crate *crate)
{
    const struct plan *plan = crate->framing->planning->plan;
    struct slice panels = plan_panels_of(plan, crate->framing->box->key);

    crate->at =
        ARENA_MANY(crate->framing->planning->arena, struct station, (panels.to - panels.from) + 1);
    for (size_t i = panels.from; i < panels.to; i++)
        for (size_t k = panels.from; k < panels.to; k++)
            find_seam(crate, &plan->panels.at[i], &plan->panels.at[k]);
}

static int64_t bays_between(int64_t from, int64_t to, int64_t span)
{
    return whole_divide_up(to - from, span);
}

/* Seams are stations, and what lies between two of them is divided evenly. */
static void set_stations(struct crate *crate)
{
    const struct solid *space = &crate->framing->space;
    int64_t span = station_span(crate->framing);
    int64_t from = space->low.x;
    const struct station *seams;
    struct station *stations;
    int64_t seam_count, count = 1;

    find_seams(crate);
    seams = crate->at;
    seam_count = crate->stations;
    for (int64_t i = 0; i <= seam_count; i++) {
        int64_t to = i < seam_count ? seams[i].x : space->high.x;

        count += bays_between(from, to, span);
        from = to;
    }
    stations = ARENA_MANY(crate->framing->planning->arena, struct station, (size_t)count);
    stations[0].x = from = space->low.x;
    crate->stations = 1;
    for (int64_t i = 0; i <= seam_count; i++) {
        int64_t to = i < seam_count ? seams[i].x : space->high.x;
        int64_t bays = bays_between(from, to, span);

        for (int64_t k = 1; k <= bays; k++)
            stations[crate->stations++].x = from + whole_divide_even((to - from) * k, bays);
        if (i < seam_count)
            stations[crate->stations - 1] = seams[i];
        from = to;
    }
    assert(crate->stations == count);
    crate->at = stations;
}

/* ---- members ---- */

static struct solid crate_part(const struct crate *crate, int64_t x, int64_t width, int64_t z,
                               int64_t height)
{
    struct solid part = crate->framing->space;

    part.low.x = x;
    part.high.x = x + width;
    part.low.z = z;
    part.high.z = z + height;
    return part;
}

/* The same in both ladders. */
static void add_in_ladders(struct crate *crate, int64_t kind, int64_t axis, struct solid part)
{
    const struct solid *space = &crate->framing->space;

    part.low.y = space->high.y - crate->ladder;
    part.high.y = space->high.y;
    framing_add(crate->framing, kind, axis, &part);
    part.low.y = space->low.y;
    part.high.y = space->low.y + crate->ladder;
    framing_add(crate->framing, kind, axis, &part);
}

static void add_rails(struct crate *crate)
{
    const struct solid *space = &crate->framing->space;
    int64_t inset = crate->rails_through ? 0 : crate->upright;
    int64_t width = solid_size(space, AXIS_X) - 2 * inset;

    add_in_ladders(crate, MEMBER_RAIL, AXIS_X,
                   crate_part(crate, space->low.x + inset, width, space->low.z, crate->rail));
    add_in_ladders(
        crate, MEMBER_RAIL, AXIS_X,
        crate_part(crate, space->low.x + inset, width, space->high.z - crate->rail, crate->rail));
}

static bool is_end(const struct crate *crate, int64_t station)
{
    return station == 0 || station == crate->stations - 1;
}

static int64_t upright_x(const struct crate *crate, int64_t station)
{
    const struct solid *space = &crate->framing->space;
    int64_t inset = crate->rails_through ? crate->cross_x : 0;

    assert(station >= 0 && station < crate->stations);
    if (station == 0)
        return space->low.x + inset;
    if (station == crate->stations - 1)
        return space->high.x - inset - crate->upright;
    return crate->at[station].x - crate->upright / 2;
}

/* Inner crosses lie on the side of their upright that is away from the nearer end, which leaves the
 * end bays as long as they can be: joins are driven there. */
static int64_t cross_x(const struct crate *crate, int64_t station)
{
    const struct solid *space = &crate->framing->space;

    assert(station >= 0 && station < crate->stations);
    if (station == 0)
        return space->low.x + end_cross_inset(crate);
    if (station == crate->stations - 1)
        return space->high.x - end_cross_inset(crate) - crate->cross_x;
    if (2 * station > crate->stations - 1)
        return upright_x(crate, station) - crate->cross_x;
    return upright_x(crate, station) + crate->upright;
}

static void add_uprights(struct crate *crate)
{
    const struct solid *space = &crate->framing->space;
    int64_t height = solid_size(space, AXIS_Z);
    bool inner = crate->framing->box->supports == MAKING_AUTO;

    for (int64_t i = 0; i < crate->stations; i++) {
        int64_t short_of_rails = is_end(crate, i) && !crate->rails_through ? 0 : crate->rail;

        if (inner || is_end(crate, i))
            add_in_ladders(crate, MEMBER_UPRIGHT, AXIS_Z,
                           crate_part(crate, upright_x(crate, i), crate->upright,
                                      space->low.z + short_of_rails, height - 2 * short_of_rails));
    }
}

/* Bottom crosses stand at both ends and spread evenly, so that few stations in a row have none. */
static bool has_bottom_cross(const struct crate *crate, int64_t station)
{
    int64_t bays = crate->stations - 1;
    int64_t count = whole_divide_up(bays, BARE_STATIONS + 1);

    for (int64_t i = 0; i <= count; i++)
        if (bays * i / count == station)
            return true;
    return crate->at[station].seam_at_bottom;
}

static void add_cross_at(struct crate *crate, int64_t x, int64_t z)
{
    struct solid part = crate_part(crate, x, crate->cross_x, z, crate->cross_z);

    part.low.y += crate->ladder;
    part.high.y -= crate->ladder;
    framing_add(crate->framing, MEMBER_CROSS, AXIS_Y, &part);
}

static void add_cross(struct crate *crate, int64_t station, int64_t z, bool seam)
{
    if (!seam) {
        add_cross_at(crate, cross_x(crate, station), z);
        return;
    }
    add_cross_at(crate, crate->at[station].x - crate->cross_x, z);
    add_cross_at(crate, crate->at[station].x, z);
}

static void add_crosses(struct crate *crate)
{
    const struct solid *space = &crate->framing->space;
    bool inner = crate->framing->box->crosses == MAKING_AUTO;

    for (int64_t i = 0; i < crate->stations; i++)
        if (inner || is_end(crate, i))
            add_cross(crate, i, space->high.z - crate->cross_z, crate->at[i].seam_on_top);
    for (int64_t i = 0; i < crate->stations; i++)
        if (is_end(crate, i) || (inner && has_bottom_cross(crate, i)))
            add_cross(crate, i, space->low.z, crate->at[i].seam_at_bottom);
}

void frame_crate(struct framing *framing)
{
    const struct box *box = framing->box;
    struct vector up = section_across(box, framing->section, box->stick_set, AXIS_Z);
    struct vector level = section_across(box, framing->section, box->stick_set, AXIS_X);
    struct vector cross = section_across(box, framing->section, box->stick_set, AXIS_Y);
    struct crate crate = {.framing = framing,
                          .upright = up.x,
                          .rail = level.z,
                          .ladder = up.y,
                          .cross_x = cross.x,
                          .cross_z = cross.z,
                          .rails_through = box->through == THROUGH_RAILS};
    struct crown_crate crown = {
        .framing = framing, .show = up.x, .deep = up.y, .cross_x = cross.x, .cross_z = cross.z};
    int64_t top = framing->space.high.z;

    assert(up.y == level.y);
    if (framing_too_small(framing, AXIS_Y, 2 * crate.ladder + 1) ||
        framing_too_small(framing, AXIS_Z, length_larger(2 * crate.rail, 2 * crate.cross_z) + 1) ||
        framing_too_small(framing, AXIS_X,
                          2 * (crate.upright + crate.cross_x + end_cross_inset(&crate)) + 1))
        return;
    framing->space.high.z = crown_floor(framing, framing->space.low.z, top,
                                        length_larger(2 * crate.rail, 2 * crate.cross_z));
    set_stations(&crate);
    add_rails(&crate);
    add_uprights(&crate);
    add_crosses(&crate);
    crown.floor = framing->space.high.z;
    framing->space.high.z = top;
    crown_add_to_crate(&crown);
}
