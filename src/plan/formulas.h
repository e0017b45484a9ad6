/*
 * Every formula of the engine that gives a figure to a maker, as one table, from which
 * stuffover-trade(7) is written. The header that a formula belongs to says "formula KEY" beside it,
 * and a test holds the two against each other.
 *
 * Each line: key, formula, source, range it holds in, what is doubtful about it.
 */
#ifndef PLAN_FORMULAS_H
#define PLAN_FORMULAS_H

/* clang-format off: one line a field reads as a table */
#define FORMULAS_OF_WOOD(F)                                                                    \
    F("screw.gauge", "diameter = 0.060 in + 0.013 in for each number",                         \
      "GNU units 2.22; ASME B18.6.1 as reprinted", "gauges 0 to 24",                           \
      "metric screws sold for a gauge differ by some tenths of a millimetre")                  \
    F("wood.board_feet", "thickness x width x length / 144, nominal inches",                   \
      "GNU units 2.22; two texts on furniture making", "sticks with a nominal name",           \
      "none: it is a definition")                                                              \
    F("weight.part", "volume or area x density, fixings as a share of the wood",               \
      "plain arithmetic; densities are trade values", "any part",                              \
      "wood differs by a fifth from stick to stick; holes and curves are not taken off")       \
    F("wood.bend", "least radius of the next thickness of bend.*; in proportion beyond them",  \
      "American Plywood Association, as printed in Concrete Construction",                     \
      "dry sheets, bent once; 1/8 in agrees with FAA AC 43.13-1B",                             \
      "knots break sooner; wetted or kerfed sheets bend more, and bending ply does")           \
    F("beam.bend",                                                                             \
      "kb W L^3 / (E I) + ks W L / (G A'), I = b h^3 / 12, A' = 5 b h / 6, G = E / 16",        \
      "Wood Handbook, FPL GTR-190, equation 9-2 and table 9-1; A' and G from memory",          \
      "straight beams that bend by little, loaded for a short while",                          \
      "E differs by a quarter in one grade; joints give; loads that stay double it in years")  \
    F("beam.carry", "W = 8 f S / L spread, 4 f S / L in the middle, S = b h^2 / 6",            \
      "L. D. Berg, Safe Building", "as beam.bend",                                             \
      "no figure of the engine asks for a stress yet")                                         \
    F("strength.strip", "beam.bend of a strip with a person in its middle, at most L / 180",   \
      "strip and load: common practice, no source; limit: IBC table 1604.3",                   \
      "panels on supports across their longer way",                                            \
      "a panel that runs over several supports bends by less; face grain along them, by more") \
    F("strength.slat",                                                                         \
      "beam.bend with a person's share of a slat's pitch in 12 in, at most L / 60",            \
      "common practice, no source",                                                            \
      "slats under a mattress, held at both ends, between what they rest on",                  \
      "a mattress spreads the load further than a strip; a knot bends a slat by more")         \
    F("strength.tip", "push at the top = weight x depth / 2 / height", "derived",              \
      "a stiff piece on a level floor", "a carpet, a slope or a drawer tips it sooner")        \
    F("hold.screw.out", "2,850 G^2 D L pounds, inches",                                        \
      "older NDS in a handbook of civil engineering formulas, equation 6.37",                  \
      "one screw in side grain, in a lead hole; end grain: none",                              \
      "G is a guess of the species; plywood edges and cracked wood hold less")                 \
    F("hold.screw.side", "C D^2 pounds, C 4,800, 3,960, 3,240, 2,520 by group",                \
      "the same, equation 6.38 and table 6.2; the share below 7 D of bite from memory",        \
      "bite of 7 D and more; in proportion down to 4 D",                                       \
      "groups are taken by gravity, which is ours")                                            \
    F("hold.nail.out", "7,850 G^(5/2) D L pounds, at failure",                                 \
      "Wood Handbook equation 8-1, constants second hand", "side grain, seasoned wood",        \
      "a fifth of it is usually allowed")

