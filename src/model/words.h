/*
 * Vocabularies: the words that a choice can take, in the order of their values. The word is what
 * stands in the store, in JSON and on the screen; the help line says what it means. Values start at
 * 0, which is what a new item has.
 */
#ifndef MODEL_WORDS_H
#define MODEL_WORDS_H

#include <stddef.h>

struct word {
    const char *name;
    const char *help;
};

struct words {
    const char *name; /* of the vocabulary: "side" */
    const struct word *at;
    size_t count;
};

/* The value of a word, or -1 when it is not in the vocabulary. */
int words_find(const struct words *words, const char *name);

/* All of them with commas between ("raw, folded"), cut where the buffer ends. Returns buffer. */
char *words_list(const struct words *words, char *buffer, size_t size);

/* Each line: enum name, word, help; P is the prefix of the enum names. */
#define WORDS_OF_units(W, P)                                \
    W(P, INCH, inch, "inches and fractions, pounds, yards") \
    W(P, MM, mm, "millimetres, kilograms, metres")
#define WORDS_OF_state(W, P)                  \
    W(P, IDEA, idea, "being thought about")   \
    W(P, READY, ready, "designed, not begun") \
    W(P, MAKING, making, "at the bench")      \
    W(P, RESTING, resting, "put aside")       \
    W(P, FINISHED, finished, "stands in its room")
#define WORDS_OF_side(W, P)                                 \
    W(P, FRONT, front, "seen first; y is largest")          \
    W(P, BACK, back, "toward the wall; y is 0")             \
    W(P, LEFT, left, "seen from the front; x is 0")         \
    W(P, RIGHT, right, "seen from the front; x is largest") \
    W(P, TOP, top, "z is largest")                          \
    W(P, BOTTOM, bottom, "toward the floor; z is 0")
#define WORDS_OF_edge(W, P)                              \
    W(P, LEFT, left, "where u is 0 on the face")         \
    W(P, RIGHT, right, "where u is largest on the face") \
    W(P, TOP, top, "where v is largest on the face")     \
    W(P, BOTTOM, bottom, "where v is 0 on the face")
#define WORDS_OF_frame(W, P)                                               \
    W(P, LADDER, ladder, "flat frame of rails and uprights")               \
    W(P, CRATE, crate, "two ladders, front and back, and crosses between") \
    W(P, BOARD, board, "a panel, with or without battens")                 \
    W(P, CUSHION, cushion, "no frame: foam in a sewn cover")
#define WORDS_OF_setting(W, P)                                             \
    W(P, ON_EDGE, on_edge, "the wide side of the stick runs into the box") \
    W(P, FLAT, flat, "the wide side of the stick shows")
#define WORDS_OF_through(W, P)                                              \
    W(P, UPRIGHTS, uprights, "uprights run the full height, rails between") \
    W(P, RAILS, rails, "rails run the full width, uprights between")
#define WORDS_OF_making(W, P)                                      \
    W(P, AUTO, auto, "placed by the program from spans and seams") \
    W(P, HAND, hand, "placed by hand, as members of the box")
#define WORDS_OF_outline(W, P)                                                \
    W(P, RECTANGLE, rectangle, "straight on all sides")                       \
    W(P, ARCH, arch, "the top rises to its middle in a curve")                \
    W(P, SHOULDER, shoulder, "the top drops by a quarter round at both ends") \
    W(P, SLOPE, slope, "the top falls from one end to the other")             \
    W(P, POINTS, points, "through points by hand")
#define WORDS_OF_axis(W, P)     \
    W(P, X, x, "left to right") \
    W(P, Y, y, "back to front") \
    W(P, Z, z, "up")
#define WORDS_OF_seen(W, P)           \
    W(P, SEEN, seen, "in plain view") \
    W(P, WALL, wall, "toward a wall") \
    W(P, NEVER, never, "never seen")
#define WORDS_OF_member(W, P)                               \
    W(P, RAIL, rail, "horizontal, along the box")           \
    W(P, UPRIGHT, upright, "vertical")                      \
    W(P, CROSS, cross, "front to back")                     \
    W(P, SUPPORT, support, "behind a panel's seam or span") \
    W(P, BLOCK, block, "short, for a leg, a hinge, a seam or a curve")
#define WORDS_OF_facing(W, P)                 \
    W(P, PANEL, panel, "a sheet, screwed on") \
    W(P, WEBBING, webbing, "woven strips, stapled")
