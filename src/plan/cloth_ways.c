/*
 * A way is first put together as edits, then tried: the plan with them taken says all figures. The
 * plan that it is held against is made in the same manner, without edits.
 *
 * 1  A way that is not barred can be taken, and stops nothing that was not stopped before.
 * 2  No two ways of one cloth come to the same: figures or the place of some seam differ.
 * 3  The last one of a cloth may be several of the others together: the cheapest, and one after the
 *    other what makes that cheaper still. It costs less than each of them alone.
 */
#include "plan/cloth_ways.h"

#include "base/text.h"
#include "plan/findings.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

struct looking {
    const struct plan *plan; /* as it stands */
    struct arena *arena;
    const struct plan *base; /* the same with quick layouts */
    LIST_OF(struct cloth_way) ways;
    LIST_OF(struct cure_edit) edits; /* of the way that is being put together */
    enum fault fault;
};

/* ---- what a plan comes to ---- */

static bool is_of(const struct model *model, int64_t layer, int64_t stock)
{
    const struct layer *found = MODEL_FIND(model, layer, layer);

    return found && found->stock == stock;
}

static void weigh(const struct plan *plan, struct cloth_way *way)
{
    way->length = 0;
    way->seams = 0;
    way->seam_length = 0;
    for (size_t i = 0; i < plan->purchases.count; i++)
        if (plan->purchases.at[i].stock == way->bought)
            way->length += plan->purchases.at[i].length;
    for (size_t i = 0; i < plan->seams.count; i++) {
        const struct seam *seam = &plan->seams.at[i];

        if (!seam->joins_widths || !is_of(plan->facts, seam->layer, way->bought))
            continue;
        way->seams += seam->count;
        way->seam_length += seam->count * seam->length;
    }
    way->minutes = plan->tally.minutes;
    way->cost = plan->tally.cost;
}

static bool same_line(const char *a, const char *b)
{
    return a && b ? strcmp(a, b) == 0 : a == b;
}

static bool same_places(const struct cover *a, const struct cover *b)
{
    if (a->seams != b->seams || a->seam != b->seam || !a->alone != !b->alone)
        return false;
    return !a->alone || memcmp(a->alone, b->alone, (size_t)a->seams * sizeof *a->alone) == 0;
}

/* Do the seams of all covers stand at the same places? Both plans have the same layers. */
static bool same_seams(const struct plan *a, const struct plan *b)
{
    if (a->covers.count != b->covers.count)
        return false;
    for (size_t i = 0; i < a->covers.count; i++) {
        const struct cover *one = &a->covers.at[i];
        const struct cover *other = &b->covers.at[i];

        if (!same_places(one, other) || one->railroaded != other->railroaded ||
            !same_line(one->hidden_by, other->hidden_by))
            return false;
    }
    return true;
}

#define WHY_TEXT 400

/* The first stop of a plan that the other has not, in words; "" without any. */
static void say_new_stop(const struct plan *tried, const struct plan *base, char why[WHY_TEXT])
{
    struct text sentence;

    text_init(&sentence);
    for (size_t i = 0; i < tried->findings.count && sentence.length == 0; i++) {
        const struct finding *finding = &tried->findings.at[i];

        if (plan_finding_severity(finding) == SEVERITY_STOP &&
            findings_like(tried, finding) > findings_like(base, finding))
            plan_finding_text(tried, finding, &sentence);
    }
    snprintf(why, WHY_TEXT, "%s", text_string(&sentence));
    text_release(&sentence);
}

/* ---- putting one together ---- */

static void edit(struct looking *looking, int64_t layer, const char *field, const char *value)
{
    *LIST_ADD(looking->arena, &looking->edits) =
        (struct cure_edit){ENTITY_layer, layer, field, value};
}

