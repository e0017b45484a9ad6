/*
 * What the maker enters, as one table an entity. From each table come the struct, the JSON keys,
 * the columns of the store, the fields of the form on the screen and their ranges; nothing about a
 * field is said anywhere else (schema/ repeats the column names, and a test compares the two).
 *
 * Each line: type, name, value of a new item, least, most, vocabulary or target, help.
 *   TEXT    text of at most `most` characters; `least` 1 when it must not be empty
 *   DATE    text "2026-11-25" or empty; `least` 1 when it must not be empty
 *   LENGTH, COUNT, RATIO, MINUTES, ANGLE, AREA, VOLUME, DENSITY, AREA_MASS
 *           whole numbers as in base/quantity.h
 *   MONEY   minor units of the workshop's currency
 *   FLAG    0 or 1
 *   CHOICE  a value of the vocabulary named
 *   REF     key of an item of the entity named, 0 for none. `least` 1 when it must be given.
 *           An item hangs on the target of a reference whose `least` or `most` is 1, and goes when
 *           the target goes; any other reference is set to 0 then.
 * A number of 0 whose help says "nothing ..." means what the help says: the trade value, the rest
 * of the face, the stock's own size.
 */
#ifndef MODEL_FIELDS_H
#define MODEL_FIELDS_H

#define FIELDS_MM(mm) ((int64_t)((mm)*320.0))
#define FIELDS_ROOM FIELDS_MM(20000) /* no piece and no room is larger than this */
#define FIELDS_ANY_MONEY INT64_C(1000000000000)
#define FIELDS_LAST_KEY INT64_C(1000000000000000) /* exact as a double, so in any JSON */

/* ---- the workshop ---- */

#define FIELDS_OF_workshop(F)                                                                \
    F(TEXT, name, 0, 1, 60, none, "name of the workshop")                                    \
    F(TEXT, currency, 0, 3, 3, none, "currency, by its three letters")                       \
    F(COUNT, digits, 2, 0, 3, none, "decimal digits of the currency's smallest coin")        \
    F(CHOICE, units, 0, 0, 0, units, "units for showing, where a build has none of its own") \
    F(RATIO, skill, 1000000, 100000, 10000000, none, "minutes are multiplied by this")       \
    F(FLAG, helper, 0, 0, 1, none, "a second person can be had")                             \
    F(RATIO, tax, 0, 0, 1000000, none, "sales tax on what is bought")                        \
    F(MINUTES, session, 120000, 10000, 960000, none, "a usual session at the bench")         \
    F(COUNT, next_key, 1, 1, FIELDS_LAST_KEY, none, "the next key to be given out")          \
    F(FLAG, learner, 0, 0, 1, none, "the first of everything takes longer")

#define FIELDS_OF_tool(F)                                                                     \
    F(TEXT, name, 0, 1, 60, none, "what the tool is called here")                             \
    F(CHOICE, kind, 0, 0, 0, tool, "kind of tool")                                            \
    F(LENGTH, length, 0, 0, FIELDS_MM(1000), none, "room it needs in line, beside the screw") \
    F(LENGTH, radius, 0, 0, FIELDS_MM(300), none, "from its axis to a wall beside it")        \
    F(TEXT, note, 0, 0, 500, none, "note")

#define FIELDS_OF_set(F)                                                 \
    F(TEXT, name, 0, 1, 60, none, "builds made as one: name of the set") \
    F(MONEY, budget, 0, 0, FIELDS_ANY_MONEY, none, "budget of the set")  \
    F(TEXT, note, 0, 0, 500, none, "note")

#define FIELDS_OF_stock(F)                                                                        \
    F(TEXT, name, 0, 1, 60, none, "what it is called in the shop")                                \
    F(CHOICE, kind, 0, 0, 0, stock, "kind of stock")                                              \
    F(CHOICE, wood, 0, 0, 0, wood, "how hard it is")                                              \
    F(LENGTH, thickness, 0, 0, FIELDS_MM(500), none,                                              \
      "measured thickness: narrow side of a stick, sheet, foam, loft of batting")                 \
    F(LENGTH, thickness_sold, 0, 0, FIELDS_MM(500), none, "thickness it is sold as")              \
    F(LENGTH, width, 0, 0, FIELDS_MM(5000), none, "wide side of a stick, usable width of a roll") \
    F(LENGTH, length, 0, 0, FIELDS_MM(1000), none, "length of a screw or bolt, leg of a staple")  \
    F(COUNT, gauge, 0, 0, 30, none, "screw gauge number")                                         \
    F(LENGTH, diameter, 0, 0, FIELDS_MM(100), none, "of a bolt, a nailhead, a button, a cord")    \
    F(LENGTH, repeat_along, 0, 0, FIELDS_MM(3000), none, "pattern repeat along the roll")         \
    F(LENGTH, repeat_across, 0, 0, FIELDS_MM(3000), none, "pattern repeat across the roll")       \
    F(FLAG, half_drop, 0, 0, 1, none, "the pattern drops by half a repeat beside itself")         \
    F(FLAG, pile, 0, 0, 1, none, "pile or print with one way up")                                 \
    F(FLAG, railroad, 1, 0, 1, none, "may be railroaded")                                         \
    F(FLAG, grain, 0, 0, 1, none, "parts keep to the grain")                                      \
    F(LENGTH, least_cut, 0, 0, FIELDS_MM(10000), none, "shortest length the shop cuts")           \
    F(LENGTH, step_cut, 0, 0, FIELDS_MM(10000), none, "the shop cuts whole steps of this")        \
    F(DENSITY, density, 0, 0, 5000000, none, "weight by volume")                                  \
    F(AREA_MASS, area_mass, 0, 0, 100000000, none, "weight by area")                              \
    F(AREA, coverage, 0, 0, INT64_C(1000000000), none, "area that one can covers")                \
    F(TEXT, lot, 0, 0, 60, none, "dye lot")                                                       \
    F(TEXT, supplier, 0, 0, 60, none, "where it is bought")                                       \
    F(TEXT, note, 0, 0, 500, none, "note")                                                        \
    F(CHOICE, nature, 0, 0, 0, nature, "what it is like, where that counts")                      \
    F(TEXT, cloth, 0, 0, 60, none, "cloth that is made in several widths: one word for all of them")

