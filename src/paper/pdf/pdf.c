#include "paper/pdf/pdf.h"

#include "base/quantity.h"
#include "paper/pdf/scaling.h"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <stdio.h>
#include <string.h>

#define POINTS_PER_MM (72.0 / 25.4)
#define WHOLE_TURN 6.283185307179586

struct writer {
    cairo_t *cairo;
    PangoFontDescription *plain, *bold;
    long unknown_glyphs;
};

static double millimetres(int64_t length)
{
    return (double)length / (double)LENGTH_MM;
}

/* ---- marks ---- */

static void stroke(struct writer *writer, enum page_pen pen)
{
    const double dashes[] = {millimetres(PAGE_DASH), millimetres(PAGE_DASH_GAP)};

    cairo_set_line_width(writer->cairo, millimetres(page_pen_width(pen)));
    cairo_set_dash(writer->cairo, dashes, pen == PEN_DASHED ? 2 : 0, 0);
    cairo_stroke(writer->cairo);
}

static void put_line(struct writer *writer, const struct page_mark *mark)
{
    cairo_move_to(writer->cairo, millimetres(mark->x0), millimetres(mark->y0));
    cairo_line_to(writer->cairo, millimetres(mark->x1), millimetres(mark->y1));
    stroke(writer, mark->pen);
}

static void box_path(struct writer *writer, const struct page_mark *mark)
{
    struct page_box box = page_mark_box(mark);

    cairo_rectangle(writer->cairo, millimetres(box.x0), millimetres(box.y0),
                    millimetres(box.x1 - box.x0), millimetres(box.y1 - box.y0));
}

static void put_frame(struct writer *writer, const struct page_mark *mark)
{
    box_path(writer, mark);
    if (mark->shape == PAGE_PART) {
        cairo_set_source_rgb(writer->cairo, 1, 1, 1);
        cairo_fill_preserve(writer->cairo);
        cairo_set_source_rgb(writer->cairo, 0, 0, 0);
    }
    stroke(writer, mark->pen);
}

/* Slanting lines, in one net over the whole page: along each of them x + y is a multiple of the
 * pitch. */
static void put_waste(struct writer *writer, const struct page_mark *mark)
{
    struct page_box box = page_mark_box(mark);
    double x0 = millimetres(box.x0), y0 = millimetres(box.y0);
    double x1 = millimetres(box.x1), y1 = millimetres(box.y1);
    double pitch = millimetres(PAGE_WASTE_PITCH);
    int first = (int)((x0 + y0) / pitch), last = (int)((x1 + y1) / pitch);

    cairo_save(writer->cairo);
    box_path(writer, mark);
    cairo_clip(writer->cairo);
    for (int line = first; line <= last + 1; line++) {
        cairo_move_to(writer->cairo, pitch * line - y0, y0);
        cairo_line_to(writer->cairo, pitch * line - y1, y1);
    }
    stroke(writer, mark->pen);
    cairo_restore(writer->cairo);
}

static void put_circle(struct writer *writer, const struct page_mark *mark)
{
    double radius = millimetres(mark->x1 - mark->x0);
    double x = millimetres(mark->x0), y = millimetres(mark->y0);

    cairo_new_sub_path(writer->cairo);
    cairo_arc(writer->cairo, x, y, radius, 0, WHOLE_TURN);
    stroke(writer, mark->pen);
}

/* Words are laid out in points and then set to the width that the page knows of, so that another
 * face moves nothing. */
static void put_words(struct writer *writer, const struct page_mark *mark)
{
    double points = millimetres(mark->size) * POINTS_PER_MM;
    double width = millimetres(page_words_width(mark->words, mark->size)) * POINTS_PER_MM;
    PangoFontDescription *face = mark->pen == PEN_BOLD ? writer->bold : writer->plain;
    PangoLayout *layout = pango_cairo_create_layout(writer->cairo);
    int laid;

    pango_font_description_set_absolute_size(face, points * PANGO_SCALE);
    pango_layout_set_font_description(layout, face);
    pango_layout_set_text(layout, mark->words, -1);
    pango_layout_get_size(layout, &laid, NULL);
    writer->unknown_glyphs += pango_layout_get_unknown_glyphs_count(layout);
    cairo_save(writer->cairo);
    cairo_translate(writer->cairo, millimetres(mark->x0), millimetres(mark->y0));
    if (mark->upright)
        cairo_rotate(writer->cairo, -WHOLE_TURN / 4);
    cairo_scale(writer->cairo, 1 / POINTS_PER_MM, 1 / POINTS_PER_MM);
    if (laid > 0)
        cairo_scale(writer->cairo, width * PANGO_SCALE / laid, 1);
    cairo_move_to(writer->cairo, 0, -(double)pango_layout_get_baseline(layout) / PANGO_SCALE);
    pango_cairo_show_layout(writer->cairo, layout);
    cairo_restore(writer->cairo);
    cairo_new_path(writer->cairo);
    g_object_unref(layout);
}

