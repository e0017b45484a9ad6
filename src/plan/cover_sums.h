/*
 * Sums of the soft trades in plain numbers: widths and seams, slabs, welt strips, tufting, staples.
 * They know no model and no plan, so that published examples can be held against them.
 */
#ifndef PLAN_COVER_SUMS_H
#define PLAN_COVER_SUMS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* No piece is made from more widths, slabs or strips than this: material so narrow is a slip of the
 * pen, and the piece is left whole. */
enum { PARTS_AT_MOST = 64 };

/* ---- widths and seams ---- */

/* How a piece wider than its cloth is sewn together: a centre, `inner` full widths on both sides of
 * it, and one outer strip at each end; mirrored about the centre line. */
struct widths {
    int count; /* of cloth that it takes: both outer strips are cut from one where they fit */
    int64_t centre;
    int inner;    /* full widths between the centre and each outer strip */
    int64_t full; /* their width */
    int under;    /* of a stack instead: widths between the centre, which is its uppermost,
                     and the one outer strip */
    int64_t side, side_right; /* outer strips, 0 when there is no seam; of one seam alone the one on
                                 the other side of it */
    int64_t seam; /* first seams at +- this from the centre line, 0 when there is none */
};

/* Formula cloth.widths: the least number n of widths with cut + 2 allowance (n - 1) <= n usable.
 * usable > 2 allowance. */
int widths_least(int64_t cut, int64_t usable, int64_t allowance);

/* The widest cut from a width that finishes on whole repeats; all of it without a repeat, or with
 * one that is wider. */
int64_t widths_matched(int64_t usable, int64_t allowance, int64_t repeat);

/*
 * The centre and its sides for a cut width (common practice, no source). A side is never narrower
 * than `least_side`: the centre gives way. With a repeat across the roll the centre and full widths
 * finish on whole repeats, so that seams match; a repeat wider than the cloth is not matched.
 */
struct widths widths_split(int64_t cut, int64_t usable, int64_t allowance, int64_t least_side,
                           int64_t repeat);

/*
 * The same with seams mirrored about a line that has `left` and `right` of the cut width beside it:
 * its strips are then as unlike as these. Where that leaves a strip too narrow, or one that takes
 * a width more, both are set to half of the cut width.
 */
struct widths widths_about(int64_t *left, int64_t *right, int64_t usable, int64_t allowance,
                           int64_t least_side, int64_t repeat);

/* Draws the first seams in to +- `seam` from that line. False, and nothing is changed, where they
 * stand no further in, or a strip would be wider than the cloth or narrower than `least_side`. */
bool widths_draw_in(struct widths *widths, int64_t left, int64_t right, int64_t usable,
                    int64_t allowance, int64_t least_side, int64_t seam);

/*
 * Two widths with one seam alone: `first` of the cut width lies left of it or below, and `second`
 * right of it or above. The wider is the centre, of equals the first. False, and nothing is
 * changed, where one is wider than the cloth or narrower than `least_side`.
 */
bool widths_in_two(struct widths *widths, int64_t first, int64_t second, int64_t usable,
                   int64_t allowance, int64_t least_side);

/* Seams between all its widths. */
int widths_seams(const struct widths *widths);

/* Formula cloth.repeat: whole repeats of a pattern that a cut length takes up: each drop begins at
 * the same place of it. repeat > 0. */
int64_t drop_repeats(int64_t length, int64_t repeat);

/* ---- slabs ---- */

/* A rectangle as a grid of slabs laid edge to edge: all of across x up, the last of a row or column
 * what is left. */
struct slabs {
    int64_t across, up; /* size of a whole one */
    int64_t columns, rows;
};

/* How few slabs of length x width, laid either way, cover a rectangle; ties go to slabs that lie
 * along it. */
struct slabs slabs_cover(int64_t width, int64_t height, int64_t length, int64_t breadth);

/* ---- welt ---- */

/* Formula welt.strip: pi cord + 2 allowance, and `more` between two cords that lie side by side,
 * whose widths `cord` then sums up; rounded up to `step`. */
int64_t welt_strip(int64_t cord, int64_t allowance, int64_t step, int64_t more);

/* Strips across a roll of a usable width that give a length: its share, rounded up. */
int64_t welt_strips(int64_t length, int64_t usable);

/* ---- bias strips: cut at 45 degrees, the cloth's area shared out ---- */

/* Formula bias.area: length of strips out of a rectangle is its area by the strip's width. strip >
 * 0. */
int64_t bias_length(int64_t width, int64_t height, int64_t strip);

/*
 * Cloth for a length of strips, of which a `share` (in millionths, above 0) becomes strip: the side
 * of a square, or the length of a roll of a usable width; in whole steps.
 */
int64_t bias_square(int64_t length, int64_t strip, int64_t share, int64_t step);
int64_t bias_roll(int64_t length, int64_t strip, int64_t share, int64_t usable, int64_t step);

/* The longest strip from a cloth: its diagonal; and the side that gives one so long. */
int64_t bias_longest(int64_t usable);
int64_t bias_side(int64_t longest, int64_t step);

/* ---- webbing ---- */

/* Formula web.strips: strips of a width side by side, `gap` between them, in a clear opening: the
 * nearest number, at least one. strip + gap > 0. */
int64_t web_strips(int64_t inside, int64_t strip, int64_t gap);

/* ---- tufting ---- */

/* Formula tuft.buttons: buttons of a field m across and k down: diamonds whose tips lie in the top
 * row, or squares. */
int64_t tuft_buttons(int64_t across, int64_t down, bool diamond);

/* Formula tuft.least: cloth that a space takes more when its ends are pulled down by `depth`, going
 * straight: 2 (sqrt((s/2)^2 + d^2) - s/2). Nothing takes less. */
int64_t tuft_least(int64_t space, int64_t depth);

/* ---- nails ---- */

/* Formula nail.spaces: whole spaces that a line of nails is divided into: the nearest to length /
 * pitch, at least one. pitch > 0. Such a line has one nail more than spaces, one at each end. */
int64_t nail_spaces(int64_t length, int64_t pitch);

/* Real nails of a strip of so many heads, one in `every` and one at the end. every > 0. */
int64_t strip_nails(int64_t heads, int64_t every);

/* ---- staples ---- */

/* Formula staple.run. Open run: ceil(length / pitch) + 1; closed loop: ceil(length / pitch). pitch
 * > 0. */
int64_t staples_open(int64_t length, int64_t pitch);
int64_t staples_loop(int64_t length, int64_t pitch);

/*
 * Staples of a row of `count` that fall in from <= x < to. Staple i of an open row stands at
 * i length / (count - 1) and the last belongs to the interval that ends at the length; of a loop at
 * i length / count. Intervals without gap from 0 to length sum to count.
 */
int64_t staples_between(int64_t count, int64_t length, bool loop, int64_t from, int64_t to);

/* Smallest of `legs` (ascending, `count` > 0) that is at least `need`; the longest when none is. */
int64_t leg_from(const int64_t *legs, size_t count, int64_t need);

#endif
