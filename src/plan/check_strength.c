/*
 * What bends too far where somebody sits, slats, a wide bed without a leg in its middle, joins that
 * hold less than a person who leans pulls, and tall pieces that stand free.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/hold.h"
#include "plan/slats.h"
#include "plan/strength.h"

/* Thicker sheets of the workshop, the thinnest of them first. */
static void offer_thicker(struct planning *planning, const struct panel *panel,
                          struct finding *finding)
{
    const struct model *model = planning->model;
    const struct stock *best = NULL;
    struct cure_draft cure;

    for (size_t i = 0; i < model->stocks.count; i++) {
        const struct stock *stock = &model->stocks.at[i];

        if (stock->kind == STOCK_SHEET && stock->thickness > panel->thickness &&
            (!best || stock->thickness < best->thickness))
            best = stock;
    }
    if (!best)
        return;
    cure = cure_begin(planning, arena_format(planning->arena, "Make it of %s", best->name));
    cure_refer(&cure, ENTITY_facing, panel->facing, "stock", best->key);
    cure_offer_on_trial(&cure, finding);
}

static void check_spans(struct planning *planning)
{
    struct strength_spans spans = strength_spans(planning->plan, planning->arena);

    for (size_t i = 0; i < spans.of.count; i++) {
        const struct strength_span *span = &spans.of.at[i];
        bool panel = span->panel != PLAN_NONE;
        struct finding *finding;

        if (span->bend <= span->most)
            continue;
        finding = finding_add(planning, panel ? FINDING_PANEL_BENDS : FINDING_MEMBER_BENDS,
                              ENTITY_box, span->box);
        argument_length(finding, 0, span->bend);
        argument_length(finding, 1, span->span);
        argument_length(finding, 2, span->most);
        if (panel)
            offer_thicker(planning, &planning->plan->panels.at[span->panel], finding);
        else
            argument_text(finding, 3, planning->plan->members.at[span->member].label);
    }
}

/* The legs that are wanted, evenly along its middle, and a rail over them that is its own. */
static void offer_legs(struct planning *planning, const struct box *box,
                       const struct strength_bed *bed, struct finding *finding)
{
    bool by_u = box->width <= box->depth;
    int64_t across = (by_u ? box->width : box->depth) / 2;
    int64_t length = by_u ? box->depth : box->width;
    struct cure_draft cure = cure_begin(planning, "Put legs along its middle");

    for (int64_t i = 1; i <= bed->legs; i++) {
        int64_t along = length * i / (bed->legs + 1);

        cure_refer(&cure, ENTITY_fitting, 0, "box", box->key);
        cure_word(&cure, ENTITY_fitting, 0, "kind", words_fitting.at[FITTING_LEG].name);
        cure_word(&cure, ENTITY_fitting, 0, "side", words_side.at[SIDE_BOTTOM].name);
        cure_length(&cure, ENTITY_fitting, 0, "u", by_u ? across : along);
        cure_length(&cure, ENTITY_fitting, 0, "v", by_u ? along : across);
    }
    cure_offer_on_trial(&cure, finding);
}

static void check_beds(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        const struct box *box = &planning->model->boxes.at[i];
        struct strength_bed bed;
        struct finding *finding;

        if (!strength_bed(planning->plan, box, &bed) || bed.has >= bed.legs)
            continue;
        finding = finding_add(planning, FINDING_BED_NO_LEG, ENTITY_box, box->key);
        argument_length(finding, 0, bed.width);
        argument_quantity(finding, 1, QUANTITY_COUNT, bed.legs);
        argument_length(finding, 2, planning->value[TRADE_BED_LEG_PITCH]);
        argument_length(finding, 3, planning->value[TRADE_BED_BEAM_WIDTH]);
        offer_legs(planning, box, &bed, finding);
    }
}

static void check_slats(struct planning *planning)
{
    const int64_t *value = planning->value;

    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        struct slats slats;
        struct finding *finding;
        int64_t most;

        if (!slats_of(planning->plan, &planning->model->boxes.at[i], &slats))
            continue;
        most = length_smaller(value[TRADE_SLAT_GAP], slats.width);
        if (slats.gap > most) {
            finding = finding_add(planning, FINDING_SLATS_APART, ENTITY_box, slats.box);
            argument_length(finding, 0, slats.gap);
            argument_length(finding, 1, most);
        }
        if (slats.width >= value[TRADE_SLAT_WIDTH] && slats.thin >= value[TRADE_SLAT_THICK])
            continue;
        finding = finding_add(planning, FINDING_SLAT_SLENDER, ENTITY_box, slats.box);
        argument_length(finding, 0, slats.width);
        argument_length(finding, 1, slats.thin);
        argument_length(finding, 2, value[TRADE_SLAT_WIDTH]);
        argument_length(finding, 3, value[TRADE_SLAT_THICK]);
    }
}

static void check_joins(struct planning *planning)
{
    int64_t pull = planning->value[TRADE_STRENGTH_PULL];

    for (size_t i = 0; i < planning->plan->junctions.count; i++) {
        const struct junction *junction = &planning->plan->junctions.at[i];
        struct hold hold;
        struct finding *finding;

        if (!hold_join(planning->plan, junction, &hold) || hold.end_grain ||
            (hold.out >= pull && hold.side >= pull))
            continue;
        finding = finding_add(planning, FINDING_JOIN_WEAK, ENTITY_join, junction->join);
        argument_quantity(finding, 0, QUANTITY_MASS, hold.out);
        argument_quantity(finding, 1, QUANTITY_MASS, hold.side);
        argument_quantity(finding, 2, QUANTITY_MASS, pull);
    }
}

static void check_tipping(struct planning *planning)
{
    const int64_t *value = planning->value;

    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        struct strength_tip tip;
        struct finding *finding;

        if (!strength_tip(planning->plan, &planning->model->boxes.at[i], &tip) ||
            tip.height < value[TRADE_TIP_HEIGHT] || tip.push >= value[TRADE_TIP_PUSH])
            continue;
        finding = finding_add(planning, FINDING_TIPS, ENTITY_box, tip.box);
        argument_length(finding, 0, tip.height);
        argument_length(finding, 1, tip.depth);
        argument_quantity(finding, 2, QUANTITY_MASS, tip.push);
    }
}

void check_strength(struct planning *planning)
{
    check_spans(planning);
    check_beds(planning);
    check_slats(planning);
    check_joins(planning);
    check_tipping(planning);
}
