/*
 * People, minutes and sessions. What a step takes is a sum of terms, each a trade value times an
 * amount that the plan counted; the table below says which. On top come factors: of the cloth, of
 * the maker's skill, of working alone, and for a learner of the first and second of each kind.
 */
#include "plan/order.h"

#include "base/fault.h"
#include "plan/curve.h"

#include <assert.h>
#include <stddef.h>
#include <string.h>

/* Amounts in thousandths of the unit that the trade value is for: one piece, a metre (a length in
 * whole millimetres is just that), a square metre. */
enum amount {
    AMOUNT_ONCE,
    AMOUNT_PARTS,     /* cut from the stock */
    AMOUNT_SPOILED,   /* of these, cut anew */
    AMOUNT_STICKS,    /* the same where the stock is sticks, none elsewhere */
    AMOUNT_SHEETS,    /* and sheets */
    AMOUNT_SOFT,      /* pieces of cloth and padding of the build */
    AMOUNT_ALL_PARTS, /* of the build */
    AMOUNT_JOINTS,    /* of the box */
    AMOUNT_SCREWS,    /* of the panels */
    AMOUNT_LANDED,    /* screws in landing wood of the box */
    AMOUNT_CROWN,     /* sawn along its outline, metres: landing wood, */
    AMOUNT_OUTLINE,   /* and the panel */
    AMOUNT_POINTS,    /* of the join */
    AMOUNT_PIECES,    /* of the layer */
    AMOUNT_STRAIGHT,  /* seams of the layer, metres */
    AMOUNT_BOXING,    /* of its boxing */
    AMOUNT_BOXING_CORNERS,
    AMOUNT_CORD, /* closed into its strip */
    AMOUNT_WELT, /* welt sewn on, or stapled */
    AMOUNT_ZIPS,
    AMOUNT_CLOSED_BY_HAND, /* seam of a cushion, metres; of a back its own terms count it */
    AMOUNT_EDGE,           /* of the layer, metres */
    AMOUNT_AREA,           /* of the layer, square metres */
    AMOUNT_TRIMMED,        /* along an outline, metres */
    AMOUNT_CORNERS,
    AMOUNT_BUTTONS_DEEP,
    AMOUNT_BUTTONS_SURFACE,
    AMOUNT_BUTTONS,
    AMOUNT_UNDER_TUFTS, /* holes through the foam */
    AMOUNT_NAILS,
    AMOUNT_STRIP,    /* metres */
    AMOUNT_BACK_RAW, /* edges of what shuts a box, metres, by how they are fixed */
    AMOUNT_BACK_ROW,
    AMOUNT_BACK_TOP,
    AMOUNT_BACK_SIDE,
    AMOUNT_BACK_STITCHED,
    AMOUNT_BACK_UNDER,
    AMOUNT_CLOTH, /* taken off all rolls of it, metres */
    AMOUNT_SLITS,
    AMOUNT_PATCHES,
    AMOUNT_HOLES,    /* of the join, to be drilled */
    AMOUNT_FLAP,     /* metres */
    AMOUNT_FITTINGS, /* of the box */
    AMOUNT_BOXES,    /* of the build */
    AMOUNT_FLIGHTS,  /* of stairs, for each box */
    AMOUNTS
};

struct term {
    int kind; /* of step */
    enum trade value;
    enum amount amount;
};

