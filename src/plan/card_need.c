/* What a step takes and what is measured in it, counted for this step only. */
#include "plan/card.h"

#include "plan/geometry.h"
#include "plan/taken.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>

static struct step_need *need_add(struct carding *carding)
{
    struct step *step = carding->step;
    struct step_need *grown =
        ARENA_MANY(carding->planning->arena, struct step_need, step->need_count + 1);

    for (size_t i = 0; i < step->need_count; i++)
        grown[i] = step->needs[i];
    step->needs = grown;
    return &grown[step->need_count++];
}

void card_need_count(struct carding *carding, int64_t count, const char *what, const char *which)
{
    struct step_need *need;

    if (count == 0)
        return;
    need = need_add(carding);
    snprintf(need->text, sizeof need->text, "%" PRId64 " %s%s%s", count, what, *which ? " " : "",
             which);
}

void card_need_length(struct carding *carding, int64_t length, const char *what)
{
    struct step_need *need;

    if (length == 0)
        return;
    need = need_add(carding);
    snprintf(need->text, sizeof need->text, "%s of %s", card_length(carding, length), what);
}

/* ---- wood ---- */

static void need_screws(struct carding *carding)
{
    size_t count;
    const struct screw_lot *lots = card_screws(carding, &count);

    for (size_t i = 0; i < count; i++)
        card_need_count(carding, lots[i].count, "screws", card_screw_text(carding, &lots[i]));
}

static void need_fastenings(struct carding *carding)
{
    need_screws(carding);
    card_need_bolts(carding);
}

static const char *member_words(const struct member_lot *lot)
{
    static const char *const words[MEMBER_COUNT][2] = {
        [MEMBER_RAIL] = {"rail", "rails"},     [MEMBER_UPRIGHT] = {"upright", "uprights"},
        [MEMBER_CROSS] = {"cross", "crosses"}, [MEMBER_SUPPORT] = {"support", "supports"},
        [MEMBER_BLOCK] = {"block", "blocks"},
    };

    assert(lot->kind >= 0 && lot->kind < MEMBER_COUNT);
    return words[lot->kind][lot->count > 1];
}

static void need_frame(struct carding *carding)
{
    size_t count;
    const struct member_lot *lots = member_lots_of(&carding->members, carding->step->box, &count);

    for (size_t i = 0; i < count; i++)
        card_need_count(carding, lots[i].count, member_words(&lots[i]),
                        card_length(carding, lots[i].length));
    need_screws(carding);
}

static void need_panel(struct carding *carding)
{
    const struct facing_counted *facing =
        counted_facing(carding->planning, &carding->counted, carding->step->facing);

    card_need_count(carding, facing->panels, facing->panels == 1 ? "panel" : "panels", "");
    need_screws(carding);
}

/* "9 strips of webbing", and their staples. */
static void need_web(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;

    for (size_t i = 0; i < plan->webbings.count; i++) {
        const struct webbing *web = &plan->webbings.at[i];

        if (web->facing != carding->step->facing)
            continue;
        card_need_count(carding, web->up + web->across, "strips of",
                        plan_stock_name(plan, web->stock));
        card_need_count(carding, web->staples, "staples", "");
    }
}

static void need_locators(struct carding *carding)
{
    card_need_count(carding,
                    counted_join(carding->planning, &carding->counted, carding->step->join)->points,
                    "locators", "");
}

static void need_fittings(struct carding *carding)
{
    const struct model *model = carding->planning->model;

    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];
        const char *name = *fitting->name ? fitting->name : words_fitting.at[fitting->kind].name;

        if (fitting->box != carding->step->box || !step_puts_on(carding->step->kind, fitting->kind))
            continue;
        card_need_count(carding, fitting->count, name, "");
        card_need_count(carding, fitting->count * fitting->screws, "screws", "");
    }
}

