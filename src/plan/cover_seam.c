/*
 * Where the seams of a cover that is wider than its cloth fall on its face.
 *
 * 1  Upright seams are mirrored about the middle of the face, not of the cut piece, which may have
 *    more to go round on one side.
 *
 * 2  They lie as far out as the cloth allows; within `seam.move` of that they are drawn in to a
 *    line that hides them on both sides.
 *
 * 3  They keep clear of what they must not fall on. They give way inwards; where they cannot, a
 *    finding tells.
 *
 * 4  The level seams of a railroaded cover stand as low as the cloth allows, where they are seen
 *    least: the uppermost part is a whole width, and so is each below it but the lowest. They give
 *    way upwards, as far as that costs no width more. Where the maker wants a full centre, those of
 *    three widths and more are placed as upright ones are.
 *
 * 5  Where a pattern is to go on over a level seam, neither part is wider than the whole repeats of
 *    the cloth: whatever the seam's height, both have a place on the roll then (piece.aside).
 *
 * 6  One seam down the middle there is by the maker's word alone.
 *
 * What hides a seam and what it must not fall on: cover_seaming.c.
 *
 * Places are counted along the pulled cloth, from the left end of the layer on its face, level
 * seams from its lower end: buttons take cloth in, so that a place in a tufting field lies farther
 * from the middle on the cloth.
 */
#include "plan/cover_seaming.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/hidden.h"

#include <assert.h>
#include <stdlib.h>

/* ---- choosing ---- */

static bool cut_at(const struct seaming *seaming, int64_t seam, struct widths *widths)
{
    const int64_t *value = seaming->planning->value;

    return widths_draw_in(widths, seaming->left, seaming->right, seaming->roll,
                          value[TRADE_SEAM_ALLOWANCE], value[TRADE_SIDE_STRIP_MIN], seam);
}

/* How far apart the seams beyond the first ones stand. */
static int64_t seam_step(const struct seaming *seaming, const struct widths *widths)
{
    return widths->full - 2 * seaming->planning->value[TRADE_SEAM_ALLOWANCE];
}

/*
 * What some seam falls on; NULL when they are all clear. *ret_seam is then the first seam's place
 * at which that one would be clear of it, further in.
 */
static const char *fallen_on(const struct seaming *seaming, const struct widths *widths,
                             int64_t *ret_seam)
{
    for (int nth = 0; nth <= widths->inner; nth++) {
        int64_t beyond = nth * seam_step(seaming, widths);
        int64_t left = seaming->middle - widths->seam - beyond;
        int64_t right = seaming->middle + widths->seam + beyond;

        for (size_t i = 0; i < seaming->keeps.count; i++) {
            const struct keep *keep = &seaming->keeps.at[i];

            *ret_seam = widths->seam;
            if (keep->from < right && right < keep->to)
                *ret_seam = keep->from - seaming->middle - beyond;
            else if (keep->from < left && left < keep->to)
                *ret_seam = seaming->middle - keep->to - beyond;
            if (*ret_seam != widths->seam)
                return keep->what;
        }
    }
    return NULL;
}

static bool is_hidden_at(const struct seaming *seaming, int64_t at)
{
    for (size_t i = 0; i < seaming->hides.count; i++)
        if (llabs(seaming->hides.at[i].at - at) <= SEAMING_EYE)
            return true;
    return false;
}

/* Draws the seams in to the nearest line that hides them on both sides and, unless the maker wants
 * them there, costs no width more. Returns what it is; NULL without any. */
static const char *draw_to_line(const struct seaming *seaming, struct widths *widths)
{
    bool far = seaming->spread->layer->seaming == SEAMING_LINE;
    int64_t least = far ? 0 : widths->seam - seaming->planning->value[TRADE_SEAM_MOVE];
    struct widths best = *widths;
    const char *what = NULL;

    assert(widths->count > 1);
    for (size_t i = 0; i < seaming->hides.count; i++) {
        int64_t seam = llabs(seaming->hides.at[i].at - seaming->middle);
        struct widths drawn = *widths;
        int64_t unused;

        if (seam > widths->seam || seam < least || (what && seam <= best.seam) ||
            !is_hidden_at(seaming, seaming->middle - seam) ||
            !is_hidden_at(seaming, seaming->middle + seam) || !cut_at(seaming, seam, &drawn) ||
            (drawn.count > widths->count && !far) || fallen_on(seaming, &drawn, &unused))
            continue;
        best = drawn;
        what = seaming->hides.at[i].what;
    }
    *widths = best;
    return what;
}

