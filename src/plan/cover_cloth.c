/*
 * Cloth off a roll: whether a piece lies railroaded, and how one that is wider than the roll is
 * sewn from a centre and its sides.
 */
#include "plan/cover.h"
#include "plan/cover_sums.h"
#include "plan/findings.h"
#include "plan/geometry.h"

#include <assert.h>
#include <stdio.h>

bool stock_turns(const struct stock *stock)
{
    return !stock->pile && stock->repeat_along == 0 && stock->repeat_across == 0;
}

static bool is_hidden(const struct spread *spread)
{
    int64_t kind = spread->layer->kind;

    return spread->thin || kind == LAYER_LINING || kind == LAYER_DUST_COVER;
}

/* Usable width; 0 where the stock says none, or none from which anything could be sewn. */
static int64_t usable(const struct planning *planning, const struct stock *stock, int64_t cut)
{
    int64_t seams = 4 * planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t too_narrow = seams + planning->value[TRADE_SIDE_STRIP_MIN];

    if (stock->width <= too_narrow || cut > (stock->width - seams) * PARTS_AT_MOST)
        return 0;
    return stock->width;
}

/* The maker's word decides for cloth that is seen; what is hidden lies as saves a seam. */
static bool railroaded(const struct spread *spread, int64_t roll, int64_t width, int64_t height)
{
    const struct stock *stock = spread->stock;

    if (!stock->railroad)
        return false;
    if (spread->layer->direction == DIRECTION_ACROSS && !spread->thin)
        return true;
    return is_hidden(spread) && stock_turns(stock) && width > roll && height <= roll;
}

static void tell_widths(struct planning *planning, const struct spread *spread, int count,
                        int64_t cut, int64_t roll)
{
    struct finding *finding;

    if (spread->layer->seams) {
        finding = finding_add(planning, FINDING_CLOTH_WIDTHS, ENTITY_layer, spread->layer->key);
        argument_quantity(finding, 0, QUANTITY_COUNT, count);
        return;
    }
    finding = finding_add(planning, FINDING_CLOTH_NO_SEAM, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, cut);
    argument_length(finding, 1, roll);
}

/* Strips of one width: upright on the roll, or lying when the piece is railroaded. */
static void add_strips(struct planning *planning, struct spread *spread, const char *name,
                       int count, int64_t across_roll, int64_t along_roll, bool across)
{
    size_t first = planning->plan->pieces.count;
    bool turns = is_hidden(spread) && stock_turns(spread->stock);

    if (across)
        spread_piece(planning, spread, name, count, along_roll, across_roll, turns);
    else
        spread_piece(planning, spread, name, count, across_roll, along_roll, turns);
    for (size_t i = first; i < planning->plan->pieces.count; i++)
        planning->plan->pieces.at[i].across = across;
}

/* What stands between the middle width and one that is sewn on. */
struct aside {
    int64_t nth;     /* which width from the middle one */
    int64_t between; /* what is seen of the widths between */
};

/* Where a width sewn to the right or left of others lies from the middle one. */
static void set_aside(struct piece *piece, int64_t width, int64_t centre, const struct aside *aside,
                      bool left, int64_t allowance)
{
    int64_t begin =
        left ? -aside->between - width + 2 * allowance : centre - 2 * allowance + aside->between;

    piece->aside = begin + width / 2 - centre / 2;
    piece->nth = left ? -aside->nth : aside->nth;
}

/* One width sewn to another by a seam without a like. */
static void add_other(struct planning *planning, struct spread *spread, const char *name,
                      const struct widths *widths, int64_t along, bool across)
{
    static const char *const sides[2][2] = {{"right", "left"}, {"upper", "lower"}};
    int64_t allowance = planning->value[TRADE_SEAM_ALLOWANCE];
    bool before = widths->side > 0;
    int64_t width = before ? widths->side : widths->side_right;
    size_t first = planning->plan->pieces.count;
    char part[40];

    assert((widths->side > 0) != (widths->side_right > 0));
    snprintf(part, sizeof part, "%s %s part", name, sides[across][before]);
    add_strips(planning, spread, part, 1, width, along, across);
    set_aside(&planning->plan->pieces.at[first], width, widths->centre, &(struct aside){1, 0},
              before, allowance);
}

