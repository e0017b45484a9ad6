#include "tui/picture.h"

#include "draw/raster.h"
#include "paper/print.h"

struct making_raster {
    struct tui *tui;
    const struct plan *plan;
    int64_t box, side;
    int rows, columns;
    struct raster raster;
};

static void run_raster(void *context)
{
    struct making_raster *making = context;
    struct arena *arena = &making->tui->scratch;
    struct drawing drawing;
    draw_face(&drawing, making->plan, making->box, making->side, arena);
    raster_draw(&making->raster, &drawing, making->rows, making->columns,
                making->tui->view.lines ? RASTER_LINES : RASTER_PLAIN, arena);
}

static void paint_raster(struct view *view, const struct raster *raster, int top, int left)
{
    for (int y = 0; y < raster->rows; y++) {
        for (int x = 0; x < raster->columns; x++) {
            unsigned code = raster->cells[y * raster->columns + x];
            view_cell_put(view, top + y, left + x, code, code == 'o' ? VIEW_STRONG : VIEW_PLAIN);
        }
    }
}

void picture_paint(struct tui *tui, const struct plan *plan, int64_t box, int64_t side,
                   struct picture_place place)
{
    int columns = tui->view.columns - place.left - 1;
    struct text caption;
    if (columns < 8 || place.height < PICTURE_LEAST_ROWS)
        return;
    text_init(&caption);
    text_format(&caption, "%s of %s  o point . bare = open : pad", words_side.at[side].name,
                print_box(plan, box));
    view_text(&tui->view, place.top, place.left, columns, VIEW_FAINT, text_string(&caption));
    text_release(&caption);
    if (place.turns)
        view_text(&tui->view, place.top + place.height - 1, place.left, columns, VIEW_FAINT,
                  "Left and Right show its other faces");
    struct making_raster making = {.tui = tui,
                                   .plan = plan,
                                   .box = box,
                                   .side = side,
                                   .rows = place.height - 2,
                                   .columns = columns};
    if (arena_try(&tui->scratch, run_raster, &making))
        paint_raster(&tui->view, &making.raster, place.top + 1, place.left);
}
