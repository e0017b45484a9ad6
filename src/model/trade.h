/*
 * Trade values: the numbers of a practised maker that a build can change, as one table. Each line:
 * enum name, key, quantity, value in inch work, value in millimetre work, least, most, source,
 * help. Sources: a published work, "derived" with its formula in the help, or "common practice, no
 * source".
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

/* What the table is read by, in its order: "screws and bolts", and how many of it. */
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

/*
 * Reads a value as typed; `units` where no unit is given. Faults as quantity_parse, and RANGE with
 * the range in the note.
 */
enum fault trade_read(enum trade trade, enum units units, const char *text, int64_t *ret_value,
                      struct fault_note *note);

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
