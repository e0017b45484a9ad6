/* Where pages and lines end: no heading stands alone at the foot of a page, and no line of text is
 * wider than 80 columns. Common practice: no source. */
#include "workshop.h"

#include "paper/flow.h"
#include "paper/papers.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <stdio.h>
#include <string.h>

/* ---- a reader who knows only what is printed ---- */

/* Headings and feet of pages are not there yet: the marks are what the papers say. */
static const struct page_mark *lowest(const struct page *page)
{
    const struct page_mark *low = NULL;
    for (size_t i = 0; i < page->marks.count; i++) {
        const struct page_mark *mark = &page->marks.at[i];
        if (!low || page_mark_box(mark).y1 > page_mark_box(low).y1)
            low = mark;
    }
    return low;
}

static const struct page_mark *uppermost(const struct page *page)
{
    const struct page_mark *high = NULL;
    for (size_t i = 0; i < page->marks.count; i++) {
        const struct page_mark *mark = &page->marks.at[i];
        if (!high || page_mark_box(mark).y0 < page_mark_box(high).y0)
            high = mark;
    }
    return high;
}

static size_t indent(const struct page_mark *mark)
{
    return strspn(mark->words, " ");
}

/* Bold words say what follows; so does a line when the next one is set in deeper. */
static void assert_foot_is_no_heading(const struct pages *pages, size_t index)
{
    const struct page *page = &pages->list.at[index];
    const struct page_mark *foot = lowest(page);
    if (!foot)
        fail_msg("%s: an empty page", page->title);
    if (foot->shape != PAGE_WORDS)
        return;
    if (foot->pen == PEN_BOLD)
        fail_msg("%s: a page ends in \"%s\"", page->title, foot->words);
    if (index + 1 == pages->list.count || strcmp(pages->list.at[index + 1].title, page->title))
        return;
    const struct page_mark *next = uppermost(&pages->list.at[index + 1]);
    if (next && next->shape == PAGE_WORDS && next->pen != PEN_BOLD && next->size == foot->size &&
        indent(next) > indent(foot))
        fail_msg("%s: \"%s\" ends a page, and \"%s\" belongs to it", page->title, foot->words,
                 next->words);
}

static void assert_feet(const struct pages *pages)
{
    for (size_t i = 0; i < pages->list.count; i++)
        assert_foot_is_no_heading(pages, i);
}

/* ---- all papers of the demo ---- */

static int begin(void **state)
{
    static const char *const names[] = {"workshop",  "banquette", "corner",
                                        "headboard", "stool",     NULL};
    return bench_begin(state, names);
}

struct sheet {
    jmp_buf escape;
    struct arena arena;
    struct pages pages;
};

static void sheet_begin(struct sheet *sheet, const struct page_format *format)
{
    arena_init(&sheet->arena);
    sheet->arena.escape = &sheet->escape;
    sheet->pages = (struct pages){.arena = &sheet->arena, .format = format, .build = ""};
}

static void print_all(const struct plan *plan, const struct page_format *format)
{
    struct sheet sheet;
    sheet_begin(&sheet, format);
    assert_int_equal(setjmp(sheet.escape), 0);
    for (const struct paper *paper = papers; paper->name; paper++)
        paper_on_pages(&sheet.pages, plan, paper, true);
    assert_true(sheet.pages.list.count > 20);
    assert_feet(&sheet.pages);
    arena_release(&sheet.arena);
}

static void no_page_of_the_demo_ends_in_a_heading(void **state)
{
    struct bench *bench = *state;
    for (size_t i = 0; i < BENCH_BUILDS; i++) {
        DONE(desk_take_up(bench->desk, bench->builds[i], note));
        for (const struct page_format *format = page_formats; format->name; format++)
            print_all(desk_plan(bench->desk), format);
    }
}

/* ---- as text ---- */

