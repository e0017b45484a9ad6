/*
 * Ways to take the cloth, side by side. A face of 70 x 36, 3 in deep, takes 83 x 49 of cloth 54
 * wide: up the roll a centre of 54 and two sides of 15-1/2 beside each other, 98 along; railroaded
 * 83 along. The shop sells 5 % more in whole steps of 9 in. All by hand.
 */
#include "soft.h"

#include "dice.h"
#include "plan/cloth_ways.h"
#include "plan/cure.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

struct looked {
    struct arena arena;
    const struct cloth_way *at;
    size_t count;
};

static void look(struct soft *soft, struct looked *looked)
{
    soft_plan(soft);
    arena_init(&looked->arena);
    assert_int_equal(cloth_ways(soft->plan, &looked->arena, &looked->at, &looked->count),
                     FAULT_NONE);
}

static const struct cloth_way *find(const struct looked *looked, const char *text)
{
    for (size_t i = 0; i < looked->count; i++)
        if (strcmp(looked->at[i].cure.text, text) == 0)
            return &looked->at[i];
    return NULL;
}

static void assert_way(const struct looked *looked, const char *text, double length, int seams,
                       double seam_length)
{
    const struct cloth_way *way = find(looked, text);

    assert_non_null(way);
    assert_null(way->barred);
    assert_int_equal(way->length, IN(length));
    assert_int_equal(way->seams, seams);
    assert_int_equal(way->seam_length, IN(seam_length));
}

/* 98 x 1.05 = 102.9, 83 x 1.05 = 87.15; two halves of 42 do not lie beside each other. */
static void each_way_says_its_cloth_and_its_seams(void **state)
{
    struct soft *soft = *state;
    struct looked looked;

    soft_front_cover(soft, 70, 36);
    look(soft, &looked);
    assert_true(looked.at[0].chosen);
    assert_way(&looked, "as it is", 108, 2, 98);
    assert_way(&looked, "all railroaded", 90, 0, 0);
    assert_way(&looked, "X cover: one seam down the middle", 108, 1, 49);
    assert_true(find(&looked, "all railroaded")->minutes < looked.at[0].minutes);
    arena_release(&looked.arena);
}

static void pile_bars_railroading(void **state)
{
    struct soft *soft = *state;
    struct stock *cloth = soft_cloth(soft);
    struct looked looked;

    soft_front_cover(soft, 70, 36);
    cloth->pile = 1;
    look(soft, &looked);
    assert_non_null(find(&looked, "all railroaded")->barred);
    arena_release(&looked.arena);
    cloth->pile = 0;
    cloth->railroad = 0;
    look(soft, &looked);
    assert_non_null(find(&looked, "all railroaded")->barred);
    arena_release(&looked.arena);
}

/* A cover that may have no seam is stopped up the roll, and a way that stops something is barred.
 */
static void a_way_that_stops_something_is_barred(void **state)
{
    struct soft *soft = *state;
    int64_t cover = soft_front_cover(soft, 70, 36);
    struct looked looked;

    soft_layer_of(soft, cover)->seams = 0;
    soft_layer_of(soft, cover)->direction = DIRECTION_ACROSS;
    look(soft, &looked);
    assert_non_null(find(&looked, "all up the roll")->barred);
    assert_way(&looked, "as it is", 90, 0, 0);
    arena_release(&looked.arena);
}

static int64_t add_width(struct soft *soft, const char *name, double width, const char *cloth)
{
    struct stock *stock = MODEL_ADD(&soft->model, stock);

    stock->name = name;
    stock->kind = STOCK_CLOTH;
    stock->width = IN(width);
    stock->cloth = cloth;
    return stock->key;
}

/* 90 in take it in one width: 49 x 1.05 = 51.45. */
static void another_width_of_the_same_cloth_stands_beside_it(void **state)
{
    struct soft *soft = *state;
    struct looked looked;
    int64_t wide;

    soft_front_cover(soft, 70, 36);
    add_width(soft, "other 90", 90, "other");
    wide = add_width(soft, "twill 90", 90, "twill");
    soft_cloth(soft)->cloth = "twill";
    look(soft, &looked);
    assert_way(&looked, "all in twill 90", 54, 0, 0);
    assert_int_equal(find(&looked, "all in twill 90")->bought, wide);
    assert_null(find(&looked, "all in other 90"));
    arena_release(&looked.arena);
}

/* 83 x 73 of cloth: 80 in take it in one width where it lies railroaded, 83 x 1.05 = 87.15 long. */
static void another_width_lies_either_way(void **state)
{
    struct soft *soft = *state;
    struct looked looked;
    int64_t wide;

    soft_front_cover(soft, 70, 60);
    wide = add_width(soft, "twill 80", 80, "twill");
    soft_cloth(soft)->cloth = "twill";
    look(soft, &looked);
    assert_way(&looked, "all in twill 80, railroaded", 90, 0, 0);
    assert_int_equal(find(&looked, "all in twill 80, railroaded")->bought, wide);
    assert_true(find(&looked, "all in twill 80")->seams > 0);
    assert_null(find(&looked, "all in twill 80, up the roll")); /* as it lies */
    arena_release(&looked.arena);
    ((struct stock *)model_find(&soft->model, ENTITY_stock, wide))->pile = 1;
    look(soft, &looked);
    assert_null(find(&looked, "all in twill 80, railroaded"));
    arena_release(&looked.arena);
}

