/*
 * Staples: which rows hold a layer.
 *
 * 1  A layer that lands on one face on all four sides is held by one closed loop, round the outline
 *    of its face. Where an edge has a pitch or a class of its own the loop falls into open rows.
 * 2  Otherwise each landed edge is a row. A row on a side goes on over the side next to it where
 *    the cloth is wrapped round that one.
 * 3  A sleeve has a row on both faces for each open upright edge, one row that goes round both
 *    faces and the boxing between for an open top or bottom, and one for each end of its boxing.
 *    Where the wood behind an open upright edge is too narrow for two landings the flaps lie one
 *    over the other in one row, which catches the ends of the boxing too.
 * 4  Corners are folded where two landed edges land on the same face; each is counted once, with
 *    the upright edge (on a sleeve with the row that goes round).
 * 5  A wrapped cover is held by temporary staples all round, or along its longest rows where it is
 *    no loop; a sewn one along its longest open edge.
 * 6  Batting is held where its cover is, along the longest rows only when that is no loop: its ends
 *    are caught by the cover. What a face keeps bare beside a joint takes no staples. Rows
 *    of a sleeve go on over it, as worked examples count them: the few more staples do no harm.
 */
#include "plan/cover.h"

#include "plan/cover_sums.h"
#include "plan/geometry.h"
#include "plan/layers.h"

#include <assert.h>

/* ---- pitch ---- */

static bool covered_later(const struct model *model, const struct layer *lining)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *over = &model->layers.at[i];

        if (over->kind == LAYER_COVER && layers_share_face(over, lining))
            return true;
    }
    return false;
}

static enum trade pitch_of(const struct planning *planning, const struct spread *spread)
{
    static const enum trade by_kind[LAYER_COUNT] = {
        [LAYER_FOAM] = TRADE_STAPLE_BATTING_PITCH,
        [LAYER_BATTING] = TRADE_STAPLE_BATTING_PITCH,
        [LAYER_LINING] = TRADE_STAPLE_LINING_PITCH,
        [LAYER_COVER] = TRADE_STAPLE_COVER_PITCH,
        [LAYER_WELT] = TRADE_STAPLE_WELT_PITCH,
        [LAYER_OUTSIDE_BACK] = TRADE_STAPLE_BOTTOM_PITCH,
        [LAYER_DUST_COVER] = TRADE_STAPLE_DUST_PITCH,
        [LAYER_TRIM] = TRADE_STAPLE_COVER_PITCH,
    };
    const struct layer *layer = spread->layer;

    assert(layer->kind >= 0 && layer->kind < LAYER_COUNT);
    if (layer->kind == LAYER_LINING && covered_later(planning->model, layer))
        return TRADE_STAPLE_MUSLIN_PITCH;
    return by_kind[layer->kind];
}

static int64_t edge_pitch(const struct planning *planning, const struct spread *spread,
                          int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    if (spread->brims[edge].pitch > 0)
        return spread->brims[edge].pitch;
    if (spread->layer->kind == LAYER_COVER && edge_is_curved(spread, edge))
        return planning->value[TRADE_STAPLE_COVER_CURVE];
    if (spread->layer->kind == LAYER_COVER && is_board_edge(spread, spread_landing(spread, edge)))
        return length_smaller(planning->value[TRADE_STAPLE_COVER_PITCH],
                              planning->value[TRADE_STAPLE_EDGE_PITCH]);
    return planning->value[pitch_of(planning, spread)];
}

/* ---- rows ---- */

/* Rows are gathered first, because which are basted depends on the longest. */
struct staple_rows {
    LIST_OF(struct staple_row) of;
};

static struct staple_row *rows_add(struct planning *planning, struct staple_rows *rows,
                                   const struct spread *spread, int64_t edge, int64_t length)
{
    struct staple_row *row = LIST_ADD(planning->arena, &rows->of);

    row->edge = edge;
    row->landing_side = spread_landing(spread, edge);
    row->length = length;
    row->pitch = edge_pitch(planning, spread, edge);
    return row;
}

/* What a face keeps bare at an edge, beside a joint. */
static int64_t bare_at(const struct planning *planning, const struct spread *spread, int64_t edge)
{
    return spread->layer->both ? 0 : batting_kept_back(planning, spread, 0, edge);
}

