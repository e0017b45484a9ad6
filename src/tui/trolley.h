/* Builds that are bought for, cut or compared together: those marked in the list of builds. */
#ifndef TUI_TROLLEY_H
#define TUI_TROLLEY_H

#include "tui/screen.h"

struct trolley {
    int64_t builds[TUI_MARKS];
    size_t count;
};

/* Those that are marked, or where none is all that are not finished; of more than there is room for
 * the first. */
void trolley_fill(struct trolley *trolley, struct tui *tui);

#endif