#define FIELDS_OF_flaw(F)                                                                 \
    F(REF, stock, 0, 1, 0, stock, "the roll that has it")                                 \
    F(LENGTH, along, 0, 0, FIELDS_MM(100000), none,                                       \
      "where it begins along the roll, from the end that is cut first")                   \
    F(LENGTH, length, FIELDS_MM(50), 1, FIELDS_MM(10000), none, "length that it spoils")  \
    F(LENGTH, across, 0, 0, FIELDS_MM(5000), none, "where it begins, from the left edge") \
    F(LENGTH, width, 0, 0, FIELDS_MM(5000), none,                                         \
      "width that it spoils; nothing for all from there to the right edge")               \
    F(TEXT, note, 0, 0, 500, none, "note")

#define FIELDS_OF_offer(F)                                                     \
    F(REF, stock, 0, 1, 0, stock, "what is offered")                           \
    F(LENGTH, length, 0, 0, FIELDS_MM(100000), none,                           \
      "length of a stick, a sheet, a slab, a cut of cloth")                    \
    F(LENGTH, width, 0, 0, FIELDS_MM(10000), none, "width of a sheet or slab") \
    F(COUNT, pack, 1, 1, 1000000, none, "pieces in a pack")                    \
    F(VOLUME, volume, 0, 0, INT64_C(100000000), none, "content of a bottle")   \
    F(MONEY, price, 0, 0, FIELDS_ANY_MONEY, none,                              \
      "price of one: a stick, a sheet, a pack, a length of cloth")             \
    F(TEXT, supplier, 0, 0, 60, none, "where")                                 \
    F(DATE, dated, 0, 0, 10, none, "when this was the price")                  \
    F(TEXT, note, 0, 0, 500, none, "note")                                     \
    F(CHOICE, taxed, 0, 0, 0, taxed, "sales tax on its price")                 \
    F(RATIO, tax, 0, 0, 1000000, none, "its rate of tax; nothing for the workshop's")

/* What an offer cost before. It stays, whatever becomes of the offer. */
#define FIELDS_OF_past_price(F)                                                        \
    F(REF, stock, 0, 1, 0, stock, "what was offered")                                  \
    F(LENGTH, length, 0, 0, FIELDS_MM(100000), none, "length of it")                   \
    F(LENGTH, width, 0, 0, FIELDS_MM(10000), none, "width of it")                      \
    F(COUNT, pack, 1, 1, 1000000, none, "pieces in a pack")                            \
    F(VOLUME, volume, 0, 0, INT64_C(100000000), none, "content of a bottle")           \
    F(MONEY, price, 0, 0, FIELDS_ANY_MONEY, none, "price of one, as the offer had it") \
    F(TEXT, supplier, 0, 0, 60, none, "where")                                         \
    F(DATE, dated, 0, 0, 10, none, "when this was the price")

#define FIELDS_OF_supplier(F)                                                                      \
    F(TEXT, name, 0, 1, 60, none, "who it is, as offers and stock name the supplier")              \
    F(MONEY, delivery, 0, 0, FIELDS_ANY_MONEY, none, "what bringing one order costs, without tax") \
    F(MONEY, free_from, 0, 0, FIELDS_ANY_MONEY, none,                                              \
      "an order for this much without tax is brought for nothing; nothing: never")                 \
    F(TEXT, note, 0, 0, 500, none, "note")

