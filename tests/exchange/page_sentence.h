/* Sentences of manual pages, wherever they are written. */
#ifndef PAGE_SENTENCE_H
#define PAGE_SENTENCE_H

#include "base/text.h"

/* One sentence, on short lines; what the formatter would take for its own is escaped. The first
 * letter becomes a capital and a full stop is added. */
void page_sentence(struct text *out, const char *sentence);

#endif
