#include "paper/press.h"

#include "base/deliver.h"
#include "base/digest.h"
#include "paper/flow.h"
#include "paper/page_pdf.h"
#include "paper/sheets.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

/* The papers of the booklet, and how much of a name that is none is told. */
#define BOOKLET "shopping,boxes,sticks,saw,holes,cloth,sewing,staples,steps,site,label"
#define NAME_TOLD 60

static enum fault no_memory(struct fault_note *note)
{
    return fault_say(note, FAULT_MEMORY, "there is not enough memory for these papers");
}

/* ---- which papers ---- */

typedef void paper_fn(void *context, const struct paper *paper);

/* Calls for the papers of a list of names; those before a name that is none are called for. */
static enum fault each_named(const char *names, paper_fn *use, void *context,
                             struct fault_note *note)
{
    while (*names) {
        size_t length = strcspn(names, ",");
        const struct paper *paper = paper_named(names, length);

        if (!paper)
            return fault_say(note, FAULT_USAGE, "there is no paper \"%.*s\"",
                             (int)(length < NAME_TOLD ? length : NAME_TOLD), names);
        use(context, paper);
        names += length + (names[length] == ',');
    }
    return FAULT_NONE;
}

static bool is_booklet(const struct press *press)
{
    return press->papers && strcmp(press->papers, "booklet") == 0;
}

static enum fault each_paper(const struct press *press, paper_fn *use, void *context,
                             struct fault_note *note)
{
    if (press->papers)
        return each_named(is_booklet(press) ? BOOKLET : press->papers, use, context, note);
    for (const struct paper *paper = papers; paper->name; paper++)
        use(context, paper);
    return FAULT_NONE;
}

/* ---- making them ---- */

struct pressing {
    const struct press *press;
    const struct plan *plan;
    const struct trip *trip; /* its paper is made; NULL: those of the plan */
    char together[32];       /* of a trip: for how many builds it is */
    struct text *out;
    struct pages pages;
    struct fault_note *note;
    enum fault fault; /* what ended the pages */
};

static bool is_priced(const struct press *press)
{
    return !press->unpriced && !is_booklet(press);
}

static void make_text(void *context, const struct paper *paper)
{
    struct pressing *pressing = context;

    paper_as_text(pressing->out, pressing->plan, paper, is_priced(pressing->press));
}

static void make_pages(void *context, const struct paper *paper)
{
    struct pressing *pressing = context;

    paper_on_pages(&pressing->pages, pressing->plan, paper, is_priced(pressing->press));
}

enum fault press_text(const struct press *press, const struct plan *plan, struct text *out,
                      struct fault_note *note)
{
    struct pressing pressing = {.press = press, .plan = plan, .out = out, .note = note};
    enum fault fault = each_paper(press, make_text, &pressing, note);

    if (!fault && text_failed(out))
        fault = no_memory(note);
    return fault;
}

/* ---- a trip ---- */

static void trip_text(struct text *out, const struct trip *trip)
{
    sheet_trip(out, trip);
    sheet_trip_cutting(out, trip);
}

/* What is cut together is drawn on pages of its own, as each build's papers draw its own. */
static void lay_trip(struct pressing *pressing)
{
    const struct trip *trip = pressing->trip;
    struct flow list = flow_of_pages(&pressing->pages, pressing->plan, "Trolley");
    struct flow cutting = flow_of_pages(&pressing->pages, pressing->plan, "Cutting together");
    struct text text;

    text_init(&text);
    sheet_trip(&text, trip);
    if (trip->cuts.count)
        text_add(&text, "\nWhat is cut together stands on pages of its own; what is not there each "
                        "build cuts by itself.\n");
    flow_words(&list, text_string(&text));
    if (text_failed(&text))
        pressing->fault = no_memory(pressing->note);
    text_release(&text);
    for (size_t i = 0; i < trip->cuts.count; i++) {
        const struct cut_sheet sheet = sheet_of_pool_job(pressing->plan, &trip->cuts.at[i].job);
        paper_put_layout(&cutting, &sheet);
    }
}

static struct paper_number trip_number(const struct trip *trip)
{
    uint64_t digest = DIGEST_START;

    for (size_t i = 0; i < trip->builds.count; i++)
        digest = digest_text(digest, paper_number(trip->builds.at[i].plan).at);
    return paper_number_of_digest(digest);
}

/* ---- pages ---- */