#define FIELDS_OF_leftover(F)                                     \
    F(REF, stock, 0, 1, 0, stock, "what it is")                   \
    F(LENGTH, length, 0, 0, FIELDS_MM(100000), none, "length")    \
    F(LENGTH, width, 0, 0, FIELDS_MM(10000), none, "width")       \
    F(COUNT, count, 1, 0, 1000000, none, "how many")              \
    F(TEXT, place, 0, 0, 60, none, "where it lies")               \
    F(TEXT, from_build, 0, 0, 60, none, "build it was left from") \
    F(TEXT, kept_for, 0, 0, 60, none, "build it is kept for")     \
    F(TEXT, note, 0, 0, 500, none, "note")                        \
    F(TEXT, from_step, 0, 0, 80, none, "step of that build that left it")

/* A trade value changed: for the whole workshop, and for one build. */
#define FIELDS_OF_value(F)                       \
    F(TEXT, name, 0, 1, 60, none, "trade value") \
    F(TEXT, value, 0, 1, 40, none, "what it is here, with its unit")

#define FIELDS_OF_shop_value(F) FIELDS_OF_value(F)
#define FIELDS_OF_build_value(F) FIELDS_OF_value(F)

#define FIELDS_OF_pace(F)                                                                   \
    F(TEXT, name, 0, 1, 20, none, "kind of step, by the word its lasting name begins with") \
    F(MINUTES, usual, 0, 0, INT64_C(1000000000), none, "what the timed ones usually take")  \
    F(MINUTES, took, 0, 0, INT64_C(1000000000), none, "what they took here")                \
    F(COUNT, count, 0, 0, 1000000, none, "how many were timed")

#define FIELDS_OF_spending(F)                                                                     \
    F(DATE, dated, 0, 1, 10, none, "day it was paid")                                             \
    F(MONEY, amount, 0, -FIELDS_ANY_MONEY, FIELDS_ANY_MONEY, none, "what was paid, tax included") \
    F(MONEY, tax, 0, -FIELDS_ANY_MONEY, FIELDS_ANY_MONEY, none, "of it, tax")                     \
    F(TEXT, what, 0, 1, 120, none, "what was bought")                                             \
    F(COUNT, count, 0, 0, 1000000, none, "how many, as the shopping list counts them")            \
    F(REF, stock, 0, 0, 0, stock, "which stock, where it is known")                               \
    F(CHOICE, aisle, 0, 0, 0, aisle, "aisle")                                                     \
    F(TEXT, supplier, 0, 0, 60, none, "where")                                                    \
    F(TEXT, note, 0, 0, 500, none, "note")                                                        \
    F(LENGTH, length, 0, 0, FIELDS_MM(100000), none, "length of one, where it is known")          \
    F(LENGTH, width, 0, 0, FIELDS_MM(10000), none, "width of one, where it is known")             \
    F(COUNT, pack, 0, 0, 1000000, none, "pieces in a pack of it, where it is known")              \
    F(FLAG, settles, 0, 0, 1, none, "its line of the list is paid with it, whatever it came to")

#define FIELDS_OF_shop_spend(F) FIELDS_OF_spending(F)
#define FIELDS_OF_spend(F) FIELDS_OF_spending(F)

/* ---- a build ---- */

#define FIELDS_OF_build(F)                                                  \
    F(TEXT, name, 0, 1, 60, none, "name of the build")                      \
    F(CHOICE, state, 0, 0, 0, state, "how far it is")                       \
    F(CHOICE, units, 0, 0, 0, units, "units it is made in")                 \
    F(TEXT, note, 0, 0, 2000, none, "note")                                 \
    F(MONEY, budget, 0, 0, FIELDS_ANY_MONEY, none, "money there is for it") \
    F(MONEY, ready_made, 0, 0, FIELDS_ANY_MONEY, none,                      \
      "price of the ready-made piece it stands in for")                     \
    F(DATE, due, 0, 0, 10, none, "when it is wanted")                       \
    F(MINUTES, week, 0, 0, 10080000, none, "bench time a week")             \
    F(REF, set, 0, 0, 0, set, "set it belongs to")                          \
    F(COUNT, next_key, 1, 1, FIELDS_LAST_KEY, none, "the next key to be given out")

#define FIELDS_OF_passage(F)                                                                     \
    F(CHOICE, kind, 0, 0, 0, passage, "what has to be passed")                                   \
    F(TEXT, name, 0, 0, 60, none, "which one")                                                   \
    F(LENGTH, width, 0, 0, FIELDS_ROOM, none, "clear width")                                     \
    F(LENGTH, height, 0, 0, FIELDS_ROOM, none, "clear height")                                   \
    F(LENGTH, length, 0, 0, FIELDS_ROOM, none,                                                   \
      "length; for a hall with a corner, width after it; of a stair its landing, of a lift its " \
      "depth, of a vehicle its floor")

#define FIELDS_OF_wall(F)                                                                     \
    F(CHOICE, side, 0, 0, 0, side, "which side of the piece it is on")                        \
    F(LENGTH, gap, 0, 0, FIELDS_ROOM, none, "from the piece to it, when all is done")         \
    F(LENGTH, skirting_height, 0, 0, FIELDS_MM(1000), none, "height of the skirting")         \
    F(LENGTH, skirting_depth, 0, 0, FIELDS_MM(300), none, "how far the skirting stands out")  \
    F(LENGTH, first_stud, 0, 0, FIELDS_ROOM, none, "from the piece's left to the first stud") \
    F(LENGTH, stud_pitch, 0, 0, FIELDS_MM(2000), none, "stud to stud")

