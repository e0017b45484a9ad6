/* Faces of the worked examples: which marks they carry, and how they look. */
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

static const struct join *join_of(const struct scene *scene)
{
    return MODEL_FIND(&scene->piece.model, join, scene->join);
}

static size_t count(const struct drawing *drawing, enum mark_kind kind)
{
    size_t found = 0;
    for (size_t i = 0; i < drawing->marks.count; i++)
        found += drawing->marks.at[i].kind == kind;
    return found;
}

static const struct mark *first(const struct drawing *drawing, enum mark_kind kind)
{
    for (size_t i = 0; i < drawing->marks.count; i++) {
        if (drawing->marks.at[i].kind == kind)
            return &drawing->marks.at[i];
    }
    fail_msg("no mark of kind %d", (int)kind);
    return NULL;
}

static void draw(struct scene *scene, int64_t box, int64_t side)
{
    sketched_face(&scene->sketched, &scene->drawing, scene->piece.plan, box, side);
}

struct limiting {
    struct scene *scene;
    int64_t side, layer;
};

static void run_limit(void *context)
{
    struct limiting *limiting = context;
    draw_face_limit(&limiting->scene->drawing, limiting->scene->piece.plan, limiting->side,
                    ENTITY_layer, limiting->layer, &limiting->scene->sketched.arena);
}

static void limit(struct scene *scene, int64_t side, int64_t layer)
{
    struct limiting limiting = {scene, side, layer};
    assert_true(arena_try(&scene->sketched.arena, run_limit, &limiting));
}

/* Heads on the side that the screws come from, tips on the side that they bite in. */
static void both_faces_of_a_join_show_its_points(void **state)
{
    struct scene *scene = *state;
    const struct join *join = join_of(scene);
    size_t points = joined_junction(&scene->piece, scene->join)->point_count;
    draw(scene, join->box_a, join->side_a);
    assert_int_equal(count(&scene->drawing, MARK_POINT), points);
    draw(scene, join->box_b, join->side_b);
    assert_int_equal(count(&scene->drawing, MARK_TIP), points);
    assert_int_equal(count(&scene->drawing, MARK_POINT), 0);
}

static void other_faces_show_none_of_them(void **state)
{
    struct scene *scene = *state;
    const struct join *join = join_of(scene);
    draw(scene, join->box_a, SIDE_FRONT);
    assert_int_equal(count(&scene->drawing, MARK_POINT), 0);
    assert_int_equal(count(&scene->drawing, MARK_PATCH), 0);
}

static void bare_wood_has_no_patches(void **state)
{
    struct scene *scene = *state;
    const struct join *join = join_of(scene);
    draw(scene, join->box_a, join->side_a);
    assert_int_equal(count(&scene->drawing, MARK_PATCH), 0);
}

/* Two flat frames one behind the other, screwed through the first from its padded front. */
static int64_t join_flat_frames(struct joined *piece)
{
    joined_end(piece);
    joined_start(piece, 2.5);
    int64_t front = joined_box(piece, FRAME_LADDER, 24, 2.5, 24)->key;
    int64_t behind = joined_box(piece, FRAME_LADDER, 24, 2.5, 24)->key;
    int64_t join = joined_join(piece, front, SIDE_BACK, behind, SIDE_FRONT)->key;
    joined_layer(piece, front, LAYER_BATTING, SHAPE_FLAT, SIDE_FRONT);
    joined_plan(piece);
    return join;
}

static void a_patch_lies_about_each_head_under_padding(void **state)
{
    struct scene *scene = *state;
    scene->join = join_flat_frames(&scene->piece);
    const struct junction *junction = joined_junction(&scene->piece, scene->join);
    assert_true(junction->point_count > 0);
    draw(scene, join_of(scene)->box_a, SIDE_FRONT);
    assert_int_equal(count(&scene->drawing, MARK_PATCH), junction->point_count);
    assert_int_equal(count(&scene->drawing, MARK_POINT), junction->point_count);
    const struct area *bare = &first(&scene->drawing, MARK_PATCH)->area;
    const struct area *point = &first(&scene->drawing, MARK_POINT)->area;
    assert_int_equal(bare->u1 - bare->u0, junction->patch);
    assert_int_equal(bare->u0 + junction->patch / 2, point->u0);
    assert_int_equal(bare->v0 + junction->patch / 2, point->v0);
}

static void padding_shows_where_it_stops_short_of_an_edge(void **state)
{
    struct scene *scene = *state;
    int64_t box = join_of(scene)->box_a;
    struct layer *layer = joined_layer(&scene->piece, box, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT);
    layer->v = IN(8);
    joined_plan(&scene->piece);
    draw(scene, box, SIDE_FRONT);
    assert_int_equal(count(&scene->drawing, MARK_PADDING), 1);
    const struct area *stop = &first(&scene->drawing, MARK_PADDING)->area;
    assert_int_equal(stop->v0, IN(8));
    assert_int_equal(stop->v1, IN(8));
    assert_int_equal(stop->u0, 0);
    assert_int_equal(stop->u1, scene->drawing.bounds.u1);
}

