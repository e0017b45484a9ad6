/*
 * The table of trade values. Each line: enum name, key, quantity, value in inch work, value in
 * millimetre work, least, most, source, help. An enum name is its key in upper case, with a point
 * written as an underscore. A source is a published work, "derived" with its formula in the help,
 * or "common practice, no source".
 *
 * Each value is one number: where a rule has both a number of diameters and a length, it has two
 * lines, and the larger holds.
 */
#ifndef MODEL_VALUES_H
#define MODEL_VALUES_H

/* Counts as in base/quantity.h, rounded half up; none here is negative. */
#define VALUE_COUNTS(value, size) ((int64_t)((value) * (size) + 0.5))
#define VALUE_IN(inch) VALUE_COUNTS(inch, 8128.0)
#define VALUE_MM(mm) VALUE_COUNTS(mm, 320.0)
#define VALUE_RATIO(ratio) VALUE_COUNTS(ratio, 1000000.0)
#define VALUE_MINUTES(minutes) VALUE_COUNTS(minutes, 1000.0)
#define VALUE_DEGREES(degrees) VALUE_COUNTS(degrees, 1000.0)
#define VALUE_IN2(in2) VALUE_COUNTS(in2, 645.16)
#define VALUE_FT2(ft2) VALUE_COUNTS(ft2, 92903.04)
#define VALUE_CM2(cm2) VALUE_COUNTS(cm2, 100.0)
#define VALUE_M2(m2) VALUE_COUNTS(m2, 1000000.0)
#define VALUE_OZ(oz) VALUE_COUNTS(oz, 29573.5295625)
#define VALUE_ML(ml) VALUE_COUNTS(ml, 1000.0)
#define VALUE_LB(lb) VALUE_COUNTS(lb, 453592.37)
#define VALUE_KG(kg) VALUE_COUNTS(kg, 1000000.0)
#define VALUE_LB_FT3(lb_ft3) VALUE_COUNTS(lb_ft3, 16018.463)
#define VALUE_KG_M3(kg_m3) VALUE_COUNTS(kg_m3, 1000.0)
#define VALUE_OZ_YD2(oz_yd2) VALUE_COUNTS(oz_yd2, 33905.75)
#define VALUE_G_M2(g_m2) VALUE_COUNTS(g_m2, 1000.0)

#define VALUE_PRACTICE "common practice, no source"
#define VALUE_DERIVED "derived"
#define VALUE_JOHNSON "E. A. Johnson, Furniture Upholstery for Schools, 1919"
#define VALUE_APA "American Plywood Association, as printed in Concrete Construction"
#define VALUE_IBC "International Building Code, table 1604.3"
#define VALUE_STURDY "16 CFR 1261, which is for clothing storage units"
#define VALUE_NIOSH "DHHS (NIOSH) publication 94-110, the revised lifting equation"
#define VALUE_TEAM "HSE L23, guidance on the Manual Handling Operations Regulations 1992"
#define VALUE_SAFETY "US Consumer Product Safety Commission, guidance on chest lids"

/* sticks, sheets and what they weigh */
#define TRADE_LUMBER_VALUES(V)                                                                     \
    V(KERF, "kerf", LENGTH, VALUE_IN(0.125), VALUE_MM(3), 0, VALUE_MM(10), VALUE_PRACTICE,         \
      "width of the saw's cut")                                                                    \
    V(STICK_TRIM, "stick.trim", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0, VALUE_MM(100),             \
      VALUE_PRACTICE, "cut off each stick to square one end")                                      \
    V(STICK_TRIM_FAR, "stick.trim.far", LENGTH, 0, 0, 0, VALUE_MM(100), VALUE_PRACTICE,            \
      "cut off the far end as well")                                                               \
    V(STICK_LENGTH, "stick.length", LENGTH, VALUE_IN(96), VALUE_MM(2400), VALUE_MM(600),           \
      VALUE_MM(12000), VALUE_PRACTICE, "a stick where the shop list names no length")              \
    V(STICK_RESERVE, "stick.reserve", RATIO, VALUE_RATIO(0), VALUE_RATIO(0), 0, VALUE_RATIO(1),    \
      VALUE_PRACTICE, "crooked sticks to buy over, as a share of those needed")                    \
    V(SHEET_LENGTH, "sheet.length", LENGTH, VALUE_IN(96), VALUE_MM(2440), VALUE_MM(300),           \
      VALUE_MM(6000), VALUE_PRACTICE, "a sheet where the shop list names no size: its length")     \
    V(SHEET_WIDTH, "sheet.width", LENGTH, VALUE_IN(48), VALUE_MM(1220), VALUE_MM(300),             \
      VALUE_MM(3000), VALUE_PRACTICE, "and its width")                                             \
    V(SHEET_EDGE_TRIM, "sheet.edge_trim", LENGTH, 0, 0, 0, VALUE_MM(50), VALUE_PRACTICE,           \
      "cut off each edge of a sheet first")                                                        \
    V(WOOD_DENSITY_SOFT, "wood.density.soft", DENSITY, VALUE_LB_FT3(28), VALUE_KG_M3(450),         \
      VALUE_KG_M3(100), VALUE_KG_M3(1500), VALUE_PRACTICE, "softwood, by volume")                  \
    V(WOOD_DENSITY_HARD, "wood.density.hard", DENSITY, VALUE_LB_FT3(43), VALUE_KG_M3(690),         \
      VALUE_KG_M3(100), VALUE_KG_M3(1500), VALUE_PRACTICE, "hardwood, by volume")                  \
    V(SHEET_DENSITY, "sheet.density", DENSITY, VALUE_LB_FT3(34), VALUE_KG_M3(575),                 \
      VALUE_KG_M3(100), VALUE_KG_M3(1500), VALUE_DERIVED,                                          \
      "plywood, by volume: weight by area / thickness")                                            \
    V(FOAM_DENSITY_BACK, "foam.density.back", DENSITY, VALUE_LB_FT3(1.8), VALUE_KG_M3(28),         \
      VALUE_KG_M3(5), VALUE_KG_M3(200), VALUE_PRACTICE, "foam that is leaned on")                  \
    V(FOAM_DENSITY_SEAT_LEAST, "foam.density.seat.least", DENSITY, VALUE_LB_FT3(1.8),              \
      VALUE_KG_M3(29), VALUE_KG_M3(5), VALUE_KG_M3(200), VALUE_PRACTICE,                           \
      "lightest foam that is sat on")                                                              \
    V(FOAM_DENSITY_SEAT, "foam.density.seat", DENSITY, VALUE_LB_FT3(2.5), VALUE_KG_M3(40),         \
      VALUE_KG_M3(5), VALUE_KG_M3(200), VALUE_PRACTICE, "foam that is sat on")                     \
    V(CLOTH_AREA_MASS, "cloth.area_mass", AREA_MASS, VALUE_OZ_YD2(12), VALUE_G_M2(400),            \
      VALUE_G_M2(20), VALUE_G_M2(3000), VALUE_PRACTICE, "cover cloth, by area")                    \
    V(LINING_AREA_MASS, "lining.area_mass", AREA_MASS, VALUE_OZ_YD2(4), VALUE_G_M2(135),           \
      VALUE_G_M2(20), VALUE_G_M2(3000), VALUE_PRACTICE, "lining, by area")                         \
    V(DUST_AREA_MASS, "dust.area_mass", AREA_MASS, VALUE_OZ_YD2(2), VALUE_G_M2(70),                \
      VALUE_G_M2(10), VALUE_G_M2(3000), VALUE_PRACTICE, "dust cover, by area")                     \
    V(BATTING_AREA_MASS, "batting.area_mass", AREA_MASS, VALUE_OZ_YD2(4), VALUE_G_M2(135),         \
      VALUE_G_M2(20), VALUE_G_M2(3000), VALUE_PRACTICE, "batting of usual loft, by area")          \
    V(FIXINGS_MASS, "fixings.mass", RATIO, VALUE_RATIO(0.01), VALUE_RATIO(0.01), 0,                \
      VALUE_RATIO(0.2), VALUE_PRACTICE,                                                            \
      "weight of screws, staples and glue, as a share of the wood's")                              \
    V(KEEP_STICK, "keep.stick", LENGTH, VALUE_IN(8), VALUE_MM(200), 0, VALUE_MM(3000),             \
      VALUE_PRACTICE, "shortest stick worth keeping")                                              \
    V(KEEP_SHEET, "keep.sheet", LENGTH, VALUE_IN(6), VALUE_MM(150), 0, VALUE_MM(3000),             \
      VALUE_PRACTICE, "narrowest sheet worth keeping, both ways")                                  \
    V(KEEP_CLOTH, "keep.cloth", LENGTH, VALUE_IN(9), VALUE_MM(230), 0, VALUE_MM(3000),             \
      VALUE_PRACTICE, "smallest cloth worth keeping, both ways")                                   \
    V(KEEP_CLOTH_STRIP, "keep.cloth.strip", LENGTH, VALUE_IN(4), VALUE_MM(100), 0, VALUE_MM(3000), \
      VALUE_PRACTICE, "or narrowest strip of cloth worth keeping,")                                \
    V(KEEP_CLOTH_STRIP_LENGTH, "keep.cloth.strip.length", LENGTH, VALUE_IN(36), VALUE_MM(900), 0,  \
      VALUE_MM(10000), VALUE_PRACTICE, "if it is as long as this")                                 \
    V(KEEP_FOAM, "keep.foam", LENGTH, VALUE_IN(12), VALUE_MM(300), 0, VALUE_MM(3000),              \
      VALUE_PRACTICE, "smallest foam worth keeping, both ways")

