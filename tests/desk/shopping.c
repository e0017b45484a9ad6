#include "shopping.h"

#include "paper/sheets.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

void shopping_begin(struct shopping *shopping)
{
    desk_trip_free(shopping->trip);
    shopping->trip = NULL;
    DONE(desk_trip_begin(&shopping->trip, shopping->bench.desk, shopping->bench.builds, 3,
                         CUT_QUICK, sheet_purchase_words, note));
}

int shopping_end(void **state)
{
    struct shopping *shopping = *state;

    desk_trip_free(shopping->trip);
    shopping->trip = NULL;
    bench_close(&shopping->bench);
    return 0;
}

const struct trip *trip_of(const struct shopping *shopping)
{
    return desk_trip_of(shopping->trip);
}
