/* Where each rule of the trade is honoured. */
#include "plan/rules.h"

#define LINKED(id, scope)                                    \
    {                                                        \
        id, SCOPE_OF_##scope, KEPT_BY_LINK, STEP_KINDS, NULL \
    }
#define CARD(id, scope, kind, words)                           \
    {                                                          \
        id, SCOPE_OF_##scope, KEPT_ON_CARD, STEP_##kind, words \
    }
#define ACCESS(id, scope)                                      \
    {                                                          \
        id, SCOPE_OF_##scope, KEPT_BY_ACCESS, STEP_KINDS, NULL \
    }
#define PASS(id, scope, where)                                \
    {                                                         \
        id, SCOPE_OF_##scope, KEPT_BY_PASS, STEP_KINDS, where \
    }

const struct kept_rule kept_rules[] = {
    LINKED("P01", PIECE),
    LINKED("P02", PIECE),
    LINKED("P03", BOX),
    LINKED("P04", BOX),
    PASS("P05", BOX, "frame: supports under seams and spans, blocks; cover: landings are checked"),
    LINKED("P06", JOIN),
    CARD("P07", BOX, CUT, "Square one end first"),
    CARD("P08", BOX, CUT, "longest parts first"),
    CARD("P09", BOX, FRAME, "drill %e through and %p"),
    CARD("P10", BOX, FRAME, "compare the diagonals"),
    CARD("P11", BOX, FRAME, "farthest from the edge first"),
    LINKED("P12", BOX),
    CARD("P13", BOX, PANEL, "Compare the diagonals"),
    LINKED("P14", BOX),
    LINKED("P15", BOX),
    LINKED("P16", JOIN),
    LINKED("P17", JOIN),
    LINKED("P18", JOIN),
    LINKED("P19", JOIN),
    LINKED("P20", JOIN),
    LINKED("P21", FACE),
    LINKED("P22", FACE),
    LINKED("P23", FACE),
    LINKED("P24", FACE),
    CARD("P25", FACE, PAD, "wait until it is tacky"),
    LINKED("P26", FACE),
    LINKED("P27", FACE),
    LINKED("P28", FACE),
    CARD("P29", JOIN, BATTING, "Cut every patch out"),
    CARD("P30", FACE, BATTING, "well inside the line of the cover"),
    LINKED("P31", PIECE),
    LINKED("P32", PIECE),
    CARD("P33", PIECE, CHALK, "main line first"),
    LINKED("P34", PIECE),
    CARD("P35", PIECE, SHEAR, "largest first"),
    PASS("P36", FACE, "cover_sewing: of a layer's seams those of its widths come first"),
    PASS("P37", FACE, "cover_sewing: welt to the face comes before the boxing"),
    LINKED("P38", FACE),
    LINKED("P39", FACE),
    CARD("P40", FACE, COVER, "Match the middle"),
    LINKED("P41", FACE),
    LINKED("P42", FACE),
    CARD("P43", FACE, STAPLE, "opposite sides in turn"),
    LINKED("P44", FACE),
    ACCESS("P45", EDGE),
    LINKED("P46", EDGE),
    CARD("P47", EDGE, COVER, "leave openings loose"),
    LINKED("P48", JOIN),
    CARD("P49", JOIN, DRIVE, "Start every screw"),
    ACCESS("P50", JOIN),
    LINKED("P51", CELL),
    LINKED("P52", FACE),
    LINKED("P53", FACE),
    CARD("P54", FACE, BACK, "Fix the top, then the sides"),
    PASS("P55", FACE, "cover: landings set the row back from the edge (trade value landing)"),
    LINKED("P56", BOX),
    LINKED("P57", BOX),
    LINKED("P58", PIECE),
    LINKED("P59", PIECE),
    PASS("P60", PIECE, "access: a seat over wall screws is a blocker like any other"),
    CARD("P61", PIECE, SET, "then the corner, then outwards"),
    PASS("P62", PIECE, "the joins of rails and legs, each a JOIN_BEFORE_JOIN where it carries"),
    LINKED("P63", EDGE),
    LINKED("P64", EDGE),
    CARD("P65", PIECE, TRIM, "whole pitches"),
    LINKED("P66", PIECE),
    CARD("P67", PIECE, LEG, "Paint and oil on them are dry"),
    CARD("P68", PIECE, CUT, "equal parts with one stop"),
    LINKED("P69", PIECE),
    CARD("P70", PIECE, HINGE, "the weight with padding"),
    CARD("P71", PIECE, CHALK, "one the mirror of the other"),
    CARD("P72", PIECE, MOVE, "nothing lies on a covered face"),
    CARD("P73", PIECE, BARE, "cables"),
    LINKED("P74", PIECE),
    LINKED("P75", PIECE),
    LINKED("P76", PIECE),
    LINKED("P77", EDGE),
    CARD("P78", BOX, FRAME, "Set the inner members"),
};

const size_t kept_rule_count = sizeof kept_rules / sizeof *kept_rules;
