#include "scarce.h"

#include "base/memory.h"

#include <stdlib.h>

static int fails_at;
static int requests;
static int blocks_out;

static void *resize(void *block, size_t size)
{
    void *moved;

    if (++requests == fails_at)
        return NULL;
    moved = realloc(block, size);
    if (moved && !block)
        blocks_out++;
    return moved;
}

static void release(void *block)
{
    if (block)
        blocks_out--;
    free(block);
}

static const struct memory_source scarce = {.resize = resize, .release = release};

void scarce_begin(int request)
{
    fails_at = request;
    requests = 0;
    blocks_out = 0;
    memory_use(&scarce);
}

int scarce_end(void)
{
    memory_use(NULL);
    return blocks_out;
}

bool scarce_failed(void)
{
    return fails_at > 0 && requests >= fails_at;
}

int scarce_requests(void)
{
    return requests;
}