static const struct term terms[] = {
    {STEP_DECIDE, TRADE_MINUTES_MEASURE_ROOM, AMOUNT_ONCE},
    {STEP_ROUTE, TRADE_MINUTES_MEASURE_ROOM, AMOUNT_ONCE},
    {STEP_CHECK, TRADE_MINUTES_MEASURE_ROOM, AMOUNT_ONCE},
    {STEP_SHELF, TRADE_MINUTES_SHELF, AMOUNT_ONCE},
    {STEP_BUY, TRADE_MINUTES_SHOPPING, AMOUNT_ONCE},
    {STEP_REBUY, TRADE_MINUTES_SHOPPING, AMOUNT_ONCE},
    {STEP_RECUT, TRADE_MINUTES_CROSSCUT, AMOUNT_SPOILED},
    {STEP_GAUGE, TRADE_MINUTES_PICK_STICKS, AMOUNT_ONCE},
    {STEP_CUT, TRADE_MINUTES_CROSSCUT, AMOUNT_STICKS},
    {STEP_CUT, TRADE_MINUTES_SHEET_CUT, AMOUNT_SHEETS},
    {STEP_LABEL, TRADE_MINUTES_LABEL, AMOUNT_ALL_PARTS},
    {STEP_UNROLL, TRADE_MINUTES_BATTING_PIECE, AMOUNT_ONCE},
    {STEP_FRAME, TRADE_MINUTES_JOINT, AMOUNT_JOINTS},
    {STEP_FRAME, TRADE_MINUTES_PANEL_SCREW, AMOUNT_LANDED},
    {STEP_FRAME, TRADE_MINUTES_OUTLINE, AMOUNT_CROWN},
    {STEP_PANEL, TRADE_MINUTES_PANEL_SCREW, AMOUNT_SCREWS},
    {STEP_PANEL, TRADE_MINUTES_OUTLINE, AMOUNT_OUTLINE},
    {STEP_RECORD, TRADE_MINUTES_RECORD_BOX, AMOUNT_ONCE},
    {STEP_BED, TRADE_MINUTES_MAP_HOLE, AMOUNT_POINTS},
    {STEP_DRY, TRADE_MINUTES_DRY_FIT, AMOUNT_ONCE},
    {STEP_DRILL, TRADE_MINUTES_MATCH_DRILL, AMOUNT_HOLES},
    {STEP_DRILL, TRADE_MINUTES_DRIVE_ONCE, AMOUNT_POINTS},
    {STEP_MAP, TRADE_MINUTES_MAP_HOLE, AMOUNT_POINTS},
    {STEP_INSERT, TRADE_MINUTES_INSERT, AMOUNT_FITTINGS},
    {STEP_NUTS, TRADE_MINUTES_INSERT, AMOUNT_POINTS},
    {STEP_CLEAT, TRADE_MINUTES_SCREW, AMOUNT_FITTINGS},
    {STEP_HANG, TRADE_MINUTES_HINGE, AMOUNT_FITTINGS},
    {STEP_TUFT, TRADE_MINUTES_TUFT_HOLE, AMOUNT_BUTTONS},
    {STEP_EASE, TRADE_MINUTES_EASE_EDGES, AMOUNT_ONCE},
    {STEP_EASE, TRADE_MINUTES_OUTLINE, AMOUNT_OUTLINE},
    {STEP_PATCH, TRADE_MINUTES_PATCH, AMOUNT_POINTS},
    {STEP_LOCATE, TRADE_MINUTES_LOCATOR, AMOUNT_POINTS},
    {STEP_BARE, TRADE_MINUTES_RECORD_BOX, AMOUNT_ONCE},
    {STEP_WEB, TRADE_MINUTES_WEBBING, AMOUNT_ONCE},
    {STEP_INSPECT, TRADE_MINUTES_TEST_SEAM, AMOUNT_ONCE},
    {STEP_INSPECT, TRADE_MINUTES_INSPECT_CLOTH, AMOUNT_CLOTH},
    {STEP_CHALK, TRADE_MINUTES_CHALK, AMOUNT_SOFT},
    {STEP_SHEAR, TRADE_MINUTES_CUT_PLAIN, AMOUNT_PARTS},
    {STEP_SEW, TRADE_MINUTES_SEAM, AMOUNT_STRAIGHT},
    {STEP_SEW, TRADE_MINUTES_BOXING_SEAM, AMOUNT_BOXING},
    {STEP_SEW, TRADE_MINUTES_BOXING_CORNER, AMOUNT_BOXING_CORNERS},
    {STEP_SEW, TRADE_MINUTES_WELT_MAKE, AMOUNT_CORD},
    {STEP_SEW, TRADE_MINUTES_WELT_ATTACH, AMOUNT_WELT},
    {STEP_SEW, TRADE_MINUTES_ZIP, AMOUNT_ZIPS},
    {STEP_SLICE, TRADE_MINUTES_FOAM_CUT, AMOUNT_PARTS},
    {STEP_PAD, TRADE_MINUTES_FOAM_GLUE, AMOUNT_AREA},
    {STEP_PAD, TRADE_MINUTES_FOAM_CUT, AMOUNT_TRIMMED},
    {STEP_PAD, TRADE_MINUTES_TUFT_HOLE_FOAM, AMOUNT_UNDER_TUFTS},
    {STEP_BATTING, TRADE_MINUTES_BATTING, AMOUNT_EDGE},
    {STEP_BATTING, TRADE_MINUTES_BATTING_PIECE, AMOUNT_PIECES},
    {STEP_BATTING, TRADE_MINUTES_PATCH, AMOUNT_PATCHES},
    {STEP_LINING, TRADE_MINUTES_MUSLIN, AMOUNT_EDGE},
    {STEP_PADDED, TRADE_MINUTES_LOOK, AMOUNT_ONCE},
    {STEP_TRY, TRADE_MINUTES_TRY_COVER, AMOUNT_ONCE},
    {STEP_COVER, TRADE_MINUTES_LAY_COVER, AMOUNT_ONCE},
    {STEP_COVER, TRADE_MINUTES_BASTE, AMOUNT_EDGE},
    {STEP_COVER, TRADE_MINUTES_SLIP_STITCH, AMOUNT_CLOSED_BY_HAND},
    {STEP_LOOK, TRADE_MINUTES_LOOK, AMOUNT_ONCE},
    {STEP_BUTTON, TRADE_MINUTES_BUTTON_COVER, AMOUNT_BUTTONS},
    {STEP_BUTTON, TRADE_MINUTES_BUTTON_DEEP, AMOUNT_BUTTONS_DEEP},
    {STEP_BUTTON, TRADE_MINUTES_BUTTON_SURFACE, AMOUNT_BUTTONS_SURFACE},
    {STEP_STAPLE, TRADE_MINUTES_COVER_AIR, AMOUNT_EDGE},
    {STEP_STAPLE, TRADE_MINUTES_TRIM_HANDLES, AMOUNT_EDGE},
    {STEP_CORNER, TRADE_MINUTES_CORNER, AMOUNT_CORNERS},
    {STEP_SLIT, TRADE_MINUTES_SLIT, AMOUNT_SLITS},
    {STEP_FIND, TRADE_MINUTES_FIND_HOLE, AMOUNT_POINTS},
    {STEP_OFFER, TRADE_MINUTES_OFFER, AMOUNT_ONCE},
    {STEP_DRIVE, TRADE_MINUTES_JOIN_SCREW, AMOUNT_POINTS},
    {STEP_FLAP, TRADE_MINUTES_FLAP, AMOUNT_FLAP},
    {STEP_BACK, TRADE_MINUTES_DUST_COVER, AMOUNT_BACK_RAW},
    {STEP_BACK, TRADE_MINUTES_LINING, AMOUNT_BACK_ROW},
    {STEP_BACK, TRADE_MINUTES_BLIND_TOP, AMOUNT_BACK_TOP},
    {STEP_BACK, TRADE_MINUTES_BLIND_SIDE, AMOUNT_BACK_SIDE},
    {STEP_BACK, TRADE_MINUTES_SLIP_STITCH, AMOUNT_BACK_STITCHED},
    {STEP_BACK, TRADE_MINUTES_BLIND_BOTTOM, AMOUNT_BACK_UNDER},
    {STEP_DUST, TRADE_MINUTES_DUST_COVER, AMOUNT_EDGE},
    {STEP_HINGE, TRADE_MINUTES_HINGE, AMOUNT_FITTINGS},
    {STEP_LEG, TRADE_MINUTES_LEG, AMOUNT_FITTINGS},
    {STEP_FIT, TRADE_MINUTES_LEG, AMOUNT_FITTINGS},
    {STEP_MOVE, TRADE_MINUTES_MOVE_BOX, AMOUNT_BOXES},
    {STEP_MOVE, TRADE_MINUTES_MOVE_FLIGHT, AMOUNT_FLIGHTS},
    {STEP_MARK, TRADE_MINUTES_MARK_ROOM, AMOUNT_ONCE},
    {STEP_SET, TRADE_MINUTES_SET_BOX, AMOUNT_BOXES},
    {STEP_PUSH, TRADE_MINUTES_OFFER, AMOUNT_ONCE},
    {STEP_FIX, TRADE_MINUTES_JOIN_SCREW, AMOUNT_POINTS},
    {STEP_TRIM, TRADE_MINUTES_NAIL, AMOUNT_NAILS},
    {STEP_TRIM, TRADE_MINUTES_NAIL_STRIP, AMOUNT_STRIP},
    {STEP_FINAL, TRADE_MINUTES_FINAL_CHECK, AMOUNT_ONCE},
    {STEP_ACCOUNT, TRADE_MINUTES_ACCOUNT, AMOUNT_ONCE},
};

