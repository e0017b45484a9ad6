/*
 * Manual pages written from the tables of the program: stuffover-build(5), the files that it reads,
 * and stuffover-trade(7), the trade values.
 */
#ifndef PAGE_H
#define PAGE_H

#include "base/text.h"

void page_write_build(struct text *out);
void page_write_trade(struct text *out);

/* One sentence, on short lines; what the formatter would take for its own is escaped. The first
 * letter becomes a capital and a full stop is added. */
void page_sentence(struct text *out, const char *sentence);

#endif
