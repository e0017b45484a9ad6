/*
 * The manual page says what the tables say. The program is given the page's file; with
 * STUFFOVER_PAGES=write in the environment it writes that file instead:
 *
 *     STUFFOVER_PAGES=write meson test 'exchange page'
 */
#include "page.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *page_file;

static void read_file(struct text *out, const char *name)
{
    FILE *file = fopen(name, "rb");
    char bytes[4096];
    size_t count;

    if (!file)
        return;
    while ((count = fread(bytes, 1, sizeof bytes, file)) > 0)
        text_add_bytes(out, bytes, count);
    fclose(file);
}

static void write_file(const struct text *text, const char *name)
{
    FILE *file = fopen(name, "wb");

    assert_non_null(file);
    assert_int_equal(fwrite(text_string(text), 1, text->length, file), text->length);
    assert_int_equal(fclose(file), 0);
}

static void the_page_follows_the_tables(void **state)
{
    const char *mode = getenv("STUFFOVER_PAGES");
    struct text expected;
    struct text found;

    (void)state;
    text_init(&expected);
    text_init(&found);
    page_write(&expected);
    if (mode && strcmp(mode, "write") == 0)
        write_file(&expected, page_file);
    read_file(&found, page_file);
    if (strcmp(text_string(&found), text_string(&expected)) != 0)
        print_error("the page should be (STUFFOVER_PAGES=write writes it):\n%s",
                    text_string(&expected));
    assert_true(strcmp(text_string(&found), text_string(&expected)) == 0);
    text_release(&expected);
    text_release(&found);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_page_follows_the_tables)};

    if (argc != 2) {
        fprintf(stderr, "the file of the page is needed\n");
        return 2;
    }
    page_file = argv[1];
    return cmocka_run_group_tests(tests, NULL, NULL) ? 1 : 0;
}
