/*
 * Published figures, each with its source, how surely it is known, and what of ours is held against
 * it. test_published checks them; stuffover-trade(7) lists them.
 *
 * Each line: topic, what, ours (an expression of test_published.c), the published figure, how far
 * ours may be from it, source, how surely the figure was seen: SEEN in the source, SECOND on a page
 * that repeats the source, MEMORY.
 */
#ifndef PUBLISHED_H
#define PUBLISHED_H

/* clang-format off: one fact a line or two */
#define PUBLISHED_OF_WOOD(F) \
    F("dressed sizes", "1x2, wide side, in", \
      stick_wide("1x2"), 1.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "1x3, wide side, in", \
      stick_wide("1x3"), 2.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "1x4, wide side, in", \
      stick_wide("1x4"), 3.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "1x6, wide side, in", \
      stick_wide("1x6"), 5.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "1x8, wide side, in", \
      stick_wide("1x8"), 7.25, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "1x10, wide side, in", \
      stick_wide("1x10"), 9.25, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "1x12, wide side, in", \
      stick_wide("1x12"), 11.25, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "2x2, wide side, in", \
      stick_wide("2x2"), 1.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "2x3, wide side, in", \
      stick_wide("2x3"), 2.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "2x4, wide side, in", \
      stick_wide("2x4"), 3.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "2x6, wide side, in", \
      stick_wide("2x6"), 5.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "2x8, wide side, in", \
      stick_wide("2x8"), 7.25, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "2x10, wide side, in", \
      stick_wide("2x10"), 9.25, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "2x12, wide side, in", \
      stick_wide("2x12"), 11.25, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "4x4, wide side, in", \
      stick_wide("4x4"), 3.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("dressed sizes", "4x6, wide side, in", \
      stick_wide("4x6"), 5.5, 0, \
      "ALS (NIST PS 20) dry sizes, Engineering ToolBox d_1452", SECOND) \
    F("weights", "1x2 at 35 lb/ft3, lb a foot", \
      stick_pounds("1x2", 35), 0.27, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "1x4 at 35 lb/ft3, lb a foot", \
      stick_pounds("1x4", 35), 0.64, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "1x6 at 35 lb/ft3, lb a foot", \
      stick_pounds("1x6", 35), 1.0, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "1x8 at 35 lb/ft3, lb a foot", \
      stick_pounds("1x8", 35), 1.32, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "2x2 at 35 lb/ft3, lb a foot", \
      stick_pounds("2x2", 35), 0.55, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "2x4 at 35 lb/ft3, lb a foot", \
      stick_pounds("2x4", 35), 1.28, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "2x6 at 35 lb/ft3, lb a foot", \
      stick_pounds("2x6", 35), 2.0, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "2x8 at 35 lb/ft3, lb a foot", \
      stick_pounds("2x8", 35), 2.64, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("weights", "4x4 at 35 lb/ft3, lb a foot", \
      stick_pounds("4x4", 35), 2.98, 0.011, \
      "Engineering ToolBox d_1452, softwood lumber dimensions", SEEN) \
    F("board feet", "1x3, 8 ft, board feet", \
      board_feet("1x3", 8), 2, 0, \
      "furnituremaking.us, ordering lumber by the board foot", SEEN) \
    F("board feet", "1x4, 6 ft, board feet", \
      board_feet("1x4", 6), 2, 0, \
      "furnituremaking.us, calculating board feet", SEEN) \
    F("board feet", "2x6, 10 ft, board feet", \
      board_feet("2x6", 10), 10, 0, \
      "bobvila.com, posts/4345", SEEN) \
    F("board feet", "2x6, 8 ft, board feet", \
      board_feet("2x6", 8), 8, 0, \
      "furnituremaking.us, ordering lumber by the board foot", SEEN) \
    F("units", "1 in, mm", \
      length_in_mm("1 in"), 25.4, 0, \
      "GNU units 2.22, definitions.units, after NIST SP 811", SEEN) \
    F("units", "1 ft, mm", \
      length_in_mm("1 ft"), 304.8, 0, \
      "GNU units 2.22, definitions.units, after NIST SP 811", SEEN) \
    F("units", "1 lb, kg", \
      kilograms("1 lb"), 0.45359237, 1e-06, \
      "GNU units 2.22, definitions.units, after NIST SP 811", SEEN) \
    F("units", "1 US fluid ounce, ml", \
      millilitres("1 oz"), 29.5735295625, 0.001, \
      "GNU units 2.22, definitions.units, after NIST SP 811", SEEN) \
    F("units", "1 lb/ft3, kg/m3", \
      density_kg("1 lb/ft3"), 16.018463374, 0.001, \
      "GNU units 2.22, definitions.units, after NIST SP 811", SEEN) \
    F("bending", "1/4 in sheet across its grain, least radius, in", \
      bend_inches(0.25, true), 24, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "1/4 in sheet along its grain, least radius, in", \
      bend_inches(0.25, false), 60, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "5/16 in sheet across its grain, least radius, in", \
      bend_inches(0.3125, true), 24, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "5/16 in sheet along its grain, least radius, in", \
      bend_inches(0.3125, false), 72, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "3/8 in sheet across its grain, least radius, in", \
      bend_inches(0.375, true), 36, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "3/8 in sheet along its grain, least radius, in", \
      bend_inches(0.375, false), 96, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "1/2 in sheet across its grain, least radius, in", \
      bend_inches(0.5, true), 72, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "1/2 in sheet along its grain, least radius, in", \
      bend_inches(0.5, false), 144, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "5/8 in sheet across its grain, least radius, in", \
      bend_inches(0.625, true), 96, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "5/8 in sheet along its grain, least radius, in", \
      bend_inches(0.625, false), 192, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "3/4 in sheet across its grain, least radius, in", \
      bend_inches(0.75, true), 144, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "3/4 in sheet along its grain, least radius, in", \
      bend_inches(0.75, false), 240, 0, \
      "APA table as in Concrete Construction, curving plywood", SECOND)                                   \
    F("bending", "1/8 in sheet across its grain, dry and cold, least radius, in", \
      bend_inches(0.125, true), 12, 0.5, \
      "FAA AC 43.13-1B, bend radii, as printed by Engineers Edge", SECOND)                    \
    F("plywood", "1/4 in, 0.281 in thick, spans as", \
      span_as(0.281, TRADE_SPAN_BACK_1_4), 1, 0, \
      "PS 1 performance categories, APA table", SEEN) \
    F("plywood", "3/8 in, 0.406 in thick, spans as", \
      span_as(0.406, TRADE_SPAN_BACK_3_8), 1, 0, \
      "PS 1 performance categories, APA table", SEEN) \
    F("plywood", "1/2 in, 0.531 in thick, spans as", \
      span_as(0.531, TRADE_SPAN_BACK_1_2), 1, 0, \
      "PS 1 performance categories, APA table", SEEN) \
    F("plywood", "5/8 in, 0.656 in thick, spans as", \
      span_as(0.656, TRADE_SPAN_BACK_5_8), 1, 0, \
      "PS 1 performance categories, APA table", SEEN) \
    F("plywood", "3/4 in, 0.781 in thick, spans as", \
      span_as(0.781, TRADE_SPAN_BACK_3_4), 1, 0, \
      "PS 1 performance categories, APA table", SEEN) \
    F("plywood", "15/32 in sold as 1/2, .438 to .500 in, spans as 1/2", \
      span_as(0.469, TRADE_SPAN_BACK_1_2), 1, 0, \
      "PS 1 performance categories, APA table", SEEN) \
    F("plywood", "23/32 in sold as 3/4, .688 to .750 in, spans as 3/4", \
      span_as(0.719, TRADE_SPAN_BACK_3_4), 1, 0, \
      "PS 1 performance categories, APA table", SEEN) \
    F("plywood", "weight, 3/4 in at 36 lb/ft3, lb/ft2", \
      sheet_pounds(0.75, 36), 2.25, 0.005, \
      "APA, 3 lb/ft2 an inch of thickness, as quoted", SECOND) \
    F("screw gauges", "No. 4, diameter, in", \
      gauge_inches(4), 0.112, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 6, diameter, in", \
      gauge_inches(6), 0.138, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 8, diameter, in", \
      gauge_inches(8), 0.164, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 10, diameter, in", \
      gauge_inches(10), 0.19, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 12, diameter, in", \
      gauge_inches(12), 0.216, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 14, diameter, in", \
      gauge_inches(14), 0.242, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 16, diameter, in", \
      gauge_inches(16), 0.268, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 18, diameter, in", \
      gauge_inches(18), 0.294, 0.0001, \
      "l-36.com wood screw pilot table", SEEN) \
    F("screw gauges", "No. 0, diameter, in", \
      gauge_inches(0), 0.06, 0.0001, \
      "ASME B18.6.1, princefastener.com", SEEN) \
    F("screw gauges", "No. 20, diameter, in", \
      gauge_inches(20), 0.32, 0.0001, \
      "ASME B18.6.1, princefastener.com", SEEN)

#define PUBLISHED_OF_HOLDING(F) \
    F("lead holes", "No. 6, softwood, 70 % of the root to the root", \
      lead_hole(6, WOOD_SOFT, 0.70 * 0.094, 0.094), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 6, hardwood, 90 % of the root to the root", \
      lead_hole(6, WOOD_HARD, 0.90 * 0.094, 0.094), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 8, softwood, 70 % of the root to the root", \
      lead_hole(8, WOOD_SOFT, 0.70 * 0.112, 0.112), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 8, hardwood, 90 % of the root to the root", \
      lead_hole(8, WOOD_HARD, 0.90 * 0.112, 0.112), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 10, softwood, 70 % of the root to the root", \
      lead_hole(10, WOOD_SOFT, 0.70 * 0.13, 0.13), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 10, hardwood, 90 % of the root to the root", \
      lead_hole(10, WOOD_HARD, 0.90 * 0.13, 0.13), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 12, softwood, 70 % of the root to the root", \
      lead_hole(12, WOOD_SOFT, 0.70 * 0.148, 0.148), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 12, hardwood, 90 % of the root to the root", \
      lead_hole(12, WOOD_HARD, 0.90 * 0.148, 0.148), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 14, softwood, 70 % of the root to the root", \
      lead_hole(14, WOOD_SOFT, 0.70 * 0.165, 0.165), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 14, hardwood, 90 % of the root to the root", \
      lead_hole(14, WOOD_HARD, 0.90 * 0.165, 0.165), 1, 0, \
      "NDS Commentary 11.1.2.1, AF&PA; roots l-36.com", SEEN) \
    F("lead holes", "No. 8, clearance hole, 64ths of an inch", \
      clearance_64ths(8), 11, 0, \
      "furnituremaking.us, wood screws, (n + 3) / 64", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.47, lb an inch", \
      hold_nail_out(0.47, 0.113, 1), 134, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.55, lb an inch", \
      hold_nail_out(0.55, 0.113, 1), 199, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.60, lb an inch", \
      hold_nail_out(0.6, 0.113, 1), 247, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.62, lb an inch", \
      hold_nail_out(0.62, 0.113, 1), 268, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.63, lb an inch", \
      hold_nail_out(0.63, 0.113, 1), 279, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.64, lb an inch", \
      hold_nail_out(0.64, 0.113, 1), 291, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.68, lb an inch", \
      hold_nail_out(0.68, 0.113, 1), 338, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("nail withdrawal", "6d common, gravity 0.72, lb an inch", \
      hold_nail_out(0.72, 0.113, 1), 390, 0.51, \
      "G. Wengert, woodworkingnetwork.com, after the Wood Handbook", SEEN) \
    F("screw withdrawal", "No. 10 in spruce of .45, lb an inch", \
      hold_screw_out(0.45, 0.190, 1), 109, 0.7, \
      "Engineering ToolBox d_1815, allowable withdrawal", SEEN) \
    F("lateral constants", "Douglas fir, gravity 0.51, C", \
      hold_group(0.51), 3960, 0, \
      "handbook of civil engineering formulas, table 6.2 (older NDS)", SEEN) \
    F("lateral constants", "southern pine, gravity 0.59, C", \
      hold_group(0.59), 3960, 0, \
      "handbook of civil engineering formulas, table 6.2 (older NDS)", SEEN) \
    F("lateral constants", "western hemlock, gravity 0.44, C", \
      hold_group(0.44), 3240, 0, \
      "handbook of civil engineering formulas, table 6.2 (older NDS)", SEEN) \
    F("lateral constants", "redwood, gravity 0.42, C", \
      hold_group(0.42), 3240, 0, \
      "handbook of civil engineering formulas, table 6.2 (older NDS)", SEEN) \
    F("lateral constants", "spruce, gravity 0.41, C", \
      hold_group(0.41), 2520, 0, \
      "handbook of civil engineering formulas, table 6.2 (older NDS)", SEEN) \
    F("lateral constants", "No. 10 in Douglas fir, 1 in of bite against 7 D, lb", \
      hold_screw_side(0.51, 0.190, 1), 107.4857142857, 0.01, \
      "NDS share below 7 D", MEMORY) \
    F("beam coefficients", "spread, kb x 768", \
      768 * beam_factors(BEAM_SPREAD).bending, 10.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "spread, ks", \
      beam_factors(BEAM_SPREAD).shear, 0.125, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "spread, ends clamped, kb x 768", \
      768 * beam_factors(BEAM_SPREAD_CLAMPED).bending, 2.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "spread, ends clamped, ks", \
      beam_factors(BEAM_SPREAD_CLAMPED).shear, 0.125, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "in the middle, kb x 768", \
      768 * beam_factors(BEAM_MIDDLE).bending, 16.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "in the middle, ks", \
      beam_factors(BEAM_MIDDLE).shear, 0.25, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "in the middle, ends clamped, kb x 768", \
      768 * beam_factors(BEAM_MIDDLE_CLAMPED).bending, 4.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "in the middle, ends clamped, ks", \
      beam_factors(BEAM_MIDDLE_CLAMPED).shear, 0.25, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "at the quarters, kb x 768", \
      768 * beam_factors(BEAM_QUARTERS).bending, 11.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "at the quarters, ks", \
      beam_factors(BEAM_QUARTERS).shear, 0.125, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "at the quarters, under one, kb x 768", \
      768 * beam_factors(BEAM_QUARTERS_AT).bending, 8.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "at the quarters, under one, ks", \
      beam_factors(BEAM_QUARTERS_AT).shear, 0.125, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "cantilever, spread, kb x 768", \
      768 * beam_factors(BEAM_CANTILEVER).bending, 96.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "cantilever, spread, ks", \
      beam_factors(BEAM_CANTILEVER).shear, 0.5, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "cantilever, at its end, kb x 768", \
      768 * beam_factors(BEAM_END).bending, 256.0, 1e-09, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam coefficients", "cantilever, at its end, ks", \
      beam_factors(BEAM_END).shear, 1.0, 0, \
      "Wood Handbook GTR-190, table 9-1", SEEN) \
    F("beam example", "hemlock 3 x 10 in, 9 ft, 750 psi, spread, lb", \
      berg(BEAM_SPREAD), 2778, 1, \
      "L. D. Berg, Safe Building, rectangular beams", SEEN) \
    F("beam example", "the same in the middle, lb", \
      berg(BEAM_MIDDLE), 1389, 1, \
      "L. D. Berg, Safe Building, rectangular beams", SEEN) \
    F("beam example", "stiffness from its bend, E = P l3 / (4 D b h3), over E", \
      record(), 1, 1e-09, \
      "S. J. Record, Mechanical Properties of Wood, 1914", SEEN)

#define PUBLISHED_OF_REST(F) \
    F("deflection limits", "what carries no ceiling, span over", \
      (double)trade_values[TRADE_STRENGTH_DEFLECTION].standard[UNITS_INCH], 180, 0, \
      "IBC table 1604.3, up.codes", SEEN) \
    F("repeats", "96 in at 27, whole repeats", \
      repeats(96, 27), 4, 0, \
      "diyideas.com, fabric repeats", SEEN) \
    F("repeats", "114 in at 11, whole repeats", \
      repeats(114, 11), 11, 0, \
      "drpinc.net, measuring for draperies", SEEN) \
    F("widths", "189 in of 54 in cloth, widths", \
      widths_least(inch(189), inch(54), 0), 4, 0, \
      "drpinc.net, measuring for draperies", SEEN) \
    F("widths", "146.25 in of 54 in cloth, widths", \
      widths_least(inch(146.25), inch(54), 0), 3, 0, \
      "homesteady.com how-7849834", SEEN) \
    F("widths", "225 in of 54 in cloth, widths", \
      widths_least(inch(225), inch(54), 0), 5, 0, \
      "ehow.co.uk how_6326063", SEEN) \
    F("widths", "140 in of 54 in cloth, widths", \
      widths_least(inch(140), inch(54), 0), 3, 0, \
      "living.thebump.com, drapery yardage", SEEN) \
    F("bias", "square for 250 in of 2 in strip, in", \
      square_for(250, 2), 23, 0, \
      "mydecozo.co.uk, FAQ 680", SEEN) \
    F("bias", "square for 100 in of 3.5 in strip, in", \
      square_for(100, 3.5), 19, 0, \
      "quiltersquestiontime.com", SEEN) \
    F("bias", "square for 55 in of 2.5 in strip, in", \
      square_for(55, 2.5), 12, 0, \
      "getasquiltingstudio.com, April 2018", SEEN) \
    F("bias", "12 x 12 in of 2 in strip, in", \
      strip_from(12, 12, 2), 72, 0, \
      "sewaquilt.com, bias tape", SEEN) \
    F("bias", "longest strip at 45 degrees on 54 in, whole in", \
      longest_on(54), 76, 0, \
      "forum.upholster.com topic 10184", SEEN) \
    F("welt", "strip of a 5/32 in cord, in", \
      welt_for(5.0 / 32), 1.5, 0, \
      "upholsteryresource.com node 103", SEEN) \
    F("lifting", "H 50, V 75, D 40 cm, fair grip, kg", \
      lifted(50, 75, 40, LIFT_FAIR), 10.9, 0.327, \
      "CCOHS OSH Answers, the NIOSH equation", SEEN) \
    F("lifting", "H 30, V 75, D 40 cm, fair grip, kg", \
      lifted(30, 75, 40, LIFT_FAIR), 17.5, 0.525, \
      "CCOHS OSH Answers, the NIOSH equation", SEEN) \
    F("lifting", "H 30, V 0, D 115 cm, poor grip, kg", \
      lifted(30, 0, 115, LIFT_POOR), 11.4, 0.342, \
      "CCOHS OSH Answers, the NIOSH equation", SEEN) \
    F("lifting", "H 30, V 75, D 40 cm, poor grip, kg", \
      lifted(30, 75, 40, LIFT_POOR), 15.7, 0.471, \
      "CCOHS OSH Answers, the NIOSH equation", SEEN) \
    F("lifting", "H 30, V 75, D 40 cm, good grip, kg", \
      lifted(30, 75, 40, LIFT_GOOD), 17.5, 0.525, \
      "CCOHS OSH Answers, the NIOSH equation", SEEN) \
    F("lifting", "H 20, V 6, D 16 in, fair grip, LC 51 lb, lb", \
      lifted_pounds(20, 6, 16, LIFT_FAIR), 18.4, 0.2, \
      "wizedu.com 203981, a worked answer", SEEN) \
    F("lifting", "load constant, kg", \
      (double)trade_values[TRADE_LIFT_CONSTANT].standard[UNITS_MM] / 1000000, 23, 0, \
      "what-when-how.com, Assessment Tools for Occupational Ergonomics", SEEN) \
    F("team factors", "two people, share of the sum", \
      (double)trade_values[TRADE_LIFT_TEAM_TWO].standard[UNITS_MM] / 1000000, 0.6666666667, 1e-06, \
      "HSE L23, paragraph 119", SEEN) \
    F("team factors", "three people, share of the sum", \
      (double)trade_values[TRADE_LIFT_TEAM_THREE].standard[UNITS_MM] / 1000000, 0.5, 0, \
      "HSE L23, paragraph 119", SEEN) \
    F("doors", "a box 28 in thin passes 32 in clear with the margin; 31 does not", \
      door_takes(32, 80), 1, 0, \
      "ADA 2010 section 404.2.3", SEEN) \
    F("doors", "egress door, 32 x 78 in: a box 28 x 74 passes", \
      door_takes(32, 78), 1, 0, \
      "IRC R311.2", SECOND) \
    F("stairs", "36 in wide above the handrail, 30 in thick goes up", \
      stair_is_wide(36), 1, 0, \
      "IRC R311.7.1, quoted in thebuildingcodeforum.com 3380", SECOND) \
    F("stairs", "head-room 80 in on the plumb line, 60 in goes up across the slope", \
      stair_is_high(80), 1, 0, \
      "IRC R311.7.2", MEMORY) \
    F("halls", "36 in wide, 101.8 in of no thickness turn", \
      hall_turns(36), 1, 0, \
      "IRC R311.6", MEMORY) \
    F("beds", "twin, 39 in: wants a leg in its middle", \
      bed_wants_leg(39), 0, 0, \
      "gnomon.org.uk, bed sizes", SEEN) \
    F("beds", "full, 54 in: wants a leg in its middle", \
      bed_wants_leg(54), 0, 0, \
      "gnomon.org.uk, bed sizes", SEEN) \
    F("beds", "queen, 60 in: wants a leg in its middle", \
      bed_wants_leg(60), 1, 0, \
      "gnomon.org.uk, bed sizes", SEEN) \
    F("beds", "king, 76 in: wants a leg in its middle", \
      bed_wants_leg(76), 1, 0, \
      "gnomon.org.uk, bed sizes", SEEN) \
    F("nail heads", "No. 250, 7/16 in, the one that is taken, in", \
      (double)trade_values[TRADE_NAIL_DIAMETER].standard[UNITS_INCH] / 8128, 0.4375, 0, \
      "E. A. Johnson, Furniture Upholstery for Schools, 1919", SEEN) \
    F("webbing", "an opening of 21 in, 3-1/2 in strips half an inch apart: strips", \
      (double)web_strips(inch(21), inch(3.5), inch(0.5)), 5, 0, \
      "E. A. Johnson, 1919, for the width of a strip; the count is derived", SEEN) \
    F("webbing", "tacks of an end, four and three over the fold; our staples are one more each", \
      web_end() - 2, 7, 0, \
      "E. A. Johnson, Furniture Upholstery for Schools, 1919", SEEN) \
    F("tip-over", "height from which a rule looks at it, in", \
      (double)trade_values[TRADE_TIP_HEIGHT].standard[UNITS_INCH] / 8128, 27, 0, \
      "16 CFR 1261, cpsc.gov FAQ 3026", SEEN)

#define PUBLISHED(F) \
    PUBLISHED_OF_WOOD(F) \
    PUBLISHED_OF_HOLDING(F) \
    PUBLISHED_OF_REST(F)

/* What the trade does and no work publishes: common practice, no source. What, ours, wanted. */
#define PRACTICES(P) \
    P("a 2-1/2 in screw through 1-1/2 in of stud bites 1 in: enough in side grain", \
      bite_is_enough(2.5 - 1.5, TRADE_SCREW_BITE_SIDE), 1) \
    P("and too little in end grain, which is warned of", \
      bite_is_enough(2.5 - 1.5, TRADE_SCREW_BITE_END_MIN), 0) \
    P("the head side is bored as wide as the screw, the receiving side never", \
      bored_for(8) * bored_for(10), 1) \
    P("two screws at each crossing of 2x4s", screws_across(3.5), 2) \
    P("a plywood seam lies on the middle of a 1-1/2 in support, in", \
      2 * in_inches(TRADE_SEAM_BEARING), 1.5) \
    P("screws on either side of it alternate, by a share of the pitch", \
      (double)trade_values[TRADE_PANEL_SEAM_STAGGER].standard[UNITS_INCH] / 1000000, 0.5) \
    P("no panel screw in a corner, one each side of it at 1 in", \
      in_inches(TRADE_PANEL_CORNER_OFFSET), 1) \
    P("a cover of 80-1/2 in on 54 in cloth takes two drops, one of them halved", drops(80.5), 2) \
    P("its seams stand beside the middle, at 26-1/2 in", seam_at(80.5), 26.5) \
    P("a hidden lining of 80 x 70 in on 60 in cloth may have its one seam in the middle: seams", \
      lining_seams(), 1) \
    P("its edges are raw, so that its staples go through one thickness, in of leg", \
      lining_leg(FINISH_RAW), 0.375) \
    P("and through two where they are folded in, in of leg", lining_leg(FINISH_FOLDED), 0.5) \
    P("on the join's side it stays loose at the bench: staples there", \
      lining_at_bench(EDGE_LEFT), 0) \
    P("and is stapled on the three others, 2 in apart on 56 in of the right one", \
      lining_at_bench(EDGE_RIGHT), 29) \
    P("a sleeve has boxing on three sides", sleeve_boxings(), 3) \
    P("one long side of it is open, and no zip is in it", sleeve_is_open_behind(), 1) \
    P("people who pull on a sleeve of 60-1/4 in", sleeve_people(), 2) \
    P("an outside back hangs blind at its top: rows there", back_rows(EDGE_TOP), 2) \
    P("and is held by one row at the left", back_rows(EDGE_LEFT), 1) \
    P("at the right", back_rows(EDGE_RIGHT), 1) \
    P("and below", back_rows(EDGE_BOTTOM), 1) \
    P("nails down both front edges of two wings: lines", wing_nail_lines(), 4) \
    P("on a nail strip one real nail in four to five", \
      (double)trade_values[TRADE_NAIL_STRIP_REAL_EVERY].standard[UNITS_INCH], 5) \
    P("106 heads of strip, one nail in five and one at the end", (double)strip_nails(106, 5), 23)
/* clang-format on */

#endif
