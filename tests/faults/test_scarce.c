/*
 * Memory runs out at any request of a day's work: the workshop is opened, a build taken up and
 * planned, drawn, printed as text and as pages, and an edit saved. The step that misses it says
 * that memory is out, no other fault comes of it, nothing is left behind, and the file holds the
 * old width or, where the edit was said to be saved, the new one. (SQLite's own requests:
 * test_memory.c. PDF is excepted: its libraries end the program.)
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <sqlite3.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "kept.h"
#include "paper/press.h"
#include "paper/sheets.h"
#include "sanitized.h"
#include "scarce.h"
#include "workshop.h"

#define BUILD "Wing headboard"

struct day {
    struct workshop_place place;
    char pages[640];
    struct text file; /* the workshop as the day begins */
};

/* ---- the day ---- */

static enum fault draw(struct desk *desk)
{
    const struct plan *plan = desk_plan(desk);
    const struct piece_ask ask = {.apart = true};
    struct text text;
    text_init(&text);
    sheet_piece(&text, plan, &ask, RASTER_LINES);
    sheet_sections(&text, plan);
    enum fault fault = text.failed ? FAULT_MEMORY : FAULT_NONE;
    text_release(&text);
    return fault;
}

static enum fault print(struct desk *desk, const struct day *day, struct fault_note *note)
{
    const struct press press = {.path = day->pages, .replace = true, .date = "2026-11-30"};
    struct pressed pressed;
    struct text text;
    text_init(&text);
    enum fault fault = press_text(&press, desk_plan(desk), &text, note);
    if (!fault && text.failed)
        fault = FAULT_MEMORY;
    text_release(&text);
    return fault ? fault : press_file(&press, desk_plan(desk), &pressed, note);
}

/* Whether the edit was saved goes to *ret_saved. */
static enum fault work(const struct day *day, bool *ret_saved, struct fault_note *note)
{
    struct desk *desk = NULL;
    enum fault fault = desk_open(&desk, day->place.path, note);
    if (!fault)
        fault = desk_take_up_named(desk, BUILD, note);
    if (!fault)
        fault = draw(desk);
    if (!fault)
        fault = print(desk, day, note);
    if (!fault) {
        int64_t key = model_key_named(desk_model(desk), ENTITY_box, "C");
        fault = desk_set(desk, ENTITY_box, key, "width", "64 in", note);
        *ret_saved = fault == FAULT_NONE;
    }
    desk_close(desk);
    return fault;
}

/* ---- every request ---- */

static int64_t width_in(const struct day *day)
{
    sqlite3 *db;
    sqlite3_stmt *statement;
    assert_int_equal(sqlite3_open(day->place.path, &db), SQLITE_OK);
    assert_int_equal(
        sqlite3_prepare_v2(db, "SELECT width FROM box WHERE name = 'C'", -1, &statement, NULL),
        SQLITE_OK);
    assert_int_equal(sqlite3_step(statement), SQLITE_ROW);
    int64_t width = sqlite3_column_int64(statement, 0);
    sqlite3_finalize(statement);
    sqlite3_close(db);
    return width;
}

/* A day that misses one request; false when it has fewer. */
static bool work_without(const struct day *day, int request, int64_t before)
{
    struct fault_note note = {0};
    bool saved = false;
    file_put_bytes(day->place.path, text_string(&day->file), day->file.length);
    scarce_begin(request);
    enum fault fault = work(day, &saved, &note);
    int left = scarce_end();
    if (fault != FAULT_NONE && fault != FAULT_MEMORY)
        fail_msg("request %d: \"%s\"", request, note.why);
    if (left != 0)
        fail_msg("request %d: %d blocks are left", request, left);
    if (width_in(day) != (saved ? 64 * LENGTH_INCH : before))
        fail_msg("request %d: another width", request);
    unlink(day->pages);
    return scarce_failed();
}

/* Every early request, then ever fewer: the later ones are the same few over and over. */
#define THINNING UNLESS_SANITIZED(8, 2)

static int next(int request)
{
    return request + 1 + request / (getenv("STUFFOVER_LONG") ? 1000 : THINNING);
}

static void without_memory_a_days_work_says_so_and_loses_nothing(void **state)
{
    struct day *day = *state;
    int64_t before = width_in(day);
    int cases = 0;
    int request = 1;
    for (; work_without(day, request, before); request = next(request))
        cases++;
    print_message("%d of %d requests refused\n", cases, scarce_requests());
    assert_true(scarce_requests() > 100);
    assert_true(cases > 10);
}

static int begin(void **state)
{
    struct day *day = calloc(1, sizeof *day);
    assert_non_null(day);
    place_begin(&day->place);
    snprintf(day->pages, sizeof day->pages, "%s/pages.svg", day->place.folder);
    struct desk *desk = desk_at(&day->place);
    desk_take_case(desk, "headboard");
    desk_close(desk);
    text_init(&day->file);
    file_take(&day->file, day->place.path);
    *state = day;
    return 0;
}

static int end(void **state)
{
    struct day *day = *state;
    place_end(&day->place);
    text_release(&day->file);
    free(day);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(without_memory_a_days_work_says_so_and_loses_nothing, begin,
                                        end),
    };
    int failed = cmocka_run_group_tests_name("scarce", tests, NULL, NULL);
    return failed ? 1 : 0;
}
