/*
 * Manual pages written from the tables of the program: stuffover-build(5), the files that it reads,
 * and stuffover-trade(7), the trade values.
 */
#ifndef PAGE_H
#define PAGE_H

#include "page_sentence.h"

void page_write_build(struct text *out);
void page_write_trade(struct text *out);

#endif