/* The next place further in at which seams match. */
static int64_t matched_seam(const struct seaming *seaming, int64_t seam)
{
    return seaming->repeat > 0 ? whole_divide_down(2 * seam, seaming->repeat) * seaming->repeat / 2
                               : seam;
}

/* Draws the seams in until they are clear. Returns what they fall on where that cannot be. */
static const char *draw_clear(const struct seaming *seaming, struct widths *widths)
{
    struct widths drawn = *widths;
    const char *first = NULL;
    int64_t seam;

    for (const char *what; (what = fallen_on(seaming, &drawn, &seam)) != NULL;) {
        assert(seam < drawn.seam); /* always inwards, so that it ends */
        first = first ? first : what;
        if (!cut_at(seaming, matched_seam(seaming, seam), &drawn))
            return first;
    }
    *widths = drawn;
    return NULL;
}

static void tell_seam(struct planning *planning, const struct spread *spread, int64_t seam,
                      const char *where, const char *what)
{
    struct finding *finding =
        finding_add(planning, FINDING_SEAM_ON, ENTITY_layer, spread->layer->key);

    argument_length(finding, 0, seam);
    argument_text(finding, 1, where);
    argument_text(finding, 2, what);
}

/* ---- one seam alone ---- */

/* What a seam at a place falls on; NULL where it is clear. *ret_clear is then the next place up. */
static const char *falls_on(const struct seaming *seaming, int64_t at, int64_t *ret_clear)
{
    for (size_t i = 0; i < seaming->keeps.count; i++) {
        const struct keep *keep = &seaming->keeps.at[i];

        *ret_clear = keep->to;
        if (keep->from < at && at < keep->to)
            return keep->what;
    }
    return NULL;
}

static bool cut_in_two(const struct seaming *seaming, int64_t at, struct widths *widths)
{
    const int64_t *value = seaming->planning->value;

    return widths_in_two(widths, seaming->left - seaming->middle + at,
                         seaming->right + seaming->middle - at, seaming->roll,
                         value[TRADE_SEAM_ALLOWANCE], value[TRADE_SIDE_STRIP_MIN]);
}

static struct seams seam_alone(const struct seaming *seaming, int64_t at, const char *hidden_by)
{
    int64_t *alone = ARENA_MANY(seaming->planning->arena, int64_t, 1);
    struct seams seams = {.alone = alone, .hidden_by = hidden_by};
    bool fits = cut_in_two(seaming, at, &seams.widths);

    assert(fits);
    (void)fits;
    *alone = at;
    return seams;
}

/* Where lines hide a level seam: at one of its own, and anywhere behind the mattress. */
static const char *hidden_level(const struct seaming *seaming, int64_t at)
{
    const struct spread *spread = seaming->spread;

    if (spread->plot_count == 1 &&
        at + spread->layer->v <= hidden_height(seaming->planning, spread->box, spread->side))
        return "the part that the mattress hides";
    for (size_t i = 0; i < seaming->hides.count; i++)
        if (llabs(seaming->hides.at[i].at - at) <= SEAMING_EYE)
            return seaming->hides.at[i].what;
    return NULL;
}

/* ---- level seams, from the top down ---- */

/* Between which heights a level seam can stand: what is below it then comes out of the widths that
 * are left, and no part is narrower than a strip. */
struct level {
    int64_t lowest, highest;
};

/* `left` widths are to come below the seam; `above` stands the one before it, none on the first. */
static struct level level_of(const struct seaming *seaming, const int64_t *above, int left)
{
    const int64_t *value = seaming->planning->value;
    int64_t allowance = value[TRADE_SEAM_ALLOWANCE];
    int64_t least = value[TRADE_SIDE_STRIP_MIN];
    int64_t begin = seaming->middle - seaming->left;
    assert(left >= 1);
    /* a part is cut so much beyond the seam above it, and nothing beyond the upper end */
    int64_t end = above ? *above + allowance : seaming->middle + seaming->right;
    int64_t full = seaming->roll - 2 * allowance;
    struct level level = {.lowest = end - seaming->roll + allowance,
                          .highest = begin + left * full + allowance};

