/*
 * Faces with holes on pages.
 *
 * A hole's distances stand at the end of fine lines that run from it to the edge of the face they
 * are read along, in a row of their own below and at the left: they are spread so that none lies on
 * another, and the drawing itself stays free of figures.
 */
#include "paper/chart.h"

#include "base/quantity.h"
#include "draw/drawing.h"
#include "paper/print.h"
#include "plan/geometry.h"

#include <assert.h>
#include <stdlib.h>

#define FIGURE_SIZE (13 * LENGTH_MM / 5)
#define FIGURE_ROOM (30 * LENGTH_MM) /* "99-1/4 in (2521 mm)"; longer ones are set smaller */
#define LEADER (4 * LENGTH_MM)       /* from the edge of the face to a figure */
#define CAPTION (8 * LENGTH_MM)
#define FACE_MOST (72 * LENGTH_MM) /* height of a face */
#define HOLE_RADIUS (LENGTH_MM)

/* A distance, and where on the page the holes lie that have it. */
struct ordinate {
    int64_t at;
    int64_t distance;
};

struct view {
    struct chart *chart;
    const struct plan *plan;
    const struct junction *junction;
    const struct join_end *end;
};

/* ---- the face ---- */

enum look { LOOK_NONE, LOOK_FRAME, LOOK_LINE, LOOK_SLOPE, LOOK_CIRCLE };

static void add_face_mark(struct chart *chart, const struct mark *mark)
{
    static const struct {
        enum look look;
        enum page_pen pen;
    } looks[MARK_KINDS] = {
        [MARK_FACE] = {LOOK_FRAME, PEN_BOLD},   [MARK_EDGE] = {LOOK_SLOPE, PEN_BOLD},
        [MARK_PANEL] = {LOOK_FRAME, PEN_PLAIN}, [MARK_MEMBER] = {LOOK_FRAME, PEN_DASHED},
        [MARK_SEAM] = {LOOK_LINE, PEN_PLAIN},   [MARK_CLOTH_SEAM] = {LOOK_LINE, PEN_DASHED},
        [MARK_PADDING] = {LOOK_LINE, PEN_FINE}, [MARK_WEB] = {LOOK_LINE, PEN_FINE},
        [MARK_OPEN] = {LOOK_LINE, PEN_BOLD},    [MARK_PATCH] = {LOOK_CIRCLE, PEN_DASHED}};
    enum page_pen pen = looks[mark->kind].pen;
    struct page_box box = chart_box(chart, mark->area);

    switch (looks[mark->kind].look) {
    case LOOK_FRAME:
        page_frame(chart->pages, chart->page, pen, box);
        break;
    case LOOK_LINE:
        page_line(chart->pages, chart->page, pen, box);
        break;
    case LOOK_SLOPE:
        page_line(chart->pages, chart->page, pen,
                  (struct page_box){chart_x(chart, mark->area.u0), chart_y(chart, mark->area.v0),
                                    chart_x(chart, mark->area.u1), chart_y(chart, mark->area.v1)});
        break;
    case LOOK_CIRCLE:
        page_circle(chart->pages, chart->page, pen, (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2,
                    (box.x1 - box.x0) / 2);
        break;
    case LOOK_NONE:
        break;
    }
}

static void add_face(const struct view *view)
{
    struct drawing drawing;

    draw_face(&drawing, view->plan, view->end->box, view->end->seen, view->chart->pages->arena);
    for (size_t i = 0; i < drawing.marks.count; i++)
        add_face_mark(view->chart, &drawing.marks.at[i]);
}

/* ---- holes ---- */

const struct plan_point *chart_point(const struct plan *plan, const struct junction *junction,
                                     size_t index)
{
    assert(index < junction->point_count);
    return &plan->points.at[junction->first_point + index];
}

void chart_hole(const struct plan_point *point, const struct join_end *end, int64_t *ret_u,
                int64_t *ret_v)
{
    box_to_face(end->seen, end->of_b ? point->in_b : point->in_a, ret_u, ret_v);
}

/* Its number stands at the first of four places beside it that is free; the map tells it anyway. */
static void add_hole(const struct view *view, size_t index)
{
    static const int ways[][2] = {
        {1, -1}, {1, 1}, {-1, -1}, {-1, 1}}; /* right or left, up or down */
    const struct plan_point *point = chart_point(view->plan, view->junction, index);
    struct chart *chart = view->chart;
    int64_t u, v;

    chart_hole(point, view->end, &u, &v);
    int64_t x = chart_x(chart, u), y = chart_y(chart, v);
    const char *number = arena_format(chart->pages->arena, "%d", point->rank);
    page_circle(chart->pages, chart->page, PEN_BOLD, x, y, HOLE_RADIUS);
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
        if (chart_words(chart, ways[i][0] > 0 ? ALIGN_FROM : ALIGN_TO,
                        x + ways[i][0] * HOLE_RADIUS * 3 / 2,
                        y + (ways[i][1] > 0 ? FIGURE_SIZE : -HOLE_RADIUS), FIGURE_SIZE, number))
            return;
    }
}

