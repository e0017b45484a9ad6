/* Covers: their sizes and seams, how they are sewn, and one of them whole. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"

/* ---- sizes ---- */

/* "4 repeats, 108 in": what each drop takes of the roll. */
static void cover_repeats(struct table *table, const struct plan *plan, const struct cover *cover,
                          int64_t stock_key)
{
    const struct stock *stock = MODEL_FIND(plan->facts, stock, stock_key);
    if (cover->repeats == 0)
        table_cell(table, "%s", "");
    else
        table_cell(table, "%lld repeat%s, %s", (long long)cover->repeats,
                   cover->repeats == 1 ? "" : "s",
                   print_length_unit(plan, cover->repeats * stock->repeat_along).at);
}

/* Seams that have no like on the other side: "seam 13 in from the bottom", "seams 66, 13 in from
 * the bottom". `on` and `line` say what covers them. */
static void cover_alone(struct table *table, const struct plan *plan, const struct cover *cover,
                        const char *on, const char *line)
{
    struct text places;

    text_init(&places);
    for (int i = 0; i < cover->seams; i++)
        text_format(&places, "%s%s", i > 0 ? ", " : "",
                    i + 1 < cover->seams ? print_length(plan, cover->alone[i]).at
                                         : print_length_unit(plan, cover->alone[i]).at);
    table_cell(table, "%s %s from the %s%s%s", cover->seams > 1 ? "seams" : "seam",
               text_string(&places), cover->railroaded ? "bottom" : "left", on, line);
    text_release(&places);
}

/* "seams 26-1/2 each side of the middle, on a row of nails". */
static void cover_seams(struct table *table, const struct plan *plan, const struct cover *cover)
{
    const char *on = cover->hidden_by ? ", on " : "";
    const char *line = cover->hidden_by ? cover->hidden_by : "";
    if (cover->alone)
        cover_alone(table, plan, cover, on, line);
    else if (cover->seam)
        table_cell(table, "seams %s each side of the middle%s%s",
                   print_length(plan, cover->seam).at, on, line);
    else
        table_cell(table, "%s", "");
}

/* How it lies on the roll, where that is not along it. */
static const char *lie_words(const struct cover *cover)
{
    return cover->railroaded ? "railroaded" : cover->bias ? "bias" : "";
}

void sheet_cover_sizes(struct text *out, const struct plan *plan)
{
    struct table table;
    table_begin(&table, "llllll");
    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);
        table_cell(&table, "%s %s", print_box(plan, cover->box),
                   print_layer(plan, cover->layer).at);
        table_cell(&table, "%s x %s", print_length(plan, cover->cut_width).at,
                   print_length_unit(plan, cover->cut_height).at);
        table_count(&table, cover->width_count > 1 ? cover->width_count : 0, "widths");
        if (cover->trimmed)
            table_cell(&table, "trimmed along the outline, %s",
                       print_length_unit(plan, cover->trimmed).at);
        else
            cover_seams(&table, plan, cover);
        table_cell(&table, "%s", lie_words(cover));
        cover_repeats(&table, plan, cover, layer->stock);
    }
    table_end(&table, out);
}

/* ---- sewing ---- */

static void seam_marks(struct table *table, const struct plan *plan, const struct seam *seam)
{
    struct text marks;
    text_init(&marks);
    text_format(&marks, "%d %s", seam->notches, seam->notches == 1 ? "notch" : "notches");
    if (seam->even)
        text_add(&marks, ", even from the middle");
    if (seam->welt)
        text_add(&marks, ", welt");
    if (seam->clip)
        text_format(&marks, ", clip %s", print_length_unit(plan, seam->clip).at);
    if (seam->zip)
        text_format(&marks, ", zip %s", print_length_unit(plan, seam->zip).at);
    table_cell(table, "%s", text_string(&marks));
    text_release(&marks);
}