/* screws and bolts */
#define TRADE_SCREWS_VALUES(V)                                                                     \
    V(SCREW_BITE_SIDE, "screw.bite.side", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(5),          \
      VALUE_MM(150), VALUE_PRACTICE, "thread in side grain")                                       \
    V(SCREW_BITE_SIDE_MIN, "screw.bite.side.min", LENGTH, VALUE_IN(0.75), VALUE_MM(19),            \
      VALUE_MM(5), VALUE_MM(150), VALUE_PRACTICE, "least thread in side grain")                    \
    V(SCREW_BITE_PANEL, "screw.bite.panel", LENGTH, VALUE_IN(0.75), VALUE_MM(18), VALUE_MM(6),     \
      VALUE_MM(100), VALUE_PRACTICE, "bite wanted behind a panel, whose screws share the load")    \
    V(SCREW_BITE_END, "screw.bite.end", LENGTH, VALUE_IN(1.5), VALUE_MM(38), VALUE_MM(5),          \
      VALUE_MM(150), VALUE_PRACTICE, "thread in end grain, glued")                                 \
    V(SCREW_BITE_END_MIN, "screw.bite.end.min", LENGTH, VALUE_IN(1.25), VALUE_MM(32), VALUE_MM(5), \
      VALUE_MM(150), VALUE_PRACTICE, "least thread in end grain before it is warned of")           \
    V(SCREW_TIP_MARGIN, "screw.tip_margin", LENGTH, VALUE_IN(0.125), VALUE_MM(3), 0, VALUE_MM(20), \
      VALUE_PRACTICE, "screw's tip to the far face, at least")                                     \
    V(SCREW_TIP_MARGIN_PADDED, "screw.tip_margin.padded", LENGTH, VALUE_IN(0.1875), VALUE_MM(5),   \
      0, VALUE_MM(20), VALUE_PRACTICE, "the same under padding or a seat")                         \
    V(SCREW_COUNTERBORE_REST, "screw.counterbore.rest", LENGTH, VALUE_IN(0.75), VALUE_MM(19),      \
      VALUE_MM(5), VALUE_MM(50), VALUE_PRACTICE, "wood left under a counterbored head")            \
    V(SCREW_PILOT_SHORT, "screw.pilot.short", LENGTH, VALUE_IN(0.125), VALUE_MM(3), 0,             \
      VALUE_MM(20), VALUE_PRACTICE, "pilot hole ends this far before the screw's tip")             \
    V(SCREW_GAUGE_FRAME, "screw.gauge.frame", COUNT, 8, 8, 2, 20, VALUE_PRACTICE,                  \
      "gauge of screws from member to member")                                                     \
    V(SCREW_GAUGE_PANEL, "screw.gauge.panel", COUNT, 8, 8, 2, 20, VALUE_PRACTICE,                  \
      "gauge of screws that hold panels")                                                          \
    V(SCREW_GAUGE_JOIN, "screw.gauge.join", COUNT, 10, 10, 2, 20, VALUE_PRACTICE,                  \
      "gauge of screws from box to box")                                                           \
    V(SCREW_WASTE, "screw.waste", RATIO, VALUE_RATIO(0.05), VALUE_RATIO(0.05), 0, VALUE_RATIO(1),  \
      VALUE_PRACTICE, "screws bought over")                                                        \
    V(SCREW_RESERVE_LEAST, "screw.reserve.least", COUNT, 2, 2, 0, 1000, VALUE_PRACTICE,            \
      "the same, at least so many")                                                                \
    V(BOLT_BEYOND, "bolt.beyond", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(5), VALUE_MM(100),   \
      VALUE_PRACTICE, "bolt length beyond the wood")                                               \
    V(BOLT_WASHER, "bolt.washer", LENGTH, VALUE_IN(1.25), VALUE_MM(30), VALUE_MM(5),               \
      VALUE_MM(100), VALUE_PRACTICE, "washer under a bolt on soft wood, across")                   \
    V(BOLT_DIAMETER, "bolt.diameter", LENGTH, VALUE_IN(0.3125), VALUE_MM(8), VALUE_MM(3),          \
      VALUE_MM(20), VALUE_PRACTICE, "bolt through two boxes, where no stock is named")             \
    V(BOLT_CLEARANCE, "bolt.clearance", LENGTH, VALUE_IN(0.03125), VALUE_MM(0.8), 0, VALUE_MM(5),  \
      VALUE_PRACTICE, "hole for a bolt, over its diameter")                                        \
    V(T_NUT_HOLE, "t_nut.hole", LENGTH, VALUE_IN(0.0625), VALUE_MM(1.6), 0, VALUE_MM(10),          \
      VALUE_PRACTICE, "hole for a T-nut's barrel, over the bolt's diameter")                       \
    V(JOINT_CLOTH_PER_FACE, "joint.cloth_per_face", LENGTH, VALUE_IN(0.0625), VALUE_MM(1.5), 0,    \
      VALUE_MM(20), VALUE_PRACTICE, "pressed cloth in a joint, for each covered face")             \
    V(CLOTH_FOLDS, "cloth.folds", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0, VALUE_MM(50),            \
      VALUE_PRACTICE, "cloth and its folds on a padded side that something stands beside")         \
    V(JOINT_WIDTH_NARROW, "joint.width.narrow", LENGTH, VALUE_IN(2), VALUE_MM(51), VALUE_MM(10),   \
      VALUE_MM(500), VALUE_PRACTICE, "members up to this width take the fewest screws a joint")    \
    V(JOINT_WIDTH_MIDDLE, "joint.width.middle", LENGTH, VALUE_IN(4), VALUE_MM(102), VALUE_MM(10),  \
      VALUE_MM(500), VALUE_PRACTICE, "members up to this width take the middle number")            \
    V(JOINT_WIDTH_WIDE, "joint.width.wide", LENGTH, VALUE_IN(7), VALUE_MM(178), VALUE_MM(10),      \
      VALUE_MM(500), VALUE_PRACTICE,                                                               \
      "members up to this width take the next, wider ones the most")                               \
    V(JOINT_SCREWS_NARROW, "joint.screws.narrow", COUNT, 1, 1, 1, 20, VALUE_PRACTICE,              \
      "screws in a joint of narrow members")                                                       \
    V(JOINT_SCREWS_MIDDLE, "joint.screws.middle", COUNT, 2, 2, 1, 20, VALUE_PRACTICE,              \
      "screws in a joint of middling members")                                                     \
    V(JOINT_SCREWS_WIDE, "joint.screws.wide", COUNT, 3, 3, 1, 20, VALUE_PRACTICE,                  \
      "screws in a joint of wide members")                                                         \
    V(JOINT_SCREWS_WIDEST, "joint.screws.widest", COUNT, 4, 4, 1, 20, VALUE_PRACTICE,              \
      "screws in a joint of members wider still")                                                  \
    V(CLEAT_LEAST, "cleat.least", COUNT, 3, 3, 1, 100, VALUE_PRACTICE,                             \
      "screws in a cleat on a board, at least")                                                    \
    V(CLEAT_PITCH, "cleat.pitch", LENGTH, VALUE_IN(10), VALUE_MM(250), VALUE_MM(20),               \
      VALUE_MM(1000), VALUE_PRACTICE, "screw to screw along a cleat on a board")                   \
    V(CLEAT_STUD_LEAST, "cleat.stud.least", COUNT, 2, 2, 1, 100, VALUE_PRACTICE,                   \
      "screws of a cleat into studs, at least")                                                    \
    V(LEG_SCREWS, "leg.screws", COUNT, 4, 4, 0, 20, VALUE_PRACTICE, "screws in a leg's plate")     \
    V(LEG_PLATE, "leg.plate", LENGTH, VALUE_IN(2.5), VALUE_MM(60), VALUE_MM(20), VALUE_MM(200),    \
      VALUE_PRACTICE, "side of a leg's square plate")

/* panels and what carries them */
#define TRADE_PANELS_VALUES(V)                                                                     \
    V(PANEL_EDGE_PITCH_SEAT, "panel.edge.pitch.seat", LENGTH, VALUE_IN(6), VALUE_MM(150),          \
      VALUE_MM(20), VALUE_MM(1000), VALUE_PRACTICE,                                                \
      "screw to screw along edges that are sat on or hold square, no glue")                        \
    V(PANEL_EDGE_PITCH_FACE, "panel.edge.pitch.face", LENGTH, VALUE_IN(8), VALUE_MM(200),          \
      VALUE_MM(20), VALUE_MM(1000), VALUE_PRACTICE,                                                \
      "screw to screw along edges that only face, or are glued")                                   \
    V(PANEL_FIELD_PITCH, "panel.field.pitch", LENGTH, VALUE_IN(12), VALUE_MM(300), VALUE_MM(20),   \
      VALUE_MM(1000), VALUE_PRACTICE, "screw to screw inside a panel")                             \
    V(PANEL_CORNER_OFFSET, "panel.corner.offset", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(5),  \
      VALUE_MM(200), VALUE_PRACTICE, "screw from a panel's corner, each way")                      \
    V(PANEL_EDGE_BAND, "panel.edge.band", LENGTH, VALUE_IN(3), VALUE_MM(75), 0, VALUE_MM(300),     \
      VALUE_PRACTICE, "a member whose axis lies this near to a panel's edge carries the edge")     \
    V(PANEL_EDGE_MIN, "panel.edge.min", LENGTH, VALUE_IN(0.375), VALUE_MM(10), VALUE_MM(3),        \
      VALUE_MM(100), VALUE_PRACTICE, "screw's axis to the panel's edge, at least")                 \
    V(PANEL_SEAM_STAGGER, "panel.seam.stagger", RATIO, VALUE_RATIO(0.5), VALUE_RATIO(0.5), 0,      \
      VALUE_RATIO(1), VALUE_PRACTICE,                                                              \
      "screws across a seam are set off by this share of the pitch")                               \
    V(SEAM_BEARING, "seam.bearing", LENGTH, VALUE_IN(0.75), VALUE_MM(19), VALUE_MM(3),             \
      VALUE_MM(100), VALUE_DERIVED, "wood under each panel at a seam: half of a usual member")     \
    V(SEAM_BEARING_MIN, "seam.bearing.min", LENGTH, VALUE_IN(0.625), VALUE_MM(16), VALUE_MM(3),    \
      VALUE_MM(100), VALUE_DERIVED, "the same, at least")                                          \
    V(SPAN_COVERING_1_4, "span.covering.1_4", LENGTH, VALUE_IN(12), VALUE_MM(300), 0,              \
      VALUE_MM(2000), VALUE_PRACTICE, "1/4 in panel that nobody leans on, clear between supports") \
    V(SPAN_COVERING_3_8, "span.covering.3_8", LENGTH, VALUE_IN(16), VALUE_MM(400), 0,              \
      VALUE_MM(2000), VALUE_PRACTICE, "3/8 in panel that nobody leans on, clear between supports") \
    V(SPAN_COVERING_1_2, "span.covering.1_2", LENGTH, VALUE_IN(24), VALUE_MM(600), 0,              \
      VALUE_MM(2000), VALUE_PRACTICE, "1/2 in panel that nobody leans on, clear between supports") \
    V(SPAN_COVERING_5_8, "span.covering.5_8", LENGTH, VALUE_IN(28), VALUE_MM(700), 0,              \
      VALUE_MM(2000), VALUE_PRACTICE, "5/8 in panel that nobody leans on, clear between supports") \
    V(SPAN_COVERING_3_4, "span.covering.3_4", LENGTH, VALUE_IN(32), VALUE_MM(800), 0,              \
      VALUE_MM(2000), VALUE_PRACTICE, "3/4 in panel that nobody leans on, clear between supports") \
    V(SPAN_BACK_1_4, "span.back.1_4", LENGTH, VALUE_IN(10), VALUE_MM(250), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "1/4 in panel that is leaned on, clear between supports")                    \
    V(SPAN_BACK_3_8, "span.back.3_8", LENGTH, VALUE_IN(16), VALUE_MM(400), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "3/8 in panel that is leaned on, clear between supports")                    \
    V(SPAN_BACK_1_2, "span.back.1_2", LENGTH, VALUE_IN(20), VALUE_MM(500), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "1/2 in panel that is leaned on, clear between supports")                    \
    V(SPAN_BACK_5_8, "span.back.5_8", LENGTH, VALUE_IN(24), VALUE_MM(600), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "5/8 in panel that is leaned on, clear between supports")                    \
    V(SPAN_BACK_3_4, "span.back.3_4", LENGTH, VALUE_IN(30), VALUE_MM(750), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "3/4 in panel that is leaned on, clear between supports")                    \
    V(SPAN_SEAT_1_4, "span.seat.1_4", LENGTH, 0, 0, 0, VALUE_MM(2000), VALUE_PRACTICE,             \
      "1/4 in panel that is sat on, clear between supports; 0: not with this panel")               \
    V(SPAN_SEAT_3_8, "span.seat.3_8", LENGTH, 0, 0, 0, VALUE_MM(2000), VALUE_PRACTICE,             \
      "3/8 in panel that is sat on, clear between supports; 0: not with this panel")               \
    V(SPAN_SEAT_1_2, "span.seat.1_2", LENGTH, VALUE_IN(12), VALUE_MM(300), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "1/2 in panel that is sat on, clear between supports")                       \
    V(SPAN_SEAT_5_8, "span.seat.5_8", LENGTH, VALUE_IN(16), VALUE_MM(400), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "5/8 in panel that is sat on, clear between supports")                       \
    V(SPAN_SEAT_3_4, "span.seat.3_4", LENGTH, VALUE_IN(18), VALUE_MM(450), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "3/4 in panel that is sat on, clear between supports")                       \
    V(SPAN_DECK_1_4, "span.deck.1_4", LENGTH, 0, 0, 0, VALUE_MM(2000), VALUE_PRACTICE,             \
      "1/4 in panel that carries a mattress, clear between supports; 0: not with this panel")      \
    V(SPAN_DECK_3_8, "span.deck.3_8", LENGTH, 0, 0, 0, VALUE_MM(2000), VALUE_PRACTICE,             \
      "3/8 in panel that carries a mattress, clear between supports; 0: not with this panel")      \
    V(SPAN_DECK_1_2, "span.deck.1_2", LENGTH, VALUE_IN(12), VALUE_MM(300), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "1/2 in panel that carries a mattress, clear between supports")              \
    V(SPAN_DECK_5_8, "span.deck.5_8", LENGTH, VALUE_IN(16), VALUE_MM(400), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "5/8 in panel that carries a mattress, clear between supports")              \
    V(SPAN_DECK_3_4, "span.deck.3_4", LENGTH, VALUE_IN(20), VALUE_MM(500), 0, VALUE_MM(2000),      \
      VALUE_PRACTICE, "3/4 in panel that carries a mattress, clear between supports")              \
    V(SPAN_CUSHION, "span.cushion", RATIO, VALUE_RATIO(0.8), VALUE_RATIO(0.8), VALUE_RATIO(0.1),   \
      VALUE_RATIO(1), VALUE_PRACTICE, "share of a seat's span under thin foam")                    \
    V(SPAN_CUSHION_FOAM, "span.cushion.foam", LENGTH, VALUE_IN(2), VALUE_MM(50), 0, VALUE_MM(300), \
      VALUE_PRACTICE, "foam thinner than this is thin")