/* Takes the edits that were put together, which are gone then. */
static struct cloth_way make_way(struct looking *looking, int64_t stock, int64_t bought,
                                 const char *text)
{
    struct cloth_way way = {.stock = stock,
                            .bought = bought,
                            .cure = {text, looking->edits.at, looking->edits.count, false}};

    looking->edits.at = NULL;
    looking->edits.count = looking->edits.room = 0;
    return way;
}

static struct cloth_way *add_way(struct looking *looking, const struct cloth_way *way)
{
    struct cloth_way *added = LIST_ADD(looking->arena, &looking->ways);

    *added = *way;
    return added;
}

static void bar(struct looking *looking, int64_t stock, const char *text, const char *why)
{
    struct cloth_way way;

    looking->edits.count = 0;
    way = make_way(looking, stock, stock, text);
    way.barred = why;
    add_way(looking, &way);
}

/* Does one that is listed come to the same, in the same cloth? */
static bool is_listed(const struct looking *looking, const struct cloth_way *way)
{
    for (size_t i = 0; i < looking->ways.count; i++) {
        const struct cloth_way *other = &looking->ways.at[i];

        if (!other->barred && other->bought == way->bought && other->length == way->length &&
            other->seams == way->seams && other->seam_length == way->seam_length &&
            other->minutes == way->minutes && other->cost == way->cost)
            return true;
    }
    return false;
}

/* The plan with its edits taken says its figures, or why it is barred. False where it comes to
 * nothing else. */
static bool try_edits(struct looking *looking, struct cloth_way *way)
{
    struct arena arena;
    const struct plan *tried = NULL;
    char why[WHY_TEXT] = "";
    bool same;
    enum fault fault;

    if (looking->fault || way->cure.edit_count == 0)
        return false;
    arena_init(&arena);
    fault = plan_make_changed(looking->plan, &way->cure, &arena, &tried);
    if (fault == FAULT_MEMORY)
        looking->fault = fault;
    assert(fault || tried);
    same = fault || (way->bought == way->stock && same_seams(tried, looking->base));
    if (!same)
        say_new_stop(tried, looking->base, why);
    if (tried && !*why)
        weigh(tried, way);
    arena_release(&arena);
    if (*why)
        way->barred = arena_text(looking->arena, why);
    return !same && (way->bought == way->stock || !is_listed(looking, way));
}

/* Tries the edits that were put together. Nothing is added where they come to nothing else. */
static void try_way(struct looking *looking, int64_t stock, int64_t bought, const char *text)
{
    struct cloth_way way = make_way(looking, stock, bought, text);

    if (try_edits(looking, &way))
        add_way(looking, &way);
}

/* ---- the ways ---- */

/* Layers whose direction and seams are seen. */
static bool is_cover(const struct layer *layer, int64_t stock)
{
    return layer->stock == stock &&
           (layer->kind == LAYER_COVER || layer->kind == LAYER_OUTSIDE_BACK);
}

/* Lays every cover of a cloth one way; false where they lie so already. */
static bool edit_direction(struct looking *looking, const struct stock *stock, int64_t direction)
{
    const struct model *model = looking->plan->entered;
    size_t before = looking->edits.count;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (is_cover(layer, stock->key) && layer->direction != direction)
            edit(looking, layer->key, "direction", words_direction.at[direction].name);
    }
    return looking->edits.count > before;
}

static void lay_all(struct looking *looking, const struct stock *stock, int64_t direction,
                    const char *text)
{
    assert(looking->edits.count == 0);

    if (!edit_direction(looking, stock, direction))
        return;
    if (direction == DIRECTION_ACROSS && !stock->railroad)
        bar(looking, stock->key, text, "this cloth is not to be railroaded");
    else if (direction == DIRECTION_ACROSS && stock->pile)
        bar(looking, stock->key, text, "its pile or print runs one way, and would lie on its side");
    else
        try_way(looking, stock->key, stock->key, text);
}

static const char *name_of(const struct model *model, const struct layer *layer)
{
    const struct box *box = MODEL_FIND(model, box, layer->box);
    const struct group *group = MODEL_FIND(model, group, layer->group);

    return box ? box->name : group ? group->name : "";
}

