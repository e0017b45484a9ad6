/*
 * Ways out that were tried: each cure of a mistake in the wood, or in where boxes stand, is taken
 * into a copy of the facts; what was told must be gone, and nothing may stop that did not before.
 */
#include "joined.h"

#include "plan/cure.h"
#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

struct mistake {
    const char *name;
    void (*make)(struct joined *piece);
    int kind;
    const char *first; /* what the first cure is called */
};

/* ---- parts ---- */

static int64_t add_box(struct joined *piece, const char *name, double width, double depth,
                       double height)
{
    int64_t frame = depth > 3 ? FRAME_CRATE : FRAME_LADDER;
    struct box *box = joined_box(piece, frame, width, depth, height);

    box->name = name;
    return box->key;
}

static struct join *add_join(struct joined *piece, const char *name, int64_t a, int64_t side_a,
                             int64_t b, int64_t side_b)
{
    struct join *join = joined_join(piece, a, side_a, b, side_b);

    join->name = name;
    return join;
}

static void stand_on_floor(struct joined *piece, int64_t box)
{
    add_join(piece, "F", box, SIDE_BOTTOM, 0, SIDE_FRONT)->target = TARGET_FLOOR;
}

static struct box *box_named(struct joined *piece, const char *name)
{
    for (size_t i = 0; i < piece->model.boxes.count; i++)
        if (strcmp(piece->model.boxes.at[i].name, name) == 0)
            return &piece->model.boxes.at[i];
    fail_msg("no box %s", name);
    return NULL;
}

static struct member *add_member(struct joined *piece, int64_t box, int64_t kind, int64_t axis,
                                 double x, double z)
{
    struct member *member = MODEL_ADD(&piece->model, member);

    member->box = box;
    member->kind = kind;
    member->axis = axis;
    member->x = IN(x);
    member->z = IN(z);
    return member;
}

/* ---- frames ---- */

static int64_t add_railed_ladder(struct joined *piece, double rail)
{
    struct box *box = joined_box(piece, FRAME_LADDER, 60, 2.5, 40);
    int64_t key = box->key;

    box->name = "C";
    box->supports = MAKING_HAND;
    add_member(piece, key, MEMBER_RAIL, AXIS_X, 0, rail);
    return key;
}

/* Two posts in one line, each over the other's heads. */
static void make_posts_in_line(struct joined *piece)
{
    joined_start(piece, 2.5);
    int64_t box = add_railed_ladder(piece, 19);

    add_member(piece, box, MEMBER_SUPPORT, AXIS_Z, 29, 20.5)->name = "upper";
    add_member(piece, box, MEMBER_SUPPORT, AXIS_Z, 29, 1.5)->name = "lower";
}

/* A stick of 1-1/2 x 3/4: a #8 wants 3 diameters, 0.49 in, and finds 0.375. */
static void make_thin_frame(struct joined *piece)
{
    joined_start(piece, 0.75);
    joined_box(piece, FRAME_LADDER, 40, 1.5, 30)->name = "C";
}

/* ---- holes ---- */

static void make_hole_at_edge(struct joined *piece)
{
    int64_t join = joined_headboard(piece);

    joined_hole(piece, join, 0.25, 20);
    joined_hole(piece, join, 0.75, 40);
}

static void make_hole_at_end(struct joined *piece)
{
    int64_t join = joined_headboard(piece);

    joined_hole(piece, join, 0.75, 0.5);
    joined_hole(piece, join, 0.75, 40);
}

/* ---- where boxes stand ---- */

struct pair {
    int64_t a, b;
};

/* A crate 40 in wide, and one beside it. */
static struct pair start_pair(struct joined *piece, double width_b)
{
    joined_start(piece, 2.5);
    int64_t a = add_box(piece, "A", 40, 20, 16);

    return (struct pair){a, add_box(piece, "B", width_b, 20, 16)};
}

/* J2 wants B an inch higher than J1 put it. */
static void make_contradiction(struct joined *piece)
{
    struct pair pair = start_pair(piece, 30);

    add_join(piece, "J1", pair.a, SIDE_RIGHT, pair.b, SIDE_LEFT);
    add_join(piece, "J2", pair.b, SIDE_LEFT, pair.a, SIDE_RIGHT)->offset_v = IN(1);
}

/* Round a circle: no offset of J2 brings C to where it wants it, straight beside B. */
static void make_circle(struct joined *piece)
{
    struct pair pair = start_pair(piece, 30);
    int64_t c = add_box(piece, "C", 20, 20, 16);

    add_join(piece, "J1", pair.a, SIDE_RIGHT, pair.b, SIDE_LEFT);
    add_join(piece, "J2", pair.b, SIDE_RIGHT, c, SIDE_LEFT);
    add_join(piece, "J3", pair.a, SIDE_LEFT, c, SIDE_RIGHT);
}

