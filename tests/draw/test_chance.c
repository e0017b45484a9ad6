/*
 * What holds for every picture: nothing lies outside of it, and no words on others. The demo
 * builds, the worked examples, and builds by chance.
 */
#include "chance.h"

#include "base/utf8.h"
#include "draw/field.h"
#include "draw/piece.h"
#include "draw/raster.h"
#include "draw/section.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <stdio.h>
#include <string.h>

#define USUAL 200
#define MOST 2000

static char sentence[256];

/* One picture, and what it is of. */
struct view {
    const struct plan *plan;
    struct piece_ask piece;
    int64_t box, side; /* box 0: of the piece */
    int64_t edge;      /* of a section; -1 for the face whole */
    int64_t layer;     /* a tufting field's; 0 for none */
    struct arena arena;
    struct drawing drawing;
    struct raster rasters[2];
};

#define ROWS 22
#define COLUMNS 44

static void run(void *context)
{
    struct view *view = context;

    if (view->layer)
        draw_field(&view->drawing, view->plan, view->layer, &view->arena);
    else if (view->box && view->edge >= 0)
        draw_section(&view->drawing, view->plan, view->box, view->side, view->edge, 0,
                     &view->arena);
    else if (view->box)
        draw_face(&view->drawing, view->plan, view->box, view->side, &view->arena);
    else
        draw_piece(&view->drawing, view->plan, &view->piece, &view->arena);
    raster_draw(&view->rasters[RASTER_LINES], &view->drawing, ROWS, COLUMNS, RASTER_LINES,
                &view->arena);
    raster_draw(&view->rasters[RASTER_PLAIN], &view->drawing, ROWS, COLUMNS, RASTER_PLAIN,
                &view->arena);
}

static bool is_within(const struct area *bounds, int64_t u, int64_t v)
{
    return u >= bounds->u0 && u <= bounds->u1 && v >= bounds->v0 && v <= bounds->v1;
}

static const char *marks_wrong(const struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->marks.count; i++) {
        const struct mark *mark = &drawing->marks.at[i];
        if (!is_within(&drawing->bounds, mark->area.u0, mark->area.v0) ||
            !is_within(&drawing->bounds, mark->area.u1, mark->area.v1))
            return "a mark lies outside of the picture";
        if (!mark_is_line(mark->kind) &&
            (mark->area.u0 > mark->area.u1 || mark->area.v0 > mark->area.v1))
            return "an area is turned round";
    }
    for (size_t i = 0; i < drawing->labels.count; i++) {
        const struct label *label = &drawing->labels.at[i];
        if (!label->text || !*label->text)
            return "a label says nothing";
        if (!is_within(&drawing->bounds, label->u, label->v))
            return "a label lies outside of the picture";
    }
    return NULL;
}

static bool is_plain(const struct raster *raster)
{
    for (int i = 0; i < raster->rows * raster->columns; i++) {
        if (raster->cells[i] < ' ' || raster->cells[i] > '~')
            return false;
    }
    return true;
}

static size_t filled(const struct raster *raster)
{
    size_t found = 0;

    for (int i = 0; i < raster->rows * raster->columns; i++)
        found += raster->cells[i] != ' ';
    return found;
}

/* What stands at a label's place, cell by cell; a cell of a wide character's right half is 0. */
static bool stands_there(const struct raster *raster, const struct label_place *place,
                         const char *text)
{
    const unsigned *cells = raster->cells + place->row * raster->columns + place->column;
    size_t left = strlen(text);
    unsigned code;

    for (int bytes, at = 0; (bytes = utf8_next(text, left, &code)) > 0 && at < place->width; at++) {
        if (cells[at] == 0)
            continue;
        if (cells[at] != code)
            return false;
        text += bytes;
        left -= (size_t)bytes;
    }
    return true;
}

/* Each label that shows stands whole where it was put, so none covers another. */
static const char *labels_wrong(const struct drawing *drawing, const struct raster *raster)
{
    for (size_t i = 0; i < drawing->labels.count && raster->places; i++) {
        const struct label_place *place = &raster->places[i];
        if (!place->shown)
            continue;
        if (place->row < 0 || place->row >= raster->rows || place->column < 0 ||
            place->column + place->width > raster->columns)
            return "a label runs out of the picture";
        if (!stands_there(raster, place, drawing->labels.at[i].text))
            return "a label covers another";
    }
    return NULL;
}

static const char *view_wrong(struct view *view)
{
    const char *wrong;

    arena_init(&view->arena);
    assert_true(arena_try(&view->arena, run, view));
    wrong = marks_wrong(&view->drawing);
    if (!wrong && !is_plain(&view->rasters[RASTER_PLAIN]))
        wrong = "a plain picture has a character that is not";
    if (!wrong)
        wrong = labels_wrong(&view->drawing, &view->rasters[RASTER_LINES]);
    if (!wrong && view->plan->facts->boxes.count && filled(&view->rasters[RASTER_LINES]) < 8)
        wrong = "a picture is empty";
    arena_release(&view->arena);
    return wrong;
}

