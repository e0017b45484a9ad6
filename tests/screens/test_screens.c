/*
 * Every screen at the two sizes it is designed for, against text that stands beside this file: what
 * stands there, and below a line of waves in which attributes, the same on all terminals; what they
 * are with colours and without is tested in tests/tui. What all of them are in locales without
 * lines and dots stands in one text for each size.
 */
#include "golden.h"
#include "stage.h"

#include "base/text.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* ---- attributes ---- */

static void add_style(struct text *out, int style)
{
    static const char *const words[] = {"strong", "faint", "chosen", "warning"};
    const char *between = "";
    for (int i = 0; i < 4; i++) {
        if (!(style & 1 << i))
            continue;
        text_format(out, "%s%s", between, words[i]);
        between = "+";
    }
}

/* Where a run of cells in one style ends; `from` is its first. */
static int run_end(const struct view *view, int row, int from)
{
    const struct view_cell *cells = &view->cells[(size_t)row * (size_t)view->columns];
    int end = from + 1;
    while (end < view->columns && cells[end].style == cells[from].style)
        end++;
    return end;
}

/* "row 3: chosen 0-79": one line for each row that is not plain throughout, and the cursor. */
static void add_styles(const struct view *view, struct text *out)
{
    for (int row = 0; row < view->rows; row++) {
        const char *before = NULL;
        for (int from = 0, end; from < view->columns; from = end) {
            int style = view->cells[(size_t)row * (size_t)view->columns + (size_t)from].style;
            end = run_end(view, row, from);
            if (style == VIEW_PLAIN)
                continue;
            if (before)
                text_add(out, before);
            else
                text_format(out, "row %d: ", row);
            before = ", ";
            add_style(out, style);
            text_format(out, " %d-%d", from, end - 1);
        }
        text_add(out, before ? "\n" : "");
    }
    text_format(out, "cursor: row %d, column %d\n", view->cursor_row, view->cursor_column);
}

static void assert_golden_with_styles(const char *name, const char *screen, const struct view *view)
{
    struct text all;
    text_init(&all);
    text_format(&all, "%s~~~~\n", screen);
    add_styles(view, &all);
    assert_golden(name, text_string(&all));
    text_release(&all);
}

/* ---- other characters ---- */

static const int sizes[][2] = {{24, 80}, {40, 120}};

#define SIZES (sizeof sizes / sizeof *sizes)

/* Every screen as it is where the locale has neither lines nor dots, size by size. */
static struct text plain[SIZES];

/* The screens that some test here has shown. */
static const struct {
    const char *name;
    const struct screen *screen;
} all_screens[] = {
#define SCREEN_ROW(name) {#name, &screen_##name},
    SCREENS(SCREEN_ROW)
#undef SCREEN_ROW
};

#define SCREEN_COUNT (sizeof all_screens / sizeof *all_screens)

static bool was_shown[SCREEN_COUNT];

static void note_shown(const struct stage *stage)
{
    for (size_t i = 0; i < SCREEN_COUNT; i++) {
        if (stage->tui.stack[stage->tui.depth - 1].screen == all_screens[i].screen)
            was_shown[i] = true;
    }
}

static void assert_screen_at(struct stage *stage, const char *name, size_t size)
{
    int rows = sizes[size][0];
    int columns = sizes[size][1];
    char file[128];
    snprintf(file, sizeof file, "%s-%dx%d", name, columns, rows);
    assert_golden_with_styles(file, stage_show(stage, rows, columns), &stage->tui.view);
    stage->tui.view.lines = false;
    text_format(&plain[size], "~~~~ %s\n%s", name, stage_show(stage, rows, columns));
    stage->tui.view.lines = true;
}

static void assert_screen(struct stage *stage, const char *name)
{
    note_shown(stage);
    for (size_t i = 0; i < SIZES; i++)
        assert_screen_at(stage, name, i);
}

static void builds_none(void **state)
{
    assert_screen(*state, "builds-none");
}

static void builds(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "Esc");
    assert_screen(*state, "builds");
}

static void builds_delete(void **state)
{
    stage_press(*state, "Down Del");
    assert_screen(*state, "builds-delete");
}

static void new_pieces(void **state)
{
    stage_press(*state, "F2 Down Down");
    assert_screen(*state, "new-pieces");
}