static int compare_ordinates(const void *a, const void *b)
{
    int64_t x = ((const struct ordinate *)a)->at, y = ((const struct ordinate *)b)->at;

    return (x > y) - (x < y);
}

/* The distances from the upright edge, or from the level one, in the order of their places on the
 * page, each once. `ordinates` has room for one a hole. */
static size_t gather_ordinates(const struct view *view, bool from_upright,
                               struct ordinate *ordinates)
{
    size_t count = 0, kept = 0;

    for (size_t i = 0; i < view->junction->point_count; i++) {
        const struct plan_point *point = chart_point(view->plan, view->junction, i);
        const struct from_edge *edges = hole_edges(point, view->end->of_b);
        const struct from_edge *from = &edges[edge_is_upright(edges[0].edge) != from_upright];
        int64_t u, v;

        chart_hole(point, view->end, &u, &v);
        ordinates[count++] = (struct ordinate){
            from_upright ? chart_x(view->chart, u) : chart_y(view->chart, v), from->distance};
    }
    qsort(ordinates, count, sizeof *ordinates, compare_ordinates);
    for (size_t i = 0; i < count; i++) {
        if (kept == 0 || ordinates[kept - 1].at != ordinates[i].at)
            ordinates[kept++] = ordinates[i];
    }
    return kept;
}

/* A figure below the face, or at its left, with the line that leads to it from across the face. */
static void add_figure(const struct view *view, bool below, int64_t at, int64_t place, int64_t size,
                       const char *words)
{
    struct pages *pages = view->chart->pages;
    struct page *page = view->chart->page;
    const struct page_box *drawn = &view->chart->drawn;
    int64_t end = below ? drawn->y1 + LEADER : drawn->x0 - LEADER;

    size = length_smaller(size, page_words_size(words, FIGURE_ROOM));
    if (below) {
        page_line(pages, page, PEN_FINE, (struct page_box){at, drawn->y0, at, drawn->y1});
        page_line(pages, page, PEN_FINE, (struct page_box){at, drawn->y1, place, end});
        page_words_upright(pages, page, ALIGN_TO, place + size / 3, end, size, words);
    } else {
        page_line(pages, page, PEN_FINE, (struct page_box){drawn->x0, at, drawn->x1, at});
        page_line(pages, page, PEN_FINE, (struct page_box){drawn->x0, at, end, place});
        page_words(pages, page, ALIGN_TO, end, place + size / 3, size, words);
    }
}

/* All distances along one edge: in a row below the face, or in a column at its left. Where they
 * stand closely their letters are smaller. */
static void add_ordinates(const struct view *view, bool below)
{
    struct arena *arena = view->chart->pages->arena;
    const struct page_box *drawn = &view->chart->drawn;
    struct page_box room = pages_room(view->chart->pages);
    size_t most = view->junction->point_count;
    struct ordinate *ordinates = ARENA_MANY(arena, struct ordinate, most);
    int64_t *places = ARENA_MANY(arena, int64_t, most);
    size_t count = gather_ordinates(view, below, ordinates);

    for (size_t i = 0; i < count; i++)
        places[i] = ordinates[i].at;
    int64_t low = below ? room.x0 + FIGURE_ROOM : drawn->y0 + FIGURE_SIZE / 2;
    int64_t high =
        below ? room.x1 - FIGURE_SIZE / 2 : drawn->y1 + FIGURE_ROOM - LEADER - FIGURE_SIZE / 2;
    int64_t gap = chart_spread(places, count, FIGURE_SIZE * 6 / 5, low, high);
    for (size_t i = 0; i < count; i++)
        add_figure(view, below, ordinates[i].at, places[i], gap * 5 / 6,
                   print_both(view->plan, ordinates[i].distance).at);
}

void chart_end(struct flow *flow, const struct junction *junction, const struct join_end *end)
{
    const struct box *box = MODEL_FIND(flow->plan->facts, box, end->box);
    struct area shown = face_area(box, end->seen);
    struct page_box whole = pages_room(flow->pages), room;
    int64_t height =
        length_smaller(chart_height(shown, whole.x1 - whole.x0 - FIGURE_ROOM - LEADER), FACE_MOST);
    struct page *page = flow_room(flow, CAPTION + height + LEADER + FIGURE_ROOM, &room);

    page_words_bold(flow->pages, page, ALIGN_FROM, room.x0, room.y0 + CAPTION / 2, CAPTION / 2,
                    arena_format(flow->pages->arena, "%s%s, its %s face", box->name,
                                 print_hand(flow->plan, end->box), words_side.at[end->seen].name));
    room.y0 += CAPTION;
    room.x0 += FIGURE_ROOM + LEADER;
    room.y1 = room.y0 + height;
    struct chart chart = chart_of(flow->pages, page, shown, room);
    const struct view view = {&chart, flow->plan, junction, end};
    add_face(&view);
    add_ordinates(&view, true);
    add_ordinates(&view, false);
    for (size_t i = 0; i < junction->point_count; i++)
        add_hole(&view, i);
}