#define TERM_COUNT (sizeof terms / sizeof *terms)
#define PIECES INT64_C(1000) /* thousandths in one */

/* ---- amounts ---- */

static int64_t fittings_of(const struct model *model, const struct work *work)
{
    int64_t count = 0;

    for (size_t i = 0; i < model->fittings.count; i++)
        if (model->fittings.at[i].box == work->step.box &&
            step_puts_on(work->step.kind, model->fittings.at[i].kind))
            count += model->fittings.at[i].count;
    return count;
}

/* What keeps a figure that is counted (counted.h). */
enum holder { OF_NOTHING, OF_BOX, OF_FACING, OF_JOIN, OF_LAYER, OF_BACK, OF_STOCK };

#define IN_PIECES 0           /* the figure is a count */
#define IN_METRES LENGTH_MM   /* it is a length */
#define IN_SQUARE_METRES 1000 /* it is in square millimetres */

#define FIGURE(holder, unit, type, member)          \
    {                                               \
        holder, unit, offsetof(struct type, member) \
    }

/* The amounts that are one figure of the counts; the others are worked out by amount_of. */
static const struct figure {
    enum holder of;
    int64_t unit; /* of the figure in a thousandth of the amount; IN_PIECES */
    size_t at;    /* in what keeps it */
} figures[AMOUNTS] = {
    [AMOUNT_PARTS] = FIGURE(OF_STOCK, IN_PIECES, stock_counted, parts),
    [AMOUNT_JOINTS] = FIGURE(OF_BOX, IN_PIECES, box_counted, joints),
    [AMOUNT_LANDED] = FIGURE(OF_BOX, IN_PIECES, box_counted, landed),
    [AMOUNT_CROWN] = FIGURE(OF_BOX, IN_METRES, box_counted, crown),
    [AMOUNT_SCREWS] = FIGURE(OF_FACING, IN_PIECES, facing_counted, screws),
    [AMOUNT_POINTS] = FIGURE(OF_JOIN, IN_PIECES, join_counted, points),
    [AMOUNT_HOLES] = FIGURE(OF_JOIN, IN_PIECES, join_counted, to_drill),
    [AMOUNT_PIECES] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, pieces),
    [AMOUNT_STRAIGHT] = FIGURE(OF_LAYER, IN_METRES, layer_counted, by_seam[SEAM_STRAIGHT]),
    [AMOUNT_BOXING] = FIGURE(OF_LAYER, IN_METRES, layer_counted, by_seam[SEAM_BOXING]),
    [AMOUNT_BOXING_CORNERS] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, boxing_corners),
    [AMOUNT_CORD] = FIGURE(OF_LAYER, IN_METRES, layer_counted, by_seam[SEAM_CORD]),
    [AMOUNT_WELT] = FIGURE(OF_LAYER, IN_METRES, layer_counted, by_seam[SEAM_WELT]),
    [AMOUNT_ZIPS] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, zips),
    [AMOUNT_EDGE] = FIGURE(OF_LAYER, IN_METRES, layer_counted, edge),
    [AMOUNT_AREA] = FIGURE(OF_LAYER, IN_SQUARE_METRES, layer_counted, area),
    [AMOUNT_TRIMMED] = FIGURE(OF_LAYER, IN_METRES, layer_counted, trimmed),
    [AMOUNT_CORNERS] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, corners),
    [AMOUNT_BUTTONS] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, buttons),
    [AMOUNT_UNDER_TUFTS] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, under_tufts),
    [AMOUNT_NAILS] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, nails),
    [AMOUNT_STRIP] = FIGURE(OF_LAYER, IN_METRES, layer_counted, strip),
    [AMOUNT_SLITS] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, slits),
    [AMOUNT_PATCHES] = FIGURE(OF_LAYER, IN_PIECES, layer_counted, patches),
    [AMOUNT_BACK_TOP] = FIGURE(OF_BACK, IN_METRES, back_way, card),
    [AMOUNT_BACK_SIDE] = FIGURE(OF_BACK, IN_METRES, back_way, strip),
    [AMOUNT_BACK_STITCHED] = FIGURE(OF_BACK, IN_METRES, back_way, stitched),
    [AMOUNT_BACK_UNDER] = FIGURE(OF_BACK, IN_METRES, back_way, under),
};

