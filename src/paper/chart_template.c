/*
 * Drilling templates: a face at full size, on sheets of paper where its holes are.
 *
 *   1  A sheet is laid on the face as it is looked at. The edges of the face that fall on it are
 *      drawn, and it tells how far its crosses are from the two edges of the hole map.
 *   2  Sheets lie in rows. Rows, and sheets in a row, begin at the edge that they are measured from
 *      where it is near enough, else a little before their first hole: paper without a hole would
 *      tell nothing.
 *   3  A sheet that follows on another overlaps it, and its crosses come to lie on the other's.
 */
#include "paper/chart.h"

#include "base/quantity.h"
#include "paper/print.h"
#include "plan/geometry.h"

#include <assert.h>
#include <stdlib.h>

#define OVERLAP (10 * LENGTH_MM) /* of a sheet and the next, with a cross in its middle */
#define AROUND (14 * LENGTH_MM)  /* paper kept round a hole and beyond the edges of the face */
#define CROSS (5 * LENGTH_MM)    /* half the length of the lines through a hole */
#define LETTERS (3 * LENGTH_MM)

struct tiling {
    struct flow *flow;
    const struct junction *junction;
    const struct join_end *end;
    struct area face;
    int64_t width, height; /* of a sheet */
};

/* Where a row or a sheet begins, as a distance from the edge that is measured from. */
struct span {
    int64_t from;
    bool joined; /* to the one before it */
};

static const struct plan_point *point_at(const struct tiling *tiling, size_t index)
{
    return chart_point(tiling->flow->plan, tiling->junction, index);
}

/* The edge that distances across the face (upright), or up it, are taken from. */
static int64_t edge_of(const struct tiling *tiling, bool upright)
{
    const struct from_edge *edges = hole_edges(point_at(tiling, 0), tiling->end->of_b);

    return edges[edge_is_upright(edges[0].edge) == upright ? 0 : 1].edge;
}

/* Where an edge of the face is: its u, or its v. */
static int64_t edge_place(const struct tiling *tiling, int64_t edge)
{
    const int64_t places[] = {[EDGE_LEFT] = tiling->face.u0,
                              [EDGE_RIGHT] = tiling->face.u1,
                              [EDGE_BOTTOM] = tiling->face.v0,
                              [EDGE_TOP] = tiling->face.v1};

    return places[edge];
}

static bool edge_is_low(int64_t edge)
{
    return edge == EDGE_LEFT || edge == EDGE_BOTTOM;
}

/* How far a hole is from the edge that is measured from, across the face or up it. */
static int64_t hole_distance(const struct tiling *tiling, size_t index, bool upright)
{
    int64_t edge = edge_of(tiling, upright), u, v;

    chart_hole(point_at(tiling, index), tiling->end, &u, &v);
    return llabs((upright ? u : v) - edge_place(tiling, edge));
}

static int compare_distances(const void *a, const void *b)
{
    int64_t x = *(const int64_t *)a, y = *(const int64_t *)b;

    return (x > y) - (x < y);
}

/* The span for a hole that `last` (NULL: there is none yet) does not hold. It joins the last one,
 * or the edge, where the hole is near enough. */
static struct span span_for(const struct span *last, int64_t distance, int64_t length)
{
    struct span span = {last ? last->from + length - OVERLAP : -AROUND, last != NULL};

    if (distance + AROUND > span.from + length)
        span = (struct span){distance - AROUND, false};
    return span;
}

/* Spans of a length that hold all distances, with paper round them; how many. The distances are
 * sorted here; `spans` has room for as many. */
static size_t cover(int64_t *distances, size_t count, int64_t length, struct span *spans)
{
    size_t used = 0;

    qsort(distances, count, sizeof *distances, compare_distances);
    for (size_t i = 0; i < count; i++) {
        if (used == 0 || distances[i] + AROUND > spans[used - 1].from + length) {
            struct span span = span_for(used ? &spans[used - 1] : NULL, distances[i], length);
            spans[used++] = span;
        }
    }
    return used;
}

/* Whether a hole is far enough within a span to be drawn in it. Where spans overlap both hold it.
 */
static bool span_holds(const struct span *span, int64_t length, int64_t distance)
{
    return distance >= span->from + AROUND / 2 && distance <= span->from + length - AROUND / 2;
}