/* Lays an edge into the row at `from`, as much of it as there is to hold, and returns how long that
 * is. */
static int64_t row_stretch(const struct planning *planning, const struct spread *spread,
                           struct staple_row *row, struct stretch stretch)
{
    int64_t ends[2];
    int64_t end;

    edge_neighbours(stretch.edge, ends);
    stretch.straight = spread_straight(spread, stretch.edge);
    end = stretch.straight - bare_at(planning, spread, ends[1]);
    stretch.begin =
        spread_along(planning->model, spread, stretch.edge, bare_at(planning, spread, ends[0]));
    stretch.length =
        length_larger(0, spread_along(planning->model, spread, stretch.edge, end) - stretch.begin);
    assert(row->stretch_count < ROW_STRETCHES);
    row->stretches[row->stretch_count++] = stretch;
    return stretch.length;
}

/* A row along the whole of one edge. */
static struct staple_row *rows_add_edge(struct planning *planning, struct staple_rows *rows,
                                        const struct spread *spread, int64_t edge, int face)
{
    struct staple_row *row = rows_add(planning, rows, spread, edge, 0);

    row->length = row_stretch(planning, spread, row, (struct stretch){.edge = edge, .face = face});
    return row;
}

static void row_corner(struct staple_row *row, int64_t at)
{
    assert(row->corner_count < ROW_CORNERS);
    row->corners[row->corner_count++] = at;
}

static void rows_place(struct planning *planning, const struct spread *spread,
                       const struct staple_rows *rows)
{
    for (size_t i = 0; i < rows->of.count; i++)
        row_add(planning, spread, &rows->of.at[i]);
}

static int64_t longest(const struct staple_rows *rows)
{
    int64_t length = 0;

    for (size_t i = 0; i < rows->of.count; i++)
        if (rows->of.at[i].length > length)
            length = rows->of.at[i].length;
    return length;
}

static bool folds_corners(const struct spread *spread)
{
    return spread->layer->kind == LAYER_COVER;
}

/* ---- one closed loop ---- */

static bool lands_as_one(const struct spread *spread)
{
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (spread->brims[edge].ending == ENDING_STOP ||
            spread_landing(spread, edge) != spread_landing(spread, EDGE_LEFT))
            return false;
    return true;
}

/* Up the right side, back along the top, down the left, from the bottom's left end. */
static void add_loop(struct planning *planning, struct staple_rows *rows,
                     const struct spread *spread)
{
    static const int64_t round[EDGE_COUNT] = {EDGE_BOTTOM, EDGE_RIGHT, EDGE_TOP, EDGE_LEFT};
    struct staple_row *row = rows_add(planning, rows, spread, EDGE_BOTTOM, 0);

    row->edge = EDGE_LOOP;
    row->loop = true;
    if (!lands_as_one(spread))
        row->landing_side = spread->side;
    for (int i = 0; i < EDGE_COUNT; i++) {
        if (folds_corners(spread) && spread->layer->shape != SHAPE_FLAT)
            row_corner(row, row->length);
        row->length += row_stretch(
            planning, spread, row,
            (struct stretch){.edge = round[i], .from = row->length, .backward = i >= 2});
    }
}

/* What is stapled later is a row of its own; shut in by a join or not is the same at the bench. */
static int64_t stapled_when(struct planning *planning, const struct spread *spread, int64_t edge)
{
    int64_t class = edge_whole_class(planning, spread, edge);

    return class == CLASS_OPENING || class == CLASS_SITE ? class : CLASS_FREE;
}

/* Do all edges go into one row? */
static bool edges_alike(struct planning *planning, const struct spread *spread)
{
    int64_t when = stapled_when(planning, spread, EDGE_LEFT);
    int64_t pitch = edge_pitch(planning, spread, EDGE_LEFT);

    for (int64_t edge = EDGE_LEFT + 1; edge < EDGE_COUNT; edge++)
        if (edge_pitch(planning, spread, edge) != pitch ||
            stapled_when(planning, spread, edge) != when)
            return false;
    return true;
}

/* ---- one face ---- */

static bool wraps(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    return !spread->brims[edge].inside && spread->brims[edge].ending == ENDING_WRAP;
}

