/* Tables of prices, of the shelf and of spend: they come back, and every wrong line is told. */
#include "sample.h"

#include "exchange/ledger.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

#define MAIN_BUILD 7

static const struct ledger_build builds[] = {{MAIN_BUILD, "Bench"}, {9, "Stool"}};

static enum fault read_table(struct ledger *ledger, enum ledger_kind kind, const char *bytes,
                             size_t length, struct model *model, struct told *told)
{
    const struct ledger_file file = {kind, bytes, length, builds, 2};

    return ledger_read(ledger, &file, model, told_note, told);
}

static void print_table(struct text *out, enum ledger_kind kind, const struct csv_style *style,
                        const struct model *model)
{
    ledger_put_head(out, kind, style);
    if (kind == LEDGER_SPEND)
        ledger_put_lines(out, kind, style, model, true);
    ledger_put_lines(out, kind, style, model, false);
}

static void clear(struct model *model, enum entity_kind kind)
{
    while (model_count(model, kind))
        model_remove(model, kind, item_key(model_at(model, kind, 0)));
}

static void take(const struct ledger *ledger, struct model *model)
{
    ledger_take(ledger, 0, model);
    if (ledger->kind == LEDGER_SPEND)
        ledger_take(ledger, MAIN_BUILD, model);
}

/* Out, into a workshop without these items, and out again: the same bytes. */
static void assert_round(enum ledger_kind kind, const struct csv_style *style, unsigned seed)
{
    struct dice dice = {seed};
    struct sample sample;
    struct told told = {.count = 0};
    struct ledger ledger;
    struct text table, again;

    sample_init(&sample);
    text_init(&table);
    text_init(&again);
    sample_by_chance(&sample.model, &dice, 8);
    sample.model.build.key = MAIN_BUILD;
    sample.model.build.name = "Bench";
    print_table(&table, kind, style, &sample.model);
    clear(&sample.model, ledger_entity(kind));
    clear(&sample.model, ENTITY_shop_spend);
    if (read_table(&ledger, kind, text_string(&table), table.length, &sample.model, &told)) {
        told_print(&told, &again);
        fail_msg("%s\nof\n%s", text_string(&again), text_string(&table));
    }
    take(&ledger, &sample.model);
    print_table(&again, kind, style, &sample.model);
    assert_string_equal(text_string(&again), text_string(&table));
    text_release(&table);
    text_release(&again);
    sample_release(&sample);
}

static void tables_come_back_to_the_byte(void **state)
{
    (void)state;
    for (unsigned seed = 1; seed <= 100; seed++)
        for (int kind = 0; kind < LEDGER_KINDS; kind++) {
            assert_round((enum ledger_kind)kind, &csv_plain, seed);
            assert_round((enum ledger_kind)kind, &csv_semicolons, seed);
        }
}

static void a_table_that_is_taken_in_again_changes_nothing(void **state)
{
    struct dice dice = {3};

    (void)state;
    for (int round = 0; round < 60; round++) {
        enum ledger_kind kind = (enum ledger_kind)(round % LEDGER_KINDS);
        struct sample sample;
        struct told told = {.count = 0};
        struct ledger ledger;
        struct text table;

        sample_init(&sample);
        text_init(&table);
        sample_by_chance(&sample.model, &dice, 8);
        sample.model.build.key = MAIN_BUILD;
        sample.model.build.name = "Bench";
        print_table(&table, kind, &csv_plain, &sample.model);
        assert_int_equal(
            read_table(&ledger, kind, text_string(&table), table.length, &sample.model, &told),
            FAULT_NONE);
        assert_int_equal(ledger_take(&ledger, 0, &sample.model), 0);
        assert_int_equal(ledger_take(&ledger, MAIN_BUILD, &sample.model), 0);
        text_release(&table);
        sample_release(&sample);
    }
}

/* ---- a small workshop ---- */

/* Stick "2x4" with offers of 96 in at 4.60 and of 120 in at 6.10, the long one at two suppliers. */
static void small(struct model *model)
{
    static const struct {
        int64_t inches, price;
        const char *supplier;
    } offers[] = {{96, 460, ""}, {120, 610, "Near"}, {120, 580, "Far"}};
    struct stock *stock = MODEL_ADD(model, stock);

    stock->name = "2x4";
    for (size_t i = 0; i < sizeof offers / sizeof offers[0]; i++) {
        struct offer *offer = MODEL_ADD(model, offer);

        offer->stock = stock->key;
        offer->length = offers[i].inches * LENGTH_INCH;
        offer->price = offers[i].price;
        offer->supplier = offers[i].supplier;
        offer->note = "straight ones";
    }
}