/* how tight a dry sheet is bent */
#define TRADE_BEND_VALUES(V)                                                                       \
    V(BEND_ACROSS_1_4, "bend.across.1_4", LENGTH, VALUE_IN(24), VALUE_MM(610), 0, VALUE_MM(20000), \
      VALUE_APA, "radius of 1/4 in sheet bent across its grain, at least")                         \
    V(BEND_ALONG_1_4, "bend.along.1_4", LENGTH, VALUE_IN(60), VALUE_MM(1525), 0, VALUE_MM(20000),  \
      VALUE_APA, "and along its grain")                                                            \
    V(BEND_ACROSS_5_16, "bend.across.5_16", LENGTH, VALUE_IN(24), VALUE_MM(610), 0,                \
      VALUE_MM(20000), VALUE_APA, "radius of 5/16 in sheet bent across its grain, at least")       \
    V(BEND_ALONG_5_16, "bend.along.5_16", LENGTH, VALUE_IN(72), VALUE_MM(1830), 0,                 \
      VALUE_MM(20000), VALUE_APA, "and along its grain")                                           \
    V(BEND_ACROSS_3_8, "bend.across.3_8", LENGTH, VALUE_IN(36), VALUE_MM(915), 0, VALUE_MM(20000), \
      VALUE_APA, "radius of 3/8 in sheet bent across its grain, at least")                         \
    V(BEND_ALONG_3_8, "bend.along.3_8", LENGTH, VALUE_IN(96), VALUE_MM(2440), 0, VALUE_MM(20000),  \
      VALUE_APA, "and along its grain")                                                            \
    V(BEND_ACROSS_1_2, "bend.across.1_2", LENGTH, VALUE_IN(72), VALUE_MM(1830), 0,                 \
      VALUE_MM(20000), VALUE_APA, "radius of 1/2 in sheet bent across its grain, at least")        \
    V(BEND_ALONG_1_2, "bend.along.1_2", LENGTH, VALUE_IN(144), VALUE_MM(3660), 0, VALUE_MM(20000), \
      VALUE_APA, "and along its grain")                                                            \
    V(BEND_ACROSS_5_8, "bend.across.5_8", LENGTH, VALUE_IN(96), VALUE_MM(2440), 0,                 \
      VALUE_MM(20000), VALUE_APA, "radius of 5/8 in sheet bent across its grain, at least")        \
    V(BEND_ALONG_5_8, "bend.along.5_8", LENGTH, VALUE_IN(192), VALUE_MM(4880), 0, VALUE_MM(20000), \
      VALUE_APA, "and along its grain")                                                            \
    V(BEND_ACROSS_3_4, "bend.across.3_4", LENGTH, VALUE_IN(144), VALUE_MM(3660), 0,                \
      VALUE_MM(20000), VALUE_APA, "radius of 3/4 in sheet bent across its grain, at least")        \
    V(BEND_ALONG_3_4, "bend.along.3_4", LENGTH, VALUE_IN(240), VALUE_MM(6100), 0, VALUE_MM(20000), \
      VALUE_APA, "and along its grain")

/* where screws may sit */
#define TRADE_PLACES_VALUES(V)                                                                     \
    V(EDGE_MIN_DIAMETERS, "edge.min.diameters", RATIO, VALUE_RATIO(3), VALUE_RATIO(3),             \
      VALUE_RATIO(1), VALUE_RATIO(20), VALUE_PRACTICE,                                             \
      "screw's axis to a long edge, in diameters, at least")                                       \
    V(EDGE_MIN, "edge.min", LENGTH, VALUE_IN(0.375), VALUE_MM(10), VALUE_MM(2), VALUE_MM(100),     \
      VALUE_PRACTICE, "the same as a length, at least")                                            \
    V(END_MIN_PILOTED_WARN, "end.min.piloted.warn", RATIO, VALUE_RATIO(7), VALUE_RATIO(7),         \
      VALUE_RATIO(1), VALUE_RATIO(30), VALUE_PRACTICE,                                             \
      "screw's axis to a member's end, piloted, in diameters; less is warned of")                  \
    V(END_MIN_PILOTED_REJECT, "end.min.piloted.reject", RATIO, VALUE_RATIO(4), VALUE_RATIO(4),     \
      VALUE_RATIO(1), VALUE_RATIO(30), VALUE_PRACTICE, "less than this is refused")                \
    V(ALONG_MIN, "along.min", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(2), VALUE_MM(200),       \
      VALUE_PRACTICE, "screw to screw along the grain, at least")                                  \
    V(ACROSS_MIN, "across.min", LENGTH, VALUE_IN(0.75), VALUE_MM(19), VALUE_MM(2), VALUE_MM(200),  \
      VALUE_PRACTICE, "screw to screw across the grain, at least")                                 \
    V(CROSS_CLEAR_REJECT, "cross.clear.reject", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0,            \
      VALUE_MM(50), VALUE_PRACTICE, "surface to surface of two crossing screws; less is refused")  \
    V(CROSS_CLEAR_WARN, "cross.clear.warn", LENGTH, VALUE_IN(0.375), VALUE_MM(10), 0,              \
      VALUE_MM(50), VALUE_PRACTICE, "less than this is warned of")                                 \
    V(INLINE_STAGGER, "inline.stagger", LENGTH, VALUE_IN(2), VALUE_MM(50), 0, VALUE_MM(300),       \
      VALUE_DERIVED, "crosses on opposite sides of one rail are set off by this")                  \
    V(INLINE_STAGGER_CLEAR, "inline.stagger.clear", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0,        \
      VALUE_MM(100), VALUE_DERIVED, "which is the member's thickness and this")                    \
    V(JOIN_PITCH, "join.pitch", LENGTH, VALUE_IN(12), VALUE_MM(300), VALUE_MM(20), VALUE_MM(3000), \
      VALUE_PRACTICE, "screw to screw in a join of two boxes")                                     \
    V(JOIN_END, "join.end", LENGTH, VALUE_IN(3), VALUE_MM(75), VALUE_MM(10), VALUE_MM(500),        \
      VALUE_PRACTICE, "first screw from the end of a long join")                                   \
    V(JOIN_END_SHORT, "join.end.short", LENGTH, VALUE_IN(2), VALUE_MM(50), VALUE_MM(10),           \
      VALUE_MM(500), VALUE_PRACTICE, "first screw from the end of a short join")                   \
    V(JOIN_LONG, "join.long", LENGTH, VALUE_IN(24), VALUE_MM(600), VALUE_MM(50), VALUE_MM(3000),   \
      VALUE_PRACTICE, "a join longer than this is long")                                           \
    V(JOIN_LEAST, "join.least", COUNT, 2, 2, 1, 100, VALUE_PRACTICE, "screws in a join, at least") \
    V(JOIN_LEAST_LONG, "join.least.long", COUNT, 3, 3, 1, 100, VALUE_PRACTICE,                     \
      "screws in a long join, at least")                                                           \
    V(MARK_GRID, "mark.grid", LENGTH, VALUE_IN(0.25), VALUE_MM(5), VALUE_MM(1), VALUE_MM(50),      \
      VALUE_PRACTICE,                                                                              \
      "screws of joins are placed on steps that a tape shows: own round number in each unit")

/* patches, openings and the driver */
#define TRADE_ACCESS_VALUES(V)                                                                     \
    V(PATCH_PLAIN, "patch.plain", LENGTH, VALUE_IN(1.5), VALUE_MM(38), VALUE_MM(5), VALUE_MM(200), \
      VALUE_DERIVED, "patch of a screw driven straight, across")                                   \
    V(PATCH_BOLT, "patch.bolt", LENGTH, VALUE_IN(2.5), VALUE_MM(64), VALUE_MM(5), VALUE_MM(200),   \
      VALUE_DERIVED, "patch of a bolt with washer and socket, across")                             \
    V(OPEN_PER_SCREW, "open.per_screw", LENGTH, VALUE_IN(6), VALUE_MM(150), VALUE_MM(20),          \
      VALUE_MM(600), VALUE_DERIVED, "opening for one screw: patch + 2 margins, rounded")           \
    V(OPEN_MERGE, "open.merge", LENGTH, VALUE_IN(2), VALUE_MM(50), 0, VALUE_MM(300),               \
      VALUE_DERIVED, "two openings with less than this between them are one")                      \
    V(STAPLE_KEEP_OFF_HOLE, "staple.keep_off_hole", LENGTH, VALUE_IN(0.75), VALUE_MM(19), 0,       \
      VALUE_MM(100), VALUE_PRACTICE, "no staple or nail nearer to a pilot hole")                   \
    V(DRIVER_BODY, "driver.body", LENGTH, VALUE_IN(7.5), VALUE_MM(190), VALUE_MM(50),              \
      VALUE_MM(500), VALUE_PRACTICE, "driver's body and chuck")                                    \
    V(DRIVER_BIT, "driver.bit", LENGTH, VALUE_IN(2), VALUE_MM(50), VALUE_MM(10), VALUE_MM(500),    \
      VALUE_PRACTICE, "bit beyond the chuck")                                                      \
    V(DRIVER_BIT_LONG, "driver.bit.long", LENGTH, VALUE_IN(6), VALUE_MM(150), VALUE_MM(10),        \
      VALUE_MM(500), VALUE_PRACTICE, "long bit")                                                   \
    V(DRIVER_SLACK, "driver.slack", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0, VALUE_MM(100),         \
      VALUE_PRACTICE, "room to set bit to screw")                                                  \
    V(DRIVER_INLINE, "driver.inline", LENGTH, VALUE_IN(10), VALUE_MM(250), VALUE_MM(50),           \
      VALUE_MM(1000), VALUE_DERIVED,                                                               \
      "room in line with a screw, beside its length: body + bit + slack")                          \
    V(DRIVER_RIGHT_ANGLE, "driver.right_angle", LENGTH, VALUE_IN(4), VALUE_MM(100), VALUE_MM(20),  \
      VALUE_MM(1000), VALUE_PRACTICE, "the same with a right-angle driver")                        \
    V(DRIVER_STUBBY, "driver.stubby", LENGTH, VALUE_IN(3), VALUE_MM(75), VALUE_MM(20),             \
      VALUE_MM(1000), VALUE_PRACTICE, "the same with a stubby or a ratchet")                       \
    V(DRIVER_RADIUS, "driver.radius", LENGTH, VALUE_IN(1.75), VALUE_MM(45), VALUE_MM(5),           \
      VALUE_MM(300), VALUE_PRACTICE, "screw's axis to a wall beside the driver")                   \
    V(DRIVER_RADIUS_LONG_BIT, "driver.radius.long_bit", LENGTH, VALUE_IN(0.5), VALUE_MM(12),       \
      VALUE_MM(2), VALUE_MM(300), VALUE_PRACTICE, "the same with a long bit")                      \
    V(DRIVER_OFF_AXIS, "driver.off_axis", ANGLE, VALUE_DEGREES(10), VALUE_DEGREES(10), 0,          \
      VALUE_DEGREES(30), VALUE_PRACTICE, "how far a driver may lean off the screw's axis")         \
    V(HAND_HOLE_WIDTH, "hand.hole.width", LENGTH, VALUE_IN(4), VALUE_MM(100), VALUE_MM(50),        \
      VALUE_MM(500), VALUE_PRACTICE, "hole for a hand, its narrow way")                            \
    V(HAND_HOLE_HEIGHT, "hand.hole.height", LENGTH, VALUE_IN(6), VALUE_MM(150), VALUE_MM(50),      \
      VALUE_MM(500), VALUE_PRACTICE, "hole for a hand, its wide way")                              \
    V(ARM_REACH, "arm.reach", LENGTH, VALUE_IN(22), VALUE_MM(560), VALUE_MM(100), VALUE_MM(1000),  \
      VALUE_PRACTICE, "how far an arm reaches from an opening")

