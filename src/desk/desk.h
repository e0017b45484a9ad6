/*
 * The desk: one workshop open at the bench, and the only way a change is made.
 *
 * A change is a named edit. It is made on a draft, a copy of the model, which is checked, planned
 * and written to the store as one transaction that can be undone; only then does it take the
 * model's place. A refused or failed commit leaves model, plan and store as they were.
 *
 * Pointers to model and plan hold until the next commit, undo, redo, take-up or refresh;
 * `desk_serial` counts those.
 */
#ifndef DESK_DESK_H
#define DESK_DESK_H

#include "plan/plan.h"
#include "store/store.h"

struct desk;

/* Opens the workshop in a file, made when missing; no build is taken up. Faults as store_open. */
enum fault desk_open(struct desk **ret_desk, const char *path, struct fault_note *note);
void desk_close(struct desk *desk); /* NULL-safe; a draft is dropped */

/* As store_read_only: FAULT_NONE when it can be written to. */
enum fault desk_read_only(const struct desk *desk);
const char *desk_path(const struct desk *desk);

unsigned desk_serial(const struct desk *desk);

/*
 * All builds in order of keys. The list is the desk's until the next call. Estimate, progress, next
 * step and what is missing of builds that are not open come from the store's cache and are those of
 * their last plan.
 */
enum fault desk_builds(struct desk *desk, const struct store_build **ret_builds, size_t *ret_count,
                       struct fault_note *note);

/*
 * Says in few words what is missing before the work of a plan can go on, the worst first: boxes,
 * stops and the first of them, goods that are neither bought nor on the shelf. Nothing for a build
 * that is done, or lacks nothing.
 */
void desk_missing(const struct plan *plan, struct text *out);

/* Takes up a build by key (0 puts it down: only the workshop is there), or by name; UNKNOWN when
 * there is none. */
enum fault desk_take_up(struct desk *desk, int64_t build, struct fault_note *note);
enum fault desk_take_up_named(struct desk *desk, const char *name, struct fault_note *note);

/* The workshop and the build that was taken up, and its plan (of an empty build when none was), a
 * draft (plan.h): its findings have no stories, and not all ways out. Never NULL. */
const struct model *desk_model(const struct desk *desk);
const struct plan *desk_plan(const struct desk *desk);

/* The same plan with the stories and all ways out of its findings, made when it is first asked for.
 * The desk's, until the next call after desk_serial has changed. desk_plan where memory is out. */
const struct plan *desk_told_plan(struct desk *desk);

/* ---- edits ---- */

/* Changes a draft; allocates through its arena, whose escape is armed. A fault leaves the note
 * filled. */
typedef enum fault desk_change_fn(struct model *draft, void *context, struct fault_note *note);

/*
 * Runs a change on the draft, which is made from the model when there is none yet. Changes add up
 * until desk_commit or desk_abandon; a change that faults drops the draft. Faults: those of
 * `change`, MEMORY.
 */
enum fault desk_change(struct desk *desk, desk_change_fn *change, void *context,
                       struct fault_note *note);

/*
 * The plan that the draft would have, for the preview. It is the desk's until the next call here,
 * desk_change, desk_commit or desk_abandon. Faults: what model_check says first, MEMORY; MISSING
 * when there is no draft.
 */
enum fault desk_preview(struct desk *desk, const struct plan **ret_plan, struct fault_note *note);

/*
 * Makes the draft the model. `label` names the edit for undo ("width of box C"). A draft of a build
 * with key 0 and a name becomes a new build. Faults: what model_check says first; CHANGED when
 * another program wrote meanwhile (desk_refresh, then again); those of store_save. The draft stays
 * on a fault.
 */
enum fault desk_commit(struct desk *desk, const char *label, struct fault_note *note);
void desk_abandon(struct desk *desk); /* nothing when there is no draft */

/* The three in one: change and commit, or leave all as it was. A draft that is open is dropped. */
enum fault desk_edit(struct desk *desk, const char *label, desk_change_fn *change, void *context,
                     struct fault_note *note);

/* Makes a new build from a change of an empty build (starter_make, exchange_build_in), and takes it
 * up. */
enum fault desk_new_build(struct desk *desk, const char *label, desk_change_fn *change,
                          void *context, struct fault_note *note);

/* The usual edits, each a commit of its own; an open draft is dropped. */

/*
 * Reads `text` into a field of an item, as field_read; `kind` may be ENTITY_workshop or
 * ENTITY_build (key ignored). UNKNOWN for an item or a field that is not there. desk_field_change
 * is the same as a change for desk_change, whose context is a struct desk_field.
 */
struct desk_field {
    enum entity_kind kind;
    int64_t key;
    const char *field;
    const char *text;
};
desk_change_fn desk_field_change;
enum fault desk_set(struct desk *desk, enum entity_kind kind, int64_t key, const char *field,
                    const char *text, struct fault_note *note);
