/*
 * Screens written down as text: tests/screens/<name>.txt. A screen that differs fails with the rows
 * that differ. STUFFOVER_GOLDEN=write writes them anew, to be read before they are kept.
 */
#ifndef GOLDEN_H
#define GOLDEN_H

/* Fails with the rows that differ, under the name. */
void assert_golden(const char *name, const char *screen);

#endif
