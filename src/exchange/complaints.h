/*
 * The faults of one file: gathered while it is read, told at the end in the order of the file.
 */
#ifndef EXCHANGE_COMPLAINTS_H
#define EXCHANGE_COMPLAINTS_H

#include "exchange/source.h"
#include "model/model.h"

#include <stdbool.h>
#include <stddef.h>

/* At most so many are kept; the others are only counted. */
#define COMPLAINTS_MOST 1000

struct complaint {
    struct fault_note note;
    size_t order; /* in which it came: of two at one place the first stays first */
};

struct complaints {
    struct arena *arena;
    const struct source *source;
    LIST_OF(struct complaint) all;
    size_t beside; /* not kept */
};

/* Whether what is complained of now is only counted. */
static inline bool complaints_full(const struct complaints *complaints)
{
    return complaints->all.count == COMPLAINTS_MOST;
}

/* About a value, at its place. */
void complain(struct complaints *complaints, const struct source_value *value, enum fault code,
              const char *format, ...) __attribute__((format(printf, 4, 5)));

/* That a value is of the wrong type: "`wanted` is expected, not a list". */
void complain_type(struct complaints *complaints, const struct source_value *value,
                   const char *wanted);

/* About a member's key, at the key's place. */
void complain_key(struct complaints *complaints, const struct source_value *member, enum fault code,
                  const char *format, ...) __attribute__((format(printf, 4, 5)));

/* About a member that an object lacks, at the object's place. */
void complain_missing(struct complaints *complaints, const struct source_value *object,
                      const char *name, const char *help);

/* A note written elsewhere, with a place of its own. */
void complain_note(struct complaints *complaints, const struct fault_note *note);

/* Tells them all to `tell` (which may be NULL), sorted by place, and then how many were only
 * counted. The code of the first; FAULT_NONE without any. */
enum fault complaints_tell(struct complaints *complaints, model_fault_fn *tell, void *context);

#endif