#define FIELDS_OF_object(F)                                                   \
    F(CHOICE, kind, 0, 0, 0, object, "what is already there")                 \
    F(TEXT, name, 0, 0, 60, none, "which one")                                \
    F(LENGTH, x, 0, -FIELDS_ROOM, FIELDS_ROOM, none, "from the piece's left") \
    F(LENGTH, y, 0, -FIELDS_ROOM, FIELDS_ROOM, none, "from the piece's back") \
    F(LENGTH, z, 0, -FIELDS_ROOM, FIELDS_ROOM, none, "from the floor")        \
    F(LENGTH, width, 0, 0, FIELDS_ROOM, none, "size along x")                 \
    F(LENGTH, depth, 0, 0, FIELDS_ROOM, none, "size along y")                 \
    F(LENGTH, height, 0, 0, FIELDS_ROOM, none, "size along z")

#define FIELDS_OF_box(F)                                                                      \
    F(TEXT, name, 0, 1, 20, none, "letter or short name, written on every part")              \
    F(CHOICE, frame, 0, 0, 0, frame, "how it is framed")                                      \
    F(LENGTH, width, 0, FIELDS_MM(10), FIELDS_MM(6000), none,                                 \
      "outer size of frame and panels, left to right")                                        \
    F(LENGTH, depth, 0, FIELDS_MM(3), FIELDS_MM(6000), none, "outer size, back to front")      \
    F(LENGTH, height, 0, FIELDS_MM(3), FIELDS_MM(6000), none, "outer size, bottom to top")     \
    F(REF, stick, 0, 0, 0, stock, "sticks it is framed from")                                 \
    F(CHOICE, stick_set, 0, 0, 0, setting, "how the stick is set")                            \
    F(CHOICE, through, 0, 0, 0, through, "which members run through")                         \
    F(CHOICE, supports, 0, 0, 0, making, "who places uprights and supports between the ends") \
    F(CHOICE, crosses, 0, 0, 0, making, "who places the crosses")                             \
    F(CHOICE, main_side, 0, 0, 0, side, "face that the outline and the cover are seen from")  \
    F(CHOICE, outline, 0, 0, 0, outline, "outline of the main face")                          \
    F(LENGTH, rise, 0, 0, FIELDS_MM(3000), none, "height of the arch, shoulder or slope")     \
    F(CHOICE, lean_axis, 0, 0, 0, axis, "axis it leans about")                                \
    F(ANGLE, lean, 0, -45000, 45000, none,                                                    \
      "how far it leans: its top to the back (x) or right (y), its front to the right (z)")   \
    F(REF, mirror_of, 0, 0, 0, box, "box it is the mirror image of")                          \
    F(TEXT, note, 0, 0, 500, none, "note")

#define FIELDS_OF_face(F)                  \
    F(REF, box, 0, 1, 0, box, "box")       \
    F(CHOICE, side, 0, 0, 0, side, "face") \
    F(CHOICE, seen, 0, 0, 0, seen, "how it is seen")

#define FIELDS_OF_facing(F)                                                                      \
    F(REF, box, 0, 1, 0, box, "box")                                                             \
    F(CHOICE, side, 0, 0, 0, side, "face it is fixed on")                                        \
    F(CHOICE, kind, 0, 0, 0, facing, "panel or webbing")                                         \
    F(REF, stock, 0, 1, 0, stock, "sheet or webbing")                                            \
    F(CHOICE, use, 0, 0, 0, use, "what it has to carry")                                         \
    F(LENGTH, u, 0, 0, FIELDS_MM(6000), none, "where it begins, from the face's left")           \
    F(LENGTH, v, 0, 0, FIELDS_MM(6000), none, "where it begins, from the face's bottom or back") \
    F(LENGTH, width, 0, 0, FIELDS_MM(6000), none, "width; nothing for the rest of the face")     \
    F(LENGTH, height, 0, 0, FIELDS_MM(6000), none, "height; nothing for the rest of the face")   \
    F(FLAG, glued, 1, 0, 1, none, "glued as well")                                               \
    F(FLAG, loose, 0, 0, 1, none, "drops in or lifts off: not screwed to this box")              \
    F(LENGTH, pitch, 0, 0, FIELDS_MM(1000), none,                                                \
      "screw to screw along edges; nothing for the trade value, and never under 20 mm")

