/*
 * PDF measured by other programs: qpdf reads the file's structure, pdftocairo (poppler) draws a
 * page as SVG, whose lines are measured here. The arguments are the module's program and the demo's
 * folder.
 */
#include "paper/pdf/pdf.h"

#include "base/quantity.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define POINT_MM (25.4 / 72.0) /* ISO 32000-1, 8.3.2.3: a unit of user space */

static const char *program, *demo;

struct desk_of_files {
    char folder[200];
    char pdf[240];
};

static int set_up(void **state)
{
    struct desk_of_files *files = calloc(1, sizeof *files);
    const char *parent = getenv("TMPDIR");

    snprintf(files->folder, sizeof files->folder, "%.150s/pdf-XXXXXX", parent ? parent : "/tmp");
    if (!mkdtemp(files->folder))
        return -1;
    snprintf(files->pdf, sizeof files->pdf, "%s/a.pdf", files->folder);
    *state = files;
    return 0;
}

static int run(const char *format, ...) __attribute__((format(printf, 1, 2)));

static int run(const char *format, ...)
{
    char command[1200];
    va_list arguments;

    va_start(arguments, format);
    vsnprintf(command, sizeof command, format, arguments);
    va_end(arguments);
    int status = system(command);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static int tear_down(void **state)
{
    struct desk_of_files *files = *state;

    run("rm -rf '%s'", files->folder);
    free(files);
    return 0;
}

static void read_whole(const char *path, struct text *ret_text)
{
    FILE *file = fopen(path, "rb");
    char bytes[4096];
    size_t count;

    assert_non_null(file);
    text_init(ret_text);
    while ((count = fread(bytes, 1, sizeof bytes, file)) > 0)
        text_add_bytes(ret_text, bytes, count);
    fclose(file);
}

/* ---- a page made by hand ---- */

static bool put(void *context, const unsigned char *bytes, size_t count)
{
    return fwrite(bytes, 1, count, context) == count;
}

typedef void draw_fn(struct pages *pages, struct page *page);

static void write_page(const struct desk_of_files *files, draw_fn *draw,
                       struct pdf_result *ret_result)
{
    struct arena arena;
    jmp_buf escape;
    struct pages pages = {.arena = &arena,
                          .format = page_format_named("a4"),
                          .build = "Bench",
                          .number = "0badcafe",
                          .date = "2026-02-03"};
    FILE *file = fopen(files->pdf, "wb");

    assert_non_null(file);
    arena_init(&arena);
    arena.escape = &escape;
    assert_int_equal(setjmp(escape), 0);
    draw(&pages, pages_add(&pages, "Page"));
    pages_finish(&pages);
    pdf_write(&pages, put, file, ret_result);
    assert_int_equal(fclose(file), 0);
    assert_true(ret_result->done);
    arena_release(&arena);
}

/* ---- lines as poppler draws them ---- */

struct drawn {
    double x0, y0, x1, y1; /* mm from the top left corner */
};

static double number_at(const char **at)
{
    char *end;
    double number = strtod(*at, &end);

    *at = end + (*end == ',');
    return number;
}

/* d="M x y L x y", under transform="matrix(a, b, c, d, e, f)" where there is one. */
static bool read_line(const char *path, struct drawn *ret_line)
{
    const char *at = strstr(path, " d=\"M "), *matrix = strstr(path, "matrix(");
    const char *end = strstr(path, "/>");
    double x[2], y[2], m[6] = {1, 0, 0, 1, 0, 0};

    if (!at || !end || at > end)
        return false;
    at += 6;
    x[0] = number_at(&at);
    y[0] = number_at(&at);
    if (strncmp(at, " L ", 3) != 0)
        return false;
    at += 3;
    x[1] = number_at(&at);
    y[1] = number_at(&at);
    if (matrix && matrix < end) {
        matrix += 7;
        for (int i = 0; i < 6; i++)
            m[i] = number_at(&matrix);
    }
    *ret_line = (struct drawn){(m[0] * x[0] + m[2] * y[0] + m[4]) * POINT_MM,
                               (m[1] * x[0] + m[3] * y[0] + m[5]) * POINT_MM,
                               (m[0] * x[1] + m[2] * y[1] + m[4]) * POINT_MM,
                               (m[1] * x[1] + m[3] * y[1] + m[5]) * POINT_MM};
    return true;
}

/* How many lines of the first page have these ends to within a hundredth of a millimetre. */
static int lines_like(const struct desk_of_files *files, const struct drawn *wanted)
{
    char path[280];
    struct text svg;
    int found = 0;

    snprintf(path, sizeof path, "%s/page.svg", files->folder);
    assert_int_equal(run("pdftocairo -svg -noshrink -nocenter -l 1 '%s' '%s'", files->pdf, path),
                     0);
    read_whole(path, &svg);
    for (const char *at = text_string(&svg); (at = strstr(at, "<path")); at++) {
        struct drawn line;
        if (read_line(at, &line) && fabs(line.x0 - wanted->x0) < 0.01 &&
            fabs(line.y0 - wanted->y0) < 0.01 && fabs(line.x1 - wanted->x1) < 0.01 &&
            fabs(line.y1 - wanted->y1) < 0.01)
            found++;
    }
    text_release(&svg);
    return found;
}

static void draw_a_hole(struct pages *pages, struct page *page)
{
    int64_t x = 60 * LENGTH_MM, y = 80 * LENGTH_MM + LENGTH_INCH / 16;

    page->to_scale = true;
    page_line(pages, page, PEN_FINE, (struct page_box){x - 1600, y, x + 1600, y});
    page_line(pages, page, PEN_BOLD,
              (struct page_box){x - 7 * LENGTH_INCH / 4, 9600, x - 7 * LENGTH_INCH / 4, 64000});
}

/* 100.00 mm and 4.000 in on paper, and 1-3/4 in from an edge to a hole's cross. */
static void a_page_is_drawn_at_full_size(void **state)
{
    const struct desk_of_files *files = *state;
    struct pdf_result result;
    double x = 60, y = 80 + 25.4 / 16;
    double bar = 297 - 15 + 4;

    write_page(files, draw_a_hole, &result);
    assert_int_equal(lines_like(files, &(struct drawn){15, bar, 115, bar}), 1);
    assert_int_equal(lines_like(files, &(struct drawn){15, bar + 5, 15 + 101.6, bar + 5}), 1);
    assert_int_equal(lines_like(files, &(struct drawn){x - 5, y, x + 5, y}), 1);
    assert_int_equal(lines_like(files, &(struct drawn){x - 44.45, 30, x - 44.45, 200}), 1);
    assert_int_equal(lines_like(files, &(struct drawn){x - 44.55, 30, x - 44.55, 200}), 0);
}

static void a_page_to_scale_asks_to_be_printed_so(void **state)
{
    const struct desk_of_files *files = *state;
    struct pdf_result result;

    write_page(files, draw_a_hole, &result);
    assert_int_equal(run("qpdf --check '%s' >/dev/null", files->pdf), 0);
    assert_int_equal(run("qpdf --qdf --object-streams=disable '%s' - | "
                         "grep -q '/PrintScaling /None'",
                         files->pdf),
                     0);
}

static void draw_words(struct pages *pages, struct page *page)
{
    page_words(pages, page, ALIGN_FROM, 9600, 16000, 1280, "r\303\251paration 1/2");
}

static void words_stay_words(void **state)
{
    const struct desk_of_files *files = *state;
    struct pdf_result result;

    write_page(files, draw_words, &result);
    assert_int_equal(result.unknown_glyphs, 0);
    assert_int_equal(run("qpdf --check '%s' >/dev/null", files->pdf), 0);
    assert_int_equal(run("pdftotext '%s' - | grep -q 'r\303\251paration 1/2'", files->pdf), 0);
    assert_int_equal(
        run("qpdf --qdf --object-streams=disable '%s' - | grep -q '/PrintScaling'", files->pdf), 1);
}

/* U+F8FF is for private use: no face has to have it. */
static void draw_no_character(struct pages *pages, struct page *page)
{
    page_words(pages, page, ALIGN_FROM, 9600, 16000, 1280, "\357\243\277\357\243\276");
}

static void characters_that_no_face_has_are_counted(void **state)
{
    const struct desk_of_files *files = *state;
    struct pdf_result result;

    write_page(files, draw_no_character, &result);
    assert_int_equal(result.unknown_glyphs, 2);
}

/* ---- the program ---- */

static void the_program_prints_the_same_file_twice(void **state)
{
    const struct desk_of_files *files = *state;
    const char *at = files->folder;
    struct text first, second;
    char other[280];

    snprintf(other, sizeof other, "%s/b.pdf", at);
    assert_int_equal(run("'%s' --store '%s/w' import '%s/workshop.json' '%s/stool.json' >/dev/null",
                         program, at, demo, demo),
                     0);
    assert_int_equal(run("SOURCE_DATE_EPOCH=1700000000 '%s' --store '%s/w' print 'Tufted stool' "
                         "--to '%s' >/dev/null",
                         program, at, files->pdf),
                     0);
    assert_int_equal(run("SOURCE_DATE_EPOCH=1700000000 '%s' --store '%s/w' print 'Tufted stool' "
                         "--to '%s' >/dev/null",
                         program, at, other),
                     0);
    read_whole(files->pdf, &first);
    read_whole(other, &second);
    assert_true(first.length > 1000);
    assert_int_equal(first.length, second.length);
    assert_memory_equal(first.at, second.at, first.length);
    assert_int_equal(run("qpdf --check '%s' >/dev/null", other), 0);
    text_release(&first);
    text_release(&second);
}

static void a_file_that_is_there_stays_unless_it_may_go(void **state)
{
    const struct desk_of_files *files = *state;
    const char *at = files->folder;

    assert_int_equal(run("'%s' --store '%s/w' import '%s/workshop.json' '%s/stool.json' >/dev/null",
                         program, at, demo, demo),
                     0);
    assert_int_equal(run("echo mine > '%s'", files->pdf), 0);
    assert_int_equal(run("'%s' --store '%s/w' print 'Tufted stool' --to '%s' 2>/dev/null", program,
                         at, files->pdf),
                     1);
    assert_int_equal(run("grep -q mine '%s'", files->pdf), 0);
    assert_int_equal(run("'%s' --store '%s/w' print 'Tufted stool' --replace --to '%s' >/dev/null",
                         program, at, files->pdf),
                     0);
    assert_int_equal(run("grep -q mine '%s'", files->pdf), 1);
    assert_int_equal(run("test \"$(ls '%s' | grep -c new)\" = 0", at), 0);
}

int main(int argc, char **argv)
{
    if (argc < 3)
        return 2;
    program = argv[1];
    demo = argv[2];
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_page_is_drawn_at_full_size, set_up, tear_down),
        cmocka_unit_test_setup_teardown(a_page_to_scale_asks_to_be_printed_so, set_up, tear_down),
        cmocka_unit_test_setup_teardown(words_stay_words, set_up, tear_down),
        cmocka_unit_test_setup_teardown(characters_that_no_face_has_are_counted, set_up, tear_down),
        cmocka_unit_test_setup_teardown(the_program_prints_the_same_file_twice, set_up, tear_down),
        cmocka_unit_test_setup_teardown(a_file_that_is_there_stays_unless_it_may_go, set_up,
                                        tear_down),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
