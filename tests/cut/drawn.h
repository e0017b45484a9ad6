/*
 * Jobs as makers have them, drawn from a seed: for benchmarks, and for a test that keeps what comes
 * of them.
 */
#ifndef DRAWN_H
#define DRAWN_H

#include "cut/layout.h"
#include "dice.h"

#define DRAWN_PIECES 1200
#define DRAWN_SIZES 10

struct drawn {
    struct cut_piece pieces[DRAWN_PIECES];
    struct cut_size sizes[DRAWN_SIZES];
    struct cut_job job;
};

/* A saw of 1/8 in; pieces in eighths of an inch between 6 and 90 in, each wanted once to `alike`
 * times, out of up to six stock lengths whose price by length varies by a tenth, some with
 * leftovers. */
void draw_sticks(struct drawn *drawn, struct dice *dice, size_t pieces, size_t lengths,
                 int64_t alike);

/* The same saw; pieces of 6 x 3 to 60 x 36 in, up to four alike, two in three of which may turn,
 * out of whole, half and quarter sheets of 96 x 48 in, and what is left of some. */
void draw_sheets(struct drawn *drawn, struct dice *dice, size_t pieces);

/*
 * 6 to 30 pieces as covers have them (panels, sides in pairs or fours, strips of boxing and small
 * ends): in quarters of an inch on a roll of 54 in that is sold by quarter yards, or in whole
 * millimetres on one of 1400 mm that is sold by tenths of a metre; 5 % is added. Where there is a
 * pattern, strips need not match.
 */
enum cloth { PLAIN, RAILROAD, ALONG, ACROSS, BOTH, DROP, CLOTHS };
extern const char *const cloth_names[CLOTHS];
void draw_cloth(struct drawn *drawn, struct dice *dice, enum cloth cloth, bool metric);

#endif
