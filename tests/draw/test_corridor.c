/* The way to a head, cut open: what shows, and where the driver's room ends. */
#include "sketched.h"

#include "joined.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

struct scene {
    struct joined piece;
    struct sketched sketched;
    struct drawing drawing;
    int64_t join;
};

static int begin(void **state)
{
    static struct scene scene;
    scene.join = joined_headboard(&scene.piece);
    sketched_begin(&scene.sketched);
    *state = &scene;
    return 0;
}

static int end(void **state)
{
    struct scene *scene = *state;
    sketched_end(&scene->sketched);
    joined_end(&scene->piece);
    return 0;
}

static size_t point_index(const struct scene *scene, size_t hole)
{
    return joined_junction(&scene->piece, scene->join)->first_point + hole;
}

static void run_corridor(void *context)
{
    struct scene *scene = context;
    draw_corridor(&scene->drawing, scene->piece.plan, point_index(scene, 2),
                  &scene->sketched.arena);
}

static void draw(struct scene *scene)
{
    assert_true(arena_try(&scene->sketched.arena, run_corridor, scene));
}

static const struct area *only(const struct drawing *drawing, enum mark_kind kind)
{
    const struct area *found = NULL;
    for (size_t i = 0; i < drawing->marks.count; i++) {
        if (drawing->marks.at[i].kind != kind)
            continue;
        assert_null(found);
        found = &drawing->marks.at[i].area;
    }
    assert_non_null(found);
    return found;
}

/* A screw of 3 in, u counted from its tip; what the driver needs in line follows its head. */
static void the_driver_begins_at_the_head_and_is_as_long_as_it_needs(void **state)
{
    struct scene *scene = *state;
    const struct junction *junction = joined_junction(&scene->piece, scene->join);
    draw(scene);
    const struct area *driver = only(&scene->drawing, MARK_DRIVER);
    assert_int_equal(only(&scene->drawing, MARK_POINT)->u0, IN(3));
    assert_int_equal(only(&scene->drawing, MARK_TIP)->u0, 0);
    assert_int_equal(driver->u0, IN(3));
    assert_int_equal(driver->u1, IN(3) + junction->room_needed);
    assert_int_equal(scene->drawing.bounds.u1, driver->u1);
}

/* The bay of the headboard is open at its back: the front is up, and nothing meets the driver. */
static void nothing_stands_in_a_free_way(void **state)
{
    struct scene *scene = *state;
    draw(scene);
    assert_false(drawing_has(&scene->drawing, MARK_BLOCKER));
    assert_int_equal(draw_corridor_up(scene->piece.plan, point_index(scene, 2)), SIDE_FRONT);
}

/* An upright set by hand into the bay, so near that no tool has room. */
static void a_member_in_the_way_is_marked_where_it_meets_the_driver(void **state)
{
    struct scene *scene = *state;
    struct join *join = &scene->piece.model.joins.at[0];
    struct member *member = MODEL_ADD(&scene->piece.model, member);
    member->box = join->box_a;
    member->kind = MEMBER_UPRIGHT;
    member->axis = AXIS_Z;
    member->x = IN(6);
    member->z = IN(8.75);
    member->length = IN(45.75);
    join->head = HEAD_A;
    joined_plan(&scene->piece);
    draw(scene);
    assert_true(drawing_has(&scene->drawing, MARK_BLOCKER));
}

static void a_picture_of_it_fits_its_cells(void **state)
{
    struct scene *scene = *state;
    draw(scene);
    sketched_raster(&scene->sketched, &scene->drawing, 10, 41, RASTER_LINES);
    assert_sketched(&scene->sketched, "┌─────┐\n"
                                      "│     ├─────────────────────────────────┐\n"
                                      "│     ├──┬──────────────────────────────┘\n"
                                      "│     │  ~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~\n"
                                      "│ x******o~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~\n"
                                      "│     ├──~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~\n"
                                      "│     │\n"
                                      "│     │\n"
                                      "└─────┘\n");
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(the_driver_begins_at_the_head_and_is_as_long_as_it_needs),
        FACT(nothing_stands_in_a_free_way),
        FACT(a_member_in_the_way_is_marked_where_it_meets_the_driver),
        FACT(a_picture_of_it_fits_its_cells),
    };
    int failed = cmocka_run_group_tests_name("corridor", tests, NULL, NULL);
    return failed ? 1 : 0;
}
