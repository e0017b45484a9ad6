/*
 * An independent check of layouts: it shares the structs of layout.h and no function with the
 * methods that make them.
 */
#ifndef CUT_VERIFY_H
#define CUT_VERIFY_H

#include "cut/layout.h"

/* name, what it says */
#define CUT_FLAWS(F)                                                           \
    F(NONE, "the layout is sound")                                             \
    F(UNKNOWN_PART, "a part that the job does not have")                       \
    F(UNKNOWN_SIZE, "a size that the job does not have")                       \
    F(BLANKS, "blanks that do not hold all places, each once and in order")    \
    F(TWICE, "a part that is there twice")                                     \
    F(MISSING, "a part that is neither placed nor left out")                   \
    F(LEFT_OUT, "a part left out though a size on offer takes it")             \
    F(TURNED, "a part turned that may not turn")                               \
    F(OUTSIDE, "a part outside its blank, or in the trim")                     \
    F(OVERLAP, "two parts on one spot")                                        \
    F(KERF, "two parts with less than a kerf between them")                    \
    F(EDGE_TO_EDGE, "parts that no cuts from edge to edge can part")           \
    F(LIMIT, "more of a size than there are")                                  \
    F(USED, "a blank whose length used, or rest, is not what its parts leave") \
    F(MATCHED, "a matched part that does not meet the pattern")                \
    F(BLEMISH, "a part on a blemished place of the roll")                      \
    F(SEQUENCE, "parts of a roll out of the order in which they are met")      \
    F(COST, "a cost that is not the sum of the blanks")                        \
    F(BOUND, "a bound above the cost")                                         \
    F(STROKES, "cuts that do not run from edge to edge and free each part")    \
    F(FENCES, "a number of fence settings that is not that of the cuts")       \
    F(STUCK, "a number of sheets too large to carry that is not true")

enum cut_flaw {
#define CUT_FLAW_ENUM(name, text) CUT_FLAW_##name,
    CUT_FLAWS(CUT_FLAW_ENUM)
#undef CUT_FLAW_ENUM
        CUT_FLAWS_COUNT
};

enum cut_way { CUT_BARS, CUT_SHEETS, CUT_ROLLS };

/*
 * The first flaw of a layout, by the order above, or CUT_FLAW_NONE: each part placed once and
 * inside or rightly left out, none turned that may not be, none overlapping, kerfs kept, on sheets
 * cuts from edge to edge that part them all, limits kept, used lengths and costs added anew, on
 * rolls the pattern met, blemishes avoided and parts in order, the strokes followed where the
 * layout has any. Scratch memory comes from `arena`, whose escape must be armed. O(parts^2) a
 * blank.
 */
enum cut_flaw layout_verify(enum cut_way way, const struct cut_job *job,
                            const struct cut_layout *layout, struct arena *arena);

/* What a flaw says. Never NULL. */
const char *cut_flaw_words(enum cut_flaw flaw);

#endif
