/*
 * Hidden lines against rays: from places along every edge a ray goes to the eye, and whether it
 * meets a brick is worked out in the brick's own measures, by solving three equations. The program
 * cuts edges by inequalities instead, and solves none. Bands that are not bricks are asked place by
 * place along the ray, without being cut into parts.
 */
#include "draw/hidden.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>

#define BRICKS 24
#define PLACES 23
#define NEARLY 64.0 /* what is as near as this to a brick's skin is not asked */

/* A corner and three edges, nearly at right angles. */
struct brick {
    struct spot corner;
    struct spot edges[3];
    bool chosen;
};

struct scene {
    struct arena arena;
    struct brick bricks[BRICKS];
    struct station stations[BRICKS][2];
    struct body bodies[BRICKS];
    size_t count;
    double hatch;
    struct strokes strokes;
};

static int begin(void **state)
{
    static struct scene scene;

    scene = (struct scene){.count = 0};
    arena_init(&scene.arena);
    *state = &scene;
    return 0;
}

static int end(void **state)
{
    arena_release(&((struct scene *)*state)->arena);
    return 0;
}

static struct spot further(const struct spot *from, const struct spot *way)
{
    return (struct spot){
        {from->at[0] + way->at[0], from->at[1] + way->at[1], from->at[2] + way->at[2]}};
}

static void set_body(struct scene *scene, size_t index)
{
    const struct brick *brick = &scene->bricks[index];
    struct station *ends = scene->stations[index];

    ends[0].low = brick->corner;
    ends[0].high = further(&ends[0].low, &brick->edges[1]);
    ends[1].low = further(&ends[0].low, &brick->edges[0]);
    ends[1].high = further(&ends[1].low, &brick->edges[1]);
    scene->bodies[index] = (struct body){ends, 2, brick->edges[2], brick->chosen};
}

static void run(void *context)
{
    struct scene *scene = context;

    hidden_strokes(&scene->strokes, scene->bodies, scene->count, scene->hatch, &scene->arena);
}

static void draw(struct scene *scene)
{
    for (size_t i = 0; i < scene->count; i++)
        set_body(scene, i);
    arena_release(&scene->arena);
    assert_true(arena_try(&scene->arena, run, scene));
}

/* ---- bricks ---- */

struct turned {
    double rows[3][3];
};

/* Three rows at right angles, turned about the view, the level and the view again. */
static struct turned turn(const double angles[3])
{
    double c[3], s[3];

    for (int i = 0; i < 3; i++) {
        c[i] = cos(angles[i]);
        s[i] = sin(angles[i]);
    }
    const struct turned turned = {
        {{c[0] * c[2] - s[0] * c[1] * s[2], -c[0] * s[2] - s[0] * c[1] * c[2], s[0] * s[1]},
         {s[0] * c[2] + c[0] * c[1] * s[2], -s[0] * s[2] + c[0] * c[1] * c[2], -c[0] * s[1]},
         {s[1] * s[2], s[1] * c[2], c[1]}}};
    return turned;
}

static struct brick brick_at(const struct turned *turned, const double low[3], const double size[3])
{
    struct brick brick = {.chosen = false};

    for (int axis = 0; axis < 3; axis++) {
        for (int k = 0; k < 3; k++) {
            brick.corner.at[axis] += turned->rows[k][axis] * low[k];
            brick.edges[k].at[axis] = turned->rows[k][axis] * size[k];
        }
    }
    return brick;
}

static double between(struct dice *dice, int64_t least, int64_t most)
{
    return (double)dice_between(dice, least, most);
}

/* Each brick turned its own way, some through each other. */
static void scatter(struct scene *scene, struct dice *dice)
{
    scene->count = (size_t)dice_between(dice, 2, BRICKS);
    for (size_t i = 0; i < scene->count; i++) {
        double low[3], size[3], angles[3];
        for (int k = 0; k < 3; k++) {
            angles[k] = between(dice, 0, 6283) / 1000;
            low[k] = between(dice, -400000, 400000);
            size[k] = between(dice, 3000, 300000);
        }
        struct turned turned = turn(angles);
        scene->bricks[i] = brick_at(&turned, low, size);
    }
}

