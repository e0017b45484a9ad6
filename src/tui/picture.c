#include "tui/picture.h"

#include "draw/raster.h"
#include "paper/print.h"
#include "plan/geometry.h"
#include "plan/hole.h"

struct picture {
    struct tui *tui;
    const struct plan *plan;
    int64_t box, side;
    size_t point; /* marked, or whose corridor it is; PLAN_NONE */
    bool of_b;    /* its second box */
    bool corridor;
    int rows, columns;
    struct raster raster;
    bool has[MARK_KINDS]; /* for the legend */
};

/* ---- drawing ---- */

static void mark_point(struct picture *picture, struct drawing *drawing)
{
    const struct plan_point *point = &picture->plan->points.at[picture->point];
    struct area at;
    box_to_face(picture->side, picture->of_b ? point->in_b : point->in_a, &at.u0, &at.v0);
    at.u1 = at.u0;
    at.v1 = at.v0;
    *LIST_ADD(&picture->tui->scratch, &drawing->marks) = (struct mark){MARK_CHOSEN, at};
}

static void run_picture(void *context)
{
    struct picture *picture = context;
    struct arena *arena = &picture->tui->scratch;
    struct drawing drawing;
    if (picture->corridor)
        draw_corridor(&drawing, picture->plan, picture->point, arena);
    else
        draw_face(&drawing, picture->plan, picture->box, picture->side, arena);
    if (!picture->corridor && picture->point != PLAN_NONE)
        mark_point(picture, &drawing);
    for (enum mark_kind kind = 0; kind < MARK_KINDS; kind++)
        picture->has[kind] = drawing_has(&drawing, kind);
    raster_draw(&picture->raster, &drawing, picture->rows, picture->columns,
                picture->tui->view.lines ? RASTER_LINES : RASTER_PLAIN, arena);
}

/* ---- painting ---- */

static void paint_raster(struct view *view, const struct raster *raster, int top, int left)
{
    for (int y = 0; y < raster->rows; y++) {
        for (int x = 0; x < raster->columns; x++) {
            unsigned code = raster->cells[y * raster->columns + x];
            bool strong = code == raster_sign(MARK_POINT) || code == raster_sign(MARK_CHOSEN) ||
                          code == raster_sign(MARK_BLOCKER);
            view_cell_put(view, top + y, left + x, code, strong ? VIEW_STRONG : VIEW_PLAIN);
        }
    }
}

/* Appends the signs that the picture has, and nothing else; what explains itself comes last, where
 * the line may end too early. */
static void add_legend(const struct picture *picture, struct text *out)
{
    static const struct {
        enum mark_kind kind;
        const char *word;
    } signs[] = {{MARK_CHOSEN, "this"}, {MARK_POINT, "head"}, {MARK_BLOCKER, "in its way"},
                 {MARK_TIP, "tip"},     {MARK_PATCH, "bare"}, {MARK_OPEN, "open"},
                 {MARK_PADDING, "pad"}, {MARK_SEAM, "seam"},  {MARK_DRIVER, "driver"},
                 {MARK_SCREW, "screw"}};
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++) {
        if (picture->has[signs[i].kind])
            text_format(out, " %c %s", (char)raster_sign(signs[i].kind), signs[i].word);
    }
}

static void paint(struct picture *picture, const char *name, struct picture_place place)
{
    struct view *view = &picture->tui->view;
    struct text caption;
    picture->columns = view->columns - place.left - 1;
    picture->rows = place.height - 1 - place.turns;
    if (picture->columns < 8 || place.height < PICTURE_LEAST_ROWS ||
        !arena_try(&picture->tui->scratch, run_picture, picture))
        return;
    text_init(&caption);
    text_format(&caption, "%s ", name);
    add_legend(picture, &caption);
    view_text(view, place.top, place.left, picture->columns, VIEW_FAINT, text_string(&caption));
    text_release(&caption);
    if (place.turns)
        view_text(view, place.top + place.height - 1, place.left, picture->columns, VIEW_FAINT,
                  "Left and Right show its other faces");
    paint_raster(view, &picture->raster, place.top + 1, place.left);
}

static void paint_face(struct picture *picture, struct picture_place place)
{
    struct text name;
    text_init(&name);
    text_format(&name, "%s of %s", words_side.at[picture->side].name,
                print_box(picture->plan, picture->box));
    paint(picture, text_string(&name), place);
    text_release(&name);
}

void picture_paint(struct tui *tui, const struct plan *plan, int64_t box, int64_t side,
                   struct picture_place place)
{
    struct picture picture = {
        .tui = tui, .plan = plan, .box = box, .side = side, .point = PLAN_NONE};
    paint_face(&picture, place);
}

void picture_paint_point(struct tui *tui, const struct plan *plan, size_t point,
                         struct picture_place place)
{
    const struct junction *junction = plan_junction(plan, plan->points.at[point].join);
    struct picture picture = {.tui = tui, .plan = plan, .point = point};
    struct join_end end;
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
    struct picture picture = {.tui = tui, .plan = plan, .point = point, .corridor = true};
    struct text name;
    text_init(&name);
    text_format(&name, "cut, %s up", words_side.at[draw_corridor_up(plan, point)].name);
    paint(&picture, text_string(&name), place);
    text_release(&name);
}
