#include "desk/pieces.h"

#include "desk/starters.h"

/* ---- wing headboard ---- */

/* A wing stands beside the centre, its padded inner face toward it; the heads of the join are
 * inside the centre, so that every edge of the wing is stapled at the bench. */
static int64_t wing(struct kit *kit, const char *name, enum side_word inner, int64_t depth,
                    int64_t height)
{
    static const enum ending_word batting_ends[4] = {
        [EDGE_LEFT] = ENDING_STOP,
        [EDGE_RIGHT] = ENDING_WRAP,
        [EDGE_TOP] = ENDING_WRAP,
        [EDGE_BOTTOM] = ENDING_STOP,
    };
    static const enum ending_word cover_ends[4] = {
        [EDGE_LEFT] = ENDING_OPEN,
        [EDGE_RIGHT] = ENDING_SEWN,
        [EDGE_TOP] = ENDING_SEWN,
        [EDGE_BOTTOM] = ENDING_OPEN,
    };
    int64_t thick = kit_pick(kit, KIT_IN(3.5), KIT_MM(87));
    struct box *box =
        kit_framed(kit, name, FRAME_LADDER, KIT_STUD, (const int64_t[]){thick, depth, height});
    box->main_side = inner;
    int64_t key = box->key;
    kit_facing(kit, key, SIDE_LEFT, KIT_THIN_PANEL, USE_COVERING);
    kit_facing(kit, key, SIDE_RIGHT, KIT_THIN_PANEL, USE_COVERING);
    struct layer *batting = kit_layer(kit, key, LAYER_BATTING, SHAPE_WRAPPED, inner);
    batting->both = 1;
    kit_endings(batting, batting_ends);
    struct layer *cover = kit_layer(kit, key, LAYER_COVER, SHAPE_SEWN, inner);
    cover->both = 1;
    cover->rank = 2;
    kit_endings(cover, cover_ends);
    return key;
}

static int64_t headboard_centre(struct kit *kit, int64_t width, int64_t height)
{
    static const enum ending_word over_the_top[4] = {
        [EDGE_LEFT] = ENDING_STOP,
        [EDGE_RIGHT] = ENDING_STOP,
        [EDGE_TOP] = ENDING_WRAP,
        [EDGE_BOTTOM] = ENDING_STOP,
    };
    int64_t depth = kit_pick(kit, KIT_IN(3), KIT_MM(75));
    int64_t key =
        kit_framed(kit, "C", FRAME_LADDER, KIT_STUD, (const int64_t[]){width, depth, height})->key;
    kit_facing(kit, key, SIDE_FRONT, KIT_THIN_PANEL, USE_BACK);
    struct layer *foam = kit_foam(kit, key, SIDE_FRONT, KIT_THIN_FOAM);
    foam->v = kit_pick(kit, KIT_IN(12), KIT_MM(300));
    struct layer *batting = kit_layer(kit, key, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT);
    batting->rank = 2;
    kit_endings(batting, over_the_top);
    kit_layer(kit, key, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT)->rank = 3;
    kit_layer(kit, key, LAYER_LINING, SHAPE_FLAT, SIDE_BACK);
    return key;
}

void piece_wing_headboard(struct kit *kit, const int64_t *sizes)
{
    /* an inch of bedding and half an inch of padding on each side */
    int64_t between = sizes[0] + kit_pick(kit, KIT_IN(3), KIT_MM(75));
    int64_t centre = headboard_centre(kit, between, sizes[1]);
    int64_t left = wing(kit, "L", SIDE_RIGHT, sizes[2], sizes[1]);
    int64_t right = wing(kit, "R", SIDE_LEFT, sizes[2], sizes[1]);
    ((struct box *)model_find(kit->draft, ENTITY_box, right))->mirror_of = left;
    kit_stock(kit, KIT_JOIN_SCREW);
    struct join *join = kit_join(kit, "J1", centre, SIDE_LEFT, left, SIDE_RIGHT);
    join->head = HEAD_A;
    join->place = PLACE_SITE;
    join = kit_join(kit, "J2", centre, SIDE_RIGHT, right, SIDE_LEFT);
    join->head = HEAD_A;
    join->place = PLACE_SITE;
}

/* ---- benches ---- */

static int64_t padded_board(struct kit *kit, const char *name, const int64_t size[3],
                            enum side_word face)
{
    bool seat = face == SIDE_TOP;
    struct box *box = kit_box(kit, name, FRAME_BOARD, size);
    box->main_side = face;
    int64_t key = box->key;
    kit_facing(kit, key, face, seat ? KIT_THICK_PANEL : KIT_THIN_PANEL, seat ? USE_SEAT : USE_BACK);
    kit_upholster(kit, key, face, seat ? KIT_THICK_FOAM : KIT_THIN_FOAM);
    return key;
}

static void rests(struct kit *kit, const char *name, int64_t below, int64_t above,
                  enum place_word place)
{
    struct join *join = kit_join(kit, name, below, SIDE_TOP, above, SIDE_BOTTOM);
    join->fastener = FASTENER_REST;
    join->place = place;
}