#define WORDS_OF_use(W, P)                               \
    W(P, COVERING, covering, "nobody leans on it")       \
    W(P, STRUCTURE, structure, "keeps the frame square") \
    W(P, BACK, back, "leaned on")                        \
    W(P, SEAT, seat, "sat on")                           \
    W(P, DECK, deck, "carries a mattress")
#define WORDS_OF_layer(W, P)                                       \
    W(P, FOAM, foam, "foam, glued")                                \
    W(P, BATTING, batting, "fluffy sheet over foam or wood")       \
    W(P, LINING, lining, "plain cloth under the cover, or inside") \
    W(P, COVER, cover, "the cloth that is seen")                   \
    W(P, WELT, welt, "covered cord in a seam or along an edge")    \
    W(P, OUTSIDE_BACK, outside_back, "cloth over an open back")    \
    W(P, DUST_COVER, dust_cover, "thin cloth under the piece")     \
    W(P, TRIM, trim, "nailheads, gimp or braid")
#define WORDS_OF_shape(W, P)                                   \
    W(P, SLAB, slab, "lies on the face")                       \
    W(P, WRAPPED, wrapped, "one piece pulled round the edges") \
    W(P, SEWN, sewn, "sewn with a boxing strip, pulled on")    \
    W(P, FLAT, flat, "flat, its edges turned in or stapled")   \
    W(P, RUN, run, "a line along edges")
#define WORDS_OF_ending(W, P)                                            \
    W(P, WRAP, wrap, "goes round the side and lands on the face behind") \
    W(P, SIDE, side, "goes round the edge and lands on the side")        \
    W(P, STOP, stop, "stops at the edge of the face")                    \
    W(P, SEWN, sewn, "sewn to the boxing strip")                         \
    W(P, OPEN, open, "the open side of a sewn cover; lands on the side")
#define WORDS_OF_finish(W, P)                         \
    W(P, RAW, raw, "edge left raw under the staples") \
    W(P, FOLDED, folded, "edge folded in")
#define WORDS_OF_closing(W, P)                                       \
    W(P, AUTO, auto, "by how the face is seen: never, a wall, seen") \
    W(P, RAW, raw, "cut to the edge and stapled, its edge raw")      \
    W(P, ROW, row, "edge folded in, one row of staples that shows")  \
    W(P, BLIND, blind,                                               \
      "top under a card strip, sides in strips or stitched; with a folded finish stapled")
#define WORDS_OF_fixing(W, P)                    \
    W(P, ALONE, alone, "its own row of staples") \
    W(P, TOGETHER, together, "in one row with the layer under it")
#define WORDS_OF_direction(W, P)                                  \
    W(P, UP, up, "the vertical of the piece runs along the roll") \
    W(P, ACROSS, across, "railroaded: the vertical of the piece runs across the roll")
#define WORDS_OF_seaming(W, P)                                                               \
    W(P, NEAR, near, "a full centre and equal sides, drawn in to a line near by that hides") \
    W(P, CENTRE, centre, "a full centre and equal sides, at no line")                        \
    W(P, LINE, line, "at the nearest line that hides the seams, however far in")             \
    W(P, MIDDLE, middle, "one seam down the middle, by the maker's word")
#define WORDS_OF_class(W, P)                                         \
    W(P, AUTO, auto, "worked out from the joins")                    \
    W(P, FREE, free, "stapled at the bench at any time")             \
    W(P, TRAPPED, trapped, "stapled before the join that covers it") \
    W(P, OPENING, opening, "left loose until a join is driven")      \
    W(P, SITE, site, "stapled in the room")
#define WORDS_OF_pattern(W, P)                               \
    W(P, DIAMOND, diamond, "rows set off by half a diamond") \
    W(P, SQUARE, square, "rows in line")                     \
    W(P, SHALLOW, shallow, "buttons pulled into uncut foam")
#define WORDS_OF_tufts(W, P)                                \
    W(P, BUTTONS, buttons, "buttons, pulled into the foam") \
    W(P, CHANNELS, channels, "upright channels, side by side; `across` of them")
#define WORDS_OF_allowance(W, P)                                            \
    W(P, AUTO, auto, "by the pattern: shallow, or by the pull")             \
    W(P, LEAST, least, "what the way down and up again takes, and no more") \
    W(P, SHALLOW, shallow, "a bit for each space: the foam is not cut")     \
    W(P, PULL, pull, "the pull once for each diamond, each way")            \
    W(P, GENEROUS, generous, "twice the foam for each diamond, each way")
