#include "plan/counted.h"

#include "plan/geometry.h"

#include <assert.h>

/* Each array has one more at its end, for items that the model has not got. */
#define COUNTED_FIND(model, array, name, key) (&(array)[model_index((model), ENTITY_##name, (key))])

const struct box_counted *counted_box(const struct planning *planning,
                                      const struct counted *counted, int64_t box)
{
    return COUNTED_FIND(planning->model, counted->boxes, box, box);
}

const struct facing_counted *counted_facing(const struct planning *planning,
                                            const struct counted *counted, int64_t facing)
{
    return COUNTED_FIND(planning->model, counted->facings, facing, facing);
}

const struct join_counted *counted_join(const struct planning *planning,
                                        const struct counted *counted, int64_t join)
{
    return COUNTED_FIND(planning->model, counted->joins, join, join);
}

const struct layer_counted *counted_layer(const struct planning *planning,
                                          const struct counted *counted, int64_t layer)
{
    return COUNTED_FIND(planning->model, counted->layers, layer, layer);
}

const struct stock_counted *counted_stock(const struct planning *planning,
                                          const struct counted *counted, int64_t stock)
{
    return COUNTED_FIND(planning->model, counted->stocks, stock, stock);
}

static void count_part(const struct model *model, struct counted *counted, int64_t stock)
{
    COUNTED_FIND(model, counted->stocks, stock, stock)->parts++;
    counted->parts++;
}

/* ---- facings that are fixed together ---- */

/* Where a facing belongs, among those of its box. */
static size_t facing_place(const struct facing *facing, bool late)
{
    size_t place = (size_t)facing->side;

    place = place * FACING_COUNT + (size_t)facing->kind;
    place = place * 2 + (facing->loose != 0);
    return place * 2 + late;
}

#define FACING_PLACES ((size_t)SIDE_COUNT * FACING_COUNT * 2 * 2)

static bool shuts_nuts(const struct plan *plan, const struct facing *facing)
{
    for (size_t i = 0; facing->kind == FACING_PANEL && !facing->loose && i < plan->bolts.count; i++)
        if (plan->bolts.at[i].nut_box == facing->box && plan->bolts.at[i].nut_shut == facing->side)
            return true;
    return false;
}

static void group_facings(const struct planning *planning, struct counted *counted)
{
    const struct model *model = planning->model;
    int64_t *firsts =
        ARENA_MANY(planning->arena, int64_t, (model->boxes.count + 1) * FACING_PLACES);

    for (size_t i = 0; i < planning->plan->constraints.count; i++) {
        const struct constraint *constraint = &planning->plan->constraints.at[i];

        if (constraint->kind == JOIN_BEFORE_FACING)
            COUNTED_FIND(model, counted->facings, facing, constraint->item)->late = true;
    }
    for (size_t i = 0; i < model->facings.count; i++)
        counted->facings[i].late |= shuts_nuts(planning->plan, &model->facings.at[i]);
    for (size_t i = 0; i < model->facings.count; i++) {
        const struct facing *facing = &model->facings.at[i];
        size_t box = model_index(model, ENTITY_box, facing->box);
        int64_t *first =
            &firsts[box * FACING_PLACES + facing_place(facing, counted->facings[i].late)];

        if (!*first)
            *first = facing->key;
        counted->facings[i].first = *first;
    }
}

/* The counts of the facings that this one is fixed with. */
static struct facing_counted *fixed_with(const struct model *model, struct counted *counted,
                                         int64_t facing)
{
    const struct facing_counted *own = COUNTED_FIND(model, counted->facings, facing, facing);

    return COUNTED_FIND(model, counted->facings, facing, own->first);
}

/* ---- the lists of the plan ---- */

static void count_wood(const struct plan *plan, const struct model *model, struct counted *counted)
{
    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];

        COUNTED_FIND(model, counted->boxes, box, member->box)->members++;
        count_part(model, counted, member->stock);
    }
    for (size_t i = 0; i < plan->joints.count; i++)
        COUNTED_FIND(model, counted->boxes, box, plan->joints.at[i].box)->joints++;
    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        struct facing_counted *facing = fixed_with(model, counted, panel->facing);

        facing->panels++;
        facing->longest = length_larger(
            facing->longest, length_larger(area_width(&panel->area), area_height(&panel->area)));
        COUNTED_FIND(model, counted->boxes, box, panel->box)->panels++;
        count_part(model, counted, panel->stock);
    }
    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *box = &model->boxes.at[i];

        counted->boxes[i].longest =
            length_larger(box->width, length_larger(box->depth, box->height));
    }
}