static void sew_otherwise(struct looking *looking, const struct layer *layer)
{
    static const char *const texts[SEAMING_COUNT] = {
        [SEAMING_NEAR] = "seams at a line near by",
        [SEAMING_CENTRE] = "a full centre, its seams at no line",
        [SEAMING_LINE] = "seams at the nearest line that hides them",
        [SEAMING_MIDDLE] = "one seam down the middle",
    };
    const struct model *model = looking->plan->entered;

    for (int64_t seaming = 0; seaming < SEAMING_COUNT; seaming++) {
        if (seaming == layer->seaming)
            continue;
        edit(looking, layer->key, "seaming", words_seaming.at[seaming].name);
        try_way(looking, layer->stock, layer->stock,
                arena_format(looking->arena, "%s %s: %s", name_of(model, layer),
                             words_layer.at[layer->kind].name, texts[seaming]));
    }
}

static bool has_seams(const struct plan *plan, int64_t layer)
{
    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].layer == layer)
            return plan->covers.at[i].seams > 0;
    return false;
}

static void edit_stock(struct looking *looking, const struct stock *stock,
                       const struct stock *other)
{
    const struct model *model = looking->plan->entered;
    const char *refer = arena_format(looking->arena, "#%" PRId64, other->key);

    for (size_t i = 0; i < model->layers.count; i++)
        if (model->layers.at[i].stock == stock->key)
            edit(looking, model->layers.at[i].key, "stock", refer);
}

/* Another width, its covers lying as they do or all one way. */
static void take_width(struct looking *looking, const struct stock *stock,
                       const struct stock *other)
{
    edit_stock(looking, stock, other);
    try_way(looking, stock->key, other->key,
            arena_format(looking->arena, "all in %s", other->name));
    edit_stock(looking, stock, other);
    if (edit_direction(looking, stock, DIRECTION_UP))
        try_way(looking, stock->key, other->key,
                arena_format(looking->arena, "all in %s, up the roll", other->name));
    looking->edits.count = 0;
    edit_stock(looking, stock, other);
    if (other->railroad && !other->pile && edit_direction(looking, stock, DIRECTION_ACROSS))
        try_way(looking, stock->key, other->key,
                arena_format(looking->arena, "all in %s, railroaded", other->name));
    looking->edits.count = 0;
}

/* ---- several together ---- */

/* By money, then by what is sewn and bought. */
static bool is_better(const struct cloth_way *a, const struct cloth_way *b)
{
    if (a->cost != b->cost)
        return a->cost < b->cost;
    return a->seams != b->seams ? a->seams < b->seams
                                : a->bought == b->bought && a->length < b->length;
}

/* One seam down the middle is the maker's word alone, and part of nothing that is put together. */
static bool is_by_word(const struct cure *cure)
{
    for (size_t i = 0; i < cure->edit_count; i++)
        if (strcmp(cure->edits[i].field, "seaming") == 0 &&
            strcmp(cure->edits[i].value, words_seaming.at[SEAMING_MIDDLE].name) == 0)
            return true;
    return false;
}

static bool changes_same(const struct cure *a, const struct cure *b)
{
    for (size_t i = 0; i < a->edit_count; i++)
        for (size_t k = 0; k < b->edit_count; k++)
            if (a->edits[i].key == b->edits[k].key &&
                strcmp(a->edits[i].field, b->edits[k].field) == 0)
                return true;
    return false;
}

static void put_edits(struct looking *looking, const struct cure *cure)
{
    for (size_t i = 0; i < cure->edit_count; i++)
        *LIST_ADD(looking->arena, &looking->edits) = cure->edits[i];
}

/* The best of what one more way makes of some that are taken together; false where none is
 * better. */
static bool take_one_more(struct looking *looking, size_t first, size_t count,
                          struct cloth_way *together)
{
    struct cloth_way best = *together;