static void put_page(struct writer *writer, const struct page *page)
{
    static void (*const putters[])(struct writer *, const struct page_mark *) = {
        [PAGE_LINE] = put_line,   [PAGE_FRAME] = put_frame,   [PAGE_PART] = put_frame,
        [PAGE_WASTE] = put_waste, [PAGE_CIRCLE] = put_circle, [PAGE_WORDS] = put_words};

    cairo_save(writer->cairo);
    cairo_scale(writer->cairo, POINTS_PER_MM, POINTS_PER_MM);
    for (size_t i = 0; i < page->marks.count; i++) {
        const struct page_mark *mark = &page->marks.at[i];
        if (mark->shape != PAGE_WORDS || *mark->words)
            putters[mark->shape](writer, mark);
    }
    cairo_restore(writer->cairo);
    cairo_show_page(writer->cairo);
}

/* ---- the file ---- */

/* The bytes are gathered: what asks viewers to print to scale is written behind them. */
static cairo_status_t gather(void *context, const unsigned char *bytes, unsigned count)
{
    struct text *file = context;

    text_add_bytes(file, (const char *)bytes, count);
    return text_failed(file) ? CAIRO_STATUS_NO_MEMORY : CAIRO_STATUS_SUCCESS;
}

static void add_metadata(cairo_surface_t *surface, const struct pages *pages)
{
    char date[40];

    snprintf(date, sizeof date, "%.10sT00:00:00Z", pages->date);
    cairo_pdf_surface_restrict_to_version(surface, CAIRO_PDF_VERSION_1_4);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, pages->build);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "stuffover");
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
}

/* One entry where a paper begins. */
static void add_outline(cairo_surface_t *surface, const struct pages *pages)
{
    char link[48];

    for (size_t i = 0; i < pages->list.count; i++) {
        const char *title = pages->list.at[i].title;
        if (i > 0 && strcmp(title, pages->list.at[i - 1].title) == 0)
            continue;
        snprintf(link, sizeof link, "page=%zu pos=[0 0]", i + 1);
        cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, title, link, 0);
    }
}

static bool has_scale(const struct pages *pages)
{
    for (size_t i = 0; i < pages->list.count; i++) {
        if (pages->list.at[i].to_scale)
            return true;
    }
    return false;
}

static cairo_status_t draw(struct text *file, const struct pages *pages, long *ret_unknown)
{
    cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(
        gather, file, millimetres(pages->format->width) * POINTS_PER_MM,
        millimetres(pages->format->height) * POINTS_PER_MM);
    struct writer writer = {.cairo = cairo_create(surface),
                            .plain = pango_font_description_from_string("DejaVu Sans Mono"),
                            .bold = pango_font_description_from_string("DejaVu Sans Mono Bold")};

    add_metadata(surface, pages);
    for (size_t i = 0; i < pages->list.count; i++)
        put_page(&writer, &pages->list.at[i]);
    add_outline(surface, pages);
    cairo_destroy(writer.cairo);
    cairo_surface_finish(surface);
    cairo_status_t status = cairo_surface_status(surface);
    cairo_surface_destroy(surface);
    pango_font_description_free(writer.plain);
    pango_font_description_free(writer.bold);
    *ret_unknown = writer.unknown_glyphs;
    return status;
}

void pdf_write(const struct pages *pages, pdf_put_fn *put, void *context,
               struct pdf_result *ret_result)
{
    struct text file;

    *ret_result = (struct pdf_result){0};
    text_init(&file);
    cairo_status_t status = draw(&file, pages, &ret_result->unknown_glyphs);
    if (status)
        snprintf(ret_result->why, sizeof ret_result->why, "%s", cairo_status_to_string(status));
    else if (has_scale(pages) && !scaling_none(&file))
        snprintf(ret_result->why, sizeof ret_result->why,
                 "the file cannot be told to print to scale");
    else if (text_failed(&file) || !put(context, (const unsigned char *)file.at, file.length))
        snprintf(ret_result->why, sizeof ret_result->why, "there is not enough memory");
    else
        ret_result->done = true;
    text_release(&file);
}
