#include "tui/moved.h"

#include "tui/actions.h"

#include <limits.h>
#include <stdio.h>

enum { COPIES_MOST = 99 };

static void ask(struct tui *tui)
{
    tui_say(tui, "the file was moved, deleted or replaced: Enter keeps a copy, Esc does not");
    tui->message_warns = true;
}

/* "workshop.stuffover.copy", or with the first number that is free. */
static enum fault keep_copy(struct tui *tui, char *path, size_t size, struct fault_note *note)
{
    enum fault fault = FAULT_DUPLICATE;
    snprintf(path, size, "%s.copy", desk_path(tui->desk));
    for (int i = 2; i <= COPIES_MOST && fault == FAULT_DUPLICATE; i++) {
        fault = desk_backup(tui->desk, path, false, note);
        if (fault == FAULT_DUPLICATE)
            snprintf(path, size, "%s.copy-%d", desk_path(tui->desk), i);
    }
    return fault;
}

static void keep(struct tui *tui)
{
    char path[PATH_MAX + 16];
    struct fault_note note = {0};
    if (keep_copy(tui, path, sizeof path, &note))
        tui_warn(tui, &note);
    else
        tui_say(tui, "kept as %s", path);
}

bool moved_look(struct tui *tui)
{
    if (!desk_moved(tui->desk)) {
        tui->moved = MOVED_NOT;
        return false;
    }
    if (tui->moved != MOVED_NOT)
        return false;
    tui->moved = MOVED_ASKED;
    ask(tui);
    return true;
}

bool moved_key(struct tui *tui, int key)
{
    if (tui->moved != MOVED_ASKED)
        return false;
    if (key != KEY_RETURN && key != KEY_ESCAPE) {
        ask(tui);
        return true;
    }
    tui->moved = MOVED_TOLD;
    if (key == KEY_RETURN)
        keep(tui);
    return true;
}
