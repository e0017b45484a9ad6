/*
 * The verifier itself: sound layouts pass, and every flaw it knows is told in a layout that has
 * it.
 */
#include "saw.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* A layout of at most this many parts and blanks, as plain arrays. */
#define FEW 6

struct bad_layout {
    enum cut_flaw flaw; /* that must be told */
    enum cut_way way;
    struct cut_piece parts[FEW];
    struct cut_size sizes[FEW];
    int64_t kerf, trim;
    struct cut_place places[FEW];
    struct cut_blank blanks[FEW];
    size_t left_out[FEW];
    size_t part_count, size_count, place_count, blank_count, left_out_count;
    int64_t cost, bound;
    struct cut_stroke strokes[FEW];
    size_t stroke_count, stuck;
    int64_t fences, passage_length, passage_width;
    struct cut_pattern pattern;
    struct cut_sale sale;
    struct cut_blemish blemishes[1];
    size_t blemish_count;
};

static enum cut_flaw flaw_in(const struct bad_layout *bad)
{
    struct bad_layout copy = *bad;
    struct cut_job job = {.parts = copy.parts,
                          .part_count = bad->part_count,
                          .sizes = copy.sizes,
                          .size_count = bad->size_count,
                          .kerf = bad->kerf,
                          .trim = bad->trim,
                          .passage_length = bad->passage_length,
                          .passage_width = bad->passage_width,
                          .pattern = bad->pattern,
                          .sale = bad->sale,
                          .blemishes = copy.blemishes,
                          .blemish_count = bad->blemish_count};
    struct cut_layout layout = {
        .cost = bad->cost, .bound = bad->bound, .fences = bad->fences, .stuck = bad->stuck};

    layout.places.at = copy.places;
    layout.places.count = bad->place_count;
    layout.blanks.at = copy.blanks;
    layout.blanks.count = bad->blank_count;
    layout.left_out.at = copy.left_out;
    layout.left_out.count = bad->left_out_count;
    layout.strokes.at = copy.strokes;
    layout.strokes.count = bad->stroke_count;
    return flaw_of(bad->way, &job, &layout);
}

#define PART(long_, wide, turns)                                \
    {                                                           \
        .length = (long_), .width = (wide), .may_turn = (turns) \
    }

/* Two parts of 40 on a stick of 100, kerf 3, trim 5: sound. */
#define STICK_JOB                                                                        \
    .way = CUT_BARS, .parts = {PART(40, 0, false), PART(40, 0, false)}, .part_count = 2, \
    .sizes = {{100, 0, 7, CUT_ANY}}, .size_count = 1, .kerf = 3, .trim = 5
#define STICK_BLANK .blanks = {{0, 0, 2, 88, 9, 0}}, .blank_count = 1
#define STICK_PLACES .places = {{0, 5, 0, false}, {1, 48, 0, false}}, .place_count = 2

/* Two parts of 40 x 20 beside each other on a sheet of 100 x 50, kerf 3: sound. */
#define SHEET_JOB                                                                           \
    .way = CUT_SHEETS, .parts = {PART(40, 20, false), PART(40, 20, true)}, .part_count = 2, \
    .sizes = {{100, 50, 7, CUT_ANY}}, .size_count = 1, .kerf = 3
#define SHEET_BLANK .blanks = {{0, 0, 2, 40, 57, 50}}, .blank_count = 1
#define SHEET_PLACES .places = {{0, 0, 0, false}, {1, 0, 23, false}}, .place_count = 2

/* The saw cuts 40 off the sheet, then 20 twice: three strokes, two settings. */
#define SHEET_CUT SHEET_JOB, SHEET_PLACES, SHEET_BLANK, .cost = 7
#define CUT_40                 \
    {                          \
        0, true, 40, 0, 50, 40 \
    }
#define CUT_20                  \
    {                           \
        0, false, 20, 0, 40, 20 \
    }
#define CUT_20_MORE             \
    {                           \
        0, false, 43, 0, 40, 20 \
    }