/* staples */
#define TRADE_STAPLES_VALUES(V)                                                                    \
    V(STAPLE_TEMP_PITCH, "staple.temp.pitch", LENGTH, VALUE_IN(6), VALUE_MM(150), VALUE_MM(10),    \
      VALUE_MM(500), VALUE_PRACTICE, "temporary staples")                                          \
    V(STAPLE_TEMP_CORNER, "staple.temp.corner", LENGTH, VALUE_IN(6), VALUE_MM(150), 0,             \
      VALUE_MM(500), VALUE_PRACTICE, "temporary staples stop this far from a corner")              \
    V(STAPLE_BATTING_PITCH, "staple.batting.pitch", LENGTH, VALUE_IN(4), VALUE_MM(100),            \
      VALUE_MM(10), VALUE_MM(500), VALUE_PRACTICE, "staples in batting")                           \
    V(STAPLE_MUSLIN_PITCH, "staple.muslin.pitch", LENGTH, VALUE_IN(1.5), VALUE_MM(40),             \
      VALUE_MM(5), VALUE_MM(500), VALUE_PRACTICE, "staples in a lining under the cover")           \
    V(STAPLE_COVER_PITCH, "staple.cover.pitch", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(5),    \
      VALUE_MM(500), VALUE_PRACTICE, "staples in the cover, straight edges")                       \
    V(STAPLE_COVER_CURVE, "staple.cover.curve", LENGTH, VALUE_IN(0.5), VALUE_MM(12), VALUE_MM(3),  \
      VALUE_MM(500), VALUE_PRACTICE, "staples in the cover, curves and strain")                    \
    V(STAPLE_CORNER_EACH, "staple.corner.each", COUNT, 4, 4, 0, 50, VALUE_PRACTICE,                \
      "staples in the fold of a corner")                                                           \
    V(STAPLE_BLIND_PITCH, "staple.blind.pitch", LENGTH, VALUE_IN(3), VALUE_MM(75), VALUE_MM(5),    \
      VALUE_MM(500), VALUE_PRACTICE, "first row of a blind-tacked edge")                           \
    V(STAPLE_CARD_PITCH, "staple.card.pitch", LENGTH, VALUE_IN(0.75), VALUE_MM(20), VALUE_MM(5),   \
      VALUE_MM(500), VALUE_PRACTICE, "staples over the card strip")                                \
    V(STAPLE_BOTTOM_PITCH, "staple.bottom.pitch", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(5),  \
      VALUE_MM(500), VALUE_PRACTICE, "staples at the bottom of an outside back")                   \
    V(STAPLE_LINING_PITCH, "staple.lining.pitch", LENGTH, VALUE_IN(2), VALUE_MM(50), VALUE_MM(5),  \
      VALUE_MM(500), VALUE_PRACTICE, "staples in an inside lining")                                \
    V(STAPLE_DUST_PITCH, "staple.dust.pitch", LENGTH, VALUE_IN(1.5), VALUE_MM(40), VALUE_MM(5),    \
      VALUE_MM(500), VALUE_PRACTICE, "staples in a dust cover")                                    \
    V(STAPLE_WELT_PITCH, "staple.welt.pitch", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(5),      \
      VALUE_MM(500), VALUE_PRACTICE, "staples in the flange of a welt")                            \
    V(STAPLE_CORD_EACH, "staple.cord.each", COUNT, 3, 3, 0, 50, VALUE_PRACTICE,                    \
      "staples on a tuft's cord")                                                                  \
    V(STAPLE_WEB_FIRST, "staple.web.first", COUNT, 5, 5, 0, 50, VALUE_JOHNSON,                     \
      "staples at a webbing's end, before the fold")                                               \
    V(STAPLE_WEB_FOLD, "staple.web.fold", COUNT, 4, 4, 0, 50, VALUE_JOHNSON,                       \
      "staples over its fold; three tacks in the source, four staples here")                       \
    V(STAPLE_BITE_SOFT, "staple.bite.soft", LENGTH, VALUE_IN(0.3125), VALUE_MM(8), VALUE_MM(2),    \
      VALUE_MM(30), VALUE_PRACTICE, "staple's leg in softwood or plywood's face")                  \
    V(STAPLE_BITE_HARD, "staple.bite.hard", LENGTH, VALUE_IN(0.25), VALUE_MM(6), VALUE_MM(2),      \
      VALUE_MM(30), VALUE_PRACTICE, "staple's leg in hardwood")                                    \
    V(STAPLE_BITE_EDGE, "staple.bite.edge", LENGTH, VALUE_IN(0.5), VALUE_MM(12), VALUE_MM(2),      \
      VALUE_MM(30), VALUE_PRACTICE, "staple's leg in plywood's edge")                              \
    V(STAPLE_EDGE_PITCH, "staple.edge.pitch", LENGTH, VALUE_IN(0.75), VALUE_MM(19), VALUE_MM(5),   \
      VALUE_MM(500), VALUE_PRACTICE,                                                               \
      "staples in plywood's edge, where the pitch is wider elsewhere")                             \
    V(STAPLE_ROW_APART, "staple.row_apart", LENGTH, VALUE_IN(0.375), VALUE_MM(10), 0,              \
      VALUE_MM(50), VALUE_PRACTICE, "row of staples to the next one in the same wood")             \
    V(STAPLE_LEG_CLEAR, "staple.leg.clear", LENGTH, VALUE_IN(0.125), VALUE_MM(3), 0, VALUE_MM(20), \
      VALUE_PRACTICE, "staple's leg ends this far before the wood's far face")                     \
    V(STAPLE_WOOD_MIN, "staple.wood.min", LENGTH, VALUE_IN(0.375), VALUE_MM(9), VALUE_MM(2),       \
      VALUE_MM(50), VALUE_PRACTICE, "thinnest wood that holds a staple by itself")                 \
    V(STAPLE_WASTE, "staple.waste", RATIO, VALUE_RATIO(0.1), VALUE_RATIO(0.1), 0, VALUE_RATIO(1),  \
      VALUE_PRACTICE, "staples that misfire")

