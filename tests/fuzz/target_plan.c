/*
 * The plan of an arbitrary model: a worked example whose fields are changed, each by six bytes of
 * the input (kind, item, field, and a value of three), mended where it is no model any more. It is
 * planned without a fault, and every part of the plan refers to what is there.
 */
#include "target.h"

#include "exchange/exchange.h"
#include "plan/plan.h"

#include <setjmp.h>

static char *example;
static size_t example_size;

static void read_example(void)
{
    FILE *file = fopen(FUZZ_EXAMPLE, "rb");
    size_t room = 1 << 20;

    HOLDS(file);
    example = malloc(room);
    HOLDS(example);
    example_size = fread(example, 1, room, file);
    fclose(file);
}

/* From nothing to twice what the field may be, most often within its range. */
static int64_t value_of(const struct field *field, const uint8_t *bytes)
{
    int64_t span = field->most - field->least;
    int64_t share = (int64_t)bytes[0] << 8 | bytes[1];

    if (bytes[2] < 16)
        return share;
    if (bytes[2] < 32)
        return field->standard;
    return field->least + span / 65536 * share / (1 + bytes[2] % 64);
}

static void change(struct model *model, const uint8_t *bytes)
{
    enum entity_kind kind = (enum entity_kind)(bytes[0] % ENTITY_COUNT);
    const struct entity *entity = entity_of(kind);
    const struct field *field = &entity->fields[bytes[2] % entity->field_count];
    size_t count = model_count(model, kind);

    if (count > 0 && !field_is_text(field))
        field_set_whole(field, model_at(model, kind, bytes[1] % count), value_of(field, bytes + 3));
}

static void plan_changed(struct arena *arena, const uint8_t *data, size_t size)
{
    struct model model;
    const struct plan *plan = NULL;

    model_init(&model, arena);
    HOLDS(exchange_build_in(example, example_size, &model, NULL, NULL) == FAULT_NONE);
    model.build.key = 1;
    for (size_t i = 0; i + 5 < size && i < 6 * 40; i += 6)
        change(&model, data + i);
    model_mend(&model);
    HOLDS(model_check(&model, NULL, NULL) == 0);
    HOLDS(plan_make_draft(&model, NULL, arena, &plan) == FAULT_NONE);
    for (size_t i = 0; i < plan->steps.count; i++)
        HOLDS(plan_step(plan, plan->steps.at[i].name) == &plan->steps.at[i]);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct arena arena;
    jmp_buf escape;

    if (!example)
        read_example();
    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape) == 0)
        plan_changed(&arena, data, size);
    arena_release(&arena);
    return 0;
}
