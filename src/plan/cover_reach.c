/*
 * Handles: what there is to pull by. A short one is told before the cloth is bought; and where
 * shorter ones, that can still be held, bring a piece out of one width, that is told as well.
 */
#include "plan/cover.h"

#include "plan/cures.h"
#include "plan/findings.h"

static bool is_pulled(const struct spread *spread, int64_t edge)
{
    return spread->brims[edge].ending != ENDING_STOP && brim_is_open(spread, edge);
}

/* The handle of an edge, by hand. */
static void set_handle(struct cure_draft *cure, const struct spread *spread, int64_t edge,
                       int64_t handle)
{
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
