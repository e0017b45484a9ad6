/* What cairo has no call for: a PDF that asks to be printed to scale. */
#ifndef PAPER_PDF_SCALING_H
#define PAPER_PDF_SCALING_H

#include "base/text.h"

/*
 * Appends an incremental update (ISO 32000-1, 7.5.6) whose catalogue is the file's with
 * /ViewerPreferences << /PrintScaling /None >>. The file must have a cross-reference table, as
 * cairo writes for PDF 1.4. False, with the file unchanged, where its catalogue is not found.
 */
bool scaling_none(struct text *file);

#endif
