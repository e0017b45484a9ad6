/*
 * Handles: what there is to pull by, and what a box that came out larger may take of it. A short
 * one is told before the cloth is bought; and where shorter ones, that can still be held, bring a
 * piece out of one width, that is told as well.
 */
#include "plan/cover.h"

#include "plan/cloth_built.h"
#include "plan/cures.h"
#include "plan/findings.h"

#include <assert.h>
#include <string.h>

/* What no hand feels: 1/8 in. */
#define EYE (LENGTH_INCH / 8)

static bool is_pulled(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    return !spread->layer->slip && spread->brims[edge].ending != ENDING_STOP &&
           brim_is_open(spread, edge);
}

/* The handle of an edge, by hand. */
static void set_handle(struct cure_draft *cure, const struct spread *spread, int64_t edge,
                       int64_t handle)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    int64_t key = spread->brims[edge].by_hand;

    if (key == 0) {
        cure_refer(cure, ENTITY_layer_edge, 0, "layer", spread->layer->key);
        cure_word(cure, ENTITY_layer_edge, 0, "edge", words_edge.at[edge].name);
    }
    cure_length(cure, ENTITY_layer_edge, key, "handle", handle);
}

void tell_handles(struct planning *planning, const struct spread *spread)
{
    int64_t least = planning->value[TRADE_HANDLE_LEAST];

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        const struct brim *brim = &spread->brims[edge];
        struct cure_draft cure = cure_begin(planning, "Cut it with the usual handle");
        struct finding *finding;

        if (!is_pulled(spread, edge) || brim->handle >= least)
            continue;
        finding = finding_add(planning, FINDING_HANDLE_SHORT, ENTITY_layer, spread->layer->key);
        argument_text(finding, 0, words_edge.at[edge].name);
        argument_length(finding, 1, brim->handle);
        argument_length(finding, 2, least);
        set_handle(&cure, spread, edge, planning->value[TRADE_HANDLE]);
        if (planning->value[TRADE_HANDLE] >= least)
            cure_offer(&cure, finding);
    }
}

void tell_spared_seam(struct planning *planning, const struct spread *spread, int64_t cut,
                      int64_t roll, bool across)
{
    const int64_t ends[2] = {across ? EDGE_BOTTOM : EDGE_LEFT, across ? EDGE_TOP : EDGE_RIGHT};
    int64_t pulled = 0;
    int64_t handle = -(cut - roll);
    struct cure_draft cure = cure_begin(planning, "Cut it with shorter handles, without a seam");
    struct finding *finding;

    for (int i = 0; i < 2; i++) {
        pulled += is_pulled(spread, ends[i]);
        handle += is_pulled(spread, ends[i]) ? spread->brims[ends[i]].handle : 0;
    }
    if (pulled == 0 || handle < pulled * planning->value[TRADE_HANDLE_LEAST])
        return;
    handle /= pulled;
    finding = finding_add(planning, FINDING_SEAM_SPARED, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, cut - roll);
    argument_length(finding, 1, handle);
    for (int i = 0; i < 2; i++)
        if (is_pulled(spread, ends[i]))
            set_handle(&cure, spread, ends[i], handle);
    cure_offer(&cure, finding);
}

/* ---- boxes that came out otherwise ---- */

struct piece_size {
    int64_t width, height;
};

/* The size as planned of the plan's piece at `index`; 0 where it was not planned. */
static struct piece_size planned_size(const struct plan *planned, const struct plan *plan,
                                      size_t index)
{
    const struct piece *mate = piece_mate(plan, index, planned);

    return mate ? (struct piece_size){mate->width, mate->height} : (struct piece_size){0, 0};
}

/* The size that a piece was cut to already; else as planned. */
static struct piece_size size_at_hand(const struct model *model, const struct piece *piece,
                                      struct piece_size planned)
{
    for (size_t i = model->cut_parts.count; i-- > 0;) {
        const struct cut_part *cut = &model->cut_parts.at[i];

        if (!cut->spoiled && cut->width > 0 && strcmp(cut->part, piece->label) == 0)
            return piece->across ? (struct piece_size){cut->length, cut->width}
                                 : (struct piece_size){cut->width, cut->length};
    }
    return planned;
}

/* How much smaller a piece may be, across or up, and still be held: its handles. */
static int64_t spare(const struct planning *planning, const struct spread *spread,
                     const struct piece *piece, bool across)
{
    const int64_t ends[2] = {across ? EDGE_LEFT : EDGE_BOTTOM, across ? EDGE_RIGHT : EDGE_TOP};
    int64_t handles = 0;

    if (strstr(piece->name, "boxing"))
        return spread->layer->both ? EYE : planning->value[TRADE_HANDLE];
    for (int i = 0; i < 2; i++)
        handles += is_pulled(spread, ends[i]) ? spread->brims[ends[i]].handle : 0;
    return handles > 0 ? handles : EYE;
}

static const char *size_text(const struct planning *planning, int64_t width, int64_t height)
{
    enum units units = model_units(planning->model);
    char one[QUANTITY_TEXT], other[QUANTITY_TEXT];

    quantity_print(one, QUANTITY_LENGTH, units, width);
    quantity_print_unit(other, QUANTITY_LENGTH, units, height);
    return arena_format(planning->arena, "%s x %s", one, other);
}

static void tell_short(struct planning *planning, const struct piece *piece,
                       struct piece_size at_hand, int64_t missed)
{
    struct finding *finding =
        finding_add(planning, FINDING_PIECE_SHORT, ENTITY_layer, piece->layer);

    argument_text(finding, 0, arena_text(planning->arena, piece->label));
    argument_text(finding, 1, size_text(planning, at_hand.width, at_hand.height));
    argument_length(finding, 2, missed);
    argument_text(finding, 3, size_text(planning, piece->width, piece->height));
}

void tell_short_pieces(struct planning *planning, const struct spread *spread,
                       const struct plan *planned, size_t first)
{
    const struct plan *plan = planning->plan;

    for (size_t i = first; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        struct piece_size at_hand =
            size_at_hand(planning->model, piece, planned_size(planned, plan, i));
        int64_t across = piece->width - at_hand.width - spare(planning, spread, piece, true);
        int64_t up = piece->height - at_hand.height - spare(planning, spread, piece, false);

        if (at_hand.width > 0 && (across > 0 || up > 0))
            tell_short(planning, piece, at_hand, across > up ? across : up);
    }
}
