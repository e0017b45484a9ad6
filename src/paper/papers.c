#include "paper/papers.h"

#include "base/digest.h"
#include "paper/blank.h"
#include "paper/chart.h"
#include "paper/sheets.h"

#include <stdio.h>
#include <string.h>

typedef void sheet_fn(struct text *out, const struct plan *plan);

static void put(struct flow *flow, sheet_fn *sheet)
{
    struct text words;

    text_init(&words);
    sheet(&words, flow->plan);
    flow_words(flow, text_string(&words));
    text_release(&words);
}

/* ---- papers of words alone ---- */

static void make_shopping(struct flow *flow)
{
    put(flow, flow->priced ? sheet_buying : sheet_needs);
}

/* Each box with its panels and layers lifted off, and the words on all of them. */
static void make_boxes(struct flow *flow)
{
    const struct model *facts = flow->plan->facts;

    for (size_t i = 0; flow->pages && i < facts->boxes.count; i++) {
        const struct box *box = &facts->boxes.at[i];
        const struct piece_ask ask = {.box = box->key, .apart = true};
        chart_piece(flow, &ask, box->name);
    }
    put(flow, sheet_boxes);
    put(flow, sheet_screws);
    put(flow, sheet_joins);
}

static void make_sewing(struct flow *flow)
{
    put(flow, sheet_sewing);
}

static void make_staples(struct flow *flow)
{
    put(flow, sheet_staples);
}

static void make_steps(struct flow *flow)
{
    put(flow, sheet_steps);
    for (size_t i = 0; i < flow->plan->steps.count; i++) {
        struct text words;

        text_init(&words);
        text_add_char(&words, '\n');
        sheet_step(&words, flow->plan, &flow->plan->steps.at[i]);
        flow_words(flow, text_string(&words));
        text_release(&words);
    }
}

static void make_site(struct flow *flow)
{
    put(flow, sheet_site);
}

static void make_money(struct flow *flow)
{
    put(flow, sheet_money);
}

static void make_leftovers(struct flow *flow)
{
    put(flow, sheet_leftovers);
}

static void make_label(struct flow *flow)
{
    put(flow, sheet_label);
    put(flow, sheet_cautions);
}

/* ---- cutting ---- */

static void put_blank(struct flow *flow, const struct cut_sheet *sheet, size_t blank)
{
    struct text words;

    text_init(&words);
    if (flow->text) {
        sheet_blank(&words, sheet, blank);
    } else {
        blank_heading(&words, sheet, blank);
        flow_heading(flow, text_string(&words));
        text_clear(&words);
        chart_blank(flow, sheet, blank);
        blank_words(&words, sheet, blank);
    }
    flow_words(flow, text_string(&words));
    text_release(&words);
}

void paper_put_layout(struct flow *flow, const struct cut_sheet *sheet)
{
    struct text words;

    text_init(&words);
    blank_job_heading(&words, sheet, flow->priced);
    for (size_t blank = 0; blank < sheet->layout->blanks.count; blank++) {
        if (sheet->way == CUT_SHEETS || blank == 0) {
            flow_break(flow);
            flow_heading(flow, text_string(&words));
        }
        put_blank(flow, sheet, blank);
    }
    text_release(&words);
}

static void put_jobs(struct flow *flow, enum cut_way way)
{
    for (size_t i = 0; i < flow->plan->jobs.count; i++) {
        const struct cut_sheet sheet = sheet_of_job(flow->plan, &flow->plan->jobs.at[i]);

        if (sheet.way == way)
            paper_put_layout(flow, &sheet);
    }
}

static void make_sticks(struct flow *flow)
{
    put_jobs(flow, CUT_BARS);
}

static void make_saw(struct flow *flow)
{
    put_jobs(flow, CUT_SHEETS);
}

static void make_cloth(struct flow *flow)
{
    put(flow, sheet_padding);
    put(flow, sheet_cloth);
    put_jobs(flow, CUT_ROLLS);
}

/* ---- holes ---- */

/* Calls for each face of a join that holes are drilled in: that of its box, and that of the other
 * one. */
