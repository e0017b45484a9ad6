/*
 * The manual pages say what the tables say. The program is given their folder; with
 * STUFFOVER_PAGES=write in the environment it writes them:
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

static const char *page_folder;

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

/* A page as it should be, against the file in the manual's folder. */
static void check_page(const char *name, void (*write)(struct text *out))
{
    const char *mode = getenv("STUFFOVER_PAGES");
    char file[4096];
    struct text expected;
    struct text found;

    snprintf(file, sizeof file, "%s/%s", page_folder, name);
    text_init(&expected);
    text_init(&found);
    write(&expected);
    if (mode && strcmp(mode, "write") == 0)
        write_file(&expected, file);
    read_file(&found, file);
    if (strcmp(text_string(&found), text_string(&expected)) != 0)
        print_error("%s should be (STUFFOVER_PAGES=write writes it):\n%s", name,
                    text_string(&expected));
    assert_true(strcmp(text_string(&found), text_string(&expected)) == 0);
    text_release(&expected);
    text_release(&found);
}

static void the_page_of_builds_follows_the_tables(void **state)
{
    (void)state;
    check_page("stuffover-build.5", page_write_build);
}

static void the_page_of_trade_values_follows_the_table(void **state)
{
    (void)state;
    check_page("stuffover-trade.7", page_write_trade);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_page_of_builds_follows_the_tables),
        cmocka_unit_test(the_page_of_trade_values_follows_the_table),
    };

    if (argc != 2) {
        fprintf(stderr, "the folder of the pages is needed\n");
        return 2;
    }
    page_folder = argv[1];
    return cmocka_run_group_tests(tests, NULL, NULL) ? 1 : 0;
}
