/*
 * Pages: sizes of paper, what stands on them and where, and SVG of it.
 *
 * Sizes: ISO 216:2007 (A4 210 x 297 mm) and ANSI/ASME Y14.1 (A, "letter", 8.5 x 11 in), both from
 * memory. What a page may not do is common practice: no source.
 */
#include "golden.h"
#include "work.h"

#include "paper/chart.h"
#include "paper/lines.h"
#include "paper/papers.h"
#include "paper/print.h"
#include "plan/geometry.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const cases[] = {"headboard", "ottoman", "banquette", "open-wing"};
#define CASES (sizeof cases / sizeof *cases)

static struct pages begin_pages(struct arena *arena)
{
    return (struct pages){.arena = arena,
                          .format = page_format_named("a4"),
                          .build = "Bench",
                          .number = "0badcafe",
                          .date = "2026-02-03"};
}

/* All papers of a plan on pages. */
static struct pages all_pages(struct work_bench *bench)
{
    struct pages pages = begin_pages(&bench->made);

    for (const struct paper *paper = papers; paper->name; paper++)
        paper_on_pages(&pages, bench->plan, paper, true);
    pages_finish(&pages);
    return pages;
}

/* Takes in a worked example and looks at its plan. */
typedef void look_fn(struct work_bench *bench);
static void look_at(const char *name, look_fn *look)
{
    struct work_bench bench;

    work_case(&bench, name);
    bench.made.escape = &bench.escape;
    assert_int_equal(setjmp(bench.escape), 0);
    look(&bench);
    work_end(&bench);
}

static void paper_is_as_large_as_the_standards_say(void **state)
{
    (void)state;
    assert_int_equal(page_format_named("a4")->width, 210 * LENGTH_MM);
    assert_int_equal(page_format_named("a4")->height, 297 * LENGTH_MM);
    assert_int_equal(2 * page_format_named("letter")->width, 17 * LENGTH_INCH);
    assert_int_equal(page_format_named("letter")->height, 11 * LENGTH_INCH);
    assert_null(page_format_named("a5"));
}

/* ---- nothing outside, no words over words ---- */

static bool meet(const struct page_box *a, const struct page_box *b)
{
    return a->x0 < b->x1 && b->x0 < a->x1 && a->y0 < b->y1 && b->y0 < a->y1;
}

/* ---- words that begin far to the right ---- */

/* A note of the maker's may hold such a line. */
#define FAR_BLANKS 90
static const char far_words[] = "the window sill is at nine hundred and fourteen, and the radiator "
                                "that stands below it stays free on all of its sides";

static void add_far_line(struct text *line)
{
    text_format(line, "%*s%s\n", FAR_BLANKS, "", far_words);
}

/* All words of `out` with one blank between them. */
static void squeeze(struct text *squeezed, const char *out)
{
    for (; *(out += strspn(out, " \n")); out += strcspn(out, " \n")) {
        text_add(squeezed, squeezed->length ? " " : "");
        text_add_bytes(squeezed, out, strcspn(out, " \n"));
    }
}

static void words_far_to_the_right_go_on_within_the_sheet(void **state)
{
    struct text line, out, squeezed;
    struct flow flow = flow_of_text(&out, NULL);

    (void)state;
    text_init(&line);
    text_init(&out);
    text_init(&squeezed);
    add_far_line(&line);
    flow_words(&flow, text_string(&line));
    squeeze(&squeezed, text_string(&out));
    assert_string_equal(text_string(&squeezed), far_words);
    for (const char *at = text_string(&out); *at; at += strcspn(at, "\n") + 1)
        assert_true(strcspn(at, "\n") <= SHEET_COLUMNS);
    text_release(&line);
    text_release(&out);
    text_release(&squeezed);
}

static void check_far_words(struct work_bench *bench)
{
    struct pages pages = begin_pages(&bench->made);
    struct flow flow = flow_of_pages(&pages, bench->plan, "Bench");
    struct text line;

    text_init(&line);
    add_far_line(&line);
    flow_words(&flow, text_string(&line));
    text_release(&line);
    assert_int_equal(pages.list.count, 1);
    assert_true(pages.list.at[0].marks.count > 2);
    assert_true(pages.list.at[0].marks.count < 6);
}

static void nor_do_they_fill_pages(void **state)
{
    (void)state;
    look_at("headboard", check_far_words);
}

/* Printers leave about 5 mm white at each edge. */
static void check_inside(const struct pages *pages, const struct page *page,
                         const struct page_mark *mark)
{
    struct page_box box = page_mark_box(mark);
    int64_t white = 5 * LENGTH_MM;

    if (box.x0 < white || box.y0 < white || box.x1 > pages->format->width - white ||
        box.y1 > pages->format->height - white)
        fail_msg("%s: a mark leaves the page: %s, %lld %lld to %lld %lld", page->title,
                 mark->shape == PAGE_WORDS ? mark->words : "no words", (long long)box.x0,
                 (long long)box.y0, (long long)box.x1, (long long)box.y1);
}