#define FIELDS_OF_member(F)                                                                \
    F(REF, box, 0, 1, 0, box, "box")                                                       \
    F(CHOICE, kind, 0, 0, 0, member, "kind of member")                                     \
    F(CHOICE, axis, 0, 0, 0, axis, "axis it runs along")                                   \
    F(LENGTH, x, 0, 0, FIELDS_MM(6000), none, "its left end or side, from the box's left") \
    F(LENGTH, y, 0, 0, FIELDS_MM(6000), none, "its back, from the frame's back")           \
    F(LENGTH, z, 0, 0, FIELDS_MM(6000), none, "its bottom, from the box's bottom")         \
    F(LENGTH, length, 0, 0, FIELDS_MM(6000), none,                                         \
      "length; nothing to reach what it runs against")                                     \
    F(REF, stick, 0, 0, 0, stock, "stick, where it is not the box's")                      \
    F(CHOICE, stick_set, 0, 0, 0, setting, "how the stick is set")                         \
    F(TEXT, name, 0, 0, 20, none, "what is written on it; nothing for a label of ours")

#define FIELDS_OF_outline_point(F)                                    \
    F(REF, box, 0, 1, 0, box, "box")                                  \
    F(COUNT, rank, 0, 0, 1000, none, "which in order, going round")   \
    F(LENGTH, u, 0, 0, FIELDS_MM(6000), none, "from the face's left") \
    F(LENGTH, v, 0, 0, FIELDS_MM(6000), none, "from the face's bottom")

#define FIELDS_OF_cutout(F)                                                     \
    F(REF, box, 0, 1, 0, box, "box")                                            \
    F(CHOICE, side, 0, 0, 0, side, "face")                                      \
    F(LENGTH, u, 0, 0, FIELDS_MM(6000), none, "from the face's left")           \
    F(LENGTH, v, 0, 0, FIELDS_MM(6000), none, "from the face's bottom or back") \
    F(LENGTH, width, 0, 0, FIELDS_MM(6000), none, "width")                      \
    F(LENGTH, height, 0, 0, FIELDS_MM(6000), none, "height")                    \
    F(TEXT, purpose, 0, 0, 60, none, "what it is for")

#define FIELDS_OF_group(F) F(TEXT, name, 0, 1, 40, none, "boxes that one layer covers together")

#define FIELDS_OF_group_box(F)             \
    F(REF, group, 0, 1, 0, group, "group") \
    F(REF, box, 0, 1, 0, box, "box in it")

#define FIELDS_OF_layer(F)                                                                       \
    F(REF, box, 0, 0, 1, box, "box it lies on")                                                  \
    F(REF, group, 0, 0, 1, group, "or the joined group")                                         \
    F(CHOICE, kind, 0, 0, 0, layer, "what it is")                                                \
    F(CHOICE, shape, 0, 0, 0, shape, "how it is made")                                           \
    F(CHOICE, side, 0, 0, 0, side, "face it lies on")                                            \
    F(FLAG, both, 0, 0, 1, none, "the opposite face as well: a sleeve, a wing")                  \
    F(REF, stock, 0, 1, 0, stock, "material")                                                    \
    F(COUNT, rank, 1, 0, 100, none, "order from the wood outward")                               \
    F(LENGTH, u, 0, 0, FIELDS_MM(6000), none, "where it begins, from the face's left")           \
    F(LENGTH, v, 0, 0, FIELDS_MM(6000), none, "where it begins, from the face's bottom or back") \
    F(LENGTH, width, 0, 0, FIELDS_MM(6000), none, "width; nothing for the rest of the face")     \
    F(LENGTH, height, 0, 0, FIELDS_MM(6000), none, "height; nothing for the rest of the face")   \
    F(LENGTH, thickness, 0, 0, FIELDS_MM(500), none, "thickness; nothing for the stock's")       \
    F(CHOICE, left, 0, 0, 0, ending, "how it ends at the face's left")                           \
    F(CHOICE, right, 0, 0, 0, ending, "how it ends at the face's right")                         \
    F(CHOICE, top, 0, 0, 0, ending, "how it ends at the face's top")                             \
    F(CHOICE, bottom, 0, 0, 0, ending, "how it ends at the face's bottom")                       \
    F(REF, land_box, 0, 0, 0, box, "box it lands on, where it is another one")                   \
    F(CHOICE, finish, 0, 0, 0, finish, "its stapled edges")                                      \
    F(CHOICE, fixing, 0, 0, 0, fixing, "its staples")                                            \
    F(CHOICE, direction, 0, 0, 0, direction, "how it lies on the roll")                          \
    F(FLAG, seams, 1, 0, 1, none, "may be sewn from several widths")                             \
    F(LENGTH, boxing, 0, 0, FIELDS_MM(3000), none,                                               \
      "depth of the boxing; nothing for the box's thickness")                                    \
    F(TEXT, note, 0, 0, 500, none, "note")                                                       \
    F(CHOICE, closing, 0, 0, 0, closing,                                                         \
      "how an outside back is fixed; raw: linings and dust covers, too")                         \
    F(CHOICE, seaming, 0, 0, 0, seaming, "where the seams between its widths fall")              \
    F(REF, thin, 0, 0, 0, stock, "thin cloth that is sewn on below, where nobody sees it")       \
    F(LENGTH, thin_height, 0, 0, FIELDS_MM(6000), none,                                          \
      "how far up the thin cloth reaches, from where the layer begins")                          \
    F(FLAG, unmatched, 0, 0, 1, none, "the pattern of its cloth need not meet that of others")   \
    F(LENGTH, motif, 0, -FIELDS_MM(3000), FIELDS_MM(3000), none,                                 \
      "from its middle to the line of the pattern that all keep to; to the right")               \
    F(FLAG, slip, 0, 0, 1, none, "a sewn cover that slips on and off: hemmed, not stapled")      \
    F(FLAG, doubled, 0, 0, 1, none, "a welt of two cords side by side")

