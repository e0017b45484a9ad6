/*
 * The plan of an arbitrary model: a worked example whose fields are changed, each by six bytes of
 * the input (kind, item, field, and a value of three), mended where it is no model any more. It is
 * planned without a fault, and every part of the plan refers to what is there.
 *
 * Three quarters of a plan's time go into quick layouts, most often of jobs that were laid out for
 * an input before. So layouts are kept by the digest of their job, as the desk keeps them: a job is
 * searched once, and the plan is the same.
 */
#include "target.h"

#include "exchange/exchange.h"
#include "plan/plan.h"

#include <setjmp.h>

#define CHANGES_MOST 40
#define NEW_ITEM 0xf0 /* from here on the item is a new one, as it is where there is none */
#define KNOWN_MOST 4096

static struct arena example_arena, known_arena;
static struct model example;
static struct cut_known known;

static void read_example(void)
{
    FILE *file = fopen(FUZZ_EXAMPLE, "rb");
    size_t room = 1 << 20;
    char *bytes = malloc(room);
    size_t size;

    HOLDS(file && bytes);
    size = fread(bytes, 1, room, file);
    fclose(file);
    arena_init(&example_arena);
    arena_init(&known_arena);
    model_init(&example, &example_arena);
    HOLDS(exchange_build_in(bytes, size, &example, NULL, NULL) == FAULT_NONE);
    example.build.key = 1;
    free(bytes);
}

/* From nothing to twice what the field may be, most often within its range; or a little more or
 * less than it is, as where inches meet millimetres: up to a millimetre of a length. */
static int64_t value_of(const struct field *field, int64_t now, const uint8_t *bytes)
{
    int64_t span = field->most - field->least;
    int64_t share = (int64_t)bytes[0] << 8 | bytes[1];

    if (bytes[2] < 16)
        return share;
    if (bytes[2] < 32)
        return field->standard;
    if (bytes[2] < 64)
        return now + share % (2 * LENGTH_MM + 1) - LENGTH_MM;
    return field->least + span / 65536 * share / (1 + bytes[2] % 64);
}

static void change(struct model *model, const uint8_t *bytes)
{
    enum entity_kind kind = (enum entity_kind)(bytes[0] % ENTITY_COUNT);
    const struct entity *entity = entity_of(kind);
    const struct field *field = &entity->fields[bytes[2] % entity->field_count];
    size_t count = model_count(model, kind);
    void *item = count > 0 && bytes[1] < NEW_ITEM ? model_at(model, kind, bytes[1] % count)
                                                  : model_add(model, kind);

    if (!field_is_text(field))
        field_set_whole(field, item, value_of(field, field_whole(field, item), bytes + 3));
}

static void keep_layouts(const struct plan *plan)
{
    if (known.layouts.count > KNOWN_MOST) {
        known = (struct cut_known){0};
        arena_reset(&known_arena);
    }
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];

        if (!job->taken && !cut_known_find(&known, job->digest))
            cut_known_keep(&known, &known_arena,
                           &(struct cut_known_layout){job->digest, CUT_QUICK, *job->layout});
    }
}

static void plan_changed(struct arena *arena, const uint8_t *data, size_t size)
{
    struct model model;
    const struct plan *plan = NULL;

    model_copy(&model, &example, arena);
    for (size_t i = 0; i + 5 < size && i < 6 * CHANGES_MOST; i += 6)
        change(&model, data + i);
    model_mend(&model);
    HOLDS(model_check(&model, NULL, NULL) == 0);
    HOLDS(plan_make_draft(&model, &known, arena, &plan) == FAULT_NONE);
    for (size_t i = 0; i < plan->steps.count; i++)
        HOLDS(plan_step(plan, plan->steps.at[i].name) == &plan->steps.at[i]);
    keep_layouts(plan);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct arena arena;
    jmp_buf escape;

    if (!example.build.key) {
        read_example();
        arena_init(&arena);
    }
    arena.escape = known_arena.escape = &escape;
    if (setjmp(escape) == 0)
        plan_changed(&arena, data, size);
    arena_reset(&arena);
    return 0;
}