static void check_page(const struct pages *pages, const struct page *page)
{
    for (size_t i = 0; i < page->marks.count; i++) {
        const struct page_mark *mark = &page->marks.at[i];
        struct page_box box = page_mark_box(mark);

        check_inside(pages, page, mark);
        for (size_t k = 0; mark->shape == PAGE_WORDS && *mark->words && k < i; k++) {
            const struct page_mark *other = &page->marks.at[k];
            struct page_box taken = page_mark_box(other);
            if (other->shape == PAGE_WORDS && *other->words && meet(&box, &taken))
                fail_msg("%s: \"%s\" stands on \"%s\"", page->title, mark->words, other->words);
        }
    }
}

static void check_pages(struct work_bench *bench)
{
    struct pages pages = all_pages(bench);

    assert_true(pages.list.count > 0);
    for (size_t i = 0; i < pages.list.count; i++)
        check_page(&pages, &pages.list.at[i]);
}

static void no_mark_leaves_a_page_and_no_words_stand_on_others(void **state)
{
    (void)state;
    for (size_t i = 0; i < CASES; i++)
        look_at(cases[i], check_pages);
}

static void check_chance(struct work_bench *bench, struct dice *dice)
{
    (void)dice;
    bench->made.escape = &bench->escape;
    assert_int_equal(setjmp(bench->escape), 0);
    check_pages(bench);
}

static void nor_on_those_of_builds_by_chance(void **state)
{
    (void)state;
    work_builds(20261130, check_chance);
}

/* ---- templates ---- */

/* An edge of the face on a page: a bold line, upright or level. */
static bool edge_at(const struct page *page, bool upright, int64_t place)
{
    for (size_t i = 0; i < page->marks.count; i++) {
        const struct page_mark *mark = &page->marks.at[i];
        if (mark->shape == PAGE_LINE && mark->pen == PEN_BOLD &&
            (upright ? mark->x0 == mark->x1 && mark->x0 == place
                     : mark->y0 == mark->y1 && mark->y0 == place))
            return true;
    }
    return false;
}

/* Whether an edge is on the page just as far from a hole as the hole map says. */
static bool edge_shown(const struct page *page, const struct page_mark *hole,
                       const struct from_edge *from)
{
    const int64_t places[] = {[EDGE_LEFT] = hole->x0 - from->distance,
                              [EDGE_RIGHT] = hole->x0 + from->distance,
                              [EDGE_TOP] = hole->y0 - from->distance,
                              [EDGE_BOTTOM] = hole->y0 + from->distance};

    return edge_at(page, from->edge == EDGE_LEFT || from->edge == EDGE_RIGHT, places[from->edge]);
}

/* Whether a page says of its crosses, 5 mm inside its room, what makes up the distance of a hole.
 */
static bool tells_distance(const struct pages *pages, const struct page *page,
                           const struct page_mark *hole, const struct from_edge *from)
{
    struct page_box room = pages_room(pages);
    int64_t in = 5 * LENGTH_MM;
    const int64_t crosses[] = {[EDGE_LEFT] = hole->x0 - room.x0 - in,
                               [EDGE_RIGHT] = room.x1 - in - hole->x0,
                               [EDGE_BOTTOM] = room.y1 - in - hole->y0,
                               [EDGE_TOP] = hole->y0 - room.y0 - in};
    char told[120];

    snprintf(told, sizeof told, "crosses %s in (%s mm) from",
             print_marked(from->distance - crosses[from->edge], UNITS_INCH).at,
             print_marked(from->distance - crosses[from->edge], UNITS_MM).at);
    for (size_t i = 0; i < page->marks.count; i++) {
        if (page->marks.at[i].shape == PAGE_WORDS && strstr(page->marks.at[i].words, told))
            return true;
    }
    return false;
}

/* Both distances of a hole can be had from a page: by a line of the face, or by a figure. */
static bool is_placed(const struct pages *pages, const struct from_edge edges[2])
{
    for (size_t i = 0; i < pages->list.count; i++) {
        const struct page *page = &pages->list.at[i];
        for (size_t k = 0; k < page->marks.count; k++) {
            const struct page_mark *mark = &page->marks.at[k];
            if (mark->shape == PAGE_CIRCLE &&
                (edge_shown(page, mark, &edges[0]) ||
                 tells_distance(pages, page, mark, &edges[0])) &&
                (edge_shown(page, mark, &edges[1]) || tells_distance(pages, page, mark, &edges[1])))
                return true;
        }
    }
    return false;
}

static void check_template(struct work_bench *bench)
{
    struct pages pages = begin_pages(&bench->made);

    paper_on_pages(&pages, bench->plan, paper_named("template", 8), true);
    for (size_t i = 0; i < bench->plan->points.count; i++) {
        const struct plan_point *point = &bench->plan->points.at[i];
        assert_true(is_placed(&pages, point->edges));
        if (plan_junction(bench->plan, point->join)->box_b)
            assert_true(is_placed(&pages, point->edges_b));
    }
    for (size_t i = 0; i < pages.list.count; i++)
        assert_true(pages.list.at[i].to_scale);
    if (bench->plan->points.count > 0)
        assert_true(pages.list.count > 0);
}