#define WORDS_OF_target(W, P)                   \
    W(P, BOX, box, "another box of this build") \
    W(P, WALL, wall, "the wall")                \
    W(P, FLOOR, floor, "the floor")             \
    W(P, OBJECT, object, "a given object")      \
    W(P, OTHER_BUILD, other_build, "a box of another build of the set")
#define WORDS_OF_fastener(W, P)           \
    W(P, SCREW, screw, "wood screws")     \
    W(P, BOLT, bolt, "bolts with T-nuts") \
    W(P, REST, rest, "laid or hung on: blocks, cleats, its own weight")
#define WORDS_OF_head(W, P)                           \
    W(P, FREE, free, "whichever side can be reached") \
    W(P, A, a, "heads in the first box")              \
    W(P, B, b, "heads in the second box")
#define WORDS_OF_place(W, P)                     \
    W(P, BENCH, bench, "joined in the workshop") \
    W(P, SITE, site, "joined in the room")
#define WORDS_OF_treatment(W, P)                      \
    W(P, OPEN, open, "the cover is left open for it") \
    W(P, PIERCED, pierced, "the screw goes through a slit in the cover")
#define WORDS_OF_fitting(W, P)                                \
    W(P, LEG, leg, "leg")                                     \
    W(P, GLIDE, glide, "glide")                               \
    W(P, HINGE, hinge, "hinge")                               \
    W(P, STAY, stay, "lid stay")                              \
    W(P, CLEAT, cleat, "strip of wood that hangs or carries") \
    W(P, T_NUT, t_nut, "T-nut or insert")                     \
    W(P, BRACKET, bracket, "metal bracket")                   \
    W(P, BUTTON, button, "button outside a tufting field")    \
    W(P, ZIP, zip, "zip")                                     \
    W(P, OTHER, other, "anything else with a count")
#define WORDS_OF_passage(W, P)                               \
    W(P, DOOR, door, "door, measured open at a right angle") \
    W(P, HALL, hall, "hall or landing")                      \
    W(P, STAIR, stair, "stair")                              \
    W(P, LIFT, lift, "lift")                                 \
    W(P, VEHICLE, vehicle, "opening of the vehicle")
#define WORDS_OF_object(W, P)                \
    W(P, MATTRESS, mattress, "mattress")     \
    W(P, BED_FRAME, bed_frame, "bed frame")  \
    W(P, TABLE, table, "table")              \
    W(P, SOCKET, socket, "socket or switch") \
    W(P, OTHER, other, "anything else that is already there")
#define WORDS_OF_tool(W, P)                                     \
    W(P, DRIVER, driver, "drill or driver, in line")            \
    W(P, LONG_BIT, long_bit, "the driver with a long thin bit") \
    W(P, RIGHT_ANGLE, right_angle, "right-angle driver")        \
    W(P, STUBBY, stubby, "short screwdriver or ratchet")        \
    W(P, AIR_GUN, air_gun, "air or electric staple gun")        \
    W(P, HAND_GUN, hand_gun, "hand staple gun")                 \
    W(P, SAW, saw, "saw")                                       \
    W(P, SEWING_MACHINE, sewing_machine, "sewing machine")
#define WORDS_OF_stock(W, P)                                               \
    W(P, STICK, stick, "lumber by its section")                            \
    W(P, SHEET, sheet, "plywood or another sheet")                         \
    W(P, CLOTH, cloth, "cloth off a roll: cover, lining, dust cover")      \
    W(P, FOAM, foam, "foam slabs")                                         \
    W(P, BATTING, batting, "batting off a roll")                           \
    W(P, SCREW, screw, "wood screws")                                      \
    W(P, BOLT, bolt, "bolts and nuts")                                     \
    W(P, STAPLE, staple, "staples")                                        \
    W(P, NAIL, nail, "nailheads")                                          \
    W(P, STRIP, strip, "card strip, nail strip, webbing, gimp by length")  \
    W(P, BUTTON, button, "buttons")                                        \
    W(P, CORD, cord, "tufting cord, welt cord, thread by length")          \
    W(P, GLUE, glue, "wood glue by volume")                                \
    W(P, SPRAY, spray, "spray glue by area covered")                       \
    W(P, HARDWARE, hardware, "legs, hinges, stays, brackets by the piece") \
    W(P, OTHER, other, "anything else by the piece")