static void padding_over_the_whole_face_does_not_show(void **state)
{
    struct scene *scene = *state;
    int64_t box = join_of(scene)->box_a;
    joined_layer(&scene->piece, box, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT);
    joined_plan(&scene->piece);
    draw(scene, box, SIDE_FRONT);
    assert_int_equal(count(&scene->drawing, MARK_PADDING), 0);
}

static void a_box_that_is_not_there_gives_an_empty_drawing(void **state)
{
    struct scene *scene = *state;
    draw(scene, 99999, SIDE_FRONT);
    assert_int_equal(scene->drawing.marks.count, 0);
    sketched_raster(&scene->sketched, &scene->drawing, 20, 40, RASTER_LINES);
    assert_sketched(&scene->sketched, "");
}

static void the_head_of_the_bed_looks_like_its_frame(void **state)
{
    struct scene *scene = *state;
    draw(scene, join_of(scene)->box_a, SIDE_FRONT);
    sketched_raster(&scene->sketched, &scene->drawing, 14, 32, RASTER_LINES);
    assert_sketched(&scene->sketched, "┌┬$──────┬┬───#────┬┬──────$┬┐\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "││$      ││   #    ││      $││\n"
                                      "│├$────┬┬┴┴───#────┴┴──────$┤│\n"
                                      "││$    ││     #            $││\n"
                                      "└┴$────┴┴─────#────────────$┴┘\n");
}

/* Cloth of 54 in with seams of 1/2 in: a centre of 53 in, half of it on each side of the middle of
 * 63 in (the worked example's sum). */
static void the_seams_of_the_cover_stand_where_its_centre_ends(void **state)
{
    struct scene *scene = *state;
    draw(scene, join_of(scene)->box_a, SIDE_FRONT);
    assert_int_equal(count(&scene->drawing, MARK_CLOTH_SEAM), 2);
    assert_int_equal(first(&scene->drawing, MARK_CLOTH_SEAM)->area.u0, IN(31.5 - 26.5));
    draw(scene, join_of(scene)->box_a, SIDE_LEFT);
    assert_int_equal(count(&scene->drawing, MARK_CLOTH_SEAM), 0);
}

/* The foam over the lower edge begins 8 in up: the limits of what is selected are those of its
 * area, on its own face alone. */
static void what_is_selected_shows_where_it_ends(void **state)
{
    struct scene *scene = *state;
    int64_t box = join_of(scene)->box_a;
    struct layer *layer = joined_layer(&scene->piece, box, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT);
    layer->v = IN(8);
    joined_plan(&scene->piece);
    draw(scene, box, SIDE_FRONT);
    limit(scene, SIDE_FRONT, layer->key);
    assert_int_equal(count(&scene->drawing, MARK_LIMIT), 4);
    assert_int_equal(first(&scene->drawing, MARK_LIMIT)->area.v0, IN(8));
    draw(scene, box, SIDE_BACK);
    limit(scene, SIDE_BACK, layer->key);
    assert_int_equal(count(&scene->drawing, MARK_LIMIT), 0);
}

static void its_mating_face_shows_six_holes_one_above_the_other(void **state)
{
    struct scene *scene = *state;
    const struct join *join = join_of(scene);
    draw(scene, join->box_a, join->side_a);
    sketched_raster(&scene->sketched, &scene->drawing, 24, 32, RASTER_LINES);
    assert_sketched(&scene->sketched, "┌─┐\n"
                                      "o─┤\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "o │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "o │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "o │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "│ │\n"
                                      "o │\n"
                                      "├─┤\n"
                                      "├─┤\n"
                                      "│ │\n"
                                      "o─┤\n"
                                      "└─┘\n");
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(both_faces_of_a_join_show_its_points),
        FACT(other_faces_show_none_of_them),
        FACT(bare_wood_has_no_patches),
        FACT(a_patch_lies_about_each_head_under_padding),
        FACT(padding_shows_where_it_stops_short_of_an_edge),
        FACT(padding_over_the_whole_face_does_not_show),
        FACT(a_box_that_is_not_there_gives_an_empty_drawing),
        FACT(the_head_of_the_bed_looks_like_its_frame),
        FACT(the_seams_of_the_cover_stand_where_its_centre_ends),
        FACT(what_is_selected_shows_where_it_ends),
        FACT(its_mating_face_shows_six_holes_one_above_the_other),
    };
    int failed = cmocka_run_group_tests_name("face", tests, NULL, NULL);
    return failed ? 1 : 0;
}
