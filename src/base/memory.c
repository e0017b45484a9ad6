#include "base/memory.h"

#include <stdlib.h>

static const struct memory_source library = {.resize = realloc, .release = free};
static const struct memory_source *in_use = &library;

const struct memory_source *memory_use(const struct memory_source *source)
{
    const struct memory_source *before = in_use;

    in_use = source ? source : &library;
    return before;
}

void *memory_resize(void *block, size_t size)
{
    return in_use->resize(block, size ? size : 1);
}

void memory_release(void *block)
{
    in_use->release(block);
}
