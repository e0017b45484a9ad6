/*
 * How much of what is tried many times: `usual`, or `fewer` under the sanitizers, under which a
 * test takes three to six times as long and looks for what the other builds cannot see.
 */
#ifndef SANITIZED_H
#define SANITIZED_H

#ifdef __SANITIZE_ADDRESS__
#define UNLESS_SANITIZED(usual, fewer) (fewer)
#else
#define UNLESS_SANITIZED(usual, fewer) (usual)
#endif

#endif