/* How much longer a row is at the end towards a neighbour that goes round its side. */
static int64_t goes_on(const struct spread *spread, int64_t edge, int64_t neighbour)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    bool beside = spread->layer->shape == SHAPE_WRAPPED && !wraps(spread, edge) &&
                  !spread->brims[edge].inside;

    return beside && wraps(spread, neighbour) ? spread->depth : 0;
}

static void add_edge_row(struct planning *planning, struct staple_rows *rows,
                         const struct spread *spread, int64_t edge)
{
    int64_t beside[2];
    struct staple_row *row = rows_add(planning, rows, spread, edge, 0);
    int64_t before;

    edge_neighbours(edge, beside);
    before = goes_on(spread, edge, beside[0]);
    row->length = before + goes_on(spread, edge, beside[1]);
    row->length +=
        row_stretch(planning, spread, row, (struct stretch){.edge = edge, .from = before});
    for (int end = 0; end < 2; end++)
        if (folds_corners(spread) && edge_is_upright(edge) &&
            spread->brims[beside[end]].ending != ENDING_STOP &&
            spread_landing(spread, beside[end]) == row->landing_side)
            row_corner(row, end == 0 ? 0 : row->length);
}

static void staple_face(struct planning *planning, const struct spread *spread)
{
    struct staple_rows rows = {.of = {{0}}};
    bool cover = spread->layer->kind == LAYER_COVER;
    int64_t length;

    if (lands_as_one(spread) && edges_alike(planning, spread)) {
        add_loop(planning, &rows, spread);
    } else {
        for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
            if (spread->brims[edge].ending != ENDING_STOP)
                add_edge_row(planning, &rows, spread, edge);
    }
    length = longest(&rows);
    for (size_t i = 0; i < rows.of.count; i++)
        rows.of.at[i].basted = cover && rows.of.at[i].length == length;
    rows_place(planning, spread, &rows);
}

/* Linings, dust covers and the like are folded in and stapled on their own face, all round. */
static void staple_flat(struct planning *planning, const struct spread *spread)
{
    struct staple_rows rows = {.of = {{0}}};

    if (edges_alike(planning, spread)) {
        add_loop(planning, &rows, spread);
    } else {
        for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
            rows_add_edge(planning, &rows, spread, edge, 0);
    }
    rows_place(planning, spread, &rows);
}

/* ---- sleeves: two faces ---- */

/* Both flaps of an edge are left loose, and the wood behind it is too narrow for two landings. */
static bool flaps_overlap(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    const struct brim *brim = &spread->brims[edge];
    bool loose = brim->by_class == CLASS_OPENING || brim->by_class == CLASS_SITE;

    return loose && 2 * brim->landing > spread->depth;
}

/* One flap folded over the other, through both of them and the ends of the boxing. */
static void add_shared_row(struct planning *planning, struct staple_rows *rows,
                           const struct spread *spread, int64_t edge)
{
    struct staple_row *row = rows_add_edge(planning, rows, spread, edge, 0);

    row_stretch(planning, spread, row, (struct stretch){.edge = edge, .face = 1});
}

/* The ends of boxing strips where they hang out of an open upright edge. */
static void add_boxing_ends(struct planning *planning, struct staple_rows *rows,
                            const struct spread *spread, int64_t edge)
{
    for (int64_t strip = EDGE_TOP; strip <= EDGE_BOTTOM; strip++)
        if (spread->brims[strip].ending == ENDING_SEWN)
            rows_add(planning, rows, spread, edge, spread->depth);
}

/* A row round both faces, beginning at the open side of the first one. */
static void add_round(struct planning *planning, struct staple_rows *rows,
                      const struct spread *spread, int64_t edge, int64_t open_side)
{
    bool backward = open_side == EDGE_RIGHT;
    struct staple_row *row = rows_add(planning, rows, spread, edge, 0);
    struct stretch stretch = {.edge = edge, .backward = backward};

    stretch.from = row_stretch(planning, spread, row, stretch) + spread->depth;
    stretch.face = 1;
    stretch.backward = !backward;
    row->length = stretch.from + row_stretch(planning, spread, row, stretch);
    if (!folds_corners(spread))
        return;
    row_corner(row, 0);
    row_corner(row, row->length);
}