/* What a sheet shows of the face. */
static struct area tile_area(const struct tiling *tiling, const struct span *column,
                             const struct span *row)
{
    int64_t across = edge_of(tiling, true), up = edge_of(tiling, false);
    int64_t u = edge_place(tiling, across), v = edge_place(tiling, up);

    u += edge_is_low(across) ? column->from : -column->from - tiling->width;
    v += edge_is_low(up) ? row->from : -row->from - tiling->height;
    return (struct area){u, v, u + tiling->width, v + tiling->height};
}

/* ---- one sheet ---- */

static void add_edges(const struct tiling *tiling, struct chart *chart)
{
    const struct area *face = &tiling->face;
    const struct area sides[] = {{face->u0, face->v0, face->u0, face->v1},
                                 {face->u1, face->v0, face->u1, face->v1},
                                 {face->u0, face->v0, face->u1, face->v0},
                                 {face->u0, face->v1, face->u1, face->v1}};

    for (int i = 0; i < 4; i++) {
        struct area side = {length_larger(sides[i].u0, chart->shown.u0),
                            length_larger(sides[i].v0, chart->shown.v0),
                            length_smaller(sides[i].u1, chart->shown.u1),
                            length_smaller(sides[i].v1, chart->shown.v1)};
        if (side.u0 <= side.u1 && side.v0 <= side.v1)
            page_line(chart->pages, chart->page, PEN_BOLD, chart_box(chart, side));
    }
}

static void add_cross(struct chart *chart, int64_t x, int64_t y, int64_t reach)
{
    page_line(chart->pages, chart->page, PEN_FINE, (struct page_box){x - reach, y, x + reach, y});
    page_line(chart->pages, chart->page, PEN_FINE, (struct page_box){x, y - reach, x, y + reach});
}

/* Crosses in the corners, at the middle of what overlaps. */
static void add_crosses(struct chart *chart)
{
    int64_t half = OVERLAP / 2;

    for (int corner = 0; corner < 4; corner++) {
        int64_t u = corner % 2 ? chart->shown.u1 - half : chart->shown.u0 + half;
        int64_t v = corner / 2 ? chart->shown.v1 - half : chart->shown.v0 + half;
        add_cross(chart, chart_x(chart, u), chart_y(chart, v), half);
    }
}

static const char *edge_name(const struct tiling *tiling, int64_t edge)
{
    return words_side.at[edge_side(tiling->end->seen, edge)].name;
}

/* Half the hole that is bored in this end; where the plan has no screw for it a mark. */
static int64_t hole_radius(const struct tiling *tiling, const struct plan_point *point)
{
    struct bore bore = hole_bore(tiling->flow->plan, point);
    int64_t width = 0;

    if (bore.kind)
        width = tiling->end->heads ? bore.kind->clearance : bore.kind->pilot;
    return width > 0 ? width / 2 : LENGTH_MM;
}

/* "left 12-1/2 in (318 mm)" */
static const char *distance_words(const struct tiling *tiling, const struct from_edge *from)
{
    return arena_format(tiling->flow->pages->arena, "%s %s", edge_name(tiling, from->edge),
                        print_both(tiling->flow->plan, from->distance).at);
}

static void add_hole(const struct tiling *tiling, struct chart *chart,
                     const struct plan_point *point)
{
    const struct from_edge *edges = hole_edges(point, tiling->end->of_b);
    int64_t u, v;

    chart_hole(point, tiling->end, &u, &v);
    if (!area_holds(&chart->shown, u, v))
        return;
    int64_t x = chart_x(chart, u), y = chart_y(chart, v);
    page_circle(chart->pages, chart->page, PEN_FINE, x, y, hole_radius(tiling, point));
    add_cross(chart, x, y, CROSS);
    const char *words[] = {arena_format(chart->pages->arena, "%d", point->rank),
                           distance_words(tiling, &edges[0]), distance_words(tiling, &edges[1])};
    /* Line by line at the right of the hole, or at its left where other words stand there. */
    for (int i = 0; i < 3; i++) {
        int64_t line = y + (i - 1) * LETTERS * 6 / 5 - LETTERS / 2;
        if (!chart_words(chart, ALIGN_FROM, x + CROSS, line, LETTERS, words[i]))
            chart_words(chart, ALIGN_TO, x - CROSS, line, LETTERS, words[i]);
    }
}

/* "; left crosses 12-1/2 in (318 mm) from the left edge". Of an edge that lies on the sheet its
 * line tells as much. */
