/* Reads the checkout file by file, so that the laws can be held against what really stands there.
 */
#ifndef LAYERS_TREE_H
#define LAYERS_TREE_H

#include <stdbool.h>

struct complaints;

/* Runs on one file: `path` is relative to the folder that the walk began at. */
struct tree_check {
    void (*check)(struct complaints *found, const char *path, const char *text);
    struct complaints *found;
    const char *ending; /* of the files; NULL: ".c" and ".h" */
    int files;          /* counted by the walk */
};

/*
 * Runs the check on every file of its ending under `root`/`folder`. A file or folder that cannot be
 * read is a complaint. Returns false when the folder is not there.
 */
bool tree_each_source(const char *root, const char *folder, struct tree_check *check);

/* A whole file, free() it; NULL where it cannot be read. */
char *tree_text(const char *path);

/* Holds law_check_top against every name in `root`. Returns false when it cannot be read. */
bool tree_check_top(const char *root, struct complaints *found);

#endif