    if (left == 1)
        level.lowest = length_larger(level.lowest, begin + least - allowance);
    level.highest = length_smaller(level.highest, end + allowance - least);
    assert(level.lowest <= level.highest);
    return level;
}

/* The nearest line that hides a seam, clear of everything; its lowest place without any. */
static int64_t raised_to_line(const struct seaming *seaming, const struct level *level)
{
    bool far = seaming->spread->layer->seaming == SEAMING_LINE;
    int64_t most = far ? level->highest
                       : length_smaller(level->highest,
                                        level->lowest + seaming->planning->value[TRADE_SEAM_MOVE]);
    int64_t best = INT64_MAX;
    int64_t unused;

    for (size_t i = 0; i < seaming->hides.count; i++) {
        int64_t line = seaming->hides.at[i].at;

        if (line >= level->lowest && line <= most && line < best &&
            !falls_on(seaming, line, &unused))
            best = line;
    }
    return best < INT64_MAX ? best : level->lowest;
}

/* The lowest place, raised to a line that is near, or until it is clear; told where it cannot be.
 */
static int64_t place_in(const struct seaming *seaming, const struct level *level)
{
    int64_t at = level->lowest;
    const char *on;

    if (!hidden_level(seaming, at) && seaming->spread->layer->seaming != SEAMING_CENTRE)
        at = raised_to_line(seaming, level);
    for (int64_t clear; (on = falls_on(seaming, at, &clear)) != NULL; at = clear) {
        assert(clear > at); /* always upwards, so that it ends */
        if (clear > level->highest) {
            at = level->lowest;
            tell_seam(seaming->planning, seaming->spread, llabs(at - seaming->middle),
                      at < seaming->middle ? "below" : "above", on);
            break;
        }
    }
    return at;
}

/* What hides all of them; NULL where one is seen. */
static const char *hidden_levels(const struct seaming *seaming, const int64_t *at, int count)
{
    const char *first = hidden_level(seaming, at[0]);

    for (int i = 1; i < count; i++)
        if (!hidden_level(seaming, at[i]))
            return NULL;
    return first;
}

/* The level seams of a cover that takes `count` widths. */
static struct seams place_levels(const struct seaming *seaming, int count)
{
    assert(count >= 2);

    int64_t allowance = seaming->planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t *at = ARENA_MANY(seaming->planning->arena, int64_t, (size_t)count - 1);
    struct seams seams = {.alone = at};

    for (int i = 0; i < count - 1; i++) {
        struct level level = level_of(seaming, i > 0 ? &at[i - 1] : NULL, count - 1 - i);

        at[i] = place_in(seaming, &level);
    }
    if (count == 2)
        return seam_alone(seaming, at[0], hidden_level(seaming, at[0]));
    seams.hidden_by = hidden_levels(seaming, at, count - 1);
    seams.widths =
        (struct widths){.count = count,
                        .centre = seaming->middle + seaming->right - at[0] + allowance,
                        .full = seaming->roll,
                        .under = count - 2,
                        .side = at[count - 2] - seaming->middle + seaming->left + allowance};
    return seams;
}

/* One seam down the middle; false where it does not come out of two widths. */
static bool place_middle(const struct seaming *seaming, struct seams *ret_seams)
{
    struct widths widths;
    int64_t unused;
    const char *on = falls_on(seaming, seaming->middle, &unused);

    if (!cut_in_two(seaming, seaming->middle, &widths))
        return false;
    *ret_seams = seam_alone(seaming, seaming->middle, NULL);
    if (on)
        tell_seam(seaming->planning, seaming->spread, 0, "from", on);
    return true;
}

/* ---- all ---- */

static int64_t matched_repeat(const struct stock *stock, int64_t roll, int64_t allowance)
{
    return stock->repeat_across <= roll - 2 * allowance ? stock->repeat_across : 0;
}

/* Seams mirrored about the middle. */
static struct seams place_mirrored(struct seaming *seaming, struct widths widths)
{
    struct seams seams = {.widths = widths};
    const char *on;