/* The way to fix a back that is taken; of any other layer one without lengths. */
static const struct back_way *back_of(const struct layer_counted *layer)
{
    static const struct back_way none = {0};

    return layer->back ? layer->back : &none;
}

static const struct layer_counted *layer_of(const struct ordering *ordering,
                                            const struct work *work)
{
    return counted_layer(ordering->planning, &ordering->counted, work->step.layer);
}

static const void *find_holder(const struct ordering *ordering, const struct work *work,
                               enum holder of)
{
    const struct planning *planning = ordering->planning;
    const struct counted *counted = &ordering->counted;

    switch (of) {
    case OF_BOX:
        return counted_box(planning, counted, work->step.box);
    case OF_FACING:
        return counted_facing(planning, counted, work->step.facing);
    case OF_JOIN:
        return counted_join(planning, counted, work->step.join);
    case OF_LAYER:
        return layer_of(ordering, work);
    case OF_BACK:
        return back_of(layer_of(ordering, work));
    case OF_STOCK:
        return counted_stock(planning, counted, work->stock);
    case OF_NOTHING:
        break;
    }
    BUG("an amount that is no figure is worked out elsewhere");
}

static int64_t figure_of(const struct ordering *ordering, const struct work *work,
                         const struct figure *figure)
{
    const char *holder = find_holder(ordering, work, figure->of);
    int64_t value;

    memcpy(&value, holder + figure->at, sizeof value);
    return figure->unit == IN_PIECES ? value * PIECES : value / figure->unit;
}