/*
 * Makes the mirror image of a box, left for right: the box with its faces, panels, members,
 * layers, cutouts and fittings, and its joins where the other end has an image (its own, or its
 * other side). `name` NULL: the box's own with a number. Faults: UNKNOWN box; REFUSED for an
 * outline that only points can turn round; those of field_read.
 */
enum fault desk_mirror(struct desk *desk, int64_t box, const char *name, struct fault_note *note);

/*
 * Puts a box beside another one: on a side of it, and along that side's two directions (u and v of
 * the face) flush where it begins, in the middle, or flush where it ends. The join between the two
 * is moved, or made where there is none: of screws, or one that rests where one is a cushion. For
 * boxes that neither lean nor are turned against each other. UNKNOWN where one is not there or both
 * are the same. desk_beside_change is the same as a change for desk_change, whose context is a
 * struct desk_beside, for a preview.
 */
enum desk_flush { FLUSH_BEGIN, FLUSH_MIDDLE, FLUSH_END, FLUSHES };
struct desk_beside {
    int64_t box, other;
    int64_t side; /* of the other, enum side_word */
    enum desk_flush along_u, along_v;
};
desk_change_fn desk_beside_change;
enum fault desk_put_beside(struct desk *desk, const struct desk_beside *beside,
                           struct fault_note *note);

enum fault desk_delete(struct desk *desk, enum entity_kind kind, int64_t key,
                       struct fault_note *note);
enum fault desk_delete_build(struct desk *desk, int64_t build, struct fault_note *note);

/* Copies an item with all that hangs on it (model_duplicate). REFUSED where it cannot be copied. */
enum fault desk_duplicate(struct desk *desk, enum entity_kind kind, int64_t key,
                          struct fault_note *note);

/*
 * Takes a cure of a finding: all its edits, as one that undo names by the cure's text. UNKNOWN when
 * finding or cure is not there (cures are counted from 0); faults of field_read. desk_cure_change
 * is the same as a change for desk_change, whose context is a struct desk_cure, for a preview.
 */
struct desk_cure {
    const struct cure *cure;
};
desk_change_fn desk_cure_change;
enum fault desk_cure(struct desk *desk, size_t finding, size_t cure, struct fault_note *note);

/* The same for one that lies elsewhere: a way to take the cloth (plan/cloth_ways.h). It has to
 * outlive the call, in memory that is no plan's in force. */
enum fault desk_take_cure(struct desk *desk, const struct cure *cure, struct fault_note *note);

/*
 * Ticks a step of the plan: `at` is when ("2026-11-25 14:05"), minutes in 1/1000 min, 0 when not
 * known. What the step made is taken as a fact: holes of a drilling step, lengths of a cutting
 * step, what a buying step bought, with the layouts that it was bought for; and the build is being
 * made, or with its last step finished. Faults: UNKNOWN step, REFUSED when it is ticked already or
 * a hold point before it is not. desk_untick takes the tick and its facts away; REFUSED when a
 * ticked step needs it.
 */
enum fault desk_tick(struct desk *desk, const char *step, const char *at, int64_t minutes,
                     struct fault_note *note);
enum fault desk_untick(struct desk *desk, const char *step, struct fault_note *note);

/*
 * The same with measures that were taken in the step, as typed: what follows is worked out with
 * them (plan/taken.h). A name is as plan_asks gives it, or its beginning. With measures a step that
 * is ticked already takes them and keeps its tick. Faults: as desk_tick; UNKNOWN for a name that
 * the step does not ask for, RANGE for a measure that is over a quarter off, those of
 * quantity_parse; the note says which.
 */
struct desk_measure {
    const char *name, *text;
};
struct desk_done {
    const char *at;
    int64_t minutes;
    const struct desk_measure *measures;
    size_t measure_count;
};
enum fault desk_tick_done(struct desk *desk, const char *step, const struct desk_done *done,
                          struct fault_note *note);

/* For a step that the plan does not have: UNKNOWN, always. The note tells the name of the step that
 * has the number, where it is one: a step is never taken by its number, which other edits shift. */
enum fault desk_no_step(const struct desk *desk, const char *name, struct fault_note *note);

/*
 * The clock at the bench: starts it for a step, which stops it for any other, or stops it. `now` is
 * as `at` of desk_tick. What is on it goes into the step's tick, where that is given no minutes of
 * its own, and into the workshop's pace for steps of that kind. Faults: UNKNOWN step, REFUSED when
 * it is ticked.
 */
enum fault desk_clock(struct desk *desk, const char *step, const char *now,
                      struct fault_note *note);

/* The step's place on the clock, NULL when it has none; and its minutes (1/1000) by now. */
const struct timing *desk_timing(const struct desk *desk, const char *step);
int64_t desk_timed(const struct desk *desk, const char *step, const char *now);