/* On a lattice, all turned the same way: they touch, and edges fall on edges. */
static void stack(struct scene *scene, struct dice *dice)
{
    double angles[3];

    for (int k = 0; k < 3; k++)
        angles[k] = between(dice, 100, 1400) / 1000;
    struct turned turned = turn(angles);
    scene->count = (size_t)dice_between(dice, 2, BRICKS);
    for (size_t i = 0; i < scene->count; i++) {
        double low[3], size[3];
        for (int k = 0; k < 3; k++) {
            low[k] = 10000 * between(dice, 0, 8);
            size[k] = 10000 * between(dice, 1, 5);
        }
        scene->bricks[i] = brick_at(&turned, low, size);
    }
}

/* ---- rays ---- */

static double determinant(const double a[3], const double b[3], const double c[3])
{
    return a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) +
           a[2] * (b[0] * c[1] - b[1] * c[0]);
}

/* A way in parts of the brick's edges. */
static void in_parts(const struct brick *brick, const double way[3], double ret_parts[3])
{
    const double *e[3] = {brick->edges[0].at, brick->edges[1].at, brick->edges[2].at};
    double whole = determinant(e[0], e[1], e[2]);

    ret_parts[0] = determinant(way, e[1], e[2]) / whole;
    ret_parts[1] = determinant(e[0], way, e[2]) / whole;
    ret_parts[2] = determinant(e[0], e[1], way) / whole;
}

/* Whether the ray from a place towards the eye runs through the brick as it is when it is larger by
 * `more` on every side. */
static bool ray_meets(const struct brick *brick, const struct spot *from, double more)
{
    static const double eye[3] = {0, 0, 1};
    double way[3], at[3], step[3];
    double enter = 0;
    double leave = HUGE_VAL;

    for (int k = 0; k < 3; k++)
        way[k] = from->at[k] - brick->corner.at[k];
    in_parts(brick, way, at);
    in_parts(brick, eye, step);
    for (int k = 0; k < 3; k++) {
        const double *e = brick->edges[k].at;
        double margin = more / sqrt(e[0] * e[0] + e[1] * e[1] + e[2] * e[2]);
        if (fabs(step[k]) < 1e-15) {
            if (at[k] <= -margin || at[k] >= 1 + margin)
                return false;
            continue;
        }
        double one = (-margin - at[k]) / step[k];
        double other = (1 + margin - at[k]) / step[k];
        enter = fmax(enter, fmin(one, other));
        leave = fmin(leave, fmax(one, other));
    }
    return enter < leave;
}

enum verdict { SEEN, HIDDEN, UNSURE };

/* Of its own brick a place lies on the skin: there the ray must run in it for some way. */
static enum verdict verdict_of(const struct scene *scene, size_t own, const struct spot *place)
{
    enum verdict verdict = ray_meets(&scene->bricks[own], place, -1) ? HIDDEN : SEEN;

    for (size_t i = 0; i < scene->count; i++) {
        if (i == own)
            continue;
        if (ray_meets(&scene->bricks[i], place, -NEARLY))
            return HIDDEN;
        if (verdict == SEEN && ray_meets(&scene->bricks[i], place, NEARLY))
            verdict = UNSURE;
    }
    return verdict;
}

/* ---- what was drawn ---- */

static bool is_on(const struct stroke *stroke, const struct spot *place)
{
    double along = 0, whole = 0, off = 0;

    for (int k = 0; k < 3; k++) {
        double way = stroke->to.at[k] - stroke->from.at[k];
        along += way * (place->at[k] - stroke->from.at[k]);
        whole += way * way;
    }
    if (along < 0 || along > whole)
        return false;
    for (int k = 0; k < 3; k++) {
        double foot = stroke->from.at[k] + (stroke->to.at[k] - stroke->from.at[k]) * along / whole;
        off += (place->at[k] - foot) * (place->at[k] - foot);
    }
    return off < 1;
}

static bool is_drawn(const struct scene *scene, size_t brick, const struct spot *place)
{
    for (size_t i = 0; i < scene->strokes.of.count; i++) {
        const struct stroke *stroke = &scene->strokes.of.at[i];
        if (stroke->body == brick && stroke->kind == STROKE_EDGE && is_on(stroke, place))
            return true;
    }
    return false;
}

