/*
 * From the members behind a panel to rows of screws. Members in one line (an upright above and one
 * below a rail) are one strip and get one row. A block behind a curved edge takes one screw.
 */
#include "plan/rows.h"

#include "plan/curve.h"
#include "plan/slices.h"

#include <assert.h>

/* Members behind a panel that lie in one line. */
struct strip {
    bool upright;
    int64_t low, high; /* sides of the members, uncut */
    int64_t from, to;  /* what of the panel they run along */
    bool at_low_edge, at_high_edge;
    bool under_outline; /* the rail that an outline comes down to */
    bool block;         /* backs a curved edge: one screw in its middle */
};

struct strips {
    LIST_OF(struct strip) of;
};

int64_t row_count(int64_t length, int64_t end, int64_t pitch)
{
    int64_t free = length - 2 * end;

    assert(length > 0 && end > 0 && pitch > 0);
    return free <= 0 ? 2 : length_larger(2, whole_divide_up(free, pitch) + 1);
}

int64_t row_place(const struct row *row, int64_t i)
{
    int64_t free = row->to - row->from - 2 * row->end;

    assert(0 <= i && i < row->count && row->count > 1);
    return row->from + row->end + whole_divide_even(free * i, row->count - 1) +
           (i > 0 && i < row->count - 1 ? row->shift : 0);
}

/* ---- strips ---- */

static struct strip strip_of(const struct plan_member *member, const struct panel *panel)
{
    struct area outline = solid_on_side(&member->solid, panel->side);
    struct area under = member_under(member, panel);

    if (member->axis == side_v_axis(panel->side))
        return (struct strip){.upright = true,
                              .low = outline.u0,
                              .high = outline.u1,
                              .from = under.v0,
                              .to = under.v1};
    return (struct strip){.low = outline.v0, .high = outline.v1, .from = under.u0, .to = under.u1};
}

/* Up to the lower side of its top, which is cut on the slant. */
static struct strip strip_of_block(const struct plan_member *block, const struct panel *panel)
{
    struct strip strip = strip_of(block, panel);

    strip.block = true;
    strip.to -= length_larger(block->slant, -block->slant);
    return strip;
}

static void add_strip(const struct planning *planning, struct strips *strips, struct strip strip)
{
    assert(strip.low < strip.high);
    for (size_t i = 0; i < strips->of.count; i++) {
        struct strip *other = &strips->of.at[i];

        if (other->upright == strip.upright && other->low == strip.low &&
            other->high == strip.high) {
            other->from = length_smaller(other->from, strip.from);
            other->to = length_larger(other->to, strip.to);
            return;
        }
    }
    *LIST_ADD(planning->arena, &strips->of) = strip;
}

static int64_t distance(int64_t a, int64_t b)
{
    return a < b ? b - a : a - b;
}

static int64_t middle_of(const struct strip *strip)
{
    return strip->low + (strip->high - strip->low) / 2;
}

/* The strip nearest to the outside among those that carry the edge; NULL without one. */
static struct strip *outermost(struct strips *strips, bool upright, int64_t edge, bool high,
                               int64_t band)
{
    struct strip *best = NULL;

    for (size_t i = 0; i < strips->of.count; i++) {
        struct strip *strip = &strips->of.at[i];

        if (strip->upright != upright || distance(middle_of(strip), edge) > band)
            continue;
        if (!best ||
            (high ? middle_of(strip) > middle_of(best) : middle_of(strip) < middle_of(best)))
            best = strip;
    }
    return best;
}

static void mark_edges(struct strips *strips, const struct panel *panel, bool upright, int64_t band)
{
    int64_t low_edge = upright ? panel->area.u0 : panel->area.v0;
    int64_t high_edge = upright ? panel->area.u1 : panel->area.v1;
    struct strip *low = outermost(strips, upright, low_edge, false, band);
    struct strip *high = outermost(strips, upright, high_edge, true, band);

    if (low)
        low->at_low_edge = true;
    if (high && high != low)
        high->at_high_edge = true;
}

/* Where the outline comes down to the rail, that carries the edge of the panel. */
static void mark_under_outline(const struct planning *planning, struct strips *strips,
                               const struct panel *panel, int64_t band)
{
    const struct box *box = MODEL_FIND(planning->model, box, panel->box);
    struct strip *rail;

    if (!curve_has(box, panel->side))
        return;
    rail = outermost(strips, false, curve_lowest(planning->model, box), true, band);
    if (rail)
        rail->under_outline = true;
}

static struct strips strips_behind(const struct planning *planning, const struct panel *panel)
{
    const struct plan *plan = planning->plan;
    int64_t band = planning->value[TRADE_PANEL_EDGE_BAND];
    struct slice members = plan_members_of(plan, panel->box);
    struct strips strips = {0};

    for (size_t i = members.from; i < members.to; i++)
        if (member_bears(&plan->members.at[i], panel) && !member_backs_edge(&plan->members.at[i]))
            add_strip(planning, &strips, strip_of(&plan->members.at[i], panel));
    mark_edges(&strips, panel, true, band);
    mark_edges(&strips, panel, false, band);
    mark_under_outline(planning, &strips, panel, band);
    for (size_t i = members.from; i < members.to; i++)
        if (member_bears(&plan->members.at[i], panel) && member_backs_edge(&plan->members.at[i]))
            *LIST_ADD(planning->arena, &strips.of) = strip_of_block(&plan->members.at[i], panel);
    return strips;
}

/* ---- rows ---- */

/* What is typed into the pitch of a panel is planned at every key: 1 mm, on the way to 150, would
 * be a thousand screws that all stand in each other's way. */
