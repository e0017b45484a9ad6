#include "page_sentence.h"

#include <ctype.h>
#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#define LINE 78

void page_sentence(struct text *out, const char *sentence)
{
    size_t column = 0;
    bool first = true;

    while (*sentence) {
        size_t length = strcspn(sentence, " ");

        if (column > 0 && column + length + 2 > LINE) {
            text_add_char(out, '\n');
            column = 0;
        } else if (column > 0) {
            text_add_char(out, ' ');
            column++;
        }
        if (column == 0 && (*sentence == '.' || *sentence == '\''))
            text_add(out, "\\&");
        text_add_char(out, first ? (char)toupper((unsigned char)*sentence) : *sentence);
        text_add_bytes(out, sentence + 1, length - 1);
        column += length;
        sentence += length + strspn(sentence + length, " ");
        first = false;
    }
    text_add(out, ".\n");
}