struct tally {
    size_t seen, hidden;
};

static void ask_place(struct scene *scene, size_t brick, const struct spot *place,
                      struct tally *tally)
{
    enum verdict verdict = verdict_of(scene, brick, place);

    if (verdict != UNSURE)
        assert_int_equal(is_drawn(scene, brick, place), verdict == SEEN);
    tally->seen += verdict == SEEN;
    tally->hidden += verdict == HIDDEN;
}

/* A face that is seen edge on is neither seen nor hidden. */
static bool has_face_edge_on(const struct brick *brick)
{
    return fabs(brick->edges[0].at[2]) < NEARLY || fabs(brick->edges[1].at[2]) < NEARLY ||
           fabs(brick->edges[2].at[2]) < NEARLY;
}

static void ask_edges(struct scene *scene, struct dice *dice, struct tally *tally)
{
    for (size_t i = 0; i < scene->count; i++) {
        const struct brick *brick = &scene->bricks[i];
        for (int edge = 0; edge < 12 && !has_face_edge_on(brick); edge++) {
            int k = edge % 3;
            struct spot place = brick->corner;
            if (hypot(brick->edges[k].at[0], brick->edges[k].at[1]) < 2 * NEARLY)
                continue; /* seen end on: a dot */
            double part = between(dice, 1, PLACES) / (PLACES + 1);
            for (int axis = 0; axis < 3; axis++)
                place.at[axis] += part * brick->edges[k].at[axis] +
                                  (edge / 3 & 1) * brick->edges[(k + 1) % 3].at[axis] +
                                  (edge / 6) * brick->edges[(k + 2) % 3].at[axis];
            ask_place(scene, i, &place, tally);
        }
    }
}

static struct tally ask_scenes(struct scene *scene, uint64_t seed,
                               void (*make)(struct scene *, struct dice *))
{
    struct dice dice = {seed};
    struct tally tally = {0, 0};

    for (int i = 0; i < 150; i++) {
        make(scene, &dice);
        draw(scene);
        for (int again = 0; again < 4; again++)
            ask_edges(scene, &dice, &tally);
    }
    return tally;
}

static void bricks_that_lean_every_way_hide_what_rays_say(void **state)
{
    struct tally tally = ask_scenes(*state, 20261130, scatter);

    assert_true(tally.seen > 20000);
    assert_true(tally.hidden > 20000);
}

static void bricks_that_touch_hide_what_rays_say(void **state)
{
    struct tally tally = ask_scenes(*state, 20261201, stack);

    assert_true(tally.seen > 2000);
    assert_true(tally.hidden > 20000);
}

/* ---- bands ---- */

static size_t count(const struct scene *scene, enum stroke_kind kind)
{
    size_t found = 0;

    for (size_t i = 0; i < scene->strokes.of.count; i++)
        found += scene->strokes.of.at[i].kind == kind;
    return found;
}

#define STATIONS 7
#define STEPS 4000 /* that a ray is walked in */

/* A band as heights over places of its own axes, and a brick before or behind it. */
struct band {
    struct turned turned;
    double u[STATIONS], low[STATIONS], high[STATIONS];
    size_t count;
    double deep;
    struct station stations[STATIONS];
};

static struct spot out_of(const struct turned *turned, double u, double v, double w)
{
    struct spot spot;

    for (int axis = 0; axis < 3; axis++)
        spot.at[axis] =
            turned->rows[0][axis] * u + turned->rows[1][axis] * v + turned->rows[2][axis] * w;
    return spot;
}

/* Peaks, valleys and steps. */
static struct band band_by_chance(struct dice *dice)
{
    struct band band = {.count = (size_t)dice_between(dice, 2, STATIONS)};
    double angles[3];

