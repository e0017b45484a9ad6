#include "work.h"
#include "kept.h"

#include "exchange/exchange.h"
#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int64_t add_stock(struct work_bench *bench, const char *name, int64_t kind, double thickness,
                         double width)
{
    struct stock *stock = MODEL_ADD(&bench->model, stock);

    stock->name = name;
    stock->kind = kind;
    stock->thickness = IN(thickness);
    stock->width = IN(width);
    return stock->key;
}

static void arm(struct work_bench *bench)
{
    if (setjmp(bench->escape))
        fail_msg("out of memory");
    bench->facts.escape = &bench->escape;
}

void work_begin(struct work_bench *bench)
{
    memset(bench, 0, sizeof *bench);
    arena_init(&bench->facts);
    arena_init(&bench->made);
    arm(bench);
    model_init(&bench->model, &bench->facts);
    bench->stick = add_stock(bench, "2x3", STOCK_STICK, 1.5, 2.5);
    bench->sheet = add_stock(bench, "ply", STOCK_SHEET, 0.5, 0);
    bench->cloth = add_stock(bench, "twill", STOCK_CLOTH, 0.05, 54);
    bench->foam = add_stock(bench, "foam", STOCK_FOAM, 2, 0);
    bench->batting = add_stock(bench, "fluff", STOCK_BATTING, 0.5, 48);
}

void work_end(struct work_bench *bench)
{
    arena_release(&bench->made);
    arena_release(&bench->facts);
}

void work_plan(struct work_bench *bench)
{
    arena_release(&bench->made);
    assert_int_equal(plan_make_draft(&bench->model, NULL, &bench->made, &bench->plan), FAULT_NONE);
}

void work_case(struct work_bench *bench, const char *name)
{
    char path[4096];
    struct text bytes;

    snprintf(path, sizeof path, "%s/%s.json", CASE_FOLDER, name);
    text_init(&bytes);
    file_take(&bytes, path);
    memset(bench, 0, sizeof *bench);
    arena_init(&bench->facts);
    arena_init(&bench->made);
    arm(bench);
    model_init(&bench->model, &bench->facts);
    bench->facts.escape = NULL;
    assert_int_equal(
        exchange_build_in(text_string(&bytes), bytes.length, &bench->model, NULL, NULL),
        FAULT_NONE);
    text_release(&bytes);
    bench->facts.escape = &bench->escape;
    work_plan(bench);
}

int work_begin_headboard(void **state)
{
    static struct work_bench bench;

    work_case(&bench, "headboard");
    *state = &bench;
    return 0;
}

int work_finish(void **state)
{
    work_end(*state);
    return 0;
}

void work_empty(struct work_bench *bench)
{
    arena_release(&bench->made);
    bench->made.escape = &bench->escape;
    bench->hand = ARENA_NEW(&bench->made, struct plan);
    bench->hand->facts = bench->hand->entered = &bench->model;
    trade_resolve(&bench->model, bench->hand->value);
    bench->plan = bench->hand;
}

void work_order(struct work_bench *bench)
{
    struct planning planning = {&bench->model, bench->hand,        &bench->made,
                                NULL,          bench->hand->value, NULL};

    pass_order(&planning);
    pass_card(&planning);
}

int64_t work_box(struct work_bench *bench, const char *name, int64_t frame)
{
    struct box *box = MODEL_ADD(&bench->model, box);

    box->name = name;
    box->frame = frame;
    box->width = IN(30);
    box->depth = frame == FRAME_BOARD ? IN(0.5) : IN(3);
    box->height = IN(40);
    box->stick = frame == FRAME_BOARD ? 0 : bench->stick;
    return box->key;
}

int64_t work_facing(struct work_bench *bench, int64_t box, int64_t side)
{
    struct facing *facing = MODEL_ADD(&bench->model, facing);

    facing->box = box;
    facing->side = side;
    facing->stock = bench->sheet;
    return facing->key;
}

int64_t work_layer(struct work_bench *bench, int64_t box, int64_t kind, int64_t side, int64_t rank)
{
    struct layer *layer = MODEL_ADD(&bench->model, layer);

    layer->box = box;
    layer->kind = kind;
    layer->side = side;
    layer->rank = rank;
    layer->shape = kind == LAYER_FOAM ? SHAPE_SLAB : SHAPE_FLAT;
    if (kind == LAYER_COVER || kind == LAYER_BATTING)
        layer->shape = SHAPE_WRAPPED;
    layer->stock = kind == LAYER_FOAM      ? bench->foam
                   : kind == LAYER_BATTING ? bench->batting
                                           : bench->cloth;
    return layer->key;
}

