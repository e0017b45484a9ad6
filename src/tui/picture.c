#include "tui/picture.h"

#include "draw/field.h"
#include "draw/piece.h"
#include "draw/raster.h"
#include "draw/section.h"
#include "paper/print.h"
#include "plan/geometry.h"
#include "plan/hole.h"

struct picture {
    struct tui *tui;
    const struct plan *plan;
    void (*draw)(const struct picture *picture, struct drawing *drawing);
    int64_t box, side, edge, layer;
    size_t point; /* marked, or whose corridor it is; PLAN_NONE */
    bool of_b;    /* its second box */
    struct piece_ask piece;
    enum entity_kind kind; /* of the selected item, whose limits a face shows */
    int64_t key;
    int rows, columns;
    struct raster raster;
    struct text caption; /* what it is, then what its signs mean */
};

/* ---- drawing ---- */

static void mark_point(const struct picture *picture, struct drawing *drawing)
{
    const struct plan_point *point = &picture->plan->points.at[picture->point];
    struct area at;
    box_to_face(picture->side, picture->of_b ? point->in_b : point->in_a, &at.u0, &at.v0);
    at.u1 = at.u0;
    at.v1 = at.v0;
    *LIST_ADD(&picture->tui->scratch, &drawing->marks) = (struct mark){MARK_CHOSEN, at};
}

static void draw_of_face(const struct picture *picture, struct drawing *drawing)
{
    draw_face(drawing, picture->plan, picture->box, picture->side, &picture->tui->scratch);
    draw_face_limit(drawing, picture->plan, picture->side, picture->kind, picture->key,
                    &picture->tui->scratch);
    if (picture->point != PLAN_NONE)
        mark_point(picture, drawing);
}

static void draw_of_corridor(const struct picture *picture, struct drawing *drawing)
{
    draw_corridor(drawing, picture->plan, picture->point, &picture->tui->scratch);
}

static void draw_of_piece(const struct picture *picture, struct drawing *drawing)
{
    draw_piece(drawing, picture->plan, &picture->piece, &picture->tui->scratch);
}

static void draw_of_section(const struct picture *picture, struct drawing *drawing)
{
    draw_section(drawing, picture->plan, picture->box, picture->side, picture->edge, picture->layer,
                 &picture->tui->scratch);
}

static void draw_of_field(const struct picture *picture, struct drawing *drawing)
{
    draw_field(drawing, picture->plan, picture->layer, &picture->tui->scratch);
}

static void run_picture(void *context)
{
    struct picture *picture = context;
    struct drawing drawing;
    enum raster_style style = picture->tui->view.lines ? RASTER_LINES : RASTER_PLAIN;
    picture->draw(picture, &drawing);
    raster_legend(&picture->caption, &drawing, style);
    raster_draw(&picture->raster, &drawing, picture->rows, picture->columns, style,
                &picture->tui->scratch);
}

/* ---- painting ---- */

static void paint_raster(struct view *view, const struct raster *raster, int top, int left)
{
    for (int y = 0; y < raster->rows; y++) {
        for (int x = 0; x < raster->columns; x++) {
            int at = y * raster->columns + x;
            view_cell_put(view, top + y, left + x, raster->cells[at],
                          raster->strong[at] ? VIEW_STRONG : VIEW_PLAIN);
        }
    }
}

/* Takes over the caption. */
static void paint(struct picture *picture, struct picture_place place)
{
    struct view *view = &picture->tui->view;
    picture->columns = view->columns - place.left - 1;
    picture->rows = place.height - 1 - (place.hint != NULL);
    if (picture->columns >= 8 && place.height >= PICTURE_LEAST_ROWS &&
        arena_try(&picture->tui->scratch, run_picture, picture)) {
        view_text(view, place.top, place.left, picture->columns, VIEW_FAINT,
                  text_string(&picture->caption));
        if (place.hint)
            view_text(view, place.top + place.height - 1, place.left, picture->columns, VIEW_FAINT,
                      place.hint);
        paint_raster(view, &picture->raster, place.top + 1, place.left);
    }
    text_release(&picture->caption);
}