    for (int k = 0; k < 3; k++)
        angles[k] = between(dice, 0, 6283) / 1000;
    band.turned = turn(angles);
    band.deep = between(dice, 3000, 200000);
    for (size_t i = 0; i < band.count; i++) {
        bool steps = i > 0 && i + 1 < band.count && dice_between(dice, 0, 4) == 0;

        band.u[i] = i == 0 ? 0 : band.u[i - 1] + (steps ? 0 : between(dice, 20000, 90000));
        band.low[i] = steps ? band.low[i - 1] : between(dice, -90000, 0);
        band.high[i] = between(dice, 10000, 200000);
        band.stations[i] =
            (struct station){out_of(&band.turned, band.u[i], band.low[i], 0),
                             out_of(&band.turned, band.u[i], band.high[i], 0), true, true};
    }
    return band;
}

/* How far a place of the band's own axes lies inside of it, measured along them; less than 0
 * outside. */
static double inside(const struct band *band, double u, double v, double w)
{
    double best = -HUGE_VAL;

    for (size_t i = 0; i + 1 < band->count; i++) {
        double wide = band->u[i + 1] - band->u[i];
        double part = wide > 0 ? (u - band->u[i]) / wide : -1;

        if (part < 0 || part > 1)
            continue;
        double low = band->low[i] + part * (band->low[i + 1] - band->low[i]);
        double high = band->high[i] + part * (band->high[i + 1] - band->high[i]);
        best = fmax(best, fmin(v - low, high - v));
    }
    best = fmin(best, fmin(u - band->u[0], band->u[band->count - 1] - u));
    return fmin(best, fmin(w, band->deep - w));
}

#define MARGIN 4000.0 /* what comes nearer to the skin than this is not asked */

/* The rows of a turn are the columns of the turn back. */
static enum verdict walk_ray(const struct band *band, const struct spot *from)
{
    double most = -HUGE_VAL;

    for (int i = 0; i <= STEPS; i++) {
        double at[3] = {from->at[0], from->at[1], from->at[2] + 1200000.0 * i / STEPS};
        double own[3];

        for (int k = 0; k < 3; k++)
            own[k] = band->turned.rows[k][0] * at[0] + band->turned.rows[k][1] * at[1] +
                     band->turned.rows[k][2] * at[2];
        most = fmax(most, inside(band, own[0], own[1], own[2]));
    }
    return most > 0 ? HIDDEN : most < -MARGIN ? SEEN : UNSURE;
}

/* Lines over and through the band, as the edges of a sheet. */
static void ask_sheet(struct scene *scene, struct dice *dice, const struct band *band,
                      struct tally *tally)
{
    struct brick *sheet = &scene->bricks[1];
    struct spot place;

    for (int axis = 0; axis < 3; axis++) {
        sheet->corner.at[axis] = between(dice, -300000, axis == 2 ? 0 : 300000);
        sheet->edges[0].at[axis] = between(dice, -400000, 400000);
        sheet->edges[1].at[axis] = 0;
        sheet->edges[2].at[axis] = 0;
    }
    scene->count = 2;
    set_body(scene, 1);
    scene->bodies[0] =
        (struct body){band->stations, band->count, out_of(&band->turned, 0, 0, band->deep), false};
    arena_release(&scene->arena);
    assert_true(arena_try(&scene->arena, run, scene));
    for (int i = 1; i < PLACES; i++) {
        for (int axis = 0; axis < 3; axis++)
            place.at[axis] = sheet->corner.at[axis] + sheet->edges[0].at[axis] * i / (double)PLACES;
        enum verdict verdict = walk_ray(band, &place);
        if (verdict != UNSURE)
            assert_int_equal(is_drawn(scene, 1, &place), verdict == SEEN);
        tally->seen += verdict == SEEN;
        tally->hidden += verdict == HIDDEN;
    }
}

static void bands_with_peaks_valleys_and_steps_hide_what_rays_say(void **state)
{
    struct dice dice = {20261202};
    struct tally tally = {0, 0};

    for (int i = 0; i < 60; i++) {
        struct band band = band_by_chance(&dice);

        for (int again = 0; again < 6; again++)
            ask_sheet(*state, &dice, &band, &tally);
    }
    assert_true(tally.seen > 2000);
    assert_true(tally.hidden > 400);
}

/* A half round of eight chords: of the seven edges between them one parts what looks at us from
 * what looks away. */
