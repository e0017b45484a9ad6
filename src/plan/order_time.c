/*
 * People, minutes and sessions. What a step takes is a sum of terms, each a trade value times an
 * amount that the plan counted; the table below says which.
 */
#include "plan/order.h"

#include <assert.h>

/* Amounts in thousandths of the unit that the trade value is for: one piece, a metre (a length in
 * whole millimetres is just that), a square metre. */
enum amount {
    AMOUNT_ONCE,
    AMOUNT_PARTS,     /* cut from the stock */
    AMOUNT_STICKS,    /* the same where the stock is sticks, none elsewhere */
    AMOUNT_SHEETS,    /* and sheets */
    AMOUNT_SOFT,      /* pieces of cloth and padding of the build */
    AMOUNT_ALL_PARTS, /* of the build */
    AMOUNT_JOINTS,    /* of the box */
    AMOUNT_SCREWS,    /* of the panels */
    AMOUNT_POINTS,    /* of the join */
    AMOUNT_PIECES,    /* of the layer */
    AMOUNT_SEAM,      /* of the layer, metres */
    AMOUNT_EDGE,      /* of the layer, metres */
    AMOUNT_AREA,      /* of the layer, square metres */
    AMOUNT_CORNERS,
    AMOUNT_BUTTONS,
    AMOUNT_SLITS,
    AMOUNT_PATCHES,
    AMOUNT_FLAP,     /* metres */
    AMOUNT_FITTINGS, /* of the box */
    AMOUNT_BOXES,    /* of the build */
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
    {STEP_GAUGE, TRADE_MINUTES_PICK_STICKS, AMOUNT_ONCE},
    {STEP_CUT, TRADE_MINUTES_CROSSCUT, AMOUNT_STICKS},
    {STEP_CUT, TRADE_MINUTES_SHEET_CUT, AMOUNT_SHEETS},
    {STEP_LABEL, TRADE_MINUTES_LABEL, AMOUNT_ALL_PARTS},
    {STEP_UNROLL, TRADE_MINUTES_BATTING_PIECE, AMOUNT_ONCE},
    {STEP_FRAME, TRADE_MINUTES_JOINT, AMOUNT_JOINTS},
    {STEP_PANEL, TRADE_MINUTES_PANEL_SCREW, AMOUNT_SCREWS},
    {STEP_RECORD, TRADE_MINUTES_RECORD_BOX, AMOUNT_ONCE},
    {STEP_BED, TRADE_MINUTES_MAP_HOLE, AMOUNT_POINTS},
    {STEP_DRY, TRADE_MINUTES_DRY_FIT, AMOUNT_ONCE},
    {STEP_DRILL, TRADE_MINUTES_MATCH_DRILL, AMOUNT_POINTS},
    {STEP_DRILL, TRADE_MINUTES_DRIVE_ONCE, AMOUNT_POINTS},
    {STEP_MAP, TRADE_MINUTES_MAP_HOLE, AMOUNT_POINTS},
    {STEP_INSERT, TRADE_MINUTES_INSERT, AMOUNT_FITTINGS},
    {STEP_CLEAT, TRADE_MINUTES_SCREW, AMOUNT_FITTINGS},
    {STEP_HANG, TRADE_MINUTES_HINGE, AMOUNT_FITTINGS},
    {STEP_TUFT, TRADE_MINUTES_TUFT_HOLE, AMOUNT_BUTTONS},
    {STEP_EASE, TRADE_MINUTES_EASE_EDGES, AMOUNT_ONCE},
    {STEP_PATCH, TRADE_MINUTES_PATCH, AMOUNT_POINTS},
    {STEP_LOCATE, TRADE_MINUTES_LOCATOR, AMOUNT_POINTS},
    {STEP_BARE, TRADE_MINUTES_RECORD_BOX, AMOUNT_ONCE},
    {STEP_WEB, TRADE_MINUTES_WEBBING, AMOUNT_ONCE},
    {STEP_INSPECT, TRADE_MINUTES_TEST_SEAM, AMOUNT_ONCE},
    {STEP_CHALK, TRADE_MINUTES_CHALK, AMOUNT_SOFT},
    {STEP_SHEAR, TRADE_MINUTES_CUT_PLAIN, AMOUNT_PARTS},
    {STEP_SEW, TRADE_MINUTES_SEAM, AMOUNT_SEAM},
    {STEP_SEW, TRADE_MINUTES_BOXING_CORNER, AMOUNT_PIECES},
    {STEP_SLICE, TRADE_MINUTES_FOAM_CUT, AMOUNT_PARTS},
    {STEP_PAD, TRADE_MINUTES_FOAM_GLUE, AMOUNT_AREA},
    {STEP_PAD, TRADE_MINUTES_FOAM_WAIT, AMOUNT_ONCE},
    {STEP_BATTING, TRADE_MINUTES_BATTING, AMOUNT_EDGE},
    {STEP_BATTING, TRADE_MINUTES_BATTING_PIECE, AMOUNT_PIECES},
    {STEP_BATTING, TRADE_MINUTES_PATCH, AMOUNT_PATCHES},
    {STEP_LINING, TRADE_MINUTES_MUSLIN, AMOUNT_EDGE},
    {STEP_PADDED, TRADE_MINUTES_LOOK, AMOUNT_ONCE},
    {STEP_TRY, TRADE_MINUTES_TRY_COVER, AMOUNT_ONCE},
    {STEP_COVER, TRADE_MINUTES_LAY_COVER, AMOUNT_ONCE},
    {STEP_COVER, TRADE_MINUTES_BASTE, AMOUNT_EDGE},
    {STEP_LOOK, TRADE_MINUTES_LOOK, AMOUNT_ONCE},
    {STEP_BUTTON, TRADE_MINUTES_BUTTON_DEEP, AMOUNT_BUTTONS},
    {STEP_STAPLE, TRADE_MINUTES_COVER_AIR, AMOUNT_EDGE},
    {STEP_STAPLE, TRADE_MINUTES_TRIM_HANDLES, AMOUNT_EDGE},
    {STEP_CORNER, TRADE_MINUTES_CORNER, AMOUNT_CORNERS},
    {STEP_SLIT, TRADE_MINUTES_SLIT, AMOUNT_SLITS},
    {STEP_FIND, TRADE_MINUTES_FIND_HOLE, AMOUNT_POINTS},
    {STEP_OFFER, TRADE_MINUTES_OFFER, AMOUNT_ONCE},
    {STEP_DRIVE, TRADE_MINUTES_JOIN_SCREW, AMOUNT_POINTS},
    {STEP_FLAP, TRADE_MINUTES_FLAP, AMOUNT_FLAP},
    {STEP_BACK, TRADE_MINUTES_LINING, AMOUNT_EDGE},
    {STEP_DUST, TRADE_MINUTES_DUST_COVER, AMOUNT_EDGE},
    {STEP_HINGE, TRADE_MINUTES_HINGE, AMOUNT_FITTINGS},
    {STEP_LEG, TRADE_MINUTES_LEG, AMOUNT_FITTINGS},
    {STEP_FIT, TRADE_MINUTES_LEG, AMOUNT_FITTINGS},
    {STEP_MOVE, TRADE_MINUTES_MOVE_BOX, AMOUNT_BOXES},
    {STEP_MARK, TRADE_MINUTES_MARK_ROOM, AMOUNT_ONCE},
    {STEP_SET, TRADE_MINUTES_SET_BOX, AMOUNT_BOXES},
    {STEP_PUSH, TRADE_MINUTES_OFFER, AMOUNT_ONCE},
    {STEP_FIX, TRADE_MINUTES_JOIN_SCREW, AMOUNT_POINTS},
    {STEP_TRIM, TRADE_MINUTES_NAIL_STRIP, AMOUNT_EDGE},
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

static int64_t layer_amount(const struct layer_counted *layer, enum amount amount)
{
    switch (amount) {
    case AMOUNT_PIECES:
        return layer->pieces * PIECES;
    case AMOUNT_SEAM:
        return layer->seam / LENGTH_MM;
    case AMOUNT_EDGE:
        return layer->edge / LENGTH_MM;
    case AMOUNT_AREA:
        return layer->area / PIECES;
    case AMOUNT_CORNERS:
        return layer->corners * PIECES;
    case AMOUNT_BUTTONS:
        return layer->buttons * PIECES;
    case AMOUNT_SLITS:
        return layer->slits * PIECES;
    case AMOUNT_PATCHES:
        return layer->patches * PIECES;
    default:
        return 0;
    }
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

static int64_t amount_of(const struct ordering *ordering, const struct work *work,
                         enum amount amount)
{
    const struct planning *planning = ordering->planning;
    const struct counted *counted = &ordering->counted;

    switch (amount) {
    case AMOUNT_ONCE:
        return PIECES;
    case AMOUNT_ALL_PARTS:
        return counted->parts * PIECES;
    case AMOUNT_STICKS:
        return parts_of_kind(ordering, work, STOCK_STICK) * PIECES;
    case AMOUNT_SHEETS:
        return parts_of_kind(ordering, work, STOCK_SHEET) * PIECES;
    case AMOUNT_SOFT:
        return (int64_t)planning->plan->pieces.count * PIECES;
    case AMOUNT_PARTS:
        return counted_stock(planning, counted, work->stock)->parts * PIECES;
    case AMOUNT_JOINTS:
        return counted_box(planning, counted, work->step.box)->joints * PIECES;
    case AMOUNT_SCREWS:
        return counted_facing(planning, counted, work->step.facing)->screws * PIECES;
    case AMOUNT_POINTS:
        return counted_join(planning, counted, work->step.join)->points * PIECES;
    case AMOUNT_FLAP:
        return work->flap.length / LENGTH_MM;
    case AMOUNT_FITTINGS:
        return fittings_of(planning->model, work) * PIECES;
    case AMOUNT_BOXES:
        return (int64_t)planning->model->boxes.count * PIECES;
    default:
        return layer_amount(counted_layer(planning, counted, work->step.layer), amount);
    }
}

/* ---- people ---- */

/* A sleeve that goes over a box like a sock: one holds the box, one pulls. */
static bool is_pulled_on(const struct work *work)
{
    return work->step.kind == STEP_COVER && work->of_layer->shape == SHAPE_SEWN &&
           work->of_layer->both;
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
        return is_pulled_on(work) || counted_layer(planning, counted, work->step.layer)->longest >
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
        (void)whole_share(ordering->planning->value[value],
                          amount_of(ordering, work, terms[i].amount), PIECES, &minutes);
        sum += minutes;
    }
    return sum;
}

static void time_work(const struct ordering *ordering, struct work *work)
{
    const struct planning *planning = ordering->planning;
    const struct workshop *workshop = &planning->model->workshop;

    work->step.people = wants_two(ordering, work) ? 2 : 1;
    work->step.minutes = scaled(plain_minutes(ordering, work), workshop->skill);
    if (work->step.people > 1 && !workshop->helper)
        work->step.minutes = scaled(work->step.minutes, planning->value[TRADE_FACTOR_ALONE]);
}

/* A session takes steps while they fit; one that is longer than a session has one for itself. */
void order_time(struct ordering *ordering)
{
    int64_t length = ordering->planning->model->workshop.session;
    int64_t used = 0;
    int session = 1;

    assert(ordering->sequence || ordering->works.count == 0);
    for (size_t i = 0; i < ordering->works.count; i++) {
        struct work *work = &ordering->works.at[ordering->sequence[i]];

        time_work(ordering, work);
        if (work->in_room)
            continue;
        if (used > 0 && used + work->step.minutes > length) {
            session++;
            used = 0;
        }
        used += work->step.minutes;
        work->step.session = session;
    }
}