/* A lining that shuts a box has its edge all round folded in, or left raw. */
static int64_t edge_raw(const struct layer_counted *layer)
{
    return layer->raw ? layer->edge : back_of(layer)->raw;
}

static int64_t edge_in_row(const struct layer_counted *layer)
{
    return layer->back || layer->raw ? back_of(layer)->row : layer->edge;
}

/* Of a back its own terms count what is stitched by hand. */
static int64_t closed_by_hand(const struct layer_counted *layer)
{
    return layer->back ? 0 : layer->by_seam[SEAM_BY_HAND];
}

/* Buttons of a layer whose field is of that sort. */
static int64_t buttons_of(const struct ordering *ordering, const struct work *work, bool deep)
{
    const struct planning *planning = ordering->planning;
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->tuftings.count; i++)
        if (model->tuftings.at[i].layer == work->step.layer &&
            (model->tuftings.at[i].pattern != PATTERN_SHALLOW) == deep)
            return counted_layer(planning, &ordering->counted, work->step.layer)->buttons;
    return 0;
}

/* Cloth off all rolls, in thousandths of a metre. */
static int64_t cloth_taken(const struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;
    int64_t length = 0;

    for (size_t i = 0; i < model->stocks.count; i++)
        if (model->stocks.at[i].kind == STOCK_CLOTH)
            length += ordering->counted.stocks[i].taken;
    return length / LENGTH_MM;
}

static int64_t flights_of(const struct model *model)
{
    int64_t flights = 0;

    for (size_t i = 0; i < model->passages.count; i++)
        flights += model->passages.at[i].kind == PASSAGE_STAIR;
    return flights;
}