static void of_a_round_only_the_contour_shows(void **state)
{
    struct scene *scene = *state;
    struct turned turned = turn((const double[]){0.3, -1.1, 0.2});
    struct station stations[9];
    size_t edges[2];

    for (int sharp = 0; sharp < 2; sharp++) {
        for (int i = 0; i < 9; i++) {
            double angle = 3.14159265 * i / 8;
            stations[i] = (struct station){
                out_of(&turned, -90000 * cos(angle), -50000, 0),
                out_of(&turned, -90000 * cos(angle), 90000 * sin(angle), 0), false, sharp == 1};
        }
        scene->count = 1;
        scene->bodies[0] = (struct body){stations, 9, out_of(&turned, 0, 0, -60000), false};
        arena_release(&scene->arena);
        assert_true(arena_try(&scene->arena, run, scene));
        edges[sharp] = count(scene, STROKE_EDGE);
    }
    assert_int_equal(edges[1] - edges[0], 7 - 1);
}

/* ---- one brick ---- */

static const struct turned straight = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};

static void a_brick_seen_from_a_corner_shows_nine_of_its_edges(void **state)
{
    struct scene *scene = *state;
    struct turned turned = turn((const double[]){0.7, 0.9, 0.6});

    scene->count = 1;
    scene->bricks[0] =
        brick_at(&turned, (const double[]){0, 0, 0}, (const double[]){20000, 30000, 40000});
    draw(scene);
    assert_int_equal(count(scene, STROKE_EDGE), 9);
    assert_int_equal(count(scene, STROKE_BEHIND), 0);
    scene->bricks[0].chosen = true;
    draw(scene);
    assert_int_equal(count(scene, STROKE_EDGE), 9);
    assert_int_equal(count(scene, STROKE_BEHIND), 3);
}

/* Face on, a smaller brick before a larger: the larger one's rim is whole, the smaller one's too.
 */
static void a_brick_before_another_cuts_nothing_of_its_rim(void **state)
{
    struct scene *scene = *state;

    scene->count = 2;
    scene->bricks[0] =
        brick_at(&straight, (const double[]){0, 0, 0}, (const double[]){90000, 90000, 10000});
    scene->bricks[1] = brick_at(&straight, (const double[]){30000, 30000, 10000},
                                (const double[]){30000, 30000, 10000});
    draw(scene);
    assert_int_equal(count(scene, STROKE_EDGE), 8);
}

/* Hatching lies on the face, and stops where something stands before it. */
static void hatching_leaves_out_what_is_hidden(void **state)
{
    struct scene *scene = *state;

    scene->count = 2;
    scene->bricks[0] =
        brick_at(&straight, (const double[]){0, 0, 0}, (const double[]){90000, 90000, 10000});
    scene->bricks[1] = brick_at(&straight, (const double[]){30000, 0, 20000},
                                (const double[]){30000, 90000, 10000});
    scene->bricks[0].chosen = true;
    scene->hatch = 9000;
    draw(scene);
    assert_true(count(scene, STROKE_HATCH) > 10);
    for (size_t i = 0; i < scene->strokes.of.count; i++) {
        const struct stroke *stroke = &scene->strokes.of.at[i];
        double middle = (stroke->from.at[0] + stroke->to.at[0]) / 2;
        if (stroke->kind != STROKE_HATCH)
            continue;
        assert_true(middle <= 30000 + 2 * HIDDEN_SLACK || middle >= 60000 - 2 * HIDDEN_SLACK);
        assert_true(fabs(stroke->from.at[2] - 10000) < 1);
    }
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(bricks_that_lean_every_way_hide_what_rays_say),
        FACT(bricks_that_touch_hide_what_rays_say),
        FACT(bands_with_peaks_valleys_and_steps_hide_what_rays_say),
        FACT(of_a_round_only_the_contour_shows),
        FACT(a_brick_seen_from_a_corner_shows_nine_of_its_edges),
        FACT(a_brick_before_another_cuts_nothing_of_its_rim),
        FACT(hatching_leaves_out_what_is_hidden),
    };
    int failed = cmocka_run_group_tests_name("hidden", tests, NULL, NULL);
    return failed ? 1 : 0;
}