static void count_screws(const struct plan *plan, const struct model *model,
                         struct counted *counted)
{
    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];

        if (screw->use == SCREW_FRAME)
            COUNTED_FIND(model, counted->boxes, box, screw->box)->screws++;
        if (screw->use == SCREW_PANEL && screw->of < plan->panels.count)
            fixed_with(model, counted, plan->panels.at[screw->of].facing)->screws++;
    }
    for (size_t i = 0; i < plan->panels.count; i++)
        if (plan->panels.at[i].screws > 0)
            fixed_with(model, counted, plan->panels.at[i].facing)->screws +=
                plan->panels.at[i].screws;
    for (size_t i = 0; i < plan->crown_pieces.count; i++) {
        const struct crown_piece *piece = &plan->crown_pieces.at[i];
        struct box_counted *box = COUNTED_FIND(model, counted->boxes, box, piece->box);

        box->crown += area_width(&piece->area);
        box->landed += piece->screws;
    }
    for (size_t i = 0; i < plan->points.count; i++) {
        const struct plan_point *point = &plan->points.at[i];

        COUNTED_FIND(model, counted->joins, join, point->join)->points++;
        COUNTED_FIND(model, counted->joins, join, point->join)->to_drill += !point->existing;
    }
}

static void count_seam(const struct model *model, struct counted *counted, const struct seam *seam)
{
    struct layer_counted *layer = COUNTED_FIND(model, counted->layers, layer, seam->layer);
    int64_t length = seam->count * seam->length;
    assert(seam->kind >= 0 && (size_t)seam->kind < sizeof layer->by_seam / sizeof *layer->by_seam);

    layer->seam += length;
    if (seam->kind != SEAM_STRAIGHT || seam->zip == 0) /* the minutes of a zip hold its seams */
        layer->by_seam[seam->kind] += length;
    layer->zips += seam->zip > 0;
    if (seam->kind == SEAM_BOXING)
        layer->boxing_corners += seam->count * seam->corners;
}

/* A hole through the foam for each button that is pulled deep into it. */
static void count_under_tufts(const struct model *model, struct counted *counted,
                              const struct layer *cover, int64_t buttons)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *foam = &model->layers.at[i];

        if (foam->kind == LAYER_FOAM && foam->box == cover->box && foam->group == cover->group &&
            foam->side == cover->side)
            counted->layers[i].under_tufts += buttons;
    }
}

static void count_tufts(const struct plan *plan, const struct model *model, struct counted *counted)
{
    for (size_t i = 0; i < model->tuftings.count; i++) {
        const struct tufting *tufting = &model->tuftings.at[i];
        const struct layer *cover = MODEL_FIND(model, layer, tufting->layer);
        int64_t buttons = 0;

        for (size_t k = 0; k < plan->tufts.count; k++)
            buttons += plan->tufts.at[k].layer == tufting->layer;
        if (cover && tufting->pattern != PATTERN_SHALLOW)
            count_under_tufts(model, counted, cover, buttons);
    }
}

/* All lines but the one whose length the row has. */
static void count_channels(const struct plan *plan, const struct model *model,
                           struct counted *counted)
{
    for (size_t i = 0; i < plan->edges.count; i++)
        for (size_t k = 0; k < plan->tuft_fields.count; k++) {
            const struct tuft_field *field = &plan->tuft_fields.at[k];

            if (plan->edges.at[i].edge == EDGE_CHANNELS && plan->edges.at[i].layer == field->layer)
                COUNTED_FIND(model, counted->layers, layer, field->layer)->edge +=
                    (field->lines - 1) * field->line_length;
        }
}

static void count_consumable(const struct model *model, struct counted *counted,
                             const struct consumable *used)
{
    struct layer_counted *layer = COUNTED_FIND(model, counted->layers, layer, used->layer);
    const struct layer *of = MODEL_FIND(model, layer, used->layer);

    if (used->kind == STOCK_BUTTON)
        layer->buttons += used->amount;
    if (used->kind == STOCK_NAIL)
        layer->nails += used->amount;
    if (used->kind == STOCK_STRIP && of && of->kind == LAYER_TRIM)
        layer->strip += used->amount;
}