static void covered_front(struct kit *kit, int64_t box, const enum ending_word ends[4])
{
    struct layer *batting = kit_layer(kit, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT);
    static const enum ending_word stops[4] = {ENDING_STOP, ENDING_STOP, ENDING_STOP, ENDING_STOP};
    kit_endings(batting, stops);
    struct layer *cover = kit_layer(kit, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
    cover->rank = 2;
    cover->direction = DIRECTION_ACROSS;
    kit_endings(cover, ends);
}

/* Two holes in the back, clear of the frame, so that nobody stifles under the lid (CPSC). */
static void air_holes(struct kit *kit, int64_t box, const int64_t size[3])
{
    int64_t hole = kit_pick(kit, KIT_IN(1.25), KIT_MM(30));
    int64_t from_end = kit_pick(kit, KIT_IN(4), KIT_MM(100));
    const int64_t at[2] = {from_end, size[0] - from_end - hole};

    for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
        struct cutout *cutout = MODEL_ADD(kit->draft, cutout);

        cutout->box = box;
        cutout->side = SIDE_BACK;
        cutout->u = at[i];
        cutout->v = size[2] / 2;
        cutout->width = hole;
        cutout->height = hole;
        cutout->purpose = "air hole";
    }
}

void piece_storage_bench(struct kit *kit, const int64_t *sizes)
{
    static const enum side_word sides[] = {SIDE_FRONT, SIDE_BACK, SIDE_LEFT, SIDE_RIGHT};
    static const enum ending_word round_the_ends[4] = {ENDING_WRAP, ENDING_WRAP, ENDING_SIDE,
                                                       ENDING_SIDE};
    int64_t board = kit_pick(kit, KIT_IN(0.75), KIT_MM(18));
    int64_t foam = kit_pick(kit, KIT_IN(3), KIT_MM(75));
    const int64_t chest[3] = {sizes[0], sizes[1], sizes[2] - board - foam};
    int64_t box = kit_framed(kit, "B", FRAME_CRATE, KIT_SQUARE, chest)->key;
    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
        kit_facing(kit, box, sides[i], KIT_THIN_PANEL, USE_COVERING);
    kit_facing(kit, box, SIDE_BOTTOM, KIT_THIN_PANEL, USE_STRUCTURE);
    air_holes(kit, box, chest);
    covered_front(kit, box, round_the_ends);
    int64_t lid = padded_board(kit, "D", (const int64_t[]){sizes[0], sizes[1], board}, SIDE_TOP);
    rests(kit, "R1", box, lid, PLACE_BENCH);
    struct fitting *hinges = MODEL_ADD(kit->draft, fitting);
    hinges->box = lid;
    hinges->kind = FITTING_HINGE;
    hinges->name = "lid hinge";
    hinges->side = SIDE_BOTTOM;
    hinges->count = 3;
    struct fitting *stays = MODEL_ADD(kit->draft, fitting);
    stays->box = lid;
    stays->kind = FITTING_STAY;
    stays->name = "lid stay that holds at every angle";
    stays->side = SIDE_BOTTOM;
    stays->count = 2;
}

static int64_t seat_box(struct kit *kit, const char *name, const int64_t size[3],
                        const enum ending_word apron[4])
{
    int64_t key = kit_framed(kit, name, FRAME_CRATE, KIT_SQUARE, size)->key;
    struct facing *skin = kit_facing(kit, key, SIDE_FRONT, KIT_THIN_PANEL, USE_STRUCTURE);
    skin->glued = 0;
    covered_front(kit, key, apron);
    return key;
}

void piece_corner_banquette(struct kit *kit, const int64_t *sizes)
{
    static const enum ending_word apron[4] = {ENDING_SIDE, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE};
    int64_t board = kit_pick(kit, KIT_IN(0.75), KIT_MM(18));
    int64_t back = kit_pick(kit, KIT_IN(0.5), KIT_MM(12));
    int64_t foam = kit_pick(kit, KIT_IN(3), KIT_MM(75));
    int64_t depth = sizes[2];
    int64_t height = sizes[3] - board - foam;
    int64_t second = sizes[1] - depth;
    int64_t cloth = kit_pick(kit, KIT_IN(0.125), KIT_MM(3)); /* between the seats in the corner */
    int64_t a = seat_box(kit, "A", (const int64_t[]){sizes[0], depth, height}, apron);
    int64_t b = seat_box(kit, "B", (const int64_t[]){second, depth, height}, apron);
    int64_t seat_a = padded_board(kit, "SA", (const int64_t[]){sizes[0], depth, board}, SIDE_TOP);
    int64_t seat_b =
        padded_board(kit, "SB", (const int64_t[]){second - cloth, depth, board}, SIDE_TOP);
    int64_t back_a =
        padded_board(kit, "BA", (const int64_t[]){sizes[0], back, sizes[4]}, SIDE_FRONT);
    int64_t back_b = padded_board(kit, "BB", (const int64_t[]){second, back, sizes[4]}, SIDE_FRONT);
    MODEL_ADD(kit->draft, wall)->side = SIDE_BACK;
    MODEL_ADD(kit->draft, wall)->side = SIDE_LEFT;
    /* B stands along the second wall, its right end against the front of A in the corner */
    kit_stock(kit, KIT_JOIN_SCREW);
    struct join *corner = kit_join(kit, "J1", b, SIDE_RIGHT, a, SIDE_FRONT);
    corner->head = HEAD_A;
    corner->place = PLACE_SITE;
    corner->pitch = kit_pick(kit, KIT_IN(6), KIT_MM(150));
    corner->end = kit_pick(kit, KIT_IN(3), KIT_MM(75)); /* clear of the screws of the end cross */
    rests(kit, "R1", a, seat_a, PLACE_SITE);
    rests(kit, "R2", b, seat_b, PLACE_SITE);
    rests(kit, "R3", seat_a, back_a, PLACE_SITE);
    rests(kit, "R4", seat_b, back_b, PLACE_SITE);
}