static void seam_row(struct table *table, const struct plan *plan, const struct seam *seam)
{
    table_cell(table, "%s", seam->what);
    table_cell(table, "%d of", seam->count);
    table_cell(table, "%s", print_length_unit(plan, seam->length).at);
    table_cell(table, "allowance %s", print_length_unit(plan, seam->allowance).at);
    seam_marks(table, plan, seam);
}

static int64_t thread_of_all(const struct plan *plan)
{
    int64_t thread = 0;
    for (size_t i = 0; i < plan->covers.count; i++)
        thread += plan->covers.at[i].thread;
    return thread;
}

void sheet_sewing(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->seams.count == 0)
        return;
    text_add(out, "\nSEWING (in this order; a test seam on scrap first)\n");
    table_begin(&table, "llrlll");
    for (size_t i = 0; i < plan->seams.count; i++) {
        const struct seam *seam = &plan->seams.at[i];
        table_cell(&table, "%s %s", print_box(plan, seam->box), print_layer(plan, seam->layer).at);
        seam_row(&table, plan, seam);
    }
    table_end(&table, out);
    text_format(out, "  thread %s\n", print_roll(plan, thread_of_all(plan)).at);
}

/* ---- one cover ---- */

bool sheet_cover_is_cloth(const struct plan *plan, const struct cover *cover)
{
    const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);
    const struct stock *stock = MODEL_FIND(plan->facts, stock, layer->stock);
    return stock && stock->kind == STOCK_CLOTH;
}

void sheet_cover_name(struct text *out, const struct plan *plan, const struct cover *cover)
{
    show_text(out, print_box(plan, cover->box));
    text_format(out, "%s %s", print_hand(plan, cover->box), print_layer(plan, cover->layer).at);
}

static void cover_findings(struct text *out, const struct plan *plan, const struct cover *cover)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];
        if (finding->entity != ENTITY_layer || finding->key != cover->layer)
            continue;
        struct text sentence;
        text_init(&sentence);
        plan_finding_text(plan, finding, &sentence);
        lines_add(out, plan_finding_word(finding), 8, text_string(&sentence));
        text_release(&sentence);
    }
}

static void cover_sewing(struct text *out, const struct plan *plan, const struct cover *cover)
{
    struct table table;
    table_begin(&table, "lrlll");
    for (size_t i = 0; i < plan->seams.count; i++)
        if (plan->seams.at[i].layer == cover->layer)
            seam_row(&table, plan, &plan->seams.at[i]);
    if (table.count > 0)
        text_add(out, "\n  Sewing, in this order; a test seam on scrap first\n");
    table_end(&table, out);
    if (cover->thread > 0)
        text_format(out, "  thread %s\n", print_roll(plan, cover->thread).at);
}

/* Its seams, how it lies on the roll, what it takes of the pattern: on one line. */
static void cover_lie(struct text *out, const struct plan *plan, const struct cover *cover,
                      const struct layer *layer)
{
    struct table table;
    table_begin(&table, "lll");
    cover_seams(&table, plan, cover);
    table_cell(&table, "%s", lie_words(cover));
    cover_repeats(&table, plan, cover, layer->stock);
    table_end(&table, out);
}

void sheet_cover(struct text *out, const struct plan *plan, const struct cover *cover)
{
    const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);
    text_add(out, "  ");
    sheet_cover_name(out, plan, cover);
    text_add(out, " of ");
    show_text(out, plan_stock_name(plan, layer->stock));
    text_format(out, ", %s x %s as cut\n", print_length(plan, cover->cut_width).at,
                print_length_unit(plan, cover->cut_height).at);
    if (cover->seams || cover->railroaded || cover->bias || cover->repeats)
        cover_lie(out, plan, cover, layer);
    if (cover->thin) {
        text_format(out, "  below it %s of ", print_length_unit(plan, cover->thin).at);
        show_text(out, plan_stock_name(plan, layer->thin));
        text_add(out, ", as cut\n");
    }
    cover_findings(out, plan, cover);
    cover_sewing(out, plan, cover);
    sheet_layer_cutting(out, plan, cover->layer);
}
