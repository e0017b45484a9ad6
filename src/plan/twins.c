/*
 * Mirrored pairs: which box is the left one of two, and whether they are each other's image.
 *
 * 1  The left one of a pair is the one whose middle stands further left in the room; of two that do
 *    not stand as one, or stand behind each other, it is the one that was there first.
 * 2  The image of everything that hangs on the one must hang on the other, and nothing else. Equal
 *    ones are paired first; of what is left two of a kind on the same side differ, and one alone is
 *    missing.
 * 3  Names, notes and what a reference leads to within the pair are each box's own.
 */
#include "plan/pass.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/mirror.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

struct pair {
    struct planning *planning;
    const struct box *first; /* there first */
    const struct box *image;
};

/* An item that ought to be there, or is. */
struct half {
    enum entity_kind kind;
    void *item;
    int64_t of; /* key of the item it is the image of, or its own */
    bool met;
};

struct half_list {
    LIST_OF(struct half) halves;
};

/* ---- left and right ---- */

static bool stands_further_left(const struct pose *a, const struct pose *b)
{
    return a->with == b->with && a->room.low.x + a->room.high.x < b->room.low.x + b->room.high.x;
}

static struct pose *pose_of(const struct planning *planning, int64_t box)
{
    size_t index = model_index(planning->model, ENTITY_box, box);

    assert(index < planning->plan->poses.count);
    return &planning->plan->poses.at[index];
}

static void give_hands(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        const struct box *box = &planning->model->boxes.at[i];
        struct pose *image = pose_of(planning, box->key);
        struct pose *first;

        if (!box->mirror_of || box->mirror_of == box->key)
            continue;
        first = pose_of(planning, box->mirror_of);
        bool image_is_left = stands_further_left(image, first);
        if (first->hand == HAND_NONE) {
            first->hand = image_is_left ? HAND_RIGHT : HAND_LEFT;
            first->twin = box->key;
        }
        assert(first->hand == HAND_LEFT || first->hand == HAND_RIGHT);
        image->hand = first->hand == HAND_LEFT ? HAND_RIGHT : HAND_LEFT;
        image->twin = box->mirror_of;
    }
}

/* ---- telling ---- */

/* As field_read takes it. */
static const char *written(const struct pair *pair, const struct field *field, const void *item)
{
    struct text text;
    const char *kept;

    text_init(&text);
    field_write(field, pair->planning->model, item, &text);
    kept = arena_text(pair->planning->arena, text_failed(&text) ? "" : text_string(&text));
    text_release(&text);
    return kept;
}

static const char *value_text(const struct pair *pair, const struct field *field, const void *item)
{
    const char *kept = written(pair, field, item);

    return *kept ? kept : "not given";
}

/* A field's name with blanks: "stick set". */
static const char *field_text(const struct pair *pair, const struct field *field)
{
    char name[MODEL_NAME_TEXT];

    snprintf(name, sizeof name, "%s", field->name);
    text_blank(name);
    return arena_text(pair->planning->arena, name);
}

static struct finding *tell(const struct pair *pair, enum finding_kind kind, const char *what)
{
    struct finding *finding = finding_add(pair->planning, kind, ENTITY_box, pair->image->key);

    argument_text(finding, 0, pair->first->name);
    argument_text(finding, 1, what);
    return finding;
}

static struct finding *tell_difference(const struct pair *pair, const char *what,
                                       const struct field *field, const void *is,
                                       const void *wanted)
{
    struct finding *finding = tell(pair, FINDING_TWIN_DIFFERS, what);

    argument_text(finding, 2, value_text(pair, field, is));
    argument_text(finding, 3, value_text(pair, field, wanted));
    return finding;
}

static const char *item_text(const struct pair *pair, const struct half *half)
{
    char name[MODEL_NAME_TEXT];

    return arena_text(pair->planning->arena,
                      model_item_name(name, pair->planning->model, half->kind, half->of));
}

/* ---- comparing ---- */

/* Names and notes are each item's own, and so is what it hangs on or refers to within the pair. */
static bool is_compared(const struct field *field)
{
    if (field->type == FIELD_TEXT)
        return false;
    return field->type != FIELD_REF || entity_of(field->target)->in_shop;
}

/* The first field in which two items differ; NULL when none does. */
static const struct field *difference(enum entity_kind kind, const void *a, const void *b)
{
    const struct entity *entity = entity_of(kind);

    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (is_compared(field) && field_whole(field, a) != field_whole(field, b))
            return field;
    }
    return NULL;
}

static bool is_alike(enum entity_kind kind, const void *a, const void *b)
{
    static const char *const marks[] = {"side", "kind", "axis", "edge"};

    for (size_t i = 0; i < sizeof marks / sizeof *marks; i++) {
        const struct field *field = field_named(entity_of(kind), marks[i]);

        if (field && field->type == FIELD_CHOICE && field_whole(field, a) != field_whole(field, b))
            return false;
    }
    return true;
}