#define FIELDS_OF_layer_edge(F)                                                             \
    F(REF, layer, 0, 1, 0, layer, "layer")                                                  \
    F(CHOICE, edge, 0, 0, 0, edge, "edge of it")                                            \
    F(CHOICE, class, 0, 0, 0, class, "when it is stapled")                                  \
    F(LENGTH, landing, 0, 0, FIELDS_MM(1000), none, "landing; nothing for the trade value") \
    F(LENGTH, handle, 0, 0, FIELDS_MM(1000), none, "handle; nothing for the trade value")   \
    F(LENGTH, pitch, 0, 0, FIELDS_MM(1000), none, "staple to staple; nothing for the trade value")

#define FIELDS_OF_tufting(F)                                                            \
    F(REF, layer, 0, 1, 0, layer, "cover that is tufted")                               \
    F(CHOICE, pattern, 0, 0, 0, pattern, "pattern")                                     \
    F(COUNT, across, 0, 1, 100, none, "diamonds or squares across")                     \
    F(COUNT, down, 0, 1, 100, none, "diamonds or squares down")                         \
    F(LENGTH, border, 0, 0, FIELDS_MM(1000), none,                                      \
      "edge to the outer button; nothing for the trade value")                          \
    F(LENGTH, pull, 0, 0, FIELDS_MM(300), none, "how deep the buttons are pulled")      \
    F(REF, button, 0, 0, 0, stock, "buttons")                                           \
    F(REF, cord, 0, 0, 0, stock, "cord")                                                \
    F(CHOICE, made, 0, 0, 0, tufts, "buttons or channels")                              \
    F(CHOICE, allowance, 0, 0, 0, allowance, "how the cloth that it takes is reckoned") \
    F(LENGTH, trial_across, 0, 0, FIELDS_MM(1500), none,                                \
      "cloth that one diamond or channel took across, in a trial; nothing without one") \
    F(LENGTH, trial_up, 0, 0, FIELDS_MM(1500), none, "and up")

#define FIELDS_OF_join(F)                                                               \
    F(TEXT, name, 0, 1, 20, none, "short name, written beside its holes")               \
    F(REF, box_a, 0, 1, 0, box, "first box")                                            \
    F(CHOICE, side_a, 0, 0, 0, side, "face of the first box")                           \
    F(CHOICE, target, 0, 0, 0, target, "what it is joined to")                          \
    F(REF, box_b, 0, 0, 1, box, "second box")                                           \
    F(CHOICE, side_b, 0, 0, 0, side, "face of the second box")                          \
    F(REF, object, 0, 0, 1, object, "or the given object")                              \
    F(TEXT, other_build, 0, 0, 60, none, "or the other build, by name")                 \
    F(TEXT, other_box, 0, 0, 20, none, "and its box, by name")                          \
    F(LENGTH, offset_u, 0, -FIELDS_MM(6000), FIELDS_MM(6000), none,                     \
      "on the first face, from its left to where the second box begins")                \
    F(LENGTH, offset_v, 0, -FIELDS_MM(6000), FIELDS_MM(6000), none,                     \
      "on the first face, from its bottom or back to where the second box begins")      \
    F(CHOICE, fastener, 0, 0, 0, fastener, "what holds it")                             \
    F(REF, stock, 0, 0, 0, stock, "which; nothing lets the program choose")             \
    F(CHOICE, head, 0, 0, 0, head, "where the heads are")                               \
    F(CHOICE, place, 0, 0, 0, place, "bench or room")                                   \
    F(CHOICE, treatment, 0, 0, 0, treatment, "what is done with cloth in the way")      \
    F(FLAG, optional, 0, 0, 1, none, "can be left out")                                 \
    F(COUNT, count, 0, 0, 200, none, "points in a row; nothing lets the program count") \
    F(LENGTH, pitch, 0, 0, FIELDS_MM(3000), none,                                       \
      "point to point at most; nothing for the trade value")                            \
    F(LENGTH, end, 0, 0, FIELDS_MM(1000), none,                                         \
      "first point from the end; nothing for the trade value")                          \
    F(LENGTH, cloth, 0, 0, FIELDS_MM(100), none,                                        \
      "cloth in the joint, pressed; nothing to count the covers")                       \
    F(TEXT, note, 0, 0, 500, none, "note")