/* What is told of a table against the small workshop; nothing where it was taken. */
static void assert_told(enum ledger_kind kind, const char *table, const char *lines)
{
    struct sample sample;
    struct told told = {.count = 0};
    struct ledger ledger;
    struct text out;

    sample_init(&sample);
    text_init(&out);
    small(&sample.model);
    if (!read_table(&ledger, kind, table, strlen(table), &sample.model, &told))
        take(&ledger, &sample.model);
    told_print(&told, &out);
    assert_string_equal(text_string(&out), lines);
    text_release(&out);
    sample_release(&sample);
}

static void every_wrong_line_is_told_with_its_place(void **state)
{
    (void)state;
    assert_told(LEDGER_PRICES,
                "stock,length,price,dated\n"
                "2x4,96 in,4.80,2026-11-01\n"
                "4x4,96 in,4.80,2026-11-01\n"
                "2x4,96 ell,,1.11.2026\n"
                "\n"
                "2x4,72 in\n"
                "2x4,72 in,3.9x,2026-11-01\n",
                "3:1 REFERENCE stock: there is no stock \"4x4\"\n"
                "4:5 UNIT length: a length is in inches (in), ft, yd, mm, cm or m\n"
                "4:12 MISSING price: price is needed\n"
                "4:13 SYNTAX dated: a date is written year-month-day, as 2026-11-25\n"
                "6:1 SYNTAX : the first line has 4 cells, and this one 2\n"
                "7:11 SYNTAX price: \"x\" does not fit here\n");
}

static void wrong_columns_are_told_before_any_line(void **state)
{
    (void)state;
    assert_told(LEDGER_PRICES, "stok,length,length\n2x4,1,1\n",
                "1:1 UNKNOWN : no column of prices is called \"stok\": perhaps \"stock\"\n"
                "1:1 MISSING stock: this column is needed\n"
                "1:1 MISSING price: this column is needed\n"
                "1:13 DUPLICATE length: this column stands here twice\n");
    assert_told(LEDGER_SPEND, "",
                "1:1 MISSING : the table is empty: its first line names the columns\n");
}

static void a_comma_is_decimal_unless_nobody_can_tell(void **state)
{
    (void)state;
    assert_told(LEDGER_PRICES, "stock;length;price\n2x4;72,5 in;3,90\n2x4;1,940 m;3\n", "");
    assert_told(LEDGER_PRICES, "stock,length,price\n2x4,\"72,5 in\",\"3,90\"\n", "");
    assert_told(LEDGER_PRICES, "stock,length,price\n2x4,72 in,3,90\n",
                "2:1 SYNTAX : the first line has 3 cells, and this one 4: a decimal comma needs "
                "quotes round its cell\n");
    assert_told(LEDGER_PRICES, "stock,length,price\n2x4,72 in,\"1,234\"\n",
                "2:11 SYNTAX price: this may be thousands or decimals: write it without the "
                "comma\n");
}

static void an_item_that_could_be_several_is_not_guessed(void **state)
{
    (void)state;
    assert_told(LEDGER_PRICES, "stock,length,price\n2x4,120 in,5.50\n",
                "2:1 REFUSED : several that are there could be meant: add the columns that tell "
                "them apart\n");
    assert_told(LEDGER_PRICES, "stock,length,supplier,price\n2x4,120 in,Far,5.50\n", "");
}

static void one_piece_twice_is_refused(void **state)
{
    (void)state;
    assert_told(LEDGER_PRICES, "stock,length,price\n2x4,96 in,4\n2x4,8 ft,5\n",
                "3:1 DUPLICATE : line 2 says the same piece\n");
    assert_told(LEDGER_PRICES, "stock,length,price\n2x4,60 in,4\n2x4,60 in,5\n",
                "3:1 DUPLICATE : line 2 says the same piece\n");
}

static void a_spend_of_no_build_that_is_here_is_refused(void **state)
{
    (void)state;
    assert_told(LEDGER_SPEND, "build,dated,amount,what\nBank,2026-11-02,3,glue\n",
                "2:1 UNKNOWN build: there is no build called \"Bank\"\n");
}

static void columns_that_are_not_there_keep_what_was(void **state)
{
    static const char table[] = "price,stock,length\n4.95,2x4,8 ft\n7.00,2x4,144\n";
    struct sample sample;
    struct told told = {.count = 0};
    struct ledger ledger;

    (void)state;
    sample_init(&sample);
    small(&sample.model);
    assert_int_equal(read_table(&ledger, LEDGER_PRICES, table, strlen(table), &sample.model, &told),
                     FAULT_NONE);
    assert_int_equal(ledger_take(&ledger, 0, &sample.model), 2);
    assert_int_equal(sample.model.offers.count, 4);
    assert_int_equal(sample.model.offers.at[0].price, 495);
    assert_string_equal(sample.model.offers.at[0].note, "straight ones");
    assert_int_equal(sample.model.offers.at[3].price, 700);
    assert_int_equal(sample.model.offers.at[3].length, 144 * LENGTH_INCH);
    assert_int_equal(sample.model.offers.at[3].pack, 1);
    sample_release(&sample);
}

