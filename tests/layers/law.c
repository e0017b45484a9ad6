/*
 * The layer law as one table: a floor, and the floors that it may include. Everything else here
 * reads C just well enough to ask that table: comments are blanked first, so that only real
 * includes are seen, and then strings, so that only real calls are.
 */
#include "law.h"

#include <assert.h>
#include <ctype.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { COLUMNS = 100, NAME = 128 };

/* How quiet a floor is: a pure one also has no clock, no environment and no stream. */
enum manners { PURE, SILENT, EDGE };

struct floor {
    const char *name;
    const char *may_use; /* names between blanks, the floor itself left out */
    enum manners manners;
};

static const struct floor floors[] = {
    {"base", "", PURE},
    {"model", " base ", PURE},
    {"cut", " base ", PURE},
    {"plan", " base model cut ", PURE},
    {"draw", " base model cut plan ", SILENT},
    {"store", " base model ", SILENT},
    {"exchange", " base model cut plan ", SILENT},
    {"desk", " base model cut plan draw store exchange ", SILENT},
    {"paper", " base model cut plan draw store exchange desk ", SILENT},
    {"tui", " base model cut plan draw store exchange desk paper ", EDGE},
    {"cli", " base model cut plan draw store exchange desk paper ", EDGE},
};

static const struct floor top = {
    "main", " base model cut plan draw store exchange desk paper tui cli ", EDGE};

/* A header whose name starts so belongs to one floor. */
static const struct {
    const char *starts;
    const char *floor;
} library_headers[] = {
    {"sqlite3", "store"}, {"curses.h", "tui"},     {"ncurses", "tui"}, {"panel.h", "tui"},
    {"term.h", "tui"},    {"jansson", "exchange"}, {"cairo", "paper"}, {"pango", "paper"},
};

/* The most that a floor may be to make the call; fprintf is a file's business above the engine. */
static const struct {
    const char *name;
    enum manners from;
} calls[] = {
    {"printf", EDGE},          {"vprintf", EDGE},   {"puts", EDGE},       {"putchar", EDGE},
    {"perror", EDGE},          {"exit", EDGE},      {"_exit", EDGE},      {"_Exit", EDGE},
    {"getenv", SILENT},        {"fprintf", SILENT}, {"vfprintf", SILENT}, {"time", SILENT},
    {"clock_gettime", SILENT},
};

static const char *const top_names[] = {
    "README.md", "DEVELOPERS.md", "LICENSE", "meson.build", "meson_options.txt",
    "src",       "tests",         "schema",  "demo",        "man",
};

#define LENGTH(array) (sizeof(array) / sizeof(array)[0])

void law_complain(struct complaints *found, const char *path, int line, const char *format, ...)
{
    char what[240];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(what, sizeof what, format, arguments);
    va_end(arguments);

    found->count++;
    size_t room = sizeof found->text - found->used;
    int wrote = snprintf(found->text + found->used, room, "%s:%d: %s\n", path, line, what);
    assert(wrote > 0);
    if ((size_t)wrote < room)
        found->used += (size_t)wrote;
    else
        found->text[found->used] = '\0';
}

static bool starts_with(const char *text, const char *start)
{
    return strncmp(text, start, strlen(start)) == 0;
}

static const struct floor *floor_named(const char *name, size_t length)
{
    for (size_t i = 0; i < LENGTH(floors); i++)
        if (strlen(floors[i].name) == length && memcmp(floors[i].name, name, length) == 0)
            return &floors[i];
    return NULL;
}

static const struct floor *floor_of_path(const char *path)
{
    const struct floor *floor = floor_named(path, strcspn(path, "/"));
    return floor != NULL ? floor : &top;
}

static bool may_use(const struct floor *floor, const struct floor *used)
{
    char word[NAME];
    snprintf(word, sizeof word, " %s ", used->name);
    return floor == used || strstr(floor->may_use, word) != NULL;
}

/* Where the comment or the quoted text that starts at `at` ends; `at` itself when none does. */
static char *comment_end(char *at)
{
    if (at[0] == '/' && at[1] == '/')
        return at + strcspn(at, "\n");
    if (at[0] != '/' || at[1] != '*')
        return at;
    char *close = strstr(at + 2, "*/");
    return close != NULL ? close + 2 : at + strlen(at);
}

static char *quoted_end(char *at)
{
    const char quote = at[0];
    if (quote != '"' && quote != '\'')
        return at;
    for (at++; *at != '\0' && *at != '\n' && *at != quote; at++)
        if (at[0] == '\\' && at[1] != '\0')
            at++;
    return *at == quote ? at + 1 : at;
}

static void blank(char *from, const char *end)
{
    for (; from < end; from++)
        if (*from != '\n')
            *from = ' ';
}

/* Blanks all comments, and quoted text too when asked; lines stay where they are. */
static void blank_text(char *text, bool quoted_too)
{
    while (*text != '\0') {
        char *comment = comment_end(text);
        char *quoted = quoted_end(text);
        if (comment > text)
            blank(text, comment);
        else if (quoted > text && quoted_too)
            blank(text, quoted);
        text = comment > text ? comment : quoted > text ? quoted : text + 1;
    }
}

static const char *skip_blanks(const char *at)
{
    return at + strspn(at, " \t");
}

/* The header's name when the line is an include; returns its opening mark, or '\0'. */
static char read_include(const char *line, char ret_name[static NAME])
{
    const char *at = skip_blanks(line);
    if (*at != '#')
        return '\0';
    at = skip_blanks(at + 1);
    if (!starts_with(at, "include"))
        return '\0';
    at = skip_blanks(at + strlen("include"));
    if (*at != '"' && *at != '<')
        return '\0';
    size_t length = strcspn(at + 1, "\">\n");
    snprintf(ret_name, NAME, "%.*s", (int)length, at + 1);
    return *at;
}