#define FIELDS_OF_point(F)                                                                  \
    F(REF, join, 0, 1, 0, join, "join")                                                     \
    F(LENGTH, u, 0, 0, FIELDS_MM(6000), none, "on the first face, from its left")           \
    F(LENGTH, v, 0, 0, FIELDS_MM(6000), none, "on the first face, from its bottom or back") \
    F(FLAG, existing, 0, 0, 1, none, "the hole is already there")

#define FIELDS_OF_opening(F)                                                            \
    F(REF, layer, 0, 1, 0, layer, "layer left open")                                    \
    F(CHOICE, edge, 0, 0, 0, edge, "on which edge")                                     \
    F(LENGTH, begin, 0, 0, FIELDS_MM(6000), none, "from the edge's left or bottom end") \
    F(LENGTH, length, 0, 0, FIELDS_MM(6000), none, "length")                            \
    F(REF, join, 0, 0, 0, join, "join it is left for")

#define FIELDS_OF_fitting(F)                                                        \
    F(REF, box, 0, 1, 0, box, "box")                                                \
    F(CHOICE, kind, 0, 0, 0, fitting, "kind of fitting")                            \
    F(TEXT, name, 0, 0, 60, none, "which one")                                      \
    F(REF, stock, 0, 0, 0, stock, "from stock")                                     \
    F(CHOICE, side, 0, 0, 0, side, "face it is fixed to")                           \
    F(LENGTH, u, 0, 0, FIELDS_MM(6000), none, "from the face's left")               \
    F(LENGTH, v, 0, 0, FIELDS_MM(6000), none, "from the face's bottom or back")     \
    F(LENGTH, length, 0, 0, FIELDS_MM(6000), none, "length of a cleat, zip or run") \
    F(COUNT, count, 1, 0, 1000, none, "how many")                                   \
    F(REF, screw, 0, 0, 0, stock, "screws it takes")                                \
    F(COUNT, screws, 0, 0, 1000, none, "screws for each")

/* Anything with a price that the engine does not work out: "1 tin of wax". */
#define FIELDS_OF_extra(F)                                                                  \
    F(TEXT, what, 0, 1, 120, none, "what else is needed")                                   \
    F(REF, stock, 0, 0, 0, stock, "from stock")                                             \
    F(COUNT, count, 1, 0, 1000000, none, "how many packs")                                  \
    F(MONEY, price, 0, 0, FIELDS_ANY_MONEY, none, "price of one, where it is not in stock") \
    F(CHOICE, aisle, 0, 0, 0, aisle, "aisle")

/* ---- what was taken: done at the bench, and facts from then on ---- */

#define FIELDS_OF_tick(F)                                                    \
    F(TEXT, step, 0, 1, 80, none, "the step's lasting name")                 \
    F(TEXT, at, 0, 0, 20, none, "when it was ticked")                        \
    F(MINUTES, minutes, 0, 0, 100000000, none, "how long it took")           \
    F(TEXT, content, 0, 0, 16, none, "digest of what the step said then")    \
    F(TEXT, note, 0, 0, 500, none, "note")                                   \
    F(TEXT, said, 0, 0, 8000, none, "what the step said then, line by line") \
    F(MINUTES, usual, 0, 0, 100000000, none, "how long it takes at the usual pace")

#define FIELDS_OF_timing(F)                                                              \
    F(TEXT, step, 0, 1, 80, none, "the step's lasting name")                             \
    F(TEXT, began, 0, 0, 20, none, "when the clock was started; nothing when it stands") \
    F(MINUTES, minutes, 0, 0, 100000000, none, "on the clock before that")

#define FIELDS_OF_measure(F)                            \
    F(REF, tick, 0, 0, 0, tick, "step it was taken in") \
    F(REF, box, 0, 0, 1, box, "box measured")           \
    F(REF, stock, 0, 0, 1, stock, "or stock measured")  \
    F(TEXT, what, 0, 1, 40, none, "what was measured")  \
    F(LENGTH, value, 0, 0, FIELDS_ROOM, none, "the measure")

#define FIELDS_OF_hole(F)                                                         \
    F(REF, tick, 0, 1, 0, tick, "step it was drilled in")                         \
    F(REF, join, 0, 1, 0, join, "join")                                           \
    F(COUNT, rank, 0, 0, 1000, none, "which in the row")                          \
    F(LENGTH, u, 0, 0, FIELDS_MM(6000), none, "on the first face, from its left") \
    F(LENGTH, v, 0, 0, FIELDS_MM(6000), none, "on the first face, from its bottom or back")

/* A stick, a sheet or a slab of foam that was cut; rolls are not written down so. */
#define FIELDS_OF_cut_stock(F)                                                         \
    F(REF, tick, 0, 1, 0, tick, "step it was cut in")                                  \
    F(CHOICE, origin, 0, 0, 0, origin, "where it came from")                           \
    F(TEXT, part, 0, 0, 40, none, "label of the part that it was before")              \
    F(LENGTH, length, 0, 0, FIELDS_MM(100000), none, "length before it was cut")       \
    F(LENGTH, width, 0, 0, FIELDS_MM(10000), none, "width before it was cut")          \
    F(COUNT, pack, 0, 0, 1000000, none, "pieces in the pack it was bought in")         \
    F(LENGTH, rest, 0, 0, FIELDS_MM(100000), none, "length of the largest piece left") \
    F(LENGTH, rest_across, 0, 0, FIELDS_MM(10000), none, "width of that piece")        \
    F(FLAG, kept, 0, 0, 1, none, "that piece was put on the shelf")

