#include "paper/page_pdf.h"

#include "paper/pdf/pdf.h"

#include <dlfcn.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

/* From the program's folder: where the build leaves it, where it is installed. */
static const char *const places[] = {"paper/pdf/" PDF_MODULE, PDF_INSTALLED "/" PDF_MODULE};

static void *open_beside(const char *folder, const char *place)
{
    char path[2 * PATH_MAX];

    snprintf(path, sizeof path, "%s/%s", folder, place);
    return dlopen(path, RTLD_NOW | RTLD_LOCAL);
}

/* Stays loaded: its libraries keep what they have set up. */
static void *find_module(void)
{
    char folder[PATH_MAX];
    ssize_t length = readlink("/proc/self/exe", folder, sizeof folder - 1);
    void *module = NULL;

    folder[length > 0 ? length : 0] = '\0';
    char *slash = strrchr(folder, '/');
    if (!slash)
        return NULL;
    *slash = '\0';
    for (size_t i = 0; i < sizeof places / sizeof *places && !module; i++)
        module = open_beside(folder, places[i]);
    return module;
}

static bool put(void *context, const unsigned char *bytes, size_t count)
{
    struct text *out = context;

    text_add_bytes(out, (const char *)bytes, count);
    return !text_failed(out);
}

enum fault page_pdf(struct text *out, const struct pages *pages, long *ret_unknown,
                    struct fault_note *note)
{
    void *module = find_module();
    void *symbol = module ? dlsym(module, PDF_WRITE_NAME) : NULL;
    struct pdf_result result;
    pdf_write_fn *write;

    if (!symbol)
        return fault_say(note, FAULT_REFUSED,
                         "this program was built without PDF; .svg and .txt can be had");
    /* POSIX lets a function's address come as one of data; ISO C has no cast for it. */
    memcpy(&write, &symbol, sizeof write);
    write(pages, put, out, &result);
    if (!result.done)
        return fault_say(note, FAULT_IO, "the PDF cannot be made: %s", result.why);
    *ret_unknown = result.unknown_glyphs;
    return FAULT_NONE;
}
