/*
 * Trade values: the numbers of a practised maker that a build can change. The table is in values.h.
 *
 * A changed value is kept as text with its unit ("10 in"), so that it means the same in a build of
 * the other units and in a file that a person reads.
 */
#ifndef MODEL_TRADE_H
#define MODEL_TRADE_H

#include "model/model.h"
#include "model/values.h"

enum trade {
#define TRADE_ENUM(name, key, quantity, inch, mm, least, most, source, help) TRADE_##name,
    TRADE_VALUES(TRADE_ENUM)
#undef TRADE_ENUM
        TRADE_COUNT
};

struct trade_value {
    const char *key; /* "join.pitch" */
    enum quantity quantity;
    int64_t standard[2]; /* by enum units */
    int64_t least;
    int64_t most;
    const char *source;
    const char *help;
};

extern const struct trade_value trade_values[TRADE_COUNT];

/* The groups of the table, in its order: a title ("screws and bolts"), and how many values. */
struct trade_group {
    const char *title;
    int count;
};

extern const struct trade_group trade_groups[];
extern const int trade_group_count;

/* The group of a value, and the first value of a group. */
int trade_group_of(enum trade trade);
enum trade trade_group_first(int group);

/* The index of a key, or -1. */
int trade_find(const char *key);

/* Where a value comes from. */
enum trade_origin { TRADE_FROM_STANDARD, TRADE_FROM_WORKSHOP, TRADE_FROM_BUILD };

/* The units that a change without a unit is in: the workshop's own, or else the build's. */
enum units trade_units(const struct model *model, enum trade_origin where);

/*
 * Reads a value as typed; `units` where no unit is given. Faults as quantity_parse, and RANGE with
 * the range in the note.
 */
enum fault trade_read(enum trade trade, enum units units, const char *text, int64_t *ret_value,
                      struct fault_note *note);

/*
 * What is kept of a value that was read from `text` in those units: the text itself where it means
 * the same in any units, else with its unit. Always reads back as `value`. In the arena; NULL when
 * memory is out and that has no escape.
 */
const char *trade_text(struct arena *arena, enum trade trade, enum units units, const char *text,
                       int64_t value);

/*
 * The value that holds for the model's build: its own, else the workshop's, else the standard of
 * its units. A changed value that cannot be read (model_check tells of it) counts as not there.
 */
int64_t trade_of(const struct model *model, enum trade trade);
enum trade_origin trade_origin_of(const struct model *model, enum trade trade);

/* All of them at once, as the engine wants them. */
void trade_resolve(const struct model *model, int64_t ret_values[TRADE_COUNT]);

/*
 * Changes a value for the build or for the workshop, from what was typed; "" goes back to what
 * holds without it. Where no unit is given it is that of the build or of the workshop. Faults: as
 * trade_read; UNKNOWN for a key that is not in the table; MEMORY.
 */
enum fault trade_change(struct model *model, enum trade_origin where, const char *key,
                        const char *text, struct fault_note *note);

#endif
