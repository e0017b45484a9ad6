/*
 * What each step says: its words with the figures of this build put in, what it needs and what it
 * closes for good.
 */
#include "plan/card.h"

#include "base/fault.h"
#include "plan/caution.h"
#include "plan/lift.h"
#include "plan/rules.h"
#include "plan/screws.h"
#include "plan/taken.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* ---- figures ---- */

const char *card_length(const struct carding *carding, int64_t length)
{
    char printed[QUANTITY_TEXT];

    quantity_print_unit(printed, QUANTITY_LENGTH, model_units(carding->planning->model), length);
    return arena_text(carding->planning->arena, printed);
}

const char *card_marked(const struct carding *carding, int64_t length)
{
    return card_length(carding, quantity_on_tape(model_units(carding->planning->model), length));
}

const struct screw_lot *card_screws(const struct carding *carding, size_t *ret_count)
{
    const struct step *step = carding->step;

    switch (step_kinds[step->kind].scope) {
    case SCOPE_JOIN:
        return screw_lots_of(&carding->screws, SCREW_JOIN, step->join, ret_count);
    case SCOPE_FACING:
        return screw_lots_of(&carding->screws, SCREW_PANEL, step->facing, ret_count);
    case SCOPE_BOX:
        return screw_lots_of(&carding->screws, SCREW_FRAME, step->box, ret_count);
    default:
        *ret_count = 0;
        return NULL;
    }
}

const char *card_screw_text(const struct carding *carding, const struct screw_lot *lot)
{
    const struct planning *planning = carding->planning;
    char printed[SCREW_TEXT];

    screw_kind_print(printed, &planning->plan->screw_kinds.at[lot->kind],
                     model_units(planning->model));
    return arena_text(planning->arena, printed);
}

static const char *box_name(const struct carding *carding, int64_t key)
{
    const struct box *box = MODEL_FIND(carding->planning->model, box, key);

    return box ? box->name : "";
}

/* Of the kind that most of the step's screws have. */
static const char *screw_figure(const struct carding *carding, char letter)
{
    size_t count;
    const struct screw_lot *lots = card_screws(carding, &count);
    const struct screw_lot *most = lots;
    const struct screw_kind *kind;

    assert(letter == 'w' || letter == 'p' || letter == 'e');
    if (count == 0)
        return "";
    for (size_t i = 1; i < count; i++)
        if (lots[i].count > most->count)
            most = &lots[i];
    if (letter == 'w')
        return card_screw_text(carding, most);
    kind = &carding->planning->plan->screw_kinds.at[most->kind];
    return card_length(carding, letter == 'p' ? kind->pilot : kind->clearance);
}

int64_t card_to_drill(const struct carding *carding)
{
    return counted_join(carding->planning, &carding->counted, carding->step->join)->to_drill;
}

/* "6 holes" that are to be drilled; nothing where all of them are there already. */
static const char *holes_figure(const struct carding *carding)
{
    int64_t count = card_to_drill(carding);

    if (count == 0)
        return counted_join(carding->planning, &carding->counted, carding->step->join)->points
                   ? ""
                   : "the holes";
    return arena_format(carding->planning->arena, "%" PRId64 " hole%s", count,
                        count == 1 ? "" : "s");
}

static const char *join_figure(const struct carding *carding, char letter)
{
    const struct junction *junction = plan_junction(carding->planning->plan, carding->step->join);

    if (letter == 'n')
        return holes_figure(carding);
    if (!junction)
        return "";
    switch (letter) {
    case 'l':
        return junction->cloth ? card_length(carding, junction->cloth) : "";
    case 'h':
        return box_name(carding, junction->head_box);
    case 'r':
        return junction->reachable ? words_side.at[junction->reach_side].name : "";
    case 'o':
        return words_tool.at[junction->tool].help;
    case 'd':
        return junction->patch ? card_length(carding, junction->patch) : "";
    case 'q':
        return arena_format(carding->planning->arena, "%zu", junction->point_count);
    default:
        return "";
    }
}

/* Length of edge that keeps its handle until its flap is closed. */
static const char *loose_figure(const struct carding *carding)
{
    int64_t loose =
        counted_layer(carding->planning, &carding->counted, carding->step->layer)->loose;

    return loose ? card_length(carding, loose) : "";
}

