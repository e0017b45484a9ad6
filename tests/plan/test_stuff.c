/* What things are to be made of: stock of another kind is told, with stock that will do. */
#include "soft.h"

#include "plan/cure.h"
#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

/* What it was made of before a form changed its kind. */
static void a_cover_of_foam_is_a_stop_and_cloth_mends_it(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "X", 40, 3, 30);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->foam2);

    soft_plan(soft);
    const struct finding *finding = soft_finding(soft, FINDING_STUFF_UNFIT);

    assert_non_null(finding);
    assert_int_equal(plan_finding_severity(finding), SEVERITY_STOP);
    assert_int_equal(finding->key, cover);
    assert_true(finding->cure_count > 0);
    assert_int_equal(cure_apply(&soft->model, &finding->cures[0], NULL), FAULT_NONE);
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_STUFF_UNFIT));
    assert_true(soft_piece_count(soft, cover) > 0);
}

static void a_frame_of_foam_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "X", 40, 3, 30);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    struct box *framed = model_find(&soft->model, ENTITY_box, box);

    framed->stick = soft->foam2;
    soft_plan(soft);
    assert_non_null(soft_finding(soft, FINDING_STUFF_UNFIT));
    framed->stick = stick;
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_STUFF_UNFIT));
}

static void a_panel_of_sticks_is_told(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "X", 40, 3, 30);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    int64_t sheet = soft_wood(soft, STOCK_SHEET, 0.5, 0);
    struct facing *panel = MODEL_ADD(&soft->model, facing);

    panel->box = box;
    panel->side = SIDE_FRONT;
    panel->stock = stick;
    soft_plan(soft);
    assert_non_null(soft_finding(soft, FINDING_STUFF_UNFIT));
    panel->stock = sheet;
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_STUFF_UNFIT));
}

/* Each kind of layer takes stock of one kind here, and none of the other three. */
static void padding_and_cloth_are_told_apart(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "X", 40, 3, 30);
    const int64_t stocks[] = {soft->foam2, soft->batting, soft->cloth};
    static const struct {
        enum layer_word kind;
        size_t fits;
    } kinds[] = {{LAYER_FOAM, 0}, {LAYER_BATTING, 1},      {LAYER_LINING, 2},    {LAYER_COVER, 2},
                 {LAYER_WELT, 2}, {LAYER_OUTSIDE_BACK, 2}, {LAYER_DUST_COVER, 2}};
    int64_t key = soft_layer(soft, box, LAYER_FOAM, SHAPE_FLAT, SIDE_FRONT, soft->foam2);

    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        for (size_t k = 0; k < sizeof stocks / sizeof *stocks; k++) {
            soft_layer_of(soft, key)->kind = kinds[i].kind;
            soft_layer_of(soft, key)->stock = stocks[k];
            soft_plan(soft);
            assert_int_equal(soft_finding(soft, FINDING_STUFF_UNFIT) == NULL, k == kinds[i].fits);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(a_cover_of_foam_is_a_stop_and_cloth_mends_it),
        SOFT_TEST(a_frame_of_foam_is_told),
        SOFT_TEST(a_panel_of_sticks_is_told),
        SOFT_TEST(padding_and_cloth_are_told_apart),
    };
    int failed = cmocka_run_group_tests_name("stuff", tests, NULL, NULL);

    return failed ? 1 : 0;
}