static void match(struct half_list *wanted, struct half_list *there,
                  bool (*fits)(const struct half *a, const struct half *b),
                  void (*tell_pair)(const struct pair *pair, const struct half *wanted,
                                    const struct half *is),
                  const struct pair *pair)
{
    for (size_t i = 0; i < wanted->halves.count; i++) {
        struct half *one = &wanted->halves.at[i];

        for (size_t k = 0; !one->met && k < there->halves.count; k++) {
            struct half *other = &there->halves.at[k];

            if (other->met || one->kind != other->kind || !fits(one, other))
                continue;
            one->met = other->met = true;
            if (tell_pair)
                tell_pair(pair, one, other);
        }
    }
}

static bool same_halves(const struct half *a, const struct half *b)
{
    return !difference(a->kind, a->item, b->item);
}

static bool alike_halves(const struct half *a, const struct half *b)
{
    return is_alike(a->kind, a->item, b->item);
}

/* Makes an item what it is wanted to be, in every field that is compared. */
static void offer_likeness(const struct pair *pair, const char *text, enum entity_kind kind,
                           const void *item, const void *wanted, struct finding *finding)
{
    const struct entity *entity = entity_of(kind);
    struct cure_draft cure = cure_begin(pair->planning, text);

    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (is_compared(field) && field_whole(field, item) != field_whole(field, wanted))
            cure_word(&cure, kind, item_key(item), field->name, written(pair, field, wanted));
    }
    cure_offer_on_trial(&cure, finding);
}

static void tell_halves(const struct pair *pair, const struct half *wanted, const struct half *is)
{
    const struct field *field = difference(wanted->kind, is->item, wanted->item);
    struct arena *arena = pair->planning->arena;
    const char *called = item_text(pair, is);
    struct finding *finding =
        tell_difference(pair, arena_format(arena, "%s of %s", field_text(pair, field), called),
                        field, is->item, wanted->item);

    offer_likeness(pair, arena_format(arena, "Make the %s as its twin is", called), is->kind,
                   is->item, wanted->item, finding);
}

/* The line of a new item that is what a mirror image is; nothing for what a new one has anyway, and
 * for what is each item's own. */
static void image_line(const struct pair *pair, struct cure_draft *cure, enum entity_kind kind,
                       const struct field *field, const void *item)
{
    bool own = field->type == FIELD_TEXT ||
               (field->type == FIELD_REF && !entity_of(field->target)->in_shop);

    if (!own && field_whole(field, item) != field->standard)
        cure_word(cure, kind, 0, field->name, written(pair, field, item));
}

/* What hangs on a box itself can be made anew; what hangs on a layer comes with that. */
static void offer_image(const struct pair *pair, const struct half *half, struct finding *finding)
{
    const struct entity *entity = entity_of(half->kind);
    struct cure_draft cure = cure_begin(
        pair->planning, arena_format(pair->planning->arena, "Add the image of the %s to box %s",
                                     item_text(pair, half), pair->image->name));

    if (half->kind == ENTITY_join || !field_named(entity, "box"))
        return;
    cure_refer(&cure, half->kind, 0, "box", pair->image->key);
    for (size_t i = 0; i < entity->field_count; i++)
        image_line(pair, &cure, half->kind, &entity->fields[i], half->item);
    cure_offer_on_trial(&cure, finding);
}

static void offer_removal(const struct pair *pair, const struct half *half, struct finding *finding)
{
    struct cure_draft cure =
        cure_begin(pair->planning,
                   arena_format(pair->planning->arena, "Take away the %s", item_text(pair, half)));

    cure_remove(&cure, half->kind, half->of);
    cure_offer_on_trial(&cure, finding);
}

static void tell_lacking(const struct pair *pair, const struct half_list *wanted)
{
    for (size_t i = 0; i < wanted->halves.count; i++) {
        const struct half *half = &wanted->halves.at[i];
        struct finding *finding;

        if (half->met)
            continue;
        finding = tell(pair, FINDING_TWIN_LACKS, item_text(pair, half));
        offer_image(pair, half, finding);
        offer_removal(pair, half, finding);
    }
}

static void tell_beyond(const struct pair *pair, const struct half_list *there)
{
    for (size_t i = 0; i < there->halves.count; i++) {
        const struct half *half = &there->halves.at[i];

        if (!half->met)
            offer_removal(pair, half, tell(pair, FINDING_TWIN_BEYOND, item_text(pair, half)));
    }
}

static void compare(const struct pair *pair, struct half_list *wanted, struct half_list *there)
{
    match(wanted, there, same_halves, NULL, pair);
    match(wanted, there, alike_halves, tell_halves, pair);
    tell_lacking(pair, wanted);
    tell_beyond(pair, there);
}

/* ---- what is compared ---- */

static void *copy_of(const struct pair *pair, enum entity_kind kind, const void *item)
{
    size_t size = entity_of(kind)->size;
    void *copy = arena_alloc(pair->planning->arena, size);

    memcpy(copy, item, size);
    return copy;
}