/* Parts of the work's stock where that is of the kind asked for. */
static int64_t parts_of_kind(const struct ordering *ordering, const struct work *work,
                             enum stock_word kind)
{
    const struct stock *stock = MODEL_FIND(ordering->planning->model, stock, work->stock);

    if (!stock || stock->kind != (int64_t)kind)
        return 0;
    return counted_stock(ordering->planning, &ordering->counted, work->stock)->parts;
}

/* What is sawn of the panels that a step fixes, or of a board: the top of the face, where that is
 * no straight edge. */
static int64_t outline_of(const struct planning *planning, const struct work *work)
{
    const struct facing *facing = MODEL_FIND(planning->model, facing, work->step.facing);
    const struct box *box = MODEL_FIND(planning->model, box, work->step.box);
    const struct plan *plan = planning->plan;

    for (size_t i = 0; box && i < plan->outlines.count; i++) {
        const struct plan_outline *outline = &plan->outlines.at[i];

        if (outline->box == box->key &&
            (facing ? curve_has(box, facing->side) : box->frame == FRAME_BOARD))
            return outline->lengths[EDGE_TOP];
    }
    return 0;
}

static int64_t amount_of(const struct ordering *ordering, const struct work *work,
                         enum amount amount)
{
    const struct planning *planning = ordering->planning;
    int64_t boxes = (int64_t)planning->model->boxes.count;

    assert(amount < AMOUNTS);
    switch (amount) {
    case AMOUNT_ONCE:
        return PIECES;
    case AMOUNT_ALL_PARTS:
        return ordering->counted.parts * PIECES;
    case AMOUNT_STICKS:
        return parts_of_kind(ordering, work, STOCK_STICK) * PIECES;
    case AMOUNT_SHEETS:
        return parts_of_kind(ordering, work, STOCK_SHEET) * PIECES;
    case AMOUNT_SOFT:
        return (int64_t)planning->plan->pieces.count * PIECES;
    case AMOUNT_SPOILED:
        return work->spoiled * PIECES;
    case AMOUNT_OUTLINE:
        return outline_of(planning, work) / LENGTH_MM;
    case AMOUNT_FLAP:
        return work->flap.length / LENGTH_MM;
    case AMOUNT_FITTINGS:
        return fittings_of(planning->model, work) * PIECES;
    case AMOUNT_BOXES:
        return boxes * PIECES;
    case AMOUNT_FLIGHTS:
        return boxes * flights_of(planning->model) * PIECES;
    case AMOUNT_CLOTH:
        return cloth_taken(ordering);
    case AMOUNT_BUTTONS_DEEP:
    case AMOUNT_BUTTONS_SURFACE:
        return buttons_of(ordering, work, amount == AMOUNT_BUTTONS_DEEP) * PIECES;
    case AMOUNT_CLOSED_BY_HAND:
        return closed_by_hand(layer_of(ordering, work)) / LENGTH_MM;
    case AMOUNT_BACK_RAW:
        return edge_raw(layer_of(ordering, work)) / LENGTH_MM;
    case AMOUNT_BACK_ROW:
        return edge_in_row(layer_of(ordering, work)) / LENGTH_MM;
    default:
        return figure_of(ordering, work, &figures[amount]);
    }
}

/* ---- people ---- */

/* A sleeve that goes over a box like a sock: one holds the box, one pulls. */
static bool is_pulled_on(const struct model *model, const struct work *work)
{
    const struct box *box = MODEL_FIND(model, box, work->step.box);

    return work->step.kind == STEP_COVER && work->of_layer->shape == SHAPE_SEWN &&
           work->of_layer->both && !(box && box->frame == FRAME_CUSHION);
}

static bool wants_two(const struct ordering *ordering, const struct work *work)
{
    const struct planning *planning = ordering->planning;
    const struct counted *counted = &ordering->counted;
    const struct load *load = plan_load(planning->plan, work->step.box);

    switch (step_kinds[work->step.kind].crew) {
    case CREW_TWO:
        return true;
    case CREW_LOAD:
        return load && load->people > 1;
    case CREW_FRAME:
        return counted_box(planning, counted, work->step.box)->longest >
               planning->value[TRADE_TWO_PEOPLE_FRAME];
    case CREW_PANEL:
        return counted_facing(planning, counted, work->step.facing)->longest >
               planning->value[TRADE_TWO_PEOPLE_PANEL];
    case CREW_CLOTH:
        return is_pulled_on(planning->model, work) ||
               counted_layer(planning, counted, work->step.layer)->longest >
                   planning->value[TRADE_TWO_PEOPLE_CLOTH];
    case CREW_ONE:
        break;
    }
    return false;
}