static void count_back(const struct model *model, struct counted *counted,
                       const struct back_way *way)
{
    struct layer_counted *layer = COUNTED_FIND(model, counted->layers, layer, way->layer);

    if (way->chosen)
        layer->back = way;
}

static bool is_left_raw(const struct layer *layer)
{
    return layer->closing == CLOSING_RAW &&
           (layer->kind == LAYER_LINING || layer->kind == LAYER_DUST_COVER);
}

static void count_cloth(const struct plan *plan, const struct model *model, struct counted *counted)
{
    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        struct layer_counted *layer = COUNTED_FIND(model, counted->layers, layer, cover->layer);

        layer->area += cover->area;
        layer->trimmed += cover->trimmed;
        layer->raw = is_left_raw(MODEL_FIND(model, layer, cover->layer));
        layer->longest =
            length_larger(layer->longest, length_larger(cover->cut_width, cover->cut_height));
    }
    for (size_t i = 0; i < plan->seams.count; i++)
        count_seam(model, counted, &plan->seams.at[i]);
    for (size_t i = 0; i < plan->pieces.count; i++) {
        COUNTED_FIND(model, counted->layers, layer, plan->pieces.at[i].layer)->pieces++;
        count_part(model, counted, plan->pieces.at[i].stock);
    }
    for (size_t i = 0; i < plan->patches.count; i++) {
        struct layer_counted *layer =
            COUNTED_FIND(model, counted->layers, layer, plan->patches.at[i].layer);

        layer->patches++;
        layer->slits += plan->patches.at[i].slit;
    }
    for (size_t i = 0; i < plan->consumables.count; i++)
        count_consumable(model, counted, &plan->consumables.at[i]);
    for (size_t i = 0; i < plan->back_ways.count; i++)
        count_back(model, counted, &plan->back_ways.at[i]);
    count_tufts(plan, model, counted);
    count_channels(plan, model, counted);
    for (size_t i = 0; i < plan->cuttings.count; i++)
        COUNTED_FIND(model, counted->stocks, stock, plan->cuttings.at[i].stock)->taken +=
            plan->cuttings.at[i].used;
}

static void count_staples(const struct plan *plan, const struct model *model,
                          struct counted *counted)
{
    for (size_t i = 0; i < plan->edges.count; i++) {
        const struct edge *edge = &plan->edges.at[i];
        struct layer_counted *layer = COUNTED_FIND(model, counted->layers, layer, edge->layer);

        if (!layer->rows && edge->pitch)
            layer->rows = edge;
        layer->edge += edge->length;
        layer->temporary += edge->temporary;
        layer->corners += edge->corners > 0 ? (edge->edge < 0 ? 4 : 1) : 0;
        layer->at_bench += edge->staples;
    }
    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];
        struct layer_counted *layer;

        assert(interval->edge < plan->edges.count);
        layer = COUNTED_FIND(model, counted->layers, layer, plan->edges.at[interval->edge].layer);
        if (interval->pass != STAPLED_AT_BENCH) {
            layer->later += interval->staples;
            layer->loose += interval->to - interval->from;
            layer->at_bench -= interval->staples;
        }
    }
}

struct counted counted_make(const struct planning *planning)
{
    const struct model *model = planning->model;
    struct arena *arena = planning->arena;
    struct counted counted = {
        .boxes = ARENA_MANY(arena, struct box_counted, model->boxes.count + 1),
        .facings = ARENA_MANY(arena, struct facing_counted, model->facings.count + 1),
        .joins = ARENA_MANY(arena, struct join_counted, model->joins.count + 1),
        .layers = ARENA_MANY(arena, struct layer_counted, model->layers.count + 1),
        .stocks = ARENA_MANY(arena, struct stock_counted, model->stocks.count + 1),
    };

    group_facings(planning, &counted);
    count_wood(planning->plan, model, &counted);
    count_screws(planning->plan, model, &counted);
    count_cloth(planning->plan, model, &counted);
    count_staples(planning->plan, model, &counted);
    return counted;
}