/* Four parts round a hole, as no saw can cut them. */
#define PINWHEEL                                                                                   \
    .way = CUT_SHEETS,                                                                             \
    .parts = {PART(60, 30, false), PART(30, 60, false), PART(60, 30, false), PART(30, 60, false)}, \
    .part_count = 4, .sizes = {{90, 90, 7, CUT_ANY}}, .size_count = 1,                             \
    .places = {{0, 0, 0, false}, {1, 60, 0, false}, {2, 30, 60, false}, {3, 0, 30, false}},        \
    .place_count = 4, .blanks = {{0, 0, 4, 90, 0, 0}}, .blank_count = 1, .cost = 7

/* A part of 40 x 20 on a roll of 50. */
#define ROLL_JOB                                                       \
    .way = CUT_ROLLS, .parts = {PART(40, 20, false)}, .part_count = 1, \
    .sizes = {{0, 50, 0, CUT_ANY}}, .size_count = 1, .place_count = 1, .blank_count = 1

#define MATCH(long_, wide, in_group, ...)                                    \
    {                                                                        \
        .length = (long_), .width = (wide), .group = (in_group), __VA_ARGS__ \
    }

/* Two parts on a roll of 50 with a pattern; the second begins so far along and across. */
#define MATCHED_JOB(group_a, group_b, at_along, at_across)                              \
    .way = CUT_ROLLS,                                                                   \
    .parts = {MATCH(20, 10, group_a, .along = 0), MATCH(20, 10, group_b, .along = 0)},  \
    .part_count = 2, .sizes = {{0, 50, 0, CUT_ANY}}, .size_count = 1, .blank_count = 1, \
    .place_count = 2, .places = {{0, 0, 0, false}, {1, at_along, at_across, false}},    \
    .blanks = {{0, 0, 2, (at_along) + 20, 0, 0}}, .cost = (at_along) + 20

/* The same with the first part's own wish. */
#define WISHING_JOB(at_along, at_across, ...)                                                 \
    .way = CUT_ROLLS, .parts = {MATCH(20, 10, 1, .along = 0), MATCH(20, 10, 1, __VA_ARGS__)}, \
    .part_count = 2, .sizes = {{0, 50, 0, CUT_ANY}}, .size_count = 1, .blank_count = 1,       \
    .place_count = 2, .places = {{0, 0, 0, false}, {1, at_along, at_across, false}},          \
    .blanks = {{0, 0, 2, (at_along) + 20, 0, 0}}, .cost = (at_along) + 20

/* The first part is as wide as the roll and so has its place at the left edge; the second, which
 * the pattern puts so far from that edge, is left out. */
#define LEAVING_JOB(wide, right)                                                                 \
    .way = CUT_ROLLS,                                                                            \
    .parts = {MATCH(20, 50, 1, .along = 0), MATCH(20, wide, 1, .across = (right))},              \
    .part_count = 2, .sizes = {{0, 50, 0, CUT_ANY}}, .size_count = 1, .blank_count = 1,          \
    .place_count = 1, .places = {{0, 0, 0, false}}, .blanks = {{0, 0, 1, 20, 0, 0}}, .cost = 20, \
    .left_out = {1}, .left_out_count = 1

#define ALONG_12 .pattern = {12, 0, false}
#define STRAIGHT .pattern = {12, 15, false}
#define DROPPED .pattern = {12, 15, true}
#define BAND(near, long_) \
    .blemishes = {{.along = (near), .length = (long_), .width = 50}}, .blemish_count = 1