#define FORMULAS_OF_CLOTH(F)                                                                 \
    F("cloth.widths", "least n with cut + 2 allowance (n - 1) <= n usable width", "derived", \
      "usable width over two allowances", "none beyond the allowance itself")                \
    F("cloth.repeat", "cut length rounded up to whole repeats",                              \
      "four trade and consumer articles share it", "plain and half-drop patterns",           \
      "a repeat printed on cloth creeps by some per cent")                                   \
    F("welt.strip", "pi x cord + 2 allowances, rounded up to an eighth",                     \
      "derived; upholsteryresource.com gives 1-1/2 in for 5/32 in", "round cord",            \
      "thick cloth takes a little more")                                                     \
    F("bias.area", "length = area of the cloth / width of the strip",                        \
      "five sewing articles share it", "whole cloth, no loss at the ends",                   \
      "a share is lost at each end: bias.efficiency")                                        \
    F("web.strips", "nearest whole of (inside + gap) / (strip + gap)", "derived",            \
      "strips side by side", "common practice decides the gap")                              \
    F("tuft.buttons", "(k + 1) m + k (m + 1) for diamonds, (m + 1) (k + 1) for squares",     \
      "derived by counting", "m across and k down", "none")                                  \
    F("tuft.least", "2 (sqrt((s / 2)^2 + d^2) - s / 2) for each space", "derived",           \
      "cloth that goes straight down", "cloth goes round, and takes more: make a trial")     \
    F("nail.spaces", "nearest whole of length / pitch; nails one more", "derived",           \
      "straight lines", "Johnson 1919 halves instead: powers of two")                        \
    F("staple.run", "length / pitch rounded up, one more on an open run",                    \
      "common practice, no source", "any edge", "hands do not keep a pitch to the staple")

#define FORMULAS_OF_CARE(F)                                                                        \
    F("lid.hinge", "gap = cloth of the lid + cloth below + lid.hinge.gap",                         \
      "common practice, no source", "butt hinges", "thick pile wants a trial")                     \
    F("lid.stay", "stay torque = weight of the finished lid x depth / 2, to 1.2 of it",            \
      "derived; that stays hold at every angle: US Consumer Product Safety Commission",            \
      "a lid of even weight, level when shut", "padding moves its middle: set stays when covered") \
    F("lift.niosh", "LC x 25 / H x (1 - 0.003 |V - 75|) x (0.82 + 4.5 / D) x (1 - 0.0032 A) x CM", \
      "DHHS (NIOSH) publication 94-110; multipliers seen in a textbook, AM, CM and bounds from "   \
      "memory",                                                                                    \
      "two hands, dry even floor, now and then",                                                   \
      "the positions of the hands are rules of thumb, no source; carrying is no lifting")          \
    F("lift.team", "two people 2/3 of the sum, three and four 1/2",                                \
      "HSE L23, paragraphs 119 and 120; four is ours", "up to four people",                        \
      "on a stair the lower one has most of it")                                                   \
    F("way.door", "the two smaller sides in the opening, straight or turned", "derived",           \
      "room to run in before and behind", "handles and hinges stick out: measure clear")           \
    F("way.corner", "(p^(2/3) + q^(2/3))^(3/2) - 2 c, or on end under the ceiling", "derived",     \
      "exact for halls of one width, else near", "skirting, lamps and rails take their share")     \
    F("way.stair", "head-room x stair.slope across the slope; the landing as a corner", "derived", \
      "straight flights", "winders and rails: try it with a board first")                          \
    F("way.lift", "lying, on end or tilted in the car's depth and height", "derived",              \
      "a car as wide and high as its door", "doors that do not open whole")

#define FORMULAS(F)      \
    FORMULAS_OF_WOOD(F)  \
    FORMULAS_OF_CLOTH(F) \
    FORMULAS_OF_CARE(F)
/* clang-format on */

#endif
