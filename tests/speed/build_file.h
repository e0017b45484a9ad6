/* Builds from files, for benchmarks: what goes wrong ends the program. */
#ifndef SPEED_BUILD_FILE_H
#define SPEED_BUILD_FILE_H

#include "model/model.h"

/* Reads a build, JSON as of `export`, into a model that has an arena with an escape. */
void build_file_read(const char *name, struct model *model);

#endif