/* Closed and apart; each item from one corner, which the keys spread over all four. */
static const char *piece_wrong(const struct plan *plan, const struct piece_ask *ask)
{
    for (int apart = 0; apart < 2; apart++) {
        struct view view = {.plan = plan, .piece = *ask};
        const char *wrong;
        view.piece.corner = (enum corner)((ask->box + ask->key + apart) % CORNER_COUNT);
        view.piece.apart = apart;
        wrong = view_wrong(&view);
        if (wrong) {
            snprintf(sentence, sizeof sentence,
                     "%s: box %lld, join %lld, kind %d of item %lld, corner %d%s", wrong,
                     (long long)ask->box, (long long)ask->join, (int)ask->chosen,
                     (long long)ask->key, (int)view.piece.corner, apart ? ", apart" : "");
            return sentence;
        }
    }
    return NULL;
}

/* A face whole, and cut at each of its edges. */
static const char *face_wrong(const struct plan *plan, int64_t box, int64_t side)
{
    for (int64_t edge = -1; edge < EDGE_COUNT; edge++) {
        struct view view = {.plan = plan, .box = box, .side = side, .edge = edge};
        const char *wrong =
            edge < 0 || draw_has_section(plan, box, side) ? view_wrong(&view) : NULL;
        if (wrong) {
            snprintf(sentence, sizeof sentence, "%s: %s of box %lld, cut at %lld", wrong,
                     words_side.at[side].name, (long long)box, (long long)edge);
            return sentence;
        }
    }
    return NULL;
}

static const char *box_wrong(const struct plan *plan, int64_t box)
{
    const char *wrong = piece_wrong(plan, &(struct piece_ask){.box = box});

    for (int64_t side = 0; side < SIDE_COUNT && !wrong; side++)
        wrong = face_wrong(plan, box, side);
    return wrong;
}

static const char *layer_wrong(const struct plan *plan, int64_t layer)
{
    struct piece_ask ask = piece_ask_of(plan, ENTITY_layer, layer);
    struct view field = {.plan = plan, .layer = layer};
    const char *wrong = piece_wrong(plan, &ask);

    if (wrong || !draw_has_field(plan, layer))
        return wrong;
    wrong = view_wrong(&field);
    snprintf(sentence, sizeof sentence, "%s: field of layer %lld", wrong ? wrong : "",
             (long long)layer);
    return wrong ? sentence : NULL;
}

static const char *pictures_wrong(struct work_bench *bench)
{
    const struct plan *plan = bench->plan;
    const struct model *model = plan->facts;
    const char *wrong = piece_wrong(plan, &(struct piece_ask){.chosen = ENTITY_none});
    struct piece_ask ask;

    for (size_t i = 0; i < model->boxes.count && !wrong; i++) {
        ask = piece_ask_of(plan, ENTITY_box, model->boxes.at[i].key);
        wrong = piece_wrong(plan, &ask);
        if (!wrong)
            wrong = box_wrong(plan, model->boxes.at[i].key);
    }
    for (size_t i = 0; i < model->joins.count && !wrong; i++) {
        ask = piece_ask_of(plan, ENTITY_join, model->joins.at[i].key);
        wrong = piece_wrong(plan, &ask);
    }
    for (size_t i = 0; i < model->layers.count && !wrong; i++)
        wrong = layer_wrong(plan, model->layers.at[i].key);
    return wrong;
}

static void pictures_of_the_demo_and_the_examples_are_sound(void **state)
{
    static const char *const names[] = {"headboard",
                                        "ottoman",
                                        "banquette",
                                        "open-wing",
                                        "seat-first",
                                        "../../demo/corner",
                                        "../../demo/headboard",
                                        "../../demo/banquette",
                                        "../../demo/stool"};

    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        struct work_bench bench;
        work_case(&bench, names[i]);
        const char *wrong = pictures_wrong(&bench);
        if (wrong)
            fail_msg("%s: %s", names[i], wrong);
        work_end(&bench);
    }
}

static void pictures_of_builds_by_chance_are_sound(void **state)
{
    (void)state;
    chance_check_all(700, chance_count(USUAL, MOST), pictures_wrong);
}

int main(void)
{
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pictures_of_the_demo_and_the_examples_are_sound),
        cmocka_unit_test(pictures_of_builds_by_chance_are_sound),
    };
    int failed = cmocka_run_group_tests_name("draw chance", tests, NULL, NULL);
    return failed ? 1 : 0;
}
