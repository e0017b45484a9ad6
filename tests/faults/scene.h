/*
 * Scenes: what a maker does to a store, each to be interrupted at every point. A scene begins with
 * a small store that has a history, opened and loaded; what it does is one call of the store.
 */
#ifndef FAULTS_SCENE_H
#define FAULTS_SCENE_H

#include "fixture.h"
#include "store/internal.h"

struct scene_kind;

struct scene {
    const struct scene_kind *kind;
    struct place place;
    const char *vfs;
    struct store *store; /* NULL where opening is what the scene does */
    struct arena arena;
    struct model before;
    struct model after;
    int64_t build;
    char copy[PATH_MAX + 16]; /* where a backup goes */
    struct fault_note note;   /* of the act */
};

struct scene_kind {
    const char *name;
    bool opens; /* the store is opened by `act`, on the file as it is, or on none */
    bool on_nothing;
    enum fault (*act)(struct scene *scene);
    int edit; /* which of the edits by chance */
};

extern const struct scene_kind scene_kinds[];
extern const int scene_count;

/* An edit of five items and the build by chance, another one for each number. */
struct scene_kind scene_edit(int number);

/* What every scene begins with, and what it leads to when nothing fails. */
struct scene_ends {
    unsigned char *bytes; /* of the file */
    size_t size;
    uint64_t old_state;
    uint64_t new_state;
};

void scene_find_ends(const struct scene_kind *kind, struct scene_ends *ret_ends);
void scene_forget_ends(struct scene_ends *ends);

/* A folder with the file, through a VFS (NULL: the system's), up to where the act begins. */
void scene_begin(struct scene *scene, const struct scene_kind *kind, const struct scene_ends *ends,
                 const char *vfs);

/* Acts once more, where the act before failed: with the store that is open and what it holds now,
 * or opening it again. */
enum fault scene_act_again(struct scene *scene);

/* Closes the store. */
void scene_leave(struct scene *scene);

/* Opens the file again with all that works, and gives its state; 0 when it is not there, 1 when it
 * cannot be opened, 2 when a copy stands at its name and is not whole. */
uint64_t scene_state(const struct scene *scene);

void scene_end(struct scene *scene);

#endif
