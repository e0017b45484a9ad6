/*
 * A box is put beside another by a join: the place of the join's second box on a face of the first
 * says it all. Where the two are joined already, in whichever order, that join is moved.
 */
#include "desk/internal.h"

#include "plan/geometry.h"

static struct join *join_between(struct model *draft, int64_t a, int64_t b)
{
    for (size_t i = 0; i < draft->joins.count; i++) {
        struct join *join = &draft->joins.at[i];
        if (join->target == TARGET_BOX &&
            ((join->box_a == a && join->box_b == b) || (join->box_a == b && join->box_b == a)))
            return join;
    }
    return NULL;
}

/* From where the other box begins to where the one that is put begins, along an axis. */
static int64_t offset_along(const struct box *other, const struct box *box, int axis,
                            enum desk_flush flush)
{
    int64_t room = vector_along(box_size(other), axis) - vector_along(box_size(box), axis);
    return flush == FLUSH_BEGIN ? 0 : flush == FLUSH_MIDDLE ? room / 2 : room;
}

static enum fault name_join(struct model *draft, struct join *join, struct fault_note *note)
{
    const char *name = "";
    for (int i = 1; !*name || model_key_named(draft, ENTITY_join, name); i++)
        name = arena_format(draft->arena, "J%d", i);
    return field_read(field_named(entity_of(ENTITY_join), "name"), draft, join, name, note);
}

/* The offsets are those of the second box on the first one's face: turned round where the box that
 * is put is the first. */
static void set_join(struct join *join, const struct desk_beside *beside, int64_t u, int64_t v)
{
    bool first = join->box_a == beside->box;
    join->side_a = first ? side_opposite(beside->side) : beside->side;
    join->side_b = side_opposite(join->side_a);
    join->offset_u = first ? -u : u;
    join->offset_v = first ? -v : v;
}

/* A cushion lies where it is put: there is no wood in it for a screw. */
static bool is_cushion(const struct box *box)
{
    return box->frame == FRAME_CUSHION;
}

enum fault desk_beside_change(struct model *draft, void *context, struct fault_note *note)
{
    const struct desk_beside *beside = context;
    const struct box *box = MODEL_FIND(draft, box, beside->box);
    const struct box *other = MODEL_FIND(draft, box, beside->other);
    enum fault fault = FAULT_NONE;
    if (!box || !other || box == other)
        return fault_say(note, FAULT_UNKNOWN, "it takes another box to be beside");
    int64_t u = offset_along(other, box, side_u_axis(beside->side), beside->along_u);
    int64_t v = offset_along(other, box, side_v_axis(beside->side), beside->along_v);
    bool rests = is_cushion(box) || is_cushion(other);
    struct join *join = join_between(draft, beside->box, beside->other);
    if (!join) {
        join = MODEL_ADD(draft, join);
        join->box_a = beside->other;
        join->box_b = beside->box;
        join->fastener = rests ? FASTENER_REST : FASTENER_SCREW;
        fault = name_join(draft, join, note);
    }
    if (!fault)
        set_join(join, beside, u, v);
    return fault;
}

enum fault desk_put_beside(struct desk *desk, const struct desk_beside *beside,
                           struct fault_note *note)
{
    char label[STORE_LABEL];
    char name[MODEL_NAME_TEXT];
    struct desk_beside copy = *beside;
    desk_label(label, "place of box %s",
               model_item_name(name, &desk->state->model, ENTITY_box, beside->box));
    return desk_edit(desk, label, desk_beside_change, &copy, note);
}
