/* What goes along with a piece: into the room, onto the shelf, inside it. */
#include "paper/sheets.h"

#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"

#include <string.h>

/* ---- the room ---- */

static void passage_rows(struct text *out, const struct plan *plan)
{
    static const char *const heads[] = {"way in", "", "wide", "high", "long"};
    struct table table;

    table_begin(&table, "llrrr");
    if (plan->facts->passages.count)
        table_heads(&table, heads);
    for (size_t i = 0; i < plan->facts->passages.count; i++) {
        const struct passage *passage = &plan->facts->passages.at[i];
        table_cell(&table, "%s", words_passage.at[passage->kind].name);
        table_cell(&table, "%s", passage->name);
        table_cell(&table, "%s", print_length(plan, passage->width).at);
        table_cell(&table, "%s", print_length(plan, passage->height).at);
        table_cell(&table, "%s", passage->length ? print_length(plan, passage->length).at : "");
    }
    table_end(&table, out);
}

static void load_rows(struct text *out, const struct plan *plan)
{
    static const char *const heads[] = {"carried", "wide", "deep", "high", "weighs", "people"};
    struct table table;

    table_begin(&table, "lrrrrr");
    table_heads(&table, heads);
    for (size_t i = 0; i < plan->loads.count; i++) {
        const struct load *load = &plan->loads.at[i];
        table_cell(&table, "%s%s", print_box(plan, load->box), print_hand(plan, load->box));
        table_cell(&table, "%s", print_length(plan, load->finished.x).at);
        table_cell(&table, "%s", print_length(plan, load->finished.y).at);
        table_cell(&table, "%s", print_length(plan, load->finished.z).at);
        table_cell(&table, "%s", print_quantity(plan, QUANTITY_MASS, load->mass).at);
        table_cell(&table, "%d", load->people);
    }
    table_end(&table, out);
}

/* Whether a need of a step in the room was one of an earlier step there, or of this one. */
static bool was_named(const struct plan *plan, size_t step, size_t need)
{
    const char *text = plan->steps.at[step].needs[need].text;

    for (size_t i = 0; i <= step; i++) {
        const struct step *earlier = &plan->steps.at[i];
        size_t most = i < step ? earlier->need_count : need;
        if (earlier->place != PLACE_SITE)
            continue;
        for (size_t k = 0; k < most; k++) {
            if (strcmp(earlier->needs[k].text, text) == 0)
                return true;
        }
    }
    return false;
}

static void bring_rows(struct text *out, const struct plan *plan)
{
    text_add(out, "  to bring: this sheet, the hole maps, pencil, level and shims, spare cloth and "
                  "staples\n");
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        for (size_t k = 0; step->place == PLACE_SITE && k < step->need_count; k++) {
            if (!was_named(plan, i, k))
                lines_add(out, "[ ]", 6, step->needs[k].text);
        }
    }
}

static void site_step_rows(struct text *out, const struct plan *plan)
{
    struct table table;

    table_begin(&table, "lrlrl");
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        if (step->place != PLACE_SITE)
            continue;
        table_cell(&table, "[%c]", step->ticked ? 'x' : ' ');
        table_cell(&table, "%zu", i + 1);
        table_cell(&table, "%s", step->title);
        table_cell(&table, "%s", print_minutes(step->minutes).at);
        table_cell(&table, "%s", step_people(step) > 1 ? "two people" : "");
    }
    table_end(&table, out);
}

void sheet_site(struct text *out, const struct plan *plan)
{
    text_add(out, "\nINTO THE ROOM\n");
    passage_rows(out, plan);
    load_rows(out, plan);
    bring_rows(out, plan);
    site_step_rows(out, plan);
    text_add(out, "  Before a wall is drilled: where do cables and pipes run? Never stand under a\n"
                  "  tilted box; two people above 23 kg (50 lb) or 1.8 m (72 in).\n");
}

/* ---- the shelf ---- */

void sheet_leftovers(struct text *out, const struct plan *plan)
{
    const struct model *facts = plan->facts;
    struct table table;

    table_begin(&table, "lrlll");
    for (size_t i = 0; i < facts->leftovers.count; i++) {
        const struct leftover *leftover = &facts->leftovers.at[i];

        if (leftover->count == 0)
            continue;
        table_cell(&table, "%s", plan_stock_name(plan, leftover->stock));
        table_cell(&table, "%lld of", (long long)leftover->count);
        if (leftover->width)
            table_cell(&table, "%s x %s", print_length(plan, leftover->length).at,
                       print_length_unit(plan, leftover->width).at);
        else
            table_cell(&table, "%s", print_length_unit(plan, leftover->length).at);
        table_cell(&table, "%s", leftover->place);
        table_cell(&table, *leftover->kept_for ? "kept for %s" : "%s", leftover->kept_for);
    }
    if (table.count)
        text_add(out, "\nLEFTOVERS ON THE SHELF\n");
    table_end(&table, out);
}

/* ---- inside the piece ---- */

/* Materials by name, in the order of the shopping list. */
static void label_materials(struct text *out, const struct plan *plan)
{
    struct text names;

    text_init(&names);
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (plan->purchases.at[i].stock)
            text_format(&names, "%s%s", names.length ? "; " : "",
                        plan_stock_name(plan, plan->purchases.at[i].stock));
    }
    if (names.length)
        lines_add(out, "made of", 12, text_string(&names));
    text_release(&names);
}

void sheet_label(struct text *out, const struct plan *plan)
{
    const struct build *build = &plan->facts->build;
    int64_t mass = 0;

    text_add(out, "\nLABEL, TO BE STAPLED INSIDE\n");
    lines_add(out, "piece", 12, build->name);
    label_materials(out, plan);
    for (size_t i = 0; i < plan->loads.count; i++)
        mass += plan->loads.at[i].mass;
    lines_add(out, "weighs", 12, print_quantity(plan, QUANTITY_MASS, mass).at);
    text_add(out, "  made on     ____________________   by ____________________\n"
                  "  cloth lot   ____________________   cleaned how ____________________\n"
                  "  With it, in an envelope under the dust cover: the hole maps.\n"
                  "  Foam burns fast: keep it from flame, heaters and bare lamps.\n"
                  "  A piece that is sold may need a label on fire behaviour and materials:\n"
                  "  check your local rule and ask a licensed person.\n");
}