static const struct bad_layout sound[] = {
    {CUT_FLAW_NONE, STICK_JOB, STICK_PLACES, STICK_BLANK, .cost = 7, .bound = 7},
    {CUT_FLAW_NONE, SHEET_JOB, SHEET_PLACES, SHEET_BLANK, .cost = 7, .bound = 7},
    {CUT_FLAW_NONE, SHEET_CUT, .strokes = {CUT_40, CUT_20, CUT_20_MORE}, .stroke_count = 3,
     .fences = 2},
    {CUT_FLAW_NONE, SHEET_CUT, .strokes = {CUT_40, CUT_20, CUT_20_MORE}, .stroke_count = 3,
     .fences = 2, .passage_length = 57, .passage_width = 50},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, .bound = 40},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, .trim = 15,
     .places = {{0, 0, 15, false}}},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 48, .sale = {.step = 12}},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 70, .sale = {.least = 70}},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 45,
     .sale = {.reserve = 101000}},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 44,
     .sale = {.reserve = 100000}},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 60,
     .sale = {.ahead = 9, .reserve = 200000, .step = 10}},
    {CUT_FLAW_NONE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, BAND(40, 5)},
    {CUT_FLAW_NONE, MATCHED_JOB(1, 1, 24, 7), ALONG_12},
    {CUT_FLAW_NONE, MATCHED_JOB(1, 2, 23, 7), ALONG_12},
    {CUT_FLAW_NONE, MATCHED_JOB(1, 0, 23, 7), ALONG_12},
    {CUT_FLAW_NONE, MATCHED_JOB(1, 1, 12, 30), STRAIGHT},
    {CUT_FLAW_NONE, MATCHED_JOB(1, 1, 12, 15), STRAIGHT},
    {CUT_FLAW_NONE, MATCHED_JOB(1, 1, 12, 30), DROPPED},
    {CUT_FLAW_NONE, MATCHED_JOB(1, 1, 18, 15), DROPPED},
    {CUT_FLAW_NONE, MATCHED_JOB(CUT_PINNED, CUT_PINNED, 18, 15), DROPPED},
    {CUT_FLAW_NONE, LEAVING_JOB(45, 6), STRAIGHT},
    {CUT_FLAW_NONE, WISHING_JOB(29, 11, .along = 5, .across = 11), STRAIGHT},
    {CUT_FLAW_NONE, WISHING_JOB(26, 10, .centred_along = true, .centred_across = true), STRAIGHT},
};