static void check_library(struct complaints *found, const char *path, int line, const char *name)
{
    const struct floor *floor = floor_of_path(path);
    for (size_t i = 0; i < LENGTH(library_headers); i++) {
        if (starts_with(name, library_headers[i].starts) &&
            strcmp(library_headers[i].floor, floor->name) != 0)
            law_complain(found, path, line, "<%s> belongs to %s", name, library_headers[i].floor);
    }
    if (floor->manners == PURE && (strcmp(name, "time.h") == 0 || strcmp(name, "sys/time.h") == 0))
        law_complain(found, path, line, "%s has no clock", floor->name);
}

/* An angle bracket reaches our floors as well as a quote does; only a quote must reach one. */
static void check_project(struct complaints *found, const char *path, int line, char mark,
                          const char *name)
{
    const struct floor *floor = floor_of_path(path);
    size_t folder = strcspn(name, "/");
    if (name[folder] == '\0') /* beside the file, or made by the build for this floor */
        return;
    const struct floor *used = floor_named(name, folder);
    if (used == NULL && mark == '"')
        law_complain(found, path, line, "\"%s\" is on no floor", name);
    if (used != NULL && !may_use(floor, used))
        law_complain(found, path, line, "%s may not include %s", floor->name, used->name);
}

static void check_includes(struct complaints *found, const char *path, const char *text)
{
    int line = 1;
    for (const char *at = text; at != NULL; line++) {
        char name[NAME];
        char mark = read_include(at, name);
        if (mark != '\0') {
            check_library(found, path, line, name);
            check_project(found, path, line, mark, name);
        }
        at = strchr(at, '\n');
        at = at != NULL ? at + 1 : NULL;
    }
}

static bool in_identifier(char c)
{
    return c == '_' || isalnum((unsigned char)c);
}

/* fault_bug tells of a mistake of ours, once, before it aborts. */
static bool excused(const char *path, const char *call)
{
    return strcmp(path, "base/fault.c") == 0 && strcmp(call, "fprintf") == 0;
}

static void check_call(struct complaints *found, const char *path, int line, const char *name,
                       size_t length)
{
    const struct floor *floor = floor_of_path(path);
    for (size_t i = 0; i < LENGTH(calls); i++)
        if (strlen(calls[i].name) == length && memcmp(calls[i].name, name, length) == 0 &&
            floor->manners < calls[i].from && !excused(path, calls[i].name))
            law_complain(found, path, line, "%s does not call %s", floor->name, calls[i].name);
}

static void check_calls(struct complaints *found, const char *path, const char *text)
{
    int line = 1;
    for (const char *at = text; *at != '\0';) {
        size_t length = 0;
        while (in_identifier(at[length]))
            length++;
        if (length > 0 && *skip_blanks(at + length) == '(')
            check_call(found, path, line, at, length);
        line += *at == '\n';
        at += length > 0 ? length : 1;
    }
}

void law_check_floors(struct complaints *found, const char *path, const char *text)
{
    char *copy = strdup(text);
    if (copy == NULL) {
        law_complain(found, path, 0, "out of memory");
        return;
    }
    blank_text(copy, false);
    check_includes(found, path, copy);
    blank_text(copy, true);
    check_calls(found, path, copy);
    free(copy);
}

static int characters(const char *line, size_t bytes)
{
    int count = 0;
    for (size_t i = 0; i < bytes; i++)
        count += ((unsigned char)line[i] & 0xC0) != 0x80;
    return count;
}

static bool has_word(const char *line, size_t length, const char *word)
{
    size_t size = strlen(word);
    for (size_t i = 0; i + size <= length; i++)
        if (memcmp(line + i, word, size) == 0 && (i == 0 || !in_identifier(line[i - 1])) &&
            !in_identifier(line[i + size]))
            return true;
    return false;
}

/* The words are split so that this file keeps its own law. */
static const char *const put_off[] = {"TO"
                                      "DO",
                                      "FIX"
                                      "ME",
                                      "XX"
                                      "X",
                                      "HA"
                                      "CK"};

static void check_width(struct complaints *found, const char *path, int number, const char *line,
                        size_t length)
{
    if (characters(line, length) > COLUMNS)
        law_complain(found, path, number, "over %d columns", COLUMNS);
}

static void check_line(struct complaints *found, const char *path, int number, const char *line,
                       size_t length)
{
    if (memchr(line, '\t', length) != NULL)
        law_complain(found, path, number, "a tab");
    if (length > 0 && (line[length - 1] == ' ' || line[length - 1] == '\r'))
        law_complain(found, path, number, "a blank at the end");
    for (size_t i = 0; i < LENGTH(put_off); i++)
        if (has_word(line, length, put_off[i]))
            law_complain(found, path, number, "work put off");
}

void law_check_lines(struct complaints *found, const char *path, const char *text)
{
    bool is_table = false; /* laid out by hand, one row a line */
    for (int number = 1; *text != '\0'; number++) {
        size_t length = strcspn(text, "\n");
        if (starts_with(text, "/* clang-format off"))
            is_table = true;
        if (starts_with(text, "/* clang-format on"))
            is_table = false;
        if (!is_table)
            check_width(found, path, number, text, length);
        check_line(found, path, number, text, length);
        if (text[length] == '\0') {
            law_complain(found, path, number, "no newline at the end of the file");
            return;
        }
        text += length + 1;
    }
}

void law_check_top(struct complaints *found, const char *name)
{
    if (name[0] == '.' || starts_with(name, "build"))
        return;
    for (size_t i = 0; i < LENGTH(top_names); i++)
        if (strcmp(top_names[i], name) == 0)
            return;
    law_complain(found, name, 0, "does not belong at the top of the tree");
}
