/*
 * Layouts that are cut together, as facts: each of the builds keeps them, so that none of them can
 * be taken out of the trip unnoticed.
 */
#include "desk/trip.h"

#include "desk/internal.h"

struct taking {
    struct desk *desk;
    const struct trip *trip;
    bool back;
    size_t kept;
    LIST_OF(struct store_change) changes;
    struct arena arena;
};

static bool cuts_for(const struct trip_cut *cut, size_t build)
{
    for (size_t i = 0; i < cut->users.count; i++) {
        if (cut->users.at[i].build == build)
            return true;
    }
    return false;
}

static enum fault put_layouts(struct taking *taking, size_t build, struct model *after,
                              struct fault_note *note)
{
    enum fault fault = FAULT_NONE;
    for (size_t i = 0; i < taking->trip->cuts.count && !fault; i++) {
        const struct trip_cut *cut = &taking->trip->cuts.at[i];
        char name[POOL_NAME];
        if (!cuts_for(cut, build))
            continue;
        pool_name(&cut->job, name);
        fault = desk_put_layout(after, name, &cut->job.layout, note);
        taking->kept++;
    }
    return fault;
}

static enum fault change_build(struct taking *taking, size_t build, struct fault_note *note)
{
    int64_t key = taking->trip->builds.at[build].model->build.key;
    struct model *before = ARENA_NEW(&taking->arena, struct model);
    struct model *after = ARENA_NEW(&taking->arena, struct model);
    size_t kept = taking->kept;
    enum fault fault = store_peek(taking->desk->store, key, before, &taking->arena, note);
    if (fault)
        return fault;
    model_copy(after, before, &taking->arena);
    size_t dropped = desk_drop_layouts(after, true);
    if (!taking->back)
        fault = put_layouts(taking, build, after, note);
    if (!fault && (dropped > 0 || taking->kept > kept))
        *LIST_ADD(&taking->arena, &taking->changes) = (struct store_change){before, after};
    return fault;
}

static enum fault change_builds(void *context, struct fault_note *note)
{
    struct taking *taking = context;
    enum fault fault = FAULT_NONE;
    for (size_t i = 0; i < taking->trip->builds.count && !fault; i++)
        fault = change_build(taking, i, note);
    return fault;
}

static enum fault carry_out(struct taking *taking, const char *label, const char *refusal,
                            struct fault_note *note)
{
    struct desk *desk = taking->desk;
    arena_init(&taking->arena);
    enum fault fault = desk_guard(&taking->arena, change_builds, taking, note);
    if (!fault && taking->changes.count == 0)
        fault = fault_say(note, FAULT_REFUSED, "%s", refusal);
    if (!fault)
        fault = store_save_together(desk->store, taking->changes.at, taking->changes.count, label,
                                    note);
    arena_release(&taking->arena);
    return fault ? fault : desk_take_up(desk, desk_model(desk)->build.key, note);
}

enum fault desk_trip_take(struct desk *desk, const struct desk_trip *trip, struct fault_note *note)
{
    struct taking taking = {.desk = desk, .trip = desk_trip_of(trip)};
    if (taking.trip->cuts.count == 0)
        return fault_say(note, FAULT_REFUSED, "nothing is cheaper cut together");
    return carry_out(&taking, "take the layouts cut together", "nothing is cut together", note);
}

enum fault desk_trip_leave(struct desk *desk, const struct desk_trip *trip, struct fault_note *note)
{
    struct taking taking = {.desk = desk, .trip = desk_trip_of(trip), .back = true};
    return carry_out(&taking, "give the layouts cut together back", "no layout was taken together",
                     note);
}
