/*
 * Pages as PDF. The one user of cairo and pango, a module of its own that is loaded when a PDF is
 * asked for: linked into the program, these libraries would treble the time it takes to start.
 */
#ifndef PAPER_PDF_PDF_H
#define PAPER_PDF_PDF_H

#include "paper/page.h"

#include <stdbool.h>

/* Takes the file's bytes in order; false stops the writing. */
typedef bool pdf_put_fn(void *context, const unsigned char *bytes, size_t count);

struct pdf_result {
    bool done;
    long unknown_glyphs; /* characters that no face on this machine has */
    char why[200];       /* where it is not done */
};

/*
 * Writes PDF 1.4, one page a page, words as words. A page that is to scale asks viewers to print it
 * so (/PrintScaling /None, ISO 32000-1, 12.2). The same pages give the same bytes with the same
 * faces installed. cairo ends the program where memory runs out.
 */
typedef void pdf_write_fn(const struct pages *pages, pdf_put_fn *put, void *context,
                          struct pdf_result *ret_result);
pdf_write_fn pdf_write;
#define PDF_WRITE_NAME "pdf_write"

#endif
