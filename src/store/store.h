/*
 * The store: one workshop and all its builds in one SQLite file that people copy.
 *
 * The file is in rollback-journal mode, so that a plain copy is whole. Facts are rows; every write
 * is one transaction that is there wholly or not at all, whatever fails, and one entry of an undo
 * history that outlives the program. A file that is damaged, or not ours, is never written to; one
 * made by a newer version is read as far as possible and not written to either.
 *
 * Faults that any function here may give, with the reason in the note: LOCKED (another program
 * holds the file for longer than two seconds), IO, FULL, MEMORY, DAMAGED. After any fault the file
 * is as it was before the call. One store is used by one thread at a time. A process opens a file
 * once: POSIX locks do not tell two users within one process apart.
 */
#ifndef STORE_STORE_H
#define STORE_STORE_H

#include "base/arena.h"
#include "base/fault.h"
#include "model/model.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct store;

#define STORE_LABEL                                                              \
    80 /* bytes of a label of the history, its NUL included; longer ones are cut \
        */
#define STORE_HISTORY 1000 /* actions that can be undone */

/*
 * Opens the file at `path`, or makes it (mode 0600) with a standard workshop. The folder must be
 * there. Older files are brought up to date, after a backup beside the file ("<path>.before-2").
 *
 * Faults: FOREIGN (empty, text, another program's, tables that are not ours), DAMAGED, LOCKED,
 * REFUSED (a symbolic link: name the file itself), IO (the folder is not there, no permission to
 * read). A newer file gives no fault: see store_read_only.
 *
 * After a fault the file may be there though it was not, or be brought up to date, but is never
 * half so.
 *
 * Files over a megabyte are checked for damage before their first write instead of here
 * (store_check).
 */
enum fault store_open(struct store **ret_store, const char *path, struct fault_note *note);

/* Ends a transaction left open by undoing it. NULL-safe. */
void store_close(struct store *store);

/* Why nothing can be written: NEWER (a newer version made it) or REFUSED (no permission);
 * FAULT_NONE when it can. A function that writes gives the same fault. */
enum fault store_read_only(const struct store *store);

/* The file's name, free of links. It stays the store's. */
const char *store_path(const struct store *store);

/* Looks through the whole file for damage, unless that was done; the first write does it too.
 * Linear in the file: for an idle moment. Fault: DAMAGED; from then on nothing is written. */
enum fault store_check(struct store *store, struct fault_note *note);

/* The same once more and more thoroughly, indexes against tables too. */
enum fault store_look_through(struct store *store, struct fault_note *note);

/*
 * Makes `model` in `arena` (which needs no escape armed) from the workshop and, where `build` is
 * above 0, that build; with 0 the model has none (build.key is 0, build.name empty). What is read
 * is sorted and its choices are words, but ranges and references are model_check's to judge.
 *
 * This is what store_changed and the writers compare with: when another program had written since
 * the load before, models from before are stale. store_peek does the same without becoming that,
 * for a second build beside the open one.
 *
 * Faults: MISSING (no such build), NEWER (a word that this version does not know). On a fault
 * `model` is untouched and the arena may hold some garbage.
 */
enum fault store_load(struct store *store, int64_t build, struct model *model, struct arena *arena,
                      struct fault_note *note);
enum fault store_peek(struct store *store, int64_t build, struct model *model, struct arena *arena,
                      struct fault_note *note);

/*
 * Writes what differs between two models, as one action of the history under `label`; where nothing
 * differs nothing is written. `before` is what was loaded, or last saved. Undone actions can no
 * longer be redone afterwards.
 *
 * Where after->build.key is 0 and its name is not empty, the build is new, and gets a key from the
 * workshop's next_key: both are set in `after`, also as they will be when the action is redone.
 * Only then may before->build be another one; it is left alone.
 *
 * Faults: CHANGED (another program wrote since store_load: load again), REFERENCE (something in
 * use is gone; the note names a build that uses it), DUPLICATE (another build has the new
 * name), RANGE (what model_check would refuse). `after` is unchanged by a fault.
 */
enum fault store_save(struct store *store, const struct model *before, struct model *after,
                      const char *label, struct fault_note *note);

