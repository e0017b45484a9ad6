/*
 * What a step is called: its lasting name, by which ticks find it, and its title.
 */
#include "plan/order.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

static const char *box_name(const struct model *model, int64_t key)
{
    const struct box *box = MODEL_FIND(model, box, key);

    return box ? box->name : "";
}

static void title_layer(const struct model *model, const struct layer *layer, char *out,
                        size_t room)
{
    const char *kind = words_layer.at[layer->kind].name;

    if (layer->kind == LAYER_OUTSIDE_BACK)
        kind = "outside back";
    if (layer->kind == LAYER_DUST_COVER)
        kind = "dust cover";
    if (layer->group) {
        const struct group *group = MODEL_FIND(model, group, layer->group);

        snprintf(out, room, "%s of %s", kind, group ? group->name : "");
        return;
    }
    snprintf(out, room, "%s %s of %s", words_side.at[layer->side].name, kind,
             box_name(model, layer->box));
}

static void title_facing(const struct model *model, int64_t key, char *out, size_t room)
{
    const struct facing *facing = MODEL_FIND(model, facing, key);

    assert(facing);
    snprintf(out, room, "%s of %s", words_side.at[facing->side].name, box_name(model, facing->box));
}

/* What a letter of a title stands for. */
static void title_part(const struct plan *plan, const struct work *work, char letter, char *out,
                       size_t room)
{
    const struct model *model = plan->facts;

    *out = '\0';
    if (letter == 'b')
        snprintf(out, room, "%s", box_name(model, work->step.box));
    else if (letter == 'j' && work->of_join)
        snprintf(out, room, "%s", work->of_join->name);
    else if (letter == 's')
        snprintf(out, room, "%s", plan_stock_name(plan, work->stock));
    else if (letter == 'c' && work->of_layer)
        title_layer(model, work->of_layer, out, room);
    else if (letter == 'f')
        title_facing(model, work->step.facing, out, room);
}

/* A sleeve is pulled over its box, a cushion's cover is filled; everything else is laid on its
 * face, and foam glued there. */
static const char *title_form(const struct model *model, const struct work *work)
{
    const struct layer *layer = work->of_layer;

    if (work->step.kind == STEP_PAD && !layer_lies_on_wood(model, layer))
        return "Make up the %c";
    if (work->step.kind != STEP_COVER || layer->shape != SHAPE_SEWN)
        return step_kinds[work->step.kind].title;
    if (!layer_lies_on_wood(model, layer))
        return "Fill and close the %c";
    if (layer->slip)
        return "Pull on the %c";
    return layer->both ? "Pull on and baste the %c" : step_kinds[work->step.kind].title;
}

static void set_title(const struct plan *plan, struct work *work)
{
    const char *at = title_form(plan->facts, work);
    size_t length = 0;

    for (; *at && length + 1 < sizeof work->step.title; at++) {
        if (*at != '%') {
            work->step.title[length++] = *at;
            continue;
        }
        title_part(plan, work, *++at, work->step.title + length, sizeof work->step.title - length);
        length += strlen(work->step.title + length);
    }
    work->step.title[length] = '\0';
}

static void set_name(struct work *work, int64_t key, int64_t nth)
{
    char *name = work->step.name;
    const char *word = step_kinds[work->step.kind].word;

    if (work->step.kind == STEP_FLAP)
        snprintf(name, sizeof work->step.name, "%s:%" PRId64 "-%" PRId64, word, work->step.layer,
                 work->step.join);
    else if (nth)
        snprintf(name, sizeof work->step.name, "%s:%" PRId64 "-%" PRId64, word, key, nth);
    else if (key)
        snprintf(name, sizeof work->step.name, "%s:%" PRId64, word, key);
    else
        snprintf(name, sizeof work->step.name, "%s", word);
}

void order_name(const struct plan *plan, struct work *work, int64_t key, int64_t nth)
{
    set_name(work, key, nth);
    set_title(plan, work);
}
