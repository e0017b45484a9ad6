/*
 * A build of nothing but parts of one stick, for tests of what is bought, cut and cut on: cleats of
 * one length, beside the workshop's stock and that of the headboard.
 */
#ifndef TEST_RAILS_H
#define TEST_RAILS_H

#include "workshop.h"

/* Cleats cut from one kind of stick, 96 in for 4.00 and 144 in for 5.00. */
struct rails {
    struct bench bench;
    int64_t stock, fitting;
};

/* cmocka's setup and teardown: two parts of 90 in. Of 144 in no stick holds both, and two of 96 in
 * are cheaper. */
int rails_begin(void **state);
int rails_end(void **state);
#define RAILS_TEST(name) cmocka_unit_test_setup_teardown(name, rails_begin, rails_end)

const struct plan *rails_plan(const struct rails *rails);
void rails_set(const struct rails *rails, const char *count, const char *length);

/* Sticks of a length on the whole list, bought ones among them. */
int64_t rails_listed(const struct rails *rails, int64_t length);

/* Whether the list asks for more of the stick than was bought. */
bool rails_missing(const struct rails *rails);

/* Ticks the step of a kind that is open; fails where there is none. */
void rails_tick(const struct rails *rails, const char *kind);

#endif
