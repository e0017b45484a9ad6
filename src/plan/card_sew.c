/*
 * What the card of a sewing step says: its seams in their order with their figures, what stays
 * open, and the thread.
 */
#include "plan/card.h"

#include "plan/geometry.h"
#include "plan/layers.h"

#include <inttypes.h>
#include <stdio.h>

/* "left boxing to the face: 60-1/4 in, the welt between, corners clipped 7/16 in deep". */
static const char *seam_line(const struct carding *carding, const struct seam *seam)
{
    struct arena *arena = carding->planning->arena;
    const char *line =
        seam->count > 1
            ? arena_format(arena, "Sew the %s: %d of %s", seam->what, seam->count,
                           card_length(carding, seam->length))
            : arena_format(arena, "Sew the %s: %s", seam->what, card_length(carding, seam->length));

    if (seam->even)
        line = arena_format(arena, "%s, at equal distance from the middle", line);
    else if (seam->joins_widths && seam->count > 1)
        line = arena_format(arena, "%s, one under the other", line);
    if (seam->welt)
        line = arena_format(arena, "%s, the welt between", line);
    if (seam->clip > 0)
        line = arena_format(arena, "%s, corners clipped %s deep", line,
                            card_length(carding, seam->clip));
    if (seam->zip > 0)
        line = arena_format(arena, "%s, a zip of %s in it", line, card_length(carding, seam->zip));
    return line;
}

/* The sides at which the cover hangs open; "" where it has none. */
static const char *open_sides(const struct carding *carding, const struct layer *layer)
{
    const char *names = "";

    if (layer->shape != SHAPE_SEWN)
        return names;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (layer_ending(layer, edge) != ENDING_SEWN && layer_ending(layer, edge) != ENDING_STOP)
            names = arena_format(carding->planning->arena, "%s%s%s", names, *names ? " and " : "",
                                 words_side.at[edge_side(layer->side, edge)].name);
    return names;
}

/* An outside back is stitched to the frame when it is put on, and that card says so. */
static bool is_sewn_now(const struct layer *layer, const struct seam *seam)
{
    return layer && seam->layer == layer->key &&
           (seam->kind != SEAM_BY_HAND || layer->kind != LAYER_OUTSIDE_BACK);
}

/* The seams that find room, the last line telling of the rest. */
static void put_seams(struct carding *carding, const struct layer *layer, size_t last)
{
    const struct plan *plan = carding->planning->plan;
    struct step *step = carding->step;
    size_t left = 0;

    for (size_t i = 0; i < plan->seams.count; i++)
        left += is_sewn_now(layer, &plan->seams.at[i]);
    for (size_t i = 0; i < plan->seams.count; i++) {
        const struct seam *seam = &plan->seams.at[i];

        if (!is_sewn_now(layer, seam))
            continue;
        if (step->action_count + 1 == last && left > 1) {
            card_say(carding,
                     arena_format(carding->planning->arena,
                                  "Then the other %zu, as the sewing list has them", left));
            return;
        }
        card_say(carding, seam_line(carding, seam));
        left--;
    }
}

void card_sew(struct carding *carding)
{
    const struct layer *layer = MODEL_FIND(carding->planning->model, layer, carding->step->layer);
    const char *open = layer ? open_sides(carding, layer) : "";

    put_seams(carding, layer, CARD_ACTIONS - (*open != '\0'));
    if (*open)
        card_say(carding, arena_format(carding->planning->arena,
                                       "Leave the %s open: it is pulled on there", open));
}

const char *card_thread(const struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    bool inch = model_units(carding->planning->model) == UNITS_INCH;
    int64_t thread = 0;

    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].layer == carding->step->layer)
            thread += plan->covers.at[i].thread;
    if (thread == 0)
        return "";
    return arena_format(carding->planning->arena, "%" PRId64 " %s of thread",
                        whole_divide_up(thread, inch ? 36 * LENGTH_INCH : 1000 * LENGTH_MM),
                        inch ? "yd" : "m");
}
