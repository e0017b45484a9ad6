#include "carpenter.h"

#include "base/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

int64_t carpenter_stock(struct carpenter *bench, const char *name, enum stock_word kind,
                        int64_t thickness, int64_t width)
{
    struct stock *stock = MODEL_ADD(&bench->model, stock);

    stock->name = name;
    stock->kind = (int64_t)kind;
    stock->thickness = thickness;
    stock->width = width;
    return stock->key;
}

int64_t carpenter_screw(struct carpenter *bench, int64_t gauge, int64_t length)
{
    int64_t key = carpenter_stock(bench, "screw", STOCK_SCREW, 0, 0);
    struct stock *stock = model_find(&bench->model, ENTITY_stock, key);

    stock->gauge = gauge;
    stock->length = length;
    return key;
}

static void offer_sheet(struct carpenter *bench, int64_t sheet)
{
    struct offer *offer = MODEL_ADD(&bench->model, offer);

    offer->stock = sheet;
    offer->length = IN(96);
    offer->width = IN(48);
}

int carpenter_begin(void **state)
{
    struct carpenter *bench = calloc(1, sizeof *bench);

    if (!bench)
        return -1;
    *state = bench;
    arena_init(&bench->facts);
    arena_init(&bench->made);
    bench->facts.escape = &bench->escape;
    if (setjmp(bench->escape))
        return -1;
    model_init(&bench->model, &bench->facts);
    bench->model.build.key = 1;
    bench->model.build.name = "wood";
    bench->stick_2x2 = carpenter_stock(bench, "2x2", STOCK_STICK, IN(1.5), IN(1.5));
    bench->stick_2x3 = carpenter_stock(bench, "2x3", STOCK_STICK, IN(1.5), IN(2.5));
    bench->sheet_1_2 = carpenter_stock(bench, "1/2", STOCK_SHEET, IN(0.5), 0);
    bench->sheet_3_4 = carpenter_stock(bench, "3/4", STOCK_SHEET, IN(0.75), 0);
    offer_sheet(bench, bench->sheet_1_2);
    offer_sheet(bench, bench->sheet_3_4);
    carpenter_screw(bench, 8, IN(3));
    carpenter_screw(bench, 8, IN(1.25));
    return 0;
}

int carpenter_end(void **state)
{
    struct carpenter *bench = *state;

    arena_release(&bench->facts);
    arena_release(&bench->made);
    free(bench);
    return 0;
}

int64_t carpenter_box(struct carpenter *bench, const char *name, enum frame_word frame,
                      struct vector size, int64_t stick)
{
    struct box *box = MODEL_ADD(&bench->model, box);

    box->name = name;
    box->frame = (int64_t)frame;
    box->width = size.x;
    box->depth = size.y;
    box->height = size.z;
    box->stick = stick;
    return box->key;
}

struct box *carpenter_box_of(struct carpenter *bench, int64_t box)
{
    return model_find(&bench->model, ENTITY_box, box);
}

struct facing *carpenter_face(struct carpenter *bench, int64_t box, enum side_word side,
                              int64_t stock)
{
    struct facing *facing = MODEL_ADD(&bench->model, facing);

    facing->box = box;
    facing->side = (int64_t)side;
    facing->stock = stock;
    return facing;
}

struct member *carpenter_member(struct carpenter *bench, int64_t box, enum member_word kind,
                                enum axis_word axis, struct vector at, int64_t length)
{
    struct member *member = MODEL_ADD(&bench->model, member);

    member->box = box;
    member->kind = (int64_t)kind;
    member->axis = (int64_t)axis;
    member->x = at.x;
    member->y = at.y;
    member->z = at.z;
    member->length = length;
    return member;
}

struct join *carpenter_join(struct carpenter *bench, int64_t a, enum side_word side_a, int64_t b,
                            enum side_word side_b)
{
    struct join *join = MODEL_ADD(&bench->model, join);

    join->name = "J";
    join->box_a = a;
    join->side_a = (int64_t)side_a;
    join->box_b = b;
    join->side_b = (int64_t)side_b;
    return join;
}

void carpenter_plan(struct carpenter *bench)
{
    arena_release(&bench->made);
    assert_int_equal(plan_make(&bench->model, &bench->made, &bench->plan), FAULT_NONE);
}

int64_t carpenter_joints(const struct carpenter *bench, int64_t box)
{
    int64_t count = 0;

    for (size_t i = 0; i < bench->plan->joints.count; i++)
        count += bench->plan->joints.at[i].box == box;
    return count;
}

int64_t carpenter_screws(const struct carpenter *bench, int64_t box, enum screw_use use)
{
    int64_t count = 0;

    for (size_t i = 0; i < bench->plan->screws.count; i++)
        count += bench->plan->screws.at[i].box == box && bench->plan->screws.at[i].use == use;
    return count;
}

int64_t carpenter_panel_screws(const struct carpenter *bench, int64_t facing)
{
    const struct plan *plan = bench->plan;
    int64_t count = 0;

    for (size_t i = 0; i < plan->screws.count; i++)
        count += plan->screws.at[i].use == SCREW_PANEL &&
                 plan->panels.at[plan->screws.at[i].of].facing == facing;
    return count;
}

int carpenter_findings(const struct carpenter *bench, int kind)
{
    int count = 0;

    for (size_t i = 0; i < bench->plan->findings.count; i++)
        count += bench->plan->findings.at[i].kind == kind;
    return count;
}

const struct plan_member *carpenter_labelled(const struct carpenter *bench, const char *label)
{
    for (size_t i = 0; i < bench->plan->members.count; i++)
        if (strcmp(bench->plan->members.at[i].label, label) == 0)
            return &bench->plan->members.at[i];
    fail_msg("no member %s", label);
    return NULL;
}

void assert_screws_called(const struct carpenter *bench, enum screw_use use, const char *called)
{
    const struct plan *plan = bench->plan;
    size_t count = 0;

    for (size_t i = 0; i < plan->screws.count; i++) {
        struct text text;

        if (plan->screws.at[i].use != use)
            continue;
        text_init(&text);
        plan_screw_text(plan, &plan->screw_kinds.at[plan->screws.at[i].kind], &text);
        assert_string_equal(text_string(&text), called);
        text_release(&text);
        count++;
    }
    assert_true(count > 0);
}

void assert_told(const struct carpenter *bench, int kind, const char *sentence)
{
    struct text text;

    assert_int_equal(carpenter_findings(bench, kind), 1);
    text_init(&text);
    for (size_t i = 0; i < bench->plan->findings.count; i++)
        if (bench->plan->findings.at[i].kind == kind)
            plan_finding_text(bench->plan, &bench->plan->findings.at[i], &text);
    assert_string_equal(text_string(&text), sentence);
    text_release(&text);
}

void assert_solid(const struct solid *solid, struct vector low, struct vector high)
{
    assert_int_equal(solid->low.x, low.x);
    assert_int_equal(solid->low.y, low.y);
    assert_int_equal(solid->low.z, low.z);
    assert_int_equal(solid->high.x, high.x);
    assert_int_equal(solid->high.y, high.y);
    assert_int_equal(solid->high.z, high.z);
}