/* The parts of a stack below its uppermost, each sewn to the one above. */
static void add_stack(struct planning *planning, struct spread *spread, const char *name,
                      const struct seams *seams, int64_t along)
{
    const struct widths *widths = &seams->widths;
    int64_t allowance = planning->value[TRADE_SEAM_ALLOWANCE];
    struct aside aside = {1, 0};
    char part[40];

    assert(widths->under > 0 && seams->alone);
    for (int i = 0; i <= widths->under; i++, aside.nth++) {
        bool last = i == widths->under;
        int64_t seen = last ? 0 : seams->alone[i] - seams->alone[i + 1];
        int64_t width = last ? widths->side : seen + 2 * allowance;
        size_t first = planning->plan->pieces.count;

        snprintf(part, sizeof part, last ? "%s lower part" : "%s width", name);
        add_strips(planning, spread, part, 1, width, along, true);
        set_aside(&planning->plan->pieces.at[first], width, widths->centre, &aside, true,
                  allowance);
        aside.between += seen;
    }
}

/* The outer strips, told apart where they are not alike. */
static void add_sides(struct planning *planning, struct spread *spread, const char *name,
                      const struct widths *widths, int64_t along, bool across)
{
    int64_t allowance = planning->value[TRADE_SEAM_ALLOWANCE];
    struct aside aside = {widths->inner + 1, widths->inner * (widths->full - 2 * allowance)};
    size_t first = planning->plan->pieces.count;
    char part[40];

    assert(widths->side > 0 && widths->side_right > 0);
    if (widths->side == widths->side_right) {
        snprintf(part, sizeof part, "%s side", name);
        add_strips(planning, spread, part, 2, widths->side, along, across);
    } else {
        snprintf(part, sizeof part, "%s left side", name);
        add_strips(planning, spread, part, 1, widths->side, along, across);
        snprintf(part, sizeof part, "%s right side", name);
        add_strips(planning, spread, part, 1, widths->side_right, along, across);
    }
    set_aside(&planning->plan->pieces.at[first], widths->side, widths->centre, &aside, true,
              allowance);
    set_aside(&planning->plan->pieces.at[first + 1], widths->side_right, widths->centre, &aside,
              false, allowance);
}

/* Full widths, by turns to the left and to the right. */
static void add_inner(struct planning *planning, struct spread *spread, const char *name,
                      const struct widths *widths, int64_t along, bool across)
{
    int64_t allowance = planning->value[TRADE_SEAM_ALLOWANCE];
    size_t first = planning->plan->pieces.count;
    char part[40];

    snprintf(part, sizeof part, "%s width", name);
    add_strips(planning, spread, part, 2 * widths->inner, widths->full, along, across);
    for (int i = 0; i < 2 * widths->inner; i++) {
        struct aside aside = {i / 2 + 1, i / 2 * (widths->full - 2 * allowance)};

        set_aside(&planning->plan->pieces.at[first + (size_t)i], widths->full, widths->centre,
                  &aside, i % 2 == 0, allowance);
    }
}

static void add_widths(struct planning *planning, struct spread *spread, const char *name,
                       const struct seams *seams, int64_t along, bool across)
{
    const struct widths *widths = &seams->widths;
    size_t first = planning->plan->pieces.count;

    add_strips(planning, spread, name, 1, widths->centre, along, across);
    if (widths->inner > 0)
        add_inner(planning, spread, name, widths, along, across);
    if (widths->under > 0)
        add_stack(planning, spread, name, seams, along);
    else if (widths->side > 0 && widths->side_right > 0)
        add_sides(planning, spread, name, widths, along, across);
    else if (widths->count > 1)
        add_other(planning, spread, name, widths, along, across);
    assert(planning->plan->pieces.count - first == (size_t)widths_seams(widths) + 1);
    sew_widths(planning, spread, name, widths, along);
}

