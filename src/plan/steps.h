/*
 * The kinds of steps, as one table. Each line: enum name, lasting word, scope, phase (0..14), where
 * it is done, who does it, hold point (0 or 1), facts that ticking it takes, tool, title.
 *
 * A step's lasting name is the word and the key of what it is about: "frame:3" is the frame of box
 * 3, "drill:32" the holes of join 32, "cut:1" what is cut from stock 1; "route" is about the whole
 * build. A flap belongs to a layer and a join: "flap:24-32". What is done once more bears a number:
 * "recut:1-2" is the second time that parts of stock 1 are missing after the first cuts, "rebuy:2"
 * the second time that something is missing after the shop. A panel step takes in every panel of
 * one face that is fixed at one time, and bears the smallest key among them.
 *
 * In a title %b is the box, %j the join, %s the stock, %c what a layer is called where it lies
 * ("cover of C"), %f the face of the panels ("front of C").
 */
#ifndef PLAN_STEPS_H
#define PLAN_STEPS_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

/* What one step is about. */
enum step_scope { SCOPE_BUILD, SCOPE_BOX, SCOPE_JOIN, SCOPE_LAYER, SCOPE_FACING, SCOPE_STOCK };

/* Facts that a tick writes down, beside its time and note. */
enum step_takes {
    STEP_TAKES_NOTHING,
    STEP_TAKES_HOLES,     /* points of the join, where they were drilled */
    STEP_TAKES_CUTS,      /* parts of the stock, as cut */
    STEP_TAKES_PURCHASES, /* lines of the shopping list */
    STEP_TAKES_MEASURES   /* of the box, or of what was bought */
};

/* Where: at the bench, in the room, or where the model says that the join is made. A step that
 * waits for one in the room is done there whatever stands here. */
enum step_where { WHERE_BENCH, WHERE_ROOM, WHERE_JOINED };

/* How many people: the last four ask for two where the load, the longest member, the panel or the
 * cloth is over its trade value. */
enum step_crew { CREW_ONE, CREW_TWO, CREW_LOAD, CREW_FRAME, CREW_PANEL, CREW_CLOTH };

