/*
 * stuffover-build(5), written from the tables that the program reads files by.
 */
#ifndef PAGE_H
#define PAGE_H

#include "base/text.h"

void page_write(struct text *out);

#endif
