#include "paper/blank.h"

#include "base/show.h"
#include "desk/trip.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "plan/homeward.h"

#include <string.h>

const struct cut_source *blank_source(const struct cut_sheet *sheet, const struct cut_blank *blank)
{
    return &sheet->sources[blank->size];
}

int64_t blank_length(const struct cut_sheet *sheet, const struct cut_blank *blank)
{
    int64_t length = blank_source(sheet, blank)->length;

    return length > 0 ? length : blank->used;
}

int64_t blank_along(const struct cut_sheet *sheet, const struct cut_blank *blank,
                    const struct cut_place *place)
{
    return place->along - blank_source(sheet, blank)->ahead;
}

void blank_place_size(const struct cut_sheet *sheet, const struct cut_place *place,
                      int64_t *ret_length, int64_t *ret_width)
{
    const struct cut_piece *part = &sheet->job->parts[place->part];

    *ret_length = place->turned ? part->width : part->length;
    *ret_width = place->turned ? part->length : part->width;
}

bool blank_names_part(const struct cut_sheet *sheet, size_t part)
{
    size_t piece;

    if (sheet->layer == 0)
        return true;
    piece = sheet->parts[part].piece;
    return piece != PLAN_NONE && sheet->plan->pieces.at[piece].layer == sheet->layer;
}

const char *blank_hand(const struct cut_sheet *sheet, size_t part)
{
    return sheet->parts ? print_hand(sheet->plan, sheet->parts[part].box) : "";
}

/* ---- in words ---- */

/* Which way the pile runs: down uprights and to the front on seats, so from the top of every piece,
 * and all tops lie to the left. */
static void pile_arrow(struct text *out, const struct cut_sheet *sheet)
{
    const struct stock *stock = MODEL_FIND(sheet->plan->facts, stock, sheet->stock);

    if (sheet->way == CUT_ROLLS && stock && stock->pile)
        text_add(out,
                 "    pile -----> down every piece: all tops lie to the left, none is turned;\n"
                 "    draw the arrow on the back of each before it is cut off\n");
}

/* The marks of a stick, from its squared end, behind the label of each part. */
static void stick_marks(struct text *out, const struct cut_sheet *sheet,
                        const struct cut_blank *blank)
{
    struct text line;

    text_init(&line);
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        int64_t length = sheet->job->parts[place->part].length;

        text_format(&line, "%s%s%s %s, mark %s", i > blank->first ? "; " : "",
                    sheet->label(sheet, place->part), blank_hand(sheet, place->part),
                    print_length(sheet->plan, length).at,
                    print_length(sheet->plan, blank_along(sheet, blank, place) + length).at);
    }
    if (blank->rest > 0)
        text_format(&line, "; left %s", print_length(sheet->plan, blank->rest).at);
    lines_add(out, "", 4, text_string(&line));
    text_release(&line);
}

/* "side strip": what a piece of cloth is, and so what it is sewn to. */
static const char *name_of(const struct cut_sheet *sheet, size_t part)
{
    size_t piece = sheet->parts ? sheet->parts[part].piece : PLAN_NONE;

    return piece == PLAN_NONE ? "" : sheet->plan->pieces.at[piece].name;
}

static void area_parts(struct text *out, const struct cut_sheet *sheet,
                       const struct cut_blank *blank)
{
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        const struct cut_piece *part = &sheet->job->parts[place->part];

        if (!blank_names_part(sheet, place->part))
            continue;
        text_add(out, "    ");
        show_text(out, sheet->label(sheet, place->part));
        text_add(out, blank_hand(sheet, place->part));
        text_format(out, "%s%s", *name_of(sheet, place->part) ? "  " : "",
                    print_word(name_of(sheet, place->part)).at);
        text_format(
            out, "  %s x %s at %s along, %s across%s\n", print_length(sheet->plan, part->length).at,
            print_length(sheet->plan, part->width).at, print_length(sheet->plan, place->along).at,
            print_length(sheet->plan, place->across).at, place->turned ? ", turned" : "");
    }
}

bool blank_cut_for_home(const struct cut_sheet *sheet, size_t blank, struct homeward *ret_home,
                        char words[HOMEWARD_TEXT])
{
    const struct model *facts = sheet->plan->facts;
    const struct stock *stock = MODEL_FIND(facts, stock, sheet->stock);

    if (!stock || stock->kind != STOCK_SHEET ||
        !homeward_first_cut(facts, sheet->job, sheet->layout, blank, stock->thickness, ret_home))
        return false;
    homeward_words(words, facts, ret_home);
    return true;
}

void blank_way_home(struct text *out, const struct cut_sheet *sheet, size_t blank)
{
    struct homeward home;
    char words[HOMEWARD_TEXT];

    if (!blank_cut_for_home(sheet, blank, &home, words))
        return;
    text_add(out, "    does not go whole into ");
    show_text(out, *home.vehicle->name ? home.vehicle->name : "the vehicle");
    text_format(out, ": %s\n", words);
}

/* The cuts of one sheet in the order of the saw. */
static void saw_cuts(struct text *out, const struct cut_sheet *sheet, size_t blank)
{
    int number = 0;

    blank_way_home(out, sheet, blank);
    for (size_t i = 0; i < sheet->layout->strokes.count; i++) {
        const struct cut_stroke *stroke = &sheet->layout->strokes.at[i];

        if (stroke->blank != blank)
            continue;
        text_format(out, "    cut %d: %s at %s, fence %s\n", ++number,
                    stroke->across ? "across" : "along", print_length(sheet->plan, stroke->at).at,
                    print_length(sheet->plan, stroke->fence).at);
    }
}