static void make_turn(struct joined *piece)
{
    struct pair pair = start_pair(piece, 20);

    add_join(piece, "J1", pair.a, SIDE_RIGHT, pair.b, SIDE_LEFT);
    add_join(piece, "J2", pair.a, SIDE_RIGHT, pair.b, SIDE_FRONT);
}

static void make_miss(struct joined *piece)
{
    struct pair pair = start_pair(piece, 20);

    add_join(piece, "J1", pair.a, SIDE_RIGHT, pair.b, SIDE_LEFT)->offset_u = IN(25);
}

/* Two joins agree that B lies too far forward for both. */
static void make_miss_twice(struct joined *piece)
{
    make_miss(piece);
    add_join(piece, "J2", box_named(piece, "B")->key, SIDE_LEFT, box_named(piece, "A")->key,
             SIDE_RIGHT)
        ->offset_u = -IN(25);
}

static void make_askew(struct joined *piece)
{
    joined_start(piece, 2.5);
    int64_t a = add_box(piece, "A", 40, 2.5, 30);
    int64_t b = add_box(piece, "B", 40, 2.5, 30);

    box_named(piece, "A")->lean = 8000;
    add_join(piece, "J", a, SIDE_FRONT, b, SIDE_BACK);
}

/* A top cannot look at a front. */
static void make_never(struct joined *piece)
{
    struct pair pair = start_pair(piece, 40);

    add_join(piece, "J", pair.a, SIDE_TOP, pair.b, SIDE_FRONT);
}

static void make_sunk(struct joined *piece)
{
    struct pair pair = start_pair(piece, 20);

    add_join(piece, "J1", pair.a, SIDE_RIGHT, pair.b, SIDE_LEFT)->offset_v = -IN(2);
    stand_on_floor(piece, pair.a);
}

/* The first of all boxes reaches below the floor that the second stands on. */
static void make_first_sunk(struct joined *piece)
{
    struct pair pair = start_pair(piece, 20);

    add_join(piece, "J1", pair.a, SIDE_RIGHT, pair.b, SIDE_LEFT)->offset_v = IN(2);
    stand_on_floor(piece, pair.b);
}

static void make_high(struct joined *piece)
{
    make_sunk(piece);
    piece->model.joins.at[0].offset_v = IN(3);
    stand_on_floor(piece, box_named(piece, "B")->key);
}

/* ---- pairs ---- */

static void make_wings(struct joined *piece)
{
    joined_start(piece, 1.5);
    int64_t back = joined_box(piece, FRAME_LADDER, 60, 1.5, 40)->key;
    int64_t left = joined_box(piece, FRAME_LADDER, 12, 2, 40)->key;
    int64_t right = joined_box(piece, FRAME_LADDER, 12, 2, 40)->key;

    piece->model.boxes.at[1].name = "W1";
    piece->model.boxes.at[2].name = "W2";
    piece->model.boxes.at[2].mirror_of = left;
    add_join(piece, "J1", back, SIDE_LEFT, left, SIDE_RIGHT);
    add_join(piece, "J2", back, SIDE_RIGHT, right, SIDE_LEFT);
    joined_facing(piece, left, SIDE_FRONT, piece->sheet)->width = IN(5);
    joined_facing(piece, right, SIDE_FRONT, piece->sheet)->u = IN(7);
}

static void make_uneven_wings(struct joined *piece)
{
    make_wings(piece);
    piece->model.boxes.at[2].height = IN(39);
    piece->model.boxes.at[2].stick_set = SET_FLAT;
}

static void make_two_left_wings(struct joined *piece)
{
    make_wings(piece);
    piece->model.facings.at[1].u = 0;
    piece->model.facings.at[1].width = IN(5);
    piece->model.facings.at[1].glued = 0;
}

static void make_uneven_joins(struct joined *piece)
{
    make_wings(piece);
    piece->model.joins.at[1].offset_v = IN(2);
}

static void make_lacking_wing(struct joined *piece)
{
    make_wings(piece);
    joined_facing(piece, piece->model.boxes.at[1].key, SIDE_LEFT, piece->sheet)->pitch = IN(5);
    for (size_t i = 1; i < 3; i++)
        piece->model.boxes.at[i].width = IN(12.5);
    piece->model.facings.at[1].u = IN(7.5);
}

static void make_richer_wing(struct joined *piece)
{
    make_wings(piece);
    joined_layer(piece, piece->model.boxes.at[2].key, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);
}

/* ---- the table ---- */

