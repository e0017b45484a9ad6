/* Inches as lengths of the program, for figures by hand; exact for 1/64 in, else rounded. */
#ifndef INCH_H
#define INCH_H

#include <stdint.h>

#define IN(inches) ((int64_t)((inches)*8128.0 + ((inches) < 0 ? -0.5 : 0.5)))

#endif
