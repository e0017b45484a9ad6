#include "plan/weight.h"

#include "plan/curve.h"
#include "plan/geometry.h"

#include <assert.h>
#include <string.h>

static const struct {
    const char *word;
    bool bare;
} kinds[WEIGHT_KINDS] = {
#define WEIGHT_KIND(name, word, bare) [WEIGHT_##name] = {word, bare},
    WEIGHTS(WEIGHT_KIND)
#undef WEIGHT_KIND
};

const char *weight_word(enum weight_kind kind)
{
    assert(kind < WEIGHT_KINDS);

    return kinds[kind].word;
}

static int64_t share(int64_t a, int64_t b, int64_t c)
{
    int64_t result = 0;
    enum fault fault = whole_share(a, b, c, &result);

    assert(fault == FAULT_NONE); /* sizes and densities have ranges far below */
    (void)fault;
    return result;
}

static int64_t square_mm(int64_t a, int64_t b)
{
    return share(a, b, LENGTH_MM * LENGTH_MM);
}

/* mm3 times g/m3 is 1/1000000 mg. */
static int64_t of_block(int64_t area, int64_t thickness, int64_t density)
{
    return share(share(area, thickness, LENGTH_MM), density, 1000000);
}

static int64_t density_of(const struct plan *plan, int64_t stock, enum trade standard)
{
    const struct stock *entry = MODEL_FIND(plan->facts, stock, stock);

    return entry && entry->density > 0 ? entry->density : plan->value[standard];
}

int64_t weight_of_member(const struct plan *plan, const struct plan_member *member)
{
    const struct stock *stock = MODEL_FIND(plan->facts, stock, member->stock);
    bool hard = stock && stock->wood == WOOD_HARD;
    int64_t area =
        square_mm(solid_size(&member->solid, AXIS_X), solid_size(&member->solid, AXIS_Y));

    return of_block(
        area, solid_size(&member->solid, AXIS_Z),
        density_of(plan, member->stock, hard ? TRADE_WOOD_DENSITY_HARD : TRADE_WOOD_DENSITY_SOFT));
}

int64_t weight_of_panel(const struct plan *plan, const struct panel *panel)
{
    const struct box *box = MODEL_FIND(plan->facts, box, panel->box);
    int64_t area = square_mm(panel->width, panel->height);

    if (box && curve_has(box, panel->side))
        area -= curve_away(plan->facts, box, &panel->area);
    return of_block(area, panel->thickness, density_of(plan, panel->stock, TRADE_SHEET_DENSITY));
}

/* ---- soft goods ---- */

/* Foam over a face that is sat on is the denser one, where the stock does not say. */
static enum trade foam_density(const struct plan *plan, const struct layer *layer)
{
    for (size_t i = 0; i < plan->facts->facings.count; i++) {
        const struct facing *facing = &plan->facts->facings.at[i];

        if (facing->box == layer->box && facing->side == layer->side && facing->use == USE_SEAT)
            return TRADE_FOAM_DENSITY_SEAT;
    }
    return TRADE_FOAM_DENSITY_BACK;
}

static enum trade area_mass_of(const struct layer *layer)
{
    switch (layer->kind) {
    case LAYER_BATTING:
        return TRADE_BATTING_AREA_MASS;
    case LAYER_LINING:
    case LAYER_OUTSIDE_BACK:
        return TRADE_LINING_AREA_MASS;
    case LAYER_DUST_COVER:
        return TRADE_DUST_AREA_MASS;
    default:
        return TRADE_CLOTH_AREA_MASS;
    }
}

/* Of an area of what a layer is made of. */
static int64_t weight_of_area(const struct plan *plan, const struct layer *layer, int64_t material,
                              int64_t area)
{
    const struct stock *stock = MODEL_FIND(plan->facts, stock, material);

    if (layer->kind != LAYER_FOAM)
        return share(area,
                     stock && stock->area_mass > 0 ? stock->area_mass
                                                   : plan->value[area_mass_of(layer)],
                     1000000);
    int64_t thickness = layer->thickness > 0 || !stock ? layer->thickness : stock->thickness;
    return of_block(area, thickness, density_of(plan, material, foam_density(plan, layer)));
}

int64_t weight_of_piece(const struct plan *plan, const struct piece *piece)
{
    const struct layer *layer = MODEL_FIND(plan->facts, layer, piece->layer);

    return layer ? weight_of_area(plan, layer, piece->stock, square_mm(piece->width, piece->height))
                 : 0;
}

enum weight_kind weight_kind_of_piece(const struct plan *plan, const struct piece *piece)
{
    const struct layer *layer = MODEL_FIND(plan->facts, layer, piece->layer);

    if (layer && layer->kind == LAYER_FOAM)
        return WEIGHT_FOAM;
    return layer && layer->kind == LAYER_BATTING ? WEIGHT_BATTING : WEIGHT_CLOTH;
}

int64_t weight_of_fixings(const struct plan *plan, int64_t wood)
{
    return share(wood, plan->value[TRADE_FIXINGS_MASS], 1000000);
}

/* ---- boxes ---- */

static void add(const struct plan *plan, struct weight *weights, int64_t box, enum weight_kind kind,
                int64_t mass)
{
    size_t index = model_index(plan->facts, ENTITY_box, box);

    if (index < plan->facts->boxes.count)
        weights[index].of[kind] += mass;
}

/* Foam and batting lose what lies beyond the outline. */
static void take_off_trimmed(const struct plan *plan, struct weight *weights)
{
    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);

        if (layer && cover->away > 0)
            add(plan, weights, cover->box, layer->kind == LAYER_FOAM ? WEIGHT_FOAM : WEIGHT_BATTING,
                -weight_of_area(plan, layer, layer->stock, cover->away));
    }
}

void weight_boxes(const struct plan *plan, struct weight *ret_weights)
{
    memset(ret_weights, 0, plan->facts->boxes.count * sizeof *ret_weights);
    for (size_t i = 0; i < plan->members.count; i++)
        add(plan, ret_weights, plan->members.at[i].box, WEIGHT_STICKS,
            weight_of_member(plan, &plan->members.at[i]));
    for (size_t i = 0; i < plan->panels.count; i++)
        add(plan, ret_weights, plan->panels.at[i].box,
            plan->panels.at[i].loose ? WEIGHT_LOOSE : WEIGHT_PANELS,
            weight_of_panel(plan, &plan->panels.at[i]));
    for (size_t i = 0; i < plan->facts->boxes.count; i++)
        ret_weights[i].of[WEIGHT_FIXINGS] = weight_of_fixings(
            plan, ret_weights[i].of[WEIGHT_STICKS] + ret_weights[i].of[WEIGHT_PANELS]);
    for (size_t i = 0; i < plan->pieces.count; i++)
        add(plan, ret_weights, plan->pieces.at[i].box,
            weight_kind_of_piece(plan, &plan->pieces.at[i]),
            weight_of_piece(plan, &plan->pieces.at[i]));
    take_off_trimmed(plan, ret_weights);
}

static int64_t sum(const struct weight *weight, bool bare_only)
{
    int64_t mass = 0;

    for (int kind = 0; kind < WEIGHT_LOOSE; kind++)
        if (kinds[kind].bare || !bare_only)
            mass += weight->of[kind];
    return mass;
}

int64_t weight_bare(const struct weight *weight)
{
    return sum(weight, true);
}

int64_t weight_finished(const struct weight *weight)
{
    return sum(weight, false);
}