static const struct bad_layout bad[] = {
    {CUT_FLAW_UNKNOWN_PART, STICK_JOB, STICK_BLANK, .cost = 7,
     .places = {{0, 5, 0, false}, {2, 48, 0, false}}, .place_count = 2},
    {CUT_FLAW_UNKNOWN_PART, STICK_JOB, STICK_BLANK, STICK_PLACES, .cost = 7, .left_out = {9},
     .left_out_count = 1},
    {CUT_FLAW_UNKNOWN_SIZE, STICK_JOB, STICK_PLACES, .cost = 7, .blanks = {{1, 0, 2, 88, 9, 0}},
     .blank_count = 1},
    {CUT_FLAW_BLANKS, STICK_JOB, STICK_PLACES, .cost = 7, .blanks = {{0, 0, 1, 45, 52, 0}},
     .blank_count = 1},
    {CUT_FLAW_BLANKS, STICK_JOB, STICK_PLACES, .cost = 7, .blanks = {{0, 1, 1, 88, 9, 0}},
     .blank_count = 1},
    {CUT_FLAW_BLANKS, STICK_JOB, STICK_PLACES, .cost = 14,
     .blanks = {{0, 0, 2, 88, 9, 0}, {0, 2, 0, 0, 97, 0}}, .blank_count = 2},
    {CUT_FLAW_BLANKS, STICK_JOB, STICK_PLACES, .cost = 7, .blanks = {{0, 0, SIZE_MAX, 88, 9, 0}},
     .blank_count = 1},
    {CUT_FLAW_TWICE, STICK_JOB, STICK_BLANK, .cost = 7,
     .places = {{0, 5, 0, false}, {0, 48, 0, false}}, .place_count = 2},
    {CUT_FLAW_TWICE, STICK_JOB, STICK_BLANK, STICK_PLACES, .cost = 7, .left_out = {1},
     .left_out_count = 1},
    {CUT_FLAW_MISSING, STICK_JOB, .cost = 7, .places = {{0, 5, 0, false}}, .place_count = 1,
     .blanks = {{0, 0, 1, 45, 52, 0}}, .blank_count = 1},
    {CUT_FLAW_LEFT_OUT, STICK_JOB, .cost = 7, .places = {{0, 5, 0, false}}, .place_count = 1,
     .blanks = {{0, 0, 1, 45, 52, 0}}, .blank_count = 1, .left_out = {1}, .left_out_count = 1},
    {CUT_FLAW_LEFT_OUT, LEAVING_JOB(50, 0), STRAIGHT},
    {CUT_FLAW_LEFT_OUT, LEAVING_JOB(44, 6), STRAIGHT},
    {CUT_FLAW_TURNED, STICK_JOB, STICK_BLANK, .cost = 7,
     .places = {{0, 5, 0, true}, {1, 48, 0, false}}, .place_count = 2},
    {CUT_FLAW_TURNED, SHEET_JOB, SHEET_BLANK, .cost = 7,
     .places = {{0, 0, 0, true}, {1, 0, 23, false}}, .place_count = 2},
    {CUT_FLAW_OUTSIDE, STICK_JOB, STICK_BLANK, .cost = 7,
     .places = {{0, 4, 0, false}, {1, 48, 0, false}}, .place_count = 2},
    {CUT_FLAW_OUTSIDE, STICK_JOB, STICK_BLANK, .cost = 7,
     .places = {{0, 5, 0, false}, {1, 61, 0, false}}, .place_count = 2},
    {CUT_FLAW_OUTSIDE, SHEET_JOB, SHEET_BLANK, .cost = 7,
     .places = {{0, 0, 0, false}, {1, 0, 31, false}}, .place_count = 2},
    {CUT_FLAW_OUTSIDE, SHEET_JOB, SHEET_BLANK, .cost = 7, .trim = 1,
     .places = {{0, 0, 1, false}, {1, 1, 24, false}}, .place_count = 2},
    {CUT_FLAW_OUTSIDE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40,
     .places = {{0, -1, 0, false}}},
    {CUT_FLAW_OVERLAP, STICK_JOB, STICK_BLANK, .cost = 7,
     .places = {{0, 5, 0, false}, {1, 44, 0, false}}, .place_count = 2},
    {CUT_FLAW_OVERLAP, SHEET_JOB, SHEET_BLANK, .cost = 7,
     .places = {{0, 0, 0, false}, {1, 39, 19, false}}, .place_count = 2},
    {CUT_FLAW_KERF, STICK_JOB, STICK_BLANK, .cost = 7,
     .places = {{0, 5, 0, false}, {1, 47, 0, false}}, .place_count = 2},
    {CUT_FLAW_KERF, SHEET_JOB, SHEET_BLANK, .cost = 7,
     .places = {{0, 0, 0, false}, {1, 0, 22, false}}, .place_count = 2},
    {CUT_FLAW_KERF, SHEET_JOB, SHEET_BLANK, .cost = 7,
     .places = {{0, 0, 0, false}, {1, 42, 22, false}}, .place_count = 2},
    {CUT_FLAW_EDGE_TO_EDGE, PINWHEEL},
    {CUT_FLAW_LIMIT, .way = CUT_BARS, .parts = {PART(40, 0, false), PART(40, 0, false)},
     .part_count = 2, .sizes = {{50, 0, 0, 1}}, .size_count = 1,
     .places = {{0, 0, 0, false}, {1, 0, 0, false}}, .place_count = 2,
     .blanks = {{0, 0, 1, 40, 10, 0}, {0, 1, 1, 40, 10, 0}}, .blank_count = 2},
    {CUT_FLAW_USED, STICK_JOB, STICK_PLACES, .cost = 7, .blanks = {{0, 0, 2, 87, 9, 0}},
     .blank_count = 1},
    {CUT_FLAW_USED, STICK_JOB, STICK_PLACES, .cost = 7, .blanks = {{0, 0, 2, 88, 12, 0}},
     .blank_count = 1},
    {CUT_FLAW_USED, SHEET_JOB, SHEET_PLACES, .cost = 7, .blanks = {{0, 0, 2, 40, 60, 50}},
     .blank_count = 1},
    {CUT_FLAW_OUTSIDE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, .trim = 15,
     .places = {{0, 0, 14, false}}},
    {CUT_FLAW_OUTSIDE, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, .trim = 15,
     .places = {{0, 0, 16, false}}},
    {CUT_FLAW_TURNED, .way = CUT_ROLLS, .parts = {MATCH(40, 20, 1, .may_turn = true)},
     .part_count = 1, .sizes = {{0, 50, 0, CUT_ANY}}, .size_count = 1, .place_count = 1,
     .blank_count = 1, .cost = 20, ALONG_12, .places = {{0, 0, 0, true}},
     .blanks = {{0, 0, 1, 20, 0, 0}}},
    {CUT_FLAW_MATCHED, MATCHED_JOB(1, 1, 23, 7), ALONG_12},
    {CUT_FLAW_MATCHED, MATCHED_JOB(1, 1, 12, 14), STRAIGHT},
    {CUT_FLAW_MATCHED, MATCHED_JOB(1, 1, 18, 15), STRAIGHT},
    {CUT_FLAW_MATCHED, MATCHED_JOB(1, 1, 12, 15), DROPPED},
    {CUT_FLAW_MATCHED, MATCHED_JOB(1, 1, 18, 30), DROPPED},
    {CUT_FLAW_MATCHED, MATCHED_JOB(1, CUT_PINNED, 23, 15), STRAIGHT},
    {CUT_FLAW_MATCHED, MATCHED_JOB(1, CUT_PINNED, 24, 16), STRAIGHT},
    {CUT_FLAW_MATCHED, WISHING_JOB(24, 11, .along = 5, .across = 11), STRAIGHT},
    {CUT_FLAW_MATCHED, WISHING_JOB(29, 15, .along = 5, .across = 11), STRAIGHT},
    {CUT_FLAW_MATCHED, WISHING_JOB(24, 10, .centred_along = true, .centred_across = true),
     STRAIGHT},
    {CUT_FLAW_MATCHED, WISHING_JOB(26, 15, .centred_along = true, .centred_across = true),
     STRAIGHT},
    {CUT_FLAW_MATCHED, .way = CUT_ROLLS, .parts = {MATCH(40, 20, 1, .along = 0)}, .part_count = 1,
     .sizes = {{60, 50, 0, 1}}, .size_count = 1, .place_count = 1, .blank_count = 1, ALONG_12,
     .blanks = {{0, 0, 1, 40, 0, 0}}},
    {CUT_FLAW_BLEMISH, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, BAND(39, 5)},
    {CUT_FLAW_BLEMISH, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40,
     .blemishes = {{10, 19, 5, 5}}, .blemish_count = 1},
    {CUT_FLAW_SEQUENCE, .way = CUT_ROLLS, .parts = {PART(40, 20, false), PART(40, 20, false)},
     .part_count = 2, .sizes = {{0, 50, 0, CUT_ANY}}, .size_count = 1, .blank_count = 1,
     .place_count = 2, .places = {{0, 40, 0, false}, {1, 0, 0, false}},
     .blanks = {{0, 0, 2, 80, 0, 0}}, .cost = 80},
    {CUT_FLAW_SEQUENCE, .way = CUT_ROLLS, .parts = {PART(40, 20, false), PART(40, 20, false)},
     .part_count = 2, .sizes = {{0, 50, 0, CUT_ANY}}, .size_count = 1, .blank_count = 1,
     .place_count = 2, .places = {{0, 0, 20, false}, {1, 0, 0, false}},
     .blanks = {{0, 0, 2, 40, 0, 0}}, .cost = 40},
    {CUT_FLAW_COST, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, .sale = {.step = 12}},
    {CUT_FLAW_COST, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 40, .sale = {.least = 70}},
    {CUT_FLAW_COST, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 44,
     .sale = {.reserve = 101000}},
    {CUT_FLAW_COST, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 50,
     .sale = {.ahead = 9, .reserve = 200000, .step = 10}},
    {CUT_FLAW_COST, STICK_JOB, STICK_PLACES, STICK_BLANK, .cost = 6},
    {CUT_FLAW_COST, ROLL_JOB, .blanks = {{0, 0, 1, 40, 0, 0}}, .cost = 39},
    {CUT_FLAW_BOUND, STICK_JOB, STICK_PLACES, STICK_BLANK, .cost = 7, .bound = 8},
    {CUT_FLAW_STROKES, SHEET_CUT, .strokes = {CUT_40, CUT_20}, .stroke_count = 2, .fences = 2},
    {CUT_FLAW_STROKES, SHEET_CUT, .strokes = {CUT_20, CUT_40, CUT_20_MORE}, .stroke_count = 3,
     .fences = 3},
    {CUT_FLAW_STROKES, SHEET_CUT, .strokes = {{0, true, 39, 0, 50, 39}, CUT_20, CUT_20_MORE},
     .stroke_count = 3, .fences = 2},
    {CUT_FLAW_STROKES, SHEET_CUT, .strokes = {{0, true, 40, 0, 50, 41}, CUT_20, CUT_20_MORE},
     .stroke_count = 3, .fences = 2},
    {CUT_FLAW_STROKES, SHEET_CUT, .strokes = {{1, true, 40, 0, 50, 40}, CUT_20, CUT_20_MORE},
     .stroke_count = 3, .fences = 2},
    {CUT_FLAW_FENCES, SHEET_CUT, .strokes = {CUT_40, CUT_20, CUT_20_MORE}, .stroke_count = 3,
     .fences = 3},
    {CUT_FLAW_STUCK, SHEET_CUT, .strokes = {CUT_40, CUT_20, CUT_20_MORE}, .stroke_count = 3,
     .fences = 2, .passage_length = 56, .passage_width = 50},
    {CUT_FLAW_STUCK, SHEET_CUT, .strokes = {CUT_40, CUT_20, CUT_20_MORE}, .stroke_count = 3,
     .fences = 2, .stuck = 1},
};