/* A row round all of a sleeve that is closed at both sides. */
static void add_ring(struct planning *planning, struct staple_rows *rows,
                     const struct spread *spread, int64_t edge)
{
    struct staple_row *row = rows_add(planning, rows, spread, edge, 0);
    struct stretch stretch = {.edge = edge};

    row->loop = true;
    stretch.from = row_stretch(planning, spread, row, stretch) + spread->depth;
    stretch.face = 1;
    stretch.backward = true;
    row->length = stretch.from + row_stretch(planning, spread, row, stretch) + spread->depth;
}

static void add_level_rows(struct planning *planning, struct staple_rows *rows,
                           const struct spread *spread, int64_t edge)
{
    bool left = brim_is_open(spread, EDGE_LEFT);
    bool right = brim_is_open(spread, EDGE_RIGHT);
    struct staple_row *row;

    if (left != right) {
        add_round(planning, rows, spread, edge, left ? EDGE_LEFT : EDGE_RIGHT);
        return;
    }
    if (!left) {
        add_ring(planning, rows, spread, edge);
        return;
    }
    for (int face = 0; face < 2; face++) {
        row = rows_add_edge(planning, rows, spread, edge, face);
        if (folds_corners(spread)) {
            row_corner(row, 0);
            row_corner(row, row->length);
        }
    }
}

/* The first edge whose rows are the longest. */
static void baste_longest(struct staple_rows *rows)
{
    int64_t length = longest(rows);
    int64_t edge = EDGE_LOOP;

    for (size_t i = 0; i < rows->of.count; i++) {
        struct staple_row *row = &rows->of.at[i];

        if (edge == EDGE_LOOP && row->length == length)
            edge = row->edge;
        row->basted = row->edge == edge && row->length == length;
    }
}

static void staple_sleeve(struct planning *planning, const struct spread *spread)
{
    struct staple_rows rows = {.of = {{0}}};
    bool cover = spread->layer->kind != LAYER_BATTING;
    bool hung = false; /* batting that goes all round hangs from one row */

    for (int64_t edge = EDGE_LEFT; edge <= EDGE_RIGHT; edge++) {
        if (!brim_is_open(spread, edge))
            continue;
        assert(spread->layer->both);
        if (cover && flaps_overlap(spread, edge)) {
            add_shared_row(planning, &rows, spread, edge);
            continue;
        }
        rows_add_edge(planning, &rows, spread, edge, 0);
        rows_add_edge(planning, &rows, spread, edge, 1);
        if (cover)
            add_boxing_ends(planning, &rows, spread, edge);
    }
    for (int64_t edge = EDGE_TOP; edge <= EDGE_BOTTOM; edge++) {
        if (!brim_is_open(spread, edge) || hung)
            continue;
        add_level_rows(planning, &rows, spread, edge);
        hung = !cover && rows.of.at[rows.of.count - 1].loop;
    }
    if (cover)
        baste_longest(&rows);
    rows_place(planning, spread, &rows);
}

/* ---- batting ---- */

/* Does the cover over this batting go round its whole face in one way? */
static bool covered_as_one(const struct model *model, const struct layer *batting)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *over = &model->layers.at[i];

        if (over->kind != LAYER_COVER || over->box != batting->box ||
            over->group != batting->group || over->side != batting->side || over->both)
            continue;
        return over->u == 0 && over->v == 0 && over->width == 0 && over->height == 0 &&
               over->left == over->right && over->left == over->top && over->left == over->bottom;
    }
    return true;
}

static void staple_batting(struct planning *planning, const struct spread *spread)
{
    struct staple_rows rows = {.of = {{0}}};
    struct staple_rows held = {.of = {{0}}};

    if (covered_as_one(planning->model, spread->layer)) {
        add_loop(planning, &held, spread);
    } else {
        for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
            add_edge_row(planning, &rows, spread, edge);
        for (size_t i = 0; i < rows.of.count; i++)
            if (rows.of.at[i].length == longest(&rows))
                *LIST_ADD(planning->arena, &held.of) = rows.of.at[i];
    }
    rows_place(planning, spread, &held);
}

/* ---- outside backs, welts, buttons ---- */

/* Blind-tacked at the top with a card strip over it, stapled under the bottom; the sides hang in
 * strips or stitches. */