static const struct mistake mistakes[] = {
    {"posts_in_line", make_posts_in_line, FINDING_FRAME_SHUT, "Put upper at x 31 in"},
    {"thin_frame", make_thin_frame, FINDING_SCREW_EDGE, "Take thinner screws there, #4"},
    {"hole_at_edge", make_hole_at_edge, FINDING_SCREW_EDGE,
     "Move its holes in, away from edges and ends"},
    {"hole_at_end", make_hole_at_end, FINDING_SCREW_END,
     "Move its holes in, away from edges and ends"},
    {"contradiction", make_contradiction, FINDING_JOIN_CONTRADICTS,
     "Let join J2 meet box A where it stands"},
    {"circle", make_circle, FINDING_JOIN_CONTRADICTS, "Do without join J2"},
    {"turn", make_turn, FINDING_JOIN_TURNS, "Join the left of box B"},
    {"miss", make_miss, FINDING_JOIN_FACES_PAST, "Move box B so that the faces meet"},
    {"miss_twice", make_miss_twice, FINDING_JOIN_FACES_PAST, "Move box B so that the faces meet"},
    {"askew", make_askew, FINDING_JOIN_FACES_ASKEW, "Let box B lean by 8 deg as A does"},
    {"never", make_never, FINDING_JOIN_FACES_ASKEW, "Join the bottom of box B"},
    {"sunk", make_sunk, FINDING_BOX_BELOW_FLOOR, "Set box B 2 in higher"},
    {"first_sunk", make_first_sunk, FINDING_BOX_BELOW_FLOOR, "Set box A 2 in higher"},
    {"high", make_high, FINDING_JOIN_OFF_FLOOR, "Set box B 3 in lower"},
    {"uneven_wings", make_uneven_wings, FINDING_TWIN_DIFFERS, "Make box W2 as W1 is"},
    {"two_left_wings", make_two_left_wings, FINDING_TWIN_DIFFERS,
     "Make the panel of W2 as its twin is"},
    {"lacking_wing", make_lacking_wing, FINDING_TWIN_LACKS,
     "Add the image of the panel of W1 to box W2"},
    {"richer_wing", make_richer_wing, FINDING_TWIN_BEYOND, "Take away the cover of W2"},
    {"uneven_joins", make_uneven_joins, FINDING_TWIN_DIFFERS, "Make the J2 as its twin is"},
};

#define MISTAKES (sizeof mistakes / sizeof *mistakes)

/* ---- taking them ---- */

static size_t count_of(const struct plan *plan, int kind)
{
    size_t count = 0;

    for (size_t i = 0; i < plan->findings.count; i++)
        count += plan->findings.at[i].kind == kind;
    return count;
}

/* Of no kind of stop there are more. */
static void assert_stops_nothing_new(const struct plan *after, const struct plan *before)
{
    for (size_t i = 0; i < after->findings.count; i++) {
        const struct finding *finding = &after->findings.at[i];

        if (plan_finding_severity(finding) == SEVERITY_STOP)
            assert_in_range(count_of(after, finding->kind), 0, count_of(before, finding->kind));
    }
}

/* Makes the mistake anew and takes one way out; how many there are. */
static size_t take(const struct mistake *mistake, size_t index)
{
    struct joined piece;
    struct arena made;
    struct fault_note note = {0};
    const struct plan *after;

    mistake->make(&piece);
    joined_plan(&piece);
    const struct finding *finding = joined_finding(&piece, mistake->kind);
    size_t count = finding->cure_count;
    assert_true(index < count);
    assert_false(finding->cures[index].on_trial);
    if (index == 0)
        assert_string_equal(finding->cures[0].text, mistake->first);
    arena_init(&made);
    if (cure_apply(&piece.model, &finding->cures[index], &note))
        fail_msg("%s: %s", finding->cures[index].text, note.why);
    assert_int_equal(plan_make(&piece.model, &made, &after), FAULT_NONE);
    assert_true(count_of(after, mistake->kind) < count_of(piece.plan, mistake->kind));
    assert_stops_nothing_new(after, piece.plan);
    arena_release(&made);
    joined_end(&piece);
    return count;
}

static void every_way_out_mends_what_is_told_and_stops_nothing(void **state)
{
    const struct mistake *mistake = *state;
    size_t index = 0;
    size_t count;

    do {
        count = take(mistake, index);
    } while (++index < count);
}

/* A hole that is drilled cannot be moved; what is left is a thinner screw. */
static void a_hole_that_is_there_already_is_not_moved(void **state)
{
    struct joined piece;

    (void)state;
    make_hole_at_edge(&piece);
    piece.model.points.at[0].existing = 1;
    joined_plan(&piece);
    const struct finding *finding = joined_finding(&piece, FINDING_SCREW_EDGE);
    for (size_t i = 0; i < finding->cure_count; i++)
        for (size_t k = 0; k < finding->cures[i].edit_count; k++)
            assert_int_not_equal(finding->cures[i].edits[k].key, piece.model.points.at[0].key);
    joined_end(&piece);
}

int main(void)
{
    struct CMUnitTest tests[MISTAKES + 1] = {
        cmocka_unit_test(a_hole_that_is_there_already_is_not_moved)};

    for (size_t i = 0; i < MISTAKES; i++)
        tests[i + 1] = (struct CMUnitTest){mistakes[i].name,
                                           every_way_out_mends_what_is_told_and_stops_nothing, NULL,
                                           NULL, (void *)(uintptr_t)&mistakes[i]};
    int failed = cmocka_run_group_tests_name("cures", tests, NULL, NULL);

    return failed ? 1 : 0;
}