static void new_questions(void **state)
{
    stage_press(*state, "F2 Down Down Enter 'Guest bed' Enter Enter '48'");
    assert_screen(*state, "new-questions");
}

static void new_refused(void **state)
{
    stage_press(*state, "F2 Down Down Enter Enter Enter '4 miles' Enter");
    assert_screen(*state, "new-refused");
}

static void outline_box(void **state)
{
    stage_take_up(*state, "Wing headboard");
    assert_screen(*state, "outline-box");
}

static void outline_build(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "Home");
    assert_screen(*state, "outline-build");
}

/* The same box from its left, where the wing is screwed on. */
static void outline_turned(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "Right Right");
    assert_screen(*state, "outline-turned");
}

static void outline_join(void **state)
{
    stage_take_up(*state, "L-shaped banquette");
    stage_show(*state, 24, 80); /* how many lines there are is known when they are painted */
    stage_press(*state, "End");
    assert_screen(*state, "outline-join");
}

/* Each kind of item has the picture that shows it best; v goes on to the others. */
static void outline_piece(void **state)
{
    stage_take_up(*state, "L-shaped banquette");
    stage_press(*state, "v v v");
    assert_screen(*state, "outline-piece");
}

static void outline_apart(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "v Right");
    assert_screen(*state, "outline-apart");
}

static void outline_layer(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "/ 'foam' Enter");
    assert_screen(*state, "outline-layer");
}

static void outline_section(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "/ 'foam' Enter v");
    assert_screen(*state, "outline-section");
}

static void outline_tufts(void **state)
{
    stage_take_up(*state, "Tufted ottoman");
    stage_press(*state, "/ 'tufts' Enter");
    assert_screen(*state, "outline-tufts");
}

static void outline_screws(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "/ 'join j1' Enter");
    assert_screen(*state, "outline-screws");
}

static void picture_large(void **state)
{
    stage_take_up(*state, "L-shaped banquette");
    stage_press(*state, "V v v v v");
    assert_screen(*state, "picture-large");
}

/* The left wing put in front of the middle, flush at the top: not taken yet. */
static void beside(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "/ 'Box L' Enter j Right");
    assert_screen(*state, "beside");
}

static void form_box(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "Enter Down Down");
    assert_screen(*state, "form-box");
}

static void form_preview(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "Enter Down Down Enter '80'");
    assert_screen(*state, "form-preview");
}

static void form_refused(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "Enter Down Down Enter '80 acres' Enter");
    assert_screen(*state, "form-refused");
}

static void form_choice(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "Enter Down Right");
    assert_screen(*state, "form-choice");
}

static void add(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F2");
    assert_screen(*state, "add");
}

static void add_shop(void **state)
{
    stage_press(*state, "F10 F2");
    assert_screen(*state, "add-shop");
}

static void order(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F5 Space Space Space");
    assert_screen(*state, "order");
}

/* What can be done in the time there is, once the shop was visited. */
static void now(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    tick_until(stage->desk, "buy");
    stage_press(stage, "F5 n");
    assert_screen(stage, "now");
}

/* The parts of the sheet that was cut, one of them spoiled. */
static void parts(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    tick_until(stage->desk, "cut:2");
    stage_press(stage, "F5 s Down s");
    assert_screen(stage, "parts");
}

/* The size of a box as it came out, one figure of it typed. */
static void measures(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    tui_open(&stage->tui, &screen_measures, &(struct target){ENTITY_none, 0, "record:3", NULL});
    stage_press(stage, "Enter '63 1/8' Enter Enter '3'");
    assert_screen(stage, "measures");
}

static void step(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F5 Enter Right Right Right");
    assert_screen(*state, "step");
}

static void buying(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F6");
    assert_screen(*state, "buying");
}

/* The ottoman and the banquette: the first line is shared, and paid at another price. */
static void trip(void **state)
{
    stage_press(*state, "Down Space Space g 4 4 . 1 0 Enter");
    assert_screen(*state, "trip");
}

/* What the ottoman and the banquette cut together. */
static void together(void **state)
{
    stage_press(*state, "Down Space Space g k");
    assert_screen(*state, "together");
}

static void account(void **state)
{
    stage_press(*state, "A");
    assert_screen(*state, "account");
}

static void compare(void **state)
{
    stage_press(*state, "Space Space B");
    assert_screen(*state, "compare");
}

