/* The way to the PDF module. */
#ifndef PAPER_PAGE_PDF_H
#define PAPER_PAGE_PDF_H

#include "base/fault.h"
#include "paper/page.h"

/*
 * Appends the pages as a PDF file. The module is looked for beside the program, as it is built, and
 * where it is installed; FAULT_REFUSED where there is none (the feature was left out). Characters
 * that no installed face has are counted: they are printed as empty frames.
 */
enum fault page_pdf(struct text *out, const struct pages *pages, long *ret_unknown,
                    struct fault_note *note);

#endif
