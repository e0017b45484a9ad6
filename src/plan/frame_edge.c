/*
 * Wood behind the curved edge of a panel.
 *
 * A panel that is sawn to an outline stands up over the rail, and posts carry it only where they
 * stand: between them its edge would give under the cloth that is pulled over it. So blocks of the
 * box's stick are set between the landing wood and the panel, as an upholsterer does: glued and
 * screwed to the one, and the other is screwed to them.
 *
 * 1  Along the outline no two screws of the edge stand farther apart than the pitch of its edges,
 *    those in posts among them. The ways are equal from one post to the next.
 *
 * 2  A block is as deep below the outline as a landing, cut on the slant like a post, and clear of
 *    the rail, which has screws of its own where the outline comes down to it; where there is no
 *    room for one none is set.
 */
#include "plan/ladder.h"

#include "plan/rows.h"
#include "plan/slices.h"

#include <assert.h>

#define LEAST_BLOCK LENGTH_INCH        /* that a screw does not split */
#define OFF_THE_RAIL (LENGTH_INCH / 4) /* so that it is no post */
#define STRETCHES 64                   /* that a curve is walked in */

/* The fixed panel of the ladder's flat sides that ends at the outline over a place; NULL without
 * one. */
static const struct panel *panel_at(const struct ladder *ladder, int64_t u)
{
    const struct framing *framing = ladder->framing;
    const struct plan *plan = framing->planning->plan;
    struct slice panels = plan_panels_of(plan, framing->box->key);
    int64_t front = vector_along(framing->space.high, framing->normal);
    int64_t back = vector_along(framing->space.low, framing->normal);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];
        bool flat = side_sign(panel->side) > 0
                        ? vector_along(panel->solid.low, framing->normal) == front
                        : vector_along(panel->solid.high, framing->normal) == back;

        if (!panel->loose && side_axis(panel->side) == framing->normal && flat &&
            panel->area.u0 <= u && u < panel->area.u1 && panel->area.v1 >= crown_height(framing, u))
            return panel;
    }
    return NULL;
}

/* Places along the outline from one to another, by its length. */
struct walk {
    int64_t from, to;
    int64_t gone[STRETCHES + 1];
};

static struct walk walk_along(const struct framing *framing, int64_t from, int64_t to)
{
    struct walk walk = {.from = from, .to = to};
    int64_t height = crown_height(framing, from);

    for (int64_t i = 1; i <= STRETCHES; i++) {
        int64_t across = (to - from) * i / STRETCHES - (to - from) * (i - 1) / STRETCHES;
        int64_t next = crown_height(framing, from + (to - from) * i / STRETCHES);

        walk.gone[i] =
            walk.gone[i - 1] + whole_root(across * across + (next - height) * (next - height));
        height = next;
    }
    return walk;
}

/* The place that lies so far along it, between the two nearest ones. */
static int64_t walk_place(const struct walk *walk, int64_t length)
{
    int64_t i = 1;
    int64_t step;

    assert(0 <= length && length <= walk->gone[STRETCHES]);
    while (walk->gone[i] < length)
        i++;
    step = walk->gone[i] - walk->gone[i - 1];
    return walk->from + (walk->to - walk->from) * (i - 1) / STRETCHES +
           (step > 0 ? (walk->to - walk->from) * (length - walk->gone[i - 1]) / (step * STRETCHES)
                     : 0);
}

/* With its middle at u; none where it would leave the ladder or has no room over the rail. */
static void add_block(struct ladder *ladder, const struct area *crown, int64_t u)
{
    const struct framing *framing = ladder->framing;
    int64_t at = u - ladder->show / 2;
    int64_t left = crown_height(framing, at);
    int64_t right = crown_height(framing, at + ladder->show);
    int64_t lower = length_smaller(left, right);
    int64_t foot = length_larger(ladder->field.v1 + OFF_THE_RAIL,
                                 lower - framing->planning->value[TRADE_LANDING]);

    if (at < crown->u0 || at + ladder->show > crown->u1 || lower - foot < LEAST_BLOCK)
        return;
    ladder_upright(ladder, MEMBER_BLOCK, at, foot, lower);
    crown_slant(ladder, left, right);
}

/* Between two screws of the edge. */
static void add_between(struct ladder *ladder, const struct area *crown, int64_t from, int64_t to)
{
    const struct panel *panel = panel_at(ladder, from + (to - from) / 2);
    struct walk walk;
    int64_t bays;

    if (!panel || to <= from)
        return;
    walk = walk_along(ladder->framing, from, to);
    bays = whole_divide_up(walk.gone[STRETCHES], row_pitch(ladder->framing->planning, panel, true));
    for (int64_t i = 1; i < bays; i++)
        add_block(ladder, crown, walk_place(&walk, walk.gone[STRETCHES] * i / bays));
}

void crown_back_edge(struct ladder *ladder, const struct area *crown, const struct places *posts)
{
    int64_t end = ladder->framing->planning->value[TRADE_PANEL_CORNER_OFFSET];
    int64_t from = crown->u0 + end;

    for (size_t i = 0; i < posts->of.count; i++) {
        int64_t middle = posts->of.at[i] + ladder->show / 2;

        add_between(ladder, crown, from, middle);
        from = length_larger(from, middle);
    }
    add_between(ladder, crown, from, crown->u1 - end);
}