static void add_half(const struct pair *pair, struct half_list *list, enum entity_kind kind,
                     void *item)
{
    *LIST_ADD(pair->planning->arena, &list->halves) =
        (struct half){kind, item, item_key(item), false};
}

/* "To the end of the face" and the same width in figures are one thing. */
static void spell_out(const struct box *box, enum entity_kind kind, void *item)
{
    const struct field *width = field_named(entity_of(kind), "width");
    const struct field *u = field_named(entity_of(kind), "u");
    const struct field *side = field_named(entity_of(kind), "side");
    struct area face;

    if (!width || !u || !side || field_whole(width, item) != 0)
        return;
    face = face_area(box, field_whole(side, item));
    field_set_whole(width, item, face.u1 - field_whole(u, item));
}

static void collect(const struct pair *pair, enum entity_kind kind, struct half_list *wanted,
                    struct half_list *there)
{
    const struct planning *planning = pair->planning;

    for (size_t i = 0; i < model_count(planning->model, kind); i++) {
        const void *item = model_at_const(planning->model, kind, i);
        int64_t box = mirror_box_of(planning->model, kind, item);
        void *copy;

        if (box != pair->first->key && box != pair->image->key)
            continue;
        copy = copy_of(pair, kind, item);
        if (box == pair->first->key)
            mirror_item(planning->plan, pair->first, kind, item, copy);
        spell_out(pair->first, kind, copy);
        add_half(pair, box == pair->first->key ? wanted : there, kind, copy);
    }
}

/* ---- joins ---- */

static bool has_end(const struct join *join, int64_t box)
{
    return join->box_a == box || (join->target == TARGET_BOX && join->box_b == box);
}

/* The image of a join of the first box, turned round the axis that some join of the image agrees
 * with; round the room's x when none does. */
static bool image_of_join(const struct pair *pair, const struct join *join, struct join *image)
{
    const struct model *model = pair->planning->model;

    for (int axis = AXIS_X; axis <= AXIS_Y; axis++) {
        *image = *join;
        if (!mirror_join(model, join, pair->first->key, pair->image->key, axis, image))
            return false;
        for (size_t i = 0; i < model->joins.count; i++)
            if (has_end(&model->joins.at[i], pair->image->key) &&
                !difference(ENTITY_join, image, &model->joins.at[i]))
                return true;
    }
    *image = *join;
    return mirror_join(model, join, pair->first->key, pair->image->key,
                       mirror_axis(pair->planning->plan, join, pair->first->key), image);
}

static void collect_joins(const struct pair *pair, struct half_list *wanted,
                          struct half_list *there)
{
    const struct model *model = pair->planning->model;

    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];
        bool of_first = has_end(join, pair->first->key);
        bool of_image = has_end(join, pair->image->key);
        struct join image;

        if (of_first && of_image)
            continue;
        if (of_first && image_of_join(pair, join, &image))
            add_half(pair, wanted, ENTITY_join, copy_of(pair, ENTITY_join, &image));
        if (of_image)
            add_half(pair, there, ENTITY_join, copy_of(pair, ENTITY_join, join));
    }
}

/* ---- a pair ---- */

static void tell_box(const struct pair *pair, const struct field *field, const struct box *wanted)
{
    struct arena *arena = pair->planning->arena;
    struct box wanted_first = *pair->image;
    struct finding *finding =
        tell_difference(pair, field_text(pair, field), field, pair->image, wanted);

    mirror_box(&wanted_first);
    offer_likeness(
        pair, arena_format(arena, "Make box %s as %s is", pair->image->name, pair->first->name),
        ENTITY_box, pair->image, wanted, finding);
    offer_likeness(
        pair, arena_format(arena, "Make box %s as %s is", pair->first->name, pair->image->name),
        ENTITY_box, pair->first, &wanted_first, finding);
}

static void compare_boxes(const struct pair *pair)
{
    const struct entity *entity = entity_of(ENTITY_box);
    struct box wanted = *pair->first;

    mirror_box(&wanted);
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (is_compared(field) && field_whole(field, &wanted) != field_whole(field, pair->image))
            tell_box(pair, field, &wanted);
    }
}

static void compare_pair(const struct pair *pair)
{
    compare_boxes(pair);
    for (const enum entity_kind *kind = mirror_kinds; *kind != ENTITY_none; kind++) {
        struct half_list wanted = {0};
        struct half_list there = {0};

        collect(pair, *kind, &wanted, &there);
        compare(pair, &wanted, &there);
    }
    struct half_list wanted = {0};
    struct half_list there = {0};
    collect_joins(pair, &wanted, &there);
    compare(pair, &wanted, &there);
}

void pass_twins(struct planning *planning)
{
    give_hands(planning);
    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        const struct box *box = &planning->model->boxes.at[i];
        struct pair pair = {planning, MODEL_FIND(planning->model, box, box->mirror_of), box};

        if (pair.first && pair.first != box)
            compare_pair(&pair);
    }
}