/* Two spends that are alike were two purchases; the third one comes with the table. */
static void spends_that_are_alike_are_counted(void **state)
{
    static const char table[] = "build,dated,amount,what\n"
                                "Bench,2026-11-02,3.20,glue\n"
                                "Bench,2026-11-02,3.20,glue\n"
                                "Bench,2026-11-02,3.20,glue\n"
                                ",2026-11-02,-1.00,glue taken back\n"
                                ";;;\n";
    struct sample sample;
    struct told told = {.count = 0};
    struct ledger ledger;

    (void)state;
    sample_init(&sample);
    for (int i = 0; i < 2; i++) {
        struct spend *spend = MODEL_ADD(&sample.model, spend);

        spend->dated = "2026-11-02";
        spend->amount = 320;
        spend->what = "glue";
    }
    assert_int_equal(
        read_table(&ledger, LEDGER_SPEND, table, strlen(table) - 4, &sample.model, &told),
        FAULT_NONE);
    assert_int_equal(ledger_take(&ledger, MAIN_BUILD, &sample.model), 1);
    assert_int_equal(ledger_take(&ledger, 0, &sample.model), 1);
    assert_int_equal(sample.model.spends.count, 3);
    assert_int_equal(sample.model.shop_spends.at[0].amount, -100);
    sample_release(&sample);
}

/* ---- hostile ---- */

static void more_lines_than_any_makers_are_refused(void **state)
{
    struct sample sample;
    struct told told = {.count = 0};
    struct ledger ledger;
    struct text table;

    (void)state;
    sample_init(&sample);
    text_init(&table);
    text_add(&table, "dated,amount,what\n");
    for (int i = 0; i <= LEDGER_LINES_MOST; i++)
        text_add(&table, "2026-11-02,1,x\n");
    assert_int_equal(
        read_table(&ledger, LEDGER_SPEND, text_string(&table), table.length, &sample.model, &told),
        FAULT_REFUSED);
    assert_int_equal(told.count, 1);
    assert_int_equal(told.notes[0].line, LEDGER_LINES_MOST + 2);
    text_release(&table);
    sample_release(&sample);
}

/* Whatever the bytes, they are refused with places, or the model is right afterwards. */
static void a_table_changed_by_chance_is_taken_whole_or_refused(void **state)
{
    static const char letters[] = ",;\"\r\n'=x0.-\xff";
    struct dice dice = {17};
    int refused = 0;

    (void)state;
    for (int round = 0; round < 1500; round++) {
        enum ledger_kind kind = (enum ledger_kind)(round % LEDGER_KINDS);
        struct sample sample;
        struct told told = {.count = 0};
        struct ledger ledger;
        struct text table;
        enum fault fault;

        sample_init(&sample);
        text_init(&table);
        sample_by_chance(&sample.model, &dice, 3);
        sample.model.build.key = MAIN_BUILD;
        sample.model.build.name = "Bench";
        print_table(&table, kind, &csv_plain, &sample.model);
        for (int64_t left = dice_between(&dice, 1, 3); left > 0; left--)
            table.at[dice_bits(&dice) % table.length] = letters[dice_bits(&dice) % sizeof letters];
        fault = read_table(&ledger, kind, table.at, table.length, &sample.model, &told);
        assert_int_equal(told.count > 0, fault != FAULT_NONE);
        for (size_t i = 0; i < told.count && i < 40; i++)
            assert_true(told.notes[i].line > 0 && told.notes[i].column > 0);
        if (!fault)
            take(&ledger, &sample.model);
        assert_int_equal(model_check(&sample.model, NULL, NULL), 0);
        refused += fault != FAULT_NONE;
        text_release(&table);
        sample_release(&sample);
    }
    assert_in_range(refused, 500, 1450);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tables_come_back_to_the_byte),
        cmocka_unit_test(a_table_that_is_taken_in_again_changes_nothing),
        cmocka_unit_test(every_wrong_line_is_told_with_its_place),
        cmocka_unit_test(wrong_columns_are_told_before_any_line),
        cmocka_unit_test(a_comma_is_decimal_unless_nobody_can_tell),
        cmocka_unit_test(an_item_that_could_be_several_is_not_guessed),
        cmocka_unit_test(one_piece_twice_is_refused),
        cmocka_unit_test(a_spend_of_no_build_that_is_here_is_refused),
        cmocka_unit_test(columns_that_are_not_there_keep_what_was),
        cmocka_unit_test(spends_that_are_alike_are_counted),
        cmocka_unit_test(more_lines_than_any_makers_are_refused),
        cmocka_unit_test(a_table_changed_by_chance_is_taken_whole_or_refused),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