static void assert_narrow(const struct plan *plan, const struct paper *paper)
{
    struct text text;
    text_init(&text);
    paper_as_text(&text, plan, paper, true);
    for (const char *line = text_string(&text); *line;) {
        size_t length = strcspn(line, "\n");
        char copy[400];
        snprintf(copy, sizeof copy, "%.*s", (int)length, line);
        if (length >= sizeof copy || text_columns(copy) > 80)
            fail_msg("%s: wider than 80 columns: %s", paper->title, copy);
        line += length + (line[length] == '\n');
    }
    text_release(&text);
}

static void no_line_of_the_demo_as_text_is_wider_than_80_columns(void **state)
{
    struct bench *bench = *state;
    for (size_t i = 0; i < BENCH_BUILDS; i++) {
        DONE(desk_take_up(bench->desk, bench->builds[i], note));
        for (const struct paper *paper = papers; paper->name; paper++)
            assert_narrow(desk_plan(bench->desk), paper);
    }
}

/* ---- one line after the other ---- */

static void lines(struct flow *flow, int count)
{
    while (count-- > 0)
        flow_words(flow, "  a line\n");
}

static int marks_on(const struct pages *pages)
{
    int marks = 0;
    for (size_t i = 0; i < pages->list.count; i++)
        marks += (int)pages->list.at[i].marks.count;
    return marks;
}

static void print_below(int above)
{
    struct sheet sheet;
    struct page_box room;
    sheet_begin(&sheet, &page_formats[0]);
    assert_int_equal(setjmp(sheet.escape), 0);
    struct flow flow = flow_of_pages(&sheet.pages, NULL, "Words");
    lines(&flow, above);
    flow_words(&flow, "\nPARTS\n sticks\n  one\n  two\n\nMORE\n\n  first\n  second\n");
    lines(&flow, above);
    flow_heading(&flow, "\nA sheet\n  1  of two\n");
    struct page *page = flow_room(&flow, flow_page_height(&flow) / 3, &room);
    page_frame(&sheet.pages, page, PEN_FINE, room);
    assert_feet(&sheet.pages);
    assert_int_equal(marks_on(&sheet.pages), 2 * above + 7 + 2 + 1);
    arena_release(&sheet.arena);
}

/* However many lines stand above: a heading with the rows under it, a sub-heading, one that is
 * followed by a paragraph of its own, and one over a picture go to the next page whole. */
static void a_heading_goes_with_what_follows_wherever_the_page_ends(void **state)
{
    (void)state;
    for (int above = 30; above < 90; above++)
        print_below(above);
}

/* A picture as high as a page, under a heading: both stand on one page. */
static void a_heading_takes_its_height_from_a_picture_of_a_whole_page(void **state)
{
    struct sheet sheet;
    struct page_box room;
    (void)state;
    sheet_begin(&sheet, &page_formats[0]);
    assert_int_equal(setjmp(sheet.escape), 0);
    struct flow flow = flow_of_pages(&sheet.pages, NULL, "Words");
    lines(&flow, 3);
    flow_heading(&flow, "\nA sheet\n");
    const struct page *page = flow_room(&flow, flow_page_height(&flow), &room);
    assert_int_equal(sheet.pages.list.count, 2);
    assert_int_equal(sheet.pages.list.at[0].marks.count, 3);
    assert_int_equal(page->marks.count, 1);
    assert_true(room.y0 >= page_mark_box(&page->marks.at[0]).y1);
    assert_int_equal(room.y1, pages_room(&sheet.pages).y1);
    arena_release(&sheet.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(no_page_of_the_demo_ends_in_a_heading, begin, bench_end),
        cmocka_unit_test_setup_teardown(no_line_of_the_demo_as_text_is_wider_than_80_columns, begin,
                                        bench_end),
        cmocka_unit_test(a_heading_goes_with_what_follows_wherever_the_page_ends),
        cmocka_unit_test(a_heading_takes_its_height_from_a_picture_of_a_whole_page),
    };
    setlocale(LC_ALL, "C.UTF-8");
    return cmocka_run_group_tests_name("the foot of a page", tests, NULL, NULL) ? 1 : 0;
}