/* cloth: allowances and seams */
#define TRADE_CLOTH_VALUES(V)                                                                      \
    V(LANDING, "landing", LENGTH, VALUE_IN(1.5), VALUE_MM(38), 0, VALUE_MM(200), VALUE_PRACTICE,   \
      "wood that takes a cover's staples, from the edge")                                          \
    V(LANDING_NARROW, "landing.narrow", LENGTH, VALUE_IN(1.25), VALUE_MM(32), 0, VALUE_MM(200),    \
      VALUE_PRACTICE, "the same on a narrow edge")                                                 \
    V(LANDING_NARROW_EDGE, "landing.narrow.edge", LENGTH, VALUE_IN(1.5), VALUE_MM(38), 0,          \
      VALUE_MM(200), VALUE_PRACTICE, "wood up to this width is a narrow edge")                     \
    V(HANDLE, "handle", LENGTH, VALUE_IN(2), VALUE_MM(50), 0, VALUE_MM(300), VALUE_PRACTICE,       \
      "cloth to pull by, beyond the landing")                                                      \
    V(HANDLE_LEAST, "handle.least", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(300),           \
      VALUE_PRACTICE, "no hand pulls by less than this")                                           \
    V(HANDLE_MUSLIN, "handle.muslin", LENGTH, VALUE_IN(1.25), VALUE_MM(30), 0, VALUE_MM(300),      \
      VALUE_PRACTICE, "cloth to pull by, of a lining under the cover")                             \
    V(HANDLE_VINYL, "handle.vinyl", LENGTH, VALUE_IN(2.5), VALUE_MM(64), 0, VALUE_MM(300),         \
      VALUE_PRACTICE, "cloth to pull by, of vinyl")                                                \
    V(HANDLE_REST, "handle.rest", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0, VALUE_MM(50),            \
      VALUE_PRACTICE, "cloth left beyond the staples when the handle is trimmed")                  \
    V(CLOTH_THICKNESS, "cloth.thickness", LENGTH, VALUE_IN(0.04), VALUE_MM(1), 0, VALUE_MM(20),    \
      VALUE_PRACTICE, "one layer of cover cloth, pressed")                                         \
    V(MUSLIN_THICKNESS, "muslin.thickness", LENGTH, VALUE_IN(0.015), VALUE_MM(0.4), 0,             \
      VALUE_MM(20), VALUE_PRACTICE, "one layer of lining, pressed")                                \
    V(SEAM_ALLOWANCE, "seam.allowance", LENGTH, VALUE_IN(0.5), VALUE_MM(13), VALUE_MM(3),          \
      VALUE_MM(50), VALUE_PRACTICE, "seam allowance")                                              \
    V(SEAM_TAKE_UP, "seam.take_up", LENGTH, VALUE_IN(0.0625), VALUE_MM(1.5), 0, VALUE_MM(10),      \
      VALUE_PRACTICE, "what a seam in heavy cloth takes up")                                       \
    V(SEAM_CLIP_REST, "seam.clip.rest", LENGTH, VALUE_IN(0.0625), VALUE_MM(1.5), 0, VALUE_MM(20),  \
      VALUE_PRACTICE, "a corner is clipped to this distance from the stitch")                      \
    V(THREAD_PER_SEAM, "thread.per_seam", RATIO, VALUE_RATIO(3), VALUE_RATIO(3), VALUE_RATIO(1),   \
      VALUE_RATIO(20), VALUE_PRACTICE, "thread of a lockstitch, both sides, by length of seam")    \
    V(SEAM_MOVE, "seam.move", LENGTH, VALUE_IN(3), VALUE_MM(75), 0, VALUE_MM(500), VALUE_PRACTICE, \
      "a seam is moved this far to fall on a line that hides it")                                  \
    V(SEAM_CLEAR, "seam.clear", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),               \
      VALUE_PRACTICE, "a seam stays this far from a fold or a button")                             \
    V(SIDE_STRIP_MIN, "side_strip.min", LENGTH, VALUE_IN(4), VALUE_MM(100), 0, VALUE_MM(500),      \
      VALUE_PRACTICE, "narrowest strip beside a seam")                                             \
    V(COVER_EASE, "cover.ease", LENGTH, 0, 0, 0, VALUE_MM(100), VALUE_PRACTICE,                    \
      "ease of a pull-on cover over batting")                                                      \
    V(COVER_EASE_VINYL, "cover.ease.vinyl", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0, VALUE_MM(100), \
      VALUE_PRACTICE, "the same of vinyl")                                                         \
    V(COVER_EASE_SLIP, "cover.ease.slip", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),     \
      VALUE_PRACTICE, "ease of a slip-on cover, each way")                                         \
    V(COVER_HEM, "cover.hem", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200), VALUE_PRACTICE, \
      "hem at the open side of a slip-on cover")                                                   \
    V(BOXING_FROM, "boxing.from", LENGTH, VALUE_IN(2), VALUE_MM(50), 0, VALUE_MM(500),             \
      VALUE_PRACTICE, "a cover over more thickness than this gets a boxing strip")                 \
    V(CLOTH_ALLOW_AFTER_LAYOUT, "cloth.allow.after_layout", RATIO, VALUE_RATIO(0.05),              \
      VALUE_RATIO(0.05), 0, VALUE_RATIO(1), VALUE_PRACTICE,                                        \
      "cloth bought over, once it has been laid out")                                              \
    V(CLOTH_ALLOW_BY_AREA, "cloth.allow.by_area", RATIO, VALUE_RATIO(0.1), VALUE_RATIO(0.1), 0,    \
      VALUE_RATIO(1), VALUE_PRACTICE, "the same where only areas were summed")                     \
    V(CLOTH_ALLOW_PILE, "cloth.allow.pile", RATIO, VALUE_RATIO(0.05), VALUE_RATIO(0.05), 0,        \
      VALUE_RATIO(1), VALUE_PRACTICE, "more for pile with one way up")                             \
    V(CLOTH_ROUND, "cloth.round", LENGTH, VALUE_IN(9), VALUE_MM(100), 0, VALUE_MM(2000),           \
      VALUE_PRACTICE, "cloth is bought in steps of this: a quarter yard, or a tenth of a metre")   \
    V(CLOTH_RESERVE, "cloth.reserve", LENGTH, VALUE_IN(9), VALUE_MM(250), 0, VALUE_MM(5000),       \
      VALUE_PRACTICE, "cloth kept for repairs and buttons: a quarter yard, or a quarter metre")    \
    V(LINING_FOLD, "lining.fold", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),             \
      VALUE_PRACTICE, "fold at each edge of an inside lining")                                     \
    V(DUST_INSET, "dust.inset", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0, VALUE_MM(100),             \
      VALUE_PRACTICE, "dust cover ends this far inside the edge")                                  \
    V(DUST_FOLD, "dust.fold", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200), VALUE_PRACTICE, \
      "fold at each edge of a dust cover")                                                         \
    V(BACK_TOP, "back.top", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0, VALUE_MM(200), VALUE_PRACTICE, \
      "outside back, beyond the edge at the top")                                                  \
    V(BACK_SIDE, "back.side", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200), VALUE_PRACTICE, \
      "outside back, beyond the edge at each side")                                                \
    V(HIDDEN_DEPTH, "hidden.depth", LENGTH, VALUE_IN(4), VALUE_MM(100), 0, VALUE_MM(1000),         \
      VALUE_DERIVED, "cheap cloth begins this far out of sight")                                   \
    V(RELIEF_PITCH, "relief.pitch", LENGTH, VALUE_IN(2), VALUE_MM(50), VALUE_MM(5), VALUE_MM(500), \
      VALUE_PRACTICE, "relief cuts into cloth that goes over a curve, one to the next")            \
    V(RELIEF_SHORT, "relief.short", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),           \
      VALUE_PRACTICE, "a relief cut ends this far before the edge at first")                       \
    V(PATTERN_RISE, "pattern.rise", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),           \
      VALUE_PRACTICE, "a motif looks right this far above the middle of a back")

/* foam, batting, glue, webbing */
#define TRADE_PADDING_VALUES(V)                                                                    \
    V(FOAM_COMPRESS_SEAT, "foam.compress.seat", RATIO, VALUE_RATIO(0.85), VALUE_RATIO(0.85),       \
      VALUE_RATIO(0.1), VALUE_RATIO(1), VALUE_PRACTICE,                                            \
      "foam under a sitter, as a share of its thickness")                                          \
    V(FOAM_COMPRESS_BACK, "foam.compress.back", RATIO, VALUE_RATIO(1), VALUE_RATIO(1),             \
      VALUE_RATIO(0.1), VALUE_RATIO(1), VALUE_PRACTICE,                                            \
      "foam of a back, as a share of its thickness")                                               \
    V(FOAM_OVERSIZE_COVER, "foam.oversize.cover", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0,          \
      VALUE_MM(100), VALUE_PRACTICE, "foam over the finished size in a sewn cover, each way")      \
    V(FOAM_OVERSIZE_COVER_SOFT, "foam.oversize.cover.soft", LENGTH, VALUE_IN(1), VALUE_MM(25), 0,  \
      VALUE_MM(100), VALUE_PRACTICE, "the same of soft foam")                                      \
    V(FOAM_OVERSIZE_EDGE, "foam.oversize.edge", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0,            \
      VALUE_MM(100), VALUE_PRACTICE, "foam over the board at a side where its edge rolls over")    \
    V(BATTING_LOFT, "batting.loft", LENGTH, VALUE_IN(0.5), VALUE_MM(12), VALUE_MM(1),              \
      VALUE_MM(100), VALUE_PRACTICE, "batting as bought")                                          \
    V(BATTING_REST, "batting.rest", MINUTES, VALUE_MINUTES(720), VALUE_MINUTES(720), 0,            \
      VALUE_MINUTES(2880), VALUE_PRACTICE, "batting rests off its roll before it is cut")          \
    V(BATTING_COMPRESS, "batting.compress", RATIO, VALUE_RATIO(0.5), VALUE_RATIO(0.5),             \
      VALUE_RATIO(0.1), VALUE_RATIO(1), VALUE_PRACTICE,                                            \
      "batting under a cover, as a share of its loft")                                             \
    V(BATTING_KEEP_BACK, "batting.keep_back", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0,              \
      VALUE_MM(100), VALUE_PRACTICE, "batting ends this far before a mating zone")                 \
    V(BATTING_OVERWRAP, "batting.overwrap", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(300),   \
      VALUE_PRACTICE, "batting goes this far on to the face behind")                               \
    V(BATTING_OVERWRAP_TUFTED, "batting.overwrap.tufted", LENGTH, VALUE_IN(12), VALUE_MM(300), 0,  \
      VALUE_MM(1000), VALUE_PRACTICE, "batting beyond each side of a deep tufting field")          \
    V(SPRAY_PER_CAN, "spray.per_can", AREA, VALUE_FT2(20), VALUE_M2(1.9), VALUE_M2(0.1),           \
      VALUE_M2(100), VALUE_PRACTICE, "foam that one can glues, both faces sprayed")                \
    V(SPRAY_BATTING_SHARE, "spray.batting.share", RATIO, VALUE_RATIO(0.25), VALUE_RATIO(0.25), 0,  \
      VALUE_RATIO(1), VALUE_PRACTICE, "spray for batting, as a share of foam's")                   \
    V(SPRAY_TACK, "spray.tack", MINUTES, VALUE_MINUTES(1), VALUE_MINUTES(1), 0, VALUE_MINUTES(60), \
      VALUE_PRACTICE, "wait before the faces are pressed together")                                \
    V(SPRAY_SET, "spray.set", MINUTES, VALUE_MINUTES(30), VALUE_MINUTES(30), 0,                    \
      VALUE_MINUTES(1440), VALUE_PRACTICE, "wait before sprayed foam is loaded")                   \
    V(GLUE_PER_JOINT, "glue.per_joint", VOLUME, VALUE_OZ(0.1), VALUE_ML(3), 0, VALUE_ML(100),      \
      VALUE_PRACTICE, "wood glue in a joint")                                                      \
    V(GLUE_PER_METRE, "glue.per_metre", VOLUME, VALUE_OZ(0.3), VALUE_ML(8), 0, VALUE_ML(100),      \
      VALUE_PRACTICE, "wood glue for a metre of panel edge")                                       \
    V(GLUE_CLAMP, "glue.clamp", MINUTES, VALUE_MINUTES(45), VALUE_MINUTES(45), 0,                  \
      VALUE_MINUTES(1440), VALUE_PRACTICE, "wood glue stays clamped")                              \
    V(GLUE_CURE, "glue.cure", MINUTES, VALUE_MINUTES(1440), VALUE_MINUTES(1440), 0,                \
      VALUE_MINUTES(10080), VALUE_PRACTICE, "wood glue carries its load")                          \
    V(WEB_WIDTH, "web.width", LENGTH, VALUE_IN(3), VALUE_MM(75), VALUE_MM(10), VALUE_MM(300),      \
      VALUE_PRACTICE, "jute webbing")                                                              \
    V(WEB_THICKNESS, "web.thickness", LENGTH, VALUE_IN(0.0625), VALUE_MM(1.5), 0, VALUE_MM(20),    \
      VALUE_PRACTICE, "webbing, pressed")                                                          \
    V(WEB_FOLD, "web.fold", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200), VALUE_JOHNSON,    \
      "webbing left beyond its first staples and folded back")                                     \
    V(WEB_GAP, "web.gap", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(300), VALUE_PRACTICE,     \
      "strip to strip of woven webbing")                                                           \
    V(WEB_ELASTIC_GAP, "web.elastic.gap", LENGTH, VALUE_IN(1.5), VALUE_MM(38), 0, VALUE_MM(300),   \
      VALUE_PRACTICE, "strip to strip of elastic webbing")                                         \
    V(WEB_ELASTIC_STRETCH, "web.elastic.stretch", RATIO, VALUE_RATIO(0.1), VALUE_RATIO(0.1), 0,    \
      VALUE_RATIO(0.5), VALUE_PRACTICE, "elastic webbing is stretched by this")

