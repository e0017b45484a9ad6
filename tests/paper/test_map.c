/*
 * Hole maps of the worked examples. Places, screws and spacers are those that the examples were
 * reckoned with by hand, each with the line that it comes from; the whole sheets stand beside this
 * file.
 */
#include "golden.h"
#include "joined.h"
#include "work.h"

#include "base/show.h"
#include "paper/sheets.h"
#include "plan/geometry.h"
#include "plan/hole.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <stdio.h>
#include <string.h>

#define INCH(x) ((int64_t)((x)*8128.0))

static const struct junction *junction_named(const struct work_bench *bench, const char *name)
{
    const struct junction *junction =
        plan_junction(bench->plan, model_key_named(&bench->model, ENTITY_join, name));

    assert_non_null(junction);
    return junction;
}

static const struct plan_point *point_of(const struct work_bench *bench, const char *join,
                                         size_t index)
{
    const struct junction *junction = junction_named(bench, join);

    assert_true(index < junction->point_count);
    return &bench->plan->points.at[junction->first_point + index];
}

/* The side of the box that a distance is taken from. */
static int64_t from_side(const struct work_bench *bench, const char *join, bool of_b, int which)
{
    const struct junction *junction = junction_named(bench, join);
    struct join_end end;

    assert_true(hole_end(bench->plan, junction, of_b, &end));
    return edge_side(end.side, hole_edges(point_of(bench, join, 0), of_b)[which].edge);
}

static void assert_row(struct work_bench *bench, const char *join, const char *row)
{
    struct text out;

    text_init(&out);
    sheet_join_map(&out, bench->plan, junction_named(bench, join));
    if (!strstr(text_string(&out), row))
        fail_msg("\"%s\" is not on the map:\n%s", row, text_string(&out));
    text_release(&out);
}

/* ---- the headboard ---- */

/* Worked example of the wing headboard, computed by hand, "Hole map J1": y from the back edge 3/4
 * in; z from bottom 3, 13, 23, 33, 43, 53; in mm 76, 330, 584, 838, 1092, 1346. On L's inner face y
 * from its back edge 3/4 in. */
static void holes_of_the_headboard_stand_where_the_example_has_them(void **state)
{
    static const int inches[] = {3, 13, 23, 33, 43, 53};
    static const int millimetres[] = {76, 330, 584, 838, 1092, 1346};
    static const char *const joins[] = {"J1", "J2"};
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    for (size_t j = 0; j < 2; j++) {
        assert_int_equal(junction_named(&bench, joins[j])->point_count, 6);
        for (int end = 0; end < 2; end++) {
            assert_int_equal(from_side(&bench, joins[j], end, 0), SIDE_BACK);
            assert_int_equal(from_side(&bench, joins[j], end, 1), SIDE_BOTTOM);
        }
        for (size_t i = 0; i < 6; i++) {
            char row[80];

            snprintf(row, sizeof row, "%6zu   3/4  19  %6d  %4d  [ ]", i + 1, inches[i],
                     millimetres[i]);
            assert_row(&bench, joins[j], row);
        }
    }
    work_end(&bench);
}

/* Worked example of the wing headboard, computed by hand, "Joins J1, J2": #10x3 through 1.5 stile +
 * 1/8 cloth, bite 1.375; heads inside C on the end stile, seen from the back bay. The pilot ends
 * 1/8 before the tip (common practice, no source). */
static void bores_of_the_headboard_follow_from_its_screws(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    struct bore bore = hole_bore(bench.plan, point_of(&bench, "J1", 0));
    assert_non_null(bore.kind);
    assert_int_equal(bore.kind->gauge, 10);
    assert_int_equal(bore.kind->length, INCH(3));
    assert_int_equal(bore.clearance_depth, INCH(1.5));
    assert_int_equal(bore.pilot_depth, INCH(1.25));
    assert_row(&bench, "J1", "  seen        from inside box C, back open\n");
    assert_row(&bench, "J1", "  spacer      1/8 in in the joint for the dry fit\n");
    assert_row(&bench, "J1", "no staple or nail nearer than 3/4 in\n");
    work_end(&bench);
}

/* Worked example of the wing headboard, computed by hand, "Openings": no staple line covers a head;
 * only the back lining, which shuts the bay, comes after the last join (common practice, no
 * source). */
static void no_cover_of_the_headboard_is_left_open(void **state)
{
    static const char *const joins[] = {"J1", "J2"};
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    for (size_t i = 0; i < 2; i++)
        assert_row(&bench, joins[i], "  left open   lining of C is put on after it\n");
    work_end(&bench);
}

