/*
 * The mirror image of a box as an edit. The box is copied with all that hangs on it; the copies
 * come in the order of what they were copied from, so that each finds its original again, whose
 * image it then becomes. Joins hang on two boxes and are not copied with one: each gets its image
 * by itself.
 */
#include "desk/internal.h"

#include "plan/geometry.h"
#include "plan/mirror.h"

struct mirroring {
    const struct plan *plan; /* of what the draft was made from */
    struct model *draft;
    const struct box *box; /* of the plan's facts */
    int64_t image;
};

/* ---- what hangs on the box ---- */

/* The index of the next item of a kind on a box, from `index` on; the count when there is none. */
static size_t next_on_box(const struct model *model, enum entity_kind kind, int64_t box,
                          size_t index)
{
    while (index < model_count(model, kind) &&
           mirror_box_of(model, kind, model_at_const(model, kind, index)) != box)
        index++;
    return index;
}

static void mirror_kind(const struct mirroring *mirroring, enum entity_kind kind)
{
    const struct model *facts = mirroring->plan->facts;
    size_t from = next_on_box(facts, kind, mirroring->box->key, 0);
    size_t to = next_on_box(mirroring->draft, kind, mirroring->image, 0);

    while (from < model_count(facts, kind) && to < model_count(mirroring->draft, kind)) {
        mirror_item(mirroring->plan, mirroring->box, kind, model_at_const(facts, kind, from),
                    model_at(mirroring->draft, kind, to));
        from = next_on_box(facts, kind, mirroring->box->key, from + 1);
        to = next_on_box(mirroring->draft, kind, mirroring->image, to + 1);
    }
}

/* A layer that lands on a box with a twin lands on the twin. */
static void mirror_landings(const struct mirroring *mirroring)
{
    for (size_t i = 0; i < mirroring->draft->layers.count; i++) {
        struct layer *layer = &mirroring->draft->layers.at[i];
        int64_t twin = layer->land_box && layer->box == mirroring->image
                           ? mirror_twin(mirroring->plan->facts, layer->land_box)
                           : 0;

        if (twin)
            layer->land_box = twin;
    }
}

/* ---- joins ---- */

/* Points by hand lie on the first face: that of the box itself, or of the other one. */
static void mirror_points(const struct mirroring *mirroring, const struct join *join, int axis,
                          int64_t image)
{
    const struct model *facts = mirroring->plan->facts;
    struct vector size = box_size(MODEL_FIND(facts, box, join->box_a));
    int turned =
        join->box_a == mirroring->box->key || mirror_twin(facts, join->box_a) ? AXIS_X : axis;

    for (size_t i = 0; i < facts->points.count; i++) {
        const struct point *point = &facts->points.at[i];

        if (point->join != join->key)
            continue;
        struct point *copy = MODEL_ADD(mirroring->draft, point);
        int64_t key = copy->key;
        *copy = *point;
        copy->key = key;
        copy->join = image;
        if (side_u_axis(join->side_a) == turned)
            copy->u = vector_along(size, turned) - point->u;
        if (side_v_axis(join->side_a) == turned)
            copy->v = vector_along(size, turned) - point->v;
    }
}

static void point_openings(const struct mirroring *mirroring, int64_t join, int64_t image)
{
    struct model *draft = mirroring->draft;

    for (size_t i = 0; i < draft->openings.count; i++) {
        struct opening *opening = &draft->openings.at[i];

        if (opening->join == join &&
            mirror_box_of(draft, ENTITY_opening, opening) == mirroring->image)
            opening->join = image;
    }
}

static void mirror_one_join(const struct mirroring *mirroring, const struct join *join)
{
    int axis = mirror_axis(mirroring->plan, join, mirroring->box->key);
    struct join image = *join;
    struct join *added;

    if (!mirror_join(mirroring->plan->facts, join, mirroring->box->key, mirroring->image, axis,
                     &image))
        return;
    image.name = model_free_name(mirroring->draft, ENTITY_join, join->name);
    added = MODEL_ADD(mirroring->draft, join);
    image.key = added->key;
    *added = image;
    mirror_points(mirroring, join, axis, image.key);
    point_openings(mirroring, join->key, image.key);
}

static void mirror_joins(const struct mirroring *mirroring)
{
    const struct model *facts = mirroring->plan->facts;
    int64_t box = mirroring->box->key;

    for (size_t i = 0; i < facts->joins.count; i++) {
        const struct join *join = &facts->joins.at[i];

        if (join->box_a == box || (join->target == TARGET_BOX && join->box_b == box))
            mirror_one_join(mirroring, join);
    }
}

/* ---- the edit ---- */

struct mirror_edit {
    const struct plan *plan;
    int64_t box;
    const char *name;
};

static enum fault name_image(struct model *draft, struct box *image, const char *name,
                             struct fault_note *note)
{
    return name ? field_read(field_named(entity_of(ENTITY_box), "name"), draft, image, name, note)
                : FAULT_NONE;
}

static enum fault change_mirror(struct model *draft, void *context, struct fault_note *note)
{
    const struct mirror_edit *edit = context;
    struct mirroring mirroring = {edit->plan, draft, MODEL_FIND(edit->plan->facts, box, edit->box),
                                  0};
    struct box *image;
    enum fault fault;

    if (!mirroring.box)
        return fault_say(note, FAULT_UNKNOWN, "there is no box %lld", (long long)edit->box);
    if (mirroring.box->outline == OUTLINE_SLOPE)
        return fault_say(note, FAULT_REFUSED,
                         "a slope falls one way only: give the outline by points first");
    mirroring.image = model_duplicate(draft, ENTITY_box, edit->box);
    for (const enum entity_kind *kind = mirror_kinds; *kind != ENTITY_none; kind++)
        mirror_kind(&mirroring, *kind);
    mirror_landings(&mirroring);
    mirror_joins(&mirroring);
    image = model_find(draft, ENTITY_box, mirroring.image);
    mirror_box(image);
    image->mirror_of = edit->box;
    fault = name_image(draft, image, edit->name, note);
    return fault;
}

enum fault desk_mirror(struct desk *desk, int64_t box, const char *name, struct fault_note *note)
{
    struct mirror_edit edit = {desk_plan(desk), box, name};
    char item[MODEL_NAME_TEXT];
    char label[STORE_LABEL];

    desk_label(label, "mirror image of %s",
               model_item_name(item, desk_model(desk), ENTITY_box, box));
    return desk_edit(desk, label, change_mirror, &edit, note);
}
