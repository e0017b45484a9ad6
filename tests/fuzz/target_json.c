/* Files of builds and workshops: taken in whole and sound, or refused with the model as it was. */
#include "target.h"

#include "exchange/exchange.h"

typedef enum fault take_fn(const char *bytes, size_t length, struct model *model,
                           model_fault_fn *tell, void *context);

static void take(take_fn *taken_by, bool is_build, const char *bytes, size_t size)
{
    struct arena arena;
    struct model model;
    enum fault fault;

    arena_init(&arena);
    model_init(&model, &arena);
    fault = taken_by(bytes, size, &model, NULL, NULL);
    if (!fault && is_build)
        model.build.key = 1;
    HOLDS(model_check(&model, NULL, NULL) == 0);
    HOLDS(!fault || model.workshop.next_key == 1);
    arena_release(&arena);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *bytes = target_string(data, size);

    exchange_kind_of(bytes, size, NULL);
    take(exchange_build_in, true, bytes, size);
    take(exchange_shop_in, false, bytes, size);
    free(bytes);
    return 0;
}
