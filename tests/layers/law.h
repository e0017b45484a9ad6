/*
 * The laws that every source file keeps: which floor may include which, where a library's header
 * may stand, what a floor below the edge never calls, and how a line may look.
 *
 * Each check reads one file's text and adds what it finds to the complaints; none stops at the
 * first. Paths are relative to `src` ("plan/frame.c") for the floors, free for the lines.
 */
#ifndef LAYERS_LAW_H
#define LAYERS_LAW_H

#include <stddef.h>

/* How many were found, and the first of them as lines "path:line: what". Zero-initialise it. */
struct complaints {
    int count;
    size_t used;
    char text[4096];
};

/* Counts one complaint and writes it down while there is room. */
void law_complain(struct complaints *found, const char *path, int line, const char *format, ...)
    __attribute__((format(printf, 4, 5))); /* gcc and clang check the arguments */

/*
 * Includes that climb or name no floor, library headers outside their floor, and calls that the
 * file's floor may not make. A comment and the inside of a string count for nothing. A file in no
 * floor's folder is on the top one, where main.c stands.
 */
void law_check_floors(struct complaints *found, const char *path, const char *text);

/* Lines over 100 characters (a table that clang-format is told to leave alone may be wider), tabs,
 * blanks at a line's end, no newline at the end of the file, and notes that put work off. */
void law_check_lines(struct complaints *found, const char *path, const char *text);

/* A name that may not stand at the top of the tree. Hidden files and build folders may. */
void law_check_top(struct complaints *found, const char *name);

#endif