    if (seaming->repeat == 0 && seaming->spread->layer->seaming != SEAMING_CENTRE)
        seams.hidden_by = draw_to_line(seaming, &seams.widths);
    on = seams.hidden_by ? NULL : draw_clear(seaming, &seams.widths);
    if (on)
        tell_seam(seaming->planning, seaming->spread, seams.widths.seam, "beside", on);
    return seams;
}

struct seams seams_place(struct planning *planning, const struct spread *spread, bool level,
                         int64_t cut, int64_t before, int64_t roll)
{
    const int64_t *value = planning->value;
    int64_t allowance = value[TRADE_SEAM_ALLOWANCE];
    struct seaming seaming = {.planning = planning,
                              .spread = spread,
                              .level = level,
                              .roll = roll,
                              .repeat = matched_repeat(spread->stock, roll, allowance)};
    struct seams seams = {.widths = {.count = 1, .centre = cut}};
    int64_t middle = before + tuft_extra(spread, !level) / 2;
    int count;

    seaming.middle = seaming_figure(&seaming, spread->wide, spread->high) / 2;
    middle += seaming.middle;
    seaming.left = middle;
    seaming.right = cut - middle;
    if (cut <= roll)
        return seams;
    if (level)
        seaming.roll = widths_matched(roll, allowance, seaming.repeat);
    seaming_find(&seaming);
    count = widths_least(cut, seaming.roll, allowance);
    if (level && seaming.roll >= 2 * value[TRADE_SIDE_STRIP_MIN] &&
        (count == 2 || spread->layer->seaming != SEAMING_CENTRE))
        return place_levels(&seaming, count);
    if (!level && spread->layer->seaming == SEAMING_MIDDLE && place_middle(&seaming, &seams))
        return seams;
    seams.widths = widths_about(&seaming.left, &seaming.right, roll, allowance,
                                value[TRADE_SIDE_STRIP_MIN], spread->stock->repeat_across);
    seaming.middle += seaming.left - middle;
    return place_mirrored(&seaming, seams.widths);
}

/* ---- thin cloth below ---- */

int64_t thin_begins(struct planning *planning, const struct spread *spread)
{
    const struct layer *layer = spread->layer;
    struct seaming seaming = {
        .planning = planning, .spread = spread, .level = true, .middle = spread->height / 2};
    int64_t least = planning->value[TRADE_SIDE_STRIP_MIN];
    int64_t at, unused;
    const char *on;

    if (layer->kind != LAYER_COVER || layer->shape != SHAPE_WRAPPED ||
        !MODEL_FIND(planning->model, stock, layer->thin) || layer->thin_height < least ||
        layer->thin_height > spread->height - least)
        return 0;
    at = tuft_on_cloth(spread, true, layer->thin_height) + tuft_extra(spread, false) / 2;
    seaming_keep(&seaming);
    on = falls_on(&seaming, at, &unused);
    if (on)
        tell_seam(planning, spread, llabs(at - seaming.middle),
                  at < seaming.middle ? "below" : "above", on);
    return at;
}

/* ---- seams by hand ---- */

/* Does a cover of the same face begin where this one ends? */
static bool is_joined_on(const struct model *model, const struct spread *spread)
{
    const struct layer *layer = spread->layer;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *next = &model->layers.at[i];

        if (next != layer && next->kind == LAYER_COVER && next->box == layer->box &&
            next->group == layer->group && next->side == layer->side &&
            llabs(next->u - layer->u - spread->width) <= SEAMING_EYE)
            return true;
    }
    return false;
}

void seam_by_hand(struct planning *planning, const struct spread *spread)
{
    struct seaming seaming = {.planning = planning, .spread = spread, .middle = spread->width};
    struct widths one = {.full = 0};
    int64_t face = spread->plots[0].area.u1 - spread->plots[0].area.u0;
    int64_t off = spread->width - spread->plots[0].area.u0 - face / 2;
    const char *on;
    int64_t unused;

    if (spread->layer->kind != LAYER_COVER || !spread->brims[EDGE_RIGHT].inside ||
        !is_joined_on(planning->model, spread))
        return;
    seaming_keep_points(&seaming);
    on = fallen_on(&seaming, &one, &unused);
    if (on)
        tell_seam(planning, spread, llabs(off), off < 0 ? "left of" : "right of", on);
}