int64_t row_pitch(const struct planning *planning, const struct panel *panel, bool edge)
{
    const struct facing *facing = MODEL_FIND(planning->model, facing, panel->facing);
    bool carries =
        facing->use == USE_SEAT || facing->use == USE_DECK || facing->use == USE_STRUCTURE;

    if (!edge)
        return planning->value[TRADE_PANEL_FIELD_PITCH];
    if (facing->pitch)
        return length_larger(facing->pitch, trade_values[TRADE_PANEL_EDGE_PITCH_FACE].least);
    return planning->value[carries && !facing->glued ? TRADE_PANEL_EDGE_PITCH_SEAT
                                                     : TRADE_PANEL_EDGE_PITCH_FACE];
}

/* Is there an edge row along the panel's longer way, at the low or high edge? */
static bool has_long_row(const struct strips *strips, bool long_upright, bool high)
{
    for (size_t i = 0; i < strips->of.count; i++) {
        const struct strip *strip = &strips->of.at[i];

        if (strip->upright == long_upright && (high ? strip->at_high_edge : strip->at_low_edge))
            return true;
    }
    return false;
}

/* Is there another panel of the same face across the panel's low edge? */
static bool is_beyond_seam(const struct planning *planning, const struct panel *panel, bool upright)
{
    const struct plan *plan = planning->plan;
    struct slice panels = plan_panels_of(plan, panel->box);
    const struct area *own = &panel->area;

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *other = &plan->panels.at[i];
        const struct area *area = &other->area;

        if (other->side != panel->side || other == panel)
            continue;
        if (upright ? area->u1 == own->u0 && area->v0 < own->v1 && own->v0 < area->v1
                    : area->v1 == own->v0 && area->u0 < own->u1 && own->u0 < area->u1)
            return true;
    }
    return false;
}

/* Common practice, no source: screws on the two sides of a seam are set off by a share of the
 * pitch, so that no two split the one member between them. Those in the corners stay. */
static int64_t seam_shift(const struct planning *planning, const struct panel *panel,
                          const struct strip *strip, const struct row *row)
{
    int64_t free = row->to - row->from - 2 * row->end;
    int64_t shift;

    assert(row->count >= 2);
    if (!strip->at_low_edge || !is_beyond_seam(planning, panel, strip->upright) ||
        whole_share(free / (row->count - 1), planning->value[TRADE_PANEL_SEAM_STAGGER], 1000000,
                    &shift))
        return 0;
    return shift;
}

/* Where a row runs: to an edge of the panel that is near the end of the strip. */
static struct row run_of(const struct planning *planning, const struct panel *panel,
                         const struct strip *strip)
{
    int64_t band = planning->value[TRADE_PANEL_EDGE_BAND];
    int64_t low = strip->upright ? panel->area.v0 : panel->area.u0;
    int64_t high = strip->upright ? panel->area.v1 : panel->area.u1;

    return (struct row){.upright = strip->upright,
                        .from = strip->from - low <= band ? low : strip->from,
                        .to = high - strip->to <= band ? high : strip->to};
}

static struct row row_of(const struct planning *planning, const struct panel *panel,
                         const struct strips *strips, const struct strip *strip)
{
    const struct area *area = &panel->area;
    bool long_upright = area_height(area) > area_width(area);
    int64_t near = strip->upright ? area->u0 : area->v0;
    int64_t far = strip->upright ? area->u1 : area->v1;
    struct row row = run_of(planning, panel, strip);
    bool crosses = strip->upright != long_upright;
    int64_t length = row.to - row.from;

    row.across = (length_larger(strip->low, near) + length_smaller(strip->high, far)) / 2;
    row.beside =
        length_larger(0, (length_smaller(strip->high, far) - length_larger(strip->low, near)) / 2 -
                             planning->value[TRADE_PANEL_EDGE_MIN]);
    row.end = length_smaller(planning->value[TRADE_PANEL_CORNER_OFFSET], length / 4);
    row.count =
        row_count(length, row.end,
                  row_pitch(planning, panel,
                            strip->at_low_edge || strip->at_high_edge || strip->under_outline));
    row.shift = seam_shift(planning, panel, strip, &row);
    row.skip_low = crosses && row.from == (strip->upright ? area->v0 : area->u0) &&
                   has_long_row(strips, long_upright, false);
    row.skip_high = crosses && row.to == (strip->upright ? area->v1 : area->u1) &&
                    has_long_row(strips, long_upright, true);
    return row;
}

static struct row row_of_block(const struct planning *planning, const struct strip *block)
{
    int64_t half = (block->high - block->low) / 2;

    return (struct row){.upright = true,
                        .across = block->low + half,
                        .from = block->from,
                        .to = block->to,
                        .end = (block->to - block->from) / 2,
                        .count = 2,
                        .beside = length_larger(0, half - planning->value[TRADE_PANEL_EDGE_MIN]),
                        .skip_high = true};
}

/* A panel that goes over a member by less than a screw stands off an edge has no screw there. */
static bool has_room(const struct planning *planning, const struct panel *panel,
                     const struct strip *strip)
{
    struct row row = run_of(planning, panel, strip);

    return row.to - row.from >= planning->value[TRADE_PANEL_EDGE_MIN];
}

struct rows rows_of_panel(const struct planning *planning, const struct panel *panel)
{
    struct strips strips = strips_behind(planning, panel);
    struct rows rows = {0};

    for (size_t i = 0; i < strips.of.count; i++) {
        const struct strip *strip = &strips.of.at[i];

        if (strip->block)
            *LIST_ADD(planning->arena, &rows.of) = row_of_block(planning, strip);
        else if (has_room(planning, panel, strip))
            *LIST_ADD(planning->arena, &rows.of) = row_of(planning, panel, &strips, strip);
    }
    return rows;
}
