/*
 * One of the worked examples (tests/cases/NAME.json), taken into a workshop of its own, and what is
 * looked up in its plan. A look-up fails the test when there is no such thing.
 */
#ifndef EXAMPLE_H
#define EXAMPLE_H

#include "workshop.h"

#include <stdbool.h>
#include <stdint.h>

#define INCH(x) ((int64_t)((x)*8128.0))

struct example {
    struct workshop_place place;
    struct desk *desk;
    const struct plan *plan;
};

/* cmocka's setups and their teardown. */
int example_headboard(void **state);
int example_ottoman(void **state);
int example_banquette(void **state);
int example_end(void **state);

/* The layer of a kind on a box, as cut. */
const struct cover *cover_of(const struct plan *plan, const char *box, enum layer_word kind);
bool has_piece(const struct plan *plan, const char *box, int64_t width, int64_t height);
const struct purchase *purchase_of(const struct plan *plan, const char *stock);
bool has_finding(const struct plan *plan, const char *words);

/* Staples of a box's layers of a kind, and those that only hold it for a while. */
int64_t staples_of(const struct plan *plan, const char *box, enum layer_word kind,
                   int64_t *ret_temporary);

/* What layers use up of a kind of stock. */
int64_t used_of(const struct plan *plan, enum stock_word kind);

/* The place of a step in the order of work. */
size_t step_at(const struct plan *plan, const char *name);

#endif