static void need_parts_of(struct carding *carding, bool again)
{
    const struct plan *plan = carding->planning->plan;
    int64_t stock = step_key_of(carding->step->name);
    int64_t count = 0;

    for (size_t i = 0; i < plan->parts.count; i++)
        count += plan->parts.at[i].stock == stock && plan->parts.at[i].again == again;
    card_need_count(carding, count, count == 1 ? "part from" : "parts from",
                    plan_stock_name(plan, stock));
}

/* Once it is ticked it has cut the others, whatever is missing by now. */
static void need_parts(struct carding *carding)
{
    need_parts_of(carding, false);
}

/* Once it is ticked nothing is missing for it. */
static void need_missing(struct carding *carding)
{
    if (!carding->step->ticked)
        need_parts_of(carding, true);
}

/* ---- cloth ---- */

static const struct layer_counted *layer_counts(const struct carding *carding)
{
    return counted_layer(carding->planning, &carding->counted, carding->step->layer);
}

static void need_pieces(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct layer *layer = MODEL_FIND(carding->planning->model, layer, carding->step->layer);
    int64_t pieces = layer_counts(carding)->pieces;
    int64_t thin = 0;

    for (size_t i = 0; layer->thin && i < plan->pieces.count; i++)
        thin += plan->pieces.at[i].layer == layer->key && plan->pieces.at[i].stock == layer->thin;
    pieces -= layer->thin == layer->stock ? 0 : thin;
    card_need_count(carding, pieces, pieces == 1 ? "piece of" : "pieces of",
                    plan_stock_name(plan, layer->stock));
    if (thin > 0 && layer->thin != layer->stock)
        card_need_count(carding, thin, thin == 1 ? "piece of" : "pieces of",
                        plan_stock_name(plan, layer->thin));
}

static void need_sewing(struct carding *carding)
{
    const char *thread = card_thread(carding);

    need_pieces(carding);
    if (*thread)
        snprintf(need_add(carding)->text, sizeof(struct step_need), "%s", thread);
}

static void need_basting(struct carding *carding)
{
    need_pieces(carding);
    card_need_count(carding, layer_counts(carding)->temporary, "temporary staples", "");
}

static void need_staples(struct carding *carding)
{
    card_need_count(carding, layer_counts(carding)->at_bench, "staples", "");
}

/* What waits for a join, where the layer waits with it: a flap's staples stand on its own card. */
static int64_t staples_of_no_flap(const struct carding *carding)
{
    bool has_flaps = carding->step->kind == STEP_LINING;

    return has_flaps ? 0 : layer_counts(carding)->later;
}

static void need_stapled_piece(struct carding *carding)
{
    const struct layer_counted *layer = layer_counts(carding);

    need_pieces(carding);
    card_need_count(carding, layer->at_bench + staples_of_no_flap(carding), "staples", "");
    card_need_count(carding, layer->patches, "patches left bare", "");
}

static void need_back(struct carding *carding)
{
    need_stapled_piece(carding);
    card_need_back(carding);
}

static void need_trim(struct carding *carding)
{
    card_need_count(carding, layer_counts(carding)->nails, "nails", "");
    card_need_length(carding, layer_counts(carding)->strip, "trim");
}

static void need_buttons(struct carding *carding)
{
    card_need_count(carding, layer_counts(carding)->buttons, "buttons", "");
}

static void need_flap(struct carding *carding)
{
    const struct flap *flap =
        flaps_find(&carding->flaps, carding->step->layer, carding->step->join);

    if (flap)
        card_need_count(carding, flap->staples, "staples", "");
}

typedef void need_fn(struct carding *carding);