/* ---- minutes ---- */

/* minutes * ratio / 1000000; a product too large for a number keeps the minutes. */
static int64_t scaled(int64_t minutes, int64_t ratio)
{
    int64_t result = minutes;

    (void)whole_share(minutes, ratio, 1000000, &result);
    return result;
}

/* Where there is a hand gun and no other, staples take longer. */
static enum trade stapling(const struct model *model)
{
    enum trade value = TRADE_MINUTES_COVER_AIR;

    for (size_t i = 0; i < model->tools.count; i++) {
        if (model->tools.at[i].kind == TOOL_AIR_GUN)
            return TRADE_MINUTES_COVER_AIR;
        if (model->tools.at[i].kind == TOOL_HAND_GUN)
            value = TRADE_MINUTES_COVER_HAND;
    }
    return value;
}

static bool is_patterned(const struct ordering *ordering, const struct work *work)
{
    const struct stock *stock = MODEL_FIND(ordering->planning->model, stock, work->stock);

    return stock && (stock->repeat_along > 0 || stock->repeat_across > 0);
}

static int64_t plain_minutes(const struct ordering *ordering, const struct work *work)
{
    int64_t sum = 0;

    for (size_t i = 0; i < TERM_COUNT; i++) {
        enum trade value = terms[i].value;
        int64_t minutes = 0;

        if (terms[i].kind != work->step.kind)
            continue;
        if (value == TRADE_MINUTES_COVER_AIR)
            value = stapling(ordering->planning->model);
        if (value == TRADE_MINUTES_CUT_PLAIN && is_patterned(ordering, work))
            value = TRADE_MINUTES_CUT_PATTERNED;
        (void)whole_share(ordering->planning->value[value],
                          amount_of(ordering, work, terms[i].amount), PIECES, &minutes);
        sum += minutes;
    }
    return sum;
}

/* Velvet and vinyl, stripes and repeats, and curves take longer in the hands (TRADE values
 * factor.*); of what is cut and laid, not of what is looked at. Cutting to a pattern has minutes of
 * its own. */
static int64_t with_cloth(const struct ordering *ordering, const struct work *work, int64_t minutes)
{
    static const int by_cloth[] = {STEP_SHEAR,  STEP_SEW,    STEP_TRY,  STEP_COVER,
                                   STEP_STAPLE, STEP_CORNER, STEP_BACK, STEP_FLAP};
    const struct model *model = ordering->planning->model;
    const int64_t *value = ordering->planning->value;
    const struct stock *stock =
        MODEL_FIND(model, stock, work->of_layer ? work->of_layer->stock : work->stock);
    const struct box *box = MODEL_FIND(model, box, work->step.box);
    bool touches = false;

    for (size_t i = 0; i < sizeof by_cloth / sizeof *by_cloth; i++)
        touches = touches || by_cloth[i] == work->step.kind;
    if (!touches || !stock)
        return minutes;
    if (stock->pile || stock->nature == NATURE_VINYL)
        minutes = scaled(minutes, value[TRADE_FACTOR_TOUCHY]);
    if ((stock->repeat_along || stock->repeat_across) && work->step.kind != STEP_SHEAR)
        minutes = scaled(minutes, value[TRADE_FACTOR_PATTERN]);
    if (box && box->outline != OUTLINE_RECTANGLE && work->of_layer)
        minutes = scaled(minutes, value[TRADE_FACTOR_CURVE]);
    return minutes;
}

/*
 * How fast the maker is at a kind of step: minutes taken over minutes that are usual, of the steps
 * that were timed. Half an hour at the workshop's skill counts beside them, so that one short step
 * does not make the rule; and nobody is ten times as fast or as slow as others.
 */
#define SKILL_WEIGHT INT64_C(30000)
#define PACE_LEAST INT64_C(100000)
#define PACE_MOST INT64_C(10000000)