static void sound_layouts_are_let_through(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof sound / sizeof *sound; i++)
        assert_int_equal(flaw_in(&sound[i]), CUT_FLAW_NONE);
}

static void bad_layouts_are_told_by_their_flaw(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
        if (flaw_in(&bad[i]) != bad[i].flaw)
            fail_msg("row %zu: \"%s\" instead of \"%s\"", i, cut_flaw_words(flaw_in(&bad[i])),
                     cut_flaw_words(bad[i].flaw));
}

static void every_flaw_has_a_bad_layout_here(void **state)
{
    bool seen[CUT_FLAWS_COUNT] = {true};

    (void)state;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
        seen[bad[i].flaw] = true;
    for (int flaw = 0; flaw < CUT_FLAWS_COUNT; flaw++)
        if (!seen[flaw])
            fail_msg("none for \"%s\"", cut_flaw_words((enum cut_flaw)flaw));
}

/* Parted by a first cut across, then cuts along, then one across again. */
static void cuts_of_three_stages_are_edge_to_edge(void **state)
{
    const struct bad_layout three = {
        .way = CUT_SHEETS,
        .parts = {PART(20, 50, false), PART(30, 20, false), PART(30, 10, false),
                  PART(10, 10, false)},
        .part_count = 4,
        .sizes = {{50, 50, 1, CUT_ANY}},
        .size_count = 1,
        .places = {{0, 0, 0, false}, {1, 20, 0, false}, {2, 20, 20, false}, {3, 40, 30, false}},
        .place_count = 4,
        .blanks = {{0, 0, 4, 50, 0, 0}},
        .blank_count = 1,
        .cost = 1};

    (void)state;
    assert_int_equal(flaw_in(&three), CUT_FLAW_NONE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sound_layouts_are_let_through),
        cmocka_unit_test(bad_layouts_are_told_by_their_flaw),
        cmocka_unit_test(every_flaw_has_a_bad_layout_here),
        cmocka_unit_test(cuts_of_three_stages_are_edge_to_edge),
    };

    return cmocka_run_group_tests_name("verify", tests, NULL, NULL) ? 1 : 0;
}
