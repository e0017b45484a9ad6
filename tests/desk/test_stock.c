/* Prices and the shelf: what is worth what, what was paid before, a new price. */
#include "workshop.h"

#include "desk/stock.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static int begin(void **state)
{
    static const char *const names[] = {"workshop", "banquette", NULL};
    return bench_begin(state, names);
}

/* ---- what the shelf is worth ---- */

struct worth {
    int64_t kind;
    int64_t stock_width;
    struct offer offers[2];
    struct leftover left;
    int64_t value; /* by hand */
};

#define INCHES(inches) ((inches)*LENGTH_INCH)

static enum fault change_worth(struct model *draft, void *context, struct fault_note *note)
{
    const struct worth *worth = context;
    struct stock *stock = MODEL_ADD(draft, stock);
    struct leftover *left;
    (void)note;
    stock->name = "tried";
    stock->kind = worth->kind;
    stock->width = worth->stock_width;
    int64_t key = stock->key;
    for (size_t i = 0; i < 2; i++) {
        struct offer *offer = MODEL_ADD(draft, offer);
        int64_t own = offer->key;
        *offer = worth->offers[i];
        offer->key = own;
        offer->stock = key;
        offer->pack = offer->pack ? offer->pack : 1;
        offer->supplier = offer->dated = offer->note = "";
    }
    left = MODEL_ADD(draft, leftover);
    left->stock = key;
    left->length = worth->left.length;
    left->width = worth->left.width;
    left->count = worth->left.count;
    return FAULT_NONE;
}

/*
 * By hand: half a stick of 4.20 is 2.10; of two, 4.20; by the longer and cheaper one, 48 of 120 in
 * at 5.00 are 2.00. A quarter of a sheet of 38.00 is 9.50. 18 in of a roll of 54 in, half its
 * width, at 24.00 a yard are 6.00. 36 of a pack of 100 at 6.20 are 2.232, so 2.23.
 */
static void a_piece_is_worth_its_share_of_what_is_cheapest_to_buy(void **state)
{
    static const struct worth worths[] = {
        {STOCK_STICK,
         INCHES(3),
         {{.length = INCHES(96), .price = 420}},
         {.length = INCHES(48), .count = 1},
         210},
        {STOCK_STICK,
         INCHES(3),
         {{.length = INCHES(96), .price = 420}},
         {.length = INCHES(48), .count = 2},
         420},
        {STOCK_STICK,
         INCHES(3),
         {{.length = INCHES(96), .price = 420}, {.length = INCHES(120), .price = 500}},
         {.length = INCHES(48), .count = 1},
         200},
        {STOCK_SHEET,
         0,
         {{.length = INCHES(96), .width = INCHES(48), .price = 3800}},
         {.length = INCHES(48), .width = INCHES(24), .count = 1},
         950},
        {STOCK_CLOTH,
         INCHES(54),
         {{.length = INCHES(36), .price = 2400}},
         {.length = INCHES(18), .width = INCHES(27), .count = 1},
         600},
        {STOCK_SCREW, 0, {{.pack = 100, .price = 620}}, {.count = 36}, 223},
        {STOCK_SCREW, 0, {{.pack = 100}}, {.count = 36}, 0},
    };
    struct bench *bench = *state;
    for (size_t i = 0; i < sizeof worths / sizeof *worths; i++) {
        char label[STORE_LABEL];
        struct worth worth = worths[i];
        DONE(desk_edit(bench->desk, "worth", change_worth, &worth, note));
        const struct model *model = desk_model(bench->desk);
        const struct leftover *left = &model->leftovers.at[model->leftovers.count - 1];
        assert_int_equal(leftover_value(model, left), worths[i].value);
        DONE(desk_undo(bench->desk, label, note));
    }
}

/* ---- prices ---- */

static int64_t offer_of(const struct bench *bench, const char *stock)
{
    const struct model *model = desk_model(bench->desk);
    int64_t key = model_key_named(model, ENTITY_stock, stock);
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock == key)
            return model->offers.at[i].key;
    }
    fail_msg("no offer of %s", stock);
    return 0;
}

static void a_new_price_is_one_edit_with_its_day_and_shop(void **state)
{
    struct bench *bench = *state;
    char label[STORE_LABEL];
    const struct desk_price price = {offer_of(bench, "2x2 stick"), "3.80", "2026-11-20", "Padworth",
                                     0};
    int64_t before = MODEL_FIND(desk_model(bench->desk), offer, price.offer)->price;
    DONE(desk_set_price(bench->desk, &price, note));
    const struct offer *offer = MODEL_FIND(desk_model(bench->desk), offer, price.offer);
    assert_int_equal(offer->price, 380);
    assert_string_equal(offer->dated, "2026-11-20");
    assert_string_equal(offer->supplier, "Padworth");
    DONE(desk_undo(bench->desk, label, note));
    assert_string_equal(label, "price of 2x2 stick");
    assert_int_equal(MODEL_FIND(desk_model(bench->desk), offer, price.offer)->price, before);
}

static void a_price_that_is_none_changes_nothing(void **state)
{
    struct bench *bench = *state;
    struct fault_note note;
    const struct desk_price price = {offer_of(bench, "2x2 stick"), "3.8o", "2026-11-20", NULL, 0};
    const struct desk_price day = {offer_of(bench, "2x2 stick"), "3.80", "20.11.", NULL, 0};
    const struct desk_price gone = {999999, "3.80", "2026-11-20", NULL, 0};
    assert_int_equal(desk_set_price(bench->desk, &price, &note), FAULT_SYNTAX);
    assert_int_equal(desk_set_price(bench->desk, &day, &note), FAULT_SYNTAX);
    assert_string_equal(note.path, "dated");
    assert_int_equal(desk_set_price(bench->desk, &gone, &note), FAULT_UNKNOWN);
    assert_int_equal(MODEL_FIND(desk_model(bench->desk), offer, price.offer)->price, 325);
}