/* ---- bed base ---- */

static int64_t base_half(struct kit *kit, const char *name, const int64_t size[3])
{
    static const enum ending_word round_the_ends[4] = {ENDING_WRAP, ENDING_WRAP, ENDING_SIDE,
                                                       ENDING_SIDE};
    struct box *box = kit_framed(kit, name, FRAME_CRATE, KIT_STUD, size);
    int64_t key = box->key;

    kit_facing(kit, key, SIDE_FRONT, KIT_THIN_PANEL, USE_COVERING);
    kit_facing(kit, key, SIDE_LEFT, KIT_THIN_PANEL, USE_COVERING);
    kit_facing(kit, key, SIDE_RIGHT, KIT_THIN_PANEL, USE_COVERING);
    kit_facing(kit, key, SIDE_TOP, KIT_THICK_PANEL, USE_DECK);
    covered_front(kit, key, round_the_ends);
    struct fitting *legs = MODEL_ADD(kit->draft, fitting);
    legs->box = key;
    legs->kind = FITTING_LEG;
    legs->name = "leg";
    legs->side = SIDE_BOTTOM;
    legs->count = 5; /* one under the middle as well */
    kit_layer(kit, key, LAYER_DUST_COVER, SHAPE_FLAT, SIDE_BOTTOM);
    return key;
}

void piece_bed_base(struct kit *kit, const int64_t *sizes)
{
    const int64_t half[3] = {sizes[0], whole_divide_up(sizes[1], 2), sizes[2]};
    int64_t head = base_half(kit, "H", half);
    int64_t foot = base_half(kit, "F", half);
    /* back to back under the middle of the mattress: both are open there */
    kit_stock(kit, KIT_JOIN_SCREW);
    kit_stock(kit, KIT_DEEP_SCREW);
    kit_trade(kit, "screw.gauge.frame", "10");
    struct join *join = kit_join(kit, "J1", foot, SIDE_BACK, head, SIDE_BACK);
    join->place = PLACE_SITE;
    join->end = kit_pick(kit, KIT_IN(4), KIT_MM(100)); /* clear of the screws of the end crosses */
}

/* ---- cushion ---- */

/* Foam in a cover that is sewn all round, with the zip along its back. */
void piece_seat_cushion(struct kit *kit, const int64_t *sizes)
{
    static const enum ending_word sewn[4] = {ENDING_SEWN, ENDING_SEWN, ENDING_SEWN, ENDING_SEWN};
    int64_t thick = kit_pick(kit, KIT_IN(4), KIT_MM(100));
    struct box *box =
        kit_box(kit, "K", FRAME_CUSHION, (const int64_t[]){sizes[0], sizes[1], thick});
    box->main_side = SIDE_TOP;
    int64_t key = box->key;
    kit_foam(kit, key, SIDE_TOP, KIT_CUSHION_FOAM);
    struct layer *cover = kit_layer(kit, key, LAYER_COVER, SHAPE_SEWN, SIDE_TOP);
    cover->rank = 2;
    cover->both = 1;
    kit_endings(cover, sewn);
    struct fitting *zip = MODEL_ADD(kit->draft, fitting);
    zip->box = key;
    zip->kind = FITTING_ZIP;
    zip->side = SIDE_BACK;
}

/* ---- nothing ---- */

/* Only stock to begin with: a box wants sticks, a panel a sheet, and what is sewn or closed blind
 * its thread and strips, which nobody names in a layer. */
void piece_blank(struct kit *kit, const int64_t *sizes)
{
    static const enum kit_stock_name stocks[] = {
        KIT_STUD,       KIT_SQUARE,     KIT_THIN_PANEL,  KIT_THIN_FOAM,  KIT_BATTING,
        KIT_COVER,      KIT_LINING,     KIT_THREAD,      KIT_STITCHING,  KIT_CARD,
        KIT_TACK_STRIP, KIT_LONG_SCREW, KIT_PANEL_SCREW, KIT_JOIN_SCREW, KIT_STAPLE,
        KIT_SPRAY,      KIT_GLUE};

    (void)sizes;
    for (size_t i = 0; i < sizeof stocks / sizeof *stocks; i++)
        kit_stock(kit, stocks[i]);
}