/* Heavy cloth: each seam takes some of it up, so that the outer strips are cut wider. */
static void take_up(const struct planning *planning, const struct spread *spread,
                    struct widths *widths)
{
    int64_t more = (widths->inner + widths->under + 1) * planning->value[TRADE_SEAM_TAKE_UP];

    if (spread->stock->nature != NATURE_HEAVY || widths->count < 2 ||
        widths->side + more > spread->stock->width ||
        widths->side_right + more > spread->stock->width)
        return;
    widths->side += widths->side > 0 ? more : 0;
    widths->side_right += widths->side_right > 0 ? more : 0;
}

/* How a piece lies on its roll. */
struct lie {
    int64_t roll; /* usable; 0 where nothing has to be split */
    bool across;
    int64_t cut, along; /* across the roll and along it */
};

static struct lie lie_of(const struct planning *planning, const struct spread *spread,
                         int64_t width, int64_t height)
{
    int64_t roll = usable(planning, spread->stock, width > height ? width : height);
    bool across = roll > 0 && railroaded(spread, roll, width, height);

    return (struct lie){roll, across, across ? height : width, across ? width : height};
}

/* A full centre and equal sides; of what is hidden two halves by the maker's word, where they come
 * out of two widths. */
static struct widths split_evenly(const struct planning *planning, const struct spread *spread,
                                  const struct lie *lie)
{
    int64_t allowance = planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t least = planning->value[TRADE_SIDE_STRIP_MIN];
    struct widths widths = {.count = 1, .centre = lie->cut};

    if (lie->roll == 0 || lie->cut <= lie->roll)
        return widths;
    if (is_hidden(spread) && spread->layer->seaming == SEAMING_MIDDLE &&
        widths_in_two(&widths, lie->cut / 2, lie->cut - lie->cut / 2, lie->roll, allowance, least))
        return widths;
    return widths_split(lie->cut, lie->roll, allowance, least, spread->stock->repeat_across);
}

/* Cuts and sews what the seams say. */
static void cut_widths(struct planning *planning, struct spread *spread, const char *name,
                       const struct lie *lie, struct seams *seams)
{
    take_up(planning, spread, &seams->widths);
    if (seams->widths.count > 1)
        tell_widths(planning, spread, seams->widths.count, lie->cut, lie->roll);
    add_widths(planning, spread, name, seams, lie->along, lie->across);
}

struct widths spread_cloth(struct planning *planning, struct spread *spread, const char *name,
                           int64_t width, int64_t height, bool *ret_across)
{
    struct lie lie = lie_of(planning, spread, width, height);
    struct seams seams = {.widths = split_evenly(planning, spread, &lie)};

    cut_widths(planning, spread, name, &lie, &seams);
    *ret_across = lie.across;
    return seams.widths;
}

static int64_t repeats_of(const struct stock *stock, int64_t along)
{
    return stock->repeat_along > 0 ? drop_repeats(along, stock->repeat_along) : 0;
}

static const int64_t *place_of(int64_t at, struct arena *arena)
{
    int64_t *place = ARENA_MANY(arena, int64_t, 1);

    *place = at;
    return place;
}

static void note_widths(struct cover *cover, const struct widths *widths)
{
    cover->width_count = widths->count;
    cover->side_strip = widths->side;
    cover->side_strip_right = widths->side_right;
    cover->seam = widths->seam;
    cover->seams = widths_seams(widths);
}