static void lay_pages(void *context)
{
    struct pressing *pressing = context;

    if (pressing->trip)
        lay_trip(pressing);
    else
        pressing->fault = each_paper(pressing->press, make_pages, pressing, pressing->note);
    if (!pressing->fault)
        pages_finish(&pressing->pages);
}

/* ---- the file ---- */

enum ending { ENDING_TEXT, ENDING_SVG, ENDING_PDF, ENDINGS };

/* ENDINGS: none of them. */
static enum ending ending_of(const char *path)
{
    static const char *const endings[ENDINGS] = {".txt", ".svg", ".pdf"};
    const char *dot = strrchr(path, '.');
    int i = 0;

    while (i < ENDINGS && !(dot && strcmp(dot, endings[i]) == 0))
        i++;
    return (enum ending)i;
}

static const struct page_format *format_of(const struct press *press, const struct plan *plan)
{
    if (press->format)
        return page_format_named(press->format);
    return page_format_named(model_units(plan->facts) == UNITS_INCH ? "letter" : "a4");
}

static enum fault fill_text(struct pressing *pressing)
{
    if (!pressing->trip)
        return press_text(pressing->press, pressing->plan, pressing->out, pressing->note);
    trip_text(pressing->out, pressing->trip);
    return FAULT_NONE;
}

/* What stands on every page but its title. The number lives as long as the pages are used. */
static void head_pages(struct pressing *pressing, struct arena *arena, struct paper_number *number)
{
    struct pages *pages = &pressing->pages;
    const struct trip *trip = pressing->trip;

    *number = trip ? trip_number(trip) : paper_number(pressing->plan);
    pages->arena = arena;
    pages->format = format_of(pressing->press, pressing->plan);
    pages->build = pressing->plan->facts->build.name;
    if (trip && trip->builds.count > 1)
        pages->build = pressing->together;
    pages->date = pressing->press->date;
    pages->number = number->at;
}

static enum fault fill_pages(struct pressing *pressing, enum ending ending, struct arena *arena,
                             struct pressed *ret_pressed)
{
    struct pages *pages = &pressing->pages;
    struct paper_number number;

    head_pages(pressing, arena, &number);
    if (!pages->format)
        return fault_say(pressing->note, FAULT_USAGE, "pages are \"a4\" or \"letter\"");
    if (!arena_try(arena, lay_pages, pressing))
        return no_memory(pressing->note);
    if (pressing->fault)
        return pressing->fault;
    ret_pressed->pages = pages->list.count;
    if (ending == ENDING_PDF)
        return page_pdf(pressing->out, pages, &ret_pressed->unknown_glyphs, pressing->note);
    page_svg(pressing->out, pages);
    return FAULT_NONE;
}

static enum fault make_file(struct pressing *pressing, struct pressed *ret_pressed)
{
    const struct press *press = pressing->press;
    struct fault_note *note = pressing->note;
    struct text out;
    struct arena arena;
    struct pressed pressed = {0};
    enum ending ending = ending_of(press->path);
    enum fault fault;

    if (ending == ENDINGS)
        return fault_say(note, FAULT_USAGE, "a file's name ends in .pdf, .svg or .txt");
    text_init(&out);
    pressing->out = &out;
    arena_init(&arena);
    fault = ending == ENDING_TEXT ? fill_text(pressing)
                                  : fill_pages(pressing, ending, &arena, &pressed);
    if (!fault && text_failed(&out))
        fault = no_memory(note);
    if (!fault)
        fault = deliver_file(press->path, text_string(&out), out.length, press->replace, note);
    if (!fault)
        *ret_pressed = pressed;
    arena_release(&arena);
    text_release(&out);
    return fault;
}

enum fault press_file(const struct press *press, const struct plan *plan,
                      struct pressed *ret_pressed, struct fault_note *note)
{
    struct pressing pressing = {.press = press, .plan = plan, .note = note};

    return make_file(&pressing, ret_pressed);
}

enum fault press_trip(const struct press *press, const struct trip *trip,
                      struct pressed *ret_pressed, struct fault_note *note)
{
    assert(trip->builds.count > 0);

    struct pressing pressing = {
        .press = press, .plan = trip->builds.at[0].plan, .trip = trip, .note = note};

    snprintf(pressing.together, sizeof pressing.together, "%zu builds", trip->builds.count);
    return make_file(&pressing, ret_pressed);
}