#define WORDS_OF_nature(W, P)                                                        \
    W(P, PLAIN, plain, "nothing out of the ordinary")                                \
    W(P, VINYL, vinyl, "cloth that does not give: vinyl, leather")                   \
    W(P, HEAVY, heavy, "heavy cloth: every seam takes some of it up")                \
    W(P, SOFT, soft, "foam that gives much, cut larger for a sewn cover")            \
    W(P, ELASTIC, elastic, "webbing that is stretched, not woven")                   \
    W(P, CARD, card, "card strip for blind tacking")                                 \
    W(P, TACK_STRIP, tack_strip, "metal strip with points, for the sides of a back") \
    W(P, THREAD, thread, "thread for the machine")                                   \
    W(P, STITCHING, stitching, "strong thread for stitches by hand")
#define WORDS_OF_wood(W, P)               \
    W(P, SOFT, soft, "softwood, plywood") \
    W(P, HARD, hard, "hardwood")
#define WORDS_OF_aisle(W, P)                              \
    W(P, LUMBER, lumber, "sticks")                        \
    W(P, SHEETS, sheets, "plywood and boards")            \
    W(P, FASTENERS, fasteners, "screws, bolts, staples")  \
    W(P, SOFT_GOODS, soft_goods, "foam, batting")         \
    W(P, CLOTH, cloth, "cover cloth, lining, dust cover") \
    W(P, TRIM, trim, "buttons, cord, nailheads, strips")  \
    W(P, ADHESIVES, adhesives, "glue and spray")          \
    W(P, HARDWARE, hardware, "legs, hinges, brackets, the rest")
#define WORDS_OF_taxed(W, P)                        \
    W(P, ADDED, added, "comes on top of the price") \
    W(P, INCLUDED, included, "is in the price")     \
    W(P, FREE, free, "is not asked for it")
#define WORDS_OF_origin(W, P)                               \
    W(P, BOUGHT, bought, "bought for the build")            \
    W(P, SHELF, shelf, "from the shelf")                    \
    W(P, REST, rest, "left of a piece that was cut before") \
    W(P, PART, part, "a part that is not needed as it was cut")

/* From each: enum side_word { SIDE_FRONT, ..., SIDE_COUNT } and the table words_side. */
#define VOCABULARIES(V)     \
    V(units, UNITS_WORD)    \
    V(state, STATE)         \
    V(side, SIDE)           \
    V(edge, EDGE)           \
    V(frame, FRAME)         \
    V(setting, SET)         \
    V(through, THROUGH)     \
    V(making, MAKING)       \
    V(outline, OUTLINE)     \
    V(axis, AXIS)           \
    V(seen, SEEN)           \
    V(member, MEMBER)       \
    V(facing, FACING)       \
    V(use, USE)             \
    V(layer, LAYER)         \
    V(shape, SHAPE)         \
    V(ending, ENDING)       \
    V(finish, FINISH)       \
    V(closing, CLOSING)     \
    V(fixing, FIXING)       \
    V(direction, DIRECTION) \
    V(seaming, SEAMING)     \
    V(class, CLASS)         \
    V(pattern, PATTERN)     \
    V(tufts, TUFTS)         \
    V(allowance, ALLOWANCE) \
    V(target, TARGET)       \
    V(fastener, FASTENER)   \
    V(head, HEAD)           \
    V(place, PLACE)         \
    V(treatment, TREATMENT) \
    V(fitting, FITTING)     \
    V(passage, PASSAGE)     \
    V(object, OBJECT)       \
    V(tool, TOOL)           \
    V(stock, STOCK)         \
    V(nature, NATURE)       \
    V(wood, WOOD)           \
    V(aisle, AISLE)         \
    V(taxed, TAXED)         \
    V(origin, ORIGIN)

#define WORD_ENUM(P, NAME, word, help) P##_##NAME,
#define WORDS_DECLARE(name, P)                                 \
    enum name##_word{WORDS_OF_##name(WORD_ENUM, P) P##_COUNT}; \
    extern const struct words words_##name;
VOCABULARIES(WORDS_DECLARE)
#undef WORDS_DECLARE
#undef WORD_ENUM

#endif