/* A stock without an offer, as starters make them. */
static enum fault change_stock(struct model *draft, void *context, struct fault_note *note)
{
    struct stock *stock = MODEL_ADD(draft, stock);
    const enum stock_word *kind = context;
    (void)note;
    stock->name = "new stuff";
    stock->kind = *kind;
    return FAULT_NONE;
}

static const struct offer *first_price(const struct bench *bench, enum stock_word kind,
                                       const char *text)
{
    DONE(desk_edit(bench->desk, "stuff", change_stock, &kind, note));
    const struct desk_price price = {
        .price = text,
        .dated = "2026-11-20",
        .stock = model_key_named(desk_model(bench->desk), ENTITY_stock, "new stuff")};
    DONE(desk_set_price(bench->desk, &price, note));
    return MODEL_FIND(desk_model(bench->desk), offer, offer_of(bench, "new stuff"));
}

/* Sticks of 8 ft and sheets of 4 by 8 ft: common sizes of the trade in inches, no source. */
static void a_first_price_offers_the_usual_size(void **state)
{
    struct bench *bench = *state;
    const struct offer *stick = first_price(bench, STOCK_STICK, "3.90");
    assert_int_equal(stick->length, 96 * LENGTH_INCH);
    assert_int_equal(stick->price, 390);
    assert_string_equal(stick->dated, "2026-11-20");
    char label[STORE_LABEL];
    DONE(desk_undo(bench->desk, label, note));
    DONE(desk_undo(bench->desk, label, note));
    const struct offer *sheet = first_price(bench, STOCK_SHEET, "41");
    assert_int_equal(sheet->length, 96 * LENGTH_INCH);
    assert_int_equal(sheet->width, 48 * LENGTH_INCH);
}

static void a_first_price_of_cloth_is_by_the_yard(void **state)
{
    const struct offer *cloth = first_price(*state, STOCK_CLOTH, "12");
    assert_int_equal(cloth->length, 36 * LENGTH_INCH);
    assert_int_equal(cloth->pack, 1);
}

static void a_price_names_its_pack_behind_a_stroke(void **state)
{
    struct bench *bench = *state;
    struct fault_note note;
    const struct offer *screws = first_price(bench, STOCK_SCREW, "9.50/100");
    assert_int_equal(screws->price, 950);
    assert_int_equal(screws->pack, 100);
    const struct desk_price wrong = {screws->key, "9.50/many", "2026-11-21", NULL, 0};
    assert_int_equal(desk_set_price(bench->desk, &wrong, &note), FAULT_SYNTAX);
    assert_string_equal(note.path, "pack");
}

/* ---- what was paid before ---- */

static enum fault change_paid(struct model *draft, void *context, struct fault_note *note)
{
    static const char *const days[] = {"2026-10-02", "2026-11-02", "2026-09-02"};
    (void)context;
    (void)note;
    for (size_t i = 0; i < 3; i++) {
        struct spend *spend = MODEL_ADD(draft, spend);
        spend->stock = model_key_named(draft, ENTITY_stock, "2x2 stick");
        spend->dated = days[i];
        spend->what = "sticks";
        spend->amount = 1000 + (int64_t)i;
        spend->count = 3;
    }
    struct shop_spend *shelf = MODEL_ADD(draft, shop_spend);
    shelf->stock = model_key_named(draft, ENTITY_stock, "2x2 stick");
    shelf->dated = "2026-10-15";
    shelf->what = "a stick";
    shelf->amount = 340;
    return FAULT_NONE;
}

static void what_was_paid_before_is_told_newest_first_over_all_builds(void **state)
{
    struct bench *bench = *state;
    const struct paid_before *paid = NULL;
    size_t count = 0;
    struct arena arena;
    DONE(desk_edit(bench->desk, "paid", change_paid, NULL, note));
    int64_t stock = model_key_named(desk_model(bench->desk), ENTITY_stock, "2x2 stick");
    DONE(desk_take_up(bench->desk, 0, note));
    arena_init(&arena);
    DONE(desk_paid_before(bench->desk, stock, &arena, &paid, &count, note));
    assert_int_equal(count, 4);
    assert_string_equal(paid[0].dated, "2026-11-02");
    assert_string_equal(paid[0].build, "Corner banquette");
    assert_int_equal(paid[0].count, 3);
    assert_string_equal(paid[1].build, "");
    assert_int_equal(paid[1].amount, 340);
    assert_string_equal(paid[3].dated, "2026-09-02");
    arena_release(&arena);
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)
    const struct CMUnitTest tests[] = {
        CASE(a_piece_is_worth_its_share_of_what_is_cheapest_to_buy),
        CASE(a_new_price_is_one_edit_with_its_day_and_shop),
        CASE(a_price_that_is_none_changes_nothing),
        CASE(a_first_price_offers_the_usual_size),
        CASE(a_first_price_of_cloth_is_by_the_yard),
        CASE(a_price_names_its_pack_behind_a_stroke),
        CASE(what_was_paid_before_is_told_newest_first_over_all_builds),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