/* What is cut already is in the house, whoever bought it. */
static void put_origin(struct text *out, const struct cut_sheet *sheet,
                       const struct cut_blank *blank)
{
    const struct cut_source *source = blank_source(sheet, blank);

    switch (source->origin) {
    case SIZE_BOUGHT:
        text_add(out, sheet->cut ? "" : ", bought already");
        break;
    case SIZE_SHELF:
        text_add(out, ", from the shelf");
        break;
    case SIZE_REST:
        text_add(out, ", left of the first cuts");
        break;
    case SIZE_PART:
        text_add(out, ", cut as ");
        show_text(out, source->part);
        text_add(out, " before");
        break;
    case SIZE_TO_BUY:
        break;
    }
}

void blank_heading(struct text *out, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];
    const struct cut_size *size = &sheet->job->sizes[blank->size];

    text_format(out, "\n  %zu  %s", index + 1,
                print_length_unit(sheet->plan, blank_length(sheet, blank)).at);
    if (size->width > 0)
        text_format(out, " x %s", print_length_unit(sheet->plan, size->width).at);
    put_origin(out, sheet, blank);
    text_add(out, "\n");
}

void blank_words(struct text *out, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];

    if (sheet->way == CUT_BARS) {
        stick_marks(out, sheet, blank);
        return;
    }
    pile_arrow(out, sheet);
    area_parts(out, sheet, blank);
    saw_cuts(out, sheet, index);
}

/* ---- a job ---- */

/* What a layout costs: money; of a roll length. */
static struct printed print_cost(const struct cut_sheet *sheet, int64_t cost)
{
    return sheet->way == CUT_ROLLS ? print_length_unit(sheet->plan, cost)
                                   : print_money(sheet->plan, cost);
}

/* Of packs the price of a layout is that of the pieces it cuts: the list has whole packs. */
static bool is_cut_from_packs(const struct cut_sheet *sheet)
{
    for (size_t i = 0; i < sheet->layout->blanks.count; i++)
        if (blank_source(sheet, &sheet->layout->blanks.at[i])->pack > 1)
            return true;
    return false;
}

static void put_cost(struct text *out, const struct cut_sheet *sheet)
{
    text_format(out, ", %s", print_cost(sheet, sheet->layout->cost).at);
    if (is_cut_from_packs(sheet))
        text_add(out, " by the piece");
    if (sheet->way == CUT_ROLLS && sheet->layout->cost > 0)
        text_add(out, " sold");
    if (sheet->beside_bought)
        text_add(out, " beside what was bought");
    if (sheet->cut)
        text_add(out, ", as it was cut");
    else if (sheet->taken)
        text_add(out, ", as it was taken");
    else if (layout_proven(sheet->layout))
        text_add(out, ", proven the least");
    else
        text_format(out, ", at least %s", print_cost(sheet, sheet->layout->bound).at);
}

/* What was bought to be cut together with other builds is laid out for all of them elsewhere. */
static void tell_together(struct text *out, const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->facts->spends.count; i++) {
        const struct spend *spend = &plan->facts->spends.at[i];
        struct text words;

        if (spend->stock != stock ||
            strncmp(spend->note, TRIP_TOGETHER, sizeof TRIP_TOGETHER - 1) != 0)
            continue;
        text_init(&words);
        text_format(&words,
                    "Bought to be %s: the layout of that trip holds, this one is for the build by"
                    " itself.",
                    spend->note);
        lines_add(out, "", 2, text_string(&words));
        text_release(&words);
        return;
    }
}

/* Sticks and sheets that are whole, beside what others left. */
static size_t whole_blanks(const struct cut_sheet *sheet)
{
    size_t count = 0;

    for (size_t i = 0; i < sheet->layout->blanks.count; i++) {
        enum size_origin origin = blank_source(sheet, &sheet->layout->blanks.at[i])->origin;

        count += origin != SIZE_REST && origin != SIZE_PART;
    }
    return count;
}

static void put_count(struct text *out, const struct cut_sheet *sheet)
{
    static const char *const blanks[] = {
        [CUT_BARS] = "stick", [CUT_SHEETS] = "sheet", [CUT_ROLLS] = "length"};
    size_t whole = whole_blanks(sheet);
    size_t rests = sheet->layout->blanks.count - whole;

    if (whole > 0 || rests == 0)
        text_format(out, "%zu %s%s", whole, blanks[sheet->way], whole == 1 ? "" : "s");
    if (rests > 0)
        text_format(out, "%s%zu %s", whole > 0 ? " and " : "", rests,
                    rests == 1 ? "piece of others" : "pieces of others");
}

void blank_job_heading(struct text *out, const struct cut_sheet *sheet, bool priced)
{
    text_add(out, "\n");
    show_text(out, plan_stock_name(sheet->plan, sheet->stock));
    text_add(out, sheet->again ? ", what is missing: " : ": ");
    put_count(out, sheet);
    if (priced || sheet->way == CUT_ROLLS)
        put_cost(out, sheet);
    text_add(out, "\n");
    if (!sheet->source)
        tell_together(out, sheet->plan, sheet->stock);
}