static void set_price(struct soft *soft, int64_t stock, int64_t price)
{
    struct offer *offer = MODEL_ADD(&soft->model, offer);

    offer->stock = stock;
    offer->length = IN(9);
    offer->price = price;
}

/* Covers of all sizes in two widths of one cloth, rows of nails on them here and there. */
static void add_by_chance(struct soft *soft, struct dice *dice)
{
    int64_t wide = add_width(soft, "twill wide", (double)dice_between(dice, 60, 80), "twill");

    soft_cloth(soft)->cloth = "twill";
    set_price(soft, soft->cloth, 300);
    set_price(soft, wide, dice_between(dice, 300, 480));
    for (int i = 0; i < 3; i++) {
        int64_t width = dice_between(dice, 60, 90);
        int64_t inset = dice_between(dice, 4, 24);
        int64_t cover = soft_front_cover(soft, (double)width, (double)dice_between(dice, 20, 60));
        int64_t trim = soft_layer(soft, soft_layer_of(soft, cover)->box, LAYER_TRIM, SHAPE_RUN,
                                  SIDE_FRONT, soft->lining);

        soft_layer_of(soft, cover)->seaming = SEAMING_LINE;
        soft_layer_of(soft, trim)->u = IN((double)inset);
        soft_layer_of(soft, trim)->width = IN((double)(width - 2 * inset));
        soft_endings(soft, trim, ENDING_SIDE, ENDING_SIDE, ENDING_STOP, ENDING_STOP);
    }
}

/* It is the last of its cloth, and costs no more than any that is not barred. */
static void what_is_taken_together_is_the_best_of_all(void **state)
{
    struct dice dice = {7};
    int found = 0;

    for (int round = 0; round < 24; round++) {
        void *fixture;
        struct soft *soft;
        struct looked looked;
        const struct cloth_way *last;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        add_by_chance(soft, &dice);
        look(soft, &looked);
        last = &looked.at[looked.count - 1];
        if (strncmp(last->cure.text, "together: ", 10) == 0) {
            found++;
            assert_null(last->barred);
            assert_non_null(strchr(last->cure.text, ';'));
            assert_null(strstr(last->cure.text, "down the middle"));
            for (size_t i = 0; i + 1 < looked.count; i++)
                assert_true(looked.at[i].barred || looked.at[i].cost >= last->cost);
        }
        arena_release(&looked.arena);
        soft_end(&fixture);
    }
    assert_true(found > 0);
    (void)state;
}

static void what_comes_to_the_same_is_left_out(void **state)
{
    struct soft *soft = *state;
    struct looked looked;

    soft_front_cover(soft, 30, 30);
    look(soft, &looked);
    assert_int_equal(looked.count, 2); /* as it is, and railroaded */
    arena_release(&looked.arena);
}

/* Two covers, taken in each way that can be: what was said is what it comes to. */
static void a_way_that_is_taken_comes_to_what_it_said(void **state)
{
    struct soft *soft = *state;
    struct looked looked;
    int taken = 0;

    soft_front_cover(soft, 70, 36);
    soft_front_cover(soft, 90, 60);
    add_width(soft, "twill 72", 72, "twill");
    soft_cloth(soft)->cloth = "twill";
    look(soft, &looked);
    for (size_t i = 1; i < looked.count; i++) {
        struct model facts = soft->model;
        const struct cloth_way *way = &looked.at[i];

        if (way->barred)
            continue;
        model_copy(&soft->model, &facts, &soft->facts);
        assert_int_equal(cure_apply(&soft->model, &way->cure, NULL), FAULT_NONE);
        soft_plan(soft);
        assert_int_equal(soft->plan->tally.minutes, way->minutes);
        assert_int_equal(soft->plan->tally.cost, way->cost);
        assert_int_equal(soft->plan->tally.cloth, way->length);
        soft->model = facts;
        taken++;
    }
    assert_true(taken >= 4);
    arena_release(&looked.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(each_way_says_its_cloth_and_its_seams),
        SOFT_TEST(pile_bars_railroading),
        SOFT_TEST(a_way_that_stops_something_is_barred),
        SOFT_TEST(another_width_of_the_same_cloth_stands_beside_it),
        SOFT_TEST(what_comes_to_the_same_is_left_out),
        SOFT_TEST(another_width_lies_either_way),
        cmocka_unit_test(what_is_taken_together_is_the_best_of_all),
        SOFT_TEST(a_way_that_is_taken_comes_to_what_it_said),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