static void maps_of_mirrored_wings_are_tables_of_their_own(void **state)
{
    struct work_bench bench;
    struct text out;

    (void)state;
    work_case(&bench, "headboard");
    text_init(&out);
    sheet_map(&out, bench.plan);
    assert_non_null(strstr(text_string(&out), "On L (left), its right face"));
    assert_non_null(strstr(text_string(&out), "On R (right), its left face"));
    assert_non_null(strstr(text_string(&out), "L is the left one; R has its own map"));
    assert_non_null(strstr(text_string(&out), "R is the right one; L has its own map"));
    assert_golden("map-inch", text_string(&out));
    text_clear(&out);
    bench.model.build.units = UNITS_WORD_MM;
    work_plan(&bench);
    sheet_map(&out, bench.plan);
    assert_golden("map-mm", text_string(&out));
    text_release(&out);
    work_end(&bench);
}

/* ---- the banquette ---- */

/* Worked example of the banquette, computed by hand, "Join J1": "Holes on A front, from A's left
 * end and floor: x 3.5, 8.75, 14.0 at z 13.5 and z 0.75"; through B's end cross 1.5, #10x3. B's own
 * end starts at its back, where A's left end is. */
static void holes_of_the_banquette_stand_where_the_example_has_them(void **state)
{
    static const char *const rows[] = {" 3-1/2   89     3/4   19", " 8-3/4  222     3/4   19",
                                       "    14  356     3/4   19", " 3-1/2   89  13-1/2  343",
                                       " 8-3/4  222  13-1/2  343", "    14  356  13-1/2  343"};
    struct work_bench bench;

    (void)state;
    work_case(&bench, "banquette");
    assert_int_equal(junction_named(&bench, "J1")->point_count, 6);
    for (int end = 0; end < 2; end++)
        assert_int_equal(from_side(&bench, "J1", end, 1), SIDE_BOTTOM);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_row(&bench, "J1", rows[i]);
    work_end(&bench);
}

/* ---- the open wing ---- */

/* Worked example of the open wing, computed by hand, "Join": 6 screws at y 1.25, z 3, 13, 23, 33,
 * 43, 53; heads on the outer face of W's rear stile; #10 x 3-1/2, through 1.5 stile + .5 ply,
 * bite 1.375. */
static void holes_of_the_open_wing_stand_where_the_example_has_them(void **state)
{
    static const double heights[] = {3, 13, 23, 33, 43, 53};
    struct joined piece;

    (void)state;
    struct open_wing wing = joined_open_wing(&piece);
    const struct junction *junction = plan_junction(piece.plan, wing.join);
    assert_int_equal(junction->point_count, 6);
    for (int end = 0; end < 2; end++) {
        struct join_end at;

        assert_true(hole_end(piece.plan, junction, end, &at));
        for (size_t i = 0; i < 6; i++) {
            const struct from_edge *edges =
                hole_edges(&piece.plan->points.at[junction->first_point + i], end);

            assert_int_equal(edge_side(at.side, edges[0].edge), SIDE_BACK);
            assert_int_equal(edge_side(at.side, edges[1].edge), SIDE_BOTTOM);
            assert_int_equal(edges[0].distance, INCH(1.25));
            assert_int_equal(edges[1].distance, INCH(heights[i]));
        }
    }
    struct bore bore = hole_bore(piece.plan, &piece.plan->points.at[junction->first_point]);
    assert_int_equal(bore.kind->length, INCH(3.5));
    assert_int_equal(bore.clearance_depth, INCH(2));
    assert_int_equal(bore.pilot_depth, INCH(1.25));
    joined_end(&piece);
}

/* Worked example of the open wing, computed by hand, "Opening at each head" and "bench pass on that
 * edge 0": the lining's and the cover's rear edge wait for the join. */
static void map_of_the_open_wing_names_the_edges_left_open(void **state)
{
    struct joined piece;
    struct text out;

    (void)state;
    struct open_wing wing = joined_open_wing(&piece);
    for (size_t i = 0; i < piece.model.boxes.count; i++) {
        struct box *box = &piece.model.boxes.at[i];

        box->name = box->key == wing.wing ? "W" : "C";
    }
    piece.model.joins.at[0].name = "J1";
    text_init(&out);
    sheet_join_map(&out, piece.plan, plan_junction(piece.plan, wing.join));
    assert_non_null(strstr(text_string(&out), "lining of "));
    assert_non_null(strstr(text_string(&out), "cover of "));
    assert_null(strstr(text_string(&out), "no edge of a cover"));
    assert_golden("map-wing", text_string(&out));
    text_release(&out);
    joined_end(&piece);
}

/* ---- edges that can be found ---- */

/* The wing's join, seen from inside C: C's front is panelled, so no distance is taken from there
 * even where the hole is nearer to it. */
