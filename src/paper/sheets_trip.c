/* A shopping trip for several builds: whose is what. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"

#include <string.h>

/* "10 of 96, 2 of 120" of what is cut together. */
static void cut_words(struct text *out, const struct trip *trip, const struct trip_line *line)
{
    const struct trip_share *share = &line->shares.at[0];
    const struct plan *plan = trip->builds.at[share->build].plan;
    char name[SHEET_PURCHASE_NAME];
    struct text size;
    text_init(&size);
    for (size_t i = 0; i < line->cut->sizes.count; i++) {
        struct purchase one = *share->purchase;
        one.offer = line->cut->sizes.at[i].offer;
        one.packs = line->cut->sizes.at[i].packs;
        one.length = line->length;
        text_add(&size, i ? ", " : "");
        sheet_purchase_size(&size, plan, &one);
    }
    if (line->cut->sizes.count == 0)
        text_add(&size, "all from the shelf");
    text_format(out, "%s, %.60s",
                show_into(name, sizeof name, sheet_purchase_name(plan, share->purchase)),
                text_string(&size));
    text_release(&size);
}

void sheet_trip_words(struct text *out, const struct trip *trip, const struct trip_line *line)
{
    const struct trip_share *share = &line->shares.at[0];
    struct purchase whole = *share->purchase;
    if (line->cut) {
        cut_words(out, trip, line);
        return;
    }
    whole.packs = line->packs;
    whole.length = line->length;
    sheet_purchase_words(out, trip->builds.at[share->build].plan, &whole);
}

struct printed sheet_trip_bought(const struct trip *trip, const struct trip_line *line)
{
    bool by_length = line->length > 0;

    return sheet_bought(trip->builds.at[line->shares.at[0].build].plan, by_length, line->bought,
                        by_length ? line->length : line->packs);
}

static bool has_share(const struct trip_line *line, size_t build)
{
    for (size_t i = 0; i < line->shares.count; i++) {
        if (line->shares.at[i].build == build)
            return true;
    }
    return false;
}

void sheet_trip_shares(struct text *out, const struct trip *trip, const struct trip_line *line)
{
    const char *between = "";
    for (size_t i = 0; i < trip->builds.count; i++) {
        const struct trip_build *build = &trip->builds.at[i];
        int64_t till;
        int64_t amount;
        if (!has_share(line, i))
            continue;
        trip_line_of(line, i, &till, &amount);
        text_add(out, between);
        show_text(out, build->model->build.name);
        text_format(out, " %s", print_money(build->plan, line->paid ? amount : till).at);
        between = ", ";
    }
    if (line->saved)
        text_format(out, "; %lld %s fewer than apart", (long long)line->saved,
                    line->saved == 1 ? "pack" : "packs");
    if (line->cut)
        text_format(
            out, "; cut together %s less than apart",
            print_money(trip->builds.at[0].plan, line->cut->apart - line->cut->together).at);
}

static void trip_row(struct table *table, const struct trip *trip, const struct trip_line *line)
{
    struct text text;
    text_init(&text);
    sheet_trip_words(&text, trip, line);
    table_cell(table, "[%c]", line->paid ? 'x' : line->amount ? '-' : ' ');
    table_cell(table, "%s", text_string(&text));
    table_cell(table, "%s",
               line->priced ? print_money(trip->builds.at[0].plan, line->till).at : "no price");
    table_cell(table, "%s", sheet_trip_bought(trip, line).at);
    text_release(&text);
}

/* The next row of a table, and under it whose the line is. */
static const char *row_with_shares(struct text *out, const struct trip *trip,
                                   const struct trip_line *line, const char *row)
{
    size_t length = strcspn(row, "\n");
    struct text shares;
    text_init(&shares);
    text_add_bytes(out, row, length);
    text_add_char(out, '\n');
    if (trip->builds.count > 1)
        sheet_trip_shares(&shares, trip, line);
    if (shares.length)
        lines_add(out, "", 8, text_string(&shares));
    text_release(&shares);
    return row + length + (row[length] == '\n');
}

static void trip_aisle(struct text *out, const struct trip *trip, int aisle)
{
    struct table table;
    struct text rows;
    text_init(&rows);
    table_begin(&table, "llrl");
    for (size_t i = 0; i < trip->lines.count; i++) {
        if (trip->lines.at[i].aisle == aisle)
            trip_row(&table, trip, &trip->lines.at[i]);
    }
    if (table.count)
        text_format(out, " %s\n", words_aisle.at[aisle].help);
    table_end(&table, &rows);
    const char *row = text_string(&rows);
    for (size_t i = 0; i < trip->lines.count; i++) {
        if (trip->lines.at[i].aisle == aisle)
            row = row_with_shares(out, trip, &trip->lines.at[i], row);
    }
    text_release(&rows);
}

/* What each build would pay by itself beside the whole; nothing for one build. */
static void trip_saving(struct text *out, const struct trip *trip)
{
    const struct plan *plan = trip->builds.at[0].plan;
    if (trip->builds.count < 2)
        return;
    text_format(out, "  apart they would come to %s: ", print_money(plan, trip->apart).at);
    if (trip->apart > trip->till)
        text_format(out, "%s less together\n", print_money(plan, trip->apart - trip->till).at);
    else
        text_add(out, "no less together\n");
}

static void trip_total(struct text *out, const struct trip *trip)
{
    const struct plan *plan = trip->builds.at[0].plan;
    struct table table;
    table_begin(&table, "lr");
    for (size_t i = 0; i < trip->builds.count && trip->builds.count > 1; i++) {
        table_cell(&table, "%s", trip->builds.at[i].model->build.name);
        table_cell(&table, "%s", print_money(plan, trip->builds.at[i].till).at);
    }
    table_cell(&table, "%s", "total with tax");
    table_cell(&table, "%s", print_money(plan, trip->till).at);
    table_cell(&table, "%s", "paid line by line");
    table_cell(&table, "%s", print_money(plan, trip->paid).at);
    table_end(&table, out);
    trip_saving(out, trip);
}

void sheet_trip(struct text *out, const struct trip *trip)
{
    if (trip->lines.count == 0)
        return;
    text_add(out, "\nTROLLEY\n");
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++)
        trip_aisle(out, trip, aisle);
    trip_total(out, trip);
}

/* ---- cutting ---- */

static const char *cut_label(const struct cut_sheet *sheet, size_t part)
{
    const struct pool_job *job = sheet->source;
    return job->labels.at[part];
}

struct cut_sheet sheet_of_pool_job(const struct plan *plan, const struct pool_job *job)
{
    return (struct cut_sheet){.plan = plan,
                              .stock = job->stock,
                              .way = job->way,
                              .job = &job->job,
                              .layout = &job->layout,
                              .taken = job->taken,
                              .again = job->again,
                              .beside_bought = job->beside_bought,
                              .sources = job->sources,
                              .label = cut_label,
                              .source = job};
}

void sheet_trip_cutting(struct text *out, const struct trip *trip)
{
    if (trip->stale > 0) {
        text_add(out, "\n");
        lines_add(out, "", 2,
                  "A layout that was taken together does not hold: parts or prices changed since,"
                  " or not all of its builds are here. Look at the new one, and take it.");
    }
    if (trip->cuts.count == 0)
        return;
    text_add(out, "\nCUTTING TOGETHER (what is not here each build cuts by itself)\n");
    for (size_t i = 0; i < trip->cuts.count; i++) {
        const struct cut_sheet sheet =
            sheet_of_pool_job(trip->builds.at[0].plan, &trip->cuts.at[i].job);
        sheet_layout(out, &sheet);
    }
}
