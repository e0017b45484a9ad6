/*
 * The screens in README.md and stuffover(1) are those that the program shows: each is played here
 * on the demo, and must stand in its page word for word. The program is given the folder of the
 * checkout; with STUFFOVER_PAGES=write in the environment it writes them anew.
 */
#include "stage.h"

#include "kept.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const char *checkout;

/* A screen in a page: what stands before its lines there, and the line that ends them. */
struct shown {
    const char *page, *indent, *end;
    const char *keys; /* on the demo's headboard */
    int rows, columns;
};

/* Row by row behind the indent, an empty row being empty. */
static void add_rows(struct text *out, const struct shown *shown, const char *screen)
{
    while (*screen) {
        size_t length = strcspn(screen, "\n");
        if (length)
            text_format(out, "%s%.*s", shown->indent, (int)length, screen);
        text_add_char(out, '\n');
        screen += length + (screen[length] == '\n');
    }
}

static void play(struct stage *stage, const struct shown *shown, struct text *ret_rows)
{
    desk_take_demo(stage->desk, "workshop");
    desk_take_demo(stage->desk, "headboard");
    stage_take_up(stage, "Spare room headboard");
    stage->tui.view.lines = false;
    stage_show(stage, shown->rows, shown->columns);
    stage_press(stage, shown->keys);
    add_rows(ret_rows, shown, stage_show(stage, shown->rows, shown->columns));
}

/* Puts the rows in place of those that begin with the same line and end before the page's end
 * line. */
static void rewrite(const struct shown *shown, const char *path, const char *page, const char *rows)
{
    struct text first, written;
    text_init(&first);
    text_init(&written);
    text_add_bytes(&first, rows, strcspn(rows, "\n") + 1);
    const char *from = strstr(page, text_string(&first));
    const char *to = from ? strstr(from, shown->end) : NULL;
    if (!to)
        fail_msg("%s has no screen that begins with %s", shown->page, text_string(&first));
    text_add_bytes(&written, page, (size_t)(from - page));
    text_add(&written, rows);
    text_add(&written, to + 1);
    file_put(path, text_string(&written));
    text_release(&first);
    text_release(&written);
}

static void assert_in_page(struct stage *stage, const struct shown *shown)
{
    char path[1024];
    struct text page, rows;
    text_init(&page);
    text_init(&rows);
    snprintf(path, sizeof path, "%s/%s", checkout, shown->page);
    file_take(&page, path);
    play(stage, shown, &rows);
    if (kept_is_written("STUFFOVER_PAGES"))
        rewrite(shown, path, text_string(&page), text_string(&rows));
    else if (!strstr(text_string(&page), text_string(&rows)))
        fail_msg("%s does not have this screen; STUFFOVER_PAGES=write writes it:\n%s", shown->page,
                 text_string(&rows));
    text_release(&page);
    text_release(&rows);
}

static void readme_shows_the_padding_cut_open(void **state)
{
    assert_in_page(
        *state, &(struct shown){"README.md", "    ", "\n\n## ", "/ 'front panel' Enter v", 20, 80});
}

static void readme_shows_a_step_at_the_bench(void **state)
{
    assert_in_page(*state, &(struct shown){"README.md", "    ", "\n\nWithout a terminal",
                                           "o / 'drill join j1' Enter Enter", 18, 80});
}

static void the_manual_shows_the_order_of_work(void **state)
{
    assert_in_page(*state, &(struct shown){"man/stuffover.1", "", "\n.Ed", "o", 18, 72});
}

int main(int argc, char **argv)
{
#define SCREEN(name) cmocka_unit_test_setup_teardown(name, stage_begin, stage_end)
    setlocale(LC_ALL, "");
    if (argc < 2)
        return 2;
    checkout = argv[1];
    const struct CMUnitTest tests[] = {
        SCREEN(readme_shows_the_padding_cut_open),
        SCREEN(readme_shows_a_step_at_the_bench),
        SCREEN(the_manual_shows_the_order_of_work),
    };
    int failed = cmocka_run_group_tests_name("pages with screens", tests, NULL, NULL);
    return failed ? 1 : 0;
}
