/* A shopping trip for several builds: whose is what. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/print.h"
#include "paper/table.h"

void sheet_trip_words(struct text *out, const struct trip *trip, const struct trip_line *line)
{
    const struct trip_share *share = &line->shares.at[0];
    struct purchase whole = *share->purchase;
    whole.packs = line->packs;
    whole.length = line->length;
    sheet_purchase_words(out, trip->builds.at[share->build].plan, &whole);
}

void sheet_trip_shares(struct text *out, const struct trip *trip, const struct trip_line *line)
{
    for (size_t i = 0; i < line->shares.count; i++) {
        const struct trip_share *share = &line->shares.at[i];
        const struct trip_build *build = &trip->builds.at[share->build];
        text_add(out, i ? ", " : "");
        show_text(out, build->model->build.name);
        text_format(out, " %s",
                    print_money(build->plan, share->spend ? share->spend->amount : share->till).at);
    }
    if (line->saved)
        text_format(out, "; %lld %s fewer than apart", (long long)line->saved,
                    line->saved == 1 ? "pack" : "packs");
}

static void trip_row(struct table *table, const struct trip *trip, const struct trip_line *line)
{
    struct text text;
    text_init(&text);
    sheet_trip_words(&text, trip, line);
    table_cell(table, "[%c]", line->paid ? 'x' : ' ');
    table_cell(table, "%s", text_string(&text));
    table_cell(table, "%s",
               line->priced ? print_money(trip->builds.at[0].plan, line->till).at : "no price");
    text_clear(&text);
    sheet_trip_shares(&text, trip, line);
    table_cell(table, "%s", text_string(&text));
    text_release(&text);
}

void sheet_trip(struct text *out, const struct trip *trip)
{
    if (trip->lines.count == 0)
        return;
    text_add(out, "\nTROLLEY\n");
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        struct table table;
        table_begin(&table, "llrl");
        for (size_t i = 0; i < trip->lines.count; i++) {
            if (trip->lines.at[i].aisle == aisle)
                trip_row(&table, trip, &trip->lines.at[i]);
        }
        if (table.count)
            text_format(out, " %s\n", words_aisle.at[aisle].help);
        table_end(&table, out);
    }
    text_format(out, "  total with tax %s", print_money(trip->builds.at[0].plan, trip->till).at);
    text_format(out, "; paid so far %s\n", print_money(trip->builds.at[0].plan, trip->paid).at);
}