static struct picture picture_begin(struct tui *tui, const struct plan *plan)
{
    struct picture picture = {.tui = tui, .plan = plan, .point = PLAN_NONE, .kind = ENTITY_none};
    text_init(&picture.caption);
    return picture;
}

static void paint_face(struct picture *picture, struct picture_place place)
{
    picture->draw = draw_of_face;
    text_format(&picture->caption, "%s of %s", words_side.at[picture->side].name,
                print_box(picture->plan, picture->box));
    paint(picture, place);
}

void picture_paint_point(struct tui *tui, const struct plan *plan, size_t point,
                         struct picture_place place)
{
    const struct junction *junction = plan_junction(plan, plan->points.at[point].join);
    struct picture picture = picture_begin(tui, plan);
    struct join_end end;
    picture.point = point;
    picture.of_b = junction->box_b && junction->head_box == junction->box_b;
    if (!hole_end(plan, junction, picture.of_b, &end))
        return;
    picture.box = end.box;
    picture.side = end.seen;
    paint_face(&picture, place);
}

void picture_paint_corridor(struct tui *tui, const struct plan *plan, size_t point,
                            struct picture_place place)
{
    struct picture picture = picture_begin(tui, plan);
    picture.point = point;
    picture.draw = draw_of_corridor;
    text_format(&picture.caption, "cut, %s up", words_side.at[draw_corridor_up(plan, point)].name);
    paint(&picture, place);
}

/* ---- items ---- */

/* The layer that an item is or hangs on; 0 for none. */
static int64_t layer_of(const struct plan *plan, const struct picture_ask *ask)
{
    const struct field *of = ask->kind < ENTITY_COUNT && ask->kind != ENTITY_layer
                                 ? field_named(entity_of(ask->kind), "layer")
                                 : NULL;
    const void *item = of ? model_find_const(plan->facts, ask->kind, ask->key) : NULL;
    if (ask->kind == ENTITY_layer)
        return ask->key;
    return item ? field_whole(of, item) : 0;
}

/* What lies on a face is best seen on it; what has no box is of the piece. */
static enum picture_view own_view(const struct picture_ask *ask)
{
    switch (ask->kind) {
    case ENTITY_join:
    case ENTITY_point:
    case ENTITY_box:
    case ENTITY_member:
        return PICTURE_BOX;
    case ENTITY_layer_edge:
        return ask->box ? PICTURE_SECTION : PICTURE_PIECE;
    case ENTITY_tufting:
        return ask->box ? PICTURE_FIELD : PICTURE_PIECE;
    default:
        return ask->box ? PICTURE_FACE : PICTURE_PIECE;
    }
}

/* Without a box there is the piece alone. */
static bool fits(const struct plan *plan, const struct picture_ask *ask, enum picture_view view)
{
    if (view == PICTURE_PIECE || view == PICTURE_PIECE_APART)
        return true;
    if (view == PICTURE_SECTION)
        return ask->box && draw_has_section(plan, ask->box, ask->side);
    if (view == PICTURE_FIELD)
        return ask->box && draw_has_field(plan, layer_of(plan, ask));
    return ask->box != 0;
}

enum picture_view picture_view_of(const struct plan *plan, const struct picture_ask *ask)
{
    enum picture_view own = own_view(ask);
    if (ask->view != PICTURE_STANDARD && fits(plan, ask, ask->view))
        return ask->view;
    return fits(plan, ask, own) ? own : ask->box ? PICTURE_FACE : PICTURE_PIECE;
}

enum picture_view picture_next_view(const struct plan *plan, const struct picture_ask *ask)
{
    enum picture_view next = picture_view_of(plan, ask);
    do
        next = next + 1 < PICTURE_VIEWS ? (enum picture_view)(next + 1) : PICTURE_BOX;
    while (!fits(plan, ask, next));
    return next == own_view(ask) ? PICTURE_STANDARD : next;
}