static void a_template_has_each_hole_at_its_distances_at_full_size(void **state)
{
    (void)state;
    for (size_t i = 0; i < CASES; i++)
        look_at(cases[i], check_template);
}

/* ---- labels that are moved apart ---- */

static void places_moved_apart_keep_their_order_and_ends(void **state)
{
    (void)state;
    struct dice dice = {7};

    for (int run = 0; run < 2000; run++) {
        int64_t places[12], gap = dice_between(&dice, 1, 40);
        size_t count = (size_t)dice_between(&dice, 1, 12);
        int64_t low = 0, high = dice_between(&dice, 60, 400);
        for (size_t i = 0; i < count; i++)
            places[i] = dice_between(&dice, i ? places[i - 1] : low, high);
        int64_t room = count > 1 ? (high - low) / (int64_t)(count - 1) : gap;
        chart_spread(places, count, gap, low, high);
        for (size_t i = 0; i < count; i++) {
            assert_true(places[i] >= low && places[i] <= high);
            if (i > 0)
                assert_true(places[i] - places[i - 1] >= (gap < room ? gap : room));
        }
    }
}

static void places_far_enough_apart_stay(void **state)
{
    (void)state;
    int64_t places[] = {5, 20, 60};

    chart_spread(places, 3, 10, 0, 100);
    assert_int_equal(places[0], 5);
    assert_int_equal(places[1], 20);
    assert_int_equal(places[2], 60);
}

/* ---- SVG ---- */

/* Reads tags and character data as XML 1.0 has them: every "<" begins a tag that ends, tags nest,
 * "&" begins one of the predefined entities, no control character but newline. */
static bool is_well_formed(const char *at)
{
    int depth = 0;

    for (; *at; at++) {
        if (*at == '&' && strncmp(at, "&amp;", 5) != 0 && strncmp(at, "&lt;", 4) != 0 &&
            strncmp(at, "&gt;", 4) != 0 && strncmp(at, "&quot;", 6) != 0)
            return false;
        if ((unsigned char)*at < ' ' && *at != '\n')
            return false;
        if (*at != '<')
            continue;
        const char *end = strchr(at, '>');
        if (!end || memchr(at + 1, '<', (size_t)(end - at - 1)))
            return false;
        if (at[1] == '/')
            depth--;
        else if (at[1] != '?' && end[-1] != '/')
            depth++;
        if (depth < 0)
            return false;
        at = end;
    }
    return depth == 0;
}

/* A page with words of any bytes on it, as SVG. */
static void draw_words(struct text *out, const char *words)
{
    struct arena arena;
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    assert_int_equal(setjmp(escape), 0);
    struct pages pages = begin_pages(&arena);
    page_words(&pages, pages_add(&pages, "Words"), ALIGN_FROM, 0, 9600, 960, words);
    pages_finish(&pages);
    page_svg(out, &pages);
    arena_release(&arena);
}

static void nobodys_words_leave_their_place_in_an_svg(void **state)
{
    (void)state;
    static const char bits[] = "<>&\"'/\\ \n\t\x01\x1b[\x7f\xc3\xa9\xe2\x80\xaexyz]]>--!?";
    struct dice dice = {11};

    for (int run = 0; run < 300; run++) {
        struct text out;
        char words[24];
        for (size_t i = 0; i + 1 < sizeof words; i++)
            words[i] = bits[dice_between(&dice, 0, (int64_t)sizeof bits - 2)];
        words[sizeof words - 1] = '\0';
        text_init(&out);
        draw_words(&out, words);
        assert_true(is_well_formed(text_string(&out)));
        text_release(&out);
    }
}

static void draw_ottoman(struct work_bench *bench)
{
    struct text out;
    struct pages pages = begin_pages(&bench->made);

    pages.build = bench->plan->facts->build.name;
    paper_on_pages(&pages, bench->plan, paper_named("saw", 3), true);
    paper_on_pages(&pages, bench->plan, paper_named("holes", 5), true);
    pages_finish(&pages);
    text_init(&out);
    page_svg(&out, &pages);
    assert_true(is_well_formed(text_string(&out)));
    assert_golden("papers", text_string(&out));
    text_release(&out);
}

static void a_page_is_drawn_as_it_was(void **state)
{
    (void)state;
    look_at("ottoman", draw_ottoman);
}

int main(void)
{
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(paper_is_as_large_as_the_standards_say),
        cmocka_unit_test(words_far_to_the_right_go_on_within_the_sheet),
        cmocka_unit_test(nor_do_they_fill_pages),
        cmocka_unit_test(no_mark_leaves_a_page_and_no_words_stand_on_others),
        cmocka_unit_test(nor_on_those_of_builds_by_chance),
        cmocka_unit_test(a_template_has_each_hole_at_its_distances_at_full_size),
        cmocka_unit_test(places_moved_apart_keep_their_order_and_ends),
        cmocka_unit_test(places_far_enough_apart_stay),
        cmocka_unit_test(nobodys_words_leave_their_place_in_an_svg),
        cmocka_unit_test(a_page_is_drawn_as_it_was),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
