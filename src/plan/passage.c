/*
 * Roots are taken in whole numbers, of lengths in tenths of a millimetre: no product here leaves
 * int64 for passages up to 20 m, and a plan is the same on every machine.
 */
#include "plan/passage.h"

#include <assert.h>

#define TENTH (LENGTH_MM / 10)
#define LONGEST (20000 * LENGTH_MM)

struct sides {
    int64_t a, b, c; /* the longest first */
};

static int64_t whole_cube_root(int64_t cube)
{
    int64_t low = 0;
    int64_t high = INT64_C(2097151);

    assert(cube >= 0);
    while (low < high) {
        int64_t middle = low + (high - low + 1) / 2;

        if (middle * middle * middle <= cube)
            low = middle;
        else
            high = middle - 1;
    }
    return low;
}

static void swap_down(int64_t *larger, int64_t *smaller)
{
    if (*larger < *smaller) {
        int64_t kept = *larger;

        *larger = *smaller;
        *smaller = kept;
    }
}

static struct sides sides_of(struct vector size)
{
    struct sides sides = {size.x, size.y, size.z};

    swap_down(&sides.a, &sides.b);
    swap_down(&sides.b, &sides.c);
    swap_down(&sides.a, &sides.b);
    assert(sides.a >= sides.b && sides.b >= sides.c);
    return sides;
}

/* A rectangle p x q (p the longer) inside a x b (a the longer), turned: in tenths of a millimetre.
 */
static bool fits_turned(int64_t p, int64_t q, int64_t a, int64_t b)
{
    int64_t diagonal = p * p + q * q;

    assert(p >= q && a >= b);
    if (p <= a || q > b || diagonal < a * a)
        return p <= a && q <= b;
    return b * diagonal >= 2 * p * q * a + (p * p - q * q) * (whole_root(diagonal - a * a) + 1);
}

bool passage_straight(struct vector size, int64_t width, int64_t height, int64_t margin)
{
    struct sides sides = sides_of(size);
    int64_t high = (height > 0 ? height : LONGEST) - margin;
    int64_t wide = (width > 0 ? width : LONGEST) - margin;

    swap_down(&high, &wide);
    if (wide < sides.c)
        return false;
    return fits_turned(whole_divide_up(sides.b, TENTH), whole_divide_up(sides.c, TENTH),
                       high / TENTH, wide / TENTH);
}

int64_t passage_corner_length(int64_t p, int64_t q)
{
    assert(p >= 0 && p <= LONGEST && q >= 0 && q <= LONGEST);
    int64_t p_tenths = p / TENTH;
    int64_t q_tenths = q / TENTH;
    int64_t hundredths = whole_cube_root(p_tenths * p_tenths * 1000000) +
                         whole_cube_root(q_tenths * q_tenths * 1000000);

    return whole_root(hundredths * hundredths * hundredths) * TENTH / 1000;
}

bool passage_corner_level(struct vector size, int64_t p, int64_t q, int64_t height, int64_t margin)
{
    struct sides sides = sides_of(size);
    int64_t high = height > 0 ? height : LONGEST;

    return sides.a + 2 * sides.c + margin <= passage_corner_length(p, q) &&
           sides.b + margin <= high;
}

bool passage_corner(struct vector size, int64_t p, int64_t q, int64_t height, int64_t margin)
{
    struct sides sides = sides_of(size);
    int64_t high = height > 0 ? height : LONGEST;
    int64_t a = sides.a / TENTH;
    int64_t b = sides.b / TENTH;

    return passage_corner_level(size, p, q, height, margin) ||
           (whole_root(a * a + b * b) + 1) * TENTH <= high;
}

bool passage_stair(struct vector size, int64_t width, int64_t headroom, int64_t landing,
                   int64_t slope, int64_t margin)
{
    int64_t across = 0; /* not measured */

    if (headroom > 0)
        (void)whole_share(headroom, slope, 1000000, &across);
    return passage_straight(size, width, across, margin) &&
           (landing == 0 || width == 0 || passage_corner(size, width, landing, headroom, margin));
}

/* A side `across` the car, the other two turned in its depth and height. */
static bool lies_in_car(int64_t long_side, int64_t other, int64_t across, int64_t width,
                        int64_t height, int64_t depth)
{
    swap_down(&long_side, &other);
    swap_down(&height, &depth);
    return across <= width &&
           fits_turned(whole_divide_up(long_side, TENTH), whole_divide_up(other, TENTH),
                       height / TENTH, depth / TENTH);
}

bool passage_lift(struct vector size, int64_t width, int64_t height, int64_t depth, int64_t margin)
{
    struct sides sides = sides_of(size);
    int64_t high = (height > 0 ? height : LONGEST) - margin;
    int64_t wide = (width > 0 ? width : LONGEST) - margin;
    int64_t deep = depth - margin;

    return passage_straight(size, width, height, margin) &&
           (depth == 0 || lies_in_car(sides.a, sides.b, sides.c, wide, high, deep) ||
            lies_in_car(sides.a, sides.c, sides.b, wide, high, deep));
}

bool passage_vehicle(struct vector size, int64_t width, int64_t height, int64_t floor,
                     int64_t margin)
{
    struct sides sides = sides_of(size);

    return passage_straight(size, width, height, margin) &&
           (floor == 0 || sides.a + margin <= floor);
}
