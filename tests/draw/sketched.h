/* Drawings as text, for tests: what a maker would see. */
#ifndef SKETCHED_H
#define SKETCHED_H

#include "draw/raster.h"

struct sketched {
    struct arena arena;
    const char *text; /* the cells, blanks at the ends of rows cut off, empty rows at the end too */
};

void sketched_begin(struct sketched *sketched);
void sketched_end(struct sketched *sketched);

/* Fails the test where memory runs out. */
void sketched_face(struct sketched *sketched, struct drawing *drawing, const struct plan *plan,
                   int64_t box, int64_t side);
void sketched_raster(struct sketched *sketched, const struct drawing *drawing, int rows,
                     int columns, enum raster_style style);

/* Of a drawing: its marks of a kind, and whether some label reads so. */
size_t marks_of(const struct drawing *drawing, enum mark_kind kind);
bool has_label(const struct drawing *drawing, const char *text);

/* Compares and, where they differ, prints both. */
void assert_sketched(const struct sketched *sketched, const char *expected);

#endif
