#include "joined.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <setjmp.h>

#include <cmocka.h>

#include <string.h>

static int64_t add_stock(struct joined *piece, int64_t kind, double thickness, double width)
{
    struct stock *stock = MODEL_ADD(&piece->model, stock);

    stock->kind = kind;
    stock->thickness = IN(thickness);
    stock->width = IN(width);
    return stock->key;
}

void joined_start(struct joined *piece, double stick_width)
{
    memset(piece, 0, sizeof *piece);
    arena_init(&piece->facts);
    arena_init(&piece->made);
    model_init(&piece->model, &piece->facts);
    piece->stick = add_stock(piece, STOCK_STICK, 1.5, stick_width);
    piece->sheet = add_stock(piece, STOCK_SHEET, 0.5, 0);
    piece->cloth = add_stock(piece, STOCK_CLOTH, 0.05, 54);
}

void joined_plan(struct joined *piece)
{
    arena_release(&piece->made);
    assert_int_equal(plan_make(&piece->model, &piece->made, &piece->plan), FAULT_NONE);
}

void joined_end(struct joined *piece)
{
    arena_release(&piece->made);
    arena_release(&piece->facts);
}

struct box *joined_box(struct joined *piece, int64_t frame, double width, double depth,
                       double height)
{
    struct box *box = MODEL_ADD(&piece->model, box);

    box->frame = frame;
    box->width = IN(width);
    box->depth = IN(depth);
    box->height = IN(height);
    box->stick = frame == FRAME_BOARD ? 0 : piece->stick;
    return box;
}

struct facing *joined_facing(struct joined *piece, int64_t box, int64_t side, int64_t stock)
{
    struct facing *facing = MODEL_ADD(&piece->model, facing);

    facing->box = box;
    facing->side = side;
    facing->stock = stock;
    return facing;
}

struct join *joined_join(struct joined *piece, int64_t a, int64_t side_a, int64_t b, int64_t side_b)
{
    struct join *join = MODEL_ADD(&piece->model, join);

    join->box_a = a;
    join->side_a = side_a;
    join->target = TARGET_BOX;
    join->box_b = b;
    join->side_b = side_b;
    return join;
}

struct layer *joined_layer(struct joined *piece, int64_t box, int64_t kind, int64_t shape,
                           int64_t side)
{
    struct layer *layer = MODEL_ADD(&piece->model, layer);

    layer->box = box;
    layer->kind = kind;
    layer->shape = shape;
    layer->side = side;
    layer->stock = piece->cloth;
    return layer;
}

void joined_hole(struct joined *piece, int64_t join, double u, double v)
{
    struct point *point = MODEL_ADD(&piece->model, point);

    point->join = join;
    point->u = IN(u);
    point->v = IN(v);
}

int64_t joined_sheet(struct joined *piece, double thickness)
{
    return add_stock(piece, STOCK_SHEET, thickness, 0);
}

/* ---- asking ---- */

const struct junction *joined_junction(const struct joined *piece, int64_t join)
{
    const struct junction *junction = plan_junction(piece->plan, join);

    assert_non_null(junction);
    return junction;
}

const struct plan_point *joined_point(const struct joined *piece, int64_t join, size_t index)
{
    const struct junction *junction = joined_junction(piece, join);

    assert_true(index < junction->point_count);
    return &piece->plan->points.at[junction->first_point + index];
}

const struct screw_kind *joined_screw(const struct joined *piece, int64_t join, size_t index)
{
    size_t screw = joined_point(piece, join, index)->screw;

    assert_true(screw < piece->plan->screws.count);
    return &piece->plan->screw_kinds.at[piece->plan->screws.at[screw].kind];
}

size_t joined_findings(const struct joined *piece, int kind)
{
    size_t count = 0;

    for (size_t i = 0; i < piece->plan->findings.count; i++)
        count += piece->plan->findings.at[i].kind == kind;
    return count;
}

const struct finding *joined_finding(const struct joined *piece, int kind)
{
    for (size_t i = 0; i < piece->plan->findings.count; i++)
        if (piece->plan->findings.at[i].kind == kind)
            return &piece->plan->findings.at[i];
    fail_msg("no finding of kind %d", kind);
    return NULL;
}

int64_t joined_argument(const struct joined *piece, int kind, int index)
{
    return joined_finding(piece, kind)->arguments[index].value;
}

bool joined_tells(const struct finding *finding, const char *words)
{
    for (size_t i = 0; i < finding->story_count; i++)
        if (strstr(finding->story[i], words))
            return true;
    return false;
}

bool joined_constrained(const struct joined *piece, enum constraint_kind kind, int64_t join,
                        int64_t item, const char *rule)
{
    for (size_t i = 0; i < piece->plan->constraints.count; i++) {
        const struct constraint *constraint = &piece->plan->constraints.at[i];

        if (constraint->kind == kind && constraint->join == join && constraint->item == item)
            return strcmp(constraint->rule, rule) == 0;
    }
    return false;
}

/* ---- the worked examples ---- */

static void add_member(struct joined *piece, int64_t box, int64_t kind, int64_t axis, double x,
                       double z, double length)
{
    struct member *member = MODEL_ADD(&piece->model, member);

    member->box = box;
    member->kind = kind;
    member->axis = axis;
    member->x = IN(x);
    member->z = IN(z);
    member->length = IN(length);
}