static need_fn *const needs[STEP_KINDS] = {
    [STEP_CUT] = need_parts,
    [STEP_RECUT] = need_missing,
    [STEP_SHEAR] = need_parts,
    [STEP_SLICE] = need_parts,
    [STEP_FRAME] = need_frame,
    [STEP_PANEL] = need_panel,
    [STEP_WEB] = need_web,
    [STEP_DRILL] = need_screws,
    [STEP_DRIVE] = need_fastenings,
    [STEP_FIX] = need_fastenings,
    [STEP_LOCATE] = need_locators,
    [STEP_INSERT] = need_fittings,
    [STEP_NUTS] = card_need_nuts,
    [STEP_CLEAT] = need_fittings,
    [STEP_HANG] = need_fittings,
    [STEP_HINGE] = need_fittings,
    [STEP_LEG] = need_fittings,
    [STEP_FIT] = need_fittings,
    [STEP_SEW] = need_sewing,
    [STEP_PAD] = need_pieces,
    [STEP_BATTING] = need_stapled_piece,
    [STEP_LINING] = need_stapled_piece,
    [STEP_COVER] = need_basting,
    [STEP_STAPLE] = need_staples,
    [STEP_BUTTON] = need_buttons,
    [STEP_TUFT] = need_buttons,
    [STEP_TRIM] = need_trim,
    [STEP_FLAP] = need_flap,
    [STEP_BACK] = need_back,
    [STEP_DUST] = need_stapled_piece,
};

void card_needs(struct carding *carding)
{
    if (needs[carding->step->kind])
        needs[carding->step->kind](carding);
}

/* ---- measures ---- */

/* A mark in the other unit than the build's. */
static const char *marked_in_other(const struct carding *carding, int64_t length)
{
    bool inch = model_units(carding->planning->model) == UNITS_INCH;
    enum units other = inch ? UNITS_MM : UNITS_INCH;
    char printed[QUANTITY_TEXT];

    quantity_print_unit(printed, QUANTITY_LENGTH, other, quantity_on_tape(other, length));
    return arena_text(carding->planning->arena, printed);
}

/* As on the hole map: "hole 2: 13 in (330 mm) from the bottom, 3/4 in (19 mm) from the back". */
static const char *hole_line(const struct carding *carding, const struct plan_point *point)
{
    const struct join *join = MODEL_FIND(carding->planning->model, join, point->join);
    const char *line = arena_format(carding->planning->arena, "hole %d:", point->rank);

    assert(join);
    for (int i = 0; i < 2; i++) {
        const struct from_edge *from = &point->edges[i];

        line = arena_format(carding->planning->arena, "%s%s %s (%s) from the %s", line,
                            i ? "," : "", card_marked(carding, from->distance),
                            marked_in_other(carding, from->distance),
                            words_side.at[edge_side(join->side_a, from->edge)].name);
    }
    return line;
}

static void measure_holes(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct junction *junction = plan_junction(plan, carding->step->join);
    struct step *step = carding->step;

    if (!junction)
        return;
    step->measures = ARENA_MANY(carding->planning->arena, const char *, junction->point_count);
    for (size_t i = 0; i < junction->point_count; i++)
        step->measures[step->measure_count++] =
            hole_line(carding, &plan->points.at[junction->first_point + i]);
}

/* "width: 60 in by the plan"; each thing that is entered with the tick has its line. */
static void measure_asked(struct carding *carding)
{
    struct arena *arena = carding->planning->arena;
    struct step *step = carding->step;
    size_t count;
    const struct ask *asks = plan_asks(carding->planning->plan, step, arena, &count);

    step->measures = ARENA_MANY(arena, const char *, count);
    for (size_t i = 0; i < count; i++)
        step->measures[step->measure_count++] =
            asks[i].planned ? arena_format(arena, "%s: %s by the plan", asks[i].name,
                                           card_length(carding, asks[i].planned))
                            : asks[i].name;
}

void card_measures(struct carding *carding)
{
    struct step *step = carding->step;
    const char *measure = card_words[step->kind].measure;

    if (step->kind == STEP_DRILL || step->kind == STEP_MAP || step->kind == STEP_FIND) {
        measure_holes(carding);
    } else if (step_kinds[step->kind].takes == STEP_TAKES_MEASURES && !measure) {
        measure_asked(carding);
    } else if (measure) {
        step->measures = ARENA_MANY(carding->planning->arena, const char *, 1);
        step->measures[step->measure_count++] = measure;
    }
}