int64_t work_join(struct work_bench *bench, const char *name, int64_t a, int64_t b, int64_t place)
{
    struct join *join = MODEL_ADD(&bench->model, join);

    join->name = name;
    join->box_a = a;
    join->side_a = SIDE_RIGHT;
    join->box_b = b;
    join->side_b = SIDE_LEFT;
    join->place = place;
    return join->key;
}

int64_t work_fitting(struct work_bench *bench, int64_t box, int64_t kind)
{
    struct fitting *fitting = MODEL_ADD(&bench->model, fitting);

    fitting->box = box;
    fitting->kind = kind;
    fitting->side = SIDE_BOTTOM;
    fitting->count = 4;
    return fitting->key;
}

void work_tick(struct work_bench *bench, const char *step, const char *content)
{
    struct tick *tick = MODEL_ADD(&bench->model, tick);

    tick->step = arena_text(&bench->facts, step);
    tick->content = arena_text(&bench->facts, content);
}

void work_constrain(struct work_bench *bench, enum constraint_kind kind, int64_t join, int64_t item)
{
    struct constraint *constraint = LIST_ADD(&bench->made, &bench->hand->constraints);

    *constraint = (struct constraint){.kind = kind, .join = join, .item = item};
}

void work_flap(struct work_bench *bench, int64_t layer, int64_t join, enum pass_of_staples pass)
{
    struct edge *edge = LIST_ADD(&bench->made, &bench->hand->edges);
    struct interval *interval = LIST_ADD(&bench->made, &bench->hand->intervals);

    *edge = (struct edge){.layer = layer,
                          .length = IN(40),
                          .pitch = IN(1),
                          .staples = 41,
                          .first_interval = bench->hand->intervals.count - 1,
                          .interval_count = 1};
    *interval = (struct interval){.edge = bench->hand->edges.count - 1,
                                  .to = IN(40),
                                  .class = CLASS_OPENING,
                                  .join = join,
                                  .pass = pass,
                                  .staples = 41};
}

/* ---- looking things up ---- */

size_t work_at(const struct work_bench *bench, const char *name)
{
    const struct step *step = plan_step(bench->plan, name);

    if (!step)
        fail_msg("there is no step %s", name);
    return (size_t)(step - bench->plan->steps.at);
}

bool work_has(const struct work_bench *bench, const char *name)
{
    return plan_step(bench->plan, name) != NULL;
}

const struct step *work_step(const struct work_bench *bench, const char *name)
{
    return &bench->plan->steps.at[work_at(bench, name)];
}

size_t work_findings(const struct work_bench *bench, int kind)
{
    size_t count = 0;

    for (size_t i = 0; i < bench->plan->findings.count; i++)
        count += bench->plan->findings.at[i].kind == kind;
    return count;
}

/* ---- the checker ---- */

static bool any(const struct plan *plan, const struct step *before, const struct step *after)
{
    (void)plan;
    return before != after;
}

static bool same_join(const struct plan *plan, const struct step *before, const struct step *after)
{
    (void)plan;
    return before->join && before->join == after->join;
}

static bool same_layer(const struct plan *plan, const struct step *before, const struct step *after)
{
    (void)plan;
    return before->layer && before->layer == after->layer;
}

static bool step_is_at(const struct plan *plan, const struct step *step, int64_t box)
{
    const struct join *join = MODEL_FIND(plan->facts, join, step->join);

    return join && !step->layer ? join->box_a == box || join->box_b == box : step->box == box;
}

static bool same_box(const struct plan *plan, const struct step *before, const struct step *after)
{
    for (size_t i = 0; i < plan->facts->boxes.count; i++)
        if (step_is_at(plan, before, plan->facts->boxes.at[i].key) &&
            step_is_at(plan, after, plan->facts->boxes.at[i].key))
            return true;
    return false;
}

/* Both on one face of one box, the second farther out. */
static bool on_top(const struct plan *plan, const struct step *before, const struct step *after)
{
    const struct layer *under = MODEL_FIND(plan->facts, layer, before->layer);
    const struct layer *over = MODEL_FIND(plan->facts, layer, after->layer);

    return under && over && under->box && under->box == over->box && under->side == over->side &&
           under->rank < over->rank;
}

static bool constrained(const struct plan *plan, enum constraint_kind kind, int64_t join,
                        int64_t item)
{
    for (size_t i = 0; i < plan->constraints.count; i++) {
        const struct constraint *constraint = &plan->constraints.at[i];

        if (constraint->kind == kind && constraint->join == join && constraint->item == item)
            return true;
    }
    return false;
}

static bool closes_the_way(const struct plan *plan, const struct step *before,
                           const struct step *after)
{
    return constrained(plan, JOIN_BEFORE_LAYER, before->join, after->layer);
}

static bool trapped(const struct plan *plan, const struct step *before, const struct step *after)
{
    return constrained(plan, LAYER_BEFORE_JOIN, after->join, before->layer);
}