/* welt, tufting, buttons, nails */
#define TRADE_TRIM_VALUES(V)                                                                       \
    V(WELT_CORD, "welt.cord", LENGTH, VALUE_IN(0.15625), VALUE_MM(4), VALUE_MM(1), VALUE_MM(50),   \
      VALUE_PRACTICE, "cord in a welt, across")                                                    \
    V(WELT_STEP, "welt.step", LENGTH, VALUE_IN(0.125), VALUE_MM(1), VALUE_MM(0.1), VALUE_MM(50),   \
      VALUE_PRACTICE, "strips of a welt are cut in whole steps of this")                           \
    V(WELT_JOIN, "welt.join", LENGTH, VALUE_IN(2), VALUE_MM(50), 0, VALUE_MM(300), VALUE_PRACTICE, \
      "welt over its run, for the join")                                                           \
    V(WELT_CORNER, "welt.corner", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0, VALUE_MM(100),           \
      VALUE_PRACTICE, "welt over its run, for each corner")                                        \
    V(WELT_DOUBLE, "welt.double", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0, VALUE_MM(100),           \
      VALUE_PRACTICE, "strip of a double welt, over two cords and two seams")                      \
    V(BIAS_EFFICIENCY, "bias.efficiency", RATIO, VALUE_RATIO(0.85), VALUE_RATIO(0.85),             \
      VALUE_RATIO(0.3), VALUE_RATIO(1), VALUE_PRACTICE,                                            \
      "share of the cloth that becomes bias strips")                                               \
    V(BIAS_SHORTEST, "bias.shortest", LENGTH, VALUE_IN(15), VALUE_MM(380), VALUE_MM(50),           \
      VALUE_MM(2000), VALUE_PRACTICE, "shortest bias strip that is sewn in")                       \
    V(CORD_EXTRA, "cord.extra", RATIO, VALUE_RATIO(0.05), VALUE_RATIO(0.05), 0, VALUE_RATIO(1),    \
      VALUE_PRACTICE, "welt cord bought over")                                                     \
    V(ZIP_LESS, "zip.less", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200), VALUE_PRACTICE,   \
      "a zip is shorter than its opening by this")                                                 \
    V(ZIP_BOXING, "zip.boxing", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),               \
      VALUE_PRACTICE, "boxing at a zip is wider by this")                                          \
    V(TUFT_WIDTH, "tuft.width", LENGTH, VALUE_IN(5), VALUE_MM(125), VALUE_MM(20), VALUE_MM(500),   \
      VALUE_PRACTICE, "diamond, across")                                                           \
    V(TUFT_HEIGHT, "tuft.height", LENGTH, VALUE_IN(7), VALUE_MM(175), VALUE_MM(20), VALUE_MM(500), \
      VALUE_PRACTICE, "diamond, up")                                                               \
    V(TUFT_BORDER, "tuft.border", LENGTH, VALUE_IN(4), VALUE_MM(100), 0, VALUE_MM(1000),           \
      VALUE_PRACTICE, "edge to the outer button")                                                  \
    V(TUFT_PULL_REST, "tuft.pull.rest", LENGTH, VALUE_IN(1.5), VALUE_MM(38), 0, VALUE_MM(300),     \
      VALUE_PRACTICE, "foam left under a button: it is pulled the foam less this")                 \
    V(TUFT_EXTRA_PER_DIAMOND, "tuft.extra_per_diamond", RATIO, VALUE_RATIO(1), VALUE_RATIO(1), 0,  \
      VALUE_RATIO(4), VALUE_PRACTICE, "cloth for a deep diamond each way, as a share of the pull") \
    V(TUFT_EXTRA_SHALLOW, "tuft.extra.shallow", LENGTH, VALUE_IN(0.5), VALUE_MM(12), 0,            \
      VALUE_MM(100), VALUE_PRACTICE, "cloth for a shallow space each way")                         \
    V(TUFT_HOLE, "tuft.hole", LENGTH, VALUE_IN(0.375), VALUE_MM(10), VALUE_MM(2), VALUE_MM(50),    \
      VALUE_PRACTICE, "hole in the board for a tuft's cord")                                       \
    V(TUFT_HOLE_FOAM, "tuft.hole.foam", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(2),            \
      VALUE_MM(100), VALUE_PRACTICE, "hole in the foam for a button")                              \
    V(TUFT_HOLE_TO_MEMBER, "tuft.hole_to_member", LENGTH, VALUE_IN(0.75), VALUE_MM(19), 0,         \
      VALUE_MM(100), VALUE_PRACTICE, "tuft's hole to the nearest member")                          \
    V(TUFT_CORD, "tuft.cord", LENGTH, VALUE_IN(24), VALUE_MM(600), VALUE_MM(100), VALUE_MM(3000),  \
      VALUE_PRACTICE, "cord for each button, doubled")                                             \
    V(BUTTON_WASTE, "button.waste", RATIO, VALUE_RATIO(0.05), VALUE_RATIO(0.05), 0,                \
      VALUE_RATIO(1), VALUE_PRACTICE, "buttons bought over")                                       \
    V(BUTTON_DIAMETER, "button.diameter", LENGTH, VALUE_IN(0.875), VALUE_MM(22), VALUE_MM(5),      \
      VALUE_MM(100), VALUE_PRACTICE, "button")                                                     \
    V(BUTTON_CLOTH, "button.cloth", RATIO, VALUE_RATIO(2), VALUE_RATIO(2), VALUE_RATIO(1),         \
      VALUE_RATIO(5), VALUE_PRACTICE, "circle of cloth for a button, in its diameters")            \
    V(NAIL_DIAMETER, "nail.diameter", LENGTH, VALUE_IN(0.4375), VALUE_MM(11), VALUE_MM(3),         \
      VALUE_MM(50), VALUE_PRACTICE, "nailhead")                                                    \
    V(NAIL_PITCH_TOUCHING, "nail.pitch.touching", RATIO, VALUE_RATIO(1), VALUE_RATIO(1),           \
      VALUE_RATIO(1), VALUE_RATIO(3), VALUE_DERIVED, "touching nails, in their diameters")         \
    V(NAIL_PITCH_SPACED, "nail.pitch.spaced", LENGTH, VALUE_IN(1), VALUE_MM(25), VALUE_MM(5),      \
      VALUE_MM(300), VALUE_PRACTICE, "spaced nails")                                               \
    V(NAIL_EDGE, "nail.edge", LENGTH, VALUE_IN(0.5), VALUE_MM(12), VALUE_MM(2), VALUE_MM(100),     \
      VALUE_PRACTICE, "row of nails from the wood's edge")                                         \
    V(NAIL_STRIP_REAL_EVERY, "nail.strip.real_every", COUNT, 5, 5, 1, 50, VALUE_PRACTICE,          \
      "one real nail in so many heads of a strip")                                                 \
    V(NAIL_WASTE, "nail.waste", RATIO, VALUE_RATIO(0.05), VALUE_RATIO(0.05), 0, VALUE_RATIO(1),    \
      VALUE_PRACTICE, "nails that bend")                                                           \
    V(NAIL_STRIP_LESS, "nail_strip.less", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),     \
      VALUE_PRACTICE, "metal nail strip ends this far before each end")                            \
    V(CARD_WASTE, "card.waste", RATIO, VALUE_RATIO(0.05), VALUE_RATIO(0.05), 0, VALUE_RATIO(1),    \
      VALUE_PRACTICE, "card strip bought over")                                                    \
    V(GIMP_EXTRA, "gimp.extra", LENGTH, VALUE_IN(3), VALUE_MM(75), 0, VALUE_MM(500),               \
      VALUE_PRACTICE, "gimp over its run")                                                         \
    V(GIMP_CORNER, "gimp.corner", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),             \
      VALUE_PRACTICE, "gimp for each corner")

/* mattress, lid, moving */
#define TRADE_ROOM_VALUES(V)                                                                       \
    V(WALL_BOARD, "wall.board", LENGTH, VALUE_IN(0.5), VALUE_MM(12.5), 0, VALUE_MM(100),           \
      VALUE_PRACTICE, "board or plaster on a wall's studs, that a screw passes")                   \
    V(MATTRESS_WING, "mattress.wing", LENGTH, VALUE_IN(1), VALUE_MM(25), 0, VALUE_MM(200),         \
      VALUE_PRACTICE, "mattress to a padded wing, each side")                                      \
    V(LID_GAP, "lid.gap", LENGTH, VALUE_IN(0.375), VALUE_MM(10), 0, VALUE_MM(50), VALUE_PRACTICE,  \
      "gap for fingers under a lid")                                                               \
    V(LID_HINGE_GAP, "lid.hinge.gap", LENGTH, VALUE_IN(0.0625), VALUE_MM(1.5), 0, VALUE_MM(20),    \
      VALUE_PRACTICE, "gap at a hinge beside its two layers of cloth")                             \
    V(LID_STAY_LEAST, "lid.stay.least", RATIO, VALUE_RATIO(1), VALUE_RATIO(1), VALUE_RATIO(0.5),   \
      VALUE_RATIO(3), VALUE_SAFETY, "stays hold this share of a lid's turning weight, at least")   \
    V(LID_STAY_MOST, "lid.stay.most", RATIO, VALUE_RATIO(1.2), VALUE_RATIO(1.2), VALUE_RATIO(0.5), \
      VALUE_RATIO(3), VALUE_SAFETY, "and at the most")                                             \
    V(LID_VENT, "lid.vent", AREA, VALUE_IN2(2), VALUE_CM2(13), 0, VALUE_CM2(1000), VALUE_SAFETY,   \
      "air gaps of a closed chest, together")                                                      \
    V(DOOR_MARGIN, "door.margin", LENGTH, VALUE_IN(2), VALUE_MM(50), 0, VALUE_MM(500),             \
      VALUE_PRACTICE, "room beside a box on its way, at least")                                    \
    V(DOOR_MARGIN_GOOD, "door.margin.good", LENGTH, VALUE_IN(3), VALUE_MM(75), 0, VALUE_MM(500),   \
      VALUE_PRACTICE, "room beside a box on its way that lets it pass at ease")                    \
    V(STAIR_SLOPE, "stair.slope", RATIO, VALUE_RATIO(0.79), VALUE_RATIO(0.79), VALUE_RATIO(0.5),   \
      VALUE_RATIO(1), VALUE_DERIVED,                                                               \
      "head-room square to a stair's slope, by the plumb one: 10 / sqrt(10^2 + 7-3/4^2)")          \
    V(STAIRS_FACTOR, "stairs.factor", RATIO, VALUE_RATIO(0.7), VALUE_RATIO(0.7), VALUE_RATIO(0.2), \
      VALUE_RATIO(1), VALUE_PRACTICE, "what people carry on a stair, by what they carry level")    \
    V(LIFT_CONSTANT, "lift.constant", MASS, VALUE_LB(51), VALUE_KG(23), VALUE_KG(5), VALUE_KG(40), \
      VALUE_NIOSH, "load constant of the lifting equation: what one lifts at best")                \
    V(LIFT_TEAM_TWO, "lift.team.two", RATIO, VALUE_RATIO(0.666667), VALUE_RATIO(0.666667),         \
      VALUE_RATIO(0.3), VALUE_RATIO(1), VALUE_TEAM,                                                \
      "two people are good for this share of the sum of what each lifts")                          \
    V(LIFT_TEAM_THREE, "lift.team.three", RATIO, VALUE_RATIO(0.5), VALUE_RATIO(0.5),               \
      VALUE_RATIO(0.2), VALUE_RATIO(1), VALUE_TEAM, "and three or more for this share")            \
    V(ONE_PERSON_WEIGHT, "one_person.weight", MASS, VALUE_LB(50), VALUE_KG(23), VALUE_KG(1),       \
      VALUE_KG(200), VALUE_PRACTICE, "heaviest box for one person")                                \
    V(ONE_PERSON_LENGTH, "one_person.length", LENGTH, VALUE_IN(72), VALUE_MM(1800), VALUE_MM(100), \
      VALUE_MM(5000), VALUE_PRACTICE, "longest box for one person")                                \
    V(TWO_PEOPLE_WEIGHT, "two_people.weight", MASS, VALUE_LB(130), VALUE_KG(60), VALUE_KG(1),      \
      VALUE_KG(400), VALUE_PRACTICE, "heaviest box for two people")                                \
    V(TWO_PEOPLE_FRAME, "two_people.frame", LENGTH, VALUE_IN(72), VALUE_MM(1800), VALUE_MM(100),   \
      VALUE_MM(5000), VALUE_PRACTICE, "frame that is longer wants two people")                     \
    V(TWO_PEOPLE_PANEL, "two_people.panel", LENGTH, VALUE_IN(60), VALUE_MM(1500), VALUE_MM(100),   \
      VALUE_MM(5000), VALUE_PRACTICE, "panel that is longer wants two people")                     \
    V(TWO_PEOPLE_CLOTH, "two_people.cloth", LENGTH, VALUE_IN(60), VALUE_MM(1500), VALUE_MM(100),   \
      VALUE_MM(5000), VALUE_PRACTICE, "cover that is longer wants two people")

