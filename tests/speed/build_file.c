#include "build_file.h"

#include "exchange/exchange.h"

#include <stdio.h>
#include <stdlib.h>

void build_file_read(const char *name, struct model *model)
{
    struct text bytes;
    char chunk[4096];
    FILE *file = fopen(name, "rb");

    if (!file)
        exit(1);
    text_init(&bytes);
    for (size_t got; (got = fread(chunk, 1, sizeof chunk, file)) > 0;)
        text_add_bytes(&bytes, chunk, got);
    fclose(file);
    if (exchange_build_in(text_string(&bytes), bytes.length, model, NULL, NULL))
        exit(1);
    text_release(&bytes);
}
