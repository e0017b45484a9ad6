/*
 * Words that promise that a rule is kept or that nobody is hurt. The program says neither.
 */
#ifndef LAYERS_PROMISE_H
#define LAYERS_PROMISE_H

/* The first such word in a text, in whatever case; NULL without one. */
const char *promise_in(const char *text);

#endif
