/*
 * The manual pages say what the tables say. The program is given their folder; with
 * STUFFOVER_PAGES=write in the environment it writes them:
 *
 *     STUFFOVER_PAGES=write meson test 'exchange page'
 */
#include "kept.h"
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

/* A page as it should be, against the file in the manual's folder. */
static void check_page(const char *name, void (*write)(struct text *out))
{
    char path[4096];
    struct text made;

    snprintf(path, sizeof path, "%s/%s", page_folder, name);
    text_init(&made);
    write(&made);
    kept_assert(path, text_string(&made), "STUFFOVER_PAGES");
    text_release(&made);
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