#define STEPS_OF_WOOD(S)                                                                          \
    S(DECIDE, "decide", BUILD, 0, BENCH, ONE, 0, NOTHING, "paper",                                \
      "Fix sizes, cloth and where it stands")                                                     \
    S(ROUTE, "route", BUILD, 0, BENCH, ONE, 0, NOTHING, "tape", "Measure the way into the room")  \
    S(CHECK, "check", BUILD, 1, BENCH, ONE, 1, NOTHING, "paper",                                  \
      "Check screws, reach and seams on paper")                                                   \
    S(SHELF, "shelf", BUILD, 2, BENCH, ONE, 0, NOTHING, "paper", "Look through the shelf")        \
    S(BUY, "buy", BUILD, 2, BENCH, ONE, 0, PURCHASES, "list", "Buy what is missing")              \
    S(REBUY, "rebuy", BUILD, 2, BENCH, ONE, 0, PURCHASES, "list", "Buy what is missing now")      \
    S(GAUGE, "gauge", BUILD, 2, BENCH, ONE, 0, MEASURES, "calliper",                              \
      "Measure sticks and sheets as bought")                                                      \
    S(CUT, "cut", STOCK, 3, BENCH, ONE, 0, CUTS, "saw", "Cut %s")                                 \
    S(RECUT, "recut", STOCK, 3, BENCH, ONE, 0, CUTS, "saw", "Cut what is missing of %s")          \
    S(LABEL, "label", BUILD, 3, BENCH, ONE, 0, NOTHING, "pencil", "Label every part")             \
    S(UNROLL, "unroll", BUILD, 3, BENCH, ONE, 0, NOTHING, "floor", "Unroll the batting to rest")  \
    S(FRAME, "frame", BOX, 4, BENCH, FRAME, 0, NOTHING, "drill", "Frame box %b")                  \
    S(PANEL, "panel", FACING, 4, BENCH, PANEL, 0, NOTHING, "drill", "Panel the %f")               \
    S(RECORD, "record", BOX, 4, BENCH, ONE, 1, MEASURES, "tape", "Measure box %b as built")       \
    S(BED, "bed", JOIN, 5, BENCH, ONE, 1, MEASURES, "tape", "Take holes of %j off the bed frame") \
    S(DRY, "dry", JOIN, 5, BENCH, TWO, 0, NOTHING, "clamps", "Fit join %j dry")                   \
    S(DRILL, "drill", JOIN, 5, BENCH, ONE, 0, HOLES, "drill", "Drill join %j")                    \
    S(MAP, "map", JOIN, 5, BENCH, ONE, 1, NOTHING, "pencil", "Map and label join %j")             \
    S(INSERT, "insert", BOX, 6, BENCH, ONE, 0, NOTHING, "drill", "Set the T-nuts of box %b")      \
    S(NUTS, "nuts", JOIN, 6, BENCH, ONE, 0, NOTHING, "drill", "Set the T-nuts of join %j")        \
    S(CLEAT, "cleat", BOX, 6, BENCH, ONE, 0, NOTHING, "drill", "Screw on cleats of box %b")       \
    S(HANG, "hang", BOX, 6, BENCH, ONE, 0, NOTHING, "drill", "Hang box %b dry on its hinges")     \
    S(TUFT, "tuft", LAYER, 6, BENCH, ONE, 1, NOTHING, "drill", "Drill button holes for the %c")   \
    S(EASE, "ease", BOX, 6, BENCH, ONE, 0, NOTHING, "sander", "Ease and clean box %b")            \
    S(PATCH, "patch", JOIN, 6, BENCH, ONE, 0, NOTHING, "marker", "Mark what stays bare at %j")    \
    S(LOCATE, "locate", JOIN, 6, BENCH, ONE, 0, NOTHING, "pins", "Put locators in holes of %j")   \
    S(BARE, "bare", BOX, 6, BENCH, ONE, 1, NOTHING, "eye", "Look over the bare wood of box %b")   \
    S(WEB, "web", FACING, 8, BENCH, ONE, 0, NOTHING, "stapler", "Web the %f")

#define STEPS_OF_CLOTH(S)                                                                          \
    S(INSPECT, "inspect", BUILD, 7, BENCH, ONE, 0, MEASURES, "eye", "Inspect the cloth")           \
    S(CHALK, "chalk", BUILD, 7, BENCH, ONE, 0, NOTHING, "chalk", "Chalk all pieces on the cloth")  \
    S(SHEAR, "shear", STOCK, 7, BENCH, ONE, 0, CUTS, "shears", "Cut the pieces of %s")             \
    S(SEW, "sew", LAYER, 7, BENCH, ONE, 0, NOTHING, "machine", "Sew the %c")                       \
    S(SLICE, "slice", STOCK, 8, BENCH, ONE, 0, CUTS, "knife", "Cut pads of %s")                    \
    S(PAD, "pad", LAYER, 8, BENCH, ONE, 0, NOTHING, "spray", "Glue the %c")                        \
    S(BATTING, "batting", LAYER, 8, BENCH, ONE, 0, NOTHING, "stapler", "Wrap the %c")              \
    S(LINING, "lining", LAYER, 8, BENCH, ONE, 0, NOTHING, "stapler", "Pull on the %c")             \
    S(PADDED, "padded", BOX, 8, BENCH, ONE, 1, NOTHING, "hand", "Feel over the padding of box %b") \
    S(TRY, "try", LAYER, 8, BENCH, CLOTH, 0, NOTHING, "pins", "Try on the %c")                     \
    S(COVER, "cover", LAYER, 9, BENCH, CLOTH, 0, NOTHING, "stapler", "Lay and baste the %c")       \
    S(LOOK, "look", LAYER, 9, BENCH, ONE, 1, NOTHING, "eye", "Look at the %c from a distance")     \
    S(BUTTON, "button", LAYER, 9, BENCH, ONE, 0, NOTHING, "needle", "Button the %c")               \
    S(STAPLE, "staple", LAYER, 9, BENCH, ONE, 0, NOTHING, "stapler", "Staple the %c")              \
    S(CORNER, "corner", LAYER, 9, BENCH, ONE, 0, NOTHING, "stapler", "Fold the corners of the %c") \
    S(SLIT, "slit", LAYER, 9, BENCH, ONE, 0, NOTHING, "knife", "Slit the %c over its holes")

