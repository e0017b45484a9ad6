/*
 * Rows of staples that share wood. Rows stand at least `staple.row_apart` from each other, so that
 * the strip that takes them is full at its width divided by that. What is fixed in one row with the
 * layer under it adds none.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"

#include <assert.h>
#include <stdlib.h>

struct strip {
    const struct edge *edge;
    const struct layer *layer;
    struct landing landing;
};

struct strips {
    LIST_OF(struct strip) of;
};

static void add_strip(struct planning *planning, struct strips *strips, const struct edge *edge,
                      const struct layer *layer, const struct box *box, int64_t on)
{
    struct landing landing = drape_landing(planning, layer, box, on);

    if (!area_empty(&landing.area))
        *LIST_ADD(planning->arena, &strips->of) = (struct strip){edge, layer, landing};
}

static int compare_boxes(const void *left, const void *right)
{
    const struct strip *a = left;
    const struct strip *b = right;

    if (a->edge->box != b->edge->box)
        return a->edge->box < b->edge->box ? -1 : 1;
    return (a->edge > b->edge) - (a->edge < b->edge);
}

/* The ends of boxing hold a hand's width of an edge and stand in nobody's way. */
static bool is_short(const struct edge *edge, const struct layer *layer, const struct box *box)
{
    return edge->edge >= 0 && 2 * edge->length < edge_length(box, layer->side, edge->edge);
}

/* The strips of all rows, box by box: a loop has four. Rows without staples take no room. */
static struct strips gather(struct planning *planning)
{
    const struct plan *plan = planning->plan;
    struct strips strips = {.of = {{0}}};

    for (size_t i = 0; i < plan->edges.count; i++) {
        const struct edge *edge = &plan->edges.at[i];
        const struct layer *layer = MODEL_FIND(planning->model, layer, edge->layer);
        const struct box *box = MODEL_FIND(planning->model, box, edge->box);

        if (!layer || !box || edge->staples == 0 || edge->edge == EDGE_CORDS ||
            edge->edge == EDGE_CHANNELS || is_short(edge, layer, box))
            continue;
        if (edge->edge != EDGE_LOOP)
            add_strip(planning, &strips, edge, layer, box, edge->edge);
        for (int64_t on = 0; edge->edge == EDGE_LOOP && on < EDGE_COUNT; on++)
            add_strip(planning, &strips, edge, layer, box, on);
    }
    if (strips.of.count > 0)
        qsort(strips.of.at, strips.of.count, sizeof *strips.of.at, compare_boxes);
    return strips;
}

static bool share_wood(const struct strip *a, const struct strip *b)
{
    struct area common = area_cut(&a->landing.area, &b->landing.area);

    return a->landing.side == b->landing.side &&
           area_width(&a->landing.area) == area_width(&b->landing.area) && !area_empty(&common) &&
           length_smaller(area_width(&common), area_height(&common)) * 2 >=
               length_smaller(area_width(&b->landing.area), area_height(&b->landing.area));
}

static bool is_outer(const struct layer *layer, const struct layer *other)
{
    return layer->rank != other->rank ? layer->rank > other->rank : layer->key >= other->key;
}

/* Told once, of the outermost layer, which is the one that finds no wood. The strips from..to are
 * those of its box. */
static void check_strip(struct planning *planning, const struct strips *strips, size_t index,
                        size_t from, size_t to)
{
    assert(index < strips->of.count);

    const struct strip *strip = &strips->of.at[index];
    int64_t apart = planning->value[TRADE_STAPLE_ROW_APART];
    int64_t wide =
        length_smaller(area_width(&strip->landing.area), area_height(&strip->landing.area));
    int64_t rows = 0;
    struct cure_draft cure = cure_begin(planning, "Fix it in one row with the layer under it");
    struct finding *finding;

    for (size_t i = from; i < to; i++) {
        const struct strip *other = &strips->of.at[i];

        if (!share_wood(strip, other))
            continue;
        if (!is_outer(strip->layer, other->layer))
            return;
        rows++;
    }
    if (apart <= 0 || rows < 2 || rows * apart <= wide)
        return;
    finding = finding_add(planning, FINDING_LANDING_FULL, ENTITY_layer, strip->layer->key);
    argument_quantity(finding, 0, QUANTITY_COUNT, rows);
    argument_length(finding, 1, wide);
    argument_quantity(finding, 2, QUANTITY_COUNT, wide / apart);
    cure_word(&cure, ENTITY_layer, strip->layer->key, "fixing",
              words_fixing.at[FIXING_TOGETHER].name);
    if (strip->layer->fixing != FIXING_TOGETHER)
        cure_offer(&cure, finding);
}

void check_landings(struct planning *planning)
{
    struct strips strips = gather(planning);
    size_t to;

    for (size_t from = 0; from < strips.of.count; from = to) {
        to = from + 1;
        while (to < strips.of.count && strips.of.at[to].edge->box == strips.of.at[from].edge->box)
            to++;
        for (size_t i = from; i < to; i++)
            check_strip(planning, &strips, i, from, to);
    }
}
