/*
 * Kinds of findings: what can be wrong or worth knowing. Any pass adds one with finding_add; the
 * sentence is a table entry, with %1 to %4 for the arguments and %e for what the entity is called.
 * Each line: enum name, severity, sentence.
 */
#ifndef PLAN_FINDINGS_H
#define PLAN_FINDINGS_H

#include "plan/pass.h"

#define FINDINGS(F)                                                                                \
    F(BOX_WITHOUT_STICK, STOP, "%e names no stick: its frame cannot be worked out")                \
    F(STUFF_UNFIT, STOP, "%e is to be made of %1, which is %2")                                    \
    F(BOX_TOO_SMALL, STOP, "%e is too small for its frame: %1 across, sticks take %2")             \
    F(BOX_UNCONNECTED, WARN, "%e is joined to nothing")                                            \
    F(MEMBER_SHORT, WARN, "no screw holds %1 of %e at an end: up to %2 is missing there")          \
    F(PANEL_TOO_LARGE, STOP, "a panel of %e, %1 x %2, comes out of no sheet on offer")             \
    F(PANEL_SPAN, WARN, "behind a panel of %e the supports stand %1 apart, at most %2 is good")    \
    F(SEAM_BEARING, WARN, "at a panel seam of %e only %1 of wood carries each side, %2 is wanted") \
    F(OUTLINE_DEEP, WARN,                                                                          \
      "the outline of %e comes down to %1, and no frame fits under it: its members go up to %2, "  \
      "cut them by hand")                                                                          \
    F(PANEL_ON_OUTLINE, WARN,                                                                      \
      "a panel on the %1 of %e runs along an outline: it measures %2 there, and is cut %3")        \
    F(PANEL_BENT, WARN,                                                                            \
      "the panel on the %1 of %e, %2 thick, is bent to a radius of %3, and %4 is the least: take " \
      "a thinner sheet, two thin ones glued over each other, or kerf its inside")                  \
    F(PANEL_BENT_ALONG, WARN,                                                                      \
      "the panel on the %1 of %e, %2 thick, is bent to a radius of %3 along its grain, and %4 is " \
      "the least so: no sheet is wide enough for its grain to lie across, however it is divided; " \
      "take a thinner sheet, or kerf its inside")                                                  \
    F(SCREW_NONE_FITS, STOP, "no screw fits %e: it passes %4 and needs %3, %1 to %2 long")         \
    F(SCREW_NOT_IN_STOCK, NOTE, "screws %1 are in no shop list: they have no price")               \
    F(SCREW_SHORT_BITE, WARN, "screws of %e bite only %1, %2 is wanted")                           \
    F(SCREWS_MEET, STOP, "two screws of %e pass %1 apart, %2 is the least: %3 and %4")             \
    F(SCREWS_NEAR, WARN, "two screws of %e pass %1 apart, %2 is better: %3 and %4")                \
    F(HOLE_MEETS, STOP, "hole %1 of join %e passes a screw of %4 %2 apart: it misses by %3")       \
    F(HOLE_NEAR, WARN, "hole %1 of join %e passes a screw of %4 %2 apart, %3 less than is good")   \
    F(FRAME_SHUT, STOP,                                                                            \
      "in the frame of %e no driver reaches the screws of %1 into %2, in any order: %3 stands "    \
      "before them; set it off by %4")                                                             \
    F(SCREW_EDGE, WARN, "a screw of %e stands %1 from the edge of %3, %2 is the least")            \
    F(SCREW_END, STOP, "a screw of %e stands %1 from the end of %3: it splits, %2 is the least")   \
    F(SCREW_END_NEAR, WARN, "a screw of %e stands %1 from the end of %3, %2 is better")            \
    F(HOLES_IN_LINE, WARN,                                                                         \
      "two holes of %e stand %1 apart along the grain of %3, %2 is the least")                     \
    F(BOLT_LENGTH, STOP, "the bolt of %e is %1 long, %2 to %3 goes through")                       \
    F(CLEAT_STUDS, WARN, "%e passes %1 studs of the wall, %2 are wanted")                          \
    F(FITTING_NO_WOOD, WARN, "a screw of %e finds no wood")                                        \
    F(JOIN_FACES_PAST, STOP, "the faces of join %e miss each other by %1")                         \
    F(JOIN_FACES_ASKEW, STOP, "the faces of join %e do not look at each other: %1 askew")          \
    F(JOIN_CONTRADICTS, STOP, "join %e wants %1 to stand %3 from where %2 put it")                 \
    F(JOIN_TURNS, STOP, "join %e wants %1 turned otherwise than %2 turn it")                       \
    F(JOIN_OFF_FLOOR, STOP, "join %e is to the floor, and its box stands %1 above it")             \
    F(BOX_BELOW_FLOOR, STOP, "%e reaches %1 below the floor")                                      \
    F(BOX_FLOATS, WARN, "%e hangs %1 above the floor: nothing that stands holds it")               \
    F(BOXES_OVERLAP, STOP, "%e and %1 stand in each other by %2")                                  \
    F(TWIN_DIFFERS, WARN, "%e is the mirror of %1, but its %2 is %3, not %4")                      \
    F(TWIN_LACKS, WARN, "%e is the mirror of %1, but has no image of the %2")                      \
    F(TWIN_BEYOND, WARN, "%e is the mirror of %1, which has no image of the %2")                   \
    F(OBJECT_IN_BOX, WARN, "%e stands in the %1 by %2")                                            \
    F(JOIN_NO_WOOD, STOP, "join %e finds no place with wood on both sides")                        \
    F(JOIN_FEW_POINTS, WARN, "join %e has room for %1 points only, %2 are wanted")                 \
    F(JOIN_UNREACHABLE, STOP, "no driver reaches the heads of join %e: %1 in line, %2 needed")     \
    F(JOIN_TIGHT, WARN,                                                                            \
      "at join %e a head lies %1 from the wood beside it, the driver needs %2: use a long bit")    \
    F(CLOTH_WIDTHS, NOTE, "the %e is sewn from %1 widths")                                         \
    F(CLOTH_NO_SEAM, STOP, "the %e is %1 wide, the cloth %2, and no seam is allowed")              \
    F(LAYER_NO_ROOM, WARN, "joints take up all of the face: nothing of the %e is left")            \
    F(ZIP_NOWHERE, WARN, "a zip at the %1 of %e stands in no seam: no cover is sewn there")        \
    F(CUSHION_OPEN, WARN,                                                                          \
      "the %e is not sewn shut all round, and a cushion has no wood to staple it to")              \
    F(CUSHION_SLACK, WARN, "the padding in %e is %1 thick, the cushion %2: it does not fill it")   \
    F(FOAM_SHORT, WARN, "the %e is %1 thick, but %2 comes %3 thick: one layer of it is bought")    \
    F(WELT_BOUGHT, NOTE, "the %e is put on as %1 is bought: no cloth is cut to cover it")          \
    F(TUFT_ON_MEMBER, WARN, "a button of %e lies %1 from a member behind it, %2 is wanted")        \
    F(BOXING_WANTED, NOTE,                                                                         \
      "%e goes over %1 of foam in one piece: over %2 a boxing strip lies flatter at its corners")  \
    F(CLOTH_NO_RESERVE, NOTE,                                                                      \
      "of %e %1 is left over for repairs, %2 is good: nobody finds the same lot later")            \
    F(BATTING_DRAWN, NOTE,                                                                         \
      "deep buttons draw %e in: it reaches %1 beyond their field, %2 is cut and trimmed later")    \
    F(TUFT_ON_SCREW, WARN, "a button hole of %e passes a screw %1 apart, %2 is wanted")            \
    F(TUFT_MIDDLE, NOTE, "a button of %e lies right in its middle: a whole diamond looks better")  \
    F(TUFT_WIDE, NOTE,                                                                             \
      "the diamonds of %e are %1 wide and %2 high: upright they are taller than wide")             \
    F(TUFT_GUESS, NOTE,                                                                            \
      "the cloth of %e counts %2 more for each %3, by the rule \"%1\": try one, and enter what "   \
      "it took")                                                                                   \
    F(CHANNEL_ON, WARN,                                                                            \
      "line %1 of the channels of %e, %2 from its left, falls within %3 of a join's hole")         \
    F(LANDING_THIN, WARN,                                                                          \
      "the wood under the staples of %e is %1 thick: a leg of %2 comes through")                   \
    F(WEB_NO_WOOD, WARN, "the webbing of %e ends on no wood at its %1: a member belongs there")    \
    F(NO_PRICE, NOTE, "%1 has no price")                                                           \
    F(NOT_SOLD, STOP, "%1 comes out of no size of %2 on offer: %3 is missing")                     \
    F(SAW_TAKES_TOO_MUCH, NOTE,                                                                    \
      "%1 parts like %2 beside each other need %3 with the saw's cuts, a sheet has %4")            \
    F(OVER_BUDGET, WARN, "the forecast is %1 over the budget")                                     \
    F(HEAVY, NOTE, "%e weighs %1: %2 people lift it, for it is over %3")                           \
    F(HEAVY_ON_STAIR, NOTE,                                                                        \
      "%e weighs %1: on the stair two people carry %2, so three carry it, or it goes in parts")    \
    F(PANEL_BENDS, WARN,                                                                           \
      "a person on %e bends its panel by %1 between supports %2 apart, %3 is good: more "          \
      "supports, "                                                                                 \
      "or a thicker sheet")                                                                        \
    F(MEMBER_BENDS, WARN,                                                                          \
      "a person on %e bends %4 by %1 over %2, %3 is good: a deeper stick, or an upright under it") \
    F(SLATS_APART, WARN, "slats of %e lie %1 apart, %2 is good: the mattress sags between them")   \
    F(SLAT_SLENDER, WARN,                                                                          \
      "a slat of %e is %1 wide and %2 thick, at least %3 and %4 are wanted under a mattress")      \
    F(BED_NO_LEG, WARN,                                                                            \
      "the mattress on %e, %1 wide, sags in the middle: over %4 it wants a rail along its middle " \
      "on %2 legs, at most %3 apart")                                                              \
    F(JOIN_WEAK, NOTE,                                                                             \
      "screws of join %e are good for %1 pulled apart and %2 across, a person who leans pulls %3") \
    F(TIPS, NOTE,                                                                                  \
      "%e, %1 high on %2 of depth, stands free: a push of %3 at its top tips it; hold it to the "  \
      "wall")                                                                                      \
    F(TOO_BIG_FOR_WAY, WARN, "%e does not pass %1: %2 is missing")                                 \
    F(BOX_KEPT_OUT, STOP, "box %1 cannot be brought straight to its place at join %e")             \
    F(JOIN_TRAPPED, STOP, "join %e cannot be driven: what comes before it shuts its heads in")     \
    F(ORDER_CIRCLE, STOP, "the steps around %e wait for each other")                               \
    F(DONE_OTHERWISE, NOTE, "step \"%1\" was done to an older plan")                               \
    F(BUILT_OTHERWISE, NOTE,                                                                       \
      "%e came out %2 in %1, planned was %3: what is laid on it is cut to the measure")            \
    F(MEASURE_DOUBTFUL, WARN, "%1 of %e was measured as %2, planned is %3: it is not taken")       \
    F(EDGE_SHUTS, STOP,                                                                            \
      "the %1 edge of %e is closed at the bench and shuts %2 heads of join %3: leave it loose")    \
    F(SEAT_FIRST, STOP,                                                                            \
      "%e shuts the way to %2 heads of join %1, and %3 shuts the way to its own in the room")      \
    F(DRILL_PADDED, WARN,                                                                          \
      "join %e is not drilled, and \"%2\" is done over %1 of its holes: take it off there first")  \
    F(LOOSE_FOR_NOTHING, WARN,                                                                     \
      "%2 of the %1 edge of %e stays loose, and no join is driven under it")                       \
    F(OPENING_FAR, WARN,                                                                           \
      "the heads of join %3 lie %1 from the loose edge of %e: it stays open %2 for each")          \
    F(OPENING_TOO_FAR, STOP,                                                                       \
      "the heads of join %3 lie %1 from the loose edge of %e: no arm reaches that far")            \
    F(PATCH_SHOWS, WARN,                                                                           \
      "at join %2 %e is cut out %1 times, %4 wide, on the %3 in plain view: line it over")         \
    F(SLIT_SHOWS, WARN, "at join %2 %e is slit %1 times on the %3, where it is seen")              \
    F(LANDING_FULL, WARN, "the wood is full under %e: %1 rows of staples in %2, %3 have room")     \
    F(SEAM_UNEVEN, WARN, "a seam of %e stands %1 %2 of the middle, its like %3 on the other side") \
    F(SEAM_ALONE, WARN, "a seam of %e stands %1 %2 of the middle, none on the other side")         \
    F(COVER_HIDDEN, NOTE,                                                                          \
      "the mattress hides %e up to %1: thin cloth sewn on at %2 or above saves %3 of it")          \
    F(THIN_SHOWS, WARN, "the thin cloth of %e reaches up to %1, and nothing hides it above %2")    \
    F(HANDLE_SHORT, WARN, "%2 to pull by at the %1 edge of %e: under %3 no hand holds it")         \
    F(CUT_HANDLE, WARN,                                                                            \
      "piece %1 of %e came out %2 short: %3 is left to pull by, under %4 no hand holds it")        \
    F(CUT_SHORT, STOP,                                                                             \
      "piece %1 of %e came out %2 short and misses its landing by %3: cut it anew before more is " \
      "bought")                                                                                    \
    F(FOAM_LIGHT, WARN, "%e, %1 by volume, is crushed in months where one sits: %2 is the least")  \
    F(FOAM_JOINED, WARN,                                                                           \
      "%e is sat on and comes out of %1 slabs, joined %2 from its %3: glue the joint, and move "   \
      "it off where one sits")                                                                     \
    F(HAND_GUN, NOTE,                                                                              \
      "the wood of %e is hard: a hand gun drives staples %1 deep at best, tack or borrow an air "  \
      "gun")                                                                                       \
    F(STRIP_ON_SOFT, NOTE,                                                                         \
      "%e is a strip of heads over %1 of padding: it looks uneven there; %2 single nails, not "    \
      "%3, "                                                                                       \
      "lie straight")                                                                              \
    F(PILE_BRUISED, NOTE,                                                                          \
      "nail strips bruise the pile of %e: stitch its sides by hand, and pad every clamp")          \
    F(PIECE_SHORT, WARN,                                                                           \
      "%1 of %e misses its landing by %3 where it is cut to %2: the boxes as built want %4")       \
    F(CLOTH_SHORT, WARN,                                                                           \
      "%1 of %e was bought, and its pieces take %2: %3 in one length is missing")                  \
    F(SEAM_SPARED, NOTE, "the %e is %1 wider than its cloth: with handles of %2 it needs no seam") \
    F(SEAM_ON, WARN, "a seam of %e, %1 %2 the middle, falls on %3")                                \
    F(UNDERSIDE_OPEN, WARN, "the underside of %e is open: a dust cover is missing")                \
    F(BACK_OPEN, WARN, "the back of %e is open in plain view: an outside back is missing")         \
    F(LEG_NO_WOOD, WARN,                                                                           \
      "%e at %1, %2 has no solid wood over it, %3 thick is wanted: put a block there")             \
    F(LID_SLAMS, WARN, "nothing holds the lid %e when it is lifted: it wants a stay")              \
    F(LID_SCREWED, WARN, "the lid %e has hinges, and join %1 screws it shut: let it rest there")   \
    F(LID_STIFLES, WARN,                                                                           \
      "%e is shut by its lid, and lets air in through %1 gaps of %2: two, %3 together, are "       \
      "wanted")                                                                                    \
    F(LID_AT_WALL, WARN,                                                                           \
      "the lid %e reaches %1 behind its hinges when it is lifted, and the wall stands %2 off")     \
    F(LID_PINCHES, WARN,                                                                           \
      "the lid %e is given %1 at its hinges, and the cloth of both parts takes %2: it binds")      \
    F(CLOTH_SQUEEZED, WARN, "%e and %1 stand %2 apart, and the cloth between them takes %3")       \
    F(SKIRTING, WARN,                                                                              \
      "the skirting, %2 high, holds %e %1 off the %3 wall: notch it, or put a spacer behind it")   \
    F(MATTRESS_TIGHT, WARN, "between the padded wings lie %1: a mattress of %3 wants %2")          \
    F(BED_NOT_MEASURED, WARN, "the holes of %e are not taken off the bed frame: frames differ")    \
    F(BED_PADDED, WARN, "%e lies under %1 brackets of %2: keep that strip bare")                   \
    F(SHEET_TOO_LARGE, WARN, "a sheet of %e, %1 x %2, does not go into %3: %4")                    \
    F(TOO_BIG_JOINED, WARN,                                                                        \
      "%e, joined at the bench, does not pass %1: %2 is missing; each box alone does: join it in " \
      "the room, %3 of work there")                                                                \
    F(JOIN_NOT_PROVED, STOP, "hole %1 of join %e cannot be %2 in any order found: %3")             \
    F(NOT_PROVED, STOP, "%e cannot be done in any order found: %1")                                \
    F(NOTHING_TO_MAKE, NOTE, "the build has no box yet")

enum finding_kind {
#define FINDING_ENUM(name, severity, sentence) FINDING_##name,
    FINDINGS(FINDING_ENUM)
#undef FINDING_ENUM
        FINDING_KINDS
};

/* Adds a finding and gives it back so that arguments can be set: argument_length(finding, 0, x). */
struct finding *finding_add(struct planning *planning, enum finding_kind kind,
                            enum entity_kind entity, int64_t key);
/* How many findings of a plan are of that kind and about that thing, whatever their figures. */
size_t findings_like(const struct plan *plan, const struct finding *like);

void argument_length(struct finding *finding, int index, int64_t length);
void argument_quantity(struct finding *finding, int index, enum quantity quantity, int64_t value);
void argument_money(struct finding *finding, int index, int64_t money);
void argument_text(struct finding *finding, int index,
                   const char *text); /* not copied: arena or model text */

#endif