    for (size_t i = first; i < count; i++) {
        const struct cloth_way *more = &looking->ways.at[i];
        struct cloth_way both;

        if (more->chosen || more->barred || is_by_word(&more->cure) ||
            changes_same(&together->cure, &more->cure))
            continue;
        put_edits(looking, &together->cure);
        put_edits(looking, &more->cure);
        both = make_way(
            looking, together->stock, more->bought != more->stock ? more->bought : together->bought,
            arena_format(looking->arena, "%s; %s", together->cure.text, more->cure.text));
        if (try_edits(looking, &both) && !both.barred && is_better(&both, &best))
            best = both;
    }
    if (!is_better(&best, together))
        return false;
    *together = best;
    return true;
}

#define TOGETHER_MOST 4

/* The best of those listed from `first` on, and others with it as long as each makes it better. */
static void take_together(struct looking *looking, size_t first)
{
    size_t count = looking->ways.count;
    struct cloth_way together = looking->ways.at[first];
    int taken = 1;

    assert(looking->ways.at[first].chosen); /* as it is stands first */
    for (size_t i = first; i < count; i++)
        if (!looking->ways.at[i].barred && !is_by_word(&looking->ways.at[i].cure) &&
            is_better(&looking->ways.at[i], &together))
            together = looking->ways.at[i];
    if (together.chosen)
        return;
    while (taken < TOGETHER_MOST && take_one_more(looking, first, count, &together))
        taken++;
    if (taken == 1)
        return;
    together.cure.text = arena_format(looking->arena, "together: %s", together.cure.text);
    add_way(looking, &together);
}

static void look_at(struct looking *looking, const struct stock *stock)
{
    const struct model *model = looking->plan->entered;
    size_t first = looking->ways.count;
    struct cloth_way now = {
        .stock = stock->key, .bought = stock->key, .cure = {.text = "as it is"}, .chosen = true};

    weigh(looking->base, &now);
    add_way(looking, &now);
    lay_all(looking, stock, DIRECTION_UP, "all up the roll");
    lay_all(looking, stock, DIRECTION_ACROSS, "all railroaded");
    for (size_t i = 0; i < model->layers.count; i++)
        if (is_cover(&model->layers.at[i], stock->key) &&
            has_seams(looking->base, model->layers.at[i].key))
            sew_otherwise(looking, &model->layers.at[i]);
    for (size_t i = 0; *stock->cloth && i < model->stocks.count; i++)
        if (model->stocks.at[i].key != stock->key && model->stocks.at[i].kind == stock->kind &&
            strcmp(model->stocks.at[i].cloth, stock->cloth) == 0)
            take_width(looking, stock, &model->stocks.at[i]);
    take_together(looking, first);
    assert(looking->edits.count == 0);
}

static bool covers_something(const struct model *model, int64_t stock)
{
    for (size_t i = 0; i < model->layers.count; i++)
        if (is_cover(&model->layers.at[i], stock))
            return true;
    return false;
}

static void run_looking(void *context)
{
    struct looking *looking = context;
    const struct model *model = looking->plan->entered;

    for (size_t i = 0; i < model->stocks.count; i++)
        if (model->stocks.at[i].kind == STOCK_CLOTH &&
            covers_something(model, model->stocks.at[i].key))
            look_at(looking, &model->stocks.at[i]);
}

enum fault cloth_ways(const struct plan *plan, struct arena *arena,
                      const struct cloth_way **ret_ways, size_t *ret_count)
{
    struct looking looking = {.plan = plan, .arena = arena};
    struct arena base;

    arena_init(&base);
    looking.fault = plan_make_draft(plan->entered, NULL, &base, &looking.base);
    if (!looking.fault && !arena_try(arena, run_looking, &looking))
        looking.fault = FAULT_MEMORY;
    arena_release(&base);
    if (looking.fault)
        return looking.fault;
    *ret_ways = looking.ways.at;
    *ret_count = looking.ways.count;
    return FAULT_NONE;
}
