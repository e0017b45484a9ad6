#include "sketched.h"
#include "base/utf8.h"

#include "base/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

struct face_work {
    struct sketched *sketched;
    struct drawing *drawing;
    const struct plan *plan;
    int64_t box, side;
};

struct raster_work {
    struct sketched *sketched;
    const struct drawing *drawing;
    int rows, columns;
    enum raster_style style;
};

void sketched_begin(struct sketched *sketched)
{
    arena_init(&sketched->arena);
    sketched->text = "";
}

void sketched_end(struct sketched *sketched)
{
    arena_release(&sketched->arena);
}

static void run_face(void *context)
{
    struct face_work *work = context;
    draw_face(work->drawing, work->plan, work->box, work->side, &work->sketched->arena);
}

void sketched_face(struct sketched *sketched, struct drawing *drawing, const struct plan *plan,
                   int64_t box, int64_t side)
{
    struct face_work work = {sketched, drawing, plan, box, side};
    assert_true(arena_try(&sketched->arena, run_face, &work));
}

static int row_end(const struct raster *raster, int row)
{
    int end = raster->columns;
    while (end > 0 && raster->cells[row * raster->columns + end - 1] == ' ')
        end--;
    return end;
}

static void add_row(struct text *text, const struct raster *raster, int row)
{
    for (int column = 0; column < row_end(raster, row); column++) {
        char bytes[4];
        int count = utf8_put(raster->cells[row * raster->columns + column], bytes);
        text_add_bytes(text, bytes, (size_t)count);
    }
    text_add_char(text, '\n');
}

static void run_raster(void *context)
{
    struct raster_work *work = context;
    struct arena *arena = &work->sketched->arena;
    struct raster raster;
    struct text text;
    raster_draw(&raster, work->drawing, work->rows, work->columns, work->style, arena);
    int rows = work->rows;
    while (rows > 0 && row_end(&raster, rows - 1) == 0)
        rows--;
    text_init(&text);
    for (int row = 0; row < rows; row++)
        add_row(&text, &raster, row);
    work->sketched->text = arena_text(arena, text_string(&text));
    text_release(&text);
}

void sketched_raster(struct sketched *sketched, const struct drawing *drawing, int rows,
                     int columns, enum raster_style style)
{
    struct raster_work work = {sketched, drawing, rows, columns, style};
    assert_true(arena_try(&sketched->arena, run_raster, &work));
}

size_t marks_of(const struct drawing *drawing, enum mark_kind kind)
{
    size_t found = 0;

    for (size_t i = 0; i < drawing->marks.count; i++)
        found += drawing->marks.at[i].kind == kind;
    return found;
}

bool has_label(const struct drawing *drawing, const char *text)
{
    for (size_t i = 0; i < drawing->labels.count; i++)
        if (strcmp(drawing->labels.at[i].text, text) == 0)
            return true;
    return false;
}

void assert_sketched(const struct sketched *sketched, const char *expected)
{
    if (strcmp(sketched->text, expected) != 0)
        fail_msg("drawn:\n%sexpected:\n%s", sketched->text, expected);
}
