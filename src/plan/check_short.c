/*
 * Cloth that came out shorter than it was planned: a piece is pulled by what is left of its
 * handles, and one that does not reach its landing is cut anew, before the rest is bought.
 *
 * 1  What was measured when it was cut counts, and only of pieces that were not spoiled.
 * 2  What is short is shared by both handles of that way; an end that is sewn or stops has none.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"

#include <string.h>

struct short_piece {
    struct planning *planning;
    const struct cut_part *cut;
    const struct part *part;
    const struct piece *piece;
    const struct layer *layer;
};

/* The stapled edge on that side of the layer, or the loop round it; NULL where nothing holds it. */
static const struct edge *edge_of(const struct plan *plan, int64_t layer, int64_t side)
{
    for (size_t i = 0; i < plan->edges.count; i++)
        if (plan->edges.at[i].layer == layer &&
            (plan->edges.at[i].edge == side || plan->edges.at[i].edge == EDGE_LOOP))
            return &plan->edges.at[i];
    return NULL;
}

static void tell(const struct short_piece *of, int64_t missing, int64_t left)
{
    struct planning *planning = of->planning;
    struct cure_draft cure = cure_begin(planning, "Count it as spoiled and cut it anew");
    struct finding *finding = finding_add(
        planning, left < 0 ? FINDING_CUT_SHORT : FINDING_CUT_HANDLE, ENTITY_layer, of->layer->key);

    argument_text(finding, 0, of->piece->label);
    argument_length(finding, 1, missing);
    argument_length(finding, 2, left < 0 ? -left : left);
    argument_length(finding, 3, planning->value[TRADE_HANDLE_LEAST]);
    cure_word(&cure, ENTITY_cut_part, of->cut->key, "spoiled", "yes");
    cure_offer(&cure, finding);
}

/* One way of the piece, from edge to edge of the layer. */
static void check_way(const struct short_piece *of, int64_t missing, int64_t first, int64_t last)
{
    const struct plan *plan = of->planning->plan;
    const struct edge *ends[2] = {edge_of(plan, of->layer->key, first),
                                  edge_of(plan, of->layer->key, last)};
    int64_t handles = 0, pulled = 0;

    for (int i = 0; i < 2; i++)
        if (ends[i] && ends[i]->handle > 0) {
            handles += ends[i]->handle;
            pulled++;
        }
    if (missing <= 0 || pulled == 0)
        return;
    if (handles - missing < pulled * of->planning->value[TRADE_HANDLE_LEAST])
        tell(of, missing, (handles - missing) / pulled);
}

/* A length of roll lies along the piece's height where it is upright on the roll. */
static void check_piece(const struct short_piece *of)
{
    const struct cut_part *cut = of->cut;
    int64_t along = cut->length > 0 ? of->part->length - cut->length : 0;
    int64_t beside = cut->width > 0 ? of->part->width - cut->width : 0;
    bool across = of->piece->across;

    check_way(of, across ? along : beside, EDGE_LEFT, EDGE_RIGHT);
    check_way(of, across ? beside : along, EDGE_BOTTOM, EDGE_TOP);
}

/* Pieces that reach from edge to edge: one that is sewn from widths has seams to pull on. */
static bool is_whole(const struct plan *plan, const struct piece *piece)
{
    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].layer == piece->layer)
            return plan->covers.at[i].widths == 1 && piece->width == plan->covers.at[i].cut_width &&
                   piece->height == plan->covers.at[i].cut_height;
    return false;
}

static const struct part *part_labelled(const struct plan *plan, const char *label)
{
    for (size_t i = 0; i < plan->parts.count; i++)
        if (!plan->parts.at[i].again && strcmp(plan->parts.at[i].label, label) == 0)
            return &plan->parts.at[i];
    return NULL;
}

void check_short(struct planning *planning)
{
    const struct model *model = planning->model;
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < model->cut_parts.count; i++) {
        struct short_piece of = {.planning = planning, .cut = &model->cut_parts.at[i]};

        of.part = of.cut->spoiled ? NULL : part_labelled(plan, of.cut->part);
        if (!of.part || of.part->piece == PLAN_NONE)
            continue;
        of.piece = &plan->pieces.at[of.part->piece];
        of.layer = MODEL_FIND(model, layer, of.piece->layer);
        if (of.layer && of.layer->kind == LAYER_COVER && is_whole(plan, of.piece))
            check_piece(&of);
    }
}
