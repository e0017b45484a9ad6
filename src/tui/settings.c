/*
 * Lines are read first, each on its own; what two lines want at once is the earlier one's. Then
 * keys that lines took are taken away from the actions that had them by standard. An action that
 * would be left without any key keeps its own: the line is left out instead.
 */
#include "tui/settings.h"

#include "base/show.h"
#include "base/text.h"
#include "base/utf8.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define LINE_MOST 200
#define WORDS_MOST (2 + KEYMAP_KEYS)

/* The lines of a file as they are read. */
struct reading {
    struct settings *settings;
    int line;
    int bound[ACTION_COUNT]; /* line that gave the action its keys; 0: standard */
};

void settings_standard(struct settings *settings)
{
    memset(settings, 0, sizeof *settings);
    keymap_standard(&settings->keys);
}

/* ---- complaints ---- */

static void complain(struct settings *settings, int line, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

static void complain(struct settings *settings, int line, const char *format, ...)
{
    char why[400];
    va_list arguments;
    if (settings->complaint_count++ >= SETTINGS_COMPLAINTS)
        return;
    struct complaint *complaint = &settings->complaints[settings->complaint_count - 1];
    va_start(arguments, format);
    vsnprintf(why, sizeof why, format, arguments);
    va_end(arguments);
    complaint->line = line;
    show_into(complaint->why, sizeof complaint->why, why);
}

/* ---- keys ---- */

/* Keys that mean the same wherever one is, or that the terminal keeps for itself. */
static const char *reason_against(int key)
{
    static const int of_terminal[] = {'C', 'Q', 'S', 'V', 'Z', '\\'};
    if (key == KEY_RETURN || key == KEY_ESCAPE)
        return "always enters or goes back";
    if (key >= '0' && key <= '9')
        return "begins a figure";
    if (key == KEY_RUB_OUT || key == KEY_CONTROL_U)
        return "rubs out in a field";
    for (size_t i = 0; i < sizeof of_terminal / sizeof *of_terminal; i++) {
        if (key == KEY_CONTROL(of_terminal[i]))
            return "never comes here: the terminal keeps it";
    }
    return NULL;
}

/* The line that gave the key to an action; 0 for none. */
static int line_of_key(const struct reading *reading, int key)
{
    enum action action = keymap_action(&reading->settings->keys, key);
    return action == ACTION_NONE ? 0 : reading->bound[action];
}

/* A key that the line may take; else complains and gives KEY_NONE. */
static int take_key(const struct reading *reading, enum action action, const char *name)
{
    int key = action_key_named(name);
    const char *reason = reason_against(key);
    if (key == KEY_NONE)
        complain(reading->settings, reading->line, "no key is called %s", name);
    else if (reason && actions[action].key != key)
        complain(reading->settings, reading->line, "%s %s", name, reason);
    else if (line_of_key(reading, key))
        complain(reading->settings, reading->line, "%s is taken by line %d", name,
                 line_of_key(reading, key));
    else
        return key;
    return KEY_NONE;
}

/* Enter and Esc stay with their actions, whatever else is bound to these. */
static int first_kept(enum action action, int keys[KEYMAP_KEYS])
{
    if (action != ACTION_ENTER && action != ACTION_LEAVE)
        return 0;
    keys[0] = actions[action].key;
    return 1;
}

/* "key ACTION KEY ..." */
static void read_key(struct reading *reading, char *const words[], int count)
{
    int keys[KEYMAP_KEYS] = {KEY_NONE};
    enum action action = count > 1 ? action_named(words[1]) : ACTION_NONE;
    if (action == ACTION_NONE || count < 3) {
        complain(reading->settings, reading->line,
                 action == ACTION_NONE ? "%s is no action" : "%s gets no key",
                 count > 1 ? words[1] : "nothing");
        return;
    }
    if (reading->bound[action]) {
        complain(reading->settings, reading->line, "%s has its keys from line %d", words[1],
                 reading->bound[action]);
        return;
    }
    int taken = first_kept(action, keys);
    for (int i = 2; i < count && taken < KEYMAP_KEYS; i++) {
        int key = take_key(reading, action, words[i]);
        if (key == KEY_NONE)
            return;
        if (key != keys[0])
            keys[taken++] = key;
    }
    memcpy(reading->settings->keys.keys[action], keys, sizeof keys);
    reading->bound[action] = reading->line;
}

/* ---- lines ---- */

/* "set mouse on" */
static void read_set(struct reading *reading, char *const words[], int count)
{
    bool on = count == 3 && strcmp(words[2], "on") == 0;
    bool off = count == 3 && strcmp(words[2], "off") == 0;
    if (count > 1 && strcmp(words[1], "mouse") == 0 && (on || off))
        reading->settings->mouse = on;
    else
        complain(reading->settings, reading->line, "what can be set is: mouse on, mouse off");
}

static bool is_readable(const char *line, size_t length)
{
    unsigned code;
    for (int bytes; (bytes = utf8_next(line, length, &code)) > 0; length -= (size_t)bytes) {
        if ((!show_is_safe(code) && code != '\t') || code == 0xfffd)
            return false;
        line += bytes;
    }
    return true;
}

/* The words of a line up to a hash that begins one; the line is cut up. At most WORDS_MOST. */
static int split(char *line, char *words[WORDS_MOST])
{
    int count = 0;
    for (char *at = line + strspn(line, " \t"); *at && *at != '#' && count < WORDS_MOST;
         at += strspn(at, " \t")) {
        words[count++] = at;
        at += strcspn(at, " \t");
        if (*at)
            *at++ = '\0';
    }
    return count;
}

static void read_line(struct reading *reading, const char *bytes, size_t length)
{
    char line[LINE_MOST + 1];
    char *words[WORDS_MOST];
    if (length > 0 && bytes[length - 1] == '\r')
        length--;
    if (length > LINE_MOST || !is_readable(bytes, length)) {
        complain(reading->settings, reading->line,
                 length > LINE_MOST ? "the line is too long" : "the line is no plain text");
        return;
    }
    memcpy(line, bytes, length);
    line[length] = '\0';
    int count = split(line, words);
    if (count == 0)
        return;
    if (strcmp(words[0], "key") == 0)
        read_key(reading, words, count);
    else if (strcmp(words[0], "set") == 0)
        read_set(reading, words, count);
    else
        complain(reading->settings, reading->line, "a line begins with key or set, not %s",
                 words[0]);
}

/* ---- the standard keys that give way ---- */

static void restore(struct reading *reading, enum action action)
{
    int *keys = reading->settings->keys.keys[action];
    memset(keys, 0, sizeof reading->settings->keys.keys[action]);
    keys[0] = actions[action].key;
    keys[1] = actions[action].other;
    reading->bound[action] = 0;
}

/* Another action that a line bound to the key; ACTION_NONE for none. */
static enum action bound_to(const struct reading *reading, enum action action, int key)
{
    const struct keymap *keys = &reading->settings->keys;
    for (int i = 0; i < ACTION_COUNT; i++) {
        if (i == (int)action || !reading->bound[i])
            continue;
        for (int k = 0; k < keymap_count(keys, (enum action)i); k++) {
            if (keys->keys[i][k] == key)
                return (enum action)i;
        }
    }
    return ACTION_NONE;
}

/* Leaves out a line that takes the last key of an action; true when there was one. */
static bool leave_out_greedy_line(struct reading *reading)
{
    char name[ACTION_KEY_TEXT];
    for (int i = 0; i < ACTION_COUNT; i++) {
        int first = actions[i].key;
        enum action taker = bound_to(reading, (enum action)i, first);
        bool other_stays = actions[i].other != KEY_NONE &&
                           bound_to(reading, (enum action)i, actions[i].other) == ACTION_NONE;
        if (reading->bound[i] || taker == ACTION_NONE || other_stays)
            continue;
        complain(reading->settings, reading->bound[taker], "%s is all that %s has",
                 action_key_name(first, name), actions[i].name);
        restore(reading, taker);
        return true;
    }
    return false;
}

static void give_way(struct reading *reading)
{
    char name[ACTION_KEY_TEXT];
    for (int i = 0; i < ACTION_COUNT; i++) {
        const int standard[] = {actions[i].key, actions[i].other};
        for (size_t k = 0; k < 2 && !reading->bound[i]; k++) {
            enum action taker = bound_to(reading, (enum action)i, standard[k]);
            if (taker != ACTION_NONE &&
                keymap_drop(&reading->settings->keys, (enum action)i, standard[k]))
                complain(reading->settings, reading->bound[taker], "%s is no key of %s any more",
                         action_key_name(standard[k], name), actions[i].name);
        }
    }
}

void settings_parse(struct settings *settings, const char *bytes, size_t length)
{
    struct reading reading = {.settings = settings};
    if (length > SETTINGS_MOST) {
        complain(settings, 0, "the file is too long for settings");
        return;
    }
    while (length > 0) {
        const char *end = memchr(bytes, '\n', length);
        size_t line = end ? (size_t)(end - bytes) : length;
        reading.line++;
        read_line(&reading, bytes, line);
        bytes += line + (end != NULL);
        length -= line + (end != NULL);
    }
    while (leave_out_greedy_line(&reading))
        ;
    give_way(&reading);
}

/* ---- the file ---- */

static void find_path(char path[SETTINGS_PATH])
{
    const char *config = getenv("XDG_CONFIG_HOME");
    const char *home = getenv("HOME");
    int length = 0;
    if (config && *config == '/')
        length = snprintf(path, SETTINGS_PATH, "%s/stuffover/terminal.conf", config);
    else if (home && *home)
        length = snprintf(path, SETTINGS_PATH, "%s/.config/stuffover/terminal.conf", home);
    if (length >= SETTINGS_PATH)
        path[0] = '\0';
}

/* Reads a plain file into the text, one byte more than is allowed at most. Reading a pipe would
 * wait for who knows whom. */
static bool read_file(int file, struct text *text)
{
    char chunk[4096];
    ssize_t got;
    struct stat about;
    if (fstat(file, &about) || !S_ISREG(about.st_mode))
        return false;
    while ((got = read(file, chunk, sizeof chunk)) > 0 && text->length <= SETTINGS_MOST)
        text_add_bytes(text, chunk, (size_t)got);
    return got >= 0 && !text_failed(text);
}

void settings_read(struct settings *settings)
{
    struct text text;
    find_path(settings->path);
    int file = settings->path[0] ? open(settings->path, O_RDONLY | O_NONBLOCK | O_CLOEXEC) : -1;
    if (file < 0) {
        if (settings->path[0] && errno != ENOENT && errno != ENOTDIR)
            complain(settings, 0, "the settings cannot be read: %s", strerror(errno));
        return;
    }
    text_init(&text);
    if (read_file(file, &text))
        settings_parse(settings, text_string(&text), text.length);
    else
        complain(settings, 0, "the settings are no file that can be read");
    text_release(&text);
    close(file);
}