#define FIELDS_OF_cut_part(F)                                                  \
    F(REF, tick, 0, 1, 0, tick, "step it was cut in")                          \
    F(TEXT, part, 0, 1, 40, none, "label of the part")                         \
    F(LENGTH, length, 0, 0, FIELDS_ROOM, none, "length it was cut to")         \
    F(LENGTH, width, 0, 0, FIELDS_ROOM, none, "width it was cut to")           \
    F(FLAG, spoiled, 0, 0, 1, none, "spoiled, to be cut anew")                 \
    F(REF, box, 0, 0, 0, box, "box it was cut for")                            \
    F(REF, cut_stock, 0, 0, 0, cut_stock, "what it was cut from")              \
    F(LENGTH, along, 0, 0, FIELDS_MM(100000), none, "where it lay along that") \
    F(LENGTH, across, 0, 0, FIELDS_MM(10000), none, "and across")              \
    F(FLAG, turned, 0, 0, 1, none, "its length lay across")

#define FIELDS_OF_left_out(F) F(REF, join, 0, 1, 0, join, "optional join that was left out")

#define FIELDS_OF_bought(F)                                           \
    F(REF, tick, 0, 1, 0, tick, "step it was bought in")              \
    F(REF, stock, 0, 1, 0, stock, "what was bought")                  \
    F(LENGTH, length, 0, 0, FIELDS_MM(100000), none, "length of one") \
    F(LENGTH, width, 0, 0, FIELDS_MM(10000), none, "width of one")    \
    F(COUNT, packs, 0, 0, 1000000, none, "how many")                  \
    F(COUNT, pack, 0, 0, 1000000, none, "pieces in one, where it is known")

#define FIELDS_OF_layout(F)                                           \
    F(TEXT, job, 0, 1, 16, none, "digest of the cutting job")         \
    F(TEXT, content, 0, 1, 100000, none, "the layout that was taken") \
    F(REF, tick, 0, 0, 1, tick, "step that what it is cut from was bought in")

/* ---- the entities: struct, list, help; in the order of files, tables and columns ---- */

#define SHOP_ENTITIES(E)                                                  \
    E(tool, tools, "tools at hand")                                       \
    E(set, sets, "sets of builds")                                        \
    E(stock, stocks, "what can be bought")                                \
    E(offer, offers, "sizes and packs with their prices")                 \
    E(past_price, past_prices, "what sizes and packs cost before")        \
    E(supplier, suppliers, "suppliers, and what they bring an order for") \
    E(flaw, flaws, "flaws of a roll, to be cut round")                    \
    E(leftover, leftovers, "the shelf")                                   \
    E(shop_value, shop_values, "trade values of the workshop")            \
    E(shop_spend, shop_spends, "spend for the shelf")                     \
    E(pace, paces, "how long kinds of steps take here")

#define BUILD_ENTITIES(E)                                     \
    E(build_value, build_values, "trade values of the build") \
    E(passage, passages, "the way into the room")             \
    E(wall, walls, "walls of the room")                       \
    E(object, objects, "given objects")                       \
    E(box, boxes, "frame boxes")                              \
    E(face, faces, "how faces are seen")                      \
    E(facing, facings, "panels and webbing")                  \
    E(member, members, "members placed by hand")              \
    E(outline_point, outline_points, "points of an outline")  \
    E(cutout, cutouts, "holes for sockets, cables, hands")    \
    E(group, groups, "joined groups")                         \
    E(group_box, group_boxes, "boxes of joined groups")       \
    E(layer, layers, "covering layers")                       \
    E(layer_edge, layer_edges, "edges of layers by hand")     \
    E(tufting, tuftings, "tufting fields")                    \
    E(join, joins, "joins")                                   \
    E(point, points, "attachment points by hand")             \
    E(opening, openings, "openings by hand")                  \
    E(fitting, fittings, "fittings")                          \
    E(extra, extras, "what else is bought")                   \
    E(spend, spends, "spend")                                 \
    E(tick, ticks, "steps done")                              \
    E(timing, timings, "steps on the clock")                  \
    E(measure, measures, "measures taken")                    \
    E(hole, holes, "holes drilled")                           \
    E(cut_stock, cut_stocks, "sticks, sheets and foam cut")   \
    E(cut_part, cut_parts, "parts cut")                       \
    E(left_out, left_outs, "optional joins left out")         \
    E(bought, boughts, "what was bought")                     \
    E(layout, layouts, "cutting layouts taken")

#define ENTITIES(E)  \
    SHOP_ENTITIES(E) \
    BUILD_ENTITIES(E)

#endif
