/* The filter before screen, paper and pipe: no control character passes, and what has passed once
 * passes as it is. */
#include "target.h"

#include "base/show.h"

static void check(void (*filter)(struct text *, const char *), const char *text, char allowed)
{
    struct text once, twice;

    text_init(&once);
    text_init(&twice);
    filter(&once, text);
    filter(&twice, text_string(&once));
    HOLDS(!text_failed(&once) && !text_failed(&twice));
    HOLDS(strcmp(text_string(&once), text_string(&twice)) == 0);
    for (const char *at = text_string(&once); *at; at++)
        HOLDS(((unsigned char)*at >= ' ' && *at != 0x7f) || *at == allowed);
    text_release(&once);
    text_release(&twice);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = target_string(data, size);
    char cut[17];

    check(show_text, text, ' ');
    check(show_lines, text, '\n');
    show_into(cut, sizeof cut, text);
    HOLDS(strlen(cut) < sizeof cut);
    free(text);
    return 0;
}