void cut_cloth(struct planning *planning, struct spread *spread, const char *name, int64_t width,
               int64_t height)
{
    bool across;
    struct widths widths = spread_cloth(planning, spread, name, width, height, &across);
    struct cover *cover = spread_cover(planning, spread, width, height);

    note_widths(cover, &widths);
    cover->railroaded = across;
    if (cover->seams == 1)
        cover->alone = place_of((across ? spread->height : spread->width) / 2, planning->arena);
    cover->repeats = repeats_of(spread->stock, across ? width : height);
}

/* Seams of what is seen are placed by what is there on the face. */
static void cut_seen(struct planning *planning, struct spread *spread, const char *name,
                     const struct lie *lie, const struct reach *reach)
{
    struct seams seams = seams_place(planning, spread, lie->across, lie->cut,
                                     lie->across ? reach->below : reach->before, lie->roll);
    struct cover *cover;

    cut_widths(planning, spread, name, lie, &seams);
    cover = spread_cover(planning, spread, lie->across ? lie->along : lie->cut,
                         lie->across ? lie->cut : lie->along);
    note_widths(cover, &seams.widths);
    cover->railroaded = lie->across;
    cover->alone = seams.alone;
    cover->hidden_by = seams.hidden_by;
    cover->repeats = repeats_of(spread->stock, lie->along);
}

static void cut_whole(struct planning *planning, struct spread *spread, const char *name,
                      int64_t width, int64_t height, const struct reach *reach)
{
    struct lie lie = lie_of(planning, spread, width, height);
    size_t line = planning->plan->covers.count;

    if (lie.cut > lie.roll && lie.roll > 0)
        tell_spared_seam(planning, spread, lie.cut, lie.roll, lie.across);
    if (lie.roll == 0 || is_hidden(spread))
        cut_cloth(planning, spread, name, width, height);
    else
        cut_seen(planning, spread, name, &lie, reach);
    planning->plan->covers.at[line].before = reach->before;
    planning->plan->covers.at[line].below = reach->below;
    if (spread->stock->repeat_along > 0 && side_axis(spread->side) != AXIS_Z)
        planning->plan->covers.at[line].motif = planning->value[TRADE_PATTERN_RISE];
}

void cut_second_face(struct planning *planning, struct spread *spread, const char *name,
                     int64_t width, int64_t height, const struct reach *reach)
{
    struct lie lie = lie_of(planning, spread, width, height);
    struct spread second = *spread;
    struct seams seams;
    bool across;

    if (lie.roll == 0 || is_hidden(spread)) {
        spread_cloth(planning, spread, name, width, height, &across);
        return;
    }
    second.side = side_opposite(spread->side);
    seams = seams_place(planning, &second, lie.across, lie.cut,
                        lie.across ? reach->below : reach->before, lie.roll);
    cut_widths(planning, spread, name, &lie, &seams);
}

/* The part below a seam, of the thin cloth. */
static void cut_thin(struct planning *planning, struct spread *spread, int64_t width,
                     int64_t height)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, spread->layer->thin);
    struct spread thin = *spread;
    bool across;

    thin.stock = stock;
    thin.thin = true;
    spread_cloth(planning, &thin, "thin cloth", width, height, &across);
    spread->pieces = thin.pieces;
    spread->surface = thin.surface;
    sew_thin(planning, spread, width);
}

void cut_on_face(struct planning *planning, struct spread *spread, const char *name, int64_t width,
                 int64_t height, const struct reach *reach)
{
    int64_t thin = thin_begins(planning, spread);
    int64_t allowance = planning->value[TRADE_SEAM_ALLOWANCE];
    size_t line = planning->plan->covers.count;

    tell_handles(planning, spread);
    seam_by_hand(planning, spread);
    if (thin == 0) {
        cut_whole(planning, spread, name, width, height, reach);
        return;
    }
    cut_whole(planning, spread, name, width, height - reach->below - thin + allowance,
              &(struct reach){reach->before, allowance - thin});
    cut_thin(planning, spread, width, reach->below + thin + allowance);
    planning->plan->covers.at[line].thin = reach->below + thin + allowance;
}
