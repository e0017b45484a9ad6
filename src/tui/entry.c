#include "tui/entry.h"

#include "base/show.h"
#include "base/text.h"
#include "base/utf8.h"
#include "tui/actions.h"

#include <string.h>

static int step_back(const struct entry *entry, int from)
{
    int at = from - 1;
    while (at > 0 && ((unsigned char)entry->text[at] & 0xc0) == 0x80)
        at--;
    return at < 0 ? 0 : at;
}

static int step_forward(const struct entry *entry, int from)
{
    int at = from + 1;
    while (at < entry->length && ((unsigned char)entry->text[at] & 0xc0) == 0x80)
        at++;
    return at > entry->length ? entry->length : at;
}

static void cut_out(struct entry *entry, int from, int to)
{
    memmove(entry->text + from, entry->text + to, (size_t)(entry->length - to) + 1);
    entry->length -= to - from;
    entry->cursor = from;
}

void entry_set(struct entry *entry, const char *text)
{
    *entry = (struct entry){.length = 0};
    entry_insert(entry, text);
}

void entry_offer(struct entry *entry, const char *text)
{
    entry_set(entry, text);
    entry->offered = true;
}

static void insert_bytes(struct entry *entry, const char *bytes, int count)
{
    if (entry->length + count >= ENTRY_TEXT)
        return;
    memmove(entry->text + entry->cursor + count, entry->text + entry->cursor,
            (size_t)(entry->length - entry->cursor) + 1);
    memcpy(entry->text + entry->cursor, bytes, (size_t)count);
    entry->length += count;
    entry->cursor += count;
}

void entry_insert(struct entry *entry, const char *text)
{
    size_t left = strlen(text);
    unsigned code;

    if (entry->offered)
        *entry = (struct entry){.length = 0};
    for (int bytes; (bytes = utf8_next(text, left, &code)) > 0;) {
        if (code < 0x20 || code == 0x7f)
            insert_bytes(entry, " ", 1);
        else if (show_is_safe(code) && code != 0xfffd)
            insert_bytes(entry, text, bytes);
        text += bytes;
        left -= (size_t)bytes;
    }
}

/* Moves the cursor or rubs out; false for a key that does neither. */
static bool edit_key(struct entry *entry, int key)
{
    switch (key) {
    case KEY_ARROW_LEFT:
        entry->cursor = step_back(entry, entry->cursor);
        return true;
    case KEY_ARROW_RIGHT:
        entry->cursor = step_forward(entry, entry->cursor);
        return true;
    case KEY_GO_FIRST:
        entry->cursor = 0;
        return true;
    case KEY_GO_LAST:
        entry->cursor = entry->length;
        return true;
    case KEY_RUB_OUT:
        cut_out(entry, step_back(entry, entry->cursor), entry->cursor);
        return true;
    case KEY_CONTROL_U: /* as terminals rub out a line */
        cut_out(entry, 0, entry->cursor);
        return true;
    case KEY_DELETE_ITEM:
        cut_out(entry, entry->cursor, step_forward(entry, entry->cursor));
        return true;
    default:
        return false;
    }
}

bool entry_key(struct entry *entry, int key)
{
    char bytes[5] = {0};
    if (edit_key(entry, key)) {
        entry->offered = false;
        return true;
    }
    if (key < KEY_SPACE || key >= KEY_FIRST_SPECIAL || key == 0x7f)
        return false;
    bytes[utf8_put((unsigned)key, bytes)] = '\0';
    entry_insert(entry, bytes);
    return true;
}

/* The columns of the text before the cursor. */
static int cursor_column(const struct entry *entry)
{
    char before[ENTRY_TEXT];
    memcpy(before, entry->text, (size_t)entry->cursor);
    before[entry->cursor] = '\0';
    return text_columns(before);
}

void entry_paint(const struct entry *entry, struct view *view, int row, int column, int width)
{
    int whole = text_columns(entry->text);
    int at = cursor_column(entry);
    int from = 0;
    int hidden = 0; /* columns to the left of what shows */
    while (at - hidden > width - 1 && from < entry->cursor) {
        from = step_forward(entry, from);
        hidden = whole - text_columns(entry->text + from);
    }
    view_row(view, row, column, width, VIEW_CHOSEN, entry->text + from);
    view_cursor(view, row, column + at - hidden);
}