static const char *edge_figure(const struct carding *carding, char letter)
{
    const struct edge *edge =
        counted_layer(carding->planning, &carding->counted, carding->step->layer)->rows;

    assert(letter == 'm' || letter == 'g');
    if (!edge)
        return "";
    return card_length(carding, letter == 'm' ? edge->pitch : edge->leg);
}

/* Which holes of the join were there before, where some were. */
static void put_existing(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct junction *junction = plan_junction(plan, carding->step->join);
    struct arena *arena = carding->planning->arena;
    const char *ranks = "";

    for (size_t i = 0; junction && i < junction->point_count; i++) {
        const struct plan_point *point = &plan->points.at[junction->first_point + i];

        if (point->existing)
            ranks = arena_format(arena, "%s%s%d", ranks, *ranks ? ", " : "", point->rank);
    }
    if (*ranks)
        card_say(carding, arena_format(arena, "There already, do not drill again: hole %s", ranks));
}

/* Which parts a step cuts that cuts what is missing, until it is ticked. */
static void put_missing(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    struct arena *arena = carding->planning->arena;
    int64_t stock = step_key_of(carding->step->name);
    const char *parts = "";

    for (size_t i = 0; i < plan->parts.count && !carding->step->ticked; i++) {
        const struct part *part = &plan->parts.at[i];

        if (part->stock == stock && part->again)
            parts = arena_format(arena, "%s%s%s", parts, *parts ? ", " : "", part->label);
    }
    if (*parts)
        card_say(carding, arena_format(arena, "Missing: %s", parts));
}

/* "12 button holes" that go on through a layer under the tufted one; nothing for none. */
static const char *tufts_figure(const struct carding *carding)
{
    const struct model *model = carding->planning->model;
    const struct plan *plan = carding->planning->plan;
    const struct layer *under = MODEL_FIND(model, layer, carding->step->layer);
    int64_t count = 0;

    for (size_t i = 0; under && i < plan->tufts.count; i++) {
        const struct layer *over = MODEL_FIND(model, layer, plan->tufts.at[i].layer);

        count +=
            over->box == under->box && over->group == under->group && over->side == under->side;
    }
    return count ? arena_format(carding->planning->arena, "%" PRId64 " button holes", count) : "";
}

/* "9 lines, 3 in apart" of the channels of a layer or of the one over it; nothing without any. */
static const char *channels_figure(const struct carding *carding)
{
    const struct model *model = carding->planning->model;
    const struct plan *plan = carding->planning->plan;
    const struct layer *own = MODEL_FIND(model, layer, carding->step->layer);

    for (size_t i = 0; own && i < plan->tuft_fields.count; i++) {
        const struct tuft_field *field = &plan->tuft_fields.at[i];
        const struct layer *over = MODEL_FIND(model, layer, field->layer);

        if (field->lines > 0 && over->box == own->box && over->group == own->group &&
            over->side == own->side)
            return arena_format(carding->planning->arena, "%" PRId64 " lines, %s apart",
                                field->lines, card_length(carding, field->across_pitch));
    }
    return "";
}

/* How many relief cuts a layer takes; nothing where all is straight. */
static const char *relief_figure(const struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    int64_t cuts = 0;

    for (size_t i = 0; i < plan->edges.count; i++)
        if (plan->edges.at[i].layer == carding->step->layer)
            cuts += plan->edges.at[i].relief;
    return cuts ? arena_format(carding->planning->arena, "%" PRId64, cuts) : "";
}

/* Along what outline padding is trimmed; nothing on a rectangle. */
static const char *trimmed_figure(const struct carding *carding)
{
    int64_t trimmed =
        counted_layer(carding->planning, &carding->counted, carding->step->layer)->trimmed;

    return trimmed ? card_marked(carding, trimmed) : "";
}

/* How far above the middle a motif lies; nothing on plain cloth. */
static const char *motif_figure(const struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;

    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].layer == carding->step->layer && plan->covers.at[i].motif > 0)
            return card_length(carding, plan->covers.at[i].motif);
    return "";
}

