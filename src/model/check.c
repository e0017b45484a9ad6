/*
 * The invariants of model/model.h, as code.
 *
 * Uniqueness over several lists is settled by sorting small records of all of them once; when there
 * is no memory for the records the check goes on by comparing each with each, which is only slower.
 */
#include "model/model.h"
#include "model/range.h"
#include "model/trade.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

struct check {
    const struct model *model;
    model_fault_fn *tell;
    void *context;
    size_t count;
};

/* Passes on a note about a field ("boxes[2].width"), or about the item where `field` is NULL. */
static void report(struct check *check, struct fault_note *note, const struct entity *entity,
                   size_t index, const char *field)
{
    const char *point = field ? "." : "";

    check->count++;
    if (!check->tell)
        return;
    field = field ? field : "";
    if (entity->kind > ENTITY_COUNT)
        fault_at(note, "%s%s%s", entity->plural, point, field);
    else
        fault_at(note, "%s[%zu]%s%s", entity->plural, index, point, field);
    check->tell(check->context, note);
}