/* Box C: 63 x 3 x 56, the front faced, the back open under a lining; a cover over its ends. */
static int64_t add_centre(struct joined *piece)
{
    struct box *box = joined_box(piece, FRAME_LADDER, 63, 3, 56);
    int64_t key = box->key;

    box->supports = MAKING_HAND;
    joined_facing(piece, key, SIDE_FRONT, piece->sheet);
    add_member(piece, key, MEMBER_RAIL, AXIS_X, 1.5, 7.25, 60);
    add_member(piece, key, MEMBER_UPRIGHT, AXIS_Z, 20.5, 8.75, 45.75);
    add_member(piece, key, MEMBER_UPRIGHT, AXIS_Z, 41, 8.75, 45.75);
    add_member(piece, key, MEMBER_BLOCK, AXIS_Z, 15.375, 1.5, 5.75);
    joined_layer(piece, key, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
    joined_layer(piece, key, LAYER_LINING, SHAPE_FLAT, SIDE_BACK);
    return key;
}

static int64_t add_closed_wing(struct joined *piece)
{
    struct box *box = joined_box(piece, FRAME_LADDER, 3.5, 11.875, 56);
    int64_t key = box->key;

    box->supports = MAKING_HAND;
    box->main_side = SIDE_RIGHT;
    joined_facing(piece, key, SIDE_LEFT, piece->sheet);
    joined_facing(piece, key, SIDE_RIGHT, piece->sheet);
    struct layer *cover = joined_layer(piece, key, LAYER_COVER, SHAPE_SEWN, SIDE_RIGHT);
    cover->both = 1;
    cover->left = ENDING_OPEN;
    cover->right = ENDING_SEWN;
    cover->top = ENDING_SEWN;
    cover->bottom = ENDING_OPEN;
    return key;
}

int64_t joined_headboard(struct joined *piece)
{
    joined_start(piece, 2.5);
    int64_t centre = add_centre(piece);
    int64_t wing = add_closed_wing(piece);
    struct join *join = joined_join(piece, centre, SIDE_LEFT, wing, SIDE_RIGHT);

    join->head = HEAD_A;
    join->place = PLACE_SITE;
    join->end = IN(3);
    int64_t key = join->key;
    joined_plan(piece);
    return key;
}

static int64_t add_screws(struct joined *piece, int64_t gauge, double length)
{
    struct stock *screws = MODEL_ADD(&piece->model, stock);

    screws->kind = STOCK_SCREW;
    screws->gauge = gauge;
    screws->length = IN(length);
    return screws->key;
}

static int64_t add_base(struct joined *piece)
{
    struct box *box = joined_box(piece, FRAME_CRATE, 36, 24, 8);
    int64_t key = box->key;

    box->through = THROUGH_RAILS;
    box->supports = MAKING_HAND;
    box->crosses = MAKING_HAND;
    for (int64_t side = SIDE_FRONT; side <= SIDE_RIGHT; side++)
        joined_facing(piece, key, side, piece->sheet)->glued = 0;
    return key;
}

int64_t joined_ottoman(struct joined *piece)
{
    joined_start(piece, 1.5);
    int64_t base = add_base(piece);
    struct box *top = joined_box(piece, FRAME_BOARD, 36, 24, 0.75);
    int64_t key = top->key;

    top->main_side = SIDE_TOP;
    joined_facing(piece, key, SIDE_TOP, joined_sheet(piece, 0.75));
    joined_layer(piece, key, LAYER_COVER, SHAPE_WRAPPED, SIDE_TOP);
    int64_t stock = add_screws(piece, 8, 2);
    add_screws(piece, 8, 1.25);
    add_screws(piece, 8, 3);
    struct join *join = joined_join(piece, base, SIDE_TOP, key, SIDE_BOTTOM);
    join->stock = stock;
    join->head = HEAD_A;
    join->pitch = IN(8);
    join->end = IN(2);
    key = join->key;
    joined_plan(piece);
    return key;
}

static int64_t add_bench(struct joined *piece, double width, int64_t end)
{
    struct box *box = joined_box(piece, FRAME_CRATE, width, 18, 14.25);
    int64_t key = box->key;

    box->through = THROUGH_RAILS;
    joined_facing(piece, key, SIDE_FRONT, piece->sheet)->glued = 0;
    joined_facing(piece, key, end, piece->sheet)->glued = 0;
    return key;
}

int64_t joined_banquette(struct joined *piece)
{
    joined_start(piece, 1.5);
    int64_t a = add_bench(piece, 84.5, SIDE_RIGHT);
    int64_t b = add_bench(piece, 42.5, SIDE_LEFT);
    struct join *join = joined_join(piece, b, SIDE_RIGHT, a, SIDE_FRONT);

    join->head = HEAD_A;
    join->place = PLACE_SITE;
    join->pitch = IN(6);
    join->end = IN(2);
    int64_t key = join->key;
    joined_plan(piece);
    return key;
}

struct open_wing joined_open_wing(struct joined *piece)
{
    struct open_wing open = {0};

    joined_start(piece, 2.5);
    int64_t centre = add_centre(piece);
    struct box *box = joined_box(piece, FRAME_LADDER, 2, 11.875, 56);
    open.wing = box->key;
    box->supports = MAKING_HAND;
    box->main_side = SIDE_RIGHT;
    box->stick_set = SET_FLAT;
    joined_facing(piece, open.wing, SIDE_RIGHT, piece->sheet);
    open.lining = joined_layer(piece, open.wing, LAYER_LINING, SHAPE_FLAT, SIDE_LEFT)->key;
    struct layer *cover = joined_layer(piece, open.wing, LAYER_COVER, SHAPE_SEWN, SIDE_LEFT);
    cover->both = 1;
    cover->rank = 2;
    cover->left = ENDING_OPEN;
    cover->right = cover->top = cover->bottom = ENDING_SEWN;
    open.cover = cover->key;
    struct join *join = joined_join(piece, centre, SIDE_LEFT, open.wing, SIDE_RIGHT);
    join->head = HEAD_B;
    join->place = PLACE_SITE;
    join->end = IN(3);
    open.join = join->key;
    joined_plan(piece);
    return open;
}