/* A trade value as it stands. */
static const char *value_figure(const struct carding *carding, char letter)
{
    static const struct {
        char letter;
        enum trade value;
    } values[] = {{'z', TRADE_TUFT_HOLE},   {'v', TRADE_TUFT_HOLE_FOAM},
                  {'x', TRADE_HANDLE_REST}, {'f', TRADE_STAPLE_TEMP_CORNER},
                  {'u', TRADE_NAIL_EDGE},   {'s', TRADE_SPRAY_TACK},
                  {'S', TRADE_RELIEF_SHORT}};
    char printed[QUANTITY_TEXT] = "";

    for (size_t i = 0; i < sizeof values / sizeof *values; i++)
        if (values[i].letter == letter)
            quantity_print_unit(printed, trade_values[values[i].value].quantity,
                                model_units(carding->planning->model),
                                carding->planning->value[values[i].value]);
    return arena_text(carding->planning->arena, printed);
}

/* What is done with the edge of a flat layer before it is stapled. */
static const char *edge_words(const struct carding *carding)
{
    return counted_layer(carding->planning, &carding->counted, carding->step->layer)->raw
               ? "Cut the edge straight, leave it raw"
               : "Fold the edge in";
}

static const char *layer_figure(const struct carding *carding, char letter)
{
    switch (letter) {
    case 'k':
        return loose_figure(carding);
    case 't':
        return tufts_figure(carding);
    case 'c':
        return channels_figure(carding);
    case 'E':
        return edge_words(carding);
    case 'R':
        return relief_figure(carding);
    case 'T':
        return trimmed_figure(carding);
    case 'y':
        return motif_figure(carding);
    default:
        return edge_figure(carding, letter);
    }
}

static const char *box_figure(const struct carding *carding, char letter)
{
    assert(letter == 'b');
    return box_name(carding, carding->step->box);
}

static const char *glue_figure(const struct carding *carding, char letter)
{
    const struct facing *facing =
        MODEL_FIND(carding->planning->model, facing, carding->step->facing);

    assert(letter == 'G');
    return facing && facing->glued ? "Glue, lay" : "Lay";
}

/* What a letter stands for (card.h); "" when this build has no such figure. */
static const char *figure(const struct carding *carding, char letter)
{
    static const struct {
        const char *letters;
        const char *(*say)(const struct carding *carding, char letter);
    } figures[] = {
        {"b", box_figure},         {"G", glue_figure},          {"wpe", screw_figure},
        {"nlhrodq", join_figure},  {"mgktcERTy", layer_figure}, {"iajA", card_lid_figure},
        {"zvxfusS", value_figure},
    };

    assert(letter != '\0');
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++)
        if (strchr(figures[i].letters, letter))
            return figures[i].say(carding, letter);
    BUG("a card's words have a letter that nothing stands for");
}

/* ---- actions ---- */

/* A line with its figures; NULL when one of them is missing. */
static const char *fill_line(const struct carding *carding, const char *line)
{
    char filled[CARD_LINE];
    size_t length = 0;

    if (!strchr(line, '%'))
        return line;
    for (const char *at = line; *at && length + 1 < sizeof filled; at++) {
        const char *part;

        if (*at != '%') {
            filled[length++] = *at;
            continue;
        }
        part = figure(carding, *++at);
        if (!*part)
            return NULL;
        snprintf(filled + length, sizeof filled - length, "%s", part);
        length += strlen(filled + length);
    }
    assert(length < sizeof filled);
    filled[length] = '\0';
    return arena_text(carding->planning->arena, filled);
}

void card_say(struct carding *carding, const char *line)
{
    struct step *step = carding->step;

    assert(line && step->action_count <= CARD_ACTIONS);
    if (step->action_count < CARD_ACTIONS)
        step->actions[step->action_count++] = line;
}

static const struct card_words *words_of(const struct carding *carding)
{
    const struct card_words *loose = card_loose_words(carding->planning, carding->step);

    return loose ? loose : &card_words[carding->step->kind];
}

/* Lines that some kinds of steps have of their own, beside the words of the kind. */
struct own_lines {
    int kind;
    void (*say)(struct carding *carding);
};

