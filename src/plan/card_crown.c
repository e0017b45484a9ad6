/* What the cards of a frame and of its panel say where the main face has an outline. */
#include "plan/card.h"

#include "plan/curve.h"
#include "plan/geometry.h"

void card_crown(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct crown_piece *first = NULL, *last = NULL;

    for (size_t i = 0; i < plan->crown_pieces.count; i++)
        if (plan->crown_pieces.at[i].box == carding->step->box) {
            first = first ? first : &plan->crown_pieces.at[i];
            last = &plan->crown_pieces.at[i];
        }
    if (first)
        card_say(carding, arena_format(carding->planning->arena,
                                       "Cut posts above the rail on the slant; glue and screw the "
                                       "landing wood along them, %s%s%s",
                                       first->label, first == last ? "" : " to ",
                                       first == last ? "" : last->label));
}

/* The longest panel of a facing along the outline that it is bent over; 0 where it lies flat. */
static int64_t bent_length(const struct plan *plan, int64_t facing)
{
    int64_t longest = 0;

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->facing == facing && panel->width > area_width(&panel->area))
            longest = length_larger(longest, panel->width);
        if (panel->facing == facing && panel->height > area_height(&panel->area))
            longest = length_larger(longest, panel->height);
    }
    return longest;
}

void card_outline(struct carding *carding)
{
    const struct model *model = carding->planning->model;
    int64_t bent = bent_length(carding->planning->plan, carding->step->facing);
    const struct step *step = carding->step;
    const struct facing *facing = MODEL_FIND(model, facing, step->facing);
    const struct box *box = MODEL_FIND(model, box, step->box);

    if (facing && box && curve_has(box, facing->side))
        card_say(carding, "Mark the outline by its heights, cut the panel to it; ease the edge");
    if (bent > 0)
        card_say(carding,
                 arena_format(carding->planning->arena,
                              "Bend it over the landing wood, screw it down from the middle "
                              "outwards, %s along it; where it will not bend, kerf its inside",
                              card_marked(carding, bent)));
}

void card_board_outline(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct box *box = MODEL_FIND(carding->planning->model, box, carding->step->box);

    for (size_t i = 0; i < plan->outlines.count; i++)
        if (box && box->frame == FRAME_BOARD && plan->outlines.at[i].box == box->key)
            card_say(carding,
                     arena_format(carding->planning->arena,
                                  "Mark the outline by its heights, saw it along them, %s",
                                  card_marked(carding, plan->outlines.at[i].lengths[EDGE_TOP])));
}
