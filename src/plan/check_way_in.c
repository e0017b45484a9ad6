/*
 * Sheets ride home in a vehicle: as they are bought they go through its opening, and lie on its
 * floor where that was measured. The shop's saw comes before the ride.
 */
#include "plan/check.h"

#include "plan/findings.h"
#include "plan/passage.h"

static bool goes_in(const struct passage *vehicle, const struct offer *offer, int64_t thickness)
{
    struct vector sheet = {offer->length, offer->width, thickness};
    int64_t longest = offer->length > offer->width ? offer->length : offer->width;

    return passage_straight(sheet, vehicle->width, vehicle->height, 0) &&
           (vehicle->length == 0 || longest <= vehicle->length);
}

static void check_sheet(struct planning *planning, const struct passage *vehicle,
                        const struct purchase *line)
{
    const struct model *model = planning->model;
    const struct stock *stock = MODEL_FIND(model, stock, line->stock);
    const struct offer *offer = MODEL_FIND(model, offer, line->offer);
    struct finding *finding;

    if (!stock || stock->kind != STOCK_SHEET || !offer || line->packs == 0 ||
        goes_in(vehicle, offer, stock->thickness))
        return;
    finding = finding_add(planning, FINDING_SHEET_TOO_LARGE, ENTITY_stock, stock->key);
    argument_length(finding, 0, offer->length);
    argument_length(finding, 1, offer->width);
    argument_text(finding, 2, *vehicle->name ? vehicle->name : "the vehicle");
}

void check_way_in(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->passages.count; i++) {
        const struct passage *vehicle = &model->passages.at[i];

        if (vehicle->kind != PASSAGE_VEHICLE)
            continue;
        for (size_t k = 0; k < planning->plan->purchases.count; k++)
            check_sheet(planning, vehicle, &planning->plan->purchases.at[k]);
    }
}