static const struct own_lines lines_before[] = {
    {STEP_NUTS, card_nuts},     {STEP_EASE, card_board_outline}, {STEP_PANEL, card_cutouts},
    {STEP_DRILL, put_existing}, {STEP_RECUT, put_missing},
};

static const struct own_lines lines_after[] = {
    {STEP_PANEL, card_outline},     {STEP_FRAME, card_crown},
    {STEP_FRAME, card_frame_order}, {STEP_PATCH, card_access_holes},
    {STEP_DRILL, card_bolts},       {STEP_SEW, card_sew},
    {STEP_BACK, card_back},         {STEP_STAPLE, card_cloth_holes},
};

static void put_own_lines(struct carding *carding, const struct own_lines *lines, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (lines[i].kind == carding->step->kind)
            lines[i].say(carding);
}

static void put_actions(struct carding *carding)
{
    const struct card_words *words = words_of(carding);
    struct step *step = carding->step;

    step->actions = ARENA_MANY(carding->planning->arena, const char *, CARD_ACTIONS);
    put_own_lines(carding, lines_before, sizeof lines_before / sizeof *lines_before);
    for (int i = 0; i < CARD_ACTIONS && words->actions[i]; i++) {
        const char *line = fill_line(carding, words->actions[i]);

        if (line)
            card_say(carding, line);
    }
    put_own_lines(carding, lines_after, sizeof lines_after / sizeof *lines_after);
    step->caution =
        caution_of_step(carding->planning->plan, step, words->caution, carding->planning->arena);
}

/* ---- what it closes ---- */

/* The joins whose heads the step shuts away: those it has to wait for. Precedences are sorted by
 * the step that waits, and steps are gone through in order. */
static const char *shut_joins(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    size_t index = (size_t)(carding->step - plan->steps.at);
    const char *names = "";
    int64_t last = 0;

    assert(index < plan->steps.count);
    for (; carding->precedence < plan->precedences.count; carding->precedence++) {
        const struct precedence *precedence = &plan->precedences.at[carding->precedence];
        const struct join *join;

        if (precedence->after > index)
            break;
        assert(precedence->after == index);
        join = rule_shuts_heads(precedence->rule)
                   ? MODEL_FIND(plan->facts, join, plan->steps.at[precedence->before].join)
                   : NULL;
        if (!join || join->key == last)
            continue;
        names =
            arena_format(carding->planning->arena, "%s%s%s", names, *names ? ", " : "", join->name);
        last = join->key;
    }
    return names;
}

static void put_closes(struct carding *carding)
{
    const struct card_words *words = &card_words[carding->step->kind];
    const char *joins = shut_joins(carding);

    if (*joins)
        carding->step->closes = arena_format(carding->planning->arena,
                                             "no driver reaches the heads of %s after this", joins);
    else if (words->closes)
        carding->step->closes = words->closes;
}

/* ---- all ---- */

/* Who lifts what; a step that lifts more than its crew is good for by the trade gets more hands. */
static void put_crews(struct planning *planning)
{
    struct plan *plan = planning->plan;
    struct lifts lifts = lift_make(plan, planning->arena);

    for (size_t i = 0; i < lifts.of.count; i++) {
        const struct lift *lift = &lifts.of.at[i];
        struct step *step = &plan->steps.at[lift->step];
        int people = lift_usual(plan, lift->mass, 0);

        step->lifters = people;
        if (step_people(step) > 1 || lift->people != 1)
            step->crew = lift_words(plan, lift, planning->arena);
    }
}

void pass_card(struct planning *planning)
{
    struct carding carding = {.planning = planning,
                              .counted = counted_make(planning),
                              .flaps = flaps_make(planning),
                              .members = member_lots_make(planning),
                              .ticked = ticked_make(planning)};

    tell_measures(planning);
    carding.screws = screw_lots_make(planning, &carding.counted);
    for (size_t i = 0; i < planning->plan->steps.count; i++) {
        carding.step = &planning->plan->steps.at[i];
        put_actions(&carding);
        put_closes(&carding);
        card_needs(&carding);
        card_measures(&carding);
        card_compare(&carding);
    }
    put_crews(planning);
}
