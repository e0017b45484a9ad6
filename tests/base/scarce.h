/*
 * A heap that fails one request, the n-th, and counts what is out:
 *
 *     scarce_begin(3);
 *     ... the third request fails ...
 *     assert_int_equal(scarce_end(), 0);
 */
#ifndef SCARCE_H
#define SCARCE_H

#include <stdbool.h>

/* Takes over the heap and fails request number `fails_at`, counted from 1; 0 fails none. */
void scarce_begin(int fails_at);

/* Gives the heap back; returns how many blocks were not released. */
int scarce_end(void);

/* Whether the request that was to fail has come, and how many there were. Both stay known after
 * scarce_end. */
bool scarce_failed(void);
int scarce_requests(void);

#endif