static void hollow_is_not_measured_from_a_panel(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    for (size_t i = 0; i < bench.model.joins.count; i++) {
        struct join *join = &bench.model.joins.at[i];
        struct point *point = MODEL_ADD(&bench.model, point);

        point->join = join->key;
        point->u = INCH(1.75);
        point->v = INCH(20);
    }
    work_plan(&bench);
    const struct from_edge *edges = hole_edges(point_of(&bench, "J1", 0), false);
    assert_int_equal(from_side(&bench, "J1", false, 0), SIDE_BACK);
    assert_int_equal(edges[0].distance, INCH(1.75));
    assert_false(edges[0].hidden);
    work_end(&bench);
}

static void distances_of_any_build_lead_back_to_the_point(struct work_bench *bench,
                                                          struct dice *dice)
{
    (void)dice;
    for (size_t i = 0; i < bench->plan->points.count; i++) {
        const struct plan_point *point = &bench->plan->points.at[i];
        const struct join *join = MODEL_FIND(bench->plan->facts, join, point->join);
        const struct box *box = MODEL_FIND(bench->plan->facts, box, join->box_a);
        struct area face = face_area(box, join->side_a);
        const struct from_edge *edges = point->edges;
        const struct from_edge *first =
            bench->plan->points.at[plan_junction(bench->plan, join->key)->first_point].edges;

        assert_int_equal(
            edges[0].edge == EDGE_LEFT ? edges[0].distance : face.u1 - edges[0].distance, point->u);
        assert_int_equal(edges[1].edge == EDGE_BOTTOM ? edges[1].distance
                                                      : face.v1 - edges[1].distance,
                         point->v);
        assert_int_equal(edges[0].edge, first[0].edge);
        assert_int_equal(edges[1].edge, first[1].edge);
    }
}

static void distances_lead_back_to_the_point(void **state)
{
    (void)state;
    work_builds(152, distances_of_any_build_lead_back_to_the_point);
}

/* ---- the sheet ---- */

static void assert_columns(const struct text *out, int columns)
{
    for (const char *line = text_string(out); *line;) {
        size_t length = strcspn(line, "\n");
        char copy[256];

        assert_true(length < sizeof copy);
        snprintf(copy, sizeof copy, "%.*s", (int)length, line);
        if (text_columns(copy) > columns)
            fail_msg("wider than %d: %s", columns, copy);
        line += length + (line[length] == '\n');
    }
}

static void assert_fits(const struct work_bench *bench)
{
    struct text out;

    text_init(&out);
    sheet_map(&out, bench->plan);
    assert_columns(&out, 80);
    for (size_t i = 0; i < bench->plan->points.count; i++) {
        text_clear(&out);
        sheet_point(&out, bench->plan, i, 40);
        assert_columns(&out, 40);
    }
    text_release(&out);
}

static void maps_keep_to_their_columns(void **state)
{
    static const char *const examples[] = {"headboard", "ottoman", "banquette"};
    struct work_bench bench;

    (void)state;
    for (size_t i = 0; i < sizeof examples / sizeof *examples; i++) {
        work_case(&bench, examples[i]);
        assert_fits(&bench);
        bench.model.build.units = UNITS_WORD_MM;
        work_plan(&bench);
        assert_fits(&bench);
        work_end(&bench);
    }
}

static void drilled_hole_says_that_it_is_a_fact(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    int64_t join = model_key_named(&bench.model, ENTITY_join, "J1");
    struct hole *hole = MODEL_ADD(&bench.model, hole);
    hole->join = join;
    hole->rank = 1;
    hole->u = INCH(0.75);
    hole->v = INCH(4.5);
    work_plan(&bench);
    assert_row(&bench, "J1", "3/4  19   4-1/2  114  [x]      [ ]");
    assert_row(&bench, "J1", "The places of 1 of 1 holes are facts, not plans.");
    work_end(&bench);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(holes_of_the_headboard_stand_where_the_example_has_them),
        cmocka_unit_test(bores_of_the_headboard_follow_from_its_screws),
        cmocka_unit_test(no_cover_of_the_headboard_is_left_open),
        cmocka_unit_test(maps_of_mirrored_wings_are_tables_of_their_own),
        cmocka_unit_test(holes_of_the_banquette_stand_where_the_example_has_them),
        cmocka_unit_test(holes_of_the_open_wing_stand_where_the_example_has_them),
        cmocka_unit_test(map_of_the_open_wing_names_the_edges_left_open),
        cmocka_unit_test(hollow_is_not_measured_from_a_panel),
        cmocka_unit_test(distances_lead_back_to_the_point),
        cmocka_unit_test(maps_keep_to_their_columns),
        cmocka_unit_test(drilled_hole_says_that_it_is_a_fact),
    };
    int failed;

    if (!setlocale(LC_CTYPE, "C.UTF-8"))
        return 1;
    failed = cmocka_run_group_tests_name("paper map", tests, NULL, NULL);
    return failed ? 1 : 0;
}