static struct piece_ask piece_asked(const struct plan *plan, const struct picture_ask *ask)
{
    enum picture_view view = picture_view_of(plan, ask);
    struct piece_ask piece = piece_ask_of(plan, ask->kind, ask->key);
    int corner = ask->box ? (int)piece_corner_of(plan, ask->box, ask->side) : 0;
    piece.corner = (enum corner)((corner + ask->turned) % CORNER_COUNT);
    piece.apart = view == PICTURE_BOX_APART || view == PICTURE_PIECE_APART;
    if (view == PICTURE_PIECE || view == PICTURE_PIECE_APART) {
        piece.join = 0;
    } else if (!piece.join) {
        piece.box = ask->box;
        piece.chosen = ask->kind == ENTITY_box ? ENTITY_none : ask->kind;
    }
    return piece;
}

static void name_piece(struct picture *picture, const struct plan *plan,
                       const struct picture_ask *ask)
{
    const struct join *join = MODEL_FIND(plan->facts, join, picture->piece.join);
    if (join)
        text_format(&picture->caption, "join %s", join->name);
    else
        text_add(&picture->caption, picture->piece.box ? print_box(plan, ask->box) : "the piece");
    text_format(&picture->caption, "%s, %s", picture->piece.apart ? " apart" : "",
                piece_corner_words(picture->piece.corner));
}

/* Edges as one goes round a face. */
static int64_t section_edge(const struct plan *plan, const struct picture_ask *ask)
{
    static const int64_t round[] = {EDGE_TOP, EDGE_RIGHT, EDGE_BOTTOM, EDGE_LEFT};
    const struct layer_edge *of =
        ask->kind == ENTITY_layer_edge ? MODEL_FIND(plan->facts, layer_edge, ask->key) : NULL;
    int64_t first = of ? of->edge : draw_section_edge(plan, ask->box, ask->side);
    int at = 0;
    while (round[at] != first)
        at++;
    return round[(at + ask->turned) % EDGE_COUNT];
}

static void paint_section(struct picture *picture, const struct picture_ask *ask,
                          struct picture_place place)
{
    picture->draw = draw_of_section;
    picture->edge = section_edge(picture->plan, ask);
    text_format(&picture->caption, "%s of %s at its %s", words_side.at[ask->side].name,
                print_box(picture->plan, ask->box), words_edge.at[picture->edge].name);
    paint(picture, place);
}

static void paint_field(struct picture *picture, const struct picture_ask *ask,
                        struct picture_place place)
{
    picture->draw = draw_of_field;
    text_format(&picture->caption, "%s of %s", words_side.at[ask->side].name,
                print_box(picture->plan, ask->box));
    paint(picture, place);
}

static void paint_piece(struct picture *picture, const struct picture_ask *ask,
                        struct picture_place place)
{
    picture->piece = piece_asked(picture->plan, ask);
    picture->draw = draw_of_piece;
    name_piece(picture, picture->plan, ask);
    paint(picture, place);
}

void picture_paint_item(struct tui *tui, const struct plan *plan, const struct picture_ask *ask,
                        struct picture_place place)
{
    enum picture_view view = picture_view_of(plan, ask);
    struct picture picture = picture_begin(tui, plan);
    picture.box = ask->box;
    picture.side = ask->side;
    picture.layer = layer_of(plan, ask);
    picture.kind = ask->kind;
    picture.key = ask->key;
    if (view == PICTURE_FACE) {
        picture.side = (ask->side + ask->turned) % SIDE_COUNT;
        paint_face(&picture, place);
    } else if (view == PICTURE_SECTION) {
        paint_section(&picture, ask, place);
    } else if (view == PICTURE_FIELD) {
        paint_field(&picture, ask, place);
    } else {
        paint_piece(&picture, ask, place);
    }
}