static void staple_blind(struct planning *planning, const struct spread *spread)
{
    struct staple_rows rows = {.of = {{0}}};
    struct staple_row *row;

    for (int64_t edge = back_is_stapled(spread) ? EDGE_LEFT : EDGE_TOP; edge <= EDGE_BOTTOM;
         edge++) {
        row = rows_add_edge(planning, &rows, spread, edge, 0);
        if (edge != EDGE_TOP)
            continue;
        if (spread->brims[edge].pitch == 0)
            row->pitch = planning->value[TRADE_STAPLE_BLIND_PITCH];
        row->pitch_over = planning->value[TRADE_STAPLE_CARD_PITCH];
    }
    rows_place(planning, spread, &rows);
}

/* Where welt is not sewn into a seam its flange is stapled, over the length that its ends lap. */
static void staple_welt(struct planning *planning, const struct spread *spread)
{
    struct staple_rows rows = {.of = {{0}}};

    if (lands_as_one(spread) && spread->brims[EDGE_LEFT].ending != ENDING_SEWN) {
        add_loop(planning, &rows, spread);
        rows.of.at[0].length += planning->value[TRADE_WELT_JOIN];
    } else {
        for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
            int64_t ending = spread->brims[edge].ending;

            if (ending != ENDING_STOP && ending != ENDING_SEWN)
                rows_add_edge(planning, &rows, spread, edge, 0);
        }
    }
    rows_place(planning, spread, &rows);
}

static void staple_cords(struct planning *planning, const struct spread *spread)
{
    struct staple_row row = {.edge = EDGE_CORDS, .landing_side = side_opposite(spread->side)};

    row.extra = tuft_count(spread->tufting) * planning->value[TRADE_STAPLE_CORD_EACH];
    row_add(planning, spread, &row);
}

/* The cover is stapled down between its channels, through the slit foam; each line is a row. */
static void staple_channels(struct planning *planning, const struct spread *spread)
{
    struct staple_row row = {.edge = EDGE_CHANNELS,
                             .landing_side = spread->side,
                             .length = spread->field.line_length,
                             .pitch = planning->value[TRADE_STAPLE_COVER_PITCH]};

    assert(spread->field.lines > 0);
    row.extra = (spread->field.lines - 1) * staples_open(row.length, row.pitch);
    row_add(planning, spread, &row);
}

static void staple_field(struct planning *planning, const struct spread *spread)
{
    if (spread->tufting && spread->tufting->made == TUFTS_BUTTONS)
        staple_cords(planning, spread);
    else if (spread->tufting && spread->field.lines > 0)
        staple_channels(planning, spread);
}

/* ---- all ---- */

static void staple_cloth(struct planning *planning, const struct spread *spread)
{
    int64_t shape = spread->layer->shape;

    if (shape == SHAPE_SEWN && spread->layer->both)
        staple_sleeve(planning, spread);
    else if (shape == SHAPE_SEWN || shape == SHAPE_WRAPPED)
        staple_face(planning, spread);
    else if (shape != SHAPE_RUN)
        staple_flat(planning, spread);
    staple_field(planning, spread);
}

/* A cushion has no wood to staple to. */
static bool lies_on_cushions(const struct spread *spread)
{
    for (size_t i = 0; i < spread->plot_count; i++)
        if (spread->plots[i].box->frame != FRAME_CUSHION)
            return false;
    return true;
}

void staple_layer(struct planning *planning, const struct spread *spread)
{
    if (lies_on_cushions(spread) || spread->layer->slip)
        return;
    switch (spread->layer->kind) {
    case LAYER_FOAM:
    case LAYER_TRIM:
        break;
    case LAYER_BATTING:
        if (spread->pieces == 0) /* no room for any beside its joints */
            break;
        if (spread->layer->both)
            staple_sleeve(planning, spread);
        else
            staple_batting(planning, spread);
        break;
    case LAYER_WELT:
        staple_welt(planning, spread);
        break;
    case LAYER_OUTSIDE_BACK:
        if (spread->closing == CLOSING_BLIND)
            staple_blind(planning, spread);
        else
            staple_flat(planning, spread);
        break;
    default:
        staple_cloth(planning, spread);
    }
}