#define STEPS_OF_JOINING(S)                                                                      \
    S(FIND, "find", JOIN, 10, JOINED, ONE, 0, NOTHING, "awl", "Find the holes of join %j")       \
    S(OFFER, "offer", JOIN, 10, JOINED, TWO, 0, NOTHING, "drill", "Offer the boxes at join %j")  \
    S(DRIVE, "drive", JOIN, 10, JOINED, ONE, 1, NOTHING, "drill", "Drive join %j")               \
    S(FLAP, "flap", LAYER, 10, BENCH, ONE, 0, NOTHING, "stapler", "Close the %c at join %j")     \
    S(BACK, "back", LAYER, 11, BENCH, CLOTH, 0, NOTHING, "stapler", "Close with the %c")         \
    S(DUST, "dust", LAYER, 11, BENCH, ONE, 0, NOTHING, "stapler", "Close with the %c")           \
    S(HINGE, "hinge", BOX, 11, BENCH, TWO, 0, NOTHING, "drill", "Hang box %b for good")          \
    S(LEG, "leg", BOX, 11, BENCH, LOAD, 0, NOTHING, "hand", "Put legs and glides on box %b")     \
    S(FIT, "fit", BOX, 11, BENCH, ONE, 0, NOTHING, "hand", "Put the fittings on box %b")         \
    S(MOVE, "move", BUILD, 12, ROOM, TWO, 0, NOTHING, "blankets", "Carry the boxes to the room") \
    S(MARK, "mark", BUILD, 13, ROOM, ONE, 0, NOTHING, "level", "Mark level and studs")           \
    S(SET, "set", BUILD, 13, ROOM, TWO, 0, NOTHING, "level", "Set the boxes level")              \
    S(FIX, "fix", JOIN, 13, ROOM, TWO, 1, NOTHING, "drill", "Fix join %j in the room")           \
    S(PUSH, "push", BUILD, 13, ROOM, TWO, 0, NOTHING, "level", "Push the piece to its place")    \
    S(TRIM, "trim", LAYER, 13, BENCH, ONE, 0, NOTHING, "hammer", "Put on the %c")                \
    S(FINAL, "final", BUILD, 14, BENCH, ONE, 0, NOTHING, "eye", "Check the finished piece")      \
    S(ACCOUNT, "account", BUILD, 14, BENCH, ONE, 0, NOTHING, "paper",                            \
      "Book money, minutes and leftovers")

#define STEPS(S)      \
    STEPS_OF_WOOD(S)  \
    STEPS_OF_CLOTH(S) \
    STEPS_OF_JOINING(S)

enum step_kind_name {
#define STEP_ENUM(name, word, scope, phase, where, crew, hold, takes, tool, title) STEP_##name,
    STEPS(STEP_ENUM)
#undef STEP_ENUM
        STEP_KINDS
};

struct step_kind {
    const char *word; /* first part of the lasting name */
    enum step_scope scope;
    int phase;
    enum step_where where;
    enum step_crew crew;
    bool hold;
    enum step_takes takes;
    const char *tool;
    const char *title;
};

extern const struct step_kind step_kinds[STEP_KINDS];

/* Whether fittings of a kind (enum fitting_word) are put on in steps of a kind. */
bool step_puts_on(int kind, int64_t fitting);

struct step;

/* What a step says, line by line, to be kept with its tick (in the arena, whose escape is armed);
 * and a digest of that and its title. What it only asks to be measured is left out. */
const char *step_said(const struct step *step, struct arena *arena);
uint64_t step_digest(const struct step *step);

/* The kind of a step by its lasting name ("drill:32"); -1 when the word is unknown. */
int step_kind_of(const char *name);

/* The first key in a lasting name (32 in "drill:32", 24 in "flap:24-32"); 0 where there is none. */
int64_t step_key_of(const char *name);

#endif
