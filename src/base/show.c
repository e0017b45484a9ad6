#include "base/show.h"

#include "base/utf8.h"

#include <assert.h>
#include <string.h>

#define REPLACEMENT "\xef\xbf\xbd"
#define PLANE_MASK 0xffffu

/* What does not reach a screen, from the Unicode character database: controls (Cc), format
 * characters that have no width or turn the direction of writing (Cf, Bidi_Control), line and
 * paragraph separators, surrogates and non-characters. In rising order. */
static const struct {
    unsigned first, last;
} unsafe[] = {
    {0x0000, 0x001f},   /* C0 */
    {0x007f, 0x009f},   /* DEL and C1 */
    {0x061c, 0x061c},   /* Arabic letter mark */
    {0x180e, 0x180e},   /* vowel separator without width */
    {0x200b, 0x200f},   /* zero-width space and joiners, direction marks */
    {0x2028, 0x202e},   /* line and paragraph separators, embeddings and overrides */
    {0x2060, 0x206f},   /* word joiner, invisible operators, isolates */
    {0xd800, 0xdfff},   /* surrogates */
    {0xfdd0, 0xfdef},   /* non-characters */
    {0xfeff, 0xfeff},   /* byte order mark, zero-width no-break space */
    {0xfff9, 0xfffb},   /* interlinear annotation */
    {0x1bca0, 0x1bca3}, /* shorthand format controls */
    {0x1d173, 0x1d17a}, /* musical format controls */
    {0xe0000, 0xe007f}, /* tags */
    {0x110000, ~0u},    /* beyond Unicode */
};

bool show_is_safe(unsigned code)
{
    if ((code & PLANE_MASK) >= 0xfffe)
        return false;
    for (size_t i = 0; i < sizeof unsafe / sizeof unsafe[0] && code >= unsafe[i].first; i++)
        if (code <= unsafe[i].last)
            return false;
    return true;
}

/* Walks through a string in its safe form. */
struct reader {
    const char *at;
    size_t left;
    bool newline_stays;
};

static struct reader read_from(const char *string, bool newline_stays)
{
    string = string ? string : "";
    return (struct reader){string, strlen(string), newline_stays};
}

/* The next character's safe form, and its bytes as the result; 0 at the end. A valid U+FFFD passes
 * as it is; a broken byte has the same code and turns into the same. */
static size_t next_safe(struct reader *reader, const char **ret_form)
{
    const char *at = reader->at;
    unsigned code = 0;
    int bytes = utf8_next(at, reader->left, &code);
    bool broken = bytes == 1 && code > 0x7f;

    reader->at += bytes;
    reader->left -= (size_t)bytes;
    if (bytes == 0 ||
        (!broken && (show_is_safe(code) || (reader->newline_stays && code == '\n')))) {
        *ret_form = at;
        return (size_t)bytes;
    }
    *ret_form = REPLACEMENT;
    return sizeof REPLACEMENT - 1;
}

static void show(struct text *out, struct reader reader)
{
    const char *form;
    size_t bytes;

    while ((bytes = next_safe(&reader, &form)) > 0)
        text_add_bytes(out, form, bytes);
}

void show_text(struct text *out, const char *string)
{
    show(out, read_from(string, false));
}

void show_lines(struct text *out, const char *string)
{
    show(out, read_from(string, true));
}

char *show_into(char *buffer, size_t size, const char *string)
{
    struct reader reader = read_from(string, false);
    const char *form;
    size_t used = 0;
    size_t bytes;

    assert(size > 0);
    while ((bytes = next_safe(&reader, &form)) > 0 && used + bytes < size) {
        memcpy(buffer + used, form, bytes);
        used += bytes;
    }
    buffer[used] = '\0';
    return buffer;
}
