/* The driver without a terminal: what tui_run does between keys, and what tests do. */
#ifndef TUI_DRIVER_H
#define TUI_DRIVER_H

#include "tui/screen.h"

void driver_begin(struct tui *tui, struct desk *desk); /* opens the list of builds */
void driver_end(struct tui *tui);

/* Each gives the reaction that is left for the caller: REACT_QUIT or REACT_TAKEN. */
enum reaction driver_key(struct tui *tui, int key);
enum reaction driver_paste(struct tui *tui, const char *text);

/* A press on a line chooses it, on the chosen line it opens; the wheel moves by lines. Nothing
 * while something is typed. */
enum reaction driver_pointer(struct tui *tui, const struct pointer *pointer);

/* The note of what tui->noting names as it stands, and what came of editing it. */
void driver_note(struct tui *tui, struct text *ret_note);
void driver_noted(struct tui *tui, const char *text);

/* What waits until keys pause: pictures of what is selected, work of the screen on top. True when
 * something has to be painted. */
bool driver_rest(struct tui *tui);

/* The same; looks for what another program changed, and goes on searching for better cutting
 * layouts for a slice of work (tui->searching: there is more to search). True when something has to
 * be painted.
 */
bool driver_idle(struct tui *tui);

/* Paints everything at a size. */
void driver_paint(struct tui *tui, int rows, int columns);

#endif