static int64_t pace_of(const struct model *model, int kind)
{
    assert(kind >= 0 && kind < STEP_KINDS);

    int64_t skill = model->workshop.skill;

    for (size_t i = 0; i < model->paces.count; i++) {
        const struct pace *pace = &model->paces.at[i];
        int64_t ratio = skill;

        if (strcmp(pace->name, step_kinds[kind].word) != 0)
            continue;
        (void)whole_share(1000000, pace->took + scaled(SKILL_WEIGHT, skill),
                          pace->usual + SKILL_WEIGHT, &ratio);
        return ratio < PACE_LEAST ? PACE_LEAST : ratio > PACE_MOST ? PACE_MOST : ratio;
    }
    return skill;
}

static void time_work(const struct ordering *ordering, struct work *work)
{
    const struct planning *planning = ordering->planning;
    const struct model *model = planning->model;

    work->step.people = wants_two(ordering, work) ? 2 : 1;
    work->usual = with_cloth(ordering, work, plain_minutes(ordering, work));
    work->minutes = scaled(work->usual, pace_of(model, work->step.kind));
    if (work->step.people > 1 && !model->workshop.helper) {
        work->usual = scaled(work->usual, planning->value[TRADE_FACTOR_ALONE]);
        work->minutes = scaled(work->minutes, planning->value[TRADE_FACTOR_ALONE]);
    }
}

void order_minutes(struct ordering *ordering)
{
    for (size_t i = 0; i < ordering->works.count; i++)
        time_work(ordering, &ordering->works.at[i]);
}

/* ---- the clock ---- */

#define DAY (INT64_C(24) * 60 * 1000)

struct bench_clock clock_begin(const struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;
    int64_t length = model->workshop.session;
    int64_t set_up = ordering->planning->value[TRADE_MINUTES_SESSION];
    struct bench_clock clock = {.length = length, .gap = DAY, .session = 1};

    assert(length > 0);
    if (model->build.week > 0)
        clock.gap = 7 * DAY / (1 + (model->build.week - 1) / length);
    if (clock.gap < length)
        clock.gap = length;
    clock.set_up = set_up < length / 2 ? set_up : length / 2;
    clock.used = clock.now = clock.set_up;
    return clock;
}

static void next_session(struct bench_clock *clock)
{
    clock->session++;
    clock->began = clock->began + clock->gap > clock->now ? clock->began + clock->gap : clock->now;
    clock->now = clock->began + clock->set_up;
    clock->used = clock->set_up;
    assert(clock->began < clock->now || clock->set_up == 0);
}

void clock_wait(struct bench_clock *clock, int64_t until, struct work *next)
{
    int64_t idle = until - clock->now;

    if (idle <= 0)
        return;
    next->step.wait = idle;
    clock->used += idle;
    clock->now += idle;
}

/* Minutes with what they are more for a learner. */
static int64_t learned(const struct bench_clock *clock, const struct ordering *ordering,
                       const struct work *work, int64_t minutes)
{
    static const enum trade factors[] = {TRADE_LEARNER_FIRST, TRADE_LEARNER_SECOND,
                                         TRADE_LEARNER_REST};
    int64_t before = clock->done[work->step.kind];

    if (!ordering->planning->model->workshop.learner)
        return minutes;
    return scaled(minutes, ordering->planning->value[factors[before < 2 ? before : 2]]);
}

/* A session takes steps while they fit; one that is longer than a session has one for itself. What
 * does not fit after its wait begins the next one: things dry overnight. */
void clock_work(struct bench_clock *clock, const struct ordering *ordering, struct work *work)
{
    work->step.minutes = learned(clock, ordering, work, work->minutes);
    work->step.usual = learned(clock, ordering, work, work->usual);
    work->step.session = 0;
    clock->done[work->step.kind]++;
    if (!work->in_room) {
        if (clock->used > clock->set_up && clock->used + work->step.minutes > clock->length) {
            next_session(clock);
            work->step.wait = 0;
        }
        clock->used += work->step.minutes;
        work->step.session = clock->session;
    }
    clock->now += work->step.minutes;
}
