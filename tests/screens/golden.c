#include "golden.h"

#include "kept.h"

#include <stdio.h>

void assert_golden(const char *name, const char *screen)
{
    char path[1024];

    snprintf(path, sizeof path, "%s/%s.txt", GOLDEN_FOLDER, name);
    kept_assert(path, screen, "STUFFOVER_GOLDEN");
}