static void each_end(struct flow *flow, const struct junction *junction,
                     void (*draw)(struct flow *, const struct junction *, const struct join_end *))
{
    for (int of_b = 0; of_b <= 1; of_b++) {
        struct join_end end;

        if (junction->point_count > 0 && hole_end(flow->plan, junction, of_b, &end))
            draw(flow, junction, &end);
    }
}

static void make_holes(struct flow *flow)
{
    for (size_t i = 0; i < flow->plan->junctions.count; i++) {
        const struct junction *junction = &flow->plan->junctions.at[i];
        struct text words;

        text_init(&words);
        sheet_join_map(&words, flow->plan, junction);
        flow_break(flow);
        flow_words(flow, text_string(&words));
        text_release(&words);
        if (flow->pages)
            each_end(flow, junction, chart_end);
    }
}

/* Full size is a thing of pages: as text the maps tell as much. */
static void make_template(struct flow *flow)
{
    for (size_t i = 0; flow->pages && i < flow->plan->junctions.count; i++)
        each_end(flow, &flow->plan->junctions.at[i], chart_template);
}

/* ---- all of them ---- */

static void make_heading(struct flow *flow)
{
    const struct piece_ask whole = {.apart = false}, apart = {.apart = true};

    put(flow, sheet_heading);
    if (flow->pages) {
        chart_piece(flow, &whole, "The piece");
        chart_piece(flow, &apart, "Its boxes");
    }
    put(flow, sheet_findings);
}

const struct paper papers[] = {
    {"front", "The plan", "name, tally and findings", make_heading, true},
    {"shopping", "Shopping list", "by aisle, with packs and money", make_shopping, true},
    {"saw", "Saw sheet", "each sheet with its cuts in order", make_saw, true},
    {"sticks", "Stick sheet", "each stick with its marks", make_sticks, true},
    {"boxes", "Box sheet", "members, panels and screws of each box", make_boxes, false},
    {"holes", "Hole map", "each join's holes from two named edges", make_holes, false},
    {"template", "Drilling template", "holes at full size, on pages only", make_template, false},
    {"cloth", "Cloth layout", "padding, and each length of roll", make_cloth, true},
    {"sewing", "Sewing card", "seams in the order of sewing", make_sewing, false},
    {"staples", "Staple sheet", "edges, spacing and open runs", make_staples, false},
    {"steps", "Step cards", "the order of work and each step whole", make_steps, false},
    {"site", "Site sheet", "the way in, what is carried and brought", make_site, false},
    {"money", "Money", "estimate beside spend", make_money, true},
    {"leftovers", "Leftovers", "what lies on the shelf", make_leftovers, false},
    {"label", "Label", "for the inside of the piece, and the cautions", make_label, false},
    {NULL, NULL, NULL, NULL, false},
};

const struct paper *paper_named(const char *name, size_t length)
{
    for (const struct paper *paper = papers; paper->name; paper++) {
        if (strlen(paper->name) == length && memcmp(paper->name, name, length) == 0)
            return paper;
    }
    return NULL;
}

void paper_as_text(struct text *out, const struct plan *plan, const struct paper *paper,
                   bool priced)
{
    struct flow flow = flow_of_text(out, plan);

    flow.priced = priced;
    paper->make(&flow);
}

void paper_on_pages(struct pages *pages, const struct plan *plan, const struct paper *paper,
                    bool priced)
{
    struct flow flow = flow_of_pages(pages, plan, paper->title);

    flow.priced = priced;
    paper->make(&flow);
}

struct paper_number paper_number_of_digest(uint64_t digest)
{
    struct paper_number number;

    snprintf(number.at, sizeof number.at, "%08x", (unsigned)(digest ^ digest >> 32));
    return number;
}

struct paper_number paper_number(const struct plan *plan)
{
    uint64_t digest = DIGEST_START;

    for (size_t i = 0; i < plan->steps.count; i++) {
        digest = digest_text(digest, plan->steps.at[i].name);
        digest = digest_whole(digest, (int64_t)plan->steps.at[i].content);
    }
    return paper_number_of_digest(digest);
}
