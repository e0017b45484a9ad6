#include "tui/trolley.h"

void trolley_fill(struct trolley *trolley, struct tui *tui)
{
    const struct store_build *builds = NULL;
    size_t count = 0;
    struct fault_note note = {0};
    if (desk_builds(tui->desk, &builds, &count, &note))
        tui_warn(tui, &note);
    for (size_t i = 0; i < count && trolley->count < TUI_MARKS; i++) {
        if (tui->marked_count ? tui_is_marked(tui, builds[i].key)
                              : builds[i].state != STATE_FINISHED)
            trolley->builds[trolley->count++] = builds[i].key;
    }
}
