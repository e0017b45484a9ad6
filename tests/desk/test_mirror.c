/*
 * The mirror image of a box as an edit.
 */
#include "workshop.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/mirror.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

struct mirror_bench {
    struct workshop_place place;
    struct desk *desk;
};

static int begin(void **state)
{
    struct mirror_bench *bench = calloc(1, sizeof *bench);

    if (!bench)
        return -1;
    *state = bench;
    place_begin(&bench->place);
    bench->desk = desk_at(&bench->place);
    desk_take_case(bench->desk, "headboard");
    return 0;
}

static int end(void **state)
{
    struct mirror_bench *bench = *state;

    desk_close(bench->desk);
    assert_place_is_sound(&bench->place);
    place_end(&bench->place);
    free(bench);
    return 0;
}

static int64_t box_named(const struct desk *desk, const char *name)
{
    return model_key_named(desk_model(desk), ENTITY_box, name);
}

static int findings_of_twins(const struct desk *desk)
{
    const struct plan *plan = desk_plan(desk);
    int count = 0;

    for (size_t i = 0; i < plan->findings.count; i++) {
        int kind = plan->findings.at[i].kind;

        count += kind == FINDING_TWIN_DIFFERS || kind == FINDING_TWIN_LACKS ||
                 kind == FINDING_TWIN_BEYOND;
    }
    return count;
}

/* The worked example made its right wing by hand: the program's own is the same. */
static void the_image_of_the_left_wing_is_the_right_wing(void **state)
{
    struct mirror_bench *bench = *state;
    struct tally before = desk_plan(bench->desk)->tally;
    const struct tally *after;

    DONE(desk_delete(bench->desk, ENTITY_box, box_named(bench->desk, "R"), note));
    DONE(desk_mirror(bench->desk, box_named(bench->desk, "L"), "R", note));
    after = &desk_plan(bench->desk)->tally;
    assert_int_equal(findings_of_twins(bench->desk), 0);
    assert_int_equal(after->screws, before.screws);
    assert_int_equal(after->staples, before.staples);
    assert_int_equal(after->cloth, before.cloth);
    assert_int_equal(after->cost, before.cost);
    assert_int_equal(after->stops, before.stops);
    assert_int_equal(plan_hand(desk_plan(bench->desk), box_named(bench->desk, "R")), HAND_RIGHT);
    assert_int_equal(plan_hand(desk_plan(bench->desk), box_named(bench->desk, "L")), HAND_LEFT);
}

static void an_image_is_one_edit(void **state)
{
    struct mirror_bench *bench = *state;
    size_t boxes = desk_model(bench->desk)->boxes.count;
    size_t joins = desk_model(bench->desk)->joins.count;
    size_t layers = desk_model(bench->desk)->layers.count;
    char label[STORE_LABEL];

    DONE(desk_mirror(bench->desk, box_named(bench->desk, "L"), NULL, note));
    assert_int_equal(desk_model(bench->desk)->boxes.count, boxes + 1);
    assert_true(desk_model(bench->desk)->layers.count > layers);
    DONE(desk_undo(bench->desk, label, note));
    assert_string_equal(label, "mirror image of L");
    assert_int_equal(desk_model(bench->desk)->boxes.count, boxes);
    assert_int_equal(desk_model(bench->desk)->joins.count, joins);
    assert_int_equal(desk_model(bench->desk)->layers.count, layers);
}

static void a_box_that_is_not_there_has_no_image(void **state)
{
    struct mirror_bench *bench = *state;
    struct fault_note note = {0};
    unsigned serial = desk_serial(bench->desk);

    assert_int_equal(desk_mirror(bench->desk, 9999, NULL, &note), FAULT_UNKNOWN);
    assert_int_equal(desk_mirror(bench->desk, box_named(bench->desk, "L"), "C", &note),
                     FAULT_DUPLICATE);
    assert_int_equal(desk_serial(bench->desk), serial);
}

/* ---- twice ---- */

/* The n-th item of a kind on a box; NULL beyond the last. */
static const void *item_on(const struct model *model, enum entity_kind kind, int64_t box, size_t n)
{
    for (size_t i = 0; i < model_count(model, kind); i++) {
        const void *item = model_at_const(model, kind, i);

        if (mirror_box_of(model, kind, item) == box && n-- == 0)
            return item;
    }
    return NULL;
}

/* A width to the end of the face is the same as that in figures. */
static int64_t value_of(const struct box *box, enum entity_kind kind, const struct field *field,
                        const void *item)
{
    const struct field *u = field_named(entity_of(kind), "u");
    const struct field *side = field_named(entity_of(kind), "side");
    int64_t value = field_whole(field, item);

    if (value != 0 || !u || !side || field != field_named(entity_of(kind), "width"))
        return value;
    struct area face = face_area(box, field_whole(side, item));
    return face.u1 - field_whole(u, item);
}

