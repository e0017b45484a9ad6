#include "paper/lines.h"

#include "base/show.h"

#include <string.h>

#define HEADING_INDENT 2

void lines_add_blanks(struct text *out, int count)
{
    for (int i = 0; i < count; i++)
        text_add_char(out, ' ');
}

/* The columns that the word takes which ends before `end`. */
static int word_columns(const char *word, const char *end)
{
    struct text one;
    text_init(&one);
    text_add_bytes(&one, word, (size_t)(end - word));
    int columns = text_columns(text_string(&one));
    text_release(&one);
    return columns;
}

static const char *word_end(const char *word)
{
    return word + strcspn(word, " ");
}

/* Adds words where the line that is begun has got to `column`; lines are `columns` wide, and those
 * that follow are set in by `indent`. */
static void add_words(struct text *out, int column, int indent, const char *word, int columns)
{
    for (bool first = true; *word; first = false) {
        const char *end = word_end(word);
        int wide = word_columns(word, end);
        if (!first && column + 1 + wide > columns) {
            text_add_char(out, '\n');
            lines_add_blanks(out, indent);
            column = indent;
        } else if (!first) {
            text_add_char(out, ' ');
            column++;
        }
        text_add_bytes(out, word, (size_t)(end - word));
        column += wide;
        word = end + strspn(end, " ");
    }
}

void lines_add_within(struct text *out, const char *heading, int indent, const char *words,
                      int columns)
{
    struct text safe;
    text_init(&safe);
    show_text(&safe, words);
    const char *first = text_string(&safe) + strspn(text_string(&safe), " ");
    lines_add_blanks(out, HEADING_INDENT);
    text_add(out, heading);
    if (*first)
        lines_add_blanks(out, indent - HEADING_INDENT - text_columns(heading));
    add_words(out, indent, indent, first, columns);
    text_add_char(out, '\n');
    text_release(&safe);
}

void lines_add(struct text *out, const char *heading, int indent, const char *words)
{
    lines_add_within(out, heading, indent, words, SHEET_COLUMNS);
}

void lines_add_hanging(struct text *out, int indent, const char *words)
{
    struct text safe;
    text_init(&safe);
    show_text(&safe, words);
    add_words(out, 0, indent, text_string(&safe), SHEET_COLUMNS);
    text_add_char(out, '\n');
    text_release(&safe);
}
