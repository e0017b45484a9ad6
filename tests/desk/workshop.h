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