static void assert_same_fields(const struct box *box, enum entity_kind kind, const void *a,
                               const void *b)
{
    const struct entity *entity = entity_of(kind);

    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (field->type == FIELD_REF)
            continue;
        if (field_is_text(field))
            assert_string_equal(field_string(field, a), field_string(field, b));
        else if (value_of(box, kind, field, a) != value_of(box, kind, field, b))
            fail_msg("%s of %s: %lld is not %lld", field->name, entity->name,
                     (long long)field_whole(field, a), (long long)field_whole(field, b));
    }
}

static void assert_same_box(const struct desk *desk, int64_t first, int64_t second)
{
    const struct model *model = desk_model(desk);

    for (const enum entity_kind *kind = mirror_kinds; *kind != ENTITY_none; kind++) {
        for (size_t n = 0;; n++) {
            const void *a = item_on(model, *kind, first, n);
            const void *b = item_on(model, *kind, second, n);

            assert_int_equal(!a, !b);
            if (!a)
                break;
            assert_same_fields(MODEL_FIND(model, box, first), *kind, a, b);
        }
    }
}

static size_t members_on(const struct plan *plan, int64_t box)
{
    size_t count = 0;

    for (size_t i = 0; i < plan->members.count; i++)
        count += plan->members.at[i].box == box;
    return count;
}

/* Whether some member of the image is where the mirror shows this one. */
static bool is_mirrored(const struct plan *plan, const struct plan_member *member, int64_t image)
{
    int64_t width = MODEL_FIND(plan->facts, box, image)->width;
    const struct solid *a = &member->solid;

    for (size_t i = 0; i < plan->members.count; i++) {
        const struct solid *b = &plan->members.at[i].solid;

        if (plan->members.at[i].box == image && b->low.x == width - a->high.x &&
            b->high.x == width - a->low.x && b->low.y == a->low.y && b->high.y == a->high.y &&
            b->low.z == a->low.z && b->high.z == a->high.z)
            return true;
    }
    return false;
}

static void assert_figures_are_alike(const struct desk *desk, int64_t box, int64_t image)
{
    const struct plan *plan = desk_plan(desk);
    const struct load *a = plan_load(plan, box);
    const struct load *b = plan_load(plan, image);

    assert_int_equal(a->finished.x, b->finished.x);
    assert_int_equal(a->finished.y, b->finished.y);
    assert_int_equal(a->finished.z, b->finished.z);
    assert_int_equal(members_on(plan, box), members_on(plan, image));
    /* Where a panel has a seam, supports stand under it, and sheets are laid from the left. */
    if (MODEL_FIND(plan->facts, box, box)->supports == MAKING_AUTO)
        return;
    for (size_t i = 0; i < plan->members.count; i++)
        if (plan->members.at[i].box == box)
            assert_true(is_mirrored(plan, &plan->members.at[i], image));
}

static void an_image_of_an_image_is_the_box_itself(void **state)
{
    static const char *const cases[] = {"headboard", "ottoman", "banquette"};
    struct mirror_bench *bench = *state;

    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        if (i > 0)
            desk_take_case(bench->desk, cases[i]);
        size_t count = desk_model(bench->desk)->boxes.count;

        for (size_t n = 0; n < count; n++) {
            int64_t box = desk_model(bench->desk)->boxes.at[n].key;

            if (desk_model(bench->desk)->boxes.at[n].frame == FRAME_CUSHION ||
                desk_model(bench->desk)->boxes.at[n].frame == FRAME_BOARD)
                continue;
            DONE(desk_mirror(bench->desk, box, "I1", note));
            int64_t image = box_named(bench->desk, "I1");
            DONE(desk_mirror(bench->desk, image, "I2", note));
            assert_same_box(bench->desk, box, box_named(bench->desk, "I2"));
            assert_figures_are_alike(bench->desk, box, image);
            char label[STORE_LABEL];
            DONE(desk_undo(bench->desk, label, note));
            DONE(desk_undo(bench->desk, label, note));
        }
    }
}

#define MIRROR_TEST(test) cmocka_unit_test_setup_teardown(test, begin, end)

int main(void)
{
    const struct CMUnitTest tests[] = {
        MIRROR_TEST(the_image_of_the_left_wing_is_the_right_wing),
        MIRROR_TEST(an_image_is_one_edit),
        MIRROR_TEST(a_box_that_is_not_there_has_no_image),
        MIRROR_TEST(an_image_of_an_image_is_the_box_itself),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