static void compare_one(void **state)
{
    stage_press(*state, "B");
    assert_screen(*state, "compare-one");
}

static void stock(void **state)
{
    stage_press(*state, "S Down");
    assert_screen(*state, "stock");
}

/* A price that was another one before, and one that was paid. */
static void prices(void **state)
{
    struct stage *stage = *state;
    const struct offer *offer = &desk_model(stage->desk)->offers.at[0];
    int64_t key = offer->key;
    DONE(desk_set(stage->desk, ENTITY_offer, key, "price", "4.35", note));
    DONE(desk_set(stage->desk, ENTITY_offer, key, "dated", "2026-11-20", note));
    stage_press(stage, "S Enter");
    assert_screen(stage, "prices");
}

static void money_none(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F7");
    assert_screen(*state, "money-none");
}

static void money(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F7 F2 Enter '61.35' Enter Down Enter 'ten sticks' Enter Esc");
    assert_screen(*state, "money");
}

static void findings(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F8 Down");
    assert_screen(*state, "findings");
}

/* A story and ways out, the second taken up: they are given to the finding here, so that the screen
 * does not change with what the engine offers. */
static void findings_cure(void **state)
{
    static const struct cure_edit first[] = {{ENTITY_box, 3, "name", "Centre"}};
    static const struct cure_edit second[] = {{ENTITY_box, 3, "width", "80 in"}};
    static const struct cure cures[] = {
        {"Give box C another name", first, 1, false},
        {"Make box C wider, so that a driver fits", second, 1, false}};
    static const char *story[] = {"The heads of J1 lie in the bay of box C.",
                                  "The driver has 19 in there, and 1-1/2 in beside it."};
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    struct finding *finding = &desk_told_plan(stage->desk)->findings.at[0];
    finding->cures = cures;
    finding->cure_count = 2;
    finding->story = story;
    finding->story_count = 2;
    stage_press(stage, "F8 Right Right");
    assert_screen(stage, "findings-cure");
}

static void holes(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "h");
    assert_screen(*state, "holes");
}

/* The sheets of care, each by itself. */
static void care(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "C");
    assert_screen(*state, "care");
}

static void care_lifting(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "C Right");
    assert_screen(*state, "care-lifting");
}

static void care_way_in(void **state)
{
    stage_take_up(*state, "L-shaped banquette");
    stage_press(*state, "C Right Right");
    assert_screen(*state, "care-way-in");
}

static void care_strength(void **state)
{
    stage_take_up(*state, "L-shaped banquette");
    stage_press(*state, "C Left Left");
    assert_screen(*state, "care-strength");
}

static void care_cautions(void **state)
{
    stage_take_up(*state, "L-shaped banquette");
    stage_press(*state, "C Left");
    assert_screen(*state, "care-cautions");
}

/* Hole 3 of the join in the room: the face with it marked, and the way to its head. */
static void point(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F8 h Right Right");
    assert_screen(*state, "point");
}

/* Two rows of holes, with the heads in a box that is open above. */
static void point_seat(void **state)
{
    stage_take_up(*state, "L-shaped banquette");
    struct stage *stage = *state;
    int64_t join = model_key_named(desk_model(stage->desk), ENTITY_join, "J1");
    tui_open(&stage->tui, &screen_point, &(struct target){ENTITY_join, join, NULL, NULL});
    assert_screen(stage, "point-seat");
}

static void trade(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F9 Enter '3/16' Enter");
    assert_screen(*state, "trade");
}

static void trade_refused(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F9 Enter '3 lb' Enter");
    assert_screen(*state, "trade-refused");
}

static void shop(void **state)
{
    stage_press(*state, "F10 Down Down");
    assert_screen(*state, "shop");
}

static void help(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "F1");
    assert_screen(*state, "help");
}

static void buying_paid(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "b Space Space 1 5 . 2");
    assert_screen(*state, "buying-paid");
}

static void cutting(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "k / 'plywood' Enter");
    assert_screen(*state, "cutting");
}

static void papers_waiting(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "p Enter Enter");
    assert_screen(*state, "papers-waiting");
}

static void papers_picked(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "p Down Space Enter");
    assert_screen(*state, "papers");
}

static void cloth(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "o e Down");
    assert_screen(*state, "cloth");
}