/*
 * The same for several builds as one action; none of them is new. At most one of the changes may
 * touch the workshop; it may be one without a build (key 0). The history names no build for it.
 * Faults: as store_save; then nothing is written at all.
 */
struct store_change {
    const struct model *before;
    struct model *after;
};
enum fault store_save_together(struct store *store, const struct store_change *changes,
                               size_t count, const char *label, struct fault_note *note);

/* Deletes a build with all that belongs to it, as one action. MISSING when there is none;
 * otherwise as store_save. */
enum fault store_delete_build(struct store *store, int64_t build, const char *label,
                              struct fault_note *note);

/*
 * Takes back the newest action that is not undone, or does the oldest undone one again, and gives
 * its label and build (0: the workshop alone; the build may be gone now). Models loaded before are
 * stale. Faults: MISSING (there is none), CHANGED (another program wrote since store_load, or one
 * without a history changed what the action had left: nothing is applied).
 */
enum fault store_undo(struct store *store, char label[STORE_LABEL], int64_t *ret_build,
                      struct fault_note *note);
enum fault store_redo(struct store *store, char label[STORE_LABEL], int64_t *ret_build,
                      struct fault_note *note);

/* What store_undo and store_redo would do next. MISSING when there is nothing. */
enum fault store_undo_label(struct store *store, char label[STORE_LABEL], struct fault_note *note);
enum fault store_redo_label(struct store *store, char label[STORE_LABEL], struct fault_note *note);

/* What a plan said of a build when it was last worked out. `digest` is of the facts and the engine:
 * a summary with another digest is out of date. All 0 and "" where there is none. */
struct store_summary {
    uint64_t digest;
    int64_t estimate; /* minor units */
    int64_t steps_done;
    int64_t steps_total;
    const char *next_step;
    const char *missing; /* before the work can go on; "" when nothing is */
};

struct store_build {
    int64_t key;
    const char *name;
    int64_t state; /* enum state_word */
    int64_t units; /* enum units_word */
    const char *due;
    int64_t budget;
    int64_t spend; /* sum, tax included */
    struct store_summary summary;
};

/* All builds in key order, in the arena (which needs no escape armed). */
enum fault store_builds(struct store *store, struct arena *arena, struct store_build **ret_at,
                        size_t *ret_count, struct fault_note *note);

/*
 * Keeps a summary, outside the history. A cache: a store that is read-only or held by another
 * program, a build that is gone, and a summary already there are no faults, and nothing is
 * written; so two programs on one file do not wake each other up for ever.
 */
enum fault store_summary_put(struct store *store, int64_t build,
                             const struct store_summary *summary, struct fault_note *note);

/* Whether another program wrote since store_load (since opening, before the first). About 20 us. A
 * file that cannot be asked counts as changed. */
bool store_changed(struct store *store);

/* Whether another file now stands at the path (a sync tool replaced it by renaming, or it was
 * deleted): nothing can be saved here then, but store_backup still saves a copy. */
bool store_moved(struct store *store);

/*
 * A copy at `path` (mode 0600): written under a temporary name in the same folder, synced, looked
 * through and renamed, so that the name never holds half a copy. Where a file stands there it is
 * replaced, or else DUPLICATE.
 */
enum fault store_backup(struct store *store, const char *path, bool replace,
                        struct fault_note *note);

/* ---- damaged files ---- */

/*
 * Opens a file that store_open may find DAMAGED, to read what can still be read: nothing is ever
 * written to it, and store_read_only says DAMAGED. Faults: as store_open for what is not ours, and
 * DAMAGED where not even its tables can be told.
 */
enum fault store_open_damaged(struct store **ret_store, const char *path, struct fault_note *note);

/* The keys of the builds that can still be found, in the arena (which needs no escape armed). */
enum fault store_rescue_builds(struct store *store, struct arena *arena, int64_t **ret_at,
                               size_t *ret_count, struct fault_note *note);

/*
 * As store_peek, but rows that cannot be read are left out, and all that model_check would refuse
 * without them (model_mend); how much that was goes to *ret_lost. A build without a name is called
 * "Rescued build".
 */
enum fault store_rescue(struct store *store, int64_t build, struct model *model,
                        struct arena *arena, size_t *ret_lost, struct fault_note *note);

#endif
