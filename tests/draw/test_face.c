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
    assert_int_equal(marks_of(&scene->drawing, MARK_POINT), points);
    draw(scene, join->box_b, join->side_b);
    assert_int_equal(marks_of(&scene->drawing, MARK_TIP), points);
    assert_int_equal(marks_of(&scene->drawing, MARK_POINT), 0);
}

static void other_faces_show_none_of_them(void **state)
{
    struct scene *scene = *state;
    const struct join *join = join_of(scene);
    draw(scene, join->box_a, SIDE_FRONT);
    assert_int_equal(marks_of(&scene->drawing, MARK_POINT), 0);
    assert_int_equal(marks_of(&scene->drawing, MARK_PATCH), 0);
}

static void bare_wood_has_no_patches(void **state)
{
    struct scene *scene = *state;
    const struct join *join = join_of(scene);
    draw(scene, join->box_a, join->side_a);
    assert_int_equal(marks_of(&scene->drawing, MARK_PATCH), 0);
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
    assert_int_equal(marks_of(&scene->drawing, MARK_PATCH), junction->point_count);
    assert_int_equal(marks_of(&scene->drawing, MARK_POINT), junction->point_count);
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
    assert_int_equal(marks_of(&scene->drawing, MARK_PADDING), 1);
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
    assert_int_equal(marks_of(&scene->drawing, MARK_PADDING), 0);
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
    assert_int_equal(marks_of(&scene->drawing, MARK_CLOTH_SEAM), 2);
    assert_int_equal(first(&scene->drawing, MARK_CLOTH_SEAM)->area.u0, IN(31.5 - 26.5));
    draw(scene, join_of(scene)->box_a, SIDE_LEFT);
    assert_int_equal(marks_of(&scene->drawing, MARK_CLOTH_SEAM), 0);
}

static int64_t add_cover(struct joined *piece, int64_t box)
{
    return joined_layer(piece, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT)->key;
}

/* Of a cloth of 54 in, sewn with 1/2 in, 53 in of a full width show: 250 in take five widths, and
 * the seams stand 26-1/2 and 79-1/2 to both sides of the middle. */
static void five_widths_have_four_seams_a_full_width_apart(void **state)
{
    struct scene *scene = *state;
    int64_t at[4];
    size_t found = 0;
    joined_end(&scene->piece);
    joined_start(&scene->piece, 2.5);
    int64_t box = joined_box(&scene->piece, FRAME_LADDER, 250, 3, 40)->key;
    add_cover(&scene->piece, box);
    joined_plan(&scene->piece);
    draw(scene, box, SIDE_FRONT);
    assert_int_equal(marks_of(&scene->drawing, MARK_CLOTH_SEAM), 4);
    for (size_t i = 0; i < scene->drawing.marks.count; i++) {
        const struct mark *mark = &scene->drawing.marks.at[i];
        if (mark->kind == MARK_CLOTH_SEAM)
            at[found++] = mark->area.u0;
    }
    assert_int_equal(at[0], IN(125 - 26.5));
    assert_int_equal(at[1], IN(125 + 26.5));
    assert_int_equal(at[2], IN(125 - 79.5));
    assert_int_equal(at[3], IN(125 + 79.5));
}

/* Three boxes of 30, 60 and 30 in side by side: 26-1/2 from the middle of all is 3-1/2 in from
 * both sides of the middle one, and none falls on the outer ones. */