/* strength, as guidance */
#define TRADE_STRENGTH_VALUES(V)                                                                  \
    V(STRENGTH_LOAD, "strength.load", MASS, VALUE_LB(250), VALUE_KG(115), VALUE_KG(20),           \
      VALUE_KG(500), VALUE_PRACTICE,                                                              \
      "a person who sits down, in the middle of a strip or a member")                             \
    V(STRENGTH_STRIP, "strength.strip", LENGTH, VALUE_IN(12), VALUE_MM(300), VALUE_MM(50),        \
      VALUE_MM(1000), VALUE_PRACTICE, "width of panel that carries such a person")                \
    V(STRENGTH_DEFLECTION, "strength.deflection", COUNT, 180, 180, 60, 1000, VALUE_IBC,           \
      "what is sat on bends by its span over this at the most")                                   \
    V(STRENGTH_PULL, "strength.pull", MASS, VALUE_LB(100), VALUE_KG(45), VALUE_KG(5),             \
      VALUE_KG(500), VALUE_PRACTICE, "pull on a join when a person leans")                        \
    V(SHEET_STIFFNESS, "sheet.stiffness", COUNT, 8963, 8963, 1000, 20000, VALUE_PRACTICE,         \
      "modulus of elasticity of plywood across its supports, in MPa; 1.3 million psi")            \
    V(WOOD_STIFFNESS_SOFT, "wood.stiffness.soft", COUNT, 8274, 8274, 1000, 20000, VALUE_PRACTICE, \
      "the same of softwood, low grades; 1.2 million psi")                                        \
    V(WOOD_STIFFNESS_HARD, "wood.stiffness.hard", COUNT, 12400, 12400, 1000, 20000,               \
      VALUE_PRACTICE, "and of hardwood; 1.8 million psi")                                         \
    V(WOOD_GRAVITY_SOFT, "wood.gravity.soft", RATIO, VALUE_RATIO(0.42), VALUE_RATIO(0.42),        \
      VALUE_RATIO(0.2), VALUE_RATIO(1.2), VALUE_PRACTICE,                                         \
      "specific gravity of softwood that screws bite into: spruce, pine and fir")                 \
    V(WOOD_GRAVITY_HARD, "wood.gravity.hard", RATIO, VALUE_RATIO(0.6), VALUE_RATIO(0.6),          \
      VALUE_RATIO(0.2), VALUE_RATIO(1.2), VALUE_PRACTICE, "the same of hardwood")                 \
    V(BED_BEAM_WIDTH, "bed.beam.width", LENGTH, VALUE_IN(54), VALUE_MM(1370), VALUE_MM(500),      \
      VALUE_MM(3000), VALUE_PRACTICE,                                                             \
      "a bed wider than this wants a rail with legs along its middle")                            \
    V(BED_LEG_PITCH, "bed.leg.pitch", LENGTH, VALUE_IN(36), VALUE_MM(900), VALUE_MM(200),         \
      VALUE_MM(2000), VALUE_PRACTICE, "leg to leg along that rail, at most")                      \
    V(SLAT_WIDTH, "slat.width", LENGTH, VALUE_IN(2), VALUE_MM(50), VALUE_MM(10), VALUE_MM(200),   \
      VALUE_PRACTICE, "a slat under a mattress is at least so wide")                              \
    V(SLAT_THICK, "slat.thick", LENGTH, VALUE_IN(0.75), VALUE_MM(18), VALUE_MM(8), VALUE_MM(100), \
      VALUE_PRACTICE, "and so thick")                                                             \
    V(SLAT_GAP, "slat.gap", LENGTH, VALUE_IN(3), VALUE_MM(75), VALUE_MM(10), VALUE_MM(300),       \
      VALUE_PRACTICE, "slat to slat, clear, at most; and never more than a slat is wide")         \
    V(SLAT_DEFLECTION, "slat.deflection", COUNT, 60, 60, 20, 1000, VALUE_PRACTICE,                \
      "a slat bends by its span over this at the most; the mattress takes it up")                 \
    V(TIP_HEIGHT, "tip.height", LENGTH, VALUE_IN(27), VALUE_MM(690), VALUE_MM(100),               \
      VALUE_MM(3000), VALUE_STURDY, "what is lower than this is not looked at for tipping")       \
    V(TIP_PUSH, "tip.push", MASS, VALUE_LB(50), VALUE_KG(23), VALUE_KG(1), VALUE_KG(200),         \
      VALUE_PRACTICE, "a level push at its top that a piece stands")