static void add_crosses_words(const struct tiling *tiling, const struct span *span, int64_t edge,
                              struct text *words)
{
    static const char *const crosses[] = {[EDGE_LEFT] = "left",
                                          [EDGE_RIGHT] = "right",
                                          [EDGE_BOTTOM] = "lower",
                                          [EDGE_TOP] = "upper"};
    int64_t distance = span->from + OVERLAP / 2;

    if (distance > 0)
        text_format(words, "; %s crosses %s from the %s edge", crosses[edge],
                    print_both(tiling->flow->plan, distance).at, edge_name(tiling, edge));
}

/* Where the sheet lies: how far its crosses are from the two edges. */
static void add_place(const struct tiling *tiling, struct chart *chart, const struct span *column,
                      const struct span *row)
{
    struct text words;

    text_init(&words);
    text_add(&words, column->joined ? "joins the sheet before it" : "a row begins");
    add_crosses_words(tiling, column, edge_of(tiling, true), &words);
    add_crosses_words(tiling, row, edge_of(tiling, false), &words);
    int64_t width = chart->drawn.x1 - chart->drawn.x0 - 2 * OVERLAP - 2 * LENGTH_MM;
    chart_words(
        chart, ALIGN_FROM, chart->drawn.x0 + OVERLAP + LENGTH_MM, chart->drawn.y1 - LENGTH_MM,
        length_smaller(LETTERS, page_words_size(text_string(&words), width)), text_string(&words));
    text_release(&words);
}

/* "join J1 on A (left), its front face" */
static void add_title(const struct tiling *tiling, struct chart *chart)
{
    int64_t box = tiling->end->box;
    const struct join *join = MODEL_FIND(tiling->flow->plan->facts, join, tiling->junction->join);

    chart_words(chart, ALIGN_FROM, chart->drawn.x0 + OVERLAP + LENGTH_MM,
                chart->drawn.y0 + LETTERS * 3 / 2, LETTERS * 3 / 2,
                arena_format(chart->pages->arena, "join %s on %s%s, its %s face", join->name,
                             print_box(tiling->flow->plan, box),
                             print_hand(tiling->flow->plan, box),
                             words_side.at[tiling->end->seen].name));
}

static void add_tile(const struct tiling *tiling, const struct span *column, const struct span *row)
{
    struct flow *flow = tiling->flow;
    struct page_box room;

    flow_break(flow);
    struct page *page = flow_room(flow, flow_page_height(flow), &room);
    struct chart chart = {flow->pages, page, tile_area(tiling, column, row), room};

    page->to_scale = true;
    add_edges(tiling, &chart);
    add_crosses(&chart);
    add_title(tiling, &chart);
    add_place(tiling, &chart, column, row);
    for (size_t i = 0; i < tiling->junction->point_count; i++)
        add_hole(tiling, &chart, point_at(tiling, i));
}

static void add_row(const struct tiling *tiling, const struct span *row)
{
    struct arena *arena = tiling->flow->pages->arena;
    size_t most = tiling->junction->point_count, count = 0;
    int64_t *distances = ARENA_MANY(arena, int64_t, most);
    struct span *columns = ARENA_MANY(arena, struct span, most);

    for (size_t i = 0; i < most; i++) {
        if (span_holds(row, tiling->height, hole_distance(tiling, i, false)))
            distances[count++] = hole_distance(tiling, i, true);
    }
    count = cover(distances, count, tiling->width, columns);
    for (size_t i = 0; i < count; i++)
        add_tile(tiling, &columns[i], row);
}

void chart_template(struct flow *flow, const struct junction *junction, const struct join_end *end)
{
    assert(junction->point_count > 0);
    struct arena *arena = flow->pages->arena;
    struct page_box room = pages_room(flow->pages);
    size_t most = junction->point_count;
    int64_t *distances = ARENA_MANY(arena, int64_t, most);
    struct span *rows = ARENA_MANY(arena, struct span, most);
    struct tiling tiling = {.flow = flow,
                            .junction = junction,
                            .end = end,
                            .width = room.x1 - room.x0,
                            .height = room.y1 - room.y0};

    tiling.face = face_area(MODEL_FIND(flow->plan->facts, box, end->box), end->seen);
    for (size_t i = 0; i < most; i++)
        distances[i] = hole_distance(&tiling, i, false);
    size_t count = cover(distances, most, tiling.height, rows);
    for (size_t i = 0; i < count; i++)
        add_row(&tiling, &rows[i]);
}