static void a_cover_over_three_boxes_shows_its_seams_on_the_box_where_they_lie(void **state)
{
    static const double widths[] = {30, 60, 30};
    struct scene *scene = *state;
    struct joined *piece = &scene->piece;
    int64_t boxes[3];
    joined_end(piece);
    joined_start(piece, 2.5);
    int64_t group = MODEL_ADD(&piece->model, group)->key;
    for (int i = 0; i < 3; i++) {
        boxes[i] = joined_box(piece, FRAME_LADDER, widths[i], 3, 40)->key;
        struct group_box *in = MODEL_ADD(&piece->model, group_box);
        in->group = group;
        in->box = boxes[i];
    }
    joined_join(piece, boxes[0], SIDE_RIGHT, boxes[1], SIDE_LEFT);
    joined_join(piece, boxes[1], SIDE_RIGHT, boxes[2], SIDE_LEFT);
    struct layer *cover = joined_layer(piece, 0, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
    cover->group = group;
    joined_plan(piece);
    draw(scene, boxes[1], SIDE_FRONT);
    assert_int_equal(marks_of(&scene->drawing, MARK_CLOTH_SEAM), 2);
    assert_int_equal(first(&scene->drawing, MARK_CLOTH_SEAM)->area.u0, IN(3.5));
    draw(scene, boxes[0], SIDE_FRONT);
    assert_int_equal(marks_of(&scene->drawing, MARK_CLOTH_SEAM), 0);
    draw(scene, boxes[2], SIDE_FRONT);
    assert_int_equal(marks_of(&scene->drawing, MARK_CLOTH_SEAM), 0);
}

static int64_t edge_height_at(const struct drawing *drawing, int64_t u)
{
    int64_t height = -1;
    for (size_t i = 0; i < drawing->marks.count; i++) {
        const struct mark *mark = &drawing->marks.at[i];
        if (mark->kind == MARK_EDGE && mark->area.u1 == u && mark->area.v1 > height)
            height = mark->area.v1;
    }
    return height;
}

/* An arch of 6 in over 48: its ends lie 6 in below its middle; a quarter of the way in a circle
 * through the three, of radius (24^2 + 6^2) / 12 = 51 in, is 51 - sqrt(51^2 - 12^2) = 1.432 in
 * below it. */
static void an_arched_face_shows_its_arch(void **state)
{
    struct scene *scene = *state;
    joined_end(&scene->piece);
    joined_start(&scene->piece, 2.5);
    struct box *box = joined_box(&scene->piece, FRAME_LADDER, 48, 3, 40);
    int64_t key = box->key;
    box->outline = OUTLINE_ARCH;
    box->rise = IN(6);
    joined_plan(&scene->piece);
    draw(scene, key, SIDE_FRONT);
    assert_int_equal(marks_of(&scene->drawing, MARK_FACE), 0);
    assert_int_equal(edge_height_at(&scene->drawing, 0), IN(34));
    assert_int_equal(edge_height_at(&scene->drawing, IN(24)), IN(40));
    assert_int_equal(edge_height_at(&scene->drawing, IN(48)), IN(34));
    assert_in_range(edge_height_at(&scene->drawing, IN(12)), IN(40 - 1.44), IN(40 - 1.42));
    draw(scene, key, SIDE_BACK); /* is cut to it as well */
    assert_int_equal(edge_height_at(&scene->drawing, 0), IN(34));
    draw(scene, key, SIDE_LEFT);
    assert_int_equal(marks_of(&scene->drawing, MARK_FACE), 1);
}

/* Cloth of 54 on a head of 80: its seams end on the arch, and no corner of the panel stands over
 * it. 13-1/2 from the ends, a circle of radius (40^2 + 8^2) / 16 = 104 lies sqrt(104^2 - 26.5^2) -
 * 96 = 4.567 over those. */
static void what_is_on_an_arched_face_ends_at_the_arch(void **state)
{
    struct scene *scene = *state;
    joined_end(&scene->piece);
    joined_start(&scene->piece, 2.5);
    struct box *box = joined_box(&scene->piece, FRAME_LADDER, 80, 3, 40);
    int64_t key = box->key;
    box->outline = OUTLINE_ARCH;
    box->rise = IN(8);
    joined_facing(&scene->piece, key, SIDE_FRONT, joined_sheet(&scene->piece, 0.5));
    joined_layer(&scene->piece, key, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
    ((struct stock *)model_find(&scene->piece.model, ENTITY_stock, scene->piece.cloth))->width =
        IN(54);
    joined_plan(&scene->piece);
    draw(scene, key, SIDE_FRONT);
    assert_int_equal(marks_of(&scene->drawing, MARK_PANEL), 0);
    assert_int_equal(marks_of(&scene->drawing, MARK_CLOTH_SEAM), 2);
    for (size_t i = 0; i < scene->drawing.marks.count; i++) {
        const struct mark *mark = &scene->drawing.marks.at[i];
        if (mark->kind == MARK_CLOTH_SEAM)
            assert_in_range(mark->area.v1, IN(32 + 4.55), IN(32 + 4.58));
    }
}

/* Elastic webbing on a seat of 24 x 21 lies over the shorter way alone. */
static void webbing_shows_strip_by_strip(void **state)
{
    struct scene *scene = *state;
    struct joined *piece = &scene->piece;
    joined_end(piece);
    joined_start(piece, 1.5);
    int64_t box = joined_box(piece, FRAME_CRATE, 24, 21, 6)->key;
    struct stock *web = MODEL_ADD(&piece->model, stock);
    int64_t stock = web->key;
    web->name = "webbing";
    web->kind = STOCK_STRIP;
    web->nature = NATURE_ELASTIC;
    joined_facing(piece, box, SIDE_TOP, stock)->kind = FACING_WEBBING;
    joined_plan(piece);
    assert_int_equal(piece->plan->webbings.count, 1);
    draw(scene, box, SIDE_TOP);
    assert_true(piece->plan->webbings.at[0].up > 2);
    assert_int_equal(marks_of(&scene->drawing, MARK_WEB), piece->plan->webbings.at[0].up);
    const struct area *strip = &first(&scene->drawing, MARK_WEB)->area;
    assert_int_equal(strip->u0, strip->u1);
    assert_int_equal(strip->v1 - strip->v0, IN(21));
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
    assert_int_equal(marks_of(&scene->drawing, MARK_LIMIT), 4);
    assert_int_equal(first(&scene->drawing, MARK_LIMIT)->area.v0, IN(8));
    draw(scene, box, SIDE_BACK);
    limit(scene, SIDE_BACK, layer->key);
    assert_int_equal(marks_of(&scene->drawing, MARK_LIMIT), 0);
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
        FACT(five_widths_have_four_seams_a_full_width_apart),
        FACT(a_cover_over_three_boxes_shows_its_seams_on_the_box_where_they_lie),
        FACT(an_arched_face_shows_its_arch),
        FACT(what_is_on_an_arched_face_ends_at_the_arch),
        FACT(webbing_shows_strip_by_strip),
        FACT(what_is_selected_shows_where_it_ends),
        FACT(its_mating_face_shows_six_holes_one_above_the_other),
    };
    int failed = cmocka_run_group_tests_name("face", tests, NULL, NULL);
    return failed ? 1 : 0;
}
