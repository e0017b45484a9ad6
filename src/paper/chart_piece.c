/* The piece and its boxes on pages, from a corner. */
#include "paper/chart.h"

#include "base/quantity.h"

#define CAPTION (8 * LENGTH_MM)
#define PIECE_MOST (100 * LENGTH_MM)
#define LABEL_SIZE (3 * LENGTH_MM)

static void add_line(struct chart *chart, const struct mark *mark)
{
    static const enum page_pen pens[] = {[MARK_EDGE] = PEN_PLAIN,
                                         [MARK_BEHIND] = PEN_DASHED,
                                         [MARK_PLEAT] = PEN_FINE,
                                         [MARK_HATCH] = PEN_FINE};

    if (!mark_is_line(mark->kind))
        return;
    page_line(chart->pages, chart->page, pens[mark->kind],
              (struct page_box){chart_x(chart, mark->area.u0), chart_y(chart, mark->area.v0),
                                chart_x(chart, mark->area.u1), chart_y(chart, mark->area.v1)});
}

void chart_piece(struct flow *flow, const struct piece_ask *ask, const char *caption)
{
    struct arena *arena = flow->pages->arena;
    struct page_box whole = pages_room(flow->pages), room;
    struct drawing drawing;

    draw_piece(&drawing, flow->plan, ask, arena);
    if (drawing.marks.count == 0)
        return;
    int64_t height = chart_height(drawing.bounds, whole.x1 - whole.x0);
    height = height < PIECE_MOST ? height : PIECE_MOST;
    struct page *page = flow_room(flow, CAPTION + height, &room);
    page_words_bold(flow->pages, page, ALIGN_FROM, room.x0, room.y0 + CAPTION / 2, CAPTION / 2,
                    caption);
    room.y0 += CAPTION;
    struct chart chart = chart_of(flow->pages, page, drawing.bounds, room);
    for (size_t i = 0; i < drawing.marks.count; i++)
        add_line(&chart, &drawing.marks.at[i]);
    for (size_t i = 0; i < drawing.labels.count; i++) {
        const struct label *label = &drawing.labels.at[i];
        if (!label->aside)
            chart_words(&chart, ALIGN_MIDDLE, chart_x(&chart, label->u),
                        chart_y(&chart, label->v) + LABEL_SIZE / 3, LABEL_SIZE, label->text);
    }
}