/* minutes of a practised maker */
#define TRADE_TIMES_VALUES(V)                                                                      \
    V(MINUTES_MEASURE_ROOM, "minutes.measure_room", MINUTES, VALUE_MINUTES(20), VALUE_MINUTES(20), \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "measure the room and the way in")                    \
    V(MINUTES_SHELF, "minutes.shelf", MINUTES, VALUE_MINUTES(10), VALUE_MINUTES(10), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "look over the shelf")                                   \
    V(MINUTES_SHOPPING, "minutes.shopping", MINUTES, VALUE_MINUTES(30), VALUE_MINUTES(30), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "buy, each trip")                                        \
    V(MINUTES_PICK_STICKS, "minutes.pick_sticks", MINUTES, VALUE_MINUTES(20), VALUE_MINUTES(20),   \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "pick and measure sticks")                            \
    V(MINUTES_CROSSCUT, "minutes.crosscut", MINUTES, VALUE_MINUTES(1.5), VALUE_MINUTES(1.5), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each crosscut, marking included")                       \
    V(MINUTES_SHEET_CUT, "minutes.sheet_cut", MINUTES, VALUE_MINUTES(6), VALUE_MINUTES(6), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each cut of a sheet at home")                           \
    V(MINUTES_OUTLINE, "minutes.outline", MINUTES, VALUE_MINUTES(4), VALUE_MINUTES(4), 0,          \
      VALUE_MINUTES(120), VALUE_PRACTICE, "saw along a curve or slope, each metre")                \
    V(MINUTES_LABEL, "minutes.label", MINUTES, VALUE_MINUTES(0.3), VALUE_MINUTES(0.3), 0,          \
      VALUE_MINUTES(120), VALUE_PRACTICE, "label a part")                                          \
    V(MINUTES_JOINT, "minutes.joint", MINUTES, VALUE_MINUTES(4), VALUE_MINUTES(4), 0,              \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each frame joint: glue, hold, two screws")              \
    V(MINUTES_SCREW, "minutes.screw", MINUTES, VALUE_MINUTES(1.1), VALUE_MINUTES(1.1), 0,          \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each screw, pilot and countersink included")            \
    V(MINUTES_PANEL_SCREW, "minutes.panel_screw", MINUTES, VALUE_MINUTES(0.5), VALUE_MINUTES(0.5), \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "each panel screw")                                   \
    V(MINUTES_RECORD_BOX, "minutes.record_box", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "measure a box as it was built")                         \
    V(MINUTES_DRY_FIT, "minutes.dry_fit", MINUTES, VALUE_MINUTES(15), VALUE_MINUTES(15), 0,        \
      VALUE_MINUTES(120), VALUE_PRACTICE, "dry-fit a join")                                        \
    V(MINUTES_MATCH_DRILL, "minutes.match_drill", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each hole drilled through both boxes and mapped")       \
    V(MINUTES_DRIVE_ONCE, "minutes.drive_once", MINUTES, VALUE_MINUTES(1), VALUE_MINUTES(1), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "drive a join's screw once and back it out")             \
    V(MINUTES_MAP_HOLE, "minutes.map_hole", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2), 0,        \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each hole written on the map")                          \
    V(MINUTES_EASE_EDGES, "minutes.ease_edges", MINUTES, VALUE_MINUTES(10), VALUE_MINUTES(10), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "ease the edges of a box")                               \
    V(MINUTES_INSERT, "minutes.insert", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each T-nut or insert")                                  \
    V(MINUTES_TUFT_HOLE, "minutes.tuft_hole", MINUTES, VALUE_MINUTES(0.7), VALUE_MINUTES(0.7), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each tuft's hole in the board")                         \
    V(MINUTES_TUFT_HOLE_FOAM, "minutes.tuft_hole_foam", MINUTES, VALUE_MINUTES(1),                 \
      VALUE_MINUTES(1), 0, VALUE_MINUTES(120), VALUE_PRACTICE, "each tuft's hole in the foam")     \
    V(MINUTES_PATCH, "minutes.patch", MINUTES, VALUE_MINUTES(1), VALUE_MINUTES(1), 0,              \
      VALUE_MINUTES(120), VALUE_PRACTICE, "mark or bare a patch")                                  \
    V(MINUTES_LOCATOR, "minutes.locator", MINUTES, VALUE_MINUTES(0.3), VALUE_MINUTES(0.3), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "set or take out a locator")                             \
    V(MINUTES_INSPECT_CLOTH, "minutes.inspect_cloth", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2), \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "inspect cloth, per metre")                           \
    V(MINUTES_CHALK, "minutes.chalk", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,              \
      VALUE_MINUTES(120), VALUE_PRACTICE, "chalk a piece")                                         \
    V(MINUTES_CUT_PLAIN, "minutes.cut_plain", MINUTES, VALUE_MINUTES(4), VALUE_MINUTES(4), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "cut a plain piece")                                     \
    V(MINUTES_CUT_PATTERNED, "minutes.cut_patterned", MINUTES, VALUE_MINUTES(8), VALUE_MINUTES(8), \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "cut a patterned piece")                              \
    V(MINUTES_TEST_SEAM, "minutes.test_seam", MINUTES, VALUE_MINUTES(10), VALUE_MINUTES(10), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "sew a test seam")                                       \
    V(MINUTES_SEAM, "minutes.seam", MINUTES, VALUE_MINUTES(2.5), VALUE_MINUTES(2.5), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "straight seam, per metre")                              \
    V(MINUTES_BOXING_SEAM, "minutes.boxing_seam", MINUTES, VALUE_MINUTES(5), VALUE_MINUTES(5), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "boxing seam, per metre")                                \
    V(MINUTES_BOXING_CORNER, "minutes.boxing_corner", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2), \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "each corner of a boxing seam")                       \
    V(MINUTES_WELT_MAKE, "minutes.welt_make", MINUTES, VALUE_MINUTES(2.5), VALUE_MINUTES(2.5), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "make welt, per metre")                                  \
    V(MINUTES_WELT_ATTACH, "minutes.welt_attach", MINUTES, VALUE_MINUTES(4), VALUE_MINUTES(4), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "attach welt, per metre")                                \
    V(MINUTES_ZIP, "minutes.zip", MINUTES, VALUE_MINUTES(15), VALUE_MINUTES(15), 0,                \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each zip")                                              \
    V(MINUTES_TRY_COVER, "minutes.try_cover", MINUTES, VALUE_MINUTES(10), VALUE_MINUTES(10), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "try a sewn cover on its box")                           \
    V(MINUTES_BUTTON_COVER, "minutes.button_cover", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2),   \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "cover a button")                                     \
    V(MINUTES_FOAM_CUT, "minutes.foam_cut", MINUTES, VALUE_MINUTES(1.5), VALUE_MINUTES(1.5), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "cut foam, per metre")                                   \
    V(MINUTES_FOAM_GLUE, "minutes.foam_glue", MINUTES, VALUE_MINUTES(4), VALUE_MINUTES(4), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "glue foam, per square metre")                           \
    V(MINUTES_FOAM_WAIT, "minutes.foam_wait", MINUTES, VALUE_MINUTES(10), VALUE_MINUTES(10), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "wait for the glue on foam")                             \
    V(MINUTES_BATTING, "minutes.batting", MINUTES, VALUE_MINUTES(1), VALUE_MINUTES(1), 0,          \
      VALUE_MINUTES(120), VALUE_PRACTICE, "batting, per metre")                                    \
    V(MINUTES_BATTING_PIECE, "minutes.batting_piece", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2), \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "each piece of batting")                              \
    V(MINUTES_MUSLIN, "minutes.muslin", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "lining under the cover, per metre")                     \
    V(MINUTES_LAY_COVER, "minutes.lay_cover", MINUTES, VALUE_MINUTES(5), VALUE_MINUTES(5), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "lay a cover and match its marks")                       \
    V(MINUTES_BASTE, "minutes.baste", MINUTES, VALUE_MINUTES(1), VALUE_MINUTES(1), 0,              \
      VALUE_MINUTES(120), VALUE_PRACTICE, "temporary staples, per metre")                          \
    V(MINUTES_LOOK, "minutes.look", MINUTES, VALUE_MINUTES(5), VALUE_MINUTES(5), 0,                \
      VALUE_MINUTES(120), VALUE_PRACTICE, "stand a box up and look")                               \
    V(MINUTES_COVER_AIR, "minutes.cover_air", MINUTES, VALUE_MINUTES(4), VALUE_MINUTES(4), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "final staples with an air or electric gun, per metre")  \
    V(MINUTES_COVER_HAND, "minutes.cover_hand", MINUTES, VALUE_MINUTES(8), VALUE_MINUTES(8), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "final staples with a hand gun, per metre")              \
    V(MINUTES_CORNER, "minutes.corner", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each corner fold")                                      \
    V(MINUTES_BUTTON_DEEP, "minutes.button_deep", MINUTES, VALUE_MINUTES(8), VALUE_MINUTES(8), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each deep button")                                      \
    V(MINUTES_BUTTON_SURFACE, "minutes.button_surface", MINUTES, VALUE_MINUTES(3),                 \
      VALUE_MINUTES(3), 0, VALUE_MINUTES(120), VALUE_PRACTICE, "each surface button")              \
    V(MINUTES_SLIT, "minutes.slit", MINUTES, VALUE_MINUTES(0.5), VALUE_MINUTES(0.5), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each slit for a screw")                                 \
    V(MINUTES_TRIM_HANDLES, "minutes.trim_handles", MINUTES, VALUE_MINUTES(1), VALUE_MINUTES(1),   \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "trim handles, per metre")                            \
    V(MINUTES_FIND_HOLE, "minutes.find_hole", MINUTES, VALUE_MINUTES(0.5), VALUE_MINUTES(0.5), 0,  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "find a pilot hole again")                               \
    V(MINUTES_OFFER, "minutes.offer", MINUTES, VALUE_MINUTES(5), VALUE_MINUTES(5), 0,              \
      VALUE_MINUTES(120), VALUE_PRACTICE, "offer two boxes to each other and clamp")               \
    V(MINUTES_JOIN_SCREW, "minutes.join_screw", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "find, start and drive a join's screw")                  \
    V(MINUTES_FLAP, "minutes.flap", MINUTES, VALUE_MINUTES(6), VALUE_MINUTES(6), 0,                \
      VALUE_MINUTES(120), VALUE_PRACTICE, "close a flap, per metre")                               \
    V(MINUTES_BLIND_TOP, "minutes.blind_top", MINUTES, VALUE_MINUTES(6), VALUE_MINUTES(6), 0,      \
      VALUE_MINUTES(120), VALUE_PRACTICE, "blind-tack the top of an outside back, per metre")      \
    V(MINUTES_BLIND_SIDE, "minutes.blind_side", MINUTES, VALUE_MINUTES(8), VALUE_MINUTES(8), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "sides of an outside back, per metre")                   \
    V(MINUTES_BLIND_BOTTOM, "minutes.blind_bottom", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3),   \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "bottom of an outside back, per metre")               \
    V(MINUTES_SLIP_STITCH, "minutes.slip_stitch", MINUTES, VALUE_MINUTES(12), VALUE_MINUTES(12),   \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "slip stitch by hand, per metre")                     \
    V(MINUTES_DUST_COVER, "minutes.dust_cover", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "dust cover, per metre")                                 \
    V(MINUTES_LINING, "minutes.lining", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "inside lining, per metre")                              \
    V(MINUTES_WEBBING, "minutes.webbing", MINUTES, VALUE_MINUTES(2), VALUE_MINUTES(2), 0,          \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each strip of webbing")                                 \
    V(MINUTES_HINGE, "minutes.hinge", MINUTES, VALUE_MINUTES(5), VALUE_MINUTES(5), 0,              \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each hinge or stay")                                    \
    V(MINUTES_NAIL, "minutes.nail", MINUTES, VALUE_MINUTES(0.6), VALUE_MINUTES(0.6), 0,            \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each nail")                                             \
    V(MINUTES_NAIL_STRIP, "minutes.nail_strip", MINUTES, VALUE_MINUTES(5), VALUE_MINUTES(5), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "nail strip, per metre")                                 \
    V(MINUTES_LEG, "minutes.leg", MINUTES, VALUE_MINUTES(3), VALUE_MINUTES(3), 0,                  \
      VALUE_MINUTES(120), VALUE_PRACTICE, "each leg or glide")                                     \
    V(MINUTES_MOVE_BOX, "minutes.move_box", MINUTES, VALUE_MINUTES(5), VALUE_MINUTES(5), 0,        \
      VALUE_MINUTES(120), VALUE_PRACTICE, "carry a box")                                           \
    V(MINUTES_MOVE_FLIGHT, "minutes.move_flight", MINUTES, VALUE_MINUTES(10), VALUE_MINUTES(10),   \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "more for each flight of stairs")                     \
    V(MINUTES_MARK_ROOM, "minutes.mark_room", MINUTES, VALUE_MINUTES(20), VALUE_MINUTES(20), 0,    \
      VALUE_MINUTES(120), VALUE_PRACTICE, "mark level and studs")                                  \
    V(MINUTES_SET_BOX, "minutes.set_box", MINUTES, VALUE_MINUTES(10), VALUE_MINUTES(10), 0,        \
      VALUE_MINUTES(120), VALUE_PRACTICE, "set a box level in the room")                           \
    V(MINUTES_FINAL_CHECK, "minutes.final_check", MINUTES, VALUE_MINUTES(15), VALUE_MINUTES(15),   \
      0, VALUE_MINUTES(120), VALUE_PRACTICE, "check the finished piece")                           \
    V(MINUTES_ACCOUNT, "minutes.account", MINUTES, VALUE_MINUTES(15), VALUE_MINUTES(15), 0,        \
      VALUE_MINUTES(120), VALUE_PRACTICE, "book time, money and leftovers")                        \
    V(MINUTES_SESSION, "minutes.session", MINUTES, VALUE_MINUTES(30), VALUE_MINUTES(30), 0,        \
      VALUE_MINUTES(120), VALUE_PRACTICE, "set up and clean, each session")

/* what minutes are multiplied by */
#define TRADE_FACTORS_VALUES(V)                                                                    \
    V(LEARNER_FIRST, "learner.first", RATIO, VALUE_RATIO(1.6), VALUE_RATIO(1.6), VALUE_RATIO(1),   \
      VALUE_RATIO(10), VALUE_PRACTICE, "first of its kind")                                        \
    V(LEARNER_SECOND, "learner.second", RATIO, VALUE_RATIO(1.3), VALUE_RATIO(1.3), VALUE_RATIO(1), \
      VALUE_RATIO(10), VALUE_PRACTICE, "second of its kind")                                       \
    V(LEARNER_REST, "learner.rest", RATIO, VALUE_RATIO(1), VALUE_RATIO(1), VALUE_RATIO(0.1),       \
      VALUE_RATIO(10), VALUE_PRACTICE, "all after that")                                           \
    V(FACTOR_TOUCHY, "factor.touchy", RATIO, VALUE_RATIO(1.25), VALUE_RATIO(1.25), VALUE_RATIO(1), \
      VALUE_RATIO(10), VALUE_PRACTICE, "velvet and vinyl")                                         \
    V(FACTOR_PATTERN, "factor.pattern", RATIO, VALUE_RATIO(1.35), VALUE_RATIO(1.35),               \
      VALUE_RATIO(1), VALUE_RATIO(10), VALUE_PRACTICE, "stripes and repeats")                      \
    V(FACTOR_CURVE, "factor.curve", RATIO, VALUE_RATIO(1.25), VALUE_RATIO(1.25), VALUE_RATIO(1),   \
      VALUE_RATIO(10), VALUE_PRACTICE, "curved edges")                                             \
    V(FACTOR_ALONE, "factor.alone", RATIO, VALUE_RATIO(1.5), VALUE_RATIO(1.5), VALUE_RATIO(1),     \
      VALUE_RATIO(10), VALUE_PRACTICE, "alone at what wants two people")

#define TRADE_GROUPS(G)                                          \
    G("sticks, sheets and what they weigh", TRADE_LUMBER_VALUES) \
    G("screws and bolts", TRADE_SCREWS_VALUES)                   \
    G("panels and what carries them", TRADE_PANELS_VALUES)       \
    G("how tight a dry sheet is bent", TRADE_BEND_VALUES)        \
    G("where screws may sit", TRADE_PLACES_VALUES)               \
    G("patches, openings and the driver", TRADE_ACCESS_VALUES)   \
    G("staples", TRADE_STAPLES_VALUES)                           \
    G("cloth: allowances and seams", TRADE_CLOTH_VALUES)         \
    G("foam, batting, glue, webbing", TRADE_PADDING_VALUES)      \
    G("welt, tufting, buttons, nails", TRADE_TRIM_VALUES)        \
    G("mattress, lid, moving", TRADE_ROOM_VALUES)                \
    G("strength, as guidance", TRADE_STRENGTH_VALUES)            \
    G("minutes of a practised maker", TRADE_TIMES_VALUES)        \
    G("what minutes are multiplied by", TRADE_FACTORS_VALUES)

#define TRADE_VALUES(V)      \
    TRADE_LUMBER_VALUES(V)   \
    TRADE_SCREWS_VALUES(V)   \
    TRADE_PANELS_VALUES(V)   \
    TRADE_BEND_VALUES(V)     \
    TRADE_PLACES_VALUES(V)   \
    TRADE_ACCESS_VALUES(V)   \
    TRADE_STAPLES_VALUES(V)  \
    TRADE_CLOTH_VALUES(V)    \
    TRADE_PADDING_VALUES(V)  \
    TRADE_TRIM_VALUES(V)     \
    TRADE_ROOM_VALUES(V)     \
    TRADE_STRENGTH_VALUES(V) \
    TRADE_TIMES_VALUES(V)    \
    TRADE_FACTORS_VALUES(V)

#endif
