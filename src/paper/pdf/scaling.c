#include "paper/pdf/scaling.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Of the whole file: where each thing stands and what it says. Numbers are those of objects. */
struct trailer {
    long previous; /* byte of the cross-reference table */
    long root, info, size;
    const char *catalogue; /* body of the root: from its "<<" */
    size_t length;         /* up to before its last ">>" */
};

/* The last place of `what` before `end`. */
static const char *find_last(const struct text *file, const char *what)
{
    size_t length = strlen(what);

    for (size_t i = file->length >= length ? file->length - length + 1 : 0; i-- > 0;) {
        if (memcmp(file->at + i, what, length) == 0)
            return file->at + i;
    }
    return NULL;
}

static long number_after(const char *at, const char *key)
{
    const char *found = strstr(at, key);

    return found ? strtol(found + strlen(key), NULL, 10) : 0;
}

/* The body of an object: behind "\nN 0 obj". */
static bool find_catalogue(const struct text *file, struct trailer *trailer)
{
    char opening[32];
    size_t length = (size_t)snprintf(opening, sizeof opening, "\n%ld 0 obj", trailer->root);

    for (size_t i = 0; i + length < file->length; i++) {
        const char *at = file->at + i;
        if (memcmp(at, opening, length) != 0)
            continue;
        const char *begin = strstr(at, "<<"), *end = strstr(at, "endobj");
        while (begin && end && end > begin && memcmp(end, ">>", 2) != 0)
            end--;
        if (!begin || !end || end <= begin)
            return false;
        trailer->catalogue = begin;
        trailer->length = (size_t)(end - begin);
        return true;
    }
    return false;
}

static bool read_trailer(const struct text *file, struct trailer *ret_trailer)
{
    const char *end = find_last(file, "startxref"), *dictionary = find_last(file, "trailer");

    if (!end || !dictionary)
        return false;
    *ret_trailer = (struct trailer){.previous = number_after(end, "startxref"),
                                    .root = number_after(dictionary, "/Root"),
                                    .info = number_after(dictionary, "/Info"),
                                    .size = number_after(dictionary, "/Size")};
    return ret_trailer->root > 0 && ret_trailer->size > 0 && find_catalogue(file, ret_trailer);
}

bool scaling_none(struct text *file)
{
    struct trailer trailer;
    struct text update;

    if (text_failed(file) || !read_trailer(file, &trailer))
        return false;
    text_init(&update);
    text_add_char(&update, '\n');
    size_t object = file->length + update.length;
    text_format(&update,
                "%ld 0 obj\n%.*s   /ViewerPreferences << /PrintScaling /None >>\n>>\n"
                "endobj\n",
                trailer.root, (int)trailer.length, trailer.catalogue);
    size_t table = file->length + update.length;
    text_format(&update, "xref\n%ld 1\n%010zu 00000 n \ntrailer\n<< /Size %ld /Root %ld 0 R",
                trailer.root, object, trailer.size, trailer.root);
    if (trailer.info > 0)
        text_format(&update, " /Info %ld 0 R", trailer.info);
    text_format(&update, " /Prev %ld >>\nstartxref\n%zu\n%%%%EOF\n", trailer.previous, table);
    text_add_bytes(file, text_string(&update), update.length);
    bool failed = text_failed(&update) || text_failed(file);
    text_release(&update);
    return !failed;
}
