/* The table of trade values; see trade.h for its columns. */
#ifndef MODEL_VALUES_H
#define MODEL_VALUES_H

#define VALUE_IN(inch) ((int64_t)((inch)*8128.0))
#define VALUE_MM(mm) ((int64_t)((mm)*320.0))
#define VALUE_RATIO(ratio) ((int64_t)((ratio)*1000000.0 + 0.5))

/* clang-format off: one value a line reads as the table that it is */
#define TRADE_VALUES(V) \
    V(KERF, "kerf", LENGTH, VALUE_IN(0.125), VALUE_MM(3), 0, VALUE_MM(10), "common practice, no source", "width of the saw's cut") \
    V(STICK_TRIM, "stick.trim", LENGTH, VALUE_IN(0.25), VALUE_MM(6), 0, VALUE_MM(100), "common practice, no source", "cut off each stick to square one end")
/* clang-format on */

#endif
