/*
 * A workshop in: merged into the one that is there, by name.
 */
#include "exchange/import.h"

#include <stdbool.h>
#include <string.h>

/* Whether money may have been entered: amounts are whole numbers of a coin, and would change their
 * worth with it. */
static bool is_in_use(const struct model *model)
{
    return model->workshop.next_key > 1 || model->build.key > 0 || model->build.next_key > 1;
}

static void check_currency(struct import *import, struct currency before)
{
    struct currency now = model_currency(&import->draft);
    const struct source_value *head = import->sheet.head;
    const struct source_value *value = reader_member(&import->source, head, "currency");

    if (!is_in_use(import->model) ||
        (strcmp(now.code, before.code) == 0 && now.digits == before.digits))
        return;
    complain(&import->complaints, value ? value : head, FAULT_REFUSED,
             "the file is in %s with %d digits, and the prices here are in %s with %d", now.code,
             now.digits, before.code, before.digits);
}

/* Lengths without a unit are in those of the file's workshop; for that the draft's build lends its
 * own meanwhile. */
static void fill_shop(struct import *import)
{
    struct currency before = model_currency(&import->draft);
    int64_t units = import->draft.build.units;

    import->draft.build.units = import_units(import);
    if (import->sheet.head) {
        reader_item(&import->reader, entity_of(ENTITY_workshop), import->sheet.head,
                    &import->draft.workshop);
        check_currency(import, before);
    }
    import_named(import, ENTITY_tool, true);
    import_named(import, ENTITY_set, true);
    import_named(import, ENTITY_supplier, true);
    import_named(import, ENTITY_stock, true);
    import_named(import, ENTITY_shop_value, true);
    import_named(import, ENTITY_pace, true);
    import_names(import);
    import_nameless(import, ENTITY_offer, true);
    import_nameless(import, ENTITY_past_price, false);
    import_nameless(import, ENTITY_flaw, false);
    import_nameless(import, ENTITY_leftover, false);
    import_nameless(import, ENTITY_shop_spend, false);
    import->draft.build.units = units;
}

enum fault exchange_shop_in(const char *bytes, size_t length, struct model *model,
                            model_fault_fn *tell, void *context)
{
    const struct import_file file = {bytes, length, EXCHANGE_WORKSHOP, fill_shop};

    return import_run(&file, model, tell, context);
}