static void cloth_cover(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "e Down Down Down");
    assert_screen(*state, "cloth-cover");
}

/* Box C came out half an inch wider than planned. */
static enum fault measure_wider(struct model *draft, void *context, struct fault_note *note)
{
    struct measure *measure = MODEL_ADD(draft, measure);
    (void)context;
    (void)note;
    measure->box = model_key_named(draft, ENTITY_box, "C");
    measure->what = "width";
    measure->value = 127 * LENGTH_INCH / 2;
    return FAULT_NONE;
}

static void cloth_built(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    assert_int_equal(desk_edit(stage->tui.desk, "measure", measure_wider, NULL, NULL), FAULT_NONE);
    stage_press(stage, "e End");
    assert_screen(stage, "cloth-built");
}

static void find(void **state)
{
    stage_take_up(*state, "Wing headboard");
    stage_press(*state, "o / 'drill join' Down");
    assert_screen(*state, "find");
}

static void small(void **state)
{
    stage_take_up(*state, "Wing headboard");
    assert_golden("small", stage_show(*state, 10, 40));
    assert_golden("least", stage_show(*state, 18, 60));
}

/* Comes last: a screen that nobody put here is missed. */
static void every_screen_was_shown(void **state)
{
    (void)state;
    for (size_t i = 0; i < SCREEN_COUNT; i++) {
        if (!was_shown[i])
            fail_msg("the screen \"%s\" has no golden here", all_screens[i].name);
    }
}

/* Comes after all of them. */
static void every_screen_has_plain_characters_where_the_locale_has_no_others(void **state)
{
    (void)state;
    for (size_t i = 0; i < SIZES; i++) {
        char file[32];
        for (const char *at = text_string(&plain[i]); *at; at++)
            assert_true((*at >= ' ' && *at <= '~') || *at == '\n');
        snprintf(file, sizeof file, "plain-%dx%d", sizes[i][1], sizes[i][0]);
        assert_golden(file, text_string(&plain[i]));
        text_release(&plain[i]);
    }
}

int main(void)
{
#define EMPTY(name) cmocka_unit_test_setup_teardown(name, stage_begin, stage_end)
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    for (size_t i = 0; i < SIZES; i++)
        text_init(&plain[i]);
    const struct CMUnitTest tests[] = {
        EMPTY(builds_none),
        CASES(builds),
        CASES(builds_delete),
        EMPTY(new_pieces),
        EMPTY(new_questions),
        EMPTY(new_refused),
        CASES(outline_box),
        CASES(outline_build),
        CASES(outline_turned),
        CASES(outline_join),
        CASES(outline_piece),
        CASES(outline_apart),
        CASES(outline_layer),
        CASES(picture_large),
        CASES(form_box),
        CASES(form_preview),
        CASES(form_refused),
        CASES(form_choice),
        CASES(add),
        CASES(add_shop),
        CASES(order),
        CASES(step),
        CASES(buying),
        CASES(together),
        CASES(account),
        CASES(compare),
        CASES(compare_one),
        CASES(stock),
        CASES(prices),
        CASES(money_none),
        CASES(money),
        CASES(findings),
        CASES(trade),
        CASES(trade_refused),
        CASES(findings_cure),
        CASES(holes),
        CASES(care),
        CASES(care_lifting),
        CASES(care_way_in),
        CASES(care_strength),
        CASES(care_cautions),
        CASES(point),
        CASES(point_seat),
        CASES(now),
        CASES(parts),
        CASES(measures),
        CASES(shop),
        CASES(help),
        CASES(buying_paid),
        CASES(cutting),
        CASES(find),
        CASES(cloth),
        CASES(cloth_cover),
        CASES(cloth_built),
        CASES(papers_waiting),
        CASES(papers_picked),
        CASES(small),
        CASES(beside),
        CASES(trip),
        cmocka_unit_test(every_screen_was_shown),
    };
    const struct CMUnitTest pictures[] = {
        CASES(outline_section),
        CASES(outline_tufts),
        CASES(outline_screws),
        cmocka_unit_test(every_screen_has_plain_characters_where_the_locale_has_no_others),
    };
    int failed = cmocka_run_group_tests_name("screens", tests, NULL, NULL);
    failed += cmocka_run_group_tests_name("screens with pictures", pictures, NULL, NULL);
    return failed ? 1 : 0;
}