/* A panel on the side that the nuts of a bolted join go in by. */
static bool waits_for_nuts(const struct plan *plan, int64_t facing)
{
    const struct facing *panel = MODEL_FIND(plan->facts, facing, facing);

    for (size_t i = 0; panel && !panel->loose && i < plan->bolts.count; i++)
        if (plan->bolts.at[i].nut_box == panel->box && plan->bolts.at[i].nut_shut == panel->side)
            return true;
    return false;
}

static bool panel_on_time(const struct plan *plan, const struct step *before,
                          const struct step *after)
{
    for (size_t i = 0; i < plan->constraints.count; i++)
        if (plan->constraints.at[i].kind == JOIN_BEFORE_FACING &&
            plan->constraints.at[i].item == before->facing)
            return false;
    return !waits_for_nuts(plan, before->facing) && same_box(plan, before, after);
}

static bool in_room(const struct plan *plan, const struct step *before, const struct step *after)
{
    (void)plan;
    (void)before;
    return after->place == PLACE_SITE && strcmp(after->name, "move") != 0;
}

/* Common practice, no source. */
const struct physical physicals[] = {
    {"uncut wood is framed", "cut", "frame", any},
    {"parts are framed without labels", "label", "frame", any},
    {"a panel hangs in the air", "frame", "panel", same_box},
    {"a box is measured before it is framed", "frame", "record", same_box},
    {"a box is measured before its panels", "panel", "record", panel_on_time},
    {"cloth is cut for a box that is not measured", "record", "shear", any},
    {"half a pair is fitted dry", "frame", "dry", same_box},
    {"holes are drilled before the fit", "dry", "drill", same_join},
    {"holes are mapped before they are drilled", "drill", "map", same_join},
    {"nuts are set before their holes are drilled", "drill", "nuts", same_join},
    {"foam hides a place to drill", "drill", "pad", same_box},
    {"batting hides a place to drill", "drill", "batting", same_box},
    {"a cover hides a place to drill", "drill", "cover", same_box},
    {"foam hides holes without a map", "map", "pad", same_box},
    {"a cover hides holes without a map", "map", "cover", same_box},
    {"cleats are screwed on through foam", "cleat", "pad", same_box},
    {"a panel shuts the nuts out", "insert", "panel", same_box},
    {"batting lies under its foam", "pad", "batting", on_top},
    {"a cover lies under its foam", "pad", "cover", on_top},
    {"a cover lies under its batting", "batting", "cover", on_top},
    {"cloth is stapled before it is laid", "cover", "staple", same_layer},
    {"a cover is sewn after it is stapled", "sew", "staple", same_layer},
    {"uncut cloth is laid", "inspect", "cover", any},
    {"screws are driven without boxes", "offer", "drive", same_join},
    {"screws are driven before the holes are found", "find", "drive", same_join},
    {"a join is driven that was never drilled", "drill", "drive", same_join},
    {"a flap is closed over loose screws", "drive", "flap", same_join},
    {"a closed back stops the driver", "drive", "back", closes_the_way},
    {"a dust cover stops the driver", "drive", "dust", closes_the_way},
    {"an edge is stapled inside a joint", "staple", "offer", trapped},
    {"legs stand in the way of the dust cover", "dust", "leg", same_box},
    {"work in the room begins before the move", "move", "", in_room},
    {"the piece is checked before it is done", "", "account", any},
};

const size_t physical_count = sizeof physicals / sizeof *physicals;

static bool named(const struct step *step, const char *word)
{
    size_t length = strlen(word);

    return length == 0 || (strncmp(step->name, word, length) == 0 &&
                           (step->name[length] == ':' || step->name[length] == '\0'));
}

bool physical_binds(const struct physical *row, const struct plan *plan, size_t before,
                    size_t after)
{
    const struct step *first = &plan->steps.at[before];
    const struct step *second = &plan->steps.at[after];

    return before != after && named(first, row->before) && named(second, row->after) &&
           row->together(plan, first, second);
}

size_t *places_as_planned(const struct plan *plan)
{
    size_t *place = calloc(plan->steps.count + 1, sizeof *place);

    assert_non_null(place);
    for (size_t i = 0; i < plan->steps.count; i++)
        place[i] = i;
    return place;
}

bool has_no_order(const struct plan *plan)
{
    for (size_t i = 0; i < plan->findings.count; i++)
        if (plan->findings.at[i].kind == FINDING_ORDER_CIRCLE)
            return true;
    return false;
}

const char *order_breaks(const struct plan *plan, const size_t *place)
{
    for (size_t row = 0; row < physical_count; row++)
        for (size_t i = 0; i < plan->steps.count; i++)
            for (size_t j = 0; j < plan->steps.count; j++)
                if (place[i] > place[j] && physical_binds(&physicals[row], plan, i, j))
                    return physicals[row].what;
    return NULL;
}