/*
 * A part that was cut is spoiled: it is cut anew, from what is left first. `spoiled` false takes
 * that back. UNKNOWN for a label that no cut part bears, REFUSED when it is so already.
 */
enum fault desk_spoil(struct desk *desk, const char *part, bool spoiled, struct fault_note *note);

/*
 * Leaves an optional join out: its steps go, and what waited for it waits no more. `out` false
 * takes it in again. UNKNOWN for a name that no join bears; REFUSED for a join that is needed, that
 * is driven, or that is so already.
 */
enum fault desk_leave_out(struct desk *desk, const char *join, bool out, struct fault_note *note);

/* A trade value for the build or the workshop, as trade_change. */
enum fault desk_trade(struct desk *desk, enum trade_origin where, const char *key, const char *text,
                      struct fault_note *note);

/* ---- cutting ---- */

/*
 * Goes on with the search for better cutting layouts of the open build, for about `work`
 * (cut/search.h); what it has found to the end is in the plan then (look at desk_serial). False
 * when nothing is left to be searched, while there is a draft, and when memory is out.
 */
bool desk_improve(struct desk *desk, int64_t work);

/* How far the search is that desk_improve goes on with. */
struct desk_search {
    bool more;     /* desk_search_longer would have something to search */
    bool on;       /* something is left to be searched; the rest says nothing otherwise */
    bool longer;   /* it was asked for by desk_search_longer */
    int64_t stock; /* that is being cut */
    int job, jobs; /* which of how many, counted from 1 */
    int percent;   /* of the work that this one may take */
};

struct desk_search desk_search_state(const struct desk *desk);

/* Has desk_improve search all layouts of the open build with ten times the work, until all are, or
 * until it is stopped. False where all are searched so far already. */
bool desk_search_longer(struct desk *desk);

/* Stops that, with what was found in the plan. Faults: MEMORY. */
enum fault desk_search_stop(struct desk *desk, struct fault_note *note);

/* Searches all layouts of the open build with an effort, at once. Faults: MEMORY. */
enum fault desk_cut(struct desk *desk, enum cut_effort effort, struct fault_note *note);

/* The plan with quick layouts only, which a preview is to be compared with. The desk's, until the
 * next call of anything that changes desk_serial. The plan itself where memory is out. */
const struct plan *desk_quick_plan(struct desk *desk);

/* Makes the plan's layouts facts, and gives them back; each one edit. REFUSED when there are none.
 */
enum fault desk_take_layouts(struct desk *desk, struct fault_note *note);
enum fault desk_leave_layouts(struct desk *desk, struct fault_note *note);

/* Imports a file's bytes: a build (which is then taken up) or a workshop. Every fault found is
 * told. */
enum fault desk_import(struct desk *desk, const char *bytes, size_t length, model_fault_fn *tell,
                       void *context, struct fault_note *note);

/* ---- undo ---- */

/* Takes back, or does again, the last edit, of whichever build; that build is taken up. The label
 * says what it was. */
enum fault desk_undo(struct desk *desk, char label[STORE_LABEL], struct fault_note *note);
enum fault desk_redo(struct desk *desk, char label[STORE_LABEL], struct fault_note *note);

/* What would be undone or redone; "" when nothing. */
void desk_undo_label(struct desk *desk, char label[STORE_LABEL]);
void desk_redo_label(struct desk *desk, char label[STORE_LABEL]);

/*
 * Looks whether another program changed the file, and if so loads it again and sets *ret_changed; a
 * draft is dropped then, since what it was made from is gone. About 20 us when nothing changed.
 */
enum fault desk_refresh(struct desk *desk, bool *ret_changed, struct fault_note *note);

/* As store_moved: nothing can be saved then, but desk_backup keeps a copy of what is here. */
bool desk_moved(const struct desk *desk);

/* As store_backup. */
enum fault desk_backup(struct desk *desk, const char *path, bool replace, struct fault_note *note);

/* Looks through the whole workshop file: its pages, and every build against what a model must be.
 * Fault: DAMAGED, with the first thing that is wrong. */
struct desk_health {
    size_t builds;
    int64_t bytes;
};
enum fault desk_look_through(struct desk *desk, struct desk_health *ret_health,
                             struct fault_note *note);

/*
 * Writes what can still be read of a workshop file that is damaged into a folder, made when it is
 * missing: the workshop as workshop.json and each build as build-KEY.json, which desk_import takes.
 * Each is told: its name, how many rows or values of it are lost, or the fault that kept it back. A
 * file that is there is DUPLICATE, and nothing is done to it. The first fault is given.
 */
struct desk_rescued {
    const char *file, *name;
    size_t lost;
    const struct fault_note *note; /* NULL where it was written */
};
typedef void desk_rescued_fn(void *context, const struct desk_rescued *rescued);
enum fault desk_rescue(const char *path, const char *folder, desk_rescued_fn *tell, void *context,
                       struct fault_note *note);

#endif
