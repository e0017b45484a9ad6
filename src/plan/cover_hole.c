/*
 * The holes of joins that lie under a layer: neither a seam nor the line of a channel may fall on
 * them, nor on the bare patch round them.
 */
#include "plan/cover.h"

#include "plan/geometry.h"
#include "plan/point.h"

static void add_holes(struct planning *planning, const struct spread *spread,
                      const struct junction *junction, const struct plot *plot, bool of_b,
                      struct holes_on *holes)
{
    int64_t patch = junction->patch > 0 ? junction->patch : planning->value[TRADE_PATCH_PLAIN];

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &planning->plan->points.at[junction->first_point + i];
        int64_t u, v;

        box_to_face(spread->side, of_b ? point->in_b : point->in_a, &u, &v);
        u += plot->area.u0;
        v += plot->area.v0;
        *LIST_ADD(planning->arena, &holes->of) = (struct hole_on){u, v, patch / 2};
    }
}

struct holes_on holes_on_layer(struct planning *planning, const struct spread *spread)
{
    struct holes_on holes = {.of = {{0}}};

    for (size_t i = 0; i < planning->plan->junctions.count; i++) {
        const struct junction *junction = &planning->plan->junctions.at[i];

        for (size_t k = 0; k < spread->plot_count; k++) {
            int64_t box = spread->plots[k].box->key;
            bool of_b = junction->box_b == box;
            bool heads = junction->head_box == box && !junction->head_inside &&
                         junction->head_side == spread->side;

            if ((of_b || junction->box_a == box) &&
                (heads || point_side(planning, junction, of_b) == spread->side))
                add_holes(planning, spread, junction, &spread->plots[k], of_b, &holes);
        }
    }
    return holes;
}
