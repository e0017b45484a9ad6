/*
 * Faults: what went wrong, where and why, in the maker's words.
 *
 * Every function that can fail returns `enum fault` (FAULT_NONE is 0), leaves its `ret_*` outputs
 * alone on failure and, where it takes a `struct fault_note *`, writes one line of explanation
 * there. The note may be NULL. Floors below `cli` and `tui` never print: the edge prints the note.
 */
#ifndef BASE_FAULT_H
#define BASE_FAULT_H

#include <stddef.h>

/* name, exit code of a command that ends with it, what it means to the maker */
#define FAULTS(F)                                            \
    F(NONE, 0, "no fault")                                   \
    F(SYNTAX, 1, "cannot be read")                           \
    F(RANGE, 1, "outside the range that makes sense")        \
    F(UNIT, 1, "a unit that does not fit here")              \
    F(OVERFLOW, 1, "too large a number")                     \
    F(TYPE, 1, "a value of another type was expected")       \
    F(DUPLICATE, 1, "given twice")                           \
    F(UNKNOWN, 1, "not known here")                          \
    F(REFERENCE, 1, "points to something that is not there") \
    F(MISSING, 1, "is needed and not there")                 \
    F(REFUSED, 1, "cannot be done as things stand")          \
    F(CHANGED, 1, "another program changed it meanwhile")    \
    F(MEMORY, 1, "out of memory")                            \
    F(IO, 1, "reading or writing failed")                    \
    F(FULL, 1, "the disk is full")                           \
    F(USAGE, 2, "not how the command is used")               \
    F(TERMINAL, 3, "the terminal cannot be used")            \
    F(FOREIGN, 4, "not a workshop file of this program")     \
    F(DAMAGED, 4, "the file is damaged")                     \
    F(NEWER, 4, "made by a newer version of this program")   \
    F(LOCKED, 5, "another program holds the file")

enum fault {
#define FAULT_ENUM(name, exit, text) FAULT_##name,
    FAULTS(FAULT_ENUM)
#undef FAULT_ENUM
        FAULT_COUNT
};

/*
 * Where and why. `line` and `column` count from 1; 0 means that the place is not known. `path`
 * names the field: by its key in a file ("boxes[2].width"), of an item by that one's name ("width
 * of C"). `why` is one sentence without a full stop, safe to show.
 */
struct fault_note {
    enum fault code;
    int line;
    int column;
    char path[120];
    char why[240];
};

/* The words for a fault, never NULL; and the exit code of a command that ends with it. */
const char *fault_words(enum fault code);
int fault_exit_code(enum fault code);

/*
 * Fills `note` (when not NULL) with the code and the formatted reason, and where it is known the
 * column, clearing the other places, and returns `code`, so that a caller can write `return
 * fault_say(note, FAULT_RANGE, "...")`. The text is cut, at a character's edge, where it is too
 * long.
 */
enum fault fault_say(struct fault_note *note, enum fault code, const char *format, ...)
    __attribute__((format(printf, 3, 4))); /* gcc and clang check the arguments */
enum fault fault_say_column(struct fault_note *note, enum fault code, int column,
                            const char *format, ...) __attribute__((format(printf, 4, 5)));

#ifdef __clang_analyzer__
/* The analyser looks at one file at a time, and has to be told that `code` comes back. */
#define fault_say(note, code, ...) (fault_say((note), (code), __VA_ARGS__), (code))
#define fault_say_column(note, code, ...) (fault_say_column((note), (code), __VA_ARGS__), (code))
#endif

/* The same with the fault's own words, where there is nothing to add to them. */
enum fault fault_say_plain(struct fault_note *note, enum fault code);

/* Names the field or key that a note already written is about. NULL-safe. Returns note->code, or
 * FAULT_NONE without a note. */
enum fault fault_at(struct fault_note *note, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* Prints "path: line L, column C: why" with the parts that are known. Returns what snprintf would.
 */
int fault_print(char *buffer, size_t size, const struct fault_note *note);

/* A state that only a mistake of ours can reach: says where on standard error and aborts. */
#define BUG(reason) fault_bug(__FILE__, __LINE__, (reason))
_Noreturn void fault_bug(const char *file, int line, const char *reason);

#endif
