/* Looking after the workshop file: copies, its health, and what is left of one that is damaged. */
#include "desk/internal.h"

#include "base/deliver.h"
#include "exchange/exchange.h"

#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

bool desk_moved(const struct desk *desk)
{
    return store_moved(desk->store);
}

enum fault desk_backup(struct desk *desk, const char *path, bool replace, struct fault_note *note)
{
    return store_backup(desk->store, path, replace, note);
}

/* ---- health ---- */

/* A build in an arena of its own: one at a time is in memory. */
static enum fault look_at_build(struct desk *desk, const struct store_build *build,
                                struct fault_note *note)
{
    struct arena arena;
    struct model model;
    enum fault fault;

    arena_init(&arena);
    fault = store_peek(desk->store, build->key, &model, &arena, note);
    if (!fault && desk_check_first(&model, note)) {
        fault = FAULT_DAMAGED;
        if (note)
            note->code = fault;
    }
    arena_release(&arena);
    if (fault)
        fault_at(note, "%s", build->name);
    return fault;
}

enum fault desk_look_through(struct desk *desk, struct desk_health *ret_health,
                             struct fault_note *note)
{
    const struct store_build *builds;
    struct stat about;
    enum fault fault = store_look_through(desk->store, note);

    *ret_health = (struct desk_health){0};
    if (!fault)
        fault = desk_builds(desk, &builds, &ret_health->builds, note);
    for (size_t i = 0; !fault && i < ret_health->builds; i++)
        fault = look_at_build(desk, &builds[i], note);
    if (!fault && stat(store_path(desk->store), &about) == 0)
        ret_health->bytes = (int64_t)about.st_size;
    return fault;
}

/* ---- rescue ---- */

struct rescue {
    struct store *store;
    const char *folder;
    desk_rescued_fn *tell;
    void *context;
};

/* Reads and writes one file; its note is its own. */
static enum fault rescue_one(const struct rescue *rescue, int64_t build,
                             struct desk_rescued *rescued, struct arena *arena,
                             struct fault_note *note)
{
    char path[PATH_MAX];
    struct model model;
    struct text out;
    enum fault fault = store_rescue(rescue->store, build, &model, arena, &rescued->lost, note);

    if (fault)
        return fault;
    rescued->name = build ? model.build.name : model.workshop.name;
    if (snprintf(path, sizeof path, "%s/%s", rescue->folder, rescued->file) >= PATH_MAX)
        return fault_say(note, FAULT_IO, "this is no name of a folder");
    text_init(&out);
    if (build)
        exchange_build_out(&out, &model);
    else
        exchange_shop_out(&out, &model);
    fault = text_failed(&out) ? fault_say_plain(note, FAULT_MEMORY)
                              : deliver_file(path, text_string(&out), out.length, false, note);
    text_release(&out);
    return fault;
}

/* The workshop (0), or a build; told, whatever came of it. */
static enum fault rescue_file(const struct rescue *rescue, int64_t build, struct fault_note *note)
{
    char file[40] = "workshop.json";
    struct desk_rescued rescued = {.file = file, .name = ""};
    struct fault_note why;
    struct arena arena;
    enum fault fault;

    if (build)
        snprintf(file, sizeof file, "build-%" PRId64 ".json", build);
    arena_init(&arena);
    fault = rescue_one(rescue, build, &rescued, &arena, &why);
    rescued.note = fault ? &why : NULL;
    rescue->tell(rescue->context, &rescued);
    arena_release(&arena);
    if (fault && note)
        *note = why;
    return fault;
}

static enum fault rescue_all(const struct rescue *rescue, struct fault_note *note)
{
    struct fault_note later;
    struct arena arena;
    int64_t *keys = NULL;
    size_t count = 0;
    enum fault first = rescue_file(rescue, 0, note), fault;

    arena_init(&arena);
    fault = store_rescue_builds(rescue->store, &arena, &keys, &count, first ? &later : note);
    first = first ? first : fault;
    for (size_t i = 0; i < count; i++) {
        fault = rescue_file(rescue, keys[i], first ? &later : note);
        first = first ? first : fault;
    }
    arena_release(&arena);
    return first;
}

enum fault desk_rescue(const char *path, const char *folder, desk_rescued_fn *tell, void *context,
                       struct fault_note *note)
{
    struct rescue rescue = {.folder = folder, .tell = tell, .context = context};
    enum fault fault = store_open_damaged(&rescue.store, path, note);

    if (fault)
        return fault;
    if (mkdir(folder, 0700) != 0 && errno != EEXIST)
        fault = fault_say(note, FAULT_IO, "\"%.150s\" cannot be made: %s", folder, strerror(errno));
    if (!fault)
        fault = rescue_all(&rescue, note);
    store_close(rescue.store);
    return fault;
}
