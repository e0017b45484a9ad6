/* How thick the padding lies, what of the room it leaves, and what sizes it makes. */
#include "paper/sheets.h"

#include "paper/print.h"
#include "paper/table.h"

/* "foam 2, batting 2-1/4": how thick a face is after each layer that pads it. */
static void built_up(struct table *table, const struct plan *plan, const struct padding *padding)
{
    struct text layers;
    text_init(&layers);
    for (size_t i = 0; i < plan->coatings.count; i++) {
        const struct coating *coating = &plan->coatings.at[i];
        if (coating->box != padding->box || coating->side != padding->side ||
            coating->thickness == 0)
            continue;
        text_format(&layers, "%s%s %s", layers.length ? ", " : "",
                    print_layer(plan, coating->layer).at, print_length(plan, coating->after).at);
    }
    table_cell(table, "%s", text_string(&layers));
    text_release(&layers);
}

static void clear_between(struct text *out, const struct plan *plan)
{
    char name[MODEL_NAME_TEXT];
    for (size_t i = 0; i < plan->clearances.count; i++) {
        const struct clearance *clearance = &plan->clearances.at[i];
        text_format(out, "\n  %s between the padding for %s, which wants %s\n",
                    print_length_unit(plan, clearance->clear).at,
                    model_item_name(name, plan->facts, ENTITY_object, clearance->object),
                    print_length_unit(plan, clearance->wanted).at);
    }
}

/* "C front  2-1/4 in thick  left 2, right 2, top 2-1/4, bottom 0". */
static void padded_faces(struct text *out, const struct plan *plan)
{
    struct table table;
    table_begin(&table, "llrrrrl");
    for (size_t i = 0; i < plan->paddings.count; i++) {
        const struct padding *padding = &plan->paddings.at[i];
        if (padding->pad == 0)
            continue;
        table_cell(&table, "%s %s", print_box(plan, padding->box),
                   words_side.at[padding->side].name);
        table_cell(&table, "%s thick", print_length_unit(plan, padding->pad).at);
        for (int edge = 0; edge < EDGE_COUNT; edge++)
            table_cell(&table, "%s %s", words_edge.at[edge].name,
                       print_length(plan, padding->at[edge]).at);
        built_up(&table, plan, padding);
    }
    table_end(&table, out);
}

static void finished_sizes(struct text *out, const struct plan *plan)
{
    struct table table;
    text_add(out, "\n  Finished sizes\n");
    table_begin(&table, "ll");
    for (size_t i = 0; i < plan->loads.count; i++) {
        const struct load *load = &plan->loads.at[i];
        table_cell(&table, "%s", print_box(plan, load->box));
        table_cell(&table, "%s x %s x %s", print_length(plan, load->finished.x).at,
                   print_length(plan, load->finished.y).at,
                   print_length_unit(plan, load->finished.z).at);
    }
    table_end(&table, out);
}

void sheet_padding(struct text *out, const struct plan *plan)
{
    if (plan->loads.count == 0)
        return;
    text_add(out, "\nPADDING (batting as pulled; at each edge of the face; after each layer)\n");
    padded_faces(out, plan);
    finished_sizes(out, plan);
    clear_between(out, plan);
}
