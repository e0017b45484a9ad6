#include "stage.h"
#include "base/utf8.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* 2026-11-25 09:00 UTC: what is written down on these pages is always of that day. */
#define STANDING_CLOCK "1795597200"

int stage_begin(void **state)
{
    struct stage *stage = calloc(1, sizeof *stage);
    assert_non_null(stage);
    setenv("SOURCE_DATE_EPOCH", STANDING_CLOCK, 1);
    setenv("TZ", "UTC", 1);
    place_begin(&stage->place);
    stage->desk = desk_at(&stage->place);
    arena_init(&stage->arena);
    driver_begin(&stage->tui, stage->desk);
    stage->tui.view.lines = true;
    *state = stage;
    return 0;
}

int stage_begin_with_cases(void **state)
{
    static const char *const cases[] = {"headboard", "ottoman", "banquette"};
    stage_begin(state);
    struct stage *stage = *state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        desk_take_case(stage->desk, cases[i]);
    DONE(desk_take_up(stage->desk, 0, note));
    return 0;
}

int stage_end(void **state)
{
    struct stage *stage = *state;
    driver_end(&stage->tui);
    desk_close(stage->desk);
    arena_release(&stage->arena);
    place_end(&stage->place);
    free(stage);
    return 0;
}

void stage_go(struct stage *stage, const char *keys)
{
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, keys);
}

void stage_again(struct stage *stage)
{
    driver_end(&stage->tui);
    desk_close(stage->desk);
    stage->desk = desk_at(&stage->place);
    driver_begin(&stage->tui, stage->desk);
    stage->tui.view.lines = true;
    stage->over = false;
}

/* ---- keys ---- */

static void press(struct stage *stage, int key)
{
    assert_false(stage->over);
    stage->over = driver_key(&stage->tui, key) & REACT_QUIT;
}

static int special_named(const char *name, size_t length)
{
    char word[32];
    snprintf(word, sizeof word, "%.*s", (int)length, name);
    int key = action_key_named(word);
    if (key == KEY_NONE)
        fail_msg("no key is called %s", word);
    return key;
}

static const char *press_text(struct stage *stage, const char *at)
{
    unsigned code;
    while (*at && *at != '\'') {
        at += utf8_next(at, strlen(at), &code);
        press(stage, (int)code);
    }
    return *at ? at + 1 : at;
}

void stage_press(struct stage *stage, const char *keys)
{
    while (*keys) {
        size_t length = strcspn(keys, " ");
        if (*keys == '\'') {
            keys = press_text(stage, keys + 1);
        } else if (length == 1) {
            press(stage, *keys++);
        } else if (length > 1) {
            press(stage, special_named(keys, length));
            keys += length;
        }
        keys += strspn(keys, " ");
    }
    driver_rest(&stage->tui);
}

void stage_rest(struct stage *stage)
{
    do
        driver_idle(&stage->tui);
    while (stage->tui.searching);
}

/* ---- seeing ---- */

struct showing {
    struct stage *stage;
    const char *text;
};

static void run_show(void *context)
{
    struct showing *showing = context;
    showing->text = view_as_text(&showing->stage->tui.view, &showing->stage->arena);
}

const char *stage_show(struct stage *stage, int rows, int columns)
{
    struct showing showing = {stage, NULL};
    arena_release(&stage->arena);
    driver_paint(&stage->tui, rows, columns);
    assert_true(arena_try(&stage->arena, run_show, &showing));
    return showing.text;
}

void assert_shown(struct stage *stage, const char *words)
{
    const char *screen = stage_show(stage, 24, 80);
    if (!strstr(screen, words))
        fail_msg("\"%s\" is not on the screen:\n%s", words, screen);
}

void assert_not_shown(struct stage *stage, const char *words)
{
    const char *screen = stage_show(stage, 24, 80);
    if (strstr(screen, words))
        fail_msg("\"%s\" is on the screen:\n%s", words, screen);
}

/* The list is the desk's until it is asked again, which every key does. */
static size_t place_of(struct stage *stage, const char *name)
{
    const struct store_build *builds;
    size_t count;
    DONE(desk_builds(stage->desk, &builds, &count, note));
    for (size_t i = 0; i < count; i++) {
        if (strcmp(builds[i].name, name) == 0)
            return i;
    }
    fail_msg("no build is called %s", name);
    return 0;
}

void stage_take_up(struct stage *stage, const char *name)
{
    size_t place = place_of(stage, name);
    stage_press(stage, "Home");
    for (size_t i = 0; i < place; i++)
        stage_press(stage, "Down");
    stage_press(stage, "Enter");
}
