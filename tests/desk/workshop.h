/*
 * A desk on a workshop of its own, for the tests of the desk and the floors above it. Everything
 * fails the test rather than return an error.
 */
#ifndef TEST_WORKSHOP_H
#define TEST_WORKSHOP_H

#include "desk/desk.h"

struct workshop_place {
    char folder[512];
    char path[600];
};

void place_begin(struct workshop_place *place); /* a new empty folder; the file is not there yet */
void place_end(struct workshop_place *place);   /* removes it with every file in it */

/* Opens the desk, or fails with what the fault says. */
struct desk *desk_at(const struct workshop_place *place);

/* Takes in one of the worked examples of tests/cases ("headboard"). */
void desk_take_case(struct desk *desk, const char *name);

/* Takes in a file of the demo ("workshop" first, for the builds use its stock). */
void desk_take_demo(struct desk *desk, const char *name);

/* The set-up of most tests: a desk with some builds taken in, whose keys it holds in turn. What a
 * test adds stands in a struct of its own that has one. */
#define BENCH_BUILDS 4
struct bench {
    struct workshop_place place;
    struct desk *desk;
    int64_t builds[BENCH_BUILDS];
};

/* `names` end with NULL: files of the demo where the first is "workshop", which is no build, else
 * worked examples. The last one is taken up. Closed, the place has to be sound. */
void bench_open(struct bench *bench, const char *const *names);
void bench_close(struct bench *bench);

/* cmocka's setup and teardown of a test that adds nothing. */
int bench_begin(void **state, const char *const *names);
int bench_end(void **state);

/* Reads the file again: every build keeps the model's invariants, and the store is whole. */
void assert_place_is_sound(const struct workshop_place *place);

/* Fails with the note's words unless the call was without fault. */
#define DONE(call)                                                \
    do {                                                          \
        struct fault_note note_of_call = {0};                     \
        struct fault_note *note = &note_of_call;                  \
        if (call)                                                 \
            fail_msg("%s: %s: %s", #call, note->path, note->why); \
    } while (0)

/* Ticks every step of the plan, in its order, until the one named is ticked too. */
void tick_until(struct desk *desk, const char *step);

#endif
