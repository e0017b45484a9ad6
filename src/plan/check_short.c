/*
 * Cloth that came out shorter than it was planned: a piece is pulled by what is left of its
 * handles, and one that does not reach its landing is cut anew, before the rest is bought.
 *
 * 1  What was measured when it was cut counts, and only of pieces that were not spoiled.
 * 2  What is short is shared by both handles of that way; an end that is sewn or stops has none.
 * 3  Widths that are sewn to each other lack together, across their seams, what each of them lacks;
 *    along the seams each has its own handles.
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

/* What the piece lacks across and up. A length of roll lies along its height where it is upright on
 * the roll. */
struct lack {
    int64_t across, up;
};

static struct lack lack_of(const struct short_piece *of)
{
    const struct cut_part *cut = of->cut;
    int64_t along = cut->length > 0 ? of->part->length - cut->length : 0;
    int64_t beside = cut->width > 0 ? of->part->width - cut->width : 0;

    return of->piece->across ? (struct lack){along, beside} : (struct lack){beside, along};
}

/* ---- pieces that reach from edge to edge ---- */

static const struct cover *cover_of(const struct plan *plan, int64_t layer)
{
    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].layer == layer)
            return &plan->covers.at[i];
    return NULL;
}

/* Is it the whole of the cover's face, or one of the widths that make it? Boxing is neither. */
static bool is_of_face(const struct cover *cover, const struct piece *piece)
{
    bool across = piece->width == cover->cut_width;
    bool up = piece->height == cover->cut_height;

    if (cover->width_count == 1)
        return across && up;
    return cover->railroaded ? across : up;
}

/* Of one that is sewn from widths only the way along the seams. */
static void check_piece(const struct short_piece *of, const struct cover *cover)
{
    struct lack lack = lack_of(of);

    if (!is_of_face(cover, of->piece))
        return;
    if (cover->width_count == 1 || cover->railroaded)
        check_way(of, lack.across, EDGE_LEFT, EDGE_RIGHT);
    if (cover->width_count == 1 || !cover->railroaded)
        check_way(of, lack.up, EDGE_BOTTOM, EDGE_TOP);
}

static const struct part *part_labelled(const struct plan *plan, const char *label)
{
    for (size_t i = 0; i < plan->parts.count; i++)
        if (!plan->parts.at[i].again && strcmp(plan->parts.at[i].label, label) == 0)
            return &plan->parts.at[i];
    return NULL;
}

/* The piece that a cut part is of; false for one that was spoiled, is no cover, or has gone. */
static bool find_piece(struct short_piece *of, const struct cut_part *cut)
{
    const struct plan *plan = of->planning->plan;

    of->cut = cut;
    of->part = cut->spoiled ? NULL : part_labelled(plan, cut->part);
    if (!of->part || of->part->piece == PLAN_NONE)
        return false;
    of->piece = &plan->pieces.at[of->part->piece];
    of->layer = MODEL_FIND(of->planning->model, layer, of->piece->layer);
    return of->layer && of->layer->kind == LAYER_COVER;
}

/* ---- widths together ---- */

/* What all widths of a cover lack across their seams; told of the one that lacks most. */
static void check_widths(struct planning *planning, const struct cover *cover)
{
    const struct model *model = planning->model;
    struct short_piece worst = {.planning = planning};
    int64_t most = 0, sum = 0;

    for (size_t i = 0; i < model->cut_parts.count; i++) {
        struct short_piece of = {.planning = planning};
        struct lack lack;
        int64_t lacking;

        if (!find_piece(&of, &model->cut_parts.at[i]) || of.piece->layer != cover->layer ||
            !is_of_face(cover, of.piece))
            continue;
        lack = lack_of(&of);
        lacking = cover->railroaded ? lack.up : lack.across;
        sum += lacking;
        if (lacking > most) {
            most = lacking;
            worst = of;
        }
    }
    if (most > 0 && !worst.layer->both)
        check_way(&worst, sum, cover->railroaded ? EDGE_BOTTOM : EDGE_LEFT,
                  cover->railroaded ? EDGE_TOP : EDGE_RIGHT);
}

/* ---- all ---- */

void check_short(struct planning *planning)
{
    const struct model *model = planning->model;
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < model->cut_parts.count; i++) {
        struct short_piece of = {.planning = planning};
        const struct cover *cover;

        if (!find_piece(&of, &model->cut_parts.at[i]))
            continue;
        cover = cover_of(plan, of.piece->layer);
        if (cover)
            check_piece(&of, cover);
    }
    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].width_count > 1)
            check_widths(planning, &plan->covers.at[i]);
}
