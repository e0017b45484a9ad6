/*
 * Models for the tests of files: a small one whose file stands in the tests as text, and ones by
 * chance that fill every field of every entity.
 */
#ifndef SAMPLE_H
#define SAMPLE_H

#include "base/arena.h"
#include "model/model.h"

#include "dice.h"

#include <setjmp.h>

/* A model in an arena; memory that is missing ends the program. */
struct sample {
    struct arena arena;
    jmp_buf escape;
    struct model model;
};

void sample_init(struct sample *sample);
void sample_release(struct sample *sample);

/* One box C of 1 in by 2 in by 3 in, framed from a stick "2x4", with a face; see sample_small_file.
 */
void sample_small(struct model *model);
extern const char *const sample_small_file;

/* Up to `most` items of every kind, every value in its range; the model passes model_check. */
void sample_by_chance(struct model *model, struct dice *dice, int most);

/* What was told, in order. */
struct told {
    struct fault_note notes[40];
    size_t count;
};
void told_note(void *told, const struct fault_note *note);     /* a model_fault_fn */
void told_aloud(void *nothing, const struct fault_note *note); /* another: prints it */

/* "3:14 RANGE boxes[0].width: why" of each, a line each, into a text that the caller releases. */
void told_print(const struct told *told, struct text *out);

#endif
