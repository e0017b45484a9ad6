/*
 * Pages as SVG 1.1 (W3C Recommendation, second edition). Coordinates are thousandths of a
 * millimetre, exact to 1/320 mm; words keep their width whatever face a viewer has.
 */
#include "paper/page.h"

#include "base/quantity.h"

/* A length in millimetres with three decimals. */
struct figure {
    char at[32];
};

static struct figure millimetres(int64_t length)
{
    struct figure figure;
    int64_t thousandths = length * 1000 / LENGTH_MM;
    const char *sign = thousandths < 0 ? "-" : "";

    thousandths = thousandths < 0 ? -thousandths : thousandths;
    snprintf(figure.at, sizeof figure.at, "%s%lld.%03lld", sign, (long long)(thousandths / 1000),
             (long long)(thousandths % 1000));
    return figure;
}

static void add_number(struct text *out, const char *name, int64_t length)
{
    text_format(out, " %s=\"%s\"", name, millimetres(length).at);
}

/* XML 1.0, section 2.4: what may not stand in character data as it is. */
static void add_escaped(struct text *out, const char *words)
{
    for (; *words; words++) {
        switch (*words) {
        case '&':
            text_add(out, "&amp;");
            break;
        case '<':
            text_add(out, "&lt;");
            break;
        case '>':
            text_add(out, "&gt;");
            break;
        case '"':
            text_add(out, "&quot;");
            break;
        default:
            text_add_char(out, *words);
        }
    }
}

static void add_pen(struct text *out, enum page_pen pen)
{
    add_number(out, "stroke-width", page_pen_width(pen));
    if (pen == PEN_DASHED) /* PAGE_DASH and PAGE_DASH_GAP */
        text_add(out, " stroke-dasharray=\"2 1\"");
    text_add(out, "/>\n");
}

static void add_line(struct text *out, const struct page_mark *mark)
{
    text_add(out, "<line");
    add_number(out, "x1", mark->x0);
    add_number(out, "y1", mark->y0);
    add_number(out, "x2", mark->x1);
    add_number(out, "y2", mark->y1);
    add_pen(out, mark->pen);
}

static void add_frame(struct text *out, const struct page_mark *mark)
{
    struct page_box box = page_mark_box(mark);

    text_add(out, "<rect");
    add_number(out, "x", box.x0);
    add_number(out, "y", box.y0);
    add_number(out, "width", box.x1 - box.x0);
    add_number(out, "height", box.y1 - box.y0);
    if (mark->shape == PAGE_PART)
        text_add(out, " fill=\"white\"");
    if (mark->shape == PAGE_WASTE)
        text_add(out, " fill=\"url(#waste)\" stroke=\"none\"/>\n");
    else
        add_pen(out, mark->pen);
}

static void add_circle(struct text *out, const struct page_mark *mark)
{
    text_add(out, "<circle");
    add_number(out, "cx", mark->x0);
    add_number(out, "cy", mark->y0);
    add_number(out, "r", mark->x1 - mark->x0);
    add_pen(out, mark->pen);
}

static void add_words(struct text *out, const struct page_mark *mark)
{
    if (!*mark->words)
        return;
    text_add(out, "<text");
    if (mark->upright) {
        text_format(out, " transform=\"translate(%s", millimetres(mark->x0).at);
        text_format(out, " %s) rotate(-90)\"", millimetres(mark->y0).at);
    } else {
        add_number(out, "x", mark->x0);
        add_number(out, "y", mark->y0);
    }
    add_number(out, "font-size", mark->size);
    add_number(out, "textLength", page_words_width(mark->words, mark->size));
    if (mark->pen == PEN_BOLD)
        text_add(out, " font-weight=\"bold\"");
    text_add(out, " lengthAdjust=\"spacingAndGlyphs\" xml:space=\"preserve\">");
    add_escaped(out, mark->words);
    text_add(out, "</text>\n");
}

static void add_mark(struct text *out, const struct page_mark *mark)
{
    static void (*const adders[])(struct text *, const struct page_mark *) = {
        [PAGE_LINE] = add_line,   [PAGE_FRAME] = add_frame,   [PAGE_PART] = add_frame,
        [PAGE_WASTE] = add_frame, [PAGE_CIRCLE] = add_circle, [PAGE_WORDS] = add_words};

    adders[mark->shape](out, mark);
}

static void add_page(struct text *out, const struct pages *pages, size_t index)
{
    const struct page *page = &pages->list.at[index];

    text_format(out, "<g transform=\"translate(0 %s)\">\n<title>",
                millimetres((int64_t)index * pages->format->height).at);
    add_escaped(out, page->title);
    text_add(out, "</title>\n");
    for (size_t i = 0; i < page->marks.count; i++)
        add_mark(out, &page->marks.at[i]);
    text_add(out, "</g>\n");
}

void page_svg(struct text *out, const struct pages *pages)
{
    int64_t height = (int64_t)pages->list.count * pages->format->height;

    text_add(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                  "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"");
    text_format(out, " width=\"%smm\"", millimetres(pages->format->width).at);
    text_format(out, " height=\"%smm\"", millimetres(height).at);
    text_format(out, " viewBox=\"0 0 %s", millimetres(pages->format->width).at);
    text_format(out, " %s\">\n<title>", millimetres(height).at);
    add_escaped(out, pages->build);
    /* A pattern of PAGE_WASTE_PITCH, drawn with the fine pen. */
    text_add(out,
             "</title>\n"
             "<defs><pattern id=\"waste\" width=\"3\" height=\"3\" "
             "patternUnits=\"userSpaceOnUse\">\n"
             "<path d=\"M0 3L3 0\" stroke=\"black\" stroke-width=\"0.125\"/></pattern></defs>\n"
             "<rect width=\"100%\" height=\"100%\" fill=\"white\"/>\n"
             "<g fill=\"none\" stroke=\"black\">\n"
             "<style>text { fill: black; stroke: none; font-family: \"DejaVu Sans Mono\", "
             "\"Liberation Mono\", monospace; }</style>\n");
    for (size_t i = 0; i < pages->list.count; i++)
        add_page(out, pages, i);
    text_add(out, "</g>\n</svg>\n");
}
